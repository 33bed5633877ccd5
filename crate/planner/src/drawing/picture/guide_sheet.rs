//! The sheet that comes with the mask guides: the combined picture under a
//! veil, where each guide shows its exposure, and how the files are laid on
//! each other.
use glam::{DVec2, dvec2};
use svg::node::element::{Group, SVG};

use super::contour::Grey;
use super::crops::{dashes, over};
use super::cut::{document, view_box};
use super::edge::{lined, looped};
use super::groups;
use super::lettering::{UNDER, cased, lettering};
use super::sheet::{blank, version};
use super::view::{INKED, Shown, View, translation};
use crate::drawing::path::{PathData, short, tenth};
use crate::drawing::sketch::{Look, path_node};
use crate::drawing::tone::{Tone, rgb};
use crate::exposures::{Guide, GuideFile, guides};
use crate::layout::Layout;
use crate::optics::{self, Pixels};
use crate::scene::{arm, exposure_name, lifted};
use crate::shape::{Bounds, thinned};
use crate::words::{Arg, say};

/// Pixels across the picture on the sheet.
const ACROSS: f64 = 1_100.0;
/// Guides are drawn from so many pixels along the long side.
const COARSE: f64 = 360.0;
/// Grey from which a guide shows, and from which it hides no more.
const LEVELS: [f64; 2] = [127.5, 1.0];
/// Lines are thinned by as much of such a pixel.
const THIN: f64 = 0.2;
const HEAD: f64 = 130.0;
const MARGIN: f64 = 60.0;
const ROW: f64 = 28.0;
const LINE: f64 = 24.0;
/// Letters of a line at the foot.
const LETTERS: usize = 150;
const CHALK: Tone = rgb(0xfdf9ee);
/// The veil over the picture.
const VEIL: Tone = rgb(0xf3ecdd);

/// The sheet; nothing where there are no guides.
#[must_use]
pub fn guide_sheet(layout: &Layout) -> Option<String> {
    let files = guides(layout);
    files.first()?;
    let Pixels { size, told, .. } = Pixels::of(layout);
    let [wide, high] = size.map(f64::from);
    let unit = wide.max(high) / ACROSS;
    let box_ = [ACROSS, ACROSS * high / wide];
    let box_ = if high > wide {
        [wide, high].map(|n| n / unit)
    } else {
        box_
    };
    let words = [say("guides-stack", &[]), say("guides-wide", &[])];
    let foot: Vec<String> = words.iter().flat_map(|w| broken(w)).collect();
    let list = HEAD + box_[1] + 46.0;
    let end = list + files.len() as f64 * ROW + 14.0;
    let across = ACROSS + 2.0 * MARGIN;
    let whole = [0.0, 0.0, across, end + foot.len() as f64 * LINE + 26.0];
    let line = |text: &str, at: [f64; 2], size: f64| {
        lettering(text, DVec2::from(at), size).set("fill", INKED)
    };
    let title = layout.head.title.as_str();
    let number = |n: i32| Arg::Text(n.to_string());
    let args = [("wide", number(size[0])), ("high", number(size[1]))];
    let id = if told {
        "guides-size"
    } else {
        "guides-size-usual"
    };
    let mut out = document(whole, [whole[2], whole[3]], vec![])
        .add(blank(whole))
        .add(line(&say("guides-title", &[]), [MARGIN, 60.0], 38.0).set("font-style", "italic"))
        .add(line(title, [MARGIN, 92.0], 20.0))
        .add(line(&version(layout), [MARGIN, 114.0], 16.0))
        .add(line(&say(id, &args), [MARGIN + ACROSS, 114.0], 16.0).set("text-anchor", "end"))
        .add(picture(layout, &files, box_));
    for (n, file) in files.iter().enumerate() {
        let y = list + n as f64 * ROW;
        let name = line(&file.name, [MARGIN, y], 19.0).set("font-weight", "bold");
        let own = exposure_name(layout, file.exposure);
        let own = if n == 0 {
            say("guides-ground", &[("exposure", Arg::Text(own))])
        } else {
            own
        };
        out = out.add(name).add(line(&own, [MARGIN + 300.0, y], 19.0));
    }
    for (n, text) in foot.iter().enumerate() {
        let at = [MARGIN, end + n as f64 * LINE];
        out = out.add(line(text, at, 17.0).set("font-style", "italic"));
    }
    Some(out.to_string())
}

/// A sentence in lines of so many letters.
fn broken(text: &str) -> Vec<String> {
    let mut lines = vec![String::new()];
    for word in text.split(' ') {
        let last = lines.last_mut().map_or(0, |line| line.chars().count());
        if last > 0 && last + word.chars().count() >= LETTERS {
            lines.push(String::new());
        }
        if let Some(line) = lines.last_mut() {
            if !line.is_empty() {
                line.push(' ');
            }
            line.push_str(word);
        }
    }
    lines
}

/// The picture upright as the camera takes it, in mm from its top left corner,
/// put into a box of the sheet.
fn picture(layout: &Layout, files: &[GuideFile], [wide, high]: [f64; 2]) -> SVG {
    let pixels = Pixels::of(layout);
    let mm = DVec2::from(pixels.size.map(f64::from)) / pixels.per_mm();
    let unit = mm.x / wide;
    let upright = translation(mm * 0.5)
        + " rotate("
        + &short(-layout.frame.turn.degrees())
        + ") "
        + &translation(-layout.frame.at.vec());
    let eye = optics::View::of(layout);
    let view = View {
        per_pixel: unit,
        shown: Shown::Combined,
        eye,
        frame: false,
        tags: false,
        ..View::default()
    };
    let mut below = Group::new().set("transform", upright);
    for keyed in groups(layout, &view) {
        below = below.add(keyed.placed());
    }
    let corners = [DVec2::ZERO, dvec2(mm.x, 0.0), mm, dvec2(0.0, mm.y)];
    let mut veil = looped(&corners);
    let mut lines = Group::new();
    let mut names = Group::new();
    for file in &files[1..] {
        let [half, end] = LEVELS.map(|level| edges(layout, file, level, mm.x));
        for ring in &half {
            veil.polygon(ring.iter().copied());
        }
        let broken = dashes(&[7.0, 5.0], unit);
        for (rings, width, dash) in [(half, 2.2, ""), (end, 1.1, broken.as_str())] {
            let mut line = PathData::default();
            for ring in rings {
                line.polygon(ring.into_iter());
            }
            lines = over(lines, [line.clone(), line], CHALK, unit * width, dash);
        }
        let at = middle(layout, file, &pixels) / pixels.per_mm();
        let size = unit * 26.0;
        let room = DVec2::splat(size * 3.0).min(mm * 0.5);
        let name = cased(
            &exposure_name(layout, file.exposure),
            at.clamp(room, mm - room),
            size,
            CHALK,
        );
        names = names.add(name.set("font-weight", "bold"));
    }
    // Where exposures are laid over the lowest one there is no veil.
    let veiled = Look {
        fill: Some(VEIL),
        even_odd: true,
        ..Look::default()
    };
    let veil = path_node(veil, &veiled).set("fill-opacity", short(0.5));
    let border = lined(looped(&corners), UNDER, unit * 2.0, None);
    SVG::new()
        .set("x", tenth(MARGIN + (ACROSS - wide) * 0.5))
        .set("y", tenth(HEAD))
        .set("width", tenth(wide))
        .set("height", tenth(high))
        .set("viewBox", view_box([0.0, 0.0, mm.x, mm.y]))
        .add(below)
        .add(veil)
        .add(lines)
        .add(border)
        .add(names)
}

/// The lines round what of a guide is at least so light, in mm of the picture,
/// which is `wide`.
fn edges(layout: &Layout, file: &GuideFile, level: f64, wide: f64) -> Vec<Vec<DVec2>> {
    let mut coarse = layout.clone();
    let pixels = Pixels::of(layout).size.map(f64::from);
    let share = COARSE / pixels[0].max(pixels[1]);
    let [a, b] = pixels.map(|n| (n * share).round() as i32);
    coarse.camera.pixels = Some([a.max(b), a.min(b)]);
    let Some(mut guide) = Guide::new(&coarse, file.exposure) else {
        return Vec::new();
    };
    let mm = wide / guide.size()[0] as f64;
    let grey = Grey::of(guide.size(), &mut |y, row| guide.row(y, row));
    let placed = |ring: Vec<DVec2>| thinned(&ring, THIN).into_iter().map(|p| p * mm).collect();
    grey.round(level).into_iter().map(placed).collect()
}

/// The middle of what is seen of an exposure's hands, or of what it changes,
/// in pixels.
fn middle(layout: &Layout, file: &GuideFile, pixels: &Pixels) -> DVec2 {
    let eye = optics::View::of(layout);
    let own = |item| {
        layout
            .exposures
            .iter()
            .find(|e| e.id == file.exposure)
            .is_some_and(|e| e.states.iter().any(|s| s.item == item))
    };
    let hands = layout.hands.iter().filter(|h| h.exposure == file.exposure);
    let mut all: Vec<DVec2> = Vec::new();
    for hand in hands {
        let arm = arm(layout, hand);
        all.extend(lifted(&[arm.wrist, arm.tip], eye, f64::from(hand.height)));
    }
    if all.is_empty() {
        let things = layout.items.iter().filter(|i| own(i.id));
        all.extend(things.map(|i| i.at.vec()));
    }
    let seen: Vec<DVec2> = all.iter().map(|p| pixels.pixel(*p)).collect();
    Bounds::around(&seen).map_or(dvec2(0.0, 0.0), |b| b.centre())
}
