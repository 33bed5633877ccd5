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
    if settled {
        f.remedy = study.remedy(&f.key, &|| inside(study, crop, kept, &past, &f));
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
    let outlines = study.scene().touchable.iter();
    let own = outlines.filter(|(id, _)| study.root(*id) == leaning.id);
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

/// A stack moved in from the line. What stands nearer to the middle also leans
/// less, so as far as its top is past it is enough.
fn moved(study: &Study<'_>, crop: &Crop, past: &Past) -> Option<remedy::Try> {
    let picture = study.picture_of(Some(crop));
    let inwards = -past.out * (past.over + CLEAR);
    let by = picture.on_table(inwards) - picture.on_table(DVec2::ZERO);
    remedy::moved(study, past.leaning.id, by)
}

/// All of several moved in, one after the other.
fn all_moved(study: &Study<'_>, crop: &Crop, past: &[Past]) -> Option<remedy::Try> {
    let mut after = study.layout().clone();
    for one in past {
        let next = moved(&study.changed(&after), crop, one)?.1;
        after = next;
    }
    let mut names: Vec<String> = past.iter().map(|p| study.name(p.leaning.id)).collect();
    names.dedup();
    let things = Arg::Text(listed(&names));
    let crop = Arg::Name(crop.name.clone());
    let act = say("act-in-from-edge", &[("things", things), ("crop", crop)]);
    Some((act, after))
}

/// The things moved in from the line, something lower in the place of one, or a
/// longer lens, from which all lean less.
fn inside(
    study: &Study<'_>,
    crop: &Crop,
    kept: &[Id],
    past: &[Past],
    finding: &Finding,
) -> Option<Remedy> {
    let mut tries: Vec<remedy::Try> = Vec::new();
    if let [one] = past {
        tries.extend(moved(study, crop, one));
        tries.extend(remedy::lower(study, one.leaning.id));
    } else {
        tries.extend(all_moved(study, crop, past));
    }
    tries.extend(remedy::longer(study));
    let ((act, after), left) = study.first_that(&finding.key, tries, &|(_, after)| {
        let changed = study.changed(after);
        changed.say_only(Words::None);
        let clear = tops(&changed, crop, kept, false).is_none();
        (clear && !spoils(study, after, finding)).then_some(0.0)
    })?;
    Some(Remedy {
        act,
        predicted: say("clear", &[]),
        after: left,
        edit: Edit::between(study.layout(), &after),
    })
}

/// Whether a change spoils a crop or leans over a dish that was free.
fn spoils(study: &Study<'_>, after: &crate::layout::Layout, finding: &Finding) -> bool {
    let changed = study.changed(after);
    let over = |study: &Study<'_>, id: Id| {
        let hidden = super::hidden(study, id);
        hidden.first().map_or(0.0, |o| o.1.max(0.0))
    };
    let leans = |id: &Id| over(&changed, *id) > over(study, *id);
    super::super::crops::spoils(study, after) || finding.about.iter().any(leans)
}

#[cfg(test)]
mod tests {
    use crate::layout::Layout;
    use crate::readings::samples::{after, laid, said};

    /// Two posts 400 mm high whose tops are seen from 880 to 1035.5, and a crop
    /// that ends at 1012.
    fn two() -> Layout {
        let post = |id: u16, y: i32| {
            format!(
                r#"{{"id":{id},"number":{id},"name":"post {id}","prop":"nothing-known","height":400,
                "at":[900,{y}],"size":{{"shape":"rect","width":40,"depth":40}}}}"#
            )
        };
        laid(&format!(
            r#""items":[{},{}],"rig":{{"ceiling":6000}},
            "crops":[{{"id":9,"name":"page","ratio":[1,1],"at":[712,450],"width":600}}]"#,
            post(1, 380),
            post(2, 520)
        ))
    }

    #[test]
    fn several_tops_past_a_line_are_moved_in_or_take_a_longer_lens() {
        let mut layout = two();
        let f = said(&layout, "lean:crop:9").expect("two tops");
        assert!(f.sentence.contains('2'), "{}", f.sentence);
        let moved = after(&layout, &f);
        for (then, now) in moved.items.iter().zip(&layout.items) {
            assert!(then.at.x < now.at.x, "{:?}", f.remedy);
        }
        assert!(said(&moved, "lean:crop:9").is_none(), "cured");
        layout.items[1].locked = true;
        let f = said(&layout, "lean:crop:9").expect("two tops");
        let longer = after(&layout, &f);
        assert!(longer.camera.focal > 50, "{:?}", f.remedy);
        assert!(said(&longer, "lean:crop:9").is_none(), "cured");
        layout.rig.ceiling = 2_600;
        let f = said(&layout, "lean:crop:9").expect("two tops");
        assert!(f.remedy.is_none(), "{:?}", f.remedy);
    }
}
