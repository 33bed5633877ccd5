//! What the table is made of.
use super::{Act, Refused};
use crate::catalogue;
use crate::layout::Layout;
use crate::words::{Arg, say};

/// Lays the spread on another surface of the catalogue.
///
/// # Errors
/// When the catalogue has no such surface.
pub fn set_surface(layout: &Layout, prop: &str) -> Result<Act, Refused> {
    let entry = catalogue::surface(prop).ok_or_else(|| Refused::Unknown(prop.into()))?;
    let mut after = layout.clone();
    after.table.surface = catalogue::surface_from(entry);
    let surface = Arg::Name(entry.name.into());
    Act::between(say("done-surface", &[("surface", surface)]), layout, &after)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::LayoutId;

    #[test]
    fn a_surface_brings_its_colour_and_finish() {
        let layout = Layout::empty(LayoutId(1));
        let act = set_surface(&layout, "black-marble").expect("known");
        let mut after = layout.clone();
        act.edit.apply_checked(&mut after).expect("fits");
        let entry = catalogue::surface("black-marble").expect("known");
        let surface = &after.table.surface;
        assert_eq!(
            (surface.colour, surface.finish),
            (entry.colour, entry.finish),
            "its own"
        );
        let unknown = set_surface(&layout, "ice");
        assert_eq!(unknown, Err(Refused::Unknown("ice".into())), "unknown");
    }
}
