//! Do the crank and cam sensor suit?

use quietpin_core::{
    fields::{controller, cranking, wheels},
    schema::{Part, Place},
};

use super::{answers_in, of_part};
use crate::{
    cards::{Block, Card},
    state::State,
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

/// The crank's sensor with its wheel, the cam's, and the angle between the wheel and the engine.
pub(super) fn cards(state: &State) -> Vec<Card> {
    let plan = &state.plan;
    let answers = answers_in(&state.report, "trigger");
    let of = |subjects: &'static [&str]| {
        answers.iter().filter(|it| subjects.contains(&it.subject.as_str()))
    };
    let has_input = !plan.is_blank(Part::TriggerInput);
    let has_cam = !plan.is_blank(Part::CamSensor) || !plan.text(wheels::CAM_TEETH).is_empty();
    let has_sensor = of(&["crank_sensor"]).next().is_some();
    let sensor = Card::new("crank_sensor", "Crank sensor").asking(of_part(Part::CrankSensor));
    let wheel = Card::new("wheels", "Crank wheel").asking(Block::Form(WHEEL.to_vec()));
    // the sensor is asked first: until it is known, the question is answered there
    let mut cards = if has_sensor {
        vec![sensor.answering(of(&["crank_sensor"])), wheel.answering(of(&["trigger"]))]
    } else {
        vec![sensor.answering(of(&["trigger"])), wheel]
    };
    if has_input || answers.len() > 1 {
        let inputs = Card::new("trigger_input", "The controller's inputs");
        cards.push(inputs.asking(of_part(Part::TriggerInput)));
    }
    if has_input || has_cam || answers.len() > 1 {
        let cam = Card::new("cam_sensor", "Cam sensor")
            .asking(Block::Form(vec![wheels::CAM_TEETH.into()]))
            .asking(of_part(Part::CamSensor));
        cards.push(cam.answering(of(&["cam_sensor"])));
    }
    let offset: Vec<_> = of(&["controller.offset"]).collect();
    if !offset.is_empty() {
        let mut fields = vec![controller::OFFSET.into()];
        fields.extend(Part::Trigger.places());
        // at home with the timing light, where there is one on the page
        let has_light = answers_in(&state.report, "firing").len() > 1;
        let advance = vec![controller::LOCKED_ADVANCE.into()];
        let card = Card::new("offset", "First tooth to TDC")
            .asking(Block::Form(fields))
            .asking(if has_light { Block::Also(advance) } else { Block::Form(advance) });
        cards.push(card.answering(offset));
    }
    cards
}
