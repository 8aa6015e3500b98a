//! A sensor with its input and its supply: what it gives, now, cold and hot.

use super::read::{PlannedSensor, Sensing, SensorInput, SensorSupply, ends, usual_supply};
use crate::{
    fields::sensors::{PressureFrom, SensorPurpose, SensorType, TableOf},
    quantity::{Band, Dimension, Measure, Resistance, Span, Value, Voltage, number, ohms, volts},
    sensor::{divider::Divider, element::SensorElement},
};

/// A sensor and what surrounds it.
#[derive(Clone, Copy)]
pub(super) struct SensorSubject<'a> {
    pub(super) sensing: &'a Sensing,
    pub(super) at: usize,
    pub(super) sensor: &'a PlannedSensor,
}

/// What is read of a sensor.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct SensorReads {
    pub(super) ohms: Option<Band<Resistance>>,
    pub(super) volts: Option<Band<Voltage>>,
}

/// From so many volts up a sensor's own output counts as that of its supply, which is not known.
const OFF_NOW_C: f64 = 3.0;
/// What a meter and its leads may be off: common practice, no source.
const METER: f64 = 0.03;

impl<'a> SensorSubject<'a> {
    pub(super) fn input(&self) -> Option<&'a SensorInput> {
        self.sensing.inputs.get(self.sensor.on.input?)
    }

    pub(super) fn supply(&self) -> Option<&'a SensorSupply> {
        self.sensing.supplies.get(self.sensor.on.supply?)
    }

    /// What feeds it, or what is usual.
    pub(super) fn supply_volts(&self) -> Band<Voltage> {
        self.supply().map_or_else(usual_supply, |it| it.volts)
    }

    pub(super) fn element(&self) -> Option<&'a SensorElement> {
        self.sensor.element.as_ref()
    }

    /// The input's pull-up alone, and with what else pulls.
    pub(super) fn alone(&self) -> Option<Divider> {
        self.input()?.divider(None)
    }

    pub(super) fn divider(&self) -> Option<Divider> {
        self.input()?.divider(self.sensor.also.map(|it| it.pull))
    }

    /// What it tells as the car stands: engine stopped and cold, key on; nothing where that is not known.
    pub(super) fn now(&self) -> Option<Span> {
        let (dimension, _) = self.sensor.told?;
        let today = &self.sensing.today;
        match dimension {
            Dimension::Temperature => Some(span(&today.temperature)),
            Dimension::Pressure => Some(match self.sensor.counted_from() {
                PressureFrom::Absolute => span(&today.air),
                PressureFrom::Gauge => Span::exact(0.0),
            }),
            // free air is beyond what it tells: the top of its scale
            Dimension::Share if self.sensor.kind == Some(SensorType::Wideband) => {
                let Some(SensorElement::Line(curve)) = self.element() else { return None };
                Some(Span::exact(curve.ends().1))
            }
            _ => None,
        }
    }

    /// What is read of it where it tells that.
    pub(super) fn reads(&self, value: &Span) -> SensorReads {
        let Some(element) = self.element() else { return SensorReads::default() };
        let ohms = element.resistance(value);
        let volts = match &ohms {
            Some(ohms) => self.divider().map(|it| it.voltage(ohms)),
            None => element.voltage(value, &self.supply_volts()),
        };
        SensorReads { ohms, volts }
    }

    /// Where it must be right: the lowest, one between, and the highest that matters.
    pub(super) fn places(&self) -> Option<[f64; 3]> {
        let (dimension, _) = self.sensor.told?;
        match (dimension, self.element()?) {
            (Dimension::Temperature, _) => {
                let (cold, hot) = match self.sensor.purpose {
                    Some(SensorPurpose::Air | SensorPurpose::FuelTemperature) => {
                        (self.sensing.cold.base(), 60.0)
                    }
                    Some(SensorPurpose::Exhaust) => (100.0, 800.0),
                    _ => (self.sensing.cold.base(), 100.0),
                };
                Some([cold, 20.0_f64.max(cold), hot])
            }
            (_, SensorElement::Pressure(it)) => {
                let (low, high) = (it.pressure.0.base(), it.pressure.1.base());
                Some([low, f64::midpoint(low, high), high])
            }
            (_, SensorElement::Line(curve) | SensorElement::Resistor(curve, _)) => {
                let (low, high) = curve.ends();
                Some([low, f64::midpoint(low, high), high])
            }
            _ => None,
        }
    }

    /// The same, as far as what it may ever tell: beyond it is a fault.
    pub(super) fn extremes(&self) -> Option<[f64; 3]> {
        let [low, middle, high] = self.places()?;
        Some(match self.sensor.told?.0 {
            Dimension::Temperature => [(-40.0_f64).min(low), middle, high + 50.0],
            _ => [low, middle, high],
        })
    }

    /// What it tells, as a value.
    pub(super) fn show(&self, value: f64) -> Value {
        self.sensor.told.map_or_else(|| Value::text(number(value)), |it| shown(it.0, value))
    }

    /// A difference of that.
    pub(super) fn difference(&self, by: f64) -> Value {
        let Some((dimension, _)) = self.sensor.told else { return Value::text(number(by)) };
        let value = dimension.show(by);
        if self.sensor.kind == Some(SensorType::Wideband) { value.said(number(by)) } else { value }
    }

    /// What is read, in one or two words: the ohms and the volts of which it is known.
    pub(super) fn said(&self, value: f64) -> Option<Value> {
        let reads = self.reads(&Span::exact(value));
        let ohms = reads.ohms.map(|it| it.nominal.show());
        let volts = reads.volts.map(|it| it.nominal.show());
        Some(match (ohms, volts) {
            (Some(ohms), Some(volts)) => {
                let text = [ohms.shown.as_str(), ", ", &volts.shown].concat();
                ohms.said(text)
            }
            (Some(one), None) | (None, Some(one)) => one,
            (None, None) => return None,
        })
    }

    /// What an entry of the controller's table is made of where it tells this: over the sensor's tolerance.
    ///
    /// A controller reads its inputs by the supply that it gives them: what that is off by is none of the table's.
    pub(super) fn tabled(&self, value: f64, of: TableOf) -> Option<Span> {
        let (element, value) = (self.element()?, Span::exact(value));
        let ohms = element.resistance(&value);
        match of {
            TableOf::Ohms => ohms.map(|it| span(&it)),
            TableOf::Volts => {
                let volts = match &ohms {
                    Some(ohms) => {
                        let divider = self.divider()?;
                        let supply = Band::exact(divider.supply.nominal);
                        Divider { supply, ..divider }.voltage(ohms)
                    }
                    None => element.voltage(&value, &Band::exact(self.supply_volts().nominal))?,
                };
                Some(span(&volts))
            }
        }
    }

    /// From how much it is off too much to be right, and from how much it does not work: common practice, no source.
    fn limits(&self) -> (f64, f64) {
        if self.sensor.is_told(Dimension::Temperature) {
            return (5.0, 10.0);
        }
        let [low, _, high] = self.places().unwrap_or_default();
        let span = (high - low).abs();
        (0.02 * span, 0.05 * span)
    }

    pub(super) fn doubtful(&self) -> f64 {
        self.limits().0
    }

    pub(super) fn wrong(&self) -> f64 {
        self.limits().1
    }

    /// How much it changes by 10 mV at the highest that matters.
    pub(super) fn by_ten_millivolts(&self) -> Option<f64> {
        self.by_volts(0.01)
    }

    /// How much one step of the input is there.
    pub(super) fn by_a_step(&self) -> Option<f64> {
        let input = self.input()?;
        let steps = f64::from(1_u32.checked_shl(input.bits?)?);
        self.by_volts(input.range.nominal.base() / steps)
    }

    /// How much what it tells changes by so many volts, at the highest that matters.
    fn by_volts(&self, by: f64) -> Option<f64> {
        let [_, _, hot] = self.places()?;
        let (low, high) = self.sensor.table_range(hot);
        let at = |value: f64| self.reads(&Span::exact(value)).volts.map(|it| it.nominal.base());
        let apart = (at(high)? - at(low)?).abs();
        (apart > 0.0).then(|| by * (high - low) / apart)
    }

    /// What it would be by a reading at the car.
    pub(super) fn value_by(&self, of: TableOf, read: f64) -> Option<f64> {
        let element = self.element()?;
        match of {
            TableOf::Ohms => element.value_at_ohms(ohms(read)),
            TableOf::Volts if element.is_resistive() => {
                element.value_at_ohms(self.alone()?.resistance(volts(read))?)
            }
            TableOf::Volts => element.value_at_volts(volts(read)),
        }
    }

    /// What it should read where it tells about that: thermometer and meter may be off.
    pub(super) fn expected(&self, about: &Span) -> SensorReads {
        let off = match self.sensor.told.map(|it| it.0) {
            Some(Dimension::Temperature) => OFF_NOW_C,
            _ => 0.0,
        };
        let about = Span { low: about.low - off, high: about.high + off, ..*about };
        let reads = self.reads(&about);
        SensorReads { ohms: reads.ohms.map(widened), volts: reads.volts.map(widened) }
    }
}

impl PlannedSensor {
    /// A small step around a value.
    fn table_range(&self, value: f64) -> (f64, f64) {
        let step = match self.told.map(|it| it.0) {
            Some(Dimension::Temperature) => 0.5,
            Some(Dimension::Pressure) => 500.0,
            _ => 1e-3,
        };
        (value - step, value + step)
    }
}

fn widened<Q: Measure>(band: Band<Q>) -> Band<Q> {
    Band {
        low: Q::from_base(band.low.base() * (1.0 - METER)),
        nominal: band.nominal,
        high: Q::from_base(band.high.base() * (1.0 + METER)),
    }
}

/// A band in base units.
pub(super) fn span<Q: Measure>(band: &Band<Q>) -> Span {
    Span { low: band.low.base(), nominal: band.nominal.base(), high: band.high.base() }
}

/// A share that is a lambda reads as a number.
fn shown(dimension: Dimension, value: f64) -> Value {
    match dimension {
        Dimension::Share => {
            let shown = dimension.show(value);
            let text = if value.abs() > 0.0 && (0.5..=2.0).contains(&value) {
                number(value)
            } else {
                shown.shown.clone()
            };
            shown.said(text)
        }
        Dimension::Temperature => {
            let value = (value * 10.0).round() / 10.0;
            dimension.show(value)
        }
        _ => dimension.show(value),
    }
}

/// Both ends of what is read now.
pub(super) fn both<Q: Measure>(band: Option<&Band<Q>>) -> Option<Value> {
    band.map(ends)
}
