//! Food of several tones, and how two such mixes part.

use super::{Lab, lab, separation};
use crate::layout::Tone;

/// One tone of mixed food and its share, in any unit the mix agrees on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shade {
    /// The colour.
    pub lab: Lab,
    /// Its share; only the ratio to the others counts.
    pub share: f64,
}

/// The shades of a part's tones.
#[must_use]
pub fn shades(tones: &[Tone]) -> Vec<Shade> {
    let shade = |t: &Tone| Shade {
        lab: lab(t.srgb),
        share: f64::from(t.share),
    };
    tones.iter().map(shade).collect()
}

/// What parts two mixes: share-weighted means over all pairs of tones.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MixedSeparation {
    /// Mean HyAB.
    pub hyab: f64,
    /// Mean |ΔL*|.
    pub delta_l: f64,
    /// Mean distance on the a*b* plane.
    pub delta_c: f64,
    /// Mean of what the bands are read on.
    pub band_value: f64,
    /// Share of the tone pairs whose edge is lost, 0 to 1.
    pub lost: f64,
}

/// Compares two mixes; `None` when either has no share of anything.
#[must_use]
pub fn mixed_separation(x: &[Shade], y: &[Shade]) -> Option<MixedSeparation> {
    let mut sum = MixedSeparation {
        hyab: 0.0,
        delta_l: 0.0,
        delta_c: 0.0,
        band_value: 0.0,
        lost: 0.0,
    };
    let mut total = 0.0;
    for a in x {
        for b in y {
            let share = a.share * b.share;
            let parted = separation(a.lab, b.lab);
            total += share;
            sum.hyab += share * parted.hyab;
            sum.delta_l += share * parted.delta_l;
            sum.delta_c += share * parted.delta_c;
            sum.band_value += share * parted.band_value;
            sum.lost += if parted.lost() { share } else { 0.0 };
        }
    }
    (total > 0.0).then(|| MixedSeparation {
        hyab: sum.hyab / total,
        delta_l: sum.delta_l / total,
        delta_c: sum.delta_c / total,
        band_value: sum.band_value / total,
        lost: sum.lost / total,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn grey(l: f64, share: f64) -> Shade {
        Shade {
            lab: Lab { l, a: 0.0, b: 0.0 },
            share,
        }
    }

    #[test]
    fn one_tone_on_one_tone_is_the_plain_difference() {
        let parted = mixed_separation(&[grey(80.0, 100.0)], &[grey(50.0, 7.0)]).expect("shares");
        assert_eq!(
            (parted.hyab, parted.delta_l, parted.lost),
            (30.0, 30.0, 0.0),
            "30 of tone"
        );
    }

    #[test]
    fn tones_count_by_share() {
        let mix = [grey(90.0, 75.0), grey(55.0, 25.0)];
        let parted = mixed_separation(&mix, &[grey(50.0, 100.0)]).expect("shares");
        assert_eq!(parted.hyab, 31.25, "three quarters of 40 and one of 5");
        assert_eq!(parted.lost, 0.25, "the darker quarter is lost");
    }

    #[test]
    fn nothing_on_something_has_no_difference() {
        assert_eq!(mixed_separation(&[], &[grey(1.0, 1.0)]), None, "no tones");
        assert_eq!(
            mixed_separation(&[grey(1.0, 0.0)], &[grey(1.0, 1.0)]),
            None,
            "no share"
        );
    }
}
