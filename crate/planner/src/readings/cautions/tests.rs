use super::{Concern, cautions};
use crate::layout::{Layout, LightShape, RigKind, TableShape};
use crate::readings::samples::laid;

/// A pale board with one thing of the catalogue on it.
fn with(prop: &str) -> Layout {
    with_more(prop, "")
}

fn with_more(prop: &str, more: &str) -> Layout {
    laid(&format!(
        r##""items":[{{"id":1,"number":1,"name":"{prop}","prop":"{prop}","height":40,
        "at":[600,450],"size":{{"shape":"disc","diameter":80}},"role":"support"}}]{more}"##
    ))
}

/// The line of this caution, if it applies.
fn line(layout: &Layout, id: &str) -> Option<String> {
    let all = cautions(layout);
    assert!(all.iter().filter(|c| c.id == id).count() <= 1, "{id} once");
    all.into_iter().find(|c| c.id == id).map(|c| c.line)
}

fn has(layout: &Layout, id: &str) -> bool {
    line(layout, id).is_some()
}

/// What the empty board has anyway: a camera over it.
fn empty() -> Layout {
    laid("")
}

#[test]
fn a_bare_board_has_only_what_hangs_over_it() {
    let ids: Vec<&str> = cautions(&empty()).iter().map(|c| c.id).collect();
    assert_eq!(ids, ["tether", "height"], "2.3 m up, and nothing on it");
}

#[test]
fn what_hangs_is_tethered_while_there_is_a_lens_over_the_frame() {
    let mut layout = empty();
    assert!(line(&layout, "tether").is_some_and(|l| l.contains("arm")));
    layout.rig.kind = RigKind::Ceiling;
    assert!(line(&layout, "tether").is_some_and(|l| l.contains("rigger")));
}

#[test]
fn nobody_climbs_alone_from_two_metres_up() {
    let mut layout = empty();
    // The sensor is 1560 mm above the table: 50·(1 + 1050/36) and behind it
    // 50·(1 + 36/1050).
    layout.table.height = 439;
    assert!(!has(&layout, "height"), "just under two metres");
    layout.table.height = 440;
    assert!(has(&layout, "height"), "just over");
}

#[test]
fn a_slab_of_twenty_kilograms_takes_two_and_its_weight_is_said() {
    let mut layout = empty();
    layout.table.surface.prop = "pale-marble".into();
    (layout.table.width, layout.table.depth) = (1_000, 370);
    assert!(!has(&layout, "slab"), "19.98 kg");
    layout.table.depth = 371;
    assert!(has(&layout, "slab"), "20.03 kg");
    // 1.2 × 0.9 × 0.02 m × 2700 kg/m³.
    (layout.table.width, layout.table.depth) = (1_200, 900);
    let said = line(&layout, "slab").expect("heavy");
    assert!(said.contains("58.3 kg"), "{said}");
    (layout.table.shape, layout.table.width) = (TableShape::Round, 900);
    // π/4 × 0.9² × 0.02 × 2700.
    let said = line(&layout, "slab").expect("heavy");
    assert!(said.contains("34.4 kg"), "{said}");
    layout.table.surface.prop = "oak".into();
    assert!(!has(&layout, "slab"), "boards are no slabs");
}

#[test]
fn a_lamp_has_cables_and_a_window_has_none() {
    let mut layout = with("wine-tumbler");
    assert!(!has(&layout, "mains"), "a window");
    layout.light.shape = LightShape::Disc;
    assert!(line(&layout, "mains").is_some_and(|l| l.contains("wine-tumbler")));
    let mut dry = with("loaf");
    dry.light.shape = LightShape::Disc;
    assert!(
        line(&dry, "mains").is_some_and(|l| !l.contains("loaf")),
        "cables alone"
    );
}

#[test]
fn a_flame_is_measured_from_what_burns_nearest() {
    assert!(!has(&with("loaf"), "candle"), "no flame");
    let alone = line(&with("taper-candle"), "candle").expect("a flame");
    assert!(alone.contains("Never leave"), "{alone}");
    let linen = |x: i32| {
        let more = format!(
            r##","linens":[{{"id":2,"name":"napkin","kind":"napkin","state":"flat",
            "at":[{x},450],"size":[200,200],"colour":"#d2c4b4"}}]"##
        );
        line(&with_more("taper-candle", &more), "candle").expect("a flame")
    };
    // From the wick to the napkin's edge: 850 − 100 − 600 mm.
    assert!(
        linen(850).contains("15 cm from the napkin"),
        "{}",
        linen(850)
    );
    assert!(linen(650).contains("over the napkin"), "{}", linen(650));
}

#[test]
fn each_thing_brings_its_own_caution_and_no_other() {
    let all = [
        "glass",
        "oil",
        "knives",
        "steam",
        "raw",
        "allergens",
        "surface",
        "set-food",
    ];
    for (prop, own) in [
        ("fork", &[][..]),
        ("dinner-plate", &[]),
        ("wine-tumbler", &["glass", "allergens"]),
        ("oil-carafe", &["glass", "oil"]),
        ("cook-knife", &["knives"]),
        ("soup", &["steam", "allergens", "set-food"]),
        ("mussels", &["raw", "allergens", "set-food"]),
        ("loaf", &["allergens", "set-food"]),
        ("olives", &["set-food"]),
    ] {
        let layout = with(prop);
        for id in all {
            assert_eq!(has(&layout, id), own.contains(&id), "{prop}: {id}");
        }
    }
}

#[test]
fn a_stained_board_is_not_for_food_that_lies_on_it_bare() {
    let mut layout = with("loaf");
    layout.table.surface.prop = "oak".into();
    assert!(!has(&layout, "surface"), "bare oak");
    layout.table.surface.prop = "charcoal-planks".into();
    assert!(has(&layout, "surface"), "stained");
    let mut empty = with("dinner-plate");
    empty.table.surface.prop = "charcoal-planks".into();
    assert!(!has(&empty, "surface"), "no food on it");
}

#[test]
fn every_caution_is_one_line_that_defers_and_none_says_safe() {
    let props = [
        "taper-candle",
        "mussels",
        "loaf",
        "oil-carafe",
        "bread-knife",
        "soup",
    ];
    let item = |n: usize| {
        format!(
            r##"{{"id":{0},"number":{0},"name":"{1}","prop":"{1}","height":40,
            "at":[{0}00,450],"size":{{"shape":"disc","diameter":80}},"role":"support"}}"##,
            n + 1,
            props[n]
        )
    };
    let items: Vec<String> = (0..props.len()).map(item).collect();
    let mut layout = laid(&format!(r#""items":[{}]"#, items.join(",")));
    layout.light.shape = LightShape::Disc;
    layout.table.surface.prop = "slate".into();
    let all = cautions(&layout);
    assert_eq!(all.len(), 12, "all but a coated board: {all:?}");
    for caution in &all {
        let line = &caution.line;
        assert!(
            line.contains("come first") || line.contains("comes first"),
            "{line}"
        );
        assert!(!line.contains('\n') && !line.contains('{'), "{line}");
        assert!(!line.to_lowercase().contains("safe"), "{line}");
    }
    let concerns = [
        Concern::Camera,
        Concern::Table,
        Concern::Hands,
        Concern::Food,
    ];
    for concern in &concerns {
        assert!(all.iter().any(|c| c.concern == *concern), "{concern:?}");
    }
}
