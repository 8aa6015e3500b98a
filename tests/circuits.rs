//! Operating points and transients against a circuit simulator and textbooks. Sources and tolerances:
//! `tests/reference/SOURCES.md`.
mod factorisation;
pub(crate) mod textbook;

use std::collections::BTreeMap;

use quietpin_core::circuit::{
    Diode, Element, GROUND, Network, Node, Solution, Unsolvable, thermal_voltage_v,
};
use quietpin_core::transient::{Capacitive, Inductive, TurnOff};
use quietpin_tests::{Checked, Row, Worst, rows};

/// `k T / q` at 27 degrees Celsius as the simulator has it, with the constants of CODATA 2014. Those of today's SI, which
/// [`thermal_voltage_v`] uses, give 3.4e-7 more.
const SIMULATOR_THERMAL_V: f64 = 1.38064852e-23 * 300.15 / 1.6021766208e-19;

/// The diode model of a row; `no_row_is_skipped` sees that there are only these two.
fn diode(row: &Row) -> Diode {
    if row.text("diode_kind") == "exponential" {
        Diode::Exponential {
            saturation_current_a: row.number("d_is"),
            emission_coefficient: row.number("d_n"),
            thermal_voltage_v: SIMULATOR_THERMAL_V,
        }
    } else {
        Diode::Threshold {
            forward_voltage_v: row.number("d_vf"),
            on_resistance_ohm: row.number("d_rd"),
        }
    }
}

/// An output pin and what hangs on it, as a row describes it.
struct Stage {
    network: Network,
    battery: Node,
    rail: Node,
    out: Node,
    feed: Node,
    load: Option<(Element, Node)>,
    upper_diode: Option<Element>,
    pull_up: Option<Element>,
}

impl Stage {
    fn of(row: &Row) -> Self {
        let mut network = Network::new();
        let [battery, rail, out, feed] =
            ["battery", "rail", "out", "feed"].map(|name| network.node(name));
        network.source(battery, GROUND, row.number("vbat"));
        let resistors = [
            ("r_rail_feed", battery, rail),
            ("r_rail_other", rail, GROUND),
            ("r_hs", out, rail),
            ("r_ls", out, GROUND),
            ("r_pd", out, GROUND),
            ("r_feed", battery, feed),
            ("r_feed_other", feed, GROUND),
            ("r_meter", out, GROUND),
        ];
        for (column, from, to) in resistors {
            if let Some(ohm) = row.maybe(column) {
                network.resistor(from, to, ohm);
            }
        }
        if let Some(leak) = row.maybe("i_leak") {
            network.current(out, GROUND, leak);
        }
        let mut stage = Self {
            network,
            battery,
            rail,
            out,
            feed,
            load: None,
            upper_diode: None,
            pull_up: None,
        };
        stage.add_optional(row);
        stage
    }

    fn add_optional(&mut self, row: &Row) {
        if row.text("d_hs") == "1" {
            self.upper_diode = Some(self.network.diode(self.out, self.rail, diode(row)));
        }
        if row.text("d_ls") == "1" {
            self.network.diode(GROUND, self.out, diode(row));
        }
        if let Some(ohm) = row.maybe("r_pu") {
            let supply = self.network.node("pull-up");
            self.network.source(supply, GROUND, row.number("v_pu"));
            self.pull_up = Some(self.network.resistor(supply, self.out, ohm));
        }
        if let Some(ohm) = row.maybe("r_load") {
            let far = match row.text("load_to") {
                "batt" => self.battery,
                "feed" => self.feed,
                _ => GROUND,
            };
            self.load = Some((self.network.resistor(self.out, far, ohm), far));
        }
    }

    fn solve(&self) -> Result<Solution, Unsolvable> {
        self.network.solve()
    }
}

/// All results of a row. Blank where the element is absent, and then absent here too.
fn check_stage(row: &Row, worst_v: &mut Worst, worst_a: &mut Worst) {
    let stage = Stage::of(row);
    let place = row.place();
    let solution = stage.solve().map_err(|error| format!("{place}: {error}"));
    assert!(solution.is_ok(), "{solution:?}");
    let Ok(solution) = solution else { return };
    let load_v = stage.load.and_then(|(_, far)| solution.between(stage.out, far));
    let voltages = [
        ("v_out", solution.voltage(stage.out)),
        ("v_rail", solution.voltage(stage.rail)),
        ("v_feed", solution.voltage(stage.feed)),
        ("v_load", load_v),
    ];
    for (column, found) in voltages {
        let place = format!("{place} {column}");
        let Some(expected) = row.maybe(column) else {
            assert_eq!(found, None, "{place} is blank");
            continue;
        };
        worst_v.check(&place, found, expected, 2e-8 * expected.abs().max(1.0));
    }
    let currents = [
        ("i_load", stage.load.map(|load| load.0)),
        ("i_hs_diode", stage.upper_diode),
        ("i_pullup", stage.pull_up),
    ];
    for (column, element) in currents {
        let place = format!("{place} {column}");
        let Some(expected) = row.maybe(column) else {
            assert_eq!(element, None, "{place} is blank");
            continue;
        };
        let found = element.map(|element| solution.current(element));
        worst_a.check(&place, found, expected, (1e-8 * expected.abs()).max(1e-11));
    }
}

/// Source: ngspice, see SOURCES.md.
pub(crate) fn operating_points() -> Vec<Checked> {
    let (mut worst_v, mut worst_a) = (Worst::default(), Worst::default());
    for row in rows("circuits/dc_output_stage.csv") {
        check_stage(&row, &mut worst_v, &mut worst_a);
    }
    let what = ["Voltages of an output pin", "Currents of an output pin"];
    vec![
        worst_v.checked("outputs", what[0], NGSPICE, "V"),
        worst_a.checked("outputs", what[1], NGSPICE, "A"),
    ]
}

/// What the tables were made with.
const NGSPICE: &str = "ngspice 39, a general-purpose circuit simulator";

#[test]
fn operating_points_of_an_output_stage() {
    operating_points();
}

/// What the simulator's older constants make of the thermal voltage, and no more.
#[test]
fn the_thermal_voltage_is_the_simulators_but_for_its_constants() {
    let ratio = thermal_voltage_v(300.15) / SIMULATOR_THERMAL_V;
    assert!((ratio - 1.0 - 3.4e-7).abs() < 1e-8, "{ratio}");
}

/// A row that nobody reads checks nothing.
#[test]
fn no_row_is_skipped() {
    let mut families = BTreeMap::new();
    for row in rows("circuits/dc_output_stage.csv") {
        *families.entry(row.text("family").to_owned()).or_insert(0) += 1;
        assert!(["exponential", "pwl"].contains(&row.text("diode_kind")), "{}", row.place());
    }
    let counts = [
        ("hb_driven", 24),
        ("hb_hiz", 30),
        ("hb_rail_dead_backfeed", 40),
        ("hs_off", 24),
        ("hs_on", 24),
        ("ls_diode_neg", 20),
        ("od_off_feed_dead", 24),
        ("od_off_load_feed", 30),
        ("od_off_load_gnd", 24),
        ("od_off_noload", 30),
        ("od_on_load_feed", 30),
    ];
    let counts = counts.map(|(family, count)| (family.to_owned(), count));
    assert_eq!(families, BTreeMap::from(counts), "families of dc_output_stage.csv");
    assert_eq!(rows("circuits/rl_transient.csv").len(), 1077, "rl_transient.csv");
    assert_eq!(rows("circuits/rl_events.csv").len(), 140, "rl_events.csv");
    assert_eq!(rows("circuits/rc_transient.csv").len(), 150, "rc_transient.csv");
}

fn coil(row: &Row) -> Option<Inductive> {
    Inductive::new(row.number("v_supply"), row.number("r_total"), row.number("L_h"))
}

/// What the coil does from the moment at which its switch opens.
fn turn_off(row: &Row, t_on: f64) -> Option<TurnOff> {
    let current = coil(row)?.current_at(row.number("i0"), t_on)?;
    TurnOff::new(current, row.number("v_clamp_net"), row.number("r_total"), row.number("L_h"))
}

/// Source: ngspice, see SOURCES.md.
pub(crate) fn current_in_time() -> Checked {
    let mut worst = Worst::default();
    for row in rows("circuits/rl_transient.csv") {
        let (t, expected) = (row.number("t"), row.number("i"));
        let parts = ["r_load", "r_wire", "r_ballast", "r_switch"].map(|part| row.number(part));
        let total = row.number("r_total");
        assert!((parts.iter().sum::<f64>() - total).abs() < 1e-8 * total, "{}", row.place());
        let found = match row.maybe("t_on") {
            Some(t_on) if t > t_on => turn_off(&row, t_on).and_then(|off| off.current_at(t - t_on)),
            _ => coil(&row).and_then(|coil| coil.current_at(row.number("i0"), t)),
        };
        worst.check(&row.place(), found, expected, 3e-6 * expected.abs().max(0.01));
    }
    worst.checked("injectors", "Current of a winding in time, on and off", NGSPICE, "A")
}

#[test]
fn current_of_a_coil_in_time() {
    current_in_time();
}

/// Source: ngspice, see SOURCES.md.
pub(crate) fn times_of_a_coil() -> Checked {
    let mut worst = Worst::default();
    for row in rows("circuits/rl_events.csv") {
        let expected = row.number("t");
        let found = match row.text("event") {
            "reach" => {
                coil(&row).and_then(|coil| coil.time_to(row.number("i0"), row.number("target_i")))
            }
            "current_zero_after_turn_off" => {
                let t_on = row.number("t_on");
                turn_off(&row, t_on).map(|off| t_on + off.time_to_zero_s())
            }
            _ => None,
        };
        worst.check(&row.place(), found, expected, 2e-6 * expected);
    }
    worst.checked("injectors", "Time until a winding's current is there, or gone", NGSPICE, "s")
}

#[test]
fn when_the_current_of_a_coil_gets_there() {
    times_of_a_coil();
}

/// Source: ngspice, see SOURCES.md. Both ways: the voltage at a time, and the time of a voltage.
pub(crate) fn capacitor() -> Vec<Checked> {
    let (mut worst, mut worst_back) = (Worst::default(), Worst::default());
    for row in rows("circuits/rc_transient.csv") {
        let (t, expected) = (row.number("t"), row.number("v"));
        let (v_pu, c_f) = (row.number("v_pu"), row.number("c_f"));
        let node = Capacitive::on_divider(v_pu, row.number("r_pu"), row.number("r_pd"), c_f);
        let found = node.and_then(|node| node.voltage_at(0.0, t));
        worst.check(&row.place(), found, expected, 2e-6 * expected);
        // Near its end the voltage hardly moves, and its last digit is a long time.
        let time = node.and_then(|node| node.time_to(0.0, expected));
        let slope =
            node.map_or(0.0, |node| (node.final_voltage_v() - expected) / node.time_constant_s());
        worst_back.check(&row.place(), time, t, 2e-6 * expected / slope);
    }
    vec![
        worst.checked("trigger", "Voltage of a pulled-up pin with its capacitor", NGSPICE, "V"),
        worst_back.checked("trigger", "Time until such a pin gets there", NGSPICE, "s"),
    ]
}

#[test]
fn voltage_of_a_pulled_up_capacitor() {
    capacitor();
}
