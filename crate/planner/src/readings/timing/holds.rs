//! Food that stands on the set longer than it looks right, or longer than
//! anybody should eat it, and when the rest must have been shot.
use super::super::finding::{Finding, Grade, State};
use super::super::rules::{TIMING_ALONE, TIMING_BY, TIMING_EAT, TIMING_HOLD};
use super::super::study::Study;
use super::remedy;
use crate::catalogue::{CHILLED, DANGER_ZONE, Evidence, HOT, TIME_ALONE};
use crate::exposures::{Founded, OnSet, Running, running};
use crate::layout::{Id, Layout, Role};
use crate::order;
use crate::scene::effective_role;
use crate::words::{Arg, listed, running_time, say};

pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    if study.layout().exposures.is_empty() {
        return Vec::new();
    }
    let run = running(study.layout());
    let mut out = Vec::new();
    out.extend(
        [true, false]
            .into_iter()
            .filter_map(|told| alone(study, &run, told)),
    );
    out.extend(too_long(study, &run, settled));
    out.extend(not_for_eating(study, &run));
    if study.tells_all() {
        out.extend(by_when(study, &run));
    }
    out
}

/// Food one of whose own exposures takes longer than it holds.
fn outlived(food: &OnSet) -> bool {
    food.hold.is_some_and(|(hold, _)| food.longest > hold)
}

/// What the finding rests on: the weakest word any of them rests on.
fn grade(foods: &[&OnSet]) -> Grade {
    let of = |food: &&OnSet| match food.hold.map(|hold| hold.1) {
        Some(Founded::Catalogue(Evidence::Guess)) => Grade::OurChoice,
        Some(Founded::Catalogue(Evidence::TradePractice)) => Grade::TradePractice,
        Some(Founded::Catalogue(Evidence::Published(_))) => Grade::PublishedMeasure,
        Some(Founded::Told) | None => Grade::Physics,
    };
    let grades: Vec<Grade> = foods.iter().map(of).collect();
    let weakest = [
        Grade::OurChoice,
        Grade::TradePractice,
        Grade::PublishedMeasure,
    ];
    let found = weakest.into_iter().find(|g| grades.contains(g));
    found.unwrap_or(Grade::Physics)
}

fn minutes(n: i32) -> Arg {
    Arg::Text(n.to_string())
}

/// Every name, each once, joined as a list.
fn names(study: &Study<'_>, foods: &[&OnSet]) -> String {
    let ids: Vec<Id> = foods.iter().map(|food| food.item).collect();
    listed(&study.names(&ids))
}

/// Where each holding time comes from, and how the food stands.
fn working(study: &Study<'_>, id: &str, foods: &[&OnSet]) -> Vec<String> {
    let mut out = vec![say(id, &[]), say("working-timing-running", &[])];
    for food in foods {
        let Some((hold, founded)) = food.hold else {
            continue;
        };
        let said = match founded {
            Founded::Told => "working-timing-told",
            Founded::Catalogue(Evidence::Published(_)) => "working-timing-published",
            Founded::Catalogue(Evidence::TradePractice) => "working-timing-practice",
            Founded::Catalogue(Evidence::Guess) => "working-timing-guess",
        };
        let source = match founded {
            Founded::Catalogue(Evidence::Published(key)) => crate::catalogue::source(key),
            _ => None,
        };
        let args = [
            ("thing", Arg::Name(study.name(food.item))),
            ("hold", minutes(hold)),
            ("stands", minutes(food.stands())),
            ("source", Arg::Text(source.unwrap_or_default().into())),
        ];
        let line = say(said, &args);
        if !out.contains(&line) {
            out.push(line);
        }
    }
    out
}

/// The food that is worst off first.
fn worst_first(mut foods: Vec<&OnSet>) -> Vec<&OnSet> {
    order::sort(&mut foods, |a, b| {
        b.over().cmp(&a.over()).then(a.item.cmp(&b.item))
    });
    foods
}

/// Food that no order saves: its own exposure outlasts it. Only what the user
/// has told of it makes arithmetic of that.
fn alone(study: &Study<'_>, run: &Running, told: bool) -> Option<Finding> {
    let so_founded = |food: &OnSet| matches!(food.hold, Some((_, Founded::Told))) == told;
    let all = run.foods.iter();
    let all = all.filter(|food| outlived(food) && so_founded(food));
    let all = worst_first(all.collect());
    let first = *all.first()?;
    let (hold, _) = first.hold?;
    let (state, key) = if told {
        (State::WontWork, "timing:alone")
    } else {
        (State::LookAgain, "timing:alone:usual")
    };
    let figure = f64::from(first.longest - hold);
    let about: Vec<Id> = all.iter().map(|food| food.item).collect();
    let mut f = Finding::by(&TIMING_ALONE, key.into(), (state, 2), figure, about);
    f.grade = grade(&all);
    f.sentence = study.sentence(|| {
        let args = [
            ("things", Arg::Text(names(study, &all))),
            ("thing", Arg::Name(study.name(first.item))),
            ("hold", minutes(hold)),
            ("longest", minutes(first.longest)),
        ];
        let id = if all.len() == 1 {
            "timing-alone"
        } else {
            "timing-alone-several"
        };
        say(id, &args)
    });
    f.working = study.tell(|| working(study, "working-timing-alone", &all));
    Some(f)
}

/// The food that stands too long in this order though another could save it.
fn late(run: &Running) -> Vec<&OnSet> {
    let late = |food: &&OnSet| food.over() > 0 && !outlived(food);
    worst_first(run.foods.iter().filter(late).collect())
}

/// How much longer food stands than it holds, minutes added up.
pub(super) fn over(layout: &Layout) -> f64 {
    let run = running(layout);
    let all = late(&run);
    all.iter().map(|food| f64::from(food.over())).sum()
}

fn too_long(study: &Study<'_>, run: &Running, settled: bool) -> Option<Finding> {
    let all = late(run);
    let first = *all.first()?;
    let (hold, _) = first.hold?;
    let figure = all.iter().map(|food| f64::from(food.over())).sum();
    let about: Vec<Id> = all.iter().map(|food| food.item).collect();
    let key = "timing:hold".into();
    // A garnish is laid afresh; a main dish is the picture.
    let main = all.iter().filter_map(|food| study.item(food.item));
    let main = main.map(|item| effective_role(study.layout(), item));
    let spoils = main
        .into_iter()
        .any(|role| matches!(role, Role::Hero | Role::Support));
    let state = (State::LookAgain, if spoils { 2 } else { 3 });
    let mut f = Finding::by(&TIMING_HOLD, key, state, figure, about);
    f.grade = grade(&all);
    f.sentence = study.sentence(|| {
        let name = |food: &OnSet| study.item(food.item).map(|item| item.name.as_str());
        // Two sprigs are one kind of food that all of it is too late for.
        let alike = all.iter().all(|food| name(food) == name(first));
        let own = name(first).filter(|_| alike).map(str::to_owned);
        let args = [
            ("things", Arg::Text(names(study, &all))),
            (
                "thing",
                Arg::Name(own.unwrap_or_else(|| study.name(first.item))),
            ),
            ("hold", minutes(hold)),
            ("stands", minutes(first.stands())),
            ("by", Arg::Text(running_time(first.by().unwrap_or(0)))),
        ];
        let id = if alike {
            "timing-hold"
        } else {
            "timing-hold-several"
        };
        say(id, &args)
    });
    f.working = study.tell(|| working(study, "working-timing-hold", &all));
    if settled {
        let ids: Vec<Id> = all.iter().map(|food| food.item).collect();
        f.remedy = study.remedy(&f.key, &|| remedy::in_time(study, &ids, figure));
    }
    Some(f)
}

/// Food that stands out longer than anybody should eat it.
fn not_for_eating(study: &Study<'_>, run: &Running) -> Option<Finding> {
    let out = |food: &OnSet| food.off - food.from;
    let figure = run.foods.iter().map(out).max()?;
    let state = if f64::from(figure) > TIMING_EAT.edges[0] {
        State::LookAgain
    } else {
        State::Holds
    };
    if state == State::Holds && !study.tells_all() {
        return None;
    }
    let long = run.foods.iter().filter(|food| out(food) == figure);
    let about: Vec<Id> = long.map(|food| food.item).collect();
    let key = "timing:eat".into();
    let mut f = Finding::by(&TIMING_EAT, key, (state, 3), f64::from(figure), about);
    f.sentence = study.sentence(|| {
        let args = [
            ("out", Arg::Text(running_time(figure))),
            ("most", Arg::Text(running_time(DANGER_ZONE))),
        ];
        let id = if state == State::Holds {
            "timing-eat-holds"
        } else {
            "timing-eat"
        };
        say(id, &args)
    });
    f.working = study.tell(|| {
        let hours = |minutes: i32| Arg::Text((minutes / 60).to_string());
        let args = [
            ("zone", hours(DANGER_ZONE)),
            ("chilled", hours(CHILLED)),
            ("hot", hours(HOT)),
            ("alone", hours(TIME_ALONE)),
        ];
        vec![say("working-timing-eat", &args)]
    });
    Some(f)
}

/// When each food that does not keep must have been shot, the first first.
fn by_when(study: &Study<'_>, run: &Running) -> Option<Finding> {
    let mut all: Vec<(i32, &OnSet)> = run
        .foods
        .iter()
        .filter_map(|food| Some((food.by()?, food)))
        .collect();
    order::sort(&mut all, |a, b| a.0.cmp(&b.0).then(a.1.item.cmp(&b.1.item)));
    let figure = f64::from(all.first()?.0);
    let about: Vec<Id> = all.iter().map(|(_, food)| food.item).collect();
    let key = "timing:by".into();
    let mut f = Finding::by(&TIMING_BY, key, (State::Holds, 3), figure, about);
    f.sentence = study.sentence(|| {
        let mut told: Vec<String> = Vec::new();
        for (by, _) in &all {
            let same = all.iter().filter(|(other, _)| other == by);
            let ids: Vec<Id> = same.map(|(_, food)| food.item).collect();
            let args = [
                ("things", Arg::Text(listed(&study.names(&ids)))),
                ("by", Arg::Text(running_time(*by))),
            ];
            let line = say("timing-by-one", &args);
            if !told.contains(&line) {
                told.push(line);
            }
        }
        say("timing-by", &[("list", Arg::Text(told.join("; ")))])
    });
    f.working = study.tell(|| {
        let foods: Vec<&OnSet> = all.iter().map(|(_, food)| *food).collect();
        working(study, "working-timing-by", &foods)
    });
    Some(f)
}
