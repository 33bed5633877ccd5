//! Exposures: the fewest, and the order that takes least, against trying all.
use planner::exposures::{Change, change, fewest, in_order, shooting_order};
use planner::layout::{Layout, open};
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

/// A table of four things, two people with two places, and six exposures with
/// random states and hands.
fn random(dice: &mut Pcg32) -> Layout {
    let mut pick = |n: u32| dice.next_u32() % n;
    let items: Vec<String> = (1..=4)
        .map(|id| format!(r#"{{"id":{id},"prop":"loaf","at":[{id}00,400],"size":{{"shape":"disc","diameter":90}}}}"#))
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
            hands.push(format!(
                r#"{{"id":{},"person":{person},"seat":{seat},"exposure":{id},"entry":[0,0],"target":[500,400]}}"#,
                60 + n
            ));
        }
        exposures.push(format!(
            r#"{{"id":{id},"kind":"{kind}","states":[{}]}}"#,
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
fn cost(taken: Change) -> u32 {
    taken.moves + 2 * taken.walks
}

#[test]
fn the_order_takes_as_little_as_trying_all_finds() {
    let mut dice = Pcg32::new(20_260_905, 1);
    let mut dearer = 0;
    for n in 0..300 {
        let layout = random(&mut dice);
        let all = &layout.exposures;
        let mut least = u32::MAX;
        for order in orders(all.len()) {
            let mut then = layout.clone();
            then.exposures = order.iter().map(|&at| all[at].clone()).collect();
            if let Some(taken) = in_order(&then) {
                least = least.min(cost(taken));
            }
        }
        let (order, taken) = shooting_order(&layout).expect("one food only");
        assert_eq!(order.len(), all.len(), "{n}: each once");
        assert_eq!(cost(taken), least, "{n}");
        let mut then = layout.clone();
        let find = |id| all.iter().find(|e| e.id == id).expect("there").clone();
        then.exposures = order.iter().map(|&id| find(id)).collect();
        assert_eq!(in_order(&then), Some(taken), "{n}: it can be shot so");
        let summed = then
            .exposures
            .windows(2)
            .map(|p| cost(change(&then, &p[0], &p[1])));
        assert_eq!(summed.sum::<u32>(), least, "{n}: step by step");
        dearer += u32::from(in_order(&layout).is_none_or(|told| cost(told) > least));
    }
    assert!(dearer > 100, "{dearer} are told in another order");
}
