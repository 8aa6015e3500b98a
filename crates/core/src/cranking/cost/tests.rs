use super::*;
use crate::{
    budget::Budget,
    cranking::{
        Average, Relay, Release, Sync, Wheel, course::courses, readings::StartReadings, run,
        start::starts,
    },
    quantity::{Band, CrankAngle, celsius, rpm, seconds, share, volts},
};

/// A single with what is usual.
pub(in crate::cranking) fn usual() -> CrankingInputs {
    CrankingInputs {
        firings: vec![CrankAngle::new(0.0)],
        cycle: CrankAngle::new(720.0),
        speed: Band::exact(rpm(200.0)),
        slow: Vec::new(),
        dip: Band::exact(share(0.5)),
        run_up: Band::exact(seconds(0.3)),
        wheel: Wheel { positions: 60, missing: 2, mark_to_first: CrankAngle::new(90.0) },
        sync: Sync::Gap,
        averaging: 1,
        average: Average::Blocks,
        confirmation: 2,
        threshold: Some(rpm(100.0)),
        release: Release::Share(share(0.6)),
        stall_timeout: Band::exact(seconds(1.0)),
        relay: Relay {
            pull_in_time: Band::exact(seconds(0.01)),
            drop_out_time: Band::exact(seconds(0.01)),
            pull_in_voltage: Band::exact(volts(7.2)),
            drop_out_voltage: None,
            feed_loss: Band::exact(volts(0.0)),
            switched: None,
        },
        dwell: seconds(0.004),
        kick_back: CrankAngle::new(120.0),
        stick: seconds(1.5),
        rocking: Band::exact(rpm(30.0)),
        idle: rpm(800.0),
        run_down: Band::exact(seconds(1.0)),
        supply: volts(8.0),
        hot_supply: volts(8.0),
        temperature: Band::exact(celsius(20.0)),
    }
}

/// Every combination of the ends of what decides how many teeth are followed.
pub(in crate::cranking) fn at_the_limits() -> Vec<CrankingInputs> {
    let mut all = vec![usual()];
    let mut each = |ways: &[&dyn Fn(&mut CrankingInputs)]| {
        let changed = all.iter().flat_map(|inputs| {
            ways.iter().map(|way| {
                let mut inputs = inputs.clone();
                way(&mut inputs);
                inputs
            })
        });
        all = changed.collect();
    };
    let wheel = |positions: u32, missing: u32| {
        move |it: &mut CrankingInputs| it.wheel = Wheel { positions, missing, ..it.wheel }
    };
    each(&[&wheel(1, 0), &wheel(2, 1), &wheel(60, 2), &wheel(360, 0), &wheel(360, 10)]);
    let run_up = |s: f64| move |it: &mut CrankingInputs| it.run_up = Band::exact(seconds(s));
    each(&[&run_up(0.0), &run_up(0.3), &run_up(5.0)]);
    let speed = |n: f64| move |it: &mut CrankingInputs| it.speed = Band::exact(rpm(n));
    each(&[&speed(20.0), &speed(1000.0)]);
    each(&[&|it| it.averaging = 1, &|it| it.averaging = 360]);
    each(&[&|it| it.confirmation = 1, &|it| it.confirmation = 20]);
    each(&[&|it| it.sync = Sync::Gap, &|it| it.sync = Sync::Cam]);
    all
}

fn count(number: usize) -> u64 {
    u64::try_from(number).unwrap()
}

#[test]
fn no_start_passes_more_teeth_than_are_counted_nor_much_less() {
    for inputs in at_the_limits() {
        for course in courses(&inputs).map(|it| it.expect("an engine that turns")) {
            let counted = RunCost::new(&inputs, &course.values);
            let readings = StartReadings::new(run::Run::new(&course, 0.0), &inputs);
            let (averaging, readings) = (u64::from(inputs.averaging), count(readings.count()));
            let passed = readings * averaging + 1;
            assert!(passed <= counted.teeth, "{passed} of {counted:?}: {inputs:?}");
            assert!(readings <= counted.readings, "{counted:?}: {inputs:?}");
            // no more than the lap that has begun, and a reading that is not full
            let rounded = passed + teeth_of_cycle(&inputs) + averaging;
            assert!(counted.teeth <= rounded, "{passed} of {counted:?}: {inputs:?}");
        }
    }
}

#[test]
fn no_more_starts_are_followed_than_are_counted() {
    for inputs in at_the_limits() {
        let course = courses(&inputs).next().flatten().expect("an engine that turns");
        let counted = EVEN_STARTS + MOST_STARTS_FOR_MARK * turns(&inputs);
        let followed = starts(&inputs, &course).len();
        assert!(count(followed) <= u64::from(counted), "{followed} of {counted}: {inputs:?}");
    }
}

#[test]
fn no_answer_takes_more_than_is_counted_at_most() {
    for mut inputs in at_the_limits().into_iter().step_by(7) {
        inputs.threshold = Some(inputs.speed.nominal * 0.9);
        let starts = Starts::follow(&inputs).expect("an engine that turns");
        let budget = Budget::unlimited();
        starts.answer(&inputs, &budget).expect("it may take what it takes");
        let (taken, at_most) = (budget.spent(), answering_at_most(&inputs));
        assert!(taken <= at_most, "{taken} of {at_most}: {inputs:?}");
    }
}
