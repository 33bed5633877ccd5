//! Stone and what is cast like it: veins, layers and flecks.

use glam::{DVec2, dvec2};

use super::Top;
use crate::drawing::sketch::Rows;
use crate::drawing::tone::{PENCIL, deeper, lighter, mixed, rgb};
use crate::figure::blob::{pebble, round, ruled};
use crate::figure::outline::arc;

impl Top<'_> {
    /// Flecks of three tones, the same size everywhere.
    pub(super) fn flecked(&mut self) {
        let tones = [
            deeper(self.tone),
            lighter(self.tone),
            deeper(deeper(self.tone)),
        ];
        let count = self
            .s
            .some(((self.size.x * self.size.y) / 4200.0).clamp(60.0, 420.0) as usize);
        let mut piles = [Rows::new(), Rows::new(), Rows::new()];
        for i in 0..count {
            let y = self.low.y + self.size.y * self.s.dice.between(0.01, 0.99);
            let (from, to) = self.span(y);
            let at = dvec2(
                self.s.dice.between(from + 4.0, (to - 4.0).max(from + 5.0)),
                y,
            );
            let half = dvec2(self.s.dice.between(2.0, 7.0), self.s.dice.between(1.4, 4.0));
            let turn = self.s.dice.angle();
            piles[i % 3].push(pebble(&mut self.s.dice, at, half, turn));
        }
        for (pile, tone) in piles.iter().zip(tones) {
            self.s.fills(pile, tone, 0.0, 0.55);
        }
    }

    /// Marble: clouds and a few veins that fork.
    pub(super) fn veined(&mut self) {
        let grey = mixed(self.tone, rgb(0x6f_767c), 0.5);
        let mut clouds = Rows::new();
        for at in self.places(7, 0.6) {
            let half = self.size.min_element() * dvec2(0.22, 0.08) * self.s.dice.between(0.6, 1.2);
            let turn = -0.5 + self.s.dice.about(0.25);
            clouds.push(round(&mut self.s.dice, at, half, turn, 0.12, 18, 2.0));
        }
        self.s.fills(&clouds, grey, 0.0, 0.16);
        let (mut veins, mut hairs) = (Rows::new(), Rows::new());
        for at in self.places(10, 0.8) {
            let reach = self.size.min_element() * self.s.dice.between(0.14, 0.3);
            let (sin, cos) = libm::sincos(-0.62 + self.s.dice.about(0.35));
            let along = dvec2(cos, sin) * reach;
            let vein = ruled(&mut self.s.dice, at - along, at + along, 9, 16.0);
            let fork = vein[4];
            let (sin, cos) = libm::sincos(0.35 + self.s.dice.about(0.3));
            let end = fork + dvec2(cos, sin) * reach * 0.55;
            hairs.push(ruled(&mut self.s.dice, fork, end, 5, 7.0));
            veins.push(vein);
        }
        self.s
            .brush(&veins, 2.2, mixed(grey, self.tone, 0.3), [0.1, 0.1]);
        self.s.lines(&hairs, grey, 0.6, 0.7);
    }

    /// Slate: riven steps with a lit lip, and a trace of chalk.
    pub(super) fn riven(&mut self) {
        let (mut steps, mut lips) = (Rows::new(), Rows::new());
        for at in self.places(18, 0.88) {
            let reach = self.size.min_element() * self.s.dice.between(0.06, 0.17);
            let turn = self.s.dice.about(0.5);
            let half = dvec2(reach, reach * 0.36);
            let from = self.s.dice.angle();
            let line: Vec<DVec2> = arc(DVec2::ZERO, half, from, from + 3.4, 9)
                .iter()
                .map(|p| {
                    let (sin, cos) = libm::sincos(turn);
                    at + dvec2(cos, sin).rotate(*p) + self.s.dice.disc() * 3.0
                })
                .collect();
            lips.push(line.iter().map(|p| *p + self.s.lit * 2.6).collect());
            steps.push(line);
        }
        self.s.lines(&steps, deeper(deeper(self.tone)), 0.9, 0.7);
        self.s.lines(&lips, lighter(self.tone), 0.7, 0.7);
        let dust = self.places(60, 0.95);
        self.s.dots(&dust, PENCIL, 0.7, 0.3);
    }
}
