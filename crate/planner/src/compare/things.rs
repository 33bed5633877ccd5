//! Things on the table and the groups they are in.
use super::motion::{Pair, alike, clusters};
use super::{Change, Said, Sides, Topic, instead, plain};
use crate::commands::name_of;
use crate::edit::{Edit, Object};
use crate::layout::{Id, Item, Layout, Point, Role, Size, Source, Stock};
use crate::order;
use crate::words::{Arg, say};

/// A name, or what stands for one that is empty.
pub(super) fn called(name: &str) -> Arg {
    Arg::Name(if name.is_empty() {
        say("name-thing", &[])
    } else {
        name.into()
    })
}

/// A thing by its number, where it has one.
pub(super) fn what(item: &Item) -> Arg {
    let number = ("number", Arg::Text(item.number.to_string()));
    let id = match item.number {
        0 => "compare-the",
        _ => "compare-thing",
    };
    Arg::Text(say(id, &[number, ("thing", called(&item.name))]))
}

/// What the things of a cluster are called together, the chief one first: how
/// many there are of that number, or the group they make up.
fn together(layout: &Layout, items: &[&Item]) -> Arg {
    let Some(&chief) = items.first() else {
        return Arg::Text(String::new());
    };
    let count = items.iter().filter(|item| alike(chief, item)).count();
    let several = items
        .iter()
        .any(|item| item.id != chief.id && item.group == chief.group);
    let group = layout.groups.iter().find(|g| Some(g.id) == chief.group);
    let group = group.filter(|group| several && !group.name.is_empty());
    let number = ("number", Arg::Text(chief.number.to_string()));
    let thing = ("thing", called(&chief.name));
    Arg::Text(match group {
        _ if chief.number == 0 => return what(chief),
        _ if count > 1 => {
            let count = ("count", Arg::Text(count.to_string()));
            say("compare-things", &[number, thing, count])
        }
        Some(group) => {
            let group = ("group", Arg::Name(group.name.clone()));
            say("compare-grouped", &[number, thing, group])
        }
        None => return what(chief),
    })
}

/// Brings the chief of a cluster to its front: what lies on none of the
/// others, and of that the lowest number.
fn chief_first(items: &mut [&Item]) {
    let ids: Vec<Id> = items.iter().map(|item| item.id).collect();
    let lies = |item: &Item| item.on.is_some_and(|on| ids.contains(&on));
    order::sort(items, |a, b| {
        (lies(a), a.number, a.id).cmp(&(lies(b), b.number, b.id))
    });
}

fn ids(items: &[&Item]) -> Vec<Id> {
    items.iter().map(|item| item.id).collect()
}

impl Sides<'_> {
    fn tell_thing(
        &mut self,
        item: &Item,
        objects: Vec<Id>,
        told: String,
        path: Option<[Point; 2]>,
    ) {
        self.told.push(Change {
            number: Some(item.number).filter(|number| *number > 0),
            topic: Topic::Thing,
            objects,
            sentence: told,
            moved: path,
        });
    }
}

/// Tells what became of the things.
pub(super) fn items(sides: &mut Sides<'_>, edit: &Edit) {
    let (mut both, mut new, mut gone) = (Vec::new(), Vec::new(), Vec::new());
    for change in &edit.0 {
        let old = change.before.as_ref().map(|p| &p.object);
        let now = change.after.as_ref().map(|p| &p.object);
        match (old, now) {
            (Some(Object::Item(old)), Some(Object::Item(new))) => both.push(Pair { old, new }),
            (Some(Object::Item(old)), None) => gone.push(old),
            (None, Some(Object::Item(now))) => new.push(now),
            _ => {}
        }
    }
    moves(sides, &both);
    come_or_gone(sides, &new, "compare-added");
    come_or_gone(sides, &gone, "compare-removed");
    for pair in both.into_iter().filter(|pair| pair.old != pair.new) {
        looks(sides, pair);
    }
    overlaps(sides);
}

fn come_or_gone(sides: &mut Sides<'_>, items: &[&Item], id: &str) {
    let layout = if id == "compare-added" {
        sides.after
    } else {
        sides.before
    };
    let linked = |a: usize, b: usize| {
        let (a, b) = (items[a], items[b]);
        let grouped = a.group.is_some() && a.group == b.group;
        a.on == Some(b.id) || b.on == Some(a.id) || grouped || alike(a, b)
    };
    for cluster in clusters(items.len(), &linked) {
        let mut cluster: Vec<&Item> = cluster.into_iter().map(|n| items[n]).collect();
        chief_first(&mut cluster);
        let told = say(id, &[("what", together(layout, &cluster))]);
        sides.tell_thing(cluster[0], ids(&cluster), told, None);
    }
}

/// What moved, turned or changed places.
fn moves(sides: &mut Sides<'_>, both: &[Pair<'_>]) {
    let moving: Vec<Pair<'_>> = both.iter().copied().filter(|pair| pair.moves()).collect();
    let linked = |a: usize, b: usize| moving[a].together(moving[b]);
    let mut all: Vec<(Pair<'_>, Vec<&Item>)> = Vec::new();
    for cluster in clusters(moving.len(), &linked) {
        let mut items: Vec<&Item> = cluster.iter().map(|n| moving[*n].new).collect();
        chief_first(&mut items);
        let chief = moving.iter().find(|pair| pair.new.id == items[0].id);
        all.extend(chief.map(|chief| (*chief, items)));
    }
    let mut swapped = vec![false; all.len()];
    for a in 0..all.len() {
        let met = |b: &usize| !swapped[*b] && all[a].0.swapped(all[*b].0);
        let Some(b) = (a + 1..all.len()).find(|b| !swapped[a] && met(b)) else {
            continue;
        };
        (swapped[a], swapped[b]) = (true, true);
        let (first, second) = if all[a].0.new.number <= all[b].0.new.number {
            (&all[a], &all[b])
        } else {
            (&all[b], &all[a])
        };
        let [one, other] = [first, second].map(|(_, items)| together(sides.after, items));
        let told = say("compare-swapped", &[("what", one), ("other", other)]);
        let objects = [ids(&first.1), ids(&second.1)].concat();
        sides.tell_thing(first.0.new, objects, told, first.0.path());
    }
    for ((chief, items), swapped) in all.iter().zip(swapped) {
        let path = chief.path().filter(|_| !swapped);
        let what = together(sides.after, items);
        if let Some(told) = sides.motion(&what, path, chief.half()) {
            sides.tell_thing(chief.new, ids(items), told, path);
        }
    }
}

/// What changed in a thing itself. Another vessel brings its own name, size,
/// colours and shine.
fn looks(sides: &mut Sides<'_>, pair: Pair<'_>) {
    let Pair { old, new } = pair;
    let mut told: Vec<Said<'_>> = Vec::new();
    let name = |thing: &str| vec![("thing", Arg::Name(thing.into()))];
    let swapped = old.prop != new.prop;
    if swapped {
        let args = [("what", what(old)), ("thing", Arg::Name(new.name.clone()))];
        let told = say("compare-vessel", &args);
        sides.tell_thing(new, vec![new.id], told, None);
    } else {
        if old.name != new.name {
            told.push(("compare-renamed", name(&new.name)));
        }
        if old.size != new.size {
            told.push(size(sides, &old.size, &new.size));
        }
        if old.height != new.height {
            told.push(instead(
                "compare-high",
                sides.lengths(old.height, new.height),
            ));
        }
        if old.parts != new.parts {
            told.push(plain("compare-colour"));
        }
        if old.finish != new.finish {
            told.push(plain("compare-shine"));
        }
        if old.face != new.face {
            told.push(plain("compare-face"));
        }
    }
    if old.role != new.role {
        let id = match new.role {
            Role::Hero => "compare-hero",
            Role::Support => "compare-support",
            Role::Accent => "compare-accent",
            Role::Filler => "compare-filler",
        };
        told.push((id, Vec::new()));
    }
    if let Some(on) = new.on.filter(|_| old.on != new.on) {
        told.push(("compare-on", name(&name_of(sides.after, on))));
    } else if let Some(off) = old.on.filter(|_| old.on != new.on) {
        told.push(("compare-off", name(&name_of(sides.before, off))));
    }
    if old.group != new.group {
        let id = if new.group.is_some() {
            "compare-together"
        } else {
            "compare-apart"
        };
        told.push((id, Vec::new()));
    }
    if old.hold_minutes != new.hold_minutes {
        told.push(match new.hold_minutes {
            None => plain("compare-hold-usual"),
            Some(minutes) => {
                let minutes = Arg::Text(minutes.to_string());
                ("compare-hold", vec![("minutes", minutes)])
            }
        });
    }
    if old.stand_in != new.stand_in {
        told.push(if new.stand_in.is_empty() {
            plain("compare-real")
        } else {
            ("compare-stand-in", name(&new.stand_in))
        });
    }
    told.extend(stock(&old.stock, &new.stock));
    let unsaid = old.locked == new.locked || old.extra != new.extra || old.number != new.number;
    if told.is_empty() && !swapped && !pair.moves() && unsaid {
        told.push(plain("compare-else"));
    }
    for (id, mut args) in told {
        args.push(("what", what(new)));
        let told = say(id, &args);
        sides.tell_thing(new, vec![new.id], told, None);
    }
}

/// What the lists say of it otherwise.
pub(super) fn stock(old: &Stock, new: &Stock) -> Vec<Said<'static>> {
    let mut told = Vec::new();
    if old.spare != new.spare {
        let count = Arg::Text(new.spare.to_string());
        told.push(("compare-spare", vec![("count", count)]));
    }
    if old.source != new.source {
        told.push(plain(match new.source {
            None => "compare-source-unsaid",
            Some(Source::Own) => "compare-source-own",
            Some(Source::Hire) => "compare-source-hire",
            Some(Source::Buy) => "compare-source-buy",
            Some(Source::Borrow) => "compare-source-borrow",
            Some(Source::Client) => "compare-source-client",
        }));
    }
    if old.shelf != new.shelf {
        told.push(if new.shelf.is_empty() {
            plain("compare-shelf-unsaid")
        } else {
            let shelf = Arg::Name(new.shelf.clone());
            ("compare-shelf", vec![("shelf", shelf)])
        });
    }
    told
}

fn size(sides: &Sides<'_>, old: &Size, new: &Size) -> Said<'static> {
    if let (Size::Disc { diameter: a, .. }, Size::Disc { diameter: b, .. }) = (old, new)
        && sides.length(*a) != sides.length(*b)
    {
        return instead("compare-across", sides.lengths(*a, *b));
    }
    let [before, after] = [old, new].map(|size| sides.sides_of(size.extent()));
    if before == after {
        plain("compare-outline")
    } else {
        instead("compare-instead", [before, after])
    }
}

/// How far a thing reaches from its middle: the circle that holds its box.
fn reach(item: &Item) -> f64 {
    let [w, d] = item.size.extent().map(f64::from);
    libm::hypot(w, d) * 0.5
}

/// Whether one of the two may lie over the other, both on the same thing.
fn meet(a: &Item, b: &Item) -> bool {
    a.on == b.on && a.at.vec().distance(b.at.vec()) < reach(a) + reach(b)
}

/// Tells of things that may overlap, before and after, the other way round.
fn overlaps(sides: &mut Sides<'_>) {
    let after = &sides.after.items;
    let both = sides.before.items.iter().filter_map(|old| {
        let place = after.iter().position(|new| new.id == old.id)?;
        Some((place, old, &after[place]))
    });
    let both: Vec<(usize, &Item, &Item)> = both.collect();
    if both.windows(2).all(|two| two[0].0 < two[1].0) {
        return;
    }
    let mut turned: Vec<[&Item; 2]> = Vec::new();
    for (n, a) in both.iter().enumerate() {
        let over = both[n + 1..].iter().filter(|b| a.0 > b.0);
        for b in over.filter(|b| meet(a.1, b.1) && meet(a.2, b.2)) {
            let first = (a.2.number, a.2.id) < (b.2.number, b.2.id);
            turned.push(if first { [a.2, b.2] } else { [b.2, a.2] });
        }
    }
    let key = |[a, b]: &[&Item; 2]| (a.number, a.id, b.number, b.id);
    order::sort(&mut turned, |a, b| key(a).cmp(&key(b)));
    for [a, b] in turned {
        let args = [("what", what(a)), ("other", what(b))];
        sides.tell_thing(a, vec![a.id, b.id], say("compare-overlap", &args), None);
    }
}

/// Tells what became of groups of which no thing tells.
pub(super) fn groups(sides: &mut Sides<'_>, edit: &Edit) {
    for change in &edit.0 {
        let old = change.before.as_ref().map(|p| &p.object);
        let new = change.after.as_ref().map(|p| &p.object);
        let (Some(Object::Group(group)), true) = (new.or(old), old != new) else {
            continue;
        };
        let in_it = |c: &Change| {
            c.objects.iter().any(|id| {
                let own = |l: &Layout| {
                    l.items
                        .iter()
                        .any(|o| o.id == *id && o.group == Some(group.id))
                };
                own(sides.before) || own(sides.after)
            })
        };
        if old.is_some() == new.is_some() || !sides.told.iter().any(in_it) {
            let args = [("thing", Arg::Name(group.name.clone()))];
            sides.tell(Topic::Thing, &[group.id], "compare-group", &args);
        }
    }
}
