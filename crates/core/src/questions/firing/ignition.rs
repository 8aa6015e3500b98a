//! The ignition: its plan, and what is really wired.

use super::{
    Details, Mapped, effects, entered, plan, plan::BothNumberings, read::entered::Entered,
    sequence::Sequence, wired,
};
use crate::{
    channels::{Effect, Habit, Ignition, Layout, Need, Stroke, Target, UnfitLayout, within},
    engine::{Engine, EngineKind, TURN},
    fields,
    finding::{Finding, Findings, Severity},
    message::{Edit, Message},
    quantity::{CrankAngle, Value},
    questions::firing::words,
    read::Channels,
    report::{Answer, Detail, Row, Table, Tone, Verdict},
    say,
    schema::{Choice as _, Key, Whole},
};

const MODE: Key<Ignition> = fields::channels::IGNITION_MODE;
const COUNT: Key<Whole> = fields::channels::IGNITION_COUNT;

/// The answer as planned; and as wired, where something was found at the car.
pub(super) fn answers(
    engine: &Engine,
    channels: &Channels<Ignition>,
    (in_controller, is_lit): (&Entered, bool),
    mapped: &mut Option<Mapped>,
    sequence: &mut Sequence,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Answer> {
    let (Some(mode), Some(_)) = (channels.mode.value(), channels.habit.value()) else {
        return vec![with_ways(open(engine, channels), engine, details)];
    };
    let numbered = |habit| Layout::ignition(engine, mode, habit);
    let (by_order, by_cylinder) = match (numbered(Habit::ByOrder), numbered(Habit::ByCylinder)) {
        (Ok(by_order), Ok(by_cylinder)) => (by_order, by_cylinder),
        (Err(unfit), _) | (_, Err(unfit)) => {
            let answer = unfit_answer(engine, channels, unfit, sequence.has_cam(), findings);
            return vec![with_ways(answer, engine, details)];
        }
    };
    let has_order = mode != Ignition::Distributor;
    let numbering = BothNumberings {
        by_order: &by_order,
        by_cylinder: has_order.then_some(&by_cylinder),
        used: channels.habit,
    };
    let mut in_controller = in_controller.clone();
    let as_entered = (mode != Ignition::Distributor)
        .then(|| entered::layout(engine, numbering.layout(), &mut in_controller, findings))
        .flatten();
    let in_order = as_entered.as_ref().map(|it| &it.in_order);
    let mode_of = wired::Mode::Ignition(mode);
    let wiring = wired::CheckedConnection::new(engine, &numbering, in_order, channels, mode_of);
    *mapped = Some(wiring.mapped());
    let mut answer = planned(engine, mode, channels, &numbering, findings);
    let is_good = answer.verdict.tone == Tone::Good;
    if mode != Ignition::Distributor && is_good {
        answer.to_do.extend(entered::angles_to_enter(engine, &in_controller));
    }
    if in_controller.is_spoiled && is_good {
        answer.verdict = Verdict { tone: Tone::Open, message: say!(words::MEND) };
        answer.why = Some(say!(words::MEND_WHY));
    }
    if let Some(as_entered) = &as_entered {
        entered::judge(engine, &numbering, as_entered, &wiring.seen.wired, &mut answer, findings);
    }
    let there = channels.count.value();
    let needs_cam = Need::ignition(engine, mode).is_ok_and(|need| need.needs_cam);
    sequence.judge(&mut answer, needs_cam, "coils", || without_cam(engine, channels));
    if !is_lit {
        wired::leave_open(&wiring, &mut answer);
    }
    answer.show(details.map(|it| (it.ignition)(engine, mode, there, &numbering)));
    answer.bench = details.and_then(|it| (it.bench)(&wiring));
    let mut answers = vec![answer];
    answers.extend(wired::answer(&wiring, details, findings));
    answers
}

/// With what each way would take below it.
fn with_ways(mut answer: Answer, engine: &Engine, details: Option<&Details>) -> Answer {
    answer.show(details.map(|it| (it.ignition_ways)(engine)));
    answer
}

/// What each way would take, where none is planned yet or the planned one can't be.
pub(super) fn ways_alone(engine: &Engine) -> Detail {
    Detail { tables: vec![ways(engine)], ..Detail::default() }
}

fn titled(subject: impl Into<String>, tone: Tone, verdict: Message) -> Answer {
    let mut answer = Answer::new(subject, tone, verdict);
    answer.title = Some(say!(words::TITLE_IGNITION));
    answer
}

/// How the coils are fired is not known: what each way would take.
fn open(engine: &Engine, channels: &Channels<Ignition>) -> Answer {
    let (verdict, why) = if channels.mode.is_missing() {
        (say!(words::IGNITION_OPEN), say!(words::IGNITION_OPEN_WHY))
    } else {
        (say!(words::MEND), say!(words::MEND_WHY))
    };
    let mut answer = titled(MODE, Tone::Open, verdict);
    answer.why = Some(why);
    answer.to_do.extend(channels.count.value().map(|count| best(engine, count)));
    answer
}

fn planned(
    engine: &Engine,
    mode: Ignition,
    channels: &Channels<Ignition>,
    numbering: &BothNumberings<'_>,
    findings: &mut Findings,
) -> Answer {
    let layout = numbering.layout();
    let needed = layout.channels();
    let there = channels.count.value();
    let short = there.filter(|&there| there < needed);
    let mut answer = match short {
        Some(there) => short_answer(engine, needed, there, findings),
        None => titled(MODE, Tone::Good, verdict(engine, mode, needed)),
    };
    answer.why.get_or_insert_with(|| why(engine, mode));
    let has_order = numbering.by_cylinder.is_some();
    if short.is_none() {
        answer.to_do = to_do(layout, has_order);
    }
    answer.cautions = vec![say!(words::CAUTION_SPARK), say!(words::CAUTION_VOLTAGE)];
    answer
}

/// The planned channels, with those there are.
pub(super) fn detail(
    engine: &Engine,
    mode: Ignition,
    there: Option<u32>,
    numbering: &BothNumberings<'_>,
) -> Detail {
    let (layout, has_order) = (numbering.layout(), numbering.by_cylinder.is_some());
    let steps = Need::ignition(engine, mode).map(|need| need.working).unwrap_or_default();
    Detail {
        figures: plan::figures(layout, &steps, there, has_order),
        tables: vec![numbering.table(engine), ways(engine)],
        pictures: vec![plan::picture(engine, layout)],
    }
}

/// How the coils would be fired without a cam.
fn without_cam(engine: &Engine, channels: &Channels<Ignition>) -> Option<(Message, Edit)> {
    let there = channels.count.value().unwrap_or(u32::MAX);
    let (mode, _) = within(engine, there).into_iter().find(|(_, need)| !need.needs_cam)?;
    Some((way(mode), MODE.edit(mode.choosable().code)))
}

fn to_do(layout: &Layout, has_order: bool) -> Vec<Message> {
    if !has_order {
        return vec![say!(words::DO_TOWERS)];
    }
    // one channel has no order
    let has_order = layout.slots().len() > 1;
    let order = has_order.then(|| say!(words::DO_ENTER, order = plan::order_of(layout)));
    [say!(words::DO_WIRE)].into_iter().chain(order).collect()
}

fn verdict(engine: &Engine, mode: Ignition, needed: u32) -> Message {
    let rotary = engine.kind() == EngineKind::Rotary;
    match mode {
        Ignition::Sequential if rotary => say!(words::VERDICT_PLUGS, needed = needed),
        Ignition::Sequential => say!(words::VERDICT_SEQUENTIAL, needed = needed),
        Ignition::EveryTurn => say!(words::VERDICT_EVERY_TURN, needed = needed),
        Ignition::PairedSingle => say!(words::VERDICT_PAIRED_SINGLE, needed = needed),
        Ignition::PairedDouble => say!(words::VERDICT_PAIRED_DOUBLE, needed = needed),
        Ignition::Distributor => say!(words::VERDICT_DISTRIBUTOR, needed = needed),
    }
}

fn why(engine: &Engine, mode: Ignition) -> Message {
    let one_turn = engine.cycle() == TURN;
    match mode {
        Ignition::Sequential | Ignition::EveryTurn if engine.kind() == EngineKind::Rotary => {
            say!(words::WHY_ROTARY)
        }
        Ignition::Sequential | Ignition::EveryTurn if one_turn => say!(words::WHY_ONE_TURN),
        Ignition::Sequential => say!(words::WHY_SEQUENTIAL),
        Ignition::EveryTurn => say!(words::WHY_EVERY_TURN),
        Ignition::PairedSingle | Ignition::PairedDouble if one_turn => {
            say!(words::WHY_TOGETHER)
        }
        Ignition::PairedSingle => say!(words::WHY_PAIRED_SINGLE),
        Ignition::PairedDouble => say!(words::WHY_PAIRED_DOUBLE),
        Ignition::Distributor => say!(words::WHY_DISTRIBUTOR),
    }
}

/// Fewer channels than the way of firing takes.
fn short_answer(engine: &Engine, needed: u32, there: u32, findings: &mut Findings) -> Answer {
    let advice = best(engine, there);
    let message = say!(words::IGNITION_SHORT, needed = needed, there = there);
    findings.push(Finding::new(Severity::Fault, COUNT, message).cured_by([advice.clone()]));
    let mut answer =
        titled(COUNT, Tone::Bad, say!(words::VERDICT_SHORT, needed = needed, there = there));
    answer.why = Some(needs(engine, there));
    answer.to_do = vec![advice];
    answer
}

/// "You need 6 one by one, 3 in companion pairs; you have 4."
fn needs(engine: &Engine, there: u32) -> Message {
    let one_by_one = Need::ignition(engine, Ignition::Sequential).map_or(0, |need| need.channels);
    match Need::ignition(engine, Ignition::PairedSingle) {
        Ok(pairs) => {
            say!(words::NEEDS_PAIRS, single = one_by_one, pairs = pairs.channels, there = there)
        }
        Err(_) => say!(words::NEEDS_SINGLE, single = one_by_one, there = there),
    }
}

/// The best that can be done with so many channels.
fn best(engine: &Engine, there: u32) -> Message {
    let possible = within(engine, there);
    let Some((mode, need)) = possible.first() else {
        return say!(words::BEST_NONE, there = there);
    };
    let n = need.channels;
    let message = match mode {
        Ignition::Sequential => say!(words::BEST_SEQUENTIAL, n = n),
        Ignition::EveryTurn => say!(words::BEST_EVERY_TURN, n = n),
        Ignition::PairedSingle | Ignition::PairedDouble => {
            say!(words::BEST_PAIRS, n = n, there = there)
        }
        Ignition::Distributor => say!(words::BEST_DISTRIBUTOR, n = n, there = there),
    };
    message.done_by(fired(*mode))
}

/// The edit that has the coils fired so.
fn fired(mode: Ignition) -> Vec<Edit> {
    vec![MODE.edit(mode.choosable().code)]
}

/// The engine has no companions, and the plan wants pairs.
fn unfit_answer(
    engine: &Engine,
    channels: &Channels<Ignition>,
    unfit: UnfitLayout,
    has_cam: bool,
    findings: &mut Findings,
) -> Answer {
    let (why, severity) = no_companion(engine, unfit);
    let mut to_do = instead(engine, channels.count.value(), has_cam);
    if engine.kind() == EngineKind::Rotary {
        to_do.push(say!(words::INSTEAD_ROTARY));
    }
    let severity = severity.unwrap_or(Severity::Fault);
    let finding = Finding::new(severity, MODE, why.clone()).cured_by(to_do.clone());
    findings.push(finding);
    let mut answer = titled(MODE, Tone::Bad, say!(words::VERDICT_NO_PAIRS));
    answer.why = Some(why);
    answer.to_do = to_do;
    answer
}

/// Why two cylinders can't share a spark here, and how grave it would be.
fn no_companion(engine: &Engine, unfit: UnfitLayout) -> (Message, Option<Severity>) {
    match unfit {
        UnfitLayout::NoCompanion { cylinder, nearest: Some((other, miss)) } => {
            let (one, error, effect, stroke) = shared(engine, cylinder, other, miss);
            let (stroke, outcome) =
                (effects::stroke(stroke).into_text(), effects::outcome(effect, true).into_text());
            let message = if engine.cycle() == TURN {
                say!(
                    words::NO_COMPANION_ONE_TURN,
                    cylinder = cylinder,
                    one = one.to_string(),
                    error = error,
                    stroke = stroke,
                    outcome = outcome
                )
            } else {
                say!(
                    words::NO_COMPANION,
                    cylinder = cylinder,
                    other = other,
                    miss = CrankAngle::new(miss.degrees().abs()),
                    one = one.to_string(),
                    error = error,
                    stroke = stroke,
                    outcome = outcome
                )
            };
            (message, effect.severity())
        }
        // alone there is nobody whose stroke the spark could reach
        UnfitLayout::NoCompanion { cylinder, nearest: None } => {
            (say!(words::NO_COMPANION_ALONE, cylinder = cylinder), None)
        }
        UnfitLayout::NoBanks => (say!(words::BANKS_UNKNOWN), None),
    }
}

/// Where the worst of the sparks falls that two cylinders share: in which of them, how far from its firing point.
fn shared(
    engine: &Engine,
    cylinder: u32,
    other: u32,
    miss: CrankAngle,
) -> (Target, CrankAngle, Effect, Stroke) {
    let apart = (TURN + miss).as_error(engine.cycle());
    let back = CrankAngle::new(-apart.degrees()).as_error(engine.cycle());
    let positions = Layout::positions(engine.kind());
    let landings = positions.iter().flat_map(|&position| {
        [(cylinder, apart), (other, back)].map(|(cylinder, error)| {
            let effect = Effect::of_spark(engine.kind(), position, error);
            let stroke = Stroke::at(engine.kind(), position, error);
            (Target { position, cylinder }, error, effect, stroke)
        })
    });
    let worst = landings.min_by_key(|(_, _, effect, _)| *effect);
    worst.unwrap_or((Target::only(cylinder), apart, Effect::Right, Stroke::Firing))
}

/// What works in place of pairs.
fn instead(engine: &Engine, there: Option<u32>, has_cam: bool) -> Vec<Message> {
    let possible = within(engine, there.unwrap_or(u32::MAX));
    let works = |mode| possible.iter().find(|(it, _)| *it == mode).map(|(_, need)| need.channels);
    let mut advice = Vec::new();
    if engine.cycle() != TURN {
        advice.extend(
            works(Ignition::EveryTurn).map(|n| {
                say!(words::INSTEAD_EVERY_TURN, n = n).done_by(fired(Ignition::EveryTurn))
            }),
        );
    }
    advice.extend(
        works(Ignition::Sequential)
            .map(|n| say!(words::INSTEAD_SEQUENTIAL, n = n).done_by(fired(Ignition::Sequential))),
    );
    // with a cam sensor there, firing each once a cycle spares the coils half their heat
    if has_cam {
        advice.reverse();
    }
    if advice.is_empty() {
        let wanted = Need::ignition(engine, Ignition::Sequential).map_or(0, |need| need.channels);
        advice.push(say!(words::INSTEAD_MORE, n = wanted));
        advice.extend(
            works(Ignition::Distributor)
                .map(|_| say!(words::INSTEAD_DISTRIBUTOR).done_by(fired(Ignition::Distributor))),
        );
    }
    advice
}

/// What each way takes, and whether it works on this engine.
fn ways(engine: &Engine) -> Table {
    let mut working = Vec::new();
    let rows = Ignition::ALL.into_iter().map(|mode| {
        let name = Value::text(way(mode).into_text());
        let Ok(need) = Need::ignition(engine, mode) else {
            let no = || Value::text("–");
            let cells = vec![name, no(), no(), Value::text(say!(words::NOT_HERE).into_text())];
            return Row { cells, tone: Some(Tone::Bad) };
        };
        working.extend(need.working);
        let cam = if need.needs_cam { say!(words::CAM_YES) } else { say!(words::CAM_NO) };
        let cells =
            vec![name, need.channels.into(), need.parts.into(), Value::text(cam.into_text())];
        Row { cells, tone: None }
    });
    let rows = rows.collect();
    Table {
        caption: say!(words::TABLE_WAYS),
        columns: vec![
            say!(words::COL_WAY),
            say!(words::COL_CHANNELS),
            say!(words::COL_COILS),
            say!(words::COL_CAM),
        ],
        rows,
        working,
    }
}

fn way(mode: Ignition) -> Message {
    match mode {
        Ignition::Sequential => say!(words::WAY_SEQUENTIAL),
        Ignition::EveryTurn => say!(words::WAY_EVERY_TURN),
        Ignition::PairedSingle => say!(words::WAY_PAIRED_SINGLE),
        Ignition::PairedDouble => say!(words::WAY_PAIRED_DOUBLE),
        Ignition::Distributor => say!(words::WAY_DISTRIBUTOR),
    }
}
