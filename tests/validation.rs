//! The record of what was compared with what: `tests/VALIDATION.md`, written from what the comparisons say of themselves.
//!
//! Source: each row names its own.

#![expect(clippy::expect_used, clippy::indexing_slicing, reason = "a test fails by them")]

use std::{
    collections::{BTreeMap, BTreeSet},
    fmt::Write as _,
};

use quietpin_core::{
    checked, explained, plan, questions,
    report::{Report, report},
    schema::{self, Place},
    whole_car,
    working::Step,
};
use quietpin_tests::{Checked, blessed, plans, reference};

use crate::{
    bus, circuits, coils, cranking, engine, feeds, firing, fuel, fusing, injectors, outputs,
    points, sensors, trigger, wires,
};

/// Everything that is compared, each by the function that its own test calls.
fn all() -> Vec<Checked> {
    let mut all = vec![firing::fired(), firing::companions(), engine::cranks()];
    all.extend([
        injectors::tables::series(),
        injectors::tables::copper_factors(),
        injectors::tables::gauges(),
        points::injectors::stranded(),
        injectors::remedies::sold(),
        circuits::current_in_time(),
        circuits::times_of_a_coil(),
        fuel::tables::flows(),
        fuel::tables::blends(),
    ]);
    all.extend(circuits::operating_points());
    all.extend(at_random());
    all.extend([
        outputs::hand::relays(),
        outputs::plans::hot_coils(),
        outputs::plans::terminals(),
        trigger::cases::teeth(),
        wires::terminals(),
        wires::sizes(),
    ]);
    all.extend(circuits::capacitor());
    all.extend([cranking::teeth(), starts(), coils::cases::dwells()]);
    all.extend(circuits::textbook::examples());
    all.extend(charges());
    all.extend([
        feeds::fused::bears(),
        feeds::grounds::come_back(),
        fusing::gates(),
        fusing::rerated(),
        fusing::strands(),
        fusing::most_of_a_wire(),
    ]);
    all.push(assigned());
    all.extend(heated());
    all.extend(shorted());
    all.extend(sensors::tables::ten_kiloohms());
    all.extend(sensors::tables::four_terms());
    all.extend(sensors::tables::coolant());
    all.extend([
        bus::frames::counts(),
        bus::frames::one_by_one(),
        bus::pair::terminations(),
        bus::reach::lengths(),
        sensors::tables::windows(),
        sensors::tables::coefficients(),
        sensors::tables::platinum(),
        sensors::tables::type_k(),
    ]);
    all
}

/// The cells of the first row of a table that begins so.
fn cells(text: &str, begins: &str) -> Vec<String> {
    let line = text.lines().find(|it| it.starts_with(begins)).expect(begins);
    line.trim_matches('|').split('|').map(|it| it.trim().to_owned()).collect()
}

const RANDOM: &str = "ngspice 39 at random, and a referee in 32 digits";

/// What `against_ngspice.md` says of each family of circuits that has an answer.
fn at_random() -> Vec<Checked> {
    let text = reference("circuits/against_ngspice.md");
    let families = [
        ("resistors", "Random circuits of resistors"),
        ("output stages, exponential diodes", "Random outputs, exponential diodes"),
        ("output stages, threshold diodes", "Random outputs, threshold diodes"),
    ];
    let of = |(family, what): (&str, &'static str)| {
        let cells = cells(&text, &format!("| {family} |"));
        let apart = format!("{} of 1e-9, relative, from the referee", cells[6]);
        let cases = cells[3].parse().expect("a count");
        Checked { question: "outputs", what, against: RANDOM, cases, apart }
    };
    families.map(of).to_vec()
}

/// The first number of a line, and the text after some words of it.
fn line<'a>(text: &'a str, holds: &str) -> (usize, &'a str) {
    let counts = |it: &&str| it.starts_with(|c: char| c.is_ascii_digit()) && it.contains(holds);
    let line = text.lines().find(counts).expect(holds);
    let first = line.split(' ').next().and_then(|it| it.parse().ok()).expect("a count");
    (first, line.split("furthest apart ").nth(1).unwrap_or_default().trim_end_matches('.'))
}

const SCIPY: &str = "scipy 1.17.1, DOP853 at 1e-12";

/// What `against_scipy.md` says of coils at random.
fn charges() -> Vec<Checked> {
    let text = reference("against_scipy.md");
    let (cases, _) = line(&text, " coils, ");
    let rows = [
        ("current", "Current of coils at random"),
        ("charge", "Charge through coils at random"),
        ("integral of the square", "Heat of coils at random"),
        ("energy in the switch", "Heat of igniters at random"),
    ];
    let of = |(row, what): (&str, &'static str)| {
        let apart = format!("{}, relative", cells(&text, &format!("| {row} |"))[1]);
        Checked { question: "coils", what, against: SCIPY, cases, apart }
    };
    rows.map(of).to_vec()
}

/// And of starts.
fn starts() -> Checked {
    let text = reference("against_scipy.md");
    let (cases, apart) = line(&text, " starts ");
    let what = "Crank angles at the teeth of starts at random";
    Checked { question: "cranking", what, against: SCIPY, cases, apart: apart.to_owned() }
}

/// And of assignments.
fn assigned() -> Checked {
    let text = reference("against_scipy.md");
    let (cases, _) = line(&text, " assignments ");
    let otherwise = text.lines().find(|it| it.contains(" assignments ")).expect("a line");
    let apart = otherwise.rsplit(", ").next().unwrap_or_default().trim_end_matches('.');
    let what = "Assignments of jobs to places at random";
    let against = "scipy 1.17.1, linear_sum_assignment";
    Checked { question: "pins", what, against, cases, apart: apart.to_owned() }
}

/// What `against_supply.md` says of heated wires at random.
fn heated() -> Vec<Checked> {
    let text = reference("against_supply.md");
    let rows = [
        ("time to the overload of its class", "Time of an overload of wires at random"),
        ("time to the temperature of a short", "Time of a short in wires at random"),
        ("temperature that it settles at", "Temperature of wires at random"),
    ];
    let of = |(row, what): (&str, &'static str)| {
        let cells = cells(&text, &format!("| {row} |"));
        let cases = cells[1].parse().expect("a count");
        Checked { question: "feeds", what, against: SCIPY, cases, apart: cells[2].clone() }
    };
    rows.map(of).to_vec()
}

/// And of shorts and drops.
fn shorted() -> Vec<Checked> {
    let text = reference("against_supply.md");
    let (cases, _) = line(&text, " feeds by ngspice");
    let rows = [
        ("current of a dead short at the other end", "Shorts at the other end at random"),
        ("voltage across the load", "Voltage behind wires at random"),
    ];
    let of = |(row, what): (&str, &'static str)| {
        let apart = format!("{}, relative", cells(&text, &format!("| {row} |"))[1]);
        Checked { question: "feeds", what, against: "ngspice 39", cases, apart }
    };
    rows.map(of).to_vec()
}

/// What is known not to be in the answers.
const NOT_MODELLED: [(&str, &str); 12] = [
    ("firing", "Cams that are moved while the engine runs; cylinders that are switched off."),
    (
        "injectors",
        "Injectors driven above the battery's voltage (direct injection); the force of the fuel on the needle; iron that \
         saturates; the heat of a winding by its own current.",
    ),
    (
        "outputs",
        "Wires as antennas, crosstalk, ground bounce at switching; the ageing of contacts.",
    ),
    (
        "pins",
        "The channels of coils and injectors, which are told by their numbers; two wires in one pin of a connector.",
    ),
    (
        "trigger",
        "Wheels that wobble, magnetic stray fields, tooth forms; the filters of an input beyond one resistor and capacitor.",
    ),
    (
        "sensors",
        "The filters of an input and its own resistance; noise; sensors that age; how long one takes to follow; tracks between the \
         readings.",
    ),
    (
        "cranking",
        "The starter's own curve and the battery's chemistry: speeds and voltages are used as typed.",
    ),
    (
        "coils",
        "Iron that saturates; the secondary winding, the spark's voltage under pressure; heat that spreads between coils.",
    ),
    (
        "feeds",
        "Arcs; the heat that an insulation stores; bundles that are hot in one place; the resistance of connectors, and what a \
         fuse and a contact lose.",
    ),
    ("standing", "The capacity of a battery in the cold."),
    (
        "bus",
        "Frames with a flexible data rate (CAN FD); how long a frame of low rank waits; reflections as such, capacitance, \
         ground shift between devices.",
    ),
    ("wires", "How a wire stretches, and what a bend takes: ways are used as typed."),
];

/// The question that a field is asked with.
fn asked_with(place: Place) -> Option<&'static str> {
    let part = place.part();
    let own = questions::ALL.iter().find(|it| it.id == part.name());
    own.or_else(|| questions::ALL.iter().rfind(|it| it.parts.contains(&part))).map(|it| it.id)
}

fn is_practice(source: &str) -> bool {
    source.contains("common practice")
}

fn is_memory(source: &str) -> bool {
    source.contains("from memory")
}

/// The steps of all example plans, by their question.
fn steps() -> BTreeMap<&'static str, BTreeSet<(String, String)>> {
    let mut all = BTreeMap::<_, BTreeSet<_>>::new();
    for example in plans::ALL {
        let report: Report = report(&plan::parse(example.text).expect(example.name));
        for section in &report.sections {
            let steps = section.answers.iter().flat_map(|answer| {
                let figures = answer.figures.iter().flat_map(|it| &it.working);
                figures.chain(answer.tables.iter().flat_map(|it| &it.working))
            });
            let known = |it: &Step| (it.symbols.to_owned(), it.source.to_owned());
            all.entry(section.id).or_default().extend(steps.map(known));
        }
    }
    all
}

fn listed(text: &mut String, what: &str, list: &BTreeSet<String>) {
    if !list.is_empty() {
        let list = list.iter().map(String::as_str).collect::<Vec<_>>().join("; ");
        let _ = writeln!(text, "- {what}: {list}.");
    }
}

/// What rests on nothing better, as the program itself says it.
fn practice(question: &str, steps: &BTreeSet<(String, String)>) -> String {
    let mut text = String::new();
    let is_of = |place: &Place| asked_with(*place).unwrap_or("outputs") == question;
    for (name, holds) in
        [("Common practice", is_practice as fn(&str) -> bool), ("From memory", is_memory)]
    {
        let taken = schema::places().filter(is_of).filter_map(|place| {
            let (field, assumed) = (place.field(), place.field().assumed?);
            holds(place.basis()).then(|| format!("{} ({assumed})", field.label))
        });
        listed(&mut text, &format!("{name}, assumed for blanks"), &taken.collect());
        let worked = steps.iter().filter(|(_, source)| holds(source));
        let worked = worked.map(|(symbols, _)| format!("`{symbols}`"));
        listed(&mut text, &format!("{name}, in the working"), &worked.collect());
        let of = |code: &str| {
            let word = code.split('.').next().unwrap_or_default();
            let word = match word {
                "engine" => "firing",
                "fuel" => "injectors",
                word => word,
            };
            word == question
        };
        let judged = explained::explanations().filter(|it| of(it.code) && holds(it.source));
        listed(
            &mut text,
            &format!("{name}, in findings"),
            &judged.map(|it| it.code.to_owned()).collect(),
        );
    }
    text
}

fn written() -> String {
    let mut text = "# What was compared with what\n\nWritten by `cargo xtask bless` from what the comparisons say of \
        themselves; where the files of each source come from stands in `reference/SOURCES.md`. Differences to two digits.\n"
        .to_owned();
    let (all, steps) = (all(), steps());
    for question in questions::ALL {
        let _ = write!(text, "\n## {}\n\n", question.id);
        let rows: Vec<_> = all.iter().filter(|it| it.question == question.id).collect();
        if !rows.is_empty() {
            text.push_str("| what | with what | numbers | furthest apart, of what may be |\n");
            text.push_str("| --- | --- | ---: | --- |\n");
            text.extend(rows.iter().map(|it| it.row()));
            text.push('\n');
        }
        text.push_str(&practice(question.id, steps.get(question.id).unwrap_or(&BTreeSet::new())));
        let lacks =
            NOT_MODELLED.iter().find(|(id, _)| *id == question.id).expect("each lacks something");
        let _ = writeln!(text, "- Not modelled: {}", lacks.1);
    }
    text
}

#[test]
fn the_record_says_what_the_comparisons_say() {
    blessed("VALIDATION.md", &written());
}

#[test]
fn each_answer_leads_to_the_record_of_its_question() {
    let feeds = plans::ALL.iter().find(|it| it.name == "feeds-suits").expect("a plan");
    for plan in [whole_car(), plan::parse(feeds.text).expect("a plan")] {
        for section in &report(&plan).sections {
            for answer in &section.answers {
                let own = checked::of(section.id);
                assert_eq!(checked::about(&answer.subject), own, "{}", answer.subject);
            }
            let lines = checked::of(section.id).into_iter().flat_map(checked::lines).count();
            let rows = all().iter().filter(|it| it.question == section.id).count();
            assert!(lines > rows, "{}: {lines} lines for {rows} rows", section.id);
        }
    }
}

#[test]
fn each_comparison_stands_in_the_record_of_its_question_and_in_no_other() {
    for it in all() {
        for question in questions::ALL {
            let record = checked::of(question.id).expect("each question has a record");
            let stands = record.contains(&it.row());
            assert_eq!(stands, it.question == question.id, "{}: {}", question.id, it.what);
        }
    }
    assert_eq!(checked::of("nothing"), None);
}
