//! What was found, as findings.

use super::{
    case::{Case, Subject},
    names, verdict, working,
};
use crate::{
    finding::{Finding, Severity},
    message::Message,
    output::{End, FarEnd, Found, KeyState, Load, Part, Point, Solved, Trouble, judge},
    quantity::{Band, Measure, Value, Voltage, volts},
    read::Unasked,
    say,
};

/// The findings about one load, worst first; `remedies` go to the first.
pub(super) fn findings(subject: &Subject<'_>, remedies: &[Message]) -> Vec<Finding> {
    let mut findings = if verdict::depends_on_level(subject) {
        level_finding(subject).into_iter().collect()
    } else {
        subject.cases.first().map_or_else(Vec::new, |case| case_findings(subject, case))
    };
    crate::sorted::by(&mut findings, |one: &Finding, other| one.severity.cmp(&other.severity));
    if let Some(first) = findings.first_mut() {
        first.remedies.extend_from_slice(remedies);
    }
    findings.extend(dependencies(subject));
    findings.extend(left_out(subject));
    findings
}

/// The sentence of the worst trouble, which serves as the reason of the verdict.
pub(super) fn reason(subject: &Subject<'_>) -> Option<Message> {
    if verdict::depends_on_level(subject) {
        return level_finding(subject).map(|finding| finding.message);
    }
    let case = subject.cases.first()?;
    message(subject, case, case.judgement.head()?)
}

fn case_findings(subject: &Subject<'_>, case: &Case) -> Vec<Finding> {
    let finding = |found: &Found| {
        let severity = severity(found.trouble, subject.load);
        let steps = working::state_steps(found.state, &found.worst);
        let message = message(subject, case, found)?;
        let path = path(subject, found.trouble);
        Some(Finding::new(severity, path, message).holding(found.holds.clone()).shown_by(steps))
    };
    case.judgement.found.iter().filter_map(finding).collect()
}

fn level_finding(subject: &Subject<'_>) -> Option<Finding> {
    let [ground, battery] = subject.cases.as_slice() else { return None };
    let unasked = subject.load.unasked;
    let words = |case: &Case| verdict::of_judgement(&case.judgement, unasked).text;
    let output = subject.output.name.clone();
    let is_wrong = subject
        .cases
        .iter()
        .all(|case| case.judgement.head().is_some_and(|found| found.trouble.forbids()));
    let message = if is_wrong {
        let load = subject.load.name.clone();
        say!(
            "rest.wrong-either-way",
            load = load,
            output = output,
            ground = words(ground),
            battery = words(battery)
        )
    } else {
        say!(
            "rest.depends-on-level",
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
    let path = format!("outputs.{}.on_level", subject.output_number);
    Some(Finding::new(severity, path, message))
}

fn severity(trouble: Trouble, load: &crate::read::PlannedLoad) -> Severity {
    use Trouble as T;
    match (trouble, load.unasked) {
        (T::TooMuchCurrent, _) => Severity::Danger,
        (
            T::LiveAtRest
            | T::LiveAtKeyOn
            | T::LiveKeyOff
            | T::MayStayIn
            | T::MayStayInKeyOff
            | T::MayActAtKeyOn,
            Unasked::Dangerous,
        ) => Severity::Danger,
        (T::LiveAtKeyOn, Unasked::Harmless) => Severity::Doubt,
        (T::WeakWhileCranking, _) if load.is_pull_in_assumed => Severity::Note,
        _ if trouble.forbids() => Severity::Fault,
        _ => Severity::Doubt,
    }
}

/// The field that the page leads to.
fn path(subject: &Subject<'_>, trouble: Trouble) -> String {
    let path = &subject.load.path;
    match trouble {
        Trouble::TooMuchCurrent | Trouble::Inrush => format!("{path}.output"),
        Trouble::Weak | Trouble::WeakWhileCranking => format!("{path}.pull_in"),
        _ => format!("{path}.far_end"),
    }
}

fn message(subject: &Subject<'_>, case: &Case, found: &Found) -> Option<Message> {
    use Trouble as T;
    let load = case.rest.wiring.loads.get(case.rest.subject)?;
    let name = subject.load.name.clone();
    let output = subject.output.name.clone();
    let worst = &found.worst;
    let flow = worst.load()?;
    let across = size(flow.voltage);
    let through = through(worst);
    let corner = corner(case, found);
    let (acts, sure, lets_go) = levels(load, worst);
    let switch = worst.operating.switch_current();
    let limit = case.rest.wiring.output.current_limit.as_ref().map(|limit| limit.low.show());
    Some(match found.trouble {
        T::LiveAtRest => {
            say!(
                "rest.live-at-rest",
                load = name,
                output = output,
                voltage = across,
                through = through,
                acts = acts,
                corner = corner
            )
        }
        T::LiveAtKeyOn => {
            say!(
                "rest.live-at-key-on",
                load = name,
                voltage = across,
                through = through,
                acts = acts,
                corner = corner
            )
        }
        T::LiveKeyOff => {
            say!(
                "rest.live-key-off",
                load = name,
                voltage = across,
                through = through,
                acts = acts,
                corner = corner
            )
        }
        T::MayStayIn => {
            say!(
                "rest.may-stay-in",
                load = name,
                output = output,
                voltage = across,
                through = through,
                lets_go = lets_go,
                corner = corner
            )
        }
        T::MayStayInKeyOff => {
            say!(
                "rest.may-stay-in-key-off",
                load = name,
                voltage = across,
                through = through,
                lets_go = lets_go,
                corner = corner
            )
        }
        T::NeverActs => {
            let most = most_when_on(case).unwrap_or(across);
            say!("rest.never-acts", load = name, output = output, voltage = most, acts = acts)
        }
        T::TooMuchCurrent => {
            say!(
                "rest.too-much-current",
                load = name,
                output = output,
                current = switch,
                limit = limit?,
                corner = corner
            )
        }
        T::WakesController => {
            let rail = worst.operating.rail.unwrap_or_default();
            say!(
                "rest.wakes-controller",
                load = name,
                current = worst.operating.into_rail(),
                through = into_rail(worst),
                voltage = rail,
                corner = corner
            )
        }
        T::MayActAtKeyOn => {
            say!(
                "rest.may-act-at-key-on",
                load = name,
                voltage = across,
                through = through,
                lets_go = lets_go,
                corner = corner
            )
        }
        T::Weak => {
            say!(
                "rest.weak",
                load = name,
                output = output,
                voltage = across,
                acts = sure,
                corner = corner
            )
        }
        T::Inrush => {
            say!(
                "rest.inrush",
                load = name,
                output = output,
                current = switch,
                limit = limit?,
                corner = corner
            )
        }
        T::FeedsDeadFeed => {
            say!(
                "rest.feeds-dead-feed",
                load = name,
                current = worst.operating.into_feed(),
                corner = corner
            )
        }
        T::LeaksIntoController => {
            say!(
                "rest.leaks-into-controller",
                load = name,
                current = worst.operating.into_rail(),
                through = into_rail(worst),
                corner = corner
            )
        }
        T::DrainsBattery => {
            say!(
                "rest.drains-battery",
                load = name,
                output = output,
                current = worst.operating.from_battery
            )
        }
        T::WeakWhileCranking => {
            say!(
                "rest.weak-while-cranking",
                load = name,
                voltage = across,
                acts = sure,
                corner = corner
            )
        }
    })
}

fn size(voltage: Voltage) -> Voltage {
    volts(voltage.base().abs())
}

/// Where the current of the load comes from or goes to: the part that carries most of it.
pub(super) fn through(solved: &Solved) -> Value {
    let of_subject = Part::Load(solved.point.subject);
    let others = solved.operating.branches.iter().filter(|branch| branch.part != of_subject);
    let size = |current: crate::quantity::Current| current.base().abs();
    let most = others.max_by(|a, b| size(a.current).total_cmp(&size(b.current)));
    most.map_or_else(|| names::part(Part::Load(0)), |branch| names::part(branch.part))
}

fn into_rail(solved: &Solved) -> Value {
    let into = |part: &Part| matches!(part, Part::UpperDiode | Part::PullUp);
    let branches = solved.operating.branches.iter().filter(|branch| into(&branch.part));
    let most = branches.max_by(|a, b| a.current.base().total_cmp(&b.current.base()));
    names::part(most.map_or(Part::UpperDiode, |branch| branch.part))
}

fn corner(case: &Case, found: &Found) -> String {
    let has_relay = case.rest.wiring.loads.iter().any(|load| load.far_end == FarEnd::Relay);
    found.worst.name(found.state, has_relay)
}

/// At the worst corner's temperature: acts perhaps, acts for certain, lets go for certain.
fn levels(load: &Load, solved: &Solved) -> (Voltage, Voltage, Voltage) {
    let warmth = load.kind.warmth(solved.point.at.temperature);
    (load.pull_in.low * warmth, load.pull_in.high * warmth, load.drop_out.low * warmth)
}

fn most_when_on(case: &Case) -> Option<Voltage> {
    let corners = case.rest.state(KeyState::On)?.corners.iter().filter_map(Solved::load);
    let sizes = corners.map(|flow| flow.voltage.base().abs());
    Some(volts(sizes.fold(0.0, f64::max)))
}

/// What was taken rather than typed, where the answer hangs on it.
fn dependencies(subject: &Subject<'_>) -> Vec<Finding> {
    let around = &subject.planned.around;
    let load = subject.load;
    let mut findings = Vec::new();
    if load.is_resistance_assumed {
        let ends = ends(subject, |point| point.load);
        let path = format!("{}.resistance", load.path);
        findings.extend(dependency(
            subject,
            "rest.depends-on-resistance",
            path,
            &load.resistance,
            ends,
        ));
    }
    if subject.planned.is_dead_rail_assumed {
        let ends = ends(subject, |point| point.dead_rail);
        let path = "conditions.dead_supply".to_owned();
        findings.extend(dependency(
            subject,
            "rest.depends-on-dead-supply",
            path,
            &around.dead_rail,
            ends,
        ));
    }
    if subject.planned.is_dead_feed_assumed {
        let ends = ends(subject, |point| point.dead_feed);
        let path = "conditions.dead_feed".to_owned();
        findings.extend(dependency(
            subject,
            "rest.depends-on-dead-feed",
            path,
            &around.dead_feed,
            ends,
        ));
    }
    findings
}

/// The verdicts with something at its lowest and at its highest, where they differ.
fn ends(subject: &Subject<'_>, of: impl Fn(&Point) -> End) -> Option<(Message, Message)> {
    if verdict::depends_on_level(subject) {
        return None;
    }
    let case = subject.cases.first()?;
    let unasked = subject.load.unasked;
    let at = |end: End| {
        let judgement = judge(&case.rest, |point| of(point) != end.opposite());
        verdict::of_judgement(&judgement, unasked)
    };
    let (low, high) = (at(End::Low), at(End::High));
    (low != high).then_some((low, high))
}

fn dependency<Q: Measure>(
    subject: &Subject<'_>,
    code: &'static str,
    path: String,
    band: &Band<Q>,
    ends: Option<(Message, Message)>,
) -> Option<Finding> {
    let (at_low, at_high) = ends?;
    let message = say!(
        code,
        load = subject.load.name.clone(),
        low = band.low,
        high = band.high,
        at_low = at_low.text,
        at_high = at_high.text
    );
    Some(Finding::new(Severity::Doubt, path, message))
}

fn left_out(subject: &Subject<'_>) -> Vec<Finding> {
    let others = subject.wiring().map_or(1, |wiring| wiring.loads.len());
    // said once, with the first of those that are answered
    let is_first = subject.at == 0;
    let left_out = subject.left_out.iter().filter(|_| is_first);
    left_out
        .map(|load| {
            let message = say!(
                "rest.solved-without",
                load = load.name.clone(),
                output = subject.output.name.clone(),
                others = if others == 1 {
                    "the other load".to_owned()
                } else {
                    format!("the other {others}")
                },
                n = others
            );
            Finding::new(Severity::Doubt, load.path.clone(), message)
        })
        .collect()
}
