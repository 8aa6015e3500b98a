//! A circuit in the simulator's language, and its answer read back.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use quietpin_core::circuit::Diode;

use crate::circuit::{Answer, Circuit, Kind, Part};

/// Tighter than the comparison by far. Smaller still, and the simulator's own rounding keeps it from settling.
const OPTIONS: &str = ".options reltol=1e-10 abstol=1e-16 vntol=1e-11 gmin=1e-18 itl1=2000";

/// The netlist; what floats can be pinned down, or left as it is.
pub(crate) fn netlist(circuit: &Circuit, is_pinned: bool) -> String {
    let mut text = "* quietpin\n".to_owned();
    for (number, part) in circuit.parts.iter().enumerate() {
        text.push_str(&lines(number, part));
    }
    for (node, v) in circuit.pins.iter().filter(|_| is_pinned) {
        // A string takes what is written.
        let _ = writeln!(text, "VP{node} {node} 0 {v:e}");
    }
    text + OPTIONS + "\n.end\n"
}

fn lines(number: usize, part: &Part) -> String {
    let Part { from, to, kind } = *part;
    match kind {
        Kind::Resistor { ohm } => format!("R{number} {from} {to} {ohm:e}\n"),
        Kind::Source { v } => format!("V{number} {from} {to} {v:e}\n"),
        Kind::Current { a } => format!("I{number} {from} {to} {a:e}\n"),
        Kind::Diode(Diode::Threshold { forward_voltage_v, on_resistance_ohm }) => format!(
            "B{number} {from} {to} I=uramp(V({from},{to})-{forward_voltage_v:e})/{on_resistance_ohm:e}\n"
        ),
        Kind::Diode(Diode::Exponential {
            saturation_current_a,
            emission_coefficient,
            thermal_voltage_v,
        }) => {
            let scale_v = emission_coefficient * thermal_voltage_v;
            junction(number, part, saturation_current_a, emission_coefficient)
                + &reverse(number, part, saturation_current_a, scale_v)
        }
    }
}

/// The simulator's own diode, which finds its operating point in its own way.
fn junction(number: usize, part: &Part, saturation_a: f64, emission: f64) -> String {
    let Part { from, to, .. } = *part;
    format!(
        "D{number} {from} {to} M{number}\n.model M{number} D(IS={saturation_a:e} N={emission:e})\n"
    )
}

/// Below -3 n VT that diode follows -Is (1 - (3 n VT / (e |v|))^3) instead of the exponential: up to 0.4 % of Is apart,
/// which is millivolts on 10 megohm. A source beside it carries the difference.
fn reverse(number: usize, part: &Part, saturation_a: f64, scale_v: f64) -> String {
    let Part { from, to, .. } = *part;
    let v = format!("V({from},{to})");
    let (start, cubic) = (-3.0 * scale_v, 3.0 * scale_v / std::f64::consts::E);
    let cube = [(); 3].map(|()| format!("({cubic:e}/{v})")).join("*");
    format!(
        "B{number} {from} {to} I={v} < {start:e} ? {saturation_a:e}*(exp({v}/{scale_v:e})+{cube}) : 0\n"
    )
}

/// Commands that print all voltages and currents.
pub(crate) fn prints(circuit: &Circuit) -> String {
    let mut commands = String::new();
    for node in 1..circuit.nodes() {
        // A string takes what is written.
        let _ = writeln!(commands, "print v({node})");
    }
    for (number, part) in circuit.parts.iter().enumerate() {
        for name in names(number, part.kind) {
            let _ = writeln!(commands, "print {name}");
        }
    }
    commands
}

/// What the simulator calls the currents that make up the current of a part.
fn names(number: usize, kind: Kind) -> Vec<String> {
    match kind {
        Kind::Resistor { .. } => vec![format!("@r{number}[i]")],
        Kind::Source { .. } => vec![format!("i(v{number})")],
        Kind::Current { .. } => vec![],
        Kind::Diode(Diode::Threshold { .. }) => vec![format!("@b{number}[i]")],
        Kind::Diode(Diode::Exponential { .. }) => {
            vec![format!("@d{number}[id]"), format!("@b{number}[i]")]
        }
    }
}

/// The answer among the lines that the commands printed.
pub(crate) fn answer(circuit: &Circuit, printed: &str) -> Answer {
    let pairs = printed.lines().filter_map(|line| line.split_once(" = "));
    let values: BTreeMap<&str, f64> =
        pairs.filter_map(|(name, value)| Some((name.trim(), value.trim().parse().ok()?))).collect();
    let value = |name: &str| values.get(name).copied().filter(|value| value.is_finite());
    let voltage = |node| if node == 0 { Some(0.0) } else { value(&format!("v({node})")) };
    let current = |(number, part): (usize, &Part)| match part.kind {
        Kind::Current { a } => Some(a),
        kind => names(number, kind).iter().map(|name| value(name)).sum(),
    };
    Answer {
        voltages: (0..circuit.nodes()).map(voltage).collect(),
        currents: circuit.parts.iter().enumerate().map(current).collect(),
    }
}
