//! Hands set to an action in one go: whose, from which edge, at what.
use crate::layout::{
    Action, Exposure, ExposureKind, Extra, Hand, Id, Layout, Palm, Person, Point, Side, Sleeve,
    Srgb,
};
use crate::words::say;
use glam::DVec2;
use serde::Deserialize;

use super::{Act, Refused, hold, seats};

/// What the hands are to do.
#[derive(Deserialize)]
pub struct Wish {
    /// The action.
    pub action: Action,
    /// One hand or two of the same person.
    pub hands: u8,
    /// The item they do it at.
    pub at: Id,
}

/// Everything added for one action.
#[derive(Debug)]
struct Set {
    person: Option<Person>,
    exposure: Exposure,
    hands: Vec<Hand>,
}

/// Hands of a pair come in this far apart, mm: about a breadth of shoulders
/// (our choice).
const APART: f64 = 320.0;
/// How far above the table fingertips work, mm (our choice).
const fn above(action: Action) -> i32 {
    match action {
        Action::Rest => 20,
        Action::Cut | Action::Place => 60,
        _ => 110,
    }
}
/// Where along the half breadth of a dish two hands work, and where they hold
/// it (our choice).
const WORK: f64 = 0.55;
const RIM: f64 = 0.95;

/// Sets one hand or a pair to an action, in an exposure of its own; their
/// person gets a place at the table where they come in.
///
/// # Errors
/// When the item they are to do it at is not there.
pub fn add_hands(layout: &Layout, wish: &Wish) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let set = set(layout, wish, layout.head.next_id);
    let set = set.ok_or_else(|| Refused::Unknown(wish.at.0.to_string()))?;
    let added = 1 + set.hands.len() + usize::from(set.person.is_some());
    after.head.next_id = after.head.next_id.saturating_add(added as u16);
    after.people.extend(set.person);
    after.exposures.push(set.exposure);
    let ids: Vec<Id> = set.hands.iter().map(|h| h.id).collect();
    let first = set.hands.first().cloned();
    let entries = set.hands.iter().map(|h| h.entry.vec());
    let middle = entries.sum::<DVec2>() / set.hands.len().max(1) as f64;
    after.hands.extend(set.hands);
    if let Some(first) = first {
        seats::seat(&mut after, &first, middle)?;
    }
    if let [one, other] = ids.as_slice() {
        hold::one_knife(&mut after, *one, *other);
    }
    let taken = hold::taken_for(layout, wish.action, wish.at);
    if let (Some(item), [one]) = (taken, ids.as_slice()) {
        hold::by_the_rim(&mut after, *one, item);
    }
    hold::take(&mut after, &ids, taken);
    Act::between(say("done-hands", &[]), layout, &after)
}

/// The other hand does it; a pair changes sides as a whole.
///
/// # Errors
/// None so far as no hand can be locked.
pub fn flip(layout: &Layout, id: Id) -> Result<Act, Refused> {
    let mut after = layout.clone();
    for hand in after.hands.iter_mut().filter(|o| is_of(o, id)) {
        hand.side = match hand.side {
            Side::Left => Side::Right,
            Side::Right => Side::Left,
        };
    }
    Act::between(say("done-flipped", &[]), layout, &after)
}

/// Shoots a hand and its pair in another exposure; one that no hand is left in
/// goes, those of other kinds stay.
///
/// # Errors
/// None so far as no hand can be locked.
pub fn shoot_in(layout: &Layout, id: Id, exposure: Id) -> Result<Act, Refused> {
    let mut after = layout.clone();
    for hand in after.hands.iter_mut().filter(|o| is_of(o, id)) {
        hand.exposure = exposure;
    }
    let hands = &after.hands;
    let used = |e: &Exposure| hands.iter().any(|hand| hand.exposure == e.id);
    after
        .exposures
        .retain(|e| e.kind != ExposureKind::Hands || used(e));
    Act::between(say("done-exposure", &[]), layout, &after)
}

/// Whether a hand is this one or its pair.
fn is_of(hand: &Hand, id: Id) -> bool {
    hand.id == id || hand.pair == Some(id)
}

/// Hands for the wish, in an exposure of their own; ids run from `next`.
/// Nothing when the item is not there.
fn set(layout: &Layout, wish: &Wish, next: u16) -> Option<Set> {
    let item = layout.items.iter().find(|i| i.id == wish.at)?;
    let mut ids = (next..).map(Id);
    let mut id = || ids.next().unwrap_or_default();
    let person = layout.people.is_empty().then(|| Person {
        id: id(),
        skin: Srgb::hex(0x00c0_8f6f),
        sleeve: Sleeve::default(),
        seat: None,
        stature: None,
        handed: Side::default(),
        ring: None,
        nails: None,
        released: false,
        extra: Extra::new(),
    });
    let whose = person.as_ref().or(layout.people.first())?.id;
    let exposure = Exposure::new(id(), ExposureKind::Hands);
    let centre = item.at.vec();
    let (edge, inward) = nearest_edge(layout, centre);
    // The person's right as they look inward; y runs down.
    let right = DVec2::new(-inward.y, inward.x);
    let [wide, deep] = item.size.extent().map(f64::from);
    let reach = wide.min(deep) * 0.5;
    let lifts = !matches!(wish.action, Action::Pour)
        && hold::taken_for(layout, wish.action, wish.at).is_some();
    let [aside, back] = match (lifts, wish.hands > 1) {
        (false, _) => [WORK, 0.2],
        (true, true) => [RIM, 0.0],
        (true, false) => [0.0, RIM],
    };
    let hand = |side: Side, out: f64, id: Id| Hand {
        id,
        person: whose,
        seat: None,
        side,
        pair: None,
        action: wish.action,
        entry: Point::nearest(edge + right * (out * APART * 0.5)),
        target: Point::nearest(centre + right * (out * reach * aside) - inward * (reach * back)),
        height: above(wish.action),
        palm: Palm::Down,
        holds: None,
        exposure: exposure.id,
        extra: Extra::new(),
    };
    let mut hands = if wish.hands > 1 {
        vec![hand(Side::Left, -1.0, id()), hand(Side::Right, 1.0, id())]
    } else {
        vec![hand(Side::Right, 0.35, id())]
    };
    if let [one, other] = hands.as_mut_slice() {
        one.pair = Some(other.id);
        other.pair = Some(one.id);
    }
    Some(Set {
        person,
        exposure,
        hands,
    })
}

/// The place on the frame's edge straight from the nearest side people can
/// stand at, and the way in from there.
fn nearest_edge(layout: &Layout, at: DVec2) -> (DVec2, DVec2) {
    let centre = layout.frame.at.vec();
    let half = DVec2::new(f64::from(layout.frame.width), layout.frame.height()) * 0.5;
    let (sin, cos) = libm::sincos(layout.frame.turn.radians());
    let turn = DVec2::new(cos, sin);
    let own = DVec2::new(cos, -sin).rotate(at - centre);
    let sides = [
        (
            half.y - own.y,
            DVec2::new(own.x, half.y),
            DVec2::new(0.0, -1.0),
        ),
        (
            half.y + own.y,
            DVec2::new(own.x, -half.y),
            DVec2::new(0.0, 1.0),
        ),
        (
            half.x - own.x,
            DVec2::new(half.x, own.y),
            DVec2::new(-1.0, 0.0),
        ),
        (
            half.x + own.x,
            DVec2::new(-half.x, own.y),
            DVec2::new(1.0, 0.0),
        ),
    ];
    let mut best = sides[0];
    for side in &sides[1..] {
        if side.0 < best.0 {
            best = *side;
        }
    }
    (centre + turn.rotate(best.1), turn.rotate(best.2))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{LayoutId, open};

    fn table() -> Layout {
        let text = Layout::empty(LayoutId(1)).to_json();
        let text = text.replacen("\"next_id\": 1", "\"next_id\": 6", 1);
        let text = text.replacen(
            "\"items\": []",
            r#""items": [{"id":5,"number":1,"name":"pot","prop":"enamel-pot","at":[600,650],
               "size":{"shape":"disc","diameter":260,"rim":8}}]"#,
            1,
        );
        open(&text).expect("a table with a pot near the lower edge")
    }

    #[test]
    fn a_pair_comes_from_the_near_edge_and_knows_each_other() {
        let wish = Wish {
            action: Action::Squeeze,
            hands: 2,
            at: Id(5),
        };
        let set = set(&table(), &wish, 6).expect("set");
        let [left, right] = set.hands.as_slice() else {
            panic!("two hands: {set:?}")
        };
        assert_eq!(
            (left.pair, right.pair),
            (Some(right.id), Some(left.id)),
            "a pair"
        );
        assert_eq!(left.person, right.person, "of one person");
        assert!(
            left.entry.y > 700 && right.entry.y > 700,
            "from below: {set:?}"
        );
        assert!(
            left.entry.x < right.entry.x,
            "left hand on the left seen from below: {set:?}"
        );
        assert!(set.person.is_some(), "the table had no one yet");
    }

    #[test]
    fn no_action_shows_a_thing_in_two_places_from_the_start() {
        let layout = table();
        for action in Action::ALL {
            for hands in [1, 2] {
                let at = Id(5);
                let act = add_hands(&layout, &Wish { action, hands, at }).expect("set");
                let mut after = layout.clone();
                act.edit.apply_checked(&mut after).expect("it fits");
                let held = after.hands.iter().filter(|h| h.holds == Some(at)).count();
                let up = matches!(
                    action,
                    Action::Hold | Action::Lift | Action::Pass | Action::Place
                );
                assert_eq!(held, if up { usize::from(hands) } else { 0 }, "{action:?}");
                let states = &after.exposures[0].states;
                assert_eq!(states.len(), usize::from(up), "{action:?}: {states:?}");
                for state in states {
                    let at = state.at.expect("moved").vec();
                    let off = at.distance(after.items[0].at.vec());
                    assert!(off < 30.0, "{action:?} by {hands}: {off} mm off");
                }
                assert_eq!(layout.items, after.items, "things stay as they are set");
            }
        }
    }

    #[test]
    fn hands_at_nothing_are_not_set() {
        let wish = Wish {
            action: Action::Pour,
            hands: 1,
            at: Id(99),
        };
        assert!(set(&table(), &wish, 6).is_none(), "no such item");
    }
}
