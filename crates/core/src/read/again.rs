//! Records that were read before: what an edit leaves alone is not read again.

use std::{ops::Bound, rc::Rc};

use super::{FieldState, Reader};
use crate::finding::Finding;

/// The records of one list as they were read last, in their order.
#[derive(Clone, Debug)]
pub(crate) struct Before<R, T> {
    kept: Vec<Kept<R, T>>,
}

impl<R, T> Default for Before<R, T> {
    fn default() -> Self {
        Self { kept: Vec::new() }
    }
}

/// A record, and everything that followed from reading it.
#[derive(Clone, Debug)]
struct Kept<R, T> {
    record: R,
    log: Log,
    read: Rc<T>,
}

/// What a reader kept while it read.
#[derive(Clone, Debug)]
struct Log {
    fields: Vec<(String, Rc<FieldState>)>,
    findings: Vec<Rc<Finding>>,
}

impl<R: Clone + PartialEq, T> Before<R, T> {
    /// Forgets what was read.
    pub(super) fn forget(&mut self) {
        self.kept.clear();
    }

    /// Reads the records of the list at `section` with `read`, which must look at nothing else of the plan.
    pub(super) fn each(
        &mut self,
        reader: &mut Reader<'_>,
        section: &str,
        records: &[R],
        read: impl Fn(&mut Reader<'_>, usize) -> T,
    ) -> Vec<Rc<T>> {
        let mut before = std::mem::take(&mut self.kept).into_iter();
        for (at, record) in records.iter().enumerate() {
            let known = before.next().filter(|known| known.record == *record);
            let kept = if let Some(known) = known {
                reader.repeat(&known.log);
                known
            } else {
                let findings = reader.findings.count();
                let read = Rc::new(read(reader, at));
                let log = reader.since(&format!("{section}.{at}."), findings);
                Kept { record: record.clone(), log, read }
            };
            self.kept.push(kept);
        }
        self.kept.iter().map(|kept| Rc::clone(&kept.read)).collect()
    }
}

impl Reader<'_> {
    /// What was kept of the fields of one record, and the findings behind the first `findings`.
    fn since(&self, record: &str, findings: usize) -> Log {
        let fields = self.fields.range::<str, _>((Bound::Included(record), Bound::Unbounded));
        let of_record = fields.take_while(|(path, _)| path.starts_with(record));
        Log {
            fields: of_record.map(|(path, state)| (path.clone(), Rc::clone(state))).collect(),
            findings: self.findings.since(findings).to_vec(),
        }
    }

    fn repeat(&mut self, log: &Log) {
        self.fields.extend(log.fields.iter().cloned());
        self.findings.share(&log.findings);
    }
}
