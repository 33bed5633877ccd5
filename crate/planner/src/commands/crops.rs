//! Crops that come over the frame, and the copy space in one.
use super::{Act, Refused, called, fresh_id};
use crate::catalogue::{self, Kind};
use crate::layout::{CopyArea, CopySpace, Crop, CropShape, Extra, Id, Layout, Ratio, clean_text};

/// A page in print.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Page {
    /// Two A4 pages side by side.
    Double,
    /// One A4 page.
    A4,
    /// Two pages of a magazine of 8.375 × 10.875 in.
    DoubleInches,
    /// One page of it.
    Inches,
}

impl Page {
    /// Trimmed size, mm: ISO 216, and trade pages to the nearest mm.
    const fn trim(self) -> [i32; 2] {
        match self {
            Self::Double => [420, 297],
            Self::A4 => [210, 297],
            Self::DoubleInches => [425, 276],
            Self::Inches => [213, 276],
        }
    }

    const fn gutter(self) -> i32 {
        match self {
            Self::Double | Self::DoubleInches => GUTTER,
            Self::A4 | Self::Inches => 0,
        }
    }
}

/// Bleed, safe margin and the strip the fold takes, mm of print: common
/// practice, no source; the printer's own figures decide.
const BLEED: i32 = 3;
const SAFE: i32 = 8;
const GUTTER: i32 = 10;
/// Share of the frame a double page takes, so that its bleed is in the frame
/// (our choice).
const IN_FRAME: f64 = 0.96;
/// Copy space as shares of its crop: width, depth, and how far its centre
/// lies above the crop's (our choice).
const COPY: [f64; 3] = [0.5, 0.22, 0.32];

/// Adds a crop of this ratio, as large as the frame allows.
///
/// # Errors
/// None so far as nothing there changes.
pub fn add_crop(layout: &Layout, name: &str, ratio: Ratio) -> Result<Act, Refused> {
    place(layout, name, CropShape::Ratio(ratio), 1.0, [0; 3])
}

/// Adds a page in print, with bleed, safe margin and, across a fold, gutter.
///
/// # Errors
/// None so far as nothing there changes.
pub fn add_page(layout: &Layout, name: &str, page: Page) -> Result<Act, Refused> {
    let print = CropShape::Print(page.trim());
    place(layout, name, print, IN_FRAME, [BLEED, SAFE, page.gutter()])
}

/// Adds a print of this trimmed size, mm, with bleed and safe margin.
///
/// # Errors
/// None so far as nothing there changes.
pub fn add_print(layout: &Layout, name: &str, trim: [i32; 2]) -> Result<Act, Refused> {
    let print = CropShape::Print(trim.map(|mm| mm.max(1)));
    place(layout, name, print, IN_FRAME, [BLEED, SAFE, 0])
}

fn place(
    layout: &Layout,
    name: &str,
    shape: CropShape,
    share: f64,
    [bleed, safe, gutter]: [i32; 3],
) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let frame = &layout.frame;
    let wide = f64::from(frame.width);
    let by_depth = frame.ratio.height_for(wide) / shape.height_for(1.0);
    let name = clean_text(name);
    let id = fresh_id(&mut after);
    after.crops.push(Crop {
        id,
        name: name.clone(),
        shape,
        at: frame.at,
        width: (wide.min(by_depth) * share).floor() as i32,
        bleed,
        safe,
        gutter,
        copy: None,
        must: false,
        must_show: Vec::new(),
        extra: Extra::new(),
    });
    Act::between(called("done-added", &name), layout, &after)
}

/// Has a crop show a thing whole, or no longer; food goes by the dish it lies
/// in.
///
/// # Errors
/// When there is no such crop.
pub fn must_show(layout: &Layout, id: Id, thing: Id) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let crop = after.crops.iter_mut().find(|crop| crop.id == id);
    let crop = crop.ok_or_else(|| Refused::Unknown(id.0.to_string()))?;
    let thing = dish(layout, thing);
    let before = crop.must_show.len();
    crop.must_show.retain(|shown| dish(layout, *shown) != thing);
    let is_item = layout.items.iter().any(|item| item.id == thing);
    if crop.must_show.len() == before && is_item {
        crop.must_show.push(thing);
    }
    let name = crop.name.clone();
    Act::between(called("done-must-show", &name), layout, &after)
}

/// The dish that food lies in, however deep; what is no food itself.
fn dish(layout: &Layout, id: Id) -> Id {
    let mut at = id;
    // No stack is taller than its items.
    for _ in 0..layout.items.len() {
        let item = layout.items.iter().find(|item| item.id == at);
        let food = item.filter(|item| {
            catalogue::prop(&item.prop).is_some_and(|entry| entry.kind == Kind::Food)
        });
        match food.and_then(|item| item.on) {
            Some(below) => at = below,
            None => break,
        }
    }
    at
}

/// Keeps copy space in the upper part of a crop.
///
/// # Errors
/// When there is no such crop.
pub fn keep_copy_space(layout: &Layout, id: Id) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let crop = after.crops.iter_mut().find(|crop| crop.id == id);
    let crop = crop.ok_or_else(|| Refused::Unknown(id.0.to_string()))?;
    let [wide, high] = crop.extent();
    let [width, depth, above] = COPY;
    let least = |length: f64| (libm::round(length) as i32).max(1);
    crop.copy = Some(CopySpace {
        area: CopyArea {
            dx: 0,
            dy: -(libm::round(high * above) as i32),
            width: least(wide * width),
            depth: least(high * depth),
        },
        wording: String::new(),
    });
    let name = crop.name.clone();
    Act::between(called("done-copy", &name), layout, &after)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::LayoutId;

    fn framed(width: u16, height: u16) -> Layout {
        let mut layout = Layout::empty(LayoutId(7));
        layout.frame.ratio = Ratio { width, height };
        layout.frame.width = 1_200;
        layout
    }

    fn made(layout: &Layout, act: Result<Act, Refused>) -> Layout {
        let mut after = layout.clone();
        let act = act.expect("nothing is locked");
        act.edit.apply_checked(&mut after).expect("fits");
        after
    }

    #[test]
    fn a_crop_fills_the_frame_across_or_down() {
        let layout = framed(3, 2);
        for (ratio, wanted) in [([16, 9], [1_200.0, 675.0]), ([4, 5], [640.0, 800.0])] {
            let [width, height] = ratio;
            let after = made(&layout, add_crop(&layout, "post", Ratio { width, height }));
            assert_eq!(after.crops[0].extent(), wanted, "{ratio:?}");
        }
    }

    #[test]
    fn a_ratio_no_file_may_hold_is_refused() {
        let layout = framed(3, 2);
        for [width, height] in [[0, 1], [1, 0], [21, 1]] {
            let act = add_crop(&layout, "post", Ratio { width, height }).expect("an act");
            let mut after = layout.clone();
            let refused = act.edit.apply_checked(&mut after).is_err();
            assert!(refused && after == layout, "{width} to {height}");
        }
    }

    #[test]
    fn a_double_page_lies_in_the_frame_with_its_bleed() {
        let layout = framed(3, 2);
        let after = made(&layout, add_page(&layout, "double page", Page::Double));
        let crop = &after.crops[0];
        let bleed = f64::from(crop.bleed) * crop.print_scale().expect("printed");
        let [wide, high] = crop.extent();
        assert!(
            wide + 2.0 * bleed <= 1_200.0 && high + 2.0 * bleed <= 800.0,
            "{wide} × {high}"
        );
        assert!(
            crop.gutter > 0 && crop.safe > 0,
            "with what a printer asks for"
        );
    }

    #[test]
    fn a_print_of_any_size_lies_in_the_frame_and_one_no_file_may_hold_is_refused() {
        let layout = framed(3, 2);
        let after = made(&layout, add_print(&layout, "card", [148, 105]));
        let crop = &after.crops[0];
        assert_eq!(crop.shape, CropShape::Print([148, 105]));
        let [wide, high] = crop.extent();
        assert!(wide <= 1_200.0 && high <= 800.0, "{wide} × {high}");
        for trim in [[0, 0], [-5, 9], [5_001, 300]] {
            let act = add_print(&layout, "card", trim).expect("an act");
            let mut after = layout.clone();
            let done = act.edit.apply_checked(&mut after);
            assert_eq!(done.is_ok(), trim[0] < 1, "{trim:?}");
            assert!(after.crops.iter().all(|c| c.width > 0), "{trim:?}");
        }
    }

    #[test]
    fn copy_space_lies_within_its_crop() {
        let layout = framed(3, 2);
        let layout = made(&layout, add_page(&layout, "double page", Page::Double));
        let id = layout.crops[0].id;
        let after = made(&layout, keep_copy_space(&layout, id));
        let [wide, high] = after.crops[0].extent();
        let area = after.crops[0].copy.as_ref().expect("kept").area;
        assert!(
            f64::from(area.dx.abs()) + f64::from(area.width) / 2.0 <= wide / 2.0,
            "across"
        );
        assert!(
            f64::from(area.dy.abs()) + f64::from(area.depth) / 2.0 <= high / 2.0,
            "down"
        );
        assert!(keep_copy_space(&layout, Id(999)).is_err(), "no such crop");
    }
}
