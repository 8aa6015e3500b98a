//! Why a network has no answer.

use std::fmt;

use super::network::{Element, Node};

/// Why a network has no answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unsolvable {
    /// The element's value is not a number, or outside the range that its method on [`Network`](super::Network) states.
    OutOfRange {
        /// The element with that value.
        element: Element,
    },
    /// One of the element's nodes belongs to another network.
    ForeignNode {
        /// The element that names it.
        element: Element,
    },
    /// This ideal voltage source closes a loop of nothing but such sources (two batteries in parallel, or a battery
    /// with its poles joined): the voltages contradict each other, or leave the current in the loop open.
    SourceLoop {
        /// A source of the loop.
        element: Element,
    },
    /// A current source pushes its current where no element can carry it back.
    NoReturn {
        /// A node of the part that the current would charge without end.
        node: Node,
    },
    /// Nothing keeps the current in this exponential diode below a million amperes, as when it lies forward across a
    /// battery.
    NoLimit {
        /// The diode.
        element: Element,
    },
    /// More nodes than the solver takes ([`Network::MOST_NODES`](super::Network::MOST_NODES)).
    TooLarge,
    /// The search ended without an answer in which the currents balance. No network is known that shows this.
    NotSettled,
}

impl fmt::Display for Unsolvable {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(match self {
            Self::OutOfRange { .. } => "an element's value is out of range",
            Self::ForeignNode { .. } => "an element is joined to a node of another network",
            Self::SourceLoop { .. } => "ideal voltage sources form a loop",
            Self::NoReturn { .. } => "a current has no way back to its source",
            Self::NoLimit { .. } => "nothing limits the current in a diode",
            Self::TooLarge => "the network has too many nodes",
            Self::NotSettled => "the search for the operating point did not settle",
        })
    }
}

impl std::error::Error for Unsolvable {}
