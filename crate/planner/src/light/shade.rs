//! Soft shadows: the share of the light that reaches a place past what stands
//! in the way.
//!
//! The source is cut into thin strips. Seen from the place, a convex solid
//! covers a convex patch of the source's plane, so of each strip one stretch,
//! whose ends are exact; only across the strips is anything sampled. Stretches
//! are joined, and every bit of a strip counts by the light it sheds on the
//! level surface there (both cosines over the square of the distance).
//!
//! Within a vessel it is the other way round: what is seen past its walls is
//! seen through each of its level sections up to the mouth, of each strip one
//! stretch again. Between two sections walls run straight, so that a ray that
//! passes both passes all between.
use glam::{DVec2, DVec3};

use super::mirror::clipped;
use super::{Occluder, Source};
use crate::layout::LightShape;
use crate::shape::hull;

/// Strips a source is cut into.
pub const SCANS: usize = 16;
/// Places along a strip at which the light it sheds is worked out.
const KNOTS: usize = 5;
/// Nearest a solid comes to the place, as a share of the way to the source's
/// plane; what is nearer yet would fill half the sky.
const NEAREST: f64 = 1e-6;

/// Share of a source's light that reaches a level surface, 0 to 1; 1 where
/// there is none to be had. Things for which `skip` is true let it through.
#[must_use]
pub fn seen_share(
    source: &Source,
    place: DVec3,
    occluders: &[Occluder],
    skip: &dyn Fn(&Occluder) -> bool,
) -> f64 {
    seen_share_within(source, place, occluders, skip, &mut core::iter::empty())
}

/// The same from within vessels: `hollows` are their insides, convex, which
/// hold the place.
#[must_use]
pub fn seen_share_within(
    source: &Source,
    place: DVec3,
    occluders: &[Occluder],
    skip: &dyn Fn(&Occluder) -> bool,
    hollows: &mut dyn Iterator<Item = &Occluder>,
) -> f64 {
    let away = (source.centre - place).dot(source.facing);
    if away >= 0.0 {
        return 1.0;
    }
    let reach = Reach::of(source, place);
    let mut scans: Option<Scans> = None;
    for occluder in occluders {
        if !reach.meets(occluder) || skip(occluder) {
            continue;
        }
        if occluder.holds(place) {
            return 0.0;
        }
        let scans = scans.get_or_insert_with(|| Scans::of(source, place));
        occluder.solids(place.z, &mut |low, high| {
            scans.cover(&patch(source, place, away, low, high));
        });
    }
    for hollow in hollows {
        let scans = scans.get_or_insert_with(|| Scans::of(source, place));
        hollow.sections_above(place.z, &mut |ring| {
            scans.keep(&opening(source, place, away, ring));
        });
    }
    scans.map_or(1.0, |s| s.open())
}

/// What is seen of the source's plane through a level outline above the place,
/// in halves of the source.
fn opening(source: &Source, place: DVec3, away: f64, ring: &[DVec3]) -> Vec<DVec2> {
    let share = |p: &DVec3| (*p - place).dot(source.facing) / away;
    let mut seen = clipped(ring, |p| share(p) - NEAREST);
    for p in &mut seen {
        *p = place + (*p - place) / share(p);
    }
    let (across, up) = (source.across.length_squared(), source.up.length_squared());
    let flat = |p: &DVec3| {
        let on = *p - source.centre;
        DVec2::new(on.dot(source.across) / across, on.dot(source.up) / up)
    };
    seen.iter().map(flat).collect()
}

/// A first, generous answer on what can stand between a place and the light.
struct Reach {
    place: DVec3,
    to: DVec2,
    long: f64,
    wide: f64,
    slope: f64,
}

impl Reach {
    fn of(source: &Source, place: DVec3) -> Self {
        let to = source.centre - place;
        let flat = |v: DVec3| v.truncate().length();
        let wide = flat(source.across) + flat(source.up);
        let high = source.across.z.abs() + source.up.z.abs();
        let long = to.truncate().length();
        Self {
            place,
            to: to.truncate(),
            long,
            wide,
            // The lowest ray climbs no less than this.
            slope: ((to.z - high) / (long + wide).max(1.0)).max(0.0),
        }
    }

    fn meets(&self, occluder: &Occluder) -> bool {
        let high = occluder.top() - self.place.z;
        if high <= 0.0 {
            return false;
        }
        let off = occluder.axis - self.place.truncate();
        let near = (off.length() - occluder.reach).max(0.0);
        if near * self.slope > high {
            return false;
        }
        if self.long < 1.0 {
            return near <= self.wide;
        }
        let along = off.dot(self.to) / self.long;
        let aside = off.perp_dot(self.to).abs() / self.long;
        // Rays to the near edge of the source spread soonest.
        let short = (self.long - self.wide).max(1.0);
        let share = ((along + occluder.reach) / short).clamp(0.0, 1.0);
        // Rays may also lean back, towards the near edge of a wide source.
        along + occluder.reach + self.wide >= 0.0
            && aside <= occluder.reach + self.wide * share.max(near / self.long)
    }
}

/// What a convex solid covers of the source's plane, in halves of the source;
/// only what lies between the place and the source.
fn patch(source: &Source, place: DVec3, away: f64, low: &[DVec3], high: &[DVec3]) -> Vec<DVec2> {
    let (across, up) = (source.across.length_squared(), source.up.length_squared());
    let share = |p: DVec3| (p - place).dot(source.facing) / away;
    let mut seen: Vec<DVec2> = Vec::with_capacity(low.len() * 2);
    let mut keep = |p: DVec3, share: f64| {
        let on = place + (p - place) / share - source.centre;
        seen.push(DVec2::new(
            on.dot(source.across) / across,
            on.dot(source.up) / up,
        ));
    };
    let inside = |t: f64| (NEAREST..=1.0).contains(&t);
    let mut cut = |a: DVec3, b: DVec3| {
        let (from, to) = (share(a), share(b));
        for at in [NEAREST, 1.0] {
            if (from < at) != (to < at) {
                keep(a + (b - a) * ((at - from) / (to - from)), at);
            }
        }
        if inside(from) {
            keep(a, from);
        }
    };
    let n = low.len();
    for i in 0..n {
        let next = (i + 1) % n;
        cut(low[i], low[next]);
        cut(low[i], high[i]);
        cut(high[i], high[next]);
    }
    hull(&seen)
}

/// The strips, the light each sheds and what of them is covered.
struct Scans {
    half: [f64; SCANS],
    /// Light shed from the strip's beginning up to each knot.
    shed: [[f64; KNOTS]; SCANS],
    covered: Vec<(usize, [f64; 2])>,
}

impl Scans {
    fn of(source: &Source, place: DVec3) -> Self {
        let mut out = Self {
            half: [1.0; SCANS],
            shed: [[0.0; KNOTS]; SCANS],
            covered: Vec::new(),
        };
        for n in 0..SCANS {
            let v = row(n);
            if source.shape == LightShape::Disc {
                out.half[n] = libm::sqrt((1.0 - v * v).max(0.0));
            }
            let mut before = 0.0;
            for k in 0..KNOTS {
                let u = out.half[n] * (2.0 * k as f64 / (KNOTS - 1) as f64 - 1.0);
                let ray = source.point(u, v) - place;
                let far = ray.length_squared().max(1.0);
                let light = ray.z.max(0.0) * -ray.dot(source.facing) / (far * far);
                if k > 0 {
                    out.shed[n][k] = out.shed[n][k - 1] + (light + before) * out.half[n];
                }
                before = light;
            }
        }
        out
    }

    /// Covers a convex patch.
    fn cover(&mut self, patch: &[DVec2]) {
        let ends = patch.iter().map(|p| p.y);
        let (low, high) = (
            ends.clone().fold(f64::INFINITY, f64::min),
            ends.fold(f64::NEG_INFINITY, f64::max),
        );
        if patch.len() < 3 || low >= 1.0 || high <= -1.0 {
            return;
        }
        for n in 0..SCANS {
            let v = row(n);
            if v < low || v > high {
                continue;
            }
            let [from, to] = stretch(patch, v);
            self.hide(n, from, to);
        }
    }

    /// Covers all but a convex patch.
    fn keep(&mut self, patch: &[DVec2]) {
        for n in 0..SCANS {
            let [from, to] = stretch(patch, row(n));
            if from < to {
                self.hide(n, f64::NEG_INFINITY, from);
                self.hide(n, to, f64::INFINITY);
            } else {
                self.hide(n, f64::NEG_INFINITY, f64::INFINITY);
            }
        }
    }

    fn hide(&mut self, n: usize, from: f64, to: f64) {
        let half = self.half[n];
        let span = [from, to].map(|u| u.clamp(-half, half));
        if span[1] > span[0] {
            self.covered.push((n, span));
        }
    }

    /// The share that is left open.
    fn open(mut self) -> f64 {
        let all: f64 = self.shed.iter().map(|s| s[KNOTS - 1]).sum();
        if all <= 0.0 {
            return 1.0;
        }
        let covered = std::mem::take(&mut self.covered);
        let mut lost = 0.0;
        let mut own: Vec<[f64; 2]> = Vec::new();
        for n in 0..SCANS {
            own.clear();
            own.extend(covered.iter().filter(|c| c.0 == n).map(|c| c.1));
            // By both ends, so that the order of the things does not show.
            crate::order::sort(&mut own, |a, b| {
                a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1]))
            });
            let mut end = f64::NEG_INFINITY;
            for [from, to] in &own {
                let from = from.max(end);
                if *to > from {
                    lost += self.shed_to(n, *to) - self.shed_to(n, from);
                    end = *to;
                }
            }
        }
        (1.0 - lost / all).clamp(0.0, 1.0)
    }

    /// Light shed from a strip's beginning up to a place on it.
    fn shed_to(&self, n: usize, u: f64) -> f64 {
        let half = self.half[n];
        if half <= 0.0 {
            return 0.0;
        }
        let at = (u / half + 1.0) * 0.5 * (KNOTS - 1) as f64;
        let k = (at.max(0.0) as usize).min(KNOTS - 2);
        let [a, b] = [self.shed[n][k], self.shed[n][k + 1]];
        a + (b - a) * (at - k as f64).clamp(0.0, 1.0)
    }
}

/// The stretch of a strip that a convex patch covers; turned about when none.
fn stretch(patch: &[DVec2], v: f64) -> [f64; 2] {
    let mut span = [f64::INFINITY, f64::NEG_INFINITY];
    for (i, a) in patch.iter().enumerate() {
        let b = patch[(i + 1) % patch.len()];
        if (a.y <= v) != (b.y <= v) {
            let u = a.x + (b.x - a.x) * ((v - a.y) / (b.y - a.y));
            span = [span[0].min(u), span[1].max(u)];
        }
    }
    span
}

/// The middle of a strip, −1 to 1.
fn row(n: usize) -> f64 {
    (2.0 * n as f64 + 1.0) / SCANS as f64 - 1.0
}

#[cfg(test)]
mod tests {
    use glam::{dvec2, dvec3};

    use super::*;
    use crate::layout::Id;
    use crate::shape::disc;

    /// A window of 1 m by 1 m, its middle 2 m to the left and 1 m up.
    fn window() -> Source {
        Source {
            centre: dvec3(-2000.0, 0.0, 1000.0),
            facing: DVec3::X,
            across: DVec3::Y * 500.0,
            up: DVec3::Z * 500.0,
            shape: LightShape::Window,
        }
    }

    fn share(place: DVec3, occluders: &[Occluder]) -> f64 {
        seen_share(&window(), place, occluders, &|_| false)
    }

    fn can(at: DVec2, height: f64) -> Occluder {
        let outline = disc(at, 100.0, 0.1);
        Occluder::new(Id(1), &outline, at, vec![[0.0, 1.0], [height, 1.0]]).expect("a can")
    }

    #[test]
    fn a_wall_hides_the_window_and_half_a_wall_half_of_it() {
        let ends = [dvec2(-300.0, -9000.0), dvec2(-300.0, 9000.0)];
        let wall = |height| Occluder::sheet(Id(1), ends, 1.0, height).expect("a wall");
        assert_eq!(share(DVec3::ZERO, &[wall(5000.0)]), 0.0);
        assert_eq!(
            share(DVec3::ZERO, &[wall(70.0)]),
            1.0,
            "under the sill's ray"
        );
        let ends = [dvec2(-300.0, 0.0), dvec2(-300.0, 9000.0)];
        let half = Occluder::sheet(Id(1), ends, 1.0, 5000.0).expect("half a wall");
        assert!((share(DVec3::ZERO, &[half]) - 0.5).abs() < 1e-3);
    }

    #[test]
    fn a_can_throws_its_shadow_away_from_the_window_and_not_towards_it() {
        let cans = [can(DVec2::ZERO, 150.0)];
        assert!(share(dvec3(110.0, 0.0, 0.0), &cans) < 0.2);
        assert_eq!(share(dvec3(-110.0, 0.0, 0.0), &cans), 1.0);
        assert_eq!(share(dvec3(0.0, 0.0, 150.0), &cans), 1.0, "on its own lid");
        assert_eq!(share(dvec3(0.0, 0.0, 20.0), &cans), 0.0, "inside it");
    }

    #[test]
    fn two_things_in_one_line_hide_no_more_than_both_together() {
        let one = [can(dvec2(-150.0, 0.0), 200.0)];
        let both = [
            can(dvec2(-150.0, 0.0), 200.0),
            can(dvec2(-150.0, 0.0), 200.0),
        ];
        let place = dvec3(250.0, 60.0, 0.0);
        let open = share(place, &one);
        assert!(open > 0.05 && open < 0.95, "in the penumbra: {open}");
        assert_eq!(open, share(place, &both));
    }

    #[test]
    fn the_blur_is_wider_along_the_shadow_than_across_it() {
        let cans = [can(DVec2::ZERO, 150.0)];
        // Across at a place under the can's middle height, along past its tip.
        let blur = |at: &dyn Fn(f64) -> DVec3| {
            let inside = |t: &f64| (0.1..0.9).contains(&share(at(*t), &cans));
            (0..400).map(|n| f64::from(n) * 2.0).filter(inside).count()
        };
        let across = blur(&|t| dvec3(200.0, t - 400.0, 0.0)) / 2;
        let along = blur(&|t| dvec3(100.0 + t, 0.0, 0.0));
        assert!(along > across, "{along} along, {across} across");
    }

    /// A bowl of straight walls 100 mm round, 80 high, looked out of.
    #[test]
    fn out_of_a_vessel_the_window_is_seen_over_its_near_wall() {
        let inside = [can(DVec2::ZERO, 80.0)];
        let share = |x: f64, z: f64| {
            let place = dvec3(x, 0.0, z);
            seen_share_within(&window(), place, &[], &|_| false, &mut inside.iter())
        };
        // The near wall hides what lies under 80/150 a metre: all of the window
        // from the foot of it, none of it from the far side.
        assert_eq!(share(-90.0, 0.0), 0.0, "at the foot of the near wall");
        assert_eq!(share(-60.0, 79.9), 1.0, "right under the mouth");
        let far = share(95.0, 0.0);
        // The wall's top is 195 mm off, 80 up: the window from 0.5 to 1.5 m at
        // 2.095 m is cut at 0.86 m.
        assert!((0.55..0.85).contains(&far), "on the far side: {far}");
        assert!(share(95.0, 40.0) > far, "less from higher up");
    }

    #[test]
    fn behind_the_window_there_is_nothing_to_lose() {
        let place = dvec3(-2500.0, 0.0, 0.0);
        assert_eq!(share(place, &[can(dvec2(-2400.0, 0.0), 900.0)]), 1.0);
    }

    #[test]
    fn what_stands_behind_the_window_does_not_hide_it() {
        assert_eq!(share(DVec3::ZERO, &[can(dvec2(-2500.0, 0.0), 3000.0)]), 1.0);
    }
}
