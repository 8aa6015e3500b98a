//! The channels from their fields.

use std::collections::BTreeMap;

use super::{Entry, Reader, engine::cylinders_in, problem::shortened};
use crate::{
    channels::{
        Fired, Habit, Ignition, Injection, NOTHING, Position, Taps, Target, Wired, words_of,
    },
    engine::{Engine, Kind},
    finding::{Finding, Severity},
    plan::MOST_ENTRIES,
    say,
};

/// The channels of one kind.
#[derive(Clone, Debug)]
pub(crate) struct Channels<M> {
    /// How they are fired.
    pub(crate) mode: Entry<M>,
    /// How many the controller has.
    pub(crate) count: Entry<u32>,
    /// How they are numbered.
    pub(crate) habit: Entry<Habit>,
    /// What was found at the car.
    pub(crate) seen: Seen,
    /// The steps of the cure that are done, by name.
    pub(crate) done: Vec<String>,
    /// Where all that stands in the plan.
    pub(crate) paths: &'static Paths,
}

/// The fields of the channels of one kind.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Paths {
    /// How they are fired.
    pub(crate) mode: &'static str,
    /// How many there are.
    pub(crate) count: &'static str,
    /// How they are numbered.
    pub(crate) habit: &'static str,
    /// The list of what was found.
    pub(crate) wired: &'static str,
    /// The steps that are done.
    pub(crate) done: &'static str,
}

/// The ignition's fields.
pub(crate) const IGNITION: Paths = Paths {
    mode: "channels.ignition_mode",
    count: "channels.ignition_count",
    habit: "channels.ignition_habit",
    wired: "channels.coils_wired",
    done: "channels.coils_done",
};

/// The injection's fields.
pub(crate) const INJECTION: Paths = Paths {
    mode: "channels.injection_mode",
    count: "channels.injection_count",
    habit: "channels.injection_habit",
    wired: "channels.injectors_wired",
    done: "channels.injectors_done",
};

/// The fields of a second set of injectors.
pub(crate) const SECOND: Paths = Paths {
    mode: "channels.second_mode",
    count: "channels.second_count",
    habit: "channels.second_habit",
    wired: "channels.second_wired",
    done: "channels.second_done",
};

/// What was found at the car.
#[derive(Clone, Debug, Default)]
pub(crate) struct Seen {
    /// The channel of each target, without those that are told two ways.
    pub(crate) wired: Wired,
    /// What answered to each channel, without those that contradict each other.
    pub(crate) taps: Taps,
    /// The channels that name what another names too, with what they name.
    pub(crate) again: Taps,
    /// Whether anything was typed.
    pub(crate) typed: bool,
    /// Whether something typed can't be used.
    pub(crate) spoiled: bool,
}

/// The ignition channels.
pub(crate) fn ignition(reader: &mut Reader<'_>, engine: Option<&Engine>) -> Channels<Ignition> {
    let mode = reader.choice(IGNITION.mode).map(ignition_of);
    let rotary = engine.is_some_and(|engine| engine.kind() == Kind::Rotary);
    channels(reader, mode, &IGNITION, engine, rotary)
}

fn channels<M>(
    reader: &mut Reader<'_>,
    mode: Entry<M>,
    paths: &'static Paths,
    engine: Option<&Engine>,
    plugs: bool,
) -> Channels<M> {
    Channels {
        mode,
        count: reader.whole(paths.count),
        habit: habit(reader, paths.habit),
        seen: seen(reader, paths.wired, engine, plugs),
        done: done(reader, paths.done),
        paths,
    }
}

fn done(reader: &mut Reader<'_>, path: &str) -> Vec<String> {
    let text = reader.text(path);
    if text.is_empty() {
        reader.missing(path);
    } else {
        reader.given(path, shortened(text));
    }
    text.split_whitespace().map(str::to_owned).collect()
}

/// How coils are fired, by the code of the choice.
pub(super) fn ignition_of(code: &str) -> Ignition {
    match code {
        "every-turn" => Ignition::EveryTurn,
        "paired-single" => Ignition::PairedSingle,
        "paired-double" => Ignition::PairedDouble,
        "distributor" => Ignition::Distributor,
        _ => Ignition::Sequential,
    }
}

/// The injection channels.
pub(crate) fn injection(
    reader: &mut Reader<'_>,
    engine: Option<&Engine>,
    paths: &'static Paths,
) -> Channels<Injection> {
    let mode = reader.choice(paths.mode).map(|code| match code {
        "companions" => Injection::Companions,
        "by-bank" => Injection::ByBank,
        "together" => Injection::Together,
        _ => Injection::EachOnce,
    });
    channels(reader, mode, paths, engine, false)
}

fn habit(reader: &mut Reader<'_>, path: &str) -> Entry<Habit> {
    reader.choice(path).map(|code| match code {
        "by-cylinder" => Habit::ByCylinder,
        _ => Habit::ByOrder,
    })
}

fn seen(reader: &mut Reader<'_>, list: &str, engine: Option<&Engine>, plugs: bool) -> Seen {
    let plan = reader.plan();
    let entries = match list {
        "channels.coils_wired" => &plan.channels.coils_wired,
        "channels.injectors_wired" => &plan.channels.injectors_wired,
        _ => &plan.channels.second_wired,
    };
    let mut seen = Seen::default();
    let mut twice: Vec<Target> = Vec::new();
    // the entry that names a target first, so that a second one can point to it
    let mut first: BTreeMap<Target, u32> = BTreeMap::new();
    for (channel, text) in (1_u32..).zip(entries).take(MOST_ENTRIES) {
        let path = format!("{list}.{}", channel - 1);
        let text = text.trim();
        if text.is_empty() {
            reader.missing(&path);
            continue;
        }
        seen.typed = true;
        let Some(engine) = engine else {
            reader.given(&path, shortened(text));
            continue;
        };
        match targets(engine, channel, text, plugs, &first) {
            Ok(fired) => {
                reader.given(&path, shown(&fired));
                first.extend(fired.targets.iter().map(|&target| (target, channel)));
                seen.taps.insert(channel, fired);
            }
            Err((message, told_twice)) => {
                reader.unusable(Finding::new(Severity::Fault, path, message).as_wired());
                seen.spoiled = true;
                // which of the two is wrong can't be known: neither counts
                for &target in &told_twice {
                    for channel in first.get(&target).copied().into_iter().chain([channel]) {
                        seen.again.entry(channel).or_default().targets.push(target);
                    }
                }
                twice.extend(told_twice);
            }
        }
    }
    too_many(reader, list, entries);
    // put together anew: taking out of a tree brings the code that balances it, kilobytes of the page
    for (channel, fired) in std::mem::take(&mut seen.taps) {
        if !seen.again.contains_key(&channel) {
            seen.taps.insert(channel, fired);
        }
    }
    seen.wired = first.into_iter().filter(|(target, _)| !twice.contains(target)).collect();
    seen
}

/// `1 + 6`, or that nothing answered.
fn shown(fired: &Fired) -> String {
    let targets: Vec<_> = fired.targets.iter().map(Target::to_string).collect();
    match (targets.is_empty(), fired.nothing_else) {
        (true, _) => "nothing answers".to_owned(),
        (false, true) => format!("{}, nothing else", targets.join(" + ")),
        (false, false) => targets.join(" + "),
    }
}

fn too_many(reader: &mut Reader<'_>, list: &str, entries: &[String]) {
    let typed = |text: &String| !text.trim().is_empty();
    if let Some(beyond) = entries.iter().skip(MOST_ENTRIES).position(typed) {
        let (count, most) = (entries.len(), MOST_ENTRIES);
        let message = say!("field.too-many", field = "Channels", count = count, most = most);
        let path = format!("{list}.{}", MOST_ENTRIES + beyond);
        reader.unusable(Finding::new(Severity::Fault, path, message));
    }
}

type Wrong = (crate::message::Message, Vec<Target>);

/// What an entry names; or what is wrong with it, and the targets that another entry names too.
fn targets(
    engine: &Engine,
    channel: u32,
    text: &str,
    plugs: bool,
    others: &BTreeMap<Target, u32>,
) -> Result<Fired, Wrong> {
    let words = words_of(text);
    let nothing_else = words.iter().any(|word| word.eq_ignore_ascii_case(NOTHING));
    if nothing_else && words.len() == 1 {
        return Ok(Fired { targets: Vec::new(), nothing_else });
    }
    let kept: Vec<&str> =
        words.into_iter().filter(|word| !word.eq_ignore_ascii_case(NOTHING)).collect();
    let text = if nothing_else { kept.join(" ") } else { text.to_owned() };
    let read = if plugs { plugs_in(&text) } else { only_in(&text) };
    let mut targets = read.map_err(|token| {
        let example = if plugs { "1L or 2T" } else { "3" };
        let typed = shortened(&token);
        let message =
            say!("channels.wired-unreadable", channel = channel, typed = typed, example = example);
        (message, Vec::new())
    })?;
    crate::sorted::by(&mut targets, Ord::cmp);
    targets.dedup();
    let cylinders = engine.cylinders();
    let stray = targets.iter().find(|target| !(1..=cylinders).contains(&target.cylinder));
    if let Some(stray) = stray {
        let message = say!(
            "channels.wired-stray",
            channel = channel,
            stray = stray.cylinder,
            cylinders = cylinders
        );
        return Err((message, Vec::new()));
    }
    let told: Vec<Target> = targets.iter().copied().filter(|it| others.contains_key(it)).collect();
    match told.first().and_then(|target| Some((target, others.get(target)?))) {
        Some((target, &other)) => {
            let message = say!(
                "channels.wired-again",
                channel = channel,
                target = target.to_string(),
                other = other
            );
            Err((message, told))
        }
        None => Ok(Fired { targets, nothing_else }),
    }
}

fn only_in(text: &str) -> Result<Vec<Target>, String> {
    let cylinders = cylinders_in(text)?;
    if cylinders.is_empty() {
        return Err(text.to_owned());
    }
    Ok(cylinders.into_iter().map(Target::only).collect())
}

/// `1L`, `T2`: a rotor and which of its plugs.
fn plugs_in(text: &str) -> Result<Vec<Target>, String> {
    let tokens: Vec<&str> = text
        .split(|c: char| !c.is_ascii_alphanumeric())
        .filter(|token| !token.is_empty())
        .collect();
    if tokens.is_empty() {
        return Err(text.to_owned());
    }
    tokens.into_iter().map(|token| plug(token).ok_or_else(|| token.to_owned())).collect()
}

fn plug(token: &str) -> Option<Target> {
    let letter = |c: char| c.is_ascii_alphabetic();
    let (number, letters) = if token.starts_with(letter) {
        (token.trim_start_matches(letter), token.chars().next()?)
    } else {
        (token.trim_end_matches(letter), token.chars().last()?)
    };
    let position = match letters.to_ascii_uppercase() {
        'L' => Position::Leading,
        'T' => Position::Trailing,
        _ => return None,
    };
    (number.len() + 1 == token.len())
        .then(|| Some(Target { position, cylinder: number.parse().ok()? }))?
}
