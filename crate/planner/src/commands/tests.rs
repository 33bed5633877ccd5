use std::collections::BTreeSet;

use super::*;
use crate::layout::{Item, Point, Role};

/// A board with a bowl on it that holds soup, and a group of plate, fork and
/// spoon with a napkin under none of them.
const LAID: &str = r##"{"format":"overspread-layout","version":0,"id":"0000000000000001",
    "next_id":40,"next_number":9,"table":{"width":1600,"depth":950},
    "frame":{"at":[800,475],"width":1200},
    "groups":[{"id":30,"name":"setting"},{"id":31,"name":"bare"}],
    "linens":[{"id":1,"kind":"napkin","name":"napkin","at":[300,600],"size":[400,400]}],
    "items":[
        {"id":2,"number":1,"name":"board","prop":"wooden-board","at":[900,400],
         "size":{"shape":"rect","width":400,"depth":260}},
        {"id":3,"number":2,"name":"bowl","prop":"soup-bowl","role":"hero","at":[900,400],"on":2,
         "size":{"shape":"disc","diameter":190,"rim":6},"height":60},
        {"id":4,"number":2,"name":"soup","prop":"soup","at":[910,400],"on":3,
         "size":{"shape":"disc","diameter":150,"rim":0}},
        {"id":5,"number":3,"name":"plate","prop":"small-plate","at":[300,700],"group":30,
         "size":{"shape":"disc","diameter":200,"rim":6}},
        {"id":6,"number":3,"name":"fork","prop":"fork","at":[180,700],"group":30,
         "size":{"shape":"rect","width":25,"depth":190}},
        {"id":7,"number":4,"name":"roll","prop":"torn-bread","at":[310,700],"on":5,
         "size":{"shape":"oval","width":90,"depth":70}}],
    "people":[{"id":20}],"exposures":[{"id":21,"kind":"clean"},{"id":22},{"id":24}],
    "hands":[{"id":23,"person":20,"exposure":22,"entry":[800,900],"target":[900,420],"holds":6},
             {"id":25,"person":20,"exposure":24,"entry":[700,900],"target":[600,420]}],
    "crops":[{"id":33,"name":"post","ratio":[4,5],"at":[800,475],"width":600,"must_show":[3,6]}]}"##;

pub(super) fn laid() -> Layout {
    crate::layout::open(LAID).expect("a sound layout")
}

/// The same table with nothing standing on it.
pub(super) fn bare() -> Layout {
    let mut layout = laid();
    layout.items.clear();
    layout.hands.clear();
    layout.crops.clear();
    layout
}

pub(super) fn done(layout: &Layout, act: Result<Act, Refused>) -> Layout {
    let act = act.expect("allowed");
    let mut after = layout.clone();
    act.edit.apply_checked(&mut after).expect("fits");
    after
}

pub(super) fn item(layout: &Layout, id: u16) -> &Item {
    let found = layout.items.iter().find(|o| o.id == Id(id));
    found.unwrap_or_else(|| panic!("{id} is there"))
}

fn locked(id: u16) -> Layout {
    let mut layout = laid();
    for item in layout.items.iter_mut().filter(|o| o.id == Id(id)) {
        item.locked = true;
    }
    layout
}

fn moves(id: u16) -> Vec<u16> {
    moving(&laid(), Id(id)).into_iter().map(|id| id.0).collect()
}

#[test]
fn what_stands_on_a_thing_and_its_group_go_along() {
    assert_eq!(moves(2), [2, 3, 4], "a board takes all that stands on it");
    assert_eq!(moves(4), [4], "food moves in its dish");
    assert_eq!(moves(6), [5, 6, 7], "a group, and what lies on a member");
    let mut layout = laid();
    layout.items[5].group = Some(Id(31));
    layout.items[0].group = Some(Id(31));
    let all = moving(&layout, Id(6));
    assert_eq!(all.len(), 6, "its group on the plate takes theirs along");
}

#[test]
fn a_move_keeps_everything_that_goes_along_as_it_lay() {
    let before = laid();
    let after = done(&before, move_by(&before, Id(6), false, [35, -20]));
    for id in [5, 6, 7] {
        let at = item(&before, id).at.moved(35, -20);
        assert_eq!(item(&after, id).at, at, "{id} goes along");
    }
    assert_eq!(item(&after, 3), item(&before, 3), "the bowl stays");
    let far = move_by(&before, Id(6), false, [i32::MAX, 0]).expect("an edit");
    let refused = far.edit.apply_checked(&mut before.clone());
    assert!(refused.is_err(), "out of the room");
}

#[test]
fn a_thing_taken_out_of_its_group_goes_alone() {
    let before = laid();
    let after = done(&before, move_by(&before, Id(5), true, [35, -20]));
    for id in [5, 7] {
        let at = item(&before, id).at.moved(35, -20);
        assert_eq!(item(&after, id).at, at, "{id}: the plate and its roll");
    }
    assert_eq!(item(&after, 6), item(&before, 6), "the fork stays");
    assert_eq!(item(&after, 5).group, Some(Id(30)), "still of the setting");
    let scene = crate::scene::Scene::of(&before, None);
    let mut drag = Drag::of(&before, &scene, Id(5), true).expect("free");
    drag.move_to(glam::DVec2::new(35.0, -20.0), 0.0);
    assert!(drag.takes("item-7") && !drag.takes("item-6"), "nor dragged");
    let after = done(&before, repeat(&before, Id(6), true));
    let more = after.items.len() - before.items.len();
    assert_eq!(more, 1, "a fork of its own, not a setting");
    assert_eq!(after.groups, before.groups, "and no group for it");
}

#[test]
fn there_is_one_hero() {
    let before = laid();
    let after = done(&before, set_role(&before, Id(5), Role::Hero));
    assert_eq!(item(&after, 5).role, Role::Hero, "the plate now");
    assert_eq!(item(&after, 3).role, Role::Support, "the bowl before");
    let after = done(&before, set_role(&before, Id(5), Role::Accent));
    assert_eq!(item(&after, 3).role, Role::Hero, "otherwise it stays");
}

#[test]
fn rim_and_corners_stay_within_what_is_resized() {
    use crate::layout::Size;
    let mut before = laid();
    before.items[0].size = Size::Rect {
        width: 400,
        depth: 260,
        corner: 60,
        rim: 50,
    };
    let after = done(&before, resize(&before, Id(2), [300, 80]));
    let wanted = Size::Rect {
        width: 300,
        depth: 80,
        corner: 40,
        rim: 40,
    };
    assert_eq!(item(&after, 2).size, wanted, "a board");
    let after = done(&before, resize(&before, Id(3), [10, 10]));
    let wanted = Size::Disc {
        diameter: 10,
        rim: 5,
    };
    assert_eq!(item(&after, 3).size, wanted, "a bowl");
}

#[test]
fn a_pair_changes_sides_and_exposures_as_a_whole() {
    let mut before = laid();
    before.hands[0].pair = Some(Id(25));
    before.hands[1].pair = Some(Id(23));
    let sides = |layout: &Layout| [layout.hands[0].side, layout.hands[1].side];
    let after = done(&before, flip(&before, Id(23)));
    let [one, other] = sides(&before);
    let [now, then] = sides(&after);
    assert!(now != one && then != other, "both");
    let after = done(&before, shoot_in(&before, Id(23), Id(24)));
    assert!(after.hands.iter().all(|h| h.exposure == Id(24)), "both");
    let left: Vec<u16> = after.exposures.iter().map(|e| e.id.0).collect();
    assert_eq!(left, [21, 24], "the empty one goes, the clean one stays");
}

#[test]
fn a_thing_is_shown_whole_until_it_is_taken_off_the_list() {
    let mut before = laid();
    before.crops[0].must_show.clear();
    let shown = |layout: &Layout| layout.crops[0].must_show.clone();
    let after = done(&before, must_show(&before, Id(33), Id(4)));
    assert_eq!(
        shown(&after),
        [Id(3)],
        "soup goes by its bowl, not the board"
    );
    let off = done(&after, must_show(&after, Id(33), Id(3)));
    assert_eq!(shown(&off), [], "and off again");
    before.crops[0].must_show = vec![Id(4)];
    let off = done(&before, must_show(&before, Id(33), Id(3)));
    assert_eq!(shown(&off), [], "food on the list goes with its bowl");
    before.crops[0].must_show.clear();
    let cloth = done(&before, must_show(&before, Id(33), Id(1)));
    assert_eq!(shown(&cloth), [], "cloth may be cut");
    assert!(must_show(&before, Id(99), Id(3)).is_err(), "no such crop");
}

#[test]
fn linens_hands_and_crops_move_alone() {
    let before = laid();
    let after = done(&before, move_by(&before, Id(1), false, [5, 5]));
    assert_eq!(after.linens[0].at, Point::new(305, 605), "the napkin");
    assert_eq!(after.items, before.items, "nothing on it is of it");
    let after = done(&before, move_by(&before, Id(23), false, [5, 5]));
    assert_eq!(after.hands[0].target, Point::new(905, 425), "its target");
    assert_eq!(after.hands[0].entry, before.hands[0].entry, "not its entry");
    let after = done(&before, move_by(&before, Id(33), false, [5, 5]));
    assert_eq!(after.crops[0].at, Point::new(805, 480), "the crop");
}

#[test]
fn food_goes_round_with_the_dish_it_lies_on() {
    let before = laid();
    let after = done(&before, turn_by(&before, Id(3), 180));
    assert_eq!(item(&after, 4).at, Point::new(900, 410), "clockwise");
    let turn = item(&before, 4).turn.plus(180);
    assert_eq!(item(&after, 4).turn, turn, "turned itself");
    assert_eq!(item(&after, 2), item(&before, 2), "not the board below");
}

#[test]
fn what_is_locked_is_refused_whoever_takes_it_along() {
    let refused = |act: Result<Act, Refused>, name: &str| {
        assert_eq!(act, Err(Refused::Locked(name.into())), "{name}");
    };
    let layout = locked(4);
    refused(move_by(&layout, Id(4), false, [1, 0]), "soup");
    refused(move_by(&layout, Id(2), false, [1, 0]), "soup");
    refused(turn_by(&layout, Id(3), 10), "soup");
    refused(remove(&layout, &[Id(3)]), "soup");
    let scene = crate::scene::Scene::of(&layout, None);
    for id in [2, 3, 4] {
        let drag = Drag::of(&layout, &scene, Id(id), false);
        assert!(drag.is_none(), "{id} would take the soup along");
    }
    let layout = locked(3);
    refused(remove(&layout, &[Id(2)]), "bowl");
    let layout = locked(5);
    refused(move_by(&layout, Id(6), false, [1, 0]), "plate");
    let said = Refused::Locked("plate".into()).to_string();
    assert_eq!(said, "Locked: plate; unlock first.", "said");
}

#[test]
fn only_the_lock_can_be_taken_off() {
    let before = locked(5);
    let mut free = before.clone();
    free.items[3].locked = false;
    assert!(Act::between(String::new(), &before, &free).is_ok(), "free");
    free.items[3].height = 70;
    let both = Act::between(String::new(), &before, &free);
    assert!(both.is_err(), "not with something else");
    let mut first = before.clone();
    first.items.rotate_left(1);
    first.items.swap(0, 4);
    assert!(
        Act::between(String::new(), &before, &first).is_ok(),
        "order"
    );
}

#[test]
fn dishes_stay_when_the_board_under_them_goes() {
    let before = laid();
    let after = done(&before, remove(&before, &[Id(2)]));
    let left: Vec<u16> = after.items.iter().map(|o| o.id.0).collect();
    assert_eq!(left, [3, 4, 5, 6, 7], "only the board goes");
    assert_eq!(item(&after, 3).on, None, "the bowl is on the table");
    assert_eq!(item(&after, 4).on, Some(Id(3)), "the soup in its bowl");
}

#[test]
fn what_led_to_a_thing_goes_with_it() {
    let before = laid();
    let after = done(&before, remove(&before, &[Id(3)]));
    assert!(after.items.iter().all(|o| o.id.0 != 4), "the soup too");
    assert_eq!(after.crops[0].must_show, [Id(6)], "not to be shown");
    let after = done(&before, remove(&before, &[Id(5), Id(6)]));
    assert_eq!(after.hands[0].holds, None, "nothing held");
    assert_eq!(after.groups.len(), 1, "no empty group but the bare one");
    let after = done(&before, remove(&before, &[Id(23)]));
    let left: Vec<u16> = after.exposures.iter().map(|e| e.id.0).collect();
    assert_eq!(left, [21, 24], "its exposure, and no other");
}

#[test]
fn a_repeat_has_ids_a_group_and_a_stack_of_its_own() {
    let before = laid();
    let after = done(&before, repeat(&before, Id(6), false));
    let new: Vec<&Item> = after.items[before.items.len()..].iter().collect();
    let names: Vec<&str> = new.iter().map(|o| o.name.as_str()).collect();
    assert_eq!(names, ["plate", "fork", "roll"], "all that goes along");
    let ids: BTreeSet<Id> = after.items.iter().map(|o| o.id).collect();
    assert_eq!(ids.len(), after.items.len(), "no id twice");
    assert_eq!(new[2].on, Some(new[0].id), "the new roll on the new plate");
    let group = new[0].group.expect("grouped");
    assert!(group != Id(30) && new[1].group == Some(group), "its own");
    let bowl = done(&before, repeat(&before, Id(3), false));
    let copy = &bowl.items[6];
    assert_eq!(copy.role, Role::Support, "one hero");
    assert_eq!(copy.on, Some(Id(2)), "on the same board");
    assert_eq!(
        done(&before, repeat(&before, Id(1), false)).linens.len(),
        2,
        "linen"
    );
    assert!(
        repeat(&before, Id(99), false)
            .expect("no fault")
            .edit
            .is_empty()
    );
}

#[test]
fn food_put_down_where_a_dish_is_lies_in_it() {
    let before = laid();
    let scene = crate::scene::Scene::of(&before, None);
    let put = |prop: &str, x: i32, y: i32| {
        let after = done(&before, add(&before, &scene, prop, Point::new(x, y), None));
        after.items.last().expect("added").on
    };
    assert_eq!(put("olives", 300, 700), Some(Id(5)), "on the plate");
    assert_eq!(put("olives", 600, 200), None, "on the table");
    assert_eq!(put("small-plate", 300, 700), None, "a plate stacks nowhere");
    let onto = |id: u16, prop: &str| {
        let at = Point::new(600, 200);
        let after = done(&before, add(&before, &scene, prop, at, Some(Id(id))));
        let item = after.items.last().expect("added").clone();
        (item.on, item.at)
    };
    let plate = (Some(Id(5)), Point::new(300, 700));
    assert_eq!(onto(5, "olives"), plate, "in the middle of what is chosen");
    assert_eq!(onto(7, "olives"), plate, "or of the dish its food lies in");
    let aside = (None, Point::new(600, 200));
    assert_eq!(onto(6, "olives"), aside, "nothing lies in a fork");
    assert_eq!(onto(5, "small-bowl"), aside, "nor a bowl in a plate");
    let linen = crate::catalogue::linens()[0].name;
    let after = done(&before, add(&before, &scene, linen, Point::new(1, 2), None));
    assert_eq!(after.linens.len(), 2, "a linen");
    let unknown = add(&before, &scene, "anvil", Point::new(0, 0), None);
    assert_eq!(unknown, Err(Refused::Unknown("anvil".into())), "unknown");
}

#[test]
fn a_drag_comes_to_what_a_move_or_a_turn_would() {
    let layout = laid();
    let scene = crate::scene::Scene::of(&layout, None);
    let mut drag = Drag::of(&layout, &scene, Id(3), false).expect("free");
    drag.move_to(glam::DVec2::new(211.4, -83.6), 0.0);
    assert_eq!(drag.by(), glam::DVec2::new(211.0, -84.0), "whole mm");
    let words = drag.words(&layout.frame, layout.head.units);
    assert!(
        words.contains("across") && words.contains("down"),
        "{words}"
    );
    assert_eq!(
        drag.drop(&layout),
        move_by(&layout, Id(3), false, [211, -84])
    );
    assert!(
        drag.takes("item-4") && drag.takes("shadow-3"),
        "its food too"
    );
    assert!(!drag.takes("item-2") && !drag.takes("tags"), "no others");
    assert_eq!(drag.turn_to(88.7), 90.0, "held at a quarter");
    assert_eq!(drag.turn_to(-31.4), -31.0, "whole degrees");
    assert_eq!(drag.drop(&layout), turn_by(&layout, Id(3), -62));
    assert_eq!(drag.words(&layout.frame, layout.head.units), "-31°");
    assert!(
        Drag::of(&layout, &scene, Id(99), false).is_none(),
        "nothing there"
    );
}
