//! The shortest way between two areas, and where two lines cross.

use glam::DVec2;

use super::polygon::edges;
use super::{Bounds, Region};

/// The shortest way between two regions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gap {
    /// Its length in mm; 0 where they touch or overlap.
    pub distance: f64,
    /// Its end on the first region.
    pub from: DVec2,
    /// Its end on the second region.
    pub to: DVec2,
}

/// The shortest way between two regions; `None` when either is empty. Where
/// they overlap both ends are one shared point.
#[must_use]
pub fn gap(a: &Region, b: &Region) -> Option<Gap> {
    gap_within(a, b, f64::INFINITY)
}

/// As [`gap`], but `None` also when they are farther apart than `limit` mm,
/// which is found out cheaply for most pairs.
#[must_use]
pub fn gap_within(a: &Region, b: &Region, limit: f64) -> Option<Gap> {
    let (box_a, box_b) = (a.bounds()?, b.bounds()?);
    if box_a.gap(box_b) > limit {
        return None;
    }
    // One inside the other has no crossing sides: any point tells.
    for (inner, outer) in [(a, b), (b, a)] {
        let p = inner.rings()[0][0];
        if outer.contains(p) {
            return Some(Gap {
                distance: 0.0,
                from: p,
                to: p,
            });
        }
    }
    let mut best = first_guess(a, b, box_b);
    let near_a = near(a, box_b, best.distance);
    let near_b = near(b, box_a, best.distance);
    for &(p, q) in &near_a {
        let side = side_box(p, q);
        for &(r, s) in &near_b {
            if side.gap(side_box(r, s)) < best.distance {
                best = shorter(best, between_sides(p, q, r, s));
            }
        }
    }
    (best.distance <= limit).then_some(best)
}

/// A short way between corners, from going to and fro: what is farther than
/// this need not be looked at.
fn first_guess(a: &Region, b: &Region, box_b: Bounds) -> Gap {
    let mut guess = Gap {
        distance: f64::INFINITY,
        from: box_b.centre(),
        to: box_b.centre(),
    };
    for _ in 0..3 {
        guess.from = nearest_corner(a, guess.to);
        guess.to = nearest_corner(b, guess.from);
    }
    guess.distance = guess.from.distance(guess.to);
    guess
}

fn nearest_corner(region: &Region, p: DVec2) -> DVec2 {
    region
        .sides()
        .map(|(corner, _)| corner)
        .min_by(|c, d| c.distance_squared(p).total_cmp(&d.distance_squared(p)))
        .unwrap_or(p)
}

/// The sides that may be nearer to the box than `limit`.
fn near(region: &Region, other: Bounds, limit: f64) -> Vec<(DVec2, DVec2)> {
    region
        .sides()
        .filter(|(p, q)| side_box(*p, *q).gap(other) <= limit)
        .collect()
}

fn side_box(p: DVec2, q: DVec2) -> Bounds {
    Bounds {
        min: p.min(q),
        max: p.max(q),
    }
}

fn shorter(a: Gap, b: Gap) -> Gap {
    if b.distance < a.distance { b } else { a }
}

/// The shortest way from the segment `p`–`q` to the segment `r`–`s`.
fn between_sides(p: DVec2, q: DVec2, r: DVec2, s: DVec2) -> Gap {
    if let Some(at) = meeting(p, q, r, s) {
        return Gap {
            distance: 0.0,
            from: at,
            to: at,
        };
    }
    // Segments that do not cross are nearest at an end of one of them.
    let from_end = |end: DVec2, foot: DVec2| (end.distance(foot), end, foot);
    let ends = [
        from_end(p, on_side(p, r, s)),
        from_end(q, on_side(q, r, s)),
        from_end(r, on_side(r, p, q)),
        from_end(s, on_side(s, p, q)),
    ];
    let mut least = 0;
    for i in 1..ends.len() {
        if ends[i].0 < ends[least].0 {
            least = i;
        }
    }
    let (distance, end, foot) = ends[least];
    let (from, to) = if least < 2 { (end, foot) } else { (foot, end) };
    Gap { distance, from, to }
}

/// Where the segments `p`–`q` and `r`–`s` cross; none for parallel ones.
#[must_use]
pub fn meeting(p: DVec2, q: DVec2, r: DVec2, s: DVec2) -> Option<DVec2> {
    let (d, e) = (q - p, s - r);
    let cross = d.perp_dot(e);
    if cross == 0.0 {
        return None;
    }
    let t = (r - p).perp_dot(e) / cross;
    let u = (r - p).perp_dot(d) / cross;
    let on = |x: f64| (0.0..=1.0).contains(&x);
    (on(t) && on(u)).then(|| p + d * t)
}

/// Distance in mm from `p` to the nearest place on a closed outline; infinite
/// when that has no points.
#[must_use]
pub fn to_edge(outline: &[DVec2], p: DVec2) -> f64 {
    let near = |(a, b)| on_side(p, a, b).distance(p);
    edges(outline).map(near).fold(f64::INFINITY, f64::min)
}

/// The point of the segment `a`–`b` nearest to `p`.
#[must_use]
pub fn on_side(p: DVec2, a: DVec2, b: DVec2) -> DVec2 {
    let d = b - a;
    let length = d.length_squared();
    if length == 0.0 {
        return a;
    }
    a + d * ((p - a).dot(d) / length).clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shape::{CHORD_ERROR, difference, disc, rect};

    fn region(polygon: &[DVec2]) -> Region {
        Region::from_polygon(polygon).expect("in limits")
    }

    fn boxed(x: f64, y: f64, side: f64) -> Region {
        region(&rect(
            DVec2::new(x, y),
            DVec2::splat(side),
            0.0,
            0.0,
            CHORD_ERROR,
        ))
    }

    #[test]
    fn side_to_side() {
        let gap = gap(&boxed(0.0, 0.0, 10.0), &boxed(20.0, 2.0, 10.0)).expect("both there");
        assert_eq!(gap.distance, 10.0, "from x = 5 to x = 15");
        assert_eq!(
            (gap.from.x, gap.to.x),
            (5.0, 15.0),
            "ends on their own outline"
        );
    }

    #[test]
    fn corner_to_corner() {
        let gap = gap(&boxed(0.0, 0.0, 10.0), &boxed(13.0, 14.0, 10.0)).expect("both there");
        assert_eq!(gap.distance, 5.0, "3 across, 4 down");
        assert_eq!(
            (gap.from, gap.to),
            (DVec2::splat(5.0), DVec2::new(8.0, 9.0)),
            "corners"
        );
    }

    #[test]
    fn disc_to_disc_is_centres_less_radii() {
        let a = region(&disc(DVec2::ZERO, 100.0, CHORD_ERROR));
        let b = region(&disc(DVec2::new(300.0, 400.0), 150.0, CHORD_ERROR));
        let gap = gap(&a, &b).expect("both there").distance;
        assert!(
            (gap - 250.0).abs() < 2.0 * CHORD_ERROR,
            "500 - 250, got {gap}"
        );
    }

    #[test]
    fn touching_crossing_and_nested_have_no_gap() {
        for (x, how) in [
            (10.0, "touching"),
            (5.0, "crossing"),
            (0.0, "nested or equal"),
        ] {
            for side in [10.0, 2.0] {
                if x > side / 2.0 + 5.0 {
                    continue;
                }
                let gap = gap(&boxed(0.0, 0.0, 10.0), &boxed(x, 0.0, side)).expect("both there");
                assert_eq!(gap.distance, 0.0, "{how}, side {side}");
                assert_eq!(gap.from, gap.to, "one shared point");
            }
        }
    }

    #[test]
    fn crossed_bars_have_no_gap_though_no_corner_lies_inside() {
        let a = region(&rect(
            DVec2::ZERO,
            DVec2::new(100.0, 4.0),
            0.0,
            0.0,
            CHORD_ERROR,
        ));
        let b = region(&rect(
            DVec2::ZERO,
            DVec2::new(100.0, 4.0),
            0.0,
            90.0,
            CHORD_ERROR,
        ));
        assert_eq!(gap(&a, &b).expect("both there").distance, 0.0, "a cross");
    }

    #[test]
    fn piece_in_a_hole_keeps_its_gap() {
        let ring = difference(&boxed(0.0, 0.0, 40.0), &[&boxed(0.0, 0.0, 20.0)]).expect("ring");
        let gap = gap(&ring, &boxed(0.0, 0.0, 10.0)).expect("both there");
        assert_eq!(gap.distance, 5.0, "5 mm round about");
    }

    #[test]
    fn nothing_has_no_gap_and_far_is_not_within() {
        assert_eq!(gap(&Region::empty(), &boxed(0.0, 0.0, 1.0)), None, "empty");
        let far = gap_within(&boxed(0.0, 0.0, 10.0), &boxed(40.0, 0.0, 10.0), 20.0);
        assert_eq!(far, None, "30 mm is over 20");
        let corner = gap_within(&boxed(0.0, 0.0, 10.0), &boxed(40.0, 0.0, 10.0), 30.0);
        assert_eq!(corner.map(|g| g.distance), Some(30.0), "30 mm is within 30");
    }
}
