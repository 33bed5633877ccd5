//! Papers are those that other programs judged: pages exact to 0.1 mm, check
//! bars of 100 ± 0.2 mm in pixels at 300 dpi, ink 10 mm from every edge,
//! embedded fonts and readable words (poppler and pypdf, `generate_papers.py`).
use outputs::{Meta, pdf};
use outside_checks::tree::read;
use outside_checks::{Table, fnv};
use planner::layout::open;
use planner::papers::crockery;

#[test]
fn paper_crockery_is_what_was_rastered_and_measured() {
    let table = Table::read("papers.csv");
    let mut seen = 0;
    for row in table.rows() {
        let (starter, paper) = row.text("file").split_once(' ').expect("layout and paper");
        let text = read(&format!("../static/starters/{starter}.spread.json"));
        let layout = open(&text).expect("sound");
        let size = match paper {
            "a4" => [210.0, 297.0],
            _ => [215.9, 279.4],
        };
        let pages = crockery(&layout, size);
        let meta = Meta {
            title: &layout.head.title,
            language: "en",
        };
        let texts: Vec<&str> = pages.iter().map(String::as_str).collect();
        let made = pdf(&texts, &meta).expect("drawn");
        assert!(made.missing.is_empty(), "{starter}: {:?}", made.missing);
        let judged = row.text("fnv");
        assert_eq!(
            fnv(&made.bytes),
            judged,
            "{starter} {paper}: run generate_papers.py"
        );
        seen += 1;
    }
    assert_eq!(seen, 6, "three starters on two papers");
}
