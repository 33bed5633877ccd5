//! What the catalogue knows about one thing.
use crate::layout::{Face, Finish, Origin, Size, Srgb, Tone};

/// What sort of thing an entry is, which decides how it behaves on a table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A plate, bowl, pot or tin: food lies in it and leaves with it.
    Vessel,
    /// A cutting board or tray: things stand on it but do not belong to it.
    Board,
    /// Something to drink or pour from.
    Glass,
    /// Knives, forks, spoons, chopsticks.
    Cutlery,
    /// A candle.
    Candle,
    /// Anything else that stands on a table.
    Object,
    /// Food that lies in one piece or heap.
    Food,
    /// Food strewn about: herbs, crumbs, nuts.
    Scatter,
}

impl Kind {
    /// Whether it is something to eat.
    #[must_use]
    pub const fn is_food(self) -> bool {
        matches!(self, Self::Food | Self::Scatter)
    }

    /// Whether food put down at its place lies on it.
    #[must_use]
    pub const fn carries_food(self) -> bool {
        matches!(self, Self::Vessel | Self::Board)
    }
}

/// How well the size of an entry is founded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Evidence {
    /// Printed somewhere; the key leads to [`source`].
    Published(&'static str),
    /// Common practice, no source.
    TradePractice,
    /// Our guess.
    Guess,
}

/// Published sources of sizes and of how long food holds, by key.
pub const SOURCES: &[(&str, &str)] = &[
    (
        "dinnerware",
        "Dinnerware items and their sizes, www.tableware.com/_export/raw/en/items/dinnerware",
    ),
    (
        "plates",
        "Types of plates and bowls in a set, www.hunker.com/13420327",
    ),
    (
        "glasses",
        "Wine glass sizes, www.sizes.com/food/glasses_wine.htm",
    ),
    (
        "cutlery",
        "Luncheon, place and dinner sizes of flatware (2009), www.silverchatter.com/2009/03",
    ),
    (
        "dessert",
        "Dessert and fish forks, usa.lesfails.com/why-is-there-a-notch-in-a-cake-fork-2",
    ),
    (
        "tasting",
        "ISO 3591 wine-tasting glass, as quoted at lfasc.com/Hotelfranchise/weuvhvcqnx.html",
    ),
    (
        "napkins",
        "Napkin sizes and their uses, www.thechateaucollection.com/blogs/news",
    ),
    (
        "runners",
        "What size of table runner, engineerfix.com/what-size-table-runner-do-you-need",
    ),
    (
        "dry-ice",
        "A food stylist on scoops frozen on dry ice (2008), afabulousfoodstylist.blogspot.com/2008/07",
    ),
    (
        "crema",
        "Foam of espresso coffee, J. Agric. Food Chem. 59:11196 (2011)",
    ),
];

/// What a source key stands for.
#[must_use]
pub fn source(key: &str) -> Option<&'static str> {
    SOURCES
        .iter()
        .find(|(k, _)| *k == key)
        .map(|(_, text)| *text)
}

/// One thing that can be put on a table.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// Its id, which also says how it is drawn.
    pub id: &'static str,
    /// Its trade name in English.
    pub name: &'static str,
    /// What sort of thing it is.
    pub kind: Kind,
    /// Outline it starts with, mm.
    pub size: Size,
    /// Height it starts with, mm.
    pub height: i32,
    /// Colours of outside and rim; none for food.
    pub rim: &'static [Tone],
    /// Colours of the inside; none for food and for what has no inside.
    pub well: &'static [Tone],
    /// Tones of food, deepest first, shares making 100.
    pub food: &'static [Tone],
    /// How it shines.
    pub finish: Finish,
    /// The face that is up when it is put down.
    pub face: Face,
    /// Narrowest and widest it usually comes, mm across.
    pub range: [i32; 2],
    /// How well the size is founded. Colours are guesses throughout.
    pub evidence: Evidence,
}

/// A tone of the catalogue: `0xrrggbb` and its share in percent.
pub(super) const fn tone(rgb: u32, share: u8) -> Tone {
    Tone {
        srgb: Srgb::hex(rgb),
        share,
        origin: Origin::Guess,
    }
}

/// A disc of this diameter and rim, mm.
pub(super) const fn disc(diameter: i32, rim: i32) -> Size {
    Size::Disc { diameter, rim }
}

/// An oval of this width, depth and rim, mm.
pub(super) const fn oval(width: i32, depth: i32, rim: i32) -> Size {
    Size::Oval { width, depth, rim }
}

/// A rectangle of this width, depth, corner radius and rim, mm.
pub(super) const fn rect(width: i32, depth: i32, corner: i32, rim: i32) -> Size {
    Size::Rect {
        width,
        depth,
        corner,
        rim,
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;
    use crate::catalogue::{foods, props};

    fn all() -> impl Iterator<Item = &'static Entry> {
        props().iter().chain(foods())
    }

    #[test]
    fn ids_are_single_and_in_kebab_case() {
        let mut seen = BTreeSet::new();
        for e in all() {
            assert!(seen.insert(e.id), "{} twice", e.id);
            let kebab = |c: char| c.is_ascii_lowercase() || c == '-';
            assert!(e.id.chars().all(kebab), "{}", e.id);
        }
    }

    #[test]
    fn every_part_has_at_most_three_tones_that_make_a_hundred() {
        for e in all() {
            for part in [e.rim, e.well, e.food]
                .into_iter()
                .filter(|p| !p.is_empty())
            {
                let sum: u32 = part.iter().map(|t| u32::from(t.share)).sum();
                assert_eq!((sum, part.len() <= 3), (100, true), "{}: {part:?}", e.id);
            }
            assert_eq!(
                e.kind.is_food(),
                e.rim.is_empty(),
                "{} has one or the other",
                e.id
            );
            assert_eq!(
                e.kind.is_food(),
                !e.food.is_empty(),
                "{} has one or the other",
                e.id
            );
        }
    }

    #[test]
    fn every_default_lies_in_its_usual_range_and_its_rim_fits() {
        for e in all() {
            let [w, d] = e.size.extent();
            assert!(
                (e.range[0]..=e.range[1]).contains(&w),
                "{}: {w} in {:?}",
                e.id,
                e.range
            );
            assert!(
                e.size.rim() * 2 <= w.min(d),
                "{}: rim {}",
                e.id,
                e.size.rim()
            );
            assert!(e.height > 0, "{} has a height", e.id);
        }
    }

    #[test]
    fn every_published_size_has_its_source() {
        for e in all() {
            if let Evidence::Published(key) = e.evidence {
                assert!(source(key).is_some(), "{}: {key}", e.id);
            }
        }
    }
}
