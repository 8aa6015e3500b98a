//! The injection: its plan, and what is really wired.

use super::{Details, Mapped, plan, plan::BothNumberings, sequence::Sequence, wired};
use crate::{
    channels::{Habit, Injection, Layout, Need, UnfitLayout},
    engine::Engine,
    fields,
    finding::{Finding, Findings, Severity},
    message::{Edit, Message},
    quantity::Value,
    questions::firing::words,
    read::{Channels, Keys, SECOND},
    report::{Answer, Detail, Row, Table, Tone},
    say,
    schema::Choice as _,
};

/// The answer as planned; and as wired, where something was found at the car.
pub(super) fn answers(
    engine: &Engine,
    channels: &Channels<Injection>,
    mapped: &mut Option<Mapped>,
    sequence: &mut Sequence,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Answer> {
    let (Some(mode), Some(_)) = (channels.mode.value(), channels.habit.value()) else {
        return vec![with_ways(open(engine, channels), engine, details)];
    };
    let numbered = |habit| Layout::injection(engine, mode, habit);
    let (by_order, by_cylinder) = match (numbered(Habit::ByOrder), numbered(Habit::ByCylinder)) {
        (Ok(by_order), Ok(by_cylinder)) => (by_order, by_cylinder),
        (Err(unfit), _) | (_, Err(unfit)) => {
            let answer = unfit_answer(engine, channels, unfit, findings);
            return vec![with_ways(answer, engine, details)];
        }
    };
    let numbering = BothNumberings {
        by_order: &by_order,
        by_cylinder: Some(&by_cylinder),
        used: channels.habit,
    };
    let wiring = wired::CheckedConnection::new(
        engine,
        &numbering,
        None,
        channels,
        wired::Mode::Injection(mode),
    );
    *mapped = Some(wiring.mapped());
    let mut answer = planned(engine, mode, channels, &numbering, findings);
    let there = channels.count.value();
    let needs_cam = Need::injection(engine, mode).is_ok_and(|need| need.needs_cam);
    sequence.judge(&mut answer, needs_cam, "injectors", || without_cam(engine, channels));
    wired::leave_open(&wiring, &mut answer);
    answer.show(details.map(|it| (it.injection)(engine, mode, there, &numbering)));
    answer.bench = details.and_then(|it| (it.bench)(&wiring));
    let mut answers = vec![answer];
    answers.extend(wired::answer(&wiring, details, findings));
    answers
}

/// With what each way would take below it.
fn with_ways(mut answer: Answer, engine: &Engine, details: Option<&Details>) -> Answer {
    answer.show(details.map(|it| (it.injection_ways)(engine)));
    answer
}

/// What each way would take, where none is planned yet or the planned one can't be.
pub(super) fn ways_alone(engine: &Engine) -> Detail {
    Detail { tables: vec![ways(engine)], ..Detail::default() }
}

fn titled(
    keys: &Keys<Injection>,
    subject: impl Into<String>,
    tone: Tone,
    verdict: Message,
) -> Answer {
    let mut answer = Answer::new(subject, tone, verdict);
    answer.title = Some(if keys.mode == SECOND.mode {
        say!(words::TITLE_SECOND)
    } else {
        say!(words::TITLE_INJECTION)
    });
    answer
}

fn open(engine: &Engine, channels: &Channels<Injection>) -> Answer {
    let (verdict, why) = if channels.mode.is_missing() {
        (say!(words::INJECTION_OPEN), say!(words::INJECTION_OPEN_WHY))
    } else {
        (say!(words::MEND), say!(words::MEND_WHY))
    };
    let mut answer = titled(&channels.keys, channels.keys.mode, Tone::Open, verdict);
    answer.why = Some(why);
    answer.to_do.extend(channels.count.value().map(|count| best(engine, &channels.keys, count)));
    answer
}

fn planned(
    engine: &Engine,
    mode: Injection,
    channels: &Channels<Injection>,
    numbering: &BothNumberings<'_>,
    findings: &mut Findings,
) -> Answer {
    let layout = numbering.layout();
    let (needed, there) = (layout.channels(), channels.count.value());
    let mut answer = titled(&channels.keys, channels.keys.mode, Tone::Good, verdict(mode, needed));
    let needs_cam = Need::injection(engine, mode).is_ok_and(|need| need.needs_cam);
    answer.why = Some(why(mode, needs_cam));
    answer.to_do = if is_timed(mode) && layout.slots().len() == 1 {
        Vec::new()
    } else if is_timed(mode) {
        let order = plan::order_of(layout);
        vec![say!(words::DO_WIRE_INJECTORS), say!(words::DO_ENTER, order = order)]
    } else {
        vec![say!(words::DO_GROUPS)]
    };
    if let Some(there) = there.filter(|&there| there < needed) {
        let advice = best(engine, &channels.keys, there);
        let message = say!(words::INJECTION_SHORT, needed = needed, there = there);
        findings.push(
            Finding::new(Severity::Fault, channels.keys.count, message).cured_by([advice.clone()]),
        );
        answer.subject = channels.keys.count.into();
        answer.verdict.tone = Tone::Bad;
        answer.verdict.message = say!(words::VERDICT_SHORT, needed = needed, there = there);
        answer.to_do = vec![advice];
    }
    answer.cautions = vec![say!(words::CAUTION_FUEL)];
    answer
}

/// The planned channels, with those there are.
pub(super) fn detail(
    engine: &Engine,
    mode: Injection,
    there: Option<u32>,
    numbering: &BothNumberings<'_>,
) -> Detail {
    let layout = numbering.layout();
    let steps = Need::injection(engine, mode).map(|need| need.working).unwrap_or_default();
    let channels = if is_timed(mode) { numbering.table(engine) } else { groups(layout, &steps) };
    Detail {
        figures: plan::figures(layout, &steps, there, is_timed(mode)),
        tables: vec![channels, ways(engine)],
        ..Detail::default()
    }
}

/// How the injectors would be fired without a cam.
fn without_cam(engine: &Engine, channels: &Channels<Injection>) -> Option<(Message, Edit)> {
    let there = channels.count.value().unwrap_or(u32::MAX);
    let serves = |mode: &Injection| {
        let need = Need::injection(engine, *mode);
        need.is_ok_and(|need| !need.needs_cam && need.channels <= there)
    };
    let mode = Injection::ALL.into_iter().find(serves)?;
    Some((way(mode), channels.keys.mode.edit(mode.choosable().code)))
}

/// Whether the moment matters.
fn is_timed(mode: Injection) -> bool {
    matches!(mode, Injection::EachOnce | Injection::Companions)
}

fn verdict(mode: Injection, needed: u32) -> Message {
    match mode {
        Injection::EachOnce => say!(words::VERDICT_INJECTORS, needed = needed),
        Injection::Companions => say!(words::VERDICT_INJECTOR_PAIRS, needed = needed),
        Injection::ByBank => say!(words::VERDICT_BANKS, needed = needed),
        Injection::Together => say!(words::VERDICT_TOGETHER),
    }
}

fn why(mode: Injection, needs_cam: bool) -> Message {
    match mode {
        Injection::EachOnce if needs_cam => say!(words::WHY_INJECTORS),
        Injection::EachOnce => say!(words::WHY_INJECTORS_ALONE),
        Injection::Companions => say!(words::WHY_INJECTOR_PAIRS),
        Injection::ByBank | Injection::Together => say!(words::WHY_OPEN_VALVE),
    }
}

/// Which cylinders hang on which channel, where the moment doesn't matter.
fn groups(layout: &Layout, steps: &[crate::working::Step]) -> Table {
    let row = |slot: &crate::channels::Slot| Row {
        cells: vec![slot.channel.into(), Value::text(plan::joined(&slot.targets))],
        tone: None,
    };
    Table {
        caption: say!(words::TABLE_GROUPS),
        columns: vec![say!(words::COL_CHANNEL), say!(words::COL_CYLINDERS)],
        rows: layout.slots().iter().map(row).collect(),
        working: steps.to_vec(),
    }
}

fn unfit_answer(
    engine: &Engine,
    channels: &Channels<Injection>,
    unfit: UnfitLayout,
    findings: &mut Findings,
) -> Answer {
    let (keys, there) = (&channels.keys, channels.count.value());
    match unfit {
        UnfitLayout::NoBanks => {
            let mut answer =
                titled(keys, fields::engine::BANKS, Tone::Open, say!(words::BANKS_OPEN));
            answer.why = Some(say!(words::BANKS_UNKNOWN));
            answer
        }
        UnfitLayout::NoCompanion { .. } => {
            let advice = best_of(engine, keys, there, &[Injection::EachOnce, Injection::Together]);
            let why = no_companion_injection(unfit);
            let finding = Finding::new(Severity::Fault, keys.mode, why.clone());
            findings.push(finding.cured_by([advice.clone()]));
            let mut answer = titled(keys, keys.mode, Tone::Bad, say!(words::VERDICT_NO_PAIRS));
            answer.why = Some(why);
            answer.to_do = vec![advice];
            answer
        }
    }
}

fn no_companion_injection(unfit: UnfitLayout) -> Message {
    match unfit {
        UnfitLayout::NoCompanion { cylinder, .. } => {
            say!(words::NO_INJECTOR_COMPANION, cylinder = cylinder)
        }
        UnfitLayout::NoBanks => say!(words::BANKS_UNKNOWN),
    }
}

fn best(engine: &Engine, keys: &Keys<Injection>, there: u32) -> Message {
    best_of(engine, keys, Some(there), &Injection::ALL)
}

/// The best of these ways that so many channels are enough for.
fn best_of(
    engine: &Engine,
    keys: &Keys<Injection>,
    there: Option<u32>,
    ways: &[Injection],
) -> Message {
    let fits = |mode: &&Injection| {
        let need = Need::injection(engine, **mode);
        need.is_ok_and(|need| need.channels <= there.unwrap_or(u32::MAX))
    };
    let Some(mode) = ways.iter().find(fits) else {
        return say!(words::BEST_NONE, there = there.unwrap_or(0));
    };
    let message = match mode {
        Injection::EachOnce => say!(words::INJECT_EACH_ONCE, n = engine.cylinders()),
        Injection::Companions => say!(words::INJECT_PAIRS, n = engine.cylinders() / 2),
        Injection::ByBank => say!(words::INJECT_BANKS, n = engine.banks().len()),
        Injection::Together => say!(words::INJECT_TOGETHER),
    };
    message.done_by(vec![keys.mode.edit(mode.choosable().code)])
}

fn ways(engine: &Engine) -> Table {
    let mut working = Vec::new();
    let rows = Injection::ALL.into_iter().map(|mode| {
        let name = Value::text(way(mode).into_text());
        match Need::injection(engine, mode) {
            Ok(need) => {
                working.extend(need.working);
                let cam = if need.needs_cam { say!(words::CAM_YES) } else { say!(words::CAM_NO) };
                let cells = vec![name, need.channels.into(), Value::text(cam.into_text())];
                Row { cells, tone: None }
            }
            Err(UnfitLayout::NoBanks) => {
                let cells = vec![
                    name,
                    Value::text("?"),
                    Value::text(say!(words::BANKS_MISSING).into_text()),
                ];
                Row { cells, tone: None }
            }
            Err(UnfitLayout::NoCompanion { .. }) => {
                let cells =
                    vec![name, Value::text("–"), Value::text(say!(words::NOT_HERE).into_text())];
                Row { cells, tone: Some(Tone::Bad) }
            }
        }
    });
    let rows = rows.collect();
    Table {
        caption: say!(words::TABLE_INJECTION_WAYS),
        columns: vec![say!(words::COL_WAY), say!(words::COL_CHANNELS), say!(words::COL_CAM)],
        rows,
        working,
    }
}

pub(super) fn way(mode: Injection) -> Message {
    match mode {
        Injection::EachOnce => say!(words::WAY_INJECTORS),
        Injection::Companions => say!(words::WAY_INJECTOR_PAIRS),
        Injection::ByBank => say!(words::WAY_BANKS),
        Injection::Together => say!(words::WAY_TOGETHER),
    }
}
