//! One key state at one corner as a network.

use super::{
    Contact, DIODE_FORWARD_V, DIODE_ON_OHM, Dead, DeadFlow, Drive, End, FarEnd, KeyState,
    LEAKAGE_AT_V, Load, LoadFlow, METER_OHM, Operating, Output, PinBranch, PinPart, Point,
    PullRail, Stage, Suppression, Surroundings, Wiring,
};
use crate::{
    circuit::{Diode, Element, GROUND, Network, Node, Solution, Workspace},
    quantity::{Current, Measure, amperes, ohms, volts},
};

/// What one network after the other is made and solved in.
#[derive(Debug, Default)]
pub(super) struct Room {
    network: Network,
    workspace: Workspace,
    logic: Vec<LogicRail>,
    pins: Vec<Node>,
    dead: Vec<DeadNode>,
    parts: Vec<Placed>,
}

/// A network in the making.
pub(super) struct Build<'a> {
    wiring: &'a Wiring,
    state: KeyState,
    point: &'a Point,
    around: &'a Surroundings,
    network: &'a mut Network,
    workspace: &'a mut Workspace,
    battery: Node,
    source: Element,
    rail: Node,
    /// The controller's own ground.
    floor: Node,
    /// Live rails of the controller's own making.
    logic: &'a mut Vec<LogicRail>,
    /// The pin that is asked about, then those beyond.
    pins: &'a mut Vec<Node>,
    /// Dead nodes with the resistor that ties each to ground.
    dead: &'a mut Vec<DeadNode>,
    parts: &'a mut Vec<Placed>,
}

#[derive(Debug)]
struct LogicRail {
    rail: PullRail,
    node: Node,
    element: Element,
}

#[derive(Debug)]
struct DeadNode {
    dead: Dead,
    node: Node,
    ohm: f64,
    element: Element,
}

/// A part of the network between the pin that is asked about and a node.
#[derive(Debug)]
struct Placed {
    part: PinPart,
    node: Node,
    ohm: f64,
    /// A conducting diode's drop, seen from the pin.
    drop_v: f64,
    is_diode: bool,
    element: Element,
    /// Whether the element's current counts from the pin.
    is_outward: bool,
}

impl<'a> Build<'a> {
    pub(super) fn new(
        room: &'a mut Room,
        wiring: &'a Wiring,
        state: KeyState,
        point: &'a Point,
        around: &'a Surroundings,
    ) -> Self {
        let Room { network, workspace, logic, pins, dead, parts } = room;
        network.clear();
        logic.clear();
        dead.clear();
        parts.clear();
        let battery = network.node("");
        let source = network.source(battery, GROUND, point.at.supply.base());
        pins.clear();
        pins.extend((0..=wiring.beyond.len()).map(|_| network.node("")));
        let mut build = Self {
            wiring,
            state,
            point,
            around,
            network,
            workspace,
            battery,
            source,
            rail: battery,
            floor: GROUND,
            logic,
            pins,
            dead,
            parts,
        };
        if state.is_unfed() {
            build.rail = build.dead_node(Dead::Supply);
        }
        if state == KeyState::GroundLost {
            build.floor = build.dead_node(Dead::Ground);
        }
        build.place(0, &wiring.output, point.pulls);
        build
    }

    fn pin(&self) -> Node {
        self.pins.first().copied().unwrap_or(GROUND)
    }

    /// An output on its pin: its switches, what they leak, their body diodes, its resistors.
    fn place(&mut self, number: usize, output: &Output, pulls: End) {
        let Some(&pin) = self.pins.get(number) else { return };
        let drive =
            self.wiring.drive_at(number, self.point.subject, self.state, self.point.commanded);
        let upper = match output.stage {
            Stage::Logic => self.logic_rail(PullRail::FiveVolt),
            _ => self.rail,
        };
        let ohm = output.on_resistance_at(self.point.on, self.point.at.temperature).base();
        match drive {
            Drive::Open => {}
            Drive::ToGround => self.resistor(PinPart::LowerSwitch, (pin, self.floor), ohm),
            Drive::ToSupply => self.resistor(PinPart::UpperSwitch, (pin, upper), ohm),
        }
        self.leaks(output, drive, pulls, (pin, upper));
        self.diodes(output.stage, (pin, upper));
        self.pulls(output, pulls, pin);
    }

    fn leaks(&mut self, output: &Output, drive: Drive, pulls: End, (pin, upper): (Node, Node)) {
        let Some(band) = &output.leakage else { return };
        let stage = output.stage;
        // the pin stands highest where the upper switch leaks most and the lower one least; what leaks most has the least
        // resistance
        let alike = self.point.alike.map(End::opposite);
        let most = alike.unwrap_or(pulls).of(band).base();
        let least = alike.unwrap_or(pulls.opposite()).of(band).base();
        if stage.has_upper() && drive != Drive::ToSupply && most > 0.0 {
            self.resistor(PinPart::UpperLeak, (pin, upper), LEAKAGE_AT_V / most);
        }
        if stage.has_lower() && drive != Drive::ToGround && least > 0.0 {
            self.resistor(PinPart::LowerLeak, (pin, self.floor), LEAKAGE_AT_V / least);
        }
    }

    fn diodes(&mut self, stage: Stage, (pin, upper): (Node, Node)) {
        if stage.has_upper() {
            self.diode(PinPart::UpperDiode, (pin, upper), DIODE_FORWARD_V, DIODE_ON_OHM);
        }
        if stage.has_lower() {
            self.diode(PinPart::LowerDiode, (self.floor, pin), DIODE_FORWARD_V, DIODE_ON_OHM);
        }
    }

    /// A diode from anode to cathode, with a resistance in series.
    fn diode(&mut self, part: PinPart, (anode, cathode): (Node, Node), forward_v: f64, ohm: f64) {
        let law = Diode::Threshold { forward_voltage_v: forward_v, on_resistance_ohm: ohm };
        let element = self.network.diode(anode, cathode, law);
        self.keep(part, (anode, cathode), ohm, forward_v, element);
    }

    /// Keeps an element that hangs on the pin that is asked about.
    fn keep(
        &mut self,
        part: PinPart,
        ends: (Node, Node),
        ohm: f64,
        forward_v: f64,
        element: Element,
    ) {
        let pin = self.pin();
        let is_outward = ends.0 == pin;
        if !is_outward && ends.1 != pin {
            return;
        }
        let (node, drop_v) = if is_outward { (ends.1, forward_v) } else { (ends.0, -forward_v) };
        let is_diode = forward_v > 0.0;
        self.parts.push(Placed { part, node, ohm, drop_v, is_diode, element, is_outward });
    }

    fn pulls(&mut self, output: &Output, pulls: End, pin: Node) {
        if let Some((band, rail)) = &output.pull_up {
            let node = match rail {
                PullRail::Battery => self.battery,
                PullRail::Controller => self.rail,
                PullRail::FiveVolt | PullRail::ThreeVolt => self.logic_rail(*rail),
            };
            // the pin stands highest where the pull-up is small and the pull-down large
            self.resistor(
                PinPart::PullUp,
                (pin, node),
                self.point.alike.unwrap_or(pulls.opposite()).of(band).base(),
            );
        }
        if let Some(band) = &output.pull_down {
            self.resistor(
                PinPart::PullDown,
                (pin, self.floor),
                self.point.alike.unwrap_or(pulls).of(band).base(),
            );
        }
    }

    fn logic_rail(&mut self, rail: PullRail) -> Node {
        if self.state.is_unfed() {
            return self.dead_node(Dead::FiveVolt);
        }
        if self.state == KeyState::GroundLost {
            // the regulator stands on the lost ground, with nothing across it
            return self.floor;
        }
        if let Some(known) = self.logic.iter().find(|known| known.rail == rail) {
            return known.node;
        }
        let node = self.network.node("");
        let volts = if rail == PullRail::ThreeVolt { 3.3 } else { 5.0 };
        let element = self.network.source(node, GROUND, volts);
        self.logic.push(LogicRail { rail, node, element });
        node
    }

    pub(super) fn with_loads(mut self) -> Self {
        let wiring = self.wiring;
        for (at, pin) in wiring.beyond.iter().enumerate() {
            self.place(at + 1, &pin.output, self.point.beyond);
        }
        for (at, load) in wiring.loads.iter().enumerate() {
            self.load(0, load, Some(at));
        }
        for (at, pin) in wiring.beyond.iter().enumerate() {
            for load in &pin.loads {
                self.load(at + 1, load, None);
            }
        }
        self
    }

    pub(super) fn with_meter(mut self) -> Self {
        self.resistor(PinPart::Meter, (self.pin(), GROUND), METER_OHM);
        self
    }

    /// A load on a pin; `at` is its number among those on the pin that is asked about.
    fn load(&mut self, number: usize, load: &Load, at: Option<usize>) {
        let Some(&pin) = self.pins.get(number) else { return };
        let is_subject = at == Some(self.point.subject);
        let is_cut = self.state == KeyState::FeedLost && is_subject;
        let node = match (load.far_end, self.state, self.point.contact) {
            (FarEnd::Ground, ..) => GROUND,
            (FarEnd::FiveVolt, ..) => self.logic_rail(PullRail::FiveVolt),
            (FarEnd::Output, ..) => match load.far_pin().and_then(|far| self.pins.get(far)) {
                Some(far) => *far,
                None => return,
            },
            _ if is_cut => self.dead_node(Dead::Feed),
            (FarEnd::Ignition, KeyState::KeyOff | KeyState::Outlived, _) => {
                self.dead_node(Dead::Ignition)
            }
            (FarEnd::Relay, KeyState::KeyOff, _) | (FarEnd::Relay, _, Contact::Open) => {
                self.dead_node(Dead::Relay)
            }
            (FarEnd::Battery | FarEnd::Ignition | FarEnd::Relay, ..) => self.battery,
        };
        let end = if let Some(end) = self.point.alike {
            end
        } else if is_subject {
            self.point.load
        } else if node == self.battery {
            // the pin stands highest where what hangs on the battery is small and what hangs on ground is large
            self.point.others.opposite()
        } else {
            self.point.others
        };
        let ohm = load.resistance_at(end, self.point.phase, self.point.at.temperature).base();
        let forward = end.of(&load.forward()).base();
        let part = at.map_or(PinPart::Beyond, PinPart::Load);
        if forward > 0.0 {
            let ends = if load.is_from_pin() { (pin, node) } else { (node, pin) };
            self.diode(part, ends, forward, at_least(ohm));
        } else {
            self.resistor(part, (pin, node), ohm);
        }
        self.suppressor(at.map_or(PinPart::Beyond, PinPart::Suppressor), load, (pin, node));
    }

    /// What lies across the winding.
    fn suppressor(&mut self, part: PinPart, load: &Load, (pin, node): (Node, Node)) {
        match &load.suppression {
            Suppression::Unknown | Suppression::None => {}
            Suppression::Diode { is_right_way } => {
                // the right way round it lets pass what runs against the load's own current
                let is_outward = load.is_from_pin() != *is_right_way;
                let ends = if is_outward { (pin, node) } else { (node, pin) };
                self.diode(part, ends, DIODE_FORWARD_V, DIODE_ON_OHM);
            }
            Suppression::Resistor(band) => {
                self.resistor(part, (pin, node), self.point.shunt.of(band).base());
            }
        }
    }

    fn dead_node(&mut self, dead: Dead) -> Node {
        if let Some(found) = self.dead.iter().find(|it| it.dead == dead) {
            return found.node;
        }
        let ohm = match dead {
            Dead::Supply | Dead::Ground => self.point.dead_rail.of(&self.around.dead_rail),
            Dead::FiveVolt => self.point.dead_logic.of(&self.around.dead_rail),
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

    fn resistor(&mut self, part: PinPart, ends: (Node, Node), ohm: f64) {
        let ohm = at_least(ohm);
        let element = self.network.resistor(ends.0, ends.1, ohm);
        self.keep(part, ends, ohm, 0.0, element);
    }

    pub(super) fn solve(self) -> Option<Operating> {
        let solution = self.network.solve_in(self.workspace).ok()?;
        let flow = |it: &DeadNode| DeadFlow {
            dead: it.dead,
            voltage: volts(solution.voltage(it.node).unwrap_or(0.0)),
            resistance: ohms(it.ohm),
            current: amperes(solution.current(it.element)),
        };
        Some(Operating {
            pin: solution.voltage(self.pins.first().copied().unwrap_or(GROUND)).map(volts),
            rail: solution.voltage(self.rail).map(volts),
            loads: load_flows(self.parts, solution),
            branches: branches(self.parts, solution),
            from_battery: amperes(-solution.current(self.source)),
            dead: self.dead.iter().map(flow).collect(),
            into_logic_rail: pushed_into_logic_rail(self.logic, solution),
            pulsing: None,
        })
    }
}

/// A source that is pushed against takes what it should give.
fn pushed_into_logic_rail(logic: &[LogicRail], solution: &Solution) -> Current {
    let taken = logic.iter().map(|it| solution.current(it.element).max(0.0));
    amperes(taken.sum())
}

fn load_flows(parts: &[Placed], solution: &Solution) -> Vec<LoadFlow> {
    let is_load = |placed: &&Placed| matches!(placed.part, PinPart::Load(_));
    let flow = |placed: &Placed| LoadFlow {
        voltage: volts(placed.outward(solution.across(placed.element).unwrap_or(0.0))),
        current: amperes(placed.outward(solution.current(placed.element))),
        forward: volts(placed.drop_v),
        far: solution.voltage(placed.node).map(volts),
        resistance: ohms(placed.ohm),
    };
    let mut flows = Vec::with_capacity(parts.iter().filter(is_load).count());
    flows.extend(parts.iter().filter(is_load).map(flow));
    flows
}

fn branches(parts: &[Placed], solution: &Solution) -> Vec<PinBranch> {
    let seen = |placed: &Placed| {
        let behind = solution.voltage(placed.node)? + placed.drop_v;
        let current = placed.outward(solution.current(placed.element));
        let blocks = placed.is_diode && current.abs() <= 0.0;
        (!blocks).then(|| PinBranch {
            part: placed.part,
            behind: volts(behind),
            resistance: ohms(placed.ohm),
            current: amperes(current),
        })
    };
    let mut branches = Vec::with_capacity(parts.len());
    branches.extend(parts.iter().filter_map(seen));
    branches
}

impl Placed {
    /// What is counted along the element, counted from the pin.
    fn outward(&self, along: f64) -> f64 {
        if self.is_outward { along } else { -along }
    }
}

/// No resistance is quite nothing: a switch of 0 ohm is taken as a micro-ohm.
fn at_least(ohm: f64) -> f64 {
    ohm.max(1e-6)
}
