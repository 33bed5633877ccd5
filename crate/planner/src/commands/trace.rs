//! A thing of one's own traced over a photo of it.
use glam::DVec2;

use super::Refused;
use crate::layout::{Layout, Size};
use crate::shape::{self, TRACED_SIDES, TraceFault};
use crate::words::{Arg, length, say};

/// The outline of a thing from points round it in a photo, two marks in the
/// same photo and the true length between them, mm.
///
/// # Errors
/// When they make no outline, in words.
pub fn trace(
    layout: &Layout,
    line: &[DVec2],
    marks: [DVec2; 2],
    between: f64,
) -> Result<Size, Refused> {
    let found = shape::scale_of(marks, between).and_then(|scale| shape::traced(line, scale));
    found
        .map(|points| Size::Outline { points })
        .map_err(|fault| refused(layout, fault))
}

/// Why there is no such outline, in words.
pub(super) fn refused(layout: &Layout, fault: TraceFault) -> Refused {
    let (id, [wide, deep]) = match fault {
        TraceFault::Few => ("trace-few", [0; 2]),
        TraceFault::Scale => ("trace-scale", [0; 2]),
        TraceFault::Flat => ("trace-flat", [0; 2]),
        TraceFault::Crosses => ("trace-crosses", [0; 2]),
        TraceFault::Sides(sides) => ("trace-sides", sides),
    };
    let spoken = |mm: i32| Arg::Text(length(f64::from(mm), layout.head.units));
    let [least, most] = TRACED_SIDES;
    let sides = [
        ("width", wide),
        ("depth", deep),
        ("least", least),
        ("most", most),
    ];
    Refused::Trace(say(id, &sides.map(|(name, mm)| (name, spoken(mm)))))
}

#[cfg(test)]
mod tests {
    use glam::dvec2;

    use super::*;
    use crate::commands::tests::laid;

    #[test]
    fn three_corners_and_a_length_are_an_outline_and_faults_are_whole_sentences() {
        let layout = laid();
        let line = [dvec2(0.0, 0.0), dvec2(400.0, 0.0), dvec2(0.0, 300.0)];
        let marks = [dvec2(0.0, 500.0), dvec2(200.0, 500.0)];
        let size = trace(&layout, &line, marks, 100.0).expect("a triangle");
        assert_eq!(size.extent(), [200, 150], "two pixels are a millimetre");
        for (line, between, words) in [
            (&line[..2], 100.0, "three points"),
            (&line[..], 0.0, "known length"),
            (&line[..], 4.0, "It would be 0.8 cm wide and 0.6 cm deep"),
            (
                &[dvec2(0.0, 0.0), dvec2(300.0, 0.0), dvec2(600.0, 0.0)],
                100.0,
                "one line",
            ),
            (
                &[
                    dvec2(0.0, 0.0),
                    dvec2(400.0, 300.0),
                    dvec2(400.0, 0.0),
                    dvec2(0.0, 300.0),
                ],
                100.0,
                "crosses itself",
            ),
        ] {
            let refused = trace(&layout, line, marks, between).expect_err("no outline");
            let text = refused.to_string();
            assert!(text.contains(words) && !text.contains('{'), "{text}");
        }
    }
}
