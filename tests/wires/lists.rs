//! The lists as a spreadsheet reads them.

use std::collections::BTreeSet;

use csv::ReaderBuilder;
use quietpin_core::{
    plan::{self, Plan},
    report::{
        lists::{HarnessList, csv, labels},
        report,
    },
};
use quietpin_tests::plans;

use super::four;

/// The heading, and the records.
pub(super) fn read(list: HarnessList, plan: &Plan) -> (Vec<String>, Vec<Vec<String>>) {
    let text = csv(list, plan, &report(plan));
    // RFC 4180: lines end in CR LF, the last one too
    assert!(text.ends_with("\r\n"), "{text:?}");
    // without flexible(true) a record of another length is an error
    let mut reader = ReaderBuilder::new().from_reader(text.as_bytes());
    let heads = reader.headers().expect("a heading").iter().map(str::to_owned).collect();
    let cells = |record: Result<csv::StringRecord, _>| {
        record.expect("a record").iter().map(str::to_owned).collect()
    };
    (heads, reader.records().map(cells).collect())
}

#[test]
fn every_wire_has_a_record() {
    let (heads, rows) = read(HarnessList::Wires, &four(&[("harness.done", "ignition2")]));
    assert_eq!(rows.len(), 15);
    let of = |label: &str, head: &str| {
        let at = heads.iter().position(|it| it == head).expect(head);
        rows.iter().find(|it| it[0] == label).expect(label)[at].clone()
    };
    assert_eq!(of("Ignition 2 - coil 2", "Cut off, m"), "1.10");
    assert_eq!(of("Ignition 2 - coil 2", "Done"), "x");
    assert_eq!(of("battery plus - Fan relay 30", "mm2"), "4");
    assert_eq!(of("battery plus - Fan relay 30", "Colour"), "RD");
    assert_eq!(of("battery plus - Fan relay 30", "Fuse, A"), "25");
    assert_eq!(of("Fan relay 87 - what it feeds", "Colour"), "OG");
    assert_eq!(of("Fan relay 87 - what it feeds", "Fuse, A"), "", "it is before the contact");
    assert_eq!(of("valve - ground (31)", "Colour"), "BK");
    assert_eq!(of("crank sensor - signal +", "Work"), "twist, shield, grounded at the controller");
}

/// Cut off, way and spare are the wire as it was bought, in each record.
#[test]
fn what_comes_off_and_what_stays_add_up() {
    let (heads, rows) = read(HarnessList::Wires, &four(&[]));
    let at = |head: &str| heads.iter().position(|it| it == head).expect(head);
    let number = |row: &[String], head: &str| row[at(head)].parse::<f64>().ok();
    let mut cut = 0;
    for row in &rows {
        let (Some(bought), Some(way), Some(off)) =
            (number(row, "As bought, m"), number(row, "Way, m"), number(row, "Cut off, m"))
        else {
            continue;
        };
        assert!((off + way + 0.1 - bought).abs() < 1e-9, "{row:?}");
        cut += 1;
    }
    assert_eq!(cut, 9, "all but the feed and the wires to 15 and ground");
}

#[test]
fn a_name_with_commas_quotes_and_lines_stays_one_cell() {
    let name = "valve, \"idle\"\nleft";
    let plan = four(&[("loads.0.name", name)]);
    let (_, rows) = read(HarnessList::Labels, &plan);
    let label = format!("H1 - {name}");
    assert!(rows.iter().any(|it| it[0] == label), "{rows:?}");
}

/// What begins like a formula is none: the plan may come from a stranger.
#[test]
fn a_name_is_no_formula() {
    let plan = four(&[("outputs.0.name", "=1+1"), ("relays.0.output", "=1+1")]);
    for list in HarnessList::ALL {
        let (_, rows) = read(list, &plan);
        let is_formula = |cell: &String| cell.starts_with(['=', '+', '-', '@']);
        assert!(!rows.iter().flatten().any(is_formula), "{}: {rows:?}", list.name());
    }
}

#[test]
fn each_wire_has_two_labels() {
    let labels = labels(&four(&[]));
    assert_eq!(labels.len(), 30);
    assert!(labels.chunks(2).all(|pair| pair[0] == pair[1]));
}

/// By hand: every cut has a length, in the order of the list.
#[test]
fn the_cuts_are_in_their_order() {
    let (heads, rows) = read(HarnessList::Cuts, &four(&[]));
    assert_eq!(heads[..4], ["Label", "Way, m", "Cut off, m", "Piece, m"]);
    let offs: Vec<f64> = rows.iter().filter_map(|it| it[2].parse().ok()).collect();
    assert_eq!(offs.len(), 9);
    assert!(offs.windows(2).all(|pair| pair[0] >= pair[1]), "{offs:?}");
    // each is cut off, cut from a reel, or measured first
    let work = heads.iter().position(|it| it == "Work").expect("work");
    for row in &rows {
        let is_measured_first = row[work].starts_with("measure");
        let known = [&row[2], &row[3]].into_iter().filter(|it| !it.is_empty()).count();
        assert_eq!(known, usize::from(!is_measured_first), "{row:?}");
    }
    let short = four(&[("harness.coils.3", "3 m")]);
    let (_, rows) = read(HarnessList::Cuts, &short);
    let coil = rows.iter().find(|it| it[0] == "Ignition 4 - coil 4").expect("it is there");
    assert_eq!(coil[work], "lengthen by 0.60 m");
}

#[test]
fn what_cures_need_is_on_the_shopping_list_too() {
    // a fuse of 60 A before 4 mm² burns it: the cure is a smaller one
    let plan = four(&[("relays.0.fuse", "60 A")]);
    let (_, rows) = read(HarnessList::Shopping, &plan);
    assert!(rows.iter().any(|it| it[0].starts_with("fuse")), "{rows:?}");
    assert!(rows.iter().any(|it| it[0].contains("label sleeves")), "{rows:?}");
}

/// Of every example plan: each list is read by a library, and no two wires are ticked off by one name.
#[test]
fn the_lists_of_all_plans_can_be_read() {
    for example in plans::ALL {
        let Ok(plan) = plan::parse(example.text) else { continue };
        let report = report(&plan);
        for list in HarnessList::ALL {
            let text = csv(list, &plan, &report);
            let mut reader = ReaderBuilder::new().from_reader(text.as_bytes());
            assert!(reader.records().all(|it| it.is_ok()), "{}: {}", example.name, list.name());
        }
        let section = report.sections.iter().find(|it| it.id == "wires").expect("it is asked");
        let lists = section.answers.iter().flat_map(|it| &it.lists);
        let names: Vec<_> = lists.flat_map(|it| &it.items).map(|it| it.name.clone()).collect();
        let each: BTreeSet<_> = names.iter().collect();
        assert_eq!(each.len(), names.len(), "{}: {names:?}", example.name);
    }
}
