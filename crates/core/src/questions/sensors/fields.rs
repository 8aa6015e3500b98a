//! The sensors, but for those at crank and cam.

pub mod inputs;
pub mod supplies;

use crate::{
    quantity::{Current, Pressure, Ratio, Resistance, Voltage},
    schema::{
        InputName, NumberRow, Part, SupplyName, Text, Whole, choice, choices, fields, input_name,
        quantity, row, supply_name, text, whole,
    },
    sensor::tracks::TrackRun,
};

/// What a sensor is there to tell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SensorPurpose {
    /// Temperature of the coolant, or of an air-cooled head.
    Coolant,
    /// Temperature of the air in the inlet.
    Air,
    /// Temperature of the oil.
    Oil,
    /// Temperature of the fuel.
    FuelTemperature,
    /// Temperature of the exhaust.
    Exhaust,
    /// Pressure in the manifold.
    Manifold,
    /// Pressure of the air around.
    Barometer,
    /// Pressure of the oil.
    OilPressure,
    /// Pressure of the fuel.
    FuelPressure,
    /// Place of the throttle.
    Throttle,
    /// Place of the pedal.
    Pedal,
    /// Fuel in the tank.
    Level,
    /// Oxygen in the exhaust.
    Oxygen,
    /// Knock.
    Knock,
    /// Speed of a wheel or a shaft.
    Speed,
    /// A switch.
    Switch,
    /// Anything else.
    Other,
}

choices! {
    SensorPurpose {
        Coolant = "coolant", "Coolant temperature";
        Air = "air", "Intake air temperature";
        Oil = "oil", "Oil temperature";
        FuelTemperature = "fuel-temperature", "Fuel temperature";
        Exhaust = "exhaust", "Exhaust temperature";
        Manifold = "manifold", "Manifold pressure";
        Barometer = "barometer", "Air pressure";
        OilPressure = "oil-pressure", "Oil pressure";
        FuelPressure = "fuel-pressure", "Fuel pressure";
        Throttle = "throttle", "Throttle position";
        Pedal = "pedal", "Pedal position";
        Level = "level", "Fuel level";
        Oxygen = "oxygen", "Oxygen (lambda)";
        Knock = "knock", "Knock";
        Speed = "speed", "Speed of a wheel or shaft";
        Switch = "switch", "A switch (clutch, oil, brake)";
        Other = "other", "Something else";
    }
}

/// What a sensor is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SensorType {
    /// A thermistor.
    Ntc,
    /// Platinum, 100 Ω at 0 °C.
    Pt100,
    /// Platinum, 1000 Ω at 0 °C.
    Pt1000,
    /// Pressure as a share of its supply.
    Ratiometric,
    /// A potentiometer.
    Pot,
    /// A resistance that is grounded by its thread.
    Sender,
    /// A switch.
    Switch,
    /// A Hall sensor, or another that gives a frequency.
    Hall,
    /// A knock sensor.
    Knock,
    /// The analogue output of a wide-range oxygen sensor's amplifier.
    Wideband,
    /// The analogue output of a thermocouple's amplifier.
    Thermocouple,
}

choices! {
    SensorType {
        Ntc = "ntc", "Thermistor (NTC), two wires";
        Pt100 = "pt100", "Pt100";
        Pt1000 = "pt1000", "Pt1000";
        Ratiometric = "ratiometric", "Pressure, 5 V, three wires (ratiometric)";
        Pot = "pot", "Potentiometer, or 5 V position sensor";
        Sender = "sender", "Sender grounded by its thread";
        Switch = "switch", "Switch";
        Hall = "hall", "Hall, or other frequency";
        Knock = "knock", "Knock sensor";
        Wideband = "wideband", "Wide-range oxygen, amplifier's output";
        Thermocouple = "thermocouple", "Thermocouple (type K), amplifier's output";
    }
}

/// What a pressure is counted from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PressureFrom {
    /// Nothing.
    Absolute,
    /// The air around.
    Gauge,
}

choices! {
    PressureFrom {
        Absolute = "absolute", "Absolute (reads the air's pressure when open)";
        Gauge = "gauge", "Gauge (reads 0 when open)";
    }
}

choices! {
    TrackRun {
        Mirrored = "mirrored", "The other way (mirrored)";
        Half = "half", "At half the voltage, or twice";
        Alike = "alike", "Alike";
    }
}

/// What a switch connects its input to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SwitchedTo {
    /// Ground.
    Ground,
    /// A sensor supply.
    Supply,
    /// The battery.
    Battery,
}

choices! {
    SwitchedTo {
        Ground = "ground", "Ground";
        Supply = "supply", "A sensor supply (5 V)";
        Battery = "battery", "Battery (12 V)";
    }
}

/// Whether a switch is closed as the car stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SwitchStands {
    /// It is.
    Closed,
    /// It is not.
    Open,
}

choices! {
    SwitchStands {
        Closed = "closed", "Closed";
        Open = "open", "Open";
    }
}

/// What feeds a sensor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SensorFeed {
    /// A sensor supply.
    Supply,
    /// The battery, or the ignition switch.
    Battery,
    /// Nothing but its input.
    Nothing,
}

choices! {
    SensorFeed {
        Supply = "supply", "A sensor supply (5 V)";
        Battery = "battery", "Battery or ignition (12 V)";
        Nothing = "none", "Nothing: input and ground only";
    }
}

/// What else pulls at a sensor's wire.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AlsoPulls {
    /// Nothing.
    Nothing,
    /// A pull-up to 5 V.
    Supply,
    /// An old gauge, fed from the battery.
    Gauge,
}

choices! {
    AlsoPulls {
        Nothing = "none", "Nothing else";
        Supply = "supply", "A second pull-up to 5 V";
        Gauge = "gauge", "An old gauge on 12 V";
    }
}

/// What a table makes temperatures or pressures of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TableOf {
    /// Ohms.
    Ohms,
    /// Volts.
    Volts,
}

choices! {
    TableOf {
        Ohms = "ohms", "Ohms";
        Volts = "volts", "Volts";
    }
}

const NTC: &[&str] = &["ntc"];
const CURVED: &[&str] = &["ntc", "sender", "wideband", "thermocouple"];
const PRESSURE: &[&str] = &["ratiometric"];
const POT: &[&str] = &["pot"];
const SWITCH: &[&str] = &["switch"];
const OHMIC: &[&str] = &["ntc", "pt100", "pt1000", "sender"];
const TABLED: &[&str] =
    &["ntc", "pt100", "pt1000", "sender", "ratiometric", "wideband", "thermocouple"];
const TOLERANT: &[&str] = &["ntc", "sender", "ratiometric"];

fields! {
    of Part::Sensors;
    /// Its name.
    NAME: Text = text("name", "Name of the sensor").hint("coolant, manifold, pedal").first();
    /// What it tells.
    PURPOSE: SensorPurpose = choice("purpose", "It tells the").first();
    /// What it is.
    KIND: SensorType = choice("kind", "Type of sensor")
        .measure("Two wires, ohms that fall as it is warmed in the hand: a thermistor. Three wires: a pressure or position sensor; its data.")
        .first();
    /// The input that it is on.
    INPUT: InputName = input_name("input", "On input");
    /// Its curve, as pairs of what it tells and what is read.
    POINTS: NumberRow = row("points", "Its data, in pairs")
        .hint("-20 16.5k, 20 2450, 80 290: what it tells, then ohms or volts")
        .measure("A pan of water with ice in it, then hot, a thermometer beside the sensor: ohms at three temperatures.")
        .only_if("kind", CURVED);
    /// Resistance at 25 °C.
    R25: Resistance = quantity("r25", "Resistance at 25 °C", "ohm", 1.0, 1e7)
        .hint("with its B value, where its data give no points")
        .only_if("kind", NTC);
    /// B value, in kelvin.
    BETA: Whole = whole("beta", "B value", 1000, 9000)
        .hint("in kelvin, as B25/85")
        .only_if("kind", NTC);
    /// Coefficients of Steinhart and Hart: three, or four in `ln (R / R25)`.
    STEINHART: NumberRow = row("steinhart", "Coefficients of Steinhart and Hart")
        .hint("1.3607e-3 2.5572e-4 1.1559e-7: A B C; four where its data are of R / R25")
        .only_if("kind", NTC)
        .rare();
    /// The lowest pressure of its range.
    RANGE_LOW: Pressure = quantity("range_low", "Pressure at its lower voltage", "kPa", -101.0, 1e5)
        .only_if("kind", PRESSURE);
    /// The highest pressure of its range.
    RANGE_HIGH: Pressure = quantity("range_high", "Pressure at its upper voltage", "kPa", 1.0, 1e6)
        .only_if("kind", PRESSURE);
    /// What it gives at the lowest pressure.
    LOW_VOLTS: Voltage = quantity("low_volts", "Lower voltage, on 5 V", "V", 0.0, 5.0)
        .assumed("0.5 V", "common practice, no source")
        .only_if("kind", PRESSURE);
    /// What it gives at the highest pressure.
    HIGH_VOLTS: Voltage = quantity("high_volts", "Upper voltage, on 5 V", "V", 0.0, 5.0)
        .assumed("4.5 V", "common practice, no source")
        .only_if("kind", PRESSURE);
    /// What its pressure is counted from: `absolute` or `gauge`.
    COUNTED_FROM: PressureFrom = choice("counted_from", "Its pressure is")
        .measure("Key on, its hose off: one that is absolute reads about 1 bar, one that is gauge reads 0.")
        .only_if("kind", PRESSURE);
    /// Volts of its track over the stroke.
    STROKE: NumberRow = row("stroke", "Its volts over the stroke")
        .hint("0.5 1.5 3.0 4.5, first released")
        .measure("Key on, engine stopped, meter at the input: released, then pressed further and further.")
        .only_if("kind", POT);
    /// How its second track runs, where it has one.
    SECOND: TrackRun = choice("second", "Second track runs")
        .hint("blank: it has none")
        .only_if("kind", POT);
    /// The input of the second track.
    SECOND_INPUT: InputName = input_name("second_input", "Second track on input")
        .only_if("second", &[]);
    /// Volts of the second track at the same places.
    SECOND_STROKE: NumberRow = row("second_stroke", "Volts of the second track there")
        .hint("4.5 3.5 2.0 0.5")
        .only_if("second", &[]);
    /// What a switch connects its input to: `ground`, `supply` or `battery`.
    SWITCHED_TO: SwitchedTo = choice("switched_to", "Closed, it connects its input to")
        .only_if("kind", SWITCH);
    /// Whether it is closed as the car stands: `closed` or `open`.
    STANDS: SwitchStands = choice("stands", "Engine stopped, it is").only_if("kind", SWITCH);
    /// By what share it may be off: of its ohms, or of its span.
    TOLERANCE: Ratio = quantity("tolerance", "Its tolerance", "%", 0.0, 50.0)
        .hint("of its ohms, or of its span; from its data")
        .only_if("kind", TOLERANT)
        .rare();
    /// What feeds it: `supply`, `battery` or `none`.
    FEED: SensorFeed = choice("feed", "Fed from");
    /// The sensor supply that feeds it.
    SUPPLY: SupplyName = supply_name("supply", "On sensor supply").only_if("feed", &["supply"]);
    /// The sensor supply of its second track.
    SECOND_SUPPLY: SupplyName = supply_name("second_supply", "Second track on sensor supply")
        .hint("blank: the same")
        .only_if("second", &[]);
    /// What it draws.
    DRAW: Current = quantity("draw", "It draws", "mA", 0.0, 2000.0)
        .hint("both tracks together; from its data, or 5 V by the ohms end to end")
        .only_if("feed", &["supply"]);
    /// What else pulls at its wire: `none`, `supply` or `gauge`.
    ALSO: AlsoPulls = choice("also", "Still connected to its wire").only_if("kind", OHMIC).rare();
    /// Its resistance.
    ALSO_OHMS: Resistance = quantity("also_ohms", "Resistance of that", "ohm", 1.0, 1e6)
        .only_if("also", &["supply", "gauge"])
        .rare();
    /// What the input is set as in the controller.
    ENTERED: SensorPurpose = choice("entered", "Its input is set in the controller as")
        .hint("blank: not checked")
        .rare();
    /// Whether the table entered is one of ohms or of volts.
    TABLE_OF: TableOf = choice("table_of", "Table entered is of")
        .only_if("kind", TABLED)
        .rare();
    /// The table entered in the controller.
    TABLE: NumberRow = row("table", "Table, as entered")
        .hint("-20 16.5k, 20 2450, 80 290")
        .measure("Connect to the controller: the calibration of this input, a few of its points.")
        .only_if("table_of", &[])
        .rare();
    /// Ohms that were read, each behind the temperature or pressure at which it was.
    READ_OHMS: NumberRow = row("read_ohms", "Ohms read at the car, unplugged")
        .hint("20 2480, 85 260: at 20 °C, at 85 °C; one number alone: now")
        .measure("Key off, sensor unplugged, meter across its two pins; the second time with a hot engine, by the temperature of a thermometer in the coolant.")
        .only_if("kind", OHMIC);
    /// Volts that were read.
    READ_VOLTS: NumberRow = row("read_volts", "Volts read at the car, plugged in")
        .hint("20 2.48; one number alone: now")
        .measure("Key on, engine stopped, sensor plugged in: meter from the input's pin to sensor ground.")
        .only_if("kind", TABLED);
}
