//! A switch with hysteresis that acts when readings in a row agree.

/// A switch on a reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Switch {
    /// It goes on at readings of this or more.
    pub on_at: f64,
    /// It goes off at readings below this.
    pub off_below: f64,
    /// Readings in a row that must agree; 0 counts as 1.
    pub agree: u32,
    is_on: bool,
    streak: u32,
}

/// A switch that changed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SwitchChange {
    /// When, in seconds.
    pub time_s: f64,
    /// Whether it is on from then.
    pub is_on: bool,
}

impl Switch {
    /// A switch that is off.
    pub fn new(on_at: f64, off_below: f64, agree: u32) -> Self {
        Self { on_at, off_below, agree, is_on: false, streak: 0 }
    }

    /// The same switch, on.
    #[must_use]
    pub fn turned_on(mut self) -> Self {
        self.is_on = true;
        self
    }

    /// Whether it is on.
    pub fn is_on(&self) -> bool {
        self.is_on
    }

    /// Takes a reading; says whether the switch changed. Silence (no reading in time) turns it off at once.
    pub fn take(&mut self, reading: Option<f64>) -> bool {
        let Some(reading) = reading else {
            self.streak = 0;
            return std::mem::take(&mut self.is_on);
        };
        let differs = if self.is_on { reading < self.off_below } else { reading >= self.on_at };
        self.streak = if differs { self.streak.saturating_add(1) } else { 0 };
        let changes = differs && self.streak >= self.agree;
        if changes {
            self.is_on = !self.is_on;
            self.streak = 0;
        }
        changes
    }

    /// Passes readings that change nothing: none of them differs from what it is switched to.
    pub fn pass(&mut self) {
        self.streak = 0;
    }

    /// The changes over readings, each with its time.
    pub fn changes(
        mut self,
        readings: impl IntoIterator<Item = (f64, Option<f64>)>,
    ) -> Vec<SwitchChange> {
        let mut changes = Vec::new();
        for (time_s, reading) in readings {
            if self.take(reading) {
                changes.push(SwitchChange { time_s, is_on: self.is_on });
            }
        }
        changes
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(readings: &[Option<f64>], expected: &[(u32, bool)]) {
        let timed = (0_u32..).map(f64::from).zip(readings.iter().copied());
        let changes = Switch::new(100.0, 60.0, 2).changes(timed);
        let expected: Vec<_> = expected
            .iter()
            .map(|&(at, is_on)| SwitchChange { time_s: f64::from(at), is_on })
            .collect();
        assert_eq!(changes, expected, "{readings:?}");
    }

    #[test]
    fn two_readings_in_a_row_must_agree() {
        check(&[Some(100.0), Some(99.9), Some(100.0), Some(100.0)], &[(3, true)]);
    }

    #[test]
    fn between_the_two_levels_nothing_changes() {
        check(&[Some(100.0), Some(100.0), Some(60.0), Some(60.0), Some(99.0)], &[(1, true)]);
    }

    #[test]
    fn one_low_reading_is_not_enough_to_turn_off() {
        check(&[Some(120.0), Some(120.0), Some(59.0), Some(80.0), Some(59.0)], &[(1, true)]);
        check(&[Some(120.0), Some(120.0), Some(59.0), Some(59.0)], &[(1, true), (3, false)]);
    }

    #[test]
    fn silence_turns_off_at_once() {
        check(&[Some(120.0), Some(120.0), None], &[(1, true), (2, false)]);
        check(&[Some(120.0), None, Some(120.0)], &[]);
    }
}
