//! Measuring times, natively and in the browser, and reporting them.

use std::fmt::Write;
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use serde_json::Value;

use crate::{place, run, scripts, site, tools};

/// The bench every other is compared with.
const CALIBRATION: &str = "calibration";

/// What the planner is meant to keep to: a browser row, how much slower the
/// processor is made, and the most it may be.
const GOALS: [(&str, u64, f64); 18] = [
    ("drag, work per frame, p95", 6, 8.0),
    ("drag, frames over 25 ms", 6, 1.0),
    ("drag, everything on, work per frame, p95", 6, 8.0),
    ("drag, everything on, frames over 25 ms", 6, 1.0),
    ("drag of 200 things, work per frame, p95", 6, 8.0),
    ("drag of 200 things, frames over 25 ms", 6, 1.0),
    // With shadows: without them 2 ms were meant.
    ("live step/60 in the worker, median", 1, 4.0),
    ("live step/supper in the worker, median", 1, 4.0),
    ("finger moved to marks shown/60, median", 6, 100.0),
    ("finger moved to marks shown/supper, median", 6, 100.0),
    ("settled/supper in the worker, median", 1, 150.0),
    ("settled/60, longest slice", 1, 50.0),
    ("settled/supper, longest slice", 1, 50.0),
    ("settled/60, longest slice", 6, 50.0),
    ("settled/supper, longest slice", 6, 50.0),
    // Of each deed the middle of three runs.
    ("feel/worst of all", 4, 200.0),
    ("feel/layout shift", 4, 0.0),
    (
        "link/supper, never visited, until the picture, median",
        4,
        2500.0,
    ),
];

/// A native bench that is to take at least so many times as long as another.
const DEARER: (&str, &str, f64) = ("shadows by rays/60", "shadows by strips/60", 50.0);

/// The power by which a thing's cost may grow with its size, and for what.
const GROWS: (f64, [&str; 3]) = (
    1.3,
    [
        "live step, 60 to 800",
        "settled, 30 to 200",
        "shadows by strips, 60 to 800",
    ],
);

/// Runs the native and the browser benches and writes tests/reports/bench.md.
///
/// # Errors
/// When a bench fails or reports nothing.
pub(crate) fn run() -> Result<()> {
    tools::screen()?;
    let records = place::target().join("criterion");
    if records.exists() {
        fs::remove_dir_all(&records)?;
    }
    run::succeed(&mut run::cargo(&[
        "bench",
        "--package",
        "benches",
        "--bench",
        "core",
    ]))?;
    let native = native_rows(&records)?;
    let mut script = scripts::script("bench.mjs")?;
    let script = script
        .env("OVERSPREAD_TABLE", full_table("60")?)
        .env("OVERSPREAD_LARGE_TABLE", full_table("200")?);
    let browser = run::output(script)?;
    let browser = serde_json::from_str(&browser).context("bench.mjs printed no JSON")?;
    let report = place::root().join("tests/reports/bench.md");
    fs::create_dir_all(report.parent().context("a report has a folder")?)?;
    let text = written(&machine(), &native, &browser)? + &bytes()?;
    fs::write(&report, text)?;
    println!("wrote {}", report.display());
    Ok(())
}

/// A file with the table of `count` dishes that the native benches measure.
fn full_table(count: &str) -> Result<PathBuf> {
    let arguments = ["run", "--package", "benches", "--quiet", count];
    let text = run::output(&mut run::cargo(&arguments))?;
    let file = place::target().join(format!("full-table-{count}.spread.json"));
    fs::write(&file, text)?;
    Ok(file)
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

/// What it ran on, as far as the system says.
fn machine() -> String {
    let cpu = fs::read_to_string("/proc/cpuinfo").unwrap_or_default();
    let model = cpu.lines().find_map(|line| line.strip_prefix("model name"));
    let model = model.map_or("an unnamed processor", |m| {
        m.trim_start_matches([' ', '\t', ':'])
    });
    let cores = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
    let load = fs::read_to_string("/proc/loadavg").unwrap_or_default();
    let load = load.split(' ').next().unwrap_or("?").to_owned();
    format!("{model}, {cores} cores, load when written {load}")
}

/// The files of the site after `gzip -9`, kB of 1,000 bytes.
fn bytes() -> Result<String> {
    let mut text = String::from("\n## Bytes\n\n| file | gzip -9 |\n|---|---|\n");
    let dist = place::dist();
    for name in site::listing(&dist)? {
        let length = site::gzipped_len(&fs::read(dist.join(&name))?)?;
        writeln!(text, "| {name} | {:.1} kB |", length as f64 / 1e3)?;
    }
    Ok(text)
}

/// By what power of its size each bench grows, from its smallest to its largest.
fn growth(native: &[Row]) -> Vec<(String, f64)> {
    let mut found: Vec<(String, f64)> = Vec::new();
    let sized: Vec<(&str, f64, f64)> = native
        .iter()
        .filter_map(|(name, time)| {
            let (group, size) = name.rsplit_once('/')?;
            Some((group, size.parse().ok()?, *time))
        })
        .collect();
    for group in sized.chunk_by(|a, b| a.0 == b.0) {
        if let [(name, small, quick), .., (_, large, slow)] = group {
            let power = libm::log(slow / quick) / libm::log(large / small);
            found.push((format!("{name}, {small} to {large}"), power));
        }
    }
    found
}

/// The report: measured times, each with its ratio to the calibration of the
/// same process.
fn written(machine: &str, native: &[Row], browser: &Value) -> Result<String> {
    let calibration = native.iter().find(|(name, _)| name == CALIBRATION);
    let (_, unit) = calibration.context("the native benches hold no calibration")?;
    let mut text = String::from(
        "# Times\n\nWritten by `cargo xtask bench`. Ratios are to a fixed sum in the same process, \
         so that machines can be compared; times are reported, never asserted.\n\n",
    );
    writeln!(text, "Machine: {machine}.\n")?;
    text.push_str("## Native\n\n| what | median | ratio |\n|---|---|---|\n");
    for (name, median) in native {
        writeln!(
            text,
            "| {name} | {:.3} ms | {:.2} |",
            median / 1e6,
            median / unit
        )?;
    }
    text.push_str("\n| grows with its size | to the power |\n|---|---|\n");
    for (name, power) in growth(native) {
        writeln!(text, "| {name} | {power:.2} |")?;
    }
    text.push_str(
        "\n## In the browser\n\nStart and drag: the browser slows the page's main thread down. \
         Readings: the whole renderer with its worker is \
         stopped and let go on in turn, as the browser refuses to slow workers down, until the \
         fixed sum in the worker takes so many times as long.\n\n| what | CPU slowed | figure | ratio |\n|---|---|---|---|\n",
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
    text.push_str("\n## Goals\n\n| what | CPU slowed | goal | met |\n|---|---|---|---|\n");
    for (what, slowed, most) in GOALS {
        let rows = browser.as_array().into_iter().flatten();
        let mut rows = rows.filter(|row| row["what"] == what && row["slowed"] == slowed);
        let met = match rows.next().and_then(|row| row["figure"].as_f64()) {
            Some(figure) if figure <= most => "yes",
            Some(_) => "no",
            None => "not measured",
        };
        writeln!(text, "| {what} | {slowed}× | {most} | {met} |")?;
    }
    text.push_str("\n| natively | figure | goal | met |\n|---|---|---|---|\n");
    for (what, figure, goal, met) in native_goals(native) {
        writeln!(text, "| {what} | {figure:.2} | {goal} | {met} |")?;
    }
    Ok(text)
}

/// What is meant of the native benches: what, figure, goal and whether it is met.
fn native_goals(native: &[Row]) -> Vec<(String, f64, f64, &'static str)> {
    let word = |met: bool| if met { "yes" } else { "no" };
    let time = |of: &str| native.iter().find(|row| row.0 == of).map(|row| row.1);
    let (dear, cheap, least) = DEARER;
    let times = time(dear).zip(time(cheap)).map(|(a, b)| a / b);
    let dearer = times.map(|times| {
        let what = format!("{dear} over {cheap}, at least");
        (what, times, least, word(times >= least))
    });
    let (most, of) = GROWS;
    let grown = growth(native).into_iter();
    let grown = grown.filter(|(name, _)| of.contains(&name.as_str()));
    let grown = grown.map(|(name, power)| {
        let what = format!("power of {name}, at most");
        (what, power, most, word(power <= most))
    });
    dearer.into_iter().chain(grown).collect()
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
            ("visible/120".to_owned(), 20e6),
            ("live step/60".to_owned(), 1e6),
            ("live step/800".to_owned(), 1e9),
            ("shadows by rays/60".to_owned(), 90e6),
            ("shadows by strips/60".to_owned(), 1e6),
        ];
        let browser = json!([
            { "what": "start", "slowed": 6, "figure": 90.0, "unit": "ms", "calibration": 30.0 },
            { "what": "drag, frames over 25 ms", "slowed": 6, "figure": 0.5, "unit": "%" },
        ]);
        let report = written("a machine", &native, &browser).expect("a report");
        assert!(
            report.contains("| visible/60 | 5.000 ms | 2.50 |"),
            "native ratio: {report}"
        );
        assert!(
            report.contains("| start | 6× | 90.00 ms | 3.00 |"),
            "browser ratio: {report}"
        );
        assert!(
            report.contains("| drag, frames over 25 ms | 6× | 0.50 % |  |"),
            "no ratio of a share: {report}"
        );
        assert!(
            report.contains("| visible, 60 to 120 | 2.00 |"),
            "four times as long for twice as much: {report}"
        );
        assert!(
            report.contains("| drag, frames over 25 ms | 6× | 1 | yes |"),
            "within its goal: {report}"
        );
        assert!(
            report.contains("| drag, work per frame, p95 | 6× | 8 | not measured |"),
            "a goal is never met unseen: {report}"
        );
        assert!(
            report.contains(
                "| shadows by rays/60 over shadows by strips/60, at least | 90.00 | 50 | yes |"
            ),
            "rays cost more: {report}"
        );
        assert!(
            report.contains("| power of live step, 60 to 800, at most | 2.67 | 1.3 | no |"),
            "it grows too fast: {report}"
        );
    }

    #[test]
    fn a_report_needs_its_calibration() {
        let error = written("a machine", &[("visible/60".to_owned(), 5e6)], &json!([]))
            .expect_err("refused");
        assert!(
            error.to_string().contains("calibration"),
            "the message says so: {error}"
        );
    }
}
