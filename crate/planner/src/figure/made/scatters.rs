//! What is strewn: petals, seeds, sugar, spice.
use super::Coat::{Body, Inset, Row};
use super::Cut::{Box, Round, Sides};
use super::Hue::Own;
use super::Lie::Strewn;
use super::{Recipe, cuts};

const A: super::Hue = Own(0, 0);
const B: super::Hue = Own(1, 0);

pub(super) const RECIPES: &[Recipe] = &[
    Recipe { id: "petals", lie: Strewn([11.0, 8.0], 60), cut: Sides(cuts::LEAF), coats: &[
        Body(A, 0.45), Inset(62.0, B, 8.0),
    ], tops: &[] },
    Recipe { id: "seeds", lie: Strewn([3.4, 2.0], 140), cut: Sides(cuts::DROP), coats: &[Body(A, 0.25)], tops: &[] },
    Recipe { id: "icing-sugar", lie: Strewn([2.0, 2.0], 160), cut: Round(8), coats: &[Body(A, 0.0)], tops: &[] },
    Recipe { id: "chilli-flakes", lie: Strewn([3.0, 1.8], 140), cut: Box(12), coats: &[Body(A, 0.2)], tops: &[] },
    Recipe { id: "peppercorns", lie: Strewn([2.6, 2.6], 110), cut: Round(5), coats: &[Body(A, 0.3)], tops: &[] },
    Recipe { id: "bay-leaves", lie: Strewn([38.0, 14.0], 14), cut: Sides(cuts::LEAF), coats: &[
        Body(A, 0.6), Inset(66.0, B, 4.0), Row(&[[-96, 0], [0, 3], [86, 0]], Own(1, 1), 0.7),
    ], tops: &[] },
    Recipe { id: "rocket", lie: Strewn([26.0, 9.0], 30), cut: Sides(&[[-100, 0], [-60, -14], [-30, -60], [-14, -24], [14, -90], [30, -36], [60, -80], [86, -48], [100, 0]]), coats: &[
        Body(A, 0.5), Row(&[[-98, 0], [84, 0]], B, 0.7),
    ], tops: &[] },
];
