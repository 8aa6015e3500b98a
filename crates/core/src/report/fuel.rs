//! The second answer to the question of injectors: what they pass, what that feeds, and for how much of the time they
//! must be open.

mod judge;
mod numbers;

use super::{Answer, Tone};
use crate::{
    finding::Findings,
    fuel::{
        self, End, Inputs, cures,
        flow::{Rated, Set},
    },
    message::Message,
    quantity::{Band, Measure, RotationalSpeed, Value, VolumeRate},
    read::{self, Fuelled, Reader},
    say,
};

/// The answer, with the number of injectors of each set where that is known.
pub(super) fn answer(
    reader: &mut Reader<'_>,
    counts: [Option<u32>; 2],
    speed: Option<Band<RotationalSpeed>>,
    findings: &mut Findings,
) -> Answer {
    let Some(read) = read::fuel(reader, counts, speed) else {
        return titled(Answer::new("fuel", Tone::Open, say!("fuel.blank")));
    };
    let mut answer = match read.flow.value() {
        None => flow_wanted(&read),
        Some(flow) if read.count.is_none() => of_one(&read, flow),
        Some(_) => answered(&read, findings),
    };
    if read.second_is_uncounted {
        answer.to_do.push(say!("fuel.do-count-second"));
    }
    answer.to_do.extend(taken(&read));
    titled(answer)
}

fn titled(answer: Answer) -> Answer {
    Answer { title: Some(say!("fuel.title")), ..answer }
}

/// What each injector must pass, where that is not known but the power is.
fn flow_wanted(read: &Fuelled) -> Answer {
    let code = if read.flow.is_missing() { "fuel.wants-flow" } else { "fuel.unreadable" };
    let mut answer = Answer::new("fuel", Tone::Open, say!(code));
    // any flow does: how many times more is wanted is all that counts
    let any = Rated::Volume(Band::exact(VolumeRate::from_base(100e-6 / 60.0)));
    if let Some(count) = read.count {
        let inputs = Inputs { sets: vec![Set { count, flow: any }], ..read.inputs.clone() };
        if let Some(larger) = cures::wanted(&inputs) {
            let flow = numbers::rated(larger.flow, &inputs);
            answer.verdict.message = say!("fuel.wanted", flow = flow);
            answer.figures = vec![numbers::of_larger(&larger, &inputs)];
        }
    }
    answer.to_do = vec![say!("fuel.do-flow")];
    answer.to_do.extend(speed_wanted(&read.inputs));
    answer
}

/// What one injector feeds, where their number is not known.
fn of_one(read: &Fuelled, flow: Rated) -> Answer {
    let inputs = Inputs { sets: vec![Set { count: 1, flow }], power: None, ..read.inputs.clone() };
    let found = fuel::answer(&inputs);
    let feeds = numbers::power(found.least.feeds);
    let mut answer = Answer::new("fuel", Tone::Open, say!("fuel.count-unknown", feeds = feeds));
    answer.to_do = vec![say!("fuel.do-count")];
    answer.to_do.extend(speed_wanted(&inputs));
    answer.figures = numbers::figures(&inputs, &found);
    answer.tables = vec![numbers::table(&inputs, &found)];
    answer
}

fn answered(read: &Fuelled, findings: &mut Findings) -> Answer {
    let inputs = &read.inputs;
    let found = fuel::answer(inputs);
    if found.is_stopped() {
        return judge::stopped(inputs, &found, findings);
    }
    let (tone, verdict) = judge::verdict(inputs, &found);
    let mut answer = Answer::new("fuel", tone, verdict);
    answer.why = Some(why(read, &found));
    judge::shortage(inputs, &found, &mut answer, findings);
    judge::concerns(inputs, &found, findings);
    if inputs.power.is_none() {
        answer.to_do.push(say!("fuel.do-power"));
    }
    answer.to_do.extend(speed_wanted(inputs));
    if inputs.power.is_some() {
        answer.to_do.push(say!("fuel.do-prove"));
    }
    answer.figures = numbers::figures(inputs, &found);
    answer.tables = vec![numbers::table(inputs, &found)];
    answer
}

fn why(read: &Fuelled, found: &fuel::Answer) -> Message {
    let inputs = &read.inputs;
    let set = |set: &Set| format!("{} × {}", set.count, numbers::rated(set.flow, inputs).shown);
    let sets: Vec<_> = inputs.sets.iter().map(set).collect();
    let (least, most) = (numbers::power(found.least.feeds), numbers::power(found.most.feeds));
    let code = if found.nominal.duty.is_some() { "fuel.why" } else { "fuel.why-feeds" };
    let [duty, most_duty] =
        [&found.nominal, &found.least].map(|at| at.duty.map_or(Value::text(""), Measure::show));
    say!(
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
        limit = End::Nominal.of_help(inputs.duty_limit)
    )
}

fn speed_wanted(inputs: &Inputs) -> Option<Message> {
    inputs.pace.is_none().then(|| say!("fuel.do-speed"))
}

/// What was taken where nothing was given.
fn taken(read: &Fuelled) -> Option<Message> {
    let each = |(label, value): &(&str, Value)| format!("{label}: {}", value.shown);
    let list: Vec<_> = read.taken.iter().map(each).collect();
    (!list.is_empty()).then(|| say!("injectors.taken", list = list.join("; ")))
}
