//! What feeds the relays' coils while the starter turns.

use crate::{
    cranking::{self, Relay},
    fields::{
        self,
        controller::ControllerFeed,
        relays::{DROP_OUT, FAR_END, FAR_RELAY, NAME, PULL_IN, PURPOSE},
        switched_feeds::WhileCranking,
    },
    output::FarEnd,
    plan::{MOST_ENTRIES, Plan},
    quantity::{Band, Resistance, Voltage, seconds, volts},
    read::{Conditions, OutputLink, PlannedRest, Reader, relay_records},
    schema::{Key, Part},
};

/// Reads what is lost there, where a relay is held against it.
fn stand(reader: &mut Reader<'_>) {
    let plan = reader.plan();
    let loss = fields::switched_feeds::CRANKING_LOSS;
    if (0..plan.count(Part::Relays)).any(|at| !plan.text(PULL_IN.at(at)).trim().is_empty()) {
        reader.band(loss);
    } else {
        reader.stand(loss.into());
    }
}

/// The on-resistance of the output that a relay's coil hangs on, and its coil's resistance.
pub(super) fn switched(rest: &PlannedRest, relay: usize) -> Option<(Resistance, Resistance)> {
    let mut loads = rest.loads.iter();
    let coil = loads.find(|it| it.place.part == Part::Relays && it.place.number == relay)?;
    let OutputLink::To(number) = coil.link else { return None };
    let output = rest.outputs.get(number)?.output.as_ref()?;
    Some((output.on_resistance.nominal, coil.resistance.nominal))
}

/// Whether a relay's coil has no feed while the starter turns: the ignition feed is cut then, and it hangs on that, itself or
/// through the contacts of others.
pub(super) fn is_unfed(reader: &Reader<'_>, relay: usize) -> bool {
    if reader.choice_elsewhere(fields::switched_feeds::CRANKING) != Some(WhileCranking::Cut) {
        return false;
    }
    let plan = reader.plan();
    let count = plan.count(Part::Relays).min(MOST_ENTRIES);
    let above = |at: &usize| {
        let is_fed_by_relay = reader.choice_elsewhere(FAR_END.at(*at)) == Some(FarEnd::Relay);
        let feeder = plan.text(FAR_RELAY.at(*at)).trim();
        let is_it = |it: &usize| plan.text(NAME.at(*it)).trim().eq_ignore_ascii_case(feeder);
        (0..count).find(|it| is_fed_by_relay && !feeder.is_empty() && is_it(it))
    };
    let mut chain = std::iter::successors(Some(relay), above).take(count);
    chain.any(|at| reader.choice_elsewhere(FAR_END.at(at)) == Some(FarEnd::Ignition))
}

/// What the engine needs and has no feed while the starter turns, by name.
pub(super) fn unfed(reader: &mut Reader<'_>) -> Vec<String> {
    stand(reader);
    reader.choice(fields::switched_feeds::CRANKING);
    let feed = reader.choice(fields::controller::FEED).value();
    let is_cut =
        reader.choice_elsewhere(fields::switched_feeds::CRANKING) == Some(WhileCranking::Cut);
    let controller =
        (is_cut && feed == Some(ControllerFeed::Ignition)).then(|| "controller".into());
    let plan = reader.plan();
    let is_needed = |at: &usize| {
        let purpose = reader.choice_elsewhere(PURPOSE.at(*at));
        purpose.is_some_and(super::relays::Purpose::is_for_starting) && is_unfed(reader, *at)
    };
    let relays = (0..plan.count(Part::Relays).min(MOST_ENTRIES)).filter(is_needed);
    controller.into_iter().chain(relays.map(|at| named(plan, at))).collect()
}

/// A relay that is in before the starter turns, and lets go while it does.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct LetsGo {
    pub(crate) name: String,
    pub(crate) key: Key<Voltage>,
    pub(crate) at_coil: Voltage,
    pub(crate) holds_to: Voltage,
}

/// The first relay that the engine needs while the starter turns, is not switched at a speed, and lets go then.
pub(super) fn lets_go(
    reader: &Reader<'_>,
    rest: &PlannedRest,
    conditions: &Conditions,
) -> Option<LetsGo> {
    let plan = reader.plan();
    let count = plan.count(Part::Relays).min(MOST_ENTRIES);
    let is_asked = |at: &usize| {
        let purpose = reader.choice_elsewhere(PURPOSE.at(*at));
        purpose.is_some_and(super::relays::Purpose::is_for_starting)
            && !relay_records::is_switched_at_speed(plan, *at)
    };
    (0..count).filter(is_asked).find_map(|at| {
        let (key, none) = (DROP_OUT.at(at), Band::exact(seconds(0.0)));
        let relay = Relay {
            pull_in_time: none,
            drop_out_time: none,
            pull_in_voltage: Band::exact(volts(0.0)),
            drop_out_voltage: Some(reader.band_elsewhere(key)?.high),
            feed_loss: reader.band_elsewhere(fields::switched_feeds::CRANKING_LOSS)?,
            switched: switched(rest, at),
        };
        let supplies = (conditions.cold_cranking, conditions.hot_cranking);
        let (at_coil, holds_to) = cranking::lets_go(&relay, supplies, conditions.temperature)?;
        Some(LetsGo { name: named(plan, at), key, at_coil, holds_to })
    })
}

fn named(plan: &Plan, at: usize) -> String {
    let name = crate::read::problem::shortened(plan.text(NAME.at(at)).trim());
    if name.is_empty() { format!("relay {}", at + 1) } else { name }
}
