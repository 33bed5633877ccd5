//! Days as a calendar file (RFC 5545).
use ics::parameters::Value;
use ics::properties::{Description, DtEnd, DtStart, Summary, Transp};
use ics::{ICalendar, escape_text};

/// A day with something to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Event {
    /// What tells it from all others, for ever: a calendar that takes the file
    /// in again moves the event instead of adding a second one.
    pub uid: String,
    /// Year, month and day.
    pub day: [u16; 3],
    /// The day after, which ends it.
    pub next: [u16; 3],
    /// What it is called.
    pub summary: String,
    /// What is to be known about it; may be empty.
    pub description: String,
}

/// When the file was made: year, month, day, hour, minute and second of UTC.
pub type Stamp = [u16; 6];

/// Days as a calendar, in the order given. They leave the day free.
#[must_use]
pub fn ics(events: &[Event], stamp: Stamp) -> String {
    let [year, month, day, hour, minute, second] = stamp;
    let stamp = format!("{year:04}{month:02}{day:02}T{hour:02}{minute:02}{second:02}Z");
    let mut calendar = ICalendar::new("2.0", "-//Overspread//Dates//EN");
    for event in events {
        let mut entry = ics::Event::new(escape_text(&event.uid).into_owned(), stamp.clone());
        let mut start = DtStart::new(date(event.day));
        start.add(Value::DATE);
        entry.push(start);
        let mut end = DtEnd::new(date(event.next));
        end.add(Value::DATE);
        entry.push(end);
        entry.push(Summary::new(escape_text(&event.summary).into_owned()));
        if !event.description.is_empty() {
            entry.push(Description::new(
                escape_text(&event.description).into_owned(),
            ));
        }
        entry.push(Transp::new("TRANSPARENT"));
        calendar.add_event(entry);
    }
    calendar.to_string()
}

fn date([year, month, day]: [u16; 3]) -> String {
    format!("{year:04}{month:02}{day:02}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_day_is_whole_and_its_words_are_escaped() {
        let shoot = Event {
            uid: "5e2f-shoot".into(),
            day: [2027, 4, 30],
            next: [2027, 5, 1],
            summary: "Shoot; mussels, bread".into(),
            description: "Two lines\nand a back\\slash".into(),
        };
        let text = ics(&[shoot], [2026, 11, 26, 8, 5, 9]);
        for line in [
            "BEGIN:VCALENDAR\r\nVERSION:2.0\r\n",
            "DTSTAMP:20261126T080509Z\r\n",
            "UID:5e2f-shoot\r\n",
            "DTSTART;VALUE=DATE:20270430\r\n",
            "DTEND;VALUE=DATE:20270501\r\n",
            "SUMMARY:Shoot\\; mussels\\, bread\r\n",
            "DESCRIPTION:Two lines\\nand a back\\\\slash\r\n",
        ] {
            assert!(text.contains(line), "{line:?} in {text}");
        }
    }
}
