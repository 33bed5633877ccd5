//! Outlines of the arms of layouts, for programs that work out for themselves
//! what each exposure adds: layouts in, one a line, and for each a line of
//! where the lens hangs and, exposure by exposure, its parts with their heights
//! and the plates light meets.
use std::io::{BufRead, stdin};

use glam::DVec2;
use planner::layout::{Layout, open};
use planner::optics::View;
use planner::scene::{arm, held_at, silhouette};
use serde_json::{Value, json};

fn outline(points: &[DVec2]) -> Value {
    points.iter().map(|p| json!([p.x, p.y])).collect()
}

fn told(layout: &Layout) -> Value {
    let lens = match View::of(layout) {
        View::Above => Value::Null,
        View::Lens { under, height } => json!([under.x, under.y, height]),
    };
    let hands = layout.hands.iter().map(|hand| {
        let arm = arm(layout, hand);
        let held = held_at(layout, hand, &arm).map(|(item, at)| {
            let by = at - item.at.vec();
            silhouette(item).iter().map(|p| *p + by).collect::<Vec<_>>()
        });
        let parts = [&arm.hand, &arm.forearm, &arm.sleeve];
        let parts = parts.into_iter().chain(held.as_ref());
        let plates = arm.plates();
        let plates = plates.iter().chain(held.as_ref());
        json!({
            "exposure": hand.exposure.0,
            "height": hand.height,
            "parts": parts.filter(|p| !p.is_empty()).map(|p| outline(p)).collect::<Value>(),
            "plates": plates.map(|p| outline(p)).collect::<Value>(),
        })
    });
    json!({"lens": lens, "hands": hands.collect::<Value>()})
}

fn main() {
    for line in stdin().lock().lines().map_while(Result::ok) {
        let layout = open(&line).expect("a sound layout");
        println!("{}", told(&layout));
    }
}
