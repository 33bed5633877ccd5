//! Where a dragged thing comes to rest: edges and middles in line with others,
//! and gaps as wide as the gap beside.
use crate::shape::Bounds;
use glam::DVec2;

/// A correction to a drag, and the lines that explain it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Snap {
    /// What to add to the drag, mm.
    pub by: DVec2,
    /// The upright line things now share, if any, mm from the left.
    pub upright: Option<f64>,
    /// The level line things now share, if any, mm from the top.
    pub level: Option<f64>,
}

/// Rests `moving` against `others` where a correction of at most `reach` mm
/// does it. `centres` are boxes of which only the middle counts, such as the
/// frame.
#[must_use]
pub fn snap(moving: Bounds, others: &[Bounds], centres: &[Bounds], reach: f64) -> Snap {
    let x = axis(moving, others, centres, reach, |v| v.x);
    let y = axis(moving, others, centres, reach, |v| v.y);
    Snap {
        by: DVec2::new(x.map_or(0.0, |(by, _)| by), y.map_or(0.0, |(by, _)| by)),
        upright: x.map(|(_, line)| line),
        level: y.map(|(_, line)| line),
    }
}

/// The smallest correction along one axis and the line it brings together.
fn axis(
    moving: Bounds,
    others: &[Bounds],
    centres: &[Bounds],
    reach: f64,
    along: impl Fn(DVec2) -> f64,
) -> Option<(f64, f64)> {
    let (low, high) = (along(moving.min), along(moving.max));
    let middle = (low + high) / 2.0;
    let mut best: Option<(f64, f64)> = None;
    let mut offer = |from: f64, to: f64| {
        let by = to - from;
        if by.abs() <= reach && best.is_none_or(|(b, _)| by.abs() < b.abs()) {
            best = Some((by, to));
        }
    };
    for other in centres {
        offer(middle, along(other.centre()));
    }
    for other in others {
        let (l, h) = (along(other.min), along(other.max));
        offer(middle, along(other.centre()));
        for (from, to) in [(low, l), (high, h), (low, h), (high, l)] {
            offer(from, to);
        }
    }
    // Equal gaps: past two neighbours by the gap between them, or halfway.
    let side = |v: DVec2| v.x + v.y - along(v);
    let beside = |b: &&Bounds| side(b.min) <= side(moving.max) && side(moving.min) <= side(b.max);
    let row: Vec<&Bounds> = others.iter().filter(beside).collect();
    for a in &row {
        for b in &row {
            let gap = along(b.min) - along(a.max);
            if gap <= 0.0 {
                continue;
            }
            offer(low, along(b.max) + gap);
            offer(high, along(a.min) - gap);
            if gap > high - low {
                offer(middle, along(a.max) + gap / 2.0);
            }
        }
    }
    best
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(x: f64, y: f64, side: f64) -> Bounds {
        Bounds {
            min: DVec2::new(x, y),
            max: DVec2::new(x + side, y + side),
        }
    }

    #[test]
    fn nothing_in_reach_leaves_the_drag_alone() {
        let snap = snap(
            square(500.0, 500.0, 50.0),
            &[square(0.0, 0.0, 40.0)],
            &[],
            5.0,
        );
        assert_eq!(snap, Snap::default(), "far away");
    }

    #[test]
    fn middles_and_edges_come_in_line() {
        let other = square(0.0, 0.0, 100.0);
        let by_middle = snap(square(28.0, 300.0, 40.0), &[other], &[], 5.0);
        assert_eq!(
            by_middle.by,
            DVec2::new(2.0, 0.0),
            "middle to middle: {by_middle:?}"
        );
        assert_eq!(
            by_middle.upright,
            Some(50.0),
            "the line is the shared middle"
        );
        let by_edge = snap(square(3.0, 300.0, 40.0), &[other], &[], 5.0);
        assert_eq!(
            by_edge.by,
            DVec2::new(-3.0, 0.0),
            "left to left: {by_edge:?}"
        );
    }

    #[test]
    fn a_third_in_a_row_takes_the_gap_of_the_first_two() {
        let row = [square(0.0, 0.0, 100.0), square(130.0, 0.0, 100.0)];
        let third = snap(square(263.0, 17.0, 70.0), &row, &[], 5.0);
        assert_eq!(third.by.x, -3.0, "30 mm on: {third:?}");
    }

    #[test]
    fn between_two_it_rests_halfway() {
        let row = [square(0.0, 0.0, 100.0), square(300.0, 0.0, 100.0)];
        let between = snap(square(172.0, 17.0, 60.0), &row, &[], 5.0);
        assert_eq!(between.by.x, -2.0, "70 mm each side: {between:?}");
    }
}
