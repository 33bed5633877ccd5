//! What hands hold, and how that is in the exposure they are shot in: a thing
//! in the hand does not stand in its place.
use glam::DVec2;

use super::{Act, Refused, called, name_of};
use crate::layout::{Action, As, Extra, Hand, Id, Item, Layout, Point, State};
use crate::scene::{arm, held_at, root};
use crate::words::say;

/// Vessels that are poured from.
const POUR: [&str; 12] = [
    "oil-carafe",
    "bottle",
    "decanter",
    "vinegar-bottle",
    "milk-bottle",
    "jug",
    "glass-pitcher",
    "milk-jug",
    "creamer",
    "teapot",
    "coffee-pot",
    "sauce-boat",
];

/// What a hand takes up for an action at a thing: the dish it is done at, or
/// the vessel nearest to it that pours; nothing where it works on what stays
/// in its place, or brings what it works with.
pub(super) fn taken_for(layout: &Layout, action: Action, at: Id) -> Option<Id> {
    match action {
        Action::Hold | Action::Lift | Action::Pass | Action::Place => Some(root(layout, at)),
        Action::Pour => {
            let target = layout.items.iter().find(|i| i.id == at)?;
            let own = target.at.vec();
            let vessels = layout.items.iter().filter(|i| pours(i));
            let away = |a: DVec2| a.distance(own);
            let nearest = vessels.min_by(|a, b| away(a.at.vec()).total_cmp(&away(b.at.vec())));
            nearest.map(|i| i.id)
        }
        Action::Tear
        | Action::Squeeze
        | Action::Sprinkle
        | Action::Spoon
        | Action::Reach
        | Action::Rest
        | Action::Cut => None,
    }
}

fn pours(item: &Item) -> bool {
    POUR.contains(&item.prop.as_str())
}

/// Rounds in which one hand finds the rim of a dish in its place: which way
/// the hand points follows from where it is.
const ROUNDS: usize = 6;

/// Puts the fingertips of one hand where it holds a dish that is in its place.
pub(super) fn by_the_rim(layout: &mut Layout, id: Id, item: Id) {
    for _ in 0..ROUNDS {
        let Some(mut hand) = layout.hands.iter().find(|h| h.id == id).cloned() else {
            return;
        };
        hand.holds = Some(item);
        let Some((item, at)) = held_at(layout, &hand, &arm(layout, &hand)) else {
            return;
        };
        // A vessel that pours is held where it is poured over.
        if hand.action == Action::Pour {
            return;
        }
        let to = hand.target.vec() + item.at.vec() - at;
        for own in layout.hands.iter_mut().filter(|h| h.id == id) {
            own.target = Point::nearest(to);
        }
    }
}

/// Has these hands hold a thing, or nothing, and tells their exposure so.
pub(super) fn take(layout: &mut Layout, hands: &[Id], item: Option<Id>) {
    let mut told: Vec<(Id, Id)> = Vec::new();
    for hand in layout.hands.iter_mut().filter(|h| hands.contains(&h.id)) {
        let before = core::mem::replace(&mut hand.holds, item);
        told.extend(before.map(|id| (hand.exposure, id)));
    }
    for (exposure, item) in told {
        let held = |h: &Hand| h.exposure == exposure && h.holds == Some(item);
        let still = layout.hands.iter().any(held);
        let own = layout.exposures.iter_mut().find(|e| e.id == exposure);
        if let Some(own) = own.filter(|_| !still) {
            own.states
                .retain(|s| s.item != item || !matches!(s.is, As::Absent | As::Moved));
        }
    }
    for id in hands {
        follow(layout, *id);
    }
}

/// What a hand holds goes where the hand is: a vessel that pours is gone from
/// its place, a dish is moved. What is told to be absent or changed stays so.
pub(super) fn follow(layout: &mut Layout, hand: Id) {
    let Some(hand) = layout.hands.iter().find(|h| h.id == hand) else {
        return;
    };
    let Some((item, to)) = held_at(layout, hand, &arm(layout, hand)) else {
        return;
    };
    let (item, exposure) = (item.id, hand.exposure);
    let to = (hand.action != Action::Pour).then(|| Point::nearest(to));
    let Some(own) = layout.exposures.iter_mut().find(|e| e.id == exposure) else {
        return;
    };
    let told = own.states.iter_mut().find(|s| s.item == item);
    match (told, to) {
        (Some(told), Some(to)) if told.is == As::Moved => told.at = Some(to),
        (Some(told), _) if told.is != As::Set => {}
        (told, to) => {
            let state = State {
                item,
                is: if to.is_some() { As::Moved } else { As::Absent },
                at: to,
                turn: None,
                parts: None,
                extra: Extra::new(),
            };
            match told {
                Some(told) => *told = state,
                None => own.states.push(state),
            }
        }
    }
}

/// A hand, and the other of its pair.
pub(super) fn both(layout: &Layout, id: Id) -> Result<Vec<Id>, Refused> {
    let hand = layout.hands.iter().find(|h| h.id == id);
    let hand = hand.ok_or_else(|| Refused::Unknown(id.0.to_string()))?;
    Ok([Some(id), hand.pair].into_iter().flatten().collect())
}

/// Has a hand and its pair hold a thing, or nothing.
///
/// # Errors
/// When there is no such hand or thing.
pub fn hold(layout: &Layout, id: Id, item: Option<Id>) -> Result<Act, Refused> {
    let hands = both(layout, id)?;
    let known = |item: &Id| layout.items.iter().any(|i| i.id == *item);
    if let Some(item) = item.filter(|item| !known(item)) {
        return Err(Refused::Unknown(item.0.to_string()));
    }
    let mut after = layout.clone();
    take(&mut after, &hands, item);
    let name = match item {
        Some(item) => called("done-held", &name_of(layout, item)),
        None => say("done-empty-hand", &[]),
    };
    Act::between(name, layout, &after)
}

/// Has a hand and its pair do something else; whose they are, where they come
/// from and where their fingertips are stays.
///
/// # Errors
/// When there is no such hand.
pub fn do_else(layout: &Layout, id: Id, action: Action) -> Result<Act, Refused> {
    let hands = both(layout, id)?;
    let mut after = layout.clone();
    for hand in after.hands.iter_mut().filter(|h| hands.contains(&h.id)) {
        hand.action = action;
    }
    if let [one, other] = hands.as_slice() {
        one_knife(&mut after, *one, *other);
    }
    // What it had in hand it keeps as long as that is of use.
    let hand = layout.hands.iter().find(|h| h.id == id);
    let held = layout
        .items
        .iter()
        .find(|i| hand.is_some_and(|h| h.holds == Some(i.id)));
    let of_use = held.filter(|i| action != Action::Pour || pours(i));
    let under = worked_at(layout, id);
    let found = under.and_then(|at| taken_for(layout, action, at));
    let kept = of_use.map(|i| i.id);
    take(&mut after, &hands, None);
    take(&mut after, &hands, found.and(kept).or(found));
    Act::between(say("done-action", &[]), layout, &after)
}

/// Of two hands that cut the one that writes has the knife, and the other
/// holds what is cut.
pub(super) fn one_knife(layout: &mut Layout, one: Id, other: Id) {
    let Some(hand) = layout.hands.iter().find(|h| h.id == one) else {
        return;
    };
    if hand.action != Action::Cut {
        return;
    }
    let person = layout.people.iter().find(|p| p.id == hand.person);
    let writes = person.map(|p| p.handed).unwrap_or_default();
    let own = |h: &&mut Hand| h.id == one || h.id == other;
    for hand in layout.hands.iter_mut().filter(own) {
        if hand.side != writes {
            hand.action = Action::Hold;
        }
    }
}

/// What a hand works at: the thing nearest to its fingertips that stands on
/// the table.
fn worked_at(layout: &Layout, id: Id) -> Option<Id> {
    let hand = layout.hands.iter().find(|h| h.id == id)?;
    let away = |at: Point| at.vec().distance(hand.target.vec());
    let standing = layout.items.iter().filter(|i| i.on.is_none());
    let nearest = standing.min_by(|a, b| away(a.at).total_cmp(&away(b.at)));
    nearest.map(|i| i.id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::open;

    fn laid() -> Layout {
        open(
            r#"{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":20,
            "table":{"width":1600,"depth":900},"frame":{"at":[800,450],"width":1300},
            "items":[{"id":1,"prop":"platter","at":[800,600],"size":{"shape":"disc","diameter":300}},
              {"id":2,"prop":"mussels","on":1,"at":[800,600],"size":{"shape":"disc","diameter":200}},
              {"id":3,"prop":"oil-carafe","at":[1100,500],"size":{"shape":"disc","diameter":80}},
              {"id":4,"prop":"jug","at":[300,200],"size":{"shape":"disc","diameter":100}}],
            "seats":[{"id":5,"at":[800,900]}],"people":[{"id":6,"seat":5}],"exposures":[{"id":7}],
            "hands":[{"id":8,"person":6,"exposure":7,"side":"left","pair":9,"entry":[700,880],"target":[660,600]},
              {"id":9,"person":6,"exposure":7,"pair":8,"entry":[900,880],"target":[940,600]}]}"#,
        )
        .expect("a sound layout")
    }

    fn made(layout: &Layout, act: &Act) -> Layout {
        let mut after = layout.clone();
        act.edit.apply_checked(&mut after).expect("it fits");
        after
    }

    #[test]
    fn what_two_hands_lift_goes_with_them_and_comes_back() {
        let lifted = made(
            &laid(),
            &do_else(&laid(), Id(8), Action::Lift).expect("done"),
        );
        assert!(lifted.hands.iter().all(|h| h.holds == Some(Id(1))), "both");
        assert!(lifted.hands.iter().all(|h| h.action == Action::Lift));
        let [state] = lifted.exposures[0].states.as_slice() else {
            panic!("{:?}", lifted.exposures[0])
        };
        assert_eq!((state.item, state.is), (Id(1), As::Moved));
        assert_eq!(state.at, Some(Point::new(800, 600)), "between the hands");
        let moved = super::super::move_by(&lifted, Id(8), false, [0, -100]).expect("moved");
        let moved = made(&lifted, &moved);
        let at = moved.exposures[0].states[0].at;
        assert_eq!(at, Some(Point::new(800, 550)), "goes along");
        let rests = made(
            &lifted,
            &do_else(&lifted, Id(9), Action::Rest).expect("done"),
        );
        assert!(rests.hands.iter().all(|h| h.holds.is_none()), "set down");
        assert!(rests.exposures[0].states.is_empty(), "as it is set");
    }

    #[test]
    fn pouring_takes_the_nearest_vessel_out_of_its_place() {
        let pours = made(
            &laid(),
            &do_else(&laid(), Id(9), Action::Pour).expect("done"),
        );
        assert_eq!(pours.hands[1].holds, Some(Id(3)), "the carafe is nearest");
        let state = &pours.exposures[0].states[0];
        assert_eq!((state.item, state.is, state.at), (Id(3), As::Absent, None));
        let jug = made(&pours, &hold(&pours, Id(9), Some(Id(4))).expect("done"));
        let told = &jug.exposures[0].states;
        assert_eq!(told.len(), 1, "the carafe is back: {told:?}");
        assert_eq!(told[0].item, Id(4));
        let lifts = made(&jug, &do_else(&jug, Id(9), Action::Lift).expect("done"));
        assert_eq!(lifts.hands[1].holds, Some(Id(4)), "still the jug");
        assert_eq!(lifts.exposures[0].states[0].is, As::Moved);
        assert!(hold(&laid(), Id(9), Some(Id(77))).is_err(), "no such thing");
        assert!(
            do_else(&laid(), Id(77), Action::Cut).is_err(),
            "no such hand"
        );
    }

    #[test]
    fn of_two_hands_that_cut_the_writing_one_has_the_knife() {
        let mut layout = laid();
        for (handed, knife) in [
            (crate::layout::Side::Right, 1),
            (crate::layout::Side::Left, 0),
        ] {
            layout.people[0].handed = handed;
            let cut = made(
                &layout,
                &do_else(&layout, Id(8), Action::Cut).expect("done"),
            );
            assert_eq!(cut.hands[knife].action, Action::Cut);
            assert_eq!(cut.hands[1 - knife].action, Action::Hold);
            assert!(cut.hands.iter().all(|h| h.holds.is_none()), "it stays");
        }
    }
}
