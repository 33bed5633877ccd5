//! Two layouts beside each other.
use std::fmt::Write as _;

use planner::compare::{Change, are_versions, changes};
use planner::layout::Layout;
use planner::readings::{Beside, Scores, Study, Told, beside, report};
use serde_json::json;

/// What changed from one layout to the other, and how both read: for people or
/// as JSON.
pub(crate) fn told(before: &Layout, after: &Layout, table: bool) -> String {
    let versions = are_versions(before, after);
    let [old, new] = [before, after].map(|layout| report(&Study::new(layout), true));
    let findings = beside(&old, &new, versions);
    let changes = changes(before, after);
    if table {
        return for_people([before, after], versions, &changes, &findings);
    }
    let all = json!({ "versions": versions, "changes": changes, "findings": findings });
    serde_json::to_string_pretty(&all).unwrap_or_default() + "\n"
}

fn for_people(
    [before, after]: [&Layout; 2],
    versions: bool,
    changes: &[Change],
    findings: &Beside,
) -> String {
    let mut out = format!("{} | {}\n", before.head.title, after.head.title);
    let [old, new] = findings.scores;
    if old.or(new).is_some() {
        let shown = |pick: fn(&Scores) -> Option<f64>| {
            let one = |s: Option<Scores>| s.as_ref().and_then(pick);
            let text = |s: Option<f64>| s.map_or("n/a".into(), |s| format!("{s:.0}"));
            format!("{} to {}", text(one(old)), text(one(new)))
        };
        let _ = writeln!(
            out,
            "Balance {}, Triangle {}, Separation {} (before light)",
            shown(|s| s.balance),
            shown(|s| s.triangle),
            shown(|s| s.separation)
        );
    }
    if !versions {
        let _ = writeln!(
            out,
            "Tables of their own: things are matched by their ids alone."
        );
    }
    let _ = writeln!(out, "\nWhat changed: {}", changes.len());
    for change in changes {
        let _ = writeln!(out, "  {}", change.sentence);
    }
    for (name, side) in [("first", &findings.before), ("second", &findings.after)] {
        let _ = writeln!(out, "\nOnly in the {name}: {}", side.len());
        for Told { sentence, .. } in side {
            let _ = writeln!(out, "  {sentence}");
        }
    }
    let _ = writeln!(out, "\nIn both: {}", findings.both.len());
    for both in &findings.both {
        let [before, after] = &both.sentences;
        let _ = match both.better {
            None => writeln!(out, "  as it was: {after}"),
            Some(better) => {
                let word = if better { "better" } else { "worse" };
                writeln!(out, "  {word}: {after}\n    before: {before}")
            }
        };
    }
    out
}
