//! Soft shadows as a wash laid in steps, without filters, so that they print
//! and export.

use glam::DVec2;
use svg::node::element::Group;

use super::path::{PathData, short};
use super::sketch::{Look, path_node};
use super::tone::{SHADE, hex};
use crate::catalogue::Profile;
use crate::figure::outline::{middle, resampled};
use crate::shape::{Region, hull, intersection};

/// Steps of the wash for a thing 24 mm high or more, and for a lower one.
const STEPS: [usize; 2] = [10, 5];
/// Where the wash begins and how far past the computed tip it fades, as shares
/// of the tip's displacement.
const REACH: [f64; 2] = [0.12, 1.14];

/// The table a shadow falls on, about the centre of what throws it: nothing
/// falls past its edge, for the floor lies far below.
pub type Ground<'a> = Option<(&'a Region, DVec2)>;

/// Adds a loop, cut to the ground.
fn laid(path: &mut PathData, loop_: Vec<DVec2>, ground: Ground<'_>) {
    let Some((table, at)) = ground else {
        return path.smooth(loop_.into_iter());
    };
    let moved: Vec<DVec2> = loop_.iter().map(|p| *p + at).collect();
    let cut = Region::from_polygon(&moved).and_then(|own| intersection(&own, table));
    for ring in cut.unwrap_or_default().rings() {
        path.polygon(ring.iter().map(|p| *p - at));
    }
}

/// The shadow of a thing, or of pieces that lie about together, in as many
/// nodes as one of them takes.
///
/// `outlines` are their silhouettes; `offset` the displacement of its top edge's
/// shadow in mm (for a source whose centre stands `Ds` away level and `Hs` up,
/// an edge at height `h` throws it `Ds·h/(Hs − h)`); `height` is `h`;
/// `spread` the half width of the blur at the tip, mm; `profile` how wide the
/// thing is at each height, so that a stem throws a thin shadow. The soft edge
/// is made by nested hulls that reach further and spread wider, each a thin
/// wash.
pub fn shadows(
    outlines: &[Vec<DVec2>],
    offset: DVec2,
    height: f64,
    spread: f64,
    profile: Profile,
    ground: Ground<'_>,
) -> Group {
    let group = Group::new();
    let bases: Vec<(Vec<DVec2>, DVec2, f64)> = outlines
        .iter()
        .map(|outline| {
            let base = hull(outline);
            let at = middle(&base);
            let sum: f64 = base.iter().map(|p| p.distance(at)).sum();
            let radius = sum / base.len().max(1) as f64;
            (base, at, radius.max(1.0))
        })
        .filter(|(base, ..)| base.len() > 2)
        .collect();
    let Some(largest) = bases.iter().map(|b| b.2).max_by(f64::total_cmp) else {
        return group;
    };
    if !offset.is_finite() || !spread.is_finite() {
        return group;
    }
    let steps = if height >= 24.0 { STEPS[0] } else { STEPS[1] };
    // The wider the blur in proportion to the throw, the thinner the wash.
    let softness = spread / (offset.length() + largest * 0.5).max(1.0);
    let whole = 0.54 / (1.0 + 0.9 * softness);
    let wash = (whole / steps as f64).clamp(0.018, 0.14);
    let mut node = group
        .set("fill", hex(SHADE))
        .set("fill-opacity", short(wash));
    let points = if bases.len() > 1 { 14 } else { 26 };
    for i in 0..steps {
        let u = i as f64 / (steps - 1) as f64;
        let reach = REACH[0] + (REACH[1] - REACH[0]) * u;
        let mut path = PathData::default();
        for (base, at, radius) in &bases {
            // Deep inside the blur the core narrows; at its rim it widens.
            let grow = 1.0 + (spread * (1.25 * u - 0.25) / radius).clamp(-0.5, 1.5);
            // What of the thing throws as far as this: one slice to the next.
            let slice = |[up, wide]: [u8; 2]| -> Vec<DVec2> {
                let (up, wide) = (f64::from(up) / 100.0, f64::from(wide) / 100.0);
                let grow = wide * (1.0 + (grow - 1.0) * up);
                let by = offset * reach * up;
                base.iter().map(|&p| *at + (p - *at) * grow + by).collect()
            };
            for pair in profile.windows(2) {
                let both = [slice(pair[0]), slice(pair[1])].concat();
                laid(&mut path, resampled(&hull(&both), points, true), ground);
            }
        }
        node = node.add(path_node(path, &Look::default()));
    }
    node
}

/// The shadow of a thing held above the table, as [`shadows`] but away from
/// the thing itself: a few washes that widen round where its edge falls.
pub fn raised(outline: &[DVec2], offset: DVec2, spread: f64, ground: Ground<'_>) -> Group {
    let base = hull(outline);
    let mut node = Group::new();
    if base.len() < 3 || !offset.is_finite() || !spread.is_finite() {
        return node;
    }
    let at = middle(&base);
    let radius = base.iter().map(|p| p.distance(at)).sum::<f64>() / base.len() as f64;
    node = node
        .set("fill", hex(SHADE))
        .set("fill-opacity", short(0.07));
    for i in 0..5 {
        let u = f64::from(i) / 4.0;
        let grow = (1.0 + spread * (1.1 * u - 0.5) / radius.max(1.0)).max(0.3);
        let loop_ = base.iter().map(|&p| at + (p - at) * grow + offset);
        let loop_: Vec<DVec2> = loop_.collect();
        let mut path = PathData::default();
        laid(&mut path, resampled(&loop_, 22, true), ground);
        node = node.add(path_node(path, &Look::default()));
    }
    node
}

#[cfg(test)]
mod tests {
    use glam::dvec2;
    use svg::node::Node;

    use super::*;
    use crate::catalogue::plain_profile;
    use crate::figure::outline::ellipse;

    fn shadow(outline: &[DVec2], offset: DVec2, height: f64, spread: f64) -> Group {
        shadows(
            &[outline.to_vec()],
            offset,
            height,
            spread,
            plain_profile(),
            None,
        )
    }

    #[test]
    fn low_things_take_fewer_steps() {
        let ring = ellipse(DVec2::ZERO, DVec2::splat(50.0), 24);
        let count = |height| {
            let group = shadow(&ring, dvec2(20.0, 10.0), height, 4.0);
            group.get_children().map_or(0, Vec::len)
        };
        assert_eq!(count(80.0), STEPS[0], "tall");
        assert_eq!(count(8.0), STEPS[1], "low");
    }

    #[test]
    fn degenerate_calls_draw_nothing() {
        let ring = ellipse(DVec2::ZERO, DVec2::splat(50.0), 24);
        let group = shadow(&ring[..2], DVec2::X, 10.0, 1.0);
        assert!(group.get_children().is_none_or(Vec::is_empty), "two points");
        let group = shadow(&ring, DVec2::NAN, 10.0, 1.0);
        assert!(
            group.get_children().is_none_or(Vec::is_empty),
            "not a number"
        );
    }
}
