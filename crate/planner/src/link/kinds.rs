//! How each kind of field is written, from and to its JSON value.
use serde_json::{Value, json};

use super::bytes::{Bad, Bytes, put_signed, put_varint};
use super::names;
use super::phrases::{get_text, put_text};
use super::states::{get_states, put_states};
use crate::layout::{MAX_ITEMS, MAX_NOTE, MAX_OUTLINE, Srgb};

/// Longest text, in bytes: the longest note in four-byte letters.
const MAX_TEXT: u64 = MAX_NOTE as u64 * 4;
const SHAPES: [&str; 4] = ["disc", "rect", "oval", "outline"];
pub(super) const ORIGINS: [&str; 3] = ["guess", "photo", "measured"];

/// How a field is written.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Kind {
    /// A whole number from 0.
    Whole,
    /// A whole number of either sign.
    Signed,
    /// A number counted up from object to object: what it exceeds "one more" by.
    Serial,
    /// Degrees, written as half degrees.
    Turn,
    /// Three bytes.
    Colour,
    /// The place of a word in its list.
    Choice(&'static [&'static str]),
    /// UTF-8 and common words, with its length in bytes.
    Text,
    /// The number of a catalogue id, or 0 and its text.
    Prop,
    /// True; nothing is written.
    Flag,
    /// Eight bytes, written in the file as 16 hex digits.
    Identity,
    /// x and y, each less that of the place before it in the section.
    Place,
    /// Two whole numbers from 0.
    Pair,
    /// Four signed numbers.
    Area,
    /// A count and as many ids.
    Ids,
    /// The outline of a thing.
    Size,
    /// The colours of a part.
    Part,
    /// How things are in an exposure.
    States,
}

/// What earlier fields leave for later ones.
#[derive(Default)]
pub(super) struct Trail {
    /// The latest place in this section.
    pub(super) place: [i64; 2],
    /// Every part written out so far in the link.
    pub(super) parts: Vec<Value>,
    /// The same field's number in the object before; 0 for the first.
    pub(super) before: i64,
}

fn pair(value: &Value) -> Option<[i64; 2]> {
    Some([value.get(0)?.as_i64()?, value.get(1)?.as_i64()?])
}

fn put_whole(out: &mut Vec<u8>, value: &Value) -> Option<()> {
    put_varint(out, value.as_u64()?);
    Some(())
}

pub(super) fn place_of(words: &[&str], value: &Value) -> Option<usize> {
    words.iter().position(|w| Some(*w) == value.as_str())
}

impl Kind {
    /// Writes a value; nothing when it is not of this kind.
    pub(super) fn put(self, value: &Value, trail: &mut Trail, out: &mut Vec<u8>) -> Option<()> {
        match self {
            Self::Whole => put_whole(out, value)?,
            Self::Signed => put_signed(out, value.as_i64()?),
            Self::Serial => put_signed(out, value.as_i64()? - trail.before - 1),
            Self::Turn => put_varint(out, (value.as_f64()? * 2.0) as u64),
            Self::Colour => out.extend(Srgb::parse(value.as_str()?)?.0),
            Self::Choice(words) => put_varint(out, place_of(words, value)? as u64),
            Self::Text => put_text(out, value.as_str()?),
            Self::Prop => match names::number(value.as_str()?) {
                Some(n) => put_varint(out, n),
                None => {
                    put_varint(out, 0);
                    put_text(out, value.as_str()?);
                }
            },
            Self::Flag => return value.as_bool().filter(|on| *on).map(|_| ()),
            Self::Identity => {
                let id = u64::from_str_radix(value.as_str()?, 16).ok()?;
                out.extend(id.to_be_bytes());
            }
            Self::Place => {
                let at = pair(value)?;
                put_signed(out, at[0] - trail.place[0]);
                put_signed(out, at[1] - trail.place[1]);
                trail.place = at;
            }
            Self::Pair => {
                put_whole(out, value.get(0)?)?;
                put_whole(out, value.get(1)?)?;
            }
            Self::Area => {
                for n in value.as_array()? {
                    put_signed(out, n.as_i64()?);
                }
            }
            Self::Ids => {
                let ids = value.as_array()?;
                put_varint(out, ids.len() as u64);
                for id in ids {
                    put_whole(out, id)?;
                }
            }
            Self::Size => put_size(value, out)?,
            Self::Part => put_part(value, trail, out)?,
            Self::States => put_states(value, trail, out)?,
        }
        Some(())
    }

    /// Reads a value; none where a part has no colours.
    pub(super) fn get(self, from: &mut Bytes<'_>, trail: &mut Trail) -> Result<Value, Bad> {
        Ok(match self {
            Self::Whole => from.varint()?.into(),
            Self::Signed => from.signed()?.into(),
            Self::Serial => (from.signed()? + trail.before + 1).into(),
            Self::Turn => degrees(from.varint()?),
            Self::Colour => colour(from)?,
            Self::Choice(words) => word(words, from.varint()?)?.into(),
            Self::Text => get_text(from, MAX_TEXT)?.into(),
            Self::Prop => match from.varint()? {
                0 => get_text(from, MAX_TEXT)?.into(),
                n => names::id(n).ok_or(Bad::Unknown)?.into(),
            },
            Self::Flag => true.into(),
            Self::Identity => {
                let hex = from.take(8)?.iter().map(|b| format!("{b:02x}"));
                hex.collect::<String>().into()
            }
            Self::Place => {
                let [x, y] = trail.place;
                trail.place = [x + from.signed()?, y + from.signed()?];
                json!(trail.place)
            }
            Self::Pair => json!([from.varint()?, from.varint()?]),
            Self::Area => json!([
                from.signed()?,
                from.signed()?,
                from.signed()?,
                from.signed()?
            ]),
            Self::Ids => {
                let ids = (0..count(from, MAX_ITEMS)?).map(|_| from.varint());
                json!(ids.collect::<Result<Vec<u64>, Bad>>()?)
            }
            Self::Size => get_size(from)?,
            Self::Part => get_part(from, trail)?,
            Self::States => get_states(from, trail)?,
        })
    }
}

pub(super) fn count(from: &mut Bytes<'_>, most: usize) -> Result<usize, Bad> {
    let n = usize::try_from(from.varint()?).map_err(|_| Bad::Many)?;
    if n > most { Err(Bad::Many) } else { Ok(n) }
}

pub(super) fn word(words: &[&'static str], at: u64) -> Result<&'static str, Bad> {
    let at = usize::try_from(at).map_err(|_| Bad::Unknown)?;
    words.get(at).copied().ok_or(Bad::Unknown)
}

fn degrees(half: u64) -> Value {
    if half.is_multiple_of(2) {
        (half / 2).into()
    } else {
        (half as f64 * 0.5).into()
    }
}

fn colour(from: &mut Bytes<'_>) -> Result<Value, Bad> {
    Ok(Srgb([from.byte()?, from.byte()?, from.byte()?])
        .to_string()
        .into())
}

/// Bits of a size's first byte, above the two of its shape.
const HAS_CORNER: u8 = 4;
const HAS_RIM: u8 = 8;

/// The measures a shape has, without corner and rim.
fn measures(shape: &str) -> &'static [&'static str] {
    match shape {
        "disc" => &["diameter"],
        "outline" => &[],
        _ => &["width", "depth"],
    }
}

fn put_size(size: &Value, out: &mut Vec<u8>) -> Option<()> {
    let shape = place_of(&SHAPES, size.get("shape")?)?;
    let some = |key: &str| size.get(key).filter(|n| n.as_u64() != Some(0));
    let (corner, rim) = (some("corner"), some("rim"));
    let bit = |has: bool, bit: u8| if has { bit } else { 0 };
    out.push(shape as u8 | bit(corner.is_some(), HAS_CORNER) | bit(rim.is_some(), HAS_RIM));
    for key in measures(SHAPES[shape]) {
        put_whole(out, size.get(*key)?)?;
    }
    for extra in [corner, rim].into_iter().flatten() {
        put_whole(out, extra)?;
    }
    if let Some(points) = size.get("points").and_then(Value::as_array) {
        put_varint(out, points.len() as u64);
        let mut last = [0, 0];
        for point in points {
            let at = pair(point)?;
            put_signed(out, at[0] - last[0]);
            put_signed(out, at[1] - last[1]);
            last = at;
        }
    }
    Some(())
}

fn get_size(from: &mut Bytes<'_>) -> Result<Value, Bad> {
    let head = from.byte()?;
    let shape = SHAPES[usize::from(head & 3)];
    let may = match shape {
        "rect" => HAS_CORNER | HAS_RIM,
        "outline" => 0,
        _ => HAS_RIM,
    };
    if head & !3 & !may != 0 {
        return Err(Bad::Unknown);
    }
    let mut size = json!({ "shape": shape });
    for key in measures(shape) {
        size[*key] = from.varint()?.into();
    }
    for (key, bit) in [("corner", HAS_CORNER), ("rim", HAS_RIM)] {
        if may & bit != 0 {
            let stored = head & bit != 0;
            size[key] = if stored { from.varint()? } else { 0 }.into();
        }
    }
    if shape == "outline" {
        let mut points = Vec::new();
        let mut at = [0, 0];
        for _ in 0..count(from, MAX_OUTLINE)? {
            at = [at[0] + from.signed()?, at[1] + from.signed()?];
            points.push(json!(at));
        }
        size["points"] = points.into();
    }
    Ok(size)
}

/// A part begins with a number. Its two low bits are the number of tones of a
/// new part, whose origins stand above; 0 in them is a part written before,
/// counted from 1 above them, or no part.
const TONES: u64 = 3;

fn put_part(part: &Value, trail: &mut Trail, out: &mut Vec<u8>) -> Option<()> {
    if part.is_null() {
        put_varint(out, 0);
        return Some(());
    }
    if let Some(at) = trail.parts.iter().position(|old| old == part) {
        put_varint(out, (at as u64 + 1) << 2);
        return Some(());
    }
    let tones = part
        .get("colours")?
        .as_array()
        .filter(|t| (1..=3).contains(&t.len()))?;
    let mut head = tones.len() as u64;
    for (n, tone) in tones.iter().enumerate() {
        head |= (place_of(&ORIGINS, tone.get("origin")?)? as u64) << (2 + 2 * n);
    }
    put_varint(out, head);
    for (n, tone) in tones.iter().enumerate() {
        out.extend(Srgb::parse(tone.get("srgb")?.as_str()?)?.0);
        if n + 1 < tones.len() {
            put_whole(out, tone.get("share")?)?;
        }
    }
    trail.parts.push(part.clone());
    Some(())
}

fn get_part(from: &mut Bytes<'_>, trail: &mut Trail) -> Result<Value, Bad> {
    let head = from.varint()?;
    let tones = (head & TONES) as usize;
    if tones == 0 {
        let Some(at) = (head >> 2).checked_sub(1) else {
            return Ok(Value::Null);
        };
        let old = usize::try_from(at).ok().and_then(|at| trail.parts.get(at));
        return old.cloned().ok_or(Bad::Unknown);
    }
    if head >> (2 + 2 * tones) != 0 {
        return Err(Bad::Unknown);
    }
    let mut colours = Vec::new();
    let mut left = 100;
    for n in 0..tones {
        let srgb = colour(from)?;
        let share = if n + 1 < tones {
            from.varint()? as i64
        } else {
            left
        };
        left -= share;
        let origin = word(&ORIGINS, head >> (2 + 2 * n) & 3)?;
        colours.push(json!({ "srgb": srgb, "share": share, "origin": origin }));
    }
    let part = json!({ "colours": colours });
    trail.parts.push(part.clone());
    Ok(part)
}
