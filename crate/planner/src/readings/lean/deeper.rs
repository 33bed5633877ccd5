//! Getting what no f-number holds within what one does: something lower, a
//! longer lens, from which near and far are less unlike, or the camera farther
//! back with a wider frame, of which the crops take less.
use super::super::finding::{Finding, Remedy};
use super::super::rules::LEAN_FOCUS;
use super::super::study::{Study, Words};
use super::super::{crops, fit};
use super::focus::{Depth, depth};
use super::remedy::{self, Try};
use crate::edit::Edit;
use crate::layout::{Layout, MAX_SIZE};
use crate::words::{Arg, length, rounded, say};

/// A frame is made wider by these steps of its width, and no wider than twice.
/// Our choice.
const WIDER: i32 = 5;
const STEPS: i32 = 20;

/// The first change after which there is an f-number that holds everything, and
/// nothing else is spoiled; setting it is the next remedy.
pub(super) fn found(study: &Study<'_>, now: &Depth) -> Option<Remedy> {
    let layout = study.layout();
    let short = now.short();
    let mut tries = remedy::lower(study, now.tallest.0);
    tries.extend(remedy::longer(study));
    tries.extend(farther(layout));
    tries.into_iter().find_map(|(act, after)| {
        let then = depth(&after).filter(|then| then.can_be_held(&after))?;
        if then.short() >= short || spoils(study, &after) {
            return None;
        }
        let units = layout.head.units;
        let args = [
            ("before", Arg::Text(length(short, units))),
            ("after", Arg::Text(length(then.short(), units))),
            ("needed", Arg::Text(rounded(then.needed))),
        ];
        let id = if then.short() < LEAN_FOCUS.edges[0] {
            "focus-all"
        } else {
            "focus-then"
        };
        Some(Remedy {
            act,
            predicted: say(id, &args),
            after: then.short(),
            edit: Edit::between(layout, &after),
        })
    })
}

/// The camera farther back with the lens it has: a wider frame, of which every
/// crop keeps what it keeps. Without crops the frame is what is delivered.
fn farther(layout: &Layout) -> impl Iterator<Item = Try> {
    let own = layout.frame.width;
    let widths = (1..=STEPS).map(move |n| own + own * n * WIDER / 100);
    let widths = widths.take_while(|width| *width <= MAX_SIZE);
    let wide = widths.filter(|_| !layout.crops.is_empty());
    wide.filter_map(|width| {
        let mut after = layout.clone();
        after.frame.width = width;
        let words = [(
            "width",
            Arg::Text(length(f64::from(width), layout.head.units)),
        )];
        fit::fits(&after).then(|| (say("act-farther", &words), after))
    })
}

/// Whether a change has something press about crops, leans or the frame that
/// did not before.
fn spoils(study: &Study<'_>, after: &Layout) -> bool {
    let all = |study: &Study<'_>| -> Vec<Finding> {
        let mut found = fit::read(study, false);
        let leans = super::leaning(study);
        found.extend(leans.iter().filter_map(|l| super::hides(study, l, false)));
        found.retain(Finding::is_pressing);
        found
    };
    let before = all(study);
    let changed = study.changed(after);
    changed.say_only(Words::None);
    let worse = all(&changed).iter().any(|f| {
        let was = before.iter().find(|b| b.key == f.key);
        was.is_none_or(|b| f.cost() > b.cost() + f.rule.same)
    });
    worse || crops::spoils(study, after)
}

#[cfg(test)]
mod tests {
    use crate::layout::{Format, Layout, Point};
    use crate::readings::samples::{after, laid, said};
    use crate::readings::{Finding, State};

    /// A post so high on a table of 2400 × 1600 mm, seen by 50 mm on full frame
    /// from 1508.3 mm over a frame of 1050.
    fn post(prop: &str, height: i32, more: &str) -> Layout {
        let mut layout = laid(&format!(
            r#""items":[{{"id":1,"number":1,"name":"post","prop":"{prop}","height":{height},
            "at":[1100,800],"size":{{"shape":"disc","diameter":75}}}}]{more}"#
        ));
        (layout.table.width, layout.table.depth) = (2_400, 1_600);
        layout.frame.at = Point::new(1_200, 800);
        layout
    }

    fn focus(layout: &Layout) -> Finding {
        said(layout, "lean:focus").expect("always told")
    }

    /// What the remedy leads to, whose figure is the one it promised.
    fn kept(layout: &Layout) -> Layout {
        let f = focus(layout);
        let then = after(layout, &f);
        let remedy = f.remedy.expect("a remedy");
        let found = focus(&then).figure;
        assert!(
            (found - remedy.after).abs() < 1e-9,
            "{}: {found}",
            remedy.act
        );
        // And the aperture is what is left to set, when anything is.
        let left = focus(&then).state == State::LookAgain;
        assert_eq!(
            remedy.predicted.contains("then f/"),
            left,
            "{}",
            remedy.predicted
        );
        if left {
            let next = focus(&after(&then, &focus(&then)));
            assert_eq!(next.state, State::Holds, "{}", next.sentence);
        }
        then
    }

    #[test]
    fn what_no_aperture_holds_takes_a_longer_lens_a_wider_frame_or_a_lower_thing() {
        // 700 mm high: near 808.3, far 1508.3 mm, f/25.1 by the thin lens.
        let mut high = post("nothing-known", 700, r#","rig":{"ceiling":6000}"#);
        let f = focus(&high);
        let told = f
            .working
            .iter()
            .any(|line| line.contains("4 exposures at f/8"));
        assert!(told, "25.1 over 8: {:?}", f.working);
        assert!(kept(&high).camera.focal > 50, "a longer lens");
        high.rig.ceiling = 2_800;
        assert!(focus(&high).remedy.is_none(), "no room for it");

        let crop = r#","rig":{"ceiling":2800},"crops":[{"id":9,"name":"page","ratio":[1,1],
            "at":[1200,800],"width":600}]"#;
        let wide = kept(&post("nothing-known", 700, crop));
        assert!(wide.frame.width > 1_050, "farther back");
        assert_eq!(wide.camera.focal, 50, "with the lens there is");

        let lower = kept(&post("oil-carafe", 700, crop));
        assert_ne!(lower.items[0].prop, "oil-carafe", "a lower vessel");
    }

    #[test]
    fn the_one_aperture_of_a_phone_counts_its_exposures() {
        let mut layout = post("nothing-known", 700, "");
        layout.camera.format = Format::Phone;
        (layout.camera.focal, layout.camera.aperture) = (26, 17);
        let f = focus(&layout);
        let said = f
            .working
            .iter()
            .any(|line| line.contains("exposures at f/1.7"));
        assert_eq!(said, f.state == State::LookAgain, "{:?}", f.working);
    }
}
