//! Sensors, their inputs and supplies, and today, from their fields.

mod pairs;
mod sensor;

pub(crate) use pairs::shown;

use crate::{
    fields::{
        self,
        grounds::SensorGround,
        inputs::{InputPull, InputTakes},
        sensors::{
            PressureFrom, SensorFeed, SensorPurpose, SensorType, SwitchStands, SwitchedTo, TableOf,
        },
    },
    plan::names_in,
    quantity::{
        Band, Current, Dimension, Length, Measure, Pressure, Resistance, Temperature, Value,
        Voltage, celsius, metres, volts,
    },
    read::{
        Conditions, Reader,
        problem::shortened,
        rest::{limited, name},
    },
    schema::{Part, Place},
    sensor::{
        atmosphere,
        curve::PointCurve,
        divider::{Divider, SecondPull},
        element::SensorElement,
        tracks::TrackRun,
    },
};

/// All that is said of sensors.
#[derive(Debug)]
pub(crate) struct Sensing {
    pub(crate) today: PlannedToday,
    pub(crate) inputs: Vec<SensorInput>,
    pub(crate) supplies: Vec<SensorSupply>,
    pub(crate) sensors: Vec<PlannedSensor>,
    /// The coldest start.
    pub(crate) cold: Temperature,
    /// The battery at rest.
    pub(crate) battery: Voltage,
    /// Where the sensors are grounded, which is told with the grounds.
    pub(crate) ground: Option<SensorGround>,
}

/// The car as it stands.
#[derive(Clone, Copy, Debug)]
pub(crate) struct PlannedToday {
    pub(crate) temperature: Band<Temperature>,
    pub(crate) altitude: Band<Length>,
    pub(crate) air: Band<Pressure>,
    /// Whether the temperature was typed.
    pub(crate) is_temperature_typed: bool,
    /// Whether the altitude was typed.
    pub(crate) is_altitude_typed: bool,
    /// Whether the air's pressure was measured.
    pub(crate) is_air_measured: bool,
}

/// An input of the controller; what it can read is what it may be given.
#[derive(Clone, Debug)]
pub(crate) struct SensorInput {
    /// The number of its record, which may describe several.
    pub(crate) record: usize,
    pub(crate) name: String,
    pub(crate) takes: Option<InputTakes>,
    pub(crate) pull: Option<InputPull>,
    pub(crate) pull_up: Option<Band<Resistance>>,
    pub(crate) range: Band<Voltage>,
    pub(crate) is_range_typed: bool,
    pub(crate) bits: Option<u32>,
}

/// A supply for sensors.
#[derive(Clone, Debug)]
pub(crate) struct SensorSupply {
    pub(crate) name: String,
    pub(crate) volts: Band<Voltage>,
    pub(crate) rating: Option<Current>,
    pub(crate) others: Option<Current>,
}

/// What a sensor tells: its dimension, and the unit that is usual for it.
pub(crate) type ToldIn = (Dimension, &'static str);

/// What was read at the car: where it was not said at what, that is as today; and what was read.
pub(crate) type ReadAt = (Option<f64>, f64);

/// The inputs and supplies that a sensor is on, by their numbers among the others.
#[derive(Clone, Copy, Debug)]
pub(crate) struct SensorWiring {
    pub(crate) input: Option<usize>,
    pub(crate) second_input: Option<usize>,
    pub(crate) supply: Option<usize>,
    pub(crate) second_supply: Option<usize>,
}

/// What else pulls at a sensor's wire.
#[derive(Clone, Copy, Debug)]
pub(crate) struct AlsoConnected {
    pub(crate) pull: SecondPull,
    /// Whether it is an old gauge, on the battery.
    pub(crate) is_gauge: bool,
    /// Whether its resistance was typed.
    pub(crate) is_typed: bool,
}

/// A sensor.
#[derive(Clone, Debug)]
pub(crate) struct PlannedSensor {
    pub(crate) name: String,
    pub(crate) purpose: Option<SensorPurpose>,
    pub(crate) kind: Option<SensorType>,
    pub(crate) on: SensorWiring,
    /// What it tells, in what unit; nothing of what has none.
    pub(crate) told: Option<ToldIn>,
    /// What it does, where that is known.
    pub(crate) element: Option<SensorElement>,
    /// Whether that follows from what was read at the car alone.
    pub(crate) is_by_readings: bool,
    /// What its pressure is counted from, where that was typed.
    pub(crate) counted: Option<PressureFrom>,
    pub(crate) second: Option<TrackRun>,
    /// Volts over the stroke, of both tracks.
    pub(crate) strokes: [Vec<f64>; 2],
    pub(crate) switched_to: Option<SwitchedTo>,
    pub(crate) stands: Option<SwitchStands>,
    pub(crate) feed: Option<SensorFeed>,
    pub(crate) draw: Option<Band<Current>>,
    pub(crate) also: Option<AlsoConnected>,
    pub(crate) entered: Option<SensorPurpose>,
    pub(crate) table: Option<(TableOf, PointCurve)>,
    pub(crate) read_ohms: Vec<ReadAt>,
    pub(crate) read_volts: Vec<ReadAt>,
    /// Whether a field of it can't be read.
    pub(crate) is_unreadable: bool,
    /// What was assumed for blanks: the label of the field and the value.
    pub(crate) taken: Vec<(&'static str, Value)>,
}

/// The parts that the question is made of.
const PARTS: [Part; 3] = [Part::Sensors, Part::Inputs, Part::SensorSupplies];

/// Reads the question; every field, whatever stands in the others. Nothing where none of it was typed.
pub(crate) fn sensing(reader: &mut Reader<'_>, conditions: &Conditions) -> Option<Sensing> {
    let plan = reader.plan();
    let is_asked = PARTS.into_iter().any(|part| plan.count(part) > 0);
    if !is_asked && plan.is_blank(Part::Today) {
        for place in Part::Today.places() {
            reader.missing(place);
        }
        return None;
    }
    let today = today(reader);
    let inputs = inputs(reader);
    let supplies = supplies(reader);
    let count = limited(reader, Part::Sensors, "Sensors");
    let around = (inputs.as_slice(), supplies.as_slice(), &today, conditions.supply);
    let sensors = (0..count).map(|at| sensor::sensor(reader, at, around)).collect();
    Some(Sensing {
        today,
        inputs,
        supplies,
        sensors,
        cold: conditions.temperature.low,
        battery: conditions.supply.nominal,
        ground: reader.choice_elsewhere(fields::grounds::SENSORS),
    })
}

fn today(reader: &mut Reader<'_>) -> PlannedToday {
    let between = |low: f64, high: f64| Band::between(celsius(low), celsius(high));
    let temperature = reader.band(fields::today::TEMPERATURE).value();
    let altitude = reader.band(fields::today::ALTITUDE).value();
    let altitude = altitude.unwrap_or(Band::between(metres(0.0), metres(600.0)));
    let measured = reader.band(fields::today::AIR).value();
    PlannedToday {
        temperature: temperature.unwrap_or(between(10.0, 30.0)),
        altitude,
        air: measured.unwrap_or_else(|| atmosphere::pressure(&altitude)),
        is_temperature_typed: reader.is_typed(fields::today::TEMPERATURE),
        is_altitude_typed: reader.is_typed(fields::today::ALTITUDE),
        is_air_measured: measured.is_some(),
    }
}

/// What a supply, or what an input's pull-up goes to, is where it was not said.
pub(crate) fn usual_supply() -> Band<Voltage> {
    Band::between(volts(4.9), volts(5.1))
}

fn inputs(reader: &mut Reader<'_>) -> Vec<SensorInput> {
    let mut inputs = Vec::new();
    for record in 0..limited(reader, Part::Inputs, "Inputs") {
        let key = fields::inputs::NAME.at(record);
        let called = name(reader, key, format!("input {}", record + 1));
        let pull_up: Option<Band<Resistance>> =
            reader.band(fields::inputs::PULL_UP.at(record)).value();
        // a resistor that was typed is there, whatever else was said
        let pull = reader.choice(fields::inputs::PULL.at(record)).value();
        let pull = pull.or(pull_up.map(|_| InputPull::Up));
        let input = SensorInput {
            record,
            name: called.clone(),
            takes: reader.choice(fields::inputs::TAKES.at(record)).value(),
            pull,
            pull_up: pull_up.filter(|_| pull == Some(InputPull::Up)),
            range: reader
                .band(fields::inputs::RANGE.at(record))
                .value()
                .unwrap_or_else(usual_supply),
            is_range_typed: reader.is_typed(fields::inputs::RANGE.at(record)),
            bits: reader.whole(fields::inputs::BITS.at(record)).value(),
        };
        let names = names_in(reader.text(key));
        if names.len() > 1 {
            let named = |it: String| SensorInput { name: shortened(&it), ..input.clone() };
            inputs.extend(names.into_iter().map(named));
        } else {
            inputs.push(input);
        }
    }
    inputs.truncate(crate::plan::MOST_ENTRIES);
    inputs
}

fn supplies(reader: &mut Reader<'_>) -> Vec<SensorSupply> {
    let count = limited(reader, Part::SensorSupplies, "Sensor supplies");
    let mut one = |at: usize| SensorSupply {
        name: name(
            reader,
            fields::sensor_supplies::NAME.at(at),
            format!("sensor supply {}", at + 1),
        ),
        volts: reader
            .band(fields::sensor_supplies::VOLTS.at(at))
            .value()
            .unwrap_or_else(usual_supply),
        rating: reader.band(fields::sensor_supplies::RATING.at(at)).value().map(|it| it.low),
        others: reader.band(fields::sensor_supplies::OTHERS.at(at)).value().map(|it| it.high),
    };
    (0..count).map(&mut one).collect()
}

impl SensorInput {
    /// Its pull-up, with what else pulls at the wire; nothing where it has none, or none is known.
    pub(crate) fn divider(&self, second: Option<SecondPull>) -> Option<Divider> {
        let pull_up = self.pull_up?;
        Some(Divider { supply: self.range, pull_up, second })
    }
}

impl PlannedSensor {
    /// Where it was not said: manifold and air are told absolutely, oil and fuel above the air.
    pub(crate) fn counted_from(&self) -> PressureFrom {
        self.counted.unwrap_or(match self.purpose {
            Some(SensorPurpose::OilPressure | SensorPurpose::FuelPressure) => PressureFrom::Gauge,
            _ => PressureFrom::Absolute,
        })
    }

    /// Whether a base value is one that it may have.
    pub(crate) fn is_told(&self, dimension: Dimension) -> bool {
        self.told.is_some_and(|(told, _)| told == dimension)
    }
}

/// The labels and values of what was assumed, for a sentence.
pub(crate) fn listed(taken: &[(&'static str, Value)]) -> String {
    let one = |(label, value): &(&str, Value)| [*label, " ", value.shown.as_str()].concat();
    taken.iter().map(one).collect::<Vec<_>>().join("; ")
}

/// What was assumed of today, as far as a sensor rests on it.
pub(super) fn taken_of_today(
    subject: &super::subject::SensorSubject<'_>,
) -> Vec<(&'static str, Value)> {
    let today = &subject.sensing.today;
    let sensor = subject.sensor;
    let mut taken = Vec::new();
    let is_cold = sensor.is_told(Dimension::Temperature);
    if is_cold && !today.is_temperature_typed {
        taken.push((fields::today::TEMPERATURE.field().label, ends(&today.temperature)));
    }
    let is_absolute = sensor.counted_from() == PressureFrom::Absolute;
    let is_air = sensor.is_told(Dimension::Pressure) && is_absolute;
    if is_air && !today.is_air_measured && !today.is_altitude_typed {
        taken.push((fields::today::ALTITUDE.field().label, ends(&today.altitude)));
    }
    taken
}

/// What is assumed of a field, where it is.
pub(crate) fn taken_of(
    reader: &Reader<'_>,
    place: impl Into<Place>,
) -> Option<(&'static str, Value)> {
    let place = place.into();
    let state = reader.fields.get(&place.path())?;
    let is_assumed = state.state == crate::read::State::Assumed;
    let value = state.value.clone()?;
    is_assumed.then(|| (place.field().label, value))
}

/// A band as a fitter reads it: both ends, where they read apart.
pub(crate) fn ends<Q: Measure>(band: &Band<Q>) -> Value {
    let (low, high) = (band.low.show(), band.high.show());
    if low.shown == high.shown {
        return band.nominal.show();
    }
    // the unit of both is said once
    let bare = |value: &Value| {
        value.shown.split_once(' ').map(|(number, unit)| (number.to_owned(), unit.to_owned()))
    };
    let text = match (bare(&low), bare(&high)) {
        (Some((number, unit)), Some((_, other))) if unit == other => {
            [number.as_str(), " to ", &high.shown].concat()
        }
        _ => [low.shown.as_str(), " to ", &high.shown].concat(),
    };
    band.nominal.show().said(text)
}
