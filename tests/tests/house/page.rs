//! The page parses no markup from strings, runs no text as script and names no
//! address off its own origin.

use crate::tree::{Source, lines_with, sources};

const MARKUP: [&str; 9] = [
    "innerHTML",
    "outerHTML",
    "insertAdjacentHTML",
    "dangerouslySetInnerHTML",
    "document.write",
    "srcdoc",
    "DOMParser",
    "eval(",
    "new Function",
];

/// Names that look like addresses and are never fetched.
const NAMESPACES: [&str; 3] = [
    "http://www.w3.org/2000/svg",
    "http://www.w3.org/1999/xlink",
    "http://www.w3.org/1999/xhtml",
];

fn foreign(source: &Source) -> Vec<String> {
    let text = NAMESPACES
        .iter()
        .fold(source.text.clone(), |text, name| text.replace(name, ""));
    lines_with(
        &Source {
            path: source.path.clone(),
            text,
        },
        &["http://", "https://", "\"//", "url(//"],
    )
}

fn shipped() -> Vec<Source> {
    let mut all = sources("www/src", &["ts", "tsx"]);
    all.extend(sources("www", &["html", "css"]));
    all.extend(sources("static", &["svg", "webmanifest", "json"]));
    all
}

#[test]
fn no_string_becomes_markup_or_script() {
    let faults: Vec<String> = shipped()
        .iter()
        .flat_map(|source| lines_with(source, &MARKUP))
        .collect();
    assert!(faults.is_empty(), "{faults:#?}");
}

#[test]
fn nothing_shipped_names_another_origin() {
    let faults: Vec<String> = shipped().iter().flat_map(foreign).collect();
    assert!(faults.is_empty(), "{faults:#?}");
}

#[test]
fn an_address_is_found_and_a_namespace_is_none() {
    let source = |text: &str| Source {
        path: "a.ts".into(),
        text: text.into(),
    };
    for text in ["fetch(\"https://a.example/\")", "src=\"//a.example/x.js\""] {
        assert_eq!(
            foreign(&source(text)).len(),
            1,
            "`{text}` leaves the origin"
        );
    }
    let namespace = "createElementNS(\"http://www.w3.org/2000/svg\", name)";
    assert_eq!(
        foreign(&source(namespace)),
        Vec::<String>::new(),
        "a namespace is no address"
    );
}
