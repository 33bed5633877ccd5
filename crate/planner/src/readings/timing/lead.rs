//! By which day it is to be shot: months before a magazine is on sale, weeks
//! before a page is online.
use super::super::finding::{Finding, State};
use super::super::rules::TIMING_LEAD;
use super::super::study::Study;
use crate::layout::{Dates, Day, Hemisphere, Medium};
use crate::words::{Arg, say};

/// Print works at least so many months ahead: magazines tell of four to six
/// (pages of editors and of a regional food magazine).
const PRINT: i32 = 4;
/// The web works at least so many weeks ahead (common practice, no source).
const WEB: i32 = 4;

/// The last day to shoot on; none before the day it is wanted is told.
fn last_day(dates: &Dates) -> Option<Day> {
    let on_sale = dates.on_sale?;
    Some(match dates.medium {
        Medium::Print => on_sale.months_before(PRINT),
        Medium::Web => on_sale.days_before(WEB * 7),
    })
}

/// The last day to shoot on, in words; none before the day it is wanted is told.
#[must_use]
pub fn shoot_by(dates: &Dates) -> Option<String> {
    last_day(dates).map(told)
}

fn spoken(day: Day) -> Arg {
    Arg::Text(told(day))
}

fn told(day: Day) -> String {
    let months = [
        "month-1", "month-2", "month-3", "month-4", "month-5", "month-6", "month-7", "month-8",
        "month-9", "month-10", "month-11", "month-12",
    ];
    let args = [
        ("day", Arg::Text(day.day.to_string())),
        (
            "month",
            Arg::Text(say(months[(day.month - 1) as usize], &[])),
        ),
        ("year", Arg::Text(day.year.to_string())),
    ];
    say("date", &args)
}

/// The season of a month, three whole months each, as weather services count.
fn season(day: Day, hemisphere: Hemisphere) -> Arg {
    let seasons = [
        "season-winter",
        "season-spring",
        "season-summer",
        "season-autumn",
    ];
    let north = (day.month % 12 / 3) as usize;
    let own = match hemisphere {
        Hemisphere::North => north,
        Hemisphere::South => (north + 2) % 4,
    };
    Arg::Text(say(seasons[own], &[]))
}

pub(super) fn read(study: &Study<'_>) -> Option<Finding> {
    let dates = &study.layout().dates;
    let last = last_day(dates).filter(|_| study.tells_all())?;
    let (figure, id) = match dates.medium {
        Medium::Print => (PRINT, "timing-lead-print"),
        Medium::Web => (WEB, "timing-lead-web"),
    };
    let key = "timing:lead".into();
    let state = (State::Holds, 3);
    let mut f = Finding::by(&TIMING_LEAD, key, state, f64::from(figure), Vec::new());
    f.sentence = study.sentence(|| {
        let args = [
            ("day", spoken(dates.on_sale.unwrap_or(last))),
            ("by", spoken(last)),
            ("season", season(last, dates.hemisphere)),
        ];
        say(id, &args)
    });
    f.working = study.tell(|| vec![say("working-timing-lead", &[])]);
    Some(f)
}
