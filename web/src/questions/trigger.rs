//! Does the crank and cam sensor suit its input?

use quietpin_core::{
    fields::{controller, cranking, wheels},
    schema::{Part, Place},
};

use super::{answers_in, field_at, form, form_of, frame, section};
use crate::{
    components::{FieldPlace, Page, answer_view, fold},
    element::{View, el, nothing, several},
};

/// Fields of the crank's wheel, and what the first spark waits for.
const WHEEL: [Place; 4] = [
    wheels::CRANK_TEETH.place(),
    wheels::MISSING.place(),
    cranking::SYNC.place(),
    wheels::GAP_ANGLE.place(),
];

/// Whether a field is asked here, whatever record it stands in.
pub(super) fn is_of_wheels(place: Place) -> bool {
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
    let has_cam = !plan.is_blank(Part::CamSensor) || !plan.text(wheels::CAM_TEETH).is_empty();
    let is_begun = has_input || answers.len() > 1;
    let offset = || {
        let mut fields = vec![controller::OFFSET.into()];
        fields.extend(Part::Trigger.places());
        // at home with the timing light, where there is one on the page
        let has_light = answers_in(report, "firing").len() > 1;
        let place = if has_light { FieldPlace::Also } else { FieldPlace::Home };
        several!(form(page, &fields), field_at(page, controller::LOCKED_ADVANCE.into(), place))
    };
    let sensor = form_of(page, Part::CrankSensor);
    let inputs =
        || fold("inputs", "The controller's inputs", true, form_of(page, Part::TriggerInput));
    let cam = || {
        let content =
            several!(form(page, &[wheels::CAM_TEETH.into()]), form_of(page, Part::CamSensor));
        fold("cam", "A cam sensor", has_cam, content)
    };
    let content = several!(
        of("trigger", form(page, &WHEEL)),
        el!("div"; sensor),
        of("crank_sensor", nothing()),
        el!("div"; is_begun.then(inputs)),
        el!("div"; is_begun.then(cam)),
        of("cam_sensor", nothing()),
        of("controller.offset", offset()),
    );
    frame(section(report, "trigger"), Some(content))
}
