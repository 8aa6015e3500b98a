//! Engines: when each cylinder fires, and which two share a top dead centre.

pub mod geometry;
pub mod numbering;

use crate::quantity::CrankAngle;
use geometry::Top;
use numbering::Renumbered;

/// The most cylinders that an engine may have here.
pub const MOST_CYLINDERS: u32 = 16;

/// One turn of the crankshaft.
pub const TURN: CrankAngle = CrankAngle::new(360.0);

/// What kind of engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EngineKind {
    /// Each cylinder fires once in two turns.
    FourStroke,
    /// Each cylinder fires once a turn.
    TwoStroke,
    /// Each rotor fires once a turn of the eccentric shaft.
    Rotary,
}

impl EngineKind {
    /// The angle after which everything comes again: 720 degrees, or 360.
    pub const fn cycle(self) -> CrankAngle {
        match self {
            Self::FourStroke => CrankAngle::new(720.0),
            Self::TwoStroke | Self::Rotary => TURN,
        }
    }
}

/// How the firings are spread over the cycle.
#[derive(Clone, Debug, PartialEq)]
pub enum Spacing {
    /// One every `cycle / n`.
    Even,
    /// At these angles, in the order of firing: the first is 0, none is below the one before, all lie within
    /// the cycle. Two may be equal: cylinders that fire together are rare, but built.
    Angles(Vec<CrankAngle>),
}

/// How sure it is that the firings are spaced so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SpacingBasis {
    /// The fitter has said it, or an engine like this can't be otherwise.
    Told,
    /// It was taken, and engines like this are built otherwise too.
    Doubted,
    /// Something else that is known of the crank says otherwise.
    Contradicted,
}

/// The firing of one cylinder.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Firing {
    /// The cylinder, from 1.
    pub cylinder: u32,
    /// Its firing top dead centre, from that of the first to fire: from 0 up to but without the cycle.
    pub angle: CrankAngle,
}

/// Why there can be no such engine.
#[derive(Clone, Debug, PartialEq)]
pub enum Misfit {
    /// Not 1 to [`MOST_CYLINDERS`] cylinders.
    Cylinders(u32),
    /// The firing order has another number of entries than the engine has cylinders.
    OrderLength {
        /// Entries in the order.
        entries: usize,
        /// Cylinders of the engine.
        cylinders: u32,
    },
    /// The firing order names a cylinder that there isn't.
    NoSuchCylinder(u32),
    /// The firing order has a cylinder twice, and so misses another.
    Twice {
        /// The one that stands twice.
        cylinder: u32,
        /// The lowest that is missing.
        missing: u32,
    },
    /// Another number of angles than of cylinders.
    AngleCount {
        /// Angles given.
        angles: usize,
        /// Cylinders of the engine.
        cylinders: u32,
    },
    /// The first angle is not 0.
    FirstAngle(CrankAngle),
    /// An angle is below the one before it.
    Falling {
        /// The angle.
        angle: CrankAngle,
        /// The one before.
        before: CrankAngle,
    },
    /// An angle is not within the cycle, so that the intervals add up to more than it.
    BeyondCycle(CrankAngle),
    /// The banks have a cylinder twice, or one that there isn't.
    BankStray(u32),
    /// No bank has this cylinder.
    BankMissing(u32),
}

/// An engine whose firings are known.
#[derive(Clone, Debug, PartialEq)]
pub struct Engine {
    kind: EngineKind,
    firings: Vec<Firing>,
    banks: Vec<Vec<u32>>,
    tops: Vec<Top>,
    renumbered: Vec<Renumbered>,
    spacing_basis: SpacingBasis,
}

impl Engine {
    /// An engine of 1 to 16 cylinders (or rotors) that fire in this order.
    ///
    /// Even spacing puts the k-th firing at `k * cycle / n`, k from 0.
    ///
    /// # Errors
    /// [`Misfit`] says what doesn't fit.
    ///
    /// ```
    /// use quietpin_core::engine::{Engine, EngineKind, Spacing};
    /// let six = Engine::new(EngineKind::FourStroke, 6, &[1, 5, 3, 6, 2, 4], &Spacing::Even).unwrap();
    /// assert_eq!(six.angle_of(3).unwrap().degrees(), 240.0);
    /// assert_eq!(six.companion(3), Some(4));
    /// ```
    pub fn new(
        kind: EngineKind,
        cylinders: u32,
        order: &[u32],
        spacing: &Spacing,
    ) -> Result<Self, Misfit> {
        if let Some(misfit) = Self::misfits(kind, cylinders, order, spacing).into_iter().next() {
            return Err(misfit);
        }
        let angles = match spacing {
            Spacing::Even => even(kind.cycle(), cylinders),
            Spacing::Angles(angles) => angles.clone(),
        };
        let firing = |(&cylinder, angle)| Firing { cylinder, angle };
        Ok(Self {
            kind,
            firings: order.iter().zip(angles).map(firing).collect(),
            banks: Vec::new(),
            tops: Vec::new(),
            renumbered: Vec::new(),
            spacing_basis: SpacingBasis::Told,
        })
    }

    /// All that would keep [`Engine::new`] from making this engine: of the order, and of the angles.
    pub fn misfits(
        kind: EngineKind,
        cylinders: u32,
        order: &[u32],
        spacing: &Spacing,
    ) -> Vec<Misfit> {
        let angles = match spacing {
            Spacing::Even => Ok(()),
            Spacing::Angles(angles) => check_angles(kind.cycle(), cylinders, angles),
        };
        [check_order(cylinders, order), angles].into_iter().filter_map(Result::err).collect()
    }

    /// The same engine with its cylinders by bank, each bank from front to rear.
    ///
    /// # Errors
    /// Where a cylinder is in no bank, or twice, or is none of this engine.
    pub fn with_banks(mut self, banks: Vec<Vec<u32>>) -> Result<Self, Misfit> {
        check_banks(self.cylinders(), &banks)?;
        self.banks = banks;
        Ok(self)
    }

    /// The same engine with the top dead centres of its crank, from which its angles were found.
    #[must_use]
    pub fn with_tops(self, tops: Vec<Top>) -> Self {
        Self { tops, ..self }
    }

    /// The same engine with the numbers that its cylinders have where its firing order was found.
    #[must_use]
    pub fn with_numbers(self, renumbered: Vec<Renumbered>) -> Self {
        Self { renumbered, ..self }
    }

    /// The same engine, with how sure its spacing is.
    #[must_use]
    pub fn with_spacing(self, spacing_basis: SpacingBasis) -> Self {
        Self { spacing_basis, ..self }
    }

    /// How sure it is that its firings are spaced so.
    pub fn spacing_basis(&self) -> SpacingBasis {
        self.spacing_basis
    }

    /// What kind of engine it is.
    pub fn kind(&self) -> EngineKind {
        self.kind
    }

    /// How many cylinders, or rotors: 1 to 16.
    pub fn cylinders(&self) -> u32 {
        // the constructor has counted them
        u32::try_from(self.firings.len()).unwrap_or(MOST_CYLINDERS)
    }

    /// The angle after which everything comes again: 720 degrees, or 360.
    pub fn cycle(&self) -> CrankAngle {
        self.kind.cycle()
    }

    /// The firings, in their order; the first at 0.
    pub fn firings(&self) -> &[Firing] {
        &self.firings
    }

    /// The cylinders in the order in which they fire.
    pub fn order(&self) -> Vec<u32> {
        self.firings.iter().map(|firing| firing.cylinder).collect()
    }

    /// The cylinders by bank, front to rear; none where that is not known.
    pub fn banks(&self) -> &[Vec<u32>] {
        &self.banks
    }

    /// The top dead centres from which its angles were found; none where they were not found from the crank.
    pub fn tops(&self) -> &[Top] {
        &self.tops
    }

    /// Its cylinders in two numberings; none where the firing order needed no translation.
    pub fn renumbered(&self) -> &[Renumbered] {
        &self.renumbered
    }

    /// The place of a cylinder in the firing order, from 0.
    pub fn place_of(&self, cylinder: u32) -> Option<usize> {
        self.firings.iter().position(|firing| firing.cylinder == cylinder)
    }

    /// The firing top dead centre of a cylinder, from that of the first to fire.
    pub fn angle_of(&self, cylinder: u32) -> Option<CrankAngle> {
        Some(self.firings.get(self.place_of(cylinder)?)?.angle)
    }

    /// From the firing of a cylinder to the next firing; the whole cycle where there is only one cylinder.
    pub fn interval_after(&self, cylinder: u32) -> Option<CrankAngle> {
        let place = self.place_of(cylinder)?;
        let this = self.firings.get(place)?.angle;
        Some(match self.firings.get(place + 1) {
            Some(next) => next.angle - this,
            None => self.cycle() - this,
        })
    }

    /// Whether all intervals are the same.
    pub fn is_even(&self) -> bool {
        let interval = CrankAngle::new(self.cycle().degrees() / f64::from(self.cylinders()));
        let near = |firing: &Firing| {
            self.interval_after(firing.cylinder).is_some_and(|it| it.is_near(interval))
        };
        self.firings.iter().all(near)
    }

    /// The companion of a cylinder: the one whose firing top dead centre is exactly 360 degrees away.
    ///
    /// An engine that has no cylinder there has none (3, 5, 7 cylinders; most V-twins; odd-fire engines on
    /// common pins). Where the cycle is one turn, only a cylinder that fires together with it is a companion.
    /// The companion's companion is the cylinder itself.
    pub fn companion(&self, cylinder: u32) -> Option<u32> {
        let own = self.angle_of(cylinder)?;
        // where several fire together, they pair up in their order
        let place = self.firing_at(own).position(|it| it == cylinder)?;
        let opposite = if self.kind == EngineKind::FourStroke { place } else { place ^ 1 };
        self.firing_at((own + TURN).within(self.cycle())).nth(opposite)
    }

    /// The other cylinder that comes nearest to being a companion, and by how much its firing top dead centre
    /// misses the place 360 degrees away: the error of a spark that the two would share.
    ///
    /// None in an engine of one cylinder.
    pub fn nearest_companion(&self, cylinder: u32) -> Option<(u32, CrankAngle)> {
        let opposite = self.angle_of(cylinder)? + TURN;
        let miss = |firing: &Firing| (firing.angle - opposite).as_error(self.cycle());
        self.firings
            .iter()
            .filter(|firing| firing.cylinder != cylinder)
            .map(|firing| (firing.cylinder, miss(firing)))
            .min_by(|(_, one), (_, other)| one.degrees().abs().total_cmp(&other.degrees().abs()))
    }

    /// Whether every cylinder has a companion.
    pub fn has_companions(&self) -> bool {
        self.firings.iter().all(|firing| self.companion(firing.cylinder).is_some())
    }

    /// The cylinders that fire at this angle of the cycle, in their order.
    fn firing_at(&self, angle: CrankAngle) -> impl Iterator<Item = u32> {
        let off = move |firing: &&Firing| (firing.angle - angle).as_error(self.cycle());
        self.firings
            .iter()
            .filter(move |firing| off(firing).is_near(CrankAngle::default()))
            .map(|firing| firing.cylinder)
    }
}

fn even(cycle: CrankAngle, cylinders: u32) -> Vec<CrankAngle> {
    let angle = |place| CrankAngle::new(cycle.degrees() * f64::from(place) / f64::from(cylinders));
    (0..cylinders).map(angle).collect()
}

fn check_order(cylinders: u32, order: &[u32]) -> Result<(), Misfit> {
    if !(1..=MOST_CYLINDERS).contains(&cylinders) {
        return Err(Misfit::Cylinders(cylinders));
    }
    if let Some(&stray) = order.iter().find(|&&it| it == 0 || it > cylinders) {
        return Err(Misfit::NoSuchCylinder(stray));
    }
    if order.len() != usize::try_from(cylinders).unwrap_or(usize::MAX) {
        return Err(Misfit::OrderLength { entries: order.len(), cylinders });
    }
    let twice =
        order.iter().enumerate().find(|(at, it)| order.iter().skip(at + 1).any(|o| o == *it));
    let missing = (1..=cylinders).find(|it| !order.contains(it));
    match (twice, missing) {
        (Some((_, &cylinder)), Some(missing)) => Err(Misfit::Twice { cylinder, missing }),
        _ => Ok(()),
    }
}

/// Whether each cylinder is in one bank.
///
/// # Errors
/// Where a cylinder is in no bank, or twice, or is none of this engine.
pub fn check_banks(cylinders: u32, banks: &[Vec<u32>]) -> Result<(), Misfit> {
    let mut left: Vec<u32> = (1..=cylinders).collect();
    for &cylinder in banks.iter().flatten() {
        let at = left.iter().position(|&it| it == cylinder);
        left.remove(at.ok_or(Misfit::BankStray(cylinder))?);
    }
    left.first().map_or(Ok(()), |&cylinder| Err(Misfit::BankMissing(cylinder)))
}

fn check_angles(cycle: CrankAngle, cylinders: u32, angles: &[CrankAngle]) -> Result<(), Misfit> {
    if angles.len() != usize::try_from(cylinders).unwrap_or(usize::MAX) {
        return Err(Misfit::AngleCount { angles: angles.len(), cylinders });
    }
    let mut before = CrankAngle::default();
    for (place, &angle) in angles.iter().enumerate() {
        if place == 0 && !angle.is_near(before) {
            return Err(Misfit::FirstAngle(angle));
        }
        // an angle that is no number fails too
        if angle < before || !angle.degrees().is_finite() {
            return Err(Misfit::Falling { angle, before });
        }
        if angle >= cycle {
            return Err(Misfit::BeyondCycle(angle));
        }
        before = angle;
    }
    Ok(())
}

#[cfg(test)]
mod tests;
