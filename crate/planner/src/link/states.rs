//! How the states of things in an exposure are written.
//!
//! A count; then for each the number of its item, less one more than that of
//! the one before; a byte whose two low bits are the place of its word and
//! whose higher bits tell whether a place, a turn and a rim, a well and a
//! food follow; and those.
use serde_json::{Map, Value, json};

use super::bytes::{Bad, Bytes, put_signed, put_varint};
use super::kinds::{Kind, Trail, count, place_of, word};
use crate::layout::MAX_ITEMS;

const WORDS: [&str; 4] = ["as-set", "absent", "moved", "changed"];
/// What may follow, each with the bit that tells of it.
const AT: u8 = 4;
const TURN: u8 = 8;
const PARTS: [(&str, u8); 3] = [("rim", 16), ("well", 32), ("food", 64)];
/// There are parts, though none of the three has colours.
const BARE: u8 = 128;

pub(super) fn put_states(states: &Value, trail: &mut Trail, out: &mut Vec<u8>) -> Option<()> {
    let states = states.as_array()?;
    put_varint(out, states.len() as u64);
    let mut before = 0;
    for state in states {
        let item = state.get("item")?.as_i64()?;
        put_signed(out, item - before - 1);
        before = item;
        let mut head = place_of(&WORDS, state.get("state")?)? as u8;
        let (at, turn) = (state.get("at"), state.get("turn"));
        let parts = state.get("parts");
        let part = |name: &str| parts.and_then(|p| p.get(name)).filter(|p| !p.is_null());
        let told = PARTS.iter().filter(|(name, _)| part(name).is_some());
        let told: u8 = told.map(|(_, bit)| bit).sum();
        head |= if at.is_some() { AT } else { 0 } | if turn.is_some() { TURN } else { 0 };
        head |= if parts.is_some() && told == 0 {
            BARE
        } else {
            told
        };
        out.push(head);
        for (kind, value) in [(Kind::Place, at), (Kind::Turn, turn)] {
            if let Some(value) = value {
                kind.put(value, trail, out)?;
            }
        }
        for (name, _) in PARTS {
            if let Some(part) = part(name) {
                Kind::Part.put(part, trail, out)?;
            }
        }
    }
    Some(())
}

/// Whether a state has a field that is not written.
pub(super) fn has_unknown(states: &Value) -> bool {
    let known = ["item", "state", "at", "turn", "parts"];
    let each = states.as_array().into_iter().flatten();
    let mut keys = each.filter_map(Value::as_object).flat_map(Map::keys);
    keys.any(|key| !known.contains(&key.as_str()))
}

pub(super) fn get_states(from: &mut Bytes<'_>, trail: &mut Trail) -> Result<Value, Bad> {
    let mut states = Vec::new();
    let mut before = 0;
    for _ in 0..count(from, MAX_ITEMS)? {
        before += from.signed()? + 1;
        let head = from.byte()?;
        let named = PARTS.iter().fold(0, |all, (_, bit)| all | bit);
        if head & BARE != 0 && head & named != 0 {
            return Err(Bad::Unknown);
        }
        let mut state = json!({ "item": before, "state": word(&WORDS, u64::from(head & 3))? });
        if head & AT != 0 {
            state["at"] = Kind::Place.get(from, trail)?;
        }
        if head & TURN != 0 {
            state["turn"] = Kind::Turn.get(from, trail)?;
        }
        if head & (named | BARE) != 0 {
            let mut parts = Map::new();
            for (name, bit) in PARTS {
                if head & bit != 0 {
                    parts.insert(name.into(), Kind::Part.get(from, trail)?);
                }
            }
            state["parts"] = parts.into();
        }
        states.push(state);
    }
    Ok(states.into())
}
