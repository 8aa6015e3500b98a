//! Injectors and the outputs that carry them.
//!
//! Each injector has a feed and a return wire of its own; those that share an output meet at the output.
//! A wire is taken to be as hot or cold as the injector: right for the cold corner, which decides whether the
//! output bears it, and on the safe side for the hot one, which decides whether the injector opens.
//!
//! **Where the line is drawn.** An output bears its injectors when the highest current at every corner, all
//! tolerances at their worse end, stays within its limit. With less than [`carrying::MARGIN_WANTED`] left it
//! is said to have no margin: what a pin table calls a limit is seldom said to hold at the heat of an engine
//! bay, and a supply regulator that drifts by a volt takes seven percent. Ten percent is common practice,
//! no source.

pub mod ballast;
pub mod branch;
pub mod carrying;
pub mod caught;
pub mod controlled;
mod cures;
pub mod feed;
pub mod opening;
pub mod remedy;
pub mod rise;
pub mod trace;
pub mod turn_off;
pub mod winding;

use ballast::{BallastFit, Resistor};
use branch::{AtCorner, Ballast};
use carrying::{Carrying, LimitNeeded};
use controlled::Controlled;
use opening::{Opening, OpensFrom};
use remedy::Remedies;
use rise::{CurrentRise, Rising};
use turn_off::{Clamp, InjectorTurnOff, Pulses, TurningOff};
use winding::Winding;

use crate::{
    conditions::Corner,
    quantity::{Area, Band, Current, Holds, Inductance, Length, Measure, Power, Resistance, Time},
};

/// How many corners are looked at.
pub const CORNERS: usize = 5;

/// What is known about the injectors and their outputs.
#[derive(Clone, Debug, PartialEq)]
pub struct InjectorInputs {
    /// Resistance of one at 20 °C, with its tolerance; above zero.
    pub resistance: Band<Resistance>,
    /// Inductance of one; see [`Winding`] for what is taken where it is not known.
    pub inductance: Option<Band<Inductance>>,
    /// The current that opens one; see [`Opening`] for what is taken where it is not known.
    pub opening_current: Option<Band<Current>>,
    /// How many share an output, from 1.
    pub per_output: u32,
    /// How many there are.
    pub count: Option<u32>,
    /// How many outputs for injectors the controller has, where that is known.
    pub outputs_there: Option<u32>,
    /// One of the outputs.
    pub output: InjectorOutput,
    /// The wire of one injector.
    pub wire: Wire,
    /// The resistor that is in line with each; zero for none.
    pub resistor: Band<Resistance>,
    /// What that bears.
    pub resistor_rating: Option<Power>,
    /// Whether a diode lies across each.
    pub has_diode: bool,
    /// How often an output is switched at the highest speed, where that is known.
    pub pulses: Option<Pulses>,
    /// The corners to be looked at.
    pub corners: [Corner; CORNERS],
}

impl InjectorInputs {
    /// Charging, at 20 °C: an engine that has run for as long as a fuse or an output needs to heat is no colder. Common
    /// practice, no source.
    pub fn warm(&self) -> Corner {
        let [_, _, at_rest, charging, _] = self.corners;
        Corner {
            name: "charging, 20 °C",
            supply: charging.supply,
            temperature: at_rest.temperature,
        }
    }

    /// The same injectors without their resistors.
    #[must_use]
    pub fn without_resistor(&self) -> Self {
        Self { resistor: Band::exact(Resistance::from_base(0.0)), ..self.clone() }
    }

    /// Whether the controller has outputs enough for so many injectors on each, as far as that is known.
    fn has_outputs_for(&self, per_output: u32) -> bool {
        let wanted = outputs(self.count, per_output);
        wanted.zip(self.outputs_there).is_none_or(|(wanted, there)| wanted <= there)
    }

    /// The peak of one injector, where the output keeps to one.
    pub fn peak_of_one(&self, end: branch::CurrentEnd) -> Option<Current> {
        let peak =
            self.output.limit.filter(|_| self.output.stage == DriverKind::CurrentControlled)?;
        Some(end.of_help(peak) / f64::from(self.per_output.max(1)))
    }
}

/// An output of the controller.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InjectorOutput {
    /// How it switches.
    pub stage: DriverKind,
    /// Its continuous limit; the peak it is set to where it controls the current.
    pub limit: Option<Band<Current>>,
    /// The current to which it falls after the peak.
    pub hold: Option<Band<Current>>,
    /// The longest that its peak lasts, where it ends it by time.
    pub peak_time: Option<Band<Time>>,
    /// Its resistance when it is on.
    pub on_resistance: Band<Resistance>,
    /// What catches the injectors' kick.
    pub clamp: Clamp,
}

/// How an output switches.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DriverKind {
    /// On or off: the current is what the circuit lets through.
    PlainSwitch,
    /// Holds the current at a peak, then at a lower level.
    CurrentControlled,
}

/// The wire of one injector, feed and return together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wire {
    /// Its length.
    pub length: Band<Length>,
    /// Its copper.
    pub area: Band<Area>,
    /// The contacts in it, all together: of the connectors, the relay, the fuse and the terminals.
    pub contacts: Band<Resistance>,
}

/// What the trade calls an injector by its resistance. The borders are common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Class {
    /// Below 5 Ω: made for a driver that controls the current.
    LowImpedance,
    /// From 5 to 10 Ω: either, or a slip of the meter.
    Between,
    /// Above 10 Ω: made for a plain switch.
    HighImpedance,
}

impl Class {
    /// The class of an injector of this resistance at 20 °C.
    pub fn of(resistance: Resistance) -> Self {
        match resistance.base() {
            r if r < 5.0 => Self::LowImpedance,
            r if r <= 10.0 => Self::Between,
            _ => Self::HighImpedance,
        }
    }
}

/// What comes of it.
#[derive(Clone, Debug, PartialEq)]
pub struct InjectorAnswer {
    /// Low or high impedance.
    pub class: Class,
    /// The current that opens one.
    pub opening: Opening,
    /// The currents at each corner, as wired, without a resistor. An output that controls the current
    /// cuts them off at its peak.
    pub corners: [AtCorner; CORNERS],
    /// The corner at which an output carries most.
    pub highest: AtCorner,
    /// The corner at which an injector gets least.
    pub lowest: AtCorner,
    /// Where an injector may not open.
    pub may_not_open: Holds,
    /// Whether it hangs on a current that is only usual whether one opens behind its resistor.
    pub hangs: bool,
    /// The inductance of one.
    pub winding: Winding,
    /// How long the current takes to open one at each corner.
    pub rises: [CurrentRise; CORNERS],
    /// What the output's clamp makes of the current when it opens.
    pub turn_off: InjectorTurnOff,
    /// The battery voltage from which on it is sure to open, at the corner that asks most.
    pub opens_from: OpensFrom,
    /// The limit that an output must have to carry them with margin.
    pub limit_needed: LimitNeeded,
    /// Outputs used, where the number of injectors is known.
    pub outputs: Option<u32>,
    /// What is true of the output, by its stage.
    pub on: On,
}

impl InjectorAnswer {
    /// The currents at rest and 20 °C: what a fitter would measure now.
    pub fn usual(&self) -> &AtCorner {
        Self::usual_of(&self.corners)
    }

    /// The same, of other corners.
    pub fn usual_of(corners: &[AtCorner; CORNERS]) -> &AtCorner {
        let [_, _, usual, _, _] = corners;
        usual
    }
}

/// What is true of the output, by its stage.
#[derive(Clone, Debug, PartialEq)]
pub enum On {
    /// On a plain switch whose limit is not known.
    UnknownLimit,
    /// On a plain switch.
    PlainSwitch(Carrying, Box<InjectorCures>),
    /// On an output that controls the current.
    CurrentControlled(Box<Controlled>),
}

/// What would keep a plain switch inside its limit; each was solved.
#[derive(Clone, Debug, PartialEq)]
pub struct InjectorCures {
    /// Fewer on each output.
    pub fewer: Option<Fewer>,
    /// A resistor of the E12 series with each injector; nothing where none is needed.
    pub each: Option<BallastFit>,
    /// One of the E24 series with each injector, where that series has one that lets more current through, or any at all.
    pub finer: Option<Box<Resistor>>,
    /// One resistor in series with each output; nothing where none is needed or one injector is on it.
    pub shared: Option<BallastFit>,
    /// Fewer on each output and a resistor with each injector, where neither alone will do.
    pub both: Option<Both>,
    /// A driver that controls the current of each injector.
    pub driver: Controlled,
    /// All of them beside each other, as wired among them, and the one to take.
    pub side_by_side: Remedies,
}

impl InjectorCures {
    /// The resistor with each injector that is offered: the one to take, or else the one that comes nearest to that.
    pub fn resistor(&self) -> Option<&Resistor> {
        if let Some(best) = self.side_by_side.resistor() {
            return Some(best);
        }
        match &self.each {
            Some(BallastFit::Offered(resistor)) => Some(resistor),
            _ => self.finer.as_deref(),
        }
    }
}

/// Fewer injectors on each output, with a resistor in series with each.
#[derive(Clone, Debug, PartialEq)]
pub struct Both {
    /// How many share an output then.
    pub per_output: u32,
    /// Outputs wanted then, where the number of injectors is known.
    pub outputs: Option<u32>,
    /// The resistor.
    pub resistor: Box<Resistor>,
}

/// Fewer injectors on each output.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fewer {
    /// How many an output carries with margin.
    pub per_output: u32,
    /// Their highest current.
    pub highest: Current,
    /// Outputs wanted then, where the number of injectors is known.
    pub outputs: Option<u32>,
}

/// Works out what the outputs have to carry, and what to do where they can't.
pub fn answer(inputs: &InjectorInputs) -> InjectorAnswer {
    let opening = Opening::of(inputs);
    let winding = Winding::of(inputs);
    let none = &Ballast::NONE;
    let corners = branch::at_corners(inputs, &Ballast::NONE);
    let on = match (inputs.output.stage, inputs.output.limit) {
        (DriverKind::CurrentControlled, peak) => {
            On::CurrentControlled(Box::new(Controlled::of(inputs, &opening, peak)))
        }
        (DriverKind::PlainSwitch, None) => On::UnknownLimit,
        (DriverKind::PlainSwitch, Some(limit)) => {
            let carrying = Carrying::of(&corners, limit.low);
            let cures = cures::cures(inputs, &opening, &carrying);
            On::PlainSwitch(carrying, Box::new(cures))
        }
    };
    let least = branch::lowest(&corners).injector.low;
    let may_not_open = opening.missed_at(&corners);
    InjectorAnswer {
        class: Class::of(inputs.resistance.nominal),
        highest: branch::highest(&corners),
        lowest: branch::lowest(&corners),
        hangs: may_not_open == Holds::Never
            && inputs.resistor.nominal.base() > 0.0
            && inputs.output.stage == DriverKind::PlainSwitch
            && least < opening.surely(),
        may_not_open,
        rises: Rising { inputs, winding: &winding, ballast: none }.at_corners(opening.current),
        turn_off: TurningOff { inputs, winding: &winding, ballast: none }.solved(),
        opens_from: OpensFrom::of(inputs, &opening, &Ballast::NONE),
        limit_needed: LimitNeeded::of(&corners),
        outputs: outputs(inputs.count, inputs.per_output),
        opening,
        winding,
        corners,
        on,
    }
}

/// Outputs wanted for so many injectors.
fn outputs(count: Option<u32>, per_output: u32) -> Option<u32> {
    count.map(|count| count.div_ceil(per_output.max(1)))
}
