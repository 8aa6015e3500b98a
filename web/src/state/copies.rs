//! What is kept of a plan, and what another page of the same browser makes of it.
//!
//! Before the text of a plan stands a line of numbers: when it was kept, and the numbers of the copies that it comes from.
//! So two copies are known to be the same, one newer than the other, or both made from a third; then both are made one again,
//! field by field from that third.

use std::rc::Rc;

use quietpin_core::plan::{self, Merged, Plan};

/// So many copies are remembered that one may have been made from.
const MOST: usize = 16;

/// The text of a plan as it is kept, without the line before it; one that was kept without such a line is whole.
pub(crate) fn text_of(value: &str) -> &str {
    parts(value).1
}

/// When a copy was kept; 0 where that is not known.
pub(crate) fn time_of(value: &str) -> u64 {
    parts(value).0.first().copied().unwrap_or_default()
}

/// A copy with nothing said of where it comes from.
pub(crate) fn valued(time: u64, text: &str) -> String {
    format!("{time}\n{text}")
}

fn parts(value: &str) -> (Vec<u64>, &str) {
    let headed = value.split_once('\n').and_then(|(line, text)| {
        let numbers: Result<_, _> = line.split(' ').map(str::parse).collect();
        Some((numbers.ok()?, text))
    });
    headed.unwrap_or_else(|| (Vec::new(), value))
}

/// The copies of a plan that this page read or wrote.
#[derive(Clone, Debug, Default)]
pub(crate) struct Copies {
    /// The one that is kept now, and those that it comes from.
    times: Vec<u64>,
    known: Vec<(u64, Rc<Plan>)>,
}

impl Copies {
    /// What is kept of a plan that is opened.
    pub(super) fn of(value: Option<&str>, plan: &Rc<Plan>) -> Self {
        let mut copies = Self::default();
        if let Some(value) = value {
            copies.times = parts(value).0;
            copies.know(time_of(value), Rc::clone(plan));
        }
        copies
    }

    /// Whether this page ever read or wrote one.
    pub(super) fn is_empty(&self) -> bool {
        self.known.is_empty()
    }

    /// Whether this plan is the one that is kept.
    pub(super) fn is_kept(&self, plan: &Plan) -> bool {
        self.known.last().is_some_and(|(_, kept)| **kept == *plan)
    }

    /// Whether another page kept this.
    pub(super) fn is_news(&self, value: &str) -> bool {
        self.is_empty() || self.time() != time_of(value)
    }

    /// The plan with what another page changed in it, or nothing where what that page kept can't be read. What is kept now is
    /// known from here on.
    pub(crate) fn met(&mut self, value: &str, plan: &Plan) -> Option<Merged> {
        let (times, text) = parts(value);
        let mut other = plan::parse(text).ok()?;
        other.quietpin = plan.quietpin;
        let time = time_of(value);
        let common = self.known.iter().rev().find(|(it, _)| times.contains(it));
        let base = common.or(self.known.last()).map(|(_, it)| Rc::clone(it)).unwrap_or_default();
        let (newer, older) = if time > self.time() { (&other, plan) } else { (plan, &other) };
        let merged = base.merged(newer, older);
        for it in times {
            if !self.times.contains(&it) {
                self.times.push(it);
            }
        }
        self.begin_with(time);
        self.know(time, Rc::new(other));
        Some(merged)
    }

    /// What is to be kept of a plan, at this time by the clock.
    pub(super) fn next(&self, now: u64, plan: &Plan) -> (u64, String) {
        let newest = self.times.iter().max();
        let time = newest.map_or(now, |it| now.max(it + 1));
        let mut line = time.to_string();
        for it in &self.times {
            line.extend([" ", &it.to_string()]);
        }
        (time, format!("{line}\n{}", plan::write(plan)))
    }

    /// This plan is kept now, since that time.
    pub(super) fn kept(&mut self, time: u64, plan: &Rc<Plan>) {
        self.begin_with(time);
        self.know(time, Rc::clone(plan));
    }

    fn time(&self) -> u64 {
        self.times.first().copied().unwrap_or_default()
    }

    fn begin_with(&mut self, time: u64) {
        self.times.retain(|it| *it != time);
        self.times.insert(0, time);
        while self.times.len() > MOST {
            let oldest = self.times.iter().copied().min();
            self.times.retain(|it| Some(*it) != oldest || *it == time);
        }
    }

    fn know(&mut self, time: u64, plan: Rc<Plan>) {
        if self.known.len() >= MOST {
            self.known.remove(0);
        }
        self.known.push((time, plan));
    }
}
