//! The findings of two layouts beside each other.
use serde::Serialize;

use super::finding::State;
use super::live::{Figure, Live, grave, shift};
use super::report::{Report, Scores};

/// A finding of one of them alone.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Told {
    /// Which finding.
    pub key: String,
    /// As the finding's.
    pub state: State,
    /// As the finding's.
    pub sentence: String,
}

/// A finding of both, as it is in the one and in the other.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Both {
    /// Which finding.
    pub key: String,
    /// The sentences.
    pub sentences: [String; 2],
    /// The figures.
    pub figures: [f64; 2],
    /// Whether it is better in the second; nothing where it is as it was.
    pub better: Option<bool>,
}

/// What two layouts read as, side by side. What holds or is meant to be so is
/// no finding here, nor is a matter of taste.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Beside {
    /// Findings of the first alone, those that matter most first.
    pub before: Vec<Told>,
    /// Findings of the second alone.
    pub after: Vec<Told>,
    /// Findings of both.
    pub both: Vec<Both>,
    /// The scores of each.
    pub scores: [Option<Scores>; 2],
}

fn stands(figure: &Figure) -> bool {
    grave(Some(figure)) > 0 && !figure.taste
}

/// Whether a finding is of the whole picture, and names no object.
fn of_whole(key: &str) -> bool {
    !key.contains(|c: char| c.is_ascii_digit())
}

/// Puts two reports side by side. Where they are of no `versions` of one
/// layout, ids mean different things, and only findings of the whole picture
/// are the same.
#[must_use]
pub fn beside(before: &Report, after: &Report, versions: bool) -> Beside {
    let [old, new] = [before, after].map(Live::of);
    let same = |a: &Figure, b: &Figure| a.key == b.key && (versions || of_whole(&a.key));
    let other = |of: &Live, f: &Figure| -> Option<Figure> {
        let mut standing = of.findings.iter().filter(|f| stands(f));
        standing.find(|o| same(o, f)).cloned()
    };
    let told = |f: &Figure| Told {
        key: f.key.clone(),
        state: f.state,
        sentence: f.sentence.clone(),
    };
    let mut out = Beside {
        before: Vec::new(),
        after: Vec::new(),
        both: Vec::new(),
        scores: [old.scores, new.scores],
    };
    for now in new.findings.iter().filter(|f| stands(f)) {
        match other(&old, now) {
            None => out.after.push(told(now)),
            Some(then) => out.both.push(Both {
                key: now.key.clone(),
                sentences: [then.sentence.clone(), now.sentence.clone()],
                figures: [then.figure, now.figure],
                better: shift(Some(&then), Some(now)).map(|s| s.better),
            }),
        }
    }
    let gone = old.findings.iter().filter(|f| stands(f));
    let gone = gone.filter(|f| other(&new, f).is_none());
    out.before = gone.map(told).collect();
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{Layout, Point};
    use crate::readings::tests::four;
    use crate::readings::{Study, report};

    fn apart(x: i32) -> Layout {
        let mut layout = four();
        layout.items[1].at = Point::new(x, 300);
        layout
    }

    fn both(before: &Layout, after: &Layout, versions: bool) -> Beside {
        let [a, b] = [before, after].map(|l| report(&Study::new(l), false));
        beside(&a, &b, versions)
    }

    #[test]
    fn what_is_cured_stands_on_one_side_and_what_is_worse_says_both_figures() {
        let (near, nearer, far) = (apart(558), apart(554), apart(850));
        let gap = "spacing:1:2";
        let cured = both(&near, &far, true);
        assert!(cured.before.iter().any(|f| f.key == gap), "{cured:?}");
        assert!(cured.after.iter().all(|f| f.key != gap));
        let back = both(&far, &near, true);
        assert!(back.after.iter().any(|f| f.key == gap), "{back:?}");
        let worse = both(&near, &nearer, true);
        let found = worse.both.iter().find(|f| f.key == gap).expect("in both");
        assert_eq!(found.better, Some(false));
        assert_ne!(found.figures[0], found.figures[1]);
        assert_ne!(found.sentences[0], found.sentences[1]);
        let still = both(&near, &near, true);
        assert!(still.before.is_empty() && still.after.is_empty());
        assert!(still.both.iter().all(|f| f.better.is_none()));
        assert!(still.scores[0].is_some() && still.scores[0] == still.scores[1]);
    }

    #[test]
    fn tables_of_their_own_share_no_finding_that_names_things() {
        let near = apart(558);
        let two = both(&near, &near, false);
        let gap = "spacing:1:2";
        assert!(two.both.iter().all(|f| f.key != gap), "{two:?}");
        assert!(two.before.iter().any(|f| f.key == gap));
        assert!(two.after.iter().any(|f| f.key == gap));
    }
}
