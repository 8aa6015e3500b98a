//! What was found at the car: the verdict, cylinder by cylinder, and the findings.

use super::{Details, Mapped, cure, effects, listed, lists, plan, plan::BothNumberings, taps};
use crate::{
    channels::{
        ChannelAction, Check, Cure, Effect, Habit, Ignition, Injection, Layout, PlugPosition,
        Reached, Standing, Stroke, Target, Wired, completed, cures, error_steps,
    },
    engine::Engine,
    fields,
    finding::{Basis, Finding, Findings, Severity},
    message::{Edit, Message},
    quantity::{CrankAngle, Measure, Value},
    questions::firing::words,
    read::{Channels, Seen},
    report::{
        Answer, Checklist, Detail, Figure, Picture, Row, Table, Tone, Verdict,
        picture::{CycleEvent, Outcome},
    },
    say, say_of,
    schema::{Choice as _, Key, Text},
    words::Wording,
    working::Step,
};

/// Whose connection it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Mode {
    Ignition(Ignition),
    Injection(Injection),
}

/// A connection to be held against its plan.
pub(super) struct CheckedConnection<'a> {
    pub(super) engine: &'a Engine,
    pub(super) layout: &'a Layout,
    pub(super) seen: &'a Seen,
    /// What was found, and what follows from it by elimination.
    pub(super) wired: Wired,
    /// Where the testing stands.
    pub(super) standing: Standing,
    /// How many channels there are, where it isn't said that they are too few.
    count: Option<u32>,
    /// The steps of the cure that are done.
    pub(super) done: &'a [String],
    /// Where all that stands in the plan.
    /// The list of what was found.
    pub(super) list: Key<crate::schema::NumberRow>,
    /// Where it stands how they are numbered.
    habit: Key<Habit>,
    /// Where the steps are kept that are done.
    pub(super) done_key: Key<Text>,
    /// What the answer is called.
    title: &'static Wording,
    pub(super) mode: Mode,
    pub(super) check: fn(&Engine, &Layout, &Wired) -> Check,
    /// The same channels numbered by the other habit, and that habit.
    pub(super) other: Option<(&'a Layout, Habit)>,
}

impl<'a> CheckedConnection<'a> {
    pub(super) fn new<M>(
        engine: &'a Engine,
        numbering: &'a BothNumberings<'_>,
        as_entered: Option<&'a Layout>,
        channels: &'a Channels<M>,
        mode: Mode,
    ) -> Self {
        let layout = as_entered.unwrap_or(numbering.layout());
        let (other, seen) = (numbering.other(), &channels.seen);
        let standing = taps::stands(engine, layout, other.map(|other| other.0), seen);
        Self {
            engine,
            layout,
            seen,
            wired: completed(&seen.wired, &standing),
            standing,
            count: channels.count.value().filter(|count| *count >= layout.channels()),
            done: &channels.done,
            list: channels.keys.wired,
            habit: channels.keys.habit,
            done_key: channels.keys.done,
            title: title(channels.keys.wired),
            mode,
            check: match mode {
                Mode::Ignition(_) => Check::ignition,
                Mode::Injection(_) => Check::injection,
            },
            other,
        }
    }
}

/// What the answer is called, by the list that it rests on.
fn title(list: Key<crate::schema::NumberRow>) -> &'static Wording {
    if list == fields::channels::COILS_WIRED {
        words::wired::TITLE_IGNITION_WIRED
    } else if list == fields::channels::INJECTORS_WIRED {
        words::wired::TITLE_INJECTION_WIRED
    } else {
        words::wired::TITLE_SECOND_WIRED
    }
}

impl CheckedConnection<'_> {
    /// The path of the list.
    pub(super) fn list_path(&self) -> String {
        let path = self.list.path();
        // the list itself, not its first cell
        path.rsplit_once('.').map_or(path.clone(), |(list, _)| list.to_owned())
    }

    /// Where it stands what a channel reaches.
    pub(super) fn cell(&self, channel: u32) -> Key<crate::schema::NumberRow> {
        self.list.in_cell(channel.saturating_sub(1) as usize)
    }

    /// The channels, and what they reach.
    pub(super) fn mapped(&self) -> Mapped {
        Mapped { layout: self.layout.clone(), wired: self.wired.clone(), is_seen: self.seen.typed }
    }

    /// A distributor has towers in place of channels.
    pub(super) fn has_towers(&self) -> bool {
        self.mode == Mode::Ignition(Ignition::Distributor)
    }

    /// The edit that numbers the channels by the other habit, where all is wired rightly for that.
    pub(super) fn other_habit(&self) -> Option<Edit> {
        let (other, habit) = self.other?;
        let is_right = (self.check)(self.engine, other, &self.wired).is_right();
        is_right.then(|| self.habit.edit(habit.choosable().code))
    }

    pub(super) fn is_ignition(&self) -> bool {
        matches!(self.mode, Mode::Ignition(_))
    }
}

/// The answer as wired; none where nothing was typed.
pub(super) fn answer(
    wiring: &CheckedConnection<'_>,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Option<Answer> {
    if !wiring.seen.typed {
        return None;
    }
    let check = (wiring.check)(wiring.engine, wiring.layout, &wiring.wired);
    let offered = offered(wiring, &check);
    let cures = cure::words(wiring, &offered);
    findings.extend(taps::findings(wiring));
    findings.extend(wrong_findings(wiring, &check, &cures));
    findings.extend(hidden_finding(wiring, &check, &cures));
    let mut answer = verdict(wiring, &check, &cures);
    answer.basis = Basis::AsWired;
    answer.title = Some(say_of!(wiring.title));
    answer.lists = lists::lists(wiring, &offered, &cures);
    let is_done = answer.lists.iter().any(Checklist::is_done);
    answer.to_do.extend(is_done.then(|| say!(words::taps::DO_FIRE_AGAIN)));
    answer.to_do.extend(cures);
    answer.to_do.extend(taps::certain(&wiring.standing));
    answer.to_do.extend(taps::must_be(&wiring.standing));
    answer.to_do.extend(look_for(wiring, &check));
    answer.cautions = taps::cautions(wiring);
    answer.show(details.map(|it| (it.wired)(wiring, &check)));
    Some(answer)
}

/// What was never seen at the car is planned, and no more: the answer stays open, and says how it is proved.
pub(super) fn leave_open(wiring: &CheckedConnection<'_>, answer: &mut Answer) {
    // what hangs on the only channel there is can't be crossed
    let is_alone = wiring.layout.slots().len() < 2;
    if wiring.seen.typed || is_alone || answer.verdict.tone == Tone::Bad {
        return;
    }
    answer.to_do.push(look(wiring, &wiring.layout.targets()));
    if answer.verdict.tone == Tone::Good {
        let planned = answer.verdict.message.text.clone();
        let message = say!(words::wired::NOT_SEEN, planned = planned);
        answer.verdict = Verdict { tone: Tone::Open, message };
    }
}

/// Cylinder by cylinder, and one cycle as it really runs.
pub(super) fn detail(wiring: &CheckedConnection<'_>, check: &Check) -> Detail {
    let is_seen = !check.reached.is_empty();
    Detail {
        figures: figures(wiring, check),
        tables: is_seen.then(|| table(wiring, check)).into_iter().collect(),
        pictures: picture(wiring, check).filter(|_| is_seen).into_iter().collect(),
    }
}

/// The cures in words, cheapest first. What firing every turn hides is cured for the day of sequential firing.
fn offered(wiring: &CheckedConnection<'_>, check: &Check) -> Vec<Cure> {
    let (engine, wired) = (wiring.engine, &wiring.wired);
    if wiring.seen.spoiled {
        return Vec::new();
    }
    if hidden(wiring, check).is_empty() || !check.is_right() {
        // a channel that there isn't can't be entered
        let is_there = |channel: &u32| wiring.count.is_none_or(|count| *channel <= count);
        let has_order = !wiring.has_towers() && wired.values().all(is_there);
        return cures(engine, wiring.layout, wired, has_order, wiring.check);
    }
    // the same numbering with each coil fired once: what is hidden shows
    let once = wiring.layout.once_a_cycle();
    cures(engine, &once, wired, true, wiring.check)
}

fn hidden<'a>(wiring: &CheckedConnection<'_>, check: &'a Check) -> Vec<&'a Reached> {
    match wiring.mode {
        Mode::Ignition(mode) => check.hidden(wiring.engine, wiring.layout, mode),
        Mode::Injection(_) => Vec::new(),
    }
}

fn verdict(wiring: &CheckedConnection<'_>, check: &Check, cures: &[Message]) -> Answer {
    let all = check.reached.len() + check.unseen.len();
    let (wrong, seen) = (check.wrong(), check.reached.len() - guessed(wiring));
    let worst = wrong.first().and_then(|it| it.effect.severity());
    let tone = match worst {
        Some(Severity::Danger | Severity::Fault) => Tone::Bad,
        None if is_clear(wiring, check) => Tone::Good,
        _ => Tone::Doubtful,
    };
    let setting = cures.first().is_some_and(|cure| cure.code.starts_with("firing.cure-setting"));
    let message = match (wrong.len(), seen) {
        (_, 0) => say!(words::wired::WIRED_NONE_USABLE),
        (0, _) if seen < all => say!(words::wired::WIRED_PARTLY, seen = seen, all = all),
        (0, _) if tone == Tone::Doubtful && !wiring.seen.spoiled => {
            say!(words::wired::WIRED_HIDDEN)
        }
        (0, _) => say!(words::wired::WIRED_RIGHT, n = all),
        (n, _) if setting => say!(words::wired::WIRED_SETTING, n = n),
        (n, _) if !check.unseen.is_empty() => {
            say!(words::wired::WIRED_WRONG_PARTLY, n = n, seen = seen)
        }
        (n, _) => say!(words::wired::WIRED_WRONG, n = n, all = all),
    };
    let tone = if seen == 0 { Tone::Open } else { tone };
    let mut answer = Answer::new(wiring.list_path(), tone, message);
    answer.why = Some(why(wiring, check, all));
    answer
}

/// Everything is seen, and nothing waits for the day of sequential firing.
fn is_clear(wiring: &CheckedConnection<'_>, check: &Check) -> bool {
    let standing = &wiring.standing;
    let is_sound = standing.crowded.is_empty() && standing.silent.is_empty();
    let is_seen = !wiring.seen.spoiled && guessed(wiring) == 0;
    is_seen && is_sound && check.is_right() && hidden(wiring, check).is_empty()
}

/// How many are known by elimination only.
fn guessed(wiring: &CheckedConnection<'_>) -> usize {
    wiring.standing.must_be.as_ref().map_or(0, |it| it.1.len())
}

fn why(wiring: &CheckedConnection<'_>, check: &Check, all: usize) -> Message {
    if let Some(mixed) = mixed(wiring, check) {
        return mixed;
    }
    let swapped = hidden(wiring, check);
    let harmless = wiring.mode == Mode::Injection(Injection::Together);
    match check.wrong().first() {
        Some(worst) => effect_words(wiring, &[*worst]),
        None if wiring.seen.spoiled => say!(words::MEND_WHY),
        None if !swapped.is_empty() => {
            let cylinders = listed(swapped.iter().map(|it| it.target));
            say!(words::wired::COMPANIONS_SWAPPED, n = swapped.len(), cylinders = cylinders)
        }
        None if !check.unseen.is_empty() => say!(words::wired::WIRED_PARTLY_WHY),
        None if guessed(wiring) > 0 => say!(words::taps::WIRED_MUST_WHY),
        None if harmless => say!(words::wired::WIRED_TOGETHER_WHY),
        None => say!(words::wired::WIRED_RIGHT_WHY, n = all),
    }
}

/// Wired rightly for the other habit of numbering: the one slip behind many wrong channels.
fn mixed(wiring: &CheckedConnection<'_>, check: &Check) -> Option<Message> {
    let (_, habit) = wiring.other?;
    if check.is_right() || wiring.seen.spoiled || wiring.other_habit().is_none() {
        return None;
    }
    Some(match habit {
        Habit::ByCylinder => say!(words::wired::HABITS_BY_CYLINDER),
        Habit::ByOrder => say!(words::wired::HABITS_BY_ORDER),
    })
}

/// What has not been seen yet.
fn look_for(wiring: &CheckedConnection<'_>, check: &Check) -> Option<Message> {
    (!check.unseen.is_empty()).then(|| look(wiring, &check.unseen))
}

fn look(wiring: &CheckedConnection<'_>, unseen: &[Target]) -> Message {
    let cylinders = listed(unseen);
    match (wiring.is_ignition(), wiring.has_towers()) {
        (_, true) => say!(words::wired::LOOK_TOWERS, cylinders = cylinders),
        (true, _) => say!(words::wired::LOOK_COILS, cylinders = cylinders),
        (false, _) => say!(words::wired::LOOK_INJECTORS, cylinders = cylinders),
    }
}

/// One finding for each thing that goes wrong, with all cylinders where it does.
fn wrong_findings(
    wiring: &CheckedConnection<'_>,
    check: &Check,
    cures: &[Message],
) -> Vec<Finding> {
    let wrong = check.wrong();
    let mut findings = Vec::new();
    for group in wrong.chunk_by(|one, other| one.effect == other.effect) {
        let (Some(first), Some(severity)) =
            (group.first(), group.first().and_then(|it| it.effect.severity()))
        else {
            continue;
        };
        let path = wiring.cell(first.channel);
        // the worst names every cure, the others the cheapest
        let named = if findings.is_empty() { cures.len() } else { 1 };
        let steps: Vec<Step> = group.iter().flat_map(|it| error_steps(wiring.engine, it)).collect();
        findings.push(
            Finding::new(severity, path, wrong_words(wiring, group))
                .as_wired()
                .cured_by(cures.iter().take(named).cloned())
                .shown_by(steps),
        );
    }
    findings
}

fn hidden_finding(
    wiring: &CheckedConnection<'_>,
    check: &Check,
    cures: &[Message],
) -> Option<Finding> {
    let swapped = hidden(wiring, check);
    let first = swapped.first()?;
    let path = wiring.cell(first.channel);
    let cylinders = listed(swapped.iter().map(|it| it.target));
    let message = say!(words::wired::COMPANIONS_SWAPPED, n = swapped.len(), cylinders = cylinders);
    let cures = if check.is_right() { cures } else { &[] };
    Some(Finding::new(Severity::Doubt, path, message).as_wired().cured_by(cures.iter().cloned()))
}

/// The same; of a channel beyond those that there are, that it can't be.
fn wrong_words(wiring: &CheckedConnection<'_>, group: &[&Reached]) -> Message {
    let last = group.iter().map(|it| it.channel).max();
    match wiring.count.zip(last).filter(|_| !wiring.has_towers()) {
        Some((count, channel)) if channel > count => {
            say!(words::taps::BEYOND_COUNT, channel = channel, count = count)
        }
        _ => effect_words(wiring, group),
    }
}

/// What happens in these cylinders, which share one effect.
fn effect_words(wiring: &CheckedConnection<'_>, group: &[&Reached]) -> Message {
    let n = group.len();
    let cylinders = listed(group.iter().map(|it| it.target));
    let effect = group.first().map_or(Effect::Right, |it| it.effect);
    let error = group.first().map_or_else(|| Value::text("–"), |it| culprit(wiring.engine, it));
    match effect {
        Effect::InletBackfire => {
            say!(words::wired::SPARK_INTAKE, n = n, cylinders = cylinders, error = error)
        }
        Effect::NextChamber => say!(words::wired::SPARK_NEXT, n = n, cylinders = cylinders),
        Effect::OpenPorts => {
            say!(words::wired::SPARK_PORTS, n = n, cylinders = cylinders, error = error)
        }
        Effect::KickBack => {
            say!(words::wired::SPARK_COMPRESSION, n = n, cylinders = cylinders, error = error)
        }
        Effect::Early => {
            say!(words::wired::SPARK_EARLY, n = n, cylinders = cylinders, error = error)
        }
        Effect::LateBurn => {
            say!(words::wired::SPARK_POWER, n = n, cylinders = cylinders, error = error)
        }
        Effect::ExhaustPop => {
            say!(words::wired::SPARK_EXHAUST, n = n, cylinders = cylinders, error = error)
        }
        Effect::Overlap => say!(words::wired::SPARK_OVERLAP, n = n, cylinders = cylinders),
        Effect::Never if wiring.is_ignition() => {
            say!(words::wired::SPARK_NEVER, n = n, cylinders = cylinders)
        }
        Effect::Never => say!(words::wired::FUEL_NEVER, n = n, cylinders = cylinders),
        Effect::OtherPosition => say!(words::wired::SPLIT_EXCHANGED, n = n, plugs = cylinders),
        Effect::OtherGroup => say!(words::wired::FUEL_OTHER_BANK, n = n, cylinders = cylinders),
        Effect::FuelElsewhere => {
            say!(words::wired::FUEL_ELSEWHERE, n = n, cylinders = cylinders, error = error)
        }
        Effect::Right => say!(words::wired::WIRED_RIGHT_WHY, n = n),
    }
}

/// The error of the spark that makes the effect; early or late is said in words.
fn culprit(engine: &Engine, reached: &Reached) -> Value {
    let of = |error| Effect::of_spark(engine.kind(), reached.target.position, error);
    let makes = |spark: &&ChannelAction| of(spark.error) == reached.effect;
    let spark = reached.sparks.iter().find(makes).or(reached.sparks.first());
    spark.map_or_else(|| Value::text("–"), |spark| size(spark.error).show())
}

fn size(error: CrankAngle) -> CrankAngle {
    CrankAngle::new(error.degrees().abs())
}

fn table(wiring: &CheckedConnection<'_>, check: &Check) -> Table {
    let timed = wiring.layout.slots().iter().any(|slot| !slot.times.is_empty());
    let row = |reached: &Reached| {
        let each = |show: fn(&ChannelAction) -> String| {
            let texts: Vec<String> = reached.sparks.iter().map(show).collect();
            Value::text(if texts.is_empty() { "–".to_owned() } else { texts.join(", ") })
        };
        let wrong = reached.effect.severity();
        let mut cells = vec![Value::text(reached.target.to_string()), reached.channel.into()];
        if timed {
            cells.push(each(|spark| spark.at.show().into_shown()));
            cells.push(each(|spark| spark.error.show().into_shown()));
            cells.push(each(|spark| effects::stroke(spark.stroke).into_text()));
        }
        cells.push(Value::text(effects::outcome(reached.effect, wiring.is_ignition()).into_text()));
        Row {
            cells,
            tone: wrong.map(|it| if it <= Severity::Fault { Tone::Bad } else { Tone::Doubtful }),
        }
    };
    let steps: Vec<Step> =
        check.reached.iter().flat_map(|it| error_steps(wiring.engine, it)).collect();
    Table {
        caption: say!(words::wired::TABLE_WIRED),
        columns: columns(wiring, timed),
        rows: check.reached.iter().map(row).collect(),
        working: if steps.is_empty() { vec![cure::membership(check)] } else { steps },
    }
}

fn columns(wiring: &CheckedConnection<'_>, timed: bool) -> Vec<Message> {
    let only = wiring.layout.order(PlugPosition::Only);
    let first = if only.is_empty() { say!(words::COL_PLUG) } else { say!(words::COL_CYLINDER) };
    let second =
        if wiring.has_towers() { say!(words::COL_TOWER) } else { say!(words::COL_CHANNEL) };
    let mut columns = vec![first, second];
    if timed {
        columns.extend([
            say!(words::COL_ACTS),
            say!(words::wired::COL_ERROR),
            say!(words::wired::COL_STROKE),
        ]);
    }
    columns.push(say!(words::wired::COL_OUTCOME));
    columns
}

fn figures(wiring: &CheckedConnection<'_>, check: &Check) -> Vec<Figure> {
    let mut figures = vec![Figure::plain(
        say!(words::wired::FIGURE_WRONG),
        check.wrong().len(),
        vec![cure::membership(check)],
    )];
    if check.unseen.is_empty() && !wiring.seen.spoiled {
        figures.extend(cure::figures(wiring));
    }
    figures
}

/// The cycle with what really happens; none where the moment doesn't matter.
fn picture(wiring: &CheckedConnection<'_>, check: &Check) -> Option<Picture> {
    let mut events = Vec::new();
    for reached in &check.reached {
        let right = reached.effect == Effect::Right;
        events.extend(reached.sparks.iter().map(|spark| CycleEvent {
            angle_deg: spark.at.degrees(),
            channel: reached.channel,
            cylinder: reached.target.cylinder,
            outcome: match (right, spark.stroke) {
                (true, Stroke::Firing) => Outcome::Fires,
                (true, _) | (false, Stroke::Overlap) => Outcome::Wasted,
                (false, _) => Outcome::Misplaced,
            },
        }));
    }
    if events.is_empty() {
        return None;
    }
    let caption = match check.wrong().len() {
        0 => say!(words::wired::PICTURE_WIRED_RIGHT),
        wrong => say!(words::wired::PICTURE_WIRED, n = wrong),
    };
    Some(plan::cycle(wiring.engine, caption, events))
}
