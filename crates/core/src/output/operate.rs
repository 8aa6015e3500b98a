//! One key state at one corner, as a network, solved.

use super::{
    Contact, DIODE_FORWARD_V, DIODE_ON_OHM, Drive, FarEnd, KeyState, METER_OHM, Point, PullRail,
    Surroundings, Wiring,
};
use crate::{
    circuit::{Diode, Element, GROUND, Network, Node, Solution},
    quantity::{Current, Measure, Resistance, Voltage, amperes, ohms, volts},
};

/// A part that hangs on the pin.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The load with this number.
    Load(usize),
    /// The switch to the supply.
    UpperSwitch,
    /// The switch to ground.
    LowerSwitch,
    /// The body diode to the supply.
    UpperDiode,
    /// The body diode from ground.
    LowerDiode,
    /// The pull-up.
    PullUp,
    /// The pull-down.
    PullDown,
    /// The meter.
    Meter,
}

/// A part that carries current, as seen from the pin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Branch {
    /// The part.
    pub part: Part,
    /// The voltage behind its resistance: of the node there, a conducting diode's own drop counted in.
    pub behind: Voltage,
    /// Its resistance.
    pub resistance: Resistance,
    /// The current from the pin into it.
    pub current: Current,
}

/// A load in a solved network.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LoadFlow {
    /// Pin less far end.
    pub voltage: Voltage,
    /// From the pin to the far end.
    pub current: Current,
    /// Its far end against ground; nothing where that floats.
    pub far: Option<Voltage>,
    /// Its resistance there.
    pub resistance: Resistance,
}

/// A solved key state.
#[derive(Clone, Debug, PartialEq)]
pub struct Operating {
    /// The pin against ground; nothing where it floats.
    pub pin: Option<Voltage>,
    /// The controller's supply against ground; nothing where it floats.
    pub rail: Option<Voltage>,
    /// Every load, as numbered in the wiring.
    pub loads: Vec<LoadFlow>,
    /// What hangs on the pin.
    pub branches: Vec<Branch>,
    /// Current out of the battery.
    pub from_battery: Current,
    /// What is cut off from the battery.
    pub dead: Vec<DeadFlow>,
}

/// What is cut off from the battery.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dead {
    /// The controller's supply.
    Supply,
    /// The controller's 5 V.
    FiveVolt,
    /// The ignition feed (15).
    Ignition,
    /// The contact of the relay (87).
    Relay,
}

/// A part of the car that is cut off from the battery, and what flows into it all the same.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DeadFlow {
    /// Which.
    pub dead: Dead,
    /// Its voltage against ground.
    pub voltage: Voltage,
    /// The resistance of everything else that hangs on it, to ground.
    pub resistance: Resistance,
    /// The current through that.
    pub current: Current,
}

impl Operating {
    /// The larger of the currents in the two switches.
    pub fn switch_current(&self) -> Current {
        let switches = self
            .branches
            .iter()
            .filter(|branch| matches!(branch.part, Part::UpperSwitch | Part::LowerSwitch));
        amperes(switches.map(|branch| branch.current.base().abs()).fold(0.0, f64::max))
    }

    /// Current into the controller while that is cut off.
    pub fn into_rail(&self) -> Current {
        self.into(|dead| matches!(dead, Dead::Supply | Dead::FiveVolt))
    }

    /// Current into the feed of a load while that is cut off.
    pub fn into_feed(&self) -> Current {
        self.into(|dead| matches!(dead, Dead::Ignition | Dead::Relay))
    }

    fn into(&self, counts: impl Fn(Dead) -> bool) -> Current {
        amperes(self.dead.iter().filter(|it| counts(it.dead)).map(|it| it.current.base()).sum())
    }
}

/// Solves a key state at a corner; nothing where a value is outside what a circuit can have.
pub fn operate(
    wiring: &Wiring,
    state: KeyState,
    point: &Point,
    around: &Surroundings,
) -> Option<Operating> {
    Build::new(wiring, state, point, around).with_loads().solve()
}

/// The pin by itself, all loads unplugged, with a meter from it to ground.
pub(super) fn operate_bare(
    wiring: &Wiring,
    state: KeyState,
    point: &Point,
    around: &Surroundings,
) -> Option<Operating> {
    let mut build = Build::new(wiring, state, point, around);
    build.resistor(Part::Meter, GROUND, METER_OHM);
    build.solve()
}

/// A network in the making.
struct Build<'a> {
    wiring: &'a Wiring,
    state: KeyState,
    point: &'a Point,
    around: &'a Surroundings,
    network: Network,
    battery: Node,
    source: Element,
    rail: Node,
    pin: Node,
    /// Dead nodes with the resistor that ties each to ground.
    dead: Vec<DeadNode>,
    parts: Vec<Placed>,
}

struct DeadNode {
    dead: Dead,
    node: Node,
    ohm: f64,
    element: Element,
}

/// A part of the network between the pin and a node.
struct Placed {
    part: Part,
    node: Node,
    ohm: f64,
    /// A conducting diode's drop, seen from the pin.
    drop_v: f64,
    element: Element,
    /// Whether the element's current counts from the pin.
    is_outward: bool,
}

impl<'a> Build<'a> {
    fn new(
        wiring: &'a Wiring,
        state: KeyState,
        point: &'a Point,
        around: &'a Surroundings,
    ) -> Self {
        let mut network = Network::new();
        let battery = network.node("");
        let source = network.source(battery, GROUND, point.at.supply.base());
        let pin = network.node("");
        let mut build = Self {
            wiring,
            state,
            point,
            around,
            network,
            battery,
            source,
            rail: battery,
            pin,
            dead: Vec::new(),
            parts: Vec::new(),
        };
        if state == KeyState::KeyOff {
            build.rail = build.dead_node(Dead::Supply);
        }
        build.switches();
        build.diodes();
        build.pulls();
        build
    }

    fn switches(&mut self) {
        let ohm = self.point.on.of(&self.wiring.output.on_resistance).base();
        match self.wiring.drive(self.state) {
            Drive::Open => {}
            Drive::ToGround => self.resistor(Part::LowerSwitch, GROUND, ohm),
            Drive::ToSupply => self.resistor(Part::UpperSwitch, self.rail, ohm),
        }
    }

    fn diodes(&mut self) {
        let law = Diode::Threshold {
            forward_voltage_v: DIODE_FORWARD_V,
            on_resistance_ohm: DIODE_ON_OHM,
        };
        let stage = self.wiring.output.stage;
        let mut place = |part, node, is_outward: bool| {
            let (anode, cathode) = if is_outward { (self.pin, node) } else { (node, self.pin) };
            let element = self.network.diode(anode, cathode, law);
            let drop_v = if is_outward { DIODE_FORWARD_V } else { -DIODE_FORWARD_V };
            self.parts.push(Placed { part, node, ohm: DIODE_ON_OHM, drop_v, element, is_outward });
        };
        if stage.has_upper() {
            place(Part::UpperDiode, self.rail, true);
        }
        if stage.has_lower() {
            place(Part::LowerDiode, GROUND, false);
        }
    }

    fn pulls(&mut self) {
        let (pulls, output) = (self.point.pulls, &self.wiring.output);
        if let Some((band, rail)) = &output.pull_up {
            let node = match rail {
                PullRail::Battery => self.battery,
                PullRail::Controller => self.rail,
                PullRail::FiveVolt => self.five_volt(),
            };
            // the pin stands highest where the pull-up is small and the pull-down large
            self.resistor(Part::PullUp, node, pulls.opposite().of(band).base());
        }
        if let Some(band) = &output.pull_down {
            self.resistor(Part::PullDown, GROUND, pulls.of(band).base());
        }
    }

    fn five_volt(&mut self) -> Node {
        if self.state == KeyState::KeyOff {
            return self.dead_node(Dead::FiveVolt);
        }
        let node = self.network.node("");
        self.network.source(node, GROUND, 5.0);
        node
    }

    fn with_loads(mut self) -> Self {
        for at in 0..self.wiring.loads.len() {
            self.load(at);
        }
        self
    }

    fn load(&mut self, at: usize) {
        let Some(load) = self.wiring.loads.get(at) else { return };
        let end = if at == self.point.subject { self.point.load } else { self.point.others };
        let ohm = load.resistance_at(end, self.point.phase, self.point.at.temperature).base();
        let node = match (load.far_end, self.state, self.point.contact) {
            (FarEnd::Ground, ..) => GROUND,
            (FarEnd::Ignition, KeyState::KeyOff, _) => self.dead_node(Dead::Ignition),
            (FarEnd::Relay, KeyState::KeyOff, _) | (FarEnd::Relay, _, Contact::Open) => {
                self.dead_node(Dead::Relay)
            }
            (FarEnd::Battery | FarEnd::Ignition | FarEnd::Relay, ..) => self.battery,
        };
        self.resistor(Part::Load(at), node, ohm);
    }

    fn dead_node(&mut self, dead: Dead) -> Node {
        if let Some(found) = self.dead.iter().find(|it| it.dead == dead) {
            return found.node;
        }
        let ohm = match dead {
            Dead::Supply | Dead::FiveVolt => self.point.dead_rail.of(&self.around.dead_rail),
            Dead::Ignition | Dead::Relay => self.point.dead_feed.of(&self.around.dead_feed),
        };
        let node = self.network.node("");
        let ohm = at_least(ohm.base());
        let element = self.network.resistor(node, GROUND, ohm);
        self.dead.push(DeadNode { dead, node, ohm, element });
        node
    }

    fn resistor(&mut self, part: Part, node: Node, ohm: f64) {
        let ohm = at_least(ohm);
        let element = self.network.resistor(self.pin, node, ohm);
        self.parts.push(Placed { part, node, ohm, drop_v: 0.0, element, is_outward: true });
    }

    fn solve(self) -> Option<Operating> {
        let solution = self.network.solve().ok()?;
        let flow = |it: &DeadNode| DeadFlow {
            dead: it.dead,
            voltage: volts(solution.voltage(it.node).unwrap_or(0.0)),
            resistance: ohms(it.ohm),
            current: amperes(solution.current(it.element)),
        };
        Some(Operating {
            pin: solution.voltage(self.pin).map(volts),
            rail: solution.voltage(self.rail).map(volts),
            loads: self.load_flows(&solution),
            branches: self.branches(&solution),
            from_battery: amperes(-solution.current(self.source)),
            dead: self.dead.iter().map(flow).collect(),
        })
    }

    fn load_flows(&self, solution: &Solution) -> Vec<LoadFlow> {
        let loads = self.parts.iter().filter(|placed| matches!(placed.part, Part::Load(_)));
        loads
            .map(|placed| LoadFlow {
                voltage: volts(solution.across(placed.element).unwrap_or(0.0)),
                current: amperes(solution.current(placed.element)),
                far: solution.voltage(placed.node).map(volts),
                resistance: ohms(placed.ohm),
            })
            .collect()
    }

    fn branches(&self, solution: &Solution) -> Vec<Branch> {
        let seen = |placed: &Placed| {
            let behind = solution.voltage(placed.node)? + placed.drop_v;
            let inward = solution.current(placed.element);
            let current = if placed.is_outward { inward } else { -inward };
            let is_diode = matches!(placed.part, Part::UpperDiode | Part::LowerDiode);
            let blocks = is_diode && current.abs() <= 0.0;
            (!blocks).then(|| Branch {
                part: placed.part,
                behind: volts(behind),
                resistance: ohms(placed.ohm),
                current: amperes(current),
            })
        };
        self.parts.iter().filter_map(seen).collect()
    }
}

/// No resistance is quite nothing: a switch of 0 ohm is taken as a micro-ohm.
fn at_least(ohm: f64) -> f64 {
    ohm.max(1e-6)
}
