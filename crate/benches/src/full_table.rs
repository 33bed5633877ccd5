//! The table that is measured, natively and in the browser.

use glam::DVec2;
use planner::catalogue::{item_from, prop};
use planner::layout::{Id, Layout, LayoutId, Point, Role};

/// Table area per thing, mm²: sixty on 2 m by 0.95 m.
pub const AREA_EACH: f64 = 2000.0 * 950.0 / 60.0;

/// A table of `count` dishes at the density of a full one, the first the hero,
/// every tenth a main dish, each with a rim and a well.
pub fn laid(count: u16) -> Layout {
    let mut layout = Layout::empty(LayoutId(1));
    let side = (f64::from(count) * AREA_EACH).sqrt();
    (layout.table.width, layout.table.depth) = (side as i32, side as i32);
    layout.frame.at = layout.table.centre();
    layout.frame.width = (side * 0.95) as i32;
    let plate = prop("dinner-plate").expect("in the catalogue");
    for step in 1..=count {
        let fraction = |by: f64| (f64::from(step) * by).fract();
        let at = DVec2::new(
            fraction(0.754_877_666_246_692_7),
            fraction(0.569_840_290_998_053_2),
        );
        let mut item = item_from(plate, Id(step), step, Point::nearest(at * side));
        let across = 80 + (200.0 * fraction(0.618_033_988_749_894_9)) as i32;
        item.size = item.size.resized(across, across);
        item.role = match step {
            1 => Role::Hero,
            _ if step % 10 == 0 => Role::Support,
            _ => Role::Filler,
        };
        layout.items.push(item);
    }
    (layout.head.next_id, layout.head.next_number) = (count + 1, count + 1);
    layout
}
