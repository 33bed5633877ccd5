//! What a thing is: its part in the picture and its size.
use super::trace::refused;
use super::{Act, Refused, called, name_of};
use crate::layout::{Id, Layout, Role, Size};
use crate::shape::scaled;

/// Gives an item its part in the picture. There is one hero: the one before it
/// becomes a main dish.
///
/// # Errors
/// When an item that would change is locked.
pub fn set_role(layout: &Layout, id: Id, role: Role) -> Result<Act, Refused> {
    let mut after = layout.clone();
    for item in &mut after.items {
        if item.id == id {
            item.role = role;
        } else if role == Role::Hero && item.role == Role::Hero {
            item.role = Role::Support;
        }
    }
    Act::between(called("done-role", &name_of(layout, id)), layout, &after)
}

/// Resizes an item; its rim and corners stay within it. A traced outline
/// keeps its shape: the side that is asked for leads.
///
/// # Errors
/// When it is locked, or an outline would be too small or too large.
pub fn resize(layout: &Layout, id: Id, [wide, deep]: [i32; 2]) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let most = wide.min(deep) / 2;
    for item in after.items.iter_mut().filter(|o| o.id == id) {
        let extent = item.size.extent();
        match &mut item.size {
            Size::Disc { diameter, rim } => {
                *diameter = wide;
                *rim = (*rim).min(wide / 2);
            }
            Size::Rect {
                width,
                depth,
                corner,
                rim,
            } => {
                [*width, *depth] = [wide, deep];
                [*corner, *rim] = [(*corner).min(most), (*rim).min(most)];
            }
            Size::Oval { width, depth, rim } => {
                [*width, *depth] = [wide, deep];
                *rim = (*rim).min(most);
            }
            Size::Outline { points } => {
                let [now, deep_now] = extent;
                let (to, from) = if wide == now {
                    (deep, deep_now)
                } else {
                    (wide, now)
                };
                let factor = f64::from(to) / f64::from(from.max(1));
                *points = scaled(points, factor).map_err(|fault| refused(layout, fault))?;
            }
        }
    }
    Act::between(called("done-resized", &name_of(layout, id)), layout, &after)
}
