//! Is each feed's fuse, contact and wire big enough, and what would be?

use super::{
    read::{PlannedCircuit, Source},
    words,
};
use crate::{
    fields::relays::{self, Interlock, Purpose},
    finding::{Finding, Findings, Moment, Severity},
    message::Message,
    output::FarEnd,
    quantity::{Area, Current, Measure, Time, number},
    report::{Answer, Tone},
    say, say_of,
    schema::{Choice as _, Key},
    supply::{
        circuit::{self, Exposed},
        laid::LaidWire,
    },
    tables::fuses,
};

/// What is said of a feed in the verdict, the gravest first.
#[derive(Debug)]
struct FeedTold {
    rank: usize,
    tone: Tone,
    verdict: Message,
}

impl FeedTold {
    fn bad(rank: usize, verdict: Message) -> Self {
        Self { rank, tone: Tone::Bad, verdict }
    }

    fn near(rank: usize, verdict: Message) -> Self {
        Self { rank, tone: Tone::Doubtful, verdict }
    }
}

/// The answer about a circuit; what is wrong with it is found.
pub(super) fn answer(
    circuit: &PlannedCircuit,
    is_laid_known: bool,
    findings: &mut Findings,
) -> Answer {
    let told = concerns(circuit, findings).into_iter().min_by_key(|it| it.rank);
    let (wanted, to_do) = wanting(circuit);
    let (tone, verdict) = match (told, wanted) {
        (Some(told), _) => (told.tone, told.verdict),
        (None, Some(wanted)) => (Tone::Open, wanted),
        (None, None) if circuit.rating().is_some() => (Tone::Good, say!(words::GOOD_CONTACT)),
        (None, None) => (Tone::Good, say!(words::GOOD)),
    };
    let mut answer = Answer::new(circuit.subject(), tone, verdict);
    answer.title = Some(say!(words::FEED_TITLE, load = circuit.name.clone()));
    // while something is wanted, that is what to look at
    answer.why = why(circuit).filter(|_| tone != Tone::Open);
    answer.to_do = to_do;
    if tone == Tone::Bad {
        answer.cautions.push(say!(words::CAUTION_FUSE));
    }
    if !is_laid_known && circuit.inputs.area.is_some() {
        let ambient = circuit.inputs.laid.ambient;
        answer.assume(Some(say!(words::TAKEN_LAID, ambient = ambient)));
    }
    answer
}

fn why(circuit: &PlannedCircuit) -> Option<Message> {
    let found = &circuit.found.answer;
    let draws = found.draws?;
    Some(match found.inrush {
        Some((inrush, _)) => say!(words::WHY_INRUSH, draws = draws, inrush = inrush),
        None => say!(words::WHY, draws = draws),
    })
}

/// What is still wanted before its verdict stands, and what would do: what to fit, where it is known what it draws.
fn wanting(circuit: &PlannedCircuit) -> (Option<Message>, Vec<Message>) {
    let inputs = &circuit.inputs;
    if circuit.is_branch() {
        return (None, Vec::new());
    }
    let draws = circuit.found.answer.draws;
    let fitted = circuit.found.fitted;
    let edit_fuse = |fuse: Current| circuit.fuse().edit(fuse.show().into_shown());
    let edit_size = |size: Area| circuit.size().edit(size.show().into_shown());
    let (wanted, to_do) = match (inputs.fuse, inputs.area) {
        _ if circuit.wants_draws => (say!(words::OPEN_DRAWS), say!(words::DO_DRAWS)),
        (Some(_), Some(_)) if circuit.rating().is_some() && inputs.contact.is_none() => {
            (say!(words::OPEN_CONTACT), say!(words::DO_RATING))
        }
        (Some(_), Some(_)) => return (None, Vec::new()),
        (Some(fuse), None) => (
            say!(words::OPEN_WIRE),
            inputs.wire_for(fuse, draws).map_or_else(
                || say!(words::DO_TYPE),
                |size| say!(words::DO_FIT_WIRE, size = size).done_by(vec![edit_size(size)]),
            ),
        ),
        (None, Some(area)) => (
            say!(words::OPEN_FUSE),
            fitted.filter(|set| set.area <= area).map_or_else(
                || say!(words::DO_TYPE),
                |set| {
                    let fit = say!(words::DO_FIT_FUSE, fuse = set.fuse);
                    fit.done_by(vec![edit_fuse(set.fuse)])
                },
            ),
        ),
        (None, None) => match fitted.filter(|_| !circuit.is_judged_there) {
            Some(set) => (
                say!(words::OPEN_FIT, fuse = set.fuse, size = set.area),
                say!(words::DO_FIT, fuse = set.fuse, size = set.area)
                    .done_by(vec![edit_fuse(set.fuse), edit_size(set.area)]),
            ),
            None => (say!(words::OPEN_BOTH), say!(words::DO_TYPE)),
        },
    };
    (Some(wanted), vec![to_do])
}

/// The fields that the first cure of what is wrong with a feed fills in: what stands there is not bought.
pub(crate) fn replaced(circuit: &PlannedCircuit) -> Vec<String> {
    let mut findings = Findings::default();
    concerns(circuit, &mut findings);
    let findings = findings.into_all();
    let firsts = findings.iter().filter_map(|it| it.remedies.first());
    firsts.flat_map(|it| it.edits.iter().map(|it| it.path.clone())).collect()
}

/// What is wrong with a feed, as findings, and what the verdict says of it.
fn concerns(circuit: &PlannedCircuit, findings: &mut Findings) -> Vec<FeedTold> {
    let mut told = Vec::new();
    told.extend(of_starter(circuit, findings));
    told.extend(of_fault(circuit, findings));
    if !circuit.is_judged_there && !circuit.is_branch() {
        told.extend(of_fuse(circuit, findings));
        told.extend(of_contact(circuit, findings));
        told.extend(of_start(circuit, findings));
    }
    told.extend(of_wire(circuit, findings));
    told
}

/// Of a starter that nothing blocks.
fn of_starter(circuit: &PlannedCircuit, findings: &mut Findings) -> Option<FeedTold> {
    let Source::Relay(at) = circuit.source else { return None };
    if circuit.interlock != Some(Interlock::Nothing) {
        return None;
    }
    let feed = || circuit.name.clone();
    let key = relays::INTERLOCK.at(at);
    let edit = key.edit(Interlock::Switch.choosable().code);
    let cure = say!(words::guards::DO_INTERLOCK, feed = feed()).done_by(vec![edit]);
    let message = say!(words::guards::STARTER_UNLOCKED, feed = feed());
    findings.push(Finding::new(Severity::Danger, key, message).cured_by([cure]));
    Some(FeedTold::bad(0, say!(words::guards::STARTER_BAD)))
}

/// Of a fault behind the fuse.
fn of_fault(circuit: &PlannedCircuit, findings: &mut Findings) -> Option<FeedTold> {
    let (inputs, answer) = (&circuit.inputs, &circuit.found.answer);
    let (exposed, fuse) = (answer.exposed?, inputs.fuse?);
    if exposed == Exposed::Contact {
        // a contact that is too small for what it feeds is told as that
        if !circuit.is_judged_there && is_overloaded(circuit) {
            return None;
        }
        return of_fused_contact(circuit, fuse, findings);
    }
    // what burns of its own load burns before any fault
    if overheats(circuit).is_some() {
        return None;
    }
    let (size, protection) = (inputs.area?, answer.protection.as_ref()?);
    let race = protection.worst;
    if circuit.is_branch() && exposed == Exposed::Wire && !is_spared(circuit, fuse) {
        return Some(of_branch(circuit, (fuse, size), race.current, findings));
    }
    let (feed, holds) = (circuit.name.clone(), held(race.fuse));
    let overheats = |wording| {
        let current = race.current;
        say_of!(
            wording,
            feed = feed.clone(),
            size = size,
            current = current,
            fuse = fuse,
            holds = holds
        )
    };
    let (severity, message, told) = match exposed {
        Exposed::FarEnd => {
            let (feed, far) = (feed.clone(), protection.far);
            let message =
                say!(words::FUSE_NEVER_BLOWS, feed = feed, size = size, far = far, fuse = fuse);
            (Severity::Fault, message, FeedTold::bad(1, say!(words::BAD_FAR)))
        }
        Exposed::Wire if !is_spared(circuit, fuse) => {
            let told = FeedTold::bad(0, say!(words::BAD_WIRE));
            (Severity::Danger, overheats(words::FUSE_OVER_WIRE), told)
        }
        Exposed::Wire | Exposed::WireBarely | Exposed::Contact => {
            let told = FeedTold::near(5, say!(words::NEAR_WIRE));
            (Severity::Doubt, overheats(words::FUSE_NEAR_WIRE), told)
        }
    };
    let (smaller, thicker) = (smaller(circuit), thicker(circuit));
    // a wire that also loses too much is the one cause of both
    let is_thin = answer.drop.is_some_and(|(_, part)| circuit::is_too_much(part));
    let cures = match (circuit.is_branch(), is_thin) {
        (true, _) => of_own(circuit),
        (false, true) => [thicker, smaller].into_iter().flatten().collect(),
        (false, false) => [smaller, thicker].into_iter().flatten().collect(),
    };
    let finding = Finding::new(severity, circuit.fuse(), message).striking(circuit.strikes());
    findings.push(finding.cured_by(cures).shown_by(protection.working.iter().cloned()));
    Some(told)
}

fn is_overloaded(circuit: &PlannedCircuit) -> bool {
    let (draws, rating) = (circuit.found.answer.draws, circuit.inputs.contact);
    draws.zip(rating).is_some_and(|(draws, rating)| draws > rating)
}

/// Of a fuse that is larger than the contact behind it.
fn of_fused_contact(
    circuit: &PlannedCircuit,
    fuse: Current,
    findings: &mut Findings,
) -> Option<FeedTold> {
    let (rating, feed) = (circuit.inputs.contact?, circuit.name.clone());
    let message = say!(words::FUSE_OVER_CONTACT, feed = feed, fuse = fuse, rating = rating);
    let finding = Finding::new(Severity::Fault, circuit.fuse(), message);
    let larger = circuit.rating().and_then(|key| larger_relay(circuit, key, fuse));
    findings.push(finding.cured_by(smaller(circuit).into_iter().chain(larger)));
    Some(FeedTold::bad(2, say!(words::BAD_CONTACT)))
}

/// Whether it is the short wires of injectors, behind a fuse of their relay that is one size too large: many harnesses have that, and
/// nothing on such a wire draws a little more than its fuse. Common practice, no source.
fn is_spared(circuit: &PlannedCircuit, fuse: Current) -> bool {
    let is_of_injectors = matches!(circuit.source, Source::Injectors(_));
    is_of_injectors && circuit.is_branch() && !circuit.inputs.is_burnt_by_smaller(fuse)
}

/// Of a wire for which no fuse of its own is typed, and which burns behind the fuse before it.
fn of_branch(
    circuit: &PlannedCircuit,
    (fuse, size): (Current, Area),
    current: Current,
    findings: &mut Findings,
) -> FeedTold {
    let feed = circuit.name.clone();
    let message =
        say!(words::BRANCH_UNFUSED, feed = feed, fuse = fuse, size = size, current = current);
    // each relay is asked for its fuse: blank, it is not known; a branch has none unless it is typed
    let is_asked = matches!(circuit.source, Source::Relay(_));
    let severity = if is_asked { Severity::Doubt } else { Severity::Danger };
    let finding = Finding::new(severity, circuit.fuse(), message).striking(circuit.strikes());
    let protection = circuit.found.answer.protection.iter();
    let steps = protection.flat_map(|it| it.working.iter().cloned());
    findings.push(finding.cured_by(of_own(circuit)).shown_by(steps));
    let verdict = say!(words::NEAR_BRANCH);
    if is_asked { FeedTold::near(5, verdict) } else { FeedTold::bad(0, verdict) }
}

/// A fuse of its own for a wire without one; of a load, or else a wire that its feed's fuse protects.
fn of_own(circuit: &PlannedCircuit) -> Vec<Message> {
    let (inputs, feed) = (&circuit.inputs, || circuit.name.clone());
    let largest = inputs.largest_fuse();
    let wanted = inputs.fuse_for(&circuit.found.answer).or(largest);
    let is_of_load = matches!(circuit.source, Source::Load(..));
    let own = wanted.zip(largest).and_then(|(fuse, largest)| {
        if fuse > largest {
            let groups = || say!(words::DO_OWN_FUSES, feed = feed(), fuse = largest);
            return (!is_of_load).then(groups);
        }
        let edit = circuit.fuse().edit(fuse.show().into_shown());
        Some(say!(words::DO_OWN_FUSE, feed = feed(), fuse = fuse).done_by(vec![edit]))
    });
    let size = inputs.fuse.filter(|_| is_of_load).and_then(|fuse| inputs.unexposed(fuse));
    own.into_iter().chain(size.map(|size| fit_wire(circuit, size))).collect()
}

/// From here on hours are said.
const HOURS_S: f64 = 7200.0;

/// For how long a fuse may hold, in words.
fn held(time: Option<Time>) -> String {
    match time {
        None => "for ever".to_owned(),
        Some(time) if time.base() < HOURS_S => time.show().into_shown(),
        Some(time) => [number(time.base() / 3600.0).as_str(), "hours"].join(" "),
    }
}

/// The largest fuse that protects wire and contact and still carries what it feeds.
fn smaller(circuit: &PlannedCircuit) -> Option<Message> {
    let fuse = circuit.inputs.largest_fuse()?;
    if circuit.found.answer.least.is_some_and(|least| fuse < least) {
        return None;
    }
    let edit = circuit.fuse().edit(fuse.show().into_shown());
    Some(say!(words::DO_SMALLER_FUSE, feed = circuit.name.clone(), fuse = fuse).done_by(vec![edit]))
}

/// The wire that its fuse protects.
fn thicker(circuit: &PlannedCircuit) -> Option<Message> {
    let size = circuit.inputs.wire_for(circuit.inputs.fuse?, circuit.found.answer.draws)?;
    Some(fit_wire(circuit, size))
}

fn fit_wire(circuit: &PlannedCircuit, size: Area) -> Message {
    let edit = circuit.size().edit(size.show().into_shown());
    say!(words::DO_THICKER_WIRE, feed = circuit.name.clone(), size = size).done_by(vec![edit])
}

/// What its wire carries at most, where what it feeds draws more, and its fuse doesn't blow before that.
fn overheats(circuit: &PlannedCircuit) -> Option<Current> {
    let (draws, area) = (circuit.found.answer.draws?, circuit.inputs.area?);
    let is_blown = |fuse: Current| draws.base() > fuse.base() * fuses::HOLDS;
    let is_protected = circuit.found.answer.exposed.is_none();
    if is_protected && circuit.inputs.fuse.is_some_and(is_blown) {
        return None;
    }
    let in_wire = circuit.inputs.in_wire(draws);
    Some(LaidWire { area, ..circuit.inputs.laid }.bears()).filter(|bears| in_wire > *bears)
}

fn larger_relay(circuit: &PlannedCircuit, key: Key<Current>, least: Current) -> Option<Message> {
    let rating = CONTACTS_A.into_iter().map(Current::from_base).find(|it| *it >= least)?;
    let edit = key.edit(rating.show().into_shown());
    Some(
        say!(words::DO_LARGER_RELAY, feed = circuit.name.clone(), rating = rating)
            .done_by(vec![edit]),
    )
}

/// Contacts that are sold: common practice, no source.
const CONTACTS_A: [f64; 6] = [20.0, 30.0, 40.0, 50.0, 70.0, 100.0];

/// Whether the fuse carries what it feeds.
fn of_fuse(circuit: &PlannedCircuit, findings: &mut Findings) -> Option<FeedTold> {
    let (inputs, answer) = (&circuit.inputs, &circuit.found.answer);
    let (draws, least, fuse) = (answer.draws?, answer.least?, inputs.fuse?);
    if fuse.base() >= least.base() * (1.0 - 1e-9) {
        return None;
    }
    let (feed, carries) = (circuit.name.clone(), fuse * fuses::LASTING);
    let message =
        say!(words::FUSE_TOO_SMALL, feed = feed, draws = draws, fuse = fuse, carries = carries);
    let is_over = draws.base() > fuse.base();
    let severity = if is_over { Severity::Fault } else { Severity::Doubt };
    let finding = Finding::new(severity, circuit.fuse(), message);
    let steps = [inputs.draws_step(), inputs.least_step()].into_iter().flatten();
    findings.push(finding.cured_by([larger_set(circuit)]).shown_by(steps));
    let verdict = say!(words::BAD_FUSE);
    Some(if is_over { FeedTold::bad(3, verdict) } else { FeedTold::near(3, verdict) })
}

/// The fuse that carries it, with the wire and the contact that go with it, each said; what is more than one feed should carry is split,
/// where it is more than one thing.
fn larger_set(circuit: &PlannedCircuit) -> Message {
    larger(circuit).unwrap_or_else(|| say!(words::DO_SPLIT, feed = circuit.name.clone()))
}

/// The same; nothing where it is more than one feed should carry.
fn larger(circuit: &PlannedCircuit) -> Option<Message> {
    let inputs = &circuit.inputs;
    let feed = || circuit.name.clone();
    let free = circuit::CircuitInputs { contact: None, ..inputs.clone() };
    let set = free
        .fitted(&circuit.found.answer)
        .filter(|set| set.fuse.base() <= MOST_A || circuit.is_of_one())?;
    let mut edits = vec![circuit.fuse().edit(set.fuse.show().into_shown())];
    let is_thin = inputs.area.is_some_and(|area| area < set.area);
    if is_thin {
        edits.push(circuit.size().edit(set.area.show().into_shown()));
    }
    let mut contacts = CONTACTS_A.into_iter().map(Current::from_base);
    // the one relay that bears what flows for long and what flows at first
    let least = made_by(circuit).filter(|it| *it > set.fuse).unwrap_or(set.fuse);
    let is_small = |rating: Current| rating < least;
    let key = circuit.rating().filter(|_| inputs.contact.is_some_and(is_small));
    let contact = key.zip(contacts.find(|it| *it >= least));
    edits.extend(contact.map(|(key, rating)| key.edit(rating.show().into_shown())));
    let (fuse, size) = (set.fuse, set.area);
    let message = match (is_thin, contact) {
        (true, Some((_, rating))) => {
            say!(words::DO_LARGER_ALL, feed = feed(), fuse = fuse, size = size, rating = rating)
        }
        (true, None) => say!(words::DO_LARGER_BOTH, feed = feed(), fuse = fuse, size = size),
        (false, Some((_, rating))) => {
            say!(words::DO_LARGER_FUSED, feed = feed(), fuse = fuse, rating = rating)
        }
        (false, None) => say!(words::DO_LARGER_FUSE, feed = feed(), fuse = fuse),
    };
    Some(message.done_by(edits))
}

/// The least contact that makes its inrush, where that is known.
fn made_by(circuit: &PlannedCircuit) -> Option<Current> {
    let (inrush, _) = circuit.found.answer.inrush?;
    Some(inrush / circuit::makes(Current::from_base(1.0)).base())
}

/// One feed through one blade fuse and one plug-in relay carries no more: common practice, no source.
const MOST_A: f64 = 40.0;
const MOST_CONTACT_A: f64 = 50.0;

/// Whether the contact carries what it feeds.
fn of_contact(circuit: &PlannedCircuit, findings: &mut Findings) -> Option<FeedTold> {
    let (draws, rating) = (circuit.found.answer.draws?, circuit.inputs.contact?);
    if draws.base() <= rating.base() {
        return None;
    }
    let key = circuit.rating()?;
    let feed = || circuit.name.clone();
    let message = say!(words::CONTACT_TOO_SMALL, feed = feed(), draws = draws, rating = rating);
    let finding = Finding::new(Severity::Fault, key, message);
    let least = draws / fuses::LASTING;
    let is_fused_above = circuit.inputs.fuse.is_some_and(|fuse| fuse > least);
    let cure = match larger_relay(circuit, key, least) {
        // a relay for its fuse as well, or both smaller
        _ if is_fused_above => larger_set(circuit),
        Some(relay) if least.base() <= MOST_CONTACT_A || circuit.is_of_one() => relay,
        _ => say!(words::DO_SPLIT, feed = feed()),
    };
    findings.push(finding.cured_by([cure]));
    Some(FeedTold::bad(4, say!(words::BAD_RELAY)))
}

/// Whether fuse and contact bear the first moment.
fn of_start(circuit: &PlannedCircuit, findings: &mut Findings) -> Option<FeedTold> {
    let (inputs, answer) = (&circuit.inputs, &circuit.found.answer);
    let (inrush, _) = answer.inrush?;
    let feed = || circuit.name.clone();
    let over = |rating: &Current| inrush.base() > circuit::makes(*rating).base();
    // a fuse that is too small anyhow is told already
    let carries = |fuse: &Current| answer.least.is_some_and(|least| *fuse >= least);
    let blown = |fuse: &Current| !inputs.is_started_by(*fuse, answer.inrush);
    let is_small = inputs.fuse.is_some_and(|fuse| !carries(&fuse) || blown(&fuse));
    // one that is too small for what it carries for long is told as that
    let contact = inputs.contact.filter(|it| over(it) && !is_overloaded(circuit));
    let contact = circuit.rating().zip(contact);
    let mut welds = false;
    if let Some((key, rating)) = contact {
        welds = inputs.inrush.is_some() && circuit::surely_welds(inrush, rating);
        let of = if welds { words::INRUSH_WELDS } else { words::INRUSH_OVER_CONTACT };
        let message = say_of!(of, feed = feed(), inrush = inrush, rating = rating);
        let relay = || made_by(circuit).and_then(|least| larger_relay(circuit, key, least));
        // a larger fuse comes with its relay
        let cure = larger(circuit).filter(|_| is_small).or_else(relay);
        let cure = cure.unwrap_or_else(|| say!(words::DO_RELAY));
        let severity = if welds { Severity::Fault } else { Severity::Doubt };
        findings.push(Finding::new(severity, key, message).cured_by([cure]));
    }
    let fuse = inputs.fuse.filter(carries).filter(blown);
    if let Some(fuse) = fuse {
        let message = say!(words::INRUSH_OVER_FUSE, feed = feed(), inrush = inrush, fuse = fuse);
        let finding = Finding::new(Severity::Doubt, circuit.fuse(), message);
        findings.push(finding.cured_by([larger_set(circuit)]));
    }
    if welds {
        return Some(FeedTold::bad(4, say!(words::BAD_START)));
    }
    (contact.is_some() || fuse.is_some()).then(|| FeedTold::near(6, say!(words::NEAR_START)))
}

/// Whether the wire stays cool, and loses little.
fn of_wire(circuit: &PlannedCircuit, findings: &mut Findings) -> Option<FeedTold> {
    let (inputs, answer) = (&circuit.inputs, &circuit.found.answer);
    let (draws, size) = (answer.draws?, inputs.area?);
    let feed = || circuit.name.clone();
    if let Some(bears) = overheats(circuit) {
        let message = say!(
            words::WIRE_HOT,
            feed = feed(),
            draws = inputs.in_wire(draws),
            size = size,
            bears = bears
        );
        let finding = Finding::new(Severity::Danger, circuit.size(), message);
        let fitted = || circuit.found.fitted.map(|set| fit_wire(circuit, set.area));
        // a fuse that is too small as well gets its wire with the larger one
        let is_small = inputs.fuse.zip(answer.least).is_some_and(|(fuse, least)| fuse < least);
        let both = larger(circuit).filter(|_| is_small && !circuit.is_branch());
        findings.push(finding.cured_by(both.or_else(|| thicker(circuit)).or_else(fitted)));
        return Some(FeedTold::bad(0, say!(words::BAD_HOT)));
    }
    let (drop, part) = answer.drop.filter(|(_, part)| circuit::is_too_much(*part))?;
    let message = say!(
        words::WIRE_DROPS,
        feed = feed(),
        size = size,
        drop = drop,
        part = part,
        supply = inputs.runs_at,
        most = circuit::most_drop()
    );
    let finding = Finding::new(Severity::Doubt, circuit.size(), message);
    findings.push(finding.cured_by(thicker(circuit)).shown_by(inputs.drop_steps()));
    Some(FeedTold::near(7, say!(words::NEAR_DROP, drop = drop)))
}

impl PlannedCircuit {
    /// Whether it feeds one thing, of which nothing can be taken off.
    fn is_of_one(&self) -> bool {
        let is_one = |purpose| {
            use Purpose::{Fan, Heater, Lamps, Pump, Starter};
            matches!(purpose, Pump | Fan | Heater | Starter | Lamps)
        };
        let draws = self.inputs.draws.as_ref();
        self.purpose.is_some_and(is_one) && draws.is_some_and(|each| each.len() == 1)
    }

    /// When a fault behind its fuse burns: permanent battery is live in a parked car.
    fn strikes(&self) -> Moment {
        match self.source {
            Source::Battery | Source::Load(_, FarEnd::Battery) => Moment::KeyOff,
            _ => Moment::Running,
        }
    }
}
