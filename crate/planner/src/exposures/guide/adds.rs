//! What each exposure adds to the one that lies under all of them, its light
//! included.
use glam::DVec2;

use crate::exposures::in_exposure;
use crate::exposures::regions::held;
use crate::layout::{Exposure, ExposureKind, Hand, Id, Item, Layout};
use crate::light::Plate;
use crate::optics::View;
use crate::scene::{
    arm, lifted, narrowed, rise, sections, seen_outline, silhouette, vessel_of, worked_with,
};
use crate::shape::{Region, union};

/// Level slices of a thing that throws a shadow lie no farther apart, mm. Our
/// choice: less than the growth of a guide by far.
const SLICE: f64 = 12.0;

/// What one exposure adds.
#[derive(Clone, Debug)]
pub(super) struct Adds {
    /// Which exposure.
    pub(super) exposure: Id,
    /// Its arms, what they hold and the things that are otherwise than in the
    /// exposure under all, in either of both places, as the lens sees them.
    pub(super) solid: Region,
    /// What takes light there and only there.
    pub(super) plates: Vec<Plate>,
    /// The things that are otherwise, as they are; none for what is away.
    pub(super) things: Vec<(Id, Option<Item>)>,
}

/// The exposures of a layout as their pictures are laid on each other.
#[derive(Clone, Debug)]
pub(super) struct Stack {
    /// The one under all others.
    pub(super) ground: Id,
    /// Those above it that add anything, the lowest first.
    pub(super) above: Vec<Adds>,
}

/// Whether an exposure becomes part of the picture: what measures the light,
/// shows the bare table or is kept in case does not.
const fn is_shown(kind: ExposureKind) -> bool {
    match kind {
        ExposureKind::Clean | ExposureKind::Hands | ExposureKind::Steam | ExposureKind::NoGlare => {
            true
        }
        ExposureKind::Card | ExposureKind::Empty | ExposureKind::Insurance => false,
    }
}

impl Stack {
    /// The stack of a layout; nothing without an exposure to lie under all.
    pub(super) fn of(layout: &Layout) -> Option<Self> {
        let shown = || layout.exposures.iter().filter(|e| is_shown(e.kind));
        let clean = shown().find(|e| e.kind == ExposureKind::Clean);
        let ground = clean.or_else(|| shown().next())?.id;
        let below = in_exposure(layout, ground);
        let mut above: Vec<Adds> = Vec::new();
        for exposure in shown().filter(|e| e.id != ground) {
            let own = Adds::of(layout, exposure, &below, &above);
            above.extend((!own.solid.is_empty()).then_some(own));
        }
        Some(Self { ground, above })
    }

    /// The picture that all of them make together.
    pub(super) fn combined(&self, layout: &Layout) -> Layout {
        let mut out = in_exposure(layout, self.ground);
        for adds in &self.above {
            let then = in_exposure(layout, adds.exposure);
            out.hands.extend(then.hands);
            for (id, is) in &adds.things {
                match is {
                    None => out.items.retain(|i| i.id != *id),
                    Some(thing) => out
                        .items
                        .iter_mut()
                        .filter(|i| i.id == *id)
                        .for_each(|i| *i = thing.clone()),
                }
            }
        }
        let place = |hand: &Hand| layout.hands.iter().position(|h| h.id == hand.id);
        crate::order::sort(&mut out.hands, |a, b| place(a).cmp(&place(b)));
        out
    }
}

impl Adds {
    /// What an exposure adds to the one `below`. A thing that one of those
    /// `before` shows in the same way is left to it.
    fn of(layout: &Layout, exposure: &Exposure, below: &Layout, before: &[Self]) -> Self {
        let view = View::of(layout);
        let then = in_exposure(layout, exposure.id);
        let mut outlines = Vec::new();
        let mut level = Vec::new();
        for (height, part) in level_parts(layout, exposure.id) {
            outlines.push(lifted(&part, view, height));
            level.push((height, part));
        }
        let mut things = Vec::new();
        for item in &below.items {
            let is = then.items.iter().find(|i| i.id == item.id);
            if is == Some(item) {
                continue;
            }
            let own = (item.id, is.cloned());
            if before.iter().any(|adds| adds.things.contains(&own)) {
                continue;
            }
            things.push(own);
            outlines.push(seen(below, item, view));
            outlines.extend(is.map(|is| seen(&then, is, view)));
            // Food that changes where it lies takes the same light.
            if is.is_none_or(|is| is.at != item.at || is.turn != item.turn) {
                sliced(below, item, &mut level);
                if let Some(is) = is {
                    sliced(&then, is, &mut level);
                }
            }
        }
        Self {
            exposure: exposure.id,
            solid: joined(&outlines),
            plates: plates(level),
            things,
        }
    }
}

/// The outlines that come into an exposure with its hands, each with the height
/// at which it lies: hand, forearm and sleeve, what is held and what is worked
/// with.
#[must_use]
pub fn level_parts(layout: &Layout, exposure: Id) -> Vec<(f64, Vec<DVec2>)> {
    let mut out = Vec::new();
    for hand in layout.hands.iter().filter(|h| h.exposure == exposure) {
        let arm = arm(layout, hand);
        let mut parts = vec![arm.hand.clone(), arm.forearm.clone(), arm.sleeve.clone()];
        parts.extend(held(layout, hand, &arm));
        parts.extend(worked_with(layout, hand, &arm));
        parts.retain(|part| !part.is_empty());
        out.extend(parts.into_iter().map(|part| (f64::from(hand.height), part)));
    }
    out
}

/// A thing as the lens sees it where it stands.
fn seen(layout: &Layout, item: &Item, view: View) -> Vec<DVec2> {
    let inside = vessel_of(layout, item).is_some();
    seen_outline(item, rise(layout, item), inside, view)
}

/// A thing in level slices: clear glass too, for its shadow is seen.
fn sliced(layout: &Layout, item: &Item, out: &mut Vec<(f64, Vec<DVec2>)>) {
    let inside = vessel_of(layout, item).is_some();
    let outline = silhouette(item);
    let levels: Vec<(f64, f64)> = sections(item, rise(layout, item), inside).collect();
    for pair in levels.windows(2) {
        let [(low, from), (high, to)] = [pair[0], pair[1]];
        let count = ((high - low) / SLICE).ceil().max(1.0);
        for n in 1..=count as usize {
            let t = n as f64 / count;
            let share = from + (to - from) * t;
            let ring = narrowed(&outline, item.at.vec(), share);
            out.push((low + (high - low) * t, ring));
        }
    }
}

/// Outlines by height, joined where they lie at one.
fn plates(mut level: Vec<(f64, Vec<DVec2>)>) -> Vec<Plate> {
    crate::order::sort(&mut level, |a, b| a.0.total_cmp(&b.0));
    let same = level.chunk_by(|a, b| a.0 == b.0);
    same.map(|same| Plate {
        height: same[0].0,
        region: joined(&same.iter().map(|(_, o)| o.clone()).collect::<Vec<_>>()),
    })
    .collect()
}

fn joined(outlines: &[Vec<DVec2>]) -> Region {
    let regions = outlines.iter().filter_map(|o| Region::from_polygon(o).ok());
    let regions: Vec<Region> = regions.collect();
    union(&regions.iter().collect::<Vec<_>>()).unwrap_or_default()
}
