//! The injection: its plan, and what is really wired.

use super::{Mapped, plan, plan::Numbering, taps, wired};
use crate::{
    channels::{Habit, Injection, Layout, Need, Unfit},
    engine::Engine,
    finding::{Finding, Findings, Severity},
    message::Message,
    quantity::Value,
    read::{Channels, Paths, SECOND},
    report::{Answer, Row, Table, Tone},
    say,
};

/// The answer as planned; and as wired, where something was found at the car.
pub(super) fn answers(
    engine: &Engine,
    channels: &Channels<Injection>,
    mapped: &mut Option<Mapped>,
    findings: &mut Findings,
) -> Vec<Answer> {
    let (Some(mode), Some(_)) = (channels.mode.value(), channels.habit.value()) else {
        return vec![open(engine, channels)];
    };
    let numbered = |habit| Layout::injection(engine, mode, habit);
    let (by_order, by_cylinder) = match (numbered(Habit::ByOrder), numbered(Habit::ByCylinder)) {
        (Ok(by_order), Ok(by_cylinder)) => (by_order, by_cylinder),
        (Err(unfit), _) | (_, Err(unfit)) => {
            return vec![unfit_answer(engine, channels, unfit, findings)];
        }
    };
    let numbering =
        Numbering { by_order: &by_order, by_cylinder: Some(&by_cylinder), used: channels.habit };
    let wiring = wired::Wiring::new(engine, &numbering, channels, wired::Mode::Injection(mode));
    *mapped = Some(wiring.mapped());
    let mut answer = planned(engine, mode, channels, &numbering, findings);
    answer.bench = taps::bench(&wiring);
    let mut answers = vec![answer];
    answers.extend(wired::answer(&wiring, findings));
    answers
}

fn titled(paths: &Paths, subject: &str, tone: Tone, verdict: Message) -> Answer {
    let mut answer = Answer::new(subject, tone, verdict);
    answer.title = Some(if *paths == SECOND {
        say!("channels.title-second")
    } else {
        say!("channels.title-injection")
    });
    answer
}

fn open(engine: &Engine, channels: &Channels<Injection>) -> Answer {
    let (verdict, why) = if channels.mode.is_missing() {
        (say!("channels.injection-open"), say!("channels.injection-open-why"))
    } else {
        (say!("channels.mend"), say!("channels.mend-why"))
    };
    let mut answer = titled(channels.paths, channels.paths.mode, Tone::Open, verdict);
    answer.why = Some(why);
    answer.to_do.extend(channels.count.value().map(|count| best(engine, count)));
    answer.tables = vec![ways(engine)];
    answer
}

fn planned(
    engine: &Engine,
    mode: Injection,
    channels: &Channels<Injection>,
    numbering: &Numbering<'_>,
    findings: &mut Findings,
) -> Answer {
    let layout = numbering.layout();
    let (needed, there) = (layout.channels(), channels.count.value());
    let mut answer = titled(channels.paths, channels.paths.mode, Tone::Good, verdict(mode, needed));
    answer.why = Some(why(mode));
    let timed = matches!(mode, Injection::EachOnce | Injection::Companions);
    answer.to_do = if timed {
        let order = plan::order_of(layout);
        vec![say!("channels.do-wire-injectors"), say!("channels.do-enter", order = order)]
    } else {
        vec![say!("channels.do-groups")]
    };
    if let Some(there) = there.filter(|&there| there < needed) {
        let advice = best(engine, there);
        let message = say!("channels.injection-short", needed = needed, there = there);
        findings.push(
            Finding::new(Severity::Fault, channels.paths.count, message).cured_by([advice.clone()]),
        );
        answer.subject = channels.paths.count.into();
        answer.verdict.tone = Tone::Bad;
        answer.verdict.message = say!("channels.verdict-short", needed = needed, there = there);
        answer.to_do = vec![advice];
    }
    answer.cautions = vec![say!("channels.caution-fuel")];
    let steps = Need::injection(engine, mode).map(|need| need.working).unwrap_or_default();
    answer.figures = plan::figures(layout, &steps, there, timed);
    answer.tables =
        if timed { vec![numbering.table(engine)] } else { vec![groups(layout, &steps)] };
    answer.tables.push(ways(engine));
    answer
}

fn verdict(mode: Injection, needed: u32) -> Message {
    match mode {
        Injection::EachOnce => say!("channels.verdict-injectors", needed = needed),
        Injection::Companions => say!("channels.verdict-injector-pairs", needed = needed),
        Injection::ByBank => say!("channels.verdict-banks", needed = needed),
        Injection::Together => say!("channels.verdict-together"),
    }
}

fn why(mode: Injection) -> Message {
    match mode {
        Injection::EachOnce => say!("channels.why-injectors"),
        Injection::Companions => say!("channels.why-injector-pairs"),
        Injection::ByBank | Injection::Together => say!("channels.why-open-valve"),
    }
}

/// Which cylinders hang on which channel, where the moment doesn't matter.
fn groups(layout: &Layout, steps: &[crate::working::Step]) -> Table {
    let row = |slot: &crate::channels::Slot| Row {
        cells: vec![slot.channel.into(), Value::text(plan::joined(&slot.targets))],
        tone: None,
    };
    Table {
        caption: say!("channels.table-groups"),
        columns: vec![say!("channels.col-channel"), say!("channels.col-cylinders")],
        rows: layout.slots().iter().map(row).collect(),
        working: steps.to_vec(),
    }
}

fn unfit_answer(
    engine: &Engine,
    channels: &Channels<Injection>,
    unfit: Unfit,
    findings: &mut Findings,
) -> Answer {
    let (paths, there) = (channels.paths, channels.count.value());
    let mut answer = match unfit {
        Unfit::NoBanks => {
            let mut answer = titled(paths, "engine.banks", Tone::Open, say!("channels.banks-open"));
            answer.why = Some(say!("channels.banks-unknown"));
            answer
        }
        Unfit::NoCompanion { .. } => {
            let advice = best_of(engine, there, &[Injection::EachOnce, Injection::Together]);
            let why = no_companion_injection(unfit);
            let finding = Finding::new(Severity::Fault, paths.mode, why.clone());
            findings.push(finding.cured_by([advice.clone()]));
            let mut answer =
                titled(paths, paths.mode, Tone::Bad, say!("channels.verdict-no-pairs"));
            answer.why = Some(why);
            answer.to_do = vec![advice];
            answer
        }
    };
    answer.tables = vec![ways(engine)];
    answer
}

fn no_companion_injection(unfit: Unfit) -> Message {
    match unfit {
        Unfit::NoCompanion { cylinder, .. } => {
            say!("channels.no-injector-companion", cylinder = cylinder)
        }
        Unfit::NoBanks => say!("channels.banks-unknown"),
    }
}

fn best(engine: &Engine, there: u32) -> Message {
    best_of(engine, Some(there), &Injection::ALL)
}

/// The best of these ways that so many channels are enough for.
fn best_of(engine: &Engine, there: Option<u32>, ways: &[Injection]) -> Message {
    let fits = |mode: &&Injection| {
        let need = Need::injection(engine, **mode);
        need.is_ok_and(|need| need.channels <= there.unwrap_or(u32::MAX))
    };
    match ways.iter().find(fits) {
        Some(Injection::EachOnce) => say!("channels.inject-each-once", n = engine.cylinders()),
        Some(Injection::Companions) => say!("channels.inject-pairs", n = engine.cylinders() / 2),
        Some(Injection::ByBank) => say!("channels.inject-banks", n = engine.banks().len()),
        Some(Injection::Together) => say!("channels.inject-together"),
        None => say!("channels.best-none", there = there.unwrap_or(0)),
    }
}

fn ways(engine: &Engine) -> Table {
    let mut working = Vec::new();
    let rows = Injection::ALL.into_iter().map(|mode| {
        let name = Value::text(way(mode).into_text());
        match Need::injection(engine, mode) {
            Ok(need) => {
                working.extend(need.working);
                let cam =
                    if need.needs_cam { say!("channels.cam-yes") } else { say!("channels.cam-no") };
                let cells = vec![name, need.channels.into(), Value::text(cam.into_text())];
                Row { cells, tone: None }
            }
            Err(Unfit::NoBanks) => {
                let cells = vec![
                    name,
                    Value::text("?"),
                    Value::text(say!("channels.banks-missing").into_text()),
                ];
                Row { cells, tone: None }
            }
            Err(Unfit::NoCompanion { .. }) => {
                let cells = vec![
                    name,
                    Value::text("–"),
                    Value::text(say!("channels.not-here").into_text()),
                ];
                Row { cells, tone: Some(Tone::Bad) }
            }
        }
    });
    let rows = rows.collect();
    Table {
        caption: say!("channels.table-injection-ways"),
        columns: vec![
            say!("channels.col-way"),
            say!("channels.col-channels"),
            say!("channels.col-cam"),
        ],
        rows,
        working,
    }
}

fn way(mode: Injection) -> Message {
    match mode {
        Injection::EachOnce => say!("channels.way-injectors"),
        Injection::Companions => say!("channels.way-injector-pairs"),
        Injection::ByBank => say!("channels.way-banks"),
        Injection::Together => say!("channels.way-together"),
    }
}
