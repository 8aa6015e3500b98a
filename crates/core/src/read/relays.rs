//! Further relays that are switched at a speed, from their fields.

use super::{
    Entry, Reader,
    cranking::{RELEASE, band, relay, release, setting},
    rest::limited,
};
use crate::{
    cranking::{Relay, Release},
    quantity::{Band, RotationalSpeed, Time, Value, seconds},
};

/// Release of a relay that must stay out while cranking: near its threshold, so that it lets go above the starter's speed.
const NEAR: (f64, &str) =
    (0.85, "85 % of the speed at which it is switched on: common practice, no source");

/// A relay of the list.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct SpeedRelay {
    pub(crate) path: String,
    pub(crate) name: String,
    pub(crate) purpose: Option<Purpose>,
    pub(crate) threshold: Option<RotationalSpeed>,
    pub(crate) release: Release,
    pub(crate) release_above: Option<RotationalSpeed>,
    pub(crate) relay: Relay,
    /// Whether its pull-in voltage was typed.
    pub(crate) is_given: bool,
    pub(crate) prime: Band<Time>,
    /// What else cuts the pump; nothing where that was not said.
    pub(crate) cut: Option<&'static str>,
}

/// What a relay feeds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Purpose {
    Pump,
    AlternatorField,
    Fan,
    Coils,
}

impl Purpose {
    /// Whether it must be closed while the starter turns; the others must not.
    pub(crate) fn is_for_starting(self) -> bool {
        matches!(self, Self::Pump | Self::Coils)
    }
}

/// Reads the list.
pub(crate) fn relays(reader: &mut Reader<'_>) -> Vec<SpeedRelay> {
    let count = limited(reader, "relays", "Speed-switched relays", reader.plan().relays.len());
    (0..count).map(|at| one(reader, at)).collect()
}

fn one(reader: &mut Reader<'_>, at: usize) -> SpeedRelay {
    let record = format!("relays.{at}");
    let path = |field: &str| format!("{record}.{field}");
    let name = super::rest::name(reader, &path("name"), format!("relay {}", at + 1));
    let purpose = match reader.choice(&path("purpose")).value() {
        Some("pump") => Some(Purpose::Pump),
        Some("alternator-field") => Some(Purpose::AlternatorField),
        Some("fan") => Some(Purpose::Fan),
        Some("coils") => Some(Purpose::Coils),
        _ => None,
    };
    let threshold: Entry<RotationalSpeed> = setting(reader, &path("relay_on_at"));
    let usual = if purpose.is_none_or(Purpose::is_for_starting) { RELEASE } else { NEAR };
    let (release, release_above) = release(reader, &record, threshold.value(), usual);
    let (relay, is_given) = relay(reader, &record);
    SpeedRelay {
        name,
        purpose,
        threshold: threshold.value(),
        release,
        release_above,
        relay,
        is_given,
        prime: band(reader, &path("prime"), Band::exact(seconds(2.0))),
        cut: reader.choice(&path("cut")).value(),
        path: record,
    }
}

impl SpeedRelay {
    /// Its name, to be put into a sentence.
    pub(crate) fn title(&self) -> Value {
        Value::text(self.name.clone())
    }
}
