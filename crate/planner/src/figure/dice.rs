//! Seeded chance for drawing.
//!
//! Every thing on the table draws from its own stream, seeded with its own
//! number, so that an edit elsewhere never redraws it.

use core::f64::consts::TAU;

use glam::DVec2;
use rand_pcg::Pcg32;
use rand_pcg::rand_core::Rng;

use super::outline::polar;

/// The stream that shapes a silhouette; readings replay it without drawing.
pub(crate) const EDGE: u64 = 1;
/// The stream that places what lies inside the silhouette.
pub(crate) const INSIDE: u64 = 2;

/// A small, repeatable source of chance.
pub(crate) struct Dice(Pcg32);

impl Dice {
    /// The `stream`th source belonging to `seed`.
    pub(crate) fn new(seed: u32, stream: u64) -> Self {
        Dice(Pcg32::new(
            u64::from(seed).wrapping_mul(0x9e37_79b9_7f4a_7c15),
            stream,
        ))
    }

    /// A number in `[0, 1)`.
    pub(crate) fn unit(&mut self) -> f64 {
        f64::from(self.0.next_u32()) / 4_294_967_296.0
    }

    /// A number between `low` and `high`.
    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// A number in `[-reach, reach]`.
    pub(crate) fn about(&mut self, reach: f64) -> f64 {
        self.between(-reach, reach)
    }

    /// An angle anywhere on the circle, radians.
    pub(crate) fn angle(&mut self) -> f64 {
        self.between(0.0, TAU)
    }

    /// True with the given probability.
    pub(crate) fn chance(&mut self, probability: f64) -> bool {
        self.unit() < probability
    }

    /// A point spread evenly over the unit disc.
    pub(crate) fn disc(&mut self) -> DVec2 {
        polar(self.angle()) * self.unit().sqrt()
    }

    /// A point in the disc of radius two, thick in the middle and thin at the rim.
    pub(crate) fn cloud(&mut self) -> DVec2 {
        self.disc() + self.disc()
    }
}
