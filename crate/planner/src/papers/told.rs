//! How the papers speak of things: numbers, sizes, colours, places, exposures.
use crate::catalogue::shown_parts;
use crate::colour::{Family, family, lab};
use crate::exposures::state_of;
use crate::layout::{As, Finish, Id, Item, Layout, Linen, Part, Size, Source, Srgb, Stock, Units};
use crate::order;
use crate::scene::exposure_name;
use crate::words::{Arg, fixed, length, listed, place, say};

/// The number a thing has on the papers: its own, with another after a point
/// where several share it.
pub(super) fn tag(layout: &Layout, item: &Item) -> String {
    let mut alike: Vec<Id> = layout
        .items
        .iter()
        .filter(|o| o.number == item.number)
        .map(|o| o.id)
        .collect();
    order::sort(&mut alike, Id::cmp);
    let nth = alike.iter().position(|id| *id == item.id).unwrap_or(0) + 1;
    let own = item.number.to_string();
    if alike.len() > 1 {
        own + "." + &nth.to_string()
    } else {
        own
    }
}

/// The letter and number a linen has on the papers.
pub(super) fn linen_tag(layout: &Layout, id: Id) -> String {
    let before = layout.linens.iter().filter(|o| o.id <= id).count();
    String::from("L") + &before.to_string()
}

/// Mm as a bare figure in the layout's units, to the mm.
pub(super) fn figure(mm: f64, units: Units) -> String {
    match units {
        Units::Cm => fixed(mm / 10.0, 1),
        Units::In => fixed(mm / 25.4, 2),
    }
}

/// Sides as they are spoken.
pub(super) fn sides(extent: [f64; 2], units: Units) -> String {
    let [a, b] = extent.map(|mm| length(mm, units));
    let args = [("across", Arg::Text(a)), ("down", Arg::Text(b))];
    say("pixels-by", &args)
}

/// How large a thing is, and how high where it stands up.
pub(super) fn size(item: &Item, units: Units) -> String {
    let extent = item.size.extent().map(f64::from);
    let across = match item.size {
        Size::Disc { .. } => length(extent[0], units),
        _ => sides(extent, units),
    };
    let args = [
        ("size", Arg::Text(across)),
        ("high", Arg::Text(length(f64::from(item.height), units))),
    ];
    match item.size {
        Size::Disc { .. } => say("list-size-disc", &args),
        _ => say("list-size", &args),
    }
}

/// A colour in a word or two.
pub(super) fn colour(srgb: Srgb) -> String {
    let lab = lab(srgb);
    let hue = libm::atan2(lab.b, lab.a).to_degrees().rem_euclid(360.0);
    // Borders by eye, our choice.
    let id = match (family(lab), lab.l) {
        (Family::Neutral, l) if l < 22.0 => "colour-black",
        (Family::Neutral, l) if l < 45.0 => "colour-dark-grey",
        (Family::Neutral, l) if l < 70.0 => "colour-grey",
        (Family::Neutral, l) if l < 88.0 => "colour-pale-grey",
        (Family::Neutral, _) => "colour-white",
        (Family::Green, l) if l < 40.0 => "colour-dark-green",
        (Family::Green, l) if l < 70.0 => "colour-green",
        (Family::Green, _) => "colour-pale-green",
        (Family::Cool, l) if l < 35.0 => "colour-dark-blue",
        (Family::Cool, l) if l < 65.0 => "colour-blue",
        (Family::Cool, _) => "colour-pale-blue",
        (Family::Warm, l) if !(45.0..330.0).contains(&hue) => {
            if l < 35.0 {
                "colour-dark-red"
            } else if l < 65.0 {
                "colour-red"
            } else {
                "colour-pink"
            }
        }
        (Family::Warm, l) if hue > 70.0 && l > 55.0 && lab.b > 35.0 => "colour-yellow",
        (Family::Warm, l) if l < 32.0 => "colour-dark-brown",
        (Family::Warm, l) if l < 58.0 => "colour-brown",
        (Family::Warm, l) if lab.b > 40.0 && l < 80.0 => "colour-orange",
        (Family::Warm, l) if l < 78.0 => "colour-tan",
        (Family::Warm, _) => "colour-cream",
    };
    say(id, &[])
}

/// The tone that covers most of a part.
fn chief(part: &Part) -> Srgb {
    let tones = part.colours.iter().rev();
    tones
        .max_by_key(|t| t.share)
        .map_or_else(Srgb::default, |t| t.srgb)
}

/// Colours and shine of a thing.
pub(super) fn looks(item: &Item) -> String {
    let parts = shown_parts(item);
    let shine = match item.finish {
        Finish::Matt => "finish-matt",
        Finish::Satin => "finish-satin",
        Finish::Gloss => "finish-gloss",
        Finish::Clear => "finish-clear",
        Finish::Liquid => "finish-liquid",
    };
    let shine = Arg::Text(say(shine, &[]));
    let rim = parts.rim.as_ref().or(parts.food.as_ref());
    let rim = rim.map(|part| colour(chief(part))).unwrap_or_default();
    let well = parts.well.as_ref().map(|part| colour(chief(part)));
    let outside = ("colour", Arg::Text(rim.clone()));
    match well.filter(|well| *well != rim && item.finish != Finish::Liquid) {
        Some(inside) => {
            let inside = ("inside", Arg::Text(inside));
            say("list-looks-two", &[outside, inside, ("shine", shine)])
        }
        None => say("list-looks", &[outside, ("shine", shine)]),
    }
}

/// The colour of a linen and how it lies.
pub(super) fn linen_looks(linen: &Linen) -> String {
    use crate::layout::LinenState::{Bunched, Flat, Folded, Thrown};
    let state = match linen.state {
        Flat => "linen-flat",
        Folded => "linen-folded",
        Bunched => "linen-bunched",
        Thrown => "linen-thrown",
    };
    let shine = ("shine", Arg::Text(say(state, &[])));
    let colour = ("colour", Arg::Text(colour(linen.colour)));
    say("list-looks", &[colour, shine])
}

/// Where things come from.
pub(super) fn source(stock: &Stock) -> String {
    let id = match stock.source {
        None => return String::new(),
        Some(Source::Own) => "source-own",
        Some(Source::Hire) => "source-hire",
        Some(Source::Buy) => "source-buy",
        Some(Source::Borrow) => "source-borrow",
        Some(Source::Client) => "source-client",
    };
    say(id, &[])
}

/// Where in the picture things stand, and in which exposures they are to be
/// seen.
pub(super) fn used(layout: &Layout, ids: &[Id]) -> String {
    let items = layout.items.iter().filter(|o| ids.contains(&o.id));
    let linens = layout.linens.iter().filter(|o| ids.contains(&o.id));
    let mut places: Vec<String> = Vec::new();
    for at in items.map(|o| o.at).chain(linens.map(|o| o.at)) {
        let place = place(at, &layout.frame);
        if !places.contains(&place) {
            places.push(place);
        }
    }
    let place = ("place", Arg::Text(listed(&places)));
    let all: Vec<Id> = layout.exposures.iter().map(|e| e.id).collect();
    let shown = exposures_of(layout, ids);
    let names: Vec<String> = shown.iter().map(|id| exposure_name(layout, *id)).collect();
    match shown.len() {
        _ if all.is_empty() => listed(&places),
        0 => say("list-used-none", &[place]),
        n if n == seen_at_all(layout) => say("list-used-all", &[place]),
        _ => say(
            "list-used",
            &[place, ("exposures", Arg::Text(listed(&names)))],
        ),
    }
}

/// How many exposures show the table laid.
fn seen_at_all(layout: &Layout) -> usize {
    let all = layout.exposures.iter();
    all.filter(|e| e.kind.shows_food()).count()
}

/// The exposures that have one of these things on the table or in a hand.
pub(super) fn exposures_of(layout: &Layout, ids: &[Id]) -> Vec<Id> {
    let laid = layout.exposures.iter().filter(|e| e.kind.shows_food());
    let has = laid.filter(|e| {
        ids.iter().any(|id| {
            let held = layout
                .hands
                .iter()
                .any(|h| h.exposure == e.id && h.holds == Some(*id));
            held || state_of(e, *id) != As::Absent
        })
    });
    has.map(|e| e.id).collect()
}
