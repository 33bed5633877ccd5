//! The table or board, as its catalogue entry says it looks.
use svg::node::element::Group;

use crate::catalogue::{self, Grain};
use crate::drawing::{Pen, surface as drawn};
use crate::layout::Layout;
use crate::shape::{CHORD_ERROR, table_outline};

/// The surface everything lies on.
pub(super) fn surface(layout: &Layout, pen: &Pen) -> Group {
    let table = &layout.table;
    let edge = table_outline(table, CHORD_ERROR);
    let entry = catalogue::surface(&table.surface.prop);
    let grain = entry.map_or(Grain::Plain, |entry| entry.grain);
    drawn(grain, &edge, table.surface.colour.0, pen)
}
