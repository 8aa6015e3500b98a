//! What a general-purpose library makes of the same networks: its factorisations are why the core has an elimination
//! of its own. Source: nalgebra's `lu` and `cholesky`.
#![expect(clippy::expect_used, clippy::indexing_slicing, reason = "a test fails by them")]

use nalgebra::{DMatrix, DVector};
use proptest::prelude::*;
use quietpin_core::circuit::{GROUND, Network};

/// The voltages to ground of nodes joined by conductances, each with a current into it.
fn voltages(count: usize, joined: &[(Option<usize>, usize, f64)], inflow: &[f64]) -> Vec<f64> {
    let mut network = Network::new();
    let nodes: Vec<_> = (0..count).map(|at| network.node(format!("node {at}"))).collect();
    for &(a, b, siemens) in joined {
        network.resistor(a.map_or(GROUND, |a| nodes[a]), nodes[b], 1.0 / siemens);
    }
    for (&node, &ampere) in nodes.iter().zip(inflow) {
        network.current(GROUND, node, ampere);
    }
    let solution = network.solve().expect("every node is joined to ground");
    nodes.iter().map(|&node| solution.voltage(node).expect("every node is joined")).collect()
}

/// The same as equations for the library.
fn matrix(count: usize, joined: &[(Option<usize>, usize, f64)]) -> DMatrix<f64> {
    let mut matrix = DMatrix::zeros(count, count);
    for &(a, b, siemens) in joined {
        matrix[(b, b)] += siemens;
        if let Some(a) = a {
            matrix[(a, a)] += siemens;
            matrix[(a, b)] -= siemens;
            matrix[(b, a)] -= siemens;
        }
    }
    matrix
}

/// A milliohm between two nodes, 100 megohm from the first to ground, 1 microampere into the second.
#[test]
fn a_milliohm_hanging_on_a_hundred_megohm_keeps_the_digits_that_the_library_loses() {
    let (joined, inflow) = ([(None, 0, 1e-8), (Some(0), 1, 1e3)], [0.0, 1e-6]);
    let ours = voltages(2, &joined, &inflow);
    assert!((ours[0] / 100.0 - 1.0).abs() < 1e-12, "{ours:?}");
    let usual = matrix(2, &joined).cholesky().expect("not yet singular");
    let usual = usual.solve(&DVector::from_column_slice(&inflow));
    assert!((usual[0] / 100.0 - 1.0).abs() > 1e-7, "then the library would do: {usual}");
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_library_agrees_on_networks_of_moderate_spread(
        conductances in prop::collection::vec(0.1..10.0_f64, 10),
        inflow in prop::collection::vec(-1.0..1.0_f64, 4),
    ) {
        let pairs = (0..4).flat_map(|b| (0..b).map(Some).chain([None]).map(move |a| (a, b)));
        let joined: Vec<_> = pairs.zip(conductances).map(|((a, b), siemens)| (a, b, siemens)).collect();
        let inflows = DVector::from_column_slice(&inflow);
        let expected = matrix(4, &joined).lu().solve(&inflows).expect("not singular");
        for (found, expected) in voltages(4, &joined, &inflow).iter().zip(expected.iter()) {
            prop_assert!((found - expected).abs() < 1e-12, "{found} {expected}");
        }
    }
}
