//! The wires of the sensors at crank and cam.

use super::{label, slug};
use crate::{
    fields::{
        harness,
        sensor::{Connector, SensorKind},
    },
    loom::{Duty, LoomWire, Stock, Work},
    message::Message,
    quantity::Length,
    questions::wires::{
        read::{Connected, PlannedWire, WireGroup},
        words,
    },
    read::{Reader, Sensed},
    say,
    schema::Key,
};

pub(super) fn wires(reader: &mut Reader<'_>, connected: Connected<'_>) -> Vec<PlannedWire> {
    let crank = connected.trigger.and_then(|it| it.crank.as_ref());
    let cam = connected.trigger.and_then(|it| it.cam.as_ref());
    let mut wires = Vec::new();
    for (sensed, name, key) in [
        (crank, say!(words::CRANK_SENSOR), harness::CRANK),
        (cam, say!(words::CAM_SENSOR), harness::CAM),
    ] {
        let length = reader.band(key).value().map(|it| it.nominal);
        wires.extend(sensed.into_iter().flat_map(|it| of_sensor(it, &name, key, length)));
    }
    wires
}

/// A coil has two, twisted and shielded; a Hall sensor three, shielded (common practice, no source).
fn of_sensor(
    sensed: &Sensed,
    name: &Message,
    key: Key<Length>,
    length: Option<Length>,
) -> Vec<PlannedWire> {
    let Some(kind) = sensed.kind else { return Vec::new() };
    let (ends, mut works): (&[_], _) = match kind {
        SensorKind::Reluctance => {
            (&[words::SIGNAL_PLUS, words::SIGNAL_MINUS], vec![Work::Twist, Work::Shield])
        }
        SensorKind::OpenCollector | SensorKind::PushPull => (
            &[words::SENSOR_SUPPLY, words::SENSOR_SIGNAL, words::SENSOR_GROUND],
            vec![Work::Shield],
        ),
    };
    if sensed.connector == Some(Connector::Change) {
        works.push(Work::Change);
    }
    let one = |wording| {
        let end = crate::say_of!(wording).into_text();
        let to = name.clone().into_text();
        let from = say!(words::INPUT, end = end.clone(), sensor = to.clone()).into_text();
        let wire = LoomWire {
            id: slug(&[&to, &end]),
            label: label(&to, &end),
            from,
            to,
            duty: Duty::Sensor,
            stock: Stock::Harness,
            size: None,
            length,
            fuse: None,
            works: works.clone(),
        };
        PlannedWire { group: WireGroup::Sensors, wire, key: Some(key), pin: None }
    };
    ends.iter().copied().map(one).collect()
}
