//! What was found, as findings.

use super::{
    case::{LoadAtLevel, Subject},
    dependency, names, throttle, told, verdict, working,
};
use crate::{
    fields::outputs,
    finding::{Finding, Moment, Severity},
    message::{Message, Shown},
    output::{
        Found, Harm, KeyState, Kick, Load, LoadKind, LoadState, PinPart, PullRail, SolvedCorner,
        Stage, Trouble, kick,
    },
    quantity::{Current, Measure, Value, Voltage, amperes, volts},
    questions::outputs::words,
    read::{PlannedLoad, Suppressed, Unasked},
    say,
    schema::Part,
};

/// The findings about one load, worst first; `remedies` go to the first.
pub(super) fn findings(subject: &Subject<'_>, remedies: &[Message]) -> Vec<Finding> {
    let mut findings = if verdict::depends_on_level(subject) {
        level_finding(subject).into_iter().chain(at_both_levels(subject)).collect()
    } else {
        subject.cases.first().map_or_else(Vec::new, |case| case_findings(subject, case))
    };
    crate::sorted::by(&mut findings, |one: &Finding, other| one.severity.cmp(&other.severity));
    if let Some(first) = findings.first_mut() {
        first.remedies.extend_from_slice(remedies);
    }
    findings.extend(throttle::findings(subject));
    findings.extend(unknown_diode(subject));
    findings.extend(dependency::dependencies(subject));
    findings.extend(dependency::left_out(subject));
    findings
}

/// A relay of which nobody has said whether a diode lies across its coil.
fn is_diode_unknown(load: &PlannedLoad) -> bool {
    load.kind == LoadKind::RelayCoil && load.suppression == Suppressed::Unknown
}

/// The test of its polarity, before the output is commanded on for the first time.
fn unknown_diode(subject: &Subject<'_>) -> Option<Finding> {
    let load = subject.load;
    if load.place.part != Part::Relays || !is_diode_unknown(load) {
        return None;
    }
    let message =
        say!(words::DIODE_UNKNOWN, load = load.name.clone(), output = subject.output.name.clone());
    let place = told::field(Trouble::KickUncaught, load.place, subject.output.record);
    Some(Finding::new(Severity::Doubt, place, message))
}

/// The sentence of the worst trouble, which serves as the reason of the verdict.
pub(super) fn reason(subject: &Subject<'_>) -> Option<Message> {
    if verdict::depends_on_level(subject) {
        return level_finding(subject).map(|finding| finding.message);
    }
    if subject.is_measured_first() {
        return dependency::dependencies(subject).into_iter().next().map(|it| it.message);
    }
    let case = subject.cases.first()?;
    message(subject, case, case.judgement.head()?)
}

/// What is wrong whichever level counts as on.
fn at_both_levels(subject: &Subject<'_>) -> Vec<Finding> {
    let Some((first, others)) = subject.cases.split_first() else { return Vec::new() };
    let is_in = |case: &LoadAtLevel, trouble| {
        case.judgement.found.iter().any(|found| found.trouble == trouble)
    };
    let is_common = |found: &&Found| others.iter().all(|case| is_in(case, found.trouble));
    let common = first.judgement.found.iter().filter(is_common);
    common.filter_map(|found| finding(subject, first, found)).collect()
}

fn case_findings(subject: &Subject<'_>, case: &LoadAtLevel) -> Vec<Finding> {
    // what hangs on a resistance that is to be measured first is said with that
    let is_said =
        |found: &Found| case.hangs_on_resistance(found.trouble) && !found.trouble.is_bearable();
    let is_measured = subject.is_measured_first();
    let found = case.judgement.found.iter().filter(|it| !(is_measured && is_said(it)));
    found.filter_map(|found| finding(subject, case, found)).collect()
}

fn finding(subject: &Subject<'_>, case: &LoadAtLevel, found: &Found) -> Option<Finding> {
    // what a failure holds in for a while is worth a word where it can hurt someone
    let is_worth_it = !found.trouble.needs_fault() || acts_at_worst(case, found);
    if !is_worth_it && subject.load.unasked != Unasked::Dangerous {
        return None;
    }
    // relays that a start needs are judged where starts are
    if found.trouble == Trouble::WeakWhileCranking && subject.load.place.part == Part::Relays {
        return None;
    }
    // whether a diode catches it is asked by itself
    if found.trouble == Trouble::KickUncaught && is_diode_unknown(subject.load) {
        return None;
    }
    let severity = severity(found.trouble, subject.load);
    // what follows from what is usual alone is no graver than a doubt
    let hangs = case.hangs_on_resistance(found.trouble);
    let severity = if hangs { severity.max(Severity::Doubt) } else { severity };
    let steps = working::state_steps(found.state, &found.worst);
    let message = message(subject, case, found)?;
    let path = told::field(found.trouble, subject.load.place, subject.output.record);
    let finding = Finding::new(severity, path, message).holding(found.holds.clone());
    Some(finding.striking(moment(found.state)).shown_by(steps))
}

/// When a key state is first met; what is on is asked to be, and is sure to be once the engine runs.
fn moment(state: KeyState) -> Moment {
    match state {
        KeyState::KeyOff | KeyState::Outlived => Moment::KeyOff,
        KeyState::Starting | KeyState::Off => Moment::KeyOn,
        KeyState::Cranking => Moment::Cranking,
        KeyState::On | KeyState::Pulsed | KeyState::OtherOn => Moment::Running,
        KeyState::FeedLost | KeyState::GroundLost | KeyState::SupplyLost => Moment::Failure,
    }
}

/// Whether a load acts where a trouble is worst, rather than stays as it was.
fn acts_at_worst(case: &LoadAtLevel, found: &Found) -> bool {
    let load = case.rest.wiring.loads.get(case.rest.subject);
    let temperature = found.worst.point.at.temperature;
    let effect = load.zip(found.worst.load()).map(|(load, flow)| load.effect(flow, temperature));
    effect == Some(LoadState::Energised)
        || matches!(found.trouble, Trouble::KeepsFeedAlive | Trouble::KeepsControllerAlive)
}

fn level_finding(subject: &Subject<'_>) -> Option<Finding> {
    let [ground, battery] = subject.cases.as_slice() else { return None };
    let unasked = subject.load.unasked;
    let words = |case: &LoadAtLevel| verdict::of_judgement(&case.judgement, unasked).into_text();
    let deciding = subject.planned.outputs.get(subject.deciding)?;
    let output = deciding.name.clone();
    let is_wrong = subject
        .cases
        .iter()
        .all(|case| case.judgement.head().is_some_and(|found| found.trouble.forbids()));
    let message = if is_wrong {
        let load = subject.load.name.clone();
        say!(
            words::WRONG_EITHER_WAY,
            load = load,
            output = output,
            ground = words(ground),
            battery = words(battery)
        )
    } else {
        say!(
            words::DEPENDS_ON_LEVEL,
            output = output,
            ground = words(ground),
            battery = words(battery)
        )
    };
    let severity = match (unasked, is_wrong) {
        (Unasked::Dangerous, _) => Severity::Danger,
        (_, true) => Severity::Fault,
        (_, false) => Severity::Doubt,
    };
    Some(Finding::new(severity, outputs::ON_LEVEL.at(deciding.record), message))
}

/// How grave it is: by what comes of it, and by what the load does when it acts unasked.
fn severity(trouble: Trouble, load: &PlannedLoad) -> Severity {
    let usual = if trouble.forbids() { Severity::Fault } else { Severity::Doubt };
    match (trouble.harm(), load.unasked) {
        // a diode may lie across it that nobody has told of
        (Harm::MeltsOutput, _)
            if trouble == Trouble::KicksMelt && load.suppression == Suppressed::Unknown =>
        {
            Severity::Fault
        }
        (Harm::MeltsOutput, _) => Severity::Danger,
        // a motor's start lasts tenths of a second, a lamp's milliseconds
        _ if trouble == Trouble::Inrush && load.kind == LoadKind::Motor => Severity::Fault,
        (Harm::MayNeedClamp, _) => Severity::Note,
        (Harm::FallsShort, _) => Severity::Doubt,
        // a single fault is more than worth knowing where it can hurt someone; of an input that takes a signal, all hang on it
        (Harm::Acts, Unasked::Dangerous) if trouble.needs_fault() && !load.kind.is_signal() => {
            Severity::Fault
        }
        _ if trouble.needs_fault() => Severity::Note,
        (Harm::Acts, Unasked::Dangerous) => Severity::Danger,
        (Harm::Acts, Unasked::Harmless) if trouble == Trouble::LiveAtKeyOn => Severity::Doubt,
        (Harm::Acts | Harm::Fails | Harm::WeakByGuess, _) => usual,
    }
}

/// Whether it is as grave as a fault, or graver.
pub(super) fn is_fault(trouble: Trouble, load: &PlannedLoad) -> bool {
    severity(trouble, load) <= Severity::Fault
}

/// What a sentence about a trouble may speak of.
const NAMES: &str = "load, output, voltage, current, through, does, acts, acting, lets_go, limit, corner, frequency, duty, energy, heat, month";

/// The sentence of a trouble, with those values that it has gaps for.
fn message(subject: &Subject<'_>, case: &LoadAtLevel, found: &Found) -> Option<Message> {
    use Trouble as T;
    let load = case.rest.wiring.loads.get(case.rest.subject)?;
    let (worst, trouble) = (&found.worst, found.trouble);
    let (acts, sure, lets_go) = levels(load, worst);
    let is_into_rail =
        matches!(trouble, T::WakesController | T::LeaksIntoController | T::KeepsControllerAlive);
    let is_weak = matches!(trouble, T::Weak | T::WeakWhileCranking);
    let pulsing = worst.operating.pulsing;
    let blank = || Value::text("");
    let does = names::acts(load.kind);
    let values: [&dyn Shown; 16] = [
        &subject.load.name,
        &subject.output.name,
        &voltage(case, found)?,
        &current(found),
        &match trouble {
            T::ActsWithoutGround => without_ground(case, worst),
            _ if is_into_rail => into_rail(worst),
            _ => through(worst),
        },
        &does,
        match trouble {
            T::PulsedTooLittle => &load.pull_in.low,
            _ if is_weak => &sure,
            _ => &acts,
        },
        &acting(worst, (&does, acts), lets_go),
        &lets_go,
        &limit_of(case, trouble),
        &corner(case, found),
        &pulsing.map_or_else(blank, |it| it.frequency.show()),
        &pulsing.map_or_else(blank, |it| it.duty.show()),
        &kick_of(case, found).map_or_else(blank, |kick| kick.in_output.show()),
        &pulsing.map_or_else(blank, |it| it.heat.show()),
        &crate::battery::in_a_month(current(found)),
    ];
    Some(Message::fitting(told::finding(trouble, found.state), NAMES, &values))
}

/// That it acts, or only that it stays as it was.
fn acting(worst: &SolvedCorner, (does, acts): (&Value, Voltage), lets_go: Voltage) -> Value {
    let is_enough = worst.load().is_some_and(|flow| size(flow.voltage) >= acts);
    let said = if is_enough {
        say!(words::ACTS_FROM, does = does.clone(), acts = acts)
    } else {
        say!(words::STAYS_ABOVE, lets_go = lets_go)
    };
    Value::text(said.into_text())
}

/// The limit of the output that a trouble speaks of.
fn limit_of(case: &LoadAtLevel, trouble: Trouble) -> Value {
    let output = &case.rest.wiring.output;
    let shown = match trouble {
        Trouble::TooFast => output.pulse_limit.map(|it| it.low.show()),
        Trouble::KickTooStrong | Trouble::KickPerhapsTooStrong => {
            output.clamp_energy.map(|it| it.low.show())
        }
        Trouble::OverVoltage | Trouble::OverVoltageWithoutGround => {
            let load = case.rest.wiring.loads.get(case.rest.subject);
            load.and_then(|it| it.bears).map(Measure::show)
        }
        _ => case.rest.wiring.current_limit(case.rest.subject).map(Measure::show),
    };
    shown.unwrap_or_else(|| Value::text(""))
}

/// The turn-off from the corner of a trouble, with the most inductance.
fn kick_of(case: &LoadAtLevel, found: &Found) -> Option<Kick> {
    let load = case.rest.wiring.loads.get(case.rest.subject)?;
    let inductance = match found.trouble {
        Trouble::KickBeyondAny | Trouble::KickBeyondUsual => load.inductance.low,
        _ => load.inductance.high,
    };
    kick(&case.rest.wiring, &found.worst, inductance)
}

/// The voltage that a trouble speaks of: across the load, or of the dead supply.
fn voltage(case: &LoadAtLevel, found: &Found) -> Option<Voltage> {
    match found.trouble {
        // the less hangs on the dead supply, the higher it is lifted, and the less current that takes
        Trouble::WakesController => {
            let corners = &case.rest.state(found.state)?.corners;
            let lifted = corners.iter().map(|it| it.operating.lifted().base());
            lifted.reduce(f64::max).map(volts)
        }
        Trouble::KeepsControllerAlive => Some(found.worst.operating.lifted()),
        Trouble::FeedsDeadFeed | Trouble::DrivesDeadFeed => {
            Some(found.worst.operating.feed_lifted())
        }
        Trouble::NeverActs => most_when_on(case),
        Trouble::Chatters => found.worst.operating.pulsing.map(|it| it.driving(it.least)),
        Trouble::PulsedTooLittle => found.worst.operating.pulsing.map(|it| it.driving(it.most)),
        _ => found.worst.load().map(|flow| size(flow.voltage)),
    }
}

/// The current that a trouble speaks of.
fn current(found: &Found) -> Current {
    let operating = &found.worst.operating;
    match found.trouble {
        Trouble::WakesController | Trouble::LeaksIntoController | Trouble::KeepsControllerAlive => {
            operating.into_rail()
        }
        Trouble::FeedsDeadFeed
        | Trouble::KeepsFeedAlive
        | Trouble::DrivesDeadFeed
        | Trouble::PerhapsDrivesDeadFeed => operating.into_feed(),
        Trouble::DrainsBattery => operating.from_battery,
        Trouble::KickTooStrong
        | Trouble::KickPerhapsTooStrong
        | Trouble::KickBeyondAny
        | Trouble::KickBeyondUsual
        | Trouble::LoadsLogicRail
        | Trouble::KickUncaught => {
            found.worst.load().map_or_else(|| amperes(0.0), |it| amperes(it.current.base().abs()))
        }
        Trouble::LiftsLogicRail => operating.into_logic_rail,
        _ => operating.switch_current(),
    }
}

fn size(voltage: Voltage) -> Voltage {
    volts(voltage.base().abs())
}

/// Where the current of the load comes from or goes to: the part that carries most of it.
pub(super) fn through(solved: &SolvedCorner) -> Value {
    names::part(solved.carrier().unwrap_or(PinPart::Load(0)))
}

/// What drives a load of a controller without ground: what stands on that ground lets the controller's own current return, and
/// what stands on its supply is no longer held down.
fn without_ground(case: &LoadAtLevel, solved: &SolvedCorner) -> Value {
    let output = &case.rest.wiring.output;
    let is_live =
        |(_, rail): &(_, PullRail)| matches!(rail, PullRail::Battery | PullRail::Controller);
    let carrier = solved.carrier().unwrap_or(PinPart::Load(0));
    let is_of_supply = match carrier {
        PinPart::PullUp => output.pull_up.as_ref().is_some_and(is_live),
        PinPart::UpperLeak | PinPart::UpperSwitch | PinPart::UpperDiode => {
            output.stage != Stage::Logic
        }
        _ => false,
    };
    let part = names::part(carrier);
    Value::text(if is_of_supply {
        say!(words::NO_LONGER_HELD, part = part).into_text()
    } else {
        say!(words::RETURNS_THROUGH, part = part).into_text()
    })
}

fn into_rail(solved: &SolvedCorner) -> Value {
    let into = |part: &PinPart| matches!(part, PinPart::UpperDiode | PinPart::PullUp);
    let branches = solved.operating.branches.iter().filter(|branch| into(&branch.part));
    let most = branches.max_by(|a, b| a.current.base().total_cmp(&b.current.base()));
    names::part(most.map_or(PinPart::UpperDiode, |branch| branch.part))
}

fn corner(case: &LoadAtLevel, found: &Found) -> String {
    found.worst.name(found.state, &case.rest.wiring)
}

/// At the worst corner's temperature: acts perhaps, acts for certain, lets go for certain.
fn levels(load: &Load, solved: &SolvedCorner) -> (Voltage, Voltage, Voltage) {
    let warmth = load.kind.warmth(solved.point.at.temperature);
    (load.pull_in.low * warmth, load.pull_in.high * warmth, load.drop_out.low * warmth)
}

fn most_when_on(case: &LoadAtLevel) -> Option<Voltage> {
    let corners = case.rest.state(KeyState::On)?.corners.iter().filter_map(SolvedCorner::load);
    let sizes = corners.map(|flow| flow.voltage.base().abs());
    Some(volts(sizes.fold(0.0, f64::max)))
}
