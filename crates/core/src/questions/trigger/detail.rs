//! What stands below the answers: the numbers of the wheel, the sensors, the offset.

use super::offset::SEEN_DEG;
use crate::{
    message::Message,
    quantity::{CrankAngle, Measure},
    questions::trigger::words,
    read::Triggered,
    report::{Detail, Figure},
    say,
    trigger::{
        hall::{Hall, InputNeeds, Levels},
        offset::{LightReading, SolvedOffset, at_once, solve, standing, to_enter},
        reluctance::Peak,
        wheel,
    },
    working::Working,
};

/// A number with the one calculation that gives it.
fn figure<Q: Measure>(label: Message, found: impl FnOnce(&mut Working) -> Q) -> Figure {
    let mut working = Working::new();
    let found = found(&mut working);
    Figure::plain(label, found.show(), working.into_steps())
}

/// Of the teeth: how fast, how slow, how far apart.
pub(super) fn of_wheel(read: &Triggered) -> Detail {
    let mut figures = Vec::new();
    at_speed(read, &mut figures);
    if let Some(slowest) = read.slowest {
        let rate = |it: &mut Working| wheel::frequency(it, read.positions, slowest.low);
        figures.push(figure(say!(words::FIGURE_SLOWEST), rate));
    }
    of_angle(read, &mut figures);
    Detail { figures, ..Detail::default() }
}

fn at_speed(read: &Triggered, figures: &mut Vec<Figure>) {
    let Some(speed) = read.highest else { return };
    let mut working = Working::new();
    let rate = wheel::frequency(&mut working, read.positions, speed);
    let mut steps = working.into_steps();
    figures.push(Figure::plain(say!(words::FIGURE_RATE), rate, steps.clone()));
    let period = |it: &mut Working| wheel::period(it, read.positions, speed);
    figures.push(figure(say!(words::FIGURE_PERIOD), period));
    if let Some(teeth) = read.cam_teeth.filter(|_| read.is_four_stroke) {
        let label = say!(words::FIGURE_CAM_RATE, edges = 2 * teeth);
        figures.push(figure(label, |it| wheel::cam_frequency(it, teeth, speed)));
    }
    if let Some(limit) = read.input.highest.filter(|limit| rate > *limit) {
        let mut working = Working::new();
        let out = wheel::speed_at(&mut working, read.positions, limit);
        steps.extend(working.into_steps());
        figures.push(Figure::plain(say!(words::FIGURE_RUNS_OUT), out, steps));
    }
}

fn of_angle(read: &Triggered, figures: &mut Vec<Figure>) {
    let mut working = Working::new();
    let pitch = wheel::pitch(&mut working, read.positions);
    figures.push(Figure::plain(say!(words::FIGURE_PITCH), pitch, working.into_steps()));
    if let Some(firing) = read.firing {
        let mut working = Working::new();
        let across = wheel::across_gap(pitch, read.missing);
        let lost = wheel::interpolation(&mut working, pitch, across, read.dip, firing);
        let label = say!(words::FIGURE_LOST);
        figures.extend(lost.map(|lost| Figure::plain(label, lost, working.into_steps())));
    }
    if let Some((tick, speed)) = read.input.tick.zip(read.highest) {
        figures.push(figure(say!(words::FIGURE_TICK), |it| wheel::turned(it, tick, speed)));
    }
}

/// Of a Hall sensor at its input.
pub(super) fn of_levels(hall: &Hall, levels: &Levels, asked: &InputNeeds) -> Detail {
    let steps = || levels.working.clone();
    let mut figures = vec![
        Figure::new(say!(words::FIGURE_LOW), levels.low, steps()),
        Figure::new(say!(words::FIGURE_HIGH), levels.high, steps()),
    ];
    if !hall.drives_up {
        figures.push(Figure::new(say!(words::FIGURE_SUNK), levels.sunk, steps()));
    }
    if let Some((time, steps)) = hall.rise(asked.high).filter(|(_, steps)| !steps.is_empty()) {
        figures.push(Figure::plain(say!(words::FIGURE_RISE), time, steps));
    }
    Detail { figures, ..Detail::default() }
}

/// Of a variable-reluctance sensor, slow and fast.
pub(super) fn of_peaks(slow: Option<&Peak>, fast: Option<&Peak>) -> Detail {
    let peaks = [(say!(words::FIGURE_PEAK_SLOW), slow), (say!(words::FIGURE_PEAK_FAST), fast)];
    let figure = |(label, peak): (Message, Option<&Peak>)| {
        peak.map(|peak| Figure::new(label, peak.at_input, peak.working.clone()))
    };
    Detail { figures: peaks.into_iter().filter_map(figure).collect(), ..Detail::default() }
}

/// Of the offset: by the timing light, and with cylinder 1 standing at top dead centre.
pub(super) fn of_offset(read: &Triggered) -> Detail {
    let mut figures = Vec::new();
    if let Some(advance) = read.advance {
        match read.readings.as_slice() {
            [one, other] => match solve(advance, *one, *other) {
                Some(solved) => two(read, &solved, &mut figures),
                None => figures.push(single(advance, *one)),
            },
            [one] => figures.push(single(advance, *one)),
            _ => {}
        }
    }
    if let Some(tooth) = read.tooth {
        let stands = |it: &mut Working| standing(it, read.positions, tooth);
        figures.push(figure(say!(words::FIGURE_STANDING), stands));
    }
    Detail { figures, ..Detail::default() }
}

fn single(advance: CrankAngle, one: LightReading) -> Figure {
    let label = say!(words::FIGURE_AT_ONCE, speed = one.speed);
    figure(label, |it| at_once(it, advance, one.seen.nominal))
}

fn two(read: &Triggered, solved: &SolvedOffset, figures: &mut Vec<Figure>) {
    let steps = || solved.working.clone();
    figures.push(Figure::new(say!(words::FIGURE_ERROR), solved.error, steps()));
    figures.push(Figure::new(say!(words::FIGURE_DELAY), solved.delay, steps()));
    let error = solved.error.nominal;
    if let Some(offset) = read.offset.filter(|_| error.degrees().abs() > SEEN_DEG) {
        figures.push(figure(say!(words::FIGURE_ENTER), |it| to_enter(it, offset, error)));
    }
}
