//! How long before it is on sale a picture is shot.
use crate::layout::{Dates, Day, Medium};

use super::AT_SHOOT;

/// Print works at least so many months ahead: magazines tell of four to six
/// (pages of editors and of a regional food magazine, such as
/// therivergroup.co.uk/what-we-think/christmas-july-magazine-editing-seasons).
const PRINT: i32 = 4;
/// The web works at least so many weeks ahead (common practice, no source).
const WEB: i32 = 4;

/// The last day that is usual to shoot on.
pub(super) fn usual(dates: &Dates) -> Option<Day> {
    let on_sale = dates.on_sale?;
    Some(match dates.medium {
        Medium::Print => on_sale.months_before(PRINT),
        Medium::Web => on_sale.days_before(WEB * 7),
    })
}

/// What the usual lead rests on.
pub(super) const fn ground(medium: Medium) -> &'static str {
    match medium {
        Medium::Print => "dates-usual-print",
        Medium::Web => "dates-usual",
    }
}

/// How many days that is before the day it is on sale; none before that is told.
pub(super) fn lead(dates: &Dates) -> Option<i32> {
    Some(dates.on_sale?.count() - usual(dates)?.count())
}

/// The day of the shoot, as told or the last that is usual; none before the day
/// it is on sale is told.
#[must_use]
pub fn shot_on(dates: &Dates) -> Option<Day> {
    match dates.steps.told[AT_SHOOT] {
        Some(days) => Some(dates.on_sale?.days_before(days)),
        None => usual(dates),
    }
}
