//! The wires of the sensors at crank and cam.

use super::{bare, label, slug};
use crate::{
    car::Car,
    fields::{
        harness,
        sensor::{Connector, SensorKind},
    },
    loom::{Duty, LoomWire, Stock, Work},
    message::Message,
    quantity::Length,
    questions::wires::{
        planned::{PlannedWire, WireGroup},
        words,
    },
    read::Sensed,
    say,
    schema::Key,
};

pub(super) fn wires(car: &Car<'_>) -> Vec<PlannedWire> {
    let crank = car.trigger.as_ref().and_then(|it| it.crank.as_ref());
    let cam = car.trigger.as_ref().and_then(|it| it.cam.as_ref());
    let sensors = [
        (crank, say!(words::CRANK_SENSOR), harness::CRANK, car.harness.crank),
        (cam, say!(words::CAM_SENSOR), harness::CAM, car.harness.cam),
    ];
    let of = |(sensed, name, key, length): (Option<&Sensed>, Message, _, _)| {
        sensed.map_or_else(Vec::new, |it| of_sensor(it, &name, key, length))
    };
    sensors.into_iter().flat_map(of).collect()
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
        let (id, called) = (slug(&[&to, &end]), label(&to, &end));
        let plain = bare(id, called, [from, to], Duty::Sensor, Stock::Harness);
        let wire = LoomWire { length, works: works.clone(), ..plain };
        PlannedWire { group: WireGroup::Sensors, wire, key: Some(key), pin: None }
    };
    ends.iter().copied().map(one).collect()
}
