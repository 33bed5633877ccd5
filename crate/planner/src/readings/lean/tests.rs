use crate::layout::{Format, Layout, Point};
use crate::readings::samples::{after, laid, read, said};
use crate::readings::{Mark, State};

/// A box of nothing known, 40 mm square and so high, and a flat hero 200 mm
/// square at (900, 450). 50 mm on full frame over 1050 mm: the lens stands
/// 1508.33 mm above (600, 450).
fn boxed(x: i32, height: i32, more: &str) -> Layout {
    laid(&format!(
        r#""items":[{{"id":2,"number":2,"name":"dish","prop":"nothing-known","height":0,"at":[900,450],
        "size":{{"shape":"rect","width":200,"depth":200}},"role":"hero"}},
        {{"id":1,"number":1,"name":"post","prop":"nothing-known","height":{height},"at":[{x},450],
        "size":{{"shape":"rect","width":40,"depth":40}}}}]{more}"#
    ))
}

#[test]
fn a_tenth_of_a_main_dish_hidden_by_a_lean_is_said() {
    // Its top is seen k = H/(H − h) times as far out. Over the dish, from 200
    // on, between rays of slope ±1/7 out to 140·k and then 40·k wide out to
    // 180·k: 4400·k² − 5714.3 mm², a tenth of 200² from k = 1.4859, h = 493.2.
    assert!(said(&boxed(760, 493, ""), "lean:1").is_none(), "just under");
    let layout = boxed(760, 494, "");
    let f = said(&layout, "lean:1").expect("just over");
    assert_eq!((f.state, f.rank), (State::LookAgain, 2), "{}", f.sentence);
    assert!((f.figure - 10.0).abs() < 0.05, "{}", f.figure);
    let arrow = |m: &Mark| matches!(m, Mark::Arrow { from, to } if (from.x - 760.0).abs() < 1e-9 && (to.x - 837.92).abs() < 0.01);
    assert!(f.marks.iter().any(arrow), "from foot to top: {:?}", f.marks);
    assert!(
        said(&layout, "hero:2:things").is_none(),
        "one cause is said once"
    );
}

#[test]
fn what_only_lies_over_a_dish_does_not_lean_over_it() {
    let layout = boxed(820, 12, "");
    assert!(said(&layout, "lean:1").is_none(), "it hides, but flat");
}

#[test]
fn a_lean_is_cured_by_a_lower_vessel_a_move_or_a_longer_lens() {
    let mut carafe = boxed(775, 250, "");
    let set = |layout: &mut Layout, prop: &str| {
        let entry = crate::catalogue::prop(prop).expect("sold");
        let own = crate::catalogue::item_from(entry, crate::layout::Id(1), 1, Point::new(745, 450));
        layout.items[1] = own;
    };
    set(&mut carafe, "oil-carafe");
    carafe.items[1].height = 500;
    let f = said(&carafe, "lean:1").expect("it leans over the dish");
    let lower = after(&carafe, &f);
    assert_eq!(lower.items[1].prop, "jug", "{:?}", f.remedy);
    assert!(said(&lower, "lean:1").is_none(), "cured");

    let post = boxed(760, 600, "");
    let f = said(&post, "lean:1").expect("it leans over the dish");
    let moved = after(&post, &f);
    assert!(
        moved.items[1].at.x < 760,
        "nearer to the middle: {:?}",
        f.remedy
    );
    assert!(said(&moved, "lean:1").is_none(), "cured");

    let mut locked = boxed(760, 540, r#","rig":{"ceiling":6000}"#);
    locked.items[1].locked = true;
    let f = said(&locked, "lean:1").expect("it leans over the dish");
    let longer = after(&locked, &f);
    assert!(longer.camera.focal > 50, "{:?}", f.remedy);
    assert!(said(&longer, "lean:1").is_none(), "cured");
    locked.rig.ceiling = 2_600;
    let f = said(&locked, "lean:1").expect("it still does");
    assert!(f.remedy.is_none(), "no ceiling for it: {:?}", f.remedy);
}

#[test]
fn a_top_past_a_crop_line_is_said_and_a_sliver_is_not() {
    // At (900, 450) and 400 mm high it is seen from 880 to 600 + 320·1.3609 =
    // 1035.5; 15% of that side are 23.3 mm, so the line is at 1012.2.
    let at = |edge: i32| {
        let crop = format!(
            r#","crops":[{{"id":9,"name":"page","ratio":[1,1],"at":[{},450],"width":600}}]"#,
            edge - 300
        );
        let mut layout = boxed(900, 400, &crop);
        layout.items.remove(0);
        layout
    };
    assert!(
        said(&at(1013), "lean:crop:9").is_none(),
        "a sliver is Spacing's"
    );
    let layout = at(1012);
    let f = said(&layout, "lean:crop:9").expect("23.5 mm past it");
    assert!((f.figure - 23.5).abs() < 0.1, "{}", f.figure);
    assert!(
        said(&at(919), "lean:crop:9").is_none(),
        "the foot is cut, too"
    );
    assert!(said(&after(&layout, &f), "lean:crop:9").is_none(), "cured");
    let mut hero = layout;
    hero.items[0].role = crate::layout::Role::Hero;
    assert!(said(&hero, "lean:crop:9").is_none(), "said of the crop");
    assert!(said(&hero, "crops:9:cut:1").is_some(), "said of the crop");
}

#[test]
fn half_a_millimetre_out_of_focus_is_said() {
    // From 1108.33 to 1508.33 mm: focused at 1277.8, f/10.4 holds both.
    let mut seen = [false; 2];
    for aperture in 90..120 {
        let mut layout = boxed(700, 400, "");
        layout.camera.aperture = aperture;
        let f = said(&layout, "lean:focus").expect("always told");
        let (s, focal) = (2.0 * 1_108.333_3 * 1_508.333_3 / 2_616.666_6, 50.0);
        let h = focal * focal / (f64::from(aperture) / 10.0 * 0.03) + focal;
        let near = s * (h - focal) / (h + s - 2.0 * focal) - 1_108.333_3;
        let far = 1_508.333_3 - s * (h - focal) / (h - s);
        let short = near.max(far).max(0.0);
        assert!((f.figure - short).abs() < 1e-3, "{}: {short}", f.figure);
        let soft = f.state == State::LookAgain;
        assert_eq!(soft, short >= 0.5, "{}", f.sentence);
        seen[usize::from(soft)] = true;
        if soft {
            let held = after(&layout, &f);
            assert_eq!(held.camera.aperture, 110, "the next common one");
            let then = said(&held, "lean:focus").expect("always told");
            assert_eq!(then.state, State::Holds, "{}", then.sentence);
        }
    }
    assert_eq!(seen, [true; 2], "both sides were tried");
}

#[test]
fn focusing_on_the_cloth_wastes_the_far_half() {
    let mut layout = boxed(700, 400, "");
    layout.camera.aperture = 110;
    layout.camera.focus_height = Some(0);
    let f = said(&layout, "lean:focus").expect("always told");
    assert_eq!((f.state, f.rank), (State::LookAgain, 3), "{}", f.sentence);
    assert!(f.sentence.contains("upper"), "{}", f.sentence);
    let held = after(&layout, &f);
    assert_eq!(held.camera.focus_height, None, "between cloth and rim");
    assert_eq!(held.camera.aperture, 110, "the f-number is enough");
    layout.items[1].role = crate::layout::Role::Hero;
    let f = said(&layout, "lean:focus").expect("always told");
    assert_eq!(f.rank, 2, "the hero's own top");
}

#[test]
fn an_aperture_that_blurs_more_than_is_allowed_is_said() {
    // 0.030 mm ÷ (2.44·550 nm·1.0343) is f/21.6.
    let at = |aperture: i32| {
        let mut layout = boxed(700, 400, "");
        layout.camera.aperture = aperture;
        layout
    };
    assert!(said(&at(216), "lean:diffraction").is_none(), "f/21.6");
    let layout = at(217);
    let f = said(&layout, "lean:diffraction").expect("f/21.7");
    assert!((f.figure - 1.0).abs() < 0.01, "{}", f.figure);
    let opened = after(&layout, &f);
    assert_eq!(opened.camera.aperture, 110, "as wide as holds everything");
    assert!(said(&opened, "lean:diffraction").is_none(), "cured");
}

#[test]
fn a_phone_has_its_one_aperture() {
    let mut layout = boxed(700, 400, "");
    layout.camera.format = Format::Phone;
    layout.camera.focal = 26;
    layout.camera.aperture = 17;
    let f = said(&layout, "lean:focus").expect("always told");
    if let Some(remedy) = f.remedy {
        assert!(!remedy.act.contains("f/"), "{}", remedy.act);
    }
}

/// Whatever is asked of it, it answers in figures that are there.
#[test]
fn senseless_cameras_get_an_answer() {
    let finite = |layout: &Layout, what: &str| {
        for f in read(layout) {
            let remedy = f.remedy.as_ref().map_or(0.0, |r| r.after);
            assert!(
                f.figure.is_finite() && remedy.is_finite(),
                "{what}: {}",
                f.key
            );
            for text in [&f.sentence].into_iter().chain(&f.working) {
                let odd = text.contains("NaN") || text.contains("inf ");
                assert!(!odd, "{what}: {text}");
            }
        }
    };
    let mut room = boxed(700, 400, "");
    (room.camera.focal, room.rig.ceiling) = (600, 1_000);
    finite(&room, "a lens longer than the room");
    let f = said(&room, "fit:ceiling").expect("always said");
    assert_eq!(f.state, State::WontWork, "{}", f.sentence);

    let mut tall = boxed(700, 2_000, "");
    (tall.camera.focal, tall.frame.width) = (24, 600);
    finite(&tall, "a thing taller than the camera");
    let f = said(&tall, "fit:lens").expect("it is in the way");
    assert_eq!(f.state, State::WontWork, "{}", f.sentence);
    assert!(said(&tall, "lean:focus").is_none(), "nothing to focus on");

    let mut near = boxed(700, 100, "");
    near.camera.focus_height = Some(1_500);
    finite(&near, "focus at the lens");
    let f = said(&near, "lean:focus").expect("always told");
    assert!(
        f.sentence.contains("Nothing can be in focus"),
        "{}",
        f.sentence
    );
    assert_eq!(after(&near, &f).camera.focus_height, None, "cured");

    let mut level = boxed(700, 0, "");
    level.items.clear();
    finite(&level, "an empty table");
    level.frame.width = 20;
    level.camera.focal = 600;
    finite(&level, "a frame smaller than the sensor");
}
