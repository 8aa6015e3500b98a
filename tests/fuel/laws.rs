//! What must hold whatever the numbers.

use proptest::prelude::*;
use quietpin_core::{
    fuel::{
        DeliveryEnd, FuelInputs, InjectionPace, Regulator, answer,
        flow::{InjectorSet, Rated},
    },
    quantity::{Band, Dimension, Holds, Measure, Power, Pressure, Time},
};

fn band<Q: Measure + std::fmt::Debug>(low: f64, high: f64) -> impl Strategy<Value = Band<Q>> {
    (low..high, 0.0..0.1_f64)
        .prop_map(|(nominal, share)| Band::with_tolerance(Q::from_base(nominal), share))
}

fn rated() -> impl Strategy<Value = Rated> {
    prop_oneof![band(1e-6, 4e-5).prop_map(Rated::Volume), band(1e-3, 3e-2).prop_map(Rated::Mass),]
}

prop_compose! {
    fn pace()(speed in band(1000.0, 15000.0), every_turn in any::<bool>(), two_stroke in any::<bool>()) -> InjectionPace {
        let turns_of_cycle = if two_stroke { 1 } else { 2 };
        InjectionPace { speed, turns: if every_turn { 1 } else { turns_of_cycle }, turns_of_cycle }
    }
}

prop_compose! {
    fn any_inputs()(
        sets in proptest::collection::vec((1..16_u32, rated()).prop_map(|(count, flow)| InjectorSet { count, flow }), 1..3),
        stated_at in band(1e5, 6e5), rail in band(1e5, 8e5), boost in band(0.0, 3e5),
        test_density in band(650.0, 850.0), density in band(700.0, 800.0),
        regulator in prop_oneof![Just(Regulator::Referenced), Just(Regulator::Fixed)],
        consumption in band(5e-8, 3e-7), duty_limit in band(0.6, 0.9), dead_time in band(0.0, 3e-3),
        pace in proptest::option::of(pace()), power in band(1e4, 1e6),
    ) -> FuelInputs {
        let power = Some(power);
        FuelInputs {
            sets, stated_at, test_density, density, rail, boost, regulator, consumption, duty_limit, dead_time, pace, power,
            is_dead_time_given: true,
        }
    }
}

/// A band as it may be inside its ends.
fn inside<Q: Measure>(band: Band<Q>, share: f64) -> Band<Q> {
    Band::exact(Q::from_base(band.low.base() + (band.high.base() - band.low.base()) * share))
}

proptest! {
    #[test]
    fn more_pressure_never_passes_less(inputs in any_inputs(), more in 0.0..5e5_f64) {
        let raised = inputs.rail.map(|rail: Pressure| Pressure::from_base(rail.base() + more));
        let (before, after) = (answer(&inputs), answer(&FuelInputs { rail: raised, ..inputs }));
        for end in DeliveryEnd::ALL {
            prop_assert!(after.at(end).all >= before.at(end).all, "{end:?}");
            prop_assert!(after.at(end).feeds >= before.at(end).feeds, "{end:?}");
        }
    }

    /// The power that they feed is the one whose duty is the limit.
    #[test]
    fn power_and_duty_are_each_other_s_inverse(inputs in any_inputs()) {
        let found = answer(&inputs);
        for end in DeliveryEnd::ALL {
            let at = found.at(end);
            if at.feeds.base() < 1.0 {
                continue;
            }
            let power = Some(Band::exact(at.feeds));
            let again = answer(&FuelInputs { power, ..inputs.clone() });
            let duty = again.at(end).duty.expect("something flows").base();
            prop_assert!((duty - at.duty_limit.base()).abs() < 1e-9, "{end:?}: {duty}");
        }
    }

    /// The ends are the ends: nothing between them is leaner or richer.
    #[test]
    fn no_inner_point_leaves_the_band(inputs in any_inputs(), at in proptest::array::uniform12(0.0..=1.0_f64)) {
        let sets = inputs.sets.iter().map(|set| InjectorSet {
            flow: match set.flow {
                Rated::Volume(band) => Rated::Volume(inside(band, at[0])),
                Rated::Mass(band) => Rated::Mass(inside(band, at[0])),
            },
            ..*set
        });
        let inner = FuelInputs {
            sets: sets.collect(),
            stated_at: inside(inputs.stated_at, at[1]),
            test_density: inside(inputs.test_density, at[2]),
            density: inside(inputs.density, at[3]),
            rail: inside(inputs.rail, at[4]),
            boost: inside(inputs.boost, at[5]),
            consumption: inside(inputs.consumption, at[6]),
            duty_limit: inside(inputs.duty_limit, at[7]),
            dead_time: inside(inputs.dead_time, at[8]),
            pace: inputs.pace.map(|it| InjectionPace { speed: inside(it.speed, at[9]), ..it }),
            power: inputs.power.map(|it| inside(it, at[10])),
            ..inputs
        };
        let (found, inner) = (answer(&inputs), answer(&inner).nominal);
        let slack = 1.0 + 1e-9;
        prop_assert!(inner.all.base() * slack >= found.least.all.base(), "less than the least");
        prop_assert!(inner.all.base() <= found.most.all.base() * slack, "more than the most");
        prop_assert!(inner.feeds.base() * slack >= found.least.feeds.base(), "feeds less than the least");
        prop_assert!(inner.feeds.base() <= found.most.feeds.base() * slack, "feeds more than the most");
        if found.runs_out == Holds::Never && !found.is_stopped() {
            prop_assert!(!inner.runs_out(), "it was said to be enough");
        }
        if found.runs_out == Holds::Always {
            prop_assert!(inner.runs_out(), "it was said to run out everywhere");
        }
    }

    /// What is offered was solved: applied, it leaves nothing to cure.
    #[test]
    fn a_cure_cures(inputs in any_inputs()) {
        let found = answer(&inputs);
        let runs_out = |inputs: &FuelInputs| answer(inputs).runs_out != Holds::Never;
        if let Some(pressure) = &found.cures.pressure {
            let factor = pressure.rail.base() / inputs.rail.nominal.base();
            let rail = inputs.rail.map(|it: Pressure| Pressure::from_base(it.base() * factor));
            prop_assert!(!runs_out(&FuelInputs { rail, ..inputs.clone() }), "at {:?}", pressure.rail);
        }
        if let Some(larger) = &found.cures.larger {
            let nominal = |flow| match flow {
                Rated::Volume(band) => band.nominal.base(),
                Rated::Mass(band) => band.nominal.base(),
            };
            let factor = nominal(larger.flow) / nominal(inputs.sets[0].flow);
            let sets = inputs.sets.iter().map(|set| InjectorSet { flow: set.flow.times(factor), ..*set });
            prop_assert!(!runs_out(&FuelInputs { sets: sets.collect(), ..inputs.clone() }), "{factor} times");
        }
        if found.cures.in_sequence {
            let pace = inputs.pace.map(|it| InjectionPace { turns: it.turns_of_cycle, ..it });
            prop_assert!(!runs_out(&FuelInputs { pace, ..inputs.clone() }), "in sequence");
        }
        let less = found.least.feeds.base() * (1.0 - 1e-9);
        if less > 0.0 {
            let power = Some(Band::exact(Power::from_base(less)));
            prop_assert!(!runs_out(&FuelInputs { power, ..inputs }), "with less power");
        }
    }

    #[test]
    fn a_longer_dead_time_never_feeds_more(inputs in any_inputs(), more in 0.0..2e-3_f64) {
        let dead_time = inputs.dead_time.map(|it: Time| Time::from_base(it.base() + more));
        let (before, after) = (answer(&inputs), answer(&FuelInputs { dead_time, ..inputs }));
        prop_assert!(after.least.feeds <= before.least.feeds);
        prop_assert!(after.least.duty.map(Measure::base) >= before.least.duty.map(Measure::base));
    }

    /// There and back in every unit of the new dimensions.
    #[test]
    fn a_unit_is_left_as_it_was_entered(number in 1e-3..1e6_f64, at in any::<prop::sample::Index>()) {
        let dimensions = [
            Dimension::Pressure, Dimension::Flow, Dimension::MassFlow, Dimension::Density, Dimension::Consumption,
            Dimension::Power,
        ];
        for dimension in dimensions {
            let unit = at.get(dimension.units());
            let base = dimension.in_base(number, unit.spelling).expect(unit.spelling);
            let shown = dimension.shown_in(base, unit.spelling);
            let expected = format!("{} {}", quietpin_core::quantity::number(base / unit.factor), unit.spelling);
            prop_assert_eq!(&shown, &expected);
            prop_assert!((base / unit.factor - number).abs() <= 1e-12 * number, "{}", unit.spelling);
        }
    }
}
