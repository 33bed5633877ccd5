//! The level surfaces that shine, and what is seen mirrored in each.
use glam::DVec2;

use super::super::finding::Mark;
use super::super::rules::GLARE;
use super::super::study::Study;
use crate::catalogue::{Kind, kind_of};
use crate::layout::{Finish, Id, Item, Role};
use crate::light::{MIRRORED, Mirror, Mirrored};
use crate::optics::View;
use crate::scene::{PartKind, effective_role, rise, root};
use crate::shape::{Bounds, Region, difference, intersection, union};

/// Dishes up to this height have a flat floor, mm: plates. Our choice.
const FLAT: i32 = 30;
/// That floor above what the dish stands on, mm, and the most it is of its
/// height; as food lies on it.
const FLOOR: f64 = 6.0;
const FLOOR_SHARE: f64 = 0.3;

/// A surface and what is mirrored in it. Places as they are seen on the table
/// plane, mm.
pub(super) struct Glare {
    /// Whose surface it is; the table's own id for the table.
    pub(super) id: Id,
    /// Its part in the picture.
    pub(super) role: Role,
    /// Whether it is a liquid, which stays level.
    pub(super) liquid: bool,
    /// Whether it only gleams.
    pub(super) sheen: bool,
    /// The surface as a mirror.
    pub(super) mirror: Mirror,
    /// What is seen of it, mm²; of the picture for the table.
    pub(super) whole: f64,
    /// Its box, mm.
    pub(super) bounds: Option<Bounds>,
    /// All that is mirrored, as an area.
    pub(super) patch: Region,
    /// Each thing mirrored, and how much of the surface it takes.
    parts: Vec<(Mirrored, f64)>,
}

impl Glare {
    /// Share of the surface that mirrors something.
    pub(super) fn share(&self) -> f64 {
        self.patch.area() / self.whole.max(f64::MIN_POSITIVE)
    }

    /// What it mirrors over enough of it to be told, in their order.
    pub(super) fn causes(&self) -> Vec<Mirrored> {
        let enough = |part: &&(Mirrored, f64)| part.1 >= GLARE.edges[0];
        self.parts
            .iter()
            .filter(enough)
            .map(|part| part.0)
            .collect()
    }

    /// Whether it is worth another look: enough of a liquid or a main dish.
    pub(super) fn presses(&self) -> bool {
        let main = self.liquid || matches!(self.role, Role::Hero | Role::Support);
        main && self.share() >= GLARE.edges[1]
    }

    /// The outlines to draw.
    pub(super) fn marks(&self) -> impl Iterator<Item = Mark> + '_ {
        let rings = self.patch.rings().iter();
        rings.map(|ring| Mark::Glare {
            outline: ring.clone(),
        })
    }

    /// Every corner of what is mirrored.
    pub(super) fn points(&self) -> impl Iterator<Item = DVec2> + '_ {
        self.patch.rings().iter().flatten().copied()
    }

    /// A place on the surface itself, from where it is seen.
    pub(super) fn on_surface(&self, seen: DVec2) -> DVec2 {
        let m = &self.mirror;
        m.under + (seen - m.under) * (m.above / (m.above + m.level))
    }

    /// The middle of what is mirrored, on the surface itself.
    pub(super) fn middle(&self) -> Option<DVec2> {
        self.patch.centroid().map(|c| self.on_surface(c))
    }
}

/// Every thing with a level surface that mirrors anything, by number.
pub(super) fn glares(study: &Study<'_>) -> Vec<Glare> {
    let scene = study.scene();
    let View::Lens { under, height } = scene.view else {
        return Vec::new();
    };
    let mut out = Vec::new();
    for item in &study.layout().items {
        let Some((part, level)) = surface(study, item) else {
            continue;
        };
        let piece = scene
            .pieces
            .iter()
            .position(|p| p.owner == item.id && p.part == part);
        let Some((piece, mirror)) = piece.zip(Mirror::under_lens(under, height, level)) else {
            continue;
        };
        let Some(bounds) = scene.pieces[piece].region.bounds() else {
            continue;
        };
        let patches = patches(study, (&mirror, item.id), &MIRRORED, bounds);
        if patches.is_empty() {
            continue;
        }
        let seen = scene.seen(piece);
        let patches = patches
            .into_iter()
            .map(|(of, patch)| (of, intersection(&patch, seen).unwrap_or_default()))
            .collect();
        let glare = Glare {
            id: item.id,
            role: effective_role(study.layout(), item),
            liquid: item.finish == Finish::Liquid,
            sheen: false,
            mirror,
            whole: seen.area(),
            bounds: Some(bounds),
            patch: Region::empty(),
            parts: Vec::new(),
        };
        out.extend(glare.with(patches));
    }
    crate::order::sort(&mut out, |a, b| a.id.cmp(&b.id));
    // What together is enough but singly not is told by its largest part.
    for glare in &mut out {
        if glare.causes().is_empty() {
            let most = glare.parts.iter_mut().max_by(|a, b| a.1.total_cmp(&b.1));
            if let Some(most) = most {
                most.1 = GLARE.edges[0];
            }
        }
    }
    out
}

/// What a table that shines mirrors of these.
pub(super) fn table_glare(study: &Study<'_>, of: &[Mirrored]) -> Option<Glare> {
    let layout = study.layout();
    let finish = layout.table.surface.finish;
    let scene = study.scene();
    let View::Lens { under, height } = scene.view else {
        return None;
    };
    if finish == Finish::Matt {
        return None;
    }
    let mirror = Mirror::under_lens(under, height, 0.0)?;
    let piece = scene.pieces.iter().find(|p| p.part == PartKind::Table)?;
    let bounds = scene.frame.bounds()?;
    let patches = patches(study, (&mirror, Id(0)), of, bounds)
        .into_iter()
        .map(|(of, patch)| (of, bare(study, &patch, &piece.region)))
        .collect();
    let glare = Glare {
        id: Id(0),
        role: Role::Filler,
        liquid: false,
        sheen: finish == Finish::Satin,
        mirror,
        whole: scene.frame.area(),
        bounds: None,
        patch: Region::empty(),
        parts: Vec::new(),
    };
    glare.with(patches)
}

impl Glare {
    /// With these patches, when there are any.
    fn with(mut self, patches: Vec<(Mirrored, Region)>) -> Option<Self> {
        let all: Vec<&Region> = patches.iter().map(|p| &p.1).collect();
        self.patch = union(&all).unwrap_or_default();
        let whole = self.whole.max(f64::MIN_POSITIVE);
        self.parts = patches.iter().map(|p| (p.0, p.1.area() / whole)).collect();
        (!self.patch.is_empty()).then_some(self)
    }
}

/// What is left of a patch on the table within the frame and under all that
/// lies on it.
fn bare(study: &Study<'_>, patch: &Region, table: &Region) -> Region {
    let scene = study.scene();
    let framed = intersection(patch, &scene.frame);
    let Some(left) = framed.and_then(|p| intersection(&p, table)).ok() else {
        return Region::empty();
    };
    let Some(own) = left.bounds() else {
        return left;
    };
    let over = scene.pieces.iter().filter(|p| {
        let meets = p.region.bounds().is_some_and(|b| b.meets(own));
        meets && p.part != PartKind::Table
    });
    let over: Vec<&Region> = over.map(|p| &p.region).collect();
    difference(&left, &over).unwrap_or(left)
}

/// What of these the surface of a thing mirrors within a box, as it is seen.
fn patches(
    study: &Study<'_>,
    (mirror, id): (&Mirror, Id),
    of: &[Mirrored],
    bounds: Bounds,
) -> Vec<(Mirrored, Region)> {
    let layout = study.layout();
    let view = study.scene().view;
    let mut out = Vec::new();
    let standing = study.lit().standing(root(layout, id));
    for &each in of {
        let seen = |p: DVec2| view.project(p, mirror.level);
        let wanted = |outline: &[DVec2]| {
            let corners: Vec<DVec2> = outline.iter().map(|p| seen(*p)).collect();
            Bounds::around(&corners).is_some_and(|b| b.meets(bounds))
        };
        let region = each
            .region(layout, mirror, &standing, &wanted)
            .carried(seen);
        if !region.is_empty() {
            out.push((each, region));
        }
    }
    out
}

/// The part of a thing that is a level mirror, and its height above the table.
fn surface(study: &Study<'_>, item: &Item) -> Option<(PartKind, f64)> {
    let reach = rise(study.layout(), item);
    let has = |part: PartKind| {
        let mut pieces = study.scene().pieces.iter();
        pieces.any(|p| p.owner == item.id && p.part == part)
    };
    let kind = kind_of(&item.prop);
    match item.finish {
        // As high as it is drawn: at the mouth of a glass.
        Finish::Liquid => [PartKind::Well, PartKind::Food, PartKind::Rim]
            .into_iter()
            .find(|part| has(*part))
            .map(|part| (part, reach.top)),
        Finish::Gloss if kind == Kind::Board => Some((PartKind::Rim, reach.top)),
        Finish::Gloss if kind == Kind::Vessel && item.height <= FLAT => {
            let floor = FLOOR.min((reach.top - reach.base) * FLOOR_SHARE);
            Some((PartKind::Well, reach.base + floor))
        }
        _ => None,
    }
}
