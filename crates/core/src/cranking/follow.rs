//! All starts of an engine at all corners, followed once: whatever relay is asked about, they are the same.

use super::{
    CrankingInputs,
    course::{Course, courses},
    readings::StartReadings,
    run::Run,
    start::starts,
};
use crate::timeline::ThresholdReach;

/// Every start of an engine at every corner, and which thresholds and releases a relay would serve them with.
#[derive(Clone, Debug)]
pub struct Starts {
    inputs: CrankingInputs,
    pub(super) corners: Vec<CornerStarts>,
}

/// The starts at one corner.
#[derive(Clone, Debug)]
pub(super) struct CornerStarts {
    pub(super) course: Course,
    /// Where in the cycle they begin, in degrees.
    pub(super) from_deg: Vec<f64>,
    /// What they do to a relay together: the highest threshold that all of them reach, and the lowest readings then.
    pub(super) reach: ThresholdReach,
}

impl Starts {
    /// Follows them; nothing where the inputs can't be those of an engine that turns.
    pub fn follow(inputs: &CrankingInputs) -> Option<Self> {
        let (mut speeds, mut times_s, mut angles_deg) = (Vec::new(), Vec::new(), Vec::new());
        let mut corner = |course: Option<Course>| {
            let course = course?;
            let from_deg = starts(inputs, &course);
            let reaches = from_deg.iter().map(|start_deg| {
                let readings = StartReadings::new(Run::new(&course, *start_deg), inputs);
                readings.speeds(&mut speeds, (&mut times_s, &mut angles_deg));
                ThresholdReach::new(&speeds, inputs.confirmation)
            });
            let reach = reaches.reduce(|one, other| one.with(&other))?;
            Some(CornerStarts { course, from_deg, reach })
        };
        let corners = courses(inputs).map(&mut corner).collect::<Option<Vec<_>>>()?;
        Some(Self { inputs: inputs.clone(), corners })
    }

    /// Whether they are those of these inputs too, which may have another relay.
    pub fn are_of(&self, inputs: &CrankingInputs) -> bool {
        // each by name, so that none is forgotten
        let CrankingInputs {
            firings,
            cycle,
            speed,
            slow,
            dip,
            run_up,
            wheel,
            sync,
            averaging,
            average,
            confirmation,
            stall_timeout,
            threshold: _,
            release: _,
            relay: _,
            dwell: _,
            kick_back: _,
            stick: _,
            rocking: _,
            idle: _,
            run_down: _,
            supply: _,
            hot_supply: _,
            temperature: _,
        } = &self.inputs;
        (firings, cycle, speed, slow, dip, run_up)
            == (
                &inputs.firings,
                &inputs.cycle,
                &inputs.speed,
                &inputs.slow,
                &inputs.dip,
                &inputs.run_up,
            )
            && (wheel, sync, averaging, average, confirmation, stall_timeout)
                == (
                    &inputs.wheel,
                    &inputs.sync,
                    &inputs.averaging,
                    &inputs.average,
                    &inputs.confirmation,
                    &inputs.stall_timeout,
                )
    }
}

impl CornerStarts {
    /// Each of the starts.
    pub(super) fn runs(&self) -> impl Iterator<Item = Run<'_>> {
        self.from_deg.iter().map(|start_deg| Run::new(&self.course, *start_deg))
    }
}
