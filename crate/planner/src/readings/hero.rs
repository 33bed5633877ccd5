//! Hero: is the picture's main dish the heaviest thing in it?
use super::finding::{Finding, Grade, Mark, State};
use super::mass::on_table;
use super::study::Study;
use super::triangle::ranked;
use crate::layout::Role;
use crate::scene::root;
use crate::words::{Arg, say};

/// An observation when the hero is not the heaviest dish; waits for a hero.
pub(super) fn read(study: &Study<'_>) -> Option<Finding> {
    let ranked = ranked(study);
    // Food that is the hero weighs with the dish it lies on.
    let hero = study.layout().items.iter().find(|i| i.role == Role::Hero)?;
    let stack = root(study.layout(), hero.id);
    let place = ranked.iter().position(|r| r.0 == stack)?;
    let (id, _, at) = ranked[place];
    let item = study.item(id)?;
    let [w, d] = item.size.extent();
    (place > 0).then(|| Finding {
        key: format!("hero:{}", id.0),
        reading: "hero",
        state: State::LookAgain,
        rank: 2,
        figure: (place + 1) as f64,
        about: vec![id],
        sentence: say(
            "hero-rank",
            &[
                ("thing", Arg::Name(hero.name.clone())),
                ("rank", Arg::Text((place + 1).to_string())),
            ],
        ),
        working: vec![say("working-hero", &[])],
        grade: Grade::TradePractice,
        taste: true,
        marks: vec![Mark::Ring {
            at: on_table(study, at),
            radius: f64::from(w.max(d)) * 0.55,
        }],
        remedy: None,
    })
}
