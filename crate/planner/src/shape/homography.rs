//! What takes points of one plane to those of another, as a photo shows the
//! table: from two marks a shift, turn and scale, from three what also slants,
//! from four or more what also comes nearer, fitted to the least squares of how
//! far the marks end up off (R. Hartley and A. Zisserman, Multiple View Geometry,
//! chapters 2 and 4: eight numbers, points first brought about 0 and to the same
//! spread; from memory).
use glam::DVec2;
use thiserror::Error;

/// Most marks a plane is fitted to.
pub const MAX_MARKS: usize = 60;
/// Least area of the triangle of any three of four marks, of the square of
/// their mean distance from their middle (our choice).
const LEAST_TRIANGLE: f64 = 0.02;
/// Least pivot of what is solved, of a system whose entries are about 1.
const LEAST_PIVOT: f64 = 1e-9;
/// Rounds of improvement, and the gain under which they stop.
const ROUNDS: usize = 20;
const LEAST_GAIN: f64 = 1e-14;

/// Why marks say nothing about how one plane lies over another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum MarksFault {
    /// Fewer than two, more than can be taken, or one is no place.
    #[error("two to 60 marks are needed, each a place")]
    Count,
    /// Two in one place, or too nearly all on a line.
    #[error("the marks lie together or on one line")]
    Line,
    /// One plane would be folded over: they were not given in the same order.
    #[error("the marks do not follow each other in the same order")]
    Order,
}

/// A mapping of one plane onto another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Homography([f64; 9]);

impl Homography {
    /// What takes each first place to each second as nearly as can be.
    ///
    /// # Errors
    /// When the marks are too few or too many, lie on a line, or cannot be two
    /// views of one plane.
    pub fn fitted(pairs: &[[DVec2; 2]]) -> Result<Self, MarksFault> {
        let sound = pairs.iter().flatten().all(|p| p.is_finite());
        if !sound || !(2..=MAX_MARKS).contains(&pairs.len()) {
            return Err(MarksFault::Count);
        }
        let (from, to) = (Spread::of(pairs, 0)?, Spread::of(pairs, 1)?);
        let near: Vec<[DVec2; 2]> = pairs
            .iter()
            .map(|[a, b]| [from.near(*a), to.near(*b)])
            .collect();
        let four = near.len() == 4;
        if four && (0..4).any(|left| (0..2).any(|side| is_flat(&near, left, side))) {
            return Err(MarksFault::Line);
        }
        let mut found = match near.as_slice() {
            [first, second] => similar(first, second),
            // Four that are not on a line are folded when their middle would lie
            // on the horizon.
            _ => linear(&near).map_err(|fault| if four { MarksFault::Order } else { fault })?,
        };
        if near.len() > 4 {
            refine(&near, &mut found);
        }
        if near.iter().any(|[a, _]| beyond(&found, *a) <= 0.0) {
            return Err(MarksFault::Order);
        }
        let whole = Self(times(&to.back(), &times(&found, &from.there())));
        let scale = pairs.iter().map(|[a, _]| beyond(&whole.0, *a));
        let scale = scale.sum::<f64>() / pairs.len() as f64;
        Ok(Self(whole.0.map(|n| n / scale)))
    }

    /// Where a place goes; none for what lies on or behind the line where the
    /// plane meets the horizon.
    #[must_use]
    pub fn at(&self, place: DVec2) -> Option<DVec2> {
        let away = beyond(&self.0, place);
        let gone = mapped(&self.0, place) / away;
        (away > 1e-9 && gone.is_finite()).then_some(gone)
    }

    /// The mapping back.
    #[must_use]
    pub fn inverse(&self) -> Self {
        let [a, b, c, d, e, f, g, h, i] = self.0;
        let back = [
            e * i - f * h,
            c * h - b * i,
            b * f - c * e,
            f * g - d * i,
            a * i - c * g,
            c * d - a * f,
            d * h - e * g,
            b * g - a * h,
            a * e - b * d,
        ];
        let whole = a * back[0] + b * back[3] + c * back[6];
        Self(back.map(|n| n / whole))
    }

    /// Its nine numbers, row by row, for columns x, y and 1.
    #[must_use]
    pub const fn rows(&self) -> [f64; 9] {
        self.0
    }
}

/// Where points lie and how far apart, to bring them about 0 and near 1.
struct Spread {
    middle: DVec2,
    far: f64,
}

impl Spread {
    fn of(pairs: &[[DVec2; 2]], side: usize) -> Result<Self, MarksFault> {
        let count = pairs.len() as f64;
        let middle = pairs.iter().map(|p| p[side]).sum::<DVec2>() / count;
        let far = pairs.iter().map(|p| p[side].distance(middle));
        let far = far.sum::<f64>() / count;
        // So small a spread against the distance from 0 is rounding.
        let apart = far > 1e-9 * (1.0 + middle.length()) && far.is_finite();
        apart
            .then_some(Self { middle, far })
            .ok_or(MarksFault::Line)
    }

    fn near(&self, place: DVec2) -> DVec2 {
        (place - self.middle) / self.far
    }

    fn there(&self) -> [f64; 9] {
        let (s, m) = (1.0 / self.far, self.middle / self.far);
        [s, 0.0, -m.x, 0.0, s, -m.y, 0.0, 0.0, 1.0]
    }

    fn back(&self) -> [f64; 9] {
        let (s, m) = (self.far, self.middle);
        [s, 0.0, m.x, 0.0, s, m.y, 0.0, 0.0, 1.0]
    }
}

/// How far before the horizon a place lies, in its own measure.
fn beyond(h: &[f64; 9], p: DVec2) -> f64 {
    h[6] * p.x + h[7] * p.y + h[8]
}

/// Where it goes, times that.
fn mapped(h: &[f64; 9], p: DVec2) -> DVec2 {
    DVec2::new(
        h[0] * p.x + h[1] * p.y + h[2],
        h[3] * p.x + h[4] * p.y + h[5],
    )
}

fn times(a: &[f64; 9], b: &[f64; 9]) -> [f64; 9] {
    let entry = |n: usize| -> f64 {
        let (row, column) = (n / 3 * 3, n % 3);
        (0..3).map(|k| a[row + k] * b[3 * k + column]).sum()
    };
    std::array::from_fn(entry)
}

/// Whether the three marks that are left without one lie on a line.
fn is_flat(near: &[[DVec2; 2]], left: usize, side: usize) -> bool {
    let [a, b, c] = [1, 2, 3].map(|n| near[(left + n) % 4][side]);
    (b - a).perp_dot(c - a).abs() * 0.5 < LEAST_TRIANGLE
}

/// A shift, turn and scale from two marks.
fn similar(first: &[DVec2; 2], second: &[DVec2; 2]) -> [f64; 9] {
    let (from, to) = (second[0] - first[0], second[1] - first[1]);
    let square = from.length_squared();
    let (s, t) = (from.dot(to) / square, from.perp_dot(to) / square);
    let shift = first[1]
        - DVec2::new(
            s * first[0].x - t * first[0].y,
            t * first[0].x + s * first[0].y,
        );
    [s, -t, shift.x, t, s, shift.y, 0.0, 0.0, 1.0]
}

/// The two equations a pair gives for the numbers of a mapping but the last.
fn equations([a, b]: [DVec2; 2]) -> [([f64; 8], f64); 2] {
    let row = |first: usize, to: f64| {
        let mut row = [0.0; 8];
        row[first..first + 3].copy_from_slice(&[a.x, a.y, 1.0]);
        (row[6], row[7]) = (-a.x * to, -a.y * to);
        (row, to)
    };
    [row(0, b.x), row(3, b.y)]
}

/// What solves the equations of all pairs: six numbers from three, which see no
/// horizon, else eight.
fn linear(near: &[[DVec2; 2]]) -> Result<[f64; 9], MarksFault> {
    let mut sums = Sums::new(if near.len() == 3 { 6 } else { 8 });
    for pair in near {
        for (row, to) in equations(*pair) {
            sums.add(&row, to);
        }
    }
    let found = sums.solved(LEAST_PIVOT).ok_or(MarksFault::Line)?;
    Ok(with_last(&found))
}

fn with_last(first: &[f64; 8]) -> [f64; 9] {
    let mut all = [1.0; 9];
    all[..8].copy_from_slice(first);
    all
}

/// The sum of the squares of how far each mark ends up off.
fn off(near: &[[DVec2; 2]], h: &[f64; 9]) -> f64 {
    let each = near
        .iter()
        .map(|[a, b]| (mapped(h, *a) / beyond(h, *a)).distance_squared(*b));
    each.sum()
}

/// Betters a mapping by damped steps to the least sum of squares.
fn refine(near: &[[DVec2; 2]], h: &mut [f64; 9]) {
    let (mut least, mut damping) = (off(near, h), 1e-6);
    for _ in 0..ROUNDS {
        let mut sums = Sums::new(8);
        for [a, b] in near {
            let away = beyond(h, *a);
            let gone = mapped(h, *a) / away;
            let misses = (*b - gone).to_array();
            for ((row, _), miss) in equations([*a, gone]).iter().zip(misses) {
                sums.add(&row.map(|n| n / away), miss);
            }
        }
        sums.damp(damping);
        let Some(step) = sums.solved(0.0) else {
            return;
        };
        let mut next = *h;
        next.iter_mut().zip(step).for_each(|(n, by)| *n += by);
        let now = off(near, &next);
        if now < least {
            let gain = least - now;
            (*h, least, damping) = (next, now, damping * 0.1);
            if gain < LEAST_GAIN {
                return;
            }
        } else {
            damping *= 10.0;
        }
    }
}

/// Equations added up to their normal equations.
struct Sums {
    size: usize,
    /// Sums of products, the last column those with the right sides.
    entries: [[f64; 9]; 8],
}

impl Sums {
    const fn new(size: usize) -> Self {
        let entries = [[0.0; 9]; 8];
        Self { size, entries }
    }

    fn add(&mut self, row: &[f64; 8], to: f64) {
        for (sums, a) in self.entries.iter_mut().zip(row) {
            for (sum, b) in sums.iter_mut().zip(row) {
                *sum += a * b;
            }
            sums[8] += a * to;
        }
    }

    fn damp(&mut self, by: f64) {
        for n in 0..self.size {
            self.entries[n][n] *= 1.0 + by;
        }
    }

    /// Their solution by elimination, the largest pivot first; none where all
    /// that is left is smaller than `least`.
    fn solved(mut self, least: f64) -> Option<[f64; 8]> {
        let Self { size, entries } = &mut self;
        for at in 0..*size {
            let mut best = at;
            for row in at..*size {
                if entries[row][at].abs() > entries[best][at].abs() {
                    best = row;
                }
            }
            entries.swap(at, best);
            let pivot = entries[at];
            if pivot[at].abs() <= least {
                return None;
            }
            for row in (0..*size).filter(|row| *row != at) {
                let share = entries[row][at] / pivot[at];
                for (n, p) in entries[row].iter_mut().zip(pivot) {
                    *n -= share * p;
                }
            }
        }
        let mut found = [0.0; 8];
        for at in 0..*size {
            found[at] = entries[at][8] / entries[at][at];
        }
        found.iter().all(|n| n.is_finite()).then_some(found)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const SQUARE: [DVec2; 4] = [
        DVec2::new(0.0, 0.0),
        DVec2::new(100.0, 0.0),
        DVec2::new(100.0, 60.0),
        DVec2::new(0.0, 60.0),
    ];

    fn seen(to: [[f64; 2]; 4]) -> Vec<[DVec2; 2]> {
        let pairs = SQUARE.into_iter().zip(to);
        pairs.map(|(a, b)| [a, DVec2::from_array(b)]).collect()
    }

    #[test]
    fn four_marks_go_where_they_are_seen_and_back() {
        let pairs = seen([[10.0, 20.0], [400.0, 60.0], [380.0, 300.0], [30.0, 260.0]]);
        let found = Homography::fitted(&pairs).expect("four corners");
        let back = found.inverse();
        for [a, b] in pairs {
            let there = found.at(a).expect("before the horizon");
            assert!(there.distance(b) < 1e-9, "{a} to {there}, not {b}");
            let home = back.at(there).expect("before the horizon");
            assert!(home.distance(a) < 1e-9, "{there} to {home}, not {a}");
        }
    }

    #[test]
    fn two_marks_give_a_turn_and_three_a_slant() {
        let turned = |p: DVec2| DVec2::new(7.0 - 2.0 * p.y, 3.0 + 2.0 * p.x);
        let two: Vec<[DVec2; 2]> = SQUARE[1..3].iter().map(|p| [*p, turned(*p)]).collect();
        let found = Homography::fitted(&two).expect("two marks");
        let slant = |p: DVec2| DVec2::new(p.x + 0.5 * p.y, 2.0 * p.y - 9.0);
        let three: Vec<[DVec2; 2]> = SQUARE[..3].iter().map(|p| [*p, slant(*p)]).collect();
        let slanted = Homography::fitted(&three).expect("three marks");
        for p in SQUARE {
            let at = found.at(p).expect("no horizon");
            assert!(at.distance(turned(p)) < 1e-9, "{p} turned to {at}");
            let at = slanted.at(p).expect("no horizon");
            assert!(at.distance(slant(p)) < 1e-9, "{p} slanted to {at}");
        }
    }

    #[test]
    fn marks_that_say_nothing_are_refused() {
        let fault = |pairs: &[[DVec2; 2]]| Homography::fitted(pairs).expect_err("nothing to fit");
        assert_eq!(fault(&[]), MarksFault::Count);
        assert_eq!(fault(&[[DVec2::ZERO; 2]]), MarksFault::Count);
        assert_eq!(fault(&[[DVec2::ZERO; 2]; 61]), MarksFault::Count);
        assert_eq!(fault(&[[DVec2::NAN; 2]; 4]), MarksFault::Count);
        assert_eq!(fault(&[[DVec2::ONE; 2]; 4]), MarksFault::Line, "one place");
        let row: Vec<[DVec2; 2]> = (0..9)
            .map(|n| DVec2::new(f64::from(n), 2.0 * f64::from(n)))
            .map(|p| [p, p])
            .collect();
        assert_eq!(fault(&row[..3]), MarksFault::Line, "three in a row");
        assert_eq!(fault(&row), MarksFault::Line, "nine in a row");
        let three = seen([[0.0, 0.0], [50.0, 0.0], [100.0, 1.0], [0.0, 90.0]]);
        assert_eq!(fault(&three), MarksFault::Line, "three of four in a row");
        let crossed = seen([[0.0, 0.0], [100.0, 0.0], [0.0, 60.0], [100.0, 60.0]]);
        assert_eq!(fault(&crossed), MarksFault::Order, "a bow tie");
    }

    proptest! {
        #[test]
        fn no_marks_do_harm(
            pairs in prop::collection::vec(prop::array::uniform4(-1e4..1e4_f64), 0..9),
        ) {
            let pairs: Vec<[DVec2; 2]> = pairs
                .iter()
                .map(|[a, b, c, d]| [DVec2::new(*a, *b), DVec2::new(*c, *d)])
                .collect();
            if let Ok(found) = Homography::fitted(&pairs) {
                prop_assert!(found.rows().iter().all(|n| n.is_finite()), "{found:?}");
                for [a, _] in pairs {
                    prop_assert!(found.at(a).is_some_and(DVec2::is_finite), "{a}");
                }
            }
        }
    }
}
