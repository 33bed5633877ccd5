//! The JSON Schema of a layout file, from the same limits and words as the
//! reader.
//!
//! It accepts whatever [`super::open`] accepts, hidden characters in words
//! aside, which the reader drops first. What a schema cannot say (references,
//! shares that make 100, doubled keys, a rim wider than its dish) only the
//! reader refuses.
use schemars::{JsonSchema, schema_for};
use serde_json::{Map, Value, json};

use super::camera::Format;
use super::dates::{Hemisphere, Medium, STEPS};
use super::head::{Look, Units};
use super::item::{Face, Finish, Origin, Role};
use super::light::{CardKind, LightShape};
use super::limits::{
    MAX_ACCEPTED, MAX_CARDS, MAX_CROPS, MAX_EXPOSURES, MAX_GROUPS, MAX_HANDS, MAX_HEIGHT, MAX_ID,
    MAX_ITEMS, MAX_LENSES, MAX_LINENS, MAX_MINUTES, MAX_NAME, MAX_NOTE, MAX_OUTLINE, MAX_PEOPLE,
    MAX_PIXELS, MAX_PLACE, MAX_REMARKS, MAX_SEASONS, MAX_SEATS, MAX_SIZE, MAX_SPARE, MAX_STEP_DAYS,
};
use super::linen::{LinenKind, LinenState};
use super::open::{FORMAT, VERSION};
use super::rig::{Hung, RigKind};
use super::schema_answers::{remark, revision};
use super::schema_people::{exposure, hand, person, seat};
use super::stock::Source;
use super::table::TableShape;

/// The schema of a layout file (JSON Schema, draft 2020-12).
#[must_use]
pub fn schema() -> Value {
    let mut schema = layout();
    schema["$schema"] = "https://json-schema.org/draft/2020-12/schema".into();
    schema["title"] = "Overspread layout".into();
    schema["description"] = "Lengths in mm, turns in degrees by halves, places from the \
        table's top-left corner with x right and y down. Unknown fields are kept."
        .into();
    schema
}

pub(super) fn whole(least: i32, most: i32) -> Value {
    json!({ "type": "integer", "minimum": least, "maximum": most })
}

pub(super) fn id() -> Value {
    whole(1, i32::from(MAX_ID))
}

pub(super) fn text(longest: usize) -> Value {
    json!({ "type": "string", "maxLength": longest })
}

fn pattern(pattern: &str) -> Value {
    json!({ "type": "string", "pattern": pattern })
}

pub(super) fn colour() -> Value {
    pattern("^#[0-9a-fA-F]{6}$")
}

fn identity() -> Value {
    pattern("^[0-9a-fA-F]{16}$")
}

pub(super) fn turn() -> Value {
    json!({ "type": "number", "multipleOf": 0.5, "minimum": -3600, "maximum": 3600 })
}

pub(super) fn flag() -> Value {
    json!({ "type": "boolean" })
}

/// The words of an enum, each with its remark.
pub(super) fn words<T: JsonSchema>() -> Value {
    let mut words = schema_for!(T).to_value();
    if let Some(words) = words.as_object_mut() {
        words.remove("$schema");
        words.remove("title");
    }
    words
}

fn tuple(length: usize, least: i32, most: i32) -> Value {
    json!({ "type": "array", "items": whole(least, most), "minItems": length, "maxItems": length })
}

pub(super) fn point() -> Value {
    tuple(2, -MAX_PLACE, MAX_PLACE)
}

pub(super) fn list(most: usize, of: Value) -> Value {
    json!({ "type": "array", "items": of, "maxItems": most })
}

/// An object; the first `required` of its fields must be there, and any other
/// may also be null.
pub(super) fn object<const N: usize>(required: usize, fields: [(&str, Value); N]) -> Value {
    let must: Vec<&str> = fields[..required].iter().map(|(key, _)| *key).collect();
    let mut properties = Map::new();
    for (n, (key, of)) in fields.into_iter().enumerate() {
        let of = if n < required {
            of
        } else {
            json!({ "anyOf": [of, { "type": "null" }] })
        };
        properties.insert(key.into(), of);
    }
    json!({ "type": "object", "properties": properties, "required": must })
}

fn layout() -> Value {
    object(
        5,
        [
            ("format", json!({ "const": FORMAT })),
            ("version", whole(0, VERSION as i32)),
            ("id", identity()),
            ("table", table()),
            ("frame", frame()),
            (
                "based_on",
                json!({ "anyOf": [identity(), { "const": "" }] }),
            ),
            ("title", text(MAX_NAME)),
            ("client", text(MAX_NAME)),
            ("note", text(MAX_NOTE)),
            ("units", words::<Units>()),
            ("look", words::<Look>()),
            ("revision", revision()),
            ("remarks", list(MAX_REMARKS, remark())),
            ("next_id", whole(1, 60_001)),
            ("next_number", whole(1, 60_001)),
            ("floor", object(0, [("colour", colour())])),
            ("camera", camera()),
            ("rig", rig()),
            ("light", light()),
            ("cards", list(MAX_CARDS, card())),
            ("groups", list(MAX_GROUPS, group())),
            ("linens", list(MAX_LINENS, linen())),
            ("items", list(MAX_ITEMS, item())),
            ("seats", list(MAX_SEATS, seat())),
            ("people", list(MAX_PEOPLE, person())),
            ("hands", list(MAX_HANDS, hand())),
            ("exposures", list(MAX_EXPOSURES, exposure())),
            ("crops", list(MAX_CROPS, crop())),
            ("dates", dates()),
            ("intended", list(MAX_ACCEPTED, accepted())),
        ],
    )
}

fn table() -> Value {
    let surface = object(
        1,
        [
            ("colour", colour()),
            ("name", text(MAX_NAME)),
            ("prop", text(MAX_NAME)),
            ("finish", words::<Finish>()),
            ("origin", words::<Origin>()),
        ],
    );
    object(
        1,
        [
            ("width", whole(100, MAX_SIZE)),
            ("depth", whole(100, MAX_SIZE)),
            ("shape", words::<TableShape>()),
            ("corner", whole(0, MAX_SIZE)),
            ("height", whole(0, MAX_HEIGHT)),
            ("surface", surface),
        ],
    )
}

fn frame() -> Value {
    object(
        2,
        [
            ("at", point()),
            ("width", whole(50, MAX_SIZE)),
            ("ratio", tuple(2, 1, 10_000)),
            ("turn", turn()),
        ],
    )
}

fn camera() -> Value {
    object(
        0,
        [
            ("format", words::<Format>()),
            ("focal", whole(4, 600)),
            ("aperture", whole(7, 640)),
            ("focus_height", whole(0, MAX_HEIGHT)),
            ("pixels", tuple(2, 1, MAX_PIXELS)),
            ("lenses", list(MAX_LENSES, whole(4, 600))),
        ],
    )
}

fn rig() -> Value {
    let mass = || whole(0, 100_000);
    let counterweight = object(0, [("mass", mass()), ("behind", whole(0, MAX_SIZE))]);
    let bag = object(0, [("mass", mass()), ("hung", words::<Hung>())]);
    object(
        0,
        [
            ("ceiling", whole(1_000, MAX_PLACE)),
            ("kind", words::<RigKind>()),
            ("at", point()),
            ("leg_bearing", turn()),
            ("foot_radius", whole(50, MAX_SIZE)),
            ("mast_height", whole(100, MAX_PLACE)),
            ("stand_mass", mass()),
            ("arm_length", whole(0, MAX_SIZE)),
            ("arm_mass", mass()),
            ("load_mass", mass()),
            ("counterweight", counterweight),
            ("bag", bag),
            ("photographer", point()),
        ],
    )
}

fn card() -> Value {
    object(
        2,
        [
            ("id", id()),
            ("at", point()),
            ("kind", words::<CardKind>()),
            ("turn", turn()),
            ("width", whole(10, MAX_SIZE)),
            ("height", whole(10, MAX_SIZE)),
        ],
    )
}

fn light() -> Value {
    object(
        0,
        [
            ("clock", turn()),
            ("distance", whole(0, MAX_PLACE)),
            ("height_above_table", whole(50, MAX_PLACE)),
            ("shape", words::<LightShape>()),
            ("width", whole(10, MAX_SIZE)),
            ("height", whole(10, MAX_SIZE)),
        ],
    )
}

fn group() -> Value {
    object(1, [("id", id()), ("name", text(MAX_NAME))])
}

fn linen() -> Value {
    object(
        2,
        [
            ("id", id()),
            ("at", point()),
            ("name", text(MAX_NAME)),
            ("kind", words::<LinenKind>()),
            ("state", words::<LinenState>()),
            ("size", tuple(2, 1, MAX_SIZE)),
            ("turn", turn()),
            ("colour", colour()),
            ("origin", words::<Origin>()),
            ("over", list(MAX_ITEMS, id())),
            ("locked", flag()),
            ("spare", whole(0, MAX_SPARE)),
            ("source", words::<Source>()),
            ("shelf", text(MAX_NAME)),
        ],
    )
}

fn item() -> Value {
    object(
        3,
        [
            ("id", id()),
            ("at", point()),
            ("size", size()),
            ("number", whole(0, 60_000)),
            ("name", text(MAX_NAME)),
            ("prop", text(MAX_NAME)),
            ("turn", turn()),
            ("height", whole(0, MAX_HEIGHT)),
            ("parts", parts()),
            ("finish", words::<Finish>()),
            ("face", words::<Face>()),
            ("role", words::<Role>()),
            ("on", id()),
            ("group", id()),
            ("locked", flag()),
            ("hold_minutes", whole(1, MAX_MINUTES)),
            ("stand_in", text(MAX_NAME)),
            ("spare", whole(0, MAX_SPARE)),
            ("source", words::<Source>()),
            ("shelf", text(MAX_NAME)),
        ],
    )
}

pub(super) fn parts() -> Value {
    object(0, [("rim", part()), ("well", part()), ("food", part())])
}

fn part() -> Value {
    let tone = object(
        1,
        [
            ("srgb", colour()),
            ("share", whole(1, 100)),
            ("origin", words::<Origin>()),
        ],
    );
    let mut tones = list(3, tone);
    tones["minItems"] = 1.into();
    object(1, [("colours", tones)])
}

/// One of the four shapes, each with its own measures.
fn size() -> Value {
    let shape = |word: &str| ("shape", json!({ "const": word }));
    let side = whole(1, MAX_SIZE);
    let half = whole(0, MAX_SIZE / 2);
    let mut points = list(MAX_OUTLINE, point());
    points["minItems"] = 3.into();
    let sides = || [("width", side.clone()), ("depth", side.clone())];
    let [width, depth] = sides();
    let rim = ("rim", half.clone());
    let disc = [shape("disc"), ("diameter", side.clone()), rim.clone()];
    let oval = [shape("oval"), width, depth, rim.clone()];
    let [width, depth] = sides();
    let rect = [shape("rect"), width, depth, ("corner", half), rim];
    let outline = [shape("outline"), ("points", points)];
    json!({ "oneOf": [object(2, disc), object(3, rect), object(3, oval), object(2, outline)] })
}

fn crop() -> Value {
    let copy = object(
        1,
        [
            ("area", tuple(4, -MAX_PLACE, MAX_PLACE)),
            ("wording", text(MAX_NAME * 2)),
        ],
    );
    object(
        3,
        [
            ("id", id()),
            ("at", point()),
            ("width", whole(20, MAX_SIZE)),
            ("name", text(MAX_NAME)),
            ("ratio", tuple(2, 1, 10_000)),
            ("print", tuple(2, 1, 5_000)),
            ("bleed", whole(0, 100)),
            ("safe", whole(0, 200)),
            ("gutter", whole(0, 200)),
            ("copy", copy),
            ("must", flag()),
            ("must_show", list(MAX_ITEMS, id())),
        ],
    )
}

fn dates() -> Value {
    let days = || whole(0, MAX_STEP_DAYS);
    let food = json!({ "type": "string", "minLength": 1, "maxLength": MAX_NAME });
    let season = object(2, [("food", food), ("months", tuple(2, 1, 12))]);
    let day = pattern("^2[01][0-9]{2}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$");
    object(
        0,
        [
            ("on_sale", json!({ "anyOf": [day, { "const": "" }] })),
            ("medium", words::<Medium>()),
            ("hemisphere", words::<Hemisphere>()),
            ("steps", object(0, STEPS.map(|step| (step, days())))),
            ("seasons", list(MAX_SEASONS, season)),
        ],
    )
}

fn accepted() -> Value {
    object(
        0,
        [
            ("finding", text(MAX_NAME)),
            ("figure", whole(-1_000_000, 1_000_000)),
        ],
    )
}
