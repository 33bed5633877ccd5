//! Exposures: which one is worked on, and what is told of things in it.
use planner::catalogue;
use planner::commands::{self, How, Look};
use planner::edit::Run;
use planner::exposures::in_exposure;
use planner::layout::{As, ExposureKind, Id};
use planner::scene::{Scene, exposure_name};
use serde::Deserialize;
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::acts::during;
use crate::objects::{asked, object};

/// What a thing is to be in an exposure.
#[derive(Deserialize)]
#[serde(rename_all = "kebab-case")]
enum Wish {
    AsSet,
    Absent,
    Look(Look),
}

impl Planner {
    /// Works on the table as it stands in this exposure from here on; as it is
    /// set for none, and when there is no such exposure.
    pub(crate) fn stand(&mut self, exposure: Option<Id>) {
        let known = |id: &Id| self.now().exposures.iter().any(|e| e.id == *id);
        let exposure = exposure.filter(known);
        self.then = exposure.map(|id| (id, in_exposure(self.now(), id)));
        self.scene = Scene::of(self.table(), None);
    }

    /// The exposure in which a thing is moved instead of where it is set; none
    /// for hands, which are in one exposure only.
    pub(crate) fn moving_in(&self, id: Id) -> Option<Id> {
        let (exposure, _) = self.then.as_ref()?;
        let hand = self.now().hands.iter().any(|h| h.id == id);
        (!hand).then_some(*exposure)
    }
}

#[wasm_bindgen]
impl Planner {
    /// Works on the table as it stands in this exposure, or as it is set for 0.
    pub fn work_in(&mut self, exposure: u16) {
        let wanted = Some(Id(exposure)).filter(|id| id.0 != 0);
        if self.then.as_ref().map(|(id, _)| *id) != wanted {
            self.drag = None;
            self.stand(wanted);
        }
    }

    /// An exposure as it is called.
    #[must_use]
    pub fn exposure_name(&self, exposure: u16) -> String {
        exposure_name(self.now(), Id(exposure))
    }

    /// How long an exposure takes, minutes, as told or as usual.
    #[must_use]
    pub fn exposure_minutes(&self, exposure: u16) -> i32 {
        let all = self.now().exposures.iter();
        let own = all.clone().find(|e| e.id == Id(exposure));
        own.map_or(0, planner::layout::Exposure::takes)
    }

    /// How a thing is in an exposure, as a file has it.
    #[must_use]
    pub fn state_in(&self, exposure: u16, item: u16) -> String {
        let own = self.now().exposures.iter().find(|e| e.id == Id(exposure));
        let is = own.map_or(As::Set, |e| planner::exposures::state_of(e, Id(item)));
        let word = match is {
            As::Set => "as-set",
            As::Absent => "absent",
            As::Moved => "moved",
            As::Changed => "changed",
        };
        word.into()
    }

    /// Whether a thing has food that can look otherwise.
    #[must_use]
    pub fn has_food(&self, item: u16) -> bool {
        let own = self.now().items.iter().find(|i| i.id == Id(item));
        own.is_some_and(commands::has_food)
    }

    /// Foods that can be put in another's place.
    ///
    /// # Errors
    /// When the browser refuses to make it.
    pub fn foods(&self) -> Result<JsValue, JsError> {
        let names = catalogue::foods().iter().map(|e| [e.id, e.name]);
        object(&names.collect::<Vec<_>>())
    }

    /// Adds an exposure of a kind.
    ///
    /// # Errors
    /// When there is no such kind or there are too many exposures.
    pub fn add_exposure(&mut self, kind: JsValue) -> Result<JsValue, JsError> {
        let kind: ExposureKind = asked(kind)?;
        let act = commands::add_exposure(self.now(), kind)?;
        self.make(act, Run::Alone)
    }

    /// Takes an exposure out, with its hands.
    ///
    /// # Errors
    /// When there is no such exposure.
    pub fn remove_exposure(&mut self, exposure: u16) -> Result<JsValue, JsError> {
        let act = commands::remove_exposure(self.now(), Id(exposure))?;
        self.make(act, Run::Alone)
    }

    /// Puts an exposure one place later, or earlier.
    ///
    /// # Errors
    /// When there is no such exposure.
    pub fn shift_exposure(&mut self, exposure: u16, later: bool) -> Result<JsValue, JsError> {
        let act = commands::shift_exposure(self.now(), Id(exposure), later)?;
        self.make(act, Run::Alone)
    }

    /// Sets how long an exposure takes, minutes, during a visit to its field.
    ///
    /// # Errors
    /// When there is no such exposure.
    pub fn exposure_takes(
        &mut self,
        exposure: u16,
        minutes: i32,
        visit: u32,
    ) -> Result<JsValue, JsError> {
        let act = commands::exposure_takes(self.now(), Id(exposure), minutes)?;
        self.make(act, during(visit))
    }

    /// Has a thing be so in an exposure.
    ///
    /// # Errors
    /// When there is no such exposure, thing or food.
    pub fn put_in(&mut self, exposure: u16, item: u16, how: JsValue) -> Result<JsValue, JsError> {
        let how = match asked(how)? {
            Wish::AsSet => How::Set,
            Wish::Absent => How::Absent,
            Wish::Look(look) => How::Look(look),
        };
        let act = commands::put_in(self.now(), Id(exposure), Id(item), &how)?;
        self.make(act, Run::Alone)
    }

    /// Puts all things of an exposure as they are set.
    ///
    /// # Errors
    /// When there is no such exposure.
    pub fn all_as_set(&mut self, exposure: u16) -> Result<JsValue, JsError> {
        let act = commands::all_as_set(self.now(), Id(exposure))?;
        self.make(act, Run::Alone)
    }
}
