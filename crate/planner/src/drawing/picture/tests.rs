use glam::DVec2;
use svg::parser::Event;

use super::*;
use crate::layout::{
    Bag, CopyArea, CopySpace, Counterweight, Hung, Id, LayoutId, Point, RigKind, Turn,
};
use crate::readings::Mark;

const LAID: &str = r##"{"format":"overspread-layout","version":0,"id":"0000000000000001",
    "title":"Oil & salt","next_id":40,"next_number":9,"revision":{"number":3,"date":"2026-05-01"},
    "table":{"width":1600,"depth":950,"surface":{"prop":"charcoal-planks","colour":"#2b2a29"}},
    "frame":{"at":[800,475],"width":1200},
    "linens":[{"id":1,"kind":"runner","at":[400,475],"size":[400,900],"colour":"#d8c8a8"}],
    "items":[
        {"id":7,"number":2,"name":"soup","prop":"soup","at":[700,400],"on":6,
         "size":{"shape":"disc","diameter":150,"rim":0}},
        {"id":6,"number":2,"name":"bowl","prop":"soup-bowl","role":"hero","at":[700,400],
         "size":{"shape":"disc","diameter":190,"rim":6},"height":60},
        {"id":8,"number":1,"name":"a < b","prop":"loaf","at":[1000,500],
         "size":{"shape":"oval","width":240,"depth":120},"height":90}],
    "people":[{"id":20}],"exposures":[{"id":21},{"id":22}],
    "hands":[{"id":23,"person":20,"exposure":21,"entry":[800,900],"target":[700,420]},
             {"id":24,"person":20,"exposure":22,"entry":[900,900],"target":[1000,520]}],
    "crops":[{"id":30,"name":"post","ratio":[4,5],"at":[800,475],"width":600},
             {"id":31,"ratio":[1,1],"at":[800,475],"width":500,"gutter":20}]}"##;

pub(super) fn laid() -> Layout {
    crate::layout::open(LAID).expect("a sound layout")
}

pub(super) fn keys(layout: &Layout, view: &View) -> Vec<String> {
    let keyed = groups(layout, view);
    keyed.into_iter().map(|keyed| keyed.key).collect()
}

#[test]
fn groups_lie_from_the_surface_to_the_tags() {
    let view = View {
        crops: Trims::All,
        ..View::default()
    };
    let expected = [
        "surface", "linen-1", "shadow-6", "item-6", "item-7", "shadow-8", "item-8", "hand-23",
        "hand-24", "frame", "marks", "crops", "tags",
    ];
    assert_eq!(
        keys(&laid(), &view),
        expected,
        "food after its dish whatever the file's order, shadows of what stands on the table"
    );
}

#[test]
fn an_exposure_shows_its_own_hands() {
    let hands = |shown| {
        let view = View {
            shown,
            ..View::default()
        };
        let mut keys = keys(&laid(), &view);
        keys.retain(|key| key.starts_with("hand-"));
        keys
    };
    assert_eq!(hands(Shown::All), ["hand-23", "hand-24"], "all");
    assert_eq!(hands(Shown::Exposure(Id(22))), ["hand-24"], "one");
    assert!(hands(Shown::Exposure(Id(99))).is_empty(), "not there");
    assert!(hands(Shown::None).is_empty(), "none");
}

#[test]
fn a_cut_shows_what_a_crop_covers_and_nothing_written_over_it() {
    let layout = laid();
    let view = View::default();
    let post = cut(&layout, Some(Id(30)), 200.0, &view).expect("there is one");
    assert_eq!(post.area, [500.0, 100.0, 600.0, 750.0], "4:5 of 60 cm");
    let written = |key: &str| matches!(key, "frame" | "marks" | "crops" | "tags");
    assert!(post.groups.iter().all(|k| !written(&k.key)), "bare");
    let whole = cut(&layout, None, 380.0, &view).expect("the frame");
    assert_eq!(whole.area, [200.0, 75.0, 1200.0, 800.0], "3:2 of 1.2 m");
    assert!(whole.groups.iter().any(|k| k.key == "tags"), "with tags");
    assert!(cut(&layout, Some(Id(7)), 200.0, &view).is_none(), "no crop");
}

/// Names of the elements in order; every one that is opened is closed.
fn elements(file: &str) -> Vec<String> {
    let mut open = Vec::new();
    let mut all = Vec::new();
    for event in svg::read(file).expect("readable") {
        match event {
            Event::Tag(name, kind, _) => {
                use svg::node::element::tag::Type;
                match kind {
                    Type::Start => open.push(name),
                    Type::End => assert_eq!(open.pop(), Some(name), "nested"),
                    Type::Empty => {}
                }
                all.push(name.to_string());
            }
            Event::Error(error) => panic!("{error}"),
            _ => {}
        }
    }
    assert!(open.is_empty(), "left open: {open:?}");
    all
}

#[test]
fn the_sheet_stands_alone_with_title_version_and_list() {
    let file = sheet(&laid(), Shown::All, optics::View::Above);
    let first = elements(&file).remove(0);
    assert_eq!(first, "svg", "a document");
    for words in [
        "Oil &amp; salt",
        "version 3 · 2026-05-01",
        "a &lt; b",
        "bowl",
        "\ntop\n",
        "\npost\n",
        "\ncrop\n",
        "\n1A\n",
        "\n2A\n",
    ] {
        assert!(file.contains(words), "{words} is on the sheet");
    }
    assert!(!file.contains("var("), "no paint of the page's");
    assert!(!file.contains(" style="), "presentation attributes only");
    let one = sheet(&laid(), Shown::Exposure(Id(22)), optics::View::Above);
    assert!(
        one.contains("\n2A\n") && !one.contains("\n1A\n"),
        "one exposure"
    );
}

#[test]
fn a_sheet_of_an_empty_table_is_a_drawing_too() {
    let file = sheet(&Layout::empty(LayoutId(1)), Shown::All, optics::View::Above);
    assert!(elements(&file).len() > 5, "table, frame and top");
    assert!(!file.contains("version"), "no version yet");
}

#[test]
fn a_crop_is_kept_as_a_file_in_its_own_shape() {
    let file = cut_file(&laid(), Some(Id(30)), 1_100.0, &View::default()).expect("there is one");
    assert!(file.contains("viewBox=\"500 100 600 750\""), "its area");
    assert!(file.contains("height=\"1375\""), "4:5 of 1100 px");
    elements(&file);
    assert!(
        cut_file(&laid(), Some(Id(1)), 1_100.0, &View::default()).is_none(),
        "no crop"
    );
}

#[test]
fn every_kind_of_mark_is_a_light_line_over_a_dark_one() {
    let (from, to) = (DVec2::new(10.0, 20.0), DVec2::new(110.0, 20.0));
    let line = vec![from, to];
    let label = String::new();
    let all = [
        Mark::LostEdge { line },
        Mark::Gap { from, to, label },
        Mark::Overrun {
            outline: vec![from, to, DVec2::ZERO],
            label: String::new(),
        },
        Mark::Arrow { from, to },
        Mark::Arrow { from, to: from },
        Mark::Triangle {
            corners: vec![from, to, DVec2::ZERO],
        },
        Mark::Ring {
            at: from,
            radius: 30.0,
        },
    ];
    let pen = Pen {
        weight: 1.0,
        fall: DVec2::Y,
        fine: false,
    };
    for mark in all {
        let group = super::marks::marks(std::slice::from_ref(&mark), &pen);
        let lines = group.to_string().matches("<path").count();
        assert_eq!(lines, 2, "dark under light: {mark:?}");
        let text = group.to_string();
        assert!(text.contains("d=\"M"), "with ink: {text}");
    }
}

#[test]
fn what_is_mirrored_is_a_pale_patch_hatched_and_cased() {
    let outline = vec![DVec2::ZERO, DVec2::X * 80.0, DVec2::Y * 80.0];
    let pen = Pen {
        weight: 1.0,
        fall: DVec2::Y,
        fine: false,
    };
    let text = super::marks::marks(&[Mark::Glare { outline }], &pen).to_string();
    let paths: Vec<&str> = text.split("<path").skip(1).collect();
    assert_eq!(paths.len(), 3, "patch, case, line: {text}");
    assert!(
        paths[0].contains("fill-opacity"),
        "the ground shows through"
    );
    assert!(paths[2].matches('M').count() > 5, "hatched: {text}");
}

#[test]
fn an_edge_lost_in_part_is_one_dark_line_with_light_dashes_on_it() {
    let run = |x: f64| Mark::LostEdge {
        line: vec![DVec2::new(x, 0.0), DVec2::new(x + 30.0, 0.0)],
    };
    let pen = Pen {
        weight: 4.0,
        fall: DVec2::Y,
        fine: false,
    };
    let drawn = |marks: &[Mark]| super::marks::marks(marks, &pen).to_string();
    let lines = |text: &str, n: usize| {
        let paths: Vec<&str> = text.split("<path").skip(1).collect();
        assert_eq!(paths.len(), 2, "one dark, one light: {text}");
        paths[n].matches('M').count()
    };
    let near = drawn(&[run(0.0), run(70.0), run(140.0)]);
    assert_eq!(
        (lines(&near, 0), lines(&near, 1)),
        (1, 3),
        "no crosses: {near}"
    );
    let far = drawn(&[run(0.0), run(400.0)]);
    assert_eq!(lines(&far, 0), 2, "two edges: {far}");
    let long = Mark::LostEdge {
        line: vec![DVec2::ZERO, DVec2::new(600.0, 0.0)],
    };
    assert!(lines(&drawn(&[long]), 1) > 15, "sewn along");
}

#[test]
fn no_name_of_a_crop_covers_another_or_a_tag() {
    let mut layout = laid();
    for (n, width) in [(40, 620), (41, 560), (42, 900)] {
        let mut crop = layout.crops[0].clone();
        (crop.id, crop.width) = (Id(n), width);
        layout.crops.push(crop);
    }
    for per_pixel in [1.5, 2.5, 4.0] {
        let view = View {
            per_pixel,
            ..View::default()
        };
        let pen = pen(&layout, &view);
        let hands: Vec<&Hand> = layout.hands.iter().collect();
        let tags = tags::taken(&layout, &hands, view.eye, per_pixel);
        let mut laid = crops::tapes(&crops::Under::plain(&layout, Trims::All, pen.weight), tags);
        while let Some((_, at, half)) = laid.pop() {
            for (name, other, size) in &laid {
                let gap = (at - *other).abs() - (half + *size);
                assert!(
                    gap.max_element() > 0.0,
                    "{name:?} is covered at {per_pixel}"
                );
            }
        }
    }
}

/// The laid table with a stand 900 mm below the lens, a bag and the
/// photographer.
fn stood() -> Layout {
    let mut layout = laid();
    layout.rig.at = Some(Point::new(800, 1375));
    layout.rig.photographer = Some(Point::new(100, 1200));
    layout.rig.bag = Some(Bag {
        mass: 6_800,
        hung: Hung::Hub,
    });
    layout.rig.counterweight = Some(Counterweight {
        mass: 2_500,
        behind: 100,
    });
    layout
}

#[test]
fn arm_and_stand_are_drawn_where_they_are_asked_for_and_never_through_the_lens() {
    let layout = stood();
    let has = |rig, eye| {
        let view = View {
            rig,
            eye,
            ..View::default()
        };
        let all = keys(&layout, &view);
        let each = ["arm", "mast-0", "photographer"];
        let some = each.map(|key| all.contains(&key.to_owned()));
        assert!(
            some.iter().all(|has| *has == some[0]),
            "all or none: {all:?}"
        );
        some[0]
    };
    assert!(has(true, optics::View::Above), "asked for");
    assert!(!has(false, optics::View::Above), "not asked for");
    assert!(
        !has(true, optics::View::of(&layout)),
        "the lens hangs from it"
    );
    let span = stand_span(&layout, false).expect("told");
    assert!(span.max.y > 1375.0 + 239.9, "to its rear feet: {span:?}");
    assert!(span.min.y < 480.0, "to the lens: {span:?}");
    assert!(stand_span(&laid(), true).is_none(), "nobody said where");
}

#[test]
fn the_side_sketch_is_to_scale_and_in_ink_alone() {
    let file = side_file(&stood()).expect("the lens shows the frame");
    for words in [
        "90 cm out",
        "6.8 kg",
        "2.5 kg",
        "ceiling 260 cm",
        "light",
        "centre of mass",
    ] {
        assert!(file.contains(words), "{words} is said: {file}");
    }
    let paints: Vec<&str> = file
        .split('"')
        .filter(|word| word.starts_with('#') || word.starts_with("var("))
        .collect();
    let ink = |paint: &&str| [view::INKED, view::PAPER].contains(paint);
    assert!(paints.len() > 4 && paints.iter().all(ink), "{paints:?}");
    // The arm runs from the lens to its rear end, 1016 mm, at one height.
    assert!(file.contains("h1016") || file.contains("1016 0"), "{file}");
}

#[test]
fn without_a_stand_the_side_shows_camera_table_and_ceiling() {
    let mut layout = laid();
    let bare = side_file(&layout).expect("the lens shows the frame");
    assert!(
        bare.contains("ceiling 260 cm") && !bare.contains("out\n"),
        "{bare}"
    );
    layout.rig.kind = RigKind::Ceiling;
    let hung = side_file(&layout).expect("likewise");
    assert_ne!(bare, hung, "the camera hangs from something");
}

#[test]
fn the_foot_of_the_sheet_says_what_to_take_care_of() {
    let file = sheet(&laid(), Shown::All, optics::View::Above);
    for caution in crate::readings::cautions(&laid()) {
        let line = caution.line.replace('&', "&amp;");
        assert_eq!(
            file.contains(&line),
            caution.is_short(170),
            "{}: only what is short",
            caution.id
        );
    }
}

/// The box drawn for type lies where the readings look for what covers it.
#[test]
fn copy_space_is_drawn_where_it_is_read() {
    let mut layout = laid();
    layout.crops[0].copy = Some(CopySpace {
        area: CopyArea {
            dx: 120,
            dy: -80,
            width: 200,
            depth: 60,
        },
        wording: "Supper".into(),
    });
    layout.frame.turn = Turn::from_degrees(90.0);
    let view = View {
        crops: Trims::All,
        ..View::default()
    };
    let all = groups(&layout, &view);
    let crops = all.iter().find(|keyed| keyed.key == "crops");
    let drawn = crops.expect("drawn").group.to_string();
    let line = drawn.lines().find(|l| l.contains("italic"));
    let line = line.expect("the words for it");
    let at = |name: &str| -> f64 {
        let from = line.find(&format!(" {name}=\"")).expect("placed") + name.len() + 3;
        let text = &line[from..];
        text[..text.find('"').expect("closed")].parse().expect("mm")
    };
    // A quarter turned to the right, its right is down and its top right.
    let (x, y) = (800.0 + 80.0, 475.0 + 120.0);
    assert!((at("x") - x).abs() < 0.2, "{line}");
    assert!((0.0..20.0).contains(&(at("y") - y)), "{line}");
}
