//! From the feed of coils and injectors to each of them, and the grounds of coils.

use super::{between, channels::list_of, feeds, slug};
use crate::{
    car::Car,
    channels::{Ignition, Slot},
    fields::{controller::ControllerFeed, harness},
    loom::{Duty, LoomWire, Stock},
    message::Message,
    output::FarEnd,
    quantity::{Area, Current, Length},
    questions::{
        feeds::read::{PlannedCircuit, Source},
        wires::{
            planned::{PlannedWire, WireGroup},
            words,
        },
    },
    read::{Purpose, injectors::WhichSet},
    say,
    schema::Key,
    supply::circuit::CircuitInputs,
};

/// The sets of injectors.
const SETS: [WhichSet; 2] = [WhichSet::First, WhichSet::Second];

/// A branch to each coil and injector whose feed is in the plan.
pub(super) fn wires(car: &Car<'_>) -> Vec<PlannedWire> {
    let typed = &car.harness;
    let mut wires = Vec::new();
    let coils = of_purpose(car, Purpose::Coils);
    let (feed, ground) = (typed.coil_feed, typed.coil_ground);
    let of_coils = [
        (coils.is_some(), say!(words::COIL_FEED), feed, harness::COIL_FEED, Duty::Switched),
        (false, say!(words::GROUND), ground, harness::COIL_GROUND, Duty::Ground),
    ];
    for (is_planned, from, length, key, duty) in of_coils {
        if is_planned || length.is_some() {
            let branch = Branches { from, size: coils.and_then(protected), length, key, duty };
            wires.extend(coil_names(car).into_iter().map(|to| branch.to(to)));
        }
    }
    for (at, set) in SETS.into_iter().enumerate() {
        wires.extend(of_injectors(car, set, typed.injector_sizes.get(at).copied().flatten()));
    }
    wires
}

fn of_injectors(car: &Car<'_>, set: WhichSet, typed: Option<Area>) -> Vec<PlannedWire> {
    let relay = of_purpose(car, Purpose::Injectors);
    let own = car.feeds.circuits.iter().find(|it| it.source == Source::Injectors(set));
    let length = car.harness.injector_feed;
    if relay.is_none() && own.is_none() && length.is_none() {
        return Vec::new();
    }
    let branch = Branches {
        from: say!(words::INJECTOR_FEED),
        size: typed.or_else(|| own.or(relay).and_then(protected)),
        length,
        key: harness::INJECTOR_FEED,
        duty: Duty::Switched,
    };
    let to = |slot: &Slot| {
        let of = |target: String| match set {
            WhichSet::First => say!(words::INJECTOR, n = target),
            WhichSet::Second => say!(words::SECOND_INJECTOR, n = target),
        };
        slot.targets.iter().map(|it| of(it.to_string())).collect::<Vec<_>>()
    };
    slots(car, set).iter().flat_map(to).map(|to| branch.to(to)).collect()
}

/// Branches that are alike.
struct Branches {
    from: Message,
    size: Option<Area>,
    length: Option<Length>,
    key: Key<Length>,
    duty: Duty,
}

impl Branches {
    fn to(&self, to: Message) -> PlannedWire {
        let ends = [self.from.clone(), to].map(Message::into_text);
        let plain = between(slug(&[&ends[0], &ends[1]]), ends, self.duty, Stock::Reel);
        let wire = LoomWire { size: self.size, length: self.length, ..plain };
        PlannedWire { group: WireGroup::Feeds, wire, key: Some(self.key), pin: None }
    }
}

fn of_purpose<'a>(car: &'a Car<'_>, purpose: Purpose) -> Option<&'a PlannedCircuit> {
    car.feeds.circuits.iter().find(|it| it.purpose.is_some_and(|it| it.feeds(purpose)))
}

/// The thinnest wire that the fuse of a feed protects: no branch is thicker than its feed.
pub(super) fn protected(circuit: &PlannedCircuit) -> Option<Area> {
    let fuse = circuit.inputs.fuse.or(circuit.found.fitted.map(|it| it.fuse))?;
    let alone = CircuitInputs { contact: None, draws: None, ..circuit.inputs.clone() };
    let least = alone.unexposed(fuse)?;
    Some(feeds::size(circuit).filter(|it| *it < least).unwrap_or(least))
}

/// The wire that feeds a set of injectors: it carries what all of them draw, and no branch of it is thicker.
pub(super) fn of_set(circuit: &PlannedCircuit) -> Option<Area> {
    let fuse = circuit.inputs.fuse.or(circuit.found.fitted.map(|it| it.fuse))?;
    let all = CircuitInputs { contact: None, shared_by: 1, ..circuit.inputs.clone() };
    let least = all.wire_for(fuse, circuit.found.answer.draws)?;
    Some(circuit.inputs.area.filter(|it| *it > least).unwrap_or(least))
}

/// Each coil: one of two ends has the names of both its cylinders.
fn coil_names(car: &Car<'_>) -> Vec<Message> {
    let channels = &car.firing.channels;
    let slots = channels.ignition_slots(car.engine.as_ref());
    let is_double = channels.ignition.mode.value() == Some(Ignition::PairedDouble);
    let of = |slot: &Slot| match slot.targets.as_slice() {
        [] => vec![say!(words::THE_COIL)],
        targets if is_double => vec![say!(words::COIL, n = list_of(targets))],
        targets => targets.iter().map(|it| say!(words::COIL, n = it.to_string())).collect(),
    };
    slots.iter().flat_map(of).collect()
}

fn slots(car: &Car<'_>, set: WhichSet) -> Vec<Slot> {
    let channels = &car.firing.channels;
    let fired = match set {
        WhichSet::First => &channels.injection,
        WhichSet::Second => &channels.second,
    };
    fired.slots(car.engine.as_ref())
}

fn injectors(car: &Car<'_>, set: WhichSet) -> usize {
    slots(car, set).iter().map(|it| it.targets.len()).sum()
}

/// How many loads of the plan are behind a relay's contact.
pub(super) fn loads_behind(car: &Car<'_>, relay: usize) -> usize {
    let is_behind = |far_end, fed_by| far_end == Some(FarEnd::Relay) && fed_by == Some(relay);
    car.outputs.loads.iter().filter(|it| is_behind(it.far_end, it.fed_by)).count()
}

fn loads_on(car: &Car<'_>, far_end: FarEnd) -> usize {
    car.outputs.loads.iter().filter(|it| it.far_end == Some(far_end)).count()
}

/// To how many wires a feed branches, where it does; what several relays alike feed is spread over them.
pub(super) fn of_feed(car: &Car<'_>, circuit: &PlannedCircuit, alike: u32) -> Option<u32> {
    let feeds = |it: &PlannedCircuit, what| it.purpose.is_some_and(|it: Purpose| it.feeds(what));
    let count = match circuit.source {
        Source::Injectors(set) => injectors(car, set),
        Source::Relay(at) => {
            let of_set = |set: WhichSet| match fused(car, set) {
                Some(own) if is_apart(car, own, at) => 1,
                _ => injectors(car, set),
            };
            let each = SETS.into_iter().map(of_set).sum::<usize>();
            let of_injectors = if feeds(circuit, Purpose::Injectors) { each } else { 0 };
            let of_coils = if feeds(circuit, Purpose::Coils) {
                let relays = car.feeds.circuits.iter().filter(|it| feeds(it, Purpose::Coils));
                coil_names(car).len().div_ceil(relays.count().max(1))
            } else {
                0
            };
            let alike = usize::try_from(alike).unwrap_or(1).max(1);
            (of_injectors + of_coils + beside(car, at)).div_ceil(alike)
        }
        Source::Ignition => {
            let keyed = car.harness.keyed.iter().filter(|it| !it.is_of_starter).count();
            loads_on(car, FarEnd::Ignition) + keyed + controllers(car, ControllerFeed::Ignition)
        }
        Source::Battery => {
            loads_on(car, FarEnd::Battery) + controllers(car, ControllerFeed::Battery)
        }
        Source::Load(..) => 0,
    };
    u32::try_from(count).ok().filter(|it| *it > 1)
}

/// The controller's own supply, where it hangs on this feed.
fn controllers(car: &Car<'_>, feed: ControllerFeed) -> usize {
    usize::from(car.harness.controller_feed == Some(feed))
}

/// What a relay's contact feeds beside coils and injectors: loads, and the contacts of other relays.
fn beside(car: &Car<'_>, relay: usize) -> usize {
    let is_behind =
        |it: &&PlannedCircuit| matches!(it.source, Source::Relay(_)) && it.behind == Some(relay);
    loads_behind(car, relay) + car.feeds.circuits.iter().filter(is_behind).count()
}

/// A set of injectors with a fuse of its own.
fn fused<'a>(car: &'a Car<'_>, set: WhichSet) -> Option<&'a PlannedCircuit> {
    let mut circuits = car.feeds.circuits.iter();
    circuits.find(|it| it.source == Source::Injectors(set) && !it.is_unfused)
}

/// Whether a set of injectors with a fuse of its own has a wire of its own behind the relay: the relay feeds something else
/// too, which that fuse must not carry.
pub(super) fn is_apart(car: &Car<'_>, own: &PlannedCircuit, relay: usize) -> bool {
    let circuit = car.feeds.circuits.iter().find(|it| it.source == Source::Relay(relay));
    let has_coils = circuit.and_then(|it| it.purpose).is_some_and(|it| it.feeds(Purpose::Coils));
    let is_other = |set: &WhichSet| own.source != Source::Injectors(*set);
    let is_there = |set: WhichSet| injectors(car, set) > 0 || fused(car, set).is_some();
    let has_others = SETS.into_iter().filter(is_other).any(is_there);
    !own.is_unfused && (has_coils || has_others || beside(car, relay) > 0)
}

/// The fuse of the injectors alone, behind their relay, where they are all that it feeds.
pub(super) fn own_fuse(car: &Car<'_>, relay: &PlannedCircuit, at: usize) -> Option<Current> {
    let own =
        SETS.into_iter().filter_map(|set| fused(car, set)).find(|it| it.behind == Some(at))?;
    let is_its = relay.fused_behind.is_none() && !is_apart(car, own, at);
    own.inputs.fuse.filter(|_| is_its)
}
