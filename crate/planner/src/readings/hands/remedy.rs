//! What brings an arm right: another hand, another place at the table, another
//! exposure.
use super::super::finding::Remedy;
use super::super::remedies::Try;
use super::super::rules::{Rule, Unit};
use super::super::study::Study;
use super::body::{self, Judge};
use super::letter;
use crate::edit::Edit;
use crate::layout::{
    Exposure, ExposureKind, Hand, Id, Layout, MAX_EXPOSURES, MAX_ID, Palm, Point, Seat, Side,
};
use crate::scene::{joints, seat_of};
use crate::seats::stand_at;
use crate::words::{Arg, fixed, length, say};

/// How far along the edge a place is moved, mm, and in what steps. Our choice.
const STEP: i32 = 50;
const STEPS: i32 = 14;

/// A remedy whose figure is told before and after.
fn told(study: &Study<'_>, attempt: Try, rule: &Rule, before: f64, after: f64) -> Remedy {
    let units = study.layout().head.units;
    let figure = |x: f64| match rule.unit {
        Unit::Mm => length(x, units),
        _ => say("degrees-of", &[("figure", Arg::Text(fixed(x, 0)))]),
    };
    attempt.remedy(study, after, ("predicted", [before, after].map(figure)))
}

/// The first change after which nothing is wrong with how the hand reaches.
pub(super) fn of_body(study: &Study<'_>, hand: &Hand, rule: &Rule, judge: Judge) -> Option<Remedy> {
    let layout = study.layout();
    let before = body::figure(layout, hand.id, judge)?;
    let tries = other_hand(study, hand).into_iter();
    let tries = tries
        .chain(moved_aside(study, hand))
        .chain(stood(study, hand));
    let sound = |t: &Try| body::sound(&t.after, hand.id) && no_worse(layout, &t.after);
    let attempt = tries.into_iter().find(sound)?;
    // What is short of nothing is told as nothing.
    let after = body::figure(&attempt.after, hand.id, judge)?.max(0.0);
    Some(told(study, attempt, rule, before, after))
}

/// Whether no other hand that reached well before reaches badly now.
pub(in super::super) fn no_worse(before: &Layout, after: &Layout) -> bool {
    let seated = before.hands.iter().filter(|h| joints(before, h).is_some());
    let mut well = seated.filter(|h| body::sound(before, h.id));
    well.all(|h| body::sound(after, h.id))
}

/// The place moved along the edge until the figure clears the rule.
pub(super) fn elsewhere(
    study: &Study<'_>,
    hand: &Hand,
    before: f64,
    rule: &Rule,
    figure: &dyn Fn(&Study<'_>, Id) -> Option<f64>,
) -> Option<Remedy> {
    for attempt in moved_aside(study, hand) {
        if !no_worse(study.layout(), &attempt.after) {
            continue;
        }
        let after = figure(&Study::new(&attempt.after), hand.id)?;
        if after >= rule.edges[0] {
            return Some(told(study, attempt, rule, before, after));
        }
    }
    None
}

/// The person's other hand, when they are not using it in this exposure.
fn other_hand(study: &Study<'_>, hand: &Hand) -> Option<Try> {
    let layout = study.layout();
    let side = match hand.side {
        Side::Left => Side::Right,
        Side::Right => Side::Left,
    };
    let taken = |h: &Hand| h.person == hand.person && h.exposure == hand.exposure && h.side == side;
    if layout.hands.iter().any(taken) {
        return None;
    }
    let mut after = layout.clone();
    let own = after.hands.iter_mut().find(|h| h.id == hand.id)?;
    own.side = side;
    let id = match side {
        Side::Left => "act-hand-left",
        Side::Right => "act-hand-right",
    };
    let act = say(id, &[("flag", Arg::Text(study.name(hand.id)))]);
    Some(Try { act, after })
}

/// The seat of a hand changed by `change`.
fn with_seat(layout: &Layout, hand: &Hand, change: impl FnOnce(&mut Seat)) -> Option<Layout> {
    let id = seat_of(layout, hand)?.id;
    let mut after = layout.clone();
    change(after.seats.iter_mut().find(|s| s.id == id)?);
    Some(after)
}

/// The person's place moved along its edge, the nearest first.
pub(in super::super) fn moved_aside<'a>(
    study: &'a Study<'_>,
    hand: &'a Hand,
) -> impl Iterator<Item = Try> + 'a {
    let layout = study.layout();
    let steps = (1..=STEPS).flat_map(|n| [n * STEP, -n * STEP]);
    steps.filter_map(move |by| {
        let seat = seat_of(layout, hand)?;
        let stand = stand_at(&layout.table, seat.at.vec());
        let aside = stand.at + stand.inward.perp() * f64::from(by);
        let there = stand_at(&layout.table, aside);
        let after = with_seat(layout, hand, |s| s.at = Point::nearest(there.at))?;
        let way = match by > 0 {
            true => "act-seat-right",
            false => "act-seat-left",
        };
        let args = [
            ("person", Arg::Text(letter(layout, hand.person))),
            (
                "by",
                Arg::Text(length(f64::from(by.abs()), layout.head.units)),
            ),
        ];
        Some(Try {
            act: say(way, &args),
            after,
        })
    })
}

/// The person on their feet, or sitting down.
fn stood(study: &Study<'_>, hand: &Hand) -> Option<Try> {
    let layout = study.layout();
    let standing = seat_of(layout, hand)?.standing;
    let after = with_seat(layout, hand, |s| s.standing = !standing)?;
    let id = if standing { "act-sit" } else { "act-stand" };
    let person = Arg::Text(letter(layout, hand.person));
    Some(Try {
        act: say(id, &[("person", person)]),
        after,
    })
}

/// Two crossed arms: what each does done by the other, or one of them shot in
/// an exposure of its own.
pub(super) fn uncrossed(
    study: &Study<'_>,
    a: &Hand,
    b: &Hand,
    figure: &dyn Fn(&Layout) -> Option<f64>,
) -> Option<Remedy> {
    let layout = study.layout();
    let mut swapped = layout.clone();
    for hand in &mut swapped.hands {
        let other = if hand.id == a.id { b } else { a };
        if hand.id == a.id || hand.id == b.id {
            (hand.target, hand.height) = (other.target, other.height);
            (hand.action, hand.holds) = (other.action, other.holds);
        }
    }
    let flags = [
        ("hand", Arg::Text(study.name(a.id))),
        ("other", Arg::Text(study.name(b.id))),
    ];
    let swap = Try {
        act: say("act-hands-swap", &flags),
        after: swapped,
    };
    let tries = [Some(swap), parted(study, &[b.id])];
    let tries = tries.into_iter().flatten().collect();
    first_to_cure(layout, tries, "predicted-uncrossed", figure)
}

/// The first change that cures by the figure it leads to, with everybody
/// reaching as well as before.
fn first_to_cure(
    layout: &Layout,
    tries: Vec<Try>,
    then: &str,
    figure: &dyn Fn(&Layout) -> Option<f64>,
) -> Option<Remedy> {
    tries.into_iter().find_map(|attempt| {
        let after = figure(&attempt.after).filter(|_| no_worse(layout, &attempt.after))?;
        Some(Remedy {
            act: attempt.act,
            predicted: say(then, &[]),
            after,
            edit: Edit::between(layout, &attempt.after),
        })
    })
}

/// A pair that holds a thing with its thumbs towards each other: left and right
/// changed, or both palms turned over.
pub(super) fn thumbs(
    study: &Study<'_>,
    a: &Hand,
    b: &Hand,
    figure: &dyn Fn(&Layout) -> Option<f64>,
) -> Option<Remedy> {
    let layout = study.layout();
    let change = |id: &str, change: fn(&mut Hand)| {
        let mut after = layout.clone();
        let own = |h: &&mut Hand| h.id == a.id || h.id == b.id;
        after.hands.iter_mut().filter(own).for_each(change);
        let act = say(id, &[("flag", Arg::Text(study.name(a.id)))]);
        Try { act, after }
    };
    let tries = [
        change("act-palms", |h| {
            h.palm = match h.palm {
                Palm::Down => Palm::Up,
                Palm::Up => Palm::Down,
            }
        }),
        change("act-hands-sides", |h| {
            h.side = match h.side {
                Side::Left => Side::Right,
                Side::Right => Side::Left,
            }
        }),
    ];
    first_to_cure(layout, tries.into(), "predicted-thumbs", figure)
}

/// All hands from a place given to the person who plays it first.
pub(super) fn one_sitter(
    study: &Study<'_>,
    hands: &[Id],
    person: Id,
    figure: &dyn Fn(&Layout) -> Option<f64>,
) -> Option<Remedy> {
    let layout = study.layout();
    let mut after = layout.clone();
    for hand in after.hands.iter_mut().filter(|h| hands.contains(&h.id)) {
        let seat = seat_of(layout, hand).map(|s| s.id);
        hand.person = person;
        hand.seat = seat;
    }
    let figure = figure(&after).filter(|_| no_worse(layout, &after))?;
    let person = Arg::Text(letter(layout, person));
    Some(Remedy {
        act: say("act-one-sitter", &[("person", person)]),
        predicted: say("predicted-one-sitter", &[]),
        after: figure,
        edit: Edit::between(layout, &after),
    })
}

/// Hands, with what pairs with them, in an exposure of their own.
fn parted(study: &Study<'_>, hands: &[Id]) -> Option<Try> {
    let mut after = study.layout().clone();
    if after.exposures.len() >= MAX_EXPOSURES || after.head.next_id > MAX_ID {
        return None;
    }
    let own = Id(after.head.next_id);
    after.head.next_id += 1;
    after
        .exposures
        .push(Exposure::new(own, ExposureKind::Hands));
    for hand in after.hands.iter_mut().filter(|h| hands.contains(&h.id)) {
        hand.exposure = own;
    }
    let number = crate::scene::exposure_number(&after, own)?;
    let act = say(
        "act-own-exposure",
        &[("number", Arg::Text(number.to_string()))],
    );
    Some(Try { act, after })
}

/// Hands that cannot be shot together in an exposure of their own.
pub(super) fn own_exposure(
    study: &Study<'_>,
    hands: &[Id],
    figure: &dyn Fn(&Layout) -> f64,
) -> Option<Remedy> {
    let attempt = parted(study, hands)?;
    let after = figure(&attempt.after);
    (after == 0.0).then(|| Remedy {
        act: attempt.act,
        predicted: say("predicted-parted", &[]),
        after,
        edit: Edit::between(study.layout(), &attempt.after),
    })
}

/// The ring taken off.
pub(super) fn ring_off(study: &Study<'_>, person: Id) -> Option<Remedy> {
    let mut after = study.layout().clone();
    after.people.iter_mut().find(|p| p.id == person)?.ring = None;
    let person = Arg::Text(letter(study.layout(), person));
    Some(Remedy {
        act: say("act-ring-off", &[("person", person)]),
        predicted: say("predicted-no-ring", &[]),
        after: 0.0,
        edit: Edit::between(study.layout(), &after),
    })
}
