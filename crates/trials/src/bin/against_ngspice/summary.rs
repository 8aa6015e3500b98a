//! What came of it, for people: Markdown.

use std::fmt::Write as _;

use crate::Outcome;
use crate::circuit::Answer;
use crate::family::Family;
use crate::netlist::netlist;
use crate::tally::{LEAST, OUR_TOLERANCE, Place, TOLERANCE, Tally, Trial, Worst};

/// Whether our solver did nothing that it must not do.
pub(crate) fn is_well(outcome: &Outcome) -> bool {
    outcome.tallies.values().all(|tally| tally.wrong.is_empty())
}

/// All families, and what took how long.
pub(crate) fn summary(outcome: &Outcome) -> String {
    let parts = [head(outcome), families(outcome), worst(outcome), odd(outcome), times(outcome)];
    let mut text = parts.join("\n");
    for (family, tally) in &outcome.tallies {
        for wrong in &tally.wrong {
            // A string takes what is written.
            let _ = writeln!(text, "\nWRONG: {family}, {wrong}");
        }
    }
    text
}

fn head(outcome: &Outcome) -> String {
    let Outcome { seed, count, version, thermal_v, .. } = outcome;
    let total = |of: fn(&Tally) -> usize| outcome.tallies.values().map(of).sum::<usize>();
    let (compared, numbers) = (total(|tally| tally.compared), total(|tally| tally.numbers));
    let (beyond, further) = (total(|tally| tally.beyond), total(|tally| tally.we_are_further));
    let [least_v, least_a] = LEAST.map(|least| least * TOLERANCE);
    format!(
        "# Random circuits against a simulator

Written by

    cargo run --release -p quietpin-trials --bin against_ngspice -- --seed {seed} --count {count}

with {version}, whose k T / q is {thermal_v:.12} V. SOURCES.md says what is compared, and how.

{compared} circuits and {numbers} numbers compared; {beyond} numbers further apart than {TOLERANCE:e} (and {least_v:.0e} \
V, or {least_a:.0e} A). In {further} of those a referee, in 32 digits, is nearer to ngspice than to us; in the others \
ngspice is wrong.
"
    )
}

fn families(outcome: &Outcome) -> String {
    let mut text = format!(
        "| family | circuits | compared | numbers | apart by more than {TOLERANCE:e} | in circuits | we, from the referee | \
         ngspice, from the referee |\n| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n"
    );
    for (family, tally) in &outcome.tallies {
        let Tally { circuits, compared, numbers, beyond, circuits_beyond, ours, theirs, .. } =
            tally;
        let _ = writeln!(
            text,
            "| {family} | {circuits} | {compared} | {numbers} | {beyond} | {circuits_beyond} | {:.1e} | {:.1e} |",
            ours.error, theirs.error
        );
    }
    let _ = writeln!(
        text,
        "\nThe last two columns are the worst of a family; ours may be {OUR_TOLERANCE:e}. Circuits that are not compared \
         have no answer, or none from ngspice."
    );
    text
}

fn worst(outcome: &Outcome) -> String {
    let mut text = "## The worst of each family\n\nOf voltages and of currents, where we and ngspice are furthest apart, \
                    relative; then where we are furthest from the referee. The circuit's number is for `--only`.\n\n\
                    | family | apart | circuit | what | we | ngspice | referee |\n\
                    | --- | ---: | ---: | --- | ---: | ---: | ---: |\n"
        .to_owned();
    for (family, tally) in &outcome.tallies {
        let worst = tally.apart.iter().chain([&tally.ours]);
        for worst in worst.filter(|worst| worst.error > 0.0) {
            let _ = writeln!(text, "| {family} | {}", worst_row(worst));
        }
    }
    text
}

fn worst_row(worst: &Worst) -> String {
    let Worst { error, index, number } = worst;
    let what = match number.place {
        Place::Voltage(node) => format!("node {node}, V"),
        Place::Current(part) => format!("part {part}, A"),
    };
    let [ours, theirs, exact] =
        [number.ours, number.theirs, number.exact].map(|value| show(value, 9));
    format!("{error:.1e} | {index} | {what} | {ours} | {theirs} | {exact} |")
}

fn odd(outcome: &Outcome) -> String {
    let mut text = "## What has no number to compare\n\n".to_owned();
    for (family, tally) in &outcome.tallies {
        let Tally { without_answer, floating, refused, refused_with_volts, .. } = *tally;
        if without_answer > 0 {
            let _ = writeln!(
                text,
                "- {family}: ngspice finds no operating point of {without_answer}; we do, and the referee agrees."
            );
        }
        if floating > 0 {
            let _ = writeln!(
                text,
                "- {family}: {floating} nodes float by the way they were made, and are called so by us. ngspice, given \
                 the circuits as they are, has a voltage for {} of them, and for the others no answer.",
                outcome.floating_with_volts
            );
        }
        if refused > 0 {
            let _ = writeln!(
                text,
                "- {family}: {refused} have no answer by the way they were made, and are refused by us, each for its reason; ngspice has numbers for {refused_with_volts} of them."
            );
        }
    }
    text
}

fn times(outcome: &Outcome) -> String {
    let [ours, theirs] = [outcome.our_time, outcome.their_time].map(|time| time.as_secs_f64());
    format!(
        "## Time\n\nOf all circuits, one after the other, where this was written: {ours:.2} s for us, {theirs:.1} s for ngspice, \
         {:.0} times as long. Theirs includes reading netlists and printing numbers, and {} starts.\n",
        theirs / ours,
        outcome.starts
    )
}

fn show(value: Option<f64>, digits: usize) -> String {
    value.map_or_else(|| "none".to_owned(), |value| format!("{value:.digits$e}"))
}

/// One circuit, with all numbers side by side.
pub(crate) fn in_full(family: Family, trial: &Trial<'_>) -> String {
    let ours = trial.ours.as_ref();
    let mut text = format!("{family}\n{}", netlist(trial.circuit, true));
    if let Err(error) = ours {
        let _ = writeln!(text, "no answer from us: {error}");
    }
    let answers = [ours.ok(), Some(trial.theirs), trial.exact.as_ref()];
    let mut line = |name: String, of: &dyn Fn(&Answer) -> Option<f64>| {
        let [ours, theirs, exact] = answers.map(|answer| show(answer.and_then(of), 16));
        let _ = writeln!(text, "{name:>4} {ours:>24} {theirs:>24} {exact:>24}");
    };
    for node in 0..trial.circuit.nodes() {
        line(format!("v{node}"), &|answer| answer.voltages[node]);
    }
    for part in 0..trial.circuit.parts.len() {
        line(format!("i{part}"), &|answer| answer.currents[part]);
    }
    text
}
