//! The start of the engine.

use crate::{
    cranking::{Average, Sync},
    quantity::{CrankAngle, Ratio, RotationalSpeed, Time},
    schema::{Part, Whole, choice, choices, fields, quantity, whole},
};

choices! {
    Sync {
        Gap = "gap", "The gap of the crank wheel (one turn)";
        Cam = "cam", "The cam as well (two turns)";
    }
}

choices! {
    Average {
        Blocks = "blocks", "New teeth for each reading";
        Sliding = "sliding", "A new one at every tooth, over the last so many";
    }
}

/// What the coils do as power arrives.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PowerUp {
    /// Nothing.
    Quiet,
    /// They spark once.
    Spark,
    /// They would spark, but are powered before cranking, with their input held off.
    Held,
}

choices! {
    PowerUp {
        Quiet = "quiet", "Do nothing";
        Spark = "spark", "Spark once";
        Held = "held", "Would spark; powered before cranking, input held off";
    }
}

fields! {
    of Part::Cranking;
    /// Mean cranking speed.
    SPEED: RotationalSpeed = quantity("speed", "Cranking speed", "rpm", 20.0, 1000.0)
        .hint("180 to 220 rpm")
        .measure("Crank with fuel and spark off and read the controller's speed: the mean, cold and with the battery you have.")
        .first();
    /// Mean cranking speed in cold, thick oil.
    COLD_SPEED: RotationalSpeed = quantity("cold_speed", "Cranking speed in cold, thick oil", "rpm", 20.0, 1000.0)
        .hint("blank: the low end of the cranking speed")
        .measure("Crank after a frosty night with fuel and spark off, and read the controller's speed.");
    /// Mean cranking speed on a weak battery.
    WEAK_SPEED: RotationalSpeed = quantity("weak_speed", "Cranking speed on a weak battery", "rpm", 20.0, 1000.0)
        .hint("8 V at the starter while it turns")
        .measure("With an old battery, run down until 8 V is left at the starter while it turns: read the controller's speed. Recharge at once; crank in short bursts, starters overheat.");
    /// What the coils do as power arrives: `quiet`, `spark` or `held`.
    POWER_UP: PowerUp = choice("power_up", "Coils at power-up")
        .measure("Plugs out on a grounded bar, no fuel vapour, engine stopped: close the relay by hand and watch for a spark.");
    /// Time that a coil needs after power before it can charge.
    WARM_UP: Time = quantity("warm_up", "Coil ready after power-up", "ms", 0.0, 2000.0)
        .hint("coils with electronics of their own: the data sheet")
        .assumed("0 ms", "a plain coil charges at once")
        .rare();
    /// How far the speed dips at each compression, as a share of the mean.
    DIP: Ratio = quantity("dip", "Speed dip at each compression", "%", 0.0, 95.0)
        .hint("blank: from the engine's own compressions")
        .measure("Record the speed from every tooth while cranking: the mean less the lowest, over the mean.");
    /// What the first spark waits for: `gap` or `cam`.
    SYNC: Sync = choice("sync", "The first spark waits for")
        .assumed("gap", "whichever comes first: power must be there by then");
    /// Readings in a row that must agree.
    CONFIRMATION: Whole = whole("confirmation", "Readings in a row that must agree", 1, 20)
        .assumed("2", "common practice, no source")
        .rare();
    /// Teeth over which the speed is averaged.
    AVERAGING: Whole = whole("averaging", "Tooth intervals in one reading", 1, 360)
        .assumed("1", "the worst for dips: every tooth by itself")
        .rare();
    /// How readings over several teeth follow each other: `blocks` or `sliding`.
    AVERAGE: Average = choice("average", "Readings over several teeth")
        .measure("Log speed with time at a steady crank: a new value at every tooth, or once in so many.")
        .assumed("blocks", "common practice, no source")
        .only_if("averaging", &[])
        .rare();
    /// Time the starter takes to bring the engine to speed.
    RUN_UP: Time = quantity("run_up", "Run-up time of the starter", "ms", 0.0, 5000.0)
        .assumed("300 ms", "common practice, no source")
        .measure("Record the speed while cranking: from the first tooth to the first full-height crest.")
        .rare();
    /// Time without a tooth after which the engine counts as standing.
    STALL_TIMEOUT: Time = quantity("stall_timeout", "Stall time-out: stopped when no tooth for", "ms", 10.0, 10000.0)
        .assumed("1 s", "common practice, no source")
        .rare();
    /// Speed read while the engine rocks to a standstill.
    ROCKING: RotationalSpeed = quantity("rocking", "Speed read while it rocks at standstill", "rpm", 0.0, 500.0)
        .assumed("30 rpm", "common practice, no source")
        .measure("Record the speed while the engine stops: the highest reading after it first stops.")
        .rare();
    /// Angle through which a compression may throw the engine back.
    KICK_BACK: CrankAngle = quantity("kick_back", "Kick-back angle", "deg", 0.0, 120.0)
        .assumed("30 deg", "common practice, no source")
        .rare();
    /// How long a starter that sticks stands.
    STICK: Time = quantity("stick", "Starter sticks for", "ms", 0.0, 20000.0)
        .assumed("1.5 s", "common practice, no source")
        .rare();
    /// Speed from which the engine dies.
    IDLE: RotationalSpeed = quantity("idle", "Idle speed", "rpm", 100.0, 5000.0)
        .assumed("800 rpm", "common practice, no source")
        .rare();
    /// Time from there to a standstill.
    RUN_DOWN: Time = quantity("run_down", "Run-down time from idle", "ms", 50.0, 20000.0)
        .assumed("1 s", "common practice, no source")
        .rare();
}
