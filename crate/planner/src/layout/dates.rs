//! When the picture is wanted, and where in the year that is.
use serde::{Deserialize, Serialize, Serializer};
use serde_json::Value;

use super::day::Day;
use super::limits::{MAX_SEASONS, MAX_STEP_DAYS};
use super::problem::ProblemKind;
use super::read::Fields;
use super::value::Extra;

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

/// What is done by a day of its own, from the brief on.
pub const STEPS: [&str; 6] = ["brief", "approval", "props", "food", "shoot", "deliver"];

/// How many days the steps take, where the layout says so itself: each before or
/// after the shoot, the shoot before the day on sale.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StepDays {
    /// Of each of the [`STEPS`].
    pub told: [Option<i32>; STEPS.len()],
    /// Unknown fields.
    pub extra: Extra,
}

impl StepDays {
    fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    fn read(f: &mut Fields<'_>) -> Self {
        Self {
            told: STEPS.map(|step| f.int(step, 0..=MAX_STEP_DAYS)),
            extra: f.extra(),
        }
    }
}

impl Serialize for StepDays {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        let told = STEPS.into_iter().zip(self.told);
        let told = told.filter_map(|(step, days)| Some((step, Value::from(days?))));
        let extra = self
            .extra
            .iter()
            .map(|(key, value)| (key.as_str(), value.clone()));
        s.collect_map(told.chain(extra))
    }
}

/// In which months a food is in season where the picture is shot.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Season {
    /// The catalogue's id of the food.
    pub food: String,
    /// The first month and the last; it may run over the turn of the year.
    pub months: [i32; 2],
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Season {
    fn read(f: &mut Fields<'_>) -> Self {
        let food = Some(f.name("food")).filter(|food| !food.is_empty());
        let allowed = "[first, last] month, each from 1 to 12";
        let months = f.ints::<2>("months", 1..=12, allowed);
        Self {
            food: f.required("food", food, String::new()),
            months: f.required("months", months, [1, 12]).map(|n| n as i32),
            extra: f.extra(),
        }
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
    /// How many days its steps take.
    #[serde(skip_serializing_if = "StepDays::is_empty")]
    pub steps: StepDays,
    /// When foods are in season, where the layout says so itself.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub seasons: Vec<Season>,
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
        let medium = f.choice("medium").unwrap_or_default();
        let hemisphere = f.choice("hemisphere").unwrap_or_default();
        let steps = f.object("steps", StepDays::read).unwrap_or_default();
        let seasons = f.list("seasons", MAX_SEASONS, Season::read);
        let twice = |n: usize| seasons[..n].iter().any(|s| s.food == seasons[n].food);
        if let Some(n) = (1..seasons.len()).find(|n| twice(*n)) {
            let allowed = "each food once";
            f.bad(ProblemKind::Reference, "seasons", &seasons[n].food, allowed);
        }
        Self {
            on_sale,
            medium,
            hemisphere,
            steps,
            seasons,
            extra: f.extra(),
        }
    }
}
