//! What a client answered, and what was remarked on: the photographer's own
//! business, which no link to the layout carries.
use serde::{Deserialize, Serialize};

use super::limits::{MAX_REMARK, MAX_TAG};
use super::read::Fields;
use super::value::{Extra, Id, Point};

/// What a client says to a layout.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// As it is.
    #[default]
    Yes,
    /// Yes, with what is remarked.
    Changes,
    /// Not so.
    No,
}

/// An answer to one version of the layout.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Answered {
    /// What it says.
    pub verdict: Verdict,
    /// The version it answers; 0 for one that was never counted.
    pub version: u16,
    /// The day that version was sent, `YYYY-MM-DD`, or empty.
    pub date: String,
    /// The day of the answer, or empty.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub given: String,
    /// What is chosen of two versions is called, or empty.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub choice: String,
    /// Who answers, or empty.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub by: String,
}

impl Answered {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        let verdict = f.choice("verdict");
        Self {
            verdict: f.required("verdict", verdict, Verdict::Yes),
            version: f.int("version", 0..=60_000).unwrap_or(0) as u16,
            date: f.name("date"),
            given: f.name("given"),
            choice: f.name("choice"),
            by: f.name("by"),
        }
    }
}

/// One remark, on a thing or a bare place.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Remark {
    /// The version it was made on.
    pub version: u16,
    /// The thing, which may be gone since.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub thing: Option<Id>,
    /// What was printed on its tag.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub tag: String,
    /// The place, where it is on no thing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at: Option<Point>,
    /// What is remarked.
    pub text: String,
    /// Whether it is seen to.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub done: bool,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Remark {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        Self {
            version: f.int("version", 0..=60_000).unwrap_or(0) as u16,
            thing: f.id("thing"),
            tag: f.text("tag", MAX_TAG),
            at: f.point("at"),
            text: f.text("text", MAX_REMARK),
            done: f.flag("done"),
            extra: f.extra(),
        }
    }

    /// Whether both say the same of the same.
    #[must_use]
    pub fn repeats(&self, other: &Self) -> bool {
        let said = |r: &Self| (r.version, r.thing, r.at, r.text.clone());
        said(self) == said(other)
    }
}

#[cfg(test)]
mod tests {
    use crate::layout::{Layout, LayoutId, ProblemKind, open};

    #[test]
    fn an_answer_and_remarks_come_back_from_a_file() {
        let text = Layout::empty(LayoutId(7)).to_json();
        let answer = r#""remarks":[{"version":2,"thing":4,"tag":"3","text":"less oil","later":1},
            {"at":[10,-20],"text":"bare here","done":true}],
            "revision":{"number":2,"date":"","answer":{"verdict":"changes","version":2,"by":"A"}}"#;
        let cut = text.find("\"revision\"").expect("a revision");
        let end = cut + text[cut..].find('}').expect("its end") + 1;
        let with = format!("{}{answer}{}", &text[..cut], &text[end..]);
        let layout = open(&with).expect("opens");
        assert_eq!(layout.head.remarks.len(), 2, "{:?}", layout.head.remarks);
        assert_eq!(
            layout.head.remarks[0].extra["later"], 1,
            "unknown fields stay"
        );
        assert!(layout.head.remarks[1].done && layout.head.revision.answer.is_some());
        assert_eq!(open(&layout.to_json()), Ok(layout), "as it was saved");
        for (old, new, kind) in [
            ("\"changes\"", "\"maybe\"", ProblemKind::Value),
            ("\"thing\":4", "\"thing\":0", ProblemKind::Limit),
            ("less oil", &"x".repeat(501), ProblemKind::Limit),
        ] {
            let problems = open(&with.replacen(old, new, 1)).expect_err("refused");
            assert_eq!(problems[0].kind, kind, "{problems:?}");
        }
    }
}
