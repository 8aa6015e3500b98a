//! How cylinders are numbered, and how one numbering is translated into another.
//!
//! DIN 73021 counts bank by bank from the end opposite the power output, the left bank first as seen from there; TGL
//! 6864 from the power output, left bank first; others run along the crank from bank to bank. ISO 1204 (from the driving
//! end; from memory) leaves road vehicles out. In use are also the same with the right bank first: common practice,
//! no source.

/// An end of the engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EngineEnd {
    /// The free end, opposite the power output.
    Front,
    /// The end of the power output.
    Flywheel,
}

/// A side of the engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Left.
    Left,
    /// Right.
    Right,
}

impl Side {
    fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

/// A way of numbering. Its side is the one seen by who stands at the end where the counting starts and faces the engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Numbering {
    /// One bank, from this end.
    InLine(EngineEnd),
    /// Two banks, one after the other, each from this end; this side first.
    BankByBank(EngineEnd, Side),
    /// Two banks in turn, from the front; odd numbers on this side.
    Alternating(Side),
}

/// Where a cylinder is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CylinderPlace {
    /// The side of its bank, seen from the front; none in an engine with one bank.
    pub side: Option<Side>,
    /// Its place in the bank, from the front, from 1.
    pub from_front: u32,
}

/// A cylinder in two numberings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Renumbered {
    /// Where it is.
    pub place: CylinderPlace,
    /// Its number in the one.
    pub there: u32,
    /// Its number in the other.
    pub here: u32,
}

/// Why a numbering doesn't suit an engine, or another numbering.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unsuited {
    /// Two equal banks can't have an odd number of cylinders.
    OddCount,
    /// One is of one bank, the other of two.
    OtherLayout,
}

impl Numbering {
    /// Whether it is of two banks.
    pub fn has_two_banks(self) -> bool {
        !matches!(self, Self::InLine(_))
    }

    /// The place of each cylinder, in the order of the numbers.
    ///
    /// # Errors
    /// Where two banks would have an odd number of cylinders.
    pub fn places(self, cylinders: u32) -> Result<Vec<CylinderPlace>, Unsuited> {
        if self.has_two_banks() && cylinders % 2 == 1 {
            return Err(Unsuited::OddCount);
        }
        Ok((1..=cylinders).map(|cylinder| self.place(cylinder, cylinders)).collect())
    }

    /// The cylinders by bank, front to rear; first the bank of cylinder 1.
    ///
    /// # Errors
    /// Where two banks would have an odd number of cylinders.
    pub fn banks(self, cylinders: u32) -> Result<Vec<Vec<u32>>, Unsuited> {
        let mut numbered: Vec<_> = self.places(cylinders)?.into_iter().zip(1_u32..).collect();
        let first = numbered.first().and_then(|(place, _)| place.side);
        numbered.sort_by_key(|(place, _)| place.from_front);
        let (one, other): (Vec<_>, Vec<_>) =
            numbered.into_iter().partition(|(place, _)| place.side == first);
        let numbers =
            |bank: Vec<(CylinderPlace, u32)>| bank.into_iter().map(|(_, number)| number).collect();
        Ok([one, other].into_iter().filter(|bank| !bank.is_empty()).map(numbers).collect())
    }

    /// Each cylinder in this numbering (there) and in another (here), in the order of the numbers there.
    ///
    /// # Errors
    /// Where the two are not of one engine.
    pub fn into_other(self, other: Self, cylinders: u32) -> Result<Vec<Renumbered>, Unsuited> {
        if self.has_two_banks() != other.has_two_banks() {
            return Err(Unsuited::OtherLayout);
        }
        let (there, here) = (self.places(cylinders)?, other.places(cylinders)?);
        let renumbered = |(place, there): (CylinderPlace, u32)| {
            let (_, here) = here.iter().zip(1..).find(|(it, _)| **it == place)?;
            Some(Renumbered { place, there, here })
        };
        Ok(there.into_iter().zip(1..).filter_map(renumbered).collect())
    }

    fn place(self, cylinder: u32, cylinders: u32) -> CylinderPlace {
        let each = cylinders / 2;
        let from = |end, place, length: u32| match end {
            EngineEnd::Front => place,
            EngineEnd::Flywheel => (length + 1).saturating_sub(place),
        };
        match self {
            Self::InLine(end) => {
                CylinderPlace { side: None, from_front: from(end, cylinder, cylinders) }
            }
            Self::BankByBank(end, first) => {
                let (seen, place) = if cylinder <= each {
                    (first, cylinder)
                } else {
                    (first.other(), cylinder - each)
                };
                let side = if end == EngineEnd::Front { seen } else { seen.other() };
                CylinderPlace { side: Some(side), from_front: from(end, place, each) }
            }
            Self::Alternating(odd) => {
                let side = if cylinder % 2 == 1 { odd } else { odd.other() };
                CylinderPlace { side: Some(side), from_front: cylinder.div_ceil(2) }
            }
        }
    }
}

#[cfg(test)]
mod tests;
