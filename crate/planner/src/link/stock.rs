//! What the lists say of things, as a section of its own: things were written
//! before there were lists.
use serde_json::{Map, Value};

use super::fields::STOCK_KEY;
use crate::layout::{Problem, ProblemKind};

/// The lists of things it is said of.
const LISTS: [&str; 2] = ["linens", "items"];
/// What is said.
const KEYS: [&str; 3] = ["spare", "source", "shelf"];
/// The name a row has for the id of its thing.
const OF: &str = "of";

/// Takes what is said of each thing out of it, into a list of rows.
pub(super) fn take_out(root: &mut Map<String, Value>) {
    let mut rows = Vec::new();
    for list in LISTS {
        let things = root.get_mut(list).and_then(Value::as_array_mut);
        for thing in things.into_iter().flatten() {
            let Some(thing) = thing.as_object_mut() else {
                continue;
            };
            let mut row = Map::new();
            for key in KEYS {
                row.extend(thing.remove(key).map(|said| (key.into(), said)));
            }
            if let Some(id) = thing.get("id").filter(|_| !row.is_empty()) {
                row.insert(OF.into(), id.clone());
                rows.push(row.into());
            }
        }
    }
    if !rows.is_empty() {
        root.insert(STOCK_KEY.into(), Value::Array(rows));
    }
}

/// Gives every thing back what the rows say of it.
pub(super) fn put_back(root: &mut Map<String, Value>, problems: &mut Vec<Problem>) {
    let rows = match root.remove(STOCK_KEY) {
        Some(Value::Array(rows)) => rows,
        _ => return,
    };
    for (n, row) in rows.into_iter().enumerate() {
        let Value::Object(mut row) = row else {
            continue;
        };
        let of = row.remove(OF);
        match thing(root, of.as_ref()) {
            Some(thing) => thing.extend(row),
            None => problems.push(Problem::new(
                ProblemKind::Reference,
                &["stock[", &n.to_string(), "].of"].concat(),
                &of.unwrap_or_default().to_string(),
                "the id of an item or a linen",
            )),
        }
    }
}

/// The thing of this id.
fn thing<'a>(
    root: &'a mut Map<String, Value>,
    id: Option<&Value>,
) -> Option<&'a mut Map<String, Value>> {
    // The list is found first: a borrow that is returned cannot be tried twice.
    let has = |list: &str| {
        let things = root.get(list).and_then(Value::as_array);
        things.is_some_and(|all| all.iter().any(|thing| thing.get("id") == id))
    };
    let list = LISTS.into_iter().find(|list| has(list))?;
    let things = root.get_mut(list)?.as_array_mut()?;
    things
        .iter_mut()
        .find(|thing| thing.get("id") == id)?
        .as_object_mut()
}
