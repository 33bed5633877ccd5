//! Separation after light: edges that shadow draws or light takes.
//!
//! Along an outline the colours on both sides are taken in the light that falls
//! there, scaled in linear light: the thing at its top past all other things,
//! the ground beside it in the thing's own shadow too, all taken as level.
//! Exposed is for the hero. The floor is left as it is.
use std::cell::OnceCell;

use glam::DVec2;

use super::finding::{Finding, Remedy, State};
use super::light::{self, exposed_for};
use super::pace::Pace;
use super::rules::{SEPARATION_DRAWN, SEPARATION_TAKEN};
use super::separation::is_pressed;
use super::study::Study;
use super::walked::{PartWalk, Spot};
use crate::colour::{Shade, mixed_separation, under_light};
use crate::layout::{Id, Role};
use crate::measures::{overall_separation, separation_score};
use crate::optics::View;
use crate::order;
use crate::scene::{Ground, PartKind, Piece, REACH, effective_role, rise};
use crate::words::{Arg, listed, percent, say, whole};

/// Drawn along this share of its outline, a form is read. Our choice: a light
/// from one side draws no more than half of it.
pub(super) const DRAWN_FROM: f64 = 0.3;
/// Light takes this share of an outline before it is told, and said of a main
/// dish. Our choice: as much as colour may lose, and as shadow must draw.
pub(super) const TAKEN_FROM: [f64; 2] = [super::walked::LOST_FROM, DRAWN_FROM];
/// Beside an outline, past the foot of what leans, mm. Our choice.
const BESIDE: f64 = 3.0;

/// What light makes of the outline of one part; shares of it and the score.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct AfterLight {
    /// Lost after light.
    pub(super) lost: f64,
    /// Lost before light and not after.
    pub(super) drawn: f64,
    /// Lost after light and not before.
    pub(super) taken: f64,
    /// Its separation score after light.
    score: f64,
}

/// Every outline after light, each once it is asked for: all together take long.
pub(super) struct Outlines {
    exposed: f64,
    each: Vec<OnceCell<AfterLight>>,
}

impl Outlines {
    /// Of so many walks; none where nothing is exposed for.
    pub(super) fn of(study: &Study<'_>) -> Option<Self> {
        Some(Self {
            exposed: exposed_for(study)?,
            each: vec![OnceCell::new(); study.walks_by_number().len()],
        })
    }

    /// What light makes of the `n`th walk by number.
    pub(super) fn nth(&self, study: &Study<'_>, n: usize) -> &AfterLight {
        let walk = || &study.walks_by_number()[n];
        self.each[n].get_or_init(|| after(study, walk(), self.exposed))
    }

    /// The first walk that was not asked for.
    fn left(&self) -> Option<usize> {
        self.each.iter().position(|known| known.get().is_none())
    }
}

/// Works out all of them, as far as the pace lets it.
pub(super) fn see_in_light(study: &Study<'_>, pace: &Pace<'_>) {
    let Some(outlines) = study.after_light() else {
        return;
    };
    while let Some(n) = outlines.left() {
        if !pace.goes_on() {
            return;
        }
        outlines.nth(study, n);
        pace.got_on();
    }
}

/// Every walk by number with what light makes of it.
fn walks_after<'a>(
    study: &'a Study<'_>,
) -> Option<impl Iterator<Item = (&'a PartWalk, &'a AfterLight)>> {
    let outlines = study.after_light()?;
    let walks = study.walks_by_number().iter().enumerate();
    Some(walks.map(|(n, walk)| (walk.as_ref(), outlines.nth(study, n))))
}

/// The separation score after light, 0 to 100, over what the look presses.
pub(super) fn score_after(study: &Study<'_>) -> Option<f64> {
    let pressed = walks_after(study)?.filter(|(walk, _)| is_pressed(study, walk));
    let scores: Vec<f64> = pressed.map(|(_, after)| after.score).collect();
    overall_separation(&scores)
}

/// What light makes of this outline.
pub(super) fn after_of(study: &Study<'_>, walk: &PartWalk) -> Option<AfterLight> {
    let mut walks = study.walks_by_number().iter();
    let n = walks.position(|w| w.piece == walk.piece)?;
    study.after_light().map(|all| *all.nth(study, n))
}

fn after(study: &Study<'_>, walk: &PartWalk, exposed: f64) -> AfterLight {
    let [mut lost, mut drawn, mut taken, mut score] = [0.0; 4];
    for spot in &walk.spots {
        let own = &study.scene().pieces[walk.piece];
        let other = study.scene().shades_of(spot.ground);
        let before = mixed_separation(&own.shades, other);
        let then = lit(study, own, spot, exposed).or(before);
        let Some((before, then)) = before.zip(then) else {
            continue;
        };
        lost += spot.length * then.lost;
        drawn += spot.length * (before.lost - then.lost).max(0.0);
        taken += spot.length * (then.lost - before.lost).max(0.0);
        score += spot.length * separation_score(then.band_value);
    }
    let [lost, drawn, taken, score] = [lost, drawn, taken, score].map(|sum| sum / walk.length);
    AfterLight {
        lost,
        drawn,
        taken,
        score,
    }
}

/// Share of a part's outline that colour loses and shadow draws.
pub(super) fn drawn_share(study: &Study<'_>, walk: &PartWalk, exposed: f64) -> f64 {
    let own = &study.scene().pieces[walk.piece];
    let each = walk.spots.iter().map(|spot| {
        let other = study.scene().shades_of(spot.ground);
        let before = mixed_separation(&own.shades, other).map_or(0.0, |m| m.lost);
        let then = (before > 0.0).then(|| lit(study, own, spot, exposed));
        let left = then.flatten().map_or(before, |m| m.lost);
        spot.length * (before - left).max(0.0)
    });
    each.sum::<f64>() / walk.length
}

/// How both sides part there in their light; none beside the floor.
fn lit(
    study: &Study<'_>,
    own: &Piece,
    spot: &Spot,
    exposed: f64,
) -> Option<crate::colour::MixedSeparation> {
    let (layout, scene, lit) = (study.layout(), study.scene(), study.lit());
    let Ground::Piece(n) = spot.ground else {
        return None;
    };
    let other = &scene.pieces[n];
    let place = |p: DVec2, z: f64| under(scene.view, p, z).extend(z);
    let on = place(spot.at - spot.outward * REACH, height(study, own));
    let stack = |piece: &Piece| study.item(piece.owner).map(|i| study.root(i.id));
    let inner = lit.on(on, stack(own).unwrap_or(Id(0)));
    let mut level = height(study, other);
    let mut through = Vec::new();
    let mut at = study.item(other.owner);
    while let Some(item) = at {
        through.push(item.id);
        at = item.on.and_then(|on| study.item(on));
    }
    if other.part == PartKind::Well {
        // The wall right beside what lies in it, or else its floor.
        let food = study.item(own.owner).filter(|i| i.on == Some(other.owner));
        let floor = || {
            study
                .item(other.owner)
                .map_or(0.0, |i| rise(layout, i).base)
        };
        level = food.map_or_else(floor, |food| rise(layout, food).base);
    }
    let beside = place(spot.at + spot.outward * BESIDE, level);
    let outer = lit.upon(beside, stack(other).unwrap_or(Id(0)), &through);
    mixed_separation(
        &shone(&own.shades, inner / exposed),
        &shone(&other.shades, outer / exposed),
    )
}

/// How high the top of a thing or an arm is.
fn height(study: &Study<'_>, piece: &Piece) -> f64 {
    let hands = &study.layout().hands;
    match (piece.part, study.item(piece.owner)) {
        (PartKind::Rim | PartKind::Food, Some(item)) => rise(study.layout(), item).top,
        (PartKind::Hand | PartKind::Sleeve, _) => {
            let own = hands.iter().find(|h| h.id == piece.owner);
            own.map_or(0.0, |h| f64::from(h.height))
        }
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
    let exposed = exposed_for(study)?;
    let owner = |w: &PartWalk| study.scene().pieces[w.piece].owner;
    let mut about: Vec<Id> = walks.iter().map(|w| owner(w)).collect();
    about.dedup();
    let key = "separation:drawn".into();
    let figure = about.len() as f64;
    let state = (State::Holds, 3);
    let mut f = Finding::by(&SEPARATION_DRAWN, key, state, figure, about);
    let names = study.names(&f.about);
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

/// Edges that colour gives and light takes, told when all is.
pub(super) fn taken(study: &Study<'_>, settled: bool) -> Option<Finding> {
    if !study.tells_all() {
        return None;
    }
    let piece = |w: &PartWalk| &study.scene().pieces[w.piece];
    let mut all: Vec<(&PartWalk, &AfterLight)> = walks_after(study)?
        .filter(|(walk, after)| after.taken >= TAKEN_FROM[0] && is_pressed(study, walk))
        .collect();
    order::sort(&mut all, |a, b| b.1.taken.total_cmp(&a.1.taken));
    let main = |walk: &PartWalk| {
        let role = study.item(piece(walk).owner);
        let role = role.map(|i| effective_role(study.layout(), i));
        matches!(role, Some(Role::Hero | Role::Support))
    };
    let said =
        |(walk, after): &&(&PartWalk, &AfterLight)| after.taken >= TAKEN_FROM[1] && main(walk);
    let said: Vec<(Id, PartKind)> = all
        .iter()
        .filter(said)
        .map(|(walk, _)| (piece(walk).owner, piece(walk).part))
        .collect();
    if !said.is_empty() {
        all.retain(|(walk, _)| said.contains(&(piece(walk).owner, piece(walk).part)));
    }
    let most = all.first()?.1.taken;
    let mut about: Vec<Id> = all.iter().map(|(walk, _)| piece(walk).owner).collect();
    about.dedup();
    let state = if said.is_empty() {
        State::Holds
    } else {
        State::LookAgain
    };
    let key = "separation:taken".into();
    let mut f = Finding::by(&SEPARATION_TAKEN, key, (state, 3), most * 100.0, about);
    let args = [
        ("things", Arg::Text(listed(&study.names(&f.about)))),
        ("share", Arg::Text(percent(most))),
    ];
    f.sentence = say("separation-taken", &args);
    f.working = vec![say("working-taken", &[])];
    let lines = all.iter().filter_map(|(walk, _)| line(study, walk));
    f.working.extend(lines);
    if settled && !said.is_empty() {
        f.remedy = study.remedy(&f.key, &|| given_back(study, &f.key, &said, most));
    }
    Some(f)
}

/// How one outline fares after light.
pub(super) fn line(study: &Study<'_>, walk: &PartWalk) -> Option<String> {
    let after = after_of(study, walk)?;
    let owner = study.scene().pieces[walk.piece].owner;
    let args = [
        ("thing", Arg::Name(study.name(owner))),
        ("share", Arg::Text(percent(walk.lost))),
        ("after", Arg::Text(percent(after.lost))),
        ("drawn", Arg::Text(percent(after.drawn))),
        ("taken", Arg::Text(percent(after.taken))),
    ];
    Some(say("working-part-light", &args))
}

/// Both scores.
pub(super) fn scores_line(study: &Study<'_>, before: f64) -> Option<String> {
    let args = [
        ("before", Arg::Text(whole(before))),
        ("after", Arg::Text(whole(score_after(study)?))),
    ];
    Some(say("working-separation-both", &args))
}

/// The first change of the light that gives these edges back.
fn given_back(
    study: &Study<'_>,
    key: &str,
    parts: &[(Id, PartKind)],
    before: f64,
) -> Option<Remedy> {
    let far = study.item(parts[0].0).map(|i| i.at.vec())?;
    let changes = light::changes(study, far);
    let (attempt, left) = study.first_that(key, changes, &|attempt| {
        let then = study.changed(&attempt.after);
        // What is given back here may be taken there.
        match taken(&then, false) {
            Some(still) if still.is_pressing() => None,
            still => Some(still.map_or(0.0, |f| f.figure / 100.0)),
        }
    })?;
    let told = ("predicted", [before, left].map(percent));
    Some(attempt.remedy(study, left * 100.0, told))
}
