//! JSON text to a value tree, reporting doubled keys and refusing depth.
use std::fmt;

use serde::de::{DeserializeSeed, Deserializer, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Number, Value};

use super::limits::MAX_FILE_BYTES;
use super::problem::{Problem, ProblemKind};

/// How often a number is read from its own text at most. Two are enough for
/// nearly all; of 400 million tried the furthest, about 8e161, took 179.
const SETTLES: usize = 1024;

/// Reads JSON; doubled keys become problems and the first one stays.
///
/// # Errors
/// One syntax or limit problem when the text is no JSON at all.
pub(super) fn parse(text: &str, push: &mut dyn FnMut(Problem)) -> Result<Value, Problem> {
    if text.len() > MAX_FILE_BYTES {
        let found = format!("{} bytes", text.len());
        let allowed = format!("at most {MAX_FILE_BYTES} bytes");
        return Err(Problem::new(ProblemKind::Limit, "", &found, &allowed));
    }
    let mut doubled = Vec::new();
    let mut json = serde_json::Deserializer::from_str(text);
    let value = Tree {
        path: String::new(),
        doubled: &mut doubled,
    }
    .deserialize(&mut json)
    .and_then(|v| json.end().map(|()| v))
    .map_err(|e| Problem::new(ProblemKind::Syntax, "", &e.to_string(), "JSON text"))?;
    for path in doubled {
        push(Problem::new(
            ProblemKind::Value,
            &path,
            "a doubled key",
            "each key once",
        ));
    }
    Ok(value)
}

/// A number that its own text is read as. The reader of JSON is off by a little
/// where digits are many; being right would take it 10 kB of the page's module.
/// Of neighbours that are read as each other the least stands for all.
fn settled(number: f64) -> f64 {
    let mut met = vec![number];
    while met.len() < SETTLES {
        let last = met[met.len() - 1];
        let text = Number::from_f64(last).map(|n| n.to_string());
        let again: Option<f64> = text.and_then(|text| serde_json::from_str(&text).ok());
        let Some(again) = again else {
            return last;
        };
        if let Some(first) = met.iter().position(|m| m.total_cmp(&again).is_eq()) {
            return met[first..].iter().copied().fold(again, f64::min);
        }
        met.push(again);
    }
    met[met.len() - 1]
}

struct Tree<'a> {
    path: String,
    doubled: &'a mut Vec<String>,
}

impl<'de> DeserializeSeed<'de> for Tree<'_> {
    type Value = Value;
    fn deserialize<D: Deserializer<'de>>(self, d: D) -> Result<Value, D::Error> {
        d.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Tree<'_> {
    type Value = Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("JSON")
    }
    fn visit_bool<E>(self, v: bool) -> Result<Value, E> {
        Ok(Value::Bool(v))
    }
    fn visit_i64<E>(self, v: i64) -> Result<Value, E> {
        Ok(v.into())
    }
    fn visit_u64<E>(self, v: u64) -> Result<Value, E> {
        Ok(v.into())
    }
    fn visit_f64<E>(self, v: f64) -> Result<Value, E> {
        Ok(Number::from_f64(settled(v)).map_or(Value::Null, Value::Number))
    }
    fn visit_str<E>(self, v: &str) -> Result<Value, E> {
        Ok(v.into())
    }
    fn visit_unit<E>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }
    fn visit_seq<A: SeqAccess<'de>>(self, mut seq: A) -> Result<Value, A::Error> {
        let mut list = Vec::new();
        let Tree { path, doubled } = self;
        while let Some(v) = seq.next_element_seed(Tree {
            path: format!("{path}[{}]", list.len()),
            doubled,
        })? {
            list.push(v);
        }
        Ok(Value::Array(list))
    }
    fn visit_map<A: MapAccess<'de>>(self, mut access: A) -> Result<Value, A::Error> {
        let mut map = Map::new();
        let Tree { path, doubled } = self;
        while let Some(key) = access.next_key::<String>()? {
            let at = if path.is_empty() {
                key.clone()
            } else {
                format!("{path}.{key}")
            };
            let value = access.next_value_seed(Tree {
                path: at.clone(),
                doubled,
            })?;
            if map.contains_key(&key) {
                doubled.push(at);
            } else {
                map.insert(key, value);
            }
        }
        Ok(Value::Object(map))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn numbers_that_are_read_as_each_other_are_one() {
        let read = |number: f64| -> f64 {
            serde_json::from_str(&Number::from_f64(number).expect("finite").to_string())
                .expect("JSON")
        };
        // Two numbers side by side that the reader of JSON swaps, found by
        // trying.
        let pair = (1_u64..)
            .map(|seed| f64::from_bits(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15)))
            .filter(|n| n.is_finite())
            .find(|&n| read(n) != n && read(read(n)) == n)
            .expect("a pair");
        assert_eq!(settled(pair), settled(read(pair)));
        assert_eq!(
            settled(8.299746242060089e161),
            settled(read(8.299746242060089e161))
        );
    }

    proptest! {
        #[test]
        fn a_number_is_read_as_its_own_text_is(
            digits in "[1-9][0-9]{0,30}",
            part in prop::option::of("[0-9]{1,20}"),
            power in prop::option::of(-250_i32..250),
        ) {
            let part = part.map_or_else(String::new, |part| format!(".{part}"));
            let power = power.map_or_else(String::new, |power| format!("e{power}"));
            let text = format!("[{digits}{part}{power}]");
            let read = |text: &str| parse(text, &mut |_| ()).expect("JSON");
            let once = read(&text);
            prop_assert_eq!(read(&once.to_string()), once, "{}", text);
        }
    }
}
