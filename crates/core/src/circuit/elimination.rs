//! Linear equations of a resistive network, solved without a subtraction.

/// Conductances between unknown potentials, and from each to ground.
///
/// Eliminating a node replaces the star of its conductances by the equivalent mesh among its neighbours ("A new network
/// theorem", Journal of the IEE 62, 1924). That is the usual elimination with each pivot taken as the sum of the
/// conductances that are left rather than by subtraction (as for the steady states of random walks: Operations Research
/// 33, 1985, page 1107). Only sums, products and quotients of positive numbers occur, so every equivalent conductance
/// keeps nearly all its digits, whatever the spread. Factorisations from a library subtract: where 1 milliohm hangs on
/// 100 megohm they lose eleven of sixteen digits, and wider spreads make the matrix singular.
///
/// What is not joined costs nothing: outputs in a chain are eliminated in as many steps as there are.
#[derive(Clone, Debug, Default)]
pub(super) struct Mesh {
    stars: Vec<Star>,
    /// The conductances from each potential to those with a lower number, one after the other: none for the first, one for
    /// the second, and so on.
    lower: Vec<f64>,
    /// What those that are eliminated are joined to, star by star.
    spokes: Vec<Spoke>,
}

/// What one potential is joined to beside those with a lower number.
#[derive(Clone, Copy, Debug, Default)]
struct Star {
    ground: f64,
    /// All its conductances together, once it is eliminated.
    total: f64,
    /// Where its spokes begin and end.
    spokes: (usize, usize),
}

/// One of them.
#[derive(Clone, Copy, Debug)]
struct Spoke {
    to: usize,
    siemens: f64,
    /// The same as a part of all that the star is joined to.
    share: f64,
}

impl Mesh {
    /// As many potentials, nothing joined.
    pub(super) fn clear(&mut self, count: usize) {
        self.stars.clear();
        self.stars.resize(count, Star::default());
        self.lower.fill(0.0);
        self.lower.resize(before(count), 0.0);
        self.spokes.clear();
    }

    /// Adds a conductance between two potentials; `None` is ground.
    pub(super) fn join(&mut self, a: Option<usize>, b: Option<usize>, siemens: f64) {
        let (low, high) = (a.min(b), a.max(b));
        let Some(high) = high else { return };
        let place = match low {
            None => self.stars.get_mut(high).map(|star| &mut star.ground),
            Some(low) => self.lower.get_mut(before(high) + low),
        };
        if let Some(conductance) = place {
            *conductance += siemens;
        }
    }

    /// Eliminates the potentials one after the other, the last first.
    pub(super) fn eliminate(&mut self) {
        let (mut stars, mut lower) = (self.stars.as_mut_slice(), self.lower.as_mut_slice());
        while let Some((star, stars_below)) = stars.split_last_mut() {
            let until = before(stars_below.len());
            let Some((below, row)) = lower.split_at_mut_checked(until) else { break };
            let first = self.spokes.len();
            let mut joined = 0.0;
            for (to, siemens) in row.iter().enumerate().filter(|(_, siemens)| **siemens > 0.0) {
                joined += siemens;
                self.spokes.push(Spoke { to, siemens: *siemens, share: 0.0 });
            }
            star.total = star.ground + joined;
            star.spokes = (first, self.spokes.len());
            if let Some(spokes) = self.spokes.get_mut(first..) {
                spread(*star, spokes, stars_below, below);
            }
            (stars, lower) = (stars_below, below);
        }
    }

    /// The potentials that the given inflows cause, once all are eliminated. Where a set of potentials hangs on nothing, its
    /// lowest is put at zero.
    pub(super) fn potentials(&self, inflow: &mut [f64], found: &mut Vec<f64>) {
        let mut above = &mut *inflow;
        for star in self.stars.iter().rev() {
            let Some((current, below)) = above.split_last_mut() else { break };
            for spoke in self.spokes_of(star) {
                if let Some(current_below) = below.get_mut(spoke.to) {
                    *current_below += spoke.share * *current;
                }
            }
            above = below;
        }
        found.clear();
        for (star, current) in self.stars.iter().zip(inflow) {
            let mut pull = 0.0;
            for spoke in self.spokes_of(star) {
                pull += spoke.siemens * found.get(spoke.to).copied().unwrap_or(0.0);
            }
            found.push(if star.total > 0.0 { (*current + pull) / star.total } else { 0.0 });
        }
    }

    fn spokes_of(&self, star: &Star) -> &[Spoke] {
        self.spokes.get(star.spokes.0..star.spokes.1).unwrap_or_default()
    }
}

/// How many conductances the potentials before this one have to lower ones.
fn before(k: usize) -> usize {
    k * k.saturating_sub(1) / 2
}

/// Gives an eliminated star's conductances to its neighbours.
fn spread(star: Star, spokes: &mut [Spoke], below: &mut [Star], lower: &mut [f64]) {
    for at in 0..spokes.len() {
        let Some((nearer, [spoke, ..])) = spokes.split_at_mut_checked(at) else { break };
        spoke.share = spoke.siemens / star.total;
        if let Some(neighbour) = below.get_mut(spoke.to) {
            neighbour.ground += spoke.share * star.ground;
        }
        let first = before(spoke.to);
        for other in nearer {
            if let Some(between) = lower.get_mut(first + other.to) {
                *between += spoke.share * other.siemens;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A milliohm between two nodes, 100 megohm from the first to ground, 1 microampere into the second.
    #[test]
    fn a_milliohm_hanging_on_a_hundred_megohm_keeps_its_digits() {
        let mut mesh = Mesh::default();
        mesh.clear(2);
        mesh.join(Some(0), Some(1), 1e3);
        mesh.join(None, Some(0), 1e-8);
        mesh.eliminate();
        let mut found = Vec::new();
        mesh.potentials(&mut [0.0, 1e-6], &mut found);
        assert!((found[0] / 100.0 - 1.0).abs() < 1e-15, "{found:?}");
    }
}
