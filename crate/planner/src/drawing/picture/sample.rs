//! One thing drawn alone and small, to choose it by.
use super::cut::Cut;
use super::groups;
use super::view::View;
use crate::catalogue;
use crate::layout::{Id, Layout, LayoutId, TableShape};
use crate::scene::Scene;
use crate::shape::Bounds;
use glam::DVec2;

/// Air around the thing, as a share of it (our choice).
const AIR: f64 = 0.06;
/// How much of a surface is shown, mm: a few planks or tiles of it.
const SWATCH: i32 = 420;

/// What a layout holds without the table under it and the shadows on that, drawn for `pixels` across;
/// nothing when it holds nothing.
#[must_use]
pub fn alone(layout: &Layout, pixels: f64, view: &View) -> Option<Cut> {
    let scene = Scene::of(layout, None);
    let all: Vec<DVec2> = scene.touchable.into_iter().flat_map(|(_, o)| o).collect();
    let Bounds { min, max } = Bounds::around(&all)?;
    let side = (max - min).max_element() * (1.0 + 2.0 * AIR);
    let corner = (min + max - DVec2::splat(side)) * 0.5;
    let mut cut = drawn(layout, [corner.x, corner.y, side, side], pixels, view);
    let falls = |key: &str| key == "surface" || key.starts_with("shadow");
    cut.groups.retain(|keyed| !falls(&keyed.key));
    Some(cut)
}

/// A thing of the catalogue as it is first put down; nothing when there is no
/// such thing.
#[must_use]
pub fn sample(prop: &str, pixels: f64, view: &View) -> Option<Cut> {
    let mut layout = Layout::empty(LayoutId(1));
    // Shadows end and cloths fall at the edge of the table.
    (layout.table.width, layout.table.depth) = (6_000, 6_000);
    let at = layout.table.centre();
    if let Some(entry) = catalogue::prop(prop) {
        let item = catalogue::item_from(entry, Id(1), 1, at);
        layout.items.push(item);
    } else {
        let entry = catalogue::linens().iter().find(|l| l.name == prop)?;
        layout.linens.push(catalogue::linen_from(entry, Id(1), at));
    }
    alone(&layout, pixels, view)
}

/// A piece of a surface of the catalogue; nothing when there is no such
/// surface.
#[must_use]
pub fn swatch(surface: &str, pixels: f64, view: &View) -> Option<Cut> {
    let mut layout = Layout::empty(LayoutId(1));
    layout.table.surface = catalogue::surface_from(catalogue::surface(surface)?);
    layout.table.shape = TableShape::Rect;
    (layout.table.width, layout.table.depth) = (SWATCH, SWATCH);
    let side = f64::from(SWATCH);
    Some(drawn(&layout, [0.0, 0.0, side, side], pixels, view))
}

fn drawn(layout: &Layout, area: [f64; 4], pixels: f64, view: &View) -> Cut {
    let view = View {
        per_pixel: area[2] / pixels,
        frame: false,
        tags: false,
        ..view.clone()
    };
    let groups = groups(layout, &view);
    Cut { area, groups }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{foods, linens, props, surfaces};

    /// Pixels across a drawing one chooses by.
    const SMALL: f64 = 48.0;

    #[test]
    fn everything_that_can_be_added_has_a_drawing_within_its_square() {
        let view = View::default();
        let things = props().iter().chain(foods()).map(|e| e.id);
        for prop in things.chain(linens().iter().map(|l| l.name)) {
            let cut = sample(prop, SMALL, &view).expect("known");
            assert!(!cut.groups.is_empty(), "{prop} is drawn");
            assert!(
                cut.groups.iter().all(|g| g.key != "surface"),
                "{prop} alone"
            );
            let [x, y, wide, high] = cut.area;
            let middle = DVec2::new(x + wide * 0.5, y + high * 0.5);
            assert!(wide > 0.0 && wide == high, "{prop}: {wide} × {high}");
            let off = (middle - DVec2::splat(3_000.0)).abs().max_element();
            assert!(off < wide, "{prop} is in it: {middle}");
        }
        assert!(sample("anvil", SMALL, &view).is_none(), "unknown");
    }

    #[test]
    fn every_surface_has_a_swatch() {
        let view = View::default();
        for surface in surfaces() {
            let cut = swatch(surface.id, SMALL, &view).expect("known");
            assert_eq!(cut.groups.len(), 1, "{} alone", surface.id);
        }
        assert!(swatch("ice", SMALL, &view).is_none(), "unknown");
    }
}
