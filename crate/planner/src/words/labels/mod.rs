//! Labels of the page: what stands on its controls, notices and lists. Only the
//! page's build and the tests read these tables, so that none of them lies in
//! the core's module; the build makes a function or a constant of each line.
//!
//! `{name}` is a named place. `{count:one thing|{count} things}` is said in the
//! first form of one and in the second of any other number.

mod adding;
mod answers;
mod arranged;
mod dates;
mod day;
mod exposures;
mod guide;
mod guides;
mod hands;
mod outputs;
mod papers;
mod proposing;
mod rig;
mod sheet;
mod sheets;
mod shelf;
mod table;
mod test_frame;
mod timing;
mod versions;

/// Labels by id, table by table.
pub const LABELS: [&[(&str, &str)]; 20] = [
    sheet::LABELS,
    sheets::LABELS,
    shelf::LABELS,
    table::LABELS,
    adding::LABELS,
    papers::LABELS,
    rig::LABELS,
    hands::LABELS,
    timing::LABELS,
    exposures::LABELS,
    guides::LABELS,
    outputs::LABELS,
    versions::LABELS,
    answers::LABELS,
    arranged::LABELS,
    proposing::LABELS,
    dates::LABELS,
    day::LABELS,
    guide::LABELS,
    test_frame::LABELS,
];
