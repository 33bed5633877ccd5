//! One thing of the shelf, as it is kept and as a list has it.
use crate::catalogue::{item_from, linen, linen_from, linens, prop, shown_parts};
use crate::layout::{
    Finish, Id, Item, Layout, LayoutId, Linen, MAX_HEIGHT, MAX_NAME, MAX_SIZE, MAX_SPARE, Part,
    Source, Srgb, Stock, clean_text,
};

/// Most of one sort.
pub const MAX_COUNT: u16 = MAX_SPARE as u16 + 1;

/// A thing of one's own, or several that are the same.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ShelfThing {
    /// The identity it is kept under.
    pub id: LayoutId,
    /// What it is called.
    pub name: String,
    /// The thing of the catalogue whose outline it takes: its id, or the name of
    /// a linen.
    pub prop: String,
    /// Across and down, mm.
    pub size: [i32; 2],
    /// How high it is, mm; 0 for a linen.
    pub height: i32,
    /// Its colour outside.
    pub colour: Srgb,
    /// Its colour inside, where that is told apart.
    pub inside: Option<Srgb>,
    /// How it shines.
    pub finish: Finish,
    /// How many there are.
    pub count: u16,
    /// Where they live.
    pub place: String,
}

/// What is kept: the one thing everything else stands on.
enum Chief<'a> {
    Item(&'a Item),
    Linen(&'a Linen),
}

fn chief(kept: &Layout) -> Option<Chief<'_>> {
    let linen = kept.linens.first().map(Chief::Linen);
    let item = kept.items.iter().find(|o| o.on.is_none());
    linen.or_else(|| item.map(Chief::Item))
}

/// The tone that covers most of a part.
pub(super) fn main_tone(part: &Part) -> Option<Srgb> {
    let tones = part.colours.iter().rev();
    tones.max_by_key(|t| t.share).map(|t| t.srgb)
}

/// The colours a thing shows outside and inside.
pub(crate) fn tones(item: &Item) -> (Srgb, Option<Srgb>) {
    let shown = shown_parts(item);
    let outside = shown.rim.as_ref().or(shown.food.as_ref());
    let outside = outside.and_then(main_tone).unwrap_or_default();
    let inside = shown.well.as_ref().and_then(main_tone);
    (outside, inside.filter(|inside| *inside != outside))
}

impl ShelfThing {
    /// What is kept in a file of its own; nothing where it holds no thing.
    #[must_use]
    pub fn of(kept: &Layout) -> Option<Self> {
        let counted = |stock: &Stock| stock.spare.min(MAX_COUNT - 1) + 1;
        Some(match chief(kept)? {
            Chief::Item(item) => {
                let (colour, inside) = tones(item);
                Self {
                    id: kept.id,
                    name: item.name.clone(),
                    prop: item.prop.clone(),
                    size: item.size.extent(),
                    height: item.height,
                    colour,
                    inside,
                    finish: item.finish,
                    count: counted(&item.stock),
                    place: item.stock.shelf.clone(),
                }
            }
            Chief::Linen(cloth) => Self {
                id: kept.id,
                name: cloth.name.clone(),
                prop: linen(cloth.kind).name.into(),
                size: cloth.size,
                height: 0,
                colour: cloth.colour,
                inside: None,
                finish: Finish::Matt,
                count: counted(&cloth.stock),
                place: cloth.stock.shelf.clone(),
            },
        })
    }

    /// One of a thing of the catalogue, or of a linen by its name; nothing for
    /// what it does not have.
    #[must_use]
    pub fn usual(id: LayoutId, prop: &str) -> Option<Self> {
        Self::of(&bare(id, prop)?)
    }

    /// So wide and so deep, mm; for 0 as it is, a depth nobody tells in the
    /// proportion it has.
    #[must_use]
    pub fn sized(mut self, width: i32, depth: i32) -> Self {
        let [w, d] = self.size;
        let width = if width > 0 { width } else { w };
        let scaled = f64::from(d) * f64::from(width) / f64::from(w.max(1));
        let depth = if depth > 0 {
            depth
        } else {
            scaled.round() as i32
        };
        self.size = [width, depth];
        self
    }

    /// Writes it into the file it is kept in, whose thing it is; what stands on
    /// that stays. What is out of bounds is brought within them.
    pub fn write(&self, kept: &mut Layout) {
        let name = short(&self.name);
        let stock = |stock: &mut Stock| {
            stock.spare = self.count.clamp(1, MAX_COUNT) - 1;
            stock.shelf = short(&self.place);
            stock.source = stock.source.or(Some(Source::Own));
        };
        kept.head.title.clone_from(&name);
        if let Some(cloth) = kept.linens.first_mut() {
            cloth.name = name;
            cloth.size = self.size.map(|side| side.clamp(1, MAX_SIZE));
            cloth.colour = self.colour;
            stock(&mut cloth.stock);
        } else if let Some(item) = kept.items.iter_mut().find(|o| o.on.is_none()) {
            item.name = name;
            if self.size != item.size.extent() {
                item.size = item.size.resized(self.size[0], self.size[1]);
            }
            item.height = self.height.clamp(0, MAX_HEIGHT);
            item.finish = self.finish;
            // A part keeps its other tones while its chief one is the same.
            if tones(item).0 != self.colour {
                let plain = Some(Part::plain(self.colour));
                match shown_parts(item).rim {
                    Some(_) => item.parts.rim = plain,
                    None => item.parts.food = plain,
                }
            }
            if tones(item).1 != self.inside {
                let inside = self.inside.unwrap_or(self.colour);
                item.parts.well = Some(Part::plain(inside));
            }
            stock(&mut item.stock);
        }
    }

    /// A file of its own that holds it; nothing for what the catalogue does not
    /// have.
    #[must_use]
    pub fn kept(&self) -> Option<Layout> {
        let mut kept = bare(self.id, &self.prop)?;
        self.write(&mut kept);
        Some(kept)
    }

    /// Whether it is cloth.
    #[must_use]
    pub fn is_linen(&self) -> bool {
        linens().iter().any(|l| l.name == self.prop)
    }
}

/// Text without what does not belong in it, as long as a name may be.
pub(super) fn short(text: &str) -> String {
    clean_text(text).chars().take(MAX_NAME).collect()
}

/// A thing of the catalogue in a file of its own.
fn bare(own: LayoutId, id: &str) -> Option<Layout> {
    let mut kept = Layout::empty(own);
    let middle = kept.table.centre();
    if let Some(known) = linens().iter().find(|l| l.name == id) {
        kept.linens.push(linen_from(known, Id(1), middle));
        kept.head.title = known.name.into();
    } else {
        let entry = prop(id)?;
        kept.items.push(item_from(entry, Id(1), 1, middle));
        kept.head.title = entry.name.into();
    }
    (kept.head.next_id, kept.head.next_number) = (2, 2);
    Some(kept)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::props;
    use crate::layout::open;

    #[test]
    fn everything_of_the_catalogue_goes_on_the_shelf_and_comes_back() {
        let all = props().iter().map(|e| e.id);
        for prop in all.chain(linens().iter().map(|l| l.name)) {
            let mut thing = ShelfThing::usual(LayoutId(9), prop).expect("known");
            thing.name = "the good one".into();
            thing.size = [thing.size[0] + 20, thing.size[0] + 20];
            thing.count = 6;
            thing.place = "rack B".into();
            thing.colour = Srgb::hex(0x12_3456);
            let kept = thing.kept().expect("known");
            assert_eq!(open(&kept.to_json()).as_ref(), Ok(&kept), "{prop}: sound");
            assert_eq!(ShelfThing::of(&kept), Some(thing.clone()), "{prop}");
            assert_eq!(thing.is_linen(), kept.items.is_empty(), "{prop}");
        }
        let sized = ShelfThing::usual(LayoutId(9), "dinner-plate").expect("known");
        assert_eq!(sized.clone().sized(250, 0).size, [250, 250], "round");
        assert_eq!(sized.sized(0, 0).size, [270, 270], "as usual");
        assert!(ShelfThing::usual(LayoutId(9), "unheard-of").is_none());
        assert!(ShelfThing::of(&Layout::empty(LayoutId(9))).is_none());
    }

    #[test]
    fn what_is_changed_leaves_the_rest_and_stays_in_bounds() {
        let mut kept = bare(LayoutId(9), "dinner-plate").expect("known");
        kept.items[0].parts.rim = Some(Part {
            colours: crate::catalogue::prop("pasta-bowl").map_or_else(Vec::new, |e| e.rim.to_vec()),
        });
        let before = kept.items[0].parts.clone();
        let mut thing = ShelfThing::of(&kept).expect("a plate");
        (thing.count, thing.height) = (0, 9_000);
        thing.name = "x".repeat(300);
        thing.write(&mut kept);
        assert_eq!(kept.items[0].parts, before, "its colours are as they were");
        assert_eq!(kept.items[0].stock.spare, 0, "one at least");
        assert_eq!(kept.items[0].name.len(), MAX_NAME);
        assert!(open(&kept.to_json()).is_ok(), "within bounds");
    }
}
