//! Words for people: problems and findings.
use std::fmt::Write as _;

use planner::layout::{Id, Layout, Problem};
use planner::papers::running_order;
use planner::readings::{Corners, Report, Study, asked_triangle, report};

/// One line a problem, as compilers print them.
pub(crate) fn listed(source: &str, problems: &[Problem]) -> String {
    let mut out = String::new();
    for problem in problems {
        let _ = writeln!(out, "{source}: {problem}");
    }
    out
}

/// The readings, for people or as JSON with the running order, with this crop
/// in view.
///
/// # Errors
/// When the layout has no such crop.
pub(crate) fn told(layout: &Layout, table: bool, crop: Option<u16>) -> Result<String, String> {
    let mut study = Study::new(layout);
    if let Some(crop) = crop {
        let ids: Vec<Id> = layout.crops.iter().map(|c| c.id).collect();
        if !ids.contains(&Id(crop)) {
            return Err(missing("crop", Id(crop), &ids));
        }
        study = study.viewing(Id(crop));
    }
    let report = report(&study, true);
    Ok(if table {
        for_people(layout, &report)
    } else {
        let mut all = serde_json::to_value(&report).unwrap_or_default();
        if !layout.exposures.is_empty() {
            all["running_order"] = serde_json::to_value(running_order(layout)).unwrap_or_default();
        }
        serde_json::to_string_pretty(&all).unwrap_or_default() + "\n"
    })
}

/// The triangle of fingertips or accents alone.
///
/// # Errors
/// When there are not three of them.
pub(crate) fn triangle(layout: &Layout, of: Corners, table: bool) -> Result<String, String> {
    let found = asked_triangle(&Study::new(layout), of)
        .ok_or_else(|| format!("triangles: there are not three {} alike", of.name()))?;
    Ok(if table {
        found.sentence + "\n"
    } else {
        serde_json::to_string_pretty(&found).unwrap_or_default() + "\n"
    })
}

fn for_people(layout: &Layout, report: &Report) -> String {
    let mut out = format!("{}\n", layout.head.title);
    if let Some(scores) = report.scores {
        let shown = |s: Option<f64>| s.map_or("n/a".into(), |s| format!("{s:.0}"));
        let within = layout.crops.iter().find(|c| Some(c.id) == report.crop);
        let within = within.map_or(String::new(), |c| format!(" in {}", c.name));
        let _ = writeln!(
            out,
            "Balance {}, Triangle {}, Separation {} (before light){within}",
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

/// That something asked for is not there, and what is.
pub(crate) fn missing(what: &str, id: Id, there: &[Id]) -> String {
    let there: Vec<String> = there.iter().map(|id| id.0.to_string()).collect();
    let there = if there.is_empty() {
        "none".to_owned()
    } else {
        there.join(", ")
    };
    format!(
        "{what} {}: there is no such {what}; there is: {there}",
        id.0
    )
}
