//! How deep two outlines overlap, and the shortest move apart.

use glam::DVec2;

use super::boolean::{check, enclosed, union};
use super::gap::on_side;
use super::{Bounds, Region, ShapeError, convex_sum, is_convex, signed_area, triangulate};

/// The shortest move of polygon `a` after which it no longer overlaps polygon
/// `b`, in mm; zero when they do not overlap. Its length is how deep they
/// overlap.
///
/// Moving `a` by `t` makes it overlap `b` exactly when `t` lies in the
/// Minkowski sum of `b` and `-a`, so the answer is the point of that sum's
/// outline nearest to no move at all. Convex polygons have a convex sum;
/// others are cut into convex parts first. Polygons may go either way round.
///
/// # Errors
/// When a coordinate is not finite or too far away, or the polygons have too
/// many points together.
pub fn clearing_move(a: &[DVec2], b: &[DVec2]) -> Result<DVec2, ShapeError> {
    check(&[a, b])?;
    let (Some(box_a), Some(box_b)) = (Bounds::around(a), Bounds::around(b)) else {
        return Ok(DVec2::ZERO);
    };
    if !box_a.meets(box_b) {
        return Ok(DVec2::ZERO);
    }
    let opposite: Vec<Vec<DVec2>> = convex_parts(a)?
        .into_iter()
        .map(|part| part.iter().map(|p| -*p).collect())
        .collect();
    let parts = convex_parts(b)?;
    let sums: Vec<Vec<DVec2>> = opposite
        .iter()
        .flat_map(|a| parts.iter().map(move |b| convex_sum(b, a)))
        .collect();
    let sum = match &sums[..] {
        [] => return Ok(DVec2::ZERO),
        [one] => Region::from_rings(vec![one.clone()]),
        _ => {
            let regions: Vec<Region> = sums
                .into_iter()
                .map(|ring| Region::from_rings(vec![ring]))
                .collect();
            union(&regions.iter().collect::<Vec<_>>())?
        }
    };
    if !sum.contains(DVec2::ZERO) {
        return Ok(DVec2::ZERO);
    }
    let nearest = sum
        .sides()
        .map(|(p, q)| on_side(DVec2::ZERO, p, q))
        .min_by(|p, q| p.length_squared().total_cmp(&q.length_squared()));
    Ok(nearest.unwrap_or(DVec2::ZERO))
}

/// The polygon itself when it is convex, else its triangles, joined again
/// wherever what they make is convex: every part is summed with every part of
/// the other polygon.
fn convex_parts(polygon: &[DVec2]) -> Result<Vec<Vec<DVec2>>, ShapeError> {
    if is_convex(polygon) {
        return Ok(vec![polygon.to_vec()]);
    }
    let mut reversed = polygon.to_vec();
    reversed.reverse();
    if is_convex(&reversed) {
        return Ok(vec![reversed]);
    }
    // Triangulation wants outlines that do not cross themselves.
    let simple = enclosed(polygon)?;
    let outer = simple.rings().iter().filter(|ring| signed_area(ring) > 0.0);
    let triangles = outer.flat_map(|ring| triangulate(ring));
    let mut parts: Vec<Vec<DVec2>> = triangles.map(|t| t.to_vec()).collect();
    let mut i = 0;
    while i < parts.len() {
        let found = (i + 1..parts.len()).find_map(|j| Some((j, joined(&parts[i], &parts[j])?)));
        match found {
            Some((j, whole)) => {
                parts[i] = whole;
                parts.remove(j);
            }
            None => i += 1,
        }
    }
    Ok(parts)
}

/// Two parts with a side in common as one, when that is convex.
fn joined(a: &[DVec2], b: &[DVec2]) -> Option<Vec<DVec2>> {
    let (n, m) = (a.len(), b.len());
    let sides = (0..n).flat_map(|i| (0..m).map(move |j| (i, j)));
    let mut shared = sides.filter(|&(i, j)| a[i] == b[(j + 1) % m] && a[(i + 1) % n] == b[j]);
    let (i, j) = shared.next()?;
    let rest_of_a = (1..=n).map(|k| a[(i + k) % n]);
    let rest_of_b = (2..m).map(|k| b[(j + k) % m]);
    let whole: Vec<DVec2> = rest_of_a.chain(rest_of_b).collect();
    is_convex(&whole).then_some(whole)
}

/// The outline with every corner left out that lies within `tolerance` of the
/// line between those kept.
#[must_use]
pub fn thinned(outline: &[DVec2], tolerance: f64) -> Vec<DVec2> {
    let n = outline.len();
    let mut kept: Vec<DVec2> = outline.first().copied().into_iter().collect();
    let mut from = 0;
    while from < n {
        let near = |to: usize| {
            let line = (outline[from], outline[to % n]);
            let between = &outline[from + 1..to.min(n)];
            between
                .iter()
                .all(|&p| on_side(p, line.0, line.1).distance(p) <= tolerance)
        };
        let mut to = from + 1;
        while to < n && near(to + 1) {
            to += 1;
        }
        if to < n {
            kept.push(outline[to]);
        }
        from = to;
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shape::{CHORD_ERROR, disc, intersection, rect};

    fn boxed(x: f64, y: f64, side: f64) -> Vec<DVec2> {
        rect(DVec2::new(x, y), DVec2::splat(side), 0.0, 0.0, CHORD_ERROR)
    }

    #[test]
    fn two_dishes_with_handles_part_in_few_parts() {
        let pot = |at: DVec2| {
            let ear = |side: f64| disc(DVec2::new(side * 150.0, 0.0), 30.0, 0.05);
            let body = disc(DVec2::ZERO, 150.0, 0.05);
            let parts = [body, ear(-1.0), ear(1.0)].map(|p| Region::from_rings(vec![p]));
            let whole = union(&parts.iter().collect::<Vec<_>>()).expect("in reach");
            let ring: Vec<DVec2> = whole.rings()[0].iter().map(|p| *p + at).collect();
            thinned(&ring, 0.3)
        };
        let (a, b) = (pot(DVec2::ZERO), pot(DVec2::new(340.0, 0.0)));
        assert!(a.len() < 90, "{} corners", a.len());
        let parts = convex_parts(&a).expect("in reach").len();
        assert!(parts <= 8, "{parts} parts");
        let away = clearing_move(&a, &b).expect("in reach");
        assert!(
            (away.length() - 20.0).abs() < 1.0,
            "handle on handle: {away}"
        );
    }

    #[test]
    fn thinning_keeps_an_outline_within_its_tolerance() {
        let round = disc(DVec2::ZERO, 120.0, 0.01);
        let thin = thinned(&round, 0.3);
        assert!(
            thin.len() * 3 < round.len(),
            "{} of {}",
            thin.len(),
            round.len()
        );
        for p in &round {
            let sides = (0..thin.len()).map(|i| (thin[i], thin[(i + 1) % thin.len()]));
            let off = sides.map(|(a, b)| on_side(*p, a, b).distance(*p));
            let least = off.fold(f64::INFINITY, f64::min);
            assert!(least <= 0.3 + 1e-9, "{p} is {least} off");
        }
        assert!(thinned(&[], 1.0).is_empty(), "nothing stays nothing");
    }

    #[test]
    fn boxes_part_along_the_shorter_way() {
        let away = clearing_move(&boxed(0.0, 0.0, 10.0), &boxed(8.0, 3.0, 10.0)).expect("boxes");
        assert_eq!(away, DVec2::new(-2.0, 0.0), "2 mm to the left");
    }

    #[test]
    fn discs_part_along_their_centres() {
        let a = disc(DVec2::ZERO, 50.0, 0.01);
        let b = disc(DVec2::new(60.0, 0.0), 30.0, 0.01);
        let depth = clearing_move(&a, &b).expect("discs").length();
        assert!((depth - 20.0).abs() < 0.03, "50 + 30 - 60, got {depth}");
    }

    #[test]
    fn apart_and_touching_need_no_move() {
        for x in [10.0, 11.0, 400.0] {
            let away = clearing_move(&boxed(0.0, 0.0, 10.0), &boxed(x, 0.0, 10.0));
            assert_eq!(away, Ok(DVec2::ZERO), "at {x}");
        }
        assert_eq!(
            clearing_move(&[], &boxed(0.0, 0.0, 1.0)),
            Ok(DVec2::ZERO),
            "nothing"
        );
        assert_eq!(
            clearing_move(&[DVec2::ZERO, DVec2::X], &boxed(0.0, 0.0, 1.0)),
            Ok(DVec2::ZERO),
            "a line has no inside"
        );
    }

    #[test]
    fn direction_of_the_outlines_does_not_matter() {
        let mut reversed = boxed(8.0, 3.0, 10.0);
        reversed.reverse();
        let away = clearing_move(&boxed(0.0, 0.0, 10.0), &reversed).expect("boxes");
        assert_eq!(away, DVec2::new(-2.0, 0.0), "as before");
    }

    #[test]
    fn box_in_the_mouth_of_a_u_clears_by_the_nearer_arm() {
        // The mouth spans x 3 to 13; the box overlaps the left arm by 1 mm
        // and has room to the right.
        let u = [
            (0.0, 0.0),
            (16.0, 0.0),
            (16.0, 20.0),
            (13.0, 20.0),
            (13.0, 4.0),
            (3.0, 4.0),
            (3.0, 20.0),
            (0.0, 20.0),
        ]
        .map(DVec2::from);
        let inside = boxed(4.0, 12.0, 4.0);
        let away = clearing_move(&inside, &u).expect("polygons");
        assert!(
            (away - DVec2::new(1.0, 0.0)).length() < 1e-4,
            "1 mm right, got {away}"
        );
        let moved: Vec<DVec2> = inside.iter().map(|p| *p + away).collect();
        let both = intersection(
            &Region::from_polygon(&moved).expect("box"),
            &Region::from_polygon(&u).expect("U"),
        );
        assert!(
            both.expect("in limits").area() < 0.01,
            "clear after the move"
        );
    }
}
