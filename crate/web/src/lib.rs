//! The wasm boundary of Overspread over [`planner`]: one class, numbers during
//! a drag, small objects when something is opened, saved, selected or read.
mod about;
mod acts;
mod answers;
mod arrange;
mod arranged;
mod beside;
mod camera;
mod catalogue;
mod dates;
mod dom;
mod drag;
mod exposures;
mod guides;
mod marks;
mod objects;
mod pages;
mod papers;
mod photo;
mod picks;
mod propose;
mod reader;
mod season;
mod seats;
mod sheet;
mod shelf;
mod test_frame;
mod things;
mod trace;

use planner::commands::{Carry, Drag, taken_by};
use planner::drawing::{Drawn, View};
use planner::edit::History;
use planner::layout::{Id, Layout};
use planner::propose::Search;
use planner::readings::{Kept, Report, Settling};
use planner::scene::Scene;
use planner::shelf::ShelfThing;
use planner::starters;
use wasm_bindgen::prelude::*;

use sheet::Sheet;

/// One open layout: its history, what it means in space and how it is drawn.
#[wasm_bindgen]
pub struct Planner {
    history: History,
    scene: Scene,
    /// What was last read, in the worker's instance.
    report: Option<Report>,
    /// What was made for it, to go on from after the next edit.
    kept: Option<Kept>,
    /// Whether what exposures add is marked: of all, or of one of them.
    regions: Option<Option<Id>>,
    /// What is being read.
    settling: Option<Settling>,
    /// What is being searched for something better, and how many proposals of it
    /// were told.
    search: Option<(Search, usize)>,
    drag: Option<Drag>,
    /// Light, stand or photographer in hand.
    carry: Option<Carry>,
    /// A place at the table in hand, and where it is taken to, mm.
    sliding: Option<(Id, glam::DVec2)>,
    sheet: Option<Sheet>,
    /// What is written over the things, which changes while they are dragged.
    over: Option<Sheet>,
    /// What stands in them.
    drawn: Drawn,
    view: View,
    /// The exposure that is worked on alone, and the table as it stands in it.
    then: Option<(Id, Layout)>,
    /// Whether the picture is drawn through the lens rather than from above.
    through: bool,
    /// What the photographer owns.
    shelf: Vec<ShelfThing>,
}

impl Planner {
    fn of(layout: Layout) -> Self {
        let scene = Scene::of(&layout, None);
        Self {
            history: History::new(layout),
            scene,
            report: None,
            kept: None,
            regions: None,
            settling: None,
            search: None,
            drag: None,
            carry: None,
            sliding: None,
            sheet: None,
            over: None,
            drawn: Drawn::default(),
            view: pages::on_page(),
            then: None,
            through: false,
            shelf: Vec::new(),
        }
    }

    pub(crate) fn now(&self) -> &Layout {
        self.history.layout()
    }

    /// The table under the finger: as it is set, or as it stands in the exposure
    /// that is worked on.
    pub(crate) fn table(&self) -> &Layout {
        self.then.as_ref().map_or(self.now(), |(_, then)| then)
    }

    /// The layout is another one: everything made of it is stale.
    pub(crate) fn changed(&mut self) {
        self.stand(self.then.as_ref().map(|(id, _)| *id));
        self.report = None;
        self.settling = None;
        self.search = None;
        self.drag = None;
        self.carry = None;
        self.sliding = None;
    }
}

#[wasm_bindgen]
impl Planner {
    /// Starts with the demonstration table.
    #[wasm_bindgen(constructor)]
    #[must_use]
    pub fn new() -> Self {
        console_error_panic_hook::set_once();
        Self::of(starters::harbour_supper())
    }

    /// Identity of the open layout, 16 hex digits.
    #[wasm_bindgen(getter)]
    #[must_use]
    pub fn id(&self) -> String {
        self.now().id.to_string()
    }

    /// The open layout as a file.
    #[must_use]
    pub fn save_json(&self) -> String {
        self.now().to_json()
    }

    /// What a link to this layout carries after its `#`, without what is
    /// private.
    #[must_use]
    pub fn link(&self) -> String {
        planner::link::link(&planner::link::public(self.now())).fragment
    }

    /// What a link for a helper carries, with all that is private: notes, rig,
    /// holding times, stand-ins, where things come from and live.
    #[must_use]
    pub fn link_whole(&self) -> String {
        planner::link::link(self.now()).fragment
    }

    /// The things a finger takes at a place on the table (mm), topmost first.
    #[must_use]
    pub fn hit(&self, x: f64, y: f64) -> Vec<u16> {
        let found = self.scene.hit(glam::DVec2::new(x, y));
        found.into_iter().map(|Id(id)| id).collect()
    }

    /// Outline of a thing or a card, x and y in turn, mm; empty when there is
    /// none.
    #[must_use]
    pub fn outline(&self, id: u16) -> Vec<f64> {
        let found = taken_by(self.now(), &self.scene, Id(id));
        found.map_or_else(Vec::new, |outline| {
            outline.iter().flat_map(|p| p.to_array()).collect()
        })
    }
}

impl Default for Planner {
    fn default() -> Self {
        Self::new()
    }
}
