//! The set sheet: all another needs to lay the table again without having seen
//! it, on one page where that can be.
use super::list::List;
use super::plan::plan;
use super::press::{AIR, Block, Press};
use super::told::{figure, linen_tag, sides, tag};
use crate::layout::{Card, CardKind, Format, Hung, Id, Item, Layout, LightShape, RigKind, Units};
use crate::optics::View;
use crate::order;
use crate::readings::{Concern, cautions};
use crate::scene::even_focus;
use crate::words::{Arg, clock, length, mass, rounded, say};

/// A plan is never lower than this, mm.
const LEAST: f64 = 80.0;

pub(super) fn blocks(layout: &Layout, [wide, page]: [f64; 2]) -> Vec<Block> {
    let units = layout.head.units;
    let mut out = vec![Block::List(places(layout), 2)];
    let corner = if units == Units::Cm {
        "set-places-cm"
    } else {
        "set-places-in"
    };
    out.push(Block::Words(say(corner, &[])));
    out.extend(camera(layout).into_iter().map(Block::Words));
    out.push(Block::Blanks(
        ["set-shutter", "set-iso", "set-white", "set-power"]
            .map(|id| say(id, &[]))
            .into(),
    ));
    out.push(Block::Words(light(layout)));
    out.extend(layout.cards.iter().map(|c| Block::Words(card(layout, c))));
    out.extend(rig(layout).into_iter().map(Block::Words));
    let about = |c: &Concern| matches!(c, Concern::Camera | Concern::Table);
    let lines = cautions(layout).into_iter();
    let lines = lines.filter(|c| about(&c.concern)).map(|c| c.line);
    let mut all: Vec<String> = vec![say("set-care", &[])];
    all.extend(lines);
    out.push(Block::Words(all.join(" ")));
    // The plan takes what the words leave of one page.
    let words = Press::taken(wide, out.clone());
    let (drawing, high) = plan(layout, wide, (page - words - 2.0 * AIR).max(LEAST));
    out.insert(0, Block::Drawing(drawing, high));
    out
}

/// Every thing and cloth with where its middle lies and how it is turned.
pub(super) fn places(layout: &Layout) -> List {
    let units = layout.head.units;
    let axes = match units {
        Units::Cm => ["col-x-cm", "col-y-cm"],
        Units::In => ["col-x-in", "col-y-in"],
    };
    let columns = [
        ("col-number", 13),
        ("col-thing", 41),
        (axes[0], 14),
        (axes[1], 14),
        ("col-turn", 12),
    ];
    let mut list = List::of("", &columns);
    let mut items: Vec<&Item> = layout.items.iter().collect();
    order::sort(&mut items, |a, b| (a.number, a.id).cmp(&(b.number, b.id)));
    let mut row = |number: String, name: String, at: [i32; 2], turn: f64| {
        let [x, y] = at.map(|mm| figure(f64::from(mm), units));
        list.rows
            .push(vec![number, name, x, y, rounded(turn) + "°"]);
    };
    for item in items {
        row(
            tag(layout, item),
            named(layout, item),
            [item.at.x, item.at.y],
            item.turn.degrees(),
        );
    }
    for linen in &layout.linens {
        let args = [
            ("thing", Arg::Name(linen.name.clone())),
            ("size", Arg::Text(sides(linen.lying(), units))),
        ];
        row(
            linen_tag(layout, linen.id),
            say("set-linen", &args),
            [linen.at.x, linen.at.y],
            linen.turn.degrees(),
        );
    }
    list
}

/// A thing by its name, and what it lies on.
fn named(layout: &Layout, item: &Item) -> String {
    let on = |id: Id| layout.items.iter().find(|o| o.id == id);
    let name = Arg::Name(item.name.clone());
    match item.on.and_then(on) {
        None => item.name.clone(),
        Some(below) => say(
            "set-on",
            &[("thing", name), ("number", Arg::Text(tag(layout, below)))],
        ),
    }
}

fn camera(layout: &Layout) -> Vec<String> {
    let units = layout.head.units;
    let said = |mm: f64| Arg::Text(length(mm, units));
    let camera = &layout.camera;
    let frame = &layout.frame;
    let format = match camera.format {
        Format::FullFrame => "format-full-frame",
        Format::ApsC => "format-aps-c",
        Format::ApsCSmall => "format-aps-c-small",
        Format::FourThirds => "format-four-thirds",
        Format::Medium => "format-medium",
        Format::Phone => "format-phone",
    };
    let sees = [f64::from(frame.width), frame.height()];
    let at = |mm: i32| Arg::Text(figure(f64::from(mm), units));
    let mut args = vec![
        ("format", Arg::Text(say(format, &[]))),
        ("focal", Arg::Text(camera.focal.to_string())),
        (
            "stop",
            Arg::Text(rounded(f64::from(camera.aperture) / 10.0)),
        ),
        ("x", at(frame.at.x)),
        ("y", at(frame.at.y)),
        ("sees", Arg::Text(sides(sees, units))),
        ("turn", Arg::Text(rounded(frame.turn.degrees()))),
    ];
    let id = match View::of(layout) {
        View::Lens { height, .. } => {
            args.push(("height", said(height)));
            let from_floor = height + f64::from(layout.table.height);
            args.push(("floor", said(from_floor)));
            "set-camera"
        }
        View::Above => "set-camera-none",
    };
    let mut out = vec![say(id, &args)];
    let focus = camera.focus_height.map(f64::from);
    if let Some(focus) = focus.or_else(|| even_focus(layout)) {
        out[0].push(' ');
        out[0].push_str(&say("set-focus", &[("height", said(focus))]));
    }
    out
}

fn light(layout: &Layout) -> String {
    let units = layout.head.units;
    let light = &layout.light;
    let said = |mm: i32| Arg::Text(length(f64::from(mm), units));
    let args = [
        ("clock", Arg::Text(clock(light.clock.degrees()))),
        (
            "seen",
            Arg::Text(clock(light.clock.degrees() - layout.frame.turn.degrees())),
        ),
        ("distance", said(light.distance)),
        ("height", said(light.height_above_table)),
        (
            "size",
            Arg::Text(sides([light.width, light.height].map(f64::from), units)),
        ),
    ];
    let id = match light.shape {
        LightShape::Window => "set-light",
        LightShape::Disc => "set-light-disc",
    };
    say(id, &args)
}

fn card(layout: &Layout, card: &Card) -> String {
    let units = layout.head.units;
    let at = |mm: i32| Arg::Text(figure(f64::from(mm), units));
    let size = [card.width, card.height].map(f64::from);
    let args = [
        ("size", Arg::Text(sides(size, units))),
        ("x", at(card.at.x)),
        ("y", at(card.at.y)),
        ("turn", Arg::Text(rounded(card.turn.degrees()))),
    ];
    let id = match card.kind {
        CardKind::White => "set-card-white",
        CardKind::Black => "set-card-black",
    };
    say(id, &args)
}

fn rig(layout: &Layout) -> Vec<String> {
    let units = layout.head.units;
    let rig = &layout.rig;
    let said = |mm: i32| Arg::Text(length(f64::from(mm), units));
    let heavy = |grams: i32| Arg::Text(mass(f64::from(grams), units));
    let at = |mm: i32| Arg::Text(figure(f64::from(mm), units));
    let kind = match rig.kind {
        RigKind::Arm => "set-rig-arm",
        RigKind::TwoStands => "set-rig-two",
        RigKind::Tripod => "set-rig-tripod",
        RigKind::Ceiling => "set-rig-ceiling",
    };
    let args = [
        ("ceiling", said(rig.ceiling)),
        ("mast", said(rig.mast_height)),
        ("arm", said(rig.arm_length)),
        ("foot", said(rig.foot_radius)),
        ("load", heavy(rig.load_mass)),
    ];
    let mut out = vec![say(kind, &args)];
    if let Some(stand) = rig.at {
        out.push(say("set-stand", &[("x", at(stand.x)), ("y", at(stand.y))]));
    }
    if let Some(weight) = rig.counterweight {
        let args = [
            ("mass", heavy(weight.mass)),
            ("behind", said(weight.behind)),
        ];
        out.push(say("set-counterweight", &args));
    }
    if let Some(bag) = rig.bag {
        let id = match bag.hung {
            Hung::Hub => "set-bag-hub",
            Hung::LeadLeg => "set-bag-lead",
            Hung::RearLegs => "set-bag-rear",
        };
        out.push(say(id, &[("mass", heavy(bag.mass))]));
    }
    // One paragraph.
    vec![out.join(" ")]
}
