use super::four;
use crate::layout::{Face, Id, Point, Role, Srgb};
use crate::readings::samples::{after, laid, read, said};
use crate::readings::{Study, live, report, scores, shifts};

#[test]
fn a_drag_tells_what_it_makes_better_or_worse() {
    let mut layout = four();
    layout.items[1].at = Point::new(558, 300);
    let near = live(&Study::new(&layout));
    assert!(
        near.findings.iter().any(|f| f.key == "spacing:1:2"),
        "8 mm apart"
    );
    layout.items[1].at = Point::new(554, 300);
    let nearer = live(&Study::new(&layout));
    let worse = shifts(&near, &nearer);
    let shift = worse.findings.iter().find(|s| s.key == "spacing:1:2");
    assert!(shift.is_some_and(|s| !s.better), "{worse:?}");
    layout.items[1].at = Point::new(850, 320);
    let apart = live(&Study::new(&layout));
    let better = shifts(&nearer, &apart);
    let shift = better.findings.iter().find(|s| s.key == "spacing:1:2");
    assert!(
        shift.is_some_and(|s| s.better && s.after.is_none()),
        "{better:?}"
    );
    assert_ne!(better.scores, [0; 3], "a score moves too");
    let still = shifts(&apart, &apart);
    assert!(
        still.findings.is_empty() && still.scores == [0; 3],
        "nothing moved"
    );
}

#[test]
fn a_live_step_is_the_report_without_words() {
    let layout = four();
    let live = live(&Study::new(&layout));
    let mut report = report(&Study::new(&layout), false);
    // What is silent until asked and takes long to find is left out.
    let asked = ["space", "direction", "colour"];
    let corners = |f: &crate::readings::Finding| f.key.starts_with("triangle:");
    let unasked =
        |f: &crate::readings::Finding| !f.taste || !(asked.contains(&f.reading) || corners(f));
    report.findings.retain(unasked);
    let notes = ["fit:lenses", "lean:most"];
    report.findings.retain(|f| !notes.contains(&f.key.as_str()));
    assert_eq!(
        live.findings.len(),
        report.findings.len(),
        "the same findings"
    );
    for (a, b) in live.findings.iter().zip(&report.findings) {
        assert_eq!(
            (&a.key, a.state, a.figure),
            (&b.key, b.state, b.figure),
            "in order"
        );
    }
    assert_eq!(live.scores, report.scores, "and scores");
}

#[test]
fn a_crop_has_scores_of_its_own_and_its_type_weighs() {
    let mut layout = four();
    layout.crops = laid(
        r#""crops":[{"id":9,"name":"post","ratio":[1,1],"at":[450,450],"width":600,
        "copy":{"area":[200,200,150,80],"wording":"Supper"}}]"#,
    )
    .crops;
    let score = |layout: &crate::layout::Layout| {
        scores(&Study::new(layout).viewing(Id(9))).and_then(|s| s.balance)
    };
    let with = score(&layout).expect("dishes in the crop");
    layout.crops[0].copy = None;
    let without = score(&layout).expect("dishes in the crop");
    assert_ne!(with, without, "the headline pulls");
    let whole = scores(&Study::new(&layout)).and_then(|s| s.balance);
    assert_ne!(Some(without), whole, "the crop is another picture");
    let read = report(&Study::new(&layout).viewing(Id(9)), false);
    let balance = read.findings.iter().find(|f| f.key == "balance");
    assert_eq!(
        balance.map(|f| f.figure),
        Some(without),
        "what stands behind a score is of the same picture"
    );
    assert_eq!(read.crop, Some(Id(9)), "and the report says of which");
    let unknown = report(&Study::new(&layout).viewing(Id(8)), false);
    assert_eq!(
        unknown,
        report(&Study::new(&layout), false),
        "no such crop, the whole frame"
    );
}

/// Findings after any sequence of edits equal, bit for bit, those of the same
/// layout opened fresh.
#[test]
fn what_is_taken_over_equals_what_is_made_anew() {
    let mut layout = four();
    layout.linens =
        laid(r#""linens":[{"id":60,"name":"runner","at":[600,450],"size":[900,300]}]"#).linens;
    layout.crops =
        laid(r#""crops":[{"id":9,"name":"post","ratio":[4,5],"at":[600,450],"width":500}]"#).crops;
    // Pale on pale, so that the light beside every edge is asked for.
    layout.table.surface.colour = Srgb::hex(0xe9_e7e2);
    for item in &mut layout.items {
        item.parts.rim = Some(crate::layout::Part::plain(Srgb::hex(0xe4_e2dc)));
    }
    let mut kept = Study::new(&layout).keep();
    let mut state = 7_u32;
    let mut roll = |sides: u32| {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        (state >> 16) % sides
    };
    for step in 0..120 {
        let n = roll(layout.items.len() as u32) as usize;
        match roll(12) {
            0 => layout.items.swap(n, 0),
            1 if layout.items.len() < 12 => {
                let mut more = layout.items[n].clone();
                more.id = Id(100 + step);
                more.role = Role::Filler;
                layout.items.push(more);
            }
            2 if layout.items.len() > 4 => drop(layout.items.pop()),
            3 => layout.frame.at.x += roll(9) as i32 - 4,
            4 => layout.floor.colour = Srgb::hex(roll(0xff_ffff)),
            5 => layout.crops[0].at.x += roll(9) as i32 - 4,
            6 => layout.linens[0].at.y = 300 + roll(300) as i32,
            7 => layout.items[n].height = roll(220) as i32,
            8 => layout.light.distance = 900 + roll(1500) as i32,
            9 => layout.items[n].face = [Face::Crust, Face::Cut][roll(2) as usize],
            _ => {
                layout.items[n].at = Point::new(200 + roll(800) as i32, 200 + roll(500) as i32);
            }
        }
        // The crop comes into view and goes out of it.
        let view = Id(if step % 5 < 3 { 9 } else { 0 });
        let anew = Study::new(&layout).viewing(view);
        let over = Study::after(&layout, &kept).viewing(view);
        assert_eq!(over.walks(), anew.walks(), "walks at step {step}");
        for n in 0..anew.scene().pieces.len() {
            assert_eq!(
                over.scene().seen(n),
                anew.scene().seen(n),
                "seen at step {step}"
            );
        }
        assert_eq!(live(&over), live(&anew), "live at step {step}");
        assert_eq!(
            report(&over, false),
            report(&anew, false),
            "report at step {step}"
        );
        kept = over.keep();
    }
}

#[test]
fn remedies_lead_to_what_they_say_over_many_tables() {
    let mut tried = 0;
    for x in (300..900).step_by(75) {
        let mut layout = four();
        layout.items[0].at.x = x;
        layout.table.surface.colour = Srgb::hex(0x2c_2c2e);
        layout.crops =
            laid(r#""crops":[{"id":9,"name":"post","ratio":[4,5],"at":[700,450],"width":400}]"#)
                .crops;
        layout.crops[0].must_show = vec![layout.items[0].id];
        for f in read(&layout).iter().filter(|f| f.remedy.is_some()) {
            let then = said(&after(&layout, f), &f.key);
            let promised = f.remedy.as_ref().map(|r| r.after).unwrap_or_default();
            let kept = match &then {
                Some(t) if t.is_pressing() => (t.figure - promised).abs() < 1e-9,
                // Cured: what is left, if anything, is under what is said.
                _ => promised < f.figure || f.rule.falls,
            };
            assert!(kept, "{}: promised {promised}, got {then:?}", f.sentence);
            tried += 1;
        }
    }
    assert!(tried > 10, "enough were tried: {tried}");
}
