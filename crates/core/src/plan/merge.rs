//! Two plans that come from one, made one again: field by field, so that nothing that was typed in either is lost unseen.

use super::{Plan, Typed};
use crate::schema::{Part, Place};

/// What can't be had both ways.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Clash {
    /// A field was changed in both, to different texts.
    Text {
        /// The field.
        path: String,
        /// What stands there now: the newer.
        stays: String,
        /// What does not.
        gone: String,
    },
    /// An entry of a list was removed in one and changed in the other: it stays, as it was changed.
    Removed {
        /// The entry, where it stands now.
        path: String,
    },
    /// Both together are more than a plan holds: the newer stays, and nothing of the other.
    TooLarge,
}

/// One plan of two.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Merged {
    /// The plan.
    pub plan: Plan,
    /// What can't be had both ways.
    pub clashes: Vec<Clash>,
}

impl Plan {
    /// The plan with what was changed in either of two that come from it.
    ///
    /// What was changed in one alone is as it is there; of a field that was changed in both the newer text stays, and the
    /// clash is told. Entries of a list are held against each other by their place, but for those behind one that was
    /// added or removed.
    pub fn merged(&self, newer: &Self, older: &Self) -> Merged {
        let mut clashes = Vec::new();
        let mut plan = Self { quietpin: newer.quietpin, ..Self::default() };
        let both = [("name", &self.name, &newer.name, &older.name)];
        let notes = [("notes", &self.notes, &newer.notes, &older.notes)];
        for (path, base, newer, older) in both.into_iter().chain(notes) {
            let text = chosen(|| path.to_owned(), [base, newer, older], &mut clashes);
            plan.set(path, text);
        }
        for &part in Part::ALL {
            let rows = if part.is_list() {
                rows(part, self, newer, older)
            } else {
                vec![MergedRecord { base: Some(0), newer: Some(0), older: Some(0) }]
            };
            plan.set_count(part, rows.len());
            for (at, row) in rows.into_iter().enumerate() {
                row.fill(&mut plan, part, at, [self, newer, older], &mut clashes);
            }
        }
        let kept_in = |it, other: &Self| other.left.contains(it);
        let old = self.left.iter().filter(|it| kept_in(it, newer) && kept_in(it, older));
        let new = newer.left.iter().filter(|it| !kept_in(it, self));
        let other = older.left.iter().filter(|it| !kept_in(it, self) && !kept_in(it, newer));
        plan.left = old.chain(new).chain(other).cloned().collect();
        if plan.fits() {
            Merged { plan, clashes }
        } else {
            Merged { plan: newer.clone(), clashes: vec![Clash::TooLarge] }
        }
    }
}

/// Which of three texts stands: base, newer, older.
fn chosen<'a>(
    path: impl FnOnce() -> String,
    [base, newer, older]: [&'a str; 3],
    clashes: &mut Vec<Clash>,
) -> &'a str {
    if newer == base {
        return older;
    }
    if older != base && older != newer {
        let (stays, gone) = (newer.to_owned(), older.to_owned());
        clashes.push(Clash::Text { path: path(), stays, gone });
    }
    newer
}

/// An entry of a list, by its number in each plan that has it.
struct MergedRecord {
    base: Option<usize>,
    newer: Option<usize>,
    older: Option<usize>,
}

impl MergedRecord {
    fn fill(
        self,
        plan: &mut Plan,
        part: Part,
        at: usize,
        plans: [&Plan; 3],
        clashes: &mut Vec<Clash>,
    ) {
        let (newer, older) = (self.newer.or(self.older), self.older.or(self.newer));
        if self.base.is_some() && (self.newer.is_none() || self.older.is_none()) {
            clashes.push(Clash::Removed { path: part.record(at) });
        }
        // an entry that one of them lacks is as it is in the other
        let mut sides = [(plans[0], self.base), (plans[1], newer), (plans[2], older)];
        if self.newer.is_none() {
            sides[1].0 = plans[2];
        }
        if self.older.is_none() {
            sides[2].0 = plans[1];
        }
        let record =
            |(plan, at): (&'_ Plan, Option<usize>)| at.map(|at| plan.record(part, at).to_vec());
        let mut places: Vec<Place> = sides
            .iter()
            .filter_map(|it| record(*it))
            .flatten()
            .map(|(place, _)| place.at(at))
            .collect();
        places.sort_unstable();
        places.dedup();
        for place in places {
            let texts = sides.map(|(plan, at)| at.map_or("", |at| plan.text(place.at(at))));
            let text = chosen(|| place.path(), texts, clashes).to_owned();
            plan.keep(place, text);
        }
    }
}

/// The entries of a list that stay: those that there were, then those that were added.
fn rows(part: Part, base: &Plan, newer: &Plan, older: &Plan) -> Vec<MergedRecord> {
    let (to_newer, to_older) = (Aligned::of(part, base, newer), Aligned::of(part, base, older));
    let mut rows = Vec::new();
    for at in 0..base.count(part) {
        let row = MergedRecord {
            base: Some(at),
            newer: to_newer.of_base(at),
            older: to_older.of_base(at),
        };
        let is_as_it_was = |side: &Plan, there: Option<usize>| {
            there.is_none_or(|there| same_texts(base.record(part, at), side.record(part, there)))
        };
        let is_removed = row.newer.is_none() || row.older.is_none();
        if !is_removed || !is_as_it_was(newer, row.newer) || !is_as_it_was(older, row.older) {
            rows.push(row);
        }
    }
    let added: Vec<_> = to_newer.added().collect();
    let is_there = |it: &usize| {
        let same = |new: &usize| same_texts(newer.record(part, *new), older.record(part, *it));
        added.iter().any(same)
    };
    let of_older: Vec<_> = to_older.added().filter(|it| !is_there(it)).collect();
    rows.extend(added.iter().map(|it| MergedRecord { base: None, newer: Some(*it), older: None }));
    rows.extend(of_older.into_iter().map(|it| MergedRecord {
        base: None,
        newer: None,
        older: Some(it),
    }));
    rows
}

fn same_texts(one: &[Typed], other: &[Typed]) -> bool {
    let texts = |(place, text): &'_ Typed| (place.at(0), text.clone());
    one.iter().map(texts).eq(other.iter().map(texts))
}

/// Which entry of a list is which of the list that it comes from: those alike at the start and at the end are the same, and of
/// those between as many as there are of both.
struct Aligned {
    after: usize,
    base: usize,
    side: usize,
}

impl Aligned {
    fn of(part: Part, base: &Plan, side: &Plan) -> Self {
        let (of_base, of_side) = (base.count(part), side.count(part));
        let most = of_base.min(of_side);
        let same =
            |one: usize, other: usize| same_texts(base.record(part, one), side.record(part, other));
        let before = (0..most).take_while(|at| same(*at, *at)).count();
        let from_end = |at: &usize| same(of_base - 1 - at, of_side - 1 - at);
        let after = (0..most - before).take_while(from_end).count();
        Self { after, base: of_base, side: of_side }
    }

    fn of_base(&self, at: usize) -> Option<usize> {
        if at < self.side.min(self.base) - self.after {
            return Some(at);
        }
        let from_end = self.base - at;
        (from_end <= self.after).then(|| self.side - from_end)
    }

    fn added(&self) -> impl Iterator<Item = usize> {
        self.base - self.after..self.side - self.after
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fields::{engine, loads};

    fn plan(names: &[&str]) -> Plan {
        let mut plan = Plan::named("car");
        for name in names {
            let at = plan.add(Part::Loads);
            plan.put(loads::NAME.at(at), name);
        }
        plan
    }

    fn names(plan: &Plan) -> Vec<&str> {
        (0..plan.count(Part::Loads)).map(|at| plan.text(loads::NAME.at(at))).collect()
    }

    fn put(plan: &Plan, place: impl Into<Place>, text: &str) -> Plan {
        let mut plan = plan.clone();
        assert!(plan.put(place, text), "it is there");
        plan
    }

    fn without(plan: &Plan, at: usize) -> Plan {
        let mut plan = plan.clone();
        plan.remove(Part::Loads, at);
        plan
    }

    #[test]
    fn what_was_changed_in_one_alone_is_as_it_is_there() {
        let base = put(&plan(&["fan", "lamp"]), engine::ORDER, "1-3-4-2");
        let newer = put(&base, engine::CYLINDERS, "4").renamed("other");
        let older = put(&put(&base, engine::ORDER, ""), loads::NAME.at(1), "horn");
        let merged = base.merged(&newer, &older);
        assert_eq!(merged.clashes, []);
        let expected = put(&put(&newer, engine::ORDER, ""), loads::NAME.at(1), "horn");
        assert_eq!(merged.plan, expected);
    }

    #[test]
    fn of_a_field_that_was_changed_in_both_the_newer_stays_and_the_other_is_told() {
        let base = plan(&[]);
        let (newer, older) =
            (put(&base, engine::ORDER, "1-3-4-2"), put(&base, engine::ORDER, "1-2-4-3"));
        let merged = base.merged(&newer, &older);
        assert_eq!(merged.plan, newer);
        let (path, stays, gone) = ("engine.order".into(), "1-3-4-2".into(), "1-2-4-3".into());
        assert_eq!(merged.clashes, [Clash::Text { path, stays, gone }]);
        assert_eq!(base.merged(&newer, &newer).clashes, [], "the same was typed in both");
    }

    #[test]
    fn an_entry_that_one_removes_takes_nothing_of_another_along() {
        let base = plan(&["fan", "lamp", "horn"]);
        let (newer, older) = (without(&base, 0), put(&base, loads::NAME.at(2), "siren"));
        for (one, other) in [(&newer, &older), (&older, &newer)] {
            let merged = base.merged(one, other);
            assert_eq!(names(&merged.plan), ["lamp", "siren"]);
            assert_eq!(merged.clashes, []);
        }
    }

    #[test]
    fn an_entry_that_one_removes_and_the_other_changes_stays_and_is_told() {
        let base = plan(&["fan", "lamp"]);
        let (newer, older) = (without(&base, 1), put(&base, loads::NAME.at(1), "horn"));
        for (one, other) in [(&newer, &older), (&older, &newer)] {
            let merged = base.merged(one, other);
            assert_eq!(names(&merged.plan), ["fan", "horn"]);
            assert_eq!(merged.clashes, [Clash::Removed { path: "loads.1".into() }]);
        }
    }

    #[test]
    fn entries_that_both_add_are_all_there_and_one_that_is_the_same_is_there_once() {
        let base = plan(&["fan"]);
        let merged = base.merged(&plan(&["fan", "lamp"]), &plan(&["fan", "horn", "lamp"]));
        assert_eq!(names(&merged.plan), ["fan", "lamp", "horn"]);
        let both_removed = base.merged(&plan(&[]), &plan(&["lamp", "fan"]));
        assert_eq!(names(&both_removed.plan), ["lamp"], "{:?}", both_removed.clashes);
    }

    #[test]
    fn what_has_no_place_is_dropped_where_one_drops_it_and_kept_where_one_has_more() {
        let left = |texts: &[&str]| Plan {
            left: texts.iter().map(|it| ("path".to_owned(), (*it).to_owned())).collect(),
            ..Plan::default()
        };
        let merged = left(&["a", "b"]).merged(&left(&["b", "c"]), &left(&["a", "b", "d"]));
        assert_eq!(merged.plan, left(&["b", "c", "d"]));
    }

    #[test]
    fn what_together_is_more_than_a_plan_holds_is_told() {
        let base = plan(&[]);
        let newer = put(&base, engine::ORDER, &"1".repeat(600_000));
        let older = put(&base, engine::CYLINDERS, &"1".repeat(600_000));
        let merged = base.merged(&newer, &older);
        assert_eq!(merged.plan, newer);
        assert_eq!(merged.clashes, [Clash::TooLarge]);
    }
}
