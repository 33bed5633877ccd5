//! Glare: what does every level thing that shines mirror to the lens, and how
//! much of it?
//!
//! Angle in equals angle out on liquids, flat glossy dishes, glossy boards and
//! a polished table ([`crate::light::Mirror`]); each patch is cut to what is
//! seen of the surface it lies on, less what cards and things standing in a
//! ray's way hide of it. A surface that only gleams (satin) shows the
//! light as a soft shine, told and not judged. Rims and shoulders are told by
//! the place where they catch the light. Walls of glass, spoons and the insides
//! of bowls see everything about them: nothing is said of those.
mod remedy;
mod surfaces;
#[cfg(test)]
mod tests;

use glam::{DVec2, dvec3};

use super::finding::{Finding, Mark, State};
use super::rules::{GLARE, GLARE_RIMS, GLARE_TABLE};
use super::study::Study;
use crate::catalogue::is_several;
use crate::layout::{Finish, Id, LightShape, Role, Size};
use crate::light::{MIRRORED, Mirrored, Source, WATER, catches, fresnel};
use crate::optics::View;
use crate::order;
use crate::scene::rise;
use crate::shape::{Bounds, oval};
use crate::words::{Arg, fixed, length, listed, percent, say};
use surfaces::{Glare, glares, table_glare};

/// Radius of a rolled rim's section, mm. Our estimate.
const ROLLED: f64 = 2.0;
/// Breadth of the spot that marks a caught light, mm. Our choice.
const GLINT: f64 = 13.0;

/// The findings, with remedies when `settled`.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let mut found = Vec::new();
    let mut rest = glares(study);
    rest.retain(|g| g.share() >= GLARE.edges[0]);
    while let Some(first) = rest.first() {
        let like = (first.causes(), first.presses());
        let (same, other): (Vec<Glare>, Vec<Glare>) = rest
            .into_iter()
            .partition(|g| (g.causes(), g.presses()) == like);
        found.push(things(study, &same, settled));
        rest = other;
    }
    for of in [&[Mirrored::Light][..], &MIRRORED[1..]] {
        found.extend(table(study, of, settled));
    }
    if study.tells_all() {
        found.extend(rims(study));
    }
    found
}

/// Things that mirror the same, of which all press or none does.
fn things(study: &Study<'_>, same: &[Glare], settled: bool) -> Finding {
    let ids: Vec<Id> = same.iter().map(|g| g.id).collect();
    let causes = same[0].causes();
    let share = pooled(same);
    let pressing = same[0].presses();
    let key = key_of(&causes, pressing);
    let role = |g: &Glare| g.role == Role::Hero;
    let rank = if same.iter().any(role) { 2 } else { 3 };
    let state = if pressing {
        (State::LookAgain, rank)
    } else {
        (State::Holds, 3)
    };
    let mut f = Finding::by(&GLARE, key, state, share * 100.0, ids.clone());
    f.marks = same.iter().flat_map(Glare::marks).collect();
    f.sentence = study.sentence(|| {
        let first = study.name(ids[0]);
        let id = match (ids.as_slice(), is_several(&first)) {
            ([_], Some(false)) => "glare-one",
            ([_], Some(true)) => "glare-one-several",
            ([_], None) => "glare-one-any",
            _ => "glare-many",
        };
        let mut named = study.names(&ids);
        order::sort(&mut named, String::cmp);
        let args = [
            ("thing", Arg::Name(first)),
            ("count", Arg::Text(ids.len().to_string())),
            ("things", Arg::Text(listed(&named))),
            ("causes", Arg::Text(called(study, &causes))),
            ("share", Arg::Text(percent(share))),
        ];
        say(id, &args)
    });
    f.working = study.tell(|| {
        let mut lines: Vec<String> = study.of_crop().into_iter().collect();
        lines.push(say("working-glare", &[]));
        lines.extend(same.iter().map(|g| {
            let args = [
                ("thing", Arg::Name(study.name(g.id))),
                ("figure", Arg::Text(percent(g.share()))),
            ];
            say("working-line", &args)
        }));
        lines.extend(told(study, same, pressing));
        lines
    });
    if settled && pressing {
        f.remedy = study.remedy(&f.key, &|| remedy::found(study, &f.key, same));
    }
    f
}

/// What the table mirrors of these, in one finding.
fn table(study: &Study<'_>, of: &[Mirrored], settled: bool) -> Option<Finding> {
    let glare = table_glare(study, of)?;
    let sheen = glare.sheen;
    let share = glare.share();
    let [told_from, pressing_from] = GLARE_TABLE.edges;
    if share < told_from || (sheen && of[0] != Mirrored::Light) {
        return None;
    }
    let pressing = share >= pressing_from && !sheen;
    let sort = if of[0] == Mirrored::Light {
        "light"
    } else {
        "rig"
    };
    let state = if pressing {
        State::LookAgain
    } else {
        State::Holds
    };
    let key = ["glare:table:", sort].concat();
    let mut f = Finding::by(&GLARE_TABLE, key, (state, 3), share * 100.0, vec![Id(0)]);
    f.marks = glare.marks().collect();
    f.sentence = study.sentence(|| {
        let picture = study.picture();
        let corners: Vec<DVec2> = glare.points().map(|p| picture.of_table(p)).collect();
        let size = Bounds::around(&corners).map_or(DVec2::ZERO, Bounds::size);
        let units = study.layout().head.units;
        let args = [
            ("ground", Arg::Name(study.name(Id(0)))),
            ("causes", Arg::Text(called(study, &glare.causes()))),
            ("across", Arg::Text(length(size.x, units))),
            ("down", Arg::Text(length(size.y, units))),
            ("share", Arg::Text(percent(share))),
        ];
        say(if sheen { "glare-sheen" } else { "glare-table" }, &args)
    });
    f.working = study.tell(|| {
        let mut lines: Vec<String> = study.of_crop().into_iter().collect();
        lines.push(say("working-glare-table", &[]));
        lines.extend(told(study, core::slice::from_ref(&glare), pressing));
        lines
    });
    if settled && pressing {
        let own = core::slice::from_ref(&glare);
        f.remedy = study.remedy(&f.key, &|| remedy::found(study, &f.key, own));
    }
    Some(f)
}

/// Round rims and shoulders, and the place where each catches the light.
fn rims(study: &Study<'_>) -> Option<Finding> {
    let layout = study.layout();
    let View::Lens { under, height } = study.scene().view else {
        return None;
    };
    let lens = dvec3(under.x, under.y, height);
    let light = Source::of(layout).centre;
    let mut ids = Vec::new();
    let mut marks = Vec::new();
    for item in &layout.items {
        let shines = matches!(item.finish, Finish::Gloss | Finish::Clear | Finish::Liquid);
        let Size::Disc { diameter, rim } = item.size else {
            continue;
        };
        if !shines || (rim == 0 && item.finish != Finish::Clear) {
            continue;
        }
        let top = rise(layout, item).top;
        let at = item.at.vec();
        // A rim is rolled; a closed shoulder is round from its middle out.
        let (ring, tube) = if rim > 0 {
            (f64::from(diameter) * 0.5 - ROLLED, ROLLED)
        } else {
            (0.0, f64::from(diameter) * 0.5)
        };
        let centre = dvec3(at.x, at.y, (top - tube).max(0.0));
        let Some(p) = catches(centre, ring, tube, lens, light) else {
            continue;
        };
        let seen = study.scene().view.project(p.truncate(), p.z);
        if study.scene().frame.contains(seen) {
            ids.push(item.id);
            let outline = oval(seen, DVec2::splat(GLINT), 0.0, 0.5);
            marks.push(Mark::Glare { outline });
        }
    }
    let count = ids.len();
    order::sort(&mut ids, Id::cmp);
    let state = (State::Holds, 3);
    let key = "glare:rims".into();
    (count > 0).then(|| {
        let mut f = Finding::by(&GLARE_RIMS, key, state, count as f64, ids);
        f.marks = marks;
        let causes = called(study, &[Mirrored::Light]);
        let args = [
            ("count", Arg::Text(count.to_string())),
            ("thing", Arg::Name(study.name(f.about[0]))),
            ("causes", Arg::Text(causes)),
        ];
        let id = if count == 1 {
            "glare-rim"
        } else {
            "glare-rims"
        };
        f.sentence = say(id, &args);
        f.working = vec![say("working-glare-rims", &[])];
        f
    })
}

/// Causes as they are spoken of.
fn called(study: &Study<'_>, causes: &[Mirrored]) -> String {
    let names: Vec<String> = causes
        .iter()
        .map(|cause| {
            let window = study.layout().light.shape == LightShape::Window;
            say(
                match cause {
                    Mirrored::Light if window => "mirrored-window",
                    Mirrored::Light => "mirrored-light",
                    Mirrored::Camera => "mirrored-camera",
                    Mirrored::Arm => "mirrored-arm",
                    Mirrored::Photographer => "mirrored-photographer",
                    Mirrored::Card => "mirrored-card",
                },
                &[],
            )
        })
        .collect();
    listed(&names)
}

/// The key of what mirrors these.
fn key_of(causes: &[Mirrored], pressing: bool) -> String {
    let mut key = String::from("glare");
    for cause in causes {
        key.push_str(match cause {
            Mirrored::Light => ":light",
            Mirrored::Camera => ":camera",
            Mirrored::Arm => ":arm",
            Mirrored::Photographer => ":photographer",
            Mirrored::Card => ":card",
        });
    }
    if !pressing {
        key.push_str(":some");
    }
    key
}

/// Share of several surfaces together.
fn pooled(glares: &[Glare]) -> f64 {
    let sum = |of: fn(&Glare) -> f64| glares.iter().map(of).sum::<f64>();
    sum(|g| g.patch.area()) / sum(|g| g.whole).max(f64::MIN_POSITIVE)
}

/// How steep it is, what a polariser alone would do, and what else helps.
fn told(study: &Study<'_>, glares: &[Glare], pressing: bool) -> Vec<String> {
    let steepest = glares
        .iter()
        .filter_map(|g| Some(g.mirror.upright(g.middle()?)));
    let cosine = steepest.fold(0.0, f64::max);
    let [across, along] = fresnel(cosine, WATER);
    let args = [
        (
            "degrees",
            Arg::Text(fixed(libm::acos(cosine).to_degrees(), 0)),
        ),
        ("share", Arg::Text(percent((across + along) * 0.5))),
        (
            "part",
            Arg::Text(percent(1.0 - 2.0 * along / (across + along))),
        ),
    ];
    let mut lines = vec![say("working-glare-steep", &args)];
    if !pressing {
        return lines;
    }
    lines.push(say("working-glare-exposure", &[]));
    // A liquid stays level however its vessel is tilted.
    if let [one] = glares
        && !one.liquid
        && one.id != Id(0)
        && let Some(wedge) = wedge(one)
    {
        let args = [
            (
                "height",
                Arg::Text(length(wedge, study.layout().head.units)),
            ),
            ("thing", Arg::Name(study.name(one.id))),
        ];
        lines.push(say("working-glare-wedge", &args));
    }
    lines
}

/// What tilts a flat thing far enough under one edge that its mirrored spot
/// leaves it, mm: tilting by an angle moves the spot by the lens's height over
/// it times its tangent, and it has to pass all of the thing.
fn wedge(glare: &Glare) -> Option<f64> {
    let wide = glare.bounds?.size().max_element();
    let spot = glare.patch.bounds()?.size().max_element();
    let tilt = libm::atan((wide + spot) * 0.5 / glare.mirror.above);
    Some(wide * libm::sin(tilt))
}
