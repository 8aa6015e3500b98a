//! Numbers at random, the same ones from the same seed.
#![expect(
    clippy::indexing_slicing,
    clippy::cast_possible_truncation,
    reason = "what is drawn from is not empty, and lies in memory"
)]

/// `SplitMix64`: G. L. Steele, D. Lea, C. H. Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014.
#[derive(Clone, Debug)]
pub struct Random {
    state: u64,
}

impl Random {
    /// The numbers of one circuit: any can be drawn again without those before it.
    pub fn of(seed: u64, index: usize) -> Self {
        let mut mixed = Self { state: seed };
        mixed.state = mixed.next() ^ index as u64;
        mixed.state = mixed.next();
        mixed
    }

    fn next(&mut self) -> u64 {
        self.state = self.state.wrapping_add(0x9e3779b97f4a7c15);
        let z = (self.state ^ (self.state >> 30)).wrapping_mul(0xbf58476d1ce4e5b9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94d049bb133111eb);
        z ^ (z >> 31)
    }

    /// From 0 up to, but not including, 1.
    fn unit(&mut self) -> f64 {
        // 32 bits are exact in an `f64`, and more than the six digits that are kept.
        f64::from((self.next() >> 32) as u32) / 4294967296.0
    }

    /// From 0 up to, but not including, `end`, which is above zero.
    pub fn below(&mut self, end: usize) -> usize {
        (self.next() % end as u64) as usize
    }

    /// From `first` to `last`, both possible.
    pub fn between(&mut self, first: usize, last: usize) -> usize {
        first + self.below(last - first + 1)
    }

    /// One of a list that is not empty.
    pub fn one_of<T: Copy>(&mut self, list: &[T]) -> T {
        list[self.below(list.len())]
    }

    /// True so many times in a hundred.
    pub fn percent(&mut self, chance: usize) -> bool {
        self.below(100) < chance
    }

    /// Each number between the two as likely, with six digits.
    pub fn even(&mut self, low: f64, high: f64) -> f64 {
        six_digits(low + (high - low) * self.unit())
    }

    /// Each ratio between the two as likely, with six digits.
    pub fn log_even(&mut self, low: f64, high: f64) -> f64 {
        six_digits(low * (high / low).powf(self.unit()))
    }
}

/// What a netlist says in a few digits is the same number to every program that reads it.
fn six_digits(value: f64) -> f64 {
    format!("{value:.5e}").parse().unwrap_or(value)
}
