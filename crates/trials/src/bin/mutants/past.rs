//! What became of each mutant so far, so that a run that was broken off, or one that asks more, goes on from there.

use std::{
    collections::BTreeMap,
    fs::{self, OpenOptions},
    io::Write as _,
    path::{Path, PathBuf},
    time::Duration,
};

use crate::sites::Mutant;

/// What is known of a mutant.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Known {
    /// This test failed.
    Caught(String),
    /// No test failed that takes no longer than this.
    Left {
        /// The longest that was asked.
        most: Duration,
        /// How many were.
        asked: usize,
        /// Whether a record is another; nothing where none was asked.
        changes: Option<bool>,
    },
}

/// The file with all that is known.
#[derive(Debug)]
pub(crate) struct Past {
    path: PathBuf,
    all: BTreeMap<u32, Known>,
    catchers: PathBuf,
    caught: BTreeMap<String, String>,
    names: BTreeMap<u32, String>,
}

impl Past {
    /// What is known for these sources.
    pub(crate) fn of(folder: &Path, key: &str, mutants: &[Mutant]) -> Self {
        let path = folder.join(format!("outcomes-{key}.txt"));
        let text = fs::read_to_string(&path).unwrap_or_default();
        let catchers = folder.join("caught.txt");
        let caught = fs::read_to_string(&catchers).unwrap_or_default();
        let caught = caught.lines().filter_map(|line| line.rsplit_once('\t'));
        Self {
            // of several lines the last one holds
            all: text.lines().filter_map(read).collect(),
            path,
            caught: caught.map(|(it, by)| (it.to_owned(), by.to_owned())).collect(),
            catchers,
            names: mutants.iter().map(|it| (it.id, name(it))).collect(),
        }
    }

    /// The test that caught a mutant in an earlier run, of whatever sources.
    pub(crate) fn catcher(&self, id: u32) -> Option<&str> {
        self.caught.get(self.names.get(&id)?).map(String::as_str)
    }

    /// What is known of a mutant.
    pub(crate) fn get(&self, id: u32) -> Option<&Known> {
        self.all.get(&id)
    }

    /// Writes down what became of a mutant.
    pub(crate) fn note(&self, id: u32, known: &Known) {
        append(&self.path, &written(id, known));
        if let (Known::Caught(by), Some(name)) = (known, self.names.get(&id)) {
            append(&self.catchers, &format!("{name}\t{by}\n"));
        }
    }
}

fn append(path: &Path, text: &str) {
    if let Ok(mut file) = OpenOptions::new().append(true).create(true).open(path) {
        // what is not written down is tried again
        let _ = file.write_all(text.as_bytes());
    }
}

/// What a mutant is called while others come and go around it.
fn name(it: &Mutant) -> String {
    format!("{}\t{}\t{}", it.file, it.text, it.change)
}

fn written(id: u32, known: &Known) -> String {
    match known {
        Known::Caught(by) => format!("{id}\tcaught\t{by}\n"),
        Known::Left { most, asked, changes } => {
            let changes = changes.map_or("unasked", |it| if it { "changes" } else { "same" });
            format!("{id}\tleft\t{}\t{asked}\t{changes}\n", most.as_millis())
        }
    }
}

fn read(line: &str) -> Option<(u32, Known)> {
    let cells: Vec<&str> = line.split('\t').collect();
    let known = match cells.as_slice() {
        [_, "caught", by] => Known::Caught((*by).to_owned()),
        [_, "left", most, asked, changes] => Known::Left {
            most: Duration::from_millis(most.parse().ok()?),
            asked: asked.parse().ok()?,
            changes: match *changes {
                "changes" => Some(true),
                "same" => Some(false),
                _ => None,
            },
        },
        _ => return None,
    };
    Some((cells.first()?.parse().ok()?, known))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_down_is_read_back() {
        for known in [
            Known::Caught("a::b".to_owned()),
            Known::Left { most: Duration::from_millis(1500), asked: 7, changes: None },
            Known::Left { most: Duration::ZERO, asked: 0, changes: Some(true) },
            Known::Left { most: Duration::ZERO, asked: 1, changes: Some(false) },
        ] {
            assert_eq!(read(written(12, &known).trim_end()), Some((12, known)));
        }
        assert_eq!(read("12\tleft\tsoon"), None);
    }
}
