//! A drawing as a page: its nodes as operators.
use std::collections::BTreeSet;

use pdf_writer::types::TextRenderingMode;
use pdf_writer::{Content, Name, Str};

use super::document::Document;
use super::matrix::{area_within, short, within};
use super::paint;
use crate::svg::{Anchor, Drawing, Group, Matrix, Node, SAME, Style};

/// What is known while a page is written.
struct Pen<'a> {
    document: &'a mut Document,
    missing: &'a mut BTreeSet<char>,
    /// Left, top, right and bottom of what the page shows.
    area: [f64; 4],
}

/// Adds the page.
pub(super) fn add(document: &mut Document, drawing: &Drawing, missing: &mut BTreeSet<char>) {
    let [wide, high] = drawing.size;
    let [x, y, across, down] = drawing.view;
    // As large as fits, in the middle.
    let by = (wide / across).min(high / down);
    let left = (wide - across * by) / 2.0 - x * by;
    let top = (high - down * by) / 2.0 - y * by;
    // PDF counts from the bottom up.
    let upright = [by, 0.0, 0.0, -by, left, high - top];
    let mut pen = Pen {
        document,
        missing,
        area: [-left / by, -top / by, (wide - left) / by, (high - top) / by],
    };
    let mut content = Content::new();
    content.transform(short(upright));
    pen.nodes(&mut content, &drawing.nodes, SAME);
    let content = content.finish();
    document.page(drawing.size, &content);
}

impl Pen<'_> {
    fn nodes(&mut self, content: &mut Content, nodes: &[Node], at: Matrix) {
        for node in nodes {
            match node {
                Node::Group(group) => self.group(content, group, at),
                Node::Shape { path, style } => {
                    self.paint(content, style);
                    paint::shape(content, path, style);
                }
                Node::Text {
                    at,
                    words,
                    length,
                    style,
                } => self.text(content, *at, words, *length, style),
            }
        }
    }

    fn group(&mut self, content: &mut Content, group: &Group, at: Matrix) {
        let at = within(at, group.matrix);
        let Some(area) = area_within(at, self.area) else {
            return;
        };
        content.save_state();
        if group.matrix != SAME {
            content.transform(short(group.matrix));
        }
        if let Some(path) = &group.clip {
            paint::outline(content, path);
            content.clip_nonzero().end_path();
        }
        if group.opacity < 1.0 {
            // What lies in it is put together first, then made fainter as one.
            let mut whole = Content::new();
            self.nodes(&mut whole, &group.nodes, at);
            let form = self.document.form(area, &whole.finish());
            let state = self.document.state(group.opacity, group.opacity);
            content.set_parameters(Name(state.as_bytes()));
            content.x_object(Name(form.as_bytes()));
        } else {
            self.nodes(content, &group.nodes, at);
        }
        content.restore_state();
    }

    /// Sets colours, lines and how much shows through.
    fn paint(&mut self, content: &mut Content, style: &Style) {
        let opacity = |ink: Option<crate::svg::Ink>| ink.map_or(1.0, |ink| ink.opacity);
        let state = self
            .document
            .state(opacity(style.fill()), opacity(style.stroke()));
        content.set_parameters(Name(state.as_bytes()));
        paint::colours(content, style);
    }

    fn text(
        &mut self,
        content: &mut Content,
        [x, y]: [f64; 2],
        words: &str,
        length: Option<f64>,
        style: &Style,
    ) {
        let cut = style.cut();
        let set = self.document.fonts.set(cut, words, self.missing);
        let own = set.breadth * style.letters;
        let breadth = length.filter(|_| own > 0.0).unwrap_or(own);
        let left = match style.anchor {
            Anchor::Start => x,
            Anchor::Middle => x - breadth / 2.0,
            Anchor::End => x - breadth,
        };
        self.paint(content, style);
        let modes: &[TextRenderingMode] = match (style.fill(), style.stroke()) {
            (Some(_), None) => &[TextRenderingMode::Fill],
            (None, Some(_)) => &[TextRenderingMode::Stroke],
            (Some(_), Some(_)) if style.stroke_first => {
                &[TextRenderingMode::Stroke, TextRenderingMode::Fill]
            }
            (Some(_), Some(_)) => &[TextRenderingMode::FillStroke],
            (None, None) => &[],
        };
        for &mode in modes {
            content.begin_text();
            content.set_font(Name(cut.name().as_bytes()), style.letters as f32);
            content.set_text_rendering_mode(mode);
            let stretch = if own > 0.0 { breadth / own } else { 1.0 };
            content.set_horizontal_scaling((stretch * 100.0) as f32);
            // Letters stand upright in a page that counts downwards.
            content.set_text_matrix(short([1.0, 0.0, 0.0, -1.0, left, y]));
            content.show(Str(&set.codes));
            content.end_text();
        }
    }
}
