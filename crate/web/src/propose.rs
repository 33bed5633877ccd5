//! The search in the worker's instance, and what its proposals look like.
use planner::commands::Act;
use planner::edit::{Edit, Run};
use planner::layout::Id;
use planner::optics::View;
use planner::propose::{May, Move, Proposal, Search, Wish, ghosts};
use planner::readings::{Matter, Weighing};
use serde::{Deserialize, Serialize};
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::acts::spoken;
use crate::objects::{asked, object};

/// What the page wants of a search.
#[derive(Deserialize)]
struct Wanted {
    may: Vec<String>,
    most: Vec<String>,
    /// The finding to be cured, by its key; empty for none.
    cure: String,
    seed: u32,
    evaluations: u32,
    crop: u16,
}

impl Wanted {
    fn wish(&self) -> Wish {
        let cure = Some(self.cure.clone()).filter(|key| !key.is_empty());
        Wish {
            may: May::named(&self.may),
            several: cure.is_none(),
            weighing: Weighing {
                most: Matter::named(&self.most),
                cure,
            },
            seed: self.seed,
            evaluations: self.evaluations,
            crop: Id(self.crop),
        }
    }
}

/// How far a search is, and what it found.
#[derive(Serialize)]
struct Searched<'a> {
    spent: u32,
    all: u32,
    through: bool,
    /// What was found since it was last asked.
    new: Vec<Told<'a>>,
}

/// A proposal with the records of its edits, as [`Planner::make_record`] takes
/// them.
#[derive(Serialize)]
struct Told<'a> {
    name: &'a str,
    moves: Vec<Single<'a>>,
    #[serde(flatten)]
    gains: Gains<'a>,
    record: String,
}

#[derive(Serialize)]
struct Gains<'a> {
    better: &'a [planner::propose::Differs],
    worse: &'a [planner::propose::Differs],
    scores: [Option<planner::readings::Scores>; 2],
}

#[derive(Serialize)]
struct Single<'a> {
    sentences: &'a [String],
    record: String,
}

fn told(proposal: &Proposal) -> Told<'_> {
    let single = |one: &Move| one.edit.to_json();
    let moves = proposal.moves.iter().map(|one| Single {
        sentences: &one.sentences,
        record: single(one),
    });
    Told {
        name: &proposal.name,
        moves: moves.collect(),
        gains: Gains {
            better: &proposal.better,
            worse: &proposal.worse,
            scores: proposal.scores,
        },
        record: proposal.edit.to_json(),
    }
}

#[wasm_bindgen]
impl Planner {
    /// Begins to search from the layout as it was last read; false where it has
    /// not been read, or was read without its hands. What was begun before is
    /// dropped.
    ///
    /// # Errors
    /// When what is wanted cannot be understood.
    pub fn begin_search(&mut self, wanted: JsValue) -> Result<bool, JsError> {
        let wanted: Wanted = asked(wanted)?;
        let (report, kept) = (self.report.as_ref(), self.kept.as_ref());
        let begun = report.map(|report| Search::begin(self.now(), report, kept, wanted.wish()));
        self.search = begun.map(|search| (search, 0));
        Ok(self.search.is_some())
    }

    /// Searches on for as long as `go_on` says yes, a little at least; how far
    /// it is and what it found since it was last asked.
    ///
    /// # Errors
    /// When the browser refuses to make the object.
    pub fn search_on(&mut self, go_on: &js_sys::Function) -> Result<JsValue, JsError> {
        let says = || {
            let said = go_on.call0(&JsValue::NULL);
            said.is_ok_and(|yes| yes.is_truthy())
        };
        let Some((search, known)) = &mut self.search else {
            return Ok(JsValue::UNDEFINED);
        };
        let through = search.step(&says);
        let [spent, all] = search.progress();
        let found = search.found();
        let new = found.iter().skip(*known);
        let new: Vec<Told<'_>> = new.map(told).collect();
        *known = found.len();
        object(&Searched {
            spent,
            all,
            through,
            new,
        })
    }

    /// Drops a search.
    pub fn drop_search(&mut self) {
        self.search = None;
    }

    /// What these records move, one after the other, picked for
    /// [`Planner::marks_numbers`].
    ///
    /// # Errors
    /// When one cannot be read or no longer fits.
    pub fn pick_ghosts(&mut self, records: Vec<String>) -> Result<(), JsError> {
        let view = if self.through {
            View::of(self.now())
        } else {
            View::Above
        };
        let mut marks = Vec::new();
        for record in &records {
            marks.extend(ghosts(self.now(), &edit(record)?, view)?);
        }
        self.view.marks = marks;
        Ok(())
    }

    /// Makes the edits these records hold, as one act called `name`.
    ///
    /// # Errors
    /// When one cannot be read or no longer fits; the layout stays.
    pub fn make_records(&mut self, name: &str, records: Vec<String>) -> Result<JsValue, JsError> {
        let mut after = self.now().clone();
        for record in &records {
            edit(record)?.apply(&mut after)?;
        }
        let act = Act::between(name.into(), self.now(), &after)?;
        self.make(act, Run::Alone)
    }

    /// How a record stands to the open layout: 1 when it fits, 2 when it is done
    /// already, 0 when neither.
    #[must_use]
    pub fn record_fits(&self, record: &str) -> u8 {
        let Ok(edit) = Edit::open(record) else {
            return 0;
        };
        let fits = |edit: &Edit| edit.apply(&mut self.now().clone()).is_ok();
        if fits(&edit) {
            1
        } else if fits(&edit.reverted()) {
            2
        } else {
            0
        }
    }
}

fn edit(record: &str) -> Result<Edit, JsError> {
    Edit::open(record).map_err(|problems| spoken(&problems))
}
