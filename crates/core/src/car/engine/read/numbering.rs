//! How the cylinders are numbered, and the firing order in this plan's numbering.

use super::{BANKS, ORDER, written};
use crate::{
    engine::{
        Spacing,
        numbering::{Numbering, Renumbered, Unsuited},
    },
    fields,
    finding::{Finding, Severity},
    quantity::CrankAngle,
    read::{Entry, Reader},
    say,
    schema::{Choice as _, Key},
};

const OWN: Key<Numbering> = fields::engine::NUMBERING;
const OF_ORDER: Key<Numbering> = fields::engine::ORDER_NUMBERING;

/// What the numbering tells of the engine.
pub(super) struct Numbered {
    /// The banks of this plan's numbering, front to rear; one where the engine is in line, none where it isn't known.
    pub(super) rows: Option<Vec<Vec<u32>>>,
    /// The cylinders there and here, where the firing order was found in another numbering.
    pub(super) renumbered: Vec<Renumbered>,
}

/// The numbering, where it suits the engine.
pub(super) fn numbering(reader: &mut Reader<'_>, cylinders: Option<u32>) -> Numbered {
    let own = reader.choice(OWN);
    let other = reader.choice(OF_ORDER);
    let own = match other {
        Entry::Given(it) => {
            let shown = it.choosable().label;
            reader.or_assume(OWN, own, it, shown, "that of the firing order")
        }
        _ => own,
    };
    // a blank that follows the firing order's has no text of its own to mend
    let own_path = if own.is_assumed() { OF_ORDER } else { OWN };
    let mut numbered = Numbered { rows: None, renumbered: Vec::new() };
    let (Some(own), Some(cylinders)) = (own.value(), cylinders) else {
        return numbered;
    };
    match own.banks(cylinders) {
        Ok(rows) => numbered.rows = Some(rows),
        Err(_) => odd(reader, own_path, cylinders),
    }
    let Some(other) = other.value().filter(|other| *other != own) else {
        return numbered;
    };
    match other.into_other(own, cylinders) {
        Ok(renumbered) => numbered.renumbered = renumbered,
        // said of this plan's own already
        Err(Unsuited::OddCount) => {}
        Err(Unsuited::OtherLayout) => {
            let message = say!(crate::car::engine::words::crank::NUMBERING_LAYOUTS);
            reader.unusable(Finding::new(Severity::Fault, OF_ORDER, message));
        }
    }
    numbered
}

fn odd(reader: &mut Reader<'_>, key: Key<Numbering>, cylinders: u32) {
    let message = say!(crate::car::engine::words::crank::NUMBERING_ODD, cylinders = cylinders);
    reader.unusable(Finding::new(Severity::Fault, key, message));
}

impl Numbered {
    /// The banks: as typed, where the numbering agrees; else those of the numbering, where it has two.
    pub(super) fn banks(
        &self,
        reader: &mut Reader<'_>,
        typed: Entry<Vec<Vec<u32>>>,
    ) -> Entry<Vec<Vec<u32>>> {
        let Some(rows) = self.rows.as_ref().filter(|rows| rows.len() == 2) else {
            return typed;
        };
        let shown: Vec<_> = rows.iter().map(|row| written(row)).collect();
        let shown = shown.join(" / ");
        if let Entry::Given(typed) = &typed
            && !(typed.len() == 2 && typed.iter().all(|bank| rows.contains(bank)))
        {
            let message = say!(crate::car::engine::words::crank::NUMBERING_BANKS, banks = shown);
            reader.unusable(Finding::new(Severity::Fault, BANKS, message));
            return Entry::Unreadable;
        }
        reader.or_assume(BANKS, typed, rows.clone(), shown, "from the numbering")
    }

    /// Order and angles in this plan's numbering, beginning with its cylinder 1.
    pub(super) fn translated(
        &self,
        reader: &mut Reader<'_>,
        order: Vec<u32>,
        spacing: Spacing,
        cycle: CrankAngle,
    ) -> (Vec<u32>, Spacing) {
        let here =
            |it: &u32| self.renumbered.iter().find(|both| both.there == *it).map(|both| both.here);
        let Some(mut ours) = order.iter().map(here).collect::<Option<Vec<_>>>() else {
            return (order, spacing);
        };
        let first = ours.iter().position(|&it| it == 1).unwrap_or_default();
        ours.rotate_left(first);
        let spacing = match spacing {
            Spacing::Even => Spacing::Even,
            Spacing::Angles(mut angles) => {
                let start = angles.get(first).copied().unwrap_or_default();
                angles.rotate_left(first);
                Spacing::Angles(angles.into_iter().map(|it| (it - start).within(cycle)).collect())
            }
        };
        if ours != order {
            let message = say!(
                crate::car::engine::words::crank::ORDER_TRANSLATED,
                there = written(&order),
                here = written(&ours)
            );
            reader.remark(Finding::new(Severity::Note, ORDER, message));
        }
        (ours, spacing)
    }
}
