//! What a reading works on: the layout and what has been made of it so far.
use std::cell::{Cell, OnceCell};
use std::rc::Rc;

use glam::DVec2;

use super::mass::{Dish, dishes};
use super::separation_light::{self, AfterLight};
use super::walked::{PartWalk, walk_all};
use crate::layout::{Crop, Id, Item, Layout};
use crate::optics::View;
use crate::order;
use crate::scene::{Lit, Scene, crop_outline, flag};
use crate::shape::frame_outline;
use crate::words::{Arg, clock, say};

/// A layout under study. Scene and walks are made when first asked for.
pub struct Study<'a> {
    layout: &'a Layout,
    crop: Option<&'a Crop>,
    view: Option<Id>,
    viewed: OnceCell<Box<Self>>,
    before: Option<Made<'a>>,
    before_viewed: Option<Made<'a>>,
    words: Cell<Words>,
    scene: OnceCell<Scene>,
    walks: OnceCell<Vec<Rc<PartWalk>>>,
    by_number: OnceCell<Vec<Rc<PartWalk>>>,
    dishes: OnceCell<Vec<Dish>>,
    lit: OnceCell<Lit>,
    after_light: OnceCell<Option<Vec<AfterLight>>>,
}

/// How much of a finding is put into words.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Words {
    /// All of it.
    All,
    /// What it says, without its working and the labels of its marks.
    Sentences,
    /// Nothing: its figure alone is wanted.
    None,
}

/// What was made of a layout, to be taken over where it still holds.
#[derive(Clone, Copy)]
struct Made<'a> {
    layout: &'a Layout,
    scene: &'a Scene,
    walks: &'a [Rc<PartWalk>],
}

/// What a study leaves behind for the study of the layout after an edit.
pub struct Kept {
    layout: Layout,
    scene: Scene,
    walks: Vec<Rc<PartWalk>>,
    /// The same of the crop in view.
    viewed: Option<Box<Self>>,
}

impl Kept {
    fn made(&self) -> Made<'_> {
        Made {
            layout: &self.layout,
            scene: &self.scene,
            walks: &self.walks,
        }
    }
}

/// The picture under study on the table plane: the frame, or a crop of it.
#[derive(Clone, Copy)]
pub(super) struct Picture {
    /// Its centre.
    pub(super) at: DVec2,
    /// Width and height, mm.
    pub(super) size: DVec2,
    /// Sine and cosine of its turn.
    turn: DVec2,
}

impl Picture {
    /// A place on the table in picture coordinates: mm right and down from
    /// the picture's top-left corner.
    pub(super) fn of_table(&self, p: DVec2) -> DVec2 {
        let back = DVec2::new(self.turn.y, -self.turn.x);
        back.rotate(p - self.at) + self.size * 0.5
    }

    /// A place in the picture on the table.
    pub(super) fn on_table(&self, p: DVec2) -> DVec2 {
        let turn = DVec2::new(self.turn.y, self.turn.x);
        turn.rotate(p - self.size * 0.5) + self.at
    }

    /// Its diagonal, mm.
    pub(super) fn diagonal(&self) -> f64 {
        self.size.length()
    }
}

impl<'a> Study<'a> {
    /// Studies a layout.
    #[must_use]
    pub const fn new(layout: &'a Layout) -> Self {
        Self {
            layout,
            crop: None,
            view: None,
            viewed: OnceCell::new(),
            before: None,
            before_viewed: None,
            words: Cell::new(Words::All),
            scene: OnceCell::new(),
            walks: OnceCell::new(),
            by_number: OnceCell::new(),
            dishes: OnceCell::new(),
            lit: OnceCell::new(),
            after_light: OnceCell::new(),
        }
    }

    /// With a crop in view: scores and what stands behind them are of what it
    /// keeps; of the whole frame when the layout has no such crop.
    #[must_use]
    pub fn viewing(self, crop: Id) -> Self {
        let known = self.layout.crops.iter().any(|c| c.id == crop);
        Self {
            view: known.then_some(crop),
            ..self
        }
    }

    /// The crop in view.
    pub(super) const fn view(&self) -> Option<Id> {
        self.view
    }

    /// The study of what is in view: this one, or that of the crop.
    pub(super) fn viewed(&self) -> &Self {
        if self.view.is_none() {
            return self;
        }
        let crop = || self.layout.crops.iter().find(|c| Some(c.id) == self.view);
        let viewed = self.viewed.get_or_init(|| {
            Box::new(Self {
                crop: crop(),
                before: self.before_viewed.or(self.before),
                ..Self::new(self.layout)
            })
        });
        viewed.say_only(self.words.get());
        viewed
    }

    /// Studies a layout after an edit: as [`Study::new`], to the last bit, but
    /// what the edit did not reach is taken over.
    #[must_use]
    pub fn after(layout: &'a Layout, kept: &'a Kept) -> Self {
        Self {
            before: Some(kept.made()),
            before_viewed: kept.viewed.as_ref().map(|viewed| viewed.made()),
            ..Self::new(layout)
        }
    }

    /// Studies a change of this layout, as [`Study::after`]: of the same crop,
    /// when it is one that is studied.
    pub(super) fn changed<'b>(&'b self, layout: &'b Layout) -> Study<'b> {
        let same = |own: &Crop| layout.crops.iter().find(|c| c.id == own.id);
        Study {
            crop: self.crop.and_then(same),
            before: Some(Made {
                layout: self.layout,
                scene: self.scene(),
                walks: self.walks(),
            }),
            ..Study::new(layout)
        }
    }

    /// What is studied is of a crop: the first line of how it is worked out.
    pub(super) fn of_crop(&self) -> Option<String> {
        let name = self.crop?.name.clone();
        Some(say("working-of-crop", &[("crop", Arg::Name(name))]))
    }

    /// Ends the study and keeps what was made for the next one.
    #[must_use]
    pub fn keep(self) -> Kept {
        self.walks();
        let layout = self.layout.clone();
        Kept {
            layout,
            scene: self
                .scene
                .into_inner()
                .unwrap_or_else(|| unreachable!("walked just now")),
            walks: self.walks.into_inner().unwrap_or_default(),
            viewed: self.viewed.into_inner().map(|v| Box::new(v.keep())),
        }
    }

    /// The layout.
    #[must_use]
    pub const fn layout(&self) -> &'a Layout {
        self.layout
    }

    /// The crop that is studied, when it is not the whole frame.
    pub(super) const fn crop(&self) -> Option<&'a Crop> {
        self.crop
    }

    /// The scene of all exposures together, through the lens.
    pub fn scene(&self) -> &Scene {
        self.scene.get_or_init(|| {
            let shown = match self.crop {
                Some(crop) => crop_outline(self.layout, crop),
                None => frame_outline(&self.layout.frame),
            };
            let before = self.before.map(|b| (b.layout, b.scene));
            Scene::within(self.layout, None, View::of(self.layout), &shown, before)
        })
    }

    /// The light and what stands in its way.
    pub(super) fn lit(&self) -> &Lit {
        self.lit.get_or_init(|| Lit::of(self.layout))
    }

    /// What light makes of each outline, in the order of the walks by number;
    /// none where nothing is exposed for.
    pub(super) fn after_light(&self) -> Option<&[AfterLight]> {
        let all = self
            .after_light
            .get_or_init(|| separation_light::after_light(self));
        all.as_deref()
    }

    /// Every part's outline, walked.
    pub fn walks(&self) -> &[Rc<PartWalk>] {
        self.walks
            .get_or_init(|| walk_all(self.scene(), self.before.map(|b| (b.scene, b.walks))))
    }

    /// The walks by number and part instead of as they lie: sums and lists run
    /// in this order, so that the order of the file does not show.
    pub(super) fn walks_by_number(&self) -> &[Rc<PartWalk>] {
        self.by_number.get_or_init(|| {
            let pieces = &self.scene().pieces;
            let mut out = self.walks().to_vec();
            let number = |w: &PartWalk| (pieces[w.piece].owner, pieces[w.piece].part);
            order::sort(&mut out, |a, b| number(a).cmp(&number(b)));
            out
        })
    }

    /// Every dish that weighs something, in id order.
    pub(super) fn dishes(&self) -> &[Dish] {
        self.dishes.get_or_init(|| dishes(self))
    }

    /// The frame or crop under study.
    pub(super) fn picture(&self) -> Picture {
        self.picture_of(self.crop)
    }

    /// This crop, or the frame.
    pub(super) fn picture_of(&self, crop: Option<&Crop>) -> Picture {
        let frame = &self.layout.frame;
        let (sin, cos) = libm::sincos(frame.turn.radians());
        let (at, size) = match crop {
            Some(crop) => (crop.at, DVec2::from_array(crop.extent())),
            None => (frame.at, DVec2::new(f64::from(frame.width), frame.height())),
        };
        Picture {
            at: at.vec(),
            size,
            turn: DVec2::new(sin, cos),
        }
    }

    /// Says no more than this from now on.
    pub(super) fn say_only(&self, words: Words) {
        self.words.set(words);
    }

    /// How much is said.
    pub(super) const fn words(&self) -> Words {
        self.words.get()
    }

    /// Whether all is told: what is silent until asked is left out of a drag.
    pub(super) fn tells_all(&self) -> bool {
        self.words.get() == Words::All
    }

    /// Words of a working or a label, unless they are left out.
    pub(super) fn tell<T: Default>(&self, words: impl FnOnce() -> T) -> T {
        if self.words.get() == Words::All {
            words()
        } else {
            T::default()
        }
    }

    /// Words of a sentence, unless there are to be none.
    pub(super) fn sentence<T: Default>(&self, words: impl FnOnce() -> T) -> T {
        if self.words.get() == Words::None {
            T::default()
        } else {
            words()
        }
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
        let item = self.item(id).map(|item| {
            let alike = |i: &Item| i.name == item.name && i.number != item.number;
            let plain = || item.name.clone();
            if l.items.iter().any(alike) {
                let number = Arg::Text(item.number.to_string());
                let args = [("thing", Arg::Text(plain())), ("number", number)];
                say("name-numbered", &args)
            } else {
                plain()
            }
        });
        let linen = || {
            let own = l.linens.iter().find(|i| i.id == id)?;
            let plain = own.name.clone();
            let alike = l.linens.iter().any(|i| i.id != id && i.name == plain);
            Some(if alike {
                let off = self.picture().of_table(own.at.vec()) - self.picture().size * 0.5;
                let degrees = libm::atan2(off.x, -off.y).to_degrees();
                let hour = clock((degrees / 30.0).round() * 30.0);
                let args = [("thing", Arg::Text(plain)), ("clock", Arg::Text(hour))];
                say("name-at", &args)
            } else {
                plain
            })
        };
        let hand = || l.hands.iter().find(|h| h.id == id).map(|h| flag(l, h));
        let crop = || l.crops.iter().find(|c| c.id == id).map(|c| c.name.clone());
        item.or_else(linen)
            .or_else(hand)
            .or_else(crop)
            .unwrap_or_default()
    }

    /// The names of these for a list. Things of one name are one entry when all
    /// of that name are listed; else each is told from the others.
    pub(super) fn names(&self, ids: &[Id]) -> Vec<String> {
        let items = &self.layout.items;
        let mut out: Vec<String> = Vec::new();
        for id in ids {
            let all = self.item(*id).filter(|item| {
                let mut alike = items.iter().filter(|i| i.name == item.name);
                alike.all(|i| ids.contains(&i.id))
            });
            let name = all.map_or_else(|| self.name(*id), |item| item.name.clone());
            if !out.contains(&name) {
                out.push(name);
            }
        }
        out
    }

    /// Whether taste may be read: a frame and three dishes on the table.
    #[must_use]
    pub fn has_three_dishes(&self) -> bool {
        self.layout.items.iter().filter(|i| i.on.is_none()).count() >= 3
    }
}
