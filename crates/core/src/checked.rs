//! What the answers were compared with: the record that the tests write, question by question.

const RECORD: &str = include_str!("../../../tests/VALIDATION.md");

/// What is recorded of a question, in the lines of a list or a table; nothing where there is no such question.
pub fn of(question: &str) -> Option<&'static str> {
    let mut sections = RECORD.split("\n## ").skip(1);
    sections.find_map(|it| it.strip_prefix(question)?.strip_prefix("\n\n"))
}

/// The whole record.
pub fn record() -> &'static str {
    RECORD
}

/// The same of the question that answers what an answer is about.
pub fn about(subject: &str) -> Option<&'static str> {
    let mut words = subject.split('.');
    let (first, last) = (words.next()?, words.next_back());
    of(match first {
        "engine" | "channels" | "light" | "strip" => "firing",
        "second_injectors" | "injector_feed" | "fuel" => "injectors",
        "relays" if last != Some("coil") => "cranking",
        "rest" | "loads" | "relays" => "outputs",
        "harness" => "wires",
        "crank_sensor" | "cam_sensor" | "controller" => "trigger",
        same => same,
    })
}

/// The lines of a record as a person reads them, without their table.
pub fn lines(record: &'static str) -> impl Iterator<Item = String> {
    record.lines().filter_map(|line| {
        if let Some(item) = line.strip_prefix("- ") {
            return Some(item.to_owned());
        }
        let mut cells = line.strip_prefix("| ")?.split('|').map(str::trim);
        let (what, against, numbers) = (cells.next()?, cells.next()?, cells.next()?);
        let is_row = numbers.starts_with(|c: char| c.is_ascii_digit());
        let apart = cells.next()?;
        is_row.then(|| {
            format!("{what}: {numbers} numbers against {against}; furthest apart: {apart}.")
        })
    })
}
