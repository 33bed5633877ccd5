//! How white a guide is at one place.
use crate::exposures::SEEN;

/// White this far round all that an exposure adds, mm: of the 3 to 5 cm of
/// quiet surface that are left round an arm for its seam (common practice, no
/// source).
pub const QUIET: f64 = 40.0;
/// From there it fades over so much on the lit side, mm: the rest of those
/// 5 cm.
pub const FEATHER: f64 = 10.0;
/// A shadow that reaches towards another exposure's own fades over so much
/// before it, mm. Our choice: a hand's shadow is blurred more widely than this.
pub const TAPER: f64 = 40.0;
/// A loss of light that leaves no trace in a picture, share: less than two
/// steps of 255. Our choice.
pub const NONE: f64 = 0.01;

/// How white it is, 0 to 1, so many mm from what the exposure adds and from
/// what each other adds (inside less than 0), where its arms take this share
/// of the light. It never grows with the first figure nor falls with the
/// others.
///
/// White are what it adds, the quiet surface round it and its shadow as far
/// as that is seen. From there it fades: on the lit side quickly, in the shadow
/// with the light it takes. The middle between two exposures parts them, and a
/// shadow leaves off before what another adds.
pub(super) fn blend(own: f64, others: &[f64], lost: f64) -> f64 {
    if own <= 0.0 {
        return 1.0;
    }
    let edge = (QUIET + FEATHER - own) / FEATHER;
    let shadow = (lost - NONE) / (SEEN - NONE);
    let most = edge.max(shadow).clamp(0.0, 1.0);
    others
        .iter()
        .fold(most, |most, other| most.min(left(own, *other)))
}

/// How much another exposure leaves at such distances from both.
pub(super) fn left(own: f64, other: f64) -> f64 {
    let (own, other) = (own.max(0.0), other.max(0.0));
    let far = (other - QUIET) / TAPER;
    let between = FEATHER.min(own + other).max(f64::MIN_POSITIVE);
    let nearer = 0.5 + (other - own) / (2.0 * between);
    far.max(nearer).clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tight_on_the_lit_side_and_soft_in_the_shadow() {
        assert_eq!(blend(39.0, &[], 0.0), 1.0, "quiet surface");
        assert!((blend(45.0, &[], 0.0) - 0.5).abs() < 1e-12, "its edge");
        assert_eq!(blend(51.0, &[], 0.0), 0.0, "past it");
        assert_eq!(blend(300.0, &[], 0.1), 1.0, "a shadow that is seen");
        assert!((blend(300.0, &[], 0.055) - 0.5).abs() < 1e-12, "half seen");
        assert_eq!(blend(300.0, &[], 0.009), 0.0, "a shadow nobody sees");
    }

    #[test]
    fn what_another_adds_is_left_to_it() {
        assert_eq!(blend(100.0, &[40.0], 0.5), 0.0, "its quiet surface");
        assert!(
            (blend(100.0, &[60.0], 0.5) - 0.5).abs() < 1e-12,
            "before it"
        );
        assert_eq!(blend(100.0, &[80.0], 0.5), 1.0, "well before it");
        assert!((blend(20.0, &[20.0], 0.0) - 0.5).abs() < 1e-12, "midway");
        assert_eq!(blend(14.0, &[26.0], 0.0), 1.0, "nearer to its own");
        assert_eq!(blend(26.0, &[14.0], 0.0), 0.0, "nearer to the other");
    }

    #[test]
    fn what_it_adds_is_white_whatever_comes_near() {
        assert_eq!(blend(0.0, &[0.0], 0.0), 1.0, "in both");
        assert_eq!(blend(-3.0, &[-9.0], 0.0), 1.0, "deeper in the other");
        assert_eq!(blend(1e-9, &[2.0], 0.0), 1.0, "beside the other");
    }

    #[test]
    fn it_only_falls_away_from_its_own_and_towards_others() {
        let steps = || (0..60).map(|n| f64::from(n) * 2.0 - 10.0);
        for own in steps() {
            for other in steps() {
                for lost in [0.0, 0.02, 0.06, 0.3] {
                    let at = blend(own, &[other], lost);
                    assert!(at <= blend(own - 1.0, &[other], lost), "{own} {other}");
                    assert!(at <= blend(own, &[other + 1.0], lost), "{own} {other}");
                    assert!(at <= blend(own, &[other], lost + 0.01), "{own} {other}");
                }
            }
        }
    }
}
