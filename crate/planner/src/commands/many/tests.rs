use glam::DVec2;

use super::super::tests::{done, item, laid};
use super::super::{add, align, equal_gaps, lay_places, strew};
use super::*;
use crate::commands::InLine;
use crate::edit::{History, Run};
use crate::scene::Scene;
use crate::shape::{disc, frame_outline};

fn ids(ids: &[u16]) -> Vec<Id> {
    ids.iter().copied().map(Id).collect()
}

fn around(layout: &Layout, at: [i32; 2], radius: f64, before: &[Id]) -> Vec<Id> {
    let path = disc(Point::new(at[0], at[1]).vec(), radius, 1.0);
    pick_within(layout, &Scene::of(layout, None), &path, before)
}

#[test]
fn a_loop_takes_what_lies_in_it_by_more_than_half() {
    let layout = laid();
    let bowl = around(&layout, [900, 400], 120.0, &[]);
    assert_eq!(
        bowl,
        ids(&[3]),
        "the bowl for its soup, not the board below"
    );
    let board = around(&layout, [900, 400], 260.0, &[]);
    assert_eq!(board, ids(&[2, 3]), "the board, and what stands on it");
    let small = around(&layout, [300, 600], 60.0, &[]);
    assert_eq!(small, [], "the napkin's middle alone does not do");
    let fork = around(&layout, [180, 700], 110.0, &[]);
    assert_eq!(fork, ids(&[5, 6]), "a group whole");
    let more = around(&layout, [900, 400], 120.0, &fork);
    assert_eq!(more, ids(&[3, 5, 6]), "beside what was picked");
    assert_eq!(more, picked(&layout, &more), "as it stands");
    assert_eq!(pick_all(&layout), ids(&[1, 2, 3, 5, 6]), "everything");
}

#[test]
fn loops_that_are_none_pick_nothing_and_lose_nothing() {
    let layout = laid();
    let scene = Scene::of(&layout, None);
    let far = DVec2::new(1e6, -1e6);
    for path in [
        vec![],
        vec![DVec2::new(900.0, 400.0)],
        vec![DVec2::new(0.0, 0.0), DVec2::new(1600.0, 900.0)],
        vec![DVec2::new(900.0, 400.0); 50],
        vec![far, far * 2.0, far + DVec2::X],
    ] {
        assert_eq!(pick_within(&layout, &scene, &path, &[]), [], "{path:?}");
        let kept = pick_within(&layout, &scene, &path, &[Id(3)]);
        assert_eq!(kept, ids(&[3]), "what was picked stays: {path:?}");
    }
}

#[test]
fn a_loop_that_crosses_itself_or_goes_round_twice_holds_all_it_goes_round() {
    let layout = laid();
    let scene = Scene::of(&layout, None);
    let bowl = disc(DVec2::new(900.0, 400.0), 120.0, 1.0);
    let mut plate = disc(DVec2::new(300.0, 700.0), 150.0, 1.0);
    plate.reverse();
    let eight: Vec<DVec2> = bowl.iter().chain(&plate).copied().collect();
    let both = pick_within(&layout, &scene, &eight, &[]);
    assert_eq!(both, ids(&[3, 5, 6]), "both halves of an eight");
    let twice: Vec<DVec2> = bowl.iter().chain(&bowl).copied().collect();
    assert_eq!(
        pick_within(&layout, &scene, &twice, &[]),
        ids(&[3]),
        "twice"
    );
    let star: Vec<DVec2> = (0..5)
        .map(|n| {
            let (sin, cos) = libm::sincos(f64::from(n * 2) * std::f64::consts::TAU / 5.0);
            DVec2::new(900.0, 400.0) + DVec2::new(sin, cos) * 400.0
        })
        .collect();
    let all = pick_within(&layout, &scene, &star, &[]);
    assert!(all.contains(&Id(3)), "the middle of a star: {all:?}");
}

#[test]
fn a_tap_picks_by_the_dish_and_lets_go_of_what_takes_it_along() {
    let layout = laid();
    let soup = toggle(&layout, &[], Id(4));
    assert_eq!(soup, ids(&[3]), "the bowl for its soup");
    assert_eq!(toggle(&layout, &soup, Id(4)), [], "and back");
    let board = toggle(&layout, &soup, Id(2));
    assert_eq!(board, ids(&[2, 3]), "the board takes its bowl along");
    let off = toggle(&layout, &board, Id(3));
    assert_eq!(off, [], "without its bowl it could not go");
    let setting = toggle(&layout, &ids(&[1]), Id(7));
    assert_eq!(
        setting,
        ids(&[1, 5, 6]),
        "the plate for its roll, and its group"
    );
    assert_eq!(toggle(&layout, &setting, Id(6)), ids(&[1]), "all of it");
    assert_eq!(toggle(&layout, &setting, Id(99)), setting, "nobody's");
}

#[test]
fn what_is_locked_is_picked_and_stays() {
    let mut before = laid();
    before.items[2].locked = true; // The soup, and with it its bowl and board.
    let all = pick_all(&before);
    assert_eq!(all, ids(&[1, 2, 3, 5, 6]), "picked like any other");
    let act = move_picked(&before, &all, [10, 20]).expect("some are free");
    let said = "3 things moved; what is locked stays as it is";
    assert_eq!(act.name, said, "said");
    let after = done(&before, Ok(act));
    assert_eq!(after.items[..3], before.items[..3], "board, bowl and soup");
    assert_eq!(
        item(&after, 7).at,
        item(&before, 7).at.moved(10, 20),
        "the roll"
    );
    let none = Err(Refused::Locked("bowl".into()));
    let bowl = ids(&[3]);
    assert_eq!(move_picked(&before, &bowl, [1, 1]), none, "moved");
    assert_eq!(turn_picked(&before, &bowl, 10), none, "turned");
    for deed in [Deed::Group, Deed::Apart, Deed::Remove] {
        assert_eq!(do_picked(&before, &bowl, deed), none, "{deed:?}");
    }
    let gone = done(&before, do_picked(&before, &all, Deed::Remove));
    assert_eq!(gone.items, before.items[..3], "only what is locked is left");
    assert_eq!(
        free(&before, &[]),
        Err(Refused::TooFew(1)),
        "nothing picked"
    );
}

#[test]
fn they_turn_about_their_common_middle() {
    let before = laid();
    let two = ids(&[1, 3]);
    let middle = middle_of(&before, &two);
    assert_eq!(middle, Some(Point::new(600, 500)), "between them");
    let half = done(&before, turn_picked(&before, &two, 360));
    assert_eq!(half.linens[0].at, Point::new(900, 400), "the napkin");
    assert_eq!(item(&half, 3).at, Point::new(300, 600), "the bowl");
    assert_eq!(item(&half, 4).at, Point::new(290, 600), "with its soup");
    let turn = item(&before, 4).turn.plus(360);
    assert_eq!(item(&half, 4).turn, turn, "turned itself");
    let back = done(&half, turn_picked(&half, &two, 360));
    assert_eq!(back, before, "and back");
}

#[test]
fn they_are_locked_and_unlocked_with_what_lies_in_them() {
    let before = laid();
    let locked = done(&before, do_picked(&before, &ids(&[1, 3]), Deed::Lock));
    let is = |id| item(&locked, id).locked;
    assert_eq!(
        [2, 3, 4, 5].map(is),
        [false, true, true, false],
        "with its soup"
    );
    assert!(locked.linens[0].locked, "the napkin");
    let free = done(&locked, do_picked(&locked, &ids(&[1, 3]), Deed::Unlock));
    assert_eq!(free, before, "unlocked");
}

#[test]
fn groups_are_joined_and_taken_apart_and_none_is_left_empty() {
    let before = laid();
    let joined = done(&before, do_picked(&before, &ids(&[3, 5]), Deed::Group));
    let of = |id| item(&joined, id).group;
    assert_eq!(
        [3, 5, 6].map(of),
        [Some(Id(30)); 3],
        "into the group there is"
    );
    assert_eq!(of(4), None, "the soup goes by its bowl");
    let apart = done(&joined, do_picked(&joined, &ids(&[3]), Deed::Apart));
    assert!(apart.items.iter().all(|o| o.group.is_none()), "apart");
    assert!(
        apart.groups.iter().all(|o| o.id != Id(30)),
        "no empty group"
    );
    let linen = do_picked(&before, &ids(&[1, 3]), Deed::Group);
    assert_eq!(linen, Err(Refused::TooFew(2)), "a linen is in no group");
    let twice = done(&before, do_picked(&before, &ids(&[5]), Deed::Repeat));
    let new = twice.items[before.items.len()].id;
    let one = done(&twice, do_picked(&twice, &[Id(5), new], Deed::Group));
    let groups = |layout: &Layout| layout.groups.len();
    assert_eq!(groups(&one), groups(&twice) - 1, "two groups become one");
}

#[test]
fn copies_lie_beside_them_as_they_lie_to_each_other() {
    let mut before = laid();
    before.items[3].locked = true;
    let act = do_picked(&before, &ids(&[3, 5]), Deed::Repeat);
    let after = done(&before, act);
    let new = &after.items[before.items.len()..];
    let names: Vec<&str> = new.iter().map(|o| o.name.as_str()).collect();
    assert_eq!(
        names,
        ["bowl", "soup", "plate", "fork", "roll"],
        "all of them"
    );
    let by = new[0].at.vec() - item(&before, 3).at.vec();
    for (new, old) in new.iter().zip([3, 4, 5, 6, 7]) {
        assert_eq!(new.at.vec() - item(&before, old).at.vec(), by, "{old}");
        assert!(!new.locked, "a copy is free");
    }
    let frame = frame_outline(&before.frame);
    let within = |p: DVec2| crate::shape::contains(&frame, p);
    let small = done(&before, do_picked(&before, &ids(&[3]), Deed::Repeat));
    let beside = small.items[before.items.len()].at.vec();
    assert!(within(beside), "within the frame: {beside}");
}

#[test]
fn in_line_a_thing_on_a_chosen_board_moves_but_once() {
    let before = laid();
    for chosen in [[3, 2, 5], [2, 3, 5]] {
        let after = done(&before, align(&before, &ids(&chosen), InLine::Level));
        let by = |id| item(&after, id).at.vec() - item(&before, id).at.vec();
        assert_eq!(by(3), by(2), "the bowl with its board: {chosen:?}");
    }
    let few = equal_gaps(&before, &ids(&[3, 2, 5]));
    assert_eq!(few, Err(Refused::TooFew(3)), "two that move");
}

/// 200 things and more, and one that is strewn all over.
fn full() -> Layout {
    let mut layout = laid();
    let wish = serde_json::from_str(r#"{"setting": "camera", "places": 4, "close": true}"#);
    let places = lay_places(&layout, &wish.expect("a wish"));
    layout = done(&layout, places);
    while layout.items.len() < 200 {
        let n = layout.items.len() as i32;
        let at = Point::new(60 + (n % 20) * 75, 60 + (n / 20) * 80);
        let scene = Scene::of(&layout, None);
        layout = done(&layout, add(&layout, &scene, "dip-bowl", at, None));
    }
    let path: Vec<Point> = (0..40)
        .map(|n| Point::new((n % 2) * 1_500, n * 20))
        .collect();
    done(&layout, strew(&layout, "crumbs", &path, 10))
}

#[test]
fn every_act_on_everything_of_a_full_table_is_taken_back_to_the_byte() {
    let start = full();
    let scene = Scene::of(&start, None);
    // A loop with far more points than a hand gives.
    let path: Vec<DVec2> = (0..20_000)
        .map(|n| {
            let (sin, cos) = libm::sincos(f64::from(n) * std::f64::consts::TAU / 20_000.0);
            DVec2::new(800.0 + 3_000.0 * cos, 475.0 + 3_000.0 * sin)
        })
        .collect();
    let all = pick_within(&start, &scene, &path, &[]);
    assert_eq!(all, pick_all(&start), "everything");
    assert!(all.len() > 200, "{}", all.len());
    let mut history = History::new(start.clone());
    let mut files = vec![start.to_json()];
    type Do = fn(&Layout, &[Id]) -> Result<Act, Refused>;
    let deeds: [Do; 11] = [
        |l, ids| move_picked(l, ids, [30, -20]),
        |l, ids| turn_picked(l, ids, 25),
        |l, ids| do_picked(l, ids, Deed::Repeat),
        |l, ids| do_picked(l, ids, Deed::Group),
        |l, ids| do_picked(l, ids, Deed::Lock),
        |l, ids| do_picked(l, ids, Deed::Unlock),
        |l, ids| do_picked(l, ids, Deed::Apart),
        |l, ids| align(l, ids, InLine::Upright),
        equal_gaps,
        |l, ids| turn_picked(l, ids, -700),
        |l, ids| do_picked(l, ids, Deed::Remove),
    ];
    for (n, deed) in deeds.into_iter().enumerate() {
        let layout = history.layout();
        let act = deed(layout, &all).unwrap_or_else(|why| panic!("{n}: {why}"));
        let done = history.make(&act.name, act.edit, Run::Alone);
        assert!(
            done.expect("within the limits").is_some(),
            "{n} does something"
        );
        files.push(history.layout().to_json());
    }
    let left = history.layout().items.len();
    assert_eq!(left, start.items.len(), "the copies stay");
    for file in files.iter().rev().skip(1) {
        history.undo().expect("fits").expect("one step each");
        assert!(history.layout().to_json() == *file, "to the byte");
    }
    assert!(!history.can_undo(), "no more steps than acts");
}
