//! A layout within a link: what the client may see, and nothing private.
use planner::layout::{Layout, Problem};
use planner::link;
use wasm_bindgen::prelude::*;

use crate::Planner;

/// What stands after the `#`: the layout without the note, the client's name
/// and what the photographer has accepted, which are nobody else's business.
fn written(layout: &Layout) -> String {
    let mut shared = layout.clone();
    shared.head.note.clear();
    shared.head.client.clear();
    shared.intended.clear();
    link::link(&shared).fragment
}

/// All that is wrong with a link, for the one who opened it. What concerns the
/// link as a whole names no place.
fn spoken(problems: &[Problem]) -> String {
    let line = |p: &Problem| {
        let place = match p.path.as_str() {
            "" | "link" => String::new(),
            path => format!("{path}: "),
        };
        format!("{place}found {}, allowed {}", p.found, p.allowed)
    };
    let lines: Vec<String> = problems.iter().map(line).collect();
    lines.join("; ")
}

#[wasm_bindgen]
impl Planner {
    /// What a link to this layout carries after its `#`.
    #[must_use]
    pub fn link(&self) -> String {
        written(self.now())
    }

    /// Opens what a link carries after its `#`.
    ///
    /// # Errors
    /// When it holds no layout; the open one stays.
    pub fn open_link(&mut self, payload: &str) -> Result<(), JsError> {
        let read = link::unlink(payload).map_err(|problems| JsError::new(&spoken(&problems)))?;
        self.open(read.layout);
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use planner::starters::harbour_supper;

    #[test]
    fn a_link_carries_the_layout_without_what_is_private() {
        let mut layout = harbour_supper();
        layout.head.note = "the client must not see this".into();
        layout.head.client = "someone".into();
        let mut public = layout.clone();
        public.head.note.clear();
        public.head.client.clear();
        let read = link::unlink(&written(&layout)).expect("reads");
        assert_eq!(read.layout, public, "all but the private words");
    }

    #[test]
    fn all_problems_of_a_link_are_said() {
        let mut layout = harbour_supper();
        layout.items[0].on = Some(planner::layout::Id(59_999));
        layout.items[1].on = Some(planner::layout::Id(59_998));
        let problems = link::unlink(&written(&layout)).expect_err("two loose ends");
        let said = spoken(&problems);
        for place in ["items[0].on: ", "items[1].on: "] {
            assert!(said.contains(place), "{place} in: {said}");
        }
    }

    #[test]
    fn a_damaged_link_is_refused_in_words() {
        let whole = written(&harbour_supper());
        for cut in [0, 1, 2, whole.len() / 2, whole.len() - 1] {
            let problems = link::unlink(&whole[..cut]).expect_err("cut");
            assert!(!spoken(&problems).is_empty(), "cut at {cut} says why");
        }
    }
}
