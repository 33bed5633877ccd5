//! Soft shadows by the planner's strips and by plain rays, for the same places,
//! things and light.

use glam::{DVec2, DVec3, dvec3};
use planner::layout::{Id, LightShape};
use planner::light::{Occluder, Source, seen_share};
use planner::shape::{CHORD_ERROR, disc};
use rand_pcg::Pcg32;
use rand_pcg::rand_core::Rng;

use crate::full_table::AREA_EACH;

/// Places whose light is asked for.
const PLACES: usize = 96;
/// Rays to a side of the source from which the truth is taken.
const TRUTH: u32 = 160;
/// Places that see less or more of the light than this tell nothing.
const PARTLY: [f64; 2] = [0.02, 0.98];

/// An upright can on the table: its middle, its radius and its height.
type Can = (DVec2, f64, f64);

/// Cans under a window, and places in their penumbras.
pub struct Shadows {
    source: Source,
    cans: Vec<Can>,
    solids: Vec<Occluder>,
    places: Vec<DVec3>,
    truth: Vec<f64>,
}

impl Shadows {
    /// So many cans at the density of a full table.
    pub fn of(count: u32) -> Self {
        let side = (f64::from(count) * AREA_EACH).sqrt();
        let mut dice = Pcg32::new(7, 1);
        let can = |n: u32| -> Can {
            let fraction = |by: f64| (f64::from(n) * by).fract();
            let at = DVec2::new(
                fraction(0.754_877_666_246_692_7),
                fraction(0.569_840_290_998_053_2),
            );
            let wide = 30.0 + 60.0 * fraction(0.618_033_988_749_894_9);
            (at * side, wide, 40.0 + 1.5 * wide)
        };
        let cans: Vec<Can> = (1..=count).map(can).collect();
        let solid = |(n, (at, radius, height)): (usize, &Can)| {
            let outline = disc(*at, *radius, CHORD_ERROR);
            let levels = vec![[0.0, 1.0], [*height, 1.0]];
            Occluder::new(Id(n as u16 + 1), &outline, *at, levels).expect("a can")
        };
        let solids = cans.iter().enumerate().map(solid).collect();
        let middle = side * 0.5;
        let source = Source {
            centre: dvec3(middle - 1_800.0 - side * 0.3, middle, 1_200.0),
            facing: DVec3::X,
            across: DVec3::Y * 600.0,
            up: DVec3::Z * 600.0,
            shape: LightShape::Window,
        };
        let mut all = Self {
            source,
            cans,
            solids,
            places: Vec::new(),
            truth: Vec::new(),
        };
        while all.places.len() < PLACES {
            let place = dvec3(share(&mut dice) * side, share(&mut dice) * side, 0.0);
            let truth = all.by_rays(place, TRUTH, &mut dice);
            if (PARTLY[0]..PARTLY[1]).contains(&truth) {
                all.places.push(place);
                all.truth.push(truth);
            }
        }
        all
    }

    /// The sum of all shares by strips.
    pub fn strips(&self) -> f64 {
        self.places.iter().map(|place| self.by_strips(*place)).sum()
    }

    /// The same by rays, so many to a side of the source.
    pub fn rays(&self, to_a_side: u32) -> f64 {
        let mut dice = Pcg32::new(3, 1);
        let all = self.places.iter();
        all.map(|place| self.by_rays(*place, to_a_side, &mut dice))
            .sum()
    }

    /// The fewest rays to a side of the source whose error is no larger than
    /// that of the strips, and both errors.
    pub fn equal_error(&self) -> (u32, f64, f64) {
        let error = |of: &mut dyn FnMut(DVec3) -> f64| {
            let all = self.places.iter().zip(&self.truth);
            let off = |(place, truth): (&_, &f64)| of(*place) - truth;
            let squares: f64 = all.map(off).map(|off: f64| off * off).sum();
            (squares / self.places.len() as f64).sqrt()
        };
        let strips = error(&mut |place| self.by_strips(place));
        let mut dice = Pcg32::new(3, 1);
        (2..TRUTH / 2)
            .map(|n| (n, error(&mut |place| self.by_rays(place, n, &mut dice))))
            .find(|(_, rays)| *rays <= strips)
            .map(|(n, rays)| (n, rays, strips))
            .expect("enough rays do as well")
    }

    fn by_strips(&self, place: DVec3) -> f64 {
        seen_share(&self.source, place, &self.solids, &|_| false)
    }

    /// One ray to a random place in each cell of the source, past every can.
    fn by_rays(&self, place: DVec3, to_a_side: u32, dice: &mut Pcg32) -> f64 {
        let (mut open, mut all) = (0.0, 0.0);
        for cell in 0..to_a_side * to_a_side {
            let (x, y) = (cell % to_a_side, cell / to_a_side);
            let mut along =
                |n: u32| 2.0 * (f64::from(n) + share(dice)) / f64::from(to_a_side) - 1.0;
            let ray = self.source.point(along(x), along(y)) - place;
            let far = ray.length_squared();
            let light = ray.z * -ray.dot(self.source.facing) / (far * far);
            all += light;
            if !self.cans.iter().any(|can| stops(can, place, ray)) {
                open += light;
            }
        }
        open / all
    }
}

/// Whether a can stands in the way of a ray from a place on the table up.
fn stops(&(at, radius, height): &Can, place: DVec3, ray: DVec3) -> bool {
    let (from, way) = (place.truncate() - at, ray.truncate());
    let over = (height / ray.z).min(1.0);
    let nearest = (-from.dot(way) / way.length_squared()).clamp(0.0, over);
    (from + way * nearest).length_squared() < radius * radius
}

fn share(dice: &mut Pcg32) -> f64 {
    f64::from(dice.next_u32()) / 4_294_967_296.0
}
