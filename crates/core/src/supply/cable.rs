//! The cable to the starter, and what the alternator has to give.

use crate::{
    quantity::{
        Area, Current, Length, Measure, Resistance, Temperature, Voltage, amperes, share, volts,
    },
    tables::copper,
    working::{Formula, Step, step},
};

const DROP: Formula = Formula {
    symbols: "V_drop = 2 I R_w",
    source: "Ohm's law, out and back: the way back through body and strap is assumed as good",
};
const NEEDED: Formula = Formula {
    symbols: "I_all = I_1 + I_2 + …",
    source: "all circuits on at once, RMS; coils and injectors at the speed at which they draw most",
};

const LEFT: Formula = Formula {
    symbols: "I_left = k I_alt − I_needed",
    source: "at idle as typed, coils and injectors taking 30%; at speed 80% of the rating when hot: common practice, no source",
};

const KNOWN_BACK: Formula = Formula {
    symbols: "V_drop = I (R_w + R_m + R_s)",
    source: "Ohm's law, out and back: the minus cable as thick as the other; strap and 1 mΩ of body where it ends at the body: common practice, no source",
};

/// Through the sheet of a body from its rear to its front, joints counted: common practice, no source.
const BODY_OHM: f64 = 0.001;

const WORSE_BACK: Formula = Formula {
    symbols: "V_drop = I (R_w + R_s)",
    source: "Ohm's law, out and back: the strap between engine and body is worse than the cable",
};

/// More than this between battery and starter is too much, out and back: common practice, no source.
const MOST_V: f64 = 0.8;

/// The share of the cranking voltage beyond which the starter hardly turns: common practice, no source.
const MOST_OF_IT: f64 = 0.15;

/// The share of its rating that a hot alternator gives: common practice, no source.
const HOT: f64 = 0.8;

/// Sizes of battery cables and straps that are sold, in mm²: IEC 60228; thinner ones are no cable of a battery. Common practice, no source.
const SOLD_MM2: [f64; 7] = [16.0, 25.0, 35.0, 50.0, 70.0, 95.0, 120.0];

/// The sizes of battery cables and straps that are sold, the thinnest first.
pub fn sold() -> impl Iterator<Item = Area> {
    SOLD_MM2.into_iter().map(|size| Area::from_base(size * 1e-6))
}

/// The cable from the battery to the starter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CableInputs {
    /// One way.
    pub length: Length,
    /// Its size.
    pub area: Area,
    /// What the starter draws.
    pub starter: Current,
    /// At the battery's posts meanwhile.
    pub cranking: Voltage,
    /// Of the cable.
    pub temperature: Temperature,
    /// The strap that the current comes back through, where it is known: the way back is as good as the cable, or as this.
    pub strap: Option<Resistance>,
    /// The minus cable, where its length is known.
    pub minus: Option<MinusCable>,
}

/// The cable from the battery's minus.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MinusCable {
    /// From end to end.
    pub length: Length,
    /// Whether it ends at the body, so that the current comes back through body and strap.
    pub is_at_body: bool,
}

/// What comes of it.
#[derive(Clone, Debug, PartialEq)]
pub struct CableAnswer {
    /// Lost out and back.
    pub drop: Voltage,
    /// Left at the starter.
    pub left: Voltage,
    /// The thinnest usual cable that loses little; none where none does.
    pub area: Option<Area>,
    /// How they were found.
    pub working: Vec<Step>,
}

impl CableInputs {
    /// The same with this strap on the way back.
    #[must_use]
    pub fn with_strap(self, strap: Option<Resistance>) -> Self {
        Self { strap, ..self }
    }

    fn drop(&self, area: Area) -> Voltage {
        let wire = copper::wire_at_most(self.length, area, self.temperature);
        let back = self.known_back(area).map_or_else(
            || self.back(wire),
            |[minus, strap]| Resistance::from_base(minus.base() + strap.base()),
        );
        Measure::from_base(self.starter.base() * (wire.base() + back.base()))
    }

    /// The way back while not all of it is known: as good as the cable, or as the strap.
    fn back(&self, wire: Resistance) -> Resistance {
        self.strap.filter(|strap| *strap > wire).unwrap_or(wire)
    }

    /// The minus cable, as thick as the other, and what lies behind it, where both are known.
    fn known_back(&self, area: Area) -> Option<[Resistance; 2]> {
        let minus = self.minus?;
        let behind = if minus.is_at_body { self.strap?.base() + BODY_OHM } else { 0.0 };
        let behind = Resistance::from_base(behind);
        Some([copper::wire_at_most(minus.length, area, self.temperature), behind])
    }

    /// Whether more is lost in the strap than in the cable.
    pub fn is_strap_worse(&self) -> bool {
        self.strap.is_some_and(|it| it > self.wire())
    }

    /// What a strap may lose beside this cable: no more than is left, or than the cable itself.
    pub fn left_to_strap(&self) -> Voltage {
        let out = self.starter.base() * self.wire().base();
        let minus = self.known_back(self.area).map_or(0.0, |[minus, _]| minus.base() + BODY_OHM);
        volts((MOST_V - out - self.starter.base() * minus).max(out))
    }

    fn wire(&self) -> Resistance {
        copper::wire_at_most(self.length, self.area, self.temperature)
    }

    /// What comes of it.
    pub fn answer(&self) -> CableAnswer {
        let drop = self.drop(self.area);
        let wire = copper::wire_at_most(self.length, self.area, self.temperature);
        let shown =
            [("l", self.length.show()), ("A", self.area.show()), ("T", self.temperature.show())];
        let (back, values) = (self.back(wire), [("I", self.starter.show()), ("R_w", wire.show())]);
        let working = vec![
            step(&copper::WIRE_AT_MOST, &shown, wire),
            if let Some([minus, behind]) = self.known_back(self.area) {
                let [current, out] = values;
                let back = [("R_m", minus.show()), ("R_s", behind.show())];
                step(&KNOWN_BACK, &[&[current, out][..], &back[..]].concat(), drop)
            } else if back > wire {
                let [current, out] = values;
                step(&WORSE_BACK, &[current, out, ("R_s", back.show())], drop)
            } else {
                step(&DROP, &values, drop)
            },
        ];
        let serves = |area: &Area| !is_too_much(self.drop(*area));
        CableAnswer {
            drop,
            left: volts((self.cranking.base() - drop.base()).max(0.0)),
            area: sold().find(serves),
            working,
        }
    }
}

/// Whether so much is lost on the way to the starter that it turns slower than it should.
pub fn is_too_much(drop: Voltage) -> bool {
    drop.base() > MOST_V
}

/// Whether so much of it is lost that the starter hardly turns: common practice, no source.
pub fn is_most(drop: Voltage, cranking: Voltage) -> bool {
    drop.base() > MOST_OF_IT * cranking.base()
}

/// What an alternator must be rated for that gives so much when hot.
pub fn rated_for(needed: Current) -> Current {
    needed / HOT
}

/// The most that may be lost.
pub fn most_drop() -> Voltage {
    volts(MOST_V)
}

/// What coils and injectors take at idle, of what they take at most: common practice, no source.
const IDLES: f64 = 0.3;

/// What the alternator gives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AlternatorInputs {
    /// At idle.
    pub idle: Option<Current>,
    /// What it is rated for.
    pub rating: Option<Current>,
}

/// What is left of it.
#[derive(Clone, Debug, PartialEq)]
pub struct AlternatorAnswer {
    /// What all circuits take together.
    pub needed: Current,
    /// What is left at idle; less than nothing where the battery gives the rest.
    pub idle: Option<Current>,
    /// The same at speed, hot.
    pub speed: Option<Current>,
    /// How it was found.
    pub working: Vec<Step>,
}

impl AlternatorInputs {
    /// What is left beside what each circuit takes.
    ///
    /// `engine` is what of it coils and injectors take, at the speed at which they take most.
    pub fn answer(&self, circuits: &[Current], engine: Current) -> AlternatorAnswer {
        let needed = amperes(circuits.iter().map(|it| it.base()).sum());
        let at_idle = needed - engine * (1.0 - IDLES);
        let shown: Vec<_> = circuits
            .iter()
            .take(2)
            .zip(["I_1", "I_2"])
            .map(|(it, name)| (name, it.show()))
            .collect();
        let mut working = vec![step(&NEEDED, &shown, needed)];
        let mut left = |gives: Option<Current>, times: f64, needed: Current| {
            let gives = gives?;
            let left = gives * times - needed;
            let shown =
                [("k", share(times).show()), ("I_alt", gives.show()), ("I_needed", needed.show())];
            working.push(step(&LEFT, &shown, left));
            Some(left)
        };
        let idle = left(self.idle, 1.0, at_idle);
        let speed = left(self.rating, HOT, needed);
        AlternatorAnswer { needed, idle, speed, working }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{celsius, metres};

    /// By hand: 1.16 × 4 m / (58 × 35 mm²) = 2.286 mΩ; 200 A, out and back: 0.914 V; 50 mm² 0.64 V.
    #[test]
    fn a_battery_in_the_rear_wants_a_thicker_cable() {
        let cable = CableInputs {
            length: metres(4.0),
            area: Area::from_base(35e-6),
            starter: amperes(200.0),
            cranking: volts(9.0),
            temperature: celsius(20.0),
            strap: None,
            minus: None,
        };
        let found = cable.answer();
        assert!((found.drop.base() - 0.914).abs() < 1e-3, "{:?}", found.drop);
        assert!((found.left.base() - 8.086).abs() < 1e-3, "{:?}", found.left);
        assert!(is_too_much(found.drop));
        assert_eq!(found.area, Some(Area::from_base(50.0 * 1e-6)));
    }

    /// By hand: the cable's 2.286 mΩ and a strap of 4 mΩ: 200 A lose 1.257 V; a strap of 1 mΩ changes nothing.
    #[test]
    fn a_strap_that_is_worse_than_the_cable_is_the_way_back() {
        let cable = CableInputs {
            length: metres(4.0),
            area: Area::from_base(35e-6),
            starter: amperes(200.0),
            cranking: volts(9.0),
            temperature: celsius(20.0),
            strap: Some(Resistance::from_base(4e-3)),
            minus: None,
        };
        assert!((cable.answer().drop.base() - 1.2571).abs() < 1e-3);
        assert!(cable.is_strap_worse());
        assert!((cable.left_to_strap().base() - 0.4571).abs() < 1e-3, "as much as the cable");
        let good = CableInputs { strap: Some(Resistance::from_base(1e-3)), ..cable };
        assert!((good.answer().drop.base() - 0.914).abs() < 1e-3);
        assert!(!good.is_strap_worse());
    }

    /// By hand: 1.16 × 5.5 m / (58 × 16 mm²) = 6.875 mΩ out, 0.5 m of it 0.625 mΩ, a strap of 0.2 mΩ, 1 mΩ of body: 200 A lose
    /// 1.74 V; at the engine 1.5 V.
    #[test]
    fn a_short_minus_cable_is_not_taken_for_as_long_as_the_other() {
        let cable = |is_at_body| CableInputs {
            length: metres(5.5),
            area: Area::from_base(16e-6),
            starter: amperes(200.0),
            cranking: volts(9.6),
            temperature: celsius(20.0),
            strap: Some(Resistance::from_base(2e-4)),
            minus: Some(MinusCable { length: metres(0.5), is_at_body }),
        };
        assert!((cable(true).answer().drop.base() - 1.74).abs() < 1e-3);
        assert!((cable(false).answer().drop.base() - 1.5).abs() < 1e-3);
        // 50 mm²: 2.2 + 0.2 + 0.2 + 1 mΩ, 0.72 V
        assert_eq!(cable(true).answer().area, Some(Area::from_base(50.0 * 1e-6)));
    }

    #[test]
    fn the_battery_gives_what_the_alternator_does_not() {
        let alternator =
            AlternatorInputs { idle: Some(amperes(30.0)), rating: Some(amperes(80.0)) };
        let circuits = [amperes(20.0), amperes(15.0), amperes(6.0)];
        let found = alternator.answer(&circuits, amperes(10.0));
        assert!((found.needed.base() - 41.0).abs() < 1e-9);
        assert!((found.idle.expect("known").base() + 4.0).abs() < 1e-9);
        assert!((found.speed.expect("known").base() - 23.0).abs() < 1e-9);
    }
}
