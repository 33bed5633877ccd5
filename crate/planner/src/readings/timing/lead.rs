//! By which day it is to be shot: months before a magazine is on sale, weeks
//! before a page is online.
use super::super::finding::{Finding, State};
use super::super::rules::TIMING_LEAD;
use super::super::study::Study;
use crate::dates::{shot_on, spoken};
use crate::layout::{Day, Hemisphere, Medium};
use crate::words::{Arg, say};

fn told(day: Day) -> Arg {
    Arg::Text(spoken(day))
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
    let last = shot_on(dates).filter(|_| study.tells_all())?;
    let days = dates.on_sale?.count() - last.count();
    let id = match dates.medium {
        Medium::Print => "timing-lead-print",
        Medium::Web => "timing-lead-web",
    };
    let key = "timing:lead".into();
    let state = (State::Holds, 3);
    let mut f = Finding::by(&TIMING_LEAD, key, state, f64::from(days), Vec::new());
    f.sentence = study.sentence(|| {
        let args = [
            ("day", told(dates.on_sale.unwrap_or(last))),
            ("by", told(last)),
            ("season", season(last, dates.hemisphere)),
        ];
        say(id, &args)
    });
    f.working = study.tell(|| vec![say("working-timing-lead", &[])]);
    Some(f)
}
