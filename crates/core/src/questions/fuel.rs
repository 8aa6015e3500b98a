//! The second answer to the question of injectors: what they pass, what that feeds, and for how much of the time they
//! must be open.

pub mod fields;
mod judge;
mod numbers;
pub(crate) mod read;
pub(crate) mod words;

use crate::report::{Answer, Detail, Tone};
use crate::{
    finding::Findings,
    fuel::{
        self, DeliveryEnd, FuelAnswer, FuelInputs,
        cures::{self, Larger},
        flow::{InjectorSet, Rated},
    },
    message::Message,
    quantity::{Band, Measure, Value, VolumeRate},
    read::Fuelled,
    say, say_of,
};

/// What makes the details: of what is delivered, of the pressure where the manifold stops it, of injectors that would do.
#[derive(Clone, Copy, Debug)]
pub(crate) struct FuelDetails {
    delivered: fn(&FuelInputs, &FuelAnswer) -> Detail,
    stopped: fn(&FuelAnswer) -> Detail,
    wanted: fn(&Larger, &FuelInputs) -> Detail,
}

/// Named by the details of the injectors' question alone.
pub(crate) const DETAILS: FuelDetails = FuelDetails {
    delivered: numbers::detail,
    stopped: numbers::of_stopped,
    wanted: numbers::of_wanted,
};

/// The answer; it asks for the flow where nothing is said of the fuel.
pub(crate) fn answer(
    read: Option<&Fuelled>,
    details: Option<&FuelDetails>,
    findings: &mut Findings,
) -> Answer {
    let Some(read) = read else {
        return titled(Answer::new("fuel", Tone::Open, say!(words::BLANK)));
    };
    let mut answer = match read.flow.value() {
        None => flow_wanted(read, details),
        Some(flow) if read.count.is_none() => of_one(read, flow, details),
        Some(_) => answered(read, details, findings),
    };
    if read.second_is_uncounted {
        answer.to_do.push(say!(words::DO_COUNT_SECOND));
    }
    answer.assume(taken(read));
    titled(answer)
}

fn titled(answer: Answer) -> Answer {
    Answer { title: Some(say!(words::TITLE)), ..answer }
}

/// What each injector must pass, where that is not known but the power is.
fn flow_wanted(read: &Fuelled, details: Option<&FuelDetails>) -> Answer {
    let code = if read.flow.is_missing() { words::WANTS_FLOW } else { words::UNREADABLE };
    let mut answer = Answer::new("fuel", Tone::Open, say_of!(code));
    // any flow does: how many times more is wanted is all that counts
    let any = Rated::Volume(Band::exact(VolumeRate::from_base(100e-6 / 60.0)));
    if let Some(count) = read.count {
        let inputs =
            FuelInputs { sets: vec![InjectorSet { count, flow: any }], ..read.inputs.clone() };
        if let Some(larger) = cures::wanted(&inputs) {
            let flow = numbers::rated(larger.flow, &inputs);
            answer.verdict.message = say!(words::WANTED, flow = flow);
            answer.show(details.map(|it| (it.wanted)(&larger, &inputs)));
        }
    }
    answer.to_do = vec![say!(words::DO_FLOW)];
    answer.to_do.extend(speed_wanted(&read.inputs));
    answer
}

/// What one injector feeds, where their number is not known.
fn of_one(read: &Fuelled, flow: Rated, details: Option<&FuelDetails>) -> Answer {
    let inputs = FuelInputs {
        sets: vec![InjectorSet { count: 1, flow }],
        power: None,
        ..read.inputs.clone()
    };
    let found = fuel::answer(&inputs);
    let feeds = numbers::power(found.least.feeds);
    let mut answer = Answer::new("fuel", Tone::Open, say!(words::COUNT_UNKNOWN, feeds = feeds));
    answer.to_do = vec![say!(words::DO_COUNT)];
    answer.to_do.extend(speed_wanted(&inputs));
    answer.show(details.map(|it| (it.delivered)(&inputs, &found)));
    answer
}

fn answered(read: &Fuelled, details: Option<&FuelDetails>, findings: &mut Findings) -> Answer {
    let inputs = &read.inputs;
    let found = fuel::answer(inputs);
    if found.is_stopped() {
        let mut answer = judge::stopped(inputs, &found, findings);
        answer.show(details.map(|it| (it.stopped)(&found)));
        return answer;
    }
    let (tone, verdict) = judge::verdict(inputs, &found);
    let mut answer = Answer::new("fuel", tone, verdict);
    answer.why = Some(why(read, &found));
    judge::shortage(inputs, &found, &mut answer, findings);
    judge::concerns(inputs, &found, findings);
    if inputs.power.is_none() {
        answer.to_do.push(say!(words::DO_POWER));
    }
    answer.to_do.extend(speed_wanted(inputs));
    if inputs.power.is_some() {
        answer.to_do.push(say!(words::DO_PROVE));
    }
    answer.show(details.map(|it| (it.delivered)(inputs, &found)));
    answer
}

fn why(read: &Fuelled, found: &FuelAnswer) -> Message {
    let inputs = &read.inputs;
    let set =
        |set: &InjectorSet| format!("{} × {}", set.count, numbers::rated(set.flow, inputs).shown);
    let sets: Vec<_> = inputs.sets.iter().map(set).collect();
    let (least, most) = (numbers::power(found.least.feeds), numbers::power(found.most.feeds));
    let code = if found.nominal.duty.is_some() { words::WHY } else { words::WHY_FEEDS };
    let [duty, most_duty] =
        [&found.nominal, &found.least].map(|at| at.duty.map_or(Value::text(""), Measure::show));
    say_of!(
        code,
        sets = sets.join(" and "),
        stated = numbers::pressure(inputs.stated_at.nominal),
        drop = numbers::pressure(found.nominal.drop),
        fuel = read.fuel,
        least = least,
        most = most,
        power = inputs.power.map_or(Value::text(""), |power| numbers::power(power.nominal)),
        duty = duty,
        most_duty = most_duty,
        limit = DeliveryEnd::Nominal.of_help(inputs.duty_limit)
    )
}

fn speed_wanted(inputs: &FuelInputs) -> Option<Message> {
    inputs.pace.is_none().then(|| say!(words::DO_SPEED))
}

/// What was taken where nothing was given.
fn taken(read: &Fuelled) -> Option<Message> {
    let each = |(label, value): &(&str, Value)| format!("{label}: {}", value.shown);
    let list: Vec<_> = read.taken.iter().map(each).collect();
    (!list.is_empty())
        .then(|| say!(crate::questions::injectors::words::TAKEN, list = list.join("; ")))
}
