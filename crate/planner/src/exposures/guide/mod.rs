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

pub use adds::level_parts;
pub use blend::{FEATHER, NONE, QUIET, TAPER};
pub use names::{GuideFile, OVERVIEW, combined, guides};

use glam::{DVec2, dvec2};

use crate::layout::{Id, Layout};
use crate::light::{LevelShade, Source};
use crate::optics::{Pixels, View};
use adds::{Adds, Stack};
use blend::{Other, blend};
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
    others: Vec<(Zone, LevelShade)>,
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
    Uneven { own: Near, others: Vec<Beside> },
}

/// Another exposure within one cell.
#[derive(Clone, Debug)]
struct Beside {
    near: Near,
    /// Share of the light it takes at the corners, from left to right, above
    /// and below.
    lost: [f64; 4],
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
        let source = Source::of(layout);
        let others = stack.above.iter().filter(|a| a.exposure != exposure);
        let beside = |adds: &Adds| {
            let shade = LevelShade::new(&source, &adds.plates);
            (Zone::of(&adds.solid, &pixels), shade)
        };
        Some(Self {
            own: adds.map(|adds| Zone::of(&adds.solid, &pixels)),
            others: others.map(beside).collect(),
            shade: LevelShade::new(&source, adds.map_or(&[], |a| a.plates.as_slice())),
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
        let mut beside: Vec<Other> = Vec::new();
        for (n, pixels) in out.chunks_mut(self.step).enumerate() {
            let (own_near, others) = match &self.band.cells[n] {
                Cell::Even(value) => {
                    pixels.fill(*value);
                    continue;
                }
                Cell::Uneven { own, others } => (own, others),
            };
            let [above, below] = &self.band.lost;
            let lost = [above[n], above[n + 1], below[n], below[n + 1]];
            for (x, pixel) in pixels.iter_mut().enumerate() {
                let along = (x as f64 + 0.5) / self.step as f64;
                let at = dvec2((n * self.step + x) as f64 + 0.5, y as f64 + 0.5) * mm;
                beside.clear();
                beside.extend(others.iter().map(|other| Other {
                    away: other.near.measured(at, |n| &self.others[n].0),
                    lost: between(other.lost, along, down),
                }));
                let away = own_near.measured(at, |_| &own);
                *pixel = grey(blend(away, between(lost, along, down), &beside));
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
            self.cell([n, row], own, [least_of(&ends), greatest(&ends)])
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
        let corner = |n: usize| {
            let by = DVec2::from([n % 2, n / 2].map(|n| n as f64));
            let cell = DVec2::from(at.map(|n| n as f64));
            self.pixels.place((cell + by) * self.step as f64)
        };
        // Only on quiet surface of its own does a shadow of others count.
        let quiet = from - half < QUIET + FEATHER && from + half > 0.0;
        let others: Vec<(f64, [f64; 4])> = self
            .others
            .iter()
            .map(|(zone, shade)| {
                let lost = |n| if quiet { shade.lost(corner(n)) } else { 0.0 };
                (zone.signed(middle), core::array::from_fn(lost))
            })
            .collect();
        let end = |way: f64, [least, most]: [f64; 2]| {
            let beside = others.iter().map(|(away, lost)| Other {
                away: away + half * way,
                lost: if way < 0.0 {
                    greatest(lost)
                } else {
                    least_of(lost)
                },
            });
            let own = from - half * way;
            grey(blend(
                own,
                if way < 0.0 { least } else { most },
                &beside.collect::<Vec<_>>(),
            ))
        };
        let (dark, light) = (end(-1.0, [least, most]), end(1.0, [least, most]));
        if dark == light {
            return Cell::Even(dark);
        }
        let near = |zone: &Zone, n: usize, away: f64| {
            if away < half {
                Near::Outline(n)
            } else {
                Near::Sides(zone.near(middle, away + 2.0 * half))
            }
        };
        // Another counts as near as its quiet surface reaches, or its shadow.
        let counts = |(away, lost): (f64, [f64; 4])| {
            away - half < QUIET + FEATHER + TAPER || greatest(&lost) > 0.0
        };
        let counted = self.others.iter().zip(&others).enumerate();
        let counted = counted.filter(|(_, (_, other))| counts(**other));
        let others: Vec<Beside> = counted
            .map(|(n, ((zone, _), (away, lost)))| Beside {
                near: near(zone, n, *away),
                lost: *lost,
            })
            .collect();
        let own = if others.is_empty() && !quiet {
            Near::Far
        } else {
            near(own, 0, from)
        };
        Cell::Uneven { own, others }
    }
}

impl Near {
    fn measured<'a>(&self, at: DVec2, zone: impl Fn(usize) -> &'a Zone) -> f64 {
        match self {
            Self::Far => f64::INFINITY,
            Self::Sides(sides) => nearest(sides, at),
            Self::Outline(n) => zone(*n).signed(at),
        }
    }
}

/// A figure of four corners straight between them.
fn between([a, b, c, d]: [f64; 4], along: f64, down: f64) -> f64 {
    let (from, to) = (a + (c - a) * down, b + (d - b) * down);
    from + (to - from) * along
}

fn greatest(all: &[f64; 4]) -> f64 {
    all.iter().copied().fold(0.0, f64::max)
}

fn least_of(all: &[f64; 4]) -> f64 {
    all.iter().copied().fold(f64::INFINITY, f64::min)
}

/// A share as one of 255 steps.
fn grey(share: f64) -> u8 {
    (share * 255.0).round() as u8
}
