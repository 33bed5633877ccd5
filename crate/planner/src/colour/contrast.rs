//! Luminance and contrast ratio of WCAG, for what is read on the picture and on
//! paper.

use super::lab::linear;
use crate::layout::Srgb;

/// Least contrast of large type and of signs, WCAG 2.1 success criteria 1.4.3
/// and 1.4.11.
pub const CONTRAST_LARGE: f64 = 3.0;
/// Least contrast of ordinary type, WCAG 2.1 success criterion 1.4.3.
pub const CONTRAST_TEXT: f64 = 4.5;

/// Relative luminance, 0 black to 1 white, as WCAG 2.1 defines it.
///
/// WCAG prints 0.03928 as the break of the sRGB curve where the standard has
/// 0.04045; no 8-bit value lies between.
#[must_use]
pub fn relative_luminance(srgb: Srgb) -> f64 {
    let [r, g, b] = linear(srgb);
    0.2126 * r + 0.7152 * g + 0.0722 * b
}

/// Relative luminance of a lightness L*, the inverse of CIE 1976.
#[must_use]
pub fn luminance_of(l: f64) -> f64 {
    let f = (l + 16.0) / 116.0;
    if l > 8.0 {
        f * f * f
    } else {
        l * 27.0 / 24389.0
    }
}

/// Contrast ratio of two relative luminances, 1 to 21, as WCAG 2.1 defines it.
#[must_use]
pub fn contrast_of(x: f64, y: f64) -> f64 {
    (x.max(y) + 0.05) / (x.min(y) + 0.05)
}

/// Contrast ratio of two colours, 1 to 21, as WCAG 2.1 defines it.
#[must_use]
pub fn contrast(x: Srgb, y: Srgb) -> f64 {
    contrast_of(relative_luminance(x), relative_luminance(y))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn black_on_white_is_21_either_way() {
        let (black, white) = (Srgb::hex(0), Srgb::hex(0xff_ff_ff));
        assert!(
            (contrast(black, white) - 21.0).abs() < 1e-9,
            "the most there is"
        );
        assert_eq!(
            contrast(black, white),
            contrast(white, black),
            "order does not matter"
        );
    }

    #[test]
    fn a_colour_on_itself_is_1() {
        let sage = Srgb::hex(0x9a_a8_8c);
        assert_eq!(contrast(sage, sage), 1.0, "the least there is");
    }
}
