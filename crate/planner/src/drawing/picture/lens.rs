//! Things as the lens sees them: what stands up grows and leans outward.
//!
//! The drawing from above is laid at the height where the thing is widest; the
//! sections of its profile below and above are drawn as walls round it.
use glam::DVec2;
use svg::node::element::Group;

use super::edge::{filled, inked};
use super::thing::thing;
use super::view::{enlarged, translation};
use crate::catalogue;
use crate::drawing::path::{PathData, short};
use crate::drawing::sketch::{Look, path_node};
use crate::drawing::tone::{Tone, deeper};
use crate::drawing::{INK, Pen};
use crate::layout::{Finish, Item, Layout};
use crate::optics::View;
use crate::scene::{inner, lifted, rise, sections, silhouette, vessel_of};
use crate::shape::hull;

/// What leans by less than this is drawn as if it were flat, mm.
const FLAT: f64 = 3.0;
/// A section this wide, of the outline, carries the drawing from above.
const WIDEST: f64 = 0.99;
/// Opacity of the walls of what can be seen through.
const GLASSY: f64 = 0.42;

/// An item where and as the lens sees it.
pub(super) fn leaning(layout: &Layout, item: &Item, eye: View, pen: &Pen) -> Group {
    let stands = rise(layout, item);
    let within = vessel_of(layout, item).is_some();
    let outline = silhouette(item);
    let at = item.at.vec();
    let levels: Vec<(f64, f64)> = sections(item, stands, within).collect();
    let widest = levels.iter().rposition(|(_, share)| *share >= WIDEST);
    let widest = widest.unwrap_or_default();
    let z = levels.get(widest).map_or(stands.top, |level| level.0);
    let laid = Group::new()
        .set(
            "transform",
            translation(eye.project(at, z)) + &enlarged(eye.scale(z)),
        )
        .add(thing(item, pen));
    let slices: Vec<Vec<DVec2>> = levels
        .iter()
        .map(|(z, share)| {
            let ring: Vec<DVec2> = outline.iter().map(|p| at + (*p - at) * *share).collect();
            lifted(&ring, eye, *z)
        })
        .collect();
    let lean = eye
        .project(at, stands.top)
        .distance(eye.project(at, stands.base));
    if lean < FLAT || within || slices.len() < 2 {
        return Group::new().add(laid);
    }
    let parts = catalogue::shown_parts(item);
    let own = parts.rim.as_ref().or(parts.food.as_ref());
    let tone = own
        .and_then(|p| p.colours.first())
        .map_or(INK, |t| t.srgb.0);
    let look = Wall {
        tone,
        opacity: match item.finish {
            Finish::Clear | Finish::Liquid => GLASSY,
            _ => 1.0,
        },
    };
    let mut group = Group::new();
    for pair in slices[..=widest].windows(2) {
        group = look.around(group, &pair.concat(), pen, true);
    }
    group = group.add(laid);
    for pair in slices[widest..].windows(2) {
        group = look.around(group, &pair.concat(), pen, false);
    }
    match slices.last() {
        // What is narrow at its top ends in a mouth or a point that is seen.
        Some(top) if widest + 1 < slices.len() => {
            let top = hull(top);
            group
                .add(filled(&top, deeper(look.tone)))
                .add(inked(&top, pen))
        }
        _ => group,
    }
}

/// How the side of a thing is drawn.
struct Wall {
    tone: Tone,
    opacity: f64,
}

impl Wall {
    /// Adds what lies between two sections.
    fn around(&self, group: Group, both: &[DVec2], pen: &Pen, below: bool) -> Group {
        let outline = hull(both);
        let tone = if below { deeper(self.tone) } else { self.tone };
        let side = filled(&outline, tone).set("fill-opacity", short(self.opacity));
        group.add(side).add(inked(&outline, pen))
    }
}

/// The rim of a vessel once more, over what of its food the near wall hides.
pub(super) fn lip(layout: &Layout, item: &Item, eye: View, pen: &Pen) -> Group {
    let Some(mouth) = inner(item) else {
        return Group::new();
    };
    let top = rise(layout, item).top;
    let centre = item.at.vec();
    // Handles lie outside the rim: it is the mouth drawn out by its width.
    let out = f64::from(item.size.rim());
    let grown = |p: &DVec2| *p + (*p - centre).normalize_or_zero() * out;
    let rim: Vec<DVec2> = mouth.iter().map(grown).collect();
    let [mouth, rim] = [mouth, rim].map(|ring| lifted(&ring, eye, top));
    let parts = catalogue::shown_parts(item);
    let tone = parts.rim.as_ref().and_then(|p| p.colours.first());
    let mut ring = PathData::default();
    ring.polygon(rim.iter().copied());
    ring.polygon(mouth.iter().copied());
    let look = Look {
        fill: Some(tone.map_or(INK, |t| t.srgb.0)),
        even_odd: true,
        ..Look::default()
    };
    Group::new()
        .add(path_node(ring, &look))
        .add(inked(&rim, pen))
        .add(inked(&mouth, pen))
}
