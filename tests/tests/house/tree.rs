//! Reading the work tree.

use std::fs;
use std::path::{Path, PathBuf};

/// Longest source file, in lines; past it a file does more than one job.
const MAX_LINES: usize = 400;

/// What builds make and installers bring.
const NOT_OURS: [&str; 7] = [
    "target",
    "node_modules",
    "generated",
    "dist",
    ".venv",
    ".git",
    "shots",
];

/// The top of the work tree.
pub(crate) fn root() -> PathBuf {
    let package = Path::new(env!("CARGO_MANIFEST_DIR"));
    package
        .parent()
        .expect("tests is a member crate")
        .to_path_buf()
}

/// A source file.
pub(crate) struct Source {
    /// Path from the top of the work tree, with forward slashes.
    pub(crate) path: String,
    /// What it holds.
    pub(crate) text: String,
}

/// Every file of ours under `dir` with one of the extensions, sorted by path.
pub(crate) fn sources(dir: &str, extensions: &[&str]) -> Vec<Source> {
    let mut found = Vec::new();
    let mut open = vec![root().join(dir)];
    while let Some(dir) = open.pop() {
        for entry in fs::read_dir(&dir).unwrap_or_else(|error| panic!("{}: {error}", dir.display()))
        {
            let path = entry.expect("a readable directory").path();
            let name = path.file_name().unwrap_or_default().to_string_lossy();
            if path.is_dir() {
                if !NOT_OURS.contains(&name.as_ref()) {
                    open.push(path);
                }
            } else if extensions.contains(
                &path
                    .extension()
                    .unwrap_or_default()
                    .to_string_lossy()
                    .as_ref(),
            ) {
                found.push(path);
            }
        }
    }
    found.sort();
    assert!(
        !found.is_empty(),
        "{dir} holds no {extensions:?}: the rule would check nothing"
    );
    found.iter().map(|path| source(path)).collect()
}

fn source(path: &Path) -> Source {
    let text =
        fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    let path = path.strip_prefix(root()).expect("under the root");
    Source {
        path: path.to_string_lossy().replace('\\', "/"),
        text,
    }
}

/// Source text without its `//` comments, line for line. Two slashes after a
/// colon or an opening quote belong to an address.
pub(crate) fn code(text: &str) -> String {
    let comment = |line: &str| {
        let mut pairs = line.match_indices("//");
        pairs
            .find(|&(at, _)| !line[..at].ends_with([':', '"', '\'', '`', '(']))
            .map(|(at, _)| at)
    };
    text.lines()
        .map(|line| &line[..comment(line).unwrap_or(line.len())])
        .collect::<Vec<_>>()
        .join("\n")
}

/// Lines of code that hold one of the words, as `path:line: word`.
pub(crate) fn lines_with(source: &Source, words: &[&str]) -> Vec<String> {
    let code = code(&source.text);
    let mut found = Vec::new();
    for (number, line) in code.lines().enumerate() {
        for word in words.iter().filter(|word| line.contains(**word)) {
            found.push(format!("{}:{}: {word}", source.path, number + 1));
        }
    }
    found
}

#[test]
fn comments_are_not_code() {
    assert_eq!(
        code("a // b\n/// c\n\"http://d\""),
        "a \n\n\"http://d\"",
        "only the code is left"
    );
}

#[test]
fn no_file_is_too_long() {
    let all = sources(".", &["rs", "ts", "tsx", "css", "mjs", "py"]);
    let long: Vec<String> = all
        .iter()
        .map(|source| (&source.path, source.text.lines().count()))
        .filter(|&(_, lines)| lines > MAX_LINES)
        .map(|(path, lines)| format!("{path}: {lines} lines"))
        .collect();
    assert!(
        long.is_empty(),
        "over {MAX_LINES} lines, so more than one job: {long:#?}"
    );
}

#[test]
fn nothing_is_left_unfinished() {
    // Written in halves, as this file is searched too.
    let marks = [
        concat!("to", "do!("),
        concat!("unimple", "mented!("),
        concat!("db", "g!("),
        concat!("FIX", "ME"),
        concat!("XX", "X:"),
    ];
    let all = sources(".", &["rs", "ts", "tsx", "css", "mjs", "py"]);
    let left: Vec<String> = all
        .iter()
        .flat_map(|source| {
            let whole = Source {
                path: source.path.clone(),
                text: source.text.replace("//", ""),
            };
            lines_with(&whole, &marks)
        })
        .collect();
    assert!(left.is_empty(), "left in the code: {left:#?}");
}

#[test]
fn no_property_fixes_its_own_number_of_cases() {
    // Then `PROPTEST_CASES` would not raise it. In halves, as above.
    let fixed = [concat!("with_", "cases"), concat!("ProptestConfig", " {")];
    let mut all = sources("crate", &["rs"]);
    all.extend(sources("tests", &["rs"]));
    let found: Vec<String> = all
        .iter()
        .filter(|source| source.text.contains("proptest"))
        .flat_map(|source| lines_with(source, &fixed))
        .collect();
    assert!(found.is_empty(), "{found:#?}");
}
