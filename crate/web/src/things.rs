//! Acts on single things: what is added, what each is to the picture, and what
//! crops keep of them.
use planner::commands::{self, HandsWish, Own, OwnShape, Page, Refused, SettingsWish};
use planner::edit::Run;
use planner::layout::{CardKind, Id, LayoutId, Point, Ratio, Role, Srgb};
use planner::words::{mass, say, set_length};
use serde::Deserialize;
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::acts::{during, spoken};
use crate::objects::asked;

/// A thing of one's own by outline, size and colour.
#[derive(Deserialize)]
struct OwnWish {
    name: String,
    shape: String,
    across: i32,
    down: i32,
    dish: String,
    food: Option<String>,
    at: [i32; 2],
    /// The outline of what is traced.
    #[serde(default)]
    points: Vec<[i32; 2]>,
}

#[wasm_bindgen]
impl Planner {
    /// Gives a thing its part in the picture, during a visit to a field or 0.
    ///
    /// # Errors
    /// When nobody knows that part, or something that changes is locked.
    pub fn set_role(&mut self, id: u16, role: JsValue, visit: u32) -> Result<JsValue, JsError> {
        let role: Role = asked(role)?;
        let act = commands::set_role(self.now(), Id(id), role)?;
        self.make(act, during(visit))
    }

    /// Resizes a thing, mm, during a visit to a field or 0.
    ///
    /// # Errors
    /// When it is locked or would leave the limits.
    pub fn resize(
        &mut self,
        id: u16,
        width: i32,
        depth: i32,
        visit: u32,
    ) -> Result<JsValue, JsError> {
        let act = commands::resize(self.now(), Id(id), [width, depth])?;
        self.make(act, during(visit))
    }

    /// A length in mm as it stands where it is set, in the layout's units.
    #[must_use]
    pub fn length(&self, mm: f64) -> String {
        set_length(mm, self.now().head.units)
    }

    /// A mass in grams, in the layout's units.
    #[must_use]
    pub fn mass(&self, grams: f64) -> String {
        mass(grams, self.now().head.units)
    }

    /// Has a crop show a thing whole, or no longer.
    ///
    /// # Errors
    /// When there is no such crop.
    pub fn must_show(&mut self, crop: u16, thing: u16) -> Result<JsValue, JsError> {
        let act = commands::must_show(self.now(), Id(crop), Id(thing))?;
        self.make(act, Run::Alone)
    }

    /// Adds a thing of the catalogue at a place, mm; food comes into the dish
    /// `onto`, 0 for none.
    ///
    /// # Errors
    /// When nobody knows it, or the table is full.
    pub fn add(&mut self, prop: &str, x: i32, y: i32, onto: u16) -> Result<JsValue, JsError> {
        let onto = Some(Id(onto)).filter(|id| id.0 != 0);
        let act = commands::add(self.now(), &self.scene, prop, Point::new(x, y), onto)?;
        self.make(act, Run::Alone)
    }

    /// Adds what was kept of a thing, at a place, mm.
    ///
    /// # Errors
    /// Every problem of the file, or the table is full.
    pub fn add_kept(&mut self, file: &str, x: i32, y: i32) -> Result<JsValue, JsError> {
        let kept = planner::layout::open(file).map_err(|problems| spoken(&problems))?;
        let act = commands::add_kept(self.now(), &kept, Point::new(x, y))?;
        self.make(act, Run::Alone)
    }

    /// A thing and what stands on it as a file of their own under this
    /// identity; empty when there is no such thing.
    ///
    /// # Errors
    /// When the identity is not 16 hex digits.
    pub fn kept(&self, id: u16, own: &str) -> Result<String, JsError> {
        let own = LayoutId(u64::from_str_radix(own, 16)?);
        let alone = commands::kept(self.now(), Id(id), own);
        Ok(alone.map_or_else(String::new, |alone| alone.to_json()))
    }

    /// Lays the spread on another surface of the catalogue.
    ///
    /// # Errors
    /// When nobody knows it.
    pub fn set_surface(&mut self, prop: &str) -> Result<JsValue, JsError> {
        let act = commands::set_surface(self.now(), prop)?;
        self.make(act, Run::Alone)
    }

    /// Puts the mast down beside the table.
    ///
    /// # Errors
    /// When something locked would change.
    pub fn place_stand(&mut self) -> Result<JsValue, JsError> {
        let act = commands::place_stand(self.now())?;
        self.make(act, Run::Alone)
    }

    /// Puts the photographer down beside the table.
    ///
    /// # Errors
    /// When something locked would change.
    pub fn place_photographer(&mut self) -> Result<JsValue, JsError> {
        let act = commands::place_photographer(self.now())?;
        self.make(act, Run::Alone)
    }

    /// Adds a thing of one's own by outline, size and colour, with its food.
    ///
    /// # Errors
    /// When a figure is out of range or the table is full.
    pub fn add_own(&mut self, wish: JsValue) -> Result<JsValue, JsError> {
        let wish: OwnWish = asked(wish)?;
        let colour =
            |text: &str| Srgb::parse(text).ok_or_else(|| JsError::new(&say("refused-colour", &[])));
        let points = wish.points.iter().map(|[x, y]| Point::new(*x, *y));
        let shape = OwnShape::of(&wish.shape, points.collect());
        let own = Own {
            name: &wish.name,
            shape: shape.ok_or_else(|| Refused::Unknown(wish.shape.clone()))?,
            across: wish.across,
            down: wish.down,
            dish: colour(&wish.dish)?,
            food: wish.food.as_deref().map(colour).transpose()?,
            at: Point::new(wish.at[0], wish.at[1]),
        };
        let act = commands::add_own(self.now(), &own)?;
        self.make(act, Run::Alone)
    }

    /// Lays place settings round the table, as many as fit.
    ///
    /// # Errors
    /// When nobody knows the setting, or not one fits.
    pub fn lay_places(&mut self, wish: JsValue) -> Result<JsValue, JsError> {
        let wish: SettingsWish = asked(wish)?;
        let act = commands::lay_places(self.now(), &wish)?;
        self.make(act, Run::Alone)
    }

    /// Sets one hand or a pair to an action, in an exposure of its own.
    ///
    /// # Errors
    /// When the item is not there or there are too many hands.
    pub fn add_hands(&mut self, wish: JsValue) -> Result<JsValue, JsError> {
        let wish: HandsWish = asked(wish)?;
        let act = commands::add_hands(self.now(), &wish)?;
        self.make(act, Run::Alone)
    }

    /// Adds a crop of this ratio, as large as the frame allows.
    ///
    /// # Errors
    /// When the ratio or the number of crops is out of range.
    pub fn add_crop(&mut self, name: &str, width: u16, height: u16) -> Result<JsValue, JsError> {
        let act = commands::add_crop(self.now(), name, Ratio { width, height })?;
        self.make(act, Run::Alone)
    }

    /// Adds a page in print, with bleed and safe margin: `a4` or `inches`, and
    /// `double` or `double-inches` with a gutter.
    ///
    /// # Errors
    /// When there are too many crops.
    pub fn add_page(&mut self, name: &str, page: &str) -> Result<JsValue, JsError> {
        let page = match page {
            "a4" => Page::A4,
            "inches" => Page::Inches,
            "double-inches" => Page::DoubleInches,
            _ => Page::Double,
        };
        let act = commands::add_page(self.now(), name, page)?;
        self.make(act, Run::Alone)
    }

    /// Adds a print of this trimmed size, mm, with bleed and safe margin.
    ///
    /// # Errors
    /// When there are too many crops, or no print has this size.
    pub fn add_print(&mut self, name: &str, width: i32, height: i32) -> Result<JsValue, JsError> {
        let act = commands::add_print(self.now(), name, [width, height])?;
        self.make(act, Run::Alone)
    }

    /// Stands a card beside the picture, white or black.
    ///
    /// # Errors
    /// When there are too many cards.
    pub fn add_card(&mut self, white: bool) -> Result<JsValue, JsError> {
        let kind = if white {
            CardKind::White
        } else {
            CardKind::Black
        };
        let act = commands::add_card(self.now(), kind)?;
        self.make(act, Run::Alone)
    }

    /// Keeps copy space in the upper part of a crop.
    ///
    /// # Errors
    /// When there is no such crop.
    pub fn keep_copy_space(&mut self, id: u16) -> Result<JsValue, JsError> {
        let act = commands::keep_copy_space(self.now(), Id(id))?;
        self.make(act, Run::Alone)
    }
}
