//! Days and months counted back, against the calendar of the crate jiff; plans
//! against Python's datetime and their calendar files against PyPI icalendar
//! (`generate_dates.py`), exactly.
use std::fmt::Write as _;

use jiff::ToSpan as _;
use jiff::civil::{Date, date};
use outputs::{Event, ics};
use outside_checks::{Table, fnv};
use planner::dates::{back_plan, entries};
use planner::layout::{Day, Layout, STEPS, open};

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
        for after in [1, 30, 59, 366, 730] {
            let theirs = day.checked_add(after.days()).expect("in range");
            let found = ours(day).days_after(after);
            assert_eq!(found.to_string(), theirs.to_string(), "{day} + {after} d");
        }
        let theirs = i32::from(day.weekday().to_monday_one_offset());
        assert_eq!(ours(day).weekday(), theirs, "the day of the week of {day}");
        let theirs = day.since(date(1970, 1, 1)).expect("in range").get_days();
        assert_eq!(ours(day).count(), theirs, "days to {day}");
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

/// The layout of a row: when it is on sale, in what, and what is told.
fn planned(row: &outside_checks::Row<'_>) -> Layout {
    let mut steps = String::new();
    for step in STEPS {
        let days = row.text(step);
        if !days.is_empty() {
            let comma = if steps.is_empty() { "" } else { "," };
            write!(steps, r#"{comma}"{step}":{days}"#).expect("text");
        }
    }
    let (on_sale, medium, title) = (row.text("on_sale"), row.text("medium"), row.text("title"));
    let text = format!(
        r#"{{"format":"overspread-layout","version":1,"id":"00000000000000d8","title":"{title}",
        "table":{{"width":1200,"depth":900}},"frame":{{"at":[600,450],"width":1050}},
        "dates":{{"on_sale":"{on_sale}","medium":"{medium}","steps":{{{steps}}}}}}}"#
    );
    open(&text).unwrap_or_else(|problems| panic!("{problems:?}"))
}

/// Every day of a plan, its day of the week, and the calendar file byte for byte
/// as icalendar read it; the moment it was made is set to a fixed one.
#[test]
fn plans_and_their_calendars_are_those_others_read() {
    let table = Table::read("dates.csv");
    let mut seen = 0;
    for row in table.rows() {
        let layout = planned(&row);
        let plan = back_plan(&layout, None).expect("a day is told");
        let days: Vec<String> = plan
            .steps
            .iter()
            .map(|step| format!("{} {}", step.day, step.day.weekday()))
            .collect();
        assert_eq!(days.join(" "), row.text("days"), "{}", row.text("on_sale"));
        let numbers = |day: Day| [day.year, day.month, day.day].map(|n| n as u16);
        let events: Vec<Event> = entries(&layout)
            .into_iter()
            .map(|entry| Event {
                uid: entry.uid,
                day: numbers(entry.day),
                next: numbers(entry.next),
                summary: entry.summary,
                description: entry.description,
            })
            .collect();
        let file = ics(&events, [2026, 1, 1, 0, 0, 0]);
        assert_eq!(
            fnv(file.as_bytes()),
            row.text("fnv"),
            "run generate_dates.py"
        );
        seen += 1;
    }
    assert_eq!(seen, 60, "plans");
}
