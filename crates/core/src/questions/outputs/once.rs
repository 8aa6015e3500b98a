//! What is worth knowing once, and holds of several loads: said of the first, and of the others by name.

use std::rc::Rc;

use crate::{
    finding::{Finding, Findings, Moment, Severity},
    message::Message,
    quantity::{Measure, Voltage},
    questions::outputs::words,
    read::{Coiled, LoadPlace, OutputLink, PlannedLoad, PlannedRest, Unasked, rest::same_name},
    say,
    schema::Part,
    words::Wording,
};

/// Findings that are said once for a car where they are no danger.
const ONCE: [&Wording; 10] = [
    words::OVER_VOLTAGE_WITHOUT_GROUND,
    words::ACTS_WITHOUT_FEED,
    words::ACTS_WITHOUT_GROUND,
    words::ACTS_WITHOUT_SUPPLY,
    words::KEEPS_FEED_ALIVE,
    words::KEEPS_CONTROLLER_ALIVE,
    words::KICK_UNCAUGHT,
    words::DIODE_UNKNOWN,
    words::PERHAPS_LIVE_OUTLIVED,
    words::PERHAPS_DRIVES_DEAD_FEED,
];

/// What lies around the loads.
pub(super) struct Around<'a> {
    pub(super) outputs: &'a PlannedRest,
    pub(super) coils: Option<&'a Coiled>,
    /// The lowest supply that the controller runs on, where that was typed.
    pub(super) least_supply: Option<Voltage>,
}

impl Around<'_> {
    /// Whether the coil that an input fires tells of it, as gravely.
    fn is_told_by_coil(&self, it: &Finding) -> bool {
        let told = self.coils.and_then(Coiled::told_at_key_on);
        it.message.code == words::LIVE_AT_KEY_ON.code
            && told.zip(it.message.values.get("load")).is_some_and(|((names, severity), load)| {
                severity <= it.severity && names.iter().any(|name| same_name(name, &load.shown))
            })
    }

    /// What comes of a dead supply that is lifted.
    fn of_lifted(&self, it: &Finding) -> Message {
        let lifted = it.message.values.get("voltage").and_then(|it| it.number);
        let is_dead = self.least_supply.zip(lifted).is_some_and(|(least, it)| it < least.base());
        if is_dead { say!(words::GOES_FLAT) } else { say!(words::MAY_NOT_STOP) }
    }

    /// Says what comes of it that a load lifts the dead supply of the controller; with what the load itself does of the same current,
    /// where that is said already. Whether it was.
    fn with_its_supply(
        &self,
        it: &mut Rc<Finding>,
        gathered: &mut [(Rc<Finding>, Vec<String>)],
    ) -> bool {
        if it.message.code != words::WAKES_CONTROLLER.code {
            return false;
        }
        let comes = self.of_lifted(it);
        let is_its = |other: &Rc<Finding>| {
            other.message.code == words::LIVE_KEY_OFF.code
                && other.message.values.get("load") == it.message.values.get("load")
                && other.severity <= it.severity
        };
        let lifted = it.message.values.get("voltage").cloned();
        let live = gathered.iter_mut().find(|(other, _)| is_its(other)).zip(lifted);
        let Some(((live, _), lifted)) = live else {
            let it = Rc::make_mut(it);
            it.message = it.message.clone().and_then(&comes);
            return false;
        };
        let live = Rc::make_mut(live);
        let lifts = say!(words::LIFTS_SUPPLY, lifted = lifted);
        live.message = live.message.clone().and_then(&lifts).and_then(&comes);
        true
    }

    /// What it does to a coil that its input is live while the output is off, and of how many that holds: said in one.
    fn with_its_coil(&self, it: &mut Rc<Finding>) -> bool {
        let told = self.coils.and_then(Coiled::told_at_rest);
        let told = told.filter(|_| it.message.code == words::LIVE_AT_REST.code);
        let Some(((names, what, severity), load)) = told.zip(it.message.values.get("load")) else {
            return false;
        };
        let is_input = names.iter().any(|name| same_name(name, &load.shown));
        if is_input {
            let it = Rc::make_mut(it);
            it.severity = it.severity.min(severity);
            it.message = it.message.clone().and_then(&what);
            if self.coils.is_some_and(|coils| coils.cut_below.is_some()) {
                it.strikes = Moment::Cranking;
            }
        }
        is_input
    }

    /// Whether nothing comes of what a load does after a failure: it harms nothing, or it is an input, and what it would set
    /// off is without power or lets go by itself.
    fn is_moot(&self, it: &Finding) -> bool {
        let is_of_failure =
            it.severity == Severity::Note && FAILURES.iter().any(|of| of.code == it.message.code);
        let is_it = |load: &&Rc<PlannedLoad>| it.subject.starts_with(&(load.place.subject() + "."));
        let load = self.outputs.loads.iter().find(is_it);
        is_of_failure
            && load.is_some_and(|load| {
                load.unasked == Unasked::Harmless || (load.kind.is_signal() && self.coils_let_go())
            })
    }

    /// Whether the igniters let go by themselves, or a relay that the controller holds in feeds their coils.
    fn coils_let_go(&self) -> bool {
        let is_driven = |coils: &Coiled| {
            let feeds = |load: &Rc<PlannedLoad>| {
                let LoadPlace { part, number } = load.place;
                part == Part::Relays && number == coils.relay && load.link != OutputLink::Blank
            };
            coils.has_relay && self.outputs.loads.iter().any(feeds)
        };
        self.coils.is_some_and(|coils| coils.lets_go.is_some() || is_driven(coils))
    }
}

/// What a load does once something has failed.
const FAILURES: [&Wording; 3] =
    [words::ACTS_WITHOUT_FEED, words::ACTS_WITHOUT_GROUND, words::ACTS_WITHOUT_SUPPLY];

/// Gathers those behind the first `before` findings, without those that are told elsewhere or of which nothing comes.
pub(super) fn gather(findings: &mut Findings, before: usize, around: &Around<'_>) {
    // each with the names of the other loads of which it holds
    let mut gathered: Vec<(Rc<Finding>, Vec<String>)> = Vec::new();
    for mut finding in findings.split_off(before) {
        if around.is_told_by_coil(&finding) || around.is_moot(&finding) {
            continue;
        }
        if around.with_its_supply(&mut finding, &mut gathered) {
            continue;
        }
        // the igniters of one car are set and cured alike
        let is_of_coils = around.with_its_coil(&mut finding);
        let is_once = |it: &Finding| {
            is_of_coils
                || it.severity >= Severity::Fault
                    && ONCE.iter().any(|once| once.code == it.message.code)
        };
        let said = gathered.iter_mut().filter(|_| is_once(&finding)).find(|(it, _)| {
            let is_as_grave = it.severity == finding.severity;
            is_once(it) && is_as_grave && it.message.code == finding.message.code
        });
        match (said, finding.message.values.get("load")) {
            (Some((_, others)), Some(load)) => others.push(load.shown.clone()),
            _ => gathered.push((finding, Vec::new())),
        }
    }
    let told = gathered.into_iter().map(|(mut finding, others)| {
        if !others.is_empty() {
            let also = say!(words::ALSO, also = others.join(", "));
            let finding = Rc::make_mut(&mut finding);
            finding.message = finding.message.clone().and_then(&also);
        }
        finding
    });
    findings.share(&told.collect::<Vec<_>>());
}
