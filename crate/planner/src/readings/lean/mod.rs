//! Lean and focus: what leans over what, and how deep is it sharp?
//!
//! Relief displacement: a top at height h over the place p is seen r·h/(H − h)
//! farther out, r from the place under the lens, which stands H above the
//! table (Mahun, *Photogrammetry*, ch. C). What a lean hides is the area of
//! the dish's outline under the other's as the lens sees both, less what lies
//! over it from above already. Focus: see `focus`.
mod deeper;
mod focus;
mod remedy;
#[cfg(test)]
mod tests;
mod tops;

use glam::DVec2;

use super::finding::{Finding, Mark, State};
use super::rules::LEAN_HIDES;
use super::study::Study;
use crate::catalogue;
use crate::layout::{Id, Item, Role};
use crate::optics::View;
use crate::order;
use crate::scene::{rise, silhouette};
use crate::shape::{Region, intersection, union};
use crate::words::{Arg, length, listed, percent, say};

pub(super) use tops::tops;

/// A lean under this is told nowhere, mm. Our choice.
const NOTED: f64 = 10.0;
/// Leans told in the working.
const TOLD: usize = 5;

/// The findings about leans and focus; none where no lens can show the frame.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let View::Lens { .. } = study.scene().view else {
        return Vec::new();
    };
    let leaning = leaning(study);
    let over = leaning.iter().filter_map(|l| hides(study, l, settled));
    let mut out: Vec<Finding> = over.collect();
    if study.tells_all() {
        out.extend(most(study, &leaning));
    }
    out.extend(focus::read(study, settled));
    out
}

/// A stack that leans.
struct Leaning {
    /// What stands on the table.
    id: Id,
    /// Where its highest thing stands, and where the top of that is seen.
    from: DVec2,
    to: DVec2,
}

impl Leaning {
    fn lean(&self) -> f64 {
        self.from.distance(self.to)
    }

    /// The line it leans along, with how far.
    fn marks(&self, study: &Study<'_>) -> Vec<Mark> {
        let (from, to) = (self.from, self.to);
        let text = study.tell(|| length(self.lean(), study.layout().head.units));
        let arrow = Mark::Arrow { from, to };
        if text.is_empty() {
            return vec![arrow];
        }
        vec![arrow, Mark::Label { at: to, text }]
    }
}

/// Every stack that leans by as much as is told, the farthest first.
fn leaning(study: &Study<'_>) -> Vec<Leaning> {
    let layout = study.layout();
    let view = study.scene().view;
    let mut out: Vec<Leaning> = Vec::new();
    let lasting = |i: &&Item| !catalogue::is_strewn(&i.prop);
    for item in layout.items.iter().filter(lasting) {
        let at = item.at.vec();
        let leans = Leaning {
            id: study.root(item.id),
            from: at,
            to: view.project(at, rise(layout, item).top),
        };
        match out.iter_mut().find(|l| l.id == leans.id) {
            Some(known) if known.lean() < leans.lean() => *known = leans,
            Some(_) => {}
            None => out.push(leans),
        }
    }
    out.retain(|l| l.lean() >= NOTED);
    order::sort(&mut out, |a, b| {
        b.lean().total_cmp(&a.lean()).then(a.id.cmp(&b.id))
    });
    out
}

/// How much of each main dish a stack hides by leaning, shares of the dish,
/// the most first.
fn hidden(study: &Study<'_>, id: Id) -> Vec<(Id, f64)> {
    let scene = study.scene();
    let pieces = &scene.pieces;
    let first = |id: Id| pieces.iter().position(|p| p.owner == id);
    let Some(own) = first(id) else {
        return Vec::new();
    };
    let parts: Vec<usize> = (own..pieces.len())
        .filter(|n| study.root(pieces[*n].owner) == id)
        .collect();
    // Most stacks come near no dish that lies under them.
    let near = parts.iter().flat_map(|n| scene.near(*n));
    let near = near.filter(|n| **n < own);
    let under: Vec<Id> = near.map(|n| pieces[*n].owner).collect();
    let mut chiefs = main_dishes(study);
    chiefs.retain(|chief| under.contains(chief));
    if chiefs.is_empty() {
        return Vec::new();
    }
    let parts: Vec<&Region> = parts.iter().map(|n| &pieces[*n].region).collect();
    let Ok(shown) = union(&parts) else {
        return Vec::new();
    };
    let mut out: Vec<(Id, f64)> = Vec::new();
    for chief in chiefs {
        let Some(n) = first(chief).filter(|n| chief != id && *n < own) else {
            continue;
        };
        let area = |a: &Region, b: &Region| {
            let meet = a.bounds().zip(b.bounds()).is_some_and(|(a, b)| a.meets(b));
            let both = meet.then(|| intersection(a, b).ok()).flatten();
            both.map_or(0.0, |both| both.area())
        };
        let dish = &pieces[n].region;
        let seen = area(dish, &shown) / dish.area().max(f64::MIN_POSITIVE);
        if seen <= 0.0 {
            continue;
        }
        let flat = |id: Id| {
            let item = study.item(id)?;
            Region::from_polygon(&silhouette(item)).ok()
        };
        let above = flat(chief).zip(flat(id)).map_or(0.0, |(dish, own)| {
            area(&dish, &own) / dish.area().max(f64::MIN_POSITIVE)
        });
        out.push((chief, seen - above));
    }
    order::sort(&mut out, |a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    out
}

/// What stands on the table and is a hero or a main dish, or bears one.
fn main_dishes(study: &Study<'_>) -> Vec<Id> {
    let layout = study.layout();
    let main = |i: &&Item| matches!(i.role, Role::Hero | Role::Support);
    let dishes = layout.items.iter().filter(main);
    let mut out: Vec<Id> = dishes.map(|i| study.root(i.id)).collect();
    order::sort(&mut out, Id::cmp);
    out.dedup();
    out
}

/// The stacks that hide so much of a dish by leaning that it is said here.
pub(super) fn over(study: &Study<'_>, dish: Id) -> Vec<Id> {
    let said = |share: &f64| *share >= LEAN_HIDES.edges[0];
    let leaning = leaning(study).into_iter().map(|l| l.id);
    leaning
        .filter(|id| {
            hidden(study, *id)
                .iter()
                .any(|(d, s)| *d == dish && said(s))
        })
        .collect()
}

/// A stack that leans over main dishes.
fn hides(study: &Study<'_>, leaning: &Leaning, settled: bool) -> Option<Finding> {
    let over = hidden(study, leaning.id);
    let over = over.into_iter().filter(|o| o.1 >= LEAN_HIDES.edges[0]);
    let over: Vec<(Id, f64)> = over.collect();
    let (chief, share) = *over.first()?;
    let hero = |id: &Id| {
        let items = &study.layout().items;
        items
            .iter()
            .any(|i| i.role == Role::Hero && study.root(i.id) == *id)
    };
    let rank = if over.iter().any(|o| hero(&o.0)) {
        2
    } else {
        3
    };
    let mut about = vec![leaning.id];
    about.extend(over.iter().map(|o| o.0));
    let key = format!("lean:{}", leaning.id.0);
    let state = (State::LookAgain, rank);
    let mut f = Finding::by(&LEAN_HIDES, key, state, share * 100.0, about);
    f.marks = leaning.marks(study);
    f.sentence = study.sentence(|| {
        let names: Vec<String> = over.iter().map(|o| study.name(o.0)).collect();
        let args = [
            ("thing", Arg::Name(study.name(leaning.id))),
            ("chief", Arg::Name(study.name(chief))),
            ("things", Arg::Text(listed(&names))),
            ("share", Arg::Text(percent(share))),
            ("over", by(study, leaning)),
        ];
        let id = match names.len() {
            1 => "lean-hides",
            _ => "lean-hides-several",
        };
        say(id, &args)
    });
    f.working = study.tell(|| vec![say("working-lean", &[]), lens_line(study)]);
    if settled {
        f.remedy = study.remedy(&f.key, &|| remedy::uncovered(study, &f));
    }
    Some(f)
}

fn by(study: &Study<'_>, leaning: &Leaning) -> Arg {
    Arg::Text(length(leaning.lean(), study.layout().head.units))
}

/// Where the lens stands.
fn lens_line(study: &Study<'_>) -> String {
    let height = match study.scene().view {
        View::Lens { height, .. } => height,
        View::Above => 0.0,
    };
    let height = length(height, study.layout().head.units);
    say("working-lean-lens", &[("height", Arg::Text(height))])
}

/// What leans farthest, as a note.
fn most(study: &Study<'_>, leaning: &[Leaning]) -> Option<Finding> {
    let first = leaning.first()?;
    let state = (State::Holds, 3);
    let key = "lean:most".into();
    let mut f = Finding::by(&LEAN_HIDES, key, state, first.lean(), vec![first.id]);
    f.marks = leaning
        .iter()
        .take(TOLD)
        .flat_map(|l| l.marks(study))
        .collect();
    f.sentence = study.sentence(|| {
        let args = [
            ("thing", Arg::Name(study.name(first.id))),
            ("over", by(study, first)),
        ];
        say("lean-most", &args)
    });
    f.working = study.tell(|| {
        let each = leaning.iter().take(TOLD).map(|l| {
            let args = [
                ("thing", Arg::Name(study.name(l.id))),
                ("figure", by(study, l)),
            ];
            say("working-line", &args)
        });
        [say("working-lean", &[]), lens_line(study)]
            .into_iter()
            .chain(each)
            .collect()
    });
    Some(f)
}
