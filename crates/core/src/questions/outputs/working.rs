//! How the numbers of an answer were found: the pin by nodal balance, the load by Ohm's law.

use super::switching;
use crate::{
    output::{Dead, DeadFlow, KeyState, Load, LoadFlow, Operating, PinBranch, SolvedCorner},
    quantity::{Current, Measure, Resistance, Temperature, Value, Voltage, amperes, ohms, volts},
    tables::copper,
    working::{Formula, Step, step},
};

const BALANCE: &str = "currents at the pin sum to zero (nodal analysis)";
const OHM: &str = "Ohm's law";

/// The formulas for a pin with one to five conducting parts, and for one with more.
macro_rules! balance {
    ($v:literal) => {
        [
            Formula { symbols: concat!($v, " = V_1"), source: BALANCE },
            Formula {
                symbols: concat!($v, " = (V_1 / R_1 + V_2 / R_2) / (1 / R_1 + 1 / R_2)"),
                source: BALANCE,
            },
            Formula {
                symbols: concat!(
                    $v,
                    " = (V_1 / R_1 + V_2 / R_2 + V_3 / R_3) / (1 / R_1 + 1 / R_2 + 1 / R_3)"
                ),
                source: BALANCE,
            },
            Formula {
                symbols: concat!(
                    $v,
                    " = (V_1 / R_1 + V_2 / R_2 + V_3 / R_3 + V_4 / R_4)",
                    " / (1 / R_1 + 1 / R_2 + 1 / R_3 + 1 / R_4)"
                ),
                source: BALANCE,
            },
            Formula {
                symbols: concat!($v, " = (sum of V_k / R_k) / (sum of 1 / R_k) = I_sum R_sum"),
                source: BALANCE,
            },
        ]
    };
}

const PIN: [(KeyState, [Formula; 5]); 10] = [
    (KeyState::KeyOff, balance!("V_pin, key off")),
    (KeyState::Starting, balance!("V_pin, starting")),
    (KeyState::Off, balance!("V_pin, off")),
    (KeyState::Cranking, balance!("V_pin, cranking")),
    (KeyState::On, balance!("V_pin, on")),
    (KeyState::OtherOn, balance!("V_pin, other on")),
    (KeyState::Outlived, balance!("V_pin, controller alive")),
    (KeyState::FeedLost, balance!("V_pin, feed lost")),
    (KeyState::GroundLost, balance!("V_pin, ground lost")),
    (KeyState::SupplyLost, balance!("V_pin, supply lost")),
];
const BARE: [(KeyState, [Formula; 5]); 10] = [
    (KeyState::KeyOff, balance!("V_bare, key off")),
    (KeyState::Starting, balance!("V_bare, starting")),
    (KeyState::Off, balance!("V_bare, off")),
    (KeyState::Cranking, balance!("V_bare, cranking")),
    (KeyState::On, balance!("V_bare, on")),
    (KeyState::OtherOn, balance!("V_bare, other on")),
    (KeyState::Outlived, balance!("V_bare, controller alive")),
    (KeyState::FeedLost, balance!("V_bare, feed lost")),
    (KeyState::GroundLost, balance!("V_bare, ground lost")),
    (KeyState::SupplyLost, balance!("V_bare, supply lost")),
];
const ACROSS: Formula =
    Formula { symbols: "V_load = V_pin - V_far", source: "voltages around a loop sum to zero" };
const FLOATING: Formula = Formula {
    symbols: "V_load = I R",
    source: "a load whose two ends float carries nothing; Ohm's law",
};
const THROUGH: Formula = Formula { symbols: "I = V_load / R", source: OHM };
const THROUGH_DIODE: Formula = Formula { symbols: "I = (V_load - V_f) / R", source: OHM };
const DEAD_SUPPLY: Formula = Formula { symbols: "V_supply = I_dead R_dead", source: OHM };
const DEAD_FIVE_VOLT: Formula = Formula { symbols: "V_5 = I_dead R_dead", source: OHM };
const DEAD_FEED: Formula = Formula { symbols: "V_far = I_dead R_dead", source: OHM };
const LOST_GROUND: Formula = Formula { symbols: "V_drop = I_dead R_dead", source: OHM };
const HOT: Formula = Formula {
    symbols: "V_T = V_20 × (1 + 0.00393/K × (T − 20 °C))",
    source: "a winding pulls in by its current; IEC 60028, copper",
};

/// The pin, the load and what is dead, in one key state at one corner.
pub(super) fn state_steps(state: KeyState, solved: &SolvedCorner) -> Vec<Step> {
    let operating = &solved.operating;
    if let Some(pulsing) = &operating.pulsing {
        return switching::steps(pulsing);
    }
    let mut steps = dead_steps(operating);
    steps.extend(pin_step(&PIN, state, operating));
    let Some(flow) = solved.load() else { return steps };
    let Some(pin) = operating.pin else {
        let values = [("I", flow.current.show()), ("R", flow.resistance.show())];
        let across = volts(flow.current.base() * flow.resistance.base());
        steps.push(step(&FLOATING, &values, across));
        return steps;
    };
    let far = flow.far.unwrap_or_default();
    let values = [("V_pin", pin.show()), ("V_far", far.show())];
    steps.push(step(&ACROSS, &values, pin - far));
    steps.extend(through_step(pin - far, flow));
    steps
}

/// The current of the load; none where a diode blocks it.
fn through_step(across: Voltage, flow: &LoadFlow) -> Option<Step> {
    let resistance = flow.resistance;
    if flow.forward.base().abs() <= 0.0 {
        let values = [("V_load", across.show()), ("R", resistance.show())];
        return Some(step(&THROUGH, &values, amperes(across.base() / resistance.base())));
    }
    if flow.current.base().abs() <= 0.0 {
        return None;
    }
    let beyond = across - flow.forward;
    let values =
        [("V_load", across.show()), ("V_f", flow.forward.show()), ("R", resistance.show())];
    Some(step(&THROUGH_DIODE, &values, amperes(beyond.base() / resistance.base())))
}

/// The bare pin with a meter on it.
pub(super) fn bare_step(state: KeyState, operating: &Operating) -> Option<Step> {
    pin_step(&BARE, state, operating)
}

/// What lifts a dead supply or a dead feed.
fn dead_steps(operating: &Operating) -> Vec<Step> {
    let carries = |it: &&DeadFlow| it.current.base() > 1e-9;
    let dead_step = |it: &DeadFlow| {
        let formula = match it.dead {
            Dead::Supply => &DEAD_SUPPLY,
            Dead::FiveVolt => &DEAD_FIVE_VOLT,
            Dead::Ignition | Dead::Relay | Dead::Feed => &DEAD_FEED,
            Dead::Ground => &LOST_GROUND,
        };
        let values = [("I_dead", it.current.show()), ("R_dead", it.resistance.show())];
        step(formula, &values, volts(it.current.base() * it.resistance.base()))
    };
    operating.dead.iter().filter(carries).map(dead_step).collect()
}

/// The nodal balance; its result is worked out here from the branches, and a test holds it against the solver's.
fn pin_step(
    formulas: &[(KeyState, [Formula; 5]); 10],
    state: KeyState,
    operating: &Operating,
) -> Option<Step> {
    let branches = &operating.branches;
    let (_, [one, two, three, four, more]) = formulas.iter().find(|(it, _)| *it == state)?;
    let formula = match branches.len() {
        0 => return None,
        1 => one,
        2 => two,
        3 => three,
        4 => four,
        _ => more,
    };
    let (source, parallel) = balance(branches);
    let mut values: Vec<(&str, Value)> = Vec::with_capacity(2 * SYMBOLS.len());
    if branches.len() > SYMBOLS.len() {
        values.extend([("I_sum", source.show()), ("R_sum", parallel.show())]);
    } else {
        for (branch, (v, r)) in branches.iter().zip(SYMBOLS) {
            values.extend([(v, branch.behind.show()), (r, branch.resistance.show())]);
        }
    }
    Some(step(formula, &values, volts(source.base() * parallel.base())))
}

const SYMBOLS: [(&str, &str); 4] = [("V_1", "R_1"), ("V_2", "R_2"), ("V_3", "R_3"), ("V_4", "R_4")];

/// The current that all branches would bring to a pin at ground, and their resistances in parallel.
fn balance(branches: &[PinBranch]) -> (Current, Resistance) {
    let current =
        branches.iter().map(|branch| branch.behind.base() / branch.resistance.base()).sum();
    let conductance: f64 = branches.iter().map(|branch| branch.resistance.base().recip()).sum();
    (amperes(current), ohms(conductance.recip()))
}

/// The voltage at which a load with a winding is sure to act at a temperature.
pub(super) fn acts_at(load: &Load, temperature: Temperature) -> (Voltage, Vec<Step>) {
    let cold = load.pull_in.high;
    let hot = cold * load.kind.warmth(temperature);
    let values = [("V_20", cold.show()), ("T", temperature.show())];
    (hot, vec![step(&HOT, &values, hot)])
}

/// The resistance of a winding at a temperature.
pub(super) fn resistance_at(load: &Load, temperature: Temperature) -> Step {
    let cold = load.resistance.nominal;
    let values = [("R_20", cold.show()), ("T", temperature.show())];
    step(&copper::AT_TEMPERATURE, &values, cold * load.kind.warmth(temperature))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        output::{
            FarEnd, LoadKind, Output, PullRail, Stage, SupplyCorner, Surroundings, Wiring, rest,
        },
        quantity::{Band, celsius},
    };

    /// Every pin and bare pin that is shown as a nodal balance is what the solver found.
    #[track_caller]
    fn check(wiring: &Wiring) {
        let nominal = SupplyCorner {
            name: "at rest",
            supply: volts(12.6),
            temperature: celsius(20.0),
            is_cranking: false,
            is_charging: false,
        };
        let dead = Band::exact(ohms(47.0));
        let around =
            Surroundings { corners: vec![nominal], nominal, dead_rail: dead, dead_feed: dead };
        let rest = rest(wiring, 0, &around).expect("there is a load");
        for state in &rest.states {
            for operating in [&state.nominal.operating, &state.bare.metered] {
                let shown =
                    pin_step(&PIN, state.state, operating).expect("something holds the pin");
                let (shown, solved) = (shown.result.number, operating.pin.map(Measure::base));
                let off = shown.zip(solved).map(|(shown, solved)| (shown - solved).abs());
                assert!(off.is_some_and(|off| off < 1e-9), "{shown:?} and {solved:?}: {wiring:?}");
            }
        }
    }

    #[test]
    fn the_balance_that_is_shown_is_the_one_that_was_solved() {
        for stage in Stage::ALL {
            for far_end in FarEnd::ALL {
                for pull_up in [None, Some(PullRail::Battery), Some(PullRail::FiveVolt)] {
                    let mut output = Output::plain(stage);
                    output.pull_up = pull_up.map(|rail| (Band::exact(ohms(2200.0)), rail));
                    output.pull_down = pull_up.map(|_| Band::exact(ohms(4700.0)));
                    let load = Load { kind: LoadKind::Solenoid, ..Load::relay_coil(far_end) };
                    for &level in output.levels() {
                        // with a second load there are five branches and more
                        for loads in [vec![load.clone()], vec![load.clone(); 3]] {
                            check(&Wiring::alone(output.clone(), level, loads));
                        }
                    }
                }
            }
        }
    }
}
