//! JSON text to a value tree, reporting doubled keys and refusing depth.
use std::fmt;

use serde::de::{DeserializeSeed, Deserializer, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Number, Value};

use super::limits::MAX_FILE_BYTES;
use super::problem::{Problem, ProblemKind};

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
        Ok(Number::from_f64(v).map_or(Value::Null, Value::Number))
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
