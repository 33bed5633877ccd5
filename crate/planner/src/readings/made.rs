//! What a study makes of a layout, and how the next study comes by it.
use std::cell::OnceCell;
use std::rc::Rc;

use super::mass::Dish;
use super::separation_light::Outlines;
use super::walked::PartWalk;
use crate::exposures::Added;
use crate::layout::Layout;
use crate::scene::{Lit, Scene, Stacks};

/// What has been made of a layout.
#[derive(Default)]
pub(super) struct Parts {
    pub(super) scene: OnceCell<Scene>,
    pub(super) walks: OnceCell<Vec<Rc<PartWalk>>>,
    pub(super) by_number: OnceCell<Vec<Rc<PartWalk>>>,
    pub(super) dishes: OnceCell<Vec<Dish>>,
    pub(super) lit: OnceCell<Rc<Lit>>,
    pub(super) after_light: OnceCell<Option<Outlines>>,
    pub(super) stacks: OnceCell<Stacks>,
    pub(super) added: OnceCell<Vec<Rc<Added>>>,
}

/// What was made of a layout, to be taken over where it still holds.
#[derive(Clone, Copy)]
pub(super) struct Made<'a> {
    pub(super) layout: &'a Layout,
    pub(super) parts: &'a Parts,
}

impl<'a> Made<'a> {
    pub(super) fn scene(&self) -> Option<(&'a Layout, &'a Scene)> {
        Some((self.layout, self.parts.scene.get()?))
    }

    pub(super) fn walks(&self) -> Option<(&'a Scene, &'a [Rc<PartWalk>])> {
        Some((self.parts.scene.get()?, self.parts.walks.get()?))
    }

    pub(super) fn added(&self) -> Option<(&'a Layout, &'a [Rc<Added>])> {
        Some((self.layout, self.parts.added.get()?))
    }

    pub(super) fn lit(&self) -> Option<(&'a Layout, &'a Lit)> {
        Some((self.layout, self.parts.lit.get()?))
    }
}

/// What a study leaves behind for the study of the layout after an edit.
pub struct Kept {
    pub(super) layout: Layout,
    pub(super) made: Unfinished,
}

impl Kept {
    pub(super) const fn of(layout: Layout, made: Unfinished) -> Self {
        Self { layout, made }
    }
}

/// What was made in a study that is to go on.
#[derive(Default)]
pub(super) struct Unfinished {
    pub(super) parts: Parts,
    /// The same of the crop in view.
    pub(super) viewed: Option<Box<Parts>>,
}
