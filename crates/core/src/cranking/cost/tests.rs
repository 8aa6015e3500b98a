use super::*;
use crate::{
    cranking::{Average, Relay, Release, Sync, Wheel, course::courses, run, start::starts, stop},
    quantity::{Band, CrankAngle, celsius, rpm, seconds, share, volts},
    timeline::Fall,
};

/// A single with what is usual.
fn usual() -> CrankingInputs {
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
    let mut readings = Vec::new();
    for inputs in at_the_limits() {
        for course in courses(&inputs).map(|it| it.expect("an engine that turns")) {
            let counted = RunCost::new(&inputs, &course.values);
            let run = run::Run::new(&course, 0.0);
            run.readings(&inputs, &mut readings);
            let averaging = u64::from(inputs.averaging);
            let passed = count(readings.len()) * averaging + 1;
            assert!(passed <= counted.teeth, "{passed} of {counted:?}: {inputs:?}");
            assert!(count(readings.len()) <= counted.readings, "{counted:?}: {inputs:?}");
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
fn no_stop_passes_more_teeth_than_are_counted() {
    let ends = [(100.0, 0.05), (100.0, 20.0), (5000.0, 0.05), (5000.0, 20.0)];
    for (positions, (idle, run_down)) in
        [1, 60, 360].iter().flat_map(|it| ends.map(|end| (*it, end)))
    {
        let wheel = Wheel { positions, missing: 0, mark_to_first: CrankAngle::new(0.0) };
        let run_down = Band::exact(seconds(run_down));
        let inputs = CrankingInputs { wheel, idle: rpm(idle), run_down, ..usual() };
        let fall = Fall { from: idle * 6.0, duration_s: run_down.high.base() };
        let teeth = stop::teeth_deg(&inputs, 0.0);
        let passed = count(teeth.take_while(|angle| fall.time_at(*angle).is_some()).count());
        let counted = teeth_of_stops(&inputs) / u64::from(PLACES);
        assert!(passed <= counted, "{passed} of {counted}: {inputs:?}");
    }
}

/// What is tried of false edges is summed here as it is done: from each place, with each number of them.
#[test]
fn every_false_edge_is_counted() {
    for (averaging, confirmation) in [(1, 1), (1, 20), (2, 2), (7, 3), (360, 20)] {
        let inputs = CrankingInputs { averaging, confirmation, ..usual() };
        let tried = (0..=MOST_EDGES)
            .flat_map(|edges| (0..averaging).map(move |before| before + 2 * edges))
            .map(|it| u64::from(it + averaging * confirmation));
        let (tried, counted) = (tried.sum::<u64>(), mistaking(&inputs));
        assert!(tried <= counted && counted <= tried + tried / 4, "{tried} of {counted}");
    }
}
