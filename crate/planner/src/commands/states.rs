//! How a thing is in one exposure: as it is set, not there, somewhere else, or
//! with its food changed.
use serde::Deserialize;

use super::exposures::{known, named};
use super::{Act, Refused, name_of};
use crate::catalogue::{self, shown_parts};
use crate::layout::{
    As, Extra, Id, Item, Layout, Origin, Part, Parts, Point, Srgb, State, Tone, Turn,
};
use crate::scene::exposure_name;
use crate::words::{Arg, say};

/// How food looks after something was done to it; each is a change of its
/// colours, a guess to be put right from a photo.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Look {
    /// Half of it gone: what it lay on shows.
    Eaten,
    /// Cut open: half of it shows a pale inside.
    Cut,
    /// Oil or sauce over it: warmer and darker.
    Poured,
    /// Another food of the catalogue in its place.
    Food(String),
}

/// How a thing is to be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum How {
    /// As it is set.
    Set,
    /// Not there.
    Absent,
    /// At this place, turned so when that is told.
    Moved(Point, Option<Turn>),
    /// Its food looking so.
    Look(Look),
}

/// What is inside of most food that is cut: crumb, flesh of fruit and roots,
/// cheese. Our choice.
const INSIDE: Srgb = Srgb::hex(0x00ee_e0c4);
/// What is poured over food: between oil, butter and gravy. Our choice.
const SAUCE: Srgb = Srgb::hex(0x0096_6428);
/// How much of what is poured covers each tone. Our choice.
const COVERS: f64 = 0.45;
/// Share of the food that is gone or cut open, percent. Our choice.
const HALF: u8 = 50;

/// Has a thing be so in an exposure; where it is as it is set nothing is told
/// of it.
///
/// # Errors
/// When there is no such exposure, thing, or food to look so.
pub fn put_in(layout: &Layout, exposure: Id, item: Id, how: &How) -> Result<Act, Refused> {
    let place = known(layout, exposure)?;
    let own = layout.items.iter().find(|i| i.id == item);
    let unknown = || Refused::Unknown(item.0.to_string());
    let mut state = State {
        item,
        is: As::Set,
        at: None,
        turn: None,
        parts: None,
        extra: Extra::new(),
    };
    let done = match how {
        How::Set => "done-in-set",
        How::Absent => {
            state.is = As::Absent;
            "done-in-absent"
        }
        How::Moved(at, turn) => {
            (state.is, state.at, state.turn) = (As::Moved, Some(*at), *turn);
            "done-in-moved"
        }
        How::Look(look) => {
            let parts = looking(layout, own.ok_or_else(unknown)?, look);
            state.is = As::Changed;
            state.parts = Some(parts.ok_or_else(unknown)?);
            "done-in-changed"
        }
    };
    // What is told of a thing that is gone can still be forgotten.
    if own.is_none() && *how != How::Set {
        return Err(unknown());
    }
    let mut after = layout.clone();
    let states = &mut after.exposures[place].states;
    match states.iter_mut().find(|s| s.item == item) {
        Some(told) if state.is != As::Set => {
            // What a newer version told of it stays.
            state.extra = told.extra.clone();
            *told = state;
        }
        Some(_) => states.retain(|s| s.item != item),
        None if state.is != As::Set => states.push(state),
        None => {}
    }
    let args = [
        ("thing", Arg::Name(name_of(layout, item))),
        ("exposure", Arg::Text(exposure_name(layout, exposure))),
    ];
    Act::between(say(done, &args), layout, &after)
}

/// Moves a thing in an exposure, mm and half degrees, from where it is in it.
///
/// # Errors
/// When there is no such exposure or thing.
pub fn move_in(
    layout: &Layout,
    exposure: Id,
    item: Id,
    [dx, dy]: [i32; 2],
    half_degrees: i32,
) -> Result<Act, Refused> {
    let place = known(layout, exposure)?;
    let own = layout.items.iter().find(|i| i.id == item);
    let own = own.ok_or_else(|| Refused::Unknown(item.0.to_string()))?;
    let told = layout.exposures[place].states.iter();
    let told = told.filter(|s| s.is == As::Moved).find(|s| s.item == item);
    let at = told.and_then(|s| s.at).unwrap_or(own.at).moved(dx, dy);
    let turned = told.and_then(|s| s.turn);
    let turn = if half_degrees == 0 {
        turned
    } else {
        Some(turned.unwrap_or(own.turn).plus(half_degrees))
    };
    // Back where it is set it is not moved.
    let how = if at == own.at && turn.is_none_or(|turn| turn == own.turn) {
        How::Set
    } else {
        How::Moved(at, turn)
    };
    put_in(layout, exposure, item, &how)
}

/// Puts all things of an exposure as they are set.
///
/// # Errors
/// When there is no such exposure.
pub fn all_as_set(layout: &Layout, exposure: Id) -> Result<Act, Refused> {
    let place = known(layout, exposure)?;
    let mut after = layout.clone();
    after.exposures[place].states.clear();
    Act::between(named(layout, exposure, "done-all-set"), layout, &after)
}

/// Whether a thing has food that can look otherwise.
#[must_use]
pub fn has_food(item: &Item) -> bool {
    shown_parts(item).food.is_some()
}

/// The colours of a thing whose food looks so; none for a thing without food
/// or a food nobody knows.
fn looking(layout: &Layout, item: &Item, look: &Look) -> Option<Parts> {
    let food = shown_parts(item).food?;
    let colours = match look {
        Look::Eaten => halved(&food, ground(layout, item)),
        Look::Cut => halved(&food, INSIDE),
        Look::Poured => {
            let covered = |tone: &Tone| Tone {
                srgb: mixed(tone.srgb, SAUCE),
                share: tone.share,
                origin: Origin::Guess,
            };
            food.colours.iter().map(covered).collect()
        }
        Look::Food(id) => {
            let entry = catalogue::foods().iter().find(|e| e.id == id)?;
            catalogue::parts_of(entry).food?.colours
        }
    };
    Some(Parts {
        food: Some(Part { colours }),
        ..Parts::default()
    })
}

/// What shows where a food is gone: the inside of its own dish, or of the dish
/// it lies on, or the table.
fn ground(layout: &Layout, item: &Item) -> Srgb {
    let below = layout.items.iter().find(|i| Some(i.id) == item.on);
    let own = shown_parts(item).well;
    let part = own.or_else(|| {
        let dish = shown_parts(below?);
        dish.well.or(dish.rim)
    });
    let tone = part.and_then(|part| part.colours.first().map(|tone| tone.srgb));
    tone.unwrap_or(layout.table.surface.colour)
}

/// Half of a food in another colour, the other half in its two largest tones.
fn halved(food: &Part, other: Srgb) -> Vec<Tone> {
    let mut own: Vec<&Tone> = food.colours.iter().collect();
    crate::order::sort(&mut own, |a, b| b.share.cmp(&a.share));
    own.truncate(2);
    let tone = |srgb, share| Tone {
        srgb,
        share,
        origin: Origin::Guess,
    };
    let whole: u32 = own.iter().map(|t| u32::from(t.share)).sum();
    let first = own.first().map_or(0, |t| u32::from(t.share));
    // A tone has at least a hundredth.
    let first = (first * u32::from(HALF) / whole.max(1)).clamp(1, 49) as u8;
    match own.as_slice() {
        [one, two] => vec![
            tone(one.srgb, first),
            tone(two.srgb, HALF - first),
            tone(other, 100 - HALF),
        ],
        [one, ..] => vec![tone(one.srgb, HALF), tone(other, 100 - HALF)],
        [] => vec![tone(other, 100)],
    }
}

fn mixed(own: Srgb, over: Srgb) -> Srgb {
    let mut out = own;
    for (own, over) in out.0.iter_mut().zip(over.0) {
        let mix = f64::from(*own) * (1.0 - COVERS) + f64::from(over) * COVERS;
        *own = mix.round() as u8;
    }
    out
}

#[cfg(test)]
mod tests {
    use super::super::tests::{done, laid};
    use super::*;

    fn state(layout: &Layout, item: u16) -> Option<State> {
        let mut states = layout.exposures[1].states.iter();
        states.find(|s| s.item == Id(item)).cloned()
    }

    #[test]
    fn a_thing_is_absent_moved_changed_and_as_set_again() {
        let layout = laid();
        let put = |layout: &Layout, how: &How| done(layout, put_in(layout, Id(22), Id(4), how));
        let away = put(&layout, &How::Absent);
        assert_eq!(state(&away, 4).expect("told").is, As::Absent);
        let moved = put(&away, &How::Moved(Point::new(700, 300), None));
        assert_eq!(moved.exposures[1].states.len(), 1, "one state a thing");
        assert_eq!(
            state(&moved, 4).expect("told").at,
            Some(Point::new(700, 300))
        );
        let eaten = put(&moved, &How::Look(Look::Eaten));
        assert_eq!(state(&eaten, 4).expect("told").at, None, "in its place");
        let set = put(&eaten, &How::Set);
        assert_eq!(set, layout, "nothing is told");
        assert!(put_in(&layout, Id(99), Id(4), &How::Absent).is_err());
        assert!(put_in(&layout, Id(22), Id(99), &How::Absent).is_err());
        let fork = put_in(&layout, Id(22), Id(6), &How::Look(Look::Cut));
        assert!(fork.is_err(), "a fork has no food");
    }

    #[test]
    fn what_is_told_of_a_gone_thing_can_be_forgotten() {
        let mut layout = laid();
        layout = done(&layout, put_in(&layout, Id(22), Id(7), &How::Absent));
        layout.items.retain(|i| i.id != Id(7));
        let after = done(&layout, put_in(&layout, Id(22), Id(7), &How::Set));
        assert!(after.exposures[1].states.is_empty(), "forgotten");
    }

    #[test]
    fn a_thing_moves_on_from_where_it_is_in_the_exposure_and_back_to_its_place() {
        let layout = laid();
        let by = |layout: &Layout, by, turn| done(layout, move_in(layout, Id(22), Id(3), by, turn));
        let one = by(&by(&layout, [30, 0], 0), [0, -20], 0);
        let told = state(&one, 3).expect("told");
        assert_eq!((told.at, told.turn), (Some(Point::new(930, 380)), None));
        let turned = by(&one, [0, 0], 30);
        assert_eq!(
            state(&turned, 3).expect("told").turn,
            Some(Turn::from_degrees(15.0))
        );
        assert_eq!(by(&one, [-30, 20], 0), layout, "back");
        assert_eq!(layout.items[1].at, Point::new(900, 400), "set where it was");
    }

    #[test]
    fn looks_are_colours_a_file_can_hold() {
        let layout = laid();
        let looks = [
            Look::Eaten,
            Look::Cut,
            Look::Poured,
            Look::Food("olives".into()),
        ];
        let mut seen = Vec::new();
        for look in looks {
            for item in [4, 7] {
                let how = How::Look(look.clone());
                let after = done(&layout, put_in(&layout, Id(22), Id(item), &how));
                let read = crate::layout::open(&after.to_json());
                assert_eq!(read.as_ref(), Ok(&after), "{look:?}");
                let told = state(&after, item).and_then(|s| s.parts).expect("told");
                assert_eq!((&told.rim, &told.well), (&None, &None), "its dish stays");
                let own = layout.items.iter().find(|i| i.id == Id(item));
                assert_ne!(told.food, shown_parts(own.expect("there")).food);
                seen.push(told.food);
            }
        }
        seen.dedup();
        assert_eq!(seen.len(), 7, "each look is another, olives are olives");
        let none = How::Look(Look::Food("anvil".into()));
        assert!(
            put_in(&layout, Id(22), Id(4), &none).is_err(),
            "no such food"
        );
    }

    #[test]
    fn all_is_put_as_it_is_set() {
        let mut layout = laid();
        for item in [3, 5] {
            layout = done(&layout, put_in(&layout, Id(24), Id(item), &How::Absent));
        }
        assert_eq!(done(&layout, all_as_set(&layout, Id(24))), laid());
    }
}
