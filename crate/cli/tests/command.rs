//! The command run as a script would run it.
use std::process::{Command, Output};

fn run(args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_overspread"))
        .args(args)
        .output()
        .expect("the command runs")
}

const SUPPER: &str = concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/../../static/starters/harbour-supper.spread.json"
);

#[test]
fn a_sound_layout_is_read_for_people_and_for_machines() {
    let people = run(&["read", "--table", SUPPER]);
    let text = String::from_utf8_lossy(&people.stdout);
    assert!(people.status.success(), "{text}");
    assert!(text.contains("Lay the oat runner"), "{text}");
    let machine = run(&["read", SUPPER]);
    let value: serde_json::Value = serde_json::from_slice(&machine.stdout).expect("JSON");
    assert!(
        value["findings"].as_array().is_some_and(|f| f.len() > 3),
        "findings as JSON"
    );
}

#[test]
fn wrong_calls_and_bad_files_have_their_own_codes() {
    assert_eq!(run(&["check", SUPPER]).status.code(), Some(0), "sound");
    assert_eq!(
        run(&["check", "no-such-file"]).status.code(),
        Some(2),
        "unreadable"
    );
    assert_eq!(run(&["dance"]).status.code(), Some(2), "unknown");
    let bad = concat!(env!("CARGO_MANIFEST_DIR"), "/Cargo.toml");
    let out = run(&["check", bad]);
    assert_eq!(out.status.code(), Some(1), "not a layout");
    assert!(
        String::from_utf8_lossy(&out.stderr).contains("JSON text"),
        "it says what is wrong"
    );
}
