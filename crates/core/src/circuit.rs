//! Direct currents in a small network of resistors, diodes, ideal voltage sources and current sources.
//!
//! ```
//! use quietpin_core::circuit::{Diode, GROUND, Network};
//!
//! // 12.6 V through 1 kilohm and a diode to ground.
//! let mut network = Network::new();
//! let battery = network.node("battery");
//! let middle = network.node("middle");
//! network.source(battery, GROUND, 12.6);
//! let resistor = network.resistor(battery, middle, 1000.0);
//! let model = Diode::Threshold { forward_voltage_v: 0.6, on_resistance_ohm: 1.0 };
//! network.diode(middle, GROUND, model);
//! let solution = network.solve()?;
//! assert!((solution.current(resistor) - 12.0 / 1001.0).abs() < 1e-12);
//! # Ok::<(), quietpin_core::circuit::Unsolvable>(())
//! ```
//!
//! # What is solved
//!
//! Nodes that ideal voltage sources tie together move as one *group*, each node at a fixed offset; ground belongs to
//! one of the groups, and the potentials of the others are the unknowns. The current law for every group gives
//! as many equations (nodal analysis; any textbook on circuits, for instance *Lessons in Electric Circuits*, vol. I,
//! chapter 10).
//!
//! # Why there is an answer, and only one
//!
//! Every element but the sources carries a current that never falls as the voltage across it rises. Write `F` for the
//! sum over all elements of that current integrated over its voltage, the *co-content* of the network ("Some general
//! theorems for non-linear systems possessing resistance", Philosophical Magazine 42, 1951). `F` is a convex function of
//! the potentials, and its slope by a potential is the current that leaves that group: the currents balance exactly
//! where `F` is least.
//!
//! - *There is an answer* unless `F` falls without end, which takes a current source whose current no element can carry
//!   back: [`Unsolvable::NoReturn`].
//! - *The currents are unique*: for two answers, the sum over the elements of (difference of current) x (difference of
//!   voltage) is zero, as for any currents that balance and any voltages that add up around loops, and no term is
//!   negative. So every term is zero: across a resistor or a conducting diode the voltage is the same in both answers, and
//!   a diode that blocks in one carries nothing in either.
//! - *A potential is unique* where resistors, sources and conducting diodes link the node to ground. Elsewhere it is
//!   anybody's guess, and [`Solution::voltage`] says `None` rather than make one up.
//!
//! # How it is found
//!
//! By tangent steps: the network is solved with each element replaced by its tangent at the potentials reached, and the
//! way that leads is followed only as far as `F` falls. A descent on a convex function can't be caught in a cycle. With
//! [`Diode::Threshold`] alone, `F` is made of finitely many quadratic pieces; as soon as a step starts in a piece that
//! touches the minimum it ends there exactly. With [`Diode::Exponential`] the search along each step replaces the usual
//! limiting of junction voltages, and needs no stepping of the sources.
//!
//! # Many networks
//!
//! A circuit at many corners is the same joined to the same, with other values. [`Network::solve_in`] works out once what is
//! joined to what, keeps an elimination for as long as no diode turns from blocking to conducting or back, passes over
//! what is not joined, so that outputs in a chain take as many steps as there are, and solves nothing twice.
//!
//! # Accuracy
//!
//! Better than 1e-9, relative, for resistances that span eleven powers of ten: the linear steps contain no subtraction
//! that could cancel, and potentials are kept in twice the usual digits, so that the current in one milliohm is right
//! even where its ends differ by less than the last digit of their voltage.
//! The current of an ideal source is what the currents around it leave of each other, and has the rounding of the
//! largest of them: 1e-12 of that, at most.

mod characteristic;
mod diode;
mod elimination;
mod groups;
mod known;
#[cfg(test)]
mod laws;
mod network;
mod pair;
mod reach;
mod solution;
mod solve;
mod stride;
mod unsolvable;
mod wiring;
#[cfg(test)]
pub(crate) mod work;

pub use diode::{Diode, thermal_voltage_v};
pub use network::{Element, GROUND, Network, Node};
pub use solution::Solution;
pub use solve::Workspace;
pub use unsolvable::Unsolvable;
