//! Reading one object by itself, as a journal of edits keeps it: the same
//! rules and limits as within a file.
use serde_json::{Map, Value};

use super::camera::Camera;
use super::crop::Crop;
use super::dates::Dates;
use super::exposure::Exposure;
use super::head::{Accepted, Group, Head};
use super::item::Item;
use super::light::{Card, Light};
use super::limits::MAX_ACCEPTED;
use super::linen::Linen;
use super::people::{Hand, Person};
use super::problem::Problem;
use super::read::{Fields, Log, told};
use super::rig::Rig;
use super::seat::Seat;
use super::strict;
use super::table::{Floor, Frame, Table};

/// One object, or all problems found in it.
pub(crate) type Read<T> = Result<T, Vec<Problem>>;

/// JSON text as a value, doubled keys and depth refused.
pub(crate) fn parse_json(text: &str) -> Read<Value> {
    let mut problems = Vec::new();
    let value = strict::parse(text, &mut |p| problems.push(p)).map_err(|p| vec![p])?;
    if problems.is_empty() {
        Ok(value)
    } else {
        Err(told(problems, 0))
    }
}

fn alone<T>(value: Value, read: impl FnOnce(&mut Fields<'_>) -> T) -> Read<T> {
    let mut log = Log::default();
    let got = read(&mut Fields::new(&mut log, String::new(), value));
    if log.problems.is_empty() {
        Ok(got)
    } else {
        Err(log.told())
    }
}

/// Title, look, version.
pub(crate) fn read_head(value: Value) -> Read<Head> {
    alone(value, Head::read)
}
/// The table.
pub(crate) fn read_table(value: Value) -> Read<Table> {
    alone(value, Table::read)
}
/// The floor.
pub(crate) fn read_floor(value: Value) -> Read<Floor> {
    alone(value, Floor::read)
}
/// The frame.
pub(crate) fn read_frame(value: Value) -> Read<Frame> {
    alone(value, Frame::read)
}
/// The camera.
pub(crate) fn read_camera(value: Value) -> Read<Camera> {
    alone(value, Camera::read)
}
/// What holds the camera.
pub(crate) fn read_rig(value: Value) -> Read<Rig> {
    alone(value, Rig::read)
}
/// A card.
pub(crate) fn read_card(value: Value) -> Read<Card> {
    alone(value, Card::read)
}
/// The light.
pub(crate) fn read_light(value: Value) -> Read<Light> {
    alone(value, Light::read)
}
/// When it is wanted.
pub(crate) fn read_dates(value: Value) -> Read<Dates> {
    alone(value, Dates::read)
}
/// Every accepted finding.
pub(crate) fn read_intended(value: Value) -> Read<Vec<Accepted>> {
    let map: Map<String, Value> = [("intended".to_string(), value)].into_iter().collect();
    alone(Value::Object(map), |f| {
        f.list("intended", MAX_ACCEPTED, Accepted::read)
    })
}
/// A group.
pub(crate) fn read_group(value: Value) -> Read<Group> {
    alone(value, Group::read)
}
/// A linen.
pub(crate) fn read_linen(value: Value) -> Read<Linen> {
    alone(value, Linen::read)
}
/// An item.
pub(crate) fn read_item(value: Value) -> Read<Item> {
    alone(value, Item::read)
}
/// A place at the table.
pub(crate) fn read_seat(value: Value) -> Read<Seat> {
    alone(value, Seat::read)
}
/// A person.
pub(crate) fn read_person(value: Value) -> Read<Person> {
    alone(value, Person::read)
}
/// A hand.
pub(crate) fn read_hand(value: Value) -> Read<Hand> {
    alone(value, Hand::read)
}
/// An exposure.
pub(crate) fn read_exposure(value: Value) -> Read<Exposure> {
    alone(value, Exposure::read)
}
/// A crop.
pub(crate) fn read_crop(value: Value) -> Read<Crop> {
    alone(value, Crop::read)
}
