//! The `overspread` terminal command: the planner for scripts.
//!
//! Exit codes: 0 all well, 1 the layout has problems or not what was asked of
//! it, 2 the call is wrong or a file cannot be read or written.
mod calendar;
mod call;
mod compare;
mod draw;
mod guides;
mod help;
mod papers;
mod propose;
mod report;

use std::io::{Read as _, Write as _};
use std::process::ExitCode;

use call::Call;
use planner::layout::{Layout, Problem, open, schema};
use planner::link::{link, link_two, unlink};

fn main() -> ExitCode {
    let call = match call::parse(lexopt::Parser::from_env()) {
        Ok(call) => call,
        Err(error) => {
            eprintln!("overspread: {error}; see overspread --help");
            return ExitCode::from(2);
        }
    };
    match answer(&call) {
        Ok(text) => said(&text),
        Err(Fault::Unread(path, error)) => {
            eprintln!("overspread: {path}: {error}");
            ExitCode::from(2)
        }
        Err(Fault::Missing(path, what)) => {
            eprintln!("overspread: {path}: {what}");
            ExitCode::FAILURE
        }
        Err(Fault::Problems(source, problems)) => {
            eprint!("{}", report::listed(&source, &problems));
            ExitCode::FAILURE
        }
    }
}

/// Why there is no answer.
enum Fault {
    /// What was asked of a layout and is not in it.
    Missing(String, String),
    /// A file that cannot be read or written.
    Unread(String, std::io::Error),
    /// What is wrong in it.
    Problems(String, Vec<Problem>),
}

fn answer(call: &Call) -> Result<String, Fault> {
    match call {
        Call::Say(text) => Ok(text.clone()),
        Call::Schema => Ok(pretty(&schema())),
        Call::Compare {
            paths: [before, after],
            table,
        } => Ok(compare::told(&opened(before)?, &opened(after)?, *table)),
        Call::Check { path } => opened(path).map(|_| String::new()),
        Call::Read {
            path,
            table,
            crop,
            triangle,
        } => {
            let layout = opened(path)?;
            let told = match triangle {
                Some(of) => report::triangle(&layout, *of, *table),
                None => report::told(&layout, *table, *crop),
            };
            told.map_err(|what| Fault::Missing(path.clone(), what))
        }
        Call::Draw {
            path,
            exposure,
            crop,
            drawing,
            width,
            out,
        } => {
            let layout = opened(path)?;
            let drawn = draw::drawn(&layout, *exposure, *crop, *drawing);
            let drawn = drawn.map_err(|what| Fault::Missing(path.clone(), what))?;
            if let Some(note) = drawn.note {
                eprintln!("{path}: {note}");
            }
            let Some(out) = out.as_deref().filter(|out| *out != "-") else {
                return Ok(drawn.svg + "\n");
            };
            let made = draw::file(&layout, &drawn.svg, out, *width);
            let made = made.map_err(|what| Fault::Missing(path.clone(), what))?;
            let written = std::fs::write(out, made);
            written.map_err(|error| Fault::Unread(out.into(), error))?;
            Ok(String::new())
        }
        Call::Papers { path, wish, out } => {
            let files = papers::files(&opened(path)?, wish);
            let files = files.map_err(|what| Fault::Missing(path.clone(), what))?;
            let written = papers::written(&files, out.as_ref());
            written.map_err(|(name, error)| Fault::Unread(name, error))?;
            Ok(String::new())
        }
        Call::Guides { path, out } => {
            let layout = opened(path)?;
            if planner::exposures::guides(&layout).is_empty() {
                return Err(Fault::Missing(path.clone(), guides::NONE.into()));
            }
            if let Some(note) = guides::note(&layout) {
                eprintln!("{path}: {note}");
            }
            let written = guides::written(&layout, out.as_ref());
            written.map_err(|error| Fault::Unread(out.clone(), error))?;
            Ok(String::new())
        }
        Call::Propose {
            path,
            asked,
            table,
            crop,
        } => {
            let told = propose::proposed(&opened(path)?, asked, *table, *crop);
            told.map_err(|what| Fault::Missing(path.clone(), what))
        }
        Call::Link { path, other, names } => {
            let first = opened(path)?;
            let made = match other {
                None => link(&first),
                Some(other) => {
                    let other = opened(other)?;
                    let titles = [&first.head.title, &other.head.title];
                    let names = [0, 1].map(|n| names.get(n).unwrap_or(titles[n]).as_str());
                    link_two(&first, &other, names)
                }
            };
            for loss in made.losses {
                eprintln!("{path}: {loss}: left out of the link, not known here");
            }
            Ok(made.fragment + "\n")
        }
        Call::Unlink { link, other } => {
            let text = if link == "-" {
                text_of(link)?
            } else {
                link.clone()
            };
            let got = unlink(&text).map_err(|p| Fault::Problems("link".into(), p))?;
            for section in got.kept_sections {
                let number = section.number;
                eprintln!("link: section {number}: left out of the file, not known here");
            }
            let layout = match (got.other, other) {
                (None, true) => {
                    let what = "it holds no other version";
                    return Err(Fault::Missing("link".into(), what.into()));
                }
                (None, false) => got.layout,
                (Some(second), true) => second.layout,
                (Some(second), false) => {
                    let [first, second] = second.names;
                    eprintln!("link: “{first}”; the other version, “{second}”: --other");
                    got.layout
                }
            };
            Ok(layout.to_json() + "\n")
        }
    }
}

/// Prints, and says whether that went well; a reader that has seen enough and
/// closed the pipe is no fault.
fn said(text: &str) -> ExitCode {
    match std::io::stdout().write_all(text.as_bytes()) {
        Err(error) if error.kind() != std::io::ErrorKind::BrokenPipe => {
            eprintln!("overspread: standard output: {error}");
            ExitCode::from(2)
        }
        _ => ExitCode::SUCCESS,
    }
}

fn pretty(value: &serde_json::Value) -> String {
    serde_json::to_string_pretty(value).unwrap_or_default() + "\n"
}

fn opened(path: &str) -> Result<Layout, Fault> {
    open(&text_of(path)?).map_err(|p| Fault::Problems(path.into(), p))
}

fn text_of(path: &str) -> Result<String, Fault> {
    let text = if path == "-" {
        let mut text = String::new();
        std::io::stdin().read_to_string(&mut text).map(|_| text)
    } else {
        std::fs::read_to_string(path)
    };
    text.map_err(|error| Fault::Unread(path.into(), error))
}
