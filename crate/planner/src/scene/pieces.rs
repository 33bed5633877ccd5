//! All outlines in paint order, and what the camera sees of each from above.
use glam::DVec2;

use super::{arm, children, inner, linen_outline, silhouette};
use crate::catalogue;
use crate::colour::{Shade, shades};
use crate::layout::{Id, Item, Layout, Origin, Part, Srgb, Tone};
use crate::shape::{CHORD_ERROR, Region, frame_outline, table_outline, visible};

/// Which part of a thing a piece is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PartKind {
    /// The table or board.
    Table,
    /// Cloth.
    Linen,
    /// Outside and rim of a vessel, or a whole plain thing.
    Rim,
    /// Inside of a vessel.
    Well,
    /// Food.
    Food,
    /// A hand with the bare part of its forearm.
    Hand,
    /// A sleeve.
    Sleeve,
}

/// One outline of one colour mix.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// Whose it is; `Id(0)` for the table.
    pub owner: Id,
    /// Which part of it.
    pub part: PartKind,
    /// Its outline on the table plane, mm.
    pub outline: Vec<DVec2>,
    /// The same as an area.
    pub region: Region,
    /// Its colours.
    pub shades: Vec<Shade>,
    /// Whether any of its colours is a catalogue guess.
    pub guessed: bool,
}

/// What lies at a place: a piece, or the floor.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ground {
    /// Nothing but the floor.
    Floor,
    /// The piece with this index.
    Piece(usize),
}

/// A layout in space, seen from straight above.
#[derive(Clone, Debug, PartialEq)]
pub struct Scene {
    /// Pieces from the bottom to the top.
    pub pieces: Vec<Piece>,
    /// What is seen of each within the frame.
    pub seen: Vec<Region>,
    /// The frame.
    pub frame: Region,
    /// The floor's colour.
    pub floor: Vec<Shade>,
    /// Outlines a finger can take, scatter included, bottom to top.
    pub touchable: Vec<(Id, Vec<DVec2>)>,
}

impl Scene {
    /// The scene of a layout. `exposure` picks the hands of one exposure;
    /// `None` shows all hands together.
    #[must_use]
    pub fn of(layout: &Layout, exposure: Option<Id>) -> Self {
        let mut b = Builder::default();
        let table = &layout.table;
        b.piece(
            Id(0),
            PartKind::Table,
            table_outline(table, CHORD_ERROR),
            &plain(table.surface.colour),
        );
        for linen in &layout.linens {
            b.touch(linen.id, linen_outline(linen));
            b.piece(
                linen.id,
                PartKind::Linen,
                linen_outline(linen),
                &plain(linen.colour),
            );
        }
        for item in layout.items.iter().filter(|i| i.on.is_none()) {
            b.stack(layout, item);
        }
        for hand in &layout.hands {
            if exposure.is_some_and(|e| e != hand.exposure) {
                continue;
            }
            let arm = arm(layout, hand);
            let person = layout.people.iter().find(|p| p.id == hand.person);
            let skin = person.map_or(Srgb::default(), |p| p.skin);
            let cloth = person.map_or(Srgb::default(), |p| p.sleeve.colour);
            b.touch(hand.id, arm.hand.clone());
            b.piece(hand.id, PartKind::Sleeve, arm.sleeve, &plain(cloth));
            b.piece(hand.id, PartKind::Hand, arm.forearm, &plain(skin));
            b.piece(hand.id, PartKind::Hand, arm.hand, &plain(skin));
        }
        let frame = Region::from_polygon(&frame_outline(&layout.frame)).unwrap_or_default();
        let regions: Vec<Region> = b.pieces.iter().map(|p| p.region.clone()).collect();
        let seen =
            visible(&regions, &frame).unwrap_or_else(|_| vec![Region::empty(); regions.len()]);
        let floor = shades(&plain(layout.floor.colour).colours);
        Self {
            pieces: b.pieces,
            seen,
            frame,
            floor,
            touchable: b.touchable,
        }
    }

    /// What lies on top at `p`.
    #[must_use]
    pub fn ground(&self, p: DVec2) -> Ground {
        let covers = |piece: &Piece| {
            piece.region.bounds().is_some_and(|b| b.holds(p)) && piece.region.contains(p)
        };
        self.pieces
            .iter()
            .rposition(covers)
            .map_or(Ground::Floor, Ground::Piece)
    }

    /// The colours of a ground.
    #[must_use]
    pub fn shades_of(&self, ground: Ground) -> &[Shade] {
        match ground {
            Ground::Floor => &self.floor,
            Ground::Piece(n) => &self.pieces[n].shades,
        }
    }

    /// The things under a finger, topmost first.
    #[must_use]
    pub fn hit(&self, p: DVec2) -> Vec<Id> {
        let mut under: Vec<Id> = Vec::new();
        for (id, outline) in self.touchable.iter().rev() {
            if !under.contains(id) && crate::shape::contains(outline, p) {
                under.push(*id);
            }
        }
        under
    }
}

fn plain(srgb: Srgb) -> Part {
    Part {
        colours: vec![Tone {
            srgb,
            share: 100,
            origin: Origin::Measured,
        }],
    }
}

#[derive(Default)]
struct Builder {
    pieces: Vec<Piece>,
    touchable: Vec<(Id, Vec<DVec2>)>,
}

impl Builder {
    fn touch(&mut self, id: Id, outline: Vec<DVec2>) {
        self.touchable.push((id, outline));
    }

    fn piece(&mut self, owner: Id, part: PartKind, outline: Vec<DVec2>, colours: &Part) {
        let Ok(region) = Region::from_polygon(&outline) else {
            return;
        };
        if region.is_empty() {
            return;
        }
        let guessed = colours.colours.iter().any(|t| t.origin == Origin::Guess);
        let shades = shades(&colours.colours);
        self.pieces.push(Piece {
            owner,
            part,
            outline,
            region,
            shades,
            guessed,
        });
    }

    /// An item, then everything lying on it.
    fn stack(&mut self, layout: &Layout, item: &Item) {
        let outline = silhouette(item);
        self.touch(item.id, outline.clone());
        let parts = &item.parts;
        if !is_scatter(&item.prop) {
            if let Some(rim) = &parts.rim {
                self.piece(item.id, PartKind::Rim, outline.clone(), rim);
            }
            if let Some((well, inside)) = parts.well.as_ref().zip(inner(item)) {
                self.piece(item.id, PartKind::Well, inside, well);
            }
            if let Some(food) = &parts.food {
                self.piece(item.id, PartKind::Food, outline, food);
            }
        }
        for child in children(layout, item.id) {
            self.stack(layout, child);
        }
    }
}

/// Loose pieces strewn over the table: too small to weigh or to hide an edge.
fn is_scatter(prop: &str) -> bool {
    catalogue::prop(prop).is_some_and(|entry| entry.kind == catalogue::Kind::Scatter)
}
