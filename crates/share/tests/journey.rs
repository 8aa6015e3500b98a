//! From one phone to another: a plan as codes, the codes in any order, damaged, mixed, or none at all.
#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "a test fails by them"
)]

use proptest::prelude::*;
use quietpin_core::{
    fields::{engine, loads},
    plan::{self, Plan, VERSION},
    schema::Part,
};
use quietpin_share::{Arrival, Code, Gathered, MARK, MOST_CODES, Refused, Symbol, series, whole};

/// Bytes before a code, as of a page on a workshop's network.
const BEFORE: usize = 31;

/// A plan with notes of about so many letters in which a compressor finds nothing.
fn plan_of(letters: usize) -> Plan {
    let mut state = 1_u32;
    let mut letter = || {
        // a linear congruential generator, by Numerical Recipes
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        char::from(b'!' + u8::try_from(state >> 24).expect("eight bits") % 90)
    };
    let mut plan = Plan::named("long");
    plan.quietpin = VERSION;
    plan.notes = (0..letters).map(|_| letter()).collect();
    plan
}

fn codes(plan: &Plan) -> Vec<Code> {
    series(plan, BEFORE).expect("not too long")
}

fn link(code: &Code) -> String {
    format!("http://192.168.1.20:8360/{MARK}{}", code.text())
}

/// What comes of the last of these, as they are scanned one after the other.
fn scanned<'a>(codes: impl IntoIterator<Item = &'a Code>) -> (Gathered, Option<Arrival>) {
    let mut gathered = Gathered::default();
    let mut last = None;
    for code in codes {
        // each by a link of its own, and kept in the browser meanwhile
        let read = Code::read_all(&link(code)).expect("a code");
        gathered = Gathered::read(&gathered.text());
        last = read.into_iter().map(|it| gathered.take(it)).last();
    }
    (gathered, last)
}

#[test]
fn the_demo_takes_one_code_and_the_whole_car_three() {
    let demo = codes(&quietpin_core::demo());
    let car = codes(&quietpin_core::whole_car());
    assert_eq!((demo.len(), car.len()), (1, 3));
    let lengths: Vec<_> = car.iter().map(|it| it.text().len()).collect();
    let is_one_size = lengths.iter().all(|it| it.abs_diff(lengths[0]) < 4);
    assert!(is_one_size, "of one size: {lengths:?}");
}

#[test]
fn no_code_takes_more_than_a_thousand_bytes() {
    // five and a half bits a sign, eight a letter of the address, 4 and 16, 4 and 13 bits that say so (ISO/IEC 18004)
    for letters in (0..9000).step_by(450) {
        for code in codes(&plan_of(letters)) {
            let bits = 37 + 8 * BEFORE + (11 * code.text().len()).div_ceil(2);
            assert!(bits <= 8000, "{letters} letters: {bits} bits");
        }
    }
}

#[test]
fn a_plan_of_more_codes_than_anybody_scans_is_a_file() {
    let most = codes(&plan_of(13_000));
    assert_eq!(most.len(), usize::from(MOST_CODES));
    let refused = series(&plan_of(20_000), BEFORE).expect_err("too long");
    assert!(refused.to_string().contains("save it as a file instead"), "{refused}");
    let long = plan_of(20_000);
    let (_, arrival) = scanned([&whole(&long)]);
    assert_eq!(arrival, Some(Arrival::Plan(Box::new(long))), "a link takes it all the same");
}

#[test]
fn what_is_missing_is_named() {
    let codes = codes(&plan_of(5000));
    assert_eq!(codes.len(), 5);
    let (gathered, arrival) = scanned([&codes[4], &codes[0], &codes[2], &codes[0]]);
    let told = arrival.expect("one came").to_string();
    assert_eq!(told, "From another phone, 3 of 5 codes so far: codes 2 and 4 are missing.");
    assert_eq!(gathered.standings()[0].missing, [2, 4]);
    let (_, arrival) = scanned(&codes[..4]);
    assert_eq!(
        arrival.expect("one came").to_string(),
        "From another phone, 4 of 5 codes so far: code 5 is missing."
    );
}

#[test]
fn series_that_are_mixed_are_told_apart_and_both_come_to_an_end() {
    let (one, other) = (plan_of(2000), plan_of(2100));
    let (ones, others) = (codes(&one), codes(&other));
    let (mut gathered, arrival) = scanned([&ones[0], &others[1]]);
    let told = arrival.expect("one came").to_string();
    assert!(told.starts_with("This code is of another plan"), "{told}");
    assert_eq!(gathered.standings().len(), 2);
    assert_eq!(gathered.take(others[0].clone()), Arrival::Plan(Box::new(other)));
    assert_eq!(gathered.standings()[0].missing, [2], "the first still waits");
    assert_eq!(gathered.take(ones[1].clone()), Arrival::Plan(Box::new(one)));
    assert_eq!(gathered, Gathered::default(), "and nothing else");
}

#[test]
fn what_waits_does_not_grow_without_end() {
    let mut gathered = Gathered::default();
    for letters in 1500..1600 {
        gathered.take(codes(&plan_of(letters))[0].clone());
    }
    assert!(gathered.standings().len() <= 24, "{}", gathered.standings().len());
}

#[test]
fn one_wrong_sign_is_found_wherever_it_stands() {
    let text = codes(&quietpin_core::demo())[0].text();
    for at in 0..text.len() {
        let mut signs = text.clone().into_bytes();
        signs[at] = if signs[at] == b'7' { b'8' } else { b'7' };
        let text = String::from_utf8(signs).expect("signs");
        assert_eq!(Code::read(&text), Err(Refused::Damaged), "at {at}");
        assert_eq!(Code::read(&text[..at]), Err(Refused::Damaged), "cut off at {at}");
    }
    assert_eq!(Code::read(&text.replacen('A', "B", 1)), Err(Refused::Newer));
}

#[test]
fn links_are_pasted_together_or_with_broken_lines() {
    let codes = codes(&plan_of(2000));
    let links: Vec<_> = codes.iter().map(link).collect();
    assert_eq!(Code::read_all(&links.join("\n")), Ok(codes.clone()));
    let (start, end) = links[0].split_at(300);
    assert_eq!(Code::read_all(&format!(" {start}\r\n{end}\n")), Ok(codes[..1].to_vec()));
    let message = format!("The plan: {} It is for the hill.", links[0]);
    assert_eq!(Code::read_all(&message), Ok(codes[..1].to_vec()), "with words around");
    assert_eq!(Code::read_all("http://192.168.1.20:8360/"), Err(Refused::NoCode));
    assert_eq!(Code::read_all(""), Err(Refused::NoCode));
}

#[test]
fn what_grows_without_measure_is_not_unpacked() {
    // a megabyte and more of one letter, in a few hundred bytes
    let mut bomb = plan_of(0);
    bomb.notes = "x".repeat(2_000_000);
    let (gathered, arrival) = scanned(&codes(&bomb));
    assert_eq!(arrival, Some(Arrival::Broken(None)));
    assert_eq!(gathered, Gathered::default());
}

#[test]
fn a_symbol_has_four_blank_modules_around_it() {
    let code = &codes(&quietpin_core::demo())[0];
    let symbol = Symbol::of("http://192.168.1.20:8360/", code).expect("a symbol");
    // the finder pattern's top row: seven dark modules in the corner (ISO/IEC 18004, 6.3.3)
    assert!(symbol.path.starts_with("M4 4h7v1h-7z"), "{}", &symbol.path[..40]);
    assert_eq!((symbol.side - 8 - 17) % 4, 0, "21 modules, and four more for each version");
    let most = codes(&plan_of(13_000));
    let sides = most.iter().map(|it| Symbol::of(&"a".repeat(25), it).expect("a symbol").side);
    let largest = sides.max().expect("a symbol");
    // 297 px are left of a width of 360
    assert!(f64::from(largest) * 1.5 < 297.0, "{largest} modules");
    assert_eq!(Symbol::of(&"a".repeat(3000), code), None, "no symbol is so large");
}

fn plans() -> impl Strategy<Value = Plan> {
    let texts = (".*", ".*", "[ -~\n]{0,6000}", ".{0,9}", prop::collection::vec(".{0,20}", 0..5));
    texts.prop_map(|(name, order, notes, cylinders, names)| {
        let mut plan = Plan::named(name);
        plan.quietpin = VERSION;
        plan.notes = notes;
        plan.put(engine::ORDER, &order);
        plan.put(engine::CYLINDERS, &cylinders);
        plan.set_count(Part::Loads, names.len());
        for (at, name) in names.iter().enumerate() {
            plan.put(loads::NAME.at(at), name);
        }
        plan
    })
}

proptest! {
    #[test]
    fn a_plan_comes_whole_in_any_order((plan, order) in plans().prop_flat_map(|plan| {
        let codes = codes(&plan);
        (Just(plan), Just(codes).prop_shuffle())
    })) {
        prop_assert_eq!(plan::parse(&plan::write(&plan)), Ok(plan.clone()), "as a file");
        let (gathered, arrival) = scanned(&order);
        prop_assert_eq!(arrival, Some(Arrival::Plan(Box::new(plan))));
        prop_assert_eq!(gathered, Gathered::default());
    }

    #[test]
    fn any_text_may_be_pasted(text in ".*", signs in "[0-9A-Z$+./-]*", kept in ".*") {
        let mut gathered = Gathered::read(&kept);
        for text in [text, format!("{MARK}A{signs}Z"), signs] {
            for code in Code::read_all(&text).into_iter().flatten() {
                let _ = gathered.take(code).to_string();
            }
        }
    }

    /// With a check that holds: whatever was compressed, or was not.
    #[test]
    fn any_bytes_may_be_in_a_code(bytes in prop::collection::vec(any::<u8>(), 0..400), heads in any::<u8>()) {
        let text = forged(heads, &bytes);
        if let Ok(code) = Code::read(&text) {
            let _ = Gathered::default().take(code.clone()).to_string();
            prop_assert_eq!(code.text(), text);
        }
    }
}

/// A code of these bytes, put together apart from the program.
fn forged(heads: u8, piece: &[u8]) -> String {
    fn crc(bytes: &[u8]) -> u32 {
        !bytes.iter().fold(!0, |sum, byte| {
            (0..8).fold(sum ^ u32::from(*byte), |it, _| (it >> 1) ^ (0xEDB8_8320 * (it & 1)))
        })
    }
    let mut bytes = vec![heads];
    bytes.extend(crc(piece).to_be_bytes());
    bytes.extend(piece);
    let sum = crc(&bytes);
    bytes.extend(sum.to_be_bytes());
    let signs = b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ$+-./";
    let mut text = String::from("A");
    for pair in bytes.chunks(2) {
        let mut value = pair.iter().fold(0, |value, byte| value * 256 + usize::from(*byte));
        for _ in 0..=pair.len() {
            text.push(char::from(signs[value % 41]));
            value /= 41;
        }
    }
    text + "Z"
}
