//! What about a plan is to be looked at again.
use super::lead::usual;
use super::spoken::spoken;
use super::{AT_FOOD, AT_SHOOT, Step};
use crate::layout::{Dates, Day, Medium};
use crate::words::{Arg, say};

/// Puts beside each step what is wrong with its day.
pub(super) fn warn(steps: &mut [Step], dates: &Dates, today: Option<Day>) {
    for n in 0..steps.len() {
        let found = of_step(steps, n, dates, today);
        steps[n].warnings = found;
    }
}

fn of_step(steps: &[Step], n: usize, dates: &Dates, today: Option<Day>) -> Vec<String> {
    let step = &steps[n];
    let mut found = Vec::new();
    let named = |other: &str| {
        [
            ("step", Arg::Text(step.name.clone())),
            ("other", Arg::Text(other.into())),
        ]
    };
    let past = today.is_some_and(|today| step.day < today);
    if past {
        found.push(say("dates-past", &named("")));
    }
    if let Some(later) = steps[..n].iter().rfind(|other| other.day > step.day) {
        found.push(say("dates-before", &named(&later.name)));
    }
    // Nobody waits for anybody on the day it is on sale, nor on a day gone by.
    if !past && !step.key.is_empty() && step.day.weekday() > 5 {
        found.push(say("dates-weekend", &named("")));
    }
    if n == AT_FOOD && step.days == 0 {
        found.push(say("dates-food-late", &[]));
    }
    let last = usual(dates).filter(|last| n == AT_SHOOT && step.day > *last);
    if let Some(last) = last {
        let id = match dates.medium {
            Medium::Print => "dates-short-print",
            Medium::Web => "dates-short-web",
        };
        found.push(say(id, &[("day", Arg::Text(spoken(last)))]));
    }
    found
}
