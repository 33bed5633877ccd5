//! Where the places of a table are: along both long sides, then one at each
//! end; round a round table evenly by angle.
//!
//! Sources: 24 in from the middle of a place to the next (Berolzheimer, The
//! American Woman's Cook Book, 1930s); 21 in at the least, 29 desirable
//! (Time-Saver Standards, as quoted); seats along a table and round one:
//! 2 × ⌊length / 24 in⌋ + 2 and ⌊π × diameter / 24 in⌋ (a maker's page, weak).
use core::f64::consts::{PI, TAU};

use glam::{DVec2, dvec2};

use crate::layout::{Table, TableShape};

/// From the middle of a place to that of the next, mm: 24 in.
pub const PITCH: f64 = 609.6;
/// The least there may be, mm: 21 in.
pub const TIGHT_PITCH: f64 = 533.4;
/// No need to sit farther apart, mm: 29 in.
const WIDE_PITCH: f64 = 736.6;

/// One place at a table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stand {
    /// Where the table's edge is before the sitter.
    pub at: DVec2,
    /// Which way the sitter looks, of length 1.
    pub inward: DVec2,
    /// Whether the place may move along its edge: round a table it may not.
    pub slides: bool,
}

/// How many may sit along a row this long; tables are whole millimetres, so
/// half a one short of a place counts as a place.
fn along(length: f64, pitch: f64) -> usize {
    ((length + 0.5) / pitch).floor() as usize
}

/// How many can sit at a table, so far apart.
#[must_use]
pub fn seats(table: &Table, pitch: f64) -> usize {
    let (width, depth) = (f64::from(table.width), f64::from(table.depth));
    match table.shape {
        TableShape::Round => along(PI * width, pitch),
        TableShape::Rect => 2 * along(width.max(depth), pitch) + 2,
    }
}

/// The places for `people`, as many as there are seats: along both long sides
/// first, the near or left one before the other, then at the ends; at a round
/// table evenly, the first at the near edge.
#[must_use]
pub fn stands(table: &Table, people: usize, pitch: f64) -> Vec<Stand> {
    let people = people.min(seats(table, pitch));
    match table.shape {
        TableShape::Round => round(table, people),
        TableShape::Rect => straight(table, people, pitch),
    }
}

/// The place on the table's edge nearest to `at`.
#[must_use]
pub fn stand_at(table: &Table, at: DVec2) -> Stand {
    let centre = table.centre().vec();
    if table.shape == TableShape::Round {
        let outward = (at - centre).normalize_or(DVec2::Y);
        return Stand {
            at: centre + outward * (f64::from(table.width) * 0.5),
            inward: -outward,
            slides: false,
        };
    }
    let size = dvec2(f64::from(table.width), f64::from(table.depth));
    let along = at.clamp(DVec2::ZERO, size);
    let sides = [
        (dvec2(along.x, size.y), -DVec2::Y),
        (dvec2(along.x, 0.0), DVec2::Y),
        (dvec2(0.0, along.y), DVec2::X),
        (dvec2(size.x, along.y), -DVec2::X),
    ];
    let mut best = sides[0];
    for side in &sides[1..] {
        if side.0.distance_squared(at) < best.0.distance_squared(at) {
            best = *side;
        }
    }
    Stand {
        at: best.0,
        inward: best.1,
        slides: true,
    }
}

fn round(table: &Table, people: usize) -> Vec<Stand> {
    let centre = table.centre().vec();
    let radius = f64::from(table.width) * 0.5;
    let place = |n: usize| {
        let (sin, cos) = libm::sincos(TAU * n as f64 / people as f64);
        let outward = dvec2(sin, cos);
        Stand {
            at: centre + outward * radius,
            inward: -outward,
            slides: false,
        }
    };
    (0..people).map(place).collect()
}

fn straight(table: &Table, people: usize, pitch: f64) -> Vec<Stand> {
    let size = dvec2(f64::from(table.width), f64::from(table.depth));
    let (long, short) = (size.max_element(), size.min_element());
    let beside = people.min(2 * along(long, pitch));
    let ends = people - beside;
    let rows = [beside.div_ceil(2), beside / 2, ends.div_ceil(2), ends / 2];
    // Who sits at the near, far, left and right edge looks this way.
    let [near, far, left, right] = [DVec2::NEG_Y, DVec2::Y, DVec2::X, DVec2::NEG_X];
    let edges = if size.x >= size.y {
        [near, far, left, right]
    } else {
        [left, right, near, far]
    };
    let lengths = [long, long, short, short];
    let mut out = Vec::with_capacity(people);
    for ((row, inward), length) in rows.into_iter().zip(edges).zip(lengths) {
        let apart = (length / row.max(1) as f64).min(WIDE_PITCH).max(pitch);
        let middle = (size - inward * size) * 0.5;
        let on = inward.perp().abs();
        for n in 0..row {
            let off = (n as f64 - row.saturating_sub(1) as f64 * 0.5) * apart;
            out.push(Stand {
                at: middle + on * off,
                inward,
                slides: true,
            });
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{Layout, LayoutId};

    fn table(shape: TableShape, width: i32, depth: i32) -> Table {
        let mut table = Layout::empty(LayoutId(1)).table;
        table.shape = shape;
        (table.width, table.depth) = (width, depth);
        table
    }

    #[test]
    fn the_long_sides_fill_before_the_ends() {
        let wide = table(TableShape::Rect, 1_900, 950);
        let rows = |people: usize| {
            let stands = stands(&wide, people, PITCH);
            [DVec2::NEG_Y, DVec2::Y, DVec2::X, DVec2::NEG_X]
                .map(|way| stands.iter().filter(|s| s.inward == way).count())
        };
        assert_eq!(rows(1), [1, 0, 0, 0], "one sits near");
        assert_eq!(rows(5), [3, 2, 0, 0], "along the sides");
        assert_eq!(rows(8), [3, 3, 1, 1], "then at the ends");
        assert_eq!(rows(12), [3, 3, 1, 1], "and no more than there are seats");
    }

    #[test]
    fn a_deep_table_is_sat_at_left_and_right() {
        let deep = table(TableShape::Rect, 900, 1_900);
        let ways: Vec<DVec2> = stands(&deep, 2, PITCH).iter().map(|s| s.inward).collect();
        assert_eq!(ways, [DVec2::X, DVec2::NEG_X], "looking across");
    }

    #[test]
    fn places_lie_on_the_edge_and_look_across_it() {
        for (table, people) in [
            (table(TableShape::Rect, 1_900, 950), 8),
            (table(TableShape::Round, 1_500, 1_500), 7),
        ] {
            let centre = table.centre().vec();
            for stand in stands(&table, people, PITCH) {
                let off = centre - stand.at;
                let to_edge = if table.shape == TableShape::Round {
                    off.length() - 750.0
                } else {
                    (off.abs() - centre).max_element()
                };
                assert!(to_edge.abs() < 1e-9, "on the edge: {stand:?}");
                assert!(stand.inward.dot(off) > 0.0, "inward: {stand:?}");
            }
        }
    }
}
