//! Layouts for tests, each as small as what it shows.
use super::{Finding, Kept, Report, Settling, Study, report};
use crate::layout::{Id, Layout, LayoutId, open};

/// A pale board of 1200 × 900 mm under a 3:2 frame of 1050 × 700 mm in its
/// middle, with what `more` adds at the top level.
pub(super) fn laid(more: &str) -> Layout {
    let text = Layout::empty(LayoutId(1)).to_json();
    let mut file: serde_json::Value = serde_json::from_str(&text).expect("JSON");
    let more: serde_json::Value = serde_json::from_str(&format!("{{{more}}}")).expect("JSON");
    for (key, value) in more.as_object().expect("an object") {
        file[key] = value.clone();
    }
    file["next_id"] = 90.into();
    open(&file.to_string()).unwrap_or_else(|p| panic!("the layout is sound: {p:?}"))
}

/// A dark disc of a dish without rim.
pub(super) fn disc(id: u16, x: i32, y: i32, diameter: i32, role: &str) -> String {
    format!(
        r##"{{"id":{id},"number":{id},"name":"dish {id}","prop":"pot","height":0,"at":[{x},{y}],
        "size":{{"shape":"disc","diameter":{diameter}}},"role":"{role}",
        "parts":{{"rim":{{"colours":[{{"srgb":"#20242a","share":100}}]}}}}}}"##
    )
}

/// Everything there is to say, with remedies.
pub(super) fn read(layout: &Layout) -> Vec<Finding> {
    report(&Study::new(layout), true).findings
}

/// The finding of this key.
pub(super) fn said(layout: &Layout, key: &str) -> Option<Finding> {
    read(layout).into_iter().find(|f| f.key == key)
}

/// A report in the making, each step ended as soon as `go_on` says; with what is
/// kept and the count of steps.
pub(super) fn sliced(mut settling: Settling, go_on: &dyn Fn() -> bool) -> (Report, Kept, usize) {
    for steps in 1..100_000 {
        if let Some(report) = settling.step(go_on) {
            return (report, settling.keep(), steps);
        }
    }
    panic!("a slice that finds out nothing new");
}

/// The layout after the remedy of this finding, which is the same when it is
/// looked for in the smallest slices.
pub(super) fn after(layout: &Layout, finding: &Finding) -> Layout {
    let slices = sliced(Settling::begin(layout, None, Id(0)), &|| false).0;
    let same = slices.findings.iter().find(|f| f.key == finding.key);
    assert_eq!(same, Some(finding), "looked for in slices");
    cured(layout, finding)
}

/// The layout after the remedy of this finding, of a crop in view or the whole.
pub(super) fn cured(layout: &Layout, finding: &Finding) -> Layout {
    let remedy = finding.remedy.as_ref();
    let remedy = remedy.unwrap_or_else(|| panic!("{} has a remedy", finding.sentence));
    let mut after = layout.clone();
    let done = remedy.edit.apply_checked(&mut after);
    done.unwrap_or_else(|e| panic!("{}: {e}", remedy.act));
    after
}
