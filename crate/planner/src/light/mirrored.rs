//! What about a set a level mirror shows to the lens.
use glam::{DVec2, DVec3, dvec2};

use super::mirror::clipped;
use super::{Mirror, Source};
use crate::layout::{Card, CardKind, Layout, LightShape, RigKind};
use crate::shape::{Region, difference, hull};

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
}

/// Every one of them.
pub const MIRRORED: [Mirrored; 4] = [
    Mirrored::Light,
    Mirrored::Camera,
    Mirrored::Arm,
    Mirrored::Photographer,
];

impl Mirrored {
    /// The outline on a mirror's surface in which the lens sees it; empty when
    /// it does not or nobody said where it stands. What else stands on the
    /// table between the two is not looked at.
    #[must_use]
    pub fn outline(self, layout: &Layout, mirror: &Mirror) -> Vec<DVec2> {
        match self {
            Self::Light => light(layout, mirror),
            Self::Camera => {
                let disc = |n| turned(n) * CAMERA + mirror.under;
                let level = mirror.level + mirror.above;
                let rim: Vec<DVec3> = (0..ROUND).map(|n| disc(n).extend(level)).collect();
                mirror.patch(&rim, None)
            }
            Self::Arm => arm(layout, mirror),
            Self::Photographer => person(layout, mirror),
        }
    }

    /// The same as an area: without what black cards take from the light.
    #[must_use]
    pub fn region(self, layout: &Layout, mirror: &Mirror, outline: &[DVec2]) -> Region {
        let whole = Region::from_polygon(outline).unwrap_or_default();
        if self != Self::Light || whole.is_empty() {
            return whole;
        }
        let source = Source::of(layout);
        // What of a card stands before the light.
        let before = |c: &Card| clipped(&upright(c), |p| (*p - source.centre).dot(source.facing));
        let black = layout.cards.iter().filter(|c| c.kind == CardKind::Black);
        let taken: Vec<Region> = black
            .filter_map(|c| Region::from_polygon(&mirror.patch(&before(c), None)).ok())
            .collect();
        let taken: Vec<&Region> = taken.iter().collect();
        difference(&whole, &taken).unwrap_or(whole)
    }
}

fn light(layout: &Layout, mirror: &Mirror) -> Vec<DVec2> {
    let source = Source::of(layout);
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
fn arm(layout: &Layout, mirror: &Mirror) -> Vec<DVec2> {
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
    let bar = [mast + half, end + half, end - half, mast - half].map(|p| p.extend(level));
    mirror.patch(&bar, None)
}

/// A column; the picture of what is convex is convex.
fn person(layout: &Layout, mirror: &Mirror) -> Vec<DVec2> {
    let Some(at) = layout.rig.photographer else {
        return Vec::new();
    };
    let [radius, tall] = PERSON;
    let top = tall - f64::from(layout.table.height);
    if top <= mirror.level {
        return Vec::new();
    }
    let rings = [mirror.level, top].into_iter().flat_map(|z| {
        let rim = move |n| (turned(n) * radius + at.vec()).extend(z);
        (0..ROUND).map(rim)
    });
    let places: Vec<DVec2> = rings.map(|p| mirror.place(p)).collect();
    hull(&places)
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
    use crate::shape::area;

    fn set() -> (Layout, Mirror) {
        let mut layout = Layout::empty(LayoutId(1));
        layout.light.clock = Turn::from_degrees(270.0);
        layout.light.distance = 900;
        let under = layout.frame.at.vec();
        let mirror = Mirror::under_lens(under, 1400.0, 60.0).expect("above");
        (layout, mirror)
    }

    #[test]
    fn a_camera_is_mirrored_at_half_its_size_and_an_unknown_rig_not_at_all() {
        let (layout, mirror) = set();
        let camera = Mirrored::Camera.outline(&layout, &mirror);
        let disc = core::f64::consts::PI * 35.0 * 35.0;
        assert!((area(&camera) / disc - 1.0).abs() < 0.001, "96 corners");
        for unknown in [Mirrored::Arm, Mirrored::Photographer] {
            assert!(unknown.outline(&layout, &mirror).is_empty(), "{unknown:?}");
        }
    }

    #[test]
    fn an_arm_is_mirrored_half_way_to_its_mast() {
        let (mut layout, mirror) = set();
        layout.rig.at = Some(Point::nearest(mirror.under + dvec2(1000.0, 0.0)));
        let arm = Mirrored::Arm.outline(&layout, &mirror);
        assert!((area(&arm) - 500.0 * 20.0).abs() < 1e-6, "half of both");
        layout.rig.kind = RigKind::TwoStands;
        let bar = Mirrored::Arm.outline(&layout, &mirror);
        assert!((area(&bar) - 1000.0 * 20.0).abs() < 1e-6, "either side");
        layout.rig.kind = RigKind::Ceiling;
        assert!(Mirrored::Arm.outline(&layout, &mirror).is_empty(), "none");
    }

    #[test]
    fn a_black_card_takes_the_light_out_of_the_mirror_and_a_white_one_does_not() {
        let (mut layout, mirror) = set();
        let left = |layout: &Layout| {
            let outline = Mirrored::Light.outline(layout, &mirror);
            Mirrored::Light.region(layout, &mirror, &outline).area()
        };
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
        assert_eq!(left(&layout), whole, "white");
        card.kind = CardKind::Black;
        layout.cards = vec![card.clone()];
        assert!(left(&layout) < 1.0, "all is taken: {}", left(&layout));
        card.at = Point::new(-900, 450);
        layout.cards = vec![card];
        assert_eq!(left(&layout), whole, "behind the light");
    }

    #[test]
    fn a_light_below_the_surface_or_of_no_size_mirrors_no_area() {
        let (mut layout, mirror) = set();
        layout.light.height_above_table = -2000;
        let of = |layout: &Layout| {
            let outline = Mirrored::Light.outline(layout, &mirror);
            assert!(outline.iter().all(|p| p.is_finite()));
            Mirrored::Light.region(layout, &mirror, &outline).area()
        };
        assert_eq!(of(&layout), 0.0, "below");
        layout.light.height_above_table = 900;
        (layout.light.width, layout.light.height) = (0, 0);
        assert_eq!(of(&layout), 0.0, "of no size");
        layout.light.shape = LightShape::Disc;
        assert_eq!(of(&layout), 0.0, "a disc of no size");
    }
}
