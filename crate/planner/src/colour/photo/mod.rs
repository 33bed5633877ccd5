//! Colour read off a photo: the thing's pixels, seen in the light that white or
//! grey paper beside it shows.
//!
//! The paper's pixels give the light's white and the exposure. Every pixel of
//! the thing is brought to D65 in Bradford's cone space, as if the paper were
//! neutral and as light as it is known to be, and the pixels are then sorted
//! into up to three tones. On the charts of `tests/tests/outside/photo.rs` Bradford's
//! space leaves less than half the error of scaling red, green and blue.
mod inks;
mod light;
mod tones;

pub use inks::in_inks;

use std::fmt;

use palette::Xyz;
use palette::white_point::D65;

use super::lab::linear;
use crate::layout::{Srgb, Tone};
use crate::words::say;
use light::Light;

/// A channel from here on has met the top of the scale, or the camera bent it
/// on the way there.
const CLIPPED_FROM: u8 = 253;
/// Of a pixel with no channel this bright, one step of 8 bits is too much of
/// it to say its colour.
const BLACK_BELOW: u8 = 6;
/// Share of a thing's pixels that may be without use.
const LOST_MOST: f64 = 0.5;
/// Share of the paper's pixels that may be clipped: more of them, and the
/// white they leave is too dark.
const PAPER_CLIPPED: f64 = 0.05;
/// Pixels along the shorter side of the least patch.
const SIDE_LEAST: usize = 8;
/// Blocks along a side that pixels are averaged into, so that noise makes no
/// tones; no block has a side of less than [`BLOCK_LEAST`].
const BLOCKS: usize = 32;
const BLOCK_LEAST: usize = 2;

/// Light of one place as the camera wrote it, in its own white.
type Seen = Xyz<D65, f64>;

/// A rectangle of pixels of a picture.
#[derive(Clone, Copy, Debug)]
pub struct Patch<'a> {
    /// Red, green, blue and opacity of each pixel, row by row, in sRGB.
    pub rgba: &'a [u8],
    /// Pixels in a row.
    pub width: usize,
}

/// The paper in the photo.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// White paper, taken as L* 95. Office paper is L* 93 to 97 (common
    /// practice, no source).
    White,
    /// A grey card, taken as L* 50: 18% grey is L* 49.5.
    Grey,
}

/// Why no colour was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unread {
    /// A patch has too few pixels.
    Small,
    /// The paper meets the top of the scale.
    PaperClipped,
    /// The paper is far darker than it should be.
    PaperDark,
    /// The light, or the paper, is too coloured.
    PaperCast,
    /// The thing meets the top of the scale.
    ThingClipped,
    /// The thing is too near black to have a colour.
    ThingDark,
}

impl fmt::Display for Unread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let id = match self {
            Self::Small => "photo-small",
            Self::PaperClipped => "photo-paper-clipped",
            Self::PaperDark => "photo-paper-dark",
            Self::PaperCast => "photo-paper-cast",
            Self::ThingClipped => "photo-thing-clipped",
            Self::ThingDark => "photo-thing-dark",
        };
        f.write_str(&say(id, &[]))
    }
}

impl std::error::Error for Unread {}

/// The tones of what is seen in `thing`, the largest first, with shares that
/// make 100, in the light that `paper` shows.
///
/// # Errors
/// When paper or thing cannot be read.
pub fn tones_of(thing: Patch<'_>, paper: Patch<'_>, kind: Paper) -> Result<Vec<Tone>, Unread> {
    let steps: Vec<f64> = (0..=u8::MAX).map(|c| linear(Srgb([c; 3]))[0]).collect();
    let white = Blocks::of(paper, &steps)?;
    if white.clipped > PAPER_CLIPPED {
        return Err(Unread::PaperClipped);
    }
    let light = Light::of(white.means.iter().flatten(), kind)?;
    let seen = Blocks::of(thing, &steps)?;
    if seen.clipped + seen.dark > LOST_MOST {
        return Err(if seen.clipped > seen.dark {
            Unread::ThingClipped
        } else {
            Unread::ThingDark
        });
    }
    let lit = |seen: &Option<Seen>| seen.map(|seen| light.neutral(seen));
    let lit: Vec<Option<Seen>> = seen.means.iter().map(lit).collect();
    Ok(tones::sorted(&lit, seen.across))
}

/// What is of use in a patch.
struct Blocks {
    /// Mean light of each block, row by row; none where no pixel is of use.
    means: Vec<Option<Seen>>,
    /// Blocks in a row.
    across: usize,
    /// Share of pixels that have met the top of the scale.
    clipped: f64,
    /// Share of pixels too near black.
    dark: f64,
}

impl Blocks {
    /// Averages a patch into blocks; `steps` is the light of each 8-bit value.
    fn of(patch: Patch<'_>, steps: &[f64]) -> Result<Self, Unread> {
        let wide = patch.width;
        let high = patch.rgba.len() / 4 / wide.max(1);
        if wide.min(high) < SIDE_LEAST {
            return Err(Unread::Small);
        }
        let side = (wide.min(high) / BLOCKS).max(BLOCK_LEAST);
        let across = wide.div_ceil(side);
        let mut sums = vec![([0.0; 3], 0_u32); across * high.div_ceil(side)];
        let (mut clipped, mut dark) = (0_u32, 0_u32);
        for (n, pixel) in patch.rgba.chunks_exact(4).take(wide * high).enumerate() {
            let most = pixel[0].max(pixel[1]).max(pixel[2]);
            if most >= CLIPPED_FROM {
                clipped += 1;
            } else if most < BLACK_BELOW {
                dark += 1;
            } else {
                let (sum, count) = &mut sums[n / wide / side * across + n % wide / side];
                for (sum, &c) in sum.iter_mut().zip(pixel) {
                    *sum += steps[usize::from(c)];
                }
                *count += 1;
            }
        }
        let mean = |&(sum, count): &([f64; 3], u32)| {
            (count > 0).then(|| light::seen(sum.map(|c| c / f64::from(count))))
        };
        let share = |count: u32| f64::from(count) / (wide * high) as f64;
        Ok(Self {
            means: sums.iter().map(mean).collect(),
            across,
            clipped: share(clipped),
            dark: share(dark),
        })
    }
}

#[cfg(test)]
mod tests;
