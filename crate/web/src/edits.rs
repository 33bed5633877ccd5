//! Acts on the open layout. Each is one edit that can be taken back, and gives
//! its name and the record for the journal.
use std::collections::BTreeSet;

use planner::edit::Edit;
use planner::layout::{Extra, Group, Id, Item, Layout, LayoutId, Problem, Role};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::drag::moving;
use crate::objects::object;
use crate::stacks::{above, off_boards, turned};
use crate::{Planner, lay};

/// What an act gives back.
#[derive(Serialize)]
struct Done {
    name: String,
    record: String,
}

/// All problems of a file in one message.
pub(crate) fn spoken(problems: &[Problem]) -> JsError {
    let line = |p: &Problem| format!("{}: found {}, allowed {}", p.path, p.found, p.allowed);
    let lines: Vec<String> = problems.iter().map(line).collect();
    JsError::new(&lines.join("\n"))
}

impl Planner {
    /// Brings the layout to `after` as one edit; nothing when it is the same.
    pub(crate) fn become_layout(&mut self, name: &str, after: &Layout) -> Result<JsValue, JsError> {
        let edit = Edit::between(self.now(), after);
        self.make(name, edit)
    }

    fn make(&mut self, name: &str, edit: Edit) -> Result<JsValue, JsError> {
        if edit.is_empty() {
            return Ok(JsValue::UNDEFINED);
        }
        let record = edit.to_json();
        self.history.make(name, edit)?;
        self.changed();
        object(&Done {
            name: name.into(),
            record,
        })
    }

    fn told(&mut self, done: Option<(String, Edit)>, before: &str) -> Result<JsValue, JsError> {
        let Some((name, edit)) = done else {
            return Ok(JsValue::UNDEFINED);
        };
        self.changed();
        object(&Done {
            name: format!("{before}{name}"),
            record: edit.to_json(),
        })
    }

    pub(crate) fn fresh(layout: &mut Layout) -> Id {
        let id = Id(layout.head.next_id);
        layout.head.next_id += 1;
        id
    }

    pub(crate) fn fresh_number(layout: &mut Layout) -> u16 {
        let number = layout.head.next_number;
        layout.head.next_number += 1;
        number
    }

    pub(crate) fn name_of(&self, id: Id) -> String {
        let layout = self.now();
        let item = layout
            .items
            .iter()
            .find(|o| o.id == id)
            .map(|o| o.name.clone());
        let linen = layout
            .linens
            .iter()
            .find(|o| o.id == id)
            .map(|o| o.name.clone());
        let name = item.or(linen).unwrap_or_else(|| "hand".into());
        if name.is_empty() {
            "thing".into()
        } else {
            name
        }
    }

    pub(crate) fn shifted(&self, id: Id, dx: i32, dy: i32) -> Layout {
        let mut after = self.now().clone();
        let moves = moving(self.now(), id);
        for item in after.items.iter_mut().filter(|o| moves.contains(&o.id)) {
            item.at = item.at.moved(dx, dy);
        }
        for linen in after.linens.iter_mut().filter(|o| o.id == id) {
            linen.at = linen.at.moved(dx, dy);
        }
        for hand in after.hands.iter_mut().filter(|o| o.id == id) {
            hand.target = hand.target.moved(dx, dy);
        }
        for crop in after.crops.iter_mut().filter(|o| o.id == id) {
            crop.at = crop.at.moved(dx, dy);
        }
        after
    }
}

#[wasm_bindgen]
impl Planner {
    /// Takes the last act back.
    ///
    /// # Errors
    /// When the browser refuses the answer.
    pub fn undo(&mut self) -> Result<JsValue, JsError> {
        let done = self.history.undo();
        self.told(done, "taken back: ")
    }

    /// Makes the act last taken back again.
    ///
    /// # Errors
    /// When the browser refuses the answer.
    pub fn redo(&mut self) -> Result<JsValue, JsError> {
        let done = self.history.redo();
        self.told(done, "again: ")
    }

    /// Whether something can be taken back.
    #[must_use]
    pub fn can_undo(&self) -> bool {
        self.history.can_undo()
    }

    /// Whether something can be made again.
    #[must_use]
    pub fn can_redo(&self) -> bool {
        self.history.can_redo()
    }

    /// Makes an edit from the journal.
    ///
    /// # Errors
    /// When it cannot be read or does not fit.
    pub fn replay(&mut self, record: &str) -> Result<(), JsError> {
        let edit = Edit::open(record).map_err(|problems| spoken(&problems))?;
        self.history.make("", edit)?;
        self.changed();
        Ok(())
    }

    /// Makes the edit a record holds, as one act called `name`: what a finding
    /// proposes.
    ///
    /// # Errors
    /// When it cannot be read or no longer fits.
    pub fn make_record(&mut self, name: &str, record: &str) -> Result<JsValue, JsError> {
        let edit = Edit::open(record).map_err(|problems| spoken(&problems))?;
        self.make(name, edit)
    }

    /// Brings the layout to the one in `text`, as one edit called `name`.
    ///
    /// # Errors
    /// Every problem of the text, in one message; the layout stays.
    pub fn become_json(&mut self, name: &str, text: &str) -> Result<JsValue, JsError> {
        let after = planner::layout::open(text).map_err(|problems| spoken(&problems))?;
        self.become_layout(name, &after)
    }

    /// Moves a thing, its group and what stands on them, mm.
    ///
    /// # Errors
    /// When it is locked or would leave the limits.
    pub fn move_by(&mut self, id: u16, dx: i32, dy: i32) -> Result<JsValue, JsError> {
        self.free(&[id])?;
        let name = format!("{} moved", self.name_of(Id(id)));
        self.become_layout(&name, &self.shifted(Id(id), dx, dy))
    }

    /// Turns a thing, half degrees clockwise.
    ///
    /// # Errors
    /// When it is locked or would leave the limits.
    pub fn turn_by(&mut self, id: u16, half_degrees: i32) -> Result<JsValue, JsError> {
        self.free(&[id])?;
        let name = format!("{} turned", self.name_of(Id(id)));
        self.become_layout(&name, &turned(self.now(), Id(id), half_degrees))
    }

    /// Ends a drag or a turn as one edit.
    ///
    /// # Errors
    /// When it would leave the limits.
    pub fn drop(&mut self) -> Result<JsValue, JsError> {
        let Some(drag) = self.drag.take() else {
            return Ok(JsValue::UNDEFINED);
        };
        let id = drag.id.0;
        if drag.half_degrees != 0 {
            return self.turn_by(id, drag.half_degrees);
        }
        self.move_by(id, drag.by.x as i32, drag.by.y as i32)
    }

    /// Takes things away, with what lies on them in a dish.
    ///
    /// # Errors
    /// When one is locked, or something else leads to one of them.
    pub fn remove(&mut self, ids: &[u16]) -> Result<JsValue, JsError> {
        self.free(ids)?;
        let taken: BTreeSet<Id> = ids.iter().copied().map(Id).collect();
        let layout = self.now();
        let mut after = layout.clone();
        off_boards(&mut after, &taken);
        let gone = above(&after, &taken);
        let name = ids
            .first()
            .map_or_else(String::new, |id| self.name_of(Id(*id)));
        after.items.retain(|o| !gone.contains(&o.id));
        after.linens.retain(|o| !gone.contains(&o.id));
        after.hands.retain(|o| !gone.contains(&o.id));
        after.crops.retain(|o| !gone.contains(&o.id));
        for hand in &mut after.hands {
            hand.pair = hand.pair.filter(|id| !gone.contains(id));
            hand.holds = hand.holds.filter(|id| !gone.contains(id));
        }
        for crop in &mut after.crops {
            crop.must_show.retain(|id| !gone.contains(id));
        }
        let hands = &after.hands;
        after.exposures.retain(|e| {
            layout.hands.iter().all(|h| h.exposure != e.id)
                || hands.iter().any(|h| h.exposure == e.id)
        });
        let items = &after.items;
        after
            .groups
            .retain(|g| items.iter().any(|o| o.group == Some(g.id)));
        self.become_layout(&format!("{name} taken away"), &after)
    }

    /// Lays the same thing again beside itself, with what lies on it.
    ///
    /// # Errors
    /// When it would leave the limits.
    pub fn repeat(&mut self, id: u16) -> Result<JsValue, JsError> {
        let mut after = self.now().clone();
        let name = format!("{} repeated", self.name_of(Id(id)));
        if let Some(linen) = self.now().linens.iter().find(|o| o.id == Id(id)) {
            let mut copy = linen.clone();
            copy.id = Self::fresh(&mut after);
            copy.at = copy.at.moved(0, copy.size[1] / 2 + 40);
            after.linens.push(copy);
            return self.become_layout(&name, &after);
        }
        let stack: Vec<Item> = {
            let moves = moving(self.now(), Id(id));
            self.now()
                .items
                .iter()
                .filter(|o| moves.contains(&o.id))
                .cloned()
                .collect()
        };
        let Some(first) = stack.iter().find(|o| o.id == Id(id)) else {
            return Ok(JsValue::UNDEFINED);
        };
        let step = first.size.extent()[0] + 40;
        let mut ids: Vec<(Id, Id)> = Vec::new();
        let group = first.group.map(|_| Self::fresh(&mut after));
        if let Some(group) = group {
            after.groups.push(Group {
                id: group,
                name: String::new(),
                extra: Extra::new(),
            });
        }
        for item in &stack {
            let mut copy = item.clone();
            copy.id = Self::fresh(&mut after);
            ids.push((item.id, copy.id));
            let known = |old: Id| ids.iter().find(|(from, _)| *from == old).map(|(_, to)| *to);
            copy.on = copy.on.and_then(|on| known(on).or(Some(on)));
            copy.group = copy.group.and(group);
            copy.at = copy.at.moved(step, 0);
            // The picture has one hero; a second of it is a main dish.
            if copy.role == Role::Hero {
                copy.role = Role::Support;
            }
            after.items.push(copy);
        }
        self.become_layout(&name, &after)
    }

    /// Lays a new table and opens it.
    ///
    /// # Errors
    /// When a dish or board is not known.
    pub fn lay(&mut self, wish: JsValue) -> Result<(), JsError> {
        let wish: lay::Wish = serde_wasm_bindgen::from_value(wish)?;
        let layout = lay::lay(&wish)?;
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
}
