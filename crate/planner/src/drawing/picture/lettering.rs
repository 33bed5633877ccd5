//! Words on the drawing.
use glam::DVec2;
use svg::node::element::Text;

use crate::drawing::path::tenth;

/// `text` from `at` on, `size` mm high, in the serif the reader has.
pub(super) fn lettering(text: &str, at: DVec2, size: f64) -> Text {
    Text::new(text)
        .set("x", tenth(at.x))
        .set("y", tenth(at.y))
        .set("font-size", tenth(size))
        .set(
            "font-family",
            "Palatino, 'Palatino Linotype', P052, 'Noto Serif', Georgia, serif",
        )
}

/// As [`lettering`], with its middle at `at`.
pub(super) fn centred(text: &str, at: DVec2, size: f64) -> Text {
    lettering(text, at, size).set("text-anchor", "middle")
}
