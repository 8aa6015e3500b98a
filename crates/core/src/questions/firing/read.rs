//! The channels from their fields.

pub(crate) mod entered;
pub(crate) mod light;
pub(crate) mod strip;

use std::collections::BTreeMap;

use crate::read::{Entry, Reader, engine::cylinders_in, problem::shortened};
use crate::{
    channels::{
        Fired, Habit, Ignition, Injection, Layout, NOTHING, PlugPosition, Slot, Taps, Target,
        Wired, light::Readings, words_of,
    },
    engine::{Engine, EngineKind},
    fields,
    finding::{Finding, Severity},
    plan::{MOST_ENTRIES, Typed},
    questions::firing::words,
    say,
    schema::{Choice, Key, NumberRow, Text, Whole},
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
    pub(crate) keys: Keys<M>,
}

/// The fields of the channels of one kind.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Keys<M> {
    /// How they are fired.
    pub(crate) mode: Key<M>,
    /// How many there are.
    pub(crate) count: Key<Whole>,
    /// How they are numbered.
    pub(crate) habit: Key<Habit>,
    /// The list of what was found.
    pub(crate) wired: Key<NumberRow>,
    /// The steps that are done.
    pub(crate) done: Key<Text>,
}

/// The ignition's fields.
pub(crate) const IGNITION: Keys<Ignition> = Keys {
    mode: fields::channels::IGNITION_MODE,
    count: fields::channels::IGNITION_COUNT,
    habit: fields::channels::IGNITION_HABIT,
    wired: fields::channels::COILS_WIRED,
    done: fields::channels::COILS_DONE,
};

/// The injection's fields.
pub(crate) const INJECTION: Keys<Injection> = Keys {
    mode: fields::channels::INJECTION_MODE,
    count: fields::channels::INJECTION_COUNT,
    habit: fields::channels::INJECTION_HABIT,
    wired: fields::channels::INJECTORS_WIRED,
    done: fields::channels::INJECTORS_DONE,
};

/// The fields of a second set of injectors.
pub(crate) const SECOND: Keys<Injection> = Keys {
    mode: fields::channels::SECOND_MODE,
    count: fields::channels::SECOND_COUNT,
    habit: fields::channels::SECOND_HABIT,
    wired: fields::channels::SECOND_WIRED,
    done: fields::channels::SECOND_DONE,
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

/// All that is said of the firing.
#[derive(Debug)]
pub(crate) struct FiringEntries {
    /// The channels, and the timing light.
    pub(crate) channels: ChannelsOf,
    /// One cycle at a speed.
    pub(crate) strip: strip::Stripped,
}

/// The channels of each kind, and what a timing light shows.
#[derive(Debug)]
pub(crate) struct ChannelsOf {
    pub(crate) ignition: Channels<Ignition>,
    pub(crate) injection: Channels<Injection>,
    /// Those of a second set of injectors.
    pub(crate) second: Channels<Injection>,
    /// What stands in the controller.
    pub(crate) entered: entered::Entered,
    /// The timing light, where anything is said of it.
    pub(crate) light: Option<light::Lit>,
}

impl ChannelsOf {
    /// The ignition channels that have a wire, by number: towers of a distributor have leads, and one coil for each cap.
    pub(crate) fn ignition_slots(&self, engine: Option<&Engine>) -> Vec<Slot> {
        let known = (engine, self.ignition.mode.value(), self.ignition.habit.value());
        let (Some(engine), Some(mode), Some(habit)) = known else { return Vec::new() };
        if mode != Ignition::Distributor {
            return by_number(Layout::ignition(engine, mode, habit).ok());
        }
        let slot = |(channel, _)| Slot { channel, targets: Vec::new(), times: Vec::new() };
        (1..).zip(Layout::positions(engine.kind())).map(slot).collect()
    }

    /// What a timing light shows, where all of it can be used.
    pub(crate) fn lit(&self) -> Option<&Readings> {
        let lit = self.light.as_ref()?;
        (lit.advance.is_some() && !lit.is_spoiled).then_some(&lit.readings)
    }
}

/// Reads the channels and the light.
pub(crate) fn channels_of(reader: &mut Reader<'_>, engine: Option<&Engine>) -> ChannelsOf {
    let ignition = ignition(reader, engine);
    let injection = injection(reader, engine, INJECTION);
    let light = light::light(reader, engine);
    let second = self::injection(reader, engine, SECOND);
    if let Some(engine) = engine {
        rows(reader, engine, &ignition, [&injection, &second]);
    }
    let entered = entered::entered(reader, engine);
    ChannelsOf { ignition, injection, second, entered, light }
}

/// How many injectors share a channel at most, and from where that is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Sharing {
    pub(crate) most: u32,
    pub(crate) basis: &'static str,
    /// Whether the car showed it.
    pub(crate) is_seen: bool,
}

impl Channels<Injection> {
    /// The channels as planned, by number.
    pub(crate) fn slots(&self, engine: Option<&Engine>) -> Vec<Slot> {
        let known = (engine, self.mode.value(), self.habit.value());
        let (Some(engine), Some(mode), Some(habit)) = known else { return Vec::new() };
        by_number(Layout::injection(engine, mode, habit).ok())
    }

    /// How many injectors share a channel: as the car showed where every channel was fired, else what the firing asks for,
    /// or the car showed of more.
    pub(crate) fn sharing(&self, engine: Option<&Engine>) -> Option<Sharing> {
        let layout = Layout::injection(engine?, self.mode.value()?, Habit::ByOrder).ok()?;
        let most = |counts: &mut dyn Iterator<Item = usize>| {
            counts.max().and_then(|most| u32::try_from(most).ok()).filter(|most| *most > 0)
        };
        let seen = most(&mut self.seen.taps.values().map(|fired| fired.targets.len()));
        let planned = most(&mut layout.slots().iter().map(|slot| slot.targets.len()))?;
        let all_are_seen = self.seen.taps.len() == layout.slots().len() && !self.seen.spoiled;
        match seen {
            Some(seen) if all_are_seen || seen > planned => {
                let basis = "as found at the car, under “Firing”";
                Some(Sharing { most: seen, basis, is_seen: true })
            }
            Some(_) | None => {
                let basis = "by how they are fired, under “Firing”";
                Some(Sharing { most: planned, basis, is_seen: false })
            }
        }
    }
}

/// In the order of their numbers, as they stand on the connector.
fn by_number(layout: Option<Layout>) -> Vec<Slot> {
    let mut slots = layout.map_or_else(Vec::new, |it| it.slots().to_vec());
    crate::sorted::by(&mut slots, |one, other| one.channel.cmp(&other.channel));
    slots
}

/// Every channel of the plan has a row of its own for what is found at the car, typed or still blank.
fn rows(
    reader: &mut Reader<'_>,
    engine: &Engine,
    ignition: &Channels<Ignition>,
    injections: [&Channels<Injection>; 2],
) {
    let coils =
        ignition.mode.value().and_then(|mode| Layout::ignition(engine, mode, Habit::ByOrder).ok());
    let injectors = injections.map(|injection| {
        let layout = |mode| Layout::injection(engine, mode, Habit::ByOrder).ok();
        (injection.keys.wired, injection.mode.value().and_then(layout))
    });
    for (list, layout) in [(ignition.keys.wired, coils)].into_iter().chain(injectors) {
        for channel in 0..layout.map_or(0, |layout| layout.slots().len()) {
            let key = list.in_cell(channel);
            if !reader.is_typed(key) {
                reader.missing(key);
            }
        }
    }
}

/// The ignition channels.
pub(crate) fn ignition(reader: &mut Reader<'_>, engine: Option<&Engine>) -> Channels<Ignition> {
    let rotary = engine.is_some_and(|engine| engine.kind() == EngineKind::Rotary);
    channels(reader, IGNITION, engine, rotary)
}

fn channels<M: Choice>(
    reader: &mut Reader<'_>,
    keys: Keys<M>,
    engine: Option<&Engine>,
    plugs: bool,
) -> Channels<M> {
    Channels {
        mode: reader.choice(keys.mode),
        count: reader.whole(keys.count),
        habit: reader.choice(keys.habit),
        seen: seen(reader, keys.wired, engine, plugs),
        done: done(reader, keys.done),
        keys,
    }
}

fn done(reader: &mut Reader<'_>, key: Key<Text>) -> Vec<String> {
    let text = reader.text(key);
    if text.is_empty() {
        reader.missing(key);
    } else {
        reader.given(key, shortened(text));
    }
    text.split_whitespace().map(str::to_owned).collect()
}

/// The injection channels.
pub(crate) fn injection(
    reader: &mut Reader<'_>,
    engine: Option<&Engine>,
    keys: Keys<Injection>,
) -> Channels<Injection> {
    channels(reader, keys, engine, false)
}

fn seen(
    reader: &mut Reader<'_>,
    list: Key<NumberRow>,
    engine: Option<&Engine>,
    plugs: bool,
) -> Seen {
    let plan = reader.plan();
    let cells = plan.cell_count(list).min(MOST_ENTRIES);
    let mut seen = Seen::default();
    let mut twice: Vec<Target> = Vec::new();
    // the entry that names a target first, so that a second one can point to it
    let mut first: BTreeMap<Target, u32> = BTreeMap::new();
    for (channel, cell) in (1_u32..).zip(0..cells) {
        let key = list.in_cell(cell);
        let text = reader.text(key);
        if text.is_empty() {
            reader.missing(key);
            continue;
        }
        seen.typed = true;
        let Some(engine) = engine else {
            reader.given(key, shortened(text));
            continue;
        };
        match targets(engine, channel, text, plugs, &first) {
            Ok(fired) => {
                reader.given(key, shown(&fired));
                first.extend(fired.targets.iter().map(|&target| (target, channel)));
                seen.taps.insert(channel, fired);
            }
            Err((message, told_twice)) => {
                reader.unusable(Finding::new(Severity::Fault, key, message).as_wired());
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
    too_many(reader, list);
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
        (true, _) => "nothing fires".to_owned(),
        (false, true) => format!("{}, nothing else", targets.join(" + ")),
        (false, false) => targets.join(" + "),
    }
}

fn too_many(reader: &mut Reader<'_>, list: Key<NumberRow>) {
    let plan = reader.plan();
    let typed = |(place, text): &&Typed| place.cell() >= MOST_ENTRIES && !text.trim().is_empty();
    if let Some((beyond, _)) = plan.cells(list).iter().find(typed) {
        let (count, most) = (plan.cell_count(list), MOST_ENTRIES);
        let message =
            say!(crate::words::field::TOO_MANY, field = "Channels", count = count, most = most);
        reader.unusable(Finding::new(Severity::Fault, *beyond, message));
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
        let message = say!(
            words::wired::WIRED_UNREADABLE,
            channel = channel,
            typed = typed,
            example = example
        );
        (message, Vec::new())
    })?;
    crate::sorted::by(&mut targets, Ord::cmp);
    targets.dedup();
    let cylinders = engine.cylinders();
    let stray = targets.iter().find(|target| !(1..=cylinders).contains(&target.cylinder));
    if let Some(stray) = stray {
        let message = say!(
            words::wired::WIRED_STRAY,
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
                words::wired::WIRED_AGAIN,
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
        'L' => PlugPosition::Leading,
        'T' => PlugPosition::Trailing,
        _ => return None,
    };
    (number.len() + 1 == token.len())
        .then(|| Some(Target { position, cylinder: number.parse().ok()? }))?
}
