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
use super::strip::Strip;
use super::{Occluder, Source};
use crate::shape::hull;

/// Strips a source is cut into.
pub const SCANS: usize = 16;
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
        if skip(occluder) || !reach.meets(occluder) {
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

/// Whether any of these may come between a place and the light: what may not
/// changes nothing about its share.
#[must_use]
pub fn may_shade(source: &Source, place: DVec3, occluders: &[Occluder]) -> bool {
    let reach = Reach::of(source, place);
    occluders.iter().any(|occluder| reach.meets(occluder))
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

/// The strips and what of them is covered.
struct Scans {
    strips: [Strip; SCANS],
    covered: Vec<(usize, [f64; 2])>,
}

impl Scans {
    fn of(source: &Source, place: DVec3) -> Self {
        Self {
            strips: core::array::from_fn(|n| Strip::of(source, place, row(n))),
            covered: Vec::new(),
        }
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
        let span = self.strips[n].within([from, to]);
        self.covered.extend(span.map(|span| (n, span)));
    }

    /// The share that is left open.
    fn open(self) -> f64 {
        let all: f64 = self.strips.iter().map(Strip::all).sum();
        if all <= 0.0 {
            return 1.0;
        }
        let mut lost = 0.0;
        let mut own: Vec<[f64; 2]> = Vec::new();
        for (n, strip) in self.strips.iter().enumerate() {
            own.clear();
            own.extend(self.covered.iter().filter(|c| c.0 == n).map(|c| c.1));
            lost += strip.of_stretches(&mut own);
        }
        (1.0 - lost / all).clamp(0.0, 1.0)
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
mod tests;
