//! The light as a flat, evenly bright outline in space.
use glam::{DVec2, DVec3, dvec3};

use crate::layout::{Layout, LightShape};

/// A flat source. Lengths in mm; x right, y down the table, z up from its top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Source {
    /// Its centre.
    pub centre: DVec3,
    /// Unit vector the way it faces.
    pub facing: DVec3,
    /// From its centre to its edge, sideways.
    pub across: DVec3,
    /// From its centre to its edge, upwards.
    pub up: DVec3,
    /// A rectangle, or the ellipse within it.
    pub shape: LightShape,
}

impl Source {
    /// The light of a layout. A window stands upright and faces the table's
    /// centre; a disc is turned down to it as well.
    #[must_use]
    pub fn of(layout: &Layout) -> Self {
        let (light, table) = (&layout.light, &layout.table);
        let middle = DVec2::new(f64::from(table.width), f64::from(table.depth)) * 0.5;
        let out = light.clock.direction();
        let flat = middle + out * f64::from(light.distance);
        let above = f64::from(light.height_above_table);
        let centre = dvec3(flat.x, flat.y, above);
        let level = dvec3(-out.x, -out.y, 0.0);
        let facing = match light.shape {
            LightShape::Window => level,
            LightShape::Disc => (dvec3(middle.x, middle.y, 0.0) - centre).normalize_or(-DVec3::Z),
        };
        let sideways = dvec3(-out.y, out.x, 0.0);
        let [wide, high] = match light.shape {
            LightShape::Window => [light.width, light.height],
            LightShape::Disc => [light.width, light.width],
        };
        Self {
            centre,
            facing,
            across: sideways * (f64::from(wide) * 0.5),
            up: sideways.cross(facing).normalize_or(DVec3::Z) * (f64::from(high) * 0.5),
            shape: light.shape,
        }
    }

    /// A point of it: `u` and `v` from −1 to 1, sideways and upwards.
    #[must_use]
    pub fn point(&self, u: f64, v: f64) -> DVec3 {
        self.centre + self.across * u + self.up * v
    }

    /// Its area, mm².
    #[must_use]
    pub fn area(&self) -> f64 {
        let box_ = 4.0 * self.across.length() * self.up.length();
        match self.shape {
            LightShape::Window => box_,
            LightShape::Disc => box_ * core::f64::consts::FRAC_PI_4,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{LayoutId, Turn};

    #[test]
    fn a_window_at_nine_stands_left_upright_and_faces_right() {
        let mut layout = Layout::empty(LayoutId(1));
        layout.light.clock = Turn::from_degrees(270.0);
        let source = Source::of(&layout);
        // The empty board is 1200 × 900 and its light 1800 away, 1200 up.
        assert!((source.centre - dvec3(-1200.0, 450.0, 1200.0)).length() < 1e-9);
        assert!((source.facing - DVec3::X).length() < 1e-9, "{source:?}");
        assert!(source.across.z.abs() < 1e-9, "level");
        assert!((source.up.z.abs() - 600.0).abs() < 1e-9, "upright");
        assert!((source.area() - 1200.0 * 1200.0).abs() < 1e-6);
    }

    #[test]
    fn a_disc_is_turned_down_to_the_middle_of_the_table() {
        let mut layout = Layout::empty(LayoutId(1));
        layout.light.shape = LightShape::Disc;
        let source = Source::of(&layout);
        let to_middle = dvec3(600.0, 450.0, 0.0) - source.centre;
        assert!((source.facing - to_middle.normalize()).length() < 1e-9);
        assert!(source.facing.dot(source.up).abs() < 1e-9, "flat");
        let round = core::f64::consts::PI * 600.0 * 600.0;
        assert!((source.area() - round).abs() < 1e-6 * round);
    }
}
