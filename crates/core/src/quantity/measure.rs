//! The bridge between typed quantities and the numbers people read.

use uom::si::{
    angular_velocity::revolution_per_minute, area::square_meter, electric_current::ampere,
    electric_potential::volt, electrical_resistance::ohm, energy::joule, frequency::hertz,
    inductance::henry, length::meter, power::watt, ratio::ratio,
    thermodynamic_temperature::degree_celsius, time::second, volume_rate::cubic_meter_per_second,
};

use super::{
    Area, CrankAngle, Current, Dimension, Energy, Frequency, Inductance, Length, Power, Ratio,
    Resistance, RotationalSpeed, Temperature, Time, Value, Voltage, VolumeRate,
};

/// A quantity that people type and read.
pub trait Measure: Copy {
    /// Its dimension.
    const DIMENSION: Dimension;
    /// From a number of base units of [`Measure::DIMENSION`].
    fn from_base(number: f64) -> Self;
    /// As a number of base units of [`Measure::DIMENSION`].
    fn base(self) -> f64;
    /// As it is shown.
    fn show(self) -> Value {
        Self::DIMENSION.show(self.base())
    }
}

macro_rules! measure {
    ($($quantity:ty, $unit:ty, $dimension:ident;)*) => {$(
        impl Measure for $quantity {
            const DIMENSION: Dimension = Dimension::$dimension;
            fn from_base(number: f64) -> Self {
                Self::new::<$unit>(number)
            }
            fn base(self) -> f64 {
                self.get::<$unit>()
            }
        }
    )*};
}

measure! {
    Voltage, volt, Voltage;
    Current, ampere, Current;
    Resistance, ohm, Resistance;
    Inductance, henry, Inductance;
    Time, second, Time;
    Length, meter, Length;
    Area, square_meter, WireSize;
    Temperature, degree_celsius, Temperature;
    RotationalSpeed, revolution_per_minute, Speed;
    Ratio, ratio, Share;
    Power, watt, Power;
    Energy, joule, Energy;
    VolumeRate, cubic_meter_per_second, Flow;
    Frequency, hertz, Frequency;
}

impl Measure for CrankAngle {
    const DIMENSION: Dimension = Dimension::Angle;
    fn from_base(number: f64) -> Self {
        Self::new(number)
    }
    fn base(self) -> f64 {
        self.degrees()
    }
    /// To a tenth of a degree: three figures would round 112.5.
    fn show(self) -> Value {
        Self::DIMENSION.show(self.degrees()).said(shown(self.degrees()))
    }
}

fn shown(degrees: f64) -> String {
    if !degrees.is_finite() {
        return Dimension::Angle.show(degrees).into_shown();
    }
    let tenths = crate::math::fixed(degrees, 1);
    let text = tenths.strip_suffix(".0").unwrap_or(&tenths);
    format!("{}°", if text == "-0" { "0".to_owned() } else { text.replace('-', "−") })
}
