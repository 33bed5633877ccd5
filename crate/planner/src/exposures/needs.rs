//! Which food an exposure needs for real, and how long each may stand there.
use std::cell::OnceCell;

use glam::DVec2;

use super::states::{held_in, state_of};
use crate::catalogue::{Evidence, holds, kind_of};
use crate::layout::{As, Exposure, ExposureKind, Id, Item, Layout};
use crate::scene::silhouette;
use crate::shape::{contains, on_side};

/// Fingertips this near to a thing are at it, mm. Our choice.
const AT: f64 = 30.0;

/// What a holding time rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Founded {
    /// The user said it of this very thing.
    Told,
    /// The catalogue has it.
    Catalogue(Evidence),
}

/// Food, and the exposures it is needed in, by their places in the list.
#[derive(Clone, Debug, PartialEq)]
pub struct Food {
    /// Which thing.
    pub item: Id,
    /// How long it looks right on the set, minutes, and what says so; none for
    /// what keeps.
    pub hold: Option<(i32, Founded)>,
    /// Whether something stands in for it until it is needed.
    pub stood_in: bool,
    /// The exposures it lies on the table in, itself or what stands in for it.
    pub there: u64,
    /// Those of them that show it: all without hands, and those whose hands
    /// are at it or change, move or lift it. Of any other the clean exposure
    /// shows it.
    pub real: u64,
}

impl Food {
    /// The exposures that have the real food on the table before them.
    #[must_use]
    pub const fn on_set(&self) -> u64 {
        if self.stood_in { self.real } else { self.there }
    }
}

/// How long a thing looks right on the set, minutes: what is said of it, or
/// what is usual.
#[must_use]
pub fn hold_of(item: &Item) -> Option<(i32, Founded)> {
    let told = item.hold_minutes.map(|minutes| (minutes, Founded::Told));
    let usual = || {
        let hold = holds(&item.prop)?;
        Some((hold.minutes, Founded::Catalogue(hold.evidence)))
    };
    told.or_else(usual)
}

/// All food, in the order of ids. What is shot without the spread, a grey
/// card and the bare table, needs none of it.
#[must_use]
pub fn foods(layout: &Layout) -> Vec<Food> {
    let is_food = |item: &&Item| {
        kind_of(&item.prop).is_food() || hold_of(item).is_some() || !item.stand_in.is_empty()
    };
    let each = layout.items.iter().filter(is_food).map(|item| {
        let below = below(layout, item);
        // Every exposure asks for it, if any does.
        let outline = OnceCell::new();
        let outline = || outline.get_or_init(|| silhouette(item));
        let (mut there, mut real) = (0, 0);
        for (n, exposure) in layout.exposures.iter().enumerate() {
            let bare = !exposure.kind.shows_food();
            let gone = below.iter().any(|i| state_of(exposure, i.id) == As::Absent);
            let bit = 1 << n;
            if bare || gone {
                // What a hand holds is there all the same.
                let held = |i: &Item| held_in(layout, exposure.id, i.id).next().is_some();
                if !bare && below.iter().any(|i| held(i)) {
                    there |= bit;
                    real |= bit;
                }
                continue;
            }
            there |= bit;
            if exposure.kind != ExposureKind::Hands || touched(layout, exposure, &below, &outline) {
                real |= bit;
            }
        }
        Food {
            item: item.id,
            hold: hold_of(item),
            stood_in: !item.stand_in.is_empty(),
            there,
            real,
        }
    });
    let mut out: Vec<Food> = each.collect();
    crate::order::sort(&mut out, |a, b| a.item.cmp(&b.item));
    out
}

/// A thing and all it stands on.
fn below<'a>(layout: &'a Layout, item: &'a Item) -> Vec<&'a Item> {
    let mut out = vec![item];
    while let Some(on) = out.last().and_then(|i| i.on) {
        let Some(next) = layout.items.iter().find(|i| i.id == on) else {
            break;
        };
        out.push(next);
    }
    out
}

/// Whether the hands of an exposure are at a thing of this outline, or do
/// something to it or to what it stands on.
fn touched<'a>(
    layout: &Layout,
    exposure: &Exposure,
    below: &[&Item],
    outline: &dyn Fn() -> &'a Vec<DVec2>,
) -> bool {
    let done = |i: &&Item| {
        let held = held_in(layout, exposure.id, i.id).next().is_some();
        held || state_of(exposure, i.id) != As::Set
    };
    let own = |h: &&crate::layout::Hand| h.exposure == exposure.id;
    let at = |p: DVec2| {
        let outline = outline();
        let sides = outline.iter().zip(outline.iter().cycle().skip(1));
        contains(outline, p)
            || sides
                .map(|(a, b)| on_side(p, *a, *b).distance(p))
                .any(|far| far <= AT)
    };
    below.iter().any(done) || layout.hands.iter().filter(own).any(|h| at(h.target.vec()))
}
