use palette::LinSrgb;

use super::Lab;
use super::lab::{from_linear, linear};
use crate::layout::Srgb;

/// A colour-vision deficiency in full.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Deficiency {
    /// No long-wave cones.
    Protan,
    /// No medium-wave cones.
    Deutan,
    /// No short-wave cones; the model is weak here (from memory).
    Tritan,
}

impl Deficiency {
    /// All three.
    pub const ALL: [Self; 3] = [Self::Protan, Self::Deutan, Self::Tritan];

    /// What becomes of linear sRGB light, row by row: severity 1.0 of Machado,
    /// Oliveira & Fernandes (2009), *IEEE Transactions on Visualization and
    /// Computer Graphics* 15:1291–1298, doi:10.1109/TVCG.2009.113.
    const fn matrix(self) -> [[f64; 3]; 3] {
        match self {
            Self::Protan => [
                [0.152_286, 1.052_583, -0.204_868],
                [0.114_503, 0.786_281, 0.099_216],
                [-0.003_882, -0.048_116, 1.051_998],
            ],
            Self::Deutan => [
                [0.367_322, 0.860_646, -0.227_968],
                [0.280_085, 0.672_501, 0.047_413],
                [-0.011_820, 0.042_940, 0.968_881],
            ],
            Self::Tritan => [
                [1.255_528, -0.076_749, -0.178_779],
                [-0.078_411, 0.930_809, 0.147_602],
                [0.004_733, 0.691_367, 0.303_900],
            ],
        }
    }
}

/// The colour as someone with the deficiency sees it, to the nearest 8 bits.
#[must_use]
pub fn seen(srgb: Srgb, by: Deficiency) -> Srgb {
    let encoded = palette::Srgb::<f64>::from_linear(LinSrgb::from(light(srgb, by)));
    let byte = |c: f64| (c * 255.0).round() as u8;
    Srgb([byte(encoded.red), byte(encoded.green), byte(encoded.blue)])
}

/// Lab of the colour as someone with the deficiency sees it, not rounded.
#[must_use]
pub fn seen_lab(srgb: Srgb, by: Deficiency) -> Lab {
    from_linear(light(srgb, by))
}

/// The light after the deficiency, clamped to what a screen can show.
fn light(srgb: Srgb, by: Deficiency) -> [f64; 3] {
    let [r, g, b] = linear(srgb);
    by.matrix()
        .map(|[x, y, z]| (x * r + y * g + z * b).clamp(0.0, 1.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn greys_stay_as_they_are() {
        for deficiency in Deficiency::ALL {
            for grey in [0x00_00_00, 0x80_80_80, 0xff_ff_ff] {
                let grey = Srgb::hex(grey);
                assert_eq!(seen(grey, deficiency), grey, "{deficiency:?} of {grey}");
            }
        }
    }

    #[test]
    fn red_and_green_of_one_tone_come_close_for_deutans() {
        let (herb, tomato) = (Srgb::hex(0x7a_8f_3c), Srgb::hex(0xc0_59_4b));
        let by = Deficiency::Deutan;
        let hyab = super::super::hyab(seen_lab(herb, by), seen_lab(tomato, by));
        assert!(hyab < 10.0, "merges, got {hyab}");
    }
}
