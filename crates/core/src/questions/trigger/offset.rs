//! Where top dead centre lies behind the first tooth.

use super::ShownByLight;
use crate::report::{Answer, Tone};
use crate::{
    channels::{Effect, PlugPosition},
    engine::EngineKind,
    fields,
    finding::{Basis, Finding, Findings, Severity},
    message::Message,
    quantity::{CrankAngle, Measure, rpm},
    questions::trigger::words,
    read::Triggered,
    say, say_of,
    trigger::offset::{LightReading, SolvedOffset, at_once, solve, standing, to_enter},
    working::Working,
};

/// What may still hide behind readings that are sure no better is too much: common practice, no source.
const SURE_DEG: f64 = 2.0;
/// Less than this no timing light shows: common practice, no source.
pub(super) const SEEN_DEG: f64 = 1.0;

/// Verdicts as they come.
type Said = Vec<(Tone, Message)>;

pub(super) fn answer(read: &Triggered, light: &ShownByLight, findings: &mut Findings) -> Answer {
    let within = light.within;
    let mut said = Said::new();
    let by_light = by_light(read, light, &mut said, findings);
    let known: Vec<_> = by_light.into_iter().chain(light.error).collect();
    let by_tooth = by_standing(read, light, &known, &mut said, findings);
    let known: Vec<_> = known.into_iter().chain(by_tooth).collect();
    by_gap(read, light, &known, &mut said, findings);
    said.extend(within.map(|within| (Tone::Good, say!(words::OFFSET_RIGHT, error = within))));
    let worst = said.into_iter().min_by_key(|(tone, _)| *tone);
    let (tone, verdict) = worst.unwrap_or_else(|| (Tone::Open, say!(words::OFFSET_OPEN)));
    let mut answer = Answer::new(fields::controller::OFFSET, tone, verdict);
    answer.title = Some(say!(words::OFFSET_TITLE));
    if tone != Tone::Open {
        answer.basis = Basis::AsWired;
    }
    answer.why = Some(say!(words::WHY_OFFSET));
    answer.to_do = read.is_halved.then(|| say!(words::DO_PAIR)).into_iter().collect();
    answer.to_do.extend([say!(words::DO_STAND), say!(words::DO_LIGHT)]);
    answer.cautions = vec![say!(words::CAUTION_LIGHT)];
    answer
}

/// An error of every spark, late above nought, and within what it is known.
type OffsetError = (CrankAngle, CrankAngle);

/// How grave it is that every spark comes so much late, or early below nought: early it kicks back and holes pistons.
fn severity(kind: EngineKind, late: CrankAngle) -> Severity {
    Effect::of_spark(kind, PlugPosition::Only, late).severity().unwrap_or(Severity::Fault)
}

/// Whether the same error is told already.
fn is_told((late, within): OffsetError, known: &[OffsetError]) -> bool {
    known.iter().any(|(told, good)| {
        let apart = (late - *told).as_error(CrankAngle::new(360.0)).degrees().abs();
        apart <= within.degrees() + good.degrees() + 1e-9
    })
}

/// From the tooth at the sensor with cylinder 1 at top dead centre; the error, where there is one.
fn by_standing(
    read: &Triggered,
    light: &ShownByLight,
    known: &[OffsetError],
    said: &mut Said,
    findings: &mut Findings,
) -> Option<OffsetError> {
    let tooth = read.tooth?;
    let mut working = Working::new();
    let stands = standing(&mut working, read.positions, tooth);
    let steps = working.into_steps();
    let Some(offset) = read.offset else {
        said.push((Tone::Open, say!(words::ENTER_FIRST, angle = stands)));
        return None;
    };
    // a tooth at the sensor is good to half a tooth
    let half = 180.0 / f64::from(read.positions.max(1));
    let apart = (stands - offset).as_error(CrankAngle::new(360.0));
    if apart.degrees().abs() > half + 1e-9 {
        said.push((Tone::Bad, say!(words::DIFFERS, stands = stands)));
        let late = CrankAngle::new(-apart.degrees());
        let found = (late, CrankAngle::new(half));
        if is_told(found, known) {
            return Some(found);
        }
        let message = say!(
            words::OFFSET_DIFFERS,
            error = CrankAngle::new(late.degrees().abs()),
            way = way_of(late),
            stands = stands,
            offset = offset,
            tooth = tooth
        );
        let cure = say!(words::CURE_COUNT, tooth = tooth, stands = stands);
        let cure = cure.done_by(vec![fields::controller::OFFSET.edit(tenths(stands))]);
        let finding = Finding::new(severity(light.kind, late), fields::controller::OFFSET, message);
        findings.push(finding.as_wired().cured_by([cure]).shown_by(steps));
        return Some(found);
    }
    if read.readings.len() < 2 && light.within.is_none() {
        said.push((Tone::Doubtful, say!(words::NEAR, half = CrankAngle::new(half))));
    }
    None
}

/// Which way the sparks are off, and what that does where it is early.
fn way_of(late: CrankAngle) -> String {
    let way = if late.degrees() < 0.0 { words::EARLY } else { words::LATE_WAY };
    say_of!(way).into_text()
}

/// As it is typed, to a tenth of a degree.
fn tenths(angle: CrankAngle) -> String {
    crate::math::shortest((angle.degrees() * 10.0).round() / 10.0) + " deg"
}

/// From the angle that was measured behind the gap: the same angle as the offset.
fn by_gap(
    read: &Triggered,
    light: &ShownByLight,
    known: &[OffsetError],
    said: &mut Said,
    findings: &mut Findings,
) {
    let Some((stands, offset)) = read.gap_angle.zip(read.offset) else { return };
    let apart = (stands - offset).as_error(CrankAngle::new(360.0));
    if apart.degrees().abs() <= read.tolerance.degrees() {
        return;
    }
    said.push((Tone::Bad, say!(words::DIFFERS, stands = stands)));
    let late = CrankAngle::new(-apart.degrees());
    if is_told((late, read.tolerance), known) {
        return;
    }
    let error = CrankAngle::new(late.degrees().abs());
    let (way, severity) = (way_of(late), severity(light.kind, late));
    let message =
        say!(words::GAP_DIFFERS, error = error, way = way, stands = stands, offset = offset);
    findings.push(Finding::new(severity, fields::controller::OFFSET, message).as_wired());
}

/// From the timing light at two speeds; the error, where there is one.
fn by_light(
    read: &Triggered,
    light: &ShownByLight,
    said: &mut Said,
    findings: &mut Findings,
) -> Option<OffsetError> {
    let advance = read.advance?;
    match read.readings.as_slice() {
        [one, other] => {
            if let Some(solved) = solve(advance, *one, *other) {
                return two(read, light, &solved, said, findings);
            }
            let message = say!(words::SAME_SPEED, speed = one.speed);
            findings.push(Finding::new(Severity::Doubt, fields::trigger::SPEED_HIGH, message));
            single(advance, *one, said);
        }
        [one] => single(advance, *one, said),
        _ => {}
    }
    None
}

fn single(advance: CrankAngle, one: LightReading, said: &mut Said) {
    let mut working = Working::new();
    let error = at_once(&mut working, advance, one.seen.nominal);
    let size = CrankAngle::new(error.degrees().abs());
    said.push((
        Tone::Doubtful,
        say!(words::OUT_AT, error = size, way = way(error.degrees() > 0.0), speed = one.speed),
    ));
}

/// What is wrong with the offset, with the number to enter; the readings belong to the offset that was there.
fn wrong(
    offset: Option<CrankAngle>,
    error: CrankAngle,
    tone: Tone,
    said: &mut Said,
) -> (Message, Option<Message>) {
    let size = CrankAngle::new(error.degrees().abs());
    let is_early = error.degrees() > 0.0;
    let Some(offset) = offset else {
        let change = if is_early { "larger" } else { "smaller" };
        said.push((tone, say!(words::ADD, error = size, change = change)));
        let (way, example) = (way(is_early), CrankAngle::new(90.0) + error);
        return (
            say!(
                words::OFFSET_WRONG_BLANK,
                error = size,
                way = way,
                change = change,
                example = example
            ),
            None,
        );
    };
    let enter = to_enter(&mut Working::new(), offset, error);
    said.push((tone, say!(words::ENTER, angle = enter)));
    let again = [fields::trigger::SEEN_LOW, fields::trigger::SEEN_HIGH].map(|key| key.edit(""));
    let speeds = [fields::trigger::SPEED_LOW, fields::trigger::SPEED_HIGH].map(|key| key.edit(""));
    let edits =
        [fields::controller::OFFSET.edit(tenths(enter))].into_iter().chain(again).chain(speeds);
    let cure = say!(words::CURE_OFFSET, enter = enter, offset = offset).done_by(edits.collect());
    let way = way(is_early);
    (say!(words::OFFSET_WRONG, error = size, way = way, enter = enter, offset = offset), Some(cure))
}

fn way(is_early: bool) -> &'static str {
    if is_early { "too early" } else { "too late" }
}

fn two(
    read: &Triggered,
    light: &ShownByLight,
    solved: &SolvedOffset,
    said: &mut Said,
    findings: &mut Findings,
) -> Option<OffsetError> {
    let error = solved.error.nominal;
    let steps = || solved.working.clone();
    // readings that may as well come of no error at all don't prove one
    let is_sure = solved.error.low.degrees() > 0.0 || solved.error.high.degrees() < 0.0;
    let late = CrankAngle::new(-error.degrees());
    // within what a mark is read it is a start, and no broken piston
    let is_much = error.degrees().abs() > read.tolerance.degrees();
    let (severity, tone) = match (is_sure, is_much) {
        (true, true) => (severity(light.kind, late), Tone::Bad),
        (true, false) => (Severity::Fault, Tone::Bad),
        (false, _) => (Severity::Doubt, Tone::Doubtful),
    };
    let within = solved.error.low.degrees().abs().max(solved.error.high.degrees().abs());
    let within = CrankAngle::new(within);
    let mut found = None;
    if error.degrees().abs() > SEEN_DEG {
        found = Some((late, read.tolerance));
        let (message, cure) = wrong(read.offset, error, tone, said);
        let finding = Finding::new(severity, fields::controller::OFFSET, message);
        findings.push(finding.as_wired().cured_by(cure).shown_by(steps()));
    } else {
        let is_close = within.degrees() <= SURE_DEG;
        let tone = if is_close { Tone::Good } else { Tone::Doubtful };
        said.push((tone, say!(words::OFFSET_RIGHT, error = within)));
    }
    let speeds = read.readings.iter().map(|it| it.speed.base());
    let highest = speeds.fold(0.0, f64::max);
    let late = CrankAngle::new(6.0 * highest * solved.delay.nominal.base());
    // what each of the two readings may be off by proves no delay
    if late.degrees().abs() <= read.tolerance.degrees().max(SEEN_DEG) {
        return found;
    }
    let speed = rpm(highest);
    let message = if late.degrees() > 0.0 {
        said.push((Tone::Doubtful, say!(words::LATE, delay = solved.delay.nominal)));
        say!(words::DELAYED, delay = solved.delay.nominal, late = late, speed = speed)
    } else {
        said.push((Tone::Doubtful, say!(words::GAINS, speed = speed)));
        let gained = CrankAngle::new(-late.degrees());
        say!(words::GAINED, gained = gained, speed = speed)
    };
    findings.push(
        Finding::new(Severity::Doubt, fields::trigger::SEEN_HIGH, message)
            .as_wired()
            .shown_by(steps()),
    );
    found
}
