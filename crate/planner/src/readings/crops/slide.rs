//! Where a crop would have to go.
use glam::DVec2;

use super::super::finding::{Finding, Remedy};
use super::super::study::Study;
use super::{Placed, cured, item_box, moved};
use crate::layout::{Id, Role};
use crate::shape::Bounds;
use crate::words::{Arg, length, say};

/// Room a slid crop leaves round what it keeps, mm. Our choice.
pub(super) const KEEP_CLEAR: f64 = 10.0;
/// A centre is stored in whole mm, and turned pictures round both ways.
const ROUNDING: f64 = 1.0;

/// The crop slid the shortest way to a place within the frame that shows all
/// it has to whole and has nothing that matters in the gutter.
pub(super) fn slid(study: &Study<'_>, placed: &Placed<'_>, finding: &Finding) -> Option<Remedy> {
    let layout = placed.layout;
    let name = || Arg::Name(placed.crop.name.clone());
    for clear in [KEEP_CLEAR.max(safe(placed)), 0.0] {
        let Some(to) = nearest(study, placed, clear) else {
            continue;
        };
        let by = (to - placed.trim.centre()).length();
        let found = cured(study, finding, moved(layout, placed.crop, to), |_| {
            let by = Arg::Text(length(by, layout.head.units));
            (
                say("act-slide-crop", &[("crop", name())]),
                say("slide-by", &[("by", by)]),
            )
        });
        if found.is_some() {
            return found;
        }
    }
    None
}

/// The safe margin on the table, mm.
pub(super) fn safe(placed: &Placed<'_>) -> f64 {
    let scale = placed.crop.print_scale().unwrap_or(0.0);
    f64::from(placed.crop.safe) * scale
}

/// The nearest centre at which everything kept lies `clear` mm inside the trim
/// and the gutter holds no hero, main dish or must-show thing.
fn nearest(study: &Study<'_>, placed: &Placed<'_>, clear: f64) -> Option<DVec2> {
    let boxes =
        |ids: &[Id]| -> Vec<Bounds> { ids.iter().filter_map(|id| item_box(study, *id)).collect() };
    let half = placed.trim.size() * 0.5;
    let room = (placed.frame.size() * 0.5 - half).max(DVec2::ZERO);
    if (placed.frame.size() * 0.5 - half).min_element() < -0.5 {
        return None;
    }
    let middle = placed.frame.centre();
    let kept = boxes(&placed.kept());
    let low = kept.iter().fold(DVec2::INFINITY, |m, b| m.min(b.min)) - clear;
    let high = kept.iter().fold(DVec2::NEG_INFINITY, |m, b| m.max(b.max)) + clear;
    let least = (high - half).max(middle - room);
    let most = (low + half).min(middle + room);
    if least.cmpgt(most + 0.5).any() {
        return None;
    }
    let now = placed.trim.centre();
    let settled = now.clamp(least.min(most), most);
    let Some(strip) = placed.strip() else {
        return Some(settled);
    };
    let reach = (strip[1] - strip[0]) * 0.5 + ROUNDING;
    let main: Vec<Id> = placed
        .layout
        .items
        .iter()
        .filter(|i| matches!(i.role, Role::Hero | Role::Support))
        .map(|i| i.id)
        .collect();
    let blocked = boxes(&main);
    let free = |x: &f64| {
        let inside = |b: &Bounds| b.min.x < x + reach && b.max.x > x - reach;
        (least.x..=most.x).contains(x) && !blocked.iter().any(inside)
    };
    let ends = blocked
        .iter()
        .flat_map(|b| [b.min.x - reach, b.max.x + reach]);
    std::iter::once(settled.x)
        .chain(ends)
        .filter(free)
        .min_by(|a, b| (a - now.x).abs().total_cmp(&(b - now.x).abs()))
        .map(|x| DVec2::new(x, settled.y))
}
