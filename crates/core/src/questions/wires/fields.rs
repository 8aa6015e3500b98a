//! The harness: how long it is, how long each wire has to be, what is done.

use crate::{
    quantity::{Area, Current, Length},
    schema::{Part, Text, choice, choices, fields, quantity, text},
};

/// How the harness's connectors suit what they are to be plugged into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ConnectorFit {
    /// They fit.
    Fit,
    /// They are the wrong ones.
    Wrong,
    /// There are none.
    Bare,
}

choices! {
    ConnectorFit {
        Fit = "fit", "Fit";
        Wrong = "wrong", "Wrong ones: to be changed";
        Bare = "bare", "None: bare ends";
    }
}

fields! {
    of Part::Harness;
    /// How long its wires are, from the controller's connector.
    LENGTH: Length = quantity("length", "Wires of the harness, as bought", "m", 0.1, 30.0)
        .hint("from the controller's connector to their ends")
        .first();
    /// What is left at the end of each wire.
    SPARE: Length = quantity("spare", "To spare at the end of each wire", "m", 0.0, 2.0)
        .assumed("0.1 m", "enough to crimp it once more: common practice, no source");
    /// The way of each ignition channel's wire to its coil: entry 1 is channel 1.
    COILS: Length = quantity("coils", "Way to its coil", "m", 0.01, 30.0)
        .each()
        .measure("A string along the way that the wire will take, bends and clips included, from the controller's connector.");
    /// The same of the injection channels.
    INJECTORS: Length = quantity("injectors", "Way to its injector", "m", 0.01, 30.0)
        .each()
        .measure("As for the coils: a string along the way that it will take.");
    /// The same of a second set.
    SECOND: Length = quantity("second", "Way to its second injector", "m", 0.01, 30.0)
        .each()
        .measure("As for the coils: a string along the way that it will take.");
    /// The same of the crank's sensor.
    CRANK: Length = quantity("crank", "Way to the crank sensor", "m", 0.01, 30.0);
    /// The same of the cam's sensor.
    CAM: Length = quantity("cam", "Way to the cam sensor", "m", 0.01, 30.0);
    /// From where the feed of the coils branches to each of them.
    COIL_FEED: Length = quantity("coil_feed", "Branch of their feed to each coil", "m", 0.01, 30.0)
        .hint("from the splice");
    /// The ground of each coil with its igniter inside.
    COIL_GROUND: Length = quantity("coil_ground", "Ground wire of each coil", "m", 0.01, 30.0)
        .hint("igniter inside; blank: it has none");
    /// From where the feed of the injectors branches to each of them.
    INJECTOR_FEED: Length = quantity("injector_feed", "Branch of their feed to each injector", "m", 0.01, 30.0)
        .hint("from the splice");
    /// The connectors at the coils.
    COIL_ENDS: ConnectorFit = choice("coil_ends", "Harness connectors at the coils");
    /// The connectors at the injectors.
    INJECTOR_ENDS: ConnectorFit = choice("injector_ends", "Harness connectors at the injectors");
    /// What a pin of the controller's connector carries.
    PIN_CURRENT: Current = quantity("pin_current", "One pin of the controller carries", "A", 0.1, 100.0)
        .hint("hot, from the connector's data")
        .rare();
    /// The sizes that such a pin and its seal take.
    PIN_WIRE: Area = quantity("pin_wire", "Wire that its pins and seals fit", "mm2", 0.05, 25.0)
        .hint("0.5 to 1 mm2")
        .rare();
    /// The colour of feeds that are live with the key off.
    PERMANENT: Text = text("permanent", "Colour of battery feeds (30)")
        .hint("RD")
        .rare();
    /// The colour of feeds that are switched.
    SWITCHED: Text = text("switched", "Colour of switched feeds (15, 87)")
        .hint("OG")
        .rare();
    /// The colour of grounds.
    GROUND: Text = text("ground", "Colour of grounds (31)")
        .hint("BK")
        .rare();
    /// What is done, by the names of the wires.
    DONE: Text = text("done", "Wires done");
}
