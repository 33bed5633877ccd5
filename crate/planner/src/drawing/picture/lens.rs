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
use crate::drawing::tone::{Tone, deeper, rgb};
use crate::drawing::{INK, Pen, flame};
use crate::figure::{Prop, food_of, form_of, prop_of};
use crate::layout::{Finish, Item, Layout};
use crate::optics::View;
use crate::scene::{inner, lifted, rise, sections, silhouette, vessel_of};
use crate::shape::{hull, is_convex};

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
    let at = item.at.vec();
    let levels: Vec<(f64, f64)> = sections(item, stands, within).collect();
    let widest = levels.iter().rposition(|(_, share)| *share >= WIDEST);
    let widest = widest.unwrap_or_default();
    let put = |z: f64, group: Group| {
        let moved = translation(eye.project(at, z)) + &enlarged(eye.scale(z));
        Group::new().set("transform", moved).add(group)
    };
    let z = levels.get(widest).map_or(stands.top, |level| level.0);
    let laid = put(z, thing(item, pen));
    let lean = eye
        .project(at, stands.top)
        .distance(eye.project(at, stands.base));
    let body = body(item).filter(|_| lean >= FLAT && !within);
    let Some(body) = body else {
        return Group::new().add(laid);
    };
    let slices: Vec<Vec<DVec2>> = levels
        .iter()
        .map(|(z, share)| {
            let ring: Vec<DVec2> = body.iter().map(|p| at + (*p - at) * *share).collect();
            lifted(&ring, eye, *z)
        })
        .collect();
    let side = Wall::of(item);
    let mut group = Group::new();
    for pair in slices[..=widest].windows(2) {
        group = side.around(group, &pair.concat(), pen, true);
    }
    group = group.add(laid);
    // What narrows to a neck or a taper is seen along its upper part as well.
    let kind = prop_of(&item.prop, catalogue::kind_of(&item.prop));
    let candle = kind == Some(Prop::Candle);
    if !candle && kind != Some(Prop::Carafe) {
        return group;
    }
    let upper = if candle { Wall::WAX } else { side };
    for pair in slices[widest..].windows(2) {
        group = upper.around(group, &pair.concat(), pen, false);
    }
    let Some(top) = slices.last().filter(|_| widest + 1 < slices.len()) else {
        return group;
    };
    let top = hull(top);
    let end = filled(
        &top,
        if candle {
            upper.tone
        } else {
            deeper(upper.tone)
        },
    );
    let group = group.add(end).add(inked(&top, pen));
    if candle {
        group.add(put(stands.top, flame(&form_of(item), pen)))
    } else {
        group
    }
}

/// The outline of what stands up of an item, without handles; nothing for what
/// is drawn without sides: food, and low things of uneven outline.
fn body(item: &Item) -> Option<Vec<DVec2>> {
    if food_of(&item.prop).is_some() {
        return None;
    }
    let silhouette = silhouette(item);
    if is_convex(&silhouette) {
        return Some(silhouette);
    }
    rim(item)
}

/// The outer edge of a vessel's rim: its mouth drawn out by the rim's width,
/// for handles lie outside it.
fn rim(item: &Item) -> Option<Vec<DVec2>> {
    let (centre, out) = (item.at.vec(), f64::from(item.size.rim()));
    let grown = |p: &DVec2| *p + (*p - centre).normalize_or_zero() * out;
    inner(item).map(|mouth| mouth.iter().map(grown).collect())
}

/// How the side of a thing is drawn.
struct Wall {
    tone: Tone,
    opacity: f64,
}

impl Wall {
    /// A wax candle.
    const WAX: Self = Self {
        tone: rgb(0xefe3c6),
        opacity: 1.0,
    };

    /// The side of an item.
    fn of(item: &Item) -> Self {
        let parts = catalogue::shown_parts(item);
        let tone = parts.rim.as_ref().and_then(|p| p.colours.first());
        Self {
            tone: tone.map_or(INK, |t| t.srgb.0),
            opacity: match item.finish {
                Finish::Clear | Finish::Liquid => GLASSY,
                _ => 1.0,
            },
        }
    }

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
    let (Some(mouth), Some(rim)) = (inner(item), rim(item)) else {
        return Group::new();
    };
    let top = rise(layout, item).top;
    let [mouth, rim] = [mouth, rim].map(|ring| lifted(&ring, eye, top));
    let mut ring = PathData::default();
    ring.polygon(rim.iter().copied());
    ring.polygon(mouth.iter().copied());
    let look = Look {
        fill: Some(Wall::of(item).tone),
        even_odd: true,
        ..Look::default()
    };
    Group::new()
        .add(path_node(ring, &look))
        .add(inked(&rim, pen))
        .add(inked(&mouth, pen))
}
