//! The list of exposures: one added, taken out, put earlier or later, and how
//! long one takes.
use super::{Act, Refused, fresh_id};
use crate::layout::{As, Exposure, ExposureKind, Id, Layout, MAX_MINUTES};
use crate::scene::exposure_name;
use crate::words::{Arg, say};

/// Adds an exposure of a kind where it is usually shot: what measures the
/// light and the bare table first, then the clean exposure, then hands, a clean
/// exposure again, steam and the light out of the glass, and what is shot in
/// case last. The food in it is as the exposures before it left it.
///
/// # Errors
/// When there are too many exposures.
pub fn add_exposure(layout: &Layout, kind: ExposureKind) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let id = fresh_id(&mut after);
    let all = &after.exposures;
    let first_hands = all.iter().position(|e| e.kind == ExposureKind::Hands);
    let first_hands = first_hands.unwrap_or(all.len());
    let again = all.iter().any(|e| e.kind == ExposureKind::Clean);
    let rank = |n: usize, kind: ExposureKind| match kind {
        ExposureKind::Card => 0,
        ExposureKind::Empty => 1,
        ExposureKind::Clean if n < first_hands => 2,
        ExposureKind::Hands => 3,
        ExposureKind::Clean => 4,
        ExposureKind::Steam | ExposureKind::NoGlare => 5,
        ExposureKind::Insurance => 6,
    };
    let own = match kind {
        ExposureKind::Clean if !again => 2,
        _ => rank(all.len(), kind),
    };
    let place = all
        .iter()
        .enumerate()
        .position(|(n, e)| rank(n, e.kind) > own)
        .unwrap_or(all.len());
    let mut exposure = Exposure::new(id, kind);
    if place > 0 && kind.shows_food() {
        let before = all[place - 1].states.iter();
        exposure.states = before.filter(|s| s.is == As::Changed).cloned().collect();
    }
    after.exposures.insert(place, exposure);
    Act::between(named(&after, id, "done-exposure-added"), layout, &after)
}

/// Takes an exposure out, with its hands: they are in no other.
///
/// # Errors
/// When there is no such exposure.
pub fn remove_exposure(layout: &Layout, id: Id) -> Result<Act, Refused> {
    known(layout, id)?;
    let mut after = layout.clone();
    let hands = layout.hands.iter().filter(|h| h.exposure == id);
    let gone: Vec<Id> = hands.map(|h| h.id).collect();
    after.exposures.retain(|e| e.id != id);
    after.hands.retain(|h| h.exposure != id);
    for hand in &mut after.hands {
        hand.pair = hand.pair.filter(|pair| !gone.contains(pair));
    }
    let name = match gone.len() {
        0 => named(layout, id, "done-exposure-away"),
        count => say(
            "done-exposure-away-hands",
            &[
                ("exposure", Arg::Text(exposure_name(layout, id))),
                ("count", Arg::Text(count.to_string())),
            ],
        ),
    };
    Act::between(name, layout, &after)
}

/// Puts an exposure one place earlier or later; at the end of the list it
/// stays.
///
/// # Errors
/// When there is no such exposure.
pub fn shift_exposure(layout: &Layout, id: Id, later: bool) -> Result<Act, Refused> {
    let place = known(layout, id)?;
    let mut after = layout.clone();
    let to = if later {
        (place + 1).min(after.exposures.len() - 1)
    } else {
        place.saturating_sub(1)
    };
    after.exposures.swap(place, to);
    let name = if later {
        "done-exposure-later"
    } else {
        "done-exposure-earlier"
    };
    Act::between(named(layout, id, name), layout, &after)
}

/// Sets how long an exposure takes with all its takes, within what may be
/// said of it.
///
/// # Errors
/// When there is no such exposure.
pub fn exposure_takes(layout: &Layout, id: Id, minutes: i32) -> Result<Act, Refused> {
    let place = known(layout, id)?;
    let mut after = layout.clone();
    let own = &mut after.exposures[place];
    let minutes = minutes.clamp(1, MAX_MINUTES);
    // What is usual is not written, so that it stays what is usual.
    own.minutes = (minutes != own.kind.usual_minutes()).then_some(minutes);
    Act::between(named(layout, id, "done-exposure-minutes"), layout, &after)
}

/// Where in the list an exposure stands.
pub(super) fn known(layout: &Layout, id: Id) -> Result<usize, Refused> {
    let place = layout.exposures.iter().position(|e| e.id == id);
    place.ok_or_else(|| Refused::Unknown(id.0.to_string()))
}

/// What is done to an exposure, in words.
pub(super) fn named(layout: &Layout, id: Id, done: &str) -> String {
    say(done, &[("exposure", Arg::Text(exposure_name(layout, id)))])
}

#[cfg(test)]
mod tests {
    use super::super::states::{How, Look, put_in};
    use super::super::tests::{done, laid};
    use super::*;

    fn ids(layout: &Layout) -> Vec<u16> {
        layout.exposures.iter().map(|e| e.id.0).collect()
    }

    #[test]
    fn each_kind_is_added_where_it_is_shot() {
        let mut layout = laid();
        for kind in [
            ExposureKind::Insurance,
            ExposureKind::Hands,
            ExposureKind::Card,
            ExposureKind::NoGlare,
            ExposureKind::Empty,
            ExposureKind::Clean,
        ] {
            layout = done(&layout, add_exposure(&layout, kind));
        }
        // 21 clean, 22 and 24 with hands were there.
        let kinds: Vec<ExposureKind> = layout.exposures.iter().map(|e| e.kind).collect();
        let (clean, hands) = (ExposureKind::Clean, ExposureKind::Hands);
        assert_eq!(
            kinds,
            [
                ExposureKind::Card,
                ExposureKind::Empty,
                clean,
                hands,
                hands,
                hands,
                clean,
                ExposureKind::NoGlare,
                ExposureKind::Insurance
            ]
        );
        assert_eq!(ids(&layout)[2..5], [21, 22, 24], "as they were");
    }

    #[test]
    fn the_first_clean_exposure_comes_before_the_hands() {
        let mut layout = laid();
        layout.exposures.retain(|e| e.kind == ExposureKind::Hands);
        let after = done(&layout, add_exposure(&layout, ExposureKind::Clean));
        assert_eq!(after.exposures[0].kind, ExposureKind::Clean);
        layout.exposures.clear();
        layout.hands.clear();
        let after = done(&layout, add_exposure(&layout, ExposureKind::Steam));
        assert_eq!(ids(&after), [40], "the only one");
    }

    #[test]
    fn food_stays_as_it_was_left() {
        let mut layout = laid();
        let cut = How::Look(Look::Cut);
        layout = done(&layout, put_in(&layout, Id(24), Id(7), &cut));
        let after = done(&layout, add_exposure(&layout, ExposureKind::Clean));
        let last = after.exposures.last().expect("there");
        assert_eq!(last.states, layout.exposures[2].states, "still cut");
        let card = done(&layout, add_exposure(&layout, ExposureKind::Card));
        assert!(card.exposures[0].states.is_empty(), "before there is food");
    }

    #[test]
    fn an_exposure_goes_with_its_hands_and_comes_back_with_them() {
        let layout = laid();
        let act = remove_exposure(&layout, Id(22)).expect("there");
        assert!(act.name.contains("1 hand"), "{}", act.name);
        let mut after = layout.clone();
        act.edit.apply_checked(&mut after).expect("it fits");
        assert_eq!(ids(&after), [21, 24]);
        assert_eq!(after.hands.len(), 1, "that of the other");
        act.edit.reverted().apply_checked(&mut after).expect("back");
        assert_eq!(after, layout, "as it was");
        assert!(remove_exposure(&layout, Id(99)).is_err(), "no such");
    }

    #[test]
    fn exposures_are_put_earlier_and_later_and_stay_at_the_ends() {
        let layout = laid();
        let at = |id, later| {
            let act = shift_exposure(&layout, Id(id), later).expect("there");
            let mut after = layout.clone();
            act.edit.apply_checked(&mut after).expect("it fits");
            ids(&after)
        };
        assert_eq!(at(22, false), [22, 21, 24]);
        assert_eq!(at(22, true), [21, 24, 22]);
        assert_eq!(at(21, false), [21, 22, 24], "first already");
        assert_eq!(at(24, true), [21, 22, 24], "last already");
    }

    #[test]
    fn how_long_it_takes_is_written_only_where_it_is_not_usual() {
        let layout = laid();
        let takes = |minutes| {
            let after = done(&layout, exposure_takes(&layout, Id(22), minutes));
            (after.exposures[1].minutes, after.exposures[1].takes())
        };
        assert_eq!(takes(12), (Some(12), 12));
        assert_eq!(takes(10), (None, 10), "as usual");
        assert_eq!(takes(-4), (Some(1), 1), "no less");
        assert_eq!(takes(9_000), (Some(MAX_MINUTES), MAX_MINUTES), "no more");
        assert_eq!(layout.exposures[0].takes(), 3, "a clean one");
    }
}
