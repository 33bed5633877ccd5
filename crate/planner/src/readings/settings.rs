//! Settings: are places laid at one size, with air between them, and does the
//! runner leave the table its width?
//!
//! Notes of the trade, silent until asked. Lunch forks reach 178 mm and lunch
//! knives 229 (a silver dealer's page, weak): what is longer is of true size.
//! Gaps are from plate to plate; with places 24 in apart no more than the
//! plates can lie 15 in apart.
use super::finding::{Finding, Mark, State};
use super::rules::{Rule, SETTINGS_NEAR, SETTINGS_RUNNER, SETTINGS_SIZE};
use super::study::Study;
use crate::catalogue::{self, Kind};
use crate::figure::{Prop, prop_of};
use crate::layout::{Id, Item, LinenKind, LinenState};
use crate::scene::silhouette;
use crate::shape::{Region, gap_within};
use crate::words::{Arg, length, say};

/// Longest fork and knife for the camera, mm.
const FORK: i32 = 180;
const KNIFE: i32 = 229;

/// A place: its plate, and whether its cutlery is of true size, when it says.
struct Place<'a> {
    plate: &'a Item,
    full: Option<bool>,
}

/// Every group of a dish and cutlery.
fn places<'a>(study: &Study<'a>) -> Vec<Place<'a>> {
    let layout = study.layout();
    let kind = |item: &Item| catalogue::prop(&item.prop).map(|entry| entry.kind);
    let mut out = Vec::new();
    for group in &layout.groups {
        let own = || layout.items.iter().filter(|i| i.group == Some(group.id));
        let across = |item: &&Item| (item.size.extent()[0], std::cmp::Reverse(item.id));
        let dishes = own().filter(|i| kind(i) == Some(Kind::Vessel));
        let tools = || own().filter(|i| kind(i) == Some(Kind::Cutlery));
        let Some(plate) = dishes.max_by_key(across) else {
            continue;
        };
        if tools().next().is_none() {
            continue;
        }
        let full = tools().filter_map(|item| {
            let long = item.size.extent()[0].max(item.size.extent()[1]);
            match prop_of(&item.prop, Kind::Cutlery) {
                Some(Prop::Fork) => Some(long > FORK),
                Some(Prop::Knife) => Some(long > KNIFE),
                _ => None,
            }
        });
        let full = full.reduce(|one, other| one || other);
        out.push(Place { plate, full });
    }
    out
}

/// The notes about place settings and runners.
pub(super) fn read(study: &Study<'_>) -> Vec<Finding> {
    let places = places(study);
    let mut out: Vec<Finding> = mixed(study, &places).into_iter().collect();
    out.extend(near(study, &places));
    out.extend(runners(study));
    out
}

fn note(rule: &'static Rule, key: String, figure: f64, about: Vec<Id>) -> Finding {
    Finding::by(rule, key, (State::LookAgain, 3), figure, about)
}

/// Places of camera size beside places of true size.
fn mixed(study: &Study<'_>, places: &[Place<'_>]) -> Option<Finding> {
    let of = |full: bool| {
        let all = places.iter().filter(|p| p.full == Some(full));
        all.map(|p| p.plate.id).collect::<Vec<Id>>()
    };
    let (camera, full) = (of(false), of(true));
    let fewer = camera.len().min(full.len());
    if (fewer as f64) < SETTINGS_SIZE.edges[0] {
        return None;
    }
    let counts = [camera.len(), full.len()].map(|n| Arg::Text(n.to_string()));
    let about = if camera.len() <= full.len() {
        camera
    } else {
        full
    };
    let mut f = note(&SETTINGS_SIZE, "settings:size".into(), fewer as f64, about);
    let [camera, full] = counts;
    f.sentence = study.sentence(|| say("settings-mixed", &[("camera", camera), ("full", full)]));
    f.working = study.tell(|| vec![say("working-settings-size", &[])]);
    Some(f)
}

/// The two places that stand nearest, when that is too near.
fn near(study: &Study<'_>, places: &[Place<'_>]) -> Option<Finding> {
    let plates: Vec<(Id, Region)> = places
        .iter()
        .filter_map(|p| Some((p.plate.id, Region::from_polygon(&silhouette(p.plate)).ok()?)))
        .collect();
    let mut least: Option<(f64, Finding)> = None;
    for (n, (a, one)) in plates.iter().enumerate() {
        for (b, other) in &plates[n + 1..] {
            let Some(gap) = gap_within(one, other, SETTINGS_NEAR.edges[0]) else {
                continue;
            };
            let far = gap.distance;
            let nearer = least.as_ref().is_none_or(|(known, _)| far < *known);
            if far >= SETTINGS_NEAR.edges[0] || !nearer {
                continue;
            }
            let mut f = note(&SETTINGS_NEAR, "settings:near".into(), far, vec![*a, *b]);
            let units = study.layout().head.units;
            f.marks = vec![Mark::Gap {
                from: gap.from,
                to: gap.to,
                label: study.tell(|| length(far, units)),
            }];
            f.sentence = study.sentence(|| {
                let args = [
                    ("gap", Arg::Text(length(far, units))),
                    ("least", Arg::Text(length(SETTINGS_NEAR.edges[0], units))),
                ];
                say("settings-near", &args)
            });
            f.working = study.tell(|| vec![say("working-settings-near", &[])]);
            least = Some((far, f));
        }
    }
    least.map(|(_, f)| f)
}

/// Runners broader than a third of the table they lie along.
fn runners(study: &Study<'_>) -> Vec<Finding> {
    let layout = study.layout();
    let flat = |state: LinenState| state == LinenState::Flat;
    let all = layout.linens.iter();
    let runners = all.filter(|o| o.kind == LinenKind::Runner && flat(o.state));
    let over = runners.filter_map(|runner| {
        let [wide, deep] = runner.size;
        let broad = f64::from(wide.min(deep));
        let up = runner.turn.direction();
        let along = if deep >= wide { up } else { up.perp() };
        let table = &layout.table;
        let across = f64::from(if along.y.abs() >= along.x.abs() {
            table.width
        } else {
            table.depth
        });
        let most = across * SETTINGS_RUNNER.edges[0];
        if broad <= most {
            return None;
        }
        let key = format!("settings:runner:{}", runner.id.0);
        let mut f = note(&SETTINGS_RUNNER, key, broad - most, vec![runner.id]);
        f.sentence = study.sentence(|| {
            let units = layout.head.units;
            let args = [
                ("linen", Arg::Name(study.name(runner.id))),
                ("width", Arg::Text(length(broad, units))),
                ("most", Arg::Text(length(most, units))),
                ("ground", Arg::Name(study.name(Id(0)))),
            ];
            say("settings-runner", &args)
        });
        f.working = study.tell(|| vec![say("working-settings-runner", &[])]);
        Some(f)
    });
    over.collect()
}

#[cfg(test)]
mod tests {
    use super::super::samples::{laid, read};
    use super::*;

    /// Two places, plates of this diameter so far from middle to middle, with
    /// knives this long.
    fn two(apart: i32, plate: i32, knives: [i32; 2]) -> Vec<Finding> {
        let place = |n: i32| {
            let (id, x) = (10 * (n + 1), 300 + n * apart);
            let knife = knives[n as usize];
            format!(
                r#"{{"id":{id},"prop":"small-plate","name":"plate","at":[{x},700],"group":{},
                "size":{{"shape":"disc","diameter":{plate}}}}},
                {{"id":{},"prop":"knife","name":"knife","at":[{},700],"group":{},
                "size":{{"shape":"rect","width":20,"depth":{knife}}}}}"#,
                id + 5,
                id + 1,
                x + plate / 2 + 30,
                id + 5
            )
        };
        let layout = laid(&format!(
            r#""groups":[{{"id":15}},{{"id":25}}],"items":[{},{}]"#,
            place(0),
            place(1)
        ));
        read(&layout)
    }

    fn said(findings: &[Finding], key: &str) -> Option<f64> {
        let found = findings.iter().find(|f| f.key.starts_with(key));
        found.map(|f| {
            assert!(f.taste && !f.is_pressing(), "a note: {}", f.sentence);
            f.figure
        })
    }

    #[test]
    fn camera_size_beside_true_size_is_noted() {
        let mixed = two(700, 210, [205, 245]);
        assert_eq!(said(&mixed, "settings:size"), Some(1.0), "one of each");
        assert_eq!(
            said(&two(700, 210, [205, 205]), "settings:size"),
            None,
            "both small"
        );
        assert_eq!(
            said(&two(700, 210, [245, 235]), "settings:size"),
            None,
            "both large"
        );
    }

    #[test]
    fn plates_under_fifteen_inches_apart_are_noted() {
        let near = said(&two(580, 210, [205, 205]), "settings:near").expect("noted");
        assert!((near - 370.0).abs() < 1.0, "{near}");
        assert_eq!(
            said(&two(600, 210, [205, 205]), "settings:near"),
            None,
            "390 mm"
        );
    }

    #[test]
    fn a_runner_broader_than_a_third_of_the_table_is_noted() {
        let runner = |wide: i32| {
            read(&laid(&format!(
                r#""linens":[{{"id":7,"kind":"runner","name":"runner","at":[600,450],"size":[{wide},1200]}}]"#
            )))
        };
        let over = said(&runner(420), "settings:runner").expect("noted");
        assert!(
            (over - 20.0).abs() < 1e-9,
            "a third of 1200 mm is 400: {over}"
        );
        assert_eq!(said(&runner(400), "settings:runner"), None, "just a third");
    }
}
