//! The numbers behind an answer, and its tables.

use quietpin_core::report::{Figure, Row, Table};

use crate::{
    element::{View, all, el, nothing, whole},
    words,
};

/// The numbers, each with its range.
pub(super) fn figures(figures: &[Figure]) -> View {
    if figures.is_empty() {
        return nothing();
    }
    el!("dl", "class" = "figures"; all(figures.iter().map(figure)))
}

fn figure(figure: &Figure) -> View {
    let range = figure.low.as_ref().zip(figure.high.as_ref()).map(
        |(low, high)| el!("span", "class" = "range"; format!("{} to {}", whole(&low.shown), whole(&high.shown))),
    );
    el!("div";
        el!("dt"; &figure.label.text),
        el!("dd"; el!("b"; whole(&figure.value.shown)), range),
    )
}

/// A table; a row that stands out says so in a cell as well.
pub(super) fn table(table: &Table) -> View {
    let caption = &table.caption.text;
    let heads = table.columns.iter().map(|it| el!("th", "scope" = "col"; &it.text));
    el!("div", "class" = "table", "tabindex" = "0", "role" = "group", "aria-label" = caption;
        el!("table";
            el!("caption"; el!("span"; caption)),
            el!("thead"; el!("tr"; all(heads))),
            el!("tbody"; all(table.rows.iter().map(|it| row(it, table)))),
        ),
    )
}

fn row(row: &Row, table: &Table) -> View {
    let mut cells = row.cells.iter().zip(&table.columns);
    let head = cells.next().map(|(it, column)| {
        // where a phone is too narrow for the table, each row is a card, and each cell says what it is
        el!("th", "scope" = "row", "data-column" = &column.text; whole(&it.shown))
    });
    el!("tr", "class" = row.tone.map(words::tone_class);
        head,
        all(cells.map(|(it, column)| el!("td", "data-column" = &column.text; whole(&it.shown)))),
    )
}
