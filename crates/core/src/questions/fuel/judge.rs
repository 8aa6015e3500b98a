//! The verdict, what is wrong, and what cures it.

use super::numbers;
use crate::report::{Answer, Tone};
use crate::{
    fields,
    finding::{Finding, Findings, Severity},
    fuel::{
        DeliveryEnd, FuelAnswer, FuelInputs, HEAVY_DEAD_TIME, Limit, MOST_PRESSURE, Regulator,
        cures::FuelCures,
    },
    message::Message,
    quantity::{Holds, Measure, Value, share},
    questions::fuel::words,
    say, say_of,
    schema::Choice as _,
};

/// The least power that its field takes: less can't be settled for.
const LEAST_POWER_W: f64 = 1000.0;

/// The answer where the manifold may push as hard as the fuel.
pub(super) fn stopped(inputs: &FuelInputs, found: &FuelAnswer, findings: &mut Findings) -> Answer {
    let mut answer = Answer::new("fuel", Tone::Bad, say!(words::STOPPED));
    let message = say!(
        words::BOOST_STOPS_FUEL,
        boost = numbers::pressure(inputs.boost.high),
        rail = numbers::pressure(inputs.rail.low)
    );
    let edit = fields::fuel::REGULATOR.edit(Regulator::Referenced.choosable().code);
    let cure = say!(words::DO_HOSE).done_by(vec![edit]);
    answer.why = Some(message.clone());
    answer.to_do = vec![cure.clone()];
    answer.cautions = vec![say!(words::CAUTION_LEAN)];
    findings.push(
        Finding::new(Severity::Danger, fields::fuel::BOOST, message)
            .cured_by([cure])
            .shown_by(found.least.flow_working.iter().take(1).cloned()),
    );
    answer
}

pub(super) fn verdict(inputs: &FuelInputs, found: &FuelAnswer) -> (Tone, Message) {
    let feeds = numbers::power(found.least.feeds);
    let Some(power) = inputs.power else {
        return (Tone::Open, say!(words::FEEDS, feeds = feeds));
    };
    let power = numbers::power(power.nominal);
    let speed = found.nominal.reaches.map_or(Value::text(""), Measure::show);
    let duty = found.least.duty.map_or(Value::text(""), Measure::show);
    match (found.limit_at(DeliveryEnd::Nominal), &found.runs_out) {
        (Limit::Flow, _) => (Tone::Bad, say!(words::TOO_SMALL, feeds = feeds)),
        (Limit::DeadTime, _) => (Tone::Bad, say!(words::TOO_SLOW, speed = speed)),
        (Limit::None, Holds::Never) if inputs.pace.is_none() => {
            (Tone::Open, say!(words::ENOUGH_BUT_SPEED, power = power))
        }
        (Limit::None, Holds::Never) => {
            (Tone::Good, say!(words::ENOUGH, power = power, duty = duty))
        }
        (Limit::None, _) => (Tone::Doubtful, say!(words::BARELY, feeds = feeds)),
    }
}

/// Injectors that run out: the finding, its cures and the caution.
pub(super) fn shortage(
    inputs: &FuelInputs,
    found: &FuelAnswer,
    answer: &mut Answer,
    findings: &mut Findings,
) {
    let (Some(power), Some(duty)) = (inputs.power, found.least.duty) else { return };
    if found.runs_out == Holds::Never {
        return;
    }
    let (severity, code) = match found.limit_at(DeliveryEnd::Nominal) {
        Limit::None => (Severity::Doubt, words::MAY_RUN_LEAN),
        Limit::Flow | Limit::DeadTime => (Severity::Danger, words::RUNS_LEAN),
    };
    let nominal = found.nominal.duty.unwrap_or(duty);
    let message = say_of!(
        code,
        power = numbers::power(power.nominal),
        duty = nominal,
        most_duty = duty,
        limit = found.least.duty_limit,
        feeds = numbers::power(found.least.feeds)
    );
    let words = cures(inputs, found);
    findings.push(
        Finding::new(severity, fields::fuel::POWER, message)
            .holding(found.runs_out.clone())
            .cured_by(words.iter().cloned())
            .shown_by(found.least.duty_working.iter().cloned()),
    );
    answer.to_do.extend(obstacle(&found.cures));
    answer.to_do.extend(words);
    answer.cautions.push(say!(words::CAUTION_LEAN));
    if found.cures.pressure.as_ref().is_some_and(|it| !it.is_beyond) {
        answer.cautions.push(say!(words::CAUTION_PRESSURE));
    }
}

fn cures(inputs: &FuelInputs, found: &FuelAnswer) -> Vec<Message> {
    let cures = &found.cures;
    let mut words = Vec::new();
    if cures.in_sequence {
        words.push(say!(words::CURE_SEQUENCE));
    }
    if let Some(pressure) = cures.pressure.as_ref().filter(|it| !it.is_beyond) {
        let edit = fields::fuel::RAIL_PRESSURE.edit(pressure.rail.show().into_shown());
        let rail = numbers::pressure(pressure.rail);
        words.push(say!(words::CURE_PRESSURE, rail = rail).done_by(vec![edit]));
    }
    if let Some(larger) = &cures.larger {
        let stated = numbers::pressure(inputs.stated_at.nominal);
        let flow = numbers::rated(larger.flow, inputs);
        words.push(if inputs.sets.len() > 1 {
            // up to the next hundredth, so that what is read is enough
            let times = crate::quantity::number((larger.times * 100.0).ceil() / 100.0);
            say!(words::CURE_LARGER_SETS, times = times, flow = flow, stated = stated)
        } else {
            let edit = fields::fuel::FLOW.edit(numbers::alone(larger.flow));
            say!(words::CURE_LARGER, flow = flow, stated = stated).done_by(vec![edit])
        });
    }
    if found.least.feeds.base() >= LEAST_POWER_W {
        let edit = fields::fuel::POWER.edit(found.least.feeds.show().into_shown());
        let less = say!(words::CURE_LESS, feeds = numbers::power(found.least.feeds));
        words.push(less.done_by(vec![edit]));
    }
    words
}

/// Why no pressure does it.
fn obstacle(cures: &FuelCures) -> Option<Message> {
    match &cures.pressure {
        Some(pressure) if pressure.is_beyond => {
            let most = share(MOST_PRESSURE - 1.0);
            let rail = numbers::pressure(pressure.rail);
            Some(say!(words::NO_PRESSURE, rail = rail, most = most))
        }
        Some(_) => None,
        None => Some(say!(words::NO_TIME)),
    }
}

/// What else deserves a look.
pub(super) fn concerns(inputs: &FuelInputs, found: &FuelAnswer, findings: &mut Findings) {
    let (least, nominal) = (&found.least, &found.nominal);
    if let (Some(pace), Some(dead)) = (inputs.pace, least.dead_share)
        && dead.base() > HEAVY_DEAD_TIME
    {
        let message =
            say!(words::DEAD_TIME_HEAVY, share = dead, speed = pace.speed.high, z = pace.turns);
        let in_sequence = pace.turns < pace.turns_of_cycle;
        // what rests on the usual dead time alone is looked up first
        let (severity, place) = if inputs.is_dead_time_given {
            (Severity::Doubt, fields::engine::HIGHEST_SPEED.place())
        } else {
            (Severity::Note, fields::fuel::DEAD_TIME.place())
        };
        let look = (!inputs.is_dead_time_given).then(|| say!(words::FIND_DEAD_TIME));
        let slower = in_sequence.then(|| say!(words::CURE_DEAD_TIME));
        findings.push(
            Finding::new(severity, place, message)
                .cured_by(look.into_iter().chain(slower))
                .shown_by(least.window_working.iter().cloned()),
        );
    }
    if inputs.regulator == Regulator::Fixed && inputs.boost.high.base() > 0.0 {
        let message = say!(
            words::BOOST_TAKES,
            boost = numbers::pressure(inputs.boost.high),
            drop = numbers::pressure(least.drop)
        );
        findings.push(Finding::new(Severity::Note, fields::fuel::REGULATOR, message));
    }
    let ratio = nominal.drop.base() / inputs.stated_at.nominal.base();
    if !(1.0 / MOST_PRESSURE..=MOST_PRESSURE).contains(&ratio) {
        let message = say!(
            words::PRESSURE_BEYOND,
            drop = numbers::pressure(nominal.drop),
            stated = numbers::pressure(inputs.stated_at.nominal)
        );
        findings.push(
            Finding::new(Severity::Doubt, fields::fuel::RAIL_PRESSURE, message)
                .shown_by(nominal.flow_working.iter().cloned()),
        );
    }
}
