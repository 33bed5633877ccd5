//! Marks of findings on their way from the worker's core to the page's: all
//! numbers in one row and all labels in one text, so that a drag makes no objects.
use glam::DVec2;
use planner::layout::Srgb;
use planner::readings::Mark;

/// Ends a label; the core strips control characters from all text it takes in.
const END: char = '\u{1f}';
/// From here on the kind tells which exposure adds it, and whether by its
/// shadow.
const ADDED: f64 = 20.0;

/// Kind, how many points, then x and y of each, mark after mark.
pub(crate) fn numbers(marks: &[Mark]) -> Vec<f64> {
    let mut row = Vec::new();
    for mark in marks {
        let (kind, points): (f64, &[DVec2]) = match mark {
            Mark::LostEdge { line } => (0.0, line),
            Mark::Gap { from, to, .. } => (1.0, &[*from, *to]),
            Mark::Overrun { outline, .. } => (2.0, outline),
            Mark::Arrow { from, to } => (3.0, &[*from, *to]),
            Mark::Triangle { corners } => (4.0, corners),
            Mark::Ring { at, radius } => (5.0, &[*at, DVec2::new(*radius, 0.0)]),
            Mark::Label { at, .. } => (6.0, &[*at]),
            Mark::Group { outline } => (7.0, outline),
            Mark::Area { outline, .. } => (8.0, outline),
            Mark::Glare { outline } => (12.0, outline),
            Mark::Ghost { outline } => (13.0, outline),
            Mark::Added {
                outline,
                exposure,
                shadow,
                ..
            } => (
                ADDED + 2.0 * f64::from(*exposure) + f64::from(u8::from(*shadow)),
                outline,
            ),
            Mark::StopLine { line, .. } => (10.0, line),
            Mark::Tip { from, to } => (11.0, &[*from, *to]),
            Mark::Swatch { at, side, tone, .. } => {
                let [r, g, b] = tone.0.map(f64::from);
                (9.0, &[*at, DVec2::new(*side, r), DVec2::new(g, b)])
            }
        };
        row.extend([kind, points.len() as f64]);
        row.extend(points.iter().flat_map(|p| p.to_array()));
    }
    row
}

/// The labels of the marks that have one, in their order.
pub(crate) fn words(marks: &[Mark]) -> String {
    let mut text = String::new();
    for mark in marks {
        if let Mark::Gap { label, .. }
        | Mark::Overrun { label, .. }
        | Mark::Area { label, .. }
        | Mark::Swatch { label, .. }
        | Mark::StopLine { label, .. }
        | Mark::Added { label, .. }
        | Mark::Label { text: label, .. } = mark
        {
            text.push_str(label);
            text.push(END);
        }
    }
    text
}

/// The marks again; a row that breaks off ends them.
pub(crate) fn read(mut row: &[f64], words: &str) -> Vec<Mark> {
    let mut labels = words.split(END);
    let mut label = || labels.next().unwrap_or_default().to_string();
    let mut marks = Vec::new();
    while let [kind, count, rest @ ..] = row {
        let Some((own, after)) = rest.split_at_checked(*count as usize * 2) else {
            break;
        };
        row = after;
        let points: Vec<DVec2> = own.chunks_exact(2).map(DVec2::from_slice).collect();
        marks.push(match (*kind as u8, points.as_slice()) {
            (0, _) => Mark::LostEdge { line: points },
            (1, &[from, to]) => Mark::Gap {
                from,
                to,
                label: label(),
            },
            (2, _) => Mark::Overrun {
                outline: points,
                label: label(),
            },
            (3, &[from, to]) => Mark::Arrow { from, to },
            (4, _) => Mark::Triangle { corners: points },
            (5, &[at, radius]) => Mark::Ring {
                at,
                radius: radius.x,
            },
            (6, &[at]) => Mark::Label { at, text: label() },
            (7, _) => Mark::Group { outline: points },
            (9, &[at, one, two]) => Mark::Swatch {
                at,
                side: one.x,
                tone: Srgb([one.y, two.x, two.y].map(|c| c as u8)),
                label: label(),
            },
            (8, _) => Mark::Area {
                outline: points,
                label: label(),
            },
            (12, _) => Mark::Glare { outline: points },
            (13, _) => Mark::Ghost { outline: points },
            (code, _) if f64::from(code) >= ADDED => {
                let code = code - ADDED as u8;
                Mark::Added {
                    outline: points,
                    exposure: code / 2,
                    shadow: code % 2 == 1,
                    label: label(),
                }
            }
            (10, _) => Mark::StopLine {
                line: points,
                label: label(),
            },
            (11, &[from, to]) => Mark::Tip { from, to },
            _ => break,
        });
    }
    marks
}

#[cfg(test)]
mod tests {
    use super::*;

    fn every_kind() -> Vec<Mark> {
        let [a, b, c] = [(1.0, 2.0), (3.5, -4.0), (0.0, 9.0)].map(|(x, y)| DVec2::new(x, y));
        vec![
            Mark::LostEdge {
                line: vec![a, b, c],
            },
            Mark::Gap {
                from: a,
                to: b,
                label: "3 cm".into(),
            },
            Mark::Overrun {
                outline: vec![a, b, c],
                label: String::new(),
            },
            Mark::Arrow { from: c, to: a },
            Mark::Triangle {
                corners: vec![a, b, c],
            },
            Mark::Ring {
                at: b,
                radius: 70.0,
            },
            Mark::Label {
                at: c,
                text: "loaf".into(),
            },
            Mark::Group {
                outline: vec![c, a, b],
            },
            Mark::Swatch {
                at: a,
                side: 40.0,
                tone: Srgb::hex(0x0c_2fa8),
                label: "1".into(),
            },
            Mark::StopLine {
                line: vec![b, c, a],
                label: "−1 stops".into(),
            },
            Mark::Tip { from: b, to: a },
            Mark::Area {
                outline: vec![b, a, c],
                label: "a fifth".into(),
            },
            Mark::Glare {
                outline: vec![a, c, b],
            },
            Mark::Added {
                outline: vec![a, b, c],
                exposure: 0,
                shadow: false,
                label: "1".into(),
            },
            Mark::Added {
                outline: vec![c, b, a],
                exposure: 59,
                shadow: true,
                label: String::new(),
            },
            Mark::Gap {
                from: b,
                to: c,
                label: "clear by 5 cm".into(),
            },
        ]
    }

    #[test]
    fn marks_come_back_as_they_went() {
        let marks = every_kind();
        assert_eq!(
            read(&numbers(&marks), &words(&marks)),
            marks,
            "there and back"
        );
    }

    #[test]
    fn a_row_that_breaks_off_gives_the_marks_before_it() {
        let marks = every_kind();
        let row = numbers(&marks);
        for end in 0..row.len() {
            let some = read(&row[..end], &words(&marks));
            assert_eq!(some, marks[..some.len()], "cut at {end}");
        }
    }
}
