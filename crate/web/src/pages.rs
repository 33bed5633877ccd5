//! The drawing on the page and what leaves it: picture, link, code.
use planner::drawing::{
    Drawn, Keyed, SeeThrough, Shown, Trims, View, cut, groups_again, marked, see_through, sheet,
    side, stand_span, view_box,
};
use planner::layout::Id;
use planner::link::public;
use planner::optics;
use planner::scene::Ring;
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::objects::object;
use crate::sheet::Sheet;
use crate::{Planner, marks};

/// A code as one path of unit squares.
#[derive(Serialize)]
struct Code {
    size: usize,
    path: String,
}

/// The transparent plan.
#[derive(Serialize)]
struct Plan {
    svg: String,
    /// Pixels across and down.
    pixels: [i32; 2],
    /// Whether the layout says so many.
    told: bool,
}

/// The group of marks, the lowest of what is written over the things.
const MARKS: &str = "marks";

/// Pixels across the client's picture and across a crop of it.
const ACROSS: [f64; 2] = [380.0, 200.0];

/// Pixels across the frame on paper, and how much more is seen on every side, so
/// that names of crops on its edges are whole.
const PRINTED: f64 = 760.0;
const PAST: f64 = 0.025;

/// How the page draws: in the colours it is in.
pub(crate) fn on_page() -> View {
    View {
        paper: "var(--sheet)",
        ink: "var(--ink)",
        ..View::default()
    }
}

/// All crops (-2), none (-1) or one by its id.
pub(crate) const fn trims(crops: i32) -> Trims {
    match crops {
        0.. => Trims::One(Id(crops as u16)),
        -1 => Trims::None,
        _ => Trims::All,
    }
}

/// Hands of all exposures (-2), none (-1) or one by its id, over the table as
/// it stands `then` or as it is set.
const fn hands(exposure: i32, then: bool) -> Shown {
    match exposure {
        0.. if then => Shown::Exposure(Id(exposure as u16)),
        0.. => Shown::Hands(Id(exposure as u16)),
        -1 => Shown::None,
        _ => Shown::All,
    }
}

impl Planner {
    /// Where the picture is seen from.
    pub(crate) fn eye(&self) -> optics::View {
        if self.through {
            optics::View::of(self.now())
        } else {
            optics::View::Above
        }
    }
}

#[wasm_bindgen]
impl Planner {
    /// Draws the things into `root` from here on, and what is written over
    /// them into `over`, beginning with nothing.
    ///
    /// # Errors
    /// When one of them stands in no page.
    pub fn draw_into(
        &mut self,
        root: web_sys::Element,
        over: web_sys::Element,
    ) -> Result<(), JsValue> {
        self.drawn = Drawn::default();
        self.sheet = Some(Sheet::new(root)?);
        self.over = Some(Sheet::new(over)?);
        Ok(())
    }

    /// Left, top, right and bottom of the linen that waits near the frame, mm;
    /// empty when there is none.
    #[must_use]
    pub fn waiting(&self) -> Vec<f64> {
        let corners = planner::drawing::waiting(self.now());
        corners.map_or_else(Vec::new, |c| c.iter().flat_map(|p| p.to_array()).collect())
    }

    /// Sets how the layout is drawn: mm to a pixel; hands of all exposures
    /// (-2), none (-1) or one by its id, over the table as it stands in the
    /// exposure that is worked on; all crops (-2), none (-1) or one by its id.
    pub fn view(&mut self, per_pixel: f64, exposure: i32, crops: i32) {
        self.view.crops = trims(crops);
        self.view.per_pixel = per_pixel;
        self.view.shown = hands(exposure, self.then.is_some());
    }

    /// Shows the things through the lens, or from above.
    pub fn see_through(&mut self, lens: bool) {
        self.through = lens;
    }

    /// Sets whether arm, stand and photographer are drawn, and whether the
    /// light is, with the ring of its hours.
    pub fn show_about(&mut self, rig: bool, lit: bool) {
        (self.view.rig, self.view.lit) = (rig, lit);
    }

    /// Sets whether the places along the table's edge are drawn.
    pub fn show_places(&mut self, places: bool) {
        self.view.places = places;
    }

    /// Left, top, right and bottom of the ring of the light's hours, mm.
    #[must_use]
    pub fn ring_span(&self) -> Vec<f64> {
        let b = Ring::of(self.now()).bounds();
        vec![b.min.x, b.min.y, b.max.x, b.max.y]
    }

    /// Left, top, right and bottom of arm, stand and photographer, mm, and of
    /// the ways between them where they are shown (`walked`); empty when nobody
    /// said where they are.
    #[must_use]
    pub fn rig_span(&self, walked: bool) -> Vec<f64> {
        let span = stand_span(self.now(), walked);
        span.map_or_else(Vec::new, |b| vec![b.min.x, b.min.y, b.max.x, b.max.y])
    }

    /// Draws camera, stand and light from the side into an empty `svg` element
    /// and sets what it shows; says whether there is anything to draw.
    ///
    /// # Errors
    /// When the page refuses a node.
    pub fn draw_side(&self, root: &web_sys::Element) -> Result<bool, JsValue> {
        let Some((area, group)) = side(self.now(), &on_page()) else {
            root.set_text_content(None);
            return Ok(false);
        };
        root.set_attribute("viewBox", &view_box(area))?;
        let keyed = Keyed {
            key: "side".into(),
            group,
            at: None,
        };
        Sheet::new(root.clone())?.patch(vec![keyed])?;
        Ok(true)
    }

    /// Brings the drawing to the layout; returns how many groups were made.
    ///
    /// # Errors
    /// When the page refuses a node.
    pub fn patch(&mut self) -> Result<u32, JsValue> {
        self.view.eye = self.eye();
        let (Some(sheet), Some(over)) = (&mut self.sheet, &mut self.over) else {
            return Ok(0);
        };
        let mut groups = groups_again(self.history.layout(), &self.view, &mut self.drawn);
        let written = groups.iter().position(|keyed| keyed.key == MARKS);
        let written = groups.split_off(written.unwrap_or(groups.len()));
        let made = sheet
            .patch_again(groups)
            .and_then(|made| Ok(made + over.patch_again(written)?));
        if made.is_err() {
            // The page may now show any part of it.
            self.drawn = Drawn::default();
        }
        made
    }

    /// Shows these marks, as the worker's instance gave them, and makes nothing
    /// else anew.
    ///
    /// # Errors
    /// When the page refuses a node.
    pub fn show_marks(&mut self, numbers: &[f64], words: &str) -> Result<(), JsValue> {
        self.view.marks = marks::read(numbers, words);
        let group = marked(self.history.layout(), &self.view);
        match &mut self.over {
            Some(over) => over.replace(MARKS, &group),
            None => Ok(()),
        }
    }

    /// Draws what one crop keeps, or the whole frame for 0, into an empty
    /// `svg` element and sets what it shows; with `lines`, those of all crops.
    ///
    /// # Errors
    /// When the page refuses a node.
    pub fn draw_crop(
        &self,
        root: &web_sys::Element,
        crop: u16,
        lines: bool,
    ) -> Result<(), JsValue> {
        let layout = self.now();
        let view = View {
            crops: if lines { Trims::All } else { Trims::None },
            eye: optics::View::of(layout),
            notes: self.view.notes && !lines,
            ..on_page()
        };
        let across = if lines { PRINTED } else { ACROSS[0] };
        let part = cut(layout, Some(Id(crop)), ACROSS[1], &view);
        let part = part.or_else(|| cut(layout, None, across, &view));
        let part = part.ok_or("the layout has no frame")?;
        let [x, y, wide, high] = part.area;
        let past = if lines { wide * PAST } else { 0.0 };
        let area = [x - past, y - past, wide + 2.0 * past, high + 2.0 * past];
        root.set_attribute("viewBox", &view_box(area))?;
        Sheet::new(root.clone())?.patch(part.groups)?;
        Ok(())
    }

    /// Draws the frame as it is in one exposure, with its hands, into an empty
    /// `svg` element and sets what it shows.
    ///
    /// # Errors
    /// When the page refuses a node.
    pub fn draw_exposure(&self, root: &web_sys::Element, exposure: u16) -> Result<(), JsValue> {
        let layout = self.now();
        let view = View {
            crops: Trims::None,
            eye: optics::View::of(layout),
            shown: Shown::Exposure(Id(exposure)),
            ..on_page()
        };
        let part = cut(layout, None, ACROSS[0], &view).ok_or("the layout has no frame")?;
        root.set_text_content(None);
        let [x, y, wide, high] = part.area;
        root.set_attribute("viewBox", &view_box([x, y, wide, high]))?;
        Sheet::new(root.clone())?.patch(part.groups)?;
        Ok(())
    }

    /// The picture as a file that stands alone.
    #[must_use]
    pub fn picture(&self) -> String {
        sheet(self.now(), Shown::All, self.eye())
    }

    /// The transparent plan with hands of all exposures (-2), none (-1) or those
    /// of one by its id, over the table as it stands in it; nothing when no lens can show the frame.
    ///
    /// # Errors
    /// When the browser refuses to make the object.
    pub fn plan_over(&self, exposure: i32) -> Result<JsValue, JsError> {
        let layout = public(self.now());
        let plan = see_through(&layout, hands(exposure, true));
        plan.map_or(
            Ok(JsValue::UNDEFINED),
            |SeeThrough { svg, pixels, told }| object(&Plan { svg, pixels, told }),
        )
    }

    /// Text as a code, or nothing when it is too long for one.
    ///
    /// # Errors
    /// When the browser refuses to make the object.
    pub fn qr(&self, text: &str) -> Result<JsValue, JsError> {
        let Some(code) = planner::link::qr(text) else {
            return Ok(JsValue::UNDEFINED);
        };
        let (size, path) = (code.extent(), code.svg_path());
        object(&Code { size, path })
    }
}
