//! The camera: what it is told, and what the panel shows of it.
use planner::commands::{self, Dial};
use planner::edit::Run;
use planner::layout::Format;
use planner::optics::{Lens, common_lenses};
use planner::order;
use planner::scene::even_focus;
use planner::words::{length, rounded};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::acts::during;
use crate::objects::{asked, object};

/// A focal length, and whether the user has such a lens.
#[derive(Serialize)]
struct Own {
    focal: i32,
    own: bool,
}

/// The camera in words.
#[derive(Serialize)]
struct Told {
    /// Lens above the table.
    height: String,
    stop: String,
    /// Where it focuses above the table.
    focus: String,
    pixels: [i32; 2],
    lenses: Vec<Own>,
}

#[wasm_bindgen]
impl Planner {
    /// A direction of the table in degrees as the hand of the picture's clock
    /// points.
    #[must_use]
    pub fn clock(&self, degrees: f64) -> String {
        planner::words::clock(degrees - self.now().frame.turn.degrees())
    }

    /// The camera in words.
    ///
    /// # Errors
    /// When the browser refuses to make it.
    pub fn camera(&self) -> Result<JsValue, JsError> {
        let layout = self.now();
        let (camera, frame) = (&layout.camera, &layout.frame);
        let lens = Lens::of(camera);
        let said = |mm: f64| length(mm, layout.head.units);
        let mut all = common_lenses(camera.format).to_vec();
        all.extend(&camera.lenses);
        order::sort(&mut all, i32::cmp);
        all.dedup();
        let own = |focal| Own {
            focal,
            own: camera.lenses.contains(&focal),
        };
        let focus = camera.focus_height.map(f64::from);
        object(&Told {
            height: lens
                .height_over(f64::from(frame.width), frame.height())
                .map_or_else(String::new, said),
            stop: rounded(f64::from(camera.aperture) / 10.0),
            focus: said(focus.or_else(|| even_focus(layout)).unwrap_or(0.0)),
            pixels: lens.pixels,
            lenses: all.into_iter().map(own).collect(),
        })
    }

    /// Sets `focal`, `aperture`, `height` or `focus` one step up or down,
    /// during a visit to a field or 0.
    ///
    /// # Errors
    /// When the layout would break a limit.
    pub fn step_camera(&mut self, dial: &str, up: bool, visit: u32) -> Result<JsValue, JsError> {
        let dial = match dial {
            "focal" => Dial::Focal,
            "aperture" => Dial::Aperture,
            "height" => Dial::Height,
            _ => Dial::Focus,
        };
        let act = commands::step_camera(self.now(), dial, up)?;
        self.make(act, during(visit))
    }

    /// Focuses where cloth and tallest top come out equally sharp.
    ///
    /// # Errors
    /// None so far as nothing there is locked.
    pub fn focus_evenly(&mut self) -> Result<JsValue, JsError> {
        let act = commands::focus_evenly(self.now())?;
        self.make(act, Run::Alone)
    }

    /// Takes another camera.
    ///
    /// # Errors
    /// When nobody knows that format.
    pub fn set_format(&mut self, format: JsValue) -> Result<JsValue, JsError> {
        let format: Format = asked(format)?;
        let act = commands::set_format(self.now(), format)?;
        self.make(act, Run::Alone)
    }

    /// Sets the pixels of its picture; 0 and 0 for those of the usual model.
    ///
    /// # Errors
    /// When there are too many or too few.
    pub fn set_pixels(&mut self, long: i32, short: i32) -> Result<JsValue, JsError> {
        let own = [long, short];
        let act = commands::set_pixels(self.now(), (own != [0, 0]).then_some(own))?;
        self.make(act, Run::Alone)
    }

    /// Has a lens at hand, or no longer.
    ///
    /// # Errors
    /// When there are as many as a layout may hold.
    pub fn keep_lens(&mut self, focal: i32) -> Result<JsValue, JsError> {
        let act = commands::keep_lens(self.now(), focal)?;
        self.make(act, Run::Alone)
    }
}
