//! What every stylist knows, and the planner must agree with.
//!
//! Source of all of these: common practice, no source. Colours are the
//! catalogue's estimates.
use planner::colour::{lab, mixed_separation, separation, shades};
use planner::layout::{Layout, LayoutId, Origin, Srgb, Tone, open};
use planner::measures::direction_spread;
use planner::readings::{Study, report};

fn colour(text: &str) -> Srgb {
    Srgb::parse(text).expect("a colour")
}

fn tone(text: &str, share: u8) -> Tone {
    Tone {
        srgb: colour(text),
        share,
        origin: Origin::Guess,
    }
}

/// A roast on a board of one colour, with a runner of another waiting.
fn roast_on(board: &str, runner: &str) -> Layout {
    let mut file: serde_json::Value =
        serde_json::from_str(&Layout::empty(LayoutId(1)).to_json()).expect("JSON");
    file["table"]["surface"]["colour"] = board.into();
    file["next_id"] = 9.into();
    file["items"] = serde_json::json!([{ "id": 1, "number": 1, "name": "roast", "prop": "loaf",
        "at": [600, 450], "size": { "shape": "oval", "width": 300, "depth": 180 }, "height": 90,
        "parts": { "food": { "colours": [{ "srgb": "#694f45", "share": 100 }] } }, "role": "hero" }]);
    file["linens"] = serde_json::json!([{ "id": 2, "name": "runner", "kind": "runner",
        "state": "folded", "at": [600, 1200], "size": [1300, 400], "colour": runner }]);
    open(&file.to_string()).unwrap_or_else(|p| panic!("the layout is sound: {p:?}"))
}

#[test]
fn brown_on_brown_merges_and_a_pale_runner_cures_it() {
    let layout = roast_on("#684d3b", "#d2c4b4");
    let findings = report(&Study::new(&layout), true).findings;
    let lost = findings
        .iter()
        .find(|f| f.reading == "separation")
        .expect("roast on walnut merges");
    let cure = lost.remedy.as_ref().expect("the runner helps");
    assert!(cure.after < 10.0, "cured: {}", cure.after);
}

#[test]
fn a_roast_on_white_linen_is_not_flagged() {
    let layout = roast_on("#ebe8e2", "#ebe8e2");
    let findings = report(&Study::new(&layout), false).findings;
    assert!(
        !findings.iter().any(|f| f.reading == "separation"),
        "it stands out"
    );
}

#[test]
fn pale_on_pale_is_said_softly_until_light_is_known() {
    let mut layout = roast_on("#f5f3ee", "#684d3b");
    layout.items[0].parts.food = Some(planner::layout::Part::plain(colour("#f8f8f6")));
    let findings = report(&Study::new(&layout), false).findings;
    let thin = findings
        .iter()
        .find(|f| f.reading == "separation")
        .expect("white on white");
    assert!(
        thin.sentence.contains("side light may draw it"),
        "{}",
        thin.sentence
    );
}

#[test]
fn what_sinks_into_the_floor_is_not_said_to_sink_into_the_board() {
    let mut layout = roast_on("#ebe8e2", "#ebe8e2");
    layout.floor.colour = colour("#694f45");
    layout.items[0].at = planner::layout::Point::new(120, 450);
    layout.table.width = 121;
    layout.table.depth = 100;
    let findings = report(&Study::new(&layout), false).findings;
    let lost = findings
        .iter()
        .find(|f| f.reading == "separation")
        .expect("brown on brown floor");
    assert!(lost.sentence.contains("floor"), "{}", lost.sentence);
}

#[test]
fn dark_reds_and_crust_do_not_read_clear_on_charcoal() {
    let charcoal = lab(colour("#423e39"));
    for (name, dark) in [
        ("red wine", "#4a1424"),
        ("beetroot", "#5a1730"),
        ("dark crust", "#5a3218"),
    ] {
        assert!(
            separation(lab(colour(dark)), charcoal).lost(),
            "{name} sinks into charcoal"
        );
    }
}

#[test]
fn mixed_food_is_lost_by_the_share_of_its_dark_tones() {
    let pot = shades(&[tone("#2c323a", 100)]);
    let food = shades(&[tone("#202b44", 47), tone("#e57d28", 45), tone("#b7bfd0", 8)]);
    let lost = mixed_separation(&food, &pot).expect("shares").lost;
    assert!(
        (lost - 0.47).abs() < 1e-12,
        "shells are lost, flesh and pearl are not: {lost}"
    );
}

#[test]
fn hands_from_three_sides_spread_more_than_three_from_one() {
    let apart = direction_spread(&[330.0, 90.0, 210.0]).expect("three hands");
    let beside = direction_spread(&[265.0, 270.0, 275.0]).expect("three hands");
    assert!(
        apart > beside + 50.0,
        "11, 3 and 7 o'clock: {apart}; all at 9: {beside}"
    );
}
