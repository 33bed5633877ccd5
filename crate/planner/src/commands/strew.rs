//! What is strewn along a path: crumbs brushed over the table.
use glam::DVec2;

use super::{Act, Refused, called, fresh_id, fresh_item, fresh_number};
use crate::catalogue::{self, Kind};
use crate::layout::{Extra, Group, Layout, Point, Size, Turn};

/// Things one path is made of at most, and the least length of one, mm.
const MOST: usize = 8;
const LENGTH: f64 = 140.0;
/// How broad a path is for each step of its amount, 1 to 10, mm (our choice).
const BROAD: f64 = 14.0;
/// How far each thing reaches into the next, as a share of it, so that no bare
/// place shows between them.
const OVER: f64 = 1.2;

/// Strews a thing of the catalogue along a path, more of it the larger the
/// `amount` from 1 to 10: one scatter or up to eight in a group, their pieces
/// cast by their own numbers as any are. A sprig keeps its shape and turns with
/// the path.
///
/// # Errors
/// When it is not known, or is not strewn; when the path is empty.
pub fn strew(layout: &Layout, prop: &str, path: &[Point], amount: i32) -> Result<Act, Refused> {
    let entry = catalogue::prop(prop).filter(|entry| entry.kind == Kind::Scatter);
    let entry = entry.ok_or_else(|| Refused::Unknown(prop.into()))?;
    let path: Vec<DVec2> = path.iter().map(|p| p.vec()).collect();
    let Some(first) = path.first() else {
        return Err(Refused::TooFew(1));
    };
    let length: f64 = path.windows(2).map(|side| side[0].distance(side[1])).sum();
    let count = ((length / LENGTH).ceil() as usize).clamp(1, MOST);
    let broad = BROAD * f64::from(amount.clamp(1, 10));
    let mut after = layout.clone();
    let number = fresh_number(&mut after);
    let group = (count > 1).then(|| fresh_id(&mut after));
    if let Some(id) = group {
        after.groups.push(Group {
            id,
            name: entry.name.into(),
            extra: Extra::new(),
        });
    }
    for n in 0..count {
        let at = |share: usize| along(&path, length * share as f64 / count as f64);
        let (from, to) = (at(n).unwrap_or(*first), at(n + 1).unwrap_or(*first));
        let way = to - from;
        let mut item = fresh_item(&mut after, prop)?;
        after.head.next_number -= 1;
        item.number = number;
        item.group = group;
        item.at = Point::nearest((from + to) * 0.5);
        item.turn = Turn::from_degrees(libm::atan2(way.y, way.x).to_degrees());
        let wide = (way.length() * OVER).max(broad);
        item.size = match item.size {
            Size::Oval { width, depth, .. } => {
                let share = f64::from(depth) / f64::from(width.max(1));
                let wide = wide.clamp(f64::from(entry.range[0]), f64::from(entry.range[1]));
                oval(wide, wide * share)
            }
            _ => oval(wide, broad),
        };
        after.items.push(item);
    }
    Act::between(called("done-strewn", entry.name), layout, &after)
}

fn oval(width: f64, depth: f64) -> Size {
    Size::Oval {
        width: width.ceil() as i32,
        depth: depth.ceil() as i32,
        rim: 0,
    }
}

/// The place so far along a path, mm.
fn along(path: &[DVec2], far: f64) -> Option<DVec2> {
    let mut left = far;
    for side in path.windows(2) {
        let length = side[0].distance(side[1]);
        if left <= length && length > 0.0 {
            return Some(side[0].lerp(side[1], left / length));
        }
        left -= length;
    }
    path.last().copied()
}

#[cfg(test)]
mod tests {
    use super::super::tests::{bare, done, laid};
    use super::*;
    use crate::scene::silhouette;

    /// What was strewn along a path.
    fn strewn(path: &[Point], amount: i32) -> Layout {
        let before = bare();
        done(&before, strew(&before, "crumbs", path, amount))
    }

    #[test]
    fn pieces_follow_the_path() {
        let path = [
            Point::new(100, 100),
            Point::new(700, 100),
            Point::new(700, 700),
        ];
        let layout = strewn(&path, 3);
        assert_eq!(layout.items.len(), MOST, "no more than eight");
        assert!(layout.items.iter().all(|o| o.group.is_some()), "one group");
        for item in &layout.items {
            let near = [[path[0], path[1]], [path[1], path[2]]].map(|[a, b]| {
                let (a, b, p) = (a.vec(), b.vec(), item.at.vec());
                let share = ((p - a).dot(b - a) / (b - a).length_squared()).clamp(0.0, 1.0);
                p.distance(a.lerp(b, share))
            });
            assert!(near[0].min(near[1]) < 40.0, "on it: {:?}", item.at);
        }
        // Every stretch of the path has crumbs.
        for n in 0..=12 {
            let p = along(&path.map(Point::vec), f64::from(n) * 100.0).expect("on it");
            let over = layout.items.iter().any(|o| o.at.vec().distance(p) < 110.0);
            assert!(over, "bare at {p}");
        }
    }

    #[test]
    fn more_is_broader_and_a_tap_is_one_scatter() {
        let path = [Point::new(100, 100), Point::new(500, 100)];
        let area = |amount: i32| {
            let layout = strewn(&path, amount);
            let areas = layout
                .items
                .iter()
                .map(|o| crate::shape::area(&silhouette(o)));
            areas.sum::<f64>()
        };
        assert!(area(6) > 1.5 * area(3), "twice as much");
        let tap = strewn(&path[..1], 5);
        assert_eq!(tap.items.len(), 1, "one");
        assert_eq!(tap.items[0].group, None, "on its own");
    }

    #[test]
    fn only_what_is_strewn_can_be() {
        let before = laid();
        let path = [Point::new(0, 0)];
        assert!(strew(&before, "loaf", &path, 3).is_err(), "a loaf is not");
        assert!(strew(&before, "crumbs", &[], 3).is_err(), "along nothing");
    }
}
