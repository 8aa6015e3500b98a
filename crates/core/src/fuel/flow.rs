//! What an injector passes, from what is stated of it.

use super::{DeliveryEnd, FuelInputs, Regulator};
use crate::{
    quantity::{Band, Density, MassFlow, Measure, Pressure, Value, VolumeRate},
    working::{Formula, Working},
};

const ORIFICE: &str =
    "orifice equation: the volume flow goes as √(Δp / ρ), the mass flow as √(Δp × ρ)";
const OF_VOLUME: Formula =
    Formula { symbols: "m = Q × √(ρ_t × ρ) × √(Δp / p_0)", source: ORIFICE };
const OF_MASS: Formula =
    Formula { symbols: "m = m_0 × √(ρ / ρ_t) × √(Δp / p_0)", source: ORIFICE };
const REFERENCED: Formula = Formula {
    symbols: "Δp = p_r",
    source: "a manifold-referenced regulator holds the difference: common practice, no source",
};
const FIXED: Formula = Formula {
    symbols: "Δp = p_r − p_b",
    source: "definition: pressure before less pressure behind",
};

/// Injectors that are alike.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InjectorSet {
    /// How many.
    pub count: u32,
    /// Flow of one, held open.
    pub flow: Rated,
}

/// The flow of one injector as it is stated, with the test fluid at the stated pressure; above zero.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Rated {
    /// By volume.
    Volume(Band<VolumeRate>),
    /// By mass.
    Mass(Band<MassFlow>),
}

impl Rated {
    /// So many times the flow.
    #[must_use]
    pub fn times(self, factor: f64) -> Self {
        match self {
            Self::Volume(band) => Self::Volume(scaled(band, factor)),
            Self::Mass(band) => Self::Mass(scaled(band, factor)),
        }
    }

    /// The nominal flow by volume of a fluid of this density.
    pub fn volume(self, density: Density) -> VolumeRate {
        match self {
            Self::Volume(band) => band.nominal,
            Self::Mass(band) => band.nominal / density,
        }
    }

    /// The nominal flow by mass of a fluid of this density.
    pub fn mass(self, density: Density) -> MassFlow {
        match self {
            Self::Volume(band) => band.nominal * density,
            Self::Mass(band) => band.nominal,
        }
    }
}

fn scaled<Q: Measure>(band: Band<Q>, factor: f64) -> Band<Q> {
    band.map(|it| Q::from_base(it.base() * factor))
}

/// The pressure across an injector at full load.
///
/// Below zero where the manifold pushes harder than the fuel.
pub(super) fn drop(inputs: &FuelInputs, end: DeliveryEnd, working: &mut Working) -> Pressure {
    let rail = end.of_help(inputs.rail);
    let shown = ("p_r", rail.show());
    match inputs.regulator {
        Regulator::Referenced => working.step(&REFERENCED, &[shown], rail),
        Regulator::Fixed => {
            let boost = end.of_hindrance(inputs.boost);
            working.step(&FIXED, &[shown, ("p_b", boost.show())], rail - boost)
        }
    }
}

/// The mass that one injector passes, held open, at this pressure across it.
///
/// √ of the ratio of pressures: more pressure never passes less. Nothing at no pressure.
pub(super) fn of_one(
    set: &InjectorSet,
    inputs: &FuelInputs,
    drop: Pressure,
    end: DeliveryEnd,
    working: &mut Working,
) -> MassFlow {
    let stated_at = end.of_hindrance(inputs.stated_at);
    let by_pressure = (drop.base() / stated_at.base()).max(0.0).sqrt();
    let fuel = end.of_help(inputs.density);
    let (formula, (name, stated), test, base) = match set.flow {
        Rated::Volume(band) => {
            let (flow, test) = (end.of_help(band), end.of_help(inputs.test_density));
            let by_density = (test.base() * fuel.base()).sqrt();
            (&OF_VOLUME, ("Q", flow.show()), test, flow.base() * by_density)
        }
        Rated::Mass(band) => {
            let (flow, test) = (end.of_help(band), end.of_hindrance(inputs.test_density));
            let by_density = (fuel.base() / test.base()).sqrt();
            (&OF_MASS, ("m_0", flow.show()), test, flow.base() * by_density)
        }
    };
    let shown: [(&str, Value); 5] = [
        (name, stated),
        ("ρ_t", test.show()),
        ("ρ", fuel.show()),
        ("Δp", drop.show()),
        ("p_0", stated_at.show()),
    ];
    working.step(formula, &shown, MassFlow::from_base(base * by_pressure))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The same opening passes as much, whether its flow is stated by volume or by mass.
    #[test]
    fn a_flow_is_the_same_by_volume_and_by_mass() {
        let density = Density::from_base(745.0);
        let volume = Rated::Volume(Band::exact(VolumeRate::from_base(550e-6 / 60.0)));
        let mass = Rated::Mass(Band::exact(volume.mass(density)));
        let apart = mass.volume(density) / volume.volume(density);
        assert!((apart.base() - 1.0).abs() < 1e-12, "{apart:?}");
        let twice = volume.times(2.0).mass(density) / volume.mass(density);
        assert!((twice.base() - 2.0).abs() < 1e-12, "{twice:?}");
    }
}
