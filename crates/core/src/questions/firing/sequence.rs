//! What acts once in two turns, with nothing that tells the one turn from the other.

use super::listed;
use crate::{
    fields::wheels,
    finding::{Finding, Severity},
    message::{Edit, Message},
    questions::firing::words,
    report::{Answer, Tone, Verdict},
    say,
};

/// Whether there is a cam sensor, and what wants one that is not there.
#[derive(Debug)]
pub(super) struct Sequence {
    cam: CamSensor,
    blind: Vec<Blind>,
}

/// What is known of a cam sensor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum CamSensor {
    /// There is one.
    There,
    /// There is none.
    Missing,
    /// Nothing.
    Untold,
}

/// What acts once in two turns.
#[derive(Debug)]
struct Blind {
    /// "coils" or "injectors".
    what: &'static str,
    /// How it would act without a cam, and the edit that has it do so.
    otherwise: Option<(Message, Edit)>,
}

impl Sequence {
    /// Of a plan that tells so much of a cam sensor.
    pub(super) fn new(cam: CamSensor) -> Self {
        Self { cam, blind: Vec::new() }
    }

    /// Whether there is a cam sensor.
    pub(super) fn has_cam(&self) -> bool {
        self.cam == CamSensor::There
    }

    /// Turns the answer about what needs a cam sensor into a no, where there is none.
    pub(super) fn judge(
        &mut self,
        answer: &mut Answer,
        needs_cam: bool,
        what: &'static str,
        otherwise: impl FnOnce() -> Option<(Message, Edit)>,
    ) {
        if self.cam != CamSensor::Missing || !needs_cam {
            return;
        }
        answer.verdict = Verdict { tone: Tone::Bad, message: say!(words::VERDICT_BLIND) };
        answer.why = Some(say!(words::BLIND_WHY));
        answer.to_do.insert(0, say!(words::ADD_CAM));
        self.blind.push(Blind { what, otherwise: otherwise() });
    }

    /// Said once for all that is blind, with the one change that has it act the same in every turn.
    pub(super) fn finding(&self) -> Option<Finding> {
        let what = listed(self.blind.iter().map(|it| it.what));
        let otherwise: Option<Vec<_>> = self.blind.iter().map(|it| it.otherwise.as_ref()).collect();
        let otherwise = otherwise.filter(|it| !it.is_empty())?;
        let ways = self.blind.iter().zip(&otherwise);
        let ways = listed(ways.map(|(it, (way, _))| format!("{} {}", it.what, way.text)));
        let edits = otherwise.iter().map(|(_, edit)| edit.clone()).collect();
        let cures =
            [say!(words::FIRE_WITHOUT_CAM, ways = ways).done_by(edits), say!(words::ADD_CAM)];
        let message = say!(words::BLIND, what = what);
        Some(Finding::new(Severity::Fault, wheels::CAM_TEETH, message).cured_by(cures))
    }
}
