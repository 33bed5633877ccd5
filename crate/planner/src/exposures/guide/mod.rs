//! Mask guides: for each exposure a grey picture of the camera's own pixels
//! that is white where it is to be seen in the combined picture.
//!
//! Wide, and not the final mask: real hands never land on the line. A guide is
//! white over all that its exposure adds, over quiet surface round it and over
//! its shadow as far as that is seen; `blend` says how it fades.
//!
//! The exposures are laid on each other with the clean one at the bottom,
//! whose guide is white all over: it shows wherever no other does. The others
//! follow in the order they are told in, each masked by its guide. Where no two
//! clash no two are white, so that their order does not show.
//!
//! A guide is made row by row, so that nobody ever holds a whole picture. The
//! shadow is worked out at the corners of cells of 8 mm and drawn straight
//! between them, as it is far softer than that. Distances change by no more
//! than one goes, so of most cells both ends of what may come of them are
//! alike, and they are filled; in the rest each pixel is measured against those
//! sides that can be the nearest.
mod adds;
mod blend;
mod names;
mod zone;

pub use blend::{FEATHER, NONE, QUIET, TAPER};
pub use names::{GuideFile, OVERVIEW, combined, guides};

use glam::{DVec2, dvec2};

use crate::layout::{Id, Layout};
use crate::light::{LevelShade, Source};
use crate::optics::{Pixels, View};
use adds::Stack;
use blend::{blend, left};
use zone::{Side, Zone, nearest};

/// A cell is this wide, mm. Our choice: a hand's shadow changes from nothing to
/// all over ten times as much.
const CELL: f64 = 8.0;

/// The mask guide of one exposure.
#[derive(Clone, Debug)]
pub struct Guide {
    pixels: Pixels,
    /// What it adds; none for the exposure under all others.
    own: Option<Zone>,
    others: Vec<Zone>,
    shade: LevelShade,
    /// Pixels across a cell.
    step: usize,
    band: Band,
}

/// One row of cells.
#[derive(Clone, Debug, Default)]
struct Band {
    /// Which one it is, counted from 1; 0 for none yet.
    number: usize,
    /// Share of the light lost at the corners above and below.
    lost: [Vec<f64>; 2],
    cells: Vec<Cell>,
}

/// What comes of a cell.
#[derive(Clone, Debug)]
enum Cell {
    /// The same everywhere.
    Even(u8),
    /// To be measured at each pixel.
    Uneven { own: Near, others: Vec<Near> },
}

/// What a distance is measured from within one cell.
#[derive(Clone, Debug)]
enum Near {
    /// From nothing: there it does not matter.
    Far,
    /// From those sides that can be the nearest.
    Sides(Vec<Side>),
    /// From the outline, which runs through the cell.
    Outline(usize),
}

impl Guide {
    /// The guide of an exposure; nothing for one that adds nothing, and when no
    /// lens can show the frame.
    #[must_use]
    pub fn new(layout: &Layout, exposure: Id) -> Option<Self> {
        if View::of(layout) == View::Above {
            return None;
        }
        let stack = Stack::of(layout)?;
        let pixels = Pixels::of(layout);
        let adds = stack.above.iter().find(|a| a.exposure == exposure);
        if adds.is_none() && stack.ground != exposure {
            return None;
        }
        let others = stack.above.iter().filter(|a| a.exposure != exposure);
        Some(Self {
            own: adds.map(|adds| Zone::of(&adds.solid, &pixels)),
            others: others.map(|a| Zone::of(&a.solid, &pixels)).collect(),
            shade: LevelShade::new(
                &Source::of(layout),
                adds.map_or(&[], |a| a.plates.as_slice()),
            ),
            step: ((CELL * pixels.per_mm()).round() as usize).max(1),
            pixels,
            band: Band::default(),
        })
    }

    /// Pixels across and down.
    #[must_use]
    pub const fn size(&self) -> [usize; 2] {
        let [wide, high] = self.pixels.size;
        [wide as usize, high as usize]
    }

    /// Writes one row, counted from the top: 255 is white. Rows of one row of
    /// cells are best asked for together.
    pub fn row(&mut self, y: usize, out: &mut [u8]) {
        let Some(own) = self.own.take() else {
            out.fill(u8::MAX);
            return;
        };
        self.prepare(y / self.step, &own);
        let down = (y as f64 + 0.5) / self.step as f64 - (y / self.step) as f64;
        let mm = 1.0 / self.pixels.per_mm();
        let mut away = vec![0.0; self.others.len()];
        for (n, pixels) in out.chunks_mut(self.step).enumerate() {
            let (own_near, near) = match &self.band.cells[n] {
                Cell::Even(value) => {
                    pixels.fill(*value);
                    continue;
                }
                Cell::Uneven { own, others } => (own, others),
            };
            let [above, below] = &self.band.lost;
            let [from, to] = [n, n + 1].map(|c| above[c] + (below[c] - above[c]) * down);
            away.resize(near.len(), 0.0);
            for (x, pixel) in pixels.iter_mut().enumerate() {
                let along = (x as f64 + 0.5) / self.step as f64;
                let at = dvec2((n * self.step + x) as f64 + 0.5, y as f64 + 0.5) * mm;
                for (away, near) in away.iter_mut().zip(near) {
                    *away = near.measured(at, &self.others);
                }
                let own = own_near.measured(at, core::slice::from_ref(&own));
                *pixel = grey(blend(own, &away, from + (to - from) * along));
            }
        }
        self.own = Some(own);
    }

    /// Makes ready for a row of cells.
    fn prepare(&mut self, row: usize, own: &Zone) {
        if self.band.number == row + 1 {
            return;
        }
        let columns = self.size()[0].div_ceil(self.step);
        let corner = |column: usize, row: usize| {
            let pixel = dvec2((column * self.step) as f64, (row * self.step) as f64);
            self.shade.lost(self.pixels.place(pixel))
        };
        let corners = |row: usize| (0..=columns).map(|c| corner(c, row)).collect::<Vec<_>>();
        let above = if self.band.number == row && row > 0 {
            core::mem::take(&mut self.band.lost[1])
        } else {
            corners(row)
        };
        let lost = [above, corners(row + 1)];
        let cells = (0..columns).map(|n| {
            let ends = [lost[0][n], lost[0][n + 1], lost[1][n], lost[1][n + 1]];
            let least = ends.into_iter().fold(f64::INFINITY, f64::min);
            let most = ends.into_iter().fold(0.0, f64::max);
            self.cell([n, row], own, [least, most])
        });
        self.band.cells = cells.collect();
        self.band.lost = lost;
        self.band.number = row + 1;
    }

    /// A cell whose corners lose between so much light.
    fn cell(&self, at: [usize; 2], own: &Zone, [least, most]: [f64; 2]) -> Cell {
        let mm = self.step as f64 / self.pixels.per_mm();
        let middle = (DVec2::from(at.map(|n| n as f64)) + DVec2::splat(0.5)) * mm;
        let half = mm * core::f64::consts::FRAC_1_SQRT_2;
        let from = own.signed(middle);
        let others: Vec<f64> = self.others.iter().map(|o| o.signed(middle)).collect();
        let by = |way: f64| others.iter().map(|o| o + half * way).collect::<Vec<f64>>();
        let [dark, light] = [
            grey(blend(from + half, &by(-1.0), least)),
            grey(blend(from - half, &by(1.0), most)),
        ];
        if dark == light {
            return Cell::Even(dark);
        }
        let counts = |other: f64| left(from + half, other - half) < 1.0;
        let near = |zone: &Zone, n: usize, away: f64| {
            if away < half {
                Near::Outline(n)
            } else {
                Near::Sides(zone.near(middle, away + 2.0 * half))
            }
        };
        let counted = self.others.iter().zip(&others).enumerate();
        let counted = counted.filter(|(_, (_, away))| counts(**away));
        let others: Vec<Near> = counted
            .map(|(n, (zone, away))| near(zone, n, *away))
            .collect();
        let own = if others.is_empty() && from - half > QUIET + FEATHER {
            Near::Far
        } else {
            near(own, 0, from)
        };
        Cell::Uneven { own, others }
    }
}

impl Near {
    fn measured(&self, at: DVec2, zones: &[Zone]) -> f64 {
        match self {
            Self::Far => f64::INFINITY,
            Self::Sides(sides) => nearest(sides, at),
            Self::Outline(n) => zones[*n].signed(at),
        }
    }
}

/// A share as one of 255 steps.
fn grey(share: f64) -> u8 {
    (share * 255.0).round() as u8
}
