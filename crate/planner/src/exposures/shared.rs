//! Where one prop can dress two places, shot in two exposures: once here, once
//! there.
//!
//! The piece stands at the first place in every exposure but one. That one shows
//! it at the second, and the combined picture takes from there what is seen of
//! it with the shadow it throws. So at neither place may lie what the other
//! adds, nor its shadow; what another exposure with hands adds must not lie at
//! the second place, where the piece is missing in it; and what that one
//! exposure adds of its own must not lie at the first.
use glam::DVec2;

use super::again::added;
use super::order::Change;
use super::penumbra::{farthest, thrown};
use super::regions::{Added, within};
use super::states::state_of;
use crate::catalogue::kind_of;
use crate::layout::{As, ExposureKind, Id, Item, Layout};
use crate::light::Source;
use crate::optics::View;
use crate::scene::{rise, seen_outline, silhouette, vessel_of};
use crate::shape::{Region, frame_outline, hull, intersection};

/// Most pairs that are looked at.
pub const MOST_PAIRS: usize = 400;

/// How the second place gets the piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Second {
    /// In an exposure that is shot anyway.
    There(Id),
    /// In one more, which takes so many minutes.
    OneMore(i32),
}

/// Two places that one piece can dress.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pair {
    /// The thing that is there in every other exposure.
    pub first: Id,
    /// The one that is left at home.
    pub second: Id,
    /// How.
    pub by: Second,
}

/// What is seen of a thing with all that stands on it, and where it takes light.
struct Stands {
    id: Id,
    solid: Region,
    shadow: Region,
}

/// Whether two things could be one piece.
fn same(a: &Item, b: &Item) -> bool {
    let told = |i: &Item| (i.height, i.finish, i.face);
    a.prop == b.prop
        && a.name == b.name
        && a.size == b.size
        && told(a) == told(b)
        && a.parts == b.parts
        && (a.group != b.group || a.group.is_none())
}

/// Whether it is as it is set in every exposure, and in no hand.
fn stays(layout: &Layout, item: &Item) -> bool {
    let held = layout.hands.iter().any(|h| h.holds == Some(item.id));
    let mut exposures = layout.exposures.iter();
    !held && exposures.all(|e| state_of(e, item.id) == As::Set)
}

/// A thing and all that stands on it.
fn stack(layout: &Layout, id: Id) -> Vec<&Item> {
    let mut all: Vec<&Item> = layout.items.iter().filter(|i| i.id == id).collect();
    let mut n = 0;
    while let Some(below) = all.get(n).map(|i| i.id) {
        all.extend(layout.items.iter().filter(|i| i.on == Some(below)));
        n += 1;
    }
    all
}

fn stands(layout: &Layout, id: Id, frame: &Region) -> Stands {
    let (source, view) = (Source::of(layout), View::of(layout));
    let most = farthest(&layout.frame);
    let (mut solid, mut shadow) = (Vec::new(), Vec::new());
    for item in stack(layout, id) {
        let inside = vessel_of(layout, item).is_some();
        let rise = rise(layout, item);
        solid.push(seen_outline(item, rise, inside, view));
        let outline: Vec<DVec2> = hull(&silhouette(item));
        shadow.push(thrown(&source, &outline, rise.top, most));
    }
    Stands {
        id,
        solid: within(&solid, frame),
        shadow: within(&shadow, frame),
    }
}

/// Whether two regions have a place in common.
fn meet(a: &Region, b: &Region) -> bool {
    let near = a.bounds().zip(b.bounds()).is_some_and(|(a, b)| a.meets(b));
    near && intersection(a, b).is_ok_and(|both| both.area() > 0.0)
}

/// Whether what the one shows, or its shadow, lies where the other shows
/// something.
fn disturbs(a: [&Region; 2], b: [&Region; 2]) -> bool {
    meet(a[0], b[0]) || meet(a[1], b[0]) || meet(b[1], a[0])
}

impl Stands {
    fn both(&self) -> [&Region; 2] {
        [&self.solid, &self.shadow]
    }

    fn is_free_of(&self, added: &Added) -> bool {
        !disturbs(self.both(), [&added.solid, &added.shadow])
    }
}

/// How one piece dresses both places, standing at the first in every other
/// exposure.
fn way(
    layout: &Layout,
    all: &[std::rc::Rc<Added>],
    first: &Stands,
    second: &Stands,
) -> Option<Second> {
    let base = layout
        .exposures
        .iter()
        .find(|e| e.kind == ExposureKind::Clean);
    let shown = layout.exposures.iter().filter(|e| {
        let like = matches!(e.kind, ExposureKind::Hands | ExposureKind::Clean);
        like && base.is_some_and(|base| base.id != e.id)
    });
    let clear = |but: Option<Id>| {
        let others = all.iter().filter(|a| Some(a.exposure) != but);
        let mut others = others.map(|a| second.is_free_of(a));
        others.all(|free| free)
    };
    let own = |id: Id| {
        let own = all.iter().find(|a| a.exposure == id);
        own.is_none_or(|own| first.is_free_of(own))
    };
    let mut there = shown.filter(|e| own(e.id) && clear(Some(e.id)));
    match there.next() {
        Some(exposure) => Some(Second::There(exposure.id)),
        None if clear(None) => {
            let moved = Change { moves: 1, walks: 0 };
            let minutes = ExposureKind::Clean.usual_minutes() + moved.minutes();
            Some(Second::OneMore(minutes))
        }
        None => None,
    }
}

/// Pairs of places set with the same prop that one piece can dress, each two
/// once, what costs no exposure first.
#[must_use]
pub fn shared(layout: &Layout) -> Vec<Pair> {
    let mut pairs: Vec<[Id; 2]> = Vec::new();
    let props = layout
        .items
        .iter()
        .filter(|i| !kind_of(&i.prop).is_food() && stays(layout, i));
    let props: Vec<&Item> = props.collect();
    for (n, a) in props.iter().enumerate() {
        let others = props[n + 1..].iter().filter(|b| same(a, b));
        pairs.extend(others.map(|b| [a.id, b.id]));
    }
    pairs.truncate(MOST_PAIRS);
    let frame = Region::from_polygon(&frame_outline(&layout.frame)).unwrap_or_default();
    let all = added(layout);
    let mut known: Vec<Stands> = Vec::new();
    for id in pairs.iter().flatten() {
        if known.iter().all(|s| s.id != *id) {
            known.push(stands(layout, *id, &frame));
        }
    }
    let of = |id: Id| known.iter().find(|s| s.id == id);
    let mut out = Vec::new();
    for [a, b] in pairs {
        let Some((one, other)) = of(a).zip(of(b)) else {
            continue;
        };
        // What the frame leaves out costs nothing to leave out.
        if one.solid.area() <= 0.0
            || other.solid.area() <= 0.0
            || disturbs(one.both(), other.both())
        {
            continue;
        }
        let ways = [(one, other), (other, one)].map(|(first, second)| {
            let by = way(layout, &all, first, second)?;
            let (first, second) = (first.id, second.id);
            Some(Pair { first, second, by })
        });
        let is_there = |p: &&Pair| matches!(p.by, Second::There(_));
        let free = ways.iter().flatten().find(is_there);
        out.extend(free.or(ways.iter().flatten().next()).copied());
    }
    crate::order::sort(&mut out, |a, b| {
        let more = |p: &Pair| matches!(p.by, Second::OneMore(_));
        more(a).cmp(&more(b))
    });
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::open;
    use crate::shape::contains;

    const STARTERS: [&str; 3] = [
        include_str!("../../../../static/starters/harbour-supper.spread.json"),
        include_str!("../../../../static/starters/citrus-breakfast.spread.json"),
        include_str!("../../../../static/starters/noodle-night.spread.json"),
    ];

    /// Points to a row of the grid, and how far apart they are, mm.
    const ROW: usize = 400;
    const MESH: f64 = 8.0;

    /// Of each point of a grid whether something is seen there and whether it
    /// loses light.
    type Points = Vec<[bool; 2]>;

    fn points(layout: &Layout, id: Id, grid: &[Option<DVec2>]) -> Points {
        let (source, view) = (Source::of(layout), View::of(layout));
        let most = farthest(&layout.frame);
        let all = stack(layout, id).into_iter().map(|item| {
            let rise = rise(layout, item);
            let inside = vessel_of(layout, item).is_some();
            let shadow = thrown(&source, &hull(&silhouette(item)), rise.top, most);
            (seen_outline(item, rise, inside, view), shadow)
        });
        let (solid, shadow): (Vec<_>, Vec<_>) = all.unzip();
        let at = |p: &Option<DVec2>| {
            let is_in = |all: &Vec<Vec<DVec2>>| {
                p.is_some_and(|p| all.iter().any(|outline| contains(outline, p)))
            };
            [&solid, &shadow].map(is_in)
        };
        grid.iter().map(at).collect()
    }

    fn clash(one: &Points, other: &Points) -> bool {
        let mut both = one.iter().zip(other);
        both.any(|([a, dark], [b, dim])| (*a || *dark) && *b || *dim && *a)
    }

    /// One mesh wider each way.
    fn wider(points: &Points) -> Points {
        let at = |n: usize| {
            let around = [0, ROW, 2 * ROW]
                .into_iter()
                .flat_map(|row| [0, 1, 2].map(|c| row + c));
            let all = around.filter_map(|by| points.get((n + by).checked_sub(ROW + 1)?));
            all.fold([false; 2], |[a, b], [c, d]| [a || *c, b || *d])
        };
        (0..points.len()).map(at).collect()
    }

    /// How good a way there is for two things by the points of the picture: 2 in
    /// an exposure that is shot anyway, 1 in one more, 0 none.
    fn wanted(layout: &Layout, both: &[Points; 2], adds: &[(Id, Points)]) -> usize {
        let clean = |e: &&crate::layout::Exposure| e.kind == ExposureKind::Clean;
        let base = layout.exposures.iter().find(clean).map(|e| e.id);
        let unseen = both.iter().any(|x| x.iter().all(|[seen, _]| !seen));
        if unseen || clash(&both[0], &both[1]) {
            return 0;
        }
        let clear = |second: usize, but: Option<Id>| {
            let mut others = adds.iter().filter(|(id, _)| Some(*id) != but);
            others.all(|(_, adds)| !clash(&both[second], adds))
        };
        let there = |first: usize| {
            let mut laid = layout.exposures.iter().filter(|e| {
                let like = matches!(e.kind, ExposureKind::Hands | ExposureKind::Clean);
                like && base.is_some() && base != Some(e.id)
            });
            laid.any(|e| {
                let mut own = adds.iter().filter(|(id, _)| *id == e.id);
                own.all(|(_, adds)| !clash(&both[first], adds)) && clear(1 - first, Some(e.id))
            })
        };
        if there(0) || there(1) {
            2
        } else {
            usize::from(clear(0, None) || clear(1, None))
        }
    }

    /// Every rule asked again point by point, on a grid over the frame: what its
    /// points find in the way is not offered, and where nothing comes within a
    /// mesh of the other, it is.
    #[test]
    fn every_pair_is_what_points_of_the_picture_say() {
        let (mut offered, mut sure) = ([0; 3], 0);
        for (file, alone) in [(0, false), (2, false), (2, true)] {
            let mut layout = open(STARTERS[file]).expect("sound");
            if alone {
                // One picture, shot at once.
                layout.exposures.clear();
                layout.hands.clear();
            }
            let outline = frame_outline(&layout.frame);
            let at = |n: usize| {
                let p = DVec2::new((n % ROW) as f64, (n / ROW) as f64) * MESH - 400.0;
                contains(&outline, p).then_some(p)
            };
            let grid: Vec<Option<DVec2>> = (0..ROW * ROW).map(at).collect();
            let adds: Vec<(Id, Points)> = added(&layout)
                .iter()
                .map(|e| {
                    let at = |p: &Option<DVec2>| {
                        [&e.solid, &e.shadow].map(|r| p.is_some_and(|p| r.contains(p)))
                    };
                    (e.exposure, grid.iter().map(at).collect())
                })
                .collect();
            let wide: Vec<(Id, Points)> = adds.iter().map(|(id, p)| (*id, wider(p))).collect();
            let props = layout.items.iter().filter(|i| !kind_of(&i.prop).is_food());
            let props: Vec<&Item> = props.filter(|i| stays(&layout, i)).collect();
            let found = shared(&layout);
            for (n, a) in props.iter().enumerate() {
                for b in props[n + 1..].iter().filter(|b| same(a, b)) {
                    let both = [a.id, b.id].map(|id| points(&layout, id, &grid));
                    let most = wanted(&layout, &both, &adds);
                    let both = [both[0].clone(), wider(&both[1])];
                    let least = wanted(&layout, &both, &wide);
                    let is = |p: &&Pair| {
                        let ids = [p.first, p.second];
                        ids == [a.id, b.id] || ids == [b.id, a.id]
                    };
                    let told = match found.iter().find(is).map(|p| p.by) {
                        None => 0,
                        Some(Second::There(_)) => 2,
                        Some(Second::OneMore(_)) => 1,
                    };
                    let title = &layout.head.title;
                    assert!(
                        (least..=most).contains(&told),
                        "{title}: {} {:?} {:?}: {told}, not {least} to {most}",
                        a.name,
                        a.id,
                        b.id
                    );
                    offered[told] += 1;
                    sure += usize::from(least == most);
                }
            }
        }
        let all: usize = offered.iter().sum();
        assert!(offered.iter().all(|n| *n > 0), "each is tried: {offered:?}");
        assert!(sure * 10 >= all * 8, "{sure} of {all} are sure");
    }
}
