//! What kill switch and controller are for: the plan of both.

use crate::{
    fields::{
        battery::{self, KillSwitch},
        controller::{self, ReversedSupply},
    },
    quantity::Voltage,
    read::Reader,
    supply::survives::{self, Overvoltage},
};

/// What is said of them.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct PlannedGuards {
    pub(crate) kill_switch: Option<KillSwitch>,
    /// Whether something is known of an alternator.
    pub(crate) has_alternator: bool,
    /// What the controller survives, where anything is said of it.
    pub(crate) survival: Option<Survival>,
}

/// What a controller survives.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Survival {
    /// Whether its highest supply is known.
    pub(crate) is_known: bool,
    pub(crate) exceeded: Vec<Overvoltage>,
    pub(crate) fails_reversed: bool,
}

/// Reads them.
pub(super) fn guards(
    reader: &mut Reader<'_>,
    has_alternator: bool,
    resting: Voltage,
) -> PlannedGuards {
    let kill_switch = reader.choice(battery::KILL_SWITCH).value();
    let highest = reader.band(controller::HIGHEST_SUPPLY).value().map(|it| it.low);
    let reverse = reader.choice(controller::REVERSE).value();
    let survival = (highest.is_some() || reverse.is_some()).then(|| Survival {
        is_known: highest.is_some(),
        exceeded: highest.map(|it| survives::exceeded(it, resting)).unwrap_or_default(),
        fails_reversed: reverse == Some(ReversedSupply::Fails),
    });
    PlannedGuards { kill_switch, has_alternator, survival }
}
