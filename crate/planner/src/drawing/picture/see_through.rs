//! The plan as a transparent picture of the camera's own pixels, to lay over
//! what a tethered camera sees: outlines as the lens sees them, the crops with
//! their bleed, safe margin, gutter and copy space, and the hands to come.
//!
//! Everything is drawn in pixels, upright as the camera sees it, and every line
//! is a light one over a dark one, so that it shows on any photo.
use glam::{DVec2, dvec2};
use svg::Document;
use svg::node::element::Group;

use super::crops::{FOLD, GREASE, Under, dashes, folded, laid_over, over};
use super::edge::{hatched, lined, looped, row};
use super::lettering::cased;
use super::view::{Shown, Trims};
use crate::catalogue;
use crate::drawing::path::{PathData, short, tenth};
use crate::drawing::tone::{Tone, rgb};
use crate::layout::{Crop, CropShape, Hand, Layout};
use crate::optics::{Pixels, View};
use crate::scene::{Scene, arm, flag, lifted};
use crate::shape::{Region, frame_outline, union};

/// Outlines of things.
const CHALK: Tone = rgb(0xfdf9ee);
/// Outlines of hands to come.
const HAND: Tone = rgb(0xffd34d);
/// Weight of a line, in shares of the picture's long side: a pixel and a half
/// where the whole picture is 1,500 wide on a screen.
const WEIGHT: f64 = 0.001;
/// Height of a hand's flag, in weights.
const FLAG: f64 = 14.0;
/// What is seen this far past the picture is made out too, as a share of it, so
/// that no outline is closed along the picture's edge.
const PAST: f64 = 0.1;

/// The transparent plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SeeThrough {
    /// Pixels across and down.
    pub pixels: [i32; 2],
    /// Whether the layout says so many; else they are those of the usual model
    /// of its sensor.
    pub told: bool,
    /// The picture, without a ground.
    pub svg: String,
}

/// The corners on the table plane of the picture, and some more.
fn surroundings(pixels: &Pixels) -> Vec<DVec2> {
    let half = pixels.half();
    let corners = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)];
    let corner = |c: (f64, f64)| half + half * DVec2::from(c) * (1.0 + PAST);
    corners.map(|c| pixels.place(corner(c))).to_vec()
}

/// The plan with the hands of `shown`; nothing where no lens can show the
/// frame. It holds nothing of what a link leaves out.
#[must_use]
pub fn see_through(layout: &Layout, shown: Shown) -> Option<SeeThrough> {
    let view = View::of(layout);
    if view == View::Above {
        return None;
    }
    let frame = frame_outline(&layout.frame);
    let place = Pixels::of(layout);
    let pixels = place.size;
    let long = pixels[0].max(pixels[1]);
    let unit = f64::from(long) * WEIGHT;
    let to = |p: DVec2| place.pixel(p);
    let under = Under {
        layout,
        trims: Trims::All,
        place: &to,
        room: (DVec2::ZERO, place.half() * 2.0),
        unit,
    };
    let mut root =
        Group::new().add(things(&shown.table(layout), view, &place, unit).set("id", "things"));
    let edge = || looped(&frame.iter().map(|p| to(*p)).collect::<Vec<_>>());
    root = over(root, [edge(), edge()], CHALK, unit * 0.8, "");
    for crop in &layout.crops {
        root = print(root, &under, crop);
    }
    let hands = layout.hands.iter().filter(|hand| shown.has(hand));
    let coming = hands.fold(Group::new(), |all, hand| {
        coming(all, layout, hand, view, &place, unit)
    });
    root = root
        .add(coming.set("id", "hands"))
        .add(laid_over(&under, Vec::new()));
    let [across, down] = pixels.map(|n| tenth(f64::from(n)));
    let svg = Document::new()
        .set("viewBox", ["0", "0", &across, &down].join(" "))
        .set("width", across)
        .set("height", down)
        .add(root);
    Some(SeeThrough {
        pixels,
        told: place.told,
        svg: svg.to_string(),
    })
}

/// What is seen of table, linens and things, each by its outline; what is
/// strewn by the edge of where it lies, broken.
fn things(layout: &Layout, view: View, place: &Pixels, unit: f64) -> Group {
    // What hands will cover is still to be seen.
    let mut bare = layout.clone();
    bare.hands.clear();
    let scene = Scene::within(&bare, None, view, &surroundings(place), None);
    let (mut whole, mut loose) = (PathData::default(), PathData::default());
    for n in 0..scene.pieces.len() {
        for ring in scene.seen(n).rings() {
            whole.polygon(ring.iter().map(|p| place.pixel(*p)));
        }
    }
    for item in &bare.items {
        let outline = scene.touchable.iter().find(|(id, _)| *id == item.id);
        if let Some((_, outline)) = outline
            && catalogue::is_strewn(&item.prop)
        {
            loose.polygon(outline.iter().map(|p| place.pixel(*p)));
        }
    }
    let group = twice(Group::new(), &whole, CHALK, unit * 1.1, "");
    twice(group, &loose, CHALK, unit * 0.8, &dashes(&[3.0, 3.0], unit))
}

/// A light line over a dark one; nothing of no line.
fn twice(group: Group, data: &PathData, tone: Tone, width: f64, dash: &str) -> Group {
    if data.is_empty() {
        return group;
    }
    over(group, [data.clone(), data.clone()], tone, width, dash)
}

/// What a printer asks of a crop: its bleed in a thin line outside the trim,
/// its safe margin dotted within, and the gutter hatched.
fn print(group: Group, under: &Under<'_>, crop: &Crop) -> Group {
    let (unit, corners) = (under.unit, under.corners(crop));
    // Pixels to a mm of the print.
    let fine = match crop.shape {
        CropShape::Print([wide, _]) => corners[0].distance(corners[1]) / f64::from(wide),
        CropShape::Ratio(_) => return group,
    };
    let grown = |mm: i32| {
        let out = |from: usize, to: usize| (corners[to] - corners[from]).normalize_or_zero();
        let corner = |n: usize| {
            let by = out((n + 1) % 4, n) + out((n + 3) % 4, n);
            corners[n] + by * (f64::from(mm) * fine)
        };
        let mut data = PathData::default();
        data.polygon((0..4).map(corner));
        data
    };
    let mut group = group;
    if crop.bleed > 0 {
        group = twice(group, &grown(crop.bleed), GREASE, unit * 0.6, "");
    }
    if crop.safe > 0 {
        let dots = dashes(&[0.1, 4.0], unit);
        group = twice(group, &grown(-crop.safe), GREASE, unit * 0.9, &dots);
    }
    if crop.gutter > 0 {
        let [from, to] = folded(&corners);
        let half = (corners[1] - corners[0]).normalize_or_zero();
        let half = half * (f64::from(crop.gutter) * fine * 0.5);
        let strip = [from - half, from + half, to + half, to - half];
        let (mut sides, mut lines) = (PathData::default(), PathData::default());
        row(&mut sides, &[strip[0], strip[3]]);
        row(&mut sides, &[strip[1], strip[2]]);
        hatched(&mut lines, &strip, unit * 10.0);
        group = twice(group, &sides, FOLD, unit * 0.6, "");
        group = group.add(lined(lines, FOLD, unit * 0.5, None).set("stroke-opacity", short(0.7)));
    }
    group
}

/// A hand to come, with its arm and its flag.
fn coming(
    group: Group,
    layout: &Layout,
    hand: &Hand,
    view: View,
    place: &Pixels,
    unit: f64,
) -> Group {
    let arm = arm(layout, hand);
    let height = f64::from(hand.height);
    let parts = [&arm.hand, &arm.forearm, &arm.sleeve];
    let regions = parts.map(|part| Region::from_polygon(&lifted(part, view, height)));
    let regions: Vec<&Region> = regions.iter().flatten().collect();
    let mut data = PathData::default();
    for ring in union(&regions).iter().flat_map(Region::rings) {
        data.polygon(ring.iter().map(|p| place.pixel(*p)));
    }
    let [long, short] = [10.0, 4.0];
    let group = twice(
        group,
        &data,
        HAND,
        unit * 1.5,
        &dashes(&[long, short], unit),
    );
    let middle = (arm.wrist + arm.tip) * 0.5;
    let at = place.pixel(view.project(middle, height));
    let size = unit * FLAG;
    let name = cased(
        &flag(layout, hand),
        at + dvec2(0.0, size * 0.34),
        size,
        HAND,
    );
    group.add(name.set("font-weight", "bold"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{Id, open};
    use crate::link::public;

    /// A wide table with a crop, a page with everything a printer asks for, and
    /// one hand in each of two exposures.
    fn laid(crops: &str, hands: &str) -> Layout {
        let text = format!(
            r#"{{"format":"overspread-layout","version":0,"id":"00000000000000aa","next_id":99,
            "note":"not for others","client":"nobody’s business",
            "table":{{"width":1500,"depth":900}},
            "frame":{{"ratio":[3,2],"at":[750,450],"width":1050}},
            "items":[{{"id":1,"name":"bowl","at":[600,400],"height":80,
            "size":{{"shape":"disc","diameter":200}}}}],
            "crops":[{crops}],"people":[{{"id":20}}],"exposures":[{{"id":21}},{{"id":22}}],
            "hands":[{hands}]}}"#
        );
        open(&text).unwrap_or_else(|problems| panic!("{problems:?}"))
    }

    const PAGE: &str = r#"{"id":11,"name":"page","at":[750,450],"width":840,"print":[420,280],
        "bleed":3,"safe":10,"gutter":20,"copy":{"area":[-200,0,300,100],"wording":"Supper"}}"#;
    const HANDS: &str = r#"{"id":31,"person":20,"exposure":21,"entry":[750,800],"target":[700,500]},
        {"id":32,"person":20,"exposure":22,"entry":[225,300],"target":[500,350]}"#;

    fn drawn(layout: &Layout, shown: Shown) -> String {
        see_through(layout, shown)
            .expect("a lens that shows it")
            .svg
    }

    #[test]
    fn only_the_hands_asked_for_are_drawn_and_nothing_beneath_them_is_lost() {
        let layout = laid(PAGE, HANDS);
        let all = drawn(&layout, Shown::All);
        let [first, none] = [Shown::Exposure(Id(21)), Shown::None].map(|s| drawn(&layout, s));
        let flags = |svg: &str| ["1A", "2A"].map(|flag| svg.contains(&format!("\n{flag}\n")));
        assert_eq!(flags(&all), [true, true], "both");
        assert_eq!(flags(&first), [true, false], "the first exposure");
        assert_eq!(flags(&none), [false, false], "no hand");
        let things = |svg: &str| {
            let (from, to) = (svg.find("id=\"things\""), svg.find("</g>"));
            svg[from.expect("things")..to.expect("an end")].to_owned()
        };
        assert_eq!(things(&all), things(&none), "a hand covers no outline");
    }

    #[test]
    fn a_page_has_bleed_safe_margin_gutter_and_copy_space() {
        let page = drawn(&laid(PAGE, ""), Shown::All);
        let plain = drawn(&laid("", ""), Shown::All);
        assert!(page.contains("Supper") && page.contains("gutter"), "words");
        // The page is 840 × 560 mm at 1050 ÷ 6000 mm a pixel: 600 px in from
        // the left, 400 from the top. 3 mm of bleed are 6 mm: 34.3 px.
        let corners = ["M600 400l4800 0 0 3200", "M565.7 365.7l4868.6 0 0 3268.6"];
        // 10 mm of safe margin are 20 mm: 114.3 px; 20 mm of gutter 228.6 px.
        let inner = [
            "M714.3 514.3l4571.4 0 0 2971.4",
            "M2885.7 400l0 3200M3114.3 400l0 3200",
        ];
        // Its copy space is 200 mm left of its middle: 1142.9 px.
        let copy = ["M1000 1714.3l1714.3 0 0 571.4"];
        for line in corners.into_iter().chain(inner).chain(copy) {
            assert!(page.contains(line), "{line}: {page}");
            assert!(!plain.contains(line), "{line} without a page");
        }
    }

    #[test]
    fn there_is_no_ground_and_nothing_that_is_private() {
        let svg = drawn(&public(&laid(PAGE, HANDS)), Shown::All);
        assert!(!svg.contains("<rect"), "no ground");
        for word in ["not for others", "business", "bowl"] {
            assert!(!svg.contains(word), "{word}");
        }
    }

    #[test]
    fn a_frame_higher_than_wide_is_a_picture_higher_than_wide() {
        let mut layout = laid("", "");
        layout.frame.ratio = crate::layout::Ratio {
            width: 4,
            height: 5,
        };
        let plan = see_through(&layout, Shown::All).expect("shown");
        assert_eq!((plan.pixels, plan.told), ([4_000, 6_000], false));
        layout.camera.pixels = Some([800, 600]);
        let plan = see_through(&layout, Shown::All).expect("shown");
        assert_eq!((plan.pixels, plan.told), ([600, 800], true));
        assert!(plan.svg.contains("viewBox=\"0 0 600 800\""), "{}", plan.svg);
    }
}
