//! Layouts near a given one as points of a cube, priced one by one: for other
//! programs that search, to be measured against.
use glam::DVec2;

use super::bodies::Body;
use super::limits::Limits;
use super::wish::May;
use crate::layout::{Id, Layout, LinenKind, Point, Turn};
use crate::readings::{Kept, Price, Study, Weighing, price};

/// How far a thing goes from where it is at either end, mm.
const FAR: f64 = 300.0;
/// What a layout costs that breaks a limit, and each mm by which it does.
const BROKEN: f64 = 400.0;
const BY_MM: f64 = 0.5;

/// One number and what it says.
enum Variable {
    Right(Id),
    Down(Id),
    Turn(Id),
    Across(Id),
    CropRight(Id),
    CropDown(Id),
}

/// The layouts near one.
pub struct Near {
    layout: Layout,
    limits: Limits,
    weighing: Weighing,
    crop: Id,
    kept: Kept,
    start: Price,
    variables: Vec<Variable>,
}

impl Near {
    /// The layouts that this one becomes by what may be moved: bodies, flat
    /// runners across their length, and crops.
    #[must_use]
    pub fn of(layout: &Layout, may: May, weighing: Weighing, crop: Id) -> Self {
        let limits = Limits::of(layout);
        let mut variables = Vec::new();
        let free = limits.bodies().iter().filter(|b| b.free && !b.setting);
        for body in free.filter(|_| may.dishes) {
            variables.extend([Variable::Right(body.chief), Variable::Down(body.chief)]);
            if body.turns {
                variables.push(Variable::Turn(body.chief));
            }
        }
        let runners = layout.linens.iter();
        let runners = runners.filter(|l| may.linens && !l.locked && l.kind == LinenKind::Runner);
        variables.extend(runners.map(|l| Variable::Across(l.id)));
        for crop in layout.crops.iter().filter(|_| may.crops) {
            variables.extend([Variable::CropRight(crop.id), Variable::CropDown(crop.id)]);
        }
        let study = Study::new(layout).viewing(crop);
        let start = price(&study, &weighing, None);
        Self {
            kept: study.keep(),
            layout: layout.clone(),
            limits,
            weighing,
            crop,
            start,
            variables,
        }
    }

    /// How many numbers say which layout.
    #[must_use]
    pub fn variables(&self) -> usize {
        self.variables.len()
    }

    /// What the layout itself costs: all numbers one half.
    #[must_use]
    pub const fn start(&self) -> f64 {
        self.start.total
    }

    /// What the layout costs that these numbers, each 0 to 1, stand for; more
    /// than any that keeps the limits when it breaks one. None when there are
    /// not so many.
    pub fn price(&mut self, numbers: &[f64]) -> Option<f64> {
        if numbers.len() != self.variables.len() {
            return None;
        }
        let after = self.layout_at(numbers);
        let breach = self.limits.breach(&after);
        if breach > 0.0 {
            return Some(self.start.total + BROKEN + breach * BY_MM);
        }
        let study = Study::after(&after, &self.kept).viewing(self.crop);
        Some(price(&study, &self.weighing, Some(self.start.light)).total)
    }

    fn layout_at(&self, numbers: &[f64]) -> Layout {
        let mut after = self.layout.clone();
        for (variable, number) in self.variables.iter().zip(numbers) {
            let off = (number.clamp(0.0, 1.0) - 0.5) * 2.0;
            let far = (off * FAR).round() as i32;
            match variable {
                Variable::Right(id) => after = self.body(*id).moved(&after, [far, 0]),
                Variable::Down(id) => after = self.body(*id).moved(&after, [0, far]),
                Variable::Turn(id) => {
                    let turn = Turn::from_half_degrees(0);
                    let by = (off * 360.0).round() as i32;
                    after = self.body(*id).turned(&after, turn.plus(by).half_degrees());
                }
                Variable::Across(id) => {
                    let own = after.linens.iter_mut().filter(|l| l.id == *id);
                    for linen in own {
                        linen.at = shifted(linen.at, linen.turn.direction() * f64::from(far));
                    }
                }
                Variable::CropRight(id) | Variable::CropDown(id) => {
                    let down = matches!(variable, Variable::CropDown(_));
                    let by = if down { [0, far] } else { [far, 0] };
                    let own = after.crops.iter_mut().filter(|c| c.id == *id);
                    own.for_each(|c| c.at = c.at.moved(by[0], by[1]));
                }
            }
        }
        after
    }

    fn body(&self, chief: Id) -> &Body {
        let bodies = self.limits.bodies();
        let n = self.limits.body_of(chief).unwrap_or(0);
        &bodies[n]
    }
}

fn shifted(at: Point, by: DVec2) -> Point {
    Point::nearest(at.vec() + by)
}
