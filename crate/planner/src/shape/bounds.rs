//! Boxes, for finding out cheaply what cannot touch.

use glam::DVec2;

/// An axis-parallel box in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// Left top corner (y down).
    pub min: DVec2,
    /// Right bottom corner.
    pub max: DVec2,
}

impl Bounds {
    /// The smallest box around the points; `None` when there are none.
    #[must_use]
    pub fn around(points: &[DVec2]) -> Option<Self> {
        let first = *points.first()?;
        Some(points.iter().fold(
            Self {
                min: first,
                max: first,
            },
            |b, &p| Self {
                min: b.min.min(p),
                max: b.max.max(p),
            },
        ))
    }

    /// The smallest box around both.
    #[must_use]
    pub fn joined(self, other: Self) -> Self {
        Self {
            min: self.min.min(other.min),
            max: self.max.max(other.max),
        }
    }

    /// The box grown by `by` mm on every side.
    #[must_use]
    pub fn grown(self, by: f64) -> Self {
        Self {
            min: self.min - by,
            max: self.max + by,
        }
    }

    /// Width and height, mm.
    #[must_use]
    pub fn size(self) -> DVec2 {
        self.max - self.min
    }

    /// The middle.
    #[must_use]
    pub fn centre(self) -> DVec2 {
        (self.min + self.max) * 0.5
    }

    /// Whether the boxes share a point; touching counts.
    #[must_use]
    pub fn meets(self, other: Self) -> bool {
        self.min.cmple(other.max).all() && other.min.cmple(self.max).all()
    }

    /// Whether the point lies in the box; the edge counts.
    #[must_use]
    pub fn holds(self, p: DVec2) -> bool {
        self.min.cmple(p).all() && p.cmple(self.max).all()
    }

    /// The gap between the boxes in mm; 0 when they meet.
    #[must_use]
    pub fn gap(self, other: Self) -> f64 {
        (self.min - other.max)
            .max(other.min - self.max)
            .max(DVec2::ZERO)
            .length()
    }

    /// The four corners as a positive polygon.
    #[must_use]
    pub fn corners(self) -> Vec<DVec2> {
        vec![
            self.min,
            DVec2::new(self.max.x, self.min.y),
            self.max,
            DVec2::new(self.min.x, self.max.y),
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn boxed(x0: f64, y0: f64, x1: f64, y1: f64) -> Bounds {
        Bounds {
            min: DVec2::new(x0, y0),
            max: DVec2::new(x1, y1),
        }
    }

    #[test]
    fn no_points_have_no_box() {
        assert_eq!(Bounds::around(&[]), None, "nothing to go round");
    }

    #[test]
    fn touching_boxes_meet_with_no_gap() {
        let (a, b) = (boxed(0.0, 0.0, 10.0, 10.0), boxed(10.0, 10.0, 20.0, 20.0));
        assert!(a.meets(b), "corner to corner is a meeting");
        assert_eq!(a.gap(b), 0.0, "no gap between touching boxes");
    }

    #[test]
    fn gap_between_boxes_is_the_straight_one() {
        let gap = boxed(0.0, 0.0, 1.0, 1.0).gap(boxed(4.0, 5.0, 6.0, 6.0));
        assert_eq!(gap, 5.0, "3 across and 4 down");
    }

    #[test]
    fn corners_are_positive() {
        let corners = boxed(1.0, 2.0, 4.0, 4.0).corners();
        assert_eq!(crate::shape::signed_area(&corners), 6.0, "3 by 2");
    }
}
