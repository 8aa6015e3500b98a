//! What bounds the thresholds and releases that work, and the best between them.

use super::advice::{self, Best};
use crate::{
    cranking::{self, Answer, Inputs},
    quantity::{Measure, Value, number, rpm, share},
    report::Figure,
    say,
    working::{Formula, Step, step},
};

const BEST: Formula = Formula {
    symbols: "n_best = sqrt(n_low · n_high)",
    source: "the middle by ratio, rounded: as far as possible from both ends; then simulated at every corner from every start",
};
const BEST_RELEASE: Formula = Formula {
    symbols: "n_off = sqrt(n_rock · n_dip)",
    source: "the middle by ratio, rounded; n_dip as under the releases that work",
};
const RELEASE_LOW: Formula = Formula {
    symbols: "n_off > n_rock",
    source: "an engine that rocks at standstill must let the relay go; common practice, no source",
};
const RELEASE_HIGH: Formula = Formula {
    symbols: "n_off ≤ n_dip",
    source: "simulated: the lowest that as many readings in a row as must agree reach once the relay is on, at any corner",
};
const DIP: Formula = Formula {
    symbols: "d = d_4 · S / S_4",
    source: "S: swing of the compressions’ work in a cycle, W = (V^(1 − k) − 1) / (k − 1) − (1 − V), adiabatic, less what the air below does, textbook; ratio 9.5, k 1.35, rod 0.3 from memory; d_4 of an even four: common practice, no source",
};
/// Where two compressions are more than half a turn apart.
const DIP_FAR: Formula = Formula {
    symbols: "d = 1 − b",
    source: "work-energy theorem: w² = b² + g (1 − h), mean of w 1, h the share of the work’s swing that is held; g from an even four that dips 30 to 40 %: common practice, no source; adiabatic compression, ratio 9.5, k 1.35, rod 0.3 from memory; no less than in proportion to the swing, and at most 90 %",
};

/// What bounds the band, the releases, and the best of both.
pub(super) fn figures(inputs: &Inputs, answer: &Answer) -> Vec<Figure> {
    let mut figures = Vec::new();
    if answer.works.is_some() {
        let below = match answer.bounds.low.as_str() {
            "" if inputs.rocking.high.base() < answer.works.map_or(0.0, |it| it.low) => "release",
            "" => "rocking at standstill",
            corner => corner,
        };
        let shown = Value::text(format!("below: {below}; above: {}", answer.bounds.high));
        let working = answer.figures.works.clone();
        figures.push(Figure::plain(say!("cranking.figure-bounds"), shown, working));
    }
    let Some(best) = advice::best(inputs, answer) else { return figures };
    let shown = format!("on at {}, off below {}", words(best.threshold), words(best.release));
    figures.push(Figure::plain(say!("cranking.figure-best"), Value::text(shown), of_best(&best)));
    let label = say!("cranking.figure-releases", threshold = best.threshold);
    let shown = Value::text(advice::shown(best.releases));
    figures.push(Figure::plain(label, shown, of_releases(&best)));
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
pub(super) fn dip(inputs: &Inputs) -> Figure {
    let (swing, of_four) =
        (cranking::swing(&inputs.firings, inputs.cycle), cranking::swing_of_even_four());
    let values = [
        ("d_4", Value::text("30 to 40 %")),
        ("S", Value::text(number(swing))),
        ("S_4", Value::text(number(of_four))),
    ];
    let shown = super::figures::band(inputs.dip);
    let step = if cranking::is_far_apart(&inputs.firings, inputs.cycle) {
        let slowest = inputs.dip.map(|dip| share(1.0 - dip.base()));
        step(&DIP_FAR, &[("b", super::figures::band(slowest))], shown)
    } else {
        step(&DIP, &values, shown)
    };
    let mut figure = Figure::new(say!("cranking.figure-dip"), inputs.dip, vec![step]);
    figure.value = inputs.dip.nominal.show();
    figure
}
