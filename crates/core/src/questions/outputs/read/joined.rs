//! Which outputs hang together through loads between them.

use std::rc::Rc;

use super::{OutputLink, PlannedLoad, PlannedRest};
use crate::output::{FarEnd, Load, OnLevel, Output, Pin, Wiring};

impl PlannedLoad {
    /// Whether enough of it is known.
    pub(crate) fn is_solved(&self) -> bool {
        self.far_end.is_some() && !self.is_unreadable
    }

    /// The two outputs that it joins, where it is one of a bridge.
    fn joins(&self) -> Option<(usize, usize)> {
        match (self.link, self.partner) {
            (OutputLink::To(own), Some(far))
                if self.is_solved() && self.far_end == Some(FarEnd::Output) =>
            {
                Some((own, far))
            }
            _ => None,
        }
    }
}

impl PlannedRest {
    /// The outputs that hang together with this one, itself first, then as the loads come.
    pub(crate) fn joined(&self, output: usize) -> Vec<usize> {
        let mut joined = vec![output];
        let mut at = 0;
        while let Some(&from) = joined.get(at) {
            for (own, far) in self.loads.iter().filter_map(|load| load.joins()) {
                let there = if own == from { far } else { own };
                if (own == from || far == from)
                    && self.stage(there).is_some()
                    && !joined.contains(&there)
                {
                    joined.push(there);
                }
            }
            at += 1;
        }
        joined
    }

    /// The first output that hangs together with this one, of which it is not known what counts as on.
    pub(crate) fn undecided(&self, output: usize) -> Option<usize> {
        let mut joined = self.joined(output).into_iter().skip(1);
        joined.find(|number| self.stage(*number).is_some_and(|it| it.levels().len() > 1))
    }

    /// An output with everything that hangs together with it; `level` is on wherever that is not known, so that a pair
    /// is set alike.
    pub(crate) fn wiring(&self, output: usize, level: OnLevel) -> Option<Wiring> {
        let pins = self.joined(output);
        let own = self.stage(output)?.clone();
        let beyond = pins.iter().skip(1).filter_map(|number| {
            let output = self.stage(*number)?.clone();
            let level = settled(&output, level);
            Some(Pin { output, level, loads: self.hanging(*number, &pins, level) })
        });
        let beyond = beyond.collect();
        let level = settled(&own, level);
        let loads = self.hanging(output, &pins, level);
        Some(Wiring { output: own, level, loads, beyond })
    }

    /// The number of a load among those on its output of which enough is known.
    pub(crate) fn place(&self, load: &PlannedLoad) -> Option<usize> {
        let mut known =
            self.loads.iter().filter(|other| other.link == load.link && other.is_solved());
        known.position(|other| other.place == load.place)
    }

    fn stage(&self, output: usize) -> Option<&Output> {
        self.outputs.get(output)?.output.as_ref()
    }

    /// The loads with their own end on an output, as far as enough is known of them.
    fn hanging(&self, output: usize, pins: &[usize], level: OnLevel) -> Vec<Load> {
        let hangs = self
            .loads
            .iter()
            .filter(|load| load.link == OutputLink::To(output) && load.is_solved());
        let there = |load: &Rc<PlannedLoad>| {
            let far_pin = load.partner.and_then(|far| pins.iter().position(|it| *it == far));
            Some(load.to(load.far_end?, far_pin.unwrap_or(0), level))
        };
        hangs.filter_map(there).collect()
    }
}

fn settled(output: &Output, level: OnLevel) -> OnLevel {
    match output.levels() {
        [only] => *only,
        _ => level,
    }
}
