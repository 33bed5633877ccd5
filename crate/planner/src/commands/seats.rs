//! Where the person of a hand sits or stands.
use glam::DVec2;

use super::{Act, Refused};
use crate::layout::{Hand, Id, Layout, MAX_ID, MAX_SEATS, Point, Seat, Turn};
use crate::scene::seat_of;
use crate::seats::{PITCH, stand_at, stands};
use crate::shape::{CHORD_ERROR, meeting, table_outline};
use crate::words::say;

/// A place this near to another is the same, mm. Our choice.
const SAME: f64 = 120.0;
/// Where this much of the edge is free there is room for one more, mm: half
/// from place to place.
const ROOM: f64 = PITCH * 0.5;
/// How far behind the edge a place is drawn and taken, mm. Our choice.
pub const BEHIND: f64 = 70.0;
/// A way to the edge is looked along so far, in table widths.
const FAR: f64 = 3.0;

/// Lets a hand and its pair come from this direction of the picture: their
/// person gets a place at the table's edge there, seen from what they reach
/// for. A place that others use stays; one that is theirs alone goes along.
///
/// # Errors
/// When there is no such hand, or no room for another place.
pub fn come_from(layout: &Layout, id: Id, clock: Turn) -> Result<Act, Refused> {
    let unknown = || Refused::Unknown(id.0.to_string());
    let hand = layout
        .hands
        .iter()
        .find(|h| h.id == id)
        .ok_or_else(unknown)?;
    let way = layout.frame.turn.plus(clock.half_degrees()).direction();
    let size = DVec2::new(f64::from(layout.table.width), f64::from(layout.table.depth));
    let target = middle(layout, hand);
    let out = target + way * size.max_element() * FAR;
    let at = on_edge(layout, target, out);
    let mut after = layout.clone();
    seat(&mut after, hand, at)?;
    Act::between(say("done-seat", &[]), layout, &after)
}

/// Lets a hand and its pair come from the place at the table's edge nearest to
/// this one.
///
/// # Errors
/// When there is no such hand, or no room for another place.
pub fn come_to(layout: &Layout, id: Id, at: DVec2) -> Result<Act, Refused> {
    let hand = layout.hands.iter().find(|h| h.id == id);
    let hand = hand.ok_or_else(|| Refused::Unknown(id.0.to_string()))?;
    let mut after = layout.clone();
    seat(&mut after, hand, at)?;
    Act::between(say("done-seat", &[]), layout, &after)
}

/// Moves a place along the table's edge, to where it is nearest to this one.
///
/// # Errors
/// When there is no such place.
pub fn move_seat(layout: &Layout, id: Id, to: DVec2) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let own = after.seats.iter_mut().find(|s| s.id == id);
    let own = own.ok_or_else(|| Refused::Unknown(id.0.to_string()))?;
    own.at = Point::nearest(stand_at(&layout.table, to).at);
    Act::between(say("done-seat", &[]), layout, &after)
}

/// A place at the table someone sits at or could.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// The place of the layout; none where nobody sits yet.
    pub seat: Option<Id>,
    /// Where on the table's edge.
    pub at: DVec2,
    /// Which way one looks from there.
    pub inward: DVec2,
}

/// Every place of the layout, and where along the edge there is room for one
/// more.
#[must_use]
pub fn spots(layout: &Layout) -> Vec<Spot> {
    let table = &layout.table;
    let taken = layout.seats.iter().map(|seat| {
        let stand = stand_at(table, seat.at.vec());
        Spot {
            seat: Some(seat.id),
            at: stand.at,
            inward: stand.inward,
        }
    });
    let mut out: Vec<Spot> = taken.collect();
    let all = crate::seats::seats(table, PITCH);
    for stand in stands(table, all, PITCH) {
        if out.iter().all(|spot| spot.at.distance(stand.at) > ROOM) {
            out.push(Spot {
                seat: None,
                at: stand.at,
                inward: stand.inward,
            });
        }
    }
    out
}

/// The place a finger takes that reaches so far, mm, the nearest of them.
#[must_use]
pub fn spot_at(layout: &Layout, at: DVec2, reach: f64) -> Option<Spot> {
    let away = |spot: &Spot| (spot.at - spot.inward * BEHIND).distance(at);
    let near = spots(layout).into_iter().filter(|s| away(s) < reach);
    near.min_by(|a, b| away(a).total_cmp(&away(b)))
}

/// The person of a hand stands up, or sits down.
///
/// # Errors
/// When there is no such hand or it has no place at the table.
pub fn stand_or_sit(layout: &Layout, id: Id) -> Result<Act, Refused> {
    let unknown = || Refused::Unknown(id.0.to_string());
    let hand = layout.hands.iter().find(|h| h.id == id);
    let seat = hand
        .and_then(|h| seat_of(layout, h))
        .ok_or_else(unknown)?
        .id;
    let mut after = layout.clone();
    for seat in after.seats.iter_mut().filter(|s| s.id == seat) {
        seat.standing = !seat.standing;
    }
    Act::between(say("done-seat", &[]), layout, &after)
}

/// The direction of the picture a hand comes from, seen from what it reaches
/// for; none without a place at the table.
#[must_use]
pub fn comes_from(layout: &Layout, hand: &Hand) -> Option<Turn> {
    let seat = seat_of(layout, hand)?;
    let stand = stand_at(&layout.table, seat.at.vec());
    let way = stand.at - middle(layout, hand);
    let degrees = libm::atan2(way.x, -way.y).to_degrees();
    let turn = Turn::from_degrees(degrees);
    Some(turn.plus(-layout.frame.turn.half_degrees()))
}

/// Hands that come in near this place get a seat there, their person's own
/// when they have none yet.
pub(super) fn seat(layout: &mut Layout, hand: &Hand, at: DVec2) -> Result<(), Refused> {
    let stand = stand_at(&layout.table, at);
    let own = |h: &Hand| h.id == hand.id || Some(h.id) == hand.pair;
    let now = seat_of(layout, hand).map(|s| s.id);
    let alone = now.filter(|seat| {
        let mut others = layout.hands.iter().filter(|h| !own(h));
        others.all(|h| seat_of(layout, h).is_none_or(|s| s.id != *seat))
    });
    let near = |s: &&Seat| {
        Some(s.id) != alone && stand_at(&layout.table, s.at.vec()).at.distance(stand.at) < SAME
    };
    let there = layout.seats.iter().find(near).map(|s| s.id);
    let seat = match (there, alone) {
        (Some(there), _) => there,
        (None, Some(alone)) => {
            for seat in layout.seats.iter_mut().filter(|s| s.id == alone) {
                seat.at = Point::nearest(stand.at);
            }
            alone
        }
        (None, None) => {
            if layout.seats.len() >= MAX_SEATS || layout.head.next_id > MAX_ID {
                return Err(Refused::NoRoom);
            }
            let id = Id(layout.head.next_id);
            layout.head.next_id += 1;
            layout.seats.push(Seat {
                id,
                at: Point::nearest(stand.at),
                standing: false,
                setting: None,
                extra: Default::default(),
            });
            id
        }
    };
    let person = layout.people.iter_mut().find(|p| p.id == hand.person);
    let theirs = person.map(|p| *p.seat.get_or_insert(seat));
    for each in layout.hands.iter_mut().filter(|h| own(h)) {
        each.seat = (theirs != Some(seat)).then_some(seat);
    }
    // A place nobody comes from any more is taken away.
    let used = |id: Id| {
        layout.people.iter().any(|p| p.seat == Some(id))
            || layout.hands.iter().any(|h| h.seat == Some(id))
    };
    let unused: Vec<Id> = now.into_iter().filter(|id| !used(*id)).collect();
    layout
        .seats
        .retain(|s| s.setting.is_some() || !unused.contains(&s.id));
    Ok(())
}

/// What a hand and its pair reach for.
fn middle(layout: &Layout, hand: &Hand) -> DVec2 {
    let pair = layout.hands.iter().find(|h| Some(h.id) == hand.pair);
    let own = hand.target.vec();
    pair.map_or(own, |pair| (own + pair.target.vec()) * 0.5)
}

/// Where the way from a place outwards crosses the table's edge.
fn on_edge(layout: &Layout, from: DVec2, out: DVec2) -> DVec2 {
    let edge = table_outline(&layout.table, CHORD_ERROR);
    let sides = edge.iter().enumerate();
    let met = sides.filter_map(|(n, a)| meeting(from, out, *a, edge[(n + 1) % edge.len()]));
    met.max_by(|a, b| from.distance(*a).total_cmp(&from.distance(*b)))
        .unwrap_or(out)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::open;
    use crate::scene::joints;

    fn laid() -> Layout {
        open(
            r#"{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":20,
            "table":{"width":1600,"depth":900},"frame":{"at":[800,450],"width":1300},
            "people":[{"id":1}],"exposures":[{"id":2},{"id":3}],
            "hands":[{"id":4,"person":1,"exposure":2,"side":"left","pair":5,"entry":[700,880],"target":[760,600]},
              {"id":5,"person":1,"exposure":2,"pair":4,"entry":[900,880],"target":[840,600]},
              {"id":6,"person":1,"exposure":3,"entry":[100,400],"target":[420,400]}]}"#,
        )
        .expect("a sound layout")
    }

    fn after(layout: &Layout, id: u16, hour: i32) -> Layout {
        let act = come_from(layout, Id(id), Turn::from_half_degrees(hour * 60)).expect("done");
        let mut after = layout.clone();
        act.edit.apply_checked(&mut after).expect("it fits");
        after
    }

    #[test]
    fn room_for_one_more_is_where_nobody_sits() {
        let empty = laid();
        let free = spots(&empty);
        assert_eq!(free.len(), 6, "two along each side, one at each end");
        assert!(free.iter().all(|s| s.seat.is_none()), "nobody sits");
        let at = free[0].at;
        let act = come_to(&empty, Id(6), at).expect("there");
        let mut sat = empty.clone();
        act.edit.apply_checked(&mut sat).expect("it fits");
        let now = spots(&sat);
        assert_eq!(now.len(), 6, "one of them is taken: {now:?}");
        let own = spot_at(&sat, at - now[0].inward * BEHIND, 40.0).expect("there");
        assert_eq!(own.seat, Some(sat.seats[0].id));
        assert!(spot_at(&sat, DVec2::new(800.0, 450.0), 40.0).is_none());
        let act = move_seat(&sat, sat.seats[0].id, DVec2::new(500.0, 2_000.0)).expect("there");
        act.edit.apply_checked(&mut sat).expect("it fits");
        assert_eq!(sat.seats[0].at, Point::new(500, 900), "on the edge");
        assert!(
            move_seat(&sat, Id(77), DVec2::ZERO).is_err(),
            "no such place"
        );
        assert!(come_to(&sat, Id(77), DVec2::ZERO).is_err(), "no such hand");
    }

    #[test]
    fn a_pair_gets_one_place_and_another_hand_of_the_same_person_another() {
        let one = after(&laid(), 4, 6);
        assert_eq!(one.seats.len(), 1, "{:?}", one.seats);
        assert_eq!(one.seats[0].at, Point::new(800, 900), "straight below them");
        assert_eq!(one.people[0].seat, Some(one.seats[0].id), "their own");
        assert!(joints(&one, &one.hands[1]).is_some(), "the pair too");
        let two = after(&one, 6, 9);
        assert_eq!(two.seats.len(), 2, "one person plays two sitters");
        assert_eq!(two.seats[1].at, Point::new(0, 400));
        assert_eq!(two.hands[2].seat, Some(two.seats[1].id));
        assert_eq!(two.hands[0].seat, None, "as before");
    }

    #[test]
    fn a_place_of_ones_own_goes_along_and_no_place_is_left_behind() {
        let one = after(&after(&laid(), 4, 6), 6, 9);
        let moved = after(&one, 6, 8);
        assert_eq!(moved.seats.len(), 2, "{:?}", moved.seats);
        let clock = comes_from(&moved, &moved.hands[2]).expect("a place");
        assert!((clock.degrees() - 240.0).abs() < 1.0, "{}", clock.degrees());
        let back = after(&one, 6, 6);
        assert!(back.seats[1].at.y == 900, "{:?}", back.seats);
    }

    #[test]
    fn directions_are_those_of_the_picture() {
        let mut turned = laid();
        turned.frame.turn = Turn::from_degrees(90.0);
        let one = after(&turned, 6, 12);
        // The picture's top is the table's right.
        assert_eq!(one.seats[0].at.x, 1600, "{:?}", one.seats);
        let clock = comes_from(&one, &one.hands[2]).expect("a place");
        assert!(
            clock.degrees() < 0.5 || clock.degrees() > 359.0,
            "{clock:?}"
        );
    }

    #[test]
    fn someone_stands_up_and_sits_down() {
        let one = after(&laid(), 4, 6);
        let act = stand_or_sit(&one, Id(5)).expect("done");
        let mut up = one.clone();
        act.edit.apply_checked(&mut up).expect("it fits");
        assert!(up.seats[0].standing);
        assert!(stand_or_sit(&laid(), Id(6)).is_err(), "no place yet");
        assert!(
            come_from(&laid(), Id(99), Turn::default()).is_err(),
            "no hand"
        );
    }
}
