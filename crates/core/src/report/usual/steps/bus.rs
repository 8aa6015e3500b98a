//! What the steps of the question of the bus are for.

use crate::{questions::bus::words, report::usual::step::purposes};

purposes! {
    // still wanted
    words::DO_OTHER => Ask "the other line's volts";
    words::DO_PERIODS => Ask "how often each is sent: {list}";
    words::DO_SAMPLE => Ask "the devices' sample point: 75 to 87.5%, alike in all";
    // in the devices
    words::DO_RATE => Enter "{rate} in all devices";
    words::DO_SAME_RATE => Enter "{rate} in that device too";
    words::DO_IDENTIFIER => Enter "another identifier in one of the two";
    words::DO_SLOWER => ;
    // parts
    words::DO_FIT => Buy "resistors of 120 Ω, one for each end";
    words::DO_TWO => ;
    words::DO_ENDS => ;
    words::DO_BRANCH => ;
    words::DO_LINE => ;
    words::DO_SWAP => ;
    // at the car
    words::DO_OHMS => Prove "battery off: {low} to {high} between CAN-H and CAN-L";
    words::DO_UNPLUG => Prove "far terminator unplugged, ohms again: the same is a broken pair, no end a missing near one";
    words::DO_TAKE_OFF => Prove "devices unplugged one by one until the ohms rise";
    words::DO_CONTACT => Prove "each contact between the meter and the terminators, for {contact} too much";
    words::DO_SHORT => Prove "devices unplugged one by one until the short is gone; then along the pair";
    words::DO_SHORT_AT => Prove "the short, about {distance} of wire from the end at which it was read";
    words::DO_ONE_OFF => Prove "battery off: ohms from each line to ground and to plus";
    words::DO_HOLDER => Prove "devices unplugged one by one until the two lines come together";
    words::DO_TALK => Prove "two devices at least supplied, at one bit rate";
    words::DO_GROUNDS => Prove "each device's ground against the meter's, key on: millivolts";
}
