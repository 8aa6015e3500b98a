//! The answer to a timing light: one cause, or leads that are mixed.

use super::{Details, listed};
use crate::{
    channels::{
        Effect, Ignition, PlugPosition,
        light::{self, Cause, Readings},
    },
    engine::{Engine, EngineKind},
    fields,
    finding::{Basis, Finding, Findings, Severity},
    message::Message,
    quantity::{CrankAngle, Measure, Value},
    questions::firing::{read::ChannelsOf, words},
    report::{Answer, Detail, Row, Table, Tone},
    say,
};

const SUBJECT: &str = "light";

/// The answer; none where nothing of it was typed.
pub(super) fn answer(
    engine: &Engine,
    read: &ChannelsOf,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Option<Answer> {
    let lit = read.light.as_ref()?;
    let readings = &lit.readings;
    let mut found = light::finding(engine, readings);
    // sparks that come every turn have no stroke to be proved
    let mode = read.ignition.mode.value();
    if mode.is_some_and(|it| it.is_paired() || it == Ignition::EveryTurn)
        && let light::LightFinding::Constant(_, causes) = &mut found
        && causes.len() > 1
    {
        causes.retain(|it| *it != Cause::Turn);
    }
    let mut answer = match (&found, lit.advance) {
        (_, None) => open(say!(words::light::LIGHT_NEEDS_ADVANCE)),
        (light::LightFinding::TooFew, _) if lit.is_spoiled => open(say!(words::light::LIGHT_MEND)),
        (light::LightFinding::TooFew, _) => open(say!(words::light::LIGHT_NEEDS_TWO)),
        (light::LightFinding::Constant(error, causes), _) => {
            constant(engine, readings, *error, causes, findings)
        }
        (light::LightFinding::Mixed(givers), _) => mixed(givers, findings),
        (light::LightFinding::FiredEvenly(_), _) => {
            let order = engine.firings().iter().map(|it| it.angle.show().shown.replace('°', ""));
            let angles = order.collect::<Vec<_>>().join(" ");
            spaced(
                engine,
                readings,
                say!(words::light::LIGHT_FIRED_EVENLY, angles = angles),
                findings,
            )
        }
        (light::LightFinding::Alternating(more), _) => {
            let more = CrankAngle::new(more.degrees().abs());
            spaced(engine, readings, say!(words::light::LIGHT_ALTERNATING, more = more), findings)
        }
        (light::LightFinding::Scattered, _) => scattered(readings, findings),
    };
    answer.title = Some(say!(words::light::LIGHT_TITLE));
    answer.basis = Basis::AsWired;
    answer.cautions = vec![say!(words::light::LIGHT_CAUTION)];
    if lit.advance.is_some() && !readings.seen.is_empty() {
        answer.show(details.map(|it| (it.light)(readings)));
    }
    Some(answer)
}

/// Whether it proves which coil each channel fires: all were read and are right, and no two could be swapped unseen.
pub(super) fn proves_coils(engine: &Engine, read: &ChannelsOf) -> bool {
    let comes_every_turn =
        read.ignition.mode.value().is_some_and(|it| it.is_paired() || it == Ignition::EveryTurn);
    engine.kind() != EngineKind::Rotary
        && (comes_every_turn || light::tells_apart(engine))
        && read.lit().is_some_and(|it| light::is_right_on_all(engine, it))
}

/// Cylinder by cylinder.
pub(super) fn detail(readings: &Readings) -> Detail {
    Detail { tables: vec![table(readings)], ..Detail::default() }
}

fn open(why: Message) -> Answer {
    let mut answer = Answer::new(SUBJECT, Tone::Open, say!(words::light::LIGHT_OPEN));
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
        [Cause::Right] => (Tone::Good, say!(words::light::LIGHT_RIGHT, n = n)),
        [Cause::Right, ..] => (Tone::Doubtful, say!(words::light::LIGHT_STROKE)),
        [Cause::Turn] => (Tone::Bad, say!(words::light::LIGHT_TURN)),
        [Cause::Sign, ..] => (Tone::Bad, say!(words::light::LIGHT_SIGN)),
        [Cause::Edge, ..] => (Tone::Bad, say!(words::light::LIGHT_EDGE)),
        [Cause::Teeth(teeth), ..] => {
            (Tone::Bad, say!(words::light::LIGHT_TEETH, n = teeth.unsigned_abs()))
        }
        [Cause::Reference(other), ..] => {
            (Tone::Bad, say!(words::light::LIGHT_REFERENCE, other = *other, first = first(engine)))
        }
        _ if is_late => (Tone::Bad, say!(words::light::LIGHT_LATE, error = size)),
        _ => (Tone::Bad, say!(words::light::LIGHT_EARLY, error = size)),
    };
    let mut answer = Answer::new(SUBJECT, tone, verdict);
    answer.why = Some(match causes {
        [Cause::Right] => say!(words::light::LIGHT_RIGHT_ALONE_WHY, error = size),
        [Cause::Right, ..] => say!(words::light::LIGHT_RIGHT_WHY, error = size),
        [Cause::Turn] => say!(words::light::LIGHT_TURN_WHY),
        _ if is_late => say!(words::light::LIGHT_LATE_WHY, n = n, error = size),
        _ => say!(words::light::LIGHT_EARLY_WHY, n = n, error = size),
    });
    // with no stroke in question there is none to prove
    if !matches!(causes, [Cause::Right]) {
        answer.to_do = causes.iter().map(|it| cure(engine, *it, error)).collect();
    }
    let is_turned = readings.stroke == Some(light::SparkStroke::Exhaust);
    let is_wrong = !matches!(causes, [Cause::Right | Cause::Turn, ..]);
    if is_wrong && is_turned && engine.cycle() != crate::engine::TURN {
        answer.to_do.push(cure(engine, Cause::Turn, error));
    }
    if is_wrong {
        let severity = Effect::of_spark(engine.kind(), PlugPosition::Only, error)
            .severity()
            .unwrap_or(Severity::Fault);
        let message = if is_late {
            say!(words::light::LIGHT_ALL_LATE, error = size)
        } else {
            say!(words::light::LIGHT_ALL_EARLY, error = size)
        };
        findings.push(told(severity, message, readings, &answer));
    } else if causes.first() == Some(&Cause::Turn) {
        let message = say!(words::light::LIGHT_TURNED);
        findings.push(told(Severity::Danger, message, readings, &answer));
    }
    answer
}

fn told(severity: Severity, message: Message, readings: &Readings, answer: &Answer) -> Finding {
    Finding::new(severity, fields::controller::LOCKED_ADVANCE, message)
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
        Cause::Right => say!(words::light::LIGHT_DO_THUMB),
        Cause::Turn => say!(words::light::LIGHT_DO_TURN),
        Cause::Sign => say!(words::light::LIGHT_DO_SIGN, error = size),
        Cause::Edge => say!(words::light::LIGHT_DO_EDGE, error = size),
        Cause::Teeth(teeth) if teeth > 0 => {
            say!(words::light::LIGHT_DO_TEETH_LATE, n = teeth.unsigned_abs())
        }
        Cause::Teeth(teeth) => say!(words::light::LIGHT_DO_TEETH_EARLY, n = teeth.unsigned_abs()),
        Cause::Reference(other) => {
            say!(
                words::light::LIGHT_DO_REFERENCE,
                other = other,
                first = first(engine),
                error = size
            )
        }
        Cause::Offset if error.degrees() > 0.0 => {
            say!(words::light::LIGHT_DO_EARLIER, error = size)
        }
        Cause::Offset => say!(words::light::LIGHT_DO_LATER, error = size),
    }
}

fn mixed(givers: &[(u32, Vec<u32>)], findings: &mut Findings) -> Answer {
    let mut answer = Answer::new(SUBJECT, Tone::Bad, say!(words::light::LIGHT_MIXED));
    let wrong = givers.iter().filter(|(cylinder, others)| !others.contains(cylinder));
    let each = |(cylinder, others): &(u32, Vec<u32>)| {
        let others: Vec<String> = others.iter().map(u32::to_string).collect();
        format!("{cylinder} gets the spark of {}", others.join(" or "))
    };
    let list: Vec<String> = wrong.clone().map(each).collect();
    answer.why = Some(say!(words::light::LIGHT_MIXED_WHY, list = list.join("; ")));
    answer.to_do = vec![say!(words::light::LIGHT_DO_TAPS)];
    let cylinders = listed(wrong.map(|(cylinder, _)| *cylinder));
    let message = say!(words::light::LIGHT_LEADS, cylinders = cylinders);
    findings.push(
        Finding::new(Severity::Danger, fields::controller::LOCKED_ADVANCE, message)
            .as_wired()
            .cured_by(answer.to_do.clone()),
    );
    answer
}

/// The spacing in the controller is not the engine's.
fn spaced(engine: &Engine, readings: &Readings, cure: Message, findings: &mut Findings) -> Answer {
    let mut answer = Answer::new(SUBJECT, Tone::Bad, say!(words::light::LIGHT_SPACING));
    answer.why = Some(say!(words::light::LIGHT_SPACING_WHY));
    answer.to_do = vec![cure];
    let message = say!(words::light::LIGHT_SPACED);
    let errors = readings.seen.iter().map(|(_, seen)| light::error(readings.advance, *seen));
    let errors = errors.filter(|it| it.degrees().abs() > readings.tolerance.degrees());
    let of = |error| Effect::of_spark(engine.kind(), PlugPosition::Only, error).severity();
    let worst = errors.filter_map(of).min().unwrap_or(Severity::Fault);
    findings.push(told(worst, message, readings, &answer));
    answer
}

fn scattered(readings: &Readings, findings: &mut Findings) -> Answer {
    let mut answer = Answer::new(SUBJECT, Tone::Bad, say!(words::light::LIGHT_SCATTERED));
    answer.why = Some(say!(words::light::LIGHT_SCATTERED_WHY, tolerance = readings.tolerance));
    answer.to_do = vec![say!(words::light::LIGHT_DO_AGAIN), say!(words::light::LIGHT_DO_ANGLES)];
    let message = say!(words::light::LIGHT_UNEVEN);
    findings.push(told(Severity::Fault, message, readings, &answer));
    answer
}

fn table(readings: &Readings) -> Table {
    let row = |(cylinder, seen): &(u32, CrankAngle)| {
        let error = light::error(readings.advance, *seen);
        let is_off = error.degrees().abs() > readings.tolerance.degrees();
        let stands = match (is_off, error.degrees() > 0.0) {
            (false, _) => say!(words::light::LIGHT_CELL_RIGHT),
            (true, true) => say!(words::light::LIGHT_CELL_LATE),
            (true, false) => say!(words::light::LIGHT_CELL_EARLY),
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
        caption: say!(words::light::LIGHT_TABLE),
        columns: vec![
            say!(words::COL_CYLINDER),
            say!(words::light::LIGHT_COL_SEEN),
            say!(words::wired::COL_ERROR),
            say!(words::light::LIGHT_COL_STANDS),
        ],
        rows: readings.seen.iter().map(row).collect(),
        working: light::steps(readings),
    }
}
