use crate::layout::{Bag, Counterweight, Hung, Layout, LayoutId, Point, RigKind, Turn};
use crate::readings::samples::{after, read, said};
use crate::readings::{Mark, State, Study, report};

/// The empty board of 1200 × 900 mm, its frame in the middle, and a stand
/// `away` mm below the lens.
fn standing(away: i32) -> Layout {
    let mut layout = Layout::empty(LayoutId(1));
    layout.rig.at = Some(Point::new(600, 450 + away));
    layout.rig.arm_length = 2_000;
    layout
}

fn margin(layout: &Layout) -> f64 {
    said(layout, "rig:margin").expect("told").figure
}

#[test]
fn a_margin_is_said_under_two_and_wont_work_under_one() {
    // Over the lead leg: about the two near edges the stand holds 6 kg at
    // 0.24 m, the arm (its middle 0.1 m behind the mast) 1.5 kg at 0.29 m and
    // the load tips at 0.9·cos 60° − 0.24 = 0.21 m: (1.44 + 0.435) / (m·0.21).
    let mut layout = standing(900);
    for (grams, state) in [
        (4_400, State::Holds),
        (4_500, State::LookAgain),
        (8_800, State::LookAgain),
        (9_000, State::WontWork),
    ] {
        layout.rig.load_mass = grams;
        let f = said(&layout, "rig:margin").expect("told");
        assert_eq!(f.state, state, "{grams} g: {}", f.sentence);
        let by_hand = (6.0 * 0.24 + 1.5 * 0.29) / (f64::from(grams) / 1e3 * 0.21);
        assert!((f.figure - by_hand).abs() < 1e-9, "{} {by_hand}", f.figure);
    }
}

#[test]
fn no_sentence_calls_a_rig_safe() {
    let mut layout = standing(900);
    for grams in [500, 4_500, 9_000] {
        layout.rig.load_mass = grams;
        let f = said(&layout, "rig:margin").expect("told");
        let all = f.working.join(" ") + &f.sentence;
        assert!(!all.contains("safe"), "{all}");
        assert!(
            f.sentence.contains("qualified grip decide"),
            "{}",
            f.sentence
        );
        assert!(all.contains("ten minutes"), "what is left out: {all}");
        assert!(all.contains("Sources disagree"), "where a bag hangs: {all}");
    }
}

#[test]
fn the_way_it_falls_is_an_hour_of_the_picture() {
    // The stand is below the picture, its lead leg turned away from the load:
    // it falls upwards, between two legs.
    let mut layout = standing(900);
    layout.rig.leg_bearing = Some(Turn::from_degrees(180.0));
    let f = said(&layout, "rig:margin").expect("told");
    assert!(f.sentence.contains("12 o’clock"), "{}", f.sentence);
    layout.frame.turn = Turn::from_degrees(90.0);
    let f = said(&layout, "rig:margin").expect("told");
    assert!(f.sentence.contains("9 o’clock"), "turned: {}", f.sentence);
}

#[test]
fn a_leg_turned_away_is_turned_under_the_load_first() {
    let mut layout = standing(900);
    layout.rig.load_mass = 3_000;
    layout.rig.leg_bearing = Some(Turn::from_degrees(180.0));
    let f = said(&layout, "rig:margin").expect("told");
    assert_eq!(f.state, State::WontWork, "{}", f.sentence);
    assert!(
        f.remedy
            .as_ref()
            .is_some_and(|r| r.act.contains("lead leg"))
    );
    assert!(margin(&after(&layout, &f)) >= 2.0, "it stands");
}

#[test]
fn a_bag_at_the_hub_comes_next_and_the_promise_is_kept() {
    let mut layout = standing(1_000);
    layout.rig.load_mass = 5_000;
    let f = said(&layout, "rig:margin").expect("told");
    let remedy = f.remedy.clone().expect("something helps");
    assert!(remedy.act.contains("hub"), "{}", remedy.act);
    let then = after(&layout, &f);
    assert_eq!(
        margin(&then).to_bits(),
        remedy.after.to_bits(),
        "{}",
        remedy.predicted
    );
}

#[test]
fn what_no_bag_holds_gets_a_stand_at_each_end() {
    let mut layout = standing(1_800);
    layout.rig.load_mass = 9_000;
    let f = said(&layout, "rig:margin").expect("told");
    let remedy = f.remedy.clone().expect("something helps");
    assert!(margin(&after(&layout, &f)) >= 2.0, "{}", remedy.act);
}

#[test]
fn an_arm_a_millimetre_short_wont_work() {
    let mut layout = standing(900);
    layout.rig.arm_length = 900;
    assert!(said(&layout, "rig:arm").is_none(), "it just reaches");
    layout.rig.arm_length = 899;
    let f = said(&layout, "rig:arm").expect("a millimetre short");
    assert_eq!(f.state, State::WontWork, "{}", f.sentence);
    assert!(matches!(f.marks[..], [Mark::Gap { .. }]), "it is drawn");
    assert!(said(&after(&layout, &f), "rig:arm").is_none(), "longer");
    layout.rig.kind = RigKind::TwoStands;
    layout.rig.arm_length = 1_799;
    assert!(said(&layout, "rig:arm").is_some(), "a bar runs both ways");
}

#[test]
fn an_arm_drawn_out_nine_tenths_wants_a_bag() {
    let mut layout = standing(900);
    layout.rig.load_mass = 1_000;
    layout.rig.arm_length = 1_001;
    assert!(said(&layout, "rig:extended").is_none(), "a little less");
    layout.rig.arm_length = 1_000;
    let f = said(&layout, "rig:extended").expect("nine tenths");
    assert_eq!(f.state, State::LookAgain, "{}", f.sentence);
    let bagged = after(&layout, &f);
    assert!(bagged.rig.bag.is_some_and(|b| b.hung == Hung::Hub));
    assert!(said(&bagged, "rig:extended").is_none(), "it hangs");
}

#[test]
fn a_mast_a_millimetre_too_low_wont_work() {
    let mut layout = standing(900);
    let needs = crate::rig::Stand::of(&layout).expect("told").arm_height;
    layout.rig.mast_height = needs as i32;
    assert!(
        said(&layout, "rig:mast").is_none(),
        "less than a millimetre"
    );
    layout.rig.mast_height = needs as i32 - 1;
    let f = said(&layout, "rig:mast").expect("too low");
    assert_eq!(f.state, State::WontWork, "{}", f.sentence);
}

#[test]
fn a_mast_through_the_table_wont_work_and_one_beside_it_does() {
    // The board ends at 900 mm, 450 mm below the lens.
    let f = said(&standing(448), "rig:table").expect("2 mm inside");
    assert_eq!(f.state, State::WontWork, "{}", f.sentence);
    assert!(said(&standing(451), "rig:table").is_none(), "beside it");
    // Beside a board that lies on the floor the lead leg goes through it.
    let mut low = standing(600);
    low.table.height = 0;
    let f = said(&low, "rig:table").expect("the leg");
    assert!(f.sentence.contains("leg"), "{}", f.sentence);
    low.table.height = 300;
    assert!(said(&low, "rig:table").is_none(), "under it");
    let f = said(&low, "rig:under").expect("a note");
    assert_eq!(f.state, State::Holds, "{}", f.sentence);
    // The lead leg's end, 480 mm from a mast 150 mm off the edge.
    assert!((f.figure - 330.0).abs() < 1.0, "{}", f.figure);
    assert!(said(&standing(1_000), "rig:under").is_none(), "beside it");
}

#[test]
fn a_leg_within_two_feet_of_the_photographer_is_said() {
    let mut layout = standing(900);
    // The lead leg points up; a rear one ends 240 mm below the mast.
    let foot = crate::rig::Stand::of(&layout).expect("told").feet[0][1];
    let below = |by: f64| Some(Point::nearest(foot + glam::dvec2(by, 0.0)));
    layout.rig.photographer = below(600.0);
    assert!(said(&layout, "rig:path").is_some(), "in the way");
    layout.rig.photographer = below(620.0);
    assert!(said(&layout, "rig:path").is_none(), "past it");
}

#[test]
fn who_stands_among_the_legs_is_sent_to_another_side() {
    let mut layout = standing(900);
    layout.rig.photographer = Some(Point::new(600, 1_750));
    let f = said(&layout, "rig:path").expect("in the way");
    assert!(said(&layout, "rig:way").is_none(), "told once");
    let then = after(&layout, &f);
    assert_ne!(then.rig.photographer, layout.rig.photographer, "moved");
    for key in ["rig:path", "rig:way", "rig:round"] {
        assert!(said(&then, key).is_none(), "{key}");
    }
}

/// Two people, one of whom reaches in at each of these places of the edge,
/// seen from the middle, and the photographer at the left.
fn reached_into(places: &[(i32, i32)]) -> Layout {
    let hands: Vec<String> = places
        .iter()
        .enumerate()
        .map(|(n, (x, y))| {
            let id = n + 10;
            format!(r#"{{"id":{id},"person":1,"exposure":3,"entry":[{x},{y}],"target":[600,450]}}"#)
        })
        .collect();
    let hands = hands.join(",");
    let mut layout = crate::readings::samples::laid(&format!(
        r#""people":[{{"id":1}},{{"id":2}}],"exposures":[{{"id":3}}],"hands":[{hands}]"#
    ));
    layout.rig.at = Some(Point::new(600, 2_600));
    layout.rig.photographer = Some(Point::new(-700, 450));
    layout
}

#[test]
fn a_weight_in_the_way_is_said_and_cured_and_one_past_it_is_not() {
    // A second stand stands where one has to pass, its bag on the leg there.
    let mut layout = standing(900);
    layout.rig.photographer = Some(Point::new(-100, 1_400));
    layout.rig.bag = Some(Bag {
        mass: 6_800,
        hung: Hung::RearLegs,
    });
    let clear = said(&layout, "rig:way");
    assert!(clear.is_none(), "round it: {clear:?}");
    // Sitters close the pocket in which the photographer stands: at the left,
    // below, and the stand between them.
    let mut boxed = reached_into(&[(100, 800), (-100, 450), (0, 900)]);
    boxed.rig.photographer = Some(Point::new(-200, 800));
    let f = said(&boxed, "rig:way").expect("boxed in");
    assert_eq!(f.state, State::LookAgain, "{}", f.sentence);
    assert!(f.sentence.contains("reaches in"), "{}", f.sentence);
    assert!(matches!(f.marks[..], [Mark::Gap { .. }]), "it is drawn");
    assert!(f.remedy.is_some(), "another side");
    assert!(said(&after(&boxed, &f), "rig:way").is_none(), "cured");
    boxed.people.truncate(1);
    assert!(
        said(&boxed, "rig:way").is_none(),
        "alone, one is the sitter"
    );
}

#[test]
fn a_long_way_round_is_said_and_a_short_one_is_not() {
    let one_end = reached_into(&[(600, 0)]);
    assert!(said(&one_end, "rig:round").is_none(), "past the other end");
    // Two stands and a bar: between their legs and the table there is no way
    // until they stand far off; round them it is long.
    let mut bar = standing(900);
    bar.rig.kind = RigKind::TwoStands;
    bar.rig.photographer = Some(Point::new(-700, 450));
    let (mut told, mut silent) = (false, false);
    for away in (700..1_800).step_by(50) {
        bar.rig.at = Some(Point::new(600, 450 + away));
        let ways = crate::scene::ways(&bar);
        let long = ways.iter().map(|way| way.extra).fold(0.0, f64::max);
        let f = said(&bar, "rig:round");
        assert_eq!(f.is_some(), long >= 1_000.0, "{away}: {long}");
        told |= f.is_some();
        silent |= f.is_none();
        if let Some(f) = f.filter(|f| f.remedy.is_some()) {
            assert!(said(&after(&bar, &f), "rig:round").is_none(), "{away}");
        }
    }
    assert!(told && silent, "both sides were met");
}

#[test]
fn what_is_not_told_or_hangs_is_said_to_wait() {
    let waits = |layout: &Layout| {
        let all = report(&Study::new(layout), true).waiting;
        all.into_iter()
            .find(|w| w.reading == "rig")
            .map(|w| w.reason)
    };
    let mut layout = Layout::empty(LayoutId(1));
    assert!(
        waits(&layout).is_some_and(|r| r.contains("mast")),
        "no place"
    );
    layout = standing(900);
    assert_eq!(waits(&layout), None, "told");
    layout.rig.kind = RigKind::Ceiling;
    assert!(waits(&layout).is_some_and(|r| r.contains("ceiling")));
    layout = standing(900);
    (
        layout.rig.stand_mass,
        layout.rig.arm_mass,
        layout.rig.load_mass,
    ) = (0, 0, 0);
    assert!(waits(&layout).is_some_and(|r| r.contains("masses")));
}

#[test]
fn whatever_stands_where_it_may_every_figure_is_a_number() {
    for kind in [RigKind::Arm, RigKind::TwoStands, RigKind::Tripod] {
        for away in [0, 1, 300, 900, 5_000] {
            for arm in [0, 1_016] {
                let mut layout = standing(away);
                layout.rig.kind = kind;
                layout.rig.arm_length = arm;
                layout.rig.counterweight = Some(Counterweight { mass: 0, behind: 0 });
                layout.rig.bag = Some(Bag {
                    mass: 0,
                    hung: Hung::LeadLeg,
                });
                for f in read(&layout).iter().filter(|f| f.reading == "rig") {
                    assert!(f.figure.is_finite() && !f.sentence.contains('{'), "{f:?}");
                    assert!(!f.working.concat().contains("NaN"), "{:?}", f.working);
                }
            }
        }
    }
}
