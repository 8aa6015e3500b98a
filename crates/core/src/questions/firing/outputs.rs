//! The outputs of the controller over all uses: coils, both sets of injectors, loads and relays.

use super::{Mapped, injection, listed};
use crate::{
    car::Car,
    channels::{Injection, Need},
    engine::Engine,
    fields::controller,
    finding::{Finding, Findings, Severity},
    message::Message,
    questions::firing::words,
    read::{Channels, OutputLink},
    report::{Answer, Tone},
    say,
    schema::Choice as _,
};

/// The answer; none where it isn't told how many all share.
pub(super) fn answer(
    car: &Car<'_>,
    engine: &Engine,
    mapped: &[Option<Mapped>; 3],
    findings: &mut Findings,
) -> Option<Answer> {
    let there = car.firing.channels.entered.outputs?;
    let [coils, injectors, seconds] =
        mapped.each_ref().map(|it| it.as_ref().map_or(0, |it| it.layout.channels()));
    let loads = loads(car);
    let needed = coils + injectors + seconds + loads;
    let uses = [
        (coils, say!(words::entered::USE_COILS, n = coils)),
        (injectors, say!(words::entered::USE_INJECTORS, n = injectors)),
        (seconds, say!(words::entered::USE_SECOND, n = seconds)),
        (loads, say!(words::entered::USE_LOADS, n = loads)),
    ];
    let uses = uses.into_iter().filter(|(n, _)| *n > 0);
    let uses = listed(uses.map(|(_, message)| message.into_text()));
    let is_short = needed > there;
    let (tone, verdict) = if is_short {
        (Tone::Bad, say!(words::entered::OUTPUTS_MISSING, needed = needed, there = there))
    } else {
        (Tone::Good, say!(words::entered::OUTPUTS_TAKEN, needed = needed, there = there))
    };
    let mut answer = Answer::new(controller::OUTPUTS, tone, verdict);
    answer.title = Some(say!(words::entered::OUTPUTS_TITLE));
    answer.why = (!uses.is_empty()).then(|| say!(words::entered::OUTPUTS_WHY, uses = uses.clone()));
    if is_short {
        let channels = &car.firing.channels;
        let over = needed - there;
        let mut cures: Vec<Message> = [
            ("second injectors", &channels.second, seconds),
            ("injectors", &channels.injection, injectors),
        ]
        .into_iter()
        .filter_map(|(what, set, taken)| fewer(engine, set, what, taken.checked_sub(over)?))
        .collect();
        cures.push(say!(words::entered::OUTPUTS_MORE, needed = needed));
        let message =
            say!(words::entered::OUTPUTS_SHORT, needed = needed, uses = uses, there = there);
        let finding = Finding::new(Severity::Fault, controller::OUTPUTS, message);
        findings.push(finding.cured_by(cures.clone()));
        answer.to_do = cures;
    }
    Some(answer)
}

/// The outputs on which a load or a relay's coil hangs, with either end.
fn loads(car: &Car<'_>) -> u32 {
    let loads = &car.outputs.loads;
    let ends = loads.iter().flat_map(|load| {
        let own = match load.link {
            OutputLink::To(number) => Some(number),
            OutputLink::Blank | OutputLink::Nowhere => None,
        };
        own.into_iter().chain(load.partner)
    });
    let mut taken: Vec<usize> = ends.collect();
    crate::sorted::by(&mut taken, Ord::cmp);
    taken.dedup();
    u32::try_from(taken.len()).unwrap_or(u32::MAX)
}

/// The best way of firing these injectors that takes no more than `most` channels.
fn fewer(engine: &Engine, set: &Channels<Injection>, what: &str, most: u32) -> Option<Message> {
    let need = |mode: &Injection| {
        let need = Need::injection(engine, *mode).ok()?.channels;
        (need <= most).then_some((*mode, need))
    };
    let (mode, n) = Injection::ALL.iter().find_map(need)?;
    let way = injection::way(mode).into_text();
    let message = say!(words::entered::OUTPUTS_CURE, what = what, way = way, n = n);
    Some(message.done_by(vec![set.keys.mode.edit(mode.choosable().code)]))
}
