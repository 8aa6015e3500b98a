//! The start of the engine and its relay from their fields.

use super::{Conditions, Entry, Reader, SpeedRelay, State};
use crate::{
    cranking::{Inputs, Relay, Release, Slow, Sync, Wheel, usual_dip},
    engine::{Engine, MOST_CYLINDERS, TURN},
    finding::{Finding, Severity},
    quantity::{
        Band, CrankAngle, Measure, Ratio, RotationalSpeed, Time, Value, Voltage, rpm, seconds,
        share, volts,
    },
    say,
};

/// Release as a share of the threshold where none is given: it lies as far below as a dip of 40 % reaches.
pub(super) const RELEASE: (f64, &str) = (
    0.6,
    "60 % of the speed at which it is switched on, as far below as a dip of 40 % reaches: common practice, no source",
);

const DIP_BASIS: &str = "computed: the swing of the compressions’ work, against 30 to 40 % for an even four (common practice, no source)";

/// What is known of question 4.
#[derive(Debug, PartialEq)]
pub(crate) struct Known {
    /// The part of the plan in which the relay's fields stand.
    pub(crate) record: String,
    /// Enough to simulate: the engine's firings and its cranking speed.
    pub(crate) inputs: Option<Inputs>,
    /// Whether cylinders, cranking speed and threshold are still missing, in the order in which they are asked.
    pub(crate) wanted: Vec<&'static str>,
    /// Whether the firings are those of the cylinder count, evenly spaced, for want of a firing order.
    pub(crate) is_even_guess: bool,
    /// A release that was typed at or above the threshold; the usual share is used in its place.
    pub(crate) release_above: Option<RotationalSpeed>,
    /// Whether the dip was not typed.
    pub(crate) dip_is_assumed: bool,
    /// Whether the relay's pull-in voltage was typed.
    pub(crate) relay_is_given: bool,
    /// What the coils do as power arrives.
    pub(crate) power_up: Option<&'static str>,
    /// What of a start that goes otherwise was typed.
    pub(crate) typed: Typed,
}

/// What of a start that goes otherwise was typed, and so is asked about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Typed {
    /// The angle of a kick-back.
    pub(crate) kick_back: bool,
    /// How long a starter sticks.
    pub(crate) stick: bool,
}

impl Known {
    /// The path of a field of the relay.
    pub(crate) fn path(&self, field: &str) -> String {
        format!("{}.{field}", self.record)
    }

    /// What is known, about a further relay.
    pub(crate) fn of_relay(&self, relay: &SpeedRelay) -> Self {
        Self {
            record: relay.path.clone(),
            inputs: None,
            wanted: Vec::new(),
            release_above: relay.release_above,
            relay_is_given: relay.is_given,
            power_up: None,
            ..*self
        }
    }
}

/// Reads question 4.
pub(crate) fn cranking(
    reader: &mut Reader<'_>,
    conditions: &Conditions,
    engine: Option<&Engine>,
) -> Known {
    let speed = reader.band::<RotationalSpeed>("cranking.speed");
    let slow = slow(reader);
    let threshold = setting::<RotationalSpeed>(reader, "cranking.relay_on_at");
    let (release, release_above) = release(reader, "cranking", threshold.value(), RELEASE);
    let wheel = wheel(reader);
    let relay = relay(reader, "cranking");
    let firings = firings(reader, engine);
    let mut wanted = Vec::new();
    wanted.extend(firings.is_none().then_some("engine.cylinders"));
    wanted.extend(speed.value().is_none().then_some("cranking.speed"));
    wanted.extend(threshold.value().is_none().then_some("cranking.relay_on_at"));
    let dip_is_assumed = reader.text("cranking.dip").is_empty();
    let rest = Rest::read(reader, firings.as_ref());
    let power_up = reader.choice("cranking.power_up").value();
    let inputs = firings.zip(speed.value()).map(|((firings, cycle), speed)| Inputs {
        firings,
        cycle,
        speed,
        slow,
        kick_back: rest.kick_back.high,
        stick: rest.stick.high,
        dip: rest.dip,
        run_up: rest.run_up,
        wheel,
        sync: rest.sync,
        averaging: rest.averaging,
        confirmation: rest.confirmation,
        threshold: threshold.value(),
        release,
        stall_timeout: rest.stall_timeout,
        relay: relay.0,
        dwell: rest.dwell.high + rest.warm_up.high,
        rocking: rest.rocking,
        idle: rest.idle.high,
        run_down: rest.run_down,
        supply: conditions.supply.low,
        temperature: conditions.temperature,
    });
    Known {
        record: "cranking".to_owned(),
        inputs,
        wanted,
        is_even_guess: engine.is_none(),
        dip_is_assumed,
        release_above,
        relay_is_given: relay.1,
        power_up,
        typed: Typed {
            kick_back: is_given(reader, "cranking.kick_back"),
            stick: is_given(reader, "cranking.stick"),
        },
    }
}

/// The fields that fall back on what is assumed when they can't be read; their finding stands.
struct Rest {
    dip: Band<Ratio>,
    run_up: Band<Time>,
    sync: Sync,
    averaging: u32,
    confirmation: u32,
    stall_timeout: Band<Time>,
    dwell: Band<Time>,
    rocking: Band<RotationalSpeed>,
    idle: Band<RotationalSpeed>,
    run_down: Band<Time>,
    warm_up: Band<Time>,
    kick_back: Band<CrankAngle>,
    stick: Band<Time>,
}

impl Rest {
    fn read(reader: &mut Reader<'_>, firings: Option<&(Vec<CrankAngle>, CrankAngle)>) -> Self {
        Self {
            dip: dip(reader, firings),
            warm_up: band(reader, "cranking.warm_up", Band::exact(seconds(0.0))),
            kick_back: band(reader, "cranking.kick_back", Band::exact(CrankAngle::new(30.0))),
            stick: band(reader, "cranking.stick", Band::exact(seconds(1.5))),
            run_up: band(reader, "cranking.run_up", Band::exact(seconds(0.3))),
            sync: match reader.choice("cranking.sync").value() {
                Some("cam") => Sync::Cam,
                _ => Sync::Gap,
            },
            averaging: reader.whole("cranking.averaging").value().unwrap_or(1),
            confirmation: reader.whole("cranking.confirmation").value().unwrap_or(2),
            stall_timeout: band(reader, "cranking.stall_timeout", Band::exact(seconds(1.0))),
            dwell: band(reader, "cranking.dwell", Band::exact(seconds(0.004))),
            rocking: band(reader, "cranking.rocking", Band::exact(rpm(30.0))),
            idle: band(reader, "cranking.idle", Band::exact(rpm(800.0))),
            run_down: band(reader, "cranking.run_down", Band::exact(seconds(1.0))),
        }
    }
}

/// The dip that was typed, or else that of the engine's compressions.
fn dip(reader: &mut Reader<'_>, firings: Option<&(Vec<CrankAngle>, CrankAngle)>) -> Band<Ratio> {
    let entry = reader.band::<Ratio>("cranking.dip");
    let Some((firings, cycle)) = firings else { return Band::exact(share(0.0)) };
    let usual = usual_dip(firings, *cycle);
    let shown = Value::text(format!("{} to {}", usual.low.show().shown, usual.high.show().shown));
    let entry = reader.or_assume("cranking.dip", entry, usual, shown, DIP_BASIS);
    entry.value().unwrap_or(usual)
}

/// Whether a field was typed and could be read.
fn is_given(reader: &Reader<'_>, path: &str) -> bool {
    reader.fields.get(path).is_some_and(|field| field.state == State::Given)
}

/// The speeds typed for cold oil and for a weak battery.
fn slow(reader: &mut Reader<'_>) -> Vec<Slow> {
    let named =
        [("cranking.cold_speed", "cold, thick oil"), ("cranking.weak_speed", "weak battery")];
    let read = named.map(|(path, name)| {
        let band = reader.band::<RotationalSpeed>(path).value()?;
        Some(Slow { name, speed: band.low })
    });
    read.into_iter().flatten().collect()
}

pub(super) fn band<Q: Measure>(reader: &mut Reader<'_>, path: &str, usual: Band<Q>) -> Band<Q> {
    reader.band::<Q>(path).value().unwrap_or(usual)
}

/// A value that is entered in the controller, and so has no spread.
pub(super) fn setting<Q: Measure>(reader: &mut Reader<'_>, path: &str) -> Entry<Q> {
    let entry = reader.band::<Q>(path);
    if let Some(band) = entry.value().filter(Band::is_spread) {
        let name = crate::fields::find(path).map_or("", |field| field.label);
        let message = say!(
            "cranking.setting-spread",
            field = name,
            low = band.low.show(),
            high = band.high.show()
        );
        reader.unusable(Finding::new(Severity::Fault, path, message));
        return Entry::Unreadable;
    }
    entry.map(|band| band.nominal)
}

/// The release of a record; below a share of the threshold where none was typed.
pub(super) fn release(
    reader: &mut Reader<'_>,
    record: &str,
    threshold: Option<RotationalSpeed>,
    (below, basis): (f64, &str),
) -> (Release, Option<RotationalSpeed>) {
    let path = format!("{record}.relay_off_below");
    let usual = Release::Share(share(below));
    let entry = setting::<RotationalSpeed>(reader, &path);
    let Some(threshold) = threshold else {
        return (entry.value().map_or(usual, Release::At), None);
    };
    let entry = reader.or_assume(&path, entry, usual.of(threshold), usual.of(threshold), basis);
    match entry {
        Entry::Given(speed) if speed >= threshold && threshold.base() > 0.0 => {
            let message = say!(
                "cranking.release-above",
                release = speed,
                threshold = threshold,
                usual = usual.of(threshold)
            );
            reader.unusable(Finding::new(Severity::Fault, path, message));
            (usual, Some(speed))
        }
        Entry::Given(speed) => (Release::At(speed), None),
        Entry::Assumed(_) | Entry::Missing | Entry::Unreadable => (usual, None),
    }
}

fn wheel(reader: &mut Reader<'_>) -> Wheel {
    let positions = reader.whole("cranking.teeth").value().unwrap_or(60);
    let path = "cranking.missing";
    let usual = match positions {
        60 => 2,
        1 => 0,
        _ => 1,
    };
    let basis = "60 positions lack two, other wheels one: common practice, no source";
    let missing = reader.whole(path);
    let missing = reader.or_assume(path, missing, usual, usual, basis).value().unwrap_or(usual);
    let missing = if missing >= positions {
        let message = say!("cranking.all-missing", missing = missing, positions = positions);
        reader.unusable(Finding::new(Severity::Fault, path, message));
        usual.min(positions - 1)
    } else {
        missing
    };
    let mark = band(reader, "cranking.gap_angle", Band::exact(CrankAngle::new(90.0)));
    Wheel { positions, missing, mark_to_first: mark.nominal }
}

/// The relay of a record, and whether its pull-in voltage was typed.
pub(super) fn relay(reader: &mut Reader<'_>, record: &str) -> (Relay, bool) {
    let path = |field: &str| format!("{record}.{field}");
    let voltage = reader.band::<Voltage>(&path("pull_in_voltage"));
    let is_given = matches!(voltage, Entry::Given(_));
    let pull_in = Band::between(seconds(0.005), seconds(0.01));
    let drop_out = Band::between(seconds(0.003), seconds(0.015));
    let relay = Relay {
        pull_in_time: band(reader, &path("pull_in_time"), pull_in),
        drop_out_time: band(reader, &path("drop_out_time"), drop_out),
        pull_in_voltage: voltage.value().unwrap_or(Band::exact(volts(7.2))),
    };
    (relay, is_given)
}

/// The firings of the engine; without a firing order those of its cylinders, evenly spaced.
pub(super) fn firings(
    reader: &Reader<'_>,
    engine: Option<&Engine>,
) -> Option<(Vec<CrankAngle>, CrankAngle)> {
    if let Some(engine) = engine {
        let angles = engine.firings().iter().map(|firing| firing.angle).collect();
        return Some((angles, engine.cycle()));
    }
    // the question of channels has already said what is wrong with these fields
    let count: u32 = reader.text("engine.cylinders").parse().ok()?;
    if !(1..=MOST_CYLINDERS).contains(&count) {
        return None;
    }
    let is_one_turn = ["two-stroke", "rotary"].contains(&reader.text("engine.kind"));
    let cycle = if is_one_turn { TURN } else { TURN + TURN };
    let angle = |n| CrankAngle::new(cycle.degrees() * f64::from(n) / f64::from(count));
    Some(((0..count).map(angle).collect(), cycle))
}
