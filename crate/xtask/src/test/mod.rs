//! Every test, in stages, with one closing line.

mod beside;
mod budget;
mod stages;
mod tally;

use std::time::{Duration, Instant};

use anyhow::Result;
use clap::ValueEnum;

use beside::Beside;
use tally::Tally;

/// A stage of the tests, in the order they run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Stage {
    /// Formatting and lints
    Lint,
    /// Rust tests on this machine
    Native,
    /// Fuzzers replayed over what is kept
    Fuzz,
    /// Rust tests inside a browser
    Wasm,
    /// Types of the page, bundle, finished site and single file
    Site,
    /// The finished page in a browser
    Page,
    /// The finished page in Firefox and WebKit
    Engines,
    /// Bytes of what is shipped
    Budget,
}

/// Runs the stages asked for (all when none is named), every one to its end,
/// then prints a table and, alone on the last line, `N passed, N failed`.
///
/// # Errors
/// When anything failed.
pub(crate) fn all(asked: &[Stage]) -> Result<()> {
    let mut rows = Vec::new();
    let mut total = Tally::default();
    let wanted = |stage: Stage| asked.is_empty() || asked.contains(&stage);
    let mut beside = Vec::new();
    // The tests' compilers and the page's share nothing but sources.
    if wanted(Stage::Native) && wanted(Stage::Site) {
        beside.push(Beside::begin(Stage::Site)?);
    }
    let all = Stage::value_variants().iter().copied();
    for stage in all.filter(|stage| wanted(*stage)) {
        println!("\n== {} ==", name(stage));
        let start = Instant::now();
        let begun = beside.iter().position(|each| each.stage() == stage);
        let tally = match (begun, stage) {
            (Some(at), _) => beside.swap_remove(at).end(),
            // Many tests keep one core busy, so others can be compiled meanwhile.
            (None, Stage::Native) => stages::native(|| {
                if wanted(Stage::Wasm) {
                    beside.push(Beside::begin(Stage::Wasm)?);
                }
                Ok(())
            }),
            (None, _) => run(stage),
        };
        let tally = tally.unwrap_or_else(|error| {
            println!("{error:#}");
            Tally::one_failed()
        });
        rows.push((stage, tally, start.elapsed()));
        total = total + tally;
    }
    println!();
    for (stage, tally, time) in rows {
        println!("{}", row(name(stage).as_str(), tally, time));
    }
    println!("{total}");
    // The closing line must stay the last, so nothing else reports the failure.
    if total.failed > 0 {
        std::process::exit(1);
    }
    Ok(())
}

/// Every browser test on every kind of screen.
///
/// # Errors
/// When one fails.
pub(crate) fn every_screen() -> Result<()> {
    let tally = stages::page(true)?;
    anyhow::ensure!(tally.failed == 0, "{tally}");
    Ok(())
}

fn run(stage: Stage) -> Result<Tally> {
    match stage {
        Stage::Lint => stages::lint(),
        Stage::Native => stages::native(|| Ok(())),
        Stage::Fuzz => stages::fuzzers(),
        Stage::Wasm => stages::wasm(),
        Stage::Site => stages::site(),
        Stage::Page => stages::page(false),
        Stage::Engines => stages::engines(),
        Stage::Budget => budget::check(),
    }
}

fn name(stage: Stage) -> String {
    let value = stage.to_possible_value();
    value.map_or_else(String::new, |value| value.get_name().to_owned())
}

fn row(name: &str, tally: Tally, time: Duration) -> String {
    format!("{name:<7} {:>6.1} s  {tally}", time.as_secs_f64())
}
