//! What a spark does in the wrong place.

use crate::{finding::Severity, quantity::CrankAngle};

/// What comes of a channel's action in the cylinder that it reaches; the worst first.
///
/// The classes by angle are common practice, no source: valves overlap the strokes, and a lean or rich
/// mixture burns when it pleases.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Effect {
    /// From 360 to 180 degrees before: the inlet valve is open, the mixture behind it catches fire.
    InletBackfire,
    /// From 180 to 60 degrees before: the piston is driven back down; a starter or a hand takes it.
    KickBack,
    /// Less than 60 degrees before, beyond the advance that is wanted: detonation, kick-back.
    Early,
    /// Up to 180 degrees after: burns late, heats the exhaust valve, gives no power.
    LateBurn,
    /// From 180 to 360 degrees after: pops in the exhaust.
    ExhaustPop,
    /// 360 degrees away: nothing to burn.
    Overlap,
    /// The channel has no part in the plan: never a spark, never fuel.
    Never,
    /// The trailing plug fires in the leading one's place or the other way round.
    OtherPosition,
    /// An injector on another channel of an injection that has no moment of its own (bank by bank).
    OtherGroup,
    /// Fuel at another moment: it waits at the valve.
    FuelElsewhere,
    /// As it should be.
    Right,
}

/// The stroke into which an angle falls.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stroke {
    /// At firing top dead centre.
    Firing,
    /// The way up to it.
    Compression,
    /// The way down from it.
    Power,
    /// The way up with the exhaust open.
    Exhaust,
    /// At top dead centre between exhaust and intake.
    Overlap,
    /// The way down with the inlet open.
    Intake,
}

const HALF_TURN: f64 = 180.0;
/// From here on an early spark is beyond any advance: common practice, no source.
const FAR_EARLY: f64 = -60.0;

impl Stroke {
    /// The stroke at an error: degrees after the cylinder's own firing top dead centre, in (-360, 360].
    ///
    /// With a cycle of one turn (errors in (-180, 180]) there are the way up and the way down.
    pub fn at(error: CrankAngle) -> Self {
        match error.degrees() {
            _ if error.is_near(CrankAngle::default()) => Self::Firing,
            e if e.abs() > 2.0 * HALF_TURN - 0.01 => Self::Overlap,
            // the inlet valve closes well after bottom dead centre
            e if e <= -HALF_TURN => Self::Intake,
            e if e < 0.0 => Self::Compression,
            e if e <= HALF_TURN => Self::Power,
            _ => Self::Exhaust,
        }
    }
}

impl Effect {
    /// What a spark does at an error: degrees after the cylinder's own firing top dead centre.
    pub fn of_spark(error: CrankAngle) -> Self {
        match Stroke::at(error) {
            Stroke::Firing => Self::Right,
            Stroke::Overlap => Self::Overlap,
            Stroke::Intake => Self::InletBackfire,
            Stroke::Compression if error.degrees() <= FAR_EARLY => Self::KickBack,
            Stroke::Compression => Self::Early,
            Stroke::Power => Self::LateBurn,
            Stroke::Exhaust => Self::ExhaustPop,
        }
    }

    /// How much it matters; nothing where all is well.
    pub fn severity(self) -> Option<Severity> {
        match self {
            Self::InletBackfire | Self::KickBack | Self::Early | Self::OtherPosition => {
                Some(Severity::Danger)
            }
            Self::LateBurn | Self::ExhaustPop | Self::Overlap | Self::Never => {
                Some(Severity::Fault)
            }
            Self::OtherGroup | Self::FuelElsewhere => Some(Severity::Doubt),
            Self::Right => None,
        }
    }
}
