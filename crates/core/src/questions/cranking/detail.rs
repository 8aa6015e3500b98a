//! What stands below the answers: which numbers, tables and pictures, in which order.

use super::{
    advice::Best,
    bounds,
    figures::{self, bands, power, stop},
    otherwise::Otherwise,
    picture,
    relays::{pump, running},
};
use crate::{
    cranking::{CrankingAnswer, CrankingInputs},
    read::{Known, Purpose, SpeedRelay},
    report::Detail,
    timeline::Interval,
};

/// Of a start that was followed to its end, and of those that go otherwise.
pub(super) fn of_start(
    known: &Known,
    inputs: &CrankingInputs,
    result: &CrankingAnswer,
    best: Option<&Best>,
    otherwise: &Otherwise,
) -> Detail {
    let tables = figures::table(inputs, result).into_iter().chain(otherwise.table(inputs));
    Detail {
        figures: figures::figures(known, inputs, result, best),
        tables: tables.collect(),
        pictures: picture::picture(inputs, result).into_iter().collect(),
    }
}

/// Of a start that is too much to be followed.
pub(super) fn of_outline(
    known: &Known,
    inputs: &CrankingInputs,
    outline: &CrankingAnswer,
) -> Detail {
    let mut figures = figures::speeds(known, inputs, outline);
    figures.push(figures::relay(outline));
    Detail { figures, ..Detail::default() }
}

/// Of a further relay that must be closed while the starter turns.
pub(super) fn of_relay(
    relay: &SpeedRelay,
    purpose: Purpose,
    inputs: &CrankingInputs,
    result: &CrankingAnswer,
    best: Option<&Best>,
) -> Detail {
    let mut figures = Vec::new();
    if purpose == Purpose::Pump {
        figures.extend(pump::figures(relay, inputs, result));
    }
    figures.extend(power(result));
    figures.extend(bands(result).into_iter().take(1));
    figures.extend(bounds::figures(inputs, result, best));
    figures.extend(stop(result));
    Detail { figures, ..Detail::default() }
}

/// Of a relay that must stay out while the starter turns: the thresholds that work.
pub(super) fn of_running(band: Interval) -> Detail {
    Detail { figures: vec![running::figure(band)], ..Detail::default() }
}
