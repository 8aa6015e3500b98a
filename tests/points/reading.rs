//! How fields are read, and what is said where they can't be.

use std::collections::BTreeMap;

use quietpin_core::{
    plan::Plan,
    questions,
    report::{Answer, Memory, Report, Tone, untried},
    schema::{self, Kind, Place},
    whole_car,
};

/// The answers of a report, by their question and what they are about; a second about the same by its number.
fn answers(report: &Report) -> BTreeMap<String, &Answer> {
    let mut all = BTreeMap::new();
    for section in &report.sections {
        for answer in &section.answers {
            let name = |at: usize| format!("{}/{at}/{}", section.id, answer.subject);
            let free = (0..99).map(name).find(|name| !all.contains_key(name));
            all.insert(free.expect("a name is free"), answer.as_ref());
        }
    }
    all
}

fn with(place: Place, text: &str) -> Plan {
    let mut plan = whole_car();
    plan.put(place, text);
    plan
}

/// Texts that a field takes, far from what is usual.
fn others(place: Place) -> Vec<String> {
    match place.field().kind {
        Kind::Quantity { low, high, unit, .. } => {
            let between = |share: f64| low + (high - low) * share;
            [0.02, 0.7].map(|share| format!("{} {unit}", between(share))).to_vec()
        }
        Kind::Choice(table) => table.iter().map(|it| it.code.to_owned()).collect(),
        Kind::Whole(low, high) => vec![low.to_string(), high.to_string()],
        Kind::Text | Kind::Row | Kind::NameIn(_) => Vec::new(),
    }
}

/// What an answer says of what could not be read.
fn unread(answer: &Answer) -> Option<&str> {
    answer.to_do.iter().find(|it| it.code == "field.unread").map(|it| it.text.as_str())
}

/// What another question rests on in other cars than this one.
const IN_OTHER_CARS: [&str; 7] = [
    "light.seen.0",
    "controller.after_key_off",
    "controller.supply_off",
    "controller.locked_advance",
    "controller.cranking_dwell",
    "wheels.cam_teeth",
    "switched_feeds.off_resistance",
];

/// Source: the rule is the project's own: an answer that would be another by another text says what was taken for it.
#[test]
fn each_answer_that_rests_on_a_field_that_cannot_be_read_says_what_is_taken_and_is_no_yes() {
    let (mut wrong, mut said) = (Vec::new(), 0);
    let mut memory = Memory::detailed();
    let mut report = |plan: Plan| untried(&mut memory, &plan);
    for place in schema::places().filter(|it| !others(*it).is_empty()) {
        let label = place.field().label;
        let spoiled = report(with(place, "???"));
        let spoiled = answers(&spoiled);
        let others: Vec<_> = others(place).iter().map(|it| report(with(place, it))).collect();
        let others: Vec<_> = others.iter().map(answers).collect();
        let mut asked = BTreeMap::<String, (bool, bool)>::new();
        for (name, answer) in &spoiled {
            let same = |other: &Answer| {
                let own = answer.to_do.iter().filter(|it| it.code != "field.unread");
                own.eq(&other.to_do)
                    && other.verdict.message == answer.verdict.message
                    && other.why == answer.why
                    && other.figures == answer.figures
            };
            let rests = others.iter().any(|it| it.get(name).is_none_or(|it| !same(it)));
            let says = unread(answer).is_some_and(|it| it.contains(label));
            said += usize::from(says);
            if says && answer.verdict.tone == Tone::Good {
                wrong.push(format!("{}: {name} is still a yes", place.path()));
            }
            if rests && !says && answer.verdict.tone != Tone::Open {
                wrong.push(format!("{}: {name} rests on it", place.path()));
            }
            let question = name.split('/').next().expect("a question").to_owned();
            let known = asked.entry(question).or_insert((false, false));
            *known = (known.0 || rests, known.1 || says);
        }
        for (question, (rests, says)) in asked {
            let own = questions::ALL.iter().filter(|it| it.parts.contains(&place.part()));
            let is_own = own.into_iter().any(|it| it.id == question);
            if says && !rests && !is_own && !IN_OTHER_CARS.contains(&place.path().as_str()) {
                wrong.push(format!("{}: no answer of {question} rests on it", place.path()));
            }
        }
    }
    assert!(said > 100, "only {said} answers say what is taken");
    assert!(wrong.is_empty(), "{} of {said}:\n{}", wrong.len(), wrong.join("\n"));
}

fn resistance(text: &str) -> Option<quietpin_core::quantity::Value> {
    let place = Place::at_path("injectors.resistance").expect("a place");
    let report = untried(&mut Memory::default(), &with(place, text));
    report.fields.get("injectors.resistance").expect("the field").value.clone()
}

/// By hand: 1/1000 of 2500 A is possible for an output (0.05 to 50 A), 2500 A is not; a speed of 7 rpm is below all limits of
/// a highest speed. 18 AWG is 0.823 mm² (ASTM B258), 15 ft are 4.572 m, 52 lb/h are 6.55 g/s.
#[test]
fn what_a_fitter_types_is_understood_where_it_can_mean_one_thing() {
    for (path, text, shown) in [
        ("injectors.output_limit", "2.500 A", "2.5 A"),
        ("injectors.output_limit", "2,500", "2.5 A"),
        ("engine.highest_speed", "7.000", "7000 rpm"),
        ("injectors.resistance", "14-16", "14 Ω to 16 Ω"),
        ("injectors.resistance", "~14", "14 Ω"),
        ("injectors.resistance", "about 14 ohm", "14 Ω"),
        ("cranking.speed", "180-220", "180 rpm to 220 rpm"),
        ("injectors.wire_size", "18ga", "0.823 mm²"),
        ("injectors.wire_size", "18 gauge", "0.823 mm²"),
        ("injectors.wire_size", "#18", "0.823 mm²"),
        ("injectors.wire_length", "15 feet", "4.57 m"),
        ("injectors.wire_length", "15'", "4.57 m"),
        ("injectors.wire_length", "12 inches", "305 mm"),
        ("fuel.flow", "550 cc", "550 cc/min"),
        ("fuel.flow", "52 lb", "52 lb/h, 6.55 g/s"),
        ("engine.cylinders", "6 cyl", "6"),
        ("engine.order", "1.5.3.6.2.4", "1-5-3-6-2-4"),
    ] {
        let place = Place::at_path(path).expect(path);
        let report = untried(&mut Memory::default(), &with(place, text));
        let found = report.fields[path].value.as_ref().map(|it| it.shown.as_str());
        assert_eq!(found, Some(shown), "{path}: {text}");
    }
}

#[test]
fn what_can_mean_two_things_or_nothing_is_asked_back() {
    for text in ["6'2\"", "12 14", "14-", "about", "12 ohm?"] {
        assert_eq!(resistance(text), None, "{text}");
    }
    let place = Place::at_path("injectors.resistance").expect("a place");
    for (text, asked) in [("12k", "Is 12 Ω meant?"), ("12 mohm", "Is 12 Ω meant?")] {
        let report = untried(&mut Memory::default(), &with(place, text));
        let problem = report.fields["injectors.resistance"].problem.as_ref().expect(text);
        assert!(problem.text.ends_with(asked), "{text}: {}", problem.text);
    }
    let beyond = untried(&mut Memory::default(), &with(place, "12 M"));
    let problem = beyond.fields["injectors.resistance"].problem.as_ref().expect("12 M");
    assert!(!problem.text.contains("meant"), "{}", problem.text);
}
