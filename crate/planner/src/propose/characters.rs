//! The ways of different character that a search goes.
use super::limits::Limits;
use super::steps::Steps;
use super::wish::{May, Wish};
use crate::layout::Layout;

/// What is particular to one way. All of it is our choice.
#[derive(Clone, Copy)]
pub(super) struct Character {
    /// The sentence that says what it is.
    pub(super) name: &'static str,
    /// What it changes at most.
    pub(super) may: May,
    /// The longest step, mm.
    pub(super) reach: f64,
    /// Whether bodies change places.
    pub(super) swaps: bool,
    /// What each thing changed costs.
    pub(super) by_change: f64,
}

/// As little as helps.
const LEAST: Character = Character {
    name: "propose-least",
    may: May::ALL,
    reach: 120.0,
    swaps: false,
    by_change: 3.0,
};
/// The dishes laid anew, and cloth and crops after them.
const DISHES: Character = Character {
    name: "propose-dishes",
    may: May {
        hands: false,
        light: false,
        ..May::ALL
    },
    reach: 400.0,
    swaps: true,
    by_change: 0.6,
};
/// Cloth, hands, crops and light give way to the dishes.
const AROUND: Character = Character {
    name: "propose-around",
    may: May {
        dishes: false,
        ..May::ALL
    },
    reach: 300.0,
    swaps: false,
    by_change: 0.6,
};
/// Anything, as far as it takes.
const FREE: Character = Character {
    name: "propose-free",
    may: May::ALL,
    reach: 400.0,
    swaps: true,
    by_change: 0.3,
};
/// For one finding.
const CURE: Character = Character {
    name: "propose-cure",
    may: May::ALL,
    reach: 250.0,
    swaps: false,
    by_change: 2.0,
};

/// How many different proposals are looked for.
pub const SEVERAL: usize = 3;

/// The ways that can be gone. Where what may be changed leaves too few of
/// different character, others go the free way from other chances.
pub(super) fn characters(limits: &Limits, layout: &Layout, wish: &Wish) -> Vec<Character> {
    let own = |c: &Character| {
        let may = c.may.and(wish.may);
        !Steps::of(limits, layout, may, c.reach, c.swaps).is_empty()
    };
    if !wish.several {
        let one = if wish.weighing.cure.is_some() {
            CURE
        } else {
            Character {
                by_change: 0.0,
                ..FREE
            }
        };
        return std::iter::once(one).filter(own).collect();
    }
    let mut out: Vec<Character> = [LEAST, DISHES, AROUND].into_iter().filter(own).collect();
    while !out.is_empty() && out.len() < SEVERAL {
        out.push(FREE);
    }
    out
}
