//! Names that fields and choices had in earlier files: read on, never written.
//!
//! The version of the format says nothing of them: a file of version 1 may use the former names or those of today.

/// A field that had another name.
struct FormerField {
    part: &'static str,
    former: &'static str,
    now: &'static str,
}

const fn field(part: &'static str, former: &'static str, now: &'static str) -> FormerField {
    FormerField { part, former, now }
}

const FIELDS: &[FormerField] = &[
    field("cranking", "threshold", "relay_on_at"),
    field("cranking", "release", "relay_off_below"),
    field("relays", "threshold", "relay_on_at"),
    field("relays", "release", "relay_off_below"),
    field("trigger_input", "arming", "counts_from"),
];

/// A choice that had another code.
struct Code {
    part: &'static str,
    field: &'static str,
    former: &'static str,
    now: &'static str,
}

const fn injection(field: &'static str, former: &'static str, now: &'static str) -> Code {
    Code { part: "channels", field, former, now }
}

const CODES: &[Code] = &[
    injection("injection_mode", "sequential", "each-once"),
    injection("injection_mode", "paired", "companions"),
    injection("injection_mode", "bank", "by-bank"),
    injection("second_mode", "sequential", "each-once"),
    injection("second_mode", "paired", "companions"),
    injection("second_mode", "bank", "by-bank"),
];

/// The name that a field of a record (`cranking`, `relays.0`) has today; as it is where it never had another.
pub(super) fn name_today<'a>(record: &str, name: &'a str) -> &'a str {
    let is_it = |it: &&FormerField| it.part == part_of(record) && it.former == name;
    FIELDS.iter().find(is_it).map_or(name, |it| it.now)
}

/// What stands in a field of today: the code of today in place of a former one, any other text as it is.
///
/// As where a choice is read, capitals and blanks around it make no difference.
pub(super) fn text_today(record: &str, name: &str, text: String) -> String {
    let typed = text.trim();
    let is_it = |it: &&Code| {
        it.part == part_of(record) && it.field == name && it.former.eq_ignore_ascii_case(typed)
    };
    CODES.iter().find(is_it).map_or(text, |it| it.now.to_owned())
}

/// The part of the plan in which a record stands.
fn part_of(record: &str) -> &str {
    record.split('.').next().unwrap_or(record)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        plan::{Plan, parse, write},
        report::report,
        schema::{Kind, Part, Place},
    };

    fn file(part: &str, members: &str) -> String {
        let record = format!("{{{members}}}");
        let value = if Part::named(part).is_some_and(Part::is_list) {
            format!("[{record}]")
        } else {
            record
        };
        format!(r#"{{"quietpin": 1, "{part}": {value}}}"#)
    }

    fn opened(part: &str, members: &str) -> Plan {
        let file = file(part, members);
        parse(&file).unwrap_or_else(|error| panic!("{file}: {error}"))
    }

    #[test]
    fn a_former_name_says_what_the_name_of_today_says() {
        for FormerField { part, former, now } in FIELDS {
            let earlier = opened(part, &format!(r#""{former}": "120""#));
            let today = opened(part, &format!(r#""{now}": "120""#));
            assert_ne!(
                today,
                parse(r#"{"quietpin": 1}"#).expect("a blank plan"),
                "{part}.{now} is not read"
            );
            assert_eq!(earlier, today, "{part}.{former}");
            assert_eq!(report(&earlier), report(&today), "{part}.{former}");
            let written = write(&earlier);
            assert!(written.contains(now), "{written}");
            assert!(!written.contains(&format!(r#""{former}""#)), "{written}");
        }
    }

    #[test]
    fn of_two_texts_under_both_names_neither_is_lost() {
        for FormerField { part, former, now } in FIELDS {
            for (one, other) in [(former, now), (now, former)] {
                let plan = opened(part, &format!(r#""{one}": "120", "{other}": "130""#));
                let [(path, text)] = plan.left_over() else { panic!("{plan:?}") };
                assert!(path.starts_with(part) && path.ends_with(other), "{path}");
                assert_eq!(text, "130", "{path}");
                assert!(write(&plan).contains("120") && write(&plan).contains("130"), "{path}");
            }
        }
    }

    #[test]
    fn under_both_names_what_was_typed_stays() {
        for FormerField { part, former, now } in FIELDS {
            let expected = opened(part, &format!(r#""{now}": "120""#));
            for (of_former, of_now) in [("120", "120"), ("120", ""), ("", "120"), (" 120", "120 ")]
            {
                let members = format!(r#""{former}": "{of_former}", "{now}": "{of_now}""#);
                assert_eq!(report(&opened(part, &members)), report(&expected), "{members}");
            }
        }
    }

    #[test]
    fn a_former_code_says_what_the_code_of_today_says() {
        for Code { part, field, former, now } in CODES {
            let today = opened(part, &format!(r#""{field}": "{now}""#));
            for typed in [(*former).to_owned(), format!(" {} ", former.to_uppercase())] {
                let earlier = opened(part, &format!(r#""{field}": "{typed}""#));
                assert_eq!(earlier, today, "{typed} in {part}.{field}");
                assert_eq!(report(&earlier), report(&today), "{typed} in {part}.{field}");
            }
            assert_eq!(today.get(&format!("{part}.{field}")), Some(*now), "is written as it is");
        }
    }

    #[test]
    fn every_code_of_today_is_a_choice_of_its_field_and_no_former_one_is() {
        for Code { part, field, former, now } in CODES {
            let place = Place::at_path(&format!("{part}.{field}"));
            let kind = place.map(|it| it.field().kind);
            let Some(Kind::Choice(choices)) = kind else { panic!("{part}.{field} is no choice") };
            let is_choice = |code: &str| choices.iter().any(|it| it.code == code);
            assert!(is_choice(now), "{now} is no choice of {part}.{field}");
            assert!(!is_choice(former), "{former} is still a choice of {part}.{field}");
        }
    }

    #[test]
    fn a_former_code_of_another_field_stays_as_it_was_typed() {
        for (field, text) in [("ignition_mode", "sequential"), ("injection_mode", "two by two")] {
            let plan = opened("channels", &format!(r#""{field}": "{text}""#));
            assert_eq!(plan.get(&format!("channels.{field}")), Some(text));
        }
    }

    #[test]
    fn a_name_that_was_no_field_of_the_part_is_kept_as_it_was() {
        let plan = opened("engine", r#""arming": "1 V""#);
        assert_eq!(plan.left_over(), [("engine.arming".to_owned(), "1 V".to_owned())]);
    }
}
