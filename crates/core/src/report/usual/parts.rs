//! What is bought, counted over the car.

use crate::{message::Message, report::Report};

use super::{
    Chosen, names,
    step::{StepUse, shortened},
};

/// A part to buy.
#[derive(Clone, Debug, PartialEq)]
pub struct Bought {
    /// How many; nothing where the words say so, or it is not known.
    pub count: Option<u32>,
    /// What they are counted in, where it isn't pieces.
    pub unit: Option<&'static str>,
    /// What it is, with value and rating.
    pub words: Message,
    /// Where it goes.
    pub places: Vec<String>,
}

pub(super) fn parts(report: &Report, chosen: &[Chosen<'_>]) -> Vec<Bought> {
    let mut parts: Vec<Bought> = Vec::new();
    for it in chosen.iter().filter(|it| !it.is_there() && !it.is_fitted()) {
        let (count, words) = match shortened(it.message, StepUse::BuyEach) {
            Some(words) => (injectors(report, it.subject), words),
            None => match shortened(it.message, StepUse::Buy) {
                Some(words) => (Some(listed(it.message, "n").unwrap_or(1)), words),
                None => continue,
            },
        };
        let by_length = listed(it.message, "metres");
        let (count, unit) = (by_length.or(count), by_length.map(|_| "m"));
        let at = it
            .message
            .values
            .get("at")
            .or(it.message.values.get("bolts"))
            .map(|it| it.shown.clone());
        let place = at.unwrap_or_else(|| it.about.clone());
        match parts.iter_mut().find(|part| part.words.text == words.text) {
            // the same cure of another thing that was found of the same part
            Some(part) if part.places.contains(&place) => {}
            Some(part) => {
                part.count = part.count.zip(count).map(|(one, other)| one.saturating_add(other));
                part.places.push(place);
            }
            None => parts.push(Bought { count, unit, words, places: vec![place] }),
        }
    }
    for part in &mut parts {
        part.places = names::folded(&part.places);
    }
    parts
}

/// How many injectors there are of the set that this is about.
fn injectors(report: &Report, subject: &str) -> Option<u32> {
    let set =
        if subject.starts_with("second_injectors") { "second_injectors" } else { "injectors" };
    let count = report.fields.get(&[set, ".count"].concat())?.value.as_ref()?.number?;
    Some(whole(count))
}

/// How many a sentence says to buy, or how many metres.
fn listed(message: &Message, name: &str) -> Option<u32> {
    Some(whole(message.values.get(name)?.number?))
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a field takes counts up to a few dozen, a list metres up to a few thousand"
)]
fn whole(count: f64) -> u32 {
    count as u32
}
