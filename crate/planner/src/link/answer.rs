//! An answer to a layout in the fragment of an address: which layout and version
//! it answers, what it says, and the remarks.
use super::bytes::{Bad, Bytes, put_signed, put_varint};
use super::envelope::{ANSWER, bodied, problem, wrap_as};
use super::phrases::{get_text, put_text};
use crate::layout::{
    Answered, Id, LayoutId, MAX_ID, MAX_NAME, MAX_PLACE, MAX_REMARK, MAX_SENT, MAX_TAG, Point,
    Problem, ProblemKind, Remark, Verdict, clean_text,
};

/// The version of an answer.
const VERSION: u64 = 1;
/// The sections: what is said, and the remarks.
const SAID: u64 = 1;
const REMARKS: u64 = 2;
/// The words of what is said, by their places.
const VERDICTS: [Verdict; 3] = [Verdict::Yes, Verdict::Changes, Verdict::No];

/// What a client sends back.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answer {
    /// The layout it answers.
    pub layout: LayoutId,
    /// What it says to which version.
    pub said: Answered,
    /// The remarks, in order.
    pub remarks: Vec<Remark>,
}

/// Whether a fragment, or the address it stands in, is an answer and not a
/// layout; no more is checked than that nothing of it was lost.
#[must_use]
pub fn is_answer(text: &str) -> bool {
    matches!(bodied(text), Ok((ANSWER, _)))
}

/// Writes an answer, of more remarks than it may hold the first.
#[must_use]
pub fn link_answer(answer: &Answer) -> String {
    let Answered {
        verdict,
        version,
        date,
        given,
        choice,
        by,
    } = &answer.said;
    let mut said = answer.layout.0.to_be_bytes().to_vec();
    put_varint(&mut said, u64::from(*version));
    let place = VERDICTS.iter().position(|v| v == verdict);
    put_varint(&mut said, place.unwrap_or_default() as u64);
    for text in [date, given, choice, by] {
        put_text(&mut said, text);
    }
    let mut remarks = Vec::new();
    for remark in answer.remarks.iter().take(MAX_SENT) {
        put_varint(&mut remarks, u64::from(remark.thing.map_or(0, |id| id.0)));
        match remark.thing {
            Some(_) => put_text(&mut remarks, &remark.tag),
            None => {
                let at = remark.at.unwrap_or_default();
                put_signed(&mut remarks, i64::from(at.x));
                put_signed(&mut remarks, i64::from(at.y));
            }
        }
        put_text(&mut remarks, &remark.text);
    }
    let mut out = Vec::new();
    put_varint(&mut out, VERSION);
    for (number, bytes) in [(SAID, said), (REMARKS, remarks)] {
        put_varint(&mut out, number);
        put_varint(&mut out, bytes.len() as u64);
        out.extend(bytes);
    }
    wrap_as(ANSWER, &out)
}

/// Reads an answer: the fragment, or the whole address it stands in.
///
/// # Errors
/// What is wrong with it; never a panic, and no more memory than it is long.
pub fn unlink_answer(text: &str) -> Result<Answer, Problem> {
    let (kind, body) = bodied(text)?;
    let told = |kind, found: &str, allowed: &str| Err(problem(kind, found, allowed));
    if kind != ANSWER {
        return told(ProblemKind::Version, "a layout", "an answer to one");
    }
    let mut from = Bytes(&body);
    match from.varint() {
        Ok(VERSION) => {}
        Ok(later) => {
            let found = format!("version {later} of an answer");
            let allowed = format!("version {VERSION}; open it with a newer planner");
            return told(ProblemKind::Version, &found, &allowed);
        }
        Err(bad) => return told(ProblemKind::Syntax, &bad.to_string(), "a version"),
    }
    sections(from).or_else(|bad| {
        let kind = match bad {
            Bad::Many | Bad::LongText => ProblemKind::Limit,
            _ => ProblemKind::Syntax,
        };
        told(kind, &bad.to_string(), "an answer written by a planner")
    })
}

/// Those known; what a later planner adds is passed over.
fn sections(mut from: Bytes<'_>) -> Result<Answer, Bad> {
    let (mut said, mut remarks, mut last) = (None, Vec::new(), 0);
    while !from.is_empty() {
        let number = from.varint()?;
        if number <= last {
            return Err(Bad::Order);
        }
        last = number;
        let long = from.varint()?;
        let bytes = Bytes(from.take(long)?);
        match number {
            SAID => said = Some(get_said(bytes)?),
            REMARKS => remarks = get_remarks(bytes)?,
            _ => {}
        }
    }
    let (layout, said) = said.ok_or(Bad::Short)?;
    for remark in &mut remarks {
        remark.version = said.version;
    }
    Ok(Answer {
        layout,
        said,
        remarks,
    })
}

fn get_said(mut from: Bytes<'_>) -> Result<(LayoutId, Answered), Bad> {
    let mut id = 0;
    for _ in 0..8 {
        id = id << 8 | u64::from(from.byte()?);
    }
    let version = from.varint()?;
    let version = u16::try_from(version).ok().filter(|v| *v <= MAX_ID);
    let verdict = usize::try_from(from.varint()?).map_err(|_| Bad::Unknown)?;
    let said = Answered {
        verdict: *VERDICTS.get(verdict).ok_or(Bad::Unknown)?,
        version: version.ok_or(Bad::Number)?,
        date: words(&mut from, MAX_NAME)?,
        given: words(&mut from, MAX_NAME)?,
        choice: words(&mut from, MAX_NAME)?,
        by: words(&mut from, MAX_NAME)?,
    };
    from.is_empty()
        .then_some((LayoutId(id), said))
        .ok_or(Bad::Left)
}

fn get_remarks(mut from: Bytes<'_>) -> Result<Vec<Remark>, Bad> {
    let mut all = Vec::new();
    while !from.is_empty() {
        if all.len() == MAX_SENT {
            return Err(Bad::Many);
        }
        let mut remark = Remark::default();
        match from.varint()? {
            0 => {
                let at = [from.signed()?, from.signed()?];
                let far = i64::from(MAX_PLACE);
                if at.iter().any(|c| c.abs() > far) {
                    return Err(Bad::Number);
                }
                remark.at = Some(Point::new(at[0] as i32, at[1] as i32));
            }
            id if id <= u64::from(MAX_ID) => {
                remark.thing = Some(Id(id as u16));
                remark.tag = words(&mut from, MAX_TAG)?;
            }
            _ => return Err(Bad::Number),
        }
        remark.text = words(&mut from, MAX_REMARK)?;
        all.push(remark);
    }
    Ok(all)
}

/// Text of at most so many characters, without what does not belong in it.
fn words(from: &mut Bytes<'_>, most: usize) -> Result<String, Bad> {
    let text = get_text(from, most as u64 * 4)?;
    if text.chars().count() > most {
        return Err(Bad::LongText);
    }
    Ok(clean_text(&text))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::Layout;
    use crate::link::{link, unlink};
    use proptest::prelude::*;

    fn answer() -> Answer {
        let on = |thing: u16, tag: &str, text: &str| Remark {
            version: 3,
            thing: Some(Id(thing)),
            tag: tag.into(),
            text: text.into(),
            ..Remark::default()
        };
        let bare = Remark {
            version: 3,
            at: Some(Point::new(-40, 812)),
            text: "headline runs here".into(),
            ..Remark::default()
        };
        Answer {
            layout: LayoutId(0xfeed_0000_0000_0001),
            said: Answered {
                verdict: Verdict::Changes,
                version: 3,
                date: "2026-05-02".into(),
                given: "2026-05-04".into(),
                choice: "with the runner".into(),
                by: "picture desk".into(),
            },
            remarks: vec![on(4, "3", "less oil"), bare, on(61, "1A", "סיר")],
        }
    }

    #[test]
    fn an_answer_comes_back_and_is_told_from_a_layout() {
        let made = link_answer(&answer());
        assert_eq!(unlink_answer(&made), Ok(answer()));
        let address = format!("https://planner.example/page?x#{made}\n");
        assert_eq!(unlink_answer(&address), Ok(answer()), "a whole address");
        assert!(is_answer(&made) && is_answer(&address));
        let layout = link(&Layout::empty(LayoutId(7))).fragment;
        assert!(!is_answer(&layout) && !is_answer("") && !is_answer(&made[1..]));
        let fault = unlink_answer(&layout).expect_err("a layout");
        assert_eq!(fault.kind, ProblemKind::Version, "{fault:?}");
        let fault = unlink(&made).expect_err("an answer");
        assert_eq!(fault[0].kind, ProblemKind::Version, "{fault:?}");
        assert!(fault[0].found.contains("answer"), "{fault:?}");
    }

    #[test]
    fn every_changed_letter_is_seen() {
        let made = link_answer(&answer());
        for place in 0..made.len() {
            let mut other = made.clone().into_bytes();
            other[place] = if other[place] == b'A' { b'B' } else { b'A' };
            let text = String::from_utf8(other).expect("letters");
            assert!(unlink_answer(&text).is_err(), "letter {place}");
            assert!(unlink_answer(&made[..place]).is_err(), "cut at {place}");
        }
    }

    #[test]
    fn more_remarks_than_an_answer_holds_are_cut_and_no_longer_text_is_read() {
        let mut long = answer();
        long.remarks = vec![long.remarks[0].clone(); MAX_SENT + 1];
        let back = unlink_answer(&link_answer(&long)).expect("reads");
        assert_eq!(back.remarks.len(), MAX_SENT);
        long.remarks.truncate(1);
        long.remarks[0].text = "x".repeat(MAX_REMARK + 1);
        let fault = unlink_answer(&link_answer(&long)).expect_err("too long");
        assert_eq!(fault.kind, ProblemKind::Limit, "{fault:?}");
    }

    proptest! {
        #[test]
        fn any_bytes_behind_a_right_sum_do_no_harm(
            bytes in prop::collection::vec(any::<u8>(), 0..80),
        ) {
            if let Ok(read) = unlink_answer(&wrap_as(ANSWER, &bytes)) {
                let again = unlink_answer(&link_answer(&read));
                prop_assert_eq!(again, Ok(read));
            }
        }
    }
}
