//! How a number was found, as an engineer writes it.

use quietpin_core::working::Step;

use super::sheet::Sheet;

/// Prints the steps of a calculation.
pub(super) fn print(sheet: &mut Sheet, indent: usize, steps: &[Step]) {
    for step in steps {
        let (left, right) = step.symbols.split_once(" = ").unwrap_or(("", step.symbols));
        let left = if left.is_empty() { String::new() } else { format!("{left} ") };
        sheet.item(indent, &left, &format!("= {right}"));
        let under = indent + left.chars().count();
        // a formula without values would only be said twice
        if step.filled != right {
            sheet.item(under, "= ", &step.filled);
        }
        sheet.item(under, "= ", &step.result.shown);
        sheet.labelled(indent + 2, "Source:", step.source);
    }
}
