//! False edges between teeth: what they do to a reading of the speed, and what stands above them.

use super::{Average, CrankingInputs};
use crate::quantity::{Measure, RotationalSpeed};

/// Most false edges in a row that are tried.
pub(super) const MOST_EDGES: u32 = 64;

/// How far false edges lead the relay astray while the engine only rocks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Noise {
    /// False edges in a row, each midway between two teeth, that close the relay; none where no number of them does.
    pub edges: Option<u32>,
    /// Thresholds above this stand above any number of them.
    pub above: RotationalSpeed,
    /// Edges in a burst, much closer together than teeth, that pass for any speed: only an input filter helps.
    pub burst: u32,
}

/// The speed above which no false edges close the relay of an engine that rocks so fast: they halve the time between two edges.
pub fn above_false_edges(rocking: RotationalSpeed) -> RotationalSpeed {
    rocking * 2.0
}

/// At a threshold, with an engine that rocks at the highest speed typed.
pub fn noise(inputs: &CrankingInputs, threshold: RotationalSpeed) -> Noise {
    let rocking = inputs.rocking.high;
    let (averaging, agree) = (inputs.averaging.max(1), inputs.confirmation.max(1));
    let edges = (0..=MOST_EDGES).find(|edges| closes(inputs, threshold, *edges));
    Noise {
        edges,
        above: above_false_edges(rocking),
        burst: match inputs.average {
            Average::Blocks => averaging.saturating_mul(agree),
            Average::Sliding => averaging.saturating_add(agree - 1),
        },
    }
}

/// Whether the relay closes, wherever among the readings the false edges begin.
///
/// In shares of the time from tooth to tooth, false edges midway between teeth make twice as many intervals of a half as there are
/// edges, and whole ones stand before and behind. A reading that has `h` halves in it reads `A n / (A - h / 2)`, more the more
/// it has: those from some number of halves on meet the threshold. The halves lie together, so that these readings do too, and
/// how many they are is counted.
pub(super) fn closes(inputs: &CrankingInputs, threshold: RotationalSpeed, edges: u32) -> bool {
    let averaging = inputs.averaging.max(1);
    let rocking = inputs.rocking.high.base();
    let meets = |halves: &u32| {
        let time = f64::from(averaging) - f64::from(*halves) / 2.0;
        f64::from(averaging) * rocking / time >= threshold.base()
    };
    let Some(least) = (0..=averaging).find(meets) else { return false };
    if least == 0 {
        return true;
    }
    let halves = 2 * edges;
    let agree = inputs.confirmation.max(1);
    match inputs.average {
        // one at each interval: it may lie over the beginning of the halves or over their end
        Average::Sliding => {
            halves >= least && averaging + halves + 1 >= agree.saturating_add(2 * least)
        }
        // `before` whole intervals of the first reading, then the halves
        Average::Blocks => (0..averaging).any(|before| {
            let is_first = halves.min(averaging - before) >= least;
            let others = (before + halves).saturating_sub(averaging);
            // full ones behind the first, and the last where enough of the halves are left for it
            let others = others / averaging + u32::from(others % averaging >= least);
            u32::from(is_first) + others >= agree
        }),
    }
}
