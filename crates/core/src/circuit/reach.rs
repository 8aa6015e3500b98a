//! What hangs together.

/// Which potentials hang together, and which with ground.
#[derive(Clone, Debug, Default)]
pub(super) struct Reach {
    /// By place (0 is ground, `k + 1` the potential `k`): a place with a lower number that it hangs together with.
    parents: Vec<usize>,
}

impl Reach {
    /// As many potentials, each alone.
    pub(super) fn clear(&mut self, count: usize) {
        self.parents.clear();
        self.parents.extend(0..=count);
    }

    /// Ties two potentials together; `None` is ground.
    pub(super) fn join(&mut self, a: Option<usize>, b: Option<usize>) {
        let (a, b) = (self.find(a), self.find(b));
        if let Some(parent) = self.parents.get_mut(a.max(b)) {
            *parent = a.min(b);
        }
    }

    /// The lowest potential that this one hangs together with; `None` is ground.
    pub(super) fn root(&self, unknown: Option<usize>) -> Option<usize> {
        self.find(unknown).checked_sub(1)
    }

    /// Whether all of them hang together with ground.
    pub(super) fn is_whole(&self) -> bool {
        // each stands for itself, or for one with a lower number
        self.parents.iter().enumerate().all(|(place, parent)| place == 0 || *parent < place)
    }

    fn find(&self, unknown: Option<usize>) -> usize {
        let mut place = unknown.map_or(0, |k| k + 1);
        while let Some(&parent) = self.parents.get(place) {
            if parent == place {
                break;
            }
            place = parent;
        }
        place
    }
}
