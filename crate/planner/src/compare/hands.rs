//! Hands, who they are and where they sit.
use super::{Said, Sides, Topic, instead, plain};
use crate::commands::name_of;
use crate::edit::{Edit, Object};
use crate::layout::{Action, Hand, Id, Layout, Palm, Person, Seat, Side, Sleeve, SleeveLength};
use crate::scene::{exposure_name, flag, letter};
use crate::words::{Arg, hour, say};

/// A hand by its flag.
fn what(layout: &Layout, hand: &Hand) -> Arg {
    let id = match hand.side {
        Side::Left => "compare-hand-left",
        Side::Right => "compare-hand-right",
    };
    Arg::Text(say(id, &[("flag", Arg::Text(flag(layout, hand)))]))
}

/// Tells what became of the hands; a pair that comes or goes is told once.
pub(super) fn all(sides: &mut Sides<'_>, edit: &Edit) {
    let mut told: Vec<Id> = Vec::new();
    for change in &edit.0 {
        let old = change.before.as_ref().map(|p| &p.object);
        let new = change.after.as_ref().map(|p| &p.object);
        let (hand, [alone, both], layout) = match (old, new) {
            (Some(Object::Hand(old)), Some(Object::Hand(new))) => {
                if old != new {
                    one(sides, old, new);
                }
                continue;
            }
            (None, Some(Object::Hand(hand))) => {
                (hand, ["compare-new", "compare-hands-new"], sides.after)
            }
            (Some(Object::Hand(hand)), None) => {
                (hand, ["compare-gone", "compare-hands-gone"], sides.before)
            }
            _ => continue,
        };
        if told.contains(&hand.id) {
            continue;
        }
        let other = |h: &&Hand| Some(h.id) == hand.pair && h.exposure == hand.exposure;
        let other = layout.hands.iter().find(other).filter(|other| {
            let mut same = edit.0.iter().filter(|c| c.key.id() == Some(other.id));
            same.any(|c| {
                c.before.is_some() == change.before.is_some()
                    && c.after.is_some() == change.after.is_some()
            })
        });
        let mut objects = vec![hand.id];
        objects.extend(other.map(|other| other.id));
        if other.is_some() {
            let flag = [("flag", Arg::Text(flag(layout, hand)))];
            sides.tell(Topic::Hand, &objects, both, &flag);
        } else {
            let what = [("what", what(layout, hand))];
            sides.tell(Topic::Hand, &objects, alone, &what);
        }
        told.extend(objects);
    }
}

fn one(sides: &mut Sides<'_>, old: &Hand, new: &Hand) {
    let what = what(sides.after, new);
    let start = sides.told.len();
    for (id, from, to) in [
        ("compare-tips", old.target, new.target),
        ("compare-entry", old.entry, new.entry),
    ] {
        if from != to {
            let told = sides.moved(id, &what, [from, to]);
            sides.put(Topic::Hand, &[new.id], told, Some([from, to]));
        }
    }
    let mut told: Vec<Said<'_>> = Vec::new();
    if old.person != new.person {
        let before = letter(sides.before, old.person);
        let after = letter(sides.after, new.person);
        told.push(instead(
            "compare-person-hand",
            [before, after].map(|l| Arg::Text(l.into())),
        ));
    }
    if old.exposure != new.exposure {
        let before = exposure_name(sides.before, old.exposure);
        let after = exposure_name(sides.after, new.exposure);
        told.push(instead("compare-shot-in", [before, after].map(Arg::Text)));
    }
    if old.seat != new.seat {
        told.push(plain("compare-hand-seat"));
    }
    if old.action != new.action {
        let [before, after] = [old.action, new.action].map(|a| Arg::Text(say(doing(a), &[])));
        told.push(instead("compare-instead", [before, after]));
    }
    if old.side != new.side {
        told.push(plain("compare-side"));
    }
    if old.palm != new.palm {
        let id = match new.palm {
            Palm::Up => "compare-palm-up",
            Palm::Down => "compare-palm-down",
        };
        told.push((id, Vec::new()));
    }
    if old.height != new.height {
        told.push(instead(
            "compare-above",
            sides.lengths(old.height, new.height),
        ));
    }
    if old.holds != new.holds {
        told.push(match new.holds {
            None => plain("compare-empty"),
            Some(id) => {
                let thing = Arg::Name(name_of(sides.after, id));
                ("compare-holds", vec![("thing", thing)])
            }
        });
    }
    sides.tell_all(Topic::Hand, &[new.id], start, &what, told);
}

/// The sentence that names what a hand does.
pub const fn doing(action: Action) -> &'static str {
    match action {
        Action::Tear => "compare-action-tear",
        Action::Squeeze => "compare-action-squeeze",
        Action::Pour => "compare-action-pour",
        Action::Sprinkle => "compare-action-sprinkle",
        Action::Spoon => "compare-action-spoon",
        Action::Hold => "compare-action-hold",
        Action::Reach => "compare-action-reach",
        Action::Rest => "compare-action-rest",
        Action::Cut => "compare-action-cut",
        Action::Pass => "compare-action-pass",
        Action::Place => "compare-action-place",
        Action::Lift => "compare-action-lift",
    }
}

/// Tells what became of a person.
pub(super) fn person(sides: &mut Sides<'_>, old: Option<&Object>, new: Option<&Object>) {
    let called = |layout: &Layout, id: Id| {
        let letter = ("letter", Arg::Text(letter(layout, id).into()));
        Arg::Text(say("compare-person", &[letter]))
    };
    let (id, person, what) = match (old, new) {
        (Some(Object::Person(old)), Some(Object::Person(new))) => {
            let what = called(sides.after, new.id);
            let told = differs(old, new);
            let start = sides.told.len();
            let told = told.into_iter().map(plain).collect();
            sides.tell_all(Topic::People, &[new.id], start, &what, told);
            return;
        }
        (Some(Object::Person(old)), _) => ("compare-gone", old.id, called(sides.before, old.id)),
        (_, Some(Object::Person(new))) => ("compare-new", new.id, called(sides.after, new.id)),
        _ => return,
    };
    sides.tell(Topic::People, &[person], id, &[("what", what)]);
}

fn differs(old: &Person, new: &Person) -> Vec<&'static str> {
    let released = if new.released {
        "compare-released"
    } else {
        "compare-unreleased"
    };
    let rolled = Sleeve {
        length: SleeveLength::Rolled,
        ..old.sleeve
    };
    let sleeve = match new.sleeve == rolled {
        true => "compare-sleeve-rolled",
        false => "compare-sleeve",
    };
    let all = [
        (old.skin != new.skin, "compare-skin"),
        (old.sleeve != new.sleeve, sleeve),
        (old.ring != new.ring, "compare-ring"),
        (old.nails != new.nails, "compare-nails"),
        (old.handed != new.handed, "compare-handed"),
        (old.stature != new.stature, "compare-stature"),
        (old.seat != new.seat, "compare-person-seat"),
        (old.released != new.released, released),
    ];
    let told = all.into_iter().filter(|(differs, _)| *differs);
    told.map(|(_, id)| id).collect()
}

/// Tells what became of a seat.
pub(super) fn seat(sides: &mut Sides<'_>, old: Option<&Object>, new: Option<&Object>) {
    let called = |layout: &Layout, seat: &Seat| {
        let clock = ("clock", Arg::Text(hour(seat.at.vec(), &layout.frame)));
        Arg::Text(say("compare-seat", &[clock]))
    };
    let (id, seat, what) = match (old, new) {
        (Some(Object::Seat(old)), Some(Object::Seat(new))) => {
            let what = called(sides.after, new);
            let start = sides.told.len();
            if old.at != new.at {
                let path = [old.at, new.at];
                let told = sides.moved("compare-moved", &what, path);
                sides.put(Topic::People, &[new.id], told, Some(path));
            }
            let mut told = Vec::new();
            if old.standing != new.standing {
                let id = if new.standing {
                    "compare-standing"
                } else {
                    "compare-sitting"
                };
                told.push((id, Vec::new()));
            }
            if old.setting != new.setting {
                told.push(plain("compare-setting"));
            }
            sides.tell_all(Topic::People, &[new.id], start, &what, told);
            return;
        }
        (Some(Object::Seat(old)), _) => ("compare-gone", old, called(sides.before, old)),
        (_, Some(Object::Seat(new))) => ("compare-new", new, called(sides.after, new)),
        _ => return,
    };
    sides.tell(Topic::People, &[seat.id], id, &[("what", what)]);
}
