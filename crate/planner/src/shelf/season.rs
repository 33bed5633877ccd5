//! A table brought into another season: food that is not in season goes for food
//! that is, linen and board for those of the season. Everything stays where it
//! stands, and as large as it was at most.
//!
//! Which palette is a season's is our choice, no source; the months of foods are
//! the catalogue's. Seasons are those of meteorology, three whole months each
//! (from memory), named as in their own half of the world.
use crate::catalogue::{
    Entry, foods, groups, in_season, linen, parts_of, prop, season_of, surface, surface_from,
};
use crate::commands::{Act, Refused, name_of};
use crate::exposures::state_of;
use crate::layout::{
    As, Finish, Hemisphere, Id, Item, Layout, Linen, LinenKind, Origin, Size, Srgb, Stock,
};
use crate::words::{Arg, say};

/// A season of the year.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Season {
    /// March to May in the north.
    Spring,
    /// June to August in the north.
    Summer,
    /// September to November in the north.
    Autumn,
    /// December to February in the north.
    Winter,
}

/// A colour by its word, and the shade of it.
type Shade = (&'static str, u32);

/// What a season is laid with: a surface of the catalogue, and the colours of
/// runner, tablecloth, mat and napkin.
struct Palette {
    surface: &'static str,
    linens: [Shade; 4],
}

#[rustfmt::skip]
static PALETTES: [Palette; 4] = [
    Palette { surface: "white-washed", linens: [
        ("colour-pale-green", 0xb4_d4a4), ("colour-white", 0xf2_f2ee), ("colour-cream", 0xec_dcb8), ("colour-pink", 0xe8_a0ac),
    ] },
    Palette { surface: "pine", linens: [
        ("colour-pale-blue", 0xa4_c4e0), ("colour-white", 0xf4_f4f2), ("colour-cream", 0xe8_d8b4), ("colour-yellow", 0xe8_c840),
    ] },
    Palette { surface: "walnut", linens: [
        ("colour-brown", 0x8c_5a30), ("colour-cream", 0xec_dcb8), ("colour-tan", 0xc0_9c74), ("colour-orange", 0xd8_7828),
    ] },
    Palette { surface: "black-board", linens: [
        ("colour-dark-green", 0x2c_4a2c), ("colour-pale-grey", 0xc8_c8c8), ("colour-grey", 0x88_8888), ("colour-dark-red", 0x70_1420),
    ] },
];

impl Season {
    /// Every one, in the order of the year.
    pub const ALL: [Self; 4] = [Self::Spring, Self::Summer, Self::Autumn, Self::Winter];

    /// The word it goes by in calls.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Spring => "spring",
            Self::Summer => "summer",
            Self::Autumn => "autumn",
            Self::Winter => "winter",
        }
    }

    /// The one of this word.
    #[must_use]
    pub fn of(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|season| season.key() == key)
    }

    /// What it is called.
    #[must_use]
    pub fn name(self) -> String {
        let id = match self {
            Self::Spring => "season-spring",
            Self::Summer => "season-summer",
            Self::Autumn => "season-autumn",
            Self::Winter => "season-winter",
        };
        say(id, &[])
    }

    fn palette(self) -> &'static Palette {
        &PALETTES[self as usize]
    }

    /// Its months in the northern half, the middle one first.
    const fn months(self) -> [i32; 3] {
        match self {
            Self::Spring => [4, 3, 5],
            Self::Summer => [7, 6, 8],
            Self::Autumn => [10, 9, 11],
            Self::Winter => [1, 12, 2],
        }
    }

    /// Whether a food is to be had fresh in its middle month and one more, by the
    /// months the layout tells or else the catalogue's; what has no season is.
    #[must_use]
    pub fn has(self, layout: &Layout, food: &str) -> bool {
        let dates = &layout.dates;
        let told = dates.seasons.iter().find(|s| s.food == food);
        let months = told.map(|s| s.months).or_else(|| season_of(food));
        // What the layout tells is told where it is shot.
        let south = told.is_some() && dates.hemisphere == Hemisphere::South;
        let has = |month: i32| {
            let month = if south { (month + 5) % 12 + 1 } else { month };
            months.is_none_or(|months| in_season(months, month))
        };
        let [middle, first, last] = self.months();
        has(middle) && (has(first) || has(last))
    }
}

/// What is to be exchanged.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Wish {
    /// Food that is out of season.
    pub food: bool,
    /// Colours of linens.
    pub linen: bool,
    /// The surface.
    pub board: bool,
    /// Things that stay as they are.
    pub keep: Vec<Id>,
}

/// Why a food that is out of season stays.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stays {
    /// It is wished so.
    Wished,
    /// It is locked.
    Locked,
    /// An exposure shows it changed, as it is.
    Changed,
    /// Nothing of its sort and size is in season.
    Nothing,
}

impl Stays {
    /// In words.
    #[must_use]
    pub fn told(self, thing: &str) -> String {
        let id = match self {
            Self::Wished => "season-wished",
            Self::Locked => "season-locked",
            Self::Changed => "season-changed",
            Self::Nothing => "season-nothing",
        };
        say(id, &[("thing", Arg::Name(thing.into()))])
    }
}

/// A table in another season.
#[derive(Clone, Debug, PartialEq)]
pub struct Swapped {
    /// The table.
    pub after: Layout,
    /// Each food out of season that stays.
    pub stay: Vec<(Id, Stays)>,
}

impl Swapped {
    /// Why each food stays, in words, each once.
    #[must_use]
    pub fn told(&self, layout: &Layout) -> Vec<String> {
        let mut all: Vec<String> = Vec::new();
        for (id, why) in &self.stay {
            let line = why.told(&name_of(layout, *id));
            if !all.contains(&line) {
                all.push(line);
            }
        }
        all
    }
}

/// The size another food takes where one lies: as large as fits within it;
/// nothing where it never comes so small or so large.
fn size_for(entry: &Entry, place: [i32; 2]) -> Option<Size> {
    let [w, d] = place.map(f64::from);
    let [own_w, own_d] = entry.size.extent().map(f64::from);
    let scale = (w / own_w).min(d / own_d);
    let [width, depth] = [own_w, own_d].map(|side| (side * scale + 1e-6) as i32);
    let usual = (entry.range[0]..=entry.range[1]).contains(&width) && depth > 0;
    usual.then(|| entry.size.resized(width, depth))
}

fn area(extent: [i32; 2]) -> i64 {
    i64::from(extent[0]) * i64::from(extent[1])
}

/// The food that goes in the place of one: of the same sort, in season, not on
/// the table already where that can be, with a season of its own rather than
/// none, and filling the place as well as can be.
fn instead(
    layout: &Layout,
    season: Season,
    item: &Item,
    there: &[&str],
) -> Option<(&'static Entry, Size)> {
    let own = prop(&item.prop)?;
    let group = groups().iter().find(|g| g.has(own))?;
    let liquid = |entry: &Entry| entry.finish == Finish::Liquid;
    let like = foods().iter().filter(|e| {
        let sort = e.kind == own.kind && liquid(e) == liquid(own) && group.has(e);
        sort && e.id != own.id && season.has(layout, e.id)
    });
    let place = item.size.extent();
    let sized = like.filter_map(|e| Some((e, size_for(e, place)?)));
    sized.min_by_key(|(e, size)| {
        let lost = area(place) - area(size.extent());
        (there.contains(&e.id), season_of(e.id).is_none(), lost)
    })
}

/// Puts another food where one lies, heaped as high.
fn exchange(item: &mut Item, entry: &'static Entry, size: Size) {
    item.name = entry.name.into();
    item.prop = entry.id.into();
    item.size = size;
    item.parts = parts_of(entry);
    item.finish = entry.finish;
    item.face = entry.face;
    item.hold_minutes = None;
    item.stand_in.clear();
    item.stock = anew(&item.stock);
}

/// What the lists say of another thing: as many in reserve, from nowhere yet.
fn anew(stock: &Stock) -> Stock {
    Stock {
        spare: stock.spare,
        ..Stock::default()
    }
}

fn recolour(cloth: &mut Linen, (word, hex): Shade) {
    let colour = Srgb::hex(hex);
    if cloth.colour == colour {
        return;
    }
    let args = [
        ("colour", Arg::Text(say(word, &[]))),
        ("linen", Arg::Text(linen(cloth.kind).name.into())),
    ];
    cloth.name = say("season-linen", &args);
    (cloth.colour, cloth.origin) = (colour, Origin::Guess);
    cloth.stock = anew(&cloth.stock);
}

/// Brings a table into a season.
#[must_use]
pub fn swapped(layout: &Layout, season: Season, wish: &Wish) -> Swapped {
    let mut after = layout.clone();
    let mut stay = Vec::new();
    let mut there: Vec<&str> = layout.items.iter().map(|i| i.prop.as_str()).collect();
    // What is the same stays the same.
    let mut known: Vec<(String, &'static Entry)> = Vec::new();
    let out = |i: &&mut Item| wish.food && !season.has(layout, &i.prop);
    for item in after.items.iter_mut().filter(out) {
        let mut told = layout.exposures.iter();
        let changed = told.any(|e| state_of(e, item.id) == As::Changed);
        let why = if wish.keep.contains(&item.id) {
            Some(Stays::Wished)
        } else if item.locked {
            Some(Stays::Locked)
        } else if changed {
            Some(Stays::Changed)
        } else {
            None
        };
        if let Some(why) = why {
            stay.push((item.id, why));
            continue;
        }
        let place = item.size.extent();
        let same = known.iter().find(|(p, _)| *p == item.prop);
        let again = same.and_then(|(_, e)| Some((*e, size_for(e, place)?)));
        let Some((entry, size)) = again.or_else(|| instead(layout, season, item, &there)) else {
            stay.push((item.id, Stays::Nothing));
            continue;
        };
        known.push((item.prop.clone(), entry));
        there.push(entry.id);
        exchange(item, entry, size);
    }
    let palette = season.palette();
    let free = |l: &&mut Linen| wish.linen && !l.locked && !wish.keep.contains(&l.id);
    for cloth in after.linens.iter_mut().filter(free) {
        let n = match cloth.kind {
            LinenKind::Runner => 0,
            LinenKind::Cloth => 1,
            LinenKind::Mat => 2,
            LinenKind::Napkin => 3,
        };
        recolour(cloth, palette.linens[n]);
    }
    let board =
        surface(palette.surface).filter(|s| wish.board && layout.table.surface.prop != s.id);
    if let Some(board) = board {
        after.table.surface = surface_from(board);
    }
    Swapped { after, stay }
}

/// The same as one act.
///
/// # Errors
/// When something locked would change.
pub fn swap(layout: &Layout, season: Season, wish: &Wish) -> Result<Act, Refused> {
    let name = say("done-season", &[("season", Arg::Text(season.name()))]);
    Act::between(name, layout, &swapped(layout, season, wish).after)
}

#[cfg(test)]
mod tests;
