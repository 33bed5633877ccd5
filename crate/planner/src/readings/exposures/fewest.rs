//! What can be shot together when more than one person is on set.
use super::super::finding::{Finding, State};
use super::super::rules::EXPOSURE_FEWEST;
use super::super::study::Study;
use super::clash;
use super::states::called;
use crate::exposures::{fewest, state_of};
use crate::layout::{Exposure, ExposureKind, Id, Layout};
use crate::words::{Arg, listed, say};

/// Whether two exposures need the same person, or a thing in two states.
fn at_odds(layout: &Layout, a: &Exposure, b: &Exposure) -> bool {
    let hands = |e: Id| layout.hands.iter().filter(move |h| h.exposure == e);
    let same = hands(a.id).any(|one| hands(b.id).any(|other| one.person == other.person));
    let told = a.states.iter().chain(&b.states);
    same || told
        .map(|s| s.item)
        .any(|item| state_of(a, item) != state_of(b, item))
}

/// How few exposures the people of the layout can shoot, when that is fewer
/// than are planned; told when all is.
pub(super) fn read(study: &Study<'_>) -> Option<Finding> {
    let layout = study.layout();
    if !study.tells_all() {
        return None;
    }
    let with_hands = |e: &&Exposure| e.kind == ExposureKind::Hands;
    let all: Vec<&Exposure> = layout.exposures.iter().filter(with_hands).collect();
    let apart = clash::all(study);
    let clashing = |a: Id, b: Id| {
        let both = [a, b];
        apart
            .iter()
            .any(|c| both.contains(&c.first) && both.contains(&c.second))
    };
    let odds =
        |a: usize, b: usize| at_odds(layout, all[a], all[b]) || clashing(all[a].id, all[b].id);
    let people = layout.people.len();
    let found = fewest(all.len(), people, &odds)?;
    if found.len() >= all.len() {
        return None;
    }
    let about: Vec<Id> = all.iter().map(|e| e.id).collect();
    let figure = found.len() as f64;
    let key = "exposures:fewest".into();
    let mut f = Finding::by(&EXPOSURE_FEWEST, key, (State::Holds, 3), figure, about);
    f.sentence = study.sentence(|| {
        let together = found.iter().filter(|own| own.len() > 1).map(|own| {
            let names: Vec<String> = own.iter().map(|n| called(layout, all[*n])).collect();
            listed(&names)
        });
        let args = [
            ("people", Arg::Text(people.to_string())),
            ("count", Arg::Text(found.len().to_string())),
            ("together", Arg::Text(listed(&together.collect::<Vec<_>>()))),
        ];
        say("exposure-fewest", &args)
    });
    f.working = study.tell(|| vec![say("working-exposure-fewest", &[])]);
    Some(f)
}
