//! Starting arrangements: the same dishes and place settings in up to three
//! ways of different character.
//!
//! Of each character many ways are weighed by the published measures of balance
//! and triangle, the best of them are given room, and of those that the
//! readings of gaps, crops and copy space have nothing against the one with
//! the best scores is taken. Where there is none the character is left out.
mod set;
#[cfg(test)]
mod tests;
mod ways;

use glam::DVec2;

use crate::commands::room::{Body, gap_to, push_apart};
use crate::layout::Layout;
use crate::measures::{balance_score, centroid, triangle_score};
use crate::order;
use crate::readings::{Study, misplaced, structure};
use crate::words::say;
use set::Set;
pub use ways::Character;
use ways::{Way, ways};

/// One way to arrange a table.
pub struct Arrangement {
    /// What it goes by.
    pub character: Character,
    /// The layout so arranged.
    pub layout: Layout,
}

/// How many ways of a character are read once they have room; how many of the
/// most promising are tried to be given room, and how many of the rest at most.
/// Our choice.
const READ: usize = 6;
const FIRST: usize = 12;
const TRIED: usize = 24;
/// What a crop line that only just touches something costs, in points of both
/// scores. Our choice.
const BRUSHED: f64 = 40.0;
/// Fewest dishes that make an arrangement.
const FEWEST: usize = 3;

impl Character {
    /// All there are, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Ring, Self::Diagonal, Self::Side];

    /// What it is called.
    #[must_use]
    pub fn name(self) -> String {
        say(self.id(), &[])
    }

    const fn id(self) -> &'static str {
        match self {
            Self::Ring => "arranged-ring",
            Self::Diagonal => "arranged-diagonal",
            Self::Side => "arranged-side",
        }
    }
}

/// Whether there is something to arrange: at least three dishes that may move,
/// no hands and exposures that rest on how things stand, and a frame that does
/// not lie askew.
#[must_use]
pub fn is_arrangeable(layout: &Layout) -> bool {
    let rests = layout.exposures.iter().any(|e| !e.states.is_empty());
    let free = layout.items.iter().filter(|i| set::is_dish(i));
    layout.hands.is_empty()
        && !rests
        && layout.frame.turn.half_degrees() == 0
        && free.count() >= FEWEST
}

/// Up to three arrangements of a layout's dishes, each of another character.
#[must_use]
pub fn arrangements(layout: &Layout) -> Vec<Arrangement> {
    let all = Character::ALL.into_iter();
    all.filter_map(|character| arrangement(layout, character))
        .collect()
}

/// The best arrangement of this character; `None` where there is no room for
/// one, or the table is none that can be arranged.
#[must_use]
pub fn arrangement(layout: &Layout, character: Character) -> Option<Arrangement> {
    if !is_arrangeable(layout) {
        return None;
    }
    let set = Set::of(layout);
    let mut wanted: Vec<(f64, Way)> = ways(&set, character, layout.id.0)
        .into_iter()
        .map(|way| (promise(&set, &way.places), way))
        .collect();
    order::sort(&mut wanted, |a, b| b.0.total_cmp(&a.0));
    let mut best: Option<(f64, Layout)> = None;
    let mut read = 0;
    // Those that promise most are much alike: where they have no room, others do.
    let stride = (wanted.len() / TRIED).max(1);
    let rest = wanted.iter().skip(FIRST).step_by(stride).take(TRIED);
    for (_, way) in wanted.iter().take(FIRST).chain(rest) {
        let Some(bodies) = given_room(&set, way) else {
            continue;
        };
        if !holds(&set, character, &bodies) {
            continue;
        }
        read += 1;
        if read > READ {
            break;
        }
        let arranged = set.put(layout, &bodies);
        let study = Study::new(&arranged);
        let (misplaced, brushed) = misplaced(&study);
        if misplaced > 0 {
            continue;
        }
        let worth = together(structure(&study)) - BRUSHED * brushed as f64;
        if best.as_ref().is_none_or(|b| worth > b.0) {
            best = Some((worth, arranged));
        }
    }
    best.map(|(_, layout)| Arrangement { character, layout })
}

/// Both scores as one to choose by, the lower counting twice. Our choice.
fn together([balance, triangle]: [f64; 2]) -> f64 {
    balance + triangle + balance.min(triangle)
}

/// What a way promises by balance and triangle before it is given room.
fn promise(set: &Set, places: &[DVec2]) -> f64 {
    let masses = set.masses(places);
    let balance = centroid(&masses).and_then(|at| balance_score(set.size, at));
    let triangle = match masses[..] {
        [a, b, c, ..] => triangle_score(set.size, [a.at, b.at, c.at]),
        _ => None,
    };
    together([balance, triangle].map(Option::unwrap_or_default))
}

/// The bodies of a way where everything has room; `None` where it has not.
fn given_room(set: &Set, way: &Way) -> Option<Vec<Body>> {
    // Places are whole millimetres.
    let least = set.air - 2.0;
    let mut bodies = set.bodies.clone();
    let count = bodies.len();
    for (body, at) in bodies.iter_mut().zip(&way.places) {
        body.at = *at;
    }
    bodies.extend(way.clear.map(Body::kept_free));
    let placed = bodies.clone();
    if push_apart(&mut bodies, set.room, set.air) < least {
        bodies = placed;
        one_by_one(set, &mut bodies);
        if push_apart(&mut bodies, set.room, set.air) < least {
            return None;
        }
    }
    bodies.truncate(count);
    Some(bodies)
}

/// Puts the dishes one after another where there is room nearest to where each
/// is wanted.
fn one_by_one(set: &Set, bodies: &mut [Body]) {
    const STEPS: i32 = 20;
    let dishes = set.dishes();
    let mut there: Vec<Body> = (0..bodies.len())
        .filter(|n| !dishes.contains(n))
        .map(|n| bodies[n].clone())
        .collect();
    for n in dishes {
        let body = &mut bodies[n];
        let room = body.within.unwrap_or(set.room);
        let (wanted, stand) = (body.at, room.stand(body, set.air));
        let mut best = (f64::NEG_INFINITY, wanted);
        for step in 0..(STEPS + 1) * (STEPS + 1) {
            let share = DVec2::new(f64::from(step % (STEPS + 1)), f64::from(step / (STEPS + 1)));
            body.at = stand.low + (stand.high - stand.low) * share / f64::from(STEPS);
            let short = (set.air - gap_to(body, &there)).max(0.0);
            let worth = -10.0 * short - body.at.distance(wanted);
            if worth > best.0 {
                best = (worth, body.at);
            }
        }
        body.at = best.1;
        there.push(body.clone());
    }
}

/// Whether what came of a way still is of its character. Figures are our
/// choice.
fn holds(set: &Set, character: Character, bodies: &[Body]) -> bool {
    let inner = set.inner();
    let middle = (inner.low + inner.high) * 0.5;
    let share = |n: usize| (bodies[n].at - middle) / set.size;
    let dishes = set.dishes();
    match (character, set.hero) {
        (Character::Ring, None) => false,
        (Character::Ring, Some(hero)) => share(hero).length() < 0.15,
        (Character::Diagonal, _) => {
            let places: Vec<DVec2> = dishes.iter().map(|n| share(*n)).collect();
            correlation(&places).abs() > 0.55
        }
        // What is kept clear is clear, or it was not given room.
        (Character::Side, _) => true,
    }
}

/// How much places lie along one line that rises or falls.
fn correlation(places: &[DVec2]) -> f64 {
    let mean = places.iter().sum::<DVec2>() / places.len() as f64;
    let (mut squares, mut product) = (DVec2::ZERO, 0.0);
    for place in places {
        let off = *place - mean;
        squares += off * off;
        product += off.x * off.y;
    }
    product / (squares.x * squares.y).sqrt().max(f64::MIN_POSITIVE)
}
