use proptest::prelude::*;

use super::*;
use crate::engine::Spacing;

fn six() -> Engine {
    Engine::new(EngineKind::FourStroke, 6, &[1, 5, 3, 6, 2, 4], &Spacing::Even).expect("an engine")
}

/// Locked at 10 degrees, read to within 2, on a wheel of 60.
fn readings(seen: &[(u32, f64)]) -> Readings {
    Readings {
        advance: CrankAngle::new(10.0),
        seen: seen.iter().map(|&(cylinder, it)| (cylinder, CrankAngle::new(it))).collect(),
        tolerance: CrankAngle::new(2.0),
        offset: Some(CrankAngle::new(84.0)),
        positions: Some(60),
        stroke: None,
    }
}

#[track_caller]
fn check(readings: &Readings, error: f64, expected: &[Cause]) {
    match finding(&six(), readings) {
        LightFinding::Constant(found, causes) => {
            assert!(found.is_near(CrankAngle::new(error)), "{found:?}");
            assert_eq!(causes, expected);
        }
        other => panic!("{other:?}"),
    }
}

/// Source: geometry of one turn; the wheel of 60 has a position each 6 degrees, its other edge stands 3 away.
#[test]
fn each_cause_is_known_by_its_error() {
    let seen = |it: f64| readings(&[(1, it), (5, it), (3, it)]);
    check(&seen(10.0), 0.0, &[Cause::Right, Cause::Turn]);
    check(&seen(7.0), 3.0, &[Cause::Edge, Cause::Offset]);
    check(&seen(4.0), 6.0, &[Cause::Teeth(1), Cause::Offset]);
    check(&seen(22.0), -12.0, &[Cause::Teeth(-2), Cause::Offset]);
    // twice 84 degrees late
    check(&seen(-158.0), 168.0, &[Cause::Sign, Cause::Offset]);
    // a third of a turn late: the second to fire is taken for the first, or the one a turn after it
    check(&seen(-110.0), 120.0, &[Cause::Reference(5), Cause::Reference(2), Cause::Offset]);
    check(&seen(-30.0), 40.0, &[Cause::Offset]);
}

#[test]
fn the_stroke_tells_a_turn_from_none() {
    let with = |stroke| Readings { stroke, ..readings(&[(1, 10.0), (6, 11.0)]) };
    check(&with(Some(SparkStroke::Compression)), -0.5, &[Cause::Right]);
    check(&with(Some(SparkStroke::Exhaust)), -0.5, &[Cause::Turn]);
}

#[test]
fn a_position_of_the_wheel_is_worked_out_where_the_wheel_is_known() {
    let steps_with = |positions| {
        let seen = readings(&[(1, 10.0), (5, 10.0)]);
        steps(&Readings { positions, ..seen }).len()
    };
    assert_eq!([steps_with(None), steps_with(Some(0)), steps_with(Some(60))], [2, 2, 3]);
}

#[test]
fn one_reading_is_too_few() {
    assert_eq!(finding(&six(), &readings(&[(1, 10.0)])), LightFinding::TooFew);
}

/// 5 and 3 are a third of a turn apart: exchanged, one is seen that much late and the other that much early.
#[test]
fn exchanged_leads_are_seen_as_angles_between_firings() {
    let LightFinding::Mixed(givers) =
        finding(&six(), &readings(&[(1, 10.0), (5, -110.0), (3, 130.0)]))
    else {
        panic!("not mixed");
    };
    assert_eq!(givers[1], (5, vec![3, 4]), "3, or its companion 4, which the mark can't tell");
    assert_eq!(givers[2], (3, vec![5, 2]));
}

#[test]
fn what_no_exchange_explains_is_scatter() {
    assert_eq!(finding(&six(), &readings(&[(1, 10.0), (5, 25.0)])), LightFinding::Scattered);
}

proptest! {
    /// A constant error, planted, comes out whatever the cylinders, the advance and the hand that reads.
    #[test]
    fn a_planted_error_is_found(
        planted in -179.0..180.0_f64,
        advance in -10.0..40.0_f64,
        slips in proptest::collection::vec(-1.9..1.9_f64, 2..6),
    ) {
        let seen = (1..).zip(&slips).map(|(it, slip)| (it, CrankAngle::new(advance - planted + slip)));
        let readings = Readings {
            advance: CrankAngle::new(advance),
            seen: seen.collect(),
            ..readings(&[])
        };
        let LightFinding::Constant(error, causes) = finding(&six(), &readings) else {
            return Err(TestCaseError::fail("not constant"));
        };
        let off = (error - CrankAngle::new(planted)).as_error(TURN).degrees().abs();
        prop_assert!(off < 1.9 + 1e-9, "{error:?} for {planted}");
        prop_assert!(!causes.is_empty());
    }
}
