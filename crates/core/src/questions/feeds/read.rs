//! The circuits of the car, from its relays and what hangs on 30 and 15.

use std::rc::Rc;

use crate::{
    coil::feed::CoilFeed,
    fields::{
        battery,
        grounds::{self, MinusTo},
        injectors, loads,
        relays::{self, Interlock},
        switched_feeds, wiring,
    },
    finding::{Finding, Severity},
    injector::{InjectorAnswer, feed::Share},
    output::FarEnd,
    plan::MOST_ENTRIES,
    quantity::{Area, Band, Current, Length, Measure, Temperature, Voltage, amperes, celsius},
    questions::feeds::{
        direct,
        grounded::{self as grounding, PlannedGrounds},
        guarded::{self, PlannedGuards},
        thin, words,
    },
    read::{Coiled, Conditions, FeedParts, Injectors, PlannedRest, Purpose, Reader, WhichSet},
    report::Tone,
    say, say_of,
    schema::{Key, Part},
    supply::{
        cable::{AlternatorInputs, CableInputs, MinusCable},
        circuit::{CircuitAnswer, CircuitInputs, Consumer, Exposed, FittedSet},
        laid::{Insulation, LaidWire},
    },
    words::small_letters,
};

/// What a circuit hangs on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Source {
    /// The contact of the relay of this record.
    Relay(usize),
    /// The fuse of a set of injectors alone, behind their relay.
    Injectors(WhichSet),
    /// The ignition switch (15), without a relay's contact.
    Ignition,
    /// Permanent battery (30), likewise.
    Battery,
    /// The wire of the load of this record, behind a fuse of its own or that of its feed.
    Load(usize, FarEnd),
}

/// A circuit of the plan.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct PlannedCircuit {
    pub(crate) source: Source,
    pub(crate) name: String,
    pub(crate) purpose: Option<Purpose>,
    /// How many relays share it, each with its fuse and its wire.
    pub(crate) alike: u32,
    /// The relay through whose contact its contact is fed.
    pub(crate) behind: Option<usize>,
    /// What it carries in all, where that is known: also what is judged with the coils and injectors, and what lies behind.
    pub(crate) carries: Option<Current>,
    /// The same without what lies behind.
    pub(crate) own: Option<Current>,
    /// What of it is left out on the average, as loads of the plan are pulsed.
    pub(crate) pulsed: Current,
    /// What of it coils and injectors take, which is less the slower the engine turns.
    pub(crate) of_engine: Option<Current>,
    /// Whether some of what it draws has still to be typed.
    pub(crate) wants_draws: bool,
    /// Whether fuse and contact are judged with what they feed alone: coils and injectors.
    pub(crate) is_judged_there: bool,
    /// What keeps a starter from turning, where it is a starter's and that was said.
    pub(crate) interlock: Option<Interlock>,
    /// Whether it has no fuse of its own, as far as is known, and hangs on that of its relay.
    pub(crate) is_unfused: bool,
    /// The set of injectors whose fuse is the one of this feed: it feeds nothing else, and none is typed before it.
    pub(crate) fused_behind: Option<WhichSet>,
    pub(crate) inputs: CircuitInputs,
    /// What comes of it.
    pub(crate) found: Rc<SolvedCircuit>,
}

/// What comes of a circuit, and what would suit it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct SolvedCircuit {
    pub(crate) answer: CircuitAnswer,
    /// The fuse and the wire to fit, where it is known what it draws.
    pub(crate) fitted: Option<FittedSet>,
}

/// What was solved of each circuit, and what it followed from: another edit leaves it as it is.
#[derive(Clone, Debug, Default)]
pub(crate) struct Memory(Vec<(CircuitInputs, Rc<SolvedCircuit>)>);

impl Memory {
    fn recall(&mut self, at: usize, inputs: &CircuitInputs) -> Rc<SolvedCircuit> {
        if let Some((_, found)) = self.0.get(at).filter(|(known, _)| known == inputs) {
            return Rc::clone(found);
        }
        let answer = inputs.answer();
        let fitted = inputs.is_to_fit(&answer).then(|| inputs.fitted(&answer)).flatten();
        let found = Rc::new(SolvedCircuit { answer, fitted });
        self.0.truncate(at);
        self.0.push((inputs.clone(), Rc::clone(&found)));
        found
    }
}

/// All that is fed, and by what.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct PlannedFeeds {
    pub(crate) circuits: Vec<PlannedCircuit>,
    /// Whether it was typed how hot and how bundled the wires lie.
    pub(crate) is_laid_known: bool,
    /// The cable to the starter, where it is known.
    pub(crate) cable: Option<CableInputs>,
    /// Whether something of it was typed.
    pub(crate) is_cable_begun: bool,
    /// What charges the battery, where that is known.
    pub(crate) alternator: Option<AlternatorInputs>,
    /// What comes back to the battery, and through what.
    pub(crate) grounds: PlannedGrounds,
    /// What kill switch and controller are for.
    pub(crate) guards: PlannedGuards,
    /// How wires lie, none of them in particular.
    pub(crate) laid: LaidWire,
}

/// The injectors, what comes of them, and what they are fed through.
type Injecting<'a> = (&'a [Injectors; 2], &'a [Option<Rc<InjectorAnswer>>; 2], FeedParts);

/// What the circuits are read with: supply and temperatures, loads, coils, injectors.
type FeedsAround<'a> = (&'a Conditions, &'a PlannedRest, Option<&'a Coiled>, Injecting<'a>);

/// The same, by name.
#[derive(Clone, Copy)]
pub(super) struct Consumers<'a> {
    pub(super) conditions: &'a Conditions,
    pub(super) rest: &'a PlannedRest,
    coils: Option<&'a Coiled>,
    injectors: Injecting<'a>,
}

impl PlannedCircuit {
    /// Whether it branches off behind another's fuse, without one of its own.
    pub(crate) fn is_branch(&self) -> bool {
        self.is_unfused && self.fused_behind.is_none()
    }

    /// What fuse and contact come to, where they are judged for coils or injectors and something else together.
    fn as_shared(&self) -> Option<Tone> {
        let is_shared = self.of_engine.is_some() && !self.is_judged_there && !self.is_branch();
        let answer = &self.found.answer;
        let (draws, least) = answer.draws.zip(answer.least).filter(|_| is_shared)?;
        let (fuse, contact) = (self.inputs.fuse, self.inputs.contact);
        let is_over = |rating: Current| draws > rating;
        let is_tired = |rating: Current| rating.base() < least.base() * (1.0 - 1e-9);
        Some(if fuse.is_some_and(is_over) || contact.is_some_and(is_over) {
            Tone::Bad
        } else if fuse.is_some_and(is_tired) {
            Tone::Doubtful
        } else if fuse.is_none() || contact.is_none() {
            Tone::Open
        } else {
            Tone::Good
        })
    }

    /// What its answer is about.
    pub(crate) fn subject(&self) -> String {
        match self.source {
            Source::Relay(at) => ["feeds.relay.", &at.to_string()].concat(),
            Source::Injectors(set) => ["feeds.", set.part().name()].concat(),
            Source::Ignition => "feeds.ignition".to_owned(),
            Source::Battery => "feeds.battery".to_owned(),
            Source::Load(at, _) => ["feeds.load.", &at.to_string()].concat(),
        }
    }

    /// The field of its fuse.
    pub(crate) fn fuse(&self) -> Key<Current> {
        if let Some(set) = self.fused_behind {
            return injectors::FUSE.of(set.part());
        }
        match self.source {
            Source::Relay(at) => relays::FUSE.at(at),
            Source::Injectors(set) => injectors::FUSE.of(set.part()),
            Source::Ignition => switched_feeds::FUSE,
            Source::Battery => switched_feeds::BATTERY_FUSE,
            Source::Load(at, _) => loads::FUSE.at(at),
        }
    }

    /// The field of its wire.
    pub(crate) fn size(&self) -> Key<Area> {
        match self.source {
            Source::Relay(at) => relays::LEAD_SIZE.at(at),
            Source::Injectors(set) => injectors::WIRE_SIZE.of(set.part()),
            Source::Ignition => switched_feeds::SIZE,
            Source::Battery => switched_feeds::BATTERY_SIZE,
            Source::Load(at, _) => loads::WIRE_SIZE.at(at),
        }
    }

    /// The field of its contact's rating, where it has one.
    pub(crate) fn rating(&self) -> Option<Key<Current>> {
        match self.source {
            Source::Relay(at) => Some(relays::RATING.at(at)),
            Source::Injectors(_) | Source::Ignition | Source::Battery | Source::Load(..) => None,
        }
    }
}

impl PlannedFeeds {
    /// What the fuse of a relay leaves exposed.
    pub(crate) fn exposed(&self, relay: usize) -> Option<Exposed> {
        let mut circuits = self.circuits.iter();
        circuits.find(|it| it.source == Source::Relay(relay))?.found.answer.exposed
    }

    /// What fuse and contact of a relay come to, where they carry more than what one question asks for: they are judged here alone.
    pub(crate) fn shared(&self, relay: usize) -> Option<Tone> {
        let mut circuits = self.circuits.iter();
        circuits.find(|it| it.source == Source::Relay(relay))?.as_shared()
    }
}

/// Reads them; what can't be read is told where it is asked for.
pub(crate) fn feeds(
    reader: &mut Reader<'_>,
    (conditions, rest, coils, injectors): FeedsAround<'_>,
    memory: &mut Memory,
) -> PlannedFeeds {
    let among = Consumers { conditions, rest, coils, injectors };
    let (laid, is_laid_known) = laid(reader);
    let count = reader.plan().count(Part::Relays).min(MOST_ENTRIES);
    let mut circuits: Vec<_> = (0..count).map(|at| of_relay(reader, at, (&among, laid))).collect();
    tell_rings(reader, &mut circuits);
    add_behind(&mut circuits);
    hang_on_the_fuse_before(&mut circuits);
    fuse_by_injectors(reader, &mut circuits, &among);
    let own: Vec<_> = among
        .injectors
        .0
        .iter()
        .filter_map(|set| behind_relay(reader, set, &circuits, (&among, laid)))
        .collect();
    circuits.extend(own);
    // of a plan that says nothing of feeds, none is asked for
    let is_begun = circuits.iter().any(|it| it.inputs.fuse.is_some() || it.carries.is_some());
    for (source, far_end) in
        [(Source::Ignition, FarEnd::Ignition), (Source::Battery, FarEnd::Battery)]
    {
        circuits.extend(direct::direct(reader, (source, far_end), is_begun, (&among, laid)));
    }
    let of_loads = thin::of_loads(reader, &circuits, (&among, laid));
    circuits.extend(of_loads);
    for (at, circuit) in circuits.iter_mut().enumerate() {
        circuit.found = memory.recall(at, &circuit.inputs);
    }
    let starter = reader.band(battery::STARTER).value().map(|it| it.high);
    let grounds = grounding::grounds(reader, &circuits, (&among, laid), starter);
    let cable = cable(reader, &among, starter).map(|it| it.with_strap(grounds.behind_cable()));
    let alternator = alternator(reader);
    let guards = guarded::guards(reader, alternator.is_some(), conditions.supply.nominal);
    let of_cable =
        [battery::LEAD_LENGTH.place(), battery::LEAD_SIZE.place(), battery::STARTER.place()];
    let is_cable_begun = of_cable.iter().any(|place| reader.is_typed(*place));
    PlannedFeeds {
        circuits,
        is_laid_known,
        cable,
        is_cable_begun,
        alternator,
        grounds,
        guards,
        laid,
    }
}

/// Relays whose contacts are said to feed each other in a ring: none of them would ever be fed.
fn tell_rings(reader: &mut Reader<'_>, circuits: &mut [PlannedCircuit]) {
    let behind: Vec<_> = circuits.iter().map(|it| it.behind).collect();
    for (at, circuit) in circuits.iter_mut().enumerate() {
        if is_behind(&behind, at, at) {
            circuit.behind = None;
            let key = relays::BEHIND.at(at);
            let message = say!(words::BEHIND_ITSELF);
            reader.unusable(Finding::new(Severity::Fault, key, message));
        }
    }
}

/// What has no fuse of its own, as far as is known, hangs on the one before it, where that doesn't protect its wire.
fn hang_on_the_fuse_before(circuits: &mut [PlannedCircuit]) {
    let fuses: Vec<_> = circuits.iter().map(|it| (it.behind, it.inputs.fuse)).collect();
    for circuit in circuits.iter_mut().filter(|it| it.inputs.fuse.is_none()) {
        let Some(before) = circuit.behind.and_then(|at| fuses.get(at)).and_then(|it| it.1) else {
            continue;
        };
        // its contact is told with the fuse that it gets
        let wire = CircuitInputs { contact: None, ..circuit.inputs.clone() };
        if wire.exposed(before).is_some() {
            circuit.inputs = CircuitInputs { fuse: Some(before), ..wire };
            circuit.is_unfused = true;
        }
    }
}

/// Where a relay feeds one set of injectors and nothing else, and the fuse of that set alone is typed, that is the fuse of its feed:
/// no second one is asked for.
fn fuse_by_injectors(reader: &Reader<'_>, circuits: &mut [PlannedCircuit], among: &Consumers<'_>) {
    let Some(at) = among.injectors.2.at else { return };
    let is_before = circuits.iter().any(|it| it.behind == Some(at));
    let is_alone = !is_before
        && among.rest.taken_behind(at).base() <= 0.0
        && reader.text(relays::DRAWS.at(at)).is_empty();
    let there: Vec<_> =
        among.injectors.0.iter().filter(|it| it.inputs.is_some()).map(|it| it.set).collect();
    let [set] = there.as_slice() else { return };
    let typed = reader.band_elsewhere(injectors::FUSE.of(set.part())).map(|it| it.nominal);
    let circuit = circuits.iter_mut().find(|it| it.source == Source::Relay(at));
    let circuit = circuit.filter(|it| is_alone && it.inputs.fuse.is_none());
    if let Some((circuit, fuse)) = circuit.zip(typed) {
        circuit.inputs.fuse = Some(fuse);
        // it is bought, and listed, once: with the injectors
        circuit.is_unfused = true;
        circuit.fused_behind = Some(*set);
    }
}

/// What hangs behind a relay's contact flows through that contact too.
fn add_behind(circuits: &mut [PlannedCircuit]) {
    let behind: Vec<_> = circuits.iter().map(|it| it.behind).collect();
    let own: Vec<_> = circuits.iter().map(|it| it.carries).collect();
    for (at, circuit) in circuits.iter_mut().enumerate() {
        let further: Vec<Option<Current>> = own
            .iter()
            .enumerate()
            .filter(|(further, _)| *further != at && is_behind(&behind, *further, at))
            .map(|(_, carries)| *carries)
            .collect();
        if further.is_empty() {
            continue;
        }
        let each: Option<Vec<Current>> = std::iter::once(circuit.carries).chain(further).collect();
        circuit.carries = each.as_ref().map(|each| amperes(each.iter().map(|it| it.base()).sum()));
        circuit.inputs.draws = each.map(|each| shared(&each, circuit.alike));
        circuit.is_judged_there = false;
    }
}

/// What each of so many relays carries of it.
fn shared(each: &[Current], alike: u32) -> Vec<Current> {
    each.iter().map(|it| *it / f64::from(alike.max(1))).collect()
}

/// Whether a relay's contact hangs, through however many others, behind another's.
fn is_behind(behind: &[Option<usize>], relay: usize, before: usize) -> bool {
    let next = |at: &usize| behind.get(*at).copied().flatten();
    std::iter::successors(next(&relay), next).take(behind.len()).any(|it| it == before)
}

/// Class B, alone in air of 20 °C, where nothing is typed: the most that any loom allows.
fn laid(reader: &mut Reader<'_>) -> (LaidWire, bool) {
    let insulation = reader.choice(wiring::INSULATION);
    let (ambient, bundled) = (reader.band(wiring::AMBIENT), reader.whole(wiring::BUNDLED));
    let is_known = !ambient.is_assumed() && !bundled.is_assumed();
    let wire = LaidWire {
        area: Area::from_base(0.0),
        insulation: insulation.value().unwrap_or(Insulation::B),
        ambient: ambient.value().map_or_else(|| celsius(20.0), |it| it.high),
        bundled: bundled.value().unwrap_or(1),
    };
    (wire, is_known)
}

fn of_relay(
    reader: &mut Reader<'_>,
    at: usize,
    (among, laid): (&Consumers<'_>, LaidWire),
) -> PlannedCircuit {
    let typed = reader.text(relays::NAME.at(at));
    let name = if typed.is_empty() {
        say!(words::NUMBERED, n = at + 1).into_text()
    } else {
        typed.to_owned()
    };
    let purpose = reader.choice_elsewhere(relays::PURPOSE.at(at));
    let draws = reader.band(relays::DRAWS.at(at)).value().map(|it| it.high);
    let inrush = reader.band(relays::INRUSH.at(at)).value().map(|it| it.high);
    let behind = behind(reader, at);
    let interlock = reader.choice(relays::INTERLOCK.at(at)).value();
    let mut each: Vec<Current> = draws.into_iter().collect();
    let others = among.rest.taken_behind(at);
    if others.base() > 0.0 {
        each.push(others);
    }
    let engine = EngineFed::of(reader, (purpose, at), among);
    let computed = engine.computed;
    let is_judged_there = engine.is_of_one;
    let is_known = if engine.is_of_both {
        computed.is_some()
    } else {
        draws.is_some() || !each.is_empty() && is_for_loads(purpose)
    };
    let is_computed = is_judged_there || engine.is_of_both;
    let own = if is_computed { computed } else { is_known.then(|| amperes(0.0)) };
    let sum: f64 = each.iter().map(|it| it.base()).sum();
    let carries = own.map(|own| amperes(own.base() + sum));
    if engine.is_of_both {
        each.extend(computed);
    }
    let alike = reader.whole_elsewhere(relays::ALIKE.at(at)).unwrap_or(1).max(1);
    let inrush = inrush.map(|it| it / f64::from(alike));
    let area = reader.band_elsewhere(relays::LEAD_SIZE.at(at)).map(|it| it.low);
    let length = reader.band_elsewhere(relays::LEAD_LENGTH.at(at)).map(|it| it.high);
    let back = reader.band_elsewhere(relays::GROUND_LENGTH.at(at)).map(|it| it.high);
    let consumer = consumer(purpose);
    let all = inputs(reader, relays::FUSE.at(at), Some(relays::RATING.at(at)), (among, laid));
    // a solenoid pulls in on what the starter leaves
    let is_of_starter = consumer == Consumer::Solenoid;
    let runs_at = if is_of_starter { among.conditions.cold_cranking } else { all.runs_at };
    let draws = (is_known && !is_judged_there).then(|| shared(&each, alike));
    let inputs = CircuitInputs { draws, consumer, inrush, area, length, back, runs_at, ..all };
    PlannedCircuit {
        source: Source::Relay(at),
        name,
        purpose,
        alike,
        behind,
        carries,
        own: carries,
        pulsed: among.rest.pulsed_behind(at) / f64::from(alike),
        of_engine: computed,
        wants_draws: !is_known && !is_computed,
        is_judged_there,
        interlock: interlock.filter(|_| purpose == Some(Purpose::Starter)),
        is_unfused: false,
        fused_behind: None,
        found: unsolved(),
        inputs,
    }
}

/// How most of what it feeds starts.
fn consumer(purpose: Option<Purpose>) -> Consumer {
    match purpose {
        Some(Purpose::Pump | Purpose::Fan) => Consumer::Motor,
        Some(Purpose::Lamps) => Consumer::Lamps,
        Some(Purpose::Starter) => Consumer::Solenoid,
        _ => Consumer::Steady,
    }
}

/// What of a relay's current coils and injectors take.
struct EngineFed {
    computed: Option<Current>,
    /// Judged with the question of that one.
    is_of_one: bool,
    /// Judged here, both together.
    is_of_both: bool,
}

impl EngineFed {
    fn of(
        reader: &Reader<'_>,
        (purpose, at): (Option<Purpose>, usize),
        among: &Consumers<'_>,
    ) -> Self {
        let is_of_coils = purpose.is_some_and(|it| it.feeds(Purpose::Coils));
        let is_of_injectors = among.injectors.2.at == Some(at);
        let coils = || among.coils.and_then(|it| of_coils(it, coil_relays(reader)));
        let computed = match (is_of_coils, is_of_injectors) {
            (true, true) => coils().zip(of_injectors(among)).map(|(one, other)| one + other),
            (true, false) => coils(),
            (false, true) => of_injectors(among),
            (false, false) => None,
        };
        Self {
            computed,
            is_of_one: is_of_coils != is_of_injectors,
            is_of_both: is_of_coils && is_of_injectors,
        }
    }
}

/// What feeds nothing but loads of the plan, as far as is said.
fn is_for_loads(purpose: Option<Purpose>) -> bool {
    matches!(purpose, None | Some(Purpose::Other))
}

pub(super) fn inputs(
    reader: &Reader<'_>,
    fuse: Key<Current>,
    contact: Option<Key<Current>>,
    (among, laid): (&Consumers<'_>, LaidWire),
) -> CircuitInputs {
    let conditions = among.conditions;
    let rating = |key: Key<Current>| reader.band_elsewhere(key).map(|it| it.nominal);
    let supply = conditions.supply;
    CircuitInputs {
        draws: None,
        consumer: Consumer::Steady,
        inrush: None,
        fuse: rating(fuse),
        contact: contact.and_then(rating),
        area: None,
        shared_by: 1,
        length: None,
        back: None,
        laid,
        supply: Band { low: supply.nominal, ..supply },
        runs_at: supply.high,
        hot: laid.ambient,
    }
}

pub(super) fn unsolved() -> Rc<SolvedCircuit> {
    Rc::new(SolvedCircuit { answer: CircuitAnswer::default(), fitted: None })
}

/// The relay that it is said to be fed through; a name of none is told with the relay's other names.
fn behind(reader: &mut Reader<'_>, at: usize) -> Option<usize> {
    reader.stand(relays::BEHIND.at(at).into());
    let name = reader.text(relays::BEHIND.at(at));
    let mut others = 0..reader.plan().count(Part::Relays).min(MOST_ENTRIES);
    if name.is_empty() {
        return None;
    }
    let found = others.find(|other| same_name(reader.text(relays::NAME.at(*other)), name));
    if found.is_some() {
        return found;
    }
    let message = say!(words::NO_SUCH_RELAY, name = name.to_owned());
    reader.unusable(Finding::new(Severity::Fault, relays::BEHIND.at(at), message));
    None
}

fn same_name(one: &str, other: &str) -> bool {
    small_letters(one.trim()).eq(small_letters(other.trim()))
}

/// How many relays are said to feed the coils.
fn coil_relays(reader: &Reader<'_>) -> u32 {
    let relays = 0..reader.plan().count(Part::Relays).min(MOST_ENTRIES);
    let is_of_coils = |at: &usize| {
        let purpose = reader.choice_elsewhere(relays::PURPOSE.at(*at));
        purpose.is_some_and(|it| it.feeds(Purpose::Coils))
    };
    u32::try_from(relays.filter(is_of_coils).count()).unwrap_or(u32::MAX)
}

/// What one of so many records takes for the coils, which are spread over the relays of all; each of its relays has its share of that.
fn of_coils(read: &Coiled, records: u32) -> Option<Current> {
    let at = read.found.as_ref()?.at_speed.as_ref()?;
    let relays = read.parts.relays.max(records);
    let none = amperes(0.0);
    let alone = crate::coil::feed::CoilFeedParts { others: none, relays, ..read.parts };
    let here = if records > 1 { 1 } else { relays };
    Some(CoilFeed::new(&at.taken, &alone).effective * f64::from(here))
}

fn of_set(set: &Injectors, among: &Consumers<'_>) -> Option<Current> {
    let (sets, found, parts) = among.injectors;
    let at = sets.iter().position(|it| it.set == set.set)?;
    let found = found.get(at)?.as_ref()?;
    Some(Share::of(set.inputs.as_ref()?, found, parts.duty)?.current)
}

pub(super) fn of_injectors(among: &Consumers<'_>) -> Option<Current> {
    let each = among.injectors.0.iter().filter_map(|set| of_set(set, among));
    let sum: f64 = each.map(Current::base).sum();
    (sum > 0.0).then(|| amperes(sum))
}

/// The wires of a set of injectors, behind a fuse of their own or, where none is typed, behind that of their relay.
fn behind_relay(
    reader: &mut Reader<'_>,
    set: &Injectors,
    relays: &[PlannedCircuit],
    (among, laid): (&Consumers<'_>, LaidWire),
) -> Option<PlannedCircuit> {
    let of = set.set.part();
    let (fuse, size) = (injectors::FUSE.of(of), injectors::WIRE_SIZE.of(of));
    let own = reader.band(fuse).value();
    let at = among.injectors.2.at;
    let relay = relays.iter().find(|it| at.is_some_and(|at| it.source == Source::Relay(at)));
    let is_typed = reader.is_typed(size);
    let area = reader.band_elsewhere(size).filter(|_| is_typed).map(|it| it.low);
    let before = relay.and_then(|it| it.inputs.fuse);
    let inputs = inputs(reader, fuse, None, (among, laid));
    let draws = of_set(set, among);
    let inputs = CircuitInputs {
        draws: draws.map(|it| vec![it]),
        fuse: own.map_or(before, |it| Some(it.nominal)),
        area,
        // each has its wire
        shared_by: set.count.unwrap_or(1),
        ..inputs
    };
    // what the relay's fuse protects anyhow is no circuit of its own, nor what most harnesses have
    let is_exposed = || {
        let by_rule = |fuse: &Current| inputs.is_fused_by_rule(*fuse);
        let fuse = inputs.fuse.filter(|fuse| !by_rule(fuse));
        fuse.is_some_and(|fuse| inputs.exposed(fuse).is_some())
    };
    // behind a relay it is counted there
    let counted = draws.filter(|_| at.is_none());
    let name = match set.set {
        WhichSet::First => words::OF_INJECTORS,
        WhichSet::Second => words::OF_SECOND_INJECTORS,
    };
    (own.is_some() || is_exposed()).then(|| PlannedCircuit {
        source: Source::Injectors(set.set),
        name: say_of!(name).into_text(),
        purpose: None,
        alike: 1,
        behind: at,
        carries: counted,
        own: counted,
        pulsed: amperes(0.0),
        of_engine: counted,
        wants_draws: false,
        is_judged_there: false,
        interlock: None,
        is_unfused: own.is_none(),
        fused_behind: None,
        found: unsolved(),
        inputs,
    })
}

fn cable(
    reader: &mut Reader<'_>,
    among: &Consumers<'_>,
    starter: Option<Current>,
) -> Option<CableInputs> {
    let length: Option<Band<Length>> = reader.band(battery::LEAD_LENGTH).value();
    let area: Option<Band<Area>> = reader.band(battery::LEAD_SIZE).value();
    let cranking: Voltage = among.conditions.cold_cranking;
    // current and voltage are those of a cold engine: its copper is not warm yet, and the practice of 0.8 V is for 20 °C
    let cold: Temperature = among.conditions.temperature.nominal;
    Some(CableInputs {
        length: length?.high,
        area: area?.low,
        starter: starter?,
        cranking,
        temperature: cold,
        strap: None,
        minus: minus(reader),
    })
}

/// The battery's minus cable, where it is known how long it is and where it ends.
fn minus(reader: &Reader<'_>) -> Option<MinusCable> {
    let length = reader.band_elsewhere(grounds::MINUS_LENGTH)?.high;
    let ends = reader.choice_elsewhere(grounds::MINUS_TO)?;
    Some(MinusCable { length, is_at_body: ends == MinusTo::Body })
}

fn alternator(reader: &mut Reader<'_>) -> Option<AlternatorInputs> {
    let idle: Option<Band<Current>> = reader.band(battery::ALTERNATOR_IDLE).value();
    let rating: Option<Band<Current>> = reader.band(battery::ALTERNATOR).value();
    (idle.is_some() || rating.is_some())
        .then(|| AlternatorInputs { idle: idle.map(|it| it.low), rating: rating.map(|it| it.low) })
}
