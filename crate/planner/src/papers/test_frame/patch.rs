//! A small square of one photo found again in a larger square of another, by
//! the normalised correlation of their light (J. P. Lewis, Fast Normalized
//! Cross-Correlation; from memory), to a part of a pixel by the parabola through
//! the best place and its neighbours.
use glam::DVec2;

use crate::colour::{lab, luminance_of};
use crate::layout::Srgb;

/// Least likeness at which it counts as found. Our choice.
const ALIKE: f64 = 0.7;
/// Least spread of light, of 255, within a square that can be found at all: on a
/// plain cloth every place looks the same. Our choice.
const LEAST_SPREAD: f64 = 4.0;

/// Where it was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Found {
    /// How far from the middle of the larger square, px.
    pub by: DVec2,
    /// How alike, up to 1.
    pub alike: f64,
    /// How much lighter it is there, stops.
    pub stops: f64,
}

/// Light of each pixel, of 255 as the file says it.
fn greys(rgba: &[u8]) -> Vec<f64> {
    let weights = [0.2126, 0.7152, 0.0722];
    rgba.chunks_exact(4)
        .map(|p| weights.iter().zip(p).map(|(w, c)| w * f64::from(*c)).sum())
        .collect()
}

/// Mean relative luminance of greys as a file says them.
fn light(greys: impl Iterator<Item = f64>) -> f64 {
    let (mut sum, mut count) = (0.0, 0.0);
    for grey in greys {
        let tone = grey as u8;
        sum += luminance_of(lab(Srgb([tone; 3])).l);
        count += 1.0;
    }
    sum / f64::max(count, 1.0)
}

/// Finds the middle of `small`, a square of `side` pixels in rows of red, green,
/// blue and opacity, in `large`, one of `wide`; nothing when a square is not
/// whole, is plain, or nothing is like it.
#[must_use]
pub fn find_again(small: &[u8], side: usize, large: &[u8], wide: usize) -> Option<Found> {
    let whole = |rgba: &[u8], side: usize| side > 0 && rgba.len() == side * side * 4;
    if !whole(small, side) || !whole(large, wide) || wide < side + 2 {
        return None;
    }
    let (small, large) = (greys(small), greys(large));
    let count = (side * side) as f64;
    let mean = small.iter().sum::<f64>() / count;
    let own: Vec<f64> = small.iter().map(|g| g - mean).collect();
    let spread = own.iter().map(|g| g * g).sum::<f64>();
    if (spread / count).sqrt() < LEAST_SPREAD {
        return None;
    }
    let places = wide - side + 1;
    let alike = |x: usize, y: usize| {
        let (mut sum, mut squares, mut both) = (0.0, 0.0, 0.0);
        for (row, own) in own.chunks_exact(side).enumerate() {
            let at = (y + row) * wide + x;
            for (a, b) in own.iter().zip(&large[at..at + side]) {
                sum += b;
                squares += b * b;
                both += a * b;
            }
        }
        let other = squares - sum * sum / count;
        if other <= 0.0 {
            0.0
        } else {
            both / (spread * other).sqrt()
        }
    };
    let all: Vec<f64> = (0..places * places)
        .map(|n| alike(n % places, n / places))
        .collect();
    let best = (0..all.len()).max_by(|a, b| all[*a].total_cmp(&all[*b]))?;
    let (x, y) = (best % places, best / places);
    if all[best] < ALIKE {
        return None;
    }
    // On the rim it may lie farther off, where nobody looked.
    if x == 0 || y == 0 || x + 1 == places || y + 1 == places {
        return None;
    }
    let part = |before: f64, after: f64| {
        let bend = before - 2.0 * all[best] + after;
        if bend < 0.0 {
            0.5 * (before - after) / bend
        } else {
            0.0
        }
    };
    let fine = DVec2::new(
        part(all[best - 1], all[best + 1]),
        part(all[best - places], all[best + places]),
    );
    let middle = (places - 1) as f64 * 0.5;
    let there = (0..side).flat_map(|row| {
        let at = (y + row) * wide + x;
        large[at..at + side].iter().copied()
    });
    let (before, after) = (light(small.iter().copied()), light(there));
    Some(Found {
        by: DVec2::new(x as f64, y as f64) - DVec2::splat(middle) + fine,
        alike: all[best],
        stops: if before > 0.0 && after > 0.0 {
            libm::log2(after / before)
        } else {
            0.0
        },
    })
}
