//! What the fitter typed: the one document worth saving.
//!
//! A plan keeps texts, never quantities; [`crate::read`] is the only way from one to the other. It is a table of texts
//! over the [`schema`](crate::schema): blanks are not kept. Its file is JSON that a person can read and edit: blank
//! fields are left out, and a number may stand where a text is meant.

mod alike;
mod controller;
mod file;
mod former;
mod left;
mod limit;
mod merge;
mod named;
mod node;
mod parse;
mod pin_table;
mod version1;

pub(crate) use alike::{Astray, Filled};
pub use controller::{GENERICS, Generic};
pub use left::LeftOver;
pub use limit::MOST_BYTES;
pub use merge::{Clash, Merged};
pub use named::names_in;
pub use parse::{ReadError, VERSION, parse, write};
pub use pin_table::{Described, Meaning, PinColumn, PinTable, StageWord};

use crate::{
    message::Edit,
    schema::{Part, Place},
};

/// Everything that was typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Plan {
    /// Version of the format; see [`VERSION`]. [`parse()`] and [`write()`] see to it.
    pub quietpin: u32,
    /// The plan's name.
    pub name: String,
    /// The fitter's own notes.
    pub notes: String,
    /// How many records each list has; a list that is not here has none.
    counts: Vec<(Part, usize)>,
    /// The texts that are not blank, in the order of their places.
    texts: Vec<(Place, String)>,
    /// What its file held that has no place here.
    left: Vec<LeftOver>,
}

/// Most entries that a list is read to; the rest stays in the plan, unread, and is said.
pub const MOST_ENTRIES: usize = 64;

/// A text and where it stands.
pub type Typed = (Place, String);

impl Plan {
    /// A blank plan of this name.
    pub fn named(name: impl Into<String>) -> Self {
        Self { name: name.into(), ..Self::default() }
    }

    /// The same plan under another name.
    #[must_use]
    pub fn renamed(self, name: impl Into<String>) -> Self {
        Self { name: name.into(), ..self }
    }

    /// The text at a place, as it was typed; blank where nothing was.
    pub fn text(&self, place: impl Into<Place>) -> &str {
        self.text_at(place.into())
    }

    fn text_at(&self, place: Place) -> &str {
        self.find(place).ok().and_then(|at| self.texts.get(at)).map_or("", |(_, text)| text)
    }

    /// Types a text at a place; says whether the plan has it. A list of records is not made longer.
    pub fn put(&mut self, place: impl Into<Place>, text: &str) -> bool {
        self.put_at(place.into(), text)
    }

    fn put_at(&mut self, place: Place, text: &str) -> bool {
        if !self.has(place) || place.cell() >= MOST_ENTRIES {
            return false;
        }
        self.keep(place, text.to_owned());
        true
    }

    /// Keeps a text, whatever stands there; a blank one leaves nothing.
    fn keep(&mut self, place: Place, text: String) {
        match self.find(place) {
            Ok(at) if text.is_empty() => drop(self.texts.remove(at)),
            Ok(at) => {
                if let Some((_, before)) = self.texts.get_mut(at) {
                    *before = text;
                }
            }
            Err(_) if text.is_empty() => {}
            Err(at) => self.texts.insert(at, (place, text)),
        }
    }

    fn find(&self, place: Place) -> Result<usize, usize> {
        self.texts.binary_search_by(|(at, _)| at.cmp(&place))
    }

    fn has(&self, place: Place) -> bool {
        !place.part().is_list() || place.record() < self.count(place.part())
    }

    /// The text at a path such as `engine.order`, `loads.0.kind` or `channels.coils_wired.2`.
    ///
    /// Nothing where the plan has no such place; blank where nothing was typed.
    pub fn get(&self, path: &str) -> Option<&str> {
        match path {
            "name" => Some(&self.name),
            "notes" => Some(&self.notes),
            _ => Place::at_path(path).filter(|place| self.has(*place)).map(|it| self.text_at(it)),
        }
    }

    /// Sets the text at a path; says whether there is such a place.
    pub fn set(&mut self, path: &str, text: &str) -> bool {
        match path {
            "name" => text.clone_into(&mut self.name),
            "notes" => text.clone_into(&mut self.notes),
            _ => return Place::at_path(path).is_some_and(|place| self.put_at(place, text)),
        }
        true
    }

    /// The plan with these edits made; nothing where it has no such place.
    pub fn edited(&self, edits: &[Edit]) -> Option<Self> {
        let mut plan = self.clone();
        edits.iter().all(|edit| plan.set(&edit.path, &edit.text)).then_some(plan)
    }

    /// What the plan's file held that has no place in a plan, or whose place holds another text.
    pub fn left_over(&self) -> &[LeftOver] {
        &self.left
    }

    /// Drops what has no place.
    pub fn drop_left_over(&mut self) {
        self.left.clear();
    }

    /// How many records a part has; one where it is no list.
    pub fn count(&self, part: Part) -> usize {
        let of_list = || self.counts.iter().find(|(list, _)| *list == part);
        if part.is_list() { of_list().map_or(0, |(_, count)| *count) } else { 1 }
    }

    /// Makes a list so long, or so short; what stood in records that are gone is gone.
    pub fn set_count(&mut self, list: Part, count: usize) {
        self.texts.retain(|(place, _)| place.part() != list || place.record() < count);
        self.counts.retain(|(part, _)| *part != list);
        if list.is_list() && count > 0 {
            self.counts.push((list, count));
            self.counts.sort_unstable();
        }
    }

    /// Adds a blank record to a list; its number.
    pub fn add(&mut self, list: Part) -> usize {
        let count = self.count(list);
        self.set_count(list, count + 1);
        count
    }

    /// Takes a record off a list, where it has one there; those behind it move up.
    pub fn remove(&mut self, list: Part, at: usize) {
        let count = self.count(list);
        if !list.is_list() || at >= count {
            return;
        }
        self.texts.retain(|(place, _)| place.part() != list || place.record() != at);
        for (place, _) in &mut self.texts {
            if place.part() == list && place.record() > at {
                *place = place.at(place.record() - 1);
            }
        }
        self.set_count(list, count - 1);
    }

    /// What was typed in a part.
    pub fn part(&self, part: Part) -> &[Typed] {
        let from = self.texts.partition_point(|(place, _)| place.part() < part);
        let to = self.texts.partition_point(|(place, _)| place.part() <= part);
        self.texts.get(from..to).unwrap_or_default()
    }

    /// What was typed in a record of a part.
    pub fn record(&self, part: Part, at: usize) -> &[Typed] {
        let texts = self.part(part);
        let from = texts.partition_point(|(place, _)| place.record() < at);
        let to = texts.partition_point(|(place, _)| place.record() <= at);
        texts.get(from..to).unwrap_or_default()
    }

    /// What was typed in the cells of a field.
    pub fn cells(&self, place: impl Into<Place>) -> &[Typed] {
        self.cells_at(place.into())
    }

    fn cells_at(&self, place: Place) -> &[Typed] {
        let texts = self.record(place.part(), place.record());
        let field = place.field_number();
        let from = texts.partition_point(|(it, _)| it.field_number() < field);
        let to = texts.partition_point(|(it, _)| it.field_number() <= field);
        texts.get(from..to).unwrap_or_default()
    }

    /// How many cells of a field there are, up to the last in which something was typed.
    pub fn cell_count(&self, place: impl Into<Place>) -> usize {
        self.cells(place).last().map_or(0, |(last, _)| last.cell() + 1)
    }

    /// Whether nothing was typed in a part, and it has no records where it is a list.
    pub fn is_blank(&self, part: Part) -> bool {
        self.part(part).is_empty() && (!part.is_list() || self.count(part) == 0)
    }

    /// Whether a part is the same in both.
    pub fn is_same_in(&self, other: &Self, part: Part) -> bool {
        self.count(part) == other.count(part) && self.part(part) == other.part(part)
    }

    /// Takes a part of another plan in place of its own.
    pub fn take(&mut self, part: Part, other: &Self) {
        self.set_count(part, other.count(part));
        self.texts.retain(|(place, _)| place.part() != part);
        for (place, text) in other.part(part) {
            self.keep(*place, text.clone());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fields::{channels, engine, loads, outputs};

    fn plan() -> Plan {
        let mut plan = Plan::default();
        plan.set_count(Part::Outputs, 1);
        plan.set_count(Part::Loads, 3);
        plan
    }

    #[test]
    fn every_place_can_be_set_and_read_back() {
        let mut plan = plan();
        for path in
            ["name", "engine.order", "outputs.0.stage", "loads.0.far_end", "channels.coils_wired.2"]
        {
            assert!(plan.set(path, "typed"), "{path} can't be set");
            assert_eq!(plan.get(path), Some("typed"), "{path} is not read back");
        }
        assert_eq!(plan.cell_count(channels::COILS_WIRED), 3, "a list grows with blanks");
        for path in [
            "",
            "engine",
            "engine.none",
            "engine.order.1",
            "loads.3.kind",
            "loads.x.kind",
            "channels.coils_wired.999",
        ] {
            assert!(!plan.set(path, "typed"), "{path:?} can be set");
        }
    }

    #[test]
    fn what_is_emptied_leaves_nothing_behind() {
        let mut plan = plan();
        for text in ["typed", ""] {
            assert!(plan.put(loads::NAME.at(2), text), "it is there");
            assert!(plan.put(channels::COILS_WIRED.in_cell(5), text), "it is there");
        }
        assert_eq!(plan, self::plan());
    }

    #[test]
    fn a_record_that_is_taken_off_takes_its_texts_along() {
        let mut plan = plan();
        for at in 0..3 {
            plan.put(loads::NAME.at(at), &format!("load {at}"));
        }
        plan.put(outputs::NAME.at(0), "A1");
        plan.remove(Part::Loads, 1);
        plan.remove(Part::Loads, 7);
        plan.remove(Part::Engine, 0);
        assert_eq!(plan.count(Part::Loads), 2);
        assert_eq!(plan.text(loads::NAME.at(1)), "load 2", "those behind it move up");
        assert_eq!(plan.get("loads.2.name"), None);
        assert_eq!(plan.text(outputs::NAME.at(0)), "A1", "other lists stay");
    }

    #[test]
    fn parts_are_held_against_each_other() {
        let (mut one, other) = (plan(), plan());
        one.put(engine::ORDER, "1-2");
        assert!(!one.is_same_in(&other, Part::Engine) && one.is_same_in(&other, Part::Loads));
        assert!(other.is_blank(Part::Engine) && !other.is_blank(Part::Loads));
        one.take(Part::Engine, &other);
        assert_eq!(one, other);
    }
}
