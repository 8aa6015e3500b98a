//! What the steps of the question of coils are for.

use crate::{questions::coils::words, report::usual::step::purposes};

purposes! {
    words::DO_ENGINE => Ask "the engine, and how its coils are fired";
    words::DO_RATING => Ask "the contact rating of the coils' relay";
    words::DO_SPEED => Ask "highest speed of the engine";
    // in the controller; the dwell of each supply comes from its table
    words::DO_ENTER => ;
    words::DO_START =>
        Enter "dwell {least} at {supply}, raised with a current clamp to {current}",
        Cure "Start with {least}, and raise it with a current clamp to {current}.";
    words::CURE_DWELL => Cure "Enter {dwell} at {supply}.";
    // parts
    words::FEED_FIT => Buy "{relays||for each relay: }fuse {fuse}, close to the battery, contact for {peak}";
    words::FUSE_LARGER => Buy "fuse {fuse}";
    words::FUSE_EACH => Buy "for each igniter: fuse {fuse}";
    words::SPEED_RELAY => Buy "relay for the coils, threshold {speed}";
    words::HOLD_INPUT => Buy "resistor from the igniter's input to ground";
    words::OWN_IGNITER => Buy "igniter for each coil";
    words::FEED_SPLIT => Buy "another relay with a fuse";
    // at the car
    words::DO_PROVE => Prove "current clamp on one coil's feed, fuel off first: rises to {current}, no further";
    // other coils, or said elsewhere
    words::CURE_ONCE => ;
    words::CURE_LESS => ;
    words::DO_OTHER_COIL => ;
    words::DO_OTHER_PAIR => ;
    words::FEED_GROUND => ;
}
