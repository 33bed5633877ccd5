//! While something is dragged: states, figures, marks and sentences without
//! their workings, and what the move makes better or worse.
use crate::layout::Id;
use crate::order::sort;
use serde::Serialize;

use super::finding::{Finding, Mark, State};
use super::report::{Report, Scores, findings, scores};
use super::study::{Study, Words};

/// A difference smaller than this is the hand's tremble, not the move: mm,
/// percent or points. Our choice.
const TREMBLE: f64 = 0.5;

/// A finding without its working and remedy.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Figure {
    /// As the finding's.
    pub key: String,
    /// As the finding's.
    pub reading: &'static str,
    /// As the finding's.
    pub state: State,
    /// As the finding's.
    pub rank: u8,
    /// As the finding's.
    pub taste: bool,
    /// As the finding's.
    pub figure: f64,
    /// As the finding's.
    #[serde(skip)]
    pub about: Vec<Id>,
    /// As the finding's; without labels while something is dragged.
    pub marks: Vec<Mark>,
    /// As the finding's.
    pub sentence: String,
    #[serde(skip)]
    cost: f64,
}

/// What is so at one moment of a drag.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Live {
    /// Findings in the order of the report.
    pub findings: Vec<Figure>,
    /// The scores, as in the report.
    pub scores: Option<Scores>,
}

/// One finding that a move changes.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Shift {
    /// Which finding.
    pub key: String,
    /// Whether it is better than before.
    pub better: bool,
    /// Its figure before; `None` when there was nothing to say.
    pub before: Option<f64>,
    /// Its figure now; `None` when there is nothing left to say.
    pub after: Option<f64>,
}

/// What a move changes. Taste is left out: it is silent until asked.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Shifts {
    /// Findings that changed, those that matter most first.
    pub findings: Vec<Shift>,
    /// Balance, Triangle and Separation: 1 rises, -1 falls, 0 neither.
    pub scores: [i8; 3],
}

/// Reads a layout in the middle of a drag.
#[must_use]
pub fn live(study: &Study<'_>) -> Live {
    study.say_only(Words::Sentences);
    let found = findings(study, false);
    study.say_only(Words::All);
    Live {
        findings: found.into_iter().map(Figure::of).collect(),
        scores: scores(study),
    }
}

impl Figure {
    fn of(f: Finding) -> Self {
        Self {
            cost: f.cost(),
            key: f.key,
            reading: f.reading,
            state: f.state,
            rank: f.rank,
            taste: f.taste,
            figure: f.figure,
            about: f.about,
            marks: f.marks,
            sentence: f.sentence,
        }
    }
}

impl Live {
    /// What a report says, to compare a drag with what was so before it.
    #[must_use]
    pub fn of(report: &Report) -> Self {
        Self {
            findings: report.findings.iter().cloned().map(Figure::of).collect(),
            scores: report.scores,
        }
    }
}

/// What changed from one moment of a drag to another.
#[must_use]
pub fn shifts(before: &Live, after: &Live) -> Shifts {
    let mut out = Vec::new();
    for now in after.findings.iter().filter(|f| !f.taste) {
        let then = before.findings.iter().find(|f| f.key == now.key);
        out.extend(shift(then, Some(now)).map(|s| (now.rank, s)));
    }
    for then in before.findings.iter().filter(|f| !f.taste) {
        if after.findings.iter().all(|f| f.key != then.key) {
            out.extend(shift(Some(then), None).map(|s| (then.rank, s)));
        }
    }
    sort(&mut out, |a, b| (a.0, &a.1.key).cmp(&(b.0, &b.1.key)));
    let pick = |l: &Live| l.scores.map(|s| [s.balance, s.triangle, s.separation]);
    let (old, new) = (
        pick(before).unwrap_or_default(),
        pick(after).unwrap_or_default(),
    );
    let mut scores = [0; 3];
    for (n, sign) in scores.iter_mut().enumerate() {
        if let (Some(old), Some(new)) = (old[n], new[n]) {
            *sign = i8::from(new > old + TREMBLE) - i8::from(new + TREMBLE < old);
        }
    }
    Shifts {
        findings: out.into_iter().map(|(_, s)| s).collect(),
        scores,
    }
}

/// How grave a state is.
pub(super) fn grave(figure: Option<&Figure>) -> u8 {
    match figure.map(|f| f.state) {
        Some(State::WontWork) => 2,
        Some(State::LookAgain) => 1,
        Some(State::Holds | State::Intended) | None => 0,
    }
}

/// What became of one finding; nothing where it is as it was.
pub(super) fn shift(before: Option<&Figure>, after: Option<&Figure>) -> Option<Shift> {
    let (old, new) = (grave(before), grave(after));
    let rise = match (before, after) {
        (Some(b), Some(a)) => a.cost - b.cost,
        _ => 0.0,
    };
    if old == new && (old == 0 || rise.abs() <= TREMBLE) {
        return None;
    }
    Some(Shift {
        key: before.or(after)?.key.clone(),
        better: if old == new { rise < 0.0 } else { new < old },
        before: before.map(|f| f.figure),
        after: after.map(|f| f.figure),
    })
}
