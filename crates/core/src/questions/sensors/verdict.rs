//! What a sensor should read now, in few words; why; and what to do.

use super::{
    judge::{self, FoundOf, lower},
    read::{listed, taken_of_today},
    stroke,
    subject::{SensorSubject, both},
    tables, words,
};
use crate::{
    fields::{
        grounds::SensorGround,
        inputs::InputPull,
        sensors::{PressureFrom, SensorPurpose, SensorType, SwitchStands, SwitchedTo},
    },
    finding::{Findings, Severity},
    message::Message,
    quantity::{Measure as _, Span, Value, Voltage, volts},
    report::{Answer, Tone},
    say,
    schema::{Choice as _, Part},
    sensor::element::SensorElement,
};

/// What can be as low as this can't be told from a short.
const LEAST_V: f64 = 0.05;

/// The answer about one sensor.
pub(super) fn answer(subject: &SensorSubject<'_>, findings: &mut Findings) -> Answer {
    let sensor = subject.sensor;
    let of_record = Part::Sensors.record(subject.at);
    let titled = |tone, message| {
        let mut answer = Answer::new(of_record.clone(), tone, message);
        let name = sensor.name.clone();
        answer.title = Some(match subject.input() {
            Some(input) => say!(words::TITLE, sensor = name, input = input.name.clone()),
            None => say!(words::TITLE_ALONE, sensor = name),
        });
        answer
    };
    if sensor.is_unreadable {
        return titled(Tone::Open, say!(words::OPEN_MEND));
    }
    let Some(kind) = sensor.kind else { return titled(Tone::Open, say!(words::OPEN_KIND)) };
    let mut found: Vec<FoundOf> = judge::found_of(subject);
    found.extend(tables::found_of(subject));
    found.extend(stroke::found_of(subject));
    let worst = judge::gravest(&found).filter(|(severity, _)| *severity < Severity::Note);
    let (tone, verdict) = match worst {
        Some((severity, verdict)) if severity <= Severity::Fault => (Tone::Bad, verdict),
        Some((_, verdict)) => (Tone::Doubtful, verdict),
        None => now(subject, kind),
    };
    findings.extend(found.into_iter().map(|it| it.0));
    let mut answer = titled(tone, verdict);
    answer.why = why(subject);
    if tone != Tone::Bad {
        answer.to_do = to_do(subject, kind);
        answer.cautions = cautions(subject);
    }
    let mut taken = taken_of_today(subject);
    taken.extend(sensor.taken.iter().cloned());
    let is_told = !taken.is_empty() && subject.element().is_some();
    answer.assume(is_told.then(|| say!(words::TAKEN, list = listed(&taken))));
    answer
}

/// What it should read now.
fn now(subject: &SensorSubject<'_>, kind: SensorType) -> (Tone, Message) {
    match kind {
        SensorType::Switch => switch(subject),
        SensorType::Hall => {
            let range = subject.input().map_or(volts(5.0), |it| it.range.nominal);
            (Tone::Good, say!(words::NOW_EITHER, volts = range))
        }
        SensorType::Knock => (Tone::Good, say!(words::NOW_KNOCK)),
        SensorType::Pot => released(subject),
        _ => by_element(subject, kind),
    }
}

fn by_element(subject: &SensorSubject<'_>, kind: SensorType) -> (Tone, Message) {
    let Some(element) = subject.element() else {
        let wanted = match kind {
            SensorType::Ratiometric => say!(words::OPEN_RANGE),
            SensorType::Ntc => say!(words::OPEN_DATA),
            _ => say!(words::OPEN_POINTS),
        };
        return (Tone::Open, wanted);
    };
    let Some(now) = subject.now() else { return between(subject) };
    let reads = subject.reads(&now);
    match (both(reads.ohms.as_ref()), both(reads.volts.as_ref())) {
        (Some(ohms), Some(volts)) => {
            (Tone::Good, say!(words::NOW_BOTH, ohms = ohms, volts = volts))
        }
        (None, Some(volts)) if kind == SensorType::Wideband => {
            (Tone::Good, say!(words::NOW_WARM, volts = volts))
        }
        (None, Some(volts)) => (Tone::Good, say!(words::NOW_VOLTS, volts = volts)),
        (Some(ohms), None) if subject.input().is_some() => {
            (Tone::Open, say!(words::OPEN_PULL, ohms = ohms))
        }
        (Some(ohms), None) => (Tone::Open, say!(words::OPEN_INPUT, ohms = ohms)),
        (None, None) if element.is_resistive() => (Tone::Open, say!(words::OPEN_DATA)),
        (None, None) => (Tone::Open, say!(words::OPEN_POINTS)),
    }
}

/// Where it is not known what it tells: from one end to the other.
fn between(subject: &SensorSubject<'_>) -> (Tone, Message) {
    let said =
        subject.places().and_then(|[low, _, high]| subject.said(low).zip(subject.said(high)));
    said.map_or_else(
        || (Tone::Open, say!(words::OPEN_POINTS)),
        |(low, high)| (Tone::Good, say!(words::NOW_BETWEEN, low = low, high = high)),
    )
}

fn switch(subject: &SensorSubject<'_>) -> (Tone, Message) {
    let sensor = subject.sensor;
    let (Some(to), Some(stands)) = (sensor.switched_to, sensor.stands) else {
        return (Tone::Open, say!(words::OPEN_SWITCH));
    };
    let pulled =
        subject.input().filter(|it| it.pull == Some(InputPull::Up)).map(|it| it.range.nominal);
    let closed: Voltage = match to {
        SwitchedTo::Ground => volts(0.0),
        SwitchedTo::Supply => subject.supply_volts().nominal,
        SwitchedTo::Battery => subject.sensing.battery,
    };
    let open = pulled.unwrap_or(volts(0.0));
    let volts = if stands == SwitchStands::Closed { closed } else { open };
    (Tone::Good, say!(words::NOW_VOLTS, volts = volts))
}

/// A pedal or a throttle, released.
fn released(subject: &SensorSubject<'_>) -> (Tone, Message) {
    let [first, second] = &subject.sensor.strokes;
    let Some(rest) = first.first() else { return (Tone::Open, say!(words::OPEN_STROKE)) };
    let first: Voltage = volts(*rest);
    match (second.first(), subject.sensor.second) {
        (Some(other), Some(_)) => {
            let second: Voltage = volts(*other);
            (Tone::Good, say!(words::NOW_TRACKS, first = first, second = second))
        }
        (None, Some(_)) => (Tone::Open, say!(words::OPEN_STROKE)),
        _ => (Tone::Good, say!(words::NOW_TRACK, first = first)),
    }
}

/// What it reads cold and hot; what an offset of its ground does, where it has one.
fn why(subject: &SensorSubject<'_>) -> Option<Message> {
    let [low, _, high] = subject.places()?;
    let (cold_reads, hot_reads) = (subject.said(low)?, subject.said(high)?);
    let (cold, hot) = (subject.show(low), subject.show(high));
    let is_apart =
        matches!(subject.sensing.ground, Some(SensorGround::Bolt | SensorGround::Engine))
            || subject.sensor.kind == Some(SensorType::Sender);
    let off = subject.by_ten_millivolts().filter(|_| is_apart);
    Some(match off {
        Some(off) => say!(
            words::WHY_GROUND,
            cold = cold,
            cold_reads = cold_reads,
            hot = hot,
            hot_reads = hot_reads,
            off = subject.difference(off)
        ),
        None => say!(
            words::WHY_ENDS,
            cold = cold,
            cold_reads = cold_reads,
            hot = hot,
            hot_reads = hot_reads
        ),
    })
}

fn to_do(subject: &SensorSubject<'_>, kind: SensorType) -> Vec<Message> {
    let mut to_do = Vec::new();
    let is_known = subject.element().is_some();
    if kind == SensorType::Ntc && !is_known {
        to_do.push(say!(words::DO_DATA));
    }
    let is_ohmic = subject.element().is_some_and(SensorElement::is_resistive);
    let lacks_pull = subject.input().is_some_and(|it| it.pull_up.is_none());
    if is_ohmic && lacks_pull {
        to_do.push(say!(words::DO_PULL));
    }
    to_do.extend(set(subject));
    to_do.extend(limits(subject));
    match kind {
        SensorType::Ntc | SensorType::Pt100 | SensorType::Pt1000 if is_known => {
            to_do.extend(calibrate(subject));
            to_do.push(say!(words::DO_STOOD));
        }
        SensorType::Ratiometric if is_known => {
            let air = subject.sensing.today.air.nominal;
            to_do.push(match subject.sensor.counted {
                Some(PressureFrom::Gauge) => say!(words::DO_NO_PRESSURE),
                Some(PressureFrom::Absolute) => say!(words::DO_AIR, air = air),
                None => say!(words::DO_OPEN_AIR, air = air),
            });
        }
        SensorType::Wideband if is_known => {
            let volts = subject.now().and_then(|it| subject.said(it.nominal));
            to_do.extend(volts.map(|volts| say!(words::DO_WARM_AIR, volts = volts)));
        }
        SensorType::Pot if subject.sensor.second.is_some() => to_do.push(say!(words::DO_STROKE)),
        _ => {}
    }
    to_do
}

/// What is set in the controller for a straight line: its purpose, and two points.
fn set(subject: &SensorSubject<'_>) -> Option<Message> {
    let purpose = subject.sensor.purpose?.choosable().label;
    let input = subject.input()?.name.clone();
    if !matches!(subject.element()?, SensorElement::Pressure(_) | SensorElement::Line(_)) {
        return None;
    }
    let [low, _, high] = subject.places()?;
    let at = |value: f64| Some(subject.reads(&Span::exact(value)).volts?.nominal);
    let (low_volts, high_volts) = (at(low)?, at(high)?);
    Some(say!(
        words::DO_SET,
        input = input,
        purpose = lower(purpose),
        low = subject.show(low),
        low_volts = low_volts,
        high = subject.show(high),
        high_volts = high_volts
    ))
}

/// Its own table, where none is known to be entered.
fn calibrate(subject: &SensorSubject<'_>) -> Option<Message> {
    if subject.sensor.table.is_some() {
        return None;
    }
    Some(say!(words::DO_CALIBRATE, points = tables::own_table(subject)?))
}

/// Below what is a short, above what a broken wire: half-way from what it can read to the ends of the input.
fn limits(subject: &SensorSubject<'_>) -> Option<Message> {
    let input = subject.input()?;
    let range = input.range.nominal.base();
    let (low, high) = if subject.sensor.kind == Some(SensorType::Pot) {
        // the second track has limits of its own
        let all = || subject.sensor.strokes.iter().take(1).flatten().copied();
        let least = all().fold(f64::INFINITY, f64::min);
        (least, all().fold(f64::NEG_INFINITY, f64::max))
    } else {
        let [low, _, high] = subject.extremes()?;
        let at = |value: f64| subject.reads(&Span::exact(value)).volts;
        let (one, other) = (at(low)?, at(high)?);
        let least = one.low.base().min(other.low.base());
        (least, one.high.base().max(other.high.base()))
    };
    if !low.is_finite() || low < LEAST_V || high >= range {
        return None;
    }
    let (low, high) = (volts(low / 2.0), volts(f64::midpoint(high, range)));
    Some(say!(words::DO_LIMITS, low = rounded(low), high = rounded(high)))
}

/// As it is entered: two decimals.
fn rounded(at: Voltage) -> Value {
    volts((at.base() * 100.0).round() / 100.0).show()
}

fn cautions(subject: &SensorSubject<'_>) -> Vec<Message> {
    match subject.sensor.purpose {
        Some(SensorPurpose::Coolant | SensorPurpose::Oil) if subject.element().is_none() => {
            vec![say!(words::CAUTION_HOT)]
        }
        Some(SensorPurpose::Throttle) if subject.sensor.second.is_some() => {
            vec![say!(words::CAUTION_THROTTLE)]
        }
        _ => Vec::new(),
    }
}
