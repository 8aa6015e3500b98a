//! The sentences about what relay and controller are left with while the starter turns.

use crate::words::{Explanation, sentences};

sentences! {
    NO_FEED = "cranking.no-feed", "No feed while the starter turns";
    RESTARTS = "cranking.restarts", "The controller restarts while cranking";
    MAY_RESTART = "cranking.may-restart", "{threshold} works; the controller may restart";
    RELAY_OUT = "cranking.relay-out", "The relay can't pull in while cranking";
    RELAY_UNSURE = "cranking.relay-unsure", "{threshold} works; the relay may not pull in";
    FEED_CUT = "cranking.feed-cut",
        "The ignition feed (15) is cut while the starter turns, and with it: {names}. The engine turns and never fires.";
    LIVE_FEED = "cranking.live-feed",
        "Move them to a contact that stays live while the starter turns (15, not the accessory contact).";
    OTHER_LETS_GO = "cranking.other-lets-go", "{threshold} works; another relay may drop out";
    LETS_GO = "cranking.lets-go",
        "{name} is in before the starter turns and may drop out while it does: it stays in down to {holds}, and its coil then gets {coil}.";
    HOLDS_ONCE_IN = "cranking.holds-once-in",
        "Or let it pull in before the starter turns: with its coil at {hot} it then stays in down to {voltage}.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: LETS_GO.code,
        // The drop-out voltage of a relay that is not switched at a speed, at its coil's temperature, is more than is left there.
        why: "What it feeds drops out in the deepest dip of the battery, and comes back after it: no fuel, or no spark.",
        act: "Measure at its coil while the starter turns, hot; use a relay with a lower drop-out voltage, or better cables to the starter.",
        source: "copper gains 0.393% of its resistance per kelvin (IEC 60028); a relay holds at a current",
    },
    Explanation {
        code: FEED_CUT.code,
        // The ignition feed is said to be cut while the starter turns, and a relay of coils, injectors or pump, or the
        // controller, hangs on it.
        why: "A key switch cuts its accessory contact while it is at start, so that all the battery goes to the starter.",
        act: "Find a feed that reads battery voltage with the key on and while the starter turns.",
        source: "common practice, no source; DIN 72552 has 15 for the contact that stays",
    },
];
