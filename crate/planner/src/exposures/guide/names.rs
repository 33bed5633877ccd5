//! Which guides a layout has, and what their files are called.
use super::adds::Stack;
use crate::layout::{ExposureKind, Id, Layout};
use crate::optics::View;
use crate::scene::exposure_number;

/// The file of the sheet that comes with them.
pub const OVERVIEW: &str = "00-overview.svg";

/// One guide as a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GuideFile {
    /// Whose guide it is.
    pub exposure: Id,
    /// What that exposure is for.
    pub kind: ExposureKind,
    /// The number an exposure with hands goes by.
    pub number: Option<usize>,
    /// Its file: its place from the bottom, what it is for, and its number.
    pub name: String,
}

/// The guides of a layout, the lowest first; none when no lens can show the
/// frame.
#[must_use]
pub fn guides(layout: &Layout) -> Vec<GuideFile> {
    if View::of(layout) == View::Above {
        return Vec::new();
    }
    let Some(stack) = Stack::of(layout) else {
        return Vec::new();
    };
    let above = stack.above.iter().map(|adds| adds.exposure);
    let order: Vec<Id> = core::iter::once(stack.ground).chain(above).collect();
    let each = order.into_iter().enumerate().filter_map(|(place, id)| {
        let exposure = layout.exposures.iter().find(|e| e.id == id)?;
        let number = exposure_number(layout, id);
        Some(GuideFile {
            exposure: id,
            kind: exposure.kind,
            number,
            name: named(place + 1, exposure.kind, number),
        })
    });
    each.collect()
}

/// `02-hands-1.png`.
fn named(place: usize, kind: ExposureKind, number: Option<usize>) -> String {
    let mut name = String::new();
    if place < 10 {
        name.push('0');
    }
    name.push_str(&place.to_string());
    name.push_str(match kind {
        ExposureKind::Clean => "-clean",
        ExposureKind::Hands => "-hands",
        ExposureKind::Card => "-card",
        ExposureKind::Empty => "-empty",
        ExposureKind::Steam => "-steam",
        ExposureKind::NoGlare => "-no-glare",
        ExposureKind::Insurance => "-insurance",
    });
    if let Some(number) = number {
        name.push('-');
        name.push_str(&number.to_string());
    }
    name.push_str(".png");
    name
}

/// The picture that the exposures make when each is laid over the others
/// through its guide: all hands, and each thing as the topmost exposure shows
/// it that has it otherwise than the lowest.
#[must_use]
pub fn combined(layout: &Layout) -> Layout {
    let stack = Stack::of(layout);
    stack.map_or_else(|| layout.clone(), |stack| stack.combined(layout))
}
