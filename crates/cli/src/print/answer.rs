//! One answer: the verdict, why, what to do, the numbers, the working.

use quietpin_core::{
    message::Message,
    quantity::Value,
    report::{Answer, Bench, Checklist, Figure, Picture, Row, Table, Tone},
};

use super::{
    Options,
    finding::basis,
    grid::{Cell, Grid},
    sheet::Sheet,
    steps,
};

const INDENT: usize = 2;

/// Prints an answer.
pub(super) fn print(sheet: &mut Sheet, answer: &Answer, options: Options) {
    sheet.blank();
    if let Some(title) = &answer.title {
        sheet.paragraph(0, &title.text);
    }
    let verdict = &answer.verdict;
    let basis = match verdict.tone {
        Tone::Open => String::new(),
        _ => format!(" ({})", basis(answer.basis)),
    };
    sheet.item(0, "> ", &format!("{}{basis}", verdict.message.text));
    for why in answer.why.iter().chain(&answer.assumed) {
        sheet.paragraph(INDENT, &why.text);
    }
    print_list(sheet, "What to do:", &answer.to_do);
    for list in &answer.lists {
        print_ticks(sheet, list);
    }
    for caution in &answer.cautions {
        sheet.labelled(INDENT, "CAUTION:", &caution.text);
    }
    if let Some(bench) = &answer.bench {
        print_bench(sheet, bench);
    }
    print_figures(sheet, &answer.figures, options);
    for table in &answer.tables {
        print_table(sheet, table, options);
    }
    for picture in &answer.pictures {
        print_picture(sheet, picture);
    }
}

fn print_list(sheet: &mut Sheet, head: &str, items: &[Message]) {
    if items.is_empty() {
        return;
    }
    sheet.paragraph(INDENT, head);
    for (at, item) in items.iter().enumerate() {
        sheet.item(INDENT + 2, &format!("{}. ", at + 1), &item.text);
    }
}

fn print_ticks(sheet: &mut Sheet, list: &Checklist) {
    sheet.paragraph(INDENT, &list.title.text);
    for item in &list.items {
        let sign = if item.is_done { "[x] " } else { "[ ] " };
        sheet.item(INDENT + 2, sign, &item.words.text);
    }
}

/// What to fire next, and what is certain by now.
fn print_bench(sheet: &mut Sheet, bench: &Bench) {
    sheet.paragraph(INDENT, "At the car:");
    let next = bench.channels.iter().find(|it| Some(it.channel) == bench.next);
    let tool = bench.tool.as_ref().filter(|_| next.is_some());
    for words in tool.into_iter().chain(next.map(|it| &it.ask)).chain(&bench.says) {
        sheet.item(INDENT + 2, "- ", &words.text);
    }
}

fn print_figures(sheet: &mut Sheet, figures: &[Figure], options: Options) {
    if figures.is_empty() {
        return;
    }
    sheet.blank();
    let mut grid = Grid::default();
    for figure in figures {
        let range = match (&figure.low, &figure.high) {
            (Some(low), Some(high)) => format!("{} to {}", low.shown, high.shown),
            _ => String::new(),
        };
        grid.row(vec![Cell::text(&figure.label.text), cell(&figure.value), Cell::number(&range)]);
    }
    grid.print(sheet, INDENT);
    if options.working {
        for figure in figures {
            sheet.blank();
            sheet.paragraph(INDENT + 2, &format!("{}:", figure.label.text));
            steps::print(sheet, INDENT + 4, &figure.working);
        }
    }
}

fn print_table(sheet: &mut Sheet, table: &Table, options: Options) {
    sheet.blank();
    sheet.paragraph(INDENT, &format!("{}:", table.caption.text));
    let marked = table.rows.iter().any(|row| !mark(row).is_empty());
    let heads = table.columns.iter().map(|head| Cell::text(&head.text));
    let mut grid = Grid::new(marked.then(|| Cell::text("")).into_iter().chain(heads).collect());
    for row in &table.rows {
        let mark = marked.then(|| Cell::text(mark(row)));
        grid.row(mark.into_iter().chain(row.cells.iter().map(cell)).collect());
    }
    grid.print(sheet, INDENT);
    if options.working {
        sheet.blank();
        steps::print(sheet, INDENT + 2, &table.working);
    }
}

/// What makes a row stand out where there is no colour; a cell says why.
fn mark(row: &Row) -> &'static str {
    match row.tone {
        Some(Tone::Bad) => "!",
        Some(Tone::Doubtful | Tone::Open) => "?",
        Some(Tone::Good) | None => "",
    }
}

fn cell(value: &Value) -> Cell {
    if value.number.is_some() { Cell::number(&value.shown) } else { Cell::text(&value.shown) }
}

/// A picture's caption says what it shows to those who can't see it, as here.
fn print_picture(sheet: &mut Sheet, picture: &Picture) {
    let caption = match picture {
        Picture::Cycle(cycle) => &cycle.caption,
        Picture::Circuit(circuit) => &circuit.caption,
        Picture::Timeline(timeline) => &timeline.caption,
        Picture::Traces(traces) => &traces.caption,
        Picture::Strip(strip) => &strip.caption,
    };
    sheet.blank();
    sheet.paragraph(INDENT, &caption.text);
}
