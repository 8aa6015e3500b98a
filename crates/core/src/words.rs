//! The English of every sentence, in one place for each question: another language is another set of these.
//!
//! A gap is `{name}`; `{n|plug|plugs}` chooses by the number in `n`.

mod channels;
mod coils;
mod cranking;
mod engine;
mod field;
mod frame;
mod fuel;
mod injectors;
mod rest;
mod trigger;

use std::collections::BTreeMap;

use crate::quantity::Value;

/// A sentence and its code.
type Sentence = (&'static str, &'static str);

/// What a finding means, beyond its own sentence. When it is found stands as a comment beside each: nobody at the car
/// needs to be told, and the page would carry it.
#[derive(Clone, Copy, Debug)]
pub struct Explanation {
    /// The finding's code.
    pub code: &'static str,
    /// Why it matters.
    pub why: &'static str,
    /// What to do, in general; the remedies of a finding are more exact.
    pub act: &'static str,
    /// Where the rule comes from.
    pub source: &'static str,
}

const SENTENCES: [&[Sentence]; 17] = [
    frame::SENTENCES,
    field::SENTENCES,
    engine::SENTENCES,
    engine::crank::SENTENCES,
    channels::SENTENCES,
    channels::wired::SENTENCES,
    channels::taps::SENTENCES,
    channels::light::SENTENCES,
    channels::strip::SENTENCES,
    injectors::SENTENCES,
    injectors::parts::SENTENCES,
    fuel::SENTENCES,
    rest::SENTENCES,
    cranking::SENTENCES,
    cranking::relays::SENTENCES,
    coils::SENTENCES,
    trigger::SENTENCES,
];

const EXPLANATIONS: [&[Explanation]; 15] = [
    field::EXPLANATIONS,
    engine::EXPLANATIONS,
    engine::crank::EXPLANATIONS,
    channels::EXPLANATIONS,
    channels::wired::EXPLANATIONS,
    channels::taps::EXPLANATIONS,
    channels::light::EXPLANATIONS,
    injectors::EXPLANATIONS,
    injectors::parts::EXPLANATIONS,
    fuel::EXPLANATIONS,
    rest::EXPLANATIONS,
    cranking::EXPLANATIONS,
    cranking::relays::EXPLANATIONS,
    coils::EXPLANATIONS,
    trigger::EXPLANATIONS,
];

/// Every sentence.
pub fn sentences() -> impl Iterator<Item = Sentence> {
    SENTENCES.into_iter().flatten().copied()
}

/// The explanation of every finding.
pub fn explanations() -> impl Iterator<Item = &'static Explanation> {
    EXPLANATIONS.into_iter().flatten()
}

/// The sentence of a code; the code itself where there is none, which a test forbids.
pub fn sentence(code: &'static str) -> &'static str {
    sentences().find(|(name, _)| *name == code).map_or(code, |(_, text)| text)
}

/// The same, of a sentence that is said before there is any answer: it is looked for among those alone.
pub(crate) fn sentence_of_frame(code: &'static str) -> &'static str {
    frame::SENTENCES.iter().find(|(name, _)| *name == code).map_or(code, |(_, text)| text)
}

/// The explanation of a finding.
pub fn explanation(code: &str) -> Option<&'static Explanation> {
    explanations().find(|explanation| explanation.code == code)
}

/// Puts values into the gaps of a sentence; a gap without a value stays as it is.
pub(crate) fn fill(sentence: &str, values: &BTreeMap<&'static str, Value>) -> String {
    let mut text = String::with_capacity(sentence.len() + 32);
    let mut rest = sentence;
    while let Some((before, gap_and_after)) = rest.split_once('{') {
        text.push_str(before);
        let Some((gap, after)) = gap_and_after.split_once('}') else {
            text.push('{');
            rest = gap_and_after;
            continue;
        };
        match filled(gap, values) {
            Some(value) => text.push_str(&value),
            None => text.extend(["{", gap, "}"]),
        }
        rest = after;
    }
    text.push_str(rest);
    text
}

fn filled(gap: &str, values: &BTreeMap<&'static str, Value>) -> Option<String> {
    let mut parts = gap.split('|');
    let value = values.get(parts.next()?)?;
    match (parts.next(), parts.next()) {
        (Some(one), Some(many)) => {
            let is_one = value.number.is_some_and(|number| (number - 1.0).abs() < 1e-9);
            Some(if is_one { one } else { many }.to_owned())
        }
        _ => Some(value.shown.clone()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gaps_are_filled_and_numbers_agree() {
        let values = BTreeMap::from([("n", Value::from(1_u32)), ("m", Value::from(3_u32))]);
        let text = fill("move {n} {n|plug|plugs}, then {m} {m|plug|plugs}; {none} }{", &values);
        assert_eq!(text, "move 1 plug, then 3 plugs; {none} }{");
    }

    #[test]
    fn codes_are_unique_and_every_explanation_is_whole() {
        let mut codes: Vec<_> = sentences().map(|(code, _)| code).collect();
        let all = codes.len();
        codes.sort_unstable();
        codes.dedup();
        assert_eq!(codes.len(), all, "a code stands twice");
        for it in explanations() {
            assert!(codes.contains(&it.code), "{} has no sentence", it.code);
            for text in [it.why, it.act, it.source] {
                assert!(text.len() > 10, "{} is explained too shortly: {text:?}", it.code);
            }
        }
    }
}
