//! An igniter that charges its coil while the controller starts.

use crate::{
    coil::charging::Charged,
    fields,
    finding::{Finding, Severity},
    message::Message,
    output::{self, OnLevel, Starting},
    questions::coils::words,
    read::{Coiled, OutputLink, PlannedLoad, PlannedRest, Reader, rest::same_name},
    say,
    schema::Part,
};

/// What an igniter's input does while the controller starts.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct ChargesAtKeyOn {
    /// The input's name.
    name: String,
    /// Whether it is sure to make the igniter charge.
    is_sure: bool,
}

/// The input that is named, where it may make its igniter charge while the controller starts.
pub(super) fn at_key_on(reader: &mut Reader<'_>, rest: &PlannedRest) -> Option<ChargesAtKeyOn> {
    let key = fields::coils::INPUT;
    reader.stand(key.into());
    let named = reader.text(key);
    let is_it =
        |load: &&PlannedLoad| load.place.part == Part::Loads && same_name(&load.name, named);
    let load = rest.loads.iter().map(|it| &**it).find(is_it);
    if named.is_empty() {
        return None;
    }
    let Some(load) = load else {
        let message = say!(words::NO_SUCH_INPUT, name = named.to_owned());
        reader.unusable(Finding::new(Severity::Fault, key, message));
        return None;
    };
    let OutputLink::To(output) = load.link else { return None };
    // a stage that is open has no level
    let wiring = rest.wiring(output, OnLevel::Battery)?;
    let starting = output::while_starting(&wiring, rest.place(load)?, &rest.around)?;
    let is_sure = starting == Starting::Acts && !load.assumed.pull_in;
    (starting != Starting::Rests).then(|| ChargesAtKeyOn { name: load.name.clone(), is_sure })
}

/// How grave it is; nothing where it does not, or a relay that is out on an engine that stands leaves the coil no power.
pub(super) fn severity(read: &Coiled) -> Option<Severity> {
    let at = read.at_key_on.as_ref().filter(|_| read.cut_below.is_none())?;
    Some(if at.is_sure && !read.is_guess { Severity::Danger } else { Severity::Doubt })
}

impl Coiled {
    /// The input that may make its igniter charge while the controller is not up.
    pub(super) fn input_at_key_on(&self) -> Option<&str> {
        Some(self.at_key_on.as_ref()?.name.as_str())
    }

    /// The input of which it is told that it fires a coil as the controller is up, and how gravely.
    pub(crate) fn told_at_key_on(&self) -> Option<(&str, Severity)> {
        Some((self.at_key_on.as_ref()?.name.as_str(), severity(self)?))
    }
}

/// What comes of that: a spark where nobody waits for one.
pub(super) fn finding(
    read: &Coiled,
    charge: &Charged,
    relay_cure: Option<Message>,
) -> Option<Finding> {
    let (severity, at) = (severity(read)?, read.at_key_on.as_ref()?);
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
