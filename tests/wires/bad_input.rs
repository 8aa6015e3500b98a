//! What people may type, and what is said to it.

use quietpin_core::report::report;
use quietpin_tests::typed::check_refused;

use super::{about, four};

const LENGTHS: [&str; 14] = [
    "harness.length",
    "harness.spare",
    "harness.coils.0",
    "harness.injectors.0",
    "harness.second.0",
    "harness.crank",
    "harness.cam",
    "harness.coil_feed",
    "harness.coil_ground",
    "harness.injector_feed",
    "loads.0.length",
    "loads.0.other_length",
    "relays.0.length",
    "relays.0.other_length",
];

/// The finding at the field, and all other wires are answered all the same.
#[track_caller]
fn check(path: &str, text: &str, finding: &str) {
    let plan = four(&[("channels.second_mode", "together"), (path, text)]);
    let report = report(&plan);
    check_refused(&plan, &report, path, finding);
    assert!(about(&report, "wires.loads").is_some(), "{path}: {text:?}");
}

#[test]
fn what_is_none_is_named_at_its_field() {
    for path in LENGTHS.into_iter().chain(["harness.pin_current", "harness.pin_wire"]) {
        check(path, "letters", "field.no-number");
        check(path, "10 Hz", "field.wrong-unit");
        check(path, "1e999", "field.not-finite");
    }
    for path in ["harness.coil_ends", "harness.injector_ends"] {
        check(path, "perhaps", "field.unknown-choice");
    }
    for path in ["harness.permanent", "harness.switched", "harness.ground"] {
        check(path, "red", "wires.no-colour");
    }
}

#[test]
fn what_can_not_be_is_named_at_its_field() {
    for path in LENGTHS {
        check(path, "-1 m", "field.too-small");
        check(path, "31 m", "field.too-large");
    }
    for path in ["relays.0.ground_length", "grounds.minus_length"] {
        check(path, "letters", "field.no-number");
        check(path, "-1 m", "field.too-small");
        check(path, "51 m", "field.too-large");
    }
    check("relays.0.to_contact", "letters", "field.no-number");
    check("relays.0.to_contact", "10 Hz", "field.wrong-unit");
    check("relays.0.to_contact", "-1 m", "field.too-small");
    check("relays.0.to_contact", "51 m", "field.too-large");
    for path in ["loads.0.wired", "relays.0.wired"] {
        check(path, "D9", "field.no-such-output");
    }
    check("harness.pin_current", "0 A", "field.too-small");
    check("harness.pin_current", "101 A", "field.too-large");
    check("harness.pin_wire", "0 mm2", "field.too-small");
    check("harness.pin_wire", "26 mm2", "field.too-large");
}
