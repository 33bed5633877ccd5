//! One cause is one sentence.
use crate::layout::{Layout, Srgb};
use crate::readings::samples::{after, disc, laid, read, said};

/// A bowl of one colour with food of another in it.
fn bowl(id: u16, x: i32, prop: &str, inside: &str, food: &str) -> String {
    format!(
        r#"{{"id":{id},"number":{id},"name":"bowl {id}","prop":"{prop}","at":[{x},450],
        "size":{{"shape":"disc","diameter":180,"rim":10}},
        "parts":{{"rim":{{"colours":[{{"srgb":"{inside}","share":100}}]}},
        "well":{{"colours":[{{"srgb":"{inside}","share":100}}]}}}}}},
        {{"id":{food_id},"number":{food_id},"name":"stew","prop":"soup","at":[{x},450],"on":{id},
        "size":{{"shape":"disc","diameter":140}},
        "parts":{{"food":{{"colours":[{{"srgb":"{food}","share":100}}]}}}}}}"#,
        food_id = id + 1
    )
}

fn bowls(props: [&str; 3]) -> Layout {
    let each = [(10, 300), (20, 600), (30, 900)].iter().zip(props);
    let each: Vec<String> = each
        .map(|((id, x), prop)| bowl(*id, *x, prop, "#2c323a", "#20242a"))
        .collect();
    laid(&format!(r#""items":[{}]"#, each.join(",")))
}

#[test]
fn foods_in_vessels_of_one_sort_sink_in_one_sentence() {
    let layout = bowls(["noodle-bowl"; 3]);
    let inside = |layout: &Layout| {
        let all = read(layout).into_iter();
        all.filter(|f| f.sentence.contains("still sink")).count()
    };
    assert_eq!(inside(&layout), 1, "three bowls alike");
    let one = said(&layout, "separation:in:noodle-bowl").expect("said once");
    assert!(
        one.sentence.contains("3 foods") && one.sentence.contains("100%"),
        "{}",
        one.sentence
    );
    let remedy = one.remedy.as_ref().expect("all swapped");
    assert!(remedy.after < one.figure, "{}", remedy.predicted);
    let then = after(&layout, &one);
    let swapped = then.items.iter().filter(|i| i.name.contains("pale-lined"));
    assert_eq!(swapped.count(), 3, "one remedy for all");
    assert_eq!(inside(&then), 0, "and all are cured");
    let mixed = bowls(["noodle-bowl", "soup-bowl", "noodle-bowl"]);
    assert_eq!(inside(&mixed), 2, "two sorts are two causes");
}

#[test]
fn pale_things_on_a_pale_ground_are_one_sentence_with_the_hero() {
    let dishes = [
        disc(1, 350, 300, 240, "hero"),
        disc(2, 850, 320, 160, "support"),
        disc(3, 600, 650, 160, "filler"),
    ];
    let mut layout = laid(&format!(r#""items":[{}]"#, dishes.join(",")));
    let [pale, dark] = [0xde_dddb, 0x20_242a].map(Srgb::hex);
    let mut keys = |colour: Srgb| -> Vec<String> {
        layout.table.surface.colour = colour;
        for item in &mut layout.items {
            item.parts.rim = Some(crate::layout::Part::plain(colour));
        }
        let all = read(&layout).into_iter();
        let lost = all.filter(|f| f.reading == "separation" && !f.taste);
        lost.map(|f| f.key).collect()
    };
    assert_eq!(keys(pale), ["separation:on:0"], "light decides for all");
    assert_eq!(keys(dark).len(), 2, "in the dark a hero sinks by itself");
    layout.table.surface.colour = pale;
    for item in &mut layout.items {
        item.parts.rim = Some(crate::layout::Part::plain(pale));
    }
    let one = said(&layout, "separation:on:0").expect("said once");
    assert_eq!(one.rank, 2, "the hero is in it");
    assert!(
        one.sentence.contains("after light shadow draws"),
        "{}",
        one.sentence
    );
}
