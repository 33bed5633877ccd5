//! How large a thing is drawn, how it is turned and which side is up.

use glam::{DVec2, dvec2};

use super::outline::{bounds, polar};

/// Which side of a food the camera sees.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Face {
    /// As it is usually served.
    #[default]
    Usual,
    /// The outside: crust, peel or skin.
    Skin,
    /// A clean cut.
    Cut,
    /// Torn by hand.
    Torn,
}

/// Size and pose of one thing, in its own frame about its centre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Form {
    /// The thing's number; it seeds everything about the drawing.
    pub seed: u32,
    /// Half its width and depth before the turn, mm.
    pub half: DVec2,
    /// Turn, radians clockwise on the page.
    pub turn: f64,
    /// The side that is up.
    pub face: Face,
}

impl Form {
    /// A form seen straight from above, usual side up.
    pub const fn new(seed: u32, half: DVec2, turn: f64) -> Self {
        Form {
            seed,
            half,
            turn,
            face: Face::Usual,
        }
    }

    /// The same with extents the drawing can work with: finite, at least a
    /// millimetre and at most ten metres.
    pub(crate) fn sound(self) -> Form {
        let finite = |v: DVec2, other: f64| {
            dvec2(
                if v.x.is_finite() { v.x } else { other },
                if v.y.is_finite() { v.y } else { other },
            )
        };
        Form {
            half: finite(self.half, 1.0).clamp(DVec2::ONE, DVec2::splat(10_000.0)),
            turn: if self.turn.is_finite() {
                self.turn
            } else {
                0.0
            },
            ..self
        }
    }
}

/// From the frame a shape is designed in to the one it is drawn in.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Frame {
    centre: DVec2,
    scale: DVec2,
    axis: DVec2,
}

impl Frame {
    /// Turns only.
    pub(crate) fn turned(turn: f64) -> Frame {
        Frame {
            centre: DVec2::ZERO,
            scale: DVec2::ONE,
            axis: polar(turn),
        }
    }

    /// Brings the box round `edge` to exactly the form's extents, then turns.
    pub(crate) fn fitted(edge: &[DVec2], form: &Form) -> Frame {
        let (low, high) = bounds(edge);
        let span = (high - low).max(DVec2::splat(1e-6));
        Frame {
            centre: (low + high) / 2.0,
            scale: form.half * 2.0 / span,
            axis: polar(form.turn),
        }
    }

    /// A designed point where it is drawn.
    pub(crate) fn apply(&self, p: DVec2) -> DVec2 {
        self.axis.rotate((p - self.centre) * self.scale)
    }

    /// A direction on the page in the designed frame.
    pub(crate) fn own(&self, v: DVec2) -> DVec2 {
        dvec2(self.axis.x, -self.axis.y).rotate(v)
    }
}
