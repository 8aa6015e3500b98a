//! What a spark does in the wrong place.

use super::PlugPosition;
use crate::{engine::EngineKind, finding::Severity, quantity::CrankAngle};

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
    /// Half a turn out, where a rotor's trailing plug looks into the next chamber, half a turn before its top.
    NextChamber,
    /// Less than 60 degrees before, beyond the advance that is wanted: detonation, kick-back.
    Early,
    /// Up to 180 degrees after: burns late, heats the exhaust valve, gives no power.
    LateBurn,
    /// From 180 to 360 degrees after: pops in the exhaust.
    ExhaustPop,
    /// Near the bottom of a two-stroke, its ports open: nothing to burn, and fresh charge coming in.
    OpenPorts,
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
    /// About the bottom of a two-stroke, its ports open.
    Ports,
    /// The compression of the chamber that follows, which a rotor's trailing plug sees half a turn out.
    Next,
}

const HALF_TURN: f64 = 180.0;
/// From here on an early spark is beyond any advance: common practice, no source.
const FAR_EARLY: f64 = -60.0;
/// From here to the bottom a two-stroke's exhaust port is open; common practice, no source (85 to 110 degrees).
const PORTS_OPEN: f64 = 110.0;
/// Half a turn after the top, 60 degrees of the rotor, its apex stands on the short axis: it has passed the trailing plug, which
/// sits before that axis, and not yet the leading one behind it. Geometry of the rotor; how much earlier it passes: common
/// practice, no source.
const PASSED_TRAILING: f64 = 150.0;

impl Stroke {
    /// The stroke at an error: degrees after the cylinder's own firing top dead centre, within half a cycle either way.
    pub fn at(kind: EngineKind, position: PlugPosition, error: CrankAngle) -> Self {
        let e = error.degrees();
        if error.is_near(CrankAngle::default()) {
            return Self::Firing;
        }
        match kind {
            EngineKind::TwoStroke if e.abs() > PORTS_OPEN => Self::Ports,
            EngineKind::Rotary if position == PlugPosition::Trailing && e > PASSED_TRAILING => {
                Self::Next
            }
            EngineKind::TwoStroke | EngineKind::Rotary if e < 0.0 => Self::Compression,
            EngineKind::TwoStroke | EngineKind::Rotary => Self::Power,
            EngineKind::FourStroke if e.abs() > 2.0 * HALF_TURN - 0.01 => Self::Overlap,
            // the inlet valve closes well after bottom dead centre
            EngineKind::FourStroke if e <= -HALF_TURN => Self::Intake,
            EngineKind::FourStroke if e < 0.0 => Self::Compression,
            EngineKind::FourStroke if e <= HALF_TURN => Self::Power,
            EngineKind::FourStroke => Self::Exhaust,
        }
    }
}

impl Effect {
    /// What a spark does at an error: degrees after the cylinder's own firing top dead centre.
    pub fn of_spark(kind: EngineKind, position: PlugPosition, error: CrankAngle) -> Self {
        match Stroke::at(kind, position, error) {
            Stroke::Firing => Self::Right,
            Stroke::Overlap => Self::Overlap,
            Stroke::Intake => Self::InletBackfire,
            Stroke::Compression if error.degrees() <= FAR_EARLY => Self::KickBack,
            Stroke::Compression => Self::Early,
            Stroke::Power => Self::LateBurn,
            Stroke::Exhaust => Self::ExhaustPop,
            Stroke::Ports => Self::OpenPorts,
            Stroke::Next => Self::NextChamber,
        }
    }

    /// How much it matters; nothing where all is well.
    pub fn severity(self) -> Option<Severity> {
        match self {
            Self::InletBackfire
            | Self::KickBack
            | Self::NextChamber
            | Self::Early
            | Self::OtherPosition => Some(Severity::Danger),
            Self::LateBurn | Self::ExhaustPop | Self::OpenPorts | Self::Overlap | Self::Never => {
                Some(Severity::Fault)
            }
            Self::OtherGroup | Self::FuelElsewhere => Some(Severity::Doubt),
            Self::Right => None,
        }
    }
}
