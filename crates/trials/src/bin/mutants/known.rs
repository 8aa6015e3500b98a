//! Why a mutant survives.

/// A mutant that survives: its file, a part of its line, a part of what it changes, and why.
struct Known(&'static str, &'static str, &'static str, &'static str);

const CYCLE: &str = "equivalent: it tells a cycle of 720 degrees from one of 360";
const NO_VALUE: &str = "equivalent: no preferred value lies between";

/// Those that were looked at.
const KNOWN: &[Known] = &[
    Known(
        "coil/cures.rs",
        "celsius(20.0)",
        "",
        "equivalent: the energy of a current hangs on no temperature",
    ),
    Known("cranking/course.rs", "540.0", "540.0", CYCLE),
    Known("cranking/dip.rs", "540.0", "540.0", CYCLE),
    Known(
        "cranking/dip.rs",
        "MOST_GAIN",
        "",
        "the upper end of a search, which no engine of tests or examples reaches",
    ),
    Known(
        "cranking/events.rs",
        "RUN_TO_TOP_DEG",
        "",
        "untested: a top 54 to 66 degrees after a start",
    ),
    Known(
        "cranking/survey.rs",
        "course.longest_interval_s()",
        "+",
        "equivalent: a shortcut; a silence reads as nought as well, which no threshold stands",
    ),
    Known(
        "cranking/survey.rs",
        "inputs.stall_timeout.low {",
        "+",
        "equivalent: a shortcut; a silence reads as nought as well, which no threshold stands",
    ),
    Known(
        "output/corner.rs",
        "running_ratio() > 1.0",
        "",
        "equivalent: the ratios are 1, 6.5 and 10, and a corner more than is needed changes nothing",
    ),
    Known("cranking/course.rs", "REACH_DEG", "", "untested: how far a compression is felt"),
    Known("cranking/dip.rs", "MOST: f64", "0.9", "untested: only an example plan dips as far"),
    Known("cranking/run.rs", "(0.0..180.0)", "180.0", "untested: it only counts, for one sentence"),
    Known("output/kick.rs", "{ 5.0 } else", "5.0", "untested: a winding on a logic output"),
    Known(
        "output/alternative/across.rs",
        "const TOLERANCE",
        "",
        "untested: what is offered, and solved before",
    ),
    Known(
        "output/alternative/across.rs",
        "MOST_PULL_DOWN_W",
        "",
        "untested: what is offered, and solved before",
    ),
    Known(
        "questions/cranking/problems.rs",
        "150.0",
        "150.0",
        "untested: what is offered, rounded up to hundredths",
    ),
    Known(
        "questions/trigger/offset.rs",
        "SURE_DEG",
        "",
        "untested: a tone between good and doubtful",
    ),
    Known("questions/trigger/switch.rs", "LATE_DEG", "", "untested: from where on it is said"),
    Known(
        "trigger/reluctance.rs",
        "at_input.high <= bears",
        "+",
        "untested: the resistor was sized for what the input bears",
    ),
    Known(
        "engine/geometry.rs",
        "0.01",
        "0.01",
        "equivalent: it takes up what rounding leaves of equal angles",
    ),
    Known(
        "questions/cranking/extent.rs",
        "10.0",
        "",
        "untested: how a rate is rounded that is only shown",
    ),
    Known(
        "questions/cranking/unsearched.rs",
        "10.0",
        "",
        "untested: how a count is rounded that is only shown",
    ),
    Known(
        "questions/fuel/judge.rs",
        "500.0",
        "500.0",
        "untested: from which power on less is offered",
    ),
    Known(
        "questions/outputs/switching.rs",
        "LEAST_HEAT_W",
        "",
        "untested: from which heat on it is shown",
    ),
    Known(
        "questions/trigger/switch.rs",
        "rail.base() < 4.0",
        "4.0",
        "equivalent: it tells 5 V from 3.3 V",
    ),
    Known("output/alternative/across.rs", "PULL_DOWN_OHM", "10.0 − 10 %", NO_VALUE),
    Known("output/alternative/across.rs", "PULL_DOWN_OHM", "8200.0 + 10 %", NO_VALUE),
];

/// What a change does that moves the boundary of a comparison.
const BOUNDARIES: &[&str] = &["`<` is `<=`", "`<=` is `<`", "`>` is `>=`", "`>=` is `>`"];

/// Why it survives.
pub(crate) fn why(file: &str, line: &str, change: &str, is_reached: bool) -> &'static str {
    let is_it = |it: &&Known| it.0 == file && line.contains(it.1) && change.contains(it.2);
    match KNOWN.iter().find(is_it) {
        Some(known) => known.3,
        None if is_reached => "untested",
        None if BOUNDARIES.contains(&change) => "both sides are equal in no test",
        None => "no test comes by",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_looked_at_has_its_reason_and_the_rest_a_general_one() {
        assert_eq!(why("cranking/dip.rs", "if x > 540.0 {", "540.0 + 10 %", true), CYCLE);
        assert_eq!(
            why("coil.rs", "a < b", "`<` is `<=`", false),
            "both sides are equal in no test"
        );
        assert_eq!(why("coil.rs", "a < b", "`<` is `<=`", true), "untested");
        assert_eq!(why("coil.rs", "a < 3.0", "3.0 + 10 %", false), "no test comes by");
    }
}
