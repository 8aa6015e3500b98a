//! Why a mutant survives.

/// A mutant that survives: its file, a part of its line, a part of what it changes, and why.
struct Known(&'static str, &'static str, &'static str, &'static str);

const CYCLE: &str = "equivalent: it tells a cycle of 720 degrees from one of 360";
const ROUNDING: &str = "equivalent: it takes up what rounding leaves";
const EITHER: &str = "equivalent: of two that are equal it is all one which is taken";
const WORKED_OUT: &str =
    "equivalent: what a bound does not leave out is worked out, and comes to the same";
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
        "equivalent: the flywheel is that of an even four, which gains 0.6 to 0.8, far from where the search for it ends",
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
    Known(
        "trigger/reluctance.rs",
        "at_input.high <= bears",
        "+",
        "equivalent: the resistor was sized for what the input bears, so that no more is left",
    ),
    Known(
        "engine/geometry.rs",
        "0.01",
        "0.01",
        "equivalent: it takes up what rounding leaves of equal angles",
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
    Known("coil/pattern.rs", "SAME_DEG", "`<` is `<=`", ROUNDING),
    Known("fuel/delivery.rs", "limit.base() + 1e-9", "`>` is `>=`", ROUNDING),
    Known("injector/controlled.rs", "other.base() > one.base()", "`>` is `>=`", EITHER),
    Known("injector/controlled.rs", "most.base() < hold.base()", "`<` is `<=`", EITHER),
    Known("injector/turn_off.rs", "limit.base() < steady.base()", "`<` is `<=`", EITHER),
    Known("questions/cranking/unsearched.rs", "it > most_s", "`>` is `>=`", EITHER),
    Known(
        "questions/cranking/unsearched.rs",
        "millions >= 10.0",
        "`>=` is `>`",
        "equivalent: ten is written alike with tenths and without",
    ),
    Known(
        "questions/cranking/unsearched.rs",
        "low >= 100",
        "`>=` is `>`",
        "equivalent: a hundred is a whole ten",
    ),
    Known("cranking/readings.rs", "slowest >= switch.off_below", "`>=` is `>`", WORKED_OUT),
    Known("cranking/readings.rs", "bounds.fastest <= highest_yet", "`<=` is `<`", WORKED_OUT),
    Known(
        "channels/light.rs",
        "filter(|it| *it > 0)",
        "`>` is `>=`",
        "equivalent: a wheel of no positions has an endless pitch, by which no reading is out",
    ),
    Known(
        "questions/firing/entered.rs",
        "error.degrees() < 0.0",
        "`<` is `<=`",
        "equivalent: what is wrong is listed, and nothing is wrong by nought",
    ),
    Known(
        "questions/trigger/offset.rs",
        "is_early = error.degrees() > 0.0",
        "`>` is `>=`",
        "equivalent: only an error of more than a degree comes by",
    ),
    Known(
        "trigger/offset.rs",
        "one.speed <= other.speed",
        "`<=` is `<`",
        "equivalent: two readings at one speed have no answer",
    ),
    Known(
        "output/pulse.rs",
        "let rises = flow.current.base() < 0.0",
        "`<` is `<=`",
        "equivalent: without a current there is no way on which it runs on",
    ),
    Known(
        "questions/coils/feed.rs",
        "*rating < fuse",
        "`<` is `<=`",
        "equivalent: the fuse that is there outlasts the coil, which is asked as well",
    ),
    Known("output/alternative/across.rs", "PULL_DOWN_OHM", "10.0 − 10 %", NO_VALUE),
    Known("output/alternative/across.rs", "PULL_DOWN_OHM", "8200.0 + 10 %", NO_VALUE),
];

/// Whether a reason says that nothing changes.
pub(crate) fn is_equivalent(why: &str) -> bool {
    why.starts_with("equivalent")
}

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
