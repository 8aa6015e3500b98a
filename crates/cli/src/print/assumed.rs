//! What was taken where the plan is blank.

use quietpin_core::report::{
    Report,
    usual::{Assumption, taken},
};

use super::{
    grid::{Cell, Grid},
    sheet::Sheet,
};

/// Prints the values that were assumed and used, and why those.
pub(super) fn print(sheet: &mut Sheet, report: &Report) {
    let mut grid = Grid::new(["Blank in the plan", "assumed", "because"].map(Cell::text).into());
    let assumed = taken(report);
    if assumed.is_empty() {
        return;
    }
    sheet.heading("What was assumed", '-');
    for it in &assumed {
        let value = it.value.as_ref().map_or("", |value| &value.shown);
        let basis = it.basis.as_deref().unwrap_or_default();
        grid.row(vec![Cell::text(&name(it)), Cell::text(value), Cell::text(basis)]);
    }
    grid.print(sheet, 0);
}

fn name(it: &Assumption) -> String {
    if it.label.is_empty() { it.path.clone() } else { format!("{} ({})", it.label, it.path) }
}
