//! One step of a history, and how it is written.
use serde::Serialize;
use serde_json::Value;

use super::change::Edit;
use super::history::Run;
use super::journal::object;
use crate::layout::{Problem, parse_json, to_line};

/// One step.
pub(super) struct Step {
    pub(super) name: String,
    pub(super) edit: Edit,
    /// Length of its text.
    pub(super) bytes: usize,
    pub(super) run: Run,
}

#[derive(Serialize)]
struct Written<'a> {
    name: &'a str,
    edit: &'a Edit,
}

/// A step as one line of JSON: `{name, edit}`.
pub(super) fn written(name: &str, edit: &Edit) -> String {
    to_line(&Written { name, edit })
}

/// Reads what [`written`] wrote, or says what is wrong with it.
pub(super) fn read(text: &str) -> Result<Step, String> {
    let read = || {
        let mut map = object(parse_json(text)?, "")?;
        let name = map.remove("name").unwrap_or_default();
        let edit = Edit::read(map.remove("edit").unwrap_or(Value::Null))?;
        Ok((name.as_str().unwrap_or_default().to_owned(), edit))
    };
    let (name, edit) = read().map_err(|problems: Vec<Problem>| {
        let first = problems.first();
        first.map_or_else(String::new, Problem::to_string)
    })?;
    Ok(Step {
        name,
        edit,
        bytes: text.len(),
        run: Run::Alone,
    })
}
