//! Outlines of things, of the table top and of the picture, as polygons.

use glam::DVec2;

use super::{disc, oval, placed, rect};
use crate::layout::{Frame, Size, Table, TableShape};

/// The outline of a thing of this size, its centre at `at`, turned by `turn`
/// degrees clockwise and flattened to `tolerance` mm. A traced outline keeps
/// its direction and its corners; all others are positive.
#[must_use]
pub fn outline(size: &Size, at: DVec2, turn: f64, tolerance: f64) -> Vec<DVec2> {
    inset(size, 0, at, turn, tolerance)
}

/// The outline within the rim; `None` when the size has no rim or nothing but
/// rim.
#[must_use]
pub fn well(size: &Size, at: DVec2, turn: f64, tolerance: f64) -> Option<Vec<DVec2>> {
    let well = inset(size, size.rim(), at, turn, tolerance);
    (size.rim() > 0 && !well.is_empty()).then_some(well)
}

fn inset(size: &Size, by: i32, at: DVec2, turn: f64, tolerance: f64) -> Vec<DVec2> {
    let left = |whole: i32| f64::from(whole - 2 * by);
    match size {
        Size::Disc { diameter, .. } => disc(at, left(*diameter) * 0.5, tolerance),
        Size::Rect {
            width,
            depth,
            corner,
            ..
        } => {
            let corner = f64::from((corner - by).max(0));
            rect(
                at,
                DVec2::new(left(*width), left(*depth)),
                corner,
                turn,
                tolerance,
            )
        }
        Size::Oval { width, depth, .. } => {
            oval(at, DVec2::new(left(*width), left(*depth)), turn, tolerance)
        }
        Size::Outline { points } => placed(
            &points.iter().map(|p| p.vec()).collect::<Vec<_>>(),
            at,
            turn,
        ),
    }
}

/// The outline of the table top, its top-left corner at the origin.
#[must_use]
pub fn table_outline(table: &Table, tolerance: f64) -> Vec<DVec2> {
    let size = DVec2::new(f64::from(table.width), f64::from(table.depth));
    match table.shape {
        TableShape::Rect => rect(size * 0.5, size, f64::from(table.corner), 0.0, tolerance),
        TableShape::Round => disc(size * 0.5, size.x * 0.5, tolerance),
    }
}

/// The four corners of the picture on the table plane, the picture's top-left
/// corner first.
#[must_use]
pub fn frame_outline(frame: &Frame) -> Vec<DVec2> {
    let width = f64::from(frame.width);
    let half = DVec2::new(width, frame.height()) * 0.5;
    let corners = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)];
    let local = corners.map(|c| half * DVec2::from(c));
    placed(&local, frame.at.vec(), frame.turn.degrees())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{Point, Ratio, Turn};
    use crate::shape::{CHORD_ERROR, area};

    #[test]
    fn plate_and_its_well() {
        let plate = Size::Disc {
            diameter: 270,
            rim: 35,
        };
        let outside = area(&outline(&plate, DVec2::ZERO, 0.0, CHORD_ERROR));
        let inside = area(&well(&plate, DVec2::ZERO, 0.0, CHORD_ERROR).expect("a rim"));
        let share = (200.0f64 / 270.0) * (200.0 / 270.0);
        assert!(
            (inside / outside - share).abs() < 1e-9,
            "200 mm of 270: {}",
            inside / outside
        );
    }

    #[test]
    fn no_rim_or_all_rim_has_no_well() {
        for size in [
            Size::Disc {
                diameter: 80,
                rim: 0,
            },
            Size::Disc {
                diameter: 80,
                rim: 40,
            },
            Size::Rect {
                width: 300,
                depth: 40,
                corner: 5,
                rim: 25,
            },
            Size::Outline {
                points: vec![Point::new(0, 0), Point::new(9, 0), Point::new(0, 9)],
            },
        ] {
            assert_eq!(well(&size, DVec2::ZERO, 0.0, CHORD_ERROR), None, "{size:?}");
        }
    }

    #[test]
    fn traced_outline_turns_clockwise_on_the_table() {
        let size = Size::Outline {
            points: vec![Point::new(0, -10), Point::new(5, 0)],
        };
        let turned = outline(&size, DVec2::new(100.0, 100.0), 90.0, CHORD_ERROR);
        let expected = [(110.0, 100.0), (100.0, 105.0)].map(DVec2::from);
        assert_eq!(turned, expected, "12 o'clock becomes 3 o'clock");
    }

    #[test]
    fn frame_turned_by_a_quarter_stands_upright() {
        let frame = Frame {
            ratio: Ratio {
                width: 3,
                height: 2,
            },
            at: Point::new(1000, 500),
            width: 900,
            turn: Turn::from_degrees(90.0),
            extra: Default::default(),
        };
        let corners = frame_outline(&frame);
        assert_eq!(
            corners[0],
            DVec2::new(1300.0, 50.0),
            "top left is now at the right, above"
        );
        assert_eq!(area(&corners), 540_000.0, "900 by 600");
    }
}
