//! An output pin of a controller, with what a vehicle puts around it.

use crate::circuit::{Circuit, Kind};
use crate::family::Diodes;
use crate::web::supply_v;
use quietpin_trials::random::Random;

/// An output stage under construction, and the nodes that parts go to.
struct Stage<'random> {
    circuit: Circuit,
    random: &'random mut Random,
    diodes: Diodes,
    /// Battery plus; the ignition switch's other side; the controller's ground and its driver's supply.
    battery: usize,
    switched: usize,
    ground: usize,
    rail: usize,
    /// The controller's side of the output's wire, and the load's.
    out: usize,
    pin: usize,
}

/// A half-bridge, a low-side or a high-side switch, in any state; with pull-ups, pull-downs and leakage; on a wire, with a
/// meter and up to two loads; each supply and ground live or lost. Between 8 and 12 nodes.
pub(crate) fn stage(random: &mut Random, diodes: Diodes) -> Circuit {
    let mut circuit = Circuit::new();
    let pole = circuit.node();
    let [battery, switched, ground, rail, out, pin] = [(); 6].map(|()| circuit.node());
    circuit.source(pole, 0, supply_v(random));
    circuit.resistor(pole, battery, random.log_even(1e-3, 0.1));
    let mut stage = Stage { circuit, random, diodes, battery, switched, ground, rail, out, pin };
    stage.supplies();
    stage.switches();
    stage.pulls();
    stage.load();
    if stage.random.percent(30) && stage.circuit.nodes() < 11 {
        stage.load();
    }
    stage.circuit
}

impl Stage<'_> {
    /// A live feed, or a dead one; other consumers hang on either.
    fn feed(&mut self, from: usize, to: usize, live_percent: usize) {
        if self.random.percent(live_percent) {
            let ohm = self.random.log_even(1e-3, 0.5);
            self.circuit.resistor(from, to, ohm);
        }
        let bleeder = self.random.log_even(10.0, 1e6);
        self.circuit.resistor(to, 0, bleeder);
    }

    fn supplies(&mut self) {
        self.feed(self.battery, self.switched, 70);
        self.feed(0, self.ground, 90);
        let source = self.random.one_of(&[self.battery, self.switched]);
        self.feed(source, self.rail, 80);
        let quiescent = self.random.log_even(100.0, 1e5);
        self.circuit.resistor(self.rail, self.ground, quiescent);
    }

    /// The stage itself: its switches, their body diodes, and the wire to the load.
    fn switches(&mut self) {
        let (has_upper, has_lower) =
            self.random.one_of(&[(true, true), (true, false), (false, true)]);
        if has_upper {
            let model = self.diodes.body(self.random);
            self.circuit.diode(self.out, self.rail, model);
        }
        if has_lower || self.random.percent(50) {
            let model = self.diodes.body(self.random);
            self.circuit.diode(self.ground, self.out, model);
        }
        let on_ohm = self.random.log_even(0.005, 3.0);
        match self.random.below(3) {
            0 if has_upper => self.circuit.resistor(self.rail, self.out, on_ohm),
            1 if has_lower => self.circuit.resistor(self.out, self.ground, on_ohm),
            _ => {}
        }
        let wire = self.random.log_even(1e-3, 0.5);
        self.circuit.resistor(self.out, self.pin, wire);
        self.circuit.resistor(self.pin, 0, 1e7);
    }

    fn pulls(&mut self) {
        if self.random.percent(70) {
            let rail = match self.random.below(5) {
                0 => self.battery,
                1 => self.switched,
                2 => self.rail,
                3 => self.regulated(5.0),
                _ => self.regulated(3.3),
            };
            let pull_up = self.random.log_even(470.0, 1e6);
            self.circuit.resistor(rail, self.out, pull_up);
        }
        if self.random.percent(40) {
            let pull_down = self.random.log_even(470.0, 1e6);
            self.circuit.resistor(self.out, self.ground, pull_down);
        }
        if self.random.percent(30) {
            let a = self.random.log_even(1e-9, 1e-6);
            self.circuit.add(self.out, self.ground, Kind::Current { a });
        }
    }

    /// A logic supply, counted from the controller's own ground; or what is left of it while it is off.
    fn regulated(&mut self, v: f64) -> usize {
        let node = self.circuit.node();
        if self.random.percent(80) {
            self.circuit.source(node, self.ground, v);
        } else {
            let ohm = self.random.log_even(100.0, 1e5);
            self.circuit.resistor(node, self.ground, ohm);
        }
        node
    }

    /// A load to ground, to a supply, or to a feed of its own that may be dead.
    fn load(&mut self) {
        let far = match self.random.below(4) {
            0 => 0,
            1 => self.battery,
            2 => self.switched,
            _ => {
                let feed = self.circuit.node();
                self.feed(self.battery, feed, 60);
                feed
            }
        };
        if self.random.percent(20) {
            self.light(far);
        } else {
            let ohm = self.random.log_even(0.1, 1e4);
            self.circuit.resistor(self.pin, far, ohm);
            if self.random.percent(25) {
                let (anode, cathode) = if far == 0 { (0, self.pin) } else { (self.pin, far) };
                let model = self.diodes.body(self.random);
                self.circuit.diode(anode, cathode, model);
            }
        }
    }

    /// A light-emitting diode with its resistor.
    fn light(&mut self, far: usize) {
        let middle = self.circuit.node();
        let ohm = self.random.log_even(220.0, 2e4);
        self.circuit.resistor(self.pin, middle, ohm);
        let (anode, cathode) = if far == 0 { (middle, far) } else { (far, middle) };
        let model = self.diodes.light(self.random);
        self.circuit.diode(anode, cathode, model);
    }
}
