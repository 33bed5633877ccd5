//! What a reading works on: the layout and what has been made of it so far.
use std::cell::{Cell, OnceCell};
use std::rc::Rc;

use super::finding::Remedy;
use super::made::{Kept, Made, Parts, Unfinished};
use super::mass::{Dish, dishes};
use super::pace::Pace;
use super::picture::Picture;
use super::separation_light::Outlines;
use super::walked::{PartWalk, walk_all};
use crate::exposures::{Added, added_after};
use crate::layout::{Crop, Id, Item, Layout};
use crate::optics::View;
use crate::order;
use crate::scene::{Lit, Scene, Stacks, crop_outline};
use crate::shape::frame_outline;
use crate::words::{Arg, say};

/// A layout under study. Scene and walks are made when first asked for.
pub struct Study<'a> {
    layout: &'a Layout,
    crop: Option<&'a Crop>,
    view: Option<Id>,
    viewed: OnceCell<Box<Self>>,
    before: Option<Made<'a>>,
    before_viewed: Option<Made<'a>>,
    words: Cell<Words>,
    parts: Parts,
    pace: Option<&'a Pace<'a>>,
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

impl<'a> Study<'a> {
    /// Studies a layout.
    #[must_use]
    pub fn new(layout: &'a Layout) -> Self {
        Self {
            layout,
            crop: None,
            view: None,
            viewed: OnceCell::new(),
            before: None,
            before_viewed: None,
            words: Cell::new(Words::All),
            parts: Parts::default(),
            pace: None,
        }
    }

    /// Goes on with a study of this layout, with this crop in view, where
    /// another left off.
    pub(super) fn again(
        layout: &'a Layout,
        view: Option<Id>,
        made: Unfinished,
        pace: &'a Pace<'a>,
    ) -> Self {
        let study = Self {
            view,
            parts: made.parts,
            pace: Some(pace),
            ..Self::new(layout)
        };
        if let Some(parts) = made.viewed {
            let viewed = Self {
                crop: study.crop_in_view(),
                parts: *parts,
                pace: Some(pace),
                ..Self::new(layout)
            };
            // Nothing has been viewed in it yet.
            let _ = study.viewed.set(Box::new(viewed));
        }
        study
    }

    /// Leaves off for now, with what further studies take over made.
    pub(super) fn leave_off(self) -> Unfinished {
        self.walks();
        Unfinished {
            parts: self.parts,
            viewed: self.viewed.into_inner().map(|viewed| {
                viewed.walks();
                Box::new(viewed.parts)
            }),
        }
    }

    fn crop_in_view(&self) -> Option<&'a Crop> {
        let view = self.view?;
        self.layout.crops.iter().find(|c| c.id == view)
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
        let viewed = self.viewed.get_or_init(|| {
            // A crop lies in the same light as the whole.
            self.lit();
            let parts = Parts {
                lit: self.parts.lit.clone(),
                ..Parts::default()
            };
            Box::new(Self {
                crop: self.crop_in_view(),
                before: self.before_viewed.or(self.before),
                parts,
                pace: self.pace,
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
            before: Some(Made {
                layout: &kept.layout,
                parts: &kept.made.parts,
            }),
            before_viewed: kept.made.viewed.as_ref().map(|parts| Made {
                layout: &kept.layout,
                parts,
            }),
            ..Self::new(layout)
        }
    }

    /// Studies a change of this layout, as [`Study::after`]: of the same crop,
    /// when it is one that is studied.
    pub(super) fn changed<'b>(&'b self, layout: &'b Layout) -> Study<'b> {
        let same = |own: &Crop| layout.crops.iter().find(|c| c.id == own.id);
        self.walks();
        Study {
            crop: self.crop.and_then(same),
            before: Some(Made {
                layout: self.layout,
                parts: &self.parts,
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
        let layout = self.layout.clone();
        let made = self.leave_off();
        Kept { layout, made }
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
        self.parts.scene.get_or_init(|| {
            let shown = match self.crop {
                Some(crop) => crop_outline(self.layout, crop),
                None => frame_outline(&self.layout.frame),
            };
            let before = self.before.and_then(|b| b.scene());
            Scene::within(self.layout, None, View::of(self.layout), &shown, before)
        })
    }

    /// The light and what stands in its way.
    pub(super) fn lit(&self) -> &Lit {
        self.parts.lit.get_or_init(|| {
            let before = self.before.and_then(|b| b.lit());
            let lit = before.map_or_else(
                || Lit::of(self.layout),
                |before| Lit::after(self.layout, before),
            );
            Rc::new(lit)
        })
    }

    /// What each exposure with hands adds.
    pub(super) fn added(&self) -> &[Rc<Added>] {
        self.parts
            .added
            .get_or_init(|| added_after(self.layout, self.before.and_then(|b| b.added())))
    }

    /// What light makes of each outline; none where nothing is exposed for.
    pub(super) fn after_light(&self) -> Option<&Outlines> {
        let all = self.parts.after_light.get_or_init(|| Outlines::of(self));
        all.as_ref()
    }

    /// Every part's outline, walked.
    pub fn walks(&self) -> &[Rc<PartWalk>] {
        let before = || self.before.and_then(|b| b.walks());
        self.parts
            .walks
            .get_or_init(|| walk_all(self.scene(), before()))
    }

    /// The walks by number and part instead of as they lie: sums and lists run
    /// in this order, so that the order of the file does not show.
    pub(super) fn walks_by_number(&self) -> &[Rc<PartWalk>] {
        self.parts.by_number.get_or_init(|| {
            let pieces = &self.scene().pieces;
            let mut out = self.walks().to_vec();
            let number = |w: &PartWalk| (pieces[w.piece].owner, pieces[w.piece].part);
            order::sort(&mut out, |a, b| number(a).cmp(&number(b)));
            out
        })
    }

    /// Every dish that weighs something, in id order.
    pub(super) fn dishes(&self) -> &[Dish] {
        self.parts.dishes.get_or_init(|| dishes(self))
    }

    /// The frame or crop under study.
    pub(super) fn picture(&self) -> Picture {
        self.picture_of(self.crop)
    }

    /// This crop, or the frame.
    pub(super) fn picture_of(&self, crop: Option<&Crop>) -> Picture {
        Picture::of(&self.layout.frame, crop)
    }

    /// What helps against the finding of this key: all at once, or as far as the
    /// study's pace lets it.
    pub(super) fn remedy(&self, key: &str, find: &dyn Fn() -> Option<Remedy>) -> Option<Remedy> {
        match self.pace {
            Some(pace) => pace.remedy(key, find),
            None => find(),
        }
    }

    /// The figure the `n`th change tried for the finding of this key leads to;
    /// `None` too while there is no time to find out.
    pub(super) fn figure(
        &self,
        key: &str,
        n: usize,
        find: &dyn Fn() -> Option<f64>,
    ) -> Option<f64> {
        match self.pace {
            Some(pace) => pace.figure(key, n, find),
            None => find(),
        }
    }

    /// The first of these changes that leads to a figure, looked for under the
    /// finding of this key; `None` too while there is no time to find out.
    pub(super) fn first_that<T>(
        &self,
        key: &str,
        changes: impl IntoIterator<Item = T>,
        figure: &dyn Fn(&T) -> Option<f64>,
    ) -> Option<(T, f64)> {
        for (n, change) in changes.into_iter().enumerate() {
            if let Some(after) = self.figure(key, n, &|| figure(&change)) {
                return Some((change, after));
            }
            if self.pace.is_some_and(Pace::stopped) {
                break;
            }
        }
        None
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
        let place = self.stacks().place(id)?;
        self.layout.items.get(place)
    }

    /// Who lies on whom.
    pub(super) fn stacks(&self) -> &Stacks {
        self.parts.stacks.get_or_init(|| Stacks::of(self.layout))
    }

    /// The bottom of the stack an item stands in.
    pub(super) fn root(&self, id: Id) -> Id {
        self.stacks().root(id)
    }

    /// Whether taste may be read: a frame and three dishes on the table.
    #[must_use]
    pub fn has_three_dishes(&self) -> bool {
        self.layout.items.iter().filter(|i| i.on.is_none()).count() >= 3
    }
}
