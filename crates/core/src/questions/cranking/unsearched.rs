//! What is said where following every start is more than an answer may take.

use super::{Known, judge, search::StartSearch};
use crate::{
    cranking::{CrankingAnswer, CrankingInputs, cost},
    fields,
    finding::{Finding, Severity},
    message::Message,
    quantity::{Time, number, seconds},
    questions::cranking::words,
    report::Tone,
    say,
    schema::Key,
};

/// The field that makes an answer cost what it does: how long the starter takes, and so how many teeth pass.
const COSTLY: Key<Time> = fields::cranking::RUN_UP;

/// Millions of teeth that pass in all starts.
fn millions(inputs: &CrankingInputs) -> String {
    in_millions(cost::teeth_of_starts(inputs))
}

fn in_millions(teeth: u64) -> String {
    #[expect(clippy::cast_precision_loss, reason = "shown with few digits")]
    let millions = teeth as f64 / 1e6;
    number(if millions >= 10.0 { millions.round() } else { (millions * 10.0).ceil() / 10.0 })
}

/// The verdict where the relay was not looked at in every start: what is wrong without that, or that it is open.
pub(super) fn verdict(
    known: &Known,
    inputs: &CrankingInputs,
    outline: &CrankingAnswer,
) -> (Tone, Message, Message) {
    if let Some(wrong) = judge::without_search(known, inputs, outline) {
        return wrong;
    }
    let teeth = millions(inputs);
    (
        Tone::Open,
        say!(words::unsearched::OPEN_UNSEARCHED),
        say!(words::unsearched::UNSEARCHED_WHY, teeth = teeth),
    )
}

/// That not every start was looked at, what makes it too much, and with what it would not be.
pub(super) fn finding(known: &Known, search: StartSearch<'_>) -> Finding {
    let inputs = search.inputs;
    let message = say!(
        words::unsearched::UNSEARCHED,
        field = COSTLY.field().label,
        value = super::figures::band(inputs.run_up),
        teeth = millions(inputs)
    );
    // said once, for all relays: with its share for the first, as much is left for each other
    let cure =
        known.is_first().then(|| longest(inputs, search.budget.given().share)).flatten().map(
            |most| {
                let field = COSTLY.field().label;
                say!(words::unsearched::SEARCH_SHORTER, field = field, value = most)
            },
        );
    Finding::new(Severity::Doubt, path(known), message).cured_by(cure)
}

/// A further relay is led to by itself.
fn path(known: &Known) -> String {
    if known.is_first() { COSTLY.place().path() } else { known.keys.threshold.path() }
}

/// The longest run-up with which the answer is sure to be searched in so many steps, in two figures that count; nothing where
/// none is.
fn longest(inputs: &CrankingInputs, most: u64) -> Option<Time> {
    let at = |hundredths: u32| seconds(f64::from(hundredths) / 100.0);
    let is_searched = |hundredths: u32| {
        let mut shorter = inputs.clone();
        let most_s = at(hundredths);
        shorter.run_up = shorter.run_up.map(|it| if it > most_s { most_s } else { it });
        cost::answering_at_most(&shorter) <= most
    };
    let (mut low, mut high) = (0, 1);
    while at(high) < inputs.run_up.high && is_searched(high) {
        (low, high) = (high, 2 * high);
    }
    while high - low > 1 {
        let middle = u32::midpoint(low, high);
        if is_searched(middle) { low = middle } else { high = middle }
    }
    let rounded = if low >= 100 { low / 10 * 10 } else { low };
    (rounded > 0 && at(rounded) < inputs.run_up.high).then(|| at(rounded))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn millions_have_tenths_below_ten_and_none_from_there_on() {
        for (teeth, shown) in [
            (120_000, "0.2"),
            (9_410_000, "9.5"),
            (9_900_000, "9.9"),
            (10_000_000, "10"),
            (10_400_000, "10"),
            (123_600_000, "124"),
        ] {
            assert_eq!(in_millions(teeth), shown, "{teeth}");
        }
    }
}
