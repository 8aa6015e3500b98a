//! How does this output rest, before the load is connected?

use std::rc::Rc;

use quietpin_core::{
    car::relays::of_coils,
    fields::{self, loads, outputs},
    plan::{MOST_ENTRIES, Plan, names_in},
    questions::outputs::QUESTION,
    report::{Answer, Tone},
    schema::{Part, Place},
};

use yew::Callback;

use super::{answers_in, controller::CONTROLLER, relays, wires::is_way};
use crate::{
    address::record,
    browser::address,
    cards::{Block, Card},
    components::{Page, button, parts, row, sending},
    element::{View, all, el, several},
    state::{Action, State},
};

/// All of them first, a row each; then each load and each relay's coil with its output, and the outputs that have none.
pub(super) fn cards(state: &State) -> Vec<Card> {
    let plan = &state.plan;
    let answers = answers_in(&state.report, "outputs");
    let about =
        |subject: &str| answers.iter().filter(|it| it.subject == subject).collect::<Vec<_>>();
    let mut overview_card = Card::new("outputs", "Loads");
    overview_card.is_overview = true;
    let mut cards = vec![
        overview_card
            .asking(Block::Made(overview, 0))
            .asking(Block::Made(|page, _| parts(page, 1, CONTROLLER), 0))
            .answering(answers.iter().filter(|it| !is_of_record(&it.subject))),
    ];
    let mut described = Vec::new();
    for at in 0..count(plan, Part::Loads) {
        let owner = Part::Loads.record(at);
        let fields = Part::Loads.places().filter(|it| !is_way(it)).map(|it| it.at(at)).collect();
        let output = its_output(state, &owner, plan.text(loads::OUTPUT.at(at)), &mut described);
        let card = Card::new(&owner, called(Part::Loads, at, plan.text(loads::NAME.at(at))))
            .asking(Block::Around(fields, output))
            .asking(Block::Made(|page, at| removing(page, Part::Loads, at), at));
        cards.push(card.answering(about(&owner)).titled());
    }
    for at in 0..count(plan, Part::Relays) {
        let name = fields::relays::NAME.at(at);
        let named = plan.text(fields::relays::OUTPUT.at(at));
        let output = its_output(state, &Part::Relays.record(at), named, &mut described);
        let title = format!("The coil of {}", what(Part::Relays, at, plan.text(name)));
        let card = Card::new(coil(at), title)
            // the coils' relay is switched on a card that knows it without its name
            .asking(if at == of_coils(plan) {
                Block::Form(vec![name.into()])
            } else {
                Block::Also(vec![name.into()])
            })
            .asking(Block::Around(relays::coil(at), output))
            .asking(Block::Also(vec![fields::relays::PULL_IN.at(at).into()]))
            .asking(Block::Made(|page, at| removing(page, Part::Relays, at), at));
        cards.push(card.answering(about(&coil(at))).titled());
    }
    for at in (0..count(plan, Part::Outputs)).filter(|at| !described.contains(at)) {
        let card = Card::new(
            Part::Outputs.record(at),
            called(Part::Outputs, at, plan.text(outputs::NAME.at(at))),
        )
        .asking(Block::Form(of_output(at)))
        .asking(Block::Made(|page, at| removing(page, Part::Outputs, at), at));
        cards.push(card);
    }
    cards
}

/// The output that a load hangs on, on its card: the two are looked at together. The output has its home with the first of
/// several.
fn its_output(state: &State, owner: &str, named: &str, described: &mut Vec<usize>) -> Vec<Block> {
    let (plan, named) = (&state.plan, named.trim());
    let is_here = record(&state.address) == owner;
    let of = |at: usize| plan.text(outputs::NAME.at(at));
    let mut outputs = 0..count(plan, Part::Outputs);
    // the card of a load that is on none describes one that has no name yet
    // also while the name that it goes by is being typed anew
    let is_named = |at: &usize| names_in(of(*at)).iter().any(|it| it == named);
    let by_name = outputs.clone().find(|at| !named.is_empty() && is_named(at));
    let found = by_name.or_else(|| {
        outputs.find(|at| is_here && of(*at).trim().is_empty() && !described.contains(at))
    });
    let Some(at) = found else {
        let add = Block::Made(
            |page, _| {
                button(
                    Some("add"),
                    "Describe its output",
                    sending(&page.send, Action::Add(Part::Outputs)),
                )
            },
            0,
        );
        return if named.is_empty() { vec![add] } else { Vec::new() };
    };
    let fields = of_output(at);
    let block = if described.contains(&at) { Block::Also(fields) } else { Block::Form(fields) };
    described.push(at);
    let is_known = !plan.text(outputs::STAGE.at(at)).trim().is_empty();
    let blocks = vec![block];
    let summary = called(Part::Outputs, at, plan.text(outputs::NAME.at(at)));
    // where it is not known what to do with the load, the output is what to look at
    let is_doubtful = |it: &Rc<Answer>| {
        it.subject.strip_suffix(".coil").unwrap_or(&it.subject) == owner
            && it.verdict.tone == Tone::Doubtful
    };
    let lacks = plan.text(outputs::ON_LEVEL.at(at)).trim().is_empty()
        && answers_in(&state.report, "outputs").iter().any(is_doubtful);
    vec![Block::Fold { class: "second", summary, is_wanted: !is_known || lacks, blocks }]
}

fn of_output(at: usize) -> Vec<Place> {
    Part::Outputs.places().map(|place| place.at(at)).collect()
}

/// A row for each load, each coil of a relay and each output that has neither.
fn overview(page: &Page, _: usize) -> View {
    let cards = cards(&page.state);
    let rows = |list: fn(&str) -> bool| {
        let rows = cards.iter().skip(1).filter(move |it| list(&it.key));
        el!("ul", "class" = "rows"; all(rows.map(|card| row(card, false))))
    };
    let free: Vec<_> = cards.iter().filter(|it| it.key.starts_with("outputs.")).collect();
    let has_free = !free.is_empty();
    let spare = || {
        let fields = el!("ul", "class" = "rows"; all(free.iter().map(|card| row(card, false))));
        several!(el!("h3"; "Outputs with no load"), fields)
    };
    several!(
        rows(|key| key.starts_with("loads.")),
        add(page, Part::Loads, "Add a load", ""),
        rows(|key| key.starts_with("relays.")),
        add(page, Part::Relays, "Add a relay", ".coil"),
        has_free.then(spare),
        add(page, Part::Outputs, "Add an output", ""),
    )
}

/// Whether an answer is about a load, or a relay's coil.
fn is_of_record(subject: &str) -> bool {
    [Part::Loads, Part::Relays]
        .iter()
        .any(|part| subject.strip_prefix(part.name()).is_some_and(|rest| rest.starts_with('.')))
}

/// What the answer about a relay's coil is about.
fn coil(relay: usize) -> String {
    Part::Relays.record(relay) + ".coil"
}

/// Takes an entry off its list, and goes back to the list.
pub(super) fn removing(page: &Page, list: Part, at: usize) -> View {
    removing_to(page, list, at, QUESTION.id)
}

/// The same, where the list stands on a card of its own.
pub(super) fn removing_to(page: &Page, list: Part, at: usize, above: &'static str) -> View {
    let named = Place::at_path(&format!("{}.name", list.record(at)));
    let named = named.map_or("", |place| page.state.plan.text(place));
    let (send, label) = (page.send.clone(), format!("Remove {}", what(list, at, named)));
    let remove = Callback::from(move |_| {
        send.dispatch(Action::Remove(list, at));
        address::go(above);
    });
    button(Some("quiet"), label, remove)
}

/// How many of a list are drawn: a file may hold more than anybody looks at.
pub(super) fn count(plan: &Plan, list: Part) -> usize {
    plan.count(list).min(MOST_ENTRIES)
}

/// What an entry of a list is called.
pub(super) fn what(list: Part, at: usize, named: &str) -> String {
    let is_one = !matches!(list, Part::Outputs | Part::Inputs) || names_in(named).len() == 1;
    let kind = match list {
        Part::SensorSupplies => "sensor supply",
        // outputs, loads, relays, sensors, inputs
        _ if is_one => list.name().trim_end_matches('s'),
        _ => list.name(),
    };
    if named.trim().is_empty() {
        format!("{kind} {}", at + 1)
    } else {
        format!("{kind} “{}”", named.trim())
    }
}

/// The same, as a title.
pub(super) fn called(list: Part, at: usize, named: &str) -> String {
    let mut what = what(list, at, named);
    // the kind comes first, in letters of which the page needs no table
    if let Some(first) = what.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    what
}

/// Adds an entry to a list, and goes to its card.
pub(super) fn add(page: &Page, list: Part, label: &str, card: &'static str) -> View {
    let (send, record) = (page.send.clone(), list.record(page.state.plan.count(list)));
    let add = Callback::from(move |_| {
        send.dispatch(Action::Add(list));
        address::go(&format!("{record}{card}"));
    });
    button(Some("add"), label, add)
}
