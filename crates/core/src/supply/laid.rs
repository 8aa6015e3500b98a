//! A wire as it is laid: hot air about it, others beside it, an insulation that lasts to a temperature.
//!
//! One wire is one lump: its copper stores the heat of its current, and gives it off in proportion to how much hotter than the
//! air it is. How much it gives off follows from the table in [`wires`], whose current brings the conductor to the temperature of
//! that table's PVC, 105 °C, in free air of 20 °C. The heat that the insulation stores is left out, which is on the safe side.

mod lasts;

pub use lasts::{AGES, OVERLOADED, SHORTED, short_k};

use crate::{
    math,
    quantity::{Area, Current, Measure, Temperature, amperes, celsius, metres, share},
    tables::{copper, wires},
    working::{Formula, Step, step},
};

/// The temperature at which the table's currents leave the conductor, and that of the air about it.
const TABLE_C: f64 = 105.0;
const TABLE_AIR_C: f64 = 20.0;

/// Heat that a kelvin takes in a cubic metre of copper, in joules: IEC 60364-5-54, annex A, 3.45e-3 J/(K·mm³), from memory.
const HEAT_J_PER_K_M3: f64 = 3.45e6;
/// How many loaded wires in a bundle, and the share of its current that each bears: IEC 60364-5-52, table B.52.17, bunched in air,
/// from memory.
const BUNCHED: [(u32, f64); 12] = [
    (1, 1.0),
    (2, 0.80),
    (3, 0.70),
    (4, 0.65),
    (5, 0.60),
    (6, 0.57),
    (7, 0.54),
    (8, 0.52),
    (9, 0.50),
    (12, 0.45),
    (16, 0.41),
    (20, 0.38),
];

/// The formula of [`LaidWire::bears`].
pub const BEARS: Formula = Formula {
    symbols: "I_w = I_table × f × √((T_ins − T_air) / 85 K × R_105 / R_ins)",
    source: "heat by the square of the current; a cable distributor's table in free air, 105 °C above air of 20 °C; bunched by \
        IEC 60364-5-52, table B.52.17, and classes by ISO 6722-1, from memory",
};

/// What a wire is insulated with, by the temperature that it lasts at: ISO 6722-1, from memory.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Insulation {
    /// 85 °C: plain PVC.
    A,
    /// 100 °C: PVC that bears heat.
    B,
    /// 125 °C: crosslinked.
    C,
    /// 150 °C: crosslinked, for heat.
    D,
}

impl Insulation {
    /// All of them, the least first.
    pub const ALL: [Self; 4] = [Self::A, Self::B, Self::C, Self::D];

    /// What it bears for long: 3000 hours.
    pub fn lasting(self) -> Temperature {
        celsius(match self {
            Self::A => 85.0,
            Self::B => 100.0,
            Self::C => 125.0,
            Self::D => 150.0,
        })
    }

    /// What it bears for six hours.
    pub fn overload(self) -> Temperature {
        celsius(self.lasting().base() + lasts::OVER_K)
    }

    /// What it bears in a short of five seconds at most. IEC 60364-4-43, from memory: PVC, and crosslinked insulation.
    pub fn short_circuit(self) -> Temperature {
        celsius(match self {
            Self::A | Self::B => 160.0,
            Self::C | Self::D => 250.0,
        })
    }
}

/// The share of its current that each of so many loaded wires in a bundle bears. Between two rows of the table, and beyond
/// the last, by the power of the number.
pub fn bunched(loaded: u32) -> f64 {
    let pair = BUNCHED.windows(2).find(|pair| matches!(pair, [_, (to, _)] if loaded <= *to));
    let pair = pair.or_else(|| BUNCHED.windows(2).next_back());
    let Some([(count_1, share_1), (count_2, share_2)]) = pair else { return 1.0 };
    let (from, to) = (f64::from(*count_1), f64::from(*count_2));
    let power = math::ln(share_2 / share_1) / math::ln(to / from);
    share_1 * math::pow(f64::from(loaded.max(1)) / from, power)
}

/// A wire as it is laid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LaidWire {
    /// Its copper.
    pub area: Area,
    /// What is around it.
    pub insulation: Insulation,
    /// The hottest air about it.
    pub ambient: Temperature,
    /// How many loaded wires are in its bundle, itself among them.
    pub bundled: u32,
}

impl LaidWire {
    /// What brings it to the temperature that its insulation lasts at; nothing where the air is hotter. See [`BEARS`].
    pub fn bears(&self) -> Current {
        self.held_at(self.insulation.lasting())
    }

    /// What brings it to the overload of its class in the end: anything above does so in a time.
    pub(super) fn overloaded_above(&self) -> Current {
        self.held_at(self.insulation.overload())
    }

    /// What holds it at a temperature; nothing where the air is hotter.
    fn held_at(&self, hot: Temperature) -> Current {
        let rise = (hot.base() - self.ambient.base()).max(0.0);
        amperes((self.sheds() * rise / self.ohm_per_m(hot)).sqrt())
    }

    /// How [`LaidWire::bears`] is found.
    pub fn bears_step(&self) -> Step {
        let hot = self.insulation.lasting();
        let values = [
            ("I_table", wires::bears(self.copper()).show()),
            ("f", share(bunched(self.bundled)).show()),
            ("T_ins", hot.show()),
            ("T_air", self.ambient.show()),
            ("R_105", copper::wire(metres(1.0), self.copper(), celsius(TABLE_C)).show()),
            ("R_ins", copper::wire(metres(1.0), self.copper(), hot).show()),
        ];
        step(&BEARS, &values, self.bears())
    }

    /// The temperature that a current brings it to in the end; none where its resistance grows faster than it gives off heat.
    pub fn settles_at(&self, current: Current) -> Option<Temperature> {
        let (heat, gains) = self.heated_by(current);
        (gains < 0.0).then(|| celsius(self.ambient.base() - heat / gains))
    }

    /// The heat of a current in one metre at the temperature of the air, and how much more of it stays by each kelvin above, in W and W/K.
    fn heated_by(&self, current: Current) -> (f64, f64) {
        let square = current.base() * current.base();
        let by_kelvin = copper::COEFFICIENT_PER_K * self.ohm_per_m(celsius(20.0));
        (square * self.ohm_per_m(self.ambient), square * by_kelvin - self.sheds())
    }

    /// Heat that one metre gives off by each kelvin above the air, in W/K.
    fn sheds(&self) -> f64 {
        let current = wires::bears(self.copper()).base() * bunched(self.bundled);
        current * current * self.ohm_per_m(celsius(TABLE_C)) / (TABLE_C - TABLE_AIR_C)
    }

    /// Heat that the copper of one metre stores, in J/K.
    fn stores(&self) -> f64 {
        HEAT_J_PER_K_M3 * self.copper().base()
    }

    fn ohm_per_m(&self, temperature: Temperature) -> f64 {
        copper::wire(metres(1.0), self.copper(), temperature).base()
    }

    /// No wire is thinner than what the table is continued to.
    pub(super) fn copper(&self) -> Area {
        Measure::from_base(self.area.base().max(1e-9))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    pub(super) fn wire(mm2: f64, insulation: Insulation, air: f64, bundled: u32) -> LaidWire {
        let area = Measure::from_base(mm2 * 1e-6);
        LaidWire { area, insulation, ambient: celsius(air), bundled }
    }

    #[track_caller]
    pub(super) fn near(found: f64, expected: f64, share: f64) {
        assert!((found - expected).abs() <= share * expected.abs(), "{found} is not {expected}");
    }

    /// Source: the table's own condition, `tests/reference/wire_thinwall_current.csv`: one wire in free air of 20 °C, PVC for 105 °C.
    #[test]
    fn the_current_of_the_table_brings_a_wire_to_the_temperature_of_the_table() {
        for size in [0.5, 1.0, 2.5, 6.0, 10.0, 35.0] {
            let wire = wire(size, Insulation::C, 20.0, 1);
            let settled = wire.settles_at(wires::bears(wire.area)).expect("it settles");
            near(settled.base(), 105.0, 1e-9);
        }
    }

    /// By hand: 29 A × 0.65 × √(25 K / 85 K × 1.33405 / 1.25545) = 10.538 A, of copper at 105 and 85 °C.
    #[test]
    fn a_wire_in_hot_air_and_company_bears_less() {
        let laid = wire(2.5, Insulation::A, 60.0, 4);
        near(laid.bears().base(), 10.538, 1e-4);
        near(laid.settles_at(laid.bears()).expect("it settles").base(), 85.0, 1e-9);
        assert_eq!(laid.bears_for(laid.bears()), None, "for ever");
        let filled = laid.bears_step().filled;
        assert_eq!(filled, "29 A × 65% × √((85 °C − 60 °C) / 85 K × 9.2 mΩ / 8.66 mΩ)");
        near(wire(2.5, Insulation::A, 90.0, 1).bears().base(), 0.0, 0.0);
    }

    /// Source: IEC 60364-5-52, table B.52.17, from memory; between, the power of the number by hand: 0.50 × (0.45 / 0.50)^(ln(10 / 9) /
    /// ln(12 / 9)) = 0.48107.
    #[test]
    fn a_bundle_bears_as_the_table_says() {
        for (count, share) in BUNCHED {
            near(bunched(count), share, 1e-12);
        }
        near(bunched(10), 0.48107, 1e-4);
        near(bunched(0), 1.0, 0.0);
        assert!(bunched(40) < 0.31 && bunched(u32::MAX) > 0.0, "ever less, never nothing");
    }
}
