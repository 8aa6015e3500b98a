//! The outputs of the controller over all uses: coils, both sets of injectors, loads and relays.

use super::{Mapped, injection, listed, read::ChannelsOf};
use crate::{
    car::Car,
    channels::{Injection, Need},
    engine::Engine,
    fields::controller,
    finding::{Finding, Findings, Severity},
    message::Message,
    output::LoadKind,
    questions::firing::words,
    read::{Channels, OutputLink, PlannedLoad},
    report::{Answer, Tone, Verdict},
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
    let loads = loads(car, coils);
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
        let read = &car.firing.channels;
        let mut cures = fewer_of(engine, read, needed - there, [injectors, seconds]);
        cures.push(say!(words::entered::OUTPUTS_MORE, needed = needed));
        let message =
            say!(words::entered::OUTPUTS_SHORT, needed = needed, uses = uses, there = there);
        let finding = Finding::new(Severity::Fault, controller::OUTPUTS, message);
        findings.push(finding.cured_by(cures.clone()));
        answer.to_do = cures;
    }
    Some(answer)
}

/// Turns the answer about the second set into a no where both sets take more injection channels than there are, and the
/// second isn't told to have its own.
pub(super) fn judge_sets(
    engine: &Engine,
    read: &ChannelsOf,
    mapped: &[Option<Mapped>; 3],
    answers: &mut [Answer],
    findings: &mut Findings,
) {
    let [_, Some(first), Some(second)] = mapped else { return };
    let (first, second) = (first.layout.channels(), second.layout.channels());
    let Some(there) = read.injection.count.value().filter(|_| read.second.count.is_missing())
    else {
        return;
    };
    let subject = read.second.keys.mode.path();
    let answer = answers.iter_mut().rev().find(|it| it.subject == subject);
    // where the first set alone is short, that is said
    let (Some(answer), true) = (answer, first <= there && first + second > there) else { return };
    let over = first + second - there;
    let mut cures = fewer_of(engine, read, over, [first, second]);
    cures.push(say!(words::entered::SETS_TELL));
    let message = say!(words::entered::SETS_SHORT, needed = first + second, there = there);
    let finding = Finding::new(Severity::Fault, read.second.keys.count, message.clone());
    findings.push(finding.cured_by(cures.clone()));
    let verdict = say!(words::VERDICT_SHORT, needed = first + second, there = there);
    answer.verdict = Verdict { tone: Tone::Bad, message: verdict };
    answer.why = Some(message);
    answer.to_do = cures;
}

/// One set fired otherwise, or both, so that they take so many channels less; what gives up least first.
fn fewer_of(
    engine: &Engine,
    read: &ChannelsOf,
    over: u32,
    [first, second]: [u32; 2],
) -> Vec<Message> {
    let sets = [
        ("Second injectors", second, &[&read.second][..]),
        ("Injectors", first, &[&read.injection]),
        ("Injectors of both sets", first + second, &[&read.injection, &read.second]),
    ];
    let fewer = |(what, taken, sets): (&str, u32, &[&Channels<Injection>])| {
        let most = taken.checked_sub(over).filter(|_| taken > 0)?;
        let need = |mode: &Injection| {
            let each = Need::injection(engine, *mode).ok()?.channels;
            let all = each * u32::try_from(sets.len()).ok()?;
            (all <= most).then_some((*mode, all))
        };
        let (mode, n) = Injection::ALL.iter().find_map(need)?;
        let way = injection::way(mode).into_text();
        let message = say!(words::entered::OUTPUTS_CURE, what = what, way = way, n = n);
        let edits = sets.iter().map(|set| set.keys.mode.edit(mode.choosable().code));
        let given_up = Injection::ALL.iter().position(|it| *it == mode);
        Some((given_up, message.done_by(edits.collect())))
    };
    let mut cures: Vec<_> = sets.into_iter().filter_map(fewer).collect();
    crate::sorted::by(&mut cures, |one, other| one.0.cmp(&other.0));
    cures.into_iter().map(|(_, message)| message).collect()
}

/// The outputs on which a load or a relay's coil hangs, with either end. Inputs of igniters among the loads are the coils'
/// own pins, which are counted already.
fn loads(car: &Car<'_>, coils: u32) -> u32 {
    let is_input = |load: &PlannedLoad| load.kind == LoadKind::LogicInput;
    let inputs = outputs_of(car, is_input);
    outputs_of(car, |load| !is_input(load)) + inputs.saturating_sub(coils)
}

fn outputs_of(car: &Car<'_>, counts: impl Fn(&PlannedLoad) -> bool) -> u32 {
    let loads = car.outputs.loads.iter().filter(|load| counts(load));
    let ends = loads.flat_map(|load| {
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
