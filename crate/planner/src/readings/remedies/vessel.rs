//! Turning food over, swapping its vessel, and, last, another surface.
use super::{Study, Try};
use crate::catalogue;
use crate::colour::{Shade, mixed_separation, shades};
use crate::layout::{Id, MAX_NAME, Origin, Part, Srgb, Tone};
use crate::words::{Arg, noun, say};

/// Pale enamel, for the inside of a vessel. Our own estimate.
const PALE_INSIDE: Srgb = Srgb::hex(0x00c8_d3df);
/// What is left dark of the rim where the lining comes up over the lip, mm: the
/// lens sees food right behind the near rim. Our own estimate.
const DARK_LIP: i32 = 4;
/// Pale stoneware: rim and inside. Our own estimates.
const PALE_VESSEL: [Srgb; 2] = [Srgb::hex(0x00e4_dcca), Srgb::hex(0x00ee_e7d8)];

/// The better face of every one of these foods that has one turned up.
pub(in super::super) fn better_faces(study: &Study<'_>, foods: &[Id]) -> Option<Try> {
    let mut after = study.layout().clone();
    let mut turned: Vec<String> = Vec::new();
    for item in after
        .items
        .iter_mut()
        .filter(|i| foods.contains(&i.id) && !i.locked)
    {
        if let Some((face, tones)) = catalogue::better_face(&item.prop, item.face) {
            item.face = face;
            item.parts.food = Some(Part {
                colours: tones.to_vec(),
            });
            turned.push(study.name(item.id));
        }
    }
    let thing = ("thing", Arg::Name(turned.first()?.clone()));
    let many = ("count", Arg::Text(turned.len().to_string()));
    let id = if turned.len() > 1 {
        "act-turn-several"
    } else {
        "act-turn"
    };
    let act = say(id, &[thing, many]);
    Some(Try { act, after })
}

/// Swaps vessels of one sort for the same with a pale inside.
pub(in super::super) fn pale_inside(study: &Study<'_>, vessels: &[Id]) -> Option<Try> {
    let mut after = study.layout().clone();
    let mut pot = String::new();
    let mut count = 0;
    for item in after
        .items
        .iter_mut()
        .filter(|i| vessels.contains(&i.id) && !i.locked && i.parts.well.is_some())
    {
        item.parts.well = Some(Part::plain(PALE_INSIDE));
        item.size = item.size.clone().with_rim_within(DARK_LIP);
        pot = noun(&item.name).to_string();
        let args = [("thing", Arg::Text(item.name.clone()))];
        let name = say("name-pale-lined", &args);
        item.name = name.chars().take(MAX_NAME).collect();
        count += 1;
    }
    let args = [
        ("thing", Arg::Name(pot)),
        ("count", Arg::Text(count.to_string())),
    ];
    let id = match count {
        0 => return None,
        1 => "act-swap-pale",
        _ => "act-swap-pale-all",
    };
    Some(Try {
        act: say(id, &args),
        after,
    })
}

/// Swaps a vessel for a pale one of the same sort and size.
pub(in super::super) fn pale_vessel(study: &Study<'_>, vessel: Id) -> Option<Try> {
    let mut after = study.layout().clone();
    let item = after
        .items
        .iter_mut()
        .find(|i| i.id == vessel && !i.locked)?;
    let sort = catalogue::prop(&item.prop).map(|e| e.name)?;
    let (rim, well) = (item.parts.rim.as_mut()?, item.parts.well.as_mut()?);
    [*rim, *well] = PALE_VESSEL.map(Part::plain);
    let args = [("thing", Arg::Name(sort.into()))];
    item.name = say("name-pale", &args);
    Some(Try {
        act: say("act-swap-vessel", &args),
        after,
    })
}

/// The surface of the catalogue that these colours part from best, when the
/// one that is there is not it.
pub(in super::super) fn best_surface(study: &Study<'_>, parts: &[&[Shade]]) -> Option<Try> {
    let lost = |srgb: Srgb| {
        let tone = Tone {
            srgb,
            share: 100,
            origin: Origin::Guess,
        };
        let ground = shades(&[tone]);
        let each = parts.iter().filter_map(|p| mixed_separation(p, &ground));
        each.map(|m| m.lost).sum::<f64>()
    };
    let now = &study.layout().table.surface;
    let best = catalogue::surfaces()
        .iter()
        .min_by(|a, b| lost(a.colour).total_cmp(&lost(b.colour)))?;
    if best.id == now.prop {
        return None;
    }
    let mut after = study.layout().clone();
    after.table.surface = catalogue::surface_from(best);
    let args = [
        ("ground", Arg::Name(study.name(Id(0)))),
        ("surface", Arg::Name(best.name.into())),
    ];
    Some(Try {
        act: say("act-change-surface", &args),
        after,
    })
}
