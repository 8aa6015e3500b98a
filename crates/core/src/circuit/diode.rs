//! How much current a diode passes at a voltage.

use super::characteristic::Characteristic;

/// The constant `k` in J/K and the charge `q` of the electron in C, exact by the definition of the SI (2019).
const K_J_PER_K: f64 = 1.380649e-23;
const Q_C: f64 = 1.602176634e-19;

/// A diode's law, from anode to cathode.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Diode {
    /// `i = Is (exp(v / (n VT)) - 1)`: the law of a p-n junction, as in any textbook on semiconductors, with the emission
    /// coefficient `n` of real ones.
    Exponential {
        /// `Is`, in amperes: 1e-30 to 1.
        saturation_current_a: f64,
        /// `n`, without unit: usually 1 to 2; here above zero, with `n VT` from 1 microvolt to 1 kilovolt.
        emission_coefficient: f64,
        /// `VT`, in volts: see [`thermal_voltage_v`].
        thermal_voltage_v: f64,
    },
    /// `i = max(0, v - vf) / r`: nothing below the forward voltage, a straight line above.
    Threshold {
        /// `vf`, in volts: 0 to 1e9.
        forward_voltage_v: f64,
        /// `r`, in ohms: 1e-9 to 1e15.
        on_resistance_ohm: f64,
    },
}

/// `k T / q` in volts at an absolute temperature in kelvin: 0.02585 V at 300 K.
pub fn thermal_voltage_v(temperature_k: f64) -> f64 {
    K_J_PER_K * temperature_k / Q_C
}

impl Diode {
    /// The current from anode to cathode in amperes, with the anode `v` volts above the cathode.
    pub fn current_a(self, v: f64) -> f64 {
        Characteristic::from(self).current_a(v.into())
    }

    /// The voltage on which the law turns: `n VT`, or the forward voltage.
    pub(super) fn scale_v(self) -> f64 {
        match self {
            Self::Exponential { emission_coefficient, thermal_voltage_v, .. } => {
                emission_coefficient * thermal_voltage_v
            }
            Self::Threshold { forward_voltage_v, .. } => forward_voltage_v,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::pair::Pair;
    use super::*;

    /// How its current changes between two voltages.
    fn change_a(diode: Diode, v: impl Into<Pair>, dv: f64) -> f64 {
        let law = Characteristic::from(diode);
        law.change_a(&law.tangent(v.into()), dv)
    }

    const EXPONENTIAL: Diode = Diode::Exponential {
        saturation_current_a: 1e-10,
        emission_coefficient: 1.5,
        thermal_voltage_v: 0.0258649,
    };
    const THRESHOLD: Diode = Diode::Threshold { forward_voltage_v: 0.7, on_resistance_ohm: 0.1 };

    #[test]
    fn thermal_voltage_at_27_degrees_is_the_usual_25_9_millivolts() {
        assert!(
            (thermal_voltage_v(300.15) - 0.0258649).abs() < 1e-7,
            "{}",
            thermal_voltage_v(300.15)
        );
    }

    #[test]
    fn the_change_is_the_difference_of_the_currents() {
        for diode in [EXPONENTIAL, THRESHOLD] {
            for v in [-40.0, -0.5, 0.0, 0.3, 0.69, 0.7, 0.71, 9.0] {
                for dv in [-50.0, -0.4, -1e-6, 0.0, 1e-6, 0.02, 0.9] {
                    let difference = diode.current_a(v + dv) - diode.current_a(v);
                    let change = change_a(diode, v, dv);
                    let currents = diode.current_a(v + dv).abs() + diode.current_a(v).abs();
                    // `v + dv` was rounded, and the threshold diode has 10 siemens.
                    let error = (change - difference).abs();
                    assert!(error <= 1e-11 * currents + 1e-14, "{diode:?} {v} {dv}");
                }
            }
        }
    }

    #[test]
    fn the_conductance_is_the_slope_of_the_current() {
        for diode in [EXPONENTIAL, THRESHOLD] {
            for v in [-0.5, 0.0, 0.4, 0.8, 7.0] {
                let slope = change_a(diode, v, 1e-9) / 1e-9;
                let conductance = Characteristic::from(diode).tangent(v.into()).siemens;
                assert!((slope - conductance).abs() <= 1e-7 * conductance, "{diode:?} {v}");
            }
        }
    }

    #[test]
    fn no_voltage_overflows() {
        for v in [1e9, 1e12, -1e12] {
            assert!(EXPONENTIAL.current_a(v).is_finite(), "{v}");
            assert!(change_a(EXPONENTIAL, -v, 2.0 * v).is_finite(), "{v}");
        }
    }
}
