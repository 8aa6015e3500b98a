//! Every sentence that says what to do is known by what it is for, and every caution by what it says.

use super::*;

#[test]
fn a_plan_without_a_word_has_its_usual_report() {
    let usual = usual(&crate::report::report(&crate::plan::Plan::default()));
    assert!(usual.facts.is_empty() && usual.buy.is_empty() && usual.pins.is_empty());
    assert!(usual.questions.iter().all(|it| it.tone == Tone::Open));
}
