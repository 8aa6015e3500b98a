//! One key state at one corner as a network.

use super::{
    Branch, Contact, DIODE_FORWARD_V, DIODE_ON_OHM, Dead, DeadFlow, Drive, FarEnd, KeyState,
    LoadFlow, METER_OHM, Operating, Part, Point, PullRail, Surroundings, Wiring,
};
use crate::{
    circuit::{Diode, Element, GROUND, Network, Node, Solution},
    quantity::{Measure, amperes, ohms, volts},
};

/// A network in the making.
pub(super) struct Build<'a> {
    wiring: &'a Wiring,
    state: KeyState,
    point: &'a Point,
    around: &'a Surroundings,
    network: Network,
    battery: Node,
    source: Element,
    rail: Node,
    /// The controller's own ground.
    floor: Node,
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
    pub(super) fn new(
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
            floor: GROUND,
            pin,
            dead: Vec::new(),
            parts: Vec::new(),
        };
        if state.is_unfed() {
            build.rail = build.dead_node(Dead::Supply);
        }
        if state == KeyState::GroundLost {
            build.floor = build.dead_node(Dead::Ground);
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
            Drive::ToGround => self.resistor(Part::LowerSwitch, self.floor, ohm),
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
            place(Part::LowerDiode, self.floor, false);
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
            self.resistor(Part::PullDown, self.floor, pulls.of(band).base());
        }
    }

    fn five_volt(&mut self) -> Node {
        if self.state.is_unfed() {
            return self.dead_node(Dead::FiveVolt);
        }
        if self.state == KeyState::GroundLost {
            // the regulator stands on the lost ground, with nothing across it
            return self.floor;
        }
        let node = self.network.node("");
        self.network.source(node, GROUND, 5.0);
        node
    }

    pub(super) fn with_loads(mut self) -> Self {
        for at in 0..self.wiring.loads.len() {
            self.load(at);
        }
        self
    }

    pub(super) fn with_meter(mut self) -> Self {
        self.resistor(Part::Meter, GROUND, METER_OHM);
        self
    }

    fn load(&mut self, at: usize) {
        let Some(load) = self.wiring.loads.get(at) else { return };
        let end = if at == self.point.subject { self.point.load } else { self.point.others };
        let ohm = load.resistance_at(end, self.point.phase, self.point.at.temperature).base();
        let is_cut = self.state == KeyState::FeedLost && at == self.point.subject;
        let node = match (load.far_end, self.state, self.point.contact) {
            (FarEnd::Ground, ..) => GROUND,
            _ if is_cut => self.dead_node(Dead::Feed),
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
            Dead::Supply | Dead::FiveVolt | Dead::Ground => {
                self.point.dead_rail.of(&self.around.dead_rail)
            }
            Dead::Ignition | Dead::Relay | Dead::Feed => {
                self.point.dead_feed.of(&self.around.dead_feed)
            }
        };
        let node = self.network.node("");
        let ohm = at_least(ohm.base());
        let element = match dead {
            Dead::Ground => self.network.resistor(self.battery, node, ohm),
            _ => self.network.resistor(node, GROUND, ohm),
        };
        self.dead.push(DeadNode { dead, node, ohm, element });
        node
    }

    fn resistor(&mut self, part: Part, node: Node, ohm: f64) {
        let ohm = at_least(ohm);
        let element = self.network.resistor(self.pin, node, ohm);
        self.parts.push(Placed { part, node, ohm, drop_v: 0.0, element, is_outward: true });
    }

    pub(super) fn solve(self) -> Option<Operating> {
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
