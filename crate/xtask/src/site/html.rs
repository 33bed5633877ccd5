//! The page's HTML: links to emitted files, or everything within, under a
//! content security policy that allows nothing else.

use anyhow::{Result, bail};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;

use super::digest::integrity;

const CHARSET: &str = r#"<meta charset="utf-8">"#;
const STYLE: &str = r#"<link rel="stylesheet" href="style.css">"#;
const SCRIPT: &str = r#"<script type="module" src="main.js"></script>"#;
const ICON: &str = r#"<link rel="icon" href="icon.svg" type="image/svg+xml">"#;
const MANIFEST: &str = r#"<link rel="manifest" href="manifest.webmanifest">"#;
const TOUCH_ICON: &str = r#"<link rel="apple-touch-icon" href="icon-180.png">"#;

/// What no page of ours does: frame, post a form, rebase its links, or turn a
/// string into script outside the one policy that checks worker addresses.
const ALWAYS: &str = "base-uri 'none'; form-action 'none'; \
                      require-trusted-types-for 'script'; trusted-types overspread";

/// An emitted file the page links to.
pub(super) struct Linked<'a> {
    /// Its name beside the page.
    pub(super) name: &'a str,
    /// What it holds.
    pub(super) content: &'a [u8],
}

/// The page with a link to its style sheet, and within it the script that it
/// begins with, so that this is not waited for; each with its hash.
///
/// # Errors
/// When the template does not hold each thing to be replaced exactly once, or
/// the script would end its own element.
pub(super) fn site(template: &str, style: &Linked, begin: &[u8]) -> Result<String> {
    let begin = inlined(begin, "script")?;
    let (style_hash, script_hash) = (integrity(style.content), integrity(begin.as_bytes()));
    let policy = format!(
        "default-src 'none'; script-src 'self' '{script_hash}' 'wasm-unsafe-eval'; \
         style-src 'self' '{style_hash}'; img-src 'self' blob: data:; connect-src 'self'; \
         worker-src 'self' blob:; manifest-src 'self'; {ALWAYS}"
    );
    let style_link = format!(
        r#"<link rel="stylesheet" href="{}" integrity="{style_hash}">"#,
        style.name
    );
    let page = with_policy(template, &policy)?;
    // Before the style sheet, which it would wait for.
    let head = format!("<script>{begin}</script>\n{style_link}");
    let page = replaced(&page, STYLE, &head)?;
    replaced(&page, SCRIPT, "")
}

/// The page with style sheet, script and icon within.
///
/// # Errors
/// As [`site`]; also when the script or style sheet would end its own element.
pub(super) fn single(template: &str, style: &[u8], script: &[u8], icon: &[u8]) -> Result<String> {
    let style = inlined(style, "style")?;
    let script = inlined(script, "script")?;
    let policy = format!(
        "default-src 'none'; script-src '{}' 'wasm-unsafe-eval'; style-src '{}'; \
         img-src blob: data:; worker-src blob:; {ALWAYS}",
        integrity(script.as_bytes()),
        integrity(style.as_bytes()),
    );
    let icon = format!(
        r#"<link rel="icon" href="data:image/svg+xml;base64,{}">"#,
        STANDARD.encode(icon)
    );
    let page = with_policy(template, &policy)?;
    let page = replaced(&page, MANIFEST, "")?;
    let page = replaced(&page, TOUCH_ICON, "")?;
    let page = replaced(&page, ICON, &icon)?;
    let page = replaced(&page, STYLE, &format!("<style>{style}</style>"))?;
    replaced(
        &page,
        SCRIPT,
        &format!(r#"<script type="module">{script}</script>"#),
    )
}

/// The template of a page that runs from right to left, or as it is.
///
/// # Errors
/// As [`site`].
pub(super) fn directed(template: String, right_to_left: bool) -> Result<String> {
    if !right_to_left {
        return Ok(template);
    }
    replaced(
        &template,
        "<html lang=\"en\">",
        "<html lang=\"en\" dir=\"rtl\">",
    )
}

/// Puts the policy before anything it is to rule.
fn with_policy(template: &str, policy: &str) -> Result<String> {
    let meta =
        format!("{CHARSET}\n<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">");
    replaced(template, CHARSET, &meta)
}

fn replaced(page: &str, from: &str, to: &str) -> Result<String> {
    match page.matches(from).count() {
        1 => Ok(page.replacen(from, to, 1)),
        count => bail!("www/index.html must hold `{from}` once, and holds it {count} times"),
    }
}

/// Text that may stand inside `<element>` without ending it.
fn inlined<'a>(content: &'a [u8], element: &str) -> Result<&'a str> {
    let text = std::str::from_utf8(content)?.trim();
    let lower = text.to_ascii_lowercase();
    for end in [format!("</{element}"), "<!--".to_owned()] {
        if lower.contains(&end) {
            bail!("the {element} holds `{end}` and cannot be put inside the page");
        }
    }
    Ok(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn template() -> String {
        [CHARSET, STYLE, SCRIPT, ICON, MANIFEST, TOUCH_ICON].join("\n")
    }

    #[test]
    fn the_policy_stands_before_every_link() {
        let linked = Linked {
            name: "a-1.css",
            content: b"a{}",
        };
        let page = site(&template(), &linked, b"let b=2").expect("a whole template");
        let policy = page.find("Content-Security-Policy").expect("a policy");
        let link = page.find("a-1.css").expect("the style sheet");
        assert!(policy < link, "a policy rules only what follows it: {page}");
        assert!(
            page.contains(&integrity(b"let b=2")),
            "the script's hash is allowed: {page}"
        );
        assert!(
            !page.contains("unsafe-inline"),
            "no other script within: {page}"
        );
    }

    #[test]
    fn the_single_file_refers_to_nothing() {
        let page = single(&template(), b"a{}", b"let a=1", b"<svg/>").expect("a whole template");
        for word in ["src=", "manifest", "href=\"icon", "'self'"] {
            assert!(!page.contains(word), "`{word}` would reach outside: {page}");
        }
        assert!(
            page.contains(&integrity(b"let a=1")),
            "the script's hash is allowed: {page}"
        );
    }

    #[test]
    fn a_template_without_its_script_is_refused() {
        let error = single(&template().replace(SCRIPT, ""), b"", b"", b"").expect_err("refused");
        assert!(
            error.to_string().contains("main.js"),
            "the message names it: {error}"
        );
    }

    #[test]
    fn a_script_that_ends_its_element_is_refused() {
        let error = single(&template(), b"", b"'</SCRIPT>'", b"").expect_err("refused");
        assert!(
            error.to_string().contains("</script"),
            "the message names it: {error}"
        );
    }
}
