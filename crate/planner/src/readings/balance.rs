//! Balance: where does the weight sit?
//!
//! Score S1 = 100·exp(−5·(|X−W/2|+|Y−H/2|)/(W/2+H/2)) of the mass centroid
//! (form of Zhang & Xue, doi:10.3390/sym18010041), shown as a band over the
//! weight of chroma. Craft convention: an observation, silent until asked.
use super::finding::{Finding, Grade, Mark, State};
use super::mass::{dishes, on_table, picture_size};
use super::study::Study;
use crate::layout::Point;
use crate::measures::{Weighed, balance_score_of, centroid, score_band};
use crate::words::{Arg, place, say};

/// Below this score the weight is said to sit aside: what half of all random
/// layouts stay under (composition measures, random baseline). Our choice.
const ASIDE_BELOW: f64 = 50.0;

fn weights(study: &Study<'_>) -> Vec<Weighed> {
    dishes(study).into_iter().flat_map(|d| d.parts).collect()
}

/// S1 at chroma weight 1; `None` when nothing weighs anything.
pub(super) fn score(study: &Study<'_>) -> Option<f64> {
    balance_score_of(picture_size(study), &weights(study), 1.0)
}

/// The observation, when the weight sits aside.
pub(super) fn read(study: &Study<'_>) -> Option<Finding> {
    if !study.has_three_dishes() {
        return None;
    }
    let parts = weights(study);
    let size = picture_size(study);
    let score = balance_score_of(size, &parts, 1.0)?;
    let masses: Vec<_> = parts.iter().map(|p| p.mass(1.0)).collect();
    let at = on_table(study, centroid(&masses)?);
    let [low, high] = score_band(size, &parts)?;
    let frame = &study.layout().frame;
    let band = [
        ("low", Arg::Text(format!("{low:.0}"))),
        ("high", Arg::Text(format!("{high:.0}"))),
    ];
    (score < ASIDE_BELOW).then(|| Finding {
        key: "balance".into(),
        reading: "balance",
        state: State::LookAgain,
        rank: 3,
        figure: score,
        about: Vec::new(),
        sentence: say(
            "balance-lean",
            &[(
                "place",
                Arg::Text(place(Point::nearest(aside(study, at)), frame)),
            )],
        ),
        working: vec![say("working-balance", &band)],
        grade: Grade::PublishedMeasure,
        taste: true,
        marks: vec![Mark::Arrow {
            from: frame.at.vec(),
            to: at,
        }],
        remedy: None,
    })
}

/// The direction of the weight as a place: the centroid's offset carried out
/// to the picture's thirds, since it never gets far from the middle itself.
fn aside(study: &Study<'_>, at: glam::DVec2) -> glam::DVec2 {
    let frame = &study.layout().frame;
    let centre = frame.at.vec();
    let reach = f64::from(frame.width) * 0.3;
    centre + (at - centre).normalize_or_zero() * reach
}
