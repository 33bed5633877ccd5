//! A drag or a turn in hand: what moves, where it comes to rest, its figure.
use glam::DVec2;
use planner::layout::{Frame, Id, Layout, Units};
use planner::scene::{Scene, root};
use planner::shape::{Bounds, Region, gap_within};
use planner::words::length;
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::snap::{Snap, snap};

/// What is in hand.
pub(crate) struct Drag {
    pub(crate) id: Id,
    /// Everything that moves along.
    moves: Vec<Id>,
    outline: Vec<DVec2>,
    bounds: Bounds,
    others: Vec<Region>,
    boxes: Vec<Bounds>,
    centres: [Bounds; 2],
    /// How far it has come, mm, snapped.
    pub(crate) by: DVec2,
    /// How far it has turned, half degrees.
    pub(crate) half_degrees: i32,
    snapped: Snap,
}

impl Drag {
    fn of(layout: &Layout, scene: &Scene, id: Id) -> Option<Self> {
        if is_locked(layout, id) {
            return None;
        }
        let moves = moving(layout, id);
        let touch = |id: Id| scene.touchable.iter().find(|(owner, _)| *owner == id);
        let (_, outline) = touch(id)?;
        let bounds = Bounds::around(outline)?;
        // What lies on something else is no neighbour, and neither is a linen.
        let neighbour = |other: &Id| {
            let item = layout.items.iter().find(|i| i.id == *other);
            !moves.contains(other) && item.is_some_and(|i| i.on.is_none())
        };
        let others: Vec<Region> = scene
            .touchable
            .iter()
            .filter(|(other, _)| neighbour(other))
            .filter_map(|(_, outline)| Region::from_polygon(outline).ok())
            .collect();
        let boxes = others.iter().filter_map(Region::bounds).collect();
        let table = Bounds {
            min: DVec2::ZERO,
            max: DVec2::new(f64::from(layout.table.width), f64::from(layout.table.depth)),
        };
        Some(Self {
            id,
            moves,
            outline: outline.clone(),
            bounds,
            others,
            boxes,
            centres: [framed(&layout.frame), table],
            by: DVec2::ZERO,
            half_degrees: 0,
            snapped: Snap::default(),
        })
    }

    fn to(&mut self, by: DVec2, reach: f64) {
        let moved = Bounds {
            min: self.bounds.min + by,
            max: self.bounds.max + by,
        };
        self.snapped = snap(moved, &self.boxes, &self.centres, reach);
        self.by = (by + self.snapped.by).round();
    }

    /// Whether a keyed group of the drawing moves along.
    fn takes(&self, key: &str) -> bool {
        let (kind, id) = key.split_once('-').unwrap_or((key, ""));
        let named = matches!(kind, "item" | "linen" | "shadow" | "hand" | "tag");
        named && id.parse().is_ok_and(|id| self.moves.contains(&Id(id)))
    }

    /// Where it is and how far from its nearest neighbour.
    fn words(&self, frame: &Frame, units: Units) -> String {
        if self.half_degrees != 0 {
            return format!("{}°", f64::from(self.half_degrees) * 0.5);
        }
        let frame = framed(frame);
        let centre = self.bounds.centre() + self.by;
        let across = length(centre.x - frame.min.x, units);
        let down = length(centre.y - frame.min.y, units);
        let mut text = format!("{across} across, {down} down");
        if let Some(near) = self.nearest() {
            text.push_str(&format!("; gap {}", length(near, units)));
        }
        text
    }

    /// Distance to the nearest neighbour, mm; nothing when they overlap.
    fn nearest(&self) -> Option<f64> {
        let own: Vec<DVec2> = self.outline.iter().map(|p| *p + self.by).collect();
        let own = Region::from_polygon(&own).ok()?;
        let mut near = f64::INFINITY;
        for other in &self.others {
            if let Some(gap) = gap_within(&own, other, near) {
                near = gap.distance;
            }
        }
        (near > 0.0 && near.is_finite()).then_some(near)
    }
}

fn framed(frame: &Frame) -> Bounds {
    let outline = planner::shape::frame_outline(frame);
    Bounds::around(&outline).unwrap_or(Bounds {
        min: frame.at.vec(),
        max: frame.at.vec(),
    })
}

/// Whether a thing is safe from being moved, turned or taken away.
pub(crate) fn is_locked(layout: &Layout, id: Id) -> bool {
    let item = layout
        .items
        .iter()
        .find(|i| i.id == id)
        .is_some_and(|i| i.locked);
    item || layout.linens.iter().any(|l| l.id == id && l.locked)
}

/// The thing itself, its group, and all that stands on any of them.
pub(crate) fn moving(layout: &Layout, id: Id) -> Vec<Id> {
    let group = layout
        .items
        .iter()
        .find(|i| i.id == id)
        .and_then(|i| i.group);
    let same = |other: Option<Id>| group.is_some() && other == group;
    let mut moves = vec![id];
    for item in &layout.items {
        if same(item.group) || rests_on(layout, item.id, id) {
            moves.push(item.id);
        }
    }
    let stacked: Vec<Id> = layout
        .items
        .iter()
        .map(|i| i.id)
        .filter(|i| !moves.contains(i) && moves.iter().any(|below| rests_on(layout, *i, *below)))
        .collect();
    moves.extend(stacked);
    moves
}

/// Whether `id` stands somewhere on `below`.
fn rests_on(layout: &Layout, id: Id, below: Id) -> bool {
    let mut at = id;
    for _ in 0..layout.items.len() {
        match layout.items.iter().find(|i| i.id == at).and_then(|i| i.on) {
            Some(on) if on == below => return true,
            Some(on) => at = on,
            None => return false,
        }
    }
    false
}

#[wasm_bindgen]
impl Planner {
    /// Takes hold of a thing; false when it is locked or not there.
    pub fn grab(&mut self, id: u16) -> bool {
        self.drag = Drag::of(self.history.layout(), &self.scene, Id(id));
        self.drag.is_some()
    }

    /// Moves what is in hand by this much from where it was taken, mm, resting
    /// it against its neighbours within `reach` mm.
    ///
    /// # Errors
    /// When the page refuses the drawing.
    pub fn drag_to(&mut self, dx: f64, dy: f64, reach: f64) -> Result<(), JsValue> {
        let Some(drag) = &mut self.drag else {
            return Ok(());
        };
        drag.to(DVec2::new(dx, dy), reach);
        let Some(sheet) = &self.sheet else {
            return Ok(());
        };
        sheet.shift(|key| drag.takes(key), drag.by)
    }

    /// Turns what is in hand; returns the turn taken, degrees.
    pub fn turn_to(&mut self, degrees: f64) -> f64 {
        let Some(drag) = &mut self.drag else {
            return 0.0;
        };
        // Whole degrees, and the quarter turns hold within two.
        let quarter = (degrees / 90.0).round() * 90.0;
        let taken = if (degrees - quarter).abs() < 2.0 {
            quarter
        } else {
            degrees.round()
        };
        drag.half_degrees = (taken * 2.0) as i32;
        taken
    }

    /// How far what is in hand has come to the right, mm.
    #[wasm_bindgen(getter)]
    #[must_use]
    pub fn drag_x(&self) -> f64 {
        self.drag.as_ref().map_or(0.0, |drag| drag.by.x)
    }

    /// How far what is in hand has come down, mm.
    #[wasm_bindgen(getter)]
    #[must_use]
    pub fn drag_y(&self) -> f64 {
        self.drag.as_ref().map_or(0.0, |drag| drag.by.y)
    }

    /// The upright line it rests against, mm from the left; NaN for none.
    #[wasm_bindgen(getter)]
    #[must_use]
    pub fn guide_x(&self) -> f64 {
        self.drag
            .as_ref()
            .and_then(|drag| drag.snapped.upright)
            .unwrap_or(f64::NAN)
    }

    /// The level line it rests against, mm from the top; NaN for none.
    #[wasm_bindgen(getter)]
    #[must_use]
    pub fn guide_y(&self) -> f64 {
        self.drag
            .as_ref()
            .and_then(|drag| drag.snapped.level)
            .unwrap_or(f64::NAN)
    }

    /// The figures of what is in hand.
    #[must_use]
    pub fn drag_words(&self) -> String {
        let layout = self.history.layout();
        self.drag.as_ref().map_or_else(String::new, |drag| {
            drag.words(&layout.frame, layout.head.units)
        })
    }

    /// Puts what is in hand back where it was.
    ///
    /// # Errors
    /// When the page refuses the drawing.
    pub fn let_go(&mut self) -> Result<(), JsValue> {
        let (Some(drag), Some(sheet)) = (self.drag.take(), &self.sheet) else {
            return Ok(());
        };
        sheet.shift(|key| drag.takes(key), DVec2::ZERO)
    }

    /// The bottom of the stack a thing stands in.
    #[must_use]
    pub fn root(&self, id: u16) -> u16 {
        root(self.history.layout(), Id(id)).0
    }
}
