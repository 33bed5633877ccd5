//! Outlines of linens and crops.
use glam::DVec2;

use crate::figure::{Form, cloth_outline};
use crate::layout::{Crop, Layout, Linen, Table};
use crate::shape::{CHORD_ERROR, Region, area, contains, intersection, rect, table_outline};

/// How a linen lies, as far as its outline goes.
#[must_use]
pub fn linen_form(linen: &Linen) -> Form {
    let half = DVec2::from_array(linen.lying()) * 0.5;
    Form::new(u32::from(linen.id.0), half, linen.turn.radians())
}

/// A linen as it lies: the very outline that is drawn.
#[must_use]
pub fn linen_outline(linen: &Linen) -> Vec<DVec2> {
    let own = cloth_outline(linen.state, &linen_form(linen));
    own.iter().map(|p| *p + linen.at.vec()).collect()
}

/// What is seen of a linen from above: what passes the edge of the table hangs
/// down and shows no area. A linen beside the table lies there whole.
#[must_use]
pub fn linen_seen(table: &Table, linen: &Linen) -> Vec<DVec2> {
    let whole = linen_outline(linen);
    let ground = table_outline(table, CHORD_ERROR);
    if !contains(&ground, linen.at.vec()) || whole.iter().all(|p| contains(&ground, *p)) {
        return whole;
    }
    let on = |polygon: &[DVec2]| Region::from_polygon(polygon);
    let seen = on(&whole).and_then(|w| intersection(&w, &on(&ground)?));
    let rings = seen.unwrap_or_default();
    let largest = rings
        .rings()
        .iter()
        .max_by(|a, b| area(a).total_cmp(&area(b)));
    largest.cloned().unwrap_or(whole)
}

/// How far a linen hangs over the edge of the table at the ends of its longer
/// side, mm, the left or upper end first; 0 where it does not.
#[must_use]
pub fn linen_drop(table: &Table, linen: &Linen) -> [f64; 2] {
    let ground = table_outline(table, CHORD_ERROR);
    let at = linen.at.vec();
    if !contains(&ground, at) {
        return [0.0; 2];
    }
    let [width, depth] = linen.lying();
    let long = if width >= depth { DVec2::X } else { DVec2::Y };
    let half = width.max(depth) * 0.5;
    let (sin, cos) = libm::sincos(linen.turn.radians());
    let axis = DVec2::new(cos, sin).rotate(long);
    [-1.0, 1.0].map(|end| (half - reach(&ground, at, axis * end)).max(0.0))
}

/// How far the outline is from a point within it along a unit vector.
fn reach(outline: &[DVec2], from: DVec2, along: DVec2) -> f64 {
    let next = outline.iter().cycle().skip(1);
    outline
        .iter()
        .zip(next)
        .filter_map(|(&a, &b)| {
            let side = b - a;
            let turn = along.perp_dot(side);
            let (t, u) = (
                (a - from).perp_dot(side) / turn,
                (a - from).perp_dot(along) / turn,
            );
            (turn != 0.0 && t >= 0.0 && (0.0..=1.0).contains(&u)).then_some(t)
        })
        .fold(f64::INFINITY, f64::min)
}

/// The rectangle a linen lies along, its hems drawn straight: four corners.
#[must_use]
pub fn linen_span(linen: &Linen) -> Vec<DVec2> {
    let size = DVec2::from_array(linen.lying());
    let turn = linen.turn.degrees();
    rect(linen.at.vec(), size, 0.0, turn, CHORD_ERROR)
}

/// A crop on the table plane; crops turn with the frame.
#[must_use]
pub fn crop_outline(layout: &Layout, crop: &Crop) -> Vec<DVec2> {
    let size = DVec2::from_array(crop.extent());
    rect(
        crop.at.vec(),
        size,
        0.0,
        layout.frame.turn.degrees(),
        CHORD_ERROR,
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{TableShape, open};

    fn runner(width: i32, x: i32) -> (Table, Linen) {
        let text = format!(
            r##"{{"format": "overspread-layout", "version": 0, "id": "00000000000000aa", "next_id": 2,
            "table": {{"shape": "rect", "width": 1500, "depth": 900, "corner": 0, "height": 740}},
            "frame": {{"ratio": [3, 2], "at": [750, 450], "width": 1000}},
            "linens": [{{"id": 1, "kind": "runner", "state": "flat", "at": [{x}, 450],
            "size": [{width}, 350], "turn": 0, "colour": "#d8c8a5"}}]}}"##
        );
        let mut layout = open(&text).expect("opens");
        (layout.table, layout.linens.remove(0))
    }

    #[test]
    fn a_runner_hangs_by_what_is_longer_than_the_table() {
        // Length is table plus twice the drop: facts of the trade, by geometry.
        let (table, linen) = runner(1500 + 2 * 200, 750);
        assert_eq!(linen_drop(&table, &linen), [200.0, 200.0], "20 cm a side");
        let (table, linen) = runner(1900, 700);
        assert_eq!(linen_drop(&table, &linen), [250.0, 150.0], "off the middle");
        let (table, linen) = runner(1000, 750);
        assert_eq!(
            linen_drop(&table, &linen),
            [0.0, 0.0],
            "shorter than the table"
        );
    }

    #[test]
    fn on_a_round_table_it_hangs_from_the_rim_on_its_axis() {
        let (mut table, linen) = runner(1500, 550);
        table.shape = TableShape::Round;
        (table.width, table.depth) = (1100, 1100);
        let mut linen = linen;
        linen.at = crate::layout::Point::new(550, 550);
        for end in linen_drop(&table, &linen) {
            assert!(
                (end - 200.0).abs() < 0.2,
                "half of 150 less half of 110: {end}"
            );
        }
    }

    #[test]
    fn what_hangs_shows_no_area_and_what_waits_beside_is_whole() {
        let (table, linen) = runner(1900, 750);
        let seen = area(&linen_seen(&table, &linen));
        // The hems are ruled by hand, a few millimetres off straight.
        assert!((seen / (1500.0 * 350.0) - 1.0).abs() < 0.02, "{seen}");
        let (table, mut aside) = runner(1900, 750);
        aside.at = crate::layout::Point::new(750, 1200);
        assert_eq!(
            linen_seen(&table, &aside),
            linen_outline(&aside),
            "beside the table"
        );
    }
}
