//! The sentences about what stands in the controller.

use crate::words::{Explanation, sentences};

sentences! {
    UNREADABLE = "firing.entered-unreadable", "“{typed}” can't be read: {wanted}.";
    WANTED_ORDER = "firing.wanted-order",
        "type each channel once, the first to fire first, as 1-5-3-6-2-4";
    WANTED_ANGLES = "firing.wanted-angles",
        "type rising angles, one for each firing, as 0 90 240 330 480 570";
    LENGTH = "firing.entered-length",
        "The controller has {n} {n|firing|firings} entered, and this plan has {wanted}: they can't be compared.";
    // verdicts and what to do
    VERDICT = "firing.verdict-entered", "As entered, {what} {n|fires|fire} at the wrong moment";
    DIFFERS = "firing.entered-differs",
        "As entered, sparks miss their own firing points: {errors}. The worst: {outcome}.";
    ENTER_ALL = "firing.enter-all", "Enter in the controller: {what}.";
    TAKE_HABIT = "firing.take-habit", "Or wire by the other numbering, which this order suits.";
    TAKE_ANGLES = "firing.take-angles", "Or, if the engine itself is odd-fire: use these angles for it.";
    DO_ENTER_ANGLES = "firing.do-enter-angles",
        "Enter the angles too, {angles}: at even intervals the sparks would be up to {most} out.";
    // the outputs
    OUTPUTS_TITLE = "firing.outputs-title", "Outputs, all uses together";
    OUTPUTS_TAKEN = "firing.outputs-taken", "{needed} of {there} outputs used";
    OUTPUTS_MISSING = "firing.outputs-missing", "Needs {needed} outputs, you have {there}";
    OUTPUTS_WHY = "firing.outputs-why", "{uses}.";
    OUTPUTS_SHORT = "firing.outputs-short",
        "All uses together need {needed} outputs ({uses}); the controller has {there}.";
    OUTPUTS_CURE = "firing.outputs-cure", "{what}: {way}, {n} {n|channel|channels}.";
    OUTPUTS_MORE = "firing.outputs-more",
        "Give loads fewer outputs, or use a controller with {needed}.";
    SETS_SHORT = "firing.sets-short",
        "Both sets of injectors need {needed} injection channels; the controller has {there}.";
    SETS_TELL = "firing.sets-tell", "If the second set has channels of its own: type how many.";
    USE_COILS = "firing.use-coils", "coils {n}";
    USE_INJECTORS = "firing.use-injectors", "injectors {n}";
    USE_SECOND = "firing.use-second", "second injectors {n}";
    USE_LOADS = "firing.use-loads", "loads and relays {n}";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: UNREADABLE.code,
        // Order or angles as entered can't be read, have a channel twice, or don't rise.
        why: "What the controller fires, and when, is not known.",
        act: "Type it as it is entered there.",
        source: "the form of this plan",
    },
    Explanation {
        code: LENGTH.code,
        // The order or the angles as entered have another count than the plan has channels.
        why: "A firing too many or too few puts every later one in another cylinder's place.",
        act: "Check the controller: its number of cylinders, and how the coils are fired.",
        source: "count of channels",
    },
    Explanation {
        code: DIFFERS.code,
        // Order or spacing in the controller and the channels of this plan fire a cylinder more than 2 degrees off.
        why: "Every channel fires in its place of the order, whatever is connected to it.",
        act: "Enter the order named, then fire each channel alone before you crank.",
        source: "geometry of the firing order; 2 degrees, as a mark is read, and no fault up to 5: common practice, no source",
    },
    Explanation {
        code: SETS_SHORT.code,
        // Both sets of injectors take more channels than there are, and none are told to be for the second alone.
        why: "What has no channel stays unconnected: a cylinder without its fuel.",
        act: "Let injectors share channels, or use outputs of another kind for the second set.",
        source: "count of channels",
    },
    Explanation {
        code: OUTPUTS_SHORT.code,
        // Coils, both sets of injectors, loads and relays take more outputs than all have together.
        why: "What has no output stays unconnected: a cylinder without spark or fuel, or a load that nothing switches.",
        act: "Let injectors share channels, do without a load, or use a larger controller.",
        source: "count of outputs",
    },
];
