//! Tops that cross a crop's line while the foot stands inside.
use glam::DVec2;

use super::super::finding::{Finding, State};
use super::super::rules::LEAN_CROP;
use super::super::study::{Study, Words};
use super::{Leaning, leaning, remedy};
use crate::edit::Edit;
use crate::layout::{Crop, Id};
use crate::scene::silhouette;
use crate::shape::Bounds;
use crate::words::{Arg, length, listed, say};

use super::super::Remedy;

/// Room a moved thing leaves to the line, mm. Our choice.
const CLEAR: f64 = 5.0;

/// A stack whose top is past a line.
struct Past {
    leaning: Leaning,
    /// How far, mm, and which way in the picture's own directions.
    over: f64,
    out: DVec2,
}

/// One finding for all tops that a crop cuts off things which stand in it,
/// but for what it has to keep whole: that is said of the crop.
pub(in super::super) fn tops(
    study: &Study<'_>,
    crop: &Crop,
    kept: &[Id],
    settled: bool,
) -> Option<Finding> {
    let mut past: Vec<Past> = leaning(study)
        .into_iter()
        .filter(|l| !kept.contains(&l.id))
        .filter_map(|l| past(study, crop, l))
        .collect();
    crate::order::sort(&mut past, |a, b| {
        b.over
            .total_cmp(&a.over)
            .then(a.leaning.id.cmp(&b.leaning.id))
    });
    let first = past.first()?;
    let mut about: Vec<Id> = past.iter().map(|p| p.leaning.id).collect();
    about.push(crop.id);
    let key = format!("lean:crop:{}", crop.id.0);
    let state = (State::LookAgain, 3);
    let mut f = Finding::by(&LEAN_CROP, key, state, first.over, about);
    f.marks = past.iter().flat_map(|p| p.leaning.marks(study)).collect();
    let units = study.layout().head.units;
    f.sentence = study.sentence(|| {
        let ids: Vec<Id> = past.iter().map(|p| p.leaning.id).collect();
        let args = [
            ("thing", Arg::Name(study.name(first.leaning.id))),
            ("things", Arg::Text(listed(&study.names(&ids)))),
            ("count", Arg::Text(past.len().to_string())),
            ("crop", Arg::Name(crop.name.clone())),
            ("over", Arg::Text(length(first.over, units))),
        ];
        let id = match past.len() {
            1 => "lean-crop",
            _ => "lean-crop-several",
        };
        say(id, &args)
    });
    f.working = study.tell(|| vec![say("working-lean-crop", &[])]);
    if let (true, [one]) = (settled, past.as_slice()) {
        f.remedy = inside(study, crop, kept, one, &f);
    }
    Some(f)
}

/// A stack whose foot the crop holds and whose top it cuts off.
fn past(study: &Study<'_>, crop: &Crop, leaning: Leaning) -> Option<Past> {
    let picture = study.picture_of(Some(crop));
    let boxed = |outline: &[DVec2]| {
        let own: Vec<DVec2> = outline.iter().map(|p| picture.of_table(*p)).collect();
        Bounds::around(&own)
    };
    let foot = boxed(&silhouette(study.item(leaning.id)?))?;
    let inside = foot.min.min_element() >= 0.0 && foot.max.cmple(picture.size).all();
    if !inside {
        return None;
    }
    let layout = study.layout();
    let outlines = study.scene().touchable.iter();
    let own = outlines.filter(|(id, _)| crate::scene::root(layout, *id) == leaning.id);
    let own: Vec<DVec2> = own.flat_map(|(_, outline)| outline.clone()).collect();
    let seen = boxed(&own)?;
    // Left, up, right, down.
    let [low, high] = [-seen.min, seen.max - picture.size];
    let (over, out) = [
        (low.x, DVec2::NEG_X),
        (low.y, DVec2::NEG_Y),
        (high.x, DVec2::X),
        (high.y, DVec2::Y),
    ]
    .into_iter()
    .max_by(|a, b| a.0.total_cmp(&b.0))?;
    let side = seen.size().dot(out.abs());
    (over >= side * LEAN_CROP.edges[0]).then_some(Past { leaning, over, out })
}

/// The thing moved in from the line, or something lower in its place.
fn inside(
    study: &Study<'_>,
    crop: &Crop,
    kept: &[Id],
    past: &Past,
    finding: &Finding,
) -> Option<Remedy> {
    let picture = study.picture_of(Some(crop));
    let id = past.leaning.id;
    // What stands nearer to the middle also leans less, so this is enough.
    let inwards = -past.out * (past.over + CLEAR);
    let by = picture.on_table(inwards) - picture.on_table(DVec2::ZERO);
    let mut tries: Vec<remedy::Try> = remedy::moved(study, id, by).into_iter().collect();
    tries.extend(remedy::lower(study, id));
    tries.into_iter().find_map(|(act, after)| {
        let changed = study.changed(&after);
        changed.say_only(Words::None);
        if tops(&changed, crop, kept, false).is_some() || spoils(study, &after, finding) {
            return None;
        }
        Some(Remedy {
            act,
            predicted: say("clear", &[]),
            after: 0.0,
            edit: Edit::between(study.layout(), &after),
        })
    })
}

/// Whether a change spoils a crop or leans over a dish that was free.
fn spoils(study: &Study<'_>, after: &crate::layout::Layout, finding: &Finding) -> bool {
    let changed = study.changed(after);
    let over = |study: &Study<'_>| {
        let id = finding.about[0];
        super::hidden(study, id).first().map_or(0.0, |o| o.1)
    };
    super::super::crops::spoils(study, after) || over(&changed) > over(study).max(0.0)
}
