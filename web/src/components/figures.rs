//! The numbers behind an answer, and its tables.

use quietpin_core::{
    quantity::Value,
    report::{Figure, Row, Table},
};
use yew::prelude::*;

use crate::words;

/// The numbers, each with its range.
pub(super) fn figures(figures: &[Figure]) -> Html {
    if figures.is_empty() {
        return html! {};
    }
    html! { <dl class="figures">{ for figures.iter().map(figure) }</dl> }
}

fn figure(figure: &Figure) -> Html {
    let range = match (&figure.low, &figure.high) {
        (Some(low), Some(high)) => {
            html! { <span class="range">{ format!("{} to {}", low.shown, high.shown) }</span> }
        }
        _ => html! {},
    };
    html! {
        <div>
            <dt>{ &figure.label.text }</dt>
            <dd><b>{ &figure.value.shown }</b>{ range }</dd>
        </div>
    }
}

/// A table; a row that stands out says so in a cell as well.
pub(super) fn table(table: &Table) -> Html {
    html! {
        <div class="table" tabindex="0" role="group" aria-label={table.caption.text.clone()}>
            <table>
                <caption>{ &table.caption.text }</caption>
                <thead><tr>{ for table.columns.iter().map(|it| html! { <th scope="col">{ &it.text }</th> }) }</tr></thead>
                <tbody>{ for table.rows.iter().map(row) }</tbody>
            </table>
        </div>
    }
}

fn row(row: &Row) -> Html {
    let mut cells = row.cells.iter();
    let head = cells.next().map(|it| html! { <th scope="row">{ &it.shown }</th> });
    html! {
        <tr class={row.tone.map(words::tone_class)}>
            { head }
            { for cells.map(|it: &Value| html! { <td>{ &it.shown }</td> }) }
        </tr>
    }
}
