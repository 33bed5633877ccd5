//! Tables nobody would set: each is answered by a finding, in figures that are
//! there, and each can be drawn.
use planner::drawing::{Shown, see_through, sheet, side_file};
use planner::layout::{Layout, open};
use planner::optics::View;
use planner::readings::{Finding, State, Study, report};

/// A sound table but for what `change` makes of it.
fn table(change: impl FnOnce(&mut serde_json::Value)) -> Layout {
    open(&file(change)).unwrap_or_else(|problems| panic!("{problems:?}"))
}

fn file(change: impl FnOnce(&mut serde_json::Value)) -> String {
    let mut file = serde_json::json!({
        "format": "overspread-layout", "version": 0, "id": "00000000000000aa", "next_id": 90,
        "table": {"width": 1500, "depth": 1000},
        "frame": {"ratio": [3, 2], "at": [750, 500], "width": 1050},
        "camera": {"focal": 50},
        "rig": {"ceiling": 2600, "at": [750, 1300]},
        "items": [
            {"id": 1, "name": "hero", "at": [700, 480], "height": 60, "role": "hero",
             "size": {"shape": "disc", "diameter": 240, "rim": 10}},
            {"id": 2, "name": "soup", "at": [950, 480], "height": 60, "role": "support",
             "finish": "liquid", "size": {"shape": "disc", "diameter": 180}},
            {"id": 3, "name": "post", "at": [450, 400], "height": 200, "role": "support",
             "size": {"shape": "rect", "width": 60, "depth": 60}}],
        "crops": [{"id": 9, "name": "page", "print": [420, 297], "at": [750, 500], "width": 800,
             "bleed": 3, "safe": 8, "gutter": 10,
             "copy": {"area": [200, 100, 200, 100], "wording": "Supper"}}],
        "people": [{"id": 20}], "exposures": [{"id": 21}],
        "hands": [{"id": 30, "person": 20, "exposure": 21, "entry": [750, 900], "target": [700, 520]}]
    });
    change(&mut file);
    file.to_string()
}

fn finite(layout: &Layout, what: &str) -> Vec<Finding> {
    let whole = report(&Study::new(layout), true).findings;
    let cut = layout.crops.first().map(|crop| {
        let study = Study::new(layout).viewing(crop.id);
        report(&study, true).findings
    });
    for f in whole.iter().chain(cut.iter().flatten()) {
        let after = f.remedy.as_ref().map_or(0.0, |r| r.after);
        let sound = f.figure.is_finite() && after.is_finite();
        assert!(sound, "{what}: {}: {} to {after}", f.key, f.figure);
        let told = [&f.sentence].into_iter().chain(&f.working);
        for text in told.chain(f.remedy.iter().flat_map(|r| [&r.act, &r.predicted])) {
            assert!(
                !text.contains("NaN") && !text.contains("inf "),
                "{what}: {text}"
            );
        }
    }
    let plan = see_through(layout, Shown::All).map(|plan| plan.svg);
    let eyes = [View::Above, View::of(layout)];
    let sheets = eyes.map(|eye| sheet(layout, Shown::All, eye));
    for svg in plan.into_iter().chain(sheets).chain(side_file(layout)) {
        assert!(
            !svg.contains("NaN") && !svg.contains("inf"),
            "{what}: a drawing"
        );
    }
    whole
}

fn wont_work(found: &[Finding], key: &str) {
    let f = found.iter().find(|f| f.key == key);
    let f = f.unwrap_or_else(|| panic!("nothing is said of {key}"));
    assert_eq!(f.state, State::WontWork, "{key}: {}", f.sentence);
}

#[test]
fn the_table_itself_is_sound() {
    let found = finite(&table(|_| {}), "sound");
    let stops = |f: &Finding| f.state == State::WontWork && !f.key.starts_with("rig");
    let keys: Vec<&String> = found.iter().filter(|f| stops(f)).map(|f| &f.key).collect();
    assert!(keys.is_empty(), "{keys:?}");
}

#[test]
fn a_crop_larger_than_the_frame() {
    for (width, at) in [(1_500, 750), (4_999, 750), (20, 9_000)] {
        let layout = table(|file| {
            file["crops"][0]["width"] = width.into();
            file["crops"][0]["at"][0] = at.into();
        });
        wont_work(&finite(&layout, "a crop past the frame"), "crops:9:outside");
    }
}

#[test]
fn a_lens_longer_than_the_room() {
    let layout = table(|file| {
        file["camera"]["focal"] = 600.into();
        file["rig"]["ceiling"] = 1_000.into();
    });
    wont_work(&finite(&layout, "a long lens"), "fit:ceiling");
}

#[test]
fn a_thing_taller_than_the_camera() {
    // The lens stands 50·(1 + 1050 ÷ 36) = 1508.3 mm above the table.
    for height in [1_500, 1_508, 1_509, 2_000] {
        let layout = table(|file| file["items"][2]["height"] = height.into());
        let found = finite(&layout, "a tall post");
        if height > 1_508 {
            wont_work(&found, "fit:lens");
        }
    }
}

#[test]
fn a_light_at_no_distance_and_one_under_the_table() {
    let at = |distance: i32, height: i32| {
        move |file: &mut serde_json::Value| {
            file["light"] = serde_json::json!({
                "shape": "window", "clock": 300, "distance": distance,
                "height_above_table": height, "width": 300, "height": 300,
            });
        }
    };
    for (distance, height) in [(0, 50), (0, 500), (1_500, 50), (20, 100)] {
        finite(&table(at(distance, height)), "a light in the picture");
    }
    for height in [-600, 0, 49] {
        let problems = open(&file(at(1_500, height))).expect_err("under the table");
        let told = problems
            .iter()
            .any(|p| p.to_string().contains("light.height_above_table"));
        assert!(told, "{height}: {problems:?}");
    }
}

#[test]
fn a_frame_smaller_than_the_sensor_and_one_as_large_as_may_be() {
    for (width, focal) in [(50, 600), (50, 4), (5_000, 4), (5_000, 600)] {
        let layout = table(|file| {
            file["frame"]["width"] = width.into();
            file["camera"]["focal"] = focal.into();
        });
        finite(&layout, "a senseless frame");
    }
}
