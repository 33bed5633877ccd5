//! Cloth on the table.
use super::things::{called, stock};
use super::{Said, Sides, Topic, instead, plain};
use crate::edit::{Edit, Object};
use crate::layout::{Item, Layout, Linen, LinenState};
use crate::order;
use crate::words::{Arg, hour, listed, say};

/// A thing by its number, within a list.
fn numbered(item: &Item) -> String {
    let number = ("number", Arg::Text(item.number.to_string()));
    say("compare-thing", &[number, ("thing", called(&item.name))])
}

/// A linen by its name, and by its hour where there are more of that name.
fn cloth(layout: &Layout, linen: &Linen) -> Arg {
    let alike = layout
        .linens
        .iter()
        .any(|o| o.id != linen.id && o.name == linen.name);
    let thing = ("thing", called(&linen.name));
    if !alike {
        return thing.1;
    }
    let clock = ("clock", Arg::Text(hour(linen.at.vec(), &layout.frame)));
    Arg::Text(say("name-at", &[thing, clock]))
}

/// A linen at the beginning of a sentence.
fn the(layout: &Layout, linen: &Linen) -> Arg {
    Arg::Text(say("compare-the", &[("thing", cloth(layout, linen))]))
}

/// Tells what became of the cloths.
pub(super) fn linens(sides: &mut Sides<'_>, edit: &Edit) {
    for change in &edit.0 {
        let old = change.before.as_ref().map(|p| &p.object);
        let new = change.after.as_ref().map(|p| &p.object);
        match (old, new) {
            (Some(Object::Linen(old)), Some(Object::Linen(new))) if old != new => {
                linen(sides, old, new);
            }
            (None, Some(Object::Linen(new))) => {
                let what = [("what", the(sides.after, new))];
                sides.tell(Topic::Linen, &[new.id], "compare-new", &what);
            }
            (Some(Object::Linen(old)), None) => {
                let what = [("what", the(sides.before, old))];
                sides.tell(Topic::Linen, &[old.id], "compare-gone", &what);
            }
            _ => {}
        }
    }
    let order = |l: &Layout| l.linens.iter().map(|o| o.id).collect();
    sides.tell_order(Topic::Linen, "compare-cloths", &order);
}

fn linen(sides: &mut Sides<'_>, old: &Linen, new: &Linen) {
    let what = the(sides.after, new);
    let start = sides.told.len();
    let half = new.turn.half_degrees() - old.turn.half_degrees();
    sides.tell_motion(Topic::Linen, &[new.id], &what, [old.at, new.at], half);
    let mut told: Vec<Said<'_>> = Vec::new();
    if old.state != new.state {
        let id = match new.state {
            LinenState::Flat => "compare-flat",
            LinenState::Folded => "compare-folded",
            LinenState::Bunched => "compare-bunched",
            LinenState::Thrown => "compare-thrown",
        };
        told.push((id, Vec::new()));
    }
    if old.name != new.name {
        told.push((
            "compare-renamed",
            vec![("thing", Arg::Name(new.name.clone()))],
        ));
    }
    let [before, after] = [old.size, new.size].map(|size| sides.sides_of(size));
    if before != after {
        told.push(instead("compare-instead", [before, after]));
    } else if old.size != new.size {
        told.push(plain("compare-outline"));
    }
    if old.colour != new.colour {
        told.push(plain("compare-colour"));
    }
    for (id, more, less) in [
        ("compare-over", &new.over, &old.over),
        ("compare-under", &old.over, &new.over),
    ] {
        let items = sides.after.items.iter();
        let apart = items.filter(|o| more.contains(&o.id) && !less.contains(&o.id));
        let mut apart: Vec<&Item> = apart.collect();
        order::sort(&mut apart, |a, b| (a.number, a.id).cmp(&(b.number, b.id)));
        let names: Vec<String> = apart.into_iter().map(numbered).collect();
        if !names.is_empty() {
            told.push((id, vec![("things", Arg::Text(listed(&names)))]));
        }
    }
    told.extend(stock(&old.stock, &new.stock));
    let mut rest = old.clone();
    (rest.locked, rest.over) = (new.locked, new.over.clone());
    if !told.is_empty() || rest != *new {
        sides.tell_all(Topic::Linen, &[new.id], start, &what, told);
    }
}
