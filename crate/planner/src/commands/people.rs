//! Whose a hand is.
use super::hold::both;
use super::{Act, Refused, fresh_id};
use crate::layout::{Id, Layout, MAX_ID, MAX_PEOPLE, Person};
use crate::scene::seat_of;
use crate::words::say;

/// Gives a hand and its pair to another person, or to a new one who looks as
/// their own does; it goes on coming from where it comes from.
///
/// # Errors
/// When there is no such hand or person, or no room for another.
pub fn give_hand(layout: &Layout, id: Id, person: Option<Id>) -> Result<Act, Refused> {
    let hands = both(layout, id)?;
    let unknown = |id: Id| Refused::Unknown(id.0.to_string());
    let mut after = layout.clone();
    let own = |p: &&Person| layout.hands.iter().any(|h| h.id == id && h.person == p.id);
    let seat = layout.hands.iter().find(|h| h.id == id);
    let seat = seat.and_then(|h| seat_of(layout, h)).map(|s| s.id);
    let person = match person {
        Some(person) if layout.people.iter().any(|p| p.id == person) => person,
        Some(person) => return Err(unknown(person)),
        None if after.people.len() >= MAX_PEOPLE || after.head.next_id > MAX_ID => {
            return Err(Refused::NoRoom);
        }
        None => {
            let old = layout.people.iter().find(own).ok_or_else(|| unknown(id))?;
            let new = Person {
                id: fresh_id(&mut after),
                seat: None,
                released: false,
                ..old.clone()
            };
            let new_id = new.id;
            after.people.push(new);
            new_id
        }
    };
    let theirs = after.people.iter_mut().find(|p| p.id == person);
    let theirs = theirs.and_then(|p| {
        p.seat = p.seat.or(seat);
        p.seat
    });
    for hand in after.hands.iter_mut().filter(|h| hands.contains(&h.id)) {
        hand.person = person;
        hand.seat = seat.filter(|seat| theirs != Some(*seat));
    }
    Act::between(say("done-given", &[]), layout, &after)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::open;

    #[test]
    fn a_pair_goes_to_another_and_stays_at_its_place() {
        let layout = open(
            r#"{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":20,
            "table":{"width":1600,"depth":900},"frame":{"at":[800,450],"width":1300},
            "seats":[{"id":5,"at":[800,900]},{"id":7,"at":[0,400]}],
            "people":[{"id":1,"seat":5,"stature":1600,"released":true},{"id":6,"seat":7}],"exposures":[{"id":2}],
            "hands":[{"id":3,"person":1,"exposure":2,"side":"left","pair":4,"entry":[700,880],"target":[760,600]},
              {"id":4,"person":1,"exposure":2,"pair":3,"entry":[900,880],"target":[840,600]}]}"#,
        )
        .expect("a sound layout");
        let made = |person: Option<Id>| {
            let act = give_hand(&layout, Id(4), person).expect("given");
            let mut after = layout.clone();
            act.edit.apply_checked(&mut after).expect("it fits");
            let seats: Vec<Option<Id>> = after
                .hands
                .iter()
                .map(|h| seat_of(&after, h).map(|s| s.id))
                .collect();
            assert_eq!(
                seats,
                [Some(Id(5)), Some(Id(5))],
                "from where it comes from"
            );
            after
        };
        let other = made(Some(Id(6)));
        assert!(other.hands.iter().all(|h| h.person == Id(6)), "both hands");
        let new = made(None);
        let last = new.people.last().expect("one more");
        assert_eq!((last.stature, last.seat), (Some(1600), Some(Id(5))));
        assert!(!last.released, "they have not agreed yet");
        assert!(new.hands.iter().all(|h| h.person == last.id), "both hands");
        assert!(give_hand(&layout, Id(4), Some(Id(77))).is_err(), "nobody");
    }
}
