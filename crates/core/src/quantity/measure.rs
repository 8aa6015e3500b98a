//! The bridge between typed quantities and the numbers people read.

use uom::si::{
    angular_velocity::revolution_per_minute, area::square_meter, capacitance::farad,
    electric_charge::ampere_hour, electric_current::ampere, electric_potential::volt,
    electrical_resistance::ohm, energy::joule, frequency::hertz, inductance::henry,
    information_rate::bit_per_second, length::meter, mass_density::kilogram_per_cubic_meter,
    mass_rate::kilogram_per_second, power::watt, pressure::pascal, ratio::ratio,
    thermodynamic_temperature::degree_celsius, time::second, volume_rate::cubic_meter_per_second,
};

use super::{
    Area, BitRate, Capacitance, Charge, CrankAngle, Current, Density, Dimension, Energy, Frequency,
    Inductance, Length, MassFlow, Power, Pressure, Ratio, Resistance, RotationalSpeed,
    SpecificConsumption, Temperature, Time, Value, Voltage, VolumeRate, show::push_short,
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
    Pressure, pascal, Pressure;
    MassFlow, kilogram_per_second, MassFlow;
    Density, kilogram_per_cubic_meter, Density;
    Capacitance, farad, Capacitance;
    Charge, ampere_hour, Charge;
    BitRate, bit_per_second, BitRate;
}

impl Measure for SpecificConsumption {
    const DIMENSION: Dimension = Dimension::Consumption;
    fn from_base(number: f64) -> Self {
        // the type has no name of its own among the SI quantities, and so no unit either
        MassFlow::from_base(number) / Power::from_base(1.0)
    }
    fn base(self) -> f64 {
        (self * Power::from_base(1.0)).base()
    }
}

impl Measure for CrankAngle {
    const DIMENSION: Dimension = Dimension::Angle;
    fn from_base(number: f64) -> Self {
        Self::new(number)
    }
    fn base(self) -> f64 {
        self.degrees()
    }
    /// To a tenth of a degree, as three figures would round 112.5; below a degree more finely, to a thousandth at most:
    /// no crank is known better.
    fn show(self) -> Value {
        Self::DIMENSION.show(self.degrees()).said(shown(self.degrees()))
    }
}

fn shown(degrees: f64) -> String {
    if !degrees.is_finite() {
        return Dimension::Angle.show(degrees).into_shown();
    }
    let places = match degrees.abs() {
        size if size >= 0.995 => 1,
        size if size >= 0.0995 => 2,
        _ => 3,
    };
    let mut text = String::new();
    push_short(&mut text, degrees, places);
    text.push('°');
    text
}
