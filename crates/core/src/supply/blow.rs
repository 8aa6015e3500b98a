//! When a blade fuse blows: at the latest, at the earliest, and what it carries for long where it is hot.
//!
//! A standard or a data sheet gives two times at each of a few multiples of the rating; between them a straight line of the
//! logarithms is taken. Beyond the last gate the link melts by the heat that it is given, and time goes with the square of the
//! current: at the gate more heat is lost than in a short, so that this is no less than the longest.
//!
//! Source: ISO 8820-3, and data sheets of blade fuses; see `tests/reference/fuses_blade.json`.

use crate::{
    math,
    quantity::{Current, Measure, Temperature, Time, amperes, seconds, share},
    tables::fuses::{self, GATES_C, GATES_E, HOLDS},
    working::{Formula, Step, step},
};

/// For so long a fuse holds [`HOLDS`]: a hundred hours.
const HOLDS_S: f64 = 360_000.0;

/// A regular and a small blade up to here have the same gates.
const SMALL_A: f64 = 30.0;
/// The largest regular blade; above it stands the large one.
const REGULAR_A: f64 = 40.0;

/// The longest at 35 and 40 A, in seconds by times of the rating: a data sheet.
const LONGEST_35: [(f64, f64); 4] = [(1.35, 600.0), (2.0, 5.0), (3.5, 0.5), (6.0, 0.15)];

/// The shortest up to 30 A: at 160 and 200 % data sheets, the rest ISO 8820-3, from memory.
const SHORTEST_30: [(f64, f64); 5] =
    [(1.35, 0.75), (1.6, 0.25), (2.0, 0.15), (3.5, 0.04), (6.0, 0.02)];
/// At 35 and 40 A: a data sheet.
const SHORTEST_35: [(f64, f64); 3] = [(1.35, 0.75), (2.0, 0.15), (3.5, 0.08)];
/// The large blade: a data sheet of 40 A.
const SHORTEST_LARGE: [(f64, f64); 4] = [(1.35, 60.0), (2.0, 2.0), (3.5, 0.2), (6.0, 0.04)];

/// By the temperature about it in °C, the amperes that stand for a rating of 40: a data sheet of a large blade.
const RERATED: [(f64, f64); 5] =
    [(20.0, 40.0), (65.0, 34.0), (85.0, 30.0), (110.0, 25.0), (125.0, 22.0)];

/// The last gate at which a fuse must blow, as times of its rating.
pub const BLOWS: f64 = 1.35;

/// A blade fuse parts no more than this, in amperes, at 32 V: a data sheet.
pub const BREAKS_A: f64 = 1000.0;

/// The formula of [`longest`].
pub const LONGEST: Formula = Formula {
    symbols: "t_f = t_1 × (t_2 / t_1)^(ln(I / I_1) / ln(I_2 / I_1))",
    source: fuses::GATES,
};

/// The formula of [`longest`] beyond the last gate.
pub const MELTS: Formula = Formula {
    symbols: "t_f = t_1 × (I_1 / I)²",
    source: "ISO 8820-3, from memory: the last gate; beyond it the heat that melts the link",
};

/// The formula of [`carries`].
pub const CARRIES: Formula = Formula {
    symbols: "I_lasting = I_fuse × 75% × f_T",
    source: "loaded to 75%: common practice, no source; less where it is hot: a data sheet of large blade fuses",
};

/// The latest gates of a rating.
fn latest(rating: Current) -> &'static [(f64, f64)] {
    match rating.base() {
        up_to if up_to <= SMALL_A => &GATES_C,
        up_to if up_to <= REGULAR_A => &LONGEST_35,
        _ => &GATES_E,
    }
}

/// The currents at which the line of [`longest`] bends, the first where it begins.
pub(super) fn bends(rating: Current) -> impl Iterator<Item = Current> {
    let times = std::iter::once(HOLDS).chain(latest(rating).iter().map(|gate| gate.0));
    // a fuse of nothing has a line as well
    let least = rating.base().max(1e-3);
    times.map(move |times| amperes(least * times))
}

/// The gates between which a multiple of the rating lies; the second is missing beyond the last.
type Between = ((f64, f64), Option<(f64, f64)>);

fn between(first: (f64, f64), gates: &[(f64, f64)], times: f64) -> Between {
    let mut before = first;
    for gate in gates {
        if times <= gate.0 {
            return (before, Some(*gate));
        }
        before = *gate;
    }
    (before, None)
}

fn along((before, after): Between, times: f64) -> f64 {
    let Some(after) = after else { return before.1 * (before.0 / times) * (before.0 / times) };
    let share = math::ln(times / before.0) / math::ln(after.0 / before.0);
    before.1 * math::exp(share * math::ln(after.1 / before.1))
}

/// How many times its rating, and the gates about it; none where it may hold for ever.
fn latest_between(rating: Current, current: Current) -> Option<(f64, Between)> {
    let times = current.base().abs() / rating.base().max(1e-9);
    // what is 110 % is not less by a rounding
    let times = (times >= HOLDS * (1.0 - 1e-9)).then_some(times.max(HOLDS))?;
    Some((times, between((HOLDS, HOLDS_S), latest(rating), times)))
}

/// How long a fuse bears a current at most before it blows; none below 110 % of its rating, where it holds.
///
/// Between 110 % and 135 % no gate says when it must have blown: there the line goes from a hundred hours to the gate.
pub fn longest(rating: Current, current: Current) -> Option<Time> {
    let (times, between) = latest_between(rating, current)?;
    Some(seconds(along(between, times)))
}

/// How [`longest`] is found.
pub fn longest_step(rating: Current, current: Current) -> Option<Step> {
    let (times, between) = latest_between(rating, current)?;
    let found = seconds(along(between, times));
    let (before, after) = between;
    let mut values = vec![
        ("I", current.show()),
        ("I_1", (rating * before.0).show()),
        ("t_1", seconds(before.1).show()),
    ];
    let Some(after) = after else { return Some(step(&MELTS, &values, found)) };
    values.extend([("I_2", (rating * after.0).show()), ("t_2", seconds(after.1).show())]);
    Some(step(&LONGEST, &values, found))
}

/// How long a fuse bears a current at least: for what an inrush may take.
///
/// A hundred hours at its rating, or at 110 % of it up to 30 A. Between that and 135 % it bears what takes as much heat as at 135 %.
pub fn shortest(rating: Current, current: Current) -> Time {
    let times = current.base().abs() / rating.base().max(1e-9);
    let (holds, gates): (f64, &[(f64, f64)]) = match rating.base() {
        up_to if up_to <= SMALL_A => (HOLDS, &SHORTEST_30),
        up_to if up_to <= REGULAR_A => (1.0, &SHORTEST_35),
        _ => (1.0, &SHORTEST_LARGE),
    };
    if times <= holds * (1.0 + 1e-9) {
        return seconds(HOLDS_S);
    }
    let Some(first) = gates.first() else { return seconds(0.0) };
    if times <= first.0 {
        return seconds(along((*first, None), times));
    }
    seconds(along(between(*first, gates, times), times))
}

/// What a temperature leaves of a rating; not more than all of it, and nothing where the line has come down to it.
fn rerated(ambient: Temperature) -> f64 {
    let at = ambient.base();
    let pair = RERATED.windows(2).find(|pair| matches!(pair, [_, (to, _)] if at <= *to));
    let pair = pair.or_else(|| RERATED.windows(2).next_back());
    let Some([(from, amperes_1), (to, amperes_2)]) = pair else { return 1.0 };
    let along = amperes_1 + (amperes_2 - amperes_1) * (at - from) / (to - from);
    (along / 40.0).clamp(0.0, 1.0)
}

/// What a fuse carries for long at a temperature. See [`CARRIES`].
pub fn carries(rating: Current, ambient: Temperature) -> Current {
    amperes(rating.base() * fuses::LASTING * rerated(ambient))
}

/// How [`carries`] is found.
pub fn carries_step(rating: Current, ambient: Temperature) -> Step {
    let values = [("I_fuse", rating.show()), ("f_T", share(rerated(ambient)).show())];
    step(&CARRIES, &values, carries(rating, ambient))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::celsius;

    #[track_caller]
    fn near(found: f64, expected: f64) {
        assert!((found - expected).abs() <= 1e-4 * expected, "{found} is not {expected}");
    }

    fn longest_s(rating: f64, current: f64) -> f64 {
        longest(amperes(rating), amperes(current)).expect("it blows").base()
    }

    fn shortest_s(rating: f64, current: f64) -> f64 {
        shortest(amperes(rating), amperes(current)).base()
    }

    /// By hand, of 10 A at 15 A, between 135 % (600 s) and 160 % (50 s): the share ln(1.5 / 1.35) / ln(1.6 / 1.35) = 0.62013, and
    /// 600 s × (50 / 600)^0.62013 = 128.49 s. At 12 A, between 110 % (360000 s) and 135 %: ln(1.2 / 1.1) / ln(1.35 / 1.1) = 0.42487,
    /// and 360000 s × (600 / 360000)^0.42487 = 23767 s.
    #[test]
    fn between_two_gates_lies_a_straight_line_of_the_logarithms() {
        near(longest_s(10.0, 15.0), 128.49);
        near(longest_s(10.0, 12.0), 23767.0);
        near(longest_s(10.0, 11.0), 360_000.0);
        assert_eq!(longest(amperes(10.0), amperes(10.99)), None);
        let step = longest_step(amperes(10.0), amperes(15.0)).expect("a step");
        assert_eq!(step.filled, "600 s × (50 s / 600 s)^(ln(15 A / 13.5 A) / ln(16 A / 13.5 A))");
    }

    /// By hand: ten times the current of the last gate in a hundredth of its time.
    #[test]
    fn beyond_the_last_gate_time_goes_with_the_square() {
        near(longest_s(10.0, 600.0), 0.1 / 100.0);
        near(longest_s(60.0, 3600.0), 1.0 / 100.0);
        near(shortest_s(10.0, 600.0), 0.02 / 100.0);
        let step = longest_step(amperes(10.0), amperes(600.0)).expect("a step");
        assert_eq!(step.symbols, MELTS.symbols);
    }

    #[test]
    fn a_fuse_holds_at_its_rating_and_blows_at_135_percent() {
        for rating in fuses::RATINGS_A {
            near(shortest_s(rating, rating), 360_000.0);
            let limit = if rating > 40.0 { 1800.0 } else { 600.0 };
            near(longest_s(rating, rating * BLOWS), limit);
            assert!(shortest_s(rating, rating * BLOWS) >= 0.749, "{rating} A");
        }
        near(shortest_s(10.0, 11.0), 360_000.0);
        // by hand: 0.75 s × (1.35 / 1.2)²
        near(shortest_s(10.0, 12.0), 0.94922);
    }

    /// What an older table beside it says of the same gates stays as it was.
    #[test]
    fn up_to_the_last_gate_it_is_what_is_told_of_held_coils() {
        for rating in [5.0, 10.0, 30.0, 50.0, 80.0] {
            for times in [1.4, 1.7, 2.5, 5.9] {
                let other = fuses::holds_for(amperes(rating), amperes(rating * times));
                near(longest_s(rating, rating * times), other.expect("it blows").base());
            }
        }
    }

    /// By hand, of the data sheet's 40 A: 34 A at 65 °C, 22 A at 125 °C; three quarters of them.
    #[test]
    fn a_hot_fuse_carries_less() {
        for (at, carried) in
            [(-40.0, 30.0), (20.0, 30.0), (65.0, 25.5), (75.0, 24.0), (125.0, 16.5)]
        {
            near(carries(amperes(40.0), celsius(at)).base(), carried);
        }
        assert!(carries(amperes(40.0), celsius(300.0)).base().abs() < 1e-12);
        let step = carries_step(amperes(20.0), celsius(85.0));
        assert_eq!((&*step.filled, &*step.result.shown), ("20 A × 75% × 75%", "11.3 A"));
    }
}
