//! A Hall sensor: its levels at the input, and how soon they rise.

use super::{Details, sensor::found};
use crate::report::{Answer, Tone};
use crate::{
    fields,
    fields::sensor::SensorRail,
    finding::{Findings, Severity},
    message::Message,
    quantity::{Band, Holds, Measure, Resistance, Time, Voltage, seconds},
    questions::trigger::words,
    read::{Sensed, Triggered},
    say,
    schema::Choice as _,
    schema::Part,
    schema::Place,
    trigger::{
        hall::{Hall, InputNeeds, Levels},
        wheel,
    },
    working::Working,
};

/// An edge that is later by more of the crank than this is said: common practice, no source.
const LATE_DEG: f64 = 0.5;
/// What any input bears, with a tenth for the tolerance of its supply: common practice, no source.
const LOGIC_V: f64 = 5.5;

pub(super) fn answer(
    read: &Triggered,
    sensor: &Sensed,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Answer {
    let hall = sensor.hall.filter(|hall| hall.rail.is_some());
    let asked = InputNeeds {
        low: read.input.low,
        high: read.input.high,
        bears: read.input.bears,
        sink: sensor.sink,
    };
    let Some((hall, levels)) = hall.and_then(|hall| Some((hall, hall.levels()?))) else {
        return without_rail(read, sensor, &asked, findings);
    };
    let half = half_tooth(read, sensor);
    let cure = pull_up(sensor, hall.cure(&asked, half));
    let mut said =
        levels_said(read, sensor, &(hall, levels.clone(), asked), cure.as_ref(), findings);
    said.extend(rise(read, sensor, &hall, half, cure.as_ref(), findings));
    let worst = said.into_iter().min_by_key(|(tone, _)| *tone);
    let (tone, verdict) = worst.unwrap_or_else(|| {
        (Tone::Good, say!(words::LEVELS_SUIT, low = levels.low.high, high = levels.high.low))
    });
    let mut answer = Answer::new(sensor.part.name(), tone, verdict);
    answer.to_do.extend(cure.filter(|_| tone != Tone::Good));
    answer.why = Some(say!(words::WHY_HALL, low = asked.low, high = asked.high));
    answer.show(details.map(|it| (it.levels)(&hall, &levels, &asked)));
    // logic bears what a sensor's supply of 5 V gives
    if asked.bears.is_none() && levels.high.high.base() > LOGIC_V {
        answer.to_do.push(say!(words::DO_BEARS, high = levels.high.high));
    }
    answer
}

fn without_rail(
    read: &Triggered,
    sensor: &Sensed,
    asked: &InputNeeds,
    findings: &mut Findings,
) -> Answer {
    let hall = sensor.hall.filter(|it| !it.drives_up && sensor.rail == Some(SensorRail::Nothing));
    let Some(hall) = hall else {
        let mut answer = Answer::new(sensor.part.name(), Tone::Open, say!(words::RAIL_WANTED));
        answer.to_do = vec![say!(words::DO_RAIL)];
        return answer;
    };
    let cure = pull_up(sensor, hall.cure(asked, half_tooth(read, sensor)));
    let finding =
        found(sensor, Severity::Fault, fields::sensor::PULL_RAIL, say!(words::NO_PULL_UP));
    findings.push(finding.cured_by(cure.clone()));
    let mut answer = Answer::new(sensor.part.name(), Tone::Bad, say!(words::IS_UNPULLED));
    answer.to_do = cure.into_iter().collect();
    answer
}

fn pull_up(sensor: &Sensed, cure: Option<(Resistance, Voltage)>) -> Option<Message> {
    let (resistor, rail) = cure?;
    let choice = if rail.base() < 4.0 { SensorRail::ThreeVolt } else { SensorRail::FiveVolt };
    let edits = vec![
        fields::sensor::PULL_UP.of(sensor.part).edit(resistor.show().into_shown()),
        fields::sensor::PULL_RAIL.of(sensor.part).edit(choice.choosable().code),
    ];
    let own = sensor.hall.and_then(|it| it.rail).map(|it| it.nominal.base());
    // beside the one there, which may be in the controller, it is stronger still
    let how = match own {
        None => "",
        Some(own) if (own - rail.base()).abs() < 0.1 => ", beside or in place of the one there",
        Some(_) => ", in place of the one there",
    };
    Some(say!(words::CURE_PULL_UP, pull_up = resistor, rail = rail, how = how).done_by(edits))
}

/// Half the time of a tooth at the highest speed: in it the level must rise.
fn half_tooth(read: &Triggered, sensor: &Sensed) -> Option<Time> {
    let speed = read.highest.filter(|speed| speed.base() > 0.0)?;
    let mut working = Working::new();
    let period = if sensor.part == Part::CamSensor {
        let teeth = read.cam_teeth?;
        seconds(1.0 / wheel::cam_frequency(&mut working, teeth, speed).base())
    } else {
        wheel::period(&mut working, read.positions, speed)
    };
    Some(seconds(period.base() / 2.0))
}

/// At which corners the levels are so; a rail that is not the battery is the same at all of them.
fn holds(read: &Triggered, hall: &Hall, is_battery: bool, so: impl Fn(&Levels) -> bool) -> Holds {
    Holds::from_corners(read.conditions.corners().map(|corner| {
        let rail = if is_battery { Some(Band::exact(corner.supply)) } else { hall.rail };
        let at = Hall { rail, ..*hall }.levels();
        (corner.name, at.as_ref().is_some_and(&so))
    }))
}

/// A high that is too low at every corner, or at some.
fn too_low(high: Band<Voltage>, asked: Voltage) -> (Message, Message) {
    let (most, what, verdict) = if high.high < asked {
        (high.high, words::NO_TOOTH.text, say!(words::NEVER_HIGH, high = high.high))
    } else {
        (high.low, words::SOME_TEETH.text, say!(words::PERHAPS_HIGH, high = high.low))
    };
    (say!(words::HIGH_TOO_LOW, high = most, asked = asked, what = what), verdict)
}

fn levels_said(
    read: &Triggered,
    sensor: &Sensed,
    (hall, levels, asked): &(Hall, Levels, InputNeeds),
    cure: Option<&Message>,
    findings: &mut Findings,
) -> Vec<(Tone, Message)> {
    let is_battery = sensor.rail == Some(SensorRail::Battery);
    let mut said = Vec::new();
    let mut note = |severity, field: Place, message, so: &dyn Fn(&Levels) -> bool, verdict| {
        let finding = found(sensor, severity, field, message)
            .holding(holds(read, hall, is_battery, so))
            .cured_by(cure.cloned())
            .shown_by(levels.working.iter().cloned());
        findings.push(finding);
        said.push((Tone::Bad, verdict));
    };
    let (low, high, sunk) = (levels.low.high, levels.high, levels.sunk.high);
    if let Some(bears) = asked.bears.filter(|bears| high.high > *bears) {
        let message = say!(words::RAIL_TOO_HIGH, high = high.high, bears = bears);
        let verdict = say!(words::IS_TOO_HIGH, high = high.high);
        note(
            Severity::Danger,
            fields::sensor::PULL_RAIL.place(),
            message,
            &|it| it.high.high > bears,
            verdict,
        );
    }
    if high.low < asked.high {
        let (message, verdict) = too_low(high, asked.high);
        note(
            Severity::Fault,
            fields::sensor::PULL_UP.place(),
            message,
            &|it| it.high.low < asked.high,
            verdict,
        );
    }
    if low > asked.low {
        let message = say!(words::LOW_TOO_HIGH, low = low, asked = asked.low);
        let verdict = say!(words::NEVER_LOW, low = low);
        note(
            Severity::Fault,
            fields::sensor::PULL_UP.place(),
            message,
            &|it| it.low.high > asked.low,
            verdict,
        );
    }
    if let Some(sink) = asked.sink.filter(|sink| sunk > *sink) {
        let message = say!(words::OVER_SINK, sunk = sunk, sink = sink);
        let verdict = say!(words::SINKS, sunk = sunk);
        note(
            Severity::Fault,
            fields::sensor::SINK.place(),
            message,
            &|it| it.sunk.high > sink,
            verdict,
        );
    }
    said
}

fn rise(
    read: &Triggered,
    sensor: &Sensed,
    hall: &Hall,
    half: Option<Time>,
    cure: Option<&Message>,
    findings: &mut Findings,
) -> Option<(Tone, Message)> {
    let ((time, mut steps), (half, speed)) = (hall.rise(read.input.high)?, half.zip(read.highest)?);
    let mut working = Working::new();
    let turned = wheel::turned(&mut working, time, speed);
    steps.extend(working.into_steps());
    let (severity, tone) = if time > half {
        (Severity::Fault, Tone::Bad)
    } else if turned.degrees() > LATE_DEG {
        (Severity::Doubt, Tone::Doubtful)
    } else {
        return None;
    };
    let message = say!(words::SLOW_RISE, time = time, half = half, speed = speed, turned = turned);
    let finding = found(sensor, severity, fields::sensor::PULL_UP, message);
    findings.push(finding.cured_by(cure.cloned()).shown_by(steps));
    Some((tone, say!(words::RISES, time = time)))
}
