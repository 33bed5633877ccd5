//! A layout to its link.
use std::collections::BTreeMap;

use serde_json::{Map, Value};

use super::bytes::put_varint;
use super::dated;
use super::envelope::wrap;
use super::fields::{Chapter, DATED_KEY, Field, SECTIONS, STOCK_KEY, Usual};
use super::kinds::{Kind, Trail};
use super::states::has_unknown;
use super::stock;
use crate::layout::Layout;

/// A link and what it leaves out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Linked {
    /// What stands after the `#` of an address.
    pub fragment: String,
    /// Paths of what the link does not carry, such as `items[3].later`; for an
    /// unknown field of an inner object, the inner object's.
    pub losses: Vec<String>,
}

/// A section this planner does not know, kept as it came.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Section {
    /// Its number.
    pub number: u64,
    /// What it holds.
    pub bytes: Vec<u8>,
}

/// Writes a layout as a link.
///
/// Everything a file holds comes back, save unknown fields, which are listed
/// as losses.
#[must_use]
pub fn link(layout: &Layout) -> Linked {
    link_keeping(layout, &[])
}

/// Writes a layout as a link together with sections kept from the link it
/// came from. Sections with a number this planner writes itself are left out.
#[must_use]
pub(super) fn link_keeping(layout: &Layout, kept: &[Section]) -> Linked {
    let (mut sections, losses) = sections_of(layout);
    let last = sections_known();
    for section in kept.iter().filter(|s| s.number > last) {
        sections.insert(section.number, section.bytes.clone());
    }
    Linked {
        fragment: wrap(&joined(&sections)),
        losses,
    }
}

/// The number of the last section known here.
fn sections_known() -> u64 {
    SECTIONS.last().map_or(0, |chapter| chapter.number)
}

/// Sections by number, one after the other.
pub(super) fn joined(sections: &BTreeMap<u64, Vec<u8>>) -> Vec<u8> {
    let mut out = Vec::new();
    for (number, bytes) in sections {
        put_varint(&mut out, *number);
        put_varint(&mut out, bytes.len() as u64);
        out.extend(bytes);
    }
    out
}

/// The sections of a layout by number, and what is left out.
pub(super) fn sections_of(layout: &Layout) -> (BTreeMap<u64, Vec<u8>>, Vec<String>) {
    let mut root = match serde_json::to_value(layout) {
        Ok(Value::Object(root)) => root,
        _ => Map::new(),
    };
    root.remove("format");
    root.remove("version");
    // A file has neither: what another planner may have called so is not ours.
    let ours = [STOCK_KEY, DATED_KEY].into_iter();
    let taken = ours.filter(|key| root.remove(*key).is_some());
    let mut losses: Vec<String> = taken.map(str::to_owned).collect();
    stock::take_out(&mut root);
    dated::take_out(&mut root);
    let mut sections = BTreeMap::new();
    let mut parts = Vec::new();
    for chapter in &SECTIONS {
        let mut trail = Trail {
            parts,
            ..Trail::default()
        };
        let bytes = chapter_bytes(chapter, &mut root, &mut trail, &mut losses);
        parts = trail.parts;
        if !bytes.is_empty() {
            sections.insert(chapter.number, bytes);
        }
    }
    losses.extend(root.into_iter().map(|(key, _)| key));
    (sections, losses)
}

/// One section, empty when all in it is as usual; takes what it writes.
fn chapter_bytes(
    chapter: &Chapter,
    root: &mut Map<String, Value>,
    trail: &mut Trail,
    losses: &mut Vec<String>,
) -> Vec<u8> {
    let mut out = Vec::new();
    if chapter.key.is_empty() {
        put_object(chapter.fields, root, None, None, trail, &mut out);
        return out;
    }
    match root.remove(chapter.key) {
        Some(Value::Array(list)) => {
            let mut done: Vec<Map<String, Value>> = Vec::new();
            for (n, object) in list.into_iter().enumerate() {
                let Value::Object(whole) = object else {
                    continue;
                };
                let mut rest = whole.clone();
                let twin = twin_of(&whole, &done);
                let (fields, before) = (chapter.fields, done.last());
                put_object(fields, &mut rest, before, twin, trail, &mut out);
                leftovers(&rest, &format!("{}[{n}]", chapter.key), losses);
                done.push(whole);
            }
        }
        Some(Value::Object(mut object)) => {
            put_object(chapter.fields, &mut object, None, None, trail, &mut out);
            leftovers(&object, chapter.key, losses);
            if out == [0] {
                out.clear();
            }
        }
        _ => {}
    }
    out
}

/// The latest of the objects done that has the same `prop`.
pub(super) fn twin_of<'a>(
    object: &Map<String, Value>,
    done: &'a [Map<String, Value>],
) -> Option<&'a Map<String, Value>> {
    let prop = object.get("prop")?;
    done.iter().rev().find(|old| old.get("prop") == Some(prop))
}

/// Writes one object and takes what it wrote out of it.
fn put_object(
    fields: &[Field],
    object: &mut Map<String, Value>,
    before: Option<&Map<String, Value>>,
    twin: Option<&Map<String, Value>>,
    trail: &mut Trail,
    out: &mut Vec<u8>,
) {
    let mut mask = 0;
    let mut bit = 1;
    let mut body = Vec::new();
    let usual = usual_values(fields, object, before, twin);
    for (field, usual) in fields.iter().zip(usual) {
        let value = take(object, field.key);
        let always = field.usual == Usual::Always;
        if always || value != usual {
            trail.before = number_in(before, field.key);
            // A part that a twin has and this object has not is stored as none.
            let stored = value.or((field.kind == Kind::Part).then_some(Value::Null));
            let put = stored.as_ref();
            let put = put.and_then(|v| field.kind.put(v, trail, &mut body));
            if !always && put.is_some() {
                mask |= bit;
            }
            let unknown = stored.filter(|v| field.kind == Kind::States && has_unknown(v));
            if let Some(left) = unknown {
                object.insert(field.key.into(), left);
            }
        }
        if !always {
            bit <<= 1;
        }
    }
    put_varint(out, mask);
    out.extend(body);
}

fn usual_values(
    fields: &[Field],
    object: &Map<String, Value>,
    before: Option<&Map<String, Value>>,
    twin: Option<&Map<String, Value>>,
) -> Vec<Option<Value>> {
    let usual = |f: &Field| usual_value(f, object, before, twin);
    fields.iter().map(usual).collect()
}

/// What a field of `object` holds when it is not stored.
pub(super) fn usual_value(
    field: &Field,
    object: &Map<String, Value>,
    before: Option<&Map<String, Value>>,
    twin: Option<&Map<String, Value>>,
) -> Option<Value> {
    if let (true, Some(twin)) = (field.twin, twin) {
        return find(twin, field.key).cloned();
    }
    match field.usual {
        Usual::Always | Usual::Absent => None,
        Usual::Number(n) => Some(n.into()),
        Usual::Two(a, b) => Some(serde_json::json!([a, b])),
        Usual::Words(text) => Some(text.into()),
        Usual::Off => Some(false.into()),
        Usual::Next => Some((number_in(before, field.key) + 1).into()),
        Usual::PropName => {
            let prop = object.get("prop").and_then(Value::as_str);
            Some(prop.unwrap_or_default().replace('-', " ").into())
        }
    }
}

/// The whole number at `key`; 0 when there is none.
pub(super) fn number_in(object: Option<&Map<String, Value>>, key: &str) -> i64 {
    object
        .and_then(|o| find(o, key)?.as_i64())
        .unwrap_or_default()
}

fn find<'a>(object: &'a Map<String, Value>, key: &str) -> Option<&'a Value> {
    match key.split_once('.') {
        None => object.get(key),
        Some((outer, inner)) => object.get(outer)?.get(inner),
    }
}

fn take(object: &mut Map<String, Value>, key: &str) -> Option<Value> {
    let Some((outer, inner)) = key.split_once('.') else {
        return object.remove(key);
    };
    let within = object.get_mut(outer)?.as_object_mut()?;
    let value = within.remove(inner);
    if within.is_empty() {
        object.remove(outer);
    }
    value
}

/// What no field took: the unknown fields.
fn leftovers(rest: &Map<String, Value>, path: &str, losses: &mut Vec<String>) {
    losses.extend(rest.keys().map(|key| format!("{path}.{key}")));
}
