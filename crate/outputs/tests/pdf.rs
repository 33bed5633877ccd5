//! Documents as outside readers see them, and what is refused.
use outputs::{Fault, Meta, pdf};

const META: Meta = Meta {
    title: "Harbour supper",
    language: "en",
};

#[test]
fn the_same_drawing_gives_the_same_bytes_and_nothing_of_the_hour() {
    let svg = r##"<svg xmlns="http://www.w3.org/2000/svg" width="210mm" height="297mm" viewBox="0 0 210 297">
        <g opacity=".5"><circle cx="50" cy="50" r="20" fill="#804000" stroke="#000"/></g>
        <text x="20" y="100" font-size="6">Mussels, aubergine &#x2068;Żółć&#x2069;</text></svg>"##;
    let made = pdf(&[svg, svg], &META).expect("drawn");
    assert_eq!(
        made,
        pdf(&[svg, svg], &META).expect("drawn"),
        "twice the same"
    );
    assert!(made.missing.is_empty(), "{:?}", made.missing);
    let text = String::from_utf8_lossy(&made.bytes);
    for dated in ["CreationDate", "ModDate", "/ID"] {
        assert!(!text.contains(dated), "{dated} would change with the hour");
    }
    let boxes = text.matches("/MediaBox[0 0 595.2756 841.8898]").count();
    let loose = text.matches("/MediaBox [0 0 595.2756 841.8898]").count();
    assert_eq!(
        boxes + loose,
        2,
        "A4 is 210 mm / 25.4 × 72 points wide, on both pages"
    );
}

#[test]
fn letters_without_a_shape_are_told() {
    let svg =
        r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><text>Fish 魚</text></svg>"#;
    let made = pdf(&[svg], &META).expect("drawn");
    assert_eq!(made.missing, ['魚']);
}

#[test]
fn what_would_be_left_out_is_refused() {
    let within = |inside: &str| {
        let svg =
            format!(r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">{inside}</svg>"#);
        pdf(&[svg.as_str()], &META).map(|made| made.bytes.len())
    };
    for (inside, told) in [
        ("<image/>", "<image> is not drawn"),
        ("<path filter='url(#a)'/>", "filter of <path> is not drawn"),
        ("<g style='fill:red'/>", "style of <g> is not drawn"),
        (
            "<path fill='url(#a)' d='M0 0h1'/>",
            "fill of <path> is not read: url(#a)",
        ),
        ("<path d='M0 0 L'/>", "d of <path> is not read: M0 0 L"),
        (
            "<g clip-path='url(#none)'/>",
            "clip-path of <g> is not read: url(#none)",
        ),
        ("<text x='a'>b</text>", "x of <text> is not read: a"),
        ("<text>a<tspan>b</tspan></text>", "<tspan> is not drawn"),
        (
            "<path stroke-width='NaN'/>",
            "stroke-width of <path> is not read: NaN",
        ),
    ] {
        let fault = within(inside).expect_err(inside);
        assert_eq!(fault.to_string(), told, "{inside}");
    }
    assert_eq!(pdf(&["<svg/>"], &META), Err(Fault::Size), "no size");
    assert!(
        matches!(pdf(&["<svg"], &META), Err(Fault::Markup(_))),
        "no XML"
    );
    let flat = r#"<svg xmlns="http://www.w3.org/2000/svg" width="0" height="9"/>"#;
    assert_eq!(pdf(&[flat], &META), Err(Fault::Size), "flat");
}
