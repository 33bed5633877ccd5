//! A link back to its layout.
use serde_json::{Map, Value, json};

use super::bytes::{Bad, Bytes};
use super::dated;
use super::envelope::unwrap;
use super::fields::{Chapter, Field, SECTIONS, Usual};
use super::kinds::Trail;
use super::stock;
use super::two::{Other, TWO, get_two};
use super::write::{Section, number_in, twin_of, usual_value};
use crate::layout::{FORMAT, Layout, Problem, ProblemKind, VERSION, read_tree};

/// What a link holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Unlinked {
    /// The layout.
    pub layout: Layout,
    /// The other version to choose from, where it carries two.
    pub other: Option<Other>,
    /// Sections of a later planner, not understood but kept.
    pub kept_sections: Vec<Section>,
}

/// Reads a link: the fragment, or the whole address it stands in.
///
/// # Errors
/// All problems found, as for a file, those of a second version after
/// `other`; never a panic, and never more memory than the link's own length
/// calls for, or a few megabytes.
pub fn unlink(text: &str) -> Result<Unlinked, Vec<Problem>> {
    let sections = unwrap(text).map_err(|p| vec![p])?;
    let link = |bad| vec![problem(bad, "link")];
    let (found, two, kept_sections) = split(&sections).map_err(link)?;
    let layout = assembled(found)?;
    let other = two.map(|(first, bytes)| {
        let within = |bad| vec![problem(bad, "other")];
        let (names, sections) = get_two(first, bytes).map_err(within)?;
        let (found, nested, _) = split(&sections).map_err(within)?;
        if nested.is_some() {
            return Err(within(Bad::Nested));
        }
        let told = |all: Vec<Problem>| all.into_iter().map(of_other).collect::<Vec<_>>();
        let layout = assembled(found).map_err(told)?;
        Ok::<_, Vec<Problem>>(Other { names, layout })
    });
    Ok(Unlinked {
        layout,
        other: other.transpose()?,
        kept_sections,
    })
}

/// A problem of the other version, told as such.
fn of_other(problem: Problem) -> Problem {
    let path = match problem.path.as_str() {
        "" => "other".to_string(),
        path => "other.".to_string() + path,
    };
    Problem { path, ..problem }
}

/// The layout of these sections.
fn assembled(found: Found<'_>) -> Result<Layout, Vec<Problem>> {
    let mut root = Map::new();
    root.insert("format".into(), FORMAT.into());
    root.insert("version".into(), VERSION.into());
    let mut problems = Vec::new();
    let mut parts = Vec::new();
    for (chapter, bytes) in SECTIONS.iter().zip(found) {
        let mut trail = Trail {
            parts,
            ..Trail::default()
        };
        match chapter_value(chapter, bytes, &mut trail) {
            Ok(Value::Object(head)) if chapter.key.is_empty() => root.extend(head),
            Ok(value) => {
                root.insert(chapter.key.into(), value);
            }
            Err((bad, path)) => problems.push(problem(bad, &path)),
        }
        parts = trail.parts;
    }
    stock::put_back(&mut root, &mut problems);
    dated::put_back(&mut root);
    if !problems.is_empty() {
        return Err(problems);
    }
    read_tree(Value::Object(root))
}

fn problem(bad: Bad, path: &str) -> Problem {
    let kind = match bad {
        Bad::Many | Bad::LongText => ProblemKind::Limit,
        _ => ProblemKind::Syntax,
    };
    Problem::new(kind, path, &bad.to_string(), "a link written by a planner")
}

type Found<'a> = [Option<Bytes<'a>>; SECTIONS.len()];

/// All sections before that of the other version, and what it holds.
type Two<'a> = (&'a [u8], &'a [u8]);

/// The known sections in their order, the other version, and the others.
fn split(sections: &[u8]) -> Result<(Found<'_>, Option<Two<'_>>, Vec<Section>), Bad> {
    let mut found = [None; SECTIONS.len()];
    let (mut two, mut kept) = (None, Vec::new());
    let mut from = Bytes(sections);
    let mut last = 0;
    while !from.is_empty() {
        let before = &sections[..sections.len() - from.0.len()];
        let number = from.varint()?;
        if number <= last {
            return Err(Bad::Order);
        }
        last = number;
        let length = from.varint()?;
        let bytes = from.take(length)?;
        match SECTIONS.iter().position(|c| c.number == number) {
            Some(at) => found[at] = Some(Bytes(bytes)),
            None if number == TWO => two = Some((before, bytes)),
            None => kept.push(Section {
                number,
                bytes: bytes.to_vec(),
            }),
        }
    }
    Ok((found, two, kept))
}

/// What went wrong, and where.
type Fault = (Bad, String);

fn chapter_value(
    chapter: &Chapter,
    bytes: Option<Bytes<'_>>,
    trail: &mut Trail,
) -> Result<Value, Fault> {
    let name = if chapter.key.is_empty() {
        "head"
    } else {
        chapter.key
    };
    let Some(most) = chapter.most else {
        // A section left out holds what an object with no field stored holds.
        let Some(mut from) = bytes else {
            let blank = Map::new();
            return Ok(filled(chapter.fields, blank, 0, None, None).into());
        };
        let object = get_object(chapter.fields, &[], &mut from, trail)
            .map_err(|(bad, key)| (bad, format!("{name}.{key}")))?;
        return if from.is_empty() {
            Ok(object.into())
        } else {
            Err((Bad::Left, name.into()))
        };
    };
    let mut done: Vec<Map<String, Value>> = Vec::new();
    let mut from = bytes.unwrap_or(Bytes(&[]));
    while !from.is_empty() {
        if done.len() == most {
            return Err((Bad::Many, name.into()));
        }
        let object = get_object(chapter.fields, &done, &mut from, trail)
            .map_err(|(bad, key)| (bad, format!("{name}[{}].{key}", done.len())))?;
        done.push(object);
    }
    Ok(json!(done))
}

fn get_object(
    fields: &[Field],
    done: &[Map<String, Value>],
    from: &mut Bytes<'_>,
    trail: &mut Trail,
) -> Result<Map<String, Value>, Fault> {
    let stored = from.varint().map_err(|bad| (bad, "mask".into()))?;
    let optional = fields.iter().filter(|f| f.usual != Usual::Always).count();
    if stored >> optional != 0 {
        return Err((Bad::Unknown, "mask".into()));
    }
    let mut object = Map::new();
    let mut mask = stored;
    for field in fields {
        let present = field.usual == Usual::Always || mask & 1 != 0;
        if field.usual != Usual::Always {
            mask >>= 1;
        }
        if present {
            trail.before = number_in(done.last(), field.key);
            let value = field
                .kind
                .get(from, trail)
                .map_err(|bad| (bad, field.key.to_string()))?;
            set(&mut object, field.key, value);
        }
    }
    let twin = twin_of(&object, done);
    Ok(filled(fields, object, stored, done.last(), twin))
}

/// The object with what is usual for every field that is not stored.
fn filled(
    fields: &[Field],
    mut object: Map<String, Value>,
    mut mask: u64,
    before: Option<&Map<String, Value>>,
    twin: Option<&Map<String, Value>>,
) -> Map<String, Value> {
    for field in fields.iter().filter(|f| f.usual != Usual::Always) {
        if mask & 1 == 0 {
            let usual = usual_value(field, &object, before, twin);
            set(&mut object, field.key, usual.unwrap_or(Value::Null));
        }
        mask >>= 1;
    }
    object
}

/// Puts a value at its place; null leaves the place empty.
fn set(object: &mut Map<String, Value>, key: &str, value: Value) {
    if value.is_null() {
        return;
    }
    match key.split_once('.') {
        None => {
            object.insert(key.into(), value);
        }
        Some((outer, inner)) => {
            let within = object.entry(outer).or_insert_with(|| json!({}));
            within[inner] = value;
        }
    }
}
