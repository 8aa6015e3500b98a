//! What is timed, and what instructions are counted of.

use quietpin_core::{
    circuit::{Diode, GROUND, Network, thermal_voltage_v},
    fields::{loads, outputs},
    output::{FarEnd, Load, OnLevel, Output, PullRail, Stage, SupplyCorner, Surroundings, Wiring},
    plan::Plan,
    quantity::{Band, celsius, ohms, volts},
    schema::Part,
};

/// A half-bridge whose supply is off: a load on a live feed pushes current back through the upper body diode.
pub fn half_bridge(model: Diode) -> Network {
    let mut network = Network::new();
    let [battery, rail, out, feed] =
        ["battery", "rail", "out", "feed"].map(|name| network.node(name));
    network.source(battery, GROUND, 12.6);
    network.resistor(rail, GROUND, 150.0);
    network.diode(out, rail, model);
    network.diode(GROUND, out, model);
    network.resistor(battery, feed, 0.05);
    network.resistor(feed, GROUND, 60.0);
    network.resistor(out, feed, 14.0);
    network.resistor(out, GROUND, 1e7);
    network
}

/// A body diode as the outputs are solved with.
pub fn threshold() -> Diode {
    Diode::Threshold { forward_voltage_v: 0.7, on_resistance_ohm: 0.05 }
}

/// A body diode by the law of a junction.
pub fn exponential() -> Diode {
    Diode::Exponential {
        saturation_current_a: 1e-10,
        emission_coefficient: 1.5,
        thermal_voltage_v: thermal_voltage_v(300.15),
    }
}

/// Six corners of supply and temperature.
pub fn around() -> Surroundings {
    let corner = |name, supply, temperature, is_cranking| SupplyCorner {
        name,
        supply: volts(supply),
        temperature: celsius(temperature),
        is_cranking,
        is_charging: supply > 13.0,
    };
    let nominal = corner("at rest, 20 °C", 12.6, 20.0, false);
    let dead = Band { low: ohms(5.0), nominal: ohms(47.0), high: ohms(1000.0) };
    Surroundings {
        corners: vec![
            corner("cranking, cold", 8.0, -20.0, true),
            corner("cranking, hot", 8.0, 100.0, true),
            nominal,
            corner("at rest, hot", 12.6, 100.0, false),
            corner("charging, cold", 14.8, -20.0, false),
            corner("charging, hot", 14.8, 100.0, false),
        ],
        nominal,
        dead_rail: dead,
        dead_feed: dead,
    }
}

/// A relay between a half-bridge and a relay's contact: the circuit with the most corners that is usual.
pub fn bridge() -> Wiring {
    let mut output = Output::plain(Stage::HalfBridge);
    output.pull_up = Some((Band::with_tolerance(ohms(4700.0), 0.05), PullRail::Battery));
    let loads = vec![Load::relay_coil(FarEnd::Relay)];
    Wiring::alone(output, OnLevel::Ground, loads)
}

/// Half-bridges in a chain, each joined to the next through a relay's coil.
pub fn chain(count: usize) -> Plan {
    let mut plan = Plan::default();
    for at in 0..count {
        plan.add(Part::Outputs);
        plan.put(outputs::NAME.at(at), &format!("A{at}"));
        plan.put(outputs::STAGE.at(at), "half-bridge");
        plan.put(outputs::ON_LEVEL.at(at), "ground");
        if at > 0 {
            let load = plan.add(Part::Loads);
            plan.put(loads::NAME.at(load), &format!("load {at}"));
            plan.put(loads::OUTPUT.at(load), &format!("A{}", at - 1));
            plan.put(loads::FAR_END.at(load), "output");
            plan.put(loads::FAR_OUTPUT.at(load), &format!("A{at}"));
        }
    }
    plan
}
