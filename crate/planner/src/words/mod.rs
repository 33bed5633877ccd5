//! One table of whole sentences with named places for names and quantities.
//!
//! The page, the drawing, the terminal and the papers all speak through
//! [`say`]; no sentence is glued together elsewhere.
mod answered;
mod arranged;
mod compared;
mod crockery;
mod dated;
mod guided;
mod handed;
mod labels;
mod laid_over;
mod proposed;
pub mod pseudo;
mod quantity;
mod rigged;
mod sheets;
mod shelved;
mod stepped;
mod table;
mod timed;

pub use labels::LABELS;
pub use quantity::{
    clock, fixed, hour, length, mass, percent, place, rounded, running_time, set_length, way, whole,
};

/// Sentences by id, table by table. `{name}` marks a named place.
pub const SENTENCES: [&[(&str, &str)]; 15] = [
    table::SENTENCES,
    rigged::SENTENCES,
    handed::SENTENCES,
    timed::SENTENCES,
    guided::SENTENCES,
    compared::SENTENCES,
    answered::SENTENCES,
    arranged::SENTENCES,
    proposed::SENTENCES,
    crockery::SENTENCES,
    dated::SENTENCES,
    stepped::SENTENCES,
    laid_over::SENTENCES,
    sheets::SENTENCES,
    shelved::SENTENCES,
];

/// What fills one named place of a sentence.
#[derive(Clone, Debug, PartialEq)]
pub enum Arg {
    /// A name the user gave; isolated so that its direction stays inside it.
    Name(String),
    /// Text that is ready: a formatted quantity.
    Text(String),
}

/// The sentence `id` with its named places filled. An unknown id gives the id
/// itself, which a test over the table rules out for our own calls.
#[must_use]
pub fn say(id: &str, args: &[(&str, Arg)]) -> String {
    let mut all = SENTENCES.iter().copied().flatten();
    let found = all.find(|(key, _)| *key == id);
    let mut text = spoken(found.map_or(id, |(_, t)| *t));
    for (name, arg) in args {
        let value = match arg {
            Arg::Name(name) => isolated(name),
            Arg::Text(text) => text.clone(),
        };
        text = text.replace(&format!("{{{name}}}"), &value);
    }
    text
}

#[cfg(not(any(feature = "words-long", feature = "words-mirrored")))]
fn spoken(line: &str) -> String {
    line.to_string()
}
#[cfg(feature = "words-long")]
use pseudo::long as spoken;
#[cfg(all(feature = "words-mirrored", not(feature = "words-long")))]
use pseudo::mirrored as spoken;

/// A name between isolating marks when it may run right to left.
fn isolated(name: &str) -> String {
    let plain = name.chars().all(|c| c < '\u{590}');
    if plain {
        name.into()
    } else {
        format!("\u{2068}{name}\u{2069}")
    }
}

/// The noun of a thing's name, for a second mention: "pot" of "pot of mussels"
/// and of "mussel pot, pale-lined" and "pot (3)".
#[must_use]
pub fn noun(name: &str) -> &str {
    let whole = name.split([',', '(']).next().unwrap_or(name);
    let cut = [" of ", " with ", " in "].iter();
    let head = cut.fold(whole, |head, at| head.split(at).next().unwrap_or(head));
    head.split_whitespace().last().unwrap_or(name)
}

/// Names joined as a list is spoken: "a", "a and b", "a, b and c".
#[must_use]
pub fn listed(names: &[String]) -> String {
    let names: Vec<String> = names.iter().map(|n| isolated(n)).collect();
    match names.as_slice() {
        [] => String::new(),
        [one] => one.clone(),
        [rest @ .., last] => say(
            "list",
            &[
                ("rest", Arg::Text(rest.join(", "))),
                ("last", Arg::Text(last.clone())),
            ],
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_second_mention_names_the_vessel_not_what_it_holds() {
        for (name, short) in [
            ("mussel pot", "pot"),
            ("pot of mussels", "pot"),
            ("mussel pot, pale-lined", "pot"),
            ("tray with handles", "tray"),
            ("mussel pot (3)", "pot"),
            ("penne in tomato sauce", "penne"),
            ("bowl", "bowl"),
            ("", ""),
        ] {
            assert_eq!(noun(name), short, "{name:?}");
        }
    }

    #[test]
    fn names_fill_their_places_and_keep_their_direction() {
        let args = [
            ("thing", Arg::Name("סיר".into())),
            ("share", Arg::Text("71%".into())),
            ("ground", Arg::Name("board".into())),
        ];
        let text = say("separation-hero", &args);
        assert!(
            text.contains("\u{2068}סיר\u{2069}") && text.contains("71%"),
            "{text}"
        );
        assert!(!text.contains('{'), "no place left open: {text}");
    }

    #[test]
    fn ids_are_single_and_sentences_end() {
        let all = SENTENCES.concat();
        for (n, (id, text)) in all.iter().enumerate() {
            assert!(
                all[..n].iter().all(|(other, _)| other != id),
                "{id} stands twice"
            );
            assert!(!text.is_empty(), "{id} says nothing");
        }
    }
}
