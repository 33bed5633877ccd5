//! Exposures: the fewest, and the order that takes least, against trying all.
use planner::exposures::{
    CARRYING, SWAPPING, Taken, WALKING, change, fewest, foods, in_order, shooting_order,
};
use planner::layout::{As, Exposure, ExposureKind, Layout, open};
use rand_pcg::Pcg32;
use rand_pcg::rand_core::Rng;

/// How few classes hold the actions, by trying every way to share them out.
fn by_trying(actions: usize, people: usize, odds: &dyn Fn(usize, usize) -> bool) -> usize {
    fn place(
        n: usize,
        actions: usize,
        people: usize,
        odds: &dyn Fn(usize, usize) -> bool,
        shared: &mut Vec<Vec<usize>>,
    ) -> usize {
        if n == actions {
            return shared.len();
        }
        let mut best = usize::MAX;
        for at in 0..=shared.len() {
            if at == shared.len() {
                shared.push(Vec::new());
            }
            let own = &shared[at];
            if own.len() < people && own.iter().all(|&a| !odds(a, n)) {
                shared[at].push(n);
                best = best.min(place(n + 1, actions, people, odds, shared));
                shared[at].pop();
            }
            if shared[at].is_empty() {
                shared.pop();
            }
        }
        best
    }
    place(0, actions, people, odds, &mut Vec::new())
}

/// Every graph of what is at odds among up to five actions, with one to five
/// people.
#[test]
fn fewest_exposures_are_as_few_as_trying_all_finds() {
    let mut cases = 0;
    for actions in 1..=5_usize {
        let pairs: Vec<(usize, usize)> = (0..actions)
            .flat_map(|a| (a + 1..actions).map(move |b| (a, b)))
            .collect();
        for graph in 0..1_u32 << pairs.len() {
            let odds = |a: usize, b: usize| {
                let n = pairs.iter().position(|p| *p == (a, b));
                graph >> n.expect("a pair") & 1 == 1
            };
            for people in 1..=actions {
                let found = fewest(actions, people, &odds).expect("few");
                let mut all: Vec<usize> = found.iter().flatten().copied().collect();
                all.sort_unstable();
                assert_eq!(all, (0..actions).collect::<Vec<_>>(), "each once");
                for own in &found {
                    assert!(own.len() <= people, "{own:?} by {people}");
                    let clash = own
                        .iter()
                        .any(|&a| own.iter().any(|&b| a < b && odds(a, b)));
                    assert!(!clash, "{own:?} in graph {graph:b}");
                }
                let least = by_trying(actions, people, &odds);
                assert_eq!(found.len(), least, "{actions} {people} {graph:b}");
                cases += 1;
            }
        }
    }
    assert!(cases > 5_000, "{cases}");
}

/// A table of four things, two people with two places, and up to six exposures
/// with random states, hands, holding times and things that stand in.
fn random(dice: &mut Pcg32) -> Layout {
    let mut pick = |n: u32| dice.next_u32() % n;
    let items: Vec<String> = (1..=4)
        .map(|id| {
            let hold = match pick(3) {
                0 => format!(r#","hold_minutes":{}"#, 15 + pick(70)),
                _ => String::new(),
            };
            let stands_in = if pick(3) == 0 { r#","stand_in":"dough""# } else { "" };
            format!(
                r#"{{"id":{id},"prop":"loaf","at":[{id}00,400],"size":{{"shape":"disc","diameter":90}}{hold}{stands_in}}}"#
            )
        })
        .collect();
    let mut hands = Vec::new();
    let mut exposures = Vec::new();
    let count = 2 + pick(5);
    for n in 0..count {
        let id = 40 + n;
        let kind = ["hands", "hands", "hands", "clean", "card", "insurance"][pick(6) as usize];
        let mut states = Vec::new();
        for item in 1..=4 {
            // One thing is only ever changed, so that some orders can be shot.
            match (item, pick(4)) {
                (1, 0) => states.push(r#"{"item":1,"state":"changed"}"#.to_string()),
                (2.., 0) => states.push(format!(r#"{{"item":{item},"state":"absent"}}"#)),
                (2.., 1) => {
                    let x = 300 + 100 * pick(2);
                    states.push(format!(
                        r#"{{"item":{item},"state":"moved","at":[{x},500]}}"#
                    ));
                }
                _ => {}
            }
        }
        if kind == "hands" {
            let (person, seat) = (32 + pick(2), 30 + pick(2));
            // At one of the things, or at none.
            let (x, y) = (100 + 100 * pick(4), 400 + 200 * pick(2));
            let holds = if pick(4) == 0 { r#","holds":3"# } else { "" };
            hands.push(format!(
                r#"{{"id":{},"person":{person},"seat":{seat},"exposure":{id},"entry":[0,0],"target":[{x},{y}]{holds}}}"#,
                60 + n
            ));
        }
        exposures.push(format!(
            r#"{{"id":{id},"kind":"{kind}","minutes":{},"states":[{}]}}"#,
            2 + pick(12),
            states.join(",")
        ));
    }
    let text = format!(
        r#"{{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":90,
        "table":{{"width":1600,"depth":900}},"frame":{{"at":[800,450],"width":1300}},
        "items":[{}],"seats":[{{"id":30,"at":[0,400]}},{{"id":31,"at":[800,900]}}],
        "people":[{{"id":32}},{{"id":33}}],"exposures":[{}],"hands":[{}]}}"#,
        items.join(","),
        exposures.join(","),
        hands.join(",")
    );
    open(&text).expect("a sound layout")
}

fn orders(n: usize) -> Vec<Vec<usize>> {
    if n == 0 {
        return vec![Vec::new()];
    }
    let shorter = orders(n - 1);
    let each = shorter.iter().flat_map(|order| {
        (0..n).map(move |at| {
            let mut longer = order.clone();
            longer.insert(at, n - 1);
            longer
        })
    });
    each.collect()
}

/// A way walked counts as two things carried.
fn carried(taken: &Taken) -> u32 {
    taken.change.moves + 2 * taken.change.walks
}

/// The minutes food stands longer than it holds, by writing the day out: when
/// each exposure begins and ends, when each food goes on the set and when it
/// was last needed.
fn stood_too_long(layout: &Layout) -> i32 {
    let all = &layout.exposures;
    let foods = foods(layout);
    let (mut clock, mut times) = (0, Vec::new());
    for (n, own) in all.iter().enumerate() {
        if n > 0 {
            let taken = change(layout, &all[n - 1], own);
            clock += taken.moves as i32 * CARRYING + taken.walks as i32 * WALKING;
        }
        let first = |real: u64| real.trailing_zeros() as usize == n;
        let swapped = foods.iter().filter(|f| f.stood_in && first(f.real));
        clock += swapped.count() as i32 * SWAPPING;
        times.push((clock, clock + own.takes()));
        clock += own.takes();
    }
    let mut over = 0;
    for food in foods.iter().filter(|food| food.real != 0) {
        let Some((hold, _)) = food.hold else {
            continue;
        };
        let on = if food.stood_in { food.real } else { food.there };
        let from = times[on.trailing_zeros() as usize].0;
        let last = times[63 - food.real.leading_zeros() as usize].1;
        over += (last - from - hold).max(0);
    }
    over
}

/// How far along an exposure belongs among those with the food as it is, by
/// the words of the trade; none for what has its turn by its kind alone.
fn rank(layout: &Layout, own: &Exposure) -> Option<u32> {
    let n = layout.exposures.iter().position(|e| e.id == own.id)?;
    let changed = own.states.iter().any(|s| s.is == As::Changed);
    let told = own.states.iter().any(|s| s.is != As::Set);
    let holds = layout
        .hands
        .iter()
        .any(|h| h.exposure == own.id && h.holds.is_some());
    let all = foods(layout);
    let mut stood_in = all.iter().filter(|f| f.stood_in).peekable();
    match own.kind {
        ExposureKind::Clean if changed => Some(5),
        ExposureKind::Clean => Some(1),
        ExposureKind::Hands if changed => Some(4),
        ExposureKind::Hands
            if stood_in.peek().is_some() && stood_in.all(|f| f.real >> n & 1 == 0) =>
        {
            Some(0)
        }
        ExposureKind::Hands if told || holds => Some(3),
        ExposureKind::Hands => Some(2),
        _ => None,
    }
}

/// How often an exposure comes before one of the same state of the food that
/// had better come first.
fn too_early(layout: &Layout) -> u32 {
    let all = &layout.exposures;
    let changed = |e: &Exposure| e.states.iter().any(|s| s.is == As::Changed);
    let mut count = 0;
    for (n, late) in all.iter().enumerate() {
        for early in &all[..n] {
            let ranks = rank(layout, early).zip(rank(layout, late));
            let swapped = ranks.is_some_and(|(early, late)| early > late);
            count += u32::from(swapped && changed(early) == changed(late));
        }
    }
    count
}

#[test]
fn the_order_takes_as_little_as_trying_all_finds() {
    let mut dice = Pcg32::new(20_260_905, 1);
    let (mut dearer, mut fits, mut fails) = (0, 0, 0);
    for n in 0..300 {
        let layout = random(&mut dice);
        let all = &layout.exposures;
        let (mut least, mut most) = ((i32::MAX, u32::MAX, u32::MAX), 0);
        for order in orders(all.len()) {
            let mut then = layout.clone();
            then.exposures = order.iter().map(|&at| all[at].clone()).collect();
            if let Some(taken) = in_order(&then) {
                assert_eq!(taken.over, stood_too_long(&then), "{n}: {order:?}");
                assert_eq!(taken.early, too_early(&then), "{n}: {order:?}");
                let steps = then.exposures.windows(2);
                let steps = steps.map(|p| change(&then, &p[0], &p[1]));
                let summed: u32 = steps.map(|c| c.moves + 2 * c.walks).sum();
                assert_eq!(carried(&taken), summed, "{n}: step by step");
                least = least.min((taken.over, taken.early, summed));
                most = most.max(taken.over);
            }
        }
        let (order, taken) = shooting_order(&layout).expect("one food only");
        assert_eq!(order.len(), all.len(), "{n}: each once");
        let own = (taken.over, taken.early, carried(&taken));
        assert_eq!(own, least, "{n}");
        let mut then = layout.clone();
        let find = |id| all.iter().find(|e| e.id == id).expect("there").clone();
        then.exposures = order.iter().map(|&id| find(id)).collect();
        assert_eq!(in_order(&then), Some(taken), "{n}: it can be shot so");
        let told = in_order(&layout);
        dearer += u32::from(told.is_none_or(|told| told.weight() > taken.weight()));
        fits += u32::from(taken.over == 0 && most > 0);
        fails += u32::from(taken.over > 0);
    }
    assert!(dearer > 100, "{dearer} are told in another order");
    assert!(fits > 10 && fails > 10, "{fits} fit, {fails} cannot");
}
