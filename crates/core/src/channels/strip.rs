//! What every channel does in one cycle at a speed: when its coil is charged, when its injector is open.

use super::{Layout, Target, Wired};
use crate::{
    engine::Engine,
    quantity::{CrankAngle, Measure, RotationalSpeed, Time},
    working::{Formula, Working},
};

/// Degrees that the crank turns in a second, for each turn a minute.
const DEGREES: f64 = 6.0;

const TURNED: Formula =
    Formula { symbols: "α = 6 × n × t", source: "n turns a minute are 6 n degrees a second" };

/// What a channel does for so long, up to a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Act {
    /// For how long.
    pub lasts: Time,
    /// How far before the firing top dead centre of its cylinder it ends; above nought.
    pub ends_before: CrankAngle,
}

/// One time that a channel acts.
#[derive(Clone, Debug, PartialEq)]
pub struct ChannelWindow {
    /// The channel.
    pub channel: u32,
    /// What it really reaches.
    pub targets: Vec<Target>,
    /// Where it begins: below nought where that is in the cycle before.
    pub from: CrankAngle,
    /// Where it ends, from 0 up to but without the cycle.
    pub to: CrankAngle,
}

/// All that channels of one kind do in a cycle.
#[derive(Clone, Debug, PartialEq)]
pub struct Windows {
    /// In the order in which they end.
    pub windows: Vec<ChannelWindow>,
    /// The angle that each lasts.
    pub angle: CrankAngle,
    /// The least angle from one time that a channel acts to its next.
    pub least: CrankAngle,
    /// The most channels that act at once.
    pub at_once: usize,
}

impl Windows {
    /// Whether a channel must act again before it is done.
    pub fn is_overrun(&self) -> bool {
        self.angle.degrees() > self.least.degrees() + 1e-9
    }
}

/// The angle that the crank turns in a time.
///
/// `α = 6 n t`
pub fn turned(speed: RotationalSpeed, time: Time, working: &mut Working) -> CrankAngle {
    let angle = CrankAngle::new(DEGREES * speed.base() * time.base());
    working.step(&TURNED, &[("n", speed.show()), ("t", time.show())], angle)
}

/// What the channels of a layout do, as they are really connected where that has been seen.
///
/// None where the channels have no moment of their own (bank by bank, all together).
pub fn windows(
    engine: &Engine,
    layout: &Layout,
    wired: &Wired,
    act: Act,
    speed: RotationalSpeed,
    working: &mut Working,
) -> Option<Windows> {
    let cycle = engine.cycle();
    let angle = turned(speed, act.lasts, working);
    let mut windows: Vec<ChannelWindow> = Vec::new();
    for slot in layout.slots() {
        let seen: Vec<Target> = wired
            .iter()
            .filter(|(_, on)| **on == slot.channel)
            .map(|(target, _)| *target)
            .collect();
        let meant = slot.targets.iter().filter(|target| !wired.contains_key(target));
        let targets: Vec<Target> = if seen.is_empty() { meant.copied().collect() } else { seen };
        windows.extend(slot.times.iter().map(|time| {
            let to = (*time - act.ends_before).within(cycle);
            ChannelWindow { channel: slot.channel, targets: targets.clone(), from: to - angle, to }
        }));
    }
    if windows.is_empty() {
        return None;
    }
    crate::sorted::by(&mut windows, |one, other| {
        one.to.degrees().total_cmp(&other.to.degrees()).then(one.channel.cmp(&other.channel))
    });
    let least = least(layout, cycle);
    let at_once = at_once(&windows, angle, cycle);
    Some(Windows { windows, angle, least, at_once })
}

/// The least angle from one time that a channel acts to its next.
fn least(layout: &Layout, cycle: CrankAngle) -> CrankAngle {
    // a distributor's towers are fed by one channel
    let is_shared = usize::try_from(layout.channels()).is_ok_and(|it| it < layout.slots().len());
    let times_of = |slots: &[super::Slot]| {
        let mut times: Vec<f64> =
            slots.iter().flat_map(|slot| &slot.times).map(|it| it.degrees()).collect();
        crate::sorted::by(&mut times, f64::total_cmp);
        times
    };
    let gaps = |times: Vec<f64>| {
        let first = times.first().copied().unwrap_or_default() + cycle.degrees();
        let next: Vec<f64> = times.iter().skip(1).copied().chain([first]).collect();
        times.into_iter().zip(next).map(|(at, next)| next - at).fold(f64::INFINITY, f64::min)
    };
    let least = if is_shared {
        gaps(times_of(layout.slots()))
    } else {
        let each = layout.slots().iter().map(|slot| gaps(times_of(std::slice::from_ref(slot))));
        each.fold(f64::INFINITY, f64::min)
    };
    CrankAngle::new(if least.is_finite() { least } else { cycle.degrees() })
}

/// The most channels that act at once: counted just before each ends, since none begins without adding to the count.
fn at_once(windows: &[ChannelWindow], angle: CrankAngle, cycle: CrankAngle) -> usize {
    let angle = angle.degrees().min(cycle.degrees());
    let acting = |at: f64| {
        let mut channels: Vec<u32> = windows
            .iter()
            .filter(|it| (it.to.degrees() - at).rem_euclid(cycle.degrees()) < angle - 1e-9)
            .map(|it| it.channel)
            .collect();
        crate::sorted::by(&mut channels, Ord::cmp);
        channels.dedup();
        channels.len()
    };
    windows.iter().map(|it| acting(it.to.degrees())).max().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::{
        channels::{Habit, Ignition, Injection},
        engine::{EngineKind, Spacing},
        quantity::{rpm, seconds},
    };

    fn six() -> Engine {
        Engine::new(EngineKind::FourStroke, 6, &[1, 5, 3, 6, 2, 4], &Spacing::Even)
            .expect("an engine")
    }

    fn dwells(mode: Ignition, speed: f64, time: f64) -> Windows {
        let layout = Layout::ignition(&six(), mode, Habit::ByOrder).expect("a layout");
        let act = Act { lasts: seconds(time), ends_before: CrankAngle::new(30.0) };
        windows(&six(), &layout, &Wired::new(), act, rpm(speed), &mut Working::new())
            .expect("timed")
    }

    /// By hand: 3 ms at 6000 a minute are 108 degrees; sparks of a six stand 120 apart, so one coil is charged at a time,
    /// and two above 6667 a minute, where 3 ms are 120 degrees.
    #[test]
    fn a_six_charges_one_coil_at_a_time_until_dwell_fills_the_interval() {
        let at_6000 = dwells(Ignition::Sequential, 6000.0, 0.003);
        assert!(at_6000.angle.is_near(CrankAngle::new(108.0)), "{:?}", at_6000.angle);
        assert_eq!((at_6000.at_once, at_6000.is_overrun()), (1, false));
        assert_eq!(dwells(Ignition::Sequential, 7000.0, 0.003).at_once, 2);
        let first = &at_6000.windows[0];
        assert!(first.to.is_near(CrankAngle::new(90.0)), "the spark of the second, 30 before 120");
        assert!(first.from.is_near(CrankAngle::new(-18.0)), "{:?}", first.from);
    }

    /// By hand: a coil of its own comes again after 720 degrees, fired every turn after 360, one for all after 120.
    #[test]
    fn the_least_angle_between_two_charges_is_that_of_the_mode() {
        for (mode, least) in [
            (Ignition::Sequential, 720.0),
            (Ignition::EveryTurn, 360.0),
            (Ignition::PairedDouble, 360.0),
            (Ignition::Distributor, 120.0),
        ] {
            assert!(dwells(mode, 1000.0, 0.001).least.is_near(CrankAngle::new(least)), "{mode:?}");
        }
        assert!(dwells(Ignition::Distributor, 7000.0, 0.003).is_overrun(), "126 of 120 degrees");
    }

    #[test]
    fn injection_by_bank_has_no_moment() {
        let engine = six().with_banks(vec![vec![1, 2, 3], vec![4, 5, 6]]).expect("banks");
        let layout =
            Layout::injection(&engine, Injection::ByBank, Habit::ByOrder).expect("a layout");
        let act = Act { lasts: seconds(0.005), ends_before: CrankAngle::new(360.0) };
        let none = windows(&engine, &layout, &Wired::new(), act, rpm(6000.0), &mut Working::new());
        assert_eq!(none, None);
    }

    #[test]
    fn as_wired_a_window_stands_where_its_channel_really_ends() {
        let layout =
            Layout::ignition(&six(), Ignition::Sequential, Habit::ByOrder).expect("a layout");
        let wired = Wired::from([(Target::only(5), 1), (Target::only(1), 2)]);
        let act = Act { lasts: seconds(0.003), ends_before: CrankAngle::new(0.0) };
        let all =
            windows(&six(), &layout, &wired, act, rpm(3000.0), &mut Working::new()).expect("timed");
        let of =
            |channel| &all.windows.iter().find(|it| it.channel == channel).expect("there").targets;
        assert_eq!(
            (of(1), of(2), of(3)),
            (&vec![Target::only(5)], &vec![Target::only(1)], &vec![Target::only(3)])
        );
    }

    proptest! {
        /// As many coils are charged at once as whole intervals fit into the angle of a charge, and one more for what is left.
        #[test]
        fn overlap_is_the_angle_over_the_interval(angle in 1.0..700.0_f64) {
            let found = dwells(Ignition::Sequential, 1000.0, angle / 6000.0);
            let expected = ((angle - 1e-6) / 120.0).ceil();
            #[expect(clippy::cast_precision_loss, reason = "at most six")]
            let found = found.at_once as f64;
            prop_assert!((found - expected.min(6.0)).abs() < 0.5, "{found} for {angle} degrees");
        }
    }
}
