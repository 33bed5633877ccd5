//! Where a grey picture crosses a level, as closed lines.
//!
//! Marching squares (Lorensen & Cline 1987 in the plane): every square between
//! four pixel centres is passed through from the side on which its border
//! comes to the light ones to the one on which it leaves them.
use std::collections::BTreeMap;

use glam::{DVec2, dvec2};

/// A grey picture with a dark margin, so that all its lines close.
pub(super) struct Grey {
    wide: usize,
    high: usize,
    values: Vec<u8>,
}

/// The side of a square: its pixel, and whether it goes down from there rather
/// than to the right.
type Side = (usize, usize, bool);

impl Grey {
    /// A picture of so many pixels across and down, filled row by row.
    pub(super) fn of([wide, high]: [usize; 2], row: &mut dyn FnMut(usize, &mut [u8])) -> Self {
        let mut values = vec![0; (wide + 2) * (high + 2)];
        for y in 0..high {
            let from = (y + 1) * (wide + 2) + 1;
            row(y, &mut values[from..from + wide]);
        }
        Self {
            wide: wide + 2,
            high: high + 2,
            values,
        }
    }

    fn at(&self, x: usize, y: usize) -> f64 {
        f64::from(self.values[y * self.wide + x])
    }

    /// The lines round all that is at least as light as `level`, in pixels from
    /// the picture's top left corner and within it.
    pub(super) fn round(&self, level: f64) -> Vec<Vec<DVec2>> {
        let mut onward: BTreeMap<Side, Side> = BTreeMap::new();
        for y in 0..self.high - 1 {
            for x in 0..self.wide - 1 {
                self.through(x, y, level, &mut onward);
            }
        }
        let mut out = Vec::new();
        while let Some((first, mut next)) = onward.pop_first() {
            let mut line = vec![self.crossing(first, level)];
            while next != first {
                line.push(self.crossing(next, level));
                let Some(then) = onward.remove(&next) else {
                    break;
                };
                next = then;
            }
            out.push(line);
        }
        out
    }

    /// The ways through one square.
    fn through(&self, x: usize, y: usize, level: f64, onward: &mut BTreeMap<Side, Side>) {
        let corners = [(x, y), (x + 1, y), (x + 1, y + 1), (x, y + 1)];
        let sides = [
            (x, y, false),
            (x + 1, y, true),
            (x, y + 1, false),
            (x, y, true),
        ];
        let light = corners.map(|(x, y)| self.at(x, y) >= level);
        for n in 0..4 {
            if light[n] || !light[(n + 1) % 4] {
                continue;
            }
            let runs = (1..4).find(|m| light[(n + m) % 4] && !light[(n + m + 1) % 4]);
            onward.extend(runs.map(|m| (sides[n], sides[(n + m) % 4])));
        }
    }

    fn crossing(&self, (x, y, down): Side, level: f64) -> DVec2 {
        let (to_x, to_y) = if down { (x, y + 1) } else { (x + 1, y) };
        let (a, b) = (self.at(x, y), self.at(to_x, to_y));
        let share = if a == b { 0.5 } else { (level - a) / (b - a) };
        let by = dvec2((to_x - x) as f64, (to_y - y) as f64) * share;
        // The margin is a pixel wide; a pixel's value is that of its middle.
        let own = dvec2(x as f64, y as f64) + by - DVec2::splat(0.5);
        own.clamp(
            DVec2::ZERO,
            dvec2((self.wide - 2) as f64, (self.high - 2) as f64),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shape::area;

    fn picture(size: [usize; 2], light: &dyn Fn(f64, f64) -> bool) -> Grey {
        Grey::of(size, &mut |y, row| {
            for (x, pixel) in row.iter_mut().enumerate() {
                *pixel = 255 * u8::from(light(x as f64 + 0.5, y as f64 + 0.5));
            }
        })
    }

    #[test]
    fn a_disc_and_its_hole_are_two_lines() {
        let ring = picture([100, 80], &|x, y| {
            let away = dvec2(x - 50.0, y - 40.0).length();
            (10.0..30.0).contains(&away)
        });
        let lines = ring.round(128.0);
        let mut areas: Vec<f64> = lines.iter().map(|line| area(line)).collect();
        areas.sort_by(f64::total_cmp);
        assert_eq!(areas.len(), 2, "{areas:?}");
        let disc = |r: f64| core::f64::consts::PI * r * r;
        assert!((areas[0] / disc(10.0) - 1.0).abs() < 0.05, "{areas:?}");
        assert!((areas[1] / disc(30.0) - 1.0).abs() < 0.02, "{areas:?}");
    }

    #[test]
    fn what_is_light_all_over_is_the_whole_picture() {
        let lines = picture([30, 20], &|_, _| true).round(128.0);
        assert_eq!(lines.len(), 1, "one line");
        assert!((area(&lines[0]) - 600.0).abs() < 1.0, "{}", area(&lines[0]));
        assert!(picture([30, 20], &|_, _| false).round(128.0).is_empty());
    }

    #[test]
    fn corners_that_only_touch_stay_apart() {
        let lines = picture([2, 2], &|x, y| (x < 1.0) == (y < 1.0)).round(128.0);
        assert_eq!(lines.len(), 2, "{lines:?}");
    }
}
