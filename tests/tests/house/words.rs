//! The table of words holds what is said and nothing else.

use crate::tree::{code, sources};

/// Whether a file holds words, and says none.
fn is_table(path: &str) -> bool {
    let speaks = ["words/mod.rs", "words/quantity.rs"];
    path.contains("planner/src/words/") && !speaks.iter().any(|of| path.ends_with(of))
}

#[test]
fn every_sentence_of_the_table_is_said_somewhere() {
    let said = sources("crate", &["rs"]);
    let unused: Vec<&str> = planner::words::SENTENCES
        .iter()
        .copied()
        .flatten()
        .map(|(id, _)| *id)
        .filter(|id| {
            let quoted = format!("\"{id}\"");
            !said
                .iter()
                .any(|source| !is_table(&source.path) && source.text.contains(&quoted))
        })
        .collect();
    assert!(unused.is_empty(), "nobody says {unused:?}");
}

#[test]
fn what_is_said_stands_in_the_table() {
    let known = planner::words::SENTENCES.concat();
    let mut unknown = Vec::new();
    for source in sources("crate", &["rs"]) {
        let text = code(&source.text);
        for (at, call) in text.match_indices("say(\"") {
            let id = text[at + call.len()..]
                .split('"')
                .next()
                .unwrap_or_default();
            if known.iter().all(|(sentence, _)| *sentence != id) {
                unknown.push(format!("{}: {id}", source.path));
            }
        }
    }
    assert!(unknown.is_empty(), "no sentence has the id {unknown:?}");
}

/// The function or constant the page's build makes of a label.
fn spoken_as(id: &str) -> String {
    let mut words = id.split('-');
    let mut name = format!("say.{}", words.next().unwrap_or_default());
    for word in words {
        name.push_str(&word[..1].to_uppercase());
        name.push_str(&word[1..]);
    }
    name
}

#[test]
fn every_label_of_the_table_stands_on_the_page() {
    let page = sources("www/src", &["ts", "tsx"]);
    let unused: Vec<&str> = planner::words::LABELS
        .concat()
        .iter()
        .map(|(id, _)| *id)
        .filter(|id| {
            let name = spoken_as(id);
            let longer = |rest: &str| rest.starts_with(|c: char| c.is_alphanumeric());
            !page.iter().any(|source| {
                let mut found = source.text.match_indices(&name);
                found.any(|(at, _)| !longer(&source.text[at + name.len()..]))
            })
        })
        .collect();
    assert!(unused.is_empty(), "the page does not say {unused:?}");
}

#[test]
fn labels_stand_once_and_say_something() {
    let labels = planner::words::LABELS.concat();
    for (n, (id, text)) in labels.iter().enumerate() {
        assert!(
            labels[..n].iter().all(|(other, _)| other != id),
            "{id} stands twice"
        );
        assert!(!text.is_empty(), "{id} says nothing");
    }
}

/// Words a person would read that stand in the page's own source: text between
/// tags, literals of attributes that are read out, and any literal of two words
/// or more on a line that names no classes.
fn hard_coded(text: &str) -> Vec<String> {
    let code = code(text);
    let mut found = Vec::new();
    for (number, line) in code.lines().enumerate() {
        if line.trim_start().starts_with(['*', '/']) || line.contains("class=") {
            continue;
        }
        let mut note = |what: &str| found.push(format!("{}: {what}", number + 1));
        for name in ["aria-label=\"", "title=\"", "placeholder=\"", "alt=\""] {
            if line.contains(name) {
                note(name);
            }
        }
        for literal in literals(line) {
            if is_sentence(literal) {
                note(literal);
            }
        }
        let tagless = line.trim();
        let text = match (tagless.find('>'), tagless.rfind("</")) {
            (Some(open), Some(close)) if open < close => &tagless[open + 1..close],
            _ if !tagless.contains(NOT_TEXT) => tagless,
            _ => "",
        };
        if is_words(text) {
            note(text);
        }
    }
    found
}

/// What lines of code hold and lines of text in a tag do not.
const NOT_TEXT: [char; 12] = ['=', '{', '}', '(', ')', '<', '>', ';', '"', '`', ',', ':'];

/// The string literals of one line, without what a template puts in.
fn literals(line: &str) -> Vec<&str> {
    let mut found = Vec::new();
    let mut rest = line;
    while let Some(open) = rest.find(['"', '`']) {
        let quote = &rest[open..=open];
        let Some(length) = rest[open + 1..].find(quote) else {
            break;
        };
        let before = &rest[..open];
        if !before.ends_with(" d=") && !before.ends_with("{`") {
            found.push(&rest[open + 1..open + 1 + length]);
        }
        rest = &rest[open + 2 + length..];
    }
    found
}

fn is_sentence(literal: &str) -> bool {
    let words: Vec<&str> = literal.split(' ').collect();
    let reads = |word: &&&str| {
        word.len() > 1
            && word
                .chars()
                .all(|c| c.is_alphabetic() || ".,;:’…".contains(c))
    };
    let whole = words.iter().filter(reads).count();
    whole >= 2 && whole * 2 > words.len()
}

fn is_words(text: &str) -> bool {
    let letters = text.chars().filter(|c| c.is_alphabetic()).count();
    let plain = |c: char| c.is_alphabetic() || " .,;’…!?&".contains(c);
    // A line of code that is one name alone begins with a small letter.
    let sentence = text.contains(' ') || text.starts_with(char::is_uppercase);
    letters > 1 && sentence && text.chars().all(plain)
}

#[test]
fn the_page_speaks_from_the_table_alone() {
    let faults: Vec<String> = sources("www/src", &["ts", "tsx"])
        .iter()
        .flat_map(|source| {
            let own = hard_coded(&source.text);
            own.into_iter()
                .map(|fault| format!("{}:{fault}", source.path))
        })
        .collect();
    assert!(faults.is_empty(), "words of the page's own: {faults:#?}");
}

#[test]
fn words_in_the_source_are_found() {
    for text in [
        "<button aria-label=\"Less\">",
        "<h3>Files</h3>",
        "          Take it away",
        "fault = \"The link could not be read.\";",
        "fault = `Edit ${number} could not be read again`;",
    ] {
        assert_eq!(hard_coded(text).len(), 1, "`{text}`");
    }
    for text in [
        "<h3>{say.files}</h3>",
        "<div class=\"line last panel\">",
        "// A comment of several words.",
        "import * as say from \"#words\";",
        "return undefined;",
        "    return;",
    ] {
        assert_eq!(hard_coded(text), Vec::<String>::new(), "`{text}`");
    }
}
