//! The schema of people, their seats and hands, and the exposures.
use serde_json::Value;

use super::exposure::{As, ExposureKind};
use super::limits::{MAX_HEIGHT, MAX_ITEMS, MAX_MINUTES, MAX_STATURE, MIN_STATURE};
use super::people::{Action, Palm, Side, SleeveLength};
use super::schema::{colour, flag, id, list, object, parts, point, turn, whole, words};

pub(super) fn seat() -> Value {
    object(
        2,
        [
            ("id", id()),
            ("at", point()),
            ("standing", flag()),
            ("setting", id()),
        ],
    )
}

pub(super) fn person() -> Value {
    let sleeve = object(
        0,
        [("colour", colour()), ("length", words::<SleeveLength>())],
    );
    object(
        1,
        [
            ("id", id()),
            ("skin", colour()),
            ("sleeve", sleeve),
            ("seat", id()),
            ("stature", whole(MIN_STATURE, MAX_STATURE)),
            ("handed", words::<Side>()),
            ("ring", words::<Side>()),
            ("nails", colour()),
            ("released", flag()),
        ],
    )
}

pub(super) fn hand() -> Value {
    object(
        5,
        [
            ("id", id()),
            ("person", id()),
            ("exposure", id()),
            ("entry", point()),
            ("target", point()),
            ("seat", id()),
            ("side", words::<Side>()),
            ("pair", id()),
            ("action", words::<Action>()),
            ("height", whole(0, MAX_HEIGHT)),
            ("palm", words::<Palm>()),
            ("holds", id()),
        ],
    )
}

pub(super) fn exposure() -> Value {
    let state = object(
        1,
        [
            ("item", id()),
            ("state", words::<As>()),
            ("at", point()),
            ("turn", turn()),
            ("parts", parts()),
        ],
    );
    object(
        1,
        [
            ("id", id()),
            ("kind", words::<ExposureKind>()),
            ("minutes", whole(1, MAX_MINUTES)),
            ("states", list(MAX_ITEMS, state)),
        ],
    )
}
