//! The numbers behind an answer, and its tables.

use quietpin_core::{
    quantity::Value,
    report::{Figure, Row, Table},
};

use crate::{
    element::{View, all, el, nothing},
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
        |(low, high)| el!("span", "class" = "range"; format!("{} to {}", whole(low), whole(high))),
    );
    el!("div";
        el!("dt"; &figure.label.text),
        el!("dd"; el!("b"; whole(&figure.value)), range),
    )
}

/// A table; a row that stands out says so in a cell as well.
pub(super) fn table(table: &Table) -> View {
    let caption = &table.caption.text;
    let heads = table.columns.iter().map(|it| el!("th", "scope" = "col"; &it.text));
    el!("div", "class" = "table", "tabindex" = "0", "role" = "group", "aria-label" = caption;
        el!("table";
            el!("caption"; caption),
            el!("thead"; el!("tr"; all(heads))),
            el!("tbody"; all(table.rows.iter().map(row))),
        ),
    )
}

fn row(row: &Row) -> View {
    let mut cells = row.cells.iter();
    let head = cells.next().map(|it| el!("th", "scope" = "row"; whole(it)));
    el!("tr", "class" = row.tone.map(words::tone_class);
        head,
        all(cells.map(|it| el!("td"; whole(it)))),
    )
}

/// A value as it is shown, its numbers and their units never parted at the end of a line.
fn whole(value: &Value) -> String {
    joined(&value.shown)
}

fn joined(shown: &str) -> String {
    let mut joined = String::with_capacity(shown.len());
    for word in shown.split_inclusive(' ') {
        // a unit is short, and follows a digit
        let is_unit = word.trim_end().chars().count() <= 3 && !word.starts_with("to ");
        let follows_digit = joined.trim_end().ends_with(|it: char| it.is_ascii_digit());
        if is_unit && follows_digit && joined.pop().is_some() {
            joined.push('\u{a0}');
        }
        joined.push_str(word);
    }
    joined
}

#[cfg(test)]
mod tests {
    use super::joined;

    #[test]
    fn a_number_and_its_unit_stay_together_and_a_range_may_break() {
        assert_eq!(
            joined("12.4 V (7.19 V to 14.6 V)"),
            "12.4~V (7.19~V to 14.6~V)".replace('~', "\u{a0}")
        );
        assert_eq!(
            joined("0.1 to 1 s"),
            "0.1 to 1~s".replace('~', "\u{a0}"),
            "a range in one unit"
        );
        assert_eq!(
            joined("channel 5 fires cylinder 3"),
            "channel 5 fires cylinder 3",
            "words are no units"
        );
        assert_eq!(joined(""), "", "nothing");
    }
}
