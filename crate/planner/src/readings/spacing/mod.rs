//! Spacing: what only just touches, overlaps or misses?
//!
//! A gap under a hundredth of the picture's diagonal, or an overlap shallower
//! than 15% of the smaller short side, looks like a mistake (our choice; no
//! published threshold was found). Only pairs with a hero, a main dish, an
//! arm, a linen or board edge, a crop or a gutter on one side are read; what
//! lies in one group or stack is exempt, a hero in a group is not. Scatter is
//! never read.
mod edges;
mod groups;
mod lines;
mod pairs;
mod remedy;
#[cfg(test)]
mod tests;
mod thing;

use super::finding::{Finding, Mark, State};
use super::rules::{SPACING_GAP, SPACING_KISS};
use super::study::Study;
use crate::layout::Id;
use crate::words::{Arg, length, listed, say};

use pairs::{Flag, Meets, flags};
use thing::things;

/// What is nearer than this touches, mm.
const TOUCH: f64 = 0.5;

/// The findings about gaps and overlaps.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let things = things(study);
    let flags = flags(study, &things);
    let mut out: Vec<Finding> = Vec::new();
    for chief in chiefs(&flags) {
        let own: Vec<&Flag> = flags.iter().filter(|f| f.chief == chief).collect();
        let mut f = about(study, chief, &own);
        if settled {
            f.remedy = study.remedy(&f.key, &|| remedy::found(study, &things, &flags, &own));
        }
        out.push(f);
    }
    out.extend(lines::read(study, &things, settled));
    if settled && study.has_three_dishes() {
        out.extend(groups::read(study, &things, flags.len()));
    }
    out
}

/// The chief sides, each once, in the order they are met.
fn chiefs(flags: &[Flag]) -> Vec<Id> {
    let mut out = Vec::new();
    for flag in flags {
        if !out.contains(&flag.chief) {
            out.push(flag.chief);
        }
    }
    out
}

/// One sentence on all that comes too near to one thing.
fn about(study: &Study<'_>, chief: Id, flags: &[&Flag]) -> Finding {
    let units = study.layout().head.units;
    let missing = flags.iter().map(|f| f.missing).fold(0.0, f64::max);
    let rule = if flags.iter().any(|f| f.overlaps) {
        &SPACING_KISS
    } else {
        &SPACING_GAP
    };
    let key = match flags {
        [one] => format!("spacing:{}:{}", chief.0, one.other.0),
        _ => format!("spacing:{}", chief.0),
    };
    let others: Vec<Id> = flags.iter().map(|f| f.other).collect();
    let mut named = vec![chief];
    named.extend(&others);
    let mut f = Finding::by(rule, key, (State::LookAgain, 3), missing, named);
    for flag in flags {
        f.marks.push(Mark::Gap {
            from: flag.from,
            to: flag.to,
            label: study.tell(|| length(flag.figure, units)),
        });
    }
    f.sentence = study.sentence(|| {
        let args = [
            ("chief", Arg::Name(study.name(chief))),
            ("thing", Arg::Name(study.name(others[0]))),
            ("things", Arg::Text(listed(&study.names(&others)))),
            ("count", Arg::Text(others.len().to_string())),
            ("gap", Arg::Text(length(flags[0].figure, units))),
        ];
        say(sentence(flags), &args)
    });
    f.working = study.tell(|| {
        let mut lines = vec![say("working-spacing", &[])];
        lines.extend(flags.iter().map(|flag| {
            let args = [
                ("thing", Arg::Name(study.name(flag.other))),
                ("figure", Arg::Text(length(flag.figure, units))),
            ];
            say("working-line", &args)
        }));
        lines
    });
    f
}

/// Which sentence says it.
fn sentence(flags: &[&Flag]) -> &'static str {
    let several = flags.len() > 1;
    if !several && flags[0].figure < TOUCH {
        return match flags[0].meets {
            Meets::Dish => "spacing-touch",
            Meets::Arm => "spacing-arm-touch",
            Meets::ByArm => "spacing-arm-main-touch",
            Meets::Edge => "spacing-edge-touch",
        };
    }
    match (flags[0].meets, several, flags[0].overlaps) {
        (Meets::Dish, false, false) => "spacing-gap",
        (Meets::Dish, false, true) => "spacing-kiss",
        (Meets::Dish, true, _) => "spacing-several",
        (Meets::ByArm, false, false) => "spacing-arm-main",
        (Meets::ByArm, false, true) => "spacing-arm-main-kiss",
        (Meets::ByArm, true, _) => "spacing-several",
        (Meets::Arm, false, false) => "spacing-arm",
        (Meets::Arm, false, true) => "spacing-arm-kiss",
        (Meets::Arm, true, _) => "spacing-arm-several",
        (Meets::Edge, false, false) => "spacing-edge",
        (Meets::Edge, false, true) => "spacing-edge-kiss",
        (Meets::Edge, true, _) => "spacing-edge-several",
    }
}

/// What a remedy may not make worse.
struct Tally {
    /// Pairs that are flagged, chief side first.
    flagged: Vec<(Id, Id)>,
    /// Dishes that overlap.
    overlapping: Vec<(Id, Id)>,
}

fn tally(things: &[thing::Thing], flags: &[Flag]) -> Tally {
    Tally {
        flagged: flags.iter().map(|f| (f.chief, f.other)).collect(),
        overlapping: pairs::overlapping(things),
    }
}
