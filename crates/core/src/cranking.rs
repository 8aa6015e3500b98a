//! A relay that a controller pulls in at an engine speed, from the first turn of the starter.
//!
//! The engine is simulated in time, at every corner of what was typed and from starting positions all round the
//! cycle:
//!
//! - *Speed.* The starter brings the engine evenly to its mean cranking speed. About each compression the speed
//!   dips along a raised cosine in time, lowest at the firing top dead centre: common practice, no source. How far, and how
//!   much of it is won back before the next, follows from the work that all compressions hold there (the work-energy
//!   theorem); the mean over a cycle is the mean cranking speed ([`Wave`](crate::timeline::Wave)).
//! - *Reading.* The crank wheel's teeth pass. One reading is the angle over the time of `averaging` tooth
//!   intervals, each reading from fresh ones, or one at each tooth over the last so many. The gap counts as the positions it spans; what a controller would
//!   make of it that takes the gap for one slow tooth is worked out beside it.
//! - *Command.* On when `confirmation` readings in a row are at or above the threshold, off when as many are below
//!   the release, or when no tooth comes for the stall time-out.
//! - *Contact.* Closes a pull-in time after the command, opens a drop-out time after.
//! - *Spark.* The controller knows where the engine is at the first tooth after the gap, once it has seen two teeth
//!   before it; with a cam, at that tooth in the one turn of the cycle that the cam marks. The first spark is at
//!   the next firing top dead centre: an advance while cranking makes it come a few milliseconds sooner.

pub mod cost;
mod course;
mod dip;
mod events;
#[cfg(test)]
mod exhaustive;
mod figures;
mod follow;
mod noise;
mod pace;
mod readings;
mod relay;
mod run;
mod start;
mod stop;
mod survey;
mod trace;

pub use dip::{usual_dip, volume, work};
pub use events::{Event, Happening, events};
pub use figures::{Figured, Figures};
pub use follow::Starts;
pub use noise::{Noise, above_false_edges, noise};
pub use relay::{PullIn, Relay, RelayAnswer, lets_go, pull_in_at};
pub use stop::StopAnswer;
pub use survey::{Bounds, Openings, StartCorner, StartMoment};
pub use trace::Trace;

use crate::{
    budget::Budget,
    quantity::{
        Band, CrankAngle, Measure, Ratio, RotationalSpeed, Temperature, Time, Voltage, rpm,
    },
    timeline::{Interval, LetGo},
};

/// The threshold that people set without asking: common practice, no source.
pub const USUAL_THRESHOLD_RPM: f64 = 100.0;

/// The toothed wheel on the crank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wheel {
    /// Positions round the wheel, missing teeth counted; from 1.
    pub positions: u32,
    /// Teeth that are missing, in one gap; fewer than the positions.
    pub missing: u32,
    /// From the first tooth after the gap to the firing top dead centre of the first to fire.
    pub mark_to_first: CrankAngle,
}

impl Wheel {
    /// Teeth that are there.
    pub fn teeth(&self) -> u32 {
        self.positions.saturating_sub(self.missing).max(1)
    }

    /// From one position to the next, in degrees.
    fn pitch_deg(&self) -> f64 {
        360.0 / f64::from(self.positions.max(1))
    }

    /// Whether a turn of the wheel alone shows where it stands: by a gap, or because it has one tooth only.
    pub fn has_mark(&self) -> bool {
        self.missing > 0 || self.positions == 1
    }
}

/// How readings follow each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Average {
    /// Each from teeth that no other reading has.
    Blocks,
    /// One at each tooth, over the last so many.
    Sliding,
}

/// What the first spark waits for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sync {
    /// The gap of the crank wheel: up to one turn.
    Gap,
    /// The gap in the turn that the cam marks: up to two turns of a four-stroke.
    Cam,
}

/// Where the relay is switched off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Release {
    /// At this speed.
    At(RotationalSpeed),
    /// At this share of the threshold.
    Share(Ratio),
}

impl Release {
    /// The release of a threshold.
    pub fn of(self, threshold: RotationalSpeed) -> RotationalSpeed {
        rpm(self.let_go().reading(threshold.base()))
    }

    pub(crate) fn let_go(self) -> LetGo {
        match self {
            Self::At(speed) => LetGo::Below(speed.base()),
            Self::Share(share) => LetGo::Share(share.base()),
        }
    }
}

/// A mean cranking speed that was typed for a condition of its own.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slow {
    /// What makes it slow.
    pub name: &'static str,
    /// The mean cranking speed then; above 0.
    pub speed: RotationalSpeed,
}

/// What the answer is worked out from.
#[derive(Clone, Debug, PartialEq)]
pub struct CrankingInputs {
    /// Firing top dead centres in the order of firing, from the first, within the cycle; at least one.
    pub firings: Vec<CrankAngle>,
    /// Angle after which everything comes again: 720 or 360 degrees.
    pub cycle: CrankAngle,
    /// Mean cranking speed; above 0.
    pub speed: Band<RotationalSpeed>,
    /// The same in cold, thick oil or on a weak battery, where that was typed.
    pub slow: Vec<Slow>,
    /// The deepest dip, a share of the mean: at each compression of an even engine; from 0 up to but without 1.
    pub dip: Band<Ratio>,
    /// Time from rest to the mean cranking speed; from 0.
    pub run_up: Band<Time>,
    /// The crank wheel.
    pub wheel: Wheel,
    /// What the first spark waits for.
    pub sync: Sync,
    /// Tooth intervals in one reading; from 1.
    pub averaging: u32,
    /// How readings follow each other.
    pub average: Average,
    /// Readings in a row that must agree; from 1.
    pub confirmation: u32,
    /// Speed at which the relay is switched on, where it is known.
    pub threshold: Option<RotationalSpeed>,
    /// Where it is switched off.
    pub release: Release,
    /// Time without a tooth after which the engine counts as standing.
    pub stall_timeout: Band<Time>,
    /// The relay itself.
    pub relay: Relay,
    /// Time that the coils need power before a spark: warm-up and dwell.
    pub dwell: Time,
    /// Angle through which a compression throws the engine back.
    pub kick_back: CrankAngle,
    /// How long a starter that sticks stands.
    pub stick: Time,
    /// Speed read while the engine rocks to a standstill.
    pub rocking: Band<RotationalSpeed>,
    /// Speed from which the engine dies.
    pub idle: RotationalSpeed,
    /// Time it takes from there to a standstill.
    pub run_down: Band<Time>,
    /// Lowest supply while the starter turns a cold engine.
    pub supply: Voltage,
    /// The same of a hot one.
    pub hot_supply: Voltage,
    /// Coldest and hottest relay coil.
    pub temperature: Band<Temperature>,
}

impl CrankingInputs {
    fn relay_answer(&self) -> RelayAnswer {
        relay::answer(&self.relay, (self.supply, self.hot_supply), self.temperature)
    }
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct CrankingAnswer {
    /// What happens at each corner, the nominal one first.
    pub corners: Vec<StartCorner>,
    /// The thresholds that work at every corner from every start: above `low`, up to `high`. The one that holds
    /// the threshold asked about, or else the widest. None where no threshold works.
    pub works: Option<Interval>,
    /// Of those, the thresholds that lose no spark either.
    pub prompt: Option<Interval>,
    /// What bounds them.
    pub bounds: Bounds,
    /// How the relay fares at cranking voltage.
    pub relay: RelayAnswer,
    /// What happens when the engine dies; none without a threshold.
    pub stop: Option<StopAnswer>,
    /// The numbers with their working.
    pub figures: Figures,
}

impl Starts {
    /// The answer to inputs of which they are the starts; nothing where that takes more than the budget has.
    pub fn answer(&self, inputs: &CrankingInputs, budget: &Budget) -> Option<CrankingAnswer> {
        let surveyed = survey::survey(self, inputs, inputs.release, budget)?;
        let stop =
            inputs.threshold.map(|threshold| stop::stop(inputs, inputs.release.of(threshold)));
        let relay = inputs.relay_answer();
        let figures = figures::figures(inputs, &surveyed, stop.as_ref());
        Some(CrankingAnswer {
            works: surveyed.works,
            prompt: surveyed.prompt,
            bounds: surveyed.bounds,
            corners: surveyed.corners,
            relay,
            stop,
            figures,
        })
    }

    /// What can be told without looking at the relay in each of them, where that is too much ([`cost`]): the speeds at the
    /// corners, and whether any reading there meets the threshold at all. No threshold is known to work, and the stop is left out.
    pub fn outline(&self, inputs: &CrankingInputs) -> CrankingAnswer {
        let outlined = survey::outline(self, inputs);
        let figures = figures::figures(inputs, &outlined, None);
        CrankingAnswer {
            works: None,
            prompt: None,
            bounds: outlined.bounds,
            corners: outlined.corners,
            relay: inputs.relay_answer(),
            stop: None,
            figures,
        }
    }

    /// The thresholds that would work with another release; as [`CrankingAnswer::works`].
    pub fn works_with(&self, inputs: &CrankingInputs, release: Release) -> Option<Interval> {
        survey::works_with(self, inputs, release)
    }

    /// Whether a threshold works: at every corner from every start the relay closes without waiting for a crest of the speed,
    /// is not told to open again, and does not close on an engine that rocks.
    pub fn serves(&self, inputs: &CrankingInputs, threshold: RotationalSpeed) -> bool {
        survey::serves(self, inputs, threshold)
    }

    /// The fastest reading while the starter turns at full speed, at each corner by its name.
    pub fn readings_at_corners(&self) -> Vec<(String, RotationalSpeed)> {
        survey::fastest(self)
    }

    /// The releases that work at a threshold: above the speed of a rocking engine, which must let go, and up to the lowest that
    /// readings reach at any corner from any start once the relay was switched on. None where there is none.
    pub fn releases(
        &self,
        inputs: &CrankingInputs,
        threshold: RotationalSpeed,
    ) -> Option<Interval> {
        survey::releases(self, inputs, threshold)
    }
}

/// Follows all starts and answers it; nothing where the inputs can't be those of an engine that turns.
///
/// Takes about a millisecond for a usual start; [`cost`] tells how long for others.
pub fn answer(inputs: &CrankingInputs) -> Option<CrankingAnswer> {
    Starts::follow(inputs)?.answer(inputs, &Budget::unlimited())
}

/// What happens when the engine dies, with a release.
pub fn stop(inputs: &CrankingInputs, release: RotationalSpeed) -> StopAnswer {
    stop::stop(inputs, release)
}

/// The course of one start, for a picture: at the corner named, from the start that closes the relay last.
pub fn trace(inputs: &CrankingInputs, answer: &CrankingAnswer, corner: usize) -> Option<Trace> {
    trace::trace(inputs, answer.corners.get(corner)?)
}
