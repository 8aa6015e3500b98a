//! What the kill switch stops, and what the controller survives.

use super::{
    guarded::{PlannedGuards, Survival},
    words::guards as words,
};
use crate::{
    fields::{
        battery::{self, KillSwitch},
        controller,
    },
    finding::{Finding, Findings, Severity},
    report::{Answer, Tone},
    say,
    schema::Choice as _,
    supply::survives::Overvoltage,
};

/// Both, of what something is said.
pub(super) fn answers(guards: &PlannedGuards, findings: &mut Findings) -> Vec<Answer> {
    let kill = guards.kill_switch.and_then(|it| kill(it, guards.has_alternator, findings));
    let survival = guards.survival.as_ref().map(|it| survives(it, findings));
    kill.into_iter().chain(survival).collect()
}

fn kill(switch: KillSwitch, has_alternator: bool, findings: &mut Findings) -> Option<Answer> {
    let (tone, verdict) = match (switch, has_alternator) {
        (KillSwitch::Absent, _) => return None,
        (KillSwitch::Both, _) => (Tone::Good, say!(words::KILL_GOOD)),
        (KillSwitch::Battery, false) => (Tone::Open, say!(words::KILL_OPEN)),
        (KillSwitch::Battery, true) => {
            let edit = battery::KILL_SWITCH.edit(KillSwitch::Both.choosable().code);
            let cure = say!(words::DO_KILL).done_by(vec![edit]);
            let message = say!(words::KILL_RUNS_ON);
            let finding = Finding::new(Severity::Danger, battery::KILL_SWITCH, message);
            findings.push(finding.cured_by([cure]));
            (Tone::Bad, say!(words::KILL_BAD))
        }
    };
    let mut answer = Answer::new("feeds.kill", tone, verdict);
    answer.title = Some(say!(words::KILL_TITLE));
    Some(answer)
}

/// One line of all that it does not survive.
fn survives(survival: &Survival, findings: &mut Findings) -> Answer {
    let mut list: Vec<String> = survival
        .exceeded
        .iter()
        .map(|it| match it {
            Overvoltage::Jump => say!(words::LIST_JUMP).into_text(),
            Overvoltage::Dump => say!(words::LIST_DUMP).into_text(),
        })
        .collect();
    list.extend(survival.fails_reversed.then(|| say!(words::LIST_REVERSED).into_text()));
    let (tone, verdict) = if !list.is_empty() {
        let list = list.join(", ");
        let message = say!(words::NOT_SURVIVED, list = list);
        let key = if survival.exceeded.is_empty() {
            controller::REVERSE.into()
        } else {
            String::from(controller::HIGHEST_SUPPLY)
        };
        findings.push(Finding::new(Severity::Note, key, message));
        (Tone::Doubtful, say!(words::SURVIVES_NOT))
    } else if survival.is_known {
        (Tone::Good, say!(words::SURVIVES_GOOD))
    } else {
        (Tone::Open, say!(words::SURVIVES_OPEN))
    };
    let mut answer = Answer::new("feeds.survives", tone, verdict);
    answer.title = Some(say!(words::SURVIVES_TITLE));
    answer
}
