//! An igniter that charges its coil unasked: while the controller starts, or whenever its output is off.

use crate::{
    coil::charging::Charged,
    fields,
    finding::{Finding, Severity},
    message::Message,
    output::{self, KeyState, OnLevel, Resting},
    questions::coils::words,
    read::{Coiled, OutputLink, PlannedLoad, PlannedRest, Reader, rest::same_name},
    say,
    schema::Part,
};

/// What an igniter's input does unasked.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct ChargesUnasked {
    /// The input's name.
    name: String,
    /// The names of all inputs of its kind.
    alike: Vec<String>,
    /// What it does while the controller starts.
    starting: Resting,
    /// What it does with its output off.
    off: Resting,
}

/// The input that is named, where it may make its igniter charge unasked.
pub(super) fn charges_unasked(
    reader: &mut Reader<'_>,
    rest: &PlannedRest,
) -> Option<ChargesUnasked> {
    let key = fields::coils::INPUT;
    reader.stand(key.into());
    let named = reader.text(key);
    let inputs = || rest.loads.iter().filter(|load| load.place.part == Part::Loads);
    let load = inputs().find(|load| same_name(&load.name, named));
    if named.is_empty() {
        return None;
    }
    let Some(load) = load else {
        let message = say!(words::NO_SUCH_INPUT, name = named.to_owned());
        reader.unusable(Finding::new(Severity::Fault, key, message));
        return None;
    };
    let OutputLink::To(number) = load.link else { return None };
    let levels = rest.outputs.get(number)?.output.as_ref()?.levels();
    let does = |state, level| {
        let wiring = rest.wiring(number, level)?;
        output::while_unasked(&wiring, rest.place(load)?, state, &rest.around)
    };
    // a stage that is open has no level
    let starting = does(KeyState::Starting, OnLevel::Battery)?;
    let off = match levels {
        [level] => does(KeyState::Off, *level)?,
        // what counts as on is asked by itself
        _ => Resting::Rests,
    };
    let kind = |load: &PlannedLoad| {
        let like = reader.text(load.place.key(fields::loads::LIKE));
        if like.is_empty() { load.name.clone() } else { like.to_owned() }
    };
    let is_alike = |other: &PlannedLoad| same_name(&kind(other), &kind(load));
    let alike = inputs().filter(|other| is_alike(other)).map(|it| it.name.clone()).collect();
    let is_quiet = [starting, off] == [Resting::Rests; 2];
    (!is_quiet).then(|| ChargesUnasked { name: load.name.clone(), alike, starting, off })
}

/// How grave it is while the controller starts; nothing where it does not, where a relay that is out on an engine that stands leaves
/// the coil no power, or where more is told: that it charges as long as its output is off.
pub(super) fn severity(read: &Coiled) -> Option<Severity> {
    let at =
        read.unasked.as_ref().filter(|_| read.cut_below.is_none() && !charges_at_rest(read))?;
    match at.starting {
        Resting::Acts => Some(Severity::Danger),
        Resting::MayAct => Some(Severity::Doubt),
        Resting::Rests => None,
    }
}

/// Whether it charges whenever its output is off.
pub(super) fn charges_at_rest(read: &Coiled) -> bool {
    read.unasked.as_ref().is_some_and(|it| it.off == Resting::Acts)
}

impl Coiled {
    /// The input that may make its igniter charge while the controller is not up.
    pub(super) fn input_at_key_on(&self) -> Option<&str> {
        let at = self.unasked.as_ref().filter(|it| it.starting != Resting::Rests)?;
        Some(at.name.as_str()).filter(|_| !charges_at_rest(self))
    }

    /// The inputs of which it is told that they fire a coil as the controller is up, and how gravely.
    pub(crate) fn told_at_key_on(&self) -> Option<(&[String], Severity)> {
        Some((self.unasked.as_ref()?.alike.as_slice(), severity(self)?))
    }

    /// The inputs that charge their coils as long as their outputs are off, with what comes of it and how grave that is.
    pub(crate) fn told_at_rest(&self) -> Option<(&[String], Message, Severity)> {
        let at = self.unasked.as_ref().filter(|_| charges_at_rest(self))?;
        let held = &self.found.as_ref()?.held;
        let fuse = self.parts.fuse.map(|fuse| (fuse, held.outlasts(fuse)));
        let (current, alike) = (held.current.nominal, at.alike.as_slice());
        if let Some(time) = self.lets_go {
            return Some((alike, say!(words::CHARGES_UNTIL, time = time), Severity::Fault));
        }
        let message = match fuse {
            Some((fuse, (true, _))) => {
                say!(words::CHARGES_BEHIND, current = current, rating = fuse)
            }
            _ => say!(words::CHARGES_AT_REST, current = current),
        };
        Some((alike, message, Severity::Danger))
    }
}

/// What comes of that: a spark where nobody waits for one.
pub(super) fn finding(
    read: &Coiled,
    charge: &Charged,
    relay_cure: Option<Message>,
) -> Option<Finding> {
    let (severity, at) = (severity(read)?, read.unasked.as_ref()?);
    let message = say!(
        words::FIRES_AT_KEY_ON,
        name = at.name.clone(),
        current = charge.current,
        energy = charge.energy
    );
    let cures = relay_cure.into_iter().chain([say!(words::HOLD_INPUT)]);
    let steps = charge.working.iter().cloned();
    Some(Finding::new(severity, fields::coils::INPUT, message).cured_by(cures).shown_by(steps))
}
