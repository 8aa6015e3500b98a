//! The trade of fitting an engine controller to an engine, as a pure function.
//!
//! [`report::report`] answers a [`plan::Plan`]. The core knows no browser, no clock, no chance and no file.
//!
//! A module uses only what stands in its own layer or below: `plan`, `schema`, `fields`, `read`, `report` are the
//! document; the trade lies below them; mathematics that knows no car below that; `quantity`, `message`,
//! `finding`, `working`, `budget`, `counted`, `sorted`, `math` at the bottom.
#![forbid(unsafe_code)]

pub mod assignment;
pub mod battery;
pub mod budget;
pub mod bus;
pub mod car;
pub mod channels;
pub mod checked;
pub mod circuit;
pub mod coil;
pub mod conditions;
pub mod counted;
pub mod cranking;
pub mod engine;
pub mod explained;
pub mod fields;
pub mod finding;
pub mod fuel;
pub mod injector;
pub mod loom;
pub mod math;
pub mod message;
pub mod output;
pub mod permutation;
pub mod plan;
pub mod quantity;
pub mod questions;
pub mod read;
pub mod report;
pub mod schema;
pub mod sensor;
mod sorted;
pub mod supply;
pub mod tables;
pub mod timeline;
pub mod transient;
pub mod trigger;
pub mod words;
pub mod working;

/// The whole car: the invented hill-climb special, described to its end.
pub fn whole_car() -> plan::Plan {
    // the file is a part of the program; a test sees that it can be read
    plan::parse(include_str!("whole_car.json")).unwrap_or_default()
}

/// What the demo is called.
pub const DEMO: &str = "Hill-climb special, straight-six";

/// The demo: an invented hill-climb special with a straight-six, and mistakes in it that the report finds.
pub fn demo() -> plan::Plan {
    // the file is a part of the program; a test sees that it can be read
    plan::parse(include_str!("demo.json")).unwrap_or_default()
}
