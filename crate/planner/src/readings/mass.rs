//! Visual weight of every dish: visible area times contrast.
//!
//! The mass of a dish is the sum over its visible parts, and those of what lies
//! on it, of area × clamp(outline-weighted HyAB to what lies just outside ÷
//! 100, 0.10, 1). Surface and linens weigh nothing, save a linen that differs
//! strongly from the table and leaves the frame.
use super::study::Study;
use crate::colour::{STRONG_FROM, mixed_separation};
use crate::layout::Id;
use crate::measures::{PointMass, Weighed, centroid};
use crate::order;
use crate::scene::PartKind;

/// One dish and what it weighs, in picture coordinates.
pub(super) struct Dish {
    /// The stack's root item, or a linen that weighs.
    pub(super) id: Id,
    /// Its visible parts.
    pub(super) parts: Vec<Weighed>,
    /// The pieces they are seen of.
    pub(super) pieces: Vec<usize>,
}

impl Dish {
    /// Its mass and centre at chroma weight 1; `None` when it weighs nothing.
    pub(super) fn point(&self) -> Option<PointMass> {
        let masses: Vec<PointMass> = self.parts.iter().map(|p| p.mass(1.0)).collect();
        let at = centroid(&masses)?;
        Some(PointMass {
            at,
            mass: masses.iter().map(|m| m.mass).sum(),
        })
    }
}

/// All dishes that weigh something, in id order.
pub(super) fn dishes(study: &Study<'_>) -> Vec<Dish> {
    let scene = study.scene();
    let picture = study.picture();
    let mut out: Vec<Dish> = Vec::new();
    for walk in study.walks_by_number() {
        let piece = &scene.pieces[walk.piece];
        let id = match piece.part {
            PartKind::Rim | PartKind::Well | PartKind::Food => study.root(piece.owner),
            PartKind::Linen if weighs(study, walk.piece) => piece.owner,
            _ => continue,
        };
        let seen = scene.seen(walk.piece);
        let Some(at) = seen.centroid() else { continue };
        let part = Weighed {
            at: picture.of_table(at),
            area: seen.area(),
            delta_l: walk.delta_l,
            delta_c: walk.delta_c,
            emphasis: 1.0,
        };
        match out.iter_mut().find(|d| d.id == id) {
            Some(dish) => {
                dish.parts.push(part);
                dish.pieces.push(walk.piece);
            }
            None => out.push(Dish {
                id,
                parts: vec![part],
                pieces: vec![walk.piece],
            }),
        }
    }
    order::sort(&mut out, |a, b| a.id.cmp(&b.id));
    out
}

/// Whether a linen differs strongly from the table and leaves the frame.
fn weighs(study: &Study<'_>, piece: usize) -> bool {
    let scene = study.scene();
    let Some(table) = scene.pieces.iter().find(|p| p.part == PartKind::Table) else {
        return false;
    };
    let linen = &scene.pieces[piece];
    let leaves = linen.outline.iter().any(|p| !scene.frame.contains(*p));
    let parted = mixed_separation(&linen.shades, &table.shades);
    leaves && parted.is_some_and(|m| m.hyab >= STRONG_FROM)
}
