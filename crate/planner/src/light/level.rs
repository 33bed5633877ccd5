//! Soft shadows of level plates on the table, for many places at once.
//!
//! As `shade`, the source is cut into strips; its strips lie level, so that
//! what rays from one place of the table to one strip meet at the height of a
//! plate is one level line. Every plate is laid out beforehand in rows along
//! such lines, each row a few stretches, so that a strip costs a look into one
//! row instead of a walk round the plate, and there can be enough strips for
//! no step to be seen between them.
use glam::DVec2;

use super::Source;
use super::strip::Strip;
use crate::shape::Region;

/// Strips a source is cut into: at a window 120 cm high, 120 to 180 cm away,
/// a hand 15 cm up throws the ends of two strips about a centimetre apart.
const STRIPS: usize = 64;
/// Rows of a plate lie so close, mm. Our choice.
const ROW: f64 = 1.0;

/// What lies level at one height.
#[derive(Clone, Debug)]
pub struct Plate {
    /// Its height, mm.
    pub height: f64,
    /// What it covers there.
    pub region: Region,
}

/// A plate in rows along the source.
#[derive(Clone, Debug)]
struct Rows {
    height: f64,
    /// Where the first row begins, mm across the rows.
    from: f64,
    /// Stretches of each row, mm along it.
    rows: Vec<Vec<[f64; 2]>>,
}

/// Plates as the strips of a source cross them.
#[derive(Clone, Debug)]
pub struct LevelShade {
    source: Source,
    /// Unit vector along the strips.
    along: DVec2,
    plates: Vec<Rows>,
}

impl LevelShade {
    /// Plates above the table in the light of a source.
    #[must_use]
    pub fn new(source: &Source, plates: &[Plate]) -> Self {
        let along = source.across.truncate().normalize_or(DVec2::X);
        let laid = plates.iter().filter_map(|plate| Rows::of(plate, along));
        Self {
            source: *source,
            along,
            plates: laid.collect(),
        }
    }

    /// Share of the source's light that these plates take from a place on the
    /// table, 0 to 1.
    #[must_use]
    pub fn lost(&self, place: DVec2) -> f64 {
        let source = &self.source;
        let at = place.extend(0.0);
        if (source.centre - at).dot(source.facing) >= 0.0 {
            return 0.0;
        }
        // Strips that something covers, with the stretches that are.
        let mut covered: Vec<(usize, [f64; 2])> = Vec::new();
        for n in 0..STRIPS {
            self.cover(place, n, &mut covered);
        }
        if covered.is_empty() {
            return 0.0;
        }
        let (mut lost, mut all) = (0.0, 0.0);
        let mut own: Vec<[f64; 2]> = Vec::new();
        let mut next = covered.iter().peekable();
        for n in 0..STRIPS {
            let strip = Strip::of(source, at, middle(n));
            all += strip.all();
            own.clear();
            while let Some((_, span)) = next.next_if(|(of, _)| *of == n) {
                own.extend(strip.within(*span));
            }
            lost += strip.of_stretches(&mut own);
        }
        if all > 0.0 {
            (lost / all).clamp(0.0, 1.0)
        } else {
            0.0
        }
    }

    /// What the plates cover of one strip, seen from a place on the table.
    fn cover(&self, place: DVec2, n: usize, out: &mut Vec<(usize, [f64; 2])>) {
        let source = &self.source;
        let strip = source.point(0.0, middle(n));
        for plate in self.plates.iter().filter(|p| p.height < strip.z) {
            let share = plate.height / strip.z;
            let over = place + (strip.truncate() - place) * share;
            let stretches = plate.row(self.along.perp_dot(over));
            if stretches.is_empty() {
                continue;
            }
            let x = over.dot(self.along);
            let scale = 1.0 / (source.across.length() * share);
            let reach = Strip::half_at(source, middle(n));
            for stretch in stretches {
                let [from, to] = stretch.map(|end| (end - x) * scale);
                if to > -reach && from < reach {
                    out.push((n, [from, to]));
                }
            }
        }
    }
}

/// The middle of a strip, −1 to 1.
fn middle(n: usize) -> f64 {
    (2.0 * n as f64 + 1.0) / STRIPS as f64 - 1.0
}

impl Rows {
    /// A plate in rows; nothing of one on the table or without area.
    fn of(plate: &Plate, along: DVec2) -> Option<Self> {
        let turned = |p: &DVec2| DVec2::new(p.dot(along), along.perp_dot(*p));
        let rings = plate.region.rings().iter();
        let rings: Vec<Vec<DVec2>> = rings.map(|r| r.iter().map(turned).collect()).collect();
        let across = || rings.iter().flatten().map(|p| p.y);
        let from = across().fold(f64::INFINITY, f64::min);
        let to = across().fold(f64::NEG_INFINITY, f64::max);
        if plate.height <= 0.0 || from >= to {
            return None;
        }
        let mut cuts: Vec<Vec<f64>> = vec![Vec::new(); ((to - from) / ROW).ceil() as usize];
        for ring in &rings {
            for (n, a) in ring.iter().enumerate() {
                let b = ring[(n + 1) % ring.len()];
                let (low, high) = if a.y < b.y { (*a, b) } else { (b, *a) };
                // Rows whose middle lies between both ends.
                let first = ((low.y - from) / ROW - 0.5).ceil().max(0.0) as usize;
                for (n, row) in cuts.iter_mut().enumerate().skip(first) {
                    let y = from + (n as f64 + 0.5) * ROW;
                    if y >= high.y {
                        break;
                    }
                    row.push(low.x + (high.x - low.x) * ((y - low.y) / (high.y - low.y)));
                }
            }
        }
        let row = |mut cuts: Vec<f64>| {
            crate::order::sort(&mut cuts, f64::total_cmp);
            cuts.chunks_exact(2).map(|c| [c[0], c[1]]).collect()
        };
        Some(Self {
            height: plate.height,
            from,
            rows: cuts.into_iter().map(row).collect(),
        })
    }

    /// The stretches at a place across the rows.
    fn row(&self, y: f64) -> &[[f64; 2]] {
        let n = (y - self.from) / ROW;
        let row = (n >= 0.0).then(|| self.rows.get(n as usize)).flatten();
        row.map_or(&[], Vec::as_slice)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{Id, Layout, LayoutId, LightShape};
    use crate::light::{Occluder, seen_share};
    use crate::shape::rect;

    fn source(shape: LightShape) -> Source {
        let mut layout = Layout::empty(LayoutId(1));
        layout.light.shape = shape;
        Source::of(&layout)
    }

    fn plate(height: f64) -> (Plate, Vec<DVec2>) {
        let outline = rect(
            DVec2::new(600.0, 450.0),
            DVec2::new(90.0, 400.0),
            0.0,
            35.0,
            0.05,
        );
        let region = Region::from_polygon(&outline).expect("a plate");
        (Plate { height, region }, outline)
    }

    /// The strips of `shade` are a quarter as many, hence the tolerance.
    #[test]
    fn a_plate_takes_what_it_takes_as_a_solid() {
        for shape in [LightShape::Window, LightShape::Disc] {
            let source = source(shape);
            let (plate, outline) = plate(150.0);
            let levels = vec![[150.0, 1.0]];
            let solid = Occluder::new(Id(1), &outline, DVec2::new(600.0, 450.0), levels);
            let solid = [solid.expect("a solid")];
            let level = LevelShade::new(&source, &[plate]);
            let (mut most, mut worst) = (0.0_f64, 0.0_f64);
            for n in 0..900 {
                let place = DVec2::new(f64::from(n % 30), f64::from(n / 30)) * 40.0;
                let lost = level.lost(place);
                let open = seen_share(&source, place.extend(0.0), &solid, &|_| false);
                most = most.max(lost);
                worst = worst.max((1.0 - open - lost).abs());
            }
            assert!(most > 0.25, "{shape:?}: a shadow, {most}");
            assert!(worst < 0.04, "{shape:?}: off by {worst}");
        }
    }

    #[test]
    fn plates_over_each_other_take_light_once() {
        let source = source(LightShape::Window);
        let (one, _) = plate(150.0);
        let place = DVec2::new(600.0, 450.0) * 2.0 - source.centre.truncate();
        let place = DVec2::new(600.0, 450.0).lerp(place, 0.12);
        let alone = LevelShade::new(&source, core::slice::from_ref(&one)).lost(place);
        let twice = LevelShade::new(&source, &[one.clone(), one]).lost(place);
        assert!(
            alone > 0.1 && (alone - twice).abs() < 1e-12,
            "{alone}, {twice}"
        );
    }

    #[test]
    fn nothing_is_lost_to_what_lies_on_the_table_or_above_the_light() {
        let source = source(LightShape::Window);
        for height in [0.0, 5_000.0] {
            let level = LevelShade::new(&source, &[plate(height).0]);
            assert_eq!(level.lost(DVec2::new(600.0, 450.0)), 0.0, "{height}");
        }
        let behind = LevelShade::new(&source, &[plate(100.0).0]);
        assert_eq!(
            behind.lost(source.centre.truncate() * 2.0 - DVec2::new(600.0, 450.0)),
            0.0
        );
    }
}
