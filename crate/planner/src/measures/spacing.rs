//! Gaps that look like a mistake, and the spacing score, S6.

/// Gaps under this share of the picture's diagonal look like a mistake: about
/// a third of a degree in a picture 20° wide. Our choice; no published figure.
pub const NEAR_TANGENT: f64 = 0.01;
/// Overlaps shallower than this share of the smaller one's short side look
/// like a kiss and not like depth. Our choice.
pub const KISSING_OVERLAP: f64 = 0.15;
/// Gaps whose ratio is below this read as equal. Our choice.
pub const EQUAL_GAPS: f64 = 1.1;

/// Whether a gap in a picture with this diagonal is a near-tangent. A negative
/// gap is an overlap; it counts when it is as thin.
#[must_use]
pub fn is_near_tangent(gap: f64, diagonal: f64) -> bool {
    gap.abs() < NEAR_TANGENT * diagonal
}

/// Whether an overlap this deep is too shallow to read as depth, where the
/// smaller piece's short side is `short_side`. No overlap is none.
#[must_use]
pub fn is_kissing(depth: f64, short_side: f64) -> bool {
    depth > 0.0 && depth < KISSING_OVERLAP * short_side
}

/// Spacing score S6, 0 to 100: share of pieces and neighbouring pairs that are
/// not flagged. `None` without pieces.
#[must_use]
pub fn spacing_score(flagged: usize, pieces: usize, neighbours: usize) -> Option<f64> {
    let chances = pieces + neighbours;
    (pieces > 0).then(|| 100.0 * (1.0 - flagged.min(chances) as f64 / chances as f64))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn near_tangent_on_either_side_of_one_percent() {
        assert!(is_near_tangent(9.9, 1000.0), "just under");
        assert!(!is_near_tangent(10.0, 1000.0), "at the threshold");
        assert!(is_near_tangent(-9.9, 1000.0), "a thin overlap too");
        assert!(!is_near_tangent(-200.0, 1000.0), "a real overlap is none");
        assert!(!is_near_tangent(0.0, 0.0), "no picture");
    }

    #[test]
    fn kissing_on_either_side_of_fifteen_percent() {
        assert!(is_kissing(14.9, 100.0), "just under");
        assert!(!is_kissing(15.0, 100.0), "at the threshold");
        assert!(!is_kissing(0.0, 100.0), "no overlap");
    }

    #[test]
    fn score_is_the_unflagged_share() {
        assert_eq!(spacing_score(0, 3, 2), Some(100.0), "nothing flagged");
        assert_eq!(spacing_score(1, 3, 2), Some(80.0), "one of five");
        assert_eq!(spacing_score(9, 3, 2), Some(0.0), "never negative");
        assert_eq!(spacing_score(0, 0, 0), None, "no pieces");
    }
}
