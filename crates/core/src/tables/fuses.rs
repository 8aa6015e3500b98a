//! Ratings of blade fuses, and what a fuse may carry for long.
//!
//! Source: ISO 8820-3, blade fuses of types C, F and E; the ratings from memory. A fuse carries 70 to 80 percent of its
//! rating for long at room temperature, less in an engine bay: common practice, no source.

use super::wires;
use crate::{
    math,
    quantity::{Area, Current, Measure, Time, amperes, seconds},
};

/// The ratings, in amperes: 1 to 40 A of the regular blade, above it of the large one.
pub const RATINGS_A: [f64; 17] = [
    1.0, 2.0, 3.0, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 50.0, 60.0, 70.0, 80.0,
];

/// Where a rating that is worked out with [`LASTING`] comes from.
pub const SOURCE: &str =
    "ISO 8820-3 ratings, from memory; loaded to 75%: common practice, no source";

/// The share of its rating that a fuse carries for long: common practice, no source.
pub const LASTING: f64 = 0.75;

/// The smallest fuse that carries a current for long; none where 80 A would not.
///
/// ```
/// use quietpin_core::{quantity::amperes, tables::fuses};
/// assert_eq!(fuses::for_long(amperes(7.5)), Some(amperes(10.0)));
/// assert_eq!(fuses::for_long(amperes(7.6)), Some(amperes(15.0)));
/// assert_eq!(fuses::for_long(amperes(61.0)), None);
/// ```
pub fn for_long(current: Current) -> Option<Current> {
    let carries = |rating: &f64| current.base() <= rating * LASTING * (1.0 + 1e-9);
    RATINGS_A.into_iter().find(carries).map(amperes)
}

/// A fuse bears so much of its rating for a hundred hours: ISO 8820-3, from memory.
pub const HOLDS: f64 = 1.1;

/// Where [`holds_for`] comes from.
pub const GATES: &str = "ISO 8820-3: a fuse may hold 110% for a hundred hours, 135% for 600 s (1800 s above 40 A), 200% for 5 s (60 s), 350% for 0.5 s (7 s) at most, from memory; between, along a straight line of the logarithms";

/// Up to 40 A, type C: times its rating, and for how long it may bear it at most, in seconds. From memory.
pub(crate) const GATES_C: [(f64, f64); 5] =
    [(1.35, 600.0), (1.6, 50.0), (2.0, 5.0), (3.5, 0.5), (6.0, 0.1)];
/// Above, type E. From memory.
pub(crate) const GATES_E: [(f64, f64); 4] = [(1.35, 1800.0), (2.0, 60.0), (3.5, 7.0), (6.0, 1.0)];
const LARGEST_C_A: f64 = 40.0;

/// For how long a fuse of this rating may bear a current before it blows, at most; nothing where that may be for ever, below
/// 135 % of its rating.
pub fn holds_for(rating: Current, current: Current) -> Option<Time> {
    let gates: &[(f64, f64)] = if rating.base() > LARGEST_C_A { &GATES_E } else { &GATES_C };
    let times = current.base() / rating.base();
    let before = gates.iter().rev().find(|gate| gate.0 <= times)?;
    let Some(after) = gates.iter().find(|gate| gate.0 > times) else {
        return Some(seconds(before.1));
    };
    let share = math::ln(times / before.0) / math::ln(after.0 / before.0);
    Some(seconds(before.1 * math::exp(share * math::ln(after.1 / before.1))))
}

/// Up to so many times what it bears a wire runs hot, and its insulation ages, but it does not burn in free air: the heat goes
/// with the square of the current, a third more. Common practice, no source.
const HAIR: f64 = 1.15;

/// What overheats before a fuse blows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unprotected {
    /// The wire behind it, which bears so much.
    Wire(Current),
    /// The same, where what the fuse lets pass is hardly more.
    WireBarely(Current),
    /// The contact behind it, which is rated for so much.
    Contact(Current),
}

/// What a fuse of this rating leaves unprotected, the graver first; nothing where both bear what it lets pass, or nothing
/// is known of them. A contact may have the rating of its fuse.
pub fn unprotected(
    fuse: Current,
    contact: Option<Current>,
    wire: Option<Area>,
) -> Option<Unprotected> {
    let passes = HOLDS * fuse.base();
    let wire = wire.map(wires::bears).filter(|bears| passes > bears.base() * (1.0 + 1e-9));
    let contact = contact.filter(|rating| fuse.base() > rating.base() * (1.0 + 1e-9));
    let is_hair = |bears: &Current| passes <= bears.base() * HAIR;
    let barely = wire.filter(is_hair).map(Unprotected::WireBarely);
    let burns = wire.filter(|bears| !is_hair(bears)).map(Unprotected::Wire);
    burns.or(contact.map(Unprotected::Contact)).or(barely)
}

/// The largest fuse that protects both; none where no blade fuse is so small.
pub fn largest(contact: Option<Current>, wire: Option<Area>) -> Option<Current> {
    let all = RATINGS_A.into_iter().rev().map(amperes);
    all.into_iter().find(|rating| unprotected(*rating, contact, wire).is_none())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm2(size: f64) -> Area {
        Measure::from_base(size * 1e-6)
    }
    /// By hand: 1.1 × 25 A = 27.5 A, and 2.5 mm² bears 29 A; 1.1 × 30 A = 33 A; 1.1 × 40 A = 44 A.
    #[test]
    fn a_wire_is_protected_by_a_fuse_that_lets_pass_no_more_than_it_bears() {
        let wire = Some(mm2(2.5));
        assert_eq!(unprotected(amperes(25.0), None, wire), None);
        let barely = unprotected(amperes(30.0), None, wire);
        assert!(
            matches!(barely, Some(Unprotected::WireBarely(_))),
            "33 A are 14 % more: {barely:?}"
        );
        let Some(Unprotected::Wire(bears)) = unprotected(amperes(40.0), None, wire) else {
            panic!("44 A burn it");
        };
        assert!((bears.base() - 29.0).abs() < 1e-9, "{bears:?}");
        // 1.1 × 32 A = 35.2 A are 21 % more
        let over = unprotected(amperes(32.0), None, wire);
        assert!(matches!(over, Some(Unprotected::Wire(_))), "{over:?}");
        assert_eq!(largest(None, wire), Some(amperes(25.0)));
        assert_eq!(largest(Some(amperes(20.0)), wire), Some(amperes(20.0)));
        assert_eq!(largest(None, Some(mm2(0.01))), None);
    }

    #[test]
    fn a_contact_may_have_the_rating_of_its_fuse() {
        let contact = Some(amperes(30.0));
        assert_eq!(unprotected(amperes(30.0), contact, None), None);
        let over = unprotected(amperes(40.0), contact, None);
        assert_eq!(over, Some(Unprotected::Contact(amperes(30.0))));
    }
}
