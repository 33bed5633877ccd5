use super::limits::Limits;
use super::moves::difference;
use super::*;
use crate::layout::{Id, Layout, open};
use crate::readings::{Report, State, Study, Weighing, report};

fn harbour_supper() -> Layout {
    let file = include_str!("../../../../static/starters/harbour-supper.spread.json");
    open(file).expect("the supper opens")
}

fn wish(seed: u32, evaluations: u32) -> Wish {
    Wish {
        may: May::ALL,
        weighing: Weighing::default(),
        seed,
        evaluations,
        several: true,
        crop: Id(0),
    }
}

fn settled(layout: &Layout) -> Report {
    report(&Study::new(layout), true)
}

fn searched(layout: &Layout, wish: Wish) -> Vec<Proposal> {
    let mut search = Search::begin(layout, &settled(layout), None, wish);
    while !search.step(&|| true) {}
    search.found().to_vec()
}

fn wont_work(report: &Report) -> usize {
    let wont = |s: State| s == State::WontWork;
    report.findings.iter().filter(|f| wont(f.state)).count()
}

#[test]
fn the_supper_has_three_ways_out_that_differ() {
    let layout = harbour_supper();
    let limits = Limits::of(&layout);
    let before = settled(&layout);
    let found = searched(&layout, wish(1, 150));
    assert_eq!(found.len(), SEVERAL, "one of each character");
    for (n, proposal) in found.iter().enumerate() {
        let [was, is] = proposal.prices;
        assert!(is < was, "{}: {was} to {is}", proposal.name);
        assert!(limits.hold(&proposal.layout), "{}: limits", proposal.name);
        assert!(!proposal.better.is_empty(), "{}: better", proposal.name);
        let after = settled(&proposal.layout);
        assert!(
            wont_work(&after) < wont_work(&before),
            "{}: less that cannot work",
            proposal.name
        );
        for other in &found[..n] {
            let far = difference(&limits, &layout, &proposal.layout, &other.layout);
            assert!(far >= APART, "{} and {}: {far}", proposal.name, other.name);
        }
    }
}

#[test]
fn moves_make_up_the_whole_and_each_fits_alone() {
    let layout = harbour_supper();
    for proposal in searched(&layout, wish(2, 60)) {
        let mut whole = layout.clone();
        proposal.edit.apply(&mut whole).expect("the whole fits");
        assert_eq!(whole.to_json(), proposal.layout.to_json(), "as promised");
        let mut one_by_one = layout.clone();
        for one in proposal.moves.iter().rev() {
            one.edit.apply(&mut one_by_one).expect("in any order");
            assert!(
                !one.sentences.is_empty(),
                "{:?} says something",
                one.objects
            );
        }
        assert_eq!(one_by_one.to_json(), whole.to_json(), "all of them");
    }
}

#[test]
fn a_seed_and_a_number_of_evaluations_say_all_and_slices_change_nothing() {
    let layout = harbour_supper();
    let told =
        |found: &[Proposal]| -> Vec<String> { found.iter().map(|p| p.layout.to_json()).collect() };
    let whole = searched(&layout, wish(7, 45));
    let mut search = Search::begin(&layout, &settled(&layout), None, wish(7, 45));
    let mut slices = 0;
    while !search.step(&|| false) {
        slices += 1;
    }
    assert!(slices > 30, "{slices} slices");
    assert_eq!(told(&whole), told(search.found()), "in slices or not");
    let other = searched(&layout, wish(8, 45));
    assert_ne!(told(&whole), told(&other), "another seed, other ways");
    let [spent, all] = search.progress();
    assert_eq!((spent, all), (45, 45), "all were spent");
}

#[test]
fn what_is_locked_or_not_allowed_stays() {
    let mut layout = harbour_supper();
    for item in layout.items.iter_mut() {
        item.locked = item.id.0 % 2 == 0;
    }
    for proposal in searched(&layout, wish(3, 45)) {
        for (was, is) in layout.items.iter().zip(&proposal.layout.items) {
            assert!(!was.locked || was == is, "{:?} is locked", was.id);
        }
    }
    let dishes = May {
        dishes: true,
        ..May::NONE
    };
    let only = Wish {
        may: dishes,
        ..wish(4, 45)
    };
    let free = harbour_supper();
    for proposal in searched(&free, only) {
        let after = &proposal.layout;
        assert_eq!(after.crops, free.crops, "crops stay");
        assert_eq!(after.linens, free.linens, "cloth stays");
        assert_eq!(after.light, free.light, "the light stays");
        assert_eq!(after.seats, free.seats, "people stay");
    }
}

#[test]
fn nothing_to_move_is_nothing_to_propose() {
    let none = Wish {
        may: May::NONE,
        ..wish(1, 50)
    };
    assert!(
        searched(&harbour_supper(), none).is_empty(),
        "nothing may move"
    );
    let bare = r#"{"format":"overspread-layout","version":1,"id":"0000000000000001","next_id":9,
        "table":{"width":1600,"depth":950},"frame":{"at":[800,475],"width":1200}}"#;
    let bare = open(bare).expect("a bare table");
    let mut search = Search::begin(&bare, &settled(&bare), None, wish(1, 50));
    while !search.step(&|| true) {}
    assert!(search.found().is_empty(), "an empty table");
}

#[test]
fn one_finding_is_cured_when_it_is_asked_for() {
    let layout = harbour_supper();
    let before = settled(&layout);
    let leaning = before
        .findings
        .iter()
        .find(|f| f.is_pressing() && f.reading == "glare");
    let key = &leaning.expect("the wine mirrors the arm").key;
    let cure = Wish {
        weighing: Weighing {
            cure: Some(key.clone()),
            ..Weighing::default()
        },
        several: false,
        ..wish(1, 100)
    };
    let found = searched(&layout, cure);
    let [one] = found.as_slice() else {
        panic!("one way out, not {}", found.len());
    };
    let after = settled(&one.layout);
    let still = after.findings.iter().find(|f| f.key == *key);
    assert!(still.is_none_or(|f| !f.is_pressing()), "cured");
    assert!(one.better.iter().any(|b| b.key == *key), "and told");
}

/// Two plates, the left one locked, and a setting, on a board of 160 by 95 cm.
fn plates(second: [i32; 2]) -> Layout {
    let file = format!(
        r#"{{"format":"overspread-layout","version":1,"id":"0000000000000002","next_id":90,
        "table":{{"width":1600,"depth":950}},"frame":{{"at":[800,475],"width":1200}},
        "groups":[{{"id":40,"name":"place"}}],
        "items":[
        {{"id":1,"number":1,"prop":"dinner-plate","at":[600,400],"locked":true,"size":{{"shape":"disc","diameter":270,"rim":20}}}},
        {{"id":2,"number":2,"prop":"dinner-plate","at":[{},{}],"size":{{"shape":"disc","diameter":270,"rim":20}}}},
        {{"id":3,"number":3,"prop":"dinner-plate","group":40,"at":[800,760],"size":{{"shape":"disc","diameter":200,"rim":20}}}},
        {{"id":4,"number":3,"prop":"ramekin","group":40,"at":[950,760],"size":{{"shape":"disc","diameter":80,"rim":5}}}}]}}"#,
        second[0], second[1]
    );
    open(&file).expect("plates")
}

#[test]
fn limits_are_broken_by_what_they_name_and_by_nothing_else() {
    let start = plates([1000, 400]);
    let limits = Limits::of(&start);
    let moved = |id: u16, by: [i32; 2]| {
        let mut after = start.clone();
        let own = after.items.iter_mut().filter(|i| i.id == Id(id));
        own.for_each(|i| i.at = i.at.moved(by[0], by[1]));
        limits.breach(&after)
    };
    assert!(limits.hold(&start), "as it is");
    assert!(moved(2, [-100, 0]) <= 0.0, "nearer, but clear");
    assert!(moved(2, [-131, 0]) <= 0.0, "a touch is no overlap");
    assert!(moved(2, [-150, 0]) > 0.0, "over the other plate");
    assert!(moved(2, [-200, 0]) > moved(2, [-150, 0]), "deeper is worse");
    assert!(moved(2, [300, 0]) > 0.0, "past the frame");
    assert!(moved(2, [0, -300]) > 0.0, "past the table");
    assert!(moved(1, [-5, 0]) > 0.0, "locked");
    assert!(moved(4, [10, 0]) > 0.0, "pulled out of its setting");
    let setting = |by: [i32; 2]| {
        let mut after = start.clone();
        let own = after.items.iter_mut().filter(|i| i.id.0 > 2);
        own.for_each(|i| i.at = i.at.moved(by[0], by[1]));
        limits.breach(&after)
    };
    assert!(setting([-60, 0]) <= 0.0, "slid along its edge");
    assert!(setting([0, -20]) > 0.0, "drawn from its edge");
    assert!(
        setting([SETTING_SLIDES as i32 + 30, 0]) > 0.0,
        "slid too far"
    );
    let mut gone = start.clone();
    gone.items.pop();
    assert!(!limits.hold(&gone), "taken away");
    let overlapping = plates([820, 400]);
    let own = Limits::of(&overlapping);
    assert!(own.hold(&overlapping), "what overlapped may go on");
}

#[test]
fn numbers_stand_for_layouts_near_this_one() {
    let layout = plates([1000, 400]);
    let dishes = May {
        dishes: true,
        ..May::NONE
    };
    let mut near = Near::of(&layout, dishes, Weighing::default(), Id(0));
    assert_eq!(near.variables(), 3, "the one free plate: right, down, turn");
    let start = near.start();
    let middle = near.price(&[0.5; 3]).expect("three numbers");
    assert!((middle - start).abs() < 1e-9, "as it is: {middle}, {start}");
    let over = near.price(&[0.2, 0.5, 0.5]).expect("three numbers");
    assert!(over > start + 300.0, "over the other plate: {over}");
    assert_eq!(near.price(&[0.5; 2]), None, "a number is missing");
}
