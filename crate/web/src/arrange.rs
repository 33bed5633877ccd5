//! Acts on several things at once: laid on one another, repeated, swapped, put
//! in order, strewn along a path.
use planner::catalogue::{self, Entry, Kind};
use planner::commands::{self, InLine, Refused};
use planner::edit::Run;
use planner::layout::{Id, Point, Turn};
use planner::words::length;
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::objects::object;

/// Something of the catalogue.
#[derive(Serialize)]
struct Like {
    prop: &'static str,
    name: &'static str,
    size: String,
}

/// The things of these numbers.
pub(crate) fn these(ids: &[u16]) -> Vec<Id> {
    ids.iter().copied().map(Id).collect()
}

impl Planner {
    fn cloth(&self, id: u16, over: bool) -> u16 {
        let cloth = commands::cloth_at(self.now(), Id(id)).filter(|found| found.1 == over);
        cloth.map_or(0, |(linen, _)| linen.0)
    }

    fn like<'a>(&self, entries: impl Iterator<Item = &'a Entry>) -> Result<JsValue, JsError> {
        let units = self.now().head.units;
        let like = |entry: &Entry| Like {
            prop: entry.id,
            name: entry.name,
            size: length(f64::from(entry.size.extent()[0]), units),
        };
        object(&entries.map(like).collect::<Vec<_>>())
    }
}

#[wasm_bindgen]
impl Planner {
    /// Everything of the catalogue that can take a thing's place.
    ///
    /// # Errors
    /// When the browser refuses to make it.
    pub fn swaps(&self, id: u16) -> Result<JsValue, JsError> {
        self.like(commands::swaps(self.now(), Id(id)).into_iter())
    }

    /// Everything of the catalogue that is strewn.
    ///
    /// # Errors
    /// When the browser refuses to make it.
    pub fn strewn(&self) -> Result<JsValue, JsError> {
        let foods = catalogue::foods().iter();
        self.like(foods.filter(|food| food.kind == Kind::Scatter))
    }

    /// The dish or board under a thing that it could be laid on; 0 for none.
    #[must_use]
    pub fn lies_over(&self, id: u16) -> u16 {
        commands::lies_over(self.now(), &self.scene, Id(id)).map_or(0, |id| id.0)
    }

    /// Lays a thing on another, or on the table for 0.
    ///
    /// # Errors
    /// When it is locked or would lie on itself.
    pub fn put_on(&mut self, id: u16, on: u16) -> Result<JsValue, JsError> {
        let on = (on != 0).then_some(Id(on));
        let act = commands::put_on(self.now(), &self.scene, Id(id), on)?;
        self.make(act, Run::Alone)
    }

    /// The things a linen would be laid over.
    #[must_use]
    pub fn crossed(&self, linen: u16) -> Vec<u16> {
        let ids = commands::crossed(self.now(), Id(linen));
        ids.into_iter().map(|id| id.0).collect()
    }

    /// The linen that lies over a thing; 0 for none.
    #[must_use]
    pub fn cloth_over(&self, id: u16) -> u16 {
        self.cloth(id, true)
    }

    /// The linen a thing stands on that could lie over it; 0 for none.
    #[must_use]
    pub fn cloth_below(&self, id: u16) -> u16 {
        self.cloth(id, false)
    }

    /// Lays a linen over things.
    ///
    /// # Errors
    /// When it is locked.
    pub fn lay_over(&mut self, linen: u16, ids: &[u16]) -> Result<JsValue, JsError> {
        let act = commands::lay_over(self.now(), Id(linen), &these(ids))?;
        self.make(act, Run::Alone)
    }

    /// Lays a linen under things again, under all when none is named.
    ///
    /// # Errors
    /// When it is locked.
    pub fn lay_under(&mut self, linen: u16, ids: &[u16]) -> Result<JsValue, JsError> {
        let act = commands::lay_under(self.now(), Id(linen), &these(ids))?;
        self.make(act, Run::Alone)
    }

    /// Lays things again along a line, so many copies, this gap apart in mm,
    /// towards a clock direction in degrees.
    ///
    /// # Errors
    /// When it would leave the limits.
    pub fn repeat_along(
        &mut self,
        ids: &[u16],
        count: usize,
        gap: i32,
        towards: f64,
    ) -> Result<JsValue, JsError> {
        let towards = Turn::from_degrees(towards);
        let act = commands::repeat_along(self.now(), &these(ids), count, gap, towards)?;
        self.make(act, Run::Alone)
    }

    /// Lays things again round the middle of the table, so many in all, over a
    /// sweep in degrees.
    ///
    /// # Errors
    /// When it would leave the limits.
    pub fn repeat_round(
        &mut self,
        ids: &[u16],
        count: usize,
        sweep: i32,
    ) -> Result<JsValue, JsError> {
        let middle = self.now().table.centre();
        let sweep = sweep.saturating_mul(2);
        let act = commands::repeat_round(self.now(), &these(ids), middle, count, sweep)?;
        self.make(act, Run::Alone)
    }

    /// Takes another thing of the catalogue in the place of these, or of all
    /// that are like them.
    ///
    /// # Errors
    /// When it is of another kind, or one of them is locked.
    pub fn swap(&mut self, ids: &[u16], prop: &str, all: bool) -> Result<JsValue, JsError> {
        let act = commands::swap(self.now(), &these(ids), prop, all)?;
        self.make(act, Run::Alone)
    }

    /// Leaves equal gaps between those of the things that are not locked.
    ///
    /// # Errors
    /// When there are too few.
    pub fn equal_gaps(&mut self, ids: &[u16]) -> Result<JsValue, JsError> {
        let free = commands::free(self.now(), &these(ids))?;
        let act = commands::equal_gaps(self.now(), &free)?;
        self.make(act, Run::Alone)
    }

    /// Brings those of the things in line that are not locked: `level`,
    /// `upright` or with the `runner`.
    ///
    /// # Errors
    /// When there are too few, or there is no runner.
    pub fn align(&mut self, ids: &[u16], with: &str) -> Result<JsValue, JsError> {
        let with = InLine::parse(with).ok_or_else(|| Refused::Unknown(with.into()))?;
        let free = commands::free(self.now(), &these(ids))?;
        let act = commands::align(self.now(), &free, with)?;
        self.make(act, Run::Alone)
    }

    /// Strews a thing of the catalogue along a path, x and y in turn, mm.
    ///
    /// # Errors
    /// When it is not strewn, or would leave the limits.
    pub fn strew(&mut self, prop: &str, path: &[i32], amount: i32) -> Result<JsValue, JsError> {
        let path: Vec<Point> = path
            .chunks_exact(2)
            .map(|xy| Point::new(xy[0], xy[1]))
            .collect();
        let act = commands::strew(self.now(), prop, &path, amount)?;
        self.make(act, Run::Alone)
    }
}
