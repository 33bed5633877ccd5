//! Tables that come with the planner, in every season.
use super::*;
use crate::layout::open;

const STARTERS: [&str; 3] = [
    include_str!("../../../../../static/starters/harbour-supper.spread.json"),
    include_str!("../../../../../static/starters/citrus-breakfast.spread.json"),
    include_str!("../../../../../static/starters/noodle-night.spread.json"),
];

fn all() -> Wish {
    Wish {
        food: true,
        linen: true,
        board: true,
        keep: Vec::new(),
    }
}

#[test]
fn every_table_comes_into_every_season_and_stays_where_it_stands() {
    let mut exchanged = 0;
    for (file, season) in STARTERS.iter().flat_map(|f| Season::ALL.map(|s| (f, s))) {
        let layout = open(file).expect("sound");
        let Swapped { after, stay } = swapped(&layout, season, &all());
        for (old, new) in layout.items.iter().zip(&after.items) {
            let told = stay.iter().any(|(id, _)| *id == old.id);
            assert_eq!(
                told,
                !season.has(&layout, &new.prop),
                "{} is told",
                old.name
            );
            let place = |i: &Item| (i.id, i.number, i.at, i.turn, i.on, i.group, i.role);
            assert_eq!(place(old), place(new), "{}", old.name);
            let [[w, d], [nw, nd]] = [old, new].map(|i| i.size.extent());
            assert!(nw <= w && nd <= d, "{} in its place", new.name);
            if old.prop == new.prop {
                assert_eq!(old, new, "nothing else is touched");
            } else {
                exchanged += 1;
                let kind = |i: &Item| crate::catalogue::kind_of(&i.prop);
                assert_eq!(kind(old), kind(new), "of its kind");
            }
        }
        let act = swap(&layout, season, &all()).expect("nothing locked changes");
        let mut made = layout.clone();
        if !act.edit.0.is_empty() {
            act.edit.apply_checked(&mut made).expect("it opens");
        }
        assert_eq!(made, after, "one edit");
        let again = swapped(&after, season, &all());
        assert_eq!(again.after, after, "twice is once");
    }
    assert!(exchanged > 3, "{exchanged} foods were exchanged");
}

#[test]
fn what_is_ticked_or_locked_stays() {
    let mut layout = open(STARTERS[0]).expect("sound");
    let mussels = layout.items.iter().position(|i| i.prop == "mussels");
    let at = mussels.expect("harbour supper has mussels");
    let id = layout.items[at].id;
    let food = Wish {
        food: true,
        ..Wish::default()
    };
    let summer = swapped(&layout, Season::Summer, &food);
    assert_ne!(
        summer.after.items[at].prop, "mussels",
        "months without an r"
    );
    assert_eq!(summer.after.linens, layout.linens, "not asked for");
    let keep = Wish {
        keep: vec![id],
        ..food.clone()
    };
    let kept = swapped(&layout, Season::Summer, &keep);
    assert_eq!(kept.after.items[at], layout.items[at]);
    assert!(kept.stay.contains(&(id, Stays::Wished)));
    layout.items[at].locked = true;
    let locked = swapped(&layout, Season::Summer, &food);
    assert!(locked.stay.contains(&(id, Stays::Locked)));
    assert!(swap(&layout, Season::Summer, &food).is_ok(), "not refused");
    // Told for where it is shot: winter there is June to August.
    let mut south = layout.clone();
    south.dates.hemisphere = Hemisphere::South;
    assert!(Season::Winter.has(&south, "mussels"), "by the catalogue");
    south.dates.seasons.push(crate::layout::Season {
        food: "mussels".into(),
        months: [12, 2],
        extra: crate::layout::Extra::new(),
    });
    assert!(!Season::Winter.has(&south, "mussels"), "as it is told");
    assert!(Season::Summer.has(&south, "mussels"), "as it is told");
    let winter = swapped(&layout, Season::Winter, &food);
    assert_eq!(winter.after.items[at].prop, "mussels", "in season");
}
