//! Finding an entry by id, by trade name or by size.
use super::entry::Entry;
use super::foods::foods;
use super::props::props;
use crate::order;

/// The prop or food of this id.
#[must_use]
pub fn prop(id: &str) -> Option<&'static Entry> {
    all().find(|e| e.id == id)
}

fn all() -> impl Iterator<Item = &'static Entry> {
    props().iter().chain(foods())
}

/// Everything that fits all words of `text`, best first. A word fits by the
/// start of a word of the trade name; a number fits by size across: "27" and
/// "27 cm" in cm, "270 mm" in mm, "10.5 in" in inches. No words fit all.
#[must_use]
pub fn search(text: &str) -> Vec<&'static Entry> {
    let asked = words(text);
    let scored = all().filter_map(|e| {
        let mut score = 0;
        for word in &asked {
            score += fit(e, word)?;
        }
        Some((score, e))
    });
    let mut found: Vec<(u32, &Entry)> = scored.collect();
    // A stable sort keeps the catalogue's order within one score.
    order::sort(&mut found, |a, b| a.0.cmp(&b.0));
    found.into_iter().map(|(_, e)| e).collect()
}

enum Word {
    Text(String),
    /// Mm across, and how far off still fits.
    Size(f64, f64),
}

fn words(text: &str) -> Vec<Word> {
    let mut out = Vec::new();
    let lower = text
        .to_ascii_lowercase()
        .replace(',', ".")
        .replace('"', " in ");
    let mut pieces = lower.split_whitespace().peekable();
    while let Some(piece) = pieces.next() {
        let digits = piece.trim_end_matches(|c: char| !c.is_ascii_digit());
        let unit = &piece[digits.len()..];
        let Some(number) = decimal(digits) else {
            out.push(Word::Text(piece.into()));
            continue;
        };
        let unit = if unit.is_empty() {
            pieces.next_if(|p| scale(p).is_some()).unwrap_or("cm")
        } else {
            unit
        };
        match scale(unit) {
            Some(mm) => out.push(Word::Size(number * mm, mm * 0.5)),
            None => out.push(Word::Text(piece.into())),
        }
    }
    out
}

/// A number such as 27 or 10.5. The standard reader of numbers knows every
/// real one, with 10 kB of powers of five.
fn decimal(text: &str) -> Option<f64> {
    let (whole, part) = text.split_once('.').unwrap_or((text, ""));
    let digits = |text: &str| text.bytes().all(|b| b.is_ascii_digit());
    if !digits(whole) || !digits(part) || part.len() > 4 {
        return None;
    }
    let all: u32 = format!("{whole}{part}").parse().ok()?;
    let tens = [1.0, 10.0, 100.0, 1000.0, 10_000.0];
    Some(f64::from(all) / tens[part.len()])
}

/// Millimetres to one of a unit.
fn scale(unit: &str) -> Option<f64> {
    match unit {
        "cm" => Some(10.0),
        "mm" => Some(1.0),
        "in" | "inch" | "inches" => Some(25.4),
        _ => None,
    }
}

/// How badly a word fits an entry; nothing when it does not.
fn fit(entry: &Entry, word: &Word) -> Option<u32> {
    match word {
        Word::Text(text) => {
            let mut names = entry.name.split(' ').chain(entry.id.split('-'));
            if names.clone().any(|n| n == text) {
                Some(0)
            } else {
                names.any(|n| n.starts_with(text.as_str())).then_some(1)
            }
        }
        Word::Size(mm, slack) => {
            let [w, d] = entry.size.extent().map(f64::from);
            if (w - mm).abs() <= *slack || (d - mm).abs() <= *slack {
                return Some(0);
            }
            let [least, most] = entry.range.map(f64::from);
            (*mm >= least && *mm <= most).then_some(2)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn first(text: &str) -> Option<&'static str> {
        search(text).first().map(|e| e.id)
    }

    #[test]
    fn a_name_or_its_beginning_is_found() {
        assert_eq!(first("mussels"), Some("mussels"), "whole");
        assert_eq!(first("auber"), Some("aubergine"), "beginning");
        assert_eq!(first("Oval PLATTER"), Some("oval-platter"), "capitals");
        assert_eq!(first("zebra"), None, "nothing");
        assert_eq!(
            search("").len(),
            props().len() + foods().len(),
            "everything"
        );
    }

    #[test]
    fn a_size_is_found_in_all_its_units() {
        for text in [
            "27",
            "27 cm",
            "27cm",
            "270 mm",
            "10.6in",
            "10.6 in plate",
            "10.6\"",
        ] {
            assert_eq!(first(text), Some("dinner-plate"), "{text}");
        }
        assert_eq!(
            first("plate 17"),
            Some("bread-plate"),
            "within the usual range"
        );
        assert_eq!(first("27 fork"), None, "both must fit");
    }

    #[test]
    fn odd_numbers_are_only_words() {
        for text in ["1e999", "é7", "7é", "-", "27 cm cm", "..7"] {
            assert!(search(text).len() < 60, "{text} does not panic");
        }
    }
}
