//! The exposures, each drawn as the table stands then with its own hands only,
//! laid on each other through their mask guides, against the combined picture.
//!
//! Both are drawn by `resvg`, an independent renderer. Wherever every guide is
//! black or white the pixels must be the very same, none excepted; what lies in
//! between is the soft edge. Where the half shadow of one exposure falls on what
//! another adds no mask can show both. If it takes a tenth of the light it is a
//! clash, and nothing is asked there; if it takes less it is let go, and the
//! pixels may differ by no more than the drawn shadow darkens them.
use glam::DVec2;
use planner::drawing::{Shown, Trims, View, cut};
use planner::exposures::{Guide, added, clashes, guides};
use planner::layout::{Id, Layout, open};
use planner::optics::{self, Pixels};
use planner::readings::{Study, report};
use planner::scene::Lit;
use planner::shape::{Region, intersection};
use resvg::{tiny_skia, usvg};

/// Pixels along the long side.
const LONG: i32 = 900;

fn starter(name: &str) -> Layout {
    let path = format!(
        "{}/../static/starters/{name}.spread.json",
        env!("CARGO_MANIFEST_DIR")
    );
    let text = std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{path}: {e}"));
    open(&text).unwrap_or_else(|problems| panic!("{problems:?}"))
}

/// The same layout with as many pixels as its frame just fills.
fn sized(mut layout: Layout) -> Layout {
    let (wide, high) = (f64::from(layout.frame.width), layout.frame.height());
    let short = f64::from(LONG) * wide.min(high) / wide.max(high);
    layout.camera.pixels = Some([LONG, short.round() as i32]);
    layout
}

/// The picture through the lens, in the pixels of the camera.
fn drawn(layout: &Layout, shown: Shown) -> Vec<[u8; 4]> {
    let [wide, high] = Pixels::of(layout).size;
    let view = View {
        shown,
        eye: optics::View::of(layout),
        fine: true,
        tags: false,
        crops: Trims::None,
        ..View::default()
    };
    let part = cut(layout, None, f64::from(wide), &view).expect("a frame");
    let [x, y, w, h] = part.area;
    let mut svg = format!(
        r#"<svg xmlns="http://www.w3.org/2000/svg" width="{wide}" height="{high}" viewBox="{x} {y} {w} {h}" preserveAspectRatio="none">"#
    );
    for keyed in part.groups {
        svg += &keyed.placed().to_string();
    }
    svg += "</svg>";
    let tree = usvg::Tree::from_str(&svg, &usvg::Options::default()).expect("a drawing");
    let mut picture = tiny_skia::Pixmap::new(wide as u32, high as u32).expect("a size");
    resvg::render(
        &tree,
        tiny_skia::Transform::default(),
        &mut picture.as_mut(),
    );
    let (pixels, _) = picture.data().as_chunks::<4>();
    pixels.to_vec()
}

fn whole(layout: &Layout, exposure: Id) -> Vec<u8> {
    let mut guide = Guide::new(layout, exposure).expect("a guide");
    let [wide, high] = guide.size();
    let mut out = vec![0; wide * high];
    for (y, row) in out.chunks_exact_mut(wide).enumerate() {
        guide.row(y, row);
    }
    out
}

/// What came of one layout, in shares of its pixels.
#[derive(Debug, Default)]
struct Found {
    /// Compared.
    hard: f64,
    /// Taken from an exposure with hands.
    above: f64,
    /// Where it is not the combined picture, and no clash.
    wrong: f64,
    /// Where it is not and two exposures clash.
    clashing: f64,
    /// Where it is not for a shadow too faint to be a clash, and the most that
    /// a pixel differs by there, of 255.
    faint: f64,
    fainter: u8,
    /// White in two guides above the ground, and no clash.
    twice: f64,
    /// Where the combined picture is not the one without hands.
    changed: f64,
}

fn compared(layout: &Layout) -> Found {
    let files = guides(layout);
    let masks: Vec<Vec<u8>> = files.iter().map(|f| whole(layout, f.exposure)).collect();
    let shot = |id| drawn(layout, Shown::Exposure(id));
    let shots: Vec<Vec<[u8; 4]>> = files.iter().map(|f| shot(f.exposure)).collect();
    let wanted = drawn(layout, Shown::Combined);
    let pixels = Pixels::of(layout);
    let own = added(layout);
    let clashing = clashes(layout, &Lit::of(layout), &own);
    let clashing: Vec<Region> = clashing.into_iter().map(|clash| clash.region).collect();
    let mut shaded = Vec::new();
    for (n, from) in own.iter().enumerate() {
        let onto = own.iter().enumerate().filter(|(m, _)| *m != n);
        shaded.extend(onto.filter_map(|(_, onto)| intersection(&from.shadow, &onto.solid).ok()));
    }
    let wide = pixels.size[0] as usize;
    // Or within a pixel of it: outlines are drawn half in, half out.
    let within = |n: usize, parts: &[Region]| {
        let at = DVec2::new((n % wide) as f64 + 0.5, (n / wide) as f64 + 0.5);
        let near = [DVec2::ZERO, DVec2::X, -DVec2::X, DVec2::Y, -DVec2::Y];
        let near = near.map(|by| pixels.place(at + by));
        parts
            .iter()
            .any(|part| near.iter().any(|p| part.contains(*p)))
    };
    let mut found = Found::default();
    let one = 1.0 / wanted.len() as f64;
    for (n, wanted) in wanted.iter().enumerate() {
        if *wanted != shots[0][n] {
            found.changed += one;
        }
        if masks.iter().any(|mask| !matches!(mask[n], 0 | 255)) {
            continue;
        }
        found.hard += one;
        let white = || masks.iter().rposition(|mask| mask[n] == 255);
        let top = white().expect("the ground is white");
        found.above += if top > 0 { one } else { 0.0 };
        let many = masks.iter().filter(|mask| mask[n] == 255).count();
        let differs = shots[top][n] != *wanted;
        if (many > 2 || differs) && within(n, &clashing) {
            found.clashing += one;
            continue;
        }
        found.twice += if many > 2 { one } else { 0.0 };
        if differs && within(n, &shaded) {
            found.faint += one;
            let by = shots[top][n]
                .iter()
                .zip(wanted)
                .map(|(a, b)| a.abs_diff(*b));
            found.fainter = found.fainter.max(by.max().unwrap_or(0));
        } else if differs {
            found.wrong += one;
        }
    }
    found
}

/// The layout after every remedy that is offered for what its exposures
/// contradict or clash in.
fn cured(mut layout: Layout) -> (Layout, usize) {
    for round in 0.. {
        assert!(round < 20, "remedies come to an end");
        let told = report(&Study::new(&layout), true);
        let about = |f: &&planner::readings::Finding| {
            let key = f.key.as_str();
            key.starts_with("exposures:") && (key.contains("clash") || key.contains("twice"))
        };
        let remedy = told
            .findings
            .iter()
            .filter(about)
            .find_map(|f| f.remedy.as_ref());
        let Some(remedy) = remedy else {
            return (layout, round);
        };
        remedy.edit.apply(&mut layout).expect("it fits");
    }
    unreachable!()
}

#[test]
fn exposures_through_their_guides_make_the_combined_picture() {
    for name in ["harbour-supper", "citrus-breakfast", "noodle-night"] {
        let layout = sized(starter(name));
        let found = compared(&layout);
        assert_eq!(found.wrong, 0.0, "{name}: {found:?}");
        assert_eq!(found.twice, 0.0, "{name}: {found:?}");
        assert!(
            found.faint < 0.005 && found.fainter < 16,
            "{name}: {found:?}"
        );
        assert!(found.clashing < 0.05, "{name}: {found:?}");
        assert!(found.hard > 0.6, "{name}: most is compared, {found:?}");
        assert!(found.above > 0.03, "{name}: hands are, {found:?}");
        assert!(found.changed > 0.02, "{name}: hands show, {found:?}");
    }
}

#[test]
fn the_supper_with_its_remedies_combines_everywhere() {
    let (layout, remedies) = cured(sized(starter("harbour-supper")));
    assert!(remedies > 0, "there was something to cure");
    assert!(clashes(&layout, &Lit::of(&layout), &added(&layout)).is_empty());
    let found = compared(&layout);
    assert_eq!(found.wrong, 0.0, "{found:?}");
    assert_eq!(found.twice, 0.0, "{found:?}");
    assert_eq!(found.clashing, 0.0, "{found:?}");
    assert!(found.faint < 0.005 && found.fainter < 16, "{found:?}");
    assert!(found.hard > 0.6 && found.above > 0.03, "{found:?}");
}
