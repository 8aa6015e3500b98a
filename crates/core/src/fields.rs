//! Every field of the plan, part by part.

pub use crate::{
    car::{conditions::fields as conditions, engine::fields as engine},
    questions::{
        coils::fields as coils,
        cranking::fields::{self as cranking, relays},
        firing::fields::{self as channels, light, strip},
        fuel::fields as fuel,
        injectors::fields::{self as injectors, feed as injector_feed},
        outputs::fields::{self as outputs, loads},
        trigger::fields::{self as trigger, input as trigger_input, sensor},
    },
};

use crate::schema::{Field, parts};

parts! {
    /// The engine.
    Engine = "engine", one engine;
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
    /// The feed of all injectors.
    InjectorFeed = "injector_feed", one injector_feed;
    /// The fuel.
    Fuel = "fuel", one fuel;
    /// The outputs of the controller.
    Outputs = "outputs", many outputs;
    /// The loads that are connected to outputs.
    Loads = "loads", many loads;
    /// The start of the engine, and the relay that pulls in at a speed.
    Cranking = "cranking", one cranking;
    /// Further relays that are switched at a speed.
    Relays = "relays", many relays;
    /// The ignition coils and their feed.
    Coils = "coils", one coils;
    /// The cam's wheel, and where top dead centre lies.
    Trigger = "trigger", one trigger;
    /// The crank's sensor.
    CrankSensor = "crank_sensor", one sensor;
    /// The cam's sensor.
    CamSensor = "cam_sensor", one sensor;
    /// The controller's inputs for both.
    TriggerInput = "trigger_input", one trigger_input;
    /// The supply and the temperatures between which every answer must hold.
    Conditions = "conditions", one conditions;
}
