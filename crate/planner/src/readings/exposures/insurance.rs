//! Exposures that cost little while all stands, each with what it would save.
use super::super::cautions::is_broth;
use super::super::finding::{Finding, Remedy, State};
use super::super::rules::EXPOSURE_INSURANCE;
use super::super::study::Study;
use crate::commands::add_exposure;
use crate::edit::Edit;
use crate::layout::{ExposureKind, Finish, Item, Layout};
use crate::words::{Arg, listed, say};

/// More things than this are not named as the reason. Our choice.
const NAMED: usize = 3;

/// The kinds this table has a use for and none of yet, each with its reason.
fn missing(study: &Study<'_>) -> Vec<(ExposureKind, String)> {
    let layout = study.layout();
    let has = |kind| layout.exposures.iter().any(|e| e.kind == kind);
    let named = |is: &dyn Fn(&Item) -> bool| {
        let mut names: Vec<String> = Vec::new();
        for item in layout.items.iter().filter(|i| is(i)) {
            if !names.contains(&item.name) {
                names.push(item.name.clone());
            }
        }
        names.truncate(NAMED);
        names
    };
    let shiny = named(&|i| matches!(i.finish, Finish::Gloss | Finish::Liquid | Finish::Clear));
    let steaming = named(&is_broth);
    let mut out = Vec::new();
    let mut want = |kind, wanted: bool, reason: &str, things: &[String]| {
        if wanted && !has(kind) {
            let things = ("things", Arg::Text(listed(things)));
            out.push((kind, say(reason, &[things])));
        }
    };
    want(ExposureKind::Card, true, "insure-card", &[]);
    want(ExposureKind::Empty, true, "insure-empty", &[]);
    let mirrors = !shiny.is_empty();
    want(ExposureKind::NoGlare, mirrors, "insure-no-glare", &shiny);
    want(
        ExposureKind::Steam,
        !steaming.is_empty(),
        "insure-steam",
        &steaming,
    );
    want(ExposureKind::Insurance, true, "insure-loose", &[]);
    out
}

/// The kinds of exposure a table has a use for and none of yet, each with its
/// reason.
#[must_use]
pub fn insurance(layout: &Layout) -> Vec<(ExposureKind, String)> {
    missing(&Study::new(layout))
}

/// What else is worth an exposure on this table; told when all is.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Option<Finding> {
    let layout = study.layout();
    if !study.tells_all() || layout.hands.is_empty() {
        return None;
    }
    let kinds = missing(study);
    kinds.first()?;
    let key = "exposures:insurance".into();
    let state = (State::Holds, 3);
    let mut f = Finding::by(
        &EXPOSURE_INSURANCE,
        key,
        state,
        kinds.len() as f64,
        Vec::new(),
    );
    f.sentence = study.sentence(|| {
        let reasons: Vec<String> = kinds.iter().map(|k| k.1.clone()).collect();
        say(
            "exposure-insurance-worth",
            &[("kinds", Arg::Text(listed(&reasons)))],
        )
    });
    f.working = study.tell(|| vec![say("working-exposure-insurance", &[])]);
    if settled {
        f.remedy = study.remedy(&f.key, &|| added(study, &kinds));
    }
    Some(f)
}

fn added(study: &Study<'_>, kinds: &[(ExposureKind, String)]) -> Option<Remedy> {
    let mut after: Layout = study.layout().clone();
    for (kind, _) in kinds {
        let act = add_exposure(&after, *kind).ok()?;
        act.edit.apply_checked(&mut after).ok()?;
    }
    let left = missing(&Study::new(&after)).len() as f64;
    Some(Remedy {
        act: say("act-insure", &[]),
        predicted: say("predicted-insured", &[]),
        after: left,
        edit: Edit::between(study.layout(), &after),
    })
}
