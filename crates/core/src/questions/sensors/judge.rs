//! Whether a sensor suits its input, and what feeds it.

use super::{read::PlannedSensor, subject::SensorSubject, words};
use crate::{
    fields::{
        self,
        inputs::{InputPull, InputTakes},
        sensors::{
            AlsoPulls, PressureFrom, SensorFeed, SensorPurpose, SensorType, SwitchStands,
            SwitchedTo,
        },
    },
    finding::{Finding, Severity},
    message::Message,
    quantity::{Measure, Resistance, Span, ohms},
    say, say_of,
    schema::{Choice as _, Key},
    sensor::divider::best_pull_up,
    words::Wording,
};

/// What was found, and what it makes the verdict.
pub(super) type FoundOf = (Finding, &'static Wording);

/// Above it a pull-up does not move what drives its own voltage: common practice, no source.
const WEAK_PULL_OHM: f64 = 20e3;
/// A step of the input from which a thermometer is coarse, in degrees: common practice, no source.
const COARSE_C: f64 = 2.0;

/// A finding at a field of the sensor.
pub(super) fn found<T>(
    subject: &SensorSubject<'_>,
    severity: Severity,
    key: Key<T>,
    message: Message,
) -> Finding {
    Finding::new(severity, key.at(subject.at), message)
}

/// All of it that is said of one sensor by itself.
pub(super) fn found_of(subject: &SensorSubject<'_>) -> Vec<FoundOf> {
    let all = [
        over_supply(subject),
        cannot(subject),
        shared(subject),
        wrong_input(subject),
        no_pull_up(subject),
        to_battery(subject),
        gauge(subject),
        set_otherwise(subject),
        pulled(subject),
        coarse(subject),
    ];
    all.into_iter().flatten().collect()
}

fn name(subject: &SensorSubject<'_>) -> String {
    subject.sensor.name.clone()
}

/// What is made for 5 V.
fn over_supply(subject: &SensorSubject<'_>) -> Option<FoundOf> {
    let sensor = subject.sensor;
    let is_made_for_five = matches!(sensor.kind?, SensorType::Ratiometric | SensorType::Pot);
    if !is_made_for_five || sensor.feed != Some(SensorFeed::Battery) {
        return None;
    }
    let message = say!(words::OVER_SUPPLY, sensor = name(subject));
    let edit = fields::sensors::FEED.at(subject.at).edit(SensorFeed::Supply.choosable().code);
    let cure = say!(words::CURE_FEED).done_by(vec![edit]);
    let finding = found(subject, Severity::Danger, fields::sensors::FEED, message);
    Some((finding.cured_by([cure]), words::IS_FED))
}

/// What a kind of sensor can tell.
fn can_tell(kind: SensorType, purpose: SensorPurpose) -> bool {
    use SensorPurpose as P;
    let is_temperature =
        matches!(purpose, P::Coolant | P::Air | P::Oil | P::FuelTemperature | P::Exhaust);
    let is_pressure =
        matches!(purpose, P::Manifold | P::Barometer | P::OilPressure | P::FuelPressure);
    match (kind, purpose) {
        (_, P::Other) => true,
        (SensorType::Ntc, _) => is_temperature && purpose != P::Exhaust,
        (SensorType::Pt100 | SensorType::Pt1000 | SensorType::Thermocouple, _) => is_temperature,
        (SensorType::Ratiometric, _) => is_pressure || purpose == P::Level,
        (SensorType::Pot, _) => matches!(purpose, P::Throttle | P::Pedal | P::Level),
        (SensorType::Sender, _) => {
            is_temperature && purpose != P::Exhaust
                || matches!(purpose, P::OilPressure | P::FuelPressure | P::Level)
        }
        // a switch tells any of them from too much or too little
        (SensorType::Switch, _) => !matches!(purpose, P::Oxygen | P::Knock | P::Speed),
        (SensorType::Hall, _) => matches!(purpose, P::Speed | P::Switch | P::Level),
        (SensorType::Knock, _) => purpose == P::Knock,
        (SensorType::Wideband, _) => purpose == P::Oxygen,
    }
}

fn cannot(subject: &SensorSubject<'_>) -> Option<FoundOf> {
    let sensor = subject.sensor;
    let (kind, purpose) = sensor.kind.zip(sensor.purpose)?;
    let told = purpose.choosable().label;
    if !can_tell(kind, purpose) {
        let kind = kind.choosable().label;
        let message = say!(words::CANNOT, kind = kind, purpose = lower(told));
        let finding = found(subject, Severity::Fault, fields::sensors::PURPOSE, message);
        return Some((finding, words::IS_UNABLE));
    }
    let is_absolute = matches!(purpose, SensorPurpose::Manifold | SensorPurpose::Barometer);
    let is_gauge = sensor.counted == Some(PressureFrom::Gauge);
    if kind != SensorType::Ratiometric || !is_absolute || !is_gauge {
        return None;
    }
    let air = subject.sensing.today.air.nominal;
    let message = say!(words::GAUGE_FOR_ABSOLUTE, purpose = lower(told), air = air);
    let finding = found(subject, Severity::Fault, fields::sensors::COUNTED_FROM, message);
    Some((finding, words::IS_UNABLE))
}

/// The label of a purpose within a sentence.
pub(super) fn lower(label: &str) -> String {
    let mut label = label.to_owned();
    if let Some(first) = label.get_mut(..1) {
        first.make_ascii_lowercase();
    }
    label
}

/// Two on one input: said at the later of them.
fn shared(subject: &SensorSubject<'_>) -> Option<FoundOf> {
    let sensor = subject.sensor;
    let own = [sensor.on.input, sensor.on.second_input];
    let earlier = subject.sensing.sensors.iter().take(subject.at);
    let other = own.into_iter().flatten().find_map(|input| {
        let takes =
            |it: &&PlannedSensor| it.on.input == Some(input) || it.on.second_input == Some(input);
        Some((input, earlier.clone().find(takes)?.name.clone()))
    });
    let both = own[0].filter(|_| own[0] == own[1]).map(|input| (input, name(subject)));
    let (input, other) = other.or(both)?;
    let input = subject.sensing.inputs.get(input)?.name.clone();
    let message = say!(words::INPUT_TWICE, sensor = name(subject), input = input, other = other);
    let finding = found(subject, Severity::Fault, fields::sensors::INPUT, message);
    Some((finding, words::IS_SHARED))
}

/// What it gives, and what an input must read for it.
fn gives(kind: SensorType) -> (&'static Wording, &'static [InputTakes]) {
    match kind {
        SensorType::Hall => (words::GIVES_PULSES, &[InputTakes::Digital]),
        // a level is told as well by a voltage
        SensorType::Switch => (words::GIVES_PULSES, &[InputTakes::Digital, InputTakes::Analogue]),
        SensorType::Knock => (words::GIVES_NOISE, &[InputTakes::Knock]),
        _ => (words::GIVES_VOLTS, &[InputTakes::Analogue]),
    }
}

fn wrong_input(subject: &SensorSubject<'_>) -> Option<FoundOf> {
    let (gives, suits) = gives(subject.sensor.kind?);
    let second = subject.sensor.on.second_input.and_then(|at| subject.sensing.inputs.get(at));
    let wrong = subject.input().into_iter().chain(second).find_map(|input| {
        let takes = input.takes?;
        (!suits.contains(&takes)).then_some((input, takes))
    });
    let (input, takes) = wrong?;
    let message = say!(
        words::WRONG_INPUT,
        input = input.name.clone(),
        takes = lower(takes.choosable().label),
        sensor = name(subject),
        gives = gives.text
    );
    let finding = found(subject, Severity::Fault, fields::sensors::INPUT, message);
    Some((finding, words::IS_MISPLACED))
}

/// The resistances on both sides of a degree, or of a small step, at the lowest and the highest that matters.
fn at_ends(subject: &SensorSubject<'_>) -> Option<[(Resistance, Resistance); 2]> {
    let [cold, _, hot] = subject.places()?;
    let step = (hot - cold).abs() / 200.0;
    let element = subject.element()?;
    let at = |value: f64| element.resistance(&Span::exact(value)).map(|it| it.nominal);
    Some([(at(cold)?, at(cold + step)?), (at(hot - step)?, at(hot)?)])
}

/// The pull-up that suits it best.
pub(super) fn best(subject: &SensorSubject<'_>) -> Option<Resistance> {
    let [cold, hot] = at_ends(subject)?;
    best_pull_up(cold, hot)
}

/// Whether nothing but a pull-up makes a voltage of it.
pub(crate) fn needs_pull_up(sensor: &PlannedSensor) -> bool {
    match sensor.kind {
        Some(SensorType::Ntc | SensorType::Pt100 | SensorType::Pt1000 | SensorType::Sender) => {
            sensor.also.is_none()
        }
        Some(SensorType::Switch) => sensor.switched_to == Some(SwitchedTo::Ground),
        Some(SensorType::Hall) => true,
        _ => false,
    }
}

/// What an input must read for it.
pub(crate) fn read_by(kind: SensorType) -> &'static [InputTakes] {
    gives(kind).1
}

fn no_pull_up(subject: &SensorSubject<'_>) -> Option<FoundOf> {
    let input = subject.input()?;
    if !needs_pull_up(subject.sensor) || input.pull != Some(InputPull::Nothing) {
        return None;
    }
    let message = say!(words::NO_PULL_UP, sensor = name(subject), input = input.name.clone());
    let finding = found(subject, Severity::Fault, fields::sensors::INPUT, message);
    let usual = ohms(if subject.sensor.kind == Some(SensorType::Hall) { 1e3 } else { 2.2e3 });
    let best = best(subject).unwrap_or(usual);
    let edits = vec![
        fields::inputs::PULL.at(input.record).edit(InputPull::Up.choosable().code),
        fields::inputs::PULL_UP.at(input.record).edit(best.show().into_shown()),
    ];
    let cure = say!(words::CURE_PULL, best = best, input = input.name.clone()).done_by(edits);
    Some((finding.cured_by([cure]), words::IS_UNPULLED))
}

fn to_battery(subject: &SensorSubject<'_>) -> Option<FoundOf> {
    let sensor = subject.sensor;
    let input = subject.input()?;
    let is_there =
        sensor.kind == Some(SensorType::Switch) && sensor.switched_to == Some(SwitchedTo::Battery);
    // an input for the battery reads far above 5 V; what it bears beyond what it reads is not known
    let least = subject.sensing.battery;
    if !is_there || input.range.high >= least {
        return None;
    }
    let is_typed = input.is_range_typed;
    let message = say!(words::TO_BATTERY, input = input.name.clone(), range = input.range.high);
    let severity = if is_typed { Severity::Fault } else { Severity::Doubt };
    let finding = found(subject, severity, fields::sensors::SWITCHED_TO, message);
    let stands = sensor.stands.unwrap_or(SwitchStands::Closed);
    Some((
        finding,
        if stands == SwitchStands::Closed { words::IS_OFF } else { words::IS_MISPLACED },
    ))
}

/// An old gauge or a second pull-up on its wire.
fn gauge(subject: &SensorSubject<'_>) -> Option<FoundOf> {
    let sensor = subject.sensor;
    let (input, also) = (subject.input()?, sensor.also?);
    let second = also.pull;
    let edits =
        vec![fields::sensors::ALSO.at(subject.at).edit(AlsoPulls::Nothing.choosable().code)];
    let cure = say!(words::CURE_DISCONNECT).done_by(edits);
    if also.is_gauge {
        // unplugged the input is lifted to what both make of it
        let open = input.divider(Some(second)).map(|it| it.voltage(&open_wire()).high);
        let high = open.unwrap_or(second.supply.high);
        if high > input.range.high * 1.1 {
            let message = say!(words::GAUGE_OVER, high = high, range = input.range.high);
            let severity = if also.is_typed { Severity::Fault } else { Severity::Doubt };
            let finding = found(subject, severity, fields::sensors::ALSO, message);
            return Some((finding.cured_by([cure]), words::IS_OFF));
        }
    }
    let [_, _, hot] = subject.places()?;
    let reads = subject.element()?.resistance(&Span::exact(hot))?.nominal;
    let (alone, both) = (subject.alone()?.nominal(reads), subject.divider()?.nominal(reads));
    let shown = subject.value_by(fields::sensors::TableOf::Volts, both.base());
    let off = (shown.unwrap_or(hot) - hot).abs();
    if shown.is_some() && off < subject.doubtful() {
        return None;
    }
    let message = say!(
        words::SECOND_PULL,
        at = subject.show(hot),
        both = both,
        alone = alone,
        off = subject.difference(off)
    );
    let is_sure = also.is_typed && off >= subject.wrong();
    let severity = if is_sure { Severity::Fault } else { Severity::Doubt };
    let steps = subject.divider().map(|it| it.working(reads));
    let finding = found(subject, severity, fields::sensors::ALSO, message).shown_by(steps);
    Some((finding.cured_by([cure]), words::IS_OFF))
}

fn open_wire() -> crate::quantity::Band<Resistance> {
    crate::quantity::Band::exact(ohms(1e12))
}

fn set_otherwise(subject: &SensorSubject<'_>) -> Option<FoundOf> {
    let sensor = subject.sensor;
    let (entered, purpose) = sensor.entered.zip(sensor.purpose)?;
    if entered == purpose {
        return None;
    }
    let input = subject.input().map_or_else(|| name(subject), |it| it.name.clone());
    let message = say!(
        words::SET_OTHERWISE,
        input = input,
        entered = lower(entered.choosable().label),
        sensor = name(subject),
        purpose = lower(purpose.choosable().label)
    );
    let edit = fields::sensors::ENTERED.at(subject.at).edit(purpose.choosable().code);
    let cure = say!(words::CURE_SET, purpose = lower(purpose.choosable().label));
    let finding = found(subject, Severity::Fault, fields::sensors::ENTERED, message);
    Some((finding.cured_by([cure.done_by(vec![edit])]), words::IS_SET))
}

/// A pull-up at what drives its own voltage.
fn pulled(subject: &SensorSubject<'_>) -> Option<FoundOf> {
    let drives = matches!(
        subject.sensor.kind?,
        SensorType::Ratiometric | SensorType::Pot | SensorType::Wideband | SensorType::Thermocouple
    );
    let input = subject.input()?;
    let pull_up = input.pull_up.filter(|it| drives && it.high.base() < WEAK_PULL_OHM)?;
    let message = say!(
        words::PULLED_UNWANTED,
        sensor = name(subject),
        input = input.name.clone(),
        pull_up = pull_up.nominal
    );
    Some((found(subject, Severity::Doubt, fields::sensors::INPUT, message), words::IS_OFF))
}

fn coarse(subject: &SensorSubject<'_>) -> Option<FoundOf> {
    use crate::quantity::Dimension;
    let input = subject.input()?;
    let now = input.pull_up?;
    let step = subject.by_a_step().filter(|it| *it > COARSE_C)?;
    if !subject.sensor.is_told(Dimension::Temperature) {
        return None;
    }
    let [_, _, hot] = subject.places()?;
    let message = say!(
        words::COARSE,
        at = subject.show(hot),
        input = input.name.clone(),
        step = subject.difference(step),
        now = now.nominal
    );
    let cure = best(subject).filter(|best| *best < now.nominal).map(|best| {
        let edit = fields::inputs::PULL_UP.at(input.record).edit(best.show().into_shown());
        say!(words::CURE_BEST, best = best, now = now.nominal).done_by(vec![edit])
    });
    let finding = found(subject, Severity::Doubt, fields::sensors::INPUT, message);
    Some((finding.cured_by(cure), words::IS_COARSE))
}

/// The gravest of what was found, as a verdict.
pub(super) fn gravest(found: &[FoundOf]) -> Option<(Severity, Message)> {
    let worst = found.iter().min_by_key(|(finding, _)| finding.severity)?;
    Some((worst.0.severity, say_of!(worst.1)))
}
