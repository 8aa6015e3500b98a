use super::*;
use EngineKind::{FourStroke, Rotary, TwoStroke};

fn angles(degrees: &[f64]) -> Spacing {
    Spacing::Angles(degrees.iter().copied().map(CrankAngle::new).collect())
}

#[track_caller]
fn check_misfit(cylinders: u32, order: &[u32], spacing: &Spacing, expected: Misfit) {
    assert_eq!(Engine::new(FourStroke, cylinders, order, spacing), Err(expected), "{order:?}");
}

#[track_caller]
fn check_companions(engine: &Engine, expected: &[Option<u32>]) {
    let companions: Vec<_> = (1..=engine.cylinders()).map(|it| engine.companion(it)).collect();
    assert_eq!(companions, expected, "{:?}", engine.order());
    for (cylinder, companion) in (1..).zip(companions) {
        let back = companion.map(|it| engine.companion(it));
        assert!(back.is_none_or(|it| it == Some(cylinder)), "{cylinder} is not paired both ways");
    }
}

#[test]
fn a_straight_six_pairs_first_with_last() {
    let six = Engine::new(FourStroke, 6, &[1, 5, 3, 6, 2, 4], &Spacing::Even).expect("an engine");
    check_companions(&six, &[Some(6), Some(5), Some(4), Some(3), Some(2), Some(1)]);
    assert!(six.is_even() && six.has_companions(), "even, with companions");
}

#[test]
fn three_cylinders_have_no_companions() {
    let three = Engine::new(FourStroke, 3, &[1, 3, 2], &Spacing::Even).expect("an engine");
    check_companions(&three, &[None, None, None]);
    assert_eq!(three.interval_after(2), Some(CrankAngle::new(240.0)), "from the last to the first");
}

#[test]
fn cylinders_that_fire_together_pair_one_to_one() {
    let four = Engine::new(FourStroke, 4, &[1, 4, 2, 3], &angles(&[0.0, 0.0, 360.0, 360.0]));
    check_companions(&four.expect("an engine"), &[Some(2), Some(1), Some(4), Some(3)]);
}

#[test]
fn with_a_cycle_of_one_turn_only_cylinders_that_fire_together_are_companions() {
    for kind in [TwoStroke, Rotary] {
        let two = Engine::new(kind, 2, &[1, 2], &Spacing::Even).expect("an engine");
        assert_eq!(two.angle_of(2), Some(CrankAngle::new(180.0)), "{kind:?}");
        check_companions(&two, &[None, None]);
        let together = Engine::new(kind, 4, &[1, 2, 3, 4], &angles(&[0.0, 0.0, 0.0, 180.0]));
        check_companions(&together.expect("an engine"), &[Some(2), Some(1), None, None]);
    }
}

#[test]
fn the_nearest_cylinder_tells_how_far_a_shared_spark_would_miss() {
    let odd = angles(&[0.0, 90.0, 240.0, 330.0, 480.0, 570.0]);
    let six = Engine::new(FourStroke, 6, &[1, 6, 5, 4, 3, 2], &odd).expect("an engine");
    check_companions(&six, &[None; 6]);
    assert_eq!(six.nearest_companion(1), Some((4, CrankAngle::new(-30.0))), "330 is 30 short");
    let one = Engine::new(FourStroke, 1, &[1], &Spacing::Even).expect("an engine");
    assert_eq!(one.nearest_companion(1), None, "alone");
}

#[test]
fn an_order_that_is_none_is_refused() {
    let even = &Spacing::Even;
    check_misfit(0, &[], even, Misfit::Cylinders(0));
    check_misfit(17, &[1], even, Misfit::Cylinders(17));
    check_misfit(4, &[1, 3, 4], even, Misfit::OrderLength { entries: 3, cylinders: 4 });
    check_misfit(4, &[1, 3, 5, 2], even, Misfit::NoSuchCylinder(5));
    check_misfit(4, &[1, 3, 0, 2], even, Misfit::NoSuchCylinder(0));
    check_misfit(4, &[1, 3, 4, 3], even, Misfit::Twice { cylinder: 3, missing: 2 });
}

#[test]
fn angles_that_do_not_fit_the_cycle_are_refused() {
    let (one, two) = (CrankAngle::new(300.0), CrankAngle::new(480.0));
    check_misfit(2, &[1, 2], &angles(&[0.0]), Misfit::AngleCount { angles: 1, cylinders: 2 });
    check_misfit(2, &[1, 2], &angles(&[300.0, 480.0]), Misfit::FirstAngle(one));
    let falling = Misfit::Falling { angle: one, before: two };
    check_misfit(3, &[1, 2, 3], &angles(&[0.0, 480.0, 300.0]), falling);
    let beyond = Misfit::BeyondCycle(CrankAngle::new(720.0));
    check_misfit(2, &[1, 2], &angles(&[0.0, 720.0]), beyond);
    let none = Engine::new(FourStroke, 2, &[1, 2], &angles(&[0.0, f64::NAN]));
    assert!(matches!(none, Err(Misfit::Falling { .. })), "not a number: {none:?}");
}

#[test]
fn banks_hold_each_cylinder_once() {
    let six = Engine::new(FourStroke, 6, &[1, 2, 3, 4, 5, 6], &Spacing::Even).expect("an engine");
    let with = |banks: &[&[u32]]| {
        six.clone().with_banks(banks.iter().map(|bank| bank.to_vec()).collect()).map(|_| ())
    };
    assert_eq!(with(&[&[1, 3, 5], &[2, 4, 6]]), Ok(()));
    assert_eq!(with(&[&[1, 3, 5], &[2, 4]]), Err(Misfit::BankMissing(6)));
    assert_eq!(with(&[&[1, 3, 5], &[2, 3, 6]]), Err(Misfit::BankStray(3)));
    assert_eq!(with(&[&[1, 3, 5], &[2, 4, 7]]), Err(Misfit::BankStray(7)));
}
