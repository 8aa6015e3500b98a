//! Engines: when each cylinder fires.

use crate::quantity::CrankAngle;

/// What kind of engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Each cylinder fires once in two turns.
    FourStroke,
    /// Each cylinder fires once a turn.
    TwoStroke,
    /// Each rotor fires once a turn of the eccentric shaft.
    Rotary,
}

/// The firing of one cylinder.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Firing {
    /// The cylinder, from 1.
    pub cylinder: u32,
    /// Its firing top dead centre, from that of the first to fire.
    pub angle: CrankAngle,
}

/// An engine whose firings are known.
#[derive(Clone, Debug, PartialEq)]
pub struct Engine {
    kind: Kind,
    firings: Vec<Firing>,
}

impl Engine {
    /// The angle after which everything comes again.
    pub fn cycle(&self) -> CrankAngle {
        match self.kind {
            Kind::FourStroke => CrankAngle::new(720.0),
            Kind::TwoStroke | Kind::Rotary => CrankAngle::new(360.0),
        }
    }

    /// The firings, in their order.
    pub fn firings(&self) -> &[Firing] {
        &self.firings
    }
}
