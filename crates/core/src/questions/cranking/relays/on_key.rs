//! The fuel pump that the key switches: it runs on when the engine has stopped.

use crate::{
    cranking::USUAL_THRESHOLD_RPM,
    fields::relays::{RELAY_ON_AT, SWITCHED_BY, SwitchedBy},
    finding::{Finding, Findings},
    message::Message,
    quantity::{Measure, Value, rpm},
    questions::cranking::words,
    read::KeyPump,
    report::{Answer, Tone},
    say,
    schema::{Choice, Part},
};

use super::pump;

/// What stops it, or that nothing does.
pub(in crate::questions::cranking) fn answer(pump: &KeyPump, findings: &mut Findings) -> Answer {
    let name = || Value::text(pump.name.clone());
    let (tone, verdict) = if pump::is_cut(pump.cut) {
        (Tone::Good, say!(words::relays::KEY_PUMP_CUT))
    } else {
        let (severity, tone) = pump::running_on(pump.cut);
        let message = say!(words::relays::PUMP_ON_WITH_KEY, name = name());
        let finding = Finding::new(severity, SWITCHED_BY.at(pump.at), message);
        findings.push(finding.cured_by([by_controller(pump), pump::fit_cut(pump.at)]));
        (tone, say!(words::relays::KEY_PUMP_RUNS_ON))
    };
    let mut answer = Answer::new(Part::Relays.record(pump.at), tone, verdict);
    answer.title = Some(say!(words::relays::RELAY_TITLE, name = name()));
    answer.why = Some(say!(words::relays::KEY_PUMP_WHY));
    if tone != Tone::Good {
        answer.cautions = vec![say!(words::CAUTION_PUMP)];
    }
    answer
}

/// The controller in place of the key: it lets go when the engine stands.
fn by_controller(pump: &KeyPump) -> Message {
    let speed = rpm(USUAL_THRESHOLD_RPM);
    let mut edits = vec![SWITCHED_BY.at(pump.at).edit(SwitchedBy::Speed.choosable().code)];
    if !pump.has_threshold {
        edits.push(RELAY_ON_AT.at(pump.at).edit(speed.show().into_shown()));
    }
    say!(words::relays::PUMP_BY_CONTROLLER).done_by(edits)
}
