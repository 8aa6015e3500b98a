//! The usual report in sentences, the same on paper, on the page and on the command line.

use crate::questions::outputs::words as outputs;

use super::{Assumption, Bought, Cured, Fact, Judged, Line, Setting, Usual, Verdicts};
use crate::{
    finding::{Moment, Severity},
    report::Tone,
};

/// More names than these are counted where the verdict holds of all.
const MOST_NAMES: usize = 3;

/// What comes before the readings at the bare pins.
pub const PINS: &str = "Bare pins first, before a load is plugged in: key on, meter to ground, and the resistor named connected \
     to the pin, since a floating pin reads anything.";

impl Usual {
    /// How many there are of what was found, the worst first.
    pub fn counted(&self) -> String {
        const KINDS: [(Severity, &str, &str); 4] = [
            (Severity::Danger, "Danger", "Dangers"),
            (Severity::Fault, "Fault", "Faults"),
            (Severity::Doubt, "Check", "Checks"),
            (Severity::Note, "Note", "Notes"),
        ];
        let facts = &self.facts;
        let count = |(severity, one, more): &(Severity, &str, &str)| {
            let count = facts.iter().filter(|it| it.severity == *severity).count();
            (count > 0).then(|| format!("{count} {}", if count == 1 { one } else { more }))
        };
        let counts: Vec<_> = KINDS.iter().filter_map(count).collect();
        let is_grave = facts.iter().any(|it| it.severity <= Severity::Fault);
        match (counts.is_empty(), is_grave) {
            (true, _) if self.questions.iter().any(|it| it.tone == Tone::Doubtful) => {
                "Nothing wrong was found. What is to be checked below is still to be proved."
                    .to_owned()
            }
            (true, _) => {
                "Nothing was found. What is open below is not known to be right.".to_owned()
            }
            (false, true) => format!("{}.", counts.join(", ")),
            (false, false) => format!("No Danger, no Fault. {}.", counts.join(", ")),
        }
    }

    /// What a test lamp does at the bare pins, in place of the resistors.
    pub fn lamps_told(&self) -> Option<String> {
        let is_none = |line: &&Line| line.words.code == outputs::DO_NO_LAMP.code;
        let (none, lit): (Vec<_>, Vec<_>) = self.lamps.iter().partition(is_none);
        let pins: Vec<_> = lit.iter().flat_map(|line| &line.about).cloned().collect();
        let lit = lit.first().map(|line| {
            let (words, pins) = (&line.words.text, super::names::folded(&pins).join(", "));
            format!("A test lamp of 12 V, 3 W in its stead: {words}: {pins}.")
        });
        let none = none
            .iter()
            .map(|line| format!("No test lamp at {}: {}.", line.about.join(", "), line.words.text));
        let told: Vec<_> = lit.into_iter().chain(none).collect();
        (!told.is_empty()).then(|| told.join(" "))
    }

    /// How many usual values were taken, and those by name about which something was found; `where_listed` says where the
    /// others stand.
    pub fn assumed_told(&self, where_listed: &str) -> Option<String> {
        let usual = self.assumed.iter().filter(|it| !it.is_as_another);
        let count = usual.clone().count();
        let told = |it: &Assumption| {
            format!("{} ({})", it.label, it.value.as_ref().map_or("", |it| &it.shown))
        };
        let found: Vec<_> = usual.filter(|it| it.is_found).map(told).collect();
        let found = match found.as_slice() {
            [] => String::new(),
            found => format!(" Findings depend on: {}.", found.join("; ")),
        };
        let values = if count == 1 { "value" } else { "values" };
        (count > 0)
            .then(|| format!("Assumed: {count} usual {values} for blanks; {where_listed}.{found}"))
    }
}

impl Verdicts {
    /// Its verdicts. Where something is amiss, of what is right is said that it is.
    pub fn told(&self) -> String {
        let is_said = |it: &&Judged| self.tone == Tone::Good || it.tone != Tone::Good;
        let said = self.verdicts.iter().filter(is_said);
        let mut sentences: Vec<_> = said.map(|it| judged(it, self.name)).collect();
        let rest = self.verdicts.iter().filter(|it| !is_said(it));
        let (names, count): (Vec<_>, usize) =
            rest.fold((Vec::new(), 0), |(mut names, count), it| {
                names.extend(it.about.iter().map(String::as_str));
                (names, count + it.count)
            });
        let mut good = self.verdicts.iter().filter(|it| !is_said(it));
        if count > MOST_NAMES {
            let words = match (good.next(), good.next()) {
                (Some(one), None) => &one.words.text,
                _ => "good",
            };
            sentences.push(format!("The other {count}: {words}"));
        } else if !names.is_empty() {
            sentences.push(format!("Good: {}", names.join(", ")));
        }
        if self.tone == Tone::Bad && self.verdicts.iter().all(|it| it.tone != Tone::Bad) {
            let numbers: Vec<_> = self.grave.iter().map(|at| (at + 1).to_string()).collect();
            sentences.insert(0, format!("See {} below", numbers.join(", ")));
        }
        let needs: Vec<_> = self.needs.iter().map(|it| it.text.as_str()).collect();
        if !needs.is_empty() {
            sentences.push(format!("Needs: {}", needs.join("; ")));
        }
        sentences.iter().map(|it| sentence(it)).collect::<Vec<_>>().join(" ")
    }
}

fn judged(verdict: &Judged, question: &str) -> String {
    let words = &verdict.words.text;
    let is_named = |it: &String| !it.eq_ignore_ascii_case(question);
    if !verdict.about.iter().any(is_named) {
        return words.clone();
    }
    if verdict.is_of_all && verdict.count > MOST_NAMES {
        return format!("All {}: {words}", verdict.count);
    }
    format!("{}: {words}", capital(&verdict.about.join(", ")))
}

fn sentence(text: &str) -> String {
    let is_ended = text.ends_with(['.', '?', '!']);
    if is_ended { text.to_owned() } else { format!("{text}.") }
}

fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}

impl Fact {
    /// When it strikes and what it is about, before its words: what they don't say by themselves.
    pub fn head(&self) -> Vec<&str> {
        let mut head: Vec<_> = moment(self.moment).into_iter().collect();
        if !self.words.to_lowercase().contains(&self.about.to_lowercase()) {
            head.push(&self.about);
        }
        head
    }

    /// Its words, and of what else the same is true.
    pub fn told(&self) -> String {
        match self.also.as_slice() {
            [] => self.words.clone(),
            also => format!("{} The same of {}.", self.words, also.join(", ")),
        }
    }
}

fn moment(moment: Moment) -> Option<&'static str> {
    match moment {
        Moment::Plan => None,
        Moment::KeyOff => Some("key off"),
        Moment::KeyOn => Some("key on"),
        Moment::Cranking => Some("cranking"),
        Moment::Running => Some("running"),
        Moment::Failure => Some("after a failure"),
    }
}

impl Cured {
    /// What to do, or where that stands already.
    pub fn told(&self) -> String {
        let of = if self.of.is_empty() { String::new() } else { self.of.join(", ") + ": " };
        match self.said_at {
            Some(at) => format!("{of}As in {}.", at + 1),
            None => format!("{of}{}", self.words),
        }
    }
}

impl Line {
    /// What it is about, and its words.
    pub fn told(&self) -> String {
        let about = self.about.join(", ");
        let gap = if about.is_empty() { "" } else { ": " };
        capital(&format!("{about}{gap}{}", self.words.text))
    }
}

impl Bought {
    /// How many, of what, and where they go.
    pub fn told(&self) -> String {
        let count = match (self.count, self.unit) {
            (Some(count), Some(unit)) => format!("{count} {unit} "),
            (Some(count), None) if count > 1 => format!("{count} × "),
            _ => String::new(),
        };
        // of what is bought by the metre its colour tells where it goes, and of a ring its size
        let is_told = self.unit.is_some() || self.words.values.contains_key("bolts");
        let places = if is_told { String::new() } else { self.places.join(", ") };
        let gap = if places.is_empty() { "" } else { ": " };
        capital(&format!("{count}{}{gap}{places}", self.words.text))
    }
}

/// Pairs of numbers under two heads, each with the unit that all below it have.
#[derive(Clone, Debug, PartialEq)]
pub struct Pairs {
    /// What they are about.
    pub about: String,
    /// The heads of the rows.
    pub heads: [String; 2],
    /// The numbers.
    pub pairs: Vec<(String, String)>,
}

impl Setting {
    /// Its pairs of numbers, where it has some.
    pub fn pairs(&self) -> Option<Pairs> {
        let Self::Paired { about, heads, pairs } = self else { return None };
        let (upper, upper_unit) = split_unit(&heads[0].text, pairs.iter().map(|it| it.0.as_str()));
        let (lower, lower_unit) = split_unit(&heads[1].text, pairs.iter().map(|it| it.1.as_str()));
        let strip = |text: &str, unit: &str| text.strip_suffix(unit).unwrap_or(text).to_owned();
        let bare =
            |(one, other): &(String, String)| (strip(one, &upper_unit), strip(other, &lower_unit));
        Some(Pairs {
            about: capital(&about.join(", ")),
            heads: [upper, lower],
            pairs: pairs.iter().map(bare).collect(),
        })
    }
}

/// A head with the unit that all of these have that are numbers, and that unit as it stands behind each.
fn split_unit<'a>(head: &str, values: impl Iterator<Item = &'a str>) -> (String, String) {
    let units: Vec<_> = values.filter_map(|it| it.split_once(' ')).map(|(_, unit)| unit).collect();
    match units.split_first() {
        Some((first, rest))
            if first.chars().all(char::is_alphabetic) && rest.iter().all(|it| it == first) =>
        {
            (format!("{head}, {first}"), format!(" {first}"))
        }
        _ => (head.to_owned(), String::new()),
    }
}
