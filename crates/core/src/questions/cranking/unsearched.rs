//! What is said where following every start is more than an answer may take.

use super::{Known, judge, search::StartSearch};
use crate::{
    cranking::{CrankingAnswer, CrankingInputs, cost},
    fields,
    finding::{Finding, Severity},
    message::Message,
    quantity::{Time, Value, number, seconds},
    questions::cranking::words,
    report::Tone,
    say,
    schema::Place,
};

/// A field that makes an answer cost what it does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Costly {
    /// How long the starter takes: the teeth of every start.
    RunUp,
    /// How long the engine takes to stop: the teeth until it does.
    RunDown,
    /// How many teeth make a reading: the places among them at which false edges may begin.
    Averaging,
}

impl Costly {
    /// Without which the answer is none.
    fn of_answer(inputs: &CrankingInputs) -> Self {
        let is_stop =
            inputs.threshold.is_some() && cost::stopping(inputs) > cost::surveying(inputs);
        if is_stop { Self::RunDown } else { Self::RunUp }
    }

    /// Of all that is tried.
    fn of_all(inputs: &CrankingInputs) -> Self {
        let needed = cost::stopping(inputs).max(cost::surveying(inputs));
        if cost::mistaking(inputs) > needed { Self::Averaging } else { Self::of_answer(inputs) }
    }

    fn place(self) -> Place {
        match self {
            Self::RunUp => fields::cranking::RUN_UP.place(),
            Self::RunDown => fields::cranking::RUN_DOWN.place(),
            Self::Averaging => fields::cranking::AVERAGING.place(),
        }
    }

    fn label(self) -> &'static str {
        self.place().field().label
    }

    fn value(self, inputs: &CrankingInputs) -> Value {
        match self {
            Self::RunUp => super::figures::band(inputs.run_up),
            Self::RunDown => super::figures::band(inputs.run_down),
            Self::Averaging => inputs.averaging.into(),
        }
    }

    /// Millions of teeth that are followed for its sake.
    fn teeth(self, inputs: &CrankingInputs) -> String {
        let teeth = match self {
            Self::RunUp => cost::teeth_of_starts(inputs),
            Self::RunDown => cost::teeth_of_stops(inputs),
            Self::Averaging => cost::mistaking(inputs),
        };
        #[expect(clippy::cast_precision_loss, reason = "shown with few digits")]
        let millions = teeth as f64 / 1e6;
        number(if millions >= 10.0 { millions.round() } else { (millions * 10.0).ceil() / 10.0 })
    }

    /// The same engine with at most so much there.
    fn shortened(self, inputs: &CrankingInputs, most: Time) -> CrankingInputs {
        let mut shorter = inputs.clone();
        let time = match self {
            Self::RunUp => &mut shorter.run_up,
            Self::RunDown => &mut shorter.run_down,
            Self::Averaging => return shorter,
        };
        *time = time.map(|it| if it > most { most } else { it });
        shorter
    }
}

/// The verdict where no start was followed: what is wrong without that, or that it is open.
pub(super) fn verdict(
    known: &Known,
    inputs: &CrankingInputs,
    outline: Option<&CrankingAnswer>,
) -> (Tone, Message, Message) {
    if let Some(wrong) = outline.and_then(|it| judge::without_search(known, inputs, it)) {
        return wrong;
    }
    let teeth = Costly::of_answer(inputs).teeth(inputs);
    (
        Tone::Open,
        say!(words::unsearched::OPEN_UNSEARCHED),
        say!(words::unsearched::UNSEARCHED_WHY, teeth = teeth),
    )
}

/// That no start was followed, what makes it too much, and with what it would not be.
pub(super) fn finding(known: &Known, search: StartSearch<'_>) -> Finding {
    let inputs = search.inputs;
    let costly = Costly::of_answer(inputs);
    let message = say!(
        words::unsearched::UNSEARCHED,
        field = costly.label(),
        value = costly.value(inputs),
        teeth = costly.teeth(inputs)
    );
    // said once, for all relays: with its share for the first, as much is left for each other
    let cure = known
        .is_first()
        .then(|| longest(costly, inputs, search.budget.given().share))
        .flatten()
        .map(|most| say!(words::unsearched::SEARCH_SHORTER, field = costly.label(), value = most));
    Finding::new(Severity::Doubt, path(known, costly), message).cured_by(cure)
}

/// That not all was tried beside the answer; nothing where it was.
pub(super) fn not_all_tried(known: &Known, search: StartSearch<'_>) -> Option<Finding> {
    let inputs = search.inputs;
    let costly = Costly::of_all(inputs);
    search.budget.is_short().then(|| {
        let message = say!(
            words::unsearched::NOT_ALL_TRIED,
            field = costly.label(),
            value = costly.value(inputs)
        );
        Finding::new(Severity::Doubt, path(known, costly), message)
    })
}

/// A further relay is led to by itself.
fn path(known: &Known, costly: Costly) -> String {
    if known.is_first() { costly.place().path() } else { known.keys.threshold.path() }
}

/// The longest time there with which the answer would be searched in so many steps, in two figures that count; nothing where
/// none is.
fn longest(costly: Costly, inputs: &CrankingInputs, most: u64) -> Option<Time> {
    let at = |hundredths: u32| seconds(f64::from(hundredths) / 100.0);
    let is_searched = |hundredths: u32| {
        let shorter = costly.shortened(inputs, at(hundredths));
        cost::cresting(&shorter).saturating_add(cost::answering(&shorter)) <= most
    };
    let typed = match costly {
        Costly::RunUp => inputs.run_up.high,
        Costly::RunDown => inputs.run_down.high,
        Costly::Averaging => return None,
    };
    let (mut low, mut high) = (0, 1);
    while at(high) < typed && is_searched(high) {
        (low, high) = (high, 2 * high);
    }
    while high - low > 1 {
        let middle = u32::midpoint(low, high);
        if is_searched(middle) { low = middle } else { high = middle }
    }
    let rounded = if low >= 100 { low / 10 * 10 } else { low };
    (rounded > 0 && at(rounded) < typed).then(|| at(rounded))
}
