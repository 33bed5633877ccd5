//! Where the light throws the shadow of a thing.
use glam::DVec2;
use svg::node::element::Group;

use crate::catalogue::{self, Kind};
use crate::drawing::{Pen, food_pieces, shadows};
use crate::figure::{food_of, form_of, thing_outline};
use crate::layout::{Item, Layout};

/// The shadow of an item that stands on the table, about its own centre;
/// nothing for what lies in a dish, is flat or strewn.
pub(super) fn cast(layout: &Layout, item: &Item, pen: &Pen) -> Option<Group> {
    let strewn = catalogue::prop(&item.prop).is_some_and(|entry| entry.kind == Kind::Scatter);
    if item.height <= 0 || item.on.is_some() || strewn {
        return None;
    }
    let (offset, spread) = thrown(layout, item.height, pen.fall);
    let pieces = match food_of(&item.prop) {
        Some(food) => food_pieces(food, &form_of(item)),
        None => vec![thing_outline(item)],
    };
    Some(shadows(&pieces, offset, f64::from(item.height), spread))
}

/// How far the top of a thing throws its shadow, and half the blur at its tip:
/// similar triangles from the middle and the edges of the light.
pub(super) fn thrown(layout: &Layout, height: i32, fall: DVec2) -> (DVec2, f64) {
    let light = &layout.light;
    let h = f64::from(height);
    let above = (f64::from(light.height_above_table) - h).max(1.0);
    let offset = fall * f64::from(light.distance) * h / above;
    (offset, f64::from(light.width) * h / above * 0.5)
}
