//! What each sensor supply has to give, and what a short on it takes down.

use super::{read::Sensing, words};
use crate::{
    fields::{self, sensors::SensorFeed},
    finding::{Finding, Findings, Severity},
    quantity::{Current, Measure as _, amperes},
    report::{Answer, Detail, Tone},
    say,
    schema::Part,
};

/// The sum of what is drawn from a supply.
#[derive(Clone, Debug)]
pub(super) struct SupplySum {
    /// All that is known of it: at least so much.
    pub(super) draws: Current,
    /// Each of the parts of it.
    pub(super) parts: Vec<Current>,
    /// The sensors whose draw is not known.
    unknown: Vec<String>,
    /// All sensors that a short on it takes down.
    sensors: Vec<String>,
}

pub(super) fn sum(sensing: &Sensing, supply: usize) -> SupplySum {
    let is_on = |at: Option<usize>| at == Some(supply);
    let (mut parts, mut unknown, mut sensors) = (Vec::new(), Vec::new(), Vec::new());
    for it in &sensing.sensors {
        let own = is_on(it.on.supply) && it.feed != Some(SensorFeed::Battery);
        let second = it.second.is_some() && is_on(it.on.second_supply);
        if !own && !second {
            continue;
        }
        sensors.push(it.name.clone());
        // two tracks on two supplies share what both draw
        let is_shared = it.on.second_supply.is_some() && it.on.second_supply != it.on.supply;
        match it.draw {
            Some(draw) if is_shared => parts.push(draw.high / 2.0),
            Some(draw) => parts.push(draw.high),
            None => unknown.push(it.name.clone()),
        }
    }
    parts.extend(sensing.supplies.get(supply).and_then(|it| it.others));
    let draws = amperes(parts.iter().map(|it| it.base()).sum());
    SupplySum { draws, parts, unknown, sensors }
}

/// The answer about one of them.
pub(super) fn answer(
    sensing: &Sensing,
    at: usize,
    details: Option<fn(&SupplySum) -> Detail>,
    findings: &mut Findings,
) -> Option<Answer> {
    let supply = sensing.supplies.get(at)?;
    let sum = sum(sensing, at);
    // one with nothing on it is asked nothing
    if sum.sensors.is_empty() && sum.parts.is_empty() {
        return None;
    }
    let draws = sum.draws;
    let is_known = !sum.parts.is_empty();
    let (tone, verdict) = match supply.rating {
        Some(rating) if draws > rating => {
            let message = say!(
                words::SUPPLY_TOO_SMALL,
                draws = draws,
                supply = supply.name.clone(),
                rating = rating
            );
            let key = fields::sensor_supplies::RATING.at(at);
            findings.push(Finding::new(Severity::Fault, key, message));
            (Tone::Bad, say!(words::SUPPLY_OVER, draws = draws, rating = rating))
        }
        _ if !is_known => (Tone::Open, say!(words::SUPPLY_BLANK)),
        Some(rating) if sum.unknown.is_empty() => {
            (Tone::Good, say!(words::SUPPLY_GOOD, draws = draws, rating = rating))
        }
        Some(rating) => (Tone::Open, say!(words::SUPPLY_SO_FAR, draws = draws, rating = rating)),
        None => (Tone::Open, say!(words::SUPPLY_OPEN, draws = draws)),
    };
    let mut answer = Answer::new(Part::SensorSupplies.record(at), tone, verdict);
    answer.title = Some(say!(words::SUPPLY_TITLE, supply = supply.name.clone()));
    let list = sum.sensors.join(", ");
    answer.why = (sum.sensors.len() > 1).then(|| say!(words::WHY_SHORT, sensors = list));
    if !sum.unknown.is_empty() {
        answer.to_do.push(say!(words::DO_DRAWS, list = sum.unknown.join(", ")));
    }
    if supply.rating.is_none() {
        answer.to_do.push(say!(words::DO_RATING));
    }
    answer.show(details.filter(|_| is_known).map(|it| it(&sum)));
    Some(answer)
}
