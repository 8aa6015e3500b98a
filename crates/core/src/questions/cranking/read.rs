//! The start of the engine and its relay from their fields.

pub(crate) mod feed;
pub(crate) mod relays;

use std::rc::Rc;

use crate::read::{
    Conditions, Entry, PlannedRest, Reader, SpeedRelay, State, problem, relay_records,
};
use crate::{
    cranking::{Average, CrankingInputs, Relay, Release, Slow, Sync, Wheel, usual_dip},
    engine::{Engine, MOST_CYLINDERS, TURN},
    fields::{self, cranking::PowerUp},
    finding::{Finding, Severity},
    message::Edit,
    output::LoadKind,
    quantity::{
        Band, CrankAngle, Measure, Ratio, Resistance, RotationalSpeed, Time, Value, Voltage, rpm,
        seconds, share, volts,
    },
    questions::cranking::words,
    say,
    schema::{Key, Part, Place},
};

use feed::LetsGo;

/// Release as a share of the threshold where none is given: it lies as far below as a dip of 40 % reaches.
pub(crate) const RELEASE: (f64, &str) =
    (0.6, "60% of the threshold, as far below as a dip of 40% reaches: common practice, no source");

const DIP_BASIS: &str = "computed: the swing of the compressions' work, against 30 to 40% for an even four (common practice, no source)";

/// The fields of a relay that is switched at a speed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct RelayKeys {
    pub(crate) threshold: Key<RotationalSpeed>,
    pub(crate) release: Key<RotationalSpeed>,
    pub(crate) pull_in_voltage: Key<Voltage>,
    pub(crate) drop_out_voltage: Key<Voltage>,
    pub(crate) pull_in_time: Key<Time>,
    pub(crate) drop_out_time: Key<Time>,
}

impl RelayKeys {
    /// Those of this relay.
    pub(crate) fn of(relay: usize) -> Self {
        Self {
            threshold: fields::relays::RELAY_ON_AT.at(relay),
            release: fields::relays::RELAY_OFF_BELOW.at(relay),
            pull_in_voltage: fields::relays::PULL_IN.at(relay),
            drop_out_voltage: fields::relays::DROP_OUT.at(relay),
            pull_in_time: fields::relays::PULL_IN_TIME.at(relay),
            drop_out_time: fields::relays::DROP_OUT_TIME.at(relay),
        }
    }
}

/// What is still missing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Wanted {
    /// The engine's cylinders.
    Cylinders,
    /// The cranking speed.
    Speed,
    /// The threshold.
    Threshold,
}

/// Which of the relays that are switched at a speed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum WhichRelay {
    /// That of the coils, with which what is the engine's is told.
    OfCoils,
    /// The same, while the plan has no such relay yet.
    Untold,
    /// That of the coils, which follows something other than a speed.
    OfNoSpeed,
    /// Another.
    Further,
}

impl WhichRelay {
    /// That of the coils, as far as the plan has it.
    fn of_coils(plan: &crate::plan::Plan, at: usize) -> Self {
        if at >= plan.count(Part::Relays) {
            Self::Untold
        } else if relay_records::is_switched_at_speed(plan, at) {
            Self::OfCoils
        } else {
            Self::OfNoSpeed
        }
    }

    /// Whether there is a speed to set.
    pub(crate) fn is_by_speed(self) -> bool {
        self != Self::OfNoSpeed
    }
}

/// What is known of the start of the engine, and of the relay.
#[derive(Debug, PartialEq)]
pub(crate) struct Known {
    /// The relay's fields.
    pub(crate) keys: RelayKeys,
    /// Which of the relays it is.
    pub(crate) which: WhichRelay,
    /// Whether the plan has a relay that feeds the pump.
    pub(crate) has_pump_relay: bool,
    /// Enough to simulate: the engine's firings and its cranking speed.
    pub(crate) inputs: Option<CrankingInputs>,
    /// Whether cylinders, cranking speed and threshold are still missing, in the order in which they are asked.
    pub(crate) wanted: Vec<Wanted>,
    /// Whether the firings are those of the cylinder count, evenly spaced, for want of a firing order.
    pub(crate) is_even_guess: bool,
    /// A release that was typed at or above the threshold; the usual share is used in its place.
    pub(crate) release_above: Option<RotationalSpeed>,
    /// Whether the dip was not typed.
    pub(crate) dip_is_assumed: bool,
    /// The least supply that the controller runs on, where that is known.
    pub(crate) least_supply: Option<Voltage>,
    /// Where what the battery gives while cranking comes from.
    pub(crate) battery: BatteryBasis,
    /// What has no feed while the starter turns, by name: all of it with the coils' relay, else this relay alone.
    pub(crate) unfed: Rc<[String]>,
    /// A relay that is in before the starter turns, and lets go while it does; told with the coils' relay.
    pub(crate) lets_go: Option<Box<LetsGo>>,
    /// What the coils do as power arrives.
    pub(crate) power_up: Option<PowerUp>,
}

/// How far a kick-back usually turns an engine back; no more of it is worth a word.
pub(crate) fn usual_kick_back() -> CrankAngle {
    CrankAngle::new(30.0)
}

/// How long a starter that sticks usually does.
pub(crate) fn usual_stick() -> Time {
    seconds(1.5)
}

/// Where what the battery gives while cranking comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum BatteryBasis {
    /// It was typed, for a hot engine too, and how hot that is.
    TypedHot,
    /// It was typed.
    Typed,
    /// It is what is usual.
    Usual,
}

impl BatteryBasis {
    fn of(reader: &Reader<'_>) -> Self {
        let is_cold_typed = is_given(reader, fields::battery::COLD_CRANKING);
        let is_hot_typed = is_given(reader, fields::battery::HOT_CRANKING);
        let is_heat_typed = is_given(reader, fields::temperatures::HOT);
        match (is_cold_typed, is_hot_typed) {
            (_, true) if is_heat_typed => Self::TypedHot,
            (false, false) => Self::Usual,
            _ => Self::Typed,
        }
    }
}

impl Known {
    /// Whether what is the engine's is told with it.
    pub(crate) fn is_first(&self) -> bool {
        self.which != WhichRelay::Further
    }

    /// The edits that set the relay to these speeds; none before the plan has it.
    pub(crate) fn set_to(&self, threshold: RotationalSpeed, release: RotationalSpeed) -> Vec<Edit> {
        let edits = [(self.keys.threshold, threshold), (self.keys.release, release)];
        let edits = edits.map(|(key, speed)| key.edit(speed.show().into_shown()));
        if self.which == WhichRelay::Untold { Vec::new() } else { edits.into() }
    }

    /// What is known, about a further relay.
    pub(crate) fn of_relay(&self, relay: &SpeedRelay) -> Self {
        Self {
            keys: RelayKeys::of(relay.at),
            which: WhichRelay::Further,
            has_pump_relay: self.has_pump_relay,
            inputs: None,
            wanted: Vec::new(),
            release_above: relay.release_above,
            least_supply: None,
            battery: self.battery,
            unfed: if relay.is_unfed { [relay.name.clone()].into() } else { Rc::default() },
            lets_go: None,
            is_even_guess: self.is_even_guess,
            dip_is_assumed: self.dip_is_assumed,
            power_up: None,
        }
    }
}

/// Reads the start of the engine, and the coils’ relay.
pub(crate) fn cranking(
    reader: &mut Reader<'_>,
    conditions: &Conditions,
    firings: Option<&Firings>,
    (rest, dwell): (&PlannedRest, Option<Time>),
) -> Known {
    let unfed = feed::unfed(reader);
    let lets_go = feed::lets_go(reader, rest, conditions).map(Box::new);
    let speed = reader.band(fields::cranking::SPEED);
    let slow = slow(reader);
    let relay_at = relay_records::of_coils(reader.plan());
    let which = WhichRelay::of_coils(reader.plan(), relay_at);
    let keys = RelayKeys::of(relay_at);
    let threshold = Some(setting(reader, keys.threshold)).filter(|_| which.is_by_speed());
    let threshold = threshold.unwrap_or(Entry::Missing);
    let (release, release_above) = release(reader, keys.release, threshold.value(), RELEASE);
    let wheel = wheel(reader);
    let relay = relay(reader, &keys, feed::switched(rest, relay_at));
    let wanted = [
        firings.is_none().then_some(Wanted::Cylinders),
        speed.value().is_none().then_some(Wanted::Speed),
        (which.is_by_speed() && threshold.value().is_none()).then_some(Wanted::Threshold),
    ];
    let rest = Fallbacks::read(reader, firings, dwell);
    let inputs = firings.zip(speed.value()).map(|(firings, speed)| CrankingInputs {
        firings: firings.angles.clone(),
        cycle: firings.cycle,
        speed,
        slow,
        kick_back: rest.kick_back.high,
        stick: rest.stick.high,
        dip: rest.dip,
        run_up: rest.run_up,
        wheel,
        sync: rest.sync,
        averaging: rest.averaging,
        average: rest.average,
        confirmation: rest.confirmation,
        threshold: threshold.value(),
        release,
        stall_timeout: rest.stall_timeout,
        relay,
        dwell: rest.dwell.high + rest.warm_up.high,
        rocking: rest.rocking,
        idle: rest.idle.high,
        run_down: rest.run_down,
        supply: conditions.cold_cranking,
        hot_supply: conditions.hot_cranking,
        temperature: conditions.temperature,
    });
    Known {
        keys,
        which,
        has_pump_relay: relay_records::feeding(reader.plan(), crate::read::Purpose::Pump).is_some(),
        inputs,
        wanted: wanted.into_iter().flatten().collect(),
        is_even_guess: firings.is_none_or(|it| it.is_even_guess),
        dip_is_assumed: reader.text(fields::cranking::DIP).is_empty(),
        release_above,
        least_supply: reader.band(fields::controller::LEAST_SUPPLY).value().map(|it| it.low),
        battery: BatteryBasis::of(reader),
        unfed: unfed.into(),
        lets_go,
        power_up: reader.choice(fields::cranking::POWER_UP).value(),
    }
}

/// The fields that fall back on what is assumed when they can't be read; their finding stands.
struct Fallbacks {
    dip: Band<Ratio>,
    run_up: Band<Time>,
    sync: Sync,
    averaging: u32,
    average: Average,
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

impl Fallbacks {
    fn read(reader: &mut Reader<'_>, firings: Option<&Firings>, needed: Option<Time>) -> Self {
        Self {
            dip: dip(reader, firings),
            warm_up: band(reader, fields::cranking::WARM_UP, Band::exact(seconds(0.0))),
            kick_back: band(reader, fields::cranking::KICK_BACK, Band::exact(usual_kick_back())),
            stick: band(reader, fields::cranking::STICK, Band::exact(usual_stick())),
            run_up: band(reader, fields::cranking::RUN_UP, Band::exact(seconds(0.3))),
            sync: reader.choice(fields::cranking::SYNC).value().unwrap_or(Sync::Gap),
            averaging: reader.whole(fields::cranking::AVERAGING).value().unwrap_or(1),
            average: average(reader),
            confirmation: reader.whole(fields::cranking::CONFIRMATION).value().unwrap_or(2),
            stall_timeout: band(reader, fields::cranking::STALL_TIMEOUT, Band::exact(seconds(1.0))),
            dwell: dwell(reader, needed),
            rocking: band(reader, fields::cranking::ROCKING, Band::exact(rpm(30.0))),
            idle: band(reader, fields::cranking::IDLE, Band::exact(rpm(800.0))),
            run_down: band(reader, fields::cranking::RUN_DOWN, Band::exact(seconds(1.0))),
        }
    }
}

/// How readings follow each other; of one tooth each they do alike.
fn average(reader: &mut Reader<'_>) -> Average {
    let key = fields::cranking::AVERAGE;
    if matches!(reader.whole_elsewhere(fields::cranking::AVERAGING), None | Some(1)) {
        reader.stand(key.into());
        return Average::Blocks;
    }
    reader.choice(key).value().unwrap_or(Average::Blocks)
}

/// The dwell while cranking: as typed, else as it is entered for running or what the coils `needed` where that is more, else
/// the long end of what is usual.
fn dwell(reader: &mut Reader<'_>, needed: Option<Time>) -> Band<Time> {
    let key = fields::controller::CRANKING_DWELL;
    let entry = reader.band(key);
    let entered = reader.band_elsewhere(fields::controller::DWELL);
    let (usual, basis) = match entered {
        Some(dwell) if needed.is_none_or(|needed| needed <= dwell.nominal) => {
            (dwell, "as entered for running")
        }
        _ if needed.is_some() => {
            (Band::exact(needed.unwrap_or_default()), "what the coils need at the weakest supply")
        }
        _ => (Band::exact(seconds(0.004)), "the long end of 2 to 4 ms: common practice, no source"),
    };
    reader.or_assume(key, entry, usual, usual.high, basis).value().unwrap_or(usual)
}

/// The dip that was typed, or else that of the engine's compressions.
fn dip(reader: &mut Reader<'_>, firings: Option<&Firings>) -> Band<Ratio> {
    let entry = reader.band(fields::cranking::DIP);
    let Some(Firings { usual_dip: usual, .. }) = firings else { return Band::exact(share(0.0)) };
    let usual = *usual;
    let shown = Value::text(format!("{} to {}", usual.low.show().shown, usual.high.show().shown));
    let entry = reader.or_assume(fields::cranking::DIP, entry, usual, shown, DIP_BASIS);
    entry.value().unwrap_or(usual)
}

/// Whether a field was typed and could be read.
fn is_given(reader: &Reader<'_>, place: impl Into<Place>) -> bool {
    reader.fields.get(&place.into().path()).is_some_and(|field| field.state == State::Given)
}

/// The speeds typed for cold oil and for a weak battery.
fn slow(reader: &mut Reader<'_>) -> Vec<Slow> {
    let named = [
        (fields::cranking::COLD_SPEED, "cold, thick oil"),
        (fields::cranking::WEAK_SPEED, "weak battery"),
    ];
    let read = named.map(|(key, name)| {
        let band = reader.band(key).value()?;
        Some(Slow { name, speed: band.low })
    });
    read.into_iter().flatten().collect()
}

pub(crate) fn band<Q: Measure>(reader: &mut Reader<'_>, key: Key<Q>, usual: Band<Q>) -> Band<Q> {
    reader.band(key).value().unwrap_or(usual)
}

/// A value that is entered in the controller, and so has no spread.
pub(crate) fn setting<Q: Measure>(reader: &mut Reader<'_>, key: Key<Q>) -> Entry<Q> {
    let entry = reader.band(key);
    if let Some(band) = entry.value().filter(Band::is_spread) {
        let message = say!(
            words::SETTING_SPREAD,
            field = key.field().label,
            low = band.low.show(),
            high = band.high.show()
        );
        reader.unusable(Finding::new(Severity::Fault, key, message));
        return Entry::Unreadable;
    }
    entry.map(|band| band.nominal)
}

/// The release of a record; below a share of the threshold where none was typed.
pub(crate) fn release(
    reader: &mut Reader<'_>,
    key: Key<RotationalSpeed>,
    threshold: Option<RotationalSpeed>,
    (below, basis): (f64, &str),
) -> (Release, Option<RotationalSpeed>) {
    let usual = Release::Share(share(below));
    let entry = setting(reader, key);
    let Some(threshold) = threshold else {
        return (entry.value().map_or(usual, Release::At), None);
    };
    let entry = reader.or_assume(key, entry, usual.of(threshold), usual.of(threshold), basis);
    match entry {
        // equal speeds: no hysteresis, whatever the threshold
        Entry::Given(speed) if speed == threshold => (Release::Share(share(1.0)), None),
        Entry::Given(speed) if speed > threshold && threshold.base() > 0.0 => {
            let message = say!(
                words::RELEASE_ABOVE,
                release = speed,
                threshold = threshold,
                usual = usual.of(threshold)
            );
            reader.unusable(Finding::new(Severity::Fault, key, message));
            (usual, Some(speed))
        }
        Entry::Given(speed) => (Release::At(speed), None),
        Entry::Assumed(_) | Entry::Missing | Entry::Unreadable => (usual, None),
    }
}

fn wheel(reader: &mut Reader<'_>) -> Wheel {
    let positions = match wheel_by_name(reader) {
        Some((positions, finding)) => {
            reader.unusable(finding);
            positions
        }
        None => reader.whole(fields::wheels::CRANK_TEETH).value().unwrap_or(60),
    };
    let key = fields::wheels::MISSING;
    let usual = match positions {
        60 => 2,
        1 => 0,
        _ => 1,
    };
    let basis = "60 positions lack two, other wheels one: common practice, no source";
    let missing = reader.whole(key);
    let missing = reader.or_assume(key, missing, usual, usual, basis).value().unwrap_or(usual);
    let missing = if missing >= positions {
        let message = say!(words::ALL_MISSING, missing = missing, positions = positions);
        reader.unusable(Finding::new(Severity::Fault, key, message));
        usual.min(positions - 1)
    } else {
        missing
    };
    Wheel { positions, missing, mark_to_first: gap_angle(reader) }
}

/// A wheel by its name, `60-2` or `36-2-2-2`: its positions, and how that is typed here.
fn wheel_by_name(reader: &Reader<'_>) -> Option<(u32, Finding)> {
    let (teeth, missing) = (fields::wheels::CRANK_TEETH, fields::wheels::MISSING);
    let typed = reader.text(teeth);
    let (positions, gaps) = typed.split_once(['-', '–', '/'])?;
    let positions = problem::whole_of(teeth.field(), positions.trim()).ok()?;
    let gaps: Vec<u32> = gaps
        .split(['-', '–', '/'])
        .map(|gap| problem::whole_of(missing.field(), gap.trim()).ok())
        .collect::<Option<_>>()?;
    let most = gaps.iter().copied().max()?;
    let cure = say!(words::WHEEL_APART, positions = positions, missing = most);
    let edits = vec![teeth.edit(positions.to_string()), missing.edit(most.to_string())];
    let message = say!(words::WHEEL_BY_NAME, typed = typed);
    let finding = Finding::new(Severity::Fault, teeth, message).cured_by([cure.done_by(edits)]);
    let several = (gaps.len() > 1).then(|| say!(words::WHEEL_OF_GAPS, n = gaps.len()));
    Some((positions, finding.cured_by(several)))
}

/// From the gap to top dead centre: as typed, else as it is entered in the controller, else where it usually is.
fn gap_angle(reader: &mut Reader<'_>) -> CrankAngle {
    let key = fields::wheels::GAP_ANGLE;
    let entry = reader.band(key).map(|band| band.nominal);
    let (usual, basis) = match reader.band_elsewhere(fields::controller::OFFSET) {
        Some(offset) => (offset.nominal.within(TURN), "the offset entered in the controller"),
        None => (CrankAngle::new(90.0), "a usual place of the gap: common practice, no source"),
    };
    reader.or_assume(key, entry, usual, usual, basis).value().unwrap_or(usual)
}

/// The relay of a record, and whether its pull-in voltage was typed.
pub(crate) fn relay(
    reader: &mut Reader<'_>,
    keys: &RelayKeys,
    switched: Option<(Resistance, Resistance)>,
) -> Relay {
    let voltage = reader.band(keys.pull_in_voltage);
    let pull_in = Band::between(seconds(0.005), seconds(0.01));
    let drop_out = Band::between(seconds(0.003), seconds(0.015));
    Relay {
        pull_in_time: band(reader, keys.pull_in_time, pull_in),
        drop_out_time: band(reader, keys.drop_out_time, drop_out),
        pull_in_voltage: voltage.value().unwrap_or(LoadKind::RelayCoil.usual_pull_in()),
        drop_out_voltage: reader.band(keys.drop_out_voltage).value().map(|band| band.high),
        feed_loss: reader
            .band_elsewhere(fields::switched_feeds::CRANKING_LOSS)
            .unwrap_or(Band::exact(volts(0.0))),
        switched,
    }
}

/// The firings of the engine in its cycle, with the dip that comes of them.
#[derive(Clone, Debug)]
pub(crate) struct Firings {
    angles: Vec<CrankAngle>,
    cycle: CrankAngle,
    /// Whether they are those of the cylinder count, evenly spaced, for want of a firing order.
    is_even_guess: bool,
    /// The dip to take where none was measured.
    pub(crate) usual_dip: Band<Ratio>,
}

/// The firings of the engine; without a firing order those of its cylinders, evenly spaced. Their dip is that of those
/// `before`, where they are the same.
pub(crate) fn firings(
    reader: &Reader<'_>,
    engine: Option<&Engine>,
    before: &mut Option<Firings>,
) -> Option<Firings> {
    let (angles, cycle) = angles(reader, engine)?;
    let known = before.as_ref().filter(|it| it.angles == angles && it.cycle == cycle);
    let usual_dip = known.map_or_else(|| usual_dip(&angles, cycle), |it| it.usual_dip);
    *before = Some(Firings { angles, cycle, is_even_guess: engine.is_none(), usual_dip });
    before.clone()
}

/// The angles at which it fires, and its cycle.
fn angles(reader: &Reader<'_>, engine: Option<&Engine>) -> Option<(Vec<CrankAngle>, CrankAngle)> {
    if let Some(engine) = engine {
        let angles = engine.firings().iter().map(|firing| firing.angle).collect();
        return Some((angles, engine.cycle()));
    }
    // the question of channels has already said what is wrong with these fields
    let count: u32 = reader.text(fields::engine::CYLINDERS).parse().ok()?;
    if !(1..=MOST_CYLINDERS).contains(&count) {
        return None;
    }
    let is_one_turn = ["two-stroke", "rotary"].contains(&reader.text(fields::engine::KIND));
    let cycle = if is_one_turn { TURN } else { TURN + TURN };
    let angle = |n| CrankAngle::new(cycle.degrees() * f64::from(n) / f64::from(count));
    Some(((0..count).map(angle).collect(), cycle))
}
