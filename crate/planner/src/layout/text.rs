//! A value as JSON text. The one writer: a serialiser of the library's own is
//! compiled anew for every type it writes, once each for text on one line and
//! on many.
use std::fmt::Write as _;

use serde::Serialize;
use serde_json::Value;

/// JSON on one line.
#[must_use]
pub fn to_line(value: &impl Serialize) -> String {
    let tree = serde_json::to_value(value).unwrap_or_default();
    line(&tree)
}

/// A value as JSON on one line.
pub(crate) fn line(tree: &Value) -> String {
    let mut out = String::new();
    put(&mut out, tree, None);
    out
}

/// JSON indented by two spaces a level, as files are kept.
pub(super) fn to_lines(value: &impl Serialize) -> String {
    let tree = serde_json::to_value(value).unwrap_or_default();
    let mut out = String::new();
    put(&mut out, &tree, Some(0));
    out
}

/// Writes a value; `depth` is that of its own line, if lines are broken.
fn put(out: &mut String, value: &Value, depth: Option<usize>) {
    let within = depth.map(|depth| depth + 1);
    match value {
        Value::Null => out.push_str("null"),
        Value::Bool(true) => out.push_str("true"),
        Value::Bool(false) => out.push_str("false"),
        Value::Number(number) => {
            let _ = write!(out, "{number}");
        }
        Value::String(text) => put_text(out, text),
        Value::Array(list) => {
            out.push('[');
            for (n, entry) in list.iter().enumerate() {
                next(out, n, within);
                put(out, entry, within);
            }
            end(out, list.is_empty(), depth);
            out.push(']');
        }
        Value::Object(map) => {
            out.push('{');
            for (n, (key, entry)) in map.iter().enumerate() {
                next(out, n, within);
                put_text(out, key);
                out.push_str(if depth.is_some() { ": " } else { ":" });
                put(out, entry, within);
            }
            end(out, map.is_empty(), depth);
            out.push('}');
        }
    }
}

/// What stands before entry number `n`.
fn next(out: &mut String, n: usize, depth: Option<usize>) {
    if n > 0 {
        out.push(',');
    }
    break_line(out, depth);
}

fn end(out: &mut String, empty: bool, depth: Option<usize>) {
    if !empty {
        break_line(out, depth);
    }
}

fn break_line(out: &mut String, depth: Option<usize>) {
    if let Some(depth) = depth {
        out.push('\n');
        (0..depth).for_each(|_| out.push_str("  "));
    }
}

fn put_text(out: &mut String, text: &str) {
    out.push('"');
    for c in text.chars() {
        match c {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            '\n' => out.push_str("\\n"),
            '\r' => out.push_str("\\r"),
            '\t' => out.push_str("\\t"),
            '\u{8}' => out.push_str("\\b"),
            '\u{c}' => out.push_str("\\f"),
            '\0'..' ' => {
                let _ = write!(out, "\\u{:04x}", u32::from(c));
            }
            _ => out.push(c),
        }
    }
    out.push('"');
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn tree() -> impl Strategy<Value = Value> {
        let leaf = prop_oneof![
            Just(Value::Null),
            any::<bool>().prop_map(Value::from),
            any::<i64>().prop_map(Value::from),
            any::<u64>().prop_map(Value::from),
            any::<String>().prop_map(Value::from),
        ];
        leaf.prop_recursive(4, 64, 6, |inner| {
            prop_oneof![
                prop::collection::vec(inner.clone(), 0..6).prop_map(Value::from),
                prop::collection::vec((any::<String>(), inner), 0..6)
                    .prop_map(|fields| Value::Object(fields.into_iter().collect())),
            ]
        })
    }

    proptest! {
        #[test]
        fn the_library_writes_the_same(value in tree()) {
            let theirs = serde_json::to_string(&value).expect("JSON");
            prop_assert_eq!(to_line(&value), theirs, "on one line");
            let theirs = serde_json::to_string_pretty(&value).expect("JSON");
            prop_assert_eq!(to_lines(&value), theirs, "on many");
        }

        #[test]
        fn a_real_number_comes_back_to_the_bit(number in prop::num::f64::NORMAL) {
            let text = to_line(&number);
            prop_assert_eq!(text.parse::<f64>(), Ok(number), "{}", text);
            prop_assert!(serde_json::from_str::<f64>(&text).is_ok(), "{} is JSON", text);
        }
    }
}
