//! The small values a layout is made of.
use std::collections::BTreeMap;
use std::fmt;

use glam::DVec2;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// Unknown fields of an object, kept as they came and written back.
pub type Extra = BTreeMap<String, serde_json::Value>;

/// The number of an object within its layout, from 1; never reused.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Id(pub u16);

/// The identity of a layout: 64 random bits, written as 16 hex digits.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct LayoutId(pub u64);

impl fmt::Display for LayoutId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:016x}", self.0)
    }
}

impl Serialize for LayoutId {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        s.collect_str(self)
    }
}

/// A place on the table plane in whole mm: `[x, y]`, x right, y down, from
/// the table's own top-left corner.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Point {
    /// Millimetres to the right.
    pub x: i32,
    /// Millimetres down.
    pub y: i32,
}

impl Point {
    /// A place from its two coordinates in mm.
    #[must_use]
    pub const fn new(x: i32, y: i32) -> Self {
        Self { x, y }
    }

    /// The nearest whole-millimetre place; non-finite input gives the corner.
    #[must_use]
    pub fn nearest(v: DVec2) -> Self {
        let whole = |c: f64| {
            if c.is_finite() {
                c.clamp(-1e6, 1e6).round() as i32
            } else {
                0
            }
        };
        Self::new(whole(v.x), whole(v.y))
    }

    /// As a vector in mm.
    #[must_use]
    pub fn vec(self) -> DVec2 {
        DVec2::new(f64::from(self.x), f64::from(self.y))
    }

    /// This place moved by `dx`, `dy` mm; never past what a number holds.
    #[must_use]
    pub const fn moved(self, dx: i32, dy: i32) -> Self {
        Self::new(self.x.saturating_add(dx), self.y.saturating_add(dy))
    }
}

impl Serialize for Point {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        [self.x, self.y].serialize(s)
    }
}

/// A turn in half degrees, clockwise from 12 o'clock, from 0 to 719.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Turn(u16);

impl Turn {
    /// No turn.
    pub const ZERO: Self = Self(0);

    /// From half degrees; any whole number of turns is dropped.
    #[must_use]
    pub const fn from_half_degrees(half: i32) -> Self {
        Self(half.rem_euclid(720) as u16)
    }

    /// From degrees, to the nearest half degree.
    #[must_use]
    pub fn from_degrees(degrees: f64) -> Self {
        let half = (degrees * 2.0).round();
        Self::from_half_degrees(if half.is_finite() {
            (half % 720.0) as i32
        } else {
            0
        })
    }

    /// In half degrees, 0 to 719.
    #[must_use]
    pub const fn half_degrees(self) -> i32 {
        self.0 as i32
    }

    /// In degrees, 0 to 359.5.
    #[must_use]
    pub fn degrees(self) -> f64 {
        f64::from(self.0) * 0.5
    }

    /// In radians.
    #[must_use]
    pub fn radians(self) -> f64 {
        self.degrees().to_radians()
    }

    /// The unit vector towards this clock direction (y down): 0 is up.
    #[must_use]
    pub fn direction(self) -> DVec2 {
        let (sin, cos) = libm::sincos(self.radians());
        DVec2::new(sin, -cos)
    }

    /// This turn and another, added.
    #[must_use]
    pub const fn plus(self, half: i32) -> Self {
        Self::from_half_degrees(self.0 as i32 + half)
    }
}

impl Serialize for Turn {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        if self.0.is_multiple_of(2) {
            s.serialize_u16(self.0 / 2)
        } else {
            s.serialize_f64(self.degrees())
        }
    }
}

/// A ratio of width to height, such as `[3, 2]`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ratio {
    /// The width's share.
    pub width: u16,
    /// The height's share.
    pub height: u16,
}

impl Ratio {
    /// Height of a picture of this ratio and this width.
    #[must_use]
    pub fn height_for(self, width: f64) -> f64 {
        width * f64::from(self.height) / f64::from(self.width)
    }
}

impl Serialize for Ratio {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        [self.width, self.height].serialize(s)
    }
}

/// An 8-bit sRGB colour, written `#rrggbb`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Srgb(pub [u8; 3]);

impl Srgb {
    /// Reads exactly `#` and six hex digits; anything else is `None`.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let hex = text.strip_prefix('#')?;
        if hex.len() != 6 || !hex.bytes().all(|b| b.is_ascii_hexdigit()) {
            return None;
        }
        let all = u32::from_str_radix(hex, 16).ok()?;
        Some(Self([(all >> 16) as u8, (all >> 8) as u8, all as u8]))
    }

    /// A colour known when the program is written, as `0xrrggbb`.
    #[must_use]
    pub const fn hex(all: u32) -> Self {
        Self([(all >> 16) as u8, (all >> 8) as u8, all as u8])
    }
}

impl fmt::Display for Srgb {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [r, g, b] = self.0;
        write!(f, "#{r:02x}{g:02x}{b:02x}")
    }
}

impl<'de> Deserialize<'de> for Srgb {
    fn deserialize<D: Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        let text = String::deserialize(d)?;
        Self::parse(&text).ok_or_else(|| serde::de::Error::custom("a colour such as #2c323a"))
    }
}

impl Serialize for Srgb {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        s.collect_str(self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn turns_wrap_and_point_as_a_clock() {
        assert_eq!(Turn::from_degrees(-90.0).degrees(), 270.0, "nine o'clock");
        let right = Turn::from_degrees(90.0).direction();
        assert!(
            (right - DVec2::X).length() < 1e-12,
            "three o'clock is right, got {right}"
        );
        assert!(
            (Turn::ZERO.direction() + DVec2::Y).length() < 1e-12,
            "twelve is up"
        );
    }

    #[test]
    fn only_six_hex_digits_are_a_colour() {
        assert_eq!(
            Srgb::parse("#2C323a"),
            Some(Srgb([0x2c, 0x32, 0x3a])),
            "hex"
        );
        for bad in ["red", "#fff", "#12345g", "url(#a)", "#+12345", "", "#éé"] {
            assert_eq!(Srgb::parse(bad), None, "{bad} is no colour");
        }
    }

    #[test]
    fn nearest_point_of_nothing_finite_is_the_corner() {
        assert_eq!(
            Point::nearest(DVec2::new(f64::NAN, f64::INFINITY)),
            Point::default(),
            "finite"
        );
    }
}
