//! What can be done where plain outputs have too little left, side by side: each solved at every corner, as wired among
//! them, and the one to take.
//!
//! **The one to take.** The first of these that leaves the output its margin and each injector a tenth more than opens
//! it (where that current is only usual: half as much again, nearly), at every corner: fewer on an output (no part to buy), a resistor with each, both, a driver, stronger outputs,
//! other injectors. Where none does, the first that works at every corner at all. The order is that of the work and the
//! money: common practice, no source. A resistor that many injectors share is never the one: unplug one of them and the
//! others get more.

use super::{
    Class, InjectorCures, InjectorInputs, InjectorOutput,
    ballast::{BallastFit, BallastPlace, Resistor},
    branch::{self, Ballast, CurrentEnd},
    carrying::{Carries, Carrying, LimitNeeded, MARGIN_WANTED},
    opening::{Opening, OpensFrom},
    outputs,
    rise::Rising,
    turn_off::TurningOff,
    winding::Winding,
};
use crate::{
    conditions::Corner,
    quantity::{Band, Current, Energy, Holds, Measure, Resistance, Time, Voltage, ohms},
    tables::{copper, fuses},
    working::{Formula, Step, step},
};

const OTHERS: Formula = Formula {
    symbols: "R_20 = (n × V / (I_limit × (1 − 10%)) − R_w − R_c − n × R_on) / (1 + 0.00393/K × (T − 20 °C)) / (1 − t)",
    source: "Ohm's law and the sum of currents, copper by IEC 60028; rounded up to 0.5 Ω",
};

const OTHERS_BALLASTED: Formula = Formula {
    symbols: "R_20 = (n × V / (I_limit × (1 − 10%)) − R_w − R_c − R_b − n × R_on) / (1 + 0.00393/K × (T − 20 °C)) / (1 − t)",
    source: OTHERS.source,
};

/// What is done.
#[derive(Clone, Debug, PartialEq)]
pub enum Means {
    /// Nothing.
    AsWired,
    /// Fewer on each output.
    Fewer {
        /// How many share one then.
        per_output: u32,
        /// Outputs wanted then, where the number of injectors is known.
        outputs: Option<u32>,
    },
    /// A resistor with each injector, or one with each output.
    Resistor(Box<Resistor>),
    /// Fewer on each output, and a resistor with each injector.
    FewerWithResistor {
        /// How many share an output then.
        per_output: u32,
        /// Outputs wanted then, where the number of injectors is known.
        outputs: Option<u32>,
        /// The resistor.
        resistor: Box<Resistor>,
    },
    /// A driver that controls the current, with a channel for each injector.
    Driver {
        /// The least peak that opens one.
        least: Current,
        /// The peak to set.
        peak: Current,
        /// The highest that is sure to be reached.
        most: Current,
        /// The least hold current.
        hold: Current,
        /// Channels, where the number of injectors is known.
        channels: Option<u32>,
        /// The fuse of its supply, where that number is known and a blade fuse will do.
        fuse: Option<Current>,
    },
    /// Outputs with a higher limit.
    Output {
        /// The limit.
        limit: Current,
    },
    /// Injectors with more resistance.
    Others {
        /// The least resistance at 20 °C.
        least: Resistance,
        /// How it was found.
        working: Vec<Step>,
    },
}

/// One of the remedies, with what comes of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Remedy {
    /// What is done.
    pub means: Means,
    /// The most that one output, or one channel, carries then.
    pub highest: Current,
    /// How well the output bears that; nothing of a driver, which keeps to its own peak.
    pub carries: Option<Carries>,
    /// The most that one injector takes for long: of a driver its hold current.
    pub each: Current,
    /// The least current of one injector, and where it flows.
    pub least: (Current, Corner),
    /// Where an injector may not open.
    pub missed: Holds,
    /// The battery voltage from which on it is sure to open.
    pub opens_from: Voltage,
    /// The time to the current that opens one: at rest, and the longest while cranking hot; nothing where it is never reached.
    pub opens_in: (Option<Time>, Option<Time>),
    /// The most that the output's clamp takes at a turn-off; nothing of a driver, which has its own.
    pub clamp: Option<Energy>,
    /// Whether the output is not known to fail at its turn-off.
    pub is_borne: bool,
    /// How current and times were found.
    pub working: Vec<Step>,
}

impl Remedy {
    /// Whether the output bears it and every injector opens, at every corner.
    pub fn works(&self) -> bool {
        self.missed == Holds::Never
            && self.is_borne
            && !matches!(self.carries, Some(Carries::Nowhere | Carries::NotEverywhere))
    }

    /// Whether it works with margin both ways: on the output, and above what opens an injector.
    fn is_roomy(&self, opening: &Opening) -> bool {
        let spare = (opening.current.high * (1.0 + MARGIN_WANTED)).max(opening.surely());
        self.works()
            && self.carries.is_none_or(|carries| carries == Carries::WithMargin)
            && self.least.0 >= spare
    }

    fn is_shared_resistor(&self) -> bool {
        matches!(&self.means, Means::Resistor(it) if it.place == BallastPlace::EachOutput)
    }
}

/// The remedies, side by side.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Remedies {
    /// As wired first, then least work first.
    pub rows: Vec<Remedy>,
    /// Which of them to take; none where none works.
    pub take: Option<usize>,
}

impl Remedies {
    /// The remedies for outputs of this limit.
    pub(super) fn of(
        inputs: &InjectorInputs,
        opening: &Opening,
        limit: Current,
        cures: &InjectorCures,
    ) -> Self {
        let tried = |means, inputs: &InjectorInputs, ballast: &Ballast| {
            Trial { inputs, opening, limit, ballast }.remedy(means)
        };
        let none = &Ballast::NONE;
        let bare = &inputs.without_resistor();
        let mut rows = vec![tried(Means::AsWired, inputs, none)];
        if let Some(it) = cures.fewer {
            let fewer = InjectorInputs { per_output: it.per_output, ..inputs.clone() };
            let means = Means::Fewer { per_output: it.per_output, outputs: it.outputs };
            rows.push(tried(means, &fewer, none));
        }
        for resistor in resistors(cures) {
            let ballast = resistor.ballast();
            rows.push(tried(Means::Resistor(Box::new(resistor)), bare, &ballast));
        }
        if let Some(it) = &cures.both {
            let fewer = InjectorInputs { per_output: it.per_output, ..bare.clone() };
            let (per_output, outputs, resistor) = (it.per_output, it.outputs, it.resistor.clone());
            let ballast = resistor.ballast();
            let means = Means::FewerWithResistor { per_output, outputs, resistor };
            rows.push(tried(means, &fewer, &ballast));
        }
        // a high-impedance injector wants a stronger output, not a driver
        if Class::of(inputs.resistance.nominal) != Class::HighImpedance {
            rows.push(driver(bare, opening, limit, cures));
        }
        let needed = LimitNeeded::of(&branch::at_corners(inputs, none)).limit;
        rows.push(
            Trial { inputs, opening, limit: needed, ballast: none }
                .remedy(Means::Output { limit: needed }),
        );
        rows.extend(others(inputs, limit));
        let is_better =
            |row: &Remedy| !matches!(row.means, Means::AsWired) && !row.is_shared_resistor();
        let first = |fits: &dyn Fn(&Remedy) -> bool| {
            rows.iter().position(|row| is_better(row) && fits(row))
        };
        let take = first(&|row| row.is_roomy(opening)).or_else(|| first(&Remedy::works));
        Self { rows, take }
    }

    /// The best of the resistors with each injector: the one to take, the first with margin on the output, the first that works.
    pub fn resistor(&self) -> Option<&Resistor> {
        let of = |row: &'_ Remedy| match &row.means {
            Means::Resistor(it) if it.place == BallastPlace::EachInjector => Some(()),
            _ => None,
        };
        let each = || self.rows.iter().filter(|row| of(row).is_some() && row.works());
        let taken = self.taken().filter(|row| of(row).is_some());
        let roomy = || each().find(|row| row.carries == Some(Carries::WithMargin));
        match &taken.or_else(roomy).or_else(|| each().next())?.means {
            Means::Resistor(it) => Some(it),
            _ => None,
        }
    }

    /// The one to take.
    pub fn taken(&self) -> Option<&Remedy> {
        self.take.and_then(|at| self.rows.get(at))
    }
}

/// Every resistor that was found, of both series, with the roomier ones.
fn resistors(cures: &InjectorCures) -> Vec<Resistor> {
    let of = |fit: &Option<BallastFit>| match fit {
        Some(BallastFit::Offered(resistor)) => Some((**resistor).clone()),
        _ => None,
    };
    let with_roomier = |resistor: Resistor| {
        let roomier = resistor.roomier.as_deref().cloned();
        std::iter::once(resistor).chain(roomier)
    };
    let mut all: Vec<Resistor> = Vec::new();
    let found = [cures.finer.as_deref().cloned(), of(&cures.each), of(&cures.shared)];
    for resistor in found.into_iter().flatten().flat_map(with_roomier) {
        let is_there = |it: &Resistor| {
            it.place == resistor.place
                && it.value.base().to_bits() == resistor.value.base().to_bits()
        };
        if !all.iter().any(is_there) {
            all.push(resistor);
        }
    }
    let is_shared = |it: &Resistor| it.place == BallastPlace::EachOutput;
    crate::sorted::by(&mut all, |one, other| {
        let size = one.value.base().total_cmp(&other.value.base());
        is_shared(one).cmp(&is_shared(other)).then(size)
    });
    all
}

/// A way of wiring that is tried.
struct Trial<'a> {
    inputs: &'a InjectorInputs,
    opening: &'a Opening,
    limit: Current,
    ballast: &'a Ballast,
}

impl Trial<'_> {
    fn remedy(&self, means: Means) -> Remedy {
        let Self { inputs, opening, limit, ballast } = *self;
        let corners = branch::at_corners(inputs, ballast);
        let carrying = Carrying::of(&corners, limit);
        let weakest = branch::lowest(&corners);
        let winding = Winding::of(inputs);
        let rising = Rising { inputs, winding: &winding, ballast };
        let [_, cranking, rest, _, _] = rising.at_corners(opening.current);
        let off = TurningOff { inputs, winding: &winding, ballast }.solved();
        let mut working = branch::working_at(inputs, &carrying.worst, CurrentEnd::Most, ballast);
        working.extend(rising.working_at(opening.current, &rest.corner, CurrentEnd::Nominal));
        Remedy {
            means,
            highest: carrying.highest,
            each: carrying.highest / f64::from(inputs.per_output.max(1)),
            carries: Some(carrying.carries),
            least: (weakest.injector.low, weakest.corner),
            missed: opening.missed_at(&corners),
            opens_from: OpensFrom::of(inputs, opening, ballast).supply,
            opens_in: (rest.nominal, cranking.longest),
            clamp: off.worst.energy.map(|(_, most)| most),
            is_borne: off.is_borne(),
            working,
        }
    }
}

/// A driver with a channel for each injector.
fn driver(
    inputs: &InjectorInputs,
    opening: &Opening,
    limit: Current,
    cures: &InjectorCures,
) -> Remedy {
    let alone = InjectorInputs { per_output: 1, ..inputs.clone() };
    let window = &cures.driver.window;
    let hold = cures.driver.hold_needed;
    let channels = outputs(inputs.count, 1);
    let means = Means::Driver {
        least: window.least,
        peak: window.best(),
        most: window.most,
        hold,
        channels,
        fuse: channels.and_then(|channels| fuses::for_long(hold * f64::from(channels))),
    };
    let none = &Ballast::NONE;
    let free = Trial { inputs: &alone, opening, limit, ballast: none }.remedy(means);
    Remedy { highest: window.most, each: hold, carries: None, clamp: None, is_borne: true, ..free }
}

/// Injectors of which an output carries as many, where such ones still open.
fn others(inputs: &InjectorInputs, limit: Current) -> Option<Remedy> {
    let allowed = limit * (1.0 - MARGIN_WANTED);
    let off = inputs.resistance.low.base() / inputs.resistance.nominal.base();
    let least_at = |corner: &Corner| {
        let branch =
            branch::InjectorBranch::at(inputs, corner, CurrentEnd::Most, &Ballast::NONE, &mut None);
        let rest = branch.wire + branch.contacts + branch.each + branch.on * branch.n();
        let winding = branch.supply / allowed * branch.n() - rest;
        (winding.base() / copper::factor(corner.temperature) / off, branch, *corner)
    };
    let [first, more @ ..] = inputs.corners;
    let (least, branch, corner) = more
        .iter()
        .map(least_at)
        .fold(least_at(&first), |one, other| if other.0 > one.0 { other } else { one });
    if !least.is_finite() || least <= inputs.resistance.nominal.base() {
        return None;
    }
    let least = ohms((least * 2.0 - 1e-9).ceil() / 2.0);
    let shown = [
        ("n", branch.sharing.into()),
        ("V", branch.supply.show()),
        ("I_limit", limit.show()),
        ("R_w", branch.wire.show()),
        ("R_c", branch.contacts.show()),
        ("R_b", branch.each.show()),
        ("R_on", branch.on.show()),
        ("T", corner.temperature.show()),
        ("t", crate::quantity::share(1.0 - off).show()),
    ];
    let spread = inputs.resistance.high.base() / inputs.resistance.nominal.base();
    let band = |factor: f64| least * factor;
    let tried = InjectorInputs {
        resistance: Band { low: band(off), nominal: least, high: band(spread) },
        inductance: None,
        opening_current: None,
        output: InjectorOutput { limit: Some(Band::exact(limit)), ..inputs.output },
        ..inputs.clone()
    };
    let opening = Opening::of(&tried);
    let formula = if branch.each.base() > 0.0 { &OTHERS_BALLASTED } else { &OTHERS };
    let means = Means::Others { least, working: vec![step(formula, &shown, least)] };
    let remedy =
        Trial { inputs: &tried, opening: &opening, limit, ballast: &Ballast::NONE }.remedy(means);
    remedy.works().then_some(remedy)
}
