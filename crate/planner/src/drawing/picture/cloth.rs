//! A linen about its own centre.
use svg::node::element::Group;

use crate::drawing::{Pen, cloth as drawn};
use crate::layout::Linen;
use crate::scene::linen_form;

/// One linen as it lies.
pub(super) fn cloth(linen: &Linen, pen: &Pen) -> Group {
    let form = linen_form(linen);
    drawn(linen.kind, linen.state, &form, linen.colour.0, pen)
}
