//! The ways back of a starter's current at random, by the core and by ngspice: a strap or none, and the controller's ground wires beside it.

use std::io;

use quietpin_core::{
    circuit::{GROUND, Network},
    quantity::{Area, Measure as _, amperes, celsius, metres},
    supply::{
        ground::{GroundWires, StrapInputs},
        laid::{Insulation, LaidWire},
    },
};
use quietpin_trials::random::Random;

use crate::simulator::{OPTIONS, apart, solved};

const CASES: usize = 100;
/// Further apart than this, relative, and the command fails.
const ALLOWED: f64 = 1e-9;
/// A loom's copper is as hot as this at the most.
const HOTTEST_C: f64 = 120.0;

/// A starter that turns, its engine tied to the body, where the battery's minus is, by a strap and by the controller's ground wires.
struct WaysBack {
    supply_v: f64,
    battery_ohm: f64,
    starter_a: f64,
    strap: Option<(f64, f64)>,
    count: u32,
    wire: (f64, f64),
    air_c: f64,
}

impl WaysBack {
    fn new(random: &mut Random) -> Self {
        let mut sized = |m, mm2| (random.log_even(0.1, m), random.log_even(0.5, mm2));
        let (strap, wire) = (sized(3.0, 95.0), sized(5.0, 6.0));
        Self {
            supply_v: random.even(9.0, 15.0),
            battery_ohm: random.log_even(0.003, 0.03),
            starter_a: random.log_even(10.0, 400.0),
            strap: random.percent(70).then_some(strap),
            count: random.one_of(&[1, 2, 3, 4, 5, 6, 7, 8]),
            wire,
            air_c: random.even(-30.0, HOTTEST_C),
        }
    }

    fn laid(&self) -> LaidWire {
        LaidWire {
            area: Area::from_base(0.0),
            insulation: Insulation::D,
            ambient: celsius(self.air_c),
            bundled: 1,
        }
    }

    /// The controller's ground wires while all of the starter's current, or one ampere, comes back through them.
    fn wires(&self, sinks_a: f64) -> GroundWires {
        let (length, mm2) = self.wire;
        GroundWires {
            count: self.count,
            area: Area::from_base(mm2 * 1e-6),
            length: metres(length),
            sinks: amperes(sinks_a),
            laid: self.laid(),
            pin: None,
        }
    }

    /// The current in one of the ground wires, and how far the engine is above the body, by the core.
    fn ours(&self) -> Option<[f64; 2]> {
        let wires_ohm = self.wires(1.0).rise().base();
        let Some((length, mm2)) = self.strap else {
            let wires = self.wires(self.starter_a);
            return Some([wires.each().base(), wires.rise().base()]);
        };
        let strap = StrapInputs {
            length: metres(length),
            area: Area::from_base(mm2 * 1e-6),
            starter: amperes(1.0),
            temperature: celsius(self.air_c),
            laid: self.laid(),
        };
        let mut network = Network::new();
        let engine = network.node("engine");
        network.current(GROUND, engine, self.starter_a);
        network.resistor(engine, GROUND, strap.drop().base());
        network.resistor(engine, GROUND, wires_ohm);
        let rise = network.solve().ok()?.between(engine, GROUND)?;
        Some([rise / wires_ohm / f64::from(self.count), rise])
    }

    /// Each part by itself; the copper by what it has at 20 °C and its coefficient, warmed by the simulator.
    fn netlist(&self) -> String {
        let part = |name: &str, from: u8, to: u8, (length, mm2): (f64, f64)| {
            let ohm = 1.16 * length / (58.0 * mm2);
            let air = self.air_c;
            format!("R{name} {from} {to} {ohm:e} tc1=0.00393 tc2=0 temp={air}\n")
        };
        let strap = self.strap.map_or_else(String::new, |it| part("S", 3, 0, it));
        let others: String =
            (1..self.count).map(|at| part(&format!("W{at}"), 3, 0, self.wire)).collect();
        format!(
            "* ways back\nV1 1 0 {:e}\nRB 1 2 {:e}\nI1 2 3 {:e}\n{strap}VW 3 4 0\n{}{others}{OPTIONS}\n.end\n",
            self.supply_v,
            self.battery_ohm,
            self.starter_a,
            part("W0", 4, 0, self.wire),
        )
    }
}

/// What the simulator says of all of them.
fn theirs(all: &[WaysBack]) -> io::Result<Vec<[f64; 2]>> {
    let asked: &[_] = &["i(vw)", "v(3)"];
    let found = solved(all.iter().map(|it| (it.netlist(), asked)))?;
    Ok(found.of("i(vw)").into_iter().zip(found.of("v(3)")).map(Into::into).collect())
}

/// Prints how far apart the two are; whether that is near enough.
pub(crate) fn compare(seed: u64) -> io::Result<bool> {
    let all: Vec<_> = (0..CASES).map(|at| WaysBack::new(&mut Random::of(seed, at))).collect();
    let theirs = theirs(&all)?;
    let ours = all.iter().map(|it| it.ours().unwrap_or([f64::NAN; 2]));
    let [wire, rise] = apart(ours.zip(theirs.iter().copied()));
    let without = all.iter().filter(|it| it.strap.is_none()).count();
    println!(
        "\n{} ways back of a starter's current by ngspice, {without} of them without a strap, the ground wires side by side.\n",
        theirs.len()
    );
    println!("| what | furthest apart, relative |\n| --- | ---: |");
    println!("| current in one of the controller's ground wires | {wire:.1e} |");
    println!("| engine above the body | {rise:.1e} |");
    Ok(theirs.len() == CASES && wire <= ALLOWED && rise <= ALLOWED)
}
