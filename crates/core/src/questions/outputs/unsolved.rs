//! What is said where solving a load, or all other ways to connect it, is more than an answer may take.

use crate::{
    budget::Budget,
    finding::{Finding, Findings, Severity},
    message::Message,
    output::{FarEnd, Wiring, cost},
    quantity::{Value, number},
    questions::outputs::words,
    read::{OutputLink, PlannedLoad, PlannedRest},
    report::{Answer, Tone},
    say,
};

/// The answer about a load that is not solved: how much hangs together, and with what it would be.
pub(super) fn answer(
    planned: &PlannedRest,
    load: &PlannedLoad,
    findings: &mut Findings,
) -> Option<Answer> {
    let OutputLink::To(number) = load.link else { return None };
    let output = planned.outputs.get(number)?;
    let at = planned.place(load)?;
    let wirings: Option<Vec<_>> = output
        .output
        .as_ref()?
        .levels()
        .iter()
        .map(|level| planned.wiring(number, *level))
        .collect();
    let wirings = wirings?;
    let wiring = wirings.first()?;
    let all = |of: &dyn Fn(&Wiring) -> u64| wirings.iter().map(of).fold(0, u64::saturating_add);
    let circuits = thousands(all(&|it| cost::circuits(it, at, &planned.around)));
    let exact = all(&|it| cost::resting(&it.exact(), at, &planned.around));
    // each of them costs about as much
    let all_exact = exact.saturating_mul(u64::try_from(planned.loads.len()).unwrap_or(u64::MAX));
    let cure = (all_exact <= super::MOST).then(|| say!(words::DO_EXACT));
    let mut answer = Answer::new(load.path(), Tone::Open, say!(words::OPEN_TOO_MUCH));
    answer.title =
        Some(say!(words::LOAD_TITLE, load = load.name.clone(), output = output.name.clone()));
    let joined = wiring.beyond.len() + 1;
    let hanging =
        wiring.loads.len() + wiring.beyond.iter().map(|pin| pin.loads.len()).sum::<usize>();
    answer.why = Some(say!(
        words::WHY_TOO_MUCH,
        outputs = joined,
        loads = hanging,
        circuits = circuits.clone()
    ));
    answer.to_do.extend(cure.clone());
    let message = say!(
        words::TOO_MUCH_TOGETHER,
        load = load.name.clone(),
        outputs = joined,
        loads = hanging,
        circuits = circuits
    );
    let field = if load.far_end == Some(FarEnd::Output) { "far_output" } else { "output" };
    let path = format!("{}.{field}", load.place.record());
    findings.push(Finding::new(Severity::Doubt, path, message).cured_by(cure));
    Some(answer)
}

/// A count with no more than two figures.
fn thousands(count: u64) -> Value {
    if count < 1000 {
        return Value::text(count.to_string());
    }
    #[expect(clippy::cast_precision_loss, reason = "shown with few digits")]
    let thousands = (count as f64 / 1e3).round();
    Value::text(format!("{} thousand", number(thousands)))
}

/// That not all other ways to connect a load were tried; nothing where they were.
pub(super) fn not_all_tried(load: &PlannedLoad, budget: &Budget) -> Option<Finding> {
    let message = || say!(words::NOT_ALL_WAYS_TRIED, load = load.name.clone());
    let path = || format!("{}.output", load.place.record());
    budget.is_short().then(|| Finding::new(Severity::Note, path(), message()))
}

/// What is said in place of other ways where none was found.
pub(super) fn nothing_found(budget: &Budget) -> Message {
    if budget.is_short() { say!(words::DO_NOT_ALL_TRIED) } else { say!(words::DO_NOTHING_FOUND) }
}
