//! Nodes of the drawing as nodes of the page; no markup is parsed on the way.
use svg::Node;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Document, Element};

/// The namespace of every element of a drawing.
const NAMESPACE: &str = "http://www.w3.org/2000/svg";

/// Makes `node` and all below it; attributes of a name the page refuses are an
/// error, not left out.
pub(crate) fn made(document: &Document, node: &dyn Node) -> Result<web_sys::Node, JsValue> {
    let Some(attributes) = node.get_attributes() else {
        return Ok(document.create_text_node(&plain(&node.to_string())).into());
    };
    let element = document.create_element_ns(Some(NAMESPACE), node.get_name())?;
    for (name, value) in attributes {
        element.set_attribute(name, value)?;
    }
    for child in node.get_children().into_iter().flatten() {
        element.append_child(&made(document, child.as_ref())?)?;
    }
    Ok(element.into())
}

/// As [`made`], for what is known to be an element.
pub(crate) fn element(document: &Document, node: &dyn Node) -> Result<Element, JsValue> {
    Ok(made(document, node)?.dyn_into::<Element>()?)
}

/// Text as it reads, from how it stands in a file.
fn plain(escaped: &str) -> String {
    escaped
        .replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&amp;", "&")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_comes_back_as_it_was_put_in() {
        for text in ["oil & salt", "a < b > c", "&lt;b&gt;", "&amp;amp;"] {
            let node = svg::node::Text::new(text);
            assert_eq!(
                plain(&node.to_string()),
                text,
                "`{text}` through the file form"
            );
        }
    }
}
