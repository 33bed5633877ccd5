//! Between 8-bit sRGB and CIE Lab.

use palette::color_difference::{Ciede2000, HyAb};
use palette::white_point::D65;
use palette::{FromColor, LinSrgb};

use crate::layout::Srgb;

/// A colour in CIE 1976 L*a*b* under D65, 2° observer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lab {
    /// Lightness, 0 black to 100 white.
    pub l: f64,
    /// Green (negative) to red.
    pub a: f64,
    /// Blue (negative) to yellow.
    pub b: f64,
}

/// An 8-bit sRGB colour in Lab.
///
/// IEC 61966-2-1 curve; sRGB to XYZ by the seven-digit matrix
/// `.4124564 .3575761 .1804375 / .2126729 .7151522 .0721750 /
/// .0193339 .1191920 .9503041`; white `.95047 1 1.08883`; Lab with the exact
/// breaks 216/24389 and 24389/27. The standard's four-digit matrix would move
/// saturated colours by up to about 0.03 HyAB.
#[must_use]
pub fn lab(srgb: Srgb) -> Lab {
    from_linear(linear(srgb))
}

/// The nearest 8-bit sRGB colour; what lies outside its range is clipped.
#[must_use]
pub fn srgb(lab: Lab) -> Srgb {
    let light = LinSrgb::<f64>::from_color(library(lab));
    let byte = |c: f64| (c * 255.0).round().clamp(0.0, 255.0) as u8;
    let shown = palette::Srgb::<f64>::from_linear(light);
    Srgb([shown.red, shown.green, shown.blue].map(byte))
}

/// A colour under so many times the light it was named for; what is brighter
/// than full tone is clipped channel by channel.
#[must_use]
pub fn under_light(lab: Lab, times: f64) -> Lab {
    let light: [f64; 3] = LinSrgb::<f64>::from_color(library(lab)).into();
    from_linear(light.map(|c| (c * times).clamp(0.0, 1.0)))
}

/// Linear light of the three channels, 0 to 1.
pub(super) fn linear(srgb: Srgb) -> [f64; 3] {
    // Not by the library's table for 8-bit values, which leaves the curve in
    // the ninth digit.
    let [r, g, b] = srgb.0.map(|c| f64::from(c) / 255.0);
    palette::Srgb::new(r, g, b).into_linear().into()
}

/// Lab of linear sRGB light.
pub(super) fn from_linear(light: [f64; 3]) -> Lab {
    let lab = palette::Lab::<D65, f64>::from_color(LinSrgb::from(light));
    Lab {
        l: lab.l,
        a: lab.a,
        b: lab.b,
    }
}

/// Difference of lightness, never negative.
#[must_use]
pub fn delta_l(x: Lab, y: Lab) -> f64 {
    (x.l - y.l).abs()
}

/// Distance on the a*b* plane.
#[must_use]
pub fn delta_c(x: Lab, y: Lab) -> f64 {
    let (a, b) = (x.a - y.a, x.b - y.b);
    (a * a + b * b).sqrt()
}

/// HyAB difference: |ΔL*| plus the distance on the a*b* plane.
///
/// For large differences, 10 and more. Abasi, Amani Tehran & Fairchild (2020),
/// *Color Research & Application* 45:208–223, doi:10.1002/col.22451.
#[must_use]
pub fn hyab(x: Lab, y: Lab) -> f64 {
    library(x).hybrid_distance(library(y))
}

/// CIEDE2000 difference with unit weights, for small differences.
///
/// ISO/CIE 11664-6; Sharma, Wu & Dalal (2005), *Color Research & Application*
/// 30:21–30, doi:10.1002/col.20070. Where the two hues lie on either side of
/// red and add up to more than 360°, the library's mean hue is a turn too
/// high, which is up to 0.001 in the result.
#[must_use]
pub fn ciede2000(x: Lab, y: Lab) -> f64 {
    library(x).difference(library(y))
}

fn library(lab: Lab) -> palette::Lab<D65, f64> {
    palette::Lab::new(lab.l, lab.a, lab.b)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn black_and_white_are_the_ends() {
        let (black, white) = (lab(Srgb::hex(0)), lab(Srgb::hex(0xff_ff_ff)));
        assert_eq!(
            black,
            Lab {
                l: 0.0,
                a: 0.0,
                b: 0.0
            },
            "black"
        );
        assert!(
            (white.l - 100.0).abs() < 1e-4,
            "white has L* 100, got {}",
            white.l
        );
        assert!(
            white.a.abs() < 1e-2 && white.b.abs() < 1e-2,
            "white is neutral: {white:?}"
        );
    }

    #[test]
    fn equal_colours_do_not_differ() {
        let plum = lab(Srgb::hex(0x5b_2c_4a));
        assert_eq!(hyab(plum, plum), 0.0, "HyAB");
        assert_eq!(ciede2000(plum, plum), 0.0, "CIEDE2000");
    }

    #[test]
    fn greys_differ_by_lightness_alone() {
        let (x, y) = (lab(Srgb::hex(0x40_40_40)), lab(Srgb::hex(0xc0_c0_c0)));
        let excess = hyab(x, y) - delta_l(x, y);
        assert!(
            (0.0..0.01).contains(&excess),
            "HyAB of greys is |ΔL*|, excess {excess}"
        );
    }

    #[test]
    fn hyab_is_lightness_plus_chroma_plane() {
        let x = Lab {
            l: 50.0,
            a: 3.0,
            b: 4.0,
        };
        let y = Lab {
            l: 40.0,
            a: 0.0,
            b: 0.0,
        };
        assert_eq!(hyab(x, y), 15.0, "10 + 5");
        assert_eq!(delta_l(x, y) + delta_c(x, y), hyab(x, y), "its two parts");
    }
}
