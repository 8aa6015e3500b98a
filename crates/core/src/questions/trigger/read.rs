//! The sensors at crank and cam from their fields.

use crate::read::{Conditions, Reader, usual_band};
use crate::{
    cranking::Sync,
    engine::{Engine, EngineKind, MOST_CYLINDERS},
    fields::{
        self,
        sensor::{AmplitudeAs, Connector, Polarity, SensorKind, SensorRail, Shield},
    },
    finding::{Finding, Severity},
    plan::Plan,
    quantity::{
        Band, Capacitance, CrankAngle, Current, Frequency, Length, Measure, Ratio, Resistance,
        RotationalSpeed, Time, Value, Voltage, rpm, volts,
    },
    questions::trigger::words,
    say,
    schema::{Key, Part},
    trigger::{hall::Hall, offset::LightReading, reluctance::Reluctance},
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
    /// The same, where it was typed.
    pub(crate) typed_dip: Option<Ratio>,
    /// Degrees between firings, where they are even.
    pub(crate) firing: Option<CrankAngle>,
    /// Top dead centres of the firings, from that of the first.
    pub(crate) tops: Vec<CrankAngle>,
    pub(crate) input: Input,
    pub(crate) crank: Option<Sensed>,
    pub(crate) cam: Option<Sensed>,
    /// Tooth at top dead centre, offset entered, locked advance, and the two readings.
    pub(crate) tooth: Option<u32>,
    /// The angle from the gap to top dead centre, where it was measured.
    pub(crate) gap_angle: Option<CrankAngle>,
    pub(crate) offset: Option<CrankAngle>,
    pub(crate) advance: Option<CrankAngle>,
    pub(crate) readings: Vec<LightReading>,
    /// How far a reading may be off.
    pub(crate) tolerance: CrankAngle,
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
    /// The part of the plan with its fields.
    pub(crate) part: Part,
    /// What it is.
    pub(crate) kind: Option<SensorKind>,
    /// As a coil, where it is one and enough is known.
    pub(crate) reluctance: Option<Reluctance>,
    /// As a switch.
    pub(crate) hall: Option<Hall>,
    /// Whether its pull-up's rail is the battery, or isn't known.
    pub(crate) rail: Option<SensorRail>,
    pub(crate) sink: Option<Current>,
    pub(crate) polarity: Option<Polarity>,
    pub(crate) shield: Option<Shield>,
    pub(crate) connector: Option<Connector>,
    /// What was assumed for blanks.
    pub(crate) taken: Vec<(&'static str, Value)>,
}

/// Whether any of it was typed.
pub(crate) fn is_asked(plan: &Plan) -> bool {
    let parts = [Part::Trigger, Part::CrankSensor, Part::CamSensor, Part::TriggerInput];
    let cam = plan.text(fields::wheels::CAM_TEETH);
    parts.into_iter().any(|part| !plan.is_blank(part)) || !cam.trim().is_empty()
}

/// The cranking speed; a cold morning and a weak battery count, where their speeds are typed.
fn cranking_speed(reader: &Reader<'_>) -> Option<Band<RotationalSpeed>> {
    let slow = [fields::cranking::COLD_SPEED, fields::cranking::WEAK_SPEED];
    let slow = slow.into_iter().filter(|key| reader.is_typed(*key));
    let slow = slow.filter_map(|key| reader.band_elsewhere(key));
    let usual = reader.band_elsewhere(fields::cranking::SPEED)?;
    Some(slow.fold(usual, |band, slow| band.widened_to(slow.low)))
}

fn is_four_stroke(reader: &Reader<'_>) -> bool {
    let kind = reader.choice_elsewhere(fields::engine::KIND);
    !matches!(kind, Some(EngineKind::TwoStroke | EngineKind::Rotary))
}

/// Reads the question; every field, whatever stands in the others. Nothing where none of it was typed.
pub(crate) fn trigger(
    reader: &mut Reader<'_>,
    conditions: &Conditions,
    engine: Option<&Engine>,
    usual_dip: Option<Band<Ratio>>,
    highest: Option<Band<RotationalSpeed>>,
) -> Option<Triggered> {
    if !is_asked(reader.plan()) {
        return None;
    }
    let (positions, missing) = wheel(reader);
    let cranking = cranking_speed(reader);
    // the same as that of the question of cranking, where it is not typed
    let usual = usual_dip.map_or(Ratio::from_base(0.4), |it| it.high);
    let typed = reader
        .is_typed(fields::cranking::DIP)
        .then(|| reader.band_elsewhere(fields::cranking::DIP));
    let dip = typed.flatten().map_or(usual, |it| it.high);
    let slowest = cranking.map(|band| band.map(|speed| rpm(speed.base() * (1.0 - dip.base()))));
    let is_four_stroke = is_four_stroke(reader);
    let cycle = if is_four_stroke { 720.0 } else { 360.0 };
    let count = reader.whole_elsewhere(fields::engine::CYLINDERS);
    let firing = count.map(|count| CrankAngle::new(cycle / f64::from(count.max(1))));
    let input = Input::read(reader);
    let around = SensorSurroundings { conditions, cranking, input: &input };
    let crank = sensor(reader, Part::CrankSensor, &around);
    let cam = sensor(reader, Part::CamSensor, &around);
    let cam_teeth = reader.whole(fields::wheels::CAM_TEETH).value();
    let is_synced_by_cam = reader.choice_elsewhere(fields::cranking::SYNC) == Some(Sync::Cam);
    let tooth = tooth(reader, positions - missing.min(positions));
    let mut angle = |key| reader.band::<CrankAngle>(key).value();
    let offset = angle(fields::controller::OFFSET).map(|it| it.nominal);
    let gap_angle = gap_angle(reader);
    let mut angle = |key| reader.band::<CrankAngle>(key).value();
    let advance = angle(fields::controller::LOCKED_ADVANCE).map(|it| it.nominal);
    let seen = [angle(fields::trigger::SEEN_LOW), angle(fields::trigger::SEEN_HIGH)];
    let speeds = [fields::trigger::SPEED_LOW, fields::trigger::SPEED_HIGH]
        .map(|key| reader.band(key).value());
    let is_halved = seen.iter().zip(&speeds).any(|(seen, speed)| seen.is_some() != speed.is_some());
    let readings = seen
        .into_iter()
        .zip(speeds)
        .filter_map(|(seen, speed)| Some(LightReading { seen: seen?, speed: speed?.nominal }));
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
        typed_dip: typed.flatten().map(|it| it.high),
        firing,
        tops: tops(engine, firing, cycle),
        tooth,
        gap_angle,
        offset,
        advance,
        readings: readings.collect(),
        tolerance: tolerance(reader),
        is_halved,
        input,
        crank,
        cam,
    })
}

/// Top dead centres as the engine fires; of one that is not known, as far apart as of an even one.
fn tops(engine: Option<&Engine>, firing: Option<CrankAngle>, cycle: f64) -> Vec<CrankAngle> {
    if let Some(engine) = engine {
        return engine.firings().iter().map(|it| it.angle).collect();
    }
    let apart = firing.map_or(cycle, CrankAngle::degrees);
    let tops = (0..MOST_CYLINDERS).map(|it| f64::from(it) * apart);
    tops.take_while(|it| *it < cycle - 1e-9).map(CrankAngle::new).collect()
}

/// The wheel, which the question of cranking reads: what is wrong with it is said there.
fn wheel(reader: &Reader<'_>) -> (u32, u32) {
    let positions = reader.whole_elsewhere(fields::wheels::CRANK_TEETH).unwrap_or(60);
    let usual = match positions {
        60 => 2,
        1 => 0,
        _ => 1,
    };
    let missing = reader.whole_elsewhere(fields::wheels::MISSING).filter(|it| *it < positions);
    (positions, missing.unwrap_or(usual))
}

/// The angle behind the gap, which the question of cranking reads: blank, it is taken from the offset there.
fn gap_angle(reader: &Reader<'_>) -> Option<CrankAngle> {
    let key = fields::wheels::GAP_ANGLE;
    reader.is_typed(key).then(|| reader.band_elsewhere(key))?.map(|it| it.nominal)
}

/// What a reading of the light may be off by, which is told with the light.
fn tolerance(reader: &Reader<'_>) -> CrankAngle {
    let typed = reader.band_elsewhere(fields::light::TOLERANCE);
    typed.map_or(CrankAngle::new(2.0), |it| it.high)
}

/// The tooth at top dead centre, of those that are there.
fn tooth(reader: &mut Reader<'_>, teeth: u32) -> Option<u32> {
    let key = fields::trigger::TOOTH;
    let tooth = reader.whole(key).value()?;
    if tooth > teeth {
        let message = say!(words::NO_SUCH_TOOTH, tooth = tooth, teeth = teeth);
        reader.unusable(Finding::new(Severity::Fault, key, message));
        return None;
    }
    Some(tooth)
}

/// The levels of low and high; those that are usual where they cross.
fn levels(reader: &mut Reader<'_>) -> (Voltage, Voltage) {
    const HIGH: Key<Voltage> = fields::trigger_input::HIGH;
    const LOW: Key<Voltage> = fields::trigger_input::LOW;
    let (mut of_low, mut of_high) = (Vec::new(), Vec::new());
    let low = band::<Voltage>(reader, LOW, &mut of_low).low;
    let high = band::<Voltage>(reader, HIGH, &mut of_high).high;
    if low < high {
        return (low, high);
    }
    // said at one that was typed, and can be read
    let key = if of_high.is_empty() { HIGH } else { LOW };
    let shown = |level: Voltage, taken: &[_]| {
        let shown = level.show().into_shown();
        if taken.is_empty() { shown } else { shown + " (usual)" }
    };
    let message =
        say!(words::LEVELS_CROSS, low = shown(low, &of_low), high = shown(high, &of_high));
    reader.unusable(Finding::new(Severity::Fault, key, message));
    (volts(0.8), volts(2.0))
}

impl Input {
    fn read(reader: &mut Reader<'_>) -> Self {
        let none = &mut Vec::new();
        let (low, high) = levels(reader);
        Self {
            highest: reader.band(fields::trigger_input::HIGHEST_FREQUENCY).value().map(|it| it.low),
            lowest: reader.band(fields::trigger_input::LOWEST_FREQUENCY).value().map(|it| it.high),
            tick: reader.band(fields::trigger_input::TICK).value().map(|it| it.high),
            counts_from: reader.band(fields::trigger_input::COUNTS_FROM).value().map(|it| it.high),
            bears: reader.band(fields::trigger_input::BEARS).value().map(|it| it.low),
            low,
            high,
            resistance: band(reader, fields::trigger_input::RESISTANCE, none),
            capacitance: band(reader, fields::trigger_input::CAPACITANCE, none),
        }
    }
}

/// A quantity, or what is usual; that is noted in `taken`.
fn band<Q: Measure>(
    reader: &mut Reader<'_>,
    key: Key<Q>,
    taken: &mut Vec<(&'static str, Value)>,
) -> Band<Q> {
    let entry = reader.band(key);
    let (usual, shown) =
        usual_band(key).unwrap_or((Band::exact(Q::from_base(0.0)), Value::text("")));
    if let crate::read::Entry::Given(band) = entry {
        return band;
    }
    taken.push((key.field().label, shown));
    usual
}

/// What stands around a sensor.
struct SensorSurroundings<'a> {
    conditions: &'a Conditions,
    cranking: Option<Band<RotationalSpeed>>,
    input: &'a Input,
}

fn sensor(reader: &mut Reader<'_>, part: Part, around: &SensorSurroundings<'_>) -> Option<Sensed> {
    if reader.plan().is_blank(part) {
        return None;
    }
    let kind = reader.choice(fields::sensor::KIND.of(part)).value();
    let (mut of_coil, mut of_switch) = (Vec::new(), Vec::new());
    let reluctance = reluctance(reader, part, around, &mut of_coil);
    let rail = reader.choice(fields::sensor::PULL_RAIL.of(part)).value();
    let hall = hall(reader, part, around, (kind, rail), &mut of_switch);
    let is_coil = kind == Some(SensorKind::Reluctance);
    let is_hall = matches!(kind, Some(SensorKind::OpenCollector | SensorKind::PushPull));
    Some(Sensed {
        part,
        kind,
        reluctance: reluctance.filter(|_| is_coil),
        hall: Some(hall).filter(|_| is_hall),
        rail,
        sink: reader.band(fields::sensor::SINK.of(part)).value().map(|it| it.low),
        polarity: reader.choice(fields::sensor::POLARITY.of(part)).value().filter(|_| is_coil),
        shield: reader.choice(fields::sensor::SHIELD.of(part)).value(),
        connector: reader.choice(fields::sensor::CONNECTOR.of(part)).value(),
        taken: match (is_coil, is_hall) {
            (true, _) => of_coil,
            (_, true) => of_switch,
            _ => Vec::new(),
        },
    })
}

fn reluctance(
    reader: &mut Reader<'_>,
    part: Part,
    around: &SensorSurroundings<'_>,
    taken: &mut Vec<(&'static str, Value)>,
) -> Option<Reluctance> {
    let amplitude = reader.band(fields::sensor::AMPLITUDE.of(part)).value();
    let share = match reader.choice(fields::sensor::AMPLITUDE_AS.of(part)).value() {
        Some(AmplitudeAs::Peak) => 1.0,
        Some(AmplitudeAs::PeakToPeak) => 0.5,
        Some(AmplitudeAs::Effective) | None => core::f64::consts::SQRT_2,
    };
    let measured_at =
        reader.band(fields::sensor::AMPLITUDE_SPEED.of(part)).value().or(around.cranking);
    let coil = band(reader, fields::sensor::RESISTANCE.of(part), taken);
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
    part: Part,
    around: &SensorSurroundings<'_>,
    (kind, rail): (Option<SensorKind>, Option<SensorRail>),
    taken: &mut Vec<(&'static str, Value)>,
) -> Hall {
    let drives_up = kind == Some(SensorKind::PushPull);
    let pull_up = band(reader, fields::sensor::PULL_UP.of(part), taken);
    if drives_up {
        taken.clear();
    }
    let length = band(reader, fields::sensor::LENGTH.of(part), &mut Vec::new());
    let filter = around.input.capacitance;
    let of = |filter: Capacitance, length: Length| {
        Capacitance::from_base(filter.base() + length.base() * CABLE_F_PER_M)
    };
    Hall {
        drives_up,
        rail: match rail {
            Some(SensorRail::ThreeVolt) => Some(Band::exact(volts(3.3))),
            Some(SensorRail::FiveVolt) => Some(Band::exact(volts(5.0))),
            Some(SensorRail::Battery) => Some(around.conditions.supply),
            Some(SensorRail::Nothing) | None => None,
        },
        pull_up,
        saturation: band(reader, fields::sensor::SATURATION.of(part), taken),
        contact: band(reader, fields::sensor::CONTACT.of(part), taken),
        ground: band(reader, fields::sensor::GROUND_OFFSET.of(part), taken),
        input: around.input.resistance,
        capacitance: Band {
            nominal: of(filter.nominal, length.nominal),
            low: of(filter.low, length.low),
            high: of(filter.high, length.high),
        },
    }
}
