//! Focus: how deep it is sharp, which f-number holds the cloth and the tallest
//! rim together, and where the aperture itself begins to blur.
//!
//! Thin lens and blur disc, see `optics::depth`: focused at 2·n·f/(n + f), both
//! limits n and f are just sharp, and focusing on the cloth would waste the
//! far half below the table.
use super::super::finding::{Finding, Mark, Remedy, State};
use super::super::rules::{LEAN_AIRY, LEAN_FOCUS};
use super::super::study::Study;
use super::deeper;
use crate::edit::Edit;
use crate::layout::{Format, Id, Layout, Role};
use crate::optics::{Lens, STOPS, View, airy, depth_of_field, focus_for, magnification};
use crate::scene::{rise, tallest};
use crate::words::{Arg, fixed, length, rounded, say, whole};

/// What most lenses for table pictures close to, tenths of an f-number (from
/// memory).
const CLOSED: i32 = 220;
/// No more exposures than this are counted: a lens wide open close up would
/// take any number.
const MOST_EXPOSURES: f64 = 99.0;

/// What is to be sharp, and what is; mm from the lens.
pub(super) struct Depth {
    lens: Lens,
    /// Lens above the table.
    height: f64,
    /// The tallest thing, and how high it reaches.
    pub(super) tallest: (Id, f64),
    /// The f-number that is set.
    pub(super) stop: f64,
    /// Where it focuses above the table.
    focus: f64,
    /// The f-number that holds everything, focused where that is least.
    pub(super) needed: f64,
    /// Where that is above the table.
    best: f64,
    /// What is sharp; none where it cannot focus so high.
    sharp: Option<[f64; 2]>,
}

pub(super) fn depth(layout: &Layout) -> Option<Depth> {
    let View::Lens { height, .. } = View::of(layout) else {
        return None;
    };
    let lens = Lens::of(&layout.camera);
    let tallest = tallest(layout)?;
    let (best, needed) = focus_for(lens.focal, lens.blur, height - tallest.1, height)?;
    let stop = f64::from(layout.camera.aperture) / 10.0;
    let own = layout.camera.focus_height.map(f64::from);
    let focus = own.unwrap_or(height - best);
    let sharp = depth_of_field(lens.focal, stop, lens.blur, height - focus);
    Some(Depth {
        lens,
        height,
        tallest,
        stop,
        focus,
        needed,
        best: height - best,
        sharp: sharp.map(|s| [s.near, s.far]),
    })
}

impl Depth {
    /// How much of the top and of the foot of the scene is not sharp, mm.
    fn missing(&self) -> [f64; 2] {
        let [near, far] = self.sharp.unwrap_or([self.height; 2]);
        let top = near - (self.height - self.tallest.1);
        [top, self.height - far].map(|mm| mm.max(0.0))
    }

    /// How much is not sharp, at the worse end, mm.
    pub(super) fn short(&self) -> f64 {
        let [top, foot] = self.missing();
        top.max(foot)
    }

    /// The next common f-number that holds everything, tenths.
    fn held_by(&self) -> Option<i32> {
        let holds = |tenths: &&i32| f64::from(**tenths) / 10.0 >= self.needed;
        let within = STOPS.iter().filter(|tenths| **tenths <= CLOSED);
        within.copied().find(|tenths| holds(&tenths))
    }

    /// Whether there is an aperture that holds everything: any it closes to,
    /// and of a phone the one it has.
    pub(super) fn can_be_held(&self, layout: &Layout) -> bool {
        if layout.camera.format == Format::Phone {
            self.needed <= self.stop
        } else {
            self.held_by().is_some()
        }
    }
}

pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let Some(depth) = depth(study.layout()) else {
        return Vec::new();
    };
    let mut out = vec![held(study, &depth, settled)];
    out.extend(diffraction(study, &depth, settled));
    out
}

fn held(study: &Study<'_>, depth: &Depth, settled: bool) -> Finding {
    let layout = study.layout();
    let short = depth.short();
    let state = if short < LEAN_FOCUS.edges[0] {
        (State::Holds, 3)
    } else if hero_is_soft(layout, depth) {
        (State::LookAgain, 2)
    } else {
        (State::LookAgain, 3)
    };
    let about = vec![depth.tallest.0];
    let mut f = Finding::by(&LEAN_FOCUS, "lean:focus".into(), state, short, about);
    if state.0 == State::LookAgain
        && let Some(item) = study.item(depth.tallest.0)
    {
        let [w, d] = item.size.extent();
        f.marks = vec![Mark::Ring {
            at: study.scene().view.project(item.at.vec(), depth.tallest.1),
            radius: f64::from(w.max(d)) * 0.55,
        }];
    }
    f.sentence = study.sentence(|| sentence(study, depth, state.0));
    f.working = study.tell(|| working(layout, depth));
    if settled && state.0 == State::LookAgain {
        f.remedy = if depth.can_be_held(layout) {
            remedy(study, depth, short)
        } else {
            deeper::found(study, depth).or_else(|| remedy(study, depth, short))
        };
    }
    f
}

/// Whether the hero's top or foot lies beyond what is sharp.
fn hero_is_soft(layout: &Layout, depth: &Depth) -> bool {
    let heroes = layout.items.iter().filter(|i| i.role == Role::Hero);
    let [near, far] = depth.sharp.unwrap_or([depth.height; 2]);
    heroes.map(|i| rise(layout, i)).any(|r| {
        let slack = LEAN_FOCUS.edges[0];
        depth.height - r.top + slack < near || depth.height - r.base > far + slack
    })
}

fn sentence(study: &Study<'_>, depth: &Depth, state: State) -> String {
    let layout = study.layout();
    let text = |mm: f64| Arg::Text(length(mm, layout.head.units));
    let [top, foot] = depth.missing();
    let args = [
        ("stop", Arg::Text(rounded(depth.stop))),
        ("focus", text(depth.focus)),
        ("height", text(depth.height)),
        ("thing", Arg::Name(study.name(depth.tallest.0))),
        ("ground", Arg::Name(study.name(Id(0)))),
        ("over", text(top.max(foot))),
    ];
    let edge = LEAN_FOCUS.edges[0];
    let id = match (depth.sharp.is_some(), top >= edge, foot >= edge) {
        (false, ..) => "focus-cannot",
        _ if state == State::Holds => "focus-holds",
        (_, true, true) => "focus-both",
        (_, true, false) => "focus-top",
        _ => "focus-foot",
    };
    say(id, &args)
}

fn working(layout: &Layout, depth: &Depth) -> Vec<String> {
    let text = |mm: f64| Arg::Text(length(mm, layout.head.units));
    let mut lines = vec![say("working-focus", &[])];
    if let Some([near, far]) = depth.sharp {
        let args = [
            ("high", text((depth.height - near).max(0.0))),
            ("low", text((depth.height - far).max(0.0))),
        ];
        let id = if far < depth.height {
            "working-focus-sharp"
        } else {
            "working-focus-ground"
        };
        lines.push(say(id, &args));
    }
    let args = [
        ("needed", Arg::Text(rounded(depth.needed))),
        ("best", text(depth.best)),
        ("top", text(depth.tallest.1)),
    ];
    lines.push(say("working-focus-needed", &args));
    if !depth.can_be_held(layout) {
        // Each exposure is sharp over as much of what is asked for, told in one
        // over the distance, as its f-number is of the one needed.
        let count = (depth.needed / depth.stop).ceil().min(MOST_EXPOSURES);
        let args = [
            ("count", Arg::Text(whole(count))),
            ("stop", Arg::Text(rounded(depth.stop))),
        ];
        lines.push(say("working-focus-several", &args));
    }
    lines.extend(airy_line(depth));
    lines
}

/// The f-number and focus that hold everything; where no common one does, or
/// the aperture is fixed, the best focus alone, when that is of use.
fn remedy(study: &Study<'_>, depth: &Depth, short: f64) -> Option<Remedy> {
    let layout = study.layout();
    let fixed = layout.camera.format == Format::Phone;
    let set = depth.held_by().filter(|_| !fixed);
    let mut after = layout.clone();
    after.camera.focus_height = None;
    let enough = depth.needed <= depth.stop;
    let stop = set.filter(|_| !enough);
    if let Some(tenths) = stop {
        after.camera.aperture = tenths;
    }
    let then = self::depth(&after)?;
    if after == *layout || then.short() >= short {
        return None;
    }
    let args = [
        ("stop", Arg::Text(rounded(then.stop))),
        ("focus", Arg::Text(length(then.focus, layout.head.units))),
        ("after", Arg::Text(length(then.short(), layout.head.units))),
        ("before", Arg::Text(length(short, layout.head.units))),
    ];
    let held = then.short() < LEAN_FOCUS.edges[0];
    Some(Remedy {
        act: say(
            if stop.is_some() {
                "act-stop"
            } else {
                "act-focus"
            },
            &args,
        ),
        predicted: say(if held { "focus-all" } else { "predicted" }, &args),
        after: then.short(),
        edit: Edit::between(layout, &after),
    })
}

/// The disc of the aperture itself, mm, and over the blur allowed.
fn disc(depth: &Depth) -> Option<(f64, f64)> {
    let m = magnification(depth.lens.focal, depth.height)?;
    let disc = airy(depth.stop, m);
    Some((disc, disc / depth.lens.blur))
}

fn airy_line(depth: &Depth) -> Option<String> {
    let (disc, _) = disc(depth)?;
    let pixel = depth.lens.sensor.x / f64::from(depth.lens.pixels[0]);
    let micron = |mm: f64| Arg::Text(fixed(mm * 1e3, 1));
    let args = [
        ("disc", micron(disc)),
        ("blur", micron(depth.lens.blur)),
        ("pixels", Arg::Text(fixed(disc / pixel, 1))),
    ];
    Some(say("working-airy", &args))
}

/// The aperture blurs more than is allowed.
fn diffraction(study: &Study<'_>, depth: &Depth, settled: bool) -> Option<Finding> {
    let (_, share) = disc(depth)?;
    if share < LEAN_AIRY.edges[0] {
        return None;
    }
    let layout = study.layout();
    let state = (State::LookAgain, 3);
    let key = "lean:diffraction".into();
    let mut f = Finding::by(&LEAN_AIRY, key, state, share, Vec::new());
    let stop = ("stop", Arg::Text(rounded(depth.stop)));
    f.sentence = study.sentence(|| say("focus-airy", &[stop]));
    f.working = study.tell(|| {
        let line = airy_line(depth);
        std::iter::once(say("working-focus-airy", &[]))
            .chain(line)
            .collect()
    });
    if settled {
        f.remedy = opened(depth, layout);
    }
    Some(f)
}

/// The widest common f-number that holds everything and blurs less.
fn opened(depth: &Depth, layout: &Layout) -> Option<Remedy> {
    let tenths = depth.held_by()?;
    let mut after = layout.clone();
    after.camera.aperture = tenths;
    after.camera.focus_height = None;
    let then = self::depth(&after)?;
    let (_, share) = disc(&then)?;
    if tenths >= layout.camera.aperture || share >= LEAN_AIRY.edges[0] {
        return None;
    }
    let args = [
        ("stop", Arg::Text(rounded(then.stop))),
        ("focus", Arg::Text(length(then.focus, layout.head.units))),
    ];
    Some(Remedy {
        act: say("act-stop", &args),
        predicted: say("focus-all", &[]),
        after: share,
        edit: Edit::between(layout, &after),
    })
}
