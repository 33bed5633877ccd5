//! What a client answered, put on the layout it answers: which version it is an
//! answer to, what each remark is about, and where it lies.
use glam::DVec2;
use serde::Serialize;

use crate::edit::Edit;
use crate::layout::{Answered, Layout, MAX_REMARKS, Remark, Verdict};
use crate::link::Answer;
use crate::words::{Arg, place, say};

/// One remark as it is read out.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Told {
    /// Its number, counted from 1 as it came.
    pub number: usize,
    /// The thing or place it is about, in words.
    pub about: String,
    /// The remark itself.
    pub text: String,
    /// Whether it is seen to.
    pub done: bool,
    /// Whether what it is about is still on the table.
    pub here: bool,
    /// The version it was made on.
    pub version: u16,
}

/// The edit that puts an answer on its layout: what it says in place of the
/// answer before, its remarks after those already there, none of them twice; and
/// how many did not fit.
#[must_use]
pub fn taken(layout: &Layout, answer: &Answer) -> (Edit, usize) {
    let mut next = layout.clone();
    next.head.revision.answer = Some(answer.said.clone());
    let mut left = 0;
    for remark in &answer.remarks {
        if next.head.remarks.iter().any(|r| r.repeats(remark)) {
            continue;
        }
        if next.head.remarks.len() < MAX_REMARKS {
            next.head.remarks.push(remark.clone());
        } else {
            left += 1;
        }
    }
    (Edit::between(layout, &next), left)
}

/// What an answer says, in words; nothing where none was given.
#[must_use]
pub fn said(answer: &Answered) -> String {
    let id = match answer.verdict {
        Verdict::Yes => "answer-yes",
        Verdict::Changes => "answer-changes",
        Verdict::No => "answer-no",
    };
    let said = ("said", Arg::Text(say(id, &[])));
    let version = ("version", Arg::Text(answer.version.to_string()));
    let by = ("by", Arg::Name(answer.by.clone()));
    match (answer.version, answer.by.is_empty()) {
        (0, true) => say("answer-uncounted", &[said]),
        (0, false) => say("answer-uncounted-by", &[said, by]),
        (_, true) => say("answer-version", &[said, version]),
        (_, false) => say("answer-version-by", &[said, version, by]),
    }
}

/// All remarks of a layout, or of an answer that is laid over it.
#[must_use]
pub fn told(layout: &Layout, remarks: &[Remark]) -> Vec<Told> {
    let one = |(n, remark): (usize, &Remark)| Told {
        number: n + 1,
        about: about(layout, remark),
        text: remark.text.clone(),
        done: remark.done,
        here: spot(layout, remark).is_some(),
        version: remark.version,
    };
    remarks.iter().enumerate().map(one).collect()
}

/// What a remark is about.
fn about(layout: &Layout, remark: &Remark) -> String {
    let Some(id) = remark.thing else {
        let at = remark.at.unwrap_or_default();
        return say(
            "remark-place",
            &[("place", Arg::Text(place(at, &layout.frame)))],
        );
    };
    let item = layout.items.iter().find(|item| item.id == id);
    let linen = layout.linens.iter().find(|linen| linen.id == id);
    let name = item.map(|i| &i.name).or(linen.map(|l| &l.name));
    let tag = ("tag", Arg::Text(remark.tag.clone()));
    match (name.filter(|name| !name.is_empty()), remark.tag.is_empty()) {
        (Some(name), true) => name.clone(),
        (Some(name), false) => say("remark-thing", &[tag, ("thing", Arg::Name(name.clone()))]),
        (None, false) => say("remark-tag", &[tag]),
        (None, true) => say("remark-gone", &[]),
    }
}

/// Where a remark lies on the table, mm, and how high; none when the thing is
/// gone.
#[must_use]
pub fn spot(layout: &Layout, remark: &Remark) -> Option<(DVec2, f64)> {
    let Some(id) = remark.thing else {
        return remark.at.map(|at| (at.vec(), 0.0));
    };
    let item = layout.items.iter().find(|item| item.id == id);
    let linen = layout.linens.iter().find(|linen| linen.id == id);
    let hand = layout.hands.iter().find(|hand| hand.id == id);
    item.map(|i| (i.at.vec(), f64::from(i.height)))
        .or(linen.map(|l| (l.at.vec(), 0.0)))
        .or(hand.map(|h| (h.target.vec(), f64::from(h.height))))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::compare::changes;
    use crate::layout::{Id, LayoutId, Point, open};
    use crate::link::{link, public, unlink};

    fn laid() -> Layout {
        let text = Layout::empty(LayoutId(7)).to_json().replacen(
            "\"items\": []",
            r#""items":[{"id":4,"number":3,"name":"olive bowl","prop":"small-bowl","at":[300,200],
                "size":{"shape":"disc","diameter":120}}]"#,
            1,
        );
        open(&text.replacen("\"next_id\": 1", "\"next_id\": 5", 1)).expect("opens")
    }

    fn remark(thing: Option<u16>, text: &str) -> Remark {
        Remark {
            version: 2,
            thing: thing.map(Id),
            tag: thing.map_or(String::new(), |id| (id - 1).to_string()),
            at: thing.is_none().then_some(Point::new(40, 60)),
            text: text.into(),
            ..Remark::default()
        }
    }

    fn answer() -> Answer {
        Answer {
            layout: LayoutId(7),
            said: Answered {
                verdict: Verdict::Changes,
                version: 2,
                by: "desk".into(),
                ..Answered::default()
            },
            remarks: vec![
                remark(Some(4), "fewer"),
                remark(None, "headline"),
                remark(Some(90), "what was here"),
            ],
        }
    }

    #[test]
    fn an_answer_is_one_edit_and_taken_twice_says_nothing_twice() {
        let before = laid();
        let (edit, left) = taken(&before, &answer());
        let mut after = before.clone();
        edit.apply(&mut after).expect("fits");
        assert_eq!((edit.0.len(), left), (1, 0), "{edit:?}");
        assert_eq!(after.head.remarks.len(), 3);
        assert!(taken(&after, &answer()).0.is_empty(), "nothing new in it");
        assert_eq!(changes(&before, &after), [], "an answer changes no table");
        edit.reverted().apply(&mut after).expect("fits");
        assert_eq!(after, before, "taken back");
    }

    #[test]
    fn what_does_not_fit_is_counted() {
        let mut full = laid();
        full.head.remarks = vec![remark(None, "old"); MAX_REMARKS - 1];
        assert_eq!(taken(&full, &answer()).1, 2);
    }

    #[test]
    fn remarks_name_their_thing_by_number_and_say_when_it_is_gone() {
        let layout = laid();
        let told = told(&layout, &answer().remarks);
        assert_eq!(told[0].about, "3, olive bowl");
        assert!(told[0].here && told[1].here && !told[2].here, "{told:?}");
        assert_eq!(told[2].about, "89, not on the table any more");
        assert_eq!(said(&answer().said), "Yes with changes, to version 2: desk");
    }

    #[test]
    fn no_link_to_the_layout_carries_them() {
        let (edit, _) = taken(&laid(), &answer());
        let mut layout = laid();
        edit.apply(&mut layout).expect("fits");
        let whole = link(&layout);
        assert_eq!(whole.losses, ["remarks", "revision"], "told as left out");
        let back = unlink(&whole.fragment).expect("reads").layout;
        assert_eq!(back, laid());
        let shared = public(&layout);
        assert_eq!(link(&shared).losses, [] as [String; 0]);
        assert!(!shared.to_json().contains("headline"), "nor a shared copy");
    }
}
