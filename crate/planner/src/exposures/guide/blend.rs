//! How white a guide is at one place.
use crate::exposures::SEEN;

/// White this far round all that an exposure adds, mm: of the 3 to 5 cm of
/// quiet surface that are left round an arm for its seam (common practice, no
/// source).
pub const QUIET: f64 = 40.0;
/// From there it fades over so much on the lit side, mm: the rest of those
/// 5 cm.
pub const FEATHER: f64 = 10.0;
/// A shadow that reaches another exposure's own fades over so much before it,
/// mm. Our choice: a hand's shadow is blurred more widely than this.
pub const TAPER: f64 = 40.0;
/// A loss of light that leaves no trace in a picture, share: less than two
/// steps of 255. Our choice.
pub const NONE: f64 = 0.01;

/// Another exposure at one place: how far what it adds is, mm, and what share
/// of the light its arms take.
#[derive(Clone, Copy, Debug)]
pub(super) struct Other {
    pub(super) away: f64,
    pub(super) lost: f64,
}

/// How white it is, 0 to 1, so many mm from what the exposure adds (inside less
/// than 0), where its arms take this share of the light. It never grows with
/// the first figure nor falls with the second, never falls with how far another
/// is nor grows with the light that one takes.
///
/// White are what it adds, the quiet surface round it and its shadow as far
/// as that is seen. From there it fades: on the lit side quickly, in the shadow
/// with the light it takes. Quiet surface is parted midway between two
/// exposures, but where the shadow of one falls on it, it is that one's; on
/// what another adds no shadow falls.
pub(super) fn blend(own: f64, lost: f64, others: &[Other]) -> f64 {
    if own <= 0.0 {
        return 1.0;
    }
    let mut quiet = ((QUIET + FEATHER - own) / FEATHER).min(1.0);
    let mut shadow = faded(lost);
    for other in others {
        shadow = shadow.min(before(other.away));
        let theirs = faded(other.lost) * before(own);
        quiet = quiet.min(nearer(own, other.away)).min(1.0 - theirs);
    }
    quiet.max(shadow).clamp(0.0, 1.0)
}

/// How much of a loss of light is worth parting.
fn faded(lost: f64) -> f64 {
    ((lost - NONE) / (SEEN - NONE)).clamp(0.0, 1.0)
}

/// What is left of a shadow so far before what another adds.
fn before(away: f64) -> f64 {
    (away / TAPER).clamp(0.0, 1.0)
}

/// How much of the quiet surface between two is the first one's.
fn nearer(own: f64, other: f64) -> f64 {
    let (own, other) = (own.max(0.0), other.max(0.0));
    let between = FEATHER.min(own + other).max(f64::MIN_POSITIVE);
    (0.5 + (other - own) / (2.0 * between)).clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn other(away: f64, lost: f64) -> [Other; 1] {
        [Other { away, lost }]
    }

    #[test]
    fn tight_on_the_lit_side_and_soft_in_the_shadow() {
        assert_eq!(blend(39.0, 0.0, &[]), 1.0, "quiet surface");
        assert!((blend(45.0, 0.0, &[]) - 0.5).abs() < 1e-12, "its edge");
        assert_eq!(blend(51.0, 0.0, &[]), 0.0, "past it");
        assert_eq!(blend(300.0, 0.1, &[]), 1.0, "a shadow that is seen");
        assert!((blend(300.0, 0.055, &[]) - 0.5).abs() < 1e-12, "half seen");
        assert_eq!(blend(300.0, 0.009, &[]), 0.0, "a shadow nobody sees");
    }

    #[test]
    fn what_another_adds_is_left_to_it() {
        assert_eq!(blend(100.0, 0.5, &other(0.0, 0.0)), 0.0, "its own");
        let soft = blend(100.0, 0.5, &other(20.0, 0.0));
        assert!((soft - 0.5).abs() < 1e-12, "before it: {soft}");
        assert_eq!(blend(100.0, 0.5, &other(40.0, 0.0)), 1.0, "well before it");
        let midway = blend(20.0, 0.0, &other(20.0, 0.0));
        assert!((midway - 0.5).abs() < 1e-12, "midway: {midway}");
        assert_eq!(blend(14.0, 0.0, &other(26.0, 0.0)), 1.0, "nearer its own");
        assert_eq!(blend(26.0, 0.0, &other(14.0, 0.0)), 0.0, "nearer the other");
    }

    #[test]
    fn one_shadow_on_quiet_surface_is_parted_without_a_gap() {
        for away in [1.0, 13.0, 25.0, 39.0] {
            let own = blend(away, 0.0, &other(300.0, 0.2));
            let theirs = blend(300.0, 0.2, &other(away, 0.0));
            assert!(
                (own + theirs - 1.0).abs() < 1e-12,
                "{away}: {own}, {theirs}"
            );
        }
    }

    #[test]
    fn what_it_adds_is_white_whatever_comes_near() {
        assert_eq!(blend(0.0, 0.0, &other(0.0, 0.9)), 1.0, "in both");
        assert_eq!(blend(-3.0, 0.0, &other(-9.0, 0.9)), 1.0, "deeper in it");
    }

    #[test]
    fn it_only_falls_away_from_its_own_and_towards_others() {
        let steps = || (0..40).map(|n| f64::from(n) * 3.0 - 10.0);
        for own in steps() {
            for away in steps() {
                for lost in [0.0, 0.02, 0.06, 0.3] {
                    for theirs in [0.0, 0.03, 0.07] {
                        let at = blend(own, lost, &other(away, theirs));
                        let case = format!("{own} {away} {lost} {theirs}");
                        assert!(at <= blend(own - 1.0, lost, &other(away, theirs)), "{case}");
                        assert!(at <= blend(own, lost, &other(away + 1.0, theirs)), "{case}");
                        assert!(
                            at <= blend(own, lost + 0.01, &other(away, theirs)),
                            "{case}"
                        );
                        assert!(
                            at >= blend(own, lost, &other(away, theirs + 0.01)),
                            "{case}"
                        );
                    }
                }
            }
        }
    }
}
