//! Outlines, colours and lines as operators.
use pdf_writer::Content;
use pdf_writer::types::{LineCapStyle, LineJoinStyle};

use crate::svg::{Step, Style};

/// A shape in the colours that are set.
pub(super) fn shape(content: &mut Content, path: &[Step], style: &Style) {
    let (fill, stroke) = (style.fill().is_some(), style.stroke().is_some());
    if style.stroke_first && fill && stroke {
        outline(content, path);
        content.stroke();
        outline(content, path);
        filled(content, style.even_odd);
        return;
    }
    if !fill && !stroke {
        return;
    }
    outline(content, path);
    match (fill, stroke, style.even_odd) {
        (true, true, true) => content.fill_even_odd_and_stroke(),
        (true, true, false) => content.fill_nonzero_and_stroke(),
        (false, _, _) => content.stroke(),
        (true, false, odd) => filled(content, odd),
    };
}

fn filled(content: &mut Content, even_odd: bool) -> &mut Content {
    if even_odd {
        content.fill_even_odd()
    } else {
        content.fill_nonzero()
    }
}

/// An outline.
pub(super) fn outline(content: &mut Content, path: &[Step]) {
    let short = |[x, y]: [f64; 2]| [x as f32, y as f32];
    for step in path {
        match *step {
            Step::Move(to) => {
                let [x, y] = short(to);
                content.move_to(x, y);
            }
            Step::Line(to) => {
                let [x, y] = short(to);
                content.line_to(x, y);
            }
            Step::Curve(points) => {
                let [[a, b], [c, d], [x, y]] = points.map(short);
                content.cubic_to(a, b, c, d, x, y);
            }
            Step::Close => {
                content.close_path();
            }
        }
    }
}

/// Sets the colours and how lines are drawn.
pub(super) fn colours(content: &mut Content, style: &Style) {
    let share = |byte: u8| f32::from(byte) / 255.0;
    if let Some(ink) = style.fill() {
        let [r, g, b] = ink.rgb.map(share);
        content.set_fill_rgb(r, g, b);
    }
    if let Some(ink) = style.stroke() {
        let [r, g, b] = ink.rgb.map(share);
        content.set_stroke_rgb(r, g, b);
        content.set_line_width(style.width as f32);
        content.set_line_cap(if style.round_cap {
            LineCapStyle::RoundCap
        } else {
            LineCapStyle::ButtCap
        });
        content.set_line_join(if style.round_join {
            LineJoinStyle::RoundJoin
        } else {
            LineJoinStyle::MiterJoin
        });
        // As SVG has it; PDF begins with ten.
        content.set_miter_limit(4.0);
        content.set_dash_pattern(style.dashes.iter().map(|&dash| dash as f32), 0.0);
    }
}
