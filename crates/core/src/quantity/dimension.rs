//! The dimensions people type, and the spellings of their units.

use super::Value;

/// A unit as people spell it: the value in base units is `number * factor + offset`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unit {
    /// How it may be typed.
    pub spelling: &'static str,
    /// Base units in one of it.
    pub factor: f64,
    /// Base units at its zero.
    pub offset: f64,
}

const fn unit(spelling: &'static str, factor: f64) -> Unit {
    Unit { spelling, factor, offset: 0.0 }
}

/// What kind of quantity a text stands for.
///
/// The base unit of each is the first in [`Dimension::units`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dimension {
    /// Volts.
    Voltage,
    /// Amperes.
    Current,
    /// Ohms.
    Resistance,
    /// Henries.
    Inductance,
    /// Seconds.
    Time,
    /// Metres.
    Length,
    /// Square metres of a conductor; AWG numbers are turned into it by ASTM B258.
    WireSize,
    /// Degrees Celsius.
    Temperature,
    /// Revolutions per minute.
    Speed,
    /// A share of one.
    Share,
    /// Degrees of the crankshaft.
    Angle,
    /// Watts.
    Power,
    /// Joules.
    Energy,
    /// Cubic metres per second.
    Flow,
    /// Hertz.
    Frequency,
    /// Pascals.
    Pressure,
    /// Kilograms per second.
    MassFlow,
    /// Kilograms per cubic metre.
    Density,
    /// Kilograms of fuel per joule of work.
    Consumption,
    /// Farads.
    Capacitance,
    /// Ampere-hours.
    Charge,
    /// Bits per second.
    BitRate,
}

impl Dimension {
    /// Every dimension.
    pub const ALL: [Self; 22] = [
        Self::Voltage,
        Self::Current,
        Self::Resistance,
        Self::Inductance,
        Self::Time,
        Self::Length,
        Self::WireSize,
        Self::Temperature,
        Self::Speed,
        Self::Share,
        Self::Angle,
        Self::Power,
        Self::Energy,
        Self::Flow,
        Self::Frequency,
        Self::Pressure,
        Self::MassFlow,
        Self::Density,
        Self::Consumption,
        Self::Capacitance,
        Self::Charge,
        Self::BitRate,
    ];

    /// The spellings, base unit first.
    pub fn units(self) -> &'static [Unit] {
        match self {
            Self::Voltage => VOLTAGE,
            Self::Current => CURRENT,
            Self::Resistance => RESISTANCE,
            Self::Inductance => INDUCTANCE,
            Self::Time => TIME,
            Self::Length => LENGTH,
            Self::WireSize => WIRE_SIZE,
            Self::Temperature => TEMPERATURE,
            Self::Speed => SPEED,
            Self::Share => SHARE,
            Self::Angle => ANGLE,
            Self::Power => POWER,
            Self::Energy => ENERGY,
            Self::Flow => FLOW,
            Self::Frequency => FREQUENCY,
            Self::Pressure => PRESSURE,
            Self::MassFlow => MASS_FLOW,
            Self::Density => DENSITY,
            Self::Consumption => CONSUMPTION,
            Self::Capacitance => CAPACITANCE,
            Self::Charge => CHARGE,
            Self::BitRate => BIT_RATE,
        }
    }

    /// The name with its article, for sentences.
    pub fn name(self) -> &'static str {
        match self {
            Self::Voltage => "a voltage",
            Self::Current => "a current",
            Self::Resistance => "a resistance",
            Self::Inductance => "an inductance",
            Self::Time => "a time",
            Self::Length => "a length",
            Self::WireSize => "a wire size",
            Self::Temperature => "a temperature",
            Self::Speed => "a speed of rotation",
            Self::Share => "a share",
            Self::Angle => "an angle",
            Self::Power => "a power",
            Self::Energy => "an energy",
            Self::Flow => "a flow",
            Self::Frequency => "a frequency",
            Self::Pressure => "a pressure",
            Self::MassFlow => "a mass flow",
            Self::Density => "a density",
            Self::Consumption => "a specific fuel consumption",
            Self::Capacitance => "a capacitance",
            Self::Charge => "a charge",
            Self::BitRate => "a bit rate",
        }
    }

    /// The scales in which a value is shown, largest first: units of the scale in one base unit, and its sign.
    pub(crate) fn scales(self) -> &'static [(f64, &'static str)] {
        match self {
            Self::Voltage => &[(1.0, "V"), (1e3, "mV")],
            Self::Current => &[(1.0, "A"), (1e3, "mA"), (1e6, "µA")],
            Self::Resistance => &[(1e-6, "MΩ"), (1e-3, "kΩ"), (1.0, "Ω"), (1e3, "mΩ")],
            Self::Inductance => &[(1.0, "H"), (1e3, "mH"), (1e6, "µH")],
            Self::Time => &[(1.0, "s"), (1e3, "ms"), (1e6, "µs")],
            Self::Length => &[(1.0, "m"), (1e3, "mm")],
            Self::WireSize => &[(1e6, "mm²")],
            Self::Temperature => &[(1.0, "°C")],
            Self::Speed => &[(1.0, "rpm")],
            Self::Share => &[(100.0, "%")],
            Self::Angle => &[(1.0, "°")],
            Self::Power => &[(1e-3, "kW"), (1.0, "W"), (1e3, "mW")],
            Self::Energy => &[(1.0, "J"), (1e3, "mJ"), (1e6, "µJ")],
            Self::Flow => &[(6e7, "cc/min")],
            Self::Frequency => &[(1e-3, "kHz"), (1.0, "Hz")],
            Self::Pressure => &[(1e-5, "bar"), (1e-2, "mbar")],
            Self::MassFlow => &[(1e3, "g/s")],
            Self::Density => &[(1e-3, "kg/l")],
            Self::Consumption => &[(3.6e9, "g/kWh")],
            Self::Capacitance => &[(1e6, "µF"), (1e9, "nF"), (1e12, "pF")],
            Self::Charge => &[(1.0, "Ah"), (1e3, "mAh")],
            Self::BitRate => &[(1e-6, "Mbit/s"), (1e-3, "kbit/s"), (1.0, "bit/s")],
        }
    }

    /// Below this size in base units a value is shown as nought: no meter tells it from none.
    pub(crate) fn nought(self) -> f64 {
        match self {
            Self::Voltage => 5e-4,
            Self::Current => 5e-7,
            Self::WireSize | Self::Flow => 1e-12,
            Self::Consumption | Self::Capacitance => 1e-13,
            _ => 1e-9,
        }
    }

    /// A value in base units as it reads in the unit with this spelling, `52 lb/h`.
    pub fn shown_in(self, base: f64, spelling: &str) -> String {
        let unit = self.units().iter().find(|unit| unit.spelling == spelling);
        let in_unit = unit.map_or(base, |unit| (base - unit.offset) / unit.factor);
        [super::number(in_unit).as_str(), spelling].join(" ")
    }

    /// A value in base units, as it is shown.
    pub fn show(self, base: f64) -> Value {
        Value::scaled(base, self)
    }
}

const VOLTAGE: &[Unit] =
    &[unit("V", 1.0), unit("volt", 1.0), unit("volts", 1.0), unit("mV", 1e-3), unit("kV", 1e3)];
const CURRENT: &[Unit] = &[
    unit("A", 1.0),
    unit("amp", 1.0),
    unit("amps", 1.0),
    unit("mA", 1e-3),
    unit("µA", 1e-6),
    unit("uA", 1e-6),
];
const RESISTANCE: &[Unit] = &[
    unit("ohm", 1.0),
    unit("ohms", 1.0),
    unit("Ω", 1.0),
    unit("R", 1.0),
    unit("mohm", 1e-3),
    unit("mΩ", 1e-3),
    unit("milliohm", 1e-3),
    unit("k", 1e3),
    unit("K", 1e3),
    unit("kohm", 1e3),
    unit("kΩ", 1e3),
    unit("M", 1e6),
    unit("Mohm", 1e6),
    unit("MΩ", 1e6),
    unit("megohm", 1e6),
];
const INDUCTANCE: &[Unit] = &[unit("H", 1.0), unit("mH", 1e-3), unit("µH", 1e-6), unit("uH", 1e-6)];
const TIME: &[Unit] = &[
    unit("s", 1.0),
    unit("sec", 1.0),
    unit("seconds", 1.0),
    unit("ms", 1e-3),
    unit("µs", 1e-6),
    unit("us", 1e-6),
    unit("min", 60.0),
];
const LENGTH: &[Unit] = &[
    unit("m", 1.0),
    unit("cm", 1e-2),
    unit("mm", 1e-3),
    unit("ft", 0.3048),
    unit("feet", 0.3048),
    unit("foot", 0.3048),
    unit("'", 0.3048),
    unit("in", 0.0254),
    unit("inch", 0.0254),
    unit("inches", 0.0254),
    unit("\"", 0.0254),
];
const WIRE_SIZE: &[Unit] = &[
    unit("m2", 1.0),
    unit("m²", 1.0),
    unit("m^2", 1.0),
    unit("mm2", 1e-6),
    unit("mm²", 1e-6),
    unit("mm^2", 1e-6),
    unit("sqmm", 1e-6),
];
const TEMPERATURE: &[Unit] = &[
    unit("°C", 1.0),
    unit("C", 1.0),
    unit("degC", 1.0),
    Unit { spelling: "K", factor: 1.0, offset: -273.15 },
    Unit { spelling: "°F", factor: 5.0 / 9.0, offset: -160.0 / 9.0 },
    Unit { spelling: "F", factor: 5.0 / 9.0, offset: -160.0 / 9.0 },
    Unit { spelling: "degF", factor: 5.0 / 9.0, offset: -160.0 / 9.0 },
];
const SPEED: &[Unit] =
    &[unit("rpm", 1.0), unit("1/min", 1.0), unit("/min", 1.0), unit("rev/min", 1.0)];
const SHARE: &[Unit] = &[unit("of one", 1.0), unit("%", 1e-2), unit("percent", 1e-2)];
const ANGLE: &[Unit] =
    &[unit("°", 1.0), unit("deg", 1.0), unit("degree", 1.0), unit("degrees", 1.0)];
const POWER: &[Unit] = &[
    unit("W", 1.0),
    unit("watt", 1.0),
    unit("watts", 1.0),
    unit("mW", 1e-3),
    unit("kW", 1e3),
    unit("hp", HORSEPOWER),
    unit("bhp", HORSEPOWER),
    // 75 kgf·m/s, exactly
    unit("PS", 735.49875),
    unit("cv", 735.49875),
];
const ENERGY: &[Unit] = &[unit("J", 1.0), unit("mJ", 1e-3)];
const CAPACITANCE: &[Unit] =
    &[unit("F", 1.0), unit("µF", 1e-6), unit("uF", 1e-6), unit("nF", 1e-9), unit("pF", 1e-12)];
// no coulomb: its C is a temperature, and no battery is printed with it
const CHARGE: &[Unit] = &[
    unit("Ah", 1.0),
    unit("A h", 1.0),
    unit("A·h", 1.0),
    unit("amp hours", 1.0),
    unit("amp-hours", 1.0),
    unit("ampere-hours", 1.0),
    unit("mAh", 1e-3),
];
// k and M are a resistance, where neither is wanted
const BIT_RATE: &[Unit] = &[
    unit("bit/s", 1.0),
    unit("bps", 1.0),
    unit("baud", 1.0),
    unit("kbit/s", 1e3),
    unit("kb/s", 1e3),
    unit("kbps", 1e3),
    unit("kbit", 1e3),
    unit("kbaud", 1e3),
    unit("kBd", 1e3),
    unit("k", 1e3),
    unit("Mbit/s", 1e6),
    unit("Mb/s", 1e6),
    unit("Mbps", 1e6),
    unit("Mbit", 1e6),
    unit("MBd", 1e6),
    unit("M", 1e6),
];
const FREQUENCY: &[Unit] =
    &[unit("Hz", 1.0), unit("hertz", 1.0), unit("1/s", 1.0), unit("kHz", 1e3)];
const PRESSURE: &[Unit] = &[
    unit("Pa", 1.0),
    unit("bar", 1e5),
    unit("mbar", 1e2),
    unit("hPa", 1e2),
    unit("kPa", 1e3),
    unit("MPa", 1e6),
    unit("psi", 6894.757293168),
];
const DENSITY: &[Unit] = &[
    unit("kg/m3", 1.0),
    unit("kg/l", 1e3),
    unit("g/cc", 1e3),
    unit("g/cm3", 1e3),
    unit("g/ml", 1e3),
];
const CONSUMPTION: &[Unit] = &[
    unit("kg/J", 1.0),
    unit("g/kWh", 1e-3 / 3.6e6),
    unit("lb/hph", POUND / 3600.0 / HORSEPOWER),
    unit("lb/hp/h", POUND / 3600.0 / HORSEPOWER),
    unit("lb/hp/hr", POUND / 3600.0 / HORSEPOWER),
    unit("lb/(hp h)", POUND / 3600.0 / HORSEPOWER),
];

/// Kilograms in a pound avoirdupois, exactly.
const POUND: f64 = 0.45359237;
/// Watts in a mechanical horsepower: 550 foot-pounds of force per second.
const HORSEPOWER: f64 = 745.6998715822702;

const CC_PER_MINUTE: f64 = 1e-6 / 60.0;

const MASS_FLOW: &[Unit] = &[
    unit("kg/s", 1.0),
    unit("g/s", 1e-3),
    unit("g/min", 1e-3 / 60.0),
    unit("kg/h", 1.0 / 3600.0),
    unit("lb/h", POUND / 3600.0),
    unit("lb/hr", POUND / 3600.0),
    unit("lbs/h", POUND / 3600.0),
    unit("lbs/hr", POUND / 3600.0),
    unit("lb", POUND / 3600.0),
    unit("lbs", POUND / 3600.0),
];

/// A unit of mass flow as the volume of petrol at 0.745 kg/l, the density that the fuel tables in `tests/reference` use.
/// Where a mass is meant, the question of fuel reads it as one.
const fn of_petrol(spelling: &'static str, kilograms_per_second: f64) -> Unit {
    unit(spelling, kilograms_per_second / 745.0)
}

const FLOW: &[Unit] = &[
    unit("m3/s", 1.0),
    unit("cc/min", CC_PER_MINUTE),
    unit("ccm", CC_PER_MINUTE),
    unit("cc", CC_PER_MINUTE),
    unit("cm3/min", CC_PER_MINUTE),
    unit("ml/min", CC_PER_MINUTE),
    unit("l/min", 1e-3 / 60.0),
    unit("l/h", 1e-3 / 3600.0),
    of_petrol("g/s", 1e-3),
    of_petrol("g/min", 1e-3 / 60.0),
    of_petrol("kg/h", 1.0 / 3600.0),
    of_petrol("lb/h", POUND / 3600.0),
    of_petrol("lb/hr", POUND / 3600.0),
    of_petrol("lbs/h", POUND / 3600.0),
    of_petrol("lbs/hr", POUND / 3600.0),
    of_petrol("lb", POUND / 3600.0),
    of_petrol("lbs", POUND / 3600.0),
];
