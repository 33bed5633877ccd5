//! Rows of a list as they come from spreadsheets.
use super::*;

fn rows(lines: &[&str]) -> (Vec<String>, Vec<(u32, Vec<String>)>) {
    let cells = |line: &str| line.split('|').map(str::to_owned).collect::<Vec<_>>();
    let all = lines.iter().zip(1..).map(|(line, n)| (n, cells(line)));
    let mut all: Vec<_> = all.collect();
    (all.remove(0).1, all)
}

fn taken(lines: &[&str]) -> Taken {
    let (head, rows) = rows(lines);
    read(&head, &rows, Units::Cm, &[]).expect("it has columns")
}

#[test]
fn what_is_written_is_read_back_in_both_units() {
    let mut shelf: Vec<ShelfThing> = ["dinner-plate", "napkin", "wooden-board"]
        .iter()
        .zip(1..)
        .map(|(prop, id)| ShelfThing::usual(LayoutId(id), prop).expect("known"))
        .collect();
    shelf[0].count = 6;
    shelf[0].inside = Some(Srgb::hex(0x11_2233));
    shelf[1].place = "=drawer, \"left\"".into();
    shelf[2].finish = Finish::Satin;
    for units in [Units::Cm, Units::In] {
        let mut all = records(&shelf, units).into_iter();
        let head = all.next().expect("a heading");
        let rows: Vec<(u32, Vec<String>)> = (2..).zip(all).collect();
        // Read under the other units: the heading tells them.
        let other = if units == Units::Cm {
            Units::In
        } else {
            Units::Cm
        };
        let back = read(&head, &rows, other, &shelf).expect("columns");
        let things: Vec<ShelfThing> = back.good.iter().map(|g| g.thing.clone()).collect();
        assert_eq!(things, shelf, "{units:?}");
        assert!(back.good.iter().all(|g| g.there) && back.bad.is_empty());
        let fresh = read(&head, &rows, other, &[]).expect("columns");
        assert!(fresh.good.iter().all(|g| !g.there), "on another shelf");
        assert_eq!(fresh.good.len(), 3);
    }
}

#[test]
fn columns_come_in_any_order_and_units() {
    let read = taken(&[
        "Where|Pieces|Note|diameter (in)|Thing|colour",
        "rack B|6|chipped|10,5|dinner plate|light grey",
        "|||270 mm|Dinner Plate|#102030",
    ]);
    assert_eq!(read.passed_over, ["Note"]);
    assert!(read.bad.is_empty(), "{:?}", read.bad);
    let [first, second] = [0, 1].map(|n| &read.good[n].thing);
    assert_eq!(first.size, [267, 267], "10.5 in");
    assert_eq!((first.count, first.place.as_str()), (6, "rack B"));
    assert_eq!(second.size, [270, 270], "a cell tells its own unit");
    assert_eq!(second.colour, Srgb::hex(0x10_2030));
}

#[test]
fn each_odd_row_is_told_with_its_line_and_the_rest_is_read() {
    let read = taken(&[
        "name|what|width|height|colour|finish|count",
        "good|dinner-plate|27|2|white|matt|4",
        "|||||||",
        "saucer of the moon||||||",
        "x|zebra|||||",
        "x|napkin|wide||||",
        "x|napkin|99999||||",
        "x|napkin|||octarine||",
        "x|dinner-plate||||furry|",
        "x|napkin|||||0",
        "x|napkin|||||2.5",
        "x|napkin|||||1001",
        "x|dinner-plate||-3|||",
        "last|napkin|||cream||1000",
    ]);
    let good: Vec<u32> = read.good.iter().map(|g| g.line).collect();
    assert_eq!(good, [2, 14]);
    let lines: Vec<u32> = read.bad.iter().map(|b| b.line).collect();
    assert_eq!(lines, (3..14).collect::<Vec<u32>>());
    let why: Vec<&str> = read.bad.iter().map(|b| b.why.as_str()).collect();
    for (n, part) in [
        (0, "neither"),
        (1, "saucer of the moon"),
        (2, "zebra"),
        (3, "“wide” is no length"),
        (4, "within 0.1 and 1000 cm"),
        (5, "octarine"),
        (6, "furry"),
        (7, "“0”"),
        (8, "“2.5”"),
        (9, "“1001”"),
        (10, "“-3” is no length"),
    ] {
        assert!(why[n].contains(part), "{n}: {}", why[n]);
    }
    let (head, rows) = rows(&["colour|count", "red|3"]);
    assert!(
        super::read(&head, &rows, Units::Cm, &[]).is_err(),
        "of nothing"
    );
}

#[test]
fn a_thing_is_changed_once_a_file() {
    let own = ShelfThing::usual(LayoutId(7), "napkin").expect("known");
    let id = own.id.to_string();
    let (one, two) = (format!("{id}|3"), format!("{id}|5"));
    let (head, rows) = rows(&["id|count", &one, &two]);
    assert!(
        read(&head, &rows, Units::Cm, std::slice::from_ref(&own)).is_err(),
        "no name"
    );
    let (head, rows) = {
        let (one, two) = (format!("{id}|cloth|3"), format!("{id}|rag|5"));
        self::rows(&["id|name|count", &one, &two])
    };
    let read = read(&head, &rows, Units::Cm, &[own]).expect("columns");
    assert_eq!(read.good.len(), 1, "the first");
    assert_eq!((read.good[0].thing.count, read.good[0].there), (3, true));
    assert!(read.bad[0].why.contains("line 2"), "{}", read.bad[0].why);
}
