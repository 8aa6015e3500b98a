//! What is alike in both kinds of sensor: wires, shield, connector.

use super::{Details, coil, switch};
use crate::questions::coils::taken;
use crate::report::{Answer, Tone};
use crate::{
    fields,
    fields::sensor::Connector,
    fields::sensor::SensorKind,
    fields::sensor::Shield,
    finding::{Finding, Findings, Severity},
    message::Message,
    questions::trigger::words,
    read::{Sensed, Triggered},
    say,
    schema::Part,
    schema::Place,
};

/// The answer about one sensor.
pub(super) fn answer(
    read: &Triggered,
    sensor: &Sensed,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Answer {
    let mut answer = match sensor.kind {
        None => Answer::new(sensor.part.name(), Tone::Open, say!(words::NO_KIND)),
        Some(SensorKind::Reluctance) => coil::answer(read, sensor, details, findings),
        Some(_) => switch::answer(read, sensor, details, findings),
    };
    answer.title = Some(if sensor.part == Part::CamSensor {
        say!(words::CAM_TITLE)
    } else {
        say!(words::CRANK_TITLE)
    });
    shield(sensor, findings);
    answer.to_do.extend(wires(sensor));
    answer.assume(taken(&sensor.taken));
    answer
}

/// A finding at a field of the sensor.
pub(super) fn found(
    sensor: &Sensed,
    severity: Severity,
    field: impl Into<Place>,
    message: Message,
) -> Finding {
    Finding::new(severity, field.into().of(sensor.part), message)
}

fn shield(sensor: &Sensed, findings: &mut Findings) {
    // a Hall sensor's levels are volts apart: many have no shield, and need none (common practice, no source)
    let is_switch = matches!(sensor.kind, Some(SensorKind::OpenCollector | SensorKind::PushPull));
    let message = match sensor.shield {
        Some(Shield::BothEnds) => say!(words::SHIELD_BOTH),
        Some(Shield::Nowhere) if !is_switch => say!(words::SHIELD_NONE),
        _ => return,
    };
    findings.push(found(sensor, Severity::Doubt, fields::sensor::SHIELD, message));
}

fn wires(sensor: &Sensed) -> Vec<Message> {
    let is_coil = sensor.kind == Some(SensorKind::Reluctance);
    let mut to_do = Vec::new();
    match sensor.kind {
        Some(SensorKind::Reluctance) => to_do.push(say!(words::DO_COIL_WIRES)),
        Some(_) => to_do.push(say!(words::DO_HALL_WIRES)),
        None => {}
    }
    if sensor.connector == Some(Connector::Change) {
        to_do.push(if is_coil {
            say!(words::DO_CONNECTOR_TWO)
        } else {
            say!(words::DO_CONNECTOR_THREE)
        });
    }
    to_do.push(say!(words::DO_ROUTE));
    to_do
}
