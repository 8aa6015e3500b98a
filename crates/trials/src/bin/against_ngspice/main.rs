//! Thousands of circuits at random, solved by the core and by ngspice, a general-purpose circuit simulator; and by a
//! referee in 32 digits, which says who is wrong where they differ. Run by hand, not among the tests:
//!
//! ```text
//! cargo run --release -p quietpin-trials --bin against_ngspice -- --seed 1 --count 20000
//! ```
//!
//! Source: ngspice; see `tests/reference/SOURCES.md`. What came of it: `tests/reference/circuits/against_ngspice.md`.
#![expect(
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "a command for people, not a part of the core"
)]
#![expect(
    clippy::indexing_slicing,
    reason = "circuits are made here, and their nodes are counted; this command may end with a message"
)]

mod circuit;
mod degenerate;
mod double_double;
mod family;
mod netlist;
mod referee;
mod simulator;
mod stage;
mod summary;
mod tally;
mod web;

use std::collections::BTreeMap;
use std::hint::black_box;
use std::process::ExitCode;
use std::time::{Duration, Instant};

use lexopt::ValueExt as _;
use quietpin_core::circuit::Unsolvable;

use circuit::{Answer, Circuit, Expected, Ours};
use family::Family;
use simulator::Simulator;
use tally::{Tally, Trial};

const HELP: &str = "\
Solves random circuits with the core and with ngspice, and says how far they are apart.

  --seed N     which circuits (1)
  --count N    how many (20000)
  --only K     the circuit with this number alone, in full
";

/// What is asked for.
#[derive(Clone, Copy)]
struct Request {
    seed: u64,
    count: usize,
    only: Option<usize>,
}

/// What came of it.
struct Outcome {
    seed: u64,
    count: usize,
    version: String,
    thermal_v: f64,
    tallies: BTreeMap<Family, Tally>,
    /// Nodes that float, and yet have a voltage for the simulator.
    floating_with_volts: usize,
    our_time: Duration,
    their_time: Duration,
    /// How often the simulator was started for that.
    starts: usize,
}

fn main() -> ExitCode {
    match request().and_then(|request| request.map_or(Ok(true), run)) {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(message) => {
            eprintln!("against_ngspice: {message}");
            ExitCode::FAILURE
        }
    }
}

/// Nothing where only the help was asked for.
fn request() -> Result<Option<Request>, String> {
    let mut request = Request { seed: 1, count: 20000, only: None };
    let mut parser = lexopt::Parser::from_env();
    let mut read = || -> Result<bool, lexopt::Error> {
        while let Some(argument) = parser.next()? {
            match argument {
                lexopt::Arg::Long("seed") => request.seed = parser.value()?.parse()?,
                lexopt::Arg::Long("count") => request.count = parser.value()?.parse()?,
                lexopt::Arg::Long("only") => request.only = Some(parser.value()?.parse()?),
                lexopt::Arg::Long("help") | lexopt::Arg::Short('h') => return Ok(false),
                _ => return Err(argument.unexpected()),
            }
        }
        Ok(true)
    };
    if read().map_err(|error| error.to_string())? {
        return Ok(Some(request));
    }
    print!("{HELP}");
    Ok(None)
}

/// A circuit, its number and its family.
type Made = (usize, Family, Circuit);

/// Whether all was well.
fn run(request: Request) -> Result<bool, String> {
    let Request { seed, count, only } = request;
    let mut simulator = Simulator::start()?;
    let indices = only.map_or(0..count, |index| index..index + 1);
    let made = |index| {
        let (family, circuit) = family::circuit(seed, index, simulator.thermal_v);
        (index, family, circuit)
    };
    let made: Vec<Made> = indices.map(made).collect();
    let circuits: Vec<&Circuit> = made.iter().map(|(_, _, circuit)| circuit).collect();
    let theirs = simulator.solve(&circuits, true)?;
    let (their_time, starts) = (simulator.time, simulator.starts);
    let (ours, our_time) = ours(&circuits);

    let mut tallies: BTreeMap<Family, Tally> = BTreeMap::new();
    for (((index, family, circuit), ours), theirs) in made.iter().zip(&ours).zip(&theirs) {
        let trial = trial(*index, circuit, ours, theirs);
        if only.is_some() {
            print!("{}", summary::in_full(*family, &trial));
        }
        tallies.entry(*family).or_default().add(&trial);
    }
    let is_answered = |tally: &Tally| tally.compared > tally.without_answer;
    if only.is_none() && !tallies.values().any(is_answered) {
        return Err("ngspice answers hardly anything: does it print what is expected?".to_owned());
    }
    let outcome = Outcome {
        seed,
        count,
        version: simulator.version.clone(),
        thermal_v: simulator.thermal_v,
        tallies,
        floating_with_volts: floating_with_volts(&mut simulator, &circuits)?,
        our_time,
        their_time,
        starts,
    };
    print!("{}", summary::summary(&outcome));
    Ok(summary::is_well(&outcome))
}

/// Our answers, and how long they took.
fn ours(circuits: &[&Circuit]) -> (Vec<Result<Answer, Unsolvable>>, Duration) {
    let networks: Vec<Ours> = circuits.iter().map(|circuit| circuit.network()).collect();
    let start = Instant::now();
    let answers = networks.iter().map(|network| black_box(network).solve()).collect();
    (answers, start.elapsed())
}

fn trial<'a>(
    index: usize,
    circuit: &'a Circuit,
    ours: &'a Result<Answer, Unsolvable>,
    theirs: &'a Answer,
) -> Trial<'a> {
    let has_answer = circuit.answer == Expected::Answer;
    let start = ours.as_ref().unwrap_or(theirs);
    let exact = has_answer.then(|| referee::settle(circuit, start)).flatten();
    Trial { index, circuit, ours, theirs, exact }
}

/// Nodes that float, and yet have a voltage for the simulator when nobody pins them down.
fn floating_with_volts(simulator: &mut Simulator, circuits: &[&Circuit]) -> Result<usize, String> {
    let has_pins = |circuit: &&Circuit| !circuit.pins.is_empty();
    let circuits: Vec<&Circuit> = circuits.iter().copied().filter(has_pins).collect();
    let answers = simulator.solve(&circuits, false)?;
    let nodes = circuits.iter().zip(&answers).flat_map(|(circuit, answer)| {
        circuit.floats.iter().zip(&answer.voltages).filter(|(floats, _)| **floats)
    });
    Ok(nodes.filter(|(_, voltage)| voltage.is_some()).count())
}
