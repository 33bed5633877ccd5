//! A digest of numbers and texts, and that of the demonstration table.
use std::fmt;

use planner::drawing::{Shown, sheet};
use planner::optics::View;
use planner::readings::{Study, report};
use planner::starters::harbour_supper;

/// FNV-1a over the bits of each number, so that a last bit, a sign of zero or
/// an order that differs shows. Constants: Fowler, Noll and Vo,
/// draft-eastlake-fnv, section 5, 64 bits.
#[derive(Clone, Copy)]
pub(crate) struct Digest(pub(crate) u64);

impl Digest {
    /// Of nothing.
    pub(crate) fn new() -> Self {
        Self(0xcbf2_9ce4_8422_2325)
    }

    /// With a number added.
    pub(crate) fn number(self, value: f64) -> Self {
        self.bytes(&value.to_bits().to_le_bytes())
    }

    /// With a text added.
    pub(crate) fn text(self, text: &str) -> Self {
        self.bytes(text.as_bytes()).bytes(&[0xff])
    }

    fn bytes(self, bytes: &[u8]) -> Self {
        Self(bytes.iter().fold(self.0, |hash, &byte| {
            (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
        }))
    }
}

impl fmt::Display for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:#018x}", self.0)
    }
}

/// All that is said and drawn of the demonstration table: figures to the last
/// bit, sentences, marks, remedies and their figures, and the sheet.
pub(crate) fn of_the_supper() -> Digest {
    let layout = harbour_supper();
    let read = report(&Study::new(&layout), true);
    let mut digest = Digest::new();
    for finding in &read.findings {
        digest = digest.number(finding.figure).text(&finding.sentence);
        digest = digest.text(&format!("{:?}", finding.marks));
        if let Some(remedy) = &finding.remedy {
            digest = digest.number(remedy.after).text(&remedy.act);
        }
    }
    digest
        .text(&format!("{:?}", read.scores))
        .text(&sheet(&layout, Shown::All, View::Above))
        .text(&sheet(&layout, Shown::All, View::of(&layout)))
}
