//! Files made to hurt: each gives problems, none a panic, nothing is injected.
use planner::layout::{Layout, LayoutId, MAX_ITEMS, ProblemKind, open};
use serde_json::{Value, json};

fn sound() -> Value {
    serde_json::from_str(&Layout::empty(LayoutId(1)).to_json()).expect("JSON")
}

fn item(id: u32) -> Value {
    json!({ "id": id, "at": [1, 1], "size": { "shape": "disc", "diameter": 10 } })
}

fn with(change: impl FnOnce(&mut Value)) -> String {
    let mut file = sound();
    file["next_id"] = 60_000.into();
    change(&mut file);
    file.to_string()
}

#[test]
fn hostile_files_are_refused_with_the_right_kind() {
    use ProblemKind::{Limit, Reference, Syntax, Value as Bad, Version};
    let cases: Vec<(&str, ProblemKind, String)> = vec![
        ("not JSON", Syntax, "hello".into()),
        (
            "NaN",
            Syntax,
            sound().to_string().replacen("1200", "NaN", 1),
        ),
        (
            "1e999",
            Syntax,
            sound().to_string().replacen("1200", "1e999", 1),
        ),
        (
            "nested 10,000 deep",
            Syntax,
            "[".repeat(10_000) + &"]".repeat(10_000),
        ),
        (
            "lone surrogate",
            Syntax,
            sound().to_string().replacen("oak", "\\ud800", 1),
        ),
        (
            "raw control",
            Syntax,
            sound().to_string().replacen("oak", "\u{1}", 1),
        ),
        ("oversized", Limit, " ".repeat(1_000_001)),
        (
            "negative width",
            Limit,
            with(|f| f["table"]["width"] = (-5).into()),
        ),
        ("newer", Version, with(|f| f["version"] = 99.into())),
        (
            "url as colour",
            Bad,
            with(|f| f["floor"] = json!({ "colour": "url(#x)" })),
        ),
        (
            "script as colour",
            Bad,
            with(|f| f["floor"] = json!({ "colour": "javascript:1" })),
        ),
        (
            "a list for an object",
            Bad,
            with(|f| f["table"] = json!([])),
        ),
        (
            "fraction of a mm",
            Bad,
            with(|f| f["frame"]["at"] = json!([0.5, 0])),
        ),
        (
            "doubled id",
            Reference,
            with(|f| f["items"] = json!([item(1), item(1)])),
        ),
        (
            "dangling",
            Reference,
            with(|f| {
                f["items"] = json!([item(1)]);
                f["items"][0]["on"] = 7.into();
            }),
        ),
        (
            "cycle",
            Reference,
            with(|f| {
                f["items"] = json!([item(1), item(2)]);
                f["items"][0]["on"] = 2.into();
                f["items"][1]["on"] = 1.into();
            }),
        ),
        (
            "lying on itself",
            Reference,
            with(|f| {
                f["items"] = json!([item(1)]);
                f["items"][0]["on"] = 1.into();
            }),
        ),
        (
            "too many items",
            Limit,
            with(|f| {
                f["items"] = (1..=MAX_ITEMS as u32 + 1).map(item).collect();
            }),
        ),
        (
            "too much unknown",
            Limit,
            with(|f| f["later"] = "x".repeat(70_000).into()),
        ),
    ];
    for (name, kind, text) in cases {
        let problems = open(&text).expect_err(name);
        assert!(
            problems.iter().any(|p| p.kind == kind),
            "{name}: {problems:?}"
        );
        assert!(
            problems.iter().all(|p| p.found.chars().count() <= 61),
            "{name}: found is short"
        );
    }
}

#[test]
fn a_hundred_thousand_items_are_one_problem() {
    let items: Vec<String> = (0..100_000).map(|_| "{}".to_string()).collect();
    let text = sound().to_string().replacen(
        "\"items\":[]",
        &format!("\"items\":[{}]", items.join(",")),
        1,
    );
    let problems = open(&text).expect_err("too many");
    assert_eq!(problems.len(), 1, "{problems:?}");
}

#[test]
fn markup_and_hidden_characters_in_names_stay_text_or_go() {
    let text = with(|f| {
        f["title"] = "<script>alert(1)</script>\u{202e}\u{200b}".into();
        f["__proto__"] = json!({ "polluted": true });
    });
    let layout = open(&text).expect("names may hold anything");
    assert_eq!(
        layout.head.title, "<script>alert(1)</script>",
        "hidden characters are dropped"
    );
    assert!(
        layout.extra.contains_key("__proto__"),
        "kept as an unknown field, nothing more"
    );
}

#[test]
fn every_truncation_of_a_file_is_refused() {
    let text = planner::starters::harbour_supper().to_json();
    for cut in (0..text.len()).step_by(7) {
        assert!(open(&text[..cut]).is_err(), "cut at {cut}");
    }
}
