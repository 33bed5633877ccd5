//! The JSON Schema of answers and remarks.
use serde_json::Value;

use super::limits::{MAX_NAME, MAX_REMARK, MAX_TAG};
use super::remark::Verdict;
use super::schema::{flag, id, object, point, text, whole, words};

/// Which version it is, and what was answered to it.
pub(super) fn revision() -> Value {
    let answer = object(
        1,
        [
            ("verdict", words::<Verdict>()),
            ("version", whole(0, 60_000)),
            ("date", text(MAX_NAME)),
            ("given", text(MAX_NAME)),
            ("choice", text(MAX_NAME)),
            ("by", text(MAX_NAME)),
        ],
    );
    object(
        0,
        [
            ("number", whole(0, 60_000)),
            ("date", text(MAX_NAME)),
            ("answer", answer),
        ],
    )
}

/// A remark.
pub(super) fn remark() -> Value {
    object(
        0,
        [
            ("version", whole(0, 60_000)),
            ("thing", id()),
            ("tag", text(MAX_TAG)),
            ("at", point()),
            ("text", text(MAX_REMARK)),
            ("done", flag()),
        ],
    )
}
