//! Text in fewer bytes: common words of the table as one byte each.
//!
//! A byte from 0x80 to 0xBF never begins a letter in UTF-8, so where a letter
//! would begin it can stand for a word.
use super::bytes::{Bad, Bytes, put_varint};

/// The words, in the order of their bytes from 0x80. Links in the world refer
/// to these places: never change one.
#[rustfmt::skip]
pub(super) static WORDS: [&str; 64] = [
    "pot", "pan", "bowl", "plate", "platter", "dish", "board", "tray",
    "glass", "cup", "mug", "jug", "bottle", "carafe", "candle", "vase",
    "fork", "knife", "spoon", "napkin", "runner", "cloth", "mat", "table",
    "wine", "water", "oil", "salt", "pepper", "bread", "loaf", "lemon",
    "olive", "herb", "sprig", "mussel", "shell", "fish", "egg", "cheese",
    "salad", "tomato", "potato", "soup", "rice", "fruit", "wedge", "half",
    "slice", "dark", "pale", "white", "blue", "green", "red", "small",
    "large", "round", "oval", "page", "post", "banner", "upright", "supper",
];

const FIRST: u8 = 0x80;

/// Adds text, the number of its bytes first.
pub(super) fn put_text(out: &mut Vec<u8>, text: &str) {
    let mut body = Vec::new();
    let mut rest = text;
    while let Some(letter) = rest.chars().next() {
        let known = (0u8..).zip(WORDS).filter(|(_, w)| rest.starts_with(w));
        let used = match known.max_by_key(|(_, w)| w.len()) {
            Some((n, word)) => {
                body.push(FIRST + n);
                word.len()
            }
            None => {
                let used = letter.len_utf8();
                body.extend_from_slice(&rest.as_bytes()[..used]);
                used
            }
        };
        rest = &rest[used..];
    }
    put_varint(out, body.len() as u64);
    out.extend(body);
}

/// Reads text written in at most `most` bytes.
pub(super) fn get_text(from: &mut Bytes<'_>, most: u64) -> Result<String, Bad> {
    let length = from.varint()?;
    if length > most {
        return Err(Bad::LongText);
    }
    let mut rest = from.take(length)?;
    let mut text = String::new();
    while let Some(first) = rest.first() {
        let used = match first {
            0x80..=0xbf => {
                text.push_str(WORDS[usize::from(first - FIRST)]);
                1
            }
            _ => {
                let letter = rest.get(..width(*first)).ok_or(Bad::Utf8)?;
                text.push_str(std::str::from_utf8(letter).map_err(|_| Bad::Utf8)?);
                letter.len()
            }
        };
        rest = &rest[used..];
    }
    Ok(text)
}

/// Bytes of the letter that begins with this one.
fn width(first: u8) -> usize {
    match first {
        0..=0x7f => 1,
        0xc0..=0xdf => 2,
        0xe0..=0xef => 3,
        _ => 4,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_comes_back_and_common_words_are_short() {
        let texts = [
            "",
            "olive bowl",
            "potatopot",
            "Küche 鍋 🫒",
            "½ bowls",
            "pota",
        ];
        for text in texts {
            let mut out = Vec::new();
            put_text(&mut out, text);
            let mut from = Bytes(&out);
            assert_eq!(get_text(&mut from, 99).as_deref(), Ok(text), "{out:?}");
            assert!(from.is_empty(), "all of `{text}` is read");
        }
        let mut out = Vec::new();
        put_text(&mut out, "olive bowl");
        assert_eq!(out, [3, 0xa0, b' ', 0x82], "two words and a space");
    }

    #[test]
    fn a_claimed_length_is_not_believed_and_bad_letters_are_refused() {
        let claim = [0xff, 0xff, 0xff, 0x7f, b'a'];
        let read = |bytes: &[u8], most| get_text(&mut Bytes(bytes), most);
        assert_eq!(read(&claim, 8_000), Err(Bad::LongText), "too long");
        assert_eq!(read(&claim, u64::MAX), Err(Bad::Short), "not that many");
        for bad in [
            &[2, 0xc3, 0x28][..],
            &[1, 0xc3],
            &[1, 0xff],
            &[2, 0xc0, 0x80],
            &[3, 0xed, 0xa0, 0x80],
        ] {
            assert_eq!(read(bad, 9), Err(Bad::Utf8), "{bad:x?}");
        }
    }
}
