//! The page's labels as a TypeScript module, made from the one table of words:
//! a constant of each line, or a function of its named places.

use std::fmt::Write as _;
use std::fs;

use anyhow::{Result, bail, ensure};

use super::Words;
use crate::place;

// The tables as source: this crate is built alone, and compiling the planner
// for a list of words would double the time to a first build.
#[path = "../../../planner/src/layout/limits.rs"]
#[expect(
    dead_code,
    unreachable_pub,
    reason = "the page asks for the lengths of text only"
)]
mod limits;
#[path = "../../../outputs/src/csv/limits.rs"]
#[expect(unreachable_pub, reason = "it is public where it belongs")]
mod lists;
#[path = "../../../planner/src/words/pseudo.rs"]
#[expect(unreachable_pub, reason = "it is public where it belongs")]
mod pseudo;
#[path = "../../../planner/src/words/labels/mod.rs"]
#[expect(unreachable_pub, reason = "it is public where it belongs")]
mod words;

/// What functions of a label lean on.
const HEAD: &str = "\
// Made from the table of words by `cargo xtask`; edits here are lost.
const rule = new Intl.PluralRules(\"en\");
const forms = (of: number, one: string, other: string): string =>
  rule.select(of) === \"one\" ? one : other;
// A name that may run right to left keeps its direction inside itself.
const own = (text: string): string => (/[\\u0590-\\u08ff\\ufb1d-\\ufdff\\ufe70-\\ufefc]/.test(text) ? `\\u2068${text}\\u2069` : text);
";

/// Writes the module the page imports as `#words`.
///
/// # Errors
/// When a line of the table cannot be read or the file not be written.
pub(super) fn write(said: Words) -> Result<()> {
    fs::create_dir_all(place::generated())?;
    let labels = words::LABELS.concat();
    let spoken: Vec<String> = labels
        .iter()
        .map(|(_, label)| match said {
            Words::Plain => (*label).to_owned(),
            Words::Long => pseudo::long(label),
            Words::Mirrored => pseudo::mirrored(label),
        })
        .collect();
    let labels: Vec<(&str, &str)> = labels
        .iter()
        .zip(&spoken)
        .map(|((id, _), label)| (*id, label.as_str()))
        .collect();
    fs::write(place::generated().join("words.ts"), module(&labels)?)?;
    Ok(())
}

fn module(labels: &[(&str, &str)]) -> Result<String> {
    let mut text = HEAD.to_owned();
    writeln!(text, "export const MAX_NAME = {};", limits::MAX_NAME)?;
    writeln!(text, "export const MAX_REMARK = {};", limits::MAX_REMARK)?;
    writeln!(text, "export const MAX_SENT = {};", limits::MAX_SENT)?;
    let days = limits::MAX_STEP_DAYS;
    writeln!(text, "export const MAX_STEP_DAYS = {days};")?;
    writeln!(text, "export const MAX_NOTE = {};", limits::MAX_NOTE)?;
    let bytes = lists::Limits::LIST.bytes;
    writeln!(text, "export const MAX_LIST_BYTES = {bytes};")?;
    for (id, label) in labels {
        let parts = parse(label)?;
        let mut places: Vec<(&str, bool)> = Vec::new();
        for part in &parts {
            let (name, counted) = match part {
                Part::Text(_) => continue,
                Part::Place(name) => (*name, false),
                Part::Count(name, ..) => (*name, true),
            };
            match places.iter_mut().find(|(known, _)| *known == name) {
                Some((_, number)) => *number |= counted,
                None => places.push((name, counted)),
            }
        }
        let body: String = parts.iter().map(|part| part.script(&places)).collect();
        let name = camel(id);
        if places.is_empty() {
            writeln!(text, "export const {name} = `{body}`;")?;
            continue;
        }
        let names: Vec<&str> = places.iter().map(|(name, _)| *name).collect();
        let types: Vec<String> = places
            .iter()
            .map(|(name, counted)| {
                format!("{name}: {}", if *counted { "number" } else { "string" })
            })
            .collect();
        writeln!(
            text,
            "export const {name} = ({{ {} }}: {{ {} }}): string => `{body}`;",
            names.join(", "),
            types.join("; ")
        )?;
    }
    Ok(text)
}

/// A piece of a label.
#[derive(Debug, PartialEq)]
enum Part<'a> {
    Text(&'a str),
    Place(&'a str),
    /// One form for one, another for other numbers.
    Count(&'a str, Vec<Part<'a>>, Vec<Part<'a>>),
}

impl Part<'_> {
    fn script(&self, places: &[(&str, bool)]) -> String {
        match self {
            Part::Text(text) => text
                .replace('\\', "\\\\")
                .replace('`', "\\`")
                .replace('$', "\\$"),
            Part::Place(name) if places.contains(&(*name, true)) => format!("${{{name}}}"),
            Part::Place(name) => format!("${{own({name})}}"),
            Part::Count(name, one, other) => {
                let form = |parts: &[Part]| -> String {
                    parts.iter().map(|part| part.script(places)).collect()
                };
                format!("${{forms({name}, `{}`, `{}`)}}", form(one), form(other))
            }
        }
    }
}

/// The pieces of a label, in order.
fn parse(label: &str) -> Result<Vec<Part<'_>>> {
    let mut parts = Vec::new();
    let mut rest = label;
    while let Some(open) = rest.find('{') {
        if open > 0 {
            parts.push(Part::Text(&rest[..open]));
        }
        let close = closing(&rest[open..])?;
        let inside = &rest[open + 1..open + close];
        parts.push(match inside.split_once(':') {
            None => {
                ensure!(
                    plain(inside),
                    "`{inside}` in `{label}` is no name of a place"
                );
                Part::Place(inside)
            }
            Some((name, forms)) => {
                ensure!(plain(name), "`{name}` in `{label}` is no name of a place");
                let Some((one, other)) = forms.split_once('|') else {
                    bail!("`{inside}` in `{label}` has one form only");
                };
                Part::Count(name, parse(one)?, parse(other)?)
            }
        });
        rest = &rest[open + close + 1..];
    }
    ensure!(!rest.contains('}'), "`{label}` closes what it did not open");
    if !rest.is_empty() {
        parts.push(Part::Text(rest));
    }
    Ok(parts)
}

/// Where the brace that `text` begins with is closed.
fn closing(text: &str) -> Result<usize> {
    let mut open = 0_usize;
    for (at, letter) in text.char_indices() {
        match letter {
            '{' => open += 1,
            '}' if open == 1 => return Ok(at),
            '}' => open -= 1,
            _ => {}
        }
    }
    bail!("`{text}` is not closed")
}

fn plain(name: &str) -> bool {
    !name.is_empty() && name.bytes().all(|letter| letter.is_ascii_lowercase())
}

/// `add-a-thing` as `addAThing`.
fn camel(id: &str) -> String {
    let mut words = id.split('-');
    let mut name = words.next().unwrap_or_default().to_owned();
    for word in words {
        let mut letters = word.chars();
        name.extend(letters.next().map(|letter| letter.to_ascii_uppercase()));
        name.push_str(letters.as_str());
    }
    name
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_label_of_the_table_can_be_read() {
        let text = module(&words::LABELS.concat()).expect("the table reads");
        assert_eq!(
            text.matches("export const").count(),
            words::LABELS.concat().len() + 6,
            "one line each, and five limits"
        );
    }

    #[test]
    fn places_become_arguments_and_counts_choose_a_form() {
        let text = module(&[
            ("add-a-thing", "Add `a` thing"),
            ("notes-more", "and {count:1 note|{count} notes} on {thing}"),
        ])
        .expect("reads");
        assert!(
            text.contains("export const addAThing = `Add \\`a\\` thing`;"),
            "{text}"
        );
        let line = "export const notesMore = ({ count, thing }: { count: number; thing: string }): \
                    string => `and ${forms(count, `1 note`, `${count} notes`)} on ${own(thing)}`;";
        assert!(text.contains(line), "{text}");
    }

    #[test]
    fn what_is_open_or_nameless_is_refused() {
        for label in ["{", "{}", "{a", "a}", "{A}", "{n:one}", "{n:a|{b}"] {
            assert!(parse(label).is_err(), "`{label}`");
        }
    }
}
