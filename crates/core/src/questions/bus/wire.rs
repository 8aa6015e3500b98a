//! Whether the wire and its branches are short enough for the bit rate.

use super::{read::PlannedBus, titled, words};
use crate::{
    bus::reach::{self, Reaching, of_branch, of_bus},
    fields::{self, bus::BusShape},
    finding::{Finding, Findings, Severity},
    message::{Edit, Message},
    quantity::{BitRate, Length, Measure as _, metres},
    report::{Answer, Tone},
    say,
};

pub(super) fn answer(bus: &PlannedBus, findings: &mut Findings) -> Answer {
    let title = say!(words::TITLE_WIRE);
    let Some(rate) = bus.rate.value() else {
        let open = if bus.length.is_some() { words::WIRE_NO_RATE } else { words::WIRE_OPEN };
        return titled("bus.wire", title, Vec::new(), crate::say_of!(open));
    };
    let mut found = FoundWire { bus, rate, said: Vec::new(), to_do: Vec::new(), findings };
    found.rates();
    found.length();
    found.branch();
    let (mut said, to_do) = (found.said, found.to_do);
    if said.is_empty() && bus.length.is_some() {
        said.push((Tone::Good, say!(words::WIRE_SHORT, rate = rate)));
    }
    let most = of_bus(rate).sure;
    let open = say!(words::WIRE_NO_LENGTH, rate = rate, most = most);
    let mut answer = titled("bus.wire", title, said, open);
    answer.why =
        Some(say!(words::WHY_WIRE, rate = rate, most = most, branch = of_branch(rate).sure));
    answer.to_do = to_do;
    answer
}

/// How long the longest branch is: of a star without one, half of its two longest arms.
pub(super) fn branch(bus: &PlannedBus) -> Option<Length> {
    let arm = || bus.length.filter(|_| bus.shape == Some(BusShape::Star)).map(|it| it * 0.5);
    bus.branch.or_else(arm)
}

struct FoundWire<'a> {
    bus: &'a PlannedBus,
    rate: BitRate,
    said: Vec<(Tone, Message)>,
    to_do: Vec<Message>,
    findings: &'a mut Findings,
}

impl FoundWire<'_> {
    fn rates(&mut self) {
        let rate = self.rate;
        let Some(other) = self.bus.other_rate.filter(|it| differ(*it, rate)) else { return };
        let key = fields::bus::OTHER_RATE;
        self.said.push((Tone::Bad, say!(words::WIRE_RATES)));
        let cure = say!(words::DO_SAME_RATE, rate = rate).done_by(vec![key.edit("")]);
        let message = say!(words::RATES_DIFFER, one = rate, other = other);
        let finding = Finding::new(Severity::Fault, key, message);
        self.findings.push(finding.cured_by([cure.clone()]));
        self.to_do.push(cure);
    }

    fn length(&mut self) {
        let (rate, key) = (self.rate, fields::bus::LENGTH);
        let Some(length) = self.bus.length else { return };
        let reach = of_bus(rate);
        let finding = match reach.suits(length) {
            Reaching::Surely => return,
            Reaching::Perhaps => {
                self.said.push((Tone::Doubtful, say!(words::WIRE_TIGHT, rate = rate)));
                self.to_do.push(say!(words::DO_SAMPLE));
                let sure = reach.sure;
                let message = say!(words::LENGTH_TIGHT, length = length, rate = rate, sure = sure);
                Finding::new(Severity::Doubt, key, message)
            }
            Reaching::No => {
                self.said.push((Tone::Bad, say!(words::WIRE_LONG, rate = rate)));
                let most = reach.perhaps;
                let message = say!(words::TOO_LONG, length = length, rate = rate, most = most);
                Finding::new(Severity::Fault, key, message)
            }
        };
        let slower = self.slower();
        self.to_do.extend(slower.clone());
        let steps = [reach::turned(rate, length)];
        self.findings.push(finding.cured_by(slower).shown_by(steps));
    }

    /// The bit rate at which this length surely suits; a branch is shortened.
    fn slower(&self) -> Option<Message> {
        let rate = reach::highest_rate(self.rate, self.bus.length?, metres(0.0))?;
        let edit = fields::bus::BIT_RATE.edit(rate.show().into_shown());
        Some(say!(words::DO_RATE, rate = rate).done_by(vec![edit]))
    }

    fn branch(&mut self) {
        let rate = self.rate;
        let Some(length) = branch(self.bus) else { return };
        let reach = of_branch(rate);
        let place = if self.bus.branch.is_some() {
            fields::bus::BRANCH.place()
        } else {
            fields::bus::SHAPE.place()
        };
        let finding = match reach.suits(length) {
            Reaching::Surely => return,
            Reaching::Perhaps => {
                self.said.push((Tone::Doubtful, say!(words::WIRE_BRANCH_TIGHT, rate = rate)));
                let sure = reach.sure;
                let message = say!(words::BRANCH_LONG, length = length, rate = rate, sure = sure);
                Finding::new(Severity::Doubt, place.path(), message)
            }
            Reaching::No => {
                self.said.push((Tone::Bad, say!(words::WIRE_BRANCH, rate = rate)));
                let most = reach.perhaps;
                let message =
                    say!(words::BRANCH_TOO_LONG, length = length, rate = rate, most = most);
                Finding::new(Severity::Fault, place.path(), message)
            }
        };
        let cure = self.shortened(reach.sure);
        self.to_do.push(cure.clone());
        self.findings.push(finding.cured_by([cure]));
    }

    /// Branches of this length; a star becomes a line.
    fn shortened(&self, most: Length) -> Message {
        let mut edits = vec![fields::bus::BRANCH.edit(typed(most))];
        if self.bus.shape == Some(BusShape::Star) {
            edits.push(Edit { ..fields::bus::SHAPE.edit("line") });
            return say!(words::DO_LINE, most = most).done_by(edits);
        }
        say!(words::DO_BRANCH, most = most).done_by(edits)
    }
}

/// To the centimetre below.
fn typed(length: Length) -> String {
    crate::math::shortest((length.base() * 100.0 + 1e-6).floor() / 100.0) + " m"
}

/// Two bit rates that no device takes for one: half a percent apart, which no crystal is.
fn differ(one: BitRate, other: BitRate) -> bool {
    (one.base() - other.base()).abs() > 0.005 * other.base()
}
