//! The foods of a layout and the months they are in season where it is shot.
use serde::Serialize;

use super::spoken::{month, spoken};
use crate::catalogue::{Kind, in_season, kind_of, on_the_day, season_of};
use crate::layout::{Day, Hemisphere, Layout};
use crate::words::{Arg, listed, say};

/// A food and its months.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Seasonal {
    /// The catalogue's id.
    pub food: String,
    /// What it is called in the layout.
    pub name: String,
    /// First and last month; none for what is sold all the year round, as far as
    /// is known.
    pub months: Option<[i32; 2]>,
    /// Whether the layout tells them.
    pub told: bool,
    /// The same in words, with what says so.
    pub spoken: String,
}

/// Every food of the layout once, those with a season of their own first; what is
/// strewn, such as salt, only where it has one.
pub(super) fn foods(layout: &Layout) -> Vec<Seasonal> {
    let (mut all, mut rest): (Vec<Seasonal>, Vec<Seasonal>) = Default::default();
    for item in &layout.items {
        let food = item.prop.as_str();
        let known = season_of(food);
        if known.is_none() && kind_of(food) != Kind::Food {
            continue;
        }
        // It stays where it is when its months are told.
        let group = if known.is_some() { &mut all } else { &mut rest };
        if group.iter().any(|other| other.food == food) {
            continue;
        }
        let told = layout
            .dates
            .seasons
            .iter()
            .find(|season| season.food == food);
        let months = match told {
            Some(season) => Some(season.months),
            None => known.map(|known| here(known, layout.dates.hemisphere)),
        };
        group.push(Seasonal {
            food: food.into(),
            name: item.name.clone(),
            months,
            told: told.is_some(),
            spoken: in_words(months, told.is_some()),
        });
    }
    all.append(&mut rest);
    all
}

/// Months of the north, where it is shot: half a year lies between the halves of
/// the earth.
fn here(months: [i32; 2], hemisphere: Hemisphere) -> [i32; 2] {
    match hemisphere {
        Hemisphere::North => months,
        Hemisphere::South => months.map(|month| (month + 5) % 12 + 1),
    }
}

fn in_words(months: Option<[i32; 2]>, told: bool) -> String {
    let id = match (months, told) {
        (None, _) => "season-all-year",
        (Some([1, 12]), _) => "season-all-year-told",
        (_, true) => "season-told",
        _ => "season-memory",
    };
    say(id, &from_to(months.unwrap_or_default()))
}

fn from_to([from, to]: [i32; 2]) -> [(&'static str, Arg); 2] {
    [
        ("from", Arg::Text(month(from))),
        ("to", Arg::Text(month(to))),
    ]
}

/// A sentence for each season the day of the shoot misses.
pub(super) fn out_of_season(foods: &[Seasonal], shot: Day) -> Vec<String> {
    let mut missed: Vec<([i32; 2], bool, Vec<String>)> = Vec::new();
    for food in foods {
        let Some(months) = food.months.filter(|months| !in_season(*months, shot.month)) else {
            continue;
        };
        let same = missed
            .iter()
            .position(|m| (m.0, m.1) == (months, food.told));
        let at = same.unwrap_or_else(|| {
            missed.push((months, food.told, Vec::new()));
            missed.len() - 1
        });
        missed[at].2.push(food.name.clone());
    }
    let told = missed.into_iter().map(|(months, told, names)| {
        let [from, to] = from_to(months);
        let args = [
            ("things", Arg::Text(listed(&names))),
            ("day", Arg::Text(spoken(shot))),
            from,
            to,
        ];
        let id = if told {
            "season-out-told"
        } else {
            "season-out-memory"
        };
        say(id, &args)
    });
    told.collect()
}

/// What of the table comes on the day of the shoot itself; empty where there is
/// nothing of the sort.
pub(super) fn on_the_day_of(layout: &Layout, shot: Day) -> String {
    let mut names: Vec<String> = Vec::new();
    for item in layout.items.iter().filter(|item| on_the_day(&item.prop)) {
        if !names.contains(&item.name) {
            names.push(item.name.clone());
        }
    }
    if names.is_empty() {
        return String::new();
    }
    let args = [
        ("things", Arg::Text(listed(&names))),
        ("day", Arg::Text(spoken(shot))),
    ];
    say("dates-fresh", &args)
}
