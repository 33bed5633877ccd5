//! Things of a layout made into pieces, bottom to top.
use std::collections::BTreeMap;
use std::rc::Rc;

use glam::DVec2;

use super::alike::Alike;
use super::nearer::{Met, in_view_order_after};
use super::seen_as::{lifted, seen_mouth, seen_outline, through};
use super::{Layer, PartKind, Piece, Scene, arm, linen_seen, rise, vessel_of};
use crate::catalogue;
use crate::colour::shades;
use crate::layout::{Hand, Id, Item, Layout, Linen, Origin, Part, Srgb, Table, Tone};
use crate::optics::View;
use crate::shape::{CHORD_ERROR, Region, table_outline};

/// Pieces and outlines so far.
pub(super) struct Laid<'a> {
    pub(super) pieces: Vec<Rc<Piece>>,
    pub(super) touchable: Vec<(Id, Vec<DVec2>)>,
    pub(super) kept: Vec<Option<usize>>,
    pub(super) met: Met,
    view: View,
    before: Option<Before<'a>>,
}

/// The layout before and what was made of each of its things.
struct Before<'a> {
    layout: &'a Layout,
    alike: Alike<'a>,
    scene: &'a Scene,
    pieces: BTreeMap<Id, Vec<usize>>,
}

impl<'a> Laid<'a> {
    pub(super) fn of(
        layout: &'a Layout,
        exposure: Option<Id>,
        view: View,
        before: Option<(&'a Layout, &'a Scene)>,
    ) -> Self {
        let before = before.map(|(old, scene)| Before::of(old, layout, scene));
        let same_view = before.as_ref().filter(|b| b.scene.view == view);
        let known = same_view.map(|b| (&b.alike, b.scene.met()));
        let (order, met) = in_view_order_after(layout, view, known);
        let mut laid = Self {
            pieces: Vec::new(),
            touchable: Vec::new(),
            kept: Vec::new(),
            met,
            view,
            before,
        };
        let table = &layout.table;
        if !laid.keep(Id(0), |b| b.layout.table == *table) {
            let outline = table_outline(table, CHORD_ERROR);
            laid.piece(
                Id(0),
                PartKind::Table,
                outline,
                &plain(table.surface.colour, table.surface.origin),
            );
        }
        for layer in order {
            match layer {
                Layer::Linen(linen) => laid.linen(table, linen),
                Layer::Item(item) => laid.item(layout, item),
            }
        }
        for hand in &layout.hands {
            if exposure.is_none_or(|e| e == hand.exposure) {
                laid.hand(layout, hand);
            }
        }
        laid
    }

    /// Takes over all pieces of a thing from the scene before when `same`.
    fn keep(&mut self, owner: Id, same: impl FnOnce(&Before<'_>) -> bool) -> bool {
        let Some(before) = self.before.as_ref().filter(|b| same(b)) else {
            return false;
        };
        for n in before.pieces.get(&owner).into_iter().flatten() {
            self.pieces.push(Rc::clone(&before.scene.pieces[*n]));
            self.kept.push(Some(*n));
        }
        let outlines = &before.scene.touchable;
        if let Some(known) = outlines.iter().rfind(|(id, _)| *id == owner) {
            self.touchable.push(known.clone());
        }
        true
    }

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
        self.kept.push(None);
        self.pieces.push(Rc::new(Piece {
            owner,
            part,
            outline,
            region,
            shades,
            guessed,
        }));
    }

    fn linen(&mut self, table: &Table, linen: &Linen) {
        let same = |b: &Before<'_>| b.layout.table == *table && b.layout.linens.contains(linen);
        if !self.keep(linen.id, same) {
            let outline = linen_seen(table, linen);
            self.touch(linen.id, outline.clone());
            let colours = plain(linen.colour, linen.origin);
            self.piece(linen.id, PartKind::Linen, outline, &colours);
        }
    }

    fn item(&mut self, layout: &Layout, item: &Item) {
        let view = self.view;
        let kept = self.keep(item.id, |b| b.scene.view == view && b.alike.stands(item.id));
        if kept {
            return;
        }
        let (rise, vessel) = (rise(layout, item), vessel_of(layout, item));
        let whole = seen_outline(item, rise, vessel.is_some(), view);
        let outline = match (view, vessel) {
            (View::Lens { .. }, Some(vessel)) => {
                let mouth = seen_mouth(vessel, super::rise(layout, vessel), view);
                mouth.map_or(Some(whole.clone()), |m| through(&whole, &m))
            }
            _ => Some(whole),
        };
        // What the walls hide altogether is not seen.
        let Some(outline) = outline else {
            return;
        };
        self.touch(item.id, outline.clone());
        if catalogue::is_strewn(&item.prop) {
            return;
        }
        let parts = catalogue::shown_parts(item);
        if let Some(rim) = &parts.rim {
            self.piece(item.id, PartKind::Rim, outline.clone(), rim);
        }
        if let Some((well, inside)) = parts.well.as_ref().zip(seen_mouth(item, rise, view)) {
            self.piece(item.id, PartKind::Well, inside, well);
        }
        if let Some(food) = &parts.food {
            self.piece(item.id, PartKind::Food, outline, food);
        }
    }

    fn hand(&mut self, layout: &Layout, hand: &Hand) {
        let view = self.view;
        let person = layout.people.iter().find(|p| p.id == hand.person);
        let kept = self.keep(hand.id, |b| {
            let whose = b.layout.people.iter().find(|p| p.id == hand.person);
            let placed = b.layout.seats == layout.seats && b.layout.table == layout.table;
            let same = placed && b.layout.frame == layout.frame && b.scene.view == view;
            same && whose == person && b.layout.hands.contains(hand)
        });
        // A hand of another exposure was not made in the scene before.
        if kept && self.pieces.last().is_some_and(|p| p.owner == hand.id) {
            return;
        }
        let arm = arm(layout, hand);
        let [palm, sleeve, forearm] = [&arm.hand, &arm.sleeve, &arm.forearm]
            .map(|outline| lifted(outline, view, f64::from(hand.height)));
        let skin = person.map_or(Srgb::default(), |p| p.skin);
        let cloth = person.map_or(Srgb::default(), |p| p.sleeve.colour);
        self.touch(hand.id, palm.clone());
        self.piece(
            hand.id,
            PartKind::Sleeve,
            sleeve,
            &plain(cloth, Origin::Measured),
        );
        self.piece(
            hand.id,
            PartKind::Hand,
            forearm,
            &plain(skin, Origin::Measured),
        );
        self.piece(
            hand.id,
            PartKind::Hand,
            palm,
            &plain(skin, Origin::Measured),
        );
    }
}

impl<'a> Before<'a> {
    fn of(layout: &'a Layout, after: &'a Layout, scene: &'a Scene) -> Self {
        let mut pieces: BTreeMap<Id, Vec<usize>> = BTreeMap::new();
        for (n, piece) in scene.pieces.iter().enumerate() {
            pieces.entry(piece.owner).or_default().push(n);
        }
        Self {
            layout,
            alike: Alike::of(layout, after),
            scene,
            pieces,
        }
    }
}

/// A part of one colour.
pub(super) fn plain(srgb: Srgb, origin: Origin) -> Part {
    Part {
        colours: vec![Tone {
            srgb,
            share: 100,
            origin,
        }],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::open;

    #[test]
    fn a_thing_nobody_knows_without_a_colour_is_read_by_its_outline_in_grey() {
        let file = r#"{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":9,
            "table":{"width":1600,"depth":950},"frame":{"at":[800,475],"width":1200},"items":[
            {"id":1,"prop":"never-heard-of","at":[400,300],"size":{"shape":"rect","width":200,"depth":100}},
            {"id":2,"prop":"soup-bowl","at":[800,300],"size":{"shape":"disc","diameter":190,"rim":6}},
            {"id":3,"at":[1100,300],"size":{"shape":"outline","points":[[-50,0],[0,-50],[50,0]]}}]}"#;
        let layout = open(file).expect("missing parts are no fault");
        let scene = Scene::of(&layout, None);
        let of = |id: u16| scene.pieces.iter().filter(move |p| p.owner == Id(id));
        let grey = shades(&plain(catalogue::UNSAID, Origin::Guess).colours);
        for (id, area) in [(1, 20_000.0), (3, 2_500.0)] {
            let pieces: Vec<_> = of(id).collect();
            assert_eq!(pieces.len(), 1, "{id}: one piece");
            assert!(
                (pieces[0].region.area() - area).abs() < 1e-6,
                "{id}: its outline"
            );
            assert_eq!(pieces[0].shades, grey, "{id}: grey");
            assert!(pieces[0].guessed, "{id}: a guess");
        }
        let parts: Vec<_> = of(2).map(|p| p.part).collect();
        assert_eq!(
            parts,
            [PartKind::Rim, PartKind::Well],
            "as the catalogue has it"
        );
    }
}
