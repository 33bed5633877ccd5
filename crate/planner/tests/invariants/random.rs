//! Random tables and random acts on them.
use planner::catalogue;
use planner::commands::{
    self, Act, Deed, HandsWish, InLine, Own, OwnShape, Refused, SettingsWish, TableWish,
};
use planner::edit::{History, Run};
use planner::layout::{
    Action, Extra, Group, Id, Layout, Point, Ratio, RigKind, Srgb, TableShape, Turn,
};
use planner::readings::{Study, report};
use planner::scene::Scene;
use planner::starters::harbour_supper;
use proptest::prelude::*;

/// One act: which kind, on which thing, and two numbers for the rest.
pub(crate) type Step = (u8, u16, i32, i32);

const DISHES: [&str; 12] = [
    "mussels",
    "aubergine",
    "loaf",
    "tomato-salad",
    "leaf-salad",
    "fish",
    "potatoes",
    "soup",
    "noodles",
    "rice",
    "olives",
    "cheese",
];

/// A table as the planner lays it: up to `dishes` dishes, up to `people` settings.
pub(crate) fn laid(people: usize, dishes: usize) -> impl Strategy<Value = Layout> {
    let boards: Vec<&str> = catalogue::surfaces().iter().map(|s| s.id).collect();
    let dishes = prop::sample::subsequence(DISHES.to_vec(), 1..=dishes);
    (
        prop::sample::select(boards),
        0..=people,
        dishes.prop_shuffle(),
    )
        .prop_map(|(board, people, dishes)| {
            let wish = TableWish {
                id: "00000000000000aa".into(),
                width: 1_700,
                depth: 1_000,
                shape: TableShape::Rect,
                board: board.into(),
                ratio: [3, 2],
                people,
                dishes: dishes.into_iter().map(Into::into).collect(),
            };
            commands::lay(&wish).expect("the planner's own dishes")
        })
}

/// The demonstration table, or one laid at random.
pub(crate) fn tables() -> impl Strategy<Value = Layout> {
    prop_oneof![1 => Just(harbour_supper()), 3 => laid(3, 4)]
}

pub(crate) fn steps(most: usize) -> impl Strategy<Value = Vec<Step>> {
    prop::collection::vec(
        (any::<u8>(), any::<u16>(), -700_i32..700, -700_i32..700),
        0..most,
    )
}

/// Everything that can be chosen.
fn things(layout: &Layout) -> Vec<Id> {
    let items = layout.items.iter().map(|o| o.id);
    let linens = layout.linens.iter().map(|o| o.id);
    let hands = layout.hands.iter().map(|o| o.id);
    let crops = layout.crops.iter().map(|o| o.id);
    items.chain(linens).chain(hands).chain(crops).collect()
}

/// What one step asks for; nothing where it asks for nothing.
fn asked(layout: &Layout, (kind, which, x, y): Step) -> Option<Result<Act, Refused>> {
    let things = things(layout);
    let id = *things.get(usize::from(which) % things.len().max(1))?;
    let other = things[(usize::from(which) / 7) % things.len()];
    let at = Point::new(850 + x, 500 + y);
    Some(match kind % 29 {
        0..=3 => commands::move_by(layout, id, x % 2 == 0, [x, y]),
        4 | 5 => commands::turn_by(layout, id, x),
        6 => commands::remove(layout, &[id]),
        7 => commands::repeat(layout, id, y % 2 == 0),
        8 | 9 => {
            let known: Vec<&str> = catalogue::props()
                .iter()
                .chain(catalogue::foods())
                .map(|entry| entry.id)
                .collect();
            let prop = known[usize::from(which) % known.len()];
            commands::add(layout, &Scene::of(layout, None), prop, at, Some(other))
        }
        19 => {
            let on = (y % 3 != 0).then_some(other);
            commands::put_on(layout, &Scene::of(layout, None), id, on)
        }
        20 => commands::repeat_along(
            layout,
            &[id, other],
            usize::from(which) % 4,
            y,
            Turn::from_half_degrees(x),
        ),
        21 => commands::repeat_round(layout, &[id], at, usize::from(which) % 6, 2 * x),
        22 => {
            let third = things[(usize::from(which) / 3) % things.len()];
            let ids = [id, other, third];
            match which % 4 {
                0 => commands::equal_gaps(layout, &ids),
                1 => commands::align(layout, &ids, InLine::Level),
                2 => commands::align(layout, &ids, InLine::Upright),
                _ => commands::align(layout, &ids, InLine::Runner),
            }
        }
        23 => {
            let path = [at, Point::new(x, y), Point::new(850 - y, 500 + x)];
            commands::strew(layout, "crumbs", &path[..usize::from(which) % 4], x % 12)
        }
        24 => {
            let known = catalogue::props();
            let prop = known[usize::from(which) % known.len()].id;
            commands::swap(layout, &[id], prop, y % 2 == 0)
        }
        25 => match layout.linens.first() {
            Some(linen) if x % 3 == 0 => commands::lay_under(layout, linen.id, &[]),
            Some(linen) => commands::lay_over(layout, linen.id, &[id, other]),
            None => return None,
        },
        26..=28 => {
            let path = [
                at,
                Point::new(x, y),
                Point::new(850 - y, 500 + x),
                Point::new(y, -x),
            ];
            let path = path.map(|p| p.vec());
            let scene = Scene::of(layout, None);
            let picked = commands::pick_within(layout, &scene, &path, &[id]);
            let picked = commands::toggle(layout, &picked, other);
            let deeds = [
                Deed::Lock,
                Deed::Group,
                Deed::Apart,
                Deed::Repeat,
                Deed::Remove,
            ];
            match kind % 29 {
                26 => commands::move_picked(layout, &picked, [x, y]),
                27 => commands::turn_picked(layout, &picked, x),
                _ => commands::do_picked(layout, &picked, deeds[usize::from(which) % deeds.len()]),
            }
        }
        18 => {
            let kinds = &planner::seats::SETTINGS;
            commands::lay_places(
                layout,
                &SettingsWish {
                    setting: kinds[usize::from(which) % kinds.len()].id.into(),
                    places: 1 + usize::from(which) % 4,
                    close: x % 2 == 0,
                },
            )
        }
        16 => commands::add_crop(
            layout,
            "own crop",
            Ratio {
                width: 1 + which % 9,
                height: 1 + u16::from(kind) % 7,
            },
        ),
        17 => match layout.crops.first() {
            Some(crop) => commands::keep_copy_space(layout, crop.id),
            None => commands::add_page(layout, "double page", commands::Page::Double),
        },
        10 => commands::add_own(
            layout,
            &Own {
                name: "own dish",
                shape: own_shape(usize::from(which), x, y),
                across: x,
                down: y,
                dish: Srgb([x as u8, y as u8, 90]),
                food: (kind % 2 == 0).then_some(Srgb([y as u8, 120, x as u8])),
                at,
            },
        ),
        11 => commands::add_hands(
            layout,
            &HandsWish {
                action: Action::ALL[usize::from(which) % Action::ALL.len()],
                hands: 1 + kind % 2,
                at: id,
            },
        ),
        12 | 13 => {
            let mut after = layout.clone();
            let group = Id(after.head.next_id);
            after.head.next_id += 1;
            after.groups.push(Group {
                id: group,
                name: String::new(),
                extra: Extra::new(),
            });
            let both = after
                .items
                .iter_mut()
                .filter(|o| o.id == id || o.id == other);
            both.for_each(|o| o.group = Some(group));
            Act::between("put together".into(), layout, &after)
        }
        14 => {
            let findings = report(&Study::new(layout), true).findings;
            let mut remedies = findings.into_iter().filter_map(|f| f.remedy);
            let remedy = remedies.nth(usize::from(which) % 3)?;
            Act::of(remedy.act, layout, remedy.edit)
        }
        _ => {
            let mut after = layout.clone();
            after.light.clock = after.light.clock.plus(x);
            after.frame.width = 900 + y.abs();
            let kinds = [
                RigKind::Arm,
                RigKind::TwoStands,
                RigKind::Tripod,
                RigKind::Ceiling,
            ];
            after.rig.kind = kinds[usize::from(kind / 29) % kinds.len()];
            after.rig.at = (x % 5 != 0).then_some(at);
            after.rig.photographer = Some(Point::new(y, x));
            after.rig.load_mass = i32::from(which % 2_500) * 40;
            Act::between("light, frame and rig".into(), layout, &after)
        }
    })
}

/// Does one step; says whether anything changed.
pub(crate) fn act(history: &mut History, step: Step) -> bool {
    let Some(Ok(act)) = asked(history.layout(), step) else {
        return false;
    };
    let done = history.make(&act.name, act.edit, Run::Alone);
    matches!(done, Ok(Some(_)))
}

/// A dish of one of the sold outlines, or a hooked thing as traced.
fn own_shape(which: usize, x: i32, y: i32) -> OwnShape {
    let (wide, deep) = (20 + x.rem_euclid(200), 20 + y.rem_euclid(120));
    let hook = [
        (-wide, -deep),
        (0, -deep / 2),
        (wide, -deep),
        (wide / 2, deep),
        (-wide, deep / 3),
    ];
    let words = ["round", "oval", "rect", "dish", "board", "other"];
    let points = hook.map(|(x, y)| Point::new(x, y)).to_vec();
    OwnShape::of(words[which % 6], points).expect("sound")
}
