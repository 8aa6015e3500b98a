//! The sentences about one cycle at a speed.

use crate::words::Sentence;

pub(in crate::words) const SENTENCES: &[Sentence] = &[
    ("channels.strip-title", "One cycle at {speed}"),
    ("channels.strip-coils", "Up to {n} {n|coil is|coils are} charged at once"),
    ("channels.strip-misplaced", "{n} {n|spark comes|sparks come} in the wrong place"),
    ("channels.strip-injectors", "Up to {n} {n|injector is|injectors are} open at once"),
    ("channels.strip-dwell-runs-out", "A coil is wanted again before it is charged"),
    ("channels.strip-never-shut", "The injectors never shut"),
    (
        "channels.strip-why",
        "A charge takes {dwell} of the {least} between two of the same coil; an injection takes {injection}, with up to {n} {n|channel|channels} open at once.",
    ),
    (
        "channels.strip-why-coils",
        "A charge takes {dwell} of the {least} between two of the same coil.",
    ),
    (
        "channels.strip-why-injectors",
        "An injection takes {injection}, with up to {n} {n|channel|channels} open at once.",
    ),
    ("channels.strip-why-second", "Only the second set has moments of its own."),
    (
        "channels.strip-do-dwell",
        "A charge must fit into {least}: a shorter dwell, a lower speed, or a coil for each cylinder.",
    ),
    (
        "channels.strip-do-injection",
        "An injection must fit into {least}: a larger injector, a second set, or a lower speed.",
    ),
    ("channels.figure-dwell-angle", "A charge lasts"),
    ("channels.figure-coils-at-once", "Ignition channels charging at once"),
    ("channels.figure-injection-angle", "An injection lasts"),
    ("channels.figure-injectors-at-once", "Injection channels open at once"),
    ("channels.figure-second-angle", "An injection of the second set lasts"),
    ("channels.figure-second-at-once", "Channels of the second set open at once"),
    (
        "channels.strip-picture",
        "The cycle at this speed: each coil's charging and each injector's opening",
    ),
    (
        "channels.strip-picture-wired",
        "The cycle at this speed, as wired: each coil's charging and each injector's opening",
    ),
];
