//! What a layout tells of its dates otherwise than usual, as a section of its own:
//! dates were written before there was a plan.
use serde_json::{Map, Value, json};

use super::fields::DATED_KEY;
use crate::layout::STEPS;

const DATES: &str = "dates";
const TOLD: &str = "steps";
const SEASONS: &str = "seasons";

/// Takes it out of the dates, into a list of rows; what a row has no field for
/// stays.
pub(super) fn take_out(root: &mut Map<String, Value>) {
    let Some(dates) = root.get_mut(DATES).and_then(Value::as_object_mut) else {
        return;
    };
    let mut rows = Vec::new();
    if let Some(told) = dates.get_mut(TOLD).and_then(Value::as_object_mut) {
        let known = STEPS
            .into_iter()
            .filter_map(|step| Some((step, told.remove(step)?)));
        rows.extend(known.map(|(step, days)| json!({ "step": step, "days": days })));
        if told.is_empty() {
            dates.remove(TOLD);
        }
    }
    if let Some(all) = dates.get_mut(SEASONS).and_then(Value::as_array_mut) {
        for season in all.iter_mut().filter_map(Value::as_object_mut) {
            let known = ["food", "months"].map(|key| (key.to_string(), season.remove(key)));
            let known = known
                .into_iter()
                .filter_map(|(key, said)| Some((key, said?)));
            rows.push(Value::Object(known.collect()));
        }
        all.retain(|left| left.as_object().is_some_and(|left| !left.is_empty()));
        if all.is_empty() {
            dates.remove(SEASONS);
        }
    }
    if !rows.is_empty() {
        root.insert(DATED_KEY.into(), rows.into());
    }
}

/// Gives the dates back what the rows tell. Days without a step and a step
/// without days tell nothing; of a step told twice the last counts.
pub(super) fn put_back(root: &mut Map<String, Value>) {
    let Some(Value::Array(rows)) = root.remove(DATED_KEY) else {
        return;
    };
    let (mut told, mut seasons) = (Map::new(), Vec::new());
    for row in rows {
        let Value::Object(mut row) = row else {
            continue;
        };
        let (step, days) = (row.remove("step"), row.remove("days"));
        if let (Some(Value::String(step)), Some(days)) = (step, days) {
            told.insert(step, days);
        }
        if !row.is_empty() {
            seasons.push(row.into());
        }
    }
    let dates = root.entry(DATES).or_insert_with(|| json!({}));
    if !told.is_empty() {
        dates[TOLD] = told.into();
    }
    if !seasons.is_empty() {
        dates[SEASONS] = Value::Array(seasons);
    }
}
