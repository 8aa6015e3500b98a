//! Whether the wires reach, and whether the connector takes them.

use super::{
    planned::{PlannedHarness, PlannedWire, WireGroup},
    words,
};
use crate::{
    fields::harness,
    finding::{Finding, Findings, Severity},
    loom::{Duty, Stock, WireCut, on_tape},
    quantity::{Area, Current, Length, Measure, metres},
    report::{Answer, AnswerRole, Tone},
    say, say_of,
    supply::circuit::AGES,
};

impl WireGroup {
    /// All of them, in the order in which they are answered.
    pub(super) const ALL: [Self; 6] = [
        Self::Coils,
        Self::Injectors,
        Self::SecondInjectors,
        Self::Loads,
        Self::Sensors,
        Self::Feeds,
    ];

    /// What its answer is about.
    pub(super) fn subject(self) -> &'static str {
        match self {
            Self::Coils => "wires.coils",
            Self::Injectors => "wires.injectors",
            Self::SecondInjectors => "wires.second",
            Self::Loads => "wires.loads",
            Self::Sensors => "wires.sensors",
            Self::Feeds => "wires.feeds",
        }
    }

    /// What it is called.
    pub(super) fn title(self) -> crate::message::Message {
        say_of!(match self {
            Self::Coils => words::TITLE_COILS,
            Self::Injectors => words::TITLE_INJECTORS,
            Self::SecondInjectors => words::TITLE_SECOND,
            Self::Loads => words::TITLE_LOADS,
            Self::Sensors => words::TITLE_SENSORS,
            Self::Feeds => words::TITLE_FEEDS,
        })
    }
}

impl PlannedHarness<'_> {
    /// What becomes of each wire of a group, where that is known.
    fn cuts(&self, group: Option<WireGroup>) -> impl Iterator<Item = (&PlannedWire, WireCut)> {
        let of_group = move |it: &&PlannedWire| group.is_none_or(|group| it.group == group);
        let wires = self.wires.iter().filter(of_group);
        wires.filter_map(|it| Some((it, it.wire.cut(&self.typed.lengths)?)))
    }

    /// How many are still to be measured.
    fn unmeasured(&self, group: Option<WireGroup>) -> usize {
        let of_group = |it: &&PlannedWire| group.is_none_or(|group| it.group == group);
        let is_open = |it: &&PlannedWire| it.is_unmeasured();
        self.wires.iter().filter(of_group).filter(is_open).count()
    }

    fn short(&self) -> Vec<(&PlannedWire, Length)> {
        let short = |(wire, cut)| match cut {
            WireCut::Short(by) => Some((wire, by)),
            WireCut::Off(_) | WireCut::Tight(_) => None,
        };
        self.cuts(None).filter_map(short).collect()
    }

    fn tight(&self) -> Vec<(&PlannedWire, Length)> {
        let tight = |(wire, cut)| match cut {
            WireCut::Tight(left) => Some((wire, left)),
            WireCut::Off(_) | WireCut::Short(_) => None,
        };
        self.cuts(None).filter_map(tight).collect()
    }
}

/// Whether all of them reach.
pub(super) fn overview(planned: &PlannedHarness<'_>) -> Answer {
    // what a feed needs is asked with its fuse, and what its wires need with them
    let is_open_feed = |it: &&PlannedWire| it.group == WireGroup::Feeds && it.is_unmeasured();
    let open_feeds = planned.wires.iter().filter(is_open_feed).count();
    let n = planned.wires.len() - open_feeds;
    // what is cut from a reel reaches; of a wire of the harness whose way is asked nowhere it is not known
    let is_unknown = |it: &&PlannedWire| {
        it.wire.stock == Stock::Harness && it.key.is_none() && it.wire.length.is_none()
    };
    let known = n - planned.wires.iter().filter(is_unknown).count();
    let (short, tight) = (planned.short().len(), planned.tight().len());
    let open = planned.unmeasured(None) - open_feeds;
    let has_way = planned.wires.iter().any(|it| it.key.is_some() && it.wire.length.is_some());
    let (tone, verdict) = if short > 0 {
        (Tone::Bad, say!(words::SHORT, m = short, n = n))
    } else if planned.typed.lengths.bought.is_none() {
        (Tone::Open, say!(words::OPEN_HARNESS, n = n))
    } else if !has_way {
        (Tone::Open, say!(words::OPEN_ALL, n = n))
    } else if open > 0 {
        (Tone::Open, say!(words::OPEN_WAYS, n = n, m = open))
    } else if tight > 0 {
        (Tone::Good, say!(words::TIGHT, n = known, m = tight))
    } else {
        (Tone::Good, say!(words::GOOD, n = known))
    };
    let mut answer = Answer::new("harness", tone, verdict);
    if planned.is_begun && open > 0 {
        answer.to_do.push(say!(words::DO_WAYS));
    }
    answer
}

/// What comes off the wires of a kind; nothing where there are none.
pub(super) fn group(planned: &PlannedHarness<'_>, group: WireGroup) -> Option<Answer> {
    let n = planned.wires.iter().filter(|it| it.group == group).count();
    if n == 0 {
        return None;
    }
    let mut ends: Option<(f64, f64)> = None;
    let mut short = 0_usize;
    for (_, cut) in planned.cuts(Some(group)) {
        let off = match cut {
            WireCut::Off(off) => off.base(),
            WireCut::Tight(_) => 0.0,
            WireCut::Short(_) => {
                short += 1;
                continue;
            }
        };
        ends = Some(ends.map_or((off, off), |(low, high)| (low.min(off), high.max(off))));
    }
    let open = planned.unmeasured(Some(group));
    let (tone, verdict) = match ends {
        _ if short > 0 => (Tone::Bad, say!(words::SHORT, m = short, n = n)),
        _ if open == n => (Tone::Open, say!(words::OPEN_ALL, n = n)),
        _ if open > 0 => (Tone::Open, say!(words::OPEN_WAYS, n = n, m = open)),
        None => (Tone::Good, say!(words::GROUP_KNOWN, n = n)),
        Some((low, high)) if high - low < crate::loom::LEAST_CUT_M => {
            (Tone::Good, say!(words::GROUP_OFF_ALIKE, n = n, off = on_tape(metres(low))))
        }
        Some((low, high)) => (
            Tone::Good,
            say!(words::GROUP_OFF, n = n, from = on_tape(metres(low)), to = on_tape(metres(high))),
        ),
    };
    let mut answer = Answer::new(group.subject(), tone, verdict);
    answer.role = AnswerRole::Part;
    answer.title = Some(group.title());
    Some(answer)
}

/// How many names are listed.
const MOST_NAMED: usize = 4;

fn names<'a>(wires: impl Iterator<Item = &'a PlannedWire>, most: usize) -> String {
    let mut names: Vec<String> = wires.map(|it| it.wire.label.clone()).collect();
    let more = names.len().saturating_sub(most);
    names.truncate(most);
    let list = names.join("; ");
    if more == 0 {
        return list;
    }
    [list, say!(words::AND_MORE, n = more).into_text()].join(" ")
}

/// The same of what each lacks, or has left.
fn named(wires: &[(&PlannedWire, Length)]) -> String {
    names(wires.iter().map(|(it, _)| *it), MOST_NAMED)
}

/// What was found.
pub(super) fn concerns(planned: &PlannedHarness<'_>, findings: &mut Findings) {
    let least = |one: f64, other: f64| one.min(other);
    let short = planned.short();
    if let Some(key) = short.first().and_then(|(wire, _)| wire.key) {
        let worst = short.iter().map(|(_, by)| by.base()).fold(0.0, f64::max);
        let message = say!(words::TOO_SHORT, list = named(&short), short = on_tape(metres(worst)));
        let finding = Finding::new(Severity::Fault, key, message);
        findings.push(finding.cured_by([say!(words::DO_LENGTHEN)]));
    }
    let tight = planned.tight();
    if let Some(key) = tight.first().and_then(|(wire, _)| wire.key) {
        let left = tight.iter().map(|(_, left)| left.base()).fold(f64::INFINITY, least);
        let message = say!(words::TOO_TIGHT, list = named(&tight), left = on_tape(metres(left)));
        findings.push(Finding::new(Severity::Note, key, message));
    }
    colours(planned, findings);
    pins(planned, findings);
}

/// Feeds and grounds of one colour.
fn colours(planned: &PlannedHarness<'_>, findings: &mut Findings) {
    let [(_, permanent), (_, switched), (_, ground)] = &planned.typed.colours;
    if ground != permanent && ground != switched {
        return;
    }
    let feeds = say_of!(match (ground == permanent, ground == switched) {
        (true, true) => words::ALL_FEEDS,
        (true, false) => words::BATTERY_FEEDS,
        _ => words::SWITCHED_FEEDS,
    });
    let message = say!(words::ALIKE, feeds = feeds.into_text(), colour = ground.clone());
    let other = ["BK", "BN", "GY"].into_iter().find(|it| it != permanent && it != switched);
    let cure = other.map(|colour| {
        say!(words::DO_COLOUR, colour = colour).done_by(vec![harness::GROUND.edit(colour)])
    });
    findings.push(Finding::new(Severity::Doubt, harness::GROUND, message).cured_by(cure));
}

/// What the pins of the controller carry, and what they take.
fn pins(planned: &PlannedHarness<'_>, findings: &mut Findings) {
    if let Some(most) = planned.typed.pin_current {
        for is_ground in [false, true] {
            findings.extend(hot_pins(planned, most, is_ground));
        }
    }
    let Some(fits) = planned.typed.pin_wire else { return };
    let hair = 1e-6;
    let is_misfit = |size: &Area| {
        size.base() < fits.low.base() * (1.0 - hair)
            || size.base() > fits.high.base() * (1.0 + hair)
    };
    let of_harness = planned.wires.iter().filter(|it| it.wire.stock == Stock::Harness);
    let sized = of_harness.filter_map(|it| Some((it, it.wire.size.filter(is_misfit)?)));
    let misfits: Vec<(&PlannedWire, Area)> = sized.collect();
    if let Some((_, size)) = misfits.first().copied() {
        let alike = misfits.iter().filter(|(_, it)| *it == size).map(|(it, _)| *it);
        let list = names(alike, 1);
        let message =
            say!(words::PIN_WIRE, list = list, size = size, from = fits.low, to = fits.high);
        let finding = Finding::new(Severity::Fault, harness::PIN_WIRE, message);
        findings.push(finding.cured_by([say!(words::DO_PIGTAIL)]));
    }
}

/// The pins that carry more than they are rated for: those of the grounds, or those of the loads.
fn hot_pins(planned: &PlannedHarness<'_>, most: Current, is_ground: bool) -> Option<Finding> {
    let of = planned.wires.iter().filter(|it| (it.wire.duty == Duty::Ground) == is_ground);
    let over = of.filter_map(|it| Some((it, it.pin.filter(|draws| *draws > most)?)));
    let mut over: Vec<(&PlannedWire, Current)> = over.collect();
    crate::sorted::by(&mut over, |one, other| other.1.base().total_cmp(&one.1.base()));
    let draws = over.first()?.1;
    let list = names(over.iter().map(|(it, _)| *it), 1);
    let message = say!(words::PIN_HOT, load = list, draws = draws, most = most);
    let finding = Finding::new(severity(draws, most), harness::PIN_CURRENT, message);
    let cure = if is_ground { words::DO_GROUND_PINS } else { words::DO_PINS };
    Some(finding.cured_by([say_of!(cure)]))
}

/// Within what a rating is good for.
const HAIR: f64 = 1.03;

/// As of a wire: within a hair it is a Doubt; what ages it is a Fault; beyond it goes in use as planned.
fn severity(draws: Current, most: Current) -> Severity {
    let share = draws.base() / most.base().max(f64::MIN_POSITIVE);
    if share <= HAIR {
        Severity::Doubt
    } else if share <= AGES {
        Severity::Fault
    } else {
        Severity::Danger
    }
}
