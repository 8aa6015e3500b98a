//! The usual report: a page or two to take to the car.

use quietpin_core::{
    finding::{Moment, Severity},
    message::Message,
    report::{
        Tone,
        usual::{Assumption, Bought, Fact, Judged, Line, Setting, Usual, Verdicts},
    },
};
use textwrap::core::display_width;

use super::{USUAL_WIDTH, finding::word, sheet::Sheet};

/// What is done is ticked off.
const TICK: &str = "[ ] ";

/// Prints it: the answer first, what to do after it, and what to beware of at the end.
pub(super) fn print(sheet: &mut Sheet, usual: &Usual) {
    let name = usual.name.trim();
    sheet.heading(if name.is_empty() { "A plan without a name" } else { name }, '=');
    sheet.paragraph(0, &counted(&usual.facts));
    sheet.heading("Verdicts", '-');
    for question in &usual.questions {
        print_question(sheet, question);
    }
    if !usual.facts.is_empty() {
        sheet.heading("Findings", '-');
        for (at, fact) in usual.facts.iter().enumerate() {
            print_fact(sheet, at, fact);
        }
    }
    if !usual.enter.is_empty() {
        sheet.heading("Enter in the controller", '-');
        for setting in &usual.enter {
            print_setting(sheet, setting);
        }
    }
    if !usual.buy.is_empty() {
        sheet.heading("Buy", '-');
        for part in &usual.buy {
            sheet.item(0, TICK, &bought(part));
        }
    }
    print_proofs(sheet, usual);
    if !usual.cautions.is_empty() {
        sheet.heading("Take care", '-');
        for caution in &usual.cautions {
            sheet.item(0, "- ", &caution.text);
        }
    }
    print_assumed(sheet, &usual.assumed);
}

/// How many there are of what was found, the worst first.
fn counted(facts: &[Fact]) -> String {
    const KINDS: [(Severity, &str, &str); 4] = [
        (Severity::Danger, "Danger", "Dangers"),
        (Severity::Fault, "Fault", "Faults"),
        (Severity::Doubt, "Check", "Checks"),
        (Severity::Note, "Note", "Notes"),
    ];
    let count = |(severity, one, more): &(Severity, &str, &str)| {
        let count = facts.iter().filter(|it| it.severity == *severity).count();
        (count > 0).then(|| format!("{count} {}", if count == 1 { one } else { more }))
    };
    let counts: Vec<_> = KINDS.iter().filter_map(count).collect();
    let is_grave = facts.iter().any(|it| it.severity <= Severity::Fault);
    match (counts.is_empty(), is_grave) {
        (true, _) => "Nothing was found. What is open below is not known to be right.".to_owned(),
        (false, true) => format!("{}.", counts.join(", ")),
        (false, false) => format!("No Danger, no Fault. {}.", counts.join(", ")),
    }
}

/// A sign that is no colour.
fn sign(tone: Tone) -> &'static str {
    match tone {
        Tone::Bad => "NO",
        Tone::Doubtful => "check",
        Tone::Open => "open",
        Tone::Good => "ok",
    }
}

fn print_question(sheet: &mut Sheet, question: &Verdicts) {
    let mark = format!("{:<6}{:<10}", sign(question.tone), question.name);
    // where something is amiss, of what is right is said that it is
    let is_said = |it: &&Judged| question.tone == Tone::Good || it.tone != Tone::Good;
    let said = question.verdicts.iter().filter(is_said);
    let mut sentences: Vec<_> = said.map(|it| judged(it, question.name)).collect();
    let rest = question.verdicts.iter().filter(|it| !is_said(it));
    let (names, count): (Vec<_>, usize) = rest.fold((Vec::new(), 0), |(mut names, count), it| {
        names.extend(it.about.iter().map(String::as_str));
        (names, count + it.count)
    });
    let mut good = question.verdicts.iter().filter(|it| !is_said(it));
    if count > MOST_NAMES {
        let words = match (good.next(), good.next()) {
            (Some(one), None) => &one.words.text,
            _ => "good",
        };
        sentences.push(format!("The other {count}: {words}"));
    } else if !names.is_empty() {
        sentences.push(format!("Good: {}", names.join(", ")));
    }
    if question.tone == Tone::Bad && question.verdicts.iter().all(|it| it.tone != Tone::Bad) {
        let numbers: Vec<_> = question.grave.iter().map(|at| (at + 1).to_string()).collect();
        sentences.insert(0, format!("See {} below", numbers.join(", ")));
    }
    let needs: Vec<_> = question.needs.iter().map(|it| it.text.as_str()).collect();
    if !needs.is_empty() {
        sentences.push(format!("Needs: {}", needs.join("; ")));
    }
    let text: String = sentences.iter().map(|it| sentence(it) + " ").collect();
    sheet.item(0, &mark, text.trim_end());
}

/// More names than these are counted where the verdict holds of all.
const MOST_NAMES: usize = 3;

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

fn print_fact(sheet: &mut Sheet, at: usize, fact: &Fact) {
    let mark = format!("{}. ", at + 1);
    let mut head = vec![word(fact.severity).to_owned()];
    head.extend(moment(fact.moment).map(str::to_owned));
    let words = &fact.words;
    if !words.to_lowercase().contains(&fact.about.to_lowercase()) {
        head.push(fact.about.clone());
    }
    let also = match fact.also.as_slice() {
        [] => String::new(),
        also => format!(" The same of {}.", also.join(", ")),
    };
    sheet.item(0, &mark, &format!("{}: {words}{also}", head.join(", ")));
    for cured in &fact.cures {
        let of = if cured.of.is_empty() { String::new() } else { cured.of.join(", ") + ": " };
        let words = match cured.said_at {
            Some(at) => format!("As in {}.", at + 1),
            None => cured.words.clone(),
        };
        sheet.item(mark.len(), "> ", &format!("{of}{words}"));
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

fn print_setting(sheet: &mut Sheet, setting: &Setting) {
    match setting {
        Setting::Said(line) => print_line(sheet, line),
        Setting::Paired { about, heads, pairs } => {
            let mark = format!("{TICK}{}: ", capital(&about.join(", ")));
            print_pairs(sheet, &mark, heads, pairs);
        }
    }
}

fn print_line(sheet: &mut Sheet, line: &Line) {
    let about = line.about.join(", ");
    let gap = if about.is_empty() { "" } else { ": " };
    sheet.item(0, TICK, &capital(&format!("{about}{gap}{}", line.words.text)));
}

/// Pairs under one another, in as many rows as they take.
fn print_pairs(sheet: &mut Sheet, mark: &str, heads: &[Message; 2], pairs: &[(String, String)]) {
    let (upper, upper_unit) = split_unit(&heads[0].text, pairs.iter().map(|it| it.0.as_str()));
    let (lower, lower_unit) = split_unit(&heads[1].text, pairs.iter().map(|it| it.1.as_str()));
    let (upper, lower) = (upper.as_str(), lower.as_str());
    let bare = |(one, other): &(String, String)| {
        let strip = |text: &str, unit: &str| text.strip_suffix(unit).unwrap_or(text).to_owned();
        (strip(one, &upper_unit), strip(other, &lower_unit))
    };
    let pairs: Vec<_> = pairs.iter().map(bare).collect();
    let head = display_width(upper).max(display_width(lower));
    let room = USUAL_WIDTH.saturating_sub(display_width(mark) + head);
    let wide = |(one, other): &(String, String)| display_width(one).max(display_width(other));
    let column = pairs.iter().map(wide).max().unwrap_or_default() + 2;
    let right =
        |text: &str| format!("{}{text}", " ".repeat(column - display_width(text).min(column)));
    let left = |text: &str| format!("{text}{}", " ".repeat(head - display_width(text).min(head)));
    let mut mark = mark.to_owned();
    for row in pairs.chunks((room / column).max(1)) {
        let (above, below): (String, String) =
            row.iter().map(|(one, other)| (right(one), right(other))).unzip();
        sheet.line(&format!("{mark}{}{above}", left(upper)));
        mark = " ".repeat(display_width(&mark));
        sheet.line(&format!("{mark}{}{below}", left(lower)));
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

fn bought(part: &Bought) -> String {
    let count = part.count.filter(|it| *it > 1).map(|it| format!("{it} × ")).unwrap_or_default();
    let places = part.places.join(", ");
    let gap = if places.is_empty() { "" } else { ": " };
    capital(&format!("{count}{}{gap}{places}", part.words.text))
}

fn print_proofs(sheet: &mut Sheet, usual: &Usual) {
    if usual.pins.is_empty() && usual.prove.is_empty() {
        return;
    }
    sheet.heading("Prove at the car", '-');
    if !usual.pins.is_empty() {
        sheet.paragraph(
            0,
            "Bare pins first, before a load is plugged in: key on, meter to ground, and the resistor \
             named connected to the pin, since a floating pin reads anything.",
        );
        usual.pins.iter().for_each(|line| print_line(sheet, line));
        let lamps = usual.lamps.iter();
        let lamps: Vec<_> =
            lamps.map(|line| format!("{} at {}", line.words.text, line.about.join(", "))).collect();
        if !lamps.is_empty() {
            let lamps = lamps.join("; ");
            sheet.paragraph(4, &format!("A test lamp of 12 V, 3 W in its stead: {lamps}."));
        }
    }
    usual.prove.iter().for_each(|line| print_line(sheet, line));
}

/// How many, and those by name about which something was found.
fn print_assumed(sheet: &mut Sheet, assumed: &[Assumption]) {
    let usual = assumed.iter().filter(|it| !it.is_as_another);
    let count = usual.clone().count();
    if count == 0 {
        return;
    }
    let found: Vec<_> = usual
        .filter(|it| it.is_found)
        .map(|it| format!("{} ({})", it.label, it.value.as_ref().map_or("", |it| &it.shown)))
        .collect();
    let found = match found.as_slice() {
        [] => String::new(),
        found => format!(" Findings depend on: {}.", found.join("; ")),
    };
    sheet.blank();
    let values = if count == 1 { "value" } else { "values" };
    sheet.paragraph(
        0,
        &format!("Assumed: {count} usual {values} for blanks; --full lists them.{found}"),
    );
}
