//! The plan laid over a photo of the set: two to four things that are told in
//! the photo say how the one lies on the other; what else is told then says how
//! far it stands from its place, and the photo's edges how far the frame does.
//!
//! A point at height `z` is seen drawn out from under the lens
//! ([`crate::optics::View`]), so a thing told at its rim is brought back to the
//! table before it is measured.
mod patch;

pub use patch::{Found, find_again};

use glam::DVec2;
use serde::Serialize;

use crate::layout::{Frame, Id, Item, Layout};
use crate::optics::{Lens, View};
use crate::readings::Study;
use crate::scene::{rise, silhouette};
use crate::shape::{Homography, MarksFault, contains, frame_outline};
use crate::words::{Arg, fixed, length, rounded, say, way};

/// A thing that stands nearer to its place is there, mm. Our choice: a helper
/// who lays by the set sheet comes within a centimetre.
const THERE: f64 = 5.0;
/// A frame whose corners are off by less than this share of its width is where
/// it was planned. Our choice.
const FRAME_THERE: f64 = 0.01;
/// A camera that moved less, in its own pixels, has not been bumped: marks found
/// again are sure to about one. Our choice.
const STILL: f64 = 1.5;
/// A light that changed less, in stops, is the same. Common practice, no source.
const STEADY: f64 = 0.1;

/// A thing that can be told in a photo.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Told {
    /// Which.
    pub id: Id,
    /// What it is called.
    pub name: String,
}

/// A thing's height where it is told: the middle of its rim.
fn told_height(layout: &Layout, item: &Item) -> f64 {
    rise(layout, item).top
}

fn seen_at(layout: &Layout, view: View, item: &Item) -> DVec2 {
    view.project(item.at.vec(), told_height(layout, item))
}

/// What can be told in a photo, those first that lie nearest to the corners of
/// the frame, as marks far apart fix it best.
#[must_use]
pub fn tellable(layout: &Layout) -> Vec<Told> {
    let study = Study::new(layout);
    let view = View::of(layout);
    let standing = layout.items.iter().filter(|i| i.on.is_none());
    let mut left: Vec<&Item> = standing
        .filter(|i| within(&layout.frame, seen_at(layout, view, i)))
        .collect();
    let mut out = Vec::new();
    for corner in frame_outline(&layout.frame) {
        let far = |i: &&Item| seen_at(layout, view, i).distance(corner);
        let near = (0..left.len()).min_by(|a, b| far(&left[*a]).total_cmp(&far(&left[*b])));
        out.extend(near.map(|n| left.remove(n)));
    }
    out.extend(left);
    let told = out.into_iter().map(|i| Told {
        id: i.id,
        name: study.name(i.id),
    });
    told.collect()
}

fn within(frame: &Frame, place: DVec2) -> bool {
    contains(&frame_outline(frame), place)
}

/// How a photo lies over the plan.
#[derive(Clone, Copy, Debug)]
pub struct Aligned {
    onto: Homography,
    back: Homography,
    view: View,
}

/// How far the frame is from where it was planned.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FrameOff {
    /// The corner that is off most, in pixels of the camera.
    pub pixels: f64,
    /// The same on the table, mm.
    pub on_table: f64,
    /// In words.
    pub sentence: String,
}

/// How far one thing is from its place.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Drift {
    /// Which thing.
    pub id: Id,
    /// How far, mm.
    pub far: f64,
    /// Where it stands, mm on the table.
    pub at: [i32; 2],
    /// In words.
    pub sentence: String,
}

impl Aligned {
    /// From things and where in the photo each is told, px.
    ///
    /// # Errors
    /// When they are too few or too many, or say nothing.
    pub fn fitted(layout: &Layout, told: &[(Id, DVec2)]) -> Result<Self, MarksFault> {
        let view = View::of(layout);
        let pair = |(id, spot): &(Id, DVec2)| {
            let item = layout.items.iter().find(|i| i.id == *id)?;
            Some([seen_at(layout, view, item), *spot])
        };
        let pairs: Vec<[DVec2; 2]> = told.iter().filter_map(pair).collect();
        let onto = Homography::fitted(&pairs)?;
        Ok(Self {
            onto,
            back: onto.inverse(),
            view,
        })
    }

    /// The outlines of all that stands on the table and of the frame, in pixels
    /// of the photo.
    #[must_use]
    pub fn outlines(&self, layout: &Layout) -> Vec<Vec<DVec2>> {
        let standing = layout.items.iter().filter(|i| i.on.is_none());
        let seen = standing.map(|item| {
            let top = told_height(layout, item);
            let rim = silhouette(item).into_iter();
            rim.map(|p| self.view.project(p, top)).collect::<Vec<_>>()
        });
        let all = seen.chain([frame_outline(&layout.frame)]);
        all.map(|line| line.into_iter().filter_map(|p| self.onto.at(p)).collect())
            .collect()
    }

    /// How far a thing told at `spot` stands from its place; nothing for one
    /// that is not there.
    #[must_use]
    pub fn drift(&self, layout: &Layout, id: Id, spot: DVec2) -> Option<Drift> {
        let item = layout.items.iter().find(|i| i.id == id)?;
        let seen = self.back.at(spot)?;
        let at = self.on_table(seen, told_height(layout, item));
        let by = at - item.at.vec();
        let far = by.length();
        let there = far < THERE;
        let args = [
            ("thing", Arg::Name(Study::new(layout).name(id))),
            ("by", Arg::Text(length(far, layout.head.units))),
            ("way", Arg::Text(way(by, &layout.frame))),
        ];
        Some(Drift {
            id,
            far,
            at: [libm::round(at.x) as i32, libm::round(at.y) as i32],
            sentence: say(if there { "drift-there" } else { "drift-off" }, &args),
        })
    }

    /// The place under a point at height `z` that is seen at `seen`.
    fn on_table(&self, seen: DVec2, z: f64) -> DVec2 {
        match self.view {
            View::Above => seen,
            View::Lens { under, .. } => under + (seen - under) / self.view.scale(z),
        }
    }

    /// How far the frame of a photo of this size, px, is from the planned one.
    #[must_use]
    pub fn frame(&self, layout: &Layout, size: DVec2) -> Option<FrameOff> {
        let frame = &layout.frame;
        let corners = frame_outline(frame);
        let planned: Vec<DVec2> = corners.iter().filter_map(|p| self.onto.at(*p)).collect();
        let wanted = in_photo(frame, size);
        // The camera may hang any way up: the nearest of four turns is meant.
        let off = |turn: usize| {
            let pairs = planned.iter().zip(wanted.iter().cycle().skip(turn));
            pairs.map(|(a, b)| a.distance(*b)).fold(0.0, f64::max)
        };
        let worst = (0..4).map(off).fold(f64::INFINITY, f64::min);
        let across = planned.first()?.distance(*planned.get(1)?);
        if planned.len() < 4 || across <= 0.0 {
            return None;
        }
        let on_table = worst * f64::from(frame.width) / across;
        let pixels = worst * camera_pixels(layout, size);
        let there = on_table < FRAME_THERE * f64::from(frame.width);
        let args = [
            ("pixels", Arg::Text(fixed(pixels, 0))),
            ("by", Arg::Text(length(on_table, layout.head.units))),
        ];
        Some(FrameOff {
            pixels,
            on_table,
            sentence: say(if there { "frame-there" } else { "frame-off" }, &args),
        })
    }
}

/// Pixels of the camera to one of the photo as it was read.
fn camera_pixels(layout: &Layout, size: DVec2) -> f64 {
    let long = Lens::of(&layout.camera).pixels[0];
    f64::from(long) / size.max_element().max(1.0)
}

/// Where the corners of a frame lie in a photo that has it in its middle, as
/// large as it can be.
fn in_photo(frame: &Frame, size: DVec2) -> [DVec2; 4] {
    let own = DVec2::new(f64::from(frame.width), frame.height());
    let upright = (own.x < own.y) != (size.x < size.y);
    let size = if upright {
        DVec2::new(size.y, size.x)
    } else {
        size
    };
    let half = own * (size / own).min_element() * 0.5;
    let at =
        [[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]].map(|[x, y]| half * DVec2::new(x, y));
    if upright {
        let middle = DVec2::new(size.y, size.x) * 0.5;
        at.map(|p| middle + p.perp())
    } else {
        at.map(|p| size * 0.5 + p)
    }
}

/// What two frames of one set differ in.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Bump {
    /// The place in the picture that moved most, in pixels of the camera.
    pub pixels: f64,
    /// Whether that is more than marks are sure to.
    pub moved: bool,
    /// In words.
    pub sentence: String,
    /// What the light did.
    pub light: String,
}

/// Compares two frames by marks: where each lies in the first and in the second,
/// px, and how much lighter it became, stops.
///
/// # Errors
/// When the marks are too few or too many, or say nothing.
pub fn bumped(
    layout: &Layout,
    size: DVec2,
    marks: &[[DVec2; 2]],
    stops: &[f64],
) -> Result<Bump, MarksFault> {
    let moves = Homography::fitted(marks)?;
    let corners = [[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]];
    let corners = corners.map(|[x, y]| DVec2::new(x, y) * size);
    let off = corners.map(|p| moves.at(p).map_or(f64::INFINITY, |q| q.distance(p)));
    let pixels = off.into_iter().fold(0.0, f64::max) * camera_pixels(layout, size);
    let moved = pixels >= STILL;
    let lens = Lens::of(&layout.camera);
    let density = lens.density_over(f64::from(layout.frame.width), layout.frame.height());
    let args = [
        ("pixels", Arg::Text(fixed(pixels, 1))),
        ("by", Arg::Text(rounded(pixels / density))),
    ];
    let change = stops.iter().sum::<f64>() / stops.len().max(1) as f64;
    let id = match change {
        c if c >= STEADY => "bump-lighter",
        c if c <= -STEADY => "bump-darker",
        _ => "bump-steady",
    };
    Ok(Bump {
        pixels,
        moved,
        sentence: say(if moved { "bump-moved" } else { "bump-still" }, &args),
        light: say(id, &[("stops", Arg::Text(fixed(change.abs(), 1)))]),
    })
}

#[cfg(test)]
mod tests;
