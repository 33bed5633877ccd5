//! What was done to the open layout, so that it can be taken back.
use planner::edit::{Edit, EditError};
use planner::layout::Layout;

/// A layout with every edit made to it since it was opened.
pub(crate) struct History {
    layout: Layout,
    done: Vec<(String, Edit)>,
    undone: Vec<(String, Edit)>,
}

/// Edits kept for taking back.
const DEEPEST: usize = 400;

impl History {
    pub(crate) fn new(layout: Layout) -> Self {
        Self {
            layout,
            done: Vec::new(),
            undone: Vec::new(),
        }
    }

    pub(crate) fn layout(&self) -> &Layout {
        &self.layout
    }

    /// Makes `edit`, called `name`; the layout stays when it does not fit.
    pub(crate) fn make(&mut self, name: &str, edit: Edit) -> Result<(), EditError> {
        edit.apply_checked(&mut self.layout)?;
        self.done.push((name.into(), edit));
        if self.done.len() > DEEPEST {
            self.done.remove(0);
        }
        self.undone.clear();
        Ok(())
    }

    /// Takes the last edit back; returns its name and what undid it.
    pub(crate) fn undo(&mut self) -> Option<(String, Edit)> {
        let (name, edit) = self.done.pop()?;
        let back = edit.reverted();
        back.apply(&mut self.layout).ok()?;
        self.undone.push((name.clone(), edit));
        Some((name, back))
    }

    /// Makes the edit last taken back again.
    pub(crate) fn redo(&mut self) -> Option<(String, Edit)> {
        let (name, edit) = self.undone.pop()?;
        edit.apply(&mut self.layout).ok()?;
        self.done.push((name.clone(), edit.clone()));
        Some((name, edit))
    }

    pub(crate) fn can_undo(&self) -> bool {
        !self.done.is_empty()
    }

    pub(crate) fn can_redo(&self) -> bool {
        !self.undone.is_empty()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use planner::layout::LayoutId;

    #[test]
    fn there_and_back_and_there_again() {
        let before = Layout::empty(LayoutId(1));
        let mut after = before.clone();
        after.head.title = "Supper".into();
        let mut history = History::new(before.clone());
        history
            .make("a title", Edit::between(&before, &after))
            .expect("fits");
        assert_eq!(history.layout(), &after, "made");
        let (name, _) = history.undo().expect("there is one");
        assert_eq!(
            (name.as_str(), history.layout()),
            ("a title", &before),
            "taken back"
        );
        history.redo().expect("there is one");
        assert_eq!(history.layout(), &after, "made again");
        assert!(
            history.redo().is_none() && history.can_undo(),
            "nothing more ahead"
        );
    }
}
