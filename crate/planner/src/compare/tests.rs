use super::*;
use crate::layout::{Turn, open};

/// A pot of mussels, a platter, two glasses that share a number, a place
/// setting and a napkin.
const LAID: &str = r##"{"format":"overspread-layout","version":1,"id":"0000000000000001",
    "next_id":40,"next_number":9,"table":{"width":1600,"depth":950},
    "frame":{"at":[800,475],"width":1200},"groups":[{"id":30,"name":"place setting 1"}],
    "linens":[{"id":1,"kind":"napkin","name":"blue napkin","at":[300,600],"size":[400,400]}],
    "items":[
        {"id":2,"number":1,"name":"mussel pot","prop":"enamel-pot","at":[900,400],"role":"hero",
         "size":{"shape":"disc","diameter":240,"rim":6},"height":120},
        {"id":3,"number":2,"name":"mussels","prop":"mussels","at":[900,400],"on":2,
         "size":{"shape":"disc","diameter":200,"rim":0}},
        {"id":4,"number":3,"name":"seared aubergine","prop":"aubergine","at":[500,400],
         "size":{"shape":"oval","width":300,"depth":180,"rim":0}},
        {"id":5,"number":4,"name":"tumbler","prop":"wine-tumbler","at":[700,200],
         "size":{"shape":"disc","diameter":70,"rim":2}},
        {"id":6,"number":4,"name":"tumbler","prop":"wine-tumbler","at":[1000,200],
         "size":{"shape":"disc","diameter":70,"rim":2}},
        {"id":7,"number":5,"name":"plate","prop":"small-plate","at":[300,700],"group":30,
         "size":{"shape":"disc","diameter":200,"rim":6}},
        {"id":8,"number":6,"name":"fork","prop":"fork","at":[180,700],"group":30,
         "size":{"shape":"rect","width":25,"depth":190}}],
    "people":[{"id":20}],"seats":[{"id":24,"at":[0,475]}],
    "exposures":[{"id":21,"kind":"clean"},{"id":22}],
    "hands":[{"id":23,"person":20,"exposure":22,"entry":[800,900],"target":[900,420]}],
    "crops":[{"id":33,"name":"post","ratio":[4,5],"at":[800,475],"width":600}]}"##;

fn laid() -> Layout {
    open(LAID).expect("a sound layout")
}

/// What is told of a change, and what each carries.
fn told(change: impl FnOnce(&mut Layout)) -> Vec<(String, Vec<u16>)> {
    let (before, mut after) = (laid(), laid());
    change(&mut after);
    let told = changes(&before, &after).into_iter();
    told.map(|c| (c.sentence, c.objects.into_iter().map(|id| id.0).collect()))
        .collect()
}

fn says(change: impl FnOnce(&mut Layout), expected: &[(&str, &[u16])]) {
    let told = told(change);
    let told: Vec<(&str, &[u16])> = told.iter().map(|(s, o)| (s.as_str(), &o[..])).collect();
    assert_eq!(told, expected);
}

fn item(layout: &mut Layout, id: u16) -> &mut crate::layout::Item {
    let found = layout.items.iter_mut().find(|o| o.id == Id(id));
    found.expect("there")
}

fn shift(layout: &mut Layout, ids: &[u16], x: i32, y: i32) {
    for id in ids {
        let item = item(layout, *id);
        item.at = item.at.moved(x, y);
    }
}

#[test]
fn a_thing_that_moves_says_how_far_and_which_way_the_picture_shows() {
    says(
        |l| shift(l, &[4], -120, 0),
        &[("3 seared aubergine moved 12 cm to the left.", &[4])],
    );
    says(
        |l| {
            shift(l, &[4], -120, 0);
            l.head.units = Units::In;
        },
        &[
            ("3 seared aubergine moved 4.7 in to the left.", &[4]),
            ("Told in inches.", &[]),
        ],
    );
    let (mut before, mut after) = (laid(), laid());
    for layout in [&mut before, &mut after] {
        layout.frame.turn = Turn::from_degrees(90.0);
    }
    shift(&mut after, &[4], -120, 0);
    let told = changes(&before, &after);
    assert_eq!(told[0].sentence, "3 seared aubergine moved 12 cm down.");
    assert_eq!(
        told[0].moved,
        Some([Point::new(500, 400), Point::new(380, 400)])
    );
    assert_eq!(told[0].number, Some(3));
}

#[test]
fn what_moves_as_one_is_told_once() {
    says(
        |l| shift(l, &[2, 3], 0, 35),
        &[("1 mussel pot moved 3.5 cm down.", &[2, 3])],
    );
    says(
        |l| shift(l, &[7, 8], 30, -30),
        &[(
            "5 plate (place setting 1) moved 4.2 cm up and to the right.",
            &[7, 8],
        )],
    );
    says(
        |l| shift(l, &[5, 6], 0, 50),
        &[("4 tumbler (2 of them) moved 5 cm down.", &[5, 6])],
    );
    // Apart they are two.
    says(
        |l| {
            shift(l, &[5], 0, 50);
            shift(l, &[6], 0, -50);
        },
        &[
            ("4 tumbler moved 5 cm down.", &[5]),
            ("4 tumbler moved 5 cm up.", &[6]),
        ],
    );
}

#[test]
fn a_setting_turned_about_its_middle_is_one_change() {
    let about = |l: &mut Layout, half: i32| {
        let middle = glam::dvec2(240.0, 700.0);
        let turn = crate::shape::rotation(f64::from(half) * 0.5);
        for id in [7, 8] {
            let item = item(l, id);
            item.at = Point::nearest(middle + turn.rotate(item.at.vec() - middle));
            item.turn = item.turn.plus(half);
        }
    };
    says(
        |l| about(l, -60),
        &[(
            "5 plate (place setting 1) moved 3.1 cm up and turned 30° anticlockwise.",
            &[7, 8],
        )],
    );
    says(
        |l| item(l, 4).turn = Turn::from_degrees(7.5),
        &[("3 seared aubergine turned 7.5° clockwise.", &[4])],
    );
}

#[test]
fn two_that_changed_places_are_one_change() {
    says(
        |l| {
            shift(l, &[2, 3], -400, 0);
            shift(l, &[4], 400, 0);
            item(l, 4).turn = Turn::from_degrees(20.0);
        },
        &[
            (
                "1 mussel pot and 3 seared aubergine changed places.",
                &[2, 3, 4],
            ),
            ("3 seared aubergine turned 20° clockwise.", &[4]),
        ],
    );
}

#[test]
fn what_comes_and_goes_takes_along_what_lies_on_it() {
    says(
        |l| l.items.retain(|o| ![2, 3].contains(&o.id.0)),
        &[("1 mussel pot taken away.", &[2, 3])],
    );
    let (before, mut after) = (laid(), laid());
    after.items.retain(|o| o.group.is_none());
    after.groups.clear();
    let told = changes(&before, &after);
    assert_eq!(told.len(), 1, "{told:?}");
    assert_eq!(told[0].sentence, "5 plate (place setting 1) taken away.");
    let back = changes(&after, &before);
    assert_eq!(back[0].sentence, "5 plate (place setting 1) added.");
    says(|l| l.linens.clear(), &[("The blue napkin is gone.", &[1])]);
}

#[test]
fn hands_come_and_go_as_a_pair_where_they_are_one() {
    says(
        |l| l.hands.clear(),
        &[("The right hand in 1A is gone.", &[23])],
    );
    let (mut before, mut after) = (laid(), laid());
    let mut other = after.hands[0].clone();
    (other.id, other.pair) = (Id(25), Some(Id(23)));
    after.hands[0].pair = Some(Id(25));
    after.hands.push(other);
    before.hands.clear();
    let both = changes(&before, &after);
    assert_eq!(both.len(), 1, "{both:?}");
    assert_eq!(both[0].sentence, "The hands in 1A are new.");
    assert_eq!(both[0].objects, [Id(23), Id(25)]);
}

#[test]
fn what_has_neither_number_nor_name_is_told_all_the_same() {
    let (mut before, mut after) = (laid(), laid());
    for layout in [&mut before, &mut after] {
        let item = item(layout, 4);
        (item.number, item.name) = (0, String::new());
    }
    shift(&mut after, &[4], 0, 70);
    let told = changes(&before, &after);
    assert_eq!(told[0].sentence, "The thing moved 7 cm down.");
    assert_eq!(told[0].number, None);
}

#[test]
fn a_swapped_vessel_tells_no_size_of_its_own() {
    says(
        |l| {
            let pot = item(l, 2);
            pot.prop = "oval-platter".into();
            pot.name = "dark platter".into();
            pot.height = 30;
        },
        &[("1 mussel pot swapped for the dark platter.", &[2])],
    );
    says(
        |l| item(l, 2).height = 60,
        &[("1 mussel pot: 6 cm high instead of 12 cm.", &[2])],
    );
}

#[test]
fn cloth_over_things_names_them_by_their_numbers() {
    says(
        |l| l.linens[0].over = vec![Id(8), Id(7)],
        &[("The blue napkin: laid over 5 plate and 6 fork.", &[1])],
    );
    says(
        |l| item(l, 4).hold_minutes = Some(25),
        &[("3 seared aubergine: looks right for 25 min.", &[4])],
    );
}

#[test]
fn what_the_lists_say_is_told() {
    says(
        |l| item(l, 4).stock.spare = 2,
        &[("3 seared aubergine: 2 to spare now.", &[4])],
    );
    says(
        |l| l.linens[0].stock.source = Some(crate::layout::Source::Hire),
        &[("The blue napkin: to be hired.", &[1])],
    );
    says(
        |l| item(l, 2).stock.shelf = "box 4".into(),
        &[("1 mussel pot: it lives at box 4 now.", &[2])],
    );
}

#[test]
fn what_has_no_number_comes_after_what_has() {
    says(
        |l| {
            l.light.clock = Turn::from_degrees(270.0);
            l.crops[0].at = Point::new(820, 475);
            l.crops[0].width = 700;
            l.linens[0].state = crate::layout::LinenState::Folded;
            l.hands[0].target = Point::new(900, 380);
            shift(l, &[4], 10, 0);
            l.rig.kind = crate::layout::RigKind::TwoStands;
        },
        &[
            ("3 seared aubergine moved 1 cm to the right.", &[4]),
            ("The blue napkin: folded.", &[1]),
            ("The right hand in 1A: fingertips moved 4 cm up.", &[23]),
            ("“post” slid 2 cm to the right.", &[33]),
            ("“post”: 70 cm wide instead of 60 cm.", &[33]),
            ("The light: from 9 o’clock instead of from 10 o’clock.", &[]),
            ("The camera: held by something else.", &[]),
        ],
    );
}

#[test]
fn a_client_is_not_told_of_people_rig_and_plan() {
    let (before, mut after) = (laid(), laid());
    after.people[0].released = true;
    after.rig.ceiling = 3_000;
    after.head.units = Units::In;
    after.seats[0].standing = true;
    let told = changes(&before, &after);
    assert_eq!(told.len(), 4, "{told:?}");
    assert!(told.iter().all(|c| !c.topic.is_shown_to_client()));
}

#[test]
fn a_lock_and_the_next_number_are_no_change() {
    says(
        |l| {
            item(l, 4).locked = true;
            l.linens[0].locked = true;
            l.head.next_id = 90;
            l.head.revision.number = 4;
        },
        &[],
    );
}

#[test]
fn versions_are_told_from_tables_of_their_own() {
    let one = laid();
    let mut copy = laid();
    copy.id = crate::layout::LayoutId(2);
    assert!(are_versions(&one, &copy), "the same things");
    copy.items.truncate(1);
    copy.items[0].prop = "small-bowl".into();
    assert!(!are_versions(&one, &copy), "nothing in common");
    copy.based_on = Some(one.id);
    assert!(are_versions(&one, &copy), "a copy of it");
    assert!(are_versions(&copy, &one), "either way round");
}
