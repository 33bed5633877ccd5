//! What each exposure adds, to be looked at on the picture.
use super::super::finding::Mark;
use crate::exposures::added_seen;
use crate::layout::{Id, Layout};
use crate::optics::View;
use crate::scene::exposure_number;

/// What every exposure with hands adds, or one of them, as it is seen from a
/// place: its shadow, then its arms and things with its number.
#[must_use]
pub fn region_marks(layout: &Layout, view: View, only: Option<Id>) -> Vec<Mark> {
    let mut marks = Vec::new();
    for own in added_seen(layout, view) {
        if only.is_some_and(|id| id != own.exposure) {
            continue;
        }
        let number = exposure_number(layout, own.exposure).unwrap_or(1);
        for (region, shadow) in [(&own.shadow, true), (&own.solid, false)] {
            for (n, ring) in region.rings().iter().enumerate() {
                let numbered = n == 0 && !shadow;
                marks.push(Mark::Added {
                    outline: ring.clone(),
                    exposure: (number - 1) as u8,
                    shadow,
                    label: if numbered {
                        number.to_string()
                    } else {
                        String::new()
                    },
                });
            }
        }
    }
    marks
}
