//! The wires of a harness, one by one: what is kept of each, what is cut off, what is bought.

pub mod bought;
pub mod colour;
pub mod few;
#[cfg(test)]
mod laws;

use crate::{
    quantity::{Area, Current, Length, Measure, Value, metres},
    working::{Formula, Step, step},
};

/// What is cut off.
pub const CUT: Formula = Formula {
    symbols: "l_off = l_bought - l - l_spare",
    source: "what is kept and what is cut off are the wire as it was bought",
};

/// What is kept.
pub const KEPT: Formula = Formula {
    symbols: "l_piece = l + l_spare",
    source: "the way that it takes, and what is to spare at its end",
};

/// What a wire is for: wires of one duty have one colour, so that they are told apart at the car.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Duty {
    /// A feed that is live with the key off: 30.
    Permanent,
    /// A feed that is switched: 15, or behind a contact (87).
    Switched,
    /// Ground: 31.
    Ground,
    /// From an ignition channel to its coil.
    Ignition,
    /// From an injection channel to its injector.
    Injection,
    /// From an output to a load, or to a relay's coil.
    Output,
    /// Of a sensor.
    Sensor,
}

impl Duty {
    /// All of them, in the order in which wires are listed.
    pub const ALL: [Self; 7] = [
        Self::Ignition,
        Self::Injection,
        Self::Output,
        Self::Sensor,
        Self::Permanent,
        Self::Switched,
        Self::Ground,
    ];
}

/// Where a wire comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stock {
    /// It is in the harness already, from the controller's connector, as long as the others.
    Harness,
    /// It is cut from a reel.
    Reel,
    /// It is bought as long as it is, with its terminals on: a battery cable, a strap.
    Piece,
}

/// A length as it is read from a tape: metres, to the centimetre.
pub fn on_tape(length: Length) -> Value {
    length.show().said([crate::math::fixed(length.base(), 2).as_str(), " m"].concat())
}

/// What is done with a wire beside cutting it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Work {
    /// It is twisted with the others of its sensor.
    Twist,
    /// It is in a shield, grounded at one end.
    Shield,
    /// It branches to so many.
    Splice(u32),
    /// It was found on another pin than it belongs on.
    Move,
    /// Its connector is the wrong one.
    Change,
    /// It ends bare.
    Fit,
}

/// A wire.
#[derive(Clone, Debug, PartialEq)]
pub struct LoomWire {
    /// What it is ticked off by: a word.
    pub id: String,
    /// What is printed on both of its labels.
    pub label: String,
    /// Where it begins.
    pub from: String,
    /// Where it ends.
    pub to: String,
    /// What it is for.
    pub duty: Duty,
    /// Where it comes from.
    pub stock: Stock,
    /// Its conductor, where that is known.
    pub size: Option<Area>,
    /// Its way through the car, where that was measured.
    pub length: Option<Length>,
    /// Its way and that of the piece before it, where only both together are known.
    pub together: Option<Length>,
    /// The fuse before it, where it has one.
    pub fuse: Option<Current>,
    /// What else is done with it.
    pub works: Vec<Work>,
}

/// What becomes of a wire of the harness.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WireCut {
    /// So much is cut off.
    Off(Length),
    /// It reaches, but without all that was to be left at its end: so much is left.
    Tight(Length),
    /// It is too short by so much.
    Short(Length),
}

/// Below this nobody takes the cutters: a centimetre.
pub const LEAST_CUT_M: f64 = 0.01;

/// How the wires are cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lengths {
    /// The harness's wires as they were bought, where that is known.
    pub bought: Option<Length>,
    /// What is left at each wire's end for another crimp.
    pub spare: Length,
}

impl Lengths {
    /// What becomes of a wire whose way through the car is so long; nothing where the harness isn't measured.
    pub fn cut(&self, length: Length) -> Option<WireCut> {
        let left = self.bought?.base() - length.base();
        let off = left - self.spare.base();
        // typed in centimetres, subtracted in binary
        let hair = 1e-9;
        Some(if left < -hair {
            WireCut::Short(metres(-left))
        } else if off < -hair {
            WireCut::Tight(metres(left.max(0.0)))
        } else {
            WireCut::Off(metres(off.max(0.0)))
        })
    }

    /// As it is worked out.
    pub fn step(&self, length: Length) -> Option<Step> {
        let bought = self.bought?;
        let values =
            [("l_bought", bought.show()), ("l", length.show()), ("l_spare", self.spare.show())];
        let off = metres(bought.base() - length.base() - self.spare.base());
        Some(step(&CUT, &values, off))
    }

    /// How what is kept of a wire, or cut from a reel, is worked out.
    pub fn kept_step(&self, length: Length) -> Step {
        let values = [("l", length.show()), ("l_spare", self.spare.show())];
        step(&KEPT, &values, self.kept(length))
    }

    /// What of a wire is kept, or cut from a reel.
    pub fn kept(&self, length: Length) -> Length {
        metres(length.base() + self.spare.base())
    }
}

impl LoomWire {
    /// What becomes of it, where that is known and it is one of the harness.
    pub fn cut(&self, lengths: &Lengths) -> Option<WireCut> {
        if self.stock != Stock::Harness {
            return None;
        }
        lengths.cut(self.length?)
    }
}

/// The wires in the order in which they are cut: of one stock and size, those of which as much comes off one after the
/// other, so that they go through the cutters together; what isn't known yet last.
pub fn in_cutting_order(wires: &[LoomWire], lengths: &Lengths) -> Vec<usize> {
    let key = |wire: &LoomWire| {
        let off = match wire.cut(lengths) {
            Some(WireCut::Off(off)) => off.base(),
            Some(WireCut::Tight(_) | WireCut::Short(_)) => 0.0,
            None => wire.length.map_or(0.0, |it| lengths.kept(it).base()),
        };
        // to a centimetre, as it is cut
        let off = (off / LEAST_CUT_M).round();
        (wire.length.is_none(), wire.stock, off, wire.duty)
    };
    let mut order: Vec<usize> = (0..wires.len()).collect();
    crate::sorted::by(&mut order, |one, other| {
        let of = |at: &usize| wires.get(*at).map(key);
        let (Some(one), Some(other)) = (of(one), of(other)) else {
            return std::cmp::Ordering::Equal;
        };
        let by_length = other.2.total_cmp(&one.2);
        (one.0, one.1).cmp(&(other.0, other.1)).then(by_length).then(one.3.cmp(&other.3))
    });
    order
}

#[cfg(test)]
mod tests {
    use super::*;

    const LENGTHS: fn(f64) -> Lengths =
        |bought| Lengths { bought: Some(metres(bought)), spare: metres(0.1) };

    #[test]
    fn what_is_kept_and_what_comes_off_are_what_was_bought() {
        // Source: subtraction, by hand
        assert_eq!(LENGTHS(2.5).cut(metres(1.4)), Some(WireCut::Off(metres(1.0))));
        assert_eq!(LENGTHS(2.5).kept(metres(1.4)), metres(1.5));
    }

    #[test]
    fn a_wire_that_just_reaches_is_tight_and_one_that_does_not_is_short() {
        let left = |cut| match cut {
            Some(WireCut::Tight(left)) => left.base(),
            _ => f64::NAN,
        };
        assert!((left(LENGTHS(2.5).cut(metres(2.45))) - 0.05).abs() < 1e-9);
        assert_eq!(LENGTHS(2.5).cut(metres(2.75)), Some(WireCut::Short(metres(0.25))));
        let off = LENGTHS(1.3).cut(metres(1.2));
        assert!(matches!(off, Some(WireCut::Off(off)) if off.base() < 1e-9), "to a hair: {off:?}");
    }

    #[test]
    fn a_harness_that_was_not_measured_is_not_cut() {
        let lengths = Lengths { bought: None, spare: metres(0.1) };
        assert_eq!(lengths.cut(metres(1.0)), None);
    }
}
