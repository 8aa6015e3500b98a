//! Coils and starts at random, in closed form by the core and step by step by scipy's solver of differential equations; and jobs that
//! are assigned to places, by the core and by scipy's solver of that problem. Run by hand, not among the tests (needs Python with scipy):
//!
//! ```text
//! cargo run --release -p quietpin-trials --bin against_scipy > tests/reference/against_scipy.md
//! ```
//!
//! Source: scipy, `scipy.integrate.solve_ivp` and `scipy.optimize.linear_sum_assignment`; see `tests/reference/SOURCES.md`.
#![expect(
    clippy::indexing_slicing,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "a command for people, not a part of the core"
)]

mod assigned;

use std::io::Write as _;
use std::process::{Command, ExitCode, Stdio};

use quietpin_core::{
    cranking::{Average, CrankingInputs, Relay, Release, Sync, Wheel, answer, trace},
    quantity::{Band, CrankAngle, celsius, rpm, seconds, share, volts},
    transient::Limited,
};

const CASES: u32 = 100;
const ASSIGNED: u32 = 1000;
const SEED: u64 = 1;

/// A coil, how long it is charged, and what the core says of it.
struct Case {
    supply_v: f64,
    resistance_ohm: f64,
    inductance_h: f64,
    limit_a: Option<f64>,
    time_s: f64,
    ours: [f64; 4],
}

/// Splitmix64: the same cases every time.
struct Random(u64);

impl Random {
    fn share(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut bits = self.0;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        let top = u32::try_from((bits ^ (bits >> 31)) >> 32).unwrap_or(0);
        f64::from(top) / 2_f64.powi(32)
    }

    /// A whole number below `count`.
    fn below(&mut self, count: u32) -> usize {
        let at = self.share() * f64::from(count);
        (1..count).filter(|n| f64::from(*n) <= at).count()
    }

    /// The same, of many.
    fn below_large(&mut self, count: u32) -> u64 {
        let top = self.share() * f64::from(count);
        // whole, and far below 2^53
        format!("{:.0}", top.floor()).parse().unwrap_or(0)
    }

    /// Between two, even by its logarithm.
    fn between(&mut self, low: f64, high: f64) -> f64 {
        (low.ln() + self.share() * (high / low).ln()).exp()
    }
}

fn case(random: &mut Random) -> Option<Case> {
    let supply_v = random.between(4.0, 16.0);
    let resistance_ohm = random.between(0.1, 5.0);
    let inductance_h = random.between(0.3e-3, 30e-3);
    let has_limit = random.share() < 0.5;
    let limit_a = has_limit.then(|| random.between(0.2, 1.2) * supply_v / resistance_ohm);
    let time_s = random.between(0.05, 5.0) * inductance_h / resistance_ohm;
    let coil = Limited::new(supply_v, resistance_ohm, inductance_h, limit_a)?;
    let ours = [
        coil.current_at(time_s)?,
        coil.charge_at(time_s)?,
        coil.square_at(time_s)?,
        coil.held_j(time_s)?,
    ];
    Some(Case { supply_v, resistance_ohm, inductance_h, limit_a, time_s, ours })
}

/// The cases, one a line, for the other side.
fn lines(cases: &[Case]) -> String {
    let line = |it: &Case| {
        let [current, charge, square, held] = it.ours;
        let limit = it.limit_a.unwrap_or(f64::INFINITY);
        format!(
            "{:e} {:e} {:e} {limit:e} {:e} {current:e} {charge:e} {square:e} {held:e}\n",
            it.supply_v, it.resistance_ohm, it.inductance_h, it.time_s
        )
    };
    cases.iter().map(line).collect()
}

/// Firing angles that are uneven: a common-pin V6, V-twins of 70 and 50 degrees, a parallel twin of 270, a V10 of two sorts of
/// interval, and three cylinders of which two fire together.
const UNEVEN: [&[f64]; 6] = [
    &[0.0, 90.0, 240.0, 330.0, 480.0, 570.0],
    &[0.0, 70.0],
    &[0.0, 410.0],
    &[0.0, 270.0],
    &[0.0, 54.0, 144.0, 198.0, 288.0, 342.0, 432.0, 486.0, 576.0, 630.0],
    &[0.0, 0.0, 360.0],
];

/// Firing angles: of every other engine even.
fn firings(random: &mut Random) -> Vec<f64> {
    if random.below(2) == 0 {
        return UNEVEN[random.below(6)].to_vec();
    }
    let count = [1_u32, 2, 3, 4, 5, 6, 8, 12][random.below(8)];
    (0..count).map(|n| 720.0 / f64::from(count) * f64::from(n)).collect()
}

/// A start: mean speed, dip, run-up, where it stands, the pitch of the wheel, how many firings, their angles, and the times of all
/// teeth.
fn start(random: &mut Random) -> Option<String> {
    let firings = firings(random);
    let (mean, dip) = (random.between(60.0, 400.0), random.share() * 0.6);
    let run_up_s = random.between(0.01, 1.0);
    let no_time = Band::exact(seconds(0.0));
    let inputs = CrankingInputs {
        firings: firings.iter().copied().map(CrankAngle::new).collect(),
        cycle: CrankAngle::new(720.0),
        speed: Band::exact(rpm(mean)),
        slow: Vec::new(),
        dip: Band::exact(share(dip)),
        run_up: Band::exact(seconds(run_up_s)),
        wheel: Wheel { positions: 36, missing: 0, mark_to_first: CrankAngle::new(0.0) },
        sync: Sync::Cam,
        averaging: 1,
        average: Average::Blocks,
        confirmation: 1,
        threshold: Some(rpm(mean * 0.3)),
        release: Release::Share(share(0.1)),
        stall_timeout: Band::exact(seconds(60.0)),
        relay: Relay {
            pull_in_time: no_time,
            drop_out_time: no_time,
            pull_in_voltage: Band::exact(volts(7.2)),
            drop_out_voltage: None,
            feed_loss: Band::exact(volts(0.0)),
            switched: None,
        },
        dwell: seconds(0.0),
        kick_back: CrankAngle::new(0.0),
        stick: seconds(0.0),
        rocking: Band::exact(rpm(1.0)),
        idle: rpm(800.0),
        run_down: Band::exact(seconds(1.0)),
        supply: volts(12.0),
        hot_supply: volts(12.0),
        temperature: Band::exact(celsius(20.0)),
    };
    let answer = answer(&inputs)?;
    let from = answer.corners.first()?.latest?.start.degrees();
    let measured = trace(&inputs, &answer, 0)?.measured;
    let times = measured.iter().map(|reading| reading.0);
    let row: Vec<_> = firings.iter().copied().chain(times).map(|it| format!("{it:e}")).collect();
    let count = firings.len();
    Some(format!("start {mean:e} {dip:e} {run_up_s:e} {from:e} 10 {count} {}\n", row.join(" ")))
}

fn compare(cases: &[Case], others: &[String]) -> std::io::Result<bool> {
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/src/bin/against_scipy/compare.py");
    let mut python = Command::new("python3").arg(script).stdin(Stdio::piped()).spawn()?;
    if let Some(mut stdin) = python.stdin.take() {
        stdin.write_all(lines(cases).as_bytes())?;
        stdin.write_all(others.concat().as_bytes())?;
    }
    Ok(python.wait()?.success())
}

fn main() -> ExitCode {
    let mut random = Random(SEED);
    let cases: Vec<_> = (0..CASES).filter_map(|_| case(&mut random)).collect();
    println!("# Coils, starts and assignments at random against scipy\n");
    println!(
        "Written by `cargo run --release -p quietpin-trials --bin against_scipy`, seed {SEED}.\n"
    );
    let mut others: Vec<_> = (0..CASES).filter_map(|_| start(&mut random)).collect();
    others.extend((0..ASSIGNED).map(|_| assigned::problem(&mut random)));
    match compare(&cases, &others) {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(error) => {
            eprintln!("python3 with scipy is needed: {error}");
            ExitCode::FAILURE
        }
    }
}
