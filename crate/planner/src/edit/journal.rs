//! Edits as text, for the journal on the phone and for another instance.
use serde_json::{Map, Value};

use super::change::{Change, Edit};
use super::object::{Object, Placed};
use crate::layout::{Id, MAX_ID, Problem, ProblemKind, Read, line, parse_json, to_line};

impl Edit {
    /// One line of JSON: a list of `{kind, id, before, after}`, each side
    /// `{place, value}` or null.
    #[must_use]
    pub fn to_json(&self) -> String {
        to_line(self)
    }

    /// Reads what [`Edit::to_json`] wrote, under the rules and limits of a
    /// layout file.
    ///
    /// # Errors
    /// All problems found in the first bad change.
    pub fn open(text: &str) -> Result<Self, Vec<Problem>> {
        Self::read(parse_json(text)?)
    }

    pub(super) fn read(value: Value) -> Read<Self> {
        let Value::Array(list) = value else {
            return Err(bad("", &value, "a list of changes"));
        };
        list.into_iter()
            .map(change)
            .collect::<Read<Vec<Change>>>()
            .map(Self)
    }
}

pub(super) fn bad(path: &str, found: &Value, allowed: &str) -> Vec<Problem> {
    vec![Problem::new(
        ProblemKind::Value,
        path,
        &line(found),
        allowed,
    )]
}

pub(super) fn object(value: Value, path: &str) -> Read<Map<String, Value>> {
    match value {
        Value::Object(map) => Ok(map),
        other => Err(bad(path, &other, "an object")),
    }
}

fn change(value: Value) -> Read<Change> {
    let mut map = object(value, "")?;
    let mut take = |key: &str| map.remove(key).unwrap_or(Value::Null);
    let (kind, id) = (take("kind"), take("id"));
    let Value::String(kind) = kind else {
        return Err(bad("kind", &kind, "an object's kind"));
    };
    let before = side(&kind, take("before"), "before")?;
    let after = side(&kind, take("after"), "after")?;
    let keys = [before.as_ref(), after.as_ref()].map(|s| s.map(|p| p.object.key()));
    let key = match keys {
        [Some(a), Some(b)] if a == b => a,
        [Some(a), None] | [None, Some(a)] if a.id().is_some() => a,
        _ => return Err(bad("after", &Value::Null, "the same object on both sides")),
    };
    if number(&id) != key.id() {
        return Err(bad("id", &id, "the object's own id"));
    }
    Ok(Change { key, before, after })
}

fn number(id: &Value) -> Option<Id> {
    let n = id
        .as_u64()
        .filter(|n| (1..=u64::from(MAX_ID)).contains(n))?;
    u16::try_from(n).ok().map(Id)
}

fn side(kind: &str, value: Value, path: &str) -> Read<Option<Placed>> {
    if value.is_null() {
        return Ok(None);
    }
    let mut map = object(value, path)?;
    let place = map.remove("place").unwrap_or(Value::Null);
    let Some(place) = place.as_u64().filter(|n| *n <= u64::from(MAX_ID)) else {
        return Err(bad("place", &place, "a place in its array"));
    };
    let object = Object::read(kind, map.remove("value").unwrap_or(Value::Null))?;
    let single = object.key().id().is_none();
    if single && place != 0 {
        return Err(bad("place", &place.into(), "0: there is one of it"));
    }
    Ok(Some(Placed {
        place: place as usize,
        object,
    }))
}
