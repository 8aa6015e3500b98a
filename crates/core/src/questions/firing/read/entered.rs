//! What stands in the controller: the order and the spacing in which it fires its ignition channels, and its outputs.

use crate::{
    engine::{Engine, EngineKind},
    fields::controller::{ANGLES, EnteredSpacing, ORDER, OUTPUTS, SPACING},
    finding::{Finding, Severity},
    quantity::CrankAngle,
    questions::firing::words,
    read::{Entry, Reader, engine::cylinders_in, problem::shortened, row::signed_row, written},
    say,
    schema::{Key, NumberRow},
};

/// What the fields say.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Entered {
    /// The channels, from the one that is fired first.
    pub(crate) order: Option<Vec<u32>>,
    /// How they are spaced; nothing where it wasn't looked at.
    pub(crate) spacing: Option<EnteredFirings>,
    /// The outputs of the controller that all share.
    pub(crate) outputs: Option<u32>,
    /// Whether something typed of order or spacing can't be used.
    pub(crate) is_spoiled: bool,
}

/// The spacing of the firings in the controller.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum EnteredFirings {
    /// All alike.
    Evenly,
    /// Angles from the first, rising.
    At(Vec<CrankAngle>),
}

/// Reads them.
pub(crate) fn entered(reader: &mut Reader<'_>, engine: Option<&Engine>) -> Entered {
    let order = order(reader);
    let angles = angles(reader, engine.map_or(EngineKind::FourStroke.cycle(), Engine::cycle));
    let (chosen, has_angles) = (reader.choice(SPACING), angles.is_some());
    let spacing = match chosen {
        Entry::Given(EnteredSpacing::Even) => Some(EnteredFirings::Evenly),
        Entry::Given(EnteredSpacing::Angles) | Entry::Missing => angles.map(EnteredFirings::At),
        Entry::Assumed(_) | Entry::Unreadable => None,
    };
    let is_lost = |key: Key<NumberRow>, is_read: bool| !is_read && reader.is_typed(key);
    let is_spoiled = is_lost(ORDER, order.is_some())
        || matches!(chosen, Entry::Unreadable)
        || is_lost(ANGLES, has_angles);
    Entered { order, spacing, outputs: reader.whole(OUTPUTS).value(), is_spoiled }
}

fn order(reader: &mut Reader<'_>) -> Option<Vec<u32>> {
    let text = reader.text(ORDER);
    if text.is_empty() {
        reader.missing(ORDER);
        return None;
    }
    let is_once = |order: &[u32]| {
        let mut rest = order.iter().enumerate();
        rest.all(|(at, it)| *it > 0 && !order.iter().skip(at + 1).any(|other| other == it))
    };
    match cylinders_in(text) {
        Ok(order) if !order.is_empty() => {
            let half = order.len() / 2;
            // a channel that is fired every turn may be entered for both turns
            let (one, other) = order.split_at(half);
            let order = if one == other { one.to_vec() } else { order };
            if is_once(&order) {
                reader.given(ORDER, written(&order));
                return Some(order);
            }
        }
        Ok(_) | Err(_) => {}
    }
    unusable(reader, ORDER);
    None
}

fn angles(reader: &mut Reader<'_>, cycle: CrankAngle) -> Option<Vec<CrankAngle>> {
    let text = reader.text(ANGLES);
    if text.is_empty() {
        reader.missing(ANGLES);
        return None;
    }
    let place = |it| CrankAngle::new(it).from_nought(cycle);
    let angles: Vec<_> = signed_row(text).unwrap_or_default().into_iter().map(place).collect();
    let rises = angles.windows(2).all(|it| matches!(it, [one, next] if next > one));
    let Some(first) = angles.first().copied().filter(|_| rises) else {
        unusable(reader, ANGLES);
        return None;
    };
    reader.given(ANGLES, shortened(text));
    Some(angles.into_iter().map(|it| it - first).collect())
}

fn unusable(reader: &mut Reader<'_>, key: Key<NumberRow>) {
    let wanted = if key == ORDER {
        say!(words::entered::WANTED_ORDER)
    } else {
        say!(words::entered::WANTED_ANGLES)
    };
    let typed = shortened(reader.text(key));
    let message = say!(words::entered::UNREADABLE, typed = typed, wanted = wanted.into_text());
    reader.unusable(Finding::new(Severity::Fault, key, message));
}
