//! What was changed between two plans, in words.

use quietpin_core::{
    plan::{Clash, Plan},
    schema::{Kind, Part, Place},
};

/// More letters of a text than this are not repeated.
const LONGEST: usize = 40;

/// What was changed: `Resistance of one injector, 2.4 ohm → blank`, `fan removed`; of several fields, how many they are and
/// the first.
pub(crate) fn told(before: &Plan, after: &Plan) -> String {
    let changes = changes(before, after);
    let first = changes.first().cloned().unwrap_or_default();
    match changes.len() {
        0 | 1 => first,
        count => format!("{count} changes, the first: {first}"),
    }
}

fn changes(before: &Plan, after: &Plan) -> Vec<String> {
    let own =
        [("Name of this plan", &before.name, &after.name), ("Notes", &before.notes, &after.notes)];
    let own = own.into_iter().filter(|(_, old, new)| old != new);
    let mut changes: Vec<String> =
        own.map(|(label, old, new)| change(label, &quoted(old), &quoted(new))).collect();
    for &part in Part::ALL {
        let counts = (before.count(part), after.count(part));
        if counts.0 == counts.1 {
            changes.extend(texts(part, before, after));
        } else {
            changes.push(entries(part, before, after));
        }
    }
    if before.left_over() != after.left_over() {
        let count = |plan: &Plan| plan.left_over().len().to_string();
        changes.push(change("What has no place in this plan", &count(before), &count(after)));
    }
    changes
}

fn change(label: &str, old: &str, new: &str) -> String {
    format!("{label}, {old} → {new}")
}

/// The texts of a part that are not the same in both.
fn texts(part: Part, before: &Plan, after: &Plan) -> Vec<String> {
    let typed = |plan: &Plan| plan.part(part).iter().map(|(place, _)| *place).collect::<Vec<_>>();
    let mut all = [typed(before), typed(after)].concat();
    all.sort_unstable();
    all.dedup();
    let other = all.into_iter().filter(|it| before.text(*it) != after.text(*it));
    other.map(|it| change(&label(after, it), &shown(it, before), &shown(it, after))).collect()
}

/// What became of a list that has not as many entries as it had.
fn entries(part: Part, before: &Plan, after: &Plan) -> String {
    let (old, new) = (before.count(part), after.count(part));
    let (longer, word) = if old > new { (before, "removed") } else { (after, "added") };
    if old.abs_diff(new) > 1 {
        let count = |count: usize| format!("{count} entries");
        return change(&list(part), &count(old), &count(new));
    }
    let same = |at: &usize| {
        let texts = |plan: &Plan| plan.record(part, *at).to_vec();
        texts(before) == texts(after)
    };
    let at = (0..old.min(new)).take_while(same).count();
    format!("{} {word}", entry(longer, part, at))
}

/// What a field is called, with the entry of its list.
fn label(plan: &Plan, place: Place) -> String {
    let mut label = place.field().label.to_owned();
    if place.part().is_list() {
        label = format!("{}: {label}", entry(plan, place.part(), place.record()));
    }
    if place.field().is_list {
        label = format!("{label} {}", place.cell() + 1);
    }
    label
}

/// An entry of a list, by its name or by its number.
fn entry(plan: &Plan, part: Part, at: usize) -> String {
    let name = part.places().find(|it| it.field().name == "name");
    match name.map_or("", |it| plan.text(it.at(at)).trim()) {
        "" => format!("{} {}", list(part), at + 1),
        name => cut(name),
    }
}

/// What a list is called.
fn list(part: Part) -> String {
    let mut letters = part.name().chars();
    letters.next().map(|it| it.to_ascii_uppercase()).into_iter().chain(letters).collect()
}

/// A text of the plan as it stands on the page.
fn shown(place: Place, plan: &Plan) -> String {
    let text = plan.text(place);
    if let Kind::Choice(choices) = place.field().kind
        && let Some(chosen) = choices.iter().find(|it| it.code == text)
    {
        return cut(chosen.label);
    }
    quoted(text)
}

fn quoted(text: &str) -> String {
    if text.trim().is_empty() { "blank".to_owned() } else { cut(text.trim()) }
}

/// No more of a text than fits.
fn cut(text: &str) -> String {
    let mut letters = text.chars();
    let start: String = letters.by_ref().take(LONGEST).collect();
    if letters.next().is_none() { start } else { start + "…" }
}

/// What two pages could not have both ways.
pub(crate) fn clash(plan: &Plan, clash: &Clash) -> String {
    let called = |path: &str| match (path, Place::at_path(path)) {
        (_, Some(place)) => label(plan, place),
        ("name", _) => "Name of this plan".to_owned(),
        _ => "Notes".to_owned(),
    };
    match clash {
        Clash::Text { path, stays, gone } => format!(
            "This plan is open on two pages, and both changed one field. {}: {} stays; {} was typed on the other page.",
            called(path), quoted(stays), quoted(gone)
        ),
        Clash::Removed { path } => format!(
            "This plan is open on two pages. {} was removed on one and changed on the other: it stays.",
            record(path).map_or_else(String::new, |(part, at)| entry(plan, part, at))
        ),
        Clash::TooLarge => {
            "This plan is open on two pages, and what was typed on both is more than a plan holds: what was typed last stays."
                .to_owned()
        }
    }
}

fn record(path: &str) -> Option<(Part, usize)> {
    let (part, at) = path.split_once('.')?;
    Some((Part::named(part)?, at.parse().ok()?))
}
