//! The controller's own supply and grounds.

use super::{between, slug};
use crate::{
    car::Car,
    fields::{controller::ControllerFeed, grounds},
    loom::{Duty, LoomWire, Stock},
    message::Message,
    questions::wires::{
        planned::{PlannedWire, WireGroup},
        read::GroundsTyped,
        words,
    },
    say,
};

pub(super) fn wires(car: &Car<'_>) -> Vec<PlannedWire> {
    let typed = &car.harness;
    let supply = typed.controller_feed.map(|feed| match feed {
        ControllerFeed::Battery => (say!(words::FEED_30), Duty::Permanent),
        ControllerFeed::Ignition => (say!(words::FEED_15), Duty::Switched),
    });
    let supply = supply.map(|(to, duty)| wire(say!(words::CONTROLLER_SUPPLY), to, duty));
    let GroundsTyped { count, size, length } = typed.grounds;
    // only what surely comes back, of loads that are known
    let certain = car.feeds.grounds.wires.as_ref().map(|it| it.certain);
    let comes_back = certain.map(|it| it / f64::from(count.max(1)));
    let grounds = (1..=count).map(|n| {
        let ground = wire(say!(words::CONTROLLER_GROUND, n = n), say!(words::GROUND), Duty::Ground);
        let wire = LoomWire { size, length, ..ground.wire };
        PlannedWire { wire, key: Some(grounds::WIRE_LENGTH), pin: comes_back, ..ground }
    });
    supply.into_iter().chain(grounds).collect()
}

fn wire(from: Message, to: Message, duty: Duty) -> PlannedWire {
    let (from, to) = (from.into_text(), to.into_text());
    let wire = between(slug(&[&from]), [from, to], duty, Stock::Harness);
    PlannedWire { group: WireGroup::Feeds, wire, key: None, pin: None }
}
