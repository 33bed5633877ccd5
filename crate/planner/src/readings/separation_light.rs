//! Separation after light: pale edges that colour loses and shadow draws.
//!
//! Along the lost runs of an outline the colours on both sides are taken in the
//! light that falls there, in linear light: the thing at its top past all other
//! things, the ground beside it in the thing's own shadow too. Exposed is for
//! the hero.
use glam::DVec2;

use super::finding::{Finding, State};
use super::rules::SEPARATION_DRAWN;
use super::study::Study;
use super::walked::PartWalk;
use crate::colour::{Shade, mixed_separation, under_light};
use crate::layout::Id;
use crate::optics::View;
use crate::scene::{Ground, PartKind, REACH, rise, root};
use crate::words::{Arg, listed, percent, say};

/// Drawn along this share of its outline, a form is read. Our choice: a light
/// from one side draws no more than half of it.
pub(super) const DRAWN_FROM: f64 = 0.3;
/// Places looked at along what one part loses.
const PLACES: f64 = 24.0;

/// Share of a part's outline that colour loses and shadow draws.
pub(super) fn drawn_share(study: &Study<'_>, walk: &PartWalk, exposed: f64) -> f64 {
    let scene = study.scene();
    let piece = &scene.pieces[walk.piece];
    let Some(ground) = walk.chief_ground() else {
        return 0.0;
    };
    let top = height(study, piece.owner, piece.part);
    let floor = match ground {
        Ground::Floor => return 0.0,
        Ground::Piece(n) => height(study, scene.pieces[n].owner, scene.pieces[n].part),
    };
    let stack = root(study.layout(), piece.owner);
    let long = |line: &[DVec2]| line.windows(2).map(|p| p[0].distance(p[1])).sum::<f64>();
    let whole: f64 = walk.runs.iter().map(|r| long(&r.0)).sum();
    let step = (whole / PLACES).max(1.0);
    let (mut drawn, mut next, mut done) = (0.0, step * 0.5, 0.0);
    let lit = study.lit();
    for (line, share) in &walk.runs {
        for pair in line.windows(2) {
            let (along, length) = (pair[1] - pair[0], pair[0].distance(pair[1]));
            while next < done + length {
                let on = pair[0] + along * ((next - done) / length);
                next += step;
                let aside = along.normalize_or_zero().perp() * REACH;
                let outward = if piece.region.contains(on + aside) {
                    -aside
                } else {
                    aside
                };
                let inner = under(scene.view, on - outward, top).extend(top);
                let outer = under(scene.view, on + outward, floor).extend(floor);
                let own = shone(&piece.shades, lit.on(inner, stack) / exposed);
                let other = shone(scene.shades_of(ground), lit.at(outer) / exposed);
                let left = mixed_separation(&own, &other).map_or(*share, |m| m.lost);
                drawn += step * (share - left).max(0.0);
            }
            done += length;
        }
    }
    (drawn / walk.length).min(walk.lost)
}

/// How high the top of a thing is.
fn height(study: &Study<'_>, owner: Id, part: PartKind) -> f64 {
    match (part, study.item(owner)) {
        (PartKind::Rim | PartKind::Food, Some(item)) => rise(study.layout(), item).top,
        _ => 0.0,
    }
}

/// Over which place of the table a point at height `z` lies that is seen here.
fn under(view: View, seen: DVec2, z: f64) -> DVec2 {
    match view {
        View::Above => seen,
        View::Lens { under, .. } => under + (seen - under) / view.scale(z),
    }
}

fn shone(shades: &[Shade], times: f64) -> Vec<Shade> {
    let lit = |s: &Shade| Shade {
        lab: under_light(s.lab, times),
        share: s.share,
    };
    shades.iter().map(lit).collect()
}

/// What shadow draws, told when all is.
pub(super) fn drawn(study: &Study<'_>, walks: &[&PartWalk]) -> Option<Finding> {
    if walks.is_empty() || !study.tells_all() {
        return None;
    }
    let exposed = super::light::exposed_for(study)?;
    let owner = |w: &PartWalk| study.scene().pieces[w.piece].owner;
    let mut about: Vec<Id> = walks.iter().map(|w| owner(w)).collect();
    about.dedup();
    let key = "separation:drawn".into();
    let figure = about.len() as f64;
    let state = (State::Holds, 3);
    let mut f = Finding::by(&SEPARATION_DRAWN, key, state, figure, about);
    let mut names: Vec<String> = f.about.iter().map(|id| study.name(*id)).collect();
    names.dedup();
    f.sentence = say("separation-drawn", &[("things", Arg::Text(listed(&names)))]);
    f.working = vec![say("working-drawn", &[])];
    f.working.extend(walks.iter().map(|walk| {
        let after = walk.lost - drawn_share(study, walk, exposed);
        let args = [
            ("thing", Arg::Name(study.name(owner(walk)))),
            ("share", Arg::Text(percent(walk.lost))),
            ("after", Arg::Text(percent(after))),
        ];
        say("working-drawn-part", &args)
    }));
    Some(f)
}
