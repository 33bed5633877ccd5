mod causes;
mod points;
mod slices;
mod steps;
mod tones;

use crate::layout::{Accepted, Extra, Layout, Look, Origin, Point, Srgb};
use crate::readings::rules::RULES;
use crate::readings::samples::{disc, laid, read, said};
use crate::readings::{Grade, PartWalk, State, Study, report, separation_score_of};
use crate::scene::PartKind;

/// Three dark discs and a hero, standing apart.
pub(super) fn four() -> Layout {
    let dishes = [
        disc(1, 350, 300, 240, "hero"),
        disc(2, 850, 320, 160, "support"),
        disc(3, 600, 650, 160, "support"),
        disc(4, 900, 640, 60, "filler"),
    ];
    laid(&format!(r#""items":[{}]"#, dishes.join(",")))
}

#[test]
fn every_rule_names_its_test_and_its_working() {
    let sources = [
        include_str!("mod.rs"),
        include_str!("points.rs"),
        include_str!("tones.rs"),
        include_str!("../fit/tests.rs"),
        include_str!("../rig/tests.rs"),
        include_str!("../lean/tests.rs"),
        include_str!("../crops/tests.rs"),
        include_str!("../spacing/tests.rs"),
        include_str!("../light/tests.rs"),
        include_str!("../light/keyed_tests.rs"),
        include_str!("../settings.rs"),
        include_str!("../space/tests.rs"),
        include_str!("../glare/tests.rs"),
        include_str!("../hands/tests.rs"),
        include_str!("../exposures/tests.rs"),
        include_str!("../timing/tests.rs"),
    ];
    for rule in RULES {
        let test = format!("fn {}(", rule.test);
        assert!(
            sources.iter().any(|s| s.contains(&test)),
            "{} has no {}",
            rule.name,
            rule.test
        );
        let working = crate::words::say(rule.working, &[]);
        assert_ne!(
            working, rule.working,
            "{} is worked out in words",
            rule.name
        );
        assert!(rule.edges.iter().all(|e| !e.is_nan()), "{}", rule.name);
    }
}

#[test]
fn only_arithmetic_wont_work_and_taste_is_never_unasked() {
    let mut layout = four();
    layout.frame.at = Point::new(500, 430);
    for f in read(&layout) {
        let arithmetic = f.grade == Grade::Physics;
        assert!(arithmetic || f.state != State::WontWork, "{}", f.sentence);
        assert!(!f.working.is_empty(), "{} is worked out", f.key);
        assert!(
            !f.sentence.contains('{'),
            "no place left open: {}",
            f.sentence
        );
    }
    let pressing: Vec<_> = report(&Study::new(&layout), false)
        .pressing()
        .map(|f| (f.key.clone(), f.taste))
        .collect();
    assert!(
        pressing.len() <= 3 && pressing.iter().all(|p| !p.1),
        "{pressing:?}"
    );
}

#[test]
fn taste_waits_for_three_dishes() {
    let mut layout = four();
    let tastes = |layout: &Layout| {
        let report = report(&Study::new(layout), true);
        let of = ["balance", "triangle", "hero"];
        let told = report
            .findings
            .iter()
            .filter(|f| of.contains(&f.reading))
            .count();
        (told, report.scores.is_some(), report.waiting.len())
    };
    let (told, scored, _) = tastes(&layout);
    assert!(told >= 3 && scored, "four dishes are read");
    layout.items.truncate(2);
    assert_eq!(tastes(&layout).0, 0, "two are not");
    assert!(
        !tastes(&layout).1 && tastes(&layout).2 >= 2,
        "with the reason"
    );
}

/// A disc of one grey on a board of another, by L* apart.
fn grey(food: u32) -> Layout {
    let mut layout = four();
    layout.table.surface.colour = Srgb::hex(0x77_7777);
    layout.items.truncate(1);
    layout.items[0].parts.rim = Some(crate::layout::Part::plain(Srgb::hex(food)));
    layout
}

#[test]
fn an_edge_is_lost_under_twenty_and_full_from_forty() {
    // #777777 is L* 50.0; the greys are 19.8, 20.2, 39.7 and 40.1 lighter.
    let at = |food: u32| {
        let layout = grey(food);
        let study = Study::new(&layout);
        let score = separation_score_of(&study).expect("pressed");
        (said(&layout, "separation:1:Rim").is_some(), score)
    };
    let (lost, clear) = (at(0xab_abab), at(0xac_acac));
    assert!(lost.0 && !clear.0, "{lost:?} and {clear:?}");
    let (under, full) = (at(0xe2_e2e2), at(0xe4_e4e4));
    assert!(under.1 < 100.0 && full.1 >= 100.0, "{under:?} and {full:?}");
}

#[test]
fn a_bright_side_does_not_make_up_for_a_lost_one() {
    // Half of a dark dish lies on its own tone, half on white: the mean
    // difference is over 40, but half of the outline is not there.
    let mut layout = four();
    layout.items.truncate(1);
    layout.table.surface.colour = Srgb::hex(0xff_ffff);
    layout.linens = laid(
        r##""linens":[{"id":8,"name":"mat","kind":"mat","at":[150,300],"size":[400,600],
        "colour":"#20242a"}]"##,
    )
    .linens;
    layout.head.look = Look::LowKey;
    let study = Study::new(&layout);
    let scene = study.scene();
    let of = |w: &PartWalk| scene.pieces[w.piece].part == PartKind::Rim;
    let rim = study.walks().iter().find(|w| of(w)).expect("walked");
    assert!(rim.band_value > 40.0, "{} on the whole", rim.band_value);
    // Of the outline that is compared, all that is not lost is full.
    let whole = 100.0 * (1.0 - rim.lost);
    assert!((rim.score - whole).abs() < 1e-9, "{} of {whole}", rim.score);
    assert!((0.4..0.6).contains(&rim.lost), "about half: {}", rim.lost);
    assert_eq!(
        separation_score_of(&study),
        Some(rim.score),
        "only the hero"
    );
}

#[test]
fn a_tenth_of_the_outline_lost_is_said() {
    // A strip of the board's own tone under the dish's edge: how much of the
    // outline lies on it decides.
    let lies = |x: i32| {
        let mut layout = four();
        layout.items.truncate(1);
        layout.linens = laid(&format!(
            r##""linens":[{{"id":8,"name":"strip","kind":"mat","at":[{x},300],"size":[100,600],
            "colour":"#20242a"}}]"##
        ))
        .linens;
        let study = Study::new(&layout);
        let rim = study
            .scene()
            .pieces
            .iter()
            .position(|p| p.part == PartKind::Rim);
        let walk = study.walks().iter().find(|w| Some(w.piece) == rim);
        let share = walk.expect("walked").lost;
        (share, said(&layout, "separation:1:Rim").is_some())
    };
    let mut seen = [false; 2];
    for x in 170..240 {
        let (share, is_said) = lies(x);
        assert_eq!(is_said, share >= 0.10, "{share} lost");
        seen[usize::from(is_said)] = true;
    }
    assert_eq!(seen, [true; 2], "both sides were tried");
}

#[test]
fn weight_is_said_to_sit_aside_under_fifty() {
    let mut seen = [false; 2];
    for x in (300..900).step_by(10) {
        let mut layout = four();
        layout.items[0].at.x = x;
        let f = said(&layout, "balance").expect("four dishes");
        let aside = f.state == State::LookAgain;
        assert_eq!(aside, f.figure < 50.0, "score {}", f.figure);
        seen[usize::from(aside)] = true;
    }
    assert_eq!(seen, [true; 2], "both sides were tried");
}

#[test]
fn the_side_of_the_weight_is_said_whatever_the_proportions() {
    for (ratio, at, place) in [
        ([1, 3], [600, 1100], "bottom"),
        ([1, 3], [600, -200], "top"),
        ([3, 1], [200, 450], "left"),
        ([1, 1], [1000, 450], "right"),
    ] {
        let dishes: Vec<String> = (1..4)
            .map(|n| disc(n, at[0] + i32::from(n), at[1], 60, "filler"))
            .collect();
        let mut layout = laid(&format!(r#""items":[{}]"#, dishes.join(",")));
        layout.frame.ratio = crate::layout::Ratio {
            width: ratio[0],
            height: ratio[1],
        };
        layout.frame.width = if ratio[0] == 1 && ratio[1] == 3 {
            600
        } else {
            1050
        };
        layout.items[1].at = Point::new(at[0], at[1]);
        let f = said(&layout, "balance").expect("three dishes");
        assert!(
            f.sentence.ends_with(&format!("sits {place}.")),
            "{ratio:?}: {}",
            f.sentence
        );
    }
}

#[test]
fn no_clear_three_is_said_under_five_quarters() {
    // Four dishes of one colour weigh as their areas: 160² to d².
    let of = |d: i32| {
        let mut layout = four();
        layout.items[3].size = layout.items[3].size.resized(d, d);
        said(&layout, "triangle").expect("four dishes")
    };
    assert!(
        of(144).sentence.contains("No clear three"),
        "160² is 1.23 of 144²"
    );
    assert!(
        !of(142).sentence.contains("No clear three"),
        "160² is 1.27 of 142²"
    );
}

#[test]
fn a_flat_triangle_is_said_under_the_lower_quartile() {
    let mut seen = [false; 2];
    for y in (310..650).step_by(10) {
        let mut layout = four();
        layout.items[2].at.y = y;
        layout.items[3].at = Point::new(2000, 2000);
        let f = said(&layout, "triangle").expect("three dishes");
        let flat = f.state == State::LookAgain;
        assert_eq!(flat, f.figure < 29.0, "score {}", f.figure);
        seen[usize::from(flat)] = true;
    }
    assert_eq!(seen, [true; 2], "both sides were tried");
}

#[test]
fn a_hero_second_in_weight_is_said() {
    let mut layout = four();
    let first = said(&layout, "hero:1").expect("a hero");
    assert_eq!(first.state, State::Holds, "{}", first.sentence);
    layout.items[0].size = layout.items[0].size.resized(150, 150);
    let behind = said(&layout, "hero:1").expect("a hero");
    assert_eq!(behind.state, State::LookAgain, "{}", behind.sentence);
    assert!(behind.taste, "silent until asked");
}

#[test]
fn a_quarter_of_the_hero_hidden_is_said() {
    let mut seen = [false; 3];
    for x in (400..600).step_by(5) {
        let mut layout = four();
        layout.items[1].at = Point::new(x, 300);
        layout.items[1].size = layout.items[1].size.resized(240, 240);
        let found = said(&layout, "hero:1:things");
        let which = match &found {
            None => 0,
            Some(f) if f.state == State::Holds => 1,
            Some(_) => 2,
        };
        if let Some(f) = found {
            assert_eq!(which == 2, f.figure >= 25.0, "{} % hidden", f.figure);
            assert!(f.figure >= 10.0, "{} % hidden", f.figure);
        }
        seen[which] = true;
    }
    assert_eq!(seen, [true; 3], "all three were tried");
}

#[test]
fn what_is_meant_stays_meant_until_it_really_changes() {
    let layout = grey(0xab_abab);
    let f = said(&layout, "separation:1:Rim").expect("lost");
    let meant = |by: i32| {
        let mut layout = layout.clone();
        layout.intended = vec![Accepted {
            finding: f.key.clone(),
            figure: f.figure.round() as i32 - by,
            extra: Extra::new(),
        }];
        said(&layout, &f.key).expect("still so").state
    };
    assert_eq!(meant(2), State::Intended, "drifted by 2%");
    assert_eq!(meant(3), State::LookAgain, "by 3%");
}

#[test]
fn guesses_are_owned_up_to_until_both_sides_come_from_photos() {
    let guess = crate::words::say("working-guess", &[]);
    let origins = [Origin::Guess, Origin::Photo];
    for (dish, board) in origins.iter().flat_map(|a| origins.map(|b| (*a, b))) {
        let mut layout = grey(0xab_abab);
        layout.table.surface.origin = board;
        let rim = layout.items[0].parts.rim.as_mut().expect("a rim");
        rim.colours[0].origin = dish;
        let f = said(&layout, "separation:1:Rim").expect("lost");
        let known = dish == Origin::Photo && board == Origin::Photo;
        assert_eq!(
            f.working.contains(&guess),
            !known,
            "dish {dish:?} on board {board:?}: {:?}",
            f.working
        );
    }
}

#[test]
fn a_cloth_of_known_colour_settles_it_whatever_the_board_under_it_is() {
    let guess = crate::words::say("working-guess", &[]);
    let item = r##"{"id":1,"number":1,"name":"dish","prop":"pot","at":[600,450],
        "size":{"shape":"disc","diameter":240},"role":"hero","parts":{"rim":{"colours":[
        {"srgb":"#abab9f","share":100,"origin":"photo"}]}}}"##;
    for (origin, told) in [("guess", true), ("photo", false), ("measured", false)] {
        let linen = format!(
            r##"{{"id":2,"name":"runner","at":[600,450],"size":[800,600],
            "colour":"#ababab","origin":"{origin}"}}"##
        );
        let layout = laid(&format!(r#""items":[{item}],"linens":[{linen}]"#));
        let f = said(&layout, "separation:1:Rim").expect("lost");
        assert_eq!(
            f.working.contains(&guess),
            told,
            "{origin}: {:?}",
            f.working
        );
    }
}
