//! What can be put on a table, to be looked through and drawn small.
use planner::catalogue::{self, Entry, LinenEntry, SurfaceEntry};
use planner::drawing::{Cut, View, alone, cut, sample, swatch, view_box};
use planner::layout::Units;
use planner::words::length;
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::acts::spoken;
use crate::objects::object;
use crate::pages::on_page;
use crate::sheet::Sheet;

/// Pixels across a drawing one chooses a thing by, and a whole table.
const SMALL: f64 = 52.0;
const TABLE: f64 = 150.0;

/// Something of the catalogue; a group of things has no size.
#[derive(Serialize)]
struct Found {
    prop: &'static str,
    name: &'static str,
    size: String,
}

fn across(extent: [i32; 2], units: Units) -> String {
    let [w, d] = extent.map(|mm| length(f64::from(mm), units));
    if w == d { w } else { [w, d].join(" × ") }
}

fn thing(entry: &Entry, units: Units) -> Found {
    Found {
        prop: entry.id,
        name: entry.name,
        size: across(entry.size.extent(), units),
    }
}

fn cloth(linen: &LinenEntry, units: Units) -> Found {
    Found {
        prop: linen.name,
        name: linen.name,
        size: across(linen.size, units),
    }
}

fn plain(prop: &'static str, name: &'static str) -> Found {
    Found {
        prop,
        name,
        size: String::new(),
    }
}

/// Puts a drawing into an empty `svg` element and sets what it shows.
fn put(root: &web_sys::Element, cut: Option<Cut>) -> Result<bool, JsValue> {
    let Some(cut) = cut else {
        return Ok(false);
    };
    root.set_attribute("viewBox", &view_box(cut.area))?;
    Sheet::new(root.clone())?.patch(cut.groups)?;
    Ok(true)
}

#[wasm_bindgen]
impl Planner {
    /// What fits the words, best first; linens too.
    ///
    /// # Errors
    /// When the browser refuses to make it.
    pub fn search(&self, words: &str) -> Result<JsValue, JsError> {
        let units = self.now().head.units;
        let wanted = words.to_ascii_lowercase();
        let fits = |linen: &&LinenEntry| {
            let mut words = wanted.split_whitespace();
            words.all(|word| linen.name.contains(word))
        };
        let linens = catalogue::linens().iter().filter(fits);
        let mut found: Vec<Found> = linens.map(|linen| cloth(linen, units)).collect();
        let things = catalogue::search(words);
        found.extend(things.into_iter().map(|entry| thing(entry, units)));
        object(&found)
    }

    /// The groups of the catalogue.
    ///
    /// # Errors
    /// When the browser refuses to make it.
    pub fn groups(&self) -> Result<JsValue, JsError> {
        let groups = catalogue::groups().iter();
        let groups: Vec<Found> = groups.map(|g| plain(g.id, g.name)).collect();
        object(&groups)
    }

    /// Everything of a group, as it is offered.
    ///
    /// # Errors
    /// When the browser refuses to make it.
    pub fn of_group(&self, group: &str) -> Result<JsValue, JsError> {
        let units = self.now().head.units;
        let Some(group) = catalogue::group_of_id(group) else {
            return object(&[(); 0]);
        };
        let props = catalogue::props().iter().chain(catalogue::foods());
        let mut found: Vec<Found> = props
            .filter(|entry| group.has(entry))
            .map(|entry| thing(entry, units))
            .collect();
        if group.has_linens() {
            found.extend(catalogue::linens().iter().map(|linen| cloth(linen, units)));
        }
        object(&found)
    }

    /// What the catalogue has under these ids, in their order; those it does
    /// not know are left out.
    ///
    /// # Errors
    /// When the browser refuses to make it.
    pub fn known(&self, ids: Vec<String>) -> Result<JsValue, JsError> {
        let units = self.now().head.units;
        let one = |id: &String| {
            let linen = || catalogue::linens().iter().find(|linen| linen.name == id);
            catalogue::prop(id)
                .map(|entry| thing(entry, units))
                .or_else(|| linen().map(|linen| cloth(linen, units)))
        };
        let found: Vec<Found> = ids.iter().filter_map(one).collect();
        object(&found)
    }

    /// Dishes offered for a new table.
    ///
    /// # Errors
    /// When the browser refuses to make it.
    pub fn dishes(&self) -> Result<JsValue, JsError> {
        object(&planner::commands::offers())
    }

    /// Surfaces a spread can be laid on.
    ///
    /// # Errors
    /// When the browser refuses to make it.
    pub fn surfaces(&self) -> Result<JsValue, JsError> {
        let one = |surface: &SurfaceEntry| plain(surface.id, surface.name);
        let surfaces: Vec<Found> = catalogue::surfaces().iter().map(one).collect();
        object(&surfaces)
    }

    /// Draws a thing of the catalogue into an empty `svg` element; false when
    /// there is no such thing.
    ///
    /// # Errors
    /// When the page refuses a node.
    pub fn draw_sample(&self, root: &web_sys::Element, prop: &str) -> Result<bool, JsValue> {
        put(root, sample(prop, SMALL, &on_page()))
    }

    /// Draws a piece of a surface into an empty `svg` element; false when there
    /// is no such surface.
    ///
    /// # Errors
    /// When the page refuses a node.
    pub fn draw_swatch(&self, root: &web_sys::Element, prop: &str) -> Result<bool, JsValue> {
        put(root, swatch(prop, SMALL, &on_page()))
    }

    /// Draws what a file holds into an empty `svg` element: a kept thing
    /// without its table, or all of the frame of a `whole` table.
    ///
    /// # Errors
    /// Every problem of the file, or when the page refuses a node.
    pub fn draw_file(
        &self,
        root: &web_sys::Element,
        file: &str,
        whole: bool,
    ) -> Result<bool, JsValue> {
        let layout = planner::layout::open(file).map_err(|problems| spoken(&problems))?;
        let drawn = if whole {
            // Tags keep their size on screen: here they would hide the food.
            let plain = View {
                tags: false,
                ..on_page()
            };
            cut(&layout, None, TABLE, &plain)
        } else {
            alone(&layout, SMALL, &on_page())
        };
        put(root, drawn)
    }
}
