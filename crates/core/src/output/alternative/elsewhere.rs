//! The load on another output, or a relay's coil in its stead.

use super::{
    Alternative, Change, Spare, moved,
    search::{Search, each},
};
use crate::output::{
    FarEnd, Load, LoadKind, OnLevel, Output, Pin, Stage, Suppression, Wiring, clean::solve_clean,
};
use crate::quantity::Measure as _;

impl Search<'_> {
    /// A free output: first one where the other end may stay, then one where it moves; `is_turned` where its wires change places.
    pub(super) fn spares(&self, spares: &[Spare], is_turned: bool) -> Vec<Alternative> {
        let ends = self.ends_elsewhere();
        self.at_levels(|wirings| {
            ends.iter().find_map(|far_ends| {
                spares.iter().find_map(|spare| {
                    let (output, number) = (&spare.output, spare.number);
                    let change = |far_end, level| Change::Spare { number, far_end, level };
                    self.on_output(wirings, (output, far_ends.as_slice()), is_turned, change)
                })
            })
        })
    }

    /// The same of a winding with nothing across it, with a diode there.
    pub(super) fn spares_with_diode(&self, spares: &[Spare]) -> Vec<Alternative> {
        let is_bare = matches!(self.load.suppression, Suppression::Unknown | Suppression::None);
        if !is_bare || self.load.inductance.high.base() <= 0.0 {
            return Vec::new();
        }
        let ends = self.ends_elsewhere();
        let one_way = spares.iter().filter(|it| it.output.levels().len() == 1);
        let one_way: Vec<_> = one_way.filter(|it| !it.output.stage.is_two_way()).collect();
        self.at_levels(|wirings| {
            ends.iter().flatten().find_map(|&far_end| {
                one_way.iter().find_map(|spare| {
                    let change = Change::SpareWithDiode { number: spare.number, far_end };
                    let level = *spare.output.levels().first()?;
                    each(wirings, |before| {
                        let mut load = moved(self.load_of(before)?, far_end);
                        load.suppression = Suppression::Diode { is_right_way: true };
                        let now = self.moved_to(before, &spare.output, level, load);
                        self.solve_moved(change, before, &now)
                    })
                })
            })
        })
    }

    /// An output that drives one way only: one that drives both ways would need its level said too.
    pub(super) fn stages(&self, is_turned: bool) -> Vec<Alternative> {
        if self.load.kind.is_signal() {
            return self.logic();
        }
        let others = Stage::ALL.into_iter().filter(|it| *it != self.wiring.output.stage);
        let stays = [self.load.far_end];
        let on = |wirings: &[&Wiring], stage: Stage, far_ends: &[FarEnd]| {
            let mut output = Output::plain(stage);
            output.current_limit = None;
            output.outlives_key = self.wiring.output.outlives_key;
            let change = |far_end, _| Change::Stage(stage, far_end);
            self.on_output(wirings, (&output, far_ends), is_turned, change)
        };
        let plain = others.filter(|stage| !stage.is_two_way());
        self.at_levels(|wirings| {
            plain
                .clone()
                .find_map(|stage| on(wirings, stage, &stays))
                .or_else(|| plain.clone().find_map(|stage| on(wirings, stage, &FarEnd::OFFERED)))
        })
    }

    /// A logic output in the stead of one that drives an input with 12 V, or that rests at the wrong level.
    fn logic(&self) -> Vec<Alternative> {
        if self.wiring.output.stage == Stage::Logic {
            return Vec::new();
        }
        let (end, change) = (self.load.far_end, Change::Stage(Stage::Logic, self.load.far_end));
        let mut output = Output::plain(Stage::Logic);
        output.outlives_key = self.wiring.output.outlives_key;
        self.at_levels(|wirings| {
            each(wirings, |before| {
                let load = moved(self.load_of(before)?, end);
                let now = self.moved_to(before, &output, OnLevel::Battery, load);
                self.solve_moved(change, before, &now)
            })
        })
    }

    /// A relay's coil in the stead of a load that hangs on the output by itself; not of one that is pulsed, or can only be.
    pub(super) fn relays(&self) -> Vec<Alternative> {
        let goes_here = |pin: &Pin| pin.loads.iter().any(|load| load.far_pin() == Some(0));
        let is_shared = self.wiring.loads.len() > 1 || self.wiring.beyond.iter().any(goes_here);
        let is_none = self.load.kind == LoadKind::RelayCoil
            || self.load.kind == LoadKind::ProportionalValve
            || self.load.kind.is_signal()
            || self.wiring.is_reversible(self.subject);
        if is_none || self.load.pulse.is_some() || is_shared {
            return Vec::new();
        }
        let with_coil = |before: &Wiring, far_end| {
            let coil = moved(&Load::relay_coil(FarEnd::Ignition), far_end);
            let now = Wiring::alone(before.output.clone(), before.level, vec![coil]);
            self.solve_moved(Change::Relay(far_end), before, &now)
        };
        self.at_levels(|wirings| {
            FarEnd::OFFERED
                .into_iter()
                .find_map(|far_end| each(wirings, |before| with_coil(before, far_end)))
        })
    }

    /// The load alone on an output, with the first far end that solves clean; its wires in their places, or turned where that
    /// turns a diode the right way round. Where what counts as on has to be said too, turned wires would be a third thing.
    fn on_output(
        &self,
        wirings: &[&Wiring],
        (output, far_ends): (&Output, &[FarEnd]),
        is_turned: bool,
        change: impl Fn(FarEnd, Option<OnLevel>) -> Change,
    ) -> Option<Alternative> {
        let levels = output.levels();
        let has_diode = matches!(self.load.suppression, Suppression::Diode { .. });
        if is_turned && (levels.len() > 1 || !has_diode) {
            return None;
        }
        far_ends.iter().find_map(|&far_end| {
            levels.iter().find_map(|&level| {
                let said = (levels.len() > 1).then_some(level);
                each(wirings, |before| {
                    let mut load = moved(self.load_of(before)?, far_end);
                    if is_turned {
                        load.suppression.turn();
                    }
                    let now = self.moved_to(before, output, level, load);
                    let found = self.solve_moved(change(far_end, said), before, &now)?;
                    Some(Alternative { is_turned, ..found })
                })
            })
        })
    }

    /// The first load of a wiring in which the subject is where it was not before.
    fn solve_moved(&self, change: Change, before: &Wiring, now: &Wiring) -> Option<Alternative> {
        let found = solve_clean(change, now, 0, self.around, (self.budget, self.borne))?;
        (!self.is_left_uncaught(before, now, 0) && !self.budget.is_short()).then_some(found)
    }

    /// The load on another output; where its other end goes to an output, everything else stays where it hangs.
    fn moved_to(&self, before: &Wiring, output: &Output, level: OnLevel, load: Load) -> Wiring {
        let stays = load.far_end == FarEnd::Output;
        let mut moved = Wiring::alone(output.clone(), level, vec![load]);
        if !stays {
            return moved;
        }
        let mut left = before.loads.clone();
        if self.subject < left.len() {
            left.remove(self.subject);
        }
        moved.beyond.clone_from(&before.beyond);
        moved.beyond.push(Pin { output: before.output.clone(), level: before.level, loads: left });
        let last = moved.beyond.len();
        for partner in moved
            .beyond
            .iter_mut()
            .flat_map(|pin| &mut pin.loads)
            .filter_map(|it| it.partner.as_mut())
        {
            if partner.pin == 0 {
                partner.pin = last;
            }
        }
        moved.at_level(level)
    }
}
