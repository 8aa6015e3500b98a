//! The ignition coils from their fields.

use std::rc::Rc;

use super::starting::{self, ChargesUnasked};
use crate::read::{Conditions, Entry, PlannedRest, Reader, injectors::usual, relay_records};
use crate::{
    channels::Ignition,
    coil,
    coil::{CoilInputs, feed::CoilFeedParts, pattern::Pattern},
    engine::Engine,
    fields,
    quantity::{Band, Current, Measure, RotationalSpeed, Time, Value},
    questions::coils::words,
    schema::{Part, Place},
    words::Wording,
};

/// What the fields of the coils say.
#[derive(Debug)]
pub(crate) struct Coiled {
    /// The inputs, with what is assumed for blanks.
    pub(crate) inputs: CoilInputs,
    /// What follows from them; nothing where the igniter leaves the coil no voltage.
    pub(crate) found: Option<Rc<coil::CoilAnswer>>,
    /// Whether resistance or inductance is what is usual, for want of a typed one.
    pub(crate) is_guess: bool,
    /// Which of them, and what it is called in a sentence.
    pub(crate) guessed: (Place, &'static Wording),
    /// Whether the current that is wanted was typed.
    pub(crate) is_wanted_given: bool,
    /// How they would be charged if each were fired once a cycle, where they are not.
    pub(crate) once_a_cycle: Option<Pattern>,
    /// The record of the relay that feeds them.
    pub(crate) relay: usize,
    /// Whether the plan has it.
    pub(crate) has_relay: bool,
    /// The speed at which that relay is switched on, where it is: it cuts them as the engine stands.
    pub(crate) cut_below: Option<RotationalSpeed>,
    /// After how long an igniter lets go by itself, where it does.
    pub(crate) lets_go: Option<Time>,
    /// What the igniter's input does unasked, where that charges the coil.
    pub(crate) unasked: Option<ChargesUnasked>,
    /// How they are fed.
    pub(crate) parts: CoilFeedParts,
    /// What was taken for fields that are blank or can't be read: the label of the field and the value.
    pub(crate) taken: Vec<(&'static str, Value)>,
}

/// What was solved, and what it followed from: another edit leaves it as it is.
#[derive(Clone, Debug, Default)]
pub(crate) struct Memory(Option<(CoilInputs, Option<Rc<coil::CoilAnswer>>)>);

impl Memory {
    /// What follows from the inputs, worked out only where something of them is new.
    fn recall(&mut self, inputs: &CoilInputs) -> Option<Rc<coil::CoilAnswer>> {
        let known = self.0.take().filter(|(known, _)| known == inputs);
        let known = known.unwrap_or_else(|| (inputs.clone(), coil::answer(inputs).map(Rc::new)));
        self.0.insert(known).1.clone()
    }
}

/// Reads the coils; every field, whatever stands in the others. Nothing where none of it was typed: then it was not asked
/// about, and nothing is taken.
pub(crate) fn coils(
    reader: &mut Reader<'_>,
    engine: Option<&Engine>,
    (conditions, speed, rest): (&Conditions, Option<Band<RotationalSpeed>>, &PlannedRest),
    memory: &mut Memory,
) -> Option<Coiled> {
    if reader.plan().is_blank(Part::Coils) {
        return None;
    }
    let taken = &mut Vec::new();
    let mode = reader.ignition_mode();
    let limit = reader.band(fields::coils::LIMIT).value();
    let per_igniter = per_igniter(reader, limit.is_some());
    let inputs = CoilInputs {
        resistance: usual(reader, fields::coils::RESISTANCE, taken),
        inductance: usual(reader, fields::coils::INDUCTANCE, taken),
        wanted: usual(reader, fields::coils::CURRENT, taken).nominal,
        drop: usual(reader, fields::coils::DROP, taken),
        limit: limit.map(|limit| limit.map(|it| it / f64::from(per_igniter))),
        per_igniter,
        spark: usual(reader, fields::coils::SPARK, taken),
        duty_limit: reader.band(fields::coils::DUTY_LIMIT).value().map(|band| band.low),
        pattern: engine.zip(mode).map(|(engine, mode)| Pattern::new(engine, mode)),
        banks: engine
            .zip(mode)
            .map_or_else(Vec::new, |(engine, mode)| Pattern::by_bank(engine, mode)),
        speed: speed.map(|speed| speed.high),
        entered: reader.band_elsewhere(fields::controller::DWELL),
        entered_cranking: reader.band_elsewhere(fields::controller::CRANKING_DWELL),
        conditions: *conditions,
    };
    let is_known = reader.is_typed(fields::coils::RESISTANCE);
    let is_guess = !is_known || !reader.is_typed(fields::coils::INDUCTANCE);
    let guessed = if reader.is_typed(fields::coils::INDUCTANCE) {
        (fields::coils::RESISTANCE.place(), words::ITS_RESISTANCE)
    } else {
        (fields::coils::INDUCTANCE.place(), words::ITS_INDUCTANCE)
    };
    let is_wanted_given = reader.is_typed(fields::coils::CURRENT);
    let relay = relay_records::of_coils(reader.plan());
    let parts = parts(reader, conditions, relay, (rest, taken));
    let on_at = fields::relays::RELAY_ON_AT.at(relay);
    let cut_below = Some(relay)
        .filter(|at| relay_records::is_switched_at_speed(reader.plan(), *at))
        .and_then(|_| reader.band_elsewhere(on_at))
        .map(|speed| speed.nominal)
        .filter(|speed| speed.base() > 0.0);
    let is_more_often = mode.is_some_and(|mode| mode != Ignition::Sequential);
    let once_a_cycle =
        engine.filter(|_| is_more_often).map(|engine| Pattern::new(engine, Ignition::Sequential));
    Some(Coiled {
        found: memory.recall(&inputs),
        inputs,
        is_guess,
        guessed,
        is_wanted_given,
        once_a_cycle,
        relay,
        has_relay: relay < reader.plan().count(Part::Relays),
        cut_below,
        lets_go: reader.band(fields::coils::LETS_GO).value().map(|it| it.high),
        unasked: starting::charges_unasked(reader, rest),
        parts,
        taken: std::mem::take(taken),
    })
}

impl Coiled {
    /// The dwell that the coils need at the charging supply, where that is known.
    pub(crate) fn dwell(&self) -> Option<Time> {
        let time = self.found.as_ref()?.charge.time;
        (time.base() > 0.0).then_some(time)
    }

    /// The dwell that they need at the weakest supply, where that charges them at all.
    pub(crate) fn cranking_dwell(&self) -> Option<Time> {
        self.found.as_ref()?.dwells.first()?.nominal
    }
}

/// Coils on one igniter; asked where it holds a current, which they share.
fn per_igniter(reader: &mut Reader<'_>, is_limited: bool) -> u32 {
    let key = fields::coils::PER_IGNITER;
    if is_limited {
        return reader.whole(key).value().unwrap_or(1);
    }
    reader.stand(key.into());
    reader.whole_elsewhere(key).unwrap_or(1)
}

fn parts(
    reader: &mut Reader<'_>,
    conditions: &Conditions,
    at: usize,
    (rest, taken): (&PlannedRest, &mut Vec<(&'static str, Value)>),
) -> CoilFeedParts {
    let relays = reader.whole(fields::relays::ALIKE.at(at));
    if !matches!(relays, Entry::Given(_)) {
        taken.push((fields::relays::ALIKE.field().label, 1_u32.into()));
    }
    let mut rating = |key| reader.band::<Current>(key).value().map(|band| band.low);
    let (relay, fuse) =
        (rating(fields::relays::RATING.at(at)), rating(fields::relays::FUSE.at(at)));
    let length = reader.band(fields::relays::LEAD_LENGTH.at(at)).value().map(|band| band.high);
    let area = reader.band(fields::relays::LEAD_SIZE.at(at)).value().map(|band| band.low);
    // one rule for all leads that are warm: as hot as the air around the wires where that is typed, or else as the engine bay
    let typed = reader.is_typed(fields::wiring::AMBIENT.place());
    let around = reader.band_elsewhere(fields::wiring::AMBIENT).filter(|_| typed);
    let others = rest.taken_behind(at) + relay_records::drawn_beside(reader, at);
    let relays = relays.value().unwrap_or(1);
    CoilFeedParts {
        relays,
        relay,
        fuse,
        lead: length.zip(area),
        hot: around.map_or(conditions.temperature.high, |it| it.high),
        // each has its share of them
        others: others / f64::from(relays.max(1)),
    }
}
