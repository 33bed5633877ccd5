//! A proposal, explained: what it moves, what gets better and what it costs.
use serde::Serialize;

use crate::compare::changes;
use crate::edit::Edit;
use crate::layout::{Id, Layout};
use crate::readings::{Finding, Report, Scores, State};
use crate::words::{Arg, say};

/// One change of a proposal, which can be accepted by itself.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Move {
    /// What is done, in plain words; more than one where things go together.
    pub sentences: Vec<String>,
    /// What changes.
    pub edit: Edit,
    /// What is changed.
    pub objects: Vec<Id>,
}

/// One finding that a proposal changes.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Differs {
    /// Which finding.
    pub key: String,
    /// What becomes of it, in words.
    pub sentence: String,
    /// What it costs if found on the day, as a finding's rank.
    pub rank: u8,
}

/// A layout that reads better than the one the search began with.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Proposal {
    /// What is particular to it.
    pub name: String,
    /// The layout it leads to.
    #[serde(skip)]
    pub layout: Layout,
    /// All that changes.
    pub edit: Edit,
    /// The same, change by change.
    pub moves: Vec<Move>,
    /// What gets better, the dearest first.
    pub better: Vec<Differs>,
    /// What gets worse.
    pub worse: Vec<Differs>,
    /// The scores before and after.
    pub scores: [Option<Scores>; 2],
    /// What the layouts cost, before and after.
    pub prices: [f64; 2],
}

/// The proposal that leads from one layout and report to another by these
/// edits.
pub(super) fn explained(
    name: &str,
    from: (&Layout, &Report),
    to: (&Layout, &Report),
    edits: Vec<Edit>,
    prices: [f64; 2],
) -> Proposal {
    let moves = edits.into_iter().map(|edit| moved(from.0, edit));
    let (better, worse) = differing(from.1, to.1);
    Proposal {
        name: say(name, &[]),
        layout: to.0.clone(),
        edit: Edit::between(from.0, to.0),
        moves: moves.collect(),
        better,
        worse,
        scores: [from.1.scores, to.1.scores],
        prices,
    }
}

fn moved(start: &Layout, edit: Edit) -> Move {
    let mut after = start.clone();
    // The changes of a proposal touch different objects, so each fits.
    let fits = edit.apply(&mut after);
    debug_assert!(fits.is_ok(), "{fits:?}");
    let told = changes(start, &after);
    Move {
        sentences: told.into_iter().map(|c| c.sentence).collect(),
        objects: edit.touched().into_iter().collect(),
        edit,
    }
}

/// What gets better and what gets worse, matters of taste aside.
fn differing(before: &Report, after: &Report) -> (Vec<Differs>, Vec<Differs>) {
    let (mut better, mut worse) = (Vec::new(), Vec::new());
    let find = |report: &'_ Report, key: &str| -> Option<Finding> {
        let found = report.findings.iter().find(|f| f.key == key);
        found.filter(|f| f.is_pressing()).cloned()
    };
    let told = |id: &str, of: &Finding| Differs {
        key: of.key.clone(),
        sentence: say(id, &[("sentence", Arg::Text(of.sentence.clone()))]),
        rank: of.rank,
    };
    for was in before.findings.iter().filter(|f| f.is_pressing()) {
        match find(after, &was.key) {
            None => better.push(told("propose-gone", was)),
            Some(is) => match compared(was, &is) {
                std::cmp::Ordering::Less => better.push(told("propose-less", &is)),
                std::cmp::Ordering::Greater => worse.push(told("propose-more", &is)),
                std::cmp::Ordering::Equal => {}
            },
        }
    }
    for is in after.findings.iter().filter(|f| f.is_pressing()) {
        if find(before, &is.key).is_none() {
            worse.push(told("propose-new", is));
        }
    }
    (better, worse)
}

/// Whether a finding became less or more pressing.
fn compared(was: &Finding, is: &Finding) -> std::cmp::Ordering {
    let grade = |f: &Finding| u8::from(f.state == State::WontWork);
    let by_state = grade(is).cmp(&grade(was));
    let by = is.cost() - was.cost();
    let by_figure = if by.abs() <= is.rule.same {
        std::cmp::Ordering::Equal
    } else {
        by.total_cmp(&0.0)
    };
    by_state.then(by_figure)
}
