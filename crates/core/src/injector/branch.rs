//! The current through an injector, its wire, its resistor and the output it shares.

use super::{CORNERS, InjectorInputs};
use crate::{
    conditions::Corner,
    quantity::{Band, Current, Measure, Resistance, Value, Voltage},
    tables::copper,
    working::{Formula, Step, Working},
};

const OHM: &str = "Ohm's law, resistances in series";
const SUMMED: &str = "Ohm's law and the sum of currents: the output carries the sum";

const ALONE: Formula = Formula { symbols: "I = V / (R_T + R_w + R_c + R_on)", source: OHM };
const ALONE_BALLASTED: Formula =
    Formula { symbols: "I = V / (R_T + R_w + R_c + R_b + R_on)", source: OHM };
const SHARING: Formula =
    Formula { symbols: "I = V / (R_T + R_w + R_c + n × R_on)", source: SUMMED };
const SHARING_BALLASTED: Formula =
    Formula { symbols: "I = V / (R_T + R_w + R_c + R_b + n × R_on)", source: SUMMED };
const SHARING_ONE_BALLAST: Formula =
    Formula { symbols: "I = V / (R_T + R_w + R_c + n × (R_b + R_on))", source: SUMMED };
const SUM: Formula =
    Formula { symbols: "I_out = n × I", source: "currents at a node sum to zero" };

const TOTAL: Formula = Formula { symbols: "R = R_T + R_w + R_c + R_b + n × R_on", source: SUMMED };
const TOTAL_ONE_BALLAST: Formula =
    Formula { symbols: "R = R_T + R_w + R_c + n × (R_b + R_on)", source: SUMMED };

/// Resistors added in series.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ballast {
    /// One with each injector; zero for none.
    pub each: Band<Resistance>,
    /// One with each output; zero for none.
    pub shared: Band<Resistance>,
}

impl Ballast {
    /// No resistor: the wire as it is.
    pub const NONE: Self = {
        let none = Resistance {
            dimension: std::marker::PhantomData,
            units: std::marker::PhantomData,
            value: 0.0,
        };
        let none = Band { low: none, nominal: none, high: none };
        Self { each: none, shared: none }
    };
}

/// Which end of every tolerance is taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CurrentEnd {
    /// The ends that let most current through.
    Most,
    /// What is meant.
    Nominal,
    /// The ends that let least current through.
    Least,
}

impl CurrentEnd {
    /// Of something that hinders the current.
    pub(super) fn of_hindrance<Q: Measure>(self, band: Band<Q>) -> Q {
        match self {
            Self::Most => band.low,
            Self::Nominal => band.nominal,
            Self::Least => band.high,
        }
    }

    /// Of something that helps it.
    pub(super) fn of_help<Q: Measure>(self, band: Band<Q>) -> Q {
        match self {
            Self::Most => band.high,
            Self::Nominal => band.nominal,
            Self::Least => band.low,
        }
    }
}

/// One injector and all that lies in series with it, at one corner and one end of the tolerances.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InjectorBranch {
    /// The battery.
    pub supply: Voltage,
    /// Injectors on the output.
    pub sharing: u32,
    /// The winding at its temperature.
    pub winding: Resistance,
    /// The wire at its temperature.
    pub wire: Resistance,
    /// The contacts in it.
    pub contacts: Resistance,
    /// The output, when on.
    pub on: Resistance,
    /// The resistor of its own.
    pub each: Resistance,
    /// The resistor of the output.
    pub shared: Resistance,
}

impl InjectorBranch {
    /// The branch at a corner; records how winding and wire were found where a working is kept.
    pub fn at(
        inputs: &InjectorInputs,
        corner: &Corner,
        end: CurrentEnd,
        ballast: &Ballast,
        working: &mut Option<Working>,
    ) -> Self {
        let at_20 = end.of_hindrance(inputs.resistance);
        let (length, area) = (end.of_hindrance(inputs.wire.length), end.of_help(inputs.wire.area));
        let temperature = corner.temperature;
        let (formula, wire): (_, fn(_, _, _) -> _) = match end {
            CurrentEnd::Least => (&copper::WIRE_AT_MOST, copper::wire_at_most),
            CurrentEnd::Most | CurrentEnd::Nominal => (&copper::WIRE, copper::wire),
        };
        Self {
            supply: corner.supply,
            sharing: inputs.per_output.max(1),
            winding: note(working, &copper::AT_TEMPERATURE, copper::at(temperature, at_20), || {
                vec![("R_20", at_20.show()), ("T", temperature.show())]
            }),
            wire: note(working, formula, wire(length, area, temperature), || {
                vec![("l", length.show()), ("A", area.show()), ("T", temperature.show())]
            }),
            contacts: end.of_hindrance(inputs.wire.contacts),
            on: end.of_hindrance(inputs.output.on_resistance),
            each: end.of_hindrance(inputs.resistor) + end.of_hindrance(ballast.each),
            shared: end.of_hindrance(ballast.shared),
        }
    }

    /// Injectors on the output, as a number.
    pub fn n(&self) -> f64 {
        f64::from(self.sharing)
    }

    /// All that stands between the battery and the current of one injector; what is shared counts for each
    /// of those that share it.
    pub fn total(&self) -> Resistance {
        self.without_ballast() + self.each + self.shared * self.n()
    }

    /// The same, recorded where a working is kept.
    pub(super) fn resistance(&self, working: &mut Option<Working>) -> Resistance {
        let formula = if self.shared.base() > 0.0 { &TOTAL_ONE_BALLAST } else { &TOTAL };
        note(working, formula, self.total(), || self.values())
    }

    /// The same without resistors.
    pub fn without_ballast(&self) -> Resistance {
        self.winding + self.wire + self.contacts + self.on * self.n()
    }

    /// What is left of it once the output has opened: the current runs on through its clamp.
    pub fn without_output(&self) -> Resistance {
        self.winding + self.wire + self.contacts + self.each + self.shared * self.n()
    }

    /// The steady current of one injector.
    pub fn current(&self, working: &mut Option<Working>) -> Current {
        let formula = match (self.sharing, self.each.base() > 0.0, self.shared.base() > 0.0) {
            (1, false, false) => &ALONE,
            (1, ..) => &ALONE_BALLASTED,
            (_, _, true) => &SHARING_ONE_BALLAST,
            (_, true, _) => &SHARING_BALLASTED,
            _ => &SHARING,
        };
        note(working, formula, self.supply / self.total(), || {
            let mut values = self.values();
            values.push(("V", self.supply.show()));
            values
        })
    }

    /// The current of the whole output.
    pub fn output_current(&self, working: &mut Option<Working>) -> Current {
        let one = self.current(working);
        if self.sharing == 1 {
            return one;
        }
        note(working, &SUM, one * self.n(), || vec![("n", self.sharing.into()), ("I", one.show())])
    }

    /// The resistances by their symbols.
    pub(super) fn values(&self) -> Vec<(&'static str, Value)> {
        vec![
            ("R_T", self.winding.show()),
            ("R_w", self.wire.show()),
            ("R_c", self.contacts.show()),
            ("R_on", self.on.show()),
            ("R_b", (self.each + self.shared).show()),
            ("n", self.sharing.into()),
        ]
    }
}

/// Hands back `result`, recorded as a step where a working is kept.
pub(super) fn note<Q: Measure>(
    working: &mut Option<Working>,
    formula: &Formula,
    result: Q,
    values: impl FnOnce() -> Vec<(&'static str, Value)>,
) -> Q {
    match working {
        Some(working) => working.step(formula, &values(), result),
        None => result,
    }
}

/// The currents at a corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AtCorner {
    /// The corner.
    pub corner: Corner,
    /// The steady current of one injector.
    pub injector: Band<Current>,
    /// The steady current of one output.
    pub output: Band<Current>,
}

/// The currents at every corner, with these resistors.
pub fn at_corners(inputs: &InjectorInputs, ballast: &Ballast) -> [AtCorner; CORNERS] {
    inputs.corners.map(|corner| {
        let current =
            |end| InjectorBranch::at(inputs, &corner, end, ballast, &mut None).current(&mut None);
        let injector = Band {
            low: current(CurrentEnd::Least),
            nominal: current(CurrentEnd::Nominal),
            high: current(CurrentEnd::Most),
        };
        let n = f64::from(inputs.per_output.max(1));
        AtCorner { corner, injector, output: injector.map(|one| one * n) }
    })
}

/// How the current of an output was found at a corner.
pub fn working_at(
    inputs: &InjectorInputs,
    corner: &Corner,
    end: CurrentEnd,
    ballast: &Ballast,
) -> Vec<Step> {
    let mut working = Some(Working::new());
    InjectorBranch::at(inputs, corner, end, ballast, &mut working).output_current(&mut working);
    working.map(Working::into_steps).unwrap_or_default()
}

/// The corner at which an output carries most.
pub fn highest(corners: &[AtCorner; CORNERS]) -> AtCorner {
    let [first, rest @ ..] = *corners;
    rest.into_iter().fold(first, |one, other| {
        if other.output.high.base() > one.output.high.base() { other } else { one }
    })
}

/// The corner at which an injector gets least.
pub fn lowest(corners: &[AtCorner; CORNERS]) -> AtCorner {
    let [first, rest @ ..] = *corners;
    rest.into_iter().fold(first, |one, other| {
        if other.injector.low.base() < one.injector.low.base() { other } else { one }
    })
}
