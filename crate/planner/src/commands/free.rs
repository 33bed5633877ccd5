//! Where a thing can be put down without lying on another.
use glam::DVec2;

use crate::catalogue::is_strewn;
use crate::layout::{Item, Layout, Point};
use crate::scene::silhouette;
use crate::shape::{Region, contains, frame_outline, gap_within};

/// Air kept round what is put down, mm. Our choice.
const AIR: f64 = 12.0;
/// How far apart the places tried lie, mm, and how many are.
const STEP: f64 = 24.0;
const TRIES: u32 = 700;
/// Turn between neighbours on a sunflower head, radians.
const GOLDEN: f64 = 2.399_963_229_728_653;

/// The place nearest to where an item lies at which it is within the frame and
/// clear of everything that stands on the table; its own when there is none.
pub(super) fn nearest_free(layout: &Layout, item: &Item) -> Point {
    if is_strewn(&item.prop) {
        return item.at;
    }
    let region = |outline: &[DVec2]| Region::from_polygon(outline).ok();
    let standing = layout
        .items
        .iter()
        .filter(|o| o.on.is_none() && !is_strewn(&o.prop));
    let others: Vec<Region> = standing.filter_map(|o| region(&silhouette(o))).collect();
    let frame = frame_outline(&layout.frame);
    let own = silhouette(item);
    let centre = item.at.vec();
    let clear = |by: DVec2| {
        let moved: Vec<DVec2> = own.iter().map(|p| *p + by).collect();
        let within = moved.iter().all(|p| contains(&frame, *p));
        within
            && region(&moved).is_some_and(|own| {
                let near = |other: &Region| gap_within(&own, other, AIR).is_some();
                !others.iter().any(near)
            })
    };
    let spiral = (0..TRIES).map(|i| {
        let (sin, cos) = libm::sincos(GOLDEN * f64::from(i));
        DVec2::new(cos, sin) * STEP * f64::from(i).sqrt()
    });
    let found = spiral.into_iter().find(|by| clear(*by));
    found.map_or(item.at, |by| Point::nearest(centre + by))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue;
    use crate::commands::lay;
    use crate::layout::Id;

    fn table() -> Layout {
        let wish = serde_json::from_str(
            r#"{"id": "00000000000000aa", "width": 1600, "depth": 950, "shape": "rect",
            "board": "oak", "ratio": [3, 2], "people": 0, "dishes": ["pizza", "olives", "hummus"]}"#,
        );
        lay(&wish.expect("a wish")).expect("laid")
    }

    #[test]
    fn things_put_down_one_after_another_never_overlap() {
        let mut layout = table();
        let at = layout.frame.at;
        for (n, prop) in [
            "highball",
            "dip-bowl",
            "fork",
            "dinner-plate",
            "taper-candle",
        ]
        .iter()
        .cycle()
        .take(12)
        .enumerate()
        {
            let entry = catalogue::prop(prop).expect("sold");
            let id = 500 + n as u16;
            let mut item = catalogue::item_from(entry, Id(id), id, at);
            item.at = nearest_free(&layout, &item);
            let own = Region::from_polygon(&silhouette(&item)).expect("an outline");
            for other in layout.items.iter().filter(|o| o.on.is_none()) {
                let there = Region::from_polygon(&silhouette(other)).expect("an outline");
                let gap = gap_within(&own, &there, AIR);
                assert!(gap.is_none(), "{prop} {n} against {}: {gap:?}", other.name);
            }
            layout.items.push(item);
        }
    }

    #[test]
    fn what_is_strewn_and_what_fits_nowhere_stay_where_they_were_put() {
        let layout = table();
        for (prop, size) in [("salt", None), ("charger", Some(4000))] {
            let entry = catalogue::prop(prop).expect("sold");
            let mut item = catalogue::item_from(entry, Id(500), 500, layout.frame.at);
            if let Some(across) = size {
                item.size = item.size.resized(across, across);
            }
            assert_eq!(nearest_free(&layout, &item), layout.frame.at, "{prop}");
        }
    }
}
