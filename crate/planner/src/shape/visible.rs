//! What is seen from above of pieces that lie over each other.

use super::boolean::{difference, intersection};
use super::{Bounds, Region, ShapeError};

/// Covering less than this, mm², is covering nothing: above what rounding to
/// the grid of the booleans gives or takes along an outline, and half of what
/// areas are held to against an outside check.
const NOTHING: f64 = 0.005;

/// What is seen from above of each piece: itself less every later piece, cut
/// to the frame. `pieces` run from the bottom to the top; the answer has the
/// same order.
///
/// # Errors
/// When a coordinate is too far away or there are too many points.
pub fn visible(pieces: &[Region], frame: &Region) -> Result<Vec<Region>, ShapeError> {
    let seen = |(i, piece)| seen_under(piece, pieces[i + 1..].iter(), frame);
    pieces.iter().enumerate().map(seen).collect()
}

/// What is seen of one piece within the frame under those `above` it.
///
/// # Errors
/// As [`visible`].
pub fn seen_under<'a>(
    piece: &Region,
    above: impl Iterator<Item = &'a Region>,
    frame: &Region,
) -> Result<Region, ShapeError> {
    let Some(own) = piece.bounds() else {
        return Ok(Region::empty());
    };
    let framed = framed(piece, own, frame)?;
    let meets = |r: &&Region| r.bounds().is_some_and(|b| b.meets(own));
    let above: Vec<&Region> = above.filter(meets).collect();
    if above.is_empty() || framed.is_empty() {
        return Ok(framed);
    }
    // Boxes that meet need not overlap. A piece that loses nothing keeps its own
    // points, so that which of two lies later does not show.
    let left = difference(&framed, &above)?;
    let whole = framed.area() - left.area() < NOTHING;
    Ok(if whole { framed } else { left })
}

/// The piece within the frame; untouched when its whole box lies inside.
fn framed(piece: &Region, bounds: Bounds, frame: &Region) -> Result<Region, ShapeError> {
    // A box can have its corners in a frame that is not convex and still leave
    // it, so the short way is taken for a single convex ring alone.
    let whole = match frame.rings() {
        [ring] if super::is_convex(ring) => bounds.corners().iter().all(|c| frame.contains(*c)),
        _ => false,
    };
    if whole {
        Ok(piece.clone())
    } else {
        intersection(piece, frame)
    }
}

#[cfg(test)]
mod tests {
    use glam::DVec2;

    use super::*;
    use crate::shape::{CHORD_ERROR, rect};

    fn boxed(x: f64, y: f64, width: f64, depth: f64) -> Region {
        let polygon = rect(
            DVec2::new(x, y),
            DVec2::new(width, depth),
            0.0,
            0.0,
            CHORD_ERROR,
        );
        Region::from_polygon(&polygon).expect("a box")
    }

    fn areas(pieces: &[Region], frame: &Region) -> Vec<f64> {
        visible(pieces, frame)
            .expect("in limits")
            .iter()
            .map(Region::area)
            .collect()
    }

    #[test]
    fn later_pieces_cover_earlier_ones() {
        let frame = boxed(0.0, 0.0, 100.0, 100.0);
        let pieces = [boxed(0.0, 0.0, 20.0, 20.0), boxed(10.0, 0.0, 20.0, 20.0)];
        assert_eq!(
            areas(&pieces, &frame),
            [200.0, 400.0],
            "half of the lower one is left"
        );
    }

    #[test]
    fn frame_cuts_and_removes() {
        let frame = boxed(0.0, 0.0, 100.0, 100.0);
        let pieces = [boxed(50.0, 0.0, 20.0, 20.0), boxed(90.0, 0.0, 20.0, 20.0)];
        assert_eq!(
            areas(&pieces, &frame),
            [200.0, 0.0],
            "cut in half, and outside"
        );
    }

    #[test]
    fn covered_wholly_by_two() {
        let frame = boxed(0.0, 0.0, 100.0, 100.0);
        let pieces = [
            boxed(0.0, 0.0, 20.0, 10.0),
            boxed(-5.0, 0.0, 10.0, 12.0),
            boxed(5.0, 0.0, 10.0, 12.0),
        ];
        assert_eq!(
            areas(&pieces, &frame),
            [0.0, 120.0, 120.0],
            "nothing shows between two"
        );
    }

    #[test]
    fn nothing_to_see() {
        let frame = boxed(0.0, 0.0, 100.0, 100.0);
        assert!(areas(&[], &frame).is_empty(), "no pieces");
        assert_eq!(areas(&[Region::empty()], &frame), [0.0], "an empty piece");
        assert_eq!(
            areas(&[boxed(0.0, 0.0, 5.0, 5.0)], &Region::empty()),
            [0.0],
            "no frame"
        );
    }
}
