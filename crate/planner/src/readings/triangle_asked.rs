//! Triangles that are looked for only when asked: of fingertips, and of an
//! accent that comes three times.
//!
//! Score S4, as of the three heaviest dishes; of more than three places the
//! three that make the best. Craft convention, silent until asked.
use glam::DVec2;

use super::colour::accents_of;
use super::finding::{Finding, Mark, State};
use super::rules::TRIANGLE_SCORE;
use super::space::whole;
use super::study::Study;
use crate::layout::{Id, Role};
use crate::measures::triangle_score;
use crate::scene::{arm, root};
use crate::words::{Arg, fixed, listed, say};

/// Of what a triangle is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Corners {
    /// The fingertips of all hands.
    Fingertips,
    /// Accents of one sort.
    Accents,
}

impl Corners {
    /// The name it is asked for by.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Fingertips => "fingertips",
            Self::Accents => "accents",
        }
    }
}

/// The triangle of these corners; `None` where there are not three.
#[must_use]
pub fn asked_triangle(study: &Study<'_>, of: Corners) -> Option<Finding> {
    let picture = study.picture();
    let mut places = match of {
        Corners::Fingertips => fingertips(study),
        Corners::Accents => accents(study),
    };
    places.retain(|p| whole(&picture).holds(p.1));
    let (score, three) = best(picture.size, &places)?;
    let flat = score < TRIANGLE_SCORE.edges[0];
    let state = if flat { State::LookAgain } else { State::Holds };
    let about: Vec<Id> = three.iter().map(|p| p.0).collect();
    let mut key = String::from("triangle:");
    key.push_str(of.name());
    let mut f = Finding::by(&TRIANGLE_SCORE, key, (state, 3), score, about);
    f.marks = vec![Mark::Triangle {
        corners: three.iter().map(|p| picture.on_table(p.1)).collect(),
    }];
    f.sentence = study.sentence(|| {
        let names: Vec<String> = three.iter().map(|p| study.name(p.0)).collect();
        let id = match (of, flat) {
            (Corners::Fingertips, false) => "triangle-tips",
            (Corners::Fingertips, true) => "triangle-tips-flat",
            (Corners::Accents, false) => "triangle-accents",
            (Corners::Accents, true) => "triangle-accents-flat",
        };
        say(id, &[("things", Arg::Text(listed(&names)))])
    });
    f.working = study.tell(|| {
        let score = ("score", Arg::Text(fixed(score, 0)));
        vec![say("working-triangle-asked", &[score])]
    });
    Some(f)
}

fn fingertips(study: &Study<'_>) -> Vec<(Id, DVec2)> {
    let layout = study.layout();
    let mut hands: Vec<_> = layout.hands.iter().collect();
    crate::order::sort(&mut hands, |a, b| a.id.cmp(&b.id));
    let tip = |id, tip: DVec2| (id, study.picture().of_table(tip));
    hands
        .iter()
        .map(|h| tip(h.id, arm(layout, h).tip))
        .collect()
}

/// The accents of the sort there are most of.
fn accents(study: &Study<'_>) -> Vec<(Id, DVec2)> {
    let layout = study.layout();
    let coloured = accents_of(study);
    let accent = |id: Id, role: Role| role == Role::Accent || coloured.contains(&id);
    let mut all: Vec<_> = layout
        .items
        .iter()
        .filter(|i| accent(i.id, i.role))
        .collect();
    crate::order::sort(&mut all, |a, b| a.id.cmp(&b.id));
    // A thing and what lies on it are one accent.
    let roots: Vec<Id> = all.iter().map(|i| root(layout, i.id)).collect();
    let mut sorts: Vec<(&str, Vec<(Id, DVec2)>)> = Vec::new();
    for (n, item) in all.iter().enumerate() {
        if roots[..n].contains(&roots[n]) {
            continue;
        }
        let place = (item.id, study.picture().of_table(item.at.vec()));
        match sorts.iter_mut().find(|s| s.0 == item.prop) {
            Some(sort) => sort.1.push(place),
            None => sorts.push((&item.prop, vec![place])),
        }
    }
    let mut most: Vec<(Id, DVec2)> = Vec::new();
    for (_, places) in sorts {
        if places.len() > most.len() {
            most = places;
        }
    }
    most
}

/// The three places that make the best triangle, with its score.
fn best(size: DVec2, places: &[(Id, DVec2)]) -> Option<(f64, [(Id, DVec2); 3])> {
    let mut best: Option<(f64, [(Id, DVec2); 3])> = None;
    for (i, a) in places.iter().enumerate() {
        for (j, b) in places.iter().enumerate().skip(i + 1) {
            for c in &places[j + 1..] {
                let score = triangle_score(size, [a.1, b.1, c.1]).unwrap_or(0.0);
                if best.is_none_or(|b| score > b.0) {
                    best = Some((score, [*a, *b, *c]));
                }
            }
        }
    }
    best
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::Layout;
    use crate::readings::samples::{disc, laid};

    fn three(y: i32) -> Layout {
        let dishes = [
            disc(1, 350, 300, 100, "accent"),
            disc(2, 850, y, 100, "accent"),
            disc(3, 600, 650, 100, "accent"),
            disc(4, 500, 450, 200, "hero"),
        ];
        laid(&format!(r#""items":[{}]"#, dishes.join(",")))
    }

    #[test]
    fn accents_that_come_three_times_make_a_triangle() {
        let layout = three(320);
        let f = asked_triangle(&Study::new(&layout), Corners::Accents).expect("three");
        assert_eq!(f.about, [Id(1), Id(2), Id(3)], "the accents");
        assert_eq!((f.state, f.taste), (State::Holds, true), "silent");
        let mut two = three(320);
        two.items[2].prop = "loaf".into();
        let none = asked_triangle(&Study::new(&two), Corners::Accents);
        assert!(none.is_none(), "two of a sort are none");
    }

    #[test]
    fn in_a_line_they_are_said_to_lie_flat() {
        let mut layout = three(300);
        layout.items[2].at.y = 300;
        let f = asked_triangle(&Study::new(&layout), Corners::Accents).expect("three");
        assert_eq!((f.state, f.figure), (State::LookAgain, 0.0), "a line");
    }

    #[test]
    fn fingertips_of_three_hands_make_one_and_of_two_none() {
        let hands = |count: u16| {
            let hand = |n: u16| {
                let (id, x) = (20 + n, 300 + 200 * n);
                let y = if n == 1 { 600 } else { 300 };
                format!(
                    r#"{{"id":{id},"person":10,"side":"right","action":"reach","entry":[{x},800],
                    "target":[{x},{y}],"height":90,"palm":"down","exposure":11}}"#
                )
            };
            let all: Vec<String> = (0..count).map(hand).collect();
            laid(&format!(
                r##""people":[{{"id":10,"skin":"#c08a64",
                "sleeve":{{"length":"long","colour":"#304050"}}}}],
                "exposures":[{{"id":11,"kind":"hands"}}],"hands":[{}]"##,
                all.join(",")
            ))
        };
        let found = |count| {
            let layout = hands(count);
            asked_triangle(&Study::new(&layout), Corners::Fingertips)
        };
        assert!(found(2).is_none(), "two hands");
        let f = found(3).expect("three hands");
        assert!(f.figure > 29.0, "a triangle: {}", f.figure);
    }
}
