//! The scale of severities: one rule, by which every finding is graded.

use super::Severity;

/// A rung of the scale.
#[derive(Clone, Copy, Debug)]
pub struct Rung {
    /// Its name, as files and scripts have it.
    pub severity: Severity,
    /// When a finding stands on it.
    pub rule: &'static str,
    /// Codes of findings that do.
    pub examples: &'static [&'static str],
}

/// What holds for all rungs.
pub const COMMON: &[&str] = &[
    "A foreseeable state is one that a car comes to without anybody's mistake: key off, key-on, cranking, a stall, a dip of the \
     battery, a stuck needle, a lost ground.",
    "A hair over a limit, within what the numbers themselves are good for, is a Doubt.",
    "What follows only from what is usual, in the place of a value that is not known, is no graver than a Doubt; that a usual \
     value is not the best one is not said.",
    "A single fault (a ground lost, a fuse pulled) is a Note, but for a load that can hurt someone: then it is a Fault.",
    "What can't be read in a field is a Fault: the answer is given without it.",
];

/// The scale, gravest first.
pub const SCALE: [Rung; 4] = [
    Rung {
        severity: Severity::Danger,
        rule: "can hurt someone, fire included, in a planned or a foreseeable state; or destroys a part in use as planned",
        examples: &[
            "feeds.fuse-over-wire",
            "firing.spark-intake",
            "coils.dwell-too-long",
            "injectors.too-much-for-output",
            "cranking.pump-on-after-stop",
        ],
    },
    Rung {
        severity: Severity::Fault,
        rule: "won't work; or destroys a part in a foreseeable state",
        examples: &[
            "firing.blind",
            "cranking.never-closes",
            "outputs.wakes-controller",
            "injectors.resistor-overheats",
            "feeds.fuse-over-contact",
        ],
    },
    Rung {
        severity: Severity::Doubt,
        rule: "works with too little margin; or depends on something not known that a person should find out",
        examples: &[
            "feeds.fuse-near-wire",
            "injectors.no-margin",
            "outputs.depends-on-resistance",
            "outputs.kick-perhaps-too-strong",
            "engine.even-assumed",
        ],
    },
    Rung {
        severity: Severity::Note,
        rule: "worth knowing once",
        examples: &["outputs.acts-without-ground", "engine.turn-taken", "fuel.boost-takes"],
    },
];
