//! Which papers there are, and what stands on each.
use super::after::{back_list, insurance_list, uneaten_list};
use super::food::food_list;
use super::list::List;
use super::log::{Logged, log_list};
use super::press::{Block, Head, Press};
use super::pull::pull_list;
use super::shots::{length, order_list, shot_list};
use super::{approval, release, set_sheet};
use crate::drawing::version;
use crate::layout::Layout;
use crate::readings::{Concern, cautions};
use crate::shelf::ShelfThing;
use crate::words::say;

/// One of the papers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sheet {
    /// The layout for approval.
    Approval,
    /// The set sheet.
    Set,
    /// The shot list.
    Shots,
    /// The prop pull list.
    Pull,
    /// The food list.
    Food,
    /// The running order.
    Order,
    /// The exposure log.
    Log,
    /// Insurance, and what becomes of all after.
    After,
    /// The release of a hand model.
    Release,
}

/// The paper it is printed on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// 210 × 297 mm.
    A4,
    /// 8.5 × 11 inches.
    Letter,
}

impl Paper {
    /// Width and height upright, mm.
    #[must_use]
    pub const fn size(self) -> [f64; 2] {
        match self {
            Self::A4 => [210.0, 297.0],
            Self::Letter => [215.9, 279.4],
        }
    }
}

impl Sheet {
    /// Every one, in the order they are needed in.
    pub const ALL: [Self; 9] = [
        Self::Approval,
        Self::Set,
        Self::Shots,
        Self::Pull,
        Self::Food,
        Self::Order,
        Self::Log,
        Self::After,
        Self::Release,
    ];

    /// The word it goes by in names of files and calls.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Approval => "approval",
            Self::Set => "set",
            Self::Shots => "shots",
            Self::Pull => "pull",
            Self::Food => "food",
            Self::Order => "order",
            Self::Log => "log",
            Self::After => "after",
            Self::Release => "release",
        }
    }

    /// The one of this word.
    #[must_use]
    pub fn of(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|sheet| sheet.key() == key)
    }

    /// What it is called.
    #[must_use]
    pub fn name(self) -> String {
        let id = match self {
            Self::Approval => "sheet-approval",
            Self::Set => "sheet-set",
            Self::Shots => "sheet-shots",
            Self::Pull => "sheet-pull",
            Self::Food => "sheet-food",
            Self::Order => "sheet-order",
            Self::Log => "sheet-log",
            Self::After => "sheet-after",
            Self::Release => "sheet-release",
        };
        say(id, &[])
    }

    /// Whether it lies on its side: it has more columns than fit upright.
    #[must_use]
    pub const fn is_wide(self) -> bool {
        matches!(self, Self::Pull | Self::Food)
    }

    /// Width and height of its pages on this paper, mm.
    #[must_use]
    pub const fn size(self, paper: Paper) -> [f64; 2] {
        let [wide, high] = paper.size();
        if self.is_wide() {
            [high, wide]
        } else {
            [wide, high]
        }
    }
}

/// What is known beside the layout.
#[derive(Clone, Copy, Debug, Default)]
pub struct Known<'a> {
    /// The things on the shelf, which the pull list speaks of.
    pub shelf: &'a [ShelfThing],
    /// What was written down of exposures, for their log.
    pub logged: &'a [Logged],
}

/// The lists that stand on a paper, where nothing else is known.
#[must_use]
pub fn lists(layout: &Layout, sheet: Sheet) -> Vec<List> {
    lists_with(layout, sheet, Known::default())
}

/// The lists that stand on a paper.
#[must_use]
pub fn lists_with(layout: &Layout, sheet: Sheet, known: Known<'_>) -> Vec<List> {
    match sheet {
        Sheet::Approval | Sheet::Release => Vec::new(),
        Sheet::Set => vec![set_sheet::places(layout)],
        Sheet::Shots => vec![shot_list(layout)],
        Sheet::Pull => vec![pull_list(layout, known.shelf)],
        Sheet::Food => vec![food_list(layout)],
        Sheet::Order => vec![order_list(layout)],
        Sheet::Log => vec![log_list(layout, known.logged)],
        Sheet::After => vec![
            insurance_list(layout),
            uneaten_list(layout),
            back_list(layout),
        ],
    }
}

/// The pages of a paper, each an SVG that stands alone, in mm, where nothing
/// else is known.
#[must_use]
pub fn pages(layout: &Layout, sheet: Sheet, paper: Paper) -> Vec<String> {
    pages_with(layout, sheet, paper, Known::default())
}

/// The pages of a paper.
#[must_use]
pub fn pages_with(layout: &Layout, sheet: Sheet, paper: Paper, known: Known<'_>) -> Vec<String> {
    let mut press = Press::new(sheet.size(paper));
    let wide = press.wide();
    let each = || {
        let all = lists_with(layout, sheet, known).into_iter();
        all.map(|list| Block::List(list, 1))
    };
    let words = |id: &str| Block::Words(say(id, &[]));
    let blocks = match sheet {
        Sheet::Approval => approval::blocks(layout, wide),
        Sheet::Set => set_sheet::blocks(layout, [wide, press.high()]),
        Sheet::Release => release::blocks(layout),
        Sheet::Food => {
            let mut blocks: Vec<Block> = each().collect();
            blocks.push(words("food-uneaten"));
            blocks.push(words("food-allergens"));
            let care = cautions(layout).into_iter();
            let care = care.filter(|c| c.concern == Concern::Food);
            blocks.extend(care.map(|c| Block::Words(c.line)));
            blocks
        }
        Sheet::Order => {
            let mut blocks: Vec<Block> = each().collect();
            blocks.push(Block::Words(length(layout)));
            let care = cautions(layout).into_iter();
            blocks.extend(care.map(|c| Block::Words(c.line)));
            blocks
        }
        Sheet::After => {
            let mut blocks: Vec<Block> = each().collect();
            blocks.push(words("food-uneaten"));
            blocks
        }
        Sheet::Shots | Sheet::Pull | Sheet::Log => each().collect(),
    };
    press.set(blocks);
    let title = &layout.head.title;
    press.pages(&Head {
        name: sheet.name(),
        title: if title.is_empty() {
            say("sheet-untitled", &[])
        } else {
            title.clone()
        },
        version: version(layout),
    })
}
