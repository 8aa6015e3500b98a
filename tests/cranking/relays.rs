//! The further relays of a plan, and what people may type into the new fields.

use quietpin_core::{
    plan::Plan,
    read::State,
    report::{Answer, Report, Tone, report},
    schema::Part,
};

/// A straight-six at 200 rpm with one further relay.
fn plan(fields: &[(&str, &str)]) -> Plan {
    let mut plan = Plan::default();
    plan.set_count(Part::Relays, 2);
    let usual = [
        ("engine.cylinders", "6"),
        ("engine.order", "1-5-3-6-2-4"),
        ("cranking.speed", "200 rpm"),
        ("relays.0.purpose", "coils"),
        ("relays.1.switched_by", "speed"),
        ("relays.0.relay_on_at", "100 rpm"),
        ("cranking.dip", "30 to 40 %"),
    ];
    for (path, text) in usual.iter().chain(fields) {
        assert!(plan.set(path, text), "{path} is no place in the plan");
    }
    plan
}

fn about<'a>(report: &'a Report, subject: &str) -> &'a Answer {
    let section = report.sections.iter().find(|it| it.id == "cranking").expect("the question");
    section.answers.iter().find(|it| it.subject == subject).expect("an answer to each")
}

#[track_caller]
fn verdict(fields: &[(&str, &str)], tone: Tone, code: &str) {
    let report = report(&plan(fields));
    let found = &about(&report, "relays.1").verdict;
    assert_eq!((found.tone, found.message.code), (tone, code), "{fields:?}");
}

#[track_caller]
fn has(fields: &[(&str, &str)], subject: &str, code: &str) {
    let report = report(&plan(fields));
    let all: Vec<_> =
        report.findings.iter().map(|it| (it.subject.as_str(), it.message.code)).collect();
    assert!(all.contains(&(subject, code)), "{code} at {subject} is not among {all:?}");
}

const PUMP: (&str, &str) = ("relays.1.purpose", "pump");
const FIELD: (&str, &str) = ("relays.1.purpose", "alternator-field");
const FAN: (&str, &str) = ("relays.1.purpose", "fan");

#[test]
fn each_use_has_its_own_demands() {
    let at = |text: &'static str| ("relays.1.relay_on_at", text);
    verdict(&[], Tone::Open, "cranking.open");
    verdict(&[PUMP], Tone::Open, "cranking.any-works");
    verdict(&[PUMP, at("100")], Tone::Good, "cranking.pump-suits");
    verdict(&[PUMP, at("300")], Tone::Bad, "cranking.never");
    verdict(&[PUMP, at("0")], Tone::Bad, "cranking.always");
    verdict(&[("relays.1.purpose", "coils"), at("100")], Tone::Good, "cranking.suits");
    // cranking reads up to 280 rpm between the dips of 40 %
    verdict(&[FIELD], Tone::Open, "cranking.any-works");
    verdict(&[FIELD, at("100")], Tone::Bad, "cranking.running-early");
    verdict(&[FAN, at("100")], Tone::Doubtful, "cranking.running-early");
    verdict(&[FIELD, at("500")], Tone::Good, "cranking.running-suits");
    verdict(&[FIELD, at("900")], Tone::Doubtful, "cranking.running-late");
    let low = ("relays.1.relay_off_below", "150");
    verdict(&[FIELD, at("500"), low], Tone::Doubtful, "cranking.running-holds");
}

#[test]
fn a_pump_that_outlives_its_engine_is_a_danger_where_nothing_else_stops_it() {
    let slow = [
        PUMP,
        ("relays.1.relay_on_at", "100"),
        ("relays.1.relay_off_below", "1"),
        ("cranking.stall_timeout", "5 s"),
    ];
    // what else stops it is to be found out where that is blank
    verdict(&slow, Tone::Doubtful, "cranking.pump-runs-on");
    let uncut: Vec<_> = slow.iter().copied().chain([("relays.1.cut", "none")]).collect();
    verdict(&uncut, Tone::Bad, "cranking.pump-runs-on");
    has(&slow, "relays.1.relay_off_below", "cranking.pump-on-after-stop");
    let report = report(&plan(&slow));
    let found = report.findings.iter().find(|it| it.message.code == "cranking.pump-on-after-stop");
    let cure = &found.expect("it is found").remedies[0];
    assert_eq!(cure.code, "cranking.raise-release", "a release that was simulated comes first");
    let release = cure.values.get("release").expect("a value").number.expect("a speed").to_string();
    let cured: Vec<_> =
        slow.iter().copied().chain([("relays.1.relay_off_below", release.as_str())]).collect();
    verdict(&cured, Tone::Good, "cranking.pump-suits");
    let timed: Vec<_> = slow.iter().copied().chain([("cranking.stall_timeout", "1 s")]).collect();
    verdict(&timed, Tone::Good, "cranking.pump-suits");
    // two seconds are usual: common practice, no source; the last tooth passes within 87 ms of the stop
    for (timeout, tone, code) in [
        ("1.95 s", Tone::Good, "cranking.pump-suits"),
        ("2.15 s", Tone::Doubtful, "cranking.pump-runs-on"),
    ] {
        let near: Vec<_> =
            slow.iter().copied().chain([("cranking.stall_timeout", timeout)]).collect();
        verdict(&near, tone, code);
    }
    let cut: Vec<_> = slow.into_iter().chain([("relays.1.cut", "inertia")]).collect();
    verdict(&cut, Tone::Doubtful, "cranking.pump-runs-on");
}

/// By hand: the pump runs for 2 s at key-on, and again when the relay closes, so that much earlier the starter must turn.
#[test]
fn the_prime_leaves_no_gap_where_the_starter_turns_in_time() {
    let report = report(&plan(&[PUMP, ("relays.1.relay_on_at", "100")]));
    let answer = about(&report, "relays.1");
    let number = |code: &str| {
        let figure = answer.figures.iter().find(|it| it.label.code == code).expect(code);
        (figure.value.number.expect("a time"), figure.high.as_ref().and_then(|it| it.number))
    };
    let (nominal, latest) = number("cranking.figure-power");
    let (wait, _) = number("cranking.figure-prime");
    assert!((wait - (2.0 - latest.unwrap_or(nominal))).abs() < 1e-9, "{wait}");
}

#[test]
fn a_warm_up_is_part_of_the_time_that_a_coil_needs() {
    let margin = |warm_up: &str| {
        let report = report(&plan(&[("cranking.warm_up", warm_up)]));
        let answer = about(&report, "cranking");
        let figure = answer.figures.iter().find(|it| it.label.code == "cranking.figure-margin");
        figure.and_then(|it| it.value.number).expect("a time")
    };
    assert!((margin("0 ms") - margin("20 ms") - 0.02).abs() < 1e-9, "20 ms less are left");
}

#[test]
fn what_is_typed_wrong_is_told_at_its_field_and_kept() {
    for (path, text, code) in [
        ("cranking.cold_speed", "0", "field.too-small"),
        ("cranking.weak_speed", "fast", "field.no-number"),
        ("cranking.power_up", "bang", "field.unknown-choice"),
        ("cranking.warm_up", "3 V", "field.wrong-unit"),
        ("cranking.kick_back", "200 deg", "field.too-large"),
        ("cranking.stick", "-1 s", "field.too-small"),
        ("relays.1.purpose", "horn", "field.unknown-choice"),
        ("relays.1.relay_on_at", "90 to 110", "cranking.setting-spread"),
        ("relays.1.relay_off_below", "NaN", "field.no-number"),
        ("relays.1.prime", "2 h", "field.wrong-unit"),
        ("relays.1.cut", "hope", "field.unknown-choice"),
        ("relays.1.pull_in", "0 V", "field.too-small"),
        ("relays.1.pull_in_time", "1e300", "field.not-finite"),
        ("relays.1.drop_out_time", "-5 ms", "field.too-small"),
    ] {
        let plan = plan(&[(path, text)]);
        let report = report(&plan);
        let found: Vec<_> = report
            .findings
            .iter()
            .filter(|it| it.subject == path)
            .map(|it| it.message.code)
            .collect();
        assert_eq!(found, [code], "{path}: {text}");
        assert_eq!(report.fields[path].state, State::Unreadable, "{path}: {text}");
        assert_eq!(plan.get(path), Some(text), "nothing typed is lost");
        assert_eq!(about(&report, "cranking").verdict.message.code, "cranking.suits", "{path}");
    }
    let above = [PUMP, ("relays.1.relay_on_at", "100"), ("relays.1.relay_off_below", "120")];
    has(&above, "relays.1.relay_off_below", "cranking.release-above");
}
