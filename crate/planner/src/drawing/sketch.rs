//! A group being drawn: shapes go in unturned, nodes come out turned and inked.

use glam::{DVec2, dvec2};
use svg::node::Node;
use svg::node::element::{Group, Path};

use super::path::{PathData, short};
use super::pen::Pen;
use super::ribbon;
use super::tone::{INK, Tone, hex};
use crate::figure::dice::Dice;
use crate::figure::form::Frame;
use crate::figure::outline::{arc, bearing};

/// Many loops or lines that share one look.
pub(super) type Rows = Vec<Vec<DVec2>>;

/// Presentation attributes of one path.
#[derive(Clone, Copy, Default)]
pub(super) struct Look {
    pub(super) fill: Option<Tone>,
    /// Colour and width in mm.
    pub(super) stroke: Option<(Tone, f64)>,
    /// Lengths of dash and gap, mm.
    pub(super) dash: Option<[f64; 2]>,
    /// 0 means unset, that is 1.
    pub(super) opacity: f64,
    pub(super) even_odd: bool,
}

/// A path node with `look`; a path with a stroke and no fill is left open.
pub(super) fn path_node(data: PathData, look: &Look) -> Path {
    let mut node = Path::new().set("d", data.finish());
    if let Some(tone) = look.fill {
        node.assign("fill", hex(tone));
    } else if look.stroke.is_some() {
        node.assign("fill", "none");
        node.assign("stroke-linecap", "round");
    }
    if let Some((tone, width)) = look.stroke {
        node.assign("stroke", hex(tone));
        node.assign("stroke-width", short(width));
        node.assign("stroke-linejoin", "round");
    }
    if let Some([dash, gap]) = look.dash {
        let mut text = short(dash);
        text.push(' ');
        text.push_str(&short(gap));
        node.assign("stroke-dasharray", text);
    }
    if look.opacity > 0.0 {
        // A path that is only filled or only lined needs no layer of its own,
        // which a browser composes anew in every frame of a drag.
        let of = match (look.fill, look.stroke) {
            (Some(_), None) => "fill-opacity",
            (None, Some(_)) => "stroke-opacity",
            _ => "opacity",
        };
        node.assign(of, short(look.opacity));
    }
    if look.even_odd {
        node.assign("fill-rule", "evenodd");
    }
    node
}

/// A drawing in progress.
pub(super) struct Sketch<'a> {
    pub(super) pen: &'a Pen,
    pub(super) dice: Dice,
    /// Towards the window, in the frame shapes are designed in.
    pub(super) lit: DVec2,
    frame: Frame,
    group: Group,
}

impl<'a> Sketch<'a> {
    /// An empty drawing whose shapes go through `frame`.
    pub(super) fn new(pen: &'a Pen, dice: Dice, frame: Frame) -> Self {
        Sketch {
            pen,
            dice,
            lit: -frame.own(pen.fall),
            frame,
            group: Group::new(),
        }
    }

    /// The finished group.
    pub(super) fn done(self) -> Group {
        self.group
    }

    /// `count` small things, or half where the pen is not fine.
    pub(super) fn some(&self, count: usize) -> usize {
        self.pen.some(count)
    }

    /// Puts down a finished path, unless it is empty.
    pub(super) fn put(&mut self, data: PathData, look: &Look) {
        if !data.is_empty() {
            self.group.append(path_node(data, look));
        }
    }

    /// A designed point where it is drawn.
    pub(super) fn on_page(&self, p: DVec2) -> DVec2 {
        self.frame.apply(p)
    }

    fn smooth(&self, loops: &[Vec<DVec2>]) -> PathData {
        let mut data = PathData::default();
        for points in loops {
            data.smooth(points.iter().map(|&p| self.frame.apply(p)));
        }
        data
    }

    fn look(&self, tone: Tone, ink: f64, opacity: f64) -> Look {
        Look {
            fill: Some(tone),
            stroke: (ink > 0.0).then_some((INK, ink * self.pen.weight)),
            opacity,
            ..Look::default()
        }
    }

    /// One smooth loop filled flat.
    pub(super) fn fill(&mut self, points: &[DVec2], tone: Tone) {
        self.fills(&[points.to_vec()], tone, 0.0, 0.0);
    }

    /// One smooth loop washed with `opacity`.
    pub(super) fn wash(&mut self, points: &[DVec2], tone: Tone, opacity: f64) {
        self.fills(&[points.to_vec()], tone, 0.0, opacity);
    }

    /// Smooth loops in one path; `ink` outlines them evenly in base weights
    /// and `opacity` 0 is opaque.
    pub(super) fn fills(&mut self, loops: &[Vec<DVec2>], tone: Tone, ink: f64, opacity: f64) {
        let look = self.look(tone, ink, opacity);
        self.put(self.smooth(loops), &look);
    }

    /// Polygons in one path, as [`Sketch::fills`].
    pub(super) fn polygons(&mut self, loops: &[Vec<DVec2>], tone: Tone, ink: f64, opacity: f64) {
        let mut data = PathData::default();
        for points in loops {
            data.polygon(points.iter().map(|&p| self.frame.apply(p)));
        }
        let look = self.look(tone, ink, opacity);
        self.put(data, &look);
    }

    /// Open smooth lines in one path, `width` base weights wide.
    pub(super) fn lines(&mut self, rows: &[Vec<DVec2>], tone: Tone, width: f64, opacity: f64) {
        self.dashes(rows, tone, width, opacity, None);
    }

    /// Lines with their corners kept, in one path, `width` base weights wide.
    pub(super) fn straight(&mut self, rows: &[Vec<DVec2>], tone: Tone, width: f64) {
        let mut data = PathData::default();
        for row in rows {
            data.straight(row.iter().map(|&p| self.frame.apply(p)));
        }
        let look = Look {
            stroke: Some((tone, width * self.pen.weight)),
            ..Look::default()
        };
        self.put(data, &look);
    }

    /// Dashed lines; dash and gap in base weights.
    pub(super) fn dashes(
        &mut self,
        rows: &[Vec<DVec2>],
        tone: Tone,
        width: f64,
        opacity: f64,
        dash: Option<[f64; 2]>,
    ) {
        let mut data = PathData::default();
        for row in rows {
            let turned: Vec<DVec2> = row.iter().map(|&p| self.frame.apply(p)).collect();
            data.open(&turned);
        }
        let weight = self.pen.weight;
        let look = Look {
            stroke: Some((tone, width * weight)),
            dash: dash.map(|d| [d[0] * weight, d[1] * weight]),
            opacity,
            ..Look::default()
        };
        self.put(data, &look);
    }

    /// A dark line under a light one: strands, grains, rings.
    pub(super) fn strands(&mut self, rows: &[Vec<DVec2>], dark: (Tone, f64), light: (Tone, f64)) {
        self.lines(rows, dark.0, dark.1, 0.0);
        self.lines(rows, light.0, light.1, 0.0);
    }

    /// The swelling ink outline of a loop, `k` base weights strong.
    pub(super) fn ink(&mut self, points: &[DVec2], k: f64) {
        self.ink_all(&[points.to_vec()], k);
    }

    /// Swelling outlines of several loops in one path.
    pub(super) fn ink_all(&mut self, loops: &[Vec<DVec2>], k: f64) {
        let mut data = PathData::default();
        for points in loops {
            let turned: Vec<DVec2> = points.iter().map(|&p| self.frame.apply(p)).collect();
            let phase = self.dice.angle();
            data.append(ribbon::outline(
                &turned,
                k * self.pen.weight,
                self.pen.fall,
                phase,
            ));
        }
        let look = Look {
            even_odd: true,
            ..self.look(INK, 0.0, 0.0)
        };
        self.put(data, &look);
    }

    /// Tapering brush strokes in one path.
    pub(super) fn brush(&mut self, rows: &[Vec<DVec2>], k: f64, tone: Tone, ends: [f64; 2]) {
        let mut data = PathData::default();
        for row in rows {
            let turned: Vec<DVec2> = row.iter().map(|&p| self.frame.apply(p)).collect();
            data.append(ribbon::stroke(&turned, k * self.pen.weight, ends));
        }
        let look = self.look(tone, 0.0, 0.0);
        self.put(data, &look);
    }

    /// An arc of an ellipse facing the window, in the designed frame: `from`
    /// and `to` are angles off the direction of the window.
    pub(super) fn facing(&self, at: DVec2, half: DVec2, from: f64, to: f64) -> Vec<DVec2> {
        // Where the normal of the ellipse meets the light, not its radius.
        let mid = bearing(self.lit * half);
        arc(at, half, mid + from, mid + to, 8)
    }

    /// The window caught on a round rim.
    pub(super) fn rim_light(&mut self, at: DVec2, half: DVec2, tone: Tone, k: f64) {
        let row = self.facing(at, half, -0.56, 0.45);
        self.lines(&[row], tone, k, 0.85);
    }

    /// Short marks at `spots`, as dots of a pencil.
    pub(super) fn dots(&mut self, spots: &[DVec2], tone: Tone, k: f64, opacity: f64) {
        let rows: Rows = spots
            .iter()
            .map(|&p| vec![p, p + dvec2(0.6, 0.3)])
            .collect();
        self.lines(&rows, tone, k, opacity);
    }
}
