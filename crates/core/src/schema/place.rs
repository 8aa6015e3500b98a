//! Where a text of the plan stands.

use std::marker::PhantomData;

use super::{Field, Part};
use crate::message::Edit;

/// Where a text stands: part, record of the part, field of the record, cell of the field.
///
/// The order is that in which places are asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place {
    part: Part,
    record: u32,
    field: u8,
    cell: u32,
}

impl Place {
    pub(super) const fn new(part: Part, field: u8) -> Self {
        Self { part, record: 0, field, cell: 0 }
    }

    /// The place at a path such as `engine.order`, `loads.0.kind` or `channels.coils_wired.2`; of a pattern with `#` in
    /// place of a number, the first. Nothing where the schema has no such place.
    pub fn at_path(path: &str) -> Option<Self> {
        let mut words = path.split('.');
        let part = Part::named(words.next()?)?;
        let record = if part.is_list() { number(words.next()?)? } else { 0 };
        let name = words.next()?;
        let (at, field) = (0..).zip(part.fields()).find(|(_, field)| field.name == name)?;
        let cell = if field.is_list { number(words.next()?)? } else { 0 };
        words.next().is_none().then_some(Self { part, record, field: at, cell })
    }

    /// Its path in the plan.
    pub fn path(self) -> String {
        self.written(|number| number.to_string())
    }

    /// Its path with `#` in place of numbers.
    pub fn pattern(self) -> String {
        self.written(|_| "#".to_owned())
    }

    fn written(self, number: impl Fn(u32) -> String) -> String {
        let record = self.part.is_list().then(|| number(self.record));
        let mut path = record_path(self.part, record.as_deref());
        path.extend([".", self.field().name]);
        if self.field().is_list {
            path.extend([".", &number(self.cell)]);
        }
        path
    }

    /// What stands there.
    pub fn field(self) -> &'static Field {
        // an index is made from the list that it points into
        self.part.fields().get(usize::from(self.field)).unwrap_or(&NO_FIELD)
    }

    /// How the value is found at the car, with a multimeter where that is possible; empty where nothing is known of that.
    pub fn measure(self) -> &'static str {
        self.measure_in(self.part.measures())
    }

    /// The same, of the ways of its part.
    pub(crate) fn measure_in(self, ways: &'static [&'static str]) -> &'static str {
        ways.get(usize::from(self.field)).copied().unwrap_or_default()
    }

    /// Where what is assumed there comes from; empty where nothing is assumed.
    pub fn basis(self) -> &'static str {
        self.part.bases().get(usize::from(self.field)).copied().unwrap_or_default()
    }

    /// The part that it belongs to.
    pub const fn part(self) -> Part {
        self.part
    }

    /// The number of its record in the part, from 0.
    pub const fn record(self) -> usize {
        self.record as usize
    }

    /// The number of its cell in the field, from 0.
    pub const fn cell(self) -> usize {
        self.cell as usize
    }

    /// The same field of another record.
    #[must_use]
    pub fn at(self, record: usize) -> Self {
        Self { record: u32::try_from(record).unwrap_or(u32::MAX), ..self }
    }

    /// The same field in another part, which must have the same fields.
    #[must_use]
    pub const fn of(self, part: Part) -> Self {
        Self { part, ..self }
    }

    /// Another cell of the same field.
    #[must_use]
    pub fn in_cell(self, cell: usize) -> Self {
        Self { cell: u32::try_from(cell).unwrap_or(u32::MAX), ..self }
    }

    /// The field of this name in the same record.
    pub fn beside(self, name: &str) -> Option<Self> {
        let fields = (0..).zip(self.part.fields());
        let (field, _) = fields.into_iter().find(|(_, field)| field.name == name)?;
        Some(Self { field, cell: 0, ..self })
    }

    /// The field of the same name in the same record of another part; where it has none, this one.
    #[must_use]
    pub fn twin(self, part: Part) -> Self {
        let there = Self { part, field: 0, ..self };
        there.beside(self.field().name).map_or(self, |twin| twin.in_cell(self.cell()))
    }

    pub(crate) const fn first_of(part: Part, record: u32) -> Self {
        Self { part, record, field: 0, cell: 0 }
    }

    pub(crate) const fn field_number(self) -> u8 {
        self.field
    }
}

const NO_FIELD: Field = super::text("", "").field();

fn number(word: &str) -> Option<u32> {
    if word == "#" { Some(0) } else { word.parse().ok() }
}

fn record_path(part: Part, record: Option<&str>) -> String {
    let mut path = part.name().to_owned();
    if let Some(record) = record {
        path.extend([".", record]);
    }
    path
}

impl Part {
    /// The path of a record: `engine`, `loads.2`.
    pub fn record(self, at: usize) -> String {
        record_path(self, self.is_list().then(|| at.to_string()).as_deref())
    }
}

impl From<Place> for String {
    fn from(place: Place) -> Self {
        place.path()
    }
}

/// A field as a constant: where it stands, and what it takes.
pub struct Key<T> {
    place: Place,
    takes: PhantomData<T>,
}

impl<T> Key<T> {
    pub(crate) const fn new(part: Part, field: u8) -> Self {
        Self { place: Place::new(part, field), takes: PhantomData }
    }

    /// Where it stands.
    pub const fn place(self) -> Place {
        self.place
    }

    /// What it is.
    pub fn field(self) -> &'static Field {
        self.place.field()
    }

    /// Its path in the plan.
    pub fn path(self) -> String {
        self.place.path()
    }

    /// This text in its place.
    pub(crate) fn edit(self, text: impl Into<String>) -> Edit {
        Edit { path: self.path(), text: text.into() }
    }

    /// The same field of another record.
    #[must_use]
    pub fn at(self, record: usize) -> Self {
        Self { place: self.place.at(record), ..self }
    }

    /// Another cell of the same field.
    #[must_use]
    pub fn in_cell(self, cell: usize) -> Self {
        Self { place: self.place.in_cell(cell), ..self }
    }

    /// The same field in another part, which must have the same fields.
    #[must_use]
    pub const fn of(self, part: Part) -> Self {
        Self { place: self.place.of(part), takes: PhantomData }
    }

    /// The field of the same name in another part, which must take the same.
    #[must_use]
    pub fn twin(self, part: Part) -> Self {
        Self { place: self.place.twin(part), takes: PhantomData }
    }
}

// by hand: what a key takes need not be all that a key is
impl<T> Clone for Key<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Key<T> {}

impl<T> PartialEq for Key<T> {
    fn eq(&self, other: &Self) -> bool {
        self.place == other.place
    }
}

impl<T> Eq for Key<T> {}

impl<T> std::fmt::Debug for Key<T> {
    fn fmt(&self, formatter: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        self.place.fmt(formatter)
    }
}

impl<T> From<Key<T>> for Place {
    fn from(key: Key<T>) -> Self {
        key.place
    }
}

impl<T> From<Key<T>> for String {
    fn from(key: Key<T>) -> Self {
        key.path()
    }
}
