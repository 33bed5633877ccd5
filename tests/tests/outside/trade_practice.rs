//! What every stylist knows, and the planner must agree with.
//!
//! Source of all of these: common practice, no source. Colours are the
//! catalogue's estimates.
use planner::colour::{lab, mixed_separation, separation, shades};
use planner::layout::{Layout, LayoutId, Origin, Srgb, Tone, open};
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
fn wine_beetroot_and_dark_crust_on_charcoal_are_said_to_sink() {
    for dark in ["#4a1424", "#5a1730", "#5a3218"] {
        let mut layout = roast_on("#423e39", "#423e39");
        // Flat, it throws no shadow.
        layout.items[0].height = 0;
        layout.items[0].parts.food = Some(planner::layout::Part::plain(colour(dark)));
        layout.head.look = planner::layout::Look::LowKey;
        let findings = report(&Study::new(&layout), false).findings;
        let said = findings.iter().find(|f| f.reading == "separation");
        let lost = said.map_or(0.0, |f| f.figure);
        assert!(
            lost > 90.0,
            "{dark} on charcoal loses its outline, got {lost}"
        );
    }
}

#[test]
fn a_loaf_crust_up_is_turned_before_anything_is_laid() {
    let mut layout = roast_on("#423e39", "#d2c4b4");
    layout.items[0].face = planner::layout::Face::Crust;
    // Flat, it throws no shadow.
    layout.items[0].height = 0;
    layout.items[0].parts.food = Some(planner::layout::Part::plain(colour("#5a3218")));
    let findings = report(&Study::new(&layout), true).findings;
    let said = findings.iter().find(|f| f.reading == "separation");
    let cure = said.and_then(|f| f.remedy.as_ref()).expect("a cure");
    assert!(
        cure.act.starts_with("Turn"),
        "the better face first: {}",
        cure.act
    );
}

#[test]
fn dark_on_dark_without_a_runner_gets_paper_before_another_board() {
    let mut layout = roast_on("#684d3b", "#684d3b");
    layout.linens.clear();
    let findings = report(&Study::new(&layout), true).findings;
    let said = findings.iter().find(|f| f.reading == "separation");
    let cure = said.and_then(|f| f.remedy.as_ref()).expect("a cure");
    assert!(cure.act.contains("paper"), "slipped under: {}", cure.act);
    assert!(cure.after < 10.0, "and it cures: {}", cure.after);
}

#[test]
fn three_hands_on_one_side_are_never_called_a_fault() {
    let mut layout = roast_on("#ebe8e2", "#ebe8e2");
    let mut file: serde_json::Value = serde_json::from_str(&layout.to_json()).expect("JSON");
    file["next_id"] = 30.into();
    file["people"] = serde_json::json!([{ "id": 10 }, { "id": 11 }, { "id": 12 }]);
    file["exposures"] = serde_json::json!([{ "id": 13, "kind": "hands" }]);
    let hand = |id: i32, person: i32, y: i32| {
        serde_json::json!({ "id": id, "person": person, "exposure": 13,
            "entry": [75, y], "target": [360, y] })
    };
    file["hands"] = serde_json::json!([hand(14, 10, 200), hand(15, 11, 450), hand(16, 12, 700)]);
    layout = open(&file.to_string()).unwrap_or_else(|p| panic!("the layout is sound: {p:?}"));
    let findings = report(&Study::new(&layout), true).findings;
    for f in findings.iter().filter(|f| f.is_pressing()) {
        let of_hands = f
            .about
            .iter()
            .filter(|id| (14..=16).contains(&id.0))
            .count();
        assert!(
            of_hands < 3,
            "all three together are no fault: {}",
            f.sentence
        );
    }
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
fn pale_on_pale_is_said_softly_where_no_shadow_draws_it() {
    let mut layout = roast_on("#f5f3ee", "#684d3b");
    // Flat, it throws no shadow.
    layout.items[0].height = 0;
    layout.items[0].parts.food = Some(planner::layout::Part::plain(colour("#f8f8f6")));
    let findings = report(&Study::new(&layout), false).findings;
    let thin = findings
        .iter()
        .find(|f| f.reading == "separation")
        .expect("white on white");
    assert!(
        thin.sentence.contains("after light shadow draws 0%"),
        "{}",
        thin.sentence
    );
}

/// A window taken for the soft source: one of 150 cm, set back at the upper
/// left corner, throws soft diagonal shadows.
#[test]
fn a_large_soft_source_at_an_upper_corner_throws_soft_diagonal_shadows() {
    use glam::dvec3;
    use planner::layout::{Id, Turn};
    let mut layout = roast_on("#ebe8e2", "#ebe8e2");
    layout.light.clock = Turn::from_degrees(315.0);
    [layout.light.width, layout.light.height] = [1500; 2];
    let lit = planner::scene::Lit::of(&layout);
    // Round the roast, 19 cm from its middle on the table.
    let at = |degrees: f64| {
        let glam::DVec2 { x: cos, y: sin } = glam::DVec2::from_angle(degrees.to_radians());
        lit.share(dvec3(600.0 + 190.0 * sin, 450.0 - 190.0 * cos, 0.0), Id(0))
    };
    assert!(at(135.0) < 0.5, "dark to the lower right: {}", at(135.0));
    assert!(at(315.0) > 0.99 && at(225.0) > 0.9, "and nowhere else");
    let soft = (190..420).step_by(5).filter(|far| {
        let far = f64::from(*far) * std::f64::consts::FRAC_1_SQRT_2;
        let share = lit.share(dvec3(600.0 + far, 450.0 + far, 0.0), Id(0));
        (0.1..0.9).contains(&share)
    });
    assert!(
        soft.count() * 5 >= 40,
        "the edge is blurred over 4 cm and more"
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
