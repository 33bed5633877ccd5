//! Words for people: problems and findings.
use std::fmt::Write as _;

use planner::layout::{Layout, Problem};
use planner::readings::{Report, Study, report};

/// One line a problem, as compilers print them.
pub(crate) fn listed(source: &str, problems: &[Problem]) -> String {
    let mut out = String::new();
    for problem in problems {
        let _ = writeln!(out, "{source}: {problem}");
    }
    out
}

/// The readings, for people or as JSON.
pub(crate) fn told(layout: &Layout, table: bool) -> String {
    let report = report(&Study::new(layout), true);
    if !table {
        return serde_json::to_string_pretty(&report).unwrap_or_default() + "\n";
    }
    for_people(layout, &report)
}

fn for_people(layout: &Layout, report: &Report) -> String {
    let mut out = format!("{}\n", layout.head.title);
    if let Some(scores) = report.scores {
        let shown = |s: Option<f64>| s.map_or("n/a".into(), |s| format!("{s:.0}"));
        let _ = writeln!(
            out,
            "Balance {}, Triangle {}, Separation {} (before light)",
            shown(scores.balance),
            shown(scores.triangle),
            shown(scores.separation)
        );
    }
    for finding in &report.findings {
        let _ = writeln!(out, "{} {}", finding.rank, finding.sentence);
        if let Some(remedy) = &finding.remedy {
            let _ = writeln!(out, "    {}: {}", remedy.act, remedy.predicted);
        }
    }
    out
}
