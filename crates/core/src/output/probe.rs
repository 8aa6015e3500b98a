//! A bare pin that floats tells a meter nothing: what a resistor, and what a test lamp, shows instead.

use super::{
    Contact, FarEnd, KeyState, Load, LoadKind, Operating, Phase, Point, Solver, Surroundings,
    Wiring,
};
use crate::quantity::{Band, Current, Measure, Resistance, Voltage, amperes, ohms};

/// The resistor that a fitter hangs on a floating pin, in ohms: it holds the pin against a meter and asks 13 mA at most.
const PROBE_OHM: f64 = 1000.0;
/// The filament of a test lamp of 12 V and 3 W while cold, a tenth of what it has while lit: common practice, no source.
const LAMP_COLD_OHM: f64 = 4.8;

/// What is seen at a pin that floats while the output is off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Probe {
    /// Where the resistor or the lamp goes from the pin.
    pub end: FarEnd,
    /// The resistor.
    pub resistor: Resistance,
    /// The pin with the resistor, output off.
    pub off: Band<Voltage>,
    /// The same with the output on.
    pub on: Band<Voltage>,
    /// What a lit test lamp takes.
    pub lamp: Current,
    /// What it takes for a moment when it is switched on.
    pub lamp_inrush: Current,
}

/// The probe for an output with one switch: against the rail that the switch is not on. Nothing for one that drives both
/// ways, which holds its pin.
pub fn probe(wiring: &Wiring, around: &Surroundings) -> Option<Probe> {
    if wiring.output.stage.is_two_way() {
        return None;
    }
    let end = if wiring.output.stage.has_lower() { FarEnd::Battery } else { FarEnd::Ground };
    let with = |kind, ohm: f64| {
        let load = Load { resistance: Band::exact(ohms(ohm)), ..Load::usual(kind, end) };
        Wiring::alone(wiring.output.clone(), wiring.level, vec![load])
    };
    let (held, lamp) = (with(LoadKind::Resistor, PROBE_OHM), with(LoadKind::Lamp, LAMP_COLD_OHM));
    let (held, lamp) = (&mut Solver::new(&held, around), &mut Solver::new(&lamp, around));
    Some(Probe {
        end,
        resistor: ohms(PROBE_OHM),
        off: pin(held, KeyState::Off)?,
        on: pin(held, KeyState::On)?,
        lamp: most(lamp, Phase::Running),
        lamp_inrush: most(lamp, Phase::Standing),
    })
}

/// The pin with the engine stopped, from the lowest supply to the highest.
fn pin(solver: &mut Solver<'_>, state: KeyState) -> Option<Band<Voltage>> {
    let around = solver.around;
    let mut at = |corner| solver.operate(state, &Point::nominal(corner, 0, Contact::Closed));
    let nominal = Band::exact(at(around.nominal)?.pin?);
    let corners = around.corners.iter().filter(|corner| !corner.is_cranking);
    let pins = corners.filter_map(|corner| at(*corner)?.pin);
    Some(pins.fold(nominal, |band, pin| band.widened_to(pin)))
}

fn most(solver: &mut Solver<'_>, phase: Phase) -> Current {
    let corners = solver.around.corners.iter().filter(|corner| !corner.is_cranking);
    let point = |corner| Point { phase, ..Point::nominal(corner, 0, Contact::Closed) };
    let solved = corners.filter_map(|corner| solver.operate(KeyState::On, &point(*corner)));
    amperes(solved.map(|it: Operating| it.switch_current().base()).fold(0.0, f64::max))
}
