//! What a step of an answer is for, and how it is said in few words.

use crate::{
    message::{Gaps, Message},
    quantity::Value,
    words::{Wording, gaps_are_of},
};

use super::steps;

/// What is done with a step. A step for which nothing stands here is done with the hands, or is said by another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum StepUse {
    /// It is known, looked up or measured before there is an answer.
    Ask,
    /// It is typed into the controller.
    Enter,
    /// It is a part to buy.
    Buy,
    /// It is a part for each injector.
    BuyEach,
    /// It is proved at the car.
    Prove,
    /// It is read at a bare pin, before anything is plugged in.
    Pin,
    /// It is seen on a test lamp at a bare pin.
    Lamp,
    /// It cures what was found.
    Cure,
}

/// A sentence that says what to do, and all that it is for.
#[derive(Clone, Copy, Debug)]
pub(super) struct Sorted {
    /// The code of the sentence.
    pub(super) code: &'static str,
    /// Each purpose with the few words for it, which go by the name of the sentence that they shorten.
    pub(super) uses: &'static [(StepUse, Wording)],
}

/// The sentence with only what is needed for a purpose, where it is for that.
pub(super) fn shortened(message: &Message, purpose: StepUse) -> Option<Message> {
    let wording = wording(message.code, purpose)?;
    Some(Message::of_values(wording, message.values.clone()))
}

/// The same, each value without its range.
pub(super) fn without_ranges(message: &Message, purpose: StepUse) -> Option<Message> {
    let wording = wording(message.code, purpose)?;
    let values: Gaps = message.values.iter().map(|(name, value)| (*name, as_met(value))).collect();
    Some(Message::of_values(wording, values))
}

fn wording(code: &str, purpose: StepUse) -> Option<&'static Wording> {
    let uses = known(code)?.uses;
    uses.iter().find(|(of, _)| *of == purpose).map(|(_, wording)| wording)
}

/// Whether a sentence says how something that was found is cured.
pub(super) fn is_cure(message: &Message) -> bool {
    wording(message.code, StepUse::Cure).is_some()
}

/// What is known of a sentence that says what to do.
pub(super) fn known(code: &str) -> Option<&'static Sorted> {
    steps::ALL.iter().copied().flatten().find(|it| it.code == code)
}

/// Below this a meter shows nothing worth reading.
const NEARLY_NOUGHT: f64 = 0.1;

/// A reading as a meter gives it: `12.6 V (12.6 V to 14.4 V)` is 12.6 V, and a millivolt is nought.
fn as_met(value: &Value) -> Value {
    if value.unit == Some("V") && value.number.is_some_and(|it| it.abs() < NEARLY_NOUGHT) {
        return value.clone().said("0 V".to_owned());
    }
    let mut text = String::new();
    let mut rest = value.shown.as_str();
    while let Some((before, inside, after)) = bracketed(rest) {
        text.push_str(before);
        if !inside.contains(" to ") {
            text.extend([" (", inside, ")"]);
        }
        rest = after;
    }
    text.push_str(rest);
    value.clone().said(text)
}

fn bracketed(text: &str) -> Option<(&str, &str, &str)> {
    let (before, rest) = text.split_once(" (")?;
    let (inside, after) = rest.split_once(')')?;
    Some((before, inside, after))
}

/// The few words for a sentence, whose gaps must be among those of the sentence: anything else does not compile.
pub(super) const fn few(of: &'static Wording, text: &'static str) -> Wording {
    let short = Wording { code: of.code, text };
    assert!(
        gaps_are_of(&short, of),
        "a gap of these words is none of the sentence that they shorten"
    );
    short
}

/// Declares what sentences are for: a line each.
macro_rules! purposes {
    ($($of:path => $($purpose:ident $text:literal),*;)*) => {
        pub(super) const STEPS: &[$crate::report::usual::step::Sorted] = &[$(
            $crate::report::usual::step::Sorted {
                code: $of.code,
                uses: &[$((
                    $crate::report::usual::step::StepUse::$purpose,
                    $crate::report::usual::step::few($of, $text),
                )),*],
            },
        )*];
    };
}

pub(super) use purposes;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        quantity::{Measure, volts},
        questions::outputs::words,
        say,
    };

    #[test]
    fn a_reading_is_said_as_a_meter_gives_it() {
        let ranged = |v: f64, words: &str| volts(v).show().said(words.to_owned());
        for (value, expected) in [
            (ranged(12.6, "12.6 V (12.6 V to 14.4 V)"), "12.6 V"),
            (ranged(0.00126, "1.26 mV (1.26 mV to 2.04 mV)"), "0 V"),
            (
                Value::text("0 V, and 12.6 V (12.6 V to 14.4 V) with the output on"),
                "0 V, and 12.6 V with the output on",
            ),
            (Value::text("permanent battery (30)"), "permanent battery (30)"),
            (Value::text("0 V (floats), or (not"), "0 V (floats), or (not"),
        ] {
            assert_eq!(as_met(&value).shown, expected, "{}", value.shown);
        }
    }

    #[test]
    fn a_step_is_said_in_few_words_for_what_it_is_for() {
        let end = say!(words::DO_END, end = "ground (31)", then = "at most 0 V across it at rest");
        let cure = shortened(&end, StepUse::Cure).map(Message::into_text);
        assert_eq!(cure.as_deref(), Some("Move its other end to ground (31)."));
        assert_eq!(shortened(&end, StepUse::Buy), None, "no part is bought for that");
        assert!(is_cure(&end), "it is a way to the same as others");
    }

    #[test]
    fn no_step_is_sorted_twice() {
        let all: Vec<_> = steps::ALL.iter().copied().flatten().map(|it| it.code).collect();
        let mut once = all.clone();
        once.sort_unstable();
        once.dedup();
        assert_eq!(once.len(), all.len());
    }
}
