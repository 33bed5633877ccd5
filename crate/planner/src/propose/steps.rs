//! The single changes the search tries: a body shifted, turned or swapped with
//! another, cloth laid, folded or shifted, a crop slid, a place at the table
//! moved, the light carried round.
//!
//! Lengths come in half centimetres and turns in five degrees, so that what is
//! proposed can be said and done by hand.
use glam::DVec2;

use super::bodies::Body;
use super::limits::Limits;
use super::wish::May;
use crate::commands::spots;
use crate::figure::dice::Dice;
use crate::layout::{Id, Layout, Linen, LinenKind, LinenState, Point, TableShape, Turn};
use crate::readings::Price;
use crate::scene::seat_of;
use crate::seats::stand_at;

/// Lengths of steps, mm: the least, and the grid they lie on.
const LEAST: f64 = 10.0;
const GRID: f64 = 5.0;
/// Turns lie on this grid, half degrees.
const TURN: i32 = 10;
/// How often a step is aimed at what a finding is about.
const AIMED: f64 = 0.7;
/// The height of the light changes by this, mm, and stays within these.
const RAISED: i32 = 200;
const LIGHT_HEIGHTS: [i32; 2] = [300, 3_000];

/// What can be changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Unit {
    /// A body, by its place in the list.
    Body(usize),
    /// A linen.
    Linen(Id),
    /// A crop.
    Crop(Id),
    /// The place a hand comes from.
    Hand(Id),
    /// The light.
    Light,
}

/// All that may be changed in a layout, and how far at a time.
pub(super) struct Steps {
    units: Vec<Unit>,
    /// The unit of each thing, linen, crop and hand.
    of: Vec<(Id, Unit)>,
    /// The longest step, mm.
    reach: f64,
    /// Whether two bodies may change places.
    swaps: bool,
}

/// A change that was tried: what of, and the layout after it.
pub(super) struct Step {
    pub(super) unit: Unit,
    pub(super) after: Layout,
}

impl Steps {
    pub(super) fn of(limits: &Limits, layout: &Layout, may: May, reach: f64, swaps: bool) -> Self {
        let mut units = Vec::new();
        let mut of = Vec::new();
        for (n, body) in limits.bodies().iter().enumerate() {
            if may.dishes && body.free {
                units.push(Unit::Body(n));
                of.extend(body.things.iter().map(|id| (*id, Unit::Body(n))));
            }
        }
        let mut own = |ids: Vec<Id>, unit: fn(Id) -> Unit| {
            units.extend(ids.iter().map(|id| unit(*id)));
            of.extend(ids.iter().map(|id| (*id, unit(*id))));
        };
        if may.linens {
            let free = layout.linens.iter().filter(|l| !l.locked && can_lie(l));
            own(free.map(|l| l.id).collect(), Unit::Linen);
        }
        if may.crops {
            own(layout.crops.iter().map(|c| c.id).collect(), Unit::Crop);
        }
        if may.hands {
            let seated = layout.hands.iter().filter(|h| seat_of(layout, h).is_some());
            own(seated.map(|h| h.id).collect(), Unit::Hand);
        }
        if may.light {
            units.push(Unit::Light);
        }
        Self {
            units,
            of,
            reach,
            swaps,
        }
    }

    /// Whether there is nothing to change.
    pub(super) fn is_empty(&self) -> bool {
        self.units.is_empty()
    }

    /// Some change, aimed at what costs most more often than not; nothing where
    /// the one that chance took cannot be made.
    pub(super) fn some(
        &self,
        limits: &Limits,
        layout: &Layout,
        price: &Price,
        dice: &mut Dice,
    ) -> Option<Step> {
        let unit = self.aimed(price, dice).or_else(|| self.any(dice))?;
        let bodies = limits.bodies();
        let after = match unit {
            Unit::Body(n) => self.body(bodies, n, layout, dice)?,
            Unit::Linen(id) => linen(layout, id, dice)?,
            Unit::Crop(id) => slid(layout, id, self.reach, dice)?,
            Unit::Hand(id) => seat(layout, id, dice)?,
            Unit::Light => light(layout, dice)?,
        };
        Some(Step { unit, after })
    }

    fn any(&self, dice: &mut Dice) -> Option<Unit> {
        pick(&self.units, dice).copied()
    }

    /// The unit of something that a finding is about, taken by what it costs.
    fn aimed(&self, price: &Price, dice: &mut Dice) -> Option<Unit> {
        if !dice.chance(AIMED) {
            return None;
        }
        let all: f64 = price.findings.iter().map(|f| f.cost).sum();
        let mut left = dice.between(0.0, all);
        let found = price.findings.iter().find(|f| {
            left -= f.cost;
            left <= 0.0
        })?;
        let id = pick(&found.about, dice)?;
        self.of
            .iter()
            .find(|(own, _)| own == id)
            .map(|(_, unit)| *unit)
    }

    fn body(&self, bodies: &[Body], n: usize, layout: &Layout, dice: &mut Dice) -> Option<Layout> {
        let body = &bodies[n];
        let kind = dice.unit();
        if body.setting {
            return Some(along_edge(layout, body, dice));
        }
        if kind < 0.15 && self.swaps {
            let others: Vec<&Unit> = self.units.iter().filter(|u| **u != Unit::Body(n)).collect();
            let Some(Unit::Body(m)) = pick(&others, dice) else {
                return None;
            };
            return swapped(layout, body, &bodies[*m]);
        }
        if kind < 0.3 && body.turns {
            let steps = 1 + (dice.unit() * 18.0) as i32;
            let by = TURN * if dice.chance(0.5) { steps } else { -steps };
            return Some(body.turned(layout, by));
        }
        let at = body.at(layout);
        let way = self.way(bodies, n, layout, at, dice);
        let by = on_grid(way * length(self.reach, dice));
        (by != [0, 0]).then(|| body.moved(layout, by))
    }

    /// Which way a body goes: to or from a neighbour, to the middle of the
    /// frame, along a runner it stands on, or anywhere.
    fn way(&self, bodies: &[Body], n: usize, layout: &Layout, at: DVec2, dice: &mut Dice) -> DVec2 {
        let chance = dice.unit();
        let sign = if dice.chance(0.5) { 1.0 } else { -1.0 };
        let to = if chance < 0.25 && bodies.len() > 1 {
            let other = (dice.unit() * bodies.len() as f64) as usize;
            (other != n).then(|| bodies[other.min(bodies.len() - 1)].at(layout) - at)
        } else if chance < 0.35 {
            Some(layout.frame.at.vec() - at)
        } else if chance < 0.5 {
            let runner = layout.linens.iter().find(|l| lies_on(l, at));
            runner.map(|l| l.turn.direction().perp())
        } else {
            None
        };
        let any = unit_at(dice.angle());
        to.map_or(any, |to| to.normalize_or(any) * sign)
    }
}

fn unit_at(angle: f64) -> DVec2 {
    let (sin, cos) = libm::sincos(angle);
    DVec2::new(cos, sin)
}

/// A length up to `reach`, short ones as often as long ones.
fn length(reach: f64, dice: &mut Dice) -> f64 {
    LEAST * libm::pow((reach / LEAST).max(1.0), dice.unit())
}

fn on_grid(by: DVec2) -> [i32; 2] {
    ((by / GRID).round() * GRID).to_array().map(|x| x as i32)
}

fn pick<'a, T>(list: &'a [T], dice: &mut Dice) -> Option<&'a T> {
    let n = (dice.unit() * list.len() as f64) as usize;
    list.get(n)
}

/// Runners and cloths; mats and napkins belong to their places.
fn can_lie(linen: &Linen) -> bool {
    matches!(linen.kind, LinenKind::Runner | LinenKind::Cloth)
}

fn lies_on(linen: &Linen, at: DVec2) -> bool {
    let along = linen.turn.direction();
    let off = at - linen.at.vec();
    let [w, d] = linen.lying();
    linen.state == LinenState::Flat
        && off.dot(along).abs() < d * 0.5
        && off.dot(along.perp()).abs() < w * 0.5
}

/// A place setting slid along the edge it faces.
fn along_edge(layout: &Layout, body: &Body, dice: &mut Dice) -> Layout {
    let stand = stand_at(&layout.table, body.at(layout));
    let far = length(super::limits::SETTING_SLIDES, dice);
    let sign = if dice.chance(0.5) { 1.0 } else { -1.0 };
    body.moved(layout, on_grid(stand.inward.perp() * far * sign))
}

/// Two bodies with their places changed.
fn swapped(layout: &Layout, a: &Body, b: &Body) -> Option<Layout> {
    if a.setting || b.setting {
        return None;
    }
    let by = (b.at(layout) - a.at(layout)).round().to_array();
    let [x, y] = by.map(|x| x as i32);
    Some(b.moved(&a.moved(layout, [x, y]), [-x, -y]))
}

/// A folded linen laid along the middle of the table, or a flat one shifted
/// across.
fn linen(layout: &Layout, id: Id, dice: &mut Dice) -> Option<Layout> {
    let mut after = layout.clone();
    let table = after.table.clone();
    let own = after.linens.iter_mut().find(|l| l.id == id)?;
    if own.state != LinenState::Flat {
        own.state = LinenState::Flat;
        own.at = table.centre();
        let upright = table.shape == TableShape::Rect && table.depth > table.width;
        own.turn = Turn::from_half_degrees(if upright { 180 } else { 0 });
        return Some(after);
    }
    let far = length(150.0, dice) * if dice.chance(0.5) { 1.0 } else { -1.0 };
    let [x, y] = on_grid(own.turn.direction() * far);
    own.at = own.at.moved(x, y);
    Some(after)
}

/// A crop slid.
fn slid(layout: &Layout, id: Id, reach: f64, dice: &mut Dice) -> Option<Layout> {
    let mut after = layout.clone();
    let frame = after.frame.turn.direction();
    let crop = after.crops.iter_mut().find(|c| c.id == id)?;
    // Most crops have room one way only.
    let way = if dice.chance(0.5) {
        frame
    } else {
        frame.perp()
    };
    let sign = if dice.chance(0.5) { 1.0 } else { -1.0 };
    let [x, y] = on_grid(way * length(reach.max(300.0), dice) * sign);
    crop.at = crop.at.moved(x, y);
    Some(after)
}

/// The place a hand comes from moved along its edge, or another place.
fn seat(layout: &Layout, id: Id, dice: &mut Dice) -> Option<Layout> {
    let hand = layout.hands.iter().find(|h| h.id == id)?;
    let seat = seat_of(layout, hand)?;
    if dice.chance(0.3) {
        let all = spots(layout);
        let to = pick(&all, dice)?;
        let act = crate::commands::come_to(layout, id, to.at).ok()?;
        let mut after = layout.clone();
        act.edit.apply(&mut after).ok()?;
        return Some(after);
    }
    // Before a place setting sits whom it is laid for.
    if seat.setting.is_some() {
        return None;
    }
    let stand = stand_at(&layout.table, seat.at.vec());
    let far = length(500.0, dice) * if dice.chance(0.5) { 1.0 } else { -1.0 };
    let [x, y] = on_grid(stand.inward.perp() * far);
    let to = stand_at(&layout.table, stand.at + Point::new(x, y).vec());
    let id = seat.id;
    let mut after = layout.clone();
    let own = after.seats.iter_mut().find(|s| s.id == id)?;
    own.at = Point::nearest(to.at);
    Some(after)
}

/// The light carried to another hour, or raised or lowered.
fn light(layout: &Layout, dice: &mut Dice) -> Option<Layout> {
    let mut after = layout.clone();
    let light = &mut after.light;
    let sign = if dice.chance(0.5) { 1 } else { -1 };
    if dice.chance(0.6) {
        let hours = 1 + (dice.unit() * 3.0) as i32;
        light.clock = light.clock.plus(sign * hours * 60);
    } else {
        let [low, high] = LIGHT_HEIGHTS;
        let to = (light.height_above_table + sign * RAISED).clamp(low, high);
        if to == light.height_above_table {
            return None;
        }
        light.height_above_table = to;
    }
    Some(after)
}
