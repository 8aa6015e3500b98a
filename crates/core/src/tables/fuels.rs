//! Fuels: how heavy they are, and how much air they burn with.
//!
//! Densities at 15 to 20 °C: petrol 0.720 to 0.775 kg/l (EN 228, from memory), 0.745 between; ethanol and methanol 0.789
//! and 0.791 kg/l at 20 °C, both 0.796 at 60 °F (US Department of Energy, fuel properties comparison). Blends by volume.
//! Air: 14.7 for petrol (the same table); ethanol and methanol by element balance in dry air; blends by mass.

use crate::quantity::{Band, Density, Measure};

/// A fuel for spark ignition.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fuel {
    /// Petrol with little or no ethanol.
    Petrol,
    /// Petrol with a tenth of ethanol by volume.
    E10,
    /// 85 percent of ethanol by volume, the rest petrol.
    E85,
    /// Ethanol.
    Ethanol,
    /// Methanol.
    Methanol,
}

impl Fuel {
    /// Every one.
    pub const ALL: [Self; 5] = [Self::Petrol, Self::E10, Self::E85, Self::Ethanol, Self::Methanol];

    /// Its density, from the lightest to the heaviest that is sold under its name.
    pub fn density(self) -> Band<Density> {
        let (low, nominal, high) = match self {
            Self::Petrol => (720.0, 745.0, 775.0),
            Self::E10 => (726.9, 749.4, 777.1),
            Self::E85 => (778.7, 782.4, 792.9),
            Self::Ethanol => (789.0, 789.0, 796.0),
            Self::Methanol => (791.0, 791.0, 796.0),
        };
        let kilograms_per_cubic_metre = Density::from_base;
        Band {
            low: kilograms_per_cubic_metre(low),
            nominal: kilograms_per_cubic_metre(nominal),
            high: kilograms_per_cubic_metre(high),
        }
    }

    /// Kilograms of air that a kilogram of it burns with and leaves nothing over.
    pub fn air(self) -> f64 {
        match self {
            Self::Petrol => 14.7,
            Self::E10 => 14.1004,
            Self::E85 => 9.8184,
            Self::Ethanol => 9.0049,
            Self::Methanol => 6.4735,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand, by volume: petrol of 720, 745 and 775 kg/m³ (EN 228, from memory; 745 between), ethanol of 789, 796 at the coldest.
    #[test]
    fn a_blend_is_as_heavy_as_its_parts() {
        let ends = |fuel: Fuel| {
            let Band { low, nominal, high } = fuel.density();
            [low, nominal, high].map(Measure::base)
        };
        let (petrol, ethanol) = ([720.0, 745.0, 775.0], [789.0, 789.0, 796.0]);
        for (fuel, part) in
            [(Fuel::Petrol, 0.0), (Fuel::E10, 0.1), (Fuel::E85, 0.85), (Fuel::Ethanol, 1.0)]
        {
            for ((found, petrol), ethanol) in ends(fuel).into_iter().zip(petrol).zip(ethanol) {
                let expected = (1.0 - part) * petrol + part * ethanol;
                assert!((found - expected).abs() < 0.1, "{fuel:?}: {found}, not {expected}");
            }
        }
        for (found, expected) in ends(Fuel::Methanol).into_iter().zip([791.0, 791.0, 796.0]) {
            assert!((found - expected).abs() < 0.1, "methanol: {found}, not {expected}");
        }
    }

    #[test]
    fn every_fuel_has_its_density_between_its_ends_and_wants_less_air_than_the_one_before() {
        for pair in Fuel::ALL.windows(2) {
            assert!(pair[0].air() > pair[1].air(), "{pair:?}");
        }
        for fuel in Fuel::ALL {
            let Band { low, nominal, high } = fuel.density();
            assert!(low <= nominal && nominal <= high, "{fuel:?}");
        }
    }
}
