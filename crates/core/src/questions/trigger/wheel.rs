//! Do the teeth come in time, and do they tell where the engine is?

use crate::report::{Answer, Tone};
use crate::{
    fields,
    finding::{Finding, Findings, Severity},
    message::Message,
    quantity::{CrankAngle, Frequency, Measure, RotationalSpeed},
    questions::trigger::words,
    read::Triggered,
    say,
    trigger::{offset, wheel},
    working::Working,
};

/// A step of time that is more of the crank than this is coarse: common practice, no source.
const COARSE_DEG: f64 = 0.5;
/// What more is lost between teeth while cranking is much: common practice, no source.
const MUCH_DEG: f64 = 10.0;

/// Whether nothing on the wheels ever tells where the engine is: one tooth does, and a gap.
fn is_lost(read: &Triggered) -> bool {
    read.missing == 0 && read.positions > 1 && !read.has_cam
}

pub(super) fn answer(read: &Triggered, findings: &mut Findings) -> Answer {
    let mut said = Vec::new();
    if is_lost(read) {
        let message = say!(words::NO_POSITION, positions = read.positions);
        findings.push(Finding::new(Severity::Fault, fields::wheels::MISSING, message));
        said.push((Tone::Bad, say!(words::LOST)));
    }
    said.extend(too_fast(read, findings));
    said.extend(too_slow(read, findings));
    of_angle(read, findings);
    // the worst comes first; of those alike, the first
    let (tone, verdict) = said
        .iter()
        .min_by_key(|(tone, _)| *tone)
        .cloned()
        .unwrap_or_else(|| (Tone::Open, say!(words::NO_SPEED)));
    let mut answer = Answer::new("trigger", tone, verdict);
    answer.title = Some(say!(words::WHEEL_TITLE));
    answer.why = Some(why(read));
    answer.to_do = to_do(read);
    answer
}

fn why(read: &Triggered) -> Message {
    let (positions, missing) = (read.positions, read.missing);
    if is_lost(read) {
        return say!(words::WHY_LOST, positions = positions);
    }
    if missing > 0 && !read.has_cam && read.is_four_stroke {
        return say!(words::WHY_GAP, positions = positions, missing = missing);
    }
    if read.has_cam {
        return say!(words::WHY_CAM, positions = positions, missing = missing);
    }
    say!(words::WHY_PLAIN, positions = positions, missing = missing)
}

fn to_do(read: &Triggered) -> Vec<Message> {
    let mut to_do = Vec::new();
    if read.highest.is_none() {
        to_do.push(say!(words::DO_SPEED));
    }
    if read.input.highest.is_none() {
        to_do.push(say!(words::DO_LIMIT));
    }
    if is_lost(read) {
        to_do.push(say!(words::DO_GAP));
    }
    if read.slowest.is_none() {
        to_do.push(say!(words::DO_CRANKING));
    }
    to_do
}

/// The rate of teeth at the highest speed.
fn too_fast(read: &Triggered, findings: &mut Findings) -> Option<(Tone, Message)> {
    let speed = read.highest?;
    let mut working = Working::new();
    let rate = wheel::frequency(&mut working, read.positions, speed);
    let steps = working.into_steps();
    let Some(limit) = read.input.highest else {
        return Some((Tone::Open, say!(words::RATE_IS, rate = rate)));
    };
    if rate <= limit {
        if let Some(teeth) = read.cam_teeth.filter(|_| read.is_four_stroke) {
            let of_cam = cam_too_fast(teeth, limit, speed, findings);
            return of_cam
                .or(Some((Tone::Good, say!(words::FAST_ENOUGH, rate = rate, limit = limit))));
        }
        return Some((Tone::Good, say!(words::FAST_ENOUGH, rate = rate, limit = limit)));
    }
    let mut working = Working::new();
    let out = wheel::speed_at(&mut working, read.positions, limit);
    let steps: Vec<_> = steps.into_iter().chain(working.into_steps()).collect();
    let message = say!(words::TOO_FAST, rate = rate, speed = speed, limit = limit, out = out);
    let most = wheel::most_positions(limit, speed);
    let cure = most.map(|most| say!(words::CURE_TEETH, most = most));
    let subject = fields::trigger_input::HIGHEST_FREQUENCY;
    findings.push(Finding::new(Severity::Fault, subject, message).cured_by(cure).shown_by(steps));
    Some((Tone::Bad, say!(words::FAST_FROM, speed = out)))
}

/// The cam's teeth at the highest speed, where the crank's are in time.
fn cam_too_fast(
    teeth: u32,
    limit: Frequency,
    speed: RotationalSpeed,
    findings: &mut Findings,
) -> Option<(Tone, Message)> {
    let mut working = Working::new();
    let rate = wheel::cam_frequency(&mut working, teeth, speed);
    if rate <= limit {
        return None;
    }
    let out = wheel::cam_speed_at(&mut working, teeth, limit);
    let message = say!(words::TOO_FAST, rate = rate, speed = speed, limit = limit, out = out);
    let subject = fields::trigger_input::HIGHEST_FREQUENCY;
    let finding = Finding::new(Severity::Fault, subject, message);
    findings.push(finding.shown_by(working.into_steps()));
    Some((Tone::Bad, say!(words::FAST_FROM, speed = out)))
}

/// The rate of teeth at the slowest instant of cranking, on crank and cam.
fn too_slow(read: &Triggered, findings: &mut Findings) -> Option<(Tone, Message)> {
    let slowest: RotationalSpeed = read.slowest?.low;
    let mut working = Working::new();
    let rate = wheel::frequency(&mut working, read.positions, slowest);
    let mut all = vec![("crank", rate, working.into_steps())];
    if let Some(teeth) = read.cam_teeth.filter(|_| read.is_four_stroke) {
        let mut working = Working::new();
        let rate = wheel::cam_frequency(&mut working, teeth, slowest);
        all.push(("cam", rate, working.into_steps()));
    }
    let limit = read.input.lowest?;
    let (wheel, rate, steps) = all.into_iter().find(|(_, rate, _)| *rate < limit)?;
    let message = say!(words::TOO_SLOW, wheel = wheel, rate = rate, speed = slowest, limit = limit);
    let subject = fields::trigger_input::LOWEST_FREQUENCY;
    findings.push(Finding::new(Severity::Fault, subject, message).shown_by(steps));
    Some((Tone::Bad, say!(words::SLOW, wheel = wheel)))
}

/// So much advance an engine is given while it is cranked: common practice, no source.
const CRANKING_ADVANCE_DEG: f64 = 20.0;

/// Whether a spark of cranking may fall into the gap, or so close behind it that the time over the gap is what it is reckoned
/// from.
fn is_fired_at_gap(
    read: &Triggered,
    pitch: CrankAngle,
    across: CrankAngle,
    gap_angle: CrankAngle,
) -> bool {
    let gap_angle = gap_angle.degrees();
    let (begins, ends) = (-gap_angle - across.degrees(), pitch.degrees() - gap_angle);
    let advance = read.advance.map_or(0.0, CrankAngle::degrees).max(CRANKING_ADVANCE_DEG);
    read.tops.iter().map(|it| it.degrees()).any(|top| {
        [-1080.0, -720.0, -360.0, 0.0, 360.0].into_iter().any(|turns| {
            let top = top + turns;
            begins.max(top - advance) < ends.min(top)
        })
    })
}

/// Where the gap is: measured, or as the offset or the tooth at top dead centre says.
fn gap_angle(read: &Triggered) -> Option<CrankAngle> {
    let by_tooth = || Some(offset::standing(&mut Working::new(), read.positions, read.tooth?));
    read.gap_angle.or(read.offset).or_else(by_tooth)
}

/// What is lost over the gap, where a spark may fall there.
fn lost(read: &Triggered, lost: CrankAngle, across: CrankAngle) -> Option<Finding> {
    let pitch = wheel::pitch(&mut Working::new(), read.positions);
    let Some(gap_angle) = gap_angle(read) else {
        let message = say!(words::GAP_UNKNOWN, lost = lost, interval = across);
        let finding = Finding::new(Severity::Doubt, fields::trigger::TOOTH, message);
        return Some(finding.cured_by([say!(words::DO_COUNT)]));
    };
    is_fired_at_gap(read, pitch, across, gap_angle).then(|| {
        let message = say!(words::LOSES, lost = lost, interval = across);
        Finding::new(Severity::Doubt, fields::wheels::CRANK_TEETH, message)
    })
}

/// What a step of time is in degrees, and what is lost between teeth.
fn of_angle(read: &Triggered, findings: &mut Findings) {
    let mut working = Working::new();
    let pitch = wheel::pitch(&mut working, read.positions);
    let steps = working.into_steps();
    let across = wheel::across_gap(pitch, read.missing);
    if let Some(firing) = read.firing {
        let mut working = Working::new();
        match wheel::interpolation(&mut working, pitch, across, read.dip, firing) {
            Some(much) if much.degrees() > MUCH_DEG => {
                findings.extend(lost(read, much, across).map(|it| it.shown_by(steps)));
            }
            Some(_) => {}
            None => findings.push(
                Finding::new(
                    Severity::Doubt,
                    fields::wheels::CRANK_TEETH,
                    say!(words::FEW_TEETH, interval = across, firing = firing),
                )
                .shown_by(steps),
            ),
        }
    }
    if let Some((tick, speed)) = read.input.tick.zip(read.highest) {
        let mut working = Working::new();
        let turned = wheel::turned(&mut working, tick, speed);
        let steps = working.into_steps();
        if turned.degrees() > COARSE_DEG {
            let message = say!(words::COARSE, tick = tick.show(), speed = speed, turned = turned);
            let finding = Finding::new(Severity::Doubt, fields::trigger_input::TICK, message);
            findings.push(finding.shown_by(steps));
        }
    }
}
