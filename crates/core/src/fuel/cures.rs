//! What would make the injectors enough, each solved with everything at its leanest.

use super::{
    Delivery, DeliveryEnd, FuelInputs, InjectionPace, MOST_PRESSURE, Regulator, flow::Rated,
};
use crate::{
    quantity::{MassFlow, Measure, Pressure, VolumeRate},
    working::{Formula, Step, Working},
};

const NEEDED: Formula = Formula {
    symbols: "M_n = P × b / (D − t_d / T)",
    source: "definition of specific fuel consumption; fuel flows once the dead time of a pulse is over",
};
const PRESSURE: Formula = Formula {
    symbols: "Δp_n = Δp × (M_n / M)^2",
    source: "orifice equation: the flow goes as √Δp",
};
const SIZE: Formula = Formula {
    symbols: "Q_n = Q × M_n / M",
    source: "an injector passes so much more as it is larger",
};

/// What would make them enough.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FuelCures {
    /// More pressure; nothing where no pressure does it.
    pub pressure: Option<MorePressure>,
    /// Larger injectors; nothing where the dead time leaves no time at all.
    pub larger: Option<Larger>,
    /// Whether it is enough to pulse each injector once a cycle.
    pub in_sequence: bool,
}

/// More pressure.
#[derive(Clone, Debug, PartialEq)]
pub struct MorePressure {
    /// In the rail, engine stopped: rounded up to a tenth of a bar.
    pub rail: Pressure,
    /// Whether it is more than [`MOST_PRESSURE`] times the pressure at which the flow is stated.
    pub is_beyond: bool,
    /// How it was found.
    pub working: Vec<Step>,
}

/// Larger injectors.
#[derive(Clone, Debug, PartialEq)]
pub struct Larger {
    /// Flow of one of the first set as it would be stated, rounded up to 10 cc/min, or to a pound an hour.
    pub flow: Rated,
    /// How many times the flow of every set that is.
    pub times: f64,
    /// How it was found.
    pub working: Vec<Step>,
}

impl FuelCures {
    /// What cures injectors that run out, with everything at its leanest.
    pub(super) fn of(inputs: &FuelInputs, least: &Delivery) -> Self {
        let mut working = Working::new();
        let needed = needed(inputs, least, &mut working);
        let working = working.into_steps();
        Self {
            pressure: needed.and_then(|needed| more_pressure(inputs, least, needed, &working)),
            larger: needed.and_then(|needed| larger(inputs, least, needed, &working)),
            in_sequence: in_sequence(inputs),
        }
    }
}

/// The injectors that the power wanted asks for, in as many times the flow of those that stand in the inputs.
///
/// Nothing where no power is wanted, nothing flows, or the dead time leaves no time.
pub fn wanted(inputs: &FuelInputs) -> Option<Larger> {
    let least = Delivery::at(inputs, DeliveryEnd::Least);
    let mut working = Working::new();
    let needed = needed(inputs, &least, &mut working)?;
    larger(inputs, &least, needed, &working.into_steps())
}

/// The flow that the power wanted asks of all, held open.
fn needed(inputs: &FuelInputs, least: &Delivery, working: &mut Working) -> Option<MassFlow> {
    let end = DeliveryEnd::Least;
    let (power, consumption) =
        (end.of_hindrance(inputs.power?), end.of_hindrance(inputs.consumption));
    let open = least.duty_limit.base() - least.dead_share.map_or(0.0, Measure::base);
    if open <= 0.0 || least.all.base() <= 0.0 {
        return None;
    }
    let mut shown =
        vec![("P", power.show()), ("b", consumption.show()), ("D", least.duty_limit.show())];
    let dead_time = end.of_hindrance(inputs.dead_time).show();
    let window = least.window.map_or_else(|| "without limit".into(), Measure::show);
    shown.extend([("t_d", dead_time), ("T", window)]);
    Some(working.step(&NEEDED, &shown, power * consumption / open))
}

fn more_pressure(
    inputs: &FuelInputs,
    least: &Delivery,
    needed: MassFlow,
    before: &[Step],
) -> Option<MorePressure> {
    if least.drop.base() <= 0.0 {
        return None;
    }
    let mut working = Working::new();
    let ratio = needed.base() / least.all.base();
    let shown = [("Δp", least.drop.show()), ("M_n", needed.show()), ("M", least.all.show())];
    let drop = working.step(&PRESSURE, &shown, least.drop * (ratio * ratio));
    let boost = match inputs.regulator {
        Regulator::Referenced => Pressure::from_base(0.0),
        Regulator::Fixed => DeliveryEnd::Least.of_hindrance(inputs.boost),
    };
    // what the rail may have less than is meant, it may have less then too
    let spread = inputs.rail.nominal / DeliveryEnd::Least.of_help(inputs.rail);
    Some(MorePressure {
        rail: rounded_up((drop + boost) * spread, 1e4),
        is_beyond: drop.base() > MOST_PRESSURE * inputs.stated_at.nominal.base(),
        working: [before, &working.into_steps()].concat(),
    })
}

fn larger(
    inputs: &FuelInputs,
    least: &Delivery,
    needed: MassFlow,
    before: &[Step],
) -> Option<Larger> {
    let ratio = needed.base() / least.all.base();
    let stated = inputs.sets.first()?.flow;
    let mut shown = vec![("M_n", needed.show()), ("M", least.all.show())];
    let mut working = Working::new();
    let times = match stated {
        Rated::Volume(band) => {
            shown.push(("Q", band.nominal.show()));
            let flow: VolumeRate = rounded_up(band.nominal * ratio, 10e-6 / 60.0);
            working.step(&SIZE, &shown, flow).base() / band.nominal.base()
        }
        Rated::Mass(band) => {
            shown.push(("Q", band.nominal.show()));
            let flow: MassFlow = rounded_up(band.nominal * ratio, 0.45359237 / 3600.0);
            working.step(&SIZE, &shown, flow).base() / band.nominal.base()
        }
    };
    Some(Larger {
        flow: stated.times(times),
        times,
        working: [before, &working.into_steps()].concat(),
    })
}

/// Whether they would be enough, were each pulsed once a cycle.
fn in_sequence(inputs: &FuelInputs) -> bool {
    let Some(pace) = inputs.pace.filter(|pace| pace.turns < pace.turns_of_cycle) else {
        return false;
    };
    let pace = Some(InjectionPace { turns: pace.turns_of_cycle, ..pace });
    !Delivery::at(&FuelInputs { pace, ..inputs.clone() }, DeliveryEnd::Least).runs_out()
}

/// The next whole number of steps that is not below.
fn rounded_up<Q: Measure>(value: Q, step: f64) -> Q {
    Q::from_base((value.base() / step - 1e-9).ceil() * step)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(bar: f64, expected: f64) {
        let rounded: Pressure = rounded_up(Pressure::from_base(bar * 1e5), 1e4);
        assert!((rounded.base() / 1e5 - expected).abs() < 1e-9, "{bar} bar became {rounded:?}");
    }

    #[test]
    fn what_is_whole_stays_and_the_rest_goes_up() {
        check(3.0, 3.0);
        check(3.01, 3.1);
        check(3.5, 3.5);
        check(3.4133, 3.5);
    }
}
