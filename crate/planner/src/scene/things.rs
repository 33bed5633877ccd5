//! Who lies on whom, whose hand is whose.
use crate::layout::{Exposure, ExposureKind, Hand, Id, Item, Layout, Linen, Role};
use crate::words::{Arg, say};

/// Every item's place in the list and the bottom of its stack, by id.
#[derive(Clone, Debug, Default)]
pub struct Stacks(Vec<Option<(usize, Id)>>);

impl Stacks {
    /// Of a layout.
    #[must_use]
    pub fn of(layout: &Layout) -> Self {
        let items = &layout.items;
        let most = items.iter().map(|i| usize::from(i.id.0)).max();
        let mut all = vec![None; most.map_or(0, |most| most + 1)];
        for (n, item) in items.iter().enumerate() {
            all[usize::from(item.id.0)].get_or_insert((n, item.id));
        }
        let mut stacks = Self(all);
        for item in items {
            let mut at = item.id;
            for _ in 0..items.len() {
                match stacks.place(at).and_then(|n| items[n].on) {
                    Some(below) => at = below,
                    None => break,
                }
            }
            if let Some(known) = &mut stacks.0[usize::from(item.id.0)] {
                known.1 = at;
            }
        }
        stacks
    }

    fn known(&self, id: Id) -> Option<(usize, Id)> {
        self.0.get(usize::from(id.0)).copied().flatten()
    }

    /// The place of an item in the list.
    #[must_use]
    pub fn place(&self, id: Id) -> Option<usize> {
        self.known(id).map(|known| known.0)
    }

    /// As [`root`].
    #[must_use]
    pub fn root(&self, id: Id) -> Id {
        self.known(id).map_or(id, |known| known.1)
    }
}

/// The bottom of the stack an item stands in: itself when it is on the table.
#[must_use]
pub fn root(layout: &Layout, id: Id) -> Id {
    let mut at = id;
    // A layout's `on` is acyclic, and no stack is taller than its items.
    for _ in 0..layout.items.len() {
        match layout.items.iter().find(|i| i.id == at).and_then(|i| i.on) {
            Some(below) => at = below,
            None => break,
        }
    }
    at
}

/// Cloth, or a thing that stands on it or under it.
#[derive(Clone, Copy, Debug)]
pub enum Layer<'a> {
    /// A linen.
    Linen(&'a Linen),
    /// An item.
    Item(&'a Item),
}

/// Linens and items from the bottom to the top: the linens in their order, each
/// above the things that it lies over, then all other things in theirs. What
/// lies on a thing follows it.
#[must_use]
pub fn in_paint_order(layout: &Layout) -> Vec<Layer<'_>> {
    let mut order = Vec::with_capacity(layout.linens.len() + layout.items.len());
    let mut covered: Vec<Id> = Vec::new();
    for linen in &layout.linens {
        let own = |id: Id| linen.over.contains(&id) && !covered.contains(&id);
        if !linen.over.is_empty() {
            stacks(layout, &own, &mut order);
        }
        covered.extend(&linen.over);
        order.push(Layer::Linen(linen));
    }
    stacks(layout, &|id| !covered.contains(&id), &mut order);
    order
}

/// Adds the items on the table that are meant, each followed by what lies on
/// it.
fn stacks<'a>(layout: &'a Layout, meant: &dyn Fn(Id) -> bool, order: &mut Vec<Layer<'a>>) {
    let on = |below| layout.items.iter().rev().filter(move |i| i.on == below);
    let mut waiting: Vec<&Item> = on(None).filter(|i| meant(i.id)).collect();
    while let Some(item) = waiting.pop() {
        order.push(Layer::Item(item));
        waiting.extend(on(Some(item.id)));
    }
}

/// An item's role, or that of the dish it lies on when it has none itself.
#[must_use]
pub fn effective_role(layout: &Layout, item: &Item) -> Role {
    let mut at = item;
    for _ in 0..=layout.items.len() {
        if at.role != Role::Filler {
            return at.role;
        }
        match at
            .on
            .and_then(|on| layout.items.iter().find(|i| i.id == on))
        {
            Some(below) => at = below,
            None => break,
        }
    }
    Role::Filler
}

/// The exposures with hands, in list order.
fn with_hands(layout: &Layout) -> impl Iterator<Item = Id> {
    let hands = |e: &&Exposure| e.kind == ExposureKind::Hands;
    layout.exposures.iter().filter(hands).map(|e| e.id)
}

/// The number an exposure with hands goes by, from 1 in list order.
#[must_use]
pub fn exposure_number(layout: &Layout, exposure: Id) -> Option<usize> {
    with_hands(layout)
        .position(|id| id == exposure)
        .map(|n| n + 1)
}

/// An exposure as it is called: the number of one with hands, or its kind, with
/// a number where there are more of that kind; empty for one that is not there.
#[must_use]
pub fn exposure_name(layout: &Layout, exposure: Id) -> String {
    let Some(own) = layout.exposures.iter().find(|e| e.id == exposure) else {
        return String::new();
    };
    let alike = layout.exposures.iter().filter(|e| e.kind == own.kind);
    let number = alike.clone().position(|e| e.id == exposure).unwrap_or(0) + 1;
    let one = own.kind != ExposureKind::Hands && alike.count() == 1;
    let id = match own.kind {
        ExposureKind::Hands => "exposure-hands",
        ExposureKind::Clean if one => "exposure-clean",
        ExposureKind::Card if one => "exposure-card",
        ExposureKind::Empty if one => "exposure-empty",
        ExposureKind::Steam if one => "exposure-steam",
        ExposureKind::NoGlare if one => "exposure-no-glare",
        ExposureKind::Insurance if one => "exposure-insurance",
        ExposureKind::Clean => "exposure-clean-n",
        ExposureKind::Card => "exposure-card-n",
        ExposureKind::Empty => "exposure-empty-n",
        ExposureKind::Steam => "exposure-steam-n",
        ExposureKind::NoGlare => "exposure-no-glare-n",
        ExposureKind::Insurance => "exposure-insurance-n",
    };
    say(id, &[("number", Arg::Text(number.to_string()))])
}

/// The flag a hand goes by: exposure number, then the person's letter.
#[must_use]
pub fn flag(layout: &Layout, hand: &Hand) -> String {
    let number = exposure_number(layout, hand.exposure).unwrap_or(0);
    format!("{number}{}", letter(layout, hand.person))
}

/// The letter a person goes by: their place in the list.
#[must_use]
pub fn letter(layout: &Layout, person: Id) -> char {
    let place = layout.people.iter().position(|p| p.id == person);
    char::from(b'A' + place.unwrap_or(0).min(25) as u8)
}
