//! What comes back: through the strap between engine and body, through the controller's ground wires, over a bolt that sensors share.

use super::{cable, circuit, laid::LaidWire};
use crate::{
    quantity::{
        Area, Band, Current, Length, Measure, Ratio, Resistance, Temperature, Voltage, amperes,
        seconds, share, volts,
    },
    tables::copper,
    working::{Formula, Step, step},
};

const STRAP_DROP: Formula =
    Formula { symbols: "V_strap = I R_s", source: "Ohm's law, one way: the starter's current" };
const RISE: Formula = Formula {
    symbols: "V_rise = I R_w / n",
    source: "Ohm's law; wires that are alike, side by side, share the current",
};
const EACH: Formula =
    Formula { symbols: "I_each = I / n", source: "wires that are alike share the current" };
const OFFSET: Formula =
    Formula { symbols: "V_offset = I R_bolt", source: "Ohm's law: what flows over the bolt" };

/// Longer than this nobody turns an engine at a time: common practice, no source.
const CRANKS_S: f64 = 10.0;

/// Half of what battery cable and way back may lose together: common practice, no source.
const MOST_STRAP_V: f64 = 0.4;

/// More than this between the controller's ground and the battery is too much: common practice, no source.
const MOST_RISE_V: f64 = 0.1;

/// Within this the numbers are no better known.
const A_HAIR: f64 = 1.03;

/// What a sensor's signal spans, and the shares of it from which an offset is told, and from which it is too much: common
/// practice, no source. Two hundredths are 100 mV: of a pressure sensor for 250 kPa some 5 kPa, a tenth of the air at part load, and
/// of a lambda signal from 0.7 to 1.3 for 5 V a hundredth and more, coming and going with pump and fan: no map holds for both.
const SPAN_V: f64 = 5.0;
const TOLD: f64 = 0.01;
const TOO_MUCH: f64 = 0.02;

/// No controller has more ground pins: common practice, no source.
const MOST_WIRES: u32 = 8;

/// The thickest wire that a controller's pins take where that is not typed, in m²: common practice, no source.
const USUAL_PIN_M2: f64 = 2.5e-6;

/// The strap between engine and body, as the way back of the starter's current.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StrapInputs {
    /// From end to end.
    pub length: Length,
    /// Its copper.
    pub area: Area,
    /// What the starter draws.
    pub starter: Current,
    /// Of the strap.
    pub temperature: Temperature,
    /// How a wire lies there: alone.
    pub laid: LaidWire,
}

/// How sure it is that the starter's current makes the strap too hot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StrapHeat {
    /// It stays cool enough.
    Cool,
    /// It gets too hot, or is spared by what the numbers are good for.
    Barely,
    /// It gets too hot.
    Hot,
}

/// The most that a strap has at a temperature.
pub fn strap(length: Length, area: Area, temperature: Temperature) -> Resistance {
    copper::wire_at_most(length, area, temperature)
}

impl StrapInputs {
    /// What it loses while the starter turns.
    pub fn drop(&self) -> Voltage {
        self.of(self.area)
    }

    fn of(&self, area: Area) -> Voltage {
        let ohm = strap(self.length, area, self.temperature).base();
        volts(self.starter.base() * ohm)
    }

    /// How it was found.
    pub fn working(&self) -> Vec<Step> {
        let ohm = strap(self.length, self.area, self.temperature);
        let shown =
            [("l", self.length.show()), ("A", self.area.show()), ("T", self.temperature.show())];
        vec![
            step(&copper::WIRE_AT_MOST, &shown, ohm),
            step(&STRAP_DROP, &[("I", self.starter.show()), ("R_s", ohm.show())], self.drop()),
        ]
    }

    /// Whether it gets too hot in the longest start.
    pub fn heat(&self) -> StrapHeat {
        if self.is_hot(self.area, circuit::HAIR) {
            StrapHeat::Hot
        } else if self.is_hot(self.area, 1.0) {
            StrapHeat::Barely
        } else {
            StrapHeat::Cool
        }
    }

    fn is_hot(&self, area: Area, hair: f64) -> bool {
        let wire = LaidWire { area, ..self.laid };
        wire.bears_for(self.starter / hair).is_some_and(|it| it < seconds(CRANKS_S))
    }

    /// The thinnest usual one that stays cool and loses no more than this; none where none does.
    pub fn wanted(&self, most: Voltage) -> Option<Area> {
        let hair = most.base() * (1.0 + 1e-9);
        cable::sold().find(|area| self.of(*area).base() <= hair && !self.is_hot(*area, 1.0))
    }
}

/// The most that a strap may lose, whatever the battery cable loses.
pub fn most_of_a_strap() -> Voltage {
    volts(MOST_STRAP_V)
}

/// The wires between the controller's ground pins and the engine's ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GroundWires {
    /// How many are side by side.
    pub count: u32,
    /// The size of each.
    pub area: Area,
    /// The length of each.
    pub length: Length,
    /// What the controller's outputs sink at once, RMS.
    pub sinks: Current,
    /// How they lie.
    pub laid: LaidWire,
    /// The thickest wire that the controller's pins take, where that is known.
    pub pin: Option<Area>,
}

impl GroundWires {
    /// What flows through each.
    pub fn each(&self) -> Current {
        self.sinks / f64::from(self.count.max(1))
    }

    /// What each carries for long.
    pub fn carries(&self) -> Current {
        LaidWire { area: self.area, ..self.laid }.bears()
    }

    /// By how much the controller's ground is above the battery's.
    pub fn rise(&self) -> Voltage {
        volts(self.each().base() * self.one().base())
    }

    fn one(&self) -> Resistance {
        copper::wire_at_most(self.length, self.area, self.laid.ambient)
    }

    /// Whether it rises by more than it should.
    pub fn is_too_high(&self) -> bool {
        self.rise().base() > MOST_RISE_V * A_HAIR
    }

    /// Whether each carries more than it is good for; by more than a hair.
    pub fn is_overloaded(&self, hair: bool) -> bool {
        let times = if hair { A_HAIR } else { 1.0 };
        self.each().base() > self.carries().base() * times
    }

    /// How many of them would do, with a rise of so much at the most; none where no number of pins does.
    pub fn wanted(&self, most: Voltage) -> Option<u32> {
        let serves = |count: &u32| Self { count: *count, ..*self }.serves(most);
        (self.count..=MOST_WIRES).find(serves)
    }

    /// As many of the thinnest size that is sold and enters the pins, or else more of such wires, the fewest; likewise.
    pub fn thicker(&self, most: Voltage) -> Option<(u32, Area)> {
        let largest = self.pin.map_or(USUAL_PIN_M2, Measure::base).max(self.area.base());
        let fits = |area: &Area| area.base() <= largest * (1.0 + 1e-9) && *area > self.area;
        let counts = self.count..=MOST_WIRES.max(self.count);
        let serves = |count, area| Self { count, area, ..*self }.serves(most);
        counts.into_iter().find_map(|count| {
            let area = circuit::bought().filter(fits).find(|area| serves(count, *area))?;
            Some((count, area))
        })
    }

    fn serves(&self, most: Voltage) -> bool {
        self.rise() <= most && !self.is_overloaded(false)
    }

    /// How current and rise were found.
    pub fn working(&self) -> Vec<Step> {
        let n = || ("n", self.count.into());
        let shown =
            [("l", self.length.show()), ("A", self.area.show()), ("T", self.laid.ambient.show())];
        let current = || ("I", self.sinks.show());
        vec![
            step(&EACH, &[current(), n()], self.each()),
            LaidWire { area: self.area, ..self.laid }.bears_step(),
            step(&copper::WIRE_AT_MOST, &shown, self.one()),
            step(&RISE, &[current(), ("R_w", self.one().show()), n()], self.rise()),
        ]
    }
}

/// The most that the controller's ground may rise by.
pub fn most_rise() -> Voltage {
    volts(MOST_RISE_V)
}

/// The most that it may rise by while sensors are grounded at the block.
pub fn most_below_sensors() -> Voltage {
    volts(SPAN_V * TOLD)
}

/// A bolt that sensors share with what draws much.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SharedBolt {
    /// From the bolt to the battery's minus.
    pub ohm: Band<Resistance>,
    /// Whether that is usual rather than known.
    pub is_assumed: bool,
    /// What flows over it.
    pub current: Current,
}

/// How much of a sensor's signal an offset is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OffsetSize {
    /// Too little to tell.
    Small,
    /// Worth finding out.
    Perhaps,
    /// Too much.
    TooMuch,
}

impl SharedBolt {
    /// The most by which a sensor's signal is out.
    pub fn offset(&self) -> Voltage {
        volts(self.current.base() * self.ohm.high.base())
    }

    /// Its share of what a sensor's signal spans.
    pub fn part(&self) -> Ratio {
        of_span(self.offset())
    }

    /// What it comes to: at its certain end too much, or at its worst worth telling.
    pub fn size(&self) -> OffsetSize {
        let least = self.current.base() * self.ohm.low.base() / SPAN_V;
        if !self.is_assumed && least > TOO_MUCH * A_HAIR {
            OffsetSize::TooMuch
        } else if is_told(self.offset()) {
            OffsetSize::Perhaps
        } else {
            OffsetSize::Small
        }
    }

    /// How it was found.
    pub fn working(&self) -> Vec<Step> {
        let shown = [("I", self.current.show()), ("R_bolt", self.ohm.high.show())];
        vec![step(&OFFSET, &shown, self.offset())]
    }
}

/// The share of what a sensor's signal spans.
pub fn of_span(offset: Voltage) -> Ratio {
    share(offset.base() / SPAN_V)
}

/// Whether an offset is worth telling.
pub fn is_told(offset: Voltage) -> bool {
    of_span(offset).base() > TOLD * A_HAIR
}

/// The thinnest usual strap that carries so much for long as it lies; none where none does.
pub fn size_for(current: Current, laid: LaidWire) -> Option<Area> {
    cable::sold().find(|area| LaidWire { area: *area, ..laid }.bears() >= current)
}

/// All of these currents.
pub fn sum(currents: impl Iterator<Item = Current>) -> Current {
    amperes(currents.map(Measure::base).sum())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        quantity::{celsius, metres, ohms},
        supply::laid::Insulation,
    };

    fn mm2(size: f64) -> Area {
        Area::from_base(size * 1e-6)
    }

    fn laid() -> LaidWire {
        LaidWire { area: mm2(0.0), insulation: Insulation::B, ambient: celsius(20.0), bundled: 1 }
    }

    fn of_size(size: f64) -> StrapInputs {
        StrapInputs {
            length: metres(0.5),
            area: mm2(size),
            starter: amperes(200.0),
            temperature: celsius(20.0),
            laid: laid(),
        }
    }

    /// By hand: 1.16 × 0.5 m / (58 × 16 mm²) = 0.625 mΩ; 200 A lose 0.125 V. 4 mm²: 2.5 mΩ, 0.5 V; 6 mm² 0.333 V.
    #[test]
    fn a_strap_loses_by_ohms_law() {
        assert!((of_size(16.0).drop().base() - 0.125).abs() < 1e-9);
        assert!((of_size(4.0).drop().base() - 0.5).abs() < 1e-9);
        assert!((of_size(6.0).drop().base() - 1.0 / 3.0).abs() < 1e-9);
    }

    /// Source: IEC 60364-4-43, k = 115 A √s / mm² for PVC, of copper from 70 to 160 °C, from memory: 2.5 mm² bear 200 A for
    /// (115 × 2.5 / 200)² = 2 s, and 16 mm² for 85 s.
    #[test]
    fn a_strap_that_is_a_thin_wire_burns_in_a_long_start() {
        assert_eq!(of_size(2.5).heat(), StrapHeat::Hot);
        assert_eq!(of_size(16.0).heat(), StrapHeat::Cool);
        let wanted = of_size(2.5).wanted(most_of_a_strap()).expect("one does");
        assert_eq!(StrapInputs { area: wanted, ..of_size(2.5) }.heat(), StrapHeat::Cool);
        assert_eq!(wanted, mm2(16.0), "the thinnest that is sold");
    }

    /// Source: two equal resistors side by side are half of one, a textbook's example, from memory. By hand: 1.16 × 2 m / (58 × 1 mm²)
    /// = 40 mΩ; 10 A through two raise it by 0.2 V, through four by 0.1 V.
    #[test]
    fn wires_side_by_side_share() {
        let two = GroundWires {
            count: 2,
            area: mm2(1.0),
            length: metres(2.0),
            sinks: amperes(10.0),
            laid: laid(),
            pin: None,
        };
        assert!((two.rise().base() - 0.2).abs() < 1e-9);
        assert!((two.each().base() - 5.0).abs() < 1e-12);
        assert!(two.is_too_high() && !two.is_overloaded(false));
        let four = GroundWires { count: 4, ..two };
        assert!((four.rise().base() - 0.1).abs() < 1e-9);
        assert!(!four.is_too_high());
        assert_eq!(
            two.thicker(most_rise()),
            Some((2, mm2(2.5))),
            "2 mm² would do, and is sold nowhere"
        );
        let narrow = GroundWires { pin: Some(mm2(1.5)), ..two };
        assert_eq!(
            narrow.thicker(most_rise()),
            Some((3, mm2(1.5))),
            "no thicker one enters its pins"
        );
        let full = GroundWires { pin: Some(mm2(1.0)), ..two };
        assert_eq!(full.thicker(most_rise()), None);
        assert!(
            two.wanted(most_rise()).is_some_and(|it| (4..=5).contains(&it)),
            "{:?}",
            two.wanted(most_rise())
        );
    }

    /// Common practice, no source: a pump's 14 A over 20 mΩ are 0.28 V.
    #[test]
    fn a_pump_over_a_bad_bolt_moves_each_sensor() {
        let bolt = SharedBolt {
            ohm: Band { low: ohms(0.02), nominal: ohms(0.02), high: ohms(0.02) },
            is_assumed: false,
            current: amperes(14.0),
        };
        assert!((bolt.offset().base() - 0.28).abs() < 1e-12);
        assert!((bolt.part().base() - 0.056).abs() < 1e-12);
        assert_eq!(bolt.size(), OffsetSize::TooMuch);
        assert_eq!(SharedBolt { is_assumed: true, ..bolt }.size(), OffsetSize::Perhaps);
        assert_eq!(SharedBolt { current: amperes(2.5), ..bolt }.size(), OffsetSize::Small);
    }
}
