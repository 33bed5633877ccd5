//! What about a set a level mirror shows to the lens.
use glam::{DVec2, DVec3, dvec2};

use super::mirror::clipped;
use super::{Mirror, Occluder, Source};
use crate::layout::{Card, CardKind, Layout, LightShape, RigKind};
use crate::shape::{Bounds, Region, difference, hull, union};

/// Camera and lens from below: a disc of this radius at the height of the
/// lens, mm. A full-frame body is about 14 cm long; our estimate.
pub const CAMERA: f64 = 70.0;
/// Breadth of an arm with its grips, mm; our estimate.
pub const ARM: f64 = 40.0;
/// Radius and height above the floor of whoever stands by, mm; our estimate.
pub const PERSON: [f64; 2] = [225.0, 1_700.0];
/// Corners of a round thing.
const ROUND: usize = 96;

/// What is mirrored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mirrored {
    /// The light.
    Light,
    /// Camera and lens.
    Camera,
    /// The arm or bar that holds it.
    Arm,
    /// Whoever stands by.
    Photographer,
    /// White cards, by the side that the light falls on.
    Card,
}

/// Every one of them.
pub const MIRRORED: [Mirrored; 5] = [
    Mirrored::Light,
    Mirrored::Camera,
    Mirrored::Arm,
    Mirrored::Photographer,
    Mirrored::Card,
];

/// One outline on a mirror, and the plane before which things hide it: a place
/// and the way to where they stand.
struct Shown {
    outline: Vec<DVec2>,
    front: (DVec3, DVec3),
    /// Which card it is.
    card: Option<usize>,
}

impl Mirrored {
    /// Where on a mirror's surface the lens sees it: nothing where it does not
    /// or nobody said where it stands. What stands in the way takes what it
    /// hides: cards, `standing` things, whoever stands by, and camera and arm;
    /// a black card is seen dark. Outlines that are not `wanted` are passed over.
    #[must_use]
    pub fn region(
        self,
        layout: &Layout,
        mirror: &Mirror,
        standing: &[&Occluder],
        wanted: &dyn Fn(&[DVec2]) -> bool,
    ) -> Region {
        let mut all = Vec::new();
        for shown in self.shown(layout, mirror) {
            if shown.outline.is_empty() || !wanted(&shown.outline) {
                continue;
            }
            let Ok(whole) = Region::from_polygon(&shown.outline) else {
                continue;
            };
            let taken = self.hidden(layout, mirror, standing, &shown, &whole);
            let taken: Vec<&Region> = taken.iter().collect();
            let left = match taken.as_slice() {
                [] => Ok(whole.clone()),
                taken => difference(&whole, taken),
            };
            all.push(left.unwrap_or(whole));
        }
        if all.len() > 1 {
            let each: Vec<&Region> = all.iter().collect();
            return union(&each).unwrap_or_default();
        }
        all.pop().unwrap_or_default()
    }

    fn shown(self, layout: &Layout, mirror: &Mirror) -> Vec<Shown> {
        let under = mirror.under;
        let lens = (under.extend(mirror.level + mirror.above), -DVec3::Z);
        let one = |outline, front| {
            vec![Shown {
                outline,
                front,
                card: None,
            }]
        };
        match self {
            Self::Light => {
                let source = Source::of(layout);
                one(light(&source, mirror), (source.centre, source.facing))
            }
            Self::Camera => one(mirror.patch(&camera(mirror), None), lens),
            Self::Arm => one(mirror.patch(&arm(layout, mirror), None), lens),
            Self::Photographer => {
                let rings = person(layout, mirror);
                let places: Vec<DVec2> = rings.iter().flatten().map(|p| mirror.place(*p)).collect();
                let at = layout.rig.photographer.map_or(under, |at| at.vec());
                // Rays run straight away from under the lens; between those
                // that graze the column its polar parts near side and far.
                let off = at - under;
                let far = off.length().max(1.0);
                let polar = (far - PERSON[0] * PERSON[0] / far) / far;
                let front = ((under + off * polar).extend(0.0), -off.extend(0.0));
                one(hull(&places), front)
            }
            Self::Card => {
                let light = Source::of(layout).centre;
                let cards = layout.cards.iter().enumerate();
                let white = cards.filter(|(_, c)| c.kind == CardKind::White);
                let lit = white.filter_map(|(n, card)| {
                    let at = card.at.vec().extend(0.0);
                    let way = card.turn.direction().extend(0.0);
                    let [seen, shone] = [under.extend(0.0), light].map(|p| (p - at).dot(way));
                    (seen * shone > 0.0).then(|| Shown {
                        outline: mirror.patch(&upright(card), None),
                        front: (at, way * seen.signum()),
                        card: Some(n),
                    })
                });
                lit.collect()
            }
        }
    }

    /// What hides some of this outline on the mirror.
    fn hidden(
        self,
        layout: &Layout,
        mirror: &Mirror,
        standing: &[&Occluder],
        shown: &Shown,
        whole: &Region,
    ) -> Vec<Region> {
        let mut out = Vec::new();
        let (at, way) = shown.front;
        let mut hide = |outline: Vec<DVec2>| {
            let own = Bounds::around(&outline);
            let meets = own.zip(whole.bounds()).is_some_and(|(a, b)| a.meets(b));
            if meets && let Ok(region) = Region::from_polygon(&outline) {
                out.push(region);
            }
        };
        let before = |outline: &[DVec3]| clipped(outline, |p| (*p - at).dot(way));
        for (n, card) in layout.cards.iter().enumerate() {
            if shown.card != Some(n) {
                hide(mirror.patch(&before(&upright(card)), None));
            }
        }
        // Whoever is no taller than the lens hangs is met below camera and arm.
        let low = PERSON[1] - f64::from(layout.table.height) <= mirror.level + mirror.above;
        let below = self == Self::Photographer && low;
        if !below && !matches!(self, Self::Camera | Self::Arm) {
            hide(mirror.patch(&before(&camera(mirror)), None));
            hide(mirror.patch(&before(&arm(layout, mirror)), None));
        }
        if self != Self::Photographer {
            let [low, high] = person(layout, mirror);
            hide(solid(mirror, shown.front, &low, &high));
        }
        for thing in standing {
            thing.solids(mirror.level, &mut |low, high| {
                hide(solid(mirror, shown.front, low, high));
            });
        }
        out
    }
}

/// Where what of a convex solid lies before a plane is mirrored.
fn solid(mirror: &Mirror, (at, way): (DVec3, DVec3), low: &[DVec3], high: &[DVec3]) -> Vec<DVec2> {
    let side = |p: DVec3| (p - at).dot(way);
    let mut places = Vec::with_capacity(low.len() * 2);
    let mut cut = |a: DVec3, b: DVec3| {
        let (from, to) = (side(a), side(b));
        if from > 0.0 {
            places.push(mirror.place(a));
        }
        if (from > 0.0) != (to > 0.0) {
            places.push(mirror.place(a.lerp(b, from / (from - to))));
        }
    };
    for (n, foot) in low.iter().enumerate() {
        let next = (n + 1) % low.len();
        cut(*foot, low[next]);
        cut(*foot, high[n]);
        cut(high[n], high[next]);
    }
    hull(&places)
}

/// Camera and lens from below.
fn camera(mirror: &Mirror) -> Vec<DVec3> {
    let level = mirror.level + mirror.above;
    let rim = |n| (turned(n) * CAMERA + mirror.under).extend(level);
    (0..ROUND).map(rim).collect()
}

fn light(source: &Source, mirror: &Mirror) -> Vec<DVec2> {
    let rim: Vec<DVec3> = match source.shape {
        LightShape::Window => [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
            .map(|(u, v)| source.point(u, v))
            .to_vec(),
        LightShape::Disc => (0..ROUND)
            .map(|n| source.point(turned(n).x, turned(n).y))
            .collect(),
    };
    mirror.patch(&rim, Some((source.centre, source.facing)))
}

/// From the mast to the camera; a bar between two stands as far beyond it.
fn arm(layout: &Layout, mirror: &Mirror) -> Vec<DVec3> {
    let Some(at) = layout
        .rig
        .at
        .filter(|_| layout.rig.kind != RigKind::Ceiling)
    else {
        return Vec::new();
    };
    let (mast, lens) = (at.vec(), mirror.under);
    let end = if layout.rig.kind == RigKind::TwoStands {
        lens * 2.0 - mast
    } else {
        lens
    };
    let half = (end - mast).normalize_or_zero().perp() * (ARM * 0.5);
    let level = mirror.level + mirror.above;
    let bar = [mast + half, end + half, end - half, mast - half];
    bar.map(|p| p.extend(level)).to_vec()
}

/// A column above the mirror, by its lower and its upper ring; the picture of
/// what is convex is convex.
fn person(layout: &Layout, mirror: &Mirror) -> [Vec<DVec3>; 2] {
    let [radius, tall] = PERSON;
    let top = tall - f64::from(layout.table.height);
    let at = layout.rig.photographer.filter(|_| top > mirror.level);
    [mirror.level, top].map(|z| {
        let ring = |at: DVec2| (0..ROUND).map(move |n| (turned(n) * radius + at).extend(z));
        at.map_or_else(Vec::new, |at| ring(at.vec()).collect())
    })
}

/// A card as it stands, its foot on the table.
fn upright(card: &Card) -> [DVec3; 4] {
    let half = card.turn.direction().perp() * (f64::from(card.width) * 0.5);
    let [left, right] = [card.at.vec() - half, card.at.vec() + half];
    let top = f64::from(card.height);
    [
        left.extend(0.0),
        right.extend(0.0),
        right.extend(top),
        left.extend(top),
    ]
}

fn turned(n: usize) -> DVec2 {
    let (sin, cos) = libm::sincos(core::f64::consts::TAU * n as f64 / ROUND as f64);
    dvec2(cos, sin)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{LayoutId, Point, Turn};

    fn set() -> (Layout, Mirror) {
        let mut layout = Layout::empty(LayoutId(1));
        layout.light.clock = Turn::from_degrees(270.0);
        layout.light.distance = 900;
        let under = layout.frame.at.vec();
        let mirror = Mirror::under_lens(under, 1400.0, 60.0).expect("above");
        (layout, mirror)
    }

    fn seen(of: Mirrored, layout: &Layout, mirror: &Mirror) -> f64 {
        let region = of.region(layout, mirror, &[], &|_| true);
        assert!(region.rings().iter().flatten().all(|p| p.is_finite()));
        region.area()
    }

    #[test]
    fn a_camera_is_mirrored_at_half_its_size_and_an_unknown_rig_not_at_all() {
        let (layout, mirror) = set();
        let camera = seen(Mirrored::Camera, &layout, &mirror);
        let disc = core::f64::consts::PI * 35.0 * 35.0;
        assert!((camera / disc - 1.0).abs() < 0.001, "96 corners");
        for unknown in [Mirrored::Arm, Mirrored::Photographer, Mirrored::Card] {
            assert_eq!(seen(unknown, &layout, &mirror), 0.0, "{unknown:?}");
        }
    }

    #[test]
    fn an_arm_is_mirrored_half_way_to_its_mast() {
        let (mut layout, mirror) = set();
        layout.rig.at = Some(Point::nearest(mirror.under + dvec2(1000.0, 0.0)));
        let arm = |layout: &Layout| seen(Mirrored::Arm, layout, &mirror);
        assert!((arm(&layout) - 500.0 * 20.0).abs() < 1e-6, "half of both");
        layout.rig.kind = RigKind::TwoStands;
        assert!((arm(&layout) - 1000.0 * 20.0).abs() < 1e-6, "either side");
        layout.rig.kind = RigKind::Ceiling;
        assert_eq!(arm(&layout), 0.0, "none");
    }

    #[test]
    fn a_card_takes_the_light_out_of_the_mirror_and_a_white_one_shows_by_its_lit_side() {
        let (mut layout, mirror) = set();
        let left = |layout: &Layout| seen(Mirrored::Light, layout, &mirror);
        let whole = left(&layout);
        assert!(whole > 0.0, "mirrored");
        let mut card = Card {
            id: crate::layout::Id(1),
            kind: CardKind::White,
            at: Point::new(-100, 450),
            turn: Turn::from_degrees(90.0),
            width: 3000,
            height: 2500,
            extra: crate::layout::Extra::new(),
        };
        layout.cards = vec![card.clone()];
        assert!(left(&layout) < 1.0, "all is taken: {}", left(&layout));
        let white = |layout: &Layout| seen(Mirrored::Card, layout, &mirror);
        assert_eq!(white(&layout), 0.0, "its dark side");
        layout.light.clock = Turn::from_degrees(90.0);
        assert!(white(&layout) > 0.0, "its lit side");
        card.kind = CardKind::Black;
        layout.cards = vec![card.clone()];
        assert_eq!(white(&layout), 0.0, "seen dark");
        layout.light.clock = Turn::from_degrees(270.0);
        assert!(left(&layout) < 1.0, "all is taken: {}", left(&layout));
        card.at = Point::new(-900, 450);
        layout.cards = vec![card];
        assert_eq!(left(&layout), whole, "behind the light");
    }

    #[test]
    fn what_stands_before_the_light_hides_it_and_what_stands_behind_does_not() {
        let (layout, mirror) = set();
        let open = seen(Mirrored::Light, &layout, &mirror);
        let left = |x: f64, from: f64, to: f64| {
            let wall = [dvec2(x, from), dvec2(x, to)];
            let wall = Occluder::sheet(crate::layout::Id(1), wall, 1.0, 5000.0).expect("a wall");
            let region = Mirrored::Light.region(&layout, &mirror, &[&wall], &|_| true);
            region.area()
        };
        // Right before the window, which stands 300 mm to the left.
        let [one, other] = [left(-250.0, -2000.0, 450.0), left(-250.0, 450.0, 3000.0)];
        assert!(one > 0.1 * open && other > 0.1 * open, "{one} and {other}");
        assert!(
            (one + other) / open - 1.0 < 0.01,
            "{one} and {other} of {open}"
        );
        assert_eq!(left(-250.0, -2000.0, 3000.0), 0.0, "all of it");
        assert_eq!(left(-1000.0, -2000.0, 3000.0), open, "behind");
    }

    #[test]
    fn a_light_below_the_surface_or_of_no_size_mirrors_no_area() {
        let (mut layout, mirror) = set();
        layout.light.height_above_table = -2000;
        let of = |layout: &Layout| seen(Mirrored::Light, layout, &mirror);
        assert_eq!(of(&layout), 0.0, "below");
        layout.light.height_above_table = 900;
        (layout.light.width, layout.light.height) = (0, 0);
        assert_eq!(of(&layout), 0.0, "of no size");
        layout.light.shape = LightShape::Disc;
        assert_eq!(of(&layout), 0.0, "a disc of no size");
    }
}
