//! How long the current takes to reach what opens an injector.
//!
//! The coil is taken to keep its inductance while the needle moves, which it does not quite: the time is that of the
//! current, not of the fuel. More inductance, less supply and more resistance each make it longer, so the ends of
//! the tolerances are the ends of the time.

use super::{
    CORNERS, Inputs,
    branch::{Ballast, Branch, End},
    opening::Opening,
};
use crate::{
    conditions::Corner,
    quantity::{Band, Inductance, Measure, Time, seconds},
    transient::Inductive,
    working::{Formula, Step, Working},
};

const RISE: Formula = Formula {
    symbols: "t_o = −L / R × ln(1 − I_o × R / V)",
    source: "OpenStax, University Physics, vol. 2, section 14.4, solved for the time",
};

/// The time in which the current reaches what opens an injector, at a corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rise {
    /// The corner.
    pub corner: Corner,
    /// With all that is meant; nothing where that current is never reached.
    pub nominal: Option<Time>,
    /// With every tolerance at the end that makes it longest; nothing where it may never be reached.
    pub longest: Option<Time>,
}

/// The times at every corner with these resistors, where the inductance is known.
pub fn at_corners(
    inputs: &Inputs,
    opening: &Opening,
    ballast: &Ballast,
) -> Option<[Rise; CORNERS]> {
    let inductance = inputs.inductance?;
    Some(inputs.corners.map(|corner| {
        let time = |end| time(inputs, inductance, opening, &corner, end, ballast, &mut None);
        Rise { corner, nominal: time(End::Nominal), longest: time(End::Least) }
    }))
}

/// How the time at a corner was found; nothing where there is none.
pub fn working_at(
    inputs: &Inputs,
    opening: &Opening,
    corner: &Corner,
    end: End,
    ballast: &Ballast,
) -> Vec<Step> {
    let Some(inductance) = inputs.inductance else { return Vec::new() };
    let mut working = Some(Working::new());
    time(inputs, inductance, opening, corner, end, ballast, &mut working);
    working.map(Working::into_steps).unwrap_or_default()
}

fn time(
    inputs: &Inputs,
    inductance: Band<Inductance>,
    opening: &Opening,
    corner: &Corner,
    end: End,
    ballast: &Ballast,
    working: &mut Option<Working>,
) -> Option<Time> {
    let branch = Branch::at(inputs, corner, end, ballast, working);
    let (current, inductance) = match end {
        End::Most => (opening.current.low, inductance.low),
        End::Nominal => (opening.current.nominal, inductance.nominal),
        End::Least => (opening.current.high, inductance.high),
    };
    let resistance = branch.resistance(working);
    let coil = Inductive::new(corner.supply.base(), resistance.base(), inductance.base())?;
    let time = seconds(coil.time_to(0.0, current.base())?);
    Some(super::branch::note(working, &RISE, time, || {
        vec![
            ("L", inductance.show()),
            ("R", resistance.show()),
            ("I_o", current.show()),
            ("V", corner.supply.show()),
        ]
    }))
}
