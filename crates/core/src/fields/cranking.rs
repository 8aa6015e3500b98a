//! Question 4: the relay that pulls in at a speed.

use super::{Choice, Field, Kind, choice, quantity};
use crate::quantity::Dimension::{Angle, Share, Speed, Time, Voltage};

const SYNCS: &[Choice] = &[
    choice("gap", "The gap of the crank wheel (one turn)"),
    choice("cam", "The cam as well (two turns)"),
];

const POWER_UPS: &[Choice] = &[
    choice("quiet", "Do nothing"),
    choice("spark", "Spark once"),
    choice("held", "Would spark; powered before cranking, input held off"),
];

pub(super) const FIELDS: &[Field] = &[
    Field::new("cranking.speed", "Cranking speed", quantity(Speed, "rpm", 20.0, 1000.0))
        .hint("180 to 220 rpm")
        .measure("Crank with fuel and spark off and read the controller's speed: the mean, cold and with the battery you have.")
        .first(),
    Field::new("cranking.relay_on_at", "The relay is switched on at", quantity(Speed, "rpm", 0.0, 5000.0))
        .hint("100 rpm")
        .first(),
    Field::new("cranking.relay_off_below", "The relay is switched off below", quantity(Speed, "rpm", 0.0, 5000.0))
        .hint("blank: 60% of the above"),
    Field::new("cranking.cold_speed", "Cranking speed in cold, thick oil", quantity(Speed, "rpm", 20.0, 1000.0))
        .hint("blank: the low end of the cranking speed")
        .measure("Crank after a frosty night with fuel and spark off, and read the controller’s speed."),
    Field::new("cranking.weak_speed", "Cranking speed on a weak battery", quantity(Speed, "rpm", 20.0, 1000.0))
        .hint("8 V at the starter while it turns")
        .measure("With an old battery, run down until 8 V is left at the starter while it turns: read the controller’s speed. Recharge at once; crank in short bursts, starters overheat."),
    Field::new("cranking.power_up", "As power arrives, the coils", Kind::Choice(POWER_UPS))
        .measure("Plugs out on a grounded bar, no fuel vapour, engine standing: close the relay by hand and watch for a spark."),
    Field::new("cranking.warm_up", "Time a coil needs after power", quantity(Time, "ms", 0.0, 2000.0))
        .hint("of coils with their own electronics: the data sheet")
        .assumed("0 ms", "a plain coil charges at once")
        .rare(),
    Field::new("cranking.dip", "Dip at each compression, of the mean", quantity(Share, "%", 0.0, 95.0))
        .hint("blank: from the engine’s own compressions")
        .measure("Record the speed from every tooth while cranking: the mean less the lowest, over the mean."),
    Field::new("cranking.teeth", "Positions on the crank wheel", Kind::Whole(1, 360))
        .hint("missing ones counted")
        .assumed("60", "a common wheel, 60 positions less two: common practice, no source")
        .measure("Count the teeth and add those that would fit into the gap."),
    Field::new("cranking.missing", "Missing teeth", Kind::Whole(0, 10)).hint("0: evenly spaced"),
    Field::new("cranking.sync", "The first spark waits for", Kind::Choice(SYNCS))
        .assumed("gap", "the sooner of the two: power must be there by then"),
    Field::new("cranking.gap_angle", "From the gap to top dead centre", quantity(Angle, "deg", 0.0, 360.0))
        .hint("first tooth after the gap at the sensor, to the first firing")
        .assumed("90 deg", "a usual place of the gap: common practice, no source")
        .measure("Turn the engine by hand until the first tooth after the gap stands at the sensor; the degree wheel shows how far it is to top dead centre.")
        .rare(),
    Field::new("cranking.confirmation", "Readings in a row that must agree", Kind::Whole(1, 20))
        .assumed("2", "common practice, no source")
        .rare(),
    Field::new("cranking.averaging", "Tooth intervals in one reading", Kind::Whole(1, 360))
        .assumed("1", "the worst for dips: every tooth by itself")
        .rare(),
    Field::new("cranking.run_up", "Time the starter takes to reach that speed", quantity(Time, "ms", 0.0, 5000.0))
        .assumed("300 ms", "common practice, no source")
        .measure("Record the speed while cranking: from the first tooth to the first full-height crest.")
        .rare(),
    Field::new("cranking.stall_timeout", "Without a tooth, stopped after", quantity(Time, "ms", 10.0, 10000.0))
        .assumed("1 s", "common practice, no source")
        .rare(),
    Field::new("cranking.dwell", "Dwell while cranking", quantity(Time, "ms", 0.0, 50.0))
        .hint("0 for a pump")
        .assumed("4 ms", "the long end of 2 to 4 ms: common practice, no source")
        .rare(),
    Field::new("cranking.pull_in_time", "Pull-in time of the relay", quantity(Time, "ms", 0.0, 1000.0))
        .assumed("5 to 10 ms", "5 ms is typical of relay data sheets; twice that for a weak battery, common practice, no source")
        .rare(),
    Field::new("cranking.drop_out_time", "Drop-out time of the relay", quantity(Time, "ms", 0.0, 1000.0))
        .assumed("3 to 15 ms", "3 ms is typical of relay data sheets; a diode across the coil makes it several times longer, common practice, no source")
        .rare(),
    Field::new("cranking.pull_in_voltage", "Voltage at which the relay pulls in, cold coil", quantity(Voltage, "V", 1.0, 30.0))
        .assumed("7.2 V", "60 % of 12 V: five relay data sheets give 57 to 67 %")
        .measure("Raise the voltage on the coil slowly from nought until the contact clicks; the data sheet's figure is the one that is sure.")
        .rare(),
    Field::new("cranking.rocking", "Speed read while the engine rocks at standstill", quantity(Speed, "rpm", 0.0, 500.0))
        .assumed("30 rpm", "common practice, no source")
        .measure("Record the speed while the engine stops: the highest reading after it first stands.")
        .rare(),
    Field::new("cranking.kick_back", "A compression may throw it back by", quantity(Angle, "deg", 0.0, 120.0))
        .assumed("30 deg", "common practice, no source")
        .rare(),
    Field::new("cranking.stick", "A starter that sticks stands for", quantity(Time, "ms", 0.0, 20000.0))
        .assumed("1.5 s", "common practice, no source")
        .rare(),
    Field::new("cranking.idle", "Speed from which it dies", quantity(Speed, "rpm", 100.0, 5000.0))
        .assumed("800 rpm", "common practice, no source")
        .rare(),
    Field::new("cranking.run_down", "Time from there to a standstill", quantity(Time, "ms", 50.0, 20000.0))
        .assumed("1 s", "common practice, no source")
        .rare(),
];
