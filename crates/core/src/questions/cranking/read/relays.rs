//! Further relays that are switched at a speed, from their fields.

use super::feed;
use crate::read::{
    Entry, PlannedRest, Reader,
    cranking::{RELEASE, RelayKeys, band, relay, release, setting},
    relay_records,
};
use crate::{
    cranking::{Relay, Release},
    fields,
    plan::MOST_ENTRIES,
    quantity::{Band, RotationalSpeed, Time, Value, seconds},
    schema::Part,
};

pub(crate) use crate::fields::relays::{Cut, Purpose};

/// Release of a relay that must stay out while cranking: near its threshold, so that it lets go above the starter's speed.
const NEAR: (f64, &str) = (0.85, "85% of the threshold: common practice, no source");

/// A relay of the list.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct SpeedRelay {
    /// Its number in the list.
    pub(crate) at: usize,
    pub(crate) name: String,
    pub(crate) purpose: Option<Purpose>,
    pub(crate) threshold: Option<RotationalSpeed>,
    pub(crate) release: Release,
    pub(crate) release_above: Option<RotationalSpeed>,
    pub(crate) relay: Relay,
    /// Whether its coil has no feed while the starter turns, and the engine needs it then.
    pub(crate) is_unfed: bool,
    pub(crate) prime: Band<Time>,
    /// What else cuts the pump; nothing where that was not said.
    pub(crate) cut: Option<Cut>,
}

impl Purpose {
    /// Whether it must be closed while the starter turns; the others must not.
    pub(crate) fn is_for_starting(self) -> bool {
        matches!(self, Self::Pump | Self::Coils | Self::Injectors | Self::Engine)
    }
}

/// Reads the list.
pub(crate) fn relays(reader: &mut Reader<'_>, rest: &PlannedRest) -> Vec<SpeedRelay> {
    let further = relay_records::further(reader.plan()).into_iter();
    further.filter(|at| *at < MOST_ENTRIES).map(|at| one(reader, at, rest)).collect()
}

/// A pump that the key keeps running, past the engine.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct KeyPump {
    /// Its number in the list.
    pub(crate) at: usize,
    pub(crate) name: String,
    /// What else cuts it; nothing where that was not said.
    pub(crate) cut: Option<Cut>,
    /// Whether a threshold was typed for it all the same.
    pub(crate) has_threshold: bool,
}

/// Reads those of the list.
pub(crate) fn key_pumps(reader: &mut Reader<'_>) -> Vec<KeyPump> {
    let pumps = relay_records::pumps_on_key(reader.plan()).into_iter();
    let pumps = pumps.filter(|at| *at < MOST_ENTRIES).map(|at| {
        let key = fields::relays::NAME.at(at);
        KeyPump {
            name: crate::read::rest::name(reader, key, format!("relay {}", at + 1)),
            cut: reader.choice(fields::relays::CUT.at(at)).value(),
            has_threshold: !reader.text(fields::relays::RELAY_ON_AT.at(at)).is_empty(),
            at,
        }
    });
    pumps.collect()
}

fn one(reader: &mut Reader<'_>, at: usize, rest: &PlannedRest) -> SpeedRelay {
    let keys = RelayKeys::of(at);
    let name =
        crate::read::rest::name(reader, fields::relays::NAME.at(at), format!("relay {}", at + 1));
    let purpose = reader.choice(fields::relays::PURPOSE.at(at)).value();
    let threshold: Entry<RotationalSpeed> = setting(reader, keys.threshold);
    let usual = if purpose.is_none_or(Purpose::is_for_starting) { RELEASE } else { NEAR };
    let (release, release_above) = release(reader, keys.release, threshold.value(), usual);
    let relay = relay(reader, &keys, feed::switched(rest, at));
    let is_needed = purpose.is_some_and(Purpose::is_for_starting);
    SpeedRelay {
        name,
        purpose,
        threshold: threshold.value(),
        release,
        release_above,
        relay,
        is_unfed: is_needed && feed::is_unfed(reader, at),
        prime: band(reader, fields::relays::PRIME.at(at), Band::exact(seconds(2.0))),
        cut: reader.choice(fields::relays::CUT.at(at)).value(),
        at,
    }
}

impl SpeedRelay {
    /// The path of its record in the plan.
    pub(crate) fn path(&self) -> String {
        Part::Relays.record(self.at)
    }

    /// Its name, to be put into a sentence.
    pub(crate) fn title(&self) -> Value {
        Value::text(self.name.clone())
    }
}
