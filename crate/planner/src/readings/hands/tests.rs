use super::super::finding::{Finding, State};
use super::super::study::Study;
use super::read;
use crate::layout::{Layout, open};

/// A table of 160 by 90 cm with A at the near edge's middle and B at the far
/// edge's, and these hands.
fn laid(hands: &[&str]) -> Layout {
    let hands: Vec<String> = hands
        .iter()
        .enumerate()
        .map(|(n, hand)| format!(r#"{{"id":{},"entry":[0,0],{hand}}}"#, 20 + n))
        .collect();
    let text = format!(
        r#"{{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":90,
        "table":{{"width":1600,"depth":900}},"frame":{{"at":[800,450],"width":1300}},
        "seats":[{{"id":1,"at":[800,900]}},{{"id":2,"at":[800,0]}},{{"id":3,"at":[300,900]}}],
        "people":[{{"id":4,"seat":1}},{{"id":5,"seat":2}}],
        "exposures":[{{"id":6}},{{"id":7}}],"hands":[{}]}}"#,
        hands.join(",")
    );
    open(&text).expect("a sound layout")
}

fn about(layout: &Layout, end: &str) -> Option<Finding> {
    let all = read(&Study::new(layout), true);
    all.into_iter().find(|f| f.key.ends_with(end))
}

/// The layout after a remedy, in which the same is no longer said.
fn cured(layout: &Layout, end: &str) -> Layout {
    let f = about(layout, end).expect("said");
    let remedy = f.remedy.as_ref();
    let remedy = remedy.unwrap_or_else(|| panic!("no remedy: {}", f.sentence));
    let mut after = layout.clone();
    remedy.edit.apply_checked(&mut after).expect("it fits");
    let still = about(&after, end).filter(Finding::is_pressing);
    assert!(still.is_none(), "{}: {still:?}", remedy.act);
    after
}

fn one(rest: &str) -> Layout {
    laid(&[&format!(r#""person":4,"exposure":6,{rest}"#)])
}

#[test]
fn fingertips_a_millimetre_short_wont_work() {
    let reaching = |y: i32| one(&format!(r#""side":"right","target":[990,{y}]"#));
    let short = |y: i32| about(&reaching(y), ":out-of-reach");
    let first = (0..900)
        .rev()
        .find_map(short)
        .expect("far away it is short");
    assert_eq!((first.state, first.rank), (State::WontWork, 1));
    assert!((1.0..2.5).contains(&first.figure), "{}", first.figure);
    assert!(
        first.sentence.contains("right hand in 1A"),
        "{}",
        first.sentence
    );
    assert!(about(&reaching(500), ":out-of-reach").is_none(), "near by");
}

#[test]
fn a_place_nearer_by_or_standing_up_brings_a_far_hand_to_its_target() {
    let aside = one(r#""side":"right","seat":3,"target":[1250,600]"#);
    let after = cured(&aside, ":out-of-reach");
    let told = about(&aside, ":out-of-reach")
        .and_then(|f| f.remedy)
        .expect("a remedy");
    assert!(told.act.starts_with("Move A"), "{}", told.act);
    assert!(
        after.seats[2].at.x > 300,
        "to the right: {:?}",
        after.seats[2].at
    );
}

#[test]
fn a_wrist_nearer_than_an_elbow_bends_is_said() {
    let near = |y: i32| {
        one(&format!(
            r#""side":"right","target":[990,{y}],"height":300"#
        ))
    };
    let said = about(&near(860), ":too-close-to-the-body").expect("in one's lap");
    assert_eq!(said.state, State::LookAgain);
    assert!(
        about(&near(560), ":too-close-to-the-body").is_none(),
        "ahead"
    );
}

#[test]
fn an_arm_half_a_right_angle_across_is_said() {
    let across = |x: i32| one(&format!(r#""side":"right","target":[{x},700]"#));
    let f = about(&across(520), ":across-the-body").expect("far to the left");
    assert!(f.figure >= 45.0, "{}", f.figure);
    assert!(about(&across(900), ":across-the-body").is_none(), "ahead");
    let after = cured(&across(520), ":across-the-body");
    assert_eq!(
        after.hands[0].side,
        crate::layout::Side::Left,
        "the other hand"
    );
    let edge = (520..900).find(|x| about(&across(*x), ":across-the-body").is_none());
    let last = about(&across(edge.expect("ahead") - 1), ":across-the-body");
    let last = last.expect("just across").figure;
    assert!((45.0..45.6).contains(&last), "{last}");
}

#[test]
fn an_arm_along_the_edge_is_said_and_a_steeper_one_is_not() {
    let picture = Study::new(&one(r#""target":[800,500]"#)).picture();
    let from = picture.at;
    let angle = |degrees: f64| {
        let inside = from + glam::DVec2::new(640.0, -400.0);
        let (y, x) = libm::sincos((90.0 - degrees).to_radians());
        let way = glam::DVec2::new(x, y);
        super::frame::angle(&picture, &[inside, inside + way * 2_000.0])
    };
    for degrees in [5.0, 19.0, 21.0, 60.0] {
        let found = angle(degrees).expect("it leaves");
        assert!((found - degrees).abs() < 1e-6, "{degrees}: {found}");
    }
    let inside = [from, from + glam::DVec2::X];
    assert!(super::frame::angle(&picture, &inside).is_none(), "within");
    // A at the left end of the near edge reaches along it.
    let mut low = one(r#""side":"left","seat":3,"target":[520,770]"#);
    low.frame.at.y = 420;
    let told = about(&low, ":edge");
    assert!(
        told.is_none_or(|f| f.figure < 20.0),
        "only under 20 degrees"
    );
}

#[test]
fn arms_that_cross_are_said_and_parallel_ones_are_not() {
    let two = |left: i32, right: i32| {
        let hand = |side: &str, x: i32, pair: i32| {
            format!(r#""person":4,"exposure":6,"side":"{side}","pair":{pair},"target":[{x},560]"#)
        };
        laid(&[&hand("left", left, 21), &hand("right", right, 20)])
    };
    let crossed = two(980, 620);
    let f = about(&crossed, ":cross").expect("they cross");
    assert_eq!((f.state, f.rank), (State::LookAgain, 2));
    assert!(about(&two(700, 900), ":cross").is_none(), "side by side");
    let after = cured(&crossed, ":cross");
    assert_eq!(after.hands[0].target.x, 620, "they change places");
}

#[test]
fn a_pair_within_two_centimetres_of_its_mirror_image_is_said() {
    let pair = |dx: i32| {
        let hand = |side: &str, x: i32, pair: i32| {
            format!(r#""person":4,"exposure":6,"side":"{side}","pair":{pair},"target":[{x},560]"#)
        };
        laid(&[&hand("left", 700, 21), &hand("right", 900 + dx, 20)])
    };
    let f = about(&pair(0), ":mirror").expect("rowing arms");
    assert!(f.taste, "a matter of taste");
    assert!(about(&pair(60), ":mirror").is_none(), "not alike");
}

#[test]
fn arms_within_four_centimetres_are_said() {
    let two = |x: i32| {
        laid(&[
            r#""person":4,"exposure":6,"side":"right","target":[900,560]"#,
            &format!(r#""person":5,"exposure":7,"side":"left","target":[{x},560]"#),
        ])
    };
    let near = (900..1200).find_map(|x| about(&two(x), ":apart"));
    let near = near.expect("somewhere they are near");
    assert!(near.figure < 40.0, "{}", near.figure);
    assert!(about(&two(1350), ":apart").is_none(), "far apart");
}

#[test]
fn one_person_in_two_places_wont_work() {
    let both = laid(&[
        r#""person":4,"exposure":6,"side":"right","target":[900,600]"#,
        r#""person":4,"seat":3,"exposure":6,"side":"left","target":[300,600]"#,
    ]);
    let f = about(&both, ":twice").expect("said");
    assert_eq!((f.state, f.rank), (State::WontWork, 1));
    assert!(
        f.sentence.contains("two places in exposure 1"),
        "{}",
        f.sentence
    );
    let after = cured(&both, ":twice");
    assert_eq!(after.exposures.len(), 3, "an exposure more");
    let same = laid(&[
        r#""person":4,"exposure":6,"side":"right","target":[900,600]"#,
        r#""person":4,"exposure":6,"side":"right","target":[700,600]"#,
    ]);
    let f = about(&same, ":twice").expect("said");
    assert!(
        f.sentence.contains("two hands of one side"),
        "{}",
        f.sentence
    );
    let sound = laid(&[
        r#""person":4,"exposure":6,"side":"right","target":[900,600]"#,
        r#""person":4,"exposure":6,"side":"left","target":[700,600]"#,
    ]);
    assert!(about(&sound, ":twice").is_none(), "a left and a right");
}

#[test]
fn a_ring_on_two_sitters_is_said_and_on_one_is_not() {
    let mut solo = laid(&[
        r#""person":4,"exposure":6,"side":"right","target":[900,600]"#,
        r#""person":4,"seat":2,"exposure":7,"side":"right","target":[700,300]"#,
    ]);
    assert!(about(&solo, ":ring").is_none(), "no ring");
    solo.people[0].ring = Some(crate::layout::Side::Right);
    let f = about(&solo, ":ring").expect("said");
    assert!(f.sentence.contains("2 sitters"), "{}", f.sentence);
    cured(&solo, ":ring");
    solo.hands[1].seat = None;
    assert!(about(&solo, ":ring").is_none(), "one sitter");
}

#[test]
fn hands_without_a_place_are_waited_for() {
    let mut layout = one(r#""side":"right","target":[900,600]"#);
    assert!(super::waits(&Study::new(&layout)).is_none(), "A sits");
    layout.people[0].seat = None;
    assert!(super::waits(&Study::new(&layout)).is_some(), "where?");
}

/// A pair on a platter between its hands.
fn lifted(more: &str) -> Layout {
    let hand = |side: &str, x: i32, pair: i32| {
        format!(
            r#""person":4,"exposure":6,"action":"lift","side":"{side}","pair":{pair},"target":[{x},560]{more}"#
        )
    };
    let bare = laid(&[&hand("left", 700, 21), &hand("right", 900, 20)]);
    let text = bare.to_json().replacen(
        "\"items\": []",
        r#""items":[{"id":60,"number":1,"prop":"platter","at":[800,560],"size":{"shape":"disc","diameter":200}}]"#,
        1,
    );
    let mut layout = open(&text).expect("a platter");
    for hand in &mut layout.hands {
        hand.holds = Some(crate::layout::Id(60));
    }
    layout
}

#[test]
fn thumbs_turned_from_what_two_hands_hold_are_said() {
    assert!(about(&lifted(""), ":thumb").is_none(), "inwards");
    let up = lifted(r#","palm":"up""#);
    let f = about(&up, ":thumb").expect("palms up they point out");
    assert!(f.figure >= 90.0, "{}", f.figure);
    let after = cured(&up, ":thumb");
    assert_eq!(after.hands[0].palm, crate::layout::Palm::Down);
    // On either side of a right angle.
    for (degrees, said) in [(89.9, false), (90.1, true)] {
        let [mut a, mut b]: [super::Limb<'_>; 2] = super::limbs(&up)
            .try_into()
            .unwrap_or_else(|_| panic!("two arms"));
        let way = (b.arm.tip - a.arm.tip).normalize();
        let (sin, cos) = libm::sincos(f64::to_radians(degrees));
        let turn = glam::DVec2::new(cos, sin);
        (a.arm.thumb, b.arm.thumb) = (turn.rotate(way), turn.rotate(-way));
        assert_eq!(super::two::away(&a, &b).is_some(), said, "{degrees}");
    }
    let mut other = up;
    other.hands[1].holds = None;
    assert!(about(&other, ":thumb").is_none(), "not one thing");
}

#[test]
fn one_sitter_played_by_two_who_differ_is_said() {
    let mut two = laid(&[
        r#""person":4,"exposure":6,"side":"right","target":[900,600]"#,
        r#""person":5,"seat":1,"exposure":7,"side":"right","target":[700,600]"#,
    ]);
    assert!(about(&two, ":sitter").is_none(), "they look alike");
    two.people[1].sleeve.length = crate::layout::SleeveLength::Bare;
    let f = about(&two, ":sitter").expect("said");
    assert!(f.sentence.starts_with("A and B play"), "{}", f.sentence);
    let after = cured(&two, ":sitter");
    assert_eq!(after.hands[1].person, crate::layout::Id(4), "A plays both");
    two.people[1] = crate::layout::Person {
        id: two.people[1].id,
        ..two.people[0].clone()
    };
    two.people[1].ring = Some(crate::layout::Side::Left);
    assert!(about(&two, ":sitter").is_some(), "a ring");
    two.hands[1].seat = None;
    two.people[1].seat = Some(crate::layout::Id(2));
    assert!(about(&two, ":sitter").is_none(), "two sitters");
}

/// By anatomy: from above, a right hand palm down has its thumb on its
/// sitter's left, and a left hand, or a palm turned up, the other way.
#[test]
fn thumbs_lie_where_anatomy_puts_them_all_round_the_table() {
    for shape in ["rect", "round"] {
        for (x, y) in [
            (800, 900),
            (800, 0),
            (0, 450),
            (1600, 450),
            (1300, 900),
            (200, 0),
        ] {
            for side in ["left", "right"] {
                for palm in ["down", "up"] {
                    let mut layout = one(&format!(
                        r#""side":"{side}","palm":"{palm}","target":[800,450]"#
                    ));
                    let text = layout.to_json();
                    let text =
                        text.replacen("\"shape\": \"rect\"", &format!("\"shape\": \"{shape}\""), 1);
                    layout = open(&text).expect("a table");
                    layout.seats[0].at = crate::layout::Point::new(x, y);
                    let stand = crate::seats::stand_at(&layout.table, layout.seats[0].at.vec());
                    let centre = layout.table.centre().vec();
                    // Straight ahead of the sitter, so that the hand points in.
                    let to = stand.at + (centre - stand.at).normalize() * 380.0;
                    layout.hands[0].target = crate::layout::Point::nearest(to);
                    let arm = crate::scene::arm(&layout, &layout.hands[0]);
                    let left = -arm.fingers.perp();
                    let expected = (side == "right") == (palm == "down");
                    assert_eq!(
                        arm.thumb.dot(left) > 0.9,
                        expected,
                        "{shape} ({x}, {y}) {side} {palm}: thumb {} fingers {}",
                        arm.thumb,
                        arm.fingers
                    );
                    let ahead = arm.fingers.dot(stand.inward);
                    assert!(ahead > 0.0, "the hand points into the table: {ahead}");
                }
            }
        }
    }
}

#[test]
fn thirty_hands_give_clear_findings_and_lose_nothing() {
    let hands: Vec<String> = (0..30)
        .map(|n| {
            let (x, y) = (200 + 40 * n, 100 + 20 * n);
            format!(r#""person":4,"exposure":6,"side":"left","target":[{x},{y}]"#)
        })
        .collect();
    let layout = laid(&hands.iter().map(String::as_str).collect::<Vec<_>>());
    let found = read(&Study::new(&layout), true);
    assert!(found.iter().any(|f| f.key.ends_with(":twice")), "too many");
    assert!(
        found
            .iter()
            .all(|f| f.figure.is_finite() && !f.sentence.is_empty())
    );
    assert_eq!(
        open(&layout.to_json()).expect("sound"),
        layout,
        "nothing lost"
    );
}
