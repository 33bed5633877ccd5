//! Reading one JSON object field by field, collecting every problem.
use std::ops::RangeInclusive;

use serde::de::DeserializeOwned;
use serde::de::value::{Error as Unknown, StrDeserializer};
use serde_json::{Map, Value};

use super::clean::{clean_note, clean_text};
use super::limits::{MAX_EXTRA_BYTES, MAX_ID, MAX_NAME, MAX_NOTE, MAX_PLACE, MAX_PROBLEMS};
use super::problem::{Problem, ProblemKind};
use super::text::line;
use super::value::{Extra, Id, Point, Ratio, Srgb, Turn};

/// Problems met so far and the bytes of unknown fields kept so far.
#[derive(Default)]
pub(super) struct Log {
    pub(super) problems: Vec<Problem>,
    /// Problems beyond the limit, counted and not kept.
    beyond: usize,
    extra_bytes: usize,
}

impl Log {
    pub(super) fn push(&mut self, problem: Problem) {
        if self.problems.len() < MAX_PROBLEMS {
            self.problems.push(problem);
        } else {
            self.beyond += 1;
        }
    }

    fn count(&self) -> usize {
        self.problems.len() + self.beyond
    }

    /// All problems, or as many as are told with the rest counted in the last.
    pub(super) fn told(self) -> Vec<Problem> {
        told(self.problems, self.beyond)
    }
}

/// Problems within the limit; what is over it, and `beyond` besides, is
/// counted in the last.
pub(super) fn told(mut problems: Vec<Problem>, beyond: usize) -> Vec<Problem> {
    let over = problems.len().saturating_sub(MAX_PROBLEMS);
    problems.truncate(MAX_PROBLEMS);
    if let Some(last) = problems.last_mut().filter(|_| over + beyond > 0) {
        // The last one told makes room for the count, so it is counted too.
        let found = format!("{} more problems", over + beyond + 1);
        let allowed = format!("at most {MAX_PROBLEMS} problems told at once");
        *last = Problem::new(ProblemKind::Limit, "", &found, &allowed);
    }
    problems
}

/// The fields of one object not yet read. Reading takes a field out; what is
/// left at the end is unknown and kept as extra.
pub(super) struct Fields<'a> {
    log: &'a mut Log,
    path: String,
    map: Map<String, Value>,
    /// Fields something was said about, here or further in.
    faulted: Vec<String>,
}

impl<'a> Fields<'a> {
    pub(super) fn new(log: &'a mut Log, path: String, value: Value) -> Self {
        let map = match value {
            Value::Object(map) => map,
            other => {
                log.push(Problem::new(
                    ProblemKind::Value,
                    &path,
                    &line(&other),
                    "an object",
                ));
                Map::new()
            }
        };
        Self {
            log,
            path,
            map,
            faulted: Vec::new(),
        }
    }

    fn at(&self, key: &str) -> String {
        if self.path.is_empty() {
            key.into()
        } else {
            format!("{}.{key}", self.path)
        }
    }

    fn take(&mut self, key: &str) -> Option<Value> {
        self.map.remove(key).filter(|v| !v.is_null())
    }

    pub(super) fn bad(&mut self, kind: ProblemKind, key: &str, found: &str, allowed: &str) {
        let at = self.at(key);
        self.log.push(Problem::new(kind, &at, found, allowed));
        self.faulted.push(key.into());
    }

    /// Says so where a field that must be there is not.
    pub(super) fn required<T>(&mut self, key: &str, got: Option<T>, otherwise: T) -> T {
        got.unwrap_or_else(|| {
            if !self.faulted.iter().any(|f| f == key) {
                self.bad(ProblemKind::Value, key, "nothing", "this field");
            }
            otherwise
        })
    }

    pub(super) fn int(&mut self, key: &str, range: RangeInclusive<i32>) -> Option<i32> {
        let value = self.take(key)?;
        let whole = value.as_i64().or_else(|| {
            value
                .as_f64()
                .filter(|f| f.trunc() == *f && f.abs() < 1e9)
                .map(|f| f as i64)
        });
        let allowed = || format!("a whole number from {} to {}", range.start(), range.end());
        match whole {
            Some(n) if (i64::from(*range.start())..=i64::from(*range.end())).contains(&n) => {
                Some(n as i32)
            }
            Some(_) => {
                self.bad(ProblemKind::Limit, key, &line(&value), &allowed());
                None
            }
            None => {
                self.bad(ProblemKind::Value, key, &line(&value), &allowed());
                None
            }
        }
    }

    pub(super) fn id(&mut self, key: &str) -> Option<Id> {
        self.int(key, 1..=i32::from(MAX_ID)).map(|n| Id(n as u16))
    }

    pub(super) fn flag(&mut self, key: &str) -> bool {
        match self.take(key) {
            None => false,
            Some(Value::Bool(b)) => b,
            Some(other) => {
                self.bad(ProblemKind::Value, key, &line(&other), "true or false");
                false
            }
        }
    }

    /// Text of several lines.
    pub(super) fn note(&mut self, key: &str) -> String {
        self.text_by(key, MAX_NOTE, clean_note)
    }

    pub(super) fn text(&mut self, key: &str, longest: usize) -> String {
        self.text_by(key, longest, clean_text)
    }

    fn text_by(&mut self, key: &str, longest: usize, clean: fn(&str) -> String) -> String {
        match self.take(key) {
            None => String::new(),
            Some(Value::String(s)) if s.chars().count() <= longest => clean(&s),
            Some(Value::String(s)) => {
                let allowed = format!("at most {longest} characters");
                self.bad(ProblemKind::Limit, key, &s, &allowed);
                String::new()
            }
            Some(other) => {
                self.bad(ProblemKind::Value, key, &line(&other), "text");
                String::new()
            }
        }
    }

    pub(super) fn name(&mut self, key: &str) -> String {
        self.text(key, MAX_NAME)
    }

    /// One of a fixed list of words, as the enum's serde names give them.
    pub(super) fn choice<T: DeserializeOwned>(&mut self, key: &str) -> Option<T> {
        let value = self.take(key)?;
        let Value::String(word) = &value else {
            self.bad(ProblemKind::Value, key, &line(&value), "a word");
            return None;
        };
        match T::deserialize(StrDeserializer::<Unknown>::new(word)) {
            Ok(t) => return Some(t),
            Err(e) => {
                let text = e.to_string();
                let allowed = text
                    .split_once("expected ")
                    .map_or("a known word", |(_, a)| a);
                self.bad(ProblemKind::Value, key, &line(&value), allowed);
            }
        }
        None
    }

    pub(super) fn colour(&mut self, key: &str) -> Option<Srgb> {
        let value = self.take(key)?;
        let colour = value.as_str().and_then(Srgb::parse);
        if colour.is_none() {
            self.bad(
                ProblemKind::Value,
                key,
                &line(&value),
                "a colour such as #2c323a",
            );
        }
        colour
    }

    pub(super) fn turn(&mut self, key: &str) -> Option<Turn> {
        let value = self.take(key)?;
        let half = value
            .as_f64()
            .map(|d| d * 2.0)
            .filter(|h| h.trunc() == *h && h.abs() <= 7200.0);
        if half.is_none() {
            self.bad(ProblemKind::Value, key, &line(&value), "degrees, in halves");
        }
        half.map(|h| Turn::from_half_degrees(h as i32))
    }

    /// A list of exactly `N` whole numbers within `range`.
    pub(super) fn ints<const N: usize>(
        &mut self,
        key: &str,
        range: RangeInclusive<i64>,
        allowed: &str,
    ) -> Option<[i64; N]> {
        let value = self.take(key)?;
        let mut out = [0; N];
        let ok = value.as_array().is_some_and(|list| {
            list.len() == N
                && list.iter().zip(&mut out).all(|(v, o)| {
                    let n = v.as_i64().or_else(|| {
                        v.as_f64()
                            .filter(|f| f.trunc() == *f && f.abs() < 1e9)
                            .map(|f| f as i64)
                    });
                    n.filter(|n| range.contains(n)).map(|n| *o = n).is_some()
                })
        });
        if !ok {
            self.bad(ProblemKind::Value, key, &line(&value), allowed);
        }
        ok.then_some(out)
    }

    pub(super) fn point(&mut self, key: &str) -> Option<Point> {
        let far = i64::from(MAX_PLACE);
        self.ints::<2>(key, -far..=far, "[x, y] in whole mm within 20 m")
            .map(|[x, y]| Point::new(x as i32, y as i32))
    }

    pub(super) fn ratio(&mut self, key: &str) -> Option<Ratio> {
        self.ints::<2>(
            key,
            1..=10_000,
            "[width, height], whole numbers from 1 to 10000",
        )
        .and_then(|[w, h]| {
            let ok = w <= h * 20 && h <= w * 20;
            if !ok {
                self.bad(
                    ProblemKind::Limit,
                    key,
                    &format!("[{w}, {h}]"),
                    "at most 20 to 1",
                );
            }
            ok.then_some(Ratio {
                width: w as u16,
                height: h as u16,
            })
        })
    }

    pub(super) fn size_pair(&mut self, key: &str, most: i32) -> Option<[i32; 2]> {
        let allowed = format!("[width, depth] in whole mm from 1 to {most}");
        self.ints::<2>(key, 1..=i64::from(most), &allowed)
            .map(|a| a.map(|n| n as i32))
    }

    pub(super) fn area(&mut self, key: &str) -> Option<[i32; 4]> {
        let far = i64::from(MAX_PLACE);
        self.ints::<4>(key, -far..=far, "[dx, dy, width, depth] in whole mm")
            .map(|a| a.map(|n| n as i32))
    }

    pub(super) fn object<T>(
        &mut self,
        key: &str,
        read: impl FnOnce(&mut Fields<'_>) -> T,
    ) -> Option<T> {
        let value = self.take(key)?;
        let path = self.at(key);
        let before = self.log.count();
        let got = read(&mut Fields::new(self.log, path, value));
        if self.log.count() > before {
            self.faulted.push(key.into());
        }
        Some(got)
    }

    pub(super) fn list<T>(
        &mut self,
        key: &str,
        most: usize,
        mut read: impl FnMut(&mut Fields<'_>) -> T,
    ) -> Vec<T> {
        let Some(values) = self.array(key, most) else {
            return Vec::new();
        };
        let path = self.at(key);
        let each = |(i, v)| read(&mut Fields::new(self.log, format!("{path}[{i}]"), v));
        values.into_iter().enumerate().map(each).collect()
    }

    pub(super) fn ids(&mut self, key: &str, most: usize) -> Vec<Id> {
        let numbers = self.numbers(key, most, 1..=i64::from(MAX_ID), "ids");
        numbers.into_iter().map(|n| Id(n as u16)).collect()
    }

    /// A list of lengths in whole mm, each within `range`.
    pub(super) fn lengths(
        &mut self,
        key: &str,
        most: usize,
        range: RangeInclusive<i32>,
    ) -> Vec<i32> {
        let allowed = format!("whole mm from {} to {}", range.start(), range.end());
        let range = i64::from(*range.start())..=i64::from(*range.end());
        let numbers = self.numbers(key, most, range, &allowed);
        numbers.into_iter().map(|n| n as i32).collect()
    }

    fn numbers(
        &mut self,
        key: &str,
        most: usize,
        range: RangeInclusive<i64>,
        allowed: &str,
    ) -> Vec<i64> {
        let mut out = Vec::new();
        for v in self.array(key, most).unwrap_or_default() {
            match v.as_i64().filter(|n| range.contains(n)) {
                Some(n) => out.push(n),
                None => self.bad(ProblemKind::Value, key, &line(&v), allowed),
            }
        }
        out
    }

    pub(super) fn points(&mut self, key: &str, most: usize) -> Vec<Point> {
        let mut out = Vec::new();
        for v in self.array(key, most).unwrap_or_default() {
            self.map.insert(key.into(), v);
            out.extend(self.point(key));
        }
        out
    }

    fn array(&mut self, key: &str, most: usize) -> Option<Vec<Value>> {
        match self.take(key)? {
            Value::Array(v) if v.len() <= most => Some(v),
            Value::Array(v) => {
                let found = format!("{} entries", v.len());
                self.bad(ProblemKind::Limit, key, &found, &format!("at most {most}"));
                None
            }
            other => {
                self.bad(ProblemKind::Value, key, &line(&other), "a list");
                None
            }
        }
    }

    /// What was not read: kept, up to the limit for the whole file.
    pub(super) fn extra(&mut self) -> Extra {
        let map = std::mem::take(&mut self.map);
        let mut extra = Extra::new();
        for (key, value) in map {
            self.log.extra_bytes += key.len() + line(&value).len();
            if self.log.extra_bytes > MAX_EXTRA_BYTES {
                let allowed = format!("at most {MAX_EXTRA_BYTES} bytes of unknown fields");
                self.bad(ProblemKind::Limit, &key, "more unknown fields", &allowed);
                break;
            }
            extra.insert(key, value);
        }
        extra
    }
}
