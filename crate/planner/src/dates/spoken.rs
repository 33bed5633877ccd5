//! Days in words.
use crate::layout::Day;
use crate::words::{Arg, say};

const MONTHS: [&str; 12] = [
    "month-1", "month-2", "month-3", "month-4", "month-5", "month-6", "month-7", "month-8",
    "month-9", "month-10", "month-11", "month-12",
];
const WEEKDAYS: [&str; 7] = [
    "weekday-1",
    "weekday-2",
    "weekday-3",
    "weekday-4",
    "weekday-5",
    "weekday-6",
    "weekday-7",
];

/// The name of a month, from 1.
pub(super) fn month(month: i32) -> String {
    say(MONTHS[(month - 1).rem_euclid(12) as usize], &[])
}

/// A day in words.
#[must_use]
pub fn spoken(day: Day) -> String {
    say("date", &args(day))
}

/// A day in words, its day of the week first.
pub(super) fn with_weekday(day: Day) -> String {
    say("date-of-week", &args(day))
}

fn args(day: Day) -> [(&'static str, Arg); 4] {
    let weekday = WEEKDAYS[(day.weekday() - 1) as usize];
    [
        ("weekday", Arg::Text(say(weekday, &[]))),
        ("day", Arg::Text(day.day.to_string())),
        ("month", Arg::Text(month(day.month))),
        ("year", Arg::Text(day.year.to_string())),
    ]
}
