//! What a level surface mirrors, against rays traced from the lens one by one
//! (`reference/generate_glare.py`).
use glam::DVec2;
use outside_checks::{Row, Table};
use planner::layout::{
    Card, CardKind, Extra, Finish, Id, Layout, LayoutId, LightShape, Point, Turn,
};
use planner::light::{MIRRORED, Mirror, Occluder};
use planner::optics::View;
use planner::readings::{Study, report};
use planner::shape::{CHORD_ERROR, Region, disc, intersection, rotation};

/// A round thing has 96 corners in the core, which takes less than a thousandth
/// off its area; counting cells is good to a thousandth of the surface.
const OF_PATCH: f64 = 0.002;
const OF_SURFACE: f64 = 0.001;

fn point(row: Row<'_>, x: &str, y: &str) -> Point {
    Point::new(row.number(x) as i32, row.number(y) as i32)
}

/// The set of a row: light, mast, photographer, card.
fn set(row: Row<'_>) -> Layout {
    let mut layout = Layout::empty(LayoutId(1));
    layout.table.height = row.number("table") as i32;
    layout.light.clock = Turn::from_degrees(row.number("clock"));
    layout.light.distance = row.number("distance") as i32;
    layout.light.height_above_table = row.number("above") as i32;
    layout.light.width = row.number("width") as i32;
    layout.light.height = row.number("height") as i32;
    layout.rig.at = Some(point(row, "mx", "my"));
    layout
}

/// A round thing: its place, its radius, its levels.
fn thing(text: &str) -> Occluder {
    let parts: Vec<&str> = text.split('|').collect();
    let numbers = |text: &str| -> Vec<f64> {
        let each = text.split(' ').filter(|n| *n != "disc");
        each.map(|n| n.parse().expect("a number")).collect()
    };
    let [at, radius, pile] = [parts[0], parts[1], parts[2]].map(numbers);
    let at = DVec2::from_slice(&at);
    let outline = disc(at, radius[0], CHORD_ERROR);
    let levels = pile.chunks_exact(2).map(|p| [p[0], p[1]]).collect();
    Occluder::new(Id(2), &outline, at, levels).expect("a solid")
}

#[test]
fn patches_are_where_traced_rays_meet_light_camera_arm_and_photographer() {
    let table = Table::read("glare.csv");
    assert!(table.len() >= 200, "{} scenes", table.len());
    let mut met = [0; 5];
    let mut off = Vec::new();
    for row in table.rows() {
        let mut layout = set(row);
        layout.rig.photographer = Some(point(row, "px", "py"));
        if row.text("shape") == "disc" {
            layout.light.shape = LightShape::Disc;
        }
        for (column, kind) in [("card", CardKind::Black), ("white", CardKind::White)] {
            if let [x, y, turn, width, height] = row.numbers(column)[..] {
                layout.cards.push(Card {
                    id: Id(1),
                    kind,
                    at: Point::new(x as i32, y as i32),
                    turn: Turn::from_degrees(turn),
                    width: width as i32,
                    height: height as i32,
                    extra: Extra::new(),
                });
            }
        }
        let things = row.text("things").split(';').filter(|t| !t.is_empty());
        let things: Vec<Occluder> = things.map(thing).collect();
        let standing: Vec<&Occluder> = things.iter().collect();
        let under = point(row, "ux", "uy").vec();
        let mirror = Mirror::under_lens(under, row.number("lens"), row.number("level"));
        let mirror = mirror.expect("the lens stands above");
        let surface = disc(
            point(row, "cx", "cy").vec(),
            row.number("radius"),
            CHORD_ERROR,
        );
        let surface = Region::from_polygon(&surface).expect("a disc");
        let names = ["light", "camera", "arm", "photographer", "whitecard"];
        for (n, (of, name)) in MIRRORED.into_iter().zip(names).enumerate() {
            let patch = of.region(&layout, &mirror, &standing, &|_| true);
            let found = intersection(&patch, &surface).expect("in limits").area();
            let traced = row.number(name);
            let allowed = traced * OF_PATCH + surface.area() * OF_SURFACE;
            if (found - traced).abs() > allowed {
                off.push(format!(
                    "{}, {name}: {found} mm², traced {traced}",
                    row.place()
                ));
            }
            met[n] += usize::from(traced > 0.0);
        }
    }
    assert!(off.is_empty(), "{} are off: {off:#?}", off.len());
    assert!(
        met.iter().all(|n| *n >= 25),
        "each is mirrored often: {met:?}"
    );
}

/// The move a remedy makes, found among those traced.
#[test]
fn a_thing_moved_out_of_the_mirror_is_out_of_it_for_the_tracer_too() {
    let table = Table::read("glare_moves.csv");
    let mut moved = 0;
    for row in table.rows() {
        let layout = set(row);
        let at = point(row, "cx", "cy");
        let text = format!(
            r#"{{"id":1,"number":1,"name":"soup","prop":"soup","at":[{},{}],"height":0,
            "finish":"liquid","size":{{"shape":"disc","diameter":{}}}}}"#,
            at.x,
            at.y,
            2.0 * row.number("radius")
        );
        let mut file: serde_json::Value = serde_json::from_str(&layout.to_json()).expect("JSON");
        file["items"] = serde_json::from_str(&format!("[{text}]")).expect("JSON");
        file["next_id"] = 2.into();
        // A light too far off to be mirrored.
        file["light"]["height_above_table"] = 50.into();
        file["light"]["height"] = 10.into();
        file["light"]["distance"] = 20_000.into();
        let layout = planner::layout::open(&file.to_string()).expect("opens");
        assert_eq!(layout.items[0].finish, Finish::Liquid);
        let View::Lens { under, .. } = View::of(&layout) else {
            panic!("a lens");
        };
        assert_eq!(under, DVec2::new(600.0, 450.0), "as traced");
        let findings = report(&Study::new(&layout), true).findings;
        let Some(f) = findings
            .iter()
            .find(|f| f.reading == "glare" && f.is_pressing())
        else {
            continue;
        };
        let remedy = f.remedy.as_ref().expect("there is room");
        let mut after = layout.clone();
        remedy.edit.apply_checked(&mut after).expect("it fits");
        let shares = row.numbers("shares");
        let traced = (0..160).find_map(|n| {
            let by = rotation(22.5 * f64::from(n % 16)) * f64::from(20 + n / 16 * 20);
            let there = Point::nearest(at.vec() + by);
            (there == after.items[0].at).then(|| shares[n as usize])
        });
        let traced = traced.unwrap_or_else(|| panic!("{}: another way", remedy.act));
        let apart = (traced * 100.0 - remedy.after).abs();
        assert!(
            apart < 0.5,
            "{}: {} and {traced}",
            row.place(),
            remedy.after
        );
        assert!(traced < 0.10, "{}: still {traced}", row.place());
        moved += 1;
    }
    assert!(moved >= 20, "enough were moved: {moved}");
}
