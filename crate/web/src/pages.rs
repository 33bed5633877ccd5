//! The drawing on the page and what leaves it: picture, link, code.
use planner::layout::{Id, Layout};
use serde::Serialize;
use svg::Document;
use svg::node::element::{Group, Rectangle, Text};
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::compose::{self, Shown, View, cropped, framed};
use crate::dom;
use crate::objects::object;

use crate::sheet::Sheet;

/// A code as one path of unit squares.
#[derive(Serialize)]
struct Code {
    size: usize,
    path: String,
}

/// Findings whose marks are drawn when none is asked for.
const PRESSING: usize = 3;
/// Pixels across an exported picture, which sets the weight of its lines.
const EXPORTED: f64 = 1_100.0;

/// The layout under a title, with version and date, and its numbered list.
fn picture(layout: &Layout) -> String {
    let [x, y, width, height] = framed(layout);
    let px = width / EXPORTED;
    let view = View {
        per_pixel: px * 1.5,
        fine: true,
        crops: true,
        paper: "#f3ecdd".into(),
        ink: "#1f1915".into(),
        ..View::default()
    };
    let mut numbered: Vec<(u16, &str)> = layout
        .items
        .iter()
        .filter(|item| item.on.is_none())
        .map(|item| (item.number, item.name.as_str()))
        .collect();
    numbered.sort_unstable();
    numbered.dedup_by_key(|(number, _)| *number);
    let (margin, row) = (60.0 * px, 26.0 * px);
    let rows = numbered.len().div_ceil(2) as f64;
    let top = y - 150.0 * px;
    let whole = [
        x - margin,
        top,
        width + 2.0 * margin,
        height + 150.0 * px + 90.0 * px + rows * row + 40.0 * px,
    ];
    let text = |words: &str, at: [f64; 2], size: f64| {
        Text::new(words)
            .set("x", format!("{:.1}", at[0]))
            .set("y", format!("{:.1}", at[1]))
            .set("font-size", format!("{:.1}", size * px))
            .set(
                "font-family",
                "Palatino, 'Palatino Linotype', P052, 'Noto Serif', Georgia, serif",
            )
            .set("fill", "#1f1915")
    };
    let sheet = Rectangle::new()
        .set("x", whole[0])
        .set("y", whole[1])
        .set("width", whole[2])
        .set("height", whole[3]);
    let mut document = Document::new()
        .set("viewBox", whole.map(|side| format!("{side:.1}")).join(" "))
        .set("width", format!("{:.0}", whole[2] / px))
        .set("height", format!("{:.0}", whole[3] / px))
        .add(sheet.set("fill", "#f3ecdd"));
    for keyed in compose::groups(layout, &view) {
        let mut group = keyed.group;
        if let Some([dx, dy]) = keyed.transform {
            group = Group::new()
                .set("transform", format!("translate({dx:.1} {dy:.1})"))
                .add(group);
        }
        document = document.add(group);
    }
    // The world past the frame ends at the paper's margin.
    let blind = |x: f64, y: f64, width: f64, height: f64| {
        Rectangle::new()
            .set("x", x)
            .set("y", y)
            .set("width", width.max(0.0))
            .set("height", height.max(0.0))
            .set("fill", "#f3ecdd")
    };
    let end = y + height + 62.0 * px;
    document = document
        .add(blind(whole[0], top, whole[2], 92.0 * px))
        .add(blind(whole[0], end, whole[2], whole[1] + whole[3] - end));
    let revision = &layout.head.revision;
    let mut under = Vec::new();
    if revision.number > 0 {
        under.push(format!("version {}", revision.number));
    }
    if !revision.date.is_empty() {
        under.push(revision.date.clone());
    }
    document = document
        .add(text(&layout.head.title, [x, top + 56.0 * px], 40.0).set("font-style", "italic"));
    document = document.add(text(&under.join(" · "), [x, top + 84.0 * px], 18.0));
    for (place, (number, name)) in numbered.iter().enumerate() {
        let column = (place as f64 / rows).floor();
        let at = [
            x + column * width / 2.0,
            end + 30.0 * px + (place as f64 - column * rows) * row,
        ];
        document = document
            .add(text(&number.to_string(), at, 18.0).set("font-weight", "bold"))
            .add(text(name, [at[0] + 40.0 * px, at[1]], 18.0));
    }
    document.to_string()
}

#[wasm_bindgen]
impl Planner {
    /// Draws into `root` from here on, beginning with nothing.
    ///
    /// # Errors
    /// When `root` stands in no page.
    pub fn draw_into(&mut self, root: web_sys::Element) -> Result<(), JsValue> {
        self.sheet = Some(Sheet::new(root)?);
        Ok(())
    }

    /// Sets how the layout is drawn: mm to a pixel; hands of all exposures
    /// (-2), none (-1) or one counted from 0; the finding whose marks show,
    /// by key, or empty for the pressing ones; whether crops show.
    pub fn view(&mut self, per_pixel: f64, exposure: i32, marks: &str, crops: bool) {
        self.view.crops = crops;
        self.view.per_pixel = per_pixel;
        self.view.shown = match exposure {
            0.. => Shown::Nth(exposure as usize),
            -1 => Shown::None,
            _ => Shown::All,
        };
        marks.clone_into(&mut self.marks);
    }

    /// Brings the drawing to the layout; returns how many groups were made.
    ///
    /// # Errors
    /// When the page refuses a node.
    pub fn patch(&mut self) -> Result<u32, JsValue> {
        let key = std::mem::take(&mut self.marks);
        let findings = &self.reported().findings;
        let asked = |f: &&planner::readings::Finding| key.is_empty() || f.key == key;
        let shown = findings.iter().filter(asked);
        let marks: Vec<_> = shown.take(PRESSING).flat_map(|f| f.marks.clone()).collect();
        self.marks = key;
        self.view.marks = marks;
        let groups = compose::groups(self.history.layout(), &self.view);
        match &mut self.sheet {
            Some(sheet) => sheet.patch(groups),
            None => Ok(0),
        }
    }

    /// Draws what one crop keeps, or the whole frame for 0, into an empty
    /// `svg` element and sets what it shows.
    ///
    /// # Errors
    /// When the page refuses a node.
    pub fn draw_crop(&self, root: &web_sys::Element, crop: u16) -> Result<(), JsValue> {
        let layout = self.now();
        let [x, y, width, height] = cropped(layout, Id(crop)).unwrap_or_else(|| framed(layout));
        let whole = crop == 0;
        let view = View {
            per_pixel: width / if whole { 380.0 } else { 200.0 },
            clean: true,
            fine: false,
            ..View::default()
        };
        root.set_text_content(None);
        root.set_attribute("viewBox", &format!("{x:.1} {y:.1} {width:.1} {height:.1}"))?;
        let document = root
            .owner_document()
            .ok_or("the drawing stands in no page")?;
        let groups = compose::groups(layout, &view);
        for keyed in groups
            .into_iter()
            .filter(|keyed| whole || keyed.key != "tags")
        {
            let node = dom::element(&document, &keyed.group)?;
            if let Some([dx, dy]) = keyed.transform {
                node.set_attribute("transform", &format!("translate({dx:.1} {dy:.1})"))?;
            }
            root.append_child(&node)?;
        }
        Ok(())
    }

    /// The picture as a file that stands alone.
    #[must_use]
    pub fn picture(&self) -> String {
        picture(self.now())
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

    /// Where the lens stands over this frame and whether it fits, as the Fit
    /// reading says it: one figure, worked out once.
    #[must_use]
    pub fn lens_words(&mut self) -> String {
        let fit = self
            .reported()
            .findings
            .iter()
            .find(|f| f.key == "fit:ceiling");
        fit.map_or_else(String::new, |f| f.sentence.clone())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use planner::readings::{Study, report};
    use planner::starters::harbour_supper;

    #[test]
    fn the_camera_place_says_what_the_reading_says() {
        let layout = harbour_supper();
        let read = report(&Study::new(&layout), false).findings;
        let fit = read
            .iter()
            .find(|f| f.key == "fit:ceiling")
            .expect("always said");
        assert_eq!(
            Planner::of(layout).lens_words(),
            fit.sentence,
            "one figure, once"
        );
    }
}
