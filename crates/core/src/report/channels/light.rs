//! The answer to a timing light: one cause, or leads that are mixed.

use super::listed;
use crate::{
    channels::{
        Effect,
        light::{self, Cause, Readings},
    },
    engine::Engine,
    finding::{Basis, Finding, Findings, Severity},
    message::Message,
    quantity::{CrankAngle, Measure, Value},
    read::Lit,
    report::{Answer, Row, Table, Tone},
    say,
};

const SUBJECT: &str = "light";

/// The answer; none where nothing of it was typed.
pub(super) fn answer(
    engine: &Engine,
    lit: Option<&Lit>,
    findings: &mut Findings,
) -> Option<Answer> {
    let lit = lit?;
    let readings = &lit.readings;
    let found = light::finding(engine, readings);
    let mut answer = match (&found, lit.advance) {
        (_, None) => open(say!("channels.light-needs-advance")),
        (light::Finding::TooFew, _) if lit.is_spoiled => open(say!("channels.light-mend")),
        (light::Finding::TooFew, _) => open(say!("channels.light-needs-two")),
        (light::Finding::Constant(error, causes), _) => {
            constant(engine, readings, *error, causes, findings)
        }
        (light::Finding::Mixed(givers), _) => mixed(givers, findings),
        (light::Finding::Scattered, _) => scattered(readings, findings),
    };
    answer.title = Some(say!("channels.light-title"));
    answer.basis = Basis::AsWired;
    answer.cautions = vec![say!("channels.light-caution")];
    if lit.advance.is_some() && !readings.seen.is_empty() {
        answer.tables = vec![table(readings)];
    }
    Some(answer)
}

fn open(why: Message) -> Answer {
    let mut answer = Answer::new(SUBJECT, Tone::Open, say!("channels.light-open"));
    answer.why = Some(why);
    answer
}

/// All are out by the same, or by nothing.
fn constant(
    engine: &Engine,
    readings: &Readings,
    error: CrankAngle,
    causes: &[Cause],
    findings: &mut Findings,
) -> Answer {
    let n = readings.seen.len();
    let size = CrankAngle::new(error.degrees().abs());
    let is_late = error.degrees() > 0.0;
    let (tone, verdict) = match causes {
        [Cause::Right] => (Tone::Good, say!("channels.light-right", n = n)),
        [Cause::Right, ..] => (Tone::Doubtful, say!("channels.light-stroke")),
        [Cause::Turn] => (Tone::Bad, say!("channels.light-turn")),
        [Cause::Sign, ..] => (Tone::Bad, say!("channels.light-sign")),
        [Cause::Edge, ..] => (Tone::Bad, say!("channels.light-edge")),
        [Cause::Teeth(teeth), ..] => {
            (Tone::Bad, say!("channels.light-teeth", n = teeth.unsigned_abs()))
        }
        [Cause::Reference(other), ..] => {
            (Tone::Bad, say!("channels.light-reference", other = *other, first = first(engine)))
        }
        _ if is_late => (Tone::Bad, say!("channels.light-late", error = size)),
        _ => (Tone::Bad, say!("channels.light-early", error = size)),
    };
    let mut answer = Answer::new(SUBJECT, tone, verdict);
    answer.why = Some(match causes {
        [Cause::Right, ..] => say!("channels.light-right-why", error = size),
        [Cause::Turn] => say!("channels.light-turn-why"),
        _ if is_late => say!("channels.light-late-why", n = n, error = size),
        _ => say!("channels.light-early-why", n = n, error = size),
    });
    answer.to_do = causes.iter().map(|it| cure(engine, *it, error)).collect();
    let is_turned = readings.stroke == Some(light::SparkStroke::Exhaust);
    let is_wrong = !matches!(causes, [Cause::Right | Cause::Turn, ..]);
    if is_wrong && is_turned && engine.cycle() != crate::engine::TURN {
        answer.to_do.push(cure(engine, Cause::Turn, error));
    }
    if is_wrong {
        let severity = Effect::of_spark(error).severity().unwrap_or(Severity::Fault);
        let message = if is_late {
            say!("channels.light-all-late", error = size)
        } else {
            say!("channels.light-all-early", error = size)
        };
        findings.push(told(severity, message, readings, &answer));
    } else if causes.first() == Some(&Cause::Turn) {
        let message = say!("channels.light-turned");
        findings.push(told(Severity::Danger, message, readings, &answer));
    }
    answer
}

fn told(severity: Severity, message: Message, readings: &Readings, answer: &Answer) -> Finding {
    Finding::new(severity, "light.advance", message)
        .as_wired()
        .cured_by(answer.to_do.iter().cloned())
        .shown_by(light::steps(readings))
}

fn first(engine: &Engine) -> u32 {
    engine.firings().first().map_or(1, |firing| firing.cylinder)
}

/// What to do about a cause, and how to tell that it is this one.
fn cure(engine: &Engine, cause: Cause, error: CrankAngle) -> Message {
    let size = CrankAngle::new(error.degrees().abs());
    match cause {
        Cause::Right => say!("channels.light-do-thumb"),
        Cause::Turn => say!("channels.light-do-turn"),
        Cause::Sign => say!("channels.light-do-sign", error = size),
        Cause::Edge => say!("channels.light-do-edge", error = size),
        Cause::Teeth(teeth) if teeth > 0 => {
            say!("channels.light-do-teeth-late", n = teeth.unsigned_abs())
        }
        Cause::Teeth(teeth) => say!("channels.light-do-teeth-early", n = teeth.unsigned_abs()),
        Cause::Reference(other) => {
            say!("channels.light-do-reference", other = other, first = first(engine), error = size)
        }
        Cause::Offset if error.degrees() > 0.0 => say!("channels.light-do-earlier", error = size),
        Cause::Offset => say!("channels.light-do-later", error = size),
    }
}

fn mixed(givers: &[(u32, Vec<u32>)], findings: &mut Findings) -> Answer {
    let mut answer = Answer::new(SUBJECT, Tone::Bad, say!("channels.light-mixed"));
    let wrong = givers.iter().filter(|(cylinder, others)| !others.contains(cylinder));
    let each = |(cylinder, others): &(u32, Vec<u32>)| {
        let others: Vec<String> = others.iter().map(u32::to_string).collect();
        format!("{cylinder} gets that of {}", others.join(" or "))
    };
    let list: Vec<String> = wrong.clone().map(each).collect();
    answer.why = Some(say!("channels.light-mixed-why", list = list.join("; ")));
    answer.to_do = vec![say!("channels.light-do-taps")];
    let cylinders = listed(wrong.map(|(cylinder, _)| *cylinder));
    let message = say!("channels.light-leads", cylinders = cylinders);
    findings.push(
        Finding::new(Severity::Danger, "light.advance", message)
            .as_wired()
            .cured_by(answer.to_do.clone()),
    );
    answer
}

fn scattered(readings: &Readings, findings: &mut Findings) -> Answer {
    let mut answer = Answer::new(SUBJECT, Tone::Bad, say!("channels.light-scattered"));
    answer.why = Some(say!("channels.light-scattered-why", tolerance = readings.tolerance));
    answer.to_do = vec![say!("channels.light-do-again"), say!("channels.light-do-angles")];
    let message = say!("channels.light-uneven");
    findings.push(told(Severity::Fault, message, readings, &answer));
    answer
}

fn table(readings: &Readings) -> Table {
    let row = |(cylinder, seen): &(u32, CrankAngle)| {
        let error = light::error(readings.advance, *seen);
        let is_off = error.degrees().abs() > readings.tolerance.degrees();
        let stands = match (is_off, error.degrees() > 0.0) {
            (false, _) => say!("channels.light-cell-right"),
            (true, true) => say!("channels.light-cell-late"),
            (true, false) => say!("channels.light-cell-early"),
        };
        Row {
            cells: vec![
                (*cylinder).into(),
                seen.show(),
                error.show(),
                Value::text(stands.into_text()),
            ],
            tone: is_off.then_some(Tone::Bad),
        }
    };
    Table {
        caption: say!("channels.light-table"),
        columns: vec![
            say!("channels.col-cylinder"),
            say!("channels.light-col-seen"),
            say!("channels.col-error"),
            say!("channels.light-col-stands"),
        ],
        rows: readings.seen.iter().map(row).collect(),
        working: light::steps(readings),
    }
}
