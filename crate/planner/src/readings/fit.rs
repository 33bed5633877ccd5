//! Fit: does the frame stay on the board, and the camera under the ceiling?
//!
//! Thin lens: the lens stands s = f·(1 + W/sensor width) above the table
//! (OpenStax College Physics 25.6), and the body behind it needs the image
//! distance and its own depth besides.
use glam::DVec2;

use super::finding::{Finding, Grade, Mark, State};
use super::study::Study;
use crate::optics::{Sensor, distance_for_width, image_distance};
use crate::shape::{CHORD_ERROR, Region, contains, difference, frame_outline, table_outline};
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
    let name = Arg::Name(l.table.surface.name.clone());
    let text = |mm: f64| Arg::Text(length(mm, l.head.units));
    // The farthest place of a polygon from a convex table is one of its corners.
    let away = |p: &DVec2| to_edge(&table, *p);
    let off = |p: &&DVec2| !contains(&table, **p);
    let over = frame.iter().filter(off).map(away).fold(0.0, f64::max);
    if over >= 1.0 {
        let args = [("over", text(over)), ("ground", name)];
        let mut f = finding(
            "fit:board",
            State::LookAgain,
            1,
            over,
            say("fit-board", &args),
        );
        f.marks = overrun(&frame, &table, &length(over, l.head.units));
        return Some(f);
    }
    // Inside a convex table the least room is at a corner too.
    let spare = frame.iter().map(away).fold(f64::INFINITY, f64::min);
    (spare < f64::from(l.frame.width) * MARGIN).then(|| {
        let args = [("over", text(spare)), ("ground", name)];
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

/// What of the frame lies off the table.
fn overrun(frame: &[DVec2], table: &[DVec2], label: &str) -> Vec<Mark> {
    let areas = Region::from_polygon(frame).and_then(|f| {
        let table = Region::from_polygon(table)?;
        difference(&f, &[&table])
    });
    let mark = |ring: &Vec<DVec2>| Mark::Overrun {
        outline: ring.clone(),
        label: label.into(),
    };
    areas.map_or_else(|_| Vec::new(), |r| r.rings().iter().map(mark).collect())
}

/// Distance from `p` to the nearest place on the table's edge, mm.
fn to_edge(table: &[DVec2], p: DVec2) -> f64 {
    (0..table.len())
        .map(|n| {
            let (a, b) = (table[n], table[(n + 1) % table.len()]);
            let side = b - a;
            let along = (p - a).dot(side) / side.length_squared().max(1e-9);
            p.distance(a + side * along.clamp(0.0, 1.0))
        })
        .fold(f64::INFINITY, f64::min)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{Layout, LayoutId, Point, TableShape};

    fn said(layout: &Layout, key: &str) -> Option<Finding> {
        read(&Study::new(layout)).into_iter().find(|f| f.key == key)
    }

    /// A board of 1200 × 900 mm under a 3:2 frame of 1050 × 700 mm.
    fn empty() -> Layout {
        Layout::empty(LayoutId(1))
    }

    #[test]
    fn a_frame_off_one_side_runs_over_by_just_that() {
        let mut layout = empty();
        layout.frame.at = Point::new(447, 450);
        let f = said(&layout, "fit:board").expect("78 mm of floor on the left");
        assert!(
            (f.figure - 78.0).abs() < 1e-9,
            "525 - 447 mm, got {}",
            f.figure
        );
        assert!(!f.marks.is_empty(), "the strip is drawn");
    }

    #[test]
    fn a_frame_off_at_a_corner_has_a_sane_figure() {
        let mut layout = empty();
        layout.frame.at = Point::new(495, 310);
        let f = said(&layout, "fit:board").expect("30 and 40 mm off");
        assert!(
            (f.figure - 50.0).abs() < 1e-9,
            "the 3-4-5 corner, got {}",
            f.figure
        );
    }

    #[test]
    fn corners_off_a_round_table_are_seen() {
        let mut layout = empty();
        layout.table.shape = TableShape::Round;
        layout.table.depth = 1200;
        layout.frame.at = Point::new(600, 600);
        let f = said(&layout, "fit:board").expect("its corners show floor");
        let corner = libm::sqrt(525.0 * 525.0 + 350.0 * 350.0);
        assert!(
            (f.figure - (corner - 600.0)).abs() < 0.1,
            "got {}",
            f.figure
        );
    }

    #[test]
    fn margin_is_said_below_a_tenth_and_not_above() {
        let mut layout = empty();
        assert!(
            said(&layout, "fit:margin").is_some(),
            "75 mm of 1050 is under a tenth"
        );
        layout.frame.width = 990;
        assert!(
            said(&layout, "fit:margin").is_none(),
            "105 mm of 990 is over"
        );
    }

    #[test]
    fn a_low_ceiling_wont_work_and_says_who_decides() {
        let mut layout = empty();
        layout.rig.ceiling = 2000;
        let f = said(&layout, "fit:ceiling").expect("always said");
        assert_eq!(f.state, State::WontWork, "{}", f.sentence);
        assert!(
            f.sentence.contains("qualified grip"),
            "the caution: {}",
            f.sentence
        );
    }
}
