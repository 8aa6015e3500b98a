//! What the fitter typed: the one document worth saving.
//!
//! A plan keeps texts, never quantities; [`crate::read`] is the only way from one to the other. Its file is
//! JSON that a person can read and edit: blank fields are left out, and a number may stand where a text is
//! meant.

mod controller;
mod file;
mod former;
mod node;
mod parse;
mod place;
mod record;

pub use controller::{GENERICS, Generic};
pub use parse::{MOST_BYTES, ReadError, VERSION, parse, write};
use record::{Record, record};

record! {
    /// The supply and the temperatures between which every answer must hold.
    Conditions {
        /// Battery voltage while the starter turns a cold engine.
        cranking: text,
        /// Battery voltage at rest.
        resting: text,
        /// Highest charging voltage.
        charging: text,
        /// Coldest start.
        cold: text,
        /// Hottest part of the engine bay where loads sit.
        hot: text,
        /// Resistance to ground of the controller's supply with the key off.
        dead_supply: text,
        /// Resistance to ground of a switched feed (15 or 87) while it is off.
        dead_feed: text,
    }
}

record! {
    /// Question 1: the engine.
    Engine {
        /// `four-stroke`, `two-stroke` or `rotary`.
        kind: text,
        /// Number of cylinders, or of rotors.
        cylinders: text,
        /// Firing order, as `1-5-3-6-2-4`.
        order: text,
        /// `even`, `angles` or `geometry`.
        spacing: text,
        /// Firing angles in the order of firing, degrees from the first, as `0 90 240 330 480 570`.
        angles: text,
        /// Angle of each further bank from the first, degrees in the direction in which the crank turns, as `90`.
        bank_angles: text,
        /// How far the crank turns until each pin is at its top, degrees from pin 1, as `0 120 240`.
        pins: text,
        /// How far the second rod of a split pin follows.
        split: text,
        /// How the cylinders are numbered in this plan, as `banks-left-front`.
        numbering: text,
        /// How they are numbered where the firing order was found.
        order_numbering: text,
        /// Cylinders by bank, front to rear, as `1 3 5 / 2 4 6`.
        banks: text,
        /// Highest speed of the engine.
        highest_speed: text,
    }
}

record! {
    /// Question 1: the controller's channels and what they reach.
    Channels {
        /// How the coils are fired.
        ignition_mode: text,
        /// Ignition channels the controller has.
        ignition_count: text,
        /// `by-cylinder` or `by-order`.
        ignition_habit: text,
        /// Cylinders that each ignition channel was found to reach: entry 1 is channel 1.
        coils_wired: list,
        /// How the injectors are fired.
        injection_mode: text,
        /// Injection channels the controller has.
        injection_count: text,
        /// `by-cylinder` or `by-order`.
        injection_habit: text,
        /// Cylinders that each injection channel was found to reach.
        injectors_wired: list,
        /// How the second set of injectors is fired.
        second_mode: text,
        /// Injection channels that the controller has for it.
        second_count: text,
        /// `by-cylinder` or `by-order`.
        second_habit: text,
        /// Cylinders that each channel of the second set was found to reach.
        second_wired: list,
        /// What is done of the cure of the ignition: the names of its steps.
        coils_done: text,
        /// The same of the injection.
        injectors_done: text,
        /// The same of the second set.
        second_done: text,
    }
}

record! {
    /// Question 1: what a timing light shows.
    Light {
        /// Advance to which the controller is locked.
        advance: text,
        /// Advance seen on each cylinder: entry 1 is cylinder 1.
        seen: list,
        /// `compression` or `exhaust`.
        stroke: text,
        /// Offset of the trigger as entered.
        offset: text,
        /// How far a reading may be off.
        tolerance: text,
    }
}

record! {
    /// Question 1: one cycle at a speed.
    Strip {
        /// The speed.
        speed: text,
        /// Dwell of a coil.
        dwell: text,
        /// How far before top dead centre the spark comes.
        advance: text,
        /// How long an injection lasts.
        injection: text,
        /// How far before firing top dead centre it ends.
        injection_end: text,
        /// How long an injection of the second set lasts.
        second_injection: text,
    }
}

record! {
    /// Question 2: the injectors and the outputs that carry them.
    Injectors {
        /// Resistance of one at 20 °C.
        resistance: text,
        /// Tolerance of that resistance, where none stands with it.
        tolerance: text,
        /// Inductance of one.
        inductance: text,
        /// Current at which one opens.
        opening_current: text,
        /// How many there are.
        count: text,
        /// How many share one output.
        per_output: text,
        /// `plain-switch` or `current-controlled`.
        output_kind: text,
        /// Continuous current limit of one output; its peak, where it controls the current.
        output_limit: text,
        /// Current to which a current-controlled output falls after the peak.
        hold_current: text,
        /// On-resistance of one output.
        output_resistance: text,
        /// Length of wire from the relay to the injector and on to the controller.
        wire_length: text,
        /// Size of that wire.
        wire_size: text,
        /// Resistance of all contacts in that wire.
        contact_resistance: text,
        /// Longest time that a current-controlled output stays at its peak.
        peak_time: text,
        /// Voltage to which an output's clamp lets its pin rise.
        clamp: text,
        /// Energy that the clamp bears at each turn-off.
        clamp_energy: text,
        /// Heat that one output bears.
        output_heat: text,
    }
}

record! {
    /// Question 2: the feed that all injectors hang on.
    InjectorFeed {
        /// Rating of its fuse.
        fuse: text,
        /// Rating of its relay's contact.
        relay: text,
    }
}

record! {
    /// Question 2: what the injectors pass, and what is wanted of them.
    Fuel {
        /// Flow of one injector, held open, by volume or by mass.
        flow: text,
        /// Power wanted, at the crank.
        power: text,
        /// `petrol`, `e10`, `e85`, `ethanol` or `methanol`.
        kind: text,
        /// Pressure at which the flow is stated.
        stated_pressure: text,
        /// Pressure in the rail above that of the open air, engine stopped.
        rail_pressure: text,
        /// Highest pressure in the manifold above that of the open air.
        boost: text,
        /// `referenced` to the manifold, or `fixed`.
        regulator: text,
        /// How late an injector opens at the charging voltage.
        dead_time: text,
        /// The most of the time that an injector may be open.
        duty_limit: text,
        /// Fuel that the engine burns for its work.
        consumption: text,
        /// Density of the fuel.
        density: text,
        /// Density of the fluid with which the flow was measured.
        test_density: text,
        /// Flow of one injector of the second set, at the same pressure.
        second_flow: text,
    }
}

record! {
    /// Question 3: one output of the controller.
    Output {
        /// Its name on the pin table.
        name: text,
        /// `open-drain`, `high-side`, `half-bridge` or `logic`.
        stage: text,
        /// Which level counts as on: `ground` or `battery`.
        on_level: text,
        /// On-resistance.
        on_resistance: text,
        /// Continuous current limit.
        current_limit: text,
        /// Pull-up resistor, where there is one.
        pull_up: text,
        /// Rail of the pull-up: `battery`, `controller`, `5v` or `3v3`.
        pull_up_rail: text,
        /// Pull-down resistor, where there is one.
        pull_down: text,
        /// Current that an open switch lets pass at 12 V.
        leakage: text,
        /// Voltage across an open switch at which its own clamp catches a coil's kick.
        clamp: text,
        /// Energy that the clamp may take at each turn-off.
        clamp_energy: text,
        /// Highest frequency at which it may be pulsed.
        pulse_limit: text,
    }
}

record! {
    /// Question 3: one load.
    Load {
        /// What the fitter calls it.
        name: text,
        /// What kind of part it is.
        kind: text,
        /// Resistance at 20 °C.
        resistance: text,
        /// Voltage at which it is sure to act, cold coil.
        pull_in: text,
        /// Voltage below which it is sure to let go.
        drop_out: text,
        /// Name of the output it hangs on.
        output: text,
        /// Where its other end goes: `ground`, `battery`, `ignition`, `relay`, `5v` or `output`.
        far_end: text,
        /// Name of the output at its other end, where that is one.
        far_output: text,
        /// What happens if it acts unasked: `harmless`, `costly` or `dangerous`.
        unasked: text,
        /// What lies across its winding: `none`, `diode` or `resistor`.
        suppression: text,
        /// Which end the stripe of that diode is at: `pin` or `far-end`.
        stripe: text,
        /// That resistor.
        suppression_resistance: text,
        /// Inductance of its winding.
        inductance: text,
        /// Frequency at which it is pulsed; blank where it is not.
        frequency: text,
        /// The part of each period that is on.
        duty: text,
    }
}

record! {
    /// Question 4: the relay that pulls in at a speed.
    Cranking {
        /// Mean cranking speed.
        speed: text,
        /// Speed at which the controller switches the relay on.
        relay_on_at: text,
        /// Speed at which it switches the relay off.
        relay_off_below: text,
        /// How far the speed dips at each compression, as a share of the mean.
        dip: text,
        /// Positions on the crank wheel, missing teeth counted.
        teeth: text,
        /// Missing teeth.
        missing: text,
        /// What the first spark waits for: `gap` or `cam`.
        sync: text,
        /// Crank angle from the first tooth after the gap to the first firing top dead centre.
        gap_angle: text,
        /// Readings in a row that must agree.
        confirmation: text,
        /// Teeth over which the speed is averaged.
        averaging: text,
        /// Time the starter takes to bring the engine to speed.
        run_up: text,
        /// Time without a tooth after which the engine counts as standing.
        stall_timeout: text,
        /// Time the coils need power before a spark.
        dwell: text,
        /// Pull-in time of the relay.
        pull_in_time: text,
        /// Drop-out time of the relay.
        drop_out_time: text,
        /// Voltage at which the relay is sure to pull in, its coil at 20 °C.
        pull_in_voltage: text,
        /// Speed read while the engine rocks to a standstill.
        rocking: text,
        /// Speed from which the engine dies.
        idle: text,
        /// Time from there to a standstill.
        run_down: text,
        /// Mean cranking speed in cold, thick oil.
        cold_speed: text,
        /// Mean cranking speed on a weak battery.
        weak_speed: text,
        /// What the coils do as power arrives: `quiet`, `spark` or `held`.
        power_up: text,
        /// Time that a coil needs after power before it can charge.
        warm_up: text,
        /// Angle through which a compression may throw the engine back.
        kick_back: text,
        /// How long a starter that sticks stands.
        stick: text,
    }
}

record! {
    /// Question 4: a further relay that is switched at a speed.
    SpeedRelay {
        /// What the fitter calls it.
        name: text,
        /// What it feeds: `pump`, `alternator-field`, `fan` or `coils`.
        purpose: text,
        /// Speed at which the controller switches it on.
        relay_on_at: text,
        /// Speed at which the controller switches it off.
        relay_off_below: text,
        /// How long the pump runs at key-on.
        prime: text,
        /// What else cuts the pump: `none`, `inertia` or `oil-pressure`.
        cut: text,
        /// Voltage at which it is sure to pull in, its coil at 20 °C.
        pull_in_voltage: text,
        /// Pull-in time of the relay.
        pull_in_time: text,
        /// Drop-out time of the relay.
        drop_out_time: text,
    }
}

record! {
    /// The ignition coils and their feed.
    Coils {
        /// Resistance of a primary at 20 °C.
        resistance: text,
        /// Inductance of a primary.
        inductance: text,
        /// Current to which it is charged.
        current: text,
        /// Current that the igniter holds.
        limit: text,
        /// What the igniter drops while it conducts.
        drop: text,
        /// How long a spark burns.
        spark: text,
        /// The most of the time that it may be charged.
        duty_limit: text,
        /// How many relays share the coils.
        relays: text,
        /// Rating of a relay's contact.
        relay: text,
        /// Rating of a relay's fuse.
        fuse: text,
        /// Length of the lead from the battery to the coils, one way.
        lead_length: text,
        /// Size of that lead.
        lead_size: text,
    }
}

record! {
    /// A sensor at the crank or the cam, and its wires.
    TriggerSensor {
        /// `reluctance`, `open-collector` or `push-pull`.
        kind: text,
        /// What a variable-reluctance sensor gives, as measured.
        amplitude: text,
        /// `effective`, `peak` or `peak-to-peak`.
        amplitude_as: text,
        /// Speed at which it was measured.
        amplitude_speed: text,
        /// Resistance of its coil.
        resistance: text,
        /// `right` or `reversed`.
        polarity: text,
        /// What the pull-up of a Hall sensor goes to: `none`, `3.3`, `5` or `battery`.
        pull_rail: text,
        /// Resistance of the pull-up.
        pull_up: text,
        /// What the sensor's switch drops while it conducts.
        saturation: text,
        /// Current that the switch may sink.
        sink: text,
        /// Length of its cable.
        length: text,
        /// Resistance of contacts in the signal's way.
        contact: text,
        /// By how much the sensor's ground lies above the controller's.
        ground_offset: text,
        /// Where its shield is connected: `one`, `both` or `none`.
        shield: text,
        /// `fits` or `change`.
        connector: text,
    }
}

record! {
    /// The controller's inputs for crank and cam.
    TriggerInput {
        /// Highest frequency that they follow.
        highest_frequency: text,
        /// Lowest frequency that they follow.
        lowest_frequency: text,
        /// The step in which they measure time.
        tick: text,
        /// Peak from which a signal about zero is counted.
        counts_from: text,
        /// Highest voltage that they bear.
        bears: text,
        /// A level at or below is low.
        low: text,
        /// A level at or above is high.
        high: text,
        /// Resistance of an input to ground.
        resistance: text,
        /// Capacitance of its filter.
        capacitance: text,
    }
}

record! {
    /// Question 8: the cam's wheel, and where top dead centre lies.
    Trigger {
        /// Teeth or windows that pass the cam's sensor in a turn of it.
        cam_teeth: text,
        /// The tooth at the sensor with cylinder 1 at top dead centre, counted from the first after the gap.
        tooth: text,
        /// Angle from that first tooth to top dead centre, as entered in the controller.
        offset: text,
        /// Advance at which the controller is locked for the timing light.
        advance: text,
        /// Advance that the light shows at the lower speed.
        seen_low: text,
        /// The lower speed.
        speed_low: text,
        /// Advance that the light shows at the higher speed.
        seen_high: text,
        /// The higher speed.
        speed_high: text,
    }
}

/// Everything that was typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[cfg_attr(feature = "typescript", ts(optional_fields))]
pub struct Plan {
    /// Version of the format; see [`VERSION`]. [`parse()`] and [`write()`] see to it.
    pub quietpin: u32,
    /// The plan's name.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub name: String,
    /// The fitter's own notes.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub notes: String,
    /// Supply and temperatures.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub conditions: Conditions,
    /// Question 1: the engine.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub engine: Engine,
    /// Question 1: the channels.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub channels: Channels,
    /// Question 1: the timing light.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub light: Light,
    /// Question 1: one cycle at a speed.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub strip: Strip,
    /// Question 2.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub injectors: Injectors,
    /// Question 2: a second set of injectors.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub second_injectors: Injectors,
    /// Question 2: the feed of all injectors.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub injector_feed: InjectorFeed,
    /// Question 2: the fuel.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub fuel: Fuel,
    /// Question 3: the outputs.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub outputs: Vec<Output>,
    /// Question 3: the loads.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub loads: Vec<Load>,
    /// Question 4.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub cranking: Cranking,
    /// Question 4: further relays switched at a speed.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub relays: Vec<SpeedRelay>,
    /// Question 5.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub coils: Coils,
    /// Question 8: the cam's wheel, and top dead centre.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub trigger: Trigger,
    /// Question 8: the crank's sensor.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub crank_sensor: TriggerSensor,
    /// Question 8: the cam's sensor.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub cam_sensor: TriggerSensor,
    /// Question 8: the inputs of both.
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub trigger_input: TriggerInput,
}

/// Most entries that a list is read to; the rest stays in the plan, unread, and is said.
pub const MOST_ENTRIES: usize = 64;

impl Plan {
    /// The text at a path such as `engine.order`, `loads.0.kind` or `channels.coils_wired.2`.
    ///
    /// Nothing where the plan has no such place; blank where nothing was typed.
    pub fn get(&self, path: &str) -> Option<&str> {
        let (section, rest) = path.split_once('.').unwrap_or((path, ""));
        match section {
            "name" => Some(&self.name),
            "notes" => Some(&self.notes),
            "conditions" => place::view(self.conditions.views(), rest),
            "engine" => place::view(self.engine.views(), rest),
            "channels" => place::view(self.channels.views(), rest),
            "light" => place::view(self.light.views(), rest),
            "strip" => place::view(self.strip.views(), rest),
            "injectors" => place::view(self.injectors.views(), rest),
            "second_injectors" => place::view(self.second_injectors.views(), rest),
            "injector_feed" => place::view(self.injector_feed.views(), rest),
            "fuel" => place::view(self.fuel.views(), rest),
            "cranking" => place::view(self.cranking.views(), rest),
            "coils" => place::view(self.coils.views(), rest),
            "trigger" => place::view(self.trigger.views(), rest),
            "crank_sensor" => place::view(self.crank_sensor.views(), rest),
            "cam_sensor" => place::view(self.cam_sensor.views(), rest),
            "trigger_input" => place::view(self.trigger_input.views(), rest),
            "outputs" => {
                entry(rest).and_then(|(at, rest)| place::view(self.outputs.get(at)?.views(), rest))
            }
            "loads" => {
                entry(rest).and_then(|(at, rest)| place::view(self.loads.get(at)?.views(), rest))
            }
            "relays" => {
                entry(rest).and_then(|(at, rest)| place::view(self.relays.get(at)?.views(), rest))
            }
            _ => None,
        }
    }

    /// Whether a part (`engine`, `loads`) is the same in both; of a part that a plan doesn't have it is not.
    pub fn is_same_in(&self, other: &Self, part: &str) -> bool {
        match part {
            "name" => self.name == other.name,
            "notes" => self.notes == other.notes,
            "conditions" => self.conditions == other.conditions,
            "engine" => self.engine == other.engine,
            "channels" => self.channels == other.channels,
            "light" => self.light == other.light,
            "strip" => self.strip == other.strip,
            "injectors" => self.injectors == other.injectors,
            "second_injectors" => self.second_injectors == other.second_injectors,
            "injector_feed" => self.injector_feed == other.injector_feed,
            "fuel" => self.fuel == other.fuel,
            "cranking" => self.cranking == other.cranking,
            "coils" => self.coils == other.coils,
            "trigger" => self.trigger == other.trigger,
            "crank_sensor" => self.crank_sensor == other.crank_sensor,
            "cam_sensor" => self.cam_sensor == other.cam_sensor,
            "trigger_input" => self.trigger_input == other.trigger_input,
            "outputs" => self.outputs == other.outputs,
            "loads" => self.loads == other.loads,
            "relays" => self.relays == other.relays,
            _ => false,
        }
    }

    /// Sets the text at a path; says whether there is such a place. Lists of texts grow to reach it.
    pub fn set(&mut self, path: &str, text: &str) -> bool {
        let (section, rest) = path.split_once('.').unwrap_or((path, ""));
        let place = match section {
            "name" => Some(&mut self.name),
            "notes" => Some(&mut self.notes),
            "conditions" => place::slot(self.conditions.slots(), rest),
            "engine" => place::slot(self.engine.slots(), rest),
            "channels" => place::slot(self.channels.slots(), rest),
            "light" => place::slot(self.light.slots(), rest),
            "strip" => place::slot(self.strip.slots(), rest),
            "injectors" => place::slot(self.injectors.slots(), rest),
            "second_injectors" => place::slot(self.second_injectors.slots(), rest),
            "injector_feed" => place::slot(self.injector_feed.slots(), rest),
            "fuel" => place::slot(self.fuel.slots(), rest),
            "cranking" => place::slot(self.cranking.slots(), rest),
            "coils" => place::slot(self.coils.slots(), rest),
            "trigger" => place::slot(self.trigger.slots(), rest),
            "crank_sensor" => place::slot(self.crank_sensor.slots(), rest),
            "cam_sensor" => place::slot(self.cam_sensor.slots(), rest),
            "trigger_input" => place::slot(self.trigger_input.slots(), rest),
            "outputs" => entry(rest)
                .and_then(|(at, rest)| place::slot(self.outputs.get_mut(at)?.slots(), rest)),
            "loads" => entry(rest)
                .and_then(|(at, rest)| place::slot(self.loads.get_mut(at)?.slots(), rest)),
            "relays" => entry(rest)
                .and_then(|(at, rest)| place::slot(self.relays.get_mut(at)?.slots(), rest)),
            _ => None,
        };
        if let Some(place) = place {
            text.clone_into(place);
            return true;
        }
        false
    }
}

fn entry(path: &str) -> Option<(usize, &str)> {
    let (at, rest) = path.split_once('.')?;
    Some((at.parse().ok()?, rest))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_place_can_be_set_and_read_back() {
        let mut plan = Plan {
            outputs: vec![Output::default()],
            loads: vec![Load::default()],
            ..Plan::default()
        };
        for path in
            ["name", "engine.order", "outputs.0.stage", "loads.0.far_end", "channels.coils_wired.2"]
        {
            assert!(plan.set(path, "typed"), "{path} can't be set");
            assert_eq!(plan.get(path), Some("typed"), "{path} is not read back");
        }
        assert_eq!(plan.channels.coils_wired, ["", "", "typed"], "a list grows with blanks");
        for path in [
            "",
            "engine",
            "engine.none",
            "loads.1.kind",
            "loads.x.kind",
            "channels.coils_wired.999",
        ] {
            assert!(!plan.set(path, "typed"), "{path:?} can be set");
        }
    }
}
