//! Names that fields and choices had in earlier files: read on, never written.
//!
//! The version of the format says nothing of them: a file of version 1 may use the former names or those of today.

/// A field that had another name.
struct Field {
    part: &'static str,
    former: &'static str,
    now: &'static str,
}

const FIELDS: &[Field] = &[Field { part: "trigger_input", former: "arming", now: "counts_from" }];

/// The name that a field of a record (`cranking`, `relays.0`) has today; as it is where it never had another.
pub(super) fn name_today<'a>(record: &str, name: &'a str) -> &'a str {
    let is_it = |it: &&Field| it.part == part_of(record) && it.former == name;
    FIELDS.iter().find(is_it).map_or(name, |it| it.now)
}

/// The name that a field of today had.
pub(super) fn former_name(record: &str, name: &str) -> Option<&'static str> {
    let is_it = |it: &&Field| it.part == part_of(record) && it.now == name;
    FIELDS.iter().find(is_it).map(|it| it.former)
}

/// The part of the plan in which a record stands.
fn part_of(record: &str) -> &str {
    record.split('.').next().unwrap_or(record)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        plan::{Plan, ReadError, parse, write},
        report::report,
    };

    /// Parts that are lists of records.
    const LISTS: [&str; 3] = ["outputs", "loads", "relays"];

    fn file(part: &str, members: &str) -> String {
        let record = format!("{{{members}}}");
        let value = if LISTS.contains(&part) { format!("[{record}]") } else { record };
        format!(r#"{{"quietpin": 1, "{part}": {value}}}"#)
    }

    fn opened(part: &str, members: &str) -> Plan {
        let file = file(part, members);
        parse(&file).unwrap_or_else(|error| panic!("{file}: {error}"))
    }

    #[test]
    fn a_former_name_says_what_the_name_of_today_says() {
        for Field { part, former, now } in FIELDS {
            let earlier = opened(part, &format!(r#""{former}": "120""#));
            let today = opened(part, &format!(r#""{now}": "120""#));
            assert_ne!(today, Plan { quietpin: 1, ..Plan::default() }, "{part}.{now} is not read");
            assert_eq!(earlier, today, "{part}.{former}");
            assert_eq!(report(&earlier), report(&today), "{part}.{former}");
            let written = write(&earlier);
            assert!(written.contains(now), "{written}");
            assert!(!written.contains(&format!(r#""{former}""#)), "{written}");
        }
    }

    #[test]
    fn two_texts_under_both_names_are_refused_and_both_named() {
        for Field { part, former, now } in FIELDS {
            for (one, other) in [(former, now), (now, former)] {
                let file = file(part, &format!(r#""{one}": "120", "{other}": "130""#));
                let Err(ReadError::Misfit { detail }) = parse(&file) else {
                    panic!("{file} is opened")
                };
                for told in [*now, *former, "120", "130"] {
                    assert!(detail.contains(told), "{told} is not in {detail}");
                }
            }
        }
    }

    #[test]
    fn under_both_names_what_was_typed_stays() {
        for Field { part, former, now } in FIELDS {
            let expected = opened(part, &format!(r#""{now}": "120""#));
            for (of_former, of_now) in [("120", "120"), ("120", ""), ("", "120"), (" 120", "120 ")]
            {
                let members = format!(r#""{former}": "{of_former}", "{now}": "{of_now}""#);
                assert_eq!(report(&opened(part, &members)), report(&expected), "{members}");
            }
        }
    }

    #[test]
    fn a_name_that_was_no_field_of_the_part_is_refused_as_ever() {
        assert!(matches!(
            parse(&file("engine", r#""arming": "1 V""#)),
            Err(ReadError::Misfit { .. })
        ));
    }
}
