//! A load that is switched on and off without end: its mean, its ripple, and what gets hot.
//!
//! While on, the winding's current nears what the key state *on* gives it; while off, it runs on through what catches
//! it ([`super::kick`]), down to what the key state *off* leaves it. The rhythm into which both settle is solved in
//! closed form ([`crate::transient::Pulsed`]). A load without winding follows at once.

use super::{
    Catcher, KeyState, Load, LoadFlow, Operating, Path, PinBranch, PinPart, Point, Pulse, Solver,
    Wiring, hottest::hottest, kick,
};
use crate::{
    math,
    quantity::{
        Band, Current, Energy, Frequency, Inductance, Measure, Power, Ratio, Resistance, Time,
        Voltage, amperes, joules, seconds, volts, watts,
    },
    transient::{Pulsed, Rhythm},
};

/// Less than this divides nothing.
const LEAST_A: f64 = 1e-12;

/// A pulsed load at a corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pulsing {
    /// Pulses a second.
    pub frequency: Frequency,
    /// The part of a period that is on.
    pub duty: Ratio,
    /// The inductance that it was taken with.
    pub inductance: Inductance,
    /// What the current nears while on.
    pub on_final: Current,
    /// The load's own resistance there.
    pub winding: Resistance,
    /// All resistance in the loop while on.
    pub on_resistance: Resistance,
    /// What it falls to while off, at last.
    pub floor: Current,
    /// The current at the end of the off time.
    pub least: Current,
    /// The current at the end of the on time.
    pub most: Current,
    /// The mean of the current.
    pub mean: Current,
    /// The part of the mean that runs on while off.
    pub off_mean: Current,
    /// What the load drops before it conducts.
    pub forward: Voltage,
    /// Its resistance while it runs, a winding's at 20 °C.
    pub cold_resistance: Resistance,
    /// The way on which the current runs while off, of a load with a winding.
    pub path: Option<Path>,
    /// What what gets hot inside the output takes at each turn-off.
    pub in_output: Energy,
    /// The same, at that frequency.
    pub heat: Power,
    /// How long the current takes to fall to its floor, where it gets there.
    pub fallen: Option<Time>,
}

/// What a pulsed load does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Following {
    /// Its current never suffices.
    Rests,
    /// It acts and lets go with each pulse.
    EachPulse,
    /// It acts, and does not let go between the pulses.
    Stays,
}

impl Pulsing {
    /// What would drive the load the same way for good, its winding at 20 °C: a winding acts by its current.
    pub fn driving(&self, current: Current) -> Voltage {
        self.forward + volts(current.base() * self.cold_resistance.base())
    }

    /// What a load does that acts from `pull_in` on and lets go below `drop_out`.
    pub fn following(&self, pull_in: Voltage, drop_out: Voltage) -> Following {
        if self.driving(self.most) < pull_in {
            Following::Rests
        } else if self.least.base() <= 0.0 || self.driving(self.least) < drop_out {
            Following::EachPulse
        } else {
            Following::Stays
        }
    }
}

/// The mean over a period.
pub(super) fn operate(solver: &mut Solver<'_>, point: &Point) -> Option<Operating> {
    let wiring = solver.wiring;
    let pulse = wiring.pulse()?;
    let on = solver.operate(KeyState::On, point)?;
    let off = solver.operate(KeyState::Off, point)?;
    let pulsing = pulsing(wiring, &pulse, point, &on, &off)?;
    Some(mean(point.subject, &pulsing, &on, &off))
}

fn pulsing(
    wiring: &Wiring,
    pulse: &Pulse,
    point: &Point,
    on: &Operating,
    off: &Operating,
) -> Option<Pulsing> {
    let load = wiring.loads.get(point.subject)?;
    let (flow, rest) = (on.loads.get(point.subject)?, off.loads.get(point.subject)?);
    let on_final = flow.current.base().abs();
    // what still flows the same way while off
    let same_way = rest.current.base() * flow.current.base().signum();
    let floor = same_way.clamp(0.0, on_final);
    let closed = [Some(&wiring.output), wiring.partner(load)].into_iter().flatten();
    let switches = closed.map(|it| it.on_resistance_at(point.on, point.at.temperature));
    let on_resistance = switches.fold(flow.resistance, |sum, it| sum + it);
    let has_winding = load.inductance.high.base() > 0.0 && on_final > LEAST_A;
    let path = if has_winding {
        kick::path(wiring, load, flow, point).or_else(|| kick::usual_clamp(wiring, flow, point))
    } else {
        None
    };
    let settled = |path: Path, pace: &Pace| {
        let coil = Pulsed {
            on_final_a: on_final,
            on_resistance_ohm: on_resistance.base(),
            off_net_v: path.net.base(),
            off_resistance_ohm: (flow.resistance + path.resistance).base(),
            inductance_h: pace.inductance.base(),
            floor_a: floor,
            period_s: pace.frequency.base().recip(),
            duty: pace.duty.base(),
        };
        coil.rhythm()
    };
    let drop = path.map_or(0.0, |path| path.drop.base());
    let pace = match path {
        Some(path) if point.is_hottest && drop > 0.0 => {
            Pace::hottest(load, pulse, &|pace| settled(path, pace))
        }
        _ => Pace::at(load, pulse, point),
    };
    let Pace { frequency, inductance, duty } = pace;
    let path = path.filter(|_| inductance.base() > 0.0);
    let rhythm = match path {
        Some(path) => settled(path, &pace)?,
        None => at_once(on_final, floor, duty.base(), same_way),
    };
    let in_output = drop * rhythm.off_charge_c;
    Some(Pulsing {
        frequency,
        duty,
        inductance,
        on_final: amperes(on_final),
        winding: flow.resistance,
        on_resistance,
        floor: amperes(floor),
        least: amperes(rhythm.least_a),
        most: amperes(rhythm.most_a),
        mean: amperes(rhythm.mean_a),
        off_mean: amperes(rhythm.off_charge_c * frequency.base()),
        forward: volts(flow.forward.base().abs()),
        cold_resistance: flow.resistance / load.kind.warmth(point.at.temperature),
        path,
        in_output: joules(in_output),
        heat: watts(in_output * frequency.base()),
        fallen: rhythm.fallen_s.map(seconds),
    })
}

/// How fast and how smoothly a load is pulsed.
#[derive(Clone, Copy)]
struct Pace {
    frequency: Frequency,
    inductance: Inductance,
    duty: Ratio,
}

impl Pace {
    fn at(load: &Load, pulse: &Pulse, point: &Point) -> Self {
        Self {
            frequency: point.smoothing.of(&pulse.frequency),
            inductance: point.smoothing.of(&load.inductance),
            duty: point.duty.of(&pulse.duty),
        }
    }

    /// Where most runs on a second. Only frequency times inductance counts for that, so that both move together.
    fn hottest(load: &Load, pulse: &Pulse, settled: &dyn Fn(&Self) -> Option<Rhythm>) -> Self {
        let along = |smooth: f64, duty: f64| Self {
            frequency: between(&pulse.frequency, smooth),
            inductance: between(&load.inductance, smooth),
            duty: between(&pulse.duty, duty),
        };
        let is_smoothed = pulse.frequency.is_spread() || load.inductance.is_spread();
        let [smooth, duty] = hottest([is_smoothed, pulse.duty.is_spread()], &|[smooth, duty]| {
            let pace = along(smooth, duty);
            // without any inductance nothing runs on
            settled(&pace).map_or(0.0, |it| it.off_charge_c * pace.frequency.base())
        });
        along(smooth, duty)
    }
}

/// So far along a band, in ratio where that can be.
fn between<Q: Measure>(band: &Band<Q>, share: f64) -> Q {
    let (low, high) = (band.low.base(), band.high.base());
    let inside = if low > 0.0 {
        low * math::exp(share * math::ln(high / low))
    } else {
        low + share * (high - low)
    };
    Q::from_base(inside.clamp(low, high))
}

/// Without a winding, or where nothing is known to catch it, the current is gone at once.
fn at_once(on_a: f64, floor_a: f64, duty: f64, off_a: f64) -> Rhythm {
    Rhythm {
        least_a: floor_a,
        most_a: on_a,
        mean_a: duty * on_a + (1.0 - duty) * off_a,
        off_charge_c: 0.0,
        fallen_s: Some(0.0),
    }
}

fn mean(subject: usize, pulsing: &Pulsing, on: &Operating, off: &Operating) -> Operating {
    let duty = pulsing.duty.base();
    let mixed = |on: f64, off: f64| duty * on + (1.0 - duty) * off;
    let load = |(at, (one, other)): (usize, (&LoadFlow, &LoadFlow))| {
        if at == subject { of_subject(pulsing, one) } else { mixed_load(&mixed, one, other) }
    };
    Operating {
        pin: pin(pulsing, on, off),
        rail: on.rail,
        loads: on.loads.iter().zip(&off.loads).enumerate().map(load).collect(),
        branches: branches(subject, pulsing, on),
        from_battery: amperes(mixed(on.from_battery.base(), off.from_battery.base())),
        dead: on.dead.iter().chain(&off.dead).copied().collect(),
        into_logic_rail: amperes(on.into_logic_rail.base().max(off.into_logic_rail.base())),
        pulsing: Some(*pulsing),
    }
}

/// The mean current, and the voltage that would drive it for good: a winding has none of its own on average.
fn of_subject(pulsing: &Pulsing, on: &LoadFlow) -> LoadFlow {
    let current = amperes(pulsing.mean.base() * on.current.base().signum());
    let through = volts(current.base() * on.resistance.base());
    let voltage = if current.base().abs() > 0.0 { on.forward + through } else { through };
    LoadFlow { voltage, current, ..*on }
}

fn mixed_load(mixed: &impl Fn(f64, f64) -> f64, on: &LoadFlow, off: &LoadFlow) -> LoadFlow {
    LoadFlow {
        voltage: volts(mixed(on.voltage.base(), off.voltage.base())),
        current: amperes(mixed(on.current.base(), off.current.base())),
        ..*on
    }
}

/// The mean voltage of the pin: low or high while on, where the catcher holds it while the current runs on, then at rest.
fn pin(pulsing: &Pulsing, on: &Operating, off: &Operating) -> Option<Voltage> {
    let (on_v, rest_v) = (on.pin?.base(), off.pin.map_or(0.0, Measure::base));
    let duty = pulsing.duty.base();
    let share_off = 1.0 - duty;
    let fallen = pulsing.fallen.map_or(share_off, |it| it.base() * pulsing.frequency.base());
    let runs = fallen.min(share_off);
    let caught_v = match pulsing.path {
        Some(path) => caught_at(&path, on, pulsing)?,
        None => rest_v,
    };
    Some(volts(duty * on_v + runs * caught_v + (share_off - runs) * rest_v))
}

/// Where the pin stands while the current runs on: its far end's voltage, and the path's against it.
fn caught_at(path: &Path, on: &Operating, pulsing: &Pulsing) -> Option<f64> {
    let flow = on.loads.iter().find(|flow| flow.current.base().abs() > 0.0)?;
    let far = flow.far.map_or(0.0, Measure::base);
    let mean = f64::midpoint(pulsing.least.base(), pulsing.most.base());
    let against = path.net.base() + path.resistance.base() * mean;
    Some(if flow.current.base() < 0.0 { far + against } else { far - against })
}

/// The means of the parts that carry the load's current.
fn branches(subject: usize, pulsing: &Pulsing, on: &Operating) -> Vec<PinBranch> {
    let (mean, off_mean) = (pulsing.mean.base(), pulsing.off_mean.base());
    let on_final = pulsing.on_final.base().max(LEAST_A);
    let factor = |part: PinPart| match part {
        PinPart::Load(at) if at == subject => mean / on_final,
        _ => pulsing.duty.base(),
    };
    let scaled =
        |it: &PinBranch| PinBranch { current: amperes(it.current.base() * factor(it.part)), ..*it };
    let mut branches: Vec<PinBranch> = on.branches.iter().map(scaled).collect();
    let Some(flow) = on.loads.get(subject) else { return branches };
    let rises = flow.current.base() < 0.0;
    let caught = |path: Path| Some((caught_by(path.catcher, subject, rises)?, path));
    if let Some((part, path)) = pulsing.path.and_then(caught) {
        let current = amperes(if rises { off_mean } else { -off_mean });
        let (behind, resistance) = (path.net, path.resistance);
        branches.push(PinBranch { part, behind, resistance, current });
    }
    close(&mut branches);
    branches
}

/// The switch carries what is left: on average, too, what flows out of the pin sums to nothing.
fn close(branches: &mut [PinBranch]) {
    let sum: f64 = branches.iter().map(|it| it.current.base()).sum();
    let is_switch =
        |it: &&mut PinBranch| matches!(it.part, PinPart::UpperSwitch | PinPart::LowerSwitch);
    if let Some(switch) = branches.iter_mut().find(is_switch) {
        switch.current = amperes(switch.current.base() - sum);
    }
}

/// The part that carries the current while off, beside the one that carries it while on.
fn caught_by(catcher: Catcher, subject: usize, rises: bool) -> Option<PinPart> {
    match catcher {
        Catcher::Diode | Catcher::Resistor => Some(PinPart::Suppressor(subject)),
        Catcher::UpperDiode => Some(PinPart::UpperDiode),
        Catcher::LowerDiode => Some(PinPart::LowerDiode),
        Catcher::Switch => Some(if rises { PinPart::UpperSwitch } else { PinPart::LowerSwitch }),
        Catcher::Clamp => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::henries;

    /// By hand: midway from 1 to 100 in ratio is 10, and midway from nought to 1, which has no ratio, a half.
    #[test]
    fn a_place_in_a_band_is_told_in_ratio_where_that_can_be() {
        for (low, high, share, expected) in [
            (1.0, 100.0, 0.5, 10.0),
            (1.0, 100.0, 0.0, 1.0),
            (1.0, 100.0, 1.0, 100.0),
            (0.0, 1.0, 0.5, 0.5),
            (0.0, 1.0, 0.0, 0.0),
        ] {
            let band = Band::between(henries(low), henries(high));
            let found = between(&band, share).base();
            assert!((found - expected).abs() <= 1e-9, "{share} of {low} to {high}: {found}");
        }
    }
}
