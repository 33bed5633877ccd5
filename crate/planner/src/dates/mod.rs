//! The plan back from the day the picture is on sale: by which day the brief, the
//! approved layout, the props, the food, the shoot and the finished pictures are
//! due, and what is to be looked at again.
//!
//! The core has no clock: whoever asks says which day is today. A figure the
//! layout does not tell is the usual one, and says what it rests on.
//!
//! ```
//! use planner::dates::back_plan;
//! use planner::layout::{Day, Layout, LayoutId};
//!
//! let mut layout = Layout::empty(LayoutId(1));
//! assert!(back_plan(&layout, None).is_none(), "no day on sale, no plan");
//! layout.dates.on_sale = Day::parse("2027-11-02");
//! let plan = back_plan(&layout, None).expect("a day is told");
//! let shoot = plan.steps.iter().find(|step| step.key == "shoot").expect("a step");
//! assert_eq!(shoot.spoken, "Friday, 2 July 2027", "print is shot four months ahead");
//! ```
mod lead;
mod season;
mod spoken;
#[cfg(test)]
mod tests;
mod warned;

pub use lead::shot_on;
pub use season::Seasonal;
pub use spoken::spoken;

use serde::Serialize;

use crate::layout::{Day, Layout, STEPS};
use crate::words::{Arg, say};

/// Days from the brief to the shoot: a month, as for festive stories briefed in
/// May and shot in June (a photographer's account,
/// photographmyproduct.co.uk/blog/when-to-book-christmas-product-photography).
const BRIEF: i32 = 30;
/// Days before the shoot by which the layout is approved, props are pulled and
/// food is ordered, and after it by which pictures are delivered: common practice,
/// no source. That all but what is fresh is in the house the day before is a food
/// stylist's account, issuhub.com/view/index/5489?pageIndex=27.
const APPROVAL: i32 = 14;
const PROPS: i32 = 7;
const FOOD: i32 = 3;
const DELIVER: i32 = 14;

/// Where the steps that have a say of their own stand in [`STEPS`].
const AT_PROPS: usize = 2;
const AT_FOOD: usize = 3;
const AT_SHOOT: usize = 4;
const AT_DELIVER: usize = 5;

/// A step of the plan.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Step {
    /// The word it goes by in a layout's file; empty for the day on sale.
    pub key: &'static str,
    /// What it is called.
    pub name: String,
    /// By which day.
    pub day: Day,
    /// That day in words, with the day of the week.
    pub spoken: String,
    /// What its days are counted from; empty for the day on sale.
    pub counted: String,
    /// Its figure in days, as told or as usual.
    pub days: i32,
    /// Whether the layout tells it.
    pub told: bool,
    /// The usual figure and what it rests on; empty for the day on sale.
    pub ground: String,
    /// What comes with it; may be empty.
    pub note: String,
    /// What to look at again.
    pub warnings: Vec<String>,
}

/// The plan.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct BackPlan {
    /// From the brief to the day on sale.
    pub steps: Vec<Step>,
    /// The foods and their months.
    pub foods: Vec<Seasonal>,
    /// Which of them are out of season on the day of the shoot.
    pub warnings: Vec<String>,
    /// The names of the months, to choose from.
    pub months: Vec<String>,
}

/// A day for a calendar.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Entry {
    /// What tells it from all others, the same each time it is made.
    pub uid: String,
    /// The day.
    pub day: Day,
    /// The day after.
    pub next: Day,
    /// What it is called.
    pub summary: String,
    /// What is to be known about it.
    pub description: String,
}

/// A step's name, what its days are counted from, its usual figure and what says
/// so.
const fn plain(step: usize) -> (&'static str, &'static str, i32, &'static str) {
    match step {
        0 => (
            "dates-brief",
            "dates-before-shoot",
            BRIEF,
            "dates-usual-brief",
        ),
        1 => (
            "dates-approval",
            "dates-before-shoot",
            APPROVAL,
            "dates-usual",
        ),
        AT_PROPS => ("dates-props", "dates-before-shoot", PROPS, "dates-usual"),
        AT_FOOD => ("dates-food", "dates-before-shoot", FOOD, "dates-usual-food"),
        AT_SHOOT => ("dates-shoot", "dates-before-sale", 0, ""),
        _ => ("dates-deliver", "dates-after-shoot", DELIVER, "dates-usual"),
    }
}

/// The day of one of the [`STEPS`], its figure in days and the usual one.
fn due(layout: &Layout, step: usize) -> Option<(Day, i32, i32)> {
    let dates = &layout.dates;
    let on_sale = dates.on_sale?;
    let (_, _, usual, _) = plain(step);
    let usual = if step == AT_SHOOT {
        lead::lead(dates)?
    } else {
        usual
    };
    let days = dates.steps.told[step].unwrap_or(usual);
    let day = match step {
        AT_SHOOT => on_sale.days_before(days),
        AT_DELIVER => shot_on(dates)?.days_after(days),
        _ => shot_on(dates)?.days_before(days),
    };
    Some((day, days, usual))
}

/// The plan, seen from `today`; none before the day on sale is told.
#[must_use]
pub fn back_plan(layout: &Layout, today: Option<Day>) -> Option<BackPlan> {
    let dates = &layout.dates;
    let mut steps = Vec::new();
    for (n, key) in STEPS.into_iter().enumerate() {
        let (day, days, usual) = due(layout, n)?;
        let (name, counted, _, ground) = plain(n);
        let ground = if n == AT_SHOOT {
            lead::ground(dates.medium)
        } else {
            ground
        };
        steps.push(Step {
            key,
            name: say(name, &[]),
            day,
            spoken: spoken::with_weekday(day),
            counted: say(counted, &[]),
            days,
            told: dates.steps.told[n].is_some(),
            ground: say(ground, &[("days", Arg::Text(usual.to_string()))]),
            note: String::new(),
            warnings: Vec::new(),
        });
    }
    let on_sale = dates.on_sale?;
    steps.push(Step {
        key: "",
        name: say("dates-on-sale", &[]),
        day: on_sale,
        spoken: spoken::with_weekday(on_sale),
        counted: String::new(),
        days: 0,
        told: true,
        ground: String::new(),
        note: String::new(),
        warnings: Vec::new(),
    });
    steps[AT_FOOD].note = season::on_the_day_of(layout, steps[AT_SHOOT].day);
    warned::warn(&mut steps, dates, today);
    let foods = season::foods(layout);
    let warnings = season::out_of_season(&foods, steps[AT_SHOOT].day);
    Some(BackPlan {
        steps,
        foods,
        warnings,
        months: (1..=12).map(spoken::month).collect(),
    })
}

/// By which day props are pulled, in words; none before the day on sale is told.
#[must_use]
pub fn props_by(layout: &Layout) -> Option<String> {
    due(layout, AT_PROPS).map(|(day, ..)| spoken(day))
}

/// The plan as days of a calendar; empty before the day on sale is told.
#[must_use]
pub fn entries(layout: &Layout) -> Vec<Entry> {
    let steps = back_plan(layout, None).map_or_else(Vec::new, |plan| plan.steps);
    let each = steps.into_iter().map(|step| {
        let key = if step.key.is_empty() {
            "on-sale"
        } else {
            step.key
        };
        let title = layout.head.title.clone();
        let summary = [("step", Arg::Text(step.name)), ("title", Arg::Name(title))];
        let told = [
            ("counted", Arg::Text(step.counted)),
            ("days", Arg::Text(step.days.to_string())),
            ("ground", Arg::Text(step.ground)),
        ];
        let description = match (step.key.is_empty(), step.told) {
            (true, _) => String::new(),
            (_, true) => say("dates-entry-told", &told),
            _ => say("dates-entry", &told),
        };
        Entry {
            uid: [&layout.id.to_string(), key, "overspread"].join("-"),
            day: step.day,
            next: step.day.days_after(1),
            summary: say("dates-event", &summary),
            description,
        }
    });
    each.collect()
}
