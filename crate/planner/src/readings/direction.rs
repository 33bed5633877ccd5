//! Direction: what points into the picture, what out of it, and what into the
//! type?
//!
//! Each thing with a handle, spout, tip, nose or sprig has a line along it, a
//! hand its fingers. It points out when it points away from the middle and
//! its line leaves the picture soon after its end. Things that face into the
//! frame are preferred (Palmer, Gardner and Wickens 2008, single objects); for
//! a table it is craft convention, worded as an observation and silent until
//! asked. Tips that point into copy space are said: they lead the eye off the
//! words. Whether chopsticks stand upright in rice cannot be told from above.
use glam::DVec2;

use super::crops;
use super::finding::{Finding, Mark, Remedy, State};
use super::picture::Picture;
use super::remedies::stands_clear_by;
use super::rules::{DIRECTION_COPY, DIRECTION_OUT};
use super::space::{copy_area, takes_copy};
use super::study::Study;
use crate::commands::turn_by;
use crate::edit::Edit;
use crate::figure::{Pointer, pointing};
use crate::layout::{Crop, Id, Layout, Role};
use crate::scene::arm;
use crate::shape::Bounds;
use crate::words::{Arg, listed, say};

/// A turned thing keeps this clear of others, mm. Our choice.
const CLEAR: f64 = 3.0;

/// A thing that points, on the table.
struct Points {
    id: Id,
    /// What points; none for a hand.
    what: Option<Pointer>,
    from: DVec2,
    to: DVec2,
}

impl Points {
    /// Its end and the way it points, in a picture.
    fn within(&self, picture: &Picture) -> (DVec2, DVec2) {
        let [from, to] = [self.from, self.to].map(|p| picture.of_table(p));
        (to, (to - from).normalize_or(DVec2::X))
    }

    fn arrow(&self) -> Mark {
        Mark::Arrow {
            from: self.from,
            to: self.to,
        }
    }
}

/// All that points and is in the picture, in id order.
fn all(study: &Study<'_>) -> Vec<Points> {
    let layout = study.layout();
    let mut out = Vec::new();
    for item in &layout.items {
        if let Some(p) = pointing(item) {
            let at = item.at.vec();
            out.push(Points {
                id: item.id,
                what: Some(p.what),
                from: at + p.from,
                to: at + p.to,
            });
        }
    }
    for hand in &layout.hands {
        let arm = arm(layout, hand);
        out.push(Points {
            id: hand.id,
            what: None,
            from: arm.wrist,
            to: arm.tip,
        });
    }
    let picture = study.picture();
    out.retain(|p| super::space::whole(&picture).holds(picture.of_table(p.to)));
    crate::order::sort(&mut out, |a, b| a.id.cmp(&b.id));
    out
}

/// The sides a thing can point out at, and the words for each.
const SIDES: [(&str, &str); 4] = [
    ("left", "side-left"),
    ("right", "side-right"),
    ("top", "side-top"),
    ("bottom", "side-bottom"),
];

/// The side a line leaves the picture at, when it points out of it.
fn out_at(picture: &Picture, points: &Points) -> Option<usize> {
    let (tip, along) = points.within(picture);
    let size = picture.size;
    let far = |room: f64, speed: f64| {
        if speed > 0.0 {
            room / speed
        } else {
            f64::INFINITY
        }
    };
    let ways = [
        far(tip.x, -along.x),
        far(size.x - tip.x, along.x),
        far(tip.y, -along.y),
        far(size.y - tip.y, along.y),
    ];
    let side = (0..4).min_by(|a, b| ways[*a].total_cmp(&ways[*b]))?;
    let soon = ways[side] < DIRECTION_OUT.edges[0] * picture.diagonal();
    (soon && along.dot(size * 0.5 - tip) < 0.0).then_some(side)
}

/// What points out, side by side; or that nothing does.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    if !study.has_three_dishes() {
        return Vec::new();
    }
    let (all, picture) = (all(study), study.picture());
    let mut out = Vec::new();
    for (side, (name, words)) in SIDES.iter().enumerate() {
        let own: Vec<&Points> = all
            .iter()
            .filter(|p| out_at(&picture, p) == Some(side))
            .collect();
        if own.is_empty() {
            continue;
        }
        let key = format!("direction:{name}");
        let mut f = finding(study, key, (State::LookAgain, 3), &own);
        f.sentence = study.sentence(|| sentence(study, &own, words));
        if settled {
            let left = |layout: &Layout| {
                let then = self::all(&study.changed(layout));
                let turned = then.iter().filter(|p| own.iter().any(|o| o.id == p.id));
                let mut sides = turned.filter_map(|p| out_at(&picture, p));
                let stay = sides.clone().filter(|s| *s == side).count();
                // Out at another side is no better.
                sides.all(|s| s == side).then_some(stay)
            };
            f.remedy = study.remedy(&f.key, &|| turned(study, &own, &left));
        }
        out.push(f);
    }
    if out.is_empty() && !all.is_empty() {
        let every: Vec<&Points> = all.iter().collect();
        let mut f = finding(study, "direction".into(), (State::Holds, 3), &every);
        f.figure = 0.0;
        f.sentence = study.sentence(|| say("direction-in", &[]));
        out.push(f);
    }
    out
}

fn finding(study: &Study<'_>, key: String, state: (State, u8), own: &[&Points]) -> Finding {
    let about = own.iter().map(|p| p.id).collect();
    let mut f = Finding::by(&DIRECTION_OUT, key, state, own.len() as f64, about);
    f.marks = own.iter().map(|p| p.arrow()).collect();
    f.working = study.tell(|| vec![say("working-direction", &[])]);
    f
}

fn sentence(study: &Study<'_>, own: &[&Points], side: &str) -> String {
    let what = own[0].what;
    let alike = own.iter().all(|p| p.what == what);
    let id = match (own.len(), alike, what) {
        (1, _, None) => "direction-hand",
        (1, ..) => "direction-thing",
        (_, true, None) => "direction-hands",
        (_, true, Some(Pointer::Handle)) => "direction-handles",
        (_, true, Some(Pointer::Spout)) => "direction-spouts",
        (_, true, Some(Pointer::Tip)) => "direction-tips",
        _ => "direction-things",
    };
    let ids: Vec<Id> = own.iter().map(|p| p.id).collect();
    let names = study.names(&ids);
    let args = [
        ("count", Arg::Text(own.len().to_string())),
        ("things", Arg::Text(listed(&names))),
        ("side", Arg::Text(say(side, &[]))),
    ];
    say(id, &args)
}

/// Tips that point into the copy space of a crop from near by.
pub(super) fn into_copy(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let crops = study.layout().crops.iter();
    let one = |crop| {
        let own = at_copy(study, crop);
        let own: Vec<&Points> = own.iter().collect();
        own.first()?;
        let key = format!("direction:{}:copy", crop.id.0);
        let mut f = finding(study, key, (State::LookAgain, 3), &own);
        f.rule = &DIRECTION_COPY;
        (f.taste, f.grade) = (f.rule.taste, f.rule.grade);
        f.about.push(crop.id);
        f.sentence = study.sentence(|| {
            let ids: Vec<Id> = own.iter().map(|p| p.id).collect();
            let names = study.names(&ids);
            let args = [
                ("crop", Arg::Name(crop.name.clone())),
                ("things", Arg::Text(listed(&names))),
            ];
            say("direction-copy", &args)
        });
        if settled {
            let left = |layout: &Layout| {
                let then = study.changed(layout);
                let crop = layout.crops.iter().find(|c| c.id == crop.id)?;
                Some(at_copy(&then, crop).len())
            };
            f.remedy = study.remedy(&f.key, &|| turned(study, &own, &left));
        }
        Some(f)
    };
    crops.filter_map(one).collect()
}

/// The tips that point into the copy space of a crop and do not lie in it.
fn at_copy(study: &Study<'_>, crop: &Crop) -> Vec<Points> {
    let Some(copy) = copy_area(study, crop) else {
        return Vec::new();
    };
    let picture = study.picture_of(Some(crop));
    let own: Vec<DVec2> = copy.iter().map(|p| picture.of_table(*p)).collect();
    let Some(space) = Bounds::around(&own) else {
        return Vec::new();
    };
    let reach = DIRECTION_COPY.edges[0] * picture.diagonal();
    let mut out = all(study);
    out.retain(|p| {
        let (tip, along) = p.within(&picture);
        p.what == Some(Pointer::Tip)
            && enters(space, tip, along).is_some_and(|far| far < reach)
            && !takes_copy(study, &copy, p.id)
    });
    out
}

/// How far along a line a box begins; `None` when the line misses it.
fn enters(b: Bounds, from: DVec2, along: DVec2) -> Option<f64> {
    let (mut near, mut far) = (0.0_f64, f64::INFINITY);
    for (at, way, low, high) in [
        (from.x, along.x, b.min.x, b.max.x),
        (from.y, along.y, b.min.y, b.max.y),
    ] {
        if way.abs() < 1e-9 {
            if at < low || at > high {
                return None;
            }
            continue;
        }
        let (one, other) = ((low - at) / way, (high - at) / way);
        near = near.max(one.min(other));
        far = far.min(one.max(other));
    }
    (near <= far).then_some(near)
}

/// Everything that can be turned, turned the shorter way to the hero or the
/// middle; `left` says how many are left then, `None` when it is no better.
fn turned(
    study: &Study<'_>,
    own: &[&Points],
    left: &dyn Fn(&Layout) -> Option<usize>,
) -> Option<Remedy> {
    let before = own.len();
    let mut after = study.layout().clone();
    let mut names: Vec<String> = Vec::new();
    for p in own {
        let Some(item) = study.item(p.id).filter(|i| i.on.is_none() && !i.locked) else {
            continue;
        };
        let Ok(act) = turn_by(&after, p.id, turn_in(study, p)) else {
            continue;
        };
        let mut then = after.clone();
        if act.edit.apply_checked(&mut then).is_err() {
            continue;
        }
        if stands_clear_by(&study.changed(&then), p.id, DVec2::ZERO, CLEAR) {
            after = then;
            names.push(study.name(item.id));
        }
    }
    let first = names.first()?.clone();
    let left = left(&after)?;
    if left >= before || crops::spoils(study, &after) {
        return None;
    }
    let args = [
        ("thing", Arg::Name(first)),
        ("count", Arg::Text(names.len().to_string())),
        ("before", Arg::Text(before.to_string())),
        ("after", Arg::Text(left.to_string())),
    ];
    let act = if names.len() == 1 {
        "act-turn-in"
    } else {
        "act-turn-in-several"
    };
    Some(Remedy {
        act: say(act, &args),
        predicted: say("predicted", &args),
        after: left as f64,
        edit: Edit::between(study.layout(), &after),
    })
}

/// The smaller turn that makes it point to the hero or to the middle of the
/// picture, in half degrees.
fn turn_in(study: &Study<'_>, p: &Points) -> i32 {
    let items = study.layout().items.iter();
    let hero = items.filter(|i| i.role == Role::Hero && i.id != p.id);
    let goals = hero.map(|i| i.at.vec()).chain([study.picture().at]);
    let about = study.item(p.id).map_or(p.from, |i| i.at.vec());
    let along = p.to - p.from;
    let turns = goals.map(|goal| {
        let to = goal - about;
        libm::atan2(along.perp_dot(to), along.dot(to)).to_degrees() * 2.0
    });
    let least = turns.min_by(|a, b| a.abs().total_cmp(&b.abs()));
    least.unwrap_or(0.0).round() as i32
}
