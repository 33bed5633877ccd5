//! The serif that goes with every drawing.
use ttf_parser::{Face, GlyphId};

/// A cut of the serif.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Cut {
    /// Upright.
    Regular,
    /// Heavy; also where both bold and italic are asked for.
    Bold,
    /// Slanted.
    Italic,
}

/// All cuts, in the order of their numbers.
pub(crate) const CUTS: [Cut; 3] = [Cut::Regular, Cut::Bold, Cut::Italic];

impl Cut {
    /// The font file.
    pub(crate) const fn data(self) -> &'static [u8] {
        match self {
            Self::Regular => include_bytes!("../fonts/NotoSerif-Regular.ttf"),
            Self::Bold => include_bytes!("../fonts/NotoSerif-Bold.ttf"),
            Self::Italic => include_bytes!("../fonts/NotoSerif-Italic.ttf"),
        }
    }

    /// Its name within a document.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Regular => "NotoSerif",
            Self::Bold => "NotoSerif-Bold",
            Self::Italic => "NotoSerif-Italic",
        }
    }
}

/// A letter that has no ink of its own and only tells how others are set: none
/// of a line is ever drawn.
const fn is_silent(letter: char) -> bool {
    matches!(letter, '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}'
        | '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fe00}'..='\u{fe0f}')
}

/// The glyphs of `text` with their letters; the glyph is 0 where the serif has
/// none.
pub(crate) fn glyphs(face: &Face, text: &str) -> Vec<(u16, char)> {
    let letters = text.chars().filter(|&letter| !is_silent(letter));
    letters
        .map(|letter| (face.glyph_index(letter).map_or(0, |glyph| glyph.0), letter))
        .collect()
}

/// How far `glyph` advances, in shares of the size of the letters.
pub(crate) fn advance(face: &Face, glyph: u16) -> f64 {
    let units = face.glyph_hor_advance(GlyphId(glyph)).unwrap_or_default();
    f64::from(units) / f64::from(face.units_per_em())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_cut_is_read_and_holds_letters_of_three_alphabets() {
        for cut in CUTS {
            let face = Face::parse(cut.data(), 0).expect("a font");
            for (glyph, letter) in glyphs(&face, "aéőαЖạ½×″–“•") {
                assert_ne!(glyph, 0, "{letter} in {}", cut.name());
                assert!(advance(&face, glyph) > 0.0, "{letter} is broad");
            }
        }
    }

    #[test]
    fn marks_that_only_order_letters_are_left_out() {
        let face = Face::parse(Cut::Regular.data(), 0).expect("a font");
        let text = glyphs(&face, "\u{2068}Pot\u{2069}");
        let letters: String = text.into_iter().map(|(_, letter)| letter).collect();
        assert_eq!(letters, "Pot");
    }
}
