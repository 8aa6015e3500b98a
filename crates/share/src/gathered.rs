//! Codes that have come, until their series is whole.

use std::fmt;

use miniz_oxide::inflate::decompress_to_vec_with_limit;
use quietpin_core::plan::{self, MOST_BYTES, Plan, ReadError};

use crate::{
    check::crc32,
    code::{Code, MOST_CODES},
};

/// Most codes that wait at once; of more, those that came first go. Two series of the longest.
const MOST_WAITING: usize = 2 * MOST_CODES as usize;

/// Codes that wait for the rest of their series.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Gathered {
    /// In the order in which they came.
    waiting: Vec<Code>,
}

/// How far a series has come.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Standing {
    /// How many codes it has.
    pub of: u8,
    /// Those that have not come.
    pub missing: Vec<u8>,
}

/// What came of a code.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Arrival {
    /// It was the last one: the plan is whole.
    Plan(Box<Plan>),
    /// All have come, and make no plan; they were dropped.
    Broken(Option<ReadError>),
    /// More are needed.
    Waits {
        /// How far its series has come.
        standing: Standing,
        /// It is not of the series that was being gathered before.
        is_of_another: bool,
    },
}

impl fmt::Display for Standing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let here = usize::from(self.of).saturating_sub(self.missing.len());
        write!(f, "{here} of {} codes so far: ", self.of)?;
        match &*self.missing {
            [] => write!(f, "none is missing."),
            [only] => write!(f, "code {only} is missing."),
            [most @ .., last] => {
                let most: Vec<_> = most.iter().map(u8::to_string).collect();
                write!(f, "codes {} and {last} are missing.", most.join(", "))
            }
        }
    }
}

impl fmt::Display for Arrival {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Plan(plan) => {
                match plan.name.as_str() {
                    "" => write!(f, "A plan without a name")?,
                    name => write!(f, "The plan “{name}”")?,
                }
                write!(
                    f,
                    " came from another phone and is open. What was open before is kept under Plans."
                )
            }
            Self::Broken(None) => write!(f, "These codes make no plan: scan them all again."),
            Self::Broken(Some(error)) => error.fmt(f),
            Self::Waits { standing, is_of_another: false } => {
                write!(f, "From another phone, {standing}")
            }
            Self::Waits { standing, is_of_another: true } => {
                write!(
                    f,
                    "This code is of another plan than those before it. Of this plan, {standing}"
                )
            }
        }
    }
}

impl Gathered {
    /// Reads what [`Gathered::text`] wrote; what is no code is left out.
    pub fn read(text: &str) -> Self {
        let mut gathered = Self::default();
        text.lines().filter_map(|line| Code::read(line).ok()).for_each(|code| gathered.keep(code));
        gathered
    }

    /// A line for each code.
    pub fn text(&self) -> String {
        let lines: Vec<_> = self.waiting.iter().map(Code::text).collect();
        lines.join("\n")
    }

    /// Takes a code, whichever of its series.
    pub fn take(&mut self, code: Code) -> Arrival {
        let is_of_another = self.waiting.last().is_some_and(|last| !is_of_one_series(last, &code));
        let arrived = code.clone();
        self.keep(code);
        let standing = self.standing(&arrived);
        if standing.missing.is_empty() {
            self.open(&arrived)
        } else {
            Arrival::Waits { standing, is_of_another }
        }
    }

    /// How far each series has come that is not whole, the one that came last first.
    pub fn standings(&self) -> Vec<Standing> {
        let newest: Vec<_> = self.waiting.iter().rev().collect();
        let is_first = |(at, code): &(usize, &&Code)| {
            !newest.iter().take(*at).any(|it| is_of_one_series(it, code))
        };
        newest.iter().enumerate().filter(is_first).map(|(_, code)| self.standing(code)).collect()
    }

    fn keep(&mut self, code: Code) {
        self.waiting.retain(|it| !(is_of_one_series(it, &code) && it.number == code.number));
        self.waiting.push(code);
        let over = self.waiting.len().saturating_sub(MOST_WAITING);
        self.waiting.drain(..over);
    }

    fn standing(&self, of: &Code) -> Standing {
        let is_missing = |number: &u8| self.find(of, *number).is_none();
        Standing { of: of.of, missing: (1..=of.of).filter(is_missing).collect() }
    }

    fn find(&self, of: &Code, number: u8) -> Option<&Code> {
        self.waiting.iter().find(|it| is_of_one_series(it, of) && it.number == number)
    }

    /// Puts a series together that is whole; it waits no longer.
    fn open(&mut self, of: &Code) -> Arrival {
        let codes = (1..=of.of).filter_map(|number| self.find(of, number));
        let bytes: Vec<u8> = codes.flat_map(|code| code.piece.iter().copied()).collect();
        self.waiting.retain(|it| !is_of_one_series(it, of));
        if crc32(&bytes) != of.whole {
            return Arrival::Broken(None);
        }
        let text = decompress_to_vec_with_limit(&bytes, MOST_BYTES).ok();
        match text.and_then(|it| String::from_utf8(it).ok()).map(|it| plan::parse(&it)) {
            Some(Ok(plan)) => Arrival::Plan(Box::new(plan)),
            Some(Err(error)) => Arrival::Broken(Some(error)),
            None => Arrival::Broken(None),
        }
    }
}

fn is_of_one_series(one: &Code, other: &Code) -> bool {
    (one.whole, one.of) == (other.whole, other.of)
}
