use super::*;
use crate::layout::open;

fn supper() -> Layout {
    let file = include_str!("../../../../../static/starters/harbour-supper.spread.json");
    open(file).expect("a sound file")
}

/// A photo 6000 px wide of the frame as planned but for this turn, scale and
/// shift: where it shows a place at a height.
fn photo(layout: &Layout, turn: f64, scale: f64, shift: DVec2) -> impl Fn(DVec2, f64) -> DVec2 {
    let (view, frame) = (View::of(layout), layout.frame.clone());
    let per = 6000.0 / f64::from(frame.width) * scale;
    let middle = DVec2::new(3000.0, 2000.0);
    move |at, z| {
        let off = view.project(at, z) - frame.at.vec();
        let (sin, cos) = libm::sincos(turn.to_radians());
        middle + shift + DVec2::new(cos, sin).rotate(off) * per
    }
}

fn told(layout: &Layout, count: usize, seen: &impl Fn(DVec2, f64) -> DVec2) -> Vec<(Id, DVec2)> {
    let all = tellable(layout).into_iter().take(count).map(|t| {
        let item = layout.items.iter().find(|i| i.id == t.id).expect("there");
        (t.id, seen(item.at.vec(), rise(layout, item).top))
    });
    all.collect()
}

#[test]
fn what_stands_elsewhere_is_measured_by_two_to_four_that_do_not() {
    let layout = supper();
    let seen = photo(&layout, 3.0, 0.97, DVec2::new(40.0, -25.0));
    for count in 2..=4 {
        let marks = told(&layout, count, &seen);
        let aligned = Aligned::fitted(&layout, &marks).expect("enough");
        for other in tellable(&layout).iter().skip(4) {
            let item = layout.items.iter().find(|i| i.id == other.id);
            let item = item.expect("there");
            let by = DVec2::new(23.0, -11.0);
            let spot = seen(item.at.vec() + by, rise(&layout, item).top);
            let drift = aligned.drift(&layout, item.id, spot).expect("seen");
            let off = (drift.far - by.length()).abs();
            assert!(off < 1e-6, "{count} marks, {}: {}", other.name, drift.far);
            let stays = seen(item.at.vec(), rise(&layout, item).top);
            let drift = aligned.drift(&layout, item.id, stays).expect("seen");
            assert!(drift.far < 1e-6, "{}: {}", other.name, drift.far);
            assert!(drift.sentence.contains("place"), "{}", drift.sentence);
        }
    }
}

#[test]
fn the_frame_is_off_by_what_the_camera_was_moved_whichever_way_up_it_hangs() {
    let layout = supper();
    for (turn, shift) in [(0.0, 60.0), (180.0, 60.0), (0.0, 0.0)] {
        let seen = photo(&layout, turn, 1.0, DVec2::new(shift, 0.0));
        let marks = told(&layout, 4, &seen);
        let aligned = Aligned::fitted(&layout, &marks).expect("four");
        let size = DVec2::new(6000.0, 4000.0);
        let off = aligned.frame(&layout, size).expect("a frame");
        let own = f64::from(Lens::of(&layout.camera).pixels[0]) / 6000.0;
        assert!((off.pixels - shift * own).abs() < 1e-6, "{turn}: {off:?}");
        let mm = shift * f64::from(layout.frame.width) / 6000.0;
        assert!((off.on_table - mm).abs() < 1e-6, "{turn}: {off:?}");
    }
}

#[test]
fn one_mark_or_all_in_one_place_say_nothing() {
    let layout = supper();
    let seen = photo(&layout, 0.0, 1.0, DVec2::ZERO);
    let marks = told(&layout, 3, &seen);
    let fault = |marks: &[(Id, DVec2)]| Aligned::fitted(&layout, marks).expect_err("no plane");
    assert_eq!(fault(&marks[..1]), MarksFault::Count);
    let one: Vec<(Id, DVec2)> = marks.iter().map(|m| (m.0, marks[0].1)).collect();
    assert_eq!(fault(&one), MarksFault::Line);
    assert_eq!(
        fault(&[(Id(60_000), DVec2::ZERO)]),
        MarksFault::Count,
        "gone"
    );
}

/// A square of two soft spots on a slope, which no other place looks like.
fn spots(side: usize, shift: DVec2, gain: f64) -> Vec<u8> {
    let spot = |x: f64, y: f64, wide: f64| libm::exp(-(x * x + y * y) / wide);
    let at = |x: f64, y: f64| {
        60.0 + 0.5 * x + 120.0 * spot(x - 4.0, y + 3.0, 60.0) + 90.0 * spot(x + 7.0, y - 6.0, 40.0)
    };
    (0..side * side)
        .flat_map(|n| {
            let place = DVec2::new((n % side) as f64, (n / side) as f64);
            let place = place - DVec2::splat((side - 1) as f64 * 0.5) - shift;
            let tone = (at(place.x, place.y) * gain).clamp(0.0, 255.0) as u8;
            [tone, tone, tone, 255]
        })
        .collect()
}

#[test]
fn a_patch_is_found_again_to_a_part_of_a_pixel_and_its_light_is_told() {
    let shift = DVec2::new(3.4, -5.7);
    let small = spots(33, DVec2::ZERO, 1.0);
    let found = find_again(&small, 33, &spots(81, shift, 1.0), 81).expect("found");
    assert!(found.by.distance(shift) < 0.2, "{:?}", found.by);
    assert!(found.stops.abs() < 0.02, "{}", found.stops);
    let darker = find_again(&small, 33, &spots(81, shift, 0.8), 81).expect("found");
    // IEC 61966-2-1: light of a tone over its curved part.
    let light = |rgba: &[u8]| {
        let tones = rgba.chunks(4).map(|p| f64::from(p[0]) / 255.0);
        tones
            .map(|t| libm::pow((t + 0.055) / 1.055, 2.4))
            .sum::<f64>()
    };
    let told = libm::log2(light(&spots(33, DVec2::ZERO, 0.8)) / light(&small));
    assert!((darker.stops - told).abs() < 0.05, "{}", darker.stops);
    let plain = vec![120; 33 * 33 * 4];
    assert_eq!(
        find_again(&plain, 33, &spots(81, shift, 1.0), 81),
        None,
        "plain"
    );
    let far = spots(81, DVec2::new(24.0, 0.0), 1.0);
    assert_eq!(find_again(&small, 33, &far[..40], 81), None, "not whole");
}

#[test]
fn a_camera_that_moved_is_told_and_one_that_stands_still_is_not() {
    let layout = supper();
    let size = DVec2::new(2048.0, 1365.0);
    let places = [[300.0, 200.0], [1700.0, 260.0], [900.0, 1200.0]].map(DVec2::from);
    let moved = |by: DVec2| places.map(|p| [p, p + by]);
    let still = bumped(&layout, size, &moved(DVec2::new(0.2, 0.1)), &[0.02; 3]);
    let still = still.expect("three marks");
    assert!(!still.moved, "{still:?}");
    let bump = bumped(&layout, size, &moved(DVec2::new(4.0, 0.0)), &[-0.3; 3]);
    let bump = bump.expect("three marks");
    let own = f64::from(Lens::of(&layout.camera).pixels[0]) / 2048.0;
    assert!(
        bump.moved && (bump.pixels - 4.0 * own).abs() < 1e-6,
        "{bump:?}"
    );
    assert!(bump.light.contains("0.3"), "{}", bump.light);
}
