//! Days and months counted back, against the calendar of the crate jiff.
use jiff::ToSpan as _;
use jiff::civil::{Date, date};
use planner::layout::Day;

fn ours(day: Date) -> Day {
    Day::parse(&day.to_string()).unwrap_or_else(|| panic!("{day} is a day"))
}

/// Every day from 2000 to 2199, exactly.
#[test]
fn counting_back_agrees_with_another_calendar() {
    let mut day = date(2000, 1, 1);
    let mut days = 0;
    while day.year() < 2200 {
        for months in [1, 4, 6, 11, 13] {
            let theirs = day.checked_sub(months.months()).expect("in range");
            let found = ours(day).months_before(months);
            assert_eq!(found.to_string(), theirs.to_string(), "{day} - {months} m");
        }
        for back in [0, 1, 28, 31, 60, 400] {
            let theirs = day.checked_sub(back.days()).expect("in range");
            let found = ours(day).days_before(back);
            assert_eq!(found.to_string(), theirs.to_string(), "{day} - {back} d");
        }
        days += 1;
        day = day.tomorrow().expect("in range");
    }
    assert_eq!(days, 73_049, "200 years, 49 of them leap years");
}

/// Whatever is written as a day, ours is one exactly when theirs is.
#[test]
fn days_that_there_are_not_are_refused() {
    for year in [2000, 2023, 2024, 2100, 2199] {
        for month in 0..=13 {
            for day in 0..=32 {
                let text = format!("{year:04}-{month:02}-{day:02}");
                let theirs = text.parse::<Date>().is_ok();
                assert_eq!(Day::parse(&text).is_some(), theirs, "{text}");
            }
        }
    }
}
