//! A day of the civil calendar.
use std::fmt;

use serde::{Serialize, Serializer};

/// The years a day may lie in.
const YEARS: [i32; 2] = [2000, 2199];

/// A day of the civil calendar, written `YYYY-MM-DD`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Day {
    /// The year.
    pub year: i32,
    /// The month, from 1.
    pub month: i32,
    /// The day of the month, from 1.
    pub day: i32,
}

/// Days in 400 years, and from 1 March of the year 0 to 1 January 1970.
const IN_400: i32 = 146_097;
const BEFORE_1970: i32 = 719_468;

/// How many days a month has, by the Gregorian rule.
const fn days_in(year: i32, month: i32) -> i32 {
    match month {
        4 | 6 | 9 | 11 => 30,
        2 if year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) => 29,
        2 => 28,
        _ => 31,
    }
}

impl Day {
    /// The day this text tells, exactly as it is written; none for one that
    /// there is not, or before 2000 or after 2199.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let bytes = text.as_bytes();
        let digits = |n: usize| matches!(n, 4 | 7) == (bytes[n] == b'-');
        let shape = bytes.len() == 10
            && (0..10).all(|n| digits(n) && (bytes[n] == b'-' || bytes[n].is_ascii_digit()));
        if !shape {
            return None;
        }
        let number = |from: usize, to: usize| {
            bytes[from..to]
                .iter()
                .fold(0, |n, b| n * 10 + i32::from(b - b'0'))
        };
        let (year, month, day) = (number(0, 4), number(5, 7), number(8, 10));
        let sound = (YEARS[0]..=YEARS[1]).contains(&year)
            && (1..=12).contains(&month)
            && (1..=days_in(year, month)).contains(&day);
        sound.then_some(Self { year, month, day })
    }

    /// The same day of the month so many months before, or the last of that
    /// month where it is shorter.
    #[must_use]
    pub const fn months_before(self, months: i32) -> Self {
        let all = self.year * 12 + self.month - 1 - months;
        let (year, month) = (all.div_euclid(12), all.rem_euclid(12) + 1);
        let last = days_in(year, month);
        let day = if self.day < last { self.day } else { last };
        Self { year, month, day }
    }

    /// So many days before.
    #[must_use]
    pub const fn days_before(self, days: i32) -> Self {
        Self::counted(self.count() - days)
    }

    /// So many days after.
    #[must_use]
    pub const fn days_after(self, days: i32) -> Self {
        Self::counted(self.count() + days)
    }

    /// The day so many days after 1 January 1970.
    #[must_use]
    pub const fn counted(days: i32) -> Self {
        // Years begin in March here, so that a leap day is the last of its
        // year; 400 of them always have as many days.
        let days = days + BEFORE_1970;
        let (era, of_era) = (days.div_euclid(IN_400), days.rem_euclid(IN_400));
        let year = (of_era - of_era / 1_460 + of_era / 36_524 - of_era / 146_096) / 365;
        let of_year = of_era - (365 * year + year / 4 - year / 100);
        let month = (5 * of_year + 2) / 153;
        let late = if month < 10 { 0 } else { 1 };
        Self {
            year: era * 400 + year + late,
            month: (month + 2) % 12 + 1,
            day: of_year - (153 * month + 2) / 5 + 1,
        }
    }

    /// How many days it is after 1 January 1970.
    #[must_use]
    pub const fn count(self) -> i32 {
        let year = if self.month > 2 {
            self.year
        } else {
            self.year - 1
        };
        let (era, of_era) = (year.div_euclid(400), year.rem_euclid(400));
        let month = (self.month + 9) % 12;
        let of_year = (153 * month + 2) / 5 + self.day - 1;
        era * IN_400 + 365 * of_era + of_era / 4 - of_era / 100 + of_year - BEFORE_1970
    }

    /// The day of the week, 1 for Monday to 7 for Sunday.
    #[must_use]
    pub const fn weekday(self) -> i32 {
        // 1 January 1970 was a Thursday.
        (self.count() + 3).rem_euclid(7) + 1
    }
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { year, month, day } = self;
        write!(f, "{year:04}-{month:02}-{day:02}")
    }
}

impl Serialize for Day {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        s.collect_str(self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> Day {
        Day::parse(text).expect("a day")
    }

    #[test]
    fn days_that_there_are_not_are_refused() {
        for text in [
            "2026-02-29",
            "2100-02-29",
            "2026-13-01",
            "2026-00-10",
            "2026-04-31",
            "2026-1-01",
            "1999-12-31",
            "2200-01-01",
            "2026/09/01",
            "20260-9-01",
            "-026-09-01",
            "",
            "é026-09-01",
        ] {
            assert_eq!(Day::parse(text), None, "{text}");
        }
        assert_eq!(day("2024-02-29").to_string(), "2024-02-29");
    }

    #[test]
    fn months_before_end_with_the_month() {
        let before = |text: &str, months: i32| day(text).months_before(months).to_string();
        assert_eq!(before("2026-09-01", 4), "2026-05-01");
        assert_eq!(before("2026-06-30", 4), "2026-02-28");
        assert_eq!(before("2028-06-30", 4), "2028-02-29");
        assert_eq!(before("2026-02-10", 4), "2025-10-10");
        assert_eq!(day("2026-03-01").days_before(28).to_string(), "2026-02-01");
        assert_eq!(day("2026-01-28").days_before(28).to_string(), "2025-12-31");
    }

    #[test]
    fn days_are_counted_across_leap_days_and_centuries() {
        assert_eq!(Day::counted(0).to_string(), "1970-01-01");
        assert_eq!(
            (day("2000-02-29").count(), day("2000-02-29").weekday()),
            (11_016, 2)
        );
        let after = |text: &str, days: i32| day(text).days_after(days).to_string();
        assert_eq!(after("2027-12-31", 60), "2028-02-29");
        assert_eq!(after("2100-02-28", 1), "2100-03-01");
        assert_eq!(after("2000-01-01", -730), "1998-01-01");
        assert_eq!(after("2199-12-31", 730), "2201-12-31");
        assert_eq!(day("2026-11-26").weekday(), 4, "a Thursday");
    }
}
