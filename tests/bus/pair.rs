//! What an ohmmeter and a voltmeter tell of the pair.

use nalgebra::{DMatrix, DVector};
use proptest::prelude::*;
use quietpin_core::{
    bus::{
        levels::{self, LineState},
        pair::{Bridge, PairDrive, PairState, contact, driven, expected, reading, told},
    },
    quantity::{Measure, Resistance, ohms, volts},
};
use quietpin_tests::{Checked, Worst};

use super::json;

fn at_ends(ohm: f64) -> [Bridge; 2] {
    [0.0, 1.0].map(|at| Bridge { at, resistance: ohms(ohm) })
}

fn none() -> Resistance {
    ohms(0.0)
}

/// Source: `can_bus.json`: ISO 11898-2 as manuals and data sheets quote it.
pub(crate) fn terminations() -> Checked {
    let file = json();
    let it = &file["termination"];
    let number = |name: &str| it[name].as_f64().expect(name);
    let mut worst = Worst::default();
    let each = number("nominal_ohm_each");
    let mut same = |what: &str, bridges: &[Bridge], printed: f64| {
        let read = reading(bridges, none(), 0.0).base();
        worst.check(what, Some(read), printed, 1e-12 * printed);
    };
    same("two", &at_ends(each), number("parallel_nominal_ohm"));
    same("one", &at_ends(each)[..1], number("one_missing_reads_ohm"));
    let third = Bridge { at: 0.5, resistance: ohms(each) };
    let three = [at_ends(each).as_slice(), &[third]].concat();
    same("three", &three, number("three_fitted_reads_ohm"));
    for (each, pair) in it["pair_ohm_for_each_limit"].as_object().expect("pairs") {
        let ohm: f64 = each.parse().expect("ohms");
        same(each, &at_ends(ohm), pair.as_f64().expect("ohms"));
    }
    worst.checked("bus", "Terminators side by side", "ISO 11898-2, as manuals quote it", "Ω")
}

#[test]
fn terminators_read_as_they_are_published() {
    terminations();
    let file = json();
    let it = &file["termination"];
    for limit in it["limits"].as_array().expect("limits") {
        let pair = limit["min"].as_f64().zip(limit["max"].as_f64()).expect("limits");
        // what a manual allows is not called wrong
        for ohm in [pair.0, pair.1] {
            let read = Some(reading(&at_ends(ohm), none(), 0.0));
            assert_ne!(driven(read, none()), PairDrive::No, "{ohm}");
        }
    }
    let [least, most] =
        [0, 1].map(|at| it["transceiver_load_range_ohm"][at].as_f64().expect("ohms"));
    assert!([least, most].iter().all(|ohm| driven(Some(ohms(*ohm)), none()) >= PairDrive::Barely));
    // "tens of kohm" where both are missing
    for ohm in [10e3, 20e3, 90e3] {
        assert_eq!(told(Some(ohms(ohm)), none()), PairState::Unterminated);
    }
}

#[test]
fn a_reading_tells_how_many_there_are() {
    let of = |ohm: f64| told(Some(ohms(ohm)), none());
    for (ohm, count) in
        [(120.0, 1), (60.0, 2), (40.0, 3), (30.0, 4), (118.0, 1), (62.0, 2), (54.0, 2)]
    {
        assert_eq!(of(ohm), PairState::Fitted(count), "{ohm}");
    }
    assert_eq!(of(0.0), PairState::Shorted(None));
    assert_eq!(of(15.0), PairState::TooLow);
    assert_eq!(told(None, none()), PairState::Unterminated);
    assert_eq!(driven(None, none()), PairDrive::No);
    // by hand: 120 Ω beside 120 + 120 Ω are 80 Ω; 120 + 80 Ω are 200 Ω; two beside 240 Ω are 48 Ω
    for (ohm, right, more) in [(80.0, 1, 120.0), (200.0, 0, 80.0), (48.0, 2, 120.0)] {
        let PairState::Between { right: found, contact } = of(ohm) else {
            panic!("{ohm}: {:?}", of(ohm))
        };
        assert_eq!(found, right, "{ohm}");
        assert!((contact.base() - more).abs() < 1e-9, "{ohm}: {contact:?}");
    }
    // 12 Ω of wire there and back: a short that reads 6 Ω is halfway
    assert_eq!(told(Some(ohms(6.0)), ohms(12.0)), PairState::Shorted(Some(0.5)));
}

/// Source: `can_bus.json`, levels of three transceivers. The mean of a line that is dominant for a share d of the time is
/// 2.5 V + d × (its dominant level - 2.5 V).
#[test]
fn lines_that_part_alike_run() {
    let file = json();
    let levels = &file["levels_V"];
    let pair =
        |part: &str, line: &str| [0, 1].map(|at| levels[part][line][at].as_f64().expect("volts"));
    let told = |high: f64, low: f64| levels::told(volts(high), volts(low));
    for (high, low) in [(3.5, 1.5), (3.4, 1.4), (3.75, 2.0)] {
        assert!(pair("dominant", "CANH")[0] <= high && high <= pair("dominant", "CANH")[1]);
        assert!(pair("dominant", "CANL")[0] <= low && low <= pair("dominant", "CANL")[1]);
        for share in [0.02, 0.1, 0.3, 0.6] {
            let mean = |level: f64| 2.5 + share * (level - 2.5);
            let found = told(mean(high), mean(low));
            let LineState::Running(about) = found else {
                panic!("{high} {low} {share}: {found:?}")
            };
            let apart = (high - low) / 2.0;
            assert!((about.base() - share * apart).abs() < 1e-9);
        }
        assert_eq!(told(high, low), LineState::Stuck, "dominant all the time");
    }
    let [low, high] = [0, 1].map(|at| levels["recessive"]["each"][at].as_f64().expect("volts"));
    for idle in [low, 2.5, high] {
        assert_eq!(told(idle, idle), LineState::Silent);
    }
}

/// By hand: through 60 Ω a line takes the other along.
#[test]
fn lines_that_do_not_run_are_told_apart() {
    let told = |high: f64, low: f64| levels::told(volts(high), volts(low));
    assert_eq!(told(2.35, 2.65), LineState::Swapped);
    assert_eq!(told(0.02, 0.01), LineState::Dead);
    assert_eq!(told(0.9, 0.1), LineState::LowGrounded);
    assert_eq!(told(12.1, 12.3), LineState::ToBattery(false));
    assert_eq!(told(12.3, 11.6), LineState::ToBattery(true));
    assert!(matches!(told(3.6, 3.3), LineState::Uneven(_)));
    assert!(matches!(told(1.8, 1.6), LineState::Uneven(_)));
}

/// Both lines in full, as a network with a current of 1 A from one probe to the other.
fn by_nodes(bridges: &[Bridge], wires: f64, meter: f64) -> f64 {
    let mut places: Vec<f64> = bridges.iter().map(|it| it.at).chain([meter]).collect();
    places.sort_by(f64::total_cmp);
    places.dedup();
    let count = places.len();
    let at =
        |place: f64| places.iter().position(|it| it.total_cmp(&place).is_eq()).expect("a place");
    let mut admittance = DMatrix::<f64>::zeros(2 * count, 2 * count);
    let mut join = |one: usize, other: usize, ohm: f64| {
        admittance[(one, one)] += 1.0 / ohm;
        admittance[(other, other)] += 1.0 / ohm;
        admittance[(one, other)] -= 1.0 / ohm;
        admittance[(other, one)] -= 1.0 / ohm;
    };
    for (left, pair) in places.windows(2).enumerate() {
        let ohm = wires / 2.0 * (pair[1] - pair[0]);
        join(left, left + 1, ohm);
        join(count + left, count + left + 1, ohm);
    }
    for it in bridges {
        join(at(it.at), count + at(it.at), it.resistance.base());
    }
    // the lower probe is the reference
    let reference = count + at(meter);
    let reduced = admittance.remove_row(reference).remove_column(reference);
    let mut current = DVector::<f64>::zeros(2 * count - 1);
    current[at(meter)] = 1.0;
    reduced.lu().solve(&current).expect("a solution")[at(meter)]
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(500) })]

    #[test]
    fn a_pair_reads_as_its_network_does(
        bridges in prop::collection::vec((0.0..=1.0, 1.0..1000.0), 1..6),
        wires in 0.01..60.0, meter in 0.0..=1.0,
    ) {
        let bridges: Vec<_> = bridges.iter().map(|(at, ohm)| Bridge { at: *at, resistance: ohms(*ohm) }).collect();
        let (ours, theirs) = (reading(&bridges, ohms(wires), meter).base(), by_nodes(&bridges, wires, meter));
        prop_assert!((ours - theirs).abs() < 1e-6 * theirs, "{ours} {theirs}");
    }

    /// Wherever the meter is and whatever the tolerance, so many terminators are told to be so many; and a bad contact is what it is.
    #[test]
    fn what_is_fitted_is_told(count in 1..=4_u32, off in -0.099..0.099, meter in 0.0..=1.0, wires in 0.0..1.0) {
        let places = [0.0, 1.0, 0.5, 0.25];
        let each = ohms(120.0 * (1.0 + off));
        let bridges: Vec<_> = places[..count as usize].iter().map(|at| Bridge { at: *at, resistance: each }).collect();
        let read = reading(&bridges, ohms(wires), meter);
        let band = expected(count, ohms(wires));
        prop_assert!(band.low <= read && read <= band.high, "{read:?} {band:?}");
        prop_assert_eq!(told(Some(read), ohms(wires)), PairState::Fitted(count));
    }

    #[test]
    fn a_bad_contact_is_found(right in 0..3_u32, more in 1.0_f64..2000.0) {
        let mut bridges = vec![Bridge { at: 0.0, resistance: ohms(120.0) }; right as usize];
        bridges.push(Bridge { at: 1.0, resistance: ohms(120.0 + more) });
        let read = reading(&bridges, none(), 0.0);
        let found = contact(read, right);
        prop_assert!((found.base() - more).abs() < 1e-6 * more, "{found:?}");
    }
}
