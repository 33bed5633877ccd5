//! In which order exposures are shot: nothing that cannot be undone too early,
//! no food longer on the set than it holds, and as few things carried and ways
//! walked as can be.
use super::needs::{Food, foods};
use super::rank::turns;
use super::search::{Search, Stood};
use crate::layout::{As, Exposure, Id, Layout};
use crate::scene::seat_of;

/// More exposures than this keep the order they are told in. Our choice.
const MOST_EXACT: usize = 12;
/// A way round the table takes as long as this many things carried. Our choice.
const WALK: u32 = 2;
/// How long it takes to carry one thing, to swap one food in for what stood in
/// for it, and for somebody to walk to another place, minutes. Our choice.
pub const CARRYING: i32 = 1;
/// Swapping in.
pub const SWAPPING: i32 = 1;
/// Walking.
pub const WALKING: i32 = 1;

/// What it takes to get from one exposure to the next.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Change {
    /// Things put down, taken up or moved.
    pub moves: u32,
    /// People who go to another place, or come in.
    pub walks: u32,
}

impl Change {
    /// How long it takes, minutes.
    #[must_use]
    pub const fn minutes(self) -> i32 {
        self.moves as i32 * CARRYING + self.walks as i32 * WALKING
    }
}

/// What an order takes in all, what weighs most first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Taken {
    /// How much longer food stands than it holds, the minutes of each added up.
    pub over: i32,
    /// How often an exposure comes before one that had better come first.
    pub early: u32,
    /// Things carried and ways walked.
    pub change: Change,
}

impl Taken {
    /// What orders are told apart by, what weighs most first.
    #[must_use]
    pub const fn weight(&self) -> (i32, u32, u32) {
        let Change { moves, walks } = self.change;
        (self.over, self.early, moves + WALK * walks)
    }
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

/// What it takes to get from one exposure to another.
#[must_use]
pub fn change(layout: &Layout, from: &Exposure, to: &Exposure) -> Change {
    let moves = carried(layout, from, to).count() as u32;
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
        moves,
        walks: then.iter().filter(|s| !there.contains(s)).count() as u32,
    }
}

/// The things that are elsewhere, or gone, or back, in the second of two
/// exposures.
pub(crate) fn carried<'a>(
    layout: &'a Layout,
    from: &'a Exposure,
    to: &'a Exposure,
) -> impl Iterator<Item = Id> + 'a {
    let place = |e: &Exposure, id: Id| {
        let told = e.states.iter().find(|s| s.item == id);
        let told = told.filter(|s| matches!(s.is, As::Absent | As::Moved));
        told.map(|s| (s.is, s.at, s.turn))
    };
    let items = layout.items.iter().map(|i| i.id);
    items.filter(move |id| place(from, *id) != place(to, *id))
}

/// All that bears on the order.
fn search(layout: &Layout) -> Result<Search, NoOrder> {
    let all = &layout.exposures;
    let foods = foods(layout);
    let turns = turns(layout, &foods);
    let mut out = Search {
        first: vec![0; all.len()],
        rather: vec![0; all.len()],
        ..Search::default()
    };
    for (a, one) in turns.iter().enumerate() {
        for (b, other) in turns.iter().enumerate().filter(|(b, _)| *b != a) {
            if one.before(other) {
                out.first[b] |= 1 << a;
            } else if !other.before(one) && one.at_odds(other) {
                return Err(NoOrder::FoodTwice(all[a].id, all[b].id));
            }
            if other.rather_after(one) {
                out.rather[b] |= 1 << a;
            }
        }
    }
    out.minutes = all.iter().map(Exposure::takes).collect();
    let from = |a| all.iter().map(move |b| change(layout, a, b)).collect();
    out.step = all.iter().map(from).collect();
    let minutes = |row: &Vec<Change>| row.iter().map(|c| c.minutes()).collect();
    out.between = out.step.iter().map(minutes).collect();
    let swapped = foods.iter().filter(|food| food.stood_in && food.real != 0);
    out.swaps = swapped.map(|food| (food.real, SWAPPING)).collect();
    let mut classes: Vec<u64> = Vec::new();
    let limited = |food: &&Food| food.real != 0 && food.hold.is_some();
    for food in foods.iter().filter(limited) {
        let on_set = food.on_set();
        let known = classes.iter().position(|c| *c == on_set);
        let class = known.unwrap_or(classes.len());
        if known.is_none() {
            classes.push(on_set);
        }
        out.stood.push(Stood {
            on_set,
            real: food.real,
            hold: food.hold.map_or(0, |hold| hold.0),
            class,
        });
    }
    out.classes = classes.len();
    Ok(out)
}

/// What the order they are told in takes in all; none for one that cannot be
/// shot.
#[must_use]
pub fn in_order(layout: &Layout) -> Option<Taken> {
    let all: Vec<usize> = (0..layout.exposures.len()).collect();
    search(layout).ok()?.taken(&all)
}

/// The exposures in the order that takes least, and what it takes in all: no
/// food longer than it holds if that can be, nothing earlier than it had
/// better be, the fewest things carried and ways walked; of orders that take
/// the same, that nearest to the one they are told in.
///
/// # Errors
/// Food that would be needed twice, or more exposures than can be tried.
pub fn shooting_order(layout: &Layout) -> Result<(Vec<Id>, Taken), NoOrder> {
    let all = &layout.exposures;
    if all.len() > MOST_EXACT {
        return Err(NoOrder::Many);
    }
    let (order, taken) = search(layout)?.best().ok_or(NoOrder::Many)?;
    Ok((order.into_iter().map(|n| all[n].id).collect(), taken))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::open;

    fn laid(exposures: &str, hands: &str) -> Layout {
        laid_with(exposures, hands, "")
    }

    /// Four loaves, the first with these fields besides.
    fn laid_with(exposures: &str, hands: &str, more: &str) -> Layout {
        let item = |id: u16| {
            let more = if id == 1 { more } else { "" };
            format!(
                r#"{{"id":{id},"prop":"loaf","at":[500,{id}00],"size":{{"shape":"disc","diameter":90}}{more}}}"#
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

    fn hand(id: u16, exposure: u16, seat: u16, at: [i32; 2]) -> String {
        format!(
            r#"{{"id":{id},"person":32,"seat":{seat},"exposure":{exposure},"entry":[0,0],"target":[{},{}]}}"#,
            at[0], at[1]
        )
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
        assert_eq!(found, [42, 41, 40, 43], "and the clean one again after it");
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
        let hands = [(50, 40, 30), (51, 41, 30), (52, 42, 30), (53, 43, 31)]
            .map(|(id, exposure, seat)| hand(id, exposure, seat, [900, 700]));
        let layout = laid(&told, &hands.join(","));
        let (found, total) = shooting_order(&layout).expect("an order");
        // What touches nothing first, then both with the loaf away.
        assert_eq!(
            (total.change.moves, total.change.walks),
            (1, 1),
            "{found:?}"
        );
        assert_eq!(found, [43, 41, 40, 42].map(Id));
    }

    #[test]
    fn food_that_dies_early_is_shot_at_once_and_stood_in_for_till_then() {
        let told = r#"{"id":40,"kind":"clean"},{"id":41},{"id":42}"#;
        let hands = [hand(50, 41, 30, [900, 700]), hand(51, 42, 30, [500, 100])].join(",");
        // Clean 3 minutes, then 10 each, one way walked.
        let brief = laid_with(told, &hands, r#","hold_minutes":14"#);
        assert_eq!(in_order(&brief).map(|taken| taken.over), Some(10), "24");
        assert_eq!(order(&brief), [40, 42, 41], "it first");
        assert_eq!(shooting_order(&brief).map(|found| found.1.over), Ok(0));
        let told = r#"{"id":41},{"id":40,"kind":"clean"},{"id":42}"#;
        let swapped = laid_with(told, &hands, r#","hold_minutes":14,"stand_in":"dough""#);
        assert_eq!(order(&swapped), [41, 40, 42], "what needs no real food");
        let taken = in_order(&swapped).expect("it can be shot");
        assert_eq!((taken.over, taken.early), (0, 0), "as it is told");
    }

    #[test]
    fn none_and_too_many() {
        let (found, total) = shooting_order(&laid("", "")).expect("nothing");
        assert!(found.is_empty() && total == Taken::default());
        let many: Vec<String> = (0..13).map(|n| format!(r#"{{"id":{}}}"#, 40 + n)).collect();
        let found = shooting_order(&laid(&many.join(","), ""));
        assert_eq!(found, Err(NoOrder::Many));
    }
}
