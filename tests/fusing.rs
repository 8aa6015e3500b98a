//! Fuse, wire and short against data sheets, standards and what is usual.
//!
//! Source: named at each test; those of the files, and their tolerances, in `tests/reference/SOURCES.md`.
#![expect(clippy::expect_used, reason = "a test that can't go on must end, and say where")]

use quietpin_core::{
    quantity::{Area, Band, Current, Measure, amperes, celsius, metres, ohms, volts},
    supply::{
        blow,
        laid::{Insulation, LaidWire},
        short::{FusedRun, check, largest_fuse},
    },
    tables::{copper, fuses, wires},
};
use quietpin_tests::{Checked, Worst, reference, rows};
use serde_json::Value;

/// A hair above what a gate says, so that rounding does not put it into the piece before.
const HAIR: f64 = 1.0 + 1e-9;

fn file() -> Value {
    serde_json::from_str(&reference("fuses_blade.json")).expect("JSON")
}

fn list<'a>(value: &'a Value, name: &str) -> &'a [Value] {
    value.get(name).and_then(Value::as_array).expect(name)
}

fn text<'a>(value: &'a Value, name: &str) -> &'a str {
    value.get(name).and_then(Value::as_str).expect(name)
}

fn number(value: &Value, name: &str) -> f64 {
    value.get(name).and_then(Value::as_f64).expect(name)
}

fn was_read(row: &Value) -> bool {
    text(row, "confidence").starts_with("verified")
}

/// The ratings of a row of gates. A large blade of 40 A has the gates of those above: here a rating of 40 A is a regular blade.
fn ratings(row: &Value) -> Vec<f64> {
    let of = |row: &Value| match row.get("rating_A").expect("a rating") {
        Value::String(span) if span.contains("..") => vec![3.0, 10.0, 30.0],
        Value::String(two) => two.split(" and ").map(|it| it.parse().expect("amperes")).collect(),
        one => vec![one.as_f64().expect("amperes")],
    };
    if text(row, "style").starts_with("maxi") { vec![50.0, 80.0] } else { of(row) }
}

/// Source: `fuses_blade.json`, `gates`: rows of data sheets as they are, the one from memory too; of the large blade, whose data sheet is
/// of 40 A and gives 50 s at 200 %, the longest is a window: ISO 8820-3 has 60 s, from memory.
pub(crate) fn gates() -> Checked {
    let (file, mut worst) = (file(), Worst::default());
    for row in list(&file, "gates") {
        let is_large = text(row, "style").starts_with("maxi");
        for rating in ratings(row) {
            let rated = amperes(rating);
            for point in list(row, "points") {
                let times = number(point, "pct") / 100.0;
                let place = format!("{} {rating} A at {times} times", text(row, "style"));
                let at = |hair: f64| amperes(rating * times * hair);
                let longest = blow::longest(rated, at(HAIR)).map(Measure::base);
                let shortest = blow::shortest(rated, at(1.0 / HAIR)).base();
                if let Some(most) = point.get("max_s").and_then(Value::as_f64) {
                    let longest = longest.expect("it blows");
                    if is_large && was_read(row) {
                        assert!(
                            (most * (1.0 - 1e-6)..most * 1.21).contains(&(longest * HAIR)),
                            "{place}: {longest} s"
                        );
                    } else {
                        worst.check(&place, Some(longest), most, most * 1e-6);
                    }
                }
                if let Some(least) = point.get("min_s").and_then(Value::as_f64) {
                    worst.check(&place, Some(shortest), least, least * 1e-6);
                }
            }
        }
    }
    let against = "data sheets of blade fuses, and ISO 8820-3 from memory";
    worst.checked("feeds", "Times at which a blade fuse blows", against, "s")
}

#[test]
fn a_fuse_blows_within_the_gates_of_its_data_sheet() {
    let count = gates().cases;
    assert!(count > 40, "only {count} times");
}

/// The heat that melts a link in a short, as data sheets give it, typically: what is taken beyond the last gate must lie about it. A
/// fuse of the same make but another rating takes it by the square of the rating, nearly.
///
/// Source: `fuses_blade.json`, `electrical`.
#[test]
fn a_short_melts_a_link_with_the_heat_of_its_data_sheet() {
    let file = file();
    for row in list(&file, "electrical") {
        let (rating, heat) = (number(row, "rating_A"), number(row, "i2t_A2s"));
        let like = if text(row, "style") == "maxi" { 80.0 } else { rating };
        let melts = heat / (rating * rating);
        let rated = amperes(like);
        let of = |time: f64| time * 20.0 * 20.0;
        let longest = of(blow::longest(rated, rated * 20.0).expect("it blows").base());
        let shortest = of(blow::shortest(rated, rated * 20.0).base());
        assert!(
            (shortest..longest).contains(&melts),
            "{rating} A: {melts} is not from {shortest} to {longest}"
        );
    }
}

/// Source: `fuses_blade.json`, `temperature_rerating_maxi_40A`, of a data sheet; 75 %: common practice, no source.
pub(crate) fn rerated() -> Checked {
    let (file, mut worst) = (file(), Worst::default());
    for row in list(&file, "temperature_rerating_maxi_40A") {
        let carried = blow::carries(amperes(40.0), celsius(number(row, "t_C"))).base();
        let expected = 0.75 * number(row, "A");
        worst.check(&row.to_string(), Some(carried), expected, 1e-9);
    }
    let against = "a data sheet of a large blade fuse, 75% of it";
    worst.checked("feeds", "What a hot fuse carries for long", against, "A")
}

#[test]
fn a_hot_fuse_carries_what_its_data_sheet_says() {
    rerated();
}

#[test]
fn a_fuse_parts_what_its_data_sheet_says() {
    let file = file();
    let breaks = file.get("interrupting").expect("a row");
    assert!((blow::BREAKS_A - number(breaks, "A")).abs() < 1e-9, "{breaks}");
}

fn mm2(size: f64) -> Area {
    Measure::from_base(size * 1e-6)
}

/// The columns that were worked out of the strands: copper, resistance, and heat at the current of the table, which must be what a wire
/// sheds at 105 °C less the rise of its resistance.
///
/// Source: `wire_thinwall_current.csv`, computed from IEC 60028; tolerance of four digits.
pub(crate) fn strands() -> Checked {
    let mut worst = Worst::default();
    for row in rows("wire_thinwall_current.csv") {
        let (strands, each) = row.text("strands_n_x_mm").split_once('/').expect("n/mm");
        let (count, each): (f64, f64) = (strands.parse().expect("n"), each.parse().expect("mm"));
        let mut near = |what: &str, found: f64, expected: f64| {
            worst.check(&format!("{}: {what}", row.place()), Some(found / expected), 1.0, 2e-4);
        };
        let area = count * std::f64::consts::PI * each * each / 4.0;
        near("copper", area, row.number("metal_area_mm2"));
        let ohm = copper::wire(metres(1.0), mm2(area), celsius(20.0)).base();
        near("resistance", ohm * 1e3, row.number("iacs_mohm_per_m"));
        let nominal = row.number("nominal_current_A");
        near("heat", nominal * nominal * ohm, row.number("watt_per_m_at_nominal_20C"));
        let density = nominal / row.number("nominal_mm2");
        assert!((density - row.number("A_per_mm2")).abs() < 0.006, "{}", row.place());
        // a strand more or less than nominal: no wire of the table has more than 4 % less copper than it is called
        assert!(area > 0.96 * row.number("nominal_mm2"), "{}", row.place());
    }
    let against = "a cable distributor's table, by the copper of its strands";
    worst.checked("feeds", "Copper, resistance and heat of a thin-wall wire", against, "")
}

#[test]
fn a_thin_wall_wire_has_the_copper_of_its_strands() {
    strands();
}

/// Source: `wire_iso6722_memory.csv`, ISO 6722, from memory: a window, as IEC 60228 is the source of 1.16.
pub(crate) fn most_of_a_wire() -> Checked {
    let mut sizes = 0;
    for row in rows("wire_iso6722_memory.csv") {
        let area = mm2(row.number("area_mm2"));
        let most = copper::wire_at_most(metres(1.0), area, celsius(20.0)).base() * 1e3;
        let standard = row.number("max_mohm_per_m_20C");
        assert!((standard..standard * 1.12).contains(&most), "{}: {most} mΩ", row.place());
        sizes += 1;
    }
    Checked {
        question: "feeds",
        what: "The most that a wire may have",
        against: "ISO 6722, from memory",
        cases: sizes,
        apart: "up to 12% more".to_owned(),
    }
}

#[test]
fn the_most_that_a_wire_may_have_is_no_less_than_that_of_car_wires() {
    let sizes = most_of_a_wire().cases;
    assert!(sizes > 10, "only {sizes} sizes");
}

/// Source: the files that give sizes: `wire_thinwall_current.csv`, and `wire_iec60228.csv` from 16 mm²; below 0.5 mm² from memory.
#[test]
fn the_sizes_that_are_offered_are_those_of_the_tables() {
    let column = |file: &'static str, name: &str, least: f64| {
        let rows = rows(file);
        let sizes: Vec<f64> = rows.iter().map(|row| row.number(name)).collect();
        sizes.into_iter().filter(move |size| *size >= least)
    };
    let mut expected = vec![0.22, 0.35];
    expected.extend(column("wire_thinwall_current.csv", "nominal_mm2", 0.0));
    expected.extend(column("wire_iec60228.csv", "size_mm2", 16.0));
    assert_eq!(wires::SIZES.to_vec(), expected);
}

/// The usual fuse of a wire in a car, in amperes: common practice, no source. One wire of heat-resistant PVC, 3 m long, behind a good
/// battery.
const USUAL: [(f64, f64, f64); 6] = [
    (0.5, 5.0, 10.0),
    (1.0, 7.5, 15.0),
    (1.5, 10.0, 20.0),
    (2.5, 15.0, 30.0),
    (4.0, 25.0, 40.0),
    (6.0, 30.0, 60.0),
];

fn run(size: f64, air: f64, bundled: u32) -> FusedRun {
    let (insulation, ambient) = (Insulation::B, celsius(air));
    FusedRun {
        fuse: amperes(10.0),
        wire: LaidWire { area: mm2(size), insulation, ambient, bundled },
        length: metres(3.0),
        back: ohms(0.005),
        source: Band::between(volts(12.0), volts(14.4)),
        before: Band::between(ohms(0.01), ohms(0.03)),
    }
}

fn largest(size: f64, air: f64, bundled: u32) -> f64 {
    largest_fuse(&run(size, air, bundled)).map_or(0.0, Measure::base)
}

#[test]
fn a_wire_gets_the_fuse_that_is_usual() {
    for (size, least, most) in USUAL {
        for air in [20.0, 60.0] {
            let found = largest(size, air, 1);
            assert!((least..=most).contains(&found), "{size} mm² at {air} °C: {found} A");
        }
        assert!(largest(size, 80.0, 6) < largest(size, 20.0, 1), "{size} mm² in a bundle");
    }
}

/// The rule that a fuse is rated for no more than its wire bears for long: common practice, no source (`fuses_blade.json`,
/// `rules_of_thumb`), with the 110 % that it holds for a hundred hours. A fuse that keeps it is good, or lacks less than the heat that the
/// insulation stores; below 0.5 mm² a fuse takes longer than so little copper. No fuse that is offered is more than 30 % beyond what the wire bears.
#[test]
fn what_is_offered_lies_about_the_rule_of_thumb() {
    let mut kept = 0;
    for size in wires::SIZES {
        for (air, bundled) in [(20.0, 1), (60.0, 1), (60.0, 4), (80.0, 3)] {
            let run = run(size, air, bundled);
            let bears = run.wire.bears();
            let keeps = |rating: &Current| *rating * fuses::HOLDS <= bears;
            for fuse in fuses::RATINGS_A.into_iter().map(amperes).filter(keeps) {
                let race = check(&FusedRun { fuse, ..run }).worst;
                let is_thin = size < 0.5;
                let is_good = !race.is_lost() || race.is_barely_lost() || is_thin;
                assert!(is_good, "{size} mm² {air} °C: {race:?}");
                kept += 1;
            }
            let found = largest_fuse(&run).map_or(0.0, Measure::base);
            assert!(found <= bears.base() * 1.3, "{size} mm² {air} °C: {found} A, {bears:?}");
        }
    }
    assert!(kept > 100, "only {kept} fuses keep the rule");
}
