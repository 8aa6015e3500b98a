//! Resistors that keep an output inside its limit, if the injectors still open behind them.
//!
//! The limit asks for at least so many ohms, at the corner with the highest supply and the coldest copper;
//! the injector allows at most so many, at the corner with the lowest supply and the hottest copper. Where
//! the first is above the second no resistor does both, and none is offered.

use super::{
    InjectorInputs,
    branch::{self, AtCorner, Ballast, CurrentEnd, InjectorBranch, note},
    carrying::Carrying,
    opening::{Opening, OpensFrom},
    turn_off,
};
use crate::{
    conditions::Corner,
    quantity::{Band, Current, Holds, Measure, Power, Resistance, watts},
    tables::preferred::Series,
    working::{Formula, Step, Working},
};

/// The tolerance of a power resistor: ±5 % is usual, common practice, no source.
pub const TOLERANCE: f64 = 0.05;

/// What a resistor is loaded to, as a share of its rating: half, common practice, no source. A rating holds
/// on a heat sink at 25 °C, which an engine bay is not.
pub const LOADING: f64 = 0.5;

/// Ratings in which power resistors are sold, in watts: common practice, no source.
pub const RATINGS_W: [f64; 6] = [5.0, 10.0, 25.0, 50.0, 100.0, 250.0];

/// The least that counts as a resistor: below it the wire decides.
const LEAST_OHM: f64 = 0.1;

const SUMMED: &str =
    "Ohm's law and the sum of currents in the worst case; t = 5%, common practice, no source";
const LEAST_EACH: Formula = Formula {
    symbols: "R_least = (n × V / I_limit − R_T − R_w − R_c − n × R_on) / (1 − t)",
    source: SUMMED,
};
const LEAST_SHARED: Formula = Formula {
    symbols: "R_least = (V / I_limit − (R_T + R_w + R_c) / n − R_on) / (1 − t)",
    source: SUMMED,
};
const MOST_EACH: Formula = Formula {
    symbols: "R_most = (V / I_o − R_T − R_w − R_c − n × R_on) / (1 + t)",
    source: SUMMED,
};
const MOST_SHARED: Formula = Formula {
    symbols: "R_most = ((V / I_o − R_T − R_w − R_c) / n − R_on) / (1 + t)",
    source: SUMMED,
};
const THROUGH: Formula =
    Formula { symbols: "I_b = V / (R_rest + R_b)", source: "Ohm's law, resistances in series" };
const POWER: Formula = Formula {
    symbols: "P = I_b × I_b × R_b",
    source: "resistive heating; steady, in the case and at the end of the tolerance that heat it most",
};
const RATING: Formula = Formula {
    symbols: "P_buy = P / 50%",
    source: "loaded to half its rating: common practice, no source; next usual rating",
};

/// Where the resistor goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BallastPlace {
    /// One in the wire of each injector.
    EachInjector,
    /// One in the wire that the injectors of an output share.
    EachOutput,
}

impl BallastPlace {
    /// How many times the current of one injector flows through the resistor.
    fn injectors(self, inputs: &InjectorInputs) -> f64 {
        match self {
            Self::EachInjector => 1.0,
            Self::EachOutput => f64::from(inputs.per_output.max(1)),
        }
    }

    fn ballast(self, value: Band<Resistance>) -> Ballast {
        match self {
            Self::EachInjector => Ballast { each: value, ..Ballast::NONE },
            Self::EachOutput => Ballast { shared: value, ..Ballast::NONE },
        }
    }
}

/// The resistance between which a resistor must lie.
#[derive(Clone, Debug, PartialEq)]
pub struct BallastRange {
    /// The limit of the output wants at least this.
    pub least: Resistance,
    /// The corner that wants it.
    pub least_at: Corner,
    /// The injector opens behind at most this; below zero where it doesn't open even without.
    pub most: Resistance,
    /// The corner that allows no more.
    pub most_at: Corner,
    /// How they were found.
    pub working: Vec<Step>,
}

/// Whether a resistor does it.
#[derive(Clone, Debug, PartialEq)]
pub enum BallastFit {
    /// This one does.
    Offered(Box<Resistor>),
    /// The least that protects the output starves the injector.
    Starves(BallastRange),
    /// There is room, but no value of the series lies in it.
    NoValue(BallastRange),
    /// It would get hotter than any usual resistor bears.
    TooHot(BallastRange, Power),
}

/// A resistor that keeps the output inside its limit and lets the injector open, at every corner.
#[derive(Clone, Debug, PartialEq)]
pub struct Resistor {
    /// Where it goes.
    pub place: BallastPlace,
    /// Its value.
    pub value: Resistance,
    /// The series that it is a value of.
    pub series: Series,
    /// Between which values it had to lie.
    pub bounds: BallastRange,
    /// The currents with it.
    pub corners: [AtCorner; super::CORNERS],
    /// The output with it.
    pub carrying: Carrying,
    /// Its heat in the worst case, current flowing steadily.
    pub heat: Power,
    /// The rating to buy.
    pub rating: Power,
    /// How heat and rating were found.
    pub working: Vec<Step>,
    /// The injector's current at the corner that lets least through.
    pub least_current: Current,
    /// That corner.
    pub least_at: Corner,
    /// The battery voltage that still opens the injector.
    pub opens_from: OpensFrom,
    /// The next larger value that leaves the margin wanted and still lets the injector open, where this one
    /// leaves less.
    pub roomier: Option<Box<Resistor>>,
}

impl Resistor {
    /// The resistor as it stands in the circuit, with its tolerance.
    pub fn ballast(&self) -> Ballast {
        self.place.ballast(with_tolerance(self.value))
    }
}

/// A resistor as it was typed, with the usual tolerance where it has none of its own.
pub fn as_bought(typed: Band<Resistance>) -> Band<Resistance> {
    if typed.is_spread() { typed } else { with_tolerance(typed.nominal) }
}

/// The heat of the resistor that is in line with each injector, in the worst case with the current flowing steadily, and
/// how it was found. Nothing where there is none.
pub fn heat_of_fitted(inputs: &InjectorInputs) -> Option<(Power, Vec<Step>)> {
    let value = inputs.resistor.nominal;
    let mut working = Working::new();
    (value.base() > 0.0).then(|| {
        let bare = inputs.without_resistor();
        let heat = heat(&bare, BallastPlace::EachInjector, value, &mut working);
        (heat, working.into_steps())
    })
}

fn with_tolerance(value: Resistance) -> Band<Resistance> {
    Band::with_tolerance(value, TOLERANCE)
}

/// The smallest value of a series that keeps the output within `limit` at every corner, unless it starves the injector.
pub fn fit(
    inputs: &InjectorInputs,
    opening: &Opening,
    limit: Current,
    place: BallastPlace,
    series: Series,
) -> BallastFit {
    let bounds = bounds(inputs, opening, limit, place);
    if bounds.least.base() > bounds.most.base() {
        return BallastFit::Starves(bounds);
    }
    let least = bounds.least.base().max(LEAST_OHM);
    let tried = |value| Tried::of(inputs, opening, limit, place, value);
    let mut fitting = series
        .values()
        .filter(|value| value.base() >= least)
        .map(tried)
        .filter(|it| it.carrying.over == Holds::Never && it.survives);
    let Some(first) = fitting.next().filter(|it| it.opens) else {
        return BallastFit::NoValue(bounds);
    };
    let roomier = if first.carrying.has_margin() {
        None
    } else {
        let roomy = fitting.find(|it| it.carrying.has_margin()).filter(|it| it.opens);
        roomy.and_then(|it| it.resistor(inputs, opening, series, &bounds).ok())
    };
    match first.resistor(inputs, opening, series, &bounds) {
        Ok(resistor) => {
            BallastFit::Offered(Box::new(Resistor { roomier: roomier.map(Box::new), ..resistor }))
        }
        Err(heat) => BallastFit::TooHot(bounds, heat),
    }
}

/// A value that is tried.
struct Tried {
    place: BallastPlace,
    value: Resistance,
    corners: [AtCorner; super::CORNERS],
    carrying: Carrying,
    opens: bool,
    survives: bool,
}

impl Tried {
    fn of(
        inputs: &InjectorInputs,
        opening: &Opening,
        limit: Current,
        place: BallastPlace,
        value: Resistance,
    ) -> Self {
        let ballast = place.ballast(with_tolerance(value));
        let corners = branch::at_corners(inputs, &ballast);
        let carrying = Carrying::of(&corners, limit);
        let opens = opening.missed_at(&corners) == Holds::Never;
        let survives = turn_off::is_borne(inputs, &ballast);
        Self { place, value, corners, carrying, opens, survives }
    }

    /// The resistor to buy; its heat where no usual one bears that.
    fn resistor(
        self,
        inputs: &InjectorInputs,
        opening: &Opening,
        series: Series,
        bounds: &BallastRange,
    ) -> Result<Resistor, Power> {
        let Self { place, value, corners, carrying, .. } = self;
        let mut working = Working::new();
        let heat = heat(inputs, place, value, &mut working);
        let rating = rating(heat, &mut working).ok_or(heat)?;
        let weakest = branch::lowest(&corners);
        Ok(Resistor {
            place,
            value,
            series,
            bounds: bounds.clone(),
            corners,
            carrying,
            heat,
            rating,
            working: working.into_steps(),
            least_current: weakest.injector.low,
            least_at: weakest.corner,
            opens_from: OpensFrom::of(inputs, opening, &place.ballast(with_tolerance(value))),
            roomier: None,
        })
    }
}

/// Between which values the resistor must lie, from every corner.
fn bounds(
    inputs: &InjectorInputs,
    opening: &Opening,
    limit: Current,
    place: BallastPlace,
) -> BallastRange {
    let least = |corner: &Corner, working: &mut Option<Working>| {
        least_at(inputs, corner, limit, place, working)
    };
    let most = |corner: &Corner, working: &mut Option<Working>| {
        most_at(inputs, corner, opening.current.high, place, working)
    };
    let [first, rest @ ..] = inputs.corners;
    let least_corner = rest.into_iter().fold(first, |one, other| {
        if least(&other, &mut None).base() > least(&one, &mut None).base() { other } else { one }
    });
    let most_corner = rest.into_iter().fold(first, |one, other| {
        if most(&other, &mut None).base() < most(&one, &mut None).base() { other } else { one }
    });
    let mut working = Some(Working::new());
    let (least, most) = (least(&least_corner, &mut working), most(&most_corner, &mut working));
    BallastRange {
        least,
        least_at: least_corner,
        most,
        most_at: most_corner,
        working: working.map(Working::into_steps).unwrap_or_default(),
    }
}

fn least_at(
    inputs: &InjectorInputs,
    corner: &Corner,
    limit: Current,
    place: BallastPlace,
    working: &mut Option<Working>,
) -> Resistance {
    let branch = InjectorBranch::at(inputs, corner, CurrentEnd::Most, &Ballast::NONE, working);
    let formula = match place {
        BallastPlace::EachInjector => &LEAST_EACH,
        BallastPlace::EachOutput => &LEAST_SHARED,
    };
    let wanted = branch.supply / limit * branch.n() - branch.without_ballast();
    let least = wanted / place.injectors(inputs) / (1.0 - TOLERANCE);
    note(working, formula, least, || {
        let mut values = branch.values();
        values.extend([("V", branch.supply.show()), ("I_limit", limit.show()), ("t", "5%".into())]);
        values
    })
}

fn most_at(
    inputs: &InjectorInputs,
    corner: &Corner,
    opening: Current,
    place: BallastPlace,
    working: &mut Option<Working>,
) -> Resistance {
    let branch = InjectorBranch::at(inputs, corner, CurrentEnd::Least, &Ballast::NONE, working);
    let formula = match place {
        BallastPlace::EachInjector => &MOST_EACH,
        BallastPlace::EachOutput => &MOST_SHARED,
    };
    let allowed = branch.supply / opening - branch.without_ballast();
    let most = allowed / place.injectors(inputs) / (1.0 + TOLERANCE);
    note(working, formula, most, || {
        let mut values = branch.values();
        values.extend([("V", branch.supply.show()), ("I_o", opening.show()), ("t", "5%".into())]);
        values
    })
}

/// The most heat in the resistor, at any corner and within its tolerance.
///
/// A resistor takes most power where it equals the rest of its circuit and less to either side, so the
/// hottest value within the tolerance is the one nearest to that.
fn heat(
    inputs: &InjectorInputs,
    place: BallastPlace,
    value: Resistance,
    working: &mut Working,
) -> Power {
    let through = place.injectors(inputs);
    let at = |corner: &Corner| {
        let branch =
            InjectorBranch::at(inputs, corner, CurrentEnd::Most, &Ballast::NONE, &mut None);
        let rest = branch.without_ballast() / through;
        let band = with_tolerance(value);
        let hottest: Resistance =
            Measure::from_base(rest.base().max(band.low.base()).min(band.high.base()));
        let current = branch.supply / (rest + hottest);
        let power = watts(current.base() * current.base() * hottest.base());
        (power, [("V", branch.supply.show()), ("R_rest", rest.show())], hottest, current)
    };
    let [first, rest @ ..] = inputs.corners;
    let (power, circuit, hottest, current) = rest
        .iter()
        .map(at)
        .fold(at(&first), |one, other| if other.0.base() > one.0.base() { other } else { one });
    let mut shown = circuit.to_vec();
    shown.push(("R_b", hottest.show()));
    let current = working.step(&THROUGH, &shown, current);
    working.step(&POWER, &[("I_b", current.show()), ("R_b", hottest.show())], power)
}

/// The next usual rating that is loaded to no more than [`LOADING`].
pub fn rating(heat: Power, working: &mut Working) -> Option<Power> {
    let rating = RATINGS_W.into_iter().find(|rating| heat.base() <= rating * LOADING)?;
    Some(working.step(&RATING, &[("P", heat.show())], watts(rating)))
}
