use crate::layout::{Id, Layout};
use crate::readings::samples::{after, disc, laid, read, said};
use crate::readings::{Finding, Mark, State};

/// The frame's diagonal is 1262 mm, so a gap is too small under 12.6 mm.
const LIMIT: f64 = 12.62;

/// Two discs of 200 mm, `gap` apart or overlapping when it is negative.
fn two(gap: i32, roles: [&str; 2]) -> Layout {
    let dishes = [
        disc(1, 500, 450, 200, roles[0]),
        disc(2, 700 + gap, 450, 200, roles[1]),
    ];
    laid(&format!(r#""items":[{}]"#, dishes.join(",")))
}

fn spaced(layout: &Layout) -> Vec<Finding> {
    let all = read(layout).into_iter();
    all.filter(|f| f.reading == "spacing" && f.state != State::Holds)
        .collect()
}

#[test]
fn a_gap_under_a_hundredth_of_the_diagonal_is_said() {
    assert!(spaced(&two(13, ["hero", "filler"])).is_empty(), "13 mm");
    let layout = two(12, ["hero", "filler"]);
    let found = spaced(&layout);
    assert_eq!(found.len(), 1, "12 mm: {found:?}");
    assert_eq!(found[0].state, State::LookAgain, "never more");
    assert!(
        (found[0].figure - (LIMIT - 12.0)).abs() < 0.2,
        "what is missing: {}",
        found[0].figure
    );
    let Some(Mark::Gap { from, to, label }) = found[0].marks.first() else {
        panic!("a gap mark: {:?}", found[0].marks);
    };
    assert!(
        (from.distance(*to) - 12.0).abs() < 0.2,
        "from outline to outline"
    );
    assert_eq!(label, "1.2 cm", "with its length");
    assert!(spaced(&after(&layout, &found[0])).is_empty(), "cleared");
}

#[test]
fn an_overlap_under_fifteen_hundredths_is_said() {
    // 15% of 200 mm are 30 mm.
    assert!(
        spaced(&two(-31, ["support", "filler"])).is_empty(),
        "31 mm deep"
    );
    let layout = two(-29, ["support", "filler"]);
    let kiss = spaced(&layout);
    assert_eq!(kiss.len(), 1, "29 mm deep: {kiss:?}");
    assert!(
        kiss[0].sentence.contains("only just overlaps"),
        "{}",
        kiss[0].sentence
    );
    assert!(
        spaced(&after(&layout, &kiss[0])).is_empty(),
        "cleared or overlapping"
    );
}

#[test]
fn fillers_among_themselves_are_never_read() {
    for gap in [12, 0, -5, -29] {
        assert!(
            spaced(&two(gap, ["filler", "accent"])).is_empty(),
            "gap {gap}"
        );
    }
}

#[test]
fn a_group_is_exempt_and_a_hero_in_it_is_not() {
    let grouped = |roles| {
        let mut layout = two(5, roles);
        layout.groups = laid(r#""groups":[{"id":50,"name":"setting"}]"#).groups;
        for item in &mut layout.items {
            item.group = Some(Id(50));
        }
        spaced(&layout)
    };
    assert!(
        grouped(["support", "filler"]).is_empty(),
        "one place setting"
    );
    assert_eq!(
        grouped(["hero", "filler"]).len(),
        1,
        "a hero in a place setting"
    );
}

#[test]
fn a_stack_and_scatter_are_exempt() {
    let mut layout = two(-150, ["hero", "filler"]);
    layout.items[1].on = Some(Id(1));
    assert!(spaced(&layout).is_empty(), "food in its dish");
    let mut layout = two(5, ["hero", "filler"]);
    layout.items[1].prop = "crumbs".into();
    assert!(spaced(&layout).is_empty(), "crumbs");
}

#[test]
fn what_lies_outside_the_picture_is_not_read() {
    let mut layout = two(5, ["hero", "filler"]);
    layout.frame.at = crate::layout::Point::new(600, 1200);
    assert!(spaced(&layout).is_empty(), "the frame is elsewhere");
}

#[test]
fn several_near_one_dish_are_one_sentence() {
    let dishes = [
        disc(1, 600, 450, 200, "hero"),
        disc(2, 805, 450, 200, "filler"),
        disc(3, 395, 450, 200, "filler"),
    ];
    let layout = laid(&format!(r#""items":[{}]"#, dishes.join(",")));
    let found = spaced(&layout);
    assert_eq!(found.len(), 1, "one cause: {found:?}");
    assert_eq!(found[0].marks.len(), 2, "both gaps are marked");
    assert!(
        spaced(&after(&layout, &found[0])).is_empty(),
        "both are moved"
    );
}

#[test]
fn a_dish_along_a_runner_is_said_inside_across_and_beside() {
    // The runner's long edges lie at y = 350 and 550.
    let by = |y: i32| {
        let dish = disc(1, 600, y, 100, "filler");
        let layout = laid(&format!(
            r#""items":[{dish}],"linens":[{{"id":5,"name":"runner","kind":"runner","at":[600,450],
            "size":[1400,200]}}]"#
        ));
        let found = spaced(&layout);
        if let [one] = found.as_slice() {
            assert!(spaced(&after(&layout, one)).is_empty(), "cured at {y}");
        }
        found.len()
    };
    assert_eq!(by(450), 0, "in the middle");
    assert_eq!(by(487), 0, "13 mm inside");
    assert_eq!(by(488), 1, "12 mm inside");
    assert_eq!(by(514), 1, "14 mm over: a sliver");
    assert_eq!(by(516), 0, "16 mm over: across");
    assert_eq!(by(584), 0, "16 mm left on: across");
    assert_eq!(by(586), 1, "14 mm left on: a sliver");
    assert_eq!(by(612), 1, "12 mm beside");
    assert_eq!(by(613), 0, "13 mm beside");
}

#[test]
fn slivers_and_near_lines_at_a_crop_are_said() {
    // The crop's right edge is at 800; its diagonal is 566 mm, 1% 5.7 mm; 15%
    // of the dish are 15 mm.
    let at = |right: i32| {
        let dish = disc(1, right - 50, 450, 100, "filler");
        let layout = laid(&format!(
            r#""items":[{dish}],"crops":[{{"id":9,"name":"post","ratio":[1,1],"at":[600,450],
            "width":400}}]"#
        ));
        said(&layout, "spacing:crop:9").map(|f| {
            assert!(
                said(&after(&layout, &f), "spacing:crop:9").is_none(),
                "slid clear"
            );
            f.sentence
        })
    };
    assert_eq!(at(794), None, "6 mm short");
    assert!(at(795).is_some_and(|s| s.contains("short")), "5 mm short");
    assert!(at(814).is_some_and(|s| s.contains("shaves")), "14 mm cut");
    assert_eq!(at(816), None, "16 mm cut");
    assert_eq!(at(884), None, "16 mm left");
    assert!(at(886).is_some_and(|s| s.contains("only")), "14 mm left");
    assert_eq!(at(900), None, "nothing left");
}

#[test]
fn a_crop_line_by_the_wrist_is_said() {
    // The arm comes straight up from below; the crop's lower edge is at 650.
    let at = |tip: i32| {
        let layout = laid(&format!(
            r#""people":[{{"id":1}}],"exposures":[{{"id":2}}],
            "hands":[{{"id":3,"person":1,"exposure":2,"entry":[600,800],"target":[600,{tip}]}}],
            "crops":[{{"id":9,"name":"post","ratio":[1,1],"at":[600,450],"width":400}}]"#
        ));
        let arm = crate::scene::arm(&layout, &layout.hands[0]);
        (arm.wrist.y - 650.0, said(&layout, "spacing:joints"))
    };
    let mut seen = [false; 2];
    for tip in (400..=560).step_by(4) {
        let (past, found) = at(tip);
        let near = past.abs() < 29.0;
        if past.abs() > 31.0 || near {
            assert_eq!(found.is_some(), near, "wrist {past} mm past the line");
            seen[usize::from(near)] = true;
        }
    }
    assert_eq!(seen, [true; 2], "both sides were tried");
}

#[test]
fn a_hand_at_work_on_a_dish_may_touch_it() {
    let with = |target: &str| {
        let hero = disc(4, 600, 450, 200, "hero");
        let layout = laid(&format!(
            r#""people":[{{"id":1}}],"exposures":[{{"id":2}}],"items":[{hero}],
            "hands":[{{"id":3,"person":1,"exposure":2,"entry":[600,800],"target":{target}}}]"#
        ));
        spaced(&layout).len()
    };
    assert_eq!(with("[600,555]"), 0, "5 mm from its rim, at work on it");
}

#[test]
fn gaps_half_as_wide_again_part_groups() {
    let row = |far: i32| {
        let places = [300, 420, 540, 540 + 100 + far];
        let dishes: Vec<String> = (1..)
            .zip(places)
            .map(|(id, x)| disc(id, x, 450, 100, "filler"))
            .collect();
        let layout = laid(&format!(r#""items":[{}]"#, dishes.join(",")));
        said(&layout, "spacing").expect("always told").figure
    };
    // Gaps of 20, 20 and then 29 or 31 mm.
    assert_eq!(row(29), 1.0, "29 to 20 is one group");
    assert_eq!(row(31), 2.0, "31 to 20 parts them");
}
