//! Words of the trade for what stands in a table of pins.

use super::Meaning;
use crate::{fields::outputs, schema::Place};

/// Headings, each without blanks, signs and capitals.
const HEADINGS: &[(Place, &[&str])] = &[
    (
        outputs::NAME.place(),
        &[
            "pin",
            "name",
            "output",
            "channel",
            "cavity",
            "terminal",
            "pinno",
            "pinnumber",
            "no",
            "number",
        ],
    ),
    (
        outputs::STAGE.place(),
        &["stage", "type", "driver", "drivertype", "outputtype", "kind", "outputstage", "pintype"],
    ),
    (
        outputs::ON_LEVEL.place(),
        &["on", "onlevel", "active", "activelevel", "polarity", "whatcountsason", "oncounts"],
    ),
    (
        outputs::CURRENT_LIMIT.place(),
        &[
            "current",
            "currentlimit",
            "maxcurrent",
            "limit",
            "rating",
            "continuous",
            "continuouscurrent",
            "imax",
            "amps",
        ],
    ),
    (outputs::PULL_UP.place(), &["pullup", "pullupresistor"]),
    (outputs::PULL_UP_RAIL.place(), &["pullupto", "pulluprail", "pullupgoesto"]),
    (outputs::PULL_DOWN.place(), &["pulldown", "pulldownresistor"]),
    (outputs::ON_RESISTANCE.place(), &["onresistance", "rdson", "ron"]),
    (outputs::LEAKAGE.place(), &["leakage", "leakagecurrent", "offcurrent"]),
    (outputs::CLAMP.place(), &["clamp", "clampvoltage", "flybackclamp", "vclamp"]),
    (outputs::CLAMP_ENERGY.place(), &["clampenergy", "energy", "avalancheenergy"]),
    (
        outputs::PULSE_LIMIT.place(),
        &["pwm", "maxpwm", "pwmlimit", "frequency", "maxfrequency", "pwmfrequency", "pulselimit"],
    ),
];

/// Stages, each by its words in the same form.
const STAGES: &[(&str, &[&str])] = &[
    (
        "open-drain",
        &[
            "opendrain",
            "opencollector",
            "lowside",
            "lowsideswitch",
            "lowsidedriver",
            "switchtoground",
            "ls",
            "lsd",
            "od",
            "oc",
            "sink",
        ],
    ),
    (
        "high-side",
        &["highside", "highsideswitch", "highsidedriver", "switchtobattery", "hs", "hsd", "source"],
    ),
    ("half-bridge", &["halfbridge", "pushpull", "totempole", "hb", "halfhbridge"]),
    ("logic", &["logic", "digital", "logic5v", "5vlogic", "ttl", "5v"]),
];

const LEVELS: &[(&str, &[&str])] = &[
    ("ground", &["ground", "gnd", "low", "activelow", "0v"]),
    ("battery", &["battery", "high", "activehigh", "12v", "5v"]),
];

/// Letters and figures alone, small.
fn bare(text: &str) -> String {
    text.chars().filter(char::is_ascii_alphanumeric).map(|c| c.to_ascii_lowercase()).collect()
}

/// A heading, and what stands in brackets behind it.
fn parted(heading: &str) -> (&str, &str) {
    let Some((before, inside)) = heading.split_once(['(', '[']) else { return (heading, "") };
    (before, inside.trim_end_matches([')', ']', ' ']))
}

/// What a heading says of its column.
pub(super) fn column(heading: &str) -> Meaning {
    let word = bare(parted(heading).0);
    let field = HEADINGS.iter().find(|(_, words)| words.contains(&word.as_str()));
    field.map_or(Meaning::Unknown, |(place, _)| Meaning::Field(*place))
}

/// The unit in a heading.
pub(super) fn unit(heading: &str) -> &str {
    parted(heading).1.trim()
}

/// A number without a unit gets the unit of its column.
pub(super) fn with_unit(text: &str, unit: &str) -> String {
    let is_bare = text.ends_with(|c: char| c.is_ascii_digit());
    if is_bare && !unit.is_empty() { [text, " ", unit].concat() } else { text.to_owned() }
}

/// The code of the stage that a word means.
pub(super) fn stage(word: &str) -> Option<&'static str> {
    code(STAGES, word)
}

/// The code of the level that a word means.
pub(super) fn level(word: &str) -> Option<&'static str> {
    code(LEVELS, word)
}

fn code(table: &'static [(&str, &[&str])], word: &str) -> Option<&'static str> {
    let word = bare(word);
    table.iter().find(|(_, words)| words.contains(&word.as_str())).map(|(code, _)| *code)
}
