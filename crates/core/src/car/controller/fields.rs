//! The controller.

use crate::{
    quantity::{CrankAngle, Current, Resistance, Time, Voltage},
    schema::{NumberRow, Part, Whole, choice, choices, fields, quantity, row, whole},
};

/// What becomes of the controller when the key is turned off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AfterKeyOff {
    /// It loses its supply at once.
    Dies,
    /// It holds its own supply on for a while.
    Stays,
}

choices! {
    AfterKeyOff {
        Dies = "dies", "Loses its supply at once";
        Stays = "stays", "Stays on for a while (switches its own relay)";
    }
}

/// What the controller is fed from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ControllerFeed {
    /// Permanent battery.
    Battery,
    /// The ignition switch.
    Ignition,
}

choices! {
    ControllerFeed {
        Battery = "battery", "Permanent battery (30), or a relay that it switches itself";
        Ignition = "ignition", "Ignition switch (15), or a relay on it";
    }
}

/// How the firings are spaced in the controller.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EnteredSpacing {
    /// Evenly.
    Even,
    /// At angles that are entered.
    Angles,
}

choices! {
    EnteredSpacing {
        Even = "even", "Even, or the controller doesn't ask";
        Angles = "angles", "By angles";
    }
}

/// Whether the controller survives a reversed battery.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReversedSupply {
    /// It does.
    Survives,
    /// It does not.
    Fails,
}

choices! {
    ReversedSupply {
        Survives = "survives", "It survives that";
        Fails = "fails", "It does not";
    }
}

fields! {
    of Part::Controller;
    /// Angle from the first tooth after the gap to top dead centre, as entered in the controller.
    OFFSET: CrankAngle = quantity("offset", "First tooth to TDC, as entered", "deg", -720.0, 720.0)
        .hint("positive: the tooth passes before TDC")
        .first();
    /// Advance to which the controller is locked.
    LOCKED_ADVANCE: CrankAngle = quantity("locked_advance", "Timing locked at, before TDC", "deg", -60.0, 90.0)
        .hint("10 deg")
        .measure("Lock the timing at a fixed advance. Cranking: injectors unplugged. Running: warm, steady speed.");
    /// Order in which the ignition channels fire, as entered: `1-5-3-6-2-4`.
    ORDER: NumberRow = row("order", "Order of the ignition channels, as entered")
        .hint("1-5-3-6-2-4; blank: not checked")
        .measure("Connect to the controller: its firing order, as channels, starting with the one that it fires first.");
    /// `even` or `angles`.
    SPACING: EnteredSpacing = choice("spacing", "Spacing of the firings, as entered");
    /// Angles of the firings in that order, degrees from the first, as entered.
    ANGLES: NumberRow = row("angles", "Firing angles, as entered")
        .hint("0 90 240 330 480 570")
        .only_if("spacing", &["angles"]);
    /// Outputs that coils, injectors and loads share.
    OUTPUTS: Whole = whole("outputs", "Outputs shared by coils, injectors and loads", 0, 128)
        .hint("the whole controller; blank: each kind has its own");
    /// Dwell of a coil.
    DWELL: Time = quantity("dwell", "Dwell, as entered", "ms", 0.1, 100.0)
        .hint("blank: what the coils need, else 3 ms");
    /// Time the coils need power before a spark.
    CRANKING_DWELL: Time = quantity("cranking_dwell", "Dwell while cranking", "ms", 0.0, 50.0)
        .hint("blank: the dwell entered, else 4 ms")
        .rare();
    /// Whether it holds its own supply on when the key is turned off.
    AFTER_KEY_OFF: AfterKeyOff = choice("after_key_off", "Controller at key-off")
        .hint("one that switches its own main relay stays on for a while")
        .measure("Key on, then off: meter on the controller's own supply. Does it fall at once, or seconds later?")
        .rare();
    /// The least supply at which the controller runs.
    LEAST_SUPPLY: Voltage = quantity("least_supply", "Lowest supply it runs on", "V", 3.0, 16.0)
        .hint("from its data: below it, it restarts")
        .rare();
    /// What it is fed from: `battery` or `ignition`.
    FEED: ControllerFeed = choice("feed", "Controller is fed from")
        .measure("Controller unplugged, supply wire to ground: battery voltage with the key off is 30; only with the key on, 15.")
        .rare();
    /// Resistance to ground of the controller's supply with the key off.
    SUPPLY_OFF: Resistance = quantity("supply_off", "Controller's supply to ground, key off", "ohm", 0.5, 1e6)
        .hint("through what else is on that feed")
        .assumed("5 to 1000 ohm", "common practice, no source: from a feed with relays and injectors on it to a bare controller")
        .measure("Battery disconnected, controller plugged in: meter from its supply wire to ground, then with the probes swapped; use the lower reading.")
        .rare();
    /// What the controller itself takes from the battery with the key off.
    KEY_OFF_DRAW: Current = quantity("key_off_draw", "Controller's own draw, key off", "mA", 0.0, 2000.0)
        .hint("0 where a relay cuts its supply")
        .assumed("1 mA", "common practice, no source")
        .measure("Key off, its outputs unplugged: ammeter with a fuse in the wire that feeds it from permanent battery (30).");
    /// The highest supply that it survives for a minute.
    HIGHEST_SUPPLY: Voltage = quantity("highest_supply", "Highest supply it survives", "V", 5.0, 200.0)
        .hint("from its data");
    /// Whether it survives a reversed battery: `survives` or `fails`.
    REVERSE: ReversedSupply = choice("reverse", "Controller with the battery reversed");
}
