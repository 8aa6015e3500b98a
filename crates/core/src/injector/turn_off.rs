//! What becomes of the injectors' current when the output opens: its clamp lets the pin rise until the current has
//! run down.
//!
//! The clamp stands between the pin and ground, so the current runs on against its voltage less the supply's, and the
//! clamp takes more energy than the windings held: the battery pushes until the end. More current, more inductance,
//! more supply and a lower clamp each make energy and time larger, so the ends of the tolerances are their ends.

use super::{
    CORNERS, InjectorInputs,
    branch::{Ballast, CurrentEnd, InjectorBranch, note},
    winding::Winding,
};
use crate::{
    conditions::Corner,
    quantity::{
        Band, Current, Energy, Frequency, Inductance, Measure, Power, Resistance, RotationalSpeed,
        Time, Voltage, hertz, joules, seconds, watts,
    },
    transient,
    working::{Formula, Step, Working, step},
};

const RESISTANCE: Formula = Formula {
    symbols: "R_off = R_T + R_w + R_c + R_b",
    source: "resistances in series, the output open",
};
const TIME: Formula = Formula {
    symbols: "t_off = L / R_off × ln(1 + I × R_off / (V_c − V))",
    source: "voltages of L, R and the clamp around the loop, solved for the time",
};
const ENERGY: Formula = Formula {
    symbols: "E = n × V_c × (L × I / R_off − L × (V_c − V) / R_off / R_off × ln(1 + I × R_off / (V_c − V)))",
    source: "the clamp's voltage times the charge that runs through it",
};
const PULSES: Formula = Formula {
    symbols: "f = N × k / 60",
    source: "definition; k pulses in each turn of the crank",
};
const HEAT: Formula = Formula {
    symbols: "P = f × E + I_out × I_out × R_on",
    source: "resistive heating; the switch assumed held on, which duty comes near to at the highest speed",
};

/// What is known of an output's clamp, and of what it bears.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clamp {
    /// The voltage to which it lets the pin rise.
    pub voltage: Band<Voltage>,
    /// The energy that it bears at each turn-off, again and again.
    pub energy: Option<Energy>,
    /// The heat that the output bears.
    pub heat: Option<Power>,
}

/// How often an output is switched at the highest speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pulses {
    /// The highest speed.
    pub speed: RotationalSpeed,
    /// Pulses of one output in a turn of the crank.
    pub per_turn: f64,
}

impl Pulses {
    /// The frequency at the highest speed.
    pub fn frequency(&self) -> Frequency {
        hertz(self.speed.base() / 60.0 * self.per_turn)
    }
}

/// The turn-off of one output at a corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AtTurnOff {
    /// The corner.
    pub corner: Corner,
    /// Until the current is gone, with all that is meant and at the longest; nothing where it never ends.
    pub time: Option<(Time, Time)>,
    /// What the clamp takes, with all that is meant and at the most; nothing where it never ends.
    pub energy: Option<(Energy, Energy)>,
}

/// What the clamp makes of the injectors' current.
#[derive(Clone, Debug, PartialEq)]
pub struct InjectorTurnOff {
    /// At each corner.
    pub corners: [AtTurnOff; CORNERS],
    /// The corner at which the clamp takes most.
    pub worst: AtTurnOff,
    /// Whether the clamp is above the supply at every corner; else the current never ends.
    pub ends: bool,
    /// The pulses and the heat at the highest speed, where that is known.
    pub heat: Option<Heat>,
    /// Whether the clamp bears the energy, where what it bears is known.
    pub bears_energy: Option<bool>,
    /// Whether the output bears the heat, where what it bears is known.
    pub bears_heat: Option<bool>,
}

/// The heat of an output at the highest speed.
#[derive(Clone, Debug, PartialEq)]
pub struct Heat {
    /// How often it is switched.
    pub frequency: Frequency,
    /// The heat.
    pub power: Power,
    /// How it was found.
    pub working: Vec<Step>,
}

impl InjectorTurnOff {
    /// Whether the output is not known to fail at it: its clamp ends the current and bears it.
    pub fn is_borne(&self) -> bool {
        self.ends && self.bears_energy != Some(false) && self.bears_heat != Some(false)
    }
}

/// Whether an output is not known to fail at its turn-off, with these resistors.
pub fn is_borne(inputs: &InjectorInputs, ballast: &Ballast) -> bool {
    TurningOff { inputs, winding: &Winding::of(inputs), ballast }.solved().is_borne()
}

/// One output's turn-off with the resistors in its wires.
#[derive(Clone, Copy, Debug)]
pub struct TurningOff<'a> {
    /// What is known.
    pub inputs: &'a InjectorInputs,
    /// The winding.
    pub winding: &'a Winding,
    /// The resistors in series.
    pub ballast: &'a Ballast,
}

impl TurningOff<'_> {
    /// The turn-off at every corner, from the current that flows steadily, or from the peak where the output keeps to one.
    pub fn solved(&self) -> InjectorTurnOff {
        let corners = self.inputs.corners.map(|corner| self.at(corner));
        let [first, rest @ ..] = corners;
        let most = |at: &AtTurnOff| at.energy.map_or(0.0, |(_, most)| most.base());
        let worst = rest
            .into_iter()
            .fold(first, |one, other| if most(&other) > most(&one) { other } else { one });
        let clamp = &self.inputs.output.clamp;
        let ends = corners.iter().all(|at| at.energy.is_some());
        let heat = if ends { self.heat() } else { None };
        let is_borne = |found: f64, bears: f64| found <= bears * (1.0 + 1e-9);
        InjectorTurnOff {
            bears_energy: clamp
                .energy
                .zip(worst.energy)
                .map(|(bears, (_, most))| is_borne(most.base(), bears.base())),
            bears_heat: clamp
                .heat
                .zip(heat.as_ref())
                .map(|(bears, heat)| is_borne(heat.power.base(), bears.base())),
            corners,
            worst,
            ends,
            heat,
        }
    }

    /// How time and energy at a corner were found.
    pub fn working_at(&self, corner: &Corner, end: CurrentEnd) -> Vec<Step> {
        let mut working = Some(Working::new());
        self.run_down(corner, end, &mut working);
        working.map(Working::into_steps).unwrap_or_default()
    }

    fn at(&self, corner: Corner) -> AtTurnOff {
        let nominal = self.run_down(&corner, CurrentEnd::Nominal, &mut None);
        let most = self.run_down(&corner, CurrentEnd::Most, &mut None);
        let both = nominal.zip(most);
        AtTurnOff {
            corner,
            time: both.map(|(nominal, most)| (nominal.0, most.0)),
            energy: both.map(|(nominal, most)| (nominal.1, most.1)),
        }
    }

    /// Time and energy of one turn-off.
    fn run_down(
        &self,
        corner: &Corner,
        end: CurrentEnd,
        working: &mut Option<Working>,
    ) -> Option<(Time, Energy)> {
        let branch = InjectorBranch::at(self.inputs, corner, end, self.ballast, working);
        let running = self.running(&branch, end, working);
        let solved = running.solved()?;
        let time = note(working, &TIME, seconds(solved.time_to_zero_s()), || running.values());
        let clamp = running.clamp.base();
        let energy = joules(branch.n() * solved.clamp_energy_j(clamp));
        Some((time, note(working, &ENERGY, energy, || running.values())))
    }

    /// What runs on when the output opens.
    pub fn running(
        &self,
        branch: &InjectorBranch,
        end: CurrentEnd,
        working: &mut Option<Working>,
    ) -> Running {
        let steady = branch.current(working);
        let one = match self.inputs.peak_of_one(end) {
            Some(peak) if peak.base() < steady.base() => peak,
            _ => steady,
        };
        let resistance = note(working, &RESISTANCE, branch.without_output(), || {
            let mut values = branch.values();
            if branch.shared.base() > 0.0 {
                let shared: Resistance = branch.shared * branch.n() + branch.each;
                values.retain(|(symbol, _)| *symbol != "R_b");
                values.push(("R_b", shared.show()));
            }
            values
        });
        Running {
            n: branch.sharing,
            current: one,
            clamp: end.of_hindrance(self.inputs.output.clamp.voltage),
            supply: branch.supply,
            resistance,
            inductance: end.of_help(self.winding.inductance),
        }
    }

    /// Its seconds are those of an engine that runs: not of parts as cold as at the coldest start.
    fn heat(&self) -> Option<Heat> {
        let pulses = self.inputs.pulses?;
        let (_, energy) = self.run_down(&self.inputs.warm(), CurrentEnd::Most, &mut None)?;
        let frequency = pulses.frequency();
        let mut working = Working::new();
        let shown =
            [("N", pulses.speed.show()), ("k", crate::quantity::number(pulses.per_turn).into())];
        working.step(&PULSES, &shown, frequency);
        let (current, on) = self.hottest();
        let power =
            watts(frequency.base() * energy.base() + current.base() * current.base() * on.base());
        let shown = [
            ("f", frequency.show()),
            ("E", energy.show()),
            ("I_out", current.show()),
            ("R_on", on.show()),
        ];
        let mut working = working.into_steps();
        working.push(step(&HEAT, &shown, power));
        Some(Heat { frequency, power, working })
    }

    /// The output's current and resistance, at the end of its tolerance that heats it most.
    fn hottest(&self) -> (Current, Resistance) {
        let on = self.inputs.output.on_resistance;
        let tried = |on: Resistance| {
            let exact = InjectorInputs {
                output: super::InjectorOutput {
                    on_resistance: Band::exact(on),
                    ..self.inputs.output
                },
                ..self.inputs.clone()
            };
            let (warm, end) = (exact.warm(), CurrentEnd::Most);
            let branch = InjectorBranch::at(&exact, &warm, end, self.ballast, &mut None);
            let steady = branch.output_current(&mut None);
            let limit = self
                .inputs
                .peak_of_one(CurrentEnd::Most)
                .map(|one| one * f64::from(exact.per_output.max(1)));
            let current = limit.filter(|limit| limit.base() < steady.base()).unwrap_or(steady);
            (current, on)
        };
        let heat =
            |(current, on): &(Current, Resistance)| current.base() * current.base() * on.base();
        // a resistance takes most power where it equals the rest of its circuit; an output's is far below that
        let (low, high) = (tried(on.low), tried(on.high));
        if heat(&low) > heat(&high) { low } else { high }
    }
}

/// The current of one injector as it runs down against the clamp.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Running {
    /// Injectors that share the output.
    pub n: u32,
    /// The current of one when the output opens.
    pub current: Current,
    /// The clamp.
    pub clamp: Voltage,
    /// The supply.
    pub supply: Voltage,
    /// The resistance that is left.
    pub resistance: Resistance,
    /// The inductance of one.
    pub inductance: Inductance,
}

impl Running {
    /// The course of the current; nothing where the clamp is not above the supply.
    pub fn solved(&self) -> Option<transient::TurnOff> {
        let net = self.clamp.base() - self.supply.base();
        let (current, resistance) = (self.current.base(), self.resistance.base().max(0.0));
        transient::TurnOff::new(current, net, resistance, self.inductance.base())
    }

    fn values(&self) -> Vec<(&'static str, crate::quantity::Value)> {
        vec![
            ("n", self.n.into()),
            ("I", self.current.show()),
            ("V_c", self.clamp.show()),
            ("V", self.supply.show()),
            ("R_off", self.resistance.show()),
            ("L", self.inductance.show()),
        ]
    }
}

impl Clamp {
    /// A clamp at this voltage, of which nothing else is known.
    pub fn at(voltage: Band<Voltage>) -> Self {
        Self { voltage, energy: None, heat: None }
    }
}
