//! Question 8: does the crank and cam sensor suit its input?

use quietpin_core::{
    fields::{self, Field},
    plan::{TriggerInput, TriggerSensor},
};

use super::{answers_in, form, form_of, frame, section};
use crate::{
    components::{Page, answer_view, fold},
    element::{View, el, nothing, several},
};

/// Fields of the crank's wheel: the question of cranking rests on them too, and leaves the asking to this one.
const WHEEL: [&str; 4] =
    ["cranking.teeth", "cranking.missing", "cranking.sync", "cranking.gap_angle"];

/// Whether a field is asked here, whatever record it stands in.
pub(super) fn is_of_wheel(field: &Field) -> bool {
    WHEEL.contains(&field.path)
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
    let has_input = plan.trigger_input != TriggerInput::default();
    let has_cam = plan.cam_sensor != TriggerSensor::default() || !plan.trigger.cam_teeth.is_empty();
    let is_begun = has_input || answers.len() > 1;
    let wheel: Vec<_> = fields::of("cranking").filter(|it| is_of_wheel(it)).collect();
    let of_trigger = |is_cam: bool| {
        let is_here = |it: &&Field| it.path.ends_with("cam_teeth") == is_cam;
        let fields: Vec<_> = fields::of("trigger").filter(is_here).collect();
        form(page, "trigger", &fields)
    };
    let sensor = form_of(page, "crank_sensor");
    let inputs = || fold("inputs", "The controller’s inputs", true, form_of(page, "trigger_input"));
    let cam = || {
        let content = several!(of_trigger(true), form_of(page, "cam_sensor"));
        fold("cam", "A cam sensor", has_cam, content)
    };
    let content = several!(
        of("trigger", form(page, "cranking", &wheel)),
        el!("div"; sensor),
        of("crank_sensor", nothing()),
        el!("div"; is_begun.then(inputs)),
        el!("div"; is_begun.then(cam)),
        of("cam_sensor", nothing()),
        of("trigger.offset", of_trigger(false)),
    );
    frame(section(report, "trigger"), Some(content))
}
