use super::*;

fn degrees(list: &[f64]) -> Vec<CrankAngle> {
    list.iter().copied().map(CrankAngle::new).collect()
}

fn crank(rows: &[&[u32]], banks: &[f64], pins: &[f64], split: f64) -> Geometry {
    let rows = rows.iter().map(|row| row.to_vec()).collect();
    Geometry::new(rows, degrees(banks), degrees(pins), CrankAngle::new(split)).expect("a crank")
}

#[track_caller]
fn check(kind: EngineKind, crank: &Geometry, order: &[u32], expected: &[f64], others: &[&[f64]]) {
    let turns = turns(kind, order, &crank.tops()).expect("it fires");
    assert_eq!(turns.angles, degrees(expected), "{order:?}");
    let others: Vec<_> = others.iter().map(|other| degrees(other)).collect();
    assert_eq!(turns.others, others, "{order:?}");
}

#[test]
fn twins_fire_in_the_more_even_way_and_the_other_is_named() {
    let four = |crank: &Geometry, expected: f64, other: f64| {
        check(EngineKind::FourStroke, crank, &[1, 2], &[0.0, expected], &[&[0.0, other]]);
    };
    four(&crank(&[&[1, 2]], &[], &[0.0, 270.0], 0.0), 270.0, 630.0);
    four(&crank(&[&[1], &[2]], &[50.0], &[0.0], 0.0), 410.0, 50.0);
    four(&crank(&[&[1], &[2]], &[70.0], &[0.0], 40.0), 470.0, 110.0);
    four(&crank(&[&[1, 2]], &[], &[0.0, 180.0], 0.0), 180.0, 540.0);
    check(
        EngineKind::FourStroke,
        &crank(&[&[1, 2]], &[], &[0.0, 0.0], 0.0),
        &[1, 2],
        &[0.0, 360.0],
        &[],
    );
}

#[test]
fn a_twin_at_180_degrees_is_a_tie_and_one_at_270_is_none() {
    let tie = |pin| {
        let crank = crank(&[&[1, 2]], &[], &[0.0, pin], 0.0);
        turns(EngineKind::FourStroke, &[1, 2], &crank.tops()).expect("it fires").is_tie
    };
    assert!(tie(180.0), "180 and 540 are one as even as the other");
    assert!(!tie(270.0), "270 is more even than 630");
}

#[test]
fn a_cycle_of_one_turn_leaves_nothing_to_decide() {
    let crank = crank(&[&[1, 2, 3, 4]], &[], &[0.0, 0.0, 180.0, 180.0], 0.0);
    check(EngineKind::TwoStroke, &crank, &[1, 2, 3, 4], &[0.0, 0.0, 180.0, 180.0], &[]);
    let out =
        turns(EngineKind::TwoStroke, &[1, 3, 2, 4], &crank.tops()).expect_err("2 is before 3");
    assert_eq!((out.cylinder, out.before), (2, 3));
}

#[test]
fn the_cylinder_that_needs_a_third_turn_is_named() {
    let crank = crank(&[&[1, 2, 3, 4]], &[], &[0.0, 180.0, 180.0, 0.0], 0.0);
    let out =
        turns(EngineKind::FourStroke, &[1, 4, 2, 3], &crank.tops()).expect_err("not this order");
    assert_eq!((out.cylinder, out.before), (3, 2), "1 at 0, 4 at 360, 2 at 540, 3 at 900");
}

#[test]
fn what_does_not_fit_the_banks_is_refused() {
    let rows = || vec![vec![1, 2, 3], vec![4, 5, 6]];
    let new = |banks: &[f64], pins: &[f64]| {
        Geometry::new(rows(), degrees(banks), degrees(pins), CrankAngle::default()).map(|_| ())
    };
    assert_eq!(new(&[90.0], &[0.0, 120.0, 240.0]), Ok(()));
    assert_eq!(new(&[90.0], &[0.0, 120.0, 240.0, 0.0, 120.0, 240.0]), Ok(()));
    let unfit = [
        UnfitCrank::BankAngles { angles: 0, banks: 2 },
        UnfitCrank::Pins { pins: 2, each: Some(3), cylinders: 6 },
    ];
    assert_eq!(new(&[], &[0.0, 120.0]), Err(unfit.to_vec()), "both at once");
}
