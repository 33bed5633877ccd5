//! Where lost edges are stitched.
use glam::DVec2;

use super::finding::Mark;

/// Where only some tones of a food are lost, stitches cover that share of each
/// stretch this long, mm: nobody knows which piece will lie where.
const STITCH_CYCLE: f64 = 70.0;

/// Lost runs to stitch: all of the line, or its share of every cycle.
pub(super) fn stitches(line: &[DVec2], share: f64) -> Vec<Mark> {
    if share > 0.999 {
        return vec![Mark::LostEdge {
            line: line.to_vec(),
        }];
    }
    let mut out = Vec::new();
    let mut run: Vec<DVec2> = Vec::new();
    let mut along = 0.0;
    for pair in line.windows(2) {
        let on = along % STITCH_CYCLE < STITCH_CYCLE * share;
        if on && run.is_empty() {
            run.push(pair[0]);
        }
        if on {
            run.push(pair[1]);
        } else if !run.is_empty() {
            out.push(Mark::LostEdge {
                line: std::mem::take(&mut run),
            });
        }
        along += pair[0].distance(pair[1]);
    }
    if !run.is_empty() {
        out.push(Mark::LostEdge { line: run });
    }
    out
}
