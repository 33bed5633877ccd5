//! A window, and what hides it.
use glam::{dvec2, dvec3};

use super::*;
use crate::layout::Id;
use crate::layout::LightShape;
use crate::shape::disc;

/// A window of 1 m by 1 m, its middle 2 m to the left and 1 m up.
fn window() -> Source {
    Source {
        centre: dvec3(-2000.0, 0.0, 1000.0),
        facing: DVec3::X,
        across: DVec3::Y * 500.0,
        up: DVec3::Z * 500.0,
        shape: LightShape::Window,
    }
}

fn share(place: DVec3, occluders: &[Occluder]) -> f64 {
    seen_share(&window(), place, occluders, &|_| false)
}

fn can(at: DVec2, height: f64) -> Occluder {
    let outline = disc(at, 100.0, 0.1);
    Occluder::new(Id(1), &outline, at, vec![[0.0, 1.0], [height, 1.0]]).expect("a can")
}

#[test]
fn a_wall_hides_the_window_and_half_a_wall_half_of_it() {
    let ends = [dvec2(-300.0, -9000.0), dvec2(-300.0, 9000.0)];
    let wall = |height| Occluder::sheet(Id(1), ends, 1.0, height).expect("a wall");
    assert_eq!(share(DVec3::ZERO, &[wall(5000.0)]), 0.0);
    assert_eq!(
        share(DVec3::ZERO, &[wall(70.0)]),
        1.0,
        "under the sill's ray"
    );
    let ends = [dvec2(-300.0, 0.0), dvec2(-300.0, 9000.0)];
    let half = Occluder::sheet(Id(1), ends, 1.0, 5000.0).expect("half a wall");
    assert!((share(DVec3::ZERO, &[half]) - 0.5).abs() < 1e-3);
}

#[test]
fn a_can_throws_its_shadow_away_from_the_window_and_not_towards_it() {
    let cans = [can(DVec2::ZERO, 150.0)];
    assert!(share(dvec3(110.0, 0.0, 0.0), &cans) < 0.2);
    assert_eq!(share(dvec3(-110.0, 0.0, 0.0), &cans), 1.0);
    assert_eq!(share(dvec3(0.0, 0.0, 150.0), &cans), 1.0, "on its own lid");
    assert_eq!(share(dvec3(0.0, 0.0, 20.0), &cans), 0.0, "inside it");
}

#[test]
fn two_things_in_one_line_hide_no_more_than_both_together() {
    let one = [can(dvec2(-150.0, 0.0), 200.0)];
    let both = [
        can(dvec2(-150.0, 0.0), 200.0),
        can(dvec2(-150.0, 0.0), 200.0),
    ];
    let place = dvec3(250.0, 60.0, 0.0);
    let open = share(place, &one);
    assert!(open > 0.05 && open < 0.95, "in the penumbra: {open}");
    assert_eq!(open, share(place, &both));
}

#[test]
fn the_blur_is_wider_along_the_shadow_than_across_it() {
    let cans = [can(DVec2::ZERO, 150.0)];
    // Across at a place under the can's middle height, along past its tip.
    let blur = |at: &dyn Fn(f64) -> DVec3| {
        let inside = |t: &f64| (0.1..0.9).contains(&share(at(*t), &cans));
        (0..400).map(|n| f64::from(n) * 2.0).filter(inside).count()
    };
    let across = blur(&|t| dvec3(200.0, t - 400.0, 0.0)) / 2;
    let along = blur(&|t| dvec3(100.0 + t, 0.0, 0.0));
    assert!(along > across, "{along} along, {across} across");
}

/// A bowl of straight walls 100 mm round, 80 high, looked out of.
#[test]
fn out_of_a_vessel_the_window_is_seen_over_its_near_wall() {
    let inside = [can(DVec2::ZERO, 80.0)];
    let share = |x: f64, z: f64| {
        let place = dvec3(x, 0.0, z);
        seen_share_within(&window(), place, &[], &|_| false, &mut inside.iter())
    };
    // The near wall hides what lies under 80/150 a metre: all of the window
    // from the foot of it, none of it from the far side.
    assert_eq!(share(-90.0, 0.0), 0.0, "at the foot of the near wall");
    assert_eq!(share(-60.0, 79.9), 1.0, "right under the mouth");
    let far = share(95.0, 0.0);
    // The wall's top is 195 mm off, 80 up: the window from 0.5 to 1.5 m at
    // 2.095 m is cut at 0.86 m.
    assert!((0.55..0.85).contains(&far), "on the far side: {far}");
    assert!(share(95.0, 40.0) > far, "less from higher up");
}

#[test]
fn behind_the_window_there_is_nothing_to_lose() {
    let place = dvec3(-2500.0, 0.0, 0.0);
    assert_eq!(share(place, &[can(dvec2(-2400.0, 0.0), 900.0)]), 1.0);
}

#[test]
fn what_stands_behind_the_window_does_not_hide_it() {
    assert_eq!(share(DVec3::ZERO, &[can(dvec2(-2500.0, 0.0), 3000.0)]), 1.0);
}
