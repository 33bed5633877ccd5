//! What is told of two layouts is complete: whatever differs is told, and
//! nothing is where nothing does. Every field of the starters is changed in
//! turn, and long runs of acts are made at random.
use planner::commands::{
    self as acts, Act, Deed, Dial, Look, Page, Refused, SettingsWish, do_picked,
};
use planner::compare::changes;
use planner::edit::{Edit, Key};
use planner::layout::{
    Action, CardKind, ExposureKind, Format, Id, Layout, Point, Ratio, Revision, Role, Turn, open,
};
use planner::scene::Scene;
use planner::starters;
use proptest::prelude::*;
use serde_json::Value;

fn tables() -> Vec<Layout> {
    ["harbour-supper", "citrus-breakfast", "noodle-night"]
        .map(|name| {
            let path = format!(
                "{}/../static/starters/{name}.spread.json",
                env!("CARGO_MANIFEST_DIR")
            );
            open(&std::fs::read_to_string(path).expect("a starter")).expect("sound")
        })
        .into()
}

/// A layout without what is no change: identity, version, next numbers, locks,
/// and orders that mean nothing.
fn plain(layout: &Layout) -> Layout {
    let mut plain = layout.clone();
    let head = &mut plain.head;
    (head.next_id, head.next_number) = (1, 1);
    head.revision = Revision::default();
    plain.items.iter_mut().for_each(|o| o.locked = false);
    plain.linens.iter_mut().for_each(|o| o.locked = false);
    plain.linens.iter_mut().for_each(|o| o.over.sort());
    plain.crops.iter_mut().for_each(|o| o.must_show.sort());
    let states = plain.exposures.iter_mut().map(|o| &mut o.states);
    states.for_each(|all| all.sort_by_key(|s| s.item));
    plain.items.sort_by_key(|o| o.id);
    plain.groups.sort_by_key(|o| o.id);
    plain.seats.sort_by_key(|o| o.id);
    plain.hands.sort_by_key(|o| o.id);
    plain.crops.sort_by_key(|o| o.id);
    plain.cards.sort_by_key(|o| o.id);
    plain
}

/// Whatever differs is told, by sentences with nothing left open; and the other
/// way round as much is.
fn complete(before: &Layout, after: &Layout) -> Result<(), TestCaseError> {
    let told = changes(before, after);
    let (old, new) = (plain(before), plain(after));
    let edit = Edit::between(&old, &new);
    if edit.is_empty() && old.extra == new.extra {
        let order = |c: &planner::compare::Change| c.sentence.contains("the other way round");
        prop_assert!(told.iter().all(order), "nothing differs: {:?}", told);
    } else {
        prop_assert!(!told.is_empty(), "{:?} is not told", edit);
    }
    for key in edit.keys().filter(|key| !matches!(key, Key::Group(_))) {
        if let Some(id) = key.id() {
            let named = told.iter().any(|c| c.objects.contains(&id));
            // Of lists in another order not every member stands elsewhere.
            let ordered = matches!(key, Key::Person(_) | Key::Exposure(_) | Key::Linen(_));
            prop_assert!(named || ordered, "{:?} is not among {:?}", key, told);
        }
    }
    for change in &told {
        let open = change.sentence.contains(['{', '}']) || change.sentence.contains("compare-");
        prop_assert!(!open && !change.sentence.is_empty(), "{:?}", change);
    }
    let numbers: Vec<Option<u16>> = told.iter().map(|c| c.number).collect();
    let mut sorted = numbers.clone();
    sorted.sort_by_key(|n| n.unwrap_or(u16::MAX));
    prop_assert_eq!(numbers, sorted, "by number, then the rest");
    let back = changes(after, before);
    prop_assert_eq!(
        told.is_empty(),
        back.is_empty(),
        "told in one direction only"
    );
    Ok(())
}

/// Every leaf of a tree, as the steps that lead to it.
fn leaves(tree: &Value, path: &mut Vec<String>, out: &mut Vec<String>) {
    let mut each = |key: String, value: &Value, path: &mut Vec<String>| {
        path.push(key);
        leaves(value, path, out);
        path.pop();
    };
    match tree {
        Value::Object(map) => map.iter().for_each(|(k, v)| each(k.clone(), v, path)),
        Value::Array(list) => {
            let entries = list.iter().enumerate();
            entries.for_each(|(n, v)| each(n.to_string(), v, path));
        }
        _ => out.push(format!("/{}", path.join("/"))),
    }
}

/// What a leaf may be instead.
fn others(leaf: &Value) -> Vec<Value> {
    match leaf {
        Value::Bool(b) => vec![(!b).into()],
        Value::Number(n) => {
            let n = n.as_f64().unwrap_or(0.0);
            [1.0, -1.0, 14.0].map(|by| (n + by).into()).into()
        }
        Value::String(text) => [
            "left",
            "right",
            "up",
            "hero",
            "support",
            "accent",
            "filler",
            "satin",
            "gloss",
            "cut",
            "folded",
            "thrown",
            "mat",
            "cloth",
            "low-key",
            "in",
            "clean",
            "steam",
            "absent",
            "moved",
            "disc",
            "black",
            "aps-c",
            "tripod",
            "round",
            "pour",
            "rest",
            "bare",
            "web",
            "south",
            "#123456",
            "photo",
            "2026-09-01",
        ]
        .map(Value::from)
        .into_iter()
        .chain([format!("{text} new").into()])
        .collect(),
        _ => Vec::new(),
    }
}

#[test]
fn every_field_that_is_changed_is_told() {
    let mut tried = 0;
    for table in tables() {
        let tree: Value = serde_json::from_str(&table.to_json()).expect("JSON");
        let mut paths = Vec::new();
        leaves(&tree, &mut Vec::new(), &mut paths);
        // What comes later in a list has the same fields.
        let early = |path: &&String| {
            let mut steps = path
                .split('/')
                .filter_map(|step| step.parse::<usize>().ok());
            steps.all(|n| n < 4)
        };
        for path in paths.iter().filter(early) {
            // A name may be anything: a few of what opens will do.
            let mut opened = 0;
            for other in others(tree.pointer(path).expect("a leaf")) {
                let mut tree = tree.clone();
                *tree.pointer_mut(path).expect("a leaf") = other;
                let Ok(after) = open(&tree.to_string()) else {
                    continue;
                };
                opened += 1;
                tried += 1;
                if opened > 4 {
                    break;
                }
                complete(&table, &after).unwrap_or_else(|e| panic!("{path}: {e}"));
            }
        }
    }
    assert!(tried > 1_500, "only {tried} changes");
}

#[test]
fn every_field_that_is_added_is_told() {
    let fields = [
        ("/items/0", "hold_minutes", "40"),
        ("/items/0", "stand_in", r#""a clay pot""#),
        ("/items/0", "glaze", r#""salt""#),
        (
            "/items/0",
            "parts",
            r##"{"rim":{"colours":[{"srgb":"#102030","share":100}]}}"##,
        ),
        ("/linens/0", "weave", r#""twill""#),
        ("/linens/0", "over", "[1]"),
        ("/linens/0", "origin", r#""photo""#),
        ("/people/0", "ring", r#""left""#),
        ("/people/0", "nails", r##""#aa1122""##),
        ("/people/0", "stature", "1800"),
        ("/people/0", "handed", r#""left""#),
        ("/people/0", "released", "true"),
        ("/people/0", "agency", r#""none""#),
        ("/seats/0", "standing", "true"),
        ("/seats/0", "cushion", "true"),
        ("/hands/0", "holds", "3"),
        ("/hands/0", "glove", "true"),
        ("/exposures/0", "minutes", "9"),
        ("/exposures/0", "minutes", "3"),
        ("/exposures/0", "filter", "1"),
        ("/exposures/0", "states", r#"[{"item":3,"state":"absent"}]"#),
        (
            "/exposures/0",
            "states",
            r#"[{"item":3,"state":"moved","at":[9,9]}]"#,
        ),
        (
            "/crops/0",
            "copy",
            r#"{"area":[0,0,80,40],"wording":"Supper"}"#,
        ),
        ("/crops/0", "must_show", "[3]"),
        ("/crops/0", "gutter", "9"),
        ("/crops/0", "paper", r#""matt""#),
        ("/rig", "photographer", "[900,1400]"),
        ("/rig", "bag", r#"{"mass":5000}"#),
        ("/rig", "counterweight", r#"{"mass":3000,"behind":300}"#),
        ("/rig", "leg_bearing", "90"),
        ("/camera", "focus_height", "60"),
        ("/camera", "pixels", "[6000,4000]"),
        ("/camera", "lenses", "[35,50]"),
        ("/table/surface", "origin", r#""photo""#),
        ("/floor", "tiles", "true"),
        ("/light", "gel", r#""warm""#),
        ("", "note", r#""no parsley""#),
        ("", "client", r#""the magazine""#),
        ("", "dates", r#"{"on_sale":"2027-03-01"}"#),
        ("", "dates", r#"{"steps":{"food":5}}"#),
        ("", "intended", r#"[{"finding":"balance","figure":40}]"#),
        ("", "cards", r#"[{"id":900,"at":[1,1]}]"#),
        ("", "mood", r#""quiet""#),
    ];
    let table = starters::harbour_supper();
    let mut tree: Value = serde_json::from_str(&table.to_json()).expect("JSON");
    tree["next_id"] = 1_000.into();
    for (path, key, value) in fields {
        let mut tree = tree.clone();
        let at = tree.pointer_mut(path).expect("an object");
        at[key] = serde_json::from_str(value).expect("JSON");
        let after = open(&tree.to_string()).unwrap_or_else(|e| panic!("{path} {key}: {e:?}"));
        let told = changes(&table, &after);
        assert!(!told.is_empty(), "{path} {key} is not told");
        complete(&table, &after).unwrap_or_else(|e| panic!("{path} {key}: {e}"));
    }
}

/// One act of many kinds, chosen by numbers.
fn act(layout: &Layout, kind: u8, pick: u16, by: [i32; 2]) -> Result<Act, Refused> {
    fn one<T>(list: &[T], pick: u16, id: impl Fn(&T) -> Id) -> Id {
        let count = list.len().max(1);
        list.get(usize::from(pick) % count).map_or(Id(0), id)
    }
    let scene = || Scene::of(layout, None);
    let item = one(&layout.items, pick, |o| o.id);
    let next = one(&layout.items, pick.wrapping_add(3), |o| o.id);
    let linen = one(&layout.linens, pick, |o| o.id);
    let hand = one(&layout.hands, pick, |o| o.id);
    let crop = one(&layout.crops, pick, |o| o.id);
    let exposure = one(&layout.exposures, pick, |o| o.id);
    let seat = one(&layout.seats, pick, |o| o.id);
    let at = Point::new(800 + by[0], 500 + by[1]);
    let up = by[0] > 0;
    match kind {
        0..=9 => acts::move_by(layout, item, up, by),
        10..=12 => acts::turn_by(layout, item, by[0]),
        13 => acts::move_by(layout, linen, true, by),
        14 => acts::turn_by(layout, linen, by[0]),
        15 => acts::move_by(layout, hand, true, by),
        16 => acts::move_by(layout, crop, true, by),
        17 => acts::remove(layout, &[item]),
        18 => acts::remove(layout, &[item, next]),
        19 => acts::repeat(layout, item, up),
        20 => acts::add(layout, &scene(), "small-bowl", at, None),
        21 => acts::add(layout, &scene(), "mussels", at, Some(item)),
        22 => acts::swap(layout, &[item], "oval-platter", up),
        23 => acts::put_on(layout, &scene(), item, up.then_some(next)),
        24 => acts::set_role(layout, item, if up { Role::Hero } else { Role::Accent }),
        25 => acts::resize(layout, item, [100 + by[0].abs(), 100 + by[1].abs()]),
        26 => do_picked(layout, &[item, next], Deed::Group),
        27 => do_picked(layout, &[item, next], Deed::Apart),
        28 => do_picked(layout, &[item], if up { Deed::Lock } else { Deed::Unlock }),
        29 => acts::align(layout, &[item, next], acts::InLine::Level),
        30 => acts::lay_over(layout, linen, &[item]),
        31 => acts::lay_under(layout, linen, &[item]),
        32 => acts::strew(layout, "salt", &[at, at.moved(200, 30)], 3),
        33 => acts::set_surface(layout, if up { "walnut" } else { "slate" }),
        34 => acts::step_camera(layout, Dial::Focal, up),
        35 => acts::step_camera(layout, Dial::Height, up),
        36 => acts::set_format(layout, if up { Format::Medium } else { Format::ApsC }),
        37 => acts::add_card(layout, if up { CardKind::White } else { CardKind::Black }),
        38 => acts::add_crop(
            layout,
            "square",
            Ratio {
                width: 1,
                height: 1,
            },
        ),
        39 => acts::add_page(layout, "page", Page::A4),
        40 => acts::keep_copy_space(layout, crop),
        41 => acts::must_show(layout, crop, item),
        42 => acts::add_exposure(
            layout,
            if up {
                ExposureKind::Clean
            } else {
                ExposureKind::Steam
            },
        ),
        43 => acts::remove_exposure(layout, exposure),
        44 => acts::shift_exposure(layout, exposure, up),
        45 => acts::exposure_takes(layout, exposure, 1 + by[0].abs()),
        46 => acts::flip(layout, hand),
        47 => acts::do_else(layout, hand, if up { Action::Rest } else { Action::Cut }),
        48 => acts::hold(layout, hand, up.then_some(item)),
        49 => acts::give_hand(layout, hand, None),
        50 => acts::shoot_in(layout, hand, exposure),
        51 => acts::come_from(layout, hand, Turn::from_half_degrees(by[0])),
        52 => acts::stand_or_sit(layout, seat),
        53 => acts::place_stand(layout),
        54 => acts::place_photographer(layout),
        55 => acts::aim_light(layout, at.vec()),
        56 => acts::move_in(layout, exposure, item, by, 40),
        57 => acts::put_in(layout, exposure, item, &acts::How::Absent),
        58 => acts::put_in(layout, exposure, item, &acts::How::Look(Look::Eaten)),
        _ => {
            let wish = SettingsWish {
                setting: "camera".into(),
                places: 2,
                close: up,
            };
            acts::lay_places(layout, &wish)
        }
    }
}

proptest! {
    #[test]
    fn whatever_was_done_is_told(
        which in 0..3_usize,
        steps in prop::collection::vec(
            (0..60_u8, any::<u16>(), prop::array::uniform2(-300..300_i32)), 1..12
        ),
    ) {
        let tables = tables();
        let before = &tables[which % tables.len()];
        let mut layout = before.clone();
        for (kind, pick, by) in steps {
            let step = layout.clone();
            let Ok(done) = act(&layout, kind, pick, by) else {
                continue;
            };
            if done.edit.apply_checked(&mut layout).is_err() {
                continue;
            }
            complete(&step, &layout)?;
        }
        complete(before, &layout)?;
        prop_assert!(changes(&layout, &layout).is_empty(), "nothing differs");
        // A list turned round on both sides means nothing.
        let turned = |l: &Layout| {
            let mut l = l.clone();
            l.hands.reverse();
            l.seats.reverse();
            l.crops.reverse();
            l.cards.reverse();
            l.groups.reverse();
            l
        };
        let told = changes(before, &layout);
        prop_assert_eq!(&changes(&turned(before), &layout), &told, "of one list turned round");
        let all = |l: &Layout| {
            let mut l = turned(l);
            l.items.reverse();
            l
        };
        prop_assert_eq!(&changes(&all(before), &all(&layout)), &told, "of both turned round");
    }
}
