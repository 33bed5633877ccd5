//! Slipping something pale under a dish.
use super::{Study, Try};
use crate::catalogue;
use crate::layout::{
    Extra, Id, Item, Linen, LinenKind, LinenState, MAX_ID, MAX_ITEMS, MAX_LINENS, Origin, Srgb,
    Stock, Turn,
};
use crate::words::{Arg, say};

/// What shows of paper or board round the dish, mm on each side. Our choice.
const SHOWS: i32 = 35;
/// Baking paper, unbleached side down. Our own estimate.
const PAPER: Srgb = Srgb::hex(0x00e9_e3d6);

/// A dish that can have something slipped under it: on the table and loose.
fn loose<'a>(study: &Study<'a>, id: Id) -> Option<&'a Item> {
    let stack = study.root(id);
    study.item(stack).filter(|i| !i.locked)
}

/// Width and depth that show all round a dish, in whole cm.
fn round_about(item: &Item) -> [i32; 2] {
    let whole = |mm: i32| (mm + 2 * SHOWS + 9) / 10 * 10;
    item.size.extent().map(whole)
}

/// The next free id, when there is one.
fn next_id(study: &Study<'_>) -> Option<Id> {
    let next = study.layout().head.next_id;
    (next <= MAX_ID).then_some(Id(next))
}

/// A sheet of pale paper under the dish.
pub(in super::super) fn paper_under(study: &Study<'_>, id: Id) -> Option<Try> {
    let item = loose(study, id)?;
    let paper = next_id(study).filter(|_| study.layout().linens.len() < MAX_LINENS)?;
    let mut after = study.layout().clone();
    after.head.next_id += 1;
    after.linens.push(Linen {
        id: paper,
        name: say("name-paper", &[]),
        kind: LinenKind::Mat,
        state: LinenState::Flat,
        at: item.at,
        size: round_about(item),
        turn: item.turn,
        colour: PAPER,
        origin: Origin::Guess,
        over: Vec::new(),
        locked: false,
        stock: Stock::default(),
        extra: Extra::new(),
    });
    let act = say(
        "act-slip-paper",
        &[("thing", Arg::Name(study.name(item.id)))],
    );
    Some(Try { act, after })
}

/// A napkin that is there already and large enough, laid flat under the dish.
pub(in super::super) fn napkin_under(study: &Study<'_>, id: Id) -> Option<Try> {
    let item = loose(study, id)?;
    let mut after = study.layout().clone();
    let [w, d] = item.size.extent();
    let napkin = after.linens.iter_mut().find(|l| {
        l.kind == LinenKind::Napkin
            && !l.locked
            && l.size[0] > w
            && l.size[1] > d
            && l.at != item.at
    })?;
    napkin.state = LinenState::Flat;
    napkin.at = item.at;
    napkin.turn = Turn::ZERO;
    let args = [
        ("thing", Arg::Name(study.name(item.id))),
        ("linen", Arg::Name(study.name(napkin.id))),
    ];
    let act = say("act-slip-linen", &args);
    Some(Try { act, after })
}

/// A wooden board under food that lies on the bare table.
pub(in super::super) fn board_under(study: &Study<'_>, id: Id) -> Option<Try> {
    let item = loose(study, id).filter(|i| i.parts.rim.is_none())?;
    let entry = catalogue::prop("wooden-board")?;
    let board = next_id(study).filter(|_| study.layout().items.len() < MAX_ITEMS)?;
    let mut after = study.layout().clone();
    let number = after.head.next_number;
    let mut under = catalogue::item_from(entry, board, number, item.at);
    let [w, d] = round_about(item);
    under.size = entry.size.resized(w, d);
    under.turn = item.turn;
    after.head.next_id += 1;
    after.head.next_number += 1;
    let place = after.items.iter().position(|i| i.id == item.id)?;
    after.items[place].on = Some(board);
    after.items.insert(place, under);
    let act = say(
        "act-slip-board",
        &[("thing", Arg::Name(study.name(item.id)))],
    );
    Some(Try { act, after })
}
