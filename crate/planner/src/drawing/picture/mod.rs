//! A whole layout as a picture: keyed groups, bottom to top, and the files
//! that are made of them.
//!
//! One file a kind of group; [`groups`] says which there are and in what order
//! they lie.
mod adding;
mod arm;
mod card;
mod cast;
mod cloth;
mod contour;
mod crops;
mod cut;
mod drawn;
mod edge;
mod frame;
mod guide_sheet;
mod lens;
mod lettering;
mod marks;
mod notes;
mod places;
mod ring;
mod sample;
mod see_through;
mod sheet;
mod side;
mod stand;
mod surface;
mod tags;
mod thing;
mod view;

pub use cloth::waiting;
pub use cut::{Cut, cut, cut_file, view_box};
pub use drawn::{Again, Drawn};
pub use guide_sheet::guide_sheet;
pub use sample::{alone, sample, swatch};
pub use see_through::{SeeThrough, see_through};
pub use sheet::{sheet, version};
pub use side::{side, side_file};
pub use stand::stand_span;
pub use view::{Keyed, Shown, Trims, View, carried, translation};

use svg::node::element::Group;

use super::Pen;
use crate::layout::{Card, Hand, Item, Layout, Linen};
use crate::optics;
use crate::scene::{Layer, in_view_order};
use drawn::{All, Same};

/// Weight of an ink line, px.
const WEIGHT: f64 = 1.1;

/// Every group of the drawing, bottom to top.
#[must_use]
pub fn groups(whole: &Layout, view: &View) -> Vec<Keyed> {
    let all = groups_again(whole, view, &mut Drawn::default());
    let all = all.into_iter().filter_map(|Again { key, group, at }| {
        let group = group?;
        Some(Keyed { key, group, at })
    });
    all.collect()
}

/// As [`groups`], where some are as they were `drawn` last, which is then what
/// is drawn now.
pub fn groups_again(whole: &Layout, view: &View, drawn: &mut Drawn) -> Vec<Again> {
    let table = view.shown.table(whole);
    let layout = table.as_ref();
    let pen = pen(layout, view);
    let last = drawn.begin(whole, layout, &pen);
    let mut all = All::default();
    all.push("surface".into(), surface::surface(layout, &pen), None);
    // What lies beside the table waits unfaded past the frame.
    let waits = |linen: &&Linen| view.frame && cloth::is_aside(layout, linen);
    let aside = || layout.linens.iter().filter(waits);
    // Vessels whose food is being drawn, to be closed with their near rims.
    let mut open: Vec<&Item> = Vec::new();
    for layer in in_view_order(layout, view.eye) {
        if let Layer::Item(item) = layer {
            while let Some(vessel) = open.pop_if(|v| item.on != Some(v.id)) {
                let lip = lens::lip(layout, vessel, view.eye, &pen);
                all.push(named("lip", vessel.id.0), lip, None);
            }
        }
        match layer {
            Layer::Linen(linen) if waits(&linen) => {}
            Layer::Linen(linen) => {
                let group = cloth::cloth(layout, linen, &pen);
                all.push(named("linen", linen.id.0), group, Some(linen.at.vec()));
            }
            Layer::Item(item) => {
                let at = Some(item.at.vec());
                let same = last.same(item);
                let shadow = match same {
                    Same::All { shadow } => shadow.then_some(None),
                    _ => cast::cast(layout, item, &pen).map(Some),
                };
                let throws = shadow.is_some();
                if let Some(shadow) = shadow {
                    all.push(named("shadow", item.id.0), shadow, at);
                }
                match view.eye {
                    optics::View::Above => {
                        let anew = same == Same::Nothing;
                        let group = anew.then(|| thing::thing(item, &pen));
                        all.push(named("item", item.id.0), group, at);
                        drawn.keep(item, throws);
                    }
                    optics::View::Lens { .. } => {
                        let leaning = lens::leaning(layout, item, view.eye, &pen);
                        all.push(named("item", item.id.0), leaning, None);
                        if item.size.rim() > 0 && carries(layout, item) {
                            open.push(item);
                        }
                    }
                }
            }
        }
    }
    while let Some(vessel) = open.pop() {
        let lip = lens::lip(layout, vessel, view.eye, &pen);
        all.push(named("lip", vessel.id.0), lip, None);
    }
    // What hands hold may stand nowhere on the table.
    let there = |hand: &Hand| layout.hands.iter().any(|h| h.id == hand.id);
    let shown = whole.hands.iter().filter(|h| view.shown.has(h) && there(h));
    let shown: Vec<&Hand> = shown.collect();
    for hand in &shown {
        let anew = view.eye != optics::View::Above || !last.has(whole, hand);
        let arm = anew.then(|| arm::reaching(whole, hand, view.eye, &pen));
        all.push(named("hand", hand.id.0), arm, None);
        if view.eye == optics::View::Above {
            drawn.keep_hand(whole, hand);
        }
    }
    // What stands in the picture is seen in it; the rest of the cards is shown
    // with arm and stand, unfaded.
    let (shot, beside): (Vec<&Card>, Vec<&Card>) = layout
        .cards
        .iter()
        .partition(|c| card::is_shot(layout, c, view.eye));
    for card in shot {
        all.push(
            named("card", card.id.0),
            card::card(layout, card, view, &pen),
            None,
        );
    }
    if view.frame {
        let frame = frame::frame(layout, &shown, view, &pen);
        all.push("frame".into(), frame, None);
        // The lens never sees what it hangs from.
        let mut about = Vec::new();
        if view.eye == optics::View::Above {
            if view.lit {
                about = ring::ring(layout, view, &pen);
            }
            if view.places {
                about.extend(places::places(layout, view));
            }
            if view.rig {
                let cards = beside.iter();
                about.extend(cards.map(|c| Keyed {
                    key: named("card", c.id.0),
                    group: card::card(layout, c, view, &pen),
                    at: None,
                }));
                about.extend(stand::stand(layout, view, &pen));
            }
        }
        for keyed in about {
            all.push(keyed.key, keyed.group, keyed.at);
        }
        for linen in aside() {
            let group = cloth::aside(layout, linen, view, &pen);
            all.push(named("linen", linen.id.0), group, Some(linen.at.vec()));
        }
        all.push("marks".into(), marks::marks(&view.marks, &pen), None);
    }
    if view.crops != Trims::None {
        let taken = if view.tags {
            tags::taken(layout, &shown, view.eye, view.per_pixel)
        } else {
            Vec::new()
        };
        all.push(
            "crops".into(),
            crops::crops(layout, view.crops, taken, &pen),
            None,
        );
    }
    if view.tags {
        let tags = tags::tags(layout, &shown, view.eye, view.per_pixel);
        all.push("tags".into(), tags, None);
    }
    if view.notes && view.tags {
        let notes = notes::notes(layout, view.eye, view.per_pixel);
        all.push("notes".into(), notes, None);
    }
    all.0
}

fn pen(layout: &Layout, view: &View) -> Pen {
    Pen {
        weight: WEIGHT * view.per_pixel,
        fall: -layout.light.clock.direction(),
        fine: view.fine,
    }
}

/// The group of marks alone, which changes while something is dragged.
#[must_use]
pub fn marked(layout: &Layout, view: &View) -> Group {
    marks::marks(&view.marks, &pen(layout, view))
}

/// One hand with its arm, as it is drawn while it is dragged.
#[must_use]
pub fn reaching(layout: &Layout, hand: &Hand, view: &View) -> Group {
    arm::reaching(layout, hand, view.eye, &pen(layout, view))
}

fn named(kind: &str, id: u16) -> String {
    let mut key = String::from(kind);
    key.push('-');
    key.push_str(&id.to_string());
    key
}

/// Whether anything lies on or in a thing.
fn carries(layout: &Layout, item: &Item) -> bool {
    layout.items.iter().any(|other| other.on == Some(item.id))
}

#[cfg(test)]
mod tests;
