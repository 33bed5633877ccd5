//! What a reading works on: the layout and what has been made of it so far.
use std::cell::OnceCell;

use super::walked::{PartWalk, walk_all};
use crate::layout::{Id, Item, Layout};
use crate::scene::Scene;
use crate::words::say;

/// A layout under study. Scene and walks are made when first asked for.
pub struct Study<'a> {
    layout: &'a Layout,
    scene: OnceCell<Scene>,
    walks: OnceCell<Vec<PartWalk>>,
}

impl<'a> Study<'a> {
    /// Studies a layout.
    #[must_use]
    pub const fn new(layout: &'a Layout) -> Self {
        Self {
            layout,
            scene: OnceCell::new(),
            walks: OnceCell::new(),
        }
    }

    /// The layout.
    #[must_use]
    pub const fn layout(&self) -> &'a Layout {
        self.layout
    }

    /// The scene of all exposures together.
    pub fn scene(&self) -> &Scene {
        self.scene.get_or_init(|| Scene::of(self.layout, None))
    }

    /// Every part's outline, walked.
    pub fn walks(&self) -> &[PartWalk] {
        self.walks.get_or_init(|| walk_all(self.scene()))
    }

    /// The item with this id.
    #[must_use]
    pub fn item(&self, id: Id) -> Option<&'a Item> {
        self.layout.items.iter().find(|i| i.id == id)
    }

    /// The name an object goes by.
    #[must_use]
    pub fn name(&self, id: Id) -> String {
        let l = self.layout;
        if id == Id(0) {
            let own = &l.table.surface.name;
            return if own.is_empty() {
                say("ground-board", &[])
            } else {
                own.clone()
            };
        }
        let item = l.items.iter().find(|i| i.id == id).map(|i| i.name.clone());
        let linen = || l.linens.iter().find(|i| i.id == id).map(|i| i.name.clone());
        let hand = || {
            l.hands
                .iter()
                .find(|h| h.id == id)
                .map(|h| crate::scene::flag(l, h))
        };
        let crop = || l.crops.iter().find(|c| c.id == id).map(|c| c.name.clone());
        item.or_else(linen)
            .or_else(hand)
            .or_else(crop)
            .unwrap_or_default()
    }

    /// Whether taste may be read: a frame and three dishes on the table.
    #[must_use]
    pub fn has_three_dishes(&self) -> bool {
        self.layout.items.iter().filter(|i| i.on.is_none()).count() >= 3
    }
}
