//! A Hall sensor: the levels that its input gets, and how soon they rise.

use crate::{
    circuit::{GROUND, Network},
    quantity::{
        Band, Capacitance, Current, Measure, Resistance, Time, Voltage, amperes, ohms, seconds,
        volts,
    },
    transient::Capacitive,
    working::{Formula, Step, Working},
};

/// A closed way of less than this is taken to have this: no contact has none.
const LEAST_OHM: f64 = 1e-3;
/// Pull-ups that are tried: common practice, no source.
const PULL_UPS_OHM: [f64; 5] = [1e3, 2.2e3, 3.3e3, 4.7e3, 10e3];
/// Rails that are tried.
const RAILS_V: [f64; 2] = [5.0, 3.3];

const LOW: Formula = Formula {
    symbols: "U_low = U_sat + U_ground + I R_contact",
    source: "the circuit, solved with the switch closed",
};
const HIGH: Formula = Formula {
    symbols: "U_high = U_rail R_in / (R_pull + R_in)",
    source: "the circuit, solved with the switch open",
};
const DRIVEN: Formula = Formula {
    symbols: "U_high = U_rail − U_sat",
    source: "the circuit, solved with the upper switch closed",
};
const SUNK: Formula = Formula {
    symbols: "I = (U_rail − U_low) / R_pull",
    source: "the circuit, solved with the switch closed",
};
const RISE: Formula = Formula {
    symbols: "t = R C ln((U_high − U_low) / (U_high − U_threshold))",
    source: "a capacitor charged through a resistance (University Physics, vol. 2, section 10.5)",
};

/// A sensor, its pull-up and its input.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hall {
    /// Whether it drives its output up by itself; `rail` is its own supply then.
    pub drives_up: bool,
    /// What the pull-up goes to; nothing where there is none.
    pub rail: Option<Band<Voltage>>,
    /// The pull-up; above zero.
    pub pull_up: Band<Resistance>,
    /// What its switch drops while it conducts.
    pub saturation: Band<Voltage>,
    /// Contacts and wire of the signal.
    pub contact: Band<Resistance>,
    /// How far its ground lies above the controller's.
    pub ground: Band<Voltage>,
    /// The input to ground; above zero.
    pub input: Band<Resistance>,
    /// Cable and filter.
    pub capacitance: Band<Capacitance>,
}

/// What the input asks for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InputNeeds {
    /// Low at or below.
    pub low: Voltage,
    /// High at or above.
    pub high: Voltage,
    /// The most it bears.
    pub bears: Option<Voltage>,
    /// The most that the sensor may sink.
    pub sink: Option<Current>,
}

/// The levels at an input.
#[derive(Clone, Debug, PartialEq)]
pub struct Levels {
    /// While the switch conducts.
    pub low: Band<Voltage>,
    /// While it doesn't.
    pub high: Band<Voltage>,
    /// What it sinks.
    pub sunk: Band<Current>,
    /// How they were found.
    pub working: Vec<Step>,
}

impl Levels {
    /// Whether the input reads both, bears them, and the sensor bears the current.
    pub fn suit(&self, asked: &InputNeeds) -> bool {
        self.low.high <= asked.low
            && self.high.low >= asked.high
            && asked.bears.is_none_or(|bears| self.high.high <= bears)
            && asked.sink.is_none_or(|sink| self.sunk.high <= sink)
    }
}

/// One end of every tolerance.
#[derive(Clone, Copy)]
struct HallCorner {
    rail: Option<f64>,
    pull: f64,
    sat: f64,
    contact: f64,
    ground: f64,
    input: f64,
}

impl HallCorner {
    /// The pin's voltage and the current into the sensor, its switch closed or not.
    fn solve(self, drives_up: bool, closed: bool) -> Option<(f64, f64)> {
        let mut network = Network::new();
        let pin = network.node("input");
        network.resistor(pin, GROUND, self.input);
        if let Some(rail) = self.rail.filter(|_| !drives_up) {
            let node = network.node("rail");
            network.source(node, GROUND, rail);
            network.resistor(node, pin, self.pull);
        }
        let driven = if closed {
            Some(self.sat + self.ground)
        } else {
            self.rail.filter(|_| drives_up).map(|rail| (rail - self.sat).max(0.0) + self.ground)
        };
        let switch = driven.map(|v| {
            let node = network.node("sensor");
            network.source(node, GROUND, v);
            network.resistor(pin, node, self.contact.max(LEAST_OHM))
        });
        let solution = network.solve().ok()?;
        let sunk = switch.map_or(0.0, |it| solution.current(it));
        Some((solution.voltage(pin)?, if closed { sunk.max(0.0) } else { 0.0 }))
    }
}

impl Hall {
    fn point(&self, of: [fn(&BandEnds) -> f64; 6]) -> HallCorner {
        let [rail, pull, sat, contact, ground, input] = of;
        HallCorner {
            rail: self.rail.map(|band| rail(&BandEnds::of(band))),
            pull: pull(&BandEnds::of(self.pull_up)),
            sat: sat(&BandEnds::of(self.saturation)),
            contact: contact(&BandEnds::of(self.contact)),
            ground: ground(&BandEnds::of(self.ground)),
            input: input(&BandEnds::of(self.input)),
        }
    }

    /// The levels over every tolerance. Each rises or falls throughout with each of them, so that the ends suffice.
    pub fn levels(&self) -> Option<Levels> {
        const N: fn(&BandEnds) -> f64 = |it| it.nominal;
        const L: fn(&BandEnds) -> f64 = |it| it.low;
        const H: fn(&BandEnds) -> f64 = |it| it.high;
        let at = |of, closed| self.point(of).solve(self.drives_up, closed);
        let nominal = at([N; 6], true)?;
        let low = Band {
            nominal: volts(nominal.0),
            low: volts(at([L, H, L, L, L, L], true)?.0),
            high: volts(at([H, L, H, H, H, H], true)?.0),
        };
        let high = Band {
            nominal: volts(at([N; 6], false)?.0),
            low: volts(at([L, H, H, H, L, L], false)?.0),
            high: volts(at([H, L, L, L, H, H], false)?.0),
        };
        let sunk = Band {
            nominal: amperes(nominal.1),
            low: amperes(at([L, H, H, H, H, L], true)?.1),
            high: amperes(at([H, L, L, L, L, H], true)?.1),
        };
        Some(Levels {
            low,
            high,
            sunk,
            working: self.working(low.nominal, high.nominal, sunk.nominal),
        })
    }

    fn working(&self, low: Voltage, high: Voltage, sunk: Current) -> Vec<Step> {
        let mut working = Working::new();
        let rail = self.rail.map_or(volts(0.0), |band| band.nominal).show();
        let shown = [
            ("U_sat", self.saturation.nominal.show()),
            ("U_ground", self.ground.nominal.show()),
            ("I", sunk.show()),
            ("R_contact", self.contact.nominal.show()),
        ];
        working.step(&LOW, &shown, low);
        let shown = [
            ("U_rail", rail.clone()),
            ("R_in", self.input.nominal.show()),
            ("R_pull", self.pull_up.nominal.show()),
            ("U_sat", self.saturation.nominal.show()),
        ];
        working.step(if self.drives_up { &DRIVEN } else { &HIGH }, &shown, high);
        let shown =
            [("U_rail", rail), ("U_low", low.show()), ("R_pull", self.pull_up.nominal.show())];
        if !self.drives_up {
            working.step(&SUNK, &shown, sunk);
        }
        working.into_steps()
    }

    /// The longest time from the opening of the switch to a level, and its working; nothing where the level is never
    /// reached. A sensor that drives up rises in no time that counts.
    pub fn rise(&self, threshold: Voltage) -> Option<(Time, Vec<Step>)> {
        let rail = self.rail?;
        let c = self.capacitance.high.base();
        if self.drives_up || c <= 0.0 {
            return Some((seconds(0.0), Vec::new()));
        }
        let (pull, input) = (self.pull_up.high.base(), self.input.low.base());
        let from = self.saturation.low.base() + self.ground.low.base();
        let node = Capacitive::on_divider(rail.low.base(), pull, input, c)?;
        let time =
            if from >= threshold.base() { 0.0 } else { node.time_to(from, threshold.base())? };
        let mut working = Working::new();
        let shown = [
            ("R", ohms(node.time_constant_s() / c).show()),
            ("C", self.capacitance.high.show()),
            ("U_high", volts(node.final_voltage_v()).show()),
            ("U_low", volts(from).show()),
            ("U_threshold", threshold.show()),
        ];
        let time = working.step(&RISE, &shown, seconds(time));
        Some((time, working.into_steps()))
    }

    /// Another pull-up, on a rail of 5 or 3.3 V, with which everything suits and rises within `time`.
    pub fn cure(&self, asked: &InputNeeds, time: Option<Time>) -> Option<(Resistance, Voltage)> {
        // what the input bears may not be known: the rail that is there comes first
        let own = self.rail.map(|it| it.nominal.base());
        let is_own = |v: &f64| own.is_some_and(|own| (own - v).abs() < 0.1);
        let rails = RAILS_V.into_iter().filter(is_own).chain(RAILS_V);
        let mut pairs = rails.flat_map(|v| PULL_UPS_OHM.into_iter().map(move |r| (r, v)));
        pairs.find_map(|(r, v)| {
            let changed =
                Self { rail: Some(Band::exact(volts(v))), pull_up: Band::exact(ohms(r)), ..*self };
            let suits = !self.drives_up && changed.levels()?.suit(asked);
            let rise = changed.rise(asked.high)?.0;
            (suits && time.is_none_or(|time| rise <= time)).then_some((ohms(r), volts(v)))
        })
    }
}

/// The ends of a band, in base units.
struct BandEnds {
    nominal: f64,
    low: f64,
    high: f64,
}

impl BandEnds {
    fn of<Q: Measure>(band: Band<Q>) -> Self {
        Self { nominal: band.nominal.base(), low: band.low.base(), high: band.high.base() }
    }
}
