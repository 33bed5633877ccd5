//! The table of words holds what is said and nothing else.

use crate::tree::sources;

#[test]
fn every_sentence_of_the_table_is_said_somewhere() {
    let said = sources("crate", &["rs"]);
    let unused: Vec<&str> = planner::words::SENTENCES
        .iter()
        .map(|(id, _)| *id)
        .filter(|id| {
            let quoted = format!("\"{id}\"");
            !said.iter().any(|source| {
                !source.path.ends_with("words/table.rs") && source.text.contains(&quoted)
            })
        })
        .collect();
    assert!(unused.is_empty(), "nobody says {unused:?}");
}
