//! The fuel from its fields.

use crate::read::{Entry, Reader, injectors::usual, span_of, span_value};
use crate::{
    channels::Injection,
    fields,
    fuel::{
        FuelInputs, InjectionPace, Regulator,
        flow::{InjectorSet, Rated},
    },
    quantity::{
        Band, Density, Dimension, MassFlow, Measure, Pressure, RotationalSpeed, Span,
        SpecificConsumption, Value, VolumeRate, read_span,
    },
    schema::{Key, Part},
    tables::fuels::Fuel,
};

const FLOW: Key<VolumeRate> = fields::fuel::FLOW;
const SECOND_FLOW: Key<VolumeRate> = fields::fuel::SECOND_FLOW;
const CONSUMPTION: Key<SpecificConsumption> = fields::fuel::CONSUMPTION;
const DENSITY: Key<Density> = fields::fuel::DENSITY;

/// What the fields of the fuel say.
#[derive(Debug)]
pub(crate) struct Fuelled {
    /// The flow of one injector; little can be said without it.
    pub(crate) flow: Entry<Rated>,
    /// How many injectors there are.
    pub(crate) count: Option<u32>,
    /// Whether a second set has a flow but no number: it is left out then.
    pub(crate) second_is_uncounted: bool,
    /// What the fuel is called.
    pub(crate) fuel: &'static str,
    /// The inputs, with what is assumed for blanks; without injectors where their flow or number is not known.
    pub(crate) inputs: FuelInputs,
    /// What was taken for fields that are blank or can't be read: the label of the field and the value.
    pub(crate) taken: Vec<(&'static str, Value)>,
}

/// Reads the fuel; every field, whatever stands in the others. Nothing where none of it was typed: then it was not asked
/// about, and nothing is taken.
pub(crate) fn fuel(
    reader: &mut Reader<'_>,
    [count, second_count]: [Option<u32>; 2],
    speed: Option<Band<RotationalSpeed>>,
) -> Option<Fuelled> {
    let taken = &mut Vec::new();
    let (flow, second) = (flow(reader, FLOW), flow(reader, SECOND_FLOW));
    let power = reader.band(fields::fuel::POWER).value();
    if reader.plan().is_blank(Part::Fuel) {
        return None;
    }
    let (fuel, name) = kind(reader, taken);
    let stated_at = usual(reader, fields::fuel::STATED_PRESSURE, taken);
    let rail = usual(reader, fields::fuel::RAIL_PRESSURE, taken);
    let boost = usual(reader, fields::fuel::BOOST, taken);
    let regulator = regulator(reader, boost, taken);
    let pace = speed.map(|speed| pace(reader, speed, taken));
    let dead_time = usual(reader, fields::fuel::DEAD_TIME, taken);
    let inputs = FuelInputs {
        sets: sets([(flow, count), (second, second_count)]),
        stated_at,
        test_density: usual(reader, fields::fuel::TEST_DENSITY, taken),
        density: or_by_fuel(reader, DENSITY, fuel.density(), "of that fuel, as sold", taken),
        rail,
        boost,
        regulator,
        consumption: consumption(reader, fuel, boost, taken),
        duty_limit: usual(reader, fields::fuel::DUTY_LIMIT, taken),
        is_dead_time_given: reader.is_typed(fields::fuel::DEAD_TIME),
        dead_time,
        pace,
        power,
    };
    let second_is_uncounted = second.value().is_some() && second_count.is_none();
    Some(Fuelled {
        flow,
        count,
        second_is_uncounted,
        fuel: name,
        inputs,
        taken: std::mem::take(taken),
    })
}

/// The injectors, where their flow and number are known.
fn sets(sets: [(Entry<Rated>, Option<u32>); 2]) -> Vec<InjectorSet> {
    let set = |(flow, count): (Entry<Rated>, Option<u32>)| {
        flow.value().zip(count).map(|(flow, count)| InjectorSet { count, flow })
    };
    sets.into_iter().filter_map(set).collect()
}

/// The flow, by mass where its unit is one of mass.
fn flow(reader: &mut Reader<'_>, key: Key<VolumeRate>) -> Entry<Rated> {
    let by_volume = reader.band(key).map(Rated::Volume);
    let mass = read_span(reader.text(key), Dimension::MassFlow, "").ok().map(Span::band);
    let (Entry::Given(_), Some(mass)) = (by_volume, mass) else { return by_volume };
    let mass: Band<MassFlow> = mass;
    let base = mass.nominal.base();
    let pounds = Dimension::MassFlow.shown_in(base, "lb/h");
    reader.given(key, mass.nominal.show().said(format!("{pounds}, {}", mass.nominal.show().shown)));
    Entry::Given(Rated::Mass(mass))
}

fn kind(reader: &mut Reader<'_>, taken: &mut Vec<(&'static str, Value)>) -> (Fuel, &'static str) {
    let entry = reader.choice(fields::fuel::KIND);
    let fuel = entry.value().unwrap_or(Fuel::Petrol);
    let name = match fuel {
        Fuel::Petrol => "petrol",
        Fuel::E10 => "petrol E10",
        Fuel::E85 => "E85",
        Fuel::Ethanol => "ethanol",
        Fuel::Methanol => "methanol",
    };
    if entry.is_assumed() {
        taken.push(("Fuel", name.into()));
    }
    (fuel, name)
}

/// The regulator; what it is matters under boost alone.
fn regulator(
    reader: &mut Reader<'_>,
    boost: Band<Pressure>,
    taken: &mut Vec<(&'static str, Value)>,
) -> Regulator {
    let entry = reader.choice(fields::fuel::REGULATOR);
    if entry.is_assumed() && boost.high.base() > 0.0 {
        taken.push(("Pressure regulator", "follows boost".into()));
    }
    entry.value().unwrap_or(Regulator::Referenced)
}

/// How often an injector is pulsed. All that is not sequential is taken to be pulsed every turn: common practice, no
/// source, and the end that leaves less time.
fn pace(
    reader: &Reader<'_>,
    speed: Band<RotationalSpeed>,
    taken: &mut Vec<(&'static str, Value)>,
) -> InjectionPace {
    let (mode, turns_of_cycle) = reader.injection();
    let turns = match mode {
        Some(Injection::EachOnce) => turns_of_cycle,
        Some(_) => {
            taken.push(("Each injector is pulsed", "every turn".into()));
            1
        }
        None => {
            taken.push(("Each injector is pulsed", "once a cycle".into()));
            turns_of_cycle
        }
    };
    InjectionPace { speed, turns, turns_of_cycle }
}

/// What an engine burns: petrol by whether it has boost, another fuel so much more as it wants less air.
///
/// `b = b_petrol · 14.7 / A`: the same air, burnt to the same lambda, does about the same work. Petrol: 0.45 to 0.55
/// lb/(hp h) without boost, 0.55 to 0.65 with. Common practice, no source.
fn consumption(
    reader: &mut Reader<'_>,
    fuel: Fuel,
    boost: Band<Pressure>,
    taken: &mut Vec<(&'static str, Value)>,
) -> Band<SpecificConsumption> {
    let (text, basis) = if boost.high.base() > 0.0 {
        (
            "0.55 to 0.65 lb/hph",
            "with boost, by the air that the fuel burns with: common practice, no source",
        )
    } else {
        (
            "0.45 to 0.55 lb/hph",
            "without boost, by the air that the fuel burns with: common practice, no source",
        )
    };
    let of_petrol =
        span_of(CONSUMPTION.field(), Dimension::Consumption, text).ok().unwrap_or(Span::exact(0.0));
    let factor = Fuel::Petrol.air() / fuel.air();
    let Span { low, nominal, high } = of_petrol;
    let span = Span { low: low * factor, nominal: nominal * factor, high: high * factor };
    or_by_fuel(reader, CONSUMPTION, span.band(), basis, taken)
}

/// A quantity for which the fuel says what is usual.
fn or_by_fuel<Q: Measure>(
    reader: &mut Reader<'_>,
    key: Key<Q>,
    by_fuel: Band<Q>,
    basis: &str,
    taken: &mut Vec<(&'static str, Value)>,
) -> Band<Q> {
    let span = Span {
        low: by_fuel.low.base(),
        nominal: by_fuel.nominal.base(),
        high: by_fuel.high.base(),
    };
    let shown = span_value(span, Q::DIMENSION);
    let entry = reader.band(key);
    let entry = reader.or_assume(key, entry, by_fuel, shown.clone(), basis);
    if let Entry::Given(band) = entry {
        return band;
    }
    taken.push((key.field().label, shown));
    by_fuel
}
