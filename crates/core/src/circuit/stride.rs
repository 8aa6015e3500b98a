//! How far to follow a step downhill.

use std::cmp::Ordering;

/// How many steps, more or less, until the least of a convex function along a direction; `None` if it falls without end.
///
/// `steepness` (positive) is how steeply it falls at the start, `change(t)` by how much its slope has risen at `t`; it
/// never falls. The function at the answer lies below the function at the start, and its slope there has shrunk
/// to a tenth. One whole step, the tangent's own, is tried first.
pub(super) fn stride(steepness: f64, change: impl Fn(f64) -> f64) -> Option<f64> {
    const FURTHEST: f64 = 1e18;
    let slope = |t: f64| change(t) - steepness;
    // A slope that has turned upward at `t` is still a gain if it fell long enough before: over the first half at a
    // fifth of the steepness or more, over the second it rose at a tenth or less.
    let judge = |t: f64| {
        let here = slope(t);
        if here < -0.1 * steepness {
            Ordering::Less
        } else if here <= 0.0 || (here <= 0.1 * steepness && slope(t / 2.0) <= -0.2 * steepness) {
            Ordering::Equal
        } else {
            Ordering::Greater
        }
    };
    let (mut near, mut far) = (0.0, 1.0);
    loop {
        match judge(far) {
            Ordering::Equal => return Some(far),
            Ordering::Greater => break,
            Ordering::Less if far > FURTHEST => return None,
            Ordering::Less => (near, far) = (far, far * 2.0),
        }
    }
    loop {
        let middle = f64::midpoint(near, far);
        if middle <= near || middle >= far {
            // The slope turns between two neighbouring numbers, as where a diode begins to conduct: take the far side.
            return Some(far);
        }
        match judge(middle) {
            Ordering::Equal => return Some(middle),
            Ordering::Less => near = middle,
            Ordering::Greater => far = middle,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::math;

    #[test]
    fn a_parabola_takes_one_whole_step() {
        assert_eq!(stride(3.0, |t| 3.0 * t), Some(1.0), "its slope is zero there");
    }

    #[test]
    fn a_late_exponential_is_found() {
        let t = stride(1e-3, |t| math::exp(t * 400.0) * 1e-12).unwrap();
        let slope = math::exp(t * 400.0) * 1e-12 - 1e-3;
        assert!(slope.abs() <= 1e-4, "{t} {slope}");
    }

    #[test]
    fn a_wall_is_met_on_its_far_side() {
        let t = stride(1.0, |t| if t > 0.3 { 1e12 } else { 0.0 }).unwrap();
        assert!(t > 0.3 && t < 0.3 + 1e-15, "{t}");
    }

    #[test]
    fn an_endless_slope_has_no_foot() {
        assert_eq!(stride(1.0, |_| 0.5), None, "it falls at one half for ever");
    }
}
