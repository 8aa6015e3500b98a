//! Limits that are no number in the program: what is typed, and what is counted. They are named here one by one.

/// How a limit is changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum As {
    /// A number: a tenth more, a tenth less.
    Number,
    /// A quantity: a tenth more, a tenth less.
    Quantity,
    /// A count: one more.
    Count,
}

/// A limit: its file, where in that file, what of it, how, and what it is.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Planted {
    /// The file, below `crates/core/src`.
    pub(crate) file: &'static str,
    /// The text in which it stands, once or more often.
    pub(crate) place: &'static str,
    /// The part of that text which is the limit.
    pub(crate) limit: &'static str,
    /// How it is changed.
    pub(crate) how: As,
    /// What it is.
    pub(crate) what: &'static str,
}

const fn planted(
    file: &'static str,
    place: &'static str,
    limit: &'static str,
    how: As,
    what: &'static str,
) -> Planted {
    Planted { file, place, limit, how, what }
}

const TARGETS: &str = "targets asked of a channel";
const TIMEOUT: &str = "stall time-out";
const BEARS: &str = "what an input bears";

/// All of them.
pub(crate) const ALL: &[Planted] = &[
    planted(
        "channels/probing.rs",
        "!is_done(slot.channel, slot.targets.len())",
        "slot.targets.len()",
        As::Count,
        TARGETS,
    ),
    planted(
        "channels/probing.rs",
        "test(it, slot.targets.len())",
        "slot.targets.len()",
        As::Count,
        TARGETS,
    ),
    planted(
        "channels/probing.rs",
        "layout.slot(last)?.targets.len()",
        "layout.slot(last)?.targets.len()",
        As::Count,
        TARGETS,
    ),
    planted(
        "cranking/stop.rs",
        "inputs.stall_timeout.high.base()",
        "inputs.stall_timeout.high.base()",
        As::Number,
        TIMEOUT,
    ),
    planted(
        "cranking/events.rs",
        "inputs.stall_timeout.high.base()",
        "inputs.stall_timeout.high.base()",
        As::Number,
        TIMEOUT,
    ),
    planted(
        "cranking/readings.rs",
        "inputs.stall_timeout.low.base()",
        "inputs.stall_timeout.low.base()",
        As::Number,
        TIMEOUT,
    ),
    planted(
        "cranking/survey.rs",
        "inputs.stall_timeout.low.base()",
        "inputs.stall_timeout.low.base()",
        As::Number,
        TIMEOUT,
    ),
    planted(
        "cranking/survey.rs",
        "corner.longest_interval > inputs.stall_timeout.low {",
        "inputs.stall_timeout.low",
        As::Quantity,
        TIMEOUT,
    ),
    planted(
        "questions/cranking/problems.rs",
        "longest_interval <= inputs.stall_timeout.low;",
        "inputs.stall_timeout.low",
        As::Quantity,
        TIMEOUT,
    ),
    planted(
        "questions/cranking/problems.rs",
        "longest_interval(answer) > inputs.stall_timeout.low",
        "inputs.stall_timeout.low",
        As::Quantity,
        TIMEOUT,
    ),
    planted(
        "questions/trigger/coil.rs",
        "peak.at_input.high <= bears",
        "bears",
        As::Quantity,
        BEARS,
    ),
    planted("questions/trigger/switch.rs", "high.high > *bears", "*bears", As::Quantity, BEARS),
    planted("trigger/hall.rs", "self.high.high <= bears", "bears", As::Quantity, BEARS),
    planted(
        "trigger/reluctance.rs",
        "changed.at(highest)?.at_input.high <= bears",
        "bears",
        As::Quantity,
        BEARS,
    ),
    planted("trigger/reluctance.rs", "open / bears.base()", "bears.base()", As::Number, BEARS),
    planted(
        "trigger/reluctance.rs",
        "with((open - bears.base())",
        "bears.base()",
        As::Number,
        BEARS,
    ),
    planted("output/judge.rs", "across > bears.base()", "bears.base()", As::Number, BEARS),
];

/// Where it stands in a text: where each limit begins.
pub(crate) fn places(it: &Planted, text: &str) -> Vec<usize> {
    let within = it.place.rfind(it.limit).unwrap_or_default();
    text.match_indices(it.place).map(|(at, _)| at + within).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_limit_stands_in_its_place() {
        for it in ALL {
            let path = format!("{}/../core/src/{}", env!("CARGO_MANIFEST_DIR"), it.file);
            let text = std::fs::read_to_string(&path).expect("the file is there");
            assert!(!places(it, &text).is_empty(), "{}: {}", it.file, it.place);
            assert!(it.place.contains(it.limit), "{}", it.place);
        }
    }

    #[test]
    fn the_limit_is_found_within_what_surrounds_it() {
        let it = planted("", "a > *b", "*b", As::Quantity, "");
        assert_eq!(places(&it, "x a > *b; a > *b"), [6, 14]);
    }
}
