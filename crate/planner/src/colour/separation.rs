//! How far apart two colours are on an overhead picture, and the bands of it.

use super::{Lab, delta_c, delta_l};

/// Bands of difference start here: below, two colours merge. The edges are our
/// choice, anchored near ISO 9241-8 (20, from memory) and, for 40, the limit
/// of search (Carter & Carter 1982, from memory) and WCAG's 3:1, which every
/// |ΔL*| of 38.4 meets.
pub const WEAK_FROM: f64 = 10.0;
/// From here on a difference is clear; below it an edge counts as lost.
pub const CLEAR_FROM: f64 = 20.0;
/// From here on a difference is strong.
pub const STRONG_FROM: f64 = 40.0;
/// Below this |ΔL*| two colours are parted by hue and chroma only. Our choice.
pub const TONE_FROM: f64 = 15.0;
/// Where both L* are below this, only tone parts two colours: hue does not
/// print in the dark. Our choice.
pub const DARK_BELOW: f64 = 40.0;

/// How well two colours part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Band {
    /// They read as one.
    Merges,
    /// An edge can be found.
    Weak,
    /// An edge is seen at once.
    Clear,
    /// An edge carries across a room.
    Strong,
}

impl Band {
    /// The band a difference falls in; an edge belongs to the band above it.
    #[must_use]
    pub fn of(difference: f64) -> Self {
        if difference >= STRONG_FROM {
            Self::Strong
        } else if difference >= CLEAR_FROM {
            Self::Clear
        } else if difference >= WEAK_FROM {
            Self::Weak
        } else {
            Self::Merges
        }
    }
}

/// What parts two colours.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Separation {
    /// HyAB difference: `delta_l + delta_c`.
    pub hyab: f64,
    /// |ΔL*|.
    pub delta_l: f64,
    /// Distance on the a*b* plane.
    pub delta_c: f64,
    /// What the bands are read on: `hyab`, or `delta_l` alone in the dark.
    pub band_value: f64,
}

impl Separation {
    /// The band.
    #[must_use]
    pub fn band(self) -> Band {
        Band::of(self.band_value)
    }

    /// Whether an edge between the two is lost.
    #[must_use]
    pub fn lost(self) -> bool {
        self.band_value < CLEAR_FROM
    }
}

/// Compares two colours, with the rule for the dark.
#[must_use]
pub fn separation(x: Lab, y: Lab) -> Separation {
    let (delta_l, delta_c) = (delta_l(x, y), delta_c(x, y));
    let hyab = delta_l + delta_c;
    let dark = x.l < DARK_BELOW && y.l < DARK_BELOW;
    Separation {
        hyab,
        delta_l,
        delta_c,
        band_value: if dark { delta_l } else { hyab },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::lab;
    use crate::layout::Srgb;

    #[test]
    fn band_edges_belong_to_the_band_above() {
        for (value, band) in [
            (0.0, Band::Merges),
            (9.999, Band::Merges),
            (10.0, Band::Weak),
            (19.999, Band::Weak),
            (20.0, Band::Clear),
            (39.999, Band::Clear),
            (40.0, Band::Strong),
            (200.0, Band::Strong),
        ] {
            assert_eq!(Band::of(value), band, "at {value}");
        }
    }

    #[test]
    fn in_the_dark_only_tone_counts() {
        let (board, wine) = (lab(Srgb::hex(0x42_3e_39)), lab(Srgb::hex(0x5c_10_20)));
        let parted = separation(board, wine);
        assert!(
            parted.hyab > STRONG_FROM,
            "by HyAB {} it is strong",
            parted.hyab
        );
        assert_eq!(parted.band_value, parted.delta_l, "both are dark");
        assert_eq!(parted.band(), Band::Merges, "dark red on charcoal merges");
        assert!(parted.lost(), "so the edge is lost");
    }

    #[test]
    fn one_light_side_brings_hue_back() {
        let at = |l| Lab { l, a: 30.0, b: 0.0 };
        let ground = Lab {
            l: 39.0,
            a: 0.0,
            b: 0.0,
        };
        assert_eq!(
            separation(at(39.9), ground).band(),
            Band::Merges,
            "both under 40"
        );
        assert_eq!(
            separation(at(40.0), ground).band(),
            Band::Clear,
            "40 is not dark"
        );
    }

    #[test]
    fn equal_tone_is_flagged() {
        let (herb, tomato) = (lab(Srgb::hex(0x7a_8f_3c)), lab(Srgb::hex(0xc0_59_4b)));
        let parted = separation(herb, tomato);
        assert_eq!(parted.band(), Band::Strong, "HyAB {}", parted.hyab);
        assert!(parted.delta_l < TONE_FROM, "|ΔL*| {}", parted.delta_l);
    }
}
