//! Everything in a layout that an edit can change, and where it stands.
use serde::Serialize;
use serde_json::Value;

use crate::layout::{
    Accepted, Camera, Card, Crop, Dates, Exposure, Floor, Frame, Group, Hand, Head, Id, Item,
    Layout, Light, Linen, Person, Problem, ProblemKind, Read, Rig, Seat, Table, read_camera,
    read_card, read_crop, read_dates, read_exposure, read_floor, read_frame, read_group, read_hand,
    read_head, read_intended, read_item, read_light, read_linen, read_person, read_rig, read_seat,
    read_table,
};

/// Which object of a layout is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Key {
    /// Title, look, version.
    Head,
    /// The table.
    Table,
    /// The floor.
    Floor,
    /// The frame.
    Frame,
    /// The camera.
    Camera,
    /// What holds the camera.
    Rig,
    /// The light.
    Light,
    /// When it is wanted.
    Dates,
    /// All accepted findings.
    Intended,
    /// A group.
    Group(Id),
    /// A linen.
    Linen(Id),
    /// An item.
    Item(Id),
    /// A place at the table.
    Seat(Id),
    /// A person.
    Person(Id),
    /// A hand.
    Hand(Id),
    /// An exposure.
    Exposure(Id),
    /// A crop.
    Crop(Id),
    /// A card.
    Card(Id),
}

impl Key {
    /// The word for the sort of object in a journal entry.
    #[must_use]
    pub const fn kind(self) -> &'static str {
        match self {
            Self::Head => "head",
            Self::Table => "table",
            Self::Floor => "floor",
            Self::Frame => "frame",
            Self::Camera => "camera",
            Self::Rig => "rig",
            Self::Light => "light",
            Self::Dates => "dates",
            Self::Intended => "intended",
            Self::Group(_) => "group",
            Self::Linen(_) => "linen",
            Self::Item(_) => "item",
            Self::Seat(_) => "seat",
            Self::Person(_) => "person",
            Self::Hand(_) => "hand",
            Self::Exposure(_) => "exposure",
            Self::Crop(_) => "crop",
            Self::Card(_) => "card",
        }
    }

    /// The object's id; nothing for what there is one of.
    #[must_use]
    pub const fn id(self) -> Option<Id> {
        match self {
            Self::Group(id)
            | Self::Linen(id)
            | Self::Item(id)
            | Self::Seat(id)
            | Self::Person(id)
            | Self::Hand(id)
            | Self::Exposure(id)
            | Self::Crop(id)
            | Self::Card(id) => Some(id),
            _ => None,
        }
    }
}

/// One object of a layout, whole.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Object {
    /// Title, look, version.
    Head(Head),
    /// The table.
    Table(Table),
    /// The floor.
    Floor(Floor),
    /// The frame.
    Frame(Frame),
    /// The camera.
    Camera(Camera),
    /// What holds the camera.
    Rig(Rig),
    /// The light.
    Light(Light),
    /// When it is wanted.
    Dates(Dates),
    /// All accepted findings.
    Intended(Vec<Accepted>),
    /// A group.
    Group(Group),
    /// A linen.
    Linen(Linen),
    /// An item.
    Item(Item),
    /// A place at the table.
    Seat(Seat),
    /// A person.
    Person(Person),
    /// A hand.
    Hand(Hand),
    /// An exposure.
    Exposure(Exposure),
    /// A crop.
    Crop(Crop),
    /// A card.
    Card(Card),
}

impl Object {
    /// Which object it is.
    #[must_use]
    pub const fn key(&self) -> Key {
        match self {
            Self::Head(_) => Key::Head,
            Self::Table(_) => Key::Table,
            Self::Floor(_) => Key::Floor,
            Self::Frame(_) => Key::Frame,
            Self::Camera(_) => Key::Camera,
            Self::Rig(_) => Key::Rig,
            Self::Light(_) => Key::Light,
            Self::Dates(_) => Key::Dates,
            Self::Intended(_) => Key::Intended,
            Self::Group(o) => Key::Group(o.id),
            Self::Linen(o) => Key::Linen(o.id),
            Self::Item(o) => Key::Item(o.id),
            Self::Seat(o) => Key::Seat(o.id),
            Self::Person(o) => Key::Person(o.id),
            Self::Hand(o) => Key::Hand(o.id),
            Self::Exposure(o) => Key::Exposure(o.id),
            Self::Crop(o) => Key::Crop(o.id),
            Self::Card(o) => Key::Card(o.id),
        }
    }

    /// Reads an object of this kind under the rules and limits of a file.
    pub(super) fn read(kind: &str, value: Value) -> Read<Self> {
        match kind {
            "head" => read_head(value).map(Self::Head),
            "table" => read_table(value).map(Self::Table),
            "floor" => read_floor(value).map(Self::Floor),
            "frame" => read_frame(value).map(Self::Frame),
            "camera" => read_camera(value).map(Self::Camera),
            "rig" => read_rig(value).map(Self::Rig),
            "light" => read_light(value).map(Self::Light),
            "dates" => read_dates(value).map(Self::Dates),
            "intended" => read_intended(value).map(Self::Intended),
            "group" => read_group(value).map(Self::Group),
            "linen" => read_linen(value).map(Self::Linen),
            "item" => read_item(value).map(Self::Item),
            "seat" => read_seat(value).map(Self::Seat),
            "person" => read_person(value).map(Self::Person),
            "hand" => read_hand(value).map(Self::Hand),
            "exposure" => read_exposure(value).map(Self::Exposure),
            "crop" => read_crop(value).map(Self::Crop),
            "card" => read_card(value).map(Self::Card),
            _ => Err(vec![Problem::new(
                ProblemKind::Value,
                "kind",
                kind,
                "an object's kind",
            )]),
        }
    }
}

/// An object and its place in its array; 0 for what there is one of.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Placed {
    /// Its place in its array.
    pub place: usize,
    /// The object.
    #[serde(rename = "value")]
    pub object: Object,
}

impl Placed {
    /// The object of this key as it stands in a layout.
    #[must_use]
    pub fn find(layout: &Layout, key: Key) -> Option<Self> {
        let one = |object| Some(Self { place: 0, object });
        match key {
            Key::Head => one(Object::Head(layout.head.clone())),
            Key::Table => one(Object::Table(layout.table.clone())),
            Key::Floor => one(Object::Floor(layout.floor.clone())),
            Key::Frame => one(Object::Frame(layout.frame.clone())),
            Key::Camera => one(Object::Camera(layout.camera.clone())),
            Key::Rig => one(Object::Rig(layout.rig.clone())),
            Key::Light => one(Object::Light(layout.light.clone())),
            Key::Dates => one(Object::Dates(layout.dates.clone())),
            Key::Intended => one(Object::Intended(layout.intended.clone())),
            Key::Group(id) => among(&layout.groups, |o| o.id == id, Object::Group),
            Key::Linen(id) => among(&layout.linens, |o| o.id == id, Object::Linen),
            Key::Item(id) => among(&layout.items, |o| o.id == id, Object::Item),
            Key::Seat(id) => among(&layout.seats, |o| o.id == id, Object::Seat),
            Key::Person(id) => among(&layout.people, |o| o.id == id, Object::Person),
            Key::Hand(id) => among(&layout.hands, |o| o.id == id, Object::Hand),
            Key::Exposure(id) => among(&layout.exposures, |o| o.id == id, Object::Exposure),
            Key::Crop(id) => among(&layout.crops, |o| o.id == id, Object::Crop),
            Key::Card(id) => among(&layout.cards, |o| o.id == id, Object::Card),
        }
    }
}

fn among<T: Clone>(
    list: &[T],
    is: impl Fn(&T) -> bool,
    wrap: impl Fn(T) -> Object,
) -> Option<Placed> {
    let place = list.iter().position(is)?;
    Some(Placed {
        place,
        object: wrap(list[place].clone()),
    })
}
