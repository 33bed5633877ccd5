//! What a document uses of each cut of the serif.
use std::collections::{BTreeMap, BTreeSet};

use subsetter::GlyphRemapper;
use ttf_parser::Face;

use crate::face::{CUTS, Cut, advance, glyphs};

/// Lengths in a document's fonts are counted in thousandths of the letters' size.
const UNIT: f64 = 1000.0;

/// Words set in a cut.
pub(crate) struct Set {
    /// Two bytes a letter.
    pub(crate) codes: Vec<u8>,
    /// In shares of the letters' size.
    pub(crate) breadth: f64,
}

/// The cuts, and what is used of each.
pub(crate) struct Fonts {
    used: [Used; CUTS.len()],
}

/// What is used of a cut.
#[derive(Default)]
struct Used {
    /// The cut, once anything is used of it.
    face: Option<Face<'static>>,
    /// Numbers in the document.
    codes: GlyphRemapper,
    /// The letter each number stands for.
    letters: BTreeMap<u16, char>,
}

/// What goes into the document of a cut.
pub(crate) struct Part {
    pub(crate) cut: Cut,
    pub(crate) file: Vec<u8>,
    pub(crate) letters: Vec<(u16, char)>,
    pub(crate) widths: Vec<f32>,
    pub(crate) measures: Measures,
}

/// Measures of a cut, in thousandths of the letters' size; the slant in degrees.
pub(crate) struct Measures {
    /// Left, bottom, right and top.
    pub(crate) bounds: [f32; 4],
    pub(crate) slant: f32,
    pub(crate) ascent: f32,
    pub(crate) descent: f32,
    pub(crate) capitals: f32,
    /// Breadth of an upright stroke, as usual for the weight.
    pub(crate) stem: f32,
}

impl Default for Fonts {
    fn default() -> Self {
        Self::new()
    }
}

impl Fonts {
    pub(crate) fn new() -> Self {
        Self {
            used: CUTS.map(|_| Used::default()),
        }
    }

    /// Sets words; letters that the serif has no shape of are told in `missing`.
    pub(crate) fn set(&mut self, cut: Cut, words: &str, missing: &mut BTreeSet<char>) -> Set {
        let used = &mut self.used[cut as usize];
        if used.face.is_none() {
            used.face = Face::parse(cut.data(), 0).ok();
        }
        let mut set = Set {
            codes: Vec::with_capacity(words.len() * 2),
            breadth: 0.0,
        };
        let Some(face) = &used.face else {
            return set;
        };
        for (glyph, letter) in glyphs(face, words) {
            if glyph == 0 {
                missing.insert(letter);
            }
            let code = used.codes.remap(glyph);
            if glyph != 0 {
                used.letters.entry(code).or_insert(letter);
            }
            set.codes.extend(code.to_be_bytes());
            set.breadth += advance(face, glyph);
        }
        set
    }

    /// What goes into the document of every cut that is used.
    pub(crate) fn parts(self) -> Vec<Part> {
        let pairs = CUTS.into_iter().zip(self.used);
        pairs.filter_map(|(cut, used)| part(cut, used)).collect()
    }
}

fn part(cut: Cut, used: Used) -> Option<Part> {
    let face = used.face?;
    let file = subsetter::subset(cut.data(), 0, &used.codes).ok()?;
    let by = UNIT / f64::from(face.units_per_em());
    let short = |units: i16| (f64::from(units) * by) as f32;
    let bounds = face.global_bounding_box();
    let glyphs = used.codes.remapped_gids();
    Some(Part {
        cut,
        file,
        letters: used.letters.into_iter().collect(),
        widths: glyphs
            .map(|glyph| (advance(&face, glyph) * UNIT) as f32)
            .collect(),
        measures: Measures {
            bounds: [bounds.x_min, bounds.y_min, bounds.x_max, bounds.y_max].map(short),
            slant: face.italic_angle(),
            ascent: short(face.ascender()),
            descent: short(face.descender()),
            capitals: short(face.capital_height().unwrap_or(face.ascender())),
            stem: if cut == Cut::Bold { 140.0 } else { 90.0 },
        },
    })
}

impl Part {
    /// The name of the font in the document: before it six letters that differ
    /// where its part does.
    pub(crate) fn name(&self) -> String {
        let mut mixed = 0xcbf2_9ce4_8422_2325_u64;
        for &byte in &self.file {
            mixed = (mixed ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
        }
        let mut name = String::new();
        for _ in 0..6 {
            name.push(char::from(b'A' + (mixed % 26) as u8));
            mixed /= 26;
        }
        name + "+" + self.cut.name()
    }
}
