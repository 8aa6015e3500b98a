//! False edges between teeth: what they do to a reading of the speed, and what stands above them.

use super::{Average, CrankingInputs};
use crate::{
    quantity::{Measure, RotationalSpeed},
    timeline::Switch,
};

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
fn closes(inputs: &CrankingInputs, threshold: RotationalSpeed, edges: u32) -> bool {
    let averaging = inputs.averaging.max(1);
    let rocking = inputs.rocking.high.base();
    // one at each tooth: wherever they begin, the same readings come
    let first = if inputs.average == Average::Sliding { averaging - 1 } else { 0 };
    let length = usize::try_from(averaging).unwrap_or(1);
    (first..averaging).any(|before| {
        // intervals in shares of the time from tooth to tooth
        let whole = |count: u32| (0..count).map(|_| 1.0);
        let halves = (0..2 * edges).map(|_| 0.5);
        let after = averaging.saturating_mul(inputs.confirmation);
        let intervals: Vec<f64> = whole(before).chain(halves).chain(whole(after)).collect();
        let mut switch = Switch::new(threshold.base(), 0.0, inputs.confirmation);
        let mut takes =
            |it: &[f64]| switch.take(Some(f64::from(averaging) * rocking / it.iter().sum::<f64>()));
        match inputs.average {
            Average::Blocks => intervals.chunks_exact(length).any(&mut takes),
            Average::Sliding => intervals.windows(length).any(&mut takes),
        }
    })
}
