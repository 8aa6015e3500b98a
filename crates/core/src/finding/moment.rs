//! When a finding strikes.

use serde::Serialize;

/// When what a finding tells of is first met, in the order in which a car meets it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Moment {
    /// On paper: what was typed can't be read, or contradicts itself.
    Plan,
    /// With the key off.
    KeyOff,
    /// As the key is turned on, and while nothing is asked to act.
    KeyOn,
    /// While the starter turns.
    Cranking,
    /// While the engine runs.
    Running,
    /// Only after something else has failed.
    Failure,
}

/// What strikes at another moment than most of its question: by the codes of the findings.
const OTHERWISE: &[(&str, Moment)] = &[
    ("bus.no-data", Moment::Plan),
    ("bus.no-identifier", Moment::Plan),
    ("coils.fires-at-key-on", Moment::KeyOn),
    ("cranking.always-on", Moment::KeyOn),
    ("cranking.on-after-stop", Moment::Running),
    ("cranking.on-at-standstill", Moment::KeyOn),
    ("cranking.pump-on-after-stop", Moment::Running),
    ("cranking.pump-on-with-key", Moment::Running),
    ("cranking.pump-uncut", Moment::Running),
    ("cranking.relay-not-at-idle", Moment::Running),
    ("cranking.spark-at-power", Moment::KeyOn),
    ("cranking.sticks", Moment::Running),
    ("feeds.behind-itself", Moment::Plan),
    ("feeds.cable-drops", Moment::Cranking),
    ("feeds.inrush-over-contact", Moment::KeyOn),
    ("feeds.inrush-welds", Moment::KeyOn),
    ("feeds.no-strap", Moment::Cranking),
    ("feeds.no-such-relay", Moment::Plan),
    ("feeds.not-survived", Moment::Failure),
    ("feeds.starter-unlocked", Moment::Cranking),
    ("feeds.strap-drops", Moment::Cranking),
    ("feeds.strap-hot", Moment::Cranking),
    ("feeds.strap-warm", Moment::Cranking),
    ("injectors.count-differs", Moment::Plan),
    ("injectors.fuse-too-small", Moment::Running),
    ("injectors.relay-too-small", Moment::Running),
    ("injectors.resistor-overheats", Moment::Running),
    ("injectors.several-at-each", Moment::Plan),
    ("injectors.sharing-differs", Moment::Plan),
    ("outputs.output-named-twice", Moment::Plan),
    ("outputs.pair-of-one", Moment::Plan),
    ("outputs.relay-named-twice", Moment::Plan),
    ("outputs.throttle-cut-by-itself", Moment::Running),
    ("outputs.throttle-cut-unknown", Moment::Running),
    ("outputs.throttle-no-cut", Moment::Running),
    ("sensors.coarse", Moment::Running),
    ("sensors.no-series", Moment::Plan),
    ("sensors.no-span", Moment::Plan),
    ("sensors.no-stroke", Moment::Plan),
    ("sensors.no-such-input", Moment::Plan),
    ("sensors.no-such-supply", Moment::Plan),
    ("sensors.not-a-curve", Moment::Plan),
    ("sensors.one-supply", Moment::Failure),
    ("sensors.pairs-unread", Moment::Plan),
    ("sensors.table-ends", Moment::Running),
    ("sensors.table-reads-cold", Moment::Running),
    ("sensors.tracks-alike", Moment::Failure),
    ("trigger.coarse", Moment::Running),
    ("wires.alike", Moment::Plan),
    ("wires.beyond-cable", Moment::Plan),
    ("wires.no-colour", Moment::Plan),
];

impl Moment {
    /// When a finding of that code strikes, where it is not told by what was solved.
    pub fn of(code: &str) -> Self {
        if let Some((_, moment)) = OTHERWISE.iter().find(|(other, _)| *other == code) {
            return *moment;
        }
        match code.split('.').next() {
            Some("standing") => Self::KeyOff,
            Some("bus" | "outputs" | "sensors") => Self::KeyOn,
            Some("firing" | "cranking" | "injectors" | "trigger") => Self::Cranking,
            Some("coils" | "feeds" | "fuel" | "wires") => Self::Running,
            _ => Self::Plan,
        }
    }
}
