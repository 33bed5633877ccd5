//! What lies at a place, as data, and where: measured from the sitter's edge
//! of the table.
//!
//! Sources: plate to the edge of the table, pieces beyond the plate's rim and
//! the cup's place: etiquettescholar.com on placing dinnerware; lower ends of
//! cutlery in line with the plate's rim, an inch beside it, water glass an inch
//! above the knife's tip: a table-setting primer (weak, as quoted); fork left,
//! knife right with its blade inward, spoon right of it: Berolzheimer, The
//! American Woman's Cook Book (1930s). Gaps between pieces: common practice,
//! no source. What lies at the places with chopsticks: common practice, no
//! source.
use glam::{DVec2, dvec2};

use crate::catalogue;
use crate::layout::Size;

/// How close the things of a setting lie to each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Closeness {
    /// As the books have it.
    Usual,
    /// A step closer, for the picture.
    Close,
}

/// Where a thing of a setting lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Spot {
    /// Across between sitter and plate, its head to the left.
    Before,
    /// In the middle.
    Plate,
    /// Left of what lies left already, its lower end in line with the plate's.
    Left,
    /// Right of what lies right already, its lower end in line with the plate's.
    Right,
    /// Above the tip of the first thing on the right.
    AboveRight,
    /// Above the tip of the first thing on the left.
    AboveLeft,
    /// Right of all, its far side in line with the plate's, its handle towards
    /// four o'clock.
    Beyond,
}

/// One thing of a setting.
#[derive(Clone, Copy, Debug)]
struct Thing {
    prop: &'static str,
    spot: Spot,
}

/// A kind of place setting.
#[derive(Debug)]
pub struct Setting {
    /// What the page asks for it by.
    pub id: &'static str,
    /// From the table's edge to what lies nearest to it, mm.
    pub edge: i32,
    things: &'static [Thing],
}

const fn thing(prop: &'static str, spot: Spot) -> Thing {
    Thing { prop, spot }
}

/// A large plate's rim lies an inch from the edge, a small one's two.
const LARGE_IN: i32 = 25;
const SMALL_IN: i32 = 51;

use Spot::{AboveLeft, AboveRight, Before, Beyond, Left, Plate, Right};

/// Every kind of setting; the first is the usual one for the camera, which
/// makes a table look fuller and the food larger.
pub static SETTINGS: [Setting; 5] = [
    Setting {
        id: "camera",
        edge: SMALL_IN,
        things: &[
            thing("small-plate", Plate),
            thing("dessert-fork", Left),
            thing("dessert-knife", Right),
            thing("juice-glass", AboveRight),
        ],
    },
    Setting {
        id: "true",
        edge: LARGE_IN,
        things: &[
            thing("dinner-plate", Plate),
            thing("fork", Left),
            thing("folded-napkin", Left),
            thing("knife", Right),
            thing("spoon", Right),
            thing("goblet", AboveRight),
            thing("bread-plate", AboveLeft),
        ],
    },
    Setting {
        id: "tea",
        edge: SMALL_IN,
        things: &[
            thing("small-plate", Plate),
            thing("dessert-fork", Left),
            thing("butter-knife", Right),
            thing("teaspoon", Right),
            thing("teacup", Beyond),
        ],
    },
    // As in Japan: chopsticks across before the bowl, tips to the left.
    Setting {
        id: "chopsticks-across",
        edge: LARGE_IN,
        things: &[
            thing("chopsticks", Before),
            thing("noodle-bowl", Plate),
            thing("dip-bowl", AboveLeft),
            thing("tea-glass", AboveRight),
        ],
    },
    // As in China: chopsticks upright on the right, the spoon beside the bowl.
    Setting {
        id: "chopsticks-beside",
        edge: LARGE_IN,
        things: &[
            thing("noodle-bowl", Plate),
            thing("rice-spoon", Right),
            thing("chopsticks", Right),
            thing("dip-bowl", AboveLeft),
            thing("tea-glass", AboveRight),
        ],
    },
];

/// The setting of this id.
#[must_use]
pub fn setting(id: &str) -> Option<&'static Setting> {
    SETTINGS.iter().find(|setting| setting.id == id)
}

/// A thing of a setting where it lies before a sitter who looks up the page.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Laid {
    /// What it is in the catalogue.
    pub prop: &'static str,
    /// Its middle: mm to the right of the plate's and above the table's edge,
    /// upwards being less.
    pub at: DVec2,
    /// Its turn, half degrees clockwise.
    pub turn: i32,
}

/// Gaps of a setting, mm.
struct Gaps {
    /// From the plate to the first thing beside it, from the knife's tip to
    /// the glass, and from the outer thing to the cup.
    plate: f64,
    /// Between things side by side.
    between: f64,
}

impl Closeness {
    const fn gaps(self) -> Gaps {
        match self {
            // An inch, and the middle of half an inch to an inch.
            Self::Usual => Gaps {
                plate: 25.0,
                between: 18.0,
            },
            // Half an inch throughout, the least that is usual between pieces.
            Self::Close => Gaps {
                plate: 12.0,
                between: 12.0,
            },
        }
    }
}

/// A cup's handle points right as it is drawn; to four o'clock it turns by
/// thirty degrees, in half degrees.
const FOUR_O_CLOCK: i32 = 60;
/// Its head to the left instead of away from the sitter, half degrees.
const TO_THE_LEFT: i32 = -180;

impl Setting {
    /// Every thing where it lies. One that the catalogue does not have is left
    /// out; a test holds all to be there.
    #[must_use]
    pub fn laid(&self, closeness: Closeness) -> Vec<Laid> {
        let Gaps { plate, between } = closeness.gaps();
        let extent = |prop: &str| {
            let size = catalogue::prop(prop).map(|entry| &entry.size);
            size.map_or(DVec2::ZERO, |size: &Size| {
                DVec2::from_array(size.extent().map(f64::from))
            })
        };
        // Height of the plate's near and far side and middle, each side's outer
        // edge, and the tip of the first thing there.
        let mut near = -f64::from(self.edge);
        let mut far = near;
        let mut middle = near;
        let mut sides = [0.0; 2];
        let mut tips: [Option<DVec2>; 2] = [None; 2];
        let mut out = Vec::with_capacity(self.things.len());
        for Thing { prop, spot } in self.things {
            let size = extent(prop);
            let half = size * 0.5;
            let mut turn = 0;
            let mut beside = |side: usize, sign: f64| {
                let gap = if tips[side].is_none() { plate } else { between };
                let x = sides[side] + gap + half.x;
                sides[side] = x + half.x;
                let tip = dvec2(sign * x, near - size.y);
                tips[side].get_or_insert(tip);
                dvec2(sign * x, near - half.y)
            };
            let at = match spot {
                Before => {
                    // It lies across: what was its width is its depth.
                    turn = TO_THE_LEFT;
                    let at = dvec2(0.0, near - half.x);
                    near -= size.x + plate;
                    at
                }
                Plate => {
                    sides = [half.x; 2];
                    far = near - size.y;
                    middle = near - half.y;
                    dvec2(0.0, middle)
                }
                Left => beside(0, -1.0),
                Right => beside(1, 1.0),
                AboveLeft | AboveRight => {
                    let side = usize::from(*spot == AboveRight);
                    let sign = if side == 0 { -1.0 } else { 1.0 };
                    // With nothing beside the plate, off its shoulder.
                    let shoulder = dvec2(sign * sides[side], far + plate);
                    let tip = tips[side].unwrap_or(shoulder);
                    let above = tip - dvec2(0.0, plate + half.y);
                    if side == 0 || closeness == Closeness::Usual {
                        above
                    } else {
                        // Drawn in towards the plate, as near as its rim lets it.
                        let x = above.x * 0.5;
                        let round = (middle - far) + plate + half.y;
                        let y = (round * round - x * x).max(0.0).sqrt();
                        dvec2(x, middle - y)
                    }
                }
                Beyond => {
                    turn = FOUR_O_CLOCK;
                    let x = sides[1] + plate + half.x;
                    sides[1] = x + half.x;
                    dvec2(x, far + half.y)
                }
            };
            out.push(Laid { prop, at, turn });
        }
        out
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn everything_at_a_place_is_in_the_catalogue() {
        for setting in &SETTINGS {
            for thing in setting.things {
                let known = catalogue::prop(thing.prop);
                assert!(known.is_some(), "{}: {}", setting.id, thing.prop);
            }
            assert_eq!(setting.laid(Closeness::Usual).len(), setting.things.len());
            let plates = setting.things.iter().filter(|t| t.spot == Plate).count();
            assert_eq!(plates, 1, "{}: one plate", setting.id);
        }
    }

    #[test]
    fn a_closer_setting_takes_less_of_the_table() {
        for setting in &SETTINGS {
            let [usual, close] = [Closeness::Usual, Closeness::Close].map(|c| setting.laid(c));
            let breadth = |laid: &[Laid]| {
                let reach = |sign: f64| {
                    let side = laid.iter().map(|l| sign * l.at.x);
                    side.fold(f64::NEG_INFINITY, f64::max)
                };
                reach(1.0) + reach(-1.0)
            };
            assert!(breadth(&close) < breadth(&usual) + 1e-9, "{}", setting.id);
            let deepest = |laid: &[Laid]| laid.iter().map(|l| l.at.y).fold(0.0, f64::min);
            assert!(deepest(&close) >= deepest(&usual), "{}", setting.id);
        }
    }

    #[test]
    fn a_setting_goes_by_its_id() {
        assert_eq!(setting("tea").map(|s| s.id), Some("tea"), "found");
        assert!(setting("picnic").is_none(), "none of that name");
    }
}
