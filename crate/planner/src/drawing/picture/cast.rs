//! Where the light throws the shadow of a thing.
use glam::{DVec2, dvec2};
use svg::node::element::Group;

use crate::catalogue;
use crate::drawing::{Pen, food_pieces, shadows};
use crate::figure::outline::bounds;
use crate::figure::{food_of, form_of, thing_outline};
use crate::layout::{Item, Layout};
use crate::shape::{CHORD_ERROR, Region, contains, table_outline};

/// The shadow of an item that stands on the table, about its own centre;
/// nothing for what lies in a dish, is flat or strewn.
pub(super) fn cast(layout: &Layout, item: &Item, pen: &Pen) -> Option<Group> {
    if item.height <= 0 || item.on.is_some() || catalogue::is_strewn(&item.prop) {
        return None;
    }
    let (offset, spread) = thrown(layout, item.height, pen.fall);
    let pieces = match food_of(&item.prop) {
        Some(food) => food_pieces(food, &form_of(item)),
        None => vec![thing_outline(item)],
    };
    let table = table_outline(&layout.table, CHORD_ERROR);
    let at = item.at.vec();
    // Most shadows stay on the table and need no cutting.
    let (low, high) = bounds(&pieces.concat());
    let reach = DVec2::splat(spread * 1.2);
    let (from, to) = (
        low.min(low + offset * 1.2) - reach + at,
        high.max(high + offset * 1.2) + reach + at,
    );
    let corners = [from, dvec2(to.x, from.y), to, dvec2(from.x, to.y)];
    let whole = corners.iter().all(|corner| contains(&table, *corner));
    let region = Region::from_polygon(&table).unwrap_or_default();
    let ground = (!whole).then_some((&region, at));
    Some(shadows(
        &pieces,
        offset,
        f64::from(item.height),
        spread,
        catalogue::prop(&item.prop).map_or_else(catalogue::plain_profile, catalogue::profile),
        ground,
    ))
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
