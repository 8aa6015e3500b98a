//! How long the current takes to reach a level: what opens an injector, or the peak of a driver.
//!
//! The coil is taken to keep its inductance while the needle moves, which it does not quite: the time is that of the
//! current, not of the fuel. More inductance, less supply and more resistance each make it longer, so the ends of
//! the tolerances are the ends of the time.

use super::{
    CORNERS, InjectorInputs,
    branch::{Ballast, CurrentEnd, InjectorBranch, note},
    winding::Winding,
};
use crate::{
    conditions::Corner,
    quantity::{Band, Current, Measure, Time, seconds},
    transient::Inductive,
    working::{Formula, Step, Working},
};

const RISE: Formula = Formula {
    symbols: "t = −L / R × ln(1 − I_t × R / V)",
    source: "OpenStax, University Physics, vol. 2, section 14.4, solved for the time",
};
const REACHED: Formula = Formula {
    symbols: "I = V / R × (1 − exp(−t × R / L))",
    source: "OpenStax, University Physics, vol. 2, section 14.4",
};

/// The time in which the current reaches a level, at a corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CurrentRise {
    /// The corner.
    pub corner: Corner,
    /// With all that is meant; nothing where that current is never reached.
    pub nominal: Option<Time>,
    /// With every tolerance at the end that makes it longest; nothing where it may never be reached.
    pub longest: Option<Time>,
}

/// One injector's current in time, with its resistors.
#[derive(Clone, Copy, Debug)]
pub struct Rising<'a> {
    /// What is known.
    pub inputs: &'a InjectorInputs,
    /// Its winding.
    pub winding: &'a Winding,
    /// The resistors in series.
    pub ballast: &'a Ballast,
}

impl Rising<'_> {
    /// The times in which the current of one injector reaches `target`, at every corner.
    pub fn at_corners(&self, target: Band<Current>) -> [CurrentRise; CORNERS] {
        self.inputs.corners.map(|corner| {
            let time = |end| self.time(target, &corner, end, &mut None);
            CurrentRise {
                corner,
                nominal: time(CurrentEnd::Nominal),
                longest: time(CurrentEnd::Least),
            }
        })
    }

    /// How the time at a corner was found; ends with the resistance where there is none.
    pub fn working_at(&self, target: Band<Current>, corner: &Corner, end: CurrentEnd) -> Vec<Step> {
        let mut working = Some(Working::new());
        self.time(target, corner, end, &mut working);
        working.map(Working::into_steps).unwrap_or_default()
    }

    /// The current of one injector at a time after its output closed.
    pub fn current_at(
        &self,
        time: Time,
        corner: &Corner,
        end: CurrentEnd,
        working: &mut Option<Working>,
    ) -> Option<Current> {
        let (coil, shown) = self.coil(corner, end, working)?;
        let current = Measure::from_base(coil.current_at(0.0, time.base())?);
        Some(note(working, &REACHED, current, || {
            let mut values = shown;
            values.push(("t", time.show()));
            values
        }))
    }

    fn time(
        &self,
        target: Band<Current>,
        corner: &Corner,
        end: CurrentEnd,
        working: &mut Option<Working>,
    ) -> Option<Time> {
        // the level and the inductance both make it longer
        let target = end.of_hindrance(target);
        let (coil, shown) = self.coil(corner, end, working)?;
        let time = seconds(coil.time_to(0.0, target.base())?);
        Some(note(working, &RISE, time, || {
            let mut values = shown;
            values.push(("I_t", target.show()));
            values
        }))
    }

    /// The winding and all that lies in series with it, with its values by their symbols.
    fn coil(
        &self,
        corner: &Corner,
        end: CurrentEnd,
        working: &mut Option<Working>,
    ) -> Option<(Inductive, Vec<(&'static str, crate::quantity::Value)>)> {
        let branch = InjectorBranch::at(self.inputs, corner, end, self.ballast, working);
        let inductance = end.of_hindrance(self.winding.inductance);
        let resistance = branch.resistance(working);
        let coil = Inductive::new(corner.supply.base(), resistance.base(), inductance.base())?;
        let shown =
            vec![("L", inductance.show()), ("R", resistance.show()), ("V", corner.supply.show())];
        Some((coil, shown))
    }
}
