//! What is alike in both kinds of sensor: wires, shield, connector.

use super::{
    super::{Answer, Tone, coils::taken},
    coil, switch,
};
use crate::{
    finding::{Finding, Findings, Severity},
    message::Message,
    read::{Sensed, Triggered},
    say,
};

/// The answer about one sensor.
pub(super) fn answer(read: &Triggered, sensor: &Sensed, findings: &mut Findings) -> Answer {
    let mut answer = match sensor.kind {
        None => Answer::new(sensor.record, Tone::Open, say!("trigger.no-kind")),
        Some("reluctance") => coil::answer(read, sensor, findings),
        Some(_) => switch::answer(read, sensor, findings),
    };
    answer.title = Some(if sensor.record == "cam_sensor" {
        say!("trigger.cam-title")
    } else {
        say!("trigger.crank-title")
    });
    shield(sensor, findings);
    answer.to_do.extend(wires(sensor));
    answer.to_do.extend(taken(&sensor.taken));
    answer
}

fn path(sensor: &Sensed, name: &str) -> String {
    [sensor.record, ".", name].concat()
}

/// A finding at a field of the sensor.
pub(super) fn found(sensor: &Sensed, severity: Severity, field: &str, message: Message) -> Finding {
    Finding::new(severity, path(sensor, field), message)
}

fn shield(sensor: &Sensed, findings: &mut Findings) {
    let message = match sensor.shield {
        Some("both") => say!("trigger.shield-both"),
        Some("none") => say!("trigger.shield-none"),
        _ => return,
    };
    findings.push(found(sensor, Severity::Doubt, "shield", message));
}

fn wires(sensor: &Sensed) -> Vec<Message> {
    let is_coil = sensor.kind == Some("reluctance");
    let mut to_do = Vec::new();
    match sensor.kind {
        Some("reluctance") => to_do.push(say!("trigger.do-coil-wires")),
        Some(_) => to_do.push(say!("trigger.do-hall-wires")),
        None => {}
    }
    if sensor.connector == Some("change") {
        to_do.push(if is_coil {
            say!("trigger.do-connector-two")
        } else {
            say!("trigger.do-connector-three")
        });
    }
    to_do.push(say!("trigger.do-route"));
    to_do
}
