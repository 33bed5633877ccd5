//! Balance: where does the weight sit?
//!
//! Score S1 = 100·exp(−5·(|X−W/2|+|Y−H/2|)/(W/2+H/2)) of the mass centroid
//! (form of Zhang & Xue, doi:10.3390/sym18010041), shown as a band over the
//! weight of chroma, with DCM (Hübner & Fillinger 2016) and spread (Wilson &
//! Chatterjee 2005) beside it. Craft convention: an observation, silent until
//! asked. In a crop with copy space the type weighs too: nobody knows its
//! colour yet, so it is the blacker or whiter of the two that reads better.
use glam::DVec2;

use super::finding::{Finding, Mark, State};
use super::rules::BALANCE;
use super::study::Study;
use crate::colour::{Lab, Shade, mixed_separation};
use crate::layout::Point;
use crate::measures::{
    SpreadMass, Weighed, balance_score_of, centroid, dcm, offset, score_band, spread,
};
use crate::scene::PartKind;
use crate::shape::Region;
use crate::words::{self, Arg, place, say};

/// Share of a headline's area its letters cover. Our choice.
const INK: f64 = 0.25;
/// A direction counts when it is at least this part of the other. Our choice.
const ASLANT: f64 = 0.5;

fn weights(study: &Study<'_>) -> Vec<Weighed> {
    let mut out: Vec<Weighed> = study
        .dishes()
        .iter()
        .flat_map(|d| d.parts.clone())
        .collect();
    out.extend(copy(study));
    out
}

/// The type of the crop under study.
fn copy(study: &Study<'_>) -> Option<Weighed> {
    let area = study.crop()?.copy.as_ref()?.area;
    let at = study.picture().size * 0.5 + Point::new(area.dx, area.dy).vec();
    let scene = study.scene();
    let on = study.picture().on_table(at);
    let under = scene
        .pieces
        .iter()
        .rev()
        .find(|p| matches!(p.part, PartKind::Table | PartKind::Linen) && p.region.contains(on));
    let ground = under.map_or(scene.floor.as_slice(), |p| p.shades.as_slice());
    let type_in = |l: f64| {
        let lab = Lab { l, a: 0.0, b: 0.0 };
        mixed_separation(&[Shade { lab, share: 1.0 }], ground)
    };
    let (black, white) = (type_in(0.0)?, type_in(100.0)?);
    let reads = if black.hyab > white.hyab {
        black
    } else {
        white
    };
    Some(Weighed {
        at,
        area: f64::from(area.width) * f64::from(area.depth) * INK,
        delta_l: reads.delta_l,
        delta_c: reads.delta_c,
        emphasis: 1.0,
    })
}

/// S1 at chroma weight 1; `None` when nothing weighs anything.
pub(super) fn score(study: &Study<'_>) -> Option<f64> {
    balance_score_of(study.picture().size, &weights(study), 1.0)
}

/// Where the weight sits.
pub(super) fn read(study: &Study<'_>) -> Option<Finding> {
    if !study.has_three_dishes() {
        return None;
    }
    let parts = weights(study);
    let picture = study.picture();
    let score = balance_score_of(picture.size, &parts, 1.0)?;
    let masses: Vec<_> = parts.iter().map(|p| p.mass(1.0)).collect();
    let centre = centroid(&masses)?;
    let aside = score < BALANCE.edges[0];
    let state = if aside {
        State::LookAgain
    } else {
        State::Holds
    };
    let mut f = Finding::by(&BALANCE, "balance".into(), (state, 3), score, Vec::new());
    f.marks = vec![Mark::Arrow {
        from: picture.at,
        to: picture.on_table(centre),
    }];
    f.sentence = study.sentence(|| {
        let id = if aside {
            "balance-lean"
        } else if score < BALANCE.edges[1] {
            "balance-slight"
        } else {
            "balance-holds"
        };
        let args = [("place", Arg::Text(side(study, centre)))];
        say(id, &args)
    });
    f.working = study.tell(|| working(study, &parts, centre).unwrap_or_default());
    Some(f)
}

/// The direction of the weight as a place of the picture: carried out to the
/// thirds, since the centroid never gets far from the middle itself. Across
/// and down count by their share of the picture, whatever its proportions.
fn side(study: &Study<'_>, centre: DVec2) -> String {
    let picture = study.picture();
    let share = (centre - picture.size * 0.5) / picture.size;
    let most = share.abs().max_element();
    let sign = |c: f64| {
        if most > 0.0 && c.abs() >= ASLANT * most {
            c.signum()
        } else {
            0.0
        }
    };
    let out = DVec2::new(sign(share.x), sign(share.y)) * 0.4;
    let at = picture.on_table((out + 0.5) * picture.size);
    let mut frame = study.layout().frame.clone();
    if let Some(crop) = study.crop() {
        frame.at = crop.at;
        frame.width = crop.width;
    }
    place(Point::nearest(at), &frame)
}

fn working(study: &Study<'_>, parts: &[Weighed], centre: DVec2) -> Option<Vec<String>> {
    let size = study.picture().size;
    let [low, high] = score_band(size, parts)?;
    let off = offset(size, centre)?;
    let whole = |x: f64| Arg::Text(words::whole(x));
    let band = [("low", whole(low)), ("high", whole(high))];
    let aside = [
        ("dcm", whole(dcm(off))),
        ("dx", whole(off.dx * 100.0)),
        ("dy", whole(off.dy * 100.0)),
    ];
    let mut lines = vec![
        say("working-balance", &band),
        say("working-balance-off", &aside),
    ];
    if let Some(s) = spread_of(study) {
        let args = [
            ("score", whole(s.score())),
            ("left", whole(s.left_right)),
            ("top", whole(s.top_bottom)),
            ("diagonals", whole((s.falling + s.rising) * 0.5)),
            (
                "inner",
                whole((s.columns + s.rows + s.along_falling + s.along_rising) * 0.25),
            ),
        ];
        lines.push(say("working-balance-spread", &args));
    }
    Some(lines)
}

/// Spread S2 of all that weighs, by exact areas.
fn spread_of(study: &Study<'_>) -> Option<crate::measures::Spread> {
    let (scene, picture) = (study.scene(), study.picture());
    let mut laid: Vec<(Region, f64)> = Vec::new();
    for dish in study.dishes() {
        for (part, n) in dish.parts.iter().zip(&dish.pieces) {
            let region = scene.seen(*n).carried(|p| picture.of_table(p));
            laid.push((
                region,
                part.mass(1.0).mass / part.area.max(f64::MIN_POSITIVE),
            ));
        }
    }
    let masses: Vec<SpreadMass<'_>> = laid
        .iter()
        .map(|(region, density)| SpreadMass {
            region,
            density: *density,
        })
        .collect();
    spread(picture.size, &masses)
}
