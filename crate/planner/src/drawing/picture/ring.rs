//! The ring round the table with the hours of the picture, and the light as it
//! stands, to scale from above: on the ring where it stands farther out, with
//! its distance.
use glam::DVec2;
use svg::node::element::{Group, Text};

use super::edge::{looped, row};
use super::frame::on_paper;
use super::lettering::centred;
use super::view::{Keyed, View};
use crate::commands::away_at;
use crate::drawing::Pen;
use crate::drawing::path::{PathData, short, tenth};
use crate::layout::{Layout, LightShape, Turn};
use crate::light::Source;
use crate::scene::Ring;
use crate::words::{length, whole};

/// Height of its lettering, in weights of the pen.
const LETTERS: f64 = 12.0;
/// How deep a window is drawn, in weights of the pen.
const DEEP: f64 = 7.0;
/// What lights are filled with.
const WARM: &str = "#f3d27a";

/// Ring and light as groups of their own, so that the light can be dragged.
pub(super) fn ring(layout: &Layout, view: &View, pen: &Pen) -> Vec<Keyed> {
    let ring = Ring::of(layout);
    let spot = ring.light(layout, layout.light.clock);
    let keyed = |key: &str, group: Group| Keyed {
        key: key.into(),
        group,
        at: None,
    };
    let mut all = vec![
        keyed("ring", hours(layout, &ring, view, pen.weight)),
        keyed("light", light(layout, spot.at, view, pen)),
    ];
    if spot.farther {
        let away = f64::from(layout.light.distance);
        let words = length(away, layout.head.units);
        let told = on_line(&words, away_at(&ring, spot), view, pen.weight);
        all.push(keyed("light-away", Group::new().add(told)));
    }
    all
}

/// Words on paper of their own, so that no line runs through them.
pub(super) fn on_line(words: &str, at: DVec2, view: &View, unit: f64) -> Text {
    centred(
        words,
        at + DVec2::Y * (unit * LETTERS * 0.34),
        unit * LETTERS,
    )
    .set("fill", view.ink)
    .set("stroke", view.paper)
    .set("stroke-width", tenth(unit * 7.0))
    .set("stroke-linejoin", "round")
    .set("paint-order", "stroke")
}

/// The line, a tick every hour and a figure every third, of the picture.
fn hours(layout: &Layout, ring: &Ring, view: &View, unit: f64) -> Group {
    let mut data = PathData::default();
    data.smooth(ring.outline().into_iter());
    let mut group = Group::new();
    let at = |hour: i32| {
        let way = layout.frame.turn.plus(hour * 60).direction();
        (ring.towards(way), way * unit)
    };
    for hour in 0..12 {
        let (on, out) = at(hour);
        row(&mut data, &[on - out * 4.0, on + out * 4.0]);
    }
    group = group.add(on_paper(data, view, unit * 0.8));
    for hour in [12, 3, 6, 9] {
        let words = whole(f64::from(hour));
        group = group.add(on_line(&words, at(hour).0, view, unit));
    }
    group
}

/// The light with its middle at `at`, facing the table's middle.
fn light(layout: &Layout, at: DVec2, view: &View, pen: &Pen) -> Group {
    let source = Source::of(layout);
    let unit = pen.weight;
    let own = source.centre.truncate();
    let inward = pen.fall;
    let across = source.across.truncate();
    let mut fine = PathData::default();
    let outline: Vec<DVec2> = match source.shape {
        LightShape::Window => {
            let deep = inward * (unit * DEEP * 0.5);
            row(&mut fine, &[at - across, at + across]);
            vec![
                at - across - deep,
                at + across - deep,
                at + across + deep,
                at - across + deep,
            ]
        }
        LightShape::Disc => (0..48)
            .map(|n| {
                let way = Turn::from_half_degrees(n * 15).direction();
                let p = source.point(way.x, way.y).truncate();
                // A disc that is seen on its edge keeps a breadth.
                p - own + at + inward * (way.y * unit * DEEP * 0.5)
            })
            .collect(),
    };
    for n in [-0.5, 0.0, 0.5] {
        let from = at + across * n + inward * (unit * (DEEP + 3.0));
        let end = from + inward * (unit * 13.0);
        row(&mut fine, &[from, end]);
        let back = end - inward * (unit * 4.0);
        let wing = inward.perp() * (unit * 2.6);
        row(&mut fine, &[back - wing, end, back + wing]);
    }
    let body = on_paper(looped(&outline), view, unit * 1.7)
        .set("fill", WARM)
        .set("stroke-linejoin", "round");
    Group::new()
        .add(body.set("fill-opacity", short(0.8)))
        .add(on_paper(fine, view, unit))
}

#[cfg(test)]
mod tests {
    use super::super::groups;
    use super::super::tests::laid;
    use super::*;

    #[test]
    fn the_ring_bears_the_hours_of_the_picture_and_a_far_light_its_distance() {
        let mut layout = laid();
        let lit = |layout: &Layout| {
            let view = View {
                lit: true,
                ..View::default()
            };
            let all = groups(layout, &view);
            let drawn = |key: &str| {
                let found = all.iter().find(|keyed| keyed.key == key);
                found.map(|keyed| keyed.group.to_string())
            };
            (drawn("ring"), drawn("light-away"))
        };
        layout.light.distance = 1_800;
        let (ring, away) = lit(&layout);
        assert!(ring.is_some() && away.is_some_and(|text| text.contains("180 cm")));
        layout.light.distance = 300;
        assert_eq!(lit(&layout).1, None, "within the ring");
        // The figure 12 stands over the top of the picture, however it is turned.
        for (turn, way) in [(0.0, DVec2::NEG_Y), (90.0, DVec2::X), (180.0, DVec2::Y)] {
            layout.frame.turn = Turn::from_degrees(turn);
            let text = lit(&layout).0.expect("shown");
            let twelve = text
                .split("<text")
                .find(|t| t.contains(">\n12"))
                .expect("12");
            let number = |name: &str| -> f64 {
                let value = twelve.split(name).nth(1).and_then(|v| v.split('"').next());
                value.and_then(|v| v.parse().ok()).expect("a number")
            };
            let at = DVec2::new(number(" x=\""), number(" y=\""));
            let middle = layout.table.centre().vec();
            assert!((at - middle).normalize().dot(way) > 0.99, "{turn}°: {at}");
        }
    }
}
