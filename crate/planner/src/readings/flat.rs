//! Marks found through the lens, laid onto the drawing from above.
//!
//! A point of a mark lies on what its finding is about: the side of the thing
//! it fits best, foot or top, says how high it is, and from there it is brought
//! back under itself.
use glam::DVec2;

use super::finding::Mark;
use crate::layout::{Id, Layout};
use crate::optics::View;
use crate::scene::{arm, rise, seen_outline, silhouette, vessel_of};
use crate::shape::{contains, to_edge};

/// A mark belongs to a thing whose outline it comes this near to, mm. Our
/// choice: a little more than a reading looks outside an outline.
const NEAR: f64 = 8.0;

/// One thing a finding is about.
struct Stood {
    /// Its outline as it is seen.
    seen: Vec<DVec2>,
    /// Its outline from above.
    flat: Vec<DVec2>,
    /// The heights its edges may be at, mm; the top last.
    heights: [f64; 2],
}

/// The marks of a finding about these things as they lie on the drawing from
/// above.
#[must_use]
pub fn flat_marks(layout: &Layout, about: &[Id], marks: &[Mark]) -> Vec<Mark> {
    let view = View::of(layout);
    let View::Lens { under, .. } = view else {
        return marks.to_vec();
    };
    let stand = |id: &Id| stood(layout, *id, view);
    let things: Vec<Stood> = about.iter().flat_map(stand).collect();
    let back = |p: DVec2, z: f64| under + (p - under) / view.scale(z);
    let laid = |p: DVec2, on_top: bool| -> DVec2 {
        let away = |thing: &&Stood| to_edge(&thing.seen, p);
        let holds = |thing: &&Stood| contains(&thing.seen, p) || away(thing) < NEAR;
        let own = things.iter().filter(holds);
        let nearest = own.min_by(|a, b| away(a).total_cmp(&away(b)));
        nearest.map_or(p, |thing| {
            let [foot, top] = thing.heights.map(|z| back(p, z));
            let off = |q: DVec2| to_edge(&thing.flat, q);
            if !on_top && off(foot) < off(top) {
                foot
            } else {
                top
            }
        })
    };
    // What is mirrored lies on top, however far within the outline.
    let flat = |mark: &Mark| {
        let on_top = matches!(mark, Mark::Glare { .. });
        mark.carried(&|p| laid(p, on_top))
    };
    marks.iter().map(flat).collect()
}

/// How a thing, or each part of an arm, stands; nothing for cloth and crops,
/// which lie flat.
fn stood(layout: &Layout, id: Id, view: View) -> Vec<Stood> {
    if let Some(item) = layout.items.iter().find(|i| i.id == id) {
        let stands = rise(layout, item);
        let within = vessel_of(layout, item).is_some();
        return vec![Stood {
            seen: seen_outline(item, stands, within, view),
            flat: silhouette(item),
            heights: [stands.base, stands.top],
        }];
    }
    let Some(hand) = layout.hands.iter().find(|h| h.id == id) else {
        return Vec::new();
    };
    let arm = arm(layout, hand);
    let z = f64::from(hand.height);
    [arm.hand, arm.forearm, arm.sleeve]
        .into_iter()
        .filter(|outline| !outline.is_empty())
        .map(|flat| Stood {
            seen: flat.iter().map(|p| view.project(*p, z)).collect(),
            flat,
            heights: [z, z],
        })
        .collect()
}
