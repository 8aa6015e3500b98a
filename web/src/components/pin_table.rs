//! A pin table, pasted: what is known of it is taken, what is not is asked, and nothing is taken before that.

use quietpin_core::{
    fields::outputs,
    output::Stage,
    plan::{Described, Meaning, PinColumn, PinTable, StageWord},
    schema::{Choice as _, Part, Place},
};
use web_sys::{Event, HtmlSelectElement, HtmlTextAreaElement};
use yew::prelude::*;

use super::{Page, button, sending};
use crate::{
    element::{View, all, el, keyed, nothing, on, several},
    state::Action,
};

/// The answer to "what is this column?" that it is nothing.
const LEFT_OUT: &str = "-";

/// Where a table is pasted, and what it is taken for.
pub(crate) fn pin_table(page: &Page) -> View {
    html! { <PastedTable page={page.clone()} /> }.into()
}

#[derive(Properties, PartialEq)]
struct Props {
    page: Page,
}

#[component]
fn PastedTable(props: &Props) -> Html {
    let text = use_state(String::new);
    let answers = use_state(Answers::default);
    let typing = {
        let (text, answers) = (text.clone(), answers.clone());
        Callback::from(move |event: Event| {
            if let Some(area) = event.target_dyn_into::<HtmlTextAreaElement>() {
                text.set(area.value());
                // columns of another table are asked anew
                answers.set(Answers::default());
            }
        })
    };
    let area = el!(
        "textarea",
        "id" = "pin-table",
        "rows" = "5",
        "spellcheck" = "false",
        "autocapitalize" = "off",
        "aria-describedby" = "pin-table-note"
    );
    let table = PinTable::read(&text);
    let read = match &table {
        Some(table) => of_table(&props.page, table, &answers),
        None if text.trim().is_empty() => nothing(),
        None => {
            el!("p"; "Not a table yet: it needs a heading and a row for each pin, with tabs, semicolons or commas between.")
        }
    };
    el!("div", "class" = "field";
        el!("label", "for" = "pin-table"; "Or paste the pin table"),
        on("input", area, typing),
        el!("p", "class" = "notes", "id" = "pin-table-note";
            "From a spreadsheet or a data sheet: a heading, then a row for each pin. You are asked what is not known."),
        el!("div", "aria-live" = "polite"; read),
    )
    .into()
}

/// What was answered to what the table does not say: of a column, or a word, its code.
#[derive(Clone, Debug, Default, PartialEq)]
struct Answers {
    columns: Vec<(usize, String)>,
    words: Vec<(String, &'static str)>,
}

impl Answers {
    fn meanings(&self, table: &PinTable) -> Vec<Meaning> {
        let meaning = |(at, column): (usize, &PinColumn)| {
            let answer = self.columns.iter().rfind(|(it, _)| *it == at);
            match answer.map(|(_, code)| code.as_str()) {
                None => column.meaning,
                Some("") => Meaning::Unknown,
                Some(LEFT_OUT) => Meaning::LeftOut,
                Some(name) => field(name).map_or(Meaning::Unknown, Meaning::Field),
            }
        };
        table.columns.iter().enumerate().map(meaning).collect()
    }
}

fn field(name: &str) -> Option<Place> {
    Part::Outputs.places().find(|place| place.field().name == name)
}

fn of_table(page: &Page, table: &PinTable, answers: &UseStateHandle<Answers>) -> View {
    let meanings = answers.meanings(table);
    let columns = table.columns.iter().zip(&meanings).enumerate();
    let words = table.stage_words(&meanings);
    let asked = words.iter().filter(|it| it.code.is_none()).enumerate();
    let described = table.outputs(&meanings, &answers.words);
    several!(
        el!("h4"; "What each column is"),
        el!("div"; all(columns.map(|(at, (column, meaning))| asked_column(at, column, *meaning, answers)))),
        el!("div"; all(asked.map(|(at, word)| asked_word(at, word, answers)))),
        taken(page, table, &meanings, &described),
    )
}

/// What a column is, as it was understood or answered.
fn asked_column(
    at: usize,
    column: &PinColumn,
    meaning: Meaning,
    answers: &UseStateHandle<Answers>,
) -> View {
    let label = format!("“{}” ({})", column.heading, column.shown.join(", "));
    let chosen = match meaning {
        Meaning::Field(place) => place.field().name,
        Meaning::LeftOut => LEFT_OUT,
        Meaning::Unknown => "",
    };
    let fields = Part::Outputs.fields().iter().map(|field| (field.name, field.label));
    let options = [("", "Choose what this is"), (LEFT_OUT, "None of these: leave it out")];
    let answers = answers.clone();
    let tell = Callback::from(move |code: String| {
        let mut now = (*answers).clone();
        now.columns.push((at, code));
        answers.set(now);
    });
    select(&format!("pin-column-{at}"), &label, options.into_iter().chain(fields), chosen, tell)
}

/// Which stage a word means, or that such a pin is no output.
fn asked_word(at: usize, word: &StageWord, answers: &UseStateHandle<Answers>) -> View {
    let label = format!("“{}” ({})", word.word, rows(word.rows));
    let told = answers.words.iter().rfind(|(it, _)| *it == word.word);
    let stages = Stage::TABLE.iter().map(|it| (it.code, it.label));
    let (answers, name) = (answers.clone(), word.word.clone());
    let tell = Callback::from(move |code: String| {
        let mut now = (*answers).clone();
        now.words.retain(|(it, _)| *it != name);
        let stage = Stage::TABLE.iter().find(|it| it.code == code);
        now.words.extend(stage.map(|it| (name.clone(), it.code)));
        answers.set(now);
    });
    let options = std::iter::once(("", "No output: leave these pins out")).chain(stages);
    select(&format!("pin-word-{at}"), &label, options, told.map_or("", |(_, code)| *code), tell)
}

/// What would be taken, and the button for it once every column is known.
fn taken(page: &Page, table: &PinTable, meanings: &[Meaning], described: &Described) -> View {
    let unknown = table.columns.iter().zip(meanings).find(|(_, it)| **it == Meaning::Unknown);
    let has_names = meanings.contains(&Meaning::Field(outputs::NAME.place()));
    let why_not = match unknown {
        Some((column, _)) => format!("Say first what “{}” is.", column.heading),
        None if !has_names => "Say first which column names the pin.".to_owned(),
        None if described.outputs == 0 => "No row is an output.".to_owned(),
        None => String::new(),
    };
    let left_out = match described.left_out {
        0 => String::new(),
        count => format!(" {} not an output: left out.", rows_are(count)),
    };
    let take = || {
        let label =
            format!("Use these {} in place of the outputs above", outputs_of(described.outputs));
        button(None, label, sending(&page.send, Action::Take(Box::new(described.plan.clone()))))
    };
    let is_ready = why_not.is_empty();
    several!(el!("p"; format!("{why_not}{left_out}")), is_ready.then(take),)
}

fn rows(count: usize) -> String {
    if count == 1 { "1 row".to_owned() } else { format!("{count} rows") }
}

fn rows_are(count: usize) -> String {
    if count == 1 { "1 row is".to_owned() } else { format!("{count} rows are") }
}

fn outputs_of(count: usize) -> String {
    if count == 1 { "1 output".to_owned() } else { format!("{count} outputs") }
}

fn select(
    id: &str,
    label: &str,
    options: impl Iterator<Item = (&'static str, &'static str)>,
    chosen: &str,
    tell: Callback<String>,
) -> View {
    let option = |(code, label): (&'static str, &'static str)| {
        keyed(code, el!("option", "value" = code, "selected" = code == chosen; label))
    };
    let select = el!("select", "id" = id.to_owned(); all(options.map(option)));
    let tell = Callback::from(move |event: Event| {
        if let Some(select) = event.target_dyn_into::<HtmlSelectElement>() {
            tell.emit(select.value());
        }
    });
    let view = el!("div", "class" = "field";
        el!("label", "for" = id.to_owned(); label),
        el!("div", "class" = "entry"; on("change", select, tell)),
    );
    keyed(id, view)
}
