//! What a proposal changes, taken apart into what can be accepted by itself.
use super::limits::Limits;
use crate::edit::{Change, Edit, Key, Object};
use crate::layout::{Hand, Id, Layout};
use crate::scene::seat_of;

/// Two bodies have changed places when each stands this near to where the other
/// stood, mm. Our choice.
const SWAPPED: f64 = 60.0;
/// Two proposals put a thing in different places when these lie so far apart,
/// mm, or are turned so far, half degrees. Our choice.
const APART: f64 = 100.0;
const TURNED: f64 = 120.0;

/// What is changed together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Of {
    /// A body, with the hands it takes along.
    Body(usize),
    /// Someone's hands and places.
    Person(Id),
    /// Anything else.
    Other(Key),
}

/// The changes from the start to `after`, by what is changed together; all of
/// them make up the whole.
pub(super) fn apart(limits: &Limits, start: &Layout, after: &Layout) -> Vec<Edit> {
    let mut out: Vec<(Of, Edit)> = Vec::new();
    for change in Edit::between(start, after).0 {
        let of = of(limits, start, after, &change);
        match out.iter_mut().find(|(own, _)| *own == of) {
            Some((_, edit)) => edit.0.push(change),
            None => out.push((of, Edit(vec![change]))),
        }
    }
    // Two that changed places go together.
    let bodies = limits.bodies();
    for (n, a) in bodies.iter().enumerate() {
        for (m, b) in bodies.iter().enumerate().skip(n + 1) {
            let near = a.at(after).distance(b.at(start)) < SWAPPED
                && b.at(after).distance(a.at(start)) < SWAPPED;
            let place = |of| out.iter().position(|(own, _)| *own == of);
            let both = place(Of::Body(n)).zip(place(Of::Body(m)));
            if let Some((n, m)) = both.filter(|_| near) {
                let with = std::mem::take(&mut out[m].1);
                out[n].1.0.extend(with.0);
            }
        }
    }
    crate::order::sort(&mut out, |a, b| a.0.cmp(&b.0));
    let edits = out.into_iter().map(|(_, edit)| edit);
    edits.filter(|edit| !edit.is_empty()).collect()
}

fn of(limits: &Limits, start: &Layout, after: &Layout, change: &Change) -> Of {
    match change.key {
        Key::Item(id) => limits.body_of(id).map_or(Of::Other(change.key), Of::Body),
        Key::Hand(id) => {
            let taken = taken_along(limits, start, after, change);
            taken.unwrap_or_else(|| whose(start, id))
        }
        Key::Person(id) => Of::Person(id),
        Key::Seat(id) => {
            let sits = |h: &&Hand| seat_of(start, h).is_some_and(|s| s.id == id);
            let hand = start.hands.iter().find(sits);
            hand.map_or(Of::Other(change.key), |h| Of::Person(h.person))
        }
        key => Of::Other(key),
    }
}

fn whose(layout: &Layout, hand: Id) -> Of {
    let hand = layout.hands.iter().find(|h| h.id == hand);
    hand.map_or(Of::Other(Key::Head), |h| Of::Person(h.person))
}

/// The body whose move a hand has made too, and nothing but that.
fn taken_along(limits: &Limits, start: &Layout, after: &Layout, change: &Change) -> Option<Of> {
    let hand = |p: &Option<crate::edit::Placed>| match &p.as_ref()?.object {
        Object::Hand(hand) => Some(hand.clone()),
        _ => None,
    };
    let (was, is) = (hand(&change.before)?, hand(&change.after)?);
    let n = limits
        .bodies()
        .iter()
        .position(|b| b.hands.contains(&was.id))?;
    let body = &limits.bodies()[n];
    let by = body.at(after) - body.at(start);
    let mut expected = was;
    expected.target = expected.target.moved(by.x as i32, by.y as i32);
    (expected == is).then_some(Of::Body(n))
}

/// The share of what two layouts change of the start that they change
/// differently, 0 to 1; 0 when neither changes anything.
#[must_use]
pub(super) fn difference(limits: &Limits, start: &Layout, a: &Layout, b: &Layout) -> f64 {
    let (mut all, mut apart) = (0.0, 0.0);
    let mut count = |changed: bool, share: f64| {
        if changed {
            all += 1.0;
            apart += share.min(1.0);
        }
    };
    for body in limits.bodies() {
        let placed = |l: &Layout| {
            l.items
                .iter()
                .find(|i| i.id == body.chief)
                .map(|i| (i.at, i.turn))
        };
        let (Some(s), Some(p), Some(q)) = (placed(start), placed(a), placed(b)) else {
            continue;
        };
        let turn = (p.1.half_degrees() - q.1.half_degrees()).abs();
        let turn = f64::from(turn.min(720 - turn));
        let off = (p.0.vec() - q.0.vec()).length() / APART + turn / TURNED;
        count(p != s || q != s, off);
    }
    for (s, (p, q)) in start.linens.iter().zip(a.linens.iter().zip(&b.linens)) {
        let off = p.at.vec().distance(q.at.vec()) / APART;
        let off = if p.state == q.state { off } else { 1.0 };
        count(p != s || q != s, off);
    }
    for (s, (p, q)) in start.crops.iter().zip(a.crops.iter().zip(&b.crops)) {
        count(p != s || q != s, p.at.vec().distance(q.at.vec()) / APART);
    }
    for (s, (p, q)) in start.seats.iter().zip(a.seats.iter().zip(&b.seats)) {
        count(p != s || q != s, p.at.vec().distance(q.at.vec()) / APART);
    }
    count(
        a.light != start.light || b.light != start.light,
        f64::from(u8::from(a.light != b.light)),
    );
    if all > 0.0 { apart / all } else { 0.0 }
}
