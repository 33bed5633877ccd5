//! The parts of a body that an arm in the picture is made of, by stature.
//!
//! Source: ANSUR II, NATICK/TR-15/007 (Gordon et al., 2014), a survey of
//! soldiers, so fitter and younger than most. Between the fifth percentile of
//! the women, both medians and the ninety-fifth of the men each part is taken
//! along a straight line; parts at one percentile are seldom those of one
//! person, so each is an estimate.

use crate::layout::{MAX_STATURE, MIN_STATURE};

/// Statures the parts are told at: women's fifth and fiftieth percentile,
/// men's fiftieth and ninety-fifth, mm.
const STATURES: [f64; 4] = [1525.0, 1626.0, 1755.0, 1870.0];
/// Hand, wrist crease to the tip of the middle finger.
const HAND: [f64; 4] = [165.0, 180.0, 193.0, 210.0];
/// Hand, across the knuckles.
const BREADTH: [f64; 4] = [72.0, 78.0, 88.0, 96.0];
/// Acromion to radiale, radiale to stylion and hand, one after the other.
const ARM: [f64; 4] = [675.0, 731.0, 796.0, 861.0];
/// Shoulder to elbow, and elbow to fingertip, both with the elbow bent: only
/// how one compares with the other is taken from them.
const UPPER: [f64; 4] = [307.0, 334.0, 363.0, 394.0];
const FORE_AND_HAND: [f64; 4] = [404.0, 438.0, 480.0, 520.0];
/// Round the wrist, and round the bent forearm at its widest.
const WRIST: [f64; 4] = [142.0, 154.0, 176.0, 191.0];
const FOREARM: [f64; 4] = [235.0, 263.0, 310.0, 348.0];
/// From shoulder to shoulder.
const SHOULDERS: [f64; 4] = [335.0, 365.0, 415.0, 447.0];
/// Shoulder above the floor, standing.
const ACROMION: [f64; 4] = [1242.0, 1332.0, 1439.0, 1546.0];
/// Crown above the seat, sitting.
const SITTING: [f64; 4] = [803.0, 857.0, 918.0, 977.0];
/// Back to belly, sitting.
const BELLY: [f64; 4] = [184.0, 227.0, 251.0, 320.0];

/// The parts of one body, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
    /// Height, standing.
    pub stature: f64,
    /// Shoulder to elbow, stretched.
    pub upper: f64,
    /// Elbow to wrist.
    pub forearm: f64,
    /// Wrist to the tip of the middle finger.
    pub hand: f64,
    /// Across the knuckles.
    pub breadth: f64,
    /// Across the wrist.
    pub wrist: f64,
    /// Across the forearm at its widest.
    pub widest: f64,
    /// From the middle of the body to a shoulder.
    pub shoulder: f64,
    /// Shoulder above the floor, standing.
    pub standing: f64,
    /// Shoulder above the seat, sitting.
    pub sitting: f64,
    /// Back to belly, sitting.
    pub belly: f64,
}

impl Body {
    /// The body of someone so tall, mm; beyond what a layout may say the
    /// nearest.
    #[must_use]
    pub fn of(stature: f64) -> Self {
        let stature = stature.clamp(f64::from(MIN_STATURE), f64::from(MAX_STATURE));
        let at = |part: &[f64; 4]| along(part, stature);
        let hand = at(&HAND);
        let (upper, fore) = (at(&UPPER), at(&FORE_AND_HAND) - hand);
        let both = at(&ARM) - hand;
        let standing = at(&ACROMION);
        Self {
            stature,
            upper: both * upper / (upper + fore),
            forearm: both * fore / (upper + fore),
            hand,
            breadth: at(&BREADTH),
            wrist: at(&WRIST) / core::f64::consts::PI,
            widest: at(&FOREARM) / core::f64::consts::PI,
            shoulder: at(&SHOULDERS) * 0.5,
            standing,
            sitting: at(&SITTING) - (stature - standing),
            belly: at(&BELLY),
        }
    }

    /// Shoulder to fingertip, stretched.
    #[must_use]
    pub fn arm(&self) -> f64 {
        self.upper + self.forearm + self.hand
    }
}

/// A part at a stature, along the line through the two knots about it.
fn along(part: &[f64; 4], stature: f64) -> f64 {
    let before = STATURES.iter().rposition(|s| *s <= stature).unwrap_or(0);
    let n = before.min(STATURES.len() - 2);
    let (from, to) = (STATURES[n], STATURES[n + 1]);
    part[n] + (part[n + 1] - part[n]) * (stature - from) / (to - from)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_are_those_of_the_survey_where_it_tells_them() {
        let woman = Body::of(1626.0);
        assert!((woman.arm() - 731.0).abs() < 1e-9, "{}", woman.arm());
        assert!((woman.wrist - 49.0).abs() < 0.5, "{}", woman.wrist);
        let man = Body::of(1755.0);
        assert!((man.shoulder - 207.5).abs() < 1e-9, "{}", man.shoulder);
        assert!((man.sitting - 602.0).abs() < 1e-9, "{}", man.sitting);
        assert!((man.widest - 99.0).abs() < 0.5, "{}", man.widest);
    }

    /// Acromion to radiale and radiale to stylion of the same survey, men's
    /// means 335 and 268 mm: from memory.
    #[test]
    fn the_two_links_share_the_arm_as_bones_do() {
        let man = Body::of(1755.0);
        assert!((man.upper - 335.0).abs() < 5.0, "{}", man.upper);
        assert!((man.forearm - 268.0).abs() < 5.0, "{}", man.forearm);
    }

    #[test]
    fn the_taller_is_the_longer_in_every_part() {
        let bodies: Vec<Body> = (140..=210)
            .map(|cm| Body::of(f64::from(cm) * 10.0))
            .collect();
        for pair in bodies.windows(2) {
            let grows = |part: fn(&Body) -> f64| part(&pair[1]) > part(&pair[0]);
            let parts: [fn(&Body) -> f64; 6] = [
                |b| b.upper,
                |b| b.forearm,
                |b| b.hand,
                |b| b.sitting,
                |b| b.standing,
                |b| b.shoulder,
            ];
            assert!(parts.into_iter().all(grows), "{pair:?}");
        }
        assert_eq!(Body::of(500.0), Body::of(1400.0), "the nearest");
    }
}
