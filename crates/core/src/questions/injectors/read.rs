//! The injectors from their fields.

use crate::read::{Conditions, Entry, PlannedRest, Purpose, Reader, relay_records, usual_band};
use crate::{
    channels::Injection,
    engine::Engine,
    fields,
    finding::{Finding, Severity},
    injector::{
        DriverKind, InjectorInputs, InjectorOutput, Wire, ballast,
        opening::{self, Opening},
        turn_off::{Clamp, Pulses},
    },
    quantity::{Band, Current, Measure, Ratio, Resistance, RotationalSpeed, Value, ohms},
    questions::firing::read::Sharing,
    questions::injectors::words,
    say,
    schema::{Key, Part},
};

/// Which injectors.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum WhichSet {
    /// Those that every engine has.
    First,
    /// Those that come in later, under load.
    Second,
}

impl WhichSet {
    /// The part of the plan that holds their fields.
    pub(crate) fn part(self) -> Part {
        match self {
            Self::First => Part::Injectors,
            Self::Second => Part::SecondInjectors,
        }
    }
}

/// What stands around a part that is read.
#[derive(Debug)]
pub(crate) struct InjectorSurroundings<'a> {
    /// Supply and temperatures.
    pub(crate) conditions: &'a Conditions,
    /// The engine, where it is known.
    pub(crate) engine: Option<&'a Engine>,
    /// Its highest speed, where it is known.
    pub(crate) highest_speed: Option<Band<RotationalSpeed>>,
    /// How many injectors share a channel, where the firing tells.
    pub(crate) sharing: Option<Sharing>,
}

/// What the fields of a set of injectors say.
#[derive(Debug)]
pub(crate) struct Injectors {
    /// Which set.
    pub(crate) set: WhichSet,
    /// The resistance of one; nothing can be said without it.
    pub(crate) resistance: Entry<Band<Resistance>>,
    /// Whether the number on an output can be used; else one is looked at as if it were alone.
    pub(crate) sharing_is_known: bool,
    /// The inputs, where the resistance is known.
    pub(crate) inputs: Option<InjectorInputs>,
    /// How many there are.
    pub(crate) count: Option<u32>,
    /// What was taken for fields that are blank or can't be read: the label of the field and the value.
    pub(crate) taken: Vec<(&'static str, Value)>,
}

/// What is said of the feed.
#[derive(Clone, Copy, Debug)]
pub(crate) struct FeedParts {
    /// The record of its relay.
    pub(crate) at: Option<usize>,
    /// The rating of its fuse.
    pub(crate) fuse: Option<Current>,
    /// The rating of its relay's contact.
    pub(crate) relay: Option<Current>,
    /// The most of the time that an injector is open.
    pub(crate) duty: Ratio,
    /// What other loads behind the same contact take.
    pub(crate) others: Current,
}

/// Reads the feed.
pub(crate) fn feed_parts(reader: &mut Reader<'_>, rest: &PlannedRest) -> FeedParts {
    let at = relay_records::feeding(reader.plan(), Purpose::Injectors);
    let mut rating = |key: Key<Current>| reader.band(key.at(at?)).value().map(|band| band.low);
    let (fuse, relay) = (rating(fields::relays::FUSE), rating(fields::relays::RATING));
    let key = fields::fuel::DUTY_LIMIT;
    let usual = || usual_band(key).map_or(Ratio::from_base(1.0), |(band, _)| band.high);
    let duty = reader.band_elsewhere(key).map_or_else(usual, |band| band.high);
    let others = at.map_or(Current::from_base(0.0), |at| {
        rest.taken_behind(at) + relay_records::drawn_beside(reader, at)
    });
    FeedParts { at, fuse, relay, duty, others }
}

/// The fields of a set as they are read.
struct OfSet<'a, 'p> {
    reader: &'a mut Reader<'p>,
    set: WhichSet,
    taken: Vec<(&'static str, Value)>,
    /// How many there are at each cylinder, where each is fired at its own cylinder's moment.
    at_each: u32,
}

/// Reads a set of injectors; every field, whatever stands in the others.
pub(crate) fn injectors(
    reader: &mut Reader<'_>,
    around: &InjectorSurroundings<'_>,
    set: WhichSet,
) -> Injectors {
    let mut of = OfSet { reader, set, taken: Vec::new(), at_each: 1 };
    let resistance = of.resistance();
    let count = of.count(around.engine);
    let per_output = of.per_output(count, around.sharing);
    let output = of.output();
    let wire = Wire {
        length: of.usual(fields::injectors::WIRE_LENGTH),
        area: of.usual(fields::injectors::WIRE_SIZE),
        contacts: of.usual(fields::injectors::CONTACT_RESISTANCE),
    };
    let resistor = of.band(fields::injectors::RESISTOR);
    let resistor_rating = of.band(fields::injectors::RESISTOR_RATING).map(|band| band.low);
    let across = of.reader.choice(fields::injectors::ACROSS.of(set.part())).value();
    let has_diode = across == Some(fields::loads::Across::Diode);
    let opening_current = of.band(fields::injectors::OPENING_CURRENT);
    let inductance = of.band(fields::injectors::INDUCTANCE);
    let pulses = around.highest_speed.map(|speed| Pulses {
        speed: speed.high,
        per_turn: pulses_per_turn(of.reader, per_output),
    });
    let inputs = resistance.value().map(|resistance| InjectorInputs {
        resistance,
        inductance,
        opening_current,
        per_output: per_output.unwrap_or(1),
        count,
        // the second set hangs on outputs of its own, of which the plan knows no number
        outputs_there: (set == WhichSet::First)
            .then(|| of.reader.whole_elsewhere(fields::channels::INJECTION_COUNT))
            .flatten(),
        output,
        wire,
        resistor: resistor.map_or(Band::exact(ohms(0.0)), ballast::as_bought),
        resistor_rating,
        has_diode,
        pulses,
        corners: around.conditions.corners(),
    });
    of.opens_at(inputs.as_ref());
    let OfSet { taken, .. } = of;
    Injectors { set, resistance, sharing_is_known: per_output.is_some(), inputs, count, taken }
}

/// How often an output is switched in a turn: once a cycle in sequence; once a turn where outputs are shared or fire
/// otherwise, which is the most that is usual.
fn pulses_per_turn(reader: &Reader<'_>, per_output: Option<u32>) -> f64 {
    let (mode, turns_of_cycle) = reader.injection();
    let in_sequence = mode.map_or(per_output == Some(1), |mode| mode == Injection::EachOnce);
    if in_sequence { 1.0 / f64::from(turns_of_cycle) } else { 1.0 }
}

/// That there are outputs enough.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Enough {
    /// By their number.
    Sure,
    /// As far as is known.
    Unknown,
}

impl OfSet<'_, '_> {
    fn band<Q: Measure>(&mut self, key: Key<Q>) -> Option<Band<Q>> {
        self.reader.band(key.of(self.set.part())).value()
    }

    /// The resistance with its tolerance: its own where it was typed as a band, else the one of the field beside it.
    fn resistance(&mut self) -> Entry<Band<Resistance>> {
        let tolerance = fields::injectors::TOLERANCE.of(self.set.part());
        let resistance = self.reader.band(fields::injectors::RESISTANCE.of(self.set.part()));
        let has_its_own = resistance.value().is_some_and(|band| band.is_spread());
        if has_its_own && !self.reader.is_typed(tolerance) {
            self.reader.missing(tolerance);
            return resistance;
        }
        let share = self.usual(fields::injectors::TOLERANCE).high.base();
        resistance.map(|band| Band {
            low: Measure::from_base(band.low.base() * (1.0 - share)),
            nominal: band.nominal,
            high: Measure::from_base(band.high.base() * (1.0 + share)),
        })
    }

    /// The number of injectors: one for each cylinder where none is typed.
    fn count(&mut self, engine: Option<&Engine>) -> Option<u32> {
        let key = fields::injectors::COUNT.of(self.set.part());
        let entry = self.reader.whole(key);
        match engine.map(Engine::cylinders) {
            Some(cylinders) => {
                self.held_against(entry, cylinders);
                let basis = "one for each cylinder";
                self.reader.or_assume(key, entry, cylinders, cylinders, basis).value()
            }
            None => entry.value(),
        }
    }

    /// Injectors that are fired each at its own cylinder's moment are as many as the cylinders.
    fn held_against(&mut self, count: Entry<u32>, cylinders: u32) {
        let key = match self.set {
            WhichSet::First => fields::channels::INJECTION_MODE,
            WhichSet::Second => fields::channels::SECOND_MODE,
        };
        let mode = self.reader.choice_elsewhere(key);
        let is_each = matches!(mode, Some(Injection::EachOnce | Injection::Companions));
        let count = count.value().filter(|_| is_each);
        let whole = count.filter(|it| it.checked_rem(cylinders) == Some(0));
        self.at_each = whole.and_then(|it| it.checked_div(cylinders)).unwrap_or(1).max(1);
        if let Some(count) = count.filter(|count| count % cylinders != 0) {
            let key = fields::injectors::COUNT.of(self.set.part());
            let message = say!(words::COUNT_DIFFERS, count = count, cylinders = cylinders);
            let cure =
                say!(words::COUNT_AS_CYLINDERS, cylinders = cylinders).done_by(vec![key.edit("")]);
            self.reader.remark(Finding::new(Severity::Fault, key, message).cured_by([cure]));
        }
    }

    /// How many share a channel, where there are several at each cylinder: those of one cylinder together, unless outputs for each of
    /// them speak for a second set.
    fn with_several(&mut self, sharing: Sharing, typed: Entry<u32>, count: Option<u32>) -> Sharing {
        let Some(count) = count.filter(|_| self.at_each > 1 && !sharing.is_seen) else {
            return sharing;
        };
        let together = Sharing { most: sharing.most.saturating_mul(self.at_each), ..sharing };
        if matches!(typed, Entry::Given(typed) if typed == together.most) {
            return together;
        }
        let is_apart = matches!(self.outputs_for(Some(count), 1), Some(Enough::Sure));
        self.several_at_each((count, together.most), is_apart);
        if is_apart { sharing } else { together }
    }

    /// Several injectors at each cylinder: on its output together, or a second set with outputs of its own, which stands apart.
    fn several_at_each(&mut self, (count, most): (u32, u32), is_apart: bool) {
        let key = fields::injectors::COUNT.of(self.set.part());
        let cylinders = count.checked_div(self.at_each).unwrap_or(count);
        let message = say!(words::SEVERAL_AT_EACH, count = count, cylinders = cylinders);
        let per_output = fields::injectors::PER_OUTPUT.of(self.set.part());
        let shared =
            say!(words::SEVERAL_SHARE, n = most).done_by(vec![per_output.edit(most.to_string())]);
        let second = fields::injectors::COUNT.of(WhichSet::Second.part());
        let own = say!(words::SEVERAL_APART, cylinders = cylinders).done_by(vec![
            key.edit(cylinders.to_string()),
            second.edit((count - cylinders).to_string()),
        ]);
        let can_be_apart = self.set == WhichSet::First && !self.reader.is_typed(second);
        let own = can_be_apart.then_some(own);
        let cures: Vec<_> = if is_apart {
            own.into_iter().chain([shared]).collect()
        } else {
            std::iter::once(shared).chain(own).collect()
        };
        self.reader.remark(Finding::new(Severity::Doubt, key, message).cured_by(cures));
    }

    /// How many share an output; nothing where that can't be read or is more than there are. Where it is blank, it is what
    /// the firing says.
    fn per_output(&mut self, count: Option<u32>, sharing: Option<Sharing>) -> Option<u32> {
        let key = fields::injectors::PER_OUTPUT.of(self.set.part());
        let mut entry = self.reader.whole(key);
        let sharing = sharing.map(|it| self.with_several(it, entry, count));
        if let (Entry::Assumed(usual), Some(Sharing { most, basis, .. })) = (entry, sharing)
            && most != usual
        {
            entry = self.reader.or_assume(key, Entry::Missing, most, most, basis);
        }
        let mut per_output = entry.value()?;
        if let (Entry::Given(typed), Some(Sharing { most, basis, is_seen })) = (entry, sharing)
            && most != typed
        {
            let message = say!(words::SHARING_DIFFERS, typed = typed, firing = most, basis = basis);
            // outputs that fire together, each with fewer injectors, are no contradiction where there are enough of them
            let outputs = self.outputs_for(count, typed).filter(|_| !is_seen && typed < most);
            let severity = match outputs {
                Some(Enough::Sure) => None,
                Some(Enough::Unknown) => Some(Severity::Doubt),
                None => Some(Severity::Fault),
            };
            let cure = say!(words::SHARING_AS_FIRED, firing = most).done_by(vec![key.edit("")]);
            if let Some(severity) = severity {
                self.reader.remark(Finding::new(severity, key, message).cured_by([cure]));
            }
            if severity == Some(Severity::Fault) {
                per_output = typed.max(most);
            }
        }
        match count {
            Some(count) if count < per_output => {
                let message =
                    say!(words::MORE_THAN_THERE_ARE, per_output = per_output, count = count);
                self.reader.unusable(Finding::new(Severity::Fault, key, message));
                None
            }
            _ => Some(per_output),
        }
    }

    /// Whether the controller has outputs for so many injectors on each; nothing where it has not.
    fn outputs_for(&self, count: Option<u32>, per_output: u32) -> Option<Enough> {
        let key = match self.set {
            WhichSet::First => fields::channels::INJECTION_COUNT,
            WhichSet::Second => fields::channels::SECOND_COUNT,
        };
        let there = self.reader.whole_elsewhere(key);
        let wanted = count.map(|count| count.div_ceil(per_output.max(1)));
        match wanted.zip(there) {
            None => Some(Enough::Unknown),
            Some((wanted, there)) => (wanted <= there).then_some(Enough::Sure),
        }
    }

    fn output(&mut self) -> InjectorOutput {
        let kind = self.reader.choice(fields::injectors::OUTPUT_KIND.of(self.set.part()));
        if kind.is_assumed() {
            self.taken.push(("Injector driver", "a plain switch to ground".into()));
        }
        let stage = kind.value().unwrap_or(DriverKind::PlainSwitch);
        let limit = self.band(fields::injectors::OUTPUT_LIMIT);
        let hold = self.band(fields::injectors::HOLD_CURRENT);
        let peak_time = self.band(fields::injectors::PEAK_TIME);
        // what a plain switch has no use for may have been typed before it was chosen
        let is_controlled = stage == DriverKind::CurrentControlled;
        InjectorOutput {
            stage,
            limit,
            hold: hold.filter(|_| is_controlled),
            peak_time: peak_time.filter(|_| is_controlled),
            on_resistance: self.usual(fields::injectors::OUTPUT_RESISTANCE),
            clamp: Clamp {
                voltage: self.usual(fields::injectors::CLAMP),
                energy: self.band(fields::injectors::CLAMP_ENERGY).map(|band| band.low),
                heat: self.band(fields::injectors::OUTPUT_HEAT).map(|band| band.low),
            },
        }
    }

    /// Says which opening current is taken where none is known.
    fn opens_at(&mut self, inputs: Option<&InjectorInputs>) {
        let key = fields::injectors::OPENING_CURRENT.of(self.set.part());
        let opening = inputs.map(Opening::of).filter(|opening| !opening.is_given);
        if let Some(opening) = opening.filter(|_| !self.reader.is_typed(key)) {
            let (current, shown) = (opening.current, opening.current.high.show());
            self.reader.or_assume(key, Entry::Missing, current, shown.clone(), opening::USUAL);
            self.taken.push((key.field().label, shown));
        }
    }

    fn usual<Q: Measure>(&mut self, key: Key<Q>) -> Band<Q> {
        usual(self.reader, key.of(self.set.part()), &mut self.taken)
    }
}

/// A quantity that has a usual value, which is taken where the field is blank or can't be read.
pub(crate) fn usual<Q: Measure>(
    reader: &mut Reader<'_>,
    key: Key<Q>,
    taken: &mut Vec<(&'static str, Value)>,
) -> Band<Q> {
    let entry = reader.band(key);
    if let Entry::Given(band) = entry {
        return band;
    }
    // a test of the fields sees to it that every assumed value can be read
    let (band, shown) =
        usual_band(key).unwrap_or((Band::exact(Q::from_base(0.0)), Value::text("")));
    // what is taken for a field that can't be read is said by the report
    if !matches!(entry, Entry::Unreadable) {
        taken.push((key.field().label, shown));
    }
    band
}
