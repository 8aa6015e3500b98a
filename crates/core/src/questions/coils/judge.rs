//! Are they charged in time? What is wrong, and what would cure it.

use crate::report::Tone;
use crate::{
    channels::Ignition,
    coil::{
        AtSpeed, CoilAnswer, CoilInputs, Dwell,
        cures::CoilCures,
        entered::{DwellFit, EnteredDwell},
    },
    fields,
    finding::{Finding, Findings, Moment, Severity},
    message::Message,
    quantity::{Holds, Measure, Time, Value, seconds},
    questions::coils::{starting, words},
    read::Coiled,
    say,
    schema::{Choice as _, Key},
};

/// Whether the current is only ever missed while the starter turns.
fn is_short_cranking_alone(inputs: &CoilInputs, found: &CoilAnswer) -> bool {
    let Holds::AtSome(corners) = &found.falls_short else { return false };
    let cranking = &inputs.conditions.corners()[..2];
    corners.iter().all(|name| cranking.iter().any(|corner| corner.name == name))
}

/// What the dwell that is entered gives, where that is far from what is wanted.
fn misfit(read: &Coiled, entered: Option<&EnteredDwell>) -> Option<(Severity, DwellFit)> {
    let (entered, wanted) = (entered?, read.inputs.wanted);
    let fit = if read.is_guess { entered.fit_of_unknown(wanted) } else { entered.fit(wanted) };
    let severity = match fit {
        DwellFit::Suits => return None,
        DwellFit::TooLong if read.is_wanted_given => Severity::Danger,
        DwellFit::TooLong | DwellFit::PerhapsTooLong | DwellFit::TooShort | DwellFit::Unknown => {
            Severity::Doubt
        }
    };
    Some((severity, fit))
}

pub(super) fn verdict(read: &Coiled, found: &CoilAnswer) -> (Tone, Message) {
    let inputs = &read.inputs;
    if starting::charges_at_rest(read) {
        return (Tone::Bad, say!(words::AT_REST));
    }
    let at_key_on = starting::severity(read);
    if at_key_on == Some(Severity::Danger) {
        return (Tone::Bad, say!(words::AT_KEY_ON));
    }
    if let Some((severity, fit)) = misfit(read, found.entered.as_ref()) {
        let tone = if severity == Severity::Danger { Tone::Bad } else { Tone::Doubtful };
        let current = found.entered.as_ref().map_or(inputs.wanted, |it| it.current.nominal);
        return match fit {
            DwellFit::TooShort => (tone, say!(words::DWELL_SHORT, current = current)),
            DwellFit::Unknown => (tone, say!(words::DWELL_UNKNOWN)),
            _ => (tone, say!(words::DWELL_LONG, current = current)),
        };
    }
    if found.falls_short == Holds::Always {
        return (Tone::Bad, say!(words::NEVER, current = inputs.wanted));
    }
    if let Some(at) = &found.at_speed {
        if !at.is_in_time() {
            return (Tone::Bad, say!(words::RUNS_OUT_AT, speed = at.runs_out));
        }
        if at.is_over_duty(inputs) {
            return (Tone::Bad, say!(words::TOO_LONG, duty = at.duty));
        }
    }
    if found.falls_short != Holds::Never {
        return if is_short_cranking_alone(inputs, found) {
            (Tone::Doubtful, say!(words::WEAK_CRANKING, current = inputs.wanted))
        } else {
            (Tone::Bad, say!(words::NOT_SURE, current = inputs.wanted))
        };
    }
    if at_key_on.is_some() {
        return (Tone::Doubtful, say!(words::PERHAPS_AT_KEY_ON));
    }
    if let Some((least, most)) = guessed(read, found) {
        return (Tone::Open, say!(words::DWELL_GUESSED, least = least, most = most));
    }
    match &found.at_speed {
        Some(at) => {
            (Tone::Good, say!(words::IN_TIME, needed = at.needed, available = at.available))
        }
        None => (
            Tone::Open,
            say!(
                words::DWELL_IS,
                dwell = found.charge.time,
                supply = inputs.conditions.supply.high
            ),
        ),
    }
}

/// How the dwell of a coil that is not known is found at the car.
fn start(read: &Coiled, found: &CoilAnswer) -> Option<Message> {
    let is_open = misfit(read, found.entered.as_ref()).is_some() || read.inputs.entered.is_none();
    let at = found.dwells.last().filter(|_| is_open)?;
    let current = read.inputs.wanted;
    Some(say!(words::DO_START, least = at.least?, supply = at.supply, current = current))
}

/// That the dwell of a coil that is not known may be anything.
fn unknown(read: &Coiled, found: &CoilAnswer) -> Option<Finding> {
    let (least, most) = guessed(read, found)?;
    let (place, what) = read.guessed;
    let message = say!(
        words::DWELL_ANYTHING,
        what = what.text,
        current = read.inputs.wanted,
        least = least,
        most = most,
        supply = read.inputs.conditions.supply.high
    );
    Some(Finding::new(Severity::Doubt, place.path(), message).cured_by(start(read, found)))
}

/// The dwell at the charging supply, from the least to the most, where the coil is not known and none is entered.
fn guessed(read: &Coiled, found: &CoilAnswer) -> Option<(Time, Value)> {
    let at = found.dwells.last().filter(|_| read.is_guess && read.inputs.entered.is_none())?;
    let most = at.most.map_or_else(|| Value::text(words::LONGER.text), Measure::show);
    Some((at.least?, most))
}

pub(super) fn why(inputs: &CoilInputs, found: &CoilAnswer) -> Option<Message> {
    let at = found.at_speed.as_ref()?;
    let speed = inputs.speed.map_or_else(|| Value::text(""), Measure::show);
    let with_end = |why: Message| {
        if runs_out_near(inputs, at) {
            return why.and_then(&say!(words::WHY_RUNS_OUT, runs_out = at.runs_out));
        }
        why
    };
    if let Some(entered) = &found.entered {
        let entered = say!(
            words::WHY_ENTERED,
            dwell = entered.time.nominal,
            current = entered.current.nominal,
            supply = entered.supply,
            available = at.available,
            speed = speed
        );
        return Some(with_end(entered));
    }
    Some(with_end(say!(
        words::WHY,
        needed = at.needed,
        current = inputs.wanted,
        supply = inputs.conditions.supply.high,
        energy = found.charge.energy,
        available = at.available,
        speed = speed
    )))
}

/// Far above the highest speed it runs out where nobody goes.
const NEAR: f64 = 1.5;

/// Whether the speed at which the dwell runs out is worth a word.
pub(super) fn runs_out_near(inputs: &CoilInputs, at: &AtSpeed) -> bool {
    inputs.speed.is_none_or(|speed| at.runs_out.base() < NEAR * speed.base())
}

pub(super) fn cures(cures: &CoilCures) -> Vec<Message> {
    let seldom = cures.once_a_cycle.map(|speed| {
        let mode = fields::channels::IGNITION_MODE.edit(Ignition::Sequential.choosable().code);
        say!(words::CURE_ONCE, speed = speed).done_by(vec![mode])
    });
    let less = cures.less.map(|(current, energy)| {
        let current_edit = fields::coils::CURRENT.edit(current.show().into_shown());
        say!(words::CURE_LESS, current = current, energy = energy).done_by(vec![current_edit])
    });
    seldom.into_iter().chain(less).collect()
}

pub(super) fn to_do(read: &Coiled, found: &CoilAnswer, cures: &[Message]) -> Vec<Message> {
    let inputs = &read.inputs;
    let mut to_do = cures.to_vec();
    if found.at_speed.as_ref().is_some_and(|at| !at.is_enough(inputs)) && cures.is_empty() {
        to_do.push(say!(words::DO_OTHER_COIL));
    }
    if found.falls_short == Holds::Always {
        to_do.push(say!(words::DO_OTHER_PAIR, current = inputs.wanted));
        return to_do;
    }
    if read.is_guess {
        to_do.extend(start(read, found));
    } else {
        to_do.push(say!(words::DO_ENTER));
    }
    if inputs.pattern.is_none() {
        to_do.push(say!(words::DO_ENGINE));
    } else if inputs.speed.is_none() {
        to_do.push(say!(words::DO_SPEED));
    }
    to_do.push(say!(words::DO_PROVE, current = inputs.wanted));
    to_do
}

/// What the fitter should know.
pub(super) fn concerns(
    read: &Coiled,
    found: &CoilAnswer,
    cures: &[Message],
    findings: &mut Findings,
) {
    let inputs = &read.inputs;
    let running = (found.entered.as_ref(), fields::controller::DWELL);
    // coils that share what their igniter holds get no more from any dwell
    let shared = shared_limit(read);
    let is_short_of_shared =
        |it: &Finding| shared.is_some() && it.message.code == words::DWELL_TOO_SHORT.code;
    // of a coil that is not known the shortest is begun with
    let needed = |it: &Dwell| if read.is_guess { it.least } else { it.nominal };
    let entered = dwell(read, found, running, found.dwells.last().and_then(needed));
    findings.extend(entered.filter(|it| !is_short_of_shared(it)));
    findings.extend(unknown(read, found));
    let at_lowest = found.dwells.first().and_then(needed);
    let cranking = (found.entered_cranking.as_ref(), fields::controller::CRANKING_DWELL);
    // for the seconds of a start more is borne, but a weak spark is none; where no dwell does it, that is said by itself
    let is_short = |it: &Finding| {
        let is_too_short = it.message.code == words::DWELL_TOO_SHORT.code;
        it.severity == Severity::Danger || (is_too_short && at_lowest.is_some())
    };
    let while_cranking = dwell(read, found, cranking, at_lowest).filter(is_short);
    let while_cranking = while_cranking.map(|it| it.striking(Moment::Cranking));
    findings.extend(while_cranking.filter(|it| !is_short_of_shared(it)));
    let is_short_cranking = is_short_cranking_alone(inputs, found);
    if shared.is_none()
        && found.falls_short != Holds::Never
        && !(read.is_guess && is_short_cranking)
    {
        let is_mild = is_short_cranking || read.is_guess;
        let severity = if is_mild { Severity::Doubt } else { Severity::Fault };
        let last = inputs.conditions.supply.low;
        let steps = found.dwells.first().map(|it| it.working.clone()).unwrap_or_default();
        let message = say!(words::FALLS_SHORT, current = inputs.wanted, supply = last);
        let finding = Finding::new(severity, fields::coils::CURRENT, message);
        findings.push(finding.holding(found.falls_short.clone()).shown_by(steps));
    }
    findings.extend(shared);
    let Some(at) = &found.at_speed else { return };
    // of an unknown coil only what is entered is sure
    let severity =
        if read.is_guess && inputs.entered.is_none() { Severity::Doubt } else { Severity::Fault };
    findings.extend(runs_out(inputs, at, cures, severity));
    if let Some(limit) = inputs.duty_limit.filter(|_| at.is_over_duty(inputs)) {
        let message = say!(words::OVER_DUTY, duty = at.duty, limit = limit);
        findings.push(
            Finding::new(severity, fields::coils::DUTY_LIMIT, message)
                .cured_by(cures.iter().cloned())
                .shown_by(at.working.iter().cloned()),
        );
    }
}

/// An igniter that holds less than the coils on it want together.
fn shared_limit(read: &Coiled) -> Option<Finding> {
    let inputs = &read.inputs;
    let (n, each, wanted) = (inputs.per_igniter, inputs.limit?.nominal, inputs.wanted);
    if n < 2 || each >= wanted {
        return None;
    }
    let limit = each * f64::from(n);
    let message = say!(words::SHARED_LIMIT, limit = limit, n = n, each = each, wanted = wanted);
    let severity = if read.is_wanted_given { Severity::Fault } else { Severity::Doubt };
    let own = say!(words::OWN_IGNITER).done_by(vec![fields::coils::PER_IGNITER.edit("1")]);
    Some(Finding::new(severity, fields::coils::PER_IGNITER, message).cured_by([own]))
}

/// A dwell that is entered, against the current wanted.
fn dwell(
    read: &Coiled,
    found: &CoilAnswer,
    (entered, key): (Option<&EnteredDwell>, Key<Time>),
    needed: Option<Time>,
) -> Option<Finding> {
    let (severity, fit) = misfit(read, entered)?;
    let (entered, wanted) = (entered?, read.inputs.wanted);
    let (dwell, current, supply) = (entered.time.nominal, entered.current, entered.supply);
    if fit == DwellFit::Unknown {
        let (place, what) = read.guessed;
        let message = say!(
            words::ENTERED_ANYTHING,
            what = what.text,
            dwell = dwell,
            least = current.low,
            most = current.high,
            supply = supply,
            wanted = wanted
        );
        return Some(Finding::new(severity, place.path(), message).cured_by(start(read, found)));
    }
    let message = match fit {
        DwellFit::TooShort => say!(
            words::DWELL_TOO_SHORT,
            dwell = dwell,
            current = current.nominal,
            supply = supply,
            wanted = wanted
        ),
        _ => say!(
            words::DWELL_TOO_LONG,
            dwell = dwell,
            current = current.nominal,
            least = current.low,
            supply = supply,
            wanted = wanted
        ),
    };
    let cure = needed.filter(|time| time.base() > 0.0).map(|time| {
        say!(words::CURE_DWELL, dwell = time, supply = supply)
            .done_by(vec![key.edit(time.show().into_shown())])
    });
    let steps = entered.working.clone();
    Some(Finding::new(severity, key, message).cured_by(cure).shown_by(steps))
}

fn runs_out(
    inputs: &CoilInputs,
    at: &AtSpeed,
    cures: &[Message],
    severity: Severity,
) -> Option<Finding> {
    let speed = inputs.speed.filter(|_| !at.is_in_time())?;
    let message = say!(
        words::RUNS_OUT,
        runs_out = at.runs_out,
        speed = speed,
        needed = at.needed,
        available = seconds(at.available.base().max(0.0))
    );
    Some(
        Finding::new(severity, fields::coils::CURRENT, message)
            .cured_by(cures.iter().cloned())
            .shown_by(at.working.iter().cloned()),
    )
}
