//! The light of a photo, as paper shows it.
use palette::chromatic_adaptation::adaptation_matrix;
use palette::convert::{Convert, Matrix3};
use palette::lms::matrix::Bradford;
use palette::white_point::D65;
use palette::{FromColor, LinSrgb, Xyz};

use super::{Paper, Seen, Unread};

/// Strongest over weakest of the paper's red, green and blue from which no
/// colour can be told: a 3200 K lamp under a camera set to daylight makes 5.2.
/// Our choice.
const CAST_MOST: f64 = 6.0;
/// Exposure that may be made up for: three stops.
const GAIN_MOST: f64 = 8.0;

/// What brings a place in the photo to neutral light at its true lightness.
pub(super) struct Light {
    white: Matrix3<Seen, Seen>,
    gain: f64,
}

/// Linear light of the three channels as a camera wrote it.
pub(super) fn seen(light: [f64; 3]) -> Seen {
    Xyz::from_color(LinSrgb::from(light))
}

impl Light {
    /// The light in which paper of this kind looks like this.
    pub(super) fn of<'a>(
        blocks: impl Iterator<Item = &'a Seen>,
        kind: Paper,
    ) -> Result<Self, Unread> {
        let (mut sum, mut count) = (Seen::new(0.0, 0.0, 0.0), 0.0);
        for block in blocks {
            sum += *block;
            count += 1.0;
        }
        let paper = sum / f64::max(count, 1.0);
        let gain = kind.luminance() / paper.y;
        if gain > GAIN_MOST {
            return Err(Unread::PaperDark);
        }
        let [r, g, b]: [f64; 3] = LinSrgb::from_color(paper).into();
        if r.max(g).max(b) > CAST_MOST * r.min(g).min(b) {
            return Err(Unread::PaperCast);
        }
        Ok(Self {
            white: adaptation_matrix::<f64, D65, D65, Bradford>(Some(paper), None),
            gain,
        })
    }

    /// A place of the photo in D65, as light as it is.
    pub(super) fn neutral(&self, seen: Seen) -> Seen {
        self.white.convert(seen) * self.gain
    }
}

impl Paper {
    /// Luminance over that of a perfect white.
    const fn luminance(self) -> f64 {
        // ((L* + 16) / 116)³
        let root = match self {
            Self::White => (95.0 + 16.0) / 116.0,
            Self::Grey => (50.0 + 16.0) / 116.0,
        };
        root * root * root
    }
}
