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
pub mod controlled;
pub mod opening;
pub mod rise;

use ballast::{Fit, Place, Resistor};
use branch::{AtCorner, Ballast};
use carrying::{Carrying, LimitNeeded};
use controlled::Controlled;
use opening::{Opening, OpensFrom};
use rise::Rise;

use crate::{
    conditions::Corner,
    quantity::{Area, Band, Current, Holds, Inductance, Length, Measure, Resistance},
};

/// How many corners are looked at.
pub const CORNERS: usize = 5;

/// What is known about the injectors and their outputs.
#[derive(Clone, Debug, PartialEq)]
pub struct Inputs {
    /// Resistance of one at 20 °C, with its tolerance; above zero.
    pub resistance: Band<Resistance>,
    /// Inductance of one.
    pub inductance: Option<Band<Inductance>>,
    /// The current that opens one; see [`Opening`] for what is taken where it is not known.
    pub opening_current: Option<Band<Current>>,
    /// How many share an output, from 1.
    pub per_output: u32,
    /// How many there are.
    pub count: Option<u32>,
    /// One of the outputs.
    pub output: Output,
    /// The wire of one injector.
    pub wire: Wire,
    /// The corners to be looked at.
    pub corners: [Corner; CORNERS],
}

/// An output of the controller.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Output {
    /// How it switches.
    pub stage: Stage,
    /// Its continuous limit; the peak it is set to where it controls the current.
    pub limit: Option<Band<Current>>,
    /// The current to which it falls after the peak.
    pub hold: Option<Band<Current>>,
    /// Its resistance when it is on.
    pub on_resistance: Band<Resistance>,
}

/// How an output switches.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
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
pub struct Answer {
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
    /// How long the current takes to open one at each corner, where the inductance is known.
    pub rises: Option<[Rise; CORNERS]>,
    /// The battery voltage from which on it is sure to open, at the corner that asks most.
    pub opens_from: OpensFrom,
    /// The limit that an output must have to carry them with margin.
    pub limit_needed: LimitNeeded,
    /// Outputs used, where the number of injectors is known.
    pub outputs: Option<u32>,
    /// What is true of the output, by its stage.
    pub on: On,
}

impl Answer {
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
    PlainSwitch(Carrying, Box<Cures>),
    /// On an output that controls the current.
    CurrentControlled(Controlled),
}

/// What would keep a plain switch inside its limit; each was solved.
#[derive(Clone, Debug, PartialEq)]
pub struct Cures {
    /// Fewer on each output.
    pub fewer: Option<Fewer>,
    /// A resistor in series with each injector; nothing where none is needed.
    pub each: Option<Fit>,
    /// One resistor in series with each output; nothing where none is needed or one injector is on it.
    pub shared: Option<Fit>,
    /// Fewer on each output and a resistor with each injector, where neither alone will do.
    pub both: Option<Both>,
    /// A driver that controls the current of each injector.
    pub driver: Controlled,
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
pub fn answer(inputs: &Inputs) -> Answer {
    let opening = Opening::of(inputs);
    let corners = branch::at_corners(inputs, &Ballast::NONE);
    let on = match (inputs.output.stage, inputs.output.limit) {
        (Stage::CurrentControlled, peak) => {
            On::CurrentControlled(Controlled::of(inputs, &opening, peak))
        }
        (Stage::PlainSwitch, None) => On::UnknownLimit,
        (Stage::PlainSwitch, Some(limit)) => {
            let carrying = Carrying::of(&corners, limit.low);
            let cures = cures(inputs, &opening, &carrying);
            On::PlainSwitch(carrying, Box::new(cures))
        }
    };
    Answer {
        class: Class::of(inputs.resistance.nominal),
        highest: branch::highest(&corners),
        lowest: branch::lowest(&corners),
        may_not_open: opening.missed_at(&corners),
        rises: rise::at_corners(inputs, &opening, &Ballast::NONE),
        opens_from: OpensFrom::of(inputs, &opening, &Ballast::NONE),
        limit_needed: LimitNeeded::of(&corners),
        outputs: outputs(inputs.count, inputs.per_output),
        opening,
        corners,
        on,
    }
}

/// Outputs wanted for so many injectors.
fn outputs(count: Option<u32>, per_output: u32) -> Option<u32> {
    count.map(|count| count.div_ceil(per_output.max(1)))
}

fn cures(inputs: &Inputs, opening: &Opening, carrying: &Carrying) -> Cures {
    let over = carrying.over != Holds::Never;
    let fit = |place| over.then(|| ballast::fit(inputs, opening, carrying.limit, place));
    let alone = Inputs { per_output: 1, ..inputs.clone() };
    let fewer = if carrying.has_margin() { None } else { fewer(inputs, carrying.limit) };
    let each = fit(Place::EachInjector);
    let both = match (&fewer, &each) {
        (None, Some(Fit::Starves(_) | Fit::NoValue(_) | Fit::TooHot(..))) => {
            both(inputs, opening, carrying.limit)
        }
        _ => None,
    };
    Cures {
        fewer,
        each,
        shared: if inputs.per_output > 1 { fit(Place::EachOutput) } else { None },
        both,
        driver: Controlled::of(&alone, opening, None),
    }
}

/// The most injectors below the present number that an output carries when each has a resistor.
fn both(inputs: &Inputs, opening: &Opening, limit: Current) -> Option<Both> {
    (1..inputs.per_output).rev().find_map(|per_output| {
        let tried = Inputs { per_output, ..inputs.clone() };
        match ballast::fit(&tried, opening, limit, Place::EachInjector) {
            Fit::Offered(resistor) => {
                Some(Both { per_output, outputs: outputs(inputs.count, per_output), resistor })
            }
            _ => None,
        }
    })
}

/// The most injectors below the present number that an output carries with margin.
fn fewer(inputs: &Inputs, limit: Current) -> Option<Fewer> {
    (1..inputs.per_output).rev().find_map(|per_output| {
        let tried = Inputs { per_output, ..inputs.clone() };
        let carrying = Carrying::of(&branch::at_corners(&tried, &Ballast::NONE), limit);
        carrying.has_margin().then(|| Fewer {
            per_output,
            highest: carrying.highest,
            outputs: outputs(inputs.count, per_output),
        })
    })
}
