//! The few sentences that the usual report says itself.

use crate::words::sentences;

sentences! {
    // what an answer, a finding or a part is about
    ENGINE = "usual.engine", "engine";
    CONTROLLER = "usual.controller", "controller";
    IGNITION = "usual.ignition", "ignition";
    IGNITION_WIRED = "usual.ignition-wired", "ignition as wired";
    INJECTION = "usual.injection", "injection";
    INJECTION_WIRED = "usual.injection-wired", "injection as wired";
    SECOND = "usual.second", "second injection";
    SECOND_WIRED = "usual.second-wired", "second injection as wired";
    LIGHT = "usual.light", "timing light";
    STRIP = "usual.strip", "one cycle";
    INJECTORS = "usual.injectors", "injectors";
    SECOND_INJECTORS = "usual.second-injectors", "second injectors";
    INJECTOR_FEED = "usual.injector-feed", "injector feed";
    FUEL = "usual.fuel", "fuel";
    OUTPUTS = "usual.outputs", "outputs";
    OUTPUT = "usual.output", "output";
    RELAY = "usual.relay", "relay";
    LOAD = "usual.load", "load";
    WHEELS = "usual.wheels", "trigger wheel";
    CRANK_SENSOR = "usual.crank-sensor", "crank sensor";
    CAM_SENSOR = "usual.cam-sensor", "cam sensor";
    TRIGGER_INPUT = "usual.trigger-input", "trigger input";
    SENSOR = "usual.sensor", "sensor";
    INPUT = "usual.input", "input";
    SENSOR_SUPPLY = "usual.sensor-supply", "sensor supply";
    TODAY = "usual.today", "today";
    OFFSET = "usual.offset", "offset";
    SPEED_RELAY = "usual.speed-relay", "speed relay";
    COILS = "usual.coils", "coils";
    COIL_FEED = "usual.coil-feed", "coil feed";
    BATTERY = "usual.battery", "battery";
    TEMPERATURES = "usual.temperatures", "temperatures";
    FEEDS = "usual.feeds", "switched feeds";
    HARNESS = "usual.harness", "harness";
    GROUNDS = "usual.grounds", "grounds";
    BUS = "usual.bus", "bus";
    FRAME = "usual.frame", "frame";
    NUMBERED = "usual.numbered", "{what} {n}";
    // heads of what is entered in pairs
    CHANNEL = "usual.channel", "channel";
    TOWER = "usual.tower", "tower";
    CYLINDER = "usual.cylinder", "cylinder";
    ROTOR = "usual.rotor", "rotor";
    SUPPLY = "usual.supply", "supply";
    DWELL = "usual.dwell", "dwell";
    NEVER = "usual.never", "never";
    // cautions
    CAUTION_SPARK = "usual.caution-spark",
        "Sparks kill and light fumes: hands off, every lead on a grounded tester, no vapour about.";
    CAUTION_KEY_ON = "usual.caution-moving",
        "Things move by themselves: gearbox in neutral, hands, hair, sleeves clear of belts and fan.";
    CAUTION_FUSE = "usual.caution-fuse",
        "{loads}: can hurt someone: fuse out until the pin is proved, and a switch that cuts it by hand.";
    CAUTION_PLUG = "usual.caution-plug",
        "{loads}: can hurt someone, even with the fuse pulled: plug off until the pin is proved, and a switch that cuts it by hand.";
    CAUTION_SETTING = "usual.caution-setting",
        "A new file or firmware can undo a setting: prove the bare pins again.";
    CAUTION_DIODE = "usual.caution-diode", "A relay with a diode, its coil the wrong way round, is a dead short.";
    CAUTION_NO_DIODE = "usual.caution-no-diode", "No diode across an injector.";
    CAUTION_PRESSURE = "usual.caution-pressure",
        "Battery off and fuel pressure let off before wiring or a joint is touched; coils unplugged while injectors are tested.";
    CAUTION_FLOODS = "usual.caution-floods",
        "An injector left powered can fill a cylinder: its relay drops out with the key.";
    CAUTION_HOT = "usual.caution-hot",
        "Resistors and drivers burn hands and hoses: bolt them to bare metal, clear of both.";
    CAUTION_LEAN = "usual.caution-lean", "Lean at high load holes pistons in seconds: full load in steps, the last by a tuner.";
    CAUTION_CUT = "usual.caution-cut", "Before cutting: battery off, controller unplugged, measured twice.";
    CAUTION_PUMP = "usual.caution-pump", "A pump that runs on after a crash feeds a fire: inertia switch in its feed.";
    CAUTION_HELD = "usual.caution-held",
        "A coil held on burns without blowing a fuse: its power goes when the engine stands.";
    CAUTION_POWER = "usual.caution-power", "Some coils spark as power arrives: find out before there is fuel.";
    CAUTION_BUS = "usual.caution-bus", "Ohms on the bus only with the battery off.";
    CAUTION_HOT_SENSOR = "usual.caution-hot-sensor",
        "Open no cooling system while it is hot.";
    CAUTION_PLATE = "usual.caution-plate", "Fingers out of an electronic throttle with the key on: its plate shuts on them.";
    CAUTION_CABLE = "usual.caution-cable", "No fuse protects a battery cable: off edges, sleeved through each panel.";
    CAUTION_BLOWS = "usual.caution-blows", "Never fit a larger fuse to stop it blowing.";
    CAUTION_METER = "usual.caution-meter",
        "Ammeter in the battery lead: fuse in series, nothing switched on meanwhile, no spark near a battery just charged.";
}
