//! The things whose gaps are read.
use std::collections::BTreeMap;

use glam::DVec2;

use super::super::study::Study;
use crate::catalogue;
use crate::layout::{Id, Role};
use crate::order;
use crate::scene::{PartKind, Piece, silhouette};
use crate::shape::{Region, hull};

/// A dish with what lies on it, or an arm.
pub(super) struct Thing {
    pub(super) id: Id,
    pub(super) group: Option<Id>,
    /// The most its stack counts for.
    pub(super) role: Role,
    /// Whether it is an arm.
    pub(super) arm: bool,
    /// Its outlines: one of a dish, up to three of an arm.
    pub(super) areas: Vec<Area>,
    /// Height of a dish, mm.
    pub(super) height: i32,
}

/// One outline.
pub(super) struct Area {
    pub(super) outline: Vec<DVec2>,
    pub(super) region: Region,
    /// Its short side, mm.
    pub(super) short: f64,
}

impl Area {
    fn of(outline: Vec<DVec2>, short: f64) -> Option<Self> {
        let region = Region::from_polygon(&outline).ok()?;
        (!region.is_empty()).then_some(Self {
            outline,
            region,
            short,
        })
    }
}

impl Thing {
    /// Whether it is the hero or a main dish.
    pub(super) fn is_main(&self) -> bool {
        matches!(self.role, Role::Hero | Role::Support)
    }

    pub(super) fn is_hero(&self) -> bool {
        self.role == Role::Hero
    }
}

/// Every dish on the table by number, and every arm. Scatter is left out.
pub(super) fn things(study: &Study<'_>) -> Vec<Thing> {
    let layout = study.layout();
    let dishes = layout
        .items
        .iter()
        .filter(|i| i.on.is_none() && !catalogue::is_strewn(&i.prop));
    let pieces = &study.scene().pieces;
    let mut outer: BTreeMap<Id, usize> = BTreeMap::new();
    for (n, p) in pieces.iter().enumerate() {
        if matches!(p.part, PartKind::Rim | PartKind::Food) {
            outer.entry(p.owner).or_insert(n);
        }
    }
    let roles = stack_roles(study);
    let mut out: Vec<Thing> = dishes
        .filter_map(|item| {
            let [w, d] = item.size.extent();
            let short = f64::from(w.min(d));
            // Its outline lies in the scene already, unless it has a well alone.
            let area = match outer.get(&item.id) {
                Some(n) => Area {
                    outline: pieces[*n].outline.clone(),
                    region: pieces[*n].region.clone(),
                    short,
                },
                None => Area::of(silhouette(item), short)?,
            };
            Some(Thing {
                id: item.id,
                group: item.group,
                role: study
                    .stacks()
                    .place(item.id)
                    .map_or_else(Role::default, |n| roles[n]),
                arm: false,
                areas: vec![area],
                height: item.height,
            })
        })
        .collect();
    // Of two that weigh the same the first is the chief side: never the file's.
    order::sort(&mut out, |a, b| a.id.cmp(&b.id));
    for hand in &layout.hands {
        let limb = |p: &&std::rc::Rc<Piece>| {
            p.owner == hand.id && matches!(p.part, PartKind::Hand | PartKind::Sleeve)
        };
        let areas = pieces.iter().filter(limb).map(|p| Area {
            // How deep an arm covers an edge is told of its outline pulled taut.
            outline: hull(&p.outline),
            region: p.region.clone(),
            short: crate::scene::HAND_BREADTH,
        });
        out.push(Thing {
            id: hand.id,
            group: None,
            role: Role::Filler,
            arm: true,
            areas: areas.collect(),
            height: 0,
        });
    }
    out
}

/// The most any item of each stack counts for, by the place of its bottom.
fn stack_roles(study: &Study<'_>) -> Vec<Role> {
    let weight = |role: Role| match role {
        Role::Hero => 0,
        Role::Support => 1,
        Role::Accent => 2,
        Role::Filler => 3,
    };
    let items = &study.layout().items;
    let mut out = vec![Role::default(); items.len()];
    for item in items {
        let bottom = study.stacks().place(study.root(item.id));
        if let Some(most) = bottom.and_then(|n| out.get_mut(n))
            && weight(item.role) < weight(*most)
        {
            *most = item.role;
        }
    }
    out
}
