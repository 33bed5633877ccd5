use super::*;
use crate::layout::open;
use crate::scene::silhouette;
use crate::shape::{Region, intersection};

/// Tables tried at random.
const TRIES: usize = 150;

fn wish(dishes: &[&str], people: usize) -> Wish {
    Wish {
        id: "00000000000000aa".into(),
        width: 1600,
        depth: 950,
        shape: TableShape::Rect,
        board: "charcoal-planks".into(),
        ratio: [3, 2],
        people,
        dishes: dishes.iter().map(|d| (*d).to_string()).collect(),
    }
}

#[test]
fn every_dish_is_made_of_the_catalogue() {
    for dish in &DISHES {
        for prop in dish.props {
            assert!(catalogue::prop(prop).is_some(), "{}: {prop}", dish.key);
        }
    }
}

#[test]
fn a_laid_table_is_a_layout_that_opens() {
    let layout = lay(&wish(&["mussels", "loaf", "olives"], 4)).expect("laid");
    let again = open(&layout.to_json()).expect("its file opens");
    assert_eq!(again, layout, "nothing is lost");
    let heroes = layout.items.iter().filter(|i| i.role == Role::Hero).count();
    assert_eq!(heroes, 1, "the first dish is the hero");
}

#[test]
fn the_hero_is_number_one_and_the_settings_come_last() {
    let layout = lay(&wish(&["mussels", "loaf", "olives"], 4)).expect("laid");
    let of = |role: Role| {
        layout
            .items
            .iter()
            .find(|i| i.role == role && i.on.is_none())
    };
    assert_eq!(of(Role::Hero).map(|i| i.number), Some(1), "the hero");
    assert_eq!(
        of(Role::Support).map(|i| i.number),
        Some(2),
        "the next dish"
    );
    let plate = layout.items.iter().find(|i| i.prop == "small-plate");
    assert_eq!(plate.map(|i| i.number), Some(4), "after three dishes");
    assert_eq!(layout.head.next_number, 5, "and none is left out");
}

#[test]
fn the_lens_stands_under_the_ceiling() {
    let layout = lay(&wish(&["mussels"], 0)).expect("laid");
    let sensor = Sensor::of(layout.camera.format).width;
    let width = f64::from(layout.frame.width);
    let far = distance_for_width(sensor, f64::from(layout.camera.focal), width);
    let top = far.expect("a lens") + f64::from(layout.table.height);
    assert!(top < f64::from(layout.rig.ceiling), "{top} mm");
}

#[test]
fn what_nobody_knows_is_refused() {
    assert!(lay(&wish(&["stone soup"], 0)).is_err(), "no such dish");
    let mut odd = wish(&[], 0);
    odd.board = "ice".into();
    assert!(lay(&odd).is_err(), "no such board");
    odd.id = "not hex".into();
    assert!(lay(&odd).is_err(), "no such identity");
}

/// What shows a fault of a laid table, in silhouettes as they are drawn.
struct Faults {
    /// Area of all that stands on the table, as a share of the frame.
    full: f64,
    overlaps: Vec<(String, String, f64)>,
    outside: Vec<String>,
}

fn faults(layout: &Layout) -> Faults {
    let lowest: Vec<&Item> = layout.items.iter().filter(|i| i.on.is_none()).collect();
    let regions: Vec<Region> = lowest
        .iter()
        .map(|i| Region::from_polygon(&silhouette(i)).expect("an outline"))
        .collect();
    let [width, height] = [f64::from(layout.frame.width), layout.frame.height()];
    let area: f64 = regions.iter().map(Region::area).sum();
    let half = DVec2::new(width, height) * 0.5;
    let (low, high) = (layout.frame.at.vec() - half, layout.frame.at.vec() + half);
    let mut out = Faults {
        full: area / (width * height),
        overlaps: Vec::new(),
        outside: Vec::new(),
    };
    for (n, a) in regions.iter().enumerate() {
        let bounds = a.bounds().expect("an outline");
        if (bounds.min - low).min_element() < 0.0 || (high - bounds.max).min_element() < 0.0 {
            out.outside.push(lowest[n].name.clone());
        }
        for (m, b) in regions.iter().enumerate().skip(n + 1) {
            let shared = intersection(a, b).expect("sound").area();
            if shared > 0.0 {
                let names = [n, m].map(|k| lowest[k].name.clone());
                let [a, b] = names;
                out.overlaps.push((a, b, shared));
            }
        }
    }
    out
}

#[test]
fn five_dishes_and_four_settings_stand_clear_in_the_frame() {
    let dishes = ["mussels", "aubergine", "loaf", "tomato-salad", "olives"];
    for people in 0..=4 {
        let layout = lay(&wish(&dishes, people)).expect("laid");
        let faults = faults(&layout);
        assert!(
            faults.overlaps.is_empty(),
            "{people}: {:?}",
            faults.overlaps
        );
        assert!(faults.outside.is_empty(), "{people}: {:?}", faults.outside);
    }
}

/// Whatever is wished for from 60 to 300 cm: where less than this share of the
/// frame is taken there is room for all of it.
const ROOMY: f64 = 0.45;

#[test]
fn where_there_is_room_nothing_overlaps_and_nothing_leaves_the_frame() {
    let mut state = 11_u32;
    let mut roll = |sides: u32| {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        (state >> 16) % sides
    };
    let (mut roomy, mut bad) = (0, Vec::new());
    for _ in 0..TRIES {
        let mut wish = wish(&[], 1 + roll(8) as usize);
        wish.width = 600 + 10 * roll(241) as i32;
        wish.depth = 600 + 10 * roll(241) as i32;
        wish.ratio = [[3, 2], [2, 3], [4, 5], [1, 1], [16, 9]][roll(5) as usize];
        if roll(3) == 0 {
            wish.shape = TableShape::Round;
        }
        let mut left: Vec<&Dish> = DISHES.iter().collect();
        for _ in 0..=roll(9) {
            let n = roll(left.len() as u32) as usize;
            wish.dishes.push(left.swap_remove(n).key.into());
        }
        let layout = lay(&wish).expect("laid");
        let faults = faults(&layout);
        if faults.full < ROOMY {
            roomy += 1;
            if !faults.overlaps.is_empty() || !faults.outside.is_empty() {
                bad.push(format!(
                    "{:?} {}×{} {:?}, {} people, {:?}: {:.2} full, {:?}, outside {:?}",
                    wish.shape,
                    wish.width,
                    wish.depth,
                    wish.ratio,
                    wish.people,
                    wish.dishes,
                    faults.full,
                    faults.overlaps,
                    faults.outside
                ));
            }
        }
    }
    assert!(roomy * 3 > TRIES, "enough of them have room: {roomy}");
    assert!(
        bad.is_empty(),
        "{} of {roomy}:\n{}",
        bad.len(),
        bad.join("\n")
    );
}
