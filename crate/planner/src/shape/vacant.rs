//! The largest empty places among things: a rectangle along the picture's own
//! directions, and a circle.
use glam::DVec2;

use super::gap::on_side;
use super::{Bounds, Region};

/// Side of the cells an empty rectangle is first looked for in, mm. Its sides
/// are then pushed out to what stops them, so that what is lost is a place
/// narrower than this, not the width of a cell.
const CELL: f64 = 6.0;
/// How near to the largest circle is near enough, mm.
const NEAR: f64 = 0.5;

/// The largest rectangle within `within` that none of the `things` reaches
/// into and that is at least as wide and deep as `least`.
#[must_use]
pub fn largest_rectangle(within: Bounds, things: &[Region], least: DVec2) -> Option<Bounds> {
    let size = within.size();
    let count = (size / CELL).ceil().max(DVec2::ONE);
    let (across, down) = (count.x as usize, count.y as usize);
    let cell = size / count;
    let mut taken = vec![false; across * down];
    for thing in things {
        for row in 0..down {
            let top = within.min.y + cell.y * row as f64;
            for [from, to] in spans(thing, top, top + cell.y) {
                let first = ((from - within.min.x) / cell.x).floor().max(0.0);
                let last = ((to - within.min.x) / cell.x).ceil();
                let last = last.clamp(0.0, count.x) as usize;
                for at in first as usize..last {
                    taken[row * across + at] = true;
                }
            }
        }
    }
    let turned: Vec<Region> = things.iter().map(|t| t.carried(flipped)).collect();
    let mut best: Option<Bounds> = None;
    let mut free = vec![0_usize; across];
    for row in 0..down {
        for (at, run) in free.iter_mut().enumerate() {
            *run = if taken[row * across + at] {
                0
            } else {
                *run + 1
            };
        }
        // Every column is in turn the one that stops the rectangle's top.
        for (at, &depth) in free.iter().enumerate() {
            if depth == 0 || (at > 0 && free[at - 1] == depth) {
                continue;
            }
            let left = free[..at].iter().rev().take_while(|d| **d >= depth).count();
            let right = free[at..].iter().take_while(|d| **d >= depth).count();
            let corner = |x: usize, y: usize| within.min + cell * DVec2::new(x as f64, y as f64);
            let found = Bounds {
                min: corner(at - left, row + 1 - depth),
                max: corner(at + right, row + 1),
            };
            // It may yet grow by up to a cell on each side.
            let most = found.size() + cell * 2.0;
            let may = best.is_none_or(|b| most.x * most.y > area(b));
            if may && most.cmpge(least).all() {
                let out = pushed_out(found, within, [things, &turned]);
                if out.size().cmpge(least).all() && best.is_none_or(|b| area(out) > area(b)) {
                    best = Some(out);
                }
            }
        }
    }
    best
}

fn area(b: Bounds) -> f64 {
    b.size().x * b.size().y
}

/// From where to where a thing covers anything between two heights: runs
/// across, possibly overlapping.
fn spans(thing: &Region, top: f64, bottom: f64) -> Vec<[f64; 2]> {
    let mut out = Vec::new();
    if thing
        .bounds()
        .is_none_or(|b| b.max.y <= top || b.min.y >= bottom)
    {
        return out;
    }
    let middle = (top + bottom) * 0.5;
    let mut crossed: Vec<f64> = Vec::new();
    for (a, b) in thing.sides() {
        let (low, high) = if a.y < b.y { (a, b) } else { (b, a) };
        if high.y <= top || low.y >= bottom {
            continue;
        }
        let at = |y: f64| {
            let part = (y - low.y) / (high.y - low.y);
            low.x + (high.x - low.x) * part.clamp(0.0, 1.0)
        };
        let level = low.y == high.y;
        let (p, q) = if level {
            (low.x, high.x)
        } else {
            (at(top.max(low.y)), at(bottom.min(high.y)))
        };
        out.push([p.min(q), p.max(q)]);
        if low.y <= middle && high.y > middle {
            crossed.push(at(middle));
        }
    }
    crate::order::sort(&mut crossed, f64::total_cmp);
    out.extend(crossed.chunks_exact(2).map(|pair| [pair[0], pair[1]]));
    out
}

/// A place with across and down changed over.
fn flipped(p: DVec2) -> DVec2 {
    DVec2::new(p.y, p.x)
}

/// An empty rectangle with each side in turn pushed out to what stops it; the
/// things as they are and with across and down changed over.
fn pushed_out(found: Bounds, within: Bounds, things: [&[Region]; 2]) -> Bounds {
    let [left, right] = sides(found, within, things[0]);
    let min = DVec2::new(left, found.min.y);
    let max = DVec2::new(right, found.max.y);
    let turned = |b: Bounds| Bounds {
        min: flipped(b.min),
        max: flipped(b.max),
    };
    let wide = Bounds { min, max };
    let [top, bottom] = sides(turned(wide), turned(within), things[1]);
    Bounds {
        min: DVec2::new(left, top),
        max: DVec2::new(right, bottom),
    }
}

/// How far to either side a rectangle may go.
fn sides(r: Bounds, within: Bounds, things: &[Region]) -> [f64; 2] {
    let (mut left, mut right) = (within.min.x, within.max.x);
    let middle = r.centre().x;
    for [from, to] in things.iter().flat_map(|t| spans(t, r.min.y, r.max.y)) {
        if to <= middle {
            left = left.max(to);
        } else {
            right = right.min(from);
        }
    }
    [left.min(r.min.x), right.max(r.max.x)]
}

/// The largest circle within `within` that none of the `things` reaches into:
/// its centre and radius; `None` when there is no room at all.
///
/// The rectangle is quartered, the part that may hold most first, until none
/// may hold more than half a millimetre more than what was found.
#[must_use]
pub fn largest_circle(within: Bounds, things: &[Region]) -> Option<(DVec2, f64)> {
    let mut best = (within.centre(), room(within.centre(), within, things));
    let mut open = vec![(within, f64::INFINITY)];
    while let Some(next) = most(&open) {
        let (part, may) = open.swap_remove(next);
        if may <= best.1 + NEAR {
            continue;
        }
        let half = part.size() * 0.5;
        for corner in [DVec2::ZERO, DVec2::X, DVec2::Y, DVec2::ONE] {
            let min = part.min + half * corner;
            let part = Bounds {
                min,
                max: min + half,
            };
            let here = room(part.centre(), within, things);
            if here > best.1 {
                best = (part.centre(), here);
            }
            let may = here + half.length() * 0.5;
            if may > best.1 + NEAR {
                open.push((part, may));
            }
        }
    }
    (best.1 > 0.0).then_some(best)
}

/// The part that may hold the largest circle.
fn most(open: &[(Bounds, f64)]) -> Option<usize> {
    let places = 0..open.len();
    places.max_by(|a, b| open[*a].1.total_cmp(&open[*b].1))
}

/// How far a place is from the nearest thing or edge; negative inside a thing.
fn room(p: DVec2, within: Bounds, things: &[Region]) -> f64 {
    let mut room = (p - within.min).min(within.max - p).min_element();
    for thing in things {
        let Some(b) = thing.bounds() else { continue };
        let off = (b.min - p).max(p - b.max).max(DVec2::ZERO).length();
        if off >= room.max(0.0) && off > 0.0 {
            continue;
        }
        let sides = thing.sides().map(|(a, b)| on_side(p, a, b).distance(p));
        let near = sides.fold(f64::INFINITY, f64::min);
        room = room.min(if thing.contains(p) { -near } else { near });
    }
    room
}

#[cfg(test)]
mod tests {
    use super::*;

    fn boxed(x: f64, y: f64, width: f64, depth: f64) -> Region {
        let [a, b] = [DVec2::new(x, y), DVec2::new(x + width, y + depth)];
        let corners = Bounds { min: a, max: b }.corners();
        Region::from_polygon(&corners).expect("a box")
    }

    fn sheet() -> Bounds {
        Bounds {
            min: DVec2::ZERO,
            max: DVec2::new(1000.0, 700.0),
        }
    }

    #[test]
    fn an_empty_sheet_is_all_rectangle_and_its_depth_the_circle() {
        let all = largest_rectangle(sheet(), &[], DVec2::ZERO).expect("room");
        assert_eq!(all, sheet(), "nothing in the way");
        let (_, radius) = largest_circle(sheet(), &[]).expect("room");
        assert!((radius - 350.0).abs() <= NEAR, "{radius}");
    }

    #[test]
    fn a_box_leaves_the_larger_side_to_the_millimetre() {
        // 403 to the left, 1000 - 403 - 101 = 496 to the right.
        let bar = [boxed(403.0, -10.0, 101.0, 720.0)];
        let right = largest_rectangle(sheet(), &bar, DVec2::ZERO).expect("room");
        assert!((right.min.x - 504.0).abs() < 1e-9, "{right:?}");
        assert_eq!(right.max, sheet().max, "to the corner");
        let (at, radius) = largest_circle(sheet(), &bar).expect("room");
        assert!((radius - 248.0).abs() <= NEAR, "{radius} at {at}");
    }

    #[test]
    fn a_level_edge_within_a_row_of_cells_stops_it() {
        // It ends 201.5 mm down, within a row of cells.
        let hung = [boxed(100.0, -10.0, 800.0, 211.5)];
        let under = largest_rectangle(sheet(), &hung, DVec2::ZERO).expect("room");
        assert!((under.min.y - 201.5).abs() < 1e-9, "{under:?}");
    }

    #[test]
    fn what_is_too_small_is_not_offered() {
        let bar = [boxed(403.0, -10.0, 101.0, 720.0)];
        let least = DVec2::new(300.0, 700.0);
        assert!(largest_rectangle(sheet(), &bar, least).is_some(), "it fits");
        let least = DVec2::new(500.0, 100.0);
        assert_eq!(largest_rectangle(sheet(), &bar, least), None, "too wide");
    }

    #[test]
    fn a_full_sheet_has_no_room() {
        let all = [boxed(-1.0, -1.0, 1002.0, 702.0)];
        assert_eq!(largest_rectangle(sheet(), &all, DVec2::ZERO), None, "full");
        assert_eq!(largest_circle(sheet(), &all), None, "full");
    }
}
