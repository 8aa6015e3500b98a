//! One thing at a time is planted in a sound car that would kill an engine, a part, or a hand: it is the first thing said, and
//! the only Danger or Fault.
//!
//! Source: what each does is common practice, no source; that it is one, and how grave, is the scale's (`finding::SCALE`).

use quietpin_core::{
    finding::Severity::{self, Danger, Fault},
    plan::Plan,
    report::{Report, report},
    whole_car,
};

/// What is planted: the texts that are typed otherwise, the finding that must be first, and how grave it is.
type Killer = (&'static [(&'static str, &'static str)], &'static str, Severity);

const KILLERS: &[Killer] = &[
    (&[("relays.1.fuse", "60 A"), ("relays.1.lead_size", "1 mm2")], "feeds.fuse-over-wire", Danger),
    (
        &[("relays.3.fuse", "70 A"), ("relays.3.lead_size", "16 mm2")],
        "feeds.fuse-over-contact",
        Fault,
    ),
    (
        &[("relays.1.far_end", "relay"), ("relays.1.far_relay", "Pump relay")],
        "outputs.feeds-itself",
        Fault,
    ),
    (&[("outputs.0.pulse_limit", "10 Hz")], "outputs.too-fast", Fault),
    (
        &[("loads.6.kind", "throttle"), ("loads.6.power_cut", "none")],
        "outputs.throttle-no-cut",
        Danger,
    ),
    (&[("loads.15.bears", "3.3 V")], "outputs.over-voltage", Danger),
    (&[("injectors.across", "diode")], "injectors.diode-across", Fault),
    (&[("loads.9.resistance", "0.5 ohm")], "outputs.inrush", Fault),
    (&[("controller.dwell", "6 ms")], "coils.dwell-too-long", Danger),
    (&[("coils.resistance", "2.2 ohm")], "coils.falls-short", Fault),
    (&[("relays.0.fuse", "5 A")], "coils.fuse-too-small", Fault),
    (&[("coils.limit", "9 A"), ("coils.per_igniter", "2")], "coils.shared-limit", Fault),
    (&[("relays.0.relay_on_at", "300 rpm")], "cranking.never-closes", Fault),
    (&[("switched_feeds.cranking", "cut")], "cranking.feed-cut", Fault),
    (&[("controller.least_supply", "9.5 V")], "cranking.controller-restarts", Fault),
    (
        &[
            ("wheels.cam_teeth", ""),
            ("cam_sensor.kind", ""),
            ("cam_sensor.pull_rail", ""),
            ("cam_sensor.pull_up", ""),
            ("cam_sensor.shield", ""),
            ("cam_sensor.connector", ""),
        ],
        "firing.blind",
        Fault,
    ),
    (&[("channels.ignition_count", "4")], "firing.ignition-short", Fault),
    (&[("controller.outputs", "34")], "firing.outputs-short", Fault),
    (
        &[("controller.spacing", "angles"), ("controller.angles", "0 90 240 330 480 570")],
        "firing.entered-differs",
        Danger,
    ),
    (&[("injectors.clamp_energy", "5 mJ")], "injectors.clamp-overloaded", Danger),
    (&[("injectors.clamp", "13 V")], "injectors.clamp-too-low", Danger),
    (&[("injectors.opening_current", "900 mA")], "injectors.may-not-open", Fault),
    (&[("fuel.flow", "200 cc/min"), ("fuel.second_flow", "200 cc/min")], "fuel.runs-lean", Danger),
    (&[("fuel.boost", "3.2 bar"), ("fuel.regulator", "fixed")], "fuel.boost-stops-fuel", Danger),
    (&[("crank_sensor.polarity", "reversed")], "trigger.reversed", Fault),
    (&[("trigger_input.bears", "20 V")], "trigger.over-voltage", Danger),
    (&[("cam_sensor.pull_rail", "none")], "trigger.no-pull-up", Fault),
    (&[("trigger.tooth", "25")], "trigger.offset-differs", Danger),
    (&[("trigger_input.highest_frequency", "5 kHz")], "trigger.too-fast", Fault),
];

fn planted(texts: &[(&str, &str)]) -> Plan {
    let mut plan = whole_car();
    for (path, text) in texts {
        assert!(plan.set(path, text), "{path} is no place");
    }
    plan
}

/// The Dangers and Faults, as they stand in the report.
fn grave(report: &Report) -> Vec<(&'static str, Severity)> {
    let grave = report.findings.iter().filter(|it| it.severity <= Fault);
    grave.map(|it| (it.message.code, it.severity)).collect()
}

#[test]
fn the_car_itself_is_sound() {
    assert_eq!(grave(&report(&whole_car())), []);
}

#[test]
fn each_killer_is_the_first_finding_and_the_only_grave_one() {
    for (texts, code, severity) in KILLERS {
        let report = report(&planted(texts));
        assert_eq!(grave(&report), [(*code, *severity)], "{texts:?}");
        assert_eq!(report.findings.first().map(|it| it.message.code), Some(*code), "{texts:?}");
    }
}

#[test]
fn no_two_are_the_same() {
    let mut codes: Vec<_> = KILLERS.iter().map(|(_, code, _)| code).collect();
    codes.sort_unstable();
    codes.dedup();
    assert!(codes.len() >= 20, "{} killers", codes.len());
    assert_eq!(codes.len(), KILLERS.len());
}
