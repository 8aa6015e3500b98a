//! One sensor from its fields.

use super::{
    AlsoConnected, PlannedSensor, PlannedToday, SensorInput, SensorSupply, SensorWiring, ToldIn,
    pairs::{self, OHMS, VOLTS},
    taken_of,
};
use crate::{
    fields::{
        self,
        sensors::{AlsoPulls, SensorPurpose, SensorType, TableOf},
    },
    finding::{Finding, Severity},
    quantity::{
        Band, Dimension, Measure, Pressure, Ratio, Resistance, Value, Voltage, celsius, ohms,
        share, volts,
    },
    questions::sensors::words,
    read::{
        Entry, Reader,
        problem::shortened,
        rest::{name, same_name},
        row::{row, signed_row},
    },
    say,
    schema::{InputName, Key, NumberRow, Part, Place, SupplyName},
    sensor::{
        curve::{PointCurve, Scale},
        divider::SecondPull,
        element::SensorElement,
        ratiometric::Ratiometric,
        thermistor::Thermistor,
    },
    words::Wording,
};

type SensorAround<'a> = (&'a [SensorInput], &'a [SensorSupply], &'a PlannedToday, Band<Voltage>);

/// What an old gauge's winding has: common practice, no source.
const GAUGE_OHM: (f64, f64, f64) = (50.0, 200.0, 1000.0);

pub(super) fn sensor(
    reader: &mut Reader<'_>,
    at: usize,
    (inputs, supplies, today, battery): SensorAround<'_>,
) -> PlannedSensor {
    let name = name(reader, fields::sensors::NAME.at(at), format!("sensor {}", at + 1));
    let purpose = reader.choice(fields::sensors::PURPOSE.at(at)).value();
    let kind = reader.choice(fields::sensors::KIND.at(at)).value();
    let told = kind.and_then(|kind| told_in(kind, purpose));
    let read_ohms = read_at(reader, fields::sensors::READ_OHMS.at(at), told, OHMS);
    let read_volts = read_at(reader, fields::sensors::READ_VOLTS.at(at), told, VOLTS);
    let known = element(reader, at, kind, told);
    let by_readings = (kind == Some(SensorType::Ntc) && known == Entry::Missing)
        .then(|| by_readings(&read_ohms, today))
        .flatten();
    let mut planned = PlannedSensor {
        name,
        purpose,
        kind,
        told,
        on: wiring(reader, at, inputs, supplies),
        is_by_readings: by_readings.is_some(),
        element: by_readings.or(known.value()),
        counted: reader.choice(fields::sensors::COUNTED_FROM.at(at)).value(),
        second: reader.choice(fields::sensors::SECOND.at(at)).value(),
        strokes: [fields::sensors::STROKE, fields::sensors::SECOND_STROKE]
            .map(|key| stroke(reader, key.at(at))),
        switched_to: reader.choice(fields::sensors::SWITCHED_TO.at(at)).value(),
        stands: reader.choice(fields::sensors::STANDS.at(at)).value(),
        feed: reader.choice(fields::sensors::FEED.at(at)).value(),
        draw: reader.band(fields::sensors::DRAW.at(at)).value(),
        also: also(reader, at, battery),
        entered: reader.choice(fields::sensors::ENTERED.at(at)).value(),
        table: table(reader, at, told),
        read_ohms,
        read_volts,
        is_unreadable: false,
        taken: Vec::new(),
    };
    for place in Part::Sensors.places() {
        reader.stand(place.at(at));
    }
    planned.is_unreadable = reader.has_unusable(&(Part::Sensors.record(at) + "."));
    let taken = [
        fields::sensors::TOLERANCE.at(at).place(),
        fields::sensors::LOW_VOLTS.at(at).place(),
        fields::sensors::HIGH_VOLTS.at(at).place(),
    ];
    planned.taken = taken.into_iter().filter_map(|place| taken_of(reader, place)).collect();
    planned
}

/// The inputs and supplies that it names.
fn wiring(
    reader: &mut Reader<'_>,
    at: usize,
    inputs: &[SensorInput],
    supplies: &[SensorSupply],
) -> SensorWiring {
    let inputs: Vec<_> = inputs.iter().map(|it| it.name.as_str()).collect();
    let supplies: Vec<_> = supplies.iter().map(|it| it.name.as_str()).collect();
    let mut input = |key: Key<InputName>| named(reader, key.at(at), &inputs, words::NO_SUCH_INPUT);
    let (first, second) = (input(fields::sensors::INPUT), input(fields::sensors::SECOND_INPUT));
    let mut supply =
        |key: Key<SupplyName>| named(reader, key.at(at), &supplies, words::NO_SUCH_SUPPLY);
    SensorWiring {
        input: first,
        second_input: second,
        supply: supply(fields::sensors::SUPPLY),
        second_supply: supply(fields::sensors::SECOND_SUPPLY),
    }
}

/// What a kind of sensor tells for a purpose.
fn told_in(kind: SensorType, purpose: Option<SensorPurpose>) -> Option<ToldIn> {
    const TEMPERATURE: ToldIn = (Dimension::Temperature, "°C");
    const PRESSURE: ToldIn = (Dimension::Pressure, "kPa");
    match kind {
        SensorType::Ntc | SensorType::Pt100 | SensorType::Pt1000 | SensorType::Thermocouple => {
            Some(TEMPERATURE)
        }
        SensorType::Ratiometric => Some(PRESSURE),
        SensorType::Wideband => Some((Dimension::Share, "of one")),
        SensorType::Sender => Some(match purpose {
            Some(SensorPurpose::OilPressure | SensorPurpose::FuelPressure) => PRESSURE,
            Some(SensorPurpose::Level) | None => (Dimension::Share, "%"),
            Some(_) => TEMPERATURE,
        }),
        SensorType::Pot | SensorType::Switch | SensorType::Hall | SensorType::Knock => None,
    }
}

fn read_at(
    reader: &mut Reader<'_>,
    key: Key<NumberRow>,
    told: Option<ToldIn>,
    read: ToldIn,
) -> Vec<super::ReadAt> {
    let Some(told) = told else {
        reader.stand(key.place());
        return Vec::new();
    };
    pairs::readings(reader, key, told, read).value().unwrap_or_default()
}

/// What it does, by its data.
fn element(
    reader: &mut Reader<'_>,
    at: usize,
    kind: Option<SensorType>,
    told: Option<ToldIn>,
) -> Entry<SensorElement> {
    let Some((kind, told)) = kind.zip(told) else { return Entry::Missing };
    match kind {
        SensorType::Pt100 => Entry::Given(SensorElement::Platinum(ohms(100.0))),
        SensorType::Pt1000 => Entry::Given(SensorElement::Platinum(ohms(1000.0))),
        SensorType::Ntc => {
            let tolerance = tolerance(reader, at, 0.05);
            thermistor(reader, at, told).map(|curve| SensorElement::Thermistor(curve, tolerance))
        }
        SensorType::Sender => {
            let tolerance = tolerance(reader, at, 0.1);
            curve(reader, fields::sensors::POINTS.at(at), (told, OHMS))
                .map(|curve| SensorElement::Resistor(curve, tolerance))
        }
        SensorType::Ratiometric => pressure(reader, at),
        SensorType::Wideband | SensorType::Thermocouple => {
            curve(reader, fields::sensors::POINTS.at(at), (told, VOLTS)).map(SensorElement::Line)
        }
        SensorType::Pot | SensorType::Switch | SensorType::Hall | SensorType::Knock => {
            Entry::Missing
        }
    }
}

fn tolerance(reader: &mut Reader<'_>, at: usize, usual: f64) -> f64 {
    let key: Key<Ratio> = fields::sensors::TOLERANCE.at(at);
    let entry = reader.band(key).map(|it| it.high);
    let usual = share(usual);
    let entry = reader.or_assume(key, entry, usual, usual, "common practice, no source");
    entry.value().unwrap_or(usual).base()
}

/// A thermistor: by points, or by coefficients, or by its B value.
fn thermistor(reader: &mut Reader<'_>, at: usize, told: ToldIn) -> Entry<Thermistor> {
    let key = fields::sensors::POINTS.at(at);
    let points = pairs::points(reader, key, told, OHMS);
    let r25: Option<Band<Resistance>> = reader.band(fields::sensors::R25.at(at)).value();
    let beta = reader.whole(fields::sensors::BETA.at(at)).value();
    let series = coefficients(reader, at, r25);
    match points {
        Entry::Given(points) => {
            let points: Vec<_> = points.iter().map(|(t, r)| (celsius(*t), ohms(*r))).collect();
            Thermistor::by_points(&points)
                .map_or_else(|| pairs::turned_down(reader, key), Entry::Given)
        }
        Entry::Unreadable => Entry::Unreadable,
        _ => match (series, r25.zip(beta)) {
            (Entry::Missing, Some((r25, beta))) => {
                let by_beta = Thermistor::by_beta(r25.nominal, f64::from(beta));
                by_beta.map_or(Entry::Missing, Entry::Given)
            }
            (series, _) => series,
        },
    }
}

/// By the coefficients of Steinhart and Hart, which stand in a row.
fn coefficients(
    reader: &mut Reader<'_>,
    at: usize,
    r25: Option<Band<Resistance>>,
) -> Entry<Thermistor> {
    let key = fields::sensors::STEINHART.at(at);
    let text = reader.text(key);
    if text.is_empty() {
        reader.missing(key);
        return Entry::Missing;
    }
    reader.given(key, shortened(text));
    // a dash behind an e is its exponent's: blanks part them
    let numbers: Option<Vec<_>> = text
        .split([' ', ';', ',', '\n'])
        .filter(|it| !it.is_empty())
        .map(|it| crate::math::decimal(&it.replace('−', "-")))
        .collect();
    let found = match numbers.as_deref() {
        Some([a, b, c]) => Thermistor::by_coefficients(*a, *b, *c),
        Some([a, b, c, d]) => r25.and_then(|it| Thermistor::by_terms(it.nominal, [*a, *b, *c, *d])),
        _ => None,
    };
    found.map_or_else(
        || {
            let message = say!(words::NO_SERIES, field = key.field().label);
            reader.unusable(Finding::new(Severity::Fault, key, message));
            Entry::Unreadable
        },
        Entry::Given,
    )
}

/// A curve of points; straight between them.
fn curve(
    reader: &mut Reader<'_>,
    key: Key<NumberRow>,
    (told, read): (ToldIn, ToldIn),
) -> Entry<PointCurve> {
    match pairs::points(reader, key, told, read) {
        Entry::Given(points) => PointCurve::new(points, Scale::Plain)
            .map_or_else(|| pairs::turned_down(reader, key), Entry::Given),
        Entry::Unreadable => Entry::Unreadable,
        _ => Entry::Missing,
    }
}

fn pressure(reader: &mut Reader<'_>, at: usize) -> Entry<SensorElement> {
    let low: Entry<Band<Pressure>> = reader.band(fields::sensors::RANGE_LOW.at(at));
    let high: Entry<Band<Pressure>> = reader.band(fields::sensors::RANGE_HIGH.at(at));
    let mut end = |key: Key<Voltage>, usual: f64| {
        reader.band(key.at(at)).value().map_or(volts(usual), |it| it.nominal)
    };
    let voltage = (end(fields::sensors::LOW_VOLTS, 0.5), end(fields::sensors::HIGH_VOLTS, 4.5));
    let tolerance = tolerance(reader, at, 0.02);
    let Some((low, high)) = low.value().zip(high.value()) else { return Entry::Missing };
    let pressure = (low.nominal, high.nominal);
    let of_record = |keys: [Place; 2]| keys.map(|it| it.at(at));
    let apart = [
        // a kilopascal, and a tenth of a volt, are the least that can be told
        (pressure.1 - pressure.0).base().abs() / 1e3,
        (voltage.1 - voltage.0).base().abs() / 0.1,
    ];
    let ends: [[Place; 2]; 2] = [
        of_record([fields::sensors::RANGE_HIGH.into(), fields::sensors::RANGE_LOW.into()]),
        of_record([fields::sensors::LOW_VOLTS.into(), fields::sensors::HIGH_VOLTS.into()]),
    ];
    if let Some((_, ends)) = apart.iter().zip(ends).find(|(apart, _)| **apart < 1.0) {
        let place = reader.typed_of(ends);
        reader.unusable(Finding::new(Severity::Fault, place, say!(words::NO_SPAN)));
        return Entry::Unreadable;
    }
    Entry::Given(SensorElement::Pressure(Ratiometric { pressure, voltage, tolerance }))
}

/// What it must be by two readings, or more, at temperatures that are far enough apart.
fn by_readings(read: &[super::ReadAt], today: &PlannedToday) -> Option<SensorElement> {
    const APART: f64 = 15.0;
    let now = today.temperature.nominal.base();
    let points: Vec<_> =
        read.iter().map(|(at, ohm)| (celsius(at.unwrap_or(now)), ohms(*ohm))).collect();
    let degrees = || points.iter().map(|(t, _)| t.base());
    let spread =
        degrees().fold(f64::NEG_INFINITY, f64::max) - degrees().fold(f64::INFINITY, f64::min);
    if spread < APART {
        return None;
    }
    // a meter, its leads and a thermometer
    Thermistor::by_points(&points).map(|curve| SensorElement::Thermistor(curve, 0.05))
}

fn table(
    reader: &mut Reader<'_>,
    at: usize,
    told: Option<ToldIn>,
) -> Option<(TableOf, PointCurve)> {
    let of = reader.choice(fields::sensors::TABLE_OF.at(at)).value();
    let (told, of) = told.zip(of)?;
    let key = fields::sensors::TABLE.at(at);
    let read = if of == TableOf::Ohms { OHMS } else { VOLTS };
    let Entry::Given(points) = pairs::points(reader, key, told, read) else { return None };
    let is_thermal = told.0 == Dimension::Temperature && of == TableOf::Ohms;
    let falls = points.iter().all(|(_, read)| *read > 0.0);
    let scale = if is_thermal && falls { Scale::Thermistor } else { Scale::Plain };
    let curve = PointCurve::new(points, scale);
    if curve.is_none() {
        pairs::turned_down::<()>(reader, key);
    }
    curve.map(|curve| (of, curve))
}

/// Volts over the stroke.
fn stroke(reader: &mut Reader<'_>, key: Key<NumberRow>) -> Vec<f64> {
    let text = reader.text(key);
    if text.is_empty() {
        reader.missing(key);
        return Vec::new();
    }
    let is_possible = |it: &f64| (0.0..=16.0).contains(it);
    // a number below nought is told as one, and not parted at its sign
    let numbers =
        if text.contains(" -") || text.starts_with('-') { signed_row(text) } else { row(text) };
    match numbers {
        Ok(numbers) if !numbers.is_empty() && numbers.iter().all(is_possible) => {
            let shown: Vec<_> = numbers.iter().map(|it| volts(*it).show().into_shown()).collect();
            reader.given(key, Value::text(shortened(&shown.join(", "))));
            numbers.into_iter().take(crate::plan::MOST_ENTRIES).collect()
        }
        _ => {
            let message = say!(words::NO_STROKE, field = key.field().label);
            reader.unusable(Finding::new(Severity::Fault, key, message));
            Vec::new()
        }
    }
}

/// What else pulls at its wire.
fn also(reader: &mut Reader<'_>, at: usize, battery: Band<Voltage>) -> Option<AlsoConnected> {
    let also = reader.choice(fields::sensors::ALSO.at(at)).value();
    let typed: Option<Band<Resistance>> = reader.band(fields::sensors::ALSO_OHMS.at(at)).value();
    let is_typed = typed.is_some();
    let (low, nominal, high) = GAUGE_OHM;
    let gauge = Band { low: ohms(low), nominal: ohms(nominal), high: ohms(high) };
    let (supply, resistance, is_gauge) = match also? {
        AlsoPulls::Nothing => return None,
        // what an unknown one does is not known either
        AlsoPulls::Supply => (super::usual_supply(), typed?, false),
        AlsoPulls::Gauge => {
            (Band { low: battery.nominal, ..battery }, typed.unwrap_or(gauge), true)
        }
    };
    Some(AlsoConnected { pull: SecondPull { supply, resistance }, is_gauge, is_typed })
}

/// The number of the record that a field names.
fn named<T: Copy>(
    reader: &mut Reader<'_>,
    key: Key<T>,
    names: &[&str],
    nowhere: &'static Wording,
) -> Option<usize> {
    let text = reader.text(key);
    if text.is_empty() {
        reader.missing(key);
        return None;
    }
    let found = names.iter().position(|it| same_name(it, text));
    if found.is_none() {
        let (field, name) = (key.field().label, shortened(text));
        let message = crate::say_of!(nowhere, field = field, name = name);
        reader.unusable(Finding::new(Severity::Fault, key, message));
        return None;
    }
    reader.given(key, shortened(text));
    found
}
