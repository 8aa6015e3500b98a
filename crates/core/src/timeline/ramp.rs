//! From rest to a motion, and from a motion to rest.

/// A motion that is brought up from rest: its rate rises evenly from 0 to 1 and stays there.
///
/// The motion is where it would be after `progress` seconds at full rate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rise {
    /// Time until the full rate is reached, in seconds; from 0.
    pub duration_s: f64,
}

impl Rise {
    /// The time at which the motion has come as far as `progress_s` seconds at full rate would bring it.
    ///
    /// `t = sqrt(2 T p)` while it rises, `t = p + T / 2` after.
    pub fn time_at(&self, progress_s: f64) -> f64 {
        if progress_s <= self.duration_s / 2.0 {
            return (2.0 * self.duration_s * progress_s).max(0.0).sqrt();
        }
        progress_s + self.duration_s / 2.0
    }

    /// How far the motion has come at a time: the inverse of [`Self::time_at`].
    pub fn progress_at(&self, time_s: f64) -> f64 {
        if time_s < self.duration_s {
            return time_s * time_s / (2.0 * self.duration_s);
        }
        time_s - self.duration_s / 2.0
    }

    /// The rate at a time, 0 to 1.
    pub fn rate_at(&self, time_s: f64) -> f64 {
        if time_s < self.duration_s { time_s / self.duration_s } else { 1.0 }
    }
}

/// A motion that loses its speed evenly until it rests.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fall {
    /// Speed at the beginning, degrees a second.
    pub from: f64,
    /// Time until it rests, in seconds.
    pub duration_s: f64,
}

impl Fall {
    /// The time at which an angle is passed; nothing where the motion rests before.
    ///
    /// `a = v t (1 - t / 2 T)`, hence `t = T (1 - sqrt(1 - 2 a / (v T)))`.
    pub fn time_at(&self, angle_deg: f64) -> Option<f64> {
        let rest = 1.0 - 2.0 * angle_deg / (self.from * self.duration_s);
        (rest >= 0.0).then(|| self.duration_s * (1.0 - rest.sqrt()))
    }

    /// The speed at a time, degrees a second.
    pub fn speed_at(&self, time_s: f64) -> f64 {
        if time_s < self.duration_s { self.from * (1.0 - time_s / self.duration_s) } else { 0.0 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(got: f64, expected: f64) {
        assert!((got - expected).abs() < 1e-12, "{got}, not {expected}");
    }

    #[test]
    fn a_rise_loses_half_its_duration() {
        let rise = Rise { duration_s: 0.4 };
        check(rise.time_at(0.2), 0.4);
        check(rise.time_at(0.05), 0.2);
        check(rise.time_at(1.0), 1.2);
        check(rise.progress_at(0.2), 0.05);
        check(rise.progress_at(1.2), 1.0);
        check(rise.rate_at(0.1), 0.25);
    }

    #[test]
    fn no_rise_loses_nothing() {
        let rise = Rise { duration_s: 0.0 };
        check(rise.time_at(0.3), 0.3);
        check(rise.time_at(0.0), 0.0);
        check(rise.rate_at(0.0), 1.0);
    }

    #[test]
    fn a_fall_rests_after_half_the_way_at_full_speed() {
        let fall = Fall { from: 1000.0, duration_s: 2.0 };
        assert_eq!(fall.time_at(1000.1), None, "it rests at 1000 degrees");
        check(fall.time_at(1000.0).unwrap_or(f64::NAN), 2.0);
        check(fall.time_at(750.0).unwrap_or(f64::NAN), 1.0);
        check(fall.speed_at(1.0), 500.0);
        check(fall.speed_at(3.0), 0.0);
    }
}
