//! The sentences about what was typed.

use super::{Explanation, sentences};

sentences! {
    NO_NUMBER = "field.no-number",
        "{field}: “{typed}” has no number that can be read. Type {what}, for example {example}.";
    NOT_FINITE = "field.not-finite", "{field}: “{typed}” is too large to be {what}. Type, for example, {example}.";
    TWO_READINGS = "field.two-readings",
        "{field}: “{typed}” can be read as {small} or as {large}. Type it so that only one is possible.";
    WRONG_UNIT = "field.wrong-unit", "{field}: “{typed}” is {got}; it needs {what}, for example {example}.";
    WRONG_CAPITALS = "field.wrong-capitals",
        "{field}: in “{typed}” a capital changes the size: M is a million, m a thousandth. Type {known}, if that is meant.";
    UNKNOWN_UNIT = "field.unknown-unit",
        "{field}: the unit in “{typed}” is not known here. Type {what}, for example {example}.";
    LEFT_OVER = "field.left-over",
        "{field}: “{rest}” in “{typed}” can't be read. Type {what} alone, for example {example}.";
    TOO_SMALL = "field.too-small", "{field}: {value} is below what is possible. Type {low} to {high}.";
    TOO_LARGE = "field.too-large", "{field}: {value} is above what is possible. Type {low} to {high}.";
    UNREAD = "field.unread", "In place of what can't be read or used: {list}. Correct it first.";
    BOTH = "field.both", "Both together: {one} {other}";
    MEANT = "field.meant", "Is {meant} meant?";
    NOT_WHOLE = "field.not-whole", "{field}: “{typed}” is not a whole number. Type {low} to {high}.";
    UNKNOWN_CHOICE = "field.unknown-choice", "{field}: “{typed}” is not one of the choices. Choose: {choices}.";
    TOO_MANY = "field.too-many",
        "{field}: {count} entries; only the first {most} are looked at. Remove the others.";
    NO_SUCH_OUTPUT = "field.no-such-output",
        "{field}: there is no output named “{typed}”. Outputs there are: {choices}.";
    NO_PLACE = "field.no-place",
        "The file holds {n|a text|texts} with no place in a plan, or {n|whose place holds|whose places hold} another: {list}. {n|It is|They are} kept, but nothing depends on {n|it|them}.";
    NO_SUCH_RELAY = "field.no-such-relay",
        "{field}: there is no relay named “{typed}”. Relays there are: {choices}.";
    NO_SUCH_MODEL = "field.no-such-model",
        "{field}: there is none named “{typed}”. Choose one of: {choices}.";
    LIKE_ITSELF = "field.like-itself",
        "{field}: this leads back to itself through “{typed}”, so nothing is copied from it. Describe one of them.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: NO_NUMBER.code,
        // A number is wanted, and the text holds none.
        why: "Everything that depends on the field is left unanswered.",
        act: "Type the number with its unit. What was typed stays until then.",
        source: "the form of a quantity in this plan",
    },
    Explanation {
        code: NOT_FINITE.code,
        // The number is larger than any part could have.
        why: "A slip in the exponent would make every answer wrong.",
        act: "Type the number again, with its unit.",
        source: "the form of a quantity in this plan",
    },
    Explanation {
        code: TWO_READINGS.code,
        // One mark with three digits behind it: thousands in one country, a decimal in another.
        why: "The two readings differ by a factor of a thousand, and a guess would not be noticed.",
        act: "Leave out the mark for thousands, or write another number of decimals.",
        source: "common practice, no source: both habits are in use",
    },
    Explanation {
        code: WRONG_UNIT.code,
        // The unit belongs to another kind of quantity.
        why: "A resistance is not an inductance, however alike the numbers look on a data sheet.",
        act: "Look at the data sheet's line again and type that number with its unit.",
        source: "SI units, BIPM brochure",
    },
    Explanation {
        code: WRONG_CAPITALS.code,
        // M where m is a unit of this field, or m where M is.
        why: "The two differ by a factor of 1 000 000 000, and a guess would not be noticed.",
        act: "Type the unit in its own capitals: mJ, mA, mohm; Mohm, MPa.",
        source: "SI prefixes, BIPM brochure",
    },
    Explanation {
        code: UNKNOWN_UNIT.code,
        // The letters behind the number are no unit that this field knows.
        why: "Everything that depends on the field is left unanswered.",
        act: "Type the number with the unit of the example.",
        source: "the form of a quantity in this plan",
    },
    Explanation {
        code: LEFT_OVER.code,
        // Words follow the quantity.
        why: "They might change its meaning, so they are not passed over.",
        act: "Type only the number and its unit; put the words into the notes.",
        source: "the form of a quantity in this plan",
    },
    Explanation {
        code: TOO_SMALL.code,
        // The number can be read and is below what such a part can have.
        why: "An answer from an impossible number would look like any other answer.",
        act: "Check the number and its unit.",
        source: "limits of the field, common practice, no source",
    },
    Explanation {
        code: TOO_LARGE.code,
        // The number can be read and is above what such a part can have.
        why: "An answer from an impossible number would look like any other answer.",
        act: "Check the number and its unit.",
        source: "limits of the field, common practice, no source",
    },
    Explanation {
        code: NOT_WHOLE.code,
        // A count is wanted.
        why: "There is no half cylinder, channel or tooth.",
        act: "Type a whole number.",
        source: "definition of a count",
    },
    Explanation {
        code: UNKNOWN_CHOICE.code,
        // A plan file holds a word that is not among the field's choices.
        why: "Everything that depends on the field is left unanswered.",
        act: "Choose one of the choices.",
        source: "the form of this plan",
    },
    Explanation {
        code: TOO_MANY.code,
        // A list is longer than any engine or controller asks for.
        why: "A report of thousands of parts can't be read, and would keep the phone busy.",
        act: "Remove what is not needed.",
        source: "the form of this plan",
    },
    Explanation {
        code: NO_SUCH_OUTPUT.code,
        // A load names an output that the plan doesn't have.
        why: "What the load does can't be worked out without its output.",
        act: "Choose an output, or give the output that name.",
        source: "the form of this plan",
    },
    Explanation {
        code: NO_PLACE.code,
        // A file has an unknown name in it, or said the same thing twice and differently.
        why: "What you meant may be missing where it belongs; or two places of the file said different things of one fact.",
        act: "Read it, type what is true where it belongs, then remove it.",
        source: "the form of this plan",
    },
    Explanation {
        code: NO_SUCH_MODEL.code,
        // A part is said to be like one that the plan doesn't have.
        why: "What is left blank of this part stays unknown, or is assumed as usual.",
        act: "Choose a part of the same kind, or give that part this name.",
        source: "the form of this plan",
    },
    Explanation {
        code: LIKE_ITSELF.code,
        // Parts that are said to be like one another in a circle.
        why: "None of them says what they are all like.",
        act: "Clear the choice on the one that you describe; the others may be like it.",
        source: "the form of this plan",
    },
    Explanation {
        code: NO_SUCH_RELAY.code,
        // A load is fed by a relay that the plan doesn't have.
        why: "What the load does with the key off depends on that relay.",
        act: "Choose a relay, or give the relay that name.",
        source: "the form of this plan",
    },
];
