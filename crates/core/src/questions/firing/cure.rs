//! The cures in words, and the two numbers that people confuse: leads out of place, and exchanges.

use super::{plan, wired::CheckedConnection};
use crate::{
    channels::{Check, Cure, PlugPosition, Target, cures},
    engine::TURN,
    message::Message,
    permutation::Permutation,
    quantity::{CrankAngle, Value},
    questions::firing::words,
    report::Figure,
    say,
    working::{Formula, Step, step},
};

const MEMBERSHIP: Formula = Formula {
    symbols: "wrong = seen − right",
    source: "count: each cylinder's channel against the plan",
};
const OUT_OF_PLACE: Formula = Formula {
    symbols: "m = n − right",
    source: "count: leads on their planned channel are right",
};
const EXCHANGES: Formula = Formula {
    symbols: "swaps = m − rings",
    source: "permutations: a ring of k leads takes k − 1 swaps",
};

/// The cures as things to do, cheapest first.
pub(super) fn words(wiring: &CheckedConnection<'_>, cures: &[Cure]) -> Vec<Message> {
    cures.iter().map(|cure| one(wiring, cure)).collect()
}

fn one(wiring: &CheckedConnection<'_>, cure: &Cure) -> Message {
    match cure {
        Cure::Setting(angle) => setting(wiring, *angle),
        Cure::Order(channels) => {
            let order = plan::order_of(&wiring.layout.with_channels(channels));
            if wiring.layout.slots().iter().all(|slot| slot.times.is_empty()) {
                return say!(words::wired::CURE_GROUPS, order = order);
            }
            let order = say!(words::wired::CURE_ORDER, order = order);
            let only = wiring.layout.order(PlugPosition::Only);
            let is_told = wiring.is_ignition() && !only.is_empty();
            let text = crate::read::written(channels);
            let entered = is_told.then(|| crate::fields::controller::ORDER.edit(text));
            order.done_by(wiring.other_habit().into_iter().chain(entered).collect())
        }
        Cure::Exchange { exchanges, out_of_place } => {
            let pairs = exchanges.iter().map(|(one, other)| format!("{one} with {other}"));
            let list = super::listed(pairs);
            let (n, m) = (exchanges.len(), *out_of_place);
            if wiring.is_ignition() {
                say!(words::wired::CURE_EXCHANGE, n = n, m = m, list = list)
            } else {
                say!(words::wired::CURE_EXCHANGE_INJECTORS, n = n, m = m, list = list)
            }
        }
        Cure::Rewire(moves) => {
            let moves = moves
                .iter()
                .map(|it| format!("cylinder {} from {} to {}", it.target, it.from, it.to));
            let list = super::listed(moves);
            if wiring.has_towers() {
                say!(words::wired::CURE_MOVE_TOWERS, list = list)
            } else {
                say!(words::wired::CURE_MOVE, list = list)
            }
        }
    }
}

/// All errors are the same: one cause, one setting.
fn setting(wiring: &CheckedConnection<'_>, error: CrankAngle) -> Message {
    let engine = wiring.engine;
    let size = CrankAngle::new(error.degrees().abs());
    if wiring.has_towers() {
        return towers(wiring, error);
    }
    let later = error.degrees() < 0.0;
    if !wiring.is_ignition() {
        return if later {
            say!(words::wired::CURE_SETTING_FUEL_LATER, error = size)
        } else {
            say!(words::wired::CURE_SETTING_FUEL_EARLIER, error = size)
        };
    }
    if size.is_near(TURN) && engine.cycle() != TURN {
        return say!(words::wired::CURE_SETTING_TURN, error = size);
    }
    let first = engine.firings().first().map_or(1, |firing| firing.cylinder);
    // the one that really fires when the controller means the first
    let taken = engine.firings().iter().find(|firing| {
        let left = (firing.angle + error).as_error(engine.cycle());
        left.is_near(CrankAngle::default())
    });
    let other = taken.map_or(first, |firing| firing.cylinder);
    if later {
        say!(words::wired::CURE_SETTING_LATER, error = size, first = first, other = other)
    } else {
        say!(words::wired::CURE_SETTING_EARLIER, error = size, first = first, other = other)
    }
}

/// Every lead of a distributor sits the same number of towers round.
fn towers(wiring: &CheckedConnection<'_>, error: CrankAngle) -> Message {
    let layout = wiring.layout;
    let count = wiring.engine.firings().len();
    let place =
        |channel: u32| usize::try_from(channel.saturating_sub(1)).unwrap_or(0) % count.max(1);
    let off = wiring.wired.iter().find_map(|(target, &channel)| {
        let planned = place(layout.channel_of(*target)?);
        Some((place(channel) + count - planned) % count.max(1))
    });
    let on = off.unwrap_or(0);
    // the shorter way round
    if on * 2 <= count && error.degrees() > 0.0 {
        say!(words::wired::CURE_SETTING_TOWERS_BACK, n = on)
    } else {
        say!(words::wired::CURE_SETTING_TOWERS_ON, n = count - on)
    }
}

/// How many of those seen are wrong.
pub(super) fn membership(check: &Check) -> Step {
    let (seen, wrong) = (check.reached.len(), check.wrong().len());
    let values = [("seen", Value::from(seen)), ("right", Value::from(seen - wrong))];
    step(&MEMBERSHIP, &values, wrong)
}

/// Leads out of place, and the fewest exchanges that cure them: told apart.
pub(super) fn figures(wiring: &CheckedConnection<'_>) -> Vec<Figure> {
    let (layout, wired) = (wiring.layout, &wiring.wired);
    let found = cures(wiring.engine, layout, wired, false, wiring.check);
    let exchange = found.into_iter().find_map(|cure| match cure {
        Cure::Exchange { exchanges, out_of_place } => Some((exchanges, out_of_place)),
        _ => None,
    });
    let Some((exchanges, out_of_place)) = exchange else { return Vec::new() };
    let targets = layout.targets();
    let all = Value::from(targets.len());
    let right = Value::from(targets.len() - out_of_place);
    let places = step(&OUT_OF_PLACE, &[("n", all), ("right", right)], out_of_place);
    let rings = rings(&targets, &exchanges);
    let values = [("m", Value::from(out_of_place)), ("rings", Value::from(rings))];
    let fewest = step(&EXCHANGES, &values, exchanges.len());
    vec![
        Figure::plain(say!(words::wired::FIGURE_OUT_OF_PLACE), out_of_place, vec![places]),
        Figure::plain(say!(words::wired::FIGURE_EXCHANGES), exchanges.len(), vec![fewest]),
    ]
}

/// The rings of more than one lead that these exchanges close.
fn rings(targets: &[Target], exchanges: &[(Target, Target)]) -> usize {
    let place = |target: &Target| targets.iter().position(|it| it == target);
    let places: Vec<_> =
        exchanges.iter().filter_map(|(one, other)| Some((place(one)?, place(other)?))).collect();
    let permutation = Permutation::of_exchanges(targets.len(), &places);
    permutation.map_or(0, |it| it.cycles().iter().filter(|cycle| cycle.len() > 1).count())
}
