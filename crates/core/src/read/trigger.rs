//! The sensors at crank and cam from their fields.

use super::{Conditions, Reader, usual_band};
use crate::{
    cranking::usual_dip,
    engine::Engine,
    fields,
    finding::{Finding, Severity},
    plan::{Plan, Trigger, TriggerInput, TriggerSensor},
    quantity::{
        Band, Capacitance, CrankAngle, Current, Frequency, Length, Measure, Ratio, Resistance,
        RotationalSpeed, Time, Value, Voltage, rpm, volts,
    },
    say,
    trigger::{hall::Hall, offset::Reading, reluctance::Reluctance},
};

/// Capacitance of a metre of cable, in farads: common practice, no source.
const CABLE_F_PER_M: f64 = 100e-12;

/// What the fields say.
#[derive(Debug)]
pub(crate) struct Triggered {
    pub(crate) conditions: Conditions,
    /// Positions on the crank's wheel, and how many of them lack their tooth.
    pub(crate) positions: u32,
    pub(crate) missing: u32,
    /// Teeth of the cam in a turn of it; nothing where there is no cam sensor.
    pub(crate) cam_teeth: Option<u32>,
    /// Whether there is a cam sensor.
    pub(crate) has_cam: bool,
    /// Whether two turns make a cycle.
    pub(crate) is_four_stroke: bool,
    /// The highest speed.
    pub(crate) highest: Option<RotationalSpeed>,
    /// The slowest instant of cranking, at the mean less the dip: lowest, as meant, highest.
    pub(crate) slowest: Option<Band<RotationalSpeed>>,
    /// The dip, at most.
    pub(crate) dip: Ratio,
    /// Degrees between firings, where they are even.
    pub(crate) firing: Option<CrankAngle>,
    pub(crate) input: Input,
    pub(crate) crank: Option<Sensed>,
    pub(crate) cam: Option<Sensed>,
    /// Tooth at top dead centre, offset entered, locked advance, and the two readings.
    pub(crate) tooth: Option<u32>,
    pub(crate) offset: Option<CrankAngle>,
    pub(crate) advance: Option<CrankAngle>,
    pub(crate) readings: Vec<Reading>,
    /// Whether a reading lacks its speed, or a speed its reading: it is left out.
    pub(crate) is_halved: bool,
}

/// The controller's inputs.
#[derive(Debug)]
pub(crate) struct Input {
    pub(crate) highest: Option<Frequency>,
    pub(crate) lowest: Option<Frequency>,
    pub(crate) tick: Option<Time>,
    pub(crate) counts_from: Option<Voltage>,
    pub(crate) bears: Option<Voltage>,
    pub(crate) low: Voltage,
    pub(crate) high: Voltage,
    resistance: Band<Resistance>,
    capacitance: Band<Capacitance>,
}

/// A sensor.
#[derive(Debug)]
pub(crate) struct Sensed {
    /// The name of its record.
    pub(crate) record: &'static str,
    /// What it is.
    pub(crate) kind: Option<&'static str>,
    /// As a coil, where it is one and enough is known.
    pub(crate) reluctance: Option<Reluctance>,
    /// As a switch.
    pub(crate) hall: Option<Hall>,
    /// Whether its pull-up's rail is the battery, or isn't known.
    pub(crate) rail: Option<&'static str>,
    pub(crate) sink: Option<Current>,
    pub(crate) polarity: Option<&'static str>,
    pub(crate) shield: Option<&'static str>,
    pub(crate) connector: Option<&'static str>,
    /// What was taken for blanks.
    pub(crate) taken: Vec<(&'static str, Value)>,
}

/// Whether any of it was typed.
fn is_asked(plan: &Plan) -> bool {
    plan.trigger != Trigger::default()
        || plan.crank_sensor != TriggerSensor::default()
        || plan.cam_sensor != TriggerSensor::default()
        || plan.trigger_input != TriggerInput::default()
}

/// Reads the question; every field, whatever stands in the others. Nothing where none of it was typed.
pub(crate) fn trigger(
    reader: &mut Reader<'_>,
    conditions: &Conditions,
    engine: Option<&Engine>,
    highest: Option<Band<RotationalSpeed>>,
) -> Option<Triggered> {
    if !is_asked(reader.plan()) {
        return None;
    }
    let (positions, missing) = wheel(reader);
    let cranking = reader.band_elsewhere::<RotationalSpeed>("cranking.speed");
    // the same as that of the question of cranking, where it is not typed
    let usual = super::cranking::firings(reader, engine)
        .map_or(Ratio::from_base(0.4), |(firings, cycle)| usual_dip(&firings, cycle).high);
    let typed = (!reader.text("cranking.dip").is_empty())
        .then(|| reader.band_elsewhere::<Ratio>("cranking.dip"));
    let dip = typed.flatten().map_or(usual, |it| it.high);
    let slowest = cranking.map(|band| band.map(|speed| rpm(speed.base() * (1.0 - dip.base()))));
    let is_four_stroke =
        !matches!(reader.choice_elsewhere("engine.kind"), Some("two-stroke" | "rotary"));
    let cycle = if is_four_stroke { 720.0 } else { 360.0 };
    let firing = reader
        .whole_elsewhere("engine.cylinders")
        .map(|count| CrankAngle::new(cycle / f64::from(count.max(1))));
    let input = Input::read(reader);
    let around = Around { conditions, cranking, input: &input };
    let crank = sensor(reader, "crank_sensor", &around);
    let cam = sensor(reader, "cam_sensor", &around);
    let cam_teeth = reader.whole("trigger.cam_teeth").value();
    let is_synced_by_cam = reader.choice_elsewhere("cranking.sync") == Some("cam");
    let tooth = tooth(reader, positions - missing.min(positions));
    let mut angle = |name: &str| reader.band::<CrankAngle>(name).value();
    let offset = angle("trigger.offset").map(|it| it.nominal);
    let advance = angle("trigger.advance").map(|it| it.nominal);
    let seen = [angle("trigger.seen_low"), angle("trigger.seen_high")];
    let speeds = ["trigger.speed_low", "trigger.speed_high"]
        .map(|path| reader.band::<RotationalSpeed>(path).value());
    let is_halved = seen.iter().zip(&speeds).any(|(seen, speed)| seen.is_some() != speed.is_some());
    let readings = seen
        .into_iter()
        .zip(speeds)
        .filter_map(|(seen, speed)| Some(Reading { seen: seen?, speed: speed?.nominal }));
    Some(Triggered {
        conditions: *conditions,
        positions,
        missing,
        cam_teeth,
        has_cam: cam_teeth.is_some() || cam.is_some() || is_synced_by_cam,
        is_four_stroke,
        highest: highest.map(|band| band.high),
        slowest,
        dip,
        firing,
        tooth,
        offset,
        advance,
        readings: readings.collect(),
        is_halved,
        input,
        crank,
        cam,
    })
}

/// The wheel, which the question of cranking reads: what is wrong with it is said there.
fn wheel(reader: &Reader<'_>) -> (u32, u32) {
    let positions = reader.whole_elsewhere("cranking.teeth").unwrap_or(60);
    let usual = match positions {
        60 => 2,
        1 => 0,
        _ => 1,
    };
    let missing = reader.whole_elsewhere("cranking.missing").filter(|it| *it < positions);
    (positions, missing.unwrap_or(usual))
}

/// The tooth at top dead centre, of those that are there.
fn tooth(reader: &mut Reader<'_>, teeth: u32) -> Option<u32> {
    let path = "trigger.tooth";
    let tooth = reader.whole(path).value()?;
    if tooth > teeth {
        let message = say!("trigger.no-such-tooth", tooth = tooth, teeth = teeth);
        reader.unusable(Finding::new(Severity::Fault, path, message));
        return None;
    }
    Some(tooth)
}

/// The levels of low and high; those that are usual where they cross.
fn levels(reader: &mut Reader<'_>) -> (Voltage, Voltage) {
    const HIGH: &str = "trigger_input.high";
    const LOW: &str = "trigger_input.low";
    let (mut of_low, mut of_high) = (Vec::new(), Vec::new());
    let low = band::<Voltage>(reader, LOW, &mut of_low).low;
    let high = band::<Voltage>(reader, HIGH, &mut of_high).high;
    if low < high {
        return (low, high);
    }
    // said at one that was typed, and can be read
    let path = if of_high.is_empty() { HIGH } else { LOW };
    let shown = |level: Voltage, taken: &[_]| {
        let shown = level.show().into_shown();
        if taken.is_empty() { shown } else { shown + " (usual)" }
    };
    let message =
        say!("trigger.levels-cross", low = shown(low, &of_low), high = shown(high, &of_high));
    reader.unusable(Finding::new(Severity::Fault, path, message));
    (volts(0.8), volts(2.0))
}

impl Input {
    fn read(reader: &mut Reader<'_>) -> Self {
        let none = &mut Vec::new();
        let (low, high) = levels(reader);
        Self {
            highest: reader
                .band::<Frequency>("trigger_input.highest_frequency")
                .value()
                .map(|it| it.low),
            lowest: reader
                .band::<Frequency>("trigger_input.lowest_frequency")
                .value()
                .map(|it| it.high),
            tick: reader.band::<Time>("trigger_input.tick").value().map(|it| it.high),
            counts_from: reader
                .band::<Voltage>("trigger_input.counts_from")
                .value()
                .map(|it| it.high),
            bears: reader.band::<Voltage>("trigger_input.bears").value().map(|it| it.low),
            low,
            high,
            resistance: band(reader, "trigger_input.resistance", none),
            capacitance: band(reader, "trigger_input.capacitance", none),
        }
    }
}

/// A quantity, or what is usual; that is noted in `taken`.
fn band<Q: Measure>(
    reader: &mut Reader<'_>,
    path: &str,
    taken: &mut Vec<(&'static str, Value)>,
) -> Band<Q> {
    let entry = reader.band::<Q>(path);
    let (usual, shown) =
        usual_band(path).unwrap_or((Band::exact(Q::from_base(0.0)), Value::text("")));
    if let super::Entry::Given(band) = entry {
        return band;
    }
    taken.push((fields::find(path).map_or("", |field| field.label), shown));
    usual
}

/// What stands around a sensor.
struct Around<'a> {
    conditions: &'a Conditions,
    cranking: Option<Band<RotationalSpeed>>,
    input: &'a Input,
}

fn sensor(reader: &mut Reader<'_>, record: &'static str, around: &Around<'_>) -> Option<Sensed> {
    let plan = reader.plan();
    let typed = if record == "cam_sensor" { &plan.cam_sensor } else { &plan.crank_sensor };
    if *typed == TriggerSensor::default() {
        return None;
    }
    let path = |name: &str| [record, ".", name].concat();
    let kind = reader.choice(&path("kind")).value();
    let (mut of_coil, mut of_switch) = (Vec::new(), Vec::new());
    let reluctance = reluctance(reader, &path, around, &mut of_coil);
    let rail = reader.choice(&path("pull_rail")).value();
    let hall = hall(reader, &path, around, (kind, rail), &mut of_switch);
    let is_coil = kind == Some("reluctance");
    let is_hall = matches!(kind, Some("open-collector" | "push-pull"));
    Some(Sensed {
        record,
        kind,
        reluctance: reluctance.filter(|_| is_coil),
        hall: Some(hall).filter(|_| is_hall),
        rail,
        sink: reader.band::<Current>(&path("sink")).value().map(|it| it.low),
        polarity: reader.choice(&path("polarity")).value().filter(|_| is_coil),
        shield: reader.choice(&path("shield")).value(),
        connector: reader.choice(&path("connector")).value(),
        taken: match (is_coil, is_hall) {
            (true, _) => of_coil,
            (_, true) => of_switch,
            _ => Vec::new(),
        },
    })
}

fn reluctance(
    reader: &mut Reader<'_>,
    path: &dyn Fn(&str) -> String,
    around: &Around<'_>,
    taken: &mut Vec<(&'static str, Value)>,
) -> Option<Reluctance> {
    let amplitude = reader.band::<Voltage>(&path("amplitude")).value();
    let share = match reader.choice(&path("amplitude_as")).value() {
        Some("peak") => 1.0,
        Some("peak-to-peak") => 0.5,
        _ => core::f64::consts::SQRT_2,
    };
    let measured_at =
        reader.band::<RotationalSpeed>(&path("amplitude_speed")).value().or(around.cranking);
    let coil = band(reader, &path("resistance"), taken);
    Some(Reluctance {
        peak: amplitude?.map(|v| volts(v.base() * share)),
        measured_at: measured_at?,
        coil,
        input: around.input.resistance,
        temperature: around.conditions.temperature,
        series: Measure::from_base(0.0),
    })
}

fn hall(
    reader: &mut Reader<'_>,
    path: &dyn Fn(&str) -> String,
    around: &Around<'_>,
    (kind, rail): (Option<&'static str>, Option<&'static str>),
    taken: &mut Vec<(&'static str, Value)>,
) -> Hall {
    let drives_up = kind == Some("push-pull");
    let pull_up = band(reader, &path("pull_up"), taken);
    if drives_up {
        taken.clear();
    }
    let length = band::<Length>(reader, &path("length"), &mut Vec::new());
    let filter = around.input.capacitance;
    let of = |filter: Capacitance, length: Length| {
        Capacitance::from_base(filter.base() + length.base() * CABLE_F_PER_M)
    };
    Hall {
        drives_up,
        rail: match rail {
            Some("3.3") => Some(Band::exact(volts(3.3))),
            Some("5") => Some(Band::exact(volts(5.0))),
            Some("battery") => Some(around.conditions.supply),
            _ => None,
        },
        pull_up,
        saturation: band(reader, &path("saturation"), taken),
        contact: band(reader, &path("contact"), taken),
        ground: band(reader, &path("ground_offset"), taken),
        input: around.input.resistance,
        capacitance: Band {
            nominal: of(filter.nominal, length.nominal),
            low: of(filter.low, length.low),
            high: of(filter.high, length.high),
        },
    }
}
