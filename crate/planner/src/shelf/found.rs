//! What a layout finds on the shelf. No piece is counted twice: where two rows
//! of a list could take the same one, it goes where it leaves the fewest
//! lacking, and of those to what it is most like (a largest flow from pieces to
//! rows, by augmenting paths: L. R. Ford and D. R. Fulkerson, 1956, from memory).
use super::thing::ShelfThing;
use crate::colour::{CLEAR_FROM, hyab, lab};
use crate::layout::Srgb;
use crate::order;
use crate::words::{Arg, listed, say};

/// How much a thing may differ in a side or its height and still stand in for
/// another: this share of it, or so many mm where that is more. Our choice.
pub const SIZE_WITHIN: (f64, i32) = (0.06, 8);

/// What a row of a list asks for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Need {
    /// What it is called.
    pub name: String,
    /// The catalogue's id, or the name of a linen.
    pub prop: String,
    /// Across and down, mm.
    pub size: [i32; 2],
    /// How high, mm.
    pub height: i32,
    /// Its colour outside.
    pub colour: Srgb,
    /// How many.
    pub count: usize,
}

/// What a row finds.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Found {
    /// How many are asked for.
    pub need: usize,
    /// Which things of the shelf it takes, and how many of each.
    pub taken: Vec<(usize, usize)>,
    /// How many of those are of another colour.
    pub other: usize,
    /// Whether the shelf has such a thing at all.
    pub known: bool,
    /// Where they live.
    pub places: Vec<String>,
}

impl Found {
    /// How many there are.
    #[must_use]
    pub fn have(&self) -> usize {
        self.taken.iter().map(|(_, count)| count).sum()
    }

    /// How many are lacking.
    #[must_use]
    pub fn lacks(&self) -> usize {
        self.need - self.have()
    }

    /// In words.
    #[must_use]
    pub fn told(&self) -> String {
        let text = |count: usize| Arg::Text(count.to_string());
        let args = [
            ("have", text(self.have())),
            ("need", text(self.need)),
            ("other", text(self.other)),
            ("places", Arg::Text(listed(&self.places))),
        ];
        let id = match (self.have(), self.other, self.places.is_empty()) {
            (0, ..) if self.known => "shelf-others-take",
            (0, ..) => "shelf-none",
            (_, 0, true) => "shelf-have",
            (_, 0, false) => "shelf-have-at",
            (_, _, true) => "shelf-have-other",
            (_, _, false) => "shelf-have-other-at",
        };
        say(id, &args)
    }
}

/// Whether a length does for another.
fn near(asked: i32, own: i32) -> bool {
    let most = (f64::from(asked) * SIZE_WITHIN.0).max(f64::from(SIZE_WITHIN.1));
    f64::from((asked - own).abs()) <= most
}

/// Whether a thing does for what is asked for.
fn does(need: &Need, thing: &ShelfThing) -> bool {
    let [w, d] = thing.size;
    let fits = |size: [i32; 2]| near(need.size[0], size[0]) && near(need.size[1], size[1]);
    need.prop == thing.prop && near(need.height, thing.height) && (fits([w, d]) || fits([d, w]))
}

fn apart(need: &Need, thing: &ShelfThing) -> f64 {
    hyab(lab(need.colour), lab(thing.colour))
}

/// How unlike they are: of another name, another colour, another size.
fn unlike(need: &Need, thing: &ShelfThing) -> (bool, i32, i32) {
    let size = (need.size[0] - thing.size[0]).abs() + (need.size[1] - thing.size[1]).abs();
    let colour = apart(need, thing) as i32;
    (need.name != thing.name, colour, size)
}

/// A thing a row could take, and how many it does.
struct Offer {
    thing: usize,
    takes: usize,
}

/// What is left of each thing, and what each row could take.
struct Rows {
    left: Vec<usize>,
    offers: Vec<Vec<Offer>>,
}

impl Rows {
    /// What a row takes of a thing it could take.
    fn of(&mut self, row: usize, thing: usize) -> Option<&mut usize> {
        let mut offers = self.offers[row].iter_mut();
        offers.find(|o| o.thing == thing).map(|o| &mut o.takes)
    }

    /// Has a row take so many of a thing, from another row or from what is left.
    fn give(&mut self, thing: usize, count: usize, from: Option<usize>, to: usize) {
        match from.and_then(|row| self.of(row, thing)) {
            Some(takes) => *takes -= count,
            None => self.left[thing] -= count,
        }
        if let Some(takes) = self.of(to, thing) {
            *takes += count;
        }
    }

    /// Gets up to so many for a row, from what is left or from rows that find
    /// the same elsewhere; tells how many.
    fn get(&mut self, row: usize, want: usize, tried: &mut [bool]) -> usize {
        for n in 0..self.offers[row].len() {
            let thing = self.offers[row][n].thing;
            if std::mem::replace(&mut tried[thing], true) {
                continue;
            }
            let free = want.min(self.left[thing]);
            if free > 0 {
                self.give(thing, free, None, row);
                return free;
            }
            for other in 0..self.offers.len() {
                let own = self.of(other, thing).map_or(0, |takes| *takes);
                if other == row || own == 0 {
                    continue;
                }
                let given = self.get(other, want.min(own), tried);
                if given > 0 {
                    self.give(thing, given, Some(other), row);
                    return given;
                }
            }
        }
        0
    }
}

/// What each row finds on the shelf.
#[must_use]
pub fn find(needs: &[Need], shelf: &[ShelfThing]) -> Vec<Found> {
    let mut edges: Vec<((bool, i32, i32), usize, usize)> = Vec::new();
    for (row, need) in needs.iter().enumerate() {
        let fits = shelf.iter().enumerate().filter(|(_, t)| does(need, t));
        edges.extend(fits.map(|(thing, t)| (unlike(need, t), row, thing)));
    }
    order::sort(&mut edges, Ord::cmp);
    let mut rows = Rows {
        left: shelf.iter().map(|t| usize::from(t.count)).collect(),
        offers: needs.iter().map(|_| Vec::new()).collect(),
    };
    let mut lacks: Vec<usize> = needs.iter().map(|n| n.count).collect();
    for (_, row, thing) in edges {
        let takes = lacks[row].min(rows.left[thing]);
        rows.left[thing] -= takes;
        lacks[row] -= takes;
        rows.offers[row].push(Offer { thing, takes });
    }
    for (row, lack) in lacks.iter_mut().enumerate() {
        while *lack > 0 {
            let got = rows.get(row, *lack, &mut vec![false; shelf.len()]);
            if got == 0 {
                break;
            }
            *lack -= got;
        }
    }
    let each = needs.iter().zip(rows.offers);
    each.map(|(need, offers)| told(need, &offers, shelf))
        .collect()
}

fn told(need: &Need, offers: &[Offer], shelf: &[ShelfThing]) -> Found {
    let mut found = Found {
        need: need.count,
        known: !offers.is_empty(),
        ..Found::default()
    };
    for Offer { thing, takes } in offers.iter().filter(|o| o.takes > 0) {
        let own = &shelf[*thing];
        found.taken.push((*thing, *takes));
        if apart(need, own) >= CLEAR_FROM {
            found.other += takes;
        }
        if !own.place.is_empty() && !found.places.contains(&own.place) {
            found.places.push(own.place.clone());
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::LayoutId;
    use proptest::prelude::*;

    fn thing(prop: &str, count: u16) -> ShelfThing {
        let mut thing = ShelfThing::usual(LayoutId(1), prop).expect("known");
        thing.count = count;
        thing
    }

    fn need(like: &ShelfThing, count: usize) -> Need {
        Need {
            name: like.name.clone(),
            prop: like.prop.clone(),
            size: like.size,
            height: like.height,
            colour: like.colour,
            count,
        }
    }

    #[test]
    fn what_is_there_is_told_with_its_place() {
        let mut plate = thing("dinner-plate", 4);
        plate.place = "rack B".into();
        let asked = need(&plate, 6);
        let [found] = find(std::slice::from_ref(&asked), std::slice::from_ref(&plate))
            .try_into()
            .expect("one");
        assert_eq!(found.told(), "have 4 of 6, at rack B");
        assert_eq!((found.have(), found.lacks()), (4, 2));
        plate.place.clear();
        plate.colour = Srgb::hex(0x10_1010);
        let [found] = find(std::slice::from_ref(&asked), &[plate])
            .try_into()
            .expect("one");
        assert_eq!(found.told(), "have 4 of 6, 4 of another colour");
        let [none] = find(&[asked], &[]).try_into().expect("one");
        assert_eq!(none.told(), "not on the shelf");
    }

    #[test]
    fn a_size_does_within_its_bounds_and_no_farther() {
        let plate = thing("dinner-plate", 4);
        let most = (f64::from(plate.size[0]) * SIZE_WITHIN.0) as i32;
        for (off, have) in [(0, 4), (most, 4), (1 - most, 4), (most + 2, 0), (-most, 0)] {
            let mut asked = need(&plate, 4);
            asked.size[0] += off;
            let found = find(&[asked], std::slice::from_ref(&plate));
            assert_eq!(found[0].have(), have, "{off} mm");
        }
        let board = thing("wooden-board", 1);
        let mut turned = need(&board, 1);
        turned.size.swap(0, 1);
        assert_eq!(find(&[turned], &[board])[0].have(), 1, "either way round");
    }

    #[test]
    fn no_piece_is_counted_twice_and_none_is_wasted() {
        // The wider plate does for both rows, the narrower for one alone.
        let (mut wide, mut narrow) = (thing("dinner-plate", 2), thing("dinner-plate", 2));
        (wide.size, narrow.size) = ([280, 280], [266, 266]);
        let mut both = need(&narrow, 2);
        both.size = [272, 272];
        let mut one = need(&wide, 2);
        one.size = [290, 290];
        let found = find(&[both, one], &[wide.clone(), narrow]);
        assert_eq!([found[0].have(), found[1].have()], [2, 2]);
        let same = need(&wide, 2);
        let found = find(&[same.clone(), same], &[wide]);
        assert_eq!([found[0].have(), found[1].have()], [2, 0]);
        assert_eq!(found[1].told(), "none left: other rows take them");
    }

    /// The most that rows can get, each piece tried with every row and with none.
    fn most(needs: &[Need], lacks: &mut [usize], pieces: &[&ShelfThing]) -> usize {
        let Some((piece, rest)) = pieces.split_first() else {
            return 0;
        };
        let mut best = most(needs, lacks, rest);
        for row in 0..needs.len() {
            if lacks[row] > 0 && does(&needs[row], piece) {
                lacks[row] -= 1;
                best = best.max(1 + most(needs, lacks, rest));
                lacks[row] += 1;
            }
        }
        best
    }

    proptest! {
        #[test]
        fn nobody_could_find_more(
            sizes in prop::collection::vec((240..300, 0_usize..3), 1..4),
            own in prop::collection::vec((240..300, 1_u16..3), 0..4),
        ) {
            let plate = thing("dinner-plate", 1);
            let needs: Vec<Need> = sizes.iter().map(|(size, count)| Need {
                size: [*size; 2],
                ..need(&plate, *count)
            }).collect();
            let shelf: Vec<ShelfThing> = own.iter().map(|(size, count)| ShelfThing {
                size: [*size; 2],
                count: *count,
                ..plate.clone()
            }).collect();
            let found = find(&needs, &shelf);
            for (n, thing) in shelf.iter().enumerate() {
                let taken = found.iter().flat_map(|f| &f.taken).filter(|(t, _)| *t == n);
                let taken: usize = taken.map(|(_, count)| count).sum();
                prop_assert!(taken <= usize::from(thing.count), "thing {} twice", n);
            }
            let have: usize = found.iter().map(Found::have).sum();
            let each = shelf.iter().map(|t| vec![t; usize::from(t.count)]);
            let pieces: Vec<&ShelfThing> = each.flatten().collect();
            let mut lacks: Vec<usize> = needs.iter().map(|n| n.count).collect();
            prop_assert_eq!(have, most(&needs, &mut lacks, &pieces));
        }
    }
}
