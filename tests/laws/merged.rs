//! Two plans that come from one, made one again: nothing that was typed in either is lost without being told.

use proptest::{collection, prelude::*};
use quietpin_core::{
    plan::{self, Clash, Merged, Plan, VERSION},
    schema::Part,
};

use super::{sequences, typed};

/// Every text with the field that it stands in, whatever its record or cell.
fn texts(plan: &Plan) -> Vec<(String, String)> {
    let parts = Part::ALL.iter().flat_map(|part| plan.part(*part));
    let mut texts: Vec<_> = parts.map(|(place, text)| (place.pattern(), text.clone())).collect();
    texts.push(("name".into(), plan.name.clone()));
    texts.sort();
    texts
}

/// What was typed in this one, as often as it stands there more often than before.
fn new_texts(base: &Plan, plan: &Plan) -> Vec<(String, String)> {
    let mut before = texts(base);
    let mut new = texts(plan);
    new.retain(|it| match before.iter().position(|there| there == it) {
        Some(at) => {
            before.remove(at);
            false
        }
        None => true,
    });
    new
}

fn is_told(merged: &Merged, text: &str) -> bool {
    merged.clashes.iter().any(|it| match it {
        Clash::Text { gone, .. } => gone == text,
        Clash::Removed { .. } => false,
        Clash::TooLarge => true,
    })
}

fn after(base: &Plan, steps: &[sequences::Step]) -> Plan {
    steps
        .iter()
        .fold(base.clone(), |plan, step| sequences::taken(step, &plan, std::slice::from_ref(base)))
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(400) })]

    #[test]
    fn nothing_that_was_typed_in_either_is_lost_without_being_told(
        base in typed::plan(),
        newer in collection::vec(sequences::step(), 0..5),
        older in collection::vec(sequences::step(), 0..5),
    ) {
        let (newer, older) = (after(&base, &newer), after(&base, &older));
        let merged = base.merged(&newer, &older);
        let there = texts(&merged.plan);
        for it in new_texts(&base, &newer) {
            prop_assert!(there.contains(&it) || is_told(&merged, &it.1), "{it:?} of the newer");
        }
        for it in new_texts(&base, &older) {
            prop_assert!(there.contains(&it) || is_told(&merged, &it.1), "{it:?} of the older");
        }
    }

    #[test]
    fn what_one_alone_changed_is_taken_as_it_is(
        base in typed::plan(),
        steps in collection::vec(sequences::step(), 0..5),
    ) {
        let plan = after(&base, &steps);
        for (newer, older) in [(&plan, &base), (&base, &plan), (&plan, &plan)] {
            let merged = base.merged(newer, older);
            prop_assert_eq!(&merged.plan, &plan);
            prop_assert_eq!(merged.clashes, []);
        }
    }

    #[test]
    fn what_is_read_is_written_and_read_again(
        base in typed::plan(),
        // what has no place, short and long, and characters that are written as several
        left in collection::vec(("[a-z\u{1}\"\\\\Ω]{0,40}", "[ -~\u{0}-\u{1f}Ω]{0,400}"), 0..40),
        often in 0_usize..400,
    ) {
        let mut file = serde_json::to_value(&base).expect("a plan is data");
        file["quietpin"] = VERSION.into();
        for (name, text) in left {
            file[format!("left {name}")] = vec![text; often].into();
        }
        for file in [file.to_string(), format!("{file:#}")] {
            if let Ok(plan) = plan::parse(&file) {
                prop_assert_eq!(plan::parse(&plan::write(&plan)), Ok(plan));
            }
        }
    }
}
