//! How the coils of an engine are charged: when each charge ends, and how often a coil is charged.

use crate::{
    channels::Ignition,
    engine::{Engine, TURN},
    quantity::CrankAngle,
};

/// The charges of all coils over the angle after which they come again.
#[derive(Clone, Debug, PartialEq)]
pub struct Pattern {
    /// That angle in degrees.
    period: f64,
    /// Where charges end, in degrees from 0 up to but without the period, rising; an angle stands once for each coil.
    ends: Vec<f64>,
    /// How many coils there are.
    coils: u32,
    /// The least angle from one charge of a coil to its next, in degrees.
    least: f64,
}

/// Two firings closer than this are one: rounding.
const SAME_DEG: f64 = 1e-6;

impl Pattern {
    /// The pattern of an engine fired in a way. A rotary's leading and trailing coils of a rotor are charged together.
    ///
    /// Double-ended coils are one for each pair; where an engine has no pairs they are taken as one for each cylinder.
    pub fn new(engine: &Engine, mode: Ignition) -> Self {
        let angles = engine.firings().iter().map(|it| it.angle.degrees()).collect();
        Self::of(engine, mode, angles)
    }

    /// That of each bank's own coils, where the banks are known and no coil serves two of them.
    pub fn by_bank(engine: &Engine, mode: Ignition) -> Vec<(Vec<u32>, Self)> {
        if matches!(mode, Ignition::Distributor | Ignition::PairedDouble) {
            return Vec::new();
        }
        let of = |bank: &Vec<u32>| {
            let own = engine.firings().iter().filter(|it| bank.contains(&it.cylinder));
            let angles = own.map(|it| it.angle.degrees()).collect();
            (bank.clone(), Self::of(engine, mode, angles))
        };
        engine.banks().iter().map(of).collect()
    }

    fn of(engine: &Engine, mode: Ignition, angles: Vec<f64>) -> Self {
        let cycle = engine.cycle().degrees();
        let plugs = if engine.kind() == crate::engine::EngineKind::Rotary { 2 } else { 1 };
        if mode == Ignition::Distributor {
            let next = angles.iter().skip(1).chain([&cycle]);
            let intervals = next.zip(&angles).map(|(next, angle)| next - angle);
            let least = intervals.filter(|it| *it > SAME_DEG).fold(cycle, f64::min);
            return Self { period: cycle, ends: angles, coils: 1, least };
        }
        let every_turn = mode.is_paired() || mode == Ignition::EveryTurn;
        let period = if every_turn { TURN.degrees().min(cycle) } else { cycle };
        let mut ends: Vec<f64> = angles
            .iter()
            .map(|it| CrankAngle::new(*it).within(CrankAngle::new(period)).degrees())
            .collect();
        crate::sorted::by(&mut ends, f64::total_cmp);
        if mode == Ignition::PairedDouble {
            ends.dedup_by(|one, other| (*one - *other).abs() < SAME_DEG);
        }
        let ends: Vec<f64> =
            ends.into_iter().flat_map(|end| std::iter::repeat_n(end, plugs)).collect();
        let coils = u32::try_from(ends.len()).unwrap_or(u32::MAX);
        Self { period, ends, coils, least: period }
    }

    /// How many coils there are.
    pub fn coils(&self) -> u32 {
        self.coils
    }

    /// The least angle from one charge of a coil to its next.
    pub fn least(&self) -> CrankAngle {
        CrankAngle::new(self.least)
    }

    /// The same in degrees.
    pub(super) fn least_degrees(&self) -> f64 {
        self.least
    }

    /// The mean angle from one charge of a coil to its next, in degrees.
    pub fn mean_degrees(&self) -> f64 {
        self.period * f64::from(self.coils) / f64::from(self.charges())
    }

    /// The angle after which the charges come again, in degrees.
    pub(super) fn period_degrees(&self) -> f64 {
        self.period
    }

    /// Where the charges of so many coils end that follow one another.
    pub(super) fn ends_of(&self, coils: u32) -> &[f64] {
        let count = if self.coils == 1 {
            self.ends.len()
        } else {
            usize::try_from(coils).unwrap_or(usize::MAX)
        };
        self.ends.get(..count).unwrap_or(&self.ends)
    }

    /// Charges in a period, all coils together; at least one.
    fn charges(&self) -> u32 {
        u32::try_from(self.ends.len()).unwrap_or(u32::MAX).max(1)
    }

    /// How long before its end each coil that is being charged has still to go, in degrees, at the end of each charge:
    /// `dwell` is the angle of a charge, no longer than the least angle between two charges.
    pub(super) fn charging_at_ends(&self, dwell: f64) -> impl Iterator<Item = Vec<f64>> {
        let ahead = move |from: f64| {
            let left = |end: f64| (end - from).rem_euclid(self.period);
            self.ends.iter().map(|end| left(*end)).filter(|left| *left < dwell).collect()
        };
        self.ends.iter().map(move |end| ahead(*end))
    }

    /// The most coils that are charged at once, where a charge takes this angle.
    pub fn most_at_once(&self, dwell: CrankAngle) -> u32 {
        let counts = self.charging_at_ends(dwell.degrees()).map(|left| left.len());
        counts.max().and_then(|most| u32::try_from(most).ok()).unwrap_or(0)
    }
}
