//! What becomes of a winding's current when it is switched off: the kick, and what catches it.
//!
//! The current runs on, in the same direction, through the way that asks for the least voltage: a diode or a resistor
//! across the winding, the other switch or the other body diode of the output, or the clamp of the switch that opened.
//! Where the plan names none of them, nothing is known to catch it.

use super::{
    DIODE_FORWARD_V, DIODE_ON_OHM, Load, LoadFlow, Point, SolvedCorner, Stage, Suppression, Wiring,
};
use crate::{
    quantity::{
        Current, Energy, Inductance, Measure, Resistance, Time, Voltage, joules, ohms, seconds,
        volts,
    },
    transient::{Inductive, TurnOff},
};

/// What catches a kick.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Catcher {
    /// The diode across the winding.
    Diode,
    /// The resistor across the winding.
    Resistor,
    /// The other switch of an output that drives both ways.
    Switch,
    /// The body diode to the supply.
    UpperDiode,
    /// The body diode from ground.
    LowerDiode,
    /// The clamp of the switch that opened.
    Clamp,
}

/// The way on which a winding's current runs on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Path {
    /// What catches it.
    pub catcher: Catcher,
    /// The voltage against which it runs.
    pub net: Voltage,
    /// The resistance in it beside the winding's own.
    pub resistance: Resistance,
    /// The voltage across what gets hot by it inside the output; nought where that is outside.
    pub drop: Voltage,
}

/// A turn-off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Kick {
    /// The current that is switched off.
    pub current: Current,
    /// The inductance that it was taken with.
    pub inductance: Inductance,
    /// The resistance of the winding.
    pub winding: Resistance,
    /// What catches it; nothing where nothing is known to.
    pub path: Option<Path>,
    /// What gets hot inside the output takes this at each turn-off.
    pub in_output: Energy,
    /// Until the winding's current has fallen to where the load is sure to let go.
    pub lets_go: Option<Time>,
}

/// The turn-off of the load that is asked about, from a corner at which it is on. Nothing for a load without winding
/// or without current.
pub fn kick(wiring: &Wiring, solved: &SolvedCorner, inductance: Inductance) -> Option<Kick> {
    let load = wiring.loads.get(solved.point.subject)?;
    let flow = solved.load()?;
    let current = flow.current.base().abs();
    if inductance.base() <= 0.0 || current < LEAST_A {
        return None;
    }
    let path = path(wiring, load, flow, &solved.point);
    // where nothing is known to catch it, the switch that opened does, until it breaks
    let caught = path.or_else(|| usual_clamp(wiring, flow, &solved.point));
    let net = caught.map_or(0.0, |path| path.net.base());
    let ohm = flow.resistance.base() + caught.map_or(0.0, |path| path.resistance.base());
    let charge = TurnOff::new(current, net, ohm, inductance.base()).map(|it| it.charge_c());
    let drop = caught.map_or(0.0, |path| path.drop.base());
    let sure = load.drop_out.low.base() / load.cold_resistance(solved.point.load).base();
    let decay = Inductive::new(-net, ohm, inductance.base()).filter(|_| path.is_some());
    let falls =
        |coil: Inductive| if sure < current { coil.time_to(current, sure) } else { Some(0.0) };
    Some(Kick {
        current: Measure::from_base(current),
        inductance,
        winding: flow.resistance,
        path,
        in_output: joules(drop * charge.unwrap_or(0.0)),
        lets_go: decay.and_then(falls).map(seconds),
    })
}

/// What a switch whose clamp is not known breaks through at, in volts: common practice, no source.
const USUAL_CLAMP_V: f64 = 45.0;

/// The way of a kick that nothing is known to catch: through the switch that opened.
pub(super) fn usual_clamp(wiring: &Wiring, flow: &LoadFlow, point: &Point) -> Option<Path> {
    let output = &wiring.output;
    let rises = flow.current.base() < 0.0;
    let has_switch = if rises { output.stage.has_lower() } else { output.stage.has_upper() };
    let far = flow.far.map_or(0.0, Measure::base);
    let top = point.at.supply.base();
    let across = if rises { far } else { top - far };
    let net = volts((USUAL_CLAMP_V - across).max(0.0));
    let drop = volts(USUAL_CLAMP_V);
    has_switch.then_some(Path { catcher: Catcher::Clamp, net, resistance: ohms(0.0), drop })
}

/// Below this a kick is nothing.
const LEAST_A: f64 = 1e-3;

/// The way that asks for the least voltage at the current that flows.
pub(super) fn path(wiring: &Wiring, load: &Load, flow: &LoadFlow, point: &Point) -> Option<Path> {
    let output = &wiring.output;
    let supply = point.at.supply.base();
    let top = if output.stage == Stage::Logic { 5.0 } else { supply };
    let far = flow.far.map_or(0.0, Measure::base);
    let current = flow.current.base();
    // current into the pin from a far end above: the pin rises when its lower switch opens
    let rises = current < 0.0;
    let span = if rises { top - far } else { far };
    let (own, other, other_diode) = if rises {
        (output.stage.has_lower(), output.stage.has_upper(), Catcher::UpperDiode)
    } else {
        (output.stage.has_upper(), output.stage.has_lower(), Catcher::LowerDiode)
    };
    let on_ohm = output.on_resistance_at(point.on, point.at.temperature).base();
    let series = if load.has_feed_diode { DIODE_FORWARD_V } else { 0.0 };
    let mut ways = Vec::new();
    match &load.suppression {
        Suppression::Diode { is_right_way: true } => {
            ways.push((Catcher::Diode, DIODE_FORWARD_V, DIODE_ON_OHM, 0.0));
        }
        Suppression::Resistor(band) => {
            ways.push((Catcher::Resistor, 0.0, point.shunt.of(band).base(), 0.0));
        }
        _ => {}
    }
    if output.stage.is_two_way() {
        ways.push((Catcher::Switch, span + series, on_ohm, 0.0));
    }
    if other {
        let drop = DIODE_FORWARD_V;
        ways.push((other_diode, span + drop + series, DIODE_ON_OHM, drop));
    }
    if let Some(clamp) = output.clamp.as_ref().filter(|_| own) {
        // the switch that opened stands between the pin and ground, or between the pin and the top
        let across = if rises { far } else { top - far };
        let clamp = clamp.nominal.base();
        ways.push((Catcher::Clamp, clamp - across + series, 0.0, clamp));
    }
    let asked = |way: &(Catcher, f64, f64, f64)| way.1 + way.2 * current.abs();
    let least = ways.into_iter().min_by(|a, b| asked(a).total_cmp(&asked(b)))?;
    let (catcher, net, ohm, drop) = least;
    Some(Path { catcher, net: volts(net.max(0.0)), resistance: ohms(ohm), drop: volts(drop) })
}
