//! For how long a wire bears more than it bears for ever: until it is too hot, or has aged; and a short.

use super::{HEAT_J_PER_K_M3, LaidWire};
use crate::{
    math,
    quantity::{self, Current, Measure, Temperature, Time, Value, celsius, metres, seconds},
    tables::copper,
    working::{Formula, Step, step},
};

/// Copper has no resistance so far below 0 °C: IEC 60364-5-54, annex A, from memory.
const ZERO_C: f64 = 234.5;

/// An insulation lasts so long at the temperature of its class, and so long where it is hotter by [`OVER_K`]: ISO 6722-1, heat
/// ageing of 3000 h and thermal overload of 6 h, from memory.
const LASTING_S: f64 = 3000.0 * 3600.0;
const OVERLOAD_S: f64 = 6.0 * 3600.0;
pub(super) const OVER_K: f64 = 50.0;

/// Up to so many seconds a short heats the wire alone, and only the temperature of a short counts: IEC 60364-4-43, from memory.
const SHORT_S: f64 = 5.0;

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

impl LaidWire {
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
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        quantity::amperes,
        supply::laid::{
            Insulation,
            tests::{near, wire},
        },
    };

    /// Source: IEC 60364-4-43, table 43A, copper: 115 with PVC (70 to 160 °C), 143 with crosslinked insulation (90 to 250 °C), 141
    /// with rubber (60 to 200 °C), all from memory.
    #[test]
    fn copper_takes_the_short_of_the_standard() {
        for (from, to, k) in [(70.0, 160.0, 115.0), (90.0, 250.0, 143.0), (60.0, 200.0, 141.0)] {
            near(short_k(celsius(from), celsius(to)), k, 0.01);
        }
        near(short_k(celsius(160.0), celsius(160.0)), 0.0, 0.0);
        near(short_k(celsius(170.0), celsius(160.0)), 0.0, 0.0);
    }

    /// Source: the formula of IEC 60364-4-43, S = I √t / k: 1 kA for 0.1 s takes 2.75 mm² of PVC, as guides to it work out, from memory.
    #[test]
    fn a_short_takes_the_copper_of_the_standard() {
        let times = wire(2.75, Insulation::A, 70.0, 1).bears_for(amperes(1000.0));
        near(times.expect("it burns").base(), 0.1, 0.02);
    }

    /// Source: ISO 6722-1, from memory: 3000 h at the class, 240 h at 25 K above, 6 h at 50 K above. The straight line stays below the second.
    #[test]
    fn an_insulation_ages_as_the_standard_tries_it() {
        let laid = wire(1.0, Insulation::B, 40.0, 1);
        let hours = |settled: f64| {
            laid.bears_for(laid.held_at(celsius(settled))).map(|it| it.base() / 3600.0)
        };
        assert_eq!(hours(100.0), None);
        near(hours(100.001).expect("it ages"), 3000.0, 1e-3);
        near(hours(149.999).expect("it ages"), 6.0, 1e-3);
        let between = hours(125.0).expect("it ages");
        near(between, 134.16, 1e-3);
        assert!(between < 240.0, "on the safe side");
    }

    /// A wire whose resistance grows faster than it gives off heat: 16.5 A squared by the resistance at 105 °C are given off by 85 K, and
    /// 0.00393 of that at 20 °C is gained by each kelvin: as much at
    /// 16.5 A × √(1.33405 / (85 × 0.00393)) = 32.973 A.
    #[test]
    fn a_wire_runs_away_where_its_resistance_grows_faster_than_it_cools() {
        let laid = wire(1.0, Insulation::C, 20.0, 1);
        assert!(laid.settles_at(amperes(32.97)).is_some_and(|it| it.base() > 1e4));
        assert_eq!(laid.settles_at(amperes(32.98)), None);
        let (one, other) = (laid.bears_for(amperes(32.97)), laid.bears_for(amperes(32.98)));
        near(one.expect("hot").base(), other.expect("hot").base(), 1e-2);
    }

    /// The same equation, in a hundred thousand small steps.
    #[test]
    fn a_wire_heats_up_as_its_equation_says() {
        for (size, amount, air) in [(0.5, 25.0, 60.0), (2.5, 45.0, 20.0), (16.0, 400.0, -20.0)] {
            let laid = wire(size, Insulation::B, air, 3);
            let found = laid.bears_for(amperes(amount)).expect("it overheats").base();
            let (mut hot, steps) = (air, 100_000);
            let dt = found / f64::from(steps);
            let slope = |hot: f64| {
                let ohm = copper::wire(metres(1.0), laid.area, celsius(hot)).base();
                (amount * amount * ohm - laid.sheds() * (hot - air)) / (3.45 * size)
            };
            for _ in 0..steps {
                let middle = hot + slope(hot) * dt / 2.0;
                hot += slope(middle) * dt;
            }
            near(hot, 150.0, 1e-6);
        }
    }

    #[test]
    fn a_time_says_what_it_is_found_by() {
        let laid = wire(1.0, Insulation::B, 60.0, 1);
        let by = |amount: f64| laid.bears_for_step(amperes(amount)).map(|it| it.symbols);
        assert_eq!(by(8.0), None, "it bears that for ever");
        assert_eq!(by(13.0), Some(AGES.symbols));
        assert_eq!(by(30.0), Some(OVERLOADED.symbols));
        assert_eq!(by(200.0), Some(SHORTED.symbols));
        for amount in [13.0, 30.0, 200.0] {
            let step = laid.bears_for_step(amperes(amount)).expect("a step");
            let found = laid.bears_for(amperes(amount)).map(Measure::show);
            assert_eq!(Some(step.result), found, "{amount} A");
        }
    }
}
