//! The sentences about one cycle at a speed.

use crate::words::sentences;

sentences! {
    STRIP_TITLE = "firing.strip-title", "One cycle at {speed}";
    STRIP_COILS = "firing.strip-coils", "Up to {n} {n|coil is|coils are} charged at once";
    STRIP_MISPLACED = "firing.strip-misplaced", "{n} {n|spark comes|sparks come} in the wrong place";
    STRIP_INJECTORS = "firing.strip-injectors", "Up to {n} {n|injector is|injectors are} open at once";
    STRIP_DWELL_RUNS_OUT = "firing.strip-dwell-runs-out", "A coil must fire before it is charged";
    STRIP_NEVER_SHUT = "firing.strip-never-shut", "The injectors never close";
    STRIP_WHY = "firing.strip-why",
        "Dwell takes {dwell} of the {least} between two charges of the same coil; an injection takes {injection}, with up to {n} {n|channel|channels} open at once.";
    STRIP_WHY_COILS = "firing.strip-why-coils",
        "Dwell takes {dwell} of the {least} between two charges of the same coil.";
    STRIP_WHY_INJECTORS = "firing.strip-why-injectors",
        "An injection takes {injection}, with up to {n} {n|channel|channels} open at once.";
    STRIP_WHY_SECOND = "firing.strip-why-second", "Only the second set has moments of its own.";
    STRIP_DO_DWELL = "firing.strip-do-dwell",
        "Dwell must fit into {least}: a shorter dwell, a lower speed, or a coil for each cylinder.";
    STRIP_DO_INJECTION = "firing.strip-do-injection",
        "An injection must fit into {least}: a larger injector, a second set, or a lower speed.";
    FIGURE_DWELL_ANGLE = "firing.figure-dwell-angle", "Dwell";
    FIGURE_COILS_AT_ONCE = "firing.figure-coils-at-once", "Ignition channels charging at once";
    FIGURE_INJECTION_ANGLE = "firing.figure-injection-angle", "An injection lasts";
    FIGURE_INJECTORS_AT_ONCE = "firing.figure-injectors-at-once", "Injection channels open at once";
    FIGURE_SECOND_ANGLE = "firing.figure-second-angle", "An injection of the second set lasts";
    FIGURE_SECOND_AT_ONCE = "firing.figure-second-at-once", "Channels of the second set open at once";
    STRIP_PICTURE = "firing.strip-picture",
        "The cycle at this speed: each coil's dwell and each injector's opening";
    STRIP_PICTURE_WIRED = "firing.strip-picture-wired",
        "The cycle at this speed, as wired: each coil's dwell and each injector's opening";
}
