//! Reports made in slices.
use std::cell::Cell;

use super::four;
use crate::layout::{Id, Layout, Point, Srgb};
use crate::readings::samples::{laid, sliced};
use crate::readings::{Report, Settling, Study, live, report};

fn whole(layout: &Layout, crop: Id) -> Report {
    report(&Study::new(layout).viewing(crop), true)
}

/// That it is the same to the last bit however much time there is, and so is
/// what follows from what it leaves behind. In how many slices at most.
fn is_the_same(layout: &Layout, crop: Id) -> usize {
    let calls = Cell::new(0_u32);
    let rarely = || {
        calls.set(calls.get() + 1);
        !calls.get().is_multiple_of(3)
    };
    let mut moved = layout.clone();
    moved.items[0].at.x += 7;
    let ways: [&dyn Fn() -> bool; 3] = [&|| true, &|| false, &rarely];
    let mut counts = Vec::new();
    for go_on in ways {
        let (report, kept, steps) = sliced(Settling::begin(layout, None, crop), go_on);
        assert!(report == whole(layout, crop), "in {steps} slices");
        counts.push(steps);
        let over = Study::after(&moved, &kept).viewing(crop);
        let anew = Study::new(&moved).viewing(crop);
        assert_eq!(live(&over), live(&anew), "a drag");
        let next = Settling::begin(&moved, Some(&kept), crop);
        let next = sliced(next, go_on).0;
        assert!(next == whole(&moved, crop), "and the next report");
    }
    let [once, most, some] = counts[..] else {
        unreachable!("three ways of going on");
    };
    assert_eq!(once, 1, "all the time there is");
    assert!(
        most > some && some > once,
        "{most} slices, {some} and {once}"
    );
    most
}

#[test]
fn a_report_in_slices_is_the_same_to_the_last_bit() {
    for (n, ground) in [0x2c_2c2e, 0xe9_e7e2, 0x8a_6a4a].into_iter().enumerate() {
        let mut layout = four();
        layout.table.surface.colour = Srgb::hex(ground);
        layout.light.height_above_table = 300 + 400 * n as i32;
        layout.items[1].at = Point::new(560 + 60 * n as i32, 300);
        for item in &mut layout.items {
            item.height = 60;
        }
        layout.crops = laid(
            r#""crops":[{"id":9,"name":"post","ratio":[1,1],"at":[550,450],"width":600,
            "copy":{"area":[200,200,150,80],"wording":"Supper"}}]"#,
        )
        .crops;
        layout.crops[0].must_show = vec![layout.items[0].id];
        is_the_same(&layout, Id(if n == 0 { 0 } else { 9 }));
    }
}

#[test]
fn what_takes_long_of_the_supper_is_made_bit_by_bit() {
    let file = include_str!("../../../../../static/starters/harbour-supper.spread.json");
    let layout = crate::layout::open(file).expect("the supper opens");
    let most = is_the_same(&layout, layout.crops[0].id);
    let outlines = Study::new(&layout).walks().len();
    // Light at each outline of the whole and of the crop in view, then searches.
    let searches = whole(&layout, Id(0)).findings;
    let searches = searches.iter().filter(|f| f.remedy.is_some()).count();
    assert!(
        most > outlines + searches,
        "{most} slices for {outlines} outlines and {searches} remedies"
    );
}
