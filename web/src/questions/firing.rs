//! Which channel fires which cylinder, and is it wired like that?

use std::rc::Rc;

use quietpin_core::{
    fields::{channels, controller, light},
    report::Answer,
    schema::{Part, Place},
};

use super::{also, answers_in, form, form_of, frame, section};
use crate::{
    components::{FieldPlace, FieldProps, Page, answer_view, field_view, fold},
    element::{View, all, el, nothing, several},
};

/// The question, its answers and its fields.
pub(crate) fn firing_view(page: &Page) -> View {
    let report = &page.state.report;
    let answers = answers_in(report, "firing");
    let answer = |it: &Rc<Answer>| answer_view(page, it, inputs(page, answers, it));
    let has_engine = answers.len() > 1;
    let content = several!(
        el!("div"; all(answers.iter().filter(|it| !is_apart(it)).map(answer))),
        el!("div"; has_engine.then(|| second(page, answers))),
        el!("div"; has_engine.then(|| entered(page, answers))),
        el!("div"; has_engine.then(|| strip(page, answers))),
        el!("div"; has_engine.then(|| timing_light(page, answers))),
    );
    frame(section(report, "firing"), Some(content))
}

/// The fields that an answer rests on. What was found at the car is typed where the plan is, and keeps its place
/// when the answer to it comes.
fn inputs(page: &Page, answers: &[Rc<Answer>], answer: &Rc<Answer>) -> View {
    let planned = |kind: &'static str, list: Place| {
        several!(part(page, kind), as_wired(page, list, Some(answer)))
    };
    match answer.subject.as_str() {
        "engine" => several!(
            form_of(page, Part::Engine),
            // the third thing that a blank plan is asked
            (answers.len() == 1).then(|| part(page, "ignition")),
        ),
        "channels.coils_wired" | "channels.injectors_wired" | "channels.second_wired" => nothing(),
        subject if subject.starts_with("channels.ignition") => {
            planned("ignition", channels::COILS_WIRED.into())
        }
        _ => planned("injection", channels::INJECTORS_WIRED.into()),
    }
}

fn is_second(answer: &Rc<Answer>) -> bool {
    answer.subject.starts_with("channels.second")
        || answer.title.as_ref().is_some_and(|title| title.code == "firing.title-second")
}

/// A second set of injectors: its fields keep their place when the answers to them come.
fn second(page: &Page, answers: &[Rc<Answer>]) -> View {
    let mut own = answers.iter().filter(|it| is_second(it));
    let planned = own.next();
    let fields =
        several!(part(page, "second"), as_wired(page, channels::SECOND_WIRED.into(), planned));
    several!(
        el!("div"; planned.map(|it| answer_view(page, it, nothing()))),
        fold("second", "A second set of injectors: its channels", planned.is_some(), fields),
        el!("div"; all(own.map(|it| answer_view(page, it, nothing())))),
    )
}

/// What stands in the controller; the answer about its outputs comes below.
fn entered(page: &Page, answers: &[Rc<Answer>]) -> View {
    let fields: [Place; 4] = [
        controller::ORDER.into(),
        controller::SPACING.into(),
        controller::ANGLES.into(),
        controller::OUTPUTS.into(),
    ];
    let is_wanted = fields.iter().any(|it| !page.state.plan.text(*it).trim().is_empty());
    let answer = answers.iter().find(|it| is_of_outputs(it));
    several!(
        fold(
            "second",
            "What is entered in the controller: order, spacing, outputs",
            is_wanted,
            form(page, &fields)
        ),
        el!("div"; answer.map(|it| answer_view(page, it, nothing()))),
    )
}

fn is_of_outputs(answer: &Rc<Answer>) -> bool {
    answer.subject == controller::OUTPUTS.path()
}

/// What stands below the others, whether it is there or not.
fn is_apart(answer: &Rc<Answer>) -> bool {
    is_second(answer)
        || is_of_outputs(answer)
        || matches!(answer.subject.as_str(), "light" | "strip")
}

/// One cycle at a speed.
fn strip(page: &Page, answers: &[Rc<Answer>]) -> View {
    let answer = answers.iter().find(|it| it.subject == "strip");
    let is_wanted = !page.state.plan.is_blank(Part::Strip);
    let mut strip: Vec<_> = Part::Strip.places().collect();
    strip.insert(1.min(strip.len()), controller::DWELL.into());
    several!(
        fold("second", "One cycle at a speed: dwell and injection", is_wanted, form(page, &strip)),
        el!("div"; answer.map(|it| answer_view(page, it, nothing()))),
    )
}

/// The timing light: its fields keep their place when the answer to them comes.
fn timing_light(page: &Page, answers: &[Rc<Answer>]) -> View {
    let answer = answers.iter().find(|it| it.subject == "light");
    let mut light = vec![controller::LOCKED_ADVANCE.into()];
    light.extend(Part::Light.places().filter(|it| !it.field().is_list));
    let fields = several!(
        form(page, &light),
        also(page, controller::OFFSET),
        row_form(page, light::SEEN.into(), "Seen on cylinder #")
    );
    several!(
        el!("div"; answer.map(|it| answer_view(page, it, nothing()))),
        fold(
            "second",
            "At the car: a timing light on two or more cylinders",
            answer.is_some(),
            fields
        ),
    )
}

/// The fields of the channels whose names begin alike.
fn part(page: &Page, kind: &str) -> View {
    let is_part = |place: &Place| {
        let field = place.field();
        field.name.starts_with(kind) && !field.name.ends_with("_done") && !field.is_list
    };
    form(page, &Part::Channels.places().filter(is_part).collect::<Vec<_>>())
}

/// A field for each channel that the report speaks of.
fn as_wired(page: &Page, list: Place, answer: Option<&Rc<Answer>>) -> View {
    let count = length(page, list);
    if count == 0 {
        return nothing();
    }
    let has_typed = !page.state.plan.cells(list).is_empty();
    let title = if list == channels::COILS_WIRED.place() {
        "Found at the car: each ignition channel fired alone"
    } else if list == channels::INJECTORS_WIRED.place() {
        "Found at the car: each injection channel pulsed alone"
    } else {
        "Found at the car: each channel of the second set pulsed alone"
    };
    let fields = several!(
        answer.and_then(|it| Some((page.state.details.there()?.bench)(page, it))),
        el!("h4", "class" = "or-typed"; "Or type it in"),
        row_form(page, list, "Channel # reaches cylinder"),
    );
    fold("wired", title, has_typed, fields)
}

/// How many entries of a list the report speaks of.
fn length(page: &Page, list: Place) -> usize {
    let pattern = list.pattern();
    let start = pattern.trim_end_matches('#');
    let number = |path: &String| path.strip_prefix(start)?.parse::<usize>().ok();
    page.state.report.fields.keys().filter_map(number).max().map_or(0, |last| last + 1)
}

/// A field for each entry of a list that the report speaks of; `#` in what it is called stands for its number.
fn row_form(page: &Page, list: Place, what: &str) -> View {
    let field = |at: usize| {
        let label = what.replace('#', &(at + 1).to_string());
        field_view(&FieldProps {
            path: list.in_cell(at).path(),
            page,
            label: Some(label),
            place: FieldPlace::Home,
        })
    };
    el!("div", "class" = "row-form"; all((0..length(page, list)).map(field)))
}
