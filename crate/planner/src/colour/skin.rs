//! Skin tones by the individual typology angle, a published scale:
//! ITA = arctan((L* − 50) ÷ b*), in degrees, and its six classes (Chardon,
//! Cretois, Hourseau 1991, International Journal of Cosmetic Science 13:191;
//! limits as quoted in later papers, the paper itself not seen).
use crate::layout::Srgb;

/// A tone of each class: very light, light, intermediate, tan, brown, dark.
/// Drawn by us within the limits.
pub const SKINS: [Srgb; 6] = [
    Srgb::hex(0x00f3_d9c4),
    Srgb::hex(0x00e3_b998),
    Srgb::hex(0x00c0_8f6f),
    Srgb::hex(0x00b0_7f5f),
    Srgb::hex(0x008a_5a3c),
    Srgb::hex(0x0047_301f),
];

#[cfg(test)]
mod tests {
    use super::super::lab;
    use super::*;

    /// Over each the next lighter class begins, degrees, from very light down.
    const SKIN_CLASSES: [f64; 5] = [55.0, 41.0, 28.0, 10.0, -30.0];

    /// The individual typology angle of a tone, degrees.
    fn typology_angle(srgb: Srgb) -> f64 {
        let lab = lab(srgb);
        libm::atan2(lab.l - 50.0, lab.b).to_degrees()
    }

    #[test]
    fn each_tone_lies_in_its_class() {
        for (n, tone) in SKINS.into_iter().enumerate() {
            let angle = typology_angle(tone);
            let class = SKIN_CLASSES.iter().filter(|limit| angle <= **limit).count();
            assert_eq!(class, n, "{tone:?}: {angle}");
        }
    }

    #[test]
    fn the_angle_is_as_worked_out_by_hand() {
        // #c08f6f by the formulas of CIE 1976 in another program: L* 63.3,
        // b* 24.3, so 28.8°; within a tenth.
        let angle = typology_angle(Srgb::hex(0x00c0_8f6f));
        assert!((angle - 28.8).abs() < 0.1, "{angle}");
    }
}
