//! What was drawn last, so that after an edit only what it reached is drawn anew:
//! the drawings of hands, things and their shadows take most of the time.
use glam::DVec2;
use svg::node::element::Group;

use super::Keyed;
use crate::drawing::Pen;
use crate::layout::{Hand, Head, Id, Item, Layout, Light, Table};

/// A group of the drawing after an edit.
pub struct Again {
    /// As in [`Keyed`].
    pub key: String,
    /// Its nodes; nothing where they are as they were drawn last.
    pub group: Option<Group>,
    /// As in [`Keyed`].
    pub at: Option<DVec2>,
}

impl From<Keyed> for Again {
    fn from(Keyed { key, group, at }: Keyed) -> Self {
        Self {
            key,
            group: Some(group),
            at,
        }
    }
}

/// Things and hands as they were drawn last, from above.
#[derive(Default)]
pub struct Drawn {
    /// What the shadow of each hangs on besides.
    around: Option<(Light, Table, Pen)>,
    /// Each thing, and whether it throws a shadow.
    things: Vec<(Item, bool)>,
    /// The layout but for its head and what lies on the table: what hands hang on.
    setting: Option<Layout>,
    /// Each hand, and what it holds.
    hands: Vec<(Id, Option<Item>)>,
}

/// How much of a thing is as it was drawn last.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Same {
    /// Nothing of it.
    Nothing,
    /// It stands elsewhere.
    Shape,
    /// All of it, its shadow too where it throws one.
    All { shadow: bool },
}

impl Drawn {
    /// Begins a drawing; returns what the last one had that may still hold.
    pub(super) fn begin(&mut self, whole: &Layout, shown: &Layout, pen: &Pen) -> Self {
        let Layout { light, table, .. } = shown;
        let mut last = std::mem::take(self);
        let as_then = last
            .around
            .as_ref()
            .is_some_and(|(l, t, p)| l == light && t == table && p == pen);
        let mut setting = whole.clone();
        setting.head = Head::default();
        setting.items.clear();
        setting.linens.clear();
        if !as_then {
            last.things.clear();
        }
        if !as_then || last.setting.as_ref() != Some(&setting) {
            last.hands.clear();
        }
        self.around = Some((light.clone(), table.clone(), *pen));
        self.setting = Some(setting);
        last
    }

    /// Whether a hand is as it was drawn last.
    pub(super) fn has(&self, whole: &Layout, hand: &Hand) -> bool {
        let last = self.hands.iter().find(|(id, _)| *id == hand.id);
        last.is_some_and(|(_, item)| item.as_ref() == held(whole, hand))
    }

    pub(super) fn keep_hand(&mut self, whole: &Layout, hand: &Hand) {
        self.hands.push((hand.id, held(whole, hand).cloned()));
    }

    /// Has a hand drawn anew, as something else may be shown in its place.
    pub fn forget(&mut self, hand: Id) {
        self.hands.retain(|(id, _)| *id != hand);
    }

    pub(super) fn same(&self, item: &Item) -> Same {
        match self.things.iter().find(|(last, _)| last.id == item.id) {
            Some((last, shadow)) if last == item => Same::All { shadow: *shadow },
            Some((last, _)) => {
                let moved = Item {
                    at: item.at,
                    ..last.clone()
                };
                if moved == *item {
                    Same::Shape
                } else {
                    Same::Nothing
                }
            }
            None => Same::Nothing,
        }
    }

    pub(super) fn keep(&mut self, item: &Item, shadow: bool) {
        self.things.push((item.clone(), shadow));
    }
}

fn held<'a>(layout: &'a Layout, hand: &Hand) -> Option<&'a Item> {
    let holds = hand.holds?;
    layout.items.iter().find(|item| item.id == holds)
}

/// The groups of a drawing in the making.
#[derive(Default)]
pub(super) struct All(pub(super) Vec<Again>);

impl All {
    pub(super) fn push(&mut self, key: String, group: impl Into<Option<Group>>, at: Option<DVec2>) {
        let group = group.into();
        self.0.push(Again { key, group, at });
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::*;
    use crate::drawing::{View, groups, groups_again};
    use crate::layout::{Layout, Point, Turn};

    /// What a page shows that held `before`.
    fn shown(
        layout: &Layout,
        view: &View,
        drawn: &mut Drawn,
        before: &BTreeMap<String, String>,
    ) -> (BTreeMap<String, String>, usize) {
        let mut anew = 0;
        let all = groups_again(layout, view, drawn).into_iter();
        let all = all.map(|Again { key, group, .. }| {
            let text = match group {
                Some(group) => {
                    anew += usize::from(key.starts_with("item") || key.starts_with("hand"));
                    group.to_string()
                }
                None => before[&key].clone(),
            };
            (key, text)
        });
        (all.collect(), anew)
    }

    #[test]
    fn after_every_edit_the_page_shows_what_is_drawn_from_nothing() {
        let mut layout = super::super::tests::laid();
        let mut view = View::default();
        let mut drawn = Drawn::default();
        let mut page = BTreeMap::new();
        type Edit = fn(&mut Layout, &mut View);
        let edits: [(&str, usize, Edit); 12] = [
            ("nothing yet", 5, |_, _| ()),
            ("no edit", 0, |_, _| ()),
            ("moved", 0, |l, _| l.items[2].at = Point::new(300, 300)),
            ("past the edge", 0, |l, _| {
                l.items[2].at = Point::new(10, 10)
            }),
            ("turned", 1, |l, _| {
                l.items[2].turn = Turn::from_degrees(90.0)
            }),
            ("higher", 1, |l, _| l.items[1].height += 30),
            ("the window", 5, |l, _| l.light.distance += 400),
            ("a hand", 2, |l, _| l.hands[1].target = Point::new(620, 380)),
            ("held", 2, |l, _| l.hands[1].holds = Some(l.items[1].id)),
            ("what is held", 2, |l, _| {
                l.items[1].turn = Turn::from_degrees(30.0)
            }),
            ("gone", 0, |l, _| drop(l.items.remove(0))),
            ("nearer", 4, |_, v| v.per_pixel = 0.5),
        ];
        for (what, most, edit) in edits {
            edit(&mut layout, &mut view);
            let (now, anew) = shown(&layout, &view, &mut drawn, &page);
            let whole = groups(&layout, &view).into_iter();
            let whole: BTreeMap<_, _> = whole.map(|k| (k.key, k.group.to_string())).collect();
            assert!(now == whole, "{what}");
            assert!(anew <= most, "{what}: {anew} things drawn anew");
            page = now;
        }
        view.eye = crate::optics::View::of(&layout);
        let (lens, _) = shown(&layout, &view, &mut drawn, &page);
        view.eye = crate::optics::View::Above;
        let (back, anew) = shown(&layout, &view, &mut drawn, &lens);
        assert!(back == page && anew == 4, "back from the lens");
        drawn.forget(layout.hands[0].id);
        let (_, anew) = shown(&layout, &view, &mut drawn, &page);
        assert_eq!(anew, 1, "something else was shown in its place");
    }
}
