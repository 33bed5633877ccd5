//! The whole layout, and how a file becomes one.
use serde::{Serialize, Serializer};
use serde_json::{Map, Value};

use super::camera::Camera;
use super::check::references;
use super::crop::Crop;
use super::dates::Dates;
use super::exposure::Exposure;
use super::head::{Accepted, Group, Head};
use super::item::Item;
use super::light::{Card, Light};
use super::limits::{
    MAX_ACCEPTED, MAX_CARDS, MAX_CROPS, MAX_EXPOSURES, MAX_GROUPS, MAX_HANDS, MAX_ITEMS,
    MAX_LINENS, MAX_PEOPLE, MAX_SEATS,
};
use super::linen::Linen;
use super::people::{Hand, Person};
use super::problem::{Problem, ProblemKind};
use super::read::{Fields, Log, told};
use super::rig::Rig;
use super::seat::Seat;
use super::strict;
use super::table::{Floor, Frame, Table};
use super::text::to_lines;
use super::value::{Extra, LayoutId};

/// The word that marks a layout file.
pub const FORMAT: &str = "overspread-layout";
/// The version of the format written here; it is settled, and version 0, from
/// before it was, is read alike.
pub const VERSION: u32 = 1;

/// One laid table with everything planned about it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Layout {
    #[serde(serialize_with = "write_format")]
    format: (),
    /// The version it is saved in: that of a newer planner is kept.
    version: u32,
    /// Its identity; a kept copy gets a new one.
    pub id: LayoutId,
    /// The layout it is a copy of.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub based_on: Option<LayoutId>,
    /// Title, look, version.
    #[serde(flatten)]
    pub head: Head,
    /// The table.
    pub table: Table,
    /// The floor.
    pub floor: Floor,
    /// The camera's frame.
    pub frame: Frame,
    /// The camera.
    pub camera: Camera,
    /// What holds it.
    pub rig: Rig,
    /// The light.
    pub light: Light,
    /// Cards that bounce or block it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub cards: Vec<Card>,
    /// Groups of items.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub groups: Vec<Group>,
    /// Linens, bottom first.
    pub linens: Vec<Linen>,
    /// Items; order is paint order within one support.
    pub items: Vec<Item>,
    /// Where people sit or stand.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub seats: Vec<Seat>,
    /// People, lettered in order.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub people: Vec<Person>,
    /// Hands.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub hands: Vec<Hand>,
    /// Exposures, hand exposures counted in order.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub exposures: Vec<Exposure>,
    /// Crops.
    pub crops: Vec<Crop>,
    /// When it is wanted.
    #[serde(skip_serializing_if = "Dates::is_empty")]
    pub dates: Dates,
    /// Findings the user accepts.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub intended: Vec<Accepted>,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde gives a reference")]
fn write_format<S: Serializer>(_: &(), s: S) -> Result<S::Ok, S::Error> {
    s.serialize_str(FORMAT)
}

/// Reads a layout file.
///
/// # Errors
/// All problems found, each with its path; never a panic.
pub fn open(text: &str) -> Result<Layout, Vec<Problem>> {
    let mut log = Log::default();
    let value = strict::parse(text, &mut |p| log.push(p)).map_err(|p| vec![p])?;
    sound(value, log)
}

/// A layout from the tree of its file, checked as a file is.
///
/// # Errors
/// All problems found, each with its path; never a panic.
pub(crate) fn read_tree(value: Value) -> Result<Layout, Vec<Problem>> {
    sound(value, Log::default())
}

fn sound(value: Value, mut log: Log) -> Result<Layout, Vec<Problem>> {
    let layout = read_layout(&mut Fields::new(&mut log, String::new(), value));
    let mut problems = log.told();
    if problems.is_empty() {
        problems = told(references(&layout), 0);
    }
    if problems.is_empty() {
        Ok(layout)
    } else if layout.is_newer() {
        // What is wrong by the rules of this version may be right by its own.
        let found = format!("version {}", layout.version);
        let allowed = format!("version {VERSION} or older; open it with a newer planner");
        let problem = Problem::new(ProblemKind::Version, "version", &found, &allowed);
        Err(vec![problem])
    } else {
        Err(problems)
    }
}

fn read_layout(f: &mut Fields<'_>) -> Layout {
    let format = f.name("format");
    if format != FORMAT {
        f.bad(ProblemKind::Syntax, "format", &format, FORMAT);
    }
    let version = f.int("version", 0..=1_000_000);
    let version = f.required("version", version, 0) as u32;
    let id = identity(f, "id");
    let based_on = identity(f, "based_on");
    let head = Head::read(f);
    let table = f.object("table", Table::read);
    let blank = Fields::blank(Table::read);
    let table = f.required("table", table, blank);
    let frame = f.object("frame", Frame::read);
    let usual = Fields::blank(Frame::read);
    Layout {
        format: (),
        version: version.max(VERSION),
        id: f.required("id", id, LayoutId(0)),
        based_on,
        head,
        floor: f.object("floor", Floor::read).unwrap_or_default(),
        frame: f.required("frame", frame, usual),
        table,
        camera: f.object("camera", Camera::read).unwrap_or_default(),
        rig: f.object("rig", Rig::read).unwrap_or_default(),
        light: f.object("light", Light::read).unwrap_or_default(),
        cards: f.list("cards", MAX_CARDS, Card::read),
        groups: f.list("groups", MAX_GROUPS, Group::read),
        linens: f.list("linens", MAX_LINENS, Linen::read),
        items: f.list("items", MAX_ITEMS, Item::read),
        seats: f.list("seats", MAX_SEATS, Seat::read),
        people: f.list("people", MAX_PEOPLE, Person::read),
        hands: f.list("hands", MAX_HANDS, Hand::read),
        exposures: f.list("exposures", MAX_EXPOSURES, Exposure::read),
        crops: f.list("crops", MAX_CROPS, Crop::read),
        dates: f.object("dates", Dates::read).unwrap_or_default(),
        intended: f.list("intended", MAX_ACCEPTED, Accepted::read),
        extra: f.extra(),
    }
}

fn identity(f: &mut Fields<'_>, key: &str) -> Option<LayoutId> {
    let text = f.name(key);
    if text.is_empty() {
        return None;
    }
    let hex = text.len() == 16 && text.bytes().all(|b| b.is_ascii_hexdigit());
    let id = if hex {
        u64::from_str_radix(&text, 16).ok()
    } else {
        None
    };
    if id.is_none() {
        f.bad(ProblemKind::Value, key, &text, "16 hex digits");
    }
    id.map(LayoutId)
}

impl Fields<'_> {
    /// What `read` makes of no fields at all, its problems thrown away.
    fn blank<T>(read: impl FnOnce(&mut Fields<'_>) -> T) -> T {
        let mut log = Log::default();
        read(&mut Fields::new(
            &mut log,
            String::new(),
            Value::Object(Map::new()),
        ))
    }
}

impl Layout {
    /// Whether a newer planner wrote it: it can be looked at, but saved here it
    /// might lose what only the newer one knows.
    #[must_use]
    pub const fn is_newer(&self) -> bool {
        self.version > VERSION
    }

    /// An empty board: nothing laid, a 3:2 frame inside it.
    #[must_use]
    pub fn empty(id: LayoutId) -> Self {
        let text = format!(
            r#"{{"format":"{FORMAT}","version":{VERSION},"id":"{id}","table":{{"width":1200,"depth":900}},
            "frame":{{"at":[600,450],"width":1050}}}}"#
        );
        let mut layout = open(&text).unwrap_or_else(|_| unreachable!("the text above is a layout"));
        layout.table.surface.prop = "oak".into();
        layout
    }

    /// The canonical file: pretty JSON, fields in a fixed order.
    #[must_use]
    pub fn to_json(&self) -> String {
        to_lines(self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::MAX_PROBLEMS;

    #[test]
    fn an_empty_board_survives_saving_and_opening() {
        let layout = Layout::empty(LayoutId(7));
        let text = layout.to_json();
        let again = open(&text).expect("own file opens");
        assert_eq!(again, layout, "same layout");
        assert_eq!(again.to_json(), text, "same bytes");
    }

    #[test]
    fn all_problems_come_at_once_with_their_paths() {
        let text = r##"{"format":"overspread-layout","version":0,"id":"0000000000000001",
          "table":{"width":-5,"surface":{"colour":"red"}},"frame":{"at":[0,0],"width":1e999},
          "items":[{"id":1,"at":[1.5,0],"size":{"shape":"star"}}]}"##;
        let problems = open(text).expect_err("it is bad");
        assert_eq!(
            problems[0].kind,
            ProblemKind::Syntax,
            "1e999 is no JSON number: {problems:?}"
        );
        let problems = open(&text.replace("1e999", "true")).expect_err("it is bad");
        let paths: Vec<&str> = problems.iter().map(|p| p.path.as_str()).collect();
        assert_eq!(
            paths,
            [
                "table.width",
                "table.surface.colour",
                "frame.width",
                "items[0].at",
                "items[0].size.shape"
            ],
            "{problems:?}"
        );
    }

    #[test]
    fn a_file_of_a_newer_planner_is_opened_and_its_version_kept() {
        let text = Layout::empty(LayoutId(7)).to_json();
        let newer = text.replacen("\"version\": 1", "\"version\": 9", 1);
        let layout = open(&newer).expect("it can be looked at");
        assert!(layout.is_newer() && !open(&text).expect("own").is_newer());
        assert_eq!(layout.to_json(), newer, "never written down to ours");
        let odd = newer.replacen("\"normal\"", "\"moonlit\"", 1);
        let problems = open(&odd).expect_err("a word of its own");
        let kinds: Vec<ProblemKind> = problems.iter().map(|p| p.kind).collect();
        assert_eq!(kinds, [ProblemKind::Version], "{problems:?}");
        let older = text.replacen("\"version\": 1", "\"version\": 0", 1);
        assert_eq!(open(&older).expect("read alike").to_json(), text);
    }

    #[test]
    fn problems_beyond_the_limit_are_counted_in_the_last() {
        let bad = |count: usize| {
            let items = vec![r#"{"id":"x"}"#; count].join(",");
            let text = Layout::empty(LayoutId(7)).to_json();
            let text = text.replacen("\"items\": []", &format!("\"items\": [{items}]"), 1);
            open(&text).expect_err("every item is bad")
        };
        // Each of these items has three problems: id, place and size.
        let few = bad(33);
        assert_eq!(few.len(), 99, "all are told");
        assert!(few.iter().all(|p| p.path.starts_with("items[")), "{few:?}");
        let many = bad(40);
        assert_eq!(many.len(), MAX_PROBLEMS, "no more than the limit");
        assert_eq!(many[99].found, "21 more problems", "120 less 99 told");
        let doubled = vec![r#"{"id":1,"at":[0,0],"size":{"shape":"disc","diameter":9}}"#; 150];
        let text = Layout::empty(LayoutId(7)).to_json();
        let items = format!("\"items\": [{}]", doubled.join(","));
        let many = open(&text.replacen("\"items\": []", &items, 1)).expect_err("doubled ids");
        // 149 doubled ids, and the next id is taken.
        assert_eq!(many[99].found, "51 more problems", "150 less 99 told");
    }

    #[test]
    fn unknown_fields_are_kept() {
        let mut text = Layout::empty(LayoutId(7)).to_json();
        text = text.replacen(
            "\"table\": {",
            "\"later\": [1], \"table\": { \"legs\": 4,",
            1,
        );
        let layout = open(&text).expect("opens");
        assert_eq!(layout.extra["later"], serde_json::json!([1]), "top level");
        assert_eq!(
            open(&layout.to_json()).expect("again"),
            layout,
            "carried through"
        );
    }

    #[test]
    fn doubled_keys_deep_nesting_and_cut_text_are_refused() {
        let good = Layout::empty(LayoutId(7)).to_json();
        let doubled = good.replacen('{', "{\"id\":\"0000000000000002\",", 1);
        assert!(open(&doubled).is_err(), "doubled id key");
        assert!(open(&"[".repeat(10_000)).is_err(), "deep");
        for cut in 0..good.len() {
            assert!(
                open(&good[..cut]).is_err(),
                "cut at {cut} of {}",
                good.len()
            );
        }
    }
}
