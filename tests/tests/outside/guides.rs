//! Mask guides against distances by `shapely` and rays by `numpy`.
use outside_checks::{Table, tree};
use planner::exposures::{Guide, guides, level_parts};
use planner::layout::{Layout, LightShape, open};
use planner::optics::{Lens, Pixels};
use rand_pcg::Pcg32;
use rand_pcg::rand_core::Rng;
use serde_json::{Value, json};

/// Random tables beside the supper.
const TABLES: usize = 12;
/// Pixels along the long side of the small camera.
const LONG: i32 = 600;
/// An edge may lie a pixel off. Past that, 48 rows of rays and 64 strips each
/// know a share of the light to within one of them where an edge of an arm lies
/// along the source: at most a percent, which is 28 steps of the 255 over which
/// a guide fades between one and ten percent; and all but a few to within 8.
const STEPS: i32 = 28;
const USUAL: i32 = 8;
/// Share of pixels that may be farther off than usual.
const FEW: f64 = 0.0005;

/// The supper, and tables with two or three exposures of one or two hands.
fn tables() -> Vec<(String, Layout)> {
    let supper = tree::read("../static/starters/harbour-supper.spread.json");
    let mut supper = open(&supper).expect("the supper");
    supper.camera.pixels = Some([LONG, 400]);
    // Things that change are not told to the other program.
    supper.exposures.iter_mut().for_each(|e| e.states.clear());
    let mut all = vec![("supper".to_owned(), supper)];
    let mut dice = Pcg32::new(20_261_126, 7);
    for n in 0..TABLES {
        all.push((format!("table-{n}"), random(&mut dice)));
    }
    all
}

fn random(dice: &mut Pcg32) -> Layout {
    let mut pick = |from: u32, to: u32| from + dice.next_u32() % (to - from);
    let turn = [0, 0, 90, 180, 17][pick(0, 5) as usize];
    let shape = ["window", "window", "disc"][pick(0, 3) as usize];
    let (clock, away, above) = (pick(0, 12) * 30, pick(1100, 2000), pick(800, 1500));
    let size = pick(500, 1400);
    let mut hands = Vec::new();
    let exposures = pick(2, 4);
    for exposure in 0..exposures {
        for _ in 0..pick(1, 3) {
            let id = 60 + hands.len();
            let side = ["left", "right"][pick(0, 2) as usize];
            let action = ["reach", "rest", "tear", "squeeze", "pour"][pick(0, 5) as usize];
            let (entry, target) = (
                [pick(300, 1300), [0, 900][pick(0, 2) as usize]],
                [pick(450, 1150), pick(250, 650)],
            );
            hands.push(format!(
                r#"{{"id":{id},"person":32,"exposure":{},"side":"{side}","action":"{action}","entry":[{},{}],"target":[{},{}],"height":{}}}"#,
                40 + exposure, entry[0], entry[1], target[0], target[1], pick(20, 200)
            ));
        }
    }
    let shots: Vec<String> = (0..exposures)
        .map(|n| format!(r#"{{"id":{}}}"#, 40 + n))
        .collect();
    let text = format!(
        r#"{{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":90,
        "table":{{"width":1600,"depth":900}},
        "camera":{{"focal":{},"pixels":[{LONG},400]}},
        "light":{{"clock":{clock},"distance":{away},"height_above_table":{above},"shape":"{shape}","width":{size},"height":{size}}},
        "frame":{{"ratio":[3,2],"at":[800,450],"width":1200,"turn":{turn}}},
        "people":[{{"id":32}}],"exposures":[{{"id":39,"kind":"clean"}},{}],"hands":[{}]}}"#,
        [35, 50][pick(0, 2) as usize],
        shots.join(","),
        hands.join(",")
    );
    open(&text).unwrap_or_else(|problems| panic!("{problems:?}"))
}

/// What the other program is told of a table: outlines to a hundredth of a mm.
fn told(name: &str, layout: &Layout) -> Value {
    let lens = Lens::of(&layout.camera);
    let light = &layout.light;
    let frame = &layout.frame;
    let round = |n: f64| (n * 100.0).round() / 100.0;
    let above = guides(layout).into_iter().skip(1);
    let exposures: Vec<Value> = above
        .map(|file| {
            let level: Vec<Value> = level_parts(layout, file.exposure)
                .into_iter()
                .map(|(height, outline)| {
                    let ring: Vec<[f64; 2]> =
                        outline.iter().map(|p| [round(p.x), round(p.y)]).collect();
                    json!([height, ring])
                })
                .collect();
            json!({"id": file.exposure.0, "level": level})
        })
        .collect();
    json!({
        "name": name,
        "table": [layout.table.width, layout.table.depth],
        "camera": {"sensor": lens.sensor.to_array(), "focal": lens.focal,
            "pixels": Pixels::of(layout).size},
        "frame": {"at": frame.at.vec().to_array(), "width": frame.width,
            "height": frame.height(), "turn": frame.turn.degrees()},
        "light": {"clock": light.clock.degrees(), "distance": light.distance,
            "height": light.height_above_table, "width": light.width, "tall": light.height,
            "shape": if light.shape == LightShape::Window { "window" } else { "disc" }},
        "exposures": exposures,
    })
}

#[test]
fn the_other_program_is_told_of_these_tables() {
    let all: Vec<Value> = tables().iter().map(|(name, l)| told(name, l)).collect();
    let lines: Vec<String> = all.iter().map(Value::to_string).collect();
    let text = format!("[\n{}\n]\n", lines.join(",\n"));
    let path = tree::in_tests("reference/guides_arms.json");
    if std::env::var_os("OVERSPREAD_WRITE_GUIDES").is_some() {
        std::fs::write(&path, &text).expect("written");
    }
    let kept = std::fs::read_to_string(&path).expect("kept");
    assert!(
        kept == text,
        "arms have changed: run this test with OVERSPREAD_WRITE_GUIDES=1, then generate_guides.py"
    );
}

/// The grey of a row, run by run.
fn row(text: &str) -> Vec<i32> {
    let run = |run: &str| {
        let (value, count) = run.split_once('*').unwrap_or((run, "1"));
        let count: usize = count.parse().expect("a count");
        vec![value.parse::<i32>().expect("a grey"); count]
    };
    text.split(' ').flat_map(run).collect()
}

#[test]
fn guides_lie_within_a_pixel_of_those_of_another_program() {
    let table = Table::read("guides.csv");
    let (mut pixels, mut soft, mut unusual) = (0_usize, 0, 0_usize);
    for (name, layout) in tables() {
        for file in guides(&layout).into_iter().skip(1) {
            let mut guide = Guide::new(&layout, file.exposure).expect("a guide");
            let mut own = vec![0; guide.size()[0]];
            let id = file.exposure.0.to_string();
            let rows = table.rows();
            for at in rows.filter(|r| r.text("table") == name && r.text("exposure") == id) {
                let y = at.number("row") as usize;
                guide.row(y, &mut own);
                let theirs = row(at.text("grey"));
                assert_eq!(theirs.len(), own.len(), "{}", at.place());
                for (x, value) in own.iter().map(|v| i32::from(*v)).enumerate() {
                    let near = &theirs[x.saturating_sub(1)..(x + 2).min(theirs.len())];
                    let (low, high) = (near.iter().min(), near.iter().max());
                    let off = (low.expect("near") - value).max(value - high.expect("near"));
                    unusual += usize::from(off > USUAL);
                    assert!(
                        off <= STEPS,
                        "{}: {value} at {x}, theirs {near:?}",
                        at.place()
                    );
                    pixels += 1;
                    soft += usize::from(!matches!(value, 0 | 255));
                }
            }
        }
    }
    let share = unusual as f64 / pixels as f64;
    assert!(share < FEW, "{unusual} of {pixels} are off by over {USUAL}");
    assert!(pixels > 100_000 && soft > 5_000, "{pixels}, {soft}");
}
