//! How far the weight of a picture lies from its middle, and the balance score,
//! S1.

use glam::DVec2;

use super::{CHROMA_WEIGHTS, PointMass, Weighed, centroid};

/// How far the weight lies from the picture's middle, as shares of its width
/// and height: −0.5 is the left or top edge, 0.5 the right or bottom.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Offset {
    /// Right of the middle.
    pub dx: f64,
    /// Below the middle.
    pub dy: f64,
}

/// The offset of a centre of mass; `None` without a picture.
#[must_use]
pub fn offset(size: DVec2, at: DVec2) -> Option<Offset> {
    let share = at / size - 0.5;
    (has_area(size) && share.is_finite()).then_some(Offset {
        dx: share.x,
        dy: share.y,
    })
}

/// Deviation of the centre of mass: 0 in the middle, 100 at the middle of an
/// edge, 141 in a corner.
///
/// Hübner & Fillinger (2016), *Frontiers in Psychology* 7:335,
/// doi:10.3389/fpsyg.2016.00335, normalised as their code does; other texts
/// put 100 at the corner. Their rounding to whole pixels is left out.
#[must_use]
pub fn dcm(offset: Offset) -> f64 {
    100.0 * DVec2::new(offset.dx, offset.dy).length() / 0.5
}

/// Balance score S1: 100 × exp(−5 D / Dmax) with D the Manhattan distance of
/// the centre of mass from the middle and Dmax half the width plus half the
/// height. 50 is a random spread. `None` without a picture.
///
/// Form of Zhang & Xue, *Symmetry* 18(1):41, doi:10.3390/sym18010041, without
/// their reading-order weights, which say nothing about photographs.
#[must_use]
pub fn balance_score(size: DVec2, at: DVec2) -> Option<f64> {
    let away = (at - size * 0.5).abs();
    let score = 100.0 * libm::exp(-5.0 * (away.x + away.y) / ((size.x + size.y) * 0.5));
    (has_area(size) && score.is_finite()).then_some(score)
}

/// [`balance_score`] of parts at one weight of chroma; `None` when nothing
/// weighs anything.
#[must_use]
pub fn balance_score_of(size: DVec2, parts: &[Weighed], chroma_weight: f64) -> Option<f64> {
    let masses: Vec<PointMass> = parts.iter().map(|p| p.mass(chroma_weight)).collect();
    balance_score(size, centroid(&masses)?)
}

/// Lowest and highest balance score over [`CHROMA_WEIGHTS`].
#[must_use]
pub fn score_band(size: DVec2, parts: &[Weighed]) -> Option<[f64; 2]> {
    let mut band = [f64::INFINITY, f64::NEG_INFINITY];
    for weight in CHROMA_WEIGHTS {
        let score = balance_score_of(size, parts, weight)?;
        band = [band[0].min(score), band[1].max(score)];
    }
    Some(band)
}

/// Balance measure of objects by lever arms, 0 to 1: one less the mean of how
/// unlike left and right, and top and bottom, are in mass × distance from the
/// centre line. `None` without a picture or without mass.
///
/// Ngo, Teo & Byrne (2003), *Information Sciences* 152:25–46,
/// doi:10.1016/S0020-0255(02)00404-8. Two later studies found no correlation
/// with ratings, or little; shown for comparison only.
#[must_use]
pub fn object_balance(size: DVec2, masses: &[PointMass]) -> Option<f64> {
    centroid(masses)?;
    let total: f64 = masses.iter().map(|m| m.mass).sum();
    let unlike = |arms: &dyn Fn(&PointMass) -> f64, across: f64| {
        let (mut before, mut after) = (0.0, 0.0);
        for m in masses {
            let moment = m.mass * arms(m);
            if moment < 0.0 {
                before -= moment;
            } else {
                after += moment;
            }
        }
        let most = f64::max(before, after);
        // One object in the very middle must not count as all to one side for
        // the last bit of its centre.
        if most > total * across * 1e-9 {
            (before - after).abs() / most
        } else {
            0.0
        }
    };
    let across = unlike(&|m| m.at.x - size.x * 0.5, size.x);
    let down = unlike(&|m| m.at.y - size.y * 0.5, size.y);
    let balance = 1.0 - (across + down) * 0.5;
    (has_area(size) && balance.is_finite()).then_some(balance)
}

pub(super) fn has_area(size: DVec2) -> bool {
    size.is_finite() && size.min_element() > 0.0
}

#[cfg(test)]
mod tests {
    use super::*;

    const SIZE: DVec2 = DVec2::new(1200.0, 800.0);

    fn point(x: f64, y: f64, mass: f64) -> PointMass {
        PointMass {
            at: DVec2::new(x, y),
            mass,
        }
    }

    #[test]
    fn offsets_are_signed_shares_of_the_picture() {
        let right_low = offset(SIZE, DVec2::new(900.0, 600.0));
        assert_eq!(
            right_low,
            Some(Offset { dx: 0.25, dy: 0.25 }),
            "right and below"
        );
        let left_high = offset(SIZE, DVec2::ZERO);
        assert_eq!(left_high, Some(Offset { dx: -0.5, dy: -0.5 }), "the corner");
    }

    #[test]
    fn mirrored_and_turned_pictures_score_the_same() {
        let at = DVec2::new(300.0, 250.0);
        let score = balance_score(SIZE, at);
        for other in [
            DVec2::new(900.0, 250.0),
            DVec2::new(300.0, 550.0),
            DVec2::new(900.0, 550.0),
        ] {
            assert_eq!(balance_score(SIZE, other), score, "{other} mirrors {at}");
        }
        assert_eq!(
            balance_score(SIZE * 0.5, at * 0.5),
            score,
            "scale does not matter"
        );
    }

    #[test]
    fn score_falls_as_the_weight_leaves_the_middle() {
        let mut last = f64::INFINITY;
        for i in 0..=6 {
            let at = SIZE * 0.5 + DVec2::new(f64::from(i) * 100.0, 0.0);
            let score = balance_score(SIZE, at).expect("a picture");
            assert!(score < last, "{score} after {last}");
            last = score;
        }
    }

    #[test]
    fn band_spans_the_chroma_weights() {
        let part = |x, delta_l, delta_c| Weighed {
            at: DVec2::new(x, 400.0),
            area: 100.0,
            delta_l,
            delta_c,
            emphasis: 1.0,
        };
        let [low, high] =
            score_band(SIZE, &[part(300.0, 40.0, 0.0), part(900.0, 20.0, 60.0)]).expect("masses");
        assert!(low < high, "chroma shifts the weight: {low} to {high}");
        let [low, high] =
            score_band(SIZE, &[part(300.0, 40.0, 0.0), part(900.0, 40.0, 0.0)]).expect("masses");
        assert_eq!((low, high), (100.0, 100.0), "greys do not care");
    }

    #[test]
    fn lever_balanced_objects_balance() {
        let masses = [point(480.0, 400.0, 4.0), point(1080.0, 400.0, 1.0)];
        assert_eq!(
            object_balance(SIZE, &masses),
            Some(1.0),
            "4 × 120 = 1 × 480"
        );
        assert_eq!(
            object_balance(SIZE, &masses[..1]),
            Some(0.5),
            "all to one side"
        );
        assert_eq!(
            object_balance(SIZE, &[point(600.0, 400.0, 1.0)]),
            Some(1.0),
            "in the middle"
        );
    }

    #[test]
    fn nothing_is_not_balanced() {
        assert_eq!(object_balance(SIZE, &[]), None, "no objects");
        assert_eq!(score_band(SIZE, &[]), None, "no parts");
        for size in [
            DVec2::ZERO,
            DVec2::new(-1.0, 1.0),
            DVec2::NAN,
            DVec2::new(0.0, 5.0),
        ] {
            assert_eq!(offset(size, DVec2::ONE), None, "picture of {size}");
            assert_eq!(balance_score(size, DVec2::ONE), None, "picture of {size}");
            assert_eq!(
                object_balance(size, &[point(1.0, 1.0, 1.0)]),
                None,
                "picture of {size}"
            );
        }
        assert_eq!(balance_score(SIZE, DVec2::NAN), None, "nowhere");
    }
}
