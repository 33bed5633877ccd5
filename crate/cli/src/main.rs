//! The `overspread` terminal command: the planner for scripts.
//!
//! Exit codes: 0 all well, 1 the layout has problems, 2 the call is wrong or a
//! file cannot be read.
use std::fmt::Write as _;
use std::io::Read as _;
use std::process::ExitCode;

use lexopt::prelude::{Long, Short, Value};
use planner::layout::{Layout, Problem, open};
use planner::readings::{Report, Study, report};

const HELP: &str = "\
overspread: reads overhead table spreads from layout files

  overspread read LAYOUT [--table]   what the readings say, as JSON or for people
  overspread check LAYOUT            whether the file is a sound layout
  overspread --help | --version

LAYOUT is a file, or - for standard input.
";

/// What was asked for.
enum Call {
    Read { path: String, table: bool },
    Check { path: String },
    Say(String),
}

fn main() -> ExitCode {
    let call = match parse() {
        Ok(call) => call,
        Err(error) => {
            eprintln!("overspread: {error}; see overspread --help");
            return ExitCode::from(2);
        }
    };
    let (path, table) = match call {
        Call::Say(text) => {
            print!("{text}");
            return ExitCode::SUCCESS;
        }
        Call::Check { path } => (path, None),
        Call::Read { path, table } => (path, Some(table)),
    };
    let text = match text_of(&path) {
        Ok(text) => text,
        Err(error) => {
            eprintln!("overspread: {path}: {error}");
            return ExitCode::from(2);
        }
    };
    match open(&text) {
        Err(problems) => {
            eprint!("{}", listed(&path, &problems));
            ExitCode::FAILURE
        }
        Ok(layout) => {
            if let Some(table) = table {
                print!("{}", told(&layout, table));
            }
            ExitCode::SUCCESS
        }
    }
}

fn parse() -> Result<Call, lexopt::Error> {
    let mut parser = lexopt::Parser::from_env();
    let mut words: Vec<String> = Vec::new();
    let mut table = false;
    while let Some(arg) = parser.next()? {
        match arg {
            Long("help") | Short('h') => return Ok(Call::Say(HELP.into())),
            Long("version") => {
                return Ok(Call::Say(format!(
                    "overspread {}\n",
                    env!("CARGO_PKG_VERSION")
                )));
            }
            Long("table") => table = true,
            Value(word) => words.push(word.to_string_lossy().into_owned()),
            other => return Err(other.unexpected()),
        }
    }
    match words
        .iter()
        .map(String::as_str)
        .collect::<Vec<_>>()
        .as_slice()
    {
        ["read", path] => Ok(Call::Read {
            path: (*path).into(),
            table,
        }),
        ["check", path] if !table => Ok(Call::Check {
            path: (*path).into(),
        }),
        [] => Err("a command is missing".into()),
        _ => Err("that call is not known".into()),
    }
}

fn text_of(path: &str) -> std::io::Result<String> {
    if path == "-" {
        let mut text = String::new();
        std::io::stdin().read_to_string(&mut text)?;
        return Ok(text);
    }
    std::fs::read_to_string(path)
}

/// One line a problem, as compilers print them.
fn listed(path: &str, problems: &[Problem]) -> String {
    let mut out = String::new();
    for p in problems {
        let at = if p.path.is_empty() {
            "the file"
        } else {
            &p.path
        };
        let _ = writeln!(
            out,
            "{path}: {at}: found {}; allowed: {}",
            p.found, p.allowed
        );
    }
    out
}

fn told(layout: &Layout, table: bool) -> String {
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
