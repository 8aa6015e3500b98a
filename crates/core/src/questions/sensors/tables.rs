//! The table entered, and what was read at the car, held against the sensor.

use super::{
    judge::{FoundOf, found},
    read::{ReadAt, ends, shown},
    subject::SensorSubject,
    words,
};
use crate::{
    fields::{
        self,
        sensors::{SensorPurpose, TableOf},
    },
    finding::{Finding, Severity},
    message::Message,
    quantity::{Dimension, Measure, Span, Value, ohms, volts},
    say,
    schema::{Key, NumberRow},
    sensor::entered::{self, TableReading},
};

/// Where a table for a thermometer has its points, in degrees Celsius.
const DEGREES: [f64; 7] = [-20.0, 0.0, 20.0, 40.0, 60.0, 80.0, 100.0];
const HOT: f64 = 120.0;
/// So near its supply, or ground, an input reads as open, or as shorted: share of the supply, common practice, no source.
const OPEN: f64 = 0.985;
const SHORTED: f64 = 0.01;

/// All that is wrong with the table, and with what was read.
pub(super) fn found_of(subject: &SensorSubject<'_>) -> Vec<FoundOf> {
    let by_readings = not_this(subject);
    let table = if by_readings.is_some() { None } else { differs(subject) };
    let mut all: Vec<_> = by_readings.into_iter().chain(table).collect();
    let is_known = subject.element().is_some() && !subject.sensor.is_by_readings;
    if is_known {
        let readings = [
            (TableOf::Ohms, fields::sensors::READ_OHMS, &subject.sensor.read_ohms),
            (TableOf::Volts, fields::sensors::READ_VOLTS, &subject.sensor.read_volts),
        ];
        all.extend(
            readings.into_iter().find_map(|(of, key, read)| differing(subject, of, key, read)),
        );
    }
    all
}

/// What the table shows where the sensor tells this.
pub(super) fn tabled(subject: &SensorSubject<'_>, value: f64) -> Option<TableReading> {
    let (of, table) = subject.sensor.table.as_ref()?;
    let reading = subject.tabled(value, *of)?;
    Some(entered::shown(table, value, &reading))
}

/// The table at the lowest, one between, and the highest that matters, and at its own points between them: there no way of drawing a
/// line from one to the next moves it.
fn differs(subject: &SensorSubject<'_>) -> Option<FoundOf> {
    let places = subject.places()?;
    let tabled = |value: f64| tabled(subject, value).map(|it| (value, it));
    let [low, _, high] = places;
    let points = subject.sensor.table.iter().flat_map(|it| it.1.points());
    let own = points.map(|it| it.0).filter(|it| (low..=high).contains(it));
    let all: Vec<_> = places.into_iter().chain(own).filter_map(tabled).collect();
    let is_off = |it: &&(f64, TableReading)| it.1.error.abs() >= subject.doubtful();
    let worst_of = |is_beyond: bool| {
        let those = all.iter().filter(is_off).filter(|it| it.1.is_beyond == is_beyond);
        those.max_by(|one, other| one.1.error.abs().total_cmp(&other.1.error.abs()))
    };
    // a table that is wrong where it has points matters more than one that ends
    let (at, reading) = *worst_of(false).or_else(|| worst_of(true))?;
    let off = reading.error.abs();
    let [_, middle, hot] = places;
    let is_thermal = subject.sensor.is_told(Dimension::Temperature);
    let is_of_engine = !matches!(
        subject.sensor.purpose,
        Some(SensorPurpose::Air | SensorPurpose::FuelTemperature | SensorPurpose::Exhaust)
    );
    // a cold end that is a little off costs a start, not an engine; what was assumed of the sensor is in its band
    let is_grave = off >= subject.wrong() && !reading.is_beyond && (!is_thermal || at >= middle);
    let (values, controller) = (subject.show(at), subject.show(reading.shown));
    let message = if reading.is_beyond {
        let (least, most) = subject.sensor.table.as_ref()?.1.ends();
        let end = subject.show(if reading.shown <= least { least } else { most });
        say!(words::TABLE_ENDS, end = end, at = values, shown = controller)
    } else if is_thermal && is_of_engine && at >= hot && reading.error < 0.0 {
        say!(words::TABLE_READS_COLD, at = values, shown = controller)
    } else {
        say!(words::TABLE_DIFFERS, at = values, shown = controller)
    };
    let severity = if is_grave { Severity::Fault } else { Severity::Doubt };
    Some(with_table(subject, severity, message))
}

/// The table against what was read at the car, at places that are known.
fn not_this(subject: &SensorSubject<'_>) -> Option<FoundOf> {
    let sensor = subject.sensor;
    let (of, table) = sensor.table.as_ref()?;
    let read = if *of == TableOf::Ohms { &sensor.read_ohms } else { &sensor.read_volts };
    let off = |it: &ReadAt| {
        let at = it.0?;
        let off = 0.03 * it.1;
        let reading = Span { low: it.1 - off, nominal: it.1, high: it.1 + off };
        Some((at, it.1, entered::shown(table, at, &reading)))
    };
    let all: Vec<_> = read.iter().filter_map(off).collect();
    let worst =
        all.iter().max_by(|one, other| one.2.error.abs().total_cmp(&other.2.error.abs()))?;
    let (at, read, reading) = *worst;
    // a thermometer is off by a few degrees as well
    if reading.error.abs() < subject.wrong() || reading.is_beyond {
        return None;
    }
    let read = show_read(*of, read);
    let message = say!(
        words::TABLE_NOT_THIS,
        ohms = read,
        at = subject.show(at),
        shown = subject.show(reading.shown)
    );
    Some(with_table(subject, Severity::Fault, message))
}

fn show_read(of: TableOf, read: f64) -> Value {
    match of {
        TableOf::Ohms => ohms(read).show(),
        TableOf::Volts => volts(read).show(),
    }
}

/// With the sensor's own table as its cure.
fn with_table(subject: &SensorSubject<'_>, severity: Severity, message: Message) -> FoundOf {
    let finding = found(subject, severity, fields::sensors::TABLE, message);
    let cure = own_table(subject).map(|points| {
        let edit = fields::sensors::TABLE.at(subject.at).edit(points.clone());
        say!(words::CURE_TABLE, points = points).done_by(vec![edit])
    });
    (finding.cured_by(cure), words::IS_MISREAD)
}

/// The table that suits the sensor, as it is typed; in volts where that is what the controller asks for.
pub(super) fn own_table(subject: &SensorSubject<'_>) -> Option<String> {
    let sensor = subject.sensor;
    let of = sensor.table.as_ref().map_or(TableOf::Ohms, |it| it.0);
    let [low, middle, high] = subject.places()?;
    let values: Vec<f64> = if sensor.is_told(Dimension::Temperature) {
        // beyond the coldest start and the hottest that it tells
        let first = (low < -20.0).then_some(low);
        let last = if high > HOT { vec![high, 1.2 * high] } else { vec![HOT] };
        first.into_iter().chain(DEGREES).chain(last).collect()
    } else {
        vec![low, middle, high]
    };
    let pair = |value: &f64| {
        let reading = subject.tabled(*value, of)?.nominal;
        let (dimension, read) = (
            sensor.told?.0,
            if of == TableOf::Ohms { Dimension::Resistance } else { Dimension::Voltage },
        );
        Some((Some(*value), reading, dimension, read))
    };
    let pairs: Vec<_> = values.iter().filter_map(pair).collect();
    let (_, _, told, read) = *pairs.first()?;
    let bare: Vec<ReadAt> = pairs.iter().map(|it| (it.0, it.1)).collect();
    Some(shown(&bare, (told, ""), (read, "")))
}

/// What was read, where it is not what it should be.
fn differing(
    subject: &SensorSubject<'_>,
    of: TableOf,
    key: Key<NumberRow>,
    read: &[ReadAt],
) -> Option<FoundOf> {
    let finding = read.iter().find_map(|it| one_differing(subject, of, key, it))?;
    Some((finding, words::IS_OFF))
}

fn one_differing(
    subject: &SensorSubject<'_>,
    of: TableOf,
    key: Key<NumberRow>,
    (at, read): &ReadAt,
) -> Option<Finding> {
    let about = at.map(Span::exact).or_else(|| subject.now())?;
    let should = subject.expected(&about);
    let (low, high, expected) = match of {
        TableOf::Ohms => {
            let it = should.ohms?;
            (it.low.base(), it.high.base(), ends(&it))
        }
        TableOf::Volts => {
            let it = should.volts?;
            (it.low.base(), it.high.base(), ends(&it))
        }
    };
    if (low..=high).contains(read) {
        return None;
    }
    let shown = show_read(of, *read);
    if of == TableOf::Volts {
        let supply = subject.input().map_or(5.0, |it| it.range.nominal.base());
        if *read >= OPEN * supply && high < OPEN * supply {
            let message = say!(words::READS_OPEN, read = shown, expected = expected);
            return Some(found(subject, Severity::Fault, key, message));
        }
        if *read <= SHORTED * supply && low > SHORTED * supply {
            let message = say!(words::READS_SHORT, read = shown, expected = expected);
            return Some(found(subject, Severity::Fault, key, message));
        }
    }
    let told = subject.show(about.nominal);
    let message = say!(words::READING_DIFFERS, read = shown, at = told, expected = expected);
    // by how much it is off tells whether it works
    let by_it = subject.value_by(of, *read);
    let off = by_it.map(|it| (about.low - it).max(it - about.high).max(0.0));
    let is_sure = at_is_known(subject, at.is_some()) && off.is_none_or(|it| it >= subject.wrong());
    let severity = if is_sure { Severity::Fault } else { Severity::Doubt };
    Some(found(subject, severity, key, message))
}

/// Whether it is known, and not assumed, what it told when it was read.
fn at_is_known(subject: &SensorSubject<'_>, is_typed: bool) -> bool {
    let today = &subject.sensing.today;
    is_typed || !subject.sensor.is_told(Dimension::Temperature) || today.is_temperature_typed
}
