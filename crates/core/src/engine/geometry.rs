//! Firing angles from the crank: which way each bank leans, where each pin stands, and which of the two turns of
//! the cycle the firing order gives to each cylinder.

use super::{EngineKind, TURN};
use crate::quantity::CrankAngle;

/// How crank and banks are built.
#[derive(Clone, Debug, PartialEq)]
pub struct Geometry {
    rows: Vec<Vec<u32>>,
    bank_angles: Vec<CrankAngle>,
    pins: Vec<CrankAngle>,
    split: CrankAngle,
}

/// Why there can be no such crank.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UnfitCrank {
    /// Not one angle for each bank after the first.
    BankAngles {
        /// Angles given.
        angles: usize,
        /// Banks of the engine.
        banks: usize,
    },
    /// Neither a pin for each place of a bank nor one for each cylinder.
    Pins {
        /// Pins given.
        pins: usize,
        /// Cylinders of a bank, where all banks have the same number.
        each: Option<usize>,
        /// Cylinders of the engine.
        cylinders: usize,
    },
}

/// The top dead centre of one cylinder, and what it is made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Top {
    /// The cylinder, from 1.
    pub cylinder: u32,
    /// The angle of its bank from the first.
    pub bank: CrankAngle,
    /// The angle of its pin.
    pub pin: CrankAngle,
    /// What a split pin adds.
    pub split: CrankAngle,
}

impl Top {
    /// Where in a turn the piston is at its top, from 0 up to but without 360 degrees: bank angle + pin + split.
    ///
    /// Source: kinematics of crank and rod, as in any textbook, from memory: a piston is at its top when its pin
    /// points along its cylinder. The rods of a radial that hang on a master rod reach it some degrees off.
    pub fn angle(&self) -> CrankAngle {
        in_turn(self.bank + self.pin + self.split)
    }
}

/// The firing angles that a crank and a firing order allow.
#[derive(Clone, Debug, PartialEq)]
pub struct Turns {
    /// The most even of them, in the order of firing, from 0.
    pub angles: Vec<CrankAngle>,
    /// The others.
    pub others: Vec<Vec<CrankAngle>>,
    /// Whether one of the others is as even: which it is can't be told from here.
    pub is_tie: bool,
}

/// A cylinder that can't fire where the firing order has it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutOfTurn {
    /// The cylinder.
    pub cylinder: u32,
    /// Its top dead centre, from that of the first to fire.
    pub angle: CrankAngle,
    /// The one before it in the order.
    pub before: u32,
    /// The top dead centre of that one.
    pub before_angle: CrankAngle,
}

impl Geometry {
    /// A crank with its banks.
    ///
    /// `rows` are the cylinders by bank, each bank from front to rear; `bank_angles` lead from the first bank to each
    /// further one, in the direction in which the crank turns; `pins` say how far the crank turns from pin 1 at its
    /// top until each is at its top, one for each place of a bank where opposite cylinders share it, or one for each
    /// cylinder by number; `split` says by how much the rod of the second bank follows on a split pin.
    ///
    /// # Errors
    /// All that doesn't fit.
    pub fn new(
        rows: Vec<Vec<u32>>,
        bank_angles: Vec<CrankAngle>,
        pins: Vec<CrankAngle>,
        split: CrankAngle,
    ) -> Result<Self, Vec<UnfitCrank>> {
        let mut unfit = Vec::new();
        if bank_angles.len() + 1 != rows.len() {
            unfit.push(UnfitCrank::BankAngles { angles: bank_angles.len(), banks: rows.len() });
        }
        let cylinders = rows.iter().map(Vec::len).sum();
        let each = rows.first().map(Vec::len).filter(|&it| rows.iter().all(|row| row.len() == it));
        if pins.len() != cylinders && Some(pins.len()) != each {
            unfit.push(UnfitCrank::Pins { pins: pins.len(), each, cylinders });
        }
        if unfit.is_empty() { Ok(Self { rows, bank_angles, pins, split }) } else { Err(unfit) }
    }

    /// The same with its banks counted against the turn of the crank, or its pins.
    #[must_use]
    pub fn mirrored(&self, banks: bool, pins: bool) -> Self {
        let turned = |angles: &[CrankAngle], is_turned: bool| -> Vec<CrankAngle> {
            let angle = |it: &CrankAngle| if is_turned { in_turn(TURN - *it) } else { *it };
            angles.iter().map(angle).collect()
        };
        let (bank_angles, pins) = (turned(&self.bank_angles, banks), turned(&self.pins, pins));
        Self { bank_angles, pins, ..self.clone() }
    }

    /// The angle of each bank after the first.
    pub fn bank_angles(&self) -> &[CrankAngle] {
        &self.bank_angles
    }

    /// The angle of each pin.
    pub fn pins(&self) -> &[CrankAngle] {
        &self.pins
    }

    /// The top dead centre of each cylinder, bank by bank.
    pub fn tops(&self) -> Vec<Top> {
        let zero = CrankAngle::default();
        let is_shared = self.rows.first().is_some_and(|row| row.len() == self.pins.len());
        let mut tops = Vec::new();
        for (bank, row) in self.rows.iter().enumerate() {
            let angle = bank.checked_sub(1).and_then(|it| self.bank_angles.get(it));
            for (place, &cylinder) in row.iter().enumerate() {
                let by_number = usize::try_from(cylinder).unwrap_or_default().wrapping_sub(1);
                let pin = self.pins.get(if is_shared { place } else { by_number });
                tops.push(Top {
                    cylinder,
                    bank: angle.copied().unwrap_or(zero),
                    pin: pin.copied().unwrap_or(zero),
                    split: if bank == 1 { self.split } else { zero },
                });
            }
        }
        tops
    }
}

/// The firing angles of cylinders with these tops that fire in this order.
///
/// Each cylinder of a four-stroke engine fires at its top in the first turn or in the second; the order decides,
/// since the angles rise from the first to fire. Where more than one way agrees with it, the one whose longest
/// interval is the shortest comes first. With a cycle of one turn there is nothing to decide.
///
/// # Errors
/// The cylinder that would need a third turn.
pub fn turns(kind: EngineKind, order: &[u32], tops: &[Top]) -> Result<Turns, OutOfTurn> {
    let top = |cylinder| tops.iter().find(|top| top.cylinder == cylinder).map(Top::angle);
    let first = order.first().and_then(|&it| top(it)).unwrap_or_default();
    let angles: Vec<_> =
        order.iter().map(|&it| in_turn(top(it).unwrap_or_default() - first)).collect();
    let is_four_stroke = kind == EngineKind::FourStroke;
    // two that fire together are usual only where the cycle is one turn
    let rises = |one: CrankAngle, next: CrankAngle| {
        if next.is_near(one) { !is_four_stroke } else { next > one }
    };
    let neighbours = angles.iter().zip(angles.iter().skip(1));
    let mut falls = (1..).zip(neighbours).filter(|(_, (one, next))| !rises(**one, **next));
    let (fall, second) = (falls.next(), falls.next());
    if let Some((place, (&before_angle, &angle))) = if is_four_stroke { second } else { fall } {
        let at = |place: usize| order.get(place).copied().unwrap_or_default();
        return Err(OutOfTurn { cylinder: at(place), angle, before: at(place - 1), before_angle });
    }
    let from = |second_turn: usize| {
        let turned = |(place, &angle)| if place < second_turn { angle } else { angle + TURN };
        angles.iter().enumerate().map(turned).collect::<Vec<_>>()
    };
    let ways = match fall {
        Some((place, _)) => vec![from(place)],
        None if is_four_stroke => (1..=angles.len().max(1)).rev().map(from).collect(),
        None => vec![angles.clone()],
    };
    Ok(most_even(ways, kind.cycle()))
}

fn most_even(mut ways: Vec<Vec<CrankAngle>>, cycle: CrankAngle) -> Turns {
    ways.sort_by(|one, other| longest(one, cycle).total_cmp(&longest(other, cycle)));
    let mut ways = ways.into_iter();
    let angles = ways.next().unwrap_or_default();
    let others: Vec<_> = ways.collect();
    let is_as_even =
        |other: &Vec<_>| (longest(other, cycle) - longest(&angles, cycle)).abs() < 0.01;
    Turns { is_tie: others.iter().any(is_as_even), angles, others }
}

/// The longest interval between firings, in degrees.
fn longest(angles: &[CrankAngle], cycle: CrankAngle) -> f64 {
    let next = angles.iter().copied().skip(1).chain([cycle]);
    angles.iter().zip(next).map(|(one, next)| (next - *one).degrees()).fold(0.0, f64::max)
}

/// The place in a turn; what misses a full turn by a rounding is 0.
fn in_turn(angle: CrankAngle) -> CrankAngle {
    let angle = angle.within(TURN);
    if angle.is_near(TURN) { CrankAngle::default() } else { angle }
}

#[cfg(test)]
mod tests;
