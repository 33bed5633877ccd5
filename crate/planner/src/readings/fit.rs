//! Fit: does the frame stay on the board, and the camera under the ceiling?
//!
//! Thin lens: the lens stands s = f·(1 + W/sensor width) above the table
//! (OpenStax College Physics 25.6), and the body behind it needs the image
//! distance and its own depth besides.
use glam::DVec2;

use super::finding::{Finding, Grade, Mark, State};
use super::study::Study;
use crate::optics::{Sensor, distance_for_width, image_distance};
use crate::shape::{CHORD_ERROR, contains, frame_outline, table_outline};
use crate::words::{Arg, length, say};

/// Room the camera body, head and cable take above the sensor, mm. Our choice.
pub(super) const BODY: f64 = 100.0;
/// The usual spare width of a surface round the frame (10 to 20%, common
/// practice, no source).
const MARGIN: f64 = 0.10;

/// The findings about frame, table and ceiling.
pub(super) fn read(study: &Study<'_>) -> Vec<Finding> {
    let mut out = vec![];
    out.extend(ceiling(study));
    out.extend(board(study));
    out
}

fn finding(key: &str, state: State, rank: u8, figure: f64, sentence: String) -> Finding {
    Finding {
        key: key.into(),
        reading: "fit",
        state,
        rank,
        figure,
        about: Vec::new(),
        sentence,
        working: vec![say("working-fit", &[])],
        grade: Grade::Physics,
        taste: false,
        marks: Vec::new(),
        remedy: None,
    }
}

/// Whether lens, body and table together stay under the ceiling.
fn ceiling(study: &Study<'_>) -> Option<Finding> {
    let l = study.layout();
    let units = l.head.units;
    let sensor = Sensor::of(l.camera.format);
    let focal = f64::from(l.camera.focal);
    // The sensor's long side lies along the frame's long side.
    let long = f64::from(l.frame.width).max(l.frame.height());
    let lens = distance_for_width(sensor.width, focal, long)?;
    let needed = f64::from(l.table.height) + lens + image_distance(focal, lens)? + BODY;
    let room = f64::from(l.rig.ceiling) - needed;
    let text = |mm: f64| Arg::Text(length(mm, units));
    Some(if room < 0.0 {
        let args = [("needed", text(needed)), ("over", text(-room))];
        finding(
            "fit:ceiling",
            State::WontWork,
            1,
            -room,
            say("fit-ceiling", &args),
        )
    } else {
        let args = [("height", text(lens)), ("room", text(room))];
        finding(
            "fit:ceiling",
            State::Holds,
            3,
            room,
            say("fit-holds", &args),
        )
    })
}

/// Whether the frame stays on the table, with room to spare.
fn board(study: &Study<'_>) -> Option<Finding> {
    let l = study.layout();
    let table = table_outline(&l.table, CHORD_ERROR);
    let frame = frame_outline(&l.frame);
    let middle = l.frame.at.vec();
    let name = Arg::Name(l.table.surface.name.clone());
    // How far out of the table the frame's sides run, and how much is spare.
    let mut over = 0.0_f64;
    let mut spare = f64::INFINITY;
    let mut marks = Vec::new();
    for n in 0..4 {
        let (a, b) = (frame[n], frame[(n + 1) % 4]);
        let out = ((a + b) * 0.5 - middle).normalize_or_zero();
        let reach = |p: DVec2| inside_by(&table, p, out);
        let least = [a, a.lerp(b, 0.25), a.lerp(b, 0.5), a.lerp(b, 0.75), b]
            .into_iter()
            .map(reach)
            .fold(f64::INFINITY, f64::min);
        spare = spare.min(least);
        if least < 0.0 {
            over = over.max(-least);
            let strip = vec![a, b, b + out * least, a + out * least];
            marks.push(Mark::Overrun {
                outline: strip,
                label: length(-least, l.head.units),
            });
        }
    }
    let text = |mm: f64| Arg::Text(length(mm, l.head.units));
    if over >= 1.0 {
        let args = [("over", text(over)), ("ground", name)];
        let mut f = finding(
            "fit:board",
            State::LookAgain,
            1,
            over,
            say("fit-board", &args),
        );
        f.marks = marks;
        return Some(f);
    }
    (spare < f64::from(l.frame.width) * MARGIN).then(|| {
        let args = [("over", text(spare.max(0.0))), ("ground", name)];
        let mut f = finding(
            "fit:margin",
            State::LookAgain,
            3,
            spare,
            say("fit-margin", &args),
        );
        f.grade = Grade::TradePractice;
        f.taste = true;
        f
    })
}

/// How far `p` may still go in direction `out` before it leaves the table; if
/// it is off already, minus the way back. To the millimetre.
fn inside_by(table: &[DVec2], p: DVec2, out: DVec2) -> f64 {
    let inside = contains(table, p);
    let (mut near, mut far) = (0.0, 20_000.0);
    let sign = if inside { 1.0 } else { -1.0 };
    if contains(table, p + out * sign * far) == inside {
        return sign * far;
    }
    while far - near > 0.5 {
        let mid = (near + far) * 0.5;
        if contains(table, p + out * sign * mid) == inside {
            near = mid
        } else {
            far = mid
        }
    }
    sign * near.round()
}
