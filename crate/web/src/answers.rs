//! What a client answers: made from the remarks on the open layout, read, and
//! put on the layout it answers.
use planner::answers::{Told, said, taken, told};
use planner::commands::Act;
use planner::edit::Run;
use planner::layout::{Answered, Verdict, clean_text};
use planner::link::{Answer, is_answer, link_answer, unlink_answer};
use planner::optics;
use planner::scene::Scene;
use planner::shape::frame_outline;
use planner::words::say;
use serde::{Deserialize, Serialize};
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::acts::spoken;
use crate::objects::{asked, object};

/// An answer as it is read.
#[derive(Serialize)]
struct Shown<'a> {
    layout: String,
    /// What it says, in words.
    says: String,
    said: &'a Answered,
    remarks: Vec<Told>,
    /// Whether it answers the open layout.
    open: bool,
    /// Whether all of it is on the open layout already.
    taken: bool,
    /// How many remarks do not fit on it.
    left: usize,
}

/// What a client says besides the remarks.
#[derive(Deserialize)]
struct Wish {
    verdict: Verdict,
    choice: String,
    by: String,
    given: String,
}

#[wasm_bindgen]
impl Planner {
    /// Whether what an address carries after its `#` is an answer and not a
    /// layout.
    #[must_use]
    pub fn carries_answer(payload: &str) -> bool {
        is_answer(payload)
    }

    /// What a link carries after its `#` that answers the open layout with the
    /// remarks on it.
    ///
    /// # Errors
    /// When the wish is none.
    pub fn answer_link(&self, wish: JsValue) -> Result<String, JsError> {
        let wish: Wish = asked(wish)?;
        let head = &self.now().head;
        Ok(link_answer(&Answer {
            layout: self.now().id,
            said: Answered {
                verdict: wish.verdict,
                version: head.revision.number,
                date: head.revision.date.clone(),
                given: wish.given,
                choice: clean_text(&wish.choice),
                by: clean_text(&wish.by),
            },
            remarks: head.remarks.clone(),
        }))
    }

    /// An answer in words, over the open layout.
    ///
    /// # Errors
    /// What is wrong with it.
    pub fn read_answer(&self, payload: &str) -> Result<JsValue, JsError> {
        let answer = unlink_answer(payload).map_err(|problem| spoken(&[problem]))?;
        let (edit, left) = taken(self.now(), &answer);
        object(&Shown {
            layout: answer.layout.to_string(),
            says: said(&answer.said),
            said: &answer.said,
            remarks: told(self.now(), &answer.remarks),
            open: answer.layout == self.now().id,
            taken: edit.is_empty(),
            left,
        })
    }

    /// Puts an answer on the open layout.
    ///
    /// # Errors
    /// What is wrong with it.
    pub fn take_answer(&mut self, payload: &str) -> Result<JsValue, JsError> {
        let answer = unlink_answer(payload).map_err(|problem| spoken(&[problem]))?;
        let act = Act {
            name: say("answer-taken", &[]),
            edit: taken(self.now(), &answer).0,
        };
        self.make(act, Run::Alone)
    }

    /// The remarks on the open layout in words.
    ///
    /// # Errors
    /// When the browser refuses to make them.
    pub fn remarks(&self) -> Result<JsValue, JsError> {
        object(&told(self.now(), &self.now().head.remarks))
    }

    /// What was answered to the open layout, in words; empty for nothing.
    #[must_use]
    pub fn answered(&self) -> String {
        let answer = self.now().head.revision.answer.as_ref();
        answer.map_or_else(String::new, said)
    }

    /// The things at a place of the picture as the lens sees it (mm on the
    /// table), topmost first.
    #[must_use]
    pub fn seen_at(&self, x: f64, y: f64) -> Vec<u16> {
        let layout = self.now();
        let (eye, shown) = (optics::View::of(layout), frame_outline(&layout.frame));
        let scene = Scene::within(layout, None, eye, &shown, None);
        let found = scene.hit(glam::DVec2::new(x, y));
        found.into_iter().map(|id| id.0).collect()
    }

    /// Sets whether remarks are drawn on the picture.
    pub fn show_notes(&mut self, notes: bool) {
        self.view.notes = notes;
    }
}
