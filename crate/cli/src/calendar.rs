//! The dates of a layout as a calendar, and what is to be looked at again.
use std::time::{SystemTime, UNIX_EPOCH};

use outputs::{Event, Stamp, ics};
use planner::dates::{Entry, back_plan, entries};
use planner::layout::{Day, Layout};

const DAY: u64 = 86_400;

/// This moment in UTC: its day, and year to second.
fn now() -> (Day, Stamp) {
    let since = SystemTime::now().duration_since(UNIX_EPOCH);
    let seconds = since.map_or(0, |since| since.as_secs());
    let day = Day::counted(i32::try_from(seconds / DAY).unwrap_or(0));
    let [year, month, date] = numbers(day);
    let of_day = seconds % DAY;
    let clock = [of_day / 3_600, of_day / 60 % 60, of_day % 60];
    let [hour, minute, second] = clock.map(|n| u16::try_from(n).unwrap_or(0));
    (day, [year, month, date, hour, minute, second])
}

fn numbers(day: Day) -> [u16; 3] {
    [day.year, day.month, day.day].map(|n| u16::try_from(n).unwrap_or(0))
}

fn event(entry: Entry) -> Event {
    Event {
        uid: entry.uid,
        day: numbers(entry.day),
        next: numbers(entry.next),
        summary: entry.summary,
        description: entry.description,
    }
}

/// The calendar, and what is to be looked at again as seen from today; none
/// before the day on sale is told.
pub(crate) fn calendar(layout: &Layout) -> Option<(Vec<u8>, Vec<String>)> {
    let (today, stamp) = now();
    let plan = back_plan(layout, Some(today))?;
    let events: Vec<Event> = entries(layout).into_iter().map(event).collect();
    let steps = plan.steps.into_iter().flat_map(|step| step.warnings);
    let warnings = steps.chain(plan.warnings).collect();
    Some((ics(&events, stamp).into_bytes(), warnings))
}

#[cfg(test)]
mod tests {
    use super::*;
    use planner::layout::LayoutId;

    #[test]
    fn a_layout_without_a_day_has_no_calendar() {
        let mut layout = Layout::empty(LayoutId(7));
        assert_eq!(calendar(&layout), None);
        layout.dates.on_sale = Day::parse("2000-02-29");
        let (bytes, warnings) = calendar(&layout).expect("a day is told");
        let text = String::from_utf8(bytes).expect("UTF-8");
        assert!(text.contains("DTSTART;VALUE=DATE:20000229\r\nDTEND;VALUE=DATE:20000301\r\n"));
        assert_eq!(warnings.len(), 7, "all of it is past: {warnings:?}");
    }
}
