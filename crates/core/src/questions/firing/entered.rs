//! The order and the spacing that stand in the controller, held against the engine and the channels of this plan.

use super::{
    effects, plan,
    plan::BothNumberings,
    read::entered::{Entered, EnteredFirings},
};
use crate::{
    channels::{Check, Habit, Layout, PlugPosition, Reached, Wired},
    engine::{Engine, SpacingBasis, TURN},
    fields::{
        channels, controller,
        engine::{self, KnownBy},
    },
    finding::{Finding, Findings, Severity},
    message::{Edit, Message},
    quantity::{CrankAngle, Measure},
    questions::firing::words,
    report::{Answer, Tone, Verdict},
    say,
    schema::Choice as _,
};

/// What an angle may be off by: a mark is read no better. Common practice, no source.
const READ_DEG: f64 = 2.0;
/// Up to here an error is one of margins. Common practice, no source.
const SMALL_DEG: f64 = 5.0;

/// The channels as the controller fires them.
pub(super) struct InController {
    /// In its order, at the engine's own angles: what is wired is held against it.
    pub(super) in_order: Layout,
    /// At its angles too.
    whole: Layout,
    /// At its angles, in the order of the plan.
    spaced: Layout,
}

/// The channels as the controller fires them; nothing where nothing of it is known, or can't be compared.
pub(super) fn layout(
    engine: &Engine,
    planned: &Layout,
    entered: &mut Entered,
    findings: &mut Findings,
) -> Option<InController> {
    let slots = planned.slots();
    // a rotary's leading and trailing plugs have an order each, and a distributor's has no order but the rotor's
    if planned.order(PlugPosition::Only).is_empty() {
        return None;
    }
    let firsts = match &entered.spacing {
        None => None,
        Some(EnteredFirings::At(angles)) => Some(angles.clone()),
        Some(EnteredFirings::Evenly) => Some(evenly(engine, planned)),
    };
    let counts = [
        (controller::ORDER, entered.order.as_ref().map(Vec::len)),
        (controller::ANGLES, firsts.as_ref().map(|it| turn_of(it, slots.len()).len())),
    ];
    let other =
        counts.into_iter().find_map(|(key, n)| Some((key, n.filter(|n| *n != slots.len())?)));
    if let Some((key, n)) = other {
        let message = say!(words::entered::LENGTH, n = n, wanted = slots.len());
        findings.push(Finding::new(Severity::Fault, key, message));
        entered.is_spoiled = true;
        return None;
    }
    let firsts: Option<Vec<CrankAngle>> = firsts.map(|firsts| {
        let near = |(first, slot): (CrankAngle, &crate::channels::Slot)| {
            let own = slot.times.first().copied().unwrap_or(first);
            let off = (first - own).as_error(planned.cycle()).degrees().abs();
            if off <= READ_DEG { own } else { first }
        };
        turn_of(&firsts, slots.len()).iter().copied().zip(slots).map(near).collect()
    });
    let is_entered = entered.order.is_some() || firsts.is_some();
    let (order, firsts) = (entered.order.as_deref(), firsts.as_deref());
    is_entered.then(|| InController {
        in_order: planned.as_entered(order, None),
        whole: planned.as_entered(order, firsts),
        spaced: planned.as_entered(None, firsts),
    })
}

/// Angles of both turns, of which the second repeats the first: those of the first.
fn turn_of(angles: &[CrankAngle], channels: usize) -> &[CrankAngle] {
    let repeats = |(one, other): (&[CrankAngle], &[CrankAngle])| {
        one.iter().zip(other).all(|(one, other)| (*other - *one).is_near(TURN))
    };
    match angles.split_at_checked(channels) {
        Some(halves) if angles.len() == 2 * channels && repeats(halves) => halves.0,
        _ => angles,
    }
}

/// The first moment of each channel at even intervals.
fn evenly(engine: &Engine, planned: &Layout) -> Vec<CrankAngle> {
    let slots = planned.slots();
    let is_shared = slots.iter().any(|slot| slot.targets.len() > 1);
    let span = if is_shared { TURN } else { engine.cycle() };
    let count = f64::from(u32::try_from(slots.len()).unwrap_or(1));
    let place = |(place, _)| CrankAngle::new(span.degrees() * place / count);
    std::iter::successors(Some(0.0), |it| Some(it + 1.0)).zip(slots).map(place).collect()
}

/// Turns the answer into a no where the controller would fire at other moments than those of the engine, as far as it is
/// not seen already what its channels reach.
pub(super) fn judge(
    engine: &Engine,
    numbering: &BothNumberings<'_>,
    in_controller: &InController,
    seen: &Wired,
    answer: &mut Answer,
    findings: &mut Findings,
) {
    let check = |planned: &Layout| {
        // where it was seen what a channel reaches, its order is judged by that
        let wires = |is_seen: bool| -> Wired {
            let targets = planned.targets().into_iter();
            let targets = targets.filter(|it| seen.contains_key(it) == is_seen);
            targets.filter_map(|it| Some((it, planned.channel_of(it)?))).collect()
        };
        let of = |layout, is_seen| Check::ignition(engine, layout, &wires(is_seen)).reached;
        let reached = [of(&in_controller.whole, false), of(&in_controller.spaced, true)].concat();
        Check { reached, unseen: Vec::new() }
    };
    let found = check(numbering.layout());
    let wrong = found.wrong();
    let Some(worst) = wrong.first() else { return };
    let error = |it: &Reached| it.error().map_or(0.0, |it| it.degrees().abs());
    let is_small = wrong.iter().all(|it| error(it) <= SMALL_DEG && it.error().is_some());
    let is_order_right = plan::order_of(numbering.layout()) == plan::order_of(&in_controller.whole);
    let is_taken = is_order_right && engine.spacing_basis() != SpacingBasis::Told;
    let severity = match worst.effect.severity() {
        Some(_) if is_small || is_taken => Severity::Doubt,
        Some(severity) => severity,
        None => return,
    };
    let key = if is_order_right { controller::SPACING.path() } else { controller::ORDER.path() };
    let mut cures = vec![enter_all(engine, numbering.layout())];
    cures.extend(
        numbering.other().filter(|other| check(other.0).wrong().is_empty()).map(other_habit),
    );
    cures.extend(is_taken.then(|| take_angles(&in_controller.whole)));
    let message = say!(
        words::entered::DIFFERS,
        errors = errors(&wrong),
        outcome = effects::outcome(worst.effect, true).into_text()
    );
    findings.push(Finding::new(severity, key, message.clone()).cured_by(cures.clone()));
    let tone = if severity == Severity::Doubt { Tone::Doubtful } else { Tone::Bad };
    if answer.verdict.tone > tone {
        let verdict = say!(words::entered::VERDICT, n = wrong.len(), what = named(&wrong));
        answer.verdict = Verdict { tone, message: verdict };
        answer.why = Some(message);
        answer.to_do = cures;
    }
}

/// `cylinders 2 and 4`, or `plug 1L`
fn named(wrong: &[&Reached]) -> String {
    let mut targets: Vec<_> = wrong.iter().map(|it| it.target).collect();
    targets.sort_unstable();
    let is_plug = targets.iter().any(|it| it.position != PlugPosition::Only);
    let what = match (is_plug, targets.len()) {
        (true, 1) => "plug",
        (true, _) => "plugs",
        (false, 1) => "cylinder",
        (false, _) => "cylinders",
    };
    format!("{what} {}", super::listed(targets))
}

/// `cylinder 2 30° late and cylinder 4 30° late`
fn errors(wrong: &[&Reached]) -> String {
    let mut wrong = wrong.to_vec();
    crate::sorted::by(&mut wrong, |one, other| one.target.cmp(&other.target));
    let each = |it: &&Reached| match it.error() {
        Some(error) => {
            let size = CrankAngle::new(error.degrees().abs()).show().into_shown();
            let way = if error.degrees() < 0.0 { "early" } else { "late" };
            format!("cylinder {} {size} {way}", it.target)
        }
        None => format!("cylinder {} never fires", it.target),
    };
    super::listed(wrong.iter().map(each))
}

/// The order and the angles that this plan takes.
fn enter_all(engine: &Engine, planned: &Layout) -> Message {
    let order = plan::order_of(planned);
    let (spacing, angles) = if engine.is_even() {
        ("even".to_owned(), String::new())
    } else {
        let firsts = planned.slots().iter().filter_map(|it| it.times.first());
        let angles: Vec<_> = firsts.map(|it| it.show().shown.replace('°', "")).collect();
        ("angles".to_owned(), angles.join(" "))
    };
    let spaced =
        if angles.is_empty() { "evenly spaced".to_owned() } else { format!("at {angles}") };
    let what = format!("{order}, {spaced}");
    say!(words::entered::ENTER_ALL, what = what).done_by(vec![
        controller::ORDER.edit(order),
        controller::SPACING.edit(spacing),
        controller::ANGLES.edit(angles),
    ])
}

fn other_habit((_, habit): (&Layout, Habit)) -> Message {
    let edit: Edit = channels::IGNITION_HABIT.edit(habit.choosable().code);
    say!(words::entered::TAKE_HABIT).done_by(vec![edit])
}

/// The engine's angles from the controller's.
fn take_angles(as_entered: &Layout) -> Message {
    let firsts = as_entered.slots().iter().filter_map(|it| it.times.first());
    let angles: Vec<_> = firsts.map(|it| it.show().shown.replace('°', "")).collect();
    say!(words::entered::TAKE_ANGLES).done_by(vec![
        engine::SPACING.edit(KnownBy::Angles.choosable().code),
        engine::ANGLES.edit(angles.join(" ")),
    ])
}

/// What an odd-fire engine asks of the controller, where nothing is said of it.
pub(super) fn angles_to_enter(engine: &Engine, entered: &Entered) -> Option<Message> {
    if engine.is_even() || entered.spacing.is_some() {
        return None;
    }
    let interval = engine.cycle().degrees() / f64::from(engine.cylinders());
    let off = |(place, it): (u32, &crate::engine::Firing)| {
        (it.angle.degrees() - interval * f64::from(place)).abs()
    };
    let most = (0..).zip(engine.firings()).map(off).fold(0.0, f64::max);
    let angles: Vec<_> =
        engine.firings().iter().map(|it| it.angle.show().shown.replace('°', "")).collect();
    Some(say!(
        words::entered::DO_ENTER_ANGLES,
        angles = angles.join(" "),
        most = CrankAngle::new(most)
    ))
}
