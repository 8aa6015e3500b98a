//! What is changed, and what is not.

/// The trade: layer 2 of the core.
const TRADE: &[&str] = &[
    "battery",
    "engine",
    "channels",
    "injector",
    "fuel",
    "output",
    "cranking",
    "coil",
    "trigger",
    "conditions",
    "tables",
];

/// What judges in a question is all that neither reads, nor advises, nor words, nor draws, nor lists numbers.
const NO_JUDGES: &[&str] = &[
    "advice", "cure", "cures", "detail", "fields", "figure", "figures", "memory", "names",
    "numbers", "picture", "pictures", "read", "remedies", "table", "tests", "words", "working",
];

/// Constants that are no trade values: file, name, why.
pub(crate) const LEFT_OUT: &[(&str, &str, &str)] = &[
    ("battery.rs", "HOUR_S", "a unit"),
    ("battery.rs", "DAY_S", "a unit"),
    ("battery.rs", "LEAST_A", "keeps a division from zero"),
    ("engine.rs", "TURN", "a turn"),
    ("channels/effect.rs", "HALF_TURN", "a turn"),
    ("coil/pattern.rs", "SAME_DEG", "tells equal from unequal in what was added up"),
    ("cranking/dip.rs", "TOGETHER_DEG", "tells equal from unequal in what was added up"),
    ("cranking/start.rs", "NUDGE_DEG", "tells equal from unequal in what was added up"),
    ("output/hottest.rs", "GOLDEN", "the golden section"),
    ("output/kick.rs", "LEAST_A", "keeps a logarithm from zero"),
    ("output/pulse.rs", "LEAST_A", "keeps a division from zero"),
    ("trigger/hall.rs", "LEAST_OHM", "keeps a division from zero"),
];

/// What a number of a formula, not of a table, may be without being a trade value: parts of a whole, turns in degrees,
/// degrees in a second at one turn in a minute, seconds in a minute and in an hour, kilograms in a pound.
const OF_FORMULAS: &[f64] =
    &[0.5, 1.0, 2.0, 6.0, 60.0, 90.0, 120.0, 180.0, 360.0, 540.0, 720.0, 3600.0, 0.45359237];

/// Less than this only takes up what rounding leaves.
const SLACK: f64 = 1.5e-6;

/// Whether a file of the core is changed: one of the trade that traces no curve and is not for tests
/// alone, or one that judges; by its path below `crates/core/src`.
pub(crate) fn is_changed(path: &str) -> bool {
    let path = path.strip_suffix(".rs").unwrap_or(path);
    let mut names = path.split('/');
    let first = names.next().unwrap_or_default();
    let mut rest = names.peekable();
    if first == "questions" {
        return rest.peek().is_some() && !rest.any(|name| NO_JUDGES.contains(&name));
    }
    TRADE.contains(&first) && !rest.any(|name| ["exhaustive", "tests", "trace"].contains(&name))
}

/// Whether a constant is left as it is.
pub(crate) fn is_left_out(path: &str, name: &str) -> bool {
    LEFT_OUT.iter().any(|(file, constant, _)| *file == path && *constant == name)
}

/// Whether a number is one of mathematics where it stands in a formula.
pub(crate) fn is_of_a_formula(number: f64) -> bool {
    OF_FORMULAS.iter().any(|it| (it - number).abs() <= 0.0) || is_power_of_ten(number)
}

/// Whether a number is nothing, or takes up what rounding leaves: wherever it stands.
pub(crate) fn is_slack(number: f64) -> bool {
    number < SLACK
}

/// What turns a unit into another, or rounds to so many digits.
fn is_power_of_ten(number: f64) -> bool {
    let power = number.log10();
    (power - power.round()).abs() < 1e-12
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_trade_and_what_judges_is_changed() {
        for path in
            ["battery.rs", "output/judge.rs", "questions/coils/judge.rs", "questions/coils.rs"]
        {
            assert!(is_changed(path), "{path}");
        }
        for path in [
            "circuit.rs",
            "lib.rs",
            "questions.rs",
            "questions/coils/words.rs",
            "questions/coils/words/feed.rs",
            "channels/tests.rs",
            "injector/trace.rs",
            "quantity/read.rs",
        ] {
            assert!(!is_changed(path), "{path}");
        }
    }

    #[test]
    fn what_is_mathematics_is_told_by_its_size() {
        assert!(is_of_a_formula(1e-3) && is_of_a_formula(1e6) && is_of_a_formula(60.0), "units");
        assert!(!is_of_a_formula(1.3) && !is_of_a_formula(0.7), "trade values");
        assert!(is_slack(1e-9) && is_slack(0.0) && !is_slack(1e-4), "slack");
    }
}
