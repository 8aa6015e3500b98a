//! Cases worked by hand, and what two readings tell.

use quietpin_core::{
    finding::Severity::{Danger, Doubt, Fault},
    report::{Tone, report},
};

use super::{answer, found, plan, said, severities};

/// Source: Ohm's law. 2.45 kΩ under 2.49 kΩ on 5 V are 5 × 2450 / 4940 = 2.48 V; at 100 °C 5 × 160 / 2650 = 302 mV, by the
/// table of the sensor.
#[test]
fn a_thermistor_is_told_in_ohms_and_in_volts() {
    let why = said(&[("sensors.0.tolerance", "0 %")], "sensors.0");
    assert!(why.contains("2.45 kΩ unplugged, 2.48 V plugged in"), "{why}");
    assert!(why.contains("At 100 °C: 160 Ω, 302 mV"), "{why}");
}

/// Source: the standard atmosphere, ISO 2533, from memory: 101.325 kPa at the sea, 89.875 kPa at 1000 m. A sensor of 20 to 250 kPa
/// between 0.5 and 4.5 V gives 0.5 + 4 × (101.325 - 20) / 230 = 1.914 V, and 1.715 V at 1000 m.
#[test]
fn an_absolute_sensor_reads_the_air_of_its_altitude() {
    let exact = [("sensors.1.tolerance", "0 %"), ("sensor_supplies.0.volts", "5 V")];
    let at = |altitude, air| {
        let typed = [exact[0], exact[1], ("today.altitude", altitude), ("today.air", air)];
        said(&typed, "sensors.1")
    };
    assert!(at("0 m", "101.325 kPa").contains("Now 1.91 V"), "{}", at("0 m", "101.325 kPa"));
    assert!(at("0 m", "89.875 kPa").contains("Now 1.72 V"));
    // the weather moves it by 25 hPa at the most
    let weather = at("1000 m", "");
    assert!(weather.contains("1.67 to 1.76 V"), "{weather}");
    // one that is gauge reads its lower end, wherever it is
    let gauge = [
        exact[0],
        exact[1],
        ("sensors.1.purpose", "oil-pressure"),
        ("sensors.1.counted_from", "gauge"),
        ("sensors.1.range_low", "0 kPa"),
        ("sensors.1.entered", ""),
        ("sensors.1.table_of", ""),
    ];
    assert!(said(&gauge, "sensors.1").contains("Now 500 mV"));
}

/// The table of another sensor that is right at 20 °C: 2450 Ω there, but 80 Ω and not 160 Ω at 100 °C.
const WRONG: [(&str, &str); 2] =
    [("sensors.0.table_of", "ohms"), ("sensors.0.table", "0 7k, 20 2450, 60 380, 100 80")];

/// Source: the sensor's own points. Its 160 Ω at 100 °C lie between 380 Ω at 60 °C and 80 Ω at 100 °C of the table, at 81 °C by the law
/// of a B value.
#[test]
fn a_table_that_is_right_at_20_and_wrong_at_100_is_a_fault() {
    let typed = [WRONG[0], WRONG[1]];
    assert_eq!(severities(&typed, "sensors.table-reads-cold"), [Fault]);
    let report = report(&plan(&typed));
    assert_eq!(answer(&report, "sensors.0").verdict.tone, Tone::Bad);
    let finding = report.findings.iter().find(|it| it.message.code == "sensors.table-reads-cold");
    let text = &finding.expect("it").message.text;
    assert!(text.contains("At 100 °C the controller will show 8"), "{text}");
    // its own table is right
    let own = [
        WRONG[0],
        ("sensors.0.table", "-20 16.5k, 0 6k, 20 2450, 60 540, 80 290, 100 160, 120 100"),
    ];
    assert_eq!(found(&own), [""; 0]);
    // and is what the fix types
    let edited = plan(&typed).edited(&finding.expect("it").remedies[0].edits).expect("a place");
    assert_eq!(super::codes(&edited), [""; 0]);
}

/// One reading at 20 °C says nothing against the table; the second, at 85 °C, does. The data of the sensor are not known at all.
#[test]
fn the_wrong_table_is_found_by_two_readings() {
    let blank = ("sensors.0.points", "");
    let one = [blank, WRONG[0], WRONG[1], ("sensors.0.read_ohms", "20 2450")];
    assert_eq!(found(&one), [""; 0]);
    let report_of_one = report(&plan(&one));
    assert_eq!(answer(&report_of_one, "sensors.0").verdict.message.code, "sensors.open-data");
    let two = [blank, WRONG[0], WRONG[1], ("sensors.0.read_ohms", "20 2450, 85 250")];
    assert_eq!(severities(&two, "sensors.table-not-this"), [Fault]);
    // with a table that these readings give nothing is found, and it is told what to read now
    let right =
        [blank, WRONG[0], ("sensors.0.table", "-20 17k, 0 6k, 20 2450, 85 250, 120 100"), two[3]];
    assert_eq!(found(&right), [""; 0]);
    assert!(said(&right, "sensors.0").contains("plugged in"), "{}", said(&right, "sensors.0"));
}

/// A reading against the data, on both sides: 2450 Ω at 20 °C, 5 % of tolerance, 3 °C for the thermometer and 3 % for the meter.
#[test]
fn a_reading_is_held_against_the_data() {
    let read = |text| severities(&[("sensors.0.read_ohms", text)], "sensors.reading-differs");
    assert_eq!(read("20 2450"), []);
    assert_eq!(read("20 2800"), []);
    assert_eq!(read("20 3100"), [Doubt], "4 °C beyond what may be");
    assert_eq!(read("20 5000"), [Fault]);
    assert_eq!(read("2450"), [], "now, at 20 °C");
    // what is not known of today is no fault
    let unknown = [("sensors.0.read_ohms", "5000"), ("today.temperature", "")];
    assert_eq!(severities(&unknown, "sensors.reading-differs"), [Doubt]);
    let volts = |text: &'static str| [("sensors.0.read_volts", text)];
    assert_eq!(found(&volts("2.5")), [""; 0]);
    assert_eq!(severities(&volts("4.99"), "sensors.reads-open"), [Fault]);
    assert_eq!(severities(&volts("0.01"), "sensors.reads-short"), [Fault]);
}

#[test]
fn what_is_made_for_5_v_is_destroyed_by_12() {
    let fed = |feed| severities(&[("sensors.1.feed", feed)], "sensors.over-supply");
    assert_eq!(fed("battery"), [Danger], "in use as planned");
    assert_eq!(fed("supply"), []);
    assert_eq!(severities(&[("sensors.2.feed", "battery")], "sensors.over-supply"), [Danger]);
    // what may be fed from either is not told
    let hall =
        [("sensors.3.kind", "hall"), ("sensors.3.purpose", "speed"), ("sensors.3.feed", "battery")];
    assert_eq!(severities(&hall, "sensors.over-supply"), []);
}

/// Source: what is drawn, added: 10 mA, 20 mA on two supplies, and what else there is.
#[test]
fn a_supply_is_held_against_the_sum_of_what_is_drawn() {
    let rated =
        |text| severities(&[("sensor_supplies.0.rating", text)], "sensors.supply-too-small");
    assert_eq!(rated("39 mA"), [Fault]);
    assert_eq!(rated("40 mA"), []);
    assert_eq!(rated(""), []);
    // a draw that is blank leaves a lower bound, and no yes
    let blank = [("sensors.1.draw", ""), ("sensor_supplies.0.rating", "100 mA")];
    let report_of_blank = report(&plan(&blank));
    let supply = answer(&report_of_blank, "sensor_supplies.0");
    assert_eq!(supply.verdict.message.text, "At least 30 mA of 100 mA: draws are missing");
    assert_eq!(supply.verdict.tone, Tone::Open);
    let why = &supply.why.as_ref().expect("a reason").text;
    assert!(why.contains("manifold, pedal"), "{why}");
}

#[test]
fn two_tracks_are_held_against_each_other() {
    let with = |run, second| [("sensors.2.second", run), ("sensors.2.second_stroke", second)];
    assert_eq!(found(&with("half", "0.38 1.0 1.75 2.1")), [""; 0]);
    assert_eq!(found(&with("mirrored", "4.25 3.0 1.5 0.8")), [""; 0]);
    assert_eq!(
        severities(&with("mirrored", "0.38 1.0 1.75 2.1"), "sensors.tracks-differ"),
        [Fault]
    );
    assert_eq!(severities(&with("half", "0.38 1.0 2.2 2.1"), "sensors.tracks-differ"), [Fault]);
    assert_eq!(
        severities(&with("half", "0.38 1.0 1.90 2.1"), "sensors.tracks-differ"),
        [],
        "0.15 V"
    );
    assert_eq!(severities(&with("alike", "0.75 2.0 3.5 4.2"), "sensors.tracks-alike"), [Fault]);
    // told as one and read as another
    assert_eq!(severities(&with("half", "0.75 2.0 3.5 4.2"), "sensors.tracks-alike"), [Fault]);
    // one supply is a note, and only where there is another
    let one = [("sensors.2.second_supply", "")];
    assert_eq!(severities(&one, "sensors.one-supply").len(), 1);
}

/// The plan moves a generic sensor by its purpose alone; what the controller still has is told until it is set.
#[test]
fn a_pressure_sensor_moves_by_its_purpose() {
    let moved = [("sensors.1.purpose", "fuel-pressure")];
    let finding = "sensors.entered-otherwise";
    assert_eq!(severities(&moved, finding), [Fault]);
    let report_of_moved = report(&plan(&moved));
    let found = report_of_moved.findings.iter().find(|it| it.message.code == finding);
    let text = &found.expect("it").message.text;
    assert!(text.contains("A1 is set as manifold pressure in the controller"), "{text}");
    assert!(text.contains("manifold tells fuel pressure"), "{text}");
    let set = [moved[0], ("sensors.1.entered", "fuel-pressure")];
    assert_eq!(severities(&set, finding), []);
    let to_enter = said(&set, "sensors.1");
    assert!(to_enter.contains("set A1 as fuel pressure"), "{to_enter}");
    // a gauge sensor can't take the manifold's place
    let gauge = [("sensors.1.counted_from", "gauge")];
    assert_eq!(severities(&gauge, "sensors.gauge-for-absolute"), [Fault]);
}

/// Source: resistors in parallel: 2.49 kΩ and 2.2 kΩ are 1.17 kΩ.
#[test]
fn a_second_pull_up_is_told_by_what_it_does() {
    let also = |ohms| {
        severities(
            &[("sensors.0.also", "supply"), ("sensors.0.also_ohms", ohms)],
            "sensors.second-pull",
        )
    };
    assert_eq!(also("2.2k"), [Fault]);
    assert_eq!(also("10k"), [Doubt], "7 °C");
    assert_eq!(also("100k"), [], "less than a degree");
    let gauge = [("sensors.0.also", "gauge"), ("sensors.0.also_ohms", "150 ohm")];
    assert_eq!(severities(&gauge, "sensors.gauge-over"), [Fault]);
    assert_eq!(severities(&gauge[..1], "sensors.gauge-over"), [Doubt], "its ohms are assumed");
}

#[test]
fn each_input_takes_what_it_is_built_for() {
    let at = |input| found(&[("sensors.0.input", input)]);
    assert_eq!(at("T2"), [""; 0]);
    assert_eq!(at("A5"), ["sensors.no-pull-up"]);
    assert_eq!(at("F3"), ["sensors.wrong-input"]);
    assert_eq!(at("A1"), ["sensors.no-pull-up", "sensors.input-twice"]);
    assert_eq!(found(&[("sensors.2.input", "T2")]), ["sensors.pulled-unwanted"]);
    assert_eq!(found(&[("sensors.0.purpose", "oil-pressure")]), ["sensors.cannot"]);
    let battery = [("sensors.3.switched_to", "battery"), ("inputs.2.range", "5 V")];
    assert_eq!(severities(&battery, "sensors.to-battery"), [Fault]);
    let rated = [("sensors.3.switched_to", "battery"), ("inputs.2.range", "30 V")];
    assert_eq!(severities(&rated, "sensors.to-battery"), []);
    assert_eq!(
        severities(&battery[..1], "sensors.to-battery"),
        [Doubt],
        "what it bears is assumed"
    );
}

/// Source: Ohm's law: 10 bits of 5 V are 4.9 mV; under 47 kΩ 160 Ω give 17 mV, of which a degree is 0.4 mV.
#[test]
fn a_pull_up_that_leaves_the_hot_end_coarse_is_told() {
    let with = |pull, bits| {
        severities(&[("inputs.0.pull_up", pull), ("inputs.0.bits", bits)], "sensors.coarse")
    };
    assert_eq!(with("47k", "10"), [Doubt]);
    assert_eq!(with("47k", "16"), []);
    assert_eq!(with("2.49k", "10"), []);
    assert_eq!(with("47k", ""), []);
}

#[test]
fn a_sensor_that_is_blank_is_no_finding() {
    let mut plan = quietpin_core::plan::Plan::default();
    plan.add(quietpin_core::schema::Part::Sensors);
    let report = report(&plan);
    assert_eq!(super::codes(&plan), [""; 0]);
    assert_eq!(answer(&report, "sensors.0").verdict.message.text, "Needs: its type");
}
