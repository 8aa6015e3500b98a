//! Records that were read before: what an edit leaves alone is not read again.

use std::{ops::Bound, rc::Rc};

use super::{FieldState, Reader};
use crate::{finding::Finding, plan::Typed, schema::Part};

/// The records of one list as they were read last, in their order.
#[derive(Clone, Debug)]
pub(crate) struct Before<T> {
    kept: Vec<Kept<T>>,
}

impl<T> Default for Before<T> {
    fn default() -> Self {
        Self { kept: Vec::new() }
    }
}

/// A record, and everything that followed from reading it.
#[derive(Clone, Debug)]
struct Kept<T> {
    /// What was typed in it.
    record: Vec<Typed>,
    log: Log,
    read: Rc<T>,
}

/// What a reader kept while it read.
#[derive(Clone, Debug)]
struct Log {
    fields: Vec<(String, Rc<FieldState>)>,
    findings: Vec<Rc<Finding>>,
}

impl<T> Before<T> {
    /// Forgets what was read.
    pub(crate) fn forget(&mut self) {
        self.kept.clear();
    }

    /// Reads these records of a list with `read`, which must look at nothing else of the plan.
    pub(crate) fn each(
        &mut self,
        reader: &mut Reader<'_>,
        list: Part,
        numbers: impl IntoIterator<Item = usize>,
        read: impl Fn(&mut Reader<'_>, usize) -> T,
    ) -> Vec<Rc<T>> {
        let mut before = std::mem::take(&mut self.kept).into_iter();
        for at in numbers {
            let record = reader.plan().record(list, at);
            let known = before.next().filter(|known| known.record == record);
            let kept = if let Some(known) = known {
                reader.repeat(&known.log);
                known
            } else {
                let findings = reader.findings.count();
                let read = Rc::new(read(reader, at));
                let log = reader.since(&(list.record(at) + "."), findings);
                Kept { record: record.to_vec(), log, read }
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
