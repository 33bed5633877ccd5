//! What would part an edge again, in a stylist's order: turn the better face
//! up; slip paper, napkin or board under; swap the vessel; move it; change the
//! surface last.
use super::finding::Remedy;
use super::remedies::{self, Try};
use super::separation::{is_pressed, lost_share};
use super::separation_findings;
use super::study::{Study, Words};
use crate::colour::Shade;
use crate::layout::Id;
use crate::scene::PartKind;
use crate::words::percent;

/// A change that takes less than this part of the loss away is not worth
/// making. Our choice.
const WORTH: f64 = 0.25;
/// Outline lost elsewhere may grow by this much, mm: the lip of a dish.
const ELSEWHERE: f64 = 60.0;

/// The first change worth making for these parts, by what the finding of this
/// key will then say.
pub(super) fn first_worth(
    study: &Study<'_>,
    key: &str,
    parts: &[(Id, PartKind)],
    tries: &[&dyn Fn() -> Option<Try>],
) -> Option<Remedy> {
    let before = lost_share(study, parts);
    let around = all_lost(study);
    let (attempt, after) = study.first_that(key, tries, &|attempt| {
        let made = attempt()?;
        let then = study.changed(&made.after);
        let after = figure(&then, key, parts);
        let worth = after <= before * (1.0 - WORTH) && all_lost(&then) <= around + ELSEWHERE;
        worth.then_some(after)
    })?;
    let told = ("predicted", [before, after].map(percent));
    Some(attempt()?.remedy(study, after * 100.0, told))
}

/// Lost share a finding tells of: of these parts when it has nothing to say.
/// Parts that are cured leave it, so it may be about fewer.
fn figure(study: &Study<'_>, key: &str, parts: &[(Id, PartKind)]) -> f64 {
    study.say_only(Words::None);
    let found = separation_findings::read(study, false);
    let same = found.into_iter().find(|f| f.key == key);
    same.map_or_else(|| lost_share(study, parts), |f| f.figure / 100.0)
}

/// Length of outline lost by all that the look presses, mm.
fn all_lost(study: &Study<'_>) -> f64 {
    let walks = study.walks_by_number().iter();
    let pressed = walks.filter(|w| is_pressed(study, w));
    pressed.map(|w| w.lost * w.length).sum()
}

/// What helps an outline against what it lies on.
pub(super) fn outline(study: &Study<'_>, key: &str, parts: &[(Id, PartKind)]) -> Option<Remedy> {
    let mut owners: Vec<Id> = parts.iter().map(|p| p.0).collect();
    owners.dedup();
    let chief = *owners.first()?;
    let alone = owners.len() == 1;
    let one = |make: fn(&Study<'_>, Id) -> Option<Try>| alone.then(|| make(study, chief)).flatten();
    let pieces = &study.scene().pieces;
    let walks = study.walks_by_number().iter();
    let walked = walks.map(|w| &pieces[w.piece]);
    let own = walked.filter(|p| parts.contains(&(p.owner, p.part)));
    let colours: Vec<&[Shade]> = own.map(|p| p.shades.as_slice()).collect();
    first_worth(
        study,
        key,
        parts,
        &[
            &|| remedies::better_faces(study, &owners),
            &|| remedies::lay_linen(study),
            &|| one(remedies::napkin_under),
            &|| one(remedies::paper_under),
            &|| one(remedies::board_under),
            &|| one(remedies::pale_vessel),
            &|| remedies::onto_linen(study, chief),
            &|| remedies::best_surface(study, &colours),
        ],
    )
}

/// What helps foods against the insides of their dishes.
pub(super) fn inside(
    study: &Study<'_>,
    key: &str,
    foods: &[(Id, PartKind)],
    dishes: &[Id],
) -> Option<Remedy> {
    let turned: Vec<Id> = foods.iter().map(|f| f.0).collect();
    first_worth(
        study,
        key,
        foods,
        &[&|| remedies::better_faces(study, &turned), &|| {
            remedies::pale_inside(study, dishes)
        }],
    )
}

/// What helps a sleeve.
pub(super) fn sleeve(study: &Study<'_>, key: &str, hands: &[Id]) -> Option<Remedy> {
    let roll = || remedies::roll_sleeves(study, hands);
    let parts: Vec<_> = hands.iter().map(|h| (*h, PartKind::Sleeve)).collect();
    first_worth(study, key, &parts, &[&roll])
}
