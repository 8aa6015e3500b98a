//! What happens at the moment a winding is switched off, and when that is done again and again.

use super::{case::LoadAtLevel, names, working};
use crate::{
    math,
    message::Message,
    output::{Catcher, Following, KeyState, Kick, Load, Pulsing, SolvedCorner, StateRest, kick},
    quantity::{Band, Energy, Measure, Time, Value, number},
    questions::outputs::words,
    report::{Figure, Tone},
    say,
    words::Wording,
    working::{Formula, Step, step},
};

const RL: &str = "University Physics, vol. 2, section 14.4: a coil's current nears its last value by exp(-t R / L)";

const LETS_GO: Formula =
    Formula { symbols: "t = L / R ln((I_0 R + V_net) / (I_low R + V_net))", source: RL };
const IN_OUTPUT: Formula = Formula {
    symbols: "E = V_drop (L I_0 / R - L V_net / R² ln(1 + I_0 R / V_net))",
    source: "the charge that runs on, the coil's current integrated until it is 0, times the voltage it crosses",
};
const MOST: Formula =
    Formula { symbols: "I_most = I_on + (I_least - I_on) exp(-D R_1 / (f L))", source: RL };
const ON_LEFT: Formula = Formula { symbols: "a = exp(-D R_1 / (f L))", source: RL };
const OFF_LEFT: Formula = Formula { symbols: "b = exp(-(1 - D) R_2 / (f L))", source: RL };
const LEAST: Formula = Formula {
    symbols: "I_least = (b I_on (1 - a) - V_net / R_2 (1 - b)) / (1 - a b)",
    source: "what both phases of a period leave as it was",
};
const FALLEN: Formula =
    Formula { symbols: "t = L / R_2 ln((I_most R_2 + V_net) / (I_off R_2 + V_net))", source: RL };
const AT_ONCE: Formula = Formula {
    symbols: "I_mean = D I_on + (1 - D) I_off",
    source: "the mean over a period; without a winding the current follows at once",
};
const MEAN: Formula = Formula {
    symbols: "I_mean = D I_on - (1 - D) V_net / R_2 - f L (I_most - I_least) (1 / R_1 - 1 / R_2)",
    source: MEAN_SOURCE,
};
const MEAN_FALLEN: Formula = Formula {
    symbols: "I_mean = D I_on - f t V_net / R_2 - f L (I_most - I_off) (1 / R_1 - 1 / R_2) + I_off (1 - D - f t)",
    source: MEAN_SOURCE,
};
const MEAN_SOURCE: &str = "each phase's equation L di/dt = V - R i, integrated over a period";
const HEAT: Formula =
    Formula { symbols: "P = f E", source: "what is caught at each turn-off, that often" };

/// The numbers of the first case: pulsed, and at a single turn-off.
pub(super) fn figures(case: &LoadAtLevel) -> Vec<Figure> {
    let mut figures = Vec::new();
    if let Some(state) = case.rest.state(KeyState::Pulsed) {
        figures.extend(pulsed(state));
    }
    figures.extend(turn_off(case));
    figures
}

fn turn_off(case: &LoadAtLevel) -> Vec<Figure> {
    let turned = || {
        let wiring = &case.rest.wiring;
        let load = wiring.loads.get(case.rest.subject)?;
        let on = case.rest.state(KeyState::On)?;
        let nominal = kick(wiring, &on.nominal, load.inductance.nominal)?;
        let ends = [load.inductance.low, load.inductance.high];
        let at = |solved: &SolvedCorner| ends.map(|end| kick(wiring, solved, end));
        let kicks: Vec<Kick> = on.corners.iter().flat_map(at).flatten().collect();
        Some((nominal, kicks))
    };
    let Some((nominal, kicks)) = turned() else { return Vec::new() };
    let steps = kick_steps(&nominal, case);
    let mut figures = Vec::new();
    if let Some(time) = nominal.lets_go {
        let times = kicks.iter().filter_map(|kick| kick.lets_go);
        let band: Band<Time> = times.fold(Band::exact(time), |band, it| band.widened_to(it));
        let caught = names::catcher(nominal.path.map(|path| path.catcher));
        let label = say!(words::FIGURE_LETS_GO, catcher = caught);
        figures.push(Figure::new(label, band, steps.clone()));
    }
    if nominal.path.is_some_and(|path| path.catcher == Catcher::Clamp) {
        let energies = kicks.iter().map(|kick| kick.in_output);
        let band: Band<Energy> =
            energies.fold(Band::exact(nominal.in_output), |band, it| band.widened_to(it));
        figures.push(Figure::new(say!(words::FIGURE_IN_CLAMP), band, steps));
    }
    figures
}

fn kick_steps(kick: &Kick, case: &LoadAtLevel) -> Vec<Step> {
    let (Some(path), Some(load)) = (kick.path, case.rest.wiring.loads.get(case.rest.subject))
    else {
        return Vec::new();
    };
    let resistance = kick.winding + path.resistance;
    let low = load.drop_out.low / load.resistance.nominal;
    let values = [
        ("L", kick.inductance.show()),
        ("R", resistance.show()),
        ("I_0", kick.current.show()),
        ("I_low", low.show()),
        ("V_net", path.net.show()),
        ("V_drop", path.drop.show()),
    ];
    let mut steps = case
        .rest
        .state(KeyState::On)
        .map_or_else(Vec::new, |on| working::state_steps(KeyState::On, &on.nominal));
    steps.extend(kick.lets_go.map(|time| step(&LETS_GO, &values, time)));
    if path.drop.base() > 0.0 {
        steps.push(step(&IN_OUTPUT, &values, kick.in_output));
    }
    steps
}

fn pulsed(state: &StateRest) -> Vec<Figure> {
    let Some(nominal) = state.nominal.operating.pulsing else { return Vec::new() };
    let each = || state.corners.iter().filter_map(|it| it.operating.pulsing);
    let steps = steps(&nominal);
    let mean = each().fold(Band::exact(nominal.mean), |band, it| band.widened_to(it.mean));
    let swing = each().fold(
        Band { low: nominal.least, nominal: nominal.mean, high: nominal.most },
        |band, it| band.widened_to(it.least).widened_to(it.most),
    );
    let heat = each().fold(Band::exact(nominal.heat), |band, it| band.widened_to(it.heat));
    let label = |code: &'static Wording| -> Message {
        Message::new(code, "frequency, duty", &[&nominal.frequency, &nominal.duty])
    };
    let mut figures = vec![
        Figure::new(label(words::FIGURE_PULSED_MEAN), mean, steps.clone()),
        Figure::new(label(words::FIGURE_PULSED_SWING), swing, steps.clone()),
    ];
    if heat.high.base() > LEAST_HEAT_W {
        figures.push(Figure::new(label(words::FIGURE_PULSED_HEAT), heat, steps));
    }
    figures
}

/// Less heat than this nobody asks for.
const LEAST_HEAT_W: f64 = 0.001;

/// How a pulsed load's current was found.
pub(super) fn steps(it: &Pulsing) -> Vec<Step> {
    let (net, second) = it.path.map_or((Value::text(""), Value::text("")), |path| {
        (path.net.show(), (it.winding + path.resistance).show())
    });
    let values = [
        ("I_on", it.on_final.show()),
        ("I_off", it.floor.show()),
        ("I_least", it.least.show()),
        ("I_most", it.most.show()),
        ("R_1", it.on_resistance.show()),
        ("R_2", second),
        ("V_net", net),
        ("L", it.inductance.show()),
        ("f", it.frequency.show()),
        ("D", it.duty.show()),
        ("E", it.in_output.show()),
    ];
    if it.path.is_none() {
        return vec![step(&AT_ONCE, &values, it.mean)];
    }
    let share = |x: f64| Value::text(number(math::exp(-x)));
    let decay = |duty: f64, ohm: f64| duty * ohm / (it.frequency.base() * it.inductance.base());
    let second = it.path.map_or(it.winding, |path| it.winding + path.resistance).base();
    let (a, b) = (
        share(decay(it.duty.base(), it.on_resistance.base())),
        share(decay(1.0 - it.duty.base(), second)),
    );
    let left = [("a", a.clone()), ("b", b.clone())];
    let mut steps = if let Some(time) = it.fallen {
        let values = with(&values, &[("t", time.show())]);
        vec![
            step(&MOST, &values, it.most),
            step(&FALLEN, &values, time),
            step(&MEAN_FALLEN, &values, it.mean),
        ]
    } else {
        let values = with(&values, &left);
        vec![
            step(&ON_LEFT, &values, a),
            step(&OFF_LEFT, &values, b),
            step(&LEAST, &values, it.least),
            step(&MOST, &values, it.most),
            step(&MEAN, &values, it.mean),
        ]
    };
    if it.heat.base() > 0.0 {
        steps.push(step(&HEAT, &values, it.heat));
    }
    steps
}

fn with<'a>(values: &[(&'a str, Value)], more: &[(&'a str, Value)]) -> Vec<(&'a str, Value)> {
    values.iter().chain(more).cloned().collect()
}

/// What a pulsed load does over all corners: the code of the words, and how it sounds.
pub(super) fn effect(load: &Load, state: &StateRest) -> (&'static Wording, Tone) {
    let corners = state.corners.iter().filter(|it| !it.point.at.is_cranking);
    let pulsed = corners.filter_map(|it| it.operating.pulsing);
    // as unlikely to act, and as likely to let go, as any of its kind
    let does = pulsed.map(|it| it.following(load.pull_in.high, load.drop_out.high));
    let (mut least, mut most) = (Following::Stays, Following::Rests);
    for one in does {
        least = least.min(one);
        most = most.max(one);
    }
    match (least, most) {
        (Following::Stays, _) => (words::EFFECT_STAYS_IN, Tone::Good),
        (Following::EachPulse, Following::EachPulse) => (words::EFFECT_EACH_PULSE, Tone::Good),
        (_, Following::Rests) => (words::EFFECT_TOO_LITTLE, Tone::Doubtful),
        _ => (words::EFFECT_BY_DUTY, Tone::Good),
    }
}
