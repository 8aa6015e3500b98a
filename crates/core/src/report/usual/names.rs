//! Names, as few as can be.

use crate::{
    fields::relays::Purpose,
    message::Message,
    quantity::Value,
    read::State,
    report::Report,
    say,
    schema::{Choice as _, Part, Place},
    words::Wording,
};

use super::words;

/// What answers are about that are about no field.
const SUBJECTS: [(&str, &Wording); 23] = [
    ("channels.ignition_mode", words::IGNITION),
    ("channels.ignition_count", words::IGNITION),
    ("channels.coils_wired", words::IGNITION_WIRED),
    ("channels.injection_mode", words::INJECTION),
    ("channels.injection_count", words::INJECTION),
    ("channels.injectors_wired", words::INJECTION_WIRED),
    ("channels.second_mode", words::SECOND),
    ("channels.second_count", words::SECOND),
    ("channels.second_wired", words::SECOND_WIRED),
    ("controller.outputs", words::OUTPUTS),
    ("controller.offset", words::OFFSET),
    ("injector_feed", words::INJECTOR_FEED),
    ("light", words::LIGHT),
    ("controller.locked_advance", words::LIGHT),
    ("strip", words::STRIP),
    ("engine", words::ENGINE),
    ("injectors", words::INJECTORS),
    ("second_injectors", words::SECOND_INJECTORS),
    ("fuel", words::FUEL),
    ("crank_sensor", words::CRANK_SENSOR),
    ("cam_sensor", words::CAM_SENSOR),
    ("coils.feed", words::COIL_FEED),
    ("coils", words::COILS),
];

/// Whether answers have a name of their own for what they are about.
pub(super) fn is_subject(subject: &str) -> bool {
    SUBJECTS.iter().any(|(name, _)| *name == subject)
}

/// What a subject is called that answers are about, or a field of that.
fn subject(subject: &str) -> Option<&'static str> {
    let is_about = |name: &str| {
        let rest = subject.strip_prefix(name);
        rest.is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
    };
    SUBJECTS.iter().find(|(name, _)| is_about(name)).map(|(_, wording)| wording.text)
}

/// What a subject of an answer or a finding is called: a name that was typed, or what the part is.
pub(super) fn called(report: &Report, about: &str) -> String {
    if let Some(called) = subject(about) {
        return called.to_owned();
    }
    if about == Part::Cranking.name()
        && let Some(record) = speed_relay(report).or_else(|| coil_relay(report))
    {
        return named(report, Part::Relays, record);
    }
    let mut words = about.split('.');
    let part = words.next().and_then(Part::named);
    let Some(part) = part else { return String::new() };
    match words.next().filter(|_| part.is_list()).and_then(|it| it.parse().ok()) {
        Some(record) => named(report, part, record),
        None => of_part(part).text.to_owned(),
    }
}

/// The relay that the question of cranking is about: the first that has a speed, and no answer of its own.
fn speed_relay(report: &Report) -> Option<usize> {
    let path = |at: usize, field: &str| [Part::Relays.name(), ".", &at.to_string(), field].concat();
    let is_answered = |at: usize| {
        let cranking = report.sections.iter().filter(|it| it.id == Part::Cranking.name());
        cranking.flat_map(|it| &it.answers).any(|it| it.subject == path(at, ""))
    };
    let known = |at: &usize| report.fields.contains_key(&path(*at, ".relay_on_at"));
    let has_speed = |at: &usize| {
        let field = report.fields.get(&path(*at, ".relay_on_at"));
        field.is_some_and(|it| it.state == State::Given)
    };
    (0..report.fields.len()).take_while(known).find(|at| has_speed(at) && !is_answered(*at))
}

/// The relay of the coils, which follows no speed.
fn coil_relay(report: &Report) -> Option<usize> {
    let purpose = |at: usize| {
        let path = [Part::Relays.name(), ".", &at.to_string(), ".purpose"].concat();
        report.fields.get(&path)
    };
    let is_of_coils = |at: &usize| {
        let value = purpose(*at).and_then(|it| it.value.as_ref());
        let labels = [Purpose::Coils, Purpose::Engine].map(|it| it.choosable().label);
        value.is_some_and(|it| labels.contains(&it.shown.as_str()))
    };
    (0..report.fields.len()).take_while(|at| purpose(*at).is_some()).find(is_of_coils)
}

/// The name of a record, or what it is and its number.
fn named(report: &Report, part: Part, record: usize) -> String {
    let path = [part.name(), ".", &record.to_string(), ".name"].concat();
    let typed = report.fields.get(&path).and_then(|it| it.value.as_ref());
    let typed = typed.map(|it| it.shown.trim()).filter(|it| !it.is_empty());
    typed.map_or_else(
        || say!(words::NUMBERED, what = of_part(part).text, n = record + 1).into_text(),
        str::to_owned,
    )
}

fn of_part(part: Part) -> &'static Wording {
    match part {
        Part::Engine => words::ENGINE,
        Part::Controller | Part::Channels => words::CONTROLLER,
        Part::Light => words::LIGHT,
        Part::Strip => words::STRIP,
        Part::Injectors => words::INJECTORS,
        Part::SecondInjectors => words::SECOND_INJECTORS,
        Part::Fuel => words::FUEL,
        Part::Outputs => words::OUTPUT,
        Part::Relays => words::RELAY,
        Part::Loads => words::LOAD,
        Part::Cranking => words::SPEED_RELAY,
        Part::Coils => words::COILS,
        Part::Wheels | Part::Trigger => words::WHEELS,
        Part::CrankSensor => words::CRANK_SENSOR,
        Part::CamSensor => words::CAM_SENSOR,
        Part::TriggerInput => words::TRIGGER_INPUT,
        Part::Sensors => words::SENSOR,
        Part::Inputs => words::INPUT,
        Part::SensorSupplies => words::SENSOR_SUPPLY,
        Part::Today => words::TODAY,
        Part::Battery => words::BATTERY,
        Part::Temperatures => words::TEMPERATURES,
        Part::SwitchedFeeds | Part::Wiring => words::FEEDS,
        Part::Harness => words::HARNESS,
        Part::Grounds => words::GROUNDS,
        Part::Bus => words::BUS,
        Part::Frames => words::FRAME,
    }
}

/// What stands in a gap of a message.
pub(super) fn in_gap<'a>(message: Option<&'a Message>, gap: &str) -> Option<&'a str> {
    let value: Option<&Value> = message.and_then(|it| it.values.get(gap));
    value.map(|it| it.shown.as_str()).filter(|it| !it.is_empty())
}

/// Whether a path leads to a field.
pub(super) fn label(path: &str) -> Option<&'static str> {
    Place::at_path(path).map(|place| place.field().label)
}

/// Names in few words: those that count on as one, `D1 to D12` or `coil 1 to 8 input`; in the order in which they came
/// first.
pub(super) fn folded(names: &[String]) -> Vec<String> {
    let mut kinds: Vec<Kinship<'_>> = Vec::new();
    for name in names {
        let (stem, number, end) = numbered(name).unwrap_or((name, 0, name));
        match kinds.iter_mut().find(|it| (it.stem, it.end) == (stem, end)) {
            Some(kind) => kind.numbers.push((number, name)),
            None => kinds.push(Kinship { stem, end, numbers: vec![(number, name)] }),
        }
    }
    kinds.into_iter().flat_map(Kinship::folded).collect()
}

/// Names that differ by a number alone.
#[derive(Debug)]
struct Kinship<'a> {
    stem: &'a str,
    end: &'a str,
    numbers: Vec<(u32, &'a str)>,
}

/// So many names in a row are one.
const LEAST_IN_A_ROW: usize = 3;

impl Kinship<'_> {
    fn folded(mut self) -> Vec<String> {
        self.numbers.sort_unstable();
        self.numbers.dedup();
        let follows =
            |one: &(u32, &str), other: &(u32, &str)| one.0.checked_add(1) == Some(other.0);
        let rows = self.numbers.chunk_by(follows);
        rows.flat_map(|row| match row {
            [(first, name), .., (last, _)] if row.len() >= LEAST_IN_A_ROW => {
                // the letters of a pin are said with each number, the words of a load once
                let is_pin = self.end.is_empty() && !self.stem.ends_with(' ');
                let (stem, from) = (self.stem, first.to_string());
                vec![if is_pin {
                    [*name, " to ", stem, &last.to_string()].concat()
                } else {
                    [stem, &from, " to ", &last.to_string(), self.end].concat()
                }]
            }
            _ => row.iter().map(|(_, name)| (*name).to_owned()).collect(),
        })
        .collect()
    }
}

/// A name around its last number.
fn numbered(name: &str) -> Option<(&str, u32, &str)> {
    let is_digit = |c: char| c.is_ascii_digit();
    let before = name.trim_end_matches(|c| !is_digit(c));
    let end = name.strip_prefix(before)?;
    let stem = before.trim_end_matches(is_digit);
    let digits = before.strip_prefix(stem)?;
    // nought before a number is a part of the name
    let number = digits.parse().ok().filter(|it: &u32| it.to_string() == digits)?;
    Some((stem, number, end))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(names: &[&str], expected: &[&str]) {
        let names: Vec<_> = names.iter().map(|it| (*it).to_owned()).collect();
        assert_eq!(folded(&names), expected, "{names:?}");
    }

    #[test]
    fn names_that_count_on_are_said_as_a_row() {
        check(&["D1", "D2", "D3", "D4", "D9"], &["D1 to D4", "D9"]);
        check(&["coil input 1", "coil input 2", "coil input 3"], &["coil input 1 to 3"]);
        check(&["D1", "D2", "horn"], &["D1", "D2", "horn"]);
        check(&["valve", "D8", "D9", "D10", "D11"], &["valve", "D8 to D11"]);
        check(&["7", "8", "9"], &["7 to 9"]);
        check(&["D99999999999", "", "D1"], &["D99999999999", "", "D1"]);
        check(&["D3", "horn", "D1", "D2", "D2"], &["D1 to D3", "horn"]);
        check(&["coil 1 input", "coil 3 input", "coil 2 input"], &["coil 1 to 3 input"]);
        check(&["D01", "D02", "D03"], &["D01", "D02", "D03"]);
        check(
            &["cam valve, inlet", "cam valve, exhaust"],
            &["cam valve, inlet", "cam valve, exhaust"],
        );
    }
}
