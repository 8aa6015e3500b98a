//! What the output's clamp makes of the injectors' current.

use proptest::prelude::*;
use quietpin_core::{
    injector::{
        DriverKind, InjectorInputs, answer,
        branch::{Ballast, CurrentEnd, InjectorBranch},
        controlled::Serves,
        trace,
        turn_off::{Clamp, Pulses, TurningOff},
        winding::Winding,
    },
    quantity::{
        Band, Holds, Inductance, Measure, amperes, henries, joules, rpm, seconds, volts, watts,
    },
};

use super::{
    bare,
    laws::{any_inputs, anywhere, band, current, within},
    limited,
};

#[track_caller]
fn near(what: &str, found: impl Measure, expected: f64, tolerance: f64) {
    let found = found.base();
    assert!((found - expected).abs() <= tolerance, "{what}: {found}, not {expected}");
}

/// By hand, 12 Ω and 12 mH at 12.6 V and 20 °C into a clamp of 50 V: 1.05 A; t = 1 ms × ln(1 + 12.6 / 37.4) = 0.290352 ms. The
/// charge is 12 mH × 1.05 A / 12 Ω - 12 mH × 37.4 V / (12 Ω)² × 0.290342 = 1.05 mC - 3.116667 × 0.290352 = 0.145069 mC, the
/// energy 50 V × that = 7.25343 mJ: more than the 6.615 mJ that the coil held.
///
/// The same by the formula that data sheets of low-side switches give (from memory):
/// E = `V_cl` × (`V_bat` - `V_cl`) / R × [ln(1 - R I / (`V_bat` - `V_cl`)) + R I / (`V_bat` - `V_cl`)] × L / R.
#[test]
fn the_clamp_takes_more_than_the_coil_held() {
    let mut inputs = bare(12.0);
    inputs.inductance = Some(Band::exact(henries(12e-3)));
    let found = answer(&inputs);
    let (time, energy) = (found.turn_off.corners[2].time, found.turn_off.corners[2].energy);
    near("time", time.expect("it ends").0, 0.290352e-3, 1e-9);
    near("energy", energy.expect("it ends").0, 7.253433e-3, 1e-8);
    let (r, i, l, below) = (12.0_f64, 1.05_f64, 12e-3, 12.6 - 50.0);
    let of_data_sheets = 50.0 * below / r * ((1.0 - r * i / below).ln() + r * i / below) * l / r;
    near("as in data sheets", energy.expect("it ends").0, of_data_sheets, 1e-12);
}

/// The clamp of an output that two injectors share takes both their energies.
#[test]
fn those_that_share_an_output_kick_together() {
    let alone = InjectorInputs { inductance: Some(Band::exact(henries(12e-3))), ..bare(12.0) };
    let pair = InjectorInputs { per_output: 2, ..alone.clone() };
    let of = |inputs: &InjectorInputs| {
        answer(inputs).turn_off.corners[2].energy.expect("it ends").0.base()
    };
    assert!((of(&pair) - 2.0 * of(&alone)).abs() < 1e-12, "{} and {}", of(&pair), of(&alone));
}

/// By hand: 6000 rpm are 100 turns a second; in sequence 50 pulses. The worst corner is charging in the cold: 10.1136 Ω and 14.8 V,
/// 1.46338 A, 12 mH: ln(1 + 14.8 / 35.2) = 0.350977; charge 12 mH × 1.46338 / 10.1136 - 12 mH × 35.2 / 10.1136² × 0.350977 =
/// 1.736327 - 1.449409 = 0.286918 mC; 14.3459 mJ. An engine at its highest speed is no colder than 20 °C: 12 Ω, 1.233333 A, 0.203801 mC,
/// 10.1901 mJ; heat 50 × 10.1901 mJ = 0.509503 W, and 1.233333² × 0 Ω.
#[test]
fn the_heat_at_speed_is_that_of_every_pulse() {
    let mut inputs = bare(12.0);
    inputs.inductance = Some(Band::exact(henries(12e-3)));
    inputs.pulses = Some(Pulses { speed: rpm(6000.0), per_turn: 0.5 });
    inputs.output.clamp.energy = Some(joules(15e-3));
    inputs.output.clamp.heat = Some(watts(0.5));
    let off = answer(&inputs).turn_off;
    near("energy", off.worst.energy.expect("it ends").1, 14.3459e-3, 1e-6);
    let heat = off.heat.clone().expect("the speed is known");
    near("frequency", heat.frequency, 50.0, 1e-12);
    near("heat", heat.power, 0.509503, 1e-5);
    assert_eq!((off.bears_energy, off.bears_heat), (Some(true), Some(false)));
    assert!(!off.is_borne(), "it bears each pulse but not their number");
}

#[test]
fn a_clamp_below_the_battery_never_ends_the_current() {
    let mut inputs = bare(12.0);
    inputs.output.clamp = Clamp::at(Band::exact(volts(14.0)));
    let off = answer(&inputs).turn_off;
    assert!(off.corners[2].energy.is_some(), "at rest it ends");
    assert!(off.corners[3].energy.is_none() && !off.ends, "at 14.8 V it doesn't");
    assert!(trace::opened(&inputs, &Winding::of(&inputs), &Ballast::NONE).is_some());
}

/// A driver keeps the current to its peak, so its clamp takes no more than that.
#[test]
fn a_driver_is_switched_off_from_its_peak_at_most() {
    let mut inputs = limited(2.4, 4.0, 0.8);
    inputs.output.stage = DriverKind::CurrentControlled;
    inputs.inductance = Some(Band::exact(henries(2.4e-3)));
    let (_, most) = answer(&inputs).turn_off.worst.energy.expect("it ends");
    let lossless = 0.5 * 2.4e-3 * 16.0 * 50.0 / (50.0 - 14.8);
    assert!(most.base() < lossless, "{most:?} from 4 A");
}

/// By hand: 2.4 Ω and 2.4 mH reach 2 A at 12.6 V after -1 ms × ln(1 - 2 × 2.4 / 12.6) = 0.479573 ms; hot at 8 V, 3.15456 Ω, after
/// -0.760803 ms × ln(1 - 2 × 3.15456 / 8) = 1.182435 ms.
#[test]
fn the_time_to_the_peak_is_told_at_each_supply() {
    let mut inputs = limited(2.4, 2.0, 0.8);
    inputs.output.stage = DriverKind::CurrentControlled;
    inputs.inductance = Some(Band::exact(henries(2.4e-3)));
    let found = answer(&inputs);
    let quietpin_core::injector::On::CurrentControlled(channel) = &found.on else {
        panic!("it controls the current")
    };
    assert_eq!(channel.serves, Serves::Always);
    let peaks = channel.to_peak.expect("a peak is set");
    near("at rest", peaks[2].nominal.expect("reached"), 0.479573e-3, 1e-8);
    near("hot cranking", peaks[1].longest.expect("reached"), 1.182435e-3, 1e-8);
}

/// 4 A are never reached at 8 V through 3.15 Ω: without a time limit the driver waits for ever; with 2 ms it ends, the injector open
/// long before (0.29 ms); with 0.2 ms it ends too soon.
#[test]
fn a_time_limit_ends_a_peak_that_never_comes() {
    let serves = |limit_ms: Option<f64>| {
        let mut inputs = limited(2.4, 4.0, 0.8);
        inputs.output.stage = DriverKind::CurrentControlled;
        inputs.inductance = Some(Band::exact(henries(2.4e-3)));
        inputs.output.peak_time = limit_ms.map(|ms| Band::exact(seconds(ms * 1e-3)));
        match answer(&inputs).on {
            quietpin_core::injector::On::CurrentControlled(channel) => {
                (channel.serves, channel.cut_short)
            }
            other => panic!("it controls the current: {other:?}"),
        }
    };
    assert_eq!(serves(None), (Serves::PeakNotEverywhere, Holds::Never));
    assert_eq!(serves(Some(2.0)), (Serves::ByTime, Holds::Never));
    let (found, short) = serves(Some(0.2));
    assert_eq!(found, Serves::CutShort);
    let Holds::AtSome(corners) = short else { panic!("not at rest, where 0.165 ms are enough") };
    assert_eq!(corners, ["cranking, cold", "cranking, hot"]);
}

/// One branch run down against the clamp in many small steps, by the classical method of fourth order: time and energy.
fn stepped(current_a: f64, clamp_v: f64, supply_v: f64, ohm: f64, henry: f64) -> (f64, f64) {
    let slope = |i: f64| -(clamp_v - supply_v + ohm * i) / henry;
    let lossless = henry * current_a / (clamp_v - supply_v);
    let step = lossless / 4000.0;
    let (mut t, mut i, mut charge) = (0.0, current_a, 0.0);
    loop {
        let (a, b) = (slope(i), slope(i + step / 2.0 * slope(i)));
        let c = slope(i + step / 2.0 * b);
        let d = slope(i + step * c);
        let next = i + step / 6.0 * (a + 2.0 * b + 2.0 * c + d);
        if next <= 0.0 {
            let last = step * i / (i - next);
            return (t + last, clamp_v * (charge + last * i / 2.0));
        }
        charge += step * (i + next) / 2.0;
        (t, i) = (t + step, next);
    }
}

fn henry_band() -> impl Strategy<Value = Band<Inductance>> {
    band::<Inductance>(0.5, 20.0).prop_map(|band| band.map(|it| henries(it.base() * 1e-3)))
}

proptest! {
    /// Time and energy are those of the differential equation.
    #[test]
    fn turn_off_is_what_small_steps_find(inputs in any_inputs(), inductance in henry_band(), clamp in 20.0..80.0_f64) {
        let mut inputs = InjectorInputs { inductance: Some(inductance), ..inputs };
        inputs.output.clamp = Clamp::at(Band::exact(volts(clamp)));
        let winding = Winding::of(&inputs);
        let off = TurningOff { inputs: &inputs, winding: &winding, ballast: &Ballast::NONE };
        for (corner, at) in inputs.corners.iter().zip(off.solved().corners) {
            let branch = InjectorBranch::at(&inputs, corner, CurrentEnd::Nominal, &Ballast::NONE, &mut None);
            let ohm = branch.without_output().base();
            let current = branch.current(&mut None).base();
            let (time, energy) =
                stepped(current, clamp, corner.supply.base(), ohm, inductance.nominal.base());
            let found = (at.time.expect("it ends").0.base(), at.energy.expect("it ends").0.base());
            prop_assert!((found.0 - time).abs() <= 1e-5 * time, "{} s, not {time}", found.0);
            let energy = energy * f64::from(inputs.per_output);
            prop_assert!((found.1 - energy).abs() <= 1e-5 * energy, "{} J, not {energy}", found.1);
        }
    }

    /// Nowhere within the tolerances does the clamp take more, or the current run on longer, than was said.
    #[test]
    fn the_worst_turn_off_is_the_worst(
        inputs in any_inputs(), inductance in henry_band(), clamp in band(20.0, 80.0),
        at in anywhere(), l in 0.0..=1.0_f64, c in 0.0..=1.0_f64, corner in 0..5_usize,
    ) {
        let mut inputs = InjectorInputs { inductance: Some(inductance), ..inputs };
        inputs.output.clamp = Clamp::at(clamp);
        let said = answer(&inputs).turn_off.corners[corner];
        let (clamp, henry) = (within(clamp, c), within(inductance, l));
        let flows = current(&inputs, corner, at, 0.0, 0.0);
        let supply = inputs.corners[corner].supply.base();
        // what is left of the way once the output is open
        let ohm = supply / flows - within(inputs.output.on_resistance, at.on) * f64::from(inputs.per_output);
        let (time, energy) = stepped(flows, clamp, supply, ohm, henry);
        let energy = energy * f64::from(inputs.per_output);
        prop_assert!(time <= said.time.expect("it ends").1.base() * (1.0 + 1e-5), "{time} s: {said:?}");
        prop_assert!(energy <= said.energy.expect("it ends").1.base() * (1.0 + 1e-5), "{energy} J: {said:?}");
    }

    /// The heat said is never below that of any point within the tolerances.
    #[test]
    fn the_heat_said_is_the_most(
        inputs in any_inputs(), inductance in henry_band(), at in anywhere(),
        speed in 1000.0..12_000.0_f64, per_turn in prop_oneof![Just(0.5), Just(1.0)],
    ) {
        let pulses = Some(Pulses { speed: rpm(speed), per_turn });
        let inputs = InjectorInputs { inductance: Some(inductance), pulses, ..inputs };
        let heat = answer(&inputs).turn_off.heat.expect("the speed is known");
        // an engine at its highest speed is warm
        let inputs = InjectorInputs { corners: [inputs.warm(); 5], ..inputs };
        let corner = 0;
        let n = f64::from(inputs.per_output);
        let out = current(&inputs, corner, at, 0.0, 0.0) * n;
        let on = within(inputs.output.on_resistance, at.on);
        prop_assert!(out * out * on <= heat.power.base() * (1.0 + 1e-9), "the switch alone gives more");
        let supply = inputs.corners[corner].supply.base();
        let (_, energy) =
            stepped(out / n, 50.0, supply, supply / (out / n) - on * n, inductance.nominal.base());
        let found = energy * n * speed / 60.0 * per_turn + out * out * on;
        prop_assert!(found <= heat.power.base() * (1.0 + 1e-5), "{found} W, not {:?}", heat.power);
    }

    /// The pictures end where the numbers say: the current at its last value, and gone after the time that is told.
    #[test]
    fn the_traces_agree_with_the_numbers(inputs in any_inputs(), inductance in henry_band()) {
        let inputs = InjectorInputs { inductance: Some(inductance), ..inputs };
        let winding = Winding::of(&inputs);
        let found = answer(&inputs);
        let closing = trace::closing(&inputs, &winding, None, &Ballast::NONE);
        prop_assert_eq!(closing.len(), 3);
        for (course, at) in closing.iter().zip([1, 2, 3].map(|at| found.corners[at])) {
            let last = course.current.last().expect("it has points").1;
            let steady = at.injector.nominal.base();
            // four time constants of the slowest leave less than two percent
            prop_assert!(last <= steady && last >= 0.98 * steady, "{last} of {steady}");
        }
        let opened = trace::opened(&inputs, &winding, &Ballast::NONE).expect("50 V end it");
        let (time, _) = found.turn_off.corners[2].time.expect("it ends");
        prop_assert!((opened.ends().base() - time.base()).abs() <= 1e-9 * time.base());
        let starts = opened.current[0].1;
        prop_assert!((starts - found.corners[2].injector.nominal.base()).abs() <= 1e-9);
        let falls = opened.current.windows(2).all(|pair| pair[1].1 <= pair[0].1 + 1e-12);
        prop_assert!(falls, "the current rises after the output opened");
    }
}

/// A driver's course: up to its peak, down through its diode to the hold current, and no further.
#[test]
fn a_driver_s_course_goes_to_the_peak_and_then_to_the_hold_current() {
    let mut inputs = limited(2.4, 4.0, 0.8);
    inputs.output.stage = DriverKind::CurrentControlled;
    inputs.output.hold = Some(Band::exact(amperes(1.0)));
    inputs.inductance = Some(Band::exact(henries(2.4e-3)));
    let found = answer(&inputs);
    let quietpin_core::injector::On::CurrentControlled(channel) = &found.on else {
        panic!("it controls the current")
    };
    let closing = trace::closing(&inputs, &found.winding, Some(channel), &Ballast::NONE);
    let top = |at: usize| closing[at].current.iter().map(|(_, i)| *i).fold(0.0, f64::max);
    assert!((top(1) - 4.0).abs() < 1e-9 && (top(2) - 4.0).abs() < 1e-9, "the peak is met");
    assert!(top(0) < 8.0 / 3.15456, "hot at 8 V it never is");
    for course in &closing[1..] {
        let last = course.current.last().expect("it has points").1;
        assert!((last - 1.0).abs() < 1e-9, "it holds {last} A");
    }
}

/// What is taken for the inductance: 12 Ω × 1 ms. Common practice, no source.
#[test]
fn a_usual_inductance_is_taken_where_none_is_given() {
    let winding = Winding::of(&bare(12.0));
    assert!(!winding.is_given, "it is said to be assumed");
    near("low", winding.inductance.low, 6e-3, 1e-12);
    near("nominal", winding.inductance.nominal, 12e-3, 1e-12);
    near("high", winding.inductance.high, 18e-3, 1e-12);
}
