//! Units and fuels against the tables.

use quietpin_core::{
    fields,
    fuel::{FuelInputs, answer},
    quantity::{
        Band, Density, MassFlow, Measure, Power, Pressure, Ratio, SpecificConsumption, VolumeRate,
        read_band,
    },
    tables::fuels::Fuel,
};
use quietpin_tests::{Checked, Worst, reference, rows};
use serde_json::Value;

use super::{bare, exact, near, typed};

fn facts() -> Value {
    serde_json::from_str(&reference("fuel_facts.json")).expect("fuel_facts.json")
}

fn number(of: &Value) -> f64 {
    of.as_f64().unwrap_or_else(|| panic!("{of} is no number"))
}

/// Source: `fuel_flow_conversion.csv`.
pub(crate) fn flows() -> Checked {
    let mut worst = Worst::default();
    for row in rows("fuel_flow_conversion.csv") {
        let density = Density::from_base(row.number("density_kg_per_l") * 1e3);
        let volume: VolumeRate = typed::<MassFlow>("1 lb/h") / density;
        let cc = volume / typed::<VolumeRate>("1 cc/min");
        let listed = row.number("cc_per_min_per_lb_per_h");
        worst.check(&row.place(), Some(cc.base()), listed, 0.6e-6);
        let pounds = typed::<VolumeRate>("1 cc/min") * density / typed::<MassFlow>("1 lb/h");
        let listed = row.number("lb_per_h_per_cc_per_min");
        worst.check(&row.place(), Some(pounds.base()), listed, 0.6e-6);
    }
    let against = "a table computed from the pound's 0.45359237 kg, at each fuel's density";
    worst.checked("injectors", "Flow by mass and by volume", against, "cc/min per lb/h")
}

#[test]
fn a_pound_an_hour_is_so_many_cubic_centimetres_a_minute() {
    flows();
}

/// Source: `fuel_ethanol_blends.csv`, `fuel_stoich_afr.csv`, and `doe_table` of `fuel_facts.json`.
pub(crate) fn blends() -> Checked {
    let mut worst = Worst::default();
    let blends =
        [("E0", Fuel::Petrol), ("E10", Fuel::E10), ("E85", Fuel::E85), ("E100", Fuel::Ethanol)];
    for row in rows("fuel_ethanol_blends.csv") {
        let Some((_, fuel)) = blends.iter().find(|(name, _)| *name == row.text("blend")) else {
            continue;
        };
        let density = fuel.density().nominal.base() / 1e3;
        worst.check(&row.place(), Some(density), row.number("density_kg_per_l"), 0.6e-4);
        let air = row.number("afr_mass_weighted_with_14.7_petrol");
        worst.check(&row.place(), Some(fuel.air()), air, 0.6e-4);
    }
    for row in rows("fuel_stoich_afr.csv") {
        let fuel = match row.text("fuel") {
            "ethanol C2H6O" => Fuel::Ethanol,
            "methanol CH4O" => Fuel::Methanol,
            _ => continue,
        };
        worst.check(&row.place(), Some(fuel.air()), row.number("afr_computed_dry_air"), 0.6e-4);
    }
    let facts = facts();
    let table = &facts["doe_table"];
    near("air of petrol", Fuel::Petrol.air(), number(&table["petrol"]["stoich_afr"]), 1e-12);
    for (name, fuel) in [("ethanol", Fuel::Ethanol), ("methanol", Fuel::Methanol)] {
        let at_60_f = number(&table[name]["specific_gravity_60F"]);
        near(name, fuel.density().high.base() / 1e3, at_60_f, 1e-3);
    }
    let petrol = Fuel::Petrol.density();
    let sold = &table["petrol"]["specific_gravity_60F"];
    assert!(petrol.low.base() / 1e3 >= number(&sold[0]) - 1e-3, "no petrol is as light");
    assert!(petrol.high.base() / 1e3 <= number(&sold[1]) + 1e-3, "no petrol is as heavy");
    let against = "blends and element balances, see SOURCES.md";
    worst.checked("injectors", "Density and air of five fuels", against, "kg/l, kg/kg")
}

#[test]
fn fuels_are_as_heavy_and_want_as_much_air_as_the_tables_say() {
    blends();
}

/// Source: `units` of `fuel_facts.json`: exact definitions.
#[test]
fn units_have_their_sizes() {
    let facts = facts();
    let units = &facts["units"];
    near("psi", typed::<Pressure>("1 psi").base(), number(&units["psi_Pa"]), 1e-12);
    let psi_in_a_bar = typed::<Pressure>("1 bar") / typed::<Pressure>("1 psi");
    near("bar", psi_in_a_bar.base(), number(&units["bar_psi"]), 1e-12);
    near("hp", typed::<Power>("1 hp").base(), number(&units["hp_mech_W"]), 1e-9);
    near("PS", typed::<Power>("1 PS").base(), number(&units["hp_metric_W"]), 1e-12);
    let factor = number(&facts["bsfc_g_per_kWh"]["factor"]);
    let pound: SpecificConsumption = typed("1 lb/hph");
    near("lb/(hp h)", (pound / typed::<SpecificConsumption>("1 g/kWh")).base(), factor, 1e-9);
}

/// Source: `pressure_scaling` of `fuel_facts.json`: q2 = q1 √(dp2 / dp1).
#[test]
fn flow_goes_as_the_root_of_the_pressure() {
    let facts = facts();
    let examples = facts["pressure_scaling"]["examples"].as_array().expect("examples");
    assert!(examples.len() >= 4, "only {} examples", examples.len());
    for example in examples {
        let unit = if example["dp1"].is_number() {
            ("dp1", "dp2", "bar")
        } else {
            ("dp1_psi", "dp2_psi", "psi")
        };
        let at = |key: &str| exact::<Pressure>(&format!("{} {}", number(&example[key]), unit.2));
        let inputs = FuelInputs { stated_at: at(unit.0), rail: at(unit.1), ..bare() };
        let ratio = answer(&inputs).nominal.each[0] / typed::<MassFlow>("31.25 lb/h");
        near("the ratio of flows", ratio.base(), number(&example["ratio"]), 1e-12);
    }
}

/// Common practice, no source: `bsfc_lb_per_hp_h` and `duty_limit` of `fuel_facts.json` are what is assumed.
#[test]
fn what_is_assumed_is_what_is_usual() {
    let facts = facts();
    let limit = fields::fuel::DUTY_LIMIT.field().assumed.expect("assumed");
    let limit: Band<Ratio> = read_band(limit, "%").expect(limit);
    near("the lower limit", limit.low.base(), number(&facts["duty_limit"]["range"][0]), 1e-12);
    near("the upper limit", limit.high.base(), number(&facts["duty_limit"]["range"][1]), 1e-12);
    for (boost, name) in [("0 bar", "NA petrol"), ("1 bar", "boosted petrol")] {
        let plan = super::bad_input::plan(&[("fuel.boost", boost)]);
        let report = quietpin_core::report::report(&plan);
        let shown = report.fields["fuel.consumption"].value.clone().expect("assumed").into_shown();
        let found: Band<SpecificConsumption> = read_band(&shown, "g/kWh").expect("as it is shown");
        let pound: SpecificConsumption = typed("1 lb/hph");
        let range = &facts["bsfc_lb_per_hp_h"][name];
        // three figures are shown
        near(name, (found.low / pound).base(), number(&range[0]), 5e-3);
        near(name, (found.high / pound).base(), number(&range[1]), 5e-3);
    }
}
