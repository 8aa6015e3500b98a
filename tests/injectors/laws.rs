//! What must hold whatever the numbers.

use proptest::prelude::*;
use quietpin_core::{
    conditions::Conditions,
    injector::{
        InjectorInputs, On, answer,
        ballast::{self, BallastFit, BallastPlace, TOLERANCE},
        branch::{self, Ballast},
        opening::Opening,
    },
    quantity::{
        Area, Band, Holds, Inductance, Measure, amperes, celsius, henries, metres, ohms, volts,
    },
    tables::preferred::Series,
};

use super::bare;

/// The figures of the E24 series. Source: IEC 60063.
const E24: [f64; 24] = [
    1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6,
    6.2, 6.8, 7.5, 8.2, 9.1,
];

/// The figures of the E12 series. Source: IEC 60063.
const E12: [f64; 12] = [1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2];

pub(crate) fn band<Q: Measure + std::fmt::Debug>(
    low: f64,
    high: f64,
) -> impl Strategy<Value = Band<Q>> {
    (low..high, low..high)
        .prop_map(|(one, other)| Band::between(Q::from_base(one), Q::from_base(other)))
}

prop_compose! {
    fn any_conditions()(
        low in 5.0..9.0_f64, rest in 11.0..13.0_f64, high in 13.5..16.0_f64,
        cold in -40.0..10.0_f64, hot in 30.0..150.0_f64,
    ) -> Conditions {
        Conditions::between(Band { low: volts(low), nominal: volts(rest), high: volts(high) }, Band { low: celsius(cold), nominal: celsius(20.0), high: celsius(hot) })
    }
}

prop_compose! {
    pub(crate) fn any_inputs()(
        conditions in any_conditions(),
        resistance in 0.5..20.0_f64, tolerance in 0.0..0.1_f64,
        on_resistance in band(0.0, 0.3),
        length in band(0.0, 8.0), area_mm2 in 0.3..3.0_f64,
        contacts in band(0.0, 0.2),
        per_output in 1..5_u32, limit in 0.5..10.0_f64, opening in 0.1..2.0_f64,
    ) -> InjectorInputs {
        let mut inputs = bare(resistance);
        inputs.resistance = Band::with_tolerance(ohms(resistance), tolerance);
        inputs.output.on_resistance = on_resistance;
        inputs.output.limit = Some(Band::exact(amperes(limit)));
        inputs.opening_current = Some(Band::exact(amperes(opening)));
        inputs.wire.length = length;
        inputs.wire.area = Band::exact(Area::from_base(area_mm2 * 1e-6));
        inputs.wire.contacts = contacts;
        inputs.corners = conditions.corners();
        InjectorInputs { per_output, ..inputs }
    }
}

/// Where each tolerance stands between its ends, from 0 to 1.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Inside {
    pub(crate) resistance: f64,
    pub(crate) length: f64,
    pub(crate) on: f64,
    pub(crate) ballast: f64,
}

prop_compose! {
    pub(crate) fn anywhere()(
        resistance in 0.0..=1.0_f64, length in 0.0..=1.0_f64, on in 0.0..=1.0_f64, ballast in 0.0..=1.0_f64,
    ) -> Inside {
        Inside { resistance, length, on, ballast }
    }
}

pub(crate) fn within<Q: Measure>(band: Band<Q>, share: f64) -> f64 {
    band.low.base() + (band.high.base() - band.low.base()) * share
}

/// The current of one injector from first principles, with nothing of the core's.
pub(crate) fn current(
    inputs: &InjectorInputs,
    corner: usize,
    at: Inside,
    each: f64,
    shared: f64,
) -> f64 {
    let corner = &inputs.corners[corner];
    let copper = 1.0 + 0.00393 * (corner.temperature.base() - 20.0);
    let winding = within(inputs.resistance, at.resistance) * copper;
    let wire = within(inputs.wire.length, at.length) / 58e6 / inputs.wire.area.low.base() * copper;
    let contacts = within(inputs.wire.contacts, at.length);
    let n = f64::from(inputs.per_output);
    let branches = (winding + wire + contacts + each) / n;
    corner.supply.base() / (branches + shared + within(inputs.output.on_resistance, at.on)) / n
}

const ENDS: [Inside; 2] = [
    Inside { resistance: 0.0, length: 0.0, on: 0.0, ballast: 0.0 },
    Inside { resistance: 1.0, length: 1.0, on: 1.0, ballast: 1.0 },
];

/// Whether a resistor keeps the output inside its limit, and whether the injector opens, at every corner.
pub(crate) fn tried(
    inputs: &InjectorInputs,
    limit: f64,
    opening: f64,
    value: f64,
    place: BallastPlace,
) -> (bool, bool) {
    let n = f64::from(inputs.per_output);
    let at = |corner, end: Inside| {
        let resistor = value * (1.0 - TOLERANCE + 2.0 * TOLERANCE * end.ballast);
        let (each, shared) = match place {
            BallastPlace::EachInjector => (resistor, 0.0),
            BallastPlace::EachOutput => (0.0, resistor),
        };
        current(inputs, corner, end, each, shared)
    };
    let protects = (0..5).all(|corner| at(corner, ENDS[0]) * n <= limit * (1.0 + 1e-9));
    let opens = (0..5).all(|corner| at(corner, ENDS[1]) >= opening * (1.0 - 1e-9));
    (protects, opens)
}

/// Every value of a series from 0.1 Ω up.
fn values(series: Series) -> impl Iterator<Item = f64> {
    let figures: &[f64] = if series == Series::E24 { &E24 } else { &E12 };
    [0.1, 1.0, 10.0, 100.0, 1000.0]
        .into_iter()
        .flat_map(move |decade| figures.iter().map(move |figure| figure * decade))
}

fn series() -> impl Strategy<Value = Series> {
    prop_oneof![Just(Series::E12), Just(Series::E24)]
}

fn numbers(inputs: &InjectorInputs) -> (f64, f64) {
    let limit = inputs.output.limit.expect("any_inputs gives one").low.base();
    (limit, inputs.opening_current.expect("any_inputs gives one").high.base())
}

fn place() -> impl Strategy<Value = BallastPlace> {
    prop_oneof![Just(BallastPlace::EachInjector), Just(BallastPlace::EachOutput)]
}

proptest! {
    /// The ends are the ends: no point between them lets more or less through.
    #[test]
    fn no_inner_point_leaves_the_band(inputs in any_inputs(), at in anywhere(), corner in 0..5_usize) {
        let found = branch::at_corners(&inputs, &Ballast::NONE)[corner].injector;
        let inner = current(&inputs, corner, at, 0.0, 0.0);
        prop_assert!(inner >= found.low.base() * (1.0 - 1e-9), "{inner} below {found:?}");
        prop_assert!(inner <= found.high.base() * (1.0 + 1e-9), "{inner} above {found:?}");
    }

    #[test]
    fn more_supply_never_means_less_current(inputs in any_inputs(), more in 0.0..5.0_f64) {
        let before = branch::at_corners(&inputs, &Ballast::NONE);
        let mut raised = inputs.clone();
        for corner in &mut raised.corners {
            corner.supply = volts(corner.supply.base() + more);
        }
        for (before, after) in before.iter().zip(branch::at_corners(&raised, &Ballast::NONE)) {
            prop_assert!(after.output.high.base() >= before.output.high.base(), "at most");
            prop_assert!(after.output.low.base() >= before.output.low.base(), "at least");
        }
    }

    #[test]
    fn a_hotter_winding_never_takes_more(inputs in any_inputs(), warmer in 0.0..80.0_f64) {
        let before = branch::at_corners(&inputs, &Ballast::NONE);
        let mut heated = inputs.clone();
        for corner in &mut heated.corners {
            corner.temperature = celsius(corner.temperature.base() + warmer);
        }
        for (before, after) in before.iter().zip(branch::at_corners(&heated, &Ballast::NONE)) {
            prop_assert!(after.output.high.base() <= before.output.high.base(), "at most");
            prop_assert!(after.output.low.base() <= before.output.low.base(), "at least");
        }
    }

    /// The resistor is the smallest of the series that protects, and the injector opens behind it.
    #[test]
    fn an_offered_resistor_serves_and_no_smaller_one_would(inputs in any_inputs(), place in place(), series in series()) {
        let (limit, opening) = numbers(&inputs);
        let smallest = values(series).find(|value| tried(&inputs, limit, opening, *value, place).0);
        match ballast::fit(&inputs, &Opening::of(&inputs), amperes(limit), place, series) {
            BallastFit::Offered(resistor) => {
                let value = resistor.value.base();
                prop_assert_eq!(tried(&inputs, limit, opening, value, place), (true, true));
                let smallest = smallest.expect("there is one, since one is offered");
                prop_assert!((value - smallest).abs() < 1e-9 * value, "{} would do", smallest);
            }
            BallastFit::TooHot(_, heat) => prop_assert!(heat.base() > 125.0, "{heat:?} can be had"),
            BallastFit::Starves(_) | BallastFit::NoValue(_) => {
                let both = values(series).find(|value| tried(&inputs, limit, opening, *value, place) == (true, true));
                prop_assert_eq!(both, None, "this value does both");
            }
        }
    }

    /// Anywhere within the tolerances the resistor stays cooler than was said, and within half its rating.
    #[test]
    fn a_resistor_is_never_hotter_than_said(
        inputs in any_inputs(), place in place(), at in anywhere(), corner in 0..5_usize,
    ) {
        let (limit, _) = numbers(&inputs);
        let fit = ballast::fit(&inputs, &Opening::of(&inputs), amperes(limit), place, Series::E12);
        if let BallastFit::Offered(resistor) = fit {
            let value = resistor.value.base() * (1.0 - TOLERANCE + 2.0 * TOLERANCE * at.ballast);
            let through = match place {
                BallastPlace::EachInjector => current(&inputs, corner, at, value, 0.0),
                BallastPlace::EachOutput => {
                    current(&inputs, corner, at, 0.0, value) * f64::from(inputs.per_output)
                }
            };
            let heat = through * through * value;
            prop_assert!(heat <= resistor.heat.base() * (1.0 + 1e-9), "{heat} W in {value} Ω");
            prop_assert!(heat <= resistor.rating.base() / 2.0 * (1.0 + 1e-9), "{heat} W");
        }
    }

    /// The larger value that is named gives the margin and still opens.
    #[test]
    fn a_roomier_resistor_keeps_its_promise(inputs in any_inputs(), place in place()) {
        let (limit, opening) = numbers(&inputs);
        let fit = ballast::fit(&inputs, &Opening::of(&inputs), amperes(limit), place, Series::E12);
        if let BallastFit::Offered(resistor) = fit && let Some(roomier) = resistor.roomier {
            let found = tried(&inputs, limit * 0.9, opening, roomier.value.base(), place);
            prop_assert_eq!(found, (true, true), "{:?}", roomier);
        }
    }

    /// An output with the limit that is said to be needed is found to have margin.
    #[test]
    fn the_limit_needed_is_enough(mut inputs in any_inputs()) {
        inputs.output.limit = Some(Band::exact(answer(&inputs).limit_needed.limit));
        let On::PlainSwitch(carrying, _) = answer(&inputs).on else { panic!("a plain switch") };
        prop_assert!(carrying.has_margin(), "{carrying:?}");
    }

    /// Fewer on each output, done, leaves nothing to cure; one more would not.
    #[test]
    fn fewer_on_an_output_is_as_many_as_it_bears(inputs in any_inputs()) {
        let On::PlainSwitch(_, cures) = answer(&inputs).on else { panic!("a plain switch") };
        if let Some(fewer) = cures.fewer {
            let with = |per_output| match answer(&InjectorInputs { per_output, ..inputs.clone() }).on {
                On::PlainSwitch(carrying, _) => carrying.has_margin(),
                _ => false,
            };
            prop_assert!(with(fewer.per_output), "{fewer:?} is no cure");
            prop_assert!(!with(fewer.per_output + 1), "one more than {fewer:?} would do");
        }
    }

    /// A battery at the voltage that opens an injector does open it at the hottest corner.
    #[test]
    fn the_voltage_that_opens_one_does(inputs in any_inputs()) {
        let found = answer(&inputs);
        let mut supplied = inputs.clone();
        for corner in &mut supplied.corners {
            corner.supply = found.opens_from.supply;
        }
        prop_assert_eq!(answer(&supplied).may_not_open, Holds::Never);
    }

    #[test]
    fn a_time_to_open_is_there_wherever_it_opens(mut inputs in any_inputs(), millihenries in band::<Inductance>(0.5, 20.0)) {
        inputs.inductance = Some(Band {
            low: henries(millihenries.low.base() * 1e-3),
            nominal: henries(millihenries.nominal.base() * 1e-3),
            high: henries(millihenries.high.base() * 1e-3),
        });
        let found = answer(&inputs);
        let rises = found.rises;
        for (rise, at) in rises.iter().zip(&found.corners) {
            let opens = at.injector.low.base() > found.opening.current.high.base();
            prop_assert_eq!(rise.longest.is_some(), opens, "{:?}", at);
            if let (Some(nominal), Some(longest)) = (rise.nominal, rise.longest) {
                prop_assert!(longest.base() >= nominal.base(), "{longest:?} before {nominal:?}");
            }
        }
    }

    #[test]
    fn a_longer_wire_never_carries_more(inputs in any_inputs(), more in 0.0..10.0_f64) {
        let mut longer = inputs.clone();
        longer.wire.length = Band {
            low: metres(inputs.wire.length.low.base() + more),
            nominal: metres(inputs.wire.length.nominal.base() + more),
            high: metres(inputs.wire.length.high.base() + more),
        };
        let (short, long) = (answer(&inputs).highest, answer(&longer).highest);
        prop_assert!(long.output.high.base() <= short.output.high.base(), "more through more wire");
    }
}

proptest! {
    /// A resistor that stands in the plan is one that was tried: the same currents at each corner, bit for bit.
    #[test]
    fn a_resistor_that_is_fitted_is_as_it_was_tried(inputs in any_inputs(), value in 0.1..10.0_f64) {
        let typed = ballast::as_bought(Band::exact(ohms(value)));
        let fitted = InjectorInputs { resistor: typed, ..inputs.clone() };
        let tried = Ballast { each: typed, ..Ballast::NONE };
        prop_assert_eq!(branch::at_corners(&fitted, &Ballast::NONE), branch::at_corners(&inputs, &tried));
        // Source: University Physics, vol. 2, section 9.5: P = I²R
        let (heat, _) = ballast::heat_of_fitted(&fitted).expect("there is one");
        let most = (0..5)
            .flat_map(|corner| [0.0, 0.5, 1.0].map(|at| {
                let resistor = within(typed, at);
                let current = current(&inputs, corner, ENDS[0], resistor, 0.0);
                current * current * resistor
            }))
            .fold(0.0, f64::max);
        prop_assert!(heat.base() >= most * (1.0 - 1e-9), "{} W against {most} W", heat.base());
    }

    /// What is offered for injectors that have resistors already is what is offered for them without.
    #[test]
    fn a_fitted_resistor_is_replaced_not_added_to(inputs in any_inputs(), value in 0.1..2.0_f64) {
        let fitted = InjectorInputs { resistor: ballast::as_bought(Band::exact(ohms(value))), ..inputs.clone() };
        let (On::PlainSwitch(carrying, with), On::PlainSwitch(_, without)) = (answer(&fitted).on, answer(&inputs).on) else {
            return Err(TestCaseError::fail("a plain switch"));
        };
        // one that is enough asks for nothing
        prop_assume!(carrying.over != Holds::Never && !carrying.is_hair);
        prop_assert_eq!(with.each, without.each);
    }
}
