//! The engine from its fields.

mod problem;

use super::{Entry, Reader, row};
use crate::{
    engine::{Engine, Kind, Spacing},
    finding::{Finding, Severity},
    quantity::{Band, CrankAngle, Measure, RotationalSpeed},
    say,
};

const CYLINDERS: &str = "engine.cylinders";
const ORDER: &str = "engine.order";
const KIND: &str = "engine.kind";
const SPACING: &str = "engine.spacing";
const ANGLES: &str = "engine.angles";
const BANKS: &str = "engine.banks";

/// The engine, where enough of it is known; what is wrong is found at its field.
pub(crate) fn engine(reader: &mut Reader<'_>) -> Option<Engine> {
    let kind = kind(reader);
    let cylinders = reader.whole(CYLINDERS);
    let typed = typed_order(reader, cylinders);
    let cylinders = counted(reader, cylinders, typed.as_deref());
    let order = known_order(reader, typed, cylinders);
    let spacing = spacing(reader);
    let banks = banks(reader);
    let (kind, cylinders, order, spacing) = (kind?, cylinders?, order?, spacing?);
    for misfit in Engine::misfits(kind, cylinders, &order, &spacing) {
        reader.unusable(problem::finding(&misfit, cylinders, &spacing, kind));
    }
    let engine = Engine::new(kind, cylinders, &order, &spacing).ok()?;
    let engine = with_banks(reader, engine, banks);
    remark(reader, &engine);
    Some(engine)
}

/// The highest speed, which more than one question asks for.
pub(crate) fn highest_speed(reader: &mut Reader<'_>) -> Option<Band<RotationalSpeed>> {
    reader.band::<RotationalSpeed>("engine.highest_speed").value()
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

fn kind(reader: &mut Reader<'_>) -> Option<Kind> {
    let code = reader.choice(KIND).value()?;
    Some(match code {
        "two-stroke" => Kind::TwoStroke,
        "rotary" => Kind::Rotary,
        _ => Kind::FourStroke,
    })
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
            reader.unusable(problem::unreadable(ORDER, "engine.order-unreadable", text));
            None
        }
        Err(token) => {
            reader.unusable(problem::unreadable(ORDER, "engine.order-unreadable", &token));
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

fn spacing(reader: &mut Reader<'_>) -> Option<Spacing> {
    let mut spacing = reader.choice(SPACING);
    if spacing.is_assumed() && !reader.text(ANGLES).is_empty() {
        let label = "Odd-fire: I know the angles";
        spacing = reader.or_assume(SPACING, Entry::Missing, "angles", label, "angles are typed");
    }
    match spacing.value()? {
        "angles" => angles(reader).map(Spacing::Angles),
        _ => Some(Spacing::Even),
    }
}

fn angles(reader: &mut Reader<'_>) -> Option<Vec<CrankAngle>> {
    let text = reader.text(ANGLES);
    if text.is_empty() {
        reader.missing(ANGLES);
        return None;
    }
    match row(text) {
        Ok(angles) => {
            let angles: Vec<_> = angles.into_iter().map(CrankAngle::new).collect();
            let shown: Vec<_> = angles.iter().map(|angle| angle.show().into_shown()).collect();
            reader.given(ANGLES, shown.join(" "));
            Some(angles)
        }
        Err(token) => {
            reader.unusable(problem::unreadable(ANGLES, "engine.angles-unreadable", &token));
            None
        }
    }
}

fn banks(reader: &mut Reader<'_>) -> Vec<Vec<u32>> {
    let text = reader.text(BANKS);
    if text.is_empty() {
        reader.missing(BANKS);
        return Vec::new();
    }
    let banks = text.split(['/', ';', '|']).map(cylinders_in).collect::<Result<Vec<_>, _>>();
    match banks {
        Ok(mut banks) => {
            banks.retain(|bank| !bank.is_empty());
            let shown: Vec<_> = banks.iter().map(|bank| written(bank)).collect();
            reader.given(BANKS, shown.join(" / "));
            banks
        }
        Err(token) => {
            reader.unusable(problem::unreadable(BANKS, "engine.banks-unreadable", &token));
            Vec::new()
        }
    }
}

/// The engine with its banks, or without those that don't fit it.
fn with_banks(reader: &mut Reader<'_>, engine: Engine, banks: Vec<Vec<u32>>) -> Engine {
    if banks.is_empty() {
        return engine;
    }
    match engine.clone().with_banks(banks) {
        Ok(engine) => engine,
        Err(misfit) => {
            let finding =
                problem::finding(&misfit, engine.cylinders(), &Spacing::Even, engine.kind());
            reader.unusable(finding);
            engine
        }
    }
}

/// What can be read and still deserves a second look.
fn remark(reader: &mut Reader<'_>, engine: &Engine) {
    let together = engine.firings().windows(2).find_map(|pair| match pair {
        [one, other] if other.angle.is_near(one.angle) => Some((*one, *other)),
        _ => None,
    });
    if let (Some((one, other)), Kind::FourStroke) = (together, engine.kind()) {
        let message = say!(
            "engine.fire-together",
            first = one.cylinder,
            second = other.cylinder,
            angle = one.angle
        );
        reader.remark(Finding::new(Severity::Doubt, ANGLES, message));
    }
    let may_be_odd = engine.banks().len() == 2 && matches!(engine.cylinders(), 2 | 6 | 10);
    if may_be_odd && reader.text(SPACING).is_empty() && engine.is_even() {
        let message = say!("engine.even-assumed", cylinders = engine.cylinders());
        reader.remark(Finding::new(Severity::Doubt, SPACING, message));
    }
}

#[cfg(test)]
mod tests;
