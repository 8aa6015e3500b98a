//! What a fragment of the address shows: the list of questions, one question, all of them, or the sheet for the car.

/// What is on the screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Shown<'a> {
    /// The list of questions, at a place of it.
    List(&'a str),
    /// All questions, one below the other.
    All,
    /// The sheet to take to the car.
    Sheet,
    /// The labels of the wires.
    Labels,
    /// The part of a question that a path of the plan belongs to, or that answers about it.
    At(&'a str),
}

/// The address of the list.
pub(crate) const LIST: &str = "list";
/// The address of all questions on one page.
pub(crate) const ALL: &str = "all";
/// The address of the sheet to take to the car.
pub(crate) const SHEET: &str = "sheet";
/// The address of the labels of the wires.
pub(crate) const LABELS: &str = "labels";
/// The place of the findings on the list.
pub(crate) const FOUND: &str = "found";
/// The place of the plans on the list.
pub(crate) const PLANS: &str = "plans";

/// What an address shows. One that is nothing of ours shows the list.
pub(crate) fn shown(address: &str) -> Shown<'_> {
    match address {
        "" | LIST => Shown::List(LIST),
        FOUND | PLANS => Shown::List(address),
        ALL => Shown::All,
        SHEET => Shown::Sheet,
        LABELS => Shown::Labels,
        path if path.bytes().all(|it| it.is_ascii_alphanumeric() || matches!(it, b'.' | b'_')) => {
            Shown::At(path)
        }
        _ => Shown::List(LIST),
    }
}

/// The record that an address lies in: `loads.0` of `loads.0.kind`.
pub(crate) fn record(address: &str) -> &str {
    let mut dots = address.match_indices('.').map(|it| it.0);
    dots.nth(1).and_then(|end| address.get(..end)).unwrap_or(address)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_shows_the_list_a_question_or_all() {
        assert_eq!(shown(""), Shown::List(LIST));
        assert_eq!(shown("found"), Shown::List(FOUND));
        assert_eq!(shown("all"), Shown::All);
        assert_eq!(shown("sheet"), Shown::Sheet);
        assert_eq!(shown("loads.0.kind"), Shown::At("loads.0.kind"));
        assert_eq!(shown("plan=x%20"), Shown::List(LIST), "it is somebody else's");
    }

    #[test]
    fn an_address_lies_in_a_record() {
        assert_eq!(record("loads.0.kind"), "loads.0");
        assert_eq!(record("relays.12.coil"), "relays.12");
        assert_eq!(record("loads.0"), "loads.0");
        assert_eq!(record("engine"), "engine");
    }
}
