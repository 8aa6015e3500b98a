// Generated from the Rust types. After a change there: cargo xtask bless

/** What `parse` and `report` throw where there is no plan. Its `message` is for a person. */
export type PlanError = Error & ReadError;

/**
 * Everything that was typed.
 */
export type Plan = {
/**
 * Version of the format.
 */
quietpin: number,
/**
 * The plan's name.
 */
name?: string,
/**
 * The fitter's own notes.
 */
notes?: string,
engine?: Engine,
controller?: Controller,
channels?: Channels,
light?: Light,
strip?: Strip,
injectors?: Injectors,
second_injectors?: SecondInjectors,
fuel?: Fuel,
outputs?: Array<Output>,
relays?: Array<Relay>,
loads?: Array<Load>,
cranking?: Cranking,
coils?: Coils,
wheels?: Wheels,
trigger?: Trigger,
crank_sensor?: CrankSensor,
cam_sensor?: CamSensor,
trigger_input?: TriggerInput,
sensors?: Array<Sensor>,
inputs?: Array<Input>,
sensor_supplies?: Array<SensorSupplie>,
today?: Today,
battery?: Battery,
temperatures?: Temperatures,
switched_feeds?: SwitchedFeeds,
wiring?: Wiring,
harness?: Harness,
grounds?: Grounds,
bus?: Bus,
frames?: Array<Frame>,
};

export type Engine = {
/**
 * Cylinders: 1 to 16 (or rotors)
 */
cylinders?: string,
/**
 * Firing order (1-5-3-6-2-4)
 */
order?: string,
/**
 * Engine type: `four-stroke`, `two-stroke`, `rotary`
 */
kind?: string,
/**
 * Spacing of the firings: `even`, `angles`, `geometry`
 */
spacing?: string,
/**
 * Angles in the order of firing (0 90 240 330 480 570)
 */
angles?: string,
/**
 * Angle of each further bank from the first (90; a radial: 72 144 216 288; in line: leave blank)
 */
bank_angles?: string,
/**
 * Crank pins, front to rear (0 120 240; or one for each cylinder by number: 0 270)
 */
pins?: string,
/**
 * Split pins: the second bank's rod follows by: an angle, -180 to 180 °
 */
split?: string,
/**
 * Highest speed: a speed of rotation, 300 to 30000 rpm (where the limiter will be set)
 */
highest_speed?: string,
/**
 * Numbering of the cylinders: `inline-front`, `inline-flywheel`, `banks-left-front`, `banks-right-front`, `alternating-left`, `alternating-right`, `banks-left-flywheel`, `banks-right-flywheel` (left and right as you stand at that end, facing the engine)
 */
numbering?: string,
/**
 * Numbering used by that firing order: `inline-front`, `inline-flywheel`, `banks-left-front`, `banks-right-front`, `alternating-left`, `alternating-right`, `banks-left-flywheel`, `banks-right-flywheel` (if it is another one)
 */
order_numbering?: string,
/**
 * Banks, front to rear (1 3 5 / 2 4 6)
 */
banks?: string,
};

export type Controller = {
/**
 * First tooth to TDC, as entered: an angle, -720 to 720 deg (positive: the tooth passes before TDC)
 */
offset?: string,
/**
 * Timing locked at, before TDC: an angle, -60 to 90 deg (10 deg)
 */
locked_advance?: string,
/**
 * Order of the ignition channels, as entered (1-5-3-6-2-4; blank: not checked)
 */
order?: string,
/**
 * Spacing of the firings, as entered: `even`, `angles`
 */
spacing?: string,
/**
 * Firing angles, as entered (0 90 240 330 480 570)
 */
angles?: string,
/**
 * Outputs shared by coils, injectors and loads: 0 to 128 (the whole controller; blank: each kind has its own)
 */
outputs?: string,
/**
 * Dwell, as entered: a time, 0.1 to 100 ms (blank: what the coils need, else 3 ms)
 */
dwell?: string,
/**
 * Dwell while cranking: a time, 0 to 50 ms (blank: the dwell entered, else 4 ms)
 */
cranking_dwell?: string,
/**
 * Controller at key-off: `dies`, `stays` (one that switches its own main relay stays on for a while)
 */
after_key_off?: string,
/**
 * Lowest supply it runs on: a voltage, 3 to 16 V (from its data: below it, it restarts)
 */
least_supply?: string,
/**
 * Controller is fed from: `battery`, `ignition`
 */
feed?: string,
/**
 * Controller's supply to ground, key off: a resistance, 0.5 to 1000000 ohm (through what else is on that feed)
 */
supply_off?: string,
/**
 * Controller's own draw, key off: a current, 0 to 2000 mA (0 where a relay cuts its supply)
 */
key_off_draw?: string,
/**
 * Highest supply it survives: a voltage, 5 to 200 V (from its data)
 */
highest_supply?: string,
/**
 * Controller with the battery reversed: `survives`, `fails`
 */
reverse?: string,
};

export type Channels = {
/**
 * How the coils are fired: `sequential`, `every-turn`, `paired-single`, `paired-double`, `distributor`
 */
ignition_mode?: string,
/**
 * Ignition channels the controller has: 0 to 32
 */
ignition_count?: string,
/**
 * Numbering of the ignition channels: `by-cylinder`, `by-order`
 */
ignition_habit?: string,
/**
 * Ignition channel reaches cylinder (as found at the car; 1 6 for a pair, 1L or 1T on a rotary; none)
 */
coils_wired?: Array<string>,
/**
 * How the injectors are fired: `each-once`, `companions`, `by-bank`, `together`
 */
injection_mode?: string,
/**
 * Injection channels the controller has: 0 to 32
 */
injection_count?: string,
/**
 * Numbering of the injection channels: `by-cylinder`, `by-order`
 */
injection_habit?: string,
/**
 * Injection channel reaches cylinder (as found at the car; none where nothing clicks)
 */
injectors_wired?: Array<string>,
/**
 * How the second set is fired: `each-once`, `companions`, `by-bank`, `together`
 */
second_mode?: string,
/**
 * Injection channels there are for the second set: 0 to 32
 */
second_count?: string,
/**
 * Numbering of the second set's channels: `by-cylinder`, `by-order`
 */
second_habit?: string,
/**
 * Channel of the second set reaches cylinder (as found at the car; none where nothing clicks)
 */
second_wired?: Array<string>,
/**
 * Ignition fix: steps done
 */
coils_done?: string,
/**
 * Injection fix: steps done
 */
injectors_done?: string,
/**
 * Second set's fix: steps done
 */
second_done?: string,
};

export type Light = {
/**
 * Advance seen on cylinder: an angle, -360 to 360 deg (after TDC: minus)
 */
seen?: Array<string>,
/**
 * The spark falls on the stroke of: `compression`, `exhaust`
 */
stroke?: string,
/**
 * A reading may be off by: an angle, 0.1 to 20 deg
 */
tolerance?: string,
};

export type Strip = {
/**
 * Show the cycle at: a speed of rotation, 20 to 30000 rpm (blank: the highest speed)
 */
speed?: string,
/**
 * Spark, before TDC: an angle, -30 to 90 deg
 */
advance?: string,
/**
 * Each injection lasts: a time, 0.1 to 200 ms (blank: 8 ms, or 80% of a turn where that is less)
 */
injection?: string,
/**
 * Injection ends, before firing TDC: an angle, 0 to 720 deg
 */
injection_end?: string,
/**
 * Each injection of the second set lasts: a time, 0.1 to 200 ms (blank: as the first)
 */
second_injection?: string,
};

export type Injectors = {
/**
 * Resistance of one injector at 20 °C: a resistance, 0.2 to 100 ohm
 */
resistance?: string,
/**
 * Injectors on one output: 1 to 16
 */
per_output?: string,
/**
 * Current limit of one output: a current, 0.05 to 50 A (continuous, from the pin table; the peak, if peak-and-hold)
 */
output_limit?: string,
/**
 * Injector driver: `plain-switch`, `current-controlled`
 */
output_kind?: string,
/**
 * Hold current: a current, 0.01 to 50 A (from the driver's data or its setting)
 */
hold_current?: string,
/**
 * Longest time at peak: a time, 0.05 to 100 ms (blank if it waits for the peak however long)
 */
peak_time?: string,
/**
 * Number of injectors: 1 to 32
 */
count?: string,
/**
 * Wire of one injector, feed and return together: a length, 0 to 50 m (relay to injector, injector to controller; each has its own)
 */
wire_length?: string,
/**
 * Size of that wire: a wire size, 0.05 to 120 mm2 (copper; 1 mm² or 18 AWG)
 */
wire_size?: string,
/**
 * Fuse of the injectors alone: a current, 0.5 to 100 A (behind their relay; blank: none, or not known)
 */
fuse?: string,
/**
 * Resistance of all contacts in that wire: a resistance, 0 to 5000 mohm (connectors, relay, fuse)
 */
contact_resistance?: string,
/**
 * Resistor in series with each injector: a resistance, 0 to 100 ohm (blank: none)
 */
resistor?: string,
/**
 * Rating of that resistor: a power, 0.1 to 1000 W (on metal, as its data ask)
 */
resistor_rating?: string,
/**
 * Across each injector: `none`, `diode`, `resistor` (a diode from an old harness; blank: nothing)
 */
across?: string,
/**
 * Current that opens one: a current, 0.02 to 10 A (at full fuel pressure)
 */
opening_current?: string,
/**
 * Inductance of one: an inductance, 0.05 to 100 mH
 */
inductance?: string,
/**
 * Tolerance of that resistance: a share, 0 to 30 %
 */
tolerance?: string,
/**
 * On-resistance of the output: a resistance, 0 to 5 ohm
 */
output_resistance?: string,
/**
 * Clamp voltage of the output: a voltage, 10 to 400 V (pin to ground, from its data)
 */
clamp?: string,
/**
 * Clamp energy limit at each turn-off: an energy, 0.1 to 5000 mJ (the repetitive figure, hot, from its data)
 */
clamp_energy?: string,
/**
 * Heat limit of one output: a power, 0.05 to 100 W (with the controller at its hottest, from its data)
 */
output_heat?: string,
};

export type SecondInjectors = {
/**
 * Resistance of one injector at 20 °C: a resistance, 0.2 to 100 ohm
 */
resistance?: string,
/**
 * Injectors on one output: 1 to 16
 */
per_output?: string,
/**
 * Current limit of one output: a current, 0.05 to 50 A (continuous, from the pin table; the peak, if peak-and-hold)
 */
output_limit?: string,
/**
 * Injector driver: `plain-switch`, `current-controlled`
 */
output_kind?: string,
/**
 * Hold current: a current, 0.01 to 50 A (from the driver's data or its setting)
 */
hold_current?: string,
/**
 * Longest time at peak: a time, 0.05 to 100 ms (blank if it waits for the peak however long)
 */
peak_time?: string,
/**
 * Number of injectors: 1 to 32
 */
count?: string,
/**
 * Wire of one injector, feed and return together: a length, 0 to 50 m (relay to injector, injector to controller; each has its own)
 */
wire_length?: string,
/**
 * Size of that wire: a wire size, 0.05 to 120 mm2 (copper; 1 mm² or 18 AWG)
 */
wire_size?: string,
/**
 * Fuse of the injectors alone: a current, 0.5 to 100 A (behind their relay; blank: none, or not known)
 */
fuse?: string,
/**
 * Resistance of all contacts in that wire: a resistance, 0 to 5000 mohm (connectors, relay, fuse)
 */
contact_resistance?: string,
/**
 * Resistor in series with each injector: a resistance, 0 to 100 ohm (blank: none)
 */
resistor?: string,
/**
 * Rating of that resistor: a power, 0.1 to 1000 W (on metal, as its data ask)
 */
resistor_rating?: string,
/**
 * Across each injector: `none`, `diode`, `resistor` (a diode from an old harness; blank: nothing)
 */
across?: string,
/**
 * Current that opens one: a current, 0.02 to 10 A (at full fuel pressure)
 */
opening_current?: string,
/**
 * Inductance of one: an inductance, 0.05 to 100 mH
 */
inductance?: string,
/**
 * Tolerance of that resistance: a share, 0 to 30 %
 */
tolerance?: string,
/**
 * On-resistance of the output: a resistance, 0 to 5 ohm
 */
output_resistance?: string,
/**
 * Clamp voltage of the output: a voltage, 10 to 400 V (pin to ground, from its data)
 */
clamp?: string,
/**
 * Clamp energy limit at each turn-off: an energy, 0.1 to 5000 mJ (the repetitive figure, hot, from its data)
 */
clamp_energy?: string,
/**
 * Heat limit of one output: a power, 0.05 to 100 W (with the controller at its hottest, from its data)
 */
output_heat?: string,
};

export type Fuel = {
/**
 * Flow of one injector, held open: a flow, 20 to 20000 cc/min (cc/min, lb/h, g/s or kg/h, as its data state it)
 */
flow?: string,
/**
 * Target power, at the crank: a power, 1 to 5000 kW (kW, hp or PS)
 */
power?: string,
/**
 * Fuel: `petrol`, `e10`, `e85`, `ethanol`, `methanol`
 */
kind?: string,
/**
 * Pressure at which that flow is stated: a pressure, 0.5 to 20 bar (3 bar is 43.5 psi)
 */
stated_pressure?: string,
/**
 * Fuel pressure in this car: a pressure, 0.5 to 20 bar
 */
rail_pressure?: string,
/**
 * Highest boost: a pressure, 0 to 6 bar
 */
boost?: string,
/**
 * Pressure regulator: `referenced`, `fixed`
 */
regulator?: string,
/**
 * Flow of one injector of a second set: a flow, 20 to 20000 cc/min (blank if there is none; stated at the same pressure)
 */
second_flow?: string,
/**
 * Dead time of the injector, engine running: a time, 0 to 5 ms (its opening delay at 13 to 14 V)
 */
dead_time?: string,
/**
 * Highest injector duty: a share, 30 to 100 %
 */
duty_limit?: string,
/**
 * Specific fuel consumption (BSFC): a specific fuel consumption, 150 to 2000 g/kWh (at full power, from a dynamometer)
 */
consumption?: string,
/**
 * Density of the fuel: a density, 0.6 to 0.9 kg/l
 */
density?: string,
/**
 * Density of the fluid the flow was measured with: a density, 0.6 to 0.9 kg/l
 */
test_density?: string,
};

export type Output = {
/**
 * Name of the output (as on the pin table; “D1 to D8” describes eight that are alike)
 */
name?: string,
/**
 * Output type: `open-drain`, `high-side`, `half-bridge`, `logic`
 */
stage?: string,
/**
 * What counts as on: `ground`, `battery` (not known: both are answered)
 */
on_level?: string,
/**
 * Current limit: a current, 0.01 to 100 A (continuous, from the pin table)
 */
current_limit?: string,
/**
 * Pull-up resistor: a resistance, 10 to 10000000 ohm (blank: none)
 */
pull_up?: string,
/**
 * The pull-up goes to: `battery`, `controller`, `5v`, `3v3` (only if there is one)
 */
pull_up_rail?: string,
/**
 * Pull-down resistor: a resistance, 10 to 10000000 ohm (blank: none)
 */
pull_down?: string,
/**
 * On-resistance: a resistance, 0 to 500 ohm (blank: usual for its type)
 */
on_resistance?: string,
/**
 * Leakage when open: a current, 0 to 100 mA (from the pin table, at 12 V; blank: none)
 */
leakage?: string,
/**
 * Clamp voltage (flyback): a voltage, 15 to 1000 V (volts across the open switch, from the pin table; blank: none known)
 */
clamp?: string,
/**
 * Clamp energy limit: an energy, 0.01 to 100000 mJ (at each turn-off, repeated, hot: from the data sheet)
 */
clamp_energy?: string,
/**
 * Highest PWM frequency: a frequency, 0.5 to 1000000 Hz (from the pin table)
 */
pulse_limit?: string,
/**
 * Shares a limit with others, as group (a letter for all outputs of one driver chip, from the pin table)
 */
group?: string,
/**
 * All of that group together: a current, 0.1 to 500 A
 */
group_limit?: string,
/**
 * PWM frequency in that group: `one`, `each`
 */
group_pulse?: string,
};

export type Relay = {
/**
 * Name of the relay (pump relay)
 */
name?: string,
/**
 * Same relay as (what is blank here is copied from there: coil, contact, times)
 */
like?: string,
/**
 * It feeds: `pump`, `alternator-field`, `fan`, `coils`, `injectors`, `engine`, `lamps`, `heater`, `starter`, `other`
 */
purpose?: string,
/**
 * It is switched by: `speed`, `key`, `otherwise` (blank: by engine speed, where one is typed)
 */
switched_by?: string,
/**
 * Threshold: relay on at: a speed of rotation, 0 to 10000 rpm (100 rpm for coils or a pump)
 */
relay_on_at?: string,
/**
 * Release: relay off below: a speed of rotation, 0 to 10000 rpm (blank: 60% of the threshold)
 */
relay_off_below?: string,
/**
 * Pump runs at key-on for: a time, 0 to 60000 ms
 */
prime?: string,
/**
 * What else stops the pump: `none`, `inertia`, `oil-pressure`
 */
cut?: string,
/**
 * What blocks the starter: `switch`, `controller`, `none`
 */
interlock?: string,
/**
 * Relays sharing this load: 1 to 16
 */
alike?: string,
/**
 * Contact rating: a current, 0.5 to 500 A (30 to 87, DC, resistive)
 */
rating?: string,
/**
 * Fuse rating: a current, 0.5 to 500 A (before its contact)
 */
fuse?: string,
/**
 * Cable from battery to what it feeds, one way: a length, 0 to 50 m (the longest)
 */
lead_length?: string,
/**
 * Of that cable, battery to contact 30: a length, 0 to 50 m
 */
to_contact?: string,
/**
 * Size of that cable: a wire size, 0.05 to 120 mm2 (copper, the thinnest piece; 4 mm² or 12 AWG)
 */
lead_size?: string,
/**
 * Current of what it feeds: a current, 0.01 to 500 A (running, together; beside the injectors, coils and loads of this plan)
 */
draws?: string,
/**
 * Inrush of what it feeds: a current, 0.01 to 2000 A (at switch-on; blank: usual for its kind)
 */
inrush?: string,
/**
 * Its contact (30) is fed through relay (blank: straight from the battery)
 */
behind?: string,
/**
 * What it feeds is grounded at: `own`, `sensors`
 */
ground?: string,
/**
 * Its coil is on output (an output of this plan)
 */
output?: string,
/**
 * The coil's other end goes to: `ground`, `battery`, `ignition`, `relay`, `5v`, `output`
 */
far_end?: string,
/**
 * Which relay
 */
far_relay?: string,
/**
 * Other output of the pair (off while the first is on)
 */
far_output?: string,
/**
 * If it comes on by itself: `harmless`, `costly`, `dangerous`
 */
unasked?: string,
/**
 * Resistance of its coil at 20 °C: a resistance, 0.05 to 1000000 ohm
 */
resistance?: string,
/**
 * Pull-in voltage, cold coil: a voltage, 0.1 to 36 V
 */
pull_in?: string,
/**
 * Drop-out voltage: a voltage, 0.01 to 36 V (from the data sheet, cold)
 */
drop_out?: string,
/**
 * Pull-in time: a time, 0 to 1000 ms
 */
pull_in_time?: string,
/**
 * Drop-out time: a time, 0 to 1000 ms
 */
drop_out_time?: string,
/**
 * PWM frequency: a frequency, 0.5 to 100000 Hz (only if it is pulsed; blank: simply on or off)
 */
frequency?: string,
/**
 * PWM duty: a share, 0.5 to 99.5 % (the share of each period that is on)
 */
duty?: string,
/**
 * Across its coil: `none`, `diode`, `resistor` (catches the spike at switch-off; blank: not known)
 */
suppression?: string,
/**
 * Banded end of the diode: `pin`, `far-end` (the band is the cathode, and belongs at plus; blank: it is there)
 */
stripe?: string,
/**
 * Resistor across its winding: a resistance, 1 to 100000 ohm
 */
suppression_resistance?: string,
/**
 * Inductance of its coil: an inductance, 0.01 to 100000 mH (from the data sheet; blank: what is usual for a relay)
 */
inductance?: string,
/**
 * Way from its output or switch to it: a length, 0.01 to 30 m
 */
length?: string,
/**
 * Way to its other end: a length, 0.01 to 30 m
 */
other_length?: string,
/**
 * Ground wire of what it feeds: a length, 0 to 50 m
 */
ground_length?: string,
/**
 * At the car it is on output (where it differs)
 */
wired?: string,
/**
 * Choice of its output: `moves`, `stays`, `by-hand` (blank: it may be moved)
 */
keeps?: string,
};

export type Load = {
/**
 * Name of the load (idle valve)
 */
name?: string,
/**
 * Its other end goes to: `ground`, `battery`, `ignition`, `relay`, `5v`, `output`
 */
far_end?: string,
/**
 * Which relay
 */
far_relay?: string,
/**
 * Other output of the pair (off while the first is on)
 */
far_output?: string,
/**
 * On output (an output of this plan)
 */
output?: string,
/**
 * Same part as (what is blank here is copied from there: kind, resistance, voltages, what is across it)
 */
like?: string,
/**
 * Kind of load: `solenoid`, `proportional-valve`, `motor`, `throttle`, `lamp`, `resistor`, `led`, `solid-state`, `logic-input`, `pulse-input`, `rev-counter`, `gauge` (a relay has its own card; blank: as a relay's coil, the worst case)
 */
kind?: string,
/**
 * What cuts its motor's supply: `relay`, `controller`, `none` (apart from the two outputs that drive it)
 */
power_cut?: string,
/**
 * The relay that cuts it
 */
cut_relay?: string,
/**
 * If it comes on by itself: `harmless`, `costly`, `dangerous`
 */
unasked?: string,
/**
 * Resistance at 20 °C: a resistance, 0.05 to 1000000 ohm (a lamp or a motor: as the meter reads it, switched off)
 */
resistance?: string,
/**
 * Pull-in voltage: a voltage, 0.1 to 36 V (from the data sheet, cold)
 */
pull_in?: string,
/**
 * Drop-out voltage: a voltage, 0.01 to 36 V (from the data sheet, cold)
 */
drop_out?: string,
/**
 * Highest input voltage: a voltage, 1 to 100 V (from its data sheet: 5 V for many, 16 V for some)
 */
bears?: string,
/**
 * PWM frequency: a frequency, 0.5 to 100000 Hz (only if it is pulsed; blank: simply on or off)
 */
frequency?: string,
/**
 * PWM duty: a share, 0.5 to 99.5 % (the share of each period that is on)
 */
duty?: string,
/**
 * Across its winding: `none`, `diode`, `resistor` (catches the spike at switch-off; blank: not known)
 */
suppression?: string,
/**
 * Banded end of the diode: `pin`, `far-end` (the band is the cathode, and belongs at plus; blank: it is there)
 */
stripe?: string,
/**
 * Resistor across its winding: a resistance, 1 to 100000 ohm
 */
suppression_resistance?: string,
/**
 * Inductance of its winding: an inductance, 0.01 to 100000 mH (from the data sheet; blank: what is usual for its kind)
 */
inductance?: string,
/**
 * Way from its output or switch to it: a length, 0.01 to 30 m
 */
length?: string,
/**
 * Way to its other end: a length, 0.01 to 30 m
 */
other_length?: string,
/**
 * At the car it is on output (where it differs)
 */
wired?: string,
/**
 * Choice of its output: `moves`, `stays`, `by-hand` (blank: it may be moved)
 */
keeps?: string,
/**
 * Size of its wire: a wire size, 0.05 to 120 mm2 (blank: as its feed)
 */
wire_size?: string,
/**
 * Fuse in its own feed: a current, 0.5 to 500 A (where its wire branches off)
 */
fuse?: string,
};

export type Cranking = {
/**
 * Cranking speed: a speed of rotation, 20 to 1000 rpm (180 to 220 rpm)
 */
speed?: string,
/**
 * Cranking speed in cold, thick oil: a speed of rotation, 20 to 1000 rpm (blank: the low end of the cranking speed)
 */
cold_speed?: string,
/**
 * Cranking speed on a weak battery: a speed of rotation, 20 to 1000 rpm (8 V at the starter while it turns)
 */
weak_speed?: string,
/**
 * Coils at power-up: `quiet`, `spark`, `held`
 */
power_up?: string,
/**
 * Coil ready after power-up: a time, 0 to 2000 ms (coils with electronics of their own: the data sheet)
 */
warm_up?: string,
/**
 * Speed dip at each compression: a share, 0 to 95 % (blank: from the engine's own compressions)
 */
dip?: string,
/**
 * The first spark waits for: `gap`, `cam`
 */
sync?: string,
/**
 * Readings in a row that must agree: 1 to 20
 */
confirmation?: string,
/**
 * Tooth intervals in one reading: 1 to 360
 */
averaging?: string,
/**
 * Readings over several teeth: `blocks`, `sliding`
 */
average?: string,
/**
 * Run-up time of the starter: a time, 0 to 5000 ms
 */
run_up?: string,
/**
 * Stall time-out: stopped when no tooth for: a time, 10 to 10000 ms
 */
stall_timeout?: string,
/**
 * Speed read while it rocks at standstill: a speed of rotation, 0 to 500 rpm
 */
rocking?: string,
/**
 * Kick-back angle: an angle, 0 to 120 deg
 */
kick_back?: string,
/**
 * Starter sticks for: a time, 0 to 20000 ms
 */
stick?: string,
/**
 * Idle speed: a speed of rotation, 100 to 5000 rpm
 */
idle?: string,
/**
 * Run-down time from idle: a time, 50 to 20000 ms
 */
run_down?: string,
};

export type Coils = {
/**
 * Resistance of one coil's primary: a resistance, 0.05 to 20 ohm
 */
resistance?: string,
/**
 * Inductance of that primary: an inductance, 0.05 to 100 mH
 */
inductance?: string,
/**
 * Target coil current: a current, 0.5 to 40 A (from the coil's data)
 */
current?: string,
/**
 * Current limit of the igniter: a current, 0.5 to 60 A (blank if it has none)
 */
limit?: string,
/**
 * Coils on one igniter: 1 to 8 (in parallel: they share its current limit)
 */
per_igniter?: string,
/**
 * Igniter switches off by itself after: a time, 1 to 60000 ms (from its data; blank if it does not)
 */
lets_go?: string,
/**
 * Igniter's input, as a load (one of those under “Outputs”)
 */
input?: string,
/**
 * Voltage drop of the igniter when on: a voltage, 0 to 5 V
 */
drop?: string,
/**
 * Spark duration: a time, 0 to 10 ms
 */
spark?: string,
/**
 * Highest coil duty: a share, 1 to 100 % (from the coil's data; blank if not stated)
 */
duty_limit?: string,
};

export type Wheels = {
/**
 * Positions on the crank wheel: 1 to 360 (missing ones counted)
 */
crank_teeth?: string,
/**
 * Missing teeth: 0 to 10 (0: evenly spaced)
 */
missing?: string,
/**
 * From the gap to TDC: an angle, 0 to 360 deg (first tooth after the gap at the sensor, to firing TDC (top dead centre); blank: the offset entered, else 90°)
 */
gap_angle?: string,
/**
 * Teeth or windows on the cam, per turn: 1 to 72 (blank: no cam sensor)
 */
cam_teeth?: string,
};

export type Trigger = {
/**
 * Tooth at the sensor at TDC: 1 to 360 (first after the gap: 1)
 */
tooth?: string,
/**
 * The light shows, at a low speed: an angle, -180 to 180 deg (before: positive)
 */
seen_low?: string,
/**
 * That low speed: a speed of rotation, 50 to 20000 rpm
 */
speed_low?: string,
/**
 * The light shows, at a high speed: an angle, -180 to 180 deg (before: positive)
 */
seen_high?: string,
/**
 * That high speed: a speed of rotation, 50 to 20000 rpm
 */
speed_high?: string,
};

export type CrankSensor = {
/**
 * Sensor type: `reluctance`, `open-collector`, `push-pull`
 */
kind?: string,
/**
 * Its AC voltage: a voltage, 0.01 to 500 V (unplugged, at a known speed)
 */
amplitude?: string,
/**
 * Meter or scope: `effective`, `peak`, `peak-to-peak`
 */
amplitude_as?: string,
/**
 * Measured at: a speed of rotation, 20 to 20000 rpm (blank: the cranking speed)
 */
amplitude_speed?: string,
/**
 * Resistance of its coil, 20 °C: a resistance, 10 to 20000 ohm
 */
resistance?: string,
/**
 * Polarity: `right`, `reversed`
 */
polarity?: string,
/**
 * Its output is pulled up to: `none`, `3.3`, `5`, `battery` (drives both ways: its own supply)
 */
pull_rail?: string,
/**
 * Pull-up resistor: a resistance, 50 to 1000000 ohm
 */
pull_up?: string,
/**
 * Voltage drop of its switch when low: a voltage, 0 to 3 V
 */
saturation?: string,
/**
 * Highest current it may sink: a current, 0.1 to 1000 mA (from its data)
 */
sink?: string,
/**
 * Length of its cable: a length, 0 to 50 m
 */
length?: string,
/**
 * Contacts and wire of the signal: a resistance, 0 to 10000 ohm
 */
contact?: string,
/**
 * Its ground above the controller's: a voltage, -5 to 5 V
 */
ground_offset?: string,
/**
 * Its shield is connected: `one`, `both`, `none`
 */
shield?: string,
/**
 * Harness connector: `fits`, `change`
 */
connector?: string,
};

export type CamSensor = {
/**
 * Sensor type: `reluctance`, `open-collector`, `push-pull`
 */
kind?: string,
/**
 * Its AC voltage: a voltage, 0.01 to 500 V (unplugged, at a known speed)
 */
amplitude?: string,
/**
 * Meter or scope: `effective`, `peak`, `peak-to-peak`
 */
amplitude_as?: string,
/**
 * Measured at: a speed of rotation, 20 to 20000 rpm (blank: the cranking speed)
 */
amplitude_speed?: string,
/**
 * Resistance of its coil, 20 °C: a resistance, 10 to 20000 ohm
 */
resistance?: string,
/**
 * Polarity: `right`, `reversed`
 */
polarity?: string,
/**
 * Its output is pulled up to: `none`, `3.3`, `5`, `battery` (drives both ways: its own supply)
 */
pull_rail?: string,
/**
 * Pull-up resistor: a resistance, 50 to 1000000 ohm
 */
pull_up?: string,
/**
 * Voltage drop of its switch when low: a voltage, 0 to 3 V
 */
saturation?: string,
/**
 * Highest current it may sink: a current, 0.1 to 1000 mA (from its data)
 */
sink?: string,
/**
 * Length of its cable: a length, 0 to 50 m
 */
length?: string,
/**
 * Contacts and wire of the signal: a resistance, 0 to 10000 ohm
 */
contact?: string,
/**
 * Its ground above the controller's: a voltage, -5 to 5 V
 */
ground_offset?: string,
/**
 * Its shield is connected: `one`, `both`, `none`
 */
shield?: string,
/**
 * Harness connector: `fits`, `change`
 */
connector?: string,
};

export type TriggerInput = {
/**
 * Highest input frequency: a frequency, 1 to 10000000 Hz (from the controller's data)
 */
highest_frequency?: string,
/**
 * Lowest input frequency: a frequency, 0 to 100000 Hz (blank if it works down to standstill)
 */
lowest_frequency?: string,
/**
 * Timer resolution: a time, 0.001 to 10000 us
 */
tick?: string,
/**
 * Smallest signal it detects (peak): a voltage, 0.001 to 50 V (while cranking)
 */
counts_from?: string,
/**
 * Highest input voltage: a voltage, 1 to 500 V
 */
bears?: string,
/**
 * Reads low at or below: a voltage, 0.01 to 30 V
 */
low?: string,
/**
 * Reads high at or above: a voltage, 0.1 to 30 V
 */
high?: string,
/**
 * Resistance of the input to ground: a resistance, 100 to 100000000 ohm
 */
resistance?: string,
/**
 * Filter capacitor of the input: a capacitance, 0 to 10000 nF
 */
capacitance?: string,
};

export type Sensor = {
/**
 * Name of the sensor (coolant, manifold, pedal)
 */
name?: string,
/**
 * It tells the: `coolant`, `air`, `oil`, `fuel-temperature`, `exhaust`, `manifold`, `barometer`, `oil-pressure`, `fuel-pressure`, `throttle`, `pedal`, `level`, `oxygen`, `knock`, `speed`, `switch`, `other`
 */
purpose?: string,
/**
 * Type of sensor: `ntc`, `pt100`, `pt1000`, `ratiometric`, `pot`, `sender`, `switch`, `hall`, `knock`, `wideband`, `thermocouple`
 */
kind?: string,
/**
 * On input
 */
input?: string,
/**
 * Its data, in pairs (-20 16.5k, 20 2450, 80 290: what it tells, then ohms or volts)
 */
points?: string,
/**
 * Resistance at 25 °C: a resistance, 1 to 10000000 ohm (with its B value, where its data give no points)
 */
r25?: string,
/**
 * B value: 1000 to 9000 (in kelvin, as B25/85)
 */
beta?: string,
/**
 * Coefficients of Steinhart and Hart (1.3607e-3 2.5572e-4 1.1559e-7: A B C; four where its data are of R / R25)
 */
steinhart?: string,
/**
 * Pressure at its lower voltage: a pressure, -101 to 100000 kPa
 */
range_low?: string,
/**
 * Pressure at its upper voltage: a pressure, 1 to 1000000 kPa
 */
range_high?: string,
/**
 * Lower voltage, on 5 V: a voltage, 0 to 5 V
 */
low_volts?: string,
/**
 * Upper voltage, on 5 V: a voltage, 0 to 5 V
 */
high_volts?: string,
/**
 * Its pressure is: `absolute`, `gauge`
 */
counted_from?: string,
/**
 * Its volts over the stroke (0.5 1.5 3.0 4.5, first released)
 */
stroke?: string,
/**
 * Second track runs: `mirrored`, `half`, `alike` (blank: it has none)
 */
second?: string,
/**
 * Second track on input
 */
second_input?: string,
/**
 * Volts of the second track there (4.5 3.5 2.0 0.5)
 */
second_stroke?: string,
/**
 * Closed, it connects its input to: `ground`, `supply`, `battery`
 */
switched_to?: string,
/**
 * Engine stopped, it is: `closed`, `open`
 */
stands?: string,
/**
 * Its tolerance: a share, 0 to 50 % (of its ohms, or of its span; from its data)
 */
tolerance?: string,
/**
 * Fed from: `supply`, `battery`, `none`
 */
feed?: string,
/**
 * On sensor supply
 */
supply?: string,
/**
 * Second track on sensor supply (blank: the same)
 */
second_supply?: string,
/**
 * It draws: a current, 0 to 2000 mA (both tracks together; from its data, or 5 V by the ohms end to end)
 */
draw?: string,
/**
 * Still connected to its wire: `none`, `supply`, `gauge`
 */
also?: string,
/**
 * Resistance of that: a resistance, 1 to 1000000 ohm
 */
also_ohms?: string,
/**
 * Its input is set in the controller as: `coolant`, `air`, `oil`, `fuel-temperature`, `exhaust`, `manifold`, `barometer`, `oil-pressure`, `fuel-pressure`, `throttle`, `pedal`, `level`, `oxygen`, `knock`, `speed`, `switch`, `other` (blank: not checked)
 */
entered?: string,
/**
 * Table entered is of: `ohms`, `volts`
 */
table_of?: string,
/**
 * Table, as entered (-20 16.5k, 20 2450, 80 290)
 */
table?: string,
/**
 * Ohms read at the car, unplugged (20 2480, 85 260: at 20 °C, at 85 °C; one number alone: now)
 */
read_ohms?: string,
/**
 * Volts read at the car, plugged in (20 2.48; one number alone: now)
 */
read_volts?: string,
};

export type Input = {
/**
 * Name of the input (as on the pin table; “A1 to A8” describes eight that are alike)
 */
name?: string,
/**
 * It reads: `analogue`, `digital`, `knock`
 */
takes?: string,
/**
 * Its pull-up: `up`, `none`
 */
pull?: string,
/**
 * Its pull-up resistor: a resistance, 100 to 1000000 ohm (from the pin table)
 */
pull_up?: string,
/**
 * It reads up to: a voltage, 1 to 30 V
 */
range?: string,
/**
 * Its bits: 8 to 24 (10 bits are 1024 steps; from its data)
 */
bits?: string,
};

export type SensorSupplie = {
/**
 * Name of the sensor supply (as on the pin table)
 */
name?: string,
/**
 * Voltage of the sensor supply: a voltage, 1 to 30 V
 */
volts?: string,
/**
 * It may give: a current, 1 to 5000 mA (from the pin table)
 */
rating?: string,
/**
 * What else it feeds draws: a current, 0 to 5000 mA (Hall sensors at crank and cam, displays; blank: not counted)
 */
others?: string,
};

export type Today = {
/**
 * Temperature now: a temperature, -40 to 60 °C (of an engine that stood overnight, and of the air)
 */
temperature?: string,
/**
 * Altitude: a length, -450 to 6000 m (above the sea, from a map)
 */
altitude?: string,
/**
 * Air pressure now: a pressure, 45 to 108 kPa (as measured here, not reduced to sea level; blank: from the altitude)
 */
air?: string,
};

export type Battery = {
/**
 * Battery while cranking cold: a voltage, 4 to 36 V
 */
cold_cranking?: string,
/**
 * Battery while cranking hot: a voltage, 4 to 36 V (blank: 1.5 V more than cold)
 */
hot_cranking?: string,
/**
 * Battery at rest: a voltage, 4 to 36 V
 */
resting?: string,
/**
 * Battery while charging: a voltage, 4 to 36 V
 */
charging?: string,
/**
 * Battery capacity: a charge, 1 to 500 Ah
 */
capacity?: string,
/**
 * Other draw with the key off: a current, 0 to 5000 mA (clock, alarm, radio, a leak of the alternator)
 */
other_draw?: string,
/**
 * Battery cable to the starter, one way: a length, 0 to 20 m (with a battery in the rear: all of it)
 */
lead_length?: string,
/**
 * Size of the battery cable: a wire size, 4 to 120 mm2 (copper; 35 mm² or 2 AWG)
 */
lead_size?: string,
/**
 * Starter draws while cranking: a current, 10 to 2000 A
 */
starter?: string,
/**
 * Alternator at idle: a current, 1 to 500 A (from its curve, hot; often a third of its rating)
 */
alternator_idle?: string,
/**
 * Alternator rating: a current, 1 to 500 A (on its label; at speed)
 */
alternator?: string,
/**
 * The kill switch cuts: `none`, `battery`, `both`
 */
kill_switch?: string,
};

export type Temperatures = {
/**
 * Coldest start: a temperature, -50 to 60 °C
 */
cold?: string,
/**
 * Hottest part of the engine bay: a temperature, 0 to 180 °C
 */
hot?: string,
};

export type SwitchedFeeds = {
/**
 * Switched feed (15 or 87) to ground, switched off: a resistance, 0.5 to 1000000 ohm (through what else is on it)
 */
off_resistance?: string,
/**
 * The ignition feed (15) while the starter turns: `live`, `cut`
 */
cranking?: string,
/**
 * Voltage drop from battery to relay coils, cranking: a voltage, 0 to 6 V
 */
cranking_loss?: string,
/**
 * Fuse of the ignition feed (15): a current, 0.5 to 500 A (before all that is on it without a relay's contact)
 */
fuse?: string,
/**
 * Thinnest wire behind that fuse: a wire size, 0.05 to 120 mm2 (copper; 1 mm² or 18 AWG)
 */
size?: string,
/**
 * Fuse of the battery feed (30): a current, 0.5 to 500 A (before all that is on it without a relay's contact)
 */
battery_fuse?: string,
/**
 * Thinnest wire behind that fuse: a wire size, 0.05 to 120 mm2 (copper; 1 mm² or 18 AWG)
 */
battery_size?: string,
};

export type Wiring = {
/**
 * Insulation of the wires, rated for: `a`, `b`, `c`, `d`
 */
insulation?: string,
/**
 * Hottest air around the wires: a temperature, -20 to 140 °C
 */
ambient?: string,
/**
 * Feeds loaded at once in one bundle: 1 to 20 (signals and pulsed wires don't count)
 */
bundled?: string,
};

export type Harness = {
/**
 * Wires of the harness, as bought: a length, 0.1 to 30 m (from the controller's connector to their ends)
 */
length?: string,
/**
 * To spare at the end of each wire: a length, 0 to 2 m
 */
spare?: string,
/**
 * Way to its coil: a length, 0.01 to 30 m
 */
coils?: Array<string>,
/**
 * Way to its injector: a length, 0.01 to 30 m
 */
injectors?: Array<string>,
/**
 * Way to its second injector: a length, 0.01 to 30 m
 */
second?: Array<string>,
/**
 * Way to the crank sensor: a length, 0.01 to 30 m
 */
crank?: string,
/**
 * Way to the cam sensor: a length, 0.01 to 30 m
 */
cam?: string,
/**
 * Branch of their feed to each coil: a length, 0.01 to 30 m (from the splice)
 */
coil_feed?: string,
/**
 * Ground wire of each coil: a length, 0.01 to 30 m (igniter inside; blank: it has none)
 */
coil_ground?: string,
/**
 * Branch of their feed to each injector: a length, 0.01 to 30 m (from the splice)
 */
injector_feed?: string,
/**
 * Harness connectors at the coils: `fit`, `wrong`, `bare`
 */
coil_ends?: string,
/**
 * Harness connectors at the injectors: `fit`, `wrong`, `bare`
 */
injector_ends?: string,
/**
 * One pin of the controller carries: a current, 0.1 to 100 A (hot, from the connector's data)
 */
pin_current?: string,
/**
 * Wire that its pins and seals fit: a wire size, 0.05 to 25 mm2 (0.5 to 1 mm2)
 */
pin_wire?: string,
/**
 * Colour of battery feeds (30) (RD)
 */
permanent?: string,
/**
 * Colour of switched feeds (15, 87) (OG)
 */
switched?: string,
/**
 * Colour of grounds (31) (BK)
 */
ground?: string,
/**
 * Wires done
 */
done?: string,
};

export type Grounds = {
/**
 * Battery's minus cable goes to: `engine`, `body`
 */
minus_to?: string,
/**
 * Length of that cable: a length, 0 to 20 m
 */
minus_length?: string,
/**
 * Strap between engine and body: `fitted`, `none`
 */
strap?: string,
/**
 * Size of the strap: a wire size, 0.5 to 120 mm2
 */
strap_size?: string,
/**
 * Length of the strap: a length, 0 to 20 m
 */
strap_length?: string,
/**
 * Controller's ground wires: 1 to 16
 */
wires?: string,
/**
 * Size of each ground wire: a wire size, 0.05 to 120 mm2
 */
wire_size?: string,
/**
 * Length of each ground wire: a length, 0 to 20 m
 */
wire_length?: string,
/**
 * Sensors are grounded at: `pin`, `bolt`, `engine`
 */
sensors?: string,
/**
 * Resistance from that bolt to minus: a resistance, 0.01 to 1000 mohm
 */
bolt?: string,
};

export type Bus = {
/**
 * CAN-H to CAN-L, power off: a resistance, 0 to 10000000 ohm (ohms; OL where it shows no end)
 */
reading?: string,
/**
 * Terminators of 120 Ω: 0 to 4 (those inside devices too)
 */
terminators?: string,
/**
 * Where they are: `ends`, `elsewhere`
 */
terminated_at?: string,
/**
 * Size of its wires: a wire size, 0.05 to 10 mm2
 */
size?: string,
/**
 * Bit rate: a bit rate, 5 to 1000 kbit/s (as 500 kbit/s; CAN FD: that of the identifiers)
 */
bit_rate?: string,
/**
 * Wire from end to end: a length, 0.1 to 5000 m (of a star: its two longest arms)
 */
length?: string,
/**
 * Longest branch to a device: a length, 0 to 1000 m (of a star: its longest arm)
 */
branch?: string,
/**
 * How it is laid: `line`, `star`
 */
shape?: string,
/**
 * Bit rate of a device that differs: a bit rate, 5 to 1000 kbit/s (blank: all are alike)
 */
other_rate?: string,
/**
 * CAN-H to ground, bus running: a voltage, -30 to 60 V
 */
high?: string,
/**
 * CAN-L to ground, bus running: a voltage, -30 to 60 V
 */
low?: string,
};

export type Frame = {
/**
 * What it carries (as engine speed)
 */
name?: string,
/**
 * Identifier, hex (as 5F0)
 */
identifier?: string,
/**
 * Length of the identifier: `11`, `29`
 */
identifier_kind?: string,
/**
 * Bytes of data: 0 to 8
 */
bytes?: string,
/**
 * Sent every: a time, 0.1 to 3600000 ms (as 20 ms)
 */
period?: string,
/**
 * Its data, as seen, hex (as 01 F3 00: its bits are counted one by one)
 */
data?: string,
};

/**
 * One answer: the verdict, why, what to do, the numbers, the working.
 */
export type Answer = {
/**
 * The path of what it is about (`channels`, `loads.0`).
 */
subject: string,
/**
 * What it is about, where a question has several answers.
 */
title?: Message,
/**
 * The answer in a few words.
 */
verdict: Verdict,
/**
 * Made from the plan, or from what was found at the car.
 */
basis: Basis,
/**
 * Why, in one sentence.
 */
why?: Message,
/**
 * The usual values that it rests on.
 */
assumed?: Message,
/**
 * What to do, in order.
 */
to_do?: Array<Message>,
/**
 * Cautions, where the doing can hurt.
 */
cautions?: Array<Message>,
/**
 * The numbers behind it.
 */
figures?: Array<Figure>,
/**
 * Tables behind it.
 */
tables?: Array<Table>,
/**
 * Pictures, as numbers to draw from.
 */
pictures?: Array<Picture>,
/**
 * What is to be done one by one, to be ticked off.
 */
lists?: Array<Checklist>,
/**
 * A test at the car, worked by tapping.
 */
bench?: Bench, };

/**
 * When a field is asked.
 */
export type Asked = "first" | "usual" | "rare";

/**
 * A value taken when a field is blank.
 */
export type Assumed = {
/**
 * As it would be typed.
 */
text: string,
/**
 * Where it comes from.
 */
basis: string, };

/**
 * What a finding was made from.
 */
export type Basis = "as-planned" | "as-wired";

/**
 * A test of the channels, one fired after the other.
 */
export type Bench = {
/**
 * The path of the list that a tap is kept in: entry 0 is channel 1.
 */
list: string,
/**
 * The path of the field that keeps what is done of the cure.
 */
done: string,
/**
 * By what it is seen that one answers; none where nothing is fired.
 */
tool: Message | null,
/**
 * The channels, in the order of the plan.
 */
channels: Array<BenchChannel>,
/**
 * What may answer, as it is typed: `3`, or `2T`.
 */
targets: Array<string>,
/**
 * The channel to fire next; none where all is certain.
 */
next: number | null,
/**
 * What is certain by now, and what the test is to tell.
 */
says: Array<Message>,
/**
 * What to see to before it.
 */
cautions: Array<Message>, };

/**
 * A channel on the bench.
 */
export type BenchChannel = {
/**
 * Its number.
 */
channel: number,
/**
 * What is to be done, and asked.
 */
ask: Message,
/**
 * How many should answer.
 */
expected: number,
/**
 * What answered, or must; blank where nothing is known.
 */
found: string,
/**
 * Whether that can't be: what answers now stands in its place.
 */
again: boolean,
/**
 * How that agrees with the plan, in words; none where nothing is known.
 */
stands: Message | null, };

/**
 * The current in a branch.
 */
export type Branch = {
/**
 * The part.
 */
part: string,
/**
 * The current, signed.
 */
current: Value, };

/**
 * Things to be done one by one.
 */
export type Checklist = {
/**
 * What it cures.
 */
title: Message,
/**
 * The path of the field that keeps the names of what is done.
 */
path: string,
/**
 * The things.
 */
items: Array<Item>, };

/**
 * One of the things that can be chosen.
 */
export type Choice = {
/**
 * As it stands in the plan.
 */
code: string,
/**
 * As a person reads it.
 */
label: string, };

/**
 * An output, its load and the key states.
 */
export type Circuit = {
/**
 * What the picture shows, for those who can't see it.
 */
caption: Message,
/**
 * The stage of the output: `open-drain`, `high-side`, `half-bridge` or `logic`.
 */
stage: string,
/**
 * Where the load's other end goes: `ground`, `battery`, `ignition`, `relay`, `5v` or `output`.
 */
far_end: string,
/**
 * The kind of the load.
 */
load: string,
/**
 * Whether the plus is at the pin while the load acts, which is drawn below its other end.
 */
is_driven_up: boolean,
/**
 * Whether there is a pull-up, and the rail it goes to.
 */
pull_up: string | null,
/**
 * Whether there is a pull-down.
 */
pull_down: boolean,
/**
 * What lies across the load's winding: `diode-up` and `diode-down` (the way it conducts as drawn), or `resistor`.
 */
suppressor: string | null,
/**
 * One for each key state, in the order in which the car meets them.
 */
states: Array<CircuitState>, };

/**
 * The circuit in one key state.
 */
export type CircuitState = {
/**
 * `key-off`, `starting`, `off`, `cranking`, `on`, `pulsed` (everything a mean), `other-on`, `outlived`; then the faults
 * `feed-lost`, `ground-lost` and `supply-lost`.
 */
state: string,
/**
 * The switch that is closed: `upper`, `lower`, or `open` where none is.
 */
drive: string,
/**
 * The state in words.
 */
name: Message,
/**
 * What the load does, in words.
 */
summary: Message,
/**
 * Whether that is what the fitter wants there.
 */
tone: Tone,
/**
 * The pin against ground; nothing where it floats.
 */
pin: Value | null,
/**
 * The load's far end against ground.
 */
far: Value | null,
/**
 * The controller's supply rail against ground.
 */
rail: Value | null,
/**
 * The branches that carry current, by the name of the part: `load`, `upper-switch`, `lower-switch`,
 * `upper-diode`, `lower-diode`, `pull-up`, `pull-down`, `suppressor`, `feed` (from the battery to the load's far end), and
 * `rail-consumers` and `feed-consumers` (through whatever else hangs on a dead supply or feed, to ground);
 * positive from top to bottom of the drawing, for the load from the pin to its far end. In amperes.
 */
currents: Array<Branch>, };

/**
 * A curve.
 */
export type Curve = {
/**
 * What it is.
 */
name: Message,
/**
 * Seconds, and what is measured in the unit of the panel.
 */
points: Array<[number, number]>, };

/**
 * The engine's cycle.
 */
export type Cycle = {
/**
 * What the picture shows, for those who can't see it.
 */
caption: Message,
/**
 * Length of the cycle in degrees.
 */
cycle_deg: number,
/**
 * The firing top dead centres, in order.
 */
cylinders: Array<CycleCylinder>,
/**
 * The events.
 */
events: Array<CycleEvent>, };

/**
 * A cylinder in the cycle.
 */
export type CycleCylinder = {
/**
 * Its number.
 */
cylinder: number,
/**
 * Its firing top dead centre in degrees, from the first to fire.
 */
angle_deg: number, };

/**
 * A spark, or the start of an injection.
 */
export type CycleEvent = {
/**
 * When, in degrees.
 */
angle_deg: number,
/**
 * The channel that acts.
 */
channel: number,
/**
 * The cylinder it reaches.
 */
cylinder: number,
/**
 * What comes of it.
 */
outcome: Outcome, };

/**
 * The engine's cycle at a speed.
 */
export type CycleStrip = {
/**
 * What the picture shows, for those who can't see it.
 */
caption: Message,
/**
 * Length of the cycle in degrees.
 */
cycle_deg: number,
/**
 * The firing top dead centres, in order.
 */
cylinders: Array<CycleCylinder>,
/**
 * What the channels do.
 */
windows: Array<StripWindow>, };

/**
 * A text that is to stand at a place of the plan.
 */
export type Edit = {
/**
 * The path of the place.
 */
path: string,
/**
 * What is to stand there; blank: nothing.
 */
text: string, };

/**
 * A field of the plan.
 */
export type Field = {
/**
 * Its path in the plan; `#` stands for the number of an entry.
 */
path: string,
/**
 * What it is called.
 */
label: string,
/**
 * A short word of help, or nothing.
 */
hint: string,
/**
 * How to find the value at the car, or nothing.
 */
measure: string,
/**
 * An example of what may be typed, or nothing.
 */
example: string,
/**
 * When it is asked.
 */
asked: Asked,
/**
 * What it takes.
 */
takes: Takes,
/**
 * What is assumed when it is blank.
 */
assumed?: Assumed,
/**
 * Asked only where another field has one of these values.
 */
only_if?: OnlyIf, };

/**
 * How a field stands: what the page shows beside it.
 */
export type FieldState = {
/**
 * Whether it was given, assumed, left out or can't be read.
 */
state: State,
/**
 * The value as it was read or assumed.
 */
value?: Value,
/**
 * Where an assumed value comes from.
 */
basis?: string,
/**
 * What is wrong with it.
 */
problem?: Message, };

/**
 * A number with its range and how it was found.
 */
export type Figure = {
/**
 * What it is; the message's code names the figure for scripts.
 */
label: Message,
/**
 * The nominal value.
 */
value: Value,
/**
 * The lowest at any corner.
 */
low?: Value,
/**
 * The highest at any corner.
 */
high?: Value,
/**
 * How it was found: at least one step.
 */
working: Array<Step>, };

/**
 * One thing the fitter should know.
 */
export type Finding = {
/**
 * How much it matters.
 */
severity: Severity,
/**
 * The path of the field or part it is about, as in [`crate::fields`]: the page leads there.
 */
subject: string,
/**
 * Whether the plan or the car shows it.
 */
basis: Basis,
/**
 * When it strikes.
 */
strikes: Moment,
/**
 * Where it holds.
 */
holds: Holds,
/**
 * What is wrong; its code names the finding.
 */
message: Message,
/**
 * What would cure it, each solved before it is offered.
 */
remedies?: Array<Message>,
/**
 * How the numbers in it were found.
 */
working?: Array<Step>, };

/**
 * At how many of the corners something is so.
 */
export type Holds = { "how": "never" } | { "how": "at-some", "corners": Array<string> } | { "how": "always" };

/**
 * One thing to be done.
 */
export type Item = {
/**
 * Its name, a word.
 */
name: string,
/**
 * What is to be done.
 */
words: Message,
/**
 * Whether it was ticked off.
 */
is_done: boolean, };

/**
 * A level.
 */
export type Level = {
/**
 * What it is.
 */
name: Message,
/**
 * Where it lies, in the unit of the panel.
 */
at: number, };

/**
 * A sentence of the report.
 */
export type Message = {
/**
 * Stable name of the sentence: a translation is keyed by it.
 */
code: string,
/**
 * What stands in the sentence's gaps.
 */
values?: { [key in string]: Value },
/**
 * The sentence in English.
 */
text: string,
/**
 * What of the plan is to be typed anew, where the sentence says to do something that is such an edit.
 */
edits?: Array<Edit>, };

/**
 * When what a finding tells of is first met, in the order in which a car meets it.
 */
export type Moment = "plan" | "key-off" | "key-on" | "cranking" | "running" | "failure";

/**
 * What another field must be.
 */
export type OnlyIf = {
/**
 * The path of the other field, in the same record.
 */
path: string,
/**
 * One of these values.
 */
values: Array<string>, };

/**
 * What comes of a spark in a cylinder.
 */
export type Outcome = "fires" | "wasted" | "misplaced";

/**
 * One panel of traces.
 */
export type Panel = {
/**
 * The unit of its axis: `A` or `V`.
 */
unit: string,
/**
 * The curves, at most three: each looks different without colour.
 */
curves: Array<Curve>,
/**
 * Levels with a name.
 */
levels: Array<Level>, };

/**
 * A picture.
 */
export type Picture = { "kind": "cycle" } & Cycle | { "kind": "strip" } & CycleStrip | { "kind": "circuit" } & Circuit | { "kind": "timeline" } & Timeline | { "kind": "traces" } & Traces;

/**
 * Why a file is not a plan. The plan that is open stays as it is.
 */
export type ReadError = { "kind": "too-large",
/**
 * Its size in bytes, or no less than that.
 */
bytes: number, } | { "kind": "not-json",
/**
 * Where and why.
 */
detail: string, } | { "kind": "not-a-plan",
/**
 * What is missing.
 */
detail: string, } | { "kind": "newer",
/**
 * The version of the file.
 */
version: number, };

/**
 * Everything that follows from a plan.
 */
export type Report = {
/**
 * The plan's name.
 */
name: string,
/**
 * What the fitter should know: Dangers and Faults first, by when they strike, then Doubts and Notes likewise.
 */
findings: Array<Finding>,
/**
 * The answers, question by question.
 */
sections: Array<Section>,
/**
 * How each field stands, by its path.
 */
fields: { [key in string]: FieldState }, };

/**
 * A row of a table.
 */
export type Row = {
/**
 * The cells.
 */
cells: Array<Value>,
/**
 * Set where the row stands out; a cell says why in words.
 */
tone?: Tone, };

/**
 * A question and its answers.
 */
export type Section = {
/**
 * `channels`, `injectors`, `rest` or `cranking`.
 */
id: string,
/**
 * The question as a person asks it.
 */
question: Message,
/**
 * The answers: one for the question, or one for each part it asks about.
 */
answers: Array<Answer>, };

/**
 * How much a finding matters, worst first: by the rule of [`SCALE`].
 */
export type Severity = "danger" | "fault" | "doubt" | "note";

/**
 * How a field stands.
 */
export type State = "given" | "assumed" | "missing" | "unreadable";

/**
 * One line of working.
 */
export type Step = {
/**
 * The formula in symbols.
 */
symbols: string,
/**
 * The formula with the numbers in it.
 */
filled: string,
/**
 * What comes out.
 */
result: Value,
/**
 * Where the formula comes from.
 */
source: string, };

/**
 * How long a channel acts on a cylinder.
 */
export type StripWindow = {
/**
 * `dwell` of a coil, `injection`, or `second` for that of a second set.
 */
kind: string,
/**
 * The channel that acts.
 */
channel: number,
/**
 * The cylinder that it reaches.
 */
cylinder: number,
/**
 * Where it begins, in degrees: below nought where that is in the cycle before.
 */
from_deg: number,
/**
 * Where it ends, in degrees of the cycle.
 */
to_deg: number,
/**
 * What comes of the spark at its end.
 */
outcome: Outcome, };

/**
 * A table.
 */
export type Table = {
/**
 * What it shows.
 */
caption: Message,
/**
 * The heads of its columns.
 */
columns: Array<Message>,
/**
 * Its rows, each with a cell a column.
 */
rows: Array<Row>,
/**
 * How its numbers were found.
 */
working: Array<Step>, };

/**
 * What a field takes.
 */
export type Takes = { "kind": "text" } | { "kind": "row" } | { "kind": "name-in",
/**
 * The part.
 */
part: string, } | { "kind": "whole",
/**
 * The lowest possible.
 */
low: number,
/**
 * The highest possible.
 */
high: number, } | { "kind": "quantity",
/**
 * What it measures, in words.
 */
what: string,
/**
 * The unit of a number without one, and of the limits.
 */
unit: string,
/**
 * The lowest possible.
 */
low: number,
/**
 * The highest possible.
 */
high: number, } | { "kind": "choice",
/**
 * These.
 */
choices: Array<Choice>, };

/**
 * Speed against time.
 */
export type Timeline = {
/**
 * What the picture shows, for those who can't see it.
 */
caption: Message,
/**
 * True speed: seconds and rpm.
 */
speed: Array<[number, number]>,
/**
 * Speed as the controller measures it: seconds and rpm.
 */
measured: Array<[number, number]>,
/**
 * Pull-in threshold in rpm.
 */
threshold_rpm: number,
/**
 * Release threshold in rpm.
 */
release_rpm: number,
/**
 * When the relay's contact is closed: from and to, in seconds.
 */
closed: Array<[number, number]>,
/**
 * Moments with a name, in seconds.
 */
marks: Array<[number, Message]>, };

/**
 * How an answer sounds. Never told by colour alone: the verdict says it in words.
 */
export type Tone = "bad" | "doubtful" | "open" | "good";

/**
 * Currents and voltages against time, in panels below each other over one axis of time.
 */
export type Traces = {
/**
 * What the picture shows, for those who can't see it.
 */
caption: Message,
/**
 * From and to, in seconds.
 */
span: [number, number],
/**
 * The panels.
 */
panels: Array<Panel>, };

/**
 * A value in a report: how it reads, and the number behind it where there is one.
 */
export type Value = {
/**
 * How it reads, with its unit.
 */
shown: string,
/**
 * The number in the base unit of its dimension.
 */
number?: number,
/**
 * The base unit.
 */
unit?: string, };

/**
 * The answer in a few words.
 */
export type Verdict = {
/**
 * How it sounds.
 */
tone: Tone,
/**
 * The words.
 */
message: Message, };
