// Generated from the Rust types. After a change there: cargo xtask bless

/** What `parse` and `report` throw where there is no plan. Its `message` is for a person. */
export type PlanError = Error & ReadError;

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
 * Question 1: the controller's channels and what they reach.
 */
export type Channels = {
/**
 * How the coils are fired.
 */
ignition_mode?: string,
/**
 * Ignition channels the controller has.
 */
ignition_count?: string,
/**
 * `by-cylinder` or `by-order`.
 */
ignition_habit?: string,
/**
 * Cylinders that each ignition channel was found to reach: entry 1 is channel 1.
 */
coils_wired?: Array<string>,
/**
 * How the injectors are fired.
 */
injection_mode?: string,
/**
 * Injection channels the controller has.
 */
injection_count?: string,
/**
 * `by-cylinder` or `by-order`.
 */
injection_habit?: string,
/**
 * Cylinders that each injection channel was found to reach.
 */
injectors_wired?: Array<string>,
/**
 * How the second set of injectors is fired.
 */
second_mode?: string,
/**
 * Injection channels that the controller has for it.
 */
second_count?: string,
/**
 * `by-cylinder` or `by-order`.
 */
second_habit?: string,
/**
 * Cylinders that each channel of the second set was found to reach.
 */
second_wired?: Array<string>,
/**
 * What is done of the cure of the ignition: the names of its steps.
 */
coils_done?: string,
/**
 * The same of the injection.
 */
injectors_done?: string,
/**
 * The same of the second set.
 */
second_done?: string, };

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
 * `key-off`, `starting`, `off`, `on`, `pulsed` (everything a mean), `other-on`; then the faults `feed-lost`, `ground-lost` and `supply-lost`.
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
 * The ignition coils and their feed.
 */
export type Coils = {
/**
 * Resistance of a primary at 20 °C.
 */
resistance?: string,
/**
 * Inductance of a primary.
 */
inductance?: string,
/**
 * Current to which it is charged.
 */
current?: string,
/**
 * Current that the igniter holds.
 */
limit?: string,
/**
 * What the igniter drops while it conducts.
 */
drop?: string,
/**
 * How long a spark burns.
 */
spark?: string,
/**
 * The most of the time that it may be charged.
 */
duty_limit?: string,
/**
 * How many relays share the coils.
 */
relays?: string,
/**
 * Rating of a relay's contact.
 */
relay?: string,
/**
 * Rating of a relay's fuse.
 */
fuse?: string,
/**
 * Length of the lead from the battery to the coils, one way.
 */
lead_length?: string,
/**
 * Size of that lead.
 */
lead_size?: string, };

/**
 * The supply and the temperatures between which every answer must hold.
 */
export type Conditions = {
/**
 * Battery voltage while the starter turns a cold engine.
 */
cranking?: string,
/**
 * Battery voltage at rest.
 */
resting?: string,
/**
 * Highest charging voltage.
 */
charging?: string,
/**
 * Coldest start.
 */
cold?: string,
/**
 * Hottest part of the engine bay where loads sit.
 */
hot?: string,
/**
 * Resistance to ground of the controller's supply with the key off.
 */
dead_supply?: string,
/**
 * Resistance to ground of a switched feed (15 or 87) while it is off.
 */
dead_feed?: string, };

/**
 * Question 4: the relay that pulls in at a speed.
 */
export type Cranking = {
/**
 * Mean cranking speed.
 */
speed?: string,
/**
 * Speed at which the controller switches the relay on.
 */
relay_on_at?: string,
/**
 * Speed at which it switches the relay off.
 */
relay_off_below?: string,
/**
 * How far the speed dips at each compression, as a share of the mean.
 */
dip?: string,
/**
 * Positions on the crank wheel, missing teeth counted.
 */
teeth?: string,
/**
 * Missing teeth.
 */
missing?: string,
/**
 * What the first spark waits for: `gap` or `cam`.
 */
sync?: string,
/**
 * Crank angle from the first tooth after the gap to the first firing top dead centre.
 */
gap_angle?: string,
/**
 * Readings in a row that must agree.
 */
confirmation?: string,
/**
 * Teeth over which the speed is averaged.
 */
averaging?: string,
/**
 * Time the starter takes to bring the engine to speed.
 */
run_up?: string,
/**
 * Time without a tooth after which the engine counts as standing.
 */
stall_timeout?: string,
/**
 * Time the coils need power before a spark.
 */
dwell?: string,
/**
 * Pull-in time of the relay.
 */
pull_in_time?: string,
/**
 * Drop-out time of the relay.
 */
drop_out_time?: string,
/**
 * Voltage at which the relay is sure to pull in, its coil at 20 °C.
 */
pull_in_voltage?: string,
/**
 * Speed read while the engine rocks to a standstill.
 */
rocking?: string,
/**
 * Speed from which the engine dies.
 */
idle?: string,
/**
 * Time from there to a standstill.
 */
run_down?: string,
/**
 * Mean cranking speed in cold, thick oil.
 */
cold_speed?: string,
/**
 * Mean cranking speed on a weak battery.
 */
weak_speed?: string,
/**
 * What the coils do as power arrives: `quiet`, `spark` or `held`.
 */
power_up?: string,
/**
 * Time that a coil needs after power before it can charge.
 */
warm_up?: string,
/**
 * Angle through which a compression may throw the engine back.
 */
kick_back?: string,
/**
 * How long a starter that sticks stands.
 */
stick?: string, };

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
 * Question 1: the engine.
 */
export type Engine = {
/**
 * `four-stroke`, `two-stroke` or `rotary`.
 */
kind?: string,
/**
 * Number of cylinders, or of rotors.
 */
cylinders?: string,
/**
 * Firing order, as `1-5-3-6-2-4`.
 */
order?: string,
/**
 * `even`, `angles` or `geometry`.
 */
spacing?: string,
/**
 * Firing angles in the order of firing, degrees from the first, as `0 90 240 330 480 570`.
 */
angles?: string,
/**
 * Angle of each further bank from the first, degrees in the direction in which the crank turns, as `90`.
 */
bank_angles?: string,
/**
 * How far the crank turns until each pin is at its top, degrees from pin 1, as `0 120 240`.
 */
pins?: string,
/**
 * How far the second rod of a split pin follows.
 */
split?: string,
/**
 * How the cylinders are numbered in this plan, as `banks-left-front`.
 */
numbering?: string,
/**
 * How they are numbered where the firing order was found.
 */
order_numbering?: string,
/**
 * Cylinders by bank, front to rear, as `1 3 5 / 2 4 6`.
 */
banks?: string,
/**
 * Highest speed of the engine.
 */
highest_speed?: string, };

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
 * Question 2: what the injectors pass, and what is wanted of them.
 */
export type Fuel = {
/**
 * Flow of one injector, held open, by volume or by mass.
 */
flow?: string,
/**
 * Power wanted, at the crank.
 */
power?: string,
/**
 * `petrol`, `e10`, `e85`, `ethanol` or `methanol`.
 */
kind?: string,
/**
 * Pressure at which the flow is stated.
 */
stated_pressure?: string,
/**
 * Pressure in the rail above that of the open air, engine stopped.
 */
rail_pressure?: string,
/**
 * Highest pressure in the manifold above that of the open air.
 */
boost?: string,
/**
 * `referenced` to the manifold, or `fixed`.
 */
regulator?: string,
/**
 * How late an injector opens at the charging voltage.
 */
dead_time?: string,
/**
 * The most of the time that an injector may be open.
 */
duty_limit?: string,
/**
 * Fuel that the engine burns for its work.
 */
consumption?: string,
/**
 * Density of the fuel.
 */
density?: string,
/**
 * Density of the fluid with which the flow was measured.
 */
test_density?: string,
/**
 * Flow of one injector of the second set, at the same pressure.
 */
second_flow?: string, };

/**
 * At how many of the corners something is so.
 */
export type Holds = { "how": "never" } | { "how": "at-some", "corners": Array<string> } | { "how": "always" };

/**
 * Question 2: the feed that all injectors hang on.
 */
export type InjectorFeed = {
/**
 * Rating of its fuse.
 */
fuse?: string,
/**
 * Rating of its relay's contact.
 */
relay?: string, };

/**
 * Question 2: the injectors and the outputs that carry them.
 */
export type Injectors = {
/**
 * Resistance of one at 20 °C.
 */
resistance?: string,
/**
 * Tolerance of that resistance, where none stands with it.
 */
tolerance?: string,
/**
 * Inductance of one.
 */
inductance?: string,
/**
 * Current at which one opens.
 */
opening_current?: string,
/**
 * How many there are.
 */
count?: string,
/**
 * How many share one output.
 */
per_output?: string,
/**
 * `plain-switch` or `current-controlled`.
 */
output_kind?: string,
/**
 * Continuous current limit of one output; its peak, where it controls the current.
 */
output_limit?: string,
/**
 * Current to which a current-controlled output falls after the peak.
 */
hold_current?: string,
/**
 * On-resistance of one output.
 */
output_resistance?: string,
/**
 * Length of wire from the relay to the injector and on to the controller.
 */
wire_length?: string,
/**
 * Size of that wire.
 */
wire_size?: string,
/**
 * Resistance of all contacts in that wire.
 */
contact_resistance?: string,
/**
 * Longest time that a current-controlled output stays at its peak.
 */
peak_time?: string,
/**
 * Voltage to which an output's clamp lets its pin rise.
 */
clamp?: string,
/**
 * Energy that the clamp bears at each turn-off.
 */
clamp_energy?: string,
/**
 * Heat that one output bears.
 */
output_heat?: string, };

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
 * Question 1: what a timing light shows.
 */
export type Light = {
/**
 * Advance to which the controller is locked.
 */
advance?: string,
/**
 * Advance seen on each cylinder: entry 1 is cylinder 1.
 */
seen?: Array<string>,
/**
 * `compression` or `exhaust`.
 */
stroke?: string,
/**
 * Offset of the trigger as entered.
 */
offset?: string,
/**
 * How far a reading may be off.
 */
tolerance?: string, };

/**
 * Question 3: one load.
 */
export type Load = {
/**
 * What the fitter calls it.
 */
name?: string,
/**
 * What kind of part it is.
 */
kind?: string,
/**
 * Resistance at 20 °C.
 */
resistance?: string,
/**
 * Voltage at which it is sure to act, cold coil.
 */
pull_in?: string,
/**
 * Voltage below which it is sure to let go.
 */
drop_out?: string,
/**
 * Name of the output it hangs on.
 */
output?: string,
/**
 * Where its other end goes: `ground`, `battery`, `ignition`, `relay`, `5v` or `output`.
 */
far_end?: string,
/**
 * Name of the output at its other end, where that is one.
 */
far_output?: string,
/**
 * What happens if it acts unasked: `harmless`, `costly` or `dangerous`.
 */
unasked?: string,
/**
 * What lies across its winding: `none`, `diode` or `resistor`.
 */
suppression?: string,
/**
 * Which end the stripe of that diode is at: `pin` or `far-end`.
 */
stripe?: string,
/**
 * That resistor.
 */
suppression_resistance?: string,
/**
 * Inductance of its winding.
 */
inductance?: string,
/**
 * Frequency at which it is pulsed; blank where it is not.
 */
frequency?: string,
/**
 * The part of each period that is on.
 */
duty?: string, };

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
text: string, };

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
 * Question 3: one output of the controller.
 */
export type Output = {
/**
 * Its name on the pin table.
 */
name?: string,
/**
 * `open-drain`, `high-side`, `half-bridge` or `logic`.
 */
stage?: string,
/**
 * Which level counts as on: `ground` or `battery`.
 */
on_level?: string,
/**
 * On-resistance.
 */
on_resistance?: string,
/**
 * Continuous current limit.
 */
current_limit?: string,
/**
 * Pull-up resistor, where there is one.
 */
pull_up?: string,
/**
 * Rail of the pull-up: `battery`, `controller`, `5v` or `3v3`.
 */
pull_up_rail?: string,
/**
 * Pull-down resistor, where there is one.
 */
pull_down?: string,
/**
 * Current that an open switch lets pass at 12 V.
 */
leakage?: string,
/**
 * Voltage across an open switch at which its own clamp catches a coil's kick.
 */
clamp?: string,
/**
 * Energy that the clamp may take at each turn-off.
 */
clamp_energy?: string,
/**
 * Highest frequency at which it may be pulsed.
 */
pulse_limit?: string, };

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
 * Everything that was typed.
 */
export type Plan = {
/**
 * Version of the format; see [`VERSION`]. [`parse()`] and [`write()`] see to it.
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
/**
 * Supply and temperatures.
 */
conditions?: Conditions,
/**
 * Question 1: the engine.
 */
engine?: Engine,
/**
 * Question 1: the channels.
 */
channels?: Channels,
/**
 * Question 1: the timing light.
 */
light?: Light,
/**
 * Question 1: one cycle at a speed.
 */
strip?: Strip,
/**
 * Question 2.
 */
injectors?: Injectors,
/**
 * Question 2: a second set of injectors.
 */
second_injectors?: Injectors,
/**
 * Question 2: the feed of all injectors.
 */
injector_feed?: InjectorFeed,
/**
 * Question 2: the fuel.
 */
fuel?: Fuel,
/**
 * Question 3: the outputs.
 */
outputs?: Array<Output>,
/**
 * Question 3: the loads.
 */
loads?: Array<Load>,
/**
 * Question 4.
 */
cranking?: Cranking,
/**
 * Question 4: further relays switched at a speed.
 */
relays?: Array<SpeedRelay>,
/**
 * Question 5.
 */
coils?: Coils,
/**
 * Question 8: the cam's wheel, and top dead centre.
 */
trigger?: Trigger,
/**
 * Question 8: the crank's sensor.
 */
crank_sensor?: TriggerSensor,
/**
 * Question 8: the cam's sensor.
 */
cam_sensor?: TriggerSensor,
/**
 * Question 8: the inputs of both.
 */
trigger_input?: TriggerInput, };

/**
 * Why a file is not a plan. The plan that is open stays as it is.
 */
export type ReadError = { "kind": "too-large",
/**
 * Its size in bytes.
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
version: number, } | { "kind": "misfit",
/**
 * Where and why.
 */
detail: string, };

/**
 * Everything that follows from a plan.
 */
export type Report = {
/**
 * The plan's name.
 */
name: string,
/**
 * What the fitter should know, worst first.
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
 * How much a finding matters, worst first.
 */
export type Severity = "danger" | "fault" | "doubt" | "note";

/**
 * Question 4: a further relay that is switched at a speed.
 */
export type SpeedRelay = {
/**
 * What the fitter calls it.
 */
name?: string,
/**
 * What it feeds: `pump`, `alternator-field`, `fan` or `coils`.
 */
purpose?: string,
/**
 * Speed at which the controller switches it on.
 */
relay_on_at?: string,
/**
 * Speed at which the controller switches it off.
 */
relay_off_below?: string,
/**
 * How long the pump runs at key-on.
 */
prime?: string,
/**
 * What else cuts the pump: `none`, `inertia` or `oil-pressure`.
 */
cut?: string,
/**
 * Voltage at which it is sure to pull in, its coil at 20 °C.
 */
pull_in_voltage?: string,
/**
 * Pull-in time of the relay.
 */
pull_in_time?: string,
/**
 * Drop-out time of the relay.
 */
drop_out_time?: string, };

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
 * Question 1: one cycle at a speed.
 */
export type Strip = {
/**
 * The speed.
 */
speed?: string,
/**
 * Dwell of a coil.
 */
dwell?: string,
/**
 * How far before top dead centre the spark comes.
 */
advance?: string,
/**
 * How long an injection lasts.
 */
injection?: string,
/**
 * How far before firing top dead centre it ends.
 */
injection_end?: string,
/**
 * How long an injection of the second set lasts.
 */
second_injection?: string, };

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
export type Takes = { "kind": "text" } | { "kind": "row" } | { "kind": "output-name" } | { "kind": "whole",
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
 * Question 8: the cam's wheel, and where top dead centre lies.
 */
export type Trigger = {
/**
 * Teeth or windows that pass the cam's sensor in a turn of it.
 */
cam_teeth?: string,
/**
 * The tooth at the sensor with cylinder 1 at top dead centre, counted from the first after the gap.
 */
tooth?: string,
/**
 * Angle from that first tooth to top dead centre, as entered in the controller.
 */
offset?: string,
/**
 * Advance at which the controller is locked for the timing light.
 */
advance?: string,
/**
 * Advance that the light shows at the lower speed.
 */
seen_low?: string,
/**
 * The lower speed.
 */
speed_low?: string,
/**
 * Advance that the light shows at the higher speed.
 */
seen_high?: string,
/**
 * The higher speed.
 */
speed_high?: string, };

/**
 * The controller's inputs for crank and cam.
 */
export type TriggerInput = {
/**
 * Highest frequency that they follow.
 */
highest_frequency?: string,
/**
 * Lowest frequency that they follow.
 */
lowest_frequency?: string,
/**
 * The step in which they measure time.
 */
tick?: string,
/**
 * Peak from which a signal about zero is counted.
 */
counts_from?: string,
/**
 * Highest voltage that they bear.
 */
bears?: string,
/**
 * A level at or below is low.
 */
low?: string,
/**
 * A level at or above is high.
 */
high?: string,
/**
 * Resistance of an input to ground.
 */
resistance?: string,
/**
 * Capacitance of its filter.
 */
capacitance?: string, };

/**
 * A sensor at the crank or the cam, and its wires.
 */
export type TriggerSensor = {
/**
 * `reluctance`, `open-collector` or `push-pull`.
 */
kind?: string,
/**
 * What a variable-reluctance sensor gives, as measured.
 */
amplitude?: string,
/**
 * `effective`, `peak` or `peak-to-peak`.
 */
amplitude_as?: string,
/**
 * Speed at which it was measured.
 */
amplitude_speed?: string,
/**
 * Resistance of its coil.
 */
resistance?: string,
/**
 * `right` or `reversed`.
 */
polarity?: string,
/**
 * What the pull-up of a Hall sensor goes to: `none`, `3.3`, `5` or `battery`.
 */
pull_rail?: string,
/**
 * Resistance of the pull-up.
 */
pull_up?: string,
/**
 * What the sensor's switch drops while it conducts.
 */
saturation?: string,
/**
 * Current that the switch may sink.
 */
sink?: string,
/**
 * Length of its cable.
 */
length?: string,
/**
 * Resistance of contacts in the signal's way.
 */
contact?: string,
/**
 * By how much the sensor's ground lies above the controller's.
 */
ground_offset?: string,
/**
 * Where its shield is connected: `one`, `both` or `none`.
 */
shield?: string,
/**
 * `fits` or `change`.
 */
connector?: string, };

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
