//! The numbers of the answer, each made together with its working.

use super::{CrankingInputs, StartCorner, StopAnswer, survey::Survey};
use crate::{
    quantity::{Band, CrankAngle, Measure, RotationalSpeed, Time, Value, rpm, seconds},
    timeline::Interval,
    working::{Formula, Step, Working, step},
};

const SLOWEST: Formula = Formula {
    symbols: "n_min = n · (1 − d)",
    source: "the dip as a share of the mean, measured down from it",
};
const READING: Formula = Formula {
    symbols: "n_read = α / (6 · t)",
    source: "one turn is 360°, one minute 60 s: 1 rpm is 6° a second; t from the simulated speed",
};
const TOOTH: Formula = Formula {
    symbols: "t_tooth = 60 s / (n_min · z)",
    source: "f = n · z / 60: z positions pass in each turn",
};
const GAP: Formula = Formula {
    symbols: "t_gap = (m + 1) · t_tooth",
    source: "from the last tooth before the gap to the first after it are m + 1 positions",
};
const POWER: Formula = Formula {
    symbols: "t_power = t_confirmed + t_pull",
    source: "t_confirmed from the simulated readings, from the start that confirms last",
};
const TURNED: Formula = Formula {
    symbols: "turns = α / 360°",
    source: "α is the simulated speed, summed up to the closing of the contact",
};
const SPARK: Formula = Formula {
    symbols: "t_spark = t_sync + t_next",
    source: "simulated: the first tooth that tells the position, then the next firing TDC",
};
const MARGIN: Formula = Formula {
    symbols: "t_margin = t_spark − t_dwell − t_power",
    source: "simulated from every start; the least of them, and both times from that same start",
};
const STOPPED: Formula = Formula {
    symbols: "t_on = t_off − t_rest",
    source: "the speed falls evenly from idle: common practice, no source; t_off from the simulated readings",
};
const LOW_ROCKING: Formula = Formula {
    symbols: "n_low = n_rock",
    source: "an engine that rocks at standstill must not close the relay; common practice, no source",
};
const LOW_RELEASE: Formula =
    Formula { symbols: "n_low = n_off", source: "the release must not lie above the threshold" };
const LOW_UNSTEADY: Formula = Formula {
    symbols: "n_low = n_steady",
    source: "simulated: up to here the relay closes early in the run-up and opens again in the next dip",
};
const HIGH_READING: Formula = Formula {
    symbols: "n_high = n_read",
    source: "every reading while cranking must meet the threshold, or the relay waits for a crest",
};
const HIGH_UNSTEADY: Formula = Formula {
    symbols: "n_high = n_steady",
    source: "simulated: above this the relay closes in the run-up and opens again in a dip",
};
const PROMPT: Formula = Formula {
    symbols: "n_prompt = n_confirmed",
    source: "simulated: the highest threshold confirmed a pull-in time and a dwell before the first spark from every start",
};

/// A number over the corners, with the working of its nominal value and of its worst.
#[derive(Clone, Debug, PartialEq)]
pub struct Figured<Q> {
    /// The nominal corner's value, and the ends over all corners.
    pub band: Band<Q>,
    /// How it was found.
    pub working: Vec<Step>,
}

/// The numbers of the answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Figures {
    /// Slowest true speed at full cranking speed.
    pub slowest: Figured<RotationalSpeed>,
    /// Slowest reading at full cranking speed.
    pub slowest_reading: Figured<RotationalSpeed>,
    /// Time from tooth to tooth at the slowest speed.
    pub tooth_time: Figured<Time>,
    /// Time across the gap at the slowest speed; none without a gap.
    pub gap_time: Option<Figured<Time>>,
    /// When the contact closes, from the start that closes it last.
    pub power: Option<Figured<Time>>,
    /// Crank degrees until then, from the same start.
    pub turned: Option<Figured<CrankAngle>>,
    /// When the first spark can come: the best start's at the nominal corner, and the ends over all starts.
    pub spark: Option<Figured<Time>>,
    /// From power and dwell to the first spark, from the worst start.
    pub margin: Option<Figured<Time>>,
    /// How long power rests on an engine that stands.
    pub on_at_rest: Option<Figured<Time>>,
    /// What bounds the thresholds that work: low end, then high end.
    pub works: Vec<Step>,
    /// What bounds those that lose no spark.
    pub prompt: Vec<Step>,
}

pub(super) fn figures(
    inputs: &CrankingInputs,
    survey: &Survey,
    stop: Option<&StopAnswer>,
) -> Figures {
    let corners = &survey.corners;
    let tooth_time = over(corners, |it, working| Some(tooth_time(inputs, it, working)));
    let none = Figured { band: Band::exact(rpm(0.0)), working: Vec::new() };
    Figures {
        slowest: over(corners, |it, working| Some(slowest(it, working))).unwrap_or(none.clone()),
        slowest_reading: over(corners, |it, working| Some(slowest_reading(inputs, it, working)))
            .unwrap_or(none),
        tooth_time: tooth_time
            .unwrap_or(Figured { band: Band::exact(seconds(0.0)), working: Vec::new() }),
        gap_time: (inputs.wheel.missing > 0)
            .then(|| over(corners, |it, working| Some(gap_time(inputs, it, working))))
            .flatten(),
        power: over_all(corners, |it, working| power(inputs, it, working)),
        turned: over_all(corners, turned),
        spark: spark(corners),
        margin: over_all(corners, |it, working| margin(inputs, it, working)),
        on_at_rest: stop.map(on_at_rest),
        works: works(inputs, survey),
        prompt: prompt(inputs, survey),
    }
}

/// A number over the corners that have it: the nominal one's first, then the lowest and highest with the working
/// of whichever is not the nominal one.
fn over<Q: Measure>(
    corners: &[StartCorner],
    of: impl Fn(&StartCorner, &mut Working) -> Option<Q>,
) -> Option<Figured<Q>> {
    let worked = |corner: &StartCorner| {
        let mut working = Working::new();
        of(corner, &mut working).map(|value| (value, working.into_steps()))
    };
    let mut all = corners.iter().filter_map(worked);
    let (nominal, mut working) = all.next()?;
    let (mut low, mut high) = ((nominal, Vec::new()), (nominal, Vec::new()));
    for one in all {
        if one.0.base() < low.0.base() {
            low = one;
        } else if one.0.base() > high.0.base() {
            high = one;
        }
    }
    let band = Band { low: low.0, nominal, high: high.0 };
    for steps in [low.1, high.1] {
        working.extend(steps);
    }
    Some(Figured { band, working })
}

/// The same, only where every corner has it.
fn over_all<Q: Measure>(
    corners: &[StartCorner],
    of: impl Fn(&StartCorner, &mut Working) -> Option<Q>,
) -> Option<Figured<Q>> {
    let have = |corner: &StartCorner| of(corner, &mut Working::new()).is_some();
    corners.iter().all(have).then(|| over(corners, of)).flatten()
}

fn slowest(corner: &StartCorner, working: &mut Working) -> RotationalSpeed {
    let dip = crate::quantity::share(corner.values.dip);
    working.step(&SLOWEST, &[("n", corner.mean.show()), ("d", dip.show())], corner.slowest)
}

fn slowest_reading(
    inputs: &CrankingInputs,
    corner: &StartCorner,
    working: &mut Working,
) -> RotationalSpeed {
    let pitch_deg = 360.0 / f64::from(inputs.wheel.positions.max(1));
    let degrees = CrankAngle::new(pitch_deg * f64::from(inputs.averaging.max(1)));
    let time = seconds(degrees.degrees() / 6.0 / corner.slowest_reading.base());
    working.step(&READING, &[("α", degrees.show()), ("t", time.show())], corner.slowest_reading)
}

fn tooth_time(inputs: &CrankingInputs, corner: &StartCorner, working: &mut Working) -> Time {
    let positions = inputs.wheel.positions.max(1);
    let time = tooth_time_at(corner.slowest, positions);
    let values = [("n_min", corner.slowest.show()), ("z", positions.into())];
    working.step(&TOOTH, &values, time)
}

/// Time from tooth to tooth: `t = 60 / (n z)`.
pub(super) fn tooth_time_at(speed: RotationalSpeed, positions: u32) -> Time {
    seconds(60.0 / (speed.base() * f64::from(positions)))
}

fn gap_time(inputs: &CrankingInputs, corner: &StartCorner, working: &mut Working) -> Time {
    let tooth = tooth_time_at(corner.slowest, inputs.wheel.positions.max(1));
    let values = [("m", inputs.wheel.missing.into()), ("t_tooth", tooth.show())];
    working.step(&GAP, &values, tooth * f64::from(inputs.wheel.missing + 1))
}

fn power(inputs: &CrankingInputs, corner: &StartCorner, working: &mut Working) -> Option<Time> {
    let latest = corner.latest.filter(|_| corner.closes)?;
    let values = [
        ("t_confirmed", latest.confirmed.show()),
        ("t_pull", inputs.relay.pull_in_time.high.show()),
    ];
    Some(working.step(&POWER, &values, latest.closed))
}

fn turned(corner: &StartCorner, working: &mut Working) -> Option<CrankAngle> {
    let latest = corner.latest.filter(|_| corner.closes)?;
    let turns = Value::text(crate::quantity::number(latest.turned.degrees() / 360.0));
    working.record(&TURNED, &[("α", latest.turned.show())], turns);
    Some(latest.turned)
}

fn spark(corners: &[StartCorner]) -> Option<Figured<Time>> {
    let earliest = |corner: &StartCorner, working: &mut Working| {
        let best = corner.best_spark?;
        let next = seconds(best.1.base() - best.0.base());
        let values = [("t_sync", best.0.show()), ("t_next", next.show())];
        Some(working.step(&SPARK, &values, best.1))
    };
    let mut figured = over_all(corners, earliest)?;
    for (_, last) in corners.iter().filter_map(|corner| corner.spark) {
        figured.band = figured.band.widened_to(last);
    }
    Some(figured)
}

fn margin(inputs: &CrankingInputs, corner: &StartCorner, working: &mut Working) -> Option<Time> {
    let (spark, power) = corner.closest?;
    let margin = corner.margin.filter(|_| corner.closes)?;
    let values =
        [("t_spark", spark.show()), ("t_dwell", inputs.dwell.show()), ("t_power", power.show())];
    Some(working.step(&MARGIN, &values, margin))
}

fn on_at_rest(stop: &StopAnswer) -> Figured<Time> {
    let mut working = Working::new();
    let values = [("t_off", stop.off_after.show()), ("t_rest", stop.rests_after.show())];
    let on = working.step(&STOPPED, &values, stop.on_at_rest);
    Figured { band: Band::exact(on), working: working.into_steps() }
}

/// The reason at each end of the thresholds that work.
fn works(inputs: &CrankingInputs, survey: &Survey) -> Vec<Step> {
    let ends = survey.ends;
    let works = survey.works.unwrap_or(Interval { low: ends.lowest, high: ends.highest });
    let (low, high) = (rpm(works.low), rpm(works.high));
    let low = if works.low > ends.lowest {
        step(&LOW_UNSTEADY, &[("n_steady", low.show())], low)
    } else if works.low > inputs.rocking.high.base() {
        step(&LOW_RELEASE, &[("n_off", low.show())], low)
    } else {
        step(&LOW_ROCKING, &[("n_rock", low.show())], low)
    };
    let high = if works.high < ends.highest {
        step(&HIGH_UNSTEADY, &[("n_steady", high.show())], high)
    } else {
        let slowest = survey.corners.iter().map(|corner| corner.slowest_reading.base());
        let slowest = rpm(slowest.fold(f64::INFINITY, f64::min));
        step(&HIGH_READING, &[("n_read", slowest.show())], slowest)
    };
    vec![low, high]
}

fn prompt(inputs: &CrankingInputs, survey: &Survey) -> Vec<Step> {
    let mut steps = works(inputs, survey);
    if survey.ends.prompt.is_finite() {
        let highest = rpm(survey.ends.prompt);
        steps.push(step(&PROMPT, &[("n_confirmed", highest.show())], highest));
    }
    steps
}
