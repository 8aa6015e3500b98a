//! Question 2: the fuel, and what is wanted of the injectors.

use super::{Choice, Field, Kind, choice, quantity};
use crate::quantity::Dimension::{Consumption, Density, Flow, Power, Pressure, Share, Time};

const FUELS: &[Choice] = &[
    choice("petrol", "Petrol"),
    choice("e10", "Petrol E10"),
    choice("e85", "E85"),
    choice("ethanol", "Ethanol"),
    choice("methanol", "Methanol"),
];

const REGULATORS: &[Choice] = &[
    choice("referenced", "With a hose to the manifold: it follows boost"),
    choice("fixed", "Without a hose: boost takes its part"),
];

pub(super) const FIELDS: &[Field] = &[
    Field::new("fuel.flow", "Flow of one injector, held open", quantity(Flow, "cc/min", 20.0, 20000.0))
        .hint("cc/min, lb/h, g/s or kg/h, as its data state it")
        .measure("Its data, or its number looked up; a flow bench measures it. Don't spray petrol to find out.")
        .first(),
    Field::new("fuel.power", "Power wanted, at the crank", quantity(Power, "kW", 1.0, 5000.0)).hint("kW, hp or PS").first(),
    Field::new("fuel.kind", "Fuel", Kind::Choice(FUELS)).assumed("petrol", "the usual fuel"),
    Field::new("fuel.stated_pressure", "Pressure at which that flow is stated", quantity(Pressure, "bar", 0.5, 20.0))
        .hint("3 bar is 43.5 psi")
        .assumed("3 bar", "the usual one: common practice, no source"),
    Field::new("fuel.rail_pressure", "Fuel pressure in this car", quantity(Pressure, "bar", 0.5, 20.0))
        .measure("Let the pressure off before you open the rail for a gauge. Then pump running, engine stopped, so that the manifold has the pressure of the open air.")
        .assumed("3 bar", "the usual regulator: common practice, no source"),
    Field::new("fuel.boost", "Highest boost", quantity(Pressure, "bar", 0.0, 6.0)).assumed("0 bar", "no turbo, no supercharger"),
    Field::new("fuel.regulator", "The pressure regulator is", Kind::Choice(REGULATORS))
        .assumed("referenced", "usual where fuel returns from the rail to the tank: common practice, no source"),
    Field::new("fuel.second_flow", "Flow of one injector of a second set", quantity(Flow, "cc/min", 20.0, 20000.0))
        .hint("blank if there is none; stated at the same pressure")
        .rare(),
    Field::new("fuel.dead_time", "Dead time of the injector, engine running", quantity(Time, "ms", 0.0, 5.0))
        .hint("its opening delay at 13 to 14 V")
        .assumed("0.6 to 1.2 ms", "common practice, no source")
        .rare(),
    Field::new("fuel.duty_limit", "The most of the time that it may be open", quantity(Share, "%", 30.0, 100.0))
        .assumed("80 to 85 %", "common practice, no source")
        .rare(),
    Field::new("fuel.consumption", "Fuel burnt for the work done", quantity(Consumption, "g/kWh", 150.0, 2000.0))
        .hint("at full power, from a dynamometer")
        .rare(),
    Field::new("fuel.density", "Density of the fuel", quantity(Density, "kg/l", 0.6, 0.9)).rare(),
    Field::new("fuel.test_density", "Density of the fluid the flow was measured with", quantity(Density, "kg/l", 0.6, 0.9))
        .assumed("0.72 to 0.77 kg/l", "much like petrol; heptane has 0.684: common practice, no source")
        .rare(),
];
