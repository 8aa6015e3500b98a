//! How long a battery lasts while the car stands.
//!
//! **Where the line is drawn.** The battery of a starter is there to crank: taken below half of what it holds it may not,
//! and each time it takes harm. So what is asked is the time until half is gone; common practice, no source.
//!
//! What is printed on a battery is what it gives within twenty hours. A parked car draws far less at a time and gets more
//! out of it, so that the time found is on the safe side.
//!
//! A lead battery, flooded or with its acid in mats, loses 3 to 5 % of its charge a month by itself at 20 to 25 °C; warmer, more,
//! and colder, less: common practice, from memory. That is counted beside what draws.

use crate::{
    quantity::{
        Band, Charge, Current, Measure, Ratio, Time, Value, amperes, number, seconds, share,
    },
    working::{Formula, Step, step},
};

const HOUR_S: f64 = 3600.0;
const DAY_S: f64 = 24.0 * HOUR_S;
/// Below so many days hours say more.
const FEW_DAYS: f64 = 2.0;
/// Longer than that nobody leaves a car and expects it to start.
const MOST_DAYS: f64 = 365.0;
/// A month, as a fitter reckons.
const MONTH_S: f64 = 30.0 * DAY_S;
/// The part of its capacity that a lead battery loses by itself a month: from memory.
const LOST_A_MONTH: [f64; 3] = [0.03, 0.04, 0.05];
/// No meter in a battery's lead shows less than this, in amperes; and nothing lasts without end.
const LEAST_A: f64 = 1e-6;

/// Source: charge is current times time (University Physics, vol. 2, section 9.1).
const UNTIL_HALF: Formula = Formula {
    symbols: "t = k × C / (I + s × C)",
    source: "charge is current times time; k = a half, since a starter battery drained further may not crank and is \
             harmed: common practice, no source; s = what a lead battery loses by itself, 3 to 5% a month at 20 to 25 °C: \
             common practice, from memory. On the safe side: a small current gets more out of a battery than the \
             20 hours that its capacity is stated for",
};

/// How long it lasts is enough, or is not.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standstill {
    /// Less than a day: it is flat the next morning.
    Overnight,
    /// Less than a fortnight.
    Short,
    /// A fortnight or more: common practice, no source.
    Long,
}

/// The part of its capacity that may be gone.
fn half() -> Ratio {
    share(0.5)
}

/// The time until half the capacity is gone: the least with the least capacity and the highest drain.
pub fn until_half(capacity: &Band<Charge>, drain: &Band<Current>) -> Band<Time> {
    let time = |capacity: Charge, drain: Current, lost: f64| -> Time {
        let by_itself: Current = capacity * share(lost) / seconds(MONTH_S);
        capacity * half() / amperes((drain + by_itself).base().max(LEAST_A))
    };
    let [least, usual, most] = LOST_A_MONTH;
    Band {
        low: time(capacity.low, drain.high, most),
        nominal: time(capacity.nominal, drain.nominal, usual),
        high: time(capacity.high, drain.low, least),
    }
}

/// The most that it loses by itself within thirty days.
pub fn lost_in_a_month(capacity: Charge) -> Charge {
    let [.., most] = LOST_A_MONTH;
    capacity * share(most)
}

/// What it gives within thirty days.
pub fn in_a_month(drain: Current) -> Charge {
    drain * seconds(MONTH_S)
}

/// How the least of it was found.
pub fn working(capacity: &Band<Charge>, drain: &Band<Current>) -> Step {
    let [.., most] = LOST_A_MONTH;
    let lost = share(most).show();
    let lost_said = format!("{} a month", lost.shown);
    let values = [
        ("k", half().show()),
        ("C", capacity.low.show()),
        ("I", drain.high.show()),
        ("s", lost.said(lost_said)),
    ];
    step(&UNTIL_HALF, &values, shown(until_half(capacity, drain).low))
}

/// Whether that is enough.
pub fn standstill(time: Time) -> Standstill {
    match time.base() / DAY_S {
        days if days < 1.0 => Standstill::Overnight,
        days if days < 14.0 => Standstill::Short,
        _ => Standstill::Long,
    }
}

/// A time as it is said of a parked car: days, or hours where these are few.
pub fn shown(time: Time) -> Value {
    let days = time.base() / DAY_S;
    let said = |count: f64, one: &str, many: &str| {
        let figure = number(count);
        let unit = if figure == "1" { one } else { many };
        [figure.as_str(), unit].join(" ")
    };
    time.show().said(if days > MOST_DAYS {
        "more than a year".to_owned()
    } else if days < FEW_DAYS {
        said(time.base() / HOUR_S, "hour", "hours")
    } else {
        said(days, "day", "days")
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::ampere_hours;

    /// By hand: half of 60 Ah is 30 Ah; 4 % of 60 Ah a month are 2.4 Ah in 720 h, 3.33 mA; 30 Ah / 53.3 mA = 562.5 h.
    #[test]
    fn half_of_sixty_ampere_hours_lasts_twenty_three_days_at_fifty_milliamperes() {
        let time = until_half(&Band::exact(ampere_hours(60.0)), &Band::exact(amperes(0.05)));
        assert!((time.nominal.base() - 562.5 * HOUR_S).abs() < 1e-6, "{}", time.nominal.base());
        assert_eq!(shown(time.nominal).shown, "23.4 days");
        assert_eq!(standstill(time.low), Standstill::Long);
    }

    /// By hand: 0.5 × 50 Ah / (100 mA + 50 Ah × 5 % / 720 h) = 25 Ah / 103.47 mA = 241.6 h; 35 Ah / (20 mA + 2.917 mA) =
    /// 1527.3 h.
    #[test]
    fn the_least_capacity_meets_the_highest_drain() {
        let capacity = Band::between(ampere_hours(50.0), ampere_hours(70.0));
        let time = until_half(&capacity, &Band::between(amperes(0.02), amperes(0.1)));
        assert!((time.low.base() / HOUR_S - 241.611).abs() < 1e-3, "{}", time.low.base());
        assert!((time.high.base() / HOUR_S - 1527.273).abs() < 1e-3, "{}", time.high.base());
    }

    /// By hand: with nothing that draws, half is gone after 10 months at 5 % of it a month, whatever its size.
    #[test]
    fn a_battery_that_nothing_draws_from_empties_by_itself() {
        for capacity in [20.0, 60.0] {
            let capacity = ampere_hours(capacity);
            let time = until_half(&Band::exact(capacity), &Band::exact(amperes(0.0)));
            assert_eq!(shown(time.low).shown, "300 days");
            assert!((time.high.base() / DAY_S - 500.0).abs() < 1e-6, "{}", time.high.base());
            assert!((lost_in_a_month(capacity).base() / capacity.base() - 0.05).abs() < 1e-12);
        }
    }

    /// By hand: 0.1 A × 30 × 24 h = 72 Ah.
    #[test]
    fn a_tenth_of_an_ampere_takes_seventy_two_ampere_hours_a_month() {
        assert_eq!(in_a_month(amperes(0.1)).show().shown, "72 Ah");
    }

    #[test]
    fn a_time_is_said_in_days_or_in_hours() {
        for (hours, expected) in [
            (0.1, "0.1 hours"),
            (1.0, "1 hour"),
            (47.0, "47 hours"),
            (48.0, "2 days"),
            (600.0, "25 days"),
            (8760.0, "365 days"),
            (8761.0, "more than a year"),
        ] {
            assert_eq!(shown(seconds(hours * HOUR_S)).shown, expected);
        }
    }

    #[test]
    fn the_lines_are_a_day_and_a_fortnight() {
        let at = |days: f64| standstill(seconds(days * DAY_S));
        assert_eq!(at(0.99), Standstill::Overnight);
        assert_eq!([at(1.0), at(13.99)], [Standstill::Short; 2]);
        assert_eq!(at(14.0), Standstill::Long);
    }
}
