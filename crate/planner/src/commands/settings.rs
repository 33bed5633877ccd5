//! Place settings laid round a table in one act, among what is there already.
use glam::DVec2;
use serde::Deserialize;

use super::{Act, Refused, fresh_id, fresh_item, fresh_number};
use crate::catalogue::{self, is_strewn};
use crate::layout::{Extra, Group, Id, Layout, Point, Table, Turn};
use crate::scene::silhouette;
use crate::seats::{Closeness, Laid, PITCH, Setting, Stand, TIGHT_PITCH, setting, stands};
use crate::shape::{CHORD_ERROR, Region, contains, gap_within, table_outline};
use crate::words::{Arg, say};

/// What is to be laid.
#[derive(Deserialize)]
pub struct Wish {
    /// The kind of setting, by its id.
    pub setting: String,
    /// How many places.
    pub places: usize,
    /// Whether a step closer than usual.
    pub close: bool,
}

/// Most places at a time.
const MOST: usize = 12;
/// Air between a setting and what lies there already, mm (our choice).
const CLEAR: f64 = 10.0;
/// Least from a setting to the table's edge, mm (our choice).
const FROM_EDGE: f64 = 10.0;
/// How far a place is moved along its edge to find room, and by what steps,
/// mm (our choice).
const SLIDE: i32 = 160;
const SLIDE_STEP: i32 = 20;
/// How far a place is moved in from a round edge that its outer pieces would
/// hang over, and by what steps, mm.
const LIFT: i32 = 100;
const LIFT_STEP: i32 = 5;

/// Lays place settings, each a group that faces its sitter: along the long
/// sides, then the ends, or evenly round a round table. Nothing that is there
/// moves. What does not fit with the usual air is tried a step closer; what
/// does not fit then is not laid, and the act's name says how many are.
///
/// # Errors
/// When nobody knows the setting, or there is no room for one place.
pub fn lay_places(layout: &Layout, wish: &Wish) -> Result<Act, Refused> {
    let kind = setting(&wish.setting);
    let kind = kind.ok_or_else(|| Refused::Unknown(wish.setting.clone()))?;
    let asked = wish.places.clamp(1, MOST);
    let floor = Floor::of(layout);
    let usual = (Closeness::Usual, PITCH);
    let close = (Closeness::Close, TIGHT_PITCH);
    let ways: &[_] = if wish.close {
        &[close]
    } else {
        &[usual, close]
    };
    let mut best = (usual.0, Vec::new());
    for (closeness, pitch) in ways {
        let found = floor.places(&layout.table, kind, asked, (*closeness, *pitch));
        if found.len() > best.1.len() {
            best = (*closeness, found);
        }
    }
    let (closeness, placed) = best;
    if placed.is_empty() {
        return Err(Refused::NoRoom);
    }
    let laid = kind.laid(closeness);
    let mut after = layout.clone();
    let number = fresh_number(&mut after);
    for place in &placed {
        put(&mut after, &laid, place.at, place.turn, number)?;
    }
    let args = [
        ("count", Arg::Text(placed.len().to_string())),
        ("asked", Arg::Text(asked.to_string())),
    ];
    let id = match (placed.len(), closeness) {
        (count, _) if count < asked => "done-places-some",
        (1, _) => "done-place",
        (_, Closeness::Usual) => "done-places",
        (_, Closeness::Close) => "done-places-close",
    };
    Act::between(say(id, &args), layout, &after)
}

/// Puts one setting on the table as a group: `at` is where the middle of its
/// edge lies.
pub(super) fn put(
    layout: &mut Layout,
    laid: &[Laid],
    at: DVec2,
    turn: Turn,
    number: u16,
) -> Result<(), Refused> {
    let group = fresh_id(layout);
    let name = free_name(layout);
    layout.groups.push(Group {
        id: group,
        name,
        extra: Extra::new(),
    });
    for piece in laid {
        let mut item = fresh_item(layout, piece.prop)?;
        // All of a setting goes by one number.
        layout.head.next_number -= 1;
        item.number = number;
        item.group = Some(group);
        item.at = Point::nearest(at + turned(piece.at, turn));
        item.turn = turn.plus(piece.turn);
        layout.items.push(item);
    }
    Ok(())
}

/// A place about the middle after a turn clockwise.
fn turned(off: DVec2, turn: Turn) -> DVec2 {
    let up = turn.direction();
    DVec2::new(-up.y, up.x).rotate(off)
}

/// The first name of a place setting that no group has.
fn free_name(layout: &Layout) -> String {
    let named = |n: usize| say("group-setting", &[("place", Arg::Text(n.to_string()))]);
    let free = |name: &String| layout.groups.iter().all(|group| group.name != *name);
    let mut names = (1..).map(named);
    names.find(free).unwrap_or_default()
}

/// A place that was found for a setting.
struct Placed {
    at: DVec2,
    turn: Turn,
    inward: DVec2,
    regions: Vec<Region>,
}

/// The table as it is: as much as a setting may lie on, and what stands in the
/// way.
struct Floor {
    table: Vec<DVec2>,
    taken: Vec<Region>,
}

impl Floor {
    fn of(layout: &Layout) -> Self {
        // Crumbs make way, and what lies in a dish lies within it.
        let stand = layout
            .items
            .iter()
            .filter(|i| i.on.is_none() && !is_strewn(&i.prop));
        let outline = table_outline(&layout.table, CHORD_ERROR);
        let half = layout.table.centre().vec();
        let share = (half - FROM_EDGE).max(DVec2::ZERO) / half;
        Self {
            table: outline.iter().map(|p| half + (*p - half) * share).collect(),
            taken: stand
                .filter_map(|item| Region::from_polygon(&silhouette(item)).ok())
                .collect(),
        }
    }

    /// The places there is room for.
    fn places(
        &self,
        table: &Table,
        kind: &Setting,
        asked: usize,
        (closeness, pitch): (Closeness, f64),
    ) -> Vec<Placed> {
        let laid = kind.laid(closeness);
        let mut found: Vec<Placed> = Vec::new();
        for stand in stands(table, asked, pitch) {
            found.extend(self.place(&laid, stand, pitch, &found));
        }
        found
    }

    /// Where a setting has room at or near a stand, the least moved first.
    fn place(&self, laid: &[Laid], stand: Stand, pitch: f64, others: &[Placed]) -> Option<Placed> {
        let turn = libm::atan2(stand.inward.x, -stand.inward.y).to_degrees();
        let turn = Turn::from_degrees(turn);
        let regions = outlines(laid, stand.at, turn);
        let moves = if stand.slides { slides() } else { lifts() };
        let along = if stand.slides {
            stand.inward.perp()
        } else {
            stand.inward
        };
        for by in moves {
            let by = along * f64::from(by);
            let at = stand.at + by;
            let beside = |other: &&Placed| other.inward == stand.inward;
            let mut row = others.iter().filter(beside);
            if row.any(|other| other.at.distance(at) < pitch - 1.0) {
                continue;
            }
            let moved: Vec<Region> = regions.iter().map(|r| r.moved(by)).collect();
            if self.has_room(&moved, others) {
                return Some(Placed {
                    at,
                    turn,
                    inward: stand.inward,
                    regions: moved,
                });
            }
        }
        None
    }

    fn has_room(&self, own: &[Region], others: &[Placed]) -> bool {
        let corners = own.iter().flat_map(Region::rings).flatten();
        let mut outside = corners.filter(|corner| !contains(&self.table, **corner));
        if outside.next().is_some() {
            return false;
        }
        let laid = others.iter().flat_map(|place| &place.regions);
        let mut taken = self.taken.iter().chain(laid);
        taken.all(|other| {
            own.iter()
                .all(|region| gap_within(region, other, CLEAR).is_none())
        })
    }
}

/// The outlines of a setting's things.
fn outlines(laid: &[Laid], at: DVec2, turn: Turn) -> Vec<Region> {
    let outline = |piece: &Laid| {
        let entry = catalogue::prop(piece.prop)?;
        let mut item = catalogue::item_from(entry, Id(0), 0, Point::new(0, 0));
        item.turn = turn.plus(piece.turn);
        let place = at + turned(piece.at, turn);
        let outline: Vec<DVec2> = silhouette(&item).iter().map(|p| *p + place).collect();
        Region::from_polygon(&outline).ok()
    };
    laid.iter().filter_map(outline).collect()
}

/// To either side, nearest first, mm.
fn slides() -> Vec<i32> {
    let sides = (1..=SLIDE / SLIDE_STEP).flat_map(|n| [n * SLIDE_STEP, -n * SLIDE_STEP]);
    core::iter::once(0).chain(sides).collect()
}

/// Inwards, nearest first, mm.
fn lifts() -> Vec<i32> {
    (0..=LIFT / LIFT_STEP).map(|n| n * LIFT_STEP).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::Item;
    use crate::layout::{LayoutId, TableShape};

    fn table(shape: TableShape, width: i32, depth: i32) -> Layout {
        let mut layout = Layout::empty(LayoutId(3));
        layout.table.shape = shape;
        (layout.table.width, layout.table.depth) = (width, depth);
        layout
    }

    fn wish(setting: &str, places: usize) -> Wish {
        Wish {
            setting: setting.into(),
            places,
            close: false,
        }
    }

    fn laid(before: &Layout, wish: &Wish) -> (String, Layout) {
        let act = lay_places(before, wish).expect("there is room");
        let mut after = before.clone();
        act.edit.apply_checked(&mut after).expect("fits");
        (act.name, after)
    }

    /// Pairs of things on the table, of two groups or none, nearer than `air`.
    fn near(layout: &Layout, air: f64) -> Vec<(String, String)> {
        let stand = layout
            .items
            .iter()
            .filter(|i| i.on.is_none() && !is_strewn(&i.prop));
        let stand: Vec<&Item> = stand.collect();
        let region = |i: &Item| Region::from_polygon(&silhouette(i)).expect("an outline");
        let mut out = Vec::new();
        for (n, a) in stand.iter().enumerate() {
            for b in &stand[n + 1..] {
                let apart = a.group.is_none() || a.group != b.group;
                if apart && gap_within(&region(a), &region(b), air).is_some() {
                    out.push((a.name.clone(), b.name.clone()));
                }
            }
        }
        out
    }

    #[test]
    fn six_places_are_one_step_of_six_groups_that_stand_clear() {
        for kind in &crate::seats::SETTINGS {
            for before in [
                table(TableShape::Rect, 2_000, 1_000),
                table(TableShape::Round, 1_500, 1_500),
            ] {
                let (name, after) = laid(&before, &wish(kind.id, 6));
                assert!(name.starts_with("6 places laid"), "{}: {name}", kind.id);
                assert_eq!(after.groups.len(), 6, "{}", kind.id);
                assert_eq!(after.groups[5].name, "place setting 6", "named in order");
                let number = after.items[0].number;
                assert!(after.items.iter().all(|i| i.number == number), "one number");
                assert_eq!(near(&after, CLEAR - 2.0), [], "{}", kind.id);
                let table = table_outline(&after.table, CHORD_ERROR);
                let off = after.items.iter().find(|i| {
                    let outline = silhouette(i);
                    outline.iter().any(|p| !contains(&table, *p))
                });
                assert_eq!(off.map(|i| &i.prop), None, "{}: on the table", kind.id);
            }
        }
    }

    #[test]
    fn what_does_not_fit_is_not_laid_and_is_said() {
        let small = table(TableShape::Rect, 1_400, 900);
        let (name, after) = laid(&small, &wish("camera", 12));
        let count = after.groups.len();
        assert!((4..=6).contains(&count), "{count}");
        assert_eq!(name, format!("{count} of 12 places fit"), "said");
        let tiny = table(TableShape::Rect, 200, 150);
        let refused = lay_places(&tiny, &wish("camera", 2));
        assert_eq!(refused, Err(Refused::NoRoom), "nothing fits");
        assert!(lay_places(&small, &wish("picnic", 2)).is_err(), "unknown");
    }

    #[test]
    fn more_fit_a_step_closer_where_they_must() {
        let before = table(TableShape::Rect, 1_650, 1_100);
        let (name, after) = laid(&before, &wish("camera", 8));
        assert_eq!(after.groups.len(), 8, "{name}");
        assert_eq!(name, "8 places laid, a step closer", "said");
        let mut close = wish("camera", 1);
        close.close = true;
        let (_, close) = laid(&before, &close);
        let (_, usual) = laid(&before, &wish("camera", 1));
        let breadth = |l: &Layout| l.items[2].at.x - l.items[1].at.x;
        assert!(breadth(&close) < breadth(&usual), "closer when asked");
    }

    #[test]
    fn among_dishes_nothing_moves_and_nothing_is_covered() {
        let mut before = super::super::lay(&super::super::TableWish {
            id: "00000000000000aa".into(),
            width: 1_700,
            depth: 1_000,
            shape: TableShape::Rect,
            board: "oak".into(),
            ratio: [3, 2],
            people: 2,
            dishes: ["fish", "loaf", "olives", "soup"].map(String::from).into(),
        })
        .expect("laid");
        for item in &mut before.items {
            item.locked = item.id.0 % 2 == 0;
        }
        let near_before = near(&before, CLEAR - 2.0);
        let Ok(act) = lay_places(&before, &wish("camera", 4)) else {
            panic!("room for one place at least");
        };
        let mut after = before.clone();
        act.edit.apply_checked(&mut after).expect("fits");
        assert_eq!(
            after.items[..before.items.len()],
            before.items,
            "all as it was"
        );
        assert_eq!(near(&after, CLEAR - 2.0), near_before, "and clear of it");
    }
}
