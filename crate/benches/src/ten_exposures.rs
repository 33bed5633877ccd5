//! Ten exposures that want to be shot in different orders for different
//! reasons: three seats, things moved and taken up, food that does not keep.
use planner::layout::{Layout, open};

/// Harbour supper's size with ten exposures of hands, each at another food.
pub fn ten_exposures() -> Layout {
    let items = (1..=10).map(|n| {
        let hold = 20 + 7 * (n * 5 % 11);
        let stands_in = if n % 3 == 0 {
            r#","stand_in":"dough""#
        } else {
            ""
        };
        format!(
            r#"{{"id":{n},"prop":"loaf","at":[{},400],"size":{{"shape":"disc","diameter":90}},"hold_minutes":{hold}{stands_in}}}"#,
            n * 140
        )
    });
    let exposures = (1..=10).map(|n| {
        let states = match n % 4 {
            0 => format!(r#"{{"item":{},"state":"absent"}}"#, (n + 3) % 10 + 1),
            1 => format!(r#"{{"item":{},"state":"moved","at":[700,600]}}"#, n % 3 + 1),
            _ => String::new(),
        };
        let kind = if n == 7 { "clean" } else { "hands" };
        format!(
            r#"{{"id":{},"kind":"{kind}","minutes":{},"states":[{states}]}}"#,
            20 + n,
            3 + n * 3 % 8
        )
    });
    let hands = (1..=10).filter(|n| *n != 7).map(|n| {
        let (at, seat) = ((n * 7 % 10 + 1) * 140, 40 + n % 3);
        format!(
            r#"{{"id":{},"person":50,"seat":{seat},"exposure":{},"entry":[0,0],"target":[{at},400]}}"#,
            60 + n,
            20 + n
        )
    });
    let list = |all: &mut dyn Iterator<Item = String>| all.collect::<Vec<_>>().join(",");
    let text = format!(
        r#"{{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":90,
        "table":{{"width":1600,"depth":900}},"frame":{{"at":[800,450],"width":1300}},
        "items":[{}],"seats":[{{"id":40,"at":[0,400]}},{{"id":41,"at":[800,900]}},{{"id":42,"at":[1600,400]}}],
        "people":[{{"id":50}}],"exposures":[{}],"hands":[{}]}}"#,
        list(&mut { items }),
        list(&mut { exposures }),
        list(&mut { hands })
    );
    open(&text).expect("a sound layout")
}
