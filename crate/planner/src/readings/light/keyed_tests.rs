//! Arms and bodies between the light and a dish.
use crate::layout::{Layout, Turn, open};
use crate::readings::Finding;
use crate::readings::samples::{after, disc, laid, read};

/// Someone at the left edge reaches past a dish, the window at this hour.
fn reaching(hour: i32, seat: [i32; 2], target: [i32; 2]) -> Layout {
    let dish = disc(1, 500, 450, 260, "hero");
    let [x, y] = seat;
    let [tx, ty] = target;
    let mut layout = laid(&format!(
        r#""items":[{dish}],"seats":[{{"id":2,"at":[{x},{y}]}}],"people":[{{"id":3,"seat":2}}],
        "exposures":[{{"id":4}}],
        "hands":[{{"id":5,"person":3,"exposure":4,"entry":[0,0],"target":[{tx},{ty}],"height":180}}]"#
    ));
    layout.light.clock = Turn::from_half_degrees(hour * 60);
    layout
}

fn keyed(layout: &Layout) -> Option<Finding> {
    read(layout)
        .into_iter()
        .find(|f| f.key.starts_with("light:key"))
}

#[test]
fn an_arm_between_a_dish_and_the_light_is_said() {
    // The same arm with the window behind it, and on the far side.
    let with = keyed(&reaching(9, [0, 450], [470, 450])).expect("body and arm are in its way");
    assert!(with.figure >= 1.0 / 3.0, "{}", with.sentence);
    assert!(with.sentence.contains("dish 1"), "{}", with.sentence);
    assert!(
        keyed(&reaching(3, [0, 450], [200, 450])).is_none(),
        "light from beyond"
    );
    let mut alone = reaching(9, [0, 450], [470, 450]);
    alone.hands.clear();
    assert!(keyed(&alone).is_none(), "nobody");
}

#[test]
fn a_body_takes_light_that_its_arm_does_not() {
    use crate::scene::Lit;
    let layout = reaching(9, [0, 450], [200, 450]);
    let lit = Lit::of(&layout);
    let exposure = layout.exposures[0].id;
    let beyond = glam::DVec3::new(500.0, 450.0, 0.0);
    let (arm, people) = (
        lit.share_past_arms(beyond, exposure),
        lit.share_past_people(beyond, exposure),
    );
    assert!(people < arm, "{people} past both, {arm} past the arm");
    assert!(people > 0.0, "the window is wider than a body");
    let mut stranger = layout.clone();
    stranger.people[0].seat = None;
    let bare = Lit::of(&stranger);
    let past = bare.share_past_people(beyond, exposure);
    assert_eq!(
        past,
        bare.share_past_arms(beyond, exposure),
        "no place, no body"
    );
}

#[test]
fn another_place_or_hour_takes_the_arm_out_of_the_key() {
    let mut found = None;
    for height in [300, 400, 500, 700] {
        let mut layout = reaching(9, [0, 450], [500, 450]);
        layout.light.height_above_table = height;
        layout.light.width = 500;
        found = keyed(&layout)
            .filter(Finding::is_pressing)
            .map(|f| (layout, f));
        if found.is_some() {
            break;
        }
    }
    let (layout, f) = found.expect("a low, narrow window behind them");
    let remedy = f.remedy.as_ref().expect("a way out");
    let then = keyed(&after(&layout, &f)).map_or(0.0, |f| f.figure);
    // Below a third of a stop nothing is told.
    assert!(
        (then - remedy.after).abs() < 1e-9 || remedy.after < 1.0 / 3.0,
        "{then}"
    );
    assert!(remedy.after < 1.0, "{}", remedy.predicted);
    assert_eq!(open(&layout.to_json()).expect("opens"), layout);
}
