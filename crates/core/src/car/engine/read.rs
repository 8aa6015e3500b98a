//! The engine from its fields.

mod geometry;
mod numbering;
mod problem;

use crate::read::{
    Entry, Reader,
    row::{row, signed_row},
};
use crate::{
    engine::{Engine, EngineKind, Spacing, SpacingBasis, check_banks, geometry::Geometry},
    fields::{self, engine::KnownBy},
    finding::{Finding, Severity},
    quantity::{Band, CrankAngle, Measure, RotationalSpeed},
    say,
    schema::{Choice as _, Key, NumberRow, Whole},
};

const CYLINDERS: Key<Whole> = fields::engine::CYLINDERS;
const ORDER: Key<NumberRow> = fields::engine::ORDER;
const KIND: Key<EngineKind> = fields::engine::KIND;
const SPACING: Key<KnownBy> = fields::engine::SPACING;
const ANGLES: Key<NumberRow> = fields::engine::ANGLES;
const PINS: Key<NumberRow> = fields::engine::PINS;
const BANKS: Key<NumberRow> = fields::engine::BANKS;

/// How the firings are spaced: told, or to be found from the crank.
enum Spaced {
    Told(Spacing),
    Crank(Geometry),
}

/// The engine, where enough of it is known; what is wrong is found at its field.
pub(crate) fn engine(reader: &mut Reader<'_>) -> Option<Engine> {
    let kind = reader.choice(KIND).value();
    let cylinders = reader.whole(CYLINDERS);
    let typed = typed_order(reader, cylinders);
    let cylinders = counted(reader, cylinders, typed.as_deref());
    let order = known_order(reader, typed, cylinders);
    let numbered = numbering::numbering(reader, cylinders);
    let banks = banks(reader, cylinders);
    let banks = numbered.banks(reader, banks);
    let rows = match (&banks, numbered.rows.clone()) {
        (Entry::Missing, Some(rows)) => Entry::Assumed(rows),
        _ => banks.clone(),
    };
    let known_rows = rows.clone().value();
    let in_line = known_rows.as_ref().is_some_and(|rows| rows.len() == 1);
    let cycle = kind.map_or(EngineKind::FourStroke.cycle(), EngineKind::cycle);
    let spaced = spacing(reader, cylinders, rows, cycle);
    let (kind, cylinders, order, spaced) = (kind?, cylinders?, order?, spaced?);
    let (spacing, crank) = match spaced {
        Spaced::Told(spacing) => (spacing, None),
        Spaced::Crank(crank) => (Spacing::Even, Some(crank)),
    };
    let misfits = Engine::misfits(kind, cylinders, &order, &spacing);
    for misfit in &misfits {
        let mut finding = problem::finding(misfit, cylinders, &spacing, kind);
        // they may be counted from the order
        if finding.subject == CYLINDERS.path() && !reader.is_typed(CYLINDERS) {
            finding.subject = ORDER.path();
        }
        reader.unusable(finding);
    }
    if !misfits.is_empty() {
        return None;
    }
    let (order, spacing) = numbered.translated(reader, order, spacing, kind.cycle());
    let engine = match crank {
        Some(crank) => geometry::engine(reader, kind, cylinders, &order, &crank)?,
        None => Engine::new(kind, cylinders, &order, &spacing).ok()?,
    };
    let engine = engine.with_numbers(numbered.renumbered);
    let engine = match banks.value() {
        Some(banks) => engine.clone().with_banks(banks).unwrap_or(engine),
        None => engine,
    };
    remark(reader, &engine);
    let basis = spacing_basis(reader, &engine, in_line, known_rows.as_ref());
    Some(engine.with_spacing(basis))
}

/// The highest speed, which more than one question asks for.
pub(crate) fn highest_speed(reader: &mut Reader<'_>) -> Option<Band<RotationalSpeed>> {
    reader.band(fields::engine::HIGHEST_SPEED).value()
}

/// Numbers of cylinders as they are written: `1-5-3-6-2-4`.
pub(crate) fn written(cylinders: &[u32]) -> String {
    let texts: Vec<String> = cylinders.iter().map(u32::to_string).collect();
    texts.join("-")
}

/// The whole numbers in a text, or the first token that is none.
pub(crate) fn cylinders_in(text: &str) -> Result<Vec<u32>, String> {
    let whole = |number: f64| {
        let is_whole = number.fract() == 0.0 && (0.0..1e6).contains(&number);
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "whole, and in range"
        )]
        if is_whole { Ok(number as u32) } else { Err(crate::math::shortest(number)) }
    };
    row(text)?.into_iter().map(whole).collect()
}

/// The order as it was typed; nothing where it is blank or can't be read.
fn typed_order(reader: &mut Reader<'_>, cylinders: Entry<u32>) -> Option<Vec<u32>> {
    let text = reader.text(ORDER);
    if text.is_empty() {
        return None;
    }
    if let Some(digits) = digit_by_digit(text, cylinders.value()) {
        return Some(digits);
    }
    match cylinders_in(text) {
        Ok(order) if !order.is_empty() => Some(order),
        Ok(_) => {
            reader.unusable(problem::unreadable(
                ORDER,
                crate::car::engine::words::ORDER_UNREADABLE,
                text,
            ));
            None
        }
        Err(token) => {
            reader.unusable(problem::unreadable(
                ORDER,
                crate::car::engine::words::ORDER_UNREADABLE,
                &token,
            ));
            None
        }
    }
}

/// `153624`: with fewer than ten cylinders a digit is a cylinder, where there are as many as cylinders.
fn digit_by_digit(text: &str, cylinders: Option<u32>) -> Option<Vec<u32>> {
    let digits: Vec<u32> = text.chars().map(|c| c.to_digit(10)).collect::<Option<_>>()?;
    let count = u32::try_from(digits.len()).ok()?;
    ((2..10).contains(&count) && cylinders.is_none_or(|it| it == count)).then_some(digits)
}

/// How many cylinders: as typed, or as many as the order has.
fn counted(reader: &mut Reader<'_>, typed: Entry<u32>, order: Option<&[u32]>) -> Option<u32> {
    let Some(count) = order.and_then(|order| u32::try_from(order.len()).ok()) else {
        return typed.value();
    };
    let basis = "as many as the firing order has";
    reader.or_assume(CYLINDERS, typed, count, count, basis).value()
}

/// The order as typed, or the only one that an engine of one or two cylinders can have.
fn known_order(
    reader: &mut Reader<'_>,
    typed: Option<Vec<u32>>,
    cylinders: Option<u32>,
) -> Option<Vec<u32>> {
    if let Some(order) = typed {
        reader.given(ORDER, written(&order));
        return Some(order);
    }
    if !reader.text(ORDER).is_empty() {
        return None;
    }
    if let Some(count @ 1..=2) = cylinders {
        let order: Vec<u32> = (1..=count).collect();
        let shown = written(&order);
        return reader
            .or_assume(ORDER, Entry::Missing, order, shown, "the only order there is")
            .value();
    }
    reader.missing(ORDER);
    None
}

fn spacing(
    reader: &mut Reader<'_>,
    cylinders: Option<u32>,
    rows: Entry<Vec<Vec<u32>>>,
    cycle: CrankAngle,
) -> Option<Spaced> {
    let mut spacing = reader.choice(SPACING);
    if spacing.is_assumed() && !reader.text(ANGLES).is_empty() {
        spacing = known_by(reader, KnownBy::Angles, "angles are typed");
    } else if spacing.is_assumed() && !reader.text(PINS).is_empty() {
        spacing = known_by(reader, KnownBy::Geometry, "pins are typed");
    }
    match spacing.value()? {
        KnownBy::Angles => {
            angles(reader, cycle).map(|angles| Spaced::Told(Spacing::Angles(angles)))
        }
        KnownBy::Geometry => geometry::geometry(reader, cylinders, rows).map(Spaced::Crank),
        KnownBy::Even => Some(Spaced::Told(Spacing::Even)),
    }
}

fn known_by(reader: &mut Reader<'_>, it: KnownBy, basis: &str) -> Entry<KnownBy> {
    reader.or_assume(SPACING, Entry::Missing, it, it.choosable().label, basis)
}

fn angles(reader: &mut Reader<'_>, cycle: CrankAngle) -> Option<Vec<CrankAngle>> {
    let text = reader.text(ANGLES);
    if text.is_empty() {
        reader.missing(ANGLES);
        return None;
    }
    match signed_row(text) {
        Ok(angles) => {
            // one below nought is the same place, counted back from the first
            let place = |it| CrankAngle::new(it).from_nought(cycle);
            let angles: Vec<_> = angles.into_iter().map(place).collect();
            let shown: Vec<_> = angles.iter().map(|angle| angle.show().into_shown()).collect();
            reader.given(ANGLES, shown.join(" "));
            Some(angles)
        }
        Err(token) => {
            reader.unusable(problem::unreadable(
                ANGLES,
                crate::car::engine::words::ANGLES_UNREADABLE,
                &token,
            ));
            None
        }
    }
}

/// The banks as they were typed, where each cylinder is in one of them.
fn banks(reader: &mut Reader<'_>, cylinders: Option<u32>) -> Entry<Vec<Vec<u32>>> {
    let text = reader.text(BANKS);
    if text.is_empty() {
        reader.missing(BANKS);
        return Entry::Missing;
    }
    let banks = text.split(['/', ';', '|']).map(cylinders_in).collect::<Result<Vec<_>, _>>();
    match banks {
        Ok(mut banks) => {
            banks.retain(|bank| !bank.is_empty());
            if banks.is_empty() {
                reader.unusable(problem::unreadable(
                    BANKS,
                    crate::car::engine::words::BANKS_UNREADABLE,
                    text,
                ));
                return Entry::Unreadable;
            }
            let shown: Vec<_> = banks.iter().map(|bank| written(bank)).collect();
            reader.given(BANKS, shown.join(" / "));
            // without the number of cylinders there is nothing to hold them against
            let misfit = cylinders.and_then(|it| Some((it, check_banks(it, &banks).err()?)));
            let Some((cylinders, misfit)) = misfit else { return Entry::Given(banks) };
            let finding =
                problem::finding(&misfit, cylinders, &Spacing::Even, EngineKind::FourStroke);
            reader.unusable(finding);
            Entry::Unreadable
        }
        Err(token) => {
            reader.unusable(problem::unreadable(
                BANKS,
                crate::car::engine::words::BANKS_UNREADABLE,
                &token,
            ));
            Entry::Unreadable
        }
    }
}

/// What can be read and still deserves a second look.
fn remark(reader: &mut Reader<'_>, engine: &Engine) {
    let together = engine.firings().windows(2).find_map(|pair| match pair {
        [one, other] if other.angle.is_near(one.angle) => Some((*one, *other)),
        _ => None,
    });
    if let (Some((one, other)), EngineKind::FourStroke) = (together, engine.kind()) {
        let message = say!(
            crate::car::engine::words::FIRE_TOGETHER,
            first = one.cylinder,
            second = other.cylinder,
            angle = one.angle
        );
        reader.remark(Finding::new(Severity::Doubt, ANGLES, message));
    }
}

/// How sure an even spacing is: as the fitter said, unless a crank was typed that says otherwise.
fn spacing_basis(
    reader: &mut Reader<'_>,
    engine: &Engine,
    in_line: bool,
    rows: Option<&Vec<Vec<u32>>>,
) -> SpacingBasis {
    if !engine.is_even() || !engine.tops().is_empty() {
        return SpacingBasis::Told;
    }
    let order = engine.order();
    if let Some((angles, is_sure)) = geometry::contradicting(reader, engine.kind(), &order, rows) {
        let message = say!(crate::car::engine::words::EVEN_CONTRADICTED, angles = angles);
        let severity = if is_sure { Severity::Fault } else { Severity::Doubt };
        let take = say!(crate::car::engine::words::TAKE_CRANK);
        let drop = say!(crate::car::engine::words::DROP_CRANK);
        let bank_angles = fields::engine::BANK_ANGLES;
        let cures = [
            take.done_by(vec![SPACING.edit(KnownBy::Geometry.choosable().code)]),
            drop.done_by(vec![PINS.edit(""), bank_angles.edit("")]),
        ];
        reader.remark(Finding::new(severity, SPACING, message).cured_by(cures));
        return if is_sure { SpacingBasis::Contradicted } else { SpacingBasis::Doubted };
    }
    let is_two_banks = engine.banks().len() == 2;
    let is_four_stroke = engine.kind() == EngineKind::FourStroke;
    let may_be_odd = is_two_banks || is_four_stroke && !in_line && !is_of_a_straight_six(&order);
    let is_told = reader.is_typed(SPACING);
    if is_told || !may_be_odd || !matches!(engine.cylinders(), 2 | 6 | 10) {
        return SpacingBasis::Told;
    }
    let message = say!(crate::car::engine::words::EVEN_ASSUMED, cylinders = engine.cylinders());
    reader.remark(Finding::new(Severity::Doubt, SPACING, message));
    SpacingBasis::Doubted
}

/// Whether in this order the first and the last piston move together, the second and the second to last, and so on: the crank
/// of a straight six is a mirror of itself, and no odd-fire one is known with such an order (common practice, no source).
fn is_of_a_straight_six(order: &[u32]) -> bool {
    let halves = order.iter().zip(order.iter().skip(3));
    order.len() == 6 && halves.take(3).all(|(one, other)| one + other == 7)
}

#[cfg(test)]
mod tests;
