//! Outlines of things that stand up, as a view shows them.
//!
//! A thing is a pile of sections, each its outline narrowed to the width of its
//! profile there. Through a lens every section is drawn out from under the lens
//! ([`View::project`]), and what is seen is all of them and what lies between.
use glam::DVec2;

use super::rise::{Rise, narrowed, sections};
use super::{inner, silhouette};
use crate::layout::Item;
use crate::optics::View;
use crate::shape::{Region, area, hull, intersection, is_convex, union};

/// What leans by less is drawn as if it were flat at its top, mm. Our choice:
/// under the width of a drawn line.
const FLAT: f64 = 1.5;
/// Sections of what is not convex are laid this close, mm. Our choice.
const CLOSE: f64 = 5.0;
/// And there are no more of them than this.
const MOST: f64 = 12.0;

/// What a view shows of an item's outer surface; `within` when it lies in a
/// vessel.
#[must_use]
pub fn seen_outline(item: &Item, rise: Rise, within: bool, view: View) -> Vec<DVec2> {
    let outline = silhouette(item);
    let View::Lens { .. } = view else {
        return outline;
    };
    let at = item.at.vec();
    let lean = |z: f64| farthest(&outline, view) * (view.scale(z) - view.scale(rise.base));
    let total = lean(rise.top);
    if total < FLAT {
        return lifted(&outline, view, rise.top);
    }
    let shown = |(z, share): (f64, f64)| lifted(&narrowed(&outline, at, share), view, z);
    let levels: Vec<(f64, f64)> = sections(item, rise, within).collect();
    if is_convex(&outline) {
        let slices: Vec<Vec<DVec2>> = levels.into_iter().map(shown).collect();
        let between = slices.windows(2).map(|pair| hull(&pair.concat()));
        return joined(between.collect()).unwrap_or(outline);
    }
    let close = (total / CLOSE).ceil().clamp(1.0, MOST);
    let mut slices = Vec::new();
    for pair in levels.windows(2) {
        let steps = (close * (pair[1].0 - pair[0].0) / (rise.top - rise.base)).ceil();
        for n in 0..steps as usize {
            let t = n as f64 / steps;
            let mix = |a: f64, b: f64| a + (b - a) * t;
            slices.push(shown((
                mix(pair[0].0, pair[1].0),
                mix(pair[0].1, pair[1].1),
            )));
        }
    }
    slices.extend(levels.last().copied().map(shown));
    joined(slices).unwrap_or(outline)
}

/// The mouth of a vessel as a view shows it: the inside of its rim, at its top.
pub(super) fn seen_mouth(item: &Item, rise: Rise, view: View) -> Option<Vec<DVec2>> {
    inner(item).map(|inside| lifted(&inside, view, rise.top))
}

/// What of an outline is seen through a mouth; nothing when all of it is
/// hidden by the walls.
pub(super) fn through(outline: &[DVec2], mouth: &[DVec2]) -> Option<Vec<DVec2>> {
    let both = Region::from_polygon(outline).and_then(|o| {
        let m = Region::from_polygon(mouth)?;
        intersection(&o, &m)
    });
    both.ok().and_then(|seen| largest(&seen))
}

/// An outline as it is seen at a height.
#[must_use]
pub fn lifted(outline: &[DVec2], view: View, z: f64) -> Vec<DVec2> {
    outline.iter().map(|p| view.project(*p, z)).collect()
}

fn farthest(outline: &[DVec2], view: View) -> f64 {
    let View::Lens { under, .. } = view else {
        return 0.0;
    };
    outline
        .iter()
        .map(|p| p.distance(under))
        .fold(0.0, f64::max)
}

/// The outer line of outlines that hang together.
fn joined(outlines: Vec<Vec<DVec2>>) -> Option<Vec<DVec2>> {
    if outlines.len() == 1 {
        return outlines.into_iter().next();
    }
    let regions: Vec<Region> = outlines
        .iter()
        .filter_map(|o| Region::from_polygon(o).ok())
        .collect();
    let all: Vec<&Region> = regions.iter().collect();
    union(&all).ok().and_then(|whole| largest(&whole))
}

fn largest(region: &Region) -> Option<Vec<DVec2>> {
    let rings = region.rings().iter();
    rings.max_by(|a, b| area(a).total_cmp(&area(b))).cloned()
}
