//! A table of pins as it was pasted, from a spreadsheet or a sheet of text: which column is what, and the outputs in it.
//!
//! What a column or a word means is taken from words of the trade; what is not known is asked, and left out until then.

mod words;

use super::{Plan, named};
use crate::{
    fields::outputs,
    schema::{Part, Place},
};

/// More rows than any controller has pins.
const MOST_ROWS: usize = 500;
/// More columns than any such table has.
const MOST_COLUMNS: usize = 40;
/// So many texts show what a column holds.
const SHOWN: usize = 3;

/// A pasted table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PinTable {
    /// Its columns.
    pub columns: Vec<PinColumn>,
    rows: Vec<Vec<String>>,
}

/// A column.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PinColumn {
    /// Its heading, or its place in the table.
    pub heading: String,
    /// The first texts in it.
    pub shown: Vec<String>,
    /// What it is, as far as its heading tells.
    pub meaning: Meaning,
    /// The unit in its heading, for numbers that have none.
    unit: String,
}

/// What a column, or a word for an output's stage, is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Meaning {
    /// A field of an output.
    Field(Place),
    /// Nothing that a plan asks for.
    LeftOut,
    /// Not known: to be asked.
    Unknown,
}

/// A word that stands for an output's stage in the table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StageWord {
    /// The word, as it stands there.
    pub word: String,
    /// In how many rows.
    pub rows: usize,
    /// The code of the stage that it means, where that is known.
    pub code: Option<&'static str>,
}

/// What was made of a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Described {
    /// A plan with nothing but the outputs.
    pub plan: Plan,
    /// How many outputs there are.
    pub outputs: usize,
    /// How many rows hold none.
    pub left_out: usize,
}

impl PinTable {
    /// The table in a text; nothing where that has no two columns or no row under its heading.
    pub fn read(text: &str) -> Option<Self> {
        let mut rows = cells(text);
        let width = rows.iter().map(Vec::len).max().unwrap_or(0).min(MOST_COLUMNS);
        let meanings =
            |row: &Vec<String>| row.iter().map(|it| words::column(it)).collect::<Vec<_>>();
        let first = meanings(rows.first()?);
        let is_heading = first.iter().any(|it| *it != Meaning::Unknown);
        let headings = if is_heading { rows.remove(0) } else { Vec::new() };
        if width < 2 || rows.is_empty() {
            return None;
        }
        let column = |at: usize| {
            let heading = headings.get(at).filter(|it| !it.is_empty()).cloned();
            let all = rows.iter().filter_map(|row| row.get(at)).filter(|it| !it.is_empty());
            PinColumn {
                unit: heading.as_deref().map(words::unit).unwrap_or_default().to_owned(),
                heading: heading.unwrap_or_else(|| format!("column {}", at + 1)),
                shown: all.take(SHOWN).cloned().collect(),
                meaning: first.get(at).copied().unwrap_or(Meaning::Unknown),
            }
        };
        let mut columns: Vec<_> = (0..width).map(column).collect();
        once_each(&mut columns);
        if !is_heading {
            by_content(&mut columns, &rows);
        }
        Some(Self { columns, rows })
    }

    /// The words for the stage, in the column that holds it.
    pub fn stage_words(&self, meanings: &[Meaning]) -> Vec<StageWord> {
        let Some(at) = column_of(meanings, outputs::STAGE.place()) else { return Vec::new() };
        let mut words: Vec<StageWord> = Vec::new();
        for word in self.rows.iter().map(|row| cell(row, at)).filter(|it| !it.is_empty()) {
            match words.iter_mut().find(|it| it.word.eq_ignore_ascii_case(word)) {
                Some(known) => known.rows += 1,
                None => words.push(StageWord {
                    word: word.to_owned(),
                    rows: 1,
                    code: words::stage(word),
                }),
            }
        }
        words
    }

    /// The outputs in the table. `stages` says of words that are not known what they mean: the code of a stage; a word
    /// that means none is no output.
    pub fn outputs(&self, meanings: &[Meaning], stages: &[(String, &str)]) -> Described {
        let stage_at = column_of(meanings, outputs::STAGE.place());
        let mut alike: Vec<Alike> = Vec::new();
        let mut left_out = 0;
        for row in &self.rows {
            let word = stage_at.map(|at| cell(row, at));
            let told = |word: &str| {
                let of_word = stages.iter().find(|(it, _)| it.eq_ignore_ascii_case(word));
                words::stage(word).or(of_word.map(|(_, code)| *code))
            };
            let stage = word.map(told);
            if stage == Some(None) {
                left_out += 1;
                continue;
            }
            let (texts, name) = self.texts(row, meanings, stage.flatten());
            match alike.iter_mut().find(|it| it.texts == texts) {
                Some(known) => known.names.push(name),
                None => alike.push(Alike { texts, names: vec![name] }),
            }
        }
        let outputs = alike.iter().map(|it| it.names.len()).sum();
        Described { plan: described(&alike), outputs, left_out }
    }

    /// What a row says of its output, and the output's name.
    fn texts(
        &self,
        row: &[String],
        meanings: &[Meaning],
        stage: Option<&str>,
    ) -> (Vec<(Place, String)>, String) {
        let (mut texts, mut name) = (Vec::new(), String::new());
        for (at, (column, meaning)) in self.columns.iter().zip(meanings).enumerate() {
            let (text, Meaning::Field(place)) = (cell(row, at), *meaning) else { continue };
            if place == outputs::NAME.place() {
                text.clone_into(&mut name);
            } else if place == outputs::STAGE.place() {
                texts.push((place, stage.unwrap_or_default().to_owned()));
            } else if place == outputs::ON_LEVEL.place() {
                texts.push((place, words::level(text).unwrap_or(text).to_owned()));
            } else {
                texts.push((place, words::with_unit(text, &column.unit)));
            }
        }
        texts.retain(|(_, text)| !text.is_empty());
        (texts, name)
    }
}

/// Outputs that are described alike.
struct Alike {
    texts: Vec<(Place, String)>,
    names: Vec<String>,
}

/// A record for each kind of output: those that are alike go by one description, where their names allow it.
fn described(alike: &[Alike]) -> Plan {
    let mut plan = Plan::default();
    for Alike { texts, names } in alike {
        for name in named::joined(names) {
            let at = plan.add(Part::Outputs);
            plan.put(outputs::NAME.at(at), &name);
            for (place, text) in texts {
                plan.put(place.at(at), text);
            }
        }
    }
    plan
}

/// Two columns can't be one field: the first is, the others are asked.
fn once_each(columns: &mut [PinColumn]) {
    let mut seen = Vec::new();
    for column in columns {
        if let Meaning::Field(place) = column.meaning {
            if seen.contains(&place) {
                column.meaning = Meaning::Unknown;
            }
            seen.push(place);
        }
    }
}

/// Without a heading: a column of words for stages is the stage, and the first other one is the name.
fn by_content(columns: &mut [PinColumn], rows: &[Vec<String>]) {
    let is_stage = |at: usize| {
        let mut words = rows.iter().map(|row| cell(row, at)).filter(|it| !it.is_empty()).peekable();
        words.peek().is_some() && words.all(|word| words::stage(word).is_some())
    };
    let stage = (0..columns.len()).find(|at| is_stage(*at));
    let name = (0..columns.len()).find(|at| Some(*at) != stage);
    for (at, field) in [(stage, outputs::STAGE.place()), (name, outputs::NAME.place())] {
        if let Some(column) = at.and_then(|at| columns.get_mut(at)) {
            column.meaning = Meaning::Field(field);
        }
    }
}

fn column_of(meanings: &[Meaning], field: Place) -> Option<usize> {
    meanings.iter().position(|it| *it == Meaning::Field(field))
}

fn cell(row: &[String], at: usize) -> &str {
    row.get(at).map_or("", String::as_str)
}

/// The rows that are not blank, cell by cell, parted by whatever parts most lines: tabs of a spreadsheet, semicolons,
/// commas, bars, or wide gaps.
fn cells(text: &str) -> Vec<Vec<String>> {
    let lines = || text.lines().filter(|line| !line.trim().is_empty()).take(MOST_ROWS);
    let parts_most = |mark: &u8| {
        2 * lines().filter(|line| line.as_bytes().contains(mark)).count() > lines().count()
    };
    let row = |cells: &mut dyn Iterator<Item = &str>| -> Vec<String> {
        cells.take(MOST_COLUMNS).map(|cell| cell.trim().to_owned()).collect()
    };
    let of_line = |line: &str| match line.trim().strip_prefix('|') {
        Some(rest) => row(&mut rest.trim_end_matches('|').split('|')),
        None => row(&mut line.split("  ").filter(|cell| !cell.trim().is_empty())),
    };
    let rows: Vec<_> = match b"\t;,".iter().find(|mark| parts_most(mark)) {
        Some(mark) => {
            let mut parted = csv::ReaderBuilder::new();
            parted.has_headers(false).flexible(true).delimiter(*mark);
            let records = parted.from_reader(text.as_bytes()).into_records();
            records.take(MOST_ROWS).filter_map(Result::ok).map(|it| row(&mut it.iter())).collect()
        }
        None => lines().map(of_line).collect(),
    };
    // a line of dashes under a heading says nothing
    let says = |row: &Vec<String>| row.iter().any(|it| it.chars().any(char::is_alphanumeric));
    rows.into_iter().filter(says).collect()
}

#[cfg(test)]
mod tests;
