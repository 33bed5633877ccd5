//! Measuring times, natively and in the browser, and reporting them.

use std::fmt::Write;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result};
use serde_json::Value;

use crate::{place, run, scripts};

/// The bench every other is compared with.
const CALIBRATION: &str = "calibration";

/// Runs the native and the browser benches and writes tests/reports/bench.md.
///
/// # Errors
/// When a bench fails or reports nothing.
pub(crate) fn run() -> Result<()> {
    let records = place::target().join("criterion");
    if records.exists() {
        fs::remove_dir_all(&records)?;
    }
    run::succeed(&mut run::cargo(&[
        "bench",
        "--package",
        "planner",
        "--bench",
        "core",
    ]))?;
    let native = native_rows(&records)?;
    let browser = run::output(&mut scripts::script("bench.mjs")?)?;
    let browser = serde_json::from_str(&browser).context("bench.mjs printed no JSON")?;
    let report = place::root().join("tests/reports/bench.md");
    fs::create_dir_all(report.parent().context("a report has a folder")?)?;
    fs::write(&report, written(&native, &browser)?)?;
    println!("wrote {}", report.display());
    Ok(())
}

/// A bench and its median, ns.
type Row = (String, f64);

/// The medians criterion left on disk, by full name.
fn native_rows(records: &Path) -> Result<Vec<Row>> {
    let mut rows = Vec::new();
    let mut open = vec![records.to_path_buf()];
    while let Some(dir) = open.pop() {
        let described = dir.join("new/benchmark.json");
        if described.exists() {
            let name = read_json(&described)?["full_id"]
                .as_str()
                .map(str::to_owned);
            let median =
                read_json(&dir.join("new/estimates.json"))?["median"]["point_estimate"].as_f64();
            rows.push((
                name.context("criterion names each bench")?,
                median.context("criterion estimates a median")?,
            ));
            continue;
        }
        for entry in fs::read_dir(&dir)? {
            let path = entry?.path();
            if path.is_dir() {
                open.push(path);
            }
        }
    }
    // By name, numbers within a name by size.
    rows.sort_by_key(|(name, _)| match name.rsplit_once('/') {
        Some((group, number)) => (group.to_owned(), number.parse().unwrap_or(u64::MAX)),
        None => (name.clone(), 0),
    });
    Ok(rows)
}

fn read_json(path: &Path) -> Result<Value> {
    let text = fs::read_to_string(path).with_context(|| path.display().to_string())?;
    serde_json::from_str(&text).with_context(|| path.display().to_string())
}

/// The report: measured times, each with its ratio to the calibration of the
/// same process.
fn written(native: &[Row], browser: &Value) -> Result<String> {
    let calibration = native.iter().find(|(name, _)| name == CALIBRATION);
    let (_, unit) = calibration.context("the native benches hold no calibration")?;
    let mut text = String::from(
        "# Times\n\nWritten by `cargo xtask bench`. Ratios are to a fixed sum in the same process, \
         so that machines can be compared; times are reported, never asserted.\n\n\
         ## Native\n\n| what | median | ratio |\n|---|---|---|\n",
    );
    for (name, median) in native {
        writeln!(
            text,
            "| {name} | {:.3} ms | {:.2} |",
            median / 1e6,
            median / unit
        )?;
    }
    text.push_str(
        "\n## In the browser\n\n| what | CPU slowed | figure | ratio |\n|---|---|---|---|\n",
    );
    for row in browser.as_array().context("bench.mjs prints a list")? {
        let figure = row["figure"].as_f64().context("each row has a figure")?;
        let ratio = match row["calibration"].as_f64() {
            Some(unit) => format!("{:.2}", figure / unit),
            None => String::new(),
        };
        let word = |key: &str| row[key].as_str().unwrap_or_default().to_owned();
        let (what, unit, slowed) = (word("what"), word("unit"), &row["slowed"]);
        writeln!(
            text,
            "| {what} | {slowed}× | {figure:.2} {unit} | {ratio} |"
        )?;
    }
    Ok(text)
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn every_time_stands_beside_its_ratio() {
        let native = [
            (CALIBRATION.to_owned(), 2e6),
            ("visible/60".to_owned(), 5e6),
        ];
        let browser = json!([
            { "what": "start", "slowed": 6, "figure": 90.0, "unit": "ms", "calibration": 30.0 },
            { "what": "late frames", "slowed": 6, "figure": 0.5, "unit": "%" },
        ]);
        let report = written(&native, &browser).expect("a report");
        assert!(
            report.contains("| visible/60 | 5.000 ms | 2.50 |"),
            "native ratio: {report}"
        );
        assert!(
            report.contains("| start | 6× | 90.00 ms | 3.00 |"),
            "browser ratio: {report}"
        );
        assert!(
            report.contains("| late frames | 6× | 0.50 % |  |"),
            "no ratio of a share: {report}"
        );
    }

    #[test]
    fn a_report_needs_its_calibration() {
        let error = written(&[("visible/60".to_owned(), 5e6)], &json!([])).expect_err("refused");
        assert!(
            error.to_string().contains("calibration"),
            "the message says so: {error}"
        );
    }
}
