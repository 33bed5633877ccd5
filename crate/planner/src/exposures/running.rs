//! The exposures one after another in minutes from the first: when each begins
//! and ends, when food goes on the set and when it must have been shot.
use super::needs::{Food, Founded, foods};
use super::order::{SWAPPING, carried, change};
use crate::layout::{Id, Layout};

/// One exposure in its time.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shot {
    /// Which.
    pub exposure: Id,
    /// When it begins and ends, minutes from the beginning of the first.
    pub from: i32,
    /// Its end.
    pub to: i32,
    /// Things carried away, back or elsewhere before it.
    pub carried: Vec<Id>,
    /// Real food put in place of what stood in for it before it.
    pub swapped: Vec<Id>,
}

/// Food in its time.
#[derive(Clone, Debug, PartialEq)]
pub struct OnSet {
    /// Which thing.
    pub item: Id,
    /// When the real food goes on the set, minutes from the first exposure.
    pub from: i32,
    /// When the last exposure that shows it ends.
    pub last: i32,
    /// How long it looks right, minutes, and what says so.
    pub hold: Option<(i32, Founded)>,
    /// The longest single exposure that shows it, minutes.
    pub longest: i32,
    /// When the last exposure ends that it lies on the table in.
    pub off: i32,
}

impl OnSet {
    /// How long it stands from going on the set to its last exposure, minutes.
    #[must_use]
    pub const fn stands(&self) -> i32 {
        self.last - self.from
    }

    /// How much longer that is than it looks right, minutes.
    #[must_use]
    pub fn over(&self) -> i32 {
        self.hold
            .map_or(0, |(hold, _)| (self.stands() - hold).max(0))
    }

    /// When it must have been shot, minutes from the first exposure.
    #[must_use]
    pub fn by(&self) -> Option<i32> {
        self.hold.map(|(hold, _)| self.from + hold)
    }
}

/// The whole of it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Running {
    /// The exposures, in the order they are told in.
    pub shots: Vec<Shot>,
    /// The food, in the order of ids; none that no exposure shows.
    pub foods: Vec<OnSet>,
    /// How long it all takes, minutes.
    pub length: i32,
}

/// The exposures in the order they are told in, with their times.
#[must_use]
pub fn running(layout: &Layout) -> Running {
    let all = &layout.exposures;
    let foods = foods(layout);
    let mut shots: Vec<Shot> = Vec::new();
    let mut clock = 0;
    for (n, own) in all.iter().enumerate() {
        let before = n.checked_sub(1).and_then(|n| all.get(n));
        let swapped = foods
            .iter()
            .filter(|food| food.stood_in && first(food.real) == n);
        let swapped: Vec<Id> = swapped.map(|food| food.item).collect();
        clock += before.map_or(0, |before| change(layout, before, own).minutes());
        clock += swapped.len() as i32 * SWAPPING;
        let from = clock;
        clock += own.takes();
        shots.push(Shot {
            exposure: own.id,
            from,
            to: clock,
            carried: before.map_or_else(Vec::new, |before| carried(layout, before, own).collect()),
            swapped,
        });
    }
    let shown = foods.iter().filter(|food| food.real != 0);
    Running {
        foods: shown.map(|food| on_set(food, &shots)).collect(),
        shots,
        length: clock,
    }
}

const fn first(exposures: u64) -> usize {
    exposures.trailing_zeros() as usize
}

const fn last(exposures: u64) -> usize {
    63 - exposures.leading_zeros() as usize
}

fn on_set(food: &Food, shots: &[Shot]) -> OnSet {
    let own = shots.iter().enumerate();
    let own = own.filter(|(n, _)| food.real >> n & 1 == 1);
    OnSet {
        item: food.item,
        from: shots[first(food.on_set())].from,
        last: shots[last(food.real)].to,
        hold: food.hold,
        longest: own.map(|(_, shot)| shot.to - shot.from).max().unwrap_or(0),
        off: shots[last(food.there)].to,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::open;

    /// A clean exposure, the loaf touched, something else touched with the
    /// carafe in the hand.
    fn laid(loaf: &str) -> Layout {
        let text = format!(
            r#"{{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":90,
            "table":{{"width":1600,"depth":900}},"frame":{{"at":[800,450],"width":1300}},
            "items":[{{"id":1,"prop":"loaf","at":[500,400],"size":{{"shape":"disc","diameter":90}}{loaf}}},
              {{"id":2,"prop":"oil-carafe","at":[900,400],"size":{{"shape":"disc","diameter":75}}}}],
            "seats":[{{"id":30,"at":[0,400]}}],"people":[{{"id":32,"seat":30}}],
            "exposures":[{{"id":40,"kind":"clean"}},{{"id":41,"minutes":7}},
              {{"id":42,"states":[{{"item":2,"state":"absent"}}]}}],
            "hands":[{{"id":50,"person":32,"exposure":41,"entry":[150,400],"target":[480,400]}},
              {{"id":51,"person":32,"exposure":42,"entry":[150,400],"target":[900,700],"holds":2}}]}}"#
        );
        open(&text).expect("a sound layout")
    }

    #[test]
    fn exposures_follow_each_other_with_what_is_carried_between() {
        let run = running(&laid(""));
        let times: Vec<_> = run.shots.iter().map(|s| (s.from, s.to)).collect();
        // 3 minutes; someone comes in, 7; the carafe is taken up, 10.
        assert_eq!(times, [(0, 3), (4, 11), (12, 22)]);
        assert_eq!(run.shots[2].carried, [Id(2)]);
        assert_eq!(run.length, 22);
    }

    #[test]
    fn food_stands_from_when_it_is_on_the_table_to_its_last_exposure() {
        let run = running(&laid(r#","hold_minutes":9"#));
        let loaf = &run.foods[0];
        assert_eq!((loaf.from, loaf.last, loaf.off), (0, 11, 22));
        assert_eq!((loaf.stands(), loaf.over(), loaf.by()), (11, 2, Some(9)));
        assert_eq!(loaf.longest, 7, "of those that show it");
        let keeps = running(&laid("")).foods;
        assert_eq!((keeps[0].over(), keeps[0].by()), (0, None), "for hours");
    }

    #[test]
    fn what_is_stood_in_for_is_swapped_in_before_its_first_exposure() {
        let mut layout = laid(r#","stand_in":"dough""#);
        layout.exposures.swap(0, 2);
        let run = running(&layout);
        let [pours, touches, clean] = &run.shots[..] else {
            panic!("three")
        };
        assert!(pours.swapped.is_empty(), "it needs none");
        assert_eq!(touches.swapped, [Id(1)]);
        // 10 minutes, the carafe put back, the loaf swapped in.
        assert_eq!((touches.from, clean.to), (12, 22));
        assert_eq!(run.foods[0].from, 12);
        assert!(
            running(&Layout::empty(crate::layout::LayoutId(1)))
                .shots
                .is_empty()
        );
    }
}
