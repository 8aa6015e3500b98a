//! What bounds the thresholds and releases that work, and the best between them.

use super::advice::{self, Best};
use crate::{
    cranking::{CrankingAnswer, CrankingInputs},
    quantity::{Measure, Value, rpm, share},
    questions::cranking::words,
    report::Figure,
    say,
    working::{Formula, Step, step},
};

const BEST: Formula = Formula {
    symbols: "n_best = sqrt(n_low · n_high)",
    source: "the middle by ratio, rounded: as far as possible from both ends, the lower at least 2 · n_rock where it can be (false edges); then simulated in every case from every start",
};
const BEST_RELEASE: Formula = Formula {
    symbols: "n_off = sqrt(n_rock · n_dip)",
    source: "the middle by ratio, rounded; n_dip as under the releases that work",
};
const RELEASE_LOW: Formula = Formula {
    symbols: "n_off > n_rock",
    source: "an engine that rocks at standstill must let the relay drop out; common practice, no source",
};
const RELEASE_HIGH: Formula = Formula {
    symbols: "n_off ≤ n_dip",
    source: "simulated: the lowest that as many readings in a row as must agree reach once the relay is on, in any case",
};
const DIP: Formula = Formula {
    symbols: "d = 1 − b",
    source: "work-energy theorem: w² = b² + g (S_max − S), mean of w 1; S the compressions' work, W = (V^(1 − k) − 1) / (k − 1) − (1 − V), adiabatic, less what the air below does, textbook; ratio 9.5, k 1.35, rod 0.3 from memory; g by an even four that dips 30 to 40%: common practice, no source; at most 90%",
};

/// What bounds the band, the releases, and the best of both.
pub(super) fn figures(
    inputs: &CrankingInputs,
    answer: &CrankingAnswer,
    best: Option<&Best>,
) -> Vec<Figure> {
    let mut figures = Vec::new();
    if answer.works.is_some() {
        let below = match answer.bounds.low.as_str() {
            "" if inputs.rocking.high.base() < answer.works.map_or(0.0, |it| it.low) => "release",
            "" => "rocking at standstill",
            corner => corner,
        };
        let shown = Value::text(format!("below: {below}; above: {}", answer.bounds.high));
        let working = answer.figures.works.clone();
        figures.push(Figure::plain(say!(words::relays::FIGURE_BOUNDS), shown, working));
    }
    let Some(best) = best else { return figures };
    let shown = format!("threshold {}, release {}", words(best.threshold), words(best.release));
    figures.push(Figure::plain(
        say!(words::relays::FIGURE_BEST),
        Value::text(shown),
        of_best(best),
    ));
    let label = say!(words::relays::FIGURE_RELEASES, threshold = best.threshold);
    let shown = Value::text(advice::shown(best.releases));
    figures.push(Figure::plain(label, shown, of_releases(best)));
    figures
}

fn words(speed: impl Measure) -> String {
    speed.show().shown.clone()
}

fn of_best(best: &Best) -> Vec<Step> {
    let (low, high) = (rpm(best.works.low), rpm(best.works.high));
    let (rocking, dip) = (rpm(best.releases.low), rpm(best.releases.high));
    vec![
        step(&BEST, &[("n_low", low.show()), ("n_high", high.show())], best.threshold),
        step(&BEST_RELEASE, &[("n_rock", rocking.show()), ("n_dip", dip.show())], best.release),
    ]
}

fn of_releases(best: &Best) -> Vec<Step> {
    let (rocking, dip) = (rpm(best.releases.low), rpm(best.releases.high));
    vec![
        step(&RELEASE_LOW, &[("n_off", best.release.show()), ("n_rock", rocking.show())], rocking),
        step(&RELEASE_HIGH, &[("n_off", best.release.show()), ("n_dip", dip.show())], dip),
    ]
}

/// The dip that follows from the engine.
pub(super) fn dip(inputs: &CrankingInputs) -> Figure {
    let slowest = inputs.dip.map(|dip| share(1.0 - dip.base()));
    // in brackets, as more stands before it
    let b = format!("({})", super::figures::band(slowest).shown);
    let values = [("b", Value::text(b))];
    let step = step(&DIP, &values, super::figures::band(inputs.dip));
    let mut figure = Figure::new(say!(words::relays::FIGURE_DIP), inputs.dip, vec![step]);
    figure.value = inputs.dip.nominal.show();
    figure
}
