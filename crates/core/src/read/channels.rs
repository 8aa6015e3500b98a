//! The channels from their fields.

use std::collections::BTreeMap;

use super::{Entry, Reader, engine::cylinders_in, problem::shortened};
use crate::{
    channels::{Habit, Ignition, Injection, Position, Target, Wired},
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
}

/// What was found at the car.
#[derive(Clone, Debug, Default)]
pub(crate) struct Seen {
    /// The channel of each target, without those that are told two ways.
    pub(crate) wired: Wired,
    /// Whether anything was typed.
    pub(crate) typed: bool,
    /// Whether something typed can't be used.
    pub(crate) spoiled: bool,
}

/// The ignition channels.
pub(crate) fn ignition(reader: &mut Reader<'_>, engine: Option<&Engine>) -> Channels<Ignition> {
    let mode = reader.choice("channels.ignition_mode").map(ignition_of);
    let rotary = engine.is_some_and(|engine| engine.kind() == Kind::Rotary);
    Channels {
        mode,
        count: reader.whole("channels.ignition_count"),
        habit: habit(reader, "channels.ignition_habit"),
        seen: seen(reader, "channels.coils_wired", engine, rotary),
    }
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
pub(crate) fn injection(reader: &mut Reader<'_>, engine: Option<&Engine>) -> Channels<Injection> {
    let mode = reader.choice("channels.injection_mode").map(|code| match code {
        "paired" => Injection::Paired,
        "bank" => Injection::Bank,
        "together" => Injection::Together,
        _ => Injection::Sequential,
    });
    Channels {
        mode,
        count: reader.whole("channels.injection_count"),
        habit: habit(reader, "channels.injection_habit"),
        seen: seen(reader, "channels.injectors_wired", engine, false),
    }
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
        _ => &plan.channels.injectors_wired,
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
            Ok(targets) => {
                let shown: Vec<_> = targets.iter().map(Target::to_string).collect();
                reader.given(&path, shown.join(" + "));
                first.extend(targets.into_iter().map(|target| (target, channel)));
            }
            Err((message, told_twice)) => {
                reader.unusable(Finding::new(Severity::Fault, path, message).as_wired());
                seen.spoiled = true;
                // which of the two is wrong can't be known: neither counts
                twice.extend(told_twice);
            }
        }
    }
    too_many(reader, list, entries.len());
    seen.wired = first.into_iter().filter(|(target, _)| !twice.contains(target)).collect();
    seen
}

fn too_many(reader: &mut Reader<'_>, list: &str, count: usize) {
    if count > MOST_ENTRIES {
        let message =
            say!("field.too-many", field = "Channels", count = count, most = MOST_ENTRIES);
        let path = format!("{list}.{MOST_ENTRIES}");
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
) -> Result<Vec<Target>, Wrong> {
    let read = if plugs { plugs_in(text) } else { only_in(text) };
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
        None => Ok(targets),
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
