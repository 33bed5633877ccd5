//! The shelf: what the photographer owns, changed and listed.
use glam::DVec2;
use planner::catalogue;
use planner::layout::{Finish, Layout, LayoutId, Srgb, open};
use planner::papers::{pull, shelf_told};
use planner::shelf::{Beside, Gauge, MAX_COUNT, Rise, ShelfThing, measure, read, records};
use planner::words::say;
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::acts::spoken;
use crate::objects::object;

/// A thing as the page shows it.
#[derive(Serialize)]
struct Shown {
    name: String,
    /// The catalogue's name for what it is like.
    what: String,
    cloth: bool,
    size: [i32; 2],
    height: i32,
    colour: String,
    finish: Finish,
    count: u16,
    place: String,
}

/// A thing to be kept.
#[derive(Serialize)]
struct Kept {
    id: LayoutId,
    title: String,
    file: String,
    /// Whether the shelf has it already.
    there: bool,
}

/// What came of a list.
#[derive(Serialize)]
struct Read {
    good: Vec<Kept>,
    /// The line of each row that was not read, and why.
    bad: Vec<(u32, String)>,
    passed_over: Vec<String>,
}

fn identity(hex: &str) -> Result<LayoutId, JsError> {
    Ok(LayoutId(u64::from_str_radix(hex, 16)?))
}

fn shown(thing: &ShelfThing) -> Shown {
    let known = catalogue::prop(&thing.prop).map(|entry| entry.name);
    Shown {
        name: thing.name.clone(),
        what: known.unwrap_or(&thing.prop).into(),
        cloth: thing.is_linen(),
        size: thing.size,
        height: thing.height,
        colour: thing.colour.to_string(),
        finish: thing.finish,
        count: thing.count,
        place: thing.place.clone(),
    }
}

fn opened(file: &str) -> Result<Layout, JsError> {
    open(file).map_err(|problems| spoken(&problems))
}

#[wasm_bindgen]
impl Planner {
    /// Takes these files, kept under these identities, for the shelf, and tells
    /// what is in each; nothing for one that cannot be read.
    ///
    /// # Errors
    /// When the browser refuses to make it.
    pub fn set_shelf(&mut self, ids: Vec<String>, files: Vec<String>) -> Result<JsValue, JsError> {
        let one = |(id, file): (&String, &String)| {
            let mut kept = open(file).ok()?;
            kept.id = identity(id).ok()?;
            ShelfThing::of(&kept)
        };
        let all: Vec<Option<ShelfThing>> = ids.iter().zip(&files).map(one).collect();
        let told: Vec<_> = all.iter().map(|t| t.as_ref().map(shown)).collect();
        let told = object(&told)?;
        self.shelf = all.into_iter().flatten().collect();
        Ok(told)
    }

    /// What the shelf has of all the open layout needs, in a sentence; empty for
    /// an empty shelf.
    #[must_use]
    pub fn shelf_told(&self) -> String {
        shelf_told(&pull(self.now(), &self.shelf))
    }

    /// A thing of the catalogue in a file of its own under this identity, so
    /// wide and so deep, mm, as usual for 0; empty for what it does not have.
    ///
    /// # Errors
    /// When the identity is not 16 hex digits.
    pub fn shelf_new(
        &self,
        prop: &str,
        own: &str,
        width: i32,
        depth: i32,
    ) -> Result<String, JsError> {
        let thing = ShelfThing::usual(identity(own)?, prop);
        let kept = thing.and_then(|thing| thing.sized(width, depth).kept());
        Ok(kept.map_or_else(String::new, |kept| kept.to_json()))
    }

    /// How large a thing is in a photo, from what lies beside it: a `card`, a
    /// sheet of `a4` or `letter`, or a `coin` of this diameter, mm. `marks` are
    /// x and y of four taps on that, `taps` those on the thing, px; its rim is so
    /// high and the lens so high above it, mm, 0 where nobody says.
    ///
    /// # Errors
    /// When the taps say nothing, in words.
    #[expect(
        clippy::too_many_arguments,
        reason = "numbers cross more cheaply than an object"
    )]
    pub fn measured(
        &self,
        gauge: &str,
        diameter: f64,
        straight: bool,
        marks: &[f64],
        taps: &[f64],
        rim: f64,
        lens: f64,
    ) -> Result<JsValue, JsError> {
        let places = |numbers: &[f64]| -> Vec<DVec2> {
            numbers.chunks_exact(2).map(DVec2::from_slice).collect()
        };
        let gauge = Gauge::of(gauge, diameter);
        let gauge = gauge.ok_or_else(|| JsError::new(&say("measured-gauge", &[])))?;
        let marks = <[DVec2; 4]>::try_from(places(marks));
        let marks = marks.map_err(|_| JsError::new(&say("measured-line", &[])))?;
        let beside = Beside {
            gauge,
            marks,
            straight,
        };
        let rise = (rim > 0.0).then_some(Rise { rim, lens });
        let found = measure(&beside, &places(taps), rise, self.now().head.units);
        object(&found.map_err(|why| JsError::new(&why))?)
    }

    /// The file of a thing with its `name`, `place`, `colour` or `finish`
    /// changed to a text, its `count` or `height` to a number or its `size` to
    /// two, mm.
    ///
    /// # Errors
    /// Every problem of the file.
    pub fn shelf_changed(
        &self,
        file: &str,
        what: &str,
        text: &str,
        one: i32,
        two: i32,
    ) -> Result<String, JsError> {
        let mut kept = opened(file)?;
        if let Some(mut thing) = ShelfThing::of(&kept) {
            match what {
                "name" => thing.name = text.into(),
                "place" => thing.place = text.into(),
                "colour" => thing.colour = Srgb::parse(text).unwrap_or(thing.colour),
                "finish" => {
                    thing.finish = match text {
                        "satin" => Finish::Satin,
                        "gloss" => Finish::Gloss,
                        "clear" => Finish::Clear,
                        "liquid" => Finish::Liquid,
                        _ => Finish::Matt,
                    }
                }
                "count" => thing.count = one.clamp(1, MAX_COUNT.into()) as u16,
                "height" => thing.height = one,
                "size" => thing.size = [one, two],
                _ => {}
            }
            thing.write(&mut kept);
        }
        Ok(kept.to_json())
    }

    /// The shelf as a list, its heading first.
    ///
    /// # Errors
    /// When the browser refuses to make it.
    pub fn shelf_rows(&self) -> Result<JsValue, JsError> {
        object(&records(&self.shelf, self.now().head.units))
    }

    /// What rows of a list say, to be kept or left: its heading, the cells of all
    /// rows one after another, the line each stands on, and identities for what
    /// is new. A row with the identity of a thing of the shelf changes that
    /// thing, `files` being those it has.
    ///
    /// # Errors
    /// When no column says what a thing is, in words.
    pub fn shelf_read(
        &self,
        head: Vec<String>,
        cells: Vec<String>,
        lines: Vec<u32>,
        fresh: Vec<String>,
        files: Vec<String>,
    ) -> Result<JsValue, JsError> {
        let rows = cells.chunks(head.len().max(1)).map(<[String]>::to_vec);
        let rows: Vec<(u32, Vec<String>)> = lines.into_iter().zip(rows).collect();
        let units = self.now().head.units;
        let taken = read(&head, &rows, units, &self.shelf);
        let taken = taken.map_err(|why| JsError::new(&why))?;
        let changes = taken.good.iter().any(|row| row.there);
        let files = files.iter().filter(|_| changes);
        let mut own: Vec<Layout> = files.filter_map(|file| open(file).ok()).collect();
        let mut fresh = fresh.iter();
        let mut good = Vec::new();
        for row in taken.good {
            let mut thing = row.thing;
            let kept = if row.there {
                let at = own.iter().position(|kept| kept.id == thing.id);
                let mut kept = at.map(|at| own.swap_remove(at));
                if let Some(kept) = &mut kept {
                    thing.write(kept);
                }
                kept
            } else {
                thing.id = identity(fresh.next().map_or("", String::as_str))?;
                thing.kept()
            };
            good.extend(kept.map(|kept| Kept {
                id: kept.id,
                title: kept.head.title.clone(),
                file: kept.to_json(),
                there: row.there,
            }));
        }
        let bad = taken.bad.into_iter().map(|b| (b.line, b.why)).collect();
        object(&Read {
            good,
            bad,
            passed_over: taken.passed_over,
        })
    }
}
