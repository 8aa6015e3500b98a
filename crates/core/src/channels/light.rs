//! What a timing light says on several cylinders: one cause behind all errors, or leads that are mixed.
//!
//! The mark on the crank comes round every turn, so a reading tells an angle within one turn only: whether the spark falls
//! on compression or into the overlap must be seen elsewhere.

use crate::{
    engine::{Engine, EngineKind, TURN},
    quantity::{CrankAngle, Measure},
    working::{Formula, Step, step},
};

/// What was read, and what is known besides.
#[derive(Clone, Debug, PartialEq)]
pub struct Readings {
    /// The advance to which the controller was locked: degrees before top dead centre.
    pub advance: CrankAngle,
    /// What was seen: the cylinder, and the advance by its mark.
    pub seen: Vec<(u32, CrankAngle)>,
    /// How far a reading may be off.
    pub tolerance: CrankAngle,
    /// The offset of the trigger as it was entered.
    pub offset: Option<CrankAngle>,
    /// Positions on the crank wheel, missing teeth counted.
    pub positions: Option<u32>,
    /// On which stroke it was, where that was looked at.
    pub stroke: Option<SparkStroke>,
}

/// The stroke on which the spark was seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SparkStroke {
    /// The way up with both valves shut.
    Compression,
    /// The way up with the exhaust valve open.
    Exhaust,
}

/// One thing that would explain all readings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Cause {
    /// Nothing is wrong.
    Right,
    /// The controller is a whole turn out.
    Turn,
    /// The offset was entered with the wrong sign: everything is out by twice of it.
    Sign,
    /// The other edge of the tooth triggers: everything is out by half a position of the wheel.
    Edge,
    /// The first tooth is counted so many positions late, or early below nought.
    Teeth(i32),
    /// The controller takes this cylinder for the first.
    Reference(u32),
    /// An offset that is wrong by the error, for no reason that shows.
    Offset,
}

/// What follows from the readings.
#[derive(Clone, Debug, PartialEq)]
pub enum LightFinding {
    /// One reading tells no cause from another.
    TooFew,
    /// All are out by the same: the mean error, late above 0, and the causes that would make it.
    Constant(CrankAngle, Vec<Cause>),
    /// Each is out by the angle between two firings: the leads or the order are mixed. For each cylinder those whose
    /// sparks it may get.
    Mixed(Vec<(u32, Vec<u32>)>),
    /// Each is out as if the controller fired evenly, with an offset that is out by so much, on an engine that doesn't.
    FiredEvenly(CrankAngle),
    /// Every second one in the order is out by so much more than the others: an odd-fire engine, fired evenly.
    Alternating(CrankAngle),
    /// They differ by something that no exchange explains.
    Scattered,
}

const ERROR: Formula = Formula {
    symbols: "e = A_locked − A_seen",
    source: "definition; late above 0, counted within half a turn either way",
};
const POSITION: Formula =
    Formula { symbols: "p = 360° / N", source: "geometry: N positions on a turn" };

/// The error of a reading: late above 0, above minus half a turn and up to half.
pub fn error(advance: CrankAngle, seen: CrankAngle) -> CrankAngle {
    (advance - seen).as_error(TURN)
}

/// How the errors were found, and the position of the wheel where it is known.
pub fn steps(readings: &Readings) -> Vec<Step> {
    let of = |(_, seen): &(u32, CrankAngle)| {
        let values = [("A_locked", readings.advance.show()), ("A_seen", seen.show())];
        step(&ERROR, &values, error(readings.advance, *seen))
    };
    let mut steps: Vec<Step> = readings.seen.iter().map(of).collect();
    if let Some(positions) = readings.positions.filter(|it| *it > 0) {
        steps.push(step(&POSITION, &[("N", positions.into())], pitch(positions)));
    }
    steps
}

fn pitch(positions: u32) -> CrankAngle {
    CrankAngle::new(TURN.degrees() / f64::from(positions))
}

/// What follows from the readings.
pub fn finding(engine: &Engine, readings: &Readings) -> LightFinding {
    let errors: Vec<(u32, CrankAngle)> = readings
        .seen
        .iter()
        .map(|(cylinder, seen)| (*cylinder, error(readings.advance, *seen)))
        .collect();
    // a single has no other lead to be mixed with
    if errors.is_empty() || (errors.len() < 2 && engine.cylinders() > 1) {
        return LightFinding::TooFew;
    }
    // two readings may be off in opposite ways
    let apart = 2.0 * readings.tolerance.degrees();
    let all: Vec<CrankAngle> = errors.iter().map(|it| it.1).collect();
    if let Some(mean) = alike(&all, apart) {
        return LightFinding::Constant(mean, causes(engine, readings, mean));
    }
    let givers: Vec<(u32, Vec<u32>)> = errors
        .iter()
        .map(|&(cylinder, error)| (cylinder, givers(engine, readings, cylinder, error)))
        .collect();
    // a lead on two plugs is none: only an exchange can be leads
    if is_exchange(&givers) {
        return LightFinding::Mixed(givers);
    }
    if let Some(offset) = fired_evenly(engine, &errors, apart) {
        return LightFinding::FiredEvenly(offset);
    }
    alternating(engine, &errors, apart).map_or(LightFinding::Scattered, LightFinding::Alternating)
}

/// Whether every cylinder was read, and by its mark each fires where it should. Of the stroke a mark tells nothing.
pub fn is_right_on_all(engine: &Engine, readings: &Readings) -> bool {
    let is_read = |cylinder: u32| readings.seen.iter().any(|it| it.0 == cylinder);
    engine.firings().iter().all(|it| is_read(it.cylinder)) && is_right(engine, readings)
}

/// Whether each that was read fires where it should, by its mark.
pub fn is_right(engine: &Engine, readings: &Readings) -> bool {
    let LightFinding::Constant(_, causes) = finding(engine, readings) else { return false };
    causes.first() == Some(&Cause::Right)
}

/// Whether the mark of each cylinder stands alone: then leads that are swapped show.
pub fn tells_apart(engine: &Engine) -> bool {
    let firings = engine.firings();
    let is_alone = |(at, one): (usize, &crate::engine::Firing)| {
        firings
            .iter()
            .skip(at + 1)
            .all(|it| (it.angle - one.angle).as_error(TURN).degrees().abs() > 1.0)
    };
    firings.iter().enumerate().all(is_alone)
}

/// Whether each cylinder can get its spark from another one.
fn is_exchange(givers: &[(u32, Vec<u32>)]) -> bool {
    // giver and taker; a taker may be moved to another of its givers
    let mut given: Vec<(u32, usize)> = Vec::new();
    (0..givers.len()).all(|taker| gets(givers, taker, &mut given, &mut Vec::new()))
}

fn gets(
    givers: &[(u32, Vec<u32>)],
    taker: usize,
    given: &mut Vec<(u32, usize)>,
    tried: &mut Vec<u32>,
) -> bool {
    let Some((_, of_this)) = givers.get(taker) else { return false };
    of_this.iter().any(|&giver| {
        if tried.contains(&giver) {
            return false;
        }
        tried.push(giver);
        let holder = given.iter().position(|(it, _)| *it == giver);
        match holder.and_then(|at| given.get(at).copied()) {
            None => given.push((giver, taker)),
            Some((_, other)) if gets(givers, other, given, tried) => {
                // the other has another one by now
                given.retain(|it| *it != (giver, other));
                given.push((giver, taker));
            }
            Some(_) => return false,
        }
        true
    })
}

/// The offset that is left, where each error is the one of an even spacing on an engine that is not even.
fn fired_evenly(engine: &Engine, errors: &[(u32, CrankAngle)], apart: f64) -> Option<CrankAngle> {
    if engine.is_even() {
        return None;
    }
    let interval = engine.cycle().degrees() / f64::from(engine.cylinders());
    let left = |(cylinder, error): &(u32, CrankAngle)| {
        let place = f64::from(u32::try_from(engine.place_of(*cylinder)?).ok()?);
        let even = CrankAngle::new(place * interval) - engine.angle_of(*cylinder)?;
        Some(*error - even)
    };
    alike(&errors.iter().map(left).collect::<Option<Vec<_>>>()?, apart)
}

/// By how much more every second one in the order is late, where those in between are alike.
fn alternating(engine: &Engine, errors: &[(u32, CrankAngle)], apart: f64) -> Option<CrankAngle> {
    // two readings show no rule, but where there are no more
    let is_rule = errors.len() > 2 || engine.cylinders() == 2;
    if !engine.is_even() || engine.cylinders() % 2 == 1 || !is_rule {
        return None;
    }
    let is_second = |it: &&(u32, CrankAngle)| engine.place_of(it.0).is_some_and(|at| at % 2 == 1);
    let of = |wanted: bool| -> Vec<CrankAngle> {
        errors.iter().filter(|it| is_second(it) == wanted).map(|it| it.1).collect()
    };
    Some((alike(&of(true), apart)? - alike(&of(false), apart)?).as_error(TURN))
}

/// The mean of angles that are alike; nothing where they aren't, or there are none.
fn alike(angles: &[CrankAngle], apart: f64) -> Option<CrankAngle> {
    let first = *angles.first()?;
    let spread: Vec<f64> = angles.iter().map(|it| (*it - first).as_error(TURN).degrees()).collect();
    let most = spread.iter().fold(f64::NEG_INFINITY, |most, it| most.max(*it));
    let least = spread.iter().fold(f64::INFINITY, |least, it| least.min(*it));
    #[expect(clippy::cast_precision_loss, reason = "at most 16 cylinders")]
    let mean = spread.iter().sum::<f64>() / spread.len() as f64;
    (most - least <= apart + 1e-9).then(|| (first + CrankAngle::new(mean)).as_error(TURN))
}

/// What would put everything out by this error, the likeliest first (common practice, no source).
fn causes(engine: &Engine, readings: &Readings, error: CrankAngle) -> Vec<Cause> {
    let is = |angle: f64| {
        let off = (error - CrankAngle::new(angle)).as_error(TURN).degrees().abs();
        off <= readings.tolerance.degrees() + 1e-9
    };
    let either = |angle: f64| is(angle) || is(-angle);
    if is(0.0) {
        return match (readings.stroke, engine.kind()) {
            (Some(SparkStroke::Exhaust), EngineKind::FourStroke) => vec![Cause::Turn],
            (None, EngineKind::FourStroke) => vec![Cause::Right, Cause::Turn],
            _ => vec![Cause::Right],
        };
    }
    let mut causes = Vec::new();
    if readings
        .offset
        .is_some_and(|it| !it.is_near(CrankAngle::default()) && either(2.0 * it.degrees()))
    {
        causes.push(Cause::Sign);
    }
    if let Some(pitch) = readings.positions.filter(|it| *it > 0).map(|it| pitch(it).degrees()) {
        if either(pitch / 2.0) {
            causes.push(Cause::Edge);
        }
        let teeth = [1, -1, 2, -2].into_iter().filter(|n| is(f64::from(*n) * pitch));
        causes.extend(teeth.map(Cause::Teeth));
    }
    // a reference that is late by the place of another one, takes that one for the first
    let others = engine.firings().iter().skip(1).filter(|firing| is(firing.angle.degrees()));
    causes.extend(others.map(|firing| Cause::Reference(firing.cylinder)));
    causes.push(Cause::Offset);
    causes
}

/// The cylinders whose sparks would be seen on this one with this error.
fn givers(engine: &Engine, readings: &Readings, cylinder: u32, error: CrankAngle) -> Vec<u32> {
    let Some(own) = engine.angle_of(cylinder) else { return Vec::new() };
    let is_seen = |angle: CrankAngle| {
        let off = (angle - own - error).as_error(TURN).degrees().abs();
        off <= readings.tolerance.degrees() + 1e-9
    };
    let giving = engine.firings().iter().filter(|firing| is_seen(firing.angle));
    giving.map(|firing| firing.cylinder).collect()
}

#[cfg(test)]
mod tests;
