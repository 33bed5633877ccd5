//! What is shot to be on the safe side while all stands, and what becomes of
//! everything after.
use super::food::food;
use super::list::{List, TICK};
use super::pull::pull;
use crate::layout::{ExposureKind, Layout, Source};
use crate::readings::insurance;
use crate::scene::exposure_name;
use crate::words::say;

/// Exposures that cost little and may save the day.
pub(super) fn insurance_list(layout: &Layout) -> List {
    let columns = [
        ("col-exposure", 104),
        ("col-planned", 40),
        ("col-file", 30),
        ("col-ok", 12),
    ];
    let mut list = List::of("after-insurance", &columns);
    let mut row = |name: String, planned: &str| {
        list.rows
            .push(vec![name, say(planned, &[]), String::new(), TICK.into()]);
    };
    let own = layout.exposures.iter();
    for own in own.filter(|e| e.kind != ExposureKind::Hands) {
        row(exposure_name(layout, own.id), "after-planned");
    }
    for (_, worth) in insurance(layout) {
        row(worth, "after-worth");
    }
    list
}

/// Food nobody eats any more.
pub(super) fn uneaten_list(layout: &Layout) -> List {
    let columns = [
        ("col-number", 18),
        ("col-food", 60),
        ("col-count", 14),
        ("col-allergens", 80),
        ("col-away", 18),
    ];
    let mut list = List::of("after-food", &columns);
    for dish in food(layout) {
        list.rows.push(vec![
            dish.numbers,
            dish.name,
            (dish.count + usize::from(dish.spare)).to_string(),
            dish.allergens,
            TICK.into(),
        ]);
    }
    list
}

/// Where everything goes back to.
pub(super) fn back_list(layout: &Layout) -> List {
    let columns = [
        ("col-number", 18),
        ("col-item", 46),
        ("col-count", 12),
        ("col-back-to", 46),
        ("col-shelf", 38),
        ("col-washed", 15),
        ("col-back", 12),
    ];
    let mut list = List::of("after-back", &columns);
    for row in pull(layout, &[]) {
        let to = row.source.map(|source| match source {
            Source::Own => "back-own",
            Source::Hire => "back-hire",
            Source::Buy => "back-buy",
            Source::Borrow => "back-borrow",
            Source::Client => "back-client",
        });
        list.rows.push(vec![
            row.numbers,
            row.name,
            (row.count + usize::from(row.spare)).to_string(),
            to.map(|id| say(id, &[])).unwrap_or_default(),
            row.shelf,
            TICK.into(),
            TICK.into(),
        ]);
    }
    list
}
