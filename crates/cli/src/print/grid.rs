//! Rows of cells under one another in columns.

use textwrap::core::display_width;

use super::{
    WIDTH,
    sheet::{Sheet, clean, wrap},
};

/// Between two columns.
const GAP: usize = 2;
/// Narrower than this no column is made, whatever stands in it.
const NARROWEST: usize = 8;

/// A cell.
#[derive(Clone, Debug)]
pub(super) struct Cell {
    text: String,
    is_number: bool,
}

impl Cell {
    /// A text, put to the left.
    pub(super) fn text(text: &str) -> Self {
        Self { text: clean(text), is_number: false }
    }

    /// A number, put to the right where the whole column is numbers.
    pub(super) fn number(text: &str) -> Self {
        Self { text: clean(text), is_number: true }
    }
}

/// Rows of cells; heads, where there are any, are a row of their own.
#[derive(Debug, Default)]
pub(super) struct Grid {
    heads: Vec<Cell>,
    rows: Vec<Vec<Cell>>,
}

impl Grid {
    /// A grid whose columns have these heads; none for no heads.
    pub(super) fn new(heads: Vec<Cell>) -> Self {
        Self { heads, rows: Vec::new() }
    }

    /// Adds a row.
    pub(super) fn row(&mut self, cells: Vec<Cell>) {
        self.rows.push(cells);
    }

    /// Prints it, `indent` columns in.
    pub(super) fn print(&self, sheet: &mut Sheet, indent: usize) {
        let columns = self.columns(WIDTH.saturating_sub(indent));
        if !self.heads.is_empty() {
            print_row(sheet, indent, &columns, &self.heads);
            let rules: Vec<_> =
                columns.iter().map(|column| Cell::text(&"-".repeat(column.width))).collect();
            print_row(sheet, indent, &columns, &rules);
        }
        for row in &self.rows {
            print_row(sheet, indent, &columns, row);
        }
    }

    /// The columns, narrowed until they fit.
    fn columns(&self, room: usize) -> Vec<Column> {
        let count = self.rows.iter().map(Vec::len).max().unwrap_or_default().max(self.heads.len());
        let mut columns: Vec<_> = (0..count).map(|at| self.column(at)).collect();
        let gaps = GAP * count.saturating_sub(1);
        while columns.iter().map(|column| column.width).sum::<usize>() + gaps > room {
            let widest = columns.iter_mut().max_by_key(|column| column.width);
            match widest {
                Some(column) if column.width > NARROWEST => column.width -= 1,
                _ => break,
            }
        }
        columns
    }

    fn column(&self, at: usize) -> Column {
        let body = || self.rows.iter().filter_map(move |row| row.get(at));
        let all = body().chain(self.heads.get(at));
        Column {
            width: all.map(|cell| display_width(&cell.text)).max().unwrap_or_default(),
            // an empty cell is no reason to put a column of numbers to the left
            to_right: body().any(|cell| cell.is_number)
                && body().all(|cell| cell.is_number || cell.text.is_empty()),
        }
    }
}

#[derive(Clone, Copy, Debug)]
struct Column {
    width: usize,
    to_right: bool,
}

/// Prints a row, in as many lines as its longest cell takes.
fn print_row(sheet: &mut Sheet, indent: usize, columns: &[Column], row: &[Cell]) {
    let cells: Vec<_> = columns
        .iter()
        .enumerate()
        .map(|(at, column)| {
            row.get(at).map_or_else(Vec::new, |cell| wrap(&cell.text, column.width, "", ""))
        })
        .collect();
    for at in 0..cells.iter().map(Vec::len).max().unwrap_or_default() {
        let mut line = " ".repeat(indent);
        for (column, cell) in columns.iter().zip(&cells) {
            let text = cell.get(at).map_or("", String::as_str);
            let blanks = " ".repeat(column.width.saturating_sub(display_width(text)));
            let (before, after) = if column.to_right { (&*blanks, "") } else { ("", &*blanks) };
            line.push_str(before);
            line.push_str(text);
            line.push_str(after);
            line.push_str(&" ".repeat(GAP));
        }
        sheet.line(&line);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn printed(grid: &Grid) -> String {
        let mut sheet = Sheet::default();
        grid.print(&mut sheet, 2);
        sheet.into_text()
    }

    #[test]
    fn numbers_stand_under_one_another() {
        let mut grid = Grid::new(vec![Cell::text("part"), Cell::text("Ω")]);
        grid.row(vec![Cell::text("valve"), Cell::number("14.5")]);
        grid.row(vec![Cell::text("relay's coil"), Cell::number("90")]);
        let expected = "  part             Ω\n  ------------  ----\n  valve         14.5\n  relay's coil    90\n";
        assert_eq!(printed(&grid), expected);
    }

    #[test]
    fn a_cell_too_wide_is_wrapped() {
        let mut grid = Grid::default();
        grid.row(vec![Cell::text("short"), Cell::text(&"long ".repeat(40)), Cell::text("end")]);
        let text = printed(&grid);
        assert!(text.lines().count() > 2, "{text}");
        assert!(text.lines().all(|line| display_width(line) <= WIDTH), "{text}");
        assert!(text.lines().next().is_some_and(|line| line.ends_with("end")), "{text}");
    }
}
