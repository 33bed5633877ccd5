//! Where things lie within others.
use crate::svg::Matrix;

/// What `inner` does, then `outer`.
pub(super) fn within(outer: Matrix, inner: Matrix) -> Matrix {
    let [a, b, c, d, e, f] = outer;
    let line = |x: f64, y: f64| [a * x + c * y, b * x + d * y];
    let ([p, q], [r, s]) = (line(inner[0], inner[1]), line(inner[2], inner[3]));
    let [t, u] = line(inner[4], inner[5]);
    [p, q, r, s, t + e, u + f]
}

/// The box, as left, top, right and bottom, that holds `area` seen from within
/// what `matrix` has moved; nothing when that is flat.
pub(super) fn area_within(matrix: Matrix, area: [f64; 4]) -> Option<[f64; 4]> {
    let [a, b, c, d, e, f] = matrix;
    let size = a * d - b * c;
    if size == 0.0 {
        return None;
    }
    let back = |x: f64, y: f64| {
        let (x, y) = (x - e, y - f);
        [(d * x - c * y) / size, (a * y - b * x) / size]
    };
    let [left, top, right, end] = area;
    let corners = [
        back(left, top),
        back(right, top),
        back(right, end),
        back(left, end),
    ];
    let least = |n: usize| corners.iter().map(|p| p[n]).fold(f64::INFINITY, f64::min);
    let most = |n: usize| {
        corners
            .iter()
            .map(|p| p[n])
            .fold(f64::NEG_INFINITY, f64::max)
    };
    Some([least(0), least(1), most(0), most(1)])
}

/// As PDF takes it.
pub(super) fn short(matrix: Matrix) -> [f32; 6] {
    matrix.map(|n| n as f32)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_box_seen_from_within_a_turn_and_a_shift() {
        let turned = [0.0, 2.0, -2.0, 0.0, 10.0, 20.0];
        let area = area_within(turned, [10.0, 20.0, 14.0, 22.0]).expect("not flat");
        assert_eq!(area, [0.0, -2.0, 1.0, 0.0], "a quarter turn, half the size");
        assert_eq!(area_within([0.0; 6], [0.0; 4]), None, "flat");
    }

    #[test]
    fn what_lies_within_is_moved_first() {
        let moved = within(
            [2.0, 0.0, 0.0, 2.0, 1.0, 1.0],
            [1.0, 0.0, 0.0, 1.0, 5.0, 6.0],
        );
        assert_eq!(moved, [2.0, 0.0, 0.0, 2.0, 11.0, 13.0]);
    }
}
