//! The drawing as it stands on the page: keyed groups, of which only those
//! that changed are made again.

use glam::DVec2;
use planner::drawing::{Again, Keyed, translation};
use svg::node::element::Group;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Document, Element};

use crate::dom;

/// Set on what is in hand.
const LIFTED: &str = "data-lifted";

struct Held {
    key: String,
    /// The group as text, to tell whether it changed.
    text: String,
    node: Element,
    place: Option<DVec2>,
    lifted: bool,
}

impl Held {
    fn lift(&mut self, up: bool) {
        if self.lifted != up {
            // No page refuses this name.
            self.node.toggle_attribute_with_force(LIFTED, up).ok();
            self.lifted = up;
        }
    }
}

/// The groups under one element of the page, bottom to top.
pub(crate) struct Sheet {
    root: Element,
    document: Document,
    held: Vec<Held>,
}

impl Sheet {
    /// Takes over `root`, which must be empty.
    pub(crate) fn new(root: Element) -> Result<Self, JsValue> {
        let document = root
            .owner_document()
            .ok_or_else(|| JsValue::from_str("the drawing stands in no page"))?;
        root.set_text_content(None);
        Ok(Self {
            root,
            document,
            held: Vec::new(),
        })
    }

    /// Brings the page to `groups`; returns how many groups were made anew.
    pub(crate) fn patch(&mut self, groups: Vec<Keyed>) -> Result<u32, JsValue> {
        self.patch_again(groups.into_iter().map(Again::from).collect())
    }

    /// As [`Self::patch`], where some stand there already.
    pub(crate) fn patch_again(&mut self, groups: Vec<Again>) -> Result<u32, JsValue> {
        let mut before = std::mem::take(&mut self.held);
        let mut made = 0;
        let mut last: Option<web_sys::Node> = None;
        for keyed in groups {
            let text = keyed.group.as_ref().map(ToString::to_string);
            let found = before.iter().position(|held| held.key == keyed.key);
            let found = found.map(|place| before.swap_remove(place));
            let (node, text) = match (found, keyed.group) {
                (Some(mut held), group) if group.is_none() || text.as_ref() == Some(&held.text) => {
                    held.lift(false);
                    (held.node, held.text)
                }
                (other, Some(group)) => {
                    let node = dom::element(&self.document, &group)?;
                    node.set_attribute("data-key", &keyed.key)?;
                    if let Some(old) = other {
                        old.node.remove();
                    }
                    made += 1;
                    (node, text.unwrap_or_default())
                }
                (_, None) => return Err(JsValue::from_str("what was drawn last is not there")),
            };
            set_place(&node, keyed.at, DVec2::ZERO)?;
            let next = match &last {
                Some(last) => last.next_sibling(),
                None => self.root.first_child(),
            };
            let stands = next
                .as_ref()
                .is_some_and(|next| next.is_same_node(Some(&node)));
            if !stands {
                self.root.insert_before(&node, next.as_ref())?;
            }
            last = Some(node.clone().unchecked_into());
            self.held.push(Held {
                key: keyed.key,
                text,
                node,
                place: keyed.at,
                lifted: false,
            });
        }
        for held in before {
            held.node.remove();
        }
        Ok(made)
    }

    /// Makes one group anew where it stands; nothing when there is none.
    pub(crate) fn replace(&mut self, key: &str, group: &Group) -> Result<(), JsValue> {
        let Some(held) = self.held.iter_mut().find(|held| held.key == key) else {
            return Ok(());
        };
        let text = group.to_string();
        if text == held.text {
            return Ok(());
        }
        let node = dom::element(&self.document, group)?;
        node.set_attribute("data-key", key)?;
        if held.lifted {
            node.toggle_attribute_with_force(LIFTED, true)?;
        }
        self.root.replace_child(&node, &held.node)?;
        (held.text, held.node) = (text, node);
        Ok(())
    }

    /// Tells the page that the groups whose key `moves` accepts are in hand,
    /// and no others.
    pub(crate) fn lift(&mut self, moves: impl Fn(&str) -> bool) {
        for held in &mut self.held {
            held.lift(moves(&held.key));
        }
    }

    /// Shows a group that lies where it is drawn moved and turned: `pose` is a
    /// `transform`, empty for none.
    pub(crate) fn pose(&self, key: &str, pose: &str) -> Result<(), JsValue> {
        for held in self.held.iter().filter(|held| held.key == key) {
            if pose.is_empty() {
                held.node.remove_attribute("transform")?;
            } else {
                held.node.set_attribute("transform", pose)?;
            }
        }
        Ok(())
    }

    /// Shows the groups whose key `moves` accepts displaced by `by`, mm.
    pub(crate) fn shift(&self, moves: impl Fn(&str) -> bool, by: DVec2) -> Result<(), JsValue> {
        for held in self.held.iter().filter(|held| moves(&held.key)) {
            set_place(&held.node, held.place, by)?;
        }
        Ok(())
    }
}

fn set_place(node: &Element, place: Option<DVec2>, by: DVec2) -> Result<(), JsValue> {
    let by = place.unwrap_or_default() + by;
    if by == DVec2::ZERO {
        return node.remove_attribute("transform");
    }
    node.set_attribute("transform", &translation(by))
}
