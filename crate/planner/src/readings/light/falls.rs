//! How far the light falls from one main dish to another.
use glam::DVec2;

use super::super::finding::{Finding, State};
use super::super::rules::{LIGHT_DARK, LIGHT_FALLS};
use super::super::study::Study;
use super::{Dish, counted_from, dishes, remedy, stop_lines, stops};
use crate::layout::{Id, LightShape};
use crate::words::{Arg, length, listed, percent, say};

/// The brightest and the darkest main dish.
fn ends(dishes: &[Dish]) -> Option<(&Dish, &Dish)> {
    let by = |a: &&Dish, b: &&Dish| a.light.total_cmp(&b.light).then(b.id.cmp(&a.id));
    Some((dishes.iter().max_by(by)?, dishes.iter().min_by(by)?))
}

/// Stops between the brightest and the darkest of them.
pub(super) fn figure(dishes: &[Dish]) -> Option<f64> {
    let (bright, dark) = ends(dishes)?;
    crate::light::stops(bright.light, dark.light)
}

/// The finding; none under two main dishes.
pub(super) fn read(study: &Study<'_>, found: &[Dish], settled: bool) -> Option<Finding> {
    let (bright, dark) = ends(found).filter(|_| found.len() > 1)?;
    let figure = figure(found)?;
    let apart = figure > LIGHT_FALLS.edges[0];
    let state = if apart {
        State::LookAgain
    } else {
        State::Holds
    };
    let about = vec![dark.id, bright.id];
    let mut f = Finding::by(&LIGHT_FALLS, "light".into(), (state, 3), figure, about);
    f.marks = stop_lines(study);
    f.sentence = study.sentence(|| {
        let args = [
            ("stops", Arg::Text(stops(figure))),
            ("bright", Arg::Name(study.name(bright.id))),
            ("dark", Arg::Name(study.name(dark.id))),
        ];
        say(if apart { "light-falls" } else { "light-even" }, &args)
    });
    f.working = study.tell(|| working(study, found));
    if settled && apart {
        let after = |then: &Study<'_>| figure_of(then);
        let most = LIGHT_FALLS.edges[0];
        f.remedy = study.remedy(&f.key, &|| {
            remedy::first_worth(study, &f.key, Some(dark.at), figure, most, &after)
        });
    }
    Some(f)
}

/// How the light falls across the picture where there are no two main dishes
/// to tell it by; none in the dark.
pub(super) fn across(study: &Study<'_>, found: &[Dish]) -> Option<Finding> {
    let (reference, hero) = counted_from(study, found);
    if reference <= super::DARK {
        return None;
    }
    let (picture, lit) = (study.picture(), study.lit());
    // Corners, sides and middle.
    let thirds = [0.0, 0.5, 1.0];
    let places = thirds
        .iter()
        .flat_map(|y| thirds.map(|x| DVec2::new(x, *y)));
    let light = places.map(|p| lit.open(picture.on_table(picture.size * p).extend(0.0)));
    let (low, high) = light.fold((f64::INFINITY, 0.0_f64), |(l, h), v| (l.min(v), h.max(v)));
    let figure = crate::light::stops(high, low)?;
    let key = "light:across".into();
    let about = hero.into_iter().collect();
    let mut f = Finding::by(&LIGHT_FALLS, key, (State::Holds, 3), figure, about);
    f.marks = stop_lines(study);
    f.sentence = study.sentence(|| {
        let stops = ("stops", Arg::Text(stops(figure)));
        match hero {
            Some(hero) => say(
                "light-across",
                &[stops, ("hero", Arg::Name(study.name(hero)))],
            ),
            None => say("light-across-middle", &[stops]),
        }
    });
    f.working = study.tell(|| working(study, found));
    Some(f)
}

fn figure_of(study: &Study<'_>) -> Option<f64> {
    let found = dishes(study);
    let lit = found.iter().all(|d| d.light > super::DARK);
    lit.then(|| figure(&found)).flatten()
}

/// Formula, window and each dish in stops over the hero.
fn working(study: &Study<'_>, found: &[Dish]) -> Vec<String> {
    let reference = super::reference(study, found);
    let mut lines: Vec<String> = study.of_crop().into_iter().collect();
    lines.push(say("working-light", &[]));
    lines.extend(sill(study));
    lines.extend(found.iter().filter_map(|dish| {
        let over = crate::light::stops(dish.light, reference)?;
        let args = [
            ("thing", Arg::Name(study.name(dish.id))),
            ("stops", Arg::Text(stops(over))),
        ];
        Some(say("working-light-dish", &args))
    }));
    lines
}

/// Where the window's sill is.
fn sill(study: &Study<'_>) -> Option<String> {
    let layout = study.layout();
    let (light, units) = (&layout.light, layout.head.units);
    if light.shape != LightShape::Window {
        return None;
    }
    let high = f64::from(light.height_above_table) - f64::from(light.height) * 0.5;
    let id = if high < 0.0 {
        "working-light-below"
    } else {
        "working-light-sill"
    };
    let share = (-high / f64::from(light.height).max(1.0)).clamp(0.0, 1.0);
    let args = [
        ("height", Arg::Text(length(high.abs(), units))),
        ("share", Arg::Text(percent(share))),
    ];
    Some(say(id, &args))
}

/// Dishes no light reaches.
pub(super) fn dark(study: &Study<'_>, dark: &[&Dish], settled: bool) -> Finding {
    let about: Vec<Id> = dark.iter().map(|d| d.id).collect();
    let figure = dark.len() as f64;
    let state = (State::WontWork, 1);
    let mut f = Finding::by(&LIGHT_DARK, "light:dark".into(), state, figure, about);
    f.sentence = study.sentence(|| {
        let ids: Vec<Id> = dark.iter().map(|d| d.id).collect();
        let args = [("things", Arg::Text(listed(&study.names(&ids))))];
        say("light-dark", &args)
    });
    f.working = study.tell(|| {
        let formula = vec![say("working-light-dark", &[])];
        formula.into_iter().chain(sill(study)).collect()
    });
    if settled {
        f.remedy = remedy::into_light(study);
    }
    f
}
