//! Crops: what does each placement cut, and by how many centimetres?
//!
//! Plane geometry in the picture's own directions: outline of each thing, as
//! the lens sees it, against the trim, the bleed round it, the safe margin within it and the
//! gutter strip centred on the fold. Print measures are carried to the table
//! by the crop's width over the print's. Arithmetic throughout.
mod cut;
mod delivery;
mod finer;
mod gutter;
mod print;
mod slide;
#[cfg(test)]
mod tests;

use glam::DVec2;

use super::finding::{Finding, Mark, Remedy};
use super::lean::tops;
use super::rules::Rule;
use super::study::Study;
use crate::edit::Edit;
use crate::layout::{Crop, Id, Layout, Point, Role};
use crate::scene::crop_outline;
use crate::shape::{Bounds, Region, difference, rect};
use crate::words::say;

pub(super) use cut::{Standing, standing};

/// The findings of all crops.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let crops = study.layout().crops.iter();
    crops.flat_map(|crop| one(study, crop, settled)).collect()
}

fn one(study: &Study<'_>, crop: &Crop, settled: bool) -> Vec<Finding> {
    let placed = Placed::of(study.layout(), crop);
    let mut out = cut::read(study, &placed, settled);
    out.extend(gutter::read(study, &placed, settled));
    out.extend(print::read(study, &placed, settled));
    out.extend(delivery::read(study, &placed, settled));
    out.extend(tops(study, crop, &placed.kept(), settled));
    out
}

/// A crop in the picture's own directions.
struct Placed<'a> {
    layout: &'a Layout,
    crop: &'a Crop,
    /// The trim.
    trim: Bounds,
    /// The frame it is cut from.
    frame: Bounds,
}

impl<'a> Placed<'a> {
    fn of(layout: &'a Layout, crop: &'a Crop) -> Self {
        let frame = &layout.frame;
        let size = DVec2::new(f64::from(frame.width), frame.height());
        Self {
            layout,
            crop,
            trim: about(
                upright(layout, crop.at.vec()),
                DVec2::from_array(crop.extent()),
            ),
            frame: about(upright(layout, frame.at.vec()), size),
        }
    }

    /// From where to where the gutter lies across the picture.
    fn strip(&self) -> Option<[f64; 2]> {
        let scale = self.crop.print_scale().filter(|_| self.crop.gutter > 0)?;
        let half = f64::from(self.crop.gutter) * scale * 0.5;
        let fold = self.trim.centre().x;
        Some([fold - half, fold + half])
    }

    /// The area meant for type.
    fn copy(&self) -> Option<Bounds> {
        let area = self.crop.copy.as_ref()?.area;
        let [dx, dy, width, depth] = [area.dx, area.dy, area.width, area.depth].map(f64::from);
        let at = self.trim.centre() + DVec2::new(dx, dy);
        Some(about(at, DVec2::new(width, depth)))
    }

    /// Items this crop has to show whole: those it must, and heroes. Food is
    /// left to the dish it lies in.
    fn kept(&self) -> Vec<Id> {
        let items = &self.layout.items;
        let wanted = |id: Id| {
            let hero = items.iter().any(|i| i.id == id && i.role == Role::Hero);
            hero || self.crop.must_show.contains(&id)
        };
        let on_wanted = |mut id: Id| {
            for _ in 0..items.len() {
                match items.iter().find(|i| i.id == id).and_then(|i| i.on) {
                    Some(below) if wanted(below) => return true,
                    Some(below) => id = below,
                    None => break,
                }
            }
            false
        };
        let ids = items.iter().map(|i| i.id);
        ids.filter(|id| wanted(*id) && !on_wanted(*id)).collect()
    }

    /// A finding about this crop.
    fn finding(
        &self,
        rule: &'static Rule,
        sort: &str,
        state: (super::State, u8),
        figure: f64,
        things: &[Id],
    ) -> Finding {
        let mut about = things.to_vec();
        about.push(self.crop.id);
        let key = format!("crops:{}:{sort}", self.crop.id.0);
        Finding::by(rule, key, state, figure, about)
    }

    /// A mark over a thing's outline, less what the crop shows of it.
    fn lost(&self, outline: &[DVec2], label: &str) -> Vec<Mark> {
        let trim = crop_outline(self.layout, self.crop);
        let left = Region::from_polygon(outline)
            .and_then(|thing| difference(&thing, &[&Region::from_polygon(&trim)?]));
        overruns(&left.unwrap_or_default(), label)
    }
}

/// Marks over every part of an area.
fn overruns(area: &Region, label: &str) -> Vec<Mark> {
    let mark = |ring: &Vec<DVec2>| Mark::Overrun {
        outline: ring.clone(),
        label: label.into(),
    };
    area.rings().iter().map(mark).collect()
}

/// A place on the table turned so that the picture is upright.
fn upright(layout: &Layout, p: DVec2) -> DVec2 {
    let (sin, cos) = libm::sincos(-layout.frame.turn.radians());
    DVec2::new(cos, sin).rotate(p)
}

/// An upright place back on the table.
fn laid_down(layout: &Layout, p: DVec2) -> DVec2 {
    let (sin, cos) = libm::sincos(layout.frame.turn.radians());
    DVec2::new(cos, sin).rotate(p)
}

/// An upright box as an outline on the table.
fn on_table(layout: &Layout, area: Bounds) -> Vec<DVec2> {
    let (centre, turn) = (
        laid_down(layout, area.centre()),
        layout.frame.turn.degrees(),
    );
    rect(centre, area.size(), 0.0, turn, crate::shape::CHORD_ERROR)
}

fn about(at: DVec2, size: DVec2) -> Bounds {
    Bounds {
        min: at - size * 0.5,
        max: at + size * 0.5,
    }
}

/// The upright box round an outline on the table.
fn boxed(layout: &Layout, outline: &[DVec2]) -> Option<Bounds> {
    let upright: Vec<DVec2> = outline.iter().map(|p| upright(layout, *p)).collect();
    Bounds::around(&upright)
}

/// The outline of a thing or hand as the lens sees it, whatever hides it;
/// `None` for what there is not and what the walls of its vessel hide.
fn shown<'a>(study: &'a Study<'_>, id: Id) -> Option<&'a [DVec2]> {
    let outlines = study.scene().touchable.iter();
    let mut own = outlines.filter(|(owner, _)| *owner == id);
    own.next().map(|(_, outline)| outline.as_slice())
}

/// The upright box round a thing as the lens sees it.
fn item_box(study: &Study<'_>, id: Id) -> Option<Bounds> {
    boxed(study.layout(), shown(study, id)?)
}

/// What presses in these findings, and how much.
fn pressing(findings: impl Iterator<Item = Finding>) -> Vec<(String, f64)> {
    let asks = findings.filter(Finding::is_pressing);
    asks.map(|f| (f.key.clone(), f.cost())).collect()
}

/// Whether a change spoils a crop: something presses that did not before, or
/// presses more.
pub(super) fn spoils(before: &Study<'_>, after: &Layout) -> bool {
    let was = pressing(read(before, false).into_iter());
    let is = pressing(read(&before.changed(after), false).into_iter());
    is.iter().any(|now| is_worse(&was, now))
}

fn is_worse(was: &[(String, f64)], (key, figure): &(String, f64)) -> bool {
    let then = was.iter().find(|(k, _)| k == key);
    then.is_none_or(|(_, f)| *figure > f + 0.5)
}

/// The remedy that puts `after` in place of this crop, when it cures `finding`
/// and spoils nothing else about the crop.
fn cured(
    study: &Study<'_>,
    finding: &Finding,
    after: Crop,
    words: impl FnOnce(&Placed<'_>) -> (String, String),
) -> Option<Remedy> {
    let before = study.layout();
    let mut layout = before.clone();
    let place = layout.crops.iter().position(|c| c.id == after.id)?;
    layout.crops[place] = after;
    let (old, new) = (&before.crops[place], &layout.crops[place]);
    let was = pressing(one(study, old, false).into_iter());
    // A crop changes nothing of what the lens sees.
    let is = pressing(one(study, new, false).into_iter());
    if is
        .iter()
        .any(|now| now.0 == finding.key || is_worse(&was, now))
    {
        return None;
    }
    let (act, predicted) = words(&Placed::of(before, new));
    Some(Remedy {
        act,
        predicted,
        after: 0.0,
        edit: Edit::between(before, &layout),
    })
}

/// This crop with its centre at an upright place.
fn moved(layout: &Layout, crop: &Crop, to: DVec2) -> Crop {
    Crop {
        at: Point::nearest(laid_down(layout, to)),
        ..crop.clone()
    }
}

/// How a working line names a thing and its figure.
fn line(study: &Study<'_>, id: Id, figure: &str) -> String {
    let args = [
        ("thing", crate::words::Arg::Name(study.name(id))),
        ("figure", crate::words::Arg::Text(figure.into())),
    ];
    say("working-line", &args)
}
