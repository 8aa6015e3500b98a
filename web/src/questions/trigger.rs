//! Does the crank and cam sensor suit its input?

use quietpin_core::{
    fields::{cranking, trigger},
    schema::{Part, Place},
};

use super::{answers_in, form, form_of, frame, section};
use crate::{
    components::{Page, answer_view, fold},
    element::{View, el, nothing, several},
};

/// Fields of the crank's wheel: the question of cranking rests on them too, and leaves the asking to this one.
const WHEEL: [Place; 4] = [
    cranking::TEETH.place(),
    cranking::MISSING.place(),
    cranking::SYNC.place(),
    cranking::GAP_ANGLE.place(),
];

/// Whether a field is asked here, whatever record it stands in.
pub(super) fn is_of_wheel(place: Place) -> bool {
    WHEEL.contains(&place)
}

/// The question, its answers and their fields. Those of the cam sensor keep their place when the answer to them comes.
pub(crate) fn trigger_view(page: &Page) -> View {
    let report = &page.state.report;
    let plan = &page.state.plan;
    let answers = answers_in(report, "trigger");
    let of = |subject: &str, fields: View| {
        let answer = answers.iter().find(|answer| answer.subject == subject);
        el!("div"; answer.map(|it| answer_view(page, it, fields)))
    };
    let has_input = !plan.is_blank(Part::TriggerInput);
    let has_cam = !plan.is_blank(Part::CamSensor) || !plan.text(trigger::CAM_TEETH).is_empty();
    let is_begun = has_input || answers.len() > 1;
    let wheel: Vec<_> = Part::Cranking.places().filter(|it| is_of_wheel(*it)).collect();
    let of_trigger = |is_cam: bool| {
        let is_here = |it: &Place| (*it == trigger::CAM_TEETH.place()) == is_cam;
        form(page, &Part::Trigger.places().filter(is_here).collect::<Vec<_>>())
    };
    let sensor = form_of(page, Part::CrankSensor);
    let inputs =
        || fold("inputs", "The controller’s inputs", true, form_of(page, Part::TriggerInput));
    let cam = || {
        let content = several!(of_trigger(true), form_of(page, Part::CamSensor));
        fold("cam", "A cam sensor", has_cam, content)
    };
    let content = several!(
        of("trigger", form(page, &wheel)),
        el!("div"; sensor),
        of("crank_sensor", nothing()),
        el!("div"; is_begun.then(inputs)),
        el!("div"; is_begun.then(cam)),
        of("cam_sensor", nothing()),
        of("trigger.offset", of_trigger(false)),
    );
    frame(section(report, "trigger"), Some(content))
}
