//! The only door to `libm`, so that the same plan gives the same bits on every machine.
//!
//! `+ - * /` and square roots are exact everywhere and need no door.

/// e to the power `x`.
pub fn exp(x: f64) -> f64 {
    libm::exp(x)
}

/// e to the power `x`, less 1, exact for small `x`.
pub fn exp_m1(x: f64) -> f64 {
    libm::expm1(x)
}

/// The natural logarithm of `x`; not a number below zero.
pub fn ln(x: f64) -> f64 {
    libm::log(x)
}

/// The natural logarithm of `1 + x`, exact for small `x`.
pub fn ln_1p(x: f64) -> f64 {
    libm::log1p(x)
}

/// The logarithm of `x` to base 10.
pub fn log10(x: f64) -> f64 {
    libm::log10(x)
}

/// `x` to the power `y`.
pub fn pow(x: f64, y: f64) -> f64 {
    libm::pow(x, y)
}

/// The sine of an angle in radians.
pub fn sin(x: f64) -> f64 {
    libm::sin(x)
}

/// The cosine of an angle in radians.
pub fn cos(x: f64) -> f64 {
    libm::cos(x)
}
