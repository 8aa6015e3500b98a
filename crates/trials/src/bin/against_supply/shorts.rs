//! Feeds at random, by the core and by ngspice: battery, lead, contact, wire out and back, a load or a short at its end.

use std::io;

use quietpin_core::{
    circuit::{GROUND, Network},
    quantity::{Area, Band, Measure as _, amperes, celsius, metres, ohms, volts},
    supply::{
        laid::{Insulation, LaidWire},
        short::FusedRun,
    },
    tables::copper,
};
use quietpin_trials::random::Random;

use crate::simulator::{OPTIONS, apart, solved};

const CASES: usize = 100;
/// Further apart than this, relative, and the command fails.
const ALLOWED: f64 = 1e-9;

/// All copper is as hot as this.
const HOT_C: f64 = 150.0;

/// A feed.
struct Feed {
    supply_v: f64,
    battery_ohm: f64,
    lead_ohm: f64,
    contact_ohm: f64,
    mm2: f64,
    out_m: f64,
    back_m: f64,
    load_ohm: f64,
}

impl Feed {
    fn new(random: &mut Random) -> Self {
        Self {
            supply_v: random.even(6.0, 15.0),
            battery_ohm: random.log_even(0.003, 0.1),
            lead_ohm: random.log_even(0.0005, 0.02),
            contact_ohm: random.log_even(0.0005, 0.05),
            mm2: random.log_even(0.22, 50.0),
            out_m: random.log_even(0.3, 20.0),
            back_m: random.log_even(0.1, 20.0),
            load_ohm: random.log_even(0.05, 100.0),
        }
    }

    fn before_ohm(&self) -> f64 {
        self.battery_ohm + self.lead_ohm + self.contact_ohm
    }

    fn wire_ohm(&self, length: f64) -> f64 {
        let area = Area::from_base(self.mm2 * 1e-6);
        copper::wire_at_most(metres(length), area, celsius(HOT_C)).base()
    }

    /// The current of the short, and the voltage across the load, by the core.
    fn ours(&self) -> Option<[f64; 2]> {
        let area = Area::from_base(self.mm2 * 1e-6);
        let run = FusedRun {
            // a fuse so large that the wire is as hot as any lasts at
            fuse: amperes(1e6),
            wire: LaidWire { area, insulation: Insulation::D, ambient: celsius(20.0), bundled: 1 },
            length: metres(self.out_m),
            back: ohms(self.wire_ohm(self.back_m)),
            source: Band::exact(volts(self.supply_v)),
            before: Band::exact(ohms(self.before_ohm())),
        };
        let mut network = Network::new();
        let [battery, far, near] = ["battery", "far", "near"].map(|name| network.node(name));
        network.source(battery, GROUND, self.supply_v);
        network.resistor(battery, far, self.before_ohm() + self.wire_ohm(self.out_m));
        network.resistor(far, near, self.load_ohm);
        network.resistor(near, GROUND, self.wire_ohm(self.back_m));
        let solution = network.solve().ok()?;
        Some([run.far().base(), solution.between(far, near)?])
    }

    /// Each part by itself; the copper by what it has at 20 °C and its coefficient, warmed by the simulator.
    fn netlist(&self, is_short: bool) -> String {
        let at_20 = |length: f64| 1.16 * length / (58.0 * self.mm2);
        let wire = |name: &str, from: u8, to: u8, length: f64| {
            let ohm = at_20(length);
            format!("R{name} {from} {to} {ohm:e} tc1=0.00393 tc2=0 temp={HOT_C}\n")
        };
        let load = if is_short {
            "VL 4 5 0\n".to_owned()
        } else {
            format!("VL 4 6 0\nRL 6 5 {:e}\n", self.load_ohm)
        };
        format!(
            "* feed\nV1 1 0 {:e}\nRB 1 2 {:e}\nRC 2 3 {:e}\nRD 3 7 {:e}\n{}{}{load}{OPTIONS}\n.end\n",
            self.supply_v,
            self.battery_ohm,
            self.lead_ohm,
            self.contact_ohm,
            wire("OUT", 7, 4, self.out_m),
            wire("BACK", 5, 0, self.back_m),
        )
    }
}

/// What the simulator says of all of them: the short's current and the load's voltage.
fn theirs(feeds: &[Feed]) -> io::Result<Vec<[f64; 2]>> {
    let asked: [&[_]; 2] = [&["i(vl)"], &["v(4,5)"]];
    let both = |feed: &Feed| {
        let netlists = [true, false].map(|is_short| feed.netlist(is_short));
        netlists.into_iter().zip(asked)
    };
    let found = solved(feeds.iter().flat_map(both))?;
    Ok(found.of("i(vl)").into_iter().zip(found.of("v(4,5)")).map(Into::into).collect())
}

/// Prints how far apart the two are; whether that is near enough.
pub(crate) fn compare(seed: u64) -> io::Result<bool> {
    let feeds: Vec<_> = (0..CASES).map(|at| Feed::new(&mut Random::of(seed, at))).collect();
    let theirs = theirs(&feeds)?;
    let count = theirs.len();
    let ours = feeds.iter().map(|it| it.ours().unwrap_or([f64::NAN; 2]));
    let [short, load] = apart(ours.zip(theirs));
    println!(
        "\n{count} feeds by ngspice, each part a resistor of its own, copper by its coefficient.\n"
    );
    println!("| what | furthest apart, relative |\n| --- | ---: |");
    println!("| current of a dead short at the other end | {short:.1e} |");
    println!("| voltage across the load | {load:.1e} |");
    Ok(count == CASES && short <= ALLOWED && load <= ALLOWED)
}
