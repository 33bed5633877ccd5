//! How high things stand above the table, one on the other.
use glam::DVec2;

use super::inner;
use crate::catalogue::{self, Kind, Profile};
use crate::layout::{Item, Layout};

/// The floor of a vessel above what it stands on, mm, and the most it is of
/// the vessel's height. Our choice.
const FLOOR: f64 = 6.0;
const FLOOR_SHARE: f64 = 0.3;

/// What lies in a vessel leans on its walls almost to its top. Our estimate.
const FILLED: Profile = &[[0, 100], [95, 100], [100, 80]];

/// Heights above the table between which a thing reaches, mm.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Rise {
    /// Where it stands.
    pub base: f64,
    /// Its top.
    pub top: f64,
}

impl Rise {
    /// The height at a share of the way up, 0 to 1.
    #[must_use]
    pub fn at(self, share: f64) -> f64 {
        self.base + (self.top - self.base) * share
    }
}

/// Between which heights an item reaches where it lies.
#[must_use]
pub fn rise(layout: &Layout, item: &Item) -> Rise {
    // A layout's `on` is acyclic; the counter ends it all the same.
    rise_under(layout, item, layout.items.len())
}

fn rise_under(layout: &Layout, item: &Item, depth: usize) -> Rise {
    let below = |on| layout.items.iter().find(|i| i.id == on);
    let base = match item.on.and_then(below) {
        Some(support) if depth > 0 => rests(rise_under(layout, support, depth - 1), support, item),
        _ => 0.0,
    };
    Rise {
        base,
        top: base + f64::from(item.height),
    }
}

/// Where a thing comes to rest on or in its support.
fn rests(support: Rise, below: &Item, item: &Item) -> f64 {
    if !is_vessel(below) || lies_on_rim(below, item) {
        return support.top;
    }
    let height = support.top - support.base;
    let floor = FLOOR.min(height * FLOOR_SHARE);
    // It sinks in as far as the walls are apart.
    let [outer, own] = [below, item].map(|i| widest(i).max(1.0));
    let wide = (own / outer).min(1.0) * 100.0;
    let narrow = narrowest_share(profile_of(below), wide);
    support.base + floor.max(height * narrow)
}

/// The vessel an item lies in, through whose mouth it is seen; none for what
/// stands free or lies on a rim.
#[must_use]
pub fn vessel_of<'a>(layout: &'a Layout, item: &Item) -> Option<&'a Item> {
    let below = layout.items.iter().find(|i| Some(i.id) == item.on)?;
    (is_vessel(below) && !lies_on_rim(below, item)).then_some(below)
}

fn is_vessel(item: &Item) -> bool {
    catalogue::prop(&item.prop).is_some_and(|e| e.kind == Kind::Vessel)
}

/// Whether a thing is too long for the inside of a vessel and lies on its rim.
fn lies_on_rim(vessel: &Item, item: &Item) -> bool {
    let Some(inside) = inner(vessel) else {
        return true;
    };
    let centre = vessel.at.vec();
    let room = inside.iter().map(|p| p.distance(centre));
    let mouth = 2.0 * room.fold(0.0, f64::max);
    widest(item) > mouth + 1.0
}

fn widest(item: &Item) -> f64 {
    let [w, d] = item.size.extent();
    f64::from(w.max(d))
}

/// The share of the height from which on a thing is at least so wide, percent
/// of its outline; the whole height when it never is.
fn narrowest_share(profile: Profile, wide: f64) -> f64 {
    for pair in profile.windows(2) {
        let [[low, from], [high, to]] = [pair[0], pair[1]].map(|p| p.map(f64::from));
        if from >= wide {
            return low / 100.0;
        }
        if to >= wide {
            return (low + (high - low) * (wide - from) / (to - from)) / 100.0;
        }
    }
    1.0
}

/// The height profile of an item.
#[must_use]
pub fn profile_of(item: &Item) -> Profile {
    catalogue::prop(&item.prop).map_or_else(catalogue::plain_profile, catalogue::profile)
}

/// How wide an item is at each height, as pairs of height above the table and
/// share of its outline; `within` when it lies in a vessel.
pub fn sections(item: &Item, rise: Rise, within: bool) -> impl Iterator<Item = (f64, f64)> {
    let pair = move |[up, wide]: [u8; 2]| (rise.at(f64::from(up) / 100.0), f64::from(wide) / 100.0);
    let profile = if within { FILLED } else { profile_of(item) };
    profile.iter().copied().map(pair)
}

/// The outline of an item about its place, narrowed to a share of its width.
#[must_use]
pub fn narrowed(outline: &[DVec2], at: DVec2, share: f64) -> Vec<DVec2> {
    outline.iter().map(|p| at + (*p - at) * share).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::open;

    fn table(items: &str) -> Layout {
        let text = format!(
            r##"{{"format":"overspread-layout","version":0,"id":"00000000000000aa","next_id":9,
            "table":{{"width":1500,"depth":900}},"frame":{{"at":[750,450],"width":1000}},"items":[{items}]}}"##
        );
        open(&text).expect("opens")
    }

    const POT: &str = r##"{"id":1,"prop":"enamel-pot","at":[500,400],"height":130,
        "size":{"shape":"disc","diameter":300,"rim":14}}"##;

    fn on_pot(prop: &str, size: &str, height: i32) -> Rise {
        let layout = table(&format!(
            r#"{POT},{{"id":2,"prop":"{prop}","at":[500,400],"on":1,"height":{height},"size":{size}}}"#
        ));
        rise(&layout, &layout.items[1])
    }

    #[test]
    fn food_lies_on_the_floor_of_a_pot_with_straight_sides() {
        let food = on_pot("mussels", r#"{"shape":"disc","diameter":262}"#, 60);
        assert_eq!((food.base, food.top), (FLOOR, FLOOR + 60.0));
    }

    #[test]
    fn a_spoon_too_long_for_it_lies_on_the_rim() {
        let spoon = on_pot("spoon", r#"{"shape":"rect","width":320,"depth":40}"#, 10);
        assert_eq!((spoon.base, spoon.top), (130.0, 140.0));
        let short = on_pot("spoon", r#"{"shape":"rect","width":200,"depth":40}"#, 10);
        assert_eq!(short.base, FLOOR);
    }

    #[test]
    fn in_a_flared_bowl_food_sinks_as_far_as_the_walls_let_it() {
        let layout = table(
            r#"{"id":1,"prop":"small-bowl","at":[500,400],"height":50,"size":{"shape":"disc","diameter":100,"rim":5}},
            {"id":2,"prop":"olives","at":[500,400],"on":1,"height":20,"size":{"shape":"disc","diameter":76}}"#,
        );
        // Flared: 64% wide at 22% of its height, 88% at 62%: 76% halfway between.
        let food = rise(&layout, &layout.items[1]);
        assert!((food.base - 50.0 * 0.42).abs() < 1e-9, "{food:?}");
    }

    #[test]
    fn stacks_add_up() {
        let layout = table(
            r#"{"id":1,"prop":"bread-board","at":[500,400],"height":20,"size":{"shape":"rect","width":400,"depth":300}},
            {"id":2,"prop":"loaf","at":[500,400],"on":1,"height":95,"size":{"shape":"oval","width":300,"depth":180}}"#,
        );
        assert_eq!(rise(&layout, &layout.items[1]).top, 115.0);
    }
}
