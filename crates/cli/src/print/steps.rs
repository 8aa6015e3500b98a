//! How a number was found, as an engineer writes it.

use quietpin_core::working::Step;

use super::sheet::Sheet;

/// Prints the steps of a calculation; one that several numbers share is printed once.
pub(super) fn print(sheet: &mut Sheet, indent: usize, steps: &[Step]) {
    for (at, step) in steps.iter().enumerate() {
        if steps.iter().take(at).any(|before| before == step) {
            continue;
        }
        let (left, right) = step.symbols.split_once(" = ").unwrap_or(("", step.symbols));
        let left = if left.is_empty() { String::new() } else { format!("{left} ") };
        sheet.item(indent, &left, &format!("= {right}"));
        let under = indent + left.chars().count();
        // a formula without values, or one value alone, would only be said twice
        if step.filled != right && step.filled != step.result.shown {
            sheet.item(under, "= ", &step.filled);
        }
        sheet.item(under, "= ", &step.result.shown);
        sheet.labelled(indent + 2, "Source:", step.source);
    }
}
