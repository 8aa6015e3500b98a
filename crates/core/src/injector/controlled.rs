//! Outputs and drivers that control the current: a peak to open the injector, then less to hold it.
//!
//! The peak must be enough to open each injector that shares the channel, which limits their *sum*; and the
//! battery must be able to push it through them, or the driver waits for a peak that never comes, stays fully on
//! through the whole pulse, and driver and injector run hot. A driver that ends its peak by time is safe from that; but
//! ended before the injector is open, the hold current is not sure to open it.

use super::{
    CORNERS, Class, Fewer, InjectorInputs,
    branch::{self, AtCorner, Ballast, CurrentEnd, InjectorBranch},
    opening::Opening,
    outputs,
    rise::{CurrentRise, Rising},
    winding::Winding,
};
use crate::{
    conditions::Corner,
    quantity::{Band, Current, Holds, Measure, Power, Time, watts},
    working::{Formula, Step, step},
};

/// The share of its opening current that keeps an open injector open: common practice, no source.
pub const HOLD_SHARE: f64 = 0.5;

/// Below this share it is doubted: drivers hold with a quarter of the peak that opened. Common practice, no source.
const LEAST_HOLD_SHARE: f64 = 0.25;

const LEAST_PEAK: Formula =
    Formula { symbols: "I_peak = n × I_o", source: "currents add up: the channel limits the sum" };
const SHARE: Formula =
    Formula { symbols: "I = I_peak / n", source: "currents add up, injectors alike" };
const HOLD: Formula = Formula {
    symbols: "I_hold = 50% × n × I_o",
    source: "half of the opening current holds: common practice, no source",
};

const LINEAR: Formula = Formula {
    symbols: "P = (V − I_hold × R) × I_hold",
    source: "resistive heating: what a driver that does not chop must drop itself; held on, at the highest supply",
};

/// What is true of a channel that controls the current.
#[derive(Clone, Debug, PartialEq)]
pub struct Controlled {
    /// The verdict.
    pub serves: Serves,
    /// The peak it is set to.
    pub peak: Option<Band<Current>>,
    /// What each injector gets of it.
    pub share: Option<Current>,
    /// The peaks that work.
    pub window: PeakWindow,
    /// Where the peak may not be reached; at no corner where none is set.
    pub not_reached: Holds,
    /// The hold current it should have at least.
    pub hold_needed: Current,
    /// Whether the hold current that was given is less.
    pub hold_too_small: bool,
    /// How long the current takes to the peak at each corner, where one is set.
    pub to_peak: Option<[CurrentRise; CORNERS]>,
    /// The longest that the peak lasts, where the driver ends it by time.
    pub time_limit: Option<Band<Time>>,
    /// Where that time may be over before the current opens an injector.
    pub cut_short: Holds,
    /// The time in which an injector is sure to open, at the corner that asks most; nothing where one may not.
    pub time_needed: Option<Time>,
    /// The heat of a channel that holds the current without chopping it, and how it was found.
    pub linear: (Power, Vec<Step>),
    /// How share and hold were found.
    pub working: Vec<Step>,
}

/// How well a channel that controls the current serves its injectors.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Serves {
    /// Its peak is not known.
    UnknownPeak,
    /// Opens them all, and reaches its peak at every corner.
    Always,
    /// Opens them all, and may not reach its peak at some corners.
    PeakNotEverywhere,
    /// High-impedance injectors whose resistance keeps the current below the peak: the channel works as a plain switch.
    AsPlainSwitch,
    /// The peak is never reached.
    PeakNowhere,
    /// The peak, shared, is not enough to open each.
    TooSmall,
    /// Its time limit may end the peak before they open.
    CutShort,
    /// It may not reach its peak, but its time limit ends it, and by then they are open.
    ByTime,
}

/// The peaks that open the injectors and are reached.
#[derive(Clone, Debug, PartialEq)]
pub struct PeakWindow {
    /// The least that opens them all.
    pub least: Current,
    /// The most that the battery is sure to reach at every corner.
    pub most: Current,
    /// The corner that allows no more.
    pub most_at: Corner,
    /// How both were found.
    pub working: Vec<Step>,
}

/// What a peak keeps from the ends of its window, where that has room for it: common practice, no source.
const SPARE: f64 = 0.05;

impl PeakWindow {
    /// Whether any peak works at every corner.
    pub fn is_open(&self) -> bool {
        self.least.base() <= self.most.base()
    }

    /// The peak to set: near the middle by ratio, as round as it can be away from both ends.
    pub fn best(&self) -> Current {
        let (least, most) = (self.least.base(), self.most.base());
        let middle = (least * most).sqrt();
        let holds = |peak: &f64| (least * (1.0 + SPARE)..=most * (1.0 - SPARE)).contains(peak);
        let round = [1.0, 0.5, 0.1, 0.05, 0.01].map(|step| (middle / step).round() * step);
        Measure::from_base(round.into_iter().find(holds).unwrap_or(middle))
    }
}

impl Controlled {
    /// What a channel set to `peak` does with these injectors; what it would need where that is not known.
    pub fn of(inputs: &InjectorInputs, opening: &Opening, peak: Option<Band<Current>>) -> Self {
        let corners = branch::at_corners(inputs, &Ballast::NONE);
        let n = f64::from(inputs.per_output.max(1));
        let shown = ("n", inputs.per_output.into());
        let mut working = Vec::new();
        let share = peak.map(|peak| peak.low / n);
        if let (Some(peak), Some(share)) = (peak, share) {
            working.push(step(&SHARE, &[("I_peak", peak.low.show()), shown.clone()], share));
        }
        let hold_needed = opening.current.high * n * HOLD_SHARE;
        working.push(step(&HOLD, &[shown, ("I_o", opening.current.high.show())], hold_needed));
        let winding = Winding::of(inputs);
        let rising = Rising { inputs, winding: &winding, ballast: &Ballast::NONE };
        let opens = rising.at_corners(opening.current);
        let time_limit = inputs.output.peak_time.filter(|_| peak.is_some());
        let cut_short = time_limit.map_or(Holds::Never, |limit| cut_short(&opens, limit.low));
        let hold = inputs.output.hold.map_or(hold_needed, |hold| hold.high);
        Self {
            serves: serves(inputs, opening, &corners, peak, &cut_short),
            share,
            window: window(inputs, opening, &corners),
            not_reached: peak.map_or(Holds::Never, |peak| not_reached(&corners, peak)),
            hold_needed,
            hold_too_small: inputs.output.hold.is_some_and(|hold| {
                hold.low.base() < hold_needed.base() * LEAST_HOLD_SHARE / HOLD_SHARE
            }),
            to_peak: peak.map(|peak| rising.at_corners(peak.map(|peak| peak / n))),
            peak,
            time_limit,
            cut_short,
            time_needed: longest(&opens),
            linear: linear(inputs, hold),
            working,
        }
    }
}

/// The most injectors below the present number that a channel of this peak serves, for which there are channels enough.
pub fn fewer(inputs: &InjectorInputs, opening: &Opening) -> Option<Fewer> {
    (1..inputs.per_output).rev().filter(|n| inputs.has_outputs_for(*n)).find_map(|per_output| {
        let tried = InjectorInputs { per_output, ..inputs.clone() };
        let channel = Controlled::of(&tried, opening, inputs.output.limit);
        let is_served =
            matches!(channel.serves, Serves::Always | Serves::AsPlainSwitch | Serves::ByTime);
        (is_served && !channel.hold_too_small).then(|| Fewer {
            per_output,
            highest: channel.window.most,
            outputs: outputs(inputs.count, per_output),
        })
    })
}

/// Where the peak may be over before an injector opens. One that does not open whatever the time is no fault of the time.
fn cut_short(opens: &[CurrentRise; CORNERS], limit: Time) -> Holds {
    let is_short = |rise: &CurrentRise| rise.longest.is_some_and(|time| time.base() > limit.base());
    Holds::from_corners(opens.iter().map(|rise| (rise.corner.name, is_short(rise))))
}

/// The longest at any corner; nothing where one has no end.
fn longest(rises: &[CurrentRise; CORNERS]) -> Option<Time> {
    rises.iter().map(|rise| rise.longest).reduce(|one, other| {
        let (one, other) = (one?, other?);
        Some(if other.base() > one.base() { other } else { one })
    })?
}

/// The heat of a channel that drops the rest of the supply itself, at the corner where that is most.
fn linear(inputs: &InjectorInputs, hold: Current) -> (Power, Vec<Step>) {
    let heat = |corner: &Corner| {
        let branch =
            InjectorBranch::at(inputs, corner, CurrentEnd::Most, &Ballast::NONE, &mut None);
        // what the channel itself drops counts as its heat, so its own resistance is no part of R
        let resistance = branch.without_output() / branch.n();
        let most = corner.supply / resistance;
        let current = if most.base() < hold.base() { most } else { hold };
        let dropped = corner.supply.base() - current.base() * resistance.base();
        (watts(dropped * current.base()), current, resistance, corner.supply)
    };
    let [first, rest @ ..] = inputs.corners;
    let (power, current, resistance, supply) = rest
        .iter()
        .map(heat)
        .fold(heat(&first), |one, other| if other.0.base() > one.0.base() { other } else { one });
    let shown = [("V", supply.show()), ("I_hold", current.show()), ("R", resistance.show())];
    (power, vec![step(&LINEAR, &shown, power)])
}

fn not_reached(corners: &[AtCorner; CORNERS], peak: Band<Current>) -> Holds {
    Holds::from_corners(
        corners.iter().map(|at| (at.corner.name, at.output.low.base() < peak.high.base())),
    )
}

fn serves(
    inputs: &InjectorInputs,
    opening: &Opening,
    corners: &[AtCorner; CORNERS],
    peak: Option<Band<Current>>,
    cut_short: &Holds,
) -> Serves {
    let Some(peak) = peak else { return Serves::UnknownPeak };
    let n = f64::from(inputs.per_output.max(1));
    if peak.low.base() < n * opening.current.high.base() * (1.0 - 1e-9) {
        return Serves::TooSmall;
    }
    if *cut_short != Holds::Never {
        return Serves::CutShort;
    }
    let ever = corners.iter().any(|at| at.output.high.base() >= peak.low.base());
    match (not_reached(corners, peak), ever) {
        (Holds::Never, _) => Serves::Always,
        (_, true) if inputs.output.peak_time.is_some() => Serves::ByTime,
        (_, true) => Serves::PeakNotEverywhere,
        (_, false) if Class::of(inputs.resistance.nominal) == Class::HighImpedance => {
            Serves::AsPlainSwitch
        }
        (_, false) if inputs.output.peak_time.is_some() => Serves::ByTime,
        (_, false) => Serves::PeakNowhere,
    }
}

fn window(inputs: &InjectorInputs, opening: &Opening, corners: &[AtCorner; CORNERS]) -> PeakWindow {
    let n = f64::from(inputs.per_output.max(1));
    let least = opening.current.high * n;
    let shown = [("n", inputs.per_output.into()), ("I_o", opening.current.high.show())];
    let mut working = vec![step(&LEAST_PEAK, &shown, least)];
    let weakest = branch::lowest(corners);
    working.extend(branch::working_at(inputs, &weakest.corner, CurrentEnd::Least, &Ballast::NONE));
    PeakWindow { least, most: weakest.output.low, most_at: weakest.corner, working }
}
