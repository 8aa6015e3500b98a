//! An output with everything that hangs on it, and the outputs that hang together with it.

use super::{Drive, FarEnd, KeyState, Load, OnLevel, Output, Pulse};
use crate::quantity::Current;

/// An output whose on-level is settled, and everything that hangs on it.
#[derive(Clone, Debug, PartialEq)]
pub struct Wiring {
    /// The output.
    pub output: Output,
    /// The level that counts as on.
    pub level: OnLevel,
    /// The loads, solved together.
    pub loads: Vec<Load>,
    /// The outputs that hang together with it through loads between them, solved with it.
    pub beyond: Vec<Pin>,
}

/// An output that hangs together with the one that is asked about.
#[derive(Clone, Debug, PartialEq)]
pub struct Pin {
    /// The output.
    pub output: Output,
    /// The level that counts as on.
    pub level: OnLevel,
    /// What hangs on it with its own end; a load between two outputs is named at one of them only.
    pub loads: Vec<Load>,
}

/// Which outputs are on while the load that is asked about is not asked to act ([`KeyState::OtherOn`]).
///
/// Seen from one load each output that is switched pushes its current one way (see [`crate::output`]), so that the
/// extremes are among each alone and all that push alike.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Commanded {
    /// Those that the key state itself asks for.
    AsStated,
    /// The one with this number among the pins.
    One(usize),
    /// All others for which this level counts as on.
    All(OnLevel),
    /// The load's own output alone, where the load needs both.
    OwnAlone,
}

impl Wiring {
    /// An output with nothing else joined to it.
    pub fn alone(output: Output, level: OnLevel, loads: Vec<Load>) -> Self {
        Self { output, level, loads, beyond: Vec::new() }
    }

    /// The output with this number among the pins, and what counts as on there: 0 is the one that is asked about, the
    /// others follow in the order of `beyond`.
    pub fn pin(&self, number: usize) -> Option<(&Output, OnLevel)> {
        match number.checked_sub(1) {
            None => Some((&self.output, self.level)),
            Some(at) => self.beyond.get(at).map(|pin| (&pin.output, pin.level)),
        }
    }

    /// Every load on every pin.
    pub(super) fn all_loads(&self) -> impl Iterator<Item = &Load> {
        self.loads.iter().chain(self.beyond.iter().flat_map(|pin| &pin.loads))
    }

    /// Whether a load on any of the pins goes there.
    pub(super) fn goes_to(&self, far_end: FarEnd) -> bool {
        self.all_loads().any(|load| load.far_end == far_end)
    }

    /// Every output.
    pub(super) fn outputs(&self) -> impl Iterator<Item = &Output> {
        std::iter::once(&self.output).chain(self.beyond.iter().map(|pin| &pin.output))
    }

    /// The same with what is meant in place of every band.
    #[must_use]
    pub fn exact(&self) -> Self {
        let mut wiring = self.clone();
        let beyond = &mut wiring.beyond;
        wiring.output.settle();
        for pin in &mut *beyond {
            pin.output.settle();
        }
        let loads = beyond.iter_mut().flat_map(|pin| &mut pin.loads);
        wiring.loads.iter_mut().chain(loads).for_each(Load::settle);
        wiring
    }

    /// The same with another level as on; its loads to other outputs are then meant to be driven the other way, and a
    /// diode that stays on its wires is the wrong way round.
    #[must_use]
    pub fn at_level(&self, level: OnLevel) -> Self {
        let mut wiring = Self { level, ..self.clone() };
        for load in &mut wiring.loads {
            let was_from_pin = load.is_from_pin();
            if let Some(partner) = &mut load.partner {
                partner.level = level;
            }
            if load.is_from_pin() != was_from_pin {
                load.suppression.turn();
            }
        }
        wiring
    }

    /// What the stage does in a key state.
    pub fn drive(&self, state: KeyState) -> Drive {
        self.output.drive(self.level, state)
    }

    /// What the output with this number among the pins does in a key state of the load with the number `subject`.
    pub(super) fn drive_at(
        &self,
        number: usize,
        subject: usize,
        state: KeyState,
        commanded: Commanded,
    ) -> Drive {
        let Some((output, level)) = self.pin(number) else { return Drive::Open };
        let is_on = match state {
            KeyState::Cranking | KeyState::On | KeyState::Pulsed => {
                number == 0 || self.needs(subject) == Some(number)
            }
            KeyState::OtherOn | KeyState::Outlived => self.is_on(number, commanded),
            _ => return output.drive(level, state),
        };
        output.drive(level, if is_on { KeyState::On } else { KeyState::Off })
    }

    /// Whether an output is on in the state in which others are.
    pub(super) fn is_on(&self, number: usize, commanded: Commanded) -> bool {
        match commanded {
            Commanded::AsStated => false,
            Commanded::One(one) => one == number,
            Commanded::All(level) => {
                number > 0 && self.pin(number).is_some_and(|(_, its)| its == level)
            }
            Commanded::OwnAlone => number == 0,
        }
    }

    /// The output that must be on as well for a load to act: the one at its other end, where that does not rest on the
    /// opposite rail, and goes there when it is on.
    pub fn needs(&self, subject: usize) -> Option<usize> {
        let opposite = match self.drive(KeyState::On) {
            Drive::ToGround => Drive::ToSupply,
            Drive::ToSupply => Drive::ToGround,
            Drive::Open => return None,
        };
        let number = self.loads.get(subject).and_then(Load::far_pin)?;
        let (output, level) = self.pin(number)?;
        let does = |state| output.drive(level, state) == opposite;
        (!does(KeyState::Off) && does(KeyState::On)).then_some(number)
    }

    /// Whether a load hangs between two outputs that both drive both ways: one of them turns it the one way, the other
    /// one the other.
    pub fn is_reversible(&self, subject: usize) -> bool {
        let partner = self.loads.get(subject).and_then(|load| self.partner(load));
        self.output.stage.is_two_way() && partner.is_some_and(|output| output.stage.is_two_way())
    }

    /// Whether it is then driven the other way, as such a pair is there for.
    pub(super) fn is_turned(&self, subject: usize, commanded: Commanded) -> bool {
        let partner = self.loads.get(subject).and_then(Load::far_pin);
        self.is_reversible(subject) && partner.is_some_and(|it| self.is_on(it, commanded))
    }

    /// Every choice of outputs that are on in a key state, the one at the load's other end first.
    pub(super) fn commands(&self, state: KeyState, subject: usize) -> Vec<Commanded> {
        if state == KeyState::Outlived {
            return vec![Commanded::AsStated, Commanded::OwnAlone];
        }
        if state != KeyState::OtherOn {
            return vec![Commanded::AsStated];
        }
        let partner = self.loads.get(subject).and_then(Load::far_pin);
        let others = (1..=self.beyond.len()).filter(|number| Some(*number) != partner);
        let mut commands: Vec<_> = partner.into_iter().chain(others).map(Commanded::One).collect();
        for level in OnLevel::BOTH {
            if self.beyond.iter().filter(|pin| pin.level == level).count() > 1 {
                commands.push(Commanded::All(level));
            }
        }
        if self.needs(subject).is_some() {
            commands.push(Commanded::OwnAlone);
        }
        commands
    }

    /// Whether two states are the same circuit: an output that is off is as open as one that starts.
    pub(super) fn is_the_same(&self, one: KeyState, other: KeyState) -> bool {
        let is_up = |state| matches!(state, KeyState::Starting | KeyState::Off);
        let mut pins = (0..=self.beyond.len()).filter_map(|number| self.pin(number));
        is_up(one)
            && is_up(other)
            && pins.all(|(output, level)| output.drive(level, one) == output.drive(level, other))
    }

    /// How its pin is pulsed: as the first of its loads that is.
    pub fn pulse(&self) -> Option<Pulse> {
        self.loads.iter().find_map(|load| load.pulse)
    }

    /// The output at the other end of a load, where there is one.
    pub(super) fn partner(&self, load: &Load) -> Option<&Output> {
        self.pin(load.far_pin()?).map(|(output, _)| output)
    }

    /// The most that the load's output may carry, and the output at its other end, where there is one.
    pub fn current_limit(&self, subject: usize) -> Option<Current> {
        let other = self.loads.get(subject).and_then(|load| self.partner(load)?.current_limit);
        let limits = [self.output.current_limit, other].into_iter().flatten().map(|it| it.low);
        limits.reduce(|one, other| if other < one { other } else { one })
    }
}

impl Load {
    /// The output at its other end among the pins of its wiring, where that is one.
    pub(super) fn far_pin(&self) -> Option<usize> {
        let partner = self.partner.filter(|_| self.far_end == FarEnd::Output)?;
        Some(partner.pin)
    }
}
