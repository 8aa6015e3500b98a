//! Plans as they may be typed: most of it what a person would type, some of it anything at all.

use proptest::{
    collection, option,
    prelude::*,
    sample::{Index, select},
};
use quietpin_core::{
    fields::{outputs, relays},
    plan::Plan,
    schema::{self, Kind, Part, Place},
};

/// Names of outputs: few, so that loads find theirs and names are given twice.
const OUTPUTS: &[&str] = &["A1", "A2", "B 7"];
const RELAYS: &[&str] = &["main", "pump relay"];

/// Rows of numbers: firing orders, angles, banks, cells of a click test; some with a slip in them.
const ROWS: &[&str] = &[
    "1-5-3-6-2-4",
    "1-3-4-2",
    "1 3 2",
    "1-2-4-5-3",
    "1-8-4-3-6-5-7-2",
    "1 6 5 4 3 2",
    "1-1-3-4",
    "1-2",
    "0 90 240 330 480 570",
    "0 120 240 360 480 600",
    "0 400 100",
    "0, 180, 360, 540",
    "1 3 5 / 2 4 6",
    "1 2 3 / 4 5 6",
    "1",
    "2",
    "3",
    "6",
    "17",
    "1 6",
    "-",
];

const NUMBERS: &[&str] = &[
    "0",
    "-0",
    "-1",
    "1e300",
    "-1e300",
    "1e-300",
    "1e400",
    "0.000001",
    "999999999999",
    "1,234",
    "2R4",
];

const UNITS: &[&str] = &[
    "", " V", " mA", "k", " ohm", " mH", " °C", " K", " rpm", " %", " ms", " m", " mm2", " AWG",
    " °",
];

/// Any plan: one that was typed field by field, or an example in which some fields were typed anew or emptied.
pub(super) fn plan() -> impl Strategy<Value = Plan> {
    prop_oneof![filled(), edited()]
}

/// An example plan with up to six fields changed: questions that a plan at random spoils are answered in it.
fn edited() -> impl Strategy<Value = Plan> {
    let examples = quietpin_tests::plans::ALL.iter();
    let examples = examples.map(|it| quietpin_core::plan::parse(it.text).expect(it.name));
    select(examples.collect::<Vec<Plan>>()).prop_flat_map(|plan| {
        let edit = select(places(&plan)).prop_flat_map(|place| (Just(place), text(place, 0.8)));
        (Just(plan), collection::vec(edit, 0..=6)).prop_map(|(mut plan, edits)| {
            for (place, text) in edits {
                assert!(plan.put(place, &text), "{} is a place in the plan", place.path());
            }
            plan
        })
    })
}

/// A plan with up to three outputs and loads.
fn filled() -> impl Strategy<Value = Plan> {
    let care = prop_oneof![5 => Just(0.97), 3 => Just(0.8), 1 => Just(0.1)];
    (0..=3_usize, 0..=3_usize, care).prop_flat_map(|(outputs, loads, care)| {
        let mut blank = Plan::default();
        blank.set_count(Part::Outputs, outputs);
        blank.set_count(Part::Loads, loads);
        blank.set_count(Part::Relays, loads);
        let places = places(&blank);
        let texts: Vec<_> = places.iter().map(|place| text(*place, care)).collect();
        (texts, anything()).prop_map(move |(texts, name)| {
            let mut plan = blank.clone().renamed(name);
            for (place, text) in places.iter().zip(&texts) {
                assert!(plan.put(*place, text), "{} is a place in the plan", place.path());
            }
            plan
        })
    })
}

/// The place of every field of a plan, in each record of its list, and of six cells of it.
pub(super) fn places(plan: &Plan) -> Vec<Place> {
    let records = |place: Place| (0..plan.count(place.part())).map(move |at| place.at(at));
    let cells = |place: Place| {
        (0..if place.field().is_list { 6 } else { 1 }).map(move |at| place.in_cell(at))
    };
    schema::places().flat_map(records).flat_map(cells).collect()
}

/// What is typed in a field: with care, something that fits; otherwise anything, or nothing.
fn text(place: Place, care: f64) -> BoxedStrategy<String> {
    let careless =
        prop_oneof![anything(), number(), Just("NaN".into()), Just("inf".into()), fitting(place)];
    option::weighted(0.85, option::weighted(care, fitting(place)))
        .prop_flat_map(move |typed| match typed {
            None => Just(String::new()).boxed(),
            Some(Some(text)) => Just(text).boxed(),
            Some(None) => careless.clone().boxed(),
        })
        .boxed()
}

/// What a hand types into any field: a number, a unit, a word, or nothing.
pub(super) fn short() -> impl Strategy<Value = String> {
    prop_oneof![
        2 => (select(&["1", "2", "12", "100", "0.5", "60", "7000"][..]), select(UNITS))
            .prop_map(|(number, unit)| format!("{number}{unit}")),
        2 => select(&["", "coils", "pump", "speed", "ignition", "half-bridge", "diode", "A1", "relay"][..])
            .prop_map(str::to_owned),
        1 => number(),
        1 => anything(),
    ]
}

/// Any text without braces, which mark the gaps of sentences.
fn anything() -> impl Strategy<Value = String> + Clone {
    prop_oneof![r"[^{}]{0,12}", r"[ -z|~]{0,12}", r"[0-9.,;:/+eE \-]{0,10}"]
}

/// Numbers at the edges of what can be written, with a unit of any kind.
fn number() -> impl Strategy<Value = String> + Clone {
    (select(NUMBERS), select(UNITS)).prop_map(|(number, unit)| format!("{number}{unit}"))
}

/// What a person who knows the answer types.
fn fitting(place: Place) -> BoxedStrategy<String> {
    match place.field().kind {
        Kind::Quantity { unit, low, high, .. } => quantity(unit, low, high).boxed(),
        Kind::Whole(low, high) => (low..=high).prop_map(|number| number.to_string()).boxed(),
        Kind::Choice(choices) => {
            any::<Index>().prop_map(|at| at.get(choices).code.to_owned()).boxed()
        }
        Kind::Row => select(ROWS).prop_map(str::to_owned).boxed(),
        Kind::NameIn(Part::Relays) => select(RELAYS).prop_map(str::to_owned).boxed(),
        Kind::NameIn(_) => select(OUTPUTS).prop_map(str::to_owned).boxed(),
        Kind::Text if place.at(0) == outputs::NAME.place() => {
            select(OUTPUTS).prop_map(str::to_owned).boxed()
        }
        Kind::Text if place.at(0) == relays::NAME.place() => {
            select(RELAYS).prop_map(str::to_owned).boxed()
        }
        Kind::Text => anything().boxed(),
    }
}

/// A quantity within its limits, as likely small as large, at times with a tolerance.
fn quantity(unit: &'static str, low: f64, high: f64) -> impl Strategy<Value = String> {
    let tolerance = prop_oneof![4 => Just(""), 1 => Just(" ±5%")];
    (0.0..=1.0, tolerance).prop_map(move |(share, tolerance): (f64, &str)| {
        let number = if low > 0.0 {
            low * (high / low).powf(share)
        } else {
            low + (high - low) * share * share * share
        };
        format!("{number:.3} {unit}{tolerance}")
    })
}
