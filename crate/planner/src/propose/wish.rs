//! What is wanted of a search.
use crate::layout::Id;
use crate::readings::Weighing;

/// What the search may change. What is locked stays in any case.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct May {
    /// Dishes and place settings.
    pub dishes: bool,
    /// Runners and cloths.
    pub linens: bool,
    /// Where hands come from.
    pub hands: bool,
    /// Where crops lie.
    pub crops: bool,
    /// Where the light stands.
    pub light: bool,
}

impl May {
    /// All of it.
    pub const ALL: Self = Self {
        dishes: true,
        linens: true,
        hands: true,
        crops: true,
        light: true,
    };
    /// None of it.
    pub const NONE: Self = Self {
        dishes: false,
        linens: false,
        hands: false,
        crops: false,
        light: false,
    };

    /// What may be changed, by name, in the order of the fields.
    pub const NAMES: [&str; 5] = ["dishes", "linens", "hands", "crops", "light"];

    /// What these names allow; others allow nothing.
    #[must_use]
    pub fn named(names: &[String]) -> Self {
        let [dishes, linens, hands, crops, light] =
            Self::NAMES.map(|name| names.iter().any(|n| n == name));
        Self {
            dishes,
            linens,
            hands,
            crops,
            light,
        }
    }

    /// What both allow.
    #[must_use]
    pub const fn and(self, other: Self) -> Self {
        Self {
            dishes: self.dishes && other.dishes,
            linens: self.linens && other.linens,
            hands: self.hands && other.hands,
            crops: self.crops && other.crops,
            light: self.light && other.light,
        }
    }
}

/// What is wanted of a search.
#[derive(Clone, Debug)]
pub struct Wish {
    /// What it may change.
    pub may: May,
    /// How findings are weighed.
    pub weighing: Weighing,
    /// What chance begins with.
    pub seed: u32,
    /// How many layouts are priced, in all.
    pub evaluations: u32,
    /// Whether several different ways are looked for, or all goes into one.
    pub several: bool,
    /// The crop in view, of which the scores are; 0 for the whole frame.
    pub crop: Id,
}
