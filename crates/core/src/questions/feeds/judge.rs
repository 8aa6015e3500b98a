//! Is each feed's fuse, contact and wire big enough, and what would be?

use super::{read::PlannedCircuit, words};
use crate::{
    finding::{Finding, Findings, Severity},
    message::Message,
    quantity::{Current, Measure, Time, number},
    report::Tone,
    say,
    schema::Key,
    supply::{
        circuit::{self, Exposed},
        laid::LaidWire,
    },
    tables::fuses,
};

/// What is said of a feed in the verdict, the gravest first.
#[derive(Debug)]
pub(super) struct Told {
    pub(super) rank: usize,
    pub(super) tone: Tone,
    pub(super) verdict: Message,
}

impl Told {
    fn bad(rank: usize, verdict: Message) -> Self {
        Self { rank, tone: Tone::Bad, verdict }
    }

    fn near(rank: usize, verdict: Message) -> Self {
        Self { rank, tone: Tone::Doubtful, verdict }
    }
}

/// Whether all is known that its verdict rests on.
pub(super) fn is_known(circuit: &PlannedCircuit) -> bool {
    let inputs = &circuit.inputs;
    let is_drawn = inputs.draws.is_some() || circuit.is_judged_there || circuit.is_unfused;
    let has_contact = circuit.rating().is_none() || inputs.contact.is_some();
    is_drawn && has_contact && inputs.fuse.is_some() && inputs.area.is_some()
}

/// What to fit, where it is known what it draws and something has still to be chosen.
pub(super) fn fit_in_words(circuit: &PlannedCircuit) -> Option<String> {
    let inputs = &circuit.inputs;
    // what has a contact to be rated has it beside what it feeds
    if circuit.is_judged_there
        || circuit.is_unfused
        || inputs.fuse.is_some() && inputs.area.is_some()
    {
        return None;
    }
    let draws = circuit.found.answer.draws;
    let (fuse, area) = match inputs.fuse {
        Some(fuse) => (fuse, inputs.wire_for(fuse, draws)?),
        None => circuit.found.fitted.map(|it| (it.fuse, it.area))?,
    };
    let feed = circuit.name.clone();
    Some(say!(words::FIT_ONE, feed = feed, fuse = fuse, size = area).into_text())
}

/// What is wrong with a feed, as findings, and what the verdict says of it.
pub(super) fn concerns(circuit: &PlannedCircuit, findings: &mut Findings) -> Vec<Told> {
    let mut told = Vec::new();
    told.extend(of_fault(circuit, findings));
    if !circuit.is_judged_there && !circuit.is_unfused {
        told.extend(of_fuse(circuit, findings));
        told.extend(of_contact(circuit, findings));
        told.extend(of_start(circuit, findings));
    }
    told.extend(of_wire(circuit, findings));
    told
}

/// Of a fault behind the fuse.
fn of_fault(circuit: &PlannedCircuit, findings: &mut Findings) -> Option<Told> {
    let (inputs, answer) = (&circuit.inputs, &circuit.found.answer);
    let (exposed, fuse) = (answer.exposed?, inputs.fuse?);
    let feed = || circuit.name.clone();
    if exposed == Exposed::Contact {
        let rating = inputs.contact?;
        let message = say!(words::FUSE_OVER_CONTACT, feed = feed(), fuse = fuse, rating = rating);
        let finding = Finding::new(Severity::Fault, circuit.fuse(), message);
        let larger = circuit.rating().and_then(|key| larger_relay(key, fuse));
        findings.push(finding.cured_by(smaller(circuit).into_iter().chain(larger)));
        return Some(Told::bad(2, say!(words::BAD_CONTACT, feed = feed())));
    }
    let (size, protection) = (inputs.area?, answer.protection.as_ref()?);
    let race = protection.worst;
    if circuit.is_unfused {
        let current = race.current;
        let message = say!(words::INJECTORS_UNFUSED, fuse = fuse, size = size, current = current);
        let own = circuit.found.fitted.map(|set| set.fuse).filter(|it| *it < fuse);
        let own = own.or_else(|| inputs.largest_fuse()).map(|fuse| {
            let edit = circuit.fuse().edit(fuse.show().into_shown());
            say!(words::DO_OWN_FUSE, fuse = fuse).done_by(vec![edit])
        });
        let finding = Finding::new(Severity::Doubt, circuit.fuse(), message);
        findings.push(finding.cured_by(own).shown_by(answer.working.iter().cloned()));
        return Some(Told::near(5, say!(words::NEAR_INJECTORS)));
    }
    let (severity, message, told) = match exposed {
        Exposed::FarEnd => (
            Severity::Fault,
            say!(
                words::FUSE_NEVER_BLOWS,
                feed = feed(),
                size = size,
                far = protection.far,
                fuse = fuse
            ),
            Told::bad(1, say!(words::BAD_FAR, feed = feed())),
        ),
        Exposed::Wire => (
            Severity::Danger,
            say!(
                words::FUSE_OVER_WIRE,
                feed = feed(),
                size = size,
                current = race.current,
                fuse = fuse,
                holds = held(race.fuse)
            ),
            Told::bad(0, say!(words::BAD_WIRE, feed = feed())),
        ),
        Exposed::WireBarely | Exposed::Contact => (
            Severity::Doubt,
            say!(
                words::FUSE_NEAR_WIRE,
                feed = feed(),
                size = size,
                current = race.current,
                fuse = fuse,
                holds = held(race.fuse)
            ),
            Told::near(5, say!(words::NEAR_WIRE, feed = feed())),
        ),
    };
    let cures = smaller(circuit).into_iter().chain(thicker(circuit));
    let finding = Finding::new(severity, circuit.fuse(), message);
    findings.push(finding.cured_by(cures).shown_by(answer.working.iter().cloned()));
    Some(told)
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
    Some(say!(words::DO_SMALLER_FUSE, fuse = fuse).done_by(vec![edit]))
}

/// The wire that its fuse protects.
fn thicker(circuit: &PlannedCircuit) -> Option<Message> {
    let size = circuit.inputs.wire_for(circuit.inputs.fuse?, circuit.found.answer.draws)?;
    let edit = circuit.size().edit(size.show().into_shown());
    Some(say!(words::DO_THICKER_WIRE, size = size).done_by(vec![edit]))
}

fn larger_relay(key: Key<Current>, least: Current) -> Option<Message> {
    let rating = CONTACTS_A.into_iter().map(Current::from_base).find(|it| *it >= least)?;
    let edit = key.edit(rating.show().into_shown());
    Some(say!(words::DO_LARGER_RELAY, rating = rating).done_by(vec![edit]))
}

/// Contacts that are sold: common practice, no source.
const CONTACTS_A: [f64; 6] = [20.0, 30.0, 40.0, 50.0, 70.0, 100.0];

/// Whether the fuse carries what it feeds.
fn of_fuse(circuit: &PlannedCircuit, findings: &mut Findings) -> Option<Told> {
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
    let steps = answer.working.iter().cloned();
    findings.push(finding.cured_by([larger_set(circuit)]).shown_by(steps));
    let verdict = say!(words::BAD_FUSE, feed = circuit.name.clone());
    Some(if is_over { Told::bad(3, verdict) } else { Told::near(3, verdict) })
}

/// The fuse that carries it, with the wire and the contact that go with it; what can't be is split.
fn larger_set(circuit: &PlannedCircuit) -> Message {
    let inputs = &circuit.inputs;
    let free = circuit::CircuitInputs { contact: None, ..inputs.clone() };
    let Some(set) = free.fitted(&circuit.found.answer) else { return say!(words::DO_SPLIT) };
    let mut edits = vec![circuit.fuse().edit(set.fuse.show().into_shown())];
    if inputs.area.is_some_and(|area| area < set.area) {
        edits.push(circuit.size().edit(set.area.show().into_shown()));
    }
    let contacts = CONTACTS_A.into_iter().map(Current::from_base);
    if let Some(key) = circuit.rating()
        && inputs.contact.is_some_and(|rating| rating < set.fuse)
        && let Some(rating) = contacts.into_iter().find(|it| *it >= set.fuse)
    {
        edits.push(key.edit(rating.show().into_shown()));
    }
    say!(words::DO_LARGER_FUSE, fuse = set.fuse).done_by(edits)
}

/// Whether the contact carries what it feeds.
fn of_contact(circuit: &PlannedCircuit, findings: &mut Findings) -> Option<Told> {
    let (draws, rating) = (circuit.found.answer.draws?, circuit.inputs.contact?);
    if draws.base() <= rating.base() {
        return None;
    }
    let key = circuit.rating()?;
    let feed = || circuit.name.clone();
    let message = say!(words::CONTACT_TOO_SMALL, feed = feed(), draws = draws, rating = rating);
    let finding = Finding::new(Severity::Fault, key, message);
    findings.push(finding.cured_by(larger_relay(key, draws / fuses::LASTING)));
    Some(Told::bad(4, say!(words::BAD_RELAY, feed = feed())))
}

/// Whether fuse and contact bear the first moment.
fn of_start(circuit: &PlannedCircuit, findings: &mut Findings) -> Option<Told> {
    let (inputs, answer) = (&circuit.inputs, &circuit.found.answer);
    let (inrush, _) = answer.inrush?;
    let feed = || circuit.name.clone();
    let told = || Some(Told::near(6, say!(words::NEAR_START, feed = feed())));
    let over = |rating: &Current| inrush.base() > circuit::makes(*rating).base();
    if let (Some(rating), Some(key)) = (inputs.contact.filter(over), circuit.rating()) {
        let message =
            say!(words::INRUSH_OVER_CONTACT, feed = feed(), inrush = inrush, rating = rating);
        let larger = larger_relay(key, inrush / circuit::makes(Current::from_base(1.0)).base());
        let cure = larger.unwrap_or_else(|| say!(words::DO_RELAY));
        findings.push(Finding::new(Severity::Doubt, key, message).cured_by([cure]));
        return told();
    }
    let least = answer.least?;
    let fuse = inputs.fuse.filter(|fuse| *fuse >= least)?;
    if inputs.is_started_by(fuse, answer.inrush) {
        return None;
    }
    let message = say!(words::INRUSH_OVER_FUSE, feed = feed(), inrush = inrush, fuse = fuse);
    let finding = Finding::new(Severity::Doubt, circuit.fuse(), message);
    findings.push(finding.cured_by([larger_set(circuit)]));
    told()
}

/// Whether the wire stays cool, and loses little.
fn of_wire(circuit: &PlannedCircuit, findings: &mut Findings) -> Option<Told> {
    let (inputs, answer) = (&circuit.inputs, &circuit.found.answer);
    let (draws, size) = (answer.draws?, inputs.area?);
    let feed = || circuit.name.clone();
    let bears = LaidWire { area: size, ..inputs.laid }.bears();
    // behind a fuse that is too large it is told of a fault already
    if inputs.fuse.is_none() && draws > bears {
        let message =
            say!(words::WIRE_HOT, feed = feed(), draws = draws, size = size, bears = bears);
        let finding = Finding::new(Severity::Danger, circuit.size(), message);
        let fitted = circuit.found.fitted.map(|set| {
            let edit = circuit.size().edit(set.area.show().into_shown());
            say!(words::DO_THICKER_WIRE, size = set.area).done_by(vec![edit])
        });
        findings.push(finding.cured_by(fitted));
        return Some(Told::bad(0, say!(words::BAD_WIRE, feed = feed())));
    }
    let (drop, part) = answer.drop.filter(|(_, part)| circuit::is_too_much(*part))?;
    let message = say!(
        words::WIRE_DROPS,
        feed = feed(),
        size = size,
        drop = drop,
        part = part,
        most = circuit::most_drop()
    );
    let finding = Finding::new(Severity::Doubt, circuit.size(), message);
    let steps = answer.working.iter().cloned();
    findings.push(finding.cured_by(thicker(circuit)).shown_by(steps));
    Some(Told::near(7, say!(words::NEAR_DROP, feed = feed(), drop = drop)))
}
