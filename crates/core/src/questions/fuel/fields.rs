//! The fuel, and what is wanted of the injectors.

use crate::{
    fuel::Regulator,
    quantity::{Density, Power, Pressure, Ratio, SpecificConsumption, Time, VolumeRate},
    schema::{Part, choice, choices, fields, quantity},
    tables::fuels::Fuel,
};

choices! {
    Fuel {
        Petrol = "petrol", "Petrol";
        E10 = "e10", "Petrol E10";
        E85 = "e85", "E85";
        Ethanol = "ethanol", "Ethanol";
        Methanol = "methanol", "Methanol";
    }
}

choices! {
    Regulator {
        Referenced = "referenced", "Manifold-referenced: follows boost";
        Fixed = "fixed", "Not referenced: fixed pressure";
    }
}

fields! {
    of Part::Fuel;
    /// Flow of one injector, held open, by volume or by mass.
    FLOW: VolumeRate = quantity("flow", "Flow of one injector, held open", "cc/min", 20.0, 20000.0)
        .hint("cc/min, lb/h, g/s or kg/h, as its data state it")
        .measure("Its data, or its number looked up; a flow bench measures it. Don't spray petrol to find out.")
        .first();
    /// Power wanted, at the crank.
    POWER: Power = quantity("power", "Target power, at the crank", "kW", 1.0, 5000.0)
        .hint("kW, hp or PS")
        .first();
    /// `petrol`, `e10`, `e85`, `ethanol` or `methanol`.
    KIND: Fuel = choice("kind", "Fuel")
        .assumed("petrol", "the usual fuel");
    /// Pressure at which the flow is stated.
    STATED_PRESSURE: Pressure = quantity("stated_pressure", "Pressure at which that flow is stated", "bar", 0.5, 20.0)
        .hint("3 bar is 43.5 psi")
        .assumed("3 bar", "the usual one: common practice, no source");
    /// Pressure in the rail above that of the open air, engine stopped.
    RAIL_PRESSURE: Pressure = quantity("rail_pressure", "Fuel pressure in this car", "bar", 0.5, 20.0)
        .measure("Let the pressure off before you open the rail for a gauge. Then pump running, engine stopped, so that the manifold has the pressure of the open air.")
        .assumed("3 bar", "the usual regulator: common practice, no source");
    /// Highest pressure in the manifold above that of the open air.
    BOOST: Pressure = quantity("boost", "Highest boost", "bar", 0.0, 6.0)
        .assumed("0 bar", "no turbo, no supercharger");
    /// `referenced` to the manifold, or `fixed`.
    REGULATOR: Regulator = choice("regulator", "Pressure regulator")
        .assumed("referenced", "usual where fuel returns from the rail to the tank: common practice, no source");
    /// Flow of one injector of the second set, at the same pressure.
    SECOND_FLOW: VolumeRate = quantity("second_flow", "Flow of one injector of a second set", "cc/min", 20.0, 20000.0)
        .hint("blank if there is none; stated at the same pressure")
        .rare();
    /// How late an injector opens at the charging voltage.
    DEAD_TIME: Time = quantity("dead_time", "Dead time of the injector, engine running", "ms", 0.0, 5.0)
        .hint("its opening delay at 13 to 14 V")
        .assumed("0.6 to 1.2 ms", "common practice, no source")
        .rare();
    /// The most of the time that an injector may be open.
    DUTY_LIMIT: Ratio = quantity("duty_limit", "Highest injector duty", "%", 30.0, 100.0)
        .assumed("80 to 85%", "common practice, no source")
        .rare();
    /// Fuel that the engine burns for its work.
    CONSUMPTION: SpecificConsumption = quantity("consumption", "Specific fuel consumption (BSFC)", "g/kWh", 150.0, 2000.0)
        .hint("at full power, from a dynamometer")
        .rare();
    /// Density of the fuel.
    DENSITY: Density = quantity("density", "Density of the fuel", "kg/l", 0.6, 0.9)
        .rare();
    /// Density of the fluid with which the flow was measured.
    TEST_DENSITY: Density = quantity("test_density", "Density of the fluid the flow was measured with", "kg/l", 0.6, 0.9)
        .assumed("0.72 to 0.77 kg/l", "much like petrol; heptane has 0.684: common practice, no source")
        .rare();
}
