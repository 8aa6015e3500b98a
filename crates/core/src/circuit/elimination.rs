//! Linear equations of a resistive network, solved without a subtraction.

/// Conductances between unknown potentials, and from each to ground.
///
/// Eliminating a node replaces the star of its conductances by the equivalent mesh among its neighbours ("A new network
/// theorem", Journal of the IEE 62, 1924). That is the usual elimination with each pivot taken as the sum of the
/// conductances that are left rather than by subtraction (as for the steady states of random walks: Operations Research
/// 33, 1985, page 1107). Only sums, products and quotients of positive numbers occur, so every equivalent conductance
/// keeps nearly all its digits, whatever the spread. Factorisations from a library subtract: where 1 milliohm hangs on
/// 100 megohm they lose eleven of sixteen digits, and wider spreads make the matrix singular.
#[derive(Clone, Debug)]
pub(super) struct Mesh {
    stars: Vec<Star>,
}

/// What one potential is joined to.
#[derive(Clone, Debug, Default)]
struct Star {
    /// Conductance to each potential with a lower number.
    lower: Vec<f64>,
    ground: f64,
}

impl Mesh {
    /// As many potentials, nothing joined.
    pub(super) fn new(count: usize) -> Self {
        Self { stars: (0..count).map(|k| Star { lower: vec![0.0; k], ground: 0.0 }).collect() }
    }

    /// Adds a conductance between two potentials; `None` is ground.
    pub(super) fn join(&mut self, a: Option<usize>, b: Option<usize>, siemens: f64) {
        let (low, high) = (a.min(b), a.max(b));
        let Some(star) = high.and_then(|high| self.stars.get_mut(high)) else { return };
        match low {
            None => star.ground += siemens,
            Some(low) => {
                if let Some(conductance) = star.lower.get_mut(low) {
                    *conductance += siemens;
                }
            }
        }
    }

    /// The potentials that the given inflows cause. Where a set of potentials hangs on nothing, its lowest is put at
    /// zero.
    pub(super) fn potentials(mut self, mut inflow: Vec<f64>) -> Vec<f64> {
        let mut eliminated = Vec::with_capacity(self.stars.len());
        while let (Some(star), Some(current)) = (self.stars.pop(), inflow.pop()) {
            let total = star.ground + star.lower.iter().sum::<f64>();
            if total > 0.0 {
                self.spread(&star, total);
                for (current_below, conductance) in inflow.iter_mut().zip(&star.lower) {
                    *current_below += conductance / total * current;
                }
            }
            eliminated.push((star, total, current));
        }
        let mut found: Vec<f64> = Vec::with_capacity(eliminated.len());
        for (star, total, current) in eliminated.into_iter().rev() {
            let pull: f64 = star.lower.iter().zip(&found).map(|(siemens, v)| siemens * v).sum();
            found.push(if total > 0.0 { (current + pull) / total } else { 0.0 });
        }
        found
    }

    /// Gives the eliminated star's conductances to its neighbours.
    fn spread(&mut self, star: &Star, total: f64) {
        for (neighbour, &conductance) in self.stars.iter_mut().zip(&star.lower) {
            if conductance > 0.0 {
                let share = conductance / total;
                neighbour.ground += share * star.ground;
                for (between, other) in neighbour.lower.iter_mut().zip(&star.lower) {
                    *between += share * other;
                }
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
        let mut mesh = Mesh::new(2);
        mesh.join(Some(0), Some(1), 1e3);
        mesh.join(None, Some(0), 1e-8);
        let found = mesh.potentials(vec![0.0, 1e-6]);
        assert!((found[0] / 100.0 - 1.0).abs() < 1e-15, "{found:?}");
    }
}
