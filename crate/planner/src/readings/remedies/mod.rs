//! Changes a stylist would try, each as the layout it would lead to.
mod under;
mod vessel;

use glam::DVec2;

use super::finding::Remedy;
use super::study::Study;
use crate::edit::Edit;
use crate::layout::{Id, Layout, LinenKind, LinenState, Point, SleeveLength, TableShape, Turn};
use crate::scene::Stacks;
use crate::shape::{Bounds, Region, gap_within};
use crate::words::{Arg, say};

/// A moved dish keeps at least this clear of others, mm: gaps under 1 cm read
/// as touching (common practice, no source).
const CLEAR: f64 = 20.0;

pub(super) use under::{board_under, napkin_under, paper_under};
pub(super) use vessel::{best_surface, better_faces, pale_inside, pale_vessel};

/// One change: what to say and the layout after it.
pub(super) struct Try {
    pub(super) act: String,
    pub(super) after: Layout,
}

impl Try {
    /// The remedy that this change is, with its figure after it; `told` is the
    /// sentence, and how it says the figure before and after.
    pub(super) fn remedy(
        self,
        study: &Study<'_>,
        after: f64,
        (told, [was, now]): (&str, [String; 2]),
    ) -> Remedy {
        let args = [("before", Arg::Text(was)), ("after", Arg::Text(now))];
        Remedy {
            act: self.act,
            predicted: say(told, &args),
            after,
            edit: Edit::between(study.layout(), &self.after),
        }
    }
}

/// Lays the first folded runner or cloth along the middle of the table.
pub(super) fn lay_linen(study: &Study<'_>) -> Option<Try> {
    let mut after = study.layout().clone();
    let table = after.table.clone();
    let usable = |k: LinenKind| matches!(k, LinenKind::Runner | LinenKind::Cloth);
    let linen = after
        .linens
        .iter_mut()
        .find(|l| l.state == LinenState::Folded && usable(l.kind) && !l.locked)?;
    linen.state = LinenState::Flat;
    linen.at = table.centre();
    if table.shape == TableShape::Rect && table.depth > table.width {
        linen.turn = Turn::from_half_degrees(180);
    }
    let act = say("act-lay", &[("linen", Arg::Name(study.name(linen.id)))]);
    Some(Try { act, after })
}

/// Moves a dish the shortest way fully onto a flat linen that is free there.
pub(super) fn onto_linen(study: &Study<'_>, id: Id) -> Option<Try> {
    let item = study.item(id).filter(|i| i.on.is_none() && !i.locked)?;
    let linen = study
        .layout()
        .linens
        .iter()
        .find(|l| l.state == LinenState::Flat)?;
    // Straight across the linen, in its own frame.
    let across = linen.turn.direction();
    let off = (item.at.vec() - linen.at.vec()).dot(across);
    let [_, depth] = linen.lying();
    let own = item.size.extent().map(f64::from);
    let room = (depth - own[0].max(own[1])) * 0.5;
    if room <= 0.0 || off.abs() <= room {
        return None;
    }
    let shift = across * (off.signum() * room - off);
    let after = stack_moved(study.layout(), id, shift);
    if !stands_clear(study, id, shift) {
        return None;
    }
    let args = [
        ("thing", Arg::Name(study.name(item.id))),
        ("linen", Arg::Name(study.name(linen.id))),
    ];
    Some(Try {
        act: say("act-move-onto", &args),
        after,
    })
}

/// A layout with one stack moved.
pub(super) fn stack_moved(layout: &Layout, id: Id, shift: DVec2) -> Layout {
    let mut after = layout.clone();
    let stacks = Stacks::of(layout);
    for item in after.items.iter_mut().filter(|i| stacks.root(i.id) == id) {
        item.at = Point::nearest(item.at.vec() + shift);
    }
    after
}

/// Whether a stack moved by `shift` keeps clear of the other dishes.
pub(super) fn stands_clear(study: &Study<'_>, id: Id, shift: DVec2) -> bool {
    stands_clear_by(study, id, shift, CLEAR)
}

/// Likewise by this much, mm.
pub(super) fn stands_clear_by(study: &Study<'_>, id: Id, shift: DVec2, room: f64) -> bool {
    let scene = study.scene();
    let outline = |want: bool| {
        scene.touchable.iter().filter(move |(owner, _)| {
            study.item(*owner).is_some() && (study.root(*owner) == id) == want
        })
    };
    outline(true).all(|(_, own)| {
        let Ok(own) = Region::from_polygon(own) else {
            return false;
        };
        let own = own.moved(shift);
        let far = |other: &[DVec2]| {
            let boxes = own.bounds().zip(Bounds::around(other));
            boxes.is_some_and(|(a, b)| a.gap(b) > room)
        };
        outline(false).all(|(_, other)| {
            let clear = |r: Region| gap_within(&own, &r, room).is_none();
            far(other) || Region::from_polygon(other).is_ok_and(clear)
        })
    })
}

/// The sentence that says to move something this way, as the picture shows it.
pub(super) fn way(study: &Study<'_>, by: DVec2) -> &'static str {
    let picture = study.picture();
    let by = picture.of_table(picture.at + by) - picture.of_table(picture.at);
    match (by.x.abs() >= by.y.abs(), by.x < 0.0, by.y < 0.0) {
        (true, true, _) => "act-move-left",
        (true, false, _) => "act-move-right",
        (false, _, true) => "act-move-up",
        (false, _, false) => "act-move-down",
    }
}

/// Rolls up the sleeves of the people these hands belong to.
pub(super) fn roll_sleeves(study: &Study<'_>, hands: &[Id]) -> Option<Try> {
    let mut after = study.layout().clone();
    let people: Vec<Id> = after
        .hands
        .iter()
        .filter(|h| hands.contains(&h.id))
        .map(|h| h.person)
        .collect();
    let mut any = false;
    for person in after.people.iter_mut().filter(|p| people.contains(&p.id)) {
        if person.sleeve.length == SleeveLength::Long {
            person.sleeve.length = SleeveLength::Rolled;
            any = true;
        }
    }
    any.then(|| Try {
        act: say("act-roll", &[]),
        after,
    })
}
