//! Mask guides, a few rows at a time.
use planner::drawing::guide_sheet;
use planner::exposures::{Guide, OVERVIEW, guides};
use planner::layout::Id;
use planner::optics::Pixels;
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::objects::object;

/// What is to be made.
#[derive(Serialize)]
struct Wanted {
    /// Pixels across and down.
    pixels: [i32; 2],
    /// Whether the layout says so many.
    told: bool,
    /// The file of the sheet that comes with them.
    sheet: &'static str,
    /// The lowest first.
    files: Vec<File>,
}

#[derive(Serialize)]
struct File {
    exposure: Id,
    name: String,
}

/// One guide, from its top down.
#[wasm_bindgen]
pub struct GuideRows {
    guide: Guide,
    next: usize,
}

#[wasm_bindgen]
impl GuideRows {
    /// The next rows, so many or what is left, each as a PNG has it: a byte
    /// that says that what follows is not filtered, then the pixels.
    #[must_use]
    pub fn next(&mut self, count: usize) -> Vec<u8> {
        let [wide, high] = self.guide.size();
        let rows = self.next..(self.next + count).min(high);
        self.next = rows.end;
        let mut out = vec![0; rows.len() * (wide + 1)];
        for (y, line) in rows.zip(out.chunks_exact_mut(wide + 1)) {
            self.guide.row(y, &mut line[1..]);
        }
        out
    }
}

#[wasm_bindgen]
impl Planner {
    /// Which guides there are; without files when there are none.
    ///
    /// # Errors
    /// When the browser refuses to make the object.
    pub fn guides(&self) -> Result<JsValue, JsError> {
        let Pixels { size, told, .. } = Pixels::of(self.now());
        let files = guides(self.now()).into_iter();
        object(&Wanted {
            pixels: size,
            told,
            sheet: OVERVIEW,
            files: files
                .map(|f| File {
                    exposure: f.exposure,
                    name: f.name,
                })
                .collect(),
        })
    }

    /// The guide of an exposure; nothing when it has none.
    #[must_use]
    pub fn guide(&self, exposure: u16) -> Option<GuideRows> {
        let guide = Guide::new(self.now(), Id(exposure))?;
        Some(GuideRows { guide, next: 0 })
    }

    /// The sheet that shows where each guide goes, as a file that stands alone;
    /// nothing when there are none.
    #[must_use]
    pub fn guide_sheet(&self) -> Option<String> {
        guide_sheet(self.now())
    }
}
