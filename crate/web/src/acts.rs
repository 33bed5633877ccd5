//! Acts on the open layout. Each is one step that can be taken back, and gives
//! its name and what there is to keep of it.
use planner::commands::{self, Act, TableWish};
use planner::edit::{Done, Edit, History, Run};
use planner::layout::{Id, Layout, LayoutId, Problem};
use planner::words::{Arg, say};
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::objects::{asked, object};

/// All problems of a file or link in one message, a line each.
pub(crate) fn spoken(problems: &[Problem]) -> JsError {
    let lines: Vec<String> = problems.iter().map(Problem::to_string).collect();
    JsError::new(&lines.join("\n"))
}

/// Changes during one visit to a field are one step; 0 for no field.
pub(crate) const fn during(visit: u32) -> Run {
    if visit == 0 {
        Run::Alone
    } else {
        Run::Field(visit)
    }
}

impl Planner {
    /// Makes an act; nothing comes of one that changes nothing.
    pub(crate) fn make(&mut self, act: Act, run: Run) -> Result<JsValue, JsError> {
        let done = self.history.make(&act.name, act.edit, run)?;
        self.told(done)
    }

    fn told(&mut self, done: Option<Done>) -> Result<JsValue, JsError> {
        let Some(done) = done else {
            return Ok(JsValue::UNDEFINED);
        };
        self.changed();
        object(&done)
    }

    /// Works on `layout` from here on, drawn where the last one was.
    fn open(&mut self, layout: Layout) {
        self.then = None;
        self.history = History::new(layout);
        self.changed();
    }
}

#[wasm_bindgen]
impl Planner {
    /// Opens the demonstration table.
    pub fn open_starter(&mut self) {
        self.open(planner::starters::harbour_supper());
    }

    /// Opens a layout file.
    ///
    /// # Errors
    /// Every problem of the file, in one message; the open layout stays.
    pub fn open_json(&mut self, text: &str) -> Result<(), JsError> {
        let layout = planner::layout::open(text).map_err(|problems| spoken(&problems))?;
        self.open(layout);
        Ok(())
    }

    /// Opens what a link carries after its `#`. True when it carries more than
    /// is understood here, as a newer planner wrote it.
    ///
    /// # Errors
    /// When it holds no layout; the open one stays.
    pub fn open_link(&mut self, payload: &str) -> Result<bool, JsError> {
        let read = planner::link::unlink(payload).map_err(|problems| spoken(&problems))?;
        self.open(read.layout);
        Ok(!read.kept_sections.is_empty())
    }

    /// Opens what was kept: a file as it was after `upto` steps, the steps as
    /// written under their numbers, and how many of them are done. Returns
    /// what had to be left out, in words; nothing when all is there.
    ///
    /// # Errors
    /// Every problem of the file, in one message; the open layout stays.
    pub fn open_kept(
        &mut self,
        file: &str,
        upto: u32,
        at: u32,
        numbers: &[u32],
        records: Vec<String>,
    ) -> Result<String, JsError> {
        let layout = planner::layout::open(file).map_err(|problems| spoken(&problems))?;
        let steps: Vec<(u32, String)> = numbers.iter().copied().zip(records).collect();
        let (history, lost) = History::restored(layout, upto, at, &steps);
        self.history = history;
        self.then = None;
        self.changed();
        Ok(lost.map_or_else(String::new, |lost| {
            let number = Arg::Text((lost.number + 1).to_string());
            say(
                "step-lost",
                &[("number", number), ("why", Arg::Text(lost.why))],
            )
        }))
    }

    /// Lays a new table and opens it.
    ///
    /// # Errors
    /// When a dish or board is not known.
    pub fn lay(&mut self, wish: JsValue) -> Result<(), JsError> {
        let wish: TableWish = asked(wish)?;
        let layout = commands::lay(&wish)?;
        self.open(layout);
        Ok(())
    }

    /// Makes the open layout a copy of its own, with this identity.
    ///
    /// # Errors
    /// When the identity is not 16 hex digits.
    pub fn take_copy(&mut self, id: &str) -> Result<(), JsError> {
        let mut layout = self.now().clone();
        layout.based_on = Some(layout.id);
        layout.id = LayoutId(u64::from_str_radix(id, 16)?);
        self.open(layout);
        Ok(())
    }

    /// Takes the last step back.
    ///
    /// # Errors
    /// When it does not fit any more; it stays.
    pub fn undo(&mut self) -> Result<JsValue, JsError> {
        let done = self.history.undo()?;
        self.told(done)
    }

    /// Makes the step last taken back again.
    ///
    /// # Errors
    /// When it does not fit any more; it stays.
    pub fn redo(&mut self) -> Result<JsValue, JsError> {
        let done = self.history.redo()?;
        self.told(done)
    }

    /// Whether something can be taken back.
    #[must_use]
    pub fn can_undo(&self) -> bool {
        self.history.can_undo()
    }

    /// Whether a newer planner wrote what is open: it is shown and not saved.
    #[must_use]
    pub fn is_newer(&self) -> bool {
        self.now().is_newer()
    }

    /// Whether something can be made again.
    #[must_use]
    pub fn can_redo(&self) -> bool {
        self.history.can_redo()
    }

    /// Follows an edit made in another instance, keeping no step of it.
    ///
    /// # Errors
    /// When it cannot be read or does not fit.
    pub fn follow(&mut self, edit: &str) -> Result<(), JsError> {
        let edit = Edit::open(edit).map_err(|problems| spoken(&problems))?;
        let mut layout = self.now().clone();
        edit.apply_checked(&mut layout)?;
        self.open(layout);
        Ok(())
    }

    /// Makes the edit a record holds, as one act called `name`: what a finding
    /// proposes.
    ///
    /// # Errors
    /// When it cannot be read or no longer fits.
    pub fn make_record(&mut self, name: &str, record: &str) -> Result<JsValue, JsError> {
        let edit = Edit::open(record).map_err(|problems| spoken(&problems))?;
        let act = Act::of(name.into(), self.now(), edit)?;
        self.make(act, Run::Alone)
    }

    /// Brings the layout to the one in `text`, called `name`. Changes during
    /// one visit to a field, which has a number of its own, are one step;
    /// 0 for no field.
    ///
    /// # Errors
    /// Every problem of the text, in one message; the layout stays.
    pub fn become_json(&mut self, name: &str, text: &str, visit: u32) -> Result<JsValue, JsError> {
        let after = planner::layout::open(text).map_err(|problems| spoken(&problems))?;
        let act = Act::between(name.into(), self.now(), &after)?;
        self.make(act, during(visit))
    }

    /// Nudges a thing, its group unless it is taken `alone`, and what stands on
    /// them, mm, at a time, ms.
    ///
    /// # Errors
    /// When it is locked or would leave the limits.
    pub fn move_by(
        &mut self,
        id: u16,
        alone: bool,
        dx: i32,
        dy: i32,
        now: f64,
    ) -> Result<JsValue, JsError> {
        let act = match self.moving_in(Id(id)) {
            Some(exposure) => commands::move_in(self.now(), exposure, Id(id), [dx, dy], 0)?,
            None => commands::move_by(self.now(), Id(id), alone, [dx, dy])?,
        };
        self.make(act, Run::Nudge(now))
    }

    /// Nudges a thing round, half degrees clockwise, at a time, ms.
    ///
    /// # Errors
    /// When it is locked or would leave the limits.
    pub fn turn_by(&mut self, id: u16, half_degrees: i32, now: f64) -> Result<JsValue, JsError> {
        let act = match self.moving_in(Id(id)) {
            Some(exposure) => {
                commands::move_in(self.now(), exposure, Id(id), [0, 0], half_degrees)?
            }
            None => commands::turn_by(self.now(), Id(id), half_degrees)?,
        };
        self.make(act, Run::Nudge(now))
    }

    /// Ends a drag or a turn as one step.
    ///
    /// # Errors
    /// When it would leave the limits.
    pub fn drop(&mut self) -> Result<JsValue, JsError> {
        let Some(drag) = self.drag.take() else {
            return Ok(JsValue::UNDEFINED);
        };
        if let Some(sheet) = &mut self.sheet {
            sheet.lift(|_| false);
        }
        let in_exposure = drag.one().and_then(|id| Some((self.moving_in(id)?, id)));
        let act = match in_exposure {
            Some((exposure, id)) => {
                let by = [drag.by().x as i32, drag.by().y as i32];
                commands::move_in(self.now(), exposure, id, by, drag.half_degrees())?
            }
            None => drag.drop(self.now())?,
        };
        self.make(act, Run::Alone)
    }

    /// Takes things away, with what lies on them in a dish.
    ///
    /// # Errors
    /// When one is locked, or something else leads to one of them.
    pub fn remove(&mut self, ids: &[u16]) -> Result<JsValue, JsError> {
        let ids: Vec<Id> = ids.iter().copied().map(Id).collect();
        let act = commands::remove(self.now(), &ids)?;
        self.make(act, Run::Alone)
    }

    /// Lays the same thing again beside itself, with its group or `alone`, and
    /// with what lies on it.
    ///
    /// # Errors
    /// When it would leave the limits.
    pub fn repeat(&mut self, id: u16, alone: bool) -> Result<JsValue, JsError> {
        let act = commands::repeat(self.now(), Id(id), alone)?;
        self.make(act, Run::Alone)
    }
}
