//! What is worked with the thumb at the car: a test that is tapped, a list that is ticked off.

use serde::Serialize;

use crate::message::Message;

/// A test of the channels, one fired after the other.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct Bench {
    /// The path of the list that a tap is kept in: entry 0 is channel 1.
    pub list: String,
    /// The path of the field that keeps what is done of the cure.
    pub done: String,
    /// By what it is seen that one answers; none where nothing is fired.
    pub tool: Option<Message>,
    /// The channels, in the order of the plan.
    pub channels: Vec<BenchChannel>,
    /// What may answer, as it is typed: `3`, or `2T`.
    pub targets: Vec<String>,
    /// The channel to fire next; none where all is certain.
    pub next: Option<u32>,
    /// What is certain by now, and what the test is to tell.
    pub says: Vec<Message>,
    /// What to see to before it.
    pub cautions: Vec<Message>,
}

/// A channel on the bench.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct BenchChannel {
    /// Its number.
    pub channel: u32,
    /// What is to be done, and asked.
    pub ask: Message,
    /// How many should answer.
    pub expected: usize,
    /// What answered, or must; blank where nothing is known.
    pub found: String,
    /// Whether that can't be: what answers now stands in its place.
    pub again: bool,
    /// How that agrees with the plan, in words; none where nothing is known.
    pub stands: Option<Message>,
}

/// Things to be done one by one.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct Checklist {
    /// What it cures.
    pub title: Message,
    /// The path of the field that keeps the names of what is done.
    pub path: String,
    /// The things.
    pub items: Vec<Item>,
    /// Whether its answer is there for it: it is open at first, unless it is long.
    #[serde(skip)]
    pub is_main: bool,
}

/// One thing to be done.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct Item {
    /// Its name, a word.
    pub name: String,
    /// What is to be done.
    pub words: Message,
    /// Whether it was ticked off.
    pub is_done: bool,
}

impl Checklist {
    /// Whether all of it was ticked off.
    pub fn is_done(&self) -> bool {
        self.items.iter().all(|item| item.is_done)
    }
}
