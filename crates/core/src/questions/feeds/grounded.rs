//! The grounds of the plan: strap, the controller's wires, the sensors' bolt.

use super::read::{Consumers, PlannedCircuit, Source, of_injectors};
use crate::{
    fields::{
        battery,
        grounds::{self, MinusTo, SensorGround, StrapFitted},
        harness,
        relays::{self, GroundedAt},
    },
    plan::MOST_ENTRIES,
    quantity::{Area, Current, Length, Measure, Resistance, amperes},
    read::{Purpose, Reader},
    schema::Part,
    supply::{
        cable::CableInputs,
        ground::{self, GroundWires, SharedBolt, StrapInputs},
        laid::LaidWire,
    },
};

/// What is known of the strap between engine and body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct PlannedStrap {
    pub(crate) minus_to: Option<MinusTo>,
    pub(crate) strap: Option<StrapFitted>,
    /// Whether its size, and whether its length is known.
    pub(crate) known: (bool, bool),
    /// Its size and length, where both are known.
    pub(crate) sized: Option<(Area, Length)>,
    /// As the way back of the starter's current, where that is known.
    pub(crate) inputs: Option<StrapInputs>,
    /// What pump, fan, lamps and heaters draw, where that is known of each that there is.
    pub(crate) of_body: Option<Current>,
}

/// What is known of the controller's ground wires.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct PlannedWires {
    /// Nothing while something of them is not known.
    pub(crate) wires: Option<GroundWires>,
    /// What surely comes back through them: of loads that are known.
    pub(crate) certain: Current,
}

/// Where the sensors are grounded, and what else is there.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct PlannedSensors {
    pub(crate) at: SensorGround,
    /// The bolt with what flows over it, where that is known.
    pub(crate) bolt: Option<SharedBolt>,
    /// The relay of most of it.
    pub(crate) most: Option<(usize, String, Current)>,
    /// What shares it and is not known.
    pub(crate) unknown: Option<String>,
}

/// All of them; nothing of what nothing is said of.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct PlannedGrounds {
    pub(crate) strap: Option<PlannedStrap>,
    pub(crate) wires: Option<PlannedWires>,
    pub(crate) sensors: Option<PlannedSensors>,
}

/// Reads them.
pub(super) fn grounds(
    reader: &mut Reader<'_>,
    circuits: &[PlannedCircuit],
    (among, laid): (&Consumers<'_>, LaidWire),
    starter: Option<Current>,
) -> PlannedGrounds {
    PlannedGrounds {
        strap: strap(reader, circuits, (among, laid), starter),
        wires: wires(reader, (among, laid)),
        sensors: sensors(reader, circuits),
    }
}

impl PlannedGrounds {
    /// The strap as part of the way back to the battery, where it is.
    pub(super) fn behind_cable(&self) -> Option<Resistance> {
        let it = self.strap?.inputs?;
        Some(ground::strap(it.length, it.area, it.temperature))
    }

    /// What the strap loses more than it should, and the most that it may lose.
    pub(super) fn strap_over(&self, cable: Option<&CableInputs>) -> Option<StrapLoss> {
        let inputs = self.strap?.inputs?;
        let most = cable.map_or_else(ground::most_of_a_strap, CableInputs::left_to_strap);
        let is_over = match cable {
            Some(cable) => {
                cable.is_strap_worse() && crate::supply::cable::is_too_much(cable.answer().drop)
            }
            None => inputs.drop() > most,
        };
        is_over.then(|| StrapLoss { inputs, wanted: inputs.wanted(most) })
    }
}

/// A strap that loses too much, and the thinnest that doesn't.
#[derive(Clone, Copy, Debug)]
pub(super) struct StrapLoss {
    pub(super) inputs: StrapInputs,
    pub(super) wanted: Option<Area>,
}

fn strap(
    reader: &mut Reader<'_>,
    circuits: &[PlannedCircuit],
    (among, laid): (&Consumers<'_>, LaidWire),
    starter: Option<Current>,
) -> Option<PlannedStrap> {
    let minus_to = reader.choice(grounds::MINUS_TO).value();
    let strap = reader.choice(grounds::STRAP).value();
    let size = reader.band(grounds::STRAP_SIZE).value();
    let length = reader.band(grounds::STRAP_LENGTH).value();
    let is_none = strap == Some(StrapFitted::Nothing);
    let sized = size.zip(length).filter(|_| !is_none).map(|(size, length)| (size.low, length.high));
    // where the minus is on the engine, the starter's current needs no strap
    let starter = starter.filter(|_| minus_to == Some(MinusTo::Body));
    let inputs = sized.zip(starter).map(|((area, length), starter)| StrapInputs {
        length,
        area,
        starter,
        temperature: among.conditions.temperature.nominal,
        laid: LaidWire { bundled: 1, ..laid },
    });
    let is_typed = strap.is_some() || size.is_some() || length.is_some();
    let of_body = of_body(circuits);
    let known = (size.is_some(), length.is_some());
    (is_typed || is_begun(reader)).then_some(PlannedStrap {
        minus_to,
        strap,
        known,
        sized,
        inputs,
        of_body,
    })
}

/// Whether so much is said of what is fed that the way back is worth asking for.
fn is_begun(reader: &Reader<'_>) -> bool {
    let cable =
        [battery::STARTER.place(), battery::LEAD_LENGTH.place(), battery::LEAD_SIZE.place()];
    let mut relays = 0..reader.plan().count(Part::Relays).min(MOST_ENTRIES);
    let is_fed = |at: usize| {
        [relays::DRAWS.at(at), relays::FUSE.at(at)].iter().all(|it| reader.is_typed(it.place()))
    };
    cable.into_iter().any(|it| reader.is_typed(it)) || relays.any(is_fed)
}

/// What is usually grounded to the body: common practice, no source.
fn of_body(circuits: &[PlannedCircuit]) -> Option<Current> {
    let is_of_body = |it: &&PlannedCircuit| {
        let usual = [Purpose::Pump, Purpose::Fan, Purpose::Lamps, Purpose::Heater];
        it.purpose.is_some_and(|purpose| usual.contains(&purpose))
    };
    let each = circuits.iter().filter(is_of_body).map(|it| it.carries);
    let each: Option<Vec<Current>> = each.collect();
    each.filter(|it| !it.is_empty()).map(|each| ground::sum(each.into_iter()))
}

fn wires(
    reader: &mut Reader<'_>,
    (among, laid): (&Consumers<'_>, LaidWire),
) -> Option<PlannedWires> {
    let count = reader.whole(grounds::WIRES).value();
    let area = reader.band(grounds::WIRE_SIZE).value().map(|it| it.low);
    let length = reader.band(grounds::WIRE_LENGTH).value().map(|it| it.high);
    if count.is_none() && area.is_none() && length.is_none() {
        return None;
    }
    let (all, certain) = among.rest.sunk();
    let injectors = of_injectors(among).unwrap_or_else(|| amperes(0.0));
    let is_read = !among.rest.is_unreadable();
    let wires = count.zip(area).zip(length).map(|((count, area), length)| GroundWires {
        count,
        area,
        length,
        sinks: if is_read { all + injectors } else { amperes(0.0) },
        laid,
        pin: reader.band_elsewhere(harness::PIN_WIRE).map(|it| it.high),
    });
    Some(PlannedWires { wires, certain: certain + injectors })
}

fn sensors(reader: &mut Reader<'_>, circuits: &[PlannedCircuit]) -> Option<PlannedSensors> {
    let at = reader.choice(grounds::SENSORS).value();
    let ohm = reader.band(grounds::BOLT);
    let is_assumed = ohm.is_assumed();
    let there: Vec<(usize, &PlannedCircuit)> = circuits
        .iter()
        .filter_map(|it| match it.source {
            Source::Relay(at) => Some((at, it)),
            _ => None,
        })
        .filter(|(at, _)| {
            let ground = reader.choice_elsewhere(relays::GROUND.at(*at));
            ground == Some(GroundedAt::Sensors)
        })
        .collect();
    let at = at?;
    let unknown = there.iter().find(|(_, it)| it.own.is_none()).map(|(_, it)| it.name.clone());
    let known: Vec<(usize, String, Current)> =
        there.iter().filter_map(|(at, it)| Some((*at, it.name.clone(), it.own?))).collect();
    let bolt = ohm.value().filter(|_| !known.is_empty()).map(|ohm| SharedBolt {
        ohm,
        is_assumed,
        current: ground::sum(known.iter().map(|(_, _, current)| *current)),
    });
    let most = known.into_iter().max_by(|one, other| one.2.base().total_cmp(&other.2.base()));
    Some(PlannedSensors { at, bolt, most, unknown })
}
