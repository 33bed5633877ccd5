//! What changes when one thing of a set is changed, as geometry says: the light
//! turned, the camera raised at an equal frame, a carafe swapped for a low jug.
//! On small sets and on Harbour supper, against closed forms: a top h high, r
//! from under a lens at H, is seen r·h/(H − h) farther out (Mahun,
//! *Photogrammetry*, ch. C); the tip of a shadow falls Ds·h/(Hs − h) past what
//! throws it (similar triangles).
use glam::{DVec2, dvec2, dvec3};
use planner::commands::{Dial, step_camera, swap};
use planner::layout::{Finish, Id, Item, Layout, LayoutId, Size, Turn, open};
use planner::light::Source;
use planner::optics::View;
use planner::readings::{Finding, Mark, Study, report};
use planner::scene::{Lit, rise};
use planner::starters::harbour_supper;

/// A board of 1200 × 900 mm under a frame of 1050 × 700 mm and a 50 mm lens.
fn laid(items: &str) -> Layout {
    let text = Layout::empty(LayoutId(1)).to_json();
    let mut file: serde_json::Value = serde_json::from_str(&text).expect("JSON");
    file["items"] = serde_json::from_str(items).expect("JSON");
    file["next_id"] = 90.into();
    open(&file.to_string()).unwrap_or_else(|p| panic!("the layout is sound: {p:?}"))
}

fn read(layout: &Layout) -> Vec<Finding> {
    report(&Study::new(layout), true).findings
}

fn said(layout: &Layout, key: &str) -> Option<Finding> {
    read(layout).into_iter().find(|f| f.key == key)
}

fn lit_from(layout: &Layout, hour: f64) -> Layout {
    let mut after = layout.clone();
    after.light.clock = Turn::from_degrees(hour * 30.0);
    after
}

/// The way a round thing throws its shadow: where, on a ring about its foot,
/// how much of the light is missing.
fn shadow_way(layout: &Layout, item: &Item) -> DVec2 {
    let lit = Lit::of(layout);
    let [across, _] = item.size.extent().map(f64::from);
    let ring = |n: u32| DVec2::from_angle(f64::from(n).to_radians() * 2.0);
    let missing = |way: DVec2| {
        let place = item.at.vec() + way * (across * 0.5 + 30.0);
        way * (1.0 - lit.share_past(place.extend(0.0), item.id))
    };
    let sum: DVec2 = (0..180).map(|n| missing(ring(n))).sum();
    sum.normalize_or_zero()
}

fn away_from_light(layout: &Layout, item: &Item) -> DVec2 {
    (item.at.vec() - Source::of(layout).centre.truncate()).normalize()
}

#[test]
fn from_ten_to_two_o_clock_shadows_and_findings_are_mirrored() {
    let dish = |id: u16, x: i32, role: &str| {
        format!(
            r##"{{"id":{id},"number":{id},"name":"dish {id}","prop":"pot","height":0,"at":[{x},450],
            "size":{{"shape":"disc","diameter":200}},"role":"{role}"}}"##
        )
    };
    let post = r#"{"id":3,"number":3,"name":"post","prop":"pot","height":150,"at":[600,450],
        "size":{"shape":"disc","diameter":60}}"#;
    let mut layout = laid(&format!(
        "[{},{},{post}]",
        dish(1, 300, "hero"),
        dish(2, 900, "support")
    ));
    layout.light.distance = 1000;
    let [ten, two] = [10.0, 2.0].map(|hour| lit_from(&layout, hour));
    let [left, right] = [&ten, &two].map(|l| shadow_way(l, &l.items[2]));
    assert!(
        left.distance(dvec2(-right.x, right.y)) < 1e-6,
        "{left} and {right}"
    );
    assert!(left.x > 0.5 && left.y > 0.3, "to the lower right: {left}");
    for (l, way) in [(&ten, left), (&two, right)] {
        assert!(way.dot(away_from_light(l, &l.items[2])) > 0.999, "{way}");
    }
    // The brighter dish is the one on the light's side, by as many stops.
    let [a, b] = [&ten, &two].map(|l| said(l, "light").expect("two dishes"));
    assert_eq!(a.about, [Id(2), Id(1)], "dark, then bright: {}", a.sentence);
    assert_eq!(b.about, [Id(1), Id(2)], "and the other way: {}", b.sentence);
    assert!(
        (a.figure - b.figure).abs() < 1e-9,
        "{} and {}",
        a.figure,
        b.figure
    );
    assert_ne!(a.sentence, b.sentence);
}

#[test]
fn on_harbour_supper_shadows_turn_with_the_light_and_findings_change() {
    let layout = harbour_supper();
    let mut told = Vec::new();
    for hour in [10.0, 2.0] {
        let turned = lit_from(&layout, hour);
        let round = turned.items.iter().filter(|i| {
            let stands = i.on.is_none() && i.finish != Finish::Clear && i.height >= 50;
            stands && matches!(i.size, Size::Disc { .. })
        });
        let mut count = 0;
        for item in round {
            let (way, away) = (shadow_way(&turned, item), away_from_light(&turned, item));
            assert!(
                way.dot(away) > 0.99,
                "{} at {hour}: {way}, {away}",
                item.name
            );
            count += 1;
        }
        assert!(count >= 3, "several throw shadows: {count}");
        let found = read(&turned).into_iter().filter(|f| f.reading == "light");
        let found: Vec<(String, i64, Vec<Id>)> = found
            .map(|f| (f.key, (f.figure * 100.0).round() as i64, f.about))
            .collect();
        assert!(!found.is_empty(), "there is something to say");
        told.push(found);
    }
    assert_ne!(told[0], told[1], "the findings change");
}

/// r·h/(H − h) of a thing.
fn lean(layout: &Layout, item: &Item, lens: f64) -> f64 {
    let h = rise(layout, item).top;
    item.at.vec().distance(layout.frame.at.vec()) * h / (lens - h)
}

fn lens(layout: &Layout) -> f64 {
    match View::of(layout) {
        View::Lens { height, .. } => height,
        View::Above => panic!("a lens fits"),
    }
}

/// The same frame through the next longer lens at hand.
fn raised(layout: &Layout) -> Layout {
    let act = step_camera(layout, Dial::Focal, true).expect("a longer one");
    let mut after = layout.clone();
    act.edit.apply_checked(&mut after).expect("fits");
    assert!(after.camera.focal > layout.camera.focal, "longer");
    assert_eq!(after.frame, layout.frame, "the same frame");
    after
}

#[test]
fn raising_the_camera_at_an_equal_frame_lessens_every_lean() {
    let post = r#"[{"id":1,"number":1,"name":"post","prop":"pot","height":300,"at":[950,600],
        "size":{"shape":"disc","diameter":60}}]"#;
    for layout in [laid(post), harbour_supper()] {
        let mut heights = Vec::new();
        let mut figures = Vec::new();
        for set in [layout.clone(), raised(&layout)] {
            let height = lens(&set);
            let f = said(&set, "lean:most").expect("something leans");
            let item = set
                .items
                .iter()
                .find(|i| i.id == f.about[0])
                .expect("a thing");
            let most = lean(&set, item, height);
            assert!((f.figure - most).abs() < 1e-6, "{}: {most}", f.sentence);
            heights.push((height, rise(&set, item).top, item.id));
            figures.push(f.figure);
        }
        let ((low, h, one), (high, _, other)) = (heights[0], heights[1]);
        assert!(high > low, "the camera is higher");
        assert_eq!(one, other, "the same thing leans most");
        // Of h/(H − h) only H has changed.
        let ratio = (h / (high - h)) / (h / (low - h));
        assert!(
            (figures[1] / figures[0] - ratio).abs() < 1e-9,
            "{figures:?}"
        );
    }
    // By the thin lens: 50 mm over 1050 mm on 36 mm stands 50·(1 + 1050/36).
    let simple = laid(post);
    assert!((lens(&simple) - 50.0 * (1.0 + 1050.0 / 36.0)).abs() < 1e-9);
}

/// A layout with one thing swapped.
fn swapped(layout: &Layout, id: Id, prop: &str) -> Layout {
    let act = swap(layout, &[id], prop, false).expect("of its kind");
    let mut after = layout.clone();
    act.edit.apply_checked(&mut after).expect("fits");
    after
}

/// How far the shadow of a thing is drawn past it, and how far it should be.
fn tip(layout: &Layout, item: &Item) -> (f64, f64) {
    let f = said(layout, "light:shadow").expect("the hero lies in its shadow");
    let drawn = f.marks.iter().find_map(|m| match m {
        Mark::Tip { from, to } if *from == item.at.vec() => Some(from.distance(*to)),
        _ => None,
    });
    (drawn.expect("its tip is drawn"), tip_by_form(layout, item))
}

fn tip_by_form(layout: &Layout, item: &Item) -> f64 {
    let source = Source::of(layout).centre;
    let h = rise(layout, item).top;
    item.at.vec().distance(source.truncate()) * h / (source.z - h)
}

#[test]
fn a_low_jug_for_a_carafe_takes_its_lean_away_and_shortens_its_shadow() {
    let mut tall = laid(
        r#"[{"id":2,"number":2,"name":"dish","prop":"pot","height":0,"at":[900,450],
        "size":{"shape":"rect","width":200,"depth":200},"role":"hero"},
        {"id":1,"number":1,"name":"carafe","prop":"oil-carafe","height":560,"at":[770,450],
        "size":{"shape":"disc","diameter":96},"finish":"satin"}]"#,
    );
    tall.light.clock = Turn::from_degrees(270.0);
    tall.light.height_above_table = 1600;
    let low = swapped(&tall, Id(1), "jug");
    assert!(low.items[1].height < tall.items[1].height / 2, "a low one");
    assert!(
        said(&tall, "lean:1").is_some(),
        "the carafe leans over the dish"
    );
    assert!(said(&low, "lean:1").is_none(), "the jug does not");
    let mut shadows = Vec::new();
    for set in [&tall, &low] {
        let f = said(set, "lean:most").expect("it leans");
        let expected = lean(set, &set.items[1], lens(set));
        assert!((f.figure - expected).abs() < 1e-6, "{}", f.sentence);
        let (drawn, expected) = tip(set, &set.items[1]);
        assert!((drawn - expected).abs() < 1e-6, "{drawn} of {expected}");
        shadows.push(drawn);
    }
    assert!(shadows[1] < shadows[0] * 0.5, "shorter: {shadows:?}");
    // 52 cm past it the carafe still takes some light and the jug none.
    let [far, near] = [&tall, &low].map(|l| Lit::of(l).share(dvec3(1290.0, 450.0, 0.0), Id(0)));
    assert!(far < 0.98 && near == 1.0, "{far} and {near}");
}

#[test]
fn on_harbour_supper_the_low_jug_does_the_same() {
    let tall = harbour_supper();
    let carafe = tall
        .items
        .iter()
        .find(|i| i.prop == "oil-carafe")
        .expect("a carafe");
    let low = swapped(&tall, carafe.id, "jug");
    let jug = low.items.iter().find(|i| i.id == carafe.id).expect("a jug");
    let key = format!("lean:{}", jug.id.0);
    assert!(said(&low, &key).is_none(), "it leans over no main dish");
    let [from, to] = [(&tall, carafe), (&low, jug)].map(|(l, i)| {
        let seen = View::of(l).project(i.at.vec(), rise(l, i).top);
        let leans = seen.distance(i.at.vec());
        assert!((leans - lean(l, i, lens(l))).abs() < 1e-6, "{leans}");
        [leans, tip_by_form(l, i)]
    });
    assert!(to[0] < from[0] && to[1] < from[1], "{from:?} to {to:?}");
}
