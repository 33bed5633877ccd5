//! When the picture is wanted, and where in the year that is.
use std::fmt;

use serde::{Deserialize, Serialize, Serializer};

use super::problem::ProblemKind;
use super::read::Fields;
use super::value::Extra;

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
        let mut to = self;
        let mut left = days;
        while left >= to.day {
            left -= to.day;
            to = Self { day: 31, ..to }.months_before(1);
        }
        Self {
            day: to.day - left,
            ..to
        }
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

/// What the picture is published in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Medium {
    /// On paper.
    #[default]
    Print,
    /// On screens.
    Web,
}

impl Medium {
    #[expect(clippy::trivially_copy_pass_by_ref, reason = "serde gives a reference")]
    fn is_print(&self) -> bool {
        *self == Self::Print
    }
}

/// Which half of the earth it is shot on, which says what season a month is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Hemisphere {
    /// January is in winter.
    #[default]
    North,
    /// January is in summer.
    South,
}

impl Hemisphere {
    #[expect(clippy::trivially_copy_pass_by_ref, reason = "serde gives a reference")]
    fn is_north(&self) -> bool {
        *self == Self::North
    }
}

/// When the picture is wanted.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Dates {
    /// The day it is on sale or goes online.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub on_sale: Option<Day>,
    /// What it is published in.
    #[serde(skip_serializing_if = "Medium::is_print")]
    pub medium: Medium,
    /// Which half of the earth it is shot on.
    #[serde(skip_serializing_if = "Hemisphere::is_north")]
    pub hemisphere: Hemisphere,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Dates {
    /// Whether nothing is told.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        let text = f.name("on_sale");
        let on_sale = Day::parse(&text);
        if on_sale.is_none() && !text.is_empty() {
            let allowed = "a day such as 2026-09-01, from 2000 to 2199";
            f.bad(ProblemKind::Value, "on_sale", &text, allowed);
        }
        Self {
            on_sale,
            medium: f.choice("medium").unwrap_or_default(),
            hemisphere: f.choice("hemisphere").unwrap_or_default(),
            extra: f.extra(),
        }
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
}
