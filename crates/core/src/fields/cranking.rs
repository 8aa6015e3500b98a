//! Question 4: the relay that pulls in at a speed.

use super::{Choice, Field, Kind, choice, quantity};
use crate::quantity::Dimension::{Share, Speed, Time};

const SYNCS: &[Choice] = &[
    choice("gap", "The gap of the crank wheel (one turn)"),
    choice("cam", "An edge of the cam (two turns)"),
];

pub(super) const FIELDS: &[Field] = &[
    Field::new("cranking.speed", "Cranking speed", quantity(Speed, "rpm", 20.0, 1000.0))
        .measure("Crank with fuel and spark off and read the controller's speed, cold and with the battery you have.")
        .first(),
    Field::new("cranking.threshold", "The relay is switched on at", quantity(Speed, "rpm", 0.0, 5000.0)).first(),
    Field::new("cranking.release", "The relay is switched off at", quantity(Speed, "rpm", 0.0, 5000.0)),
    Field::new("cranking.dip", "Dip at each compression", quantity(Share, "%", 0.0, 95.0))
        .assumed("35 %", "common practice, no source: 30 to 40 %"),
    Field::new("cranking.teeth", "Positions on the crank wheel", Kind::Whole(1, 360)).hint("missing ones counted"),
    Field::new("cranking.missing", "Missing teeth", Kind::Whole(0, 10)),
    Field::new("cranking.sync", "The first spark waits for", Kind::Choice(SYNCS)),
    Field::new("cranking.confirmation", "Readings in a row that must agree", Kind::Whole(1, 100)).rare(),
    Field::new("cranking.averaging", "Teeth in one speed reading", Kind::Whole(1, 360)).rare(),
    Field::new("cranking.run_up", "Time the starter takes to reach that speed", quantity(Time, "ms", 0.0, 5000.0)).rare(),
    Field::new("cranking.pull_in_time", "Pull-in time of the relay", quantity(Time, "ms", 0.0, 1000.0)).rare(),
    Field::new("cranking.drop_out_time", "Drop-out time of the relay", quantity(Time, "ms", 0.0, 1000.0)).rare(),
];
