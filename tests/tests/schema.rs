//! The committed JSON Schema against the planner that makes it, and against
//! the verdicts of the PyPI package jsonschema
//! (`reference/generate_schema_check.py`).
use outside_checks::tree::{in_tests, read};
use planner::layout::{open, schema};

/// Run with `OVERSPREAD_WRITE_SCHEMA=1` to write it anew.
#[test]
fn the_committed_schema_is_the_one_the_planner_makes() {
    let made = serde_json::to_string_pretty(&schema()).expect("JSON") + "\n";
    let path = "reference/layout.schema.json";
    if std::env::var_os("OVERSPREAD_WRITE_SCHEMA").is_some() {
        std::fs::write(in_tests(path), &made).expect("written");
    }
    assert!(made == read(path), "{path} is of another planner");
}

/// One file and what the validator made of it.
struct Verdict {
    file: String,
    bytes: Vec<u8>,
    json: bool,
    schema: bool,
    no_unknown: bool,
}

fn verdicts() -> Vec<Verdict> {
    let table = read("reference/schema_verdicts.csv");
    let rows = table.lines().skip(1).map(|line| {
        let cells: Vec<&str> = line.split(',').collect();
        let [file, crc, json, schema, no_unknown] = cells[..] else {
            panic!("five cells: {line}");
        };
        let bytes = std::fs::read(in_tests("..").join(file)).expect(file);
        let now = format!("{:08x}", crc32fast::hash(&bytes));
        assert_eq!(now, crc, "{file} has changed: run generate_schema_check.py");
        Verdict {
            file: file.into(),
            bytes,
            json: json == "1",
            schema: schema == "1",
            no_unknown: no_unknown == "1",
        }
    });
    rows.collect()
}

#[test]
fn the_schema_accepts_whatever_the_planner_opens() {
    let all = verdicts();
    let hostile = std::fs::read_dir(in_tests("hostile/files")).expect("the folder");
    let judged = all.iter().filter(|v| v.file.contains("hostile/")).count();
    assert_eq!(judged, hostile.count(), "every hostile file is judged");
    let mut opened = 0;
    for v in all.iter().skip(1) {
        if open(&String::from_utf8_lossy(&v.bytes)).is_ok() {
            opened += 1;
            assert!(v.json && v.schema, "{} opens, the schema refuses", v.file);
        }
    }
    assert!(opened >= 10, "{opened} files open");
}

#[test]
fn the_schema_knows_every_field_and_refuses_what_it_can() {
    let all = verdicts();
    let verdict = |end: &str| {
        let found = all.iter().find(|v| v.file.ends_with(end));
        found.unwrap_or_else(|| panic!("{end} is judged"))
    };
    for known in [
        "version-1/everything.spread.json",
        "harbour-supper.spread.json",
    ] {
        let all_known = verdict(known).no_unknown;
        assert!(all_known, "{known} has a field the schema does not name");
    }
    assert!(!verdict("ok-proto.json").no_unknown, "an unknown field");
    // What needs more than a schema: doubled keys, sums, either-or, comparing
    // one field with another, the calendar, depth, and halves of letters, which the
    // validator's own reader lets through. So do references, all of them.
    let beyond = [
        "value-doubled-key",
        "value-shares",
        "value-crop-both",
        "value-day-not-there",
        "value-day-of-no-leap-year",
        "limit-rim",
        "limit-ratio",
        "limit-extra",
        "limit-print-as-extra",
        "syntax-deep-extra",
        "syntax-lone-surrogate",
        "syntax-half-pair",
    ];
    let mut refused = 0;
    for v in all.iter().filter(|v| v.file.contains("hostile/")) {
        let name = v.file.rsplit('/').next().unwrap_or_default();
        let stem = name.trim_end_matches(".json");
        if open(&String::from_utf8_lossy(&v.bytes)).is_err() {
            refused += 1;
            let passes = beyond.contains(&stem) || stem.starts_with("reference-");
            assert_eq!(v.schema, passes, "{stem}: the schema's verdict");
        }
    }
    assert!(refused > 70, "{refused} files are refused");
}
