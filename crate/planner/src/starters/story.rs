//! The story Harbour supper tells a first visitor, in ranges: figures may move
//! with a piece of the table, the story may not.
use super::harbour_supper;
use crate::layout::{Crop, Id, Layout, Point, Turn};
use crate::readings::{Finding, State, Study, report, scores};

/// Everything there is to say, with remedies.
pub(super) fn read(layout: &Layout) -> Vec<Finding> {
    report(&Study::new(layout), true).findings
}

/// The finding of this key.
pub(super) fn said(layout: &Layout, key: &str) -> Option<Finding> {
    read(layout).into_iter().find(|f| f.key == key)
}

/// The layout after a finding's remedy.
pub(super) fn cured(layout: &Layout, finding: &Finding) -> Layout {
    let remedy = finding.remedy.as_ref().expect("a cure");
    let mut after = layout.clone();
    remedy.edit.apply_checked(&mut after).expect("it fits");
    after
}

fn item(layout: &Layout, name: &str) -> Id {
    let found = layout.items.iter().find(|i| i.name == name);
    found.unwrap_or_else(|| panic!("no {name}")).id
}

fn crop<'a>(layout: &'a Layout, name: &str) -> &'a Crop {
    let found = layout.crops.iter().find(|c| c.name == name);
    found.unwrap_or_else(|| panic!("no {name}"))
}

/// How the outline of a part reads: `Rim` of a dish, `Food` of food.
fn outline(layout: &Layout, name: &str, part: &str) -> Option<Finding> {
    said(
        layout,
        &format!("separation:{}:{part}", item(layout, name).0),
    )
}

/// The pot's first finding and the table with the runner laid.
fn runner_laid() -> (Finding, Layout) {
    let opens = harbour_supper();
    let mut separation = read(&opens)
        .into_iter()
        .filter(|f| f.reading == "separation");
    let first = separation.next().expect("a dark spread has lost edges");
    let after = cured(&opens, &first);
    (first, after)
}

fn separation_of(layout: &Layout) -> f64 {
    let scores = scores(&Study::new(layout)).expect("dishes enough");
    scores.separation.expect("something is pressed")
}

#[test]
fn the_pot_shouts_and_the_runner_about_halves_what_it_loses() {
    let (pot, after) = runner_laid();
    let opens = harbour_supper();
    assert_eq!(pot.about[0], item(&opens, "mussel pot"), "{}", pot.sentence);
    assert_eq!(pot.rank, 2, "the hero is spoiled");
    assert!(pot.figure > 90.0, "nearly all of it: {}", pot.figure);
    let cure = pot.remedy.as_ref().expect("a cure");
    assert_eq!(cure.act, "Lay the oat runner", "what cures it");
    let left = outline(&after, "mussel pot", "Rim").expect("half is left");
    assert!((35.0..60.0).contains(&left.figure), "{}", left.figure);
    assert_eq!(left.figure, cure.after, "as promised");
    assert!(left.remedy.is_some(), "and there is a next step");
}

#[test]
fn laying_the_runner_raises_the_score_but_does_not_fill_it() {
    let (_, after) = runner_laid();
    let [before, then] = [harbour_supper(), after].map(|l| separation_of(&l));
    assert!(before + 5.0 < then, "{before} to {then}");
    assert!(then < 90.0, "with a third of the pot gone: {then}");
}

#[test]
fn food_whispers_in_its_dark_dishes_and_a_pale_inside_cures_it() {
    for layout in [harbour_supper(), runner_laid().1] {
        for (food, worst) in [("mussels", 60.0), ("seared aubergine", 50.0)] {
            let f = outline(&layout, food, "Food").expect("it sinks");
            assert!((25.0..worst).contains(&f.figure), "{food}: {}", f.figure);
            assert!(f.is_pressing(), "{food} is said unasked");
            let cure = f.remedy.as_ref().expect("a cure");
            assert!(cure.act.contains("pale-lined"), "{food}: {}", cure.act);
            assert!(cure.after < 10.0, "{food} is cured: {}", cure.after);
            let after = cured(&layout, &f);
            assert!(outline(&after, food, "Food").is_none(), "{food} is cured");
        }
    }
}

#[test]
fn black_cuffs_vanish_and_rolling_them_up_helps() {
    let cuffs = said(&harbour_supper(), "separation:cuffs").expect("black on charcoal");
    assert!(cuffs.figure > 60.0, "most of them: {}", cuffs.figure);
    let cure = cuffs.remedy.as_ref().expect("a cure");
    assert!(cure.after < cuffs.figure - 20.0, "to {}", cure.after);
}

#[test]
fn the_upright_cuts_the_pot_and_sliding_keeps_it_whole() {
    let opens = harbour_supper();
    let pot = item(&opens, "mussel pot");
    let key = format!("crops:{}:cut:{}", crop(&opens, "9:16 upright").id.0, pot.0);
    let cut = said(&opens, &key).expect("it is cut");
    assert_eq!((cut.state, cut.rank), (State::WontWork, 1), "a must");
    assert!((100.0..250.0).contains(&cut.figure), "{} mm", cut.figure);
    let after = cured(&opens, &cut);
    assert!(said(&after, &key).is_none(), "kept whole");
    let slid = crop(&after, "9:16 upright").at.x - crop(&opens, "9:16 upright").at.x;
    assert!(slid > 0, "to the right, {slid} mm");
    let wont = read(&after)
        .into_iter()
        .find(|f| f.state == State::WontWork && f.reading != "exposures");
    assert!(wont.is_none(), "no crop is in the way: {wont:?}");
}

#[test]
fn moving_the_pot_to_the_middle_instead_would_put_it_in_the_gutter() {
    let mut layout = harbour_supper();
    let pot = item(&layout, "mussel pot");
    let off = layout.frame.at.x - layout.items[0].at.x;
    assert_eq!(layout.items[0].id, pot, "the pot comes first");
    for i in &mut layout.items {
        if i.id == pot || i.on == Some(pot) {
            i.at = Point::new(i.at.x + off, i.at.y);
        }
    }
    let page = crop(&layout, "double page").id;
    let gutter = format!("crops:{}:gutter", page.0);
    let lost = read(&layout)
        .into_iter()
        .find(|f| f.key.starts_with(&gutter) && f.about.contains(&pot));
    assert!(lost.is_some_and(|f| f.is_pressing()), "in the gutter");
}

#[test]
fn the_double_page_has_no_bleed_above_and_below_until_it_is_tightened() {
    let opens = harbour_supper();
    let page = crop(&opens, "double page");
    let room = |c: &Crop| {
        let [across, down] = c.extent();
        [
            f64::from(opens.frame.width) - across,
            opens.frame.height() - down,
        ]
        .map(|both| both * 0.5)
    };
    let [beside, above] = room(page);
    assert!(above < 0.5, "{above} mm above and below");
    assert!(beside > 20.0, "{beside} mm left and right");
    let key = format!("crops:{}:bleed", page.id.0);
    let bleed = said(&opens, &key).expect("no bleed");
    let after = cured(&opens, &bleed);
    assert!(said(&after, &key).is_none(), "there is room now");
    let tight = crop(&after, "double page");
    assert_eq!(tight.at, page.at, "about its middle");
    let size = tight.extent().map(|mm| (mm / 10.0).round());
    assert_eq!(size, [129.0, 91.0], "in cm");
    let predicted = &bleed.remedy.as_ref().expect("a cure").predicted;
    assert!(predicted.contains("91 cm"), "as promised: {predicted}");
}

#[test]
fn the_carafe_leans_past_the_line_of_the_post_and_a_move_keeps_it_in() {
    let opens = harbour_supper();
    let carafe = item(&opens, "oil carafe");
    let post = crop(&opens, "4:5 post").id;
    let leans = |l: &Layout| {
        let about =
            |f: &Finding| f.reading == "lean" && f.is_pressing() && f.about.contains(&carafe);
        read(l).into_iter().find(about)
    };
    let f = leans(&opens).expect("its top lies past the line");
    assert!(
        f.about.contains(&post) || f.sentence.contains("4:5 post"),
        "{}",
        f.sentence
    );
    assert!((20.0..80.0).contains(&f.figure), "{} mm", f.figure);
    assert!(leans(&cured(&opens, &f)).is_none(), "it is kept in");
}

/// Its lead leg lies under the load and a bag hangs on it. With the leg turned
/// away and no bag the same stand would tip.
#[test]
fn the_stand_holds_by_the_arithmetic_with_its_bag() {
    let opens = harbour_supper();
    let pressing = |l: &Layout| {
        let rig = |f: &Finding| f.reading == "rig" && f.is_pressing();
        read(l).into_iter().find(rig)
    };
    let first = pressing(&opens);
    assert!(first.is_none(), "{first:?}");
    let mut bare = opens.clone();
    bare.rig.bag = None;
    bare.rig.leg_bearing = Some(Turn::default());
    let told = pressing(&bare).expect("the load hangs between two legs");
    assert!(
        pressing(&cured(&bare, &told)).is_none(),
        "{}",
        told.sentence
    );
}

/// The three pairs of hands are one person's, at three places of the table,
/// one exposure after the other.
#[test]
fn every_hand_reaches_and_exposures_clash_once_and_contradict_once() {
    let opens = harbour_supper();
    let pressing = |l: &Layout, reading: &str| {
        let all = read(l).into_iter();
        let own = all.filter(|f| f.reading == reading && f.is_pressing());
        own.collect::<Vec<Finding>>()
    };
    let hands = pressing(&opens, "hands");
    assert!(hands.is_empty(), "{hands:?}");
    let seated = opens
        .hands
        .iter()
        .all(|h| crate::scene::joints(&opens, h).is_some());
    assert!(seated, "each comes from a shoulder");
    let told = pressing(&opens, "exposures");
    let [twice, clash] = told.as_slice() else {
        panic!("{told:?}");
    };
    assert_eq!(twice.state, State::WontWork, "{}", twice.sentence);
    let carafe = item(&opens, "oil carafe");
    assert_eq!(twice.about, [carafe], "{}", twice.sentence);
    let shaded =
        "The arms in exposure 1 throw a shadow on the seared aubergine, changed in exposure 3";
    assert!(clash.sentence.starts_with(shaded), "{}", clash.sentence);
    // Each by what is offered, whichever is taken first.
    for pair in [[twice, clash], [clash, twice]] {
        let after = cured(&cured(&opens, pair[0]), pair[1]);
        let left = pressing(&after, "exposures");
        assert!(left.is_empty(), "{left:?}");
        assert!(pressing(&after, "hands").is_empty(), "and they still reach");
    }
    let after = cured(&opens, twice);
    assert!(said(&after, "exposures:order").is_some_and(|f| f.state == State::Holds));
}

/// Wrists and elbows cut by a crop are part of the story; what almost touches
/// by accident is not, neither before nor after the runner is laid.
#[test]
fn nothing_almost_touches_by_accident() {
    for layout in [harbour_supper(), runner_laid().1] {
        let near = read(&layout)
            .into_iter()
            .filter(|f| f.reading == "spacing" && f.is_pressing())
            .find(|f| f.rule.working != "working-spacing-joint");
        assert!(near.is_none(), "{near:?}");
    }
}
