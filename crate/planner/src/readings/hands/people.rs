//! One person: in one place at a time, with one left and one right hand, and
//! recognised by a ring.
use super::super::finding::{Finding, State};
use super::super::rules::{HANDS_RING, HANDS_SITTER, HANDS_TWICE};
use super::super::study::Study;
use super::{letter, remedy};
use crate::layout::{Exposure, Hand, Id, Layout, Person};
use crate::scene::{exposure_number, seat_of};
use crate::words::{Arg, listed, say};

pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let layout = study.layout();
    let mut out = Vec::new();
    for person in &layout.people {
        for exposure in &layout.exposures {
            out.extend(twice(study, person, exposure, settled));
        }
        out.extend(ring(study, person, settled));
    }
    for seat in &layout.seats {
        out.extend(sitter(study, seat.id, settled));
    }
    out
}

/// Hands of a person in an exposure that cannot be shot together: from another
/// place than the first, or a second one of the same side.
fn too_many(layout: &Layout, person: Id, exposure: Id) -> Vec<&Hand> {
    let own = |h: &&Hand| h.person == person && h.exposure == exposure;
    let hands: Vec<&Hand> = layout.hands.iter().filter(own).collect();
    let Some(first) = hands.first() else {
        return Vec::new();
    };
    let place = |h: &Hand| seat_of(layout, h).map(|s| s.id);
    let spare = |(n, h): &(usize, &&Hand)| {
        let same_side = hands[..*n].iter().any(|o| o.side == h.side);
        same_side || place(h) != place(first)
    };
    let all = hands.iter().enumerate().filter(spare);
    all.map(|(_, h)| *h).collect()
}

fn twice(
    study: &Study<'_>,
    person: &Person,
    exposure: &Exposure,
    settled: bool,
) -> Option<Finding> {
    let layout = study.layout();
    let spare = too_many(layout, person.id, exposure.id);
    spare.first()?;
    let figure = spare.len() as f64;
    let about: Vec<Id> = spare.iter().map(|h| h.id).collect();
    let key = format!("hands:{}:{}:twice", person.id.0, exposure.id.0);
    let mut f = Finding::by(
        &HANDS_TWICE,
        key,
        (State::WontWork, 1),
        figure,
        about.clone(),
    );
    f.sentence = study.sentence(|| {
        let number = exposure_number(layout, exposure.id).unwrap_or(0);
        let args = [
            ("person", Arg::Text(letter(layout, person.id))),
            ("number", Arg::Text(number.to_string())),
        ];
        let own = |h: &&Hand| h.person == person.id && h.exposure == exposure.id;
        let mut places = layout.hands.iter().filter(own).map(|h| seat_of(layout, h));
        let first = places.next();
        let id = if places.all(|place| Some(place) == first) {
            "hands-twice-side"
        } else {
            "hands-twice-place"
        };
        say(id, &args)
    });
    f.working = study.tell(|| vec![say("working-hands-twice", &[])]);
    if settled {
        f.remedy = remedy::own_exposure(study, &about, &|then| {
            too_many(then, person.id, exposure.id).len() as f64
        });
    }
    Some(f)
}

/// The places at the table a person's ringed hand is seen from.
fn ringed(layout: &Layout, person: &Person) -> usize {
    let Some(side) = person.ring else {
        return 0;
    };
    let mut seats: Vec<Id> = layout
        .hands
        .iter()
        .filter(|h| h.person == person.id && h.side == side)
        .filter_map(|h| seat_of(layout, h).map(|s| s.id))
        .collect();
    crate::order::sort(&mut seats, Id::cmp);
    seats.dedup();
    seats.len()
}

/// The hands that come from a place, and the people they are of, in the order
/// of the hands.
fn from_place(layout: &Layout, seat: Id) -> (Vec<&Hand>, Vec<&Person>) {
    let own = |h: &&Hand| seat_of(layout, h).is_some_and(|s| s.id == seat);
    let hands: Vec<&Hand> = layout.hands.iter().filter(own).collect();
    let mut people: Vec<&Person> = Vec::new();
    for hand in &hands {
        let person = layout.people.iter().find(|p| p.id == hand.person);
        people.extend(person.filter(|p| people.iter().all(|o| o.id != p.id)));
    }
    (hands, people)
}

/// Whether two people look like one to those who see their hands.
fn alike(a: &Person, b: &Person) -> bool {
    (a.skin, a.sleeve, a.ring, a.nails) == (b.skin, b.sleeve, b.ring, b.nails)
}

/// How many people play a sitter and do not look alike.
fn playing(layout: &Layout, seat: Id) -> usize {
    let (_, people) = from_place(layout, seat);
    let differ = people.iter().any(|p| !alike(p, people[0]));
    if differ { people.len() } else { 0 }
}

/// One sitter played by people whose hands do not look like one person's.
fn sitter(study: &Study<'_>, seat: Id, settled: bool) -> Option<Finding> {
    let layout = study.layout();
    let count = playing(layout, seat) as f64;
    if count < HANDS_SITTER.edges[0] {
        return None;
    }
    let (hands, people) = from_place(layout, seat);
    let about: Vec<Id> = hands.iter().map(|h| h.id).collect();
    let key = format!("hands:{}:sitter", seat.0);
    let state = (State::LookAgain, 2);
    let mut f = Finding::by(&HANDS_SITTER, key, state, count, about.clone());
    f.sentence = study.sentence(|| {
        let letters: Vec<String> = people.iter().map(|p| letter(layout, p.id)).collect();
        say("hands-sitter", &[("people", Arg::Text(listed(&letters)))])
    });
    f.working = study.tell(|| vec![say("working-hands-sitter", &[])]);
    if settled {
        let first = people.first()?.id;
        f.remedy = remedy::one_sitter(study, &about, first, &|then| {
            let twice = |e: &Exposure| !too_many(then, first, e.id).is_empty();
            let left = playing(then, seat) as f64;
            (left == 0.0 && !then.exposures.iter().any(twice)).then_some(left)
        });
    }
    Some(f)
}

/// Someone who plays several sitters with the same ring on.
fn ring(study: &Study<'_>, person: &Person, settled: bool) -> Option<Finding> {
    let count = ringed(study.layout(), person);
    if (count as f64) < HANDS_RING.edges[0] {
        return None;
    }
    let key = format!("hands:{}:ring", person.id.0);
    let own = |h: &&Hand| h.person == person.id && Some(h.side) == person.ring;
    let about = study.layout().hands.iter().filter(own).map(|h| h.id);
    let state = (State::LookAgain, 3);
    let mut f = Finding::by(&HANDS_RING, key, state, count as f64, about.collect());
    f.sentence = study.sentence(|| {
        let args = [
            ("person", Arg::Text(letter(study.layout(), person.id))),
            ("count", Arg::Text(count.to_string())),
        ];
        say("hands-ring", &args)
    });
    f.working = study.tell(|| vec![say("working-hands-ring", &[])]);
    if settled {
        f.remedy = remedy::ring_off(study, person.id);
    }
    Some(f)
}
