//! The picture of a link and nothing else: a client on a slow network sees it
//! while the core is still on its way.
use planner::drawing::{View, cut_file};
use planner::link::unlink;
use planner::optics;
use wasm_bindgen::prelude::*;

/// Pixels across the picture, as on the client's page.
const ACROSS: f64 = 380.0;

/// What a link shows at first sight.
#[wasm_bindgen]
pub struct Early {
    title: String,
    picture: String,
}

#[wasm_bindgen]
impl Early {
    /// Reads a link; nothing of what holds no layout, which the core will say
    /// plainly.
    #[must_use]
    pub fn of(link: &str) -> Option<Early> {
        let layout = unlink(link).ok()?.layout;
        let view = View {
            eye: optics::View::of(&layout),
            ..View::default()
        };
        Some(Self {
            picture: cut_file(&layout, None, ACROSS, &view)?,
            title: layout.head.title,
        })
    }

    /// What the table is called.
    #[wasm_bindgen(getter)]
    #[must_use]
    pub fn title(&self) -> String {
        self.title.clone()
    }

    /// The picture as an SVG that stands alone.
    #[wasm_bindgen(getter)]
    #[must_use]
    pub fn picture(&self) -> String {
        self.picture.clone()
    }
}
