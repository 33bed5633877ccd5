//! How well outlines part from what lies beside them, as the score S3.

/// Shortest run of an outline, as a share of it, whose difference may stand
/// for the weakest. Our choice.
pub const MIN_RUN: f64 = 0.10;

/// Difference from which a piece of outline counts as parted in full.
const FULL: f64 = crate::colour::STRONG_FROM;

/// Separation score of one piece of outline, 0 to 100, from its difference to
/// what lies just outside; nothing parts what is not a number.
#[must_use]
pub fn separation_score(difference: f64) -> f64 {
    // `max` takes what is not a number to 0; `clamp` would let it through.
    100.0 * (difference / FULL).max(0.0).clamp(0.0, 1.0)
}

/// Separation score S3 of a picture: the mean of the parts' mean and their
/// worst. `None` without parts. Our choice, so that one lost part shows.
#[must_use]
pub fn overall_separation(scores: &[f64]) -> Option<f64> {
    let mean = scores.iter().sum::<f64>() / scores.len() as f64;
    let worst = scores.iter().copied().fold(f64::INFINITY, f64::min);
    let overall = (mean + worst) * 0.5;
    overall.is_finite().then_some(overall)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn score_is_full_from_the_strong_band_on() {
        for (difference, score) in [(0.0, 0.0), (10.0, 25.0), (40.0, 100.0), (150.0, 100.0)] {
            assert_eq!(separation_score(difference), score, "at {difference}");
        }
        assert_eq!(separation_score(f64::NAN), 0.0, "no difference");
    }

    #[test]
    fn worst_part_pulls_the_mean_down() {
        assert_eq!(
            overall_separation(&[100.0, 100.0, 40.0]),
            Some(60.0),
            "80 and 40"
        );
        assert_eq!(overall_separation(&[70.0]), Some(70.0), "alone");
        assert_eq!(overall_separation(&[]), None, "no parts");
    }
}
