//! The plan back from the day on sale.
use super::*;
use crate::layout::open;

/// A board with things of these ids on it and these dates.
fn laid(props: &[&str], dates: &str) -> Layout {
    let items = props.iter().enumerate().map(|(n, prop)| {
        let (id, name) = (n + 1, prop.replace('-', " "));
        format!(
            r#"{{"id":{id},"name":"{name}","prop":"{prop}","at":[{id}00,300],"size":{{"shape":"disc","diameter":60}}}}"#
        )
    });
    let items: Vec<String> = items.collect();
    let text = format!(
        r#"{{"format":"overspread-layout","version":1,"id":"00000000000000d8","title":"Supper, late",
        "next_id":60,"table":{{"width":1200,"depth":900}},"frame":{{"at":[600,450],"width":1050}},
        "items":[{}],"dates":{{{dates}}}}}"#,
        items.join(",")
    );
    open(&text).unwrap_or_else(|problems| panic!("{problems:?}"))
}

fn plan(layout: &Layout) -> BackPlan {
    back_plan(layout, None).expect("a day is told")
}

fn days(plan: &BackPlan) -> Vec<String> {
    plan.steps.iter().map(|step| step.day.to_string()).collect()
}

/// Every warning of the steps, seen from a day.
fn warned(dates: &str, today: &str) -> Vec<String> {
    let plan = back_plan(&laid(&[], dates), Day::parse(today)).expect("a day is told");
    plan.steps
        .into_iter()
        .flat_map(|step| step.warnings)
        .collect()
}

#[test]
fn usual_figures_make_a_plan_of_print_and_of_pages() {
    let print = plan(&laid(&[], r#""on_sale":"2027-11-02""#));
    let is = [
        "2027-06-02",
        "2027-06-18",
        "2027-06-25",
        "2027-06-29",
        "2027-07-02",
        "2027-07-16",
        "2027-11-02",
    ];
    assert_eq!(
        days(&print),
        is,
        "four months, then a month and 14, 7, 3 days before"
    );
    let figures: Vec<i32> = print.steps.iter().map(|step| step.days).collect();
    assert_eq!(figures, [30, 14, 7, 3, 123, 14, 0]);
    assert_eq!(print.steps[4].spoken, "Friday, 2 July 2027");
    assert!(
        print.steps[4]
            .ground
            .starts_with("Usual: 123, which is four months")
    );
    let web = plan(&laid(&[], r#""on_sale":"2027-11-02","medium":"web""#));
    assert_eq!(
        (web.steps[4].days, days(&web)[4].as_str()),
        (28, "2027-10-05")
    );
    assert_eq!(
        web.steps[4].ground,
        "Usual: 28 (common practice, no source)."
    );
    assert!(
        print
            .steps
            .iter()
            .chain(&web.steps)
            .all(|s| s.told == s.key.is_empty())
    );
    let bare = laid(&["mussels"], r#""medium":"web""#);
    assert_eq!(
        (back_plan(&bare, None), entries(&bare).len()),
        (None, 0),
        "no day is told"
    );
}

#[test]
fn what_is_told_counts_and_moves_what_hangs_on_it() {
    let told = plan(&laid(
        &[],
        r#""on_sale":"2027-11-02","steps":{"shoot":150,"food":1,"deliver":0}"#,
    ));
    let is = [
        "2027-05-06",
        "2027-05-22",
        "2027-05-29",
        "2027-06-04",
        "2027-06-05",
        "2027-06-05",
        "2027-11-02",
    ];
    assert_eq!(days(&told), is);
    let which: Vec<bool> = told.steps.iter().map(|step| step.told).collect();
    assert_eq!(which, [false, false, false, true, true, true, true]);
    assert!(
        told.steps[4].ground.contains("123"),
        "the usual figure stays at hand"
    );
    let layout = laid(&[], r#""on_sale":"2027-11-02","steps":{"props":10}"#);
    assert_eq!(props_by(&layout).as_deref(), Some("22 June 2027"));
}

#[test]
fn a_plan_may_leave_the_years_of_days_on_sale() {
    let far = plan(&laid(
        &[],
        r#""on_sale":"2000-01-01","steps":{"shoot":730,"brief":730}"#,
    ));
    assert_eq!(
        (days(&far)[4].as_str(), days(&far)[0].as_str()),
        ("1998-01-01", "1996-01-02")
    );
    let late = plan(&laid(
        &[],
        r#""on_sale":"2199-12-31","steps":{"shoot":0,"deliver":730}"#,
    ));
    assert_eq!(days(&late)[5], "2201-12-31");
}

#[test]
fn a_day_that_is_past_is_said() {
    let dates = r#""on_sale":"2027-11-02""#;
    assert_eq!(
        warned(dates, "2027-06-02"),
        Vec::<String>::new(),
        "today is in time"
    );
    let past = warned(dates, "2027-06-19");
    assert_eq!(
        past,
        [
            "Brief: this day is past.",
            "Layout approved: this day is past."
        ]
    );
}

#[test]
fn weekends_short_leads_and_broken_order_are_said() {
    // Saturday 3 July 2027.
    let weekend = warned(
        r#""on_sale":"2027-11-03","steps":{"shoot":123}"#,
        "2027-01-01",
    );
    // So are whole weeks before and after it.
    assert_eq!(weekend.len(), 4, "{weekend:?}");
    assert!(weekend[2].contains("at a weekend"), "{weekend:?}");
    let short = warned(
        r#""on_sale":"2027-11-02","steps":{"shoot":117}"#,
        "2027-01-01",
    );
    assert_eq!(
        short,
        ["Print usually needs four months: shoot by 2 July 2027."]
    );
    let short = warned(
        r#""on_sale":"2027-11-02","medium":"web","steps":{"shoot":26}"#,
        "",
    );
    assert_eq!(
        short,
        ["Online usually needs four weeks: shoot by 5 October 2027."]
    );
    let order = warned(
        r#""on_sale":"2027-11-02","steps":{"approval":5,"deliver":130}"#,
        "",
    );
    let is = [
        "Layout approved: at a weekend, when not all shops and clients answer.",
        "Props pulled: before what has to be done first, Layout approved.",
        "On sale or online: before what has to be done first, Pictures delivered.",
    ];
    assert_eq!(order, is);
}

#[test]
fn food_ordered_for_the_same_day_is_said_and_what_is_fresh_is_told() {
    let late = warned(r#""on_sale":"2027-11-02","steps":{"food":0}"#, "");
    assert!(
        late.len() == 1 && late[0].starts_with("Ordered on the day"),
        "{late:?}"
    );
    let fresh = plan(&laid(
        &["herbs", "loaf", "berries"],
        r#""on_sale":"2027-11-02""#,
    ));
    let said = "To come on the day itself, 2 July 2027: herbs and berries.";
    assert_eq!(fresh.steps[3].note, said);
    let none = plan(&laid(&["loaf"], r#""on_sale":"2027-11-02""#));
    assert_eq!(none.steps[3].note, "");
}

#[test]
fn out_of_season_is_by_the_day_of_the_shoot_and_the_half_of_the_earth() {
    let foods = [
        "loaf",
        "mussels",
        "dinner-plate",
        "mussels",
        "asparagus",
        "salt",
        "oysters",
    ];
    // Shot on 2 July.
    let north = plan(&laid(&foods, r#""on_sale":"2027-11-02""#));
    let is = [
        "mussels and oysters: out of season on 2 July 2027, in season from September to April where you shoot (from memory; ask who grows or lands it).",
        "asparagus: out of season on 2 July 2027, in season from April to June where you shoot (from memory; ask who grows or lands it).",
    ];
    assert_eq!(north.warnings, is);
    let names: Vec<&str> = north.foods.iter().map(|food| food.food.as_str()).collect();
    assert_eq!(
        names,
        ["mussels", "asparagus", "oysters", "loaf"],
        "each once, those of a season first, and nothing strewn"
    );
    assert_eq!(
        north.foods[3].spoken,
        "all the year round, as far as we know"
    );
    let south = plan(&laid(
        &foods,
        r#""on_sale":"2027-11-02","hemisphere":"south""#,
    ));
    assert_eq!(south.warnings.len(), 1, "{:?}", south.warnings);
    assert_eq!(south.foods[0].months, Some([3, 10]));
    assert_eq!(south.foods[1].spoken, "October to December (from memory)");
    // Shot on 2 October.
    let autumn = plan(&laid(&foods, r#""on_sale":"2028-02-02""#));
    assert_eq!(autumn.warnings.len(), 1, "{:?}", autumn.warnings);
}

#[test]
fn told_months_count_as_they_are_told_on_either_half() {
    let season = |months: &str, half: &str| {
        let dates = format!(
            r#""on_sale":"2027-11-02","hemisphere":"{half}","seasons":[{{"food":"asparagus","months":{months}}},{{"food":"peas","months":[1,1]}}]"#
        );
        plan(&laid(&["asparagus"], &dates))
    };
    for half in ["north", "south"] {
        let held = season("[5,7]", half);
        assert_eq!(
            (held.warnings.len(), held.foods[0].told),
            (0, true),
            "{half}"
        );
        assert_eq!(held.foods[0].spoken, "May to July, as you say");
        let missed = season("[8,6]", half).warnings;
        let said =
            "asparagus: out of season on 2 July 2027, in season from August to June as you say.";
        assert_eq!(missed, [said]);
    }
    let always = season("[1,12]", "north");
    assert_eq!(always.foods[0].spoken, "all the year round, as you say");
}

#[test]
fn days_for_a_calendar_keep_their_names() {
    let layout = laid(&[], r#""on_sale":"2027-11-02","steps":{"props":10}"#);
    let made = entries(&layout);
    assert_eq!(made.len(), 7);
    assert_eq!(made[0].uid, "00000000000000d8-brief-overspread");
    assert_eq!(made[6].uid, "00000000000000d8-on-sale-overspread");
    assert_eq!(made[2].summary, "Props pulled: Supper, late");
    let said = "Days before the shoot: 10, as you say. Usual: 7 (common practice, no source).";
    assert_eq!(made[2].description, said);
    assert!(
        made.iter()
            .all(|entry| entry.next == entry.day.days_after(1))
    );
    let mut moved = layout.clone();
    moved.dates.on_sale = Day::parse("2028-03-01");
    moved.head.title = "Another".into();
    let uids = |of: &[Entry]| of.iter().map(|entry| entry.uid.clone()).collect::<Vec<_>>();
    assert_eq!(uids(&entries(&moved)), uids(&made), "whatever is changed");
}
