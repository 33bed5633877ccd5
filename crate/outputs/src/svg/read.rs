//! Reading SVG text into the tree.
use std::str::FromStr as _;

use roxmltree::{Document, Node as Xml};
use svgtypes::{
    FuncIRI, PointsParser, SimplePathSegment, SimplifyingPathParser, Transform, ViewBox,
};

use super::style::{Style, number, points, wrong};
use super::{Drawing, Fault, Group, Matrix, Node, SAME, Step};

/// What is no part of the picture.
const UNSEEN: [&str; 6] = [
    "id",
    "class",
    "role",
    "aria-label",
    "lang",
    "shape-rendering",
];

/// How far the ends of a curve's handles lie along a quarter of a circle.
const QUARTER: f64 = 0.552_284_749_831;

/// Reads a drawing.
pub(crate) fn read(text: &str) -> Result<Drawing, Fault> {
    let document = Document::parse(text).map_err(|error| Fault::Markup(error.to_string()))?;
    let root = document.root_element();
    if root.tag_name().name() != "svg" {
        return Err(Fault::Element(root.tag_name().name().to_owned()));
    }
    let (mut size, mut view) = ([None; 2], None);
    let mut style = Style::default();
    for attribute in root.attributes() {
        let (name, value) = (attribute.name(), attribute.value());
        match name {
            "width" => size[0] = Some(points(root, name, value)?),
            "height" => size[1] = Some(points(root, name, value)?),
            "viewBox" => {
                let ViewBox { x, y, w, h } =
                    ViewBox::from_str(value).map_err(|_| wrong(root, name, value))?;
                view = Some([x, y, w, h]);
            }
            "version" => {}
            _ => other(root, name, value, &mut style)?,
        }
    }
    let shown = view.map(|[_, _, wide, high]| [wide * 0.75, high * 0.75]);
    let size = match (size, shown) {
        ([Some(wide), Some(high)], _) | ([None, None], Some([wide, high])) => [wide, high],
        _ => return Err(Fault::Size),
    };
    let view = view.unwrap_or([0.0, 0.0, size[0] / 0.75, size[1] / 0.75]);
    if size.iter().chain(&view[2..]).any(|side| *side <= 0.0) {
        return Err(Fault::Size);
    }
    Ok(Drawing {
        size,
        view,
        nodes: children(root, &style)?,
    })
}

fn children(parent: Xml, style: &Style) -> Result<Vec<Node>, Fault> {
    let elements = parent.children().filter(Xml::is_element);
    let mut nodes = Vec::new();
    for element in elements {
        nodes.extend(node(element, style)?);
    }
    Ok(nodes)
}

/// One element; nothing for what is only referred to or read aloud.
fn node(element: Xml, style: &Style) -> Result<Option<Node>, Fault> {
    let name = element.tag_name().name();
    match name {
        "title" | "desc" | "clipPath" => return Ok(None),
        "defs" => return children(element, style).map(|_| None),
        "g" | "text" | "path" | "rect" | "circle" | "ellipse" | "line" | "polygon" | "polyline" => {
        }
        _ => return Err(Fault::Element(name.to_owned())),
    }
    let mut style = style.clone();
    let mut group = Group {
        matrix: SAME,
        opacity: 1.0,
        clip: None,
        nodes: Vec::new(),
    };
    for attribute in element.attributes() {
        let (name, value) = (attribute.name(), attribute.value());
        match name {
            "opacity" => group.opacity = number(element, name, value)?,
            "transform" => group.matrix = matrix(element, value)?,
            "clip-path" => group.clip = Some(clip(element, value)?),
            _ if is_place(element, name) => {}
            _ => other(element, name, value, &mut style)?,
        }
    }
    if name == "g" {
        group.nodes = children(element, &style)?;
    } else {
        // One paint alone may be made fainter itself.
        if style.fill().is_none() || style.stroke().is_none() {
            style.fade(std::mem::replace(&mut group.opacity, 1.0));
        }
        group.nodes.extend(drawn(element, style)?);
    }
    let plain = group.matrix == SAME && group.opacity >= 1.0 && group.clip.is_none();
    if plain && group.nodes.len() < 2 {
        return Ok(group.nodes.pop());
    }
    Ok(Some(Node::Group(group)))
}

/// What an element without others within draws.
fn drawn(element: Xml, style: Style) -> Result<Option<Node>, Fault> {
    if element.tag_name().name() == "text" {
        if let Some(within) = element.children().find(Xml::is_element) {
            return Err(Fault::Element(within.tag_name().name().to_owned()));
        }
        let words = element.text().unwrap_or_default();
        let words: Vec<&str> = words.split_ascii_whitespace().collect();
        let at = [length(element, "x")?, length(element, "y")?];
        let stretched = stretched(element)?;
        return Ok((!words.is_empty()).then(|| Node::Text {
            at,
            words: words.join(" "),
            length: stretched,
            style,
        }));
    }
    let path = outline(element)?;
    Ok((!path.is_empty()).then_some(Node::Shape { path, style }))
}

/// How long a line of words is made by stretching its letters.
fn stretched(element: Xml) -> Result<Option<f64>, Fault> {
    let how = element.attribute("lengthAdjust").unwrap_or("spacing");
    match element.attribute("textLength") {
        None => Ok(None),
        Some(value) if how == "spacingAndGlyphs" => number(element, "textLength", value).map(Some),
        Some(_) => Err(wrong(element, "lengthAdjust", how)),
    }
}

/// Whether an attribute says where an element lies.
fn is_place(element: Xml, name: &str) -> bool {
    let all: &[&str] = match element.tag_name().name() {
        "text" => &["x", "y", "textLength", "lengthAdjust"],
        "path" => &["d"],
        "rect" => &["x", "y", "width", "height"],
        "circle" => &["cx", "cy", "r"],
        "ellipse" => &["cx", "cy", "rx", "ry"],
        "line" => &["x1", "y1", "x2", "y2"],
        "polygon" | "polyline" => &["points"],
        _ => &[],
    };
    all.contains(&name)
}

/// Takes an attribute of the style over, or leaves out what nobody sees.
fn other(element: Xml, name: &str, value: &str, style: &mut Style) -> Result<(), Fault> {
    if style.take(element, name, value)? || UNSEEN.contains(&name) || name.starts_with("data-") {
        return Ok(());
    }
    Err(Fault::Attribute {
        element: element.tag_name().name().to_owned(),
        attribute: name.to_owned(),
    })
}

fn length(element: Xml, name: &str) -> Result<f64, Fault> {
    let value = element.attribute(name).unwrap_or("0");
    if value == "100%" {
        return whole(element, name);
    }
    number(element, name, value)
}

/// All of what the drawing shows.
fn whole(element: Xml, name: &str) -> Result<f64, Fault> {
    let shown = element.document().root_element().attribute("viewBox");
    let fault = || wrong(element, name, "100%");
    let ViewBox { w, h, .. } = ViewBox::from_str(shown.unwrap_or_default()).map_err(|_| fault())?;
    match name {
        "width" => Ok(w),
        "height" => Ok(h),
        _ => Err(fault()),
    }
}

fn matrix(element: Xml, value: &str) -> Result<Matrix, Fault> {
    let Transform { a, b, c, d, e, f } =
        Transform::from_str(value).map_err(|_| wrong(element, "transform", value))?;
    Ok([a, b, c, d, e, f])
}

/// The outlines an element is cut to.
fn clip(element: Xml, value: &str) -> Result<Vec<Step>, Fault> {
    let fault = || wrong(element, "clip-path", value);
    let FuncIRI(name) = FuncIRI::from_str(value).map_err(|_| fault())?;
    let mut all = element.document().descendants();
    let found = all.find(|e| e.tag_name().name() == "clipPath" && e.attribute("id") == Some(name));
    let shapes = found.ok_or_else(fault)?;
    let mut path = Vec::new();
    for shape in shapes.children().filter(Xml::is_element) {
        for attribute in shape.attributes() {
            if !is_place(shape, attribute.name()) {
                return Err(Fault::Attribute {
                    element: shape.tag_name().name().to_owned(),
                    attribute: attribute.name().to_owned(),
                });
            }
        }
        path.extend(outline(shape)?);
    }
    Ok(path)
}

/// The outline of an element.
fn outline(element: Xml) -> Result<Vec<Step>, Fault> {
    let get = |name| length(element, name);
    match element.tag_name().name() {
        "path" => data(element),
        "rect" => {
            let ([x, y], [wide, high]) = ([get("x")?, get("y")?], [get("width")?, get("height")?]);
            let (right, end) = (x + wide, y + high);
            Ok(vec![
                Step::Move([x, y]),
                Step::Line([right, y]),
                Step::Line([right, end]),
                Step::Line([x, end]),
                Step::Close,
            ])
        }
        "circle" => {
            let r = get("r")?;
            Ok(oval([get("cx")?, get("cy")?], [r, r]))
        }
        "ellipse" => Ok(oval([get("cx")?, get("cy")?], [get("rx")?, get("ry")?])),
        "line" => Ok(vec![
            Step::Move([get("x1")?, get("y1")?]),
            Step::Line([get("x2")?, get("y2")?]),
        ]),
        name @ ("polygon" | "polyline") => {
            let points = PointsParser::from(element.attribute("points").unwrap_or_default());
            let mut path: Vec<Step> = points.map(|(x, y)| Step::Line([x, y])).collect();
            if let Some(Step::Line(first)) = path.first().copied() {
                path[0] = Step::Move(first);
            }
            if name == "polygon" && !path.is_empty() {
                path.push(Step::Close);
            }
            Ok(path)
        }
        name => Err(Fault::Element(name.to_owned())),
    }
}

/// An oval as four curves.
fn oval([x, y]: [f64; 2], [rx, ry]: [f64; 2]) -> Vec<Step> {
    let at = |u: f64, v: f64| [x + u * rx, y + v * ry];
    let k = QUARTER;
    let quarter = |a: [f64; 2], b: [f64; 2], c: [f64; 2]| Step::Curve([a, b, c]);
    vec![
        Step::Move(at(1.0, 0.0)),
        quarter(at(1.0, k), at(k, 1.0), at(0.0, 1.0)),
        quarter(at(-k, 1.0), at(-1.0, k), at(-1.0, 0.0)),
        quarter(at(-1.0, -k), at(-k, -1.0), at(0.0, -1.0)),
        quarter(at(k, -1.0), at(1.0, -k), at(1.0, 0.0)),
        Step::Close,
    ]
}

/// What a path's `d` says.
fn data(element: Xml) -> Result<Vec<Step>, Fault> {
    let text = element.attribute("d").unwrap_or_default();
    let fault = |_| wrong(element, "d", text);
    let mut path: Vec<Step> = Vec::new();
    let mut last = [0.0; 2];
    for segment in SimplifyingPathParser::from(text) {
        let step = match segment.map_err(fault)? {
            SimplePathSegment::MoveTo { x, y } => Step::Move([x, y]),
            SimplePathSegment::LineTo { x, y } => Step::Line([x, y]),
            SimplePathSegment::CurveTo {
                x1,
                y1,
                x2,
                y2,
                x,
                y,
            } => Step::Curve([[x1, y1], [x2, y2], [x, y]]),
            // A curve with one handle, as the cubic through the same points.
            SimplePathSegment::Quadratic { x1, y1, x, y } => {
                let third = |end: f64, handle: f64| end + (handle - end) * 2.0 / 3.0;
                Step::Curve([
                    [third(last[0], x1), third(last[1], y1)],
                    [third(x, x1), third(y, y1)],
                    [x, y],
                ])
            }
            SimplePathSegment::ClosePath => Step::Close,
        };
        match step {
            Step::Move(end) | Step::Line(end) | Step::Curve([_, _, end]) => last = end,
            Step::Close => {}
        }
        path.push(step);
    }
    Ok(path)
}
