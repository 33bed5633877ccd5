//! Where everything of a new table goes: settings along the frame's edges,
//! shared dishes in what is left, gaps shrunk before anything overlaps.
use glam::{DVec2, Vec2Swizzles};

use super::super::room::{Body, Room, gap_to, push_apart};
use crate::layout::Item;

/// Air kept between things and to the frame's edge, mm. Our choice.
const AIR: f64 = 22.0;
/// Gap from which no roomier way is looked for, mm. Our choice.
const ENOUGH: f64 = 11.0;

/// The things of a setting, and where they lie about the first of them as the
/// sitter sees them: with the usual air, and close.
type Settings<'a> = (&'a [Item], &'a [Vec<DVec2>; 2]);

/// One way to go about it.
#[derive(Clone, Copy)]
struct Way {
    /// Settings close in themselves.
    close: bool,
    /// Settings towards the corners instead of evenly along the edges.
    corners: bool,
    /// Dishes side by side from one corner, the largest first, instead of
    /// where each looks best.
    packed: bool,
}

/// Quarter turns clockwise of what lies at the near, far, left and right edge.
const QUARTERS: [i32; 4] = [0, 2, 1, 3];

/// Where everything goes: the settings, then the dishes in any order, and
/// whether the settings had to close in.
pub(super) fn places(
    setting: Settings<'_>,
    people: usize,
    dishes: &[Item],
    room: Room,
) -> (Vec<Body>, bool) {
    let mut best = (f64::NEG_INFINITY, Vec::new(), false);
    for n in 0..8 {
        let way = Way {
            close: n & 4 != 0,
            corners: n & 2 != 0,
            packed: n & 1 != 0,
        };
        if best.0 >= ENOUGH || (people == 0 && n > 1) {
            break;
        }
        let mut bodies = settings(setting, people, room, way);
        put_dishes(&mut bodies, dishes, room, way);
        let gap = push_apart(&mut bodies, room, AIR);
        if gap > best.0 {
            best = (gap, bodies, way.close);
        }
    }
    (best.1, best.2)
}

fn put_dishes(bodies: &mut Vec<Body>, dishes: &[Item], room: Room, way: Way) {
    let bulk = |n: usize| {
        let [width, depth] = dishes[n].size.extent();
        width * depth
    };
    let mut left: Vec<usize> = (0..dishes.len()).collect();
    while !left.is_empty() {
        let mut next = 0;
        for n in 1..left.len() {
            if way.packed && bulk(left[n]) > bulk(left[next]) {
                next = n;
            }
        }
        let dish = left.remove(next);
        let body = best_place(&dishes[dish], dish, room, way, bodies);
        bodies.push(body);
    }
}

/// The settings, as many at each edge as there is room for.
fn settings((setting, offs): Settings<'_>, people: usize, room: Room, way: Way) -> Vec<Body> {
    let offs = &offs[usize::from(way.close)];
    let at_edge = QUARTERS.map(|quarters| Body::of(setting, offs, quarters));
    let own = at_edge[0].size();
    let air = if way.close { 4.0 } else { AIR };
    let mut out = Vec::with_capacity(people);
    for (edge, count) in shared_out(people, room.high - room.low, own + air)
        .into_iter()
        .enumerate()
    {
        for place in 0..count {
            let mut body = at_edge[edge].clone();
            let stand = room.stand(&body, air);
            let rows = edge < 2;
            body.free = if rows { DVec2::X } else { DVec2::Y };
            let along = if way.corners {
                // From both ends towards the middle.
                let pitch = (own.x + air) * (place / 2) as f64;
                let span = if rows {
                    stand.high - stand.low
                } else {
                    (stand.high - stand.low).yx()
                };
                let share = pitch / span.x.max(1.0);
                if place % 2 == 0 { share } else { 1.0 - share }
            } else if count == 1 {
                0.5
            } else {
                let slot = (place as f64 + 0.5) / count as f64;
                let whole = room.high - room.low;
                let at = room.low + whole * slot;
                let span = (stand.high - stand.low).max(DVec2::ONE);
                let share = (at - stand.low) / span;
                if rows { share.x } else { share.y }
            };
            let along = stand.low + (stand.high - stand.low) * along.clamp(0.0, 1.0);
            body.at = match edge {
                0 => DVec2::new(along.x, stand.high.y),
                1 => DVec2::new(along.x, stand.low.y),
                2 => DVec2::new(stand.low.x, along.y),
                _ => DVec2::new(stand.high.x, along.y),
            };
            out.push(body);
        }
    }
    out
}

/// How many sit at the near, far, left and right edge: along the long edges
/// as far as there is room, the rest at the ends, then closer than there is.
fn shared_out(people: usize, size: DVec2, own: DVec2) -> [usize; 4] {
    let (long, short) = (size.max_element(), size.min_element());
    let row = |length: f64| (length / own.x).floor().max(0.0) as usize;
    let beside = people.min(2 * row(long));
    let ends = (people - beside).min(2 * row(short - 2.0 * own.y));
    let beside = people - ends;
    let [l, f] = [beside, ends].map(|n| [n.div_ceil(2), n / 2]);
    if size.x >= size.y {
        [l[0], l[1], f[0], f[1]]
    } else {
        [f[0], f[1], l[0], l[1]]
    }
}

/// Where dish number `n` goes: the hero off the middle at a third of the frame,
/// the next towards the opposite third, the rest wherever is widest.
fn best_place(dish: &Item, n: usize, room: Room, way: Way, others: &[Body]) -> Body {
    const STEPS: i32 = 24;
    let thirds = [
        DVec2::new(0.17, -0.08),
        DVec2::new(-0.2, 0.14),
        DVec2::new(-0.16, -0.16),
    ];
    let size = room.high - room.low;
    let centre = (room.low + room.high) * 0.5;
    let wanted = thirds.get(n).map(|third| centre + *third * size);
    let turns =
        [0, 1].map(|quarters| Body::of(std::slice::from_ref(dish), &[DVec2::ZERO], quarters));
    let mut best = (f64::NEG_INFINITY, DVec2::ZERO, 0);
    for (turn, body) in turns.iter().enumerate() {
        let mut body = body.clone();
        // Turned only where that helps.
        let fits = body.size().cmple(size).all();
        let dear = turn as f64 * AIR * 2.0 + if fits { 0.0 } else { 1e6 };
        let stand = room.stand(&body, AIR);
        for row in 0..=STEPS {
            for column in 0..=STEPS {
                let step = DVec2::new(f64::from(column), f64::from(row)) / f64::from(STEPS);
                body.at = stand.low + step * (stand.high - stand.low);
                let gap = gap_to(&body, others);
                // Up to the wanted air more room counts most; after that, where.
                let far = if way.packed {
                    (body.at - room.low).element_sum()
                } else {
                    wanted.map_or(-gap.min(size.x), |wanted| body.at.distance(wanted))
                };
                let worth = gap.min(AIR) * 10.0 - far - dear;
                if worth > best.0 {
                    best = (worth, body.at, turn);
                }
            }
        }
    }
    let mut body = turns[best.2].clone();
    body.at = best.1;
    body.dish = n;
    body
}
