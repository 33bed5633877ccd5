//! Which sections a link has, and which fields each object in them.
//!
//! The order of the fields is the order of their bits: once version 1 is out,
//! new fields go into new sections.
use super::kinds::Kind::{
    self, Area, Choice, Colour, Flag, Identity, Ids, Pair, Part, Place, Prop, Serial, Signed, Size,
    States, Text, Turn, Whole,
};
use super::kinds::ORIGINS;
use crate::layout::{
    MAX_ACCEPTED, MAX_CARDS, MAX_CROPS, MAX_EXPOSURES, MAX_GROUPS, MAX_HANDS, MAX_ITEMS,
    MAX_LINENS, MAX_PEOPLE, MAX_SEASONS, MAX_SEATS, STEPS,
};

/// What a field holds when the link does not store it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Usual {
    /// It is always stored and has no bit.
    Always,
    /// It is not there.
    Absent,
    /// This number.
    Number(u16),
    /// These two numbers.
    Two(u16, u16),
    /// This text, word or colour.
    Words(&'static str),
    /// False.
    Off,
    /// One more than in the object before.
    Next,
    /// The id in `prop`, its hyphens as spaces.
    PropName,
}

/// One field of an object in a link.
#[derive(Clone, Copy, Debug)]
pub(super) struct Field {
    /// Its place in the object, with a point between levels.
    pub(super) key: &'static str,
    /// How it is written.
    pub(super) kind: Kind,
    /// What it holds when not stored.
    pub(super) usual: Usual,
    /// Whether an earlier object of the same `prop` says what is usual.
    pub(super) twin: bool,
}

/// The plan of one section of a link.
pub(super) struct Chapter {
    /// Its number.
    pub(super) number: u64,
    /// The key in the layout; empty for the layout itself.
    pub(super) key: &'static str,
    /// Most objects, for a list; none when it is one object.
    pub(super) most: Option<usize>,
    /// The fields of each object.
    pub(super) fields: &'static [Field],
}

const fn field(key: &'static str, kind: Kind, usual: Usual) -> Field {
    Field {
        key,
        kind,
        usual,
        twin: false,
    }
}

const fn twin(key: &'static str, kind: Kind, usual: Usual) -> Field {
    Field {
        key,
        kind,
        usual,
        twin: true,
    }
}

const FINISH: Kind = Choice(&["matt", "satin", "gloss", "clear", "liquid"]);
use Usual::{Absent, Always, Next, Number, Off, PropName, Two, Words};

#[rustfmt::skip]
const HEAD: &[Field] = &[
    field("id", Identity, Always),
    field("title", Text, Words("")),
    field("look", Choice(&["low-key", "normal", "high-key"]), Words("normal")),
    field("revision.number", Whole, Number(0)),
    field("revision.date", Text, Words("")),
    field("next_id", Whole, Number(1)),
    field("next_number", Whole, Number(1)),
    field("units", Choice(&["cm", "in"]), Words("cm")),
    field("based_on", Identity, Absent),
    field("client", Text, Absent),
    field("note", Text, Absent),
];

#[rustfmt::skip]
const TABLE: &[Field] = &[
    field("width", Whole, Always),
    field("depth", Whole, Always),
    field("surface.prop", Prop, Always),
    field("surface.colour", Colour, Always),
    field("shape", Choice(&["rect", "round"]), Words("rect")),
    field("corner", Whole, Number(0)),
    field("height", Whole, Number(750)),
    field("surface.name", Text, Words("")),
    field("surface.finish", FINISH, Words("matt")),
    field("surface.origin", Choice(&ORIGINS), Absent),
];

const FLOOR: &[Field] = &[field("colour", Colour, Words("#a79f92"))];

const FRAME: &[Field] = &[
    field("at", Place, Always),
    field("width", Whole, Always),
    field("ratio", Pair, Two(3, 2)),
    field("turn", Turn, Number(0)),
];

#[rustfmt::skip]
const CAMERA: &[Field] = &[
    field("format", Choice(&["full-frame", "aps-c", "aps-c-small", "four-thirds", "medium", "phone"]), Words("full-frame")),
    field("focal", Whole, Number(50)),
    field("aperture", Whole, Number(80)),
    field("focus_height", Whole, Absent),
    field("pixels", Pair, Absent),
    field("lenses", Ids, Absent),
];

#[rustfmt::skip]
const RIG: &[Field] = &[
    field("ceiling", Whole, Number(2_600)),
    field("kind", Choice(&["arm", "two-stands", "tripod", "ceiling"]), Words("arm")),
    field("at", Place, Absent),
    field("leg_bearing", Turn, Absent),
    field("foot_radius", Whole, Number(480)),
    field("mast_height", Whole, Number(3_000)),
    field("stand_mass", Whole, Number(6_000)),
    field("arm_length", Whole, Number(1_016)),
    field("arm_mass", Whole, Number(1_500)),
    field("load_mass", Whole, Number(2_000)),
    field("counterweight.mass", Whole, Absent),
    field("counterweight.behind", Whole, Absent),
    field("bag.mass", Whole, Absent),
    field("bag.hung", Choice(&["hub", "lead-leg", "rear-legs"]), Absent),
    field("photographer", Place, Absent),
];

#[rustfmt::skip]
const LIGHT: &[Field] = &[
    field("clock", Turn, Number(300)),
    field("distance", Whole, Number(1_800)),
    field("height_above_table", Whole, Number(1_200)),
    field("shape", Choice(&["disc", "window"]), Words("window")),
    field("width", Whole, Number(1_200)),
    field("height", Whole, Number(1_200)),
];

const GROUPS: &[Field] = &[field("id", Serial, Next), field("name", Text, Words(""))];

#[rustfmt::skip]
const LINENS: &[Field] = &[
    field("at", Place, Always),
    field("size", Pair, Always),
    field("name", Text, Words("")),
    field("kind", Choice(&["runner", "cloth", "mat", "napkin"]), Words("runner")),
    field("state", Choice(&["flat", "folded", "bunched", "thrown"]), Words("flat")),
    field("turn", Turn, Number(0)),
    field("colour", Colour, Words("#d8c8a5")),
    field("id", Serial, Next),
    field("locked", Flag, Absent),
    field("origin", Choice(&ORIGINS), Absent),
    field("over", Ids, Absent),
];

#[rustfmt::skip]
const ITEMS: &[Field] = &[
    field("prop", Prop, Always),
    field("at", Place, Always),
    field("turn", Turn, Number(0)),
    twin("name", Text, PropName),
    twin("size", Size, Absent),
    twin("height", Whole, Number(20)),
    twin("parts.rim", Part, Absent),
    twin("parts.well", Part, Absent),
    twin("parts.food", Part, Absent),
    twin("finish", FINISH, Words("matt")),
    twin("role", Choice(&["hero", "support", "accent", "filler"]), Words("filler")),
    twin("face", Choice(&["usual", "crust", "cut", "open", "closed"]), Words("usual")),
    field("on", Whole, Absent),
    field("id", Serial, Next),
    field("number", Serial, Next),
    field("group", Whole, Absent),
    field("locked", Flag, Absent),
    field("hold_minutes", Whole, Absent),
    field("stand_in", Text, Absent),
];

#[rustfmt::skip]
const PEOPLE: &[Field] = &[
    field("id", Serial, Next),
    field("skin", Colour, Words("#c08f6f")),
    field("sleeve.colour", Colour, Words("#909aa0")),
    field("sleeve.length", Choice(&["bare", "rolled", "long"]), Words("long")),
    field("seat", Whole, Absent),
    field("stature", Whole, Absent),
    field("handed", Choice(&["left", "right"]), Absent),
    field("ring", Choice(&["left", "right"]), Absent),
    field("nails", Colour, Absent),
    field("released", Flag, Absent),
];

#[rustfmt::skip]
const HANDS: &[Field] = &[
    field("person", Whole, Always),
    field("entry", Place, Always),
    field("target", Place, Always),
    field("exposure", Whole, Always),
    field("side", Choice(&["left", "right"]), Words("right")),
    field("action", Choice(&["tear", "squeeze", "pour", "sprinkle", "spoon", "hold", "reach", "rest", "cut", "pass", "place", "lift"]), Words("reach")),
    field("height", Whole, Number(100)),
    field("pair", Whole, Absent),
    field("holds", Whole, Absent),
    field("palm", Choice(&["down", "up"]), Words("down")),
    field("seat", Whole, Absent),
    field("id", Serial, Next),
];

#[rustfmt::skip]
const EXPOSURES: &[Field] = &[
    field("id", Serial, Next),
    field("kind", Choice(&["clean", "hands", "card", "empty", "steam", "no-glare", "insurance"]), Words("hands")),
    field("minutes", Whole, Absent),
    field("states", States, Absent),
];

#[rustfmt::skip]
const CROPS: &[Field] = &[
    field("at", Place, Always),
    field("width", Whole, Always),
    field("name", Text, Words("")),
    field("ratio", Pair, Absent),
    field("must", Flag, Off),
    field("must_show", Ids, Absent),
    field("print", Pair, Absent),
    field("bleed", Whole, Number(0)),
    field("safe", Whole, Number(0)),
    field("gutter", Whole, Number(0)),
    field("copy.area", Area, Absent),
    field("copy.wording", Text, Absent),
    field("id", Serial, Next),
];

const INTENDED: &[Field] = &[
    field("finding", Text, Always),
    field("figure", Signed, Number(0)),
];

#[rustfmt::skip]
const CARDS: &[Field] = &[
    field("at", Place, Always),
    field("turn", Turn, Number(0)),
    field("kind", Choice(&["white", "black"]), Words("white")),
    field("width", Whole, Number(700)),
    field("height", Whole, Number(500)),
    field("id", Serial, Next),
];

#[rustfmt::skip]
const SEATS: &[Field] = &[
    field("at", Place, Always),
    field("standing", Flag, Absent),
    field("setting", Whole, Absent),
    field("id", Serial, Next),
];

#[rustfmt::skip]
const DATES: &[Field] = &[
    field("on_sale", Text, Absent),
    field("medium", Choice(&["print", "web"]), Absent),
    field("hemisphere", Choice(&["north", "south"]), Absent),
];

#[rustfmt::skip]
const STOCK: &[Field] = &[
    field("of", Serial, Next),
    field("spare", Whole, Number(0)),
    field("source", Choice(&["own", "hire", "buy", "borrow", "client"]), Absent),
    field("shelf", Text, Absent),
];

#[rustfmt::skip]
const DATED: &[Field] = &[
    field("step", Choice(&STEPS), Absent),
    field("days", Whole, Absent),
    field("food", Prop, Absent),
    field("months", Pair, Absent),
];

const fn one(number: u64, key: &'static str, fields: &'static [Field]) -> Chapter {
    Chapter {
        number,
        key,
        most: None,
        fields,
    }
}

const fn list(number: u64, key: &'static str, most: usize, fields: &'static [Field]) -> Chapter {
    Chapter {
        number,
        key,
        most: Some(most),
        fields,
    }
}

/// What the lists say of items and linens, told of them by id: the objects
/// themselves were written before there were lists.
pub(super) const STOCK_KEY: &str = "stock";

/// What is told of the dates otherwise than usual: the section of dates was
/// written before there was a plan.
pub(super) const DATED_KEY: &str = "dated";

/// Every section, in the order of its number.
pub(super) static SECTIONS: [Chapter; 20] = [
    one(1, "", HEAD),
    one(2, "table", TABLE),
    one(3, "floor", FLOOR),
    one(4, "frame", FRAME),
    one(5, "camera", CAMERA),
    one(6, "rig", RIG),
    one(7, "light", LIGHT),
    list(8, "groups", MAX_GROUPS, GROUPS),
    list(9, "linens", MAX_LINENS, LINENS),
    list(10, "items", MAX_ITEMS, ITEMS),
    list(11, "people", MAX_PEOPLE, PEOPLE),
    list(12, "hands", MAX_HANDS, HANDS),
    list(13, "exposures", MAX_EXPOSURES, EXPOSURES),
    list(14, "crops", MAX_CROPS, CROPS),
    list(15, "intended", MAX_ACCEPTED, INTENDED),
    list(16, "cards", MAX_CARDS, CARDS),
    list(17, "seats", MAX_SEATS, SEATS),
    one(18, "dates", DATES),
    list(20, STOCK_KEY, MAX_ITEMS + MAX_LINENS, STOCK),
    list(21, DATED_KEY, STEPS.len() + MAX_SEASONS, DATED),
];
