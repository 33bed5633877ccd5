//! What must be shot before what, and what had better be.
//!
//! Grey card; empty table; hands that need no real food, with stand-ins; the
//! real food in and the clean exposure at once; hands that touch nothing; hands
//! that lift and return; hands that change food; the clean exposure again; at
//! last what is shot in case (common practice, no source).
use super::needs::Food;
use super::states::{changes, held_in};
use crate::layout::{As, Exposure, ExposureKind, Id, Layout, Parts};

/// What an exposure is, as far as its turn goes.
#[derive(Clone, Debug)]
pub(super) struct Turn {
    kind: ExposureKind,
    /// What of the food is changed in it.
    changed: Vec<(Id, Parts)>,
    /// Its place among those of the same state of the food.
    rank: u8,
}

/// The hands that can be shot before any real food is on the table.
const WAITING: u8 = 0;

/// When an exposure is shot by what it is for: what measures the light and the
/// bare table come before the food, all the rest with it.
const fn turn_of(kind: ExposureKind) -> u8 {
    match kind {
        ExposureKind::Card => 0,
        ExposureKind::Empty => 1,
        ExposureKind::Clean | ExposureKind::Hands => 2,
        ExposureKind::Steam | ExposureKind::NoGlare => 3,
        ExposureKind::Insurance => 4,
    }
}

/// The turns of all exposures of a layout.
pub(super) fn turns(layout: &Layout, foods: &[Food]) -> Vec<Turn> {
    let stood_in = |n: usize| {
        let own = foods.iter().filter(|food| food.stood_in);
        let needed = own.clone().any(|food| food.real >> n & 1 == 1);
        own.count() > 0 && !needed
    };
    let each = layout.exposures.iter().enumerate().map(|(n, exposure)| {
        let changed = changes(exposure);
        let clean = exposure.kind == ExposureKind::Clean;
        let rank = match (clean, changed.is_empty()) {
            (true, true) => 1,
            (true, false) => 5,
            (false, false) => 4,
            (false, true) if stood_in(n) => WAITING,
            (false, true) if lifts(layout, exposure) => 3,
            (false, true) => 2,
        };
        Turn {
            kind: exposure.kind,
            changed,
            rank,
        }
    });
    each.collect()
}

/// Whether anything is taken up, put aside or held.
fn lifts(layout: &Layout, exposure: &Exposure) -> bool {
    let told = exposure.states.iter().any(|s| s.is != As::Set);
    let items = layout.items.iter();
    told || items
        .filter(|i| held_in(layout, exposure.id, i.id).next().is_some())
        .count()
        > 0
}

fn within(some: &[(Id, Parts)], all: &[(Id, Parts)]) -> bool {
    some.iter().all(|c| all.contains(c))
}

impl Turn {
    /// Whether this must be shot before the other: by what they are for, by the
    /// state of the food, a clean exposure before the hands while none of it is
    /// changed, for anything may be nudged, and after them once they have
    /// changed it.
    pub(super) fn before(&self, other: &Self) -> bool {
        let (own, next) = (turn_of(self.kind), turn_of(other.kind));
        if own != next && (own < 2 || next < 2) {
            return own < next;
        }
        if self.changed != other.changed {
            return within(&self.changed, &other.changed);
        }
        let clean = |turn: &Self| turn.kind == ExposureKind::Clean;
        let waits = self.rank == WAITING || other.rank == WAITING;
        if clean(self) != clean(other) && own == next && !waits {
            // It is the hands that change the food.
            return clean(self) == self.changed.is_empty();
        }
        own < next
    }

    /// Whether the same food is changed in two ways.
    pub(super) fn at_odds(&self, other: &Self) -> bool {
        !within(&self.changed, &other.changed) && !within(&other.changed, &self.changed)
    }

    /// Whether this had better come after the other, though it need not.
    pub(super) fn rather_after(&self, other: &Self) -> bool {
        let among = |turn: &Self| turn_of(turn.kind) == 2;
        among(self) && among(other) && self.changed == other.changed && self.rank > other.rank
    }
}
