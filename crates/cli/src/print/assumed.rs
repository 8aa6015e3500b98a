//! What was taken where the plan is blank.

use quietpin_core::{
    read::{FieldStates, State},
    schema::Place,
};

use super::{
    grid::{Cell, Grid},
    sheet::Sheet,
};

/// Prints the values that were assumed, and why those.
pub(super) fn print(sheet: &mut Sheet, fields: &FieldStates) {
    let mut grid = Grid::new(["Blank in the plan", "assumed", "because"].map(Cell::text).into());
    let mut assumed: Vec<_> =
        fields.iter().filter(|(_, field)| field.state == State::Assumed).collect();
    if assumed.is_empty() {
        return;
    }
    // in the order in which they are asked
    assumed.sort_by_key(|(path, _)| Place::at_path(path).map(|it| it.at(0).in_cell(0)));
    sheet.heading("What was assumed", '-');
    for (path, field) in assumed {
        let value = field.value.as_ref().map_or("", |value| &value.shown);
        let basis = field.basis.as_deref().unwrap_or_default();
        grid.row(vec![Cell::text(&name(path)), Cell::text(value), Cell::text(basis)]);
    }
    grid.print(sheet, 0);
}

fn name(path: &str) -> String {
    let place = Place::at_path(path);
    place.map_or_else(|| path.to_owned(), |it| format!("{} ({path})", it.field().label))
}
