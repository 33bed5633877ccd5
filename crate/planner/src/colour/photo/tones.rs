//! Light of many places sorted into up to three tones: k-means in Lab, begun
//! by splitting the widest tone across, so that the same picture always gives
//! the same tones.
use palette::convert::FromColorUnclamped;
use palette::{LinSrgb, Srgb as Encoded};

use super::Seen;
use crate::colour::{Lab, hyab};
use crate::layout::{Origin, Srgb, Tone};
use crate::order;

/// Most tones a part can have.
const TONES_MOST: usize = 3;
/// No further tone is looked for when the places lie this close to their own,
/// root mean square: two tones in equal shares [`APART`] apart do.
const SETTLED: f64 = APART / 2.0;
/// Nor when the tones explain this share of all variance.
const EXPLAINED: f64 = 0.95;
/// Tones closer than this, HyAB, are one. Our choice: 10 is where two colours
/// stop merging to the eye.
const APART: f64 = 8.0;
/// What makes up less than this share is a speck, and no tone.
const SPECK: f64 = 0.03;
/// Rounds after which places no longer change hands worth waiting for.
const ROUNDS: usize = 40;
/// A place is no mix of its two neighbours when it is nearer to one of them
/// than this share of what parts them…
const EDGE_NEAR: f64 = 0.15;
/// … or the way from one to the other through it this much longer.
const EDGE_ROUND: f64 = 1.2;
/// Share of places that must lie between no others; where fewer do, as in fine
/// grain, all of them are sorted.
const PLAIN_LEAST: f64 = 0.25;

/// L*, a* and b* of a place in the picture.
type Place = [f64; 3];

/// One place of the grid, in light and in Lab.
#[derive(Clone, Copy)]
struct Spot {
    light: Seen,
    place: Place,
}

/// A tone as found: how many places, and the sum of their light.
#[derive(Clone, Copy)]
struct Heap {
    count: f64,
    light: Seen,
}

impl Heap {
    const NONE: Self = Self {
        count: 0.0,
        light: Seen::new(0.0, 0.0, 0.0),
    };

    /// Light is what mixes: the mean of Lab would be too dark.
    fn mean(self) -> Seen {
        self.light / self.count
    }
}

/// The tones of a grid of places, `across` in a row, the largest first, with
/// shares that make 100.
pub(super) fn sorted(grid: &[Option<Seen>], across: usize) -> Vec<Tone> {
    let spot = |seen: &Option<Seen>| {
        seen.map(|light| Spot {
            light,
            place: coordinates(light),
        })
    };
    let spots: Vec<Option<Spot>> = grid.iter().map(spot).collect();
    let all = || (0..spots.len()).filter_map(|n| Some((n, spots[n]?)));
    let mut plain: Vec<Spot> = all()
        .filter(|(n, _)| mixed(&spots, across, *n).is_none())
        .map(|(_, spot)| spot)
        .collect();
    let total = all().count() as f64;
    if (plain.len() as f64) < PLAIN_LEAST * total {
        plain = all().map(|(_, spot)| spot).collect();
    }
    let places: Vec<Place> = plain.iter().map(|spot| spot.place).collect();
    let mut heaps = [Heap::NONE; TONES_MOST];
    for (spot, tone) in plain.iter().zip(assigned(&places)) {
        heaps[tone].count += 1.0;
        heaps[tone].light += spot.light;
    }
    let least = f64::max(SPECK * places.len() as f64, 1.0);
    let mut heaps: Vec<Heap> = heaps.into_iter().filter(|h| h.count >= least).collect();
    while let Some((a, b)) = closest(&heaps) {
        let other = heaps.swap_remove(b);
        heaps[a].count += other.count;
        heaps[a].light += other.light;
    }
    let mut tones: Vec<(Seen, f64)> = heaps.iter().map(|h| (h.mean(), 0.0)).collect();
    let means: Vec<Place> = tones.iter().map(|t| coordinates(t.0)).collect();
    let mut count = |spot: &Spot, part: f64| {
        if let Some(tone) = nearest(&spot.place, means.iter()) {
            tones[tone].1 += part;
        }
    };
    for (n, spot) in all() {
        match mixed(&spots, across, n) {
            None => count(&spot, 1.0),
            Some(([a, b], part)) => {
                count(&a, 1.0 - part);
                count(&b, part);
            }
        }
    }
    order::sort(&mut tones, |a, b| b.1.total_cmp(&a.1));
    let shares = shares(tones.iter().map(|t| t.1 / total));
    let tone = |((light, _), share): (&(Seen, f64), u8)| Tone {
        srgb: written(*light),
        share,
        origin: Origin::Photo,
    };
    tones.iter().zip(shares).map(tone).collect()
}

/// The neighbours a place lies between in colour as in the picture, as a
/// blurred edge does, and the share of the second: a mix of two tones is no
/// third.
fn mixed(spots: &[Option<Spot>], across: usize, n: usize) -> Option<([Spot; 2], f64)> {
    let along = |step: usize| {
        let at = |n: usize| spots.get(n).copied().flatten();
        let (a, own, b) = (at(n.checked_sub(step)?)?, at(n)?, at(n + step)?);
        let whole = distance(&a.place, &b.place);
        let [to_a, to_b] = [a, b].map(|other| distance(&own.place, &other.place));
        let between =
            whole > APART && to_a.min(to_b) > whole * EDGE_NEAR && to_a + to_b < whole * EDGE_ROUND;
        // It is light that mixes, not Lab.
        let (way, gone) = (b.light - a.light, own.light - a.light);
        let part = dot(way, gone) / dot(way, way);
        between.then(|| ([a, b], part.clamp(0.0, 1.0)))
    };
    let inside = (1..across - 1).contains(&(n % across));
    let level = if inside { along(1) } else { None };
    level.or_else(|| along(across))
}

fn dot(a: Seen, b: Seen) -> f64 {
    a.x * b.x + a.y * b.y + a.z * b.z
}

/// The two nearest heaps, the first with the lower number, when they are one.
fn closest(heaps: &[Heap]) -> Option<(usize, usize)> {
    let mut found = (APART, None);
    for b in 1..heaps.len() {
        for a in 0..b {
            let [x, y] = [a, b].map(|n| lab(heaps[n].mean()));
            let apart = hyab(x, y);
            if apart < found.0 {
                found = (apart, Some((a, b)));
            }
        }
    }
    found.1
}

/// Whole percents, at least one, that make 100: what rounding leaves goes to the
/// largest, which comes first.
fn shares(parts: impl Iterator<Item = f64>) -> Vec<u8> {
    let mut shares: Vec<u8> = parts
        .map(|part| libm::round(100.0 * part).max(1.0) as u8)
        .collect();
    let rest: u8 = shares.iter().skip(1).sum();
    if let Some(first) = shares.first_mut() {
        *first = 100 - rest;
    }
    shares
}

/// The tone each place belongs to.
fn assigned(places: &[Place]) -> Vec<usize> {
    let mut owner = vec![0; places.len()];
    let mut known = 1;
    let mut first = None;
    loop {
        let spread = settle(places, &mut owner, known);
        let within: f64 = spread.iter().flat_map(|t| t.squares).sum();
        let total = *first.get_or_insert(within);
        let count = places.len() as f64;
        if known == TONES_MOST
            || within <= SETTLED * SETTLED * count
            || within <= (1.0 - EXPLAINED) * total
        {
            return owner;
        }
        let mut widest = (0.0, 0, 0);
        for (tone, spread) in spread.iter().enumerate() {
            for (axis, &squares) in spread.squares.iter().enumerate() {
                if squares > widest.0 {
                    widest = (squares, tone, axis);
                }
            }
        }
        let (_, tone, axis) = widest;
        for (owner, place) in owner.iter_mut().zip(places) {
            if *owner == tone && place[axis] > spread[tone].mean[axis] {
                *owner = known;
            }
        }
        known += 1;
    }
}

/// Where the places of a tone lie.
#[derive(Clone, Copy)]
struct Spread {
    mean: Place,
    /// Squares of the distances from it, along each axis.
    squares: [f64; 3],
}

/// Gives each place to the nearest mean until none changes hands.
fn settle(places: &[Place], owner: &mut [usize], known: usize) -> [Spread; TONES_MOST] {
    let mut spread = spreads(places, owner);
    for _ in 0..ROUNDS {
        let mut moved = false;
        for (owner, place) in owner.iter_mut().zip(places) {
            let means = spread[..known].iter().map(|s| &s.mean);
            let near = nearest(place, means).unwrap_or(*owner);
            moved |= near != *owner;
            *owner = near;
        }
        spread = spreads(places, owner);
        if !moved {
            break;
        }
    }
    spread
}

fn spreads(places: &[Place], owner: &[usize]) -> [Spread; TONES_MOST] {
    let mut spread = [Spread {
        mean: [0.0; 3],
        squares: [0.0; 3],
    }; TONES_MOST];
    let mut counts = [0.0; TONES_MOST];
    for (place, &tone) in places.iter().zip(owner) {
        counts[tone] += 1.0;
        for (mean, c) in spread[tone].mean.iter_mut().zip(place) {
            *mean += c;
        }
    }
    for (spread, count) in spread.iter_mut().zip(counts) {
        spread.mean = spread.mean.map(|sum| sum / f64::max(count, 1.0));
    }
    for (place, &tone) in places.iter().zip(owner) {
        let far = squares(place, &spread[tone].mean);
        for (sum, far) in spread[tone].squares.iter_mut().zip(far) {
            *sum += far;
        }
    }
    spread
}

/// The number of the mean nearest to a place.
fn nearest<'a>(place: &Place, means: impl Iterator<Item = &'a Place>) -> Option<usize> {
    let mut found = (f64::INFINITY, None);
    for (n, mean) in means.enumerate() {
        let far = distance(place, mean);
        if far < found.0 {
            found = (far, Some(n));
        }
    }
    found.1
}

fn distance(a: &Place, b: &Place) -> f64 {
    squares(a, b).iter().sum::<f64>().sqrt()
}

fn squares(a: &Place, b: &Place) -> [f64; 3] {
    [0, 1, 2].map(|n| (a[n] - b[n]) * (a[n] - b[n]))
}

fn lab(light: Seen) -> Lab {
    let [l, a, b] = coordinates(light);
    Lab { l, a, b }
}

fn coordinates(light: Seen) -> Place {
    palette::Lab::from_color_unclamped(light).into()
}

/// The nearest 8-bit sRGB colour; what lies outside is brought to its edge.
fn written(light: Seen) -> Srgb {
    let light: [f64; 3] = LinSrgb::from_color_unclamped(light).into();
    let light = LinSrgb::from(light.map(|c| c.clamp(0.0, 1.0)));
    let encoded: [f64; 3] = Encoded::<f64>::from_linear(light).into();
    Srgb(encoded.map(|c| libm::round(c * 255.0) as u8))
}
