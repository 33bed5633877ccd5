//! Entries of the catalogue turned into things of a layout.
use super::cloth::LinenEntry;
use super::entry::{Entry, Kind};

use super::surfaces::SurfaceEntry;
use crate::layout::{
    Extra, Id, Item, Linen, LinenState, Origin, Part, Parts, Point, Role, Srgb, Stock, Surface,
    Tone, Turn,
};

/// An item as the catalogue has it, at a place, neither turned nor grouped.
/// Its colours are written out, so that the file says what was meant even
/// when it is read without a catalogue.
#[must_use]
pub fn item_from(entry: &Entry, id: Id, number: u16, at: Point) -> Item {
    Item {
        id,
        number,
        name: entry.name.into(),
        prop: entry.id.into(),
        at,
        turn: Turn::ZERO,
        size: entry.size.clone(),
        height: entry.height,
        parts: parts_of(entry),
        finish: entry.finish,
        face: entry.face,
        role: Role::Filler,
        on: None,
        group: None,
        locked: false,
        hold_minutes: None,
        stand_in: String::new(),
        stock: Stock::default(),
        extra: Extra::new(),
    }
}

/// A linen as the catalogue has it, lying flat at a place.
#[must_use]
pub fn linen_from(entry: &LinenEntry, id: Id, at: Point) -> Linen {
    Linen {
        id,
        name: entry.name.into(),
        kind: entry.kind,
        state: LinenState::Flat,
        at,
        size: entry.size,
        turn: Turn::ZERO,
        colour: entry.colour,
        origin: Origin::Guess,
        over: Vec::new(),
        locked: false,
        stock: Stock::default(),
        extra: Extra::new(),
    }
}

/// The colours an entry starts with.
#[must_use]
pub fn parts_of(entry: &Entry) -> Parts {
    let part = |tones: &[Tone]| {
        (!tones.is_empty()).then(|| Part {
            colours: tones.to_vec(),
        })
    };
    Parts {
        rim: part(entry.rim),
        well: part(entry.well),
        food: part(entry.food),
    }
}

/// What sort of thing a catalogue id is; what nobody knows is an object.
#[must_use]
pub fn kind_of(prop: &str) -> Kind {
    super::prop(prop).map_or(Kind::Object, |entry| entry.kind)
}

/// Whether a catalogue id is of loose pieces strewn over the table: too small to
/// weigh, to hide an edge or to be in the way.
#[must_use]
pub fn is_strewn(prop: &str) -> bool {
    kind_of(prop) == Kind::Scatter
}

/// What a thing is drawn and read in where neither it nor the catalogue says:
/// a middle grey, L* 60 (our choice).
pub const UNSAID: Srgb = Srgb::hex(0x91_9191);

/// The colours a thing shows: its own, the catalogue's for a part it says
/// nothing of, and [`UNSAID`] where nobody says anything.
#[must_use]
pub fn shown_parts(item: &Item) -> Parts {
    let usual = super::prop(&item.prop).map(parts_of).unwrap_or_default();
    let own = &item.parts;
    let mut shown = Parts {
        rim: own.rim.clone().or(usual.rim),
        well: own.well.clone().or(usual.well),
        food: own.food.clone().or(usual.food),
    };
    if shown.rim.is_none() && shown.food.is_none() {
        shown.rim = Some(shown.well.clone().unwrap_or(Part::plain(UNSAID)));
    }
    shown
}

/// The surface of a table as the catalogue has it.
#[must_use]
pub fn surface_from(entry: &SurfaceEntry) -> Surface {
    Surface {
        name: entry.name.into(),
        prop: entry.id.into(),
        colour: entry.colour,
        origin: Origin::Guess,
        finish: entry.finish,
        extra: Extra::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{foods, props};
    use crate::layout::{Layout, LayoutId, open};

    fn bare(prop: &str) -> Item {
        let entry = crate::catalogue::prop("soup-bowl").expect("known");
        let mut item = item_from(entry, Id(1), 1, Point::new(0, 0));
        item.prop = prop.into();
        item.parts = Parts::default();
        item
    }

    #[test]
    fn what_is_not_said_is_the_catalogues_and_what_nobody_says_is_grey() {
        let entry = |id: &str| parts_of(crate::catalogue::prop(id).expect("known"));
        assert_eq!(shown_parts(&bare("soup-bowl")), entry("soup-bowl"), "dish");
        assert_eq!(
            shown_parts(&bare("lemon-wedges")),
            entry("lemon-wedges"),
            "food"
        );
        let grey = Some(Part::plain(UNSAID));
        let unknown = shown_parts(&bare("never-heard-of"));
        assert_eq!(
            (unknown.rim, unknown.well, unknown.food),
            (grey, None, None),
            "unknown"
        );
        let own = Some(Part::plain(Srgb::hex(0x11_2233)));
        let mut part = bare("soup-bowl");
        part.parts.rim.clone_from(&own);
        let shown = shown_parts(&part);
        assert_eq!(
            (shown.rim, shown.well),
            (own.clone(), entry("soup-bowl").well),
            "one part said"
        );
        let mut inside = bare("never-heard-of");
        inside.parts.well.clone_from(&own);
        assert_eq!(
            shown_parts(&inside).rim,
            own,
            "its inside stands for the whole"
        );
        assert_eq!(kind_of("never-heard-of"), Kind::Object, "an object");
    }

    #[test]
    fn everything_in_the_catalogue_makes_a_layout_that_opens() {
        let mut layout = Layout::empty(LayoutId(1));
        for (n, e) in props().iter().chain(foods()).enumerate() {
            let n = n as u16 + 1;
            layout
                .items
                .push(item_from(e, Id(n), n, Point::new(10, 20)));
        }
        layout.head.next_id = layout.items.len() as u16 + 1;
        let again = open(&layout.to_json()).expect("opens");
        assert_eq!(again, layout, "nothing is lost");
    }
}
