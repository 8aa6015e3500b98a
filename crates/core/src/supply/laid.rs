//! A wire as it is laid: hot air about it, others beside it, an insulation that lasts to a temperature.
//!
//! One wire is one lump: its copper stores the heat of its current, and gives it off in proportion to how much hotter than the
//! air it is. How much it gives off follows from the table in [`wires`], whose current brings the conductor to the temperature of
//! that table's PVC, 105 °C, in free air of 20 °C. The heat that the insulation stores is left out, which is on the safe side.

use crate::{
    math,
    quantity::{
        self, Area, Current, Measure, Temperature, Time, Value, amperes, celsius, metres, seconds,
        share,
    },
    tables::{copper, wires},
    working::{Formula, Step, step},
};

/// The temperature at which the table's currents leave the conductor, and that of the air about it.
const TABLE_C: f64 = 105.0;
const TABLE_AIR_C: f64 = 20.0;

/// Heat that a kelvin takes in a cubic metre of copper, in joules: IEC 60364-5-54, annex A, 3.45e-3 J/(K·mm³), from memory.
const HEAT_J_PER_K_M3: f64 = 3.45e6;
/// Copper has no resistance so far below 0 °C: IEC 60364-5-54, annex A, from memory.
const ZERO_C: f64 = 234.5;

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

/// An insulation lasts so long at the temperature of its class, and so long where it is hotter by [`OVER_K`]: ISO 6722-1, heat
/// ageing of 3000 h and thermal overload of 6 h, from memory.
const LASTING_S: f64 = 3000.0 * 3600.0;
const OVERLOAD_S: f64 = 6.0 * 3600.0;
const OVER_K: f64 = 50.0;

/// Up to so many seconds a short heats the wire alone, and only the temperature of a short counts: IEC 60364-4-43, from memory.
const SHORT_S: f64 = 5.0;

/// The formula of [`LaidWire::bears`].
pub const BEARS: Formula = Formula {
    symbols: "I_w = I_table f √((T_ins − T_air) / 85 K × R_105 / R_ins)",
    source: "heat by the square of the current; a cable distributor's table in free air, 105 °C above air of 20 °C; bunched by \
        IEC 60364-5-52, table B.52.17, and classes by ISO 6722-1, from memory",
};

/// The formula of [`LaidWire::bears_for`] where it is overloaded.
pub const OVERLOADED: Formula = Formula {
    symbols: "t_w = C / b × ln(1 + b (T_over − T_air) / (I² R_air))",
    source: "heat of one metre: C dT/dt = I² R − G (T − T_air), b = I² dR/dT − G; 6 h at most at 50 K above its class, \
        ISO 6722-1, from memory",
};

/// The formula of [`LaidWire::bears_for`] where it ages.
pub const AGES: Formula = Formula {
    symbols: "t_w = 3000 h × (6 h / 3000 h)^((T − T_class) / 50 K)",
    source: "ISO 6722-1, heat ageing and thermal overload, from memory; between, along a straight line of the logarithm",
};

/// The formula of [`LaidWire::bears_for`] in a short.
pub const SHORTED: Formula = Formula {
    symbols: "t_w = (k A / I)²",
    source: "IEC 60364-4-43, up to 5 s, 160 °C of PVC and 250 °C of crosslinked insulation, from memory",
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
        celsius(self.lasting().base() + OVER_K)
    }

    /// What it bears in a short of five seconds at most. IEC 60364-4-43, from memory: PVC, and crosslinked insulation.
    pub fn short_circuit(self) -> Temperature {
        celsius(match self {
            Self::A | Self::B => 160.0,
            Self::C | Self::D => 250.0,
        })
    }
}

/// The current through a square millimetre that takes copper from one temperature to another in one second, without giving off
/// heat: k of IEC 60364-4-43, in A √s / mm². Zero where it is there already.
pub fn short_k(from: Temperature, to: Temperature) -> f64 {
    let hotter = (ZERO_C + to.base()) / (ZERO_C + from.base());
    if hotter <= 1.0 {
        return 0.0;
    }
    let square = HEAT_J_PER_K_M3 * (ZERO_C + 20.0) / copper::RESISTIVITY_OHM_M * math::ln(hotter);
    square.sqrt() * 1e-6
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
        let hot = self.insulation.lasting();
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

    /// For how long it bears a current, from the air's temperature on; none where that is for ever.
    ///
    /// That is until it is as hot as the overload of its class, or until it has aged at what it settles at ([`AGES`]), whichever
    /// comes first. It also bears what does not bring it to the temperature of a short within five seconds ([`SHORTED`]).
    pub fn bears_for(&self, current: Current) -> Option<Time> {
        let ages = self.ages_s(current)?;
        let reaches = self.reaches_s(current, self.insulation.overload()).unwrap_or(f64::INFINITY);
        // each falls with the current, and so do the lesser and the greater of two
        Some(seconds(ages.min(reaches).max(self.shorted_s(current).min(SHORT_S))))
    }

    /// How [`LaidWire::bears_for`] is found; none where it is for ever.
    pub fn bears_for_step(&self, current: Current) -> Option<Step> {
        let bears = self.bears_for(current)?;
        let (ages, shorted) = (self.ages_s(current)?, self.shorted_s(current).min(SHORT_S));
        let over = self.insulation.overload();
        let (amount, air) = (("I", current.show()), ("T_air", self.ambient.show()));
        Some(if bears.base() <= shorted {
            let k = short_k(self.ambient, self.insulation.short_circuit());
            step(
                &SHORTED,
                &[("k", math::fixed(k, 0).into()), ("A", self.area.show()), amount],
                bears,
            )
        } else if bears.base() < ages {
            let ohm = copper::wire(metres(1.0), self.copper(), self.ambient).show();
            let (_, gains) = self.heated_by(current);
            let says = |number: f64, unit: &str| {
                Value::from(format!("{} {unit}", quantity::number(number)))
            };
            let values = [
                ("C", says(self.stores(), "J/K")),
                ("b", says(gains, "W/K")),
                ("T_over", over.show()),
                air,
                amount,
                ("R_air", ohm),
            ];
            step(&OVERLOADED, &values, bears)
        } else {
            let settled = self.settles_at(current).unwrap_or(over);
            let settled = celsius(settled.base().min(over.base()));
            let values = [("T", settled.show()), ("T_class", self.insulation.lasting().show())];
            step(&AGES, &values, bears)
        })
    }

    /// When its insulation has aged at what it settles at; none where it lasts.
    fn ages_s(&self, current: Current) -> Option<f64> {
        let over = |settled: Temperature| settled.base() - self.insulation.lasting().base();
        let hotter = self.settles_at(current).map_or(OVER_K, over).min(OVER_K);
        // to the hair that rounding leaves of a wire that carries what it bears
        let hotter = (hotter > 1e-9).then_some(hotter / OVER_K)?;
        Some(LASTING_S * math::exp(hotter * math::ln(OVERLOAD_S / LASTING_S)))
    }

    /// When it is as hot as this; none where it never is.
    fn reaches_s(&self, current: Current, limit: Temperature) -> Option<f64> {
        let rise = limit.base() - self.ambient.base();
        if rise <= 0.0 {
            return Some(0.0);
        }
        let (heat, gains) = self.heated_by(current);
        let bend = gains * rise / heat;
        if heat <= 0.0 || bend <= -1.0 {
            return None;
        }
        // ln(1 + x) / x, which is 1 where as much is given off more as is gained
        let bent = if bend.abs() < 1e-9 { 1.0 - bend / 2.0 } else { math::ln_1p(bend) / bend };
        Some(self.stores() * rise / heat * bent)
    }

    /// When a short brings it to what its insulation bears in one, giving off no heat.
    fn shorted_s(&self, current: Current) -> f64 {
        let bears =
            short_k(self.ambient, self.insulation.short_circuit()) * self.copper().base() * 1e6;
        let times = bears / current.base().abs();
        times * times
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
