//! The light on small tables, on either side of each threshold.
use crate::layout::{Card, CardKind, Extra, Id, Layout, LightShape, MAX_CARDS, Point, Srgb, Turn};
use crate::readings::samples::{after, disc, laid, read, said};
use crate::readings::{Mark, State, Study, live};

/// A dark hero on the left and a dish on the right, 600 mm apart, under a
/// window at 9 o'clock.
pub(super) fn two() -> Layout {
    let dishes = [
        disc(1, 300, 450, 200, "hero"),
        disc(2, 900, 450, 200, "support"),
    ];
    let mut layout = laid(&format!(r#""items":[{}]"#, dishes.join(",")));
    layout.light.clock = Turn::from_degrees(270.0);
    layout.light.height_above_table = 600;
    layout
}

fn falls(layout: &Layout) -> f64 {
    said(layout, "light").expect("two dishes").figure
}

#[test]
fn more_than_a_stop_between_main_dishes_is_said() {
    // Where the window stands as near as makes it just a stop.
    let mut layout = two();
    let (mut said_one, mut held_one) = (false, false);
    for distance in (900..2600).step_by(20) {
        layout.light.distance = distance;
        let f = said(&layout, "light").expect("two dishes");
        let apart = f.figure > 1.0;
        assert_eq!(f.state == State::LookAgain, apart, "{}", f.sentence);
        assert_eq!(f.sentence.contains("falls"), apart, "{}", f.sentence);
        said_one |= apart;
        held_one |= !apart;
    }
    assert!(said_one && held_one, "both sides were met");
}

#[test]
fn light_farther_back_falls_less_and_the_remedies_keep_their_word() {
    let mut layout = two();
    layout.light.distance = 1000;
    let near = falls(&layout);
    let f = said(&layout, "light").expect("two dishes");
    let remedy = f.remedy.as_ref().expect("something helps");
    assert!(remedy.after < near, "{}: {}", remedy.act, remedy.predicted);
    let then = after(&layout, &f);
    assert!((falls(&then) - remedy.after).abs() < 1e-12, "as promised");
    layout.light.distance = 2600;
    assert!(falls(&layout) < near - 0.5, "farther back is more even");
    let lines = |l: &Layout| {
        let marks = said(l, "light").expect("two dishes").marks;
        marks
            .iter()
            .filter(|m| matches!(m, Mark::StopLine { .. }))
            .count()
    };
    assert!(lines(&layout) > 0, "stop lines are drawn");
}

#[test]
fn a_light_under_the_table_is_said_and_one_above_is_not() {
    let mut layout = two();
    layout.light.height_above_table = 50;
    layout.light.height = 10;
    layout.light.distance = 0;
    layout.light.shape = LightShape::Window;
    // It stands on the table's middle and faces away from the hero.
    let f = said(&layout, "light:dark").expect("the hero is dark");
    assert_eq!((f.state, f.rank), (State::WontWork, 1), "{}", f.sentence);
    let then = after(&layout, &f);
    assert!(said(&then, "light:dark").is_none(), "and it is cured");
    assert!(said(&two(), "light:dark").is_none(), "a usual window");
}

#[test]
fn no_light_makes_a_figure_that_is_none() {
    let mut layout = two();
    layout.items[1].height = 3_000;
    for (distance, above, size) in [
        (0, 50, 10),
        (0, 20_000, 10),
        (100, 60, 9_000),
        (20_000, 50, 10),
    ] {
        for shape in [LightShape::Disc, LightShape::Window] {
            for clock in [0.0, 90.0, 123.5, 270.0] {
                layout.light.shape = shape;
                layout.light.clock = Turn::from_degrees(clock);
                layout.light.distance = distance;
                layout.light.height_above_table = above;
                [layout.light.width, layout.light.height] = [size; 2];
                for f in read(&layout) {
                    assert!(f.figure.is_finite(), "{}", f.sentence);
                    assert!(!f.sentence.contains('{'), "{}", f.sentence);
                }
            }
        }
    }
}

/// The hero with a wall of a loaf between it and the window.
fn walled(height: i32) -> Layout {
    let mut layout = two();
    layout.items.swap(0, 1);
    layout.items[0].at.x = 130;
    layout.items[0].height = height;
    layout.light.height_above_table = 700;
    layout
}

#[test]
fn a_quarter_of_the_hero_in_shadow_is_said() {
    let mut met = [false; 3];
    for height in (0..400).step_by(10) {
        let layout = walled(height);
        let found = said(&layout, "light:shadow");
        let Some(f) = found else {
            met[0] = true;
            continue;
        };
        assert!(f.figure >= 10.0, "under a tenth nothing is said");
        assert_eq!(
            f.state == State::LookAgain,
            f.figure >= 25.0,
            "{}",
            f.sentence
        );
        assert!(f.sentence.contains("dish 2"), "{}", f.sentence);
        met[if f.figure >= 25.0 { 2 } else { 1 }] = true;
        if let Some(remedy) = &f.remedy {
            let then = after(&layout, &f);
            let left = said(&then, "light:shadow").map_or(remedy.after, |f| f.figure);
            assert!((left - remedy.after).abs() < 1e-9, "{}", remedy.act);
        }
    }
    assert_eq!(met, [true; 3], "none, noted and said");
}

#[test]
fn a_white_brighter_lit_than_the_hero_clips() {
    let white = |tone: u32| {
        let mut layout = two();
        layout.light.height_above_table = 1200;
        layout.light.distance = 1000;
        // The hero on the far side; the other is nearer the window.
        layout.items[0].at.x = 900;
        layout.items[1].at.x = 300;
        layout.items[1].parts.rim.as_mut().expect("a rim").colours[0].srgb = Srgb::hex(tone);
        said(&layout, "light:whites")
    };
    let clips = white(0xf4_f4f2).expect("nearly full tone");
    assert_eq!(clips.state, State::LookAgain, "{}", clips.sentence);
    assert!(clips.figure < 0.0);
    assert!(white(0x80_8080).is_none(), "grey never does");
    let mut noted = false;
    for grey in 0xb0..0xff_u32 {
        let Some(f) = white(grey << 16 | grey << 8 | grey) else {
            continue;
        };
        assert!(f.figure < 0.5, "from half a stop nothing is said");
        assert_eq!(
            f.state == State::LookAgain,
            f.figure < 0.0,
            "{}",
            f.sentence
        );
        noted |= f.figure >= 0.0;
    }
    assert!(noted, "within half a stop it is noted");
}

#[test]
fn a_white_that_clips_is_filled_against_moved_away_or_swapped() {
    let white = |distance: i32| {
        let mut layout = two();
        layout.light.height_above_table = 1200;
        layout.light.distance = distance;
        layout.items[0].at.x = 900;
        layout.items[1].at.x = 300;
        layout.items[1].parts.rim.as_mut().expect("a rim").colours[0].srgb = Srgb::hex(0xf8_f8f6);
        layout
    };
    let mut acts = Vec::new();
    for (distance, full) in (700..1500)
        .step_by(40)
        .flat_map(|d| [(d, false), (d, true)])
    {
        let mut layout = white(distance);
        if full {
            // No more cards: the dish is moved away from the light.
            let card = Card {
                id: Id(0),
                kind: CardKind::Black,
                at: Point::new(3000, 3000),
                turn: Turn::ZERO,
                width: 100,
                height: 100,
                extra: Extra::new(),
            };
            let each = (0..MAX_CARDS as u16).map(|n| (Id(40 + n), card.clone()));
            layout.cards = each.map(|(id, card)| Card { id, ..card }).collect();
        }
        let Some(f) = said(&layout, "light:whites").filter(|f| f.state == State::LookAgain) else {
            continue;
        };
        let remedy = f.remedy.as_ref().expect("something helps");
        assert!(
            remedy.after >= f.figure * 0.5,
            "at least half of it: {}",
            remedy.act
        );
        let then = said(&after(&layout, &f), "light:whites");
        let left = then.map_or(remedy.after, |f| f.figure);
        assert!((left - remedy.after).abs() < 1e-9, "{}", remedy.act);
        assert_eq!(remedy.act.contains("white card"), !full, "{}", remedy.act);
        acts.push(remedy.act.clone());
    }
    assert!(
        acts.iter().any(|a| a.contains("Move the dish 2")),
        "{acts:?}"
    );
}

/// A hero of a pot, food up to some height in it, under a window at 9 o'clock.
fn potted(food: i32, distance: i32) -> Layout {
    let mut layout = laid(&format!(
        r#""items":[{{"id":1,"number":1,"name":"pot","prop":"enamel-pot","height":130,"at":[600,450],
        "size":{{"shape":"disc","diameter":260,"rim":12}},"role":"hero"}},
        {{"id":2,"number":1,"name":"stew","prop":"mussels","height":{food},"at":[600,450],"on":1,
        "size":{{"shape":"disc","diameter":228}}}},{}]"#,
        disc(3, 250, 450, 150, "support")
    ));
    layout.light.clock = Turn::from_degrees(270.0);
    layout.light.distance = distance;
    layout.light.height_above_table = 700;
    layout
}

#[test]
fn a_pot_shades_its_own_food_and_less_when_it_is_full_or_the_light_higher() {
    let shaded = |layout: &Layout| said(layout, "light:shadow").map_or(0.0, |f| f.figure);
    let low = potted(40, 2200);
    let f = said(&low, "light:shadow").expect("deep in the pot");
    assert!(f.sentence.contains("its own walls"), "{}", f.sentence);
    assert!(f.figure > shaded(&potted(90, 2200)), "fuller");
    assert_eq!(shaded(&potted(124, 2200)), 0.0, "to the brim");
    let mut high = low.clone();
    high.light.height_above_table = 1600;
    assert!(shaded(&high) < f.figure, "a higher light");
    // Falls between it and the dish beside it by what the walls take, too.
    assert!(falls(&low) > falls(&potted(124, 2200)) + 0.2, "darker");
}

#[test]
fn two_of_a_name_are_told_apart_by_their_numbers() {
    let mut layout = two();
    layout.light.distance = 1000;
    for item in &mut layout.items {
        item.name = "bowl".into();
    }
    let f = said(&layout, "light").expect("two dishes");
    assert!(
        f.sentence.contains("from the bowl (1) to the bowl (2)"),
        "{}",
        f.sentence
    );
    layout.items[1].name = "dish".into();
    let f = said(&layout, "light").expect("two dishes");
    assert!(
        f.sentence.contains("from the bowl to the dish"),
        "{}",
        f.sentence
    );
}

#[test]
fn three_tenths_of_an_edge_taken_by_light_are_said() {
    // Grey on a lighter grey, a wall of a loaf before it: in its shadow both
    // are dark, and under L* 40 tones close up.
    let walled = |height: i32| {
        let mut layout = walled(height);
        layout.table.surface.colour = Srgb::hex(0x8a_8a8a);
        layout.items[1].parts.rim.as_mut().expect("a rim").colours[0].srgb = Srgb::hex(0x55_5555);
        layout
    };
    let mut met = [false; 3];
    for height in (0..400).step_by(20) {
        let layout = walled(height);
        let Some(f) = said(&layout, "separation:taken") else {
            met[0] = true;
            continue;
        };
        assert!(f.figure >= 10.0, "from a tenth: {}", f.sentence);
        let main = f.figure >= 30.0;
        assert_eq!(f.state == State::LookAgain, main, "{}", f.sentence);
        met[if main { 2 } else { 1 }] = true;
        if let Some(remedy) = &f.remedy {
            let then = said(&after(&layout, &f), "separation:taken");
            let left = then.map_or(0.0, |f| f.figure);
            assert!(left < 30.0 && remedy.after < 30.0, "{}: {left}", remedy.act);
        }
    }
    assert_eq!(met, [true; 3], "none, told and said");
    // Working shows both, before and after light.
    let f = said(&walled(300), "separation:taken").expect("in its shadow");
    let told = f
        .working
        .iter()
        .any(|w| w.contains("lost before light, ") && w.contains("after light"));
    assert!(told, "{:?}", f.working);
}

#[test]
fn a_drag_tells_the_same_figures_without_stop_lines() {
    let layout = two();
    let settled = said(&layout, "light").expect("two dishes");
    let moving = live(&Study::new(&layout));
    let same = moving.findings.iter().find(|f| f.key == "light");
    let same = same.expect("told in a drag too");
    assert_eq!(same.figure.to_bits(), settled.figure.to_bits());
    assert!(same.marks.is_empty(), "no lines while dragging");
}

/// Three pale bowls this high on pale stone, the window at 9 o'clock.
fn pale(height: i32, above: i32) -> Layout {
    let bowls = [(1, 350, "hero"), (2, 600, "support"), (3, 850, "support")];
    let bowls: Vec<String> = bowls
        .map(|(id, x, role)| disc(id, x, 450, 150, role).replace("#20242a", "#e4e2dc"))
        .into();
    let mut layout = laid(&format!(r#""items":[{}]"#, bowls.join(",")));
    layout.table.surface.colour = Srgb::hex(0xe9_e7e2);
    layout.light.clock = Turn::from_degrees(270.0);
    layout.light.height_above_table = above;
    for item in &mut layout.items {
        item.height = height;
    }
    layout
}

#[test]
fn three_tenths_of_a_pale_edge_in_shadow_are_enough() {
    let lost = |l: &Layout| {
        let all = read(l).into_iter();
        all.filter(|f| f.reading == "separation" && f.state == State::LookAgain)
            .count()
    };
    // Flat things throw no shadow; bowls of 6 cm draw their far sides.
    let flat = pale(0, 700);
    assert_eq!(lost(&flat), 1, "colour alone loses them");
    assert!(said(&flat, "separation:drawn").is_none());
    let bowls = pale(60, 700);
    assert_eq!(lost(&bowls), 0, "shadow draws them");
    let f = said(&bowls, "separation:drawn").expect("and it is told");
    assert_eq!((f.state, f.figure), (State::Holds, 3.0), "{}", f.sentence);
}

#[test]
fn under_two_main_dishes_the_lines_count_from_the_hero_or_the_middle_and_say_so() {
    let lines = |l: &Layout| {
        let f = said(l, "light:across").expect("told");
        let words: Vec<String> = f
            .marks
            .iter()
            .filter_map(|m| match m {
                Mark::StopLine { label, .. } => Some(label.clone()),
                _ => None,
            })
            .collect();
        assert_eq!(f.state, State::Holds, "{}", f.sentence);
        (f.sentence, words)
    };
    let mut layout = two();
    assert!(said(&layout, "light:across").is_none(), "two tell it");
    layout.items.truncate(1);
    let (sentence, words) = lines(&layout);
    assert!(sentence.contains(&layout.items[0].name), "{sentence}");
    assert!(words.contains(&"as the hero".to_owned()), "{words:?}");
    layout.items.clear();
    let (sentence, words) = lines(&layout);
    assert!(sentence.contains("middle"), "{sentence}");
    assert!(words.contains(&"as the middle".to_owned()), "{words:?}");
    // By hand: the field's ends are those of the lines, within a step.
    let f = said(&layout, "light:across").expect("told");
    assert!(f.figure > 0.5, "a near window falls off: {}", f.figure);
    layout.light.distance = 0;
    layout.light.height_above_table = 50;
    layout.light.height = 10;
    assert!(said(&layout, "light:dark").is_none(), "no dish to be dark");
}
