//! The plan that costs most, climbed to: fields at their limits, changed at random, and what cost more kept.
#![expect(clippy::indexing_slicing, reason = "what is drawn from is not empty")]

use quietpin_core::{
    counted::Done,
    fields::{channels, cranking, engine, loads, outputs, relays, wheels},
    plan::Plan,
    schema::{self, Field, Kind, Part, Place},
};

use crate::random::Random;

/// About how long it takes natively, in nanoseconds; measured.
#[must_use]
pub fn nanoseconds(done: &Done) -> u64 {
    50_000 * done.reports + 12_000 * done.networks + 14 * done.teeth + 20_000 * done.connections
}

/// As many as a list may have.
const MANY: usize = 64;

/// Rows that are typed in the fields that take one.
const ROWS: &[&str] = &[
    "",
    "1",
    "1-2",
    "1-3-4-2",
    "1-5-3-6-2-4",
    "1-2-3-4-5-6-7-8-9-10-11-12-13-14-15-16",
    "2-3-4-5-6-7-8-9-10-11-12-13-14-15-16-1",
    "16-15-14-13-12-11-10-9-8-7-6-5-4-3-2-1",
    "0 90 240 330 480 570",
    "0 120 240",
    "90",
];

/// Plans of each kind that is known to cost something.
#[must_use]
pub fn beginnings() -> Vec<(String, Plan)> {
    let mut plans = vec![
        ("cranking".to_owned(), start(1)),
        ("relays".to_owned(), start(MANY)),
        ("engine".to_owned(), every_field()),
        ("chatter".to_owned(), chatter(1)),
        ("chatters".to_owned(), chatter(MANY)),
        ("firing".to_owned(), firing()),
        (
            "trigger".to_owned(),
            of_parts(&[
                Part::Engine,
                Part::Wheels,
                Part::Trigger,
                Part::CrankSensor,
                Part::CamSensor,
                Part::TriggerInput,
                Part::Battery,
            ]),
        ),
        (
            "injectors".to_owned(),
            of_parts(&[
                Part::Engine,
                Part::Injectors,
                Part::SecondInjectors,
                Part::Fuel,
                Part::Battery,
                Part::Temperatures,
            ]),
        ),
        (
            "coils".to_owned(),
            of_parts(&[
                Part::Engine,
                Part::Coils,
                Part::Controller,
                Part::Battery,
                Part::Temperatures,
            ]),
        ),
    ];
    for joined in [2, 3, 4, 8, MANY] {
        plans.push((format!("chain-{joined}"), hung(joined, Shape::Chain)));
        plans.push((format!("shared-{joined}"), hung(joined, Shape::Shared)));
    }
    plans.push(("alone".to_owned(), hung(MANY, Shape::Alone)));
    plans.push(("nowhere".to_owned(), hung(MANY, Shape::Nowhere)));
    plans.push(("remedies".to_owned(), wrong()));
    plans
}

/// A start with many teeth, and so many relays that are switched at a speed.
fn start(count: usize) -> Plan {
    let mut plan = Plan::default();
    plan.put(engine::CYLINDERS, "1");
    plan.put(engine::ORDER, "1");
    plan.put(cranking::SPEED, "900 to 1000 rpm");
    plan.put(cranking::RUN_UP, "0 to 5000 ms");
    plan.put(wheels::CRANK_TEETH, "360");
    for nth in 0..count {
        let at = plan.add(Part::Relays);
        plan.put(relays::PURPOSE.at(at), if nth == 0 { "coils" } else { "pump" });
        plan.put(relays::RELAY_ON_AT.at(at), "100 rpm");
    }
    plan
}

/// Everything that an engine, its sensors and its parts may be asked, and no loads.
fn every_field() -> Plan {
    let mut plan = Plan::default();
    for place in schema::places().filter(|place| !place.part().is_list()) {
        plan.put(place, &place.field().example());
    }
    plan.put(engine::CYLINDERS, "16");
    plan.put(engine::ORDER, "1-2-3-4-5-6-7-8-9-10-11-12-13-14-15-16");
    plan
}

/// Relays that open again and again through a start that takes as long as it may: deep dips, and a release close below.
fn chatter(count: usize) -> Plan {
    let mut plan = start(count);
    plan.put(engine::CYLINDERS, "16");
    plan.put(engine::ORDER, "1-2-3-4-5-6-7-8-9-10-11-12-13-14-15-16");
    plan.put(cranking::DIP, "60 to 95 %");
    plan.put(cranking::COLD_SPEED, "1000 rpm");
    plan.put(cranking::WEAK_SPEED, "1000 rpm");
    plan.put(cranking::RUN_UP, "4990 to 5000 ms");
    for at in 0..count {
        plan.put(relays::RELAY_ON_AT.at(at), &format!("{} rpm", 200 + at));
        plan.put(relays::RELAY_OFF_BELOW.at(at), &format!("{} rpm", 190 + at));
    }
    plan
}

/// Sixteen cylinders on half as many channels, each lead where the next belongs.
fn firing() -> Plan {
    let mut plan = every_field();
    plan.put(channels::COILS_WIRED, "2-3-4-5-6-7-8-9-10-11-12-13-14-15-16-1");
    plan.put(channels::INJECTORS_WIRED, "2-3-4-5-6-7-8-9-10-11-12-13-14-15-16-1");
    plan
}

/// Some parts with an example in every field.
fn of_parts(parts: &[Part]) -> Plan {
    let mut plan = Plan::default();
    for place in schema::places().filter(|place| parts.contains(&place.part())) {
        plan.put(place, &place.field().example());
    }
    plan
}

/// Loads of which each is wrong in a way that an edit might mend.
fn wrong() -> Plan {
    let mut plan = hung(MANY, Shape::Alone);
    for at in 0..MANY {
        plan.put(outputs::STAGE.at(at), "open-drain");
        plan.put(outputs::CURRENT_LIMIT.at(at), "0.5 A");
        plan.put(loads::KIND.at(at), "solenoid");
        plan.put(loads::FAR_END.at(at), "battery");
        plan.put(loads::RESISTANCE.at(at), "5 to 10 ohm");
        plan.put(loads::SUPPRESSION.at(at), "none");
    }
    plan
}

/// How loads hang on outputs.
#[derive(Clone, Copy)]
enum Shape {
    /// Each between two outputs.
    Chain,
    /// All on one.
    Shared,
    /// Each on its own.
    Alone,
    /// Each on none.
    Nowhere,
}

fn hung(count: usize, shape: Shape) -> Plan {
    let mut plan = Plan::default();
    plan.set_count(Part::Outputs, count);
    plan.set_count(Part::Loads, count);
    for at in 0..count {
        plan.put(outputs::NAME.at(at), &format!("A{at}"));
        plan.put(outputs::STAGE.at(at), "half-bridge");
        plan.put(loads::NAME.at(at), &format!("load {at}"));
        let (own, far) = match shape {
            Shape::Chain => (format!("A{at}"), format!("A{}", at + 1)),
            Shape::Shared => ("A0".to_owned(), String::new()),
            Shape::Alone => (format!("A{at}"), String::new()),
            Shape::Nowhere => ("?".to_owned(), String::new()),
        };
        plan.put(loads::OUTPUT.at(at), &own);
        plan.put(loads::FAR_END.at(at), if far.is_empty() { "relay" } else { "output" });
        plan.put(loads::FAR_OUTPUT.at(at), &far);
    }
    plan
}

/// Changes a plan again and again, and keeps what costs more; what it costs then.
pub fn climb<Cost: PartialOrd>(
    mut plan: Plan,
    tries: u32,
    random: &mut Random,
    cost: impl Fn(&Plan) -> Cost,
) -> (Plan, Cost) {
    let mut most = cost(&plan);
    for _ in 0..tries {
        let mut other = plan.clone();
        for _ in 0..=random.below(3) {
            change(&mut other, random);
        }
        let costs = cost(&other);
        if costs > most {
            (plan, most) = (other, costs);
        }
    }
    (plan, most)
}

/// Types one field at one of its limits: in one record of its list, or in all.
fn change(plan: &mut Plan, random: &mut Random) {
    let places: Vec<Place> = schema::places().collect();
    let place = random.one_of(&places);
    let count = plan.count(place.part());
    if count == 0 || matches!(place.field().kind, Kind::Text | Kind::NameIn(_)) {
        return;
    }
    let typed = text(place.field(), random);
    let one = random.below(count);
    let is_one = random.below(3) == 0;
    for at in (0..count).filter(|at| !is_one || *at == one) {
        plan.put(place.at(at), &typed);
    }
}

fn text(field: &Field, random: &mut Random) -> String {
    match field.kind {
        Kind::Quantity { unit, low, high, .. } => {
            let middle = if low > 0.0 { (low * high).sqrt() } else { f64::midpoint(low, high) };
            let typed = [
                String::new(),
                format!("{low} {unit}"),
                format!("{high} {unit}"),
                format!("{middle} {unit}"),
                format!("{low} to {high} {unit}"),
                format!("{middle} to {high} {unit}"),
            ];
            typed[random.below(typed.len())].clone()
        }
        Kind::Whole(low, high) => {
            [String::new(), low.to_string(), high.to_string()][random.below(3)].clone()
        }
        Kind::Choice(choices) => {
            let at = random.below(choices.len() + 1);
            choices.get(at).map_or_else(String::new, |choice| choice.code.to_owned())
        }
        Kind::Row => random.one_of(ROWS).to_owned(),
        Kind::Text | Kind::NameIn(_) => String::new(),
    }
}
