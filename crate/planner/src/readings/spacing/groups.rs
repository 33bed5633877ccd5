//! Which things read as one group.
//!
//! A minimum spanning tree on the gaps, cut where a gap is half as wide again
//! as those beside it (pure distance law, Kubovy, Holcombe & Wagemans 1998;
//! the cut is our choice). An observation, silent until asked.
use super::super::finding::{Finding, Mark, State};
use super::super::rules::SPACING_GROUPS;
use super::super::study::Study;
use super::thing::Thing;
use crate::measures::{Link, groups, spacing_score, spanning_links};
use crate::shape::{gap_within, hull};
use crate::words::{Arg, listed, say, whole};

/// Gaps wider than this share of the picture's diagonal link nothing. Our
/// choice.
const APART: f64 = 0.2;

pub(super) fn read(study: &Study<'_>, things: &[Thing], flagged: usize) -> Option<Finding> {
    let frame = &study.scene().frame;
    let shown = |t: &&Thing| !t.arm && t.areas[0].outline.iter().any(|p| frame.contains(*p));
    let dishes: Vec<&Thing> = things.iter().filter(shown).collect();
    let limit = APART * study.picture().diagonal();
    let mut links = Vec::new();
    for (a, x) in dishes.iter().enumerate() {
        for (b, y) in dishes.iter().enumerate().skip(a + 1) {
            if let Some(g) = gap_within(&x.areas[0].region, &y.areas[0].region, limit) {
                links.push(Link {
                    a,
                    b,
                    gap: g.distance,
                });
            }
        }
    }
    let of = groups(dishes.len(), &links);
    let count = of.iter().max()? + 1;
    let mut f = Finding::by(
        &SPACING_GROUPS,
        "spacing".into(),
        (State::Holds, 3),
        count as f64,
        Vec::new(),
    );
    let mut lines = vec![say("working-spacing-groups", &[])];
    for group in 0..count {
        let members: Vec<&Thing> = dishes
            .iter()
            .zip(&of)
            .filter(|(_, g)| **g == group)
            .map(|(t, _)| *t)
            .collect();
        let names: Vec<String> = members.iter().map(|t| study.name(t.id)).collect();
        if members.len() > 1 {
            let points: Vec<_> = members
                .iter()
                .flat_map(|t| t.areas[0].outline.clone())
                .collect();
            f.marks.push(Mark::Group {
                outline: hull(&points),
            });
        }
        lines.push(listed(&names));
    }
    let neighbours = spanning_links(dishes.len(), &links).len();
    if let Some(score) = spacing_score(flagged, dishes.len(), neighbours) {
        let score = Arg::Text(whole(score));
        lines.push(say("working-spacing-score", &[("score", score)]));
    }
    f.sentence = say(
        if count == 1 {
            "spacing-group"
        } else {
            "spacing-groups"
        },
        &[("count", Arg::Text(count.to_string()))],
    );
    f.working = lines;
    Some(f)
}
