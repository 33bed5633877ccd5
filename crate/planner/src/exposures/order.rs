//! In which order exposures are shot: nothing that cannot be undone too early,
//! and as few things carried and ways walked as can be.
//!
//! Dynamic programming over sets of exposures shot so far and the last of
//! them (Held and Karp 1962), exact to `MOST_EXACT` exposures.
use super::states::changes;
use crate::layout::{As, Exposure, ExposureKind, Id, Layout};
use crate::scene::seat_of;

/// More exposures than this keep the order they are told in. Our choice.
const MOST_EXACT: usize = 12;
/// A way round the table takes as long as this many things carried. Our choice.
const WALK: u32 = 2;

/// What it takes to get from one exposure to the next.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Change {
    /// Things put down, taken up or moved.
    pub moves: u32,
    /// People who go to another place, or come in.
    pub walks: u32,
}

/// Why exposures cannot be put in an order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoOrder {
    /// Food is changed in one way in the first and another in the second, and
    /// neither comes out of the other: it takes food twice.
    FoodTwice(Id, Id),
    /// There are too many to be sure.
    Many,
}

/// When an exposure is shot by what it is for: what measures the light and the
/// bare table come before the food, all the rest with it.
const fn turn_of(kind: ExposureKind) -> u8 {
    match kind {
        ExposureKind::Card => 0,
        ExposureKind::Empty => 1,
        ExposureKind::Clean | ExposureKind::Hands => 2,
        ExposureKind::Steam | ExposureKind::NoGlare => 3,
        ExposureKind::Insurance => 4,
    }
}

/// Whether `a` must be shot before `b`: by what they are for, by the state of
/// the food, a clean exposure before the hands while none of it is changed, for
/// anything may be nudged, and after them once they have changed it.
fn before(a: &Exposure, b: &Exposure) -> bool {
    let food = |e: &Exposure| changes(e);
    let (one, other) = (food(a), food(b));
    let within = |x: &[_], y: &[_]| x.iter().all(|c| y.contains(c));
    if turn_of(a.kind) != turn_of(b.kind) && (turn_of(a.kind) < 2 || turn_of(b.kind) < 2) {
        return turn_of(a.kind) < turn_of(b.kind);
    }
    if one != other {
        return within(&one, &other);
    }
    let clean = |e: &Exposure| e.kind == ExposureKind::Clean;
    if clean(a) != clean(b) && turn_of(a.kind) == turn_of(b.kind) {
        // It is the hands that change the food.
        return clean(a) == one.is_empty();
    }
    turn_of(a.kind) < turn_of(b.kind)
}

/// What it takes to get from one exposure to another.
#[must_use]
pub fn change(layout: &Layout, from: &Exposure, to: &Exposure) -> Change {
    let place = |e: &Exposure, id: Id| {
        let told = e.states.iter().find(|s| s.item == id);
        let told = told.filter(|s| matches!(s.is, As::Absent | As::Moved));
        told.map(|s| (s.is, s.at, s.turn))
    };
    let items = layout.items.iter();
    let moves = items.filter(|i| place(from, i.id) != place(to, i.id));
    let seats = |e: &Exposure| {
        let hands = layout.hands.iter().filter(|h| h.exposure == e.id);
        let mut out: Vec<_> = hands
            .map(|h| (h.person, seat_of(layout, h).map(|s| s.id)))
            .collect();
        crate::order::sort(&mut out, |a, b| a.cmp(b));
        out.dedup();
        out
    };
    let (there, then) = (seats(from), seats(to));
    Change {
        moves: moves.count() as u32,
        walks: then.iter().filter(|s| !there.contains(s)).count() as u32,
    }
}

/// What the order they are told in takes in all; none for one that cannot be
/// shot.
#[must_use]
pub fn in_order(layout: &Layout) -> Option<Change> {
    let all = &layout.exposures;
    for (n, late) in all.iter().enumerate() {
        if all[..n].iter().any(|early| before(late, early)) {
            return None;
        }
    }
    let mut total = Change::default();
    for pair in all.windows(2) {
        let taken = change(layout, &pair[0], &pair[1]);
        total.moves += taken.moves;
        total.walks += taken.walks;
    }
    Some(total)
}

/// The exposures in the order that takes least, and what it takes in all; of
/// orders that take the same, that nearest to the one they are told in.
///
/// # Errors
/// Food that would be needed twice, or more exposures than can be tried.
pub fn shooting_order(layout: &Layout) -> Result<(Vec<Id>, Change), NoOrder> {
    let all = &layout.exposures;
    let n = all.len();
    if n > MOST_EXACT {
        return Err(NoOrder::Many);
    }
    let mut first = vec![0_u32; n];
    for (a, one) in all.iter().enumerate() {
        for (b, other) in all.iter().enumerate().filter(|(b, _)| *b != a) {
            if before(one, other) {
                first[b] |= 1 << a;
            } else if !before(other, one) && at_odds(one, other) {
                return Err(NoOrder::FoodTwice(one.id, other.id));
            }
        }
    }
    let step: Vec<Vec<Change>> = all
        .iter()
        .map(|a| all.iter().map(|b| change(layout, a, b)).collect())
        .collect();
    // Of what takes the same, the fewest exposures that jump the queue.
    let cost = |c: Change| (c.moves + WALK * c.walks) << 8;
    let jumps = |shot: usize, next: usize| {
        let waiting = (0..next).filter(|n| shot >> n & 1 == 0);
        waiting.count() as u32
    };
    let size = 1_usize << n;
    // For each set shot and its last: the cost, and the one before the last.
    let mut least: Vec<Vec<Option<(u32, usize)>>> = vec![vec![None; n]; size];
    for (last, needs) in first.iter().enumerate() {
        if *needs == 0 {
            least[1 << last][last] = Some((jumps(0, last), n));
        }
    }
    for set in 1..size {
        for last in 0..n {
            let Some((so_far, _)) = least[set][last] else {
                continue;
            };
            for next in (0..n).filter(|next| set >> next & 1 == 0) {
                if first[next] as usize & !set != 0 {
                    continue;
                }
                let total = so_far + cost(step[last][next]) + jumps(set, next);
                let known = &mut least[set | 1 << next][next];
                if known.is_none_or(|(best, _)| total < best) {
                    *known = Some((total, last));
                }
            }
        }
    }
    let mut out = Vec::new();
    let mut total = Change::default();
    let mut set = size - 1;
    let best = (0..n).filter_map(|last| Some((least[set][last]?.0, last)));
    let mut last = best.min().map_or(n, |(_, last)| last);
    while last < n {
        out.push(all[last].id);
        let back = least[set][last].map_or(n, |(_, back)| back);
        set &= !(1 << last);
        if back < n {
            let taken = step[back][last];
            total.moves += taken.moves;
            total.walks += taken.walks;
        }
        last = back;
    }
    out.reverse();
    Ok((out, total))
}

/// Whether the same food is changed in two ways.
fn at_odds(a: &Exposure, b: &Exposure) -> bool {
    let (one, other) = (changes(a), changes(b));
    let within = |x: &[_], y: &[_]| x.iter().all(|c| y.contains(c));
    !within(&one, &other) && !within(&other, &one)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::open;

    fn laid(exposures: &str, hands: &str) -> Layout {
        let item = |id: u16| {
            format!(
                r#"{{"id":{id},"prop":"loaf","at":[500,{id}00],"size":{{"shape":"disc","diameter":90}}}}"#
            )
        };
        let items: Vec<String> = (1..=4).map(item).collect();
        let text = format!(
            r#"{{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":90,
            "table":{{"width":1600,"depth":900}},"frame":{{"at":[800,450],"width":1300}},
            "items":[{}],"seats":[{{"id":30,"at":[0,400]}},{{"id":31,"at":[800,900]}}],
            "people":[{{"id":32,"seat":30}}],"exposures":[{exposures}],"hands":[{hands}]}}"#,
            items.join(",")
        );
        open(&text).expect("a sound layout")
    }

    fn order(layout: &Layout) -> Vec<u16> {
        let (order, _) = shooting_order(layout).expect("an order");
        order.into_iter().map(|id| id.0).collect()
    }

    #[test]
    fn card_and_empty_table_come_first_then_clean_then_hands() {
        let told = r#"{"id":40},{"id":41,"kind":"insurance"},{"id":42,"kind":"clean"},
            {"id":43,"kind":"empty"},{"id":44,"kind":"card"}"#;
        assert_eq!(order(&laid(told, "")), [44, 43, 42, 40, 41]);
    }

    #[test]
    fn what_cannot_be_undone_comes_after_what_it_undoes() {
        let cut = r#""states":[{"item":1,"state":"changed"}]"#;
        let more = r#""states":[{"item":1,"state":"changed"},{"item":2,"state":"changed"}]"#;
        let told = format!(
            r#"{{"id":40,{more}}},{{"id":41,{cut}}},{{"id":42}},{{"id":43,"kind":"clean",{more}}}"#
        );
        let found = order(&laid(&told, ""));
        assert_eq!(found[..2], [42, 41], "{found:?}");
    }

    #[test]
    fn food_changed_two_ways_is_needed_twice() {
        let told = r#"{"id":40,"states":[{"item":1,"state":"changed"}]},
            {"id":41,"states":[{"item":2,"state":"changed"}]}"#;
        let found = shooting_order(&laid(told, ""));
        assert_eq!(found, Err(NoOrder::FoodTwice(Id(40), Id(41))));
    }

    #[test]
    fn things_are_carried_and_ways_walked_as_little_as_can_be() {
        let away = r#""states":[{"item":1,"state":"absent"}]"#;
        let told = format!(r#"{{"id":40,{away}}},{{"id":41}},{{"id":42,{away}}},{{"id":43}}"#);
        let hand = |id: u16, exposure: u16, seat: u16| {
            format!(
                r#"{{"id":{id},"person":32,"seat":{seat},"exposure":{exposure},"entry":[0,0],"target":[500,400]}}"#
            )
        };
        let hands = [
            hand(50, 40, 30),
            hand(51, 41, 30),
            hand(52, 42, 30),
            hand(53, 43, 31),
        ];
        let layout = laid(&told, &hands.join(","));
        let (found, total) = shooting_order(&layout).expect("an order");
        assert_eq!((total.moves, total.walks), (1, 1), "{found:?}");
        assert_eq!(found.last(), Some(&Id(43)), "{found:?}");
    }

    #[test]
    fn none_and_too_many() {
        let (found, total) = shooting_order(&laid("", "")).expect("nothing");
        assert!(found.is_empty() && total == Change::default());
        let many: Vec<String> = (0..13).map(|n| format!(r#"{{"id":{}}}"#, 40 + n)).collect();
        let found = shooting_order(&laid(&many.join(","), ""));
        assert_eq!(found, Err(NoOrder::Many));
    }
}
