//! A speed that repeats, given as a function of time that can be integrated in closed form.

use std::f64::consts::PI;

use crate::math;

/// Most iterations of the inversion; bisection alone would need fifty for a double.
const MOST_ITERATIONS: usize = 60;

/// Most that is taken to be held in a crest: where it never falls, no speed elsewhere would keep the mean.
const MOST_IN_CREST: f64 = 0.98;

/// A turning motion whose speed falls to a valley at given angles and recovers between them.
///
/// From each valley the speed rises along half a cosine *in time* to a crest, stays there, and falls along half
/// a cosine into the next valley. Angle and speed are then sums of sines; only the time at an angle has no closed form and
/// needs iteration.
///
/// How high the crests are and how low the valleys follows from what lends the motion its energy and takes it: where the
/// share `h` of the most is held elsewhere, `w² = t² - (t² - b²) h`, with the speed `t` where nothing is held, and `b` at
/// the deepest valley, which is given. `t` is such that the mean over time is the mean asked for.
#[derive(Clone, Debug, PartialEq)]
pub struct Wave {
    pieces: Vec<Piece>,
    period_s: f64,
    period_deg: f64,
}

/// What a [`Wave`] is made from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Valleys<'a> {
    /// The valleys by rising angle, from 0 up to but without `period_deg`.
    pub each: &'a [Valley],
    /// The angle after which everything comes again; above 0.
    pub period_deg: f64,
    /// Mean speed over time, degrees a second; above 0.
    pub mean: f64,
    /// Depth of the deepest valley as a share of the mean, from 0 up to but without 1.
    pub depth: f64,
    /// How far a valley reaches to either side at most, in degrees; above 0.
    pub reach_deg: f64,
}

/// A valley, and the crest after it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Valley {
    /// Where it is, in degrees.
    pub at_deg: f64,
    /// Share of the most energy that is held elsewhere there, 0 to 1.
    pub held: f64,
    /// The same at the crest that follows.
    pub held_after: f64,
}

/// Half a cosine in time between two speeds, or a constant speed.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Piece {
    start_s: f64,
    start_deg: f64,
    duration_s: f64,
    from: f64,
    to: f64,
}

impl Piece {
    fn speed(&self, time: f64) -> f64 {
        let (middle, half) = (f64::midpoint(self.from, self.to), (self.to - self.from) / 2.0);
        if half == 0.0 {
            return middle;
        }
        middle - half * math::cos(PI * time / self.duration_s)
    }

    fn angle(&self, time: f64) -> f64 {
        let (middle, half) = (f64::midpoint(self.from, self.to), (self.to - self.from) / 2.0);
        if half == 0.0 {
            return middle * time;
        }
        middle * time - half * self.duration_s / PI * math::sin(PI * time / self.duration_s)
    }

    /// The tangent method kept inside a shrinking bracket: the angle rises with time throughout.
    fn time(&self, angle: f64) -> f64 {
        let (mut low, mut high) = (0.0, self.duration_s);
        let mut time = (angle / f64::midpoint(self.from, self.to)).clamp(low, high);
        for _ in 0..MOST_ITERATIONS {
            let off = self.angle(time) - angle;
            if off > 0.0 {
                high = time;
            } else {
                low = time;
            }
            let next = time - off / self.speed(time);
            let next = if next >= low && next <= high { next } else { f64::midpoint(low, high) };
            // the error after a tangent step is about the square of the step
            if (next - time).abs() <= 1e-10 * self.duration_s {
                return next;
            }
            time = next;
        }
        time
    }
}

impl Wave {
    /// The motion with these valleys; nothing where they are not as [`Valleys`] asks.
    pub fn new(valleys: &Valleys<'_>) -> Option<Self> {
        if !valleys.are_sound() {
            return None;
        }
        // the motion begins in its first valley
        let first = valleys.each.first()?;
        let again = Valley { at_deg: first.at_deg + valleys.period_deg, ..*first };
        let next = valleys.each.iter().skip(1).chain([&again]);
        let intervals: Vec<_> = valleys.each.iter().zip(next).collect();
        let mut wave = Self { pieces: Vec::new(), period_s: 0.0, period_deg: valleys.period_deg };
        // makes it anew, and tells whether it takes too long
        let mut is_slow = |top: f64| {
            wave.pieces.clear();
            wave.period_s = 0.0;
            for (from, to) in &intervals {
                wave.add_interval(valleys, top, from, to);
            }
            wave.period_s * valleys.mean > valleys.period_deg
        };
        // in shares of the mean: at the least all is as slow as the deepest valley, at `high` the mean is exceeded
        let mut high = 2.0;
        let mut doublings = 0;
        while is_slow(high) && doublings < MOST_ITERATIONS {
            (high, doublings) = (2.0 * high, doublings + 1);
        }
        let high = math::least(1.0 - valleys.depth, high, |top| !is_slow(top));
        // the one that is kept
        is_slow(high);
        // angle 0 of the motion is angle 0 of the valleys
        for piece in &mut wave.pieces {
            piece.start_deg += first.at_deg;
        }
        Some(wave)
    }

    /// Time in which everything comes again, in seconds.
    pub fn period_s(&self) -> f64 {
        self.period_s
    }

    /// Angle after which everything comes again, in degrees.
    pub fn period_deg(&self) -> f64 {
        self.period_deg
    }

    /// The time at which an angle is passed; 0 at the first valley, rising throughout.
    pub fn time_at(&self, angle_deg: f64) -> f64 {
        let Some(first) = self.pieces.first() else { return 0.0 };
        let turns = ((angle_deg - first.start_deg) / self.period_deg).floor();
        let within = angle_deg - turns * self.period_deg;
        let piece = self.piece(|piece| piece.start_deg <= within);
        turns * self.period_s + piece.start_s + piece.time(within - piece.start_deg)
    }

    /// The angle passed at a time, in degrees: the inverse of [`Self::time_at`].
    pub fn angle_at(&self, time_s: f64) -> f64 {
        let turns = (time_s / self.period_s).floor();
        let within = time_s - turns * self.period_s;
        let piece = self.piece(|piece| piece.start_s <= within);
        turns * self.period_deg + piece.start_deg + piece.angle(within - piece.start_s)
    }

    /// The speed at a time, in degrees a second.
    pub fn speed_at(&self, time_s: f64) -> f64 {
        let within = time_s - (time_s / self.period_s).floor() * self.period_s;
        let piece = self.piece(|piece| piece.start_s <= within);
        piece.speed(within - piece.start_s)
    }

    /// The last piece of which `has_begun` is true.
    fn piece(&self, has_begun: impl Fn(&Piece) -> bool) -> Piece {
        let at = self.pieces.partition_point(has_begun).saturating_sub(1);
        let none = Piece { start_s: 0.0, start_deg: 0.0, duration_s: 0.0, from: 1.0, to: 1.0 };
        self.pieces.get(at).copied().unwrap_or(none)
    }

    fn add_interval(&mut self, valleys: &Valleys<'_>, top: f64, from: &Valley, to: &Valley) {
        let bottom = 1.0 - valleys.depth;
        let speed = |held: f64| {
            let held = held * (top * top - bottom * bottom);
            valleys.mean * (top * top - held).max(0.0).sqrt()
        };
        let length_deg = to.at_deg - from.at_deg;
        let slope_deg = valleys.reach_deg.min(length_deg / 2.0);
        let crest = speed(from.held_after.min(MOST_IN_CREST));
        self.add(slope_deg, speed(from.held), crest);
        self.add(length_deg - 2.0 * slope_deg, crest, crest);
        self.add(slope_deg, crest, speed(to.held));
    }

    fn add(&mut self, length_deg: f64, from: f64, to: f64) {
        if length_deg <= 0.0 {
            return;
        }
        let start_deg = self.pieces.last().map_or(0.0, |it| it.start_deg + it.length_deg());
        let duration_s = length_deg / f64::midpoint(from, to);
        self.pieces.push(Piece { start_s: self.period_s, start_deg, duration_s, from, to });
        self.period_s += duration_s;
    }
}

impl Piece {
    fn length_deg(&self) -> f64 {
        f64::midpoint(self.from, self.to) * self.duration_s
    }
}

impl Valleys<'_> {
    fn are_sound(&self) -> bool {
        let rising = |pair: &[Valley]| matches!(pair, [one, next] if one.at_deg < next.at_deg);
        let rising = self.each.windows(2).all(rising);
        let shares = 0.0..=1.0;
        let inside = self.each.iter().all(|it| {
            (0.0..self.period_deg).contains(&it.at_deg)
                && shares.contains(&it.held)
                && shares.contains(&it.held_after)
        });
        let positive = [self.period_deg, self.mean, self.reach_deg]
            .into_iter()
            .all(|number| number.is_finite() && number > 0.0);
        rising && inside && positive && (0.0..1.0).contains(&self.depth)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Valleys alike, and nothing held between them.
    fn alike(at_deg: &[f64]) -> Vec<Valley> {
        at_deg.iter().map(|at| Valley { at_deg: *at, held: 1.0, held_after: 0.0 }).collect()
    }

    fn wave(at_deg: &[f64], depth: f64) -> Wave {
        made(&alike(at_deg), depth)
    }

    fn made(each: &[Valley], depth: f64) -> Wave {
        let valleys = Valleys { each, period_deg: 720.0, mean: 1200.0, depth, reach_deg: 90.0 };
        Wave::new(&valleys).expect("sound valleys")
    }

    #[track_caller]
    fn check(got: f64, expected: f64) {
        assert!((got - expected).abs() < 1e-9 * expected.abs().max(1.0), "{got}, not {expected}");
    }

    #[test]
    fn without_depth_the_speed_is_constant() {
        let wave = wave(&[0.0, 240.0, 480.0], 0.0);
        check(wave.period_s(), 0.6);
        check(wave.time_at(100.0), 100.0 / 1200.0);
        check(wave.speed_at(0.123), 1200.0);
    }

    /// Between valleys closer than the slopes reach, the level is as far above the mean as the valley is below.
    #[test]
    fn a_valley_lies_its_depth_below_the_mean_and_the_mean_is_kept() {
        let wave = wave(&[0.0, 120.0, 240.0, 360.0, 480.0, 600.0], 0.35);
        check(wave.period_s(), 0.6);
        check(wave.speed_at(0.0), 780.0);
        check(wave.speed_at(0.1), 780.0);
        check(wave.speed_at(0.05), 1620.0);
        check(wave.angle_at(0.1), 120.0);
        // half way up in time: 1200 t - 420 (T / pi) sin(pi / 2), t = 25 ms, T = 50 ms
        check(wave.angle_at(0.025), 30.0 - 420.0 * 0.05 / PI);
    }

    #[test]
    fn far_valleys_leave_a_level_and_the_mean_is_kept() {
        let wave = wave(&[0.0], 0.5);
        check(wave.period_s(), 0.6);
        // 720 x^2 - 540 x - 270 = 0
        check(
            wave.speed_at(0.3),
            1200.0 * (540.0 + (540.0_f64 * 540.0 + 777600.0).sqrt()) / 1440.0,
        );
        check(wave.speed_at(0.6), 600.0);
    }

    #[test]
    fn uneven_valleys_keep_the_mean_in_the_cycle() {
        let wave = wave(&[0.0, 90.0, 240.0, 330.0, 480.0, 570.0], 0.4);
        check(wave.time_at(240.0), 240.0 / 1200.0);
        check(wave.time_at(-480.0), -480.0 / 1200.0);
        check(wave.speed_at(0.0), 720.0);
    }

    /// By hand: of the square of the speed 0.6² = t² - (t² - 0.36) 1 in the deep valley, t² - (t² - 0.36) / 2 in the shallow
    /// one, t² in both crests; 180 degrees in four slopes: 2 (180 / (t + 0.6) + 180 / (t + sqrt((t² + 0.36) / 2))) =
    /// 360 / 1.
    #[test]
    fn a_valley_with_half_the_work_is_so_much_shallower() {
        let each = [
            Valley { at_deg: 0.0, held: 1.0, held_after: 0.0 },
            Valley { at_deg: 180.0, held: 0.5, held_after: 0.0 },
            Valley { at_deg: 360.0, held: 1.0, held_after: 0.0 },
            Valley { at_deg: 540.0, held: 0.5, held_after: 0.0 },
        ];
        let wave = made(&each, 0.4);
        check(wave.period_s(), 0.6);
        let top = wave.speed_at(wave.time_at(90.0)) / 1200.0;
        check(wave.speed_at(0.0), 0.6 * 1200.0);
        let shallow = f64::midpoint(top * top, 0.36).sqrt();
        check(wave.speed_at(wave.time_at(180.0)), shallow * 1200.0);
        check(180.0 / (top + 0.6) + 180.0 / (top + shallow), 180.0);
    }

    /// Where a crest holds as much as its valleys do the engine hardly recovers: the others make up for it.
    #[test]
    fn a_crest_that_holds_nearly_all_is_low_and_the_mean_is_kept() {
        let each = [
            Valley { at_deg: 0.0, held: 1.0, held_after: 1.0 },
            Valley { at_deg: 70.0, held: 1.0, held_after: 0.0 },
        ];
        let wave = made(&each, 0.8);
        check(wave.period_s(), 0.6);
        let crest = wave.speed_at(wave.time_at(35.0));
        assert!((240.0..400.0).contains(&crest), "{crest}");
    }

    #[test]
    fn time_and_angle_are_each_other_s_inverse() {
        let wave = wave(&[10.0, 90.0, 300.0, 700.0], 0.9);
        for step in -200..400 {
            let angle = f64::from(step) * 7.3;
            check(wave.angle_at(wave.time_at(angle)), angle);
        }
    }

    #[test]
    fn unsound_valleys_make_no_motion() {
        let (one, twice, late) = (alike(&[0.0]), alike(&[0.0, 0.0]), alike(&[720.0]));
        let beyond = [Valley { held: 1.1, ..one[0] }];
        let sound =
            Valleys { each: &one, period_deg: 720.0, mean: 1.0, depth: 0.3, reach_deg: 90.0 };
        for valleys in [
            Valleys { each: &[], ..sound },
            Valleys { each: &twice, ..sound },
            Valleys { each: &late, ..sound },
            Valleys { each: &beyond, ..sound },
            Valleys { mean: 0.0, ..sound },
            Valleys { mean: f64::NAN, ..sound },
            Valleys { depth: 1.0, ..sound },
            Valleys { period_deg: f64::INFINITY, ..sound },
        ] {
            assert_eq!(Wave::new(&valleys), None, "{valleys:?}");
        }
    }
}
