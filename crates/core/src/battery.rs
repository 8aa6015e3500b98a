//! How long a battery lasts while the car stands.
//!
//! **Where the line is drawn.** The battery of a starter is there to crank: taken below half of what it holds it may not,
//! and each time it takes harm. So what is asked is the time until half is gone; common practice, no source.
//!
//! What is printed on a battery is what it gives within twenty hours. A parked car draws far less at a time and gets more
//! out of it, so that the time found is on the safe side. What the battery loses by itself is not counted: within a year
//! that is as much, and no time longer than that means anything.

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
/// Within a year a battery loses half of its charge by itself: common practice, no source.
const MOST_DAYS: f64 = 365.0;
/// No meter in a battery's lead shows less than this, in amperes; and nothing lasts without end.
const LEAST_A: f64 = 1e-6;

/// Source: charge is current times time (University Physics, vol. 2, section 9.1).
const UNTIL_HALF: Formula = Formula {
    symbols: "t = k × C / I",
    source: "charge is current times time; k = a half, since a starter battery drained further may not crank and is \
             harmed: common practice, no source. On the safe side: a small current gets more out of a battery than the \
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
    let time = |capacity: Charge, drain: Current| -> Time {
        capacity * half() / amperes(drain.base().max(LEAST_A))
    };
    Band {
        low: time(capacity.low, drain.high),
        nominal: time(capacity.nominal, drain.nominal),
        high: time(capacity.high, drain.low),
    }
}

/// What it gives within thirty days.
pub fn in_a_month(drain: Current) -> Charge {
    drain * seconds(30.0 * DAY_S)
}

/// How the least of it was found.
pub fn working(capacity: &Band<Charge>, drain: &Band<Current>) -> Step {
    let values = [("k", half().show()), ("C", capacity.low.show()), ("I", drain.high.show())];
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

    /// By hand: half of 60 Ah is 30 Ah; 30 Ah / 0.05 A = 600 h = 25 days.
    #[test]
    fn half_of_sixty_ampere_hours_lasts_twenty_five_days_at_fifty_milliamperes() {
        let time = until_half(&Band::exact(ampere_hours(60.0)), &Band::exact(amperes(0.05)));
        assert!((time.nominal.base() - 600.0 * HOUR_S).abs() < 1e-6, "{}", time.nominal.base());
        assert_eq!(time.low, time.high);
        assert_eq!(shown(time.nominal).shown, "25 days");
        assert_eq!(standstill(time.low), Standstill::Long);
    }

    /// By hand: 0.5 × 50 Ah / 0.1 A = 250 h; 0.5 × 70 Ah / 0.02 A = 1750 h.
    #[test]
    fn the_least_capacity_meets_the_highest_drain() {
        let capacity = Band::between(ampere_hours(50.0), ampere_hours(70.0));
        let time = until_half(&capacity, &Band::between(amperes(0.02), amperes(0.1)));
        assert!((time.low.base() / HOUR_S - 250.0).abs() < 1e-6, "{}", time.low.base());
        assert!((time.high.base() / HOUR_S - 1750.0).abs() < 1e-6, "{}", time.high.base());
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

    /// Nothing that draws lasts without end: a report holds no number without limit.
    #[test]
    fn no_drain_at_all_lasts_more_than_a_year() {
        let time = until_half(&Band::exact(ampere_hours(500.0)), &Band::exact(amperes(0.0)));
        assert!(time.high.base().is_finite(), "it is a number");
        assert_eq!(shown(time.low).shown, "more than a year");
    }

    #[test]
    fn the_lines_are_a_day_and_a_fortnight() {
        let at = |days: f64| standstill(seconds(days * DAY_S));
        assert_eq!(at(0.99), Standstill::Overnight);
        assert_eq!([at(1.0), at(13.99)], [Standstill::Short; 2]);
        assert_eq!(at(14.0), Standstill::Long);
    }
}
