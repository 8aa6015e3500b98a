//! Every field of the plan, part by part.

pub use crate::{
    car::{
        battery::fields as battery, controller::fields as controller, engine::fields as engine,
        grounds::fields as grounds, relays::fields as relays,
        switched_feeds::fields as switched_feeds, temperatures::fields as temperatures,
        today::fields as today, wheels::fields as wheels, wiring::fields as wiring,
    },
    questions::{
        bus::fields::{self as bus, frames},
        coils::fields as coils,
        cranking::fields as cranking,
        firing::fields::{self as channels, light, strip},
        fuel::fields as fuel,
        injectors::fields as injectors,
        outputs::fields::{self as outputs, loads},
        sensors::fields::{self as sensors, inputs, supplies as sensor_supplies},
        trigger::fields::{self as trigger, input as trigger_input, sensor},
        wires::fields as harness,
    },
};

use crate::schema::parts;

parts! {
    /// The engine.
    Engine = "engine", one engine;
    /// What stands entered in the controller, and its supply.
    Controller = "controller", one controller;
    /// The controller's channels and what they reach.
    Channels = "channels", one channels;
    /// What a timing light shows.
    Light = "light", one light;
    /// One cycle at a speed.
    Strip = "strip", one strip;
    /// The injectors and the outputs that carry them.
    Injectors = "injectors", one injectors;
    /// A second set of injectors.
    SecondInjectors = "second_injectors", one injectors;
    /// The fuel.
    Fuel = "fuel", one fuel;
    /// The outputs of the controller.
    Outputs = "outputs", many outputs;
    /// The relays.
    Relays = "relays", many relays;
    /// The other loads that are connected to outputs.
    Loads = "loads", many loads;
    /// The start of the engine.
    Cranking = "cranking", one cranking;
    /// The ignition coils.
    Coils = "coils", one coils;
    /// The wheels at crank and cam.
    Wheels = "wheels", one wheels;
    /// Where top dead centre lies.
    Trigger = "trigger", one trigger;
    /// The crank's sensor.
    CrankSensor = "crank_sensor", one sensor;
    /// The cam's sensor.
    CamSensor = "cam_sensor", one sensor;
    /// The controller's inputs for both.
    TriggerInput = "trigger_input", one trigger_input;
    /// The sensors, but for those at crank and cam.
    Sensors = "sensors", many sensors;
    /// The controller's inputs for them.
    Inputs = "inputs", many inputs;
    /// What feeds them.
    SensorSupplies = "sensor_supplies", many sensor_supplies;
    /// The car as it stands today.
    Today = "today", one today;
    /// The battery, between cranking and charging.
    Battery = "battery", one battery;
    /// The temperatures between which every answer must hold.
    Temperatures = "temperatures", one temperatures;
    /// The feeds that are switched.
    SwitchedFeeds = "switched_feeds", one switched_feeds;
    /// How the wires are laid.
    Wiring = "wiring", one wiring;
    /// The harness: how long each of its wires has to be.
    Harness = "harness", one harness;
    /// The grounds.
    Grounds = "grounds", one grounds;
    /// The bus between controllers.
    Bus = "bus", one bus;
    /// The frames that it carries.
    Frames = "frames", many frames;
}
