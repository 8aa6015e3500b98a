//! Parts of one kind: what a record leaves blank is as on the record that it is said to be like.

use super::Plan;
use crate::schema::{Part, Place};

/// A plan in which every record has what it takes from another.
#[derive(Debug)]
pub(crate) struct Filled {
    pub(crate) plan: Plan,
    /// Each place that was blank, and the place of the text that stands there now.
    pub(crate) taken: Vec<(Place, Place)>,
    /// Where a record is said to be like one that is not there, or like itself in the end.
    pub(crate) astray: Vec<(Place, Astray)>,
}

/// Why nothing is taken from a record.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Astray {
    /// None has that name.
    Nowhere,
    /// It is like itself, through however many others.
    Circle,
}

impl Plan {
    /// The plan with what its records take from others; nothing where none is said to be like another.
    pub(crate) fn filled(&self) -> Option<Filled> {
        let mut filled = Filled { plan: self.clone(), taken: Vec::new(), astray: Vec::new() };
        let mut any = false;
        for part in Part::ALL.iter().copied() {
            let Some(like) = place_of(part, "like") else { continue };
            for at in 0..self.count(part) {
                if self.text(like.at(at)).trim().is_empty() {
                    continue;
                }
                any = true;
                match self.models(like, at) {
                    Ok(models) => self.fill(part, at, &models, &mut filled),
                    Err(astray) => filled.astray.push((like.at(at), astray)),
                }
            }
        }
        any.then_some(filled)
    }

    /// The records that one takes from, the nearest first.
    fn models(&self, like: Place, at: usize) -> Result<Vec<usize>, Astray> {
        let name = place_of(like.part(), "name").ok_or(Astray::Nowhere)?;
        let (mut models, mut last) = (Vec::new(), at);
        loop {
            let wanted = self.text(like.at(last)).trim();
            if wanted.is_empty() {
                return Ok(models);
            }
            let bears_it = |it: &usize| self.text(name.at(*it)).trim().eq_ignore_ascii_case(wanted);
            let model = (0..self.count(like.part())).find(bears_it).ok_or(Astray::Nowhere)?;
            if model == at || models.contains(&model) {
                return Err(Astray::Circle);
            }
            models.push(model);
            last = model;
        }
    }

    fn fill(&self, part: Part, at: usize, models: &[usize], filled: &mut Filled) {
        for place in part.places().filter(|place| place.field().is_of_kind) {
            let place = place.at(at);
            if !self.text(place).trim().is_empty() {
                continue;
            }
            let typed = |model: &&usize| !self.text(place.at(**model)).trim().is_empty();
            if let Some(model) = models.iter().find(typed) {
                let from = place.at(*model);
                filled.plan.put(place, self.text(from));
                filled.taken.push((place, from));
            }
        }
    }
}

fn place_of(part: Part, field: &str) -> Option<Place> {
    part.places().find(|place| place.field().name == field)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fields::loads;

    /// Loads with these names, each like the one beside its name.
    fn plan(loads: &[(&str, &str)]) -> Plan {
        let mut plan = Plan::default();
        for (name, like) in loads {
            let at = plan.add(Part::Loads);
            plan.put(loads::NAME.at(at), name);
            plan.put(loads::LIKE.at(at), like);
        }
        plan
    }

    #[test]
    fn what_is_blank_is_taken_from_the_nearest_that_has_it() {
        let mut plan = plan(&[("one", ""), ("two", "One"), ("three", "two")]);
        plan.put(loads::RESISTANCE.at(0), "12 ohm");
        plan.put(loads::KIND.at(0), "solenoid");
        plan.put(loads::KIND.at(1), "motor");
        plan.put(loads::FAR_END.at(0), "ground");
        let filled = plan.filled().expect("there are such");
        assert_eq!(filled.plan.text(loads::RESISTANCE.at(2)), "12 ohm");
        assert_eq!(filled.plan.text(loads::KIND.at(2)), "motor", "the nearer one");
        assert_eq!(filled.plan.text(loads::FAR_END.at(1)), "", "where it is wired is its own");
        assert!(filled.taken.contains(&(loads::KIND.at(2).place(), loads::KIND.at(1).place())));
        assert_eq!(filled.astray, []);
    }

    #[test]
    fn what_leads_nowhere_takes_nothing() {
        let astray = |loads: &[(&str, &str)]| plan(loads).filled().map(|it| it.astray);
        let at = |load| loads::LIKE.at(load).place();
        assert_eq!(astray(&[("one", ""), ("two", "")]), None);
        assert_eq!(astray(&[("one", "three")]), Some(vec![(at(0), Astray::Nowhere)]));
        assert_eq!(astray(&[("one", "one")]), Some(vec![(at(0), Astray::Circle)]));
        let circle =
            vec![(at(0), Astray::Circle), (at(1), Astray::Circle), (at(2), Astray::Circle)];
        assert_eq!(astray(&[("a", "b"), ("b", "a"), ("c", "a")]), Some(circle));
    }
}
