//! How a stature compares with those of others.
//!
//! Source: ANSUR II, NATICK/TR-15/007 (Gordon et al., 2014): means, spreads and
//! percentiles of 1,986 women and 4,082 men, soldiers. In between, statures are
//! taken to be spread normally, which is an estimate.

/// Mean and standard deviation of the women and of the men, mm.
const SPREAD: [[f64; 2]; 2] = [[1628.5, 64.2], [1756.2, 68.6]];

/// The fifth, fiftieth and ninety-fifth percentile of the women, then of the
/// men, mm.
pub const STATURES: [i32; 6] = [1525, 1626, 1740, 1648, 1755, 1870];

/// How many of a hundred women, and of a hundred men, are shorter.
#[must_use]
pub fn shorter(stature: f64) -> [f64; 2] {
    SPREAD.map(|[mean, spread]| {
        let off = (stature - mean) / (spread * core::f64::consts::SQRT_2);
        50.0 * (1.0 + libm::erf(off))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Against the percentiles the survey counts: within two in a hundred.
    #[test]
    fn a_normal_spread_gives_the_percentiles_of_the_survey() {
        for (n, stature) in STATURES.into_iter().enumerate() {
            let got = shorter(f64::from(stature))[n / 3];
            let counted = [5.0, 50.0, 95.0][n % 3];
            assert!((got - counted).abs() < 2.0, "{stature}: {got}");
        }
    }

    #[test]
    fn nobody_is_outside_a_hundred() {
        for stature in [0.0, 1_000.0, 2_500.0, 1e9] {
            let both = shorter(stature);
            assert!(both.iter().all(|p| (0.0..=100.0).contains(p)), "{both:?}");
        }
    }
}
