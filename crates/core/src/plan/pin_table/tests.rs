use super::*;

const SHEET: &str = "Pin\tType\tMax current (A)\tLoom colour\tRemark
D1\tLow side\t3\tred\t
D2\tlow-side\t3\tblue\tspare
D3\tLow side\t5\tred\t
H1\tPush-pull\t8\tred\t
A7\tAnalogue input\t\twhite\t0 to 5 V
";

fn meanings(table: &PinTable) -> Vec<Meaning> {
    table.columns.iter().map(|it| it.meaning).collect()
}

fn named(plan: &Plan) -> Vec<(&str, &str, &str)> {
    let text = |at: usize| {
        (
            plan.text(outputs::NAME.at(at)),
            plan.text(outputs::STAGE.at(at)),
            plan.text(outputs::CURRENT_LIMIT.at(at)),
        )
    };
    (0..plan.count(Part::Outputs)).map(text).collect()
}

#[test]
fn a_sheet_is_read_by_its_headings_and_what_is_not_known_is_asked() {
    let table = PinTable::read(SHEET).expect("a table");
    let field = |key: Place| Meaning::Field(key);
    let expected = [
        field(outputs::NAME.place()),
        field(outputs::STAGE.place()),
        field(outputs::CURRENT_LIMIT.place()),
        Meaning::Unknown,
        Meaning::Unknown,
    ];
    assert_eq!(meanings(&table), expected);
    assert_eq!(table.columns[3].shown, ["red", "blue", "red"]);
    let words = table.stage_words(&meanings(&table));
    let asked: Vec<_> = words.iter().filter(|it| it.code.is_none()).collect();
    assert_eq!(asked.len(), 1, "{words:?}");
    assert_eq!((asked[0].word.as_str(), asked[0].rows), ("Analogue input", 1));
}

#[test]
fn outputs_that_are_alike_go_by_one_description_and_what_is_no_output_is_counted() {
    let table = PinTable::read(SHEET).expect("a table");
    let described = table.outputs(&meanings(&table), &[]);
    let expected = [
        ("D1, D2", "open-drain", "3 A"),
        ("D3", "open-drain", "5 A"),
        ("H1", "half-bridge", "8 A"),
    ];
    assert_eq!(named(&described.plan), expected);
    assert_eq!((described.outputs, described.left_out), (4, 1));
}

#[test]
fn a_word_that_was_asked_is_taken_as_it_was_answered() {
    let table = PinTable::read(SHEET).expect("a table");
    let answered = [("analogue INPUT".to_owned(), "logic")];
    let described = table.outputs(&meanings(&table), &answered);
    assert_eq!(named(&described.plan).last(), Some(&("A7", "logic", "")));
}

#[test]
fn other_ways_to_part_a_table_are_understood() {
    for text in [
        "pin;type;limit (mA)\nL1;\"logic\";20\nL2;logic;20",
        "| pin | type | limit [mA] |\n|-----|------|----|\n| L1 | logic | 20 |\n| L2 | logic | 20 |",
        "pin   type    limit (mA)\nL1    logic   20\nL2    logic   20",
        "pin,type,limit (mA)\r\nL1,logic,20\r\nL2,logic,20\r\n",
        "pin,remark,type,limit (mA)\nL1,\"a, b\nc\",logic,20\nL2,,logic,20",
    ] {
        let table = PinTable::read(text).expect(text);
        let described = table.outputs(&meanings(&table), &[]);
        assert_eq!(named(&described.plan), [("L1, L2", "logic", "20 mA")], "{text}");
    }
}

#[test]
fn without_a_heading_the_words_for_stages_tell_their_column() {
    let table = PinTable::read("X1-3\t2 A\tlow side\nX1-4\t2 A\thigh side").expect("a table");
    let described = table.outputs(&meanings(&table), &[]);
    let expected = [("X1-3", "open-drain", ""), ("X1-4", "high-side", "")];
    assert_eq!(named(&described.plan), expected, "the currents are asked");
    assert_eq!(meanings(&table)[1], Meaning::Unknown);
}

#[test]
fn what_is_no_table_is_none() {
    for text in ["", "\n\n", "Pin\tType", "hello", "one\ntwo\nthree"] {
        assert_eq!(PinTable::read(text), None, "{text:?}");
    }
}

proptest::proptest! {
    #[test]
    fn no_text_is_too_odd_to_read(text in "[^\u{0}]{0,300}", pick in 0_usize..4) {
        let mark = ["\t", ";", ",", "  "][pick];
        let text = text.replace(' ', mark);
        if let Some(table) = PinTable::read(&text) {
            let described = table.outputs(&meanings(&table), &[]);
            let rows = described.outputs + described.left_out;
            proptest::prop_assert!(rows <= MOST_ROWS && table.columns.len() <= MOST_COLUMNS);
        }
    }
}
