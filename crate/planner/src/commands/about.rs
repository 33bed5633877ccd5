//! What stands about the table and is set by hand in the picture: the light by
//! its hour, the stand and the photographer by their place.
use glam::DVec2;

use super::{Act, Refused};
use crate::layout::{Layout, Point, RigKind, Turn};
use crate::rig::Stand;
use crate::scene::{LightSpot, Ring};
use crate::shape::{CHORD_ERROR, contains, frame_outline, table_outline, to_edge};
use crate::words::{Arg, clock, length, say};

/// A finger takes a photographer by all of half a shoulder's breadth, mm.
pub const PERSON_REACH: f64 = 230.0;

/// What can be taken in hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fixture {
    /// The light, by its ring.
    Light,
    /// The first mast, or the second, which mirrors it about the lens.
    Stand {
        /// Whether it is the second.
        second: bool,
    },
    /// Where the photographer stands.
    Photographer,
}

/// The hour at which a place lies, seen from the table's middle and told
/// relative to the table; that of now in the very middle.
fn hour_of(layout: &Layout, place: DVec2) -> Turn {
    let way = place - Ring::of(layout).centre;
    if way.length_squared() < 1.0 {
        return layout.light.clock;
    }
    Turn::from_degrees(libm::atan2(way.x, -way.y).to_degrees())
}

/// What a finger takes that reaches so far, mm; the light only where its ring
/// is shown: on the ring, past it, or where the light itself is drawn.
#[must_use]
pub fn fixture_at(layout: &Layout, place: DVec2, reach: f64, lit: bool) -> Option<Fixture> {
    let rig = &layout.rig;
    if let Some(first) = rig.at.filter(|_| rig.kind != RigKind::Ceiling) {
        let second = layout.frame.at.vec() * 2.0 - first.vec();
        let two = rig.kind == RigKind::TwoStands;
        if place.distance(first.vec()) <= reach {
            return Some(Fixture::Stand { second: false });
        }
        if two && place.distance(second) <= reach {
            return Some(Fixture::Stand { second: true });
        }
    }
    let person = rig.photographer.map(Point::vec);
    if person.is_some_and(|at| place.distance(at) <= PERSON_REACH.max(reach)) {
        return Some(Fixture::Photographer);
    }
    let ring = Ring::of(layout);
    let spot = ring.light(layout, layout.light.clock).at;
    let line = ring.towards(place - ring.centre);
    let on_ring = ring.share(place) >= 1.0 || place.distance(line) <= reach;
    // The frame is the table's; the ring is told off it.
    let clear = !contains(&frame_outline(&layout.frame), place);
    let takes = (on_ring && clear) || place.distance(spot) <= reach;
    (lit && takes).then_some(Fixture::Light)
}

/// The light at the hour of a place, where the window is: half degrees of the
/// table, whichever way the picture is turned.
///
/// # Errors
/// When something locked would change.
pub fn aim_light(layout: &Layout, place: DVec2) -> Result<Act, Refused> {
    let mut after = layout.clone();
    after.light.clock = hour_of(layout, place);
    let told = clock(after.light.clock.degrees() - layout.frame.turn.degrees());
    let name = say("done-light-at", &[("clock", Arg::Text(told))]);
    Act::between(name, layout, &after)
}

/// The mast at a place.
///
/// # Errors
/// When something locked would change.
pub fn move_stand(layout: &Layout, place: DVec2) -> Result<Act, Refused> {
    let mut after = layout.clone();
    after.rig.at = Some(Point::nearest(place));
    Act::between(say("done-stand-moved", &[]), layout, &after)
}

/// The photographer at a place.
///
/// # Errors
/// When something locked would change.
pub fn move_photographer(layout: &Layout, place: DVec2) -> Result<Act, Refused> {
    let mut after = layout.clone();
    after.rig.photographer = Some(Point::nearest(place));
    Act::between(say("done-photographer-moved", &[]), layout, &after)
}

/// How a group of the drawing lies while something is in hand: turned about a
/// place, degrees, then moved, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Motion {
    /// Which group.
    pub key: &'static str,
    /// How far it is moved.
    pub by: DVec2,
    /// How far it is turned.
    pub turn: f64,
    /// About which place.
    pub about: DVec2,
}

/// One of them in hand.
pub struct Carry {
    what: Fixture,
    /// Where the finger took it, and where it stood.
    taken: DVec2,
    from: DVec2,
    /// Where the finger is.
    to: DVec2,
}

impl Carry {
    /// Takes hold at a place.
    #[must_use]
    pub fn of(layout: &Layout, place: DVec2, reach: f64, lit: bool) -> Option<Self> {
        let what = fixture_at(layout, place, reach, lit)?;
        let first = layout.rig.at.map_or(place, Point::vec);
        let from = match what {
            Fixture::Light => place,
            Fixture::Stand { second: false } => first,
            Fixture::Stand { second: true } => layout.frame.at.vec() * 2.0 - first,
            Fixture::Photographer => layout.rig.photographer.map_or(place, Point::vec),
        };
        Some(Self {
            what,
            taken: place,
            from,
            to: place,
        })
    }

    /// Moves it by so much from where it was taken, mm.
    pub fn move_to(&mut self, by: DVec2) {
        self.to = self.taken + by;
    }

    /// Where the first mast or the photographer comes to stand.
    fn stands(&self, layout: &Layout) -> DVec2 {
        let there = (self.from + self.to - self.taken).round();
        match self.what {
            Fixture::Stand { second: true } => layout.frame.at.vec() * 2.0 - there,
            _ => there,
        }
    }

    /// How the groups it is drawn with lie.
    #[must_use]
    pub fn motions(&self, layout: &Layout) -> Vec<Motion> {
        let moved = |key, by| Motion {
            key,
            by,
            turn: 0.0,
            about: DVec2::ZERO,
        };
        match self.what {
            Fixture::Light => {
                let ring = Ring::of(layout);
                let (now, then) = (layout.light.clock, hour_of(layout, self.to));
                let [a, b] = [now, then].map(|hour| ring.light(layout, hour));
                let by = b.at - a.at;
                let light = Motion {
                    turn: then.degrees() - now.degrees(),
                    about: a.at,
                    ..moved("light", by)
                };
                vec![
                    light,
                    moved("light-away", away_at(&ring, b) - away_at(&ring, a)),
                ]
            }
            Fixture::Photographer => {
                vec![moved("photographer", self.stands(layout) - self.from)]
            }
            Fixture::Stand { .. } => {
                let first = layout.rig.at.map_or(self.from, Point::vec);
                let by = self.stands(layout) - first;
                let lens = layout.frame.at.vec();
                let [old, new] = [first, first + by].map(|p| p - lens);
                let turn = libm::atan2(old.perp_dot(new), old.dot(new)).to_degrees();
                let arm = Motion {
                    turn,
                    about: lens,
                    ..moved("arm", DVec2::ZERO)
                };
                vec![moved("mast-0", by), moved("mast-1", -by), arm]
            }
        }
    }

    /// The figure that goes with it.
    #[must_use]
    pub fn words(&self, layout: &Layout) -> String {
        let told = |mm: f64| Arg::Text(length(mm, layout.head.units));
        match self.what {
            Fixture::Light => {
                let hour = hour_of(layout, self.to).degrees() - layout.frame.turn.degrees();
                clock(hour)
            }
            Fixture::Stand { .. } => {
                let mut after = layout.clone();
                after.rig.at = Some(Point::nearest(self.stands(layout)));
                let reach = Stand::of(&after).map_or(0.0, |stand| stand.reach);
                say("drag-stand", &[("reach", told(reach))])
            }
            Fixture::Photographer => {
                let table = table_outline(&layout.table, CHORD_ERROR);
                let away = to_edge(&table, self.stands(layout));
                say("drag-photographer", &[("gap", told(away))])
            }
        }
    }

    /// What it has come to.
    ///
    /// # Errors
    /// When something locked would change.
    pub fn drop(&self, layout: &Layout) -> Result<Act, Refused> {
        match self.what {
            Fixture::Light => aim_light(layout, self.to),
            Fixture::Stand { .. } => move_stand(layout, self.stands(layout)),
            Fixture::Photographer => move_photographer(layout, self.stands(layout)),
        }
    }
}

/// Where the distance of a light is written, on the table's side of it.
#[must_use]
pub fn away_at(ring: &Ring, spot: LightSpot) -> DVec2 {
    let inward = (ring.centre - spot.at).normalize_or_zero();
    spot.at + inward * AWAY
}

/// From the light to its distance, mm. Our choice.
const AWAY: f64 = 95.0;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::LayoutId;

    fn done(layout: &Layout, act: &Act) -> Layout {
        let mut after = layout.clone();
        act.edit.apply_checked(&mut after).expect("fits");
        after
    }

    #[test]
    fn a_tap_where_the_window_is_sets_the_hour_of_the_table_and_speaks_the_pictures() {
        let mut layout = Layout::empty(LayoutId(1));
        let ring = Ring::of(&layout);
        for turn in [0.0, 90.0, 180.0, 247.5] {
            layout.frame.turn = Turn::from_degrees(turn);
            // The middle of the left side of the table, however the camera is
            // turned.
            let left = ring.centre - DVec2::X * 900.0;
            let act = aim_light(&layout, left).expect("free");
            let clock_now = done(&layout, &act).light.clock;
            assert_eq!(clock_now, Turn::from_degrees(270.0), "frame at {turn}°");
            let spoken = clock(270.0 - turn);
            assert!(act.name.contains(&spoken), "{turn}°: {}", act.name);
        }
        layout.frame.turn = Turn::from_degrees(90.0);
        let act = aim_light(&layout, ring.centre - DVec2::X).expect("free");
        assert!(act.name.contains("6 o’clock"), "{}", act.name);
    }

    #[test]
    fn the_hour_comes_in_half_degrees_and_leads_back_to_the_place() {
        let layout = Layout::empty(LayoutId(1));
        let ring = Ring::of(&layout);
        for n in 0..360 {
            let asked = f64::from(n) + 0.2;
            let way = DVec2::new(
                libm::sin(asked.to_radians()),
                -libm::cos(asked.to_radians()),
            );
            let act = aim_light(&layout, ring.towards(way)).expect("free");
            let got = done(&layout, &act).light.clock;
            assert_eq!(got, Turn::from_degrees(asked), "{asked}°");
        }
        let middle = aim_light(&layout, ring.centre).expect("free");
        assert!(middle.edit.0.is_empty(), "no way is no hour");
    }

    #[test]
    fn the_ring_takes_the_light_only_where_it_is_shown_and_off_the_picture() {
        let mut layout = Layout::empty(LayoutId(1));
        let ring = Ring::of(&layout);
        let on = ring.towards(DVec2::X);
        let take = |l: &Layout, p, lit| fixture_at(l, p, 60.0, lit);
        assert_eq!(take(&layout, on, true), Some(Fixture::Light));
        assert_eq!(take(&layout, on, false), None, "not shown");
        let past = on + DVec2::X * 400.0;
        assert_eq!(take(&layout, past, true), Some(Fixture::Light), "past it");
        assert_eq!(take(&layout, ring.centre, true), None, "the table's");
        layout.rig.photographer = Some(Point::nearest(on));
        assert_eq!(take(&layout, on, true), Some(Fixture::Photographer));
        layout.rig.at = Some(Point::nearest(on));
        let mast = Some(Fixture::Stand { second: false });
        assert_eq!(take(&layout, on, true), mast, "the smallest first");
        layout.rig.kind = RigKind::Ceiling;
        assert_eq!(take(&layout, on, true), Some(Fixture::Photographer));
    }

    #[test]
    fn what_is_carried_comes_to_lie_where_it_is_drawn_then() {
        let mut layout = Layout::empty(LayoutId(1));
        layout.rig.at = Some(Point::new(600, 1_300));
        layout.rig.photographer = Some(Point::new(-600, 450));
        for kind in [RigKind::Arm, RigKind::TwoStands] {
            layout.rig.kind = kind;
            let by = DVec2::new(37.0, -21.0);
            let masts = |l: &Layout| Stand::of(l).expect("told").masts;
            let before = masts(&layout);
            for at in before.clone() {
                let mut carry = Carry::of(&layout, at, 30.0, true).expect("there");
                carry.move_to(by);
                let motions = carry.motions(&layout);
                let after = done(&layout, &carry.drop(&layout).expect("free"));
                for (n, then) in masts(&after).iter().enumerate() {
                    assert!((before[n] + motions[n].by).distance(*then) < 1e-6);
                }
                // The arm turns with it about the lens.
                let [old, new] = [&layout, &after].map(|l| Stand::of(l).expect("told").along);
                let arm = motions[2];
                let turned = crate::shape::rotation(arm.turn).rotate(old);
                assert!(turned.distance(new) < 1e-9, "{kind:?}");
            }
            let at = DVec2::new(-500.0, 500.0);
            let mut carry = Carry::of(&layout, at, 30.0, false).expect("inside the ring");
            carry.move_to(by);
            let after = done(&layout, &carry.drop(&layout).expect("free"));
            assert_eq!(after.rig.photographer, Some(Point::new(-563, 429)));
        }
    }

    #[test]
    fn a_light_in_hand_lies_where_it_is_drawn_then() {
        let mut layout = Layout::empty(LayoutId(1));
        let ring = Ring::of(&layout);
        for distance in [400, 1_800] {
            layout.light.distance = distance;
            let from = ring.towards(DVec2::NEG_X);
            let mut carry = Carry::of(&layout, from, 30.0, true).expect("the ring");
            let to = ring.towards(DVec2::new(0.4, 1.0));
            carry.move_to(to - from);
            let before = ring.light(&layout, layout.light.clock).at;
            let motion = carry.motions(&layout)[0];
            let after = done(&layout, &carry.drop(&layout).expect("free"));
            let then = ring.light(&after, after.light.clock).at;
            assert!((before + motion.by).distance(then) < 1e-9, "{distance}");
        }
    }
}
