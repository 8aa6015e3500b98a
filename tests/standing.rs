//! How long the battery lasts with the key off: cases worked by hand, bad input, laws.
//!
//! Source: charge is current times time (University Physics, vol. 2, section 9.1), and Ohm's law; each case says how.
#![expect(clippy::indexing_slicing, reason = "a test that can't go on must end, and say where")]

mod bad_input;
mod cases;
mod laws;

use quietpin_core::{
    plan::Plan,
    report::{Answer, Report},
};
use quietpin_tests::typed::{self, planned};

/// A battery of 60 Ah in a car at one voltage and 20 °C, a controller that draws nothing itself, and fields over it as
/// typed.
fn plan(typed: &[(&str, &str)]) -> Plan {
    let usual = [
        ("battery.capacity", "60 Ah"),
        ("battery.charging", "12.6 V"),
        ("temperatures.cold", "20"),
        ("temperatures.hot", "20"),
        ("controller.supply_off", "47 ohm"),
        ("controller.key_off_draw", "0"),
    ];
    planned(&usual, typed)
}

fn answer(report: &Report) -> &Answer {
    let answers = typed::answers(report, "standing");
    assert_eq!(answers.len(), 1, "there is one answer");
    answers[0]
}

/// The number of a figure in its base unit, as meant.
fn figure(report: &Report, code: &str) -> Option<f64> {
    let figures = &answer(report).figures;
    figures.iter().find(|it| it.label.code == code)?.value.number
}
