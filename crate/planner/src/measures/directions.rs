use glam::DVec2;

/// Mean resultant length of directions in degrees: 1 when all agree, 0 when
/// they cancel. `None` without directions.
///
/// Mardia & Jupp, *Directional Statistics*, 2000 (from memory; standard).
#[must_use]
pub fn resultant_length(degrees: &[f64]) -> Option<f64> {
    let sum: DVec2 = degrees
        .iter()
        .map(|d| {
            let (sin, cos) = libm::sincos(d.to_radians());
            DVec2::new(cos, sin)
        })
        .sum();
    let length = sum.length() / degrees.len() as f64;
    length.is_finite().then_some(length)
}

/// Spread of directions in degrees, 0 (all alike) to 100 (all round): 100
/// times one less the resultant length. `None` for fewer than two.
#[must_use]
pub fn direction_spread(degrees: &[f64]) -> Option<f64> {
    if degrees.len() < 2 {
        return None;
    }
    resultant_length(degrees).map(|r| 100.0 * (1.0 - r))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn opposite_hands_are_spread_in_full() {
        let spread = direction_spread(&[30.0, 210.0]).expect("two");
        assert!((spread - 100.0).abs() < 1e-9, "opposite, got {spread}");
    }

    #[test]
    fn whole_turns_do_not_matter() {
        let spread = direction_spread(&[10.0, 370.0, -350.0]).expect("three");
        assert!(spread.abs() < 1e-9, "all alike, got {spread}");
    }

    #[test]
    fn one_hand_has_no_spread() {
        assert_eq!(direction_spread(&[]), None, "no hands");
        assert_eq!(direction_spread(&[90.0]), None, "one hand");
        assert_eq!(resultant_length(&[]), None, "no directions");
        assert_eq!(resultant_length(&[f64::NAN]), None, "no direction");
        assert_eq!(resultant_length(&[f64::INFINITY]), None, "no direction");
    }
}
