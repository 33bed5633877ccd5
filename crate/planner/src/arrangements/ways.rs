//! Where the dishes go in an arrangement of each character, in several ways.
//!
//! Trade terms: the hero as a centre with a ring about it; a leading diagonal;
//! negative space at one side. Figures are our choice.
use glam::DVec2;

use super::set::{Part, Set};
use crate::commands::room::{Body, Room};
use crate::shape::Bounds;

/// What an arrangement goes by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Character {
    /// The hero in the middle, the rest in a ring about it.
    Ring,
    /// A line of dishes from corner to corner.
    Diagonal,
    /// All to one side; the other is free for type.
    Side,
}

/// One way to go about it: where each body is wanted, and what stays free.
pub(super) struct Way {
    pub(super) places: Vec<DVec2>,
    pub(super) clear: Option<Bounds>,
}

/// How far settings stand from each other at least, mm, when they close up.
const BESIDE: f64 = 30.0;

/// Every way to arrange a set in this character; the seed decides between
/// those that are alike.
pub(super) fn ways(set: &Set, character: Character, seed: u64) -> Vec<Way> {
    let mut chance = Chance(seed);
    match character {
        Character::Ring => ring(set, &mut chance),
        Character::Diagonal => diagonal(set, &mut chance),
        Character::Side => side(set, &mut chance),
    }
}

/// Numbers by a linear congruence (Knuth's constants).
struct Chance(u64);

impl Chance {
    fn under(&mut self, sides: usize) -> usize {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize % sides.max(1)
    }
}

/// In how many orders so many dishes are dealt at most: all there are of five.
const ORDERS: usize = 120;

/// Orders in which so many dishes take their places, each once: all there are,
/// or some by chance.
fn orders(count: usize, chance: &mut Chance) -> Vec<Vec<usize>> {
    let all: usize = (1..=count).product();
    let mut order: Vec<usize> = (0..count).collect();
    let mut out: Vec<Vec<usize>> = Vec::new();
    // By chance an order may come twice; it is then dealt once.
    for _ in 0..ORDERS * 8 {
        if out.len() == ORDERS.min(all) {
            break;
        }
        for n in (1..count).rev() {
            order.swap(n, chance.under(n + 1));
        }
        if !out.contains(&order) {
            out.push(order.clone());
        }
    }
    out
}

/// Where a body is at a share of the room from its middle, -0.5 to 0.5 from
/// edge to edge.
fn at(room: &Room, body: &Body, air: f64, share: DVec2) -> DVec2 {
    let stand = room.stand(body, air);
    let share = share.clamp(DVec2::splat(-0.5), DVec2::splat(0.5));
    stand.low + (stand.high - stand.low) * (share + 0.5)
}

fn ring(set: &Set, chance: &mut Chance) -> Vec<Way> {
    /// Turns of the ring that are tried, and how far one is of the way from one
    /// dish to the next: all round for two, once to the next for eight.
    const TURNS: usize = 8;
    const TURN: f64 = 0.37;
    /// How far off the very middle the hero may stand, as shares of the room:
    /// with the next two across from it they make a triangle.
    const OFF: [DVec2; 5] = [
        DVec2::ZERO,
        DVec2::new(0.14, 0.0),
        DVec2::new(-0.14, 0.0),
        DVec2::new(0.0, 0.2),
        DVec2::new(0.0, -0.2),
    ];
    /// Share of the room's half the ring reaches.
    const REACH: f64 = 0.48;
    /// Degrees between two that would otherwise lie in a line with the hero.
    const OF_TWO: f64 = 125.0;
    let dishes = set.dishes();
    let (Some((hero, rest)), Some(_)) = (dishes.split_first(), set.hero) else {
        return Vec::new();
    };
    let room = set.inner();
    let start = chance.under(360) as f64;
    let orders = orders(rest.len(), chance);
    // Settings as they are, apart to leave the middles of their edges, or
    // closed up there to leave the corners.
    let slid = [set.places(), drawn(set, 0.0), drawn(set, 1.0)];
    let mut out = Vec::new();
    for (slid, order) in slid.iter().flat_map(|s| orders.iter().map(move |o| (s, o))) {
        for (turn, off) in (0..TURNS).flat_map(|t| OFF.map(|off| (t, off))) {
            let mut places = slid.clone();
            places[*hero] = at(&room, &set.bodies[*hero], set.air, off);
            for (n, place) in rest.iter().zip(order) {
                let step = *place as f64 + TURN * turn as f64;
                let between = match rest.len() {
                    2 => OF_TWO,
                    count => 360.0 / count as f64,
                };
                let degrees = start + between * step;
                let (sin, cos) = libm::sincos(degrees.to_radians());
                // Fuller at the corners than an ellipse, as a frame is.
                let round = DVec2::new(cos, sin);
                let share = round * REACH / round.abs().max_element().sqrt();
                places[*n] = at(&room, &set.bodies[*n], set.air, share);
            }
            out.push(Way {
                places,
                clear: None,
            });
        }
    }
    out
}

fn diagonal(set: &Set, chance: &mut Chance) -> Vec<Way> {
    /// How far dishes stand off the line to either side, as shares.
    const OFF: [f64; 3] = [0.06, 0.1, 0.14];
    let dishes = set.dishes();
    let last = (dishes.len().max(2) - 1) as f64;
    let orders = orders(dishes.len(), chance);
    let mut out = Vec::new();
    for rises in [1.0, -1.0] {
        // Near and far settings leave the corners the line runs between.
        let mut slid = set.places();
        for (edge, to_high) in [rises > 0.0, rises < 0.0, rises < 0.0, rises > 0.0]
            .into_iter()
            .enumerate()
        {
            close_up(set, &mut slid, edge, to_high);
        }
        for off in OFF.iter().flat_map(|off| [*off, -*off]) {
            for order in &orders {
                let mut places = slid.clone();
                for (n, place) in dishes.iter().zip(order) {
                    let along = *place as f64 / last - 0.5;
                    let aside = if place % 2 == 0 { off } else { -off };
                    let share = DVec2::new(along + aside, rises * (aside - along));
                    places[*n] = at(&set.room, &set.bodies[*n], set.air, share);
                }
                out.push(Way {
                    places,
                    clear: None,
                });
            }
        }
    }
    out
}

/// The settings of every edge in two halves that stand at its ends, or drawn
/// towards its middle by a share.
fn drawn(set: &Set, share: f64) -> Vec<DVec2> {
    let (mut low, mut high) = (set.places(), set.places());
    for edge in 0..4 {
        close_up(set, &mut low, edge, false);
        close_up(set, &mut high, edge, true);
    }
    let mut places = set.places();
    for edge in 0..4 {
        let axis = usize::from(edge > 1);
        let row = set.settings(edge);
        let Some(last) = row.len().checked_sub(1) else {
            continue;
        };
        // Closed up about the middle, each half way between both ends.
        for (k, n) in row.iter().enumerate() {
            let ends = if 2 * k < last { &low } else { &high };
            let middle = (low[*n][axis] + high[*n][axis]) * 0.5;
            let end = if 2 * k == last {
                middle
            } else {
                ends[*n][axis]
            };
            places[*n][axis] = end + (middle - end) * share;
        }
    }
    places
}

/// Closes up the settings at an edge towards the end of it with the higher
/// coordinate, or the lower, as far as they have room.
fn close_up(set: &Set, places: &mut [DVec2], edge: usize, to_high: bool) {
    let axis = usize::from(edge > 1);
    let mut row = set.settings(edge);
    if to_high {
        row.reverse();
    }
    let mut taken: Option<f64> = None;
    for n in row {
        let stand = set.room.stand(&set.bodies[n], set.air);
        let own = set.bodies[n].size()[axis] + BESIDE;
        let wall = if to_high { stand.high } else { stand.low }[axis];
        let place = match taken {
            None => wall,
            Some(beside) if to_high => beside - own,
            Some(beside) => beside + own,
        };
        places[n][axis] = place.clamp(stand.low[axis], stand.high[axis]);
        taken = Some(places[n][axis]);
    }
}

/// Where dishes stand in the part of the frame they are in, towards its free
/// side (0.5) and away from it (-0.5), and across: of any number the first ones
/// are taken, three of which make a triangle.
const CLUSTER: [[f64; 2]; 9] = [
    [0.22, -0.02],
    [-0.3, -0.36],
    [-0.24, 0.36],
    [-0.46, 0.02],
    [0.3, 0.44],
    [0.26, -0.46],
    [-0.08, 0.06],
    [-0.48, -0.44],
    [-0.48, 0.44],
];

fn side(set: &Set, chance: &mut Chance) -> Vec<Way> {
    /// Shares of the frame that are to be free.
    const FREE: [f64; 4] = [0.42, 0.36, 0.3, 0.22];
    let dishes = set.dishes();
    if dishes.len() > CLUSTER.len() {
        return Vec::new();
    }
    let orders = orders(dishes.len(), chance);
    let mut out = Vec::new();
    for free_side in 0..4 {
        for free in FREE {
            let Some((slid, clear)) = cleared(set, free_side, free) else {
                continue;
            };
            // Between the settings, or where they have left as well.
            for room in [set.inner(), set.room] {
                for (flip, order) in orders.iter().flat_map(|o| [(1.0, o), (-1.0, o)]) {
                    let mut places = slid.clone();
                    let dealt = (&dishes[..], &order[..]);
                    if to_side(set, dealt, (free_side, &clear, room), flip, &mut places) {
                        out.push(Way {
                            places,
                            clear: Some(clear),
                        });
                    }
                }
            }
        }
    }
    out
}

/// Which way a side lies: along which axis, and whether at its high end.
const fn lies(side: usize) -> (usize, bool) {
    ((side < 2) as usize, side == 0 || side == 3)
}

/// The settings out of the way of the near, far, left or right side, and what
/// is free there then; where they do not make way, what they leave between
/// them.
fn cleared(set: &Set, free_side: usize, free: f64) -> Option<(Vec<DVec2>, Bounds)> {
    let (axis, high) = lies(free_side);
    let mut places = set.places();
    for edge in if axis == 0 { [0, 1] } else { [2, 3] } {
        close_up(set, &mut places, edge, !high);
    }
    let mut clear = Bounds {
        min: set.corner,
        max: set.corner + set.size,
    };
    let line = set.size[axis] * free;
    if high {
        clear.min[axis] = clear.max[axis] - line;
    } else {
        clear.max[axis] = clear.min[axis] + line;
    }
    let in_way = |clear: Bounds| {
        (0..places.len()).any(|n| {
            let mut body = set.bodies[n].clone();
            body.at = places[n];
            set.parts[n] != Part::Dish && body.bounds().meets(clear)
        })
    };
    if in_way(clear) {
        let inner = set.inner();
        clear.min = clear.min.max(inner.low);
        clear.max = clear.max.min(inner.high);
        if (clear.max - clear.min).min_element() <= 0.0 || in_way(clear) {
            return None;
        }
    }
    Some((places, clear))
}

/// Puts all dishes where the side is not; false where that leaves no room.
fn to_side(
    set: &Set,
    (dishes, order): (&[usize], &[usize]),
    (free_side, clear, mut room): (usize, &Bounds, Room),
    flip: f64,
    places: &mut [DVec2],
) -> bool {
    let (axis, high) = lies(free_side);
    if high {
        room.high[axis] = room.high[axis].min(clear.min[axis]);
    } else {
        room.low[axis] = room.low[axis].max(clear.max[axis]);
    }
    if (room.high - room.low).min_element() <= 0.0 {
        return false;
    }
    let towards = if high { 1.0 } else { -1.0 };
    for (n, place) in dishes.iter().zip(order) {
        let [along, across] = CLUSTER[*place];
        let mut share = DVec2::ZERO;
        share[axis] = along * towards;
        share[1 - axis] = across * flip;
        places[*n] = at(&room, &set.bodies[*n], set.air, share);
    }
    true
}
