//! The light past cards, things and arms on small tables.
use super::*;
use crate::layout::{LayoutId, open};

/// The empty board, its window at 9 o'clock, with what `more` adds.
fn lit(more: &str) -> Lit {
    let text = Layout::empty(LayoutId(1)).to_json();
    let mut file: serde_json::Value = serde_json::from_str(&text).expect("JSON");
    file["light"]["clock"] = 270.into();
    file["next_id"] = 9.into();
    let more: serde_json::Value = serde_json::from_str(more).expect("JSON");
    for (key, value) in more.as_object().expect("an object") {
        file[key] = value.clone();
    }
    Lit::of(&open(&file.to_string()).unwrap_or_else(|p| panic!("{p:?}")))
}

fn card(kind: &str, x: i32) -> Lit {
    lit(&format!(
        r#"{{"cards":[{{"id":1,"kind":"{kind}","at":[{x},450],"turn":270,"width":700,"height":500}}]}}"#
    ))
}

const FAR: DVec3 = dvec3(1000.0, 450.0, 0.0);

#[test]
fn a_white_card_on_the_far_side_lifts_it_and_a_black_one_does_not() {
    let bare = lit("{}").open(FAR);
    assert!(card("white", 1250).open(FAR) > bare * 1.05);
    assert_eq!(card("black", 1250).open(FAR), bare);
}

#[test]
fn a_card_towards_the_window_shades_whichever_it_is() {
    let bare = lit("{}").open(FAR);
    assert!(card("black", 700).open(FAR) < bare * 0.5);
}

#[test]
fn a_pot_shades_what_lies_behind_it_but_not_its_own_lid() {
    let pot = r#"{"items":[{"id":1,"prop":"enamel-pot","at":[700,450],"height":200,
        "size":{"shape":"disc","diameter":300}}]}"#;
    let lit = lit(pot);
    assert!(lit.share(dvec3(860.0, 450.0, 0.0), Id(0)) < 0.3);
    assert_eq!(lit.share(dvec3(700.0, 450.0, 200.0), Id(1)), 1.0);
    assert_eq!(lit.share(dvec3(460.0, 450.0, 0.0), Id(0)), 1.0);
}

#[test]
fn the_walls_of_a_pot_shade_what_lies_in_it_and_a_lower_sill_more() {
    let pot = r#""items":[{"id":1,"prop":"enamel-pot","at":[700,450],"height":130,
        "size":{"shape":"disc","diameter":300,"rim":14}}]"#;
    let at = |x: f64, z: f64, more: &str| {
        let lit = lit(&format!("{{{pot}{more}}}"));
        let place = dvec3(x, 450.0, z);
        let share = lit.share(place, Id(1));
        assert_eq!(share, lit.share_of_mouth(place, Id(1)), "nothing else");
        assert_eq!(lit.upon(place, Id(1), &[Id(1)]), lit.on(place, Id(1)));
        share
    };
    // The window is at the left: the left wall shades what lies under it.
    assert!(at(580.0, 20.0, "") < 0.05, "under the near wall");
    assert!(
        at(820.0, 20.0, "") > at(700.0, 20.0, ""),
        "less farther off"
    );
    assert_eq!(at(700.0, 130.0, ""), 1.0, "level with the rim");
    let low = r#","light":{"clock":270,"height_above_table":600}"#;
    assert!(at(700.0, 60.0, low) < at(700.0, 60.0, ""), "a lower light");
}

#[test]
fn clear_glass_lets_the_light_through() {
    let glass = r#"{"items":[{"id":1,"prop":"tumbler","at":[700,450],"height":90,"finish":"clear",
        "size":{"shape":"disc","diameter":80}}]}"#;
    assert_eq!(lit(glass).share(dvec3(760.0, 450.0, 0.0), Id(0)), 1.0);
}

#[test]
fn an_arm_shades_in_its_own_exposure_only() {
    let arm = r#"{"people":[{"id":1}],"exposures":[{"id":2},{"id":3}],"hands":[
        {"id":4,"person":1,"exposure":2,"entry":[600,800],"target":[600,400],"height":150}]}"#;
    let lit = lit(arm);
    // 1.8 m from the window, an arm 15 cm up throws its shadow 26 cm.
    let past = |exposure| {
        let along = (750..1000).step_by(10).map(f64::from);
        let shares = along.map(|x| lit.share_past_arms(dvec3(x, 600.0, 0.0), Id(exposure)));
        shares.fold(1.0, f64::min)
    };
    assert!(past(2) < 0.9, "{}", past(2));
    assert_eq!(past(3), 1.0);
}
