//! A diode across an injector: its current runs on through it when the output opens, and the injector closes late.

use super::{InjectorInputs, winding::Winding};
use crate::{
    output::DIODE_FORWARD_V,
    quantity::{Measure, Time, seconds},
    transient::Inductive,
    working::{Formula, Step, step},
};

const RUNS_ON: Formula = Formula {
    symbols: "t = L / R × ln((I R + V_d) / (a I R + V_d))",
    source: "University Physics, vol. 2, section 14.4: a coil's current runs down through its own resistance; an injector closes \
             at about a quarter of its current (a): common practice, no source",
};

/// The part of its current below which an injector closes: common practice, no source.
const HELD_BY: f64 = 0.25;

/// How long the current of one holds it open after its output has opened, battery at rest; nothing without a diode.
pub fn runs_on(inputs: &InjectorInputs) -> Option<(Time, Step)> {
    if !inputs.has_diode {
        return None;
    }
    let inductance = Winding::of(inputs).inductance.nominal;
    let resistance = inputs.resistance.nominal;
    let [_, _, rest, ..] = inputs.corners;
    let current = rest.supply / (resistance + inputs.resistor.nominal);
    let coil = Inductive::new(-DIODE_FORWARD_V, resistance.base(), inductance.base())?;
    let time = seconds(coil.time_to(current.base(), HELD_BY * current.base())?);
    let values = [
        ("L", inductance.show()),
        ("R", resistance.show()),
        ("I", current.show()),
        ("V_d", crate::quantity::volts(DIODE_FORWARD_V).show()),
        ("a", crate::quantity::share(HELD_BY).show()),
    ];
    Some((time, step(&RUNS_ON, &values, time)))
}
