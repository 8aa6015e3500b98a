//! What a controller has to survive of the supply: a jump start, a load dump, a reversed battery.
//!
//! Source: ISO 16750-2, from memory, of a car of 12 V: 24 V for 60 s, a load dump of 79 to 101 V, held to 35 V by an alternator that
//! suppresses it, and 14 V the wrong way round for 60 s.

use crate::quantity::{Measure, Voltage};

const JUMP_V: f64 = 24.0;
const DUMP_V: f64 = 35.0;

/// A battery above this is none of 12 V: common practice, no source.
const TWELVE_V: f64 = 16.0;

/// What the supply of a car of 12 V may come to by one mistake.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Overvoltage {
    /// A jump start from 24 V.
    Jump,
    /// The battery comes off while the alternator charges.
    Dump,
}

/// What a controller that survives so much does not survive; of a battery at rest of so much.
pub fn exceeded(survives: Voltage, resting: Voltage) -> Vec<Overvoltage> {
    if resting.base() > TWELVE_V {
        return Vec::new();
    }
    let all = [(Overvoltage::Jump, JUMP_V), (Overvoltage::Dump, DUMP_V)];
    let over = all.into_iter().filter(|(_, reaches)| survives.base() < *reaches);
    over.map(|(what, _)| what).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::volts;

    /// Source: ISO 16750-2, from memory.
    #[test]
    fn what_survives_more_than_the_standard_asks_survives() {
        let of = |survives| exceeded(volts(survives), volts(12.6));
        assert_eq!(of(18.0), [Overvoltage::Jump, Overvoltage::Dump]);
        assert_eq!(of(24.0), [Overvoltage::Dump]);
        assert_eq!(of(35.0), []);
        assert_eq!(exceeded(volts(32.0), volts(25.2)), [], "a car of 24 V is none of 12 V");
    }
}
